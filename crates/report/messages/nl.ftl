# Draft. Nobody who speaks Dutch natively has reviewed this yet.
# What Tussock says, in Dutch. Identifiers with underscores are codes of findings (tussock_types::Said), those with hyphens are
# labels and sentences of the windows. A number carries its unit in its name and is written with it: $width_m is "1,2 m",
# $share_ratio is "31%", $lost_min is "25 min", $towards_deg is "noordoosten". Counts have no unit and choose the plural.
# A value without a unit in its name that is no count comes written already: $area is "12,3 m²", $hours is "4,5 h", $percent is "31%".
# What stands in square brackets before a text chooses it and is not translated: it is a number, a plural category, or a word of ours
# such as [none], which is what a value is that is not there.

## What the positions of a log can show, or the one thing to change

positions_right = De posities kloppen tot op ongeveer { $error_m }.
positions_off = De posities zitten er ongeveer { $error_m } naast: monteer de antenne hoger, met vrij zicht op de hemel, of log met een RTK-ontvanger.
receiver_jumps = De ontvanger is versprongen en niet teruggekomen: de posities van vóór en na de sprong passen niet op elkaar. Zoek uit wat zijn zicht op de hemel belemmert, of geef de log van vóór en na de sprong als aparte bestanden.
error_not_shown = Deze log laat niet zien hoe ver de posities ernaast zitten: laat de maaier tien minuten stilstaan terwijl de logger loopt.
fixes_too_rare = Bij één meetpunt per { $period_s } zijn keerbewegingen niet te zien: log één meetpunt per seconde.
digits_too_coarse = De posities zijn gelogd in stappen van { $step_m }: laat de logger meer cijfers schrijven (zeven decimalen bij graden, vijf bij minuten).

## Why a log shows nothing of a lawn

mostly_jumps = { $jumps } van de { $fixes } meetpunten liggen verder van het vorige dan een maaier in die tijd kan rijden (positions.max_speed_mps is { $max_speed_mps }): dit is een voertuig, of de posities verspringen.
too_few_fixes = { $used } van { $fixes } { $fixes ->
    [one] meetpunt
   *[other] meetpunten
} { $used ->
    [one] is
   *[other] zijn
} bruikbaar, te weinig om een rit te laten zien: laat de logger een hele rit lang lopen.
not_one_garden = De posities liggen verspreid over { $extent_m }: dit is niet de log van één tuin, of sprongen verhullen dat. Geef alleen de bestanden van één tuin.
fixes_far_too_rare = Eén meetpunt per { $period_s } laat niets van een gazon zien: log één meetpunt per seconde.
walking_pace = Dit beweegt met { $speed_mps }, zo snel als iemand loopt: geef een log van de machine aan het werk, of geef zijn snelheid op als hij echt zo snel is (machine.speed_mps).
walk_round = Dit lijkt op een wandeling rond { $area_m2 } tuin ({ $length_m } met { $speed_mps }) en niet op de log van een maaier: maak er een plattegrond van met tussock plan from-walk BESTAND{ $gpx ->
    [yes] { "" }
   *[other] , zodra het als GPX is opgeslagen
}. Is het toch de maaier, geef dan zijn snelheid op (machine.speed_mps).

## Vanwaar een meetlint wordt gelegd

landmark_station = het laadstation
landmark_middle = het midden van “{ $body }”
landmark_corner_at = de hoek van { $body ->
    [none] het gazon
   *[other] “{ $body }”
} bij { $beside ->
    [none] het laadstation
   *[other] “{ $beside }”
}
landmark_corner_nearest = de hoek van { $body ->
    [none] het gazon
   *[other] “{ $body }”
} het dichtst bij het laadstation
landmark_corner = de{ $outermost ->
    [yes] { " " }uiterste
   *[other] { "" }
} hoek van { $body ->
    [none] het gazon
   *[other] “{ $body }”
} in het { $wind_deg }
landmark_corner_apart = de hoek van { $body ->
    [none] het gazon
   *[other] “{ $body }”
} in het { $wind_deg } die { $farther ->
    [yes] verder van
   *[other] dichter bij
} { $beside ->
    [none] het laadstation
   *[other] “{ $beside }”
} ligt

## Wat de lezer van een log deed of opmerkte

time_without_zone = De tijden noemen geen tijdzone en gelden als UTC.
time_is_relative = De tijden tellen vanaf een eigen begin van de logger en bevatten geen datum.
gps_time = De tijden zijn GPS-tijd en zijn omgerekend naar UTC, met 18 schrikkelseconden sinds 2017 (IERS, Bulletin C).
week_rollover_repaired = { $fixes ->
    [one] 1 meetpunt was
   *[other] { $fixes } meetpunten waren
} 1024 weken te vroeg gedateerd (overloop van de GPS-week) en { $days } dagen vooruit geschoven; het eerste is nu van { $date }.
late_fixes = { $fixes ->
    [one] 1 meetpunt is later weggeschreven dan gemeten en op zijn plaats gezet.
   *[other] { $fixes } meetpunten zijn later weggeschreven dan gemeten en op hun plaats gezet.
}
newest_first = De log begint met het nieuwste meetpunt en is omgedraaid.
block_out_of_order = Een deel van de log is later weggeschreven dan gemeten.
tracks_overlap = Sporen overlappen in de tijd; hun meetpunten zijn in één volgorde gezet, en tussen de sporen wordt niets verbonden.
times_do_not_fit = Een spoor heeft { $times } tijden en { $positions } posities, en niemand kan zeggen welke bij elkaar horen; het is weggelaten.
constant_quality = GGA noemt elk meetpunt { $manual ->
    [yes] handmatig (7)
   *[other] gesimuleerd (8)
} waar RMC het geldig noemt; de soort meetpunt is uit RMC genomen.
several_machines = De log bevat { $machines } maaiers, onderscheiden naar waar ze op dezelfde tijden waren.
same_log_twice = Dezelfde inhoud als { $log }, één keer gelezen.
overlaps_another_log = { $fixes ->
    [one] 1 meetpunt
   *[other] { $fixes } meetpunten
} vanaf { $date } weggelaten, op tijden die een andere log van deze maaier dekt.
file_not_closed = Het bestand is aan het eind niet afgesloten, alsof de logger is uitgezet.
file_damaged = Het gecomprimeerde bestand is beschadigd, het einde ontbreekt: { $fault }
line_too_long = Een regel van { $bytes } bytes is langer dan { $limit }, de grens van limits.line_bytes, en is overgeslagen.
line_cut = Een regel van meer dan { $bytes } bytes is langer dan { $limit }, de grens van limits.line_bytes, en is overgeslagen.
attribute_too_long = Een attribuut van { $bytes } bytes is langer dan { $limit }, de grens van limits.attribute_bytes, en is overgeslagen.
document_type_ignored = Het documenttype wordt genegeerd en geen entiteit die het bepaalt wordt vervangen.

## Wat de lezer van een wandeling deed of opmerkte

walk_markup_broken = Het bestand is op { $places ->
    [one] 1 plaats beschadigd, die is
   *[other] { $places } plaatsen beschadigd, die zijn
} overgeslagen; kijk of er iets in de plattegrond ontbreekt.
walk_taken_as_lawn = “{ $track }” (gesloten, { $area_m2 }, omtrek { $length_m }) geldt als het gazon: het is het enige spoor dat terugkomt waar het begon. Is het iets anders, zeg dat dan met --role "{ $track }=ROLE".
walk_positions_skipped = { $positions ->
    [one] 1 positie
   *[other] { $positions } posities
} van “{ $track }” zonder bruikbare breedte- en lengtegraad.
walk_name_unknown = “{ $track }” is weggelaten, de naam zegt niet wat het is.{ $seems ->
    [none] { "" }
   *[other] { " " }Is het waar het op lijkt, zeg dat dan met --role "{ $track }={ $seems }".
}
walk_spikes_cut = { $positions ->
    [one] 1 positie van “{ $track }” springt weg en terug; die is weggelaten.
   *[other] { $positions } posities van “{ $track }” springen weg en terug; die zijn weggelaten.
}
walk_waits_as_corners = In “{ $track }” stond de wandelaar op { $places ->
    [one] 1 plaats stil; die blijft als hoek.
   *[other] { $places } plaatsen stil; elk ervan blijft als hoek.
}
walk_pieces_joined = “{ $track }” is in { $pieces } stukken opgenomen, verbonden door rechte lijnen.
walk_overlap_cut = “{ $track }” is { $past_m } voorbij het begin gelopen; dat einde is afgesneden.
walk_gap_closed = “{ $track }” is gesloten met een rechte lijn van { $gap_m }.
walk_loops_cut = { $loops ->
    [one] 1 kleine lus in “{ $track }” is afgesneden.
   *[other] { $loops } kleine lussen in “{ $track }” zijn afgesneden.
}
walk_guide_turned = “{ $track }” is naar het laadstation toe gelopen en is omgedraaid.

## What else stands against a log

stood_all_the_time = De machine heeft de hele tijd stilgestaan: laat de logger een aantal hele ritten lopen.
drove_too_short = Er is maar { $driven_s } rijden gelogd: laat de logger een aantal hele ritten lopen.
drove_too_short_by = Er is { $driven_s } rijden gelogd: er is nog ongeveer { $missing_h } nodig voordat een onbereden plek van { $wanted_m } breed meer is dan pech.
receiver_jumped = De ontvanger versprong { $size_m } ({ $time }) en bleef daar.
receiver_jumps_back = De ontvanger versprong { $jumps } keer en sprong weer terug: boven een deel van het gazon is de ontvangst slecht.
stops_not_placed = Stops van samen { $lost_min } worden niet gemeld: bij zulke slechte posities is niet te zien waar de maaier stilstond.
receiver_jumped_often = { $jumps ->
    [one] En nog één zo’n sprong.
   *[other] En nog { $jumps } van zulke sprongen.
}
date_too_old = De log begint op { $date }: de klok van de logger was niet gezet, of zijn weekteller is opnieuw begonnen. De datums zijn fout; de kloktijden kunnen kloppen (--date stelt de dag in van logs met alleen tijden).
positions_bent = Op ongeveer { $area_m2 } rond { $place } zitten de posities er steeds in dezelfde richting naast, tot { $largest_m }, zoals naast een muur of onder bomen. Het spoor is daar rechtgetrokken; hoeveel van die grond bereden is, is minder zeker.
turns_not_at_edge = De keerpunten liggen niet langs de randen van de plattegrond (er wordt in banen gereden, of de plattegrond klopt niet); daarom zijn de randen niet gebruikt om de posities te corrigeren.
edge_inside = Bij de rand in het { $edge_deg } keert de maaier { $offset_m } verder naar binnen dan bij de andere randen ({ $turns } keerpunten): de rand is te ver naar buiten getekend, de begrenzing ligt te ver naar binnen, of de ontvanger zit er daar naast. Meet op het gazon voordat u iets verplaatst.
edge_outside = Bij de rand in het { $edge_deg } keert de maaier { $offset_m } verder naar buiten dan bij de andere randen ({ $turns } keerpunten): de rand is te ver naar binnen getekend, de begrenzing ligt te ver naar buiten, of de ontvanger zit er daar naast. Meet op het gazon voordat u iets verplaatst.
zone_driven = De zone{ $zone ->
    [none] { "" }
   *[other] { " " }“{ $zone }”
} wordt net zo bereden als het gazon (er is { $path_m } in gereden): voor de maaier bestaat hij niet. Wat daar ligt of groeit, is misschien niet tegen de maaier beschermd.
plan_beside = De plattegrond ligt { $distance_m } naast de log ({ $east_m } oost, { $north_m } noord); hij is verschoven tot hij op de log past.
drift_assumed = De log zegt niet hoe goed zijn posities zijn, en de machine staat nooit lang genoeg stil om dat te laten zien; { $drift_m } is aangenomen. Weet u het beter, geef het dan op (positions.drift_m).
drift_at_most = De machine staat nooit lang genoeg stil om te laten zien hoe ver de posities verlopen; zijn rechte stukken laten hooguit { $drift_m } toe.
silent_long = { $silent_fraction } van de tijd zijn er geen bruikbare meetpunten; daarover wordt niets beweerd.
fixes_left_out = { $poor ->
    [0] { $jumps ->
        [one] 1 meetpunt is weggelaten omdat het een sprong is.
       *[other] { $jumps } meetpunten zijn weggelaten omdat het sprongen zijn.
    }
    [one] { $jumps ->
        [0] 1 meetpunt is weggelaten wegens slechte kwaliteit.
        [one] 1 meetpunt is weggelaten wegens slechte kwaliteit en 1 omdat het een sprong is.
       *[other] 1 meetpunt is weggelaten wegens slechte kwaliteit en { $jumps } omdat het sprongen zijn.
    }
   *[other] { $jumps ->
        [0] { $poor } meetpunten zijn weggelaten wegens slechte kwaliteit.
        [one] { $poor } meetpunten zijn weggelaten wegens slechte kwaliteit en 1 omdat het een sprong is.
       *[other] { $poor } meetpunten zijn weggelaten wegens slechte kwaliteit en { $jumps } omdat het sprongen zijn.
    }
}
no_station = Er is geen laadstation herkend: rustpauzes van tien minuten of langer keren niet op één plaats terug.
claim_too_good = De ontvanger geeft { $claimed_m } op, maar zijn posities spreiden { $scatter_m }: de spreiding telt, niet de opgave.
rtk_fixed_too_good = De ontvanger noemt zijn meetpunten “RTK fixed”, wat ongeveer { $usual_m } betekent, maar zijn posities spreiden { $scatter_m }: de spreiding telt, niet de opgave.
positions_repeated = { $repeated_fraction } van de meetpunten herhaalt de vorige positie tot op het laatste cijfer terwijl de ontvanger een snelheid meldt (hooguit { $longest_s } achtereen): hij geeft oude posities door.
positions_held = { $repeated_fraction } van de meetpunten herhaalt de vorige positie tot op het laatste cijfer (hooguit { $longest_s } achtereen): de ontvanger houdt zijn positie vast zolang hij stilstaat, zodat stilstand er beter uitziet dan de posities zijn. Schakel dat vasthouden (“static hold”) uit.
drives_at_rest = { $rest_min } van de { $driven_min } rijden valt in uren waarin de maaier volgens de instellingen rust ({ $time_zone ->
    [none] er is geen tijdzone ingesteld, dus UTC
   *[other] tijdzone { $time_zone }
}); geen verschuiving met hele uren brengt dat in orde.
drives_at_rest_shifted = { $rest_min } van de { $driven_min } rijden valt in uren waarin de maaier volgens de instellingen rust ({ $time_zone ->
    [none] er is geen tijdzone ingesteld, dus UTC
   *[other] tijdzone { $time_zone }
}); { $shift_h } { $later ->
    [yes] later
   *[no] eerder
} zou het kloppen{ $local_time ->
    [yes] : in de log staat zo te zien plaatselijke tijd die UTC wordt genoemd.
   *[no] .
}
calibrated = { $runs ->
    [one] Eén log zoals deze is
   *[other] { $runs } logs zoals deze zijn
} op de plattegrond gesimuleerd; het bereden deel is { $points } procentpunt gecorrigeerd voor de vertekening die daaruit bleek.
ways_disagree = Twee manieren van tellen spreken elkaar tegen: { $by_path_fraction } volgens het spoor dat aan keerpunten en randen is aangepast, { $as_logged_fraction } volgens de posities zoals gelogd, gecorrigeerd voor hun fouten. De tweede telt, en er wordt geen grond als gemist gemeld.
as_logged_silent = Geteld zoals gelogd zou het { $as_logged_fraction } zijn: wat tijdens de uitval ({ $silent_fraction } van de tijd) is bereden, ontbreekt daarin.
as_logged_sparse = Geteld zoals gelogd zou het { $as_logged_fraction } zijn: met één positie per { $period_s } snijden rechte lijnen van positie naar positie de keerpunten af.
as_logged_spread = Geteld zoals gelogd zou het { $as_logged_fraction } zijn: posities die er ongeveer { $error_m } naast zitten, spreiden het spoor over grond die niet is bereden.
as_logged_aside = Geteld zoals gelogd zou het { $as_logged_fraction } zijn: posities die er ongeveer { $error_m } naast zitten, leiden het spoor van het gazon af, of over grond die al was bereden.
not_calibrated_no_width = Het bereden deel is niet gekalibreerd: daarvoor is de maaibreedte nodig.
not_calibrated_no_plan = Het bereden deel is niet gekalibreerd: daarvoor is een plattegrond nodig om op te rijden.
not_calibrated_lanes = Het bereden deel is niet gekalibreerd: rijden in evenwijdige banen is niet nauwkeurig genoeg na te bootsen.
not_calibrated_no_drive = Het bereden deel is niet gekalibreerd: de log laat geen rit zien.
not_calibrated_no_run = Het bereden deel is niet gekalibreerd: een machine zoals deze kan op de plattegrond niet rijden.

## What follows where two answers to one question contradict each other

interval_holds_both = De marge is zo ruim genomen dat zowel { $one_fraction } als { $other_fraction } erin valt.
interval_wider = De marge is { $times } keer zo ruim genomen.
interval_wider_by = De marge is naar beide kanten { $more_fraction } van het gazon ruimer genomen.
plan_not_believed = Maar { $explained_fraction } van de keerpunten is te verklaren uit de randen van de plattegrond; waar de log niet laat zien hoe de plattegrond ligt, wordt daarom geen oorzaak genoemd.
legs_unlike = Het gebruikelijke rechte stuk is { $logged_m } in de log en { $drawn_m } in simulaties met de nagebootste machine: hij rijdt op een manier die het model niet kent, en wat de simulaties voorspellen is minder zeker.
shows_wider = Over grond tot { $widest_m } breed valt geen uitspraak te doen: alleen bredere plekken zouden te zien zijn.

## Why a pocket was missed

too_narrow_to_explain = Deze plek is niet bereden, maar aan zulke slechte posities is niet te zien waardoor een strook van { $widest_m } breed is overgeslagen; ga er kijken.
gap_too_narrow = Het deel erachter ({ $behind_m2 }) is niet te bereiken: de opening is { $width_m } breed en de maaier heeft meer dan { $needed_m } nodig.
no_way_in = Dit deel ({ $area_m2 }) heeft geen toegang: op de plattegrond is het niet verbonden met de grond waar de maaier begint.
no_way_in_driven = Dit deel ({ $area_m2 }) heeft geen toegang: niets van wat de maaier heeft gereden leidt erheen.
turns_before_edge = De maaier keert hier { $setback_m } voor de rand, zodat zijn maaischijf niet tot deze strook reikt.
zone_elsewhere = De zone{ $zone ->
    [none] { "" }
   *[other] { " " }“{ $zone }”
} lijkt ergens anders te liggen dan hij getekend is: de maaier reed { $path_m } binnen de getekende zone en keerde bij een lijn daarbuiten.
zone_elsewhere_towards = De zone{ $zone ->
    [none] { "" }
   *[other] { " " }“{ $zone }”
} lijkt verder naar het { $towards_deg } te liggen dan hij getekend is: de maaier reed { $path_m } binnen de getekende zone en keerde bij een lijn daarbuiten.
stuck_on_the_way = De maaier liep op weg naar dit deel { $times ->
    [1] één keer
    [2] twee keer
   *[other] { $times } keer
} vast ({ $lost_min }).
stuck_on_the_way_past = De maaier liep op weg naar dit deel { $times ->
    [1] één keer
    [2] twee keer
   *[other] { $times } keer
} vast ({ $lost_min }) en kwam er { $at_least ->
    [yes] minstens { $past ->
        [1] één keer
        [2] twee keer
       *[other] { $past } keer
    }
   *[no] { $past ->
        [0] geen enkele keer
        [1] één keer
        [2] twee keer
       *[other] { $past } keer
    }
} voorbij.
passage_shut = De doorgang van { $width_m } lijkt dicht te zijn: in { $driven_h } rijtijd { $expected ->
    [one] was 1 doortocht te verwachten en is er geen gezien.
   *[other] waren { $expected } doortochten te verwachten en is er geen gezien.
}
something_stands = Hier staat iets van ongeveer { $widest_m } breed dat niet op de plattegrond staat: de maaier keerde er { $turns ->
    [1] één keer
    [2] twee keer
   *[other] { $turns } keer
} en kwam er nooit in.
something_may_stand = Hier staat iets van ongeveer { $widest_m } breed, of er zit een gat in het gazon: de maaier keerde er { $turns ->
    [1] één keer
    [2] twee keer
   *[other] { $turns } keer
} en kwam er nooit in. Is het een border, een boom of een vijver? Een plattegrond waar het op staat, geeft uitsluitsel.
strip_stays = Er blijft een strook van { $width_m } breed over langs { $length_m } van de rand in het { $edge_deg }.
strip_stays_turns = Er blijft een strook van { $width_m } breed over langs { $length_m } van de rand in het { $edge_deg }: de maaier keert hier { $here_m } voor de rand, elders { $elsewhere_m }.
passage_seldom_found = In { $driven_h } rijtijd vond de maaier { $entries ->
    [0] geen enkele keer
    [1] { $at_least ->
        [yes] zelden (minstens één keer)
       *[no] maar één keer
    }
    [2] { $at_least ->
        [yes] zelden (minstens twee keer)
       *[no] maar twee keer
    }
   *[other] { $at_least ->
        [yes] zelden (minstens { $entries } keer)
       *[no] maar { $entries } keer
    }
} de weg door de doorgang van { $width_m }; de { $behind_m2 } erachter kreeg { $share_ratio } van zijn evenredige deel.
behind_passage_seldom = Niets verspert dit deel, maar de maaier komt er te zelden: de { $behind_m2 } achter de doorgang van { $width_m } kreeg { $share_ratio } van zijn evenredige deel, en met ritten zoals nu blijft dat zo.
comes_seldom = Niets verspert dit deel, maar de maaier komt er te zelden: de grond eromheen kreeg { $share_ratio } van zijn evenredige deel.
not_shown = Deze plek wordt vaker overgeslagen dan door toeval te verklaren is, maar deze log laat niet zien waardoor; ga er kijken.

## Evidence for it

luck_not_lanes = Een hele ronde in banen laat een strook van { $width_m } breed niet aan het toeval over.
luck_under_thousandth = Toeval alleen laat op minder dan 1 op de 1.000 van zulke gazons een onbereden plek van { $width_m } breed over.
luck_one_in = Toeval alleen laat op ongeveer 1 op de { $lawns } van zulke gazons een onbereden plek van { $width_m } breed over.
passage_width = { $width_m } op het smalste punt, waarvan { $free_m } vrij voor het midden van de maaier; { $length_m } lang.
passage_crossings = Hij wisselde { $at_least ->
    [yes] minstens { $crossings ->
        [1] één keer
        [2] twee keer
       *[other] { $crossings } keer
    }
   *[no] { $crossings ->
        [0] nooit
        [1] één keer
        [2] twee keer
       *[other] { $crossings } keer
    }
} van kant; een machine die vrij rondrijdt, zou dat over deze afstand { $expected ->
    [0] minder dan één keer
    [1] één keer
    [2] twee keer
   *[other] { $expected } keer
} hebben gedaan.
driven_behind = Erachter is { $path_m } gereden, { $share_ratio } van het evenredige deel.
nothing_driven_in = Er is niets in gereden.
cells_near_edge = Negen tiende ervan ligt binnen { $within_m } van de rand.
path_in_zone = { $path_m } gereden binnen de zone zoals getekend.
turns_beside = { $turns ->
    [one] 1 keerpunt
   *[other] { $turns } keerpunten
} naast deze plek, waar de plattegrond geen rand heeft.
stops_on_the_way = { $stops ->
    [one] 1 stop
   *[other] { $stops } stops
}, samen { $lost_min }; { $passes ->
    [one] 1 passering
   *[other] { $passes } passeringen
} zonder stop.
share_behind = Het deel erachter kreeg { $share_ratio } van zijn evenredige deel.
crossings_expected = { $expected ->
    [one] 1 doortocht
   *[other] { $expected } doortochten
} te verwachten, geen gezien.
turns_in_front = { $turns ->
    [one] 1 keerpunt
   *[other] { $turns } keerpunten
} ervoor, waar de plattegrond geen rand heeft.
turns_around = { $turns ->
    [one] 1 keerpunt
   *[other] { $turns } keerpunten
} erbij, langs { $rim_fraction } van de open rand.
passes_expected = { $passes ->
    [one] 1 passering
   *[other] { $passes } passeringen
} te verwachten over grond van deze breedte, geen gezien.
strip_shape = { $length_m } lang, { $widest_m } op het breedst; negen tiende ervan ligt binnen { $within_m } van de rand.
turns_along = { $turns ->
    [one] 1 keerpunt
   *[other] { $turns } keerpunten
} langs de binnenkant.
path_nearby = Vlak bij deze plek is { $share_ratio } gereden van wat er gemiddeld op het gazon is gereden.
share_simulated = Simulaties vanaf dit laadstation geven deze plek { $share_ratio } van het gemiddelde van het gazon.

## Evidence against it

gap_nearly_wide = De opening is bijna zo breed als de maaier nodig heeft, of nauwelijks breder: meet het na.
few_turns = Maar { $turns ->
    [one] 1 keerpunt.
   *[other] { $turns } keerpunten.
}
visits_hidden = Bij zulke slechte posities zijn korte passeringen niet te zien.
strip_thin = De strook is smaller dan drie keer de positiefout.
zone_may_be_open = De zone kan goed getekend zijn en met opzet zijn opengesteld.
also_behind_passage = Het deel ligt ook achter een doorgang van { $width_m }.
one_outing_matters = Eén rit die toevallig goed uitvalt, zou deze cijfers sterk veranderen.
luck_leaves_such = Bij ritten zoals deze laat het toeval af en toe zo’n plek over.
look_decides = Welke van de twee het is: { $look ->
    [passage] kijk of er iets in de doorgang staat.
    [width] meet de doorgang met een meetlint.
    [ground] kijk of er iets op die grond staat, of hem afsluit.
    [zone] meet of de zone ligt waar hij getekend is.
    [stuck_spot] bekijk de plek waar de maaier vastloopt.
    [edge] let op hoe ver van de rand de maaier daar keert.
   *[another_log] log nog { $log_h } rijtijd; kan de maaier er komen, dan laat { $told_fraction } van zulke logs dat zien.
}

## Ground of which nothing is decided

not_yet = Er is nog niets mis: { $driven_h } rijtijd is weinig voor { $lawn_m2 }; onbereden plekken van { $widest_m } zijn dan af en toe normaal.
not_yet_until = Er is nog niets mis: { $driven_h } rijtijd is weinig voor { $lawn_m2 }; onbereden plekken van { $widest_m } zijn normaal tot ongeveer { $decided_h } rijtijd.
hidden_by_silence = De log heeft geen posities van de tijd waarin de maaier hier geweest kan zijn (kans { $chance_fraction }).
cause_withheld = Deze log laat niet zien hoe de plattegrond in de tuin ligt; daarom wordt er geen oorzaak genoemd en geen wijziging voorgesteld. Ga er kijken, en controleer de plattegrond of log betere posities.
shown_too_little = De log laat te weinig zien om te zeggen of dit gemist is.

## What to look at where it got stuck

stuck_near = De plek ligt { $distance_m } van { $feature ->
    [zone] de rand van uitsluitingszone “{ $name }”
    [obstacle] de rand van obstakel “{ $name }”
   *[lawn_edge] de rand van het gazon
}: let daar op wortels, een opstapje of zachte grond.
stuck_in_passage = De plek ligt in de doorgang van { $width_m }: let daar op wortels, een opstapje of zachte grond.
stuck_in_passage_near = De plek ligt in de doorgang van { $width_m }, { $distance_m } van { $feature ->
    [zone] de rand van uitsluitingszone “{ $name }”
    [obstacle] de rand van obstakel “{ $name }”
   *[lawn_edge] de rand van het gazon
}: let daar op wortels, een opstapje of zachte grond.
stuck_in_the_open = Op de plattegrond ligt er niets in de buurt: let op wortels, een kuil of zachte grond.
stuck_somewhere = Let op wortels, een kuil of zachte grond.

## What to change

lay_guide_run = Leg een geleidelijn aan met { $wire_m } nieuwe draad, tot het verste eind van { $pocket }, en laat { $outings_of_ten } van de 10 ritten daarlangs gaan{ $longer ->
    [yes] , en laat de maaier { $added_h } per dag langer werken
   *[no] { "" }
}: na { $log_h } zoals in deze log is dan meestal ongeveer { $after_fraction } van { $pocket } bereden, tegen { $before_fraction } als er niets verandert.
move_zone = Verplaats de zone “{ $zone }” { $shift_m } naar waar hij getekend is, want de keerpunten laten zien dat hij ergens anders ligt{ $longer ->
    [yes] , en laat de maaier { $added_h } per dag langer werken
   *[no] { "" }
}: na { $log_h } zoals in deze log is dan meestal ongeveer { $after_fraction } van { $pocket } bereden, tegen { $before_fraction } als er niets verandert.
facing_side = De kant die naar het { $faces_deg } wijst.
shrink_zone = Zet de kant van de zone “{ $zone }” die naar het { $faces_deg } wijst { $shift_m } terug, zodat de weg erlangs naar { $pocket } { $passage_m } breed wordt{ $longer ->
    [yes] , en laat de maaier { $added_h } per dag langer werken
   *[no] { "" }
}: na { $log_h } zoals in deze log is dan meestal ongeveer { $after_fraction } van { $pocket } bereden, tegen { $before_fraction } als er niets verandert.
add_zone = Houd de maaier weg van de plek waar hij vastloopt ({ $spot }), zodat hij vaker bij { $pocket } komt{ $longer ->
    [yes] , en laat hem { $added_h } per dag langer werken
   *[no] { "" }
}: na { $log_h } zoals in deze log is dan meestal ongeveer { $after_fraction } van { $pocket } bereden, tegen { $before_fraction } als er niets verandert.
work_longer = Laat de maaier { $added_h } per dag langer werken: na { $log_h } zoals in deze log is dan meestal ongeveer { $after_fraction } van { $pocket } bereden, tegen { $before_fraction } als er niets verandert.
shift_boundary = Verleg de begrenzing langs { $pocket } { $shift_m } naar buiten{ $longer ->
    [yes] , en laat de maaier { $added_h } per dag langer werken
   *[no] { "" }
}: na { $log_h } zoals in deze log is dan meestal ongeveer { $after_fraction } van { $pocket } bereden, tegen { $before_fraction } als er niets verandert.

## How well a simulated machine fits the log

fit_trusted = Een gesimuleerde machine die rijdt zoals deze ({ $speed_mps }, afgeleid uit { $turns ->
    [one] 1 keerpunt
   *[other] { $turns } keerpunten
} en { $outings ->
    [one] 1 rit
   *[other] { $outings } ritten
}) berijdt net zoveel van het gazon als de log laat zien.
fit_visits_differ = Simulaties berijden meer of minder van dit gazon dan de log laat zien: er ontbreekt iets op de plattegrond, of de machine gedraagt zich niet elke dag hetzelfde. Voorspellingen hebben daarom een ruimere marge.
fit_path_differs = Simulaties leggen een langere of kortere weg af dan de log laat zien. Voorspellingen hebben daarom een ruimere marge.
not_fitted_lanes = Er wordt niets voorspeld: de machine rijdt in banen, en die hangen niet van toeval af.
not_fitted_several_machines = Er wordt niets voorspeld: hier hebben { $machines } machines gewerkt, en er kan er maar één worden nagebootst.
not_fitted_few_turns = Er wordt niets voorspeld: er { $turns ->
    [one] is maar 1 keerpunt
   *[other] zijn maar { $turns } keerpunten
} bij een rand gezien, en er zijn er { $expected } nodig.
not_fitted_no_legs = Er wordt niets voorspeld: in het spoor zitten geen rechte stukken tussen keerpunten.
not_fitted_no_ground = Er wordt niets voorspeld: de plattegrond laat geen grond over om op te rijden.
not_simulated = Er wordt niets voorspeld: { $why }.

## Hours and grass

promise_beyond_hours = { $promised_fraction } binnen { $promised_days ->
    [one] 1 dag
   *[other] { $promised_days } dagen
} is met meer uren niet te halen: daarvoor zou { $needed_h } werk per dag nodig zijn.
promise_needs_hours = { $promised_fraction } binnen { $promised_days ->
    [one] 1 dag
   *[other] { $promised_days } dagen
} vraagt in dit tempo ongeveer { $needed_h } werk per dag; de maaier werkte { $worked_h }, waarvan hij { $driven_h } reed.
promise_beyond_reach = Hoeveel uren de maaier ook werkt, { $promised_fraction } binnen { $promised_days ->
    [one] 1 dag
   *[other] { $promised_days } dagen
} haalt hij niet: er wordt te veel grond gemist. Hij werkte { $worked_h } per dag, waarvan hij { $driven_h } reed.
promise_hours_unknown = De maaier werkte { $worked_h } per dag, waarvan hij { $driven_h } reed; uit deze log is niet op te maken wat { $promised_fraction } binnen { $promised_days ->
    [one] 1 dag
   *[other] { $promised_days } dagen
} zou vragen.
lower_cut_unknown = Uit deze log is niet op te maken of bij de huidige maaihoogte elke plaats bereden is.
lower_cut = Elke plaats die breed genoeg is om te zien, is bij de huidige hoogte bereden (minstens { $visited_fraction } van het gazon): de maaihoogte mag één stap lager.
lower_cut_places_open = Laat de maaihoogte zoals die is: { $places ->
    [one] 1 plaats die breed genoeg is om te zien, is nog niet bereden
   *[other] { $places } plaatsen die breed genoeg zijn om te zien, zijn nog niet bereden
}, en in hoog gras blijft een laag ingestelde maaier steken.
lower_cut_unsure = Laat de maaihoogte zoals die is: van maar { $visited_fraction } van het gazon is zeker dat het bereden is, en in hoog gras blijft een laag ingestelde maaier steken.
grass_log_too_short = Gras dat { $growth_mm } per dag groeit, mag { $allowed_days ->
    [one] 1 dag
   *[other] { $allowed_days } dagen
} wachten tot de maaier terugkomt (een-derderegel); deze log van { $log_days ->
    [one] 1 dag
   *[other] { $log_days } dagen
} is te kort om te zien of het ergens langer duurde.
grass_overdue = { $overdue_fraction } van het gazon moest langer dan { $allowed_days ->
    [one] 1 dag
   *[other] { $allowed_days } dagen
} op de maaier wachten, te lang voor gras dat { $growth_mm } per dag groeit (een-derderegel): er moet vaker overheen worden gereden.
grass_too_many_passes = Elke plaats wordt { $passes } keer bereden in de { $allowed_days ->
    [one] dag
   *[other] { $allowed_days } dagen
} dat het gras kon wachten (een-derderegel): minder uren zijn genoeg en sparen de grasmat.
grass_enough_passes = Er verstreek niet meer dan { $allowed_days ->
    [one] 1 dag
   *[other] { $allowed_days } dagen
} tussen twee passeringen, zoals gras dat { $growth_mm } per dag groeit nodig heeft (een-derderegel).

## What a change brought

lawn_unknown = Uit deze logs is niet op te maken of het gazon als geheel beter bereden wordt.
lawn_more = Er wordt { $points } procentpunt meer van het gazon bereden dan voorheen.
lawn_less = Er wordt { $points } procentpunt minder van het gazon bereden dan voorheen.
lawn_alike = Voor het gazon als geheel is er geen verschil dat groter is dan het toeval van een nacht.
pockets_mended = Verholpen: { $pockets }.
pockets_better = Beter: { $pockets }.
pockets_new = Nieuw: { $pockets }.
pocket_compared = { $pocket }: { $before_fraction } vóór, { $after_fraction } na; { $change ->
    [mended] { $within_luck ->
        [yes] bijna alles wordt nu bereden, maar dat zou toeval alleen ook doen bij meer dan één op de tien van zulke paren logs: kijk na een paar nachten opnieuw
       *[no] bijna alles wordt nu bereden
    }
    [better] er wordt meer van bereden dan toeval zou opleveren
    [new] voorheen werd deze plek wel bereden
   *[unchanged] { $within_luck ->
        [yes] er wordt meer van bereden, maar niet meer dan toeval kan opleveren
       *[no] geen verschil dat groter is dan toeval
    }
}.
change_decided = { $pocket }: beslist na { $decided ->
    [one] de eerste
   *[other] { $decided }
} van { $nights } nachten, met een foutkans van hooguit 5%, hoe vaak u ook hebt gekeken.
change_open = { $pocket }: { $more ->
    [one] nog één nacht zoals deze zou
   *[other] nog { $more } nachten zoals deze zouden
} de doorslag geven.

## What to beware of

blades_on_lawn = Bewegende messen: zet de maaier stil en stel hem buiten werking voordat u hem aanraakt; houd kinderen en huisdieren van het gazon zolang hij werkt.
blades_near = Bewegende messen: zet de maaier stil en stel hem buiten werking voordat u in de buurt ervan werkt.
outline_from_drive = Er is geen plattegrond gegeven: de omtrek is getekend naar wat er gereden is. Gazon waar de maaier nooit in de buurt kwam, telt niet mee, en waar hij omheen reed, geldt als eiland.
plan_fault = Plattegrond: { $fault }.
dig_at_spot = Voordat u bij een vastloopplek graaft: laat opzoeken waar kabels en leidingen in de grond liggen; particuliere kabels en leidingen zijn daarbij niet aangegeven. Wortels kunnen van een beschermde boom zijn.
dig = Voordat u graaft: laat opzoeken waar kabels en leidingen in de grond liggen; particuliere kabels en leidingen zijn daarbij niet aangegeven.
zone_may_protect = Een zone kan wortels, bedrading of mensen beschermen: ga na waarom hij er is voordat u hem verandert.
hours_by_day = Voeg alleen overdag uren toe: ’s nachts zijn er kleine dieren op pad.
driven_in_the_dark = { $dark_h } rijden viel in het donker, wanneer egels en andere kleine dieren buiten zijn: laat hem overdag werken.
beyond_the_line = Voorbij de lijn kan bestrating, water, een helling of grond van een ander liggen: kijk er voordat u de lijn verlegt.
look_before_zone = Bekijk eerst de grond: voor een wortel, een rand of natte grond die te verhelpen is, is geen zone nodig.
guide_exit_unknown = De log laat niet zien waar deze machine een geleidelijn verlaat; aangenomen is: ergens op de laatste twee vijfde. Stel de machine, als dat kan, zo in dat hij de lijn pas dicht bij het eind verlaat.
local_codes = Plaatselijke voorschriften en de handleiding van de machine zelf gaan voor.
other_reasons = Een verschil zegt wat er in deze logs bereden is. Er kan iets anders achter zitten dan de wijziging: het weer, andere uren, een mes, iemands tuintafel.
at_equal_hours = De twee kanten verschillen in rijtijd; ze zijn vergeleken na evenveel uren.
plan_unsure_before = De log laat niet zien hoe de plattegrond vóór de wijziging in de tuin ligt; plaatsen kunnen er daar naast zitten.
plan_unsure_after = De log laat niet zien hoe de plattegrond na de wijziging in de tuin ligt; plaatsen kunnen er daar naast zitten.
place_often = { $visits ->
    [one] Eén keer
   *[other] { $visits } keer
} bereden, het gazon gemiddeld { $lawn_visits } keer. Is het gras toch lang, let dan op de messen, de maaihoogte, de groei op die plaats en op hellingen.
place_seldom = Zelden bereden: { $visits ->
    [one] één keer
   *[other] { $visits } keer
}, het gazon gemiddeld { $lawn_visits } keer. Kijk wat de weg erheen smal maakt: een doorgang, een hoek, een rand dichtbij.
place_few = Tot nu toe { $visits ->
    [one] één keer
   *[other] { $visits } keer
} bereden, het gazon gemiddeld { $lawn_visits } keer: minder, maar niet meer verschil dan toeval alleen geeft. Meer nachten geven uitsluitsel.
place_never = Gemist: het ligt in plek { $pocket } ({ $area_m2 }).
place_gap = In deze log niet bereden, maar de plek is zo klein dat toeval alleen al zo’n plek overlaat. Log nog een nacht en vraag het opnieuw.
place_not_yet = Nog niet bereden: het ligt in { $pocket }, wat nog door toeval te verklaren is. Na { $decided_h } rijtijd in totaal valt de beslissing.
place_not_yet_open = Nog niet bereden: het ligt in { $pocket }, wat nog door toeval te verklaren is. Log meer nachten.
place_unseen = Uit deze log is het niet op te maken: het ligt in { $ground }, grond zonder gegevens. Log een nacht zonder uitval op die plaats.
place_is_stuck_spot = De maaier verloor hier tijd: vastloopplek { $spot }, samen { $lost_min }.
place_off_lawn = Het ligt { $distance_m } buiten het gazon, waar niets wordt geteld. Is het wel gazon, dan ontbreekt het op de plattegrond.
place_elsewhere = Het ligt { $distance_m } van het gazon: in een andere tuin, of een van de getallen klopt niet.
place_beyond_outline = Uit deze log is het niet op te maken: het ligt { $distance_m } buiten het gazon zoals dat naar de ritten getekend is. Is het wel gazon, teken dan een plattegrond waar het op staat.
place_in_island = Nooit bereden: het ligt in eiland { $island } ({ $area_m2 }), waarbij de maaier vanaf verschillende kanten keerde. Een border, een boom, een vijver, of gazon achter iets? Een plattegrond geeft uitsluitsel.
place_cannot_tell = Uit deze log is het niet op te maken: de posities zitten er ongeveer { $error_m } naast, en binnen die afstand is de grond zowel vaak als nooit bereden. Log met een betere ontvanger, of langer.
place_compared = { $said ->
    [none] De plaats waarnaar gevraagd is
   *[other] “{ $said }”
}: voorheen { $before_visits ->
    [one] één keer
   *[other] { $before_visits } keer
} bereden in { $before_h } rijtijd, sindsdien { $after_visits ->
    [one] één keer
   *[other] { $after_visits } keer
} in { $after_h }.
place_needs_width = Zonder maaibreedte wordt niet geteld hoe vaak er gereden is: meet de breedte, geef die op en vraag het opnieuw.
nights_unknown = Uit deze logs is niet op te maken hoeveel de ene nacht van de andere verschilt; daarom is van geen enkel verschil te zeggen dat het echt is.

## Words for a course

compass = { $eighth ->
    [0] noorden
    [1] noordoosten
    [2] oosten
    [3] zuidoosten
    [4] zuiden
    [5] zuidwesten
    [6] westen
   *[7] noordwesten
}

## What our own words mean

cause = { $value ->
    [walled_off] geen toegang
    [narrow_passage] smalle doorgang
    [edge_band] strook langs de rand
    [zone_misplaced] lijn ligt niet waar hij getekend is
    [beyond_stuck_spot] achter een vastloopplek
    [too_few_visits] maaier komt te zelden
    [too_little_time] niet lang genoeg gereden
   *[undetermined] niet te zien in deze log
}
asked-short = { $value ->
    [place_often] Bereden zoals de rest
    [place_seldom] Zelden bereden
    [place_few] Tot nu toe minder bereden
    [place_never] Gemist
    [place_gap] Niet bereden
    [place_not_yet] Nog niet
    [place_not_yet_open] Nog niet
    [place_is_stuck_spot] De maaier loopt hier vast
    [place_off_lawn] Buiten het gazon
    [place_elsewhere] Ergens anders
    [place_in_island] Nooit bereden
    [place_needs_width] Niet geteld
   *[place_cannot_tell] Niet op te maken uit deze log
}
cause-meaning = { $value ->
    [walled_off] De machine kan er niet in: de opening is te smal, of er staat iets.
    [narrow_passage] De toegang is zo smal dat de machine hem zelden vindt.
    [edge_band] Een strook langs de rand ligt buiten de lijn waar de machine keert.
    [zone_misplaced] De machine keert bij een lijn die ergens anders ligt dan op de plattegrond.
    [beyond_stuck_spot] De machine loopt vast op weg erheen.
    [too_few_visits] De weg is vrij, maar de ritten komen er te zelden.
    [too_little_time] Het hele gazon wordt bereden zoals het hoort; er zijn alleen meer uren nodig.
   *[undetermined] Deze log laat niet zien waardoor.
}
suggestion = { $value ->
    [guide_run] Leg een geleidelijn aan
    [zone_move] Verplaats een uitsluitingszone
    [zone_shrink] Maak een uitsluitingszone kleiner
    [zone_add] Voeg een uitsluitingszone toe
    [more_hours] Laat de maaier langer werken
   *[boundary_shift] Verleg de begrenzing
}
suggestion-inline = { $value ->
    [guide_run] leg een geleidelijn aan
    [zone_move] verplaats een uitsluitingszone
    [zone_shrink] maak een uitsluitingszone kleiner
    [zone_add] voeg een uitsluitingszone toe
    [more_hours] laat de maaier langer werken
   *[boundary_shift] verleg de begrenzing
}
noise-source = { $value ->
    [station_scatter] de spreiding bij stilstand in het laadstation
    [rest_scatter] de spreiding bij stilstand elders
    [driving_roughness] de ruwheid van het spoor tijdens het rijden
    [device_card] de kaart van de ontvanger
    [stated] de instellingen
    [receiver_claim] de eigen opgave van de ontvanger
    [dilution_of_precision] de stand van de satellieten (DOP) maal een gebruikelijke afstandsfout
   *[default] een aangenomen standaardwaarde, omdat de log er geen geeft
}
promise = { $value ->
    [kept] nagekomen
    [broken] niet nagekomen
   *[cannot_tell] niet op te maken uit deze log
}
fix-quality = { $value ->
    [unknown] niet vermeld
    [autonomous] alleen satellieten
    [differential] differentieel
    [precise] precisiedienst
    [rtk_fixed] RTK fixed
    [rtk_float] RTK float
    [estimated] gegist bestek
    [manual] met de hand ingevoerd
    [simulated] simulator
   *[other] onbekende code
}
pocket-change = { $value ->
    [mended] verholpen
    [better] beter
    [new] nieuw
   *[unchanged] onveranderd
}
out-of-reach = { $value ->
    [edge] een strook langs de rand of een hoek: de machine keert voordat de maaischijf er is
   *[cut_off] afgesloten achter een te smalle doorgang, of zonder enige toegang
}
presence = { $value ->
    [came] pas later: daarvoor werd er op die plaats gewoon gereden
    [went] alleen in het begin: daarna werd er op die plaats gewoon gereden
    [came_and_went] een tijd lang: ervoor en erna werd er op die plaats gewoon gereden
   *[throughout] de hele tijd
}
way-home = { $value ->
    [guide_run] langs een geleidelijn
    [boundary] langs de begrenzing
   *[straight] recht over het gazon
}
lower-cut = { $value ->
    [yes] ja
    [not_yet] nog niet
   *[cannot_tell] niet op te maken uit deze log
}
growth-source = { $value ->
    [settings] uit de instellingen
   *[temperature] uit de gemiddelde temperatuur
}
failure-reason = { $value ->
    [unreadable] onleesbaar
    [damaged] beschadigd
    [clock] klok
    [plan] plattegrond
    [settings] instellingen
    [analysis] analyse
    [time] duurde te lang
    [memory] te weinig geheugen
    [died] afgebroken
   *[pieces] in stukken
}
fit-figure = { $value ->
    [visited_fraction] bereden deel van het gazon, %
    [path_m] gereden afstand, { $unit }
    [visits_map_correlation] kaart van passeringen, correlatie met het gemiddelde van de simulaties
    [leg_m] recht stuk tussen twee keerpunten, mediaan, { $unit }
   *[revisit_path_m] gereden afstand tussen twee passeringen van een plaats, mediaan, { $unit }
}

## Stuck spots

stuck-came = Meestal reed hij daarbij naar het { $course_deg }.

## page: summary

count-pocket = { $count ->
    [one] 1 plek
   *[other] { $count } plekken
}
count-area = { $count }, { $area }
about-more-driving-are = Er is nog ongeveer { $hours } rijtijd nodig.
driven-over-percent-area = { $percent } van { $area } is bereden.
driven-over-percent-area-range = { $percent } van { $area } is bereden ({ $range }, met een kans van 90%).
lost-at = { $time } verloren bij { $id }
suggestion-by = { $value ->
    [guide_run] Leg een geleidelijn van { $length } aan
    [zone_move] Verplaats een uitsluitingszone { $length }
    [zone_shrink] Maak een uitsluitingszone { $length } kleiner
    [zone_add] Voeg een uitsluitingszone van { $length } toe
    [more_hours] Laat de maaier { $length } langer werken
   *[boundary_shift] Verleg de begrenzing { $length }
}
nine-ten-logs-pocket = Negen van de tien simulaties: { $range_2 } van de plek met de wijziging, { $range } als er niets verandert.{ $more ->
    [0] { "" }
    [one] { " " }Hieronder staat nog 1 wijziging.
   *[other] { " " }Hieronder staan nog { $more } wijzigingen.
}
let-run-on-after = Laat de maaier doorwerken. Wat na { $hours } rijtijd in totaal nog niet bereden is, is meer dan pech.
luck-leaves-such-gap = Kans dat toeval alleen een plek als { $id } overlaat: { $chance }.
sure-not-driven-over = { $percent } zeker dat { $id } niet bereden is
sure-change-helps = { $percent } zeker dat { $id } helpt
change-brings-its-gain = In zoveel van de simulaties ging de plek erop vooruit en klopte de voorspelling.
none-it-shows = Niets wat deze log kan laten zien
how-much-driven-over = Hoeveel er bereden is, hangt af van de maaibreedte, en die is niet opgegeven; hieronder staat de tabel voor elke breedte.
not-counted = Niet geteld
outline-drawn-from-log = De omtrek is naar de log zelf getekend, met randen die tot op ongeveer { $error } kloppen: gazon waar de maaier nooit in de buurt kwam, telt niet mee.
asked-about = { $count }, samen { $area }, waarbij de maaier vanaf verschillende kanten keerde en waar hij nooit in kwam: borders, bomen, vijvers, of gazon achter iets? Niet meegeteld als gazon.
visit = Bezoek:
quote-open = “
quote-close = ”
asked-place = De plaats waarnaar gevraagd is
asked-row = Bereden: { $visits }. Laatst: { $last }; gewoonlijk { $due }.
asked-row-never = Bereden: { $visits }.
asked-mark = { $id }, gevraagd: { $said }
asked-visits = { $number } keer in deze log ({ $low } tot { $high })
asked-visits-beside = { $visits }; het gazon gemiddeld { $mean } keer
asked-due = eens per { $hours } rijtijd
walk-first-hint = loop eerst langs de rand bij { $place }: over { $length } daarvan keerde de maaier nergens
walk-first = Loop eerst langs de rand bij { $place }: over { $length } daarvan keerde de maaier nergens.
nothing-needs-reason-again = Er valt niets te verklaren
this-log-cannot-tell = Niet op te maken uit deze log
not-by = Niet door toeval
change-nothing-garden-on = Verander op grond van deze log niets in de tuin.
measure-width-cutting-disc = Meet de breedte van de maaischijf en laat opnieuw tellen.
walk-round-lawn-with = Loop met de logger om het gazon en maak er een plattegrond van: wat buiten de ritten ligt, is in de log niet te zien.
no-ground-left-out = Alles wat is overgeslagen, is door toeval te verklaren.
one-count-no-interval = Eén telling, geen interval
lawn-driven-over-with = van het gazon bereden, met een kans van 90%.

## terminal: mod

count-smaller-pocket = { $count ->
    [one] 1 kleinere plek
   *[other] { $count } kleinere plekken
}
count-place = { $count ->
    [one] 1 plaats
   *[other] { $count } plaatsen
}
count-time = { $count ->
    [one] 1 keer
   *[other] { $count } keer
}
at-cm = { $percent } bij { $width }
depends-on-cutting-width = hangt af van de maaibreedte, en die is niet opgegeven: { $list }
pockets-from = plekken vanaf { $length } breed ({ $area })
log-good-enough-can = De log is goed genoeg: hij kan gemiste { $smallest } laten zien.
log-too-short-its = De log is te kort: de posities zijn goed, maar pech alleen kan plekken tot { $length } breed overlaten ({ $area }).
log-not-good-enough = De log is niet goed genoeg: hij kan alleen gemiste { $smallest } laten zien.
also-said = Ook: { $said }
lawn-percent-number-area = { $percent } van het gazon, { $number } van { $area } ({ $interval })
missed-area = gemist { $area }
not-yet = nog niet { $area }
without-evidence = zonder gegevens { $area }
none-told = niet op te maken uit deze log
none-known = niets binnen de getekende omtrek; wat daarbuiten ligt, is uit deze log niet op te maken
none-known-narrower = niets vanaf { $width } breed binnen de getekende omtrek; smallere plekken, en wat daarbuiten ligt, kan deze log niet laten zien
none-narrower = niets vanaf { $width } breed; smallere plekken kan deze log niet laten zien
none-but-luck = niets; wat is overgeslagen, is door toeval te verklaren
none-shown-unseen = er is niets te zien, maar van { $area } zijn er geen gegevens: niet op te maken uit deze log
smaller-gaps = kleine resten { $area }
of-id = { $id } { $share } van { $area }
all-luck-does-not = { $count }, samen { $area }, meer dan door toeval te verklaren is
and-more = en { $more }
also-possible = ook mogelijk: { $join }
decided-after-driving-all = beslist na { $hours } rijtijd in totaal
luck-still-explains-them = { $count }, { $area }: nog door toeval te verklaren; { $decide }
lost-count = { $count }, { $time } verloren
lost-within = { $count }, { $time } verloren, binnen { $length } van { $place }
more-spots = en nog { $spots }
ladder-title = Kleiner en groter
ladder = Naar grootte, gemiddelde van gesimuleerde logs: { $list }.
rung = { $size }: { $fraction }{ $lawn ->
    [none] { "" }
   *[other] , gazon { $lawn }
}{ $chosen ->
    [yes] { " " }(deze)
   *[no] { "" }
}
change-set = Samen, eerst wat voor het werk de meeste grond oplevert, elk geteld na de vorige: { $list }. Van het gazon is dan { $lawn } bereden.
set-step = { $id } { $area } meer ({ $fraction } van deze plekken)
visits-title = { $count ->
    [one] 1 bezoek aan deze tuin
   *[other] { $count } bezoeken aan deze tuin
}
visits-when = Wanneer
visits-who = Wie
visits-machine = Maaier
visits-said = Wat de klant zei
visits-changed = Wat er is veranderd
visits-sure = Beslist
visits-pocket = { $id } { $before } → { $after }
visits-decided = { $decided ->
    [none] { $more ->
        [none] niet beslist
        [1] niet beslist: nog één zo’n nacht
       *[other] niet beslist: nog { $more } zulke nachten
    }
    [beyond_luck] beslist
    [1] beslist na de eerste nacht
   *[other] beslist na { $decided } nachten
}
nights-differ = Zoveel verschillen afzonderlijke logs: negen van de tien tuinen zijn klaar na { $hours } rijtijd.
pocket-this-log-if = Plek: { $percent } in deze log, { $fraction } als er niets verandert, { $fraction_2 } met de wijziging{ $sure ->
    [none] { "" }
   *[other] ; { $sure } zeker
}.{ $more ->
    [0] { "" }
    [one] { " " }En nog 1 wijziging.
   *[other] { " " }En nog { $more } wijzigingen.
}
lawn-within-percent-days = { $percent } van het gazon binnen { $days }: { $word }{ $probability ->
    [none] { "" }
   *[other] { " " }(kans op nakomen: { $probability })
}
one-every-driven-fixes = { $fixes }, één per { $time }; { $path } gereden in { $time_2 }{ $silent ->
    [none] { "" }
   *[other] , { $silent } zonder meetpunten
}
log-too-short-positions = De log is te kort: de posities zijn goed, maar hij laat nog niets van een gazon zien.
log-not-good-enough-shows = De log is niet goed genoeg: hij laat niets van een gazon zien.
not-looked-for-without = niet gezocht zonder maaibreedte
after-how-many-hours = na hoeveel uur de beslissing valt, is niet te zeggen

## terminal: inspection

count-fix = { $count ->
    [one] 1 meetpunt
   *[other] { $count } meetpunten
}
count-fix-repeats-the = { $count ->
    [one] 1 meetpunt herhaalt de vorige positie
   *[other] { $count } meetpunten herhalen de vorige positie
}
around-lat = rond { $lat_deg }, { $lon_deg }
east-by = { $length } oost-west bij { $length_2 } noord-zuid, { $middle }
made-by = { $format }, gemaakt door { $id }
its-bytes = { $percent } van de bytes
from-count = { $count } uit { $share }{ $resolution ->
    [none] { "" }
   *[other] , stappen van { $resolution }
}
first-on = ; voor het eerst op regel { $count }
first-on-line = ; voor het eerst op regel { $count }: { $id }
to-id = { $id } tot { $id_2 }
one-every = { $fixes }, één per { $time }
driving-time = rijden { $time }
at-station = in het laadstation { $time }
standing-elsewhere = stilstand elders { $time }
silent-time = uitval { $time }
from-after-start-further = { $time } vanaf { $time_2 } na het begin, { $length } verderop
shorter-value = ; en { $value } kortere
middle-below-number-number = { $number } in het midden, 95% onder { $number_2 }
last-digit-count-again = { $count } tot op het laatste cijfer
from-fix-fix-length = { $length } van meetpunt tot meetpunt
drifting-length = { $length } drift{ $time ->
    [none] { "" }
   *[other] { " " }over ongeveer { $time }
}
standard-deviation-per-axis = { $join } (standaardafwijking per as)
from-figures = { $figures }; uit { $word }
local-metres-no-place = in plaatselijke meters, zonder geografische coördinaten
no-bytes = geen bytes
no-dates = geen datums
not-known = niet bekend
dark-of-driven = { $dark } van { $driven } rijden{ $between }: egels en andere kleine dieren zijn dan buiten
in-the-dark = In het donker: { $said }.
dark-between = { "" } (burgerlijke schemering ’s avonds { $dusk }, ’s ochtends { $dawn }{ $zone })

## terminal: comparison

count-night = { $count ->
    [one] 1 nacht
   *[other] { $count } nachten
}
both-plans-have-area = { $area } die op beide plattegronden staat
built-as = { $value ->
    [suggested] uitgevoerd zoals voorgesteld
    [otherwise] anders uitgevoerd
   *[nothing] niet uitgevoerd zoals voorgesteld
}
predicted-for = { $built }; voorspeld voor { $id }: { $percent } ({ $interval }), gemeten { $percent_2 }: { $held }
driving-percent = { $percent } ({ $interval }){ $equal ->
    [none] { "" }
   *[other] , { $equal } na evenveel uren
}; { $count }, { $hours } rijtijd
smaller-pockets = en { $pockets } kleinere

## page: before digging

plan-on-paper = Een plattegrond, op papier beproefd
reaches-everything = Volgens deze plattegrond kan de machine overal komen.
leaves-parts = { $count ->
    [one] Eén deel
   *[other] { $count } delen
} van het gazon ({ $area }) { $count ->
    [one] is
   *[other] zijn
} niet te bereiken.
promise-needs = { $percent } binnen { $count ->
    [one] 1 dag
   *[other] { $count } dagen
} vraagt ongeveer { $hours } werk per dag.
promise-not-kept = { $percent } binnen { $count ->
    [one] 1 dag
   *[other] { $count } dagen
} is met meer uren alleen niet te halen.
typical-run = Het gazon zoals een doorsnee simulatie het achterlaat na { $count ->
    [one] 1 dag
   *[other] { $count } dagen
} met elk { $hours } werk. Donkerdere grond is vaker bereden; gearceerde grond is gemist.
count-day = { $count ->
    [one] 1 dag
   *[other] { $count } dagen
}
nine-in-ten-gardens = in negen van de tien simulaties { $low } tot { $high }
give-width-for-days = Geef op hoe breed de maaischijf maait (machine.cut_width_m), en zorg dat er ruimte is voor de machine.
trim-by-hand = { $area } langs randen en in hoeken blijft lang: knip dat met de hand bij
boundary-with-slack = rond het gazon en zijn zones; verbindingen daartussen en extra lengte bij hoeken komen erbij
no-way-through = geen doorgang
done-after = { $share } van de simulaties na { $count ->
    [one] 1 dag
   *[other] { $count } dagen
}
share-of-driving = Het aandeel is dat van ritten zonder geleidelijn; bij 100% wordt elke vierkante meter achter de doorgang even vaak bereden als elders. Wat bereden is, komt uit de simulaties, mét de geleidelijnen.
from-middle = midden bij { $place }
assumed-machine = Een machine die met zijn midden { $setback } voor de rand keert en met { $speed_mps } rechtdoor rijdt tot hij op een toevallig moment keert. Zet machine.past_boundary_m, machine.speed_mps en de werktijden op wat voor uw machine geldt.
assumed-level = Vlakke, droge grond: de plattegrond kent geen hoogten, dus hellingen en zachte grond zitten niet in de verwachting.

## page: handout

not-driven-over-up = Niet bereden: { $area }, tot { $length } breed
mower-stood-here-all = De maaier stond hier { $times ->
    [0] nooit
    [1] één keer
    [2] twee keer
   *[other] { $times } keer
} stil, samen { $time }
pocket-driven-over-this = { $why } Van de plek is in deze log { $percent } bereden; { $fraction } is te verwachten als er niets verandert, { $fraction_2 } met de wijziging.
promised-lawn-within-percent = Toegezegd: { $percent } van het gazon binnen { $days }. { $word }.
more-on-page-on = Nog { $left_out } op de pagina op het scherm.

## page: site_facts

count-way = { $count ->
    [one] 1 weg
   *[other] { $count } wegen
}
about-count = { $count } van ongeveer { $number }
usually-out-began-along = Gewoonlijk { $time } op pad{ $charging ->
    [none] { "" }
   *[other] ; { $charging } in het laadstation tussen twee ritten
}. { $count ->
    [one] 1 begon
   *[other] { $count } begonnen
} langs een geleidelijn.
brackets-usual-time-join = { $join }; tussen haakjes de gebruikelijke tijd.
day-hours = { $hours } per dag
between-first-departure-last = Tussen het eerste vertrek en de laatste terugkeer, waarvan { $hours } rijden. { $said }
growth-a-day = { $length } per dag
tenth-lawn-steeper-steepest = Een tiende van het gazon is steiler. Het steilste deel ligt bij { $place }.
not-logged = niet gelogd
more-than = meer dan uren alleen

## page: compare

before-after = Vóór en na

found-when = { $value ->
    [before] vóór
   *[after] na
}

## page: facts

about-number = ongeveer 1 op { $number }
long-driven-over-times = { $length } lang, { $number } keer zo vaak bereden als het gazon gemiddeld, hooguit { $count }.
wire-length = { $length } draad
shift-length = { $length } verschuiven
more-day = { $hours } per dag erbij
less-new-than-chance = vindt minder nieuwe grond dan bij toevallig rijden (efficiëntie { $figure })
new-as-chance = vindt nieuwe grond zoals bij toevallig rijden (efficiëntie { $figure }; 100% is zonder overlap)
more-new-than-chance = vindt meer nieuwe grond dan bij toevallig rijden (efficiëntie { $figure }; 100% is zonder overlap)
hardly-twice = rijdt bijna nergens twee keer (efficiëntie { $figure })
reach-both = 95% na { $first }, 99% na { $second } rijtijd
reach-95 = 95% na { $after } rijtijd, 99% onbereikbaar
reach-99 = 99% na { $after } rijtijd
reach-none = 95% en 99% onbereikbaar
outings-sent-along-percent = { $percent } van de ritten erlangs
half-lawn-driven-over = De helft van het gazon is minstens zo vaak bereden; het gemiddelde is { $number }.
half-waits-are-shorter = De helft van de wachttijden is korter. Negen op de tien: { $interval_h }. 99 op de 100: { $interval_h_2 }.
less-than = minder dan 1 op 10.000
cannot-be = niet te zeggen
not-counted-again = niet geteld
pocket-again = de plek
whole-lawn = het hele gazon
longer-than-this-log = langer dan deze log
not-told-apart-yet = nog niet onderscheiden

## page: page

count-log-file = { $count ->
    [one] 1 logbestand
   *[other] { $count } logbestanden
}
last-visit-longer-ago = Aan het eind van de log langer dan { $hours } geleden bereden
missed-area-again = gemist, { $area }
stuck-lost = vastgelopen, { $time } verloren
not-yet-area = nog niet, { $area }
not-yet-heading = Nog niet: { $count } waarover meer uren beslissen
to-start = { $start } tot { $end } ({ $zone_words })
driving-from = { $span }. { $driven } rijden, uit { $logs }.
without-evidence-area = { $area } zonder gegevens. { $said }
outside-boundary-for-after = { $length } buiten de begrenzing gedurende { $time }, { $time_2 } na het begin; { $came_back ->
    [yes] hij kwam uit zichzelf terug
   *[no] binnen deze log kwam hij niet terug
}.
silence-after-start-may = { $time } uitval, { $time_2 } na het begin, { $place }: de maaier kan daar hebben stilgestaan, hooguit zo lang.
machine-efficiency = De machine { $efficiency }.
probability-kept-percent-again = Kans dat de toezegging wordt nagekomen: { $percent }.
lawn-within-percent-days-probability = { $percent } van het gazon binnen { $days }. { $probability }
lawn-report = Gazonrapport
times-driven-over-darker = Aantal keer bereden (donkerder: vaker)
less-than-twice = minder dan twee keer
usual-time-between-two = Gewone tijd tussen twee passeringen (donkerder: vaker)
time-again = op tijd
charging-station = laadstation
without-dates = zonder datums
out-reach = onbereikbaar

## page: method

count-outing = { $count ->
    [one] 1 rit
   *[other] { $count } ritten
}
lawn-counted-squares-this = Het gazon is geteld in vierkante vakjes met deze zijde; dat alleen verschuift de uitkomst met ongeveer { $number } procentpunt.
standard-deviation-per-axis-from = Standaardafwijking per as, uit { $word }.
plan-offset = { $east } oost, { $north } noord, { $turned }° gedraaid
plan-moved-by-this = Zoveel is de plattegrond verschoven om op de log te passen; tot op { $length } bekend.
known-within-no-more = Bekend tot op { $length }: niet meer dan toeval, dus de plattegrond blijft zoals hij getekend is.
from-one = Uit { $fixes }, één per { $time }.
while-driving = Tijdens het rijden; { $outings }.
drift-length = { $length } drift
line-count = regel { $count }
default-error = aangenomen positiefout
from-plan = van de plattegrond
from-log-itself-again = uit de log zelf
number-outings-not-known = aantal ritten niet bekend

## morning

count-garden = { $count ->
    [one] 1 tuin
   *[other] { $count } tuinen
}
count-thing = { $count ->
    [one] 1 bewerking
   *[other] { $count } bewerkingen
}
your-delivery = { $gardens } van { $count } hebben sinds { $since } niets gestuurd: dat ligt aan uw aanlevering (uploaden, kaarten, netwerk), niet aan de tuinen.
is-mended = { $garden }: { $alarm } sinds { $since } is verholpen sinds { $mended }.
is-known = { $said ->
    [none] { "" } (bekend)
   *[other] { "" } (bekend: { $said })
}
alarm = { $value ->
    [missed_pocket] gemiste grond
    [stuck_spot] loopt vast
    [lost_hours] rijdt minder uren
    [less_visited] minder bereden
    [absent] geen log
    [receiver_worse] ontvanger slechter
    [silences] lange uitval
   *[promise] toezegging niet nagekomen
}
bring = { $value ->
    [missed_pocket] Neem de plattegrond, een meetlint en piketpaaltjes mee
    [stuck_spot] Neem een spade, graszoden of planken mee
    [lost_hours] Neem een accu en contactreiniger mee
    [less_visited] Neem reservemessen en de pagina van de tuin mee
    [absent] Neem een opgeladen logger en een geheugenkaart mee
    [receiver_worse] Neem een ontvanger en een antennekabel mee
    [silences] Neem een ontvanger en een opgeladen logger mee
   *[promise] Neem de werktijden mee, om overdag uren toe te voegen
}
night-visit-with-log = Nacht van { $id }: { $gardens } van { $count } te bezoeken, { $with_log } met een log{ $resting ->
    [0] { "" }
   *[other] , { $resting } in rust
}, { $count_2 } mislukt

## words/comparison

points-fraction = { $fraction } procentpunt
interval-points = { $points } (90%-interval { $low } tot { $high } procentpunt)
interval-not-worked-out = { $points } (geen interval)
points-from-night-night = { $number } procentpunt van nacht tot nacht
standard-deviations-points-from = standaardafwijkingen: { $number } procentpunt door positiefouten, { $nightly }
to-percent = { $percent } ({ $number } tot { $percent_2 })
how-nights-differ-cannot = hoeveel nachten verschillen, is uit zo weinig nachten niet op te maken

## terminal: hints

log-driving-more-give = log nog { $hours } rijtijd en geef alle logs samen; wat nu nog niet beslist is, is het dan wel
promise-give-logs-as = de toezegging gaat over { $days }: geef de logs van zoveel dagen samen
measure-width-cutting-disc-give = meet de breedte van de maaischijf en geef die op met --cut-width 22cm
walk-once-round-lawn = loop één keer met een ontvanger om het gazon; tussock plan from-walk maakt daar een plattegrond van, en --plan leest die
mended-plan-is-written = analyse --write-plan BESTAND schrijft de plattegrond zoals de tuin er volgens de log uitziet

## gpx

missed-widest = Gemist: { $area }, hooguit { $length } breed. { $said }
stuck-lost-within = Vastgelopen: { $count }, { $time } verloren, binnen { $length }. { $said }
suggested-guide = Voorgestelde geleidelijn. { $said }
tussock-id = tussock { $id }
tape-figures = { $figures } Meetlint: { $tape }.
ground-mower-left-out = Grond die de maaier heeft overgeslagen, en plaatsen waar hij tijd verloor.

## Checks

checks-hold = { $held ->
    [0] Geen van de { $all } controles klopt
    [one] { $all ->
        [one] De enige controle klopt
       *[other] 1 van de { $all } controles klopt
    }
   *[other] { $held } van de { $all } controles kloppen
}
checks-say = { $sum }; { $fails }
check = { $value ->
    [fixes_left_out] Weggelaten meetpunten tegenover hun voorspelling
    [halves_of_log] De ene helft van de log tegenover de andere
    [plan_place] De ligging van de plattegrond tegenover de keerpunten
    [turns_at_edges] Keerpunten tegenover elke rand van de plattegrond
    [drawn_garden] Een tuin getekend met de nagebootste machine tegenover de log
    [cell_sum] De vakjes van de kaart tegenover het hoofdcijfer
    [as_logged] Zoals gelogd tegenover gecorrigeerd
    [two_roads] Het aangepaste spoor tegenover de gecorrigeerde telling zoals gelogd
    [silences] Uitval tegenover wat als gemist geldt
   *[shown_ground] Wat de log zou laten zien tegenover de kaart
}
check-fails = { $value ->
    [fixes_left_out] meetpunten zitten er verder naast dan opgegeven
    [halves_of_log] de twee helften van de log liggen niet op elkaar
    [plan_place] keerpunten liggen niet gebundeld bij de randen van de plattegrond
    [turns_at_edges] keerpunten liggen niet op de randen van de plattegrond
    [drawn_garden] de machine rijdt niet zoals het model ervan
    [cell_sum] de kaart telt niet op tot het hoofdcijfer
    [as_logged] de telling zoals gelogd spreekt de gecorrigeerde tegen
    [two_roads] twee manieren van tellen spreken elkaar tegen
    [silences] gemiste grond kan tijdens uitval bereden zijn
   *[shown_ground] de breedte die te zien is, is verhoogd tot die van onbesliste grond
}
check-fails-edge = keerpunten liggen niet op de rand in het { $edge_deg }
check-is = { $value ->
    [fixes_left_out] { $number } keer de opgegeven fout
    [halves_of_log] { $length } uit elkaar
    [plan_place] { $percent } van de keerpunten verklaard
    [turns_at_edges] { $number } keer wat een rand er hooguit naast mag zitten
    [drawn_garden] rechte stukken { $number } uit elkaar (natuurlijke logaritme van hun verhouding)
    [cell_sum] { $points } procentpunt uit elkaar
    [as_logged] { $points } procentpunt uit elkaar
    [two_roads] { $number } standaardafwijkingen uit elkaar
    [silences] een kans van hooguit { $percent }
   *[shown_ground] { $length }
}

## page: parts of every page

show-on-map-id = toon op de kaart, { $id }
show-on-map = toon op de kaart
map-nearer = dichterbij
map-farther = verder weg
map-whole = hele gazon
map-move = Verplaats de kaart
in-short = In het kort
foot-driven-over = Bereden is wat posities kunnen laten zien; of daar gras is gemaaid, moet u met eigen ogen zien.

## page: the answers

ask-log = Is de log goed genoeg?
ask-missed = Wat is er gemist?
ask-why = Waardoor?
ask-change = Wat moet er veranderen?
ask-sure = Hoe zeker is dat?
log-yes = Ja
log-too-short = Posities wel, maar te kort
log-no = Nee
part-visited = bereden
part-missed = gemist
part-not-yet = nog niet
part-unseen = ongezien
part-sliver = kleine resten
change-log-again = Eerst opnieuw loggen
change-look = Ga er kijken
change-give-width = Geef de maaibreedte op
change-nothing-yet = Nog niets
change-give-outline = Geef eerst de omtrek op
change-nothing = Niets
others-end = { $list }.

## page: report

title-report = { $title }: waar de maaier niet is geweest
picked-more = alles wat hierover bekend is
picked-close = sluiten
to-answers = Naar de antwoorden
where-not-been = Waar de maaier niet is geweest
map = Kaart
what-map-shows = Wat de kaart laat zien
ground = Grond
ground-none = geen
map-drawn-from = Getekend naar gelogde posities: de kaart laat grond zien die bereden is.
map-placeless = De log heeft geen plaats op aarde; de kaart ligt op eigen assen.
map-moves = Sleep om te verschuiven; knijp, dubbelklik of gebruik + en − om in en uit te zoomen; pijltoetsen als de kaart is geselecteerd.
places = Plaatsen
missed-and-why = Wat er gemist is, en waardoor
missed-lead = Grond die niet bereden is, terwijl toeval nauwelijks een plek van deze breedte zou overlaten. Loop met twee meetlinten naar het midden van elke plek.
up-to-wide = tot { $length } breed
see = Zie
evidence-and-others = Wat ervoor en ertegen pleit, en wat het nog meer kan zijn
evidence = Wat ervoor en ertegen pleit
how-sure-that = Hoe zeker dat is
rank-first = eerste
rank-other = ook mogelijk
evidence-for = voor
evidence-against = tegen
middle-at = Midden bij { $place }.
change-and-gain = Wat er moet veranderen, en wat dat oplevert
change-lead = Voorspeld door een gesimuleerde machine, aangepast aan deze log, met en zonder de wijziging te laten rijden. De stip is wat de meeste afzonderlijke nachten zullen laten zien; negen van de tien liggen tussen de uiteinden van de lijn.
for-pockets = voor
needs = Nodig: { $list }.
together-with = Samen met { $list }.
driven-over = Bereden
in-this-log = in deze log
if-nothing-changes = als er niets verandert
if-changed = met de wijziging
predictions-of = Voorspellingen voor { $id }
gained-in-runs = In { $percent } van de simulaties ging de plek erop vooruit en klopte de voorspelling.
gain-shows-after = In de meeste daarvan is de winst te zien na { $hours } rijtijd.
where-stuck = Waar de maaier vastliep
stuck-lead = Plaatsen, niet bij het laadstation, waar de maaier telkens weer tijd verloor.
time-lost = { $time } verloren
stuck-within = Binnen { $length } van { $place }.
drove-through = { $count ->
    [one] Hij reed er 1 keer doorheen zonder vast te lopen.
   *[other] Hij reed er { $count } keer doorheen zonder vast te lopen.
}
not-yet-lead = Onbereden grond die nog door toeval te verklaren is. Er hoeft niets te veranderen; er zijn alleen meer uren nodig voordat er iets te zeggen valt.
head-pocket = Plek
head-area = Oppervlakte
head-widest = Grootste breedte
head-chance = Kans door toeval
head-decided = Beslist na
head-where = Waar
not-yet-table = Nog niet
hours-are-driving = Uren zijn uren rijtijd vanaf het begin van deze log.
passages-and-ways = Doorgangen, onbereikbare grond en terugwegen
passages = Doorgangen
head-passage = Doorgang
head-width = Breedte
head-free = Vrij voor het midden van de machine
head-length = Lengte
head-behind = Gazon erachter
head-crossed = Doortochten
head-share-behind = Deel van de evenredige rijafstand erachter
passage-shut-word = dicht
crossings-are = Doortochten zijn wisselingen van kant; na “van ongeveer” staat wat een machine die vrij rondrijdt over dezelfde afstand zou halen.
out-of-disc = Buiten bereik van de maaischijf
turns-inside = Keert binnen de lijn op
turns-inside-means = Gewone afstand tussen het midden van de machine en de lijn waar hij keert.
outings = Ritten
ways-home = Terugwegen
drawing-differs = Waarin verschilt de tekening van de tuin?
plan-would-settle = Waarover zou een plattegrond uitsluitsel geven?
islands-or-lawn = Eilanden, of gazon dat onbereikbaar is?
islands = Eilanden
head-island = Eiland
in-no-plan = Staat op geen plattegrond
in-no-plan-lead = Dingen waar de machine midden op het gazon voor keerde.
head-thing = Ding
head-turns = Keerpunten erbij
head-across = Doorsnede, ongeveer
head-stood = Stond er
things-in-no-plan = Dingen die op geen plattegrond staan
hours-and-grass = Werktijden en gras
works = Werkt
allowed = Toegestaan
allowed-means = Werktijden in de instellingen, gemiddeld over de week.
promise-needs-label = De toezegging vraagt
promise-needs-means = Werktijd in dit tempo; waar een deel van het gazon helemaal niet bereden raakt, zijn geen uren genoeg.
lower-blades = Lager maaien?
growth = Groei
longest-wait = Langst toegestane wachttijd
one-third-rule = Volgens de een-derderegel: haal nooit meer dan een derde van de grasspriet in één keer weg.
slope = Helling
also-seen = Ook gezien
worn-line-is = Ingesleten lijn:
stray-is = Afdwaling:
possible-stop-is = Mogelijke stop:
paper-what = Wat te bekijken en wat te doen
paper-no-place = Geen enkele plaats hoeft bekeken te worden: alles wat is overgeslagen, is door toeval te verklaren, en de maaier liep nergens vast.
paper-changes = Voorgestelde wijzigingen
stills-title = Hoe het gazon vol raakte
stills-lead = Zes kaarten, elk na weer een zesde van de rijtijd.
still-new = nieuw sinds de vorige kaart
still-before = al eerder bereden
not-driven-over = niet bereden
safety = Veiligheid
paper-stop = Zet de maaier stil en stel hem buiten werking voordat u hem aanraakt.
paper-dig = Laat opzoeken waar kabels en leidingen in de grond liggen voordat u voor draad graaft. Vraag wat een zone beschermt voordat u hem verplaatst. Voeg uren overdag toe, niet ’s nachts.
manual-first = Plaatselijke voorschriften en de handleiding van de machine zelf gaan voor.
paper-keep-off = Houd kinderen en huisdieren van het gazon zolang de machine werkt. Leg lijnen ver genoeg van hellingen en waterkanten. Werk aan de netspanning mag alleen een erkend elektricien doen.
paper-looked-at = Bekeken op
paper-signed = Door, handtekening
paper-next-step = Afgesproken volgende stap
how-fast = Hoe snel het gazon vol raakte, en hoe vaak het bereden is
ground-gained = Aangroei van bereden grond over de rijtijd
line-this-log-interval = deze log, met het 90%-interval aan het eind
line-this-log = deze log
line-random = toevallig zoeken
line-no-overlap = helemaal geen overlap
line-promised = toegezegd
random-law-means = Een machine die op goed geluk rondrijdt, volgt de wet van het toevallig zoeken (Koopman 1956): hoe meer er gedaan is, hoe vaker hij grond tegenkomt die hij al kent. Een machine die nooit twee keer over dezelfde grond rijdt, zou de lijn zonder overlap volgen.
pattern-efficiency = Efficiëntie van het patroon
to-95 = Tot 95% van het gazon
to-95-means = Uren rijtijd in dit tempo; onbereikbaar waar een deel van het gazon helemaal niet bereden raakt.
to-99 = Tot 99%
to-99-means = Hetzelfde voor alles op een honderdste na.
the-promise = De toezegging
how-often = Hoe vaak elke plaats bereden is
bars-mean = Elke staaf is het deel van het gazon dat zo vaak bereden is. De gearceerde staaf is niet bereden.
waits-mean = Zoveel van de wachttijden tussen twee passeringen zijn korter; de laatste, onvoltooide wachttijd van elke plaats telt als onvoltooid.
visits-typical = Passeringen, doorsnee
evenness = Gelijkmatigheid (Gini)
evenness-means = 0 is overal hetzelfde aantal passeringen, 1 alle passeringen op één plaats.
time-between = Tijd tussen passeringen
overdue-label = Te laat
overdue-means = Dit deel van het gazon is sinds de laatste passering verder gegroeid dan de een-derderegel toestaat.
hours-by-activity = Uren per activiteit
same-in-figures = Hetzelfde in cijfers
activity-in-figures = Uren per activiteit in cijfers
nights-not-drawn = { $count ->
    [one] 1 eerdere nacht is niet getekend.
   *[other] { $count } eerdere nachten zijn niet getekend.
}
nothing-claimed = Over de tijd zonder meetpunten wordt niets beweerd.
each-lawn = Elk gazon apart
head-lawn = Gazon
with-bracket = { $figure } ({ $more })
for-each-width = Bereden, bij elke maaibreedte
how-counted = Hoe dit is geteld
of-the-log = Over de log: { $said }
cutting-width = Maaibreedte
cutting-width-means = Zoals opgegeven in de instellingen. Een centimeter meer zou meer grond meetellen.
counting-square = Telvakje
realisations = Realisaties
counted-once = Eén keer geteld, op het waarschijnlijkste spoor; de positiefout is nog niet doorgerekend.
counted-often = Zoveel waarschijnlijke sporen zijn geteld, om te zien hoe ver de positiefout de uitkomst verschuift.
as-logged = Zoals gelogd
as-logged-means = Wat eruit zou komen als de ruwe meetpunten met rechte lijnen werden verbonden. Alleen ter vergelijking.
reachable = Bereikbaar
reachable-means = Het deel van het gazon waar de maaischijf überhaupt kan komen.
position-error = Positiefout
beware = Let op
default-error-means = Uit de log valt niet af te leiden hoe nauwkeurig hij is; log een uur in het laadstation om dat te weten te komen.
plan-against-log = Plattegrond naast log
outline = Omtrek
outline-from-plan = Gazon, zones en obstakels zoals op de plattegrond getekend.
outline-from-log = Grond buiten de buitenste rit telt niet mee, dus geen enkel cijfer hier geldt voor het hele gazon. Loop de omtrek om dat te veranderen.
path = Spoor
usual-speed = Gewone snelheid
beside-surveyed = De log naast een ingemeten spoor
errors-surveyed = Fouten ten opzichte van het ingemeten spoor
head-error = Fout
errors-mean = Dwars: tot het dichtstbijzijnde punt van het spoor, links ervan positief. Langs: vóór op waar de machine toen had moeten zijn; tijd: hoeveel later hij langskwam. Baan tot baan: hoeveel de fout dwars verandert van een baan tot de volgende ernaast, binnen 15 minuten (naar ISO 12188-1). Gelogd zijn de meetpunten, bepaald is het spoor dat erachter is gevonden.
simulated-beside = De gesimuleerde machine, naast de log
predictions-made = Er worden voorspellingen mee gedaan.
predictions-none = Er worden geen voorspellingen mee gedaan.
head-figure = Grootheid
head-in-log = In de log
head-in-runs = { $count ->
    [one] In 1 simulatie
   *[other] In { $count } simulaties
}
log-and-simulation = Log en simulatie
figure-range = { $figure } ({ $low } tot { $high })
log-files = De logbestanden, en wat niet is gebruikt
made-by-label = gemaakt door
fixes-of = { $count ->
    [one] 1 meetpunt van
   *[other] { $count } meetpunten van
}
not-used-of-file = Niet gebruikt uit dit bestand
head-not-used = Niet gebruikt
head-why = Waarom
head-first-at = Voor het eerst op
everything-used = Alles erin is gebruikt.
before-you-change = Voordat u iets verandert
stop-and-manual = Zet de maaier stil en stel hem buiten werking voordat u hem aanraakt. Plaatselijke voorschriften en de handleiding van de machine zelf gaan voor.
all-dangers = Alles wat gevaarlijk is aan zulk werk
danger-blades = Bewegende messen.
danger-blades-means = Zet de maaier stil en stel hem buiten werking voordat u hem aanraakt. Houd kinderen en huisdieren van het gazon zolang hij werkt.
danger-logger = Een logger aanbrengen.
danger-logger-means = Monteer hem nooit over de stopknop of op een plaats waar de machine voelt dat hij wordt opgetild of gekanteld. Bevestig hem vrij van de messen.
danger-digging = Graven voor draad.
danger-digging-means = Laat eerst opzoeken waar kabels en leidingen in de grond liggen. Particuliere kabels en leidingen zijn daarbij niet aangegeven.
danger-slopes = Hellingen en water.
danger-slopes-means = Leg de lijn op ruime afstand van randen waar de machine overheen kan glijden.
danger-mains = Netspanning.
danger-mains-means = Werk aan de voeding van het laadstation mag alleen een erkend elektricien doen.
danger-night = Nacht.
danger-night-means = Voeg alleen overdag uren toe: egels en andere kleine dieren zijn ’s nachts op pad.
danger-zones = Zones.
danger-zones-means = Vraag waar een zone voor dient voordat u hem verplaatst of verkleint. Hij kan wortels, bedrading of mensen beschermen.

## page: before and after

title-compare = { $title }: vóór en na
difference = Verschil
more-than-before = Zoveel meer van het gazon bereden na de wijziging dan ervoor; { $meaning }.
side-driven-over = { $side }: { $percent } bereden
side-facts = { $interval }{ $equal ->
    [none] { "" }
   *[other] ; { $equal } na evenveel uren
}. { $count }, { $hours } rijtijd.
map-move-side = Verplaats de kaart, { $side }
only-summary = Er is alleen een samenvatting bewaard, dus er is geen kaart.
compare-map-key = Gearceerd: het grootste deel van de plek is aan die kant van de vergelijking niet bereden. Gestreepte omtrek: het grootste deel wel. Donkerdere grond is vaker bereden; beide kaarten hebben dezelfde schaal.
how-sure-difference = Hoe zeker het verschil is
counted-on = Geteld op
counted-on-common = { $area } gazon dat op beide plattegronden staat.
lawn-only = { $when ->
    [before] { $area } was alleen vóór de wijziging gazon
   *[after] { $area } is pas sinds de wijziging gazon
}
what-became = Wat er van elke plek werd
head-found = Gevonden
head-before = Bereden vóór
head-after = na
head-became = Wat ervan werd
pockets = Plekken
show-on-both = { $id }, toon op beide kaarten
predicted-and-measured = Voorspeld en gemeten
predicted-measured = { $built ->
    [otherwise] Voorspeld voor wat er is uitgevoerd { $predicted }, gemeten { $measured }: { $meaning }.
   *[other] Voorspeld { $predicted }, gemeten { $measured }: { $meaning }.
}
predicted = voorspeld
measured-after = gemeten na de wijziging

## page: plan on paper

title-plan = { $title }: vóór het graven
before-digging = Vóór het graven
driven-over-after = Bereden na { $days }
days = Dagen
not-worked-out = niet berekend
lawn-to-cut = Te maaien gazon
boundary = Begrenzing
guide-runs = Geleidelijnen
guide-runs-none = geen
out-of-reach-title = Onbereikbaar
part-out-of-reach = { $area }, { $why }: { $middle }
head-free-machine = Vrij voor de machine
head-behind-it = Gazon erachter
head-changes = Wisselingen van kant per dag
head-share = Aandeel in het rijden
head-nine-tenths = Negen tiende ervan bereden
weak-places = Zwakke plaatsen, en waardoor
would-mend = Wat ze zou verhelpen
as-planned = volgens de plattegrond
assumed-and-beware = Wat is aangenomen, en waarop te letten
foot-forecast = Een verwachting uit simulaties: hoeveel echte machines verschillen, blijkt in de eerste dagen van de logs.

## page: morning

title-morning = Tuinen te bezoeken na { $night }
morning-after = De ochtend na { $night }
gardens-to-visit = Tuinen te bezoeken
count-muted = { $count } gedempt.
gardens-in-order = Tuinen, bovenaan die waar een bezoek het meest oplevert
head-garden = Tuin
head-last-nights = Laatste 15 nachten
head-wrong = Wat er mis is
head-since = Sinds
head-bring = Meenemen
head-gain = Levert op
and-count-more = en nog { $count }
known-bracket = (bekend)
open-for = Open sinds { $days }, stand van de nacht van { $night }.
lawn-of = Gazon { $area }.
driven-in-last = { $percent } daarvan is bereden in de laatste { $days }; toegezegd is { $promised }.
known-said = Bekend: { $said }
known = Bekend
head-night = Nacht
head-missed = Gemist
head-driving = Rijden
head-stuck = Vastgelopen
head-silent = Uitval
nights-of = Nachten van { $name }
mended = Verholpen
what-failed = Wat mislukte
failures = Mislukt
head-what = Wat
visit-brings = Een bezoek levert zoveel gazon op dat elke nacht bereden zou worden en het nu niet wordt.

## terminal: labels of rows (row-...), at most 12 letters each, row-by-lawn, row-used, row-skipped and row-note at most 10;
## heads of columns (col-...), at most 7, col-id at most 3
# Cut short what is too long, as newspapers do: a label stands beside its text.

row-driven-over = Bereden
row-before = Vóór
row-after = Na
row-difference = Verschil
row-pockets = Plekken
row-beware = Let op
# $id is G1 or M12.
row-change = Advies { $id }
row-by-lawn = per gazon
row-asked-about = Vraag
row-missed = Gemist
plan-answer = Te maaien gazon: { $area }, { $edge } rand; zones en obstakels niet meegerekend.
forecast-hours = Bij { $hours } werk per dag, uit { $runs } simulaties.
col-role = rol
col-name = naam
col-length = lengte
no-faults = Geen fouten.
row-plan-faults = Bekijken
col-id = id
col-area = opp.
col-widest = breedst
col-where-why = waar, en waardoor
row-not-yet = Nog niet
row-stuck-spots = Vastgelopen
none-seen = geen gezien
row-pattern = Patroon
row-promise = Toezegging
row-from = Bron
row-in-the-dark = In donker
before = Vóór
after = Na
row-ground = Grond
col-before = vóór
col-after = na
col-became = wat ervan werd
no-pockets = aan geen van beide kanten
row-where = Waar
row-last = Laatst
row-usually = Gewoonlijk
row-used = Gebruikt
row-skipped = Weggelaten
skipped-nothing = niets
row-note = Opmerking
in-line = (regel { $count })
row-time = Tijd
row-fixes = Meetpunten
row-hours = Uren
row-silences = Uitval
silences-none = geen
row-quality = Kwaliteit
row-hdop = HDOP
row-repeats = Herhaling
row-error = Positiefout
row-extent = Afmetingen
row-reference = Referentie

## Numbers and lists

unknown = onbekend
under-percent = minder dan { $percent }
over-percent = meer dan { $percent }
interval = 90%-interval { $low } tot { $high }
no-interval = geen interval
range = { $low } tot { $high }
# Two parts of a list, or the list so far and its next part.
list = { $before }, { $next }
list-apart = { $before }; { $next }
way-home-row = { $times } { $along } ({ $time })
# Two lengths of tape meet on one side of the line between their ends.
tape-from = { $length } van { $from }
tape-side = { $tape }, aan de { $eighth ->
    [0] noordkant
    [1] noordoostkant
    [2] oostkant
    [3] zuidoostkant
    [4] zuidkant
    [5] zuidwestkant
    [6] westkant
   *[7] noordwestkant
} daarvan
position-metres = { $east } oost, { $north } noord van de oorsprong
fixes-poor = { $count } van slechte kwaliteit
fixes-jumped = { $count ->
    [one] 1 sprong
   *[other] { $count } sprongen
}
fixes-carried = { $count } tijdens het dragen
fixes-used-of = { $used } van { $count ->
    [one] 1 gelezen meetpunt
   *[other] { $count } gelezen meetpunten
} (weggelaten: { $list })
# A time on the clock: the year has no mark between thousands.
date-time = { $day } { $month ->
    [1] januari
    [2] februari
    [3] maart
    [4] april
    [5] mei
    [6] juni
    [7] juli
    [8] augustus
    [9] september
    [10] oktober
    [11] november
   *[12] december
} { $year }, { $hour }:{ $minute }

## Words for before and after

more-than-luck = meer dan positiefouten en toeval verklaren
luck-may-explain = positiefouten en toeval alleen kunnen dit verklaren
count-pocket-change = { $value ->
    [mended] { $count } verholpen
    [better] { $count } beter
    [new] { $count } nieuw
   *[unchanged] { $count } onveranderd
}
pocket-sum = { $pockets }: { $list }
nothing-to-hold-against = niets om mee te vergelijken
prediction-holds = de voorspelling klopt
prediction-fails = de voorspelling klopt niet

## The log beside a surveyed path; columns are narrow

error-mean = gemiddeld
error-rms = rms
error-95 = 95%
error-largest = grootste
error-logged = gelogd
error-located = bepaald
error-cross-track = dwars
error-along-track = langs
error-timing = tijd
error-pass-to-pass = baan tot baan
reference-head = { $length } van { $name }, { $fixes } vergeleken{ $beside ->
    [0] { "" }
   *[other] ; { $beside } die er meer dan { $distance } naast liggen, weggelaten
}
reference-untimed = Het ingemeten spoor heeft geen tijden: fouten langs het spoor en in de tijd zijn niet te bepalen.

## Why a line of a log was skipped

skip-reason = { $value ->
    [bad_checksum] controlegetal klopt niet
    [not_a_position] bevat geen positie
    [not_of_the_format] hoort niet bij dit formaat
    [no_fix] ontvanger had geen positie
    [no_time] positie zonder tijd
    [no_date] kloktijd zonder datum
    [malformed] veld met een fout
    [not_finite] geen eindig getal
    [out_of_range] buiten het bereik
    [null_island] breedte 0, lengte 0
    [pole] breedte 90 tijdens het zoeken
    [time_reversed] tijd loopt terug
    [duplicate_time] twee keer dezelfde tijd
    [duplicate_epoch] twee keer hetzelfde tijdstip
    [truncated] aan het eind afgekapt
    [same_log_twice] dezelfde log onder twee namen
    [too_long] langer dan de grens
   *[implausible] ongeloofwaardige positie
}

## page: drawings and hours

map-north-up = Kaart van het gazon, noorden boven
map-of-lawn = Kaart van het gazon
map-before = Kaart vóór de wijziging
map-after = Kaart na de wijziging
ground-visits = passeringen
ground-waits = tussentijd
ground-overdue = te laat
never = nooit
driving = rijden
driving-along = daarvan langs een geleidelijn of de begrenzing
standing-turning = stilstand elders, keren
activity-driving = rijden
activity-turning = keren
activity-reversing = achteruit
activity-transit = op de heen- of terugweg
activity-standing = stilstand
activity-station = in het laadstation
activity-carried = gedragen
activity-silent = zonder meetpunten
night-number = nacht { $number }
nights-drawing = Uren per activiteit, één rij per nacht; de tabel eronder heeft dezelfde cijfers
axis-hours = uren
driven-that-night = bereden in die nacht
so-far = tot dan toe
lawn-after = Gazon na { $hours }
still-gained = { $percent }, +{ $points } procentpunt
plot-over-time = Bereden deel van het gazon naar uren rijtijd
axis-lawn-percent = gazon bereden, %
axis-hours-driving = uren rijtijd
plot-histogram = Deel van het gazon naar hoe vaak het bereden is
axis-part-percent = deel van het gazon, %
axis-times = aantal keer bereden
plot-gains = Bereden deel van de plek: { $list }
gain-row = { $label } { $fraction }
axis-pocket-percent = plek bereden, %
plot-waits = Wachttijden tussen twee passeringen: { $list }
wait-under = { $part } onder { $hours }
wait-half = helft
wait-nine-ten = 9 op de 10
wait-99 = 99 op de 100
wait-allowed = toegestaan
axis-waits = uren tussen twee passeringen

## map

key-missed = gemist: niet door toeval te verklaren
key-not-yet = nog niet: nog door toeval te verklaren
key-unseen = ongezien: geen gegevens
key-stuck = vastloopplek: tijd verloren
key-worn = ingesleten lijn
key-suggested = voorgestelde wijziging
key-tape = meetlintafstand
key-lines = gereden lijnen
key-lie = doorgangen, beginpunten, fouten in de plattegrond
key-strays = afdwalingen, mogelijke stops
key-guide = geleidelijn
key-exclusion = uitsluitingszone
key-obstacle = obstakel
key-boundary = begrenzing
nothing-to-draw = Geen omtrek en geen spoor om te tekenen.
picture-line = Bereden: { $percent } van { $lawn }. Gemist: { $pockets }, { $missed }.
picture-not-counted = Er is geen maaibreedte opgegeven, dus er is niets geteld.
picture-foot = Getekend naar gelogde posities. Bereden bewijst niet dat er gras is gemaaid.
# One letter: north.
north-letter = N
second-axis = tweede as
# Names of marks, read aloud: an id, what it is, how large.
mark-missed = { $id }, gemist, { $area }
mark-not-yet = { $id }, nog niet, { $area }
mark-unseen = { $id }, zonder gegevens, { $area }
mark-worn = { $id }, ingesleten lijn, { $length }
mark-suggested = { $id }, voorstel: { $change }
mark-stuck = { $id }, vastloopplek, { $time } verloren
mark-island = { $id }, eiland, { $area }
mark-passage = { $id }, doorgang, { $length } breed
mark-in-no-plan = { $count ->
    [one] { $id }, staat op geen plattegrond, 1 keerpunt erbij
   *[other] { $id }, staat op geen plattegrond, { $count } keerpunten erbij
}
mark-stray = { $id }, afdwaling, { $length } buiten de begrenzing
mark-compared = { $id }, { $percent } bereden
mark-station = station

## terminal: the lawn in characters, files

chart-key = { $bare } niet bereden, { $one } tot { $first }, { $two } tot { $second }, { $three } tot { $third }, { $four } vaker bereden; { $missed } gemist, { $not_yet } nog niet, { $stuck } vastloopplek, { $station } laadstation; een teken is { $length } breed{ $north ->
    [up] , noorden is boven
   *[unknown] { "" }
}
row-written = Geschreven

## Why a file is left out

file-elsewhere = de opdracht maakt het, uit findings.json met tussock report
file-tells-where = het zou verraden waar de tuin is
file-local-metres = posities zijn in plaatselijke meters, zonder geografische coördinaten
file-not-counted = zonder maaibreedte is er niets geteld
file-not-driven = er is niets gereden

## morning: gardens

garden-gain = { $garden }: { $area } per nacht te winnen
failed = Mislukt
# What an alarm says. $why is a sentence of the store, in English.
alarm-less-visited = { $found } van het gazon bereden, waar in evenveel uren { $usual } gewoon is, sinds { $since }.
alarm-hours = { $value ->
    [lost_hours] { $found } rijtijd, waar { $usual } gewoon is, sinds { $since }.
   *[silences] { $found } zonder posities, waar { $usual } gewoon is, sinds { $since }.
}
alarm-receiver-worse = Posities zitten er { $found } naast, waar { $usual } gewoon is, sinds { $since }.
alarm-stuck-spot = Op één plaats vastgelopen sinds { $since }, { $nights ->
    [one] 1 nacht
   *[other] { $nights } nachten
}, { $found } in de laatste: { $why }
alarm-missed-pocket = Gemist sinds { $since }, { $nights ->
    [one] 1 nacht
   *[other] { $nights } nachten
}: { $found }. { $why }
alarm-promise = { $found } van het gazon bereden binnen { $count ->
    [one] 1 dag
   *[other] { $count } dagen
}, waar { $usual } is toegezegd, sinds { $since }.
alarm-absent = { $machine ->
    [none] Geen log sinds { $since }: { $nights } verwachte nachten.
   *[other] Geen log van { $machine } sinds { $since }: { $nights } verwachte nachten.
}

## local page: one line each; what is in braces stays as it is

page-what-to-do = Wat te doen
page-open = Openen
page-see = Bekijken
page-stop = Stoppen
page-compare = Vergelijken
page-save = Opslaan
page-no-script = Deze pagina werkt met JavaScript, en dat is hier uitgeschakeld.
page-how-far = Hoe ver het werk is
page-open-title = Wat heeft de maaier laten staan?
page-open-lead = Kies de posities die hij heeft gelogd, laat ze ergens op deze pagina los of plak ze. Niets verlaat dit apparaat: de pagina staat geen enkele verbinding toe en werkt zonder netwerk.
page-logs = Logs
page-logs-means = GPX, NMEA 0183, CSV, KML en andere, al dan niet met gzip ingepakt; van één tuin, één bestand of meer. Een opgeslagen findings.json is zo te openen.
page-choose-logs = Kies logs
page-paste = Plak een log
page-paste-text = Tekst van de log
page-paste-take = Neem deze tekst
page-plan = Plattegrond
page-plan-if = als die er is
page-plan-means = Het gazon, zones, obstakels, geleidelijnen en het laadstation, als GeoJSON. Zonder plattegrond wordt de omtrek naar de ritten getekend.
page-choose-plan = Kies een plattegrond
page-machine = Machine
page-width = Breedte van de maaischijf
page-cm = cm
page-width-means = Laat u dit leeg, dan geldt wat in de instellingen staat; staat het daar niet, dan krijgt u het antwoord voor verschillende breedten.
page-choose-settings = Kies instellingen
page-suggest = Probeer wijzigingen en stel de beste voor (duurt langer)
page-find = Zoek wat er gemist is
page-demo = Neem de verzonnen tuin
page-kept = Bewaard op dit apparaat
page-forget = Wis alles wat bewaard is
page-cautions = Zet de maaier stil en stel hem buiten werking voordat u hem aanraakt: de messen bewegen. Voor het aanbrengen van een logger, voor graven en voor werk aan het laadstation gelden eigen waarschuwingen, op de pagina die u krijgt.
page-page = De pagina
page-hand-over = De pagina om te overhandigen
page-ask-title = Vraag naar een plaats
page-begin = Begin de pagina met dit antwoord
page-type-place = Typ een plaats in
page-or-tap = Of tik de plaats aan op de kaart.
page-place = Plaats
page-typed-in = ingetypt in
page-metres = meters oost, noord
page-degrees = graden, breedte eerst
page-such-as = Bijvoorbeeld 4.5,-2 of 53.86006,12.42021. Meters tellen vanaf de oorsprong van de bevindingen.
page-said = Wat erover gezegd is
page-ask = Vragen
page-compare-title = Wat heeft een wijziging opgeleverd?
page-before = Vóór
page-after = Na
page-logs-before = Kies logs van vóór de wijziging
page-the-plan = Kies de plattegrond
page-logs-after = Kies logs van na de wijziging
page-plan-changed = Kies de plattegrond, als die veranderd is
page-compare-means = Elke kant neemt logs, of één findings.json. De maaibreedte en de instellingen zijn die onder Openen.
page-print = Pagina afdrukken
page-private = Zonder plaats, namen en datums
page-keep-title = Op dit apparaat bewaren
page-keep-means = Er wordt niets bewaard als u er niet om vraagt. Bewaard worden de bevindingen, de plattegrond en de instellingen, in deze browser; wie hem gebruikt kan ze openen, en andere pagina’s die vanaf dit apparaat worden geopend ook. Sla liever bestanden op waar anderen hem gebruiken.
page-garden-name = Naam van de tuin
page-keep = Bewaren
page-drop = Laat logs, een plattegrond of instellingen los
page-no-worker = het achtergrondproces kan hier niet draaien: { $reason }
page-not-let = deze browser staat het niet toe
page-broke-off = het werk is afgebroken: { $why }
page-broke-off-hint = dit is een fout van het programma, of het apparaat heeft geen geheugen meer; uw bestanden zijn zoals ze waren
page-take-out = weghalen
page-take-out-file = { $file } weghalen
page-hint = tip: { $hint }
page-seconds = { $stage }, { $seconds } s
page-starting = starten
page-stopped = gestopt
page-reading = { $file } lezen
page-unreadable = { $file }: niet te lezen: { $reason }
page-choose-again = kies het opnieuw
page-side-empty = een kant heeft geen log; verwacht worden logs of findings.json aan beide kanten
page-no-log = er is geen log gegeven; verwacht wordt een log (GPX, NMEA 0183, CSV, ...) of findings.json
page-no-log-hint = kies bestanden, laat ze op deze pagina los, of neem de verzonnen tuin
page-file-page = de pagina om te overhandigen
page-file-findings = elk getal; is hier weer te openen
page-file-geojson = alles wat een plaats heeft, voor kaarten
page-file-gpx = leidt u naar de plekken
page-file-comparison = elk getal
page-no-file = geen { $file }: { $why }
page-keeps-nothing = deze browser bewaart niets voor deze pagina: { $reason }
page-no-reason = geen reden opgegeven
page-save-instead = sla in plaats daarvan findings.json op
page-open-kept = openen
page-open-garden = { $garden } openen
page-is-kept = { $garden } is bewaard
page-cannot-delete = het is niet te wissen: { $reason }
page-clear-data = wis de gegevens van deze pagina in de instellingen van de browser
# The name of this language in itself: English, Deutsch, ...
page-this-language = Nederlands
page-language = Taal
page-remember = Onthouden op dit apparaat
page-stage-drawing = tekenen
page-stage-reading = lezen
page-stage-comparing = vergelijken
page-stage-locating = plaatsbepaling
page-stage-counting = tellen
page-stage-calibrating = kalibreren
page-stage-diagnosing = oorzaken zoeken
page-stage-suggesting = wijzigingen zoeken
