# Draft. Nobody who speaks German natively has reviewed this yet.
# Was Tussock sagt, auf Deutsch. Die Wörter stehen im Glossar. Regeln für Werte und Auswahl: siehe en.ftl.

## Was die Positionen einer Aufzeichnung zeigen können, oder was daran zu ändern ist

positions_right = Die Positionen stimmen auf etwa { $error_m } genau.
positions_off = Die Positionen liegen um etwa { $error_m } daneben: Setzen Sie die Antenne höher, mit freier Sicht zum Himmel, oder zeichnen Sie mit einem RTK-Empfänger auf.
receiver_jumps = Der Empfänger sprang und blieb daneben: Positionen von vor und nach dem Sprung passen nicht zusammen. Finden Sie heraus, was ihm die Sicht zum Himmel nimmt, oder geben Sie die Aufzeichnung von vor und nach dem Sprung als getrennte Dateien an.
error_not_shown = Diese Aufzeichnung zeigt nicht, wie weit ihre Positionen danebenliegen: Lassen Sie den Mäher zehn Minuten bei laufendem Logger stehen.
fixes_too_rare = Ein Messpunkt je { $period_s } lässt Wenden unerkannt: Zeichnen Sie jede Sekunde einen auf.
digits_too_coarse = Die Positionen sind in Schritten von { $step_m } aufgezeichnet: Lassen Sie den Logger mehr Stellen schreiben (sieben Nachkommastellen bei Grad, fünf bei Minuten).

## Warum eine Aufzeichnung nichts von einem Rasen zeigt

mostly_jumps = { $jumps } von { $fixes } Messpunkten liegen weiter vom vorigen entfernt, als ein Mäher in dieser Zeit fahren kann (positions.max_speed_mps ist { $max_speed_mps }): Das ist ein Fahrzeug, oder die Positionen springen.
too_few_fixes = Von { $fixes ->
    [one] 1 Messpunkt
   *[other] { $fixes } Messpunkten
} { $used ->
    [one] ist 1 brauchbar
   *[other] sind { $used } brauchbar
}, zu wenig, um eine Fahrt zu zeigen: Lassen Sie den Logger eine ganze Ausfahrt lang laufen.
not_one_garden = Die Positionen reichen über { $extent_m }: Das ist nicht die Aufzeichnung eines einzigen Gartens, oder Sprünge verdecken ihn. Geben Sie nur die Dateien eines Gartens an.
fixes_far_too_rare = Ein Messpunkt je { $period_s } zeigt nichts von einem Rasen: Zeichnen Sie jede Sekunde einen auf.
walking_pace = Der Mäher bewegt sich mit { $speed_mps }, so schnell wie ein Fußgänger: Geben Sie eine Aufzeichnung des Mähers bei der Arbeit an, oder nennen Sie seine Geschwindigkeit, wenn er wirklich so schnell ist (machine.speed_mps).
walk_round = Das sieht nach einem Rundgang um { $area_m2 } Garten aus ({ $length_m } mit { $speed_mps }), nicht nach der Aufzeichnung eines Mähers: Machen Sie mit tussock plan from-walk DATEI einen Plan daraus{ $gpx ->
    [yes] { "" }
   *[other] , sobald der Rundgang als GPX gespeichert ist
}. Ist es doch der Mäher, nennen Sie seine Geschwindigkeit (machine.speed_mps).

## Von wo ein Maßband gelegt wird

landmark_station = der Ladestation
landmark_middle = der Mitte von „{ $body }“
landmark_corner_at = der Ecke { $body ->
    [none] des Rasens
   *[other] von „{ $body }“
} an { $beside ->
    [none] der Ladestation
   *[other] „{ $beside }“
}
landmark_corner_nearest = der Ecke { $body ->
    [none] des Rasens
   *[other] von „{ $body }“
}, die der Ladestation am nächsten liegt
landmark_corner = der{ $outermost ->
    [yes] { " " }äußersten
   *[other] { "" }
} Ecke { $body ->
    [none] des Rasens
   *[other] von „{ $body }“
} im { $wind_deg }
landmark_corner_apart = derjenigen Ecke { $body ->
    [none] des Rasens
   *[other] von „{ $body }“
} im { $wind_deg }, die { $farther ->
    [yes] weiter von
   *[other] näher an
} { $beside ->
    [none] der Ladestation
   *[other] „{ $beside }“
} { $farther ->
    [yes] entfernt ist
   *[other] liegt
}

## Was der Leser einer Aufzeichnung getan oder bemerkt hat

time_without_zone = Die Zeiten nennen keine Zeitzone und gelten als UTC.
time_is_relative = Die Zeiten zählen ab einem eigenen Start des Loggers und tragen kein Datum.
gps_time = Die Zeiten sind GPS-Zeit und wurden in UTC umgerechnet, mit 18 Schaltsekunden seit 2017 (IERS, Bulletin C).
week_rollover_repaired = { $fixes ->
    [one] 1 Messpunkt war
   *[other] { $fixes } Messpunkte waren
} um 1024 Wochen zu früh datiert (Überlauf der GPS-Woche), jetzt { $days } Tage später; der erste liegt am { $date }.
late_fixes = { $fixes ->
    [one] 1 Messpunkt wurde später geschrieben als gemessen und dort eingeordnet, wo er hingehört.
   *[other] { $fixes } Messpunkte wurden später geschrieben als gemessen und dort eingeordnet, wo sie hingehören.
}
newest_first = Die Aufzeichnung beginnt mit dem neuesten Messpunkt und wurde umgedreht.
block_out_of_order = Ein Teil der Aufzeichnung wurde später geschrieben als gemessen.
tracks_overlap = Spuren überschneiden sich zeitlich; ihre Messpunkte wurden in eine Reihenfolge gebracht, und zwischen den Spuren wird nichts verbunden.
times_do_not_fit = Eine Spur hat { $times } Zeiten und { $positions } Positionen, und niemand kann sagen, welche zusammengehören; sie wurde weggelassen.
constant_quality = GGA nennt jeden Messpunkt { $manual ->
    [yes] manuell (7)
   *[other] simuliert (8)
}, wo er laut RMC gültig ist; die Art des Messpunkts stammt aus RMC.
several_machines = Die Aufzeichnung enthält { $machines } Mäher, unterschieden an ihren Orten zu denselben Zeiten.
same_log_twice = Derselbe Inhalt wie { $log }, nur einmal gelesen.
overlaps_another_log = { $fixes ->
    [one] 1 Messpunkt
   *[other] { $fixes } Messpunkte
} ab { $date } weggelassen, zu Zeiten, die eine andere Aufzeichnung dieses Mähers abdeckt.
file_not_closed = Die Datei ist am Ende nicht abgeschlossen, als wäre der Logger ausgeschaltet worden.
file_damaged = Die gepackte Datei ist beschädigt, ihr Ende fehlt: { $fault }
line_too_long = Eine Zeile von { $bytes } Byte ist länger als { $limit }, die Grenze aus limits.line_bytes, und wurde übergangen.
line_cut = Eine Zeile von mehr als { $bytes } Byte ist länger als { $limit }, die Grenze aus limits.line_bytes, und wurde übergangen.
attribute_too_long = Ein Attribut von { $bytes } Byte ist länger als { $limit }, die Grenze aus limits.attribute_bytes, und wurde übergangen.
document_type_ignored = Der Dokumenttyp wird nicht beachtet, und keine Entität daraus wird ersetzt.

## Was der Leser eines Rundgangs getan oder bemerkt hat

walk_markup_broken = Die Datei ist an { $places ->
    [one] 1 Stelle beschädigt, die
   *[other] { $places } Stellen beschädigt, die
} übergangen wurde{ $places ->
    [one] { "" }
   *[other] n
}; sehen Sie nach, ob im Plan etwas fehlt.
walk_taken_as_lawn = „{ $track }“ (geschlossen, { $area_m2 }, Umfang { $length_m }) gilt als der Rasen: Es ist die einzige Spur, die dorthin zurückkommt, wo sie begann. Ist es etwas anderes, sagen Sie es mit --role "{ $track }=ROLE".
walk_positions_skipped = { $positions ->
    [one] 1 Position
   *[other] { $positions } Positionen
} von „{ $track }“ ohne brauchbare Breite und Länge.
walk_name_unknown = „{ $track }“ wird weggelassen, der Name sagt nicht, was es ist.{ $seems ->
    [none] { "" }
   *[other] { " " }Ist es das, wonach es aussieht, sagen Sie es mit --role "{ $track }={ $seems }".
}
walk_spikes_cut = { $positions ->
    [one] 1 Position von „{ $track }“ springt weg und zurück; sie wird weggelassen.
   *[other] { $positions } Positionen von „{ $track }“ springen weg und zurück; sie werden weggelassen.
}
walk_waits_as_corners = Bei „{ $track }“ blieb man an { $places ->
    [one] 1 Stelle stehen; sie gilt als Ecke.
   *[other] { $places } Stellen stehen; jede gilt als Ecke.
}
walk_pieces_joined = „{ $track }“ wurde in { $pieces } Stücken aufgezeichnet, die durch gerade Linien verbunden sind.
walk_overlap_cut = Bei „{ $track }“ ging man { $past_m } über den Anfang hinaus; dieses Ende ist abgeschnitten.
walk_gap_closed = „{ $track }“ wurde durch eine gerade Linie von { $gap_m } geschlossen.
walk_loops_cut = { $loops ->
    [one] 1 kleine Schleife in „{ $track }“ ist abgeschnitten.
   *[other] { $loops } kleine Schleifen in „{ $track }“ sind abgeschnitten.
}
walk_guide_turned = „{ $track }“ wurde zur Ladestation hin abgegangen und ist umgedreht.

## Was sonst gegen eine Aufzeichnung spricht

stood_all_the_time = Der Mäher stand die ganze Zeit: Lassen Sie den Logger mehrere ganze Ausfahrten lang laufen.
drove_too_short = Nur { $driven_s } Fahrt sind aufgezeichnet: Lassen Sie den Logger mehrere ganze Ausfahrten lang laufen.
drove_too_short_by = { $driven_s } Fahrt sind aufgezeichnet: Etwa { $missing_h } fehlen noch, bis eine ausgelassene Stelle von { $wanted_m } Breite mehr ist als Zufall.
receiver_jumped = Der Empfänger sprang um { $size_m } (Zeitpunkt: { $time }) und blieb dort.
receiver_jumps_back = Der Empfänger sprang { $jumps } Mal weg und wieder zurück: Über einem Teil des Rasens ist seine Sicht zum Himmel schlecht.
stops_not_placed = Halte von zusammen { $lost_min } werden nicht genannt: So ungenaue Positionen zeigen nicht, wo der Mäher stand.
receiver_jumped_often = { $jumps ->
    [one] Dazu ein weiterer Sprung dieser Art.
   *[other] Dazu { $jumps } weitere Sprünge dieser Art.
}
date_too_old = Die Aufzeichnung beginnt am { $date }: Die Uhr des Loggers war nicht gestellt, oder ihr Wochenzähler ist übergelaufen. Das Datum ist falsch, die Uhrzeiten können stimmen (--date setzt den Tag von Aufzeichnungen, die nur Uhrzeiten enthalten).
positions_bent = Auf etwa { $area_m2 } um { $place } liegen die Positionen stets in derselben Richtung daneben, um bis zu { $largest_m }, wie neben einer Wand oder unter Bäumen. Der Weg wurde dort begradigt; wie viel von dieser Fläche überfahren wurde, ist weniger sicher.
turns_not_at_edge = Die Wenden liegen nicht an den Rändern des Plans (Bahnen, oder ein Plan, der nicht passt), deshalb wurden die Positionen nicht an den Rändern berichtigt.
edge_inside = Am Rand im { $edge_deg } wendet der Mäher { $offset_m } weiter innen als an den anderen Rändern (Wenden: { $turns }): Der Rand ist zu weit außen gezeichnet, die Begrenzung liegt zu weit innen, oder der Empfänger liegt dort daneben. Messen Sie auf dem Rasen nach, bevor Sie etwas versetzen.
edge_outside = Am Rand im { $edge_deg } wendet der Mäher { $offset_m } weiter außen als an den anderen Rändern (Wenden: { $turns }): Der Rand ist zu weit innen gezeichnet, die Begrenzung liegt zu weit außen, oder der Empfänger liegt dort daneben. Messen Sie auf dem Rasen nach, bevor Sie etwas versetzen.
zone_driven = Die Zone{ $zone ->
    [none] { "" }
   *[other] { " " }„{ $zone }“
} wird überfahren wie der Rasen ({ $path_m } Fahrt darin): Für den Mäher gibt es sie nicht. Was dort liegt, ist vor ihm womöglich nicht sicher.
plan_beside = Der Plan liegt { $distance_m } neben der Aufzeichnung ({ $east_m } nach Osten, { $north_m } nach Norden); er wurde passend verschoben.
drift_assumed = Die Aufzeichnung sagt nicht, wie gut ihre Positionen sind, und der Mäher steht nie lange genug, um es zu zeigen; angenommen sind { $drift_m }. Wissen Sie es besser, geben Sie es an (positions.drift_m).
drift_at_most = Der Mäher steht nie lange genug, um zu zeigen, wie weit die Positionen wandern; seine geraden Fahrten lassen höchstens { $drift_m } zu.
silent_long = Während { $silent_fraction } der Zeit gibt es keine brauchbaren Messpunkte; darüber wird nichts behauptet.
fixes_left_out = { $poor ->
    [0] { $jumps ->
        [one] 1 Messpunkt wurde als Sprung weggelassen.
       *[other] { $jumps } Messpunkte wurden als Sprünge weggelassen.
    }
    [one] { $jumps ->
        [0] 1 Messpunkt wurde wegen schlechter Qualität weggelassen.
        [one] 1 Messpunkt wurde wegen schlechter Qualität weggelassen, 1 als Sprung.
       *[other] 1 Messpunkt wurde wegen schlechter Qualität weggelassen, { $jumps } als Sprünge.
    }
   *[other] { $jumps ->
        [0] { $poor } Messpunkte wurden wegen schlechter Qualität weggelassen.
        [one] { $poor } Messpunkte wurden wegen schlechter Qualität weggelassen, 1 als Sprung.
       *[other] { $poor } Messpunkte wurden wegen schlechter Qualität weggelassen, { $jumps } als Sprünge.
    }
}
no_station = Keine Ladestation erkannt: Es gibt keinen Ort, an dem der Mäher wiederholt zehn Minuten oder länger steht.
claim_too_good = Der Empfänger gibt { $claimed_m } an, aber seine Positionen streuen um { $scatter_m }: Es gilt die Streuung, nicht die Angabe.
rtk_fixed_too_good = Der Empfänger meldet RTK fixed, was etwa { $usual_m } bedeutet, aber seine Positionen streuen um { $scatter_m }: Es gilt die Streuung, nicht die Angabe.
positions_repeated = { $repeated_fraction } der Messpunkte wiederholen die Position davor bis auf die letzte Stelle, während der Empfänger eine Geschwindigkeit meldet (am längsten { $longest_s } lang): Er gibt alte Positionen aus.
positions_held = { $repeated_fraction } der Messpunkte wiederholen die Position davor bis auf die letzte Stelle (am längsten { $longest_s } lang): Der Empfänger hält seine Position fest, solange er steht; im Stand sehen seine Positionen deshalb besser aus, als sie sind. Schalten Sie dieses Festhalten ab (static hold).
drives_at_rest = { $rest_min } von { $driven_min } Fahrt fallen in Stunden, in denen der Mäher nach den Einstellungen ruht ({ $time_zone ->
    [none] keine Zeitzone eingestellt, also UTC
   *[other] Zeitzone { $time_zone }
}); keine Verschiebung um ganze Stunden macht sie passend.
drives_at_rest_shifted = { $rest_min } von { $driven_min } Fahrt fallen in Stunden, in denen der Mäher nach den Einstellungen ruht ({ $time_zone ->
    [none] keine Zeitzone eingestellt, also UTC
   *[other] Zeitzone { $time_zone }
}); { $shift_h } { $later ->
    [yes] später
   *[no] früher
} würden sie passen{ $local_time ->
    [yes] : Die Aufzeichnung enthält anscheinend Ortszeit, die als UTC bezeichnet ist.
   *[no] .
}
calibrated = { $runs ->
    [one] Eine Aufzeichnung wie diese wurde auf dem Plan simuliert; der überfahrene Anteil wurde um die Abweichung berichtigt, die sie zeigte: { $points } Prozentpunkte.
   *[other] { $runs } Aufzeichnungen wie diese wurden auf dem Plan simuliert; der überfahrene Anteil wurde um die Abweichung berichtigt, die sie zeigten: { $points } Prozentpunkte.
}
ways_disagree = Zwei Arten zu zählen widersprechen sich: { $by_path_fraction } nach dem Weg, der an Wenden und Ränder angepasst wurde, { $as_logged_fraction } nach den aufgezeichneten Positionen, um ihre Fehler berichtigt. Es gilt die zweite, und keine Fläche wird als ausgelassen gemeldet.
as_logged_silent = Gezählt wie aufgezeichnet wären es { $as_logged_fraction }: Was während der Aussetzer ({ $silent_fraction } der Zeit) überfahren wurde, fehlt darin.
as_logged_sparse = Gezählt wie aufgezeichnet wären es { $as_logged_fraction }: Bei einem Messpunkt alle { $period_s } schneiden gerade Linien von Punkt zu Punkt die Wenden ab.
as_logged_spread = Gezählt wie aufgezeichnet wären es { $as_logged_fraction }: Positionen, die um etwa { $error_m } danebenliegen, verteilen den Weg auf Rasen, der nicht überfahren wurde.
as_logged_aside = Gezählt wie aufgezeichnet wären es { $as_logged_fraction }: Positionen, die um etwa { $error_m } danebenliegen, tragen den Weg über den Rasen hinaus oder auf Stellen, die schon überfahren waren.
not_calibrated_no_width = Der überfahrene Anteil ist nicht kalibriert: Dafür braucht es die Schnittbreite.
not_calibrated_no_plan = Der überfahrene Anteil ist nicht kalibriert: Dafür braucht es einen Plan, auf dem gefahren werden kann.
not_calibrated_lanes = Der überfahrene Anteil ist nicht kalibriert: Parallele Bahnen lassen sich nicht genau genug simulieren.
not_calibrated_no_drive = Der überfahrene Anteil ist nicht kalibriert: Die Aufzeichnung zeigt keine Fahrt.
not_calibrated_no_run = Der überfahrene Anteil ist nicht kalibriert: Kein Mäher wie dieser kann auf dem Plan fahren.

## Was folgt, wenn zwei Antworten auf dieselbe Frage einander widersprechen

interval_holds_both = Der Bereich ist so weit gefasst, dass er { $one_fraction } und { $other_fraction } enthält.
interval_wider = Der Bereich ist { $times }-mal so weit gefasst.
interval_wider_by = Der Bereich ist nach beiden Seiten um { $more_fraction } des Rasens weiter gefasst.
plan_not_believed = Nur { $explained_fraction } der Wenden lassen sich durch die Ränder des Plans erklären; wo die Aufzeichnung nicht zeigt, wie der Plan liegt, wird deshalb keine Ursache genannt.
legs_unlike = Die übliche gerade Strecke ist in der Aufzeichnung { $logged_m } lang, in Simulationsläufen des angepassten Mähers { $drawn_m }: Er bewegt sich anders, als das Modell es kennt, und was Simulationsläufe vorhersagen, ist weniger sicher.
shows_wider = Flächen bis { $widest_m } Breite bleiben unentschieden: Nur breitere Fehlstellen würden sich zeigen.

## Warum eine Fehlstelle ausgelassen wurde

too_narrow_to_explain = Die Stelle wurde nicht überfahren, aber diese Positionen sind zu ungenau, um zu zeigen, warum eine Lücke von { $widest_m } Breite blieb; sehen Sie vor Ort nach.
gap_too_narrow = Der Teil dahinter ({ $behind_m2 }) ist nicht erreichbar: Die Engstelle ist { $width_m } breit, und der Mäher braucht mehr als { $needed_m }.
no_way_in = Dieser Teil ({ $area_m2 }) hat keinen Zugang: Auf dem Plan hängt er nicht mit der Fläche zusammen, auf der der Mäher startet.
no_way_in_driven = Dieser Teil ({ $area_m2 }) hat keinen Zugang: Keine Fahrt des Mähers führt dorthin.
turns_before_edge = Der Mäher wendet hier { $setback_m } vor dem Rand, deshalb erreicht seine Messerscheibe diesen Streifen nicht.
zone_elsewhere = Die Zone{ $zone ->
    [none] { "" }
   *[other] { " " }„{ $zone }“
} liegt anscheinend nicht dort, wo sie gezeichnet ist: Der Mäher fuhr { $path_m } in der gezeichneten Zone und wendete an einer Linie außerhalb.
zone_elsewhere_towards = Die Zone{ $zone ->
    [none] { "" }
   *[other] { " " }„{ $zone }“
} liegt anscheinend weiter im { $towards_deg }, als sie gezeichnet ist: Der Mäher fuhr { $path_m } in der gezeichneten Zone und wendete an einer Linie außerhalb.
stuck_on_the_way = Der Mäher fuhr sich auf dem Weg zu diesem Teil { $times ->
    [1] einmal
    [2] zweimal
   *[other] { $times } Mal
} fest ({ $lost_min }).
stuck_on_the_way_past = Der Mäher fuhr sich auf dem Weg zu diesem Teil { $times ->
    [1] einmal
    [2] zweimal
   *[other] { $times } Mal
} fest ({ $lost_min }) und kam { $at_least ->
    [yes] mindestens { $past ->
        [1] einmal
        [2] zweimal
       *[other] { $past } Mal
    }
   *[no] { $past ->
        [0] nie
        [1] einmal
        [2] zweimal
       *[other] { $past } Mal
    }
} vorbei.
passage_shut = Der Durchgang von { $width_m } Breite ist anscheinend versperrt: In { $driven_h } Fahrt { $expected ->
    [one] wurde 1 Durchfahrt erwartet und keine gesehen.
   *[other] wurden { $expected } Durchfahrten erwartet und keine gesehen.
}
something_stands = Hier steht etwas von etwa { $widest_m } Breite, das der Plan nicht zeigt: Der Mäher kehrte davor { $turns ->
    [1] einmal
    [2] zweimal
   *[other] { $turns } Mal
} um und kam nie hinein.
something_may_stand = Hier steht etwas von etwa { $widest_m } Breite, oder der Rasen hat ein Loch: Der Mäher kehrte davor { $turns ->
    [1] einmal
    [2] zweimal
   *[other] { $turns } Mal
} um und kam nie hinein. Ist es ein Beet, ein Baum oder ein Teich? Ein Plan, der es zeigt, würde es klären.
strip_stays = Am Rand im { $edge_deg } bleibt auf { $length_m } Länge ein Streifen von { $width_m } Breite übrig.
strip_stays_turns = Am Rand im { $edge_deg } bleibt auf { $length_m } Länge ein Streifen von { $width_m } Breite übrig: Der Mäher wendet hier { $here_m } vor dem Rand, anderswo { $elsewhere_m }.
passage_seldom_found = In { $driven_h } Fahrt fand der Mäher { $entries ->
    [0] kein einziges Mal
    [1] { $at_least ->
        [yes] mindestens einmal
       *[no] nur einmal
    }
    [2] { $at_least ->
        [yes] mindestens zweimal
       *[no] nur zweimal
    }
   *[other] { $at_least ->
        [yes] mindestens { $entries } Mal
       *[no] nur { $entries } Mal
    }
} durch den Durchgang von { $width_m } Breite; die { $behind_m2 } dahinter bekamen { $share_ratio } ihres Anteils.
behind_passage_seldom = Nichts versperrt diesen Teil, aber der Mäher kommt zu selten: Die { $behind_m2 } hinter dem Durchgang von { $width_m } Breite bekamen { $share_ratio } ihres gerechten Anteils, und bei Ausfahrten wie bisher bleibt das so.
comes_seldom = Nichts versperrt diesen Teil, aber der Mäher kommt zu selten: Die Fläche ringsum bekam { $share_ratio } ihres gerechten Anteils.
not_shown = Diese Fläche wird öfter ausgelassen, als es der Zufall erklärt, aber die Aufzeichnung zeigt nicht, warum; sehen Sie vor Ort nach.

## Was dafür spricht

luck_not_lanes = Wer ganz in Bahnen fährt, überlässt keine Lücke von { $width_m } Breite dem Zufall.
luck_under_thousandth = Der Zufall allein lässt eine Lücke von { $width_m } Breite auf weniger als 1 von 1.000 solchen Rasenflächen.
luck_one_in = Der Zufall allein lässt eine Lücke von { $width_m } Breite auf etwa 1 von { $lawns } solchen Rasenflächen.
passage_width = { $width_m } an der engsten Stelle, davon { $free_m } frei für die Mitte des Mähers; { $length_m } lang.
passage_crossings = Der Mäher wechselte { $at_least ->
    [yes] mindestens { $crossings ->
        [1] einmal
        [2] zweimal
       *[other] { $crossings } Mal
    }
   *[no] { $crossings ->
        [0] nie
        [1] einmal
        [2] zweimal
       *[other] { $crossings } Mal
    }
} die Seite; frei umherfahrend hätte er es auf dieser Strecke { $expected ->
    [0] weniger als einmal
    [1] einmal
    [2] zweimal
   *[other] { $expected } Mal
} getan.
driven_behind = { $path_m } dahinter gefahren, { $share_ratio } des gerechten Anteils.
nothing_driven_in = Darin wurde nicht gefahren.
cells_near_edge = Neun Zehntel davon liegen höchstens { $within_m } vom Rand entfernt.
path_in_zone = { $path_m } Fahrt in der gezeichneten Zone.
turns_beside = { $turns ->
    [one] 1 Wende
   *[other] { $turns } Wenden
} neben dieser Fehlstelle, wo der Plan keinen Rand hat.
stops_on_the_way = { $stops ->
    [one] 1 Halt
   *[other] { $stops } Halte
}, zusammen { $lost_min }; { $passes ->
    [one] 1 Fahrt
   *[other] { $passes } Fahrten
} ohne Halt.
share_behind = Der Teil dahinter bekam { $share_ratio } seines gerechten Anteils.
crossings_expected = { $expected ->
    [one] 1 Durchfahrt
   *[other] { $expected } Durchfahrten
} erwartet, keine gesehen.
turns_in_front = { $turns ->
    [one] 1 Wende
   *[other] { $turns } Wenden
} davor, wo der Plan keinen Rand hat.
turns_around = { $turns ->
    [one] 1 Wende
   *[other] { $turns } Wenden
} daran, entlang { $rim_fraction } des offenen Umrisses.
passes_expected = { $passes ->
    [one] 1 Überfahrt
   *[other] { $passes } Überfahrten
} über eine Fläche dieser Breite erwartet, keine gesehen.
strip_shape = { $length_m } lang, größte Breite { $widest_m }, neun Zehntel davon höchstens { $within_m } vom Rand entfernt.
turns_along = { $turns ->
    [one] 1 Wende
   *[other] { $turns } Wenden
} entlang der inneren Seite.
path_nearby = In der Nähe wurden { $share_ratio } der Strecke gefahren, die auf dem Rasen im Mittel üblich ist.
share_simulated = Simulationsläufe von dieser Ladestation aus geben der Fläche { $share_ratio } des Mittels auf dem Rasen.

## Was dagegen spricht

gap_nearly_wide = Die Engstelle ist fast so breit, wie der Mäher sie braucht, oder kaum breiter: Messen Sie nach.
few_turns = Nur { $turns ->
    [one] 1 Wende.
   *[other] { $turns } Wenden.
}
visits_hidden = So ungenaue Positionen verbergen kurze Überfahrten.
strip_thin = Der Streifen ist schmaler als das Dreifache des Positionsfehlers.
zone_may_be_open = Die Zone kann richtig gezeichnet und mit Absicht freigegeben sein.
also_behind_passage = Der Teil liegt auch hinter einem Durchgang von { $width_m } Breite.
one_outing_matters = Eine einzige glückliche Ausfahrt würde diese Zahlen stark verändern.
luck_leaves_such = Bei solchen Ausfahrten lässt der Zufall hin und wieder eine solche Stelle.
look_decides = Was von beidem stimmt, lässt sich klären: { $look ->
    [passage] Sehen Sie nach, ob im Durchgang etwas steht.
    [width] Messen Sie den Durchgang mit dem Maßband.
    [ground] Sehen Sie nach, ob auf der Fläche etwas steht oder sie versperrt.
    [zone] Messen Sie nach, ob die Zone dort liegt, wo sie gezeichnet ist.
    [stuck_spot] Sehen Sie sich die Stelle an, an der sich der Mäher festfährt.
    [edge] Beobachten Sie, wie weit vor dem Rand der Mäher dort wendet.
   *[another_log] Zeichnen Sie weitere { $log_h } Fahrt auf; kommt der Mäher dort hinein, zeigen es { $told_fraction } solcher Aufzeichnungen.
}

## Flächen, über die nichts entschieden ist

not_yet = Noch ist nichts verkehrt: { $driven_h } Fahrt sind wenig für { $lawn_m2 }; Lücken von { $widest_m } sind hin und wieder normal.
not_yet_until = Noch ist nichts verkehrt: { $driven_h } Fahrt sind wenig für { $lawn_m2 }; Lücken von { $widest_m } sind bis etwa { $decided_h } Fahrt normal.
hidden_by_silence = Die Aufzeichnung setzt aus, während der Mäher dort gewesen sein kann (Wahrscheinlichkeit { $chance_fraction }).
cause_withheld = Diese Aufzeichnung zeigt nicht, wie der Plan im Garten liegt; deshalb wird keine Ursache genannt und keine Änderung vorgeschlagen. Sehen Sie vor Ort nach, und prüfen Sie den Plan oder zeichnen Sie bessere Positionen auf.
shown_too_little = Die Aufzeichnung zeigt zu wenig, um zu sagen, ob hier etwas ausgelassen wurde.

## Wonach zu sehen ist, wo der Mäher sich festfuhr

stuck_near = Die Stelle liegt { $distance_m } vom { $feature ->
    [zone] Rand der Sperrzone „{ $name }“
    [obstacle] Rand des Hindernisses „{ $name }“
   *[lawn_edge] Rand des Rasens
} entfernt: Suchen Sie dort nach Wurzeln, einer Stufe oder weichem Boden.
stuck_in_passage = Die Stelle liegt im Durchgang von { $width_m } Breite: Suchen Sie dort nach Wurzeln, einer Stufe oder weichem Boden.
stuck_in_passage_near = Die Stelle liegt im Durchgang von { $width_m } Breite, { $distance_m } vom { $feature ->
    [zone] Rand der Sperrzone „{ $name }“
    [obstacle] Rand des Hindernisses „{ $name }“
   *[lawn_edge] Rand des Rasens
} entfernt: Suchen Sie dort nach Wurzeln, einer Stufe oder weichem Boden.
stuck_in_the_open = Auf dem Plan ist nichts in der Nähe: Suchen Sie nach Wurzeln, einem Loch oder weichem Boden.
stuck_somewhere = Suchen Sie nach Wurzeln, einem Loch oder weichem Boden.

## Was zu ändern ist

lay_guide_run = Legen Sie mit { $wire_m } neuem Kabel eine Leitlinie bis ans hintere Ende von { $pocket } und schicken Sie { $outings_of_ten } von 10 Ausfahrten an ihr entlang{ $longer ->
    [yes] , und lassen Sie den Mäher täglich { $added_h } länger arbeiten
   *[no] { "" }
}. In { $log_h } wie diesen wird dann meist etwa { $after_fraction } von { $pocket } überfahren, ohne Änderung { $before_fraction }.
move_zone = Versetzen Sie die Zone „{ $zone }“ um { $shift_m } dorthin, wo sie gezeichnet ist, denn die Wenden zeigen, dass sie woanders liegt{ $longer ->
    [yes] , und lassen Sie den Mäher täglich { $added_h } länger arbeiten
   *[no] { "" }
}. In { $log_h } wie diesen wird dann meist etwa { $after_fraction } von { $pocket } überfahren, ohne Änderung { $before_fraction }.
facing_side = Die nach { $faces_deg } gewandte Seite.
shrink_zone = Setzen Sie die nach { $faces_deg } gewandte Seite der Zone „{ $zone }“ um { $shift_m } zurück, sodass daneben ein Weg von { $passage_m } Breite zu { $pocket } frei ist{ $longer ->
    [yes] , und lassen Sie den Mäher täglich { $added_h } länger arbeiten
   *[no] { "" }
}. In { $log_h } wie diesen wird dann meist etwa { $after_fraction } von { $pocket } überfahren, ohne Änderung { $before_fraction }.
add_zone = Halten Sie den Mäher von der Stelle fern, an der er sich festfährt ({ $spot }), damit er öfter zu { $pocket } kommt{ $longer ->
    [yes] , und lassen Sie ihn täglich { $added_h } länger arbeiten
   *[no] { "" }
}. In { $log_h } wie diesen wird dann meist etwa { $after_fraction } von { $pocket } überfahren, ohne Änderung { $before_fraction }.
work_longer = Lassen Sie den Mäher täglich { $added_h } länger arbeiten. In { $log_h } wie diesen wird dann meist etwa { $after_fraction } von { $pocket } überfahren, ohne Änderung { $before_fraction }.
shift_boundary = Versetzen Sie die Begrenzung entlang { $pocket } um { $shift_m } nach außen{ $longer ->
    [yes] , und lassen Sie den Mäher täglich { $added_h } länger arbeiten
   *[no] { "" }
}. In { $log_h } wie diesen wird dann meist etwa { $after_fraction } von { $pocket } überfahren, ohne Änderung { $before_fraction }.

## Wie gut ein simulierter Mäher zur Aufzeichnung passt

fit_trusted = Ein simulierter Mäher, der wie dieser fährt ({ $speed_mps }, gelernt aus { $turns ->
    [one] 1 Wende
   *[other] { $turns } Wenden
} und { $outings ->
    [one] 1 Ausfahrt
   *[other] { $outings } Ausfahrten
}), überfährt so viel vom Rasen, wie die Aufzeichnung zeigt.
fit_visits_differ = Simulationsläufe überfahren mehr oder weniger von diesem Rasen, als die Aufzeichnung zeigt: Etwas am Boden fehlt im Plan, oder der Mäher verhält sich von Tag zu Tag anders. Die Vorhersagen haben deshalb weitere Bereiche.
fit_path_differs = Simulationsläufe fahren eine längere oder kürzere Strecke, als die Aufzeichnung zeigt. Die Vorhersagen haben deshalb weitere Bereiche.
not_fitted_lanes = Keine Vorhersage: Der Mäher fährt Bahnen, und die hängen nicht vom Zufall ab.
not_fitted_several_machines = Keine Vorhersage: Hier arbeiteten { $machines } Mäher, und nur einer lässt sich anpassen.
not_fitted_few_turns = Keine Vorhersage: { $turns ->
    [one] Nur 1 Wende am Rand wurde gesehen
   *[other] Nur { $turns } Wenden am Rand wurden gesehen
}, und { $expected } sind nötig.
not_fitted_no_legs = Keine Vorhersage: Der Weg zeigt keine geraden Strecken zwischen Wenden.
not_fitted_no_ground = Keine Vorhersage: Der Plan lässt keine Fläche zum Fahren.
not_simulated = Keine Vorhersage: { $why }.

## Stunden und Gras

promise_beyond_hours = { $promised_fraction } innerhalb von { $promised_days ->
    [one] 1 Tag
   *[other] { $promised_days } Tagen
} sind auch mit mehr Arbeitszeit nicht zu erreichen: Nötig wären { $needed_h } am Tag.
promise_needs_hours = { $promised_fraction } innerhalb von { $promised_days ->
    [one] 1 Tag
   *[other] { $promised_days } Tagen
} brauchen bei diesem Tempo etwa { $needed_h } Arbeitszeit am Tag; gearbeitet hat der Mäher { $worked_h }, davon { $driven_h } Fahrt.
promise_beyond_reach = Keine Arbeitszeit ist lang genug für { $promised_fraction } innerhalb von { $promised_days ->
    [one] 1 Tag
   *[other] { $promised_days } Tagen
}: Zu viel Fläche wird ausgelassen. Gearbeitet hat der Mäher { $worked_h } am Tag, davon { $driven_h } Fahrt.
promise_hours_unknown = Gearbeitet hat der Mäher { $worked_h } am Tag, davon { $driven_h } Fahrt; was { $promised_fraction } innerhalb von { $promised_days ->
    [one] 1 Tag
   *[other] { $promised_days } Tagen
} brauchen würden, zeigt diese Aufzeichnung nicht.
lower_cut_unknown = Ob bei der jetzigen Schnitthöhe jede Stelle überfahren wurde, zeigt diese Aufzeichnung nicht.
lower_cut = Jede Stelle, die breit genug ist, um erkannt zu werden, wurde bei der jetzigen Schnitthöhe überfahren (mindestens { $visited_fraction } des Rasens): Sie können die Schnitthöhe um eine Stufe senken.
lower_cut_places_open = Lassen Sie die Schnitthöhe, wie sie ist: { $places ->
    [one] 1 Stelle, die breit genug ist, um erkannt zu werden, wurde noch nicht überfahren
   *[other] { $places } Stellen, die breit genug sind, um erkannt zu werden, wurden noch nicht überfahren
}, und hohes Gras hält einen tief eingestellten Mäher auf.
lower_cut_unsure = Lassen Sie die Schnitthöhe, wie sie ist: Nur { $visited_fraction } des Rasens sind sicher überfahren, und hohes Gras hält einen tief eingestellten Mäher auf.
grass_log_too_short = Gras, das { $growth_mm } am Tag wächst, darf zwischen zwei Überfahrten { $allowed_days ->
    [one] 1 Tag
   *[other] { $allowed_days } Tage
} warten (Drittelregel); diese Aufzeichnung von { $log_days ->
    [one] 1 Tag
   *[other] { $log_days } Tagen
} ist zu kurz, um zu zeigen, ob eine Stelle länger wartete.
grass_overdue = { $overdue_fraction } des Rasens blieben länger als { $allowed_days ->
    [one] 1 Tag
   *[other] { $allowed_days } Tage
} ohne Überfahrt, zu lange für Gras, das { $growth_mm } am Tag wächst (Drittelregel): Es braucht mehr Überfahrten.
grass_too_many_passes = Jede Stelle wird { $passes } Mal überfahren { $allowed_days ->
    [one] an dem einen Tag, den das Gras warten könnte
   *[other] in den { $allowed_days } Tagen, die das Gras warten könnte
} (Drittelregel): Weniger Stunden würden reichen und die Grasnarbe schonen.
grass_enough_passes = Zwischen zwei Überfahrten lagen höchstens { $allowed_days ->
    [one] 1 Tag
   *[other] { $allowed_days } Tage
}, wie es Gras braucht, das { $growth_mm } am Tag wächst (Drittelregel).

## Was eine Änderung gebracht hat

lawn_unknown = Ob der Rasen als Ganzes besser ist, zeigen diese Aufzeichnungen nicht.
lawn_more = Vom Rasen werden { $points } Prozentpunkte mehr überfahren als vorher.
lawn_less = Vom Rasen werden { $points } Prozentpunkte weniger überfahren als vorher.
lawn_alike = Der Rasen als Ganzes zeigt keinen Unterschied über den Zufall einer Nacht hinaus.
pockets_mended = Behoben: { $pockets }.
pockets_better = Besser: { $pockets }.
pockets_new = Neu: { $pockets }.
pocket_compared = { $pocket }: vorher { $before_fraction }, nachher { $after_fraction }; { $change ->
    [mended] { $within_luck ->
        [yes] jetzt wird fast alles überfahren, aber bei mehr als einem von zehn solchen Paaren von Aufzeichnungen brächte das der Zufall allein: Sehen Sie nach ein paar Nächten noch einmal nach
       *[no] jetzt wird fast alles überfahren
    }
    [better] es wird mehr überfahren, als der Zufall brächte
    [new] vorher wurde diese Stelle überfahren
   *[unchanged] { $within_luck ->
        [yes] es wird mehr überfahren, aber nicht mehr, als der Zufall bringen kann
       *[no] kein Unterschied über den Zufall hinaus
    }
}.
change_decided = { $pocket }: entschieden nach { $decided ->
    [one] der ersten
   *[other] { $decided }
} von { $nights } Nächten, mit höchstens 5 % Irrtum, wie oft Sie auch nachgesehen haben.
change_open = { $pocket }: { $more ->
    [one] Eine weitere Nacht wie diese würde
   *[other] { $more } weitere Nächte wie diese würden
} es entscheiden.

## Wovor zu warnen ist

blades_on_lawn = Messer in Bewegung: Halten Sie den Mäher an und sichern Sie ihn gegen Anlaufen, bevor Sie ihn berühren; halten Sie Kinder und Haustiere vom Rasen fern, solange er arbeitet.
blades_near = Messer in Bewegung: Halten Sie den Mäher an und sichern Sie ihn gegen Anlaufen, bevor Sie in seiner Nähe arbeiten.
outline_from_drive = Es wurde kein Plan angegeben: Der Umriss ist aus der Fahrt selbst gezeichnet. Rasen, in dessen Nähe der Mäher nie kam, ist nicht gezählt, und was er umfuhr, gilt als Insel.
plan_fault = Plan: { $fault }.
dig_at_spot = Vor dem Graben an einer Festfahrstelle: Lassen Sie Kabel und Rohre im Boden orten; private Leitungen sind nicht markiert. Wurzeln können zu einem geschützten Baum gehören.
dig = Vor dem Graben: Lassen Sie Kabel und Rohre im Boden orten; private Leitungen sind nicht markiert.
zone_may_protect = Eine Zone kann Wurzeln, Leitungen oder Menschen schützen: Klären Sie, wozu sie da ist, bevor Sie sie ändern.
hours_by_day = Legen Sie zusätzliche Stunden auf den Tag: Nachts sind kleine Tiere unterwegs.
driven_in_the_dark = { $dark_h } Fahrt fielen in die Dunkelheit, wenn Igel und andere kleine Tiere unterwegs sind: Lassen Sie ihn am Tag arbeiten.
beyond_the_line = Jenseits der Linie können Pflaster, Wasser, ein Hang oder fremder Grund liegen: Sehen Sie nach, bevor Sie sie versetzen.
look_before_zone = Sehen Sie sich erst den Boden an: Eine Wurzel, Kante oder nasse Stelle, die sich beheben lässt, braucht keine Zone.
guide_exit_unknown = Wo der Mäher eine Leitlinie verlässt, ist nicht aufgezeichnet; angenommen: letzte zwei Fünftel. Wenn einstellbar: nahe am Ende.
local_codes = Örtliche Vorschriften und die Betriebsanleitung des Mähers gehen vor.
other_reasons = Ein Unterschied beschreibt, was in diesen Aufzeichnungen überfahren wurde. Dahinter kann etwas anderes stecken als die Änderung: Wetter, andere Stunden, ein Messer, ein Gartentisch.
at_equal_hours = Die beiden Seiten haben verschieden viele Stunden Fahrt; verglichen werden sie nach gleich vielen Stunden.
plan_unsure_before = Die Aufzeichnung zeigt nicht, wie der Plan vor der Änderung im Garten liegt; Orte können dort danebenliegen.
plan_unsure_after = Die Aufzeichnung zeigt nicht, wie der Plan nach der Änderung im Garten liegt; Orte können dort danebenliegen.
place_often = { $visits ->
    [one] Einmal
   *[other] { $visits } Mal
} überfahren, der Rasen im Mittel { $lawn_visits } Mal. Ist das Gras trotzdem lang, sehen Sie nach den Messern, der Schnitthöhe, dem Wuchs an dieser Stelle und dem Gefälle.
place_seldom = Selten überfahren: { $visits ->
    [one] einmal
   *[other] { $visits } Mal
}, der Rasen im Mittel { $lawn_visits } Mal. Sehen Sie nach, was den Weg dorthin einengt: ein Durchgang, eine Ecke, ein naher Rand.
place_few = Bisher { $visits ->
    [one] einmal
   *[other] { $visits } Mal
} überfahren, der Rasen im Mittel { $lawn_visits } Mal: weniger, aber nicht weniger, als es der Zufall allein mit sich bringt. Weitere Nächte entscheiden.
place_never = Ausgelassen: Die Stelle liegt in Fehlstelle { $pocket } ({ $area_m2 }).
place_gap = In dieser Aufzeichnung nicht überfahren, in einer so kleinen Lücke, dass der Zufall allein sie lässt. Zeichnen Sie eine weitere Nacht auf und fragen Sie noch einmal.
place_not_yet = Noch nicht überfahren: Die Stelle liegt in { $pocket }, was der Zufall noch erklärt. Nach insgesamt { $decided_h } Fahrt ist es entschieden.
place_not_yet_open = Noch nicht überfahren: Die Stelle liegt in { $pocket }, was der Zufall noch erklärt. Zeichnen Sie weitere Nächte auf.
place_unseen = Diese Aufzeichnung zeigt es nicht: Die Stelle liegt in { $ground }, einer nicht erfassten Fläche. Zeichnen Sie eine Nacht ohne Aussetzer an dieser Stelle auf.
place_is_stuck_spot = Hier verlor der Mäher Zeit: Festfahrstelle { $spot }, zusammen { $lost_min }.
place_off_lawn = Die Stelle liegt { $distance_m } neben dem Rasen, wo nichts gezählt wird. Ist dort Rasen, fehlt er im Plan.
place_elsewhere = Die Stelle liegt { $distance_m } vom Rasen entfernt: in einem anderen Garten, oder eine der Zahlen ist falsch.
place_beyond_outline = Diese Aufzeichnung zeigt es nicht: Die Stelle liegt { $distance_m } außerhalb des Rasens, den die Fahrt gezeichnet hat. Ist dort Rasen, zeichnen Sie einen Plan, der ihn enthält.
place_in_island = Nie befahren: Die Stelle liegt in Insel { $island } ({ $area_m2 }), an der der Mäher von mehreren Seiten wendete. Ein Beet, ein Baum, ein Teich oder Rasen hinter etwas? Ein Plan klärt es.
place_cannot_tell = Diese Aufzeichnung zeigt es nicht: Ihre Positionen liegen um etwa { $error_m } daneben, und innerhalb dieses Abstands wurde die Fläche teils oft, teils nie überfahren. Zeichnen Sie mit einem besseren Empfänger oder länger auf.
place_compared = { $said ->
    [none] Die Stelle, nach der gefragt wurde
   *[other] „{ $said }“
}: vorher { $before_visits ->
    [one] einmal
   *[other] { $before_visits } Mal
} in { $before_h } Fahrt überfahren, seither { $after_visits ->
    [one] einmal
   *[other] { $after_visits } Mal
} in { $after_h }.
place_needs_width = Ohne Schnittbreite werden keine Überfahrten gezählt: Messen Sie sie, geben Sie sie an und fragen Sie noch einmal.
nights_unknown = Diese Aufzeichnungen zeigen nicht, wie sehr sich eine Nacht von der nächsten unterscheidet; deshalb kann kein Unterschied als echt gelten.

## Wörter für eine Richtung

compass = { $eighth ->
    [0] Norden
    [1] Nordosten
    [2] Osten
    [3] Südosten
    [4] Süden
    [5] Südwesten
    [6] Westen
   *[7] Nordwesten
}

## Was unsere eigenen Wörter bedeuten

cause = { $value ->
    [walled_off] kein Zugang
    [narrow_passage] enger Durchgang
    [edge_band] Randstreifen
    [zone_misplaced] Linie liegt anders als gezeichnet
    [beyond_stuck_spot] hinter einer Festfahrstelle
    [too_few_visits] Mäher kommt zu selten vorbei
    [too_little_time] nicht lange genug gefahren
   *[undetermined] zeigt diese Aufzeichnung nicht
}
asked-short = { $value ->
    [place_often] Überfahren wie der Rest
    [place_seldom] Selten überfahren
    [place_few] Bisher weniger überfahren
    [place_never] Ausgelassen
    [place_gap] Nicht überfahren
    [place_not_yet] Noch offen
    [place_not_yet_open] Noch offen
    [place_is_stuck_spot] Hier fährt sich der Mäher fest
    [place_off_lawn] Neben dem Rasen
    [place_elsewhere] Woanders
    [place_in_island] Nie befahren
    [place_needs_width] Nicht gezählt
   *[place_cannot_tell] Zeigt diese Aufzeichnung nicht
}
cause-meaning = { $value ->
    [walled_off] Der Mäher kommt nicht hinein: Die Engstelle ist zu schmal für ihn, oder dort steht etwas.
    [narrow_passage] Der Zugang ist so eng, dass der Mäher ihn selten findet.
    [edge_band] Ein Streifen am Rand liegt außerhalb der Linie, an der der Mäher wendet.
    [zone_misplaced] Der Mäher wendet an einer Linie, die anderswo liegt, als der Plan zeigt.
    [beyond_stuck_spot] Der Mäher fährt sich auf dem Weg dorthin fest.
    [too_few_visits] Der Weg ist frei, aber die Fahrten führen zu selten dorthin.
    [too_little_time] Der ganze Rasen wird nach und nach überfahren, wie es sein soll; es braucht nur mehr Stunden.
   *[undetermined] Diese Aufzeichnung zeigt nicht, warum.
}
suggestion = { $value ->
    [guide_run] Leitlinie legen
    [zone_move] Sperrzone versetzen
    [zone_shrink] Sperrzone verkleinern
    [zone_add] Sperrzone hinzufügen
    [more_hours] Länger arbeiten
   *[boundary_shift] Begrenzung versetzen
}
suggestion-inline = { $value ->
    [guide_run] Leitlinie legen
    [zone_move] Sperrzone versetzen
    [zone_shrink] Sperrzone verkleinern
    [zone_add] Sperrzone hinzufügen
    [more_hours] länger arbeiten
   *[boundary_shift] Begrenzung versetzen
}
noise-source = { $value ->
    [station_scatter] Streuung im Stand an der Ladestation
    [rest_scatter] Streuung im Stand anderswo
    [driving_roughness] Unruhe des Weges beim Fahren
    [device_card] Gerätekarte des Empfängers
    [stated] Angabe in den Einstellungen
    [receiver_claim] eigene Angabe des Empfängers
    [dilution_of_precision] Satellitengeometrie (DOP) mal üblicher Streckenfehler
   *[default] angegebener Vorgabewert, da die Aufzeichnung keinen liefert
}
promise = { $value ->
    [kept] eingehalten
    [broken] nicht eingehalten
   *[cannot_tell] zeigt diese Aufzeichnung nicht
}
fix-quality = { $value ->
    [unknown] nicht angegeben
    [autonomous] nur Satelliten
    [differential] differenziell
    [precise] Präzisionsdienst
    [rtk_fixed] RTK fixed
    [rtk_float] RTK float
    [estimated] Koppelnavigation
    [manual] von Hand eingegeben
    [simulated] Simulator
   *[other] unbekannter Code
}
pocket-change = { $value ->
    [mended] behoben
    [better] besser
    [new] neu
   *[unchanged] unverändert
}
out-of-reach = { $value ->
    [edge] ein Randstreifen oder eine Ecke: Der Mäher wendet, bevor die Messerscheibe dort ist
   *[cut_off] abgeschnitten hinter einem zu engen Durchgang oder ohne jeden Zugang
}
presence = { $value ->
    [came] erst später: Vorher wurde durch seinen Platz gefahren
    [went] nur am Anfang: Seither wurde durch seinen Platz gefahren
    [came_and_went] eine Zeit lang: Vorher und seither wurde durch seinen Platz gefahren
   *[throughout] die ganze Zeit
}
way-home = { $value ->
    [guide_run] entlang einer Leitlinie
    [boundary] entlang der Begrenzung
   *[straight] geradewegs über den Rasen
}
lower-cut = { $value ->
    [yes] ja
    [not_yet] noch nicht
   *[cannot_tell] zeigt diese Aufzeichnung nicht
}
growth-source = { $value ->
    [settings] aus den Einstellungen
   *[temperature] aus der mittleren Temperatur
}
failure-reason = { $value ->
    [unreadable] nicht lesbar
    [damaged] beschädigt
    [clock] Uhr
    [plan] Plan
    [settings] Einstellungen
    [analysis] Auswertung
    [time] dauerte zu lange
    [memory] zu wenig Speicher
    [died] abgebrochen
   *[pieces] in Stücken
}
fit-figure = { $value ->
    [visited_fraction] Rasen überfahren, %
    [path_m] gefahrene Strecke, { $unit }
    [visits_map_correlation] Karte der Überfahrten, Korrelation mit dem Mittel der Simulationsläufe
    [leg_m] gerade Strecke zwischen zwei Wenden, Median, { $unit }
   *[revisit_path_m] Strecke zwischen zwei Überfahrten einer Stelle, Median, { $unit }
}

## Festfahrstellen

stuck-came = Meist kam der Mäher mit Fahrtrichtung { $course_deg }.

## Seite: Zusammenfassung

count-pocket = { $count ->
    [one] 1 Fehlstelle
   *[other] { $count } Fehlstellen
}
count-area = { $count }, { $area }
about-more-driving-are = Nötig sind noch etwa { $hours } Fahrt.
driven-over-percent-area = Von { $area } wurden { $percent } überfahren.
driven-over-percent-area-range = Von { $area } wurden { $percent } überfahren ({ $range } mit einer Wahrscheinlichkeit von 90 %).
lost-at = { $time } an { $id } verloren
suggestion-by = { $value ->
    [guide_run] Leitlinie legen, { $length }
    [zone_move] Sperrzone um { $length } versetzen
    [zone_shrink] Sperrzone um { $length } verkleinern
    [zone_add] Sperrzone hinzufügen, { $length }
    [more_hours] Länger arbeiten, { $length }
   *[boundary_shift] Begrenzung um { $length } versetzen
}
nine-ten-logs-pocket = Neun von zehn Simulationsläufen: { $range_2 } der Fehlstelle mit Änderung, { $range } ohne Änderung.{ $more ->
    [0] { "" }
    [one] { " " }1 weitere Änderung steht weiter unten.
   *[other] { " " }{ $more } weitere Änderungen stehen weiter unten.
}
let-run-on-after = Lassen Sie den Mäher weiterfahren. Was nach insgesamt { $hours } Fahrt noch nicht überfahren ist, ist mehr als Zufall.
luck-leaves-such-gap = Wahrscheinlichkeit, dass der Zufall allein eine Lücke wie { $id } lässt: { $chance }.
sure-not-driven-over = zu { $percent } sicher, dass { $id } nicht überfahren wurde
sure-change-helps = Zu { $percent } sicher, dass { $id } hilft
change-brings-its-gain = In so vielen Simulationsläufen wurde von der Fehlstelle mehr überfahren, und die Vorhersage traf zu.
none-it-shows = Keine, die diese Aufzeichnung zeigen kann
how-much-driven-over = Wie viel überfahren wurde, hängt von der Breite der Messerscheibe ab, und die wurde nicht angegeben; die Tabelle für jede Breite steht weiter unten.
not-counted = Nicht gezählt
outline-drawn-from-log = Der Umriss ist aus der Aufzeichnung selbst gezeichnet, seine Ränder stimmen auf etwa { $error }: Rasen, in dessen Nähe der Mäher nie kam, ist nicht gezählt.
asked-about = { $count }, zusammen { $area }: Hier wendete der Mäher von mehreren Seiten und fuhr nie hinein. Beete, Bäume, Teiche oder Rasen hinter etwas? Nicht zum Rasen gezählt.
visit = Besuch:
quote-open = „
quote-close = “
asked-place = Die Stelle, nach der gefragt wurde
asked-row = Überfahren: { $visits }. Zuletzt am { $last }; meist { $due }.
asked-row-never = Überfahren: { $visits }.
asked-mark = { $id }, gefragt: { $said }
asked-visits = { $number } Mal in dieser Aufzeichnung ({ $low } bis { $high })
asked-visits-beside = { $visits }; der Rasen im Mittel { $mean } Mal
asked-due = alle { $hours } Fahrt
walk-first-hint = gehen Sie zuerst den Rand bei { $place } ab: Auf { $length } davon wendete der Mäher nirgends
walk-first = Gehen Sie zuerst den Rand bei { $place } ab: Auf { $length } davon wendete der Mäher nirgends.
nothing-needs-reason-again = Es gibt nichts zu erklären
this-log-cannot-tell = Zeigt diese Aufzeichnung nicht
not-by = Kein Zufall
change-nothing-garden-on = Ändern Sie aufgrund dieser Aufzeichnung nichts im Garten.
measure-width-cutting-disc = Messen Sie die Breite der Messerscheibe und zählen Sie noch einmal.
walk-round-lawn-with = Gehen Sie mit dem Logger um den Rasen und machen Sie einen Plan daraus: Was jenseits der Fahrt liegt, ist in der Aufzeichnung nicht zu sehen.
no-ground-left-out = Der Zufall erklärt jede Lücke, die blieb.
one-count-no-interval = Einmal gezählt, kein Intervall
lawn-driven-over-with = des Rasens überfahren, mit einer Wahrscheinlichkeit von 90 %.

## Terminal: Allgemeines

count-smaller-pocket = { $count ->
    [one] 1 kleinere Fehlstelle
   *[other] { $count } kleinere Fehlstellen
}
count-place = { $count ->
    [one] 1 Stelle
   *[other] { $count } Stellen
}
count-time = { $count ->
    [one] 1 Mal
   *[other] { $count } Mal
}
at-cm = { $percent } bei { $width }
depends-on-cutting-width = hängt von der Schnittbreite ab, die nicht angegeben wurde: { $list }
pockets-from = Fehlstellen ab { $length } Breite ({ $area })
log-good-enough-can = Die Aufzeichnung reicht aus: Sie kann { $smallest } zeigen.
log-too-short-its = Die Aufzeichnung ist zu kurz: Ihre Positionen sind gut, aber der Zufall allein kann Fehlstellen bis { $length } Breite ({ $area }) lassen.
log-not-good-enough = Die Aufzeichnung reicht nicht aus: Sie kann nur { $smallest } zeigen.
also-said = Außerdem: { $said }
lawn-percent-number-area = { $percent } des Rasens, { $number } von { $area } ({ $interval })
missed-area = ausgelassen { $area }
not-yet = noch offen { $area }
without-evidence = nicht erfasst { $area }
none-told = zeigt diese Aufzeichnung nicht
none-known = nichts innerhalb des gezeichneten Umrisses; was jenseits davon liegt, zeigt diese Aufzeichnung nicht
none-known-narrower = nichts ab { $width } Breite innerhalb des gezeichneten Umrisses; schmalere Fehlstellen, und was jenseits davon liegt, kann diese Aufzeichnung nicht zeigen
none-narrower = nichts ab { $width } Breite; schmalere Fehlstellen kann diese Aufzeichnung nicht zeigen
none-but-luck = nichts; die Lücken erklärt der Zufall
none-shown-unseen = es zeigt sich nichts, aber { $area } sind nicht erfasst: Ob dort etwas fehlt, zeigt diese Aufzeichnung nicht
smaller-gaps = kleinere Lücken { $area }
of-id = { $id } { $share } von { $area }
all-luck-does-not = { $count }, zusammen { $area }, mehr als der Zufall erklärt
and-more = und { $more }
also-possible = auch möglich: { $join }
decided-after-driving-all = entschieden nach insgesamt { $hours } Fahrt
luck-still-explains-them = { $count }, { $area }: noch durch Zufall erklärbar; { $decide }
lost-count = { $count }, { $time } verloren
lost-within = { $count }, { $time } verloren, im Umkreis von { $length } um { $place }
more-spots = und { $spots } weitere
ladder-title = Kleiner und größer
ladder = Je nach Größe, Mittel simulierter Aufzeichnungen: { $list }.
rung = { $size }: { $fraction }{ $lawn ->
    [none] { "" }
   *[other] , Rasen { $lawn }
}{ $chosen ->
    [yes] { " " }(diese)
   *[no] { "" }
}
change-set = Zusammen, zuerst was für die Arbeit am meisten bringt, jede nach denen davor gezählt: { $list }. Vom Rasen sind dann { $lawn } überfahren.
set-step = { $id } { $area } mehr ({ $fraction } dieser Fehlstellen)
visits-title = { $count ->
    [one] 1 Besuch in diesem Garten
   *[other] { $count } Besuche in diesem Garten
}
visits-when = Wann
visits-who = Wer
visits-machine = Mäher
visits-said = Was der Kunde sagte
visits-changed = Was geändert wurde
visits-sure = Entschieden
visits-pocket = { $id } { $before } → { $after }
visits-decided = { $decided ->
    [none] { $more ->
        [none] nicht entschieden
        [1] nicht entschieden: noch eine solche Nacht
       *[other] nicht entschieden: noch { $more } solche Nächte
    }
    [beyond_luck] entschieden
    [1] nach der ersten Nacht entschieden
   *[other] nach { $decided } Nächten entschieden
}
nights-differ = Einzelne Aufzeichnungen unterscheiden sich so stark: Neun von zehn Gärten sind nach { $hours } Fahrt fertig.
pocket-this-log-if = Fehlstelle: { $percent } in dieser Aufzeichnung, { $fraction } ohne Änderung, { $fraction_2 } mit Änderung{ $sure ->
    [none] { "" }
   *[other] ; zu { $sure } sicher
}.{ $more ->
    [0] { "" }
    [one] { " " }Und 1 weitere Änderung.
   *[other] { " " }Und { $more } weitere Änderungen.
}
lawn-within-percent-days = { $percent } des Rasens, Frist { $days }: { $word }{ $probability ->
    [none] { "" }
   *[other] { " " }(eingehalten mit einer Wahrscheinlichkeit von { $probability })
}
one-every-driven-fixes = { $fixes }, einer je { $time }; { $path } gefahren in { $time_2 }{ $silent ->
    [none] { "" }
   *[other] , { $silent } ohne Messpunkte
}
log-too-short-positions = Die Aufzeichnung ist zu kurz: Die Positionen sind gut, aber sie zeigt noch nichts von einem Rasen.
log-not-good-enough-shows = Die Aufzeichnung reicht nicht aus: Sie zeigt nichts von einem Rasen.
not-looked-for-without = ohne Schnittbreite nicht gesucht
after-how-many-hours = nach wie vielen Stunden es entschieden ist, lässt sich nicht sagen

## Terminal: Prüfung einer Aufzeichnung

count-fix = { $count ->
    [one] 1 Messpunkt
   *[other] { $count } Messpunkte
}
count-fix-repeats-the = { $count ->
    [one] 1 Messpunkt wiederholt die Position davor
   *[other] { $count } Messpunkte wiederholen die Position davor
}
around-lat = um { $lat_deg }, { $lon_deg }
east-by = { $length } nach Osten mal { $length_2 } nach Norden, { $middle }
made-by = { $format }, erzeugt von { $id }
its-bytes = { $percent } der Bytes
from-count = { $count } ({ $share }){ $resolution ->
    [none] { "" }
   *[other] , Schritte von { $resolution }
}
first-on = ; zuerst in Zeile { $count }
first-on-line = ; zuerst in Zeile { $count }: { $id }
to-id = { $id } bis { $id_2 }
one-every = { $fixes }, einer je { $time }
driving-time = Fahrt { $time }
at-station = an der Ladestation { $time }
standing-elsewhere = Stand anderswo { $time }
silent-time = Aussetzer { $time }
from-after-start-further = { $time } ab { $time_2 } nach dem Beginn, danach { $length } weiter
shorter-value = ; und { $value } kürzere
middle-below-number-number = Median { $number }, 95 % unter { $number_2 }
last-digit-count-again = { $count } bis auf die letzte Stelle
from-fix-fix-length = { $length } von Messpunkt zu Messpunkt
drifting-length = { $length } Drift{ $time ->
    [none] { "" }
   *[other] { " " }über etwa { $time }
}
standard-deviation-per-axis = { $join } (Standardabweichung je Achse)
from-figures = { $figures }; Quelle: { $word }
local-metres-no-place = in örtlichen Metern, ohne geografische Koordinaten
no-bytes = keine Bytes
no-dates = kein Datum
not-known = nicht bekannt
dark-of-driven = { $dark } von { $driven } Fahrt{ $between }: Igel und andere kleine Tiere sind dann unterwegs
in-the-dark = Im Dunkeln: { $said }.
dark-between = { "" } (bürgerliche Dämmerung abends { $dusk }, morgens { $dawn }{ $zone })

## Terminal: Vergleich

count-night = { $count ->
    [one] 1 Nacht
   *[other] { $count } Nächte
}
both-plans-have-area = { $area }, die beide Pläne haben
built-as = { $value ->
    [suggested] wie vorgeschlagen gebaut
    [otherwise] anders gebaut
   *[nothing] nicht wie vorgeschlagen gebaut
}
predicted-for = { $built }; vorhergesagt für { $id }: { $percent } ({ $interval }), gemessen { $percent_2 }: { $held }
driving-percent = { $percent } ({ $interval }){ $equal ->
    [none] { "" }
   *[other] , { $equal } nach gleich vielen Stunden
}; { $count }, { $hours } Fahrt
smaller-pockets = und { $pockets } kleinere

## Seite: vor dem Graben

plan-on-paper = Ein Plan, auf dem Papier erprobt
reaches-everything = Nach diesem Plan kommt der Mäher überall hin.
leaves-parts = { $count ->
    [one] Ein Teil des Rasens, { $area }, ist nicht erreichbar.
   *[other] { $count } Teile des Rasens, zusammen { $area }, sind nicht erreichbar.
}
promise-needs = { $percent } innerhalb von { $count ->
    [one] 1 Tag
   *[other] { $count } Tagen
} brauchen etwa { $hours } Arbeitszeit am Tag.
promise-not-kept = { $percent } innerhalb von { $count ->
    [one] 1 Tag
   *[other] { $count } Tagen
} sind mit mehr Stunden allein nicht zu erreichen.
typical-run = Der Rasen, wie ihn ein typischer Simulationslauf nach { $count ->
    [one] 1 Tag
   *[other] { $count } Tagen
} mit je { $hours } Arbeitszeit hinterlässt. Dunklere Flächen wurden öfter überfahren, schraffierte ausgelassen.
count-day = { $count ->
    [one] 1 Tag
   *[other] { $count } Tage
}
nine-in-ten-gardens = in neun von zehn Läufen { $low } bis { $high }
give-width-for-days = Geben Sie an, wie breit die Messerscheibe schneidet (machine.cut_width_m) und dass der Mäher Platz hat.
trim-by-hand = { $area } an Rändern und in Ecken bleiben lang: von Hand nachschneiden
boundary-with-slack = um den Rasen und seine Zonen; Wege dazwischen und Zugaben an Ecken kommen hinzu
no-way-through = kein Durchkommen
done-after = { $share } der Läufe nach { $count ->
    [one] 1 Tag
   *[other] { $count } Tagen
}
share-of-driving = Der Anteil gilt für Ausfahrten ohne Leitlinie; bei 100 % wird jeder Quadratmeter hinter dem Durchgang so oft befahren wie anderswo. Was überfahren wird, stammt aus den Simulationsläufen, die mit Leitlinie eingeschlossen.
from-middle = Mitte bei { $place }
assumed-machine = Ein Mäher, der mit seiner Mitte { $setback } vor dem Rand wendet und mit { $speed_mps } geradeaus fährt, bis er nach Zufall wendet. Stellen Sie machine.past_boundary_m, machine.speed_mps und die Arbeitszeiten so ein, wie sie bei Ihnen sind.
assumed-level = Ebener, trockener Boden: Der Plan hat keine Höhen, deshalb sind Hänge und weicher Boden nicht in der Vorhersage.

## Seite: Handzettel

not-driven-over-up = Nicht überfahren: { $area }, bis zu { $length } breit
mower-stood-here-all = Der Mäher stand hier { $times ->
    [0] nie
    [1] einmal
    [2] zweimal
   *[other] { $times } Mal
}, zusammen { $time }
pocket-driven-over-this = { $why } Von der Fehlstelle wurden in dieser Aufzeichnung { $percent } überfahren; erwartet werden { $fraction } ohne Änderung, { $fraction_2 } mit Änderung.
promised-lawn-within-percent = Zugesagt: { $percent } des Rasens, Frist { $days }. { $word }.
more-on-page-on = { $left_out } weitere auf der Seite am Bildschirm.

## Seite: Angaben zur Anlage

count-way = { $count ->
    [one] 1 Weg
   *[other] { $count } Wege
}
about-count = { $count } von etwa { $number }
usually-out-began-along = Meist { $time } unterwegs{ $charging ->
    [none] { "" }
   *[other] ; dazwischen { $charging } an der Ladestation
}. Entlang einer Leitlinie begonnen: { $count }.
brackets-usual-time-join = { $join }; in Klammern die übliche Zeit.
day-hours = { $hours } am Tag
between-first-departure-last = Zwischen erster Abfahrt und letzter Rückkehr, davon { $hours } Fahrt. { $said }
growth-a-day = { $length } am Tag
tenth-lawn-steeper-steepest = Ein Zehntel des Rasens ist steiler. Die steilste Stelle liegt bei { $place }.
not-logged = nicht aufgezeichnet
more-than = mehr als nur Stunden

## Seite: Vergleich

before-after = Vorher und nachher

found-when = { $value ->
    [before] vorher
   *[after] nachher
}

## Seite: Angaben

about-number = etwa 1 von { $number }
long-driven-over-times = { $length } lang, { $number }-mal so oft überfahren wie der Rasen im Mittel, bis zu { $count }.
wire-length = { $length } Kabel
shift-length = Verschiebung um { $length }
more-day = täglich { $hours } mehr
less-new-than-chance = findet weniger neue Fläche, als es der Zufall täte (Wirkungsgrad { $figure })
new-as-chance = findet neue Fläche so, wie es der Zufall täte (Wirkungsgrad { $figure }; 100 % hieße ohne jede Überlappung)
more-new-than-chance = findet neue Fläche besser, als es der Zufall täte (Wirkungsgrad { $figure }; 100 % hieße ohne jede Überlappung)
hardly-twice = fährt kaum zweimal über dieselbe Fläche (Wirkungsgrad { $figure })
reach-both = 95 % nach { $first }, 99 % nach { $second } Fahrt
reach-95 = 95 % nach { $after } Fahrt, 99 % nicht erreichbar
reach-99 = 99 % nach { $after } Fahrt
reach-none = 95 % und 99 % nicht erreichbar
outings-sent-along-percent = { $percent } der Ausfahrten daran entlang
half-lawn-driven-over = Die Hälfte des Rasens wurde mindestens so oft überfahren; das Mittel ist { $number }.
half-waits-are-shorter = Die Hälfte der Wartezeiten ist kürzer. Neun von zehn: { $interval_h }. 99 von 100: { $interval_h_2 }.
less-than = weniger als 1 von 10.000
cannot-be = lässt sich nicht sagen
not-counted-again = nicht gezählt
pocket-again = die Fehlstelle
whole-lawn = der ganze Rasen
longer-than-this-log = länger als diese Aufzeichnung
not-told-apart-yet = noch nicht unterschieden

## Seite: ganze Seite

count-log-file = { $count ->
    [one] 1 Logdatei
   *[other] { $count } Logdateien
}
last-visit-longer-ago = Letzte Überfahrt am Ende der Aufzeichnung länger her als { $hours }
missed-area-again = ausgelassen, { $area }
stuck-lost = festgefahren, { $time } verloren
not-yet-area = noch offen, { $area }
not-yet-heading = Noch offen: { $count }, mehr Stunden entscheiden
to-start = { $start } bis { $end } ({ $zone_words })
driving-from = { $span }. { $driven } Fahrt, aus { $logs }.
without-evidence-area = { $area } nicht erfasst. { $said }
outside-boundary-for-after = { $length } außerhalb der Begrenzung, { $time } lang, { $time_2 } nach dem Beginn; { $came_back ->
    [yes] der Mäher kam von selbst zurück
   *[no] der Mäher kam in dieser Aufzeichnung nicht zurück
}.
silence-after-start-may = { $time } Aussetzer, { $time_2 } nach dem Beginn, bei { $place }: Der Mäher kann dort gestanden haben, höchstens so lange.
machine-efficiency = Der Mäher { $efficiency }.
probability-kept-percent-again = Wahrscheinlichkeit, dass sie eingehalten wird: { $percent }.
lawn-within-percent-days-probability = { $percent } des Rasens, Frist { $days }. { $probability }
lawn-report = Rasenbericht
times-driven-over-darker = Wie oft überfahren (dunkler: öfter)
less-than-twice = weniger als zweimal
usual-time-between-two = Übliche Zeit zwischen zwei Überfahrten (dunkler: öfter)
time-again = rechtzeitig
charging-station = Ladestation
without-dates = ohne Datum
out-reach = nicht erreichbar

## Seite: Verfahren

count-outing = { $count ->
    [one] 1 Ausfahrt
   *[other] { $count } Ausfahrten
}
lawn-counted-squares-this = Der Rasen wurde in Quadraten dieser Seitenlänge gezählt; das allein verschiebt das Ergebnis um etwa { $number } Prozentpunkte.
standard-deviation-per-axis-from = Standardabweichung je Achse. Quelle: { $word }.
plan-offset = { $east } nach Osten, { $north } nach Norden, um { $turned }° gedreht
plan-moved-by-this = So wurde der Plan verschoben, damit er zur Aufzeichnung passt; auf { $length } genau bekannt.
known-within-no-more = Auf { $length } genau bekannt: nicht mehr als Zufall, deshalb bleibt der Plan, wie er gezeichnet ist.
from-one = Grundlage: { $fixes }, einer je { $time }.
while-driving = Beim Fahren; { $outings }.
drift-length = { $length } Drift
line-count = Zeile { $count }
default-error = Vorgabewert für den Fehler
from-plan = aus dem Plan
from-log-itself-again = aus der Aufzeichnung selbst
number-outings-not-known = Zahl der Ausfahrten nicht bekannt

## Morgen

count-garden = { $count ->
    [one] 1 Garten
   *[other] { $count } Gärten
}
count-thing = { $count ->
    [one] 1 Vorgang
   *[other] { $count } Vorgänge
}
your-delivery = Bei { $gardens } von { $count } kam seit { $since } nichts an: Das liegt an Ihrer Übermittlung (Hochladen, Speicherkarten, Netz), nicht an den Gärten.
is-mended = { $garden }: „{ $alarm }“ seit { $since }, behoben seit { $mended }.
is-known = { $said ->
    [none] { "" } (bekannt)
   *[other] { "" } (bekannt: { $said })
}
alarm = { $value ->
    [missed_pocket] ausgelassene Fläche
    [stuck_spot] fährt sich fest
    [lost_hours] fährt weniger Stunden
    [less_visited] weniger überfahren
    [absent] keine Aufzeichnung
    [receiver_worse] Empfänger schlechter
    [silences] lange Aussetzer
   *[promise] Zusage nicht eingehalten
}
bring = { $value ->
    [missed_pocket] Plan, Maßband und Pflöcke mitnehmen
    [stuck_spot] Spaten, Rasensoden oder Bretter mitnehmen
    [lost_hours] Akku und Kontaktreiniger mitnehmen
    [less_visited] Ersatzmesser und die Seite dieses Gartens mitnehmen
    [absent] Geladenen Logger und Speicherkarte mitnehmen
    [receiver_worse] Empfänger und Antennenkabel mitnehmen
    [silences] Empfänger und geladenen Logger mitnehmen
   *[promise] Arbeitszeiten mitnehmen, um am Tag welche hinzuzufügen
}
night-visit-with-log = Nacht { $id }: { $gardens } von { $count } zu besuchen, { $with_log } mit Aufzeichnung{ $resting ->
    [0] { "" }
   *[other] , { $resting } ruhend
}, { $count_2 } fehlgeschlagen

## Wörter: Vergleich

points-fraction = { $fraction } Prozentpunkte
interval-points = { $points } (90-%-Intervall { $low } bis { $high } Prozentpunkte)
interval-not-worked-out = { $points } (kein Intervall)
points-from-night-night = { $number } Prozentpunkte von Nacht zu Nacht
standard-deviations-points-from = Standardabweichungen: { $number } Prozentpunkte durch Positionsfehler, { $nightly }
to-percent = { $percent } ({ $number } bis { $percent_2 })
how-nights-differ-cannot = wie sehr sich Nächte unterscheiden, lässt sich aus so wenigen nicht sagen

## Terminal: Hinweise

log-driving-more-give = zeichnen Sie noch { $hours } Fahrt auf und geben Sie alle Aufzeichnungen zusammen an; dann ist entschieden, was jetzt noch offen ist
promise-give-logs-as = die Zusage gilt für { $days }: Geben Sie die Aufzeichnungen von ebenso vielen Tagen zusammen an
measure-width-cutting-disc-give = messen Sie die Breite der Messerscheibe und geben Sie sie mit --cut-width 22cm an
walk-once-round-lawn = gehen Sie einmal mit einem Empfänger um den Rasen; tussock plan from-walk macht daraus einen Plan, und --plan nimmt ihn entgegen
mended-plan-is-written = analyse --write-plan DATEI schreibt den Plan so, wie die Aufzeichnung den Garten zeigt

## GPX

missed-widest = Ausgelassen: { $area }, größte Breite { $length }. { $said }
stuck-lost-within = Festgefahren: { $count }, { $time } verloren, im Umkreis von { $length }. { $said }
suggested-guide = Vorgeschlagene Leitlinie. { $said }
tussock-id = tussock { $id }
tape-figures = { $figures } Maßband: { $tape }.
ground-mower-left-out = Flächen, die der Mäher ausließ, und Stellen, an denen er Zeit verlor.

## Prüfungen

checks-hold = { $held ->
    [0] Keine von { $all } Prüfungen bestanden
    [one] { $all ->
        [one] Die einzige Prüfung bestanden
       *[other] 1 von { $all } Prüfungen bestanden
    }
   *[other] { $held } von { $all } Prüfungen bestanden
}
checks-say = { $sum }; { $fails }
check = { $value ->
    [fixes_left_out] Probeweise weggelassene Messpunkte, verglichen mit ihrer Vorhersage
    [halves_of_log] Die eine Hälfte der Aufzeichnung, verglichen mit der anderen
    [plan_place] Die Lage des Plans, verglichen mit den Wenden
    [turns_at_edges] Die Wenden, verglichen mit jedem Rand des Plans
    [drawn_garden] Ein Garten, aus dem angepassten Mäher gezeichnet, verglichen mit der Aufzeichnung
    [cell_sum] Die Quadrate der Karte, verglichen mit dem Gesamtergebnis
    [as_logged] Die Zählung wie aufgezeichnet, verglichen mit der berichtigten
    [two_roads] Der angepasste Weg, verglichen mit der berichtigten Zählung der aufgezeichneten Positionen
    [silences] Aussetzer, verglichen mit dem, was als ausgelassen gilt
   *[shown_ground] Was die Aufzeichnung zeigen soll, verglichen mit der Karte
}
check-fails = { $value ->
    [fixes_left_out] Messpunkte weichen stärker ab als angegeben
    [halves_of_log] die beiden Hälften der Aufzeichnung liegen nebeneinander
    [plan_place] die Wenden sammeln sich nicht an den Rändern des Plans
    [turns_at_edges] die Wenden liegen nicht auf den Rändern des Plans
    [drawn_garden] der Mäher fährt nicht wie sein Modell
    [cell_sum] die Karte ergibt zusammengezählt nicht das Gesamtergebnis
    [as_logged] die Zählung wie aufgezeichnet widerspricht der berichtigten
    [two_roads] zwei Arten zu zählen widersprechen sich
    [silences] Ausgelassenes kann während eines Aussetzers überfahren worden sein
   *[shown_ground] die erkennbare Breite wurde auf die der unentschiedenen Flächen angehoben
}
check-fails-edge = die Wenden liegen nicht auf dem Rand im { $edge_deg }
check-is = { $value ->
    [fixes_left_out] das { $number }-Fache des angegebenen Fehlers
    [halves_of_log] { $length } auseinander
    [plan_place] { $percent } der Wenden erklärt
    [turns_at_edges] das { $number }-Fache dessen, was ein Rand höchstens danebenliegen darf
    [drawn_garden] gerade Strecken { $number } auseinander (natürlicher Logarithmus ihres Verhältnisses)
    [cell_sum] { $points } Prozentpunkte auseinander
    [as_logged] { $points } Prozentpunkte auseinander
    [two_roads] { $number } Standardabweichungen auseinander
    [silences] eine Wahrscheinlichkeit von höchstens { $percent }
   *[shown_ground] { $length }
}

## Seite: was auf jeder Seite steht

show-on-map-id = auf der Karte zeigen, { $id }
show-on-map = auf der Karte zeigen
map-nearer = näher
map-farther = weiter weg
map-whole = ganzer Rasen
map-move = Karte bewegen
in-short = In Kürze
foot-driven-over = Positionen zeigen, was überfahren wurde; ob dort Gras gemäht wurde, zeigt nur der Augenschein.

## Seite: die Antworten

ask-log = Reicht die Aufzeichnung aus?
ask-missed = Was wurde ausgelassen?
ask-why = Warum?
ask-change = Was ist zu ändern?
ask-sure = Wie sicher?
log-yes = Ja
log-too-short = Positionen ja, aber zu kurz
log-no = Nein
part-visited = überfahren
part-missed = ausgelassen
part-not-yet = noch offen
part-unseen = nicht erfasst
part-sliver = kleinere Lücken
change-log-again = Erst noch einmal aufzeichnen
change-look = Vor Ort nachsehen
change-give-width = Schnittbreite angeben
change-nothing-yet = Noch nichts
change-give-outline = Erst den Umriss angeben
change-nothing = Nichts
others-end = { $list }.

## Seite: Bericht

title-report = { $title }: wo der Mäher nicht war
picked-more = alles, was darüber bekannt ist
picked-close = schließen
to-answers = Zu den Antworten
where-not-been = Wo der Mäher nicht war
map = Karte
what-map-shows = Was die Karte zeigt
ground = Fläche
ground-none = keine
map-drawn-from = Aus aufgezeichneten Positionen gezeichnet: Die Karte zeigt, was überfahren wurde.
map-placeless = Die Aufzeichnung hat keinen Ort auf der Erde; die Karte liegt auf ihren eigenen Achsen.
map-moves = Ziehen verschiebt die Karte; zwei Finger, Doppelklick oder + und − vergrößern sie; ist sie ausgewählt, gehen auch die Pfeiltasten.
places = Stellen
missed-and-why = Was ausgelassen wurde, und warum
missed-lead = Flächen, die nicht überfahren wurden, obwohl der Zufall kaum eine so breite Lücke gelassen hätte. Die Mitte jeder Fläche finden Sie mit zwei Maßbändern.
up-to-wide = bis zu { $length } breit
see = Siehe
evidence-and-others = Was dafür und was dagegen spricht, und was es sonst sein kann
evidence = Was dafür und was dagegen spricht
how-sure-that = Wie sicher das ist
rank-first = an erster Stelle
rank-other = auch möglich
evidence-for = dafür
evidence-against = dagegen
middle-at = Mitte bei { $place }.
change-and-gain = Was zu ändern ist, und was es bringt
change-lead = Vorhergesagt mit einem simulierten Mäher, der an diese Aufzeichnung angepasst wurde und einmal mit, einmal ohne die Änderung fährt. Der Punkt ist, was die meisten einzelnen Nächte zeigen werden; neun von zehn liegen zwischen den Enden der Linie.
for-pockets = für
needs = Nötig: { $list }.
together-with = Zusammen mit { $list }.
driven-over = Überfahren
in-this-log = in dieser Aufzeichnung
if-nothing-changes = ohne Änderung
if-changed = mit Änderung
predictions-of = Vorhersagen für { $id }
gained-in-runs = In { $percent } der Simulationsläufe wurde von der Fehlstelle mehr überfahren, und die Vorhersage traf zu.
gain-shows-after = In den meisten zeigt sich die Besserung nach { $hours } Fahrt.
where-stuck = Wo der Mäher sich festfuhr
stuck-lead = Stellen abseits der Ladestation, an denen der Mäher immer wieder Zeit verlor.
time-lost = { $time } verloren
stuck-within = Im Umkreis von { $length } um { $place }.
drove-through = { $count ->
    [one] Er fuhr 1 Mal durch, ohne sich festzufahren.
   *[other] Er fuhr { $count } Mal durch, ohne sich festzufahren.
}
not-yet-lead = Nicht überfahrene Flächen, die der Zufall noch erklärt. Sie brauchen keine Änderung, nur mehr Stunden, bevor sich etwas sagen lässt.
head-pocket = Fehlstelle
head-area = Fläche
head-widest = Größte Breite
head-chance = Wahrscheinlichkeit durch Zufall
head-decided = Entschieden nach
head-where = Wo
not-yet-table = Noch offen
hours-are-driving = Gemeint sind Stunden Fahrt seit Beginn dieser Aufzeichnung.
passages-and-ways = Durchgänge, Unerreichbares und Heimwege
passages = Durchgänge
head-passage = Durchgang
head-width = Breite
head-free = Frei für die Mitte des Mähers
head-length = Länge
head-behind = Rasen dahinter
head-crossed = Durchfahren
head-share-behind = Dahinter gefahren, vom gerechten Anteil
passage-shut-word = zu
crossings-are = „Durchfahren“ zählt, wie oft der Mäher die Seite wechselte; hinter „von etwa“ steht, wie oft es ein frei umherfahrender Mäher auf derselben Strecke täte.
out-of-disc = Für die Messerscheibe nicht erreichbar
turns-inside = Wendeabstand zur Linie
turns-inside-means = Üblicher Abstand zwischen der Mitte des Mähers und der Linie, an der er wendet.
outings = Ausfahrten
ways-home = Heimwege
drawing-differs = Worin unterscheidet sich die Zeichnung vom Garten?
plan-would-settle = Was würde ein Plan klären?
islands-or-lawn = Inseln oder unerreichbarer Rasen?
islands = Inseln
head-island = Insel
in-no-plan = Steht in keinem Plan
in-no-plan-lead = Gegenstände, vor denen der Mäher mitten im Rasen umkehrte.
head-thing = Gegenstand
head-turns = Wenden davor
head-across = Durchmesser, etwa
head-stood = Stand dort
things-in-no-plan = Gegenstände, die in keinem Plan stehen
hours-and-grass = Arbeitszeit und Gras
works = Arbeitet
allowed = Erlaubt
allowed-means = Arbeitszeit nach den Einstellungen, Mittel über die Woche.
promise-needs-label = Für die Zusage nötig
promise-needs-means = Arbeitszeit bei diesem Tempo; keine reicht, wo ein Teil des Rasens gar nicht überfahren wird.
lower-blades = Schnitthöhe senken?
growth = Wuchs
longest-wait = Längste erlaubte Wartezeit
one-third-rule = Nach der Drittelregel: nie mehr als ein Drittel des Halms auf einmal abschneiden.
slope = Gefälle
also-seen = Außerdem gesehen
worn-line-is = Ausgefahrene Spur:
stray-is = Außerhalb:
possible-stop-is = Möglicher Halt:
paper-what = Was anzusehen und was zu tun ist
paper-no-place = Keine Stelle braucht einen Blick: Der Zufall erklärt jede Lücke, die blieb, und der Mäher fuhr sich nirgends fest.
paper-changes = Vorgeschlagene Änderungen
stills-title = Wie der Rasen nach und nach überfahren wurde
stills-lead = Sechs Karten, jede nach einem weiteren Sechstel der Fahrt.
still-new = neu seit der Karte davor
still-before = vorher überfahren
not-driven-over = nicht überfahren
safety = Sicherheit
paper-stop = Halten Sie den Mäher an und sichern Sie ihn gegen Anlaufen, bevor Sie ihn berühren.
paper-dig = Lassen Sie Kabel und Rohre im Boden orten, bevor Sie für ein Kabel graben. Fragen Sie, was eine Zone schützt, bevor Sie sie versetzen. Legen Sie zusätzliche Stunden auf den Tag, nicht in die Nacht.
manual-first = Örtliche Vorschriften und die Betriebsanleitung des Mähers gehen vor.
paper-keep-off = Halten Sie Kinder und Haustiere vom Rasen fern, solange der Mäher arbeitet. Halten Sie mit Linien Abstand zu Hängen und Ufern. Arbeiten am Netzanschluss darf nur eine Elektrofachkraft ausführen.
paper-looked-at = Angesehen am
paper-signed = Von, Unterschrift
paper-next-step = Vereinbarter nächster Schritt
how-fast = Wie schnell und wie oft der Rasen überfahren wurde
ground-gained = Hinzugewonnene Fläche über der Fahrzeit
line-this-log-interval = diese Aufzeichnung, mit 90-%-Intervall am Ende
line-this-log = diese Aufzeichnung
line-random = zufällige Suche
line-no-overlap = ohne jede Überlappung
line-promised = zugesagt
random-law-means = Ein Mäher, der zufällig umherfährt, folgt dem Gesetz der zufälligen Suche (Koopman 1956): Je mehr getan ist, desto öfter trifft er auf Flächen, die er schon kennt. Einer, der nie zweimal über dieselbe Fläche führe, folgte der Linie ohne jede Überlappung.
pattern-efficiency = Wirkungsgrad des Fahrmusters
to-95 = Bis 95 % des Rasens
to-95-means = Stunden Fahrt bei diesem Tempo; nicht erreichbar, wo ein Teil des Rasens gar nicht überfahren wird.
to-99 = Bis 99 %
to-99-means = Dasselbe für alles bis auf ein Hundertstel.
the-promise = Die Zusage
how-often = Wie oft jede Stelle überfahren wurde
bars-mean = Jeder Balken ist der Teil des Rasens, der so oft überfahren wurde. Der schraffierte Balken wurde nicht überfahren.
waits-mean = So viele der Wartezeiten zwischen zwei Überfahrten sind kürzer; die letzte, noch laufende Wartezeit jeder Stelle zählt als nicht beendet.
visits-typical = Überfahrten, typisch
evenness = Gleichmäßigkeit (Gini)
evenness-means = 0 wären überall gleich viele Überfahrten, 1 alle Überfahrten an einer Stelle.
time-between = Zeit zwischen zwei Überfahrten
overdue-label = Überfällig
overdue-means = Dieser Teil des Rasens ist seit der letzten Überfahrt über die Drittelregel hinausgewachsen.
hours-by-activity = Stunden nach Tätigkeit
same-in-figures = Dasselbe in Zahlen
activity-in-figures = Stunden nach Tätigkeit in Zahlen
nights-not-drawn = { $count ->
    [one] 1 frühere Nacht ist nicht gezeichnet.
   *[other] { $count } frühere Nächte sind nicht gezeichnet.
}
nothing-claimed = Über die Zeit ohne Messpunkte wird nichts behauptet.
each-lawn = Jeder Rasen für sich
head-lawn = Rasen
with-bracket = { $figure } ({ $more })
for-each-width = Überfahren, für jede Schnittbreite
how-counted = Wie gezählt wurde
of-the-log = Zur Aufzeichnung: { $said }
cutting-width = Schnittbreite
cutting-width-means = Wie in den Einstellungen angegeben. Ein Zentimeter mehr würde mehr Fläche zählen.
counting-square = Zählquadrat
realisations = Realisierungen
counted-once = Einmal gezählt, auf dem wahrscheinlichsten Weg; der Positionsfehler ist noch nicht durchgespielt.
counted-often = So viele wahrscheinliche Wege wurden gezählt, um zu sehen, wie weit der Positionsfehler das Ergebnis verschiebt.
as-logged = Wie aufgezeichnet
as-logged-means = Was herauskäme, wenn man die rohen Messpunkte durch gerade Linien verbände. Nur zum Vergleich.
reachable = Erreichbar
reachable-means = Der Teil des Rasens, zu dem die Messerscheibe überhaupt kommen kann.
position-error = Positionsfehler
beware = Achtung
default-error-means = Die Aufzeichnung lässt nicht erkennen, wie genau sie ist; zeichnen Sie eine Stunde an der Ladestation auf, um es herauszufinden.
plan-against-log = Plan gegen Aufzeichnung
outline = Umriss
outline-from-plan = Rasen, Zonen und Hindernisse, wie sie im Plan gezeichnet sind.
outline-from-log = Fläche jenseits der äußersten Fahrt ist nicht gezählt, deshalb gilt hier keine Zahl für den ganzen Rasen. Gehen Sie den Umriss ab, um das zu ändern.
path = Weg
usual-speed = Übliche Geschwindigkeit
beside-surveyed = Die Aufzeichnung neben einem vermessenen Weg
errors-surveyed = Fehler gegenüber dem vermessenen Weg
head-error = Fehler
errors-mean = Quer: zur nächsten Stelle des Weges, links davon positiv. Längs: wie weit der Mäher voraus war gegenüber der Stelle, an der er dann hätte sein sollen. Zeitlich: wie viel später er vorbeikam. Spur zu Spur: wie sehr sich der Querfehler von einer Spur zur nächsten daneben ändert, innerhalb von 15 Minuten (nach ISO 12188-1). Gemessen sind die Messpunkte, gefunden ist der daraus ermittelte Weg.
simulated-beside = Der simulierte Mäher neben der Aufzeichnung
predictions-made = Mit ihm werden Vorhersagen gemacht.
predictions-none = Mit ihm werden keine Vorhersagen gemacht.
head-figure = Zahl
head-in-log = In der Aufzeichnung
head-in-runs = { $count ->
    [one] In 1 Simulationslauf
   *[other] In { $count } Simulationsläufen
}
log-and-simulation = Aufzeichnung und Simulation
figure-range = { $figure } ({ $low } bis { $high })
log-files = Die Logdateien, und was nicht verwendet wurde
made-by-label = erzeugt von
fixes-of = { $count ->
    [one] 1 Messpunkt von
   *[other] { $count } Messpunkte von
}
not-used-of-file = Aus dieser Datei nicht verwendet
head-not-used = Nicht verwendet
head-why = Warum
head-first-at = Zuerst bei
everything-used = Alles darin wurde verwendet.
before-you-change = Bevor Sie etwas ändern
stop-and-manual = Halten Sie den Mäher an und sichern Sie ihn gegen Anlaufen, bevor Sie ihn berühren. Örtliche Vorschriften und die Betriebsanleitung des Mähers gehen vor.
all-dangers = Alles, was an solchen Arbeiten gefährlich ist
danger-blades = Messer in Bewegung.
danger-blades-means = Halten Sie den Mäher an und sichern Sie ihn gegen Anlaufen, bevor Sie ihn berühren. Halten Sie Kinder und Haustiere vom Rasen fern, solange er arbeitet.
danger-logger = Einen Logger anbringen.
danger-logger-means = Nie über der Stopptaste oder dort, wo der Mäher Anheben oder Kippen erkennt. Befestigen Sie ihn so, dass er nicht in die Messer geraten kann.
danger-digging = Für ein Kabel graben.
danger-digging-means = Lassen Sie vorher Kabel und Rohre im Boden orten. Private Leitungen sind nicht markiert.
danger-slopes = Hänge und Wasser.
danger-slopes-means = Halten Sie mit der Linie reichlich Abstand zu Kanten, über die der Mäher rutschen könnte.
danger-mains = Netzspannung.
danger-mains-means = Arbeiten am Netzanschluss der Ladestation darf nur eine Elektrofachkraft ausführen.
danger-night = Nacht.
danger-night-means = Legen Sie zusätzliche Stunden auf den Tag: Nachts sind Igel und andere kleine Tiere unterwegs.
danger-zones = Zonen.
danger-zones-means = Fragen Sie, wozu eine Zone da ist, bevor Sie sie versetzen oder verkleinern. Sie kann Wurzeln, Leitungen oder Menschen schützen.

## Seite: vorher und nachher

title-compare = { $title }: vorher und nachher
difference = Unterschied
more-than-before = So viel mehr vom Rasen wurde nachher überfahren als vorher; { $meaning }.
side-driven-over = { $side }: { $percent } überfahren
side-facts = { $interval }{ $equal ->
    [none] { "" }
   *[other] ; { $equal } nach gleich vielen Stunden
}. { $count }, { $hours } Fahrt.
map-move-side = Karte bewegen, { $side }
only-summary = Nur eine Zusammenfassung wurde aufbewahrt, deshalb gibt es keine Karte.
compare-map-key = Schraffiert: Der größte Teil der Fehlstelle wurde auf dieser Seite nicht überfahren. Gestrichelter Umriss: Der größte Teil wurde überfahren. Dunklere Flächen wurden öfter überfahren; beide Karten haben dieselbe Skala.
how-sure-difference = Wie sicher der Unterschied ist
counted-on = Gezählt auf
counted-on-common = { $area } Rasen, die beide Pläne haben.
lawn-only = { $when ->
    [before] { $area } waren nur vorher Rasen
   *[after] { $area } sind erst seither Rasen
}
what-became = Was aus jeder Fehlstelle wurde
head-found = Gefunden
head-before = Vorher überfahren
head-after = nachher
head-became = Was daraus wurde
pockets = Fehlstellen
show-on-both = { $id }, auf beiden Karten zeigen
predicted-and-measured = Vorhergesagt und gemessen
predicted-measured = { $built ->
    [otherwise] Für das, was gebaut wurde, vorhergesagt: { $predicted }, gemessen: { $measured }; { $meaning }.
   *[other] Vorhergesagt: { $predicted }, gemessen: { $measured }; { $meaning }.
}
predicted = vorhergesagt
measured-after = nachher gemessen

## Seite: Plan auf dem Papier

title-plan = { $title }: vor dem Graben
before-digging = Vor dem Graben
driven-over-after = Überfahren, { $days } Betrieb
days = Tage
not-worked-out = nicht berechnet
lawn-to-cut = Zu mähender Rasen
boundary = Begrenzung
guide-runs = Leitlinien
guide-runs-none = keine
out-of-reach-title = Nicht erreichbar
part-out-of-reach = { $area }, { $why }; { $middle }
head-free-machine = Frei für den Mäher
head-behind-it = Rasen dahinter
head-changes = Seitenwechsel am Tag
head-share = Anteil an der Fahrt
head-nine-tenths = Neun Zehntel davon überfahren
weak-places = Schwache Stellen, und warum
would-mend = Was sie beheben würde
as-planned = wie geplant
assumed-and-beware = Was angenommen ist, und wovor zu warnen ist
foot-forecast = Eine Vorhersage aus Simulationsläufen: Worin echte Mäher abweichen, zeigt sich in den ersten Tagen mit Aufzeichnungen.

## Seite: Morgen

title-morning = Gärten, die einen Besuch brauchen, nach der Nacht { $night }
morning-after = Der Morgen nach der Nacht { $night }
gardens-to-visit = Gärten, die einen Besuch brauchen
count-muted = { $count } stumm geschaltet.
gardens-in-order = Gärten, zuerst der, bei dem ein Besuch am meisten bringt
head-garden = Garten
head-last-nights = Letzte 15 Nächte
head-wrong = Was nicht stimmt
head-since = Seit
head-bring = Was mitzunehmen ist
head-gain = Bringt
and-count-more = und { $count } weitere
known-bracket = (bekannt)
open-for = { $days } offen, Stand der Nacht { $night }.
lawn-of = Rasen { $area }.
driven-in-last = Davon zuletzt über { $days } überfahren: { $percent }; zugesagt: { $promised }.
known-said = Bekannt: { $said }
known = Bekannt
head-night = Nacht
head-missed = Ausgelassen
head-driving = Fahrt
head-stuck = Festgefahren
head-silent = Aussetzer
nights-of = Nächte von { $name }
mended = Behoben
what-failed = Was fehlschlug
failures = Fehlschläge
head-what = Was
visit-brings = Was ein Besuch bringt: So viel Rasen würde danach jede Nacht zusätzlich überfahren.

## Terminal: Beschriftungen von Zeilen (row-...), höchstens 12 Zeichen, row-by-lawn, row-used, row-skipped und row-note höchstens 10;
## Spaltenköpfe (col-...) höchstens 7, col-id höchstens 3

row-driven-over = Überfahren
row-before = Vorher
row-after = Nachher
row-difference = Unterschied
row-pockets = Fehlstellen
row-beware = Achtung
# $id ist G1 oder M12.
row-change = Änderung { $id }
row-by-lawn = je Rasen
row-asked-about = Zu klären
row-missed = Ausgelassen
plan-answer = Zu mähender Rasen: { $area }, { $edge } Rand; Zonen und Hindernisse sind abgezogen.
forecast-hours = Bei { $hours } Arbeit am Tag, aus { $runs } Simulationsläufen.
col-role = Rolle
col-name = Name
col-length = Länge
no-faults = Keine Fehler.
row-plan-faults = Ansehen
col-id = Nr.
col-area = Fläche
col-widest = Breite
col-where-why = wo, und warum
row-not-yet = Noch offen
row-stuck-spots = Festgefahren
none-seen = nichts gesehen
row-pattern = Fahrmuster
row-promise = Zusage
row-from = Grundlage
row-in-the-dark = Im Dunkeln
before = Vorher
after = Nachher
row-ground = Fläche
col-before = vorher
col-after = nachher
col-became = was daraus wurde
no-pockets = auf keiner Seite
row-where = Wo
row-last = Zuletzt
row-usually = Üblich
row-used = Verwendet
row-skipped = Verworfen
skipped-nothing = nichts
row-note = Hinweis
in-line = (Zeile { $count })
row-time = Zeit
row-fixes = Messpunkte
row-hours = Stunden
row-silences = Aussetzer
silences-none = keine
row-quality = Qualität
row-hdop = HDOP
row-repeats = Wiederholt
row-error = Fehler
row-extent = Ausdehnung
row-reference = Referenz

## Zahlen und Listen

unknown = unbekannt
under-percent = unter { $percent }
over-percent = über { $percent }
interval = 90-%-Intervall { $low } bis { $high }
no-interval = kein Intervall
range = { $low } bis { $high }
# Zwei Teile einer Liste, oder die Liste bis hierher und ihr nächster Teil.
list = { $before }, { $next }
list-apart = { $before }; { $next }
way-home-row = { $times } Mal { $along } ({ $time })
# Zwei Maßbandlängen treffen sich auf einer Seite der Linie zwischen ihren Enden.
tape-from = { $length } ab { $from }
tape-side = { $tape }, { $eighth ->
    [0] nördlich
    [1] nordöstlich
    [2] östlich
    [3] südöstlich
    [4] südlich
    [5] südwestlich
    [6] westlich
   *[7] nordwestlich
} der Linie zwischen beiden
position-metres = { $east } nach Osten, { $north } nach Norden vom Ursprung
fixes-poor = { $count } von schlechter Qualität
fixes-jumped = { $count ->
    [one] 1 Sprung
   *[other] { $count } Sprünge
}
fixes-carried = { $count } beim Tragen
fixes-used-of = { $used } von { $count ->
    [one] 1 gelesenen Messpunkt
   *[other] { $count } gelesenen Messpunkten
} (weggelassen: { $list })
# Eine Uhrzeit mit Datum: Im Jahr steht kein Tausenderzeichen.
date-time = { $day }. { $month ->
    [1] Januar
    [2] Februar
    [3] März
    [4] April
    [5] Mai
    [6] Juni
    [7] Juli
    [8] August
    [9] September
    [10] Oktober
    [11] November
   *[12] Dezember
} { $year }, { $hour }:{ $minute } Uhr

## Wörter für vorher und nachher

more-than-luck = mehr, als Positionsfehler und Zufall erklären
luck-may-explain = Positionsfehler und Zufall allein können es erklären
count-pocket-change = { $value ->
    [mended] { $count } behoben
    [better] { $count } besser
    [new] { $count } neu
   *[unchanged] { $count } unverändert
}
pocket-sum = { $pockets }: { $list }
nothing-to-hold-against = nichts, womit sie sich vergleichen ließe
prediction-holds = die Vorhersage trifft zu
prediction-fails = die Vorhersage trifft nicht zu

## Die Aufzeichnung neben einem vermessenen Weg; die Spalten sind schmal

error-mean = Mittel
error-rms = RMS
error-95 = 95 %
error-largest = größter
error-logged = gemessen
error-located = gefunden
error-cross-track = quer
error-along-track = längs
error-timing = zeitlich
error-pass-to-pass = Spur zu Spur
reference-head = { $length } von { $name }, { $fixes } verglichen{ $beside ->
    [0] { "" }
   *[other] ; { $beside } weggelassen, mehr als { $distance } daneben
}
reference-untimed = Der vermessene Weg hat keine Zeiten: Fehler in Längsrichtung und in der Zeit lassen sich nicht angeben.

## Warum eine Zeile einer Aufzeichnung verworfen wurde

skip-reason = { $value ->
    [bad_checksum] Prüfsumme stimmt nicht
    [not_a_position] enthält keine Position
    [not_of_the_format] nicht in diesem Format
    [no_fix] Empfänger hatte keine Position
    [no_time] Position ohne Zeit
    [no_date] Uhrzeit ohne Datum
    [malformed] Feld fehlerhaft geschrieben
    [not_finite] keine endliche Zahl
    [out_of_range] außerhalb des Wertebereichs
    [null_island] Breite 0, Länge 0
    [pole] Breite 90 während der Suche
    [time_reversed] Zeit läuft rückwärts
    [duplicate_time] dieselbe Zeit zweimal
    [duplicate_epoch] dieselbe Epoche zweimal
    [truncated] am Ende abgeschnitten
    [same_log_twice] dieselbe Aufzeichnung unter zwei Namen
    [too_long] länger als erlaubt
   *[implausible] unglaubwürdige Position
}

## Seite: Zeichnungen und Stunden

map-north-up = Karte des Rasens, Norden ist oben
map-of-lawn = Karte des Rasens
map-before = Karte vorher
map-after = Karte nachher
ground-visits = Überfahrten
ground-waits = Wartezeiten
ground-overdue = überfällig
never = nie
driving = Fahrt
driving-along = davon entlang Leitlinie oder Begrenzung
standing-turning = Stand anderswo, Wenden
activity-driving = Fahrt
activity-turning = Wenden
activity-reversing = rückwärts
activity-transit = Hinweg oder Heimweg
activity-standing = Stand
activity-station = an der Ladestation
activity-carried = getragen
activity-silent = ohne Messpunkte
night-number = Nacht { $number }
nights-drawing = Stunden nach Tätigkeit, eine Zeile je Nacht; die Tabelle darunter enthält dieselben Zahlen
axis-hours = Stunden
driven-that-night = in dieser Nacht überfahren
so-far = bisher
lawn-after = Rasen nach { $hours }
still-gained = { $percent }, +{ $points } Prozentpunkte
plot-over-time = Überfahrener Teil des Rasens über den Stunden Fahrt
axis-lawn-percent = Rasen überfahren, %
axis-hours-driving = Stunden Fahrt
plot-histogram = Teil des Rasens danach, wie oft er überfahren wurde
axis-part-percent = Teil des Rasens, %
axis-times = wie oft überfahren
plot-gains = Überfahrener Teil der Fehlstelle: { $list }
gain-row = { $label } { $fraction }
axis-pocket-percent = Fehlstelle überfahren, %
plot-waits = Wartezeiten zwischen zwei Überfahrten: { $list }
wait-under = { $part } unter { $hours }
wait-half = die Hälfte
wait-nine-ten = 9 von 10
wait-99 = 99 von 100
wait-allowed = erlaubt
axis-waits = Stunden zwischen zwei Überfahrten

## Karte

key-missed = ausgelassen: nicht durch Zufall erklärbar
key-not-yet = noch offen: durch Zufall erklärbar
key-unseen = nicht erfasst: kein Nachweis
key-stuck = Festfahrstelle: Zeit verloren
key-worn = ausgefahrene Spur
key-suggested = vorgeschlagene Änderung
key-tape = Maßbandlänge
key-lines = gefahrene Linien
key-lie = Durchgänge, Starts, Planfehler
key-strays = außerhalb, mögliche Halte
key-guide = Leitlinie
key-exclusion = Sperrzone
key-obstacle = Hindernis
key-boundary = Begrenzung
nothing-to-draw = Kein Umriss und kein Weg zu zeichnen.
picture-line = Überfahren: { $percent } von { $lawn }. Ausgelassen: { $pockets }, { $missed }.
picture-not-counted = Es wurde keine Schnittbreite angegeben, deshalb wurde nichts gezählt.
picture-foot = Aus aufgezeichneten Positionen gezeichnet. Überfahren beweist nicht, dass Gras gemäht wurde.
# Ein Buchstabe: Norden.
north-letter = N
second-axis = zweite Achse
# Namen von Zeichen, vorgelesen: Kennung, was es ist, wie groß.
mark-missed = { $id }, ausgelassen, { $area }
mark-not-yet = { $id }, noch offen, { $area }
mark-unseen = { $id }, nicht erfasst, { $area }
mark-worn = { $id }, ausgefahrene Spur, { $length }
mark-suggested = { $id }, vorgeschlagen: { $change }
mark-stuck = { $id }, Festfahrstelle, { $time } verloren
mark-island = { $id }, Insel, { $area }
mark-passage = { $id }, Durchgang, { $length } breit
mark-in-no-plan = { $count ->
    [one] { $id }, steht in keinem Plan, 1 Wende davor
   *[other] { $id }, steht in keinem Plan, { $count } Wenden davor
}
mark-stray = { $id }, { $length } außerhalb der Begrenzung
mark-compared = { $id }, { $percent } überfahren
mark-station = Ladestation

## Terminal: der Rasen in Schriftzeichen, Dateien

chart-key = { $bare } nicht überfahren, { $one } bis { $first }, { $two } bis { $second }, { $three } bis { $third } Mal, { $four } öfter; { $missed } ausgelassen, { $not_yet } noch offen, { $stuck } Festfahrstelle, { $station } Ladestation; ein Zeichen ist { $length } breit{ $north ->
    [up] , Norden ist oben
   *[unknown] { "" }
}
row-written = Geschrieben

## Warum eine Datei fehlt

file-elsewhere = der Befehl tussock report macht sie aus findings.json
file-tells-where = sie würde verraten, wo der Garten liegt
file-local-metres = die Positionen sind in örtlichen Metern, ohne geografische Koordinaten
file-not-counted = ohne Schnittbreite wurde nichts gezählt
file-not-driven = es wurde nicht gefahren

## Morgen: Gärten

garden-gain = { $garden }: { $area } je Nacht zu gewinnen
failed = Fehlgeschlagen
# Was ein Alarm sagt. $why ist ein englischer Satz aus dem Bestand.
alarm-less-visited = { $found } des Rasens überfahren, wo in ebenso vielen Stunden { $usual } üblich sind, seit { $since }.
alarm-hours = { $value ->
    [lost_hours] { $found } Fahrt, wo { $usual } üblich sind, seit { $since }.
   *[silences] { $found } ohne Positionen, wo { $usual } üblich sind, seit { $since }.
}
alarm-receiver-worse = Die Positionen weichen um { $found } ab, wo { $usual } üblich sind, seit { $since }.
alarm-stuck-spot = An einer Stelle festgefahren seit { $since }, { $nights ->
    [one] 1 Nacht
   *[other] { $nights } Nächte
}, { $found } in der letzten: { $why }
alarm-missed-pocket = Ausgelassen seit { $since }, { $nights ->
    [one] 1 Nacht
   *[other] { $nights } Nächte
}: { $found }. { $why }
alarm-promise = { $found } des Rasens innerhalb von { $count ->
    [one] 1 Tag
   *[other] { $count } Tagen
} überfahren, wo { $usual } zugesagt sind, seit { $since }.
alarm-absent = { $machine ->
    [none] Keine Aufzeichnung seit { $since }: { $nights } erwartete Nächte.
   *[other] Keine Aufzeichnung von { $machine } seit { $since }: { $nights } erwartete Nächte.
}

## Lokale Seite: je eine Zeile; was in Klammern { } steht, bleibt, wie es ist

page-what-to-do = Was zu tun ist
page-open = Öffnen
page-see = Ansehen
page-stop = Anhalten
page-compare = Vergleichen
page-save = Speichern
page-no-script = Diese Seite braucht JavaScript, das hier abgeschaltet ist.
page-how-far = Wie weit die Arbeit ist
page-open-title = Was hat der Mäher stehen lassen?
page-open-lead = Wählen Sie die Positionen, die er aufgezeichnet hat, ziehen Sie sie auf diese Seite oder fügen Sie sie ein. Nichts verlässt dieses Gerät: Die Seite verbietet jede Verbindung und arbeitet ohne Netz.
page-logs = Aufzeichnungen
page-logs-means = GPX, NMEA 0183, CSV, KML und andere, auch mit gzip gepackt; von einem Garten, eine Datei oder mehrere. Eine gespeicherte findings.json öffnet sich, wie sie ist.
page-choose-logs = Aufzeichnungen wählen
page-paste = Eine Aufzeichnung einfügen
page-paste-text = Text der Aufzeichnung
page-paste-take = Diesen Text nehmen
page-plan = Plan
page-plan-if = falls es einen gibt
page-plan-means = Rasen, Zonen, Hindernisse, Leitlinien und die Ladestation, als GeoJSON. Ohne Plan wird der Umriss aus der Fahrt gezeichnet.
page-choose-plan = Plan wählen
page-machine = Mäher
page-width = Breite der Messerscheibe
page-cm = cm
page-width-means = Bleibt das Feld leer, gelten die Einstellungen; steht dort keine, kommt die Antwort für mehrere Breiten.
page-choose-settings = Einstellungen wählen
page-suggest = Änderungen erproben und die besten vorschlagen (dauert länger)
page-find = Ausgelassenes finden
page-demo = Den erfundenen Garten nehmen
page-kept = Auf diesem Gerät aufbewahrt
page-forget = Alles Aufbewahrte löschen
page-cautions = Halten Sie den Mäher an und sichern Sie ihn gegen Anlaufen, bevor Sie ihn berühren: Die Messer bewegen sich. Für das Anbringen eines Loggers, das Graben und Arbeiten an der Ladestation gelten eigene Warnungen; sie stehen auf der Seite, die Sie bekommen.
page-page = Die Seite
page-hand-over = Die Seite zum Weitergeben
page-ask-title = Nach einer Stelle fragen
page-begin = Die Seite mit dieser Antwort beginnen
page-type-place = Eine Stelle eingeben
page-or-tap = Oder tippen Sie sie auf der Karte an.
page-place = Stelle
page-typed-in = eingegeben in
page-metres = Metern nach Osten, Norden
page-degrees = Grad, zuerst die Breite
page-such-as = Zum Beispiel 4.5,-2 oder 53.86006,12.42021, mit Dezimalpunkt. Meter zählen vom Ursprung der Ergebnisse.
page-said = Was dazu gesagt wurde
page-ask = Fragen
page-compare-title = Was hat eine Änderung gebracht?
page-before = Vorher
page-after = Nachher
page-logs-before = Aufzeichnungen von vorher wählen
page-the-plan = Plan wählen
page-logs-after = Aufzeichnungen von nachher wählen
page-plan-changed = Plan wählen, falls er sich geändert hat
page-compare-means = Jede Seite nimmt Aufzeichnungen oder eine findings.json. Schnittbreite und Einstellungen sind die unter „Öffnen“.
page-print = Seite drucken
page-private = Ohne Ort, Namen und Datum
page-keep-title = Auf diesem Gerät aufbewahren
page-keep-means = Nichts wird aufbewahrt, wenn Sie es nicht verlangen. Aufbewahrt werden Ergebnisse, Plan und Einstellungen, in diesem Browser; wer ihn benutzt, kann sie öffnen, und andere Seiten, die von diesem Gerät geöffnet werden, können es auch. Speichern Sie stattdessen Dateien, wenn andere ihn benutzen.
page-garden-name = Name des Gartens
page-keep = Aufbewahren
page-drop = Aufzeichnungen, einen Plan oder Einstellungen hier ablegen
page-no-worker = die Berechnung kann hier nicht laufen: { $reason }
page-not-let = dieser Browser lässt es nicht zu
page-broke-off = die Arbeit brach ab: { $why }
page-broke-off-hint = das ist ein Fehler des Werkzeugs, oder dem Gerät fehlt Speicher; Ihre Dateien sind, wie sie waren
page-take-out = entfernen
page-take-out-file = { $file } entfernen
page-hint = Hinweis: { $hint }
page-seconds = { $stage }, { $seconds } s
page-starting = Start
page-stopped = angehalten
page-reading = { $file } wird gelesen
page-unreadable = { $file }: nicht lesbar: { $reason }
page-choose-again = wählen Sie die Datei noch einmal
page-side-empty = einer Seite fehlt die Aufzeichnung; erwartet werden Aufzeichnungen oder findings.json auf beiden
page-no-log = keine Aufzeichnung angegeben; erwartet wird eine Aufzeichnung (GPX, NMEA 0183, CSV, ...) oder findings.json
page-no-log-hint = wählen Sie Dateien, legen Sie sie auf dieser Seite ab oder nehmen Sie den erfundenen Garten
page-file-page = die Seite zum Weitergeben
page-file-findings = jede Zahl; lässt sich hier wieder öffnen
page-file-geojson = alles, was einen Ort hat, für Karten
page-file-gpx = führt Sie zu den Fehlstellen
page-file-comparison = jede Zahl
page-no-file = { $file } fehlt: { $why }
page-keeps-nothing = dieser Browser bewahrt für diese Seite nichts auf: { $reason }
page-no-reason = kein Grund genannt
page-save-instead = speichern Sie stattdessen findings.json
page-open-kept = öffnen
page-open-garden = { $garden } öffnen
page-is-kept = { $garden } ist aufbewahrt
page-cannot-delete = das Löschen ist nicht möglich: { $reason }
page-clear-data = löschen Sie die Daten dieser Seite in den Einstellungen des Browsers
# Der Name dieser Sprache in ihr selbst.
page-this-language = Deutsch
page-language = Sprache
page-remember = Auf diesem Gerät merken
page-stage-drawing = Zeichnen
page-stage-reading = Lesen
page-stage-comparing = Vergleichen
page-stage-locating = Orten
page-stage-counting = Zählen
page-stage-calibrating = Kalibrieren
page-stage-diagnosing = Ursachen suchen
page-stage-suggesting = Änderungen erproben
