# Draft. Nobody who speaks Italian natively has reviewed this yet.

## Che cosa mostrano le posizioni di una registrazione, o l’unica cosa da cambiare

positions_right = Le posizioni sono giuste entro circa { $error_m }.
positions_off = Le posizioni sono sbagliate di circa { $error_m }: montare l’antenna più in alto, con il cielo libero, oppure registrare con un ricevitore RTK.
receiver_jumps = Il ricevitore ha fatto un salto ed è rimasto spostato: le posizioni prima e dopo il salto non combaciano. Cercare che cosa gli copre il cielo, oppure dare in due file separati la registrazione prima e quella dopo il salto.
error_not_shown = Questa registrazione non mostra di quanto sono sbagliate le sue posizioni: lasciare il robot fermo per dieci minuti con il registratore acceso.
fixes_too_rare = Con un rilevamento ogni { $period_s } alcune inversioni non si vedono: registrarne uno al secondo.
digits_too_coarse = Le posizioni sono registrate a passi di { $step_m }: impostare il registratore perché scriva più cifre (sette decimali di grado, cinque di minuto).

## Perché una registrazione non mostra nulla di un prato

mostly_jumps = { $jumps } rilevamenti su { $fixes } sono più lontani dal precedente di quanto un robot possa fare in quel tempo (positions.max_speed_mps è { $max_speed_mps }): si tratta di un veicolo, oppure di posizioni che saltano.
too_few_fixes = { $used ->
    [one] { $used } rilevamento utilizzabile
   *[other] { $used } rilevamenti utilizzabili
} su { $fixes }, troppo pochi per mostrare un tragitto: lasciare acceso il registratore per un’uscita intera.
not_one_garden = Le posizioni si estendono per { $extent_m }: questa non è la registrazione di un solo giardino, oppure dei salti la nascondono. Dare solo i file di uno stesso giardino.
fixes_far_too_rare = Un rilevamento ogni { $period_s } non mostra nulla di un prato: registrarne uno al secondo.
walking_pace = Si muove a { $speed_mps }, veloce come una persona che cammina: dare una registrazione del robot al lavoro, oppure indicare la sua velocità se è davvero così veloce (machine.speed_mps).
walk_round = Questo sembra un giro a piedi intorno a un giardino di { $area_m2 } ({ $length_m } a { $speed_mps }), non la registrazione di un robot: ricavarne una planimetria con tussock plan from-walk FILE{ $gpx ->
    [yes] { "" }
   *[other] , dopo averlo salvato come GPX
}. Se invece è proprio il robot, indicare la sua velocità (machine.speed_mps).

## Da dove si misura con il metro

landmark_station = la stazione
landmark_middle = il centro di «{ $body }»
landmark_corner_at = l’angolo { $body ->
    [none] del prato
   *[other] di «{ $body }»
} presso { $beside ->
    [none] la stazione
   *[other] «{ $beside }»
}
landmark_corner_nearest = l’angolo { $body ->
    [none] del prato
   *[other] di «{ $body }»
} più vicino alla stazione
landmark_corner = l’angolo{ $outermost ->
    [yes] { " " }estremo
   *[other] { "" }
} { $body ->
    [none] del prato
   *[other] di «{ $body }»
} a { $wind_deg }
landmark_corner_apart = l’angolo { $body ->
    [none] del prato
   *[other] di «{ $body }»
} a { $wind_deg }, il più { $farther ->
    [yes] lontano { $beside ->
        [none] dalla stazione
       *[other] da «{ $beside }»
    }
   *[other] vicino { $beside ->
        [none] alla stazione
       *[other] a «{ $beside }»
    }
}

## Che cosa ha fatto o notato la lettura di una registrazione

time_without_zone = Gli orari non indicano il fuso e sono letti come UTC.
time_is_relative = Gli orari contano da un inizio proprio del registratore e non portano data.
gps_time = Gli orari sono in tempo GPS e sono stati convertiti in UTC, con 18 secondi intercalari dal 2017 (IERS, Bulletin C).
week_rollover_repaired = { $fixes ->
    [one] { $fixes } rilevamento era datato
   *[other] { $fixes } rilevamenti erano datati
} 1024 settimane troppo presto (azzeramento della settimana GPS), correzione di { $days } giorni; il primo è ora del { $date }.
late_fixes = { $fixes ->
    [one] { $fixes } rilevamento è stato scritto in ritardo e rimesso al suo posto.
   *[other] { $fixes } rilevamenti sono stati scritti in ritardo e rimessi al loro posto.
}
newest_first = La registrazione comincia dal rilevamento più recente; l’ordine è stato invertito.
block_out_of_order = Una parte della registrazione è stata scritta in ritardo.
tracks_overlap = Alcune tracce si sovrappongono nel tempo; i loro rilevamenti sono stati messi in un solo ordine e nulla è unito tra l’una e l’altra.
times_do_not_fit = Una traccia ha { $times } orari e { $positions } posizioni, e non si può dire quali vadano insieme; è stata tralasciata.
constant_quality = GGA indica ogni rilevamento come { $manual ->
    [yes] manuale (7)
   *[other] simulato (8)
} dove RMC lo indica come valido; il tipo di rilevamento è preso da RMC.
several_machines = La registrazione contiene { $machines } robot, distinti in base a dove si trovavano agli stessi orari.
same_log_twice = Stesso contenuto di { $log }, letto una volta sola.
overlaps_another_log = { $fixes ->
    [one] { $fixes } rilevamento tralasciato
   *[other] { $fixes } rilevamenti tralasciati
} dal { $date }, a orari coperti da un’altra registrazione di questo robot.
file_not_closed = Il file non è chiuso alla fine, come se il registratore fosse stato spento.
file_damaged = Il file compresso è danneggiato, manca la fine: { $fault }
line_too_long = Una riga di { $bytes } byte supera { $limit }, il limite di limits.line_bytes, ed è stata saltata.
line_cut = Una riga di oltre { $bytes } byte supera { $limit }, il limite di limits.line_bytes, ed è stata saltata.
attribute_too_long = Un attributo di { $bytes } byte supera { $limit }, il limite di limits.attribute_bytes, ed è stato saltato.
document_type_ignored = Il tipo di documento è ignorato e nessuna entità che definisce viene sostituita.

## Che cosa ha fatto o notato la lettura di un giro a piedi

walk_markup_broken = Il file è danneggiato in { $places ->
    [one] { $places } punto, che è stato saltato
   *[other] { $places } punti, che sono stati saltati
}; controllare se nella planimetria manca qualcosa.
walk_taken_as_lawn = «{ $track }» (chiusa, { $area_m2 }, { $length_m } di contorno) è considerata il prato: è l’unica traccia che torna dove era cominciata. Se è altro, dirlo con --role "{ $track }=ROLE".
walk_positions_skipped = { $positions ->
    [one] { $positions } posizione
   *[other] { $positions } posizioni
} di «{ $track }» senza latitudine e longitudine utilizzabili.
walk_name_unknown = «{ $track }» è tralasciata, il nome non dice che cosa sia.{ $seems ->
    [none] { "" }
   *[other] { " " }Se è ciò che sembra, dirlo con --role "{ $track }={ $seems }".
}
walk_spikes_cut = { $positions ->
    [one] { $positions } posizione di «{ $track }» salta via e torna; è tralasciata.
   *[other] { $positions } posizioni di «{ $track }» saltano via e tornano; sono tralasciate.
}
walk_waits_as_corners = In «{ $track }» chi camminava si è fermato in { $places ->
    [one] { $places } punto; resta come angolo.
   *[other] { $places } punti; ognuno resta come angolo.
}
walk_pieces_joined = «{ $track }» è stata registrata in { $pieces } pezzi, uniti da linee rette.
walk_overlap_cut = «{ $track }» prosegue per { $past_m } oltre il suo inizio; quel tratto è tagliato.
walk_gap_closed = «{ $track }» è stata chiusa con una linea retta di { $gap_m }.
walk_loops_cut = { $loops ->
    [one] { $loops } piccolo anello di «{ $track }» è tagliato.
   *[other] { $loops } piccoli anelli di «{ $track }» sono tagliati.
}
walk_guide_turned = «{ $track }» è stata percorsa verso la stazione; il verso è stato invertito.

## Che cos’altro parla contro una registrazione

stood_all_the_time = Il robot è rimasto fermo tutto il tempo: lasciare acceso il registratore per diverse uscite intere.
drove_too_short = Marcia registrata: solo { $driven_s }. Lasciare acceso il registratore per diverse uscite intere.
drove_too_short_by = Marcia registrata: { $driven_s }. Ne servono ancora circa { $missing_h } prima che un punto scoperto largo { $wanted_m } sia più che sfortuna.
receiver_jumped = Il ricevitore ha fatto un salto di { $size_m } ({ $time }) ed è rimasto lì.
receiver_jumps_back = Il ricevitore è saltato via e tornato indietro { $jumps ->
    [one] { $jumps } volta
   *[other] { $jumps } volte
}: su una parte del prato vede male il cielo.
stops_not_placed = Alcune soste, { $lost_min } in tutto, non vengono riportate: posizioni così scarse non mostrano dove si è fermato il robot.
receiver_jumped_often = { $jumps ->
    [one] E ancora { $jumps } salto dello stesso genere.
   *[other] E ancora { $jumps } salti dello stesso genere.
}
date_too_old = La registrazione comincia il { $date }: l’orologio del registratore non era impostato, oppure il suo contatore delle settimane è ripartito da zero. Le sue date sono sbagliate; gli orari possono essere giusti (--date imposta il giorno delle registrazioni che contengono solo orari).
positions_bent = Su circa { $area_m2 } intorno a { $place } le posizioni sono sempre spostate nella stessa direzione, fino a { $largest_m }, come vicino a un muro o sotto gli alberi. Lì la traccia è stata raddrizzata; quanto di quel terreno sia stato percorso è meno certo.
turns_not_at_edge = Le inversioni non si trovano lungo i bordi della planimetria (robot che procede a linee parallele, o planimetria che non corrisponde): i bordi non sono quindi serviti a correggere le posizioni.
edge_inside = Al bordo { $edge_deg } il robot inverte la marcia { $offset_m } più all’interno che agli altri bordi ({ $turns ->
    [one] { $turns } inversione
   *[other] { $turns } inversioni
}): il bordo è disegnato troppo in fuori, il perimetro è posato troppo in dentro, oppure lì il ricevitore sbaglia. Misurare sul prato prima di spostare qualcosa.
edge_outside = Al bordo { $edge_deg } il robot inverte la marcia { $offset_m } più all’esterno che agli altri bordi ({ $turns ->
    [one] { $turns } inversione
   *[other] { $turns } inversioni
}): il bordo è disegnato troppo in dentro, il perimetro è posato troppo in fuori, oppure lì il ricevitore sbaglia. Misurare sul prato prima di spostare qualcosa.
zone_driven = La zona{ $zone ->
    [none] { "" }
   *[other] { " " }«{ $zone }»
} viene percorsa come il resto del prato ({ $path_m } di traccia al suo interno): per il robot non esiste. Ciò che vi si trova potrebbe non essere al sicuro dal robot.
plan_beside = La planimetria è spostata di { $distance_m } rispetto alla registrazione ({ $east_m } est, { $north_m } nord); è stata spostata per farla combaciare.
drift_assumed = La registrazione non dice quanto sono buone le sue posizioni e il robot non resta mai fermo abbastanza a lungo per mostrarlo; si suppone un errore di { $drift_m }. Se lo si conosce meglio, indicarlo (positions.drift_m).
drift_at_most = Il robot non resta mai fermo abbastanza a lungo per mostrare quanto vagano le posizioni; i suoi tratti rettilinei permettono al massimo { $drift_m }.
silent_long = Per una parte del tempo ({ $silent_fraction }) mancano rilevamenti utilizzabili; su di essa non si afferma nulla.
fixes_left_out = { $poor ->
    [0] { $jumps ->
        [one] { $jumps } rilevamento è stato escluso perché salta.
       *[other] { $jumps } rilevamenti sono stati esclusi perché saltano.
    }
    [one] { $jumps ->
        [0] { $poor } rilevamento è stato escluso per scarsa qualità.
        [one] { $poor } rilevamento è stato escluso per scarsa qualità e { $jumps } perché salta.
       *[other] { $poor } rilevamento è stato escluso per scarsa qualità e { $jumps } perché saltano.
    }
   *[other] { $jumps ->
        [0] { $poor } rilevamenti sono stati esclusi per scarsa qualità.
        [one] { $poor } rilevamenti sono stati esclusi per scarsa qualità e { $jumps } perché salta.
       *[other] { $poor } rilevamenti sono stati esclusi per scarsa qualità e { $jumps } perché saltano.
    }
}
no_station = Non è stata riconosciuta nessuna stazione di ricarica: non c’è un posto in cui il robot torni a fermarsi per dieci minuti o più.
claim_too_good = Il ricevitore dichiara { $claimed_m }, ma le sue posizioni sono disperse di { $scatter_m }: vale la dispersione, non la dichiarazione.
rtk_fixed_too_good = Il ricevitore chiama «RTK fixed» i suoi rilevamenti, il che significa circa { $usual_m }, ma le sue posizioni sono disperse di { $scatter_m }: vale la dispersione, non la dichiarazione.
positions_repeated = Parte dei rilevamenti ({ $repeated_fraction }) ripete fino all’ultima cifra la posizione precedente mentre il ricevitore segnala una velocità (al massimo per { $longest_s }): sta ridando posizioni vecchie.
positions_held = Parte dei rilevamenti ({ $repeated_fraction }) ripete fino all’ultima cifra la posizione precedente (al massimo per { $longest_s }): da fermo il ricevitore blocca la sua posizione, così le soste sembrano migliori di quanto siano le posizioni. Disattivare il blocco da fermo («static hold»).
drives_at_rest = { $rest_min } di marcia su { $driven_min } cadono in ore in cui le impostazioni tengono fermo il robot ({ $time_zone ->
    [none] nessun fuso orario è impostato, quindi UTC
   *[other] fuso orario { $time_zone }
}); nessuno spostamento di ore intere li fa tornare.
drives_at_rest_shifted = { $rest_min } di marcia su { $driven_min } cadono in ore in cui le impostazioni tengono fermo il robot ({ $time_zone ->
    [none] nessun fuso orario è impostato, quindi UTC
   *[other] fuso orario { $time_zone }
}); { $shift_h } { $later ->
    [yes] più tardi
   *[no] prima
} tutto tornerebbe{ $local_time ->
    [yes] : la registrazione sembra contenere l’ora locale indicata come UTC.
   *[no] .
}
calibrated = { $runs ->
    [one] { $runs } registrazione come questa è stata simulata
   *[other] { $runs } registrazioni come questa sono state simulate
} sulla planimetria; la parte percorsa è stata corretta di { $points ->
    [one] { $points } punto
   *[other] { $points } punti
} per l’errore sistematico così emerso.
ways_disagree = Due modi di contare si contraddicono: { $by_path_fraction } secondo la traccia adattata a inversioni e bordi, { $as_logged_fraction } secondo le posizioni come registrate, corrette dei loro errori. Si usa il secondo, e nessun terreno viene segnalato come saltato.
as_logged_silent = Contando come registrato sarebbe { $as_logged_fraction }: manca ciò che è stato percorso durante i silenzi ({ $silent_fraction } del tempo).
as_logged_sparse = Contando come registrato sarebbe { $as_logged_fraction }: con un rilevamento ogni { $period_s }, le linee rette dall’uno all’altro tagliano le inversioni.
as_logged_spread = Contando come registrato sarebbe { $as_logged_fraction }: posizioni sbagliate di circa { $error_m } spargono la traccia su terreno che non è stato percorso.
as_logged_aside = Contando come registrato sarebbe { $as_logged_fraction }: posizioni sbagliate di circa { $error_m } portano la traccia fuori dal prato, o su terreno già percorso.
not_calibrated_no_width = La parte percorsa non è stata calibrata: serve la larghezza di taglio.
not_calibrated_no_plan = La parte percorsa non è stata calibrata: serve una planimetria su cui far muovere il robot.
not_calibrated_lanes = La parte percorsa non è stata calibrata: le linee parallele non si possono simulare con sufficiente fedeltà.
not_calibrated_no_drive = La parte percorsa non è stata calibrata: la registrazione non mostra nessun tragitto.
not_calibrated_no_run = La parte percorsa non è stata calibrata: nessun robot come questo può muoversi sulla planimetria.

## Che cosa ne segue quando due risposte alla stessa domanda si contraddicono

interval_holds_both = L’intervallo viene allargato in modo da contenere sia { $one_fraction } sia { $other_fraction }.
interval_wider = L’intervallo viene moltiplicato per { $times }.
interval_wider_by = L’intervallo viene allargato da entrambi i lati ({ $more_fraction } del prato per lato).
plan_not_believed = I bordi della planimetria spiegano solo una parte delle inversioni ({ $explained_fraction }): dove la registrazione non mostra come è collocata la planimetria, non si indica quindi nessuna causa.
legs_unlike = Il tratto rettilineo abituale è di { $logged_m } nella registrazione e di { $drawn_m } nelle prove simulate del robot adattato: si muove in un modo che il modello non conosce, e ciò che le prove simulate prevedono è meno sicuro.
shows_wider = Il terreno largo fino a { $widest_m } resta indeciso: si vedrebbero solo aree più larghe.

## Perché un’area è stata saltata

too_narrow_to_explain = Qui il robot non è passato, ma queste posizioni sono troppo scarse per mostrare perché sia rimasto un vuoto largo { $widest_m }; andare a vedere sul posto.
gap_too_narrow = La parte dietro ({ $behind_m2 }) non si può raggiungere: il varco è largo { $width_m } e al robot serve più di { $needed_m }.
no_way_in = Questa parte ({ $area_m2 }) non ha accesso: sulla planimetria non è collegata al terreno da cui parte il robot.
no_way_in_driven = Questa parte ({ $area_m2 }) non ha accesso: nulla di ciò che il robot ha percorso vi conduce.
turns_before_edge = Qui il robot inverte la marcia { $setback_m } prima del bordo, perciò il suo disco non arriva a questa striscia.
zone_elsewhere = La zona{ $zone ->
    [none] { "" }
   *[other] { " " }«{ $zone }»
} sembra trovarsi altrove rispetto al disegno: il robot ha percorso { $path_m } dentro la zona disegnata e ha invertito la marcia su una linea al di fuori di essa.
zone_elsewhere_towards = La zona{ $zone ->
    [none] { "" }
   *[other] { " " }«{ $zone }»
} sembra spostata in direzione { $towards_deg } rispetto al disegno: il robot ha percorso { $path_m } dentro la zona disegnata e ha invertito la marcia su una linea al di fuori di essa.
stuck_on_the_way = Il robot si è bloccato { $times ->
    [one] { $times } volta
   *[other] { $times } volte
} ({ $lost_min }) sulla via verso questa parte.
stuck_on_the_way_past = Il robot si è bloccato { $times ->
    [one] { $times } volta
   *[other] { $times } volte
} ({ $lost_min }) sulla via verso questa parte e { $at_least ->
    [yes] è riuscito a passare almeno { $past ->
        [one] { $past } volta
       *[other] { $past } volte
    }
   *[no] { $past ->
        [0] non è mai riuscito a passare
        [one] è riuscito a passare { $past } volta
       *[other] è riuscito a passare { $past } volte
    }
}.
passage_shut = Il passaggio di { $width_m } sembra chiuso: in { $driven_h } di marcia { $expected ->
    [one] era atteso { $expected } attraversamento e non se ne è visto nessuno.
   *[other] erano attesi { $expected } attraversamenti e non se ne è visto nessuno.
}
something_stands = Qui c’è qualcosa di largo circa { $widest_m } che la planimetria non mostra: il robot vi ha invertito la marcia { $turns ->
    [one] { $turns } volta
   *[other] { $turns } volte
} e non è mai entrato.
something_may_stand = Qui c’è qualcosa di largo circa { $widest_m }, oppure il prato ha un buco: il robot vi ha invertito la marcia { $turns ->
    [one] { $turns } volta
   *[other] { $turns } volte
} e non è mai entrato. È un’aiuola, un albero o un laghetto? Lo direbbe una planimetria che lo mostra.
strip_stays = Lungo il bordo { $edge_deg }, per { $length_m }, resta una striscia larga { $width_m }.
strip_stays_turns = Lungo il bordo { $edge_deg }, per { $length_m }, resta una striscia larga { $width_m }: qui il robot inverte la marcia { $here_m } prima del bordo, altrove { $elsewhere_m } prima.
passage_seldom_found = In { $driven_h } di marcia il robot { $entries ->
    [0] non ha trovato nemmeno una volta
    [one] { $at_least ->
        [yes] ha trovato solo { $entries } volta (almeno)
       *[no] ha trovato solo { $entries } volta
    }
   *[other] { $at_least ->
        [yes] ha trovato solo { $entries } volte (almeno)
       *[no] ha trovato solo { $entries } volte
    }
} la via attraverso il passaggio di { $width_m }; la parte dietro ({ $behind_m2 }) ha ricevuto solo una parte della quota che le spetta ({ $share_ratio }).
behind_passage_seldom = Nulla blocca questa parte, ma il robot ci viene troppo di rado: la parte dietro il passaggio di { $width_m } ({ $behind_m2 }) ha ricevuto solo una parte della quota che le spetta ({ $share_ratio }), e con le uscite come sono resterà così.
comes_seldom = Nulla blocca questa parte, ma il robot ci viene troppo di rado: il terreno intorno ha ricevuto solo una parte della quota che gli spetta ({ $share_ratio }).
not_shown = Viene saltata più spesso di quanto il caso spieghi, ma questa registrazione non mostra perché; andare a vedere sul posto.

## Indizi a favore

luck_not_lanes = Un giro completo a linee parallele non lascia al caso un vuoto largo { $width_m }.
luck_under_thousandth = Il caso da solo lascia un vuoto largo { $width_m } in meno di 1 prato simile su 1000.
luck_one_in = Il caso da solo lascia un vuoto largo { $width_m } in circa 1 prato simile su { $lawns }.
passage_width = { $width_m } nel punto più stretto, di cui { $free_m } liberi per il centro del robot; lungo { $length_m }.
passage_crossings = Ha cambiato lato { $at_least ->
    [yes] almeno { $crossings ->
        [one] { $crossings } volta
       *[other] { $crossings } volte
    }
   *[no] { $crossings ->
        [one] { $crossings } volta
       *[other] { $crossings } volte
    }
}; su questa traccia un robot che si muove liberamente lo avrebbe fatto { $expected ->
    [0] meno di una volta
    [one] { $expected } volta
   *[other] { $expected } volte
}.
driven_behind = { $path_m } percorsi dietro; quota: { $share_ratio } di quella che le spetta.
nothing_driven_in = Al suo interno non passa nessuna traccia.
cells_near_edge = Nove decimi si trovano entro { $within_m } dal bordo.
path_in_zone = { $path_m } di traccia dentro la zona come disegnata.
turns_beside = { $turns ->
    [one] { $turns } inversione
   *[other] { $turns } inversioni
} accanto a quest’area, dove la planimetria non ha bordi.
stops_on_the_way = { $stops ->
    [one] { $stops } sosta
   *[other] { $stops } soste
}, { $lost_min } in tutto; { $passes ->
    [one] { $passes } passata
   *[other] { $passes } passate
} senza soste.
share_behind = Quota ricevuta dalla parte dietro: { $share_ratio } di quella che le spetta.
crossings_expected = { $expected ->
    [one] { $expected } attraversamento atteso, nessuno visto.
   *[other] { $expected } attraversamenti attesi, nessuno visto.
}
turns_in_front = { $turns ->
    [one] { $turns } inversione
   *[other] { $turns } inversioni
} proprio davanti, dove la planimetria non ha bordi.
turns_around = { $turns ->
    [one] { $turns } inversione
   *[other] { $turns } inversioni
} a contatto, lungo il suo contorno aperto ({ $rim_fraction } di esso).
passes_expected = { $passes ->
    [one] { $passes } passata attesa su un terreno di questa larghezza, nessuna vista.
   *[other] { $passes } passate attese su un terreno di questa larghezza, nessuna vista.
}
strip_shape = Lunga { $length_m }, larga al massimo { $widest_m }, nove decimi entro { $within_m } dal bordo.
turns_along = { $turns ->
    [one] { $turns } inversione
   *[other] { $turns } inversioni
} lungo il suo lato interno.
path_nearby = Lunghezza percorsa lì vicino: { $share_ratio } della media del prato.
share_simulated = Quota che le danno le prove simulate da questa stazione: { $share_ratio } della media del prato.

## Indizi contro

gap_nearly_wide = Il varco è largo quasi quanto serve al robot, o appena di più: misurarlo.
few_turns = { $turns ->
    [one] Solo { $turns } inversione.
   *[other] Solo { $turns } inversioni.
}
visits_hidden = Posizioni così scarse nascondono le passate brevi.
strip_thin = La striscia è più sottile di tre volte l’errore di posizione.
zone_may_be_open = La zona può essere disegnata bene ed essere stata aperta apposta.
also_behind_passage = La parte si trova inoltre dietro un passaggio di { $width_m }.
one_outing_matters = Una sola uscita fortunata cambierebbe molto queste cifre.
luck_leaves_such = Con uscite come queste il caso lascia ogni tanto un punto così.
look_decides = Per sapere quale delle due è: { $look ->
    [passage] guardare se c’è qualcosa nel passaggio.
    [width] misurare il passaggio con il metro.
    [ground] guardare se su quel terreno c’è qualcosa, o se qualcosa lo chiude.
    [zone] misurare se la zona si trova dove è disegnata.
    [stuck_spot] guardare il punto in cui il robot si blocca.
    [edge] osservare a che distanza dal bordo il robot inverte la marcia.
   *[another_log] registrare altre { $log_h } di marcia; se il robot può entrare, una registrazione così lo mostra (probabilità { $told_fraction }).
}

## Terreno su cui nulla è deciso

not_yet = Per ora nulla di anomalo: { $driven_h } di marcia sono poche per { $lawn_m2 }; vuoti di { $widest_m } ogni tanto sono normali.
not_yet_until = Per ora nulla di anomalo: { $driven_h } di marcia sono poche per { $lawn_m2 }; vuoti di { $widest_m } sono normali fino a circa { $decided_h } di marcia.
hidden_by_silence = La registrazione tace mentre il robot potrebbe essere stato lì (probabilità { $chance_fraction }).
cause_withheld = Questa registrazione non mostra come è collocata la planimetria nel giardino, perciò non si indica nessuna causa e non si propone nessuna modifica. Andare a vedere, poi controllare la planimetria o registrare posizioni migliori.
shown_too_little = La registrazione mostra troppo poco per dire se questo punto è stato saltato.

## Che cosa guardare dove si è bloccato

stuck_near = Si trova a { $distance_m } { $feature ->
    [zone] dal bordo della zona di esclusione «{ $name }»
    [obstacle] dal bordo dell’ostacolo «{ $name }»
   *[lawn_edge] dal bordo del prato
}: cercare lì radici, un gradino o terreno molle.
stuck_in_passage = Si trova nel passaggio di { $width_m }: cercare lì radici, un gradino o terreno molle.
stuck_in_passage_near = Si trova nel passaggio di { $width_m }, a { $distance_m } { $feature ->
    [zone] dal bordo della zona di esclusione «{ $name }»
    [obstacle] dal bordo dell’ostacolo «{ $name }»
   *[lawn_edge] dal bordo del prato
}: cercare lì radici, un gradino o terreno molle.
stuck_in_the_open = Vicino, sulla planimetria, non c’è nulla: cercare radici, una buca o terreno molle.
stuck_somewhere = Cercare radici, una buca o terreno molle.

## Che cosa cambiare

lay_guide_run = Posare una linea di guida con { $wire_m } di filo nuovo fino in fondo a { $pocket } e mandarvi { $outings_of_ten ->
    [one] { $outings_of_ten } uscita
   *[other] { $outings_of_ten } uscite
} su 10{ $longer ->
    [yes] , e far lavorare il robot { $added_h } in più al giorno
   *[no] { "" }
}: in { $log_h } come queste la parte percorsa di { $pocket } è poi, di solito, circa { $after_fraction }, contro { $before_fraction } se non cambia nulla.
move_zone = Spostare la zona «{ $zone }» di { $shift_m } e metterla dove è disegnata, perché le inversioni mostrano che è altrove{ $longer ->
    [yes] , e far lavorare il robot { $added_h } in più al giorno
   *[no] { "" }
}: in { $log_h } come queste la parte percorsa di { $pocket } è poi, di solito, circa { $after_fraction }, contro { $before_fraction } se non cambia nulla.
facing_side = Il lato { $faces_deg }.
shrink_zone = Arretrare di { $shift_m } il lato { $faces_deg } della zona «{ $zone }», in modo che la via accanto ad essa verso { $pocket } sia larga { $passage_m }{ $longer ->
    [yes] , e far lavorare il robot { $added_h } in più al giorno
   *[no] { "" }
}: in { $log_h } come queste la parte percorsa di { $pocket } è poi, di solito, circa { $after_fraction }, contro { $before_fraction } se non cambia nulla.
add_zone = Tenere il robot lontano dal punto in cui si blocca ({ $spot }), in modo che venga più spesso in { $pocket }{ $longer ->
    [yes] , e farlo lavorare { $added_h } in più al giorno
   *[no] { "" }
}: in { $log_h } come queste la parte percorsa di { $pocket } è poi, di solito, circa { $after_fraction }, contro { $before_fraction } se non cambia nulla.
work_longer = Farlo lavorare { $added_h } in più al giorno: in { $log_h } come queste la parte percorsa di { $pocket } è poi, di solito, circa { $after_fraction }, contro { $before_fraction } se non cambia nulla.
shift_boundary = Spostare il perimetro di { $shift_m } verso l’esterno lungo { $pocket }{ $longer ->
    [yes] , e far lavorare il robot { $added_h } in più al giorno
   *[no] { "" }
}: in { $log_h } come queste la parte percorsa di { $pocket } è poi, di solito, circa { $after_fraction }, contro { $before_fraction } se non cambia nulla.

## Quanto un robot simulato corrisponde alla registrazione

fit_trusted = Un robot simulato che si muove come questo ({ $speed_mps }, appreso da { $turns ->
    [one] { $turns } inversione
   *[other] { $turns } inversioni
} e { $outings ->
    [one] { $outings } uscita
   *[other] { $outings } uscite
}) percorre tanto prato quanto ne mostra la registrazione.
fit_visits_differ = Le prove simulate percorrono più o meno prato di quanto ne mostri la registrazione: sulla planimetria manca qualcosa del terreno, oppure il robot si comporta in modo diverso da un giorno all’altro. Le previsioni sono date con intervalli più larghi.
fit_path_differs = Le prove simulate hanno una traccia più lunga o più corta di quanto mostri la registrazione. Le previsioni sono date con intervalli più larghi.
not_fitted_lanes = Non si prevede nulla: il robot procede a linee parallele, che non dipendono dal caso.
not_fitted_several_machines = Non si prevede nulla: qui hanno lavorato { $machines } robot, e se ne può adattare uno solo.
not_fitted_few_turns = Non si prevede nulla: { $turns ->
    [one] a un bordo si è vista solo { $turns } inversione
   *[other] a un bordo si sono viste solo { $turns } inversioni
}, e ne servono { $expected }.
not_fitted_no_legs = Non si prevede nulla: la traccia non mostra tratti rettilinei tra le inversioni.
not_fitted_no_ground = Non si prevede nulla: la planimetria non lascia terreno su cui muoversi.
not_simulated = Non si prevede nulla: { $why }.

## Ore ed erba

promise_beyond_hours = { $promised_fraction } in { $promised_days ->
    [one] { $promised_days } giorno
   *[other] { $promised_days } giorni
} non si raggiunge con orari più lunghi: ci vorrebbero { $needed_h } di lavoro al giorno.
promise_needs_hours = { $promised_fraction } in { $promised_days ->
    [one] { $promised_days } giorno
   *[other] { $promised_days } giorni
} richiede circa { $needed_h } di lavoro al giorno a questo ritmo; ha lavorato { $worked_h }, di cui { $driven_h } di marcia.
promise_beyond_reach = Nessun orario è abbastanza lungo per raggiungere { $promised_fraction } in { $promised_days ->
    [one] { $promised_days } giorno
   *[other] { $promised_days } giorni
}: viene saltato troppo terreno. Ha lavorato { $worked_h } al giorno, di cui { $driven_h } di marcia.
promise_hours_unknown = Ha lavorato { $worked_h } al giorno, di cui { $driven_h } di marcia; questa registrazione non permette di dire che cosa servirebbe per { $promised_fraction } in { $promised_days ->
    [one] { $promised_days } giorno
   *[other] { $promised_days } giorni
}.
lower_cut_unknown = Questa registrazione non permette di dire se ogni punto è stato percorso all’altezza di taglio attuale.
lower_cut = Ogni punto abbastanza largo da vedersi è stato percorso all’altezza attuale (almeno { $visited_fraction } del prato): l’altezza di taglio può essere abbassata di uno scatto.
lower_cut_places_open = Lasciare l’altezza di taglio com’è: { $places ->
    [one] { $places } punto abbastanza largo da vedersi non è ancora stato percorso
   *[other] { $places } punti abbastanza larghi da vedersi non sono ancora stati percorsi
}, e l’erba alta ferma un robot regolato basso.
lower_cut_unsure = Lasciare l’altezza di taglio com’è: solo una parte del prato ({ $visited_fraction }) è stata percorsa con certezza, e l’erba alta ferma un robot regolato basso.
grass_log_too_short = Un’erba che cresce { $growth_mm } al giorno può restare { $allowed_days ->
    [one] { $allowed_days } giorno
   *[other] { $allowed_days } giorni
} senza passate (regola del terzo); questa registrazione di { $log_days ->
    [one] { $log_days } giorno
   *[other] { $log_days } giorni
} è troppo corta per mostrare se da qualche parte è rimasta di più.
grass_overdue = Una parte del prato ({ $overdue_fraction }) è rimasta più di { $allowed_days ->
    [one] { $allowed_days } giorno
   *[other] { $allowed_days } giorni
} senza passate, troppo per un’erba che cresce { $growth_mm } al giorno (regola del terzo): servono più passate.
grass_too_many_passes = Nel tempo che l’erba poteva aspettare ({ $allowed_days ->
    [one] { $allowed_days } giorno
   *[other] { $allowed_days } giorni
}, regola del terzo) ogni punto viene percorso { $passes } volte: basterebbero meno ore, con meno usura del tappeto erboso.
grass_enough_passes = Tra una passata e l’altra non sono trascorsi più di { $allowed_days ->
    [one] { $allowed_days } giorno
   *[other] { $allowed_days } giorni
}, come serve a un’erba che cresce { $growth_mm } al giorno (regola del terzo).

## Che cosa ha portato una modifica

lawn_unknown = Queste registrazioni non permettono di dire se il prato nel suo insieme va meglio.
lawn_more = La parte percorsa del prato è cresciuta di { $points ->
    [one] { $points } punto
   *[other] { $points } punti
} rispetto a prima.
lawn_less = La parte percorsa del prato è calata di { $points ->
    [one] { $points } punto
   *[other] { $points } punti
} rispetto a prima.
lawn_alike = Il prato nel suo insieme non mostra differenze che vadano oltre il caso di una notte.
pockets_mended = Risolto: { $pockets }.
pockets_better = Meglio: { $pockets }.
pockets_new = Nuovo: { $pockets }.
pocket_compared = { $pocket }: { $before_fraction } prima, { $after_fraction } dopo; { $change ->
    [mended] { $within_luck ->
        [yes] ora è percorsa quasi tutta, ma il caso da solo farebbe lo stesso in più di una coppia di registrazioni così su dieci: guardare di nuovo tra qualche notte
       *[no] ora è percorsa quasi tutta
    }
    [better] la parte percorsa è cresciuta più di quanto porterebbe il caso
    [new] prima era percorsa
   *[unchanged] { $within_luck ->
        [yes] la parte percorsa è cresciuta, ma non più di quanto possa portare il caso
       *[no] nessuna differenza oltre il caso
    }
}.
change_decided = { $pocket }: deciso dopo { $decided ->
    [one] la prima notte
   *[other] { $decided } notti
} su { $nights }, con un errore al massimo del 5%, per quante volte si sia guardato.
change_open = { $pocket }: { $more ->
    [one] un’altra notte come queste lo deciderebbe
   *[other] altre { $more } notti come queste lo deciderebbero
}.

## A che cosa fare attenzione

blades_on_lawn = Lame in movimento: fermare e disattivare il robot prima di toccarlo; tenere bambini e animali domestici lontani dal prato mentre lavora.
blades_near = Lame in movimento: fermare e disattivare il robot prima di lavorare vicino ad esso.
outline_from_drive = Non è stata data nessuna planimetria: il contorno è disegnato dal tragitto stesso. Il prato a cui il robot non si è mai avvicinato non è contato, e ciò che ha aggirato è preso per un’isola.
plan_fault = Planimetria: { $fault }.
dig_at_spot = Prima di scavare in un punto di blocco: far localizzare cavi e tubi interrati; gli impianti privati non sono segnalati. Le radici possono appartenere a un albero protetto.
dig = Prima di scavare: far localizzare cavi e tubi interrati; gli impianti privati non sono segnalati.
zone_may_protect = Una zona può proteggere radici, cavi elettrici o persone: scoprire perché c’è prima di cambiarla.
hours_by_day = Aggiungere ore di giorno: di notte in giro ci sono piccoli animali.
driven_in_the_dark = { $dark_h } di marcia sono caduti nel buio, quando ricci e altri piccoli animali sono in giro: farlo lavorare di giorno.
beyond_the_line = Oltre la linea possono esserci pavimentazione, acqua, un pendio o il terreno di qualcun altro: guardare prima di spostarla.
look_before_zone = Guardare prima il terreno: una radice, un cordolo o un terreno bagnato che si possono sistemare non hanno bisogno di una zona.
guide_exit_unknown = La registrazione non mostra in quale punto di una linea di guida questo robot la lascia; si suppone da qualche parte negli ultimi due quinti. Se è possibile regolarlo, scegliere un punto vicino alla fine.
local_codes = Le norme locali e il manuale del robot vengono prima di tutto.
other_reasons = Una differenza descrive ciò che è stato percorso in queste registrazioni. Può dipendere da altro che dalla modifica: tempo atmosferico, altri orari, una lama, un tavolo da giardino.
at_equal_hours = I due lati hanno ore di marcia diverse; vengono confrontati a parità di ore.
plan_unsure_before = La registrazione non mostra come è collocata la planimetria nel giardino prima della modifica, perciò i punti possono essere spostati.
plan_unsure_after = La registrazione non mostra come è collocata la planimetria nel giardino dopo la modifica, perciò i punti possono essere spostati.
place_often = Percorso { $visits ->
    [one] { $visits } volta
   *[other] { $visits } volte
}, il prato { $lawn_visits } in media. Se l’erba è comunque alta, guardare le lame, l’altezza di taglio, come cresce l’erba in quel punto, e le pendenze.
place_seldom = Percorso di rado: { $visits ->
    [one] { $visits } volta
   *[other] { $visits } volte
}, il prato { $lawn_visits } in media. Guardare che cosa restringe la via: un passaggio, un angolo, un bordo vicino.
place_few = Percorso finora { $visits ->
    [one] { $visits } volta
   *[other] { $visits } volte
}, il prato { $lawn_visits } in media: di meno, ma non più di quanto faccia il caso da solo. Decideranno altre notti.
place_never = Saltato: si trova nell’area { $pocket } ({ $area_m2 }).
place_gap = Non percorso in questa registrazione, in un vuoto così piccolo che lo lascia il caso da solo. Registrare un’altra notte e chiedere di nuovo.
place_not_yet = Non ancora percorso: si trova in { $pocket }, che il caso spiega ancora. Decideranno { $decided_h } di marcia in tutto.
place_not_yet_open = Non ancora percorso: si trova in { $pocket }, che il caso spiega ancora. Registrare altre notti.
place_unseen = Questa registrazione non permette di dirlo: si trova in { $ground }, terreno senza indizi. Registrare una notte senza silenzi in quel punto.
place_is_stuck_spot = Qui il robot ha perso tempo: punto di blocco { $spot }, { $lost_min } in tutto.
place_off_lawn = Si trova { $distance_m } fuori dal prato, dove non si conta nulla. Se è prato, la planimetria lo tralascia.
place_elsewhere = Si trova a { $distance_m } dal prato: in un altro giardino, oppure uno dei suoi numeri è sbagliato.
place_beyond_outline = Questa registrazione non permette di dirlo: si trova { $distance_m } fuori dal prato disegnato dal tragitto. Se è prato, disegnare una planimetria che lo contenga.
place_in_island = Mai entrato: si trova nell’isola { $island } ({ $area_m2 }), davanti alla quale il robot ha invertito la marcia da più lati. Un’aiuola, un albero, un laghetto, o prato dietro a qualcosa? Lo chiarisce una planimetria.
place_cannot_tell = Questa registrazione non permette di dirlo: le sue posizioni sono sbagliate di circa { $error_m }, e in quel raggio c’è terreno percorso spesso e terreno mai percorso. Registrare con un ricevitore migliore, o più a lungo.
place_compared = { $said ->
    [none] Il punto indicato
   *[other] «{ $said }»
}: percorso { $before_visits ->
    [one] { $before_visits } volta
   *[other] { $before_visits } volte
} in { $before_h } di marcia prima, { $after_visits ->
    [one] { $after_visits } volta
   *[other] { $after_visits } volte
} in { $after_h } da allora.
place_needs_width = Senza la larghezza di taglio le passate non si contano: misurarla, indicarla e chiedere di nuovo.
nights_unknown = Queste registrazioni non permettono di dire quanto una notte differisca dall’altra, perciò nessuna differenza può dirsi reale.

## Parole per una direzione

compass = { $eighth ->
    [0] nord
    [1] nord-est
    [2] est
    [3] sud-est
    [4] sud
    [5] sud-ovest
    [6] ovest
   *[7] nord-ovest
}

## Che cosa significano le nostre parole

cause = { $value ->
    [walled_off] nessun accesso
    [narrow_passage] passaggio stretto
    [edge_band] striscia lungo il bordo
    [zone_misplaced] linea non dove è disegnata
    [beyond_stuck_spot] oltre un punto di blocco
    [too_few_visits] passa troppo di rado
    [too_little_time] ore di marcia insufficienti
   *[undetermined] non mostrato da questa registrazione
}
asked-short = { $value ->
    [place_often] Percorso come il resto
    [place_seldom] Percorso di rado
    [place_few] Finora percorso di meno
    [place_never] Saltato
    [place_gap] Non percorso
    [place_not_yet] Non ancora
    [place_not_yet_open] Non ancora
    [place_is_stuck_spot] Qui il robot si blocca
    [place_off_lawn] Fuori dal prato
    [place_elsewhere] Altrove
    [place_in_island] Mai entrato
    [place_needs_width] Non contato
   *[place_cannot_tell] Questa registrazione non permette di dirlo
}
cause-meaning = { $value ->
    [walled_off] Il robot non ha accesso: il varco è troppo stretto per lui, oppure qualcosa lo blocca.
    [narrow_passage] L’accesso è così stretto che il robot lo trova di rado.
    [edge_band] Una striscia lungo il bordo resta fuori dalla linea a cui il robot inverte la marcia.
    [zone_misplaced] Il robot inverte la marcia su una linea che si trova altrove rispetto alla planimetria.
    [beyond_stuck_spot] Il robot si blocca lungo la via.
    [too_few_visits] La via è libera, ma i suoi tragitti vi conducono troppo di rado.
    [too_little_time] Tutto il prato si riempie come dovrebbe; servono più ore.
   *[undetermined] Questa registrazione non mostra perché.
}
suggestion = { $value ->
    [guide_run] Posare una linea di guida
    [zone_move] Spostare una zona di esclusione
    [zone_shrink] Ridurre una zona di esclusione
    [zone_add] Aggiungere una zona di esclusione
    [more_hours] Lavorare più a lungo
   *[boundary_shift] Spostare il perimetro
}
suggestion-inline = { $value ->
    [guide_run] posare una linea di guida
    [zone_move] spostare una zona di esclusione
    [zone_shrink] ridurre una zona di esclusione
    [zone_add] aggiungere una zona di esclusione
    [more_hours] lavorare più a lungo
   *[boundary_shift] spostare il perimetro
}
noise-source = { $value ->
    [station_scatter] dispersione da fermo alla stazione
    [rest_scatter] dispersione da fermo altrove
    [driving_roughness] irregolarità della traccia durante la marcia
    [device_card] scheda del ricevitore
    [stated] le impostazioni
    [receiver_claim] dichiarazione del ricevitore stesso
    [dilution_of_precision] geometria dei satelliti (DOP) per un errore di distanza abituale
   *[default] valore predefinito dichiarato, perché la registrazione non ne dà
}
promise = { $value ->
    [kept] promessa mantenuta
    [broken] promessa non mantenuta
   *[cannot_tell] questa registrazione non permette di dirlo
}
fix-quality = { $value ->
    [unknown] non indicata
    [autonomous] solo satelliti
    [differential] differenziale
    [precise] servizio di precisione
    [rtk_fixed] RTK fixed
    [rtk_float] RTK float
    [estimated] navigazione stimata
    [manual] inserito a mano
    [simulated] simulatore
   *[other] codice sconosciuto
}
pocket-change = { $value ->
    [mended] risolta
    [better] migliorata
    [new] nuova
   *[unchanged] invariata
}
out-of-reach = { $value ->
    [edge] una striscia lungo il bordo o un angolo: il robot inverte la marcia prima che il disco ci arrivi
   *[cut_off] tagliato fuori da un passaggio troppo stretto, o senza nessun accesso
}
presence = { $value ->
    [came] solo dopo: prima il robot passava in quel punto
    [went] solo all’inizio: da allora il robot passa in quel punto
    [came_and_went] per un po’: prima e da allora il robot è passato in quel punto
   *[throughout] tutto il tempo
}
way-home = { $value ->
    [guide_run] lungo una linea di guida
    [boundary] lungo il perimetro
   *[straight] dritto attraverso il prato
}
lower-cut = { $value ->
    [yes] sì
    [not_yet] non ancora
   *[cannot_tell] questa registrazione non permette di dirlo
}
growth-source = { $value ->
    [settings] dalle impostazioni
   *[temperature] dalla temperatura media
}
failure-reason = { $value ->
    [unreadable] illeggibile
    [damaged] danneggiato
    [clock] orologio
    [plan] planimetria
    [settings] impostazioni
    [analysis] analisi
    [time] troppo tempo
    [memory] memoria insufficiente
    [died] interrotto
   *[pieces] in più pezzi
}
fit-figure = { $value ->
    [visited_fraction] prato percorso, %
    [path_m] traccia percorsa, { $unit }
    [visits_map_correlation] mappa delle passate, correlazione con la media delle prove simulate
    [leg_m] tratto rettilineo tra due inversioni, mediana, { $unit }
   *[revisit_path_m] traccia tra due passate in un punto, mediana, { $unit }
}

## Punti di blocco

stuck-came = Per lo più arrivava in direzione { $course_deg }.

## pagina: sintesi

count-pocket = { $count ->
    [one] { $count } area
   *[other] { $count } aree
}
count-area = { $count }, { $area }
about-more-driving-are = Servono ancora circa { $hours } di marcia.
driven-over-percent-area = Percorso: { $percent } di { $area }.
driven-over-percent-area-range = Percorso: { $percent } di { $area } ({ $range }, con una probabilità del 90%).
lost-at = { $time } persi in { $id }
suggestion-by = { $value ->
    [guide_run] Posare una linea di guida di { $length }
    [zone_move] Spostare una zona di esclusione di { $length }
    [zone_shrink] Ridurre una zona di esclusione di { $length }
    [zone_add] Aggiungere una zona di esclusione di { $length }
    [more_hours] Lavorare più a lungo di { $length }
   *[boundary_shift] Spostare il perimetro di { $length }
}
nine-ten-logs-pocket = Nove prove simulate su dieci: { $range_2 } dell’area con la modifica, { $range } se non cambia nulla.{ $more ->
    [0] { "" }
    [one] { " " }Più sotto c’è ancora { $more } modifica.
   *[other] { " " }Più sotto ci sono ancora { $more } modifiche.
}
let-run-on-after = Lasciarlo continuare. Dopo { $hours } di marcia in tutto, ciò che è ancora scoperto è più che sfortuna.
luck-leaves-such-gap = Probabilità che il caso da solo lasci un vuoto come { $id }: { $chance }.
sure-not-driven-over = Sicurezza { $percent }: { $id } non è stata percorsa
sure-change-helps = Sicurezza { $percent }: { $id } aiuta
change-brings-its-gain = In questa quota delle prove simulate l’area ha guadagnato e la previsione si è avverata.
none-it-shows = Nulla che questa registrazione possa mostrare
how-much-driven-over = Quanto sia stato percorso dipende dalla larghezza del disco di taglio, che non è stata data; la tabella per ogni larghezza è più sotto.
not-counted = Non contato
outline-drawn-from-log = Il contorno è stato disegnato dalla registrazione stessa, i suoi bordi sono giusti entro circa { $error }: il prato a cui il robot non si è mai avvicinato non è contato.
asked-about = { $count }, { $area } in tutto: il robot vi ha invertito la marcia da più lati senza mai entrare. Aiuole, alberi, laghetti, o prato dietro a qualcosa? Non contato nel prato.
visit = Visita:
quote-open = «
quote-close = »
asked-place = Il punto indicato
asked-row = Percorso { $visits }. Ultima volta: { $last }; di solito { $due }.
asked-row-never = Percorso { $visits }.
asked-mark = { $id }, punto indicato: { $said }
asked-visits = { $number } volte in questa registrazione (da { $low } a { $high })
asked-visits-beside = { $visits }; il prato { $mean } in media
asked-due = ogni { $hours } di marcia
walk-first-hint = percorrere prima a piedi il bordo presso { $place }: per { $length } il robot non vi ha mai invertito la marcia
walk-first = Percorrere prima a piedi il bordo presso { $place }: per { $length } il robot non vi ha mai invertito la marcia.
nothing-needs-reason-again = Nulla richiede una spiegazione
this-log-cannot-tell = Questa registrazione non permette di dirlo
not-by = Non per caso
change-nothing-garden-on = Non cambiare nulla nel giardino sulla base di questa registrazione.
measure-width-cutting-disc = Misurare la larghezza del disco di taglio e contare di nuovo.
walk-round-lawn-with = Fare il giro del prato a piedi con il registratore e ricavarne una planimetria: ciò che sta oltre il tragitto non si vede nella registrazione.
no-ground-left-out = Il caso spiega ogni vuoto rimasto.
one-count-no-interval = Un solo conteggio, nessun intervallo
lawn-driven-over-with = del prato percorso, con una probabilità del 90%.

## terminale: mod

count-smaller-pocket = { $count ->
    [one] { $count } area più piccola
   *[other] { $count } aree più piccole
}
count-place = { $count ->
    [one] { $count } punto
   *[other] { $count } punti
}
count-time = { $count ->
    [one] { $count } volta
   *[other] { $count } volte
}
at-cm = { $percent } con { $width }
depends-on-cutting-width = dipende dalla larghezza di taglio, che non è stata data: { $list }
pockets-from = aree saltate larghe almeno { $length } ({ $area })
log-good-enough-can = La registrazione è abbastanza buona: può mostrare { $smallest }.
log-too-short-its = La registrazione è troppo corta: le sue posizioni sono buone, ma la sola sfortuna può lasciare aree larghe fino a { $length } ({ $area }).
log-not-good-enough = La registrazione non è abbastanza buona: può mostrare solo { $smallest }.
also-said = Inoltre: { $said }
lawn-percent-number-area = { $percent } del prato, { $number } di { $area } ({ $interval })
missed-area = saltato { $area }
not-yet = non ancora { $area }
without-evidence = senza indizi { $area }
none-told = questa registrazione non permette di dirlo
none-known = nulla dentro il contorno disegnato; che cosa ci sia oltre, questa registrazione non permette di dirlo
none-known-narrower = nulla di largo almeno { $width } dentro il contorno disegnato; aree più strette, e ciò che sta oltre, questa registrazione non può mostrarle
none-narrower = nulla di largo almeno { $width }; aree più strette questa registrazione non può mostrarle
none-but-luck = nulla; il caso spiega i vuoti
none-shown-unseen = non se ne vede nessuna, ma { $area } sono senza indizi: questa registrazione non permette di dirlo
smaller-gaps = vuoti più piccoli { $area }
of-id = { $id } { $share } di { $area }
all-luck-does-not = { $count }, { $area } in tutto, più di quanto spieghi il caso
and-more = e ancora { $more }
also-possible = anche possibile: { $join }
decided-after-driving-all = deciso dopo { $hours } di marcia in tutto
luck-still-explains-them = { $count }, { $area }: il caso le spiega ancora; { $decide }
lost-count = { $count }, { $time } persi
lost-within = { $count }, { $time } persi, entro { $length } da { $place }
more-spots = e altri { $spots }
ladder-title = Più piccolo e più grande
ladder = Secondo la misura, media di registrazioni simulate: { $list }.
rung = { $size }: { $fraction }{ $lawn ->
    [none] { "" }
   *[other] , prato { $lawn }
}{ $chosen ->
    [yes] { " " }(questa)
   *[no] { "" }
}
change-set = Insieme, prima ciò che rende più superficie per il lavoro, ognuna contata dopo le precedenti: { $list }. Del prato viene allora percorso { $lawn }.
set-step = { $id } { $area } in più ({ $fraction } di queste aree)
visits-title = { $count ->
    [one] 1 visita a questo giardino
   *[other] { $count } visite a questo giardino
}
visits-when = Quando
visits-who = Chi
visits-machine = Robot
visits-said = Che cosa ha detto il cliente
visits-changed = Che cosa è stato cambiato
visits-sure = Deciso
visits-pocket = { $id } { $before } → { $after }
visits-decided = { $decided ->
    [none] { $more ->
        [none] non deciso
        [1] non deciso: ancora una notte come queste
       *[other] non deciso: ancora { $more } notti come queste
    }
    [beyond_luck] deciso
    [1] deciso dopo la prima notte
   *[other] deciso dopo { $decided } notti
}
nights-differ = Di tanto differiscono le singole registrazioni: nove giardini su dieci sono a posto dopo { $hours } di marcia.
pocket-this-log-if = Area: { $percent } in questa registrazione, { $fraction } se non cambia nulla, { $fraction_2 } con la modifica{ $sure ->
    [none] { "" }
   *[other] ; sicurezza { $sure }
}.{ $more ->
    [0] { "" }
    [one] { " " }E ancora { $more } modifica.
   *[other] { " " }E altre { $more } modifiche.
}
lawn-within-percent-days = { $percent } del prato in { $days }: { $word }{ $probability ->
    [none] { "" }
   *[other] { " " }(probabilità che sia mantenuta: { $probability })
}
one-every-driven-fixes = { $fixes }, uno ogni { $time }; { $path } percorsi in { $time_2 }{ $silent ->
    [none] { "" }
   *[other] , { $silent } senza rilevamenti
}
log-too-short-positions = La registrazione è troppo corta: le posizioni sono buone, ma non mostra ancora nulla di un prato.
log-not-good-enough-shows = La registrazione non è abbastanza buona: non mostra nulla di un prato.
not-looked-for-without = non cercato, senza la larghezza di taglio
after-how-many-hours = quante ore servano per decidere non si può dire

## terminale: esame

count-fix = { $count ->
    [one] { $count } rilevamento
   *[other] { $count } rilevamenti
}
count-fix-repeats-the = { $count ->
    [one] { $count } rilevamento ripete la posizione precedente
   *[other] { $count } rilevamenti ripetono la posizione precedente
}
around-lat = intorno a { $lat_deg }, { $lon_deg }
east-by = { $length } verso est per { $length_2 } verso nord, { $middle }
made-by = { $format }, creato da { $id }
its-bytes = { $percent } dei suoi byte
from-count = { $count }, ricavati da { $share }{ $resolution ->
    [none] { "" }
   *[other] , a passi di { $resolution }
}
first-on = ; la prima volta alla riga { $count }
first-on-line = ; la prima volta alla riga { $count }: { $id }
to-id = da { $id } a { $id_2 }
one-every = { $fixes }, uno ogni { $time }
driving-time = marcia { $time }
at-station = alla stazione { $time }
standing-elsewhere = fermo altrove { $time }
silent-time = silenzio { $time }
from-after-start-further = { $time } a partire da { $time_2 } dopo l’inizio, { $length } più in là
shorter-value = ; e altri { $value } più brevi
middle-below-number-number = { $number } in mezzo, il 95% sotto { $number_2 }
last-digit-count-again = { $count } fino all’ultima cifra
from-fix-fix-length = { $length } da un rilevamento all’altro
drifting-length = { $length } di deriva{ $time ->
    [none] { "" }
   *[other] { " " }su circa { $time }
}
standard-deviation-per-axis = { $join } (scarto tipo per asse)
from-figures = { $figures }; fonte: { $word }
local-metres-no-place = in metri locali, senza coordinate geografiche
no-bytes = nessun byte
no-dates = senza date
not-known = non noto
dark-of-driven = { $dark } su { $driven } di marcia{ $between }: allora ricci e altri piccoli animali sono in giro
in-the-dark = Al buio: { $said }.
dark-between = { "" } (crepuscolo civile alla sera { $dusk }, al mattino { $dawn }{ $zone })

## terminale: confronto

count-night = { $count ->
    [one] { $count } notte
   *[other] { $count } notti
}
both-plans-have-area = { $area } comuni alle due planimetrie
built-as = { $value ->
    [suggested] realizzata come proposto
    [otherwise] realizzata in altro modo
   *[nothing] non realizzata come proposto
}
predicted-for = { $built }; previsto per { $id }: { $percent } ({ $interval }), misurato { $percent_2 }: { $held }
driving-percent = { $percent } ({ $interval }){ $equal ->
    [none] { "" }
   *[other] , { $equal } a parità di ore
}; { $count }, { $hours } di marcia
smaller-pockets = e altre { $pockets } più piccole

## pagina: prima di scavare

plan-on-paper = Una planimetria, provata sulla carta
reaches-everything = Con questa planimetria il robot arriva dappertutto.
leaves-parts = { $count ->
    [one] { $count } parte del prato, { $area } in tutto, non è raggiungibile.
   *[other] { $count } parti del prato, { $area } in tutto, non sono raggiungibili.
}
promise-needs = { $percent } in { $count ->
    [one] { $count } giorno
   *[other] { $count } giorni
} richiede circa { $hours } di lavoro al giorno.
promise-not-kept = { $percent } in { $count ->
    [one] { $count } giorno
   *[other] { $count } giorni
} non si raggiunge soltanto con più ore.
typical-run = Il prato come lo lascia una tipica prova simulata dopo { $count ->
    [one] { $count } giorno
   *[other] { $count } giorni
} da { $hours } di lavoro ciascuno. Il terreno più scuro è stato percorso più spesso; il terreno tratteggiato è stato saltato.
count-day = { $count ->
    [one] { $count } giorno
   *[other] { $count } giorni
}
nine-in-ten-gardens = in nove prove su dieci da { $low } a { $high }
give-width-for-days = Indicare la larghezza di taglio del disco (machine.cut_width_m) e verificare che per il robot ci sia spazio.
trim-by-hand = { $area } lungo i bordi e negli angoli restano alti: rifinirli a mano
boundary-with-slack = intorno al prato e alle sue zone; i collegamenti tra loro e l’abbondanza agli angoli si aggiungono
no-way-through = non si passa
done-after = { $share } delle prove dopo { $count ->
    [one] { $count } giorno
   *[other] { $count } giorni
}
share-of-driving = La quota è quella delle uscite senza linea di guida; al 100% ogni metro quadrato dietro il passaggio è percorso tanto spesso quanto altrove. Quanto viene percorso risulta dalle prove simulate, linee di guida comprese.
from-middle = centro presso { $place }
assumed-machine = Un robot che inverte la marcia quando il suo centro è { $setback } prima del bordo e va dritto a { $speed_mps } finché gira a caso. Impostare machine.past_boundary_m, machine.speed_mps e gli orari di lavoro sui valori del proprio.
assumed-level = Terreno piano e asciutto: la planimetria non ha quote, perciò pendenze e terreno molle non entrano nella previsione.

## pagina: da consegnare

not-driven-over-up = Non percorso: { $area }, largo fino a { $length }
mower-stood-here-all = { $times ->
    [0] Il robot non si è mai fermato qui, { $time } in tutto
    [one] Il robot si è fermato qui { $times } volta, { $time } in tutto
   *[other] Il robot si è fermato qui { $times } volte, { $time } in tutto
}
pocket-driven-over-this = { $why } Parte percorsa dell’area in questa registrazione: { $percent }; attesa: { $fraction } se non cambia nulla, { $fraction_2 } con la modifica.
promised-lawn-within-percent = Promesso: { $percent } del prato in { $days }. { $word }.
more-on-page-on = Altri { $left_out } nella pagina sullo schermo.

## pagina: dati del posto

count-way = { $count ->
    [one] { $count } via
   *[other] { $count } vie
}
about-count = { $count } su circa { $number }
usually-out-began-along = Di solito { $time } fuori{ $charging ->
    [none] { "" }
   *[other] ; { $charging } alla stazione tra due uscite
}. { $count ->
    [one] { $count } è cominciata lungo una linea di guida.
   *[other] { $count } sono cominciate lungo una linea di guida.
}
brackets-usual-time-join = { $join }; tra parentesi il tempo abituale.
day-hours = { $hours } al giorno
between-first-departure-last = Tra la prima partenza e l’ultimo rientro, di cui { $hours } di marcia. { $said }
growth-a-day = { $length } al giorno
tenth-lawn-steeper-steepest = Un decimo del prato è più ripido. La parte più ripida si trova presso { $place }.
not-logged = non registrato
more-than = più che ore

## pagina: confronto

before-after = Prima e dopo

found-when = { $value ->
    [before] prima
   *[after] dopo
}

## pagina: fatti

about-number = circa 1 su { $number }
long-driven-over-times = lunga { $length }, percorsa { $number } volte più spesso della media del prato, fino a { $count }.
wire-length = { $length } di filo
shift-length = uno spostamento di { $length }
more-day = { $hours } in più al giorno
less-new-than-chance = trova meno terreno nuovo di quanto farebbe il caso (efficienza { $figure })
new-as-chance = trova terreno nuovo come farebbe il caso (efficienza { $figure }; 100% significa nessuna sovrapposizione)
more-new-than-chance = trova terreno nuovo meglio del caso (efficienza { $figure }; 100% significa nessuna sovrapposizione)
hardly-twice = non passa quasi mai due volte sullo stesso terreno (efficienza { $figure })
reach-both = 95% dopo { $first }, 99% dopo { $second } di marcia
reach-95 = 95% dopo { $after } di marcia, 99% fuori portata
reach-99 = 99% dopo { $after } di marcia
reach-none = 95% e 99% fuori portata
outings-sent-along-percent = { $percent } delle uscite mandate lungo di essa
half-lawn-driven-over = Metà del prato è stata percorsa almeno così spesso; la media è { $number }.
half-waits-are-shorter = Metà delle attese sono più brevi. Nove su dieci: { $interval_h }. 99 su 100: { $interval_h_2 }.
less-than = meno di 1 su 10.000
cannot-be = non si può dire
not-counted-again = non contato
pocket-again = l’area
whole-lawn = tutto il prato
longer-than-this-log = più di questa registrazione
not-told-apart-yet = non ancora distinti

## pagina: pagina

count-log-file = { $count ->
    [one] { $count } file di registrazione
   *[other] { $count } file di registrazione
}
last-visit-longer-ago = Ultima passata più di { $hours } prima della fine della registrazione
missed-area-again = saltato, { $area }
stuck-lost = blocco, { $time } persi
not-yet-area = non ancora, { $area }
not-yet-heading = Non ancora: { $count } su cui decidono altre ore
to-start = da { $start } a { $end } ({ $zone_words })
driving-from = { $span }. { $driven } di marcia, da { $logs }.
without-evidence-area = { $area } senza indizi. { $said }
outside-boundary-for-after = { $length } fuori dal perimetro per { $time }, { $time_2 } dopo l’inizio; { $came_back ->
    [yes] è tornato da solo
   *[no] in questa registrazione non è tornato
}.
silence-after-start-may = { $time } di silenzio { $time_2 } dopo l’inizio, { $place }: può essersi fermato lì, al massimo per quel tempo.
machine-efficiency = Il robot { $efficiency }.
probability-kept-percent-again = Probabilità che sia mantenuta: { $percent }.
lawn-within-percent-days-probability = { $percent } del prato in { $days }. { $probability }
lawn-report = Rapporto sul prato
times-driven-over-darker = Numero di passate (più scuro: più spesso)
less-than-twice = meno di due volte
usual-time-between-two = Tempo abituale tra due passate (più scuro: più spesso)
time-again = in tempo
charging-station = stazione di ricarica
without-dates = senza date
out-reach = fuori portata

## pagina: metodo

count-outing = { $count ->
    [one] { $count } uscita
   *[other] { $count } uscite
}
lawn-counted-squares-this = Il prato è stato contato in quadrati di questo lato; già questo sposta il risultato di circa { $number } punti.
standard-deviation-per-axis-from = Scarto tipo per asse; fonte: { $word }.
plan-offset = { $east } est, { $north } nord, ruotata di { $turned }°
plan-moved-by-this = La planimetria è stata spostata di tanto per farla combaciare con la registrazione; noto entro { $length }.
known-within-no-more = Noto entro { $length }: non più del caso, perciò la planimetria resta com’è disegnata.
from-one = Da { $fixes }, uno ogni { $time }.
while-driving = Durante la marcia; { $outings }.
drift-length = { $length } di deriva
line-count = riga { $count }
default-error = errore predefinito
from-plan = dalla planimetria
from-log-itself-again = dalla registrazione stessa
number-outings-not-known = numero di uscite non noto

## mattina

count-garden = { $count ->
    [one] { $count } giardino
   *[other] { $count } giardini
}
count-thing = { $count ->
    [one] { $count } errore
   *[other] { $count } errori
}
your-delivery = { $gardens ->
    [one] { $gardens } su { $count } non ha inviato
   *[other] { $gardens } su { $count } non hanno inviato
} nulla dal { $since }: dipende dalla consegna dei dati da parte vostra (invio, schede, rete), non dai giardini.
is-mended = { $garden }: { $alarm }, dal { $since }, è risolto dal { $mended }.
is-known = { $said ->
    [none] { "" } (noto)
   *[other] { "" } (noto: { $said })
}
alarm = { $value ->
    [missed_pocket] terreno saltato
    [stuck_spot] si blocca
    [lost_hours] meno ore di marcia
    [less_visited] percorso di meno
    [absent] non dà notizie
    [receiver_worse] ricevitore peggiorato
    [silences] lunghi silenzi
   *[promise] promessa non mantenuta
}
bring = { $value ->
    [missed_pocket] Portare la planimetria, un metro e dei picchetti
    [stuck_spot] Portare una vanga, zolle di prato o assi
    [lost_hours] Portare una batteria e un detergente per contatti
    [less_visited] Portare lame di ricambio e la pagina del giardino
    [absent] Portare un registratore carico e una scheda
    [receiver_worse] Portare un ricevitore e un cavo d’antenna
    [silences] Portare un ricevitore e un registratore carico
   *[promise] Portare gli orari di lavoro, per aggiungerne di giorno
}
night-visit-with-log = Notte del { $id }: { $gardens } su { $count } da visitare, { $with_log } con una registrazione{ $resting ->
    [0] { "" }
   *[other] , { $resting } a riposo
}, { $count_2 }

## parole/confronto

points-fraction = { $fraction } punti
interval-points = { $points } (intervallo al 90%: da { $low } a { $high } punti)
interval-not-worked-out = { $points } (nessun intervallo)
points-from-night-night = { $number } punti da una notte all’altra
standard-deviations-points-from = scarti tipo: { $number } punti per gli errori di posizione, { $nightly }
to-percent = { $percent } (da { $number } a { $percent_2 })
how-nights-differ-cannot = notti troppo poche per dire come differiscono

## terminale: consigli

log-driving-more-give = registrare altre { $hours } di marcia e dare insieme tutte le registrazioni; ciò che non è ancora deciso allora lo sarà
promise-give-logs-as = la promessa vale per { $days }: dare insieme le registrazioni di altrettanti giorni
measure-width-cutting-disc-give = misurare la larghezza del disco di taglio e darla con --cut-width 22cm
walk-once-round-lawn = fare una volta il giro del prato a piedi con un ricevitore; tussock plan from-walk ne ricava una planimetria, e --plan la usa
mended-plan-is-written = analyse --write-plan FILE scrive la planimetria disegnata come la registrazione mostra il giardino

## gpx

missed-widest = Saltato: { $area }, larghezza massima { $length }. { $said }
stuck-lost-within = Blocco: { $count }, { $time } persi, entro { $length }. { $said }
suggested-guide = Linea di guida proposta. { $said }
tussock-id = tussock { $id }
tape-figures = { $figures } Metro: { $tape }.
ground-mower-left-out = Terreno che il robot ha tralasciato, e punti in cui ha perso tempo.

## Verifiche

checks-hold = { $held ->
    [0] { $all ->
        [one] L’unica verifica non torna
       *[other] Nessuna verifica su { $all } torna
    }
    [one] { $all ->
        [one] L’unica verifica torna
       *[other] { $held } verifica su { $all } torna
    }
   *[other] { $held } verifiche su { $all } tornano
}
checks-say = { $sum }; { $fails }
check = { $value ->
    [fixes_left_out] Rilevamenti messi da parte, rispetto alla loro previsione
    [halves_of_log] Una metà della registrazione, rispetto all’altra
    [plan_place] Posto della planimetria, rispetto alle inversioni
    [turns_at_edges] Inversioni, rispetto a ogni bordo della planimetria
    [drawn_garden] Un giardino disegnato dal robot adattato, rispetto alla registrazione
    [cell_sum] I quadrati della mappa, rispetto al dato principale
    [as_logged] Come registrato, rispetto al corretto
    [two_roads] La traccia adattata, rispetto al conteggio corretto come registrato
    [silences] Silenzi, rispetto a ciò che conta come saltato
   *[shown_ground] Ciò che la registrazione dice di mostrare, rispetto alla mappa
}
check-fails = { $value ->
    [fixes_left_out] i rilevamenti sbagliano più di quanto dichiarato
    [halves_of_log] le due metà della registrazione sono spostate l’una rispetto all’altra
    [plan_place] le inversioni non si raccolgono ai bordi della planimetria
    [turns_at_edges] le inversioni non si trovano sui bordi della planimetria
    [drawn_garden] il robot non si muove come il suo modello
    [cell_sum] la somma della mappa non dà il dato principale
    [as_logged] il conteggio come registrato contraddice quello corretto
    [two_roads] due modi di contare si contraddicono
    [silences] il terreno saltato può essere stato percorso durante un silenzio
   *[shown_ground] la larghezza che si vede è stata alzata a quella del terreno indeciso
}
check-fails-edge = le inversioni non si trovano sul bordo { $edge_deg }
check-is = { $value ->
    [fixes_left_out] { $number } volte l’errore dichiarato
    [halves_of_log] scarto di { $length }
    [plan_place] inversioni spiegate: { $percent }
    [turns_at_edges] { $number } volte lo scarto massimo ammesso per un bordo
    [drawn_garden] scarto dei tratti rettilinei: { $number } (logaritmo naturale del loro rapporto)
    [cell_sum] scarto di { $points } punti
    [as_logged] scarto di { $points } punti
    [two_roads] scarto di { $number } scarti tipo
    [silences] una probabilità massima di { $percent }
   *[shown_ground] { $length }
}

## pagina: parti di ogni pagina

show-on-map-id = mostra sulla mappa, { $id }
show-on-map = mostra sulla mappa
map-nearer = più vicino
map-farther = più lontano
map-whole = tutto il prato
map-move = Spostare la mappa
in-short = In breve
foot-driven-over = «Percorso» è ciò che le posizioni possono mostrare; se lì l’erba sia stata tagliata, lo deve dire l’occhio.

## pagina: le risposte

ask-log = La registrazione è abbastanza buona?
ask-missed = Che cosa è stato saltato?
ask-why = Perché?
ask-change = Che cosa cambiare?
ask-sure = Quanto è sicuro?
log-yes = Sì
log-too-short = Le posizioni sì, ma troppo corta
log-no = No
part-visited = percorso
part-missed = saltato
part-not-yet = non ancora
part-unseen = non osservato
part-sliver = vuoti più piccoli
change-log-again = Prima registrare di nuovo
change-look = Andare a vedere sul posto
change-give-width = Dare la larghezza di taglio
change-nothing-yet = Per ora nulla
change-give-outline = Dare prima il contorno
change-nothing = Nulla
others-end = { $list }.

## pagina: rapporto

title-report = { $title }: dove il robot non è passato
picked-more = tutto quello che se ne sa
picked-close = chiudi
to-answers = Alle risposte
where-not-been = Dove il robot non è passato
map = Mappa
what-map-shows = Che cosa mostra la mappa
ground = Terreno
ground-none = nessuno
map-drawn-from = Disegnata dalle posizioni registrate: mostra il terreno percorso.
map-placeless = La registrazione non ha un luogo sulla Terra; la mappa poggia su assi propri.
map-moves = Trascinare per spostare; pizzicare, fare doppio clic oppure usare + e − per avvicinarsi; tasti freccia quando la mappa è selezionata.
places = Punti
missed-and-why = Che cosa è stato saltato, e perché
missed-lead = Terreno rimasto scoperto, dove il caso non avrebbe quasi mai lasciato un vuoto così largo. Raggiungere il centro di ognuno con due metri a nastro.
up-to-wide = larga fino a { $length }
see = Vedere
evidence-and-others = Che cosa parla a favore e contro, e che cos’altro può essere
evidence = Che cosa parla a favore e contro
how-sure-that = Quanto è sicuro
rank-first = prima
rank-other = anche possibile
evidence-for = a favore
evidence-against = contro
middle-at = Centro presso { $place }.
change-and-gain = Che cosa cambiare, e che cosa porterà
change-lead = Previsto facendo muovere un robot simulato, adattato a questa registrazione, con e senza la modifica. Il punto è ciò che mostrerà la maggior parte delle singole notti; nove su dieci stanno tra gli estremi della linea.
for-pockets = per
needs = Servono { $list }.
together-with = Insieme a { $list }.
driven-over = Percorso
in-this-log = in questa registrazione
if-nothing-changes = se non cambia nulla
if-changed = con la modifica
predictions-of = Previsioni di { $id }
gained-in-runs = Prove simulate in cui l’area ha guadagnato e la previsione si è avverata: { $percent }.
gain-shows-after = Nella maggior parte di esse il guadagno si vede dopo { $hours } di marcia.
where-stuck = Dove si è bloccato
stuck-lead = Punti lontani dalla stazione in cui il robot ha perso tempo più e più volte.
time-lost = { $time } persi
stuck-within = Entro { $length } da { $place }.
drove-through = { $count ->
    [one] È passato di lì { $count } volta senza bloccarsi.
   *[other] È passato di lì { $count } volte senza bloccarsi.
}
not-yet-lead = Terreno scoperto che il caso spiega ancora. Non servono modifiche, solo altre ore, prima di poterne dire qualcosa.
head-pocket = Area
head-area = Superficie
head-widest = Larghezza massima
head-chance = Probabilità per caso
head-decided = Deciso dopo
head-where = Dove
not-yet-table = Non ancora
hours-are-driving = Le ore sono ore di marcia dall’inizio di questa registrazione.
passages-and-ways = Passaggi, terreno fuori portata e vie del ritorno
passages = Passaggi
head-passage = Passaggio
head-width = Larghezza
head-free = Libero per il centro del robot
head-length = Lunghezza
head-behind = Prato dietro
head-crossed = Attraversato
head-share-behind = Quota della traccia che gli spetta, dietro
passage-shut-word = chiuso
crossings-are = Gli attraversamenti sono cambi di lato; dopo «su circa»: quanti ne farebbe, sulla stessa traccia, un robot che si muove liberamente.
out-of-disc = Fuori portata del disco
turns-inside = Inverte prima della linea
turns-inside-means = Distanza abituale tra il centro del robot e la linea a cui inverte la marcia.
outings = Uscite
ways-home = Vie del ritorno
drawing-differs = In che cosa il disegno differisce dal giardino?
plan-would-settle = Che cosa chiarirebbe una planimetria?
islands-or-lawn = Isole, o prato fuori portata?
islands = Isole
head-island = Isola
in-no-plan = In nessuna planimetria
in-no-plan-lead = Cose che hanno fatto invertire la marcia al robot all’interno del prato.
head-thing = Cosa
head-turns = Inversioni a contatto
head-across = Larghezza, circa
head-stood = Presenza
things-in-no-plan = Cose in nessuna planimetria
hours-and-grass = Orari di lavoro ed erba
works = Lavora
allowed = Permesso
allowed-means = Orari di lavoro nelle impostazioni, media sulla settimana.
promise-needs-label = La promessa richiede
promise-needs-means = Ore di lavoro a questo ritmo; nessun orario basterebbe dove una parte del prato non si riempie affatto.
lower-blades = Abbassare le lame?
growth = Crescita
longest-wait = Attesa massima ammessa
one-third-rule = Secondo la regola del terzo: non togliere mai più di un terzo del filo d’erba in una volta.
slope = Pendenza
also-seen = Visto anche
worn-line-is = Traccia d’usura:
stray-is = Sconfinamento:
possible-stop-is = Sosta possibile:
paper-what = Che cosa guardare, e che cosa fare
paper-no-place = Nessun punto richiede di essere guardato: il caso spiega ogni vuoto rimasto, e il robot non si è bloccato da nessuna parte.
paper-changes = Modifiche proposte
stills-title = Come si è riempito il prato
stills-lead = Sei mappe, ognuna dopo un altro sesto della marcia.
still-new = nuovo dalla mappa precedente
still-before = percorso prima
not-driven-over = non percorso
safety = Sicurezza
paper-stop = Fermare e disattivare il robot prima di toccarlo.
paper-dig = Far localizzare cavi e tubi interrati prima di scavare per posare il filo. Chiedere che cosa protegge una zona prima di spostarla. Aggiungere ore di giorno, non di notte.
manual-first = Le norme locali e il manuale del robot vengono prima di tutto.
paper-keep-off = Tenere bambini e animali domestici lontani dal prato mentre il robot lavora. Tenere le linee lontane da pendii e rive. I lavori sulla rete elettrica spettano a un elettricista abilitato.
paper-looked-at = Esaminato il
paper-signed = Da, firma
paper-next-step = Prossimo passo concordato
how-fast = Quanto in fretta si è riempito il prato, e quante volte è stato percorso
ground-gained = Terreno guadagnato con le ore di marcia
line-this-log-interval = questa registrazione, con il suo intervallo al 90% alla fine
line-this-log = questa registrazione
line-random = ricerca casuale
line-no-overlap = nessuna sovrapposizione
line-promised = promesso
random-law-means = Un robot che vaga a caso segue la legge della ricerca casuale (Koopman 1956): più ha fatto, più spesso incontra terreno che conosce. Uno che non passasse mai due volte sullo stesso terreno seguirebbe la linea senza sovrapposizione.
pattern-efficiency = Efficienza del movimento
to-95 = Fino al 95% del prato
to-95-means = Ore di marcia a questo ritmo; fuori portata dove una parte del prato non si riempie affatto.
to-99 = Fino al 99%
to-99-means = Lo stesso per tutto tranne un centesimo.
the-promise = La promessa
how-often = Quante volte è stato percorso ogni punto
bars-mean = Ogni barra è la parte del prato percorsa quel numero di volte. La barra tratteggiata non è stata percorsa.
waits-mean = Quota delle attese tra due passate che sono più brevi; l’ultima attesa di ogni punto, non conclusa, è contata come non conclusa.
visits-typical = Passate, di solito
evenness = Uniformità (Gini)
evenness-means = 0 sarebbe lo stesso numero di passate dappertutto, 1 tutte le passate in un solo punto.
time-between = Tempo tra due passate
overdue-label = In ritardo
overdue-means = Dall’ultima passata questa parte del prato è cresciuta oltre la regola del terzo.
hours-by-activity = Ore per attività
same-in-figures = Lo stesso in cifre
activity-in-figures = Ore per attività in cifre
nights-not-drawn = { $count ->
    [one] { $count } notte precedente non è disegnata.
   *[other] { $count } notti precedenti non sono disegnate.
}
nothing-claimed = Sul tempo senza rilevamenti non si afferma nulla.
each-lawn = Ogni prato per sé
head-lawn = Prato
with-bracket = { $figure } ({ $more })
for-each-width = Percorso, per ogni larghezza di taglio
how-counted = Come si è contato
of-the-log = Sulla registrazione: { $said }
cutting-width = Larghezza di taglio
cutting-width-means = Come data nelle impostazioni. Un centimetro in più conterebbe più terreno.
counting-square = Quadrato di conteggio
realisations = Realizzazioni
counted-once = Contato una volta, sulla traccia più probabile; l’errore di posizione non è ancora stato simulato.
counted-often = Sono state contate altrettante tracce probabili, per vedere quanto l’errore di posizione sposti il risultato.
as-logged = Come registrato
as-logged-means = Ciò che darebbero i rilevamenti grezzi uniti da linee rette. Solo per confronto.
reachable = Raggiungibile
reachable-means = La parte del prato a cui il disco può arrivare.
position-error = Errore di posizione
beware = Attenzione
default-error-means = La registrazione non dà modo di dire quanto è esatta; registrare un’ora alla stazione per saperlo.
plan-against-log = Planimetria rispetto alla registrazione
outline = Contorno
outline-from-plan = Prato, zone e ostacoli come disegnati nella planimetria.
outline-from-log = Il terreno oltre il tragitto più esterno non è contato, perciò qui nessuna cifra vale per tutto il prato. Per rimediare, fare a piedi il giro del contorno.
path = Traccia
usual-speed = Velocità abituale
beside-surveyed = La registrazione accanto a una traccia rilevata
errors-surveyed = Errori rispetto alla traccia rilevata
head-error = Errore
errors-mean = Trasversale: fino al punto più vicino della traccia, positivo a sinistra di essa. Longitudinale: in anticipo rispetto a dove il robot avrebbe dovuto essere allora; tempo: di quanto è passato più tardi. Tra passate: di quanto l’errore trasversale cambia da una passata a quella accanto, entro 15 minuti (secondo ISO 12188-1). «Grezzo» sono i rilevamenti, «stimato» la traccia ritrovata dietro di essi.
simulated-beside = Il robot simulato, accanto alla registrazione
predictions-made = Le previsioni si fanno con esso.
predictions-none = Con esso non si fanno previsioni.
head-figure = Grandezza
head-in-log = Nella registrazione
head-in-runs = { $count ->
    [one] In { $count } prova simulata
   *[other] In { $count } prove simulate
}
log-and-simulation = Registrazione e simulazione
figure-range = { $figure } (da { $low } a { $high })
log-files = I file di registrazione, e che cosa non è stato usato
made-by-label = creato da
fixes-of = { $count ->
    [one] { $count } rilevamento di
   *[other] { $count } rilevamenti di
}
not-used-of-file = Non usato di questo file
head-not-used = Non usato
head-why = Perché
head-first-at = Prima volta
everything-used = Tutto ciò che contiene è stato usato.
before-you-change = Prima di cambiare qualsiasi cosa
stop-and-manual = Fermare e disattivare il robot prima di toccarlo. Le norme locali e il manuale del robot vengono prima di tutto.
all-dangers = Tutto ciò che è pericoloso in questi lavori
danger-blades = Lame in movimento.
danger-blades-means = Fermare e disattivare il robot prima di toccarlo. Tenere bambini e animali domestici lontani dal prato mentre lavora.
danger-logger = Montaggio di un registratore.
danger-logger-means = Mai sopra il pulsante di arresto né dove il robot avverte il sollevamento o l’inclinazione. Fissarlo lontano dalle lame.
danger-digging = Scavare per posare il filo.
danger-digging-means = Far prima localizzare cavi e tubi interrati. Gli impianti privati non sono segnalati.
danger-slopes = Pendii e acqua.
danger-slopes-means = Tenere la linea ben lontana dai bordi oltre i quali il robot potrebbe scivolare.
danger-mains = Rete elettrica.
danger-mains-means = I lavori sull’alimentazione della stazione di ricarica spettano a un elettricista abilitato.
danger-night = Notte.
danger-night-means = Aggiungere ore di giorno: di notte sono in giro ricci e altri piccoli animali.
danger-zones = Zone.
danger-zones-means = Chiedere a che cosa serve una zona prima di spostarla o ridurla. Può proteggere radici, cavi elettrici o persone.

## pagina: prima e dopo

title-compare = { $title }: prima e dopo
difference = Differenza
more-than-before = Parte del prato percorsa in più dopo rispetto a prima; { $meaning }.
side-driven-over = { $side }: percorso { $percent }
side-facts = { $interval }{ $equal ->
    [none] { "" }
   *[other] ; { $equal } a parità di ore
}. { $count }, { $hours } di marcia.
map-move-side = Spostare la mappa, { $side }
only-summary = È stata conservata solo una sintesi, perciò non c’è mappa.
compare-map-key = Tratteggiato: da quel lato la maggior parte dell’area non è stata percorsa. Contorno a trattini: la maggior parte lo è stata. Il terreno più scuro è stato percorso più spesso; le due mappe hanno la stessa scala.
how-sure-difference = Quanto è sicura la differenza
counted-on = Contato su
counted-on-common = { $area } di prato comuni alle due planimetrie.
lawn-only = { $when ->
    [before] { $area } erano prato solo prima
   *[after] { $area } sono prato solo da allora
}
what-became = Che cosa è stato di ogni area
head-found = Trovata
head-before = Percorso prima
head-after = dopo
head-became = Che cosa ne è stato
pockets = Aree
show-on-both = { $id }, mostra su entrambe le mappe
predicted-and-measured = Previsto e misurato
predicted-measured = { $built ->
    [otherwise] Previsto per ciò che è stato realizzato { $predicted }, misurato { $measured }: { $meaning }.
   *[other] Previsto { $predicted }, misurato { $measured }: { $meaning }.
}
predicted = previsto
measured-after = misurato dopo

## pagina: planimetria sulla carta

title-plan = { $title }: prima di scavare
before-digging = Prima di scavare
driven-over-after = Percorso dopo { $days }
days = Giorni
not-worked-out = non calcolato
lawn-to-cut = Prato da tagliare
boundary = Perimetro
guide-runs = Linee di guida
guide-runs-none = nessuna
out-of-reach-title = Fuori portata
part-out-of-reach = { $area }, { $why }; { $middle }
head-free-machine = Libero per il robot
head-behind-it = Prato dietro
head-changes = Cambi di lato al giorno
head-share = Sua quota della marcia
head-nine-tenths = Nove decimi percorsi
weak-places = Punti deboli, e perché
would-mend = Che cosa li risolverebbe
as-planned = come progettato
assumed-and-beware = Che cosa si suppone, e a che cosa fare attenzione
foot-forecast = Una previsione da prove simulate: in che cosa differiscono i robot veri si vede nei primi giorni di registrazioni.

## pagina: mattina

title-morning = Giardini da visitare dopo la notte del { $night }
morning-after = La mattina dopo la notte del { $night }
gardens-to-visit = Giardini da visitare
count-muted = { $count ->
    [one] { $count } silenziato.
   *[other] { $count } silenziati.
}
gardens-in-order = Giardini, per primo quello a cui una visita porta di più
head-garden = Giardino
head-last-nights = Ultime 15 notti
head-wrong = Che cosa non va
head-since = Dal
head-bring = Che cosa portare
head-gain = Porta
and-count-more = e altri { $count }
known-bracket = (noto)
open-for = Aperto da { $days }, alla notte del { $night }.
lawn-of = Prato di { $area }.
driven-in-last = Percorso in { $days }, finora: { $percent }; promesso: { $promised }.
known-said = Noto: { $said }
known = Noto
head-night = Notte
head-missed = Saltato
head-driving = Marcia
head-stuck = Blocchi
head-silent = Silenzio
nights-of = Notti di { $name }
mended = Risolto
what-failed = Che cosa non è riuscito
failures = Errori
head-what = Che cosa
visit-brings = Una visita porta altrettanto prato: quello che ogni notte sarebbe percorso, e non lo è.

## terminale: etichette delle righe (row-...), al massimo 12 lettere, row-by-lawn, row-used, row-skipped e row-note al massimo 10;
## intestazioni delle colonne (col-...), al massimo 7, col-id al massimo 3

row-driven-over = Percorso
row-before = Prima
row-after = Dopo
row-difference = Differenza
row-pockets = Aree
row-beware = Attenzione
# $id is G1 or M12.
row-change = Modifica { $id }
row-by-lawn = per prato
row-asked-about = Da chiarire
row-missed = Saltato
plan-answer = Prato da tagliare: { $area }, { $edge } di bordo; zone e ostacoli sono esclusi.
forecast-hours = Con { $hours } di lavoro al giorno, da { $runs } prove simulate.
col-role = ruolo
col-name = nome
col-length = lungh.
no-faults = Nessun difetto.
row-plan-faults = Da vedere
col-id = id
col-area = superf.
col-widest = largh.
col-where-why = dove, e perché
row-not-yet = Non ancora
row-stuck-spots = Blocchi
none-seen = nessuno visto
row-pattern = Movimento
row-promise = Promessa
row-from = Da
row-in-the-dark = Al buio
before = Prima
after = Dopo
row-ground = Terreno
col-before = prima
col-after = dopo
col-became = esito
no-pockets = nessuna da entrambi i lati
row-where = Dove
row-last = Ultima
row-usually = Di solito
row-used = Usato
row-skipped = Ignorato
skipped-nothing = nulla
row-note = Nota
in-line = (riga { $count })
row-time = Tempo
row-fixes = Rilevamenti
row-hours = Ore
row-silences = Silenzi
silences-none = nessuno
row-quality = Qualità
row-hdop = HDOP
row-repeats = Ripetizioni
row-error = Errore
row-extent = Estensione
row-reference = Riferimento

## Numeri ed elenchi

unknown = non noto
under-percent = meno di { $percent }
over-percent = oltre { $percent }
interval = intervallo al 90%: da { $low } a { $high }
no-interval = nessun intervallo
range = da { $low } a { $high }
# Two parts of a list, or the list so far and its next part.
list = { $before }, { $next }
list-apart = { $before }; { $next }
way-home-row = { $times } { $along } ({ $time })
# Two lengths of tape meet on one side of the line between their ends.
tape-from = { $length } da: { $from }
tape-side = { $tape }, sul loro lato { $eighth ->
    [0] nord
    [1] nord-est
    [2] est
    [3] sud-est
    [4] sud
    [5] sud-ovest
    [6] ovest
   *[7] nord-ovest
}
position-metres = { $east } est, { $north } nord dell’origine
fixes-poor = { $count } di scarsa qualità
fixes-jumped = { $count ->
    [one] { $count } salto
   *[other] { $count } salti
}
fixes-carried = { $count } durante un trasporto
fixes-used-of = { $used } rilevamenti su { $count } letti (esclusi: { $list })
# A time on the clock: the year has no mark between thousands.
date-time = { $day ->
    [1] 1º
   *[other] { $day }
} { $month ->
    [1] gennaio
    [2] febbraio
    [3] marzo
    [4] aprile
    [5] maggio
    [6] giugno
    [7] luglio
    [8] agosto
    [9] settembre
    [10] ottobre
    [11] novembre
   *[12] dicembre
} { $year }, { $hour }:{ $minute }

## Parole per prima e dopo

more-than-luck = più di quanto spieghino gli errori di posizione e il caso
luck-may-explain = gli errori di posizione e il caso da soli possono spiegarlo
count-pocket-change = { $value ->
    [mended] { $count ->
        [one] { $count } risolta
       *[other] { $count } risolte
    }
    [better] { $count ->
        [one] { $count } migliorata
       *[other] { $count } migliorate
    }
    [new] { $count ->
        [one] { $count } nuova
       *[other] { $count } nuove
    }
   *[unchanged] { $count ->
        [one] { $count } invariata
       *[other] { $count } invariate
    }
}
pocket-sum = { $pockets }: { $list }
nothing-to-hold-against = nulla con cui confrontarla
prediction-holds = la previsione si avvera
prediction-fails = la previsione non si avvera

## La registrazione accanto a una traccia rilevata; le colonne sono strette

error-mean = media
error-rms = rms
error-95 = 95%
error-largest = massimo
error-logged = grezzo
error-located = stimato
error-cross-track = trasversale
error-along-track = longitudinale
error-timing = tempo
error-pass-to-pass = tra passate
reference-head = { $length } di { $name }, { $fixes } confrontati{ $beside ->
    [0] { "" }
    [one] ; { $beside } a più di { $distance } di lato, escluso
   *[other] ; { $beside } a più di { $distance } di lato, esclusi
}
reference-untimed = La traccia rilevata non ha orari: gli errori lungo di essa e nel tempo non si possono dire.

## Perché una riga di una registrazione è stata ignorata

skip-reason = { $value ->
    [bad_checksum] somma di controllo errata
    [not_a_position] non porta posizioni
    [not_of_the_format] non è del formato
    [no_fix] ricevitore senza posizione
    [no_time] posizione senza orario
    [no_date] orario senza data
    [malformed] campo malformato
    [not_finite] numero non finito
    [out_of_range] fuori dai limiti
    [null_island] latitudine 0, longitudine 0
    [pole] latitudine 90 durante la ricerca
    [time_reversed] il tempo va all’indietro
    [duplicate_time] stesso orario due volte
    [duplicate_epoch] stessa epoca due volte
    [truncated] tagliata alla fine
    [same_log_twice] stessa registrazione con due nomi
    [too_long] più lunga del limite
   *[implausible] posizione non plausibile
}

## pagina: disegni e ore

map-north-up = Mappa del prato, nord in alto
map-of-lawn = Mappa del prato
map-before = Mappa prima
map-after = Mappa dopo
ground-visits = passate
ground-waits = tempo tra due passate
ground-overdue = in ritardo
never = mai
driving = marcia
driving-along = di cui lungo una linea di guida o il perimetro
standing-turning = fermo altrove, inversioni
activity-driving = marcia
activity-turning = inversioni
activity-reversing = retromarcia
activity-transit = in viaggio, andata o ritorno
activity-standing = fermo
activity-station = alla stazione
activity-carried = trasportato
activity-silent = senza rilevamenti
night-number = notte { $number }
nights-drawing = Ore per attività, una riga per notte; la tabella sotto ha le stesse cifre
axis-hours = ore
driven-that-night = percorso quella notte
so-far = finora
lawn-after = Prato dopo { $hours }
still-gained = { $percent }, +{ $points } punti
plot-over-time = Parte del prato percorsa secondo le ore di marcia
axis-lawn-percent = prato percorso, %
axis-hours-driving = ore di marcia
plot-histogram = Parte del prato secondo il numero di passate
axis-part-percent = parte del prato, %
axis-times = numero di passate
plot-gains = Parte dell’area percorsa: { $list }
gain-row = { $label } { $fraction }
axis-pocket-percent = area percorsa, %
plot-waits = Attese tra due passate: { $list }
wait-under = { $part } sotto { $hours }
wait-half = metà
wait-nine-ten = 9 su 10
wait-99 = 99 su 100
wait-allowed = ammesso
axis-waits = ore tra due passate

## mappa

key-missed = saltato: il caso non lo spiega
key-not-yet = non ancora: il caso lo spiega ancora
key-unseen = non osservato: nessun indizio
key-stuck = punto di blocco: tempo perso
key-worn = traccia d’usura
key-suggested = modifica proposta
key-tape = distanza con il metro
key-lines = linee percorse
key-lie = passaggi, partenze, difetti della planimetria
key-strays = sconfinamenti, soste possibili
key-guide = linea di guida
key-exclusion = zona di esclusione
key-obstacle = ostacolo
key-boundary = perimetro
nothing-to-draw = Nessun contorno e nessuna traccia da disegnare.
picture-line = Percorso: { $percent } di { $lawn }. Saltato: { $pockets }, { $missed }.
picture-not-counted = Non è stata data la larghezza di taglio, perciò non si è contato nulla.
picture-foot = Disegnato dalle posizioni registrate. Percorso non prova che l’erba sia stata tagliata.
# One letter: north.
north-letter = N
second-axis = secondo asse
# Names of marks, read aloud: an id, what it is, how large.
mark-missed = { $id }, saltato, { $area }
mark-not-yet = { $id }, non ancora, { $area }
mark-unseen = { $id }, senza indizi, { $area }
mark-worn = { $id }, traccia d’usura, { $length }
mark-suggested = { $id }, proposto: { $change }
mark-stuck = { $id }, punto di blocco, { $time } persi
mark-island = { $id }, isola, { $area }
mark-passage = { $id }, passaggio, largo { $length }
mark-in-no-plan = { $count ->
    [one] { $id }, in nessuna planimetria, { $count } inversione a contatto
   *[other] { $id }, in nessuna planimetria, { $count } inversioni a contatto
}
mark-stray = { $id }, sconfinamento, { $length } fuori
mark-compared = { $id }, percorso { $percent }
mark-station = stazione

## terminale: il prato in caratteri, file

chart-key = { $bare } non percorso, { $one } fino a { $first }, { $two } fino a { $second }, { $three } fino a { $third }, { $four } di più; { $missed } saltato, { $not_yet } non ancora, { $stuck } punto di blocco, { $station } stazione; un carattere è largo { $length }{ $north ->
    [up] , il nord è in alto
   *[unknown] { "" }
}
row-written = Scritto

## Perché un file è tralasciato

file-elsewhere = lo crea il comando, da findings.json con tussock report
file-tells-where = direbbe dove si trova il giardino
file-local-metres = le posizioni sono in metri locali, senza coordinate geografiche
file-not-counted = senza larghezza di taglio non si è contato nulla
file-not-driven = non è stato percorso nulla

## mattina: giardini

garden-gain = { $garden }: { $area } a notte da guadagnare
failed = Non riuscito
# What an alarm says. $why is a sentence of the store, in English.
alarm-less-visited = Prato percorso: { $found }, di solito { $usual } in altrettante ore, dal { $since }.
alarm-hours = { $value ->
    [lost_hours] { $found } di marcia, di solito { $usual }, dal { $since }.
   *[silences] { $found } senza posizioni, di solito { $usual }, dal { $since }.
}
alarm-receiver-worse = Le posizioni sbagliano di { $found }, di solito { $usual }, dal { $since }.
alarm-stuck-spot = Bloccato nello stesso punto dal { $since }, { $nights ->
    [one] { $nights } notte
   *[other] { $nights } notti
}, { $found } nell’ultima: { $why }
alarm-missed-pocket = Saltato dal { $since }, { $nights ->
    [one] { $nights } notte
   *[other] { $nights } notti
}: { $found }. { $why }
alarm-promise = Prato percorso in { $count ->
    [one] { $count } giorno
   *[other] { $count } giorni
}: { $found }, promesso { $usual }, dal { $since }.
alarm-absent = { $machine ->
    [none] Nessuna registrazione dal { $since }: { $nights ->
        [one] { $nights } notte attesa.
       *[other] { $nights } notti attese.
    }
   *[other] Nessuna registrazione di { $machine } dal { $since }: { $nights ->
        [one] { $nights } notte attesa.
       *[other] { $nights } notti attese.
    }
}

## pagina locale: una riga ciascuno; ciò che è tra parentesi graffe resta com’è

page-what-to-do = Che cosa fare
page-open = Aprire
page-see = Vedere
page-stop = Fermare
page-compare = Confrontare
page-save = Salvare
page-no-script = Questa pagina funziona con JavaScript, che qui è disattivato.
page-how-far = A che punto è il lavoro
page-open-title = Che cosa ha lasciato in piedi il robot?
page-open-lead = Scegliere le posizioni che ha registrato, trascinarle in un punto qualsiasi di questa pagina, oppure incollarle. Nulla lascia questo dispositivo: la pagina vieta ogni connessione e funziona senza rete.
page-logs = Registrazioni
page-logs-means = GPX, NMEA 0183, CSV, KML e altri, compressi con gzip o no; di un solo giardino, in uno o più file. Un findings.json salvato si apre così com’è.
page-choose-logs = Scegliere le registrazioni
page-paste = Incollare una registrazione
page-paste-text = Testo della registrazione
page-paste-take = Prendere questo testo
page-plan = Planimetria
page-plan-if = se ce n’è una
page-plan-means = Il prato, le zone, gli ostacoli, le linee di guida e la stazione, come GeoJSON. Senza, il contorno è disegnato dal tragitto.
page-choose-plan = Scegliere una planimetria
page-machine = Robot
page-width = Larghezza del disco di taglio
page-cm = cm
page-width-means = Se il campo resta vuoto, la danno le impostazioni; se non la danno, la risposta vale per più larghezze.
page-choose-settings = Scegliere le impostazioni
page-suggest = Provare modifiche e proporre la migliore (richiede più tempo)
page-find = Trovare che cosa è stato saltato
page-demo = Prendere il giardino inventato
page-kept = Conservato su questo dispositivo
page-forget = Eliminare tutto ciò che è conservato
page-cautions = Fermare e disattivare il robot prima di toccarlo: le lame si muovono. Il montaggio di un registratore, lo scavo e i lavori alla stazione richiedono precauzioni proprie, riportate nella pagina che si ottiene.
page-page = La pagina
page-hand-over = La pagina da consegnare
page-ask-title = Chiedere di un punto
page-begin = Cominciare la pagina con questa risposta
page-type-place = Scrivere un punto
page-or-tap = Oppure toccarlo sulla mappa.
page-place = Punto
page-typed-in = inserito a mano
page-metres = metri est, nord
page-degrees = gradi, prima la latitudine
page-such-as = Per esempio 4.5,-2 o 53.86006,12.42021. I metri si contano dall’origine dei risultati.
page-said = Che cosa ne è stato detto
page-ask = Chiedere
page-compare-title = Che cosa ha portato una modifica?
page-before = Prima
page-after = Dopo
page-logs-before = Scegliere le registrazioni di prima
page-the-plan = Scegliere la planimetria
page-logs-after = Scegliere le registrazioni di dopo
page-plan-changed = Scegliere la planimetria, se è cambiata
page-compare-means = Ogni lato prende registrazioni, oppure un solo findings.json. La larghezza di taglio e le impostazioni sono quelle sotto Aprire.
page-print = Stampare la pagina
page-private = Senza luogo, nomi e date
page-keep-title = Conservare su questo dispositivo
page-keep-means = Nulla è conservato se non lo si chiede. Ciò che si conserva sono i risultati, la planimetria e le impostazioni, in questo browser; chi lo usa può aprirli, e così altre pagine aperte da questo dispositivo. Se lo usano altri, salvare invece dei file.
page-garden-name = Nome del giardino
page-keep = Conservare
page-drop = Trascinare qui registrazioni, una planimetria o impostazioni
page-no-worker = qui il calcolo in secondo piano non può funzionare: { $reason }
page-not-let = questo browser non lo permette
page-broke-off = il lavoro si è interrotto: { $why }
page-broke-off-hint = è un difetto dello strumento, oppure il dispositivo non ha più memoria; i file sono come prima
page-take-out = togliere
page-take-out-file = togliere { $file }
page-hint = consiglio: { $hint }
page-seconds = { $stage }, { $seconds } s
page-starting = avvio
page-stopped = fermato
page-reading = lettura di { $file }
page-unreadable = { $file }: non si può leggere: { $reason }
page-choose-again = sceglierlo di nuovo
page-side-empty = un lato non ha registrazioni; servono registrazioni o un findings.json da entrambi i lati
page-no-log = non è stata data nessuna registrazione; serve una registrazione (GPX, NMEA 0183, CSV, ...) o un findings.json
page-no-log-hint = scegliere dei file, trascinarli su questa pagina, oppure prendere il giardino inventato
page-file-page = la pagina da consegnare
page-file-findings = tutti i numeri; si riapre qui
page-file-geojson = tutto ciò che ha un luogo, per le mappe
page-file-gpx = guida fino alle aree
page-file-comparison = tutti i numeri
page-no-file = nessun { $file }: { $why }
page-keeps-nothing = questo browser non conserva nulla per questa pagina: { $reason }
page-no-reason = nessun motivo indicato
page-save-instead = salvare invece findings.json
page-open-kept = aprire
page-open-garden = aprire { $garden }
page-is-kept = { $garden } è conservato
page-cannot-delete = non si può eliminare: { $reason }
page-clear-data = cancellare i dati di questa pagina nelle impostazioni del browser
# The name of this language in itself: English, Deutsch, ...
page-this-language = italiano
page-language = Lingua
page-remember = Ricordare su questo dispositivo
page-stage-drawing = disegno
page-stage-reading = lettura
page-stage-comparing = confronto
page-stage-locating = localizzazione
page-stage-counting = conteggio
page-stage-calibrating = calibrazione
page-stage-diagnosing = diagnosi
page-stage-suggesting = proposte
