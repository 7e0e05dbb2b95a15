# Draft. Nobody who speaks French natively has reviewed this yet.

## Ce que montrent les positions d’un enregistrement, ou la seule chose à changer

positions_right = Les positions sont justes à { $error_m } près environ.
positions_off = Les positions sont fausses d’environ { $error_m } : placez l’antenne plus haut, avec une vue dégagée du ciel, ou enregistrez avec un récepteur RTK.
receiver_jumps = Le récepteur a sauté et il est resté décalé : les positions d’avant et d’après le saut ne concordent pas. Cherchez ce qui lui cache le ciel, ou donnez l’enregistrement d’avant et celui d’après le saut dans deux fichiers séparés.
error_not_shown = Cet enregistrement ne montre pas de combien ses positions sont fausses : laissez le robot dix minutes à l’arrêt, enregistreur en marche.
fixes_too_rare = Un relevé toutes les { $period_s } laisse échapper des demi-tours : enregistrez-en un par seconde.
digits_too_coarse = Les positions sont enregistrées par pas de { $step_m } : réglez l’enregistreur pour qu’il écrive plus de chiffres (sept décimales de degré, cinq de minute).

## Pourquoi un enregistrement ne montre rien d’une pelouse

mostly_jumps = { $jumps } relevés sur { $fixes } sont plus loin du précédent qu’un robot ne peut rouler dans ce temps (positions.max_speed_mps vaut { $max_speed_mps }) : il s’agit d’un véhicule, ou de positions qui sautent.
too_few_fixes = { $used ->
    [one] { $used } relevé utilisable
   *[other] { $used } relevés utilisables
} sur { $fixes }, c’est trop peu pour montrer un trajet : laissez l’enregistreur en marche pendant toute une sortie.
not_one_garden = Les positions s’étendent sur { $extent_m } : ce n’est pas l’enregistrement d’un seul jardin, ou des sauts le masquent. Ne donnez que les fichiers d’un même jardin.
fixes_far_too_rare = Un relevé toutes les { $period_s } ne montre rien d’une pelouse : enregistrez-en un par seconde.
walking_pace = Il se déplace à { $speed_mps }, aussi vite qu’une personne qui marche : donnez un enregistrement du robot au travail, ou indiquez sa vitesse s’il est vraiment aussi rapide (machine.speed_mps).
walk_round = Cela ressemble au tour à pied d’un jardin de { $area_m2 } ({ $length_m } à { $speed_mps }), pas à l’enregistrement d’un robot : faites-en un plan avec tussock plan from-walk FILE{ $gpx ->
    [yes] { "" }
   *[other] , une fois le tour sauvegardé au format GPX
}. Si c’est tout de même le robot, indiquez sa vitesse (machine.speed_mps).

## D’où part un mètre ruban

landmark_station = la station
landmark_middle = le milieu de « { $body } »
landmark_corner_at = le coin { $body ->
    [none] de la pelouse
   *[other] de « { $body } »
} près de { $beside ->
    [none] la station
   *[other] « { $beside } »
}
landmark_corner_nearest = le coin { $body ->
    [none] de la pelouse
   *[other] de « { $body } »
} le plus proche de la station
landmark_corner = le coin{ $outermost ->
    [yes] { " " }extrême
   *[other] { "" }
} { $body ->
    [none] de la pelouse
   *[other] de « { $body } »
} côté { $wind_deg }
landmark_corner_apart = le coin { $body ->
    [none] de la pelouse
   *[other] de « { $body } »
} côté { $wind_deg } qui est { $farther ->
    [yes] le plus loin de
   *[other] le plus près de
} { $beside ->
    [none] la station
   *[other] « { $beside } »
}

## Ce que la lecture d’un enregistrement a fait ou remarqué

time_without_zone = Les heures n’indiquent pas leur fuseau et sont lues comme UTC.
time_is_relative = Les heures comptent depuis un départ propre à l’enregistreur et ne portent pas de date.
gps_time = Les heures sont en temps GPS et ont été converties en UTC, avec 18 secondes intercalaires depuis 2017 (IERS, Bulletin C).
week_rollover_repaired = { $fixes ->
    [one] { $fixes } relevé était daté
   *[other] { $fixes } relevés étaient datés
} 1024 semaines trop tôt (retour à zéro de la semaine GPS), corrigés de { $days } jours ; le premier est maintenant du { $date }.
late_fixes = { $fixes ->
    [one] { $fixes } relevé a été écrit en retard et remis à sa place.
   *[other] { $fixes } relevés ont été écrits en retard et remis à leur place.
}
newest_first = L’enregistrement commence par le relevé le plus récent ; son ordre a été inversé.
block_out_of_order = Une partie de l’enregistrement a été écrite en retard.
tracks_overlap = Des traces se chevauchent dans le temps ; leurs relevés ont été mis dans un seul ordre, et rien n’est relié de l’une à l’autre.
times_do_not_fit = Une trace a { $times } heures et { $positions } positions, et rien ne dit lesquelles vont ensemble ; elle a été laissée de côté.
constant_quality = GGA qualifie chaque relevé de { $manual ->
    [yes] manuel (7)
   *[other] simulé (8)
} là où RMC le dit valide ; la nature du relevé vient de RMC.
several_machines = L’enregistrement contient { $machines } robots, distingués par les endroits où ils étaient aux mêmes heures.
same_log_twice = Même contenu que { $log }, lu une seule fois.
overlaps_another_log = { $fixes ->
    [one] { $fixes } relevé laissé
   *[other] { $fixes } relevés laissés
} de côté à partir du { $date }, à des heures que couvre un autre enregistrement de ce robot.
file_not_closed = Le fichier n’est pas clos à la fin, comme si l’enregistreur avait été éteint.
file_damaged = Le fichier compressé est endommagé, sa fin manque : { $fault }
line_too_long = Une ligne de { $bytes } octets dépasse { $limit }, la limite fixée par limits.line_bytes, et a été ignorée.
line_cut = Une ligne de plus de { $bytes } octets dépasse { $limit }, la limite fixée par limits.line_bytes, et a été ignorée.
attribute_too_long = Un attribut de { $bytes } octets dépasse { $limit }, la limite fixée par limits.attribute_bytes, et a été ignoré.
document_type_ignored = Le type de document est ignoré, et aucune entité qu’il définit n’est remplacée.

## Ce que la lecture d’un tour à pied a fait ou remarqué

walk_markup_broken = Le fichier est endommagé à { $places ->
    [one] { $places } endroit, qui a été ignoré
   *[other] { $places } endroits, qui ont été ignorés
} ; vérifiez s’il manque quelque chose dans le plan.
walk_taken_as_lawn = « { $track } » (fermé, { $area_m2 }, { $length_m } de tour) est considéré comme la pelouse : c’est la seule trace qui revient à son départ. Si c’est autre chose, dites-le avec --role "{ $track }=ROLE".
walk_positions_skipped = { $positions ->
    [one] { $positions } position
   *[other] { $positions } positions
} de « { $track } » sans latitude ni longitude utilisables.
walk_name_unknown = « { $track } » est laissé de côté, son nom ne dit pas ce que c’est.{ $seems ->
    [none] { "" }
   *[other] { " " }Si c’est bien ce dont cela a l’air, dites-le avec --role "{ $track }={ $seems }".
}
walk_spikes_cut = { $positions ->
    [one] { $positions } position de « { $track } » saute au loin et revient ; elle est laissée de côté.
   *[other] { $positions } positions de « { $track } » sautent au loin et reviennent ; elles sont laissées de côté.
}
walk_waits_as_corners = Dans « { $track } », le marcheur s’est arrêté à { $places ->
    [one] { $places } endroit ; il est gardé comme coin.
   *[other] { $places } endroits ; chacun est gardé comme coin.
}
walk_pieces_joined = « { $track } » a été enregistré en { $pieces } morceaux, reliés par des lignes droites.
walk_overlap_cut = « { $track } » a été parcouru { $past_m } au-delà de son départ ; ce bout est coupé.
walk_gap_closed = « { $track } » a été fermé par une ligne droite de { $gap_m }.
walk_loops_cut = { $loops ->
    [one] { $loops } petite boucle de « { $track } » est coupée.
   *[other] { $loops } petites boucles de « { $track } » sont coupées.
}
walk_guide_turned = « { $track } » a été parcouru vers la station ; son sens a été inversé.

## Ce qui joue encore contre un enregistrement

stood_all_the_time = Le robot est resté à l’arrêt tout le temps : laissez l’enregistreur en marche pendant plusieurs sorties entières.
drove_too_short = Seulement { $driven_s } de roulage enregistrées : laissez l’enregistreur en marche pendant plusieurs sorties entières.
drove_too_short_by = { $driven_s } de roulage enregistrées : il en faut encore { $missing_h } environ avant qu’une surface nue large de { $wanted_m } ne puisse plus s’expliquer par la malchance.
receiver_jumped = Le récepteur a sauté de { $size_m } ({ $time }) et il est resté à cet endroit.
receiver_jumps_back = Le récepteur a sauté puis il est revenu, { $jumps } fois : sur une partie de la pelouse, il voit mal le ciel.
stops_not_placed = Des arrêts, { $lost_min } en tout, ne sont pas signalés : des positions aussi mauvaises ne montrent pas où le robot s’est arrêté.
receiver_jumped_often = { $jumps ->
    [one] Et encore { $jumps } saut du même genre.
   *[other] Et encore { $jumps } sauts du même genre.
}
date_too_old = L’enregistrement commence le { $date } : l’horloge de l’enregistreur n’était pas réglée, ou son compteur de semaines est reparti de zéro. Ses dates sont fausses ; ses heures sont peut-être justes (--date fixe le jour des enregistrements qui ne contiennent que des heures).
positions_bent = Sur environ { $area_m2 } autour de { $place }, les positions sont toujours décalées dans le même sens, jusqu’à { $largest_m }, comme près d’un mur ou sous des arbres. La trajectoire y a été redressée ; la part de ce terrain qui a été parcourue y est moins sûre.
turns_not_at_edge = Les demi-tours ne se trouvent pas le long des bords du plan (robot qui roule en lignes parallèles, ou plan qui ne correspond pas) : les bords n’ont donc pas servi à corriger les positions.
edge_inside = Au bord { $edge_deg }, le robot fait demi-tour { $offset_m } plus à l’intérieur qu’aux autres bords ({ $turns ->
    [one] { $turns } demi-tour
   *[other] { $turns } demi-tours
}) : le bord est dessiné trop à l’extérieur, la limite est posée trop à l’intérieur, ou le récepteur se trompe à cet endroit. Mesurez sur place avant de déplacer quoi que ce soit.
edge_outside = Au bord { $edge_deg }, le robot fait demi-tour { $offset_m } plus à l’extérieur qu’aux autres bords ({ $turns ->
    [one] { $turns } demi-tour
   *[other] { $turns } demi-tours
}) : le bord est dessiné trop à l’intérieur, la limite est posée trop à l’extérieur, ou le récepteur se trompe à cet endroit. Mesurez sur place avant de déplacer quoi que ce soit.
zone_driven = La zone{ $zone ->
    [none] { "" }
   *[other] { " " }« { $zone } »
} est parcourue comme le reste de la pelouse ({ $path_m } de trajectoire à l’intérieur) : pour le robot, elle n’existe pas. Ce qui s’y trouve n’est peut-être pas à l’abri du robot.
plan_beside = Le plan est décalé de { $distance_m } par rapport à l’enregistrement ({ $east_m } est, { $north_m } nord) ; il a été déplacé pour correspondre.
drift_assumed = L’enregistrement n’indique pas la qualité de ses positions, et le robot ne s’arrête jamais assez longtemps pour la montrer ; une erreur de { $drift_m } est supposée. Si vous savez mieux, indiquez-le (positions.drift_m).
drift_at_most = Le robot ne s’arrête jamais assez longtemps pour montrer de combien les positions dérivent ; ses lignes droites permettent { $drift_m } au plus.
silent_long = Pendant { $silent_fraction } du temps, il n’y a aucun relevé utilisable ; rien n’est affirmé sur ce temps.
fixes_left_out = { $poor ->
    [0] { $jumps ->
        [one] { $jumps } relevé a été écarté parce qu’il saute.
       *[other] { $jumps } relevés ont été écartés parce qu’ils sautent.
    }
    [one] { $jumps ->
        [0] { $poor } relevé a été écarté pour mauvaise qualité.
        [one] { $poor } relevé a été écarté pour mauvaise qualité et { $jumps } parce qu’il saute.
       *[other] { $poor } relevé a été écarté pour mauvaise qualité et { $jumps } parce qu’ils sautent.
    }
   *[other] { $jumps ->
        [0] { $poor } relevés ont été écartés pour mauvaise qualité.
        [one] { $poor } relevés ont été écartés pour mauvaise qualité et { $jumps } parce qu’il saute.
       *[other] { $poor } relevés ont été écartés pour mauvaise qualité et { $jumps } parce qu’ils sautent.
    }
}
no_station = Aucune station de charge n’a été reconnue : il n’y a pas d’endroit où le robot revienne s’arrêter dix minutes ou plus.
claim_too_good = Le récepteur annonce { $claimed_m }, mais ses positions se dispersent de { $scatter_m } : c’est la dispersion qui est crue, pas l’annonce.
rtk_fixed_too_good = Le récepteur qualifie ses relevés de RTK fixe, ce qui veut dire { $usual_m } environ, mais ses positions se dispersent de { $scatter_m } : c’est la dispersion qui est crue, pas l’annonce.
positions_repeated = { $repeated_fraction } des relevés répètent la position précédente jusqu’au dernier chiffre alors que le récepteur annonce une vitesse (pendant { $longest_s } au plus) : il redonne d’anciennes positions.
positions_held = { $repeated_fraction } des relevés répètent la position précédente jusqu’au dernier chiffre (pendant { $longest_s } au plus) : le récepteur fige sa position à l’arrêt, si bien que les arrêts paraissent meilleurs que ses positions ne le sont. Désactivez ce gel à l’arrêt (« static hold »).
drives_at_rest = { $rest_min } de roulage sur { $driven_min } tombent dans des heures où les réglages mettent le robot au repos ({ $time_zone ->
    [none] aucun fuseau horaire n’est réglé, donc UTC
   *[other] fuseau horaire { $time_zone }
}) ; aucun décalage d’heures entières ne les fait concorder.
drives_at_rest_shifted = { $rest_min } de roulage sur { $driven_min } tombent dans des heures où les réglages mettent le robot au repos ({ $time_zone ->
    [none] aucun fuseau horaire n’est réglé, donc UTC
   *[other] fuseau horaire { $time_zone }
}) ; { $shift_h } { $later ->
    [yes] plus tard
   *[no] plus tôt
}, tout concorderait{ $local_time ->
    [yes] { " " }: l’enregistrement semble contenir l’heure locale, notée comme UTC.
   *[no] .
}
calibrated = { $runs ->
    [one] { $runs } enregistrement comparable à celui-ci a été simulé
   *[other] { $runs } enregistrements comparables à celui-ci ont été simulés
} sur le plan ; la part parcourue a été corrigée de { $points ->
    [one] { $points } point
   *[other] { $points } points
}, l’écart systématique ainsi constaté.
ways_disagree = Deux façons de compter se contredisent : { $by_path_fraction } d’après la trajectoire ajustée aux demi-tours et aux bords, { $as_logged_fraction } d’après les positions telles qu’enregistrées, corrigées de leurs erreurs. C’est la seconde qui est retenue, et aucun terrain n’est signalé comme oublié.
as_logged_silent = Compté tel qu’enregistré, ce serait { $as_logged_fraction } : ce qui a été parcouru pendant les silences ({ $silent_fraction } du temps) y manque.
as_logged_sparse = Compté tel qu’enregistré, ce serait { $as_logged_fraction } : avec un relevé toutes les { $period_s }, les lignes droites d’un relevé à l’autre coupent les demi-tours.
as_logged_spread = Compté tel qu’enregistré, ce serait { $as_logged_fraction } : des positions fausses d’environ { $error_m } étalent la trajectoire sur un terrain qui n’a pas été parcouru.
as_logged_aside = Compté tel qu’enregistré, ce serait { $as_logged_fraction } : des positions fausses d’environ { $error_m } portent la trajectoire hors de la pelouse, ou sur un terrain déjà parcouru.
not_calibrated_no_width = La part parcourue n’a pas été étalonnée : il faut pour cela la largeur de coupe.
not_calibrated_no_plan = La part parcourue n’a pas été étalonnée : il faut pour cela un plan sur lequel rouler.
not_calibrated_lanes = La part parcourue n’a pas été étalonnée : les lignes parallèles ne se simulent pas assez fidèlement.
not_calibrated_no_drive = La part parcourue n’a pas été étalonnée : l’enregistrement ne montre aucun trajet.
not_calibrated_no_run = La part parcourue n’a pas été étalonnée : aucun robot comme celui-ci ne peut rouler sur le plan.

## Ce qui s’ensuit quand deux réponses à une même question se contredisent

interval_holds_both = La fourchette est élargie pour contenir à la fois { $one_fraction } et { $other_fraction }.
interval_wider = La fourchette est multipliée par { $times }.
interval_wider_by = La fourchette est élargie de { $more_fraction } de la pelouse de chaque côté.
plan_not_believed = Les bords du plan n’expliquent que { $explained_fraction } des demi-tours ; là où l’enregistrement ne montre pas comment le plan est placé, aucune cause n’est donc donnée.
legs_unlike = La ligne droite habituelle mesure { $logged_m } dans l’enregistrement et { $drawn_m } dans les essais simulés du robot ajusté : il se déplace d’une façon que le modèle ne connaît pas, et ce que prédisent les essais simulés est moins sûr.
shows_wider = Le terrain jusqu’à { $widest_m } de large reste indécis : seules des poches plus larges se verraient.

## Pourquoi une poche a été oubliée

too_narrow_to_explain = Cet endroit n’a pas été parcouru, mais ces positions sont trop mauvaises pour montrer pourquoi un vide large de { $widest_m } est resté ; allez voir sur place.
gap_too_narrow = La partie située derrière ({ $behind_m2 }) est inaccessible : l’ouverture fait { $width_m } de large et il faut au robot plus de { $needed_m }.
no_way_in = Cette partie ({ $area_m2 }) n’a pas d’accès : sur le plan, elle n’est pas reliée au terrain d’où part le robot.
no_way_in_driven = Cette partie ({ $area_m2 }) n’a pas d’accès : rien de ce que le robot a parcouru n’y mène.
turns_before_edge = Ici, le robot fait demi-tour { $setback_m } avant le bord ; son disque n’atteint donc pas cette bande.
zone_elsewhere = La zone{ $zone ->
    [none] { "" }
   *[other] { " " }« { $zone } »
} semble se trouver ailleurs que sur le plan : le robot a parcouru { $path_m } à l’intérieur de la zone dessinée et il a fait demi-tour sur une ligne située en dehors.
zone_elsewhere_towards = La zone{ $zone ->
    [none] { "" }
   *[other] { " " }« { $zone } »
} semble décalée, côté { $towards_deg }, par rapport au plan : le robot a parcouru { $path_m } à l’intérieur de la zone dessinée et il a fait demi-tour sur une ligne située en dehors.
stuck_on_the_way = Le robot s’est bloqué { $times } fois ({ $lost_min }) sur le chemin de cette partie.
stuck_on_the_way_past = Le robot s’est bloqué { $times } fois ({ $lost_min }) sur le chemin de cette partie et { $at_least ->
    [yes] il est passé au moins { $past } fois
   *[no] { $past ->
        [0] il n’est jamais passé
       *[other] il est passé { $past } fois
    }
}.
passage_shut = Le couloir de { $width_m } semble fermé : pour { $driven_h } de roulage, { $expected ->
    [one] { $expected } traversée était attendue et aucune n’a été vue.
   *[other] { $expected } traversées étaient attendues et aucune n’a été vue.
}
something_stands = Ici se trouve quelque chose d’environ { $widest_m } de large que le plan ne montre pas : le robot y a fait demi-tour { $turns } fois et n’est jamais entré.
something_may_stand = Ici se trouve quelque chose d’environ { $widest_m } de large, ou bien la pelouse a un trou : le robot y a fait demi-tour { $turns } fois et n’est jamais entré. Est-ce un massif, un arbre, un bassin ? Un plan qui le montre le dirait.
strip_stays = Une bande large de { $width_m } reste le long du bord { $edge_deg }, sur { $length_m }.
strip_stays_turns = Une bande large de { $width_m } reste le long du bord { $edge_deg }, sur { $length_m } : ici, le robot fait demi-tour { $here_m } avant le bord, ailleurs { $elsewhere_m } avant.
passage_seldom_found = En { $driven_h } de roulage, le robot { $entries ->
    [0] n’a pas trouvé une seule fois
   *[other] { $at_least ->
        [yes] n’a trouvé que { $entries } fois (au moins)
       *[no] n’a trouvé que { $entries } fois
    }
} le chemin du couloir de { $width_m } ; la partie située derrière ({ $behind_m2 }) a reçu { $share_ratio } de sa part.
behind_passage_seldom = Rien ne barre cette partie, mais le robot y vient trop rarement : la partie située derrière le couloir de { $width_m } ({ $behind_m2 }) a reçu { $share_ratio } de sa juste part, et rien ne changera tant que les sorties restent ce qu’elles sont.
comes_seldom = Rien ne barre cette partie, mais le robot y vient trop rarement : le terrain autour a reçu { $share_ratio } de sa juste part.
not_shown = Cet endroit est laissé de côté plus souvent que le hasard ne l’explique, mais cet enregistrement ne montre pas pourquoi ; allez voir sur place.

## Ce qui parle pour

luck_not_lanes = Un tour complet en lignes parallèles ne laisse pas au hasard un vide large de { $width_m }.
luck_under_thousandth = Le hasard seul laisse un vide large de { $width_m } sur moins d’une pelouse comparable sur 1 000.
luck_one_in = Le hasard seul laisse un vide large de { $width_m } sur une pelouse comparable sur { $lawns } environ.
passage_width = { $width_m } au plus étroit, dont { $free_m } libres pour le milieu du robot ; { $length_m } de long.
passage_crossings = Il a changé de côté { $at_least ->
    [yes] au moins { $crossings } fois
   *[no] { $crossings } fois
} ; sur cette distance, un robot qui se déplace librement l’aurait fait { $expected ->
    [0] moins d’une fois
   *[other] { $expected } fois
}.
driven_behind = { $path_m } parcourus derrière, soit { $share_ratio } de la juste part.
nothing_driven_in = Aucune trajectoire ne passe à l’intérieur.
cells_near_edge = Les neuf dixièmes se trouvent à moins de { $within_m } du bord.
path_in_zone = { $path_m } de trajectoire à l’intérieur de la zone telle que dessinée.
turns_beside = { $turns ->
    [one] { $turns } demi-tour
   *[other] { $turns } demi-tours
} à côté de cette poche, là où le plan n’a pas de bord.
stops_on_the_way = { $stops ->
    [one] { $stops } arrêt
   *[other] { $stops } arrêts
}, { $lost_min } en tout ; { $passes ->
    [one] { $passes } passage
   *[other] { $passes } passages
} sans arrêt.
share_behind = La partie située derrière a reçu { $share_ratio } de sa juste part.
crossings_expected = { $expected ->
    [one] { $expected } traversée attendue, aucune vue.
   *[other] { $expected } traversées attendues, aucune vue.
}
turns_in_front = { $turns ->
    [one] { $turns } demi-tour
   *[other] { $turns } demi-tours
} juste devant, là où le plan n’a pas de bord.
turns_around = { $turns ->
    [one] { $turns } demi-tour
   *[other] { $turns } demi-tours
} à son contact, le long de { $rim_fraction } de son pourtour ouvert.
passes_expected = { $passes ->
    [one] { $passes } passage attendu sur un terrain de cette largeur, aucun vu.
   *[other] { $passes } passages attendus sur un terrain de cette largeur, aucun vu.
}
strip_shape = { $length_m } de long, { $widest_m } au plus large, les neuf dixièmes à moins de { $within_m } du bord.
turns_along = { $turns ->
    [one] { $turns } demi-tour
   *[other] { $turns } demi-tours
} le long de son côté intérieur.
path_nearby = Tout près, la longueur parcourue atteint { $share_ratio } de la moyenne de la pelouse.
share_simulated = Les essais simulés depuis cette station lui donnent { $share_ratio } de la moyenne de la pelouse.

## Ce qui parle contre

gap_nearly_wide = L’ouverture est presque aussi large qu’il le faut au robot, ou à peine plus : mesurez-la.
few_turns = { $turns ->
    [one] Seulement { $turns } demi-tour.
   *[other] Seulement { $turns } demi-tours.
}
visits_hidden = Des positions aussi mauvaises cachent les passages brefs.
strip_thin = La bande est plus mince que trois fois l’erreur de position.
zone_may_be_open = La zone est peut-être bien dessinée et a été ouverte exprès.
also_behind_passage = La partie se trouve aussi derrière un couloir de { $width_m }.
one_outing_matters = Une seule sortie heureuse changerait beaucoup ces chiffres.
luck_leaves_such = Avec des sorties comme celles-ci, le hasard laisse de temps en temps un tel endroit.
look_decides = Pour savoir laquelle des deux c’est : { $look ->
    [passage] regardez s’il y a quelque chose dans le couloir.
    [width] mesurez le couloir au mètre ruban.
    [ground] regardez si quelque chose se trouve sur ce terrain ou en barre l’accès.
    [zone] mesurez si la zone se trouve là où elle est dessinée.
    [stuck_spot] regardez l’endroit où le robot se bloque.
    [edge] observez à quelle distance du bord le robot y fait demi-tour.
   *[another_log] enregistrez encore { $log_h } de roulage ; si le robot peut entrer, { $told_fraction } de tels enregistrements l’y montrent.
}

## Terrain sur lequel rien n’est décidé

not_yet = Rien d’anormal pour l’instant : { $driven_h } de roulage, c’est peu pour { $lawn_m2 } ; des vides de { $widest_m } sont normaux de temps en temps.
not_yet_until = Rien d’anormal pour l’instant : { $driven_h } de roulage, c’est peu pour { $lawn_m2 } ; des vides de { $widest_m } sont normaux jusqu’à { $decided_h } de roulage environ.
hidden_by_silence = L’enregistrement est silencieux au moment où le robot y était peut-être (probabilité { $chance_fraction }).
cause_withheld = Cet enregistrement ne montre pas comment le plan est placé dans le jardin : aucune cause n’est donc donnée et aucune modification proposée. Allez voir, puis vérifiez le plan ou enregistrez de meilleures positions.
shown_too_little = L’enregistrement en montre trop peu pour dire si cet endroit a été oublié.

## Ce qu’il faut regarder là où il s’est bloqué

stuck_near = Cet endroit se trouve à { $distance_m } { $feature ->
    [zone] du bord de la zone d’exclusion « { $name } »
    [obstacle] du bord de l’obstacle « { $name } »
   *[lawn_edge] du bord de la pelouse
} : cherchez-y des racines, une marche ou un sol mou.
stuck_in_passage = Cet endroit se trouve dans le couloir de { $width_m } : cherchez-y des racines, une marche ou un sol mou.
stuck_in_passage_near = Cet endroit se trouve dans le couloir de { $width_m }, à { $distance_m } { $feature ->
    [zone] du bord de la zone d’exclusion « { $name } »
    [obstacle] du bord de l’obstacle « { $name } »
   *[lawn_edge] du bord de la pelouse
} : cherchez-y des racines, une marche ou un sol mou.
stuck_in_the_open = Le plan ne montre rien à proximité : cherchez des racines, un trou ou un sol mou.
stuck_somewhere = Cherchez des racines, un trou ou un sol mou.

## Ce qu’il faut changer

lay_guide_run = Posez une ligne de guidage avec { $wire_m } de fil neuf jusqu’au fond de { $pocket } et faites-y passer { $outings_of_ten ->
    [one] { $outings_of_ten } sortie
   *[other] { $outings_of_ten } sorties
} sur 10{ $longer ->
    [yes] , et laissez le robot travailler { $added_h } de plus par jour
   *[no] { "" }
} : sur { $log_h } comme celles-ci, environ { $after_fraction } de { $pocket } sont alors en général parcourus, contre { $before_fraction } si rien ne change.
move_zone = Déplacez de { $shift_m } la zone « { $zone } » pour la mettre là où elle est dessinée, car les demi-tours montrent qu’elle est ailleurs{ $longer ->
    [yes] , et laissez le robot travailler { $added_h } de plus par jour
   *[no] { "" }
} : sur { $log_h } comme celles-ci, environ { $after_fraction } de { $pocket } sont alors en général parcourus, contre { $before_fraction } si rien ne change.
facing_side = Le côté { $faces_deg }.
shrink_zone = Reculez de { $shift_m } le côté { $faces_deg } de la zone « { $zone } », pour que le chemin qui la longe jusqu’à { $pocket } fasse { $passage_m } de large{ $longer ->
    [yes] , et laissez le robot travailler { $added_h } de plus par jour
   *[no] { "" }
} : sur { $log_h } comme celles-ci, environ { $after_fraction } de { $pocket } sont alors en général parcourus, contre { $before_fraction } si rien ne change.
add_zone = Tenez le robot à l’écart de l’endroit où il se bloque ({ $spot }), pour qu’il vienne plus souvent dans { $pocket }{ $longer ->
    [yes] , et laissez-le travailler { $added_h } de plus par jour
   *[no] { "" }
} : sur { $log_h } comme celles-ci, environ { $after_fraction } de { $pocket } sont alors en général parcourus, contre { $before_fraction } si rien ne change.
work_longer = Laissez-le travailler { $added_h } de plus par jour : sur { $log_h } comme celles-ci, environ { $after_fraction } de { $pocket } sont alors en général parcourus, contre { $before_fraction } si rien ne change.
shift_boundary = Déplacez la limite de { $shift_m } vers l’extérieur le long de { $pocket }{ $longer ->
    [yes] , et laissez le robot travailler { $added_h } de plus par jour
   *[no] { "" }
} : sur { $log_h } comme celles-ci, environ { $after_fraction } de { $pocket } sont alors en général parcourus, contre { $before_fraction } si rien ne change.

## Comment un robot simulé correspond à l’enregistrement

fit_trusted = Un robot simulé qui roule comme celui-ci ({ $speed_mps }, appris de { $turns ->
    [one] { $turns } demi-tour
   *[other] { $turns } demi-tours
} et de { $outings ->
    [one] { $outings } sortie
   *[other] { $outings } sorties
}) parcourt autant de pelouse que le montre l’enregistrement.
fit_visits_differ = Les essais simulés parcourent plus ou moins de cette pelouse que ne le montre l’enregistrement : il manque sur le plan quelque chose du terrain, ou le robot se comporte autrement d’un jour à l’autre. Les prévisions sont données avec des fourchettes plus larges.
fit_path_differs = Les essais simulés ont une trajectoire plus longue ou plus courte que ne le montre l’enregistrement. Les prévisions sont données avec des fourchettes plus larges.
not_fitted_lanes = Rien n’est prédit : le robot roule en lignes parallèles, qui ne dépendent pas du hasard.
not_fitted_several_machines = Rien n’est prédit : { $machines } robots ont travaillé ici, et un seul peut être ajusté.
not_fitted_few_turns = Rien n’est prédit : { $turns ->
    [one] { $turns } seul demi-tour a été vu à un bord
   *[other] seulement { $turns } demi-tours ont été vus à un bord
}, et il en faut { $expected }.
not_fitted_no_legs = Rien n’est prédit : la trajectoire ne montre pas de lignes droites entre les demi-tours.
not_fitted_no_ground = Rien n’est prédit : le plan ne laisse aucun terrain où rouler.
not_simulated = Rien n’est prédit : { $why }.

## Heures et herbe

promise_beyond_hours = { $promised_fraction } en { $promised_days ->
    [one] { $promised_days } jour
   *[other] { $promised_days } jours
}, cela ne s’atteint pas avec des horaires plus longs : il faudrait { $needed_h } de travail par jour.
promise_needs_hours = { $promised_fraction } en { $promised_days ->
    [one] { $promised_days } jour
   *[other] { $promised_days } jours
}, cela demande environ { $needed_h } de travail par jour à cette allure ; il a travaillé { $worked_h }, dont { $driven_h } de roulage.
promise_beyond_reach = Aucun horaire n’est assez long pour atteindre { $promised_fraction } en { $promised_days ->
    [one] { $promised_days } jour
   *[other] { $promised_days } jours
} : trop de terrain est oublié. Il a travaillé { $worked_h } par jour, dont { $driven_h } de roulage.
promise_hours_unknown = Il a travaillé { $worked_h } par jour, dont { $driven_h } de roulage ; cet enregistrement ne permet pas de dire ce que demanderaient { $promised_fraction } en { $promised_days ->
    [one] { $promised_days } jour
   *[other] { $promised_days } jours
}.
lower_cut_unknown = Cet enregistrement ne permet pas de dire si tous les endroits ont été parcourus à la hauteur de coupe actuelle.
lower_cut = Tous les endroits assez larges pour se voir ont été parcourus à la hauteur actuelle ({ $visited_fraction } de la pelouse au moins) : la hauteur de coupe peut être abaissée d’un cran.
lower_cut_places_open = Laissez la hauteur de coupe comme elle est : { $places ->
    [one] { $places } endroit assez large pour se voir n’a pas encore été parcouru
   *[other] { $places } endroits assez larges pour se voir n’ont pas encore été parcourus
}, et l’herbe haute arrête un robot réglé bas.
lower_cut_unsure = Laissez la hauteur de coupe comme elle est : seuls { $visited_fraction } de la pelouse ont été parcourus à coup sûr, et l’herbe haute arrête un robot réglé bas.
grass_log_too_short = Une herbe qui pousse de { $growth_mm } par jour peut rester { $allowed_days ->
    [one] { $allowed_days } jour
   *[other] { $allowed_days } jours
} sans passage (règle du tiers) ; cet enregistrement de { $log_days ->
    [one] { $log_days } jour
   *[other] { $log_days } jours
} est trop court pour montrer si elle est restée plus longtemps quelque part.
grass_overdue = { $overdue_fraction } de la pelouse sont restés plus de { $allowed_days ->
    [one] { $allowed_days } jour
   *[other] { $allowed_days } jours
} sans passage, trop pour une herbe qui pousse de { $growth_mm } par jour (règle du tiers) : il faut plus de passages.
grass_too_many_passes = Pendant le temps que l’herbe pouvait attendre ({ $allowed_days ->
    [one] { $allowed_days } jour
   *[other] { $allowed_days } jours
}, règle du tiers), chaque endroit est parcouru { $passes } fois : moins d’heures suffiraient et ménageraient le gazon.
grass_enough_passes = Il ne s’est pas écoulé plus de { $allowed_days ->
    [one] { $allowed_days } jour
   *[other] { $allowed_days } jours
} entre deux passages, comme le demande une herbe qui pousse de { $growth_mm } par jour (règle du tiers).

## Ce qu’une modification a apporté

lawn_unknown = Ces enregistrements ne permettent pas de dire si la pelouse dans son ensemble va mieux.
lawn_more = La part parcourue de la pelouse a augmenté de { $points ->
    [one] { $points } point
   *[other] { $points } points
} par rapport à avant.
lawn_less = La part parcourue de la pelouse a diminué de { $points ->
    [one] { $points } point
   *[other] { $points } points
} par rapport à avant.
lawn_alike = La pelouse dans son ensemble ne montre aucune différence qui dépasse le hasard d’une nuit.
pockets_mended = Réglé : { $pockets }.
pockets_better = Mieux : { $pockets }.
pockets_new = Nouveau : { $pockets }.
pocket_compared = { $pocket } : { $before_fraction } avant, { $after_fraction } après ; { $change ->
    [mended] { $within_luck ->
        [yes] presque tout est maintenant parcouru, mais le hasard seul en ferait autant dans plus d’une de ces paires d’enregistrements sur dix : regardez à nouveau dans quelques nuits
       *[no] presque tout est maintenant parcouru
    }
    [better] la partie parcourue est plus grande que ce qu’apporterait le hasard
    [new] cet endroit était parcouru avant
   *[unchanged] { $within_luck ->
        [yes] la partie parcourue est plus grande, mais pas plus que ce que le hasard peut apporter
       *[no] aucune différence au-delà du hasard
    }
}.
change_decided = { $pocket } : décidé après { $decided ->
    [one] la première
   *[other] { $decided }
} des { $nights } nuits, avec une erreur de 5 % au plus, quel que soit le nombre de vérifications.
change_open = { $pocket } : { $more ->
    [one] une nuit de plus comme celles-ci permettrait
   *[other] { $more } nuits de plus comme celles-ci permettraient
} de décider.

## À quoi faire attention

blades_on_lawn = Lames en mouvement : arrêtez le robot et désactivez-le avant de le toucher ; tenez les enfants et les animaux domestiques hors de la pelouse pendant qu’il travaille.
blades_near = Lames en mouvement : arrêtez le robot et désactivez-le avant de travailler à proximité.
outline_from_drive = Aucun plan n’a été donné : le contour est dessiné d’après le trajet lui-même. La pelouse dont le robot ne s’est jamais approché n’est pas comptée, et ce qu’il a contourné est pris pour un îlot.
plan_fault = Plan : { $fault }.
dig_at_spot = Avant de creuser à un point de blocage : faites repérer les câbles et conduites enterrés ; les réseaux privés ne sont pas signalés. Les racines peuvent être celles d’un arbre protégé.
dig = Avant de creuser : faites repérer les câbles et conduites enterrés ; les réseaux privés ne sont pas signalés.
zone_may_protect = Une zone peut protéger des racines, des câbles électriques ou des personnes : cherchez pourquoi elle est là avant de la modifier.
hours_by_day = Ajoutez les heures en journée : la nuit, de petits animaux sont dehors.
driven_in_the_dark = { $dark_h } de roulage ont eu lieu dans l’obscurité, quand hérissons et petits animaux sont dehors : faites-le travailler de jour.
beyond_the_line = Au-delà de la ligne, il peut y avoir un dallage, de l’eau, une pente ou le terrain de quelqu’un d’autre : regardez avant de la déplacer.
look_before_zone = Regardez d’abord le terrain : une racine, une bordure ou un sol détrempé que l’on peut traiter n’a pas besoin de zone.
guide_exit_unknown = L’enregistrement ne montre pas à quel endroit d’une ligne de guidage ce robot la quitte ; il est supposé que c’est quelque part sur les deux derniers cinquièmes. Si cela se règle, choisissez un point proche du bout.
local_codes = Les règles locales et la notice du robot passent avant tout.
other_reasons = Une différence décrit ce qui a été parcouru dans ces enregistrements. Elle peut venir d’autre chose que de la modification : météo, autres horaires, une lame, une table de jardin.
at_equal_hours = Les deux côtés n’ont pas le même nombre d’heures de roulage ; ils sont comparés à heures égales.
plan_unsure_before = L’enregistrement ne montre pas comment le plan est placé dans le jardin avant la modification ; les endroits peuvent donc y être décalés.
plan_unsure_after = L’enregistrement ne montre pas comment le plan est placé dans le jardin après la modification ; les endroits peuvent donc y être décalés.
place_often = Parcouru { $visits } fois, la pelouse { $lawn_visits } fois en moyenne. Si l’herbe est tout de même haute, regardez les lames, la hauteur de coupe, la façon dont l’herbe pousse à cet endroit, et les pentes.
place_seldom = Rarement parcouru : { $visits } fois, la pelouse { $lawn_visits } fois en moyenne. Regardez ce qui rétrécit le chemin : un couloir, un coin, un bord tout proche.
place_few = Parcouru { $visits } fois jusqu’ici, la pelouse { $lawn_visits } fois en moyenne : c’est moins, mais pas plus rare que ce que fait le hasard seul. D’autres nuits le diront.
place_never = Oublié : cet endroit se trouve dans la poche { $pocket } ({ $area_m2 }).
place_gap = Non parcouru dans cet enregistrement, dans un vide si petit que le hasard seul le laisse. Enregistrez une autre nuit et demandez à nouveau.
place_not_yet = Pas encore parcouru : cet endroit se trouve dans { $pocket }, que le hasard explique encore. { $decided_h } de roulage en tout décideront.
place_not_yet_open = Pas encore parcouru : cet endroit se trouve dans { $pocket }, que le hasard explique encore. Enregistrez d’autres nuits.
place_unseen = Cet enregistrement ne permet pas de le dire : cet endroit se trouve dans { $ground }, un terrain sans indices. Enregistrez une nuit sans silences à cet endroit.
place_is_stuck_spot = Le robot a perdu du temps ici : point de blocage { $spot }, { $lost_min } en tout.
place_off_lawn = Cet endroit se trouve à { $distance_m } en dehors de la pelouse, où rien n’est compté. S’il fait partie de la pelouse, le plan l’a omis.
place_elsewhere = Cet endroit se trouve à { $distance_m } de la pelouse : il est dans un autre jardin, ou l’un de ses nombres est faux.
place_beyond_outline = Cet enregistrement ne permet pas de le dire : cet endroit se trouve à { $distance_m } en dehors de la pelouse que le trajet a dessinée. S’il fait partie de la pelouse, dessinez un plan qui le contient.
place_in_island = Jamais entré : cet endroit se trouve dans l’îlot { $island } ({ $area_m2 }), devant lequel le robot a fait demi-tour de plusieurs côtés. Un massif, un arbre, un bassin, ou de la pelouse derrière quelque chose ? Un plan le dira.
place_cannot_tell = Cet enregistrement ne permet pas de le dire : ses positions sont fausses d’environ { $error_m }, et dans ce rayon il y a du terrain souvent parcouru et du terrain jamais parcouru. Enregistrez avec un meilleur récepteur, ou plus longtemps.
place_compared = { $said ->
    [none] L’endroit signalé
   *[other] « { $said } »
} : parcouru { $before_visits } fois en { $before_h } de roulage avant, { $after_visits } fois en { $after_h } depuis.
place_needs_width = Sans la largeur de coupe, les passages ne sont pas comptés : mesurez-la, indiquez-la et demandez à nouveau.
nights_unknown = Ces enregistrements ne permettent pas de dire combien une nuit diffère de la suivante ; aucune différence ne peut donc être tenue pour réelle.

## Mots pour une direction

compass = { $eighth ->
    [0] nord
    [1] nord-est
    [2] est
    [3] sud-est
    [4] sud
    [5] sud-ouest
    [6] ouest
   *[7] nord-ouest
}

## Ce que veulent dire nos propres mots

cause = { $value ->
    [walled_off] pas d’accès
    [narrow_passage] couloir étroit
    [edge_band] bande le long du bord
    [zone_misplaced] ligne ailleurs que sur le plan
    [beyond_stuck_spot] derrière un point de blocage
    [too_few_visits] passe trop rarement
    [too_little_time] pas roulé assez longtemps
   *[undetermined] non montré par cet enregistrement
}
asked-short = { $value ->
    [place_often] Parcouru comme le reste
    [place_seldom] Rarement parcouru
    [place_few] Moins parcouru jusqu’ici
    [place_never] Oublié
    [place_gap] Non parcouru
    [place_not_yet] Pas encore
    [place_not_yet_open] Pas encore
    [place_is_stuck_spot] Le robot se bloque ici
    [place_off_lawn] Hors de la pelouse
    [place_elsewhere] Ailleurs
    [place_in_island] Jamais entré
    [place_needs_width] Non compté
   *[place_cannot_tell] Cet enregistrement ne permet pas de le dire
}
cause-meaning = { $value ->
    [walled_off] Le robot n’a pas d’accès : l’ouverture est trop étroite pour lui, ou quelque chose la barre.
    [narrow_passage] L’accès est si étroit que le robot le trouve rarement.
    [edge_band] Une bande le long du bord reste en dehors de la ligne où le robot fait demi-tour.
    [zone_misplaced] Le robot fait demi-tour sur une ligne qui se trouve ailleurs que sur le plan.
    [beyond_stuck_spot] Le robot se bloque sur le chemin.
    [too_few_visits] Le chemin est libre, mais les trajets du robot y mènent trop rarement.
    [too_little_time] Toute la pelouse se remplit comme il faut ; il lui faut plus d’heures.
   *[undetermined] Cet enregistrement ne montre pas pourquoi.
}
suggestion = { $value ->
    [guide_run] Poser une ligne de guidage
    [zone_move] Déplacer une zone d’exclusion
    [zone_shrink] Réduire une zone d’exclusion
    [zone_add] Ajouter une zone d’exclusion
    [more_hours] Travailler plus longtemps
   *[boundary_shift] Déplacer la limite
}
suggestion-inline = { $value ->
    [guide_run] poser une ligne de guidage
    [zone_move] déplacer une zone d’exclusion
    [zone_shrink] réduire une zone d’exclusion
    [zone_add] ajouter une zone d’exclusion
    [more_hours] travailler plus longtemps
   *[boundary_shift] déplacer la limite
}
noise-source = { $value ->
    [station_scatter] dispersion à l’arrêt, à la station
    [rest_scatter] dispersion à l’arrêt, ailleurs
    [driving_roughness] irrégularité de la trajectoire en roulant
    [device_card] carte d’appareil du récepteur
    [stated] les réglages
    [receiver_claim] annonce du récepteur lui-même
    [dilution_of_precision] géométrie des satellites (DOP) multipliée par une erreur de distance habituelle
   *[default] valeur par défaut indiquée, faute de mieux dans l’enregistrement
}
promise = { $value ->
    [kept] promesse tenue
    [broken] promesse non tenue
   *[cannot_tell] cet enregistrement ne permet pas de le dire
}
fix-quality = { $value ->
    [unknown] non indiquée
    [autonomous] satellites seuls
    [differential] différentiel
    [precise] service précis
    [rtk_fixed] RTK fixe
    [rtk_float] RTK flottant
    [estimated] à l’estime
    [manual] saisi à la main
    [simulated] simulateur
   *[other] code inconnu
}
pocket-change = { $value ->
    [mended] réglée
    [better] mieux
    [new] nouvelle
   *[unchanged] inchangée
}
out-of-reach = { $value ->
    [edge] une bande le long du bord ou un coin : le robot fait demi-tour avant que le disque n’y soit
   *[cut_off] coupé du reste par un couloir trop étroit, ou sans aucun accès
}
presence = { $value ->
    [came] seulement plus tard : avant, le robot roulait à cet endroit
    [went] seulement au début : depuis, le robot roule à cet endroit
    [came_and_went] un certain temps : avant et depuis, le robot a roulé à cet endroit
   *[throughout] tout le temps
}
way-home = { $value ->
    [guide_run] le long d’une ligne de guidage
    [boundary] le long de la limite
   *[straight] tout droit à travers la pelouse
}
lower-cut = { $value ->
    [yes] oui
    [not_yet] pas encore
   *[cannot_tell] cet enregistrement ne permet pas de le dire
}
growth-source = { $value ->
    [settings] d’après les réglages
   *[temperature] d’après la température moyenne
}
failure-reason = { $value ->
    [unreadable] illisible
    [damaged] endommagé
    [clock] horloge
    [plan] plan
    [settings] réglages
    [analysis] analyse
    [time] trop long
    [memory] mémoire insuffisante
    [died] interrompu
   *[pieces] en morceaux
}
fit-figure = { $value ->
    [visited_fraction] pelouse parcourue, %
    [path_m] longueur parcourue, { $unit }
    [visits_map_correlation] carte des passages, corrélation avec la moyenne des essais simulés
    [leg_m] ligne droite entre deux demi-tours, médiane, { $unit }
   *[revisit_path_m] distance parcourue entre deux passages à un endroit, médiane, { $unit }
}

## Points de blocage

stuck-came = Le plus souvent, il arrivait en roulant direction { $course_deg }.

## page : résumé

count-pocket = { $count ->
    [one] { $count } poche
   *[other] { $count } poches
}
count-area = { $count }, { $area }
about-more-driving-are = Il faut encore environ { $hours } de roulage.
driven-over-percent-area = { $percent } des { $area } ont été parcourus.
driven-over-percent-area-range = { $percent } des { $area } ont été parcourus ({ $range }, avec une probabilité de 90 %).
lost-at = { $time } perdues à { $id }
suggestion-by = { $value ->
    [guide_run] Poser une ligne de guidage de { $length }
    [zone_move] Déplacer une zone d’exclusion de { $length }
    [zone_shrink] Réduire une zone d’exclusion de { $length }
    [zone_add] Ajouter une zone d’exclusion de { $length }
    [more_hours] Travailler plus longtemps de { $length }
   *[boundary_shift] Déplacer la limite de { $length }
}
nine-ten-logs-pocket = Neuf essais simulés sur dix : { $range_2 } de la poche avec la modification, { $range } si rien ne change.{ $more ->
    [0] { "" }
    [one] { " " }Encore { $more } modification plus bas.
   *[other] { " " }Encore { $more } modifications plus bas.
}
let-run-on-after = Laissez-le continuer. Après { $hours } de roulage en tout, ce qui reste nu ne s’explique plus par la malchance.
luck-leaves-such-gap = Probabilité que le hasard seul laisse un vide comme { $id } : { $chance }.
sure-not-driven-over = Sûr à { $percent } que { $id } n’a pas été parcourue
sure-change-helps = Sûr à { $percent } que { $id } aide
change-brings-its-gain = Dans cette part des essais simulés, la poche y a gagné et la prévision s’est vérifiée.
none-it-shows = Rien que cet enregistrement puisse montrer
how-much-driven-over = La part parcourue dépend de la largeur du disque de coupe, qui n’a pas été donnée ; le tableau pour chaque largeur est plus bas.
not-counted = Non compté
outline-drawn-from-log = Le contour a été dessiné d’après l’enregistrement lui-même, ses bords justes à { $error } près environ : la pelouse dont le robot ne s’est jamais approché n’est pas comptée.
asked-about = { $count }, { $area } en tout : le robot y a fait demi-tour de plusieurs côtés sans jamais entrer. Massifs, arbres, bassins, ou pelouse derrière quelque chose ? Non compté dans la pelouse.
visit = Visite :
quote-open = «{ " " }
quote-close = { " " }»
asked-place = L’endroit signalé
asked-row = Parcouru { $visits }. Dernière fois : { $last } ; en général { $due }.
asked-row-never = Parcouru { $visits }.
asked-mark = { $id }, endroit signalé : { $said }
asked-visits = { $number } fois dans cet enregistrement ({ $low } à { $high })
asked-visits-beside = { $visits } ; la pelouse { $mean } fois en moyenne
asked-due = toutes les { $hours } de roulage
walk-first-hint = longez d’abord à pied le bord près de { $place } : sur { $length }, le robot n’y a fait demi-tour nulle part
walk-first = Longez d’abord à pied le bord près de { $place } : sur { $length }, le robot n’y a fait demi-tour nulle part.
nothing-needs-reason-again = Rien ne demande d’explication
this-log-cannot-tell = Cet enregistrement ne permet pas de le dire
not-by = Pas par hasard
change-nothing-garden-on = Ne changez rien au jardin sur la foi de cet enregistrement.
measure-width-cutting-disc = Mesurez la largeur du disque de coupe et refaites le compte.
walk-round-lawn-with = Faites le tour de la pelouse à pied avec l’enregistreur et faites-en un plan : ce qui se trouve au-delà du trajet ne se voit pas dans l’enregistrement.
no-ground-left-out = Le hasard explique chaque vide qui est resté.
one-count-no-interval = Un seul compte, pas d’intervalle
lawn-driven-over-with = de la pelouse parcourus, avec une probabilité de 90 %.

## terminal : mod

count-smaller-pocket = { $count ->
    [one] { $count } poche plus petite
   *[other] { $count } poches plus petites
}
count-place = { $count ->
    [one] { $count } endroit
   *[other] { $count } endroits
}
count-time = { $count } fois
at-cm = { $percent } à { $width }
depends-on-cutting-width = dépend de la largeur de coupe, qui n’a pas été donnée : { $list }
pockets-from = poches oubliées à partir de { $length } de large ({ $area })
log-good-enough-can = L’enregistrement est assez bon : il peut montrer les { $smallest }.
log-too-short-its = L’enregistrement est trop court : ses positions sont bonnes, mais la malchance seule peut laisser des poches jusqu’à { $length } de large ({ $area }).
log-not-good-enough = L’enregistrement n’est pas assez bon : il ne peut montrer que les { $smallest }.
also-said = Aussi : { $said }
lawn-percent-number-area = { $percent } de la pelouse, { $number } sur { $area } ({ $interval })
missed-area = oublié { $area }
not-yet = pas encore { $area }
without-evidence = sans indices { $area }
none-told = cet enregistrement ne permet pas de le dire
none-known = rien à l’intérieur du contour dessiné ; ce qui se trouve au-delà, cet enregistrement ne permet pas de le dire
none-known-narrower = rien à partir de { $width } de large à l’intérieur du contour dessiné ; les poches plus étroites et ce qui se trouve au-delà, cet enregistrement ne peut pas les montrer
none-narrower = rien à partir de { $width } de large ; les poches plus étroites, cet enregistrement ne peut pas les montrer
none-but-luck = rien ; le hasard explique les vides
none-shown-unseen = rien ne se montre, mais { $area } sont sans indices : cet enregistrement ne permet pas de le dire
smaller-gaps = vides plus petits { $area }
of-id = { $id } { $share } de { $area }
all-luck-does-not = { $count }, { $area } en tout, plus que le hasard n’explique
and-more = et encore { $more }
also-possible = aussi possible : { $join }
decided-after-driving-all = décidé après { $hours } de roulage en tout
luck-still-explains-them = { $count }, { $area } : le hasard les explique encore ; { $decide }
lost-count = { $count }, { $time } perdues
lost-within = { $count }, { $time } perdues, à moins de { $length } de { $place }
more-spots = et encore { $spots }
ladder-title = Plus petit et plus grand
ladder = Selon la taille, moyenne d’enregistrements simulés : { $list }.
rung = { $size } : { $fraction }{ $lawn ->
    [none] { "" }
   *[other] , pelouse { $lawn }
}{ $chosen ->
    [yes] { " " }(celle-ci)
   *[no] { "" }
}
change-set = Ensemble, d’abord ce qui apporte le plus de surface pour le travail, chacun compté après les précédents : { $list }. Sur la pelouse, { $lawn } sont alors parcourus.
set-step = { $id } { $area } de plus ({ $fraction } de ces poches)
visits-title = { $count ->
    [one] { $count } visite dans ce jardin
   *[other] { $count } visites dans ce jardin
}
visits-when = Quand
visits-who = Qui
visits-machine = Robot
visits-said = Ce que le client a dit
visits-changed = Ce qui a été changé
visits-sure = Décidé
visits-pocket = { $id } { $before } → { $after }
visits-decided = { $decided ->
    [none] { $more ->
        [none] pas décidé
        [1] pas décidé : encore une nuit comme celles-ci
       *[other] pas décidé : encore { $more } nuits comme celles-ci
    }
    [beyond_luck] décidé
    [1] décidé dès la première nuit
   *[other] décidé après { $decided } nuits
}
nights-differ = Voilà de combien des enregistrements isolés diffèrent : neuf jardins sur dix sont finis après { $hours } de roulage.
pocket-this-log-if = Poche : { $percent } dans cet enregistrement, { $fraction } si rien ne change, { $fraction_2 } avec la modification{ $sure ->
    [none] { "" }
   *[other] { " " }; sûr à { $sure }
}.{ $more ->
    [0] { "" }
    [one] { " " }Et encore { $more } modification.
   *[other] { " " }Et encore { $more } modifications.
}
lawn-within-percent-days = { $percent } de la pelouse en { $days } : { $word }{ $probability ->
    [none] { "" }
   *[other] { " " }(probabilité qu’elle soit tenue : { $probability })
}
one-every-driven-fixes = { $fixes }, un toutes les { $time } ; { $path } parcourus en { $time_2 }{ $silent ->
    [none] { "" }
   *[other] , { $silent } sans relevés
}
log-too-short-positions = L’enregistrement est trop court : les positions sont bonnes, mais il ne montre encore rien d’une pelouse.
log-not-good-enough-shows = L’enregistrement n’est pas assez bon : il ne montre rien d’une pelouse.
not-looked-for-without = pas cherché, faute de largeur de coupe
after-how-many-hours = le nombre d’heures nécessaires pour décider ne peut pas être donné

## terminal : examen

count-fix = { $count ->
    [one] { $count } relevé
   *[other] { $count } relevés
}
count-fix-repeats-the = { $count ->
    [one] { $count } relevé répète la position précédente
   *[other] { $count } relevés répètent la position précédente
}
around-lat = autour de { $lat_deg }, { $lon_deg }
east-by = { $length } vers l’est sur { $length_2 } vers le nord, { $middle }
made-by = { $format }, créé par { $id }
its-bytes = { $percent } de ses octets
from-count = { $count } tirés de { $share }{ $resolution ->
    [none] { "" }
   *[other] , par pas de { $resolution }
}
first-on = { " " }; d’abord à la ligne { $count }
first-on-line = { " " }; d’abord à la ligne { $count } : { $id }
to-id = { $id } à { $id_2 }
one-every = { $fixes }, un toutes les { $time }
driving-time = roulage { $time }
at-station = à la station { $time }
standing-elsewhere = à l’arrêt ailleurs { $time }
silent-time = silence { $time }
from-after-start-further = { $time } à partir de { $time_2 } après le début, { $length } plus loin
shorter-value = { " " }; et { $value } plus courts
middle-below-number-number = { $number } en valeur médiane, 95 % au-dessous de { $number_2 }
last-digit-count-again = { $count } jusqu’au dernier chiffre
from-fix-fix-length = { $length } d’un relevé à l’autre
drifting-length = { $length } de dérive{ $time ->
    [none] { "" }
   *[other] { " " }sur environ { $time }
}
standard-deviation-per-axis = { $join } (écart-type par axe)
from-figures = { $figures } ; source : { $word }
local-metres-no-place = en mètres locaux, sans coordonnées géographiques
no-bytes = aucun octet
no-dates = sans dates
not-known = inconnu
dark-of-driven = { $dark } sur { $driven } de roulage{ $between } : hérissons et autres petits animaux sont alors dehors
in-the-dark = Dans l’obscurité : { $said }.
dark-between = { "" } (crépuscule civil le soir { $dusk }, le matin { $dawn }{ $zone })

## terminal : comparaison

count-night = { $count ->
    [one] { $count } nuit
   *[other] { $count } nuits
}
both-plans-have-area = { $area } communs aux deux plans
built-as = { $value ->
    [suggested] réalisée comme proposé
    [otherwise] réalisée autrement
   *[nothing] non réalisée comme proposé
}
predicted-for = { $built } ; prédit pour { $id } : { $percent } ({ $interval }), mesuré { $percent_2 } : { $held }
driving-percent = { $percent } ({ $interval }){ $equal ->
    [none] { "" }
   *[other] , { $equal } à heures égales
} ; { $count }, { $hours } de roulage
smaller-pockets = et { $pockets } plus petites

## page : avant de creuser

plan-on-paper = Un plan, essayé sur le papier
reaches-everything = Avec ce plan, le robot va partout.
leaves-parts = { $count ->
    [one] { $count } partie de la pelouse, { $area } en tout, est inaccessible.
   *[other] { $count } parties de la pelouse, { $area } en tout, sont inaccessibles.
}
promise-needs = { $percent } en { $count ->
    [one] { $count } jour
   *[other] { $count } jours
}, cela demande environ { $hours } de travail par jour.
promise-not-kept = { $percent } en { $count ->
    [one] { $count } jour
   *[other] { $count } jours
}, cela ne s’atteint pas seulement avec plus d’heures.
typical-run = La pelouse telle qu’un essai simulé typique la laisse après { $count ->
    [one] { $count } jour
   *[other] { $count } jours
} de { $hours } de travail chacun. Le terrain plus foncé a été parcouru plus souvent ; le terrain hachuré a été oublié.
count-day = { $count ->
    [one] { $count } jour
   *[other] { $count } jours
}
nine-in-ten-gardens = dans neuf essais sur dix, { $low } à { $high }
give-width-for-days = Indiquez la largeur de coupe du disque (machine.cut_width_m), et vérifiez qu’il y a de la place pour le robot.
trim-by-hand = { $area } le long des bords et dans les coins restent hauts : coupez-les à la main
boundary-with-slack = autour de la pelouse et de ses zones ; les liaisons entre elles et le mou dans les coins s’y ajoutent
no-way-through = pas de passage possible
done-after = { $share } des essais après { $count ->
    [one] { $count } jour
   *[other] { $count } jours
}
share-of-driving = La part est celle des sorties sans ligne de guidage ; à 100 %, chaque mètre carré derrière le couloir est parcouru aussi souvent qu’ailleurs. La surface parcourue vient des essais simulés, lignes de guidage comprises.
from-middle = milieu à { $place }
assumed-machine = Un robot qui fait demi-tour quand son milieu est { $setback } avant le bord et qui roule tout droit à { $speed_mps } jusqu’à ce qu’il tourne au hasard. Réglez machine.past_boundary_m, machine.speed_mps et les horaires de travail sur les valeurs du vôtre.
assumed-level = Terrain plat et sec : le plan n’a pas d’altitudes ; les pentes et les sols mous ne sont donc pas dans la prévision.

## page : à remettre

not-driven-over-up = Non parcouru : { $area }, jusqu’à { $length } de large
mower-stood-here-all = { $times ->
    [0] Le robot ne s’est jamais arrêté ici, { $time } en tout
   *[other] Le robot s’est arrêté ici { $times } fois, { $time } en tout
}
pocket-driven-over-this = { $why } De la poche, { $percent } ont été parcourus dans cet enregistrement ; sont attendus { $fraction } si rien ne change, { $fraction_2 } avec la modification.
promised-lawn-within-percent = Promis : { $percent } de la pelouse en { $days }. { $word }.
more-on-page-on = Encore { $left_out } sur la page à l’écran.

## page : faits du terrain

count-way = { $count ->
    [one] { $count } chemin
   *[other] { $count } chemins
}
about-count = { $count } sur { $number } environ
usually-out-began-along = En général { $time } dehors{ $charging ->
    [none] { "" }
   *[other] { " " }; { $charging } à la station entre deux sorties
}. { $count ->
    [one] { $count } a commencé le long d’une ligne de guidage.
   *[other] { $count } ont commencé le long d’une ligne de guidage.
}
brackets-usual-time-join = { $join } ; entre parenthèses, la durée habituelle.
day-hours = { $hours } par jour
between-first-departure-last = Entre le premier départ et le dernier retour, dont { $hours } de roulage. { $said }
growth-a-day = { $length } par jour
tenth-lawn-steeper-steepest = Un dixième de la pelouse est plus raide. La partie la plus raide se trouve à { $place }.
not-logged = non enregistré
more-than = plus que des heures

## page : comparaison

before-after = Avant et après

found-when = { $value ->
    [before] avant
   *[after] après
}

## page : faits

about-number = environ 1 sur { $number }
long-driven-over-times = { $length } de long, parcourue { $number } fois plus souvent que la moyenne de la pelouse, jusqu’à { $count }.
wire-length = { $length } de fil
shift-length = un déplacement de { $length }
more-day = { $hours } de plus par jour
less-new-than-chance = trouve moins de terrain nouveau que ne le ferait le hasard (efficacité { $figure })
new-as-chance = trouve autant de terrain nouveau que le ferait le hasard (efficacité { $figure } ; 100 % veut dire aucun recouvrement)
more-new-than-chance = trouve mieux le terrain nouveau que le hasard (efficacité { $figure } ; 100 % veut dire aucun recouvrement)
hardly-twice = ne passe presque jamais deux fois au même endroit (efficacité { $figure })
reach-both = 95 % après { $first }, 99 % après { $second } de roulage
reach-95 = 95 % après { $after } de roulage, 99 % hors d’atteinte
reach-99 = 99 % après { $after } de roulage
reach-none = 95 % et 99 % hors d’atteinte
outings-sent-along-percent = { $percent } des sorties la suivent
half-lawn-driven-over = La moitié de la pelouse a été parcourue au moins aussi souvent ; la moyenne est de { $number }.
half-waits-are-shorter = La moitié des attentes sont plus courtes. Neuf sur dix : { $interval_h }. 99 sur 100 : { $interval_h_2 }.
less-than = moins de 1 sur 10 000
cannot-be = indéterminé
not-counted-again = non compté
pocket-again = la poche
whole-lawn = toute la pelouse
longer-than-this-log = plus que cet enregistrement
not-told-apart-yet = pas encore distingués

## page : page

count-log-file = { $count ->
    [one] { $count } fichier d’enregistrement
   *[other] { $count } fichiers d’enregistrement
}
last-visit-longer-ago = Dernier passage il y a plus de { $hours } à la fin de l’enregistrement
missed-area-again = oublié, { $area }
stuck-lost = blocage, { $time } perdues
not-yet-area = pas encore, { $area }
not-yet-heading = Pas encore : { $count } où d’autres heures décideront
to-start = { $start } à { $end } ({ $zone_words })
driving-from = { $span }. { $driven } de roulage, d’après { $logs }.
without-evidence-area = { $area } sans indices. { $said }
outside-boundary-for-after = { $length } en dehors de la limite pendant { $time }, { $time_2 } après le début ; { $came_back ->
    [yes] il est revenu de lui-même
   *[no] il n’est pas revenu dans cet enregistrement
}.
silence-after-start-may = { $time } de silence { $time_2 } après le début, { $place } : il a pu s’arrêter là, pendant ce temps au plus.
machine-efficiency = Le robot { $efficiency }.
probability-kept-percent-again = Probabilité qu’elle soit tenue : { $percent }.
lawn-within-percent-days-probability = { $percent } de la pelouse en { $days }. { $probability }
lawn-report = Rapport sur la pelouse
times-driven-over-darker = Nombre de passages (plus foncé : plus souvent)
less-than-twice = moins de deux fois
usual-time-between-two = Temps habituel entre deux passages (plus foncé : plus souvent)
time-again = dans les temps
charging-station = station de charge
without-dates = sans dates
out-reach = hors d’atteinte

## page : méthode

count-outing = { $count ->
    [one] { $count } sortie
   *[other] { $count } sorties
}
lawn-counted-squares-this = La pelouse a été comptée en carrés de ce côté ; à lui seul, cela change le résultat d’environ { $number } point.
standard-deviation-per-axis-from = Écart-type par axe ; source : { $word }.
plan-offset = { $east } est, { $north } nord, tourné de { $turned }°
plan-moved-by-this = Le plan a été déplacé d’autant pour correspondre à l’enregistrement ; connu à { $length } près.
known-within-no-more = Connu à { $length } près : pas plus que le hasard, le plan reste donc comme il est dessiné.
from-one = D’après { $fixes }, un toutes les { $time }.
while-driving = En roulant ; { $outings }.
drift-length = { $length } de dérive
line-count = ligne { $count }
default-error = erreur par défaut
from-plan = d’après le plan
from-log-itself-again = d’après l’enregistrement lui-même
number-outings-not-known = nombre de sorties inconnu

## matin

count-garden = { $count ->
    [one] { $count } jardin
   *[other] { $count } jardins
}
count-thing = { $count ->
    [one] { $count } échec
   *[other] { $count } échecs
}
your-delivery = { $gardens ->
    [one] { $gardens } jardin sur { $count } n’a rien envoyé
   *[other] { $gardens } jardins sur { $count } n’ont rien envoyé
} depuis le { $since } : cela vient de votre acheminement (envoi, cartes, réseau), pas des jardins.
is-mended = { $garden } : { $alarm }, depuis le { $since }, est réglé depuis le { $mended }.
is-known = { $said ->
    [none] { "" } (connu)
   *[other] { "" } (connu : { $said })
}
alarm = { $value ->
    [missed_pocket] terrain oublié
    [stuck_spot] se bloque
    [lost_hours] roule moins d’heures
    [less_visited] moins parcouru
    [absent] ne dit plus rien
    [receiver_worse] récepteur moins bon
    [silences] longs silences
   *[promise] promesse non tenue
}
bring = { $value ->
    [missed_pocket] Apportez le plan, un mètre ruban et des piquets
    [stuck_spot] Apportez une bêche, du gazon en plaques ou des planches
    [lost_hours] Apportez une batterie et du nettoyant pour contacts
    [less_visited] Apportez des lames de rechange et la page du jardin
    [absent] Apportez un enregistreur chargé et une carte
    [receiver_worse] Apportez un récepteur et un câble d’antenne
    [silences] Apportez un récepteur et un enregistreur chargé
   *[promise] Apportez les horaires de travail, pour en ajouter en journée
}
night-visit-with-log = Nuit du { $id } : { $gardens } sur { $count } à visiter, { $with_log } avec un enregistrement{ $resting ->
    [0] { "" }
   *[other] , { $resting } au repos
}, { $count_2 }

## mots/comparaison

points-fraction = { $fraction } points
interval-points = { $points } (intervalle à 90 % : { $low } à { $high } points)
interval-not-worked-out = { $points } (sans intervalle)
points-from-night-night = { $number } points d’une nuit à l’autre
standard-deviations-points-from = écarts-types : { $number } points dus aux erreurs de position, { $nightly }
to-percent = { $percent } ({ $number } à { $percent_2 })
how-nights-differ-cannot = trop peu de nuits pour dire comment elles diffèrent

## terminal : conseils

log-driving-more-give = enregistrez encore { $hours } de roulage et donnez tous les enregistrements ensemble ; ce qui n’est pas encore décidé le sera alors
promise-give-logs-as = la promesse porte sur { $days } : donnez ensemble les enregistrements d’autant de jours
measure-width-cutting-disc-give = mesurez la largeur du disque de coupe et donnez-la avec --cut-width 22cm
walk-once-round-lawn = faites une fois le tour de la pelouse à pied avec un récepteur ; tussock plan from-walk en fait un plan, et --plan le prend en compte
mended-plan-is-written = analyse --write-plan FILE écrit le plan dessiné tel que l’enregistrement montre le jardin

## gpx

missed-widest = Oublié : { $area }, au plus large { $length }. { $said }
stuck-lost-within = Blocage : { $count }, { $time } perdues, à moins de { $length }. { $said }
suggested-guide = Ligne de guidage proposée. { $said }
tussock-id = tussock { $id }
tape-figures = { $figures } Mètre ruban : { $tape }.
ground-mower-left-out = Terrain que le robot a laissé de côté, et endroits où il a perdu du temps.

## Contrôles

checks-hold = { $held ->
    [0] { $all ->
        [one] Le seul contrôle ne concorde pas
       *[other] Aucun des { $all } contrôles ne concorde
    }
    [1] { $all ->
        [one] Le seul contrôle concorde
       *[other] 1 contrôle sur { $all } concorde
    }
   *[other] { $held } contrôles sur { $all } concordent
}
checks-say = { $sum } ; { $fails }
check = { $value ->
    [fixes_left_out] Relevés mis de côté, face à leur prédiction
    [halves_of_log] Une moitié de l’enregistrement, face à l’autre
    [plan_place] Place du plan, face aux demi-tours
    [turns_at_edges] Demi-tours, face à chaque bord du plan
    [drawn_garden] Un jardin dessiné à partir du robot ajusté, face à l’enregistrement
    [cell_sum] Les carrés de la carte, face au chiffre principal
    [as_logged] Tel qu’enregistré, face au corrigé
    [two_roads] La trajectoire ajustée, face au compte corrigé tel qu’enregistré
    [silences] Silences, face à ce qui compte comme oublié
   *[shown_ground] Ce que l’enregistrement est dit montrer, face à la carte
}
check-fails = { $value ->
    [fixes_left_out] les relevés se trompent plus qu’annoncé
    [halves_of_log] les deux moitiés de l’enregistrement sont décalées l’une par rapport à l’autre
    [plan_place] les demi-tours ne se rassemblent pas aux bords du plan
    [turns_at_edges] les demi-tours ne se trouvent pas sur les bords du plan
    [drawn_garden] le robot ne roule pas comme son modèle
    [cell_sum] la somme de la carte ne donne pas le chiffre principal
    [as_logged] le compte tel qu’enregistré contredit le compte corrigé
    [two_roads] deux façons de compter se contredisent
    [silences] le terrain oublié a pu être parcouru pendant un silence
   *[shown_ground] la largeur qui se voit a été relevée à celle du terrain indécis
}
check-fails-edge = les demi-tours ne se trouvent pas sur le bord { $edge_deg }
check-is = { $value ->
    [fixes_left_out] { $number } fois l’erreur annoncée
    [halves_of_log] décalage de { $length }
    [plan_place] { $percent } des demi-tours expliqués
    [turns_at_edges] { $number } fois l’écart maximal admis pour un bord
    [drawn_garden] écart des lignes droites de { $number } (logarithme naturel de leur rapport)
    [cell_sum] écart de { $points } points
    [as_logged] écart de { $points } points
    [two_roads] écart de { $number } écarts-types
    [silences] une probabilité de { $percent } au plus
   *[shown_ground] { $length }
}

## page : éléments de chaque page

show-on-map-id = montrer sur la carte, { $id }
show-on-map = montrer sur la carte
map-nearer = plus près
map-farther = plus loin
map-whole = toute la pelouse
map-move = Déplacer la carte
in-short = En bref
foot-driven-over = « Parcouru », c’est ce que les positions peuvent montrer ; si l’herbe y a été coupée, c’est à l’œil d’en juger.

## page : les réponses

ask-log = L’enregistrement est-il assez bon ?
ask-missed = Qu’est-ce qui a été oublié ?
ask-why = Pourquoi ?
ask-change = Que changer ?
ask-sure = À quel point est-ce sûr ?
log-yes = Oui
log-too-short = Les positions oui, mais trop court
log-no = Non
part-visited = parcouru
part-missed = oublié
part-not-yet = pas encore
part-unseen = non observé
part-sliver = vides plus petits
change-log-again = D’abord enregistrer à nouveau
change-look = Aller voir sur place
change-give-width = Indiquer la largeur de coupe
change-nothing-yet = Rien pour l’instant
change-give-outline = D’abord donner le contour
change-nothing = Rien
others-end = { $list }.

## page : rapport

title-report = { $title } : là où le robot n’est pas passé
picked-more = tout ce que l’on en sait
picked-close = fermer
to-answers = Aller aux réponses
where-not-been = Là où le robot n’est pas passé
map = Carte
what-map-shows = Ce que montre la carte
ground = Terrain
ground-none = aucun
map-drawn-from = Dessinée d’après les positions enregistrées : elle montre le terrain parcouru.
map-placeless = L’enregistrement n’a pas de place sur la Terre ; la carte est posée sur ses propres axes.
map-moves = Faites glisser pour déplacer ; pincez, double-cliquez ou utilisez + et − pour vous rapprocher ; flèches du clavier quand la carte est sélectionnée.
places = Endroits
missed-and-why = Ce qui a été oublié, et pourquoi
missed-lead = Terrain resté nu, où le hasard n’aurait guère laissé un vide aussi large. Rejoignez le milieu de chacun avec deux mètres rubans.
up-to-wide = jusqu’à { $length } de large
see = Voir
evidence-and-others = Ce qui parle pour et contre, et ce que cela peut être d’autre
evidence = Ce qui parle pour et contre
how-sure-that = À quel point c’est sûr
rank-first = en premier
rank-other = aussi possible
evidence-for = pour
evidence-against = contre
middle-at = Milieu à { $place }.
change-and-gain = Que changer, et ce que cela apportera
change-lead = Prédit en faisant rouler un robot simulé, ajusté à cet enregistrement, avec et sans la modification. Le point est ce que montreront la plupart des nuits prises une à une ; neuf sur dix se trouvent entre les bouts du trait.
for-pockets = pour
needs = Il faut { $list }.
together-with = Avec { $list }.
driven-over = Parcouru
in-this-log = dans cet enregistrement
if-nothing-changes = si rien ne change
if-changed = avec la modification
predictions-of = Prévisions de { $id }
gained-in-runs = La poche y a gagné et la prévision s’est vérifiée dans { $percent } des essais simulés.
gain-shows-after = Dans la plupart d’entre eux, le gain se voit après { $hours } de roulage.
where-stuck = Où il s’est bloqué
stuck-lead = Endroits loin de la station où le robot a perdu du temps à plusieurs reprises.
time-lost = { $time } perdues
stuck-within = À moins de { $length } de { $place }.
drove-through = Il y est passé { $count } fois sans se bloquer.
not-yet-lead = Terrain nu que le hasard explique encore. Il ne demande aucune modification, seulement d’autres heures avant que l’on puisse en dire quelque chose.
head-pocket = Poche
head-area = Surface
head-widest = Au plus large
head-chance = Probabilité par hasard
head-decided = Décidé après
head-where = Où
not-yet-table = Pas encore
hours-are-driving = Les heures sont des heures de roulage depuis le début de cet enregistrement.
passages-and-ways = Couloirs, terrain hors d’atteinte et chemins de retour
passages = Couloirs
head-passage = Couloir
head-width = Largeur
head-free = Libre pour le milieu du robot
head-length = Longueur
head-behind = Pelouse derrière
head-crossed = Traversé
head-share-behind = Part de sa juste trajectoire derrière
passage-shut-word = fermé
crossings-are = Les traversées sont des changements de côté ; « sur » : ce que ferait, sur la même trajectoire, un robot qui se déplace librement.
out-of-disc = Hors d’atteinte du disque
turns-inside = Demi-tour en deçà de la ligne
turns-inside-means = Distance habituelle entre le milieu du robot et la ligne à laquelle il fait demi-tour.
outings = Sorties
ways-home = Chemins de retour
drawing-differs = En quoi le dessin diffère-t-il du jardin ?
plan-would-settle = Qu’est-ce qu’un plan permettrait de trancher ?
islands-or-lawn = Des îlots, ou de la pelouse hors d’atteinte ?
islands = Îlots
head-island = Îlot
in-no-plan = Sur aucun plan
in-no-plan-lead = Choses qui ont fait faire demi-tour au robot à l’intérieur de la pelouse.
head-thing = Chose
head-turns = Demi-tours à son contact
head-across = Largeur, environ
head-stood = Présence
things-in-no-plan = Choses sur aucun plan
hours-and-grass = Horaires de travail et herbe
works = Travaille
allowed = Permis
allowed-means = Horaires de travail dans les réglages, moyenne sur la semaine.
promise-needs-label = La promesse demande
promise-needs-means = Heures de travail à cette allure ; aucun horaire ne suffirait là où une partie de la pelouse ne se remplit pas du tout.
lower-blades = Abaisser les lames ?
growth = Pousse
longest-wait = Plus longue attente admise
one-third-rule = Selon la règle du tiers : ne jamais couper plus d’un tiers du brin d’herbe en une fois.
slope = Pente
also-seen = Vu aussi
worn-line-is = Trace d’usure :
stray-is = Échappée :
possible-stop-is = Arrêt possible :
paper-what = Que regarder, et que faire
paper-no-place = Aucun endroit ne demande à être vu : le hasard explique chaque vide qui est resté, et le robot ne s’est bloqué nulle part.
paper-changes = Modifications proposées
stills-title = Comment la pelouse s’est remplie
stills-lead = Six cartes, chacune après un nouveau sixième du roulage.
still-new = nouveau depuis la carte précédente
still-before = parcouru avant
not-driven-over = non parcouru
safety = Sécurité
paper-stop = Arrêtez le robot et désactivez-le avant de le toucher.
paper-dig = Faites repérer les câbles et conduites enterrés avant de creuser pour poser du fil. Demandez ce que protège une zone avant de la déplacer. Ajoutez les heures en journée, pas la nuit.
manual-first = Les règles locales et la notice du robot passent avant tout.
paper-keep-off = Tenez les enfants et les animaux domestiques hors de la pelouse pendant que le robot travaille. Gardez les lignes à distance des pentes et des bords de l’eau. Les travaux sur le réseau électrique sont réservés à un électricien agréé.
paper-looked-at = Examiné le
paper-signed = Par, signature
paper-next-step = Prochaine étape convenue
how-fast = À quelle vitesse la pelouse s’est remplie, et combien de fois elle a été parcourue
ground-gained = Terrain gagné au fil du roulage
line-this-log-interval = cet enregistrement, avec son intervalle à 90 % à la fin
line-this-log = cet enregistrement
line-random = recherche au hasard
line-no-overlap = aucun recouvrement
line-promised = promis
random-law-means = Un robot qui va au hasard suit la loi de la recherche aléatoire (Koopman 1956) : plus il en a fait, plus il tombe sur du terrain qu’il connaît. Celui qui ne passerait jamais deux fois au même endroit suivrait la ligne sans recouvrement.
pattern-efficiency = Efficacité du parcours
to-95 = Jusqu’à 95 % de la pelouse
to-95-means = Heures de roulage à cette allure ; hors d’atteinte là où une partie de la pelouse ne se remplit pas du tout.
to-99 = Jusqu’à 99 %
to-99-means = La même chose, à un centième près.
the-promise = La promesse
how-often = Combien de fois chaque endroit a été parcouru
bars-mean = Chaque barre est la partie de la pelouse parcourue ce nombre de fois. La barre hachurée n’a pas été parcourue.
waits-mean = Part des attentes entre deux passages qui sont plus courtes ; la dernière attente de chaque endroit, inachevée, est comptée comme inachevée.
visits-typical = Passages, en général
evenness = Régularité (Gini)
evenness-means = 0 serait le même nombre de passages partout, 1 tous les passages au même endroit.
time-between = Temps entre deux passages
overdue-label = En retard
overdue-means = Depuis son dernier passage, cette partie de la pelouse a poussé au-delà de la règle du tiers.
hours-by-activity = Heures par activité
same-in-figures = La même chose en chiffres
activity-in-figures = Heures par activité, en chiffres
nights-not-drawn = { $count ->
    [one] { $count } nuit antérieure n’est pas dessinée.
   *[other] { $count } nuits antérieures ne sont pas dessinées.
}
nothing-claimed = Rien n’est affirmé sur le temps sans relevés.
each-lawn = Chaque pelouse à part
head-lawn = Pelouse
with-bracket = { $figure } ({ $more })
for-each-width = Parcouru, pour chaque largeur de coupe
how-counted = Comment le compte a été fait
of-the-log = Sur l’enregistrement : { $said }
cutting-width = Largeur de coupe
cutting-width-means = Celle des réglages. Un centimètre de plus compterait plus de terrain.
counting-square = Carré de comptage
realisations = Tirages
counted-once = Compté une fois, sur la trajectoire la plus probable ; l’erreur de position n’a pas encore été simulée.
counted-often = Autant de trajectoires probables ont été comptées, pour voir de combien l’erreur de position déplace le résultat.
as-logged = Tel qu’enregistré
as-logged-means = Ce que donneraient les relevés bruts reliés par des lignes droites. Pour comparaison seulement.
reachable = Accessible
reachable-means = La partie de la pelouse que le disque peut atteindre.
position-error = Erreur de position
beware = Attention
default-error-means = L’enregistrement ne donne aucun moyen de dire à quel point il est exact ; enregistrez une heure à la station pour le savoir.
plan-against-log = Plan face à l’enregistrement
outline = Contour
outline-from-plan = Pelouse, zones et obstacles tels que dessinés sur le plan.
outline-from-log = Le terrain au-delà du trajet le plus extérieur n’est pas compté ; aucun chiffre ne vaut donc ici pour toute la pelouse. Faites le tour à pied pour y remédier.
path = Trajectoire
usual-speed = Vitesse habituelle
beside-surveyed = L’enregistrement à côté d’une trajectoire levée
errors-surveyed = Erreurs par rapport à la trajectoire levée
head-error = Erreur
errors-mean = Latéral : jusqu’à l’endroit le plus proche de la trajectoire, positif à sa gauche. Longitudinal : en avance sur la place où le robot aurait dû être alors ; temps : de combien il est passé plus tard. Entre passages : de combien l’erreur latérale change d’un passage au passage voisin, en moins de 15 minutes (d’après ISO 12188-1). « Brut » désigne les relevés, « estimé » la trajectoire retrouvée derrière eux.
simulated-beside = Le robot simulé, à côté de l’enregistrement
predictions-made = C’est avec lui que sont faites les prévisions.
predictions-none = Aucune prévision n’est faite avec lui.
head-figure = Grandeur
head-in-log = Dans l’enregistrement
head-in-runs = { $count ->
    [one] Dans { $count } essai simulé
   *[other] Dans { $count } essais simulés
}
log-and-simulation = Enregistrement et simulation
figure-range = { $figure } ({ $low } à { $high })
log-files = Les fichiers d’enregistrement, et ce qui n’a pas servi
made-by-label = créé par
fixes-of = { $count ->
    [one] { $count } relevé de
   *[other] { $count } relevés de
}
not-used-of-file = Non utilisé dans ce fichier
head-not-used = Non utilisé
head-why = Pourquoi
head-first-at = D’abord à
everything-used = Tout ce qu’il contient a servi.
before-you-change = Avant de changer quoi que ce soit
stop-and-manual = Arrêtez le robot et désactivez-le avant de le toucher. Les règles locales et la notice du robot passent avant tout.
all-dangers = Tout ce que ces travaux ont de dangereux
danger-blades = Lames en mouvement.
danger-blades-means = Arrêtez le robot et désactivez-le avant de le toucher. Tenez les enfants et les animaux domestiques hors de la pelouse pendant qu’il travaille.
danger-logger = Pose d’un enregistreur.
danger-logger-means = Jamais sur le bouton d’arrêt, ni là où le robot détecte qu’il est soulevé ou qu’il bascule. Fixez-le à l’écart des lames.
danger-digging = Creuser pour poser du fil.
danger-digging-means = Faites d’abord repérer les câbles et conduites enterrés. Les réseaux privés ne sont pas signalés.
danger-slopes = Pentes et eau.
danger-slopes-means = Gardez la ligne bien en retrait des bords par-dessus lesquels le robot pourrait glisser.
danger-mains = Réseau électrique.
danger-mains-means = Les travaux sur l’alimentation de la station de charge sont réservés à un électricien agréé.
danger-night = Nuit.
danger-night-means = Ajoutez les heures en journée : la nuit, les hérissons et d’autres petits animaux sont dehors.
danger-zones = Zones.
danger-zones-means = Demandez à quoi sert une zone avant de la déplacer ou de la réduire. Elle peut protéger des racines, des câbles électriques ou des personnes.

## page : avant et après

title-compare = { $title } : avant et après
difference = Différence
more-than-before = Part de la pelouse parcourue en plus après qu’avant ; { $meaning }.
side-driven-over = { $side } : { $percent } parcourus
side-facts = { $interval }{ $equal ->
    [none] { "" }
   *[other] { " " }; { $equal } à heures égales
}. { $count }, { $hours } de roulage.
map-move-side = Déplacer la carte, { $side }
only-summary = Seul un résumé a été gardé ; il n’y a donc pas de carte.
compare-map-key = Hachuré : de ce côté, la plus grande partie de la poche n’a pas été parcourue. Contour en tirets : la plus grande partie l’a été. Le terrain plus foncé a été parcouru plus souvent ; les deux cartes ont la même échelle.
how-sure-difference = À quel point la différence est sûre
counted-on = Compté sur
counted-on-common = { $area } de pelouse communs aux deux plans.
lawn-only = { $when ->
    [before] { $area } n’étaient pelouse qu’avant
   *[after] { $area } ne sont pelouse que depuis
}
what-became = Ce qu’est devenue chaque poche
head-found = Trouvée
head-before = Parcouru avant
head-after = après
head-became = Ce qu’elle est devenue
pockets = Poches
show-on-both = { $id }, montrer sur les deux cartes
predicted-and-measured = Prédit et mesuré
predicted-measured = { $built ->
    [otherwise] Prédit pour ce qui a été réalisé { $predicted }, mesuré { $measured } : { $meaning }.
   *[other] Prédit { $predicted }, mesuré { $measured } : { $meaning }.
}
predicted = prédit
measured-after = mesuré après

## page : plan sur le papier

title-plan = { $title } : avant de creuser
before-digging = Avant de creuser
driven-over-after = Parcouru après { $days }
days = Jours
not-worked-out = pas calculé
lawn-to-cut = Pelouse à tondre
boundary = Limite
guide-runs = Lignes de guidage
guide-runs-none = aucune
out-of-reach-title = Hors d’atteinte
part-out-of-reach = { $area }, { $why } ; { $middle }
head-free-machine = Libre pour le robot
head-behind-it = Pelouse derrière
head-changes = Changements de côté par jour
head-share = Sa part du roulage
head-nine-tenths = Neuf dixièmes parcourus
weak-places = Points faibles, et pourquoi
would-mend = Ce qui les réglerait
as-planned = comme prévu
assumed-and-beware = Ce qui est supposé, et à quoi faire attention
foot-forecast = Une prévision tirée d’essais simulés : ce en quoi les vrais robots diffèrent se voit dans les premiers jours d’enregistrement.

## page : matin

title-morning = Jardins à visiter après la nuit du { $night }
morning-after = Le matin après la nuit du { $night }
gardens-to-visit = Jardins à visiter
count-muted = { $count } en sourdine.
gardens-in-order = Jardins, d’abord celui où une visite apporte le plus
head-garden = Jardin
head-last-nights = 15 dernières nuits
head-wrong = Ce qui ne va pas
head-since = Depuis
head-bring = Ce qu’il faut apporter
head-gain = Apporte
and-count-more = et { $count } de plus
known-bracket = (connu)
open-for = Ouvert depuis { $days }, à la nuit du { $night }.
lawn-of = Pelouse de { $area }.
driven-in-last = Parcouru en { $days }, à ce jour : { $percent } ; promis : { $promised }.
known-said = Connu : { $said }
known = Connu
head-night = Nuit
head-missed = Oublié
head-driving = Roulage
head-stuck = Bloqué
head-silent = Silence
nights-of = Nuits de { $name }
mended = Réglé
what-failed = Ce qui a échoué
failures = Échecs
head-what = Quoi
visit-brings = Une visite apporte autant de pelouse : celle qui serait parcourue chaque nuit et qui ne l’est pas.

## terminal : étiquettes des lignes (row-...), 12 lettres au plus, row-by-lawn, row-used, row-skipped et row-note 10 au plus ;
## têtes de colonnes (col-...), 7 au plus, col-id 3 au plus

row-driven-over = Parcouru
row-before = Avant
row-after = Après
row-difference = Différence
row-pockets = Poches
row-beware = Attention
# $id is G1 or M12.
row-change = Modif. { $id }
row-by-lawn = pelouses
row-asked-about = À préciser
row-missed = Oublié
plan-answer = Pelouse à tondre : { $area }, { $edge } de bord ; zones et obstacles sont retirés.
forecast-hours = Avec { $hours } de travail par jour, d’après { $runs } essais simulés.
col-role = rôle
col-name = nom
col-length = long.
no-faults = Aucun défaut.
row-plan-faults = À vérifier
col-id = id
col-area = surface
col-widest = largeur
col-where-why = où, et pourquoi
row-not-yet = Pas encore
row-stuck-spots = Blocages
none-seen = aucun vu
row-pattern = Parcours
row-promise = Promesse
row-from = D’après
row-in-the-dark = De nuit
before = Avant
after = Après
row-ground = Terrain
col-before = avant
col-after = après
col-became = devenir
no-pockets = aucune des deux côtés
row-where = Où
row-last = Dernière
row-usually = En général
row-used = Utilisé
row-skipped = Ignoré
skipped-nothing = rien
row-note = Note
in-line = (ligne { $count })
row-time = Temps
row-fixes = Relevés
row-hours = Heures
row-silences = Silences
silences-none = aucun
row-quality = Qualité
row-hdop = HDOP
row-repeats = Répétitions
row-error = Erreur
row-extent = Étendue
row-reference = Référence

## Nombres et listes

unknown = inconnu
under-percent = moins de { $percent }
over-percent = plus de { $percent }
interval = intervalle à 90 % : { $low } à { $high }
no-interval = sans intervalle
range = { $low } à { $high }
# Two parts of a list, or the list so far and its next part.
list = { $before }, { $next }
list-apart = { $before } ; { $next }
way-home-row = { $times } { $along } ({ $time })
# Two lengths of tape meet on one side of the line between their ends.
tape-from = { $length } depuis { $from }
tape-side = { $tape }, de leur côté { $eighth ->
    [0] nord
    [1] nord-est
    [2] est
    [3] sud-est
    [4] sud
    [5] sud-ouest
    [6] ouest
   *[7] nord-ouest
}
position-metres = { $east } est, { $north } nord de l’origine
fixes-poor = { $count } de mauvaise qualité
fixes-jumped = { $count ->
    [one] { $count } saut
   *[other] { $count } sauts
}
fixes-carried = { $count } pendant un transport
fixes-used-of = { $used } relevés sur { $count } lus (écartés : { $list })
# A time on the clock: the year has no mark between thousands.
date-time = { $day ->
    [1] 1er
   *[other] { $day }
} { $month ->
    [1] janvier
    [2] février
    [3] mars
    [4] avril
    [5] mai
    [6] juin
    [7] juillet
    [8] août
    [9] septembre
    [10] octobre
    [11] novembre
   *[12] décembre
} { $year }, { $hour }:{ $minute }

## Mots pour avant et après

more-than-luck = plus que ce qu’expliquent les erreurs de position et le hasard
luck-may-explain = les erreurs de position et le hasard seuls peuvent l’expliquer
count-pocket-change = { $value ->
    [mended] { $count ->
        [one] { $count } réglée
       *[other] { $count } réglées
    }
    [better] { $count } mieux
    [new] { $count ->
        [one] { $count } nouvelle
       *[other] { $count } nouvelles
    }
   *[unchanged] { $count ->
        [one] { $count } inchangée
       *[other] { $count } inchangées
    }
}
pocket-sum = { $pockets } : { $list }
nothing-to-hold-against = rien à quoi la comparer
prediction-holds = la prévision se vérifie
prediction-fails = la prévision ne se vérifie pas

## L’enregistrement à côté d’une trajectoire levée ; les colonnes sont étroites

error-mean = moyenne
error-rms = moy. quad.
error-95 = 95 %
error-largest = maximum
error-logged = brut
error-located = estimé
error-cross-track = latéral
error-along-track = longitudinal
error-timing = temps
error-pass-to-pass = entre passages
reference-head = { $length } de { $name }, { $fixes } comparés{ $beside ->
    [0] { "" }
    [one] { " " }; { $beside } à plus de { $distance } à côté, écarté
   *[other] { " " }; { $beside } à plus de { $distance } à côté, écartés
}
reference-untimed = La trajectoire levée n’a pas d’heures : les erreurs dans le sens de la marche et dans le temps ne peuvent pas être données.

## Pourquoi une ligne d’un enregistrement a été ignorée

skip-reason = { $value ->
    [bad_checksum] somme de contrôle fausse
    [not_a_position] ne porte pas de position
    [not_of_the_format] pas du format
    [no_fix] récepteur sans position
    [no_time] position sans heure
    [no_date] heure sans date
    [malformed] champ mal formé
    [not_finite] nombre non fini
    [out_of_range] hors des limites
    [null_island] latitude 0, longitude 0
    [pole] latitude 90 pendant la recherche
    [time_reversed] le temps recule
    [duplicate_time] même heure deux fois
    [duplicate_epoch] même époque deux fois
    [truncated] coupé à la fin
    [same_log_twice] même enregistrement sous deux noms
    [too_long] plus long que la limite
   *[implausible] position invraisemblable
}

## page : dessins et heures

map-north-up = Carte de la pelouse, nord en haut
map-of-lawn = Carte de la pelouse
map-before = Carte avant
map-after = Carte après
ground-visits = passages
ground-waits = temps entre deux passages
ground-overdue = en retard
never = jamais
driving = roulage
driving-along = dont le long d’une ligne de guidage ou de la limite
standing-turning = à l’arrêt ailleurs, demi-tours
activity-driving = roulage
activity-turning = demi-tours
activity-reversing = marche arrière
activity-transit = en chemin, aller ou retour
activity-standing = à l’arrêt
activity-station = à la station
activity-carried = transporté
activity-silent = sans relevés
night-number = nuit { $number }
nights-drawing = Heures par activité, une ligne par nuit ; le tableau ci-dessous a les mêmes chiffres
axis-hours = heures
driven-that-night = parcouru cette nuit-là
so-far = jusqu’ici
lawn-after = Pelouse après { $hours }
still-gained = { $percent }, +{ $points } points
plot-over-time = Part de la pelouse parcourue selon les heures de roulage
axis-lawn-percent = pelouse parcourue, %
axis-hours-driving = heures de roulage
plot-histogram = Part de la pelouse selon le nombre de passages
axis-part-percent = part de la pelouse, %
axis-times = nombre de passages
plot-gains = Part de la poche parcourue : { $list }
gain-row = { $label } { $fraction }
axis-pocket-percent = poche parcourue, %
plot-waits = Attentes entre deux passages : { $list }
wait-under = { $part } sous { $hours }
wait-half = la moitié
wait-nine-ten = 9 sur 10
wait-99 = 99 sur 100
wait-allowed = admis
axis-waits = heures entre deux passages

## carte

key-missed = oublié : le hasard ne l’explique pas
key-not-yet = pas encore : le hasard l’explique encore
key-unseen = non observé : pas d’indices
key-stuck = point de blocage : temps perdu
key-worn = trace d’usure
key-suggested = modification proposée
key-tape = distance au mètre ruban
key-lines = lignes parcourues
key-lie = couloirs, départs, défauts du plan
key-strays = échappées, arrêts possibles
key-guide = ligne de guidage
key-exclusion = zone d’exclusion
key-obstacle = obstacle
key-boundary = limite
nothing-to-draw = Ni contour ni trajectoire à dessiner.
picture-line = Parcouru : { $percent } de { $lawn }. Oublié : { $pockets }, { $missed }.
picture-not-counted = Aucune largeur de coupe n’a été donnée ; rien n’a donc été compté.
picture-foot = Dessiné d’après les positions enregistrées. Parcouru ne prouve pas que l’herbe a été coupée.
# One letter: north.
north-letter = N
second-axis = deuxième axe
# Names of marks, read aloud: an id, what it is, how large.
mark-missed = { $id }, oublié, { $area }
mark-not-yet = { $id }, pas encore, { $area }
mark-unseen = { $id }, sans indices, { $area }
mark-worn = { $id }, trace d’usure, { $length }
mark-suggested = { $id }, proposé : { $change }
mark-stuck = { $id }, point de blocage, { $time } perdues
mark-island = { $id }, îlot, { $area }
mark-passage = { $id }, couloir, { $length } de large
mark-in-no-plan = { $count ->
    [one] { $id }, sur aucun plan, { $count } demi-tour à son contact
   *[other] { $id }, sur aucun plan, { $count } demi-tours à son contact
}
mark-stray = { $id }, échappée, { $length } en dehors
mark-compared = { $id }, { $percent } parcourus
mark-station = station

## terminal : la pelouse en caractères, fichiers

chart-key = { $bare } non parcouru, { $one } jusqu’à { $first }, { $two } jusqu’à { $second }, { $three } jusqu’à { $third }, { $four } davantage ; { $missed } oublié, { $not_yet } pas encore, { $stuck } point de blocage, { $station } station ; un caractère fait { $length } de large{ $north ->
    [up] , le nord est en haut
   *[unknown] { "" }
}
row-written = Écrit

## Pourquoi un fichier est laissé de côté

file-elsewhere = la commande le crée, à partir de findings.json, avec tussock report
file-tells-where = il dirait où se trouve le jardin
file-local-metres = les positions sont en mètres locaux, sans coordonnées géographiques
file-not-counted = rien n’a été compté, faute de largeur de coupe
file-not-driven = rien n’a été parcouru

## matin : jardins

garden-gain = { $garden } : { $area } par nuit à gagner
failed = Échoué
# What an alarm says. $why is a sentence of the store, in English.
alarm-less-visited = { $found } de la pelouse parcourus, contre { $usual } d’habitude en autant d’heures, depuis le { $since }.
alarm-hours = { $value ->
    [lost_hours] { $found } de roulage, contre { $usual } d’habitude, depuis le { $since }.
   *[silences] { $found } sans positions, contre { $usual } d’habitude, depuis le { $since }.
}
alarm-receiver-worse = Les positions se trompent de { $found }, contre { $usual } d’habitude, depuis le { $since }.
alarm-stuck-spot = Bloqué au même endroit depuis le { $since }, { $nights ->
    [one] { $nights } nuit
   *[other] { $nights } nuits
}, { $found } la dernière nuit : { $why }
alarm-missed-pocket = Oublié depuis le { $since }, { $nights ->
    [one] { $nights } nuit
   *[other] { $nights } nuits
} : { $found }. { $why }
alarm-promise = { $found } de la pelouse parcourus en { $count ->
    [one] { $count } jour
   *[other] { $count } jours
}, contre { $usual } promis, depuis le { $since }.
alarm-absent = { $machine ->
    [none] Aucun enregistrement depuis le { $since } : { $nights ->
        [one] { $nights } nuit attendue.
       *[other] { $nights } nuits attendues.
    }
   *[other] Aucun enregistrement de { $machine } depuis le { $since } : { $nights ->
        [one] { $nights } nuit attendue.
       *[other] { $nights } nuits attendues.
    }
}

## page locale : une ligne chacun ; ce qui est entre accolades reste tel quel

page-what-to-do = Que faire
page-open = Ouvrir
page-see = Voir
page-stop = Arrêter
page-compare = Comparer
page-save = Sauvegarder
page-no-script = Cette page fonctionne avec JavaScript, qui est désactivé ici.
page-how-far = Avancement du travail
page-open-title = Qu’est-ce que le robot a laissé debout ?
page-open-lead = Choisissez les positions qu’il a enregistrées, déposez-les n’importe où sur cette page, ou collez-les. Rien ne quitte cet appareil : la page interdit toute connexion et fonctionne sans réseau.
page-logs = Enregistrements
page-logs-means = GPX, NMEA 0183, CSV, KML et autres, compressés avec gzip ou non ; d’un seul jardin, en un fichier ou plusieurs. Un findings.json sauvegardé s’ouvre tel quel.
page-choose-logs = Choisir les enregistrements
page-paste = Coller un enregistrement
page-paste-text = Texte de l’enregistrement
page-paste-take = Prendre ce texte
page-plan = Plan
page-plan-if = s’il y en a un
page-plan-means = La pelouse, les zones, les obstacles, les lignes de guidage et la station, au format GeoJSON. Sans plan, le contour est dessiné d’après le trajet.
page-choose-plan = Choisir un plan
page-machine = Robot
page-width = Largeur du disque de coupe
page-cm = cm
page-width-means = Si le champ reste vide, ce sont les réglages qui la donnent ; sinon, la réponse est donnée pour plusieurs largeurs.
page-choose-settings = Choisir les réglages
page-suggest = Essayer des modifications et proposer la meilleure (plus long)
page-find = Trouver ce qui a été oublié
page-demo = Prendre le jardin inventé
page-kept = Gardé sur cet appareil
page-forget = Supprimer tout ce qui est gardé
page-cautions = Arrêtez le robot et désactivez-le avant de le toucher : les lames bougent. La pose d’un enregistreur, le creusement et les travaux à la station demandent des précautions particulières, données sur la page que vous obtenez.
page-page = La page
page-hand-over = La page à remettre
page-ask-title = Demander ce qu’il en est d’un endroit
page-begin = Commencer la page par cette réponse
page-type-place = Saisir un endroit
page-or-tap = Ou touchez-le sur la carte.
page-place = Endroit
page-typed-in = saisi
page-metres = mètres est, nord
page-degrees = degrés, latitude d’abord
page-such-as = Par exemple 4.5,-2 ou 53.86006,12.42021. Les mètres se comptent depuis l’origine des résultats.
page-said = Ce qui en a été dit
page-ask = Demander
page-compare-title = Qu’a apporté une modification ?
page-before = Avant
page-after = Après
page-logs-before = Choisir les enregistrements d’avant
page-the-plan = Choisir le plan
page-logs-after = Choisir les enregistrements d’après
page-plan-changed = Choisir le plan, s’il a changé
page-compare-means = Chaque côté prend des enregistrements, ou un seul findings.json. La largeur de coupe et les réglages sont ceux d’Ouvrir.
page-print = Imprimer la page
page-private = Sans lieu, noms ni dates
page-keep-title = Garder sur cet appareil
page-keep-means = Rien n’est gardé si vous ne le demandez pas. Ce qui est gardé, ce sont les résultats, le plan et les réglages, dans ce navigateur ; quiconque l’utilise peut les ouvrir, et d’autres pages ouvertes depuis cet appareil aussi. Si d’autres s’en servent, sauvegardez plutôt des fichiers.
page-garden-name = Nom du jardin
page-keep = Garder
page-drop = Déposez des enregistrements, un plan ou des réglages
page-no-worker = le calcul en arrière-plan ne peut pas fonctionner ici : { $reason }
page-not-let = ce navigateur ne le permet pas
page-broke-off = le travail s’est interrompu : { $why }
page-broke-off-hint = c’est un défaut de l’outil, ou l’appareil n’a plus de mémoire ; vos fichiers sont comme avant
page-take-out = retirer
page-take-out-file = retirer { $file }
page-hint = conseil : { $hint }
page-seconds = { $stage }, { $seconds } s
page-starting = démarrage
page-stopped = arrêté
page-reading = lecture de { $file }
page-unreadable = { $file } : illisible : { $reason }
page-choose-again = choisissez-le à nouveau
page-side-empty = un côté n’a pas d’enregistrement ; il faut des enregistrements ou un findings.json des deux côtés
page-no-log = aucun enregistrement n’est donné ; il faut un enregistrement (GPX, NMEA 0183, CSV, ...) ou un findings.json
page-no-log-hint = choisissez des fichiers, déposez-les sur cette page, ou prenez le jardin inventé
page-file-page = la page à remettre
page-file-findings = tous les nombres ; se rouvre ici
page-file-geojson = tout ce qui a un lieu, pour les cartes
page-file-gpx = vous guide jusqu’aux poches
page-file-comparison = tous les nombres
page-no-file = pas de { $file } : { $why }
page-keeps-nothing = ce navigateur ne garde rien pour cette page : { $reason }
page-no-reason = aucune raison donnée
page-save-instead = sauvegardez plutôt findings.json
page-open-kept = ouvrir
page-open-garden = ouvrir { $garden }
page-is-kept = { $garden } est gardé
page-cannot-delete = suppression impossible : { $reason }
page-clear-data = effacez les données de cette page dans les réglages du navigateur
# The name of this language in itself: English, Deutsch, ...
page-this-language = français
page-language = Langue
page-remember = Retenir sur cet appareil
page-stage-drawing = dessin
page-stage-reading = lecture
page-stage-comparing = comparaison
page-stage-locating = localisation
page-stage-counting = comptage
page-stage-calibrating = étalonnage
page-stage-diagnosing = diagnostic
page-stage-suggesting = propositions
