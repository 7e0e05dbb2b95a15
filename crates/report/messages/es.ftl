# Draft. Nobody who speaks Spanish natively has reviewed this yet.
# What Tussock says, in Spanish. How a number is written and what stands in square brackets is told at the beginning of en.ftl.

## Qué muestran las posiciones de un registro, o lo único que hay que cambiar

positions_right = Las posiciones son buenas: su error es de unos { $error_m }.
positions_off = Las posiciones se desvían unos { $error_m }: monte la antena más alta, con el cielo despejado a la vista, o registre con un receptor RTK.
receiver_jumps = El receptor saltó y ya no volvió: las posiciones de antes y de después del salto no concuerdan. Averigüe qué le tapa el cielo, o entregue en archivos separados el registro de antes y el de después del salto.
error_not_shown = Este registro no muestra cuánto se desvían sus posiciones: deje el robot parado diez minutos con el registrador en marcha.
fixes_too_rare = Con una posición cada { $period_s } no se ven los giros: registre una por segundo.
digits_too_coarse = Las posiciones están registradas en pasos de { $step_m }: haga que el registrador escriba más decimales (siete si son grados, cinco si son minutos).

## Por qué un registro no muestra nada de un césped

mostly_jumps = { $jumps } de { $fixes } posiciones están más lejos de la anterior de lo que un robot puede avanzar en ese tiempo (positions.max_speed_mps vale { $max_speed_mps }): es un vehículo, o las posiciones saltan.
too_few_fixes = { $fixes ->
    [one] De { $fixes } posición se puede usar { $used }
   *[other] De { $fixes } posiciones se pueden usar { $used }
}, muy pocas para mostrar una marcha: deje el registrador encendido durante una salida completa.
not_one_garden = Las posiciones abarcan { $extent_m }: no es el registro de un solo jardín, o hay saltos que lo ocultan. Entregue solo los archivos de un jardín.
fixes_far_too_rare = Una posición cada { $period_s } no muestra nada de un césped: registre una por segundo.
walking_pace = Se mueve a { $speed_mps }, al paso de una persona: entregue un registro del robot trabajando o, si de verdad es tan rápido, indique su velocidad (machine.speed_mps).
walk_round = Esto parece una vuelta a pie alrededor de { $area_m2 } de jardín ({ $length_m } a { $speed_mps }), no el registro de un robot: haga de ella un plano con tussock plan from-walk FILE{ $gpx ->
    [yes] { "" }
   *[other] , una vez guardada como GPX
}. Si a pesar de todo es el robot, indique su velocidad (machine.speed_mps).

## Desde dónde se mide con la cinta

landmark_station = la estación
landmark_middle = el centro de «{ $body }»
landmark_corner_at = la esquina { $body ->
    [none] del césped
   *[other] de «{ $body }»
} junto a { $beside ->
    [none] la estación
   *[other] «{ $beside }»
}
landmark_corner_nearest = la esquina { $body ->
    [none] del césped
   *[other] de «{ $body }»
} más cercana a la estación
landmark_corner = la esquina{ $outermost ->
    [yes] { " " }extrema
   *[other] { "" }
} { $body ->
    [none] del césped
   *[other] de «{ $body }»
} al { $wind_deg }
landmark_corner_apart = la esquina { $body ->
    [none] del césped
   *[other] de «{ $body }»
} al { $wind_deg } que está { $farther ->
    [yes] más lejos de
   *[other] más cerca de
} { $beside ->
    [none] la estación
   *[other] «{ $beside }»
}

## Qué hizo o notó el lector de un registro

time_without_zone = Las horas no indican su zona horaria y se toman como UTC.
time_is_relative = Las horas cuentan desde un inicio propio del registrador y no llevan fecha.
gps_time = Las horas son tiempo GPS y se convirtieron a UTC, con 18 segundos intercalares desde 2017 (IERS, Bulletin C).
week_rollover_repaired = { $fixes ->
    [one] 1 posición estaba fechada
   *[other] { $fixes } posiciones estaban fechadas
} 1024 semanas antes de tiempo (vuelta a cero de la semana GPS), corrección de { $days } días; la primera es ahora del { $date }.
late_fixes = { $fixes ->
    [one] 1 posición se escribió con retraso y se puso en su sitio.
   *[other] { $fixes } posiciones se escribieron con retraso y se pusieron en su sitio.
}
newest_first = El registro empieza por la posición más reciente; se invirtió su orden.
block_out_of_order = Una parte del registro se escribió con retraso.
tracks_overlap = Hay recorridos que coinciden en el tiempo; sus posiciones se pusieron en un solo orden y nada se une de uno a otro.
times_do_not_fit = Un recorrido tiene { $times } horas y { $positions } posiciones, y no se puede saber cuáles van juntas; se dejó fuera.
constant_quality = GGA llama a cada posición { $manual ->
    [yes] manual (7)
   *[other] simulada (8)
} donde RMC dice que es válida; el tipo de posición se tomó de RMC.
several_machines = El registro contiene { $machines } robots, distinguidos por dónde estaban a las mismas horas.
same_log_twice = El mismo contenido que { $log }, leído una sola vez.
overlaps_another_log = { $fixes ->
    [one] Se dejó fuera 1 posición
   *[other] Se dejaron fuera { $fixes } posiciones
} desde el { $date }, a horas que cubre otro registro de este robot.
file_not_closed = El archivo no está cerrado al final, como si se hubiera apagado el registrador.
file_damaged = El archivo comprimido está dañado, le falta el final: { $fault }
line_too_long = Una línea de { $bytes } bytes supera { $limit }, el límite de limits.line_bytes, y se pasó por alto.
line_cut = Una línea de más de { $bytes } bytes supera { $limit }, el límite de limits.line_bytes, y se pasó por alto.
attribute_too_long = Un atributo de { $bytes } bytes supera { $limit }, el límite de limits.attribute_bytes, y se pasó por alto.
document_type_ignored = El tipo de documento se ignora y no se sustituye ninguna entidad que defina.

## Qué hizo o notó el lector de una vuelta a pie

walk_markup_broken = El archivo está dañado en { $places ->
    [one] 1 lugar, que se pasó
   *[other] { $places } lugares, que se pasaron
} por alto; mire si falta algo en el plano.
walk_taken_as_lawn = «{ $track }» (cerrado, { $area_m2 }, { $length_m } de contorno) se toma como el césped: es el único recorrido que vuelve a donde empezó. Si es otra cosa, dígalo con --role "{ $track }=ROLE".
walk_positions_skipped = { $positions ->
    [one] 1 posición
   *[other] { $positions } posiciones
} de «{ $track }» sin latitud y longitud utilizables.
walk_name_unknown = «{ $track }» se deja fuera, su nombre no dice qué es.{ $seems ->
    [none] { "" }
   *[other] { " " }Si es lo que parece, dígalo con --role "{ $track }={ $seems }".
}
walk_spikes_cut = { $positions ->
    [one] 1 posición de «{ $track }» salta lejos y vuelve; se deja fuera.
   *[other] { $positions } posiciones de «{ $track }» saltan lejos y vuelven; se dejan fuera.
}
walk_waits_as_corners = En «{ $track }» quien caminaba se paró en { $places ->
    [one] 1 lugar; queda como esquina.
   *[other] { $places } lugares; cada uno queda como esquina.
}
walk_pieces_joined = «{ $track }» se grabó en { $pieces } trozos, unidos por líneas rectas.
walk_overlap_cut = «{ $track }» se recorrió a pie { $past_m } más allá de su inicio; ese tramo final se cortó.
walk_gap_closed = «{ $track }» se cerró con una línea recta de { $gap_m }.
walk_loops_cut = { $loops ->
    [one] Se cortó 1 bucle pequeño de «{ $track }».
   *[other] Se cortaron { $loops } bucles pequeños de «{ $track }».
}
walk_guide_turned = «{ $track }» se recorrió a pie hacia la estación; se invirtió su sentido.

## Qué más hay en contra de un registro

stood_all_the_time = El robot estuvo parado todo el tiempo: deje el registrador encendido durante varias salidas completas.
drove_too_short = Solo se registraron { $driven_s } de marcha: deje el registrador encendido durante varias salidas completas.
drove_too_short_by = Se registraron { $driven_s } de marcha: hacen falta unas { $missing_h } más para que un hueco de { $wanted_m } de ancho sea algo más que mala suerte.
receiver_jumped = El receptor saltó { $size_m } ({ $time }) y se quedó allí.
receiver_jumps_back = El receptor saltó y volvió { $jumps } veces: en una parte del césped ve mal el cielo.
stops_not_placed = Hay paradas, { $lost_min } en total, que no se indican: con posiciones tan malas no se ve dónde se paró el robot.
receiver_jumped_often = { $jumps ->
    [one] Y un salto más de ese tipo.
   *[other] Y { $jumps } saltos más de ese tipo.
}
date_too_old = El registro empieza en la fecha { $date }: el reloj del registrador no estaba en hora, o su contador de semanas volvió a cero. Las fechas están mal; las horas del día pueden estar bien (--date fija el día de los registros que solo llevan horas).
positions_bent = En unos { $area_m2 } alrededor de { $place }, las posiciones se desvían siempre hacia el mismo lado, hasta { $largest_m }, como junto a un muro o bajo los árboles. Allí se enderezó la trayectoria; es menos seguro cuánto de ese terreno se recorrió.
turns_not_at_edge = Los giros no están en los bordes del plano (calles paralelas, o un plano que no encaja), así que no se usaron los bordes para corregir las posiciones.
edge_inside = En el borde { $edge_deg } el robot gira { $offset_m } más adentro que en los demás bordes ({ $turns ->
    [one] 1 giro
   *[other] { $turns } giros
}): el borde está dibujado demasiado afuera, el límite está demasiado adentro, o el receptor se desvía allí. Mida en el césped antes de mover nada.
edge_outside = En el borde { $edge_deg } el robot gira { $offset_m } más afuera que en los demás bordes ({ $turns ->
    [one] 1 giro
   *[other] { $turns } giros
}): el borde está dibujado demasiado adentro, el límite está demasiado afuera, o el receptor se desvía allí. Mida en el césped antes de mover nada.
zone_driven = La zona{ $zone ->
    [none] { "" }
   *[other] { " " }«{ $zone }»
} se recorre igual que el césped ({ $path_m } de trayectoria dentro): para el robot no existe. Lo que haya allí puede no estar a salvo de él.
plan_beside = El plano está desplazado { $distance_m } respecto al registro ({ $east_m } al este, { $north_m } al norte); se movió para que coincidiera con él.
drift_assumed = El registro no dice cómo de buenas son sus posiciones, y el robot nunca se para lo bastante para que se vea; se supone una deriva de { $drift_m }. Si conoce un valor mejor, indíquelo (positions.drift_m).
drift_at_most = El robot nunca se para lo bastante para que se vea cuánto derivan las posiciones; sus tramos rectos admiten { $drift_m } como máximo.
silent_long = Durante el { $silent_fraction } del tiempo no hay posiciones utilizables; de ese tiempo no se afirma nada.
fixes_left_out = { $poor ->
    [0] { $jumps ->
        [one] Se descartó 1 posición por ser un salto.
       *[other] Se descartaron { $jumps } posiciones por ser saltos.
    }
    [one] { $jumps ->
        [0] Se descartó 1 posición por mala calidad.
        [one] Se descartaron 1 posición por mala calidad y 1 por ser un salto.
       *[other] Se descartaron 1 posición por mala calidad y { $jumps } por ser saltos.
    }
   *[other] { $jumps ->
        [0] Se descartaron { $poor } posiciones por mala calidad.
        [one] Se descartaron { $poor } posiciones por mala calidad y 1 por ser un salto.
       *[other] Se descartaron { $poor } posiciones por mala calidad y { $jumps } por ser saltos.
    }
}
no_station = No se reconoció ninguna estación de carga: los descansos de diez minutos o más no se repiten en un mismo lugar.
claim_too_good = El receptor declara { $claimed_m }, pero sus posiciones se dispersan { $scatter_m }: se cree a la dispersión, no a lo declarado.
rtk_fixed_too_good = El receptor da sus posiciones por RTK fijo, es decir, unos { $usual_m }, pero se dispersan { $scatter_m }: se cree a la dispersión, no a lo declarado.
positions_repeated = El { $repeated_fraction } de las posiciones repite la anterior hasta la última cifra mientras el receptor indica una velocidad (durante { $longest_s } como mucho): está entregando posiciones viejas.
positions_held = El { $repeated_fraction } de las posiciones repite la anterior hasta la última cifra (durante { $longest_s } como mucho): el receptor congela su posición mientras está parado, de modo que en los descansos las posiciones parecen mejores de lo que son. Desactive esa función del receptor (static hold).
drives_at_rest = { $rest_min } de los { $driven_min } de marcha caen en horas en que la configuración deja descansar al robot ({ $time_zone ->
    [none] no hay zona horaria configurada, se usa UTC
   *[other] zona horaria { $time_zone }
}); ningún desplazamiento de horas enteras lo arregla.
drives_at_rest_shifted = { $rest_min } de los { $driven_min } de marcha caen en horas en que la configuración deja descansar al robot ({ $time_zone ->
    [none] no hay zona horaria configurada, se usa UTC
   *[other] zona horaria { $time_zone }
}); { $shift_h } { $later ->
    [yes] más tarde
   *[no] antes
} encajarían{ $local_time ->
    [yes] : parece que el registro lleva hora local marcada como UTC.
   *[no] .
}
calibrated = { $runs ->
    [one] Se simuló sobre el plano un registro
   *[other] Se simularon sobre el plano { $runs } registros
} como este; la fracción recorrida se corrigió en { $points } puntos por el sesgo que se vio.
ways_disagree = Dos formas de contar se contradicen: el { $by_path_fraction } según la trayectoria ajustada a giros y bordes, el { $as_logged_fraction } según las posiciones tal como se registraron, corregidas de sus errores. Se usa la segunda, y no se da por omitido ningún terreno.
as_logged_silent = Contado tal como se registró sería el { $as_logged_fraction }: falta lo que se recorrió durante los silencios ({ $silent_fraction } del tiempo).
as_logged_sparse = Contado tal como se registró sería el { $as_logged_fraction }: con una posición cada { $period_s }, las líneas rectas de una a otra recortan los giros.
as_logged_spread = Contado tal como se registró sería el { $as_logged_fraction }: posiciones desviadas en unos { $error_m } reparten la trayectoria por terreno que no se recorrió.
as_logged_aside = Contado tal como se registró sería el { $as_logged_fraction }: posiciones desviadas en unos { $error_m } sacan la trayectoria del césped, o la llevan a terreno ya recorrido.
not_calibrated_no_width = La fracción recorrida no se calibró: para eso hace falta el ancho de corte.
not_calibrated_no_plan = La fracción recorrida no se calibró: para eso hace falta un plano sobre el que simular.
not_calibrated_lanes = La fracción recorrida no se calibró: las calles paralelas no se pueden simular con bastante fidelidad.
not_calibrated_no_drive = La fracción recorrida no se calibró: el registro no muestra ninguna marcha.
not_calibrated_no_run = La fracción recorrida no se calibró: ningún robot como este puede moverse sobre el plano.

## Qué se deduce cuando dos respuestas a una pregunta se contradicen

interval_holds_both = El intervalo se amplía para que quepan tanto el { $one_fraction } como el { $other_fraction }.
interval_wider = El ancho del intervalo se multiplica por { $times }.
interval_wider_by = El intervalo se amplía un { $more_fraction } del césped a cada lado.
plan_not_believed = Los bordes del plano explican solo el { $explained_fraction } de los giros, así que donde el registro no muestra cómo queda el plano no se nombra ninguna causa.
legs_unlike = El tramo habitual entre giros mide { $logged_m } en el registro y { $drawn_m } en las simulaciones del robot ajustado: se mueve de un modo que el modelo no conoce, y lo que predicen las simulaciones es menos seguro.
shows_wider = El terreno de hasta { $widest_m } de ancho queda sin decidir: solo se verían huecos más anchos.

## Por qué se omitió un hueco

too_narrow_to_explain = No se recorrió, pero con posiciones tan malas no se ve por qué quedó un hueco de { $widest_m } de ancho; vaya a mirar.
gap_too_narrow = A la parte de detrás ({ $behind_m2 }) no se llega: el paso mide { $width_m } de ancho y el robot necesita más de { $needed_m }.
no_way_in = Esta parte ({ $area_m2 }) no tiene entrada: en el plano no está unida al terreno del que parte el robot.
no_way_in_driven = Esta parte ({ $area_m2 }) no tiene entrada: nada de lo que recorrió el robot lleva hasta ella.
turns_before_edge = Aquí el robot gira { $setback_m } antes del borde, así que su disco no llega a esta franja.
zone_elsewhere = La zona{ $zone ->
    [none] { "" }
   *[other] { " " }«{ $zone }»
} parece estar en otro sitio que el dibujado: el robot avanzó { $path_m } dentro de la zona dibujada y giró en una línea fuera de ella.
zone_elsewhere_towards = La zona{ $zone ->
    [none] { "" }
   *[other] { " " }«{ $zone }»
} parece estar más al { $towards_deg } de lo que está dibujada: el robot avanzó { $path_m } dentro de la zona dibujada y giró en una línea fuera de ella.
stuck_on_the_way = El robot se atascó { $times ->
    [1] una vez
    [2] dos veces
   *[other] { $times } veces
} ({ $lost_min }) de camino a esta parte.
stuck_on_the_way_past = El robot se atascó { $times ->
    [1] una vez
    [2] dos veces
   *[other] { $times } veces
} ({ $lost_min }) de camino a esta parte y { $at_least ->
    [yes] logró pasar al menos { $past ->
        [1] una vez
        [2] dos veces
       *[other] { $past } veces
    }
   *[no] { $past ->
        [0] nunca logró pasar
        [1] logró pasar una vez
        [2] logró pasar dos veces
       *[other] logró pasar { $past } veces
    }
}.
passage_shut = El pasillo de { $width_m } parece cerrado: en { $driven_h } de marcha { $expected ->
    [one] se esperaba 1 cruce y no se vio ninguno.
   *[other] se esperaban { $expected } cruces y no se vio ninguno.
}
something_stands = Aquí hay algo de unos { $widest_m } de ancho que el plano no muestra: el robot dio la vuelta ante ello { $turns ->
    [1] una vez
    [2] dos veces
   *[other] { $turns } veces
} y nunca entró.
something_may_stand = Aquí hay algo de unos { $widest_m } de ancho, o el césped tiene un claro: el robot dio la vuelta ante ello { $turns ->
    [1] una vez
    [2] dos veces
   *[other] { $turns } veces
} y nunca entró. ¿Es un arriate, un árbol o un estanque? Un plano que lo mostrara lo aclararía.
strip_stays = Queda una franja de { $width_m } de ancho a lo largo de { $length_m } del borde { $edge_deg }.
strip_stays_turns = Queda una franja de { $width_m } de ancho a lo largo de { $length_m } del borde { $edge_deg }: aquí el robot gira { $here_m } antes del borde; en el resto, { $elsewhere_m }.
passage_seldom_found = { $entries ->
    [0] Ni una sola vez
    [1] { $at_least ->
        [yes] Que se viera, solo una vez
       *[no] Solo una vez
    }
    [2] { $at_least ->
        [yes] Que se viera, solo dos veces
       *[no] Solo dos veces
    }
   *[other] { $at_least ->
        [yes] Que se viera, solo { $entries } veces
       *[no] Solo { $entries } veces
    }
} en { $driven_h } de marcha encontró el robot el camino por el pasillo de { $width_m }; los { $behind_m2 } de detrás recibieron el { $share_ratio } de lo que les corresponde.
behind_passage_seldom = Nada bloquea esta parte, pero el robot va demasiado poco: los { $behind_m2 } de detrás del pasillo de { $width_m } recibieron el { $share_ratio } de lo que les corresponde, y con salidas como las de ahora seguirá así.
comes_seldom = Nada bloquea esta parte, pero el robot va demasiado poco: el terreno de alrededor recibió el { $share_ratio } de lo que le corresponde.
not_shown = Se omite más a menudo de lo que explica el azar, pero este registro no muestra por qué; vaya a mirar.

## Indicios a favor

luck_not_lanes = Una vuelta completa por calles paralelas no deja por azar un hueco de { $width_m } de ancho.
luck_under_thousandth = El azar por sí solo deja un hueco de { $width_m } de ancho en menos de 1 de cada 1000 céspedes así.
luck_one_in = El azar por sí solo deja un hueco de { $width_m } de ancho aproximadamente en 1 de cada { $lawns } céspedes así.
passage_width = { $width_m } en su punto más estrecho, de los que quedan { $free_m } libres para el centro del robot; { $length_m } de largo.
passage_crossings = { $at_least ->
    [yes] Cambió de lado al menos { $crossings ->
        [1] una vez
        [2] dos veces
       *[other] { $crossings } veces
    }
   *[no] { $crossings ->
        [0] No cambió de lado ninguna vez
        [1] Cambió de lado una vez
        [2] Cambió de lado dos veces
       *[other] Cambió de lado { $crossings } veces
    }
}; un robot que se moviera con libertad lo habría hecho { $expected ->
    [0] menos de una vez
    [1] una vez
    [2] dos veces
   *[other] { $expected } veces
} en esta trayectoria.
driven_behind = { $path_m } de trayectoria detrás, el { $share_ratio } de lo que corresponde.
nothing_driven_in = No hay ninguna trayectoria dentro.
cells_near_edge = Nueve décimas partes están a menos de { $within_m } del borde.
path_in_zone = { $path_m } de trayectoria dentro de la zona tal como está dibujada.
turns_beside = { $turns ->
    [one] 1 giro
   *[other] { $turns } giros
} junto a este hueco, donde el plano no tiene borde.
stops_on_the_way = { $stops ->
    [one] 1 parada
   *[other] { $stops } paradas
}, { $lost_min } en total; { $passes ->
    [one] 1 pasada
   *[other] { $passes } pasadas
} sin parar.
share_behind = La parte de detrás recibió el { $share_ratio } de lo que le corresponde.
crossings_expected = { $expected ->
    [one] Se esperaba 1 cruce
   *[other] Se esperaban { $expected } cruces
}, no se vio ninguno.
turns_in_front = { $turns ->
    [one] 1 giro
   *[other] { $turns } giros
} delante, donde el plano no tiene borde.
turns_around = { $turns ->
    [one] 1 giro
   *[other] { $turns } giros
} ante ello, a lo largo del { $rim_fraction } de su contorno abierto.
passes_expected = { $passes ->
    [one] Se esperaba 1 pasada
   *[other] Se esperaban { $passes } pasadas
} sobre un terreno de este ancho, no se vio ninguna.
strip_shape = { $length_m } de largo, { $widest_m } en su punto más ancho, nueve décimas partes a menos de { $within_m } del borde.
turns_along = { $turns ->
    [one] 1 giro
   *[other] { $turns } giros
} a lo largo de su lado interior.
path_nearby = Cerca de allí se recorrió el { $share_ratio } de la trayectoria media del césped.
share_simulated = Las simulaciones desde esta estación le dan el { $share_ratio } de la trayectoria media del césped.

## Indicios en contra

gap_nearly_wide = El paso es casi tan ancho como necesita el robot, o apenas más: mídalo.
few_turns = Solo { $turns ->
    [one] 1 giro.
   *[other] { $turns } giros.
}
visits_hidden = Con posiciones tan malas no se ven las pasadas cortas.
strip_thin = La franja es más estrecha que el triple del error de posición.
zone_may_be_open = La zona puede estar bien dibujada y haberse abierto a propósito.
also_behind_passage = Además, la parte está detrás de un pasillo de { $width_m }.
one_outing_matters = Una sola salida afortunada cambiaría mucho estas cifras.
luck_leaves_such = Con salidas así, el azar deja un lugar como este de vez en cuando.
look_decides = Para saber cuál de las dos es: { $look ->
    [passage] mire si hay algo en el pasillo.
    [width] mida el pasillo con una cinta métrica.
    [ground] mire si hay algo en ese terreno, o algo que lo cierre.
    [zone] mida si la zona está donde está dibujada.
    [stuck_spot] mire el lugar donde se atasca el robot.
    [edge] observe a qué distancia del borde gira allí el robot.
   *[another_log] registre otras { $log_h } de marcha; si el robot puede entrar, el { $told_fraction } de esos registros lo muestra allí.
}

## Terreno del que no se decide nada

not_yet = Aún no falla nada: { $driven_h } de marcha son pocas para { $lawn_m2 }; de vez en cuando es normal un hueco de { $widest_m }.
not_yet_until = Aún no falla nada: { $driven_h } de marcha son pocas para { $lawn_m2 }; los huecos de { $widest_m } son normales hasta unas { $decided_h } de marcha.
hidden_by_silence = El registro está en silencio mientras el robot pudo haber estado allí (probabilidad: { $chance_fraction }).
cause_withheld = Este registro no muestra cómo queda el plano en el jardín, así que no se nombra ninguna causa ni se propone ningún cambio. Vaya a mirar, y revise el plano o registre posiciones mejores.
shown_too_little = El registro muestra demasiado poco para saber si esto se omitió.

## Qué mirar donde se atascó

stuck_near = Está a { $distance_m } { $feature ->
    [zone] del borde de la zona de exclusión «{ $name }»
    [obstacle] del borde del obstáculo «{ $name }»
   *[lawn_edge] del borde del césped
}: busque allí raíces, un escalón o suelo blando.
stuck_in_passage = Está en el pasillo de { $width_m }: busque allí raíces, un escalón o suelo blando.
stuck_in_passage_near = Está en el pasillo de { $width_m }, a { $distance_m } { $feature ->
    [zone] del borde de la zona de exclusión «{ $name }»
    [obstacle] del borde del obstáculo «{ $name }»
   *[lawn_edge] del borde del césped
}: busque allí raíces, un escalón o suelo blando.
stuck_in_the_open = En el plano no hay nada cerca: busque raíces, un hoyo o suelo blando.
stuck_somewhere = Busque raíces, un hoyo o suelo blando.

## Qué cambiar

lay_guide_run = Coloque una línea guía con { $wire_m } de cable nuevo hasta el extremo más alejado de { $pocket } y mande por ella { $outings_of_ten } de cada 10 salidas{ $longer ->
    [yes] , y deje que el robot trabaje { $added_h } más al día
   *[no] { "" }
}: en { $log_h } como estas, lo habitual es que entonces se recorra cerca del { $after_fraction } de { $pocket }, frente al { $before_fraction } si no se cambia nada.
move_zone = Mueva { $shift_m } la zona «{ $zone }» hasta donde está dibujada, pues los giros muestran que está en otro sitio{ $longer ->
    [yes] , y deje que el robot trabaje { $added_h } más al día
   *[no] { "" }
}: en { $log_h } como estas, lo habitual es que entonces se recorra cerca del { $after_fraction } de { $pocket }, frente al { $before_fraction } si no se cambia nada.
facing_side = El lado que mira al { $faces_deg }.
shrink_zone = Retire { $shift_m } el lado de la zona «{ $zone }» que mira al { $faces_deg }, para que el camino que pasa junto a ella hacia { $pocket } tenga { $passage_m } de ancho{ $longer ->
    [yes] , y deje que el robot trabaje { $added_h } más al día
   *[no] { "" }
}: en { $log_h } como estas, lo habitual es que entonces se recorra cerca del { $after_fraction } de { $pocket }, frente al { $before_fraction } si no se cambia nada.
add_zone = Mantenga el robot fuera del lugar donde se atasca ({ $spot }), para que llegue más a menudo a { $pocket }{ $longer ->
    [yes] , y déjelo trabajar { $added_h } más al día
   *[no] { "" }
}: en { $log_h } como estas, lo habitual es que entonces se recorra cerca del { $after_fraction } de { $pocket }, frente al { $before_fraction } si no se cambia nada.
work_longer = Déjelo trabajar { $added_h } más al día: en { $log_h } como estas, lo habitual es que entonces se recorra cerca del { $after_fraction } de { $pocket }, frente al { $before_fraction } si no se cambia nada.
shift_boundary = Desplace el límite { $shift_m } hacia fuera a lo largo de { $pocket }{ $longer ->
    [yes] , y deje que el robot trabaje { $added_h } más al día
   *[no] { "" }
}: en { $log_h } como estas, lo habitual es que entonces se recorra cerca del { $after_fraction } de { $pocket }, frente al { $before_fraction } si no se cambia nada.

## Hasta qué punto se parece un robot simulado al registro

fit_trusted = Un robot simulado que se mueve como este ({ $speed_mps }, aprendido de { $turns ->
    [one] 1 giro
   *[other] { $turns } giros
} y { $outings ->
    [one] 1 salida
   *[other] { $outings } salidas
}) recorre tanto césped como muestra el registro.
fit_visits_differ = Las simulaciones recorren más o menos césped de lo que muestra el registro: falta en el plano algo que hay en el terreno, o el robot se comporta distinto de un día a otro. Las predicciones se dan con intervalos más amplios.
fit_path_differs = En las simulaciones la trayectoria es más larga o más corta que en el registro. Las predicciones se dan con intervalos más amplios.
not_fitted_lanes = No se predice nada: el robot va por calles paralelas, que no dependen del azar.
not_fitted_several_machines = No se predice nada: aquí trabajaron { $machines } robots, y solo se puede ajustar uno.
not_fitted_few_turns = No se predice nada: { $turns ->
    [one] solo se vio 1 giro en un borde
   *[other] solo se vieron { $turns } giros en un borde
}, y hacen falta { $expected }.
not_fitted_no_legs = No se predice nada: la trayectoria no muestra tramos rectos entre giros.
not_fitted_no_ground = No se predice nada: el plano no deja terreno por el que moverse.
not_simulated = No se predice nada: { $why }.

## Horas y hierba

promise_beyond_hours = El { $promised_fraction } en { $promised_days ->
    [one] 1 día
   *[other] { $promised_days } días
} no se alcanza con más horas: harían falta { $needed_h } de trabajo al día.
promise_needs_hours = Para el { $promised_fraction } en { $promised_days ->
    [one] 1 día
   *[other] { $promised_days } días
} hacen falta unas { $needed_h } de trabajo al día a este ritmo; trabajó { $worked_h }, de ellas { $driven_h } de marcha.
promise_beyond_reach = Ninguna jornada es lo bastante larga para alcanzar el { $promised_fraction } en { $promised_days ->
    [one] 1 día
   *[other] { $promised_days } días
}: se omite demasiado terreno. Trabajó { $worked_h } al día, de ellas { $driven_h } de marcha.
promise_hours_unknown = Trabajó { $worked_h } al día, de ellas { $driven_h } de marcha; este registro no permite saber qué haría falta para el { $promised_fraction } en { $promised_days ->
    [one] 1 día
   *[other] { $promised_days } días
}.
lower_cut_unknown = Este registro no permite saber si se recorrieron todos los lugares con la altura de corte actual.
lower_cut = Con la altura actual se recorrieron todos los lugares lo bastante anchos para verse (al menos el { $visited_fraction } del césped): se puede bajar un nivel la altura de corte.
lower_cut_places_open = Deje la altura de corte como está: { $places ->
    [one] 1 lugar lo bastante ancho para verse no se ha recorrido aún
   *[other] { $places } lugares lo bastante anchos para verse no se han recorrido aún
}, y la hierba alta detiene a un robot que corta bajo.
lower_cut_unsure = Deje la altura de corte como está: solo es seguro que se haya recorrido el { $visited_fraction } del césped, y la hierba alta detiene a un robot que corta bajo.
grass_log_too_short = Una hierba que crece { $growth_mm } al día puede esperar { $allowed_days ->
    [one] 1 día
   *[other] { $allowed_days } días
} entre pasadas (regla del tercio); este registro de { $log_days ->
    [one] 1 día
   *[other] { $log_days } días
} es demasiado corto para mostrar si en algún lugar esperó más.
grass_overdue = El { $overdue_fraction } del césped estuvo más de { $allowed_days ->
    [one] 1 día
   *[other] { $allowed_days } días
} sin ninguna pasada, demasiado para una hierba que crece { $growth_mm } al día (regla del tercio): hacen falta más pasadas.
grass_too_many_passes = Por cada lugar se pasa { $passes } veces en { $allowed_days ->
    [one] el día
   *[other] los { $allowed_days } días
} que podría esperar la hierba (regla del tercio): bastarían menos horas, y el césped se desgastaría menos.
grass_enough_passes = Entre pasadas no transcurrió más de { $allowed_days ->
    [one] 1 día
   *[other] { $allowed_days } días
}, lo que pide una hierba que crece { $growth_mm } al día (regla del tercio).

## Qué trajo un cambio

lawn_unknown = Estos registros no permiten saber si el césped en conjunto está mejor.
lawn_more = Se recorre más césped que antes: { $points } puntos más.
lawn_less = Se recorre menos césped que antes: { $points } puntos menos.
lawn_alike = En el césped en conjunto no hay más diferencia que el azar de una noche.
pockets_mended = Resuelto: { $pockets }.
pockets_better = Mejor: { $pockets }.
pockets_new = Nuevo: { $pockets }.
pocket_compared = { $pocket }: { $before_fraction } antes, { $after_fraction } después; { $change ->
    [mended] { $within_luck ->
        [yes] ahora se recorre casi entero, pero el azar por sí solo haría lo mismo en más de uno de cada diez pares de registros así: vuelva a mirar dentro de unas noches
       *[no] ahora se recorre casi entero
    }
    [better] se recorre más de lo que traería el azar
    [new] antes se recorría
   *[unchanged] { $within_luck ->
        [yes] se recorre más, pero no más de lo que puede traer el azar
       *[no] ninguna diferencia aparte del azar
    }
}.
change_decided = { $pocket }: decidido tras { $decided ->
    [one] la primera
   *[other] { $decided }
} de { $nights } noches, con un error del 5 % como máximo por muchas veces que haya mirado.
change_open = { $pocket }: { $more ->
    [one] una noche más como estas lo decidiría.
   *[other] { $more } noches más como estas lo decidirían.
}

## Con qué tener cuidado

blades_on_lawn = Cuchillas en movimiento: pare y desactive el robot antes de tocarlo; mantenga a los niños y a los animales fuera del césped mientras trabaja.
blades_near = Cuchillas en movimiento: pare y desactive el robot antes de trabajar cerca de él.
outline_from_drive = No se dio ningún plano: el contorno se dibuja a partir de la propia marcha. El césped al que el robot nunca se acercó no se cuenta, y lo que rodeó se toma por una isla.
plan_fault = Plano: { $fault }.
dig_at_spot = Antes de cavar en un punto de atasco, haga localizar los cables y las tuberías enterrados; las conducciones privadas no están señalizadas. Las raíces pueden ser de un árbol protegido.
dig = Antes de cavar, haga localizar los cables y las tuberías enterrados; las conducciones privadas no están señalizadas.
zone_may_protect = Una zona puede proteger raíces, cables o personas: averigüe por qué está ahí antes de cambiarla.
hours_by_day = Añada las horas de día: de noche andan por el jardín animales pequeños.
driven_in_the_dark = { $dark_h } de marcha cayeron en la oscuridad, cuando salen los erizos y otros animales pequeños: haga que trabaje de día.
beyond_the_line = Al otro lado de la línea puede haber pavimento, agua, una pendiente o terreno ajeno: mire antes de desplazarla.
look_before_zone = Mire antes el terreno: si es una raíz, un escalón o un suelo encharcado que se puede arreglar, no hace falta ninguna zona.
guide_exit_unknown = El registro no muestra en qué punto de una línea guía la deja este robot; se supone que en algún lugar de los dos últimos quintos. Si se puede configurar, haga que la deje cerca del final.
local_codes = La normativa local y el manual del propio robot tienen prioridad.
other_reasons = Una diferencia describe lo que se recorrió en estos registros. Puede deberse a algo distinto del cambio: el tiempo, otras horas, una cuchilla, una mesa de jardín.
at_equal_hours = Los dos lados tienen distintas horas de marcha; se comparan tras las mismas horas.
plan_unsure_before = El registro no muestra cómo queda el plano en el jardín antes del cambio, así que los lugares de esa parte pueden estar desplazados.
plan_unsure_after = El registro no muestra cómo queda el plano en el jardín después del cambio, así que los lugares de esa parte pueden estar desplazados.
place_often = Se ha recorrido { $visits ->
    [one] una vez
   *[other] { $visits } veces
}; el césped, { $lawn_visits } de media. Si aun así la hierba está alta, mire las cuchillas, la altura de corte, cómo crece allí la hierba y si hay pendiente.
place_seldom = Se recorre poco: { $visits ->
    [one] una vez
   *[other] { $visits } veces
}; el césped, { $lawn_visits } de media. Mire qué estrecha allí el camino: un pasillo, una esquina, un borde cercano.
place_few = Se ha recorrido { $visits ->
    [one] una vez
   *[other] { $visits } veces
} hasta ahora; el césped, { $lawn_visits } de media: menos, pero no más de lo que hace el azar por sí solo. Lo decidirán más noches.
place_never = Omitido: está en el hueco { $pocket } ({ $area_m2 }).
place_gap = Sin recorrer en este registro, en un hueco tan pequeño que lo deja el azar por sí solo. Registre otra noche y vuelva a preguntar.
place_not_yet = Aún sin recorrer: está en { $pocket }, que el azar todavía explica. Se decidirá con { $decided_h } de marcha en total.
place_not_yet_open = Aún sin recorrer: está en { $pocket }, que el azar todavía explica. Registre más noches.
place_unseen = Este registro no permite saberlo: está en { $ground }, un terreno sin datos. Registre una noche sin silencios allí.
place_is_stuck_spot = El robot perdió tiempo aquí: punto de atasco { $spot }, { $lost_min } en total.
place_off_lawn = Está a { $distance_m } del césped, donde no se cuenta nada. Si es césped, falta en el plano.
place_elsewhere = Está a { $distance_m } del césped: en otro jardín, o uno de sus números está mal.
place_beyond_outline = Este registro no permite saberlo: está { $distance_m } fuera del césped que dibujó la marcha. Si es césped, dibuje un plano que lo incluya.
place_in_island = Nunca entró: está en la isla { $island } ({ $area_m2 }), ante la que el robot giró por varios lados. ¿Un arriate, un árbol, un estanque, o césped detrás de algo? Un plano lo aclara.
place_cannot_tell = Este registro no permite saberlo: sus posiciones se desvían unos { $error_m }, y dentro de ese margen hay terreno muy recorrido y terreno sin recorrer. Registre con un receptor mejor, o durante más tiempo.
place_compared = { $said ->
    [none] El lugar por el que se preguntó
   *[other] «{ $said }»
}: se recorrió { $before_visits ->
    [one] una vez
   *[other] { $before_visits } veces
} en { $before_h } de marcha antes, { $after_visits ->
    [one] una vez
   *[other] { $after_visits } veces
} en { $after_h } después.
place_needs_width = Sin el ancho de corte no se cuentan las pasadas: mídalo, indíquelo y vuelva a preguntar.
nights_unknown = Estos registros no permiten saber cuánto varía una noche de la siguiente, así que ninguna diferencia se puede dar por real.

## Nombres de los rumbos

compass = { $eighth ->
    [0] norte
    [1] noreste
    [2] este
    [3] sureste
    [4] sur
    [5] suroeste
    [6] oeste
   *[7] noroeste
}

## Qué significan nuestros propios términos

cause = { $value ->
    [walled_off] sin entrada
    [narrow_passage] pasillo estrecho
    [edge_band] franja a lo largo del borde
    [zone_misplaced] línea en otro sitio que el dibujado
    [beyond_stuck_spot] detrás de un punto de atasco
    [too_few_visits] pasa por allí demasiado poco
    [too_little_time] pocas horas de marcha
   *[undetermined] este registro no lo muestra
}
asked-short = { $value ->
    [place_often] Recorrido como el resto
    [place_seldom] Poco recorrido
    [place_few] Menos recorrido hasta ahora
    [place_never] Omitido
    [place_gap] Sin recorrer
    [place_not_yet] Aún no
    [place_not_yet_open] Aún no
    [place_is_stuck_spot] Aquí se atasca el robot
    [place_off_lawn] Fuera del césped
    [place_elsewhere] En otro lugar
    [place_in_island] Nunca entró
    [place_needs_width] Sin contar
   *[place_cannot_tell] Este registro no permite saberlo
}
cause-meaning = { $value ->
    [walled_off] El robot no tiene por dónde entrar: el paso es demasiado estrecho para él, o hay algo en medio.
    [narrow_passage] La entrada es tan estrecha que el robot rara vez la encuentra.
    [edge_band] Una franja a lo largo del borde queda fuera de la línea en la que gira el robot.
    [zone_misplaced] El robot gira en una línea que está en otro sitio que el que muestra el plano.
    [beyond_stuck_spot] El robot se atasca de camino hacia allí.
    [too_few_visits] El camino está libre, pero sus salidas rara vez llevan hasta allí.
    [too_little_time] El césped entero se va completando como debe; faltan horas.
   *[undetermined] Este registro no muestra por qué.
}
suggestion = { $value ->
    [guide_run] Colocar una línea guía
    [zone_move] Mover una zona de exclusión
    [zone_shrink] Reducir una zona de exclusión
    [zone_add] Añadir una zona de exclusión
    [more_hours] Trabajar más tiempo
   *[boundary_shift] Desplazar el límite
}
suggestion-inline = { $value ->
    [guide_run] colocar una línea guía
    [zone_move] mover una zona de exclusión
    [zone_shrink] reducir una zona de exclusión
    [zone_add] añadir una zona de exclusión
    [more_hours] trabajar más tiempo
   *[boundary_shift] desplazar el límite
}
noise-source = { $value ->
    [station_scatter] la dispersión mientras está en la estación
    [rest_scatter] la dispersión mientras está parado en otro lugar
    [driving_roughness] las irregularidades de la trayectoria en marcha
    [device_card] la ficha del receptor
    [stated] los ajustes
    [receiver_claim] lo que declara el propio receptor
    [dilution_of_precision] la geometría de los satélites (DOP) por un error de distancia habitual
   *[default] un valor supuesto, ya que el registro no da ninguno
}
promise = { $value ->
    [kept] cumplido
    [broken] incumplido
   *[cannot_tell] este registro no permite saberlo
}
fix-quality = { $value ->
    [unknown] no indicada
    [autonomous] solo satélites
    [differential] diferencial
    [precise] servicio preciso
    [rtk_fixed] RTK fijo
    [rtk_float] RTK flotante
    [estimated] a la estima
    [manual] escrita a mano
    [simulated] simulador
   *[other] código desconocido
}
pocket-change = { $value ->
    [mended] resuelto
    [better] mejor
    [new] nuevo
   *[unchanged] sin cambios
}
out-of-reach = { $value ->
    [edge] una franja a lo largo del borde o una esquina: el robot gira antes de que el disco llegue
   *[cut_off] aislado detrás de un pasillo demasiado estrecho, o sin ninguna entrada
}
presence = { $value ->
    [came] solo después: antes se pasaba por su sitio
    [went] solo al principio: después se pasó por su sitio
    [came_and_went] durante un tiempo: antes y después se pasó por su sitio
   *[throughout] todo el tiempo
}
way-home = { $value ->
    [guide_run] por una línea guía
    [boundary] por el límite
   *[straight] derecho por el césped
}
lower-cut = { $value ->
    [yes] sí
    [not_yet] aún no
   *[cannot_tell] este registro no permite saberlo
}
growth-source = { $value ->
    [settings] según la configuración
   *[temperature] según la temperatura media
}
failure-reason = { $value ->
    [unreadable] ilegible
    [damaged] dañado
    [clock] reloj
    [plan] plano
    [settings] ajustes
    [analysis] análisis
    [time] demasiado tiempo
    [memory] memoria insuficiente
    [died] interrumpido
   *[pieces] en trozos
}
fit-figure = { $value ->
    [visited_fraction] césped recorrido, %
    [path_m] longitud de la trayectoria, { $unit }
    [visits_map_correlation] mapa de pasadas, correlación con la media de las simulaciones
    [leg_m] tramo entre dos giros, mediana, { $unit }
   *[revisit_path_m] trayectoria entre dos pasadas por un lugar, mediana, { $unit }
}

## Puntos de atasco

stuck-came = Casi siempre llegaba en dirección { $course_deg }.

## Página: resumen

count-pocket = { $count ->
    [one] 1 hueco
   *[other] { $count } huecos
}
count-area = { $count }, { $area }
about-more-driving-are = Hacen falta unas { $hours } más de marcha.
driven-over-percent-area = Se recorrió el { $percent } de { $area }.
driven-over-percent-area-range = Se recorrió el { $percent } de { $area } ({ $range }, con una probabilidad del 90 %).
lost-at = Pierde { $time } en { $id }
suggestion-by = { $value ->
    [guide_run] Colocar una línea guía: { $length }
    [zone_move] Mover una zona de exclusión { $length }
    [zone_shrink] Reducir una zona de exclusión { $length }
    [zone_add] Añadir una zona de exclusión: { $length }
    [more_hours] Trabajar más tiempo: { $length }
   *[boundary_shift] Desplazar el límite { $length }
}
nine-ten-logs-pocket = Nueve de cada diez simulaciones: { $range_2 } del hueco con el cambio, { $range } si no se cambia nada.{ $more ->
    [0] { "" }
    [one] { " " }Más abajo hay 1 cambio más.
   *[other] { " " }Más abajo hay { $more } cambios más.
}
let-run-on-after = Deje que siga trabajando. Tras { $hours } de marcha en total, lo que siga sin recorrer será algo más que mala suerte.
luck-leaves-such-gap = Probabilidad de que el azar por sí solo deje un hueco como { $id }: { $chance }.
sure-not-driven-over = Certeza del { $percent } de que { $id } no se recorrió
sure-change-helps = Certeza del { $percent } de que { $id } ayuda
change-brings-its-gain = En esa proporción de simulaciones el hueco mejoró y la predicción se cumplió.
none-it-shows = Nada que este registro pueda mostrar
how-much-driven-over = Cuánto se recorrió depende del ancho del disco de corte, que no se indicó; más abajo está la tabla para cada ancho.
not-counted = Sin contar
outline-drawn-from-log = El contorno se dibujó a partir del propio registro, con un error de unos { $error } en los bordes: el césped al que el robot nunca se acercó no se cuenta.
asked-about = { $count }, { $area } en total, donde el robot giró por varios lados sin entrar nunca: ¿arriates, árboles, estanques, o césped detrás de algo? No se cuenta como césped.
visit = Visita:
quote-open = «
quote-close = »
asked-place = El lugar por el que se preguntó
asked-row = Recorrido { $visits }. Última vez: { $last }; lo habitual: { $due }.
asked-row-never = Recorrido { $visits }.
asked-mark = { $id }, se preguntó: { $said }
asked-visits = { $number } veces en este registro ({ $low } a { $high })
asked-visits-beside = { $visits }; el césped, { $mean } de media
asked-due = cada { $hours } de marcha
walk-first-hint = camine primero a lo largo del borde en { $place }: en { $length } de ese borde el robot no giró en ningún sitio
walk-first = Camine primero a lo largo del borde en { $place }: en { $length } de ese borde el robot no giró en ningún sitio.
nothing-needs-reason-again = No hay nada que explicar
this-log-cannot-tell = Este registro no permite saberlo
not-by = No es por azar
change-nothing-garden-on = No cambie nada en el jardín basándose en este registro.
measure-width-cutting-disc = Mida el ancho del disco de corte y vuelva a contar.
walk-round-lawn-with = Camine alrededor del césped con el registrador y haga un plano de él: lo que queda más allá de la marcha no se ve en el registro.
no-ground-left-out = El azar explica todos los huecos que quedaron.
one-count-no-interval = Un solo recuento, sin intervalo
lawn-driven-over-with = es la parte recorrida del césped, con una probabilidad del 90 %.

## Terminal: respuesta

count-smaller-pocket = { $count ->
    [one] 1 hueco más pequeño
   *[other] { $count } huecos más pequeños
}
count-place = { $count ->
    [one] 1 lugar
   *[other] { $count } lugares
}
count-time = { $count ->
    [one] 1 vez
   *[other] { $count } veces
}
at-cm = { $percent } con { $width }
depends-on-cutting-width = depende del ancho de corte, que no se indicó: { $list }
pockets-from = huecos omitidos de { $length } de ancho o más ({ $area })
log-good-enough-can = El registro es lo bastante bueno: puede mostrar { $smallest }.
log-too-short-its = El registro es demasiado corto: sus posiciones son buenas, pero la mala suerte por sí sola puede dejar huecos de hasta { $length } de ancho ({ $area }).
log-not-good-enough = El registro no es lo bastante bueno: solo puede mostrar { $smallest }.
also-said = Además: { $said }
lawn-percent-number-area = { $percent } del césped, { $number } de { $area } ({ $interval })
missed-area = omitido { $area }
not-yet = aún no { $area }
without-evidence = sin datos { $area }
none-told = este registro no permite saberlo
none-known = nada dentro del contorno dibujado; lo que hay más allá, este registro no permite saberlo
none-known-narrower = nada de { $width } de ancho o más dentro del contorno dibujado; los huecos más estrechos, y lo que hay más allá, este registro no los puede mostrar
none-narrower = nada de { $width } de ancho o más; los huecos más estrechos, este registro no los puede mostrar
none-but-luck = nada; el azar explica los huecos
none-shown-unseen = no se ve nada, pero hay { $area } sin datos: este registro no permite saberlo
smaller-gaps = resquicios { $area }
of-id = { $id } { $share } de { $area }
all-luck-does-not = { $count }, { $area } en total, más de lo que explica el azar
and-more = además, { $more }
also-possible = también es posible: { $join }
decided-after-driving-all = se decide tras { $hours } de marcha en total
luck-still-explains-them = { $count }, { $area }: el azar todavía lo explica; { $decide }
lost-count = { $count }, pierde { $time }
lost-within = { $count }, pierde { $time }, a menos de { $length } de { $place }
more-spots = y { $spots } más
ladder-title = Más pequeño y más grande
ladder = Por tamaño, la media de los registros simulados: { $list }.
rung = { $size }: { $fraction }{ $lawn ->
    [none] { "" }
   *[other] , césped { $lawn }
}{ $chosen ->
    [yes] { " " }(este)
   *[no] { "" }
}
change-set = Juntos, primero lo que más superficie aporta por el trabajo, cada uno contado tras los anteriores: { $list }. Del césped se recorre entonces { $lawn }.
set-step = { $id } { $area } más ({ $fraction } de estos huecos)
visits-title = { $count ->
    [one] 1 visita a este jardín
   *[other] { $count } visitas a este jardín
}
visits-when = Cuándo
visits-who = Quién
visits-machine = Robot
visits-said = Lo que dijo el cliente
visits-changed = Lo que se cambió
visits-sure = Decidido
visits-pocket = { $id } { $before } → { $after }
visits-decided = { $decided ->
    [none] { $more ->
        [none] no decidido
        [1] no decidido: una noche más como estas
       *[other] no decidido: { $more } noches más como estas
    }
    [beyond_luck] decidido
    [1] decidido tras la primera noche
   *[other] decidido tras { $decided } noches
}
nights-differ = Tanto varía un registro de otro: nueve de cada diez jardines están listos tras { $hours } de marcha.
pocket-this-log-if = Hueco: { $percent } en este registro, { $fraction } si no se cambia nada, { $fraction_2 } con el cambio{ $sure ->
    [none] { "" }
   *[other] ; certeza del { $sure }
}.{ $more ->
    [0] { "" }
    [one] { " " }Y 1 cambio más.
   *[other] { " " }Y { $more } cambios más.
}
lawn-within-percent-days = { $percent } del césped en { $days }: { $word }{ $probability ->
    [none] { "" }
   *[other] { " " }(probabilidad de cumplirlo: { $probability })
}
one-every-driven-fixes = { $fixes }, una cada { $time }; { $path } de trayectoria en { $time_2 }{ $silent ->
    [none] { "" }
   *[other] , { $silent } sin posiciones
}
log-too-short-positions = El registro es demasiado corto: las posiciones son buenas, pero aún no muestra nada de un césped.
log-not-good-enough-shows = El registro no es lo bastante bueno: no muestra nada de un césped.
not-looked-for-without = no se busca sin el ancho de corte
after-how-many-hours = no se puede decir tras cuántas horas se decide

## Terminal: inspección

count-fix = { $count ->
    [one] 1 posición
   *[other] { $count } posiciones
}
count-fix-repeats-the = { $count ->
    [one] 1 posición repite la anterior
   *[other] { $count } posiciones repiten la anterior
}
around-lat = alrededor de { $lat_deg }, { $lon_deg }
east-by = { $length } de este a oeste por { $length_2 } de norte a sur, { $middle }
made-by = { $format }, creado por { $id }
its-bytes = { $percent } de sus bytes
from-count = { $count } ({ $share }{ $resolution ->
    [none] { "" }
   *[other] , en pasos de { $resolution }
})
first-on = ; la primera vez, en la línea { $count }
first-on-line = ; la primera vez, en la línea { $count }: { $id }
to-id = { $id } a { $id_2 }
one-every = { $fixes }, una cada { $time }
driving-time = en marcha { $time }
at-station = en la estación { $time }
standing-elsewhere = parado en otro lugar { $time }
silent-time = en silencio { $time }
from-after-start-further = { $time } a partir de { $time_2 } después del inicio, { $length } más allá
shorter-value = ; y { $value } más cortos
middle-below-number-number = mediana { $number }, 95 % por debajo de { $number_2 }
last-digit-count-again = { $count } hasta la última cifra
from-fix-fix-length = { $length } de una posición a otra
drifting-length = { $length } de deriva{ $time ->
    [none] { "" }
   *[other] { " " }en unos { $time }
}
standard-deviation-per-axis = { $join } (desviación típica por eje)
from-figures = { $figures }; según { $word }
local-metres-no-place = en metros locales, sin coordenadas geográficas
no-bytes = sin bytes
no-dates = sin fechas
not-known = se desconoce
dark-of-driven = { $dark } de { $driven } de marcha{ $between }: entonces hay erizos y otros animales pequeños fuera
in-the-dark = A oscuras: { $said }.
dark-between = { "" } (crepúsculo civil por la tarde { $dusk }, por la mañana { $dawn }{ $zone })

## Terminal: comparación

count-night = { $count ->
    [one] 1 noche
   *[other] { $count } noches
}
both-plans-have-area = { $area } que están en ambos planos
built-as = { $value ->
    [suggested] hecho como se propuso
    [otherwise] hecho de otra manera
   *[nothing] no hecho como se propuso
}
predicted-for = { $built }; previsto para { $id }: { $percent } ({ $interval }), medido { $percent_2 }: { $held }
driving-percent = { $percent } ({ $interval }){ $equal ->
    [none] { "" }
   *[other] , { $equal } tras las mismas horas
}; { $count }, { $hours } de marcha
smaller-pockets = y { $pockets } más pequeños

## Página: antes de cavar

plan-on-paper = Un plano, probado sobre el papel
reaches-everything = Con este plano el robot llega a todas partes.
leaves-parts = { $count ->
    [one] A una parte
   *[other] A { $count } partes
} del césped, { $area } en total, no se llega.
promise-needs = Para el { $percent } en { $count ->
    [one] 1 día
   *[other] { $count } días
} hacen falta unas { $hours } de trabajo al día.
promise-not-kept = El { $percent } en { $count ->
    [one] 1 día
   *[other] { $count } días
} no se alcanza solo con más horas.
typical-run = El césped tal como lo deja una simulación típica tras { $count ->
    [one] 1 día
   *[other] { $count } días
} con { $hours } de trabajo diario. Cuanto más oscuro, más veces se recorrió; lo rayado se omitió.
count-day = { $count ->
    [one] 1 día
   *[other] { $count } días
}
nine-in-ten-gardens = en nueve de cada diez simulaciones, de { $low } a { $high }
give-width-for-days = Indique qué ancho corta el disco (machine.cut_width_m), y que hay sitio para el robot.
trim-by-hand = { $area } de bordes y esquinas se quedan con la hierba alta: recórtelos a mano
boundary-with-slack = alrededor del césped y de sus zonas; hay que sumar los tramos entre ellas y la holgura en las esquinas
no-way-through = no se puede pasar
done-after = { $share } de las simulaciones tras { $count ->
    [one] 1 día
   *[other] { $count } días
}
share-of-driving = La proporción es la de las salidas sin línea guía; con el 100 %, cada metro cuadrado de detrás del pasillo se recorre tan a menudo como el resto. Lo recorrido sale de las simulaciones, con las líneas guía incluidas.
from-middle = centro en { $place }
assumed-machine = Un robot que gira con su centro { $setback } antes del borde y avanza recto a { $speed_mps } hasta que gira al azar. Ponga en machine.past_boundary_m, machine.speed_mps y las horas de trabajo los valores del suyo.
assumed-level = Terreno llano y seco: el plano no lleva alturas, así que las pendientes y el suelo blando no entran en la previsión.

## Página: hoja para entregar

not-driven-over-up = Sin recorrer: { $area }, hasta { $length } de ancho
mower-stood-here-all = { $times ->
    [0] El robot no se paró aquí ninguna vez
    [1] El robot se paró aquí una vez
    [2] El robot se paró aquí dos veces
   *[other] El robot se paró aquí { $times } veces
}, { $time } en total
pocket-driven-over-this = { $why } En este registro se recorrió el { $percent } del hueco; se espera { $fraction } si no se cambia nada, { $fraction_2 } con el cambio.
promised-lawn-within-percent = Compromiso: { $percent } del césped en { $days }. { $word }.
more-on-page-on = { $left_out } más en la página en pantalla.

## Página: datos del lugar

count-way = { $count ->
    [one] 1 camino
   *[other] { $count } caminos
}
about-count = { $count } de unos { $number }
usually-out-began-along = Lo habitual, { $time } fuera{ $charging ->
    [none] { "" }
   *[other] ; { $charging } en la estación entre dos salidas
}. { $count ->
    [one] 1 empezó por una línea guía.
   *[other] { $count } empezaron por una línea guía.
}
brackets-usual-time-join = { $join }; entre paréntesis, el tiempo habitual.
day-hours = { $hours } al día
between-first-departure-last = Entre la primera salida y el último regreso; de ellas, { $hours } de marcha. { $said }
growth-a-day = { $length } al día
tenth-lawn-steeper-steepest = Una décima parte del césped es más empinada. La parte más empinada está en { $place }.
not-logged = no registrado
more-than = más que horas

## Página: comparación

before-after = Antes y después

found-when = { $value ->
    [before] antes
   *[after] después
}

## Página: datos

about-number = cerca de 1 de cada { $number }
long-driven-over-times = { $length } de largo, con { $number } veces las pasadas medias del césped; en el punto de más paso, { $count }.
wire-length = { $length } de cable
shift-length = un desplazamiento de { $length }
more-day = { $hours } más al día
less-new-than-chance = encuentra menos terreno nuevo que yendo al azar (eficiencia { $figure })
new-as-chance = encuentra terreno nuevo igual que yendo al azar (eficiencia { $figure }; 100 % es no repetir nada)
more-new-than-chance = encuentra terreno nuevo mejor que yendo al azar (eficiencia { $figure }; 100 % es no repetir nada)
hardly-twice = casi nunca pasa dos veces por el mismo terreno (eficiencia { $figure })
reach-both = 95 % tras { $first } y 99 % tras { $second } de marcha
reach-95 = 95 % tras { $after } de marcha, 99 % inalcanzable
reach-99 = 99 % tras { $after } de marcha
reach-none = 95 % y 99 % inalcanzables
outings-sent-along-percent = { $percent } de las salidas mandadas por ella
half-lawn-driven-over = La mitad del césped se recorrió al menos así de a menudo; la media es { $number }.
half-waits-are-shorter = La mitad de las esperas son más cortas. Nueve de cada diez: { $interval_h }. 99 de cada 100: { $interval_h_2 }.
less-than = menos de 1 de cada 10.000
cannot-be = no se puede decir
not-counted-again = sin contar
pocket-again = el hueco
whole-lawn = todo el césped
longer-than-this-log = más de lo que dura este registro
not-told-apart-yet = aún no se distingue

## Página: informe

count-log-file = { $count ->
    [one] 1 archivo de registro
   *[other] { $count } archivos de registro
}
last-visit-longer-ago = Última pasada hace más de { $hours } al final del registro
missed-area-again = omitido, { $area }
stuck-lost = atasco, pierde { $time }
not-yet-area = aún no, { $area }
not-yet-heading = Aún no: { $count } por decidir con más horas
to-start = { $start } a { $end } ({ $zone_words })
driving-from = { $span }. { $driven } de marcha, en { $logs }.
without-evidence-area = { $area } sin datos. { $said }
outside-boundary-for-after = { $length } fuera del límite durante { $time }, { $time_2 } después del inicio; { $came_back ->
    [yes] volvió por sí solo
   *[no] no volvió dentro de este registro
}.
silence-after-start-may = { $time } de silencio, { $time_2 } después del inicio, en { $place }: puede haber estado parado allí, ese tiempo como máximo.
machine-efficiency = El robot { $efficiency }.
probability-kept-percent-again = Probabilidad de que se cumpla: { $percent }.
lawn-within-percent-days-probability = { $percent } del césped en { $days }. { $probability }
lawn-report = Informe del césped
times-driven-over-darker = Veces recorrido (más oscuro: más veces)
less-than-twice = menos de dos veces
usual-time-between-two = Tiempo habitual entre dos pasadas (más oscuro: más a menudo)
time-again = a tiempo
charging-station = estación de carga
without-dates = sin fechas
out-reach = inalcanzable

## Página: método

count-outing = { $count ->
    [one] 1 salida
   *[other] { $count } salidas
}
lawn-counted-squares-this = El césped se contó en cuadrados de este lado; eso por sí solo mueve el resultado unos { $number } puntos.
standard-deviation-per-axis-from = Desviación típica por eje, según { $word }.
plan-offset = { $east } al este, { $north } al norte, girado { $turned }°
plan-moved-by-this = El plano se movió así para que encajara con el registro; se sabe con un margen de { $length }.
known-within-no-more = Se sabe con un margen de { $length }: no es más que azar, así que el plano se deja como está dibujado.
from-one = A partir de { $fixes }, una cada { $time }.
while-driving = En marcha; { $outings }.
drift-length = { $length } de deriva
line-count = línea { $count }
default-error = error supuesto
from-plan = según el plano
from-log-itself-again = según el propio registro
number-outings-not-known = no se sabe el número de salidas

## Mañana

count-garden = { $count ->
    [one] 1 jardín
   *[other] { $count } jardines
}
count-thing = { $count ->
    [one] 1 fallo
   *[other] { $count } fallos
}
your-delivery = { $gardens ->
    [one] 1 de { $count } no ha enviado
   *[other] { $gardens } de { $count } no han enviado
} nada desde { $since }: lo que falla es su envío (subida, tarjetas, red), no los jardines.
is-mended = { $garden }: { $alarm } desde { $since }, resuelto desde { $mended }.
is-known = { $said ->
    [none] { "" } (conocido)
   *[other] { "" } (conocido: { $said })
}
alarm = { $value ->
    [missed_pocket] terreno omitido
    [stuck_spot] se atasca
    [lost_hours] menos horas de marcha
    [less_visited] se recorre menos
    [absent] no llega nada
    [receiver_worse] peor receptor
    [silences] silencios largos
   *[promise] compromiso incumplido
}
bring = { $value ->
    [missed_pocket] Lleve el plano, una cinta métrica y estacas
    [stuck_spot] Lleve una pala, tepes o tablas
    [lost_hours] Lleve una batería y limpiador de contactos
    [less_visited] Lleve cuchillas de repuesto y la página del propio jardín
    [absent] Lleve un registrador cargado y una tarjeta
    [receiver_worse] Lleve un receptor y un cable de antena
    [silences] Lleve un receptor y un registrador cargado
   *[promise] Lleve las horas de trabajo, para añadir algunas de día
}
night-visit-with-log = Noche del { $id }: { $gardens } de { $count } por visitar, { $with_log } con registro{ $resting ->
    [0] { "" }
   *[other] , { $resting } en reposo
}, { $count_2 }

## Palabras: comparación

points-fraction = { $fraction } puntos
interval-points = { $points } (intervalo del 90 %: { $low } a { $high } puntos)
interval-not-worked-out = { $points } (sin intervalo)
points-from-night-night = { $number } puntos de una noche a otra
standard-deviations-points-from = desviaciones típicas: { $number } puntos por errores de posición, { $nightly }
to-percent = { $percent } ({ $number } a { $percent_2 })
how-nights-differ-cannot = con tan pocas noches no se sabe cuánto varía una de otra

## Terminal: consejos

log-driving-more-give = registre otras { $hours } de marcha y entregue juntos todos los registros; lo que aún no está decidido lo estará entonces
promise-give-logs-as = el compromiso es de { $days }: entregue juntos los registros de otros tantos días
measure-width-cutting-disc-give = mida el ancho del disco de corte e indíquelo con --cut-width 22cm
walk-once-round-lawn = camine una vez alrededor del césped con un receptor; tussock plan from-walk hace de ello un plano, y --plan lo lee
mended-plan-is-written = analyse --write-plan FILE escribe el plano dibujado tal como el registro muestra que es el jardín

## gpx

missed-widest = Omitido: { $area }, ancho máximo { $length }. { $said }
stuck-lost-within = Atasco: { $count }, pierde { $time }, en un radio de { $length }. { $said }
suggested-guide = Línea guía propuesta. { $said }
tussock-id = tussock { $id }
tape-figures = { $figures } Cinta métrica: { $tape }.
ground-mower-left-out = Terreno que el robot se dejó, y lugares donde perdió tiempo.

## Comprobaciones

checks-hold = { $held ->
    [0] No se cumple ninguna de { $all } comprobaciones
    [one] { $all ->
        [one] Se cumple la única comprobación
       *[other] Se cumple 1 de { $all } comprobaciones
    }
   *[other] Se cumplen { $held } de { $all } comprobaciones
}
checks-say = { $sum }; { $fails }
check = { $value ->
    [fixes_left_out] Posiciones descartadas, frente a su predicción
    [halves_of_log] Una mitad del registro, frente a la otra
    [plan_place] El lugar del plano, frente a los giros
    [turns_at_edges] Los giros, frente a cada borde del plano
    [drawn_garden] Un jardín dibujado a partir del robot ajustado, frente al registro
    [cell_sum] Los cuadrados del mapa, frente a la cifra principal
    [as_logged] Tal como se registró, frente a lo corregido
    [two_roads] La trayectoria ajustada, frente al recuento corregido de lo registrado
    [silences] Los silencios, frente a lo que cuenta como omitido
   *[shown_ground] Lo que se dice que muestra el registro, frente al mapa
}
check-fails = { $value ->
    [fixes_left_out] las posiciones tienen más error del indicado
    [halves_of_log] las dos mitades del registro quedan una al lado de la otra
    [plan_place] los giros no se concentran en los bordes del plano
    [turns_at_edges] los giros no están en los bordes del plano
    [drawn_garden] el robot no se mueve como su modelo
    [cell_sum] el mapa no suma la cifra principal
    [as_logged] el recuento de lo registrado contradice al corregido
    [two_roads] dos formas de contar se contradicen
    [silences] lo omitido puede haberse recorrido durante un silencio
   *[shown_ground] el ancho que se ve se subió al del terreno sin decidir
}
check-fails-edge = los giros no están en el borde { $edge_deg }
check-is = { $value ->
    [fixes_left_out] { $number } veces el error indicado
    [halves_of_log] { $length } de diferencia
    [plan_place] { $percent } de los giros explicados
    [turns_at_edges] { $number } veces lo máximo que puede desviarse un borde
    [drawn_garden] tramos con una diferencia de { $number } (logaritmo natural de su razón)
    [cell_sum] { $points } puntos de diferencia
    [as_logged] { $points } puntos de diferencia
    [two_roads] { $number } desviaciones típicas de diferencia
    [silences] una probabilidad del { $percent } como máximo
   *[shown_ground] { $length }
}

## Página: partes comunes

show-on-map-id = mostrar en el mapa, { $id }
show-on-map = mostrar en el mapa
map-nearer = acercar
map-farther = alejar
map-whole = todo el césped
map-move = Mover el mapa
in-short = En resumen
foot-driven-over = Las posiciones solo pueden mostrar lo recorrido; si allí se cortó la hierba, hay que verlo con los ojos.

## Página: las respuestas

ask-log = ¿Es el registro lo bastante bueno?
ask-missed = ¿Qué se omitió?
ask-why = ¿Por qué?
ask-change = ¿Qué cambiar?
ask-sure = ¿Qué certeza hay?
log-yes = Sí
log-too-short = Las posiciones sí, pero es demasiado corto
log-no = No
part-visited = recorrido
part-missed = omitido
part-not-yet = aún no
part-unseen = no visto
part-sliver = resquicios
change-log-again = Antes, volver a registrar
change-look = Ir allí y mirar
change-give-width = Indicar el ancho de corte
change-nothing-yet = Nada por ahora
change-give-outline = Antes, dar el contorno
change-nothing = Nada
others-end = { $list }.

## Página: informe

title-report = { $title }: por dónde no ha pasado el robot
picked-more = todo lo que se sabe
picked-close = cerrar
to-answers = Ir a las respuestas
where-not-been = Por dónde no ha pasado el robot
map = Mapa
what-map-shows = Qué muestra el mapa
ground = Terreno
ground-none = ninguno
map-drawn-from = Dibujado a partir de las posiciones registradas: muestra el terreno recorrido.
map-placeless = El registro no tiene un lugar en la Tierra; el mapa usa sus propios ejes.
map-moves = Arrastre para mover; pellizque, haga doble clic o use + y − para acercar; use las flechas del teclado cuando el mapa esté seleccionado.
places = Lugares
missed-and-why = Qué se omitió, y por qué
missed-lead = Terreno que quedó sin recorrer aunque el azar difícilmente habría dejado un hueco tan ancho. Vaya con dos cintas métricas al centro de cada uno.
up-to-wide = hasta { $length } de ancho
see = Vea
evidence-and-others = Qué hay a favor y en contra, y qué otra cosa puede ser
evidence = Qué hay a favor y en contra
how-sure-that = Qué certeza hay
rank-first = la primera
rank-other = también posible
evidence-for = a favor
evidence-against = en contra
middle-at = Centro en { $place }.
change-and-gain = Qué cambiar, y qué traerá
change-lead = Previsto con un robot simulado, ajustado a este registro, con el cambio y sin él. El punto es lo que mostrarán la mayoría de las noches sueltas; nueve de cada diez quedan entre los extremos de la línea.
for-pockets = para
needs = Hace falta: { $list }.
together-with = Junto con { $list }.
driven-over = Recorrido
in-this-log = en este registro
if-nothing-changes = si no se cambia nada
if-changed = con el cambio
predictions-of = Predicciones de { $id }
gained-in-runs = El hueco mejoró y la predicción se cumplió en el { $percent } de las simulaciones.
gain-shows-after = En la mayoría de ellas, la mejora se ve tras { $hours } de marcha.
where-stuck = Dónde se atascó
stuck-lead = Lugares lejos de la estación en los que el robot perdió tiempo una y otra vez.
time-lost = Pierde { $time }
stuck-within = A menos de { $length } de { $place }.
drove-through = { $count ->
    [one] Pasó 1 vez sin atascarse.
   *[other] Pasó { $count } veces sin atascarse.
}
not-yet-lead = Terreno sin recorrer que el azar todavía explica. No pide ningún cambio, solo más horas, antes de que se pueda decir algo.
head-pocket = Hueco
head-area = Área
head-widest = Ancho máximo
head-chance = Probabilidad por azar
head-decided = Se decide tras
head-where = Dónde
not-yet-table = Aún no
hours-are-driving = Las horas son horas de marcha desde el inicio de este registro.
passages-and-ways = Pasillos, terreno fuera de alcance y caminos de vuelta
passages = Pasillos
head-passage = Pasillo
head-width = Ancho
head-free = Libre para el centro del robot
head-length = Largo
head-behind = Césped detrás
head-crossed = Cruces
head-share-behind = Recibido detrás, de lo que corresponde
passage-shut-word = cerrado
crossings-are = Los cruces son cambios de lado; tras «de unos» están los que haría en la misma trayectoria un robot que se moviera con libertad.
out-of-disc = Fuera del alcance del disco
turns-inside = Gira antes de la línea
turns-inside-means = Distancia habitual entre el centro del robot y la línea en la que gira.
outings = Salidas
ways-home = Caminos de vuelta
drawing-differs = ¿En qué se diferencia el dibujo del jardín?
plan-would-settle = ¿Qué aclararía un plano?
islands-or-lawn = ¿Islas, o césped fuera de alcance?
islands = Islas
head-island = Isla
in-no-plan = No está en ningún plano
in-no-plan-lead = Objetos dentro del césped que hicieron dar la vuelta al robot.
head-thing = Objeto
head-turns = Giros ante él
head-across = Ancho aproximado
head-stood = Estuvo allí
things-in-no-plan = Objetos que no están en ningún plano
hours-and-grass = Horas de trabajo y hierba
works = Trabaja
allowed = Permitido
allowed-means = Horas de trabajo de la configuración, media de la semana.
promise-needs-label = El compromiso pide
promise-needs-means = Horas de trabajo a este ritmo; no hay horas que basten donde una parte del césped no se completa nunca.
lower-blades = ¿Bajar las cuchillas?
growth = Crecimiento
longest-wait = Espera máxima permitida
one-third-rule = Según la regla del tercio: no cortar nunca más de un tercio de la hoja de una vez.
slope = Pendiente
also-seen = También se vio
worn-line-is = Línea desgastada:
stray-is = Escapada:
possible-stop-is = Posible parada:
paper-what = Qué mirar, y qué hacer
paper-no-place = No hay que mirar ningún lugar: el azar explica todos los huecos que quedaron, y el robot no se atascó en ningún sitio.
paper-changes = Cambios propuestos
stills-title = Cómo se fue completando el césped
stills-lead = Seis mapas, cada uno tras otra sexta parte de la marcha.
still-new = nuevo desde el mapa anterior
still-before = recorrido antes
not-driven-over = sin recorrer
safety = Seguridad
paper-stop = Pare y desactive el robot antes de tocarlo.
paper-dig = Haga localizar los cables y las tuberías enterrados antes de cavar para el cable. Pregunte qué protege una zona antes de moverla. Añada las horas de día, no de noche.
manual-first = La normativa local y el manual del propio robot tienen prioridad.
paper-keep-off = Mantenga a los niños y a los animales fuera del césped mientras el robot trabaja. Mantenga las líneas apartadas de las pendientes y de las orillas del agua. Los trabajos en la red eléctrica debe hacerlos un electricista autorizado.
paper-looked-at = Revisado el
paper-signed = Por (firma)
paper-next-step = Próximo paso acordado
how-fast = Con qué rapidez se completó el césped, y con qué frecuencia se pasó
ground-gained = Terreno ganado según el tiempo de marcha
line-this-log-interval = este registro, con su intervalo del 90 % al final
line-this-log = este registro
line-random = búsqueda al azar
line-no-overlap = sin repetir nada
line-promised = compromiso
random-law-means = Un robot que va al azar sigue la ley de la búsqueda aleatoria (Koopman 1956): cuanto más lleva hecho, más a menudo encuentra terreno que ya conoce. Uno que no pasara nunca dos veces por el mismo terreno seguiría la línea sin repetir nada.
pattern-efficiency = Eficiencia del patrón
to-95 = Hasta el 95 % del césped
to-95-means = Horas de marcha a este ritmo; inalcanzable donde una parte del césped no se completa nunca.
to-99 = Hasta el 99 %
to-99-means = Lo mismo, para todo menos una centésima parte.
the-promise = El compromiso
how-often = Con qué frecuencia se recorrió cada lugar
bars-mean = Cada barra es la parte del césped que se recorrió ese número de veces. La barra rayada no se recorrió.
waits-mean = Esa parte de las esperas entre dos pasadas es más corta; la última espera de cada lugar, sin terminar, se cuenta como no terminada.
visits-typical = Pasadas, valor típico
evenness = Uniformidad (Gini)
evenness-means = 0 sería el mismo número de pasadas en todas partes; 1, todas las pasadas en un solo lugar.
time-between = Tiempo entre pasadas
overdue-label = Atrasado
overdue-means = Esta parte del césped ha crecido, desde su última pasada, más de lo que admite la regla del tercio.
hours-by-activity = Horas por actividad
same-in-figures = Lo mismo en cifras
activity-in-figures = Horas por actividad, en cifras
nights-not-drawn = { $count ->
    [one] 1 noche anterior no está dibujada.
   *[other] { $count } noches anteriores no están dibujadas.
}
nothing-claimed = Del tiempo sin posiciones no se afirma nada.
each-lawn = Cada césped por separado
head-lawn = Césped
with-bracket = { $figure } ({ $more })
for-each-width = Recorrido, para cada ancho de corte
how-counted = Cómo se contó
of-the-log = Sobre el registro: { $said }
cutting-width = Ancho de corte
cutting-width-means = El de la configuración. Con un centímetro más se contaría más terreno.
counting-square = Cuadrado de recuento
realisations = Realizaciones
counted-once = Contado una sola vez, sobre la trayectoria más probable; todavía no se ha tenido en cuenta el efecto del error de posición.
counted-often = Se contó este número de trayectorias probables, para ver cuánto mueve el resultado el error de posición.
as-logged = Tal como se registró
as-logged-means = Lo que daría unir las posiciones sin corregir con líneas rectas. Solo para comparar.
reachable = Alcanzable
reachable-means = La parte del césped a la que puede llegar el disco.
position-error = Error de posición
beware = Atención
default-error-means = Con este registro no hay modo de saber qué exactitud tiene; para averiguarlo, registre una hora en la estación.
plan-against-log = Plano frente a registro
outline = Contorno
outline-from-plan = Césped, zonas y obstáculos tal como están dibujados en el plano.
outline-from-log = El terreno más allá de la marcha más exterior no se cuenta, así que ninguna cifra de aquí vale para todo el césped. Para cambiarlo, camine por el contorno.
path = Trayectoria
usual-speed = Velocidad habitual
beside-surveyed = El registro junto a una trayectoria medida
errors-surveyed = Errores respecto a la trayectoria medida
head-error = Error
errors-mean = Lateral: hasta el lugar más cercano de la trayectoria medida, positivo a su izquierda. A lo largo: cuánto va por delante de donde el robot debería estar en ese momento; tiempo: cuánto más tarde pasó. Pasadas: cuánto cambia el error lateral de una pasada a la contigua, en un plazo de 15 minutos (según ISO 12188-1). «Registrado» son las posiciones del registro; «hallado», la trayectoria que se encontró detrás de ellas.
simulated-beside = El robot simulado, junto al registro
predictions-made = De él salen las predicciones.
predictions-none = De él no se saca ninguna predicción.
head-figure = Cifra
head-in-log = En el registro
head-in-runs = { $count ->
    [one] En 1 simulación
   *[other] En { $count } simulaciones
}
log-and-simulation = Registro y simulación
figure-range = { $figure } ({ $low } a { $high })
log-files = Los archivos de registro, y lo que no se usó
made-by-label = creado por
fixes-of = { $count ->
    [one] 1 posición de
   *[other] { $count } posiciones de
}
not-used-of-file = Sin usar de este archivo
head-not-used = Sin usar
head-why = Por qué
head-first-at = Primera vez en
everything-used = Se usó todo.
before-you-change = Antes de cambiar nada
stop-and-manual = Pare y desactive el robot antes de tocarlo. La normativa local y el manual del propio robot tienen prioridad.
all-dangers = Todos los peligros de estos trabajos
danger-blades = Cuchillas en movimiento.
danger-blades-means = Pare y desactive el robot antes de tocarlo. Mantenga a los niños y a los animales fuera del césped mientras trabaja.
danger-logger = Montaje de un registrador.
danger-logger-means = Nunca sobre el botón de parada ni donde el robot detecta que lo levantan o que se inclina. Fíjelo lejos de las cuchillas.
danger-digging = Cavar para el cable.
danger-digging-means = Haga localizar antes los cables y las tuberías enterrados. Las conducciones privadas no están señalizadas.
danger-slopes = Pendientes y agua.
danger-slopes-means = Mantenga la línea bien apartada de los bordes por los que el robot podría resbalar.
danger-mains = Red eléctrica.
danger-mains-means = Los trabajos en la alimentación de la estación de carga debe hacerlos un electricista autorizado.
danger-night = Noche.
danger-night-means = Añada las horas de día: de noche salen los erizos y otros animales pequeños.
danger-zones = Zonas.
danger-zones-means = Pregunte para qué está una zona antes de moverla o reducirla. Puede proteger raíces, cables o personas.

## Página: antes y después

title-compare = { $title }: antes y después
difference = Diferencia
more-than-before = Césped recorrido después, frente a antes; { $meaning }.
side-driven-over = { $side }: { $percent } recorrido
side-facts = { $interval }{ $equal ->
    [none] { "" }
   *[other] ; { $equal } tras las mismas horas
}. { $count }, { $hours } de marcha.
map-move-side = Mover el mapa, { $side }
only-summary = Solo se guardó un resumen, así que no hay mapa.
compare-map-key = Rayado: en ese lado no se recorrió la mayor parte del hueco. Contorno discontinuo: se recorrió la mayor parte. Cuanto más oscuro el terreno, más veces se recorrió; los dos mapas usan la misma escala.
how-sure-difference = Qué certeza tiene la diferencia
counted-on = Contado sobre
counted-on-common = { $area } de césped que están en ambos planos.
lawn-only = { $when ->
    [before] { $area } eran césped solo antes
   *[after] { $area } son césped solo después
}
what-became = Qué fue de cada hueco
head-found = Encontrado
head-before = Recorrido antes
head-after = después
head-became = Qué fue de él
pockets = Huecos
show-on-both = { $id }, mostrar en los dos mapas
predicted-and-measured = Previsto, y medido
predicted-measured = { $built ->
    [otherwise] Previsto para lo que se hizo: { $predicted }; medido: { $measured }: { $meaning }.
   *[other] Previsto: { $predicted }; medido: { $measured }: { $meaning }.
}
predicted = previsto
measured-after = medido después

## Página: plano sobre el papel

title-plan = { $title }: antes de cavar
before-digging = Antes de cavar
driven-over-after = Recorrido tras { $days }
days = Días
not-worked-out = sin calcular
lawn-to-cut = Césped que hay que cortar
boundary = Límite
guide-runs = Líneas guía
guide-runs-none = ninguna
out-of-reach-title = Fuera de alcance
part-out-of-reach = { $area }, { $why }: { $middle }
head-free-machine = Libre para el robot
head-behind-it = Césped detrás
head-changes = Cambios de lado al día
head-share = Su parte de la marcha
head-nine-tenths = Recorridas nueve décimas partes
weak-places = Puntos débiles, y por qué
would-mend = Qué los arreglaría
as-planned = según el plano
assumed-and-beware = Qué se supone, y con qué tener cuidado
foot-forecast = Una previsión sacada de simulaciones: en los primeros días de registro se ve en qué se diferencian los robots reales.

## Página: mañana

title-morning = Jardines por visitar tras la noche del { $night }
morning-after = La mañana siguiente a la noche del { $night }
gardens-to-visit = Jardines por visitar
count-muted = { $count ->
    [one] 1 silenciado.
   *[other] { $count } silenciados.
}
gardens-in-order = Jardines, primero aquel en el que más aporta una visita
head-garden = Jardín
head-last-nights = Últimas 15 noches
head-wrong = Qué falla
head-since = Desde
head-bring = Qué llevar
head-gain = Aporta
and-count-more = y { $count } más
known-bracket = (conocido)
open-for = Abierto desde hace { $days }, contando hasta la noche del { $night }.
lawn-of = Césped: { $area }.
driven-in-last = Recorrido en { $days }, hasta ahora: { $percent }; compromiso: { $promised }.
known-said = Conocido: { $said }
known = Conocido
head-night = Noche
head-missed = Omitido
head-driving = En marcha
head-stuck = Atascado
head-silent = En silencio
nights-of = Noches de { $name }
mended = Resuelto
what-failed = Qué ha fallado
failures = Fallos
head-what = Qué
visit-brings = Lo que aporta una visita es el césped que se recorrería cada noche y no se recorre.

## Terminal: nombres de las filas (row-...), 12 letras como máximo; row-by-lawn, row-used, row-skipped y row-note, 10 como máximo;
## de las columnas (col-...), 7 como máximo; col-id, 3 como máximo
# Lo que sea demasiado largo se acorta, como en los titulares: el nombre está al lado de su texto.

row-driven-over = Recorrido
row-before = Antes
row-after = Después
row-difference = Diferencia
row-pockets = Huecos
row-beware = Atención
# $id es G1 o M12.
row-change = Cambio { $id }
row-by-lawn = por césped
row-asked-about = Por aclarar
row-missed = Omitido
plan-answer = Césped por cortar: { $area }, { $edge } de borde; sin zonas ni obstáculos.
forecast-hours = Con { $hours } de trabajo al día, según { $runs } simulaciones.
col-role = función
col-name = nombre
col-length = largo
no-faults = Sin fallos.
row-plan-faults = Revisar
col-id = id
col-area = área
col-widest = ancho
col-where-why = dónde y por qué
row-not-yet = Aún no
row-stuck-spots = Atascos
none-seen = no se vio ninguno
row-pattern = Patrón
row-promise = Compromiso
row-from = Basado en
row-in-the-dark = A oscuras
before = Antes
after = Después
row-ground = Terreno
col-before = antes
col-after = después
col-became = qué fue de él
no-pockets = ninguno, ni antes ni después
row-where = Dónde
row-last = Última vez
row-usually = Habitual
row-used = Usado
row-skipped = Sin usar
skipped-nothing = nada
row-note = Nota
in-line = (línea { $count })
row-time = Periodo
row-fixes = Posiciones
row-hours = Horas
row-silences = Silencios
silences-none = ninguno
row-quality = Calidad
row-hdop = HDOP
row-repeats = Repetidas
row-error = Error
row-extent = Extensión
row-reference = Referencia

## Números y listas

unknown = desconocido
under-percent = <{ $percent }
over-percent = >{ $percent }
interval = intervalo del 90 %: { $low } a { $high }
no-interval = sin intervalo
range = { $low } a { $high }
# Dos partes de una lista, o la lista hasta aquí y su parte siguiente.
list = { $before }, { $next }
list-apart = { $before }; { $next }
way-home-row = { $times } { $along } ({ $time })
# Dos longitudes de cinta se encuentran a un lado de la línea entre sus extremos.
tape-from = { $length } desde { $from }
tape-side = { $tape }, por el lado { $eighth ->
    [0] norte
    [1] noreste
    [2] este
    [3] sureste
    [4] sur
    [5] suroeste
    [6] oeste
   *[7] noroeste
}
position-metres = { $east } al este, { $north } al norte del origen
fixes-poor = { $count } de mala calidad
fixes-jumped = { $count ->
    [one] 1 salto
   *[other] { $count } saltos
}
fixes-carried = { $count } mientras lo transportaban
fixes-used-of = { $used } de { $count ->
    [one] 1 posición leída
   *[other] { $count } posiciones leídas
} (descartadas: { $list })
# Una hora del reloj: el año no lleva signo entre los millares.
date-time = { $day } de { $month ->
    [1] enero
    [2] febrero
    [3] marzo
    [4] abril
    [5] mayo
    [6] junio
    [7] julio
    [8] agosto
    [9] septiembre
    [10] octubre
    [11] noviembre
   *[12] diciembre
} de { $year }, { $hour }:{ $minute }

## Palabras para antes y después

more-than-luck = más de lo que explican los errores de posición y el azar
luck-may-explain = puede explicarse solo por los errores de posición y el azar
count-pocket-change = { $value ->
    [mended] { $count ->
        [one] 1 resuelto
       *[other] { $count } resueltos
    }
    [better] { $count ->
        [one] 1 mejor
       *[other] { $count } mejores
    }
    [new] { $count ->
        [one] 1 nuevo
       *[other] { $count } nuevos
    }
   *[unchanged] { $count } sin cambios
}
pocket-sum = { $pockets }: { $list }
nothing-to-hold-against = no hay con qué compararlo
prediction-holds = la predicción se cumple
prediction-fails = la predicción no se cumple

## El registro junto a una trayectoria medida; las columnas son estrechas

error-mean = media
error-rms = rms
error-95 = 95 %
error-largest = máximo
error-logged = registrado
error-located = hallado
error-cross-track = lateral
error-along-track = a lo largo
error-timing = tiempo
error-pass-to-pass = pasadas
reference-head = { $length } de { $name }, { $fixes } comparadas{ $beside ->
    [0] { "" }
    [one] ; 1 a más de { $distance } descartada
   *[other] ; { $beside } a más de { $distance } descartadas
}
reference-untimed = La trayectoria medida no lleva horas: los errores a lo largo de ella y de tiempo no se pueden saber.

## Por qué se saltó una línea de un registro

skip-reason = { $value ->
    [bad_checksum] la suma de comprobación no coincide
    [not_a_position] no contiene ninguna posición
    [not_of_the_format] no es de este formato
    [no_fix] el receptor no tenía posición
    [no_time] posición sin hora
    [no_date] hora sin fecha
    [malformed] campo mal formado
    [not_finite] no es un número finito
    [out_of_range] fuera de rango
    [null_island] latitud 0, longitud 0
    [pole] latitud 90 mientras buscaba satélites
    [time_reversed] la hora va hacia atrás
    [duplicate_time] la misma hora dos veces
    [duplicate_epoch] la misma época dos veces
    [truncated] cortada al final
    [same_log_twice] el mismo registro con dos nombres
    [too_long] más larga que el límite
   *[implausible] posición inverosímil
}

## Página: dibujos y horas

map-north-up = Mapa del césped, con el norte arriba
map-of-lawn = Mapa del césped
map-before = Mapa de antes
map-after = Mapa de después
ground-visits = pasadas
ground-waits = tiempo entre pasadas
ground-overdue = atrasado
never = nunca
driving = en marcha
driving-along = de ello, por una línea guía o el límite
standing-turning = parado en otro lugar, girando
activity-driving = en marcha
activity-turning = girando
activity-reversing = marcha atrás
activity-transit = de ida o de vuelta
activity-standing = parado
activity-station = en la estación
activity-carried = transportado
activity-silent = sin posiciones
night-number = noche { $number }
nights-drawing = Horas por actividad, una fila por noche; la tabla de abajo tiene las mismas cifras
axis-hours = horas
driven-that-night = recorrido esa noche
so-far = hasta entonces
lawn-after = Césped tras { $hours }
still-gained = { $percent }, +{ $points } puntos
plot-over-time = Parte recorrida del césped según las horas de marcha
axis-lawn-percent = césped recorrido, %
axis-hours-driving = horas de marcha
plot-histogram = Partes del césped según cuántas veces se recorrieron
axis-part-percent = parte del césped, %
axis-times = veces recorrido
plot-gains = Parte recorrida del hueco: { $list }
gain-row = { $label }: { $fraction }
axis-pocket-percent = hueco recorrido, %
plot-waits = Esperas entre dos pasadas: { $list }
wait-under = { $part } por debajo de { $hours }
wait-half = la mitad
wait-nine-ten = 9 de cada 10
wait-99 = 99 de cada 100
wait-allowed = permitido
axis-waits = horas entre dos pasadas

## Mapa

key-missed = omitido: el azar no lo explica
key-not-yet = aún no: el azar todavía lo explica
key-unseen = no visto: sin datos
key-stuck = punto de atasco: tiempo perdido
key-worn = línea desgastada
key-suggested = cambio propuesto
key-tape = distancia con cinta métrica
key-lines = líneas recorridas
key-lie = pasillos, puntos de partida, fallos del plano
key-strays = escapadas, posibles paradas
key-guide = línea guía
key-exclusion = zona de exclusión
key-obstacle = obstáculo
key-boundary = límite
nothing-to-draw = No hay contorno ni trayectoria que dibujar.
picture-line = Recorrido: { $percent } de { $lawn }. Omitido: { $pockets }, { $missed }.
picture-not-counted = No se indicó el ancho de corte, así que no se contó nada.
picture-foot = Dibujado a partir de las posiciones registradas. Que se recorriera no demuestra que se cortara la hierba.
# Una letra: norte.
north-letter = N
second-axis = segundo eje
# Nombres de las marcas, para leer en voz alta: un id, qué es, qué tamaño tiene.
mark-missed = { $id }, omitido, { $area }
mark-not-yet = { $id }, aún no, { $area }
mark-unseen = { $id }, sin datos, { $area }
mark-worn = { $id }, línea desgastada, { $length }
mark-suggested = { $id }, propuesto: { $change }
mark-stuck = { $id }, punto de atasco, pierde { $time }
mark-island = { $id }, isla, { $area }
mark-passage = { $id }, pasillo, { $length } de ancho
mark-in-no-plan = { $count ->
    [one] { $id }, no está en ningún plano, 1 giro ante ello
   *[other] { $id }, no está en ningún plano, { $count } giros ante ello
}
mark-stray = { $id }, escapada, { $length } fuera
mark-compared = { $id }, { $percent } recorrido
mark-station = estación

## Terminal: el césped en caracteres, archivos

chart-key = { $bare } sin recorrer, { $one } hasta { $first }, { $two } hasta { $second }, { $three } hasta { $third }, { $four } más veces; { $missed } omitido, { $not_yet } aún no, { $stuck } punto de atasco, { $station } estación; un carácter tiene { $length } de ancho{ $north ->
    [up] , el norte está arriba
   *[unknown] { "" }
}
row-written = Escrito

## Por qué falta un archivo

file-elsewhere = lo crea el comando, a partir de findings.json, con tussock report
file-tells-where = revelaría dónde está el jardín
file-local-metres = las posiciones están en metros locales, sin coordenadas geográficas
file-not-counted = sin ancho de corte no se contó nada
file-not-driven = no hubo marcha

## Mañana: jardines

garden-gain = { $garden }: { $area } por ganar cada noche
failed = Fallos
# Qué dice una alarma. $why es una frase del almacén, en inglés.
alarm-less-visited = Desde { $since } se recorre el { $found } del césped, cuando con otras tantas horas lo habitual es el { $usual }.
alarm-hours = { $value ->
    [lost_hours] Desde { $since } hay { $found } de marcha, cuando lo habitual son { $usual }.
   *[silences] Desde { $since } hay { $found } sin posiciones, cuando lo habitual son { $usual }.
}
alarm-receiver-worse = Desde { $since } las posiciones tienen un error de { $found }, cuando lo habitual son { $usual }.
alarm-stuck-spot = Se atasca en un mismo lugar desde { $since }, { $nights ->
    [one] 1 noche
   *[other] { $nights } noches
}, { $found } en la última: { $why }
alarm-missed-pocket = Omitido desde { $since }, { $nights ->
    [one] 1 noche
   *[other] { $nights } noches
}: { $found }. { $why }
alarm-promise = Desde { $since } se recorre el { $found } del césped en { $count ->
    [one] 1 día
   *[other] { $count } días
}, cuando el compromiso es el { $usual }.
alarm-absent = { $machine ->
    [none] No hay ningún registro desde { $since }: { $nights ->
        [one] 1 noche esperada.
       *[other] { $nights } noches esperadas.
    }
   *[other] No hay ningún registro de { $machine } desde { $since }: { $nights ->
        [one] 1 noche esperada.
       *[other] { $nights } noches esperadas.
    }
}

## Página local: una línea cada una; lo que está entre llaves se queda como está

page-what-to-do = Qué hacer
page-open = Abrir
page-see = Ver
page-stop = Detener
page-compare = Comparar
page-save = Guardar
page-no-script = Esta página funciona con JavaScript, que aquí está desactivado.
page-how-far = Cuánto se lleva hecho
page-open-title = ¿Qué se ha dejado el robot?
page-open-lead = Elija las posiciones que registró, suéltelas en cualquier lugar de esta página o péguelas. Nada sale de este dispositivo: la página prohíbe toda conexión y funciona sin red.
page-logs = Registros
page-logs-means = GPX, NMEA 0183, CSV, KML y otros, comprimidos con gzip o no; de un solo jardín, en uno o varios archivos. Un findings.json guardado se abre tal cual.
page-choose-logs = Elegir registros
page-paste = Pegar un registro
page-paste-text = Texto del registro
page-paste-take = Usar este texto
page-plan = Plano
page-plan-if = si lo hay
page-plan-means = El césped, las zonas, los obstáculos, las líneas guía y la estación, como GeoJSON. Sin él, el contorno se dibuja a partir de la marcha.
page-choose-plan = Elegir un plano
page-machine = Robot
page-width = Ancho del disco de corte
page-cm = cm
page-width-means = Si se deja en blanco, vale el de la configuración; si tampoco está ahí, se responde para varios anchos.
page-choose-settings = Elegir la configuración
page-suggest = Probar cambios y proponer el mejor (tarda más)
page-find = Buscar lo que se omitió
page-demo = Usar el jardín inventado
page-kept = Guardado en este dispositivo
page-forget = Borrar todo lo guardado
page-cautions = Pare y desactive el robot antes de tocarlo: las cuchillas se mueven. Montar un registrador, cavar y trabajar en la estación tienen sus propias advertencias, en la página que recibirá.
page-page = La página
page-hand-over = La página para entregar
page-ask-title = Preguntar por un lugar
page-begin = Empezar la página con esta respuesta
page-type-place = Escribir un lugar
page-or-tap = O tóquelo en el mapa.
page-place = Lugar
page-typed-in = escrito en
page-metres = metros al este, al norte
page-degrees = grados, primero la latitud
page-such-as = Por ejemplo, 4.5,-2 o 53.86006,12.42021. Los metros se cuentan desde el origen de los resultados.
page-said = Qué se dijo de él
page-ask = Preguntar
page-compare-title = ¿Qué trajo un cambio?
page-before = Antes
page-after = Después
page-logs-before = Elegir registros de antes
page-the-plan = Elegir el plano
page-logs-after = Elegir registros de después
page-plan-changed = Elegir el plano, si cambió
page-compare-means = Cada lado admite registros, o un findings.json. El ancho de corte y la configuración son los de Abrir.
page-print = Imprimir la página
page-private = Sin lugar, nombres ni fechas
page-keep-title = Guardar en este dispositivo
page-keep-means = No se guarda nada si usted no lo pide. Se guardan los resultados, el plano y la configuración, en este navegador; quien lo use puede abrirlos, y también otras páginas que se abran desde este dispositivo. Si lo usan otras personas, guarde archivos en su lugar.
page-garden-name = Nombre del jardín
page-keep = Guardar
page-drop = Suelte registros, un plano o la configuración
page-no-worker = el proceso de trabajo no puede ejecutarse aquí: { $reason }
page-not-let = este navegador no lo permite
page-broke-off = el trabajo se interrumpió: { $why }
page-broke-off-hint = es un fallo de la herramienta, o al dispositivo no le queda memoria; sus archivos están como estaban
page-take-out = quitar
page-take-out-file = quitar { $file }
page-hint = consejo: { $hint }
page-seconds = { $stage }, { $seconds } s
page-starting = empezando
page-stopped = detenido
page-reading = leyendo { $file }
page-unreadable = { $file }: no se puede leer: { $reason }
page-choose-again = elíjalo otra vez
page-side-empty = un lado no tiene registro; se esperaban registros o findings.json en los dos
page-no-log = no se ha dado ningún registro; se esperaba un registro (GPX, NMEA 0183, CSV, ...) o findings.json
page-no-log-hint = elija archivos, suéltelos en esta página, o use el jardín inventado
page-file-page = la página para entregar
page-file-findings = todas las cifras; se vuelve a abrir aquí
page-file-geojson = todo lo que tiene un lugar, para mapas
page-file-gpx = le guía hasta los huecos
page-file-comparison = todas las cifras
page-no-file = sin { $file }: { $why }
page-keeps-nothing = este navegador no guarda nada para esta página: { $reason }
page-no-reason = no se indica el motivo
page-save-instead = guarde findings.json en su lugar
page-open-kept = abrir
page-open-garden = abrir { $garden }
page-is-kept = { $garden } está guardado
page-cannot-delete = no se puede borrar: { $reason }
page-clear-data = borre los datos de esta página en la configuración del navegador
# El nombre de esta lengua en ella misma.
page-this-language = español
page-language = Idioma
page-remember = Recordar en este dispositivo
page-stage-drawing = dibujando
page-stage-reading = leyendo
page-stage-comparing = comparando
page-stage-locating = localizando
page-stage-counting = contando
page-stage-calibrating = calibrando
page-stage-diagnosing = diagnosticando
page-stage-suggesting = buscando cambios
