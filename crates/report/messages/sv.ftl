# Draft. Nobody who speaks Swedish natively has reviewed this yet.
# What Tussock says, in Swedish. Identifiers with underscores are codes of findings (tussock_types::Said), those with hyphens are
# labels and sentences of the windows. A number carries its unit in its name and is written with it: $width_m is "1,2 m",
# $share_ratio is "31 %", $lost_min is "25 min", $towards_deg is "nordost". Counts have no unit and choose the plural.
# A value without a unit in its name that is no count comes written already: $area is "12,3 m²", $hours is "4,5 h", $percent is "31 %".
# What stands in square brackets before a text chooses it and is not translated: it is a number, a plural category, or a word of ours
# such as [none], which is what a value is that is not there.

## What the positions of a log can show, or the one thing to change

positions_right = Positionerna stämmer på ungefär { $error_m } när.
positions_off = Positionerna är ungefär { $error_m } fel: sätt antennen högre, med fri sikt mot himlen, eller logga med en RTK-mottagare.
receiver_jumps = Mottagaren hoppade och blev kvar: positionerna före och efter hoppet passar inte ihop. Ta reda på vad som skymmer dess sikt mot himlen, eller ge loggen före och efter hoppet som skilda filer.
error_not_shown = Loggen visar inte hur stort fel positionerna har: låt klipparen stå stilla i tio minuter medan loggern går.
fixes_too_rare = Med en mätpunkt per { $period_s } syns inte vändningarna: logga en per sekund.
digits_too_coarse = Positionerna är loggade i steg om { $step_m }: låt loggern skriva fler siffror (sju decimaler på grader, fem på minuter).

## Why a log shows nothing of a lawn

mostly_jumps = { $jumps } av { $fixes } mätpunkter ligger längre från den förra än en klippare hinner köra på den tiden (positions.max_speed_mps är { $max_speed_mps }): det här är ett fordon, eller positioner som hoppar.
too_few_fixes = { $used } av { $fixes } { $fixes ->
    [one] mätpunkt
   *[other] mätpunkter
} går att använda, för få för att visa en körning: låt loggern gå en hel tur.
not_one_garden = Positionerna är utspridda över { $extent_m }: det här är inte loggen från en enda trädgård, eller så döljer hopp det. Ge bara filerna från en trädgård.
fixes_far_too_rare = En mätpunkt per { $period_s } visar ingenting av en gräsmatta: logga en per sekund.
walking_pace = Den rör sig med { $speed_mps }, lika fort som man går: ge en logg av maskinen i arbete, eller ange dess hastighet om den verkligen är så snabb (machine.speed_mps).
walk_round = Det här liknar en promenad runt { $area_m2 } trädgård ({ $length_m } med { $speed_mps }), inte loggen från en klippare: gör en ritning av den med tussock plan from-walk FIL{ $gpx ->
    [yes] { "" }
   *[other] , så snart den är sparad som GPX
}. Om det ändå är klipparen, ange dess hastighet (machine.speed_mps).

## Varifrån ett måttband läggs

landmark_station = laddstationen
landmark_middle = mitten av ”{ $body }”
landmark_corner_at = hörnet av { $body ->
    [none] gräsmattan
   *[other] ”{ $body }”
} vid { $beside ->
    [none] laddstationen
   *[other] ”{ $beside }”
}
landmark_corner_nearest = hörnet av { $body ->
    [none] gräsmattan
   *[other] ”{ $body }”
} närmast laddstationen
landmark_corner = det{ $outermost ->
    [yes] { " " }yttersta
   *[other] { "" }
} hörnet av { $body ->
    [none] gräsmattan
   *[other] ”{ $body }”
} i { $wind_deg }
landmark_corner_apart = det hörn av { $body ->
    [none] gräsmattan
   *[other] ”{ $body }”
} i { $wind_deg } som ligger { $farther ->
    [yes] längre från
   *[other] närmare
} { $beside ->
    [none] laddstationen
   *[other] ”{ $beside }”
}

## Vad läsaren av en logg gjorde eller märkte

time_without_zone = Tiderna anger ingen tidszon och läses som UTC.
time_is_relative = Tiderna räknas från loggerns egen start och har inget datum.
gps_time = Tiderna är GPS-tid och har räknats om till UTC, med 18 skottsekunder sedan 2017 (IERS, Bulletin C).
week_rollover_repaired = { $fixes ->
    [one] 1 mätpunkt var daterad
   *[other] { $fixes } mätpunkter var daterade
} 1024 veckor för tidigt (GPS-veckan slog runt) och flyttades { $days } dagar framåt; den första är nu daterad { $date }.
late_fixes = { $fixes ->
    [one] 1 mätpunkt skrevs senare än den mättes och sattes på sin plats.
   *[other] { $fixes } mätpunkter skrevs senare än de mättes och sattes på sin plats.
}
newest_first = Loggen börjar med den nyaste mätpunkten och har vänts.
block_out_of_order = En del av loggen skrevs senare än den mättes.
tracks_overlap = Spår överlappar i tid; deras mätpunkter sattes i en enda ordning, och inget förbinds mellan dem.
times_do_not_fit = Ett spår har { $times } tider och { $positions } positioner, och det går inte att säga vilka som hör ihop; det utelämnades.
constant_quality = GGA kallar varje mätpunkt { $manual ->
    [yes] manuell (7)
   *[other] simulerad (8)
} där RMC säger att den är giltig; mätpunktens slag togs från RMC.
several_machines = Loggen innehåller { $machines } klippare, åtskilda genom var de var vid samma tider.
same_log_twice = Samma innehåll som { $log }, läst en gång.
overlaps_another_log = { $fixes ->
    [one] 1 mätpunkt
   *[other] { $fixes } mätpunkter
} från { $date } utelämnades, vid tider som en annan logg från den här klipparen täcker.
file_not_closed = Filen är inte avslutad, som om loggern hade stängts av.
file_damaged = Den packade filen är skadad, slutet saknas: { $fault }
line_too_long = En rad på { $bytes } byte är längre än { $limit }, gränsen i limits.line_bytes, och hoppades över.
line_cut = En rad på mer än { $bytes } byte är längre än { $limit }, gränsen i limits.line_bytes, och hoppades över.
attribute_too_long = Ett attribut på { $bytes } byte är längre än { $limit }, gränsen i limits.attribute_bytes, och hoppades över.
document_type_ignored = Dokumenttypen beaktas inte, och ingen entitet som den definierar ersätts.

## Vad läsaren av en promenad gjorde eller märkte

walk_markup_broken = Filen är skadad på { $places ->
    [one] 1 ställe, som
   *[other] { $places } ställen, som
} hoppades över; se efter om något saknas i ritningen.
walk_taken_as_lawn = ”{ $track }” (slutet, { $area_m2 }, { $length_m } runt) antas vara gräsmattan: det är det enda spår som kommer tillbaka dit det började. Om det är något annat, säg det med --role "{ $track }=ROLE".
walk_positions_skipped = { $positions ->
    [one] 1 position
   *[other] { $positions } positioner
} i ”{ $track }” utan användbar latitud och longitud.
walk_name_unknown = ”{ $track }” utelämnas, namnet säger inte vad det är.{ $seems ->
    [none] { "" }
   *[other] { " " }Om det är vad det ser ut som, säg det med --role "{ $track }={ $seems }".
}
walk_spikes_cut = { $positions ->
    [one] 1 position i ”{ $track }” hoppar bort och tillbaka; den utelämnas.
   *[other] { $positions } positioner i ”{ $track }” hoppar bort och tillbaka; de utelämnas.
}
walk_waits_as_corners = I ”{ $track }” stod den som gick stilla på { $places ->
    [one] 1 ställe; det behålls som hörn.
   *[other] { $places } ställen; vart och ett behålls som hörn.
}
walk_pieces_joined = ”{ $track }” spelades in i { $pieces } bitar, förbundna med raka linjer.
walk_overlap_cut = I ”{ $track }” gick man { $past_m } förbi starten; den änden är avklippt.
walk_gap_closed = ”{ $track }” slöts med en rak linje på { $gap_m }.
walk_loops_cut = { $loops ->
    [one] 1 liten slinga i ”{ $track }” är avklippt.
   *[other] { $loops } små slingor i ”{ $track }” är avklippta.
}
walk_guide_turned = I ”{ $track }” gick man mot laddstationen; spåret har vänts.

## What else stands against a log

stood_all_the_time = Maskinen stod stilla hela tiden: låt loggern gå flera hela turer.
drove_too_short = Bara { $driven_s } körning är loggad: låt loggern gå flera hela turer.
drove_too_short_by = { $driven_s } körning är loggad: det behövs ungefär { $missing_h } till innan en okörd fläck som är { $wanted_m } bred är mer än otur.
receiver_jumped = Mottagaren hoppade { $size_m } ({ $time }) och blev kvar där.
receiver_jumps_back = Mottagaren hoppade bort och tillbaka { $jumps } gånger: över en del av gräsmattan har den dålig sikt mot himlen.
stops_not_placed = Stopp på sammanlagt { $lost_min } redovisas inte: så dåliga positioner visar inte var klipparen stod.
receiver_jumped_often = { $jumps ->
    [one] Och ett sådant hopp till.
   *[other] Och { $jumps } sådana hopp till.
}
date_too_old = Loggen börjar { $date }: loggerns klocka var inte ställd, eller så har dess veckoräknare börjat om. Datumen är fel; klockslagen kan stämma (--date anger dagen för loggar som bara har klockslag).
positions_bent = På ungefär { $area_m2 } kring { $place } är positionerna alltid förskjutna åt samma håll, med upp till { $largest_m }, som intill en vägg eller under träd. Spåret har rätats ut där; hur mycket av den marken som har körts över är mindre säkert.
turns_not_at_edge = Vändningarna ligger inte längs ritningens kanter (körning i banor, eller en ritning som inte passar), så kanterna har inte använts för att korrigera positionerna.
edge_inside = Vid kanten i { $edge_deg } vänder klipparen { $offset_m } längre in än vid de andra kanterna ({ $turns } vändningar): kanten är ritad för långt ut, gränsen ligger för långt in, eller så visar mottagaren fel där. Mät på gräsmattan innan du flyttar något.
edge_outside = Vid kanten i { $edge_deg } vänder klipparen { $offset_m } längre ut än vid de andra kanterna ({ $turns } vändningar): kanten är ritad för långt in, gränsen ligger för långt ut, eller så visar mottagaren fel där. Mät på gräsmattan innan du flyttar något.
zone_driven = I zonen{ $zone ->
    [none] { "" }
   *[other] { " " }”{ $zone }”
} kör klipparen precis som på gräsmattan ({ $path_m } spår i den): för klipparen finns zonen inte. Det som ligger eller växer där är kanske inte skyddat från den.
plan_beside = Ritningen ligger { $distance_m } vid sidan av loggen ({ $east_m } österut, { $north_m } norrut); den har flyttats så att den passar loggen.
drift_assumed = Loggen säger inte hur bra positionerna är, och maskinen står aldrig stilla länge nog för att visa det; { $drift_m } antas. Vet du bättre, ange det (positions.drift_m).
drift_at_most = Maskinen står aldrig stilla länge nog för att visa hur långt positionerna driver; dess raksträckor medger högst { $drift_m }.
silent_long = Under { $silent_fraction } av tiden finns inga användbara mätpunkter; om den tiden påstås ingenting.
fixes_left_out = { $poor ->
    [0] { $jumps ->
        [one] 1 mätpunkt togs inte med eftersom den är ett hopp.
       *[other] { $jumps } mätpunkter togs inte med eftersom de är hopp.
    }
    [one] { $jumps ->
        [0] 1 mätpunkt togs inte med på grund av dålig kvalitet.
        [one] 1 mätpunkt togs inte med på grund av dålig kvalitet och 1 eftersom den är ett hopp.
       *[other] 1 mätpunkt togs inte med på grund av dålig kvalitet och { $jumps } eftersom de är hopp.
    }
   *[other] { $jumps ->
        [0] { $poor } mätpunkter togs inte med på grund av dålig kvalitet.
        [one] { $poor } mätpunkter togs inte med på grund av dålig kvalitet och 1 eftersom den är ett hopp.
       *[other] { $poor } mätpunkter togs inte med på grund av dålig kvalitet och { $jumps } eftersom de är hopp.
    }
}
no_station = Ingen laddstation kunde hittas: vilor på tio minuter eller mer återkommer inte på samma plats.
claim_too_good = Mottagaren uppger { $claimed_m }, men dess positioner har en spridning på { $scatter_m }: det är spridningen som gäller, inte uppgiften.
rtk_fixed_too_good = Mottagaren kallar sina mätpunkter ”RTK fixed”, vilket betyder ungefär { $usual_m }, men dess positioner har en spridning på { $scatter_m }: det är spridningen som gäller, inte uppgiften.
positions_repeated = { $repeated_fraction } av mätpunkterna upprepar den förra positionen till sista siffran medan mottagaren anger en hastighet (som längst { $longest_s }): den lämnar ut gamla positioner.
positions_held = { $repeated_fraction } av mätpunkterna upprepar den förra positionen till sista siffran (som längst { $longest_s }): mottagaren håller fast sin position när den står, så stillastående ser bättre ut än positionerna är. Stäng av den funktionen (”static hold”).
drives_at_rest = { $rest_min } av { $driven_min } körning infaller på tider då klipparen ska vila enligt inställningarna ({ $time_zone ->
    [none] ingen tidszon är inställd, alltså UTC
   *[other] tidszon { $time_zone }
}); ingen förskjutning med hela timmar får det att stämma.
drives_at_rest_shifted = { $rest_min } av { $driven_min } körning infaller på tider då klipparen ska vila enligt inställningarna ({ $time_zone ->
    [none] ingen tidszon är inställd, alltså UTC
   *[other] tidszon { $time_zone }
}); { $shift_h } { $later ->
    [yes] senare
   *[no] tidigare
} skulle det stämma{ $local_time ->
    [yes] : loggen verkar innehålla lokal tid som kallas UTC.
   *[no] .
}
calibrated = { $runs ->
    [one] En logg som den här
   *[other] { $runs } loggar som den här
} simulerades på ritningen; andelen som har körts över korrigerades med { $points } { $points ->
    [one] procentenhet
   *[other] procentenheter
} för det systematiska fel som då visade sig.
ways_disagree = Två sätt att räkna säger emot varandra: { $by_path_fraction } efter spåret som anpassats till vändningar och kanter, { $as_logged_fraction } efter positionerna som de loggades, korrigerade för sina fel. Det andra används, och ingen mark redovisas som missad.
as_logged_silent = Räknat som loggat skulle det vara { $as_logged_fraction }: det som kördes över under bortfallen ({ $silent_fraction } av tiden) saknas i det.
as_logged_sparse = Räknat som loggat skulle det vara { $as_logged_fraction }: med en position var { $period_s } skär raka linjer mellan dem av vändningarna.
as_logged_spread = Räknat som loggat skulle det vara { $as_logged_fraction }: positioner som är fel med ungefär { $error_m } sprider spåret över mark som inte kördes över.
as_logged_aside = Räknat som loggat skulle det vara { $as_logged_fraction }: positioner som är fel med ungefär { $error_m } för spåret ut från gräsmattan, eller in på mark som redan hade körts över.
not_calibrated_no_width = Andelen som har körts över är inte kalibrerad: för det behövs klippbredden.
not_calibrated_no_plan = Andelen som har körts över är inte kalibrerad: för det behövs en ritning att köra på.
not_calibrated_lanes = Andelen som har körts över är inte kalibrerad: körning i parallella banor går inte att simulera noga nog.
not_calibrated_no_drive = Andelen som har körts över är inte kalibrerad: loggen visar ingen körning.
not_calibrated_no_run = Andelen som har körts över är inte kalibrerad: ingen maskin som den här kan köra på ritningen.

## What follows where two answers to one question contradict each other

interval_holds_both = Spannet har gjorts så brett att både { $one_fraction } och { $other_fraction } ryms.
interval_wider = Spannet har gjorts { $times } gånger så brett.
interval_wider_by = Spannet har gjorts { $more_fraction } av gräsmattan bredare åt vardera hållet.
plan_not_believed = Bara { $explained_fraction } av vändningarna förklaras av ritningens kanter, så där loggen inte visar hur ritningen ligger anges ingen orsak.
legs_unlike = Den vanliga raksträckan är { $logged_m } i loggen och { $drawn_m } i simuleringar med den efterliknade maskinen: den rör sig på ett sätt som modellen inte känner till, och det som simuleringarna förutsäger är mindre säkert.
shows_wider = Mark upp till { $widest_m } bred förblir oavgjord: bara bredare fläckar skulle synas.

## Why a pocket was missed

too_narrow_to_explain = Här har klipparen inte kört, men positionerna är för dåliga för att visa varför en { $widest_m } bred lucka blev kvar; gå dit och titta.
gap_too_narrow = Delen bakom ({ $behind_m2 }) går inte att nå: öppningen är { $width_m } bred och klipparen behöver mer än { $needed_m }.
no_way_in = Den här delen ({ $area_m2 }) har ingen väg in: på ritningen hänger den inte ihop med marken som klipparen startar från.
no_way_in_driven = Den här delen ({ $area_m2 }) har ingen väg in: inget av det som klipparen körde leder dit.
turns_before_edge = Klipparen vänder { $setback_m } före kanten här, så klippskivan når inte den här remsan.
zone_elsewhere = Zonen{ $zone ->
    [none] { "" }
   *[other] { " " }”{ $zone }”
} verkar ligga någon annanstans än där den är ritad: klipparen körde { $path_m } inne i den ritade zonen och vände vid en linje utanför den.
zone_elsewhere_towards = Zonen{ $zone ->
    [none] { "" }
   *[other] { " " }”{ $zone }”
} verkar ligga längre åt { $towards_deg } än den är ritad: klipparen körde { $path_m } inne i den ritade zonen och vände vid en linje utanför den.
stuck_on_the_way = Klipparen fastnade { $times ->
    [1] en gång
    [2] två gånger
   *[other] { $times } gånger
} ({ $lost_min }) på väg till den här delen.
stuck_on_the_way_past = Klipparen fastnade { $times ->
    [1] en gång
    [2] två gånger
   *[other] { $times } gånger
} ({ $lost_min }) på väg till den här delen och kom { $at_least ->
    [yes] minst { $past ->
        [1] en gång
        [2] två gånger
       *[other] { $past } gånger
    }
   *[no] { $past ->
        [0] aldrig
        [1] en gång
        [2] två gånger
       *[other] { $past } gånger
    }
} förbi.
passage_shut = Passagen på { $width_m } verkar vara stängd: under { $driven_h } körning { $expected ->
    [one] väntades 1 genomfart och ingen sågs.
   *[other] väntades { $expected } genomfarter och ingen sågs.
}
something_stands = Här står något som är ungefär { $widest_m } brett och som inte finns på ritningen: klipparen vände vid det { $turns ->
    [1] en gång
    [2] två gånger
   *[other] { $turns } gånger
} och kom aldrig in.
something_may_stand = Här står något som är ungefär { $widest_m } brett, eller så har gräsmattan ett hål: klipparen vände vid det { $turns ->
    [1] en gång
    [2] två gånger
   *[other] { $turns } gånger
} och kom aldrig in. Är det en rabatt, ett träd eller en damm? En ritning där det finns med ger svaret.
strip_stays = En { $width_m } bred remsa blir kvar längs { $length_m } av kanten i { $edge_deg }.
strip_stays_turns = En { $width_m } bred remsa blir kvar längs { $length_m } av kanten i { $edge_deg }: klipparen vänder { $here_m } före kanten här, { $elsewhere_m } på andra ställen.
passage_seldom_found = Under { $driven_h } körning hittade klipparen { $entries ->
    [0] inte en enda gång
    [1] { $at_least ->
        [yes] sällan (minst en gång)
       *[no] bara en gång
    }
    [2] { $at_least ->
        [yes] sällan (minst två gånger)
       *[no] bara två gånger
    }
   *[other] { $at_least ->
        [yes] sällan (minst { $entries } gånger)
       *[no] bara { $entries } gånger
    }
} genom passagen på { $width_m }; de { $behind_m2 } som ligger bakom fick { $share_ratio } av sin rättvisa andel.
behind_passage_seldom = Inget spärrar den här delen, men klipparen kommer för sällan: de { $behind_m2 } som ligger bakom passagen på { $width_m } fick { $share_ratio } av sin rättvisa andel, och med turer som nu kommer det att förbli så.
comes_seldom = Inget spärrar den här delen, men klipparen kommer för sällan: marken runt den fick { $share_ratio } av sin rättvisa andel.
not_shown = Den missas oftare än slumpen förklarar, men den här loggen visar inte varför; gå dit och titta.

## Evidence for it

luck_not_lanes = En hel omgång i banor lämnar ingen { $width_m } bred lucka åt slumpen.
luck_under_thousandth = Slumpen ensam lämnar en { $width_m } bred lucka på färre än 1 av 1 000 sådana gräsmattor.
luck_one_in = Slumpen ensam lämnar en { $width_m } bred lucka på ungefär 1 av { $lawns } sådana gräsmattor.
passage_width = { $width_m } där den är smalast, varav { $free_m } är fritt för klipparens mitt; { $length_m } lång.
passage_crossings = Den bytte { $at_least ->
    [yes] minst { $crossings ->
        [1] en gång
        [2] två gånger
       *[other] { $crossings } gånger
    }
   *[no] { $crossings ->
        [0] aldrig
        [1] en gång
        [2] två gånger
       *[other] { $crossings } gånger
    }
} sida; en maskin som kör fritt omkring skulle ha gjort det { $expected ->
    [0] mindre än en gång
    [1] en gång
    [2] två gånger
   *[other] { $expected } gånger
} på samma körsträcka.
driven_behind = { $path_m } kördes bakom den, { $share_ratio } av den rättvisa andelen.
nothing_driven_in = Inget spår går in i den.
cells_near_edge = Nio tiondelar av den ligger inom { $within_m } från kanten.
path_in_zone = { $path_m } spår inne i zonen som den är ritad.
turns_beside = { $turns ->
    [one] 1 vändning
   *[other] { $turns } vändningar
} intill den här fläcken, där ritningen inte har någon kant.
stops_on_the_way = { $stops ->
    [one] 1 stopp
   *[other] { $stops } stopp
}, sammanlagt { $lost_min }; { $passes ->
    [one] 1 överfart
   *[other] { $passes } överfarter
} utan stopp.
share_behind = Delen bakom fick { $share_ratio } av sin rättvisa andel.
crossings_expected = { $expected ->
    [one] 1 genomfart
   *[other] { $expected } genomfarter
} väntades, ingen sågs.
turns_in_front = { $turns ->
    [one] 1 vändning
   *[other] { $turns } vändningar
} framför den, där ritningen inte har någon kant.
turns_around = { $turns ->
    [one] 1 vändning
   *[other] { $turns } vändningar
} vid den, längs { $rim_fraction } av dess öppna rand.
passes_expected = { $passes ->
    [one] 1 överfart
   *[other] { $passes } överfarter
} väntades över mark av den här bredden, ingen sågs.
strip_shape = { $length_m } lång, { $widest_m } där den är bredast, nio tiondelar av den inom { $within_m } från kanten.
turns_along = { $turns ->
    [one] 1 vändning
   *[other] { $turns } vändningar
} längs dess insida.
path_nearby = Nära den kördes { $share_ratio } av vad som i medeltal kördes på gräsmattan.
share_simulated = Simuleringar från den här stationen ger den { $share_ratio } av gräsmattans medelvärde.

## Evidence against it

gap_nearly_wide = Öppningen är nästan så bred som klipparen behöver, eller knappt bredare: mät den.
few_turns = Bara { $turns ->
    [one] 1 vändning.
   *[other] { $turns } vändningar.
}
visits_hidden = Så dåliga positioner döljer korta överfarter.
strip_thin = Remsan är smalare än tre gånger positionsfelet.
zone_may_be_open = Zonen kan vara rätt ritad och ha öppnats med avsikt.
also_behind_passage = Delen ligger också bakom en passage på { $width_m }.
one_outing_matters = En enda lyckosam tur skulle ändra de här siffrorna mycket.
luck_leaves_such = Med sådana här turer lämnar slumpen ett sådant ställe då och då.
look_decides = Vilket av de två det är: { $look ->
    [passage] se efter om något står i passagen.
    [width] mät passagen med måttband.
    [ground] se efter om något står på den marken, eller stänger till den.
    [zone] mät om zonen ligger där den är ritad.
    [stuck_spot] titta på stället där klipparen fastnar.
    [edge] se efter hur långt från kanten klipparen vänder där.
   *[another_log] logga { $log_h } körning till; om klipparen kan komma in visar { $told_fraction } av sådana loggar den där.
}

## Ground of which nothing is decided

not_yet = Inget är fel än: { $driven_h } körning är lite för { $lawn_m2 }; luckor på { $widest_m } är normala då och då.
not_yet_until = Inget är fel än: { $driven_h } körning är lite för { $lawn_m2 }; luckor på { $widest_m } är normala fram till ungefär { $decided_h } körning.
hidden_by_silence = Loggen har ett bortfall när klipparen kan ha varit där (sannolikhet { $chance_fraction }).
cause_withheld = Den här loggen visar inte hur ritningen ligger i trädgården, så ingen orsak anges och ingen ändring föreslås. Titta där, och kontrollera ritningen eller logga bättre positioner.
shown_too_little = Loggen visar för lite för att det ska gå att säga om det här missades.

## What to look at where it got stuck

stuck_near = Stället ligger { $distance_m } från { $feature ->
    [zone] kanten av spärrzonen ”{ $name }”
    [obstacle] kanten av hindret ”{ $name }”
   *[lawn_edge] gräsmattans kant
}: leta efter rötter, en nivåskillnad eller mjuk mark där.
stuck_in_passage = Stället ligger i passagen på { $width_m }: leta efter rötter, en nivåskillnad eller mjuk mark där.
stuck_in_passage_near = Stället ligger i passagen på { $width_m }, { $distance_m } från { $feature ->
    [zone] kanten av spärrzonen ”{ $name }”
    [obstacle] kanten av hindret ”{ $name }”
   *[lawn_edge] gräsmattans kant
}: leta efter rötter, en nivåskillnad eller mjuk mark där.
stuck_in_the_open = Inget på ritningen är i närheten: leta efter rötter, en grop eller mjuk mark.
stuck_somewhere = Leta efter rötter, en grop eller mjuk mark.

## What to change

lay_guide_run = Lägg en ledlinje med { $wire_m } ny kabel till bortre änden av { $pocket } och skicka { $outings_of_ten } av 10 turer längs den{ $longer ->
    [yes] , och låt klipparen arbeta { $added_h } längre om dagen
   *[no] { "" }
}: efter { $log_h } som i den här loggen har då vanligen ungefär { $after_fraction } av { $pocket } körts över, mot { $before_fraction } om inget ändras.
move_zone = Flytta zonen ”{ $zone }” { $shift_m } dit där den är ritad, eftersom vändningarna visar att den ligger någon annanstans{ $longer ->
    [yes] , och låt klipparen arbeta { $added_h } längre om dagen
   *[no] { "" }
}: efter { $log_h } som i den här loggen har då vanligen ungefär { $after_fraction } av { $pocket } körts över, mot { $before_fraction } om inget ändras.
facing_side = Sidan som vetter mot { $faces_deg }.
shrink_zone = Flytta in den sida av zonen ”{ $zone }” som vetter mot { $faces_deg } med { $shift_m }, så att vägen förbi den till { $pocket } blir { $passage_m } bred{ $longer ->
    [yes] , och låt klipparen arbeta { $added_h } längre om dagen
   *[no] { "" }
}: efter { $log_h } som i den här loggen har då vanligen ungefär { $after_fraction } av { $pocket } körts över, mot { $before_fraction } om inget ändras.
add_zone = Håll klipparen borta från stället där den fastnar ({ $spot }), så att den kommer till { $pocket } oftare{ $longer ->
    [yes] , och låt den arbeta { $added_h } längre om dagen
   *[no] { "" }
}: efter { $log_h } som i den här loggen har då vanligen ungefär { $after_fraction } av { $pocket } körts över, mot { $before_fraction } om inget ändras.
work_longer = Låt klipparen arbeta { $added_h } längre om dagen: efter { $log_h } som i den här loggen har då vanligen ungefär { $after_fraction } av { $pocket } körts över, mot { $before_fraction } om inget ändras.
shift_boundary = Flytta gränsen utåt med { $shift_m } längs { $pocket }{ $longer ->
    [yes] , och låt klipparen arbeta { $added_h } längre om dagen
   *[no] { "" }
}: efter { $log_h } som i den här loggen har då vanligen ungefär { $after_fraction } av { $pocket } körts över, mot { $before_fraction } om inget ändras.

## How well a simulated machine fits the log

fit_trusted = En simulerad maskin som kör som den här gjorde ({ $speed_mps }, inlärt från { $turns ->
    [one] 1 vändning
   *[other] { $turns } vändningar
} och { $outings ->
    [one] 1 tur
   *[other] { $outings } turer
}) kör över lika mycket av gräsmattan som loggen visar.
fit_visits_differ = Simuleringarna kör över mer eller mindre av gräsmattan än loggen visar: något på marken saknas på ritningen, eller maskinen beter sig olika från dag till dag. Förutsägelserna ges med bredare spann.
fit_path_differs = Simuleringarna kör en längre eller kortare sträcka än loggen visar. Förutsägelserna ges med bredare spann.
not_fitted_lanes = Inget förutsägs: maskinen kör i banor, som inte beror på slumpen.
not_fitted_several_machines = Inget förutsägs: { $machines } maskiner arbetade här, och bara en kan efterliknas.
not_fitted_few_turns = Inget förutsägs: { $turns ->
    [one] bara 1 vändning vid en kant sågs
   *[other] bara { $turns } vändningar vid en kant sågs
}, och { $expected } behövs.
not_fitted_no_legs = Inget förutsägs: spåret visar inga raksträckor mellan vändningar.
not_fitted_no_ground = Inget förutsägs: ritningen lämnar ingen mark att köra på.
not_simulated = Inget förutsägs: { $why }.

## Hours and grass

promise_beyond_hours = { $promised_fraction } inom { $promised_days ->
    [one] 1 dag
   *[other] { $promised_days } dagar
} går inte att nå med fler timmar: det skulle kräva { $needed_h } arbete om dagen.
promise_needs_hours = { $promised_fraction } inom { $promised_days ->
    [one] 1 dag
   *[other] { $promised_days } dagar
} kräver ungefär { $needed_h } arbete om dagen i den här takten; klipparen arbetade { $worked_h }, varav { $driven_h } körning.
promise_beyond_reach = Hur många timmar klipparen än arbetar går det inte att nå { $promised_fraction } inom { $promised_days ->
    [one] 1 dag
   *[other] { $promised_days } dagar
}: för mycket mark missas. Den arbetade { $worked_h } om dagen, varav { $driven_h } körning.
promise_hours_unknown = Klipparen arbetade { $worked_h } om dagen, varav { $driven_h } körning; den här loggen visar inte vad { $promised_fraction } inom { $promised_days ->
    [one] 1 dag
   *[other] { $promised_days } dagar
} skulle kräva.
lower_cut_unknown = Den här loggen visar inte om varje plats har körts över vid den nuvarande klipphöjden.
lower_cut = Varje plats som är bred nog att synas har körts över vid den nuvarande höjden (minst { $visited_fraction } av gräsmattan): klipphöjden kan sänkas ett steg.
lower_cut_places_open = Låt klipphöjden vara: { $places ->
    [one] 1 plats som är bred nog att synas har inte körts över än
   *[other] { $places } platser som är breda nog att synas har inte körts över än
}, och högt gräs stoppar en maskin som är lågt ställd.
lower_cut_unsure = Låt klipphöjden vara: för bara { $visited_fraction } av gräsmattan är det säkert att den har körts över, och högt gräs stoppar en maskin som är lågt ställd.
grass_log_too_short = Gräs som växer { $growth_mm } om dagen kan vänta { $allowed_days ->
    [one] 1 dag
   *[other] { $allowed_days } dagar
} mellan två överfarter (tredjedelsregeln); den här loggen på { $log_days ->
    [one] 1 dag
   *[other] { $log_days } dagar
} är för kort för att visa om det tog längre tid någonstans.
grass_overdue = { $overdue_fraction } av gräsmattan fick vänta mer än { $allowed_days ->
    [one] 1 dag
   *[other] { $allowed_days } dagar
} på en överfart, för länge för gräs som växer { $growth_mm } om dagen (tredjedelsregeln): det behövs fler överfarter.
grass_too_many_passes = Varje plats körs över { $passes } gånger under { $allowed_days ->
    [one] den dag
   *[other] de { $allowed_days } dagar
} som gräset kunde vänta (tredjedelsregeln): färre timmar skulle räcka och skona gräsmattan.
grass_enough_passes = Det gick inte mer än { $allowed_days ->
    [one] 1 dag
   *[other] { $allowed_days } dagar
} mellan två överfarter, vilket är vad gräs som växer { $growth_mm } om dagen behöver (tredjedelsregeln).

## What a change brought

lawn_unknown = De här loggarna visar inte om gräsmattan som helhet har blivit bättre.
lawn_more = { $points } { $points ->
    [one] procentenhet
   *[other] procentenheter
} mer av gräsmattan körs över än förut.
lawn_less = { $points } { $points ->
    [one] procentenhet
   *[other] procentenheter
} mindre av gräsmattan körs över än förut.
lawn_alike = Gräsmattan som helhet visar ingen skillnad utöver en natts slump.
pockets_mended = Åtgärdat: { $pockets }.
pockets_better = Bättre: { $pockets }.
pockets_new = Nytt: { $pockets }.
pocket_compared = { $pocket }: { $before_fraction } före, { $after_fraction } efter; { $change ->
    [mended] { $within_luck ->
        [yes] nästan hela körs över nu, men det skulle slumpen ensam ge i mer än ett av tio sådana par av loggar: titta igen efter några nätter
       *[no] nästan hela körs över nu
    }
    [better] mer av den körs över än slumpen skulle ge
    [new] den kördes över förut
   *[unchanged] { $within_luck ->
        [yes] mer av den körs över, men inte mer än slumpen kan ge
       *[no] ingen skillnad utöver slumpen
    }
}.
change_decided = { $pocket }: avgjort efter { $decided ->
    [one] den första
   *[other] { $decided }
} av { $nights } nätter, med högst 5 % risk för fel, hur ofta du än har tittat.
change_open = { $pocket }: { $more ->
    [one] en natt till
   *[other] { $more } nätter till
} som de här skulle avgöra det.

## What to beware of

blades_on_lawn = Knivar i rörelse: stoppa klipparen och säkra den mot start innan du rör vid den; håll barn och husdjur borta från gräsmattan medan den arbetar.
blades_near = Knivar i rörelse: stoppa klipparen och säkra den mot start innan du arbetar i närheten av den.
outline_from_drive = Ingen ritning gavs: konturen är ritad efter själva körningen. Gräsmatta som klipparen aldrig kom i närheten av räknas inte, och det som den körde runt räknas som en ö.
plan_fault = Ritning: { $fault }.
dig_at_spot = Innan du gräver vid ett ställe där klipparen fastnar: låt märka ut nedgrävda kablar och rör; privata ledningar märks inte ut. Rötterna kan tillhöra ett skyddat träd.
dig = Innan du gräver: låt märka ut nedgrävda kablar och rör; privata ledningar märks inte ut.
zone_may_protect = En zon kan skydda rötter, ledningar eller människor: ta reda på varför den finns innan du ändrar den.
hours_by_day = Lägg bara till timmar på dagen: på natten är smådjur ute.
driven_in_the_dark = { $dark_h } av körningen föll i mörkret, då igelkottar och andra små djur är ute: låt den arbeta på dagen.
beyond_the_line = Bortom linjen kan det finnas plattor, vatten, en sluttning eller någon annans mark: titta innan du flyttar den.
look_before_zone = Titta på marken först: en rot, en kant eller blöt mark som går att åtgärda behöver ingen zon.
guide_exit_unknown = Loggen visar inte var längs en ledlinje den här maskinen lämnar den; det antas ske någonstans på de sista två femtedelarna. Om det går att ställa in, låt den lämna linjen nära slutet.
local_codes = Lokala bestämmelser och maskinens egen bruksanvisning har företräde.
other_reasons = En skillnad beskriver vad som har körts över i de här loggarna. Något annat än ändringen kan ligga bakom: väder, andra tider, en kniv, någons trädgårdsbord.
at_equal_hours = De två sidorna skiljer sig i körtid; de jämförs efter lika många timmar.
plan_unsure_before = Loggen visar inte hur ritningen ligger i trädgården före ändringen, så platserna där kan vara fel.
plan_unsure_after = Loggen visar inte hur ritningen ligger i trädgården efter ändringen, så platserna där kan vara fel.
place_often = Har körts över { $visits ->
    [one] en gång
   *[other] { $visits } gånger
}, gräsmattan i medeltal { $lawn_visits }. Om gräset ändå är långt, titta på knivarna, klipphöjden, hur det växer där och på sluttningar.
place_seldom = Har sällan körts över: { $visits ->
    [one] en gång
   *[other] { $visits } gånger
}, gräsmattan i medeltal { $lawn_visits }. Titta efter vad som gör vägen dit trång: en passage, ett hörn, en kant tätt intill.
place_few = Har hittills körts över { $visits ->
    [one] en gång
   *[other] { $visits } gånger
}, gräsmattan i medeltal { $lawn_visits }: färre, men skillnaden är inte större än slumpen ensam ger. Fler nätter avgör.
place_never = Missad: platsen ligger i fläcken { $pocket } ({ $area_m2 }).
place_gap = Har inte körts över i den här loggen, men luckan är så liten att slumpen ensam lämnar sådana. Logga en natt till och fråga igen.
place_not_yet = Har inte körts över än: platsen ligger i { $pocket }, som slumpen fortfarande förklarar. Sammanlagt { $decided_h } körning avgör.
place_not_yet_open = Har inte körts över än: platsen ligger i { $pocket }, som slumpen fortfarande förklarar. Logga fler nätter.
place_unseen = Den här loggen ger inget svar: platsen ligger i { $ground }, mark utan underlag. Logga en natt utan bortfall där.
place_is_stuck_spot = Klipparen förlorade tid här: { $spot }, där den fastnar, sammanlagt { $lost_min }.
place_off_lawn = Platsen ligger { $distance_m } utanför gräsmattan, där inget räknas. Om det är gräsmatta saknas den på ritningen.
place_elsewhere = Platsen ligger { $distance_m } från gräsmattan: i en annan trädgård, eller så är något av talen fel.
place_beyond_outline = Den här loggen ger inget svar: platsen ligger { $distance_m } utanför den gräsmatta som ritades efter körningen. Om det är gräsmatta, gör en ritning där den finns med.
place_in_island = Har aldrig körts över: platsen ligger i ön { $island } ({ $area_m2 }), som klipparen vände vid från flera håll. En rabatt, ett träd, en damm, eller gräsmatta bakom något? En ritning ger svaret.
place_cannot_tell = Den här loggen ger inget svar: dess positioner är ungefär { $error_m } fel, och inom det avståndet finns både mark som har körts över ofta och mark som aldrig har det. Logga med en bättre mottagare, eller längre.
place_compared = { $said ->
    [none] Platsen som frågan gäller
   *[other] ”{ $said }”
}: kördes förut över { $before_visits ->
    [one] en gång
   *[other] { $before_visits } gånger
} på { $before_h } körning, sedan dess { $after_visits ->
    [one] en gång
   *[other] { $after_visits } gånger
} på { $after_h }.
place_needs_width = Överfarter räknas inte utan klippbredden: mät den, ange den och fråga igen.
nights_unknown = De här loggarna visar inte hur mycket en natt skiljer sig från nästa, så ingen skillnad kan kallas säker.

## Words for a course

compass = { $eighth ->
    [0] norr
    [1] nordost
    [2] öster
    [3] sydost
    [4] söder
    [5] sydväst
    [6] väster
   *[7] nordväst
}

## What our own words mean

cause = { $value ->
    [walled_off] ingen väg in
    [narrow_passage] smal passage
    [edge_band] remsa längs kanten
    [zone_misplaced] linjen ligger inte där den är ritad
    [beyond_stuck_spot] bortom ett ställe där klipparen fastnar
    [too_few_visits] klipparen kommer för sällan
    [too_little_time] för lite körtid
   *[undetermined] framgår inte av loggen
}
asked-short = { $value ->
    [place_often] Har körts över som resten
    [place_seldom] Har sällan körts över
    [place_few] Har körts över mindre hittills
    [place_never] Missad
    [place_gap] Har inte körts över
    [place_not_yet] Inte än
    [place_not_yet_open] Inte än
    [place_is_stuck_spot] Klipparen fastnar här
    [place_off_lawn] Utanför gräsmattan
    [place_elsewhere] Någon annanstans
    [place_in_island] Har aldrig körts över
    [place_needs_width] Inte räknad
   *[place_cannot_tell] Framgår inte av loggen
}
cause-meaning = { $value ->
    [walled_off] Maskinen har ingen väg in: öppningen är för trång för den, eller så står något där.
    [narrow_passage] Vägen in är så smal att maskinen sällan hittar den.
    [edge_band] En remsa längs kanten blir kvar utanför linjen där maskinen vänder.
    [zone_misplaced] Maskinen vänder vid en linje som ligger någon annanstans än ritningen visar.
    [beyond_stuck_spot] Maskinen fastnar på vägen dit.
    [too_few_visits] Vägen är öppen, men körningarna leder dit för sällan.
    [too_little_time] Hela gräsmattan fylls som den ska; det behövs bara fler timmar.
   *[undetermined] Den här loggen visar inte varför.
}
suggestion = { $value ->
    [guide_run] Lägg en ledlinje
    [zone_move] Flytta en spärrzon
    [zone_shrink] Gör en spärrzon mindre
    [zone_add] Lägg till en spärrzon
    [more_hours] Låt klipparen arbeta längre
   *[boundary_shift] Flytta gränsen
}
suggestion-inline = { $value ->
    [guide_run] lägg en ledlinje
    [zone_move] flytta en spärrzon
    [zone_shrink] gör en spärrzon mindre
    [zone_add] lägg till en spärrzon
    [more_hours] låt klipparen arbeta längre
   *[boundary_shift] flytta gränsen
}
noise-source = { $value ->
    [station_scatter] spridningen vid stillastående i laddstationen
    [rest_scatter] spridningen vid stillastående på annan plats
    [driving_roughness] spårets ojämnhet under körning
    [device_card] mottagarens kort
    [stated] inställningarna
    [receiver_claim] mottagarens egen uppgift
    [dilution_of_precision] satelliternas läge (DOP) gånger ett vanligt avståndsfel
   *[default] ett antaget standardvärde, eftersom loggen inte ger något
}
promise = { $value ->
    [kept] hållet
    [broken] inte hållet
   *[cannot_tell] framgår inte av loggen
}
fix-quality = { $value ->
    [unknown] inte angiven
    [autonomous] enbart satelliter
    [differential] differentiell
    [precise] precisionstjänst
    [rtk_fixed] RTK fixed
    [rtk_float] RTK float
    [estimated] död räkning
    [manual] inskriven för hand
    [simulated] simulator
   *[other] okänd kod
}
pocket-change = { $value ->
    [mended] åtgärdad
    [better] bättre
    [new] ny
   *[unchanged] oförändrad
}
out-of-reach = { $value ->
    [edge] en remsa längs kanten eller ett hörn: maskinen vänder innan klippskivan är framme
   *[cut_off] avskuret bakom en passage som är för trång, eller utan någon väg in
}
presence = { $value ->
    [came] bara senare: innan dess körde klipparen igenom platsen
    [went] bara i början: sedan dess har klipparen kört igenom platsen
    [came_and_went] en tid: både före och efter körde klipparen igenom platsen
   *[throughout] hela tiden
}
way-home = { $value ->
    [guide_run] längs en ledlinje
    [boundary] längs gränsen
   *[straight] rakt över gräsmattan
}
lower-cut = { $value ->
    [yes] ja
    [not_yet] inte än
   *[cannot_tell] framgår inte av loggen
}
growth-source = { $value ->
    [settings] från inställningarna
   *[temperature] från medeltemperaturen
}
failure-reason = { $value ->
    [unreadable] oläslig
    [damaged] skadad
    [clock] klocka
    [plan] ritning
    [settings] inställningar
    [analysis] analys
    [time] tog för lång tid
    [memory] för lite minne
    [died] avbruten
   *[pieces] i bitar
}
fit-figure = { $value ->
    [visited_fraction] andel av gräsmattan som körts över, %
    [path_m] körd sträcka, { $unit }
    [visits_map_correlation] karta över överfarter, korrelation med medelvärdet av simuleringarna
    [leg_m] raksträcka mellan två vändningar, median, { $unit }
   *[revisit_path_m] körd sträcka mellan två överfarter av en plats, median, { $unit }
}

## Stuck spots

stuck-came = Den kom oftast körande åt { $course_deg }.

## page: summary

count-pocket = { $count ->
    [one] 1 fläck
   *[other] { $count } fläckar
}
count-area = { $count }, { $area }
about-more-driving-are = Det behövs ungefär { $hours } körning till.
driven-over-percent-area = { $percent } av { $area } har körts över.
driven-over-percent-area-range = { $percent } av { $area } har körts över ({ $range }, med 90 % sannolikhet).
lost-at = { $time } förlorade vid { $id }
suggestion-by = { $value ->
    [guide_run] Lägg en ledlinje på { $length }
    [zone_move] Flytta en spärrzon { $length }
    [zone_shrink] Gör en spärrzon { $length } mindre
    [zone_add] Lägg till en spärrzon på { $length }
    [more_hours] Låt klipparen arbeta { $length } längre
   *[boundary_shift] Flytta gränsen { $length }
}
nine-ten-logs-pocket = Nio av tio simuleringar: { $range_2 } av fläcken med ändringen, { $range } om inget ändras.{ $more ->
    [0] { "" }
    [one] { " " }Nedan finns 1 ändring till.
   *[other] { " " }Nedan finns { $more } ändringar till.
}
let-run-on-after = Låt klipparen fortsätta. Det som inte har körts över efter sammanlagt { $hours } körning är mer än otur.
luck-leaves-such-gap = Sannolikhet att slumpen ensam lämnar en lucka som { $id }: { $chance }.
sure-not-driven-over = { $percent } säkert att { $id } inte har körts över
sure-change-helps = { $percent } säkert att { $id } hjälper
change-brings-its-gain = I så stor del av simuleringarna blev fläcken bättre, och förutsägelsen höll.
none-it-shows = Inget som den här loggen kan visa
how-much-driven-over = Hur mycket som har körts över beror på klippbredden, som inte angavs; tabellen för varje bredd finns nedan.
not-counted = Inte räknat
outline-drawn-from-log = Konturen ritades efter själva loggen, med kanter som stämmer på ungefär { $error } när: gräsmatta som klipparen aldrig kom i närheten av räknas inte.
asked-about = { $count }, sammanlagt { $area }, som klipparen vände vid från flera håll och aldrig körde in på: rabatter, träd, dammar, eller gräsmatta bakom något? Räknas inte som gräsmatta.
visit = Besök:
quote-open = ”
quote-close = ”
asked-place = Platsen som frågan gäller
asked-row = Körts över: { $visits }. Senast { $last }; vanligen { $due }.
asked-row-never = Körts över: { $visits }.
asked-mark = { $id }, frågan: { $said }
asked-visits = { $number } gånger i den här loggen ({ $low } till { $high })
asked-visits-beside = { $visits }; gräsmattan i medeltal { $mean }
asked-due = en gång på { $hours } körning
walk-first-hint = gå först längs kanten vid { $place }: på { $length } av den vände klipparen ingenstans
walk-first = Gå först längs kanten vid { $place }: på { $length } av den vände klipparen ingenstans.
nothing-needs-reason-again = Inget behöver förklaras
this-log-cannot-tell = Framgår inte av loggen
not-by = Inte av en slump
change-nothing-garden-on = Ändra inget i trädgården på grund av den här loggen.
measure-width-cutting-disc = Mät klippskivans bredd och räkna igen.
walk-round-lawn-with = Gå runt gräsmattan med loggern och gör en ritning av det: vad som ligger bortom körningen syns inte i loggen.
no-ground-left-out = Slumpen förklarar alla luckor som blev kvar.
one-count-no-interval = En räkning, inget intervall
lawn-driven-over-with = av gräsmattan har körts över, med 90 % sannolikhet.

## terminal: mod

count-smaller-pocket = { $count ->
    [one] 1 mindre fläck
   *[other] { $count } mindre fläckar
}
count-place = { $count ->
    [one] 1 plats
   *[other] { $count } platser
}
count-time = { $count ->
    [one] 1 gång
   *[other] { $count } gånger
}
at-cm = { $percent } vid { $width }
depends-on-cutting-width = beror på klippbredden, som inte angavs: { $list }
pockets-from = fläckar från { $length } bredd ({ $area })
log-good-enough-can = Loggen är bra nog: den kan visa missade { $smallest }.
log-too-short-its = Loggen är för kort: positionerna är bra, men enbart otur kan lämna fläckar som är upp till { $length } breda ({ $area }).
log-not-good-enough = Loggen är inte bra nog: den kan bara visa missade { $smallest }.
also-said = Också: { $said }
lawn-percent-number-area = { $percent } av gräsmattan, { $number } av { $area } ({ $interval })
missed-area = missat { $area }
not-yet = inte än { $area }
without-evidence = utan underlag { $area }
none-told = framgår inte av loggen
none-known = inget innanför den ritade konturen; vad som ligger bortom den framgår inte av loggen
none-known-narrower = inget från { $width } bredd innanför den ritade konturen; smalare fläckar, och vad som ligger bortom den, kan loggen inte visa
none-narrower = inget från { $width } bredd; smalare fläckar kan loggen inte visa
none-but-luck = inget; slumpen förklarar luckorna
none-shown-unseen = inget syns, men { $area } är utan underlag: framgår inte av loggen
smaller-gaps = mindre luckor { $area }
of-id = { $id } { $share } av { $area }
all-luck-does-not = { $count }, sammanlagt { $area }, mer än slumpen förklarar
and-more = och { $more }
also-possible = också möjligt: { $join }
decided-after-driving-all = avgjort efter sammanlagt { $hours } körning
luck-still-explains-them = { $count }, { $area }: slumpen förklarar dem fortfarande; { $decide }
lost-count = { $count }, { $time } förlorade
lost-within = { $count }, { $time } förlorade, inom { $length } från { $place }
more-spots = och { $spots } till
ladder-title = Mindre och större
ladder = Efter storlek, medelvärde av simulerade loggar: { $list }.
rung = { $size }: { $fraction }{ $lawn ->
    [none] { "" }
   *[other] , gräsmatta { $lawn }
}{ $chosen ->
    [yes] { " " }(den här)
   *[no] { "" }
}
change-set = Tillsammans, först det som ger mest mark för arbetet, var och en räknad efter de föregående: { $list }. Av gräsmattan är då { $lawn } överkörd.
set-step = { $id } { $area } mer ({ $fraction } av dessa fläckar)
visits-title = { $count ->
    [one] 1 besök i den här trädgården
   *[other] { $count } besök i den här trädgården
}
visits-when = När
visits-who = Vem
visits-machine = Klippare
visits-said = Vad kunden sade
visits-changed = Vad som ändrades
visits-sure = Avgjort
visits-pocket = { $id } { $before } → { $after }
visits-decided = { $decided ->
    [none] { $more ->
        [none] inte avgjort
        [1] inte avgjort: en sådan natt till
       *[other] inte avgjort: { $more } sådana nätter till
    }
    [beyond_luck] avgjort
    [1] avgjort efter första natten
   *[other] avgjort efter { $decided } nätter
}
nights-differ = Så mycket skiljer sig enskilda loggar: nio av tio trädgårdar är klara efter { $hours } körning.
pocket-this-log-if = Fläck: { $percent } i den här loggen, { $fraction } om inget ändras, { $fraction_2 } med ändringen{ $sure ->
    [none] { "" }
   *[other] ; { $sure } säkert
}.{ $more ->
    [0] { "" }
    [one] { " " }Och 1 ändring till.
   *[other] { " " }Och { $more } ändringar till.
}
lawn-within-percent-days = { $percent } av gräsmattan inom { $days }: { $word }{ $probability ->
    [none] { "" }
   *[other] { " " }(sannolikhet att löftet hålls: { $probability })
}
one-every-driven-fixes = { $fixes }, en per { $time }; { $path } körda på { $time_2 }{ $silent ->
    [none] { "" }
   *[other] , { $silent } utan mätpunkter
}
log-too-short-positions = Loggen är för kort: positionerna är bra, men den visar ingenting av en gräsmatta än.
log-not-good-enough-shows = Loggen är inte bra nog: den visar ingenting av en gräsmatta.
not-looked-for-without = har inte letats efter utan klippbredd
after-how-many-hours = efter hur många timmar det avgörs går inte att säga

## terminal: inspection

count-fix = { $count ->
    [one] 1 mätpunkt
   *[other] { $count } mätpunkter
}
count-fix-repeats-the = { $count ->
    [one] 1 mätpunkt upprepar den förra positionen
   *[other] { $count } mätpunkter upprepar den förra positionen
}
around-lat = kring { $lat_deg }, { $lon_deg }
east-by = { $length } i öst–väst gånger { $length_2 } i nord–syd, { $middle }
made-by = { $format }, gjord av { $id }
its-bytes = { $percent } av filens byte
from-count = { $count } ur { $share }{ $resolution ->
    [none] { "" }
   *[other] , steg om { $resolution }
}
first-on = ; först på rad { $count }
first-on-line = ; först på rad { $count }: { $id }
to-id = { $id } till { $id_2 }
one-every = { $fixes }, en per { $time }
driving-time = körning { $time }
at-station = i laddstationen { $time }
standing-elsewhere = stillastående på annan plats { $time }
silent-time = bortfall { $time }
from-after-start-further = { $time } från { $time_2 } efter början, { $length } längre bort
shorter-value = ; och { $value } kortare
middle-below-number-number = { $number } i mitten, 95 % under { $number_2 }
last-digit-count-again = { $count } till sista siffran
from-fix-fix-length = { $length } från mätpunkt till mätpunkt
drifting-length = { $length } drift{ $time ->
    [none] { "" }
   *[other] { " " }över ungefär { $time }
}
standard-deviation-per-axis = { $join } (standardavvikelse per axel)
from-figures = { $figures }; från { $word }
local-metres-no-place = i lokala meter, utan geografiska koordinater
no-bytes = inga byte
no-dates = inga datum
not-known = inte känt
dark-of-driven = { $dark } av { $driven } körning{ $between }: då är igelkottar och andra små djur ute
in-the-dark = I mörker: { $said }.
dark-between = { "" } (borgerlig skymning { $dusk }, gryning { $dawn }{ $zone })

## terminal: comparison

count-night = { $count ->
    [one] 1 natt
   *[other] { $count } nätter
}
both-plans-have-area = { $area } som finns på båda ritningarna
built-as = { $value ->
    [suggested] utfört som föreslaget
    [otherwise] utfört på annat sätt
   *[nothing] inte utfört som föreslaget
}
predicted-for = { $built }; förutsagt för { $id }: { $percent } ({ $interval }), uppmätt { $percent_2 }: { $held }
driving-percent = { $percent } ({ $interval }){ $equal ->
    [none] { "" }
   *[other] , { $equal } efter lika många timmar
}; { $count }, { $hours } körning
smaller-pockets = och { $pockets } mindre

## page: before digging

plan-on-paper = En ritning, prövad på papper
reaches-everything = Enligt den här ritningen kommer maskinen åt överallt.
leaves-parts = { $count ->
    [one] En del
   *[other] { $count } delar
} av gräsmattan ({ $area }) går inte att nå.
promise-needs = { $percent } inom { $count ->
    [one] 1 dag
   *[other] { $count } dagar
} kräver ungefär { $hours } arbete om dagen.
promise-not-kept = { $percent } inom { $count ->
    [one] 1 dag
   *[other] { $count } dagar
} går inte att nå med bara fler timmar.
typical-run = Gräsmattan så som en typisk simulering lämnar den efter { $count ->
    [one] 1 dag
   *[other] { $count } dagar
} med { $hours } arbete om dagen. Mörkare mark har körts över oftare; skrafferad mark missades.
count-day = { $count ->
    [one] 1 dag
   *[other] { $count } dagar
}
nine-in-ten-gardens = i nio av tio simuleringar { $low } till { $high }
give-width-for-days = Ange hur brett skivan klipper (machine.cut_width_m), och se till att det finns plats för maskinen.
trim-by-hand = { $area } längs kanter och i hörn förblir långt: klipp det för hand
boundary-with-slack = runt gräsmattan och dess zoner; sträckor mellan dem och extra längd vid hörn tillkommer
no-way-through = ingen väg igenom
done-after = { $share } av simuleringarna efter { $count ->
    [one] 1 dag
   *[other] { $count } dagar
}
share-of-driving = Andelen är den för turer utan ledlinje; vid 100 % körs varje kvadratmeter bakom passagen lika ofta som på andra ställen. Det som har körts över kommer från simuleringarna, där ledlinjerna är med.
from-middle = mitt vid { $place }
assumed-machine = En maskin som vänder med sin mitt { $setback } före kanten och kör rakt fram med { $speed_mps } tills den vänder på måfå. Ställ machine.past_boundary_m, machine.speed_mps och arbetstiderna efter vad som gäller för din.
assumed-level = Plan, torr mark: ritningen har inga höjder, så sluttningar och mjuk mark är inte med i prognosen.

## page: handout

not-driven-over-up = Har inte körts över: { $area }, upp till { $length } brett
mower-stood-here-all = Klipparen stod { $times ->
    [0] aldrig
    [1] en gång
    [2] två gånger
   *[other] { $times } gånger
} stilla här, sammanlagt { $time }
pocket-driven-over-this = { $why } Av fläcken har { $percent } körts över i den här loggen; { $fraction } väntas om inget ändras, { $fraction_2 } med ändringen.
promised-lawn-within-percent = Utlovat: { $percent } av gräsmattan inom { $days }. { $word }.
more-on-page-on = { $left_out } till på sidan på skärmen.

## page: site_facts

count-way = { $count ->
    [one] 1 väg
   *[other] { $count } vägar
}
about-count = { $count } av ungefär { $number }
usually-out-began-along = Vanligen { $time } ute{ $charging ->
    [none] { "" }
   *[other] ; { $charging } i laddstationen mellan två turer
}. { $count } började längs en ledlinje.
brackets-usual-time-join = { $join }; inom parentes den vanliga tiden.
day-hours = { $hours } om dagen
between-first-departure-last = Mellan första avfärd och sista återkomst, varav { $hours } körning. { $said }
growth-a-day = { $length } om dagen
tenth-lawn-steeper-steepest = En tiondel av gräsmattan är brantare. Den brantaste delen ligger vid { $place }.
not-logged = inte loggat
more-than = mer än bara timmar

## page: compare

before-after = Före och efter

found-when = { $value ->
    [before] före
   *[after] efter
}

## page: facts

about-number = ungefär 1 på { $number }
long-driven-over-times = { $length } lång, har körts över { $number } gånger så ofta som gräsmattans medelvärde, som mest { $count }.
wire-length = { $length } kabel
shift-length = { $length } flytt
more-day = { $hours } mer om dagen
less-new-than-chance = hittar mindre ny mark än slumpen skulle göra (effektivitet { $figure })
new-as-chance = hittar ny mark som slumpen skulle göra (effektivitet { $figure }; 100 % är ingen överlappning)
more-new-than-chance = hittar mer ny mark än slumpen skulle göra (effektivitet { $figure }; 100 % är ingen överlappning)
hardly-twice = kör knappt över någon mark två gånger (effektivitet { $figure })
reach-both = 95 % efter { $first }, 99 % efter { $second } körning
reach-95 = 95 % efter { $after } körning, 99 % utom räckhåll
reach-99 = 99 % efter { $after } körning
reach-none = 95 % och 99 % utom räckhåll
outings-sent-along-percent = { $percent } av turerna skickas längs den
half-lawn-driven-over = Hälften av gräsmattan har körts över minst så ofta; medelvärdet är { $number }.
half-waits-are-shorter = Hälften av väntetiderna är kortare. Nio av tio: { $interval_h }. 99 av 100: { $interval_h_2 }.
less-than = mindre än 1 på 10 000
cannot-be = går inte att säga
not-counted-again = inte räknat
pocket-again = fläcken
whole-lawn = hela gräsmattan
longer-than-this-log = längre än den här loggen
not-told-apart-yet = inte åtskilt än

## page: page

count-log-file = { $count ->
    [one] 1 loggfil
   *[other] { $count } loggfiler
}
last-visit-longer-ago = Senaste överfarten mer än { $hours } före loggens slut
missed-area-again = missad, { $area }
stuck-lost = fastnat, { $time } förlorade
not-yet-area = inte än, { $area }
not-yet-heading = Inte än: { $count } som fler timmar avgör
to-start = { $start } till { $end } ({ $zone_words })
driving-from = { $span }. { $driven } körning, ur { $logs }.
without-evidence-area = { $area } utan underlag. { $said }
outside-boundary-for-after = { $length } utanför gränsen under { $time }, { $time_2 } efter början; { $came_back ->
    [yes] den kom tillbaka av sig själv
   *[no] den kom inte tillbaka inom den här loggen
}.
silence-after-start-may = { $time } bortfall, { $time_2 } efter början, { $place }: klipparen kan ha stått stilla där, högst så länge.
machine-efficiency = Maskinen { $efficiency }.
probability-kept-percent-again = Sannolikhet att löftet hålls: { $percent }.
lawn-within-percent-days-probability = { $percent } av gräsmattan inom { $days }. { $probability }
lawn-report = Rapport om gräsmattan
times-driven-over-darker = Antal överfarter (mörkare: oftare)
less-than-twice = mindre än två gånger
usual-time-between-two = Vanlig tid mellan två överfarter (mörkare: oftare)
time-again = i tid
charging-station = laddstation
without-dates = utan datum
out-reach = utom räckhåll

## page: method

count-outing = { $count ->
    [one] 1 tur
   *[other] { $count } turer
}
lawn-counted-squares-this = Gräsmattan räknades i rutor med den här sidan; bara det ändrar resultatet med ungefär { $number } procentenheter.
standard-deviation-per-axis-from = Standardavvikelse per axel, från { $word }.
plan-offset = { $east } österut, { $north } norrut, vriden { $turned }°
plan-moved-by-this = Ritningen flyttades så mycket för att passa loggen; känt på { $length } när.
known-within-no-more = Känt på { $length } när: inte mer än slumpen, så ritningen får ligga som den är ritad.
from-one = Ur { $fixes }, en per { $time }.
while-driving = Under körning; { $outings }.
drift-length = { $length } drift
line-count = rad { $count }
default-error = antaget fel
from-plan = från ritningen
from-log-itself-again = från själva loggen
number-outings-not-known = antalet turer är inte känt

## morning

count-garden = { $count ->
    [one] 1 trädgård
   *[other] { $count } trädgårdar
}
count-thing = { $count ->
    [one] 1 sak
   *[other] { $count } saker
}
your-delivery = { $gardens } av { $count } har inte skickat något sedan { $since }: det beror på överföringen till dig (uppladdning, kort, nät), inte på trädgårdarna.
is-mended = { $garden }: { $alarm } sedan { $since } är åtgärdat sedan { $mended }.
is-known = { $said ->
    [none] { "" } (känt)
   *[other] { "" } (känt: { $said })
}
alarm = { $value ->
    [missed_pocket] missad mark
    [stuck_spot] fastnar
    [lost_hours] kör färre timmar
    [less_visited] mindre yta körs över
    [absent] ingen logg
    [receiver_worse] sämre mottagare
    [silences] långa bortfall
   *[promise] löftet hålls inte
}
bring = { $value ->
    [missed_pocket] Ta med ritningen, ett måttband och pinnar
    [stuck_spot] Ta med en spade, grästorv eller brädor
    [lost_hours] Ta med ett batteri och kontaktrengöring
    [less_visited] Ta med reservknivar och trädgårdens egen sida
    [absent] Ta med en laddad logger och ett minneskort
    [receiver_worse] Ta med en mottagare och en antennkabel
    [silences] Ta med en mottagare och en laddad logger
   *[promise] Ta med arbetstiderna, för att lägga till några på dagen
}
night-visit-with-log = Natten { $id }: { $gardens } av { $count } att besöka, { $with_log } med logg{ $resting ->
    [0] { "" }
   *[other] , { $resting } vilar
}, { $count_2 } misslyckades

## words/comparison

points-fraction = { $fraction } procentenheter
interval-points = { $points } (90 %-intervall { $low } till { $high } procentenheter)
interval-not-worked-out = { $points } (inget intervall)
points-from-night-night = { $number } procentenheter från natt till natt
standard-deviations-points-from = standardavvikelser: { $number } procentenheter från positionsfel, { $nightly }
to-percent = { $percent } ({ $number } till { $percent_2 })
how-nights-differ-cannot = hur nätter skiljer sig går inte att säga av så få

## terminal: hints

log-driving-more-give = logga { $hours } körning till och ge alla loggar tillsammans; det som inte är avgjort nu är det då
promise-give-logs-as = löftet gäller { $days }: ge loggarna från lika många dagar tillsammans
measure-width-cutting-disc-give = mät klippskivans bredd och ange den med --cut-width 22cm
walk-once-round-lawn = gå en gång runt gräsmattan med en mottagare; tussock plan from-walk gör en ritning av det, och --plan tar emot den
mended-plan-is-written = analyse --write-plan FIL skriver ritningen så som loggen visar att trädgården är

## gpx

missed-widest = Missad: { $area }, som bredast { $length }. { $said }
stuck-lost-within = Fastnat: { $count }, { $time } förlorade, inom { $length }. { $said }
suggested-guide = Föreslagen ledlinje. { $said }
tussock-id = tussock { $id }
tape-figures = { $figures } Måttband: { $tape }.
ground-mower-left-out = Mark som klipparen hoppade över, och platser där den förlorade tid.

## Checks

checks-hold = { $held ->
    [0] Ingen av { $all } kontroller stämmer
    [one] { $all ->
        [one] Den enda kontrollen stämmer
       *[other] 1 av { $all } kontroller stämmer
    }
   *[other] { $held } av { $all } kontroller stämmer
}
checks-say = { $sum }; { $fails }
check = { $value ->
    [fixes_left_out] Mätpunkter som lämnats ute, mot förutsägelsen av dem
    [halves_of_log] Loggens ena hälft, mot den andra
    [plan_place] Ritningens läge, mot vändningarna
    [turns_at_edges] Vändningar, mot var och en av ritningens kanter
    [drawn_garden] En trädgård ritad av den efterliknade maskinen, mot loggen
    [cell_sum] Kartans rutor, mot huvudsiffran
    [as_logged] Som loggat, mot korrigerat
    [two_roads] Det anpassade spåret, mot den korrigerade räkningen som loggat
    [silences] Bortfall, mot det som räknas som missat
   *[shown_ground] Vad loggen sägs visa, mot kartan
}
check-fails = { $value ->
    [fixes_left_out] mätpunkter är mer fel än uppgivet
    [halves_of_log] loggens två hälfter ligger vid sidan av varandra
    [plan_place] vändningarna samlas inte vid ritningens kanter
    [turns_at_edges] vändningarna ligger inte på ritningens kanter
    [drawn_garden] maskinen kör inte som modellen av den
    [cell_sum] kartan summerar inte till huvudsiffran
    [as_logged] räkningen som loggat säger emot den korrigerade
    [two_roads] två sätt att räkna säger emot varandra
    [silences] missad mark kan ha körts över under ett bortfall
   *[shown_ground] bredden som syns höjdes till den för oavgjord mark
}
check-fails-edge = vändningarna ligger inte på kanten i { $edge_deg }
check-is = { $value ->
    [fixes_left_out] { $number } gånger det uppgivna felet
    [halves_of_log] { $length } isär
    [plan_place] { $percent } av vändningarna förklarade
    [turns_at_edges] { $number } gånger det mesta som en kant får vara fel
    [drawn_garden] raksträckor { $number } isär (naturlig logaritm av kvoten)
    [cell_sum] { $points } procentenheter isär
    [as_logged] { $points } procentenheter isär
    [two_roads] { $number } standardavvikelser isär
    [silences] en sannolikhet på högst { $percent }
   *[shown_ground] { $length }
}

## page: parts of every page

show-on-map-id = visa på kartan, { $id }
show-on-map = visa på kartan
map-nearer = närmare
map-farther = längre bort
map-whole = hela gräsmattan
map-move = Flytta kartan
in-short = I korthet
foot-driven-over = Positioner kan visa var klipparen har kört; om gräset klipptes där får du se efter själv.

## page: the answers

ask-log = Är loggen bra nog?
ask-missed = Vad missades?
ask-why = Varför?
ask-change = Vad bör ändras?
ask-sure = Hur säkert är det?
log-yes = Ja
log-too-short = Positionerna ja, men för kort
log-no = Nej
part-visited = har körts över
part-missed = missat
part-not-yet = inte än
part-unseen = osett
part-sliver = mindre luckor
change-log-again = Logga igen först
change-look = Gå dit och titta
change-give-width = Ange klippbredden
change-nothing-yet = Inget än
change-give-outline = Ange konturen först
change-nothing = Inget
others-end = { $list }.

## page: report

title-report = { $title }: där klipparen inte har varit
picked-more = allt som är känt om den
picked-close = stäng
to-answers = Till svaren
where-not-been = Där klipparen inte har varit
map = Karta
what-map-shows = Vad kartan visar
ground = Mark
ground-none = ingen
map-drawn-from = Ritad efter loggade positioner: den visar mark som har körts över.
map-placeless = Loggen har ingen plats på jorden; kartan ligger på egna axlar.
map-moves = Dra för att flytta; nyp, dubbelklicka eller tryck på + och − för att komma närmare eller längre bort; piltangenter när kartan är markerad.
places = Platser
missed-and-why = Vad som missades, och varför
missed-lead = Mark som inte kördes över fast slumpen knappast skulle ha lämnat en så bred lucka. Gå till mitten av var och en med två måttband.
up-to-wide = upp till { $length } bred
see = Se
evidence-and-others = Vad som talar för och emot, och vad det annars kan vara
evidence = Vad som talar för och emot
how-sure-that = Hur säkert det är
rank-first = först
rank-other = också möjligt
evidence-for = för
evidence-against = emot
middle-at = Mitt vid { $place }.
change-and-gain = Vad som bör ändras, och vad det ger
change-lead = Förutsagt genom att köra en simulerad maskin, anpassad till den här loggen, med och utan ändringen. Punkten är vad de flesta enskilda nätter kommer att visa; nio av tio ligger mellan linjens ändar.
for-pockets = för
needs = Kräver { $list }.
together-with = Tillsammans med { $list }.
driven-over = Körts över
in-this-log = i den här loggen
if-nothing-changes = om inget ändras
if-changed = med ändringen
predictions-of = Förutsägelser för { $id }
gained-in-runs = I { $percent } av simuleringarna blev fläcken bättre och förutsägelsen höll.
gain-shows-after = I de flesta av dem syns vinsten efter { $hours } körning.
where-stuck = Var klipparen fastnade
stuck-lead = Platser en bit från laddstationen där klipparen gång på gång förlorade tid.
time-lost = { $time } förlorade
stuck-within = Inom { $length } från { $place }.
drove-through = { $count ->
    [one] Den körde igenom 1 gång utan att fastna.
   *[other] Den körde igenom { $count } gånger utan att fastna.
}
not-yet-lead = Okörd mark som slumpen fortfarande förklarar. Inget behöver ändras; det krävs bara fler timmar innan något kan sägas.
head-pocket = Fläck
head-area = Yta
head-widest = Bredast
head-chance = Sannolikhet för slump
head-decided = Avgjort efter
head-where = Var
not-yet-table = Inte än
hours-are-driving = Timmar är körtimmar från loggens början.
passages-and-ways = Passager, mark utom räckhåll och vägar hem
passages = Passager
head-passage = Passage
head-width = Bredd
head-free = Fritt för maskinens mitt
head-length = Längd
head-behind = Gräsmatta bakom
head-crossed = Genomfarter
head-share-behind = Andel av rättvis körsträcka bakom
passage-shut-word = stängd
crossings-are = Genomfarter är byten av sida; efter ”av ungefär” står vad en maskin som kör fritt omkring skulle göra på samma sträcka.
out-of-disc = Utom räckhåll för klippskivan
turns-inside = Vänder innanför linjen med
turns-inside-means = Vanligt avstånd mellan maskinens mitt och linjen där den vänder.
outings = Turer
ways-home = Vägar hem
drawing-differs = Hur skiljer sig ritningen från trädgården?
plan-would-settle = Vad skulle en ritning avgöra?
islands-or-lawn = Öar, eller gräsmatta utom räckhåll?
islands = Öar
head-island = Ö
in-no-plan = Finns inte på någon ritning
in-no-plan-lead = Saker som fick maskinen att vända inne på gräsmattan.
head-thing = Sak
head-turns = Vändningar vid den
head-across = Tvärmått, ungefär
head-stood = Stod där
things-in-no-plan = Saker som inte finns på någon ritning
hours-and-grass = Arbetstider och gräs
works = Arbetar
allowed = Tillåtet
allowed-means = Arbetstider i inställningarna, medelvärde över veckan.
promise-needs-label = Löftet kräver
promise-needs-means = Arbetstid i den här takten; där en del av gräsmattan aldrig körs över räcker inga timmar.
lower-blades = Sänka knivarna?
growth = Tillväxt
longest-wait = Längsta tillåtna väntan
one-third-rule = Enligt tredjedelsregeln: ta aldrig bort mer än en tredjedel av grässtrået på en gång.
slope = Lutning
also-seen = Också sett
worn-line-is = Sliten linje:
stray-is = Avstickare:
possible-stop-is = Möjligt stopp:
paper-what = Vad du ska titta på, och vad du ska göra
paper-no-place = Ingen plats behöver ses över: slumpen förklarar alla luckor som blev kvar, och klipparen fastnade ingenstans.
paper-changes = Föreslagna ändringar
stills-title = Hur gräsmattan fylldes
stills-lead = Sex kartor, var och en efter ytterligare en sjättedel av körningen.
still-new = nytt sedan förra kartan
still-before = har körts över tidigare
not-driven-over = har inte körts över
safety = Säkerhet
paper-stop = Stoppa klipparen och säkra den mot start innan du rör vid den.
paper-dig = Låt märka ut nedgrävda kablar och rör innan du gräver för kabel. Fråga vad en zon skyddar innan du flyttar den. Lägg till timmar på dagen, inte på natten.
manual-first = Lokala bestämmelser och maskinens egen bruksanvisning har företräde.
paper-keep-off = Håll barn och husdjur borta från gräsmattan medan maskinen arbetar. Håll linjer borta från sluttningar och vattenkanter. Arbete på nätspänning får bara göras av en behörig elektriker.
paper-looked-at = Besiktigat den
paper-signed = Av, underskrift
paper-next-step = Överenskommet nästa steg
how-fast = Hur fort gräsmattan fylldes, och hur ofta den kördes över
ground-gained = Vunnen mark över körtiden
line-this-log-interval = den här loggen, med dess 90 %-intervall i slutet
line-this-log = den här loggen
line-random = slumpmässig sökning
line-no-overlap = ingen överlappning alls
line-promised = utlovat
random-law-means = En maskin som kör omkring på måfå följer lagen om slumpmässig sökning (Koopman 1956): ju mer som är gjort, desto oftare möter den mark som den redan känner till. En som aldrig körde över samma mark två gånger skulle följa linjen utan överlappning.
pattern-efficiency = Mönstrets effektivitet
to-95 = Till 95 % av gräsmattan
to-95-means = Timmar körning i den här takten; utom räckhåll där en del av gräsmattan aldrig körs över.
to-99 = Till 99 %
to-99-means = Detsamma för allt utom en hundradel.
the-promise = Löftet
how-often = Hur ofta varje plats har körts över
bars-mean = Varje stapel är den del av gräsmattan som har körts över så många gånger. Den skrafferade stapeln har inte körts över.
waits-mean = Så stor del av väntetiderna mellan två överfarter är kortare; den sista, oavslutade väntetiden på varje plats räknas som oavslutad.
visits-typical = Överfarter, typiskt
evenness = Jämnhet (Gini)
evenness-means = 0 vore samma antal överfarter överallt, 1 alla överfarter på en plats.
time-between = Tid mellan överfarter
overdue-label = Försenat
overdue-means = Den här delen av gräsmattan har vuxit förbi tredjedelsregeln sedan sin senaste överfart.
hours-by-activity = Timmar per aktivitet
same-in-figures = Samma i siffror
activity-in-figures = Timmar per aktivitet i siffror
nights-not-drawn = { $count ->
    [one] 1 tidigare natt är inte ritad.
   *[other] { $count } tidigare nätter är inte ritade.
}
nothing-claimed = Om tiden utan mätpunkter påstås ingenting.
each-lawn = Varje gräsmatta för sig
head-lawn = Gräsmatta
with-bracket = { $figure } ({ $more })
for-each-width = Körts över, för varje klippbredd
how-counted = Hur det här räknades
of-the-log = Om loggen: { $said }
cutting-width = Klippbredd
cutting-width-means = Som den anges i inställningarna. En centimeter mer skulle räkna med mer mark.
counting-square = Räkneruta
realisations = Realiseringar
counted-once = Räknat en gång, på det troligaste spåret; positionsfelet är inte genomspelat än.
counted-often = Så många troliga spår räknades, för att se hur mycket positionsfelet ändrar resultatet.
as-logged = Som loggat
as-logged-means = Vad det skulle bli om de råa mätpunkterna förbands med raka linjer. Bara till jämförelse.
reachable = Nåbart
reachable-means = Den del av gräsmattan som klippskivan över huvud taget kan nå.
position-error = Positionsfel
beware = Se upp
default-error-means = Loggen ger inget sätt att veta hur noggrann den är; logga en timme i laddstationen för att få reda på det.
plan-against-log = Ritning mot logg
outline = Kontur
outline-from-plan = Gräsmatta, zoner och hinder som de är ritade på ritningen.
outline-from-log = Mark bortom den yttersta körningen räknas inte, så ingen siffra här gäller hela gräsmattan. Gå konturen för att ändra det.
path = Spår
usual-speed = Vanlig hastighet
beside-surveyed = Loggen bredvid ett inmätt spår
errors-surveyed = Fel mot det inmätta spåret
head-error = Fel
errors-mean = Tvärs: till spårets närmaste ställe, till vänster om det positivt. Längs: före där maskinen då borde ha varit; tid: hur mycket senare den kom förbi. Drag till drag: hur mycket felet tvärs ändras från ett drag till nästa bredvid, inom 15 minuter (efter ISO 12188-1). Loggat är mätpunkterna, funnet är spåret som hittades bakom dem.
simulated-beside = Den simulerade maskinen, bredvid loggen
predictions-made = Förutsägelser görs med den.
predictions-none = Inga förutsägelser görs med den.
head-figure = Storhet
head-in-log = I loggen
head-in-runs = { $count ->
    [one] I 1 simulering
   *[other] I { $count } simuleringar
}
log-and-simulation = Logg och simulering
figure-range = { $figure } ({ $low } till { $high })
log-files = Loggfilerna, och vad som inte användes
made-by-label = gjord av
fixes-of = { $count ->
    [one] 1 mätpunkt från
   *[other] { $count } mätpunkter från
}
not-used-of-file = Inte använt ur den här filen
head-not-used = Inte använt
head-why = Varför
head-first-at = Först vid
everything-used = Allt i den användes.
before-you-change = Innan du ändrar något
stop-and-manual = Stoppa klipparen och säkra den mot start innan du rör vid den. Lokala bestämmelser och maskinens egen bruksanvisning har företräde.
all-dangers = Allt som är farligt med sådant arbete
danger-blades = Knivar i rörelse.
danger-blades-means = Stoppa klipparen och säkra den mot start innan du rör vid den. Håll barn och husdjur borta från gräsmattan medan den arbetar.
danger-logger = Montera en logger.
danger-logger-means = Montera den aldrig över stoppknappen eller där maskinen känner av att den lyfts eller tippas. Fäst den så att den går fri från knivarna.
danger-digging = Gräva för kabel.
danger-digging-means = Låt först märka ut nedgrävda kablar och rör. Privata ledningar märks inte ut.
danger-slopes = Sluttningar och vatten.
danger-slopes-means = Håll linjen på gott avstånd från kanter som maskinen kan glida över.
danger-mains = Nätspänning.
danger-mains-means = Arbete på laddstationens strömförsörjning får bara göras av en behörig elektriker.
danger-night = Natt.
danger-night-means = Lägg bara till timmar på dagen: igelkottar och andra smådjur är ute på natten.
danger-zones = Zoner.
danger-zones-means = Fråga vad en zon är till för innan du flyttar eller minskar den. Den kan skydda rötter, ledningar eller människor.

## page: before and after

title-compare = { $title }: före och efter
difference = Skillnad
more-than-before = Så mycket mer av gräsmattan har körts över efter än före; { $meaning }.
side-driven-over = { $side }: { $percent } har körts över
side-facts = { $interval }{ $equal ->
    [none] { "" }
   *[other] ; { $equal } efter lika många timmar
}. { $count }, { $hours } körning.
map-move-side = Flytta kartan, { $side }
only-summary = Bara en sammanfattning har sparats, så det finns ingen karta.
compare-map-key = Skrafferat: det mesta av fläcken har inte körts över på den sidan. Streckad kontur: det mesta av den har det. Mörkare mark har körts över oftare; båda kartorna har samma skala.
how-sure-difference = Hur säker skillnaden är
counted-on = Räknat på
counted-on-common = { $area } gräsmatta som finns på båda ritningarna.
lawn-only = { $when ->
    [before] { $area } var gräsmatta bara före
   *[after] { $area } är gräsmatta först efter
}
what-became = Vad det blev av varje fläck
head-found = Funnen
head-before = Körts över före
head-after = efter
head-became = Vad det blev
pockets = Fläckar
show-on-both = { $id }, visa på båda kartorna
predicted-and-measured = Förutsagt och uppmätt
predicted-measured = { $built ->
    [otherwise] Förutsagt för det som utfördes { $predicted }, uppmätt { $measured }: { $meaning }.
   *[other] Förutsagt { $predicted }, uppmätt { $measured }: { $meaning }.
}
predicted = förutsagt
measured-after = uppmätt efter

## page: plan on paper

title-plan = { $title }: före grävningen
before-digging = Före grävningen
driven-over-after = Körts över efter { $days }
days = Dagar
not-worked-out = inte uträknat
lawn-to-cut = Gräsmatta att klippa
boundary = Gräns
guide-runs = Ledlinjer
guide-runs-none = inga
out-of-reach-title = Utom räckhåll
part-out-of-reach = { $area }, { $why }: { $middle }
head-free-machine = Fritt för maskinen
head-behind-it = Gräsmatta bakom
head-changes = Byten av sida om dagen
head-share = Dess andel av körningen
head-nine-tenths = Nio tiondelar av den har körts över
weak-places = Svaga platser, och varför
would-mend = Vad som skulle åtgärda dem
as-planned = enligt ritningen
assumed-and-beware = Vad som antas, och vad du bör se upp med
foot-forecast = En prognos från simuleringar: hur verkliga maskiner avviker visar sig i de första dagarnas loggar.

## page: morning

title-morning = Trädgårdar att besöka efter { $night }
morning-after = Morgonen efter { $night }
gardens-to-visit = Trädgårdar att besöka
count-muted = { $count } tystade.
gardens-in-order = Trädgårdar, den där ett besök ger mest först
head-garden = Trädgård
head-last-nights = Senaste 15 nätterna
head-wrong = Vad som är fel
head-since = Sedan
head-bring = Att ta med
head-gain = Ger
and-count-more = och { $count } till
known-bracket = (känt)
open-for = Öppet i { $days }, läget natten { $night }.
lawn-of = Gräsmatta { $area }.
driven-in-last = { $percent } av den har körts över de senaste dagarna ({ $days }); utlovat är { $promised }.
known-said = Känt: { $said }
known = Känt
head-night = Natt
head-missed = Missat
head-driving = Körning
head-stuck = Fastnat
head-silent = Bortfall
nights-of = Nätter för { $name }
mended = Åtgärdat
what-failed = Vad som misslyckades
failures = Misslyckat
head-what = Vad
visit-brings = Ett besök ger så mycket gräsmatta som skulle köras över varje natt, och som inte körs över nu.

## terminal: labels of rows (row-...), at most 12 letters each, row-by-lawn, row-used, row-skipped and row-note at most 10;
## heads of columns (col-...), at most 7, col-id at most 3
# Cut short what is too long, as newspapers do: a label stands beside its text.

row-driven-over = Körts över
row-before = Före
row-after = Efter
row-difference = Skillnad
row-pockets = Fläckar
row-beware = Se upp
# $id is G1 or M12.
row-change = Ändring { $id }
row-by-lawn = uppdelat
row-asked-about = Fråga
row-missed = Missat
plan-answer = Gräsmatta att klippa: { $area }, { $edge } kant; zoner och hinder är borträknade.
forecast-hours = Med { $hours } arbete om dagen, från { $runs } simuleringar.
col-role = roll
col-name = namn
col-length = längd
no-faults = Inga fel.
row-plan-faults = Se över
col-id = id
col-area = yta
col-widest = bredast
col-where-why = var, och varför
row-not-yet = Inte än
row-stuck-spots = Fastnat
none-seen = inga sedda
row-pattern = Mönster
row-promise = Löfte
row-from = Underlag
row-in-the-dark = I mörker
before = Före
after = Efter
row-ground = Mark
col-before = före
col-after = efter
col-became = vad det blev
no-pockets = inga på någon sida
row-where = Var
row-last = Senast
row-usually = Vanligen
row-used = Använt
row-skipped = Överhoppat
skipped-nothing = inget
row-note = Anm.
in-line = (rad { $count })
row-time = Tid
row-fixes = Mätpunkter
row-hours = Timmar
row-silences = Bortfall
silences-none = inga
row-quality = Kvalitet
row-hdop = HDOP
row-repeats = Upprepat
row-error = Positionsfel
row-extent = Utsträckning
row-reference = Referens

## Numbers and lists

unknown = okänt
under-percent = under { $percent }
over-percent = över { $percent }
interval = 90 %-intervall { $low } till { $high }
no-interval = inget intervall
range = { $low } till { $high }
# Two parts of a list, or the list so far and its next part.
list = { $before }, { $next }
list-apart = { $before }; { $next }
way-home-row = { $times } { $along } ({ $time })
# Two lengths of tape meet on one side of the line between their ends.
tape-from = { $length } från { $from }
tape-side = { $tape }, på deras { $eighth ->
    [0] norra
    [1] nordöstra
    [2] östra
    [3] sydöstra
    [4] södra
    [5] sydvästra
    [6] västra
   *[7] nordvästra
} sida
position-metres = { $east } öster, { $north } norr om origo
fixes-poor = { $count } av dålig kvalitet
fixes-jumped = { $count ->
    [one] 1 hopp
   *[other] { $count } hopp
}
fixes-carried = { $count } medan den bars
fixes-used-of = { $used } av { $count ->
    [one] 1 läst mätpunkt
   *[other] { $count } lästa mätpunkter
} (lämnade ute: { $list })
# A time on the clock: the year has no mark between thousands.
date-time = { $day } { $month ->
    [1] januari
    [2] februari
    [3] mars
    [4] april
    [5] maj
    [6] juni
    [7] juli
    [8] augusti
    [9] september
    [10] oktober
    [11] november
   *[12] december
} { $year }, { $hour }:{ $minute }

## Words for before and after

more-than-luck = mer än positionsfel och slump förklarar
luck-may-explain = positionsfel och slump ensamma kan förklara det
count-pocket-change = { $value ->
    [mended] { $count ->
        [one] 1 åtgärdad
       *[other] { $count } åtgärdade
    }
    [better] { $count } bättre
    [new] { $count ->
        [one] 1 ny
       *[other] { $count } nya
    }
   *[unchanged] { $count ->
        [one] 1 oförändrad
       *[other] { $count } oförändrade
    }
}
pocket-sum = { $pockets }: { $list }
nothing-to-hold-against = inget att jämföra med
prediction-holds = förutsägelsen håller
prediction-fails = förutsägelsen håller inte

## The log beside a surveyed path; columns are narrow

error-mean = medel
error-rms = rms
error-95 = 95 %
error-largest = största
error-logged = loggat
error-located = funnet
error-cross-track = tvärs
error-along-track = längs
error-timing = tid
error-pass-to-pass = drag till drag
reference-head = { $length } av { $name }, { $fixes } jämförda{ $beside ->
    [0] { "" }
   *[other] ; { $beside } som ligger mer än { $distance } vid sidan av det lämnade ute
}
reference-untimed = Det inmätta spåret har inga tider: fel längs det och i tid går inte att säga.

## Why a line of a log was skipped

skip-reason = { $value ->
    [bad_checksum] kontrollsumman stämmer inte
    [not_a_position] innehåller ingen position
    [not_of_the_format] hör inte till formatet
    [no_fix] mottagaren hade ingen position
    [no_time] position utan tid
    [no_date] klockslag utan datum
    [malformed] felaktigt fält
    [not_finite] inte ett ändligt tal
    [out_of_range] utanför tillåtet område
    [null_island] latitud 0, longitud 0
    [pole] latitud 90 under sökning
    [time_reversed] tiden går baklänges
    [duplicate_time] samma tid två gånger
    [duplicate_epoch] samma tidpunkt två gånger
    [truncated] avhuggen i slutet
    [same_log_twice] samma logg under två namn
    [too_long] längre än gränsen
   *[implausible] orimlig position
}

## page: drawings and hours

map-north-up = Karta över gräsmattan, norr uppåt
map-of-lawn = Karta över gräsmattan
map-before = Karta före
map-after = Karta efter
ground-visits = överfarter
ground-waits = tid mellan överfarter
ground-overdue = försenat
never = aldrig
driving = körning
driving-along = därav längs en ledlinje eller gränsen
standing-turning = stillastående på annan plats, vändning
activity-driving = körning
activity-turning = vändning
activity-reversing = bakåt
activity-transit = på väg ut eller hem
activity-standing = stillastående
activity-station = i laddstationen
activity-carried = buren
activity-silent = utan mätpunkter
night-number = natt { $number }
nights-drawing = Timmar per aktivitet, en rad per natt; tabellen nedanför har samma siffror
axis-hours = timmar
driven-that-night = har körts över den natten
so-far = hittills
lawn-after = Gräsmattan efter { $hours }
still-gained = { $percent }, +{ $points } procentenheter
plot-over-time = Del av gräsmattan som har körts över mot timmar körning
axis-lawn-percent = gräsmatta som körts över, %
axis-hours-driving = timmar körning
plot-histogram = Del av gräsmattan efter hur ofta den har körts över
axis-part-percent = del av gräsmattan, %
axis-times = antal överfarter
plot-gains = Del av fläcken som körs över: { $list }
gain-row = { $label } { $fraction }
axis-pocket-percent = fläck som körs över, %
plot-waits = Väntetider mellan två överfarter: { $list }
wait-under = { $part } under { $hours }
wait-half = hälften
wait-nine-ten = 9 av 10
wait-99 = 99 av 100
wait-allowed = tillåtet
axis-waits = timmar mellan två överfarter

## map

key-missed = missad: slumpen förklarar den inte
key-not-yet = inte än: slumpen förklarar den fortfarande
key-unseen = osedd: inget underlag
key-stuck = ställe där den fastnar: tid förlorad
key-worn = sliten linje
key-suggested = föreslagen ändring
key-tape = måttbandsavstånd
key-lines = körda linjer
key-lie = passager, starter, fel i ritningen
key-strays = avstickare, möjliga stopp
key-guide = ledlinje
key-exclusion = spärrzon
key-obstacle = hinder
key-boundary = gräns
nothing-to-draw = Ingen kontur och inget spår att rita.
picture-line = Körts över: { $percent } av { $lawn }. Missat: { $pockets }, { $missed }.
picture-not-counted = Ingen klippbredd angavs, så inget räknades.
picture-foot = Ritad efter loggade positioner. Att klipparen har kört där bevisar inte att gräset klipptes.
# One letter: north.
north-letter = N
second-axis = andra axeln
# Names of marks, read aloud: an id, what it is, how large.
mark-missed = { $id }, missad, { $area }
mark-not-yet = { $id }, inte än, { $area }
mark-unseen = { $id }, utan underlag, { $area }
mark-worn = { $id }, sliten linje, { $length }
mark-suggested = { $id }, förslag: { $change }
mark-stuck = { $id }, ställe där den fastnar, { $time } förlorade
mark-island = { $id }, ö, { $area }
mark-passage = { $id }, passage, { $length } bred
mark-in-no-plan = { $count ->
    [one] { $id }, finns inte på någon ritning, 1 vändning vid den
   *[other] { $id }, finns inte på någon ritning, { $count } vändningar vid den
}
mark-stray = { $id }, avstickare, { $length } utanför gränsen
mark-compared = { $id }, { $percent } har körts över
mark-station = station

## terminal: the lawn in characters, files

chart-key = { $bare } har inte körts över, { $one } till { $first }, { $two } till { $second }, { $three } till { $third }, { $four } fler gånger; { $missed } missat, { $not_yet } inte än, { $stuck } ställe där den fastnar, { $station } laddstation; ett tecken är { $length } brett{ $north ->
    [up] , norr är uppåt
   *[unknown] { "" }
}
row-written = Skrivet

## Why a file is left out

file-elsewhere = kommandot gör den, ur findings.json med tussock report
file-tells-where = den skulle avslöja var trädgården ligger
file-local-metres = positionerna är i lokala meter, utan geografiska koordinater
file-not-counted = inget räknades utan klippbredd
file-not-driven = inget kördes

## morning: gardens

garden-gain = { $garden }: { $area } per natt att vinna
failed = Misslyckades
# What an alarm says. $why is a sentence of the store, in English.
alarm-less-visited = { $found } av gräsmattan har körts över, där { $usual } är vanligt på lika många timmar, sedan { $since }.
alarm-hours = { $value ->
    [lost_hours] { $found } körning, där { $usual } är vanligt, sedan { $since }.
   *[silences] { $found } utan positioner, där { $usual } är vanligt, sedan { $since }.
}
alarm-receiver-worse = Positionerna är { $found } fel, där { $usual } är vanligt, sedan { $since }.
alarm-stuck-spot = Fastnar på en och samma plats sedan { $since }, { $nights ->
    [one] 1 natt
   *[other] { $nights } nätter
}, { $found } under den senaste: { $why }
alarm-missed-pocket = Missad sedan { $since }, { $nights ->
    [one] 1 natt
   *[other] { $nights } nätter
}: { $found }. { $why }
alarm-promise = { $found } av gräsmattan har körts över inom { $count ->
    [one] 1 dag
   *[other] { $count } dagar
}, där { $usual } är utlovat, sedan { $since }.
alarm-absent = { $machine ->
    [none] Ingen logg sedan { $since }: { $nights } väntade nätter.
   *[other] Ingen logg från { $machine } sedan { $since }: { $nights } väntade nätter.
}

## local page: one line each; what is in braces stays as it is

page-what-to-do = Vad du kan göra
page-open = Öppna
page-see = Visa
page-stop = Stoppa
page-compare = Jämför
page-save = Spara
page-no-script = Den här sidan fungerar med JavaScript, som är avstängt här.
page-how-far = Hur långt arbetet har kommit
page-open-title = Vad lämnade klipparen kvar?
page-open-lead = Välj positionerna som den loggade, släpp dem var som helst på sidan eller klistra in dem. Inget lämnar den här enheten: sidan tillåter ingen uppkoppling alls, och fungerar utan nät.
page-logs = Loggar
page-logs-means = GPX, NMEA 0183, CSV, KML och andra, packade med gzip eller inte; från en trädgård, en fil eller flera. En sparad findings.json öppnas som den är.
page-choose-logs = Välj loggar
page-paste = Klistra in en logg
page-paste-text = Loggens text
page-paste-take = Ta den här texten
page-plan = Ritning
page-plan-if = om det finns en
page-plan-means = Gräsmattan, zoner, hinder, ledlinjer och laddstationen, som GeoJSON. Utan den ritas konturen efter körningen.
page-choose-plan = Välj en ritning
page-machine = Maskin
page-width = Klippskivans bredd
page-cm = cm
page-width-means = Lämnas den tom gäller inställningarna; står den inte där ges svaret för flera bredder.
page-choose-settings = Välj inställningar
page-suggest = Pröva ändringar och föreslå den bästa (tar längre tid)
page-find = Hitta det som missades
page-demo = Ta den påhittade trädgården
page-kept = Sparat på den här enheten
page-forget = Radera allt som är sparat
page-cautions = Stoppa klipparen och säkra den mot start innan du rör vid den: knivarna rör sig. För montering av en logger, grävning och arbete på laddstationen gäller egna varningar, på sidan du får.
page-page = Sidan
page-hand-over = Sidan att lämna över
page-ask-title = Fråga om en plats
page-begin = Börja sidan med det här svaret
page-type-place = Skriv in en plats
page-or-tap = Eller tryck på den på kartan.
page-place = Plats
page-typed-in = inskriven i
page-metres = meter österut, norrut
page-degrees = grader, latitud först
page-such-as = Till exempel 4.5,-2 eller 53.86006,12.42021. Meter räknas från resultatets origo.
page-said = Vad som sades om den
page-ask = Fråga
page-compare-title = Vad gav en ändring?
page-before = Före
page-after = Efter
page-logs-before = Välj loggar från före
page-the-plan = Välj ritningen
page-logs-after = Välj loggar från efter
page-plan-changed = Välj ritningen, om den har ändrats
page-compare-means = Varje sida tar loggar, eller en findings.json. Klippbredd och inställningar är de under Öppna.
page-print = Skriv ut sidan
page-private = Utan plats, namn och datum
page-keep-title = Spara på den här enheten
page-keep-means = Inget sparas om du inte ber om det. Det som sparas är resultatet, ritningen och inställningarna, i den här webbläsaren; den som använder den kan öppna dem, och det kan andra sidor som öppnas från den här enheten också. Spara filer i stället där andra använder den.
page-garden-name = Trädgårdens namn
page-keep = Behåll
page-drop = Släpp loggar, en ritning eller inställningar
page-no-worker = bakgrundsprocessen kan inte köra här: { $reason }
page-not-let = den här webbläsaren tillåter det inte
page-broke-off = arbetet avbröts: { $why }
page-broke-off-hint = det här är ett fel i verktyget, eller så har enheten inget minne kvar; dina filer är som de var
page-take-out = ta bort
page-take-out-file = ta bort { $file }
page-hint = tips: { $hint }
page-seconds = { $stage }, { $seconds } s
page-starting = startar
page-stopped = stoppat
page-reading = läser { $file }
page-unreadable = { $file }: går inte att läsa: { $reason }
page-choose-again = välj den igen
page-side-empty = en sida har ingen logg, loggar eller findings.json väntades på båda
page-no-log = ingen logg är given, en logg (GPX, NMEA 0183, CSV, ...) eller findings.json väntades
page-no-log-hint = välj filer, släpp dem på sidan, eller ta den påhittade trädgården
page-file-page = sidan att lämna över
page-file-findings = varje tal; går att öppna här igen
page-file-geojson = allt som har en plats, för kartor
page-file-gpx = leder dig till fläckarna
page-file-comparison = varje tal
page-no-file = ingen { $file }: { $why }
page-keeps-nothing = den här webbläsaren sparar inget för den här sidan: { $reason }
page-no-reason = inget skäl angavs
page-save-instead = spara findings.json i stället
page-open-kept = öppna
page-open-garden = öppna { $garden }
page-is-kept = { $garden } är sparad
page-cannot-delete = det går inte att radera: { $reason }
page-clear-data = rensa den här sidans data i webbläsarens inställningar
# The name of this language in itself: English, Deutsch, ...
page-this-language = svenska
page-language = Språk
page-remember = Kom ihåg på den här enheten
page-stage-drawing = ritar
page-stage-reading = läser
page-stage-comparing = jämför
page-stage-locating = bestämmer positioner
page-stage-counting = räknar
page-stage-calibrating = kalibrerar
page-stage-diagnosing = söker orsaker
page-stage-suggesting = söker ändringar
