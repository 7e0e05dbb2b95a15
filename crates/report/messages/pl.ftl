# Draft. Nobody who speaks Polish natively has reviewed this yet.
# What Tussock says, in Polish. Terms: glossary of the translation. A compass word is a noun in the accusative, used after "na".

## What the positions of a log can show, or the one thing to change

positions_right = Pozycje są dokładne do około { $error_m }.
positions_off = Błąd pozycji wynosi około { $error_m }: zamontować antenę wyżej, z otwartym widokiem na niebo, albo rejestrować odbiornikiem RTK.
receiver_jumps = Odbiornik przeskoczył i tak już zostało: pozycje sprzed przeskoku i po nim do siebie nie pasują. Sprawdzić, co zasłania mu niebo, albo podać zapis sprzed przeskoku i po nim jako osobne pliki.
error_not_shown = Z tego zapisu nie wynika, jak duży jest błąd pozycji: zostawić kosiarkę na dziesięć minut w bezruchu z włączonym rejestratorem.
fixes_too_rare = Przy jednej pozycji co { $period_s } nie widać nawrotów: zapisywać pozycję co sekundę.
digits_too_coarse = Pozycje zapisano z krokiem { $step_m }: ustawić rejestrator tak, by zapisywał więcej cyfr (siedem miejsc po przecinku dla stopni, pięć dla minut).

## Why a log shows nothing of a lawn

mostly_jumps = W { $jumps } z { $fixes } pozycji odległość od poprzedniej jest większa, niż kosiarka może przejechać w tym czasie (positions.max_speed_mps to { $max_speed_mps }): to inny pojazd albo pozycje, które przeskakują.
too_few_fixes = Można użyć tylko { $used } z { $fixes } pozycji, a to za mało, by pokazać jazdę: zostawić rejestrator włączony przez cały wyjazd.
not_one_garden = Pozycje rozciągają się na { $extent_m }: to nie jest zapis z jednego ogrodu albo zniekształcają go przeskoki. Podać pliki tylko z jednego ogrodu.
fixes_far_too_rare = Przy jednej pozycji co { $period_s } nie widać nic z trawnika: zapisywać pozycję co sekundę.
walking_pace = Prędkość wynosi { $speed_mps }, tyle co prędkość idącego człowieka: podać zapis kosiarki przy pracy albo wpisać jej prędkość, jeśli naprawdę jest tak szybka (machine.speed_mps).
walk_round = To wygląda na piesze obejście ogrodu o powierzchni { $area_m2 } ({ $length_m } z prędkością { $speed_mps }), a nie na zapis kosiarki: zrobić z niego plan poleceniem tussock plan from-walk PLIK{ $gpx ->
    [yes] { "" }
   *[other] , po zapisaniu go jako GPX
}. Jeśli to jednak kosiarka, podać jej prędkość (machine.speed_mps).

## Skąd mierzy się taśmą

landmark_station = stacja
landmark_middle = środek obiektu „{ $body }”
landmark_corner_at = narożnik { $body ->
    [none] trawnika
   *[other] obiektu „{ $body }”
} przy { $beside ->
    [none] stacji
   *[other] obiekcie „{ $beside }”
}
landmark_corner_nearest = narożnik { $body ->
    [none] trawnika
   *[other] obiektu „{ $body }”
} najbliżej stacji
landmark_corner = { $outermost ->
    [yes] najdalej wysunięty{ " " }
   *[other] { "" }
}narożnik { $body ->
    [none] trawnika
   *[other] obiektu „{ $body }”
} zwrócony na { $wind_deg }
landmark_corner_apart = narożnik { $body ->
    [none] trawnika
   *[other] obiektu „{ $body }”
} zwrócony na { $wind_deg }, leżący { $farther ->
    [yes] dalej od
   *[other] bliżej
} { $beside ->
    [none] stacji
   *[other] obiektu „{ $beside }”
}

## Co zrobiono lub zauważono przy czytaniu zapisu

time_without_zone = Przy czasach nie podano strefy czasowej; są traktowane jako UTC.
time_is_relative = Czas liczony jest od własnego startu rejestratora i nie ma daty.
gps_time = Podano czas GPS; przeliczono go na UTC, z 18 sekundami przestępnymi od 2017 roku (IERS, Bulletin C).
week_rollover_repaired = { $fixes ->
    [one] 1 pozycja miała
    [few] { $fixes } pozycje miały
   *[other] { $fixes } pozycji miało
} datę o 1024 tygodnie za wczesną (przepełnienie tygodnia GPS), przesunięto o { $days } dni naprzód; pierwsza jest teraz z { $date }.
late_fixes = { $fixes ->
    [one] 1 pozycję zapisano z opóźnieniem i wstawiono na właściwe miejsce.
    [few] { $fixes } pozycje zapisano z opóźnieniem i wstawiono na właściwe miejsce.
   *[other] { $fixes } pozycji zapisano z opóźnieniem i wstawiono na właściwe miejsce.
}
newest_first = Zapis zaczyna się od najnowszej pozycji i został odwrócony.
block_out_of_order = Część zapisu powstała z opóźnieniem.
tracks_overlap = Ślady pokrywają się w czasie; ich pozycje ustawiono w jednej kolejności i niczego między nimi nie połączono.
times_do_not_fit = Liczby czasów ({ $times }) i pozycji ({ $positions }) śladu różnią się i nie wiadomo, które należą do siebie; pominięto go.
constant_quality = GGA nazywa każdą pozycję { $manual ->
    [yes] ręczną (7)
   *[other] symulowaną (8)
} tam, gdzie RMC mówi, że jest ważna; rodzaj pozycji wzięto z RMC.
several_machines = Zapis zawiera kosiarki w liczbie { $machines }, rozróżnione po miejscach w tych samych chwilach.
same_log_twice = Ta sama treść co { $log }, przeczytana raz.
overlaps_another_log = { $fixes ->
    [one] Pominięto 1 pozycję
    [few] Pominięto { $fixes } pozycje
   *[other] Pominięto { $fixes } pozycji
} od { $date }, z godzin, które obejmuje inny zapis tej kosiarki.
file_not_closed = Plik nie jest zamknięty na końcu, jakby rejestrator wyłączono.
file_damaged = Spakowany plik jest uszkodzony, brakuje końca: { $fault }
line_too_long = Wiersz o długości { $bytes } B przekracza { $limit }, granicę z limits.line_bytes, i został pominięty.
line_cut = Wiersz o długości ponad { $bytes } B przekracza { $limit }, granicę z limits.line_bytes, i został pominięty.
attribute_too_long = Atrybut o długości { $bytes } B przekracza { $limit }, granicę z limits.attribute_bytes, i został pominięty.
document_type_ignored = Typ dokumentu jest pomijany i żadna jego encja nie jest zastępowana.

## Co zrobiono lub zauważono przy czytaniu obejścia

walk_markup_broken = Plik jest uszkodzony w { $places ->
    [one] 1 miejscu, które pominięto
   *[other] { $places } miejscach, które pominięto
}; sprawdzić, czy na planie czegoś nie brakuje.
walk_taken_as_lawn = „{ $track }” (zamknięty, { $area_m2 }, obwód { $length_m }) uznano za trawnik: to jedyny ślad, który wraca do początku. Jeśli to coś innego, podać --role "{ $track }=ROLE".
walk_positions_skipped = { $positions ->
    [one] 1 pozycja
    [few] { $positions } pozycje
   *[other] { $positions } pozycji
} w „{ $track }” bez użytecznej szerokości i długości geograficznej.
walk_name_unknown = „{ $track }” pominięto, nazwa nie mówi, co to jest.{ $seems ->
    [none] { "" }
   *[other] { " " }Jeśli to jest to, na co wygląda, podać --role "{ $track }={ $seems }".
}
walk_spikes_cut = { $positions ->
    [one] 1 pozycja w „{ $track }” odskakuje i wraca; pominięto ją.
    [few] { $positions } pozycje w „{ $track }” odskakują i wracają; pominięto je.
   *[other] { $positions } pozycji w „{ $track }” odskakuje i wraca; pominięto je.
}
walk_waits_as_corners = W „{ $track }” zatrzymano się w { $places ->
    [one] 1 miejscu; uznano je za narożnik.
   *[other] { $places } miejscach; każde uznano za narożnik.
}
walk_pieces_joined = „{ $track }” nagrano w częściach ({ $pieces }), połączonych liniami prostymi.
walk_overlap_cut = Ślad „{ $track }” wykracza o { $past_m } poza swój początek; tę końcówkę odcięto.
walk_gap_closed = „{ $track }” zamknięto linią prostą o długości { $gap_m }.
walk_loops_cut = { $loops ->
    [one] Odcięto 1 małą pętlę w „{ $track }”.
    [few] Odcięto { $loops } małe pętle w „{ $track }”.
   *[other] Odcięto { $loops } małych pętli w „{ $track }”.
}
walk_guide_turned = Ślad „{ $track }” prowadził w stronę stacji; odwrócono jego kierunek.

## What else stands against a log

stood_all_the_time = Kosiarka cały czas stała: zostawić rejestrator włączony przez kilka całych wyjazdów.
drove_too_short = Zapisano tylko { $driven_s } jazdy: zostawić rejestrator włączony przez kilka całych wyjazdów.
drove_too_short_by = Zapisano { $driven_s } jazdy: potrzeba jeszcze około { $missing_h }, zanim nieprzejechane miejsce szerokości { $wanted_m } będzie czymś więcej niż przypadkiem.
receiver_jumped = { $time }: odbiornik przeskoczył o { $size_m } i tak już zostało.
receiver_jumps_back = Odbiornik { $jumps ->
    [one] raz
   *[other] { $jumps } razy
} przeskoczył i wrócił: nad częścią trawnika słabo widzi niebo.
stops_not_placed = Nie pokazano postojów trwających razem { $lost_min }: przy tak słabych pozycjach nie widać, gdzie kosiarka stała.
receiver_jumped_often = { $jumps ->
    [one] Do tego jeszcze jeden taki przeskok.
    [few] Do tego jeszcze { $jumps } takie przeskoki.
   *[other] Do tego jeszcze { $jumps } takich przeskoków.
}
date_too_old = Zapis zaczyna się { $date }: zegar rejestratora nie był ustawiony albo przepełnił się jego licznik tygodni. Daty są błędne; godziny mogą być dobre (--date ustawia dzień w zapisach, które mają same godziny).
positions_bent = Na około { $area_m2 } wokół punktu { $place } pozycje są zawsze przesunięte w tę samą stronę, nawet o { $largest_m }, jak przy ścianie lub pod drzewami. Tor jazdy został tam wyprostowany; mniej pewne jest, ile tego terenu przejechano.
turns_not_at_edge = Nawroty nie leżą wzdłuż krawędzi planu (jazda pasami albo plan, który nie pasuje), więc krawędzi nie użyto do poprawienia pozycji.
edge_inside = Przy krawędzi zwróconej na { $edge_deg } kosiarka zawraca o { $offset_m } bliżej środka trawnika niż przy pozostałych (liczba nawrotów: { $turns }): krawędź narysowano za daleko na zewnątrz, granica leży za blisko środka albo odbiornik myli się w tym miejscu. Zmierzyć na trawniku, zanim cokolwiek się przesunie.
edge_outside = Przy krawędzi zwróconej na { $edge_deg } kosiarka zawraca o { $offset_m } dalej na zewnątrz niż przy pozostałych (liczba nawrotów: { $turns }): krawędź narysowano za blisko środka, granica leży za daleko na zewnątrz albo odbiornik myli się w tym miejscu. Zmierzyć na trawniku, zanim cokolwiek się przesunie.
zone_driven = Po strefie{ $zone ->
    [none] { "" }
   *[other] { " " }„{ $zone }”
} kosiarka jeździ tak samo jak po trawniku ({ $path_m } toru jazdy w jej obrębie): dla kosiarki ta strefa nie istnieje. To, co się tam znajduje, może nie być przed nią bezpieczne.
plan_beside = Plan jest przesunięty względem zapisu o { $distance_m } ({ $east_m } na wschód, { $north_m } na północ); dopasowano go do zapisu.
drift_assumed = Zapis nie mówi, jak dobre są jego pozycje, a kosiarka nigdy nie stoi dość długo, by to pokazać; przyjęto { $drift_m }. Jeśli znana jest lepsza wartość, podać ją (positions.drift_m).
drift_at_most = Kosiarka nigdy nie stoi dość długo, by pokazać, jak bardzo pozycje dryfują; z jej prostych przejazdów wynika najwyżej { $drift_m }.
silent_long = Przez { $silent_fraction } czasu brak użytecznych pozycji; o tym czasie nic nie stwierdzono.
fixes_left_out = { $poor ->
    [0] { $jumps ->
        [one] Pominięto 1 pozycję jako przeskok.
        [few] Pominięto { $jumps } pozycje jako przeskoki.
       *[other] Pominięto { $jumps } pozycji jako przeskoki.
    }
    [one] { $jumps ->
        [0] Pominięto 1 pozycję z powodu słabej jakości.
        [one] Pominięto 1 pozycję z powodu słabej jakości i 1 jako przeskok.
       *[other] Pominięto 1 pozycję z powodu słabej jakości i { $jumps } jako przeskoki.
    }
    [few] { $jumps ->
        [0] Pominięto { $poor } pozycje z powodu słabej jakości.
        [one] Pominięto { $poor } pozycje z powodu słabej jakości i 1 jako przeskok.
       *[other] Pominięto { $poor } pozycje z powodu słabej jakości i { $jumps } jako przeskoki.
    }
   *[other] { $jumps ->
        [0] Pominięto { $poor } pozycji z powodu słabej jakości.
        [one] Pominięto { $poor } pozycji z powodu słabej jakości i 1 jako przeskok.
       *[other] Pominięto { $poor } pozycji z powodu słabej jakości i { $jumps } jako przeskoki.
    }
}
no_station = Nie rozpoznano stacji ładowania: postoje po dziesięć minut lub dłużej nie powtarzają się w jednym miejscu.
claim_too_good = Odbiornik podaje dokładność { $claimed_m }, ale jego pozycje mają rozrzut { $scatter_m }: liczy się rozrzut, a nie to, co podaje odbiornik.
rtk_fixed_too_good = Odbiornik oznacza swoje pozycje jako RTK fixed, czyli około { $usual_m }, ale mają one rozrzut { $scatter_m }: liczy się rozrzut, a nie to, co podaje odbiornik.
positions_repeated = { $repeated_fraction } pozycji powtarza poprzednią co do ostatniej cyfry, choć odbiornik podaje prędkość (najdłużej przez { $longest_s }): wydaje stare pozycje.
positions_held = { $repeated_fraction } pozycji powtarza poprzednią co do ostatniej cyfry (najdłużej przez { $longest_s }): odbiornik na postoju zatrzymuje pozycję, dlatego postoje wyglądają na dokładniejsze niż reszta pozycji. Wyłączyć tę funkcję (static hold).
drives_at_rest = Z { $driven_min } jazdy { $rest_min } przypada na godziny, w których kosiarka według ustawień ma odpoczywać ({ $time_zone ->
    [none] nie ustawiono strefy czasowej, więc UTC
   *[other] strefa czasowa { $time_zone }
}); nie pasuje żadne przesunięcie o pełne godziny.
drives_at_rest_shifted = Z { $driven_min } jazdy { $rest_min } przypada na godziny, w których kosiarka według ustawień ma odpoczywać ({ $time_zone ->
    [none] nie ustawiono strefy czasowej, więc UTC
   *[other] strefa czasowa { $time_zone }
}); pasowałyby { $shift_h } { $later ->
    [yes] później
   *[no] wcześniej
}{ $local_time ->
    [yes] : zapis ma chyba czas lokalny oznaczony jako UTC.
   *[no] .
}
calibrated = Na planie zasymulowano { $runs ->
    [one] jeden zapis taki
    [few] { $runs } zapisy takie
   *[other] { $runs } zapisów takich
} jak ten; przejechaną część trawnika poprawiono o { $points } pkt proc. ze względu na stałe odchylenie, które się przy tym pokazało.
ways_disagree = Dwa sposoby liczenia przeczą sobie: { $by_path_fraction } według toru dopasowanego do nawrotów i krawędzi, { $as_logged_fraction } wprost z zapisu, z poprawką na błędy pozycji. Użyto drugiego i żadnego terenu nie podano jako pominięty.
as_logged_silent = Licząc wprost z zapisu, byłoby { $as_logged_fraction }: brakuje w tym tego, po czym kosiarka przejechała w przerwach w zapisie ({ $silent_fraction } czasu).
as_logged_sparse = Licząc wprost z zapisu, byłoby { $as_logged_fraction }: przy jednej pozycji co { $period_s } proste odcinki między pozycjami ścinają nawroty.
as_logged_spread = Licząc wprost z zapisu, byłoby { $as_logged_fraction }: pozycje z błędem około { $error_m } rozciągają tor na teren, po którym kosiarka nie jechała.
as_logged_aside = Licząc wprost z zapisu, byłoby { $as_logged_fraction }: pozycje z błędem około { $error_m } wynoszą tor poza trawnik albo na teren, po którym kosiarka już jechała.
not_calibrated_no_width = Przejechanej części nie skalibrowano: potrzebna jest do tego szerokość koszenia.
not_calibrated_no_plan = Przejechanej części nie skalibrowano: potrzebny jest do tego plan, po którym można jechać.
not_calibrated_lanes = Przejechanej części nie skalibrowano: jazdy równoległymi pasami nie da się dość wiernie zasymulować.
not_calibrated_no_drive = Przejechanej części nie skalibrowano: w zapisie nie ma jazdy.
not_calibrated_no_run = Przejechanej części nie skalibrowano: żadna kosiarka podobna do tej nie może jechać po tym planie.

## What follows where two answers to one question contradict each other

interval_holds_both = Przedział poszerzono tak, by objął i { $one_fraction }, i { $other_fraction }.
interval_wider = Przedział poszerzono { $times }-krotnie.
interval_wider_by = Przedział poszerzono w obie strony o { $more_fraction } trawnika.
plan_not_believed = Krawędzie planu wyjaśniają tylko { $explained_fraction } nawrotów, dlatego tam, gdzie z zapisu nie wynika, jak leży plan, nie podano przyczyny.
legs_unlike = Typowy prosty odcinek ma { $logged_m } w zapisie, a { $drawn_m } w symulacjach z dopasowaną kosiarką: porusza się ona w sposób, którego model nie zna, więc prognozy z symulacji są mniej pewne.
shows_wider = Teren szerokości do { $widest_m } pozostaje nierozstrzygnięty: widać by było tylko szersze fragmenty.

## Why a pocket was missed

too_narrow_to_explain = Tędy nie przejechano, ale pozycje są za słabe, by pokazać, skąd wzięła się luka szerokości { $widest_m }; pójść tam i obejrzeć.
gap_too_narrow = Do części za prześwitem ({ $behind_m2 }) nie da się dojechać: prześwit ma szerokość { $width_m }, a kosiarka potrzebuje ponad { $needed_m }.
no_way_in = Ta część ({ $area_m2 }) nie ma dojazdu: na planie nie łączy się z terenem, z którego kosiarka wyrusza.
no_way_in_driven = Ta część ({ $area_m2 }) nie ma dojazdu: nie prowadzi do niej żadna droga, którą kosiarka jechała.
turns_before_edge = Kosiarka zawraca tu { $setback_m } przed krawędzią, więc tarcza tnąca nie sięga tego pasa.
zone_elsewhere = Strefa{ $zone ->
    [none] { "" }
   *[other] { " " }„{ $zone }”
} leży chyba gdzie indziej, niż ją narysowano: kosiarka przejechała { $path_m } wewnątrz narysowanej strefy i zawracała na linii poza nią.
zone_elsewhere_towards = Strefa{ $zone ->
    [none] { "" }
   *[other] { " " }„{ $zone }”
} leży chyba dalej na { $towards_deg }, niż ją narysowano: kosiarka przejechała { $path_m } wewnątrz narysowanej strefy i zawracała na linii poza nią.
stuck_on_the_way = W drodze do tej części kosiarka utknęła { $times ->
    [1] raz
    [2] dwa razy
   *[other] { $times } razy
} (stracono { $lost_min }).
stuck_on_the_way_past = W drodze do tej części kosiarka utknęła { $times ->
    [1] raz
    [2] dwa razy
   *[other] { $times } razy
} (stracono { $lost_min }), a { $at_least ->
    [yes] przejechała tamtędy co najmniej { $past ->
        [1] raz
        [2] dwa razy
       *[other] { $past } razy
    }
   *[no] { $past ->
        [0] ani razu tamtędy nie przejechała
        [1] przejechała tamtędy raz
        [2] przejechała tamtędy dwa razy
       *[other] przejechała tamtędy { $past } razy
    }
}.
passage_shut = Przejście szerokości { $width_m } jest chyba zamknięte: w ciągu { $driven_h } jazdy { $expected ->
    [one] oczekiwano 1 przejazdu na drugą stronę, a nie było żadnego.
   *[other] oczekiwano { $expected } przejazdów na drugą stronę, a nie było żadnego.
}
something_stands = Stoi tu coś szerokości około { $widest_m }, czego nie ma na planie: kosiarka zawróciła przy tym { $turns ->
    [1] raz
    [2] dwa razy
   *[other] { $turns } razy
} i ani razu tam nie wjechała.
something_may_stand = Stoi tu coś szerokości około { $widest_m } albo trawnik ma w tym miejscu dziurę: kosiarka zawróciła tu { $turns ->
    [1] raz
    [2] dwa razy
   *[other] { $turns } razy
} i ani razu tam nie wjechała. Rabata, drzewo czy staw? Rozstrzygnąłby to plan, na którym to widać.
strip_stays = Zostaje pas szerokości { $width_m } na długości { $length_m } przy krawędzi zwróconej na { $edge_deg }.
strip_stays_turns = Zostaje pas szerokości { $width_m } na długości { $length_m } przy krawędzi zwróconej na { $edge_deg }: tutaj kosiarka zawraca { $here_m } przed krawędzią, gdzie indziej { $elsewhere_m }.
passage_seldom_found = W ciągu { $driven_h } jazdy kosiarka { $entries ->
    [0] ani razu nie trafiła
    [1] { $at_least ->
        [yes] trafiła rzadko (co najmniej raz)
       *[no] trafiła tylko raz
    }
    [2] { $at_least ->
        [yes] trafiła rzadko (co najmniej dwa razy)
       *[no] trafiła tylko dwa razy
    }
   *[other] { $at_least ->
        [yes] trafiła rzadko (co najmniej { $entries } razy)
       *[no] trafiła tylko { $entries } razy
    }
} w przejście szerokości { $width_m }; teren za nim ({ $behind_m2 }) dostał { $share_ratio } należnego mu udziału jazdy.
behind_passage_seldom = Nic nie zagradza tej części, ale kosiarka zagląda tu za rzadko: teren ({ $behind_m2 }) za przejściem szerokości { $width_m } dostał { $share_ratio } należnego mu udziału jazdy i przy takich wyjazdach jak dotąd tak pozostanie.
comes_seldom = Nic nie zagradza tej części, ale kosiarka zagląda tu za rzadko: teren dookoła dostał { $share_ratio } należnego mu udziału jazdy.
not_shown = Ten fragment jest pomijany częściej, niż wyjaśnia to przypadek, ale z zapisu nie wynika dlaczego; pójść tam i obejrzeć.

## Evidence for it

luck_not_lanes = Pełny objazd pasami nie zostawia przez przypadek luki szerokości { $width_m }.
luck_under_thousandth = Sam przypadek zostawia lukę szerokości { $width_m } rzadziej niż na 1 z 1000 takich trawników.
luck_one_in = Sam przypadek zostawia lukę szerokości { $width_m } mniej więcej na 1 z { $lawns } takich trawników.
passage_width = { $width_m } w najwęższym miejscu, z tego { $free_m } wolne dla środka kosiarki; długość { $length_m }.
passage_crossings = { $at_least ->
    [yes] Kosiarka przejechała na drugą stronę co najmniej { $crossings ->
        [1] raz
        [2] dwa razy
       *[other] { $crossings } razy
    }
   *[no] { $crossings ->
        [0] Kosiarka ani razu nie przejechała na drugą stronę
        [1] Kosiarka przejechała na drugą stronę raz
        [2] Kosiarka przejechała na drugą stronę dwa razy
       *[other] Kosiarka przejechała na drugą stronę { $crossings } razy
    }
}; jeżdżąca swobodnie zrobiłaby to na takiej drodze { $expected ->
    [0] mniej niż raz
    [1] raz
    [2] dwa razy
   *[other] { $expected } razy
}.
driven_behind = Za nim przejechano { $path_m }, czyli { $share_ratio } należnego udziału.
nothing_driven_in = Nie ma w nim żadnego toru jazdy.
cells_near_edge = Dziewięć dziesiątych leży nie dalej niż { $within_m } od krawędzi.
path_in_zone = { $path_m } toru jazdy wewnątrz strefy, tak jak ją narysowano.
turns_beside = { $turns ->
    [one] 1 nawrót
    [few] { $turns } nawroty
   *[other] { $turns } nawrotów
} obok tego fragmentu, gdzie na planie nie ma krawędzi.
stops_on_the_way = { $stops ->
    [one] 1 postój
    [few] { $stops } postoje
   *[other] { $stops } postojów
}, razem { $lost_min }; { $passes ->
    [one] 1 przejazd
    [few] { $passes } przejazdy
   *[other] { $passes } przejazdów
} bez postoju.
share_behind = Część za nim dostała { $share_ratio } należnego udziału jazdy.
crossings_expected = { $expected ->
    [one] Oczekiwano 1 przejazdu na drugą stronę, nie było żadnego.
   *[other] Oczekiwano { $expected } przejazdów na drugą stronę, nie było żadnego.
}
turns_in_front = { $turns ->
    [one] 1 nawrót
    [few] { $turns } nawroty
   *[other] { $turns } nawrotów
} przed nim, gdzie na planie nie ma krawędzi.
turns_around = { $turns ->
    [one] 1 nawrót
    [few] { $turns } nawroty
   *[other] { $turns } nawrotów
} tuż przy nim, wzdłuż { $rim_fraction } jego otwartego obwodu.
passes_expected = { $passes ->
    [one] Na terenie tej szerokości oczekiwano 1 przejazdu, nie było żadnego.
   *[other] Na terenie tej szerokości oczekiwano { $passes } przejazdów, nie było żadnego.
}
strip_shape = Długość { $length_m }, w najszerszym miejscu { $widest_m }, dziewięć dziesiątych leży nie dalej niż { $within_m } od krawędzi.
turns_along = { $turns ->
    [one] 1 nawrót
    [few] { $turns } nawroty
   *[other] { $turns } nawrotów
} wzdłuż jego wewnętrznej strony.
path_nearby = W pobliżu przejechano { $share_ratio } średniej drogi na trawniku.
share_simulated = W symulacjach od tej stacji przypada na niego { $share_ratio } średniej dla trawnika.

## Evidence against it

gap_nearly_wide = Prześwit jest prawie tak szeroki, jak potrzebuje kosiarka, albo niewiele szerszy: zmierzyć go.
few_turns = Tylko { $turns ->
    [one] 1 nawrót.
    [few] { $turns } nawroty.
   *[other] { $turns } nawrotów.
}
visits_hidden = Tak słabe pozycje ukrywają krótkie przejazdy.
strip_thin = Pas jest węższy niż trzykrotny błąd pozycji.
zone_may_be_open = Strefa może być narysowana dobrze, a otwarta celowo.
also_behind_passage = Ta część leży też za przejściem szerokości { $width_m }.
one_outing_matters = Jeden szczęśliwy wyjazd bardzo by te liczby zmienił.
luck_leaves_such = Przy takich wyjazdach przypadek co jakiś czas zostawia takie miejsce.
look_decides = Aby rozstrzygnąć, która to z dwóch przyczyn: { $look ->
    [passage] sprawdzić, czy coś stoi w przejściu.
    [width] zmierzyć przejście taśmą mierniczą.
    [ground] sprawdzić, czy coś stoi na tym terenie albo go odgradza.
    [zone] zmierzyć, czy strefa leży tam, gdzie ją narysowano.
    [stuck_spot] obejrzeć miejsce, w którym kosiarka utyka.
    [edge] zobaczyć, jak daleko od krawędzi kosiarka tam zawraca.
   *[another_log] zapisać jeszcze { $log_h } jazdy; jeśli kosiarka może tam wjechać, pokaże to { $told_fraction } takich zapisów.
}

## Ground of which nothing is decided

not_yet = Na razie wszystko w porządku: { $driven_h } jazdy to mało na { $lawn_m2 }; luki szerokości { $widest_m } od czasu do czasu się zdarzają.
not_yet_until = Na razie wszystko w porządku: { $driven_h } jazdy to mało na { $lawn_m2 }; do około { $decided_h } jazdy luki szerokości { $widest_m } są czymś zwykłym.
hidden_by_silence = Zapis ma przerwę wtedy, gdy kosiarka mogła tu być (prawdopodobieństwo { $chance_fraction }).
cause_withheld = Z zapisu nie wynika, jak plan leży w ogrodzie, dlatego nie podano przyczyny ani żadnej zmiany. Obejrzeć to miejsce i sprawdzić plan albo zapisać lepsze pozycje.
shown_too_little = Zapis pokazuje za mało, by stwierdzić, czy to miejsce pominięto.

## What to look at where it got stuck

stuck_near = To miejsce leży { $distance_m } od { $feature ->
    [zone] krawędzi strefy wykluczonej „{ $name }”
    [obstacle] krawędzi przeszkody „{ $name }”
   *[lawn_edge] krawędzi trawnika
}: poszukać tam korzeni, uskoku lub miękkiego gruntu.
stuck_in_passage = To miejsce leży w przejściu szerokości { $width_m }: poszukać tam korzeni, uskoku lub miękkiego gruntu.
stuck_in_passage_near = To miejsce leży w przejściu szerokości { $width_m }, { $distance_m } od { $feature ->
    [zone] krawędzi strefy wykluczonej „{ $name }”
    [obstacle] krawędzi przeszkody „{ $name }”
   *[lawn_edge] krawędzi trawnika
}: poszukać tam korzeni, uskoku lub miękkiego gruntu.
stuck_in_the_open = Na planie nie ma nic w pobliżu: poszukać korzeni, dołka lub miękkiego gruntu.
stuck_somewhere = Poszukać korzeni, dołka lub miękkiego gruntu.

## What to change

lay_guide_run = Ułożyć linię prowadzącą ({ $wire_m } nowego przewodu) do dalszego końca fragmentu { $pocket } i kierować nią { $outings_of_ten } na 10 wyjazdów{ $longer ->
    [yes] , a pracę wydłużyć o { $added_h } dziennie
   *[no] { "" }
}: po { $log_h } takich jak w zapisie przejechane jest wtedy zwykle około { $after_fraction } fragmentu { $pocket }, a bez zmian { $before_fraction }.
move_zone = Przesunąć strefę „{ $zone }” o { $shift_m } tam, gdzie ją narysowano, bo z nawrotów wynika, że leży gdzie indziej{ $longer ->
    [yes] , a pracę wydłużyć o { $added_h } dziennie
   *[no] { "" }
}: po { $log_h } takich jak w zapisie przejechane jest wtedy zwykle około { $after_fraction } fragmentu { $pocket }, a bez zmian { $before_fraction }.
facing_side = Bok zwrócony na { $faces_deg }.
shrink_zone = Cofnąć o { $shift_m } bok strefy „{ $zone }” zwrócony na { $faces_deg }, tak aby droga obok niej do fragmentu { $pocket } miała szerokość { $passage_m }{ $longer ->
    [yes] , a pracę wydłużyć o { $added_h } dziennie
   *[no] { "" }
}: po { $log_h } takich jak w zapisie przejechane jest wtedy zwykle około { $after_fraction } fragmentu { $pocket }, a bez zmian { $before_fraction }.
add_zone = Nie wpuszczać kosiarki na miejsce, w którym utyka ({ $spot }), aby częściej docierała do fragmentu { $pocket }{ $longer ->
    [yes] , a pracę wydłużyć o { $added_h } dziennie
   *[no] { "" }
}: po { $log_h } takich jak w zapisie przejechane jest wtedy zwykle około { $after_fraction } fragmentu { $pocket }, a bez zmian { $before_fraction }.
work_longer = Wydłużyć pracę o { $added_h } dziennie: po { $log_h } takich jak w zapisie przejechane jest wtedy zwykle około { $after_fraction } fragmentu { $pocket }, a bez zmian { $before_fraction }.
shift_boundary = Przesunąć granicę o { $shift_m } na zewnątrz wzdłuż fragmentu { $pocket }{ $longer ->
    [yes] , a pracę wydłużyć o { $added_h } dziennie
   *[no] { "" }
}: po { $log_h } takich jak w zapisie przejechane jest wtedy zwykle około { $after_fraction } fragmentu { $pocket }, a bez zmian { $before_fraction }.

## How well a simulated machine fits the log

fit_trusted = Symulowana kosiarka, która jeździ tak jak ta ({ $speed_mps }, na podstawie { $turns ->
    [one] 1 nawrotu
   *[other] { $turns } nawrotów
} i { $outings ->
    [one] 1 wyjazdu
   *[other] { $outings } wyjazdów
}), przejeżdża tyle trawnika, ile pokazuje zapis.
fit_visits_differ = W symulacjach przejechane jest więcej lub mniej tego trawnika, niż pokazuje zapis: na planie brakuje czegoś, co jest w ogrodzie, albo kosiarka jeździ jednego dnia inaczej niż drugiego. Prognozy podano z szerszym przedziałem.
fit_path_differs = Droga przejechana w symulacjach jest dłuższa lub krótsza niż w zapisie. Prognozy podano z szerszym przedziałem.
not_fitted_lanes = Nie ma prognozy: kosiarka jeździ pasami, a te nie zależą od przypadku.
not_fitted_several_machines = Nie ma prognozy: { $machines ->
    [one] pracowała tu 1 kosiarka
    [few] pracowały tu { $machines } kosiarki
   *[other] pracowało tu { $machines } kosiarek
}, a dopasować można tylko jedną.
not_fitted_few_turns = Nie ma prognozy: { $turns ->
    [one] zaobserwowano tylko 1 nawrót przy krawędzi
    [few] zaobserwowano tylko { $turns } nawroty przy krawędzi
   *[other] zaobserwowano tylko { $turns } nawrotów przy krawędzi
}, a potrzeba { $expected }.
not_fitted_no_legs = Nie ma prognozy: w torze jazdy nie widać prostych odcinków między nawrotami.
not_fitted_no_ground = Nie ma prognozy: plan nie zostawia terenu do jazdy.
not_simulated = Nie ma prognozy: { $why }.

## Hours and grass

promise_beyond_hours = { $promised_fraction } w ciągu { $promised_days ->
    [one] 1 dnia
    [few] { $promised_days } dni
    [many] { $promised_days } dni
   *[other] { $promised_days } dnia
} nie da się osiągnąć dłuższą pracą: potrzeba by było { $needed_h } pracy dziennie.
promise_needs_hours = { $promised_fraction } w ciągu { $promised_days ->
    [one] 1 dnia
    [few] { $promised_days } dni
    [many] { $promised_days } dni
   *[other] { $promised_days } dnia
} wymaga w tym tempie około { $needed_h } pracy dziennie; kosiarka pracowała { $worked_h }, z tego jeździła { $driven_h }.
promise_beyond_reach = Żaden czas pracy nie wystarczy, by osiągnąć { $promised_fraction } w ciągu { $promised_days ->
    [one] 1 dnia
    [few] { $promised_days } dni
    [many] { $promised_days } dni
   *[other] { $promised_days } dnia
}: za dużo terenu jest pomijane. Kosiarka pracowała { $worked_h } dziennie, z tego jeździła { $driven_h }.
promise_hours_unknown = Kosiarka pracowała { $worked_h } dziennie, z tego jeździła { $driven_h }; z zapisu nie wynika, ile trzeba na { $promised_fraction } w ciągu { $promised_days ->
    [one] 1 dnia
    [few] { $promised_days } dni
    [many] { $promised_days } dni
   *[other] { $promised_days } dnia
}.
lower_cut_unknown = Z zapisu nie wynika, czy przy obecnej wysokości koszenia przejechano każde miejsce.
lower_cut = Przy obecnej wysokości przejechano każde miejsce dość szerokie, by je było widać (co najmniej { $visited_fraction } trawnika): wysokość koszenia można obniżyć o jeden stopień.
lower_cut_places_open = Zostawić wysokość koszenia bez zmian: { $places ->
    [one] 1 miejsce dość szerokie, by je było widać, nie jest jeszcze przejechane
    [few] { $places } miejsca dość szerokie, by je było widać, nie są jeszcze przejechane
   *[other] { $places } miejsc dość szerokich, by je było widać, nie jest jeszcze przejechanych
}, a wysoka trawa zatrzymuje nisko ustawioną kosiarkę.
lower_cut_unsure = Zostawić wysokość koszenia bez zmian: na pewno przejechano tylko { $visited_fraction } trawnika, a wysoka trawa zatrzymuje nisko ustawioną kosiarkę.
grass_log_too_short = Trawa, która rośnie { $growth_mm } dziennie, może czekać na przejazd { $allowed_days ->
    [one] 1 dzień
    [few] { $allowed_days } dni
    [many] { $allowed_days } dni
   *[other] { $allowed_days } dnia
} (zasada jednej trzeciej); zapis z { $log_days ->
    [one] 1 dnia
    [few] { $log_days } dni
    [many] { $log_days } dni
   *[other] { $log_days } dnia
} jest za krótki, by pokazać, czy gdzieś czekała dłużej.
grass_overdue = { $overdue_fraction } trawnika czekało na przejazd dłużej niż { $allowed_days ->
    [one] 1 dzień
    [few] { $allowed_days } dni
    [many] { $allowed_days } dni
   *[other] { $allowed_days } dnia
}, za długo jak na trawę, która rośnie { $growth_mm } dziennie (zasada jednej trzeciej): potrzeba więcej przejazdów.
grass_too_many_passes = Po każdym miejscu kosiarka przejeżdża { $passes ->
    [one] raz
    [few] { $passes } razy
    [many] { $passes } razy
   *[other] { $passes } raza
} w ciągu { $allowed_days ->
    [one] dnia
    [few] { $allowed_days } dni
    [many] { $allowed_days } dni
   *[other] { $allowed_days } dnia
}, a tyle trawa mogłaby czekać (zasada jednej trzeciej): wystarczyłoby mniej godzin i darń by na tym zyskała.
grass_enough_passes = Odstępy między przejazdami wynosiły najwyżej { $allowed_days ->
    [one] 1 dzień
    [few] { $allowed_days } dni
    [many] { $allowed_days } dni
   *[other] { $allowed_days } dnia
}, jak tego potrzebuje trawa, która rośnie { $growth_mm } dziennie (zasada jednej trzeciej).

## What a change brought

lawn_unknown = Z tych zapisów nie wynika, czy z całym trawnikiem jest lepiej.
lawn_more = Przejechano o { $points } pkt proc. trawnika więcej niż przedtem.
lawn_less = Przejechano o { $points } pkt proc. trawnika mniej niż przedtem.
lawn_alike = Na całym trawniku nie widać różnicy większej niż przypadek jednej nocy.
pockets_mended = Naprawione: { $pockets }.
pockets_better = Lepiej: { $pockets }.
pockets_new = Nowe: { $pockets }.
pocket_compared = { $pocket }: przedtem { $before_fraction }, potem { $after_fraction }; { $change ->
    [mended] { $within_luck ->
        [yes] prawie cały fragment jest teraz przejechany, ale sam przypadek sprawiłby to częściej niż w jednej na dziesięć takich par zapisów: sprawdzić ponownie za kilka nocy
       *[no] prawie cały fragment jest teraz przejechany
    }
    [better] przejechano więcej, niż dałby przypadek
    [new] przedtem był przejechany
   *[unchanged] { $within_luck ->
        [yes] przejechano więcej, ale nie więcej, niż może dać przypadek
       *[no] bez różnicy ponad przypadek
    }
}.
change_decided = { $pocket }: rozstrzygnięte po { $decided ->
    [one] pierwszej
   *[other] { $decided }
} z { $nights } nocy, z błędem najwyżej 5%, niezależnie od tego, jak często się sprawdzało.
change_open = { $pocket }: { $more ->
    [one] rozstrzygnęłaby to jeszcze jedna taka noc
    [few] rozstrzygnęłyby to jeszcze { $more } takie noce
   *[other] rozstrzygnęłoby to jeszcze { $more } takich nocy
}.

## What to beware of

blades_on_lawn = Ruchome noże: przed dotknięciem zatrzymać i wyłączyć kosiarkę; gdy pracuje, nie wpuszczać na trawnik dzieci ani zwierząt.
blades_near = Ruchome noże: przed pracą w pobliżu kosiarki zatrzymać ją i wyłączyć.
outline_from_drive = Nie podano planu: obrys narysowano na podstawie samej jazdy. Trawnika, do którego kosiarka nigdy się nie zbliżyła, nie policzono, a to, co objeżdżała, uznano za wyspę.
plan_fault = Plan: { $fault }.
dig_at_spot = Przed kopaniem w tym miejscu: zlecić wykrycie kabli i rur; prywatne nie są oznaczone. Korzenie mogą należeć do drzewa pod ochroną.
dig = Przed kopaniem: zlecić wykrycie kabli i rur w ziemi; prywatne instalacje nie są oznaczone.
zone_may_protect = Strefa może chronić korzenie, przewody lub ludzi: przed zmianą ustalić, po co tam jest.
hours_by_day = Godziny dodawać w dzień: w nocy wychodzą małe zwierzęta.
driven_in_the_dark = { $dark_h } jazdy przypadło na ciemność, gdy jeże i inne małe zwierzęta są na dworze: niech pracuje w dzień.
beyond_the_line = Za linią może być bruk, woda, skarpa albo cudzy grunt: obejrzeć, zanim się ją przesunie.
look_before_zone = Najpierw obejrzeć podłoże: korzeń, próg czy podmokły grunt, który da się naprawić, nie wymaga strefy.
guide_exit_unknown = Z zapisu nie wynika, gdzie ta kosiarka zjeżdża z linii prowadzącej; przyjęto, że gdzieś na jej ostatnich dwóch piątych. Jeśli da się to ustawić, niech zjeżdża blisko końca.
local_codes = Pierwszeństwo mają miejscowe przepisy i instrukcja samej kosiarki.
other_reasons = Różnica mówi, co przejechano w tych zapisach. Może się za nią kryć coś innego niż zmiana: pogoda, inne godziny, nóż, czyjś stół ogrodowy.
at_equal_hours = Obie strony różnią się godzinami jazdy; porównano je po tej samej liczbie godzin.
plan_unsure_before = Z zapisu sprzed zmiany nie wynika, jak plan leży w ogrodzie, więc miejsca mogą być przesunięte.
plan_unsure_after = Z zapisu po zmianie nie wynika, jak plan leży w ogrodzie, więc miejsca mogą być przesunięte.
place_often = Przejechano tędy { $visits ->
    [one] raz
    [few] { $visits } razy
    [many] { $visits } razy
   *[other] { $visits } raza
} (średnia dla trawnika: { $lawn_visits }). Jeśli trawa mimo to jest długa, sprawdzić noże, wysokość koszenia, wzrost trawy w tym miejscu i nachylenie terenu.
place_seldom = Przejechano tędy rzadko: { $visits ->
    [one] raz
    [few] { $visits } razy
    [many] { $visits } razy
   *[other] { $visits } raza
} (średnia dla trawnika: { $lawn_visits }). Sprawdzić, co zwęża tu drogę: przejście, narożnik, bliska krawędź.
place_few = Dotąd przejechano tędy { $visits ->
    [one] raz
    [few] { $visits } razy
    [many] { $visits } razy
   *[other] { $visits } raza
} (średnia dla trawnika: { $lawn_visits }): mniej, ale taką różnicę daje też sam przypadek. Rozstrzygną kolejne noce.
place_never = Pominięte: leży we fragmencie { $pocket } ({ $area_m2 }).
place_gap = W tym zapisie nie przejechano tędy, ale luka jest tak mała, że zostawia ją sam przypadek. Zapisać jeszcze jedną noc i zapytać ponownie.
place_not_yet = Jeszcze nie przejechano: leży we fragmencie { $pocket }, który na razie wyjaśnia przypadek. Rozstrzygnie łącznie { $decided_h } jazdy.
place_not_yet_open = Jeszcze nie przejechano: leży we fragmencie { $pocket }, który na razie wyjaśnia przypadek. Zapisać więcej nocy.
place_unseen = Nie wynika z zapisu: miejsce leży na terenie { $ground }, o którym brak danych. Zapisać noc bez przerw w tym miejscu.
place_is_stuck_spot = Kosiarka traciła tu czas: miejsce utknięć { $spot }, razem { $lost_min }.
place_off_lawn = Leży { $distance_m } poza trawnikiem, a tam nic się nie liczy. Jeśli to trawnik, brakuje go na planie.
place_elsewhere = Leży { $distance_m } od trawnika: w innym ogrodzie albo jedna z liczb jest błędna.
place_beyond_outline = Nie wynika z zapisu: miejsce leży { $distance_m } za obrysem narysowanym z jazdy. Jeśli to trawnik, narysować plan, który go obejmuje.
place_in_island = Nigdy tam nie wjechano: miejsce leży na wyspie { $island } ({ $area_m2 }), przy której kosiarka zawracała z kilku stron. Rabata, drzewo, staw czy trawnik za czymś? Rozstrzygnie to plan.
place_cannot_tell = Nie wynika z zapisu: błąd pozycji wynosi około { $error_m }, a w takiej odległości jest teren przejechany często i ani razu. Zapisywać lepszym odbiornikiem albo dłużej.
place_compared = { $said ->
    [none] Wskazane miejsce
   *[other] „{ $said }”
}: przedtem przejechano { $before_visits ->
    [one] raz
    [few] { $before_visits } razy
    [many] { $before_visits } razy
   *[other] { $before_visits } raza
} w ciągu { $before_h } jazdy, potem { $after_visits ->
    [one] raz
    [few] { $after_visits } razy
    [many] { $after_visits } razy
   *[other] { $after_visits } raza
} w ciągu { $after_h }.
place_needs_width = Bez szerokości koszenia przejazdów się nie liczy: zmierzyć ją, podać i zapytać ponownie.
nights_unknown = Z tych zapisów nie wynika, jak bardzo różni się noc od nocy, więc żadnej różnicy nie można uznać za prawdziwą.

## Words for a course

# Accusative: used after "na".
compass = { $eighth ->
    [0] północ
    [1] północny wschód
    [2] wschód
    [3] południowy wschód
    [4] południe
    [5] południowy zachód
    [6] zachód
   *[7] północny zachód
}

## What our own words mean

cause = { $value ->
    [walled_off] brak dojazdu
    [narrow_passage] wąskie przejście
    [edge_band] pas przy krawędzi
    [zone_misplaced] linia leży nie tam, gdzie ją narysowano
    [beyond_stuck_spot] za miejscem utknięć
    [too_few_visits] zagląda za rzadko
    [too_little_time] za mało jazdy
   *[undetermined] nie wynika z zapisu
}
asked-short = { $value ->
    [place_often] Przejechane jak reszta
    [place_seldom] Rzadko przejeżdżane
    [place_few] Dotąd mniej przejazdów
    [place_never] Pominięte
    [place_gap] Nieprzejechane
    [place_not_yet] Jeszcze nie
    [place_not_yet_open] Jeszcze nie
    [place_is_stuck_spot] Tu kosiarka utyka
    [place_off_lawn] Poza trawnikiem
    [place_elsewhere] Gdzie indziej
    [place_in_island] Nigdy tam nie wjechano
    [place_needs_width] Nie policzono
   *[place_cannot_tell] Nie wynika z zapisu
}
cause-meaning = { $value ->
    [walled_off] Kosiarka nie ma jak wjechać: prześwit jest dla niej za wąski albo coś tam stoi.
    [narrow_passage] Wjazd jest tak wąski, że kosiarka rzadko w niego trafia.
    [edge_band] Pas przy krawędzi zostaje za linią, na której kosiarka zawraca.
    [zone_misplaced] Kosiarka zawraca na linii, która leży gdzie indziej, niż pokazuje plan.
    [beyond_stuck_spot] Kosiarka utyka w drodze do tego miejsca.
    [too_few_visits] Droga jest wolna, ale kosiarka za rzadko tam dojeżdża.
    [too_little_time] Cały trawnik zapełnia się, jak powinien; potrzeba tylko więcej godzin.
   *[undetermined] Z tego zapisu nie wynika dlaczego.
}
suggestion = { $value ->
    [guide_run] Ułożyć linię prowadzącą
    [zone_move] Przesunąć strefę wykluczoną
    [zone_shrink] Zmniejszyć strefę wykluczoną
    [zone_add] Dodać strefę wykluczoną
    [more_hours] Wydłużyć pracę
   *[boundary_shift] Przesunąć granicę
}
suggestion-inline = { $value ->
    [guide_run] ułożyć linię prowadzącą
    [zone_move] przesunąć strefę wykluczoną
    [zone_shrink] zmniejszyć strefę wykluczoną
    [zone_add] dodać strefę wykluczoną
    [more_hours] wydłużyć pracę
   *[boundary_shift] przesunąć granicę
}
noise-source = { $value ->
    [station_scatter] rozrzut na postoju w stacji
    [rest_scatter] rozrzut na postoju poza stacją
    [driving_roughness] nierówność toru podczas jazdy
    [device_card] karta odbiornika
    [stated] ustawienia
    [receiver_claim] dokładność podana przez odbiornik
    [dilution_of_precision] układ satelitów (DOP) razy typowy błąd odległości
   *[default] przyjęta wartość domyślna, bo zapis żadnej nie daje
}
promise = { $value ->
    [kept] dotrzymana
    [broken] niedotrzymana
   *[cannot_tell] nie wynika z zapisu
}
fix-quality = { $value ->
    [unknown] nie podano
    [autonomous] same satelity
    [differential] różnicowa
    [precise] serwis precyzyjny
    [rtk_fixed] RTK fixed
    [rtk_float] RTK float
    [estimated] nawigacja zliczeniowa
    [manual] wpisana ręcznie
    [simulated] symulator
   *[other] nieznany kod
}
pocket-change = { $value ->
    [mended] naprawione
    [better] lepiej
    [new] nowe
   *[unchanged] bez zmian
}
out-of-reach = { $value ->
    [edge] pas przy krawędzi lub narożnik: kosiarka zawraca, zanim dosięgnie go tarcza tnąca
   *[cut_off] za zbyt wąskim przejściem albo zupełnie bez dojazdu
}
presence = { $value ->
    [came] dopiero później: przedtem przejeżdżano tędy
    [went] tylko na początku: potem przejeżdżano tędy
    [came_and_went] przez pewien czas: przedtem i potem przejeżdżano tędy
   *[throughout] cały czas
}
way-home = { $value ->
    [guide_run] wzdłuż linii prowadzącej
    [boundary] wzdłuż granicy
   *[straight] prosto przez trawnik
}
lower-cut = { $value ->
    [yes] tak
    [not_yet] jeszcze nie
   *[cannot_tell] nie wynika z zapisu
}
growth-source = { $value ->
    [settings] z ustawień
   *[temperature] ze średniej temperatury
}
failure-reason = { $value ->
    [unreadable] nieczytelny
    [damaged] uszkodzony
    [clock] zegar
    [plan] plan
    [settings] ustawienia
    [analysis] analiza
    [time] trwało za długo
    [memory] za mało pamięci
    [died] przerwane
   *[pieces] w częściach
}
fit-figure = { $value ->
    [visited_fraction] przejechany trawnik, %
    [path_m] przejechana droga, { $unit }
    [visits_map_correlation] mapa przejazdów, korelacja ze średnią symulacji
    [leg_m] odcinek między dwoma nawrotami, mediana, { $unit }
   *[revisit_path_m] droga między dwoma przejazdami przez miejsce, mediana, { $unit }
}

## Stuck spots

stuck-came = Najczęściej wjeżdżała tam, jadąc na { $course_deg }.

## page: summary

count-pocket = { $count ->
    [one] 1 fragment
    [few] { $count } fragmenty
    [many] { $count } fragmentów
   *[other] { $count } fragmentu
}
count-area = { $count }, { $area }
about-more-driving-are = Potrzeba jeszcze około { $hours } jazdy.
driven-over-percent-area = Przejechano { $percent } z { $area }.
driven-over-percent-area-range = Przejechano { $percent } z { $area } ({ $range }, z prawdopodobieństwem 90%).
lost-at = Stracono { $time } w miejscu { $id }
suggestion-by = { $value ->
    [guide_run] Ułożyć linię prowadzącą, { $length }
    [zone_move] Przesunąć strefę wykluczoną o { $length }
    [zone_shrink] Zmniejszyć strefę wykluczoną o { $length }
    [zone_add] Dodać strefę wykluczoną, { $length }
    [more_hours] Wydłużyć pracę o { $length }
   *[boundary_shift] Przesunąć granicę o { $length }
}
nine-ten-logs-pocket = Dziewięć na dziesięć symulacji: ze zmianą przejechane { $range_2 } fragmentu, bez zmian { $range }.{ $more ->
    [0] { "" }
    [one] { " " }Poniżej jeszcze 1 zmiana.
    [few] { " " }Poniżej jeszcze { $more } zmiany.
   *[other] { " " }Poniżej jeszcze { $more } zmian.
}
let-run-on-after = Niech jeździ dalej. Co po łącznie { $hours } jazdy będzie jeszcze nieprzejechane, nie jest już zwykłym przypadkiem.
luck-leaves-such-gap = Prawdopodobieństwo, że lukę taką jak { $id } zostawia sam przypadek: { $chance }.
sure-not-driven-over = { $percent } pewności, że przez { $id } nie przejechano
sure-change-helps = { $percent } pewności, że { $id } pomoże
change-brings-its-gain = W tylu symulacjach fragment zyskał, a prognoza się sprawdziła.
none-it-shows = Nic, co ten zapis mógłby pokazać
how-much-driven-over = Ile przejechano, zależy od szerokości tarczy tnącej, której nie podano; tabela dla każdej szerokości jest poniżej.
not-counted = Nie policzono
outline-drawn-from-log = Obrys narysowano z samego zapisu, jego krawędzie są dokładne do około { $error }: trawnika, do którego kosiarka nigdy się nie zbliżyła, nie policzono.
asked-about = { $count }, razem { $area }: kosiarka zawracała tam z kilku stron i nigdy nie wjechała. Rabaty, drzewa, stawy czy trawnik za czymś? Nie wliczono do trawnika.
visit = Wizyta:
quote-open = „
quote-close = ”
asked-place = Wskazane miejsce
asked-row = Przejazdy: { $visits }. Ostatni { $last }; zwykle { $due }.
asked-row-never = Przejazdy: { $visits }.
asked-mark = { $id }, wskazane miejsce: { $said }
asked-visits = { $number } × w tym zapisie (od { $low } do { $high })
asked-visits-beside = { $visits }; średnia dla trawnika { $mean }
asked-due = co { $hours } jazdy
walk-first-hint = najpierw obejść krawędź przy punkcie { $place }: na długości { $length } kosiarka nigdzie tam nie zawracała
walk-first = Najpierw obejść krawędź przy punkcie { $place }: na długości { $length } kosiarka nigdzie tam nie zawracała.
nothing-needs-reason-again = Nic nie wymaga wyjaśnienia
this-log-cannot-tell = Nie wynika z zapisu
not-by = To nie przypadek
change-nothing-garden-on = Na podstawie tego zapisu niczego w ogrodzie nie zmieniać.
measure-width-cutting-disc = Zmierzyć szerokość tarczy tnącej i policzyć ponownie.
walk-round-lawn-with = Obejść trawnik z rejestratorem i zrobić z tego plan: tego, co leży poza przejechanym terenem, w zapisie nie widać.
no-ground-left-out = Każdą pozostałą lukę wyjaśnia przypadek.
one-count-no-interval = Jedno liczenie, bez przedziału
lawn-driven-over-with = trawnika jest przejechane, z prawdopodobieństwem 90%.

## terminal: mod

count-smaller-pocket = { $count ->
    [one] 1 mniejszy fragment
    [few] { $count } mniejsze fragmenty
    [many] { $count } mniejszych fragmentów
   *[other] { $count } mniejszego fragmentu
}
count-place = { $count ->
    [one] 1 miejsce
    [few] { $count } miejsca
    [many] { $count } miejsc
   *[other] { $count } miejsca
}
count-time = { $count ->
    [one] 1 raz
    [few] { $count } razy
    [many] { $count } razy
   *[other] { $count } raza
}
at-cm = { $percent } przy { $width }
depends-on-cutting-width = zależy od szerokości koszenia, której nie podano: { $list }
pockets-from = fragmenty od szerokości { $length } ({ $area })
log-good-enough-can = Zapis jest wystarczająco dobry: może pokazać pominięte { $smallest }.
log-too-short-its = Zapis jest za krótki: pozycje są dobre, ale sam przypadek może zostawić fragmenty szerokości do { $length } ({ $area }).
log-not-good-enough = Zapis nie jest wystarczająco dobry: może pokazać tylko pominięte { $smallest }.
also-said = Ponadto: { $said }
lawn-percent-number-area = { $percent } trawnika, { $number } z { $area } ({ $interval })
missed-area = pominięte { $area }
not-yet = jeszcze nie { $area }
without-evidence = bez danych { $area }
none-told = nie wynika z zapisu
none-known = nic w narysowanym obrysie; co leży poza nim, nie wynika z zapisu
none-known-narrower = nic od szerokości { $width } w narysowanym obrysie; węższych fragmentów i tego, co leży poza nim, ten zapis nie może pokazać
none-narrower = nic od szerokości { $width }; węższych fragmentów ten zapis nie może pokazać
none-but-luck = nic; luki wyjaśnia przypadek
none-shown-unseen = nic nie widać, ale o { $area } brak danych: nie wynika z zapisu
smaller-gaps = mniejsze luki { $area }
of-id = { $id } { $share } z { $area }
all-luck-does-not = { $count }, razem { $area }: więcej, niż wyjaśnia przypadek
and-more = oraz { $more }
also-possible = możliwe też: { $join }
decided-after-driving-all = rozstrzygnięcie po łącznie { $hours } jazdy
luck-still-explains-them = { $count }, { $area }: na razie wyjaśnia je przypadek; { $decide }
lost-count = { $count }, stracono { $time }
lost-within = { $count }, stracono { $time }, do { $length } od punktu { $place }
more-spots = i jeszcze { $spots }
ladder-title = Mniejsza i większa zmiana
ladder = Według wielkości, średnia symulowanych zapisów: { $list }.
rung = { $size }: { $fraction }{ $lawn ->
    [none] { "" }
   *[other] , trawnik { $lawn }
}{ $chosen ->
    [yes] { " " }(ta zmiana)
   *[no] { "" }
}
change-set = Razem, najpierw to, co daje najwięcej powierzchni za pracę, każda liczona po poprzednich: { $list }. Z trawnika przejechane jest wtedy { $lawn }.
set-step = { $id } { $area } więcej ({ $fraction } tych fragmentów)
visits-title = { $count ->
    [one] 1 wizyta w tym ogrodzie
    [few] { $count } wizyty w tym ogrodzie
   *[other] { $count } wizyt w tym ogrodzie
}
visits-when = Kiedy
visits-who = Kto
visits-machine = Kosiarka
visits-said = Co powiedział klient
visits-changed = Co zmieniono
visits-sure = Rozstrzygnięte
visits-pocket = { $id } { $before } → { $after }
visits-decided = { $decided ->
    [none] { $more ->
        [none] nierozstrzygnięte
        [1] nierozstrzygnięte: jeszcze jedna taka noc
       *[other] nierozstrzygnięte; takich nocy jeszcze: { $more }
    }
    [beyond_luck] rozstrzygnięte
    [1] rozstrzygnięte po pierwszej nocy
   *[other] rozstrzygnięte; nocy: { $decided }
}
nights-differ = Pojedyncze zapisy tak się różnią: dziewięć na dziesięć ogrodów jest gotowych po { $hours } jazdy.
pocket-this-log-if = Fragment: { $percent } w tym zapisie, { $fraction } bez zmian, { $fraction_2 } ze zmianą{ $sure ->
    [none] { "" }
   *[other] ; pewność { $sure }
}.{ $more ->
    [0] { "" }
    [one] { " " }I jeszcze 1 zmiana.
    [few] { " " }I jeszcze { $more } zmiany.
   *[other] { " " }I jeszcze { $more } zmian.
}
lawn-within-percent-days = { $percent } trawnika w { $days }: { $word }{ $probability ->
    [none] { "" }
   *[other] { " " }(prawdopodobieństwo dotrzymania: { $probability })
}
one-every-driven-fixes = { $fixes }, jedna co { $time }; przejechano { $path } w { $time_2 }{ $silent ->
    [none] { "" }
   *[other] , bez pozycji { $silent }
}
log-too-short-positions = Zapis jest za krótki: pozycje są dobre, ale nie widać jeszcze nic z trawnika.
log-not-good-enough-shows = Zapis nie jest wystarczająco dobry: nie widać nic z trawnika.
not-looked-for-without = bez szerokości koszenia nie szukano
after-how-many-hours = nie da się powiedzieć, po ilu godzinach to się rozstrzygnie

## terminal: inspection

count-fix = { $count ->
    [one] 1 pozycja
    [few] { $count } pozycje
    [many] { $count } pozycji
   *[other] { $count } pozycji
}
count-fix-repeats-the = { $count ->
    [one] 1 pozycja powtarza poprzednią
    [few] { $count } pozycje powtarzają poprzednią
    [many] { $count } pozycji powtarza poprzednią
   *[other] { $count } pozycji powtarza poprzednią
}
around-lat = wokół { $lat_deg }, { $lon_deg }
east-by = { $length } (wschód) × { $length_2 } (północ), { $middle }
made-by = { $format }, źródło: { $id }
its-bytes = { $percent } bajtów
from-count = { $count } z { $share }{ $resolution ->
    [none] { "" }
   *[other] , krok { $resolution }
}
first-on = ; pierwszy raz w wierszu { $count }
first-on-line = ; pierwszy raz w wierszu { $count }: { $id }
to-id = { $id } do { $id_2 }
one-every = { $fixes }, jedna co { $time }
driving-time = jazda { $time }
at-station = w stacji { $time }
standing-elsewhere = postój gdzie indziej { $time }
silent-time = bez pozycji { $time }
from-after-start-further = { $time }, początek { $time_2 } po starcie, { $length } dalej
shorter-value = ; i krótsze: { $value }
middle-below-number-number = mediana { $number }, 95% poniżej { $number_2 }
last-digit-count-again = { $count } co do ostatniej cyfry
from-fix-fix-length = { $length } z pozycji na pozycję
drifting-length = dryf { $length }{ $time ->
    [none] { "" }
   *[other] { " " }w ciągu około { $time }
}
standard-deviation-per-axis = { $join } (odchylenie standardowe na oś)
from-figures = { $figures }; źródło: { $word }
local-metres-no-place = w metrach lokalnych, bez współrzędnych geograficznych
no-bytes = zera bajtów
no-dates = brak dat
not-known = nieznany
dark-of-driven = { $dark } z { $driven } jazdy{ $between }: jeże i inne małe zwierzęta są wtedy na dworze
in-the-dark = Po ciemku: { $said }.
dark-between = { "" } (zmierzch cywilny { $dusk }, świt { $dawn }{ $zone })

## terminal: comparison

count-night = { $count ->
    [one] 1 noc
    [few] { $count } noce
    [many] { $count } nocy
   *[other] { $count } nocy
}
both-plans-have-area = { $area } wspólne dla obu planów
built-as = { $value ->
    [suggested] wykonano zgodnie z propozycją
    [otherwise] wykonano inaczej
   *[nothing] nie wykonano propozycji
}
predicted-for = { $built }; prognoza dla { $id }: { $percent } ({ $interval }), zmierzono { $percent_2 }: { $held }
driving-percent = { $percent } ({ $interval }){ $equal ->
    [none] { "" }
   *[other] , { $equal } po tej samej liczbie godzin
}; { $count }, { $hours } jazdy
smaller-pockets = i mniejsze: { $pockets }

## page: before digging

plan-on-paper = Plan wypróbowany na papierze
reaches-everything = Według tego planu kosiarka dojedzie wszędzie.
leaves-parts = { $count ->
    [one] Do jednej części
   *[other] Do { $count } części
} trawnika, razem { $area }, nie da się dojechać.
promise-needs = { $percent } w ciągu { $count ->
    [one] 1 dnia
    [few] { $count } dni
    [many] { $count } dni
   *[other] { $count } dnia
} wymaga około { $hours } pracy dziennie.
promise-not-kept = { $percent } w ciągu { $count ->
    [one] 1 dnia
    [few] { $count } dni
    [many] { $count } dni
   *[other] { $count } dnia
} nie da się osiągnąć samym dodaniem godzin.
typical-run = Trawnik po typowej symulacji: { $count ->
    [one] 1 dzień
    [few] { $count } dni
    [many] { $count } dni
   *[other] { $count } dnia
} pracy po { $hours }. Ciemniejszy teren przejeżdżano częściej; zakreskowany pominięto.
count-day = { $count ->
    [one] 1 dzień
    [few] { $count } dni
    [many] { $count } dni
   *[other] { $count } dnia
}
nine-in-ten-gardens = w dziewięciu na dziesięć symulacji od { $low } do { $high }
give-width-for-days = Podać, na jaką szerokość kosi tarcza (machine.cut_width_m), i sprawdzić, czy jest miejsce dla kosiarki.
trim-by-hand = { $area } przy krawędziach i w narożnikach zostaje wysokie: dociąć ręcznie
boundary-with-slack = wokół trawnika i jego stref; do tego dochodzą odcinki między nimi i zapas na narożnikach
no-way-through = nie da się przejechać
done-after = { $share } symulacji po { $count ->
    [one] 1 dniu
    [few] { $count } dniach
    [many] { $count } dniach
   *[other] { $count } dnia
}
share-of-driving = Udział dotyczy wyjazdów bez linii prowadzącej; przy 100% każdy metr kwadratowy za przejściem jest przejeżdżany tak samo często jak gdzie indziej. To, ile przejechano, pochodzi z symulacji, razem z wyjazdami wzdłuż linii prowadzącej.
from-middle = środek: { $place }
assumed-machine = Kosiarka, która zawraca, gdy jej środek jest { $setback } przed krawędzią, i jedzie z prędkością { $speed_mps } prosto, aż przypadkowo zawróci. Ustawić machine.past_boundary_m, machine.speed_mps i godziny pracy zgodnie z własną kosiarką.
assumed-level = Równy, suchy grunt: plan nie zawiera wysokości, więc prognoza nie obejmuje nachyleń ani miękkiego gruntu.

## page: handout

not-driven-over-up = Nieprzejechane: { $area }, szerokość do { $length }
mower-stood-here-all = Kosiarka { $times ->
    [0] ani razu tu nie stała
    [1] stała tu raz
    [2] stała tu dwa razy
   *[other] stała tu { $times } razy
}, razem { $time }
pocket-driven-over-this = { $why } W tym zapisie przejechano { $percent } fragmentu; bez zmian należy oczekiwać { $fraction }, ze zmianą { $fraction_2 }.
promised-lawn-within-percent = Obiecano: { $percent } trawnika w { $days }. { $word }.
more-on-page-on = Na stronie na ekranie jest ich jeszcze { $left_out }.

## page: site_facts

count-way = { $count ->
    [one] 1 droga
    [few] { $count } drogi
    [many] { $count } dróg
   *[other] { $count } drogi
}
about-count = { $count } z około { $number }
usually-out-began-along = Zwykle { $time } w terenie{ $charging ->
    [none] { "" }
   *[other] ; między wyjazdami { $charging } w stacji
}. Rozpoczęte wzdłuż linii prowadzącej: { $count }.
brackets-usual-time-join = { $join }; w nawiasach typowy czas.
day-hours = { $hours } dziennie
between-first-departure-last = Od pierwszego wyjazdu do ostatniego powrotu, z tego { $hours } jazdy. { $said }
growth-a-day = { $length } dziennie
tenth-lawn-steeper-steepest = Dziesiąta część trawnika jest bardziej stroma. Najbardziej stroma część: { $place }.
not-logged = nie zapisano
more-than = same godziny nie wystarczą

## page: compare

before-after = Przed i po

found-when = { $value ->
    [before] przed
   *[after] po
}

## page: facts

about-number = około 1 na { $number }
long-driven-over-times = długość { $length }, przejazdów { $number } × tyle, ile średnio na trawniku, najwięcej { $count }.
wire-length = { $length } przewodu
shift-length = przesunięcie o { $length }
more-day = { $hours } dziennie więcej
less-new-than-chance = znajduje mniej nowego terenu, niż dałby przypadek (skuteczność { $figure })
new-as-chance = znajduje tyle nowego terenu, ile dałby przypadek (skuteczność { $figure }; 100% to jazda bez nakładania się)
more-new-than-chance = znajduje więcej nowego terenu, niż dałby przypadek (skuteczność { $figure }; 100% to jazda bez nakładania się)
hardly-twice = prawie nigdzie nie przejeżdża dwa razy (skuteczność { $figure })
reach-both = 95% po { $first }, 99% po { $second } jazdy
reach-95 = 95% po { $after } jazdy, 99% nieosiągalne
reach-99 = 99% po { $after } jazdy
reach-none = 95% i 99% nieosiągalne
outings-sent-along-percent = { $percent } wyjazdów wzdłuż tej linii
half-lawn-driven-over = Połowę trawnika przejechano co najmniej tyle razy; średnia to { $number }.
half-waits-are-shorter = Połowa odstępów jest krótsza. Dziewięć na dziesięć: { $interval_h }. 99 na 100: { $interval_h_2 }.
less-than = mniej niż 1 na 10 000
cannot-be = nie da się powiedzieć
not-counted-again = nie policzono
pocket-again = fragment
whole-lawn = cały trawnik
longer-than-this-log = dłużej niż ten zapis
not-told-apart-yet = jeszcze nie rozdzielono

## page: page

# Used after "z" (genitive).
count-log-file = { $count ->
    [one] 1 pliku zapisu
    [few] { $count } plików zapisu
    [many] { $count } plików zapisu
   *[other] { $count } pliku zapisu
}
last-visit-longer-ago = Na końcu zapisu ostatni przejazd dawniej niż { $hours } temu
missed-area-again = pominięte, { $area }
stuck-lost = utknięcia, stracono { $time }
not-yet-area = jeszcze nie, { $area }
not-yet-heading = Jeszcze nie: { $count } do rozstrzygnięcia w dalszych godzinach
to-start = od { $start } do { $end } ({ $zone_words })
driving-from = { $span }. { $driven } jazdy, z { $logs }.
without-evidence-area = { $area } bez danych. { $said }
outside-boundary-for-after = { $length } za granicą przez { $time }, { $time_2 } po starcie; { $came_back ->
    [yes] wróciła sama
   *[no] w tym zapisie nie wróciła
}.
silence-after-start-may = przerwa { $time } w zapisie, { $time_2 } po starcie, { $place }: kosiarka mogła tam stać, najwyżej tak długo.
machine-efficiency = Kosiarka { $efficiency }.
probability-kept-percent-again = Prawdopodobieństwo dotrzymania: { $percent }.
lawn-within-percent-days-probability = { $percent } trawnika w { $days }. { $probability }
lawn-report = Raport o trawniku
times-driven-over-darker = Liczba przejazdów (ciemniej: więcej)
less-than-twice = mniej niż dwa razy
usual-time-between-two = Typowy czas między dwoma przejazdami (ciemniej: częściej)
time-again = na czas
charging-station = stacja ładowania
without-dates = bez dat
out-reach = nieosiągalne

## page: method

count-outing = { $count ->
    [one] 1 wyjazd
    [few] { $count } wyjazdy
    [many] { $count } wyjazdów
   *[other] { $count } wyjazdu
}
lawn-counted-squares-this = Trawnik liczono w kwadratach o takim boku; już samo to zmienia wynik o około { $number } pkt proc.
standard-deviation-per-axis-from = Odchylenie standardowe na oś; źródło: { $word }.
plan-offset = { $east } na wschód, { $north } na północ, obrót o { $turned }°
plan-moved-by-this = O tyle przesunięto plan, by pasował do zapisu; znane z dokładnością do { $length }.
known-within-no-more = Znane z dokładnością do { $length }: nie więcej niż przypadek, więc plan zostaje tak, jak go narysowano.
from-one = Podstawa: { $fixes }, jedna co { $time }.
while-driving = Podczas jazdy; { $outings }.
drift-length = dryf { $length }
line-count = wiersz { $count }
default-error = błąd domyślny
from-plan = z planu
from-log-itself-again = z samego zapisu
number-outings-not-known = liczba wyjazdów nieznana

## morning

count-garden = { $count ->
    [one] 1 ogród
    [few] { $count } ogrody
    [many] { $count } ogrodów
   *[other] { $count } ogrodu
}
count-thing = { $count ->
    [one] 1 rzecz
    [few] { $count } rzeczy
    [many] { $count } rzeczy
   *[other] { $count } rzeczy
}
your-delivery = { $count }, z tego { $gardens } bez żadnych danych od { $since }: zawiodło ich przesyłanie (wysyłanie, karty, sieć), a nie ogrody.
is-mended = { $garden }: { $alarm } od { $since }, naprawione od { $mended }.
is-known = { $said ->
    [none] { "" } (znane)
   *[other] { "" } (znane: { $said })
}
alarm = { $value ->
    [missed_pocket] pominięty teren
    [stuck_spot] utyka
    [lost_hours] mniej godzin jazdy
    [less_visited] mniej przejechane
    [absent] brak zapisów
    [receiver_worse] gorszy odbiornik
    [silences] długie przerwy w zapisie
   *[promise] obietnica niedotrzymana
}
bring = { $value ->
    [missed_pocket] Zabrać plan, taśmę mierniczą i paliki
    [stuck_spot] Zabrać łopatę, darń lub deski
    [lost_hours] Zabrać akumulator i środek do czyszczenia styków
    [less_visited] Zabrać zapasowe noże i stronę z raportem tego ogrodu
    [absent] Zabrać naładowany rejestrator i kartę
    [receiver_worse] Zabrać odbiornik i przewód antenowy
    [silences] Zabrać odbiornik i naładowany rejestrator
   *[promise] Przygotować godziny pracy, by dodać ich w dzień
}
night-visit-with-log = Noc { $id }: { $count }, do odwiedzenia { $gardens }, z zapisem { $with_log }{ $resting ->
    [0] { "" }
   *[other] , w spoczynku { $resting }
}, nie powiodło się: { $count_2 }

## words/comparison

points-fraction = { $fraction } pkt proc.
interval-points = { $points } (przedział 90%: od { $low } do { $high } pkt proc.)
interval-not-worked-out = { $points } (bez przedziału)
points-from-night-night = { $number } pkt proc. z nocy na noc
standard-deviations-points-from = odchylenia standardowe: { $number } pkt proc. z błędów pozycji, { $nightly }
to-percent = { $percent } (od { $number } do { $percent_2 })
how-nights-differ-cannot = przy tak niewielu nocach nie wiadomo, jak się różnią

## terminal: hints

log-driving-more-give = zapisać jeszcze { $hours } jazdy i podać wszystkie zapisy razem; rozstrzygnie się wtedy to, co jeszcze otwarte
promise-give-logs-as = obietnica dotyczy okresu: { $days }; podać razem zapisy z tylu dni
measure-width-cutting-disc-give = zmierzyć szerokość tarczy tnącej i podać ją: --cut-width 22cm
walk-once-round-lawn = obejść raz trawnik z odbiornikiem; tussock plan from-walk robi z tego plan, a --plan go przyjmuje
mended-plan-is-written = analyse --write-plan PLIK zapisuje plan narysowany tak, jak według zapisu wygląda ogród

## gpx

missed-widest = Pominięte: { $area }, największa szerokość { $length }. { $said }
stuck-lost-within = Utknięcia: { $count }, stracono { $time }, w promieniu { $length }. { $said }
suggested-guide = Proponowana linia prowadząca. { $said }
tussock-id = tussock { $id }
tape-figures = { $figures } Taśma: { $tape }.
ground-mower-left-out = Teren, który kosiarka pominęła, i miejsca, w których traciła czas.

## Checks

checks-hold = { $held ->
    [0] Żadne ze sprawdzeń (razem { $all }) nie wypadło pomyślnie
    [one] { $all ->
        [one] Jedyne sprawdzenie wypadło pomyślnie
       *[other] 1 z { $all } sprawdzeń wypadło pomyślnie
    }
    [few] { $held } z { $all } sprawdzeń wypadły pomyślnie
   *[other] { $held } z { $all } sprawdzeń wypadło pomyślnie
}
checks-say = { $sum }; { $fails }
check = { $value ->
    [fixes_left_out] Pominięte pozycje wobec ich prognozy
    [halves_of_log] Jedna połowa zapisu wobec drugiej
    [plan_place] Położenie planu wobec nawrotów
    [turns_at_edges] Nawroty wobec każdej krawędzi planu
    [drawn_garden] Ogród narysowany przez dopasowaną kosiarkę wobec zapisu
    [cell_sum] Kwadraty mapy wobec głównego wyniku
    [as_logged] Wprost z zapisu wobec wyniku z poprawką
    [two_roads] Dopasowany tor wobec liczenia wprost z zapisu z poprawką
    [silences] Przerwy w zapisie wobec tego, co uznano za pominięte
   *[shown_ground] To, co zapis ma pokazywać, wobec mapy
}
check-fails = { $value ->
    [fixes_left_out] błąd pozycji jest większy, niż podano
    [halves_of_log] obie połowy zapisu leżą obok siebie
    [plan_place] nawroty nie skupiają się przy krawędziach planu
    [turns_at_edges] nawroty nie leżą na krawędziach planu
    [drawn_garden] kosiarka jeździ inaczej niż jej model
    [cell_sum] mapa nie sumuje się do głównego wyniku
    [as_logged] wynik wprost z zapisu przeczy wynikowi z poprawką
    [two_roads] dwa sposoby liczenia przeczą sobie
    [silences] pominięty teren mógł zostać przejechany w przerwie w zapisie
   *[shown_ground] widoczną szerokość podniesiono do szerokości nierozstrzygniętego terenu
}
check-fails-edge = nawroty nie leżą na krawędzi zwróconej na { $edge_deg }
check-is = { $value ->
    [fixes_left_out] { $number } × podany błąd
    [halves_of_log] { $length } od siebie
    [plan_place] { $percent } wyjaśnionych nawrotów
    [turns_at_edges] { $number } × największe dopuszczalne odsunięcie krawędzi
    [drawn_garden] długości odcinków różnią się o { $number } (logarytm naturalny ich stosunku)
    [cell_sum] różnica { $points } pkt proc.
    [as_logged] różnica { $points } pkt proc.
    [two_roads] różnica { $number } odchyleń standardowych
    [silences] prawdopodobieństwo najwyżej { $percent }
   *[shown_ground] { $length }
}

## page: parts of every page

show-on-map-id = pokaż na mapie, { $id }
show-on-map = pokaż na mapie
map-nearer = bliżej
map-farther = dalej
map-whole = cały trawnik
map-move = Przesuwanie mapy
in-short = W skrócie
foot-driven-over = Pozycje pokazują, gdzie kosiarka przejechała; czy trawa jest tam skoszona, trzeba zobaczyć na miejscu.

## page: the answers

ask-log = Czy zapis jest wystarczająco dobry?
ask-missed = Co pominięto?
ask-why = Dlaczego?
ask-change = Co zmienić?
ask-sure = Jak pewne to jest?
log-yes = Tak
log-too-short = Pozycje tak, ale zapis za krótki
log-no = Nie
part-visited = przejechane
part-missed = pominięte
part-not-yet = jeszcze nie
part-unseen = nieznane
part-sliver = mniejsze luki
change-log-again = Najpierw zapisać ponownie
change-look = Pójść tam i obejrzeć
change-give-width = Podać szerokość koszenia
change-nothing-yet = Na razie nic
change-give-outline = Najpierw podać obrys
change-nothing = Nic
others-end = { $list }.

## page: report

title-report = { $title }: gdzie kosiarki nie było
picked-more = wszystko, co o tym wiadomo
picked-close = zamknij
to-answers = Do odpowiedzi
where-not-been = Gdzie kosiarki nie było
map = Mapa
what-map-shows = Co pokazuje mapa
ground = Teren
ground-none = brak
map-drawn-from = Narysowano z zapisanych pozycji: widać teren, po którym przejechano.
map-placeless = Zapis nie ma położenia geograficznego; mapa leży na własnych osiach.
map-moves = Przeciągnięcie przesuwa; szczypanie, dwukrotne kliknięcie albo + i − zmieniają skalę; klawisze strzałek działają, gdy mapa jest zaznaczona.
places = Miejsca
missed-and-why = Co pominięto i dlaczego
missed-lead = Teren, który pozostał nieprzejechany, choć przypadek rzadko zostawiłby tak szeroką lukę. Do środka każdego fragmentu można dojść z dwiema taśmami mierniczymi.
up-to-wide = szerokość do { $length }
see = Patrz
evidence-and-others = Co za tym przemawia, co przeciw i co jeszcze wchodzi w grę
evidence = Co za tym przemawia, a co przeciw
how-sure-that = Jak pewne to jest
rank-first = na pierwszym miejscu
rank-other = możliwe też
evidence-for = za
evidence-against = przeciw
middle-at = Środek: { $place }.
change-and-gain = Co zmienić i co to da
change-lead = Prognoza z symulacji: kosiarka dopasowana do tego zapisu jeździ ze zmianą i bez niej. Kropka to wynik, jaki pokaże większość pojedynczych nocy; dziewięć na dziesięć leży między końcami kreski.
for-pockets = dla
needs = Potrzeba: { $list }.
together-with = Razem z { $list }.
driven-over = Przejechane
in-this-log = w tym zapisie
if-nothing-changes = bez zmian
if-changed = ze zmianą
predictions-of = Prognozy dla { $id }
gained-in-runs = W { $percent } symulacji fragment zyskał, a prognoza się sprawdziła.
gain-shows-after = W większości z nich zysk widać po { $hours } jazdy.
where-stuck = Gdzie utknęła
stuck-lead = Miejsca poza stacją, w których kosiarka wciąż na nowo traciła czas.
time-lost = stracono { $time }
stuck-within = W promieniu { $length } wokół punktu { $place }.
drove-through = { $count ->
    [one] Przejechała tędy 1 raz bez utknięcia.
   *[other] Przejechała tędy { $count } razy bez utknięcia.
}
not-yet-lead = Nieprzejechany teren, który na razie wyjaśnia przypadek. Nie wymaga zmian, tylko więcej godzin, zanim będzie można coś powiedzieć.
head-pocket = Fragment
head-area = Powierzchnia
head-widest = Najszerzej
head-chance = Szansa, że to przypadek
head-decided = Rozstrzygnie się po
head-where = Gdzie
not-yet-table = Jeszcze nie
hours-are-driving = Godziny to godziny jazdy od początku tego zapisu.
passages-and-ways = Przejścia, teren poza zasięgiem i drogi powrotne
passages = Przejścia
head-passage = Przejście
head-width = Szerokość
head-free = Wolne dla środka kosiarki
head-length = Długość
head-behind = Trawnik za nim
head-crossed = Na drugą stronę
head-share-behind = Udział w należnej drodze za nim
passage-shut-word = zamknięte
crossings-are = Przejazdy na drugą stronę; „z około”: tyle razy na tej samej drodze przejechałaby kosiarka jeżdżąca swobodnie.
out-of-disc = Poza zasięgiem tarczy tnącej
turns-inside = Zawraca przed linią o
turns-inside-means = Zwykła odległość między środkiem kosiarki a linią, na której zawraca.
outings = Wyjazdy
ways-home = Drogi powrotne
drawing-differs = Czym rysunek różni się od ogrodu?
plan-would-settle = Co rozstrzygnąłby plan?
islands-or-lawn = Wyspy czy trawnik poza zasięgiem?
islands = Wyspy
head-island = Wyspa
in-no-plan = Nie ma na żadnym planie
in-no-plan-lead = Rzeczy na trawniku, przy których kosiarka zawracała.
head-thing = Rzecz
head-turns = Nawroty przy niej
head-across = Średnica, około
head-stood = Stała tam
things-in-no-plan = Rzeczy, których nie ma na planie
hours-and-grass = Godziny pracy i trawa
works = Pracuje
allowed = Dozwolone
allowed-means = Godziny pracy z ustawień, średnio w tygodniu.
promise-needs-label = Obietnica wymaga
promise-needs-means = Godziny pracy w tym tempie; nie wystarczą żadne, jeśli część trawnika w ogóle się nie zapełnia.
lower-blades = Opuścić noże?
growth = Wzrost trawy
longest-wait = Najdłuższy dozwolony odstęp
one-third-rule = Według zasady jednej trzeciej: nigdy nie ścinać naraz więcej niż jednej trzeciej źdźbła.
slope = Nachylenie
also-seen = Zauważono też
worn-line-is = Wyjeżdżona linia:
stray-is = Poza granicą:
possible-stop-is = Możliwy postój:
paper-what = Co obejrzeć i co zrobić
paper-no-place = Żadnego miejsca nie trzeba oglądać: każdą pozostałą lukę wyjaśnia przypadek, a kosiarka nigdzie nie utknęła.
paper-changes = Proponowane zmiany
stills-title = Jak zapełniał się trawnik
stills-lead = Sześć map, każda po kolejnej szóstej części jazdy.
still-new = nowe od poprzedniej mapy
still-before = przejechane wcześniej
not-driven-over = nieprzejechane
safety = Bezpieczeństwo
paper-stop = Przed dotknięciem kosiarki zatrzymać ją i wyłączyć tak, by nie mogła ruszyć.
paper-dig = Przed kopaniem pod przewód zlecić wykrycie kabli i rur w ziemi. Przed przesunięciem strefy zapytać, co ona chroni. Godziny dodawać w dzień, nie w nocy.
manual-first = Pierwszeństwo mają miejscowe przepisy i instrukcja samej kosiarki.
paper-keep-off = Gdy kosiarka pracuje, nie wpuszczać na trawnik dzieci ani zwierząt. Linie prowadzić z dala od skarp i brzegów wody. Prace przy sieci elektrycznej zlecać elektrykowi z uprawnieniami.
paper-looked-at = Obejrzano dnia
paper-signed = Kto, podpis
paper-next-step = Uzgodniony następny krok
how-fast = Jak szybko zapełniał się trawnik i jak często po nim przejeżdżano
ground-gained = Przyrost terenu w czasie jazdy
line-this-log-interval = ten zapis, z przedziałem 90% na końcu
line-this-log = ten zapis
line-random = losowe przeszukiwanie
line-no-overlap = bez nakładania się
line-promised = obiecano
random-law-means = Kosiarka błądząca losowo podlega prawu losowego przeszukiwania (Koopman 1956): im więcej już przejechano, tym częściej trafia na znany teren. Taka, która nigdzie nie przejechałaby dwa razy, szłaby po linii bez nakładania się.
pattern-efficiency = Skuteczność wzoru jazdy
to-95 = Do 95% trawnika
to-95-means = Godziny jazdy w tym tempie; nieosiągalne, jeśli część trawnika w ogóle się nie zapełnia.
to-99 = Do 99%
to-99-means = To samo dla wszystkiego oprócz jednej setnej.
the-promise = Obietnica
how-often = Jak często przejeżdżano każde miejsce
bars-mean = Każdy słupek to część trawnika przejechana tyle razy. Zakreskowany słupek to część nieprzejechana.
waits-mean = Taka część odstępów między dwoma przejazdami jest krótsza; ostatni, niezakończony odstęp każdego miejsca liczy się jako niezakończony.
visits-typical = Typowa liczba przejazdów
evenness = Równomierność (Gini)
evenness-means = 0 to wszędzie tyle samo przejazdów, 1 to wszystkie przejazdy w jednym miejscu.
time-between = Czas między przejazdami
overdue-label = Po terminie
overdue-means = Na tej części trawnika trawa od ostatniego przejazdu przerosła zasadę jednej trzeciej.
hours-by-activity = Godziny według czynności
same-in-figures = To samo w liczbach
activity-in-figures = Godziny według czynności w liczbach
nights-not-drawn = { $count ->
    [one] 1 wcześniejszej nocy nie narysowano.
   *[other] { $count } wcześniejszych nocy nie narysowano.
}
nothing-claimed = O czasie bez pozycji nic się nie stwierdza.
each-lawn = Każdy trawnik osobno
head-lawn = Trawnik
with-bracket = { $figure } ({ $more })
for-each-width = Przejechane, dla każdej szerokości koszenia
how-counted = Jak to policzono
of-the-log = O zapisie: { $said }
cutting-width = Szerokość koszenia
cutting-width-means = Z ustawień. Jeden centymetr więcej dałby więcej policzonego terenu.
counting-square = Kwadrat liczenia
realisations = Realizacje
counted-once = Policzono raz, na najbardziej prawdopodobnym torze; wpływu błędu pozycji jeszcze nie policzono.
counted-often = Tyle prawdopodobnych torów policzono, by zobaczyć, jak bardzo błąd pozycji zmienia wynik.
as-logged = Wprost z zapisu
as-logged-means = Wynik, gdyby surowe pozycje połączyć prostymi. Tylko dla porównania.
reachable = Osiągalne
reachable-means = Część trawnika, do której tarcza tnąca w ogóle może dotrzeć.
position-error = Błąd pozycji
beware = Uwaga
default-error-means = Z zapisu nie wynika, jak jest dokładny; aby się dowiedzieć, zapisać godzinę w stacji.
plan-against-log = Plan wobec zapisu
outline = Obrys
outline-from-plan = Trawnik, strefy i przeszkody tak, jak narysowano je na planie.
outline-from-log = Terenu poza skrajnym przejazdem nie policzono, więc żadna liczba nie dotyczy tu całego trawnika. Aby to zmienić, obejść obrys.
path = Tor jazdy
usual-speed = Zwykła prędkość
beside-surveyed = Zapis obok toru pomierzonego geodezyjnie
errors-surveyed = Błędy wobec toru pomierzonego geodezyjnie
head-error = Błąd
errors-mean = Poprzeczny: do najbliższego miejsca toru, na lewo od niego dodatni. Podłużny: o ile przed miejscem, w którym kosiarka powinna wtedy być; w czasie: o ile później tamtędy przejechała. Względny: o ile zmienia się błąd poprzeczny między przejazdem a następnym obok niego, w ciągu 15 minut (według ISO 12188-1). Zapisane to pozycje z zapisu, obliczone to odtworzony z nich tor.
simulated-beside = Symulowana kosiarka obok zapisu
predictions-made = Służy do prognoz.
predictions-none = Nie służy do prognoz.
head-figure = Wielkość
head-in-log = W zapisie
head-in-runs = { $count ->
    [one] W 1 symulacji
   *[other] W { $count } symulacjach
}
log-and-simulation = Zapis i symulacja
figure-range = { $figure } (od { $low } do { $high })
log-files = Pliki zapisu i to, czego nie użyto
made-by-label = źródło:
fixes-of = { $count ->
    [one] 1 pozycja:
    [few] { $count } pozycje:
   *[other] { $count } pozycji:
}
not-used-of-file = Nieużyte z tego pliku
head-not-used = Nie użyto
head-why = Dlaczego
head-first-at = Pierwszy raz
everything-used = Użyto wszystkiego, co zawierał.
before-you-change = Zanim cokolwiek się zmieni
stop-and-manual = Przed dotknięciem kosiarki zatrzymać ją i wyłączyć tak, by nie mogła ruszyć. Pierwszeństwo mają miejscowe przepisy i instrukcja samej kosiarki.
all-dangers = Wszystkie zagrożenia przy takich pracach
danger-blades = Ruchome noże.
danger-blades-means = Przed dotknięciem kosiarki zatrzymać ją i wyłączyć tak, by nie mogła ruszyć. Gdy pracuje, nie wpuszczać na trawnik dzieci ani zwierząt.
danger-logger = Montaż rejestratora.
danger-logger-means = Nigdy na przycisku stop ani tam, gdzie kosiarka wykrywa podniesienie lub przechylenie. Zamocować z dala od noży.
danger-digging = Kopanie pod przewód.
danger-digging-means = Najpierw zlecić wykrycie kabli i rur w ziemi. Prywatne instalacje nie są oznaczone.
danger-slopes = Skarpy i woda.
danger-slopes-means = Linię prowadzić z dużym odstępem od krawędzi, z których kosiarka mogłaby się zsunąć.
danger-mains = Sieć elektryczna.
danger-mains-means = Prace przy zasilaniu stacji ładowania wykonuje tylko elektryk z uprawnieniami.
danger-night = Noc.
danger-night-means = Godziny dodawać w dzień: w nocy wychodzą jeże i inne małe zwierzęta.
danger-zones = Strefy.
danger-zones-means = Przed przesunięciem lub zmniejszeniem strefy zapytać, po co tam jest. Może chronić korzenie, przewody lub ludzi.

## page: before and after

title-compare = { $title }: przed i po
difference = Różnica
more-than-before = Tyle więcej trawnika przejechano po zmianie niż przed nią; { $meaning }.
side-driven-over = { $side }: przejechano { $percent }
side-facts = { $interval }{ $equal ->
    [none] { "" }
   *[other] ; { $equal } po tej samej liczbie godzin
}. { $count }, { $hours } jazdy.
map-move-side = Przesuwanie mapy, { $side }
only-summary = Zachowano tylko podsumowanie, więc nie ma mapy.
compare-map-key = Zakreskowane: większości fragmentu po tej stronie nie przejechano. Obrys przerywany: większość przejechano. Ciemniejszy teren przejeżdżano częściej; obie mapy mają tę samą skalę.
how-sure-difference = Jak pewna jest różnica
counted-on = Policzono na
counted-on-common = { $area } trawnika wspólnego dla obu planów.
lawn-only = { $when ->
    [before] { $area } było trawnikiem tylko przedtem
   *[after] { $area } jest trawnikiem dopiero od zmiany
}
what-became = Co się stało z każdym fragmentem
head-found = Wykryto
head-before = Przejechane przed
head-after = po
head-became = Co się z nim stało
pockets = Fragmenty
show-on-both = { $id }, pokaż na obu mapach
predicted-and-measured = Prognoza i pomiar
predicted-measured = { $built ->
    [otherwise] Prognoza dla tego, co wykonano: { $predicted }, zmierzono { $measured }: { $meaning }.
   *[other] Prognoza: { $predicted }, zmierzono { $measured }: { $meaning }.
}
predicted = prognoza
measured-after = zmierzono potem

## page: plan on paper

title-plan = { $title }: przed kopaniem
before-digging = Przed kopaniem
driven-over-after = Przejechane w { $days }
days = Dni
not-worked-out = nie obliczono
lawn-to-cut = Trawnik do skoszenia
boundary = Granica
guide-runs = Linie prowadzące
guide-runs-none = brak
out-of-reach-title = Poza zasięgiem
part-out-of-reach = { $area }, { $why }: { $middle }
head-free-machine = Wolne dla kosiarki
head-behind-it = Trawnik za nim
head-changes = Na drugą stronę dziennie
head-share = Jego udział w jeździe
head-nine-tenths = Dziewięć dziesiątych przejechane
weak-places = Słabe miejsca i dlaczego
would-mend = Co by je naprawiło
as-planned = według planu
assumed-and-beware = Co przyjęto i na co uważać
foot-forecast = Prognoza z symulacji: jak różnią się od niej prawdziwe kosiarki, pokażą pierwsze dni zapisów.

## page: morning

title-morning = Ogrody do odwiedzenia po nocy { $night }
morning-after = Rano po nocy { $night }
gardens-to-visit = Ogrody do odwiedzenia
count-muted = Wyciszone: { $count }.
gardens-in-order = Ogrody, najpierw ten, w którym wizyta da najwięcej
head-garden = Ogród
head-last-nights = Ostatnie 15 nocy
head-wrong = Co jest nie tak
head-since = Od
head-bring = Co zabrać
head-gain = Da
and-count-more = i jeszcze { $count }
known-bracket = (znane)
open-for = Otwarte: { $days }, stan po nocy { $night }.
lawn-of = Trawnik { $area }.
driven-in-last = W ostatnim czasie ({ $days }) przejechano z tego { $percent }; obiecano { $promised }.
known-said = Znane: { $said }
known = Znane
head-night = Noc
head-missed = Pominięte
head-driving = Jazda
head-stuck = Utknięcia
head-silent = Bez pozycji
nights-of = Noce: { $name }
mended = Naprawione
what-failed = Co się nie powiodło
failures = Niepowodzenia
head-what = Co
visit-brings = Wizyta da tyle trawnika, ile by co noc przejeżdżano, a co nie jest przejeżdżane.

## terminal: labels of rows (row-...), at most 12 letters each, row-by-lawn, row-used, row-skipped and row-note at most 10;
## heads of columns (col-...), at most 7, col-id at most 3
# Cut short what is too long, as newspapers do: a label stands beside its text.

row-driven-over = Przejechano
row-before = Przed
row-after = Po
row-difference = Różnica
row-pockets = Fragmenty
row-beware = Uwaga
# $id is G1 or M12.
row-change = Zmiana { $id }
row-by-lawn = trawniki
row-asked-about = Do ustalenia
row-missed = Pominięto
plan-answer = Trawnik do koszenia: { $area }, { $edge } krawędzi; bez stref i przeszkód.
forecast-hours = Przy { $hours } pracy dziennie, z symulacji w liczbie { $runs }.
col-role = rola
col-name = nazwa
col-length = długość
no-faults = Bez błędów.
row-plan-faults = Obejrzeć
col-id = nr
col-area = pow.
col-widest = szer.
col-where-why = gdzie i dlaczego
row-not-yet = Jeszcze nie
row-stuck-spots = Utknięcia
none-seen = nie zauważono
row-pattern = Wzór jazdy
row-promise = Obietnica
row-from = Podstawa
row-in-the-dark = Po ciemku
before = Przed
after = Po
row-ground = Teren
col-before = przed
col-after = po
col-became = co się z nim stało
no-pockets = po obu stronach brak
row-where = Gdzie
row-last = Ostatni raz
row-usually = Zwykle
row-used = Użyto
row-skipped = Pominięto
skipped-nothing = nic
row-note = Uwaga
in-line = (wiersz { $count })
row-time = Czas
row-fixes = Pozycje
row-hours = Godziny
row-silences = Przerwy
silences-none = brak
row-quality = Jakość
row-hdop = HDOP
row-repeats = Powtórzenia
row-error = Błąd
row-extent = Zasięg
row-reference = Odniesienie

## Numbers and lists

unknown = nieznane
under-percent = poniżej { $percent }
over-percent = ponad { $percent }
interval = przedział 90%: od { $low } do { $high }
no-interval = bez przedziału
range = od { $low } do { $high }
# Two parts of a list, or the list so far and its next part.
list = { $before }, { $next }
list-apart = { $before }; { $next }
way-home-row = { $times } × { $along } ({ $time })
# Two lengths of tape meet on one side of the line between their ends.
tape-from = { $length } od punktu: { $from }
tape-side = { $tape }, po { $eighth ->
    [0] północnej
    [1] północno-wschodniej
    [2] wschodniej
    [3] południowo-wschodniej
    [4] południowej
    [5] południowo-zachodniej
    [6] zachodniej
   *[7] północno-zachodniej
} stronie linii między tymi punktami
position-metres = { $east } na wschód, { $north } na północ od początku układu
fixes-poor = { $count } o słabej jakości
fixes-jumped = { $count ->
    [one] 1 przeskok
    [few] { $count } przeskoki
   *[other] { $count } przeskoków
}
fixes-carried = { $count } podczas przenoszenia
fixes-used-of = { $used } z { $count ->
    [one] 1 odczytanej pozycji
   *[other] { $count } odczytanych pozycji
} (pominięto: { $list })
# A time on the clock: the year has no mark between thousands.
date-time = { $day } { $month ->
    [1] stycznia
    [2] lutego
    [3] marca
    [4] kwietnia
    [5] maja
    [6] czerwca
    [7] lipca
    [8] sierpnia
    [9] września
    [10] października
    [11] listopada
   *[12] grudnia
} { $year }, { $hour }:{ $minute }

## Words for before and after

more-than-luck = więcej, niż wyjaśniają błędy pozycji i przypadek
luck-may-explain = mogą to wyjaśnić same błędy pozycji i przypadek
count-pocket-change = { $value ->
    [mended] naprawione: { $count }
    [better] lepiej: { $count }
    [new] nowe: { $count }
   *[unchanged] bez zmian: { $count }
}
pocket-sum = { $pockets }: { $list }
nothing-to-hold-against = nie ma z czym porównać
prediction-holds = prognoza się sprawdza
prediction-fails = prognoza się nie sprawdza

## The log beside a surveyed path; columns are narrow

error-mean = średni
error-rms = RMS
error-95 = 95%
error-largest = największy
error-logged = zapisany
error-located = obliczony
error-cross-track = poprzeczny
error-along-track = podłużny
error-timing = w czasie
error-pass-to-pass = względny
reference-head = { $length } toru { $name }, porównano: { $fixes }{ $beside ->
    [0] { "" }
   *[other] ; pominięto pozycje dalej niż { $distance } od niego: { $beside }
}
reference-untimed = Tor pomierzony geodezyjnie nie ma czasów: błędów wzdłuż niego i w czasie nie da się podać.

## Why a line of a log was skipped

skip-reason = { $value ->
    [bad_checksum] niezgodna suma kontrolna
    [not_a_position] nie zawiera pozycji
    [not_of_the_format] niezgodne z formatem
    [no_fix] odbiornik nie miał pozycji
    [no_time] pozycja bez czasu
    [no_date] godzina bez daty
    [malformed] błędnie zapisane pole
    [not_finite] wartość nie jest skończoną liczbą
    [out_of_range] poza zakresem
    [null_island] szerokość 0, długość 0
    [pole] szerokość 90 podczas szukania
    [time_reversed] czas się cofa
    [duplicate_time] dwa razy ten sam czas
    [duplicate_epoch] dwa razy ta sama epoka
    [truncated] ucięte na końcu
    [same_log_twice] ten sam zapis pod dwiema nazwami
    [too_long] dłuższe niż limit
   *[implausible] nieprawdopodobna pozycja
}

## page: drawings and hours

map-north-up = Mapa trawnika, północ u góry
map-of-lawn = Mapa trawnika
map-before = Mapa przed
map-after = Mapa po
ground-visits = przejazdy
ground-waits = odstęp między przejazdami
ground-overdue = po terminie
never = nigdy
driving = jazda
driving-along = w tym wzdłuż linii prowadzącej lub granicy
standing-turning = postój gdzie indziej, zawracanie
activity-driving = jazda
activity-turning = zawracanie
activity-reversing = do tyłu
activity-transit = w drodze na trawnik lub do stacji
activity-standing = postój
activity-station = w stacji
activity-carried = przenoszenie
activity-silent = bez pozycji
night-number = noc { $number }
nights-drawing = Godziny według czynności, jedna noc w wierszu; tabela poniżej podaje te same liczby
axis-hours = godziny
driven-that-night = przejechane tej nocy
so-far = dotąd
lawn-after = Trawnik po { $hours }
still-gained = { $percent }, +{ $points } pkt proc.
plot-over-time = Przejechana część trawnika w zależności od godzin jazdy
axis-lawn-percent = przejechany trawnik, %
axis-hours-driving = godziny jazdy
plot-histogram = Część trawnika według liczby przejazdów
axis-part-percent = część trawnika, %
axis-times = liczba przejazdów
plot-gains = Przejechana część fragmentu: { $list }
gain-row = { $label } { $fraction }
axis-pocket-percent = przejechane z fragmentu, %
plot-waits = Odstępy między dwoma przejazdami: { $list }
wait-under = { $part } poniżej { $hours }
wait-half = połowa
wait-nine-ten = 9 na 10
wait-99 = 99 na 100
wait-allowed = dozwolone
axis-waits = godziny między dwoma przejazdami

## map

key-missed = pominięte: nie wyjaśnia tego przypadek
key-not-yet = jeszcze nie: na razie wyjaśnia to przypadek
key-unseen = nieznane: brak danych
key-stuck = miejsce utknięć: strata czasu
key-worn = wyjeżdżona linia
key-suggested = proponowana zmiana
key-tape = odległość taśmą
key-lines = przejechane linie
key-lie = przejścia, starty, błędy planu
key-strays = poza granicą, możliwe postoje
key-guide = linia prowadząca
key-exclusion = strefa wykluczona
key-obstacle = przeszkoda
key-boundary = granica
nothing-to-draw = Nie ma obrysu ani toru do narysowania.
picture-line = Przejechano { $percent } z { $lawn }. Pominięte: { $pockets }, { $missed }.
picture-not-counted = Nie podano szerokości koszenia, więc nic nie policzono.
picture-foot = Narysowano z zapisanych pozycji. Przejechanie nie dowodzi, że trawę skoszono.
# One letter: north.
north-letter = N
second-axis = druga oś
# Names of marks, read aloud: an id, what it is, how large.
mark-missed = { $id }, pominięte, { $area }
mark-not-yet = { $id }, jeszcze nie, { $area }
mark-unseen = { $id }, bez danych, { $area }
mark-worn = { $id }, wyjeżdżona linia, { $length }
mark-suggested = { $id }, propozycja: { $change }
mark-stuck = { $id }, miejsce utknięć, stracono { $time }
mark-island = { $id }, wyspa, { $area }
mark-passage = { $id }, przejście, szerokość { $length }
mark-in-no-plan = { $count ->
    [one] { $id }, nie ma na planie, 1 nawrót przy tym
    [few] { $id }, nie ma na planie, { $count } nawroty przy tym
   *[other] { $id }, nie ma na planie, { $count } nawrotów przy tym
}
mark-stray = { $id }, poza granicą, { $length } na zewnątrz
mark-compared = { $id }, przejechano { $percent }
mark-station = stacja

## terminal: the lawn in characters, files

chart-key = { $bare } nieprzejechane, { $one } do { $first }, { $two } do { $second }, { $three } do { $third }, { $four } więcej razy; { $missed } pominięte, { $not_yet } jeszcze nie, { $stuck } miejsce utknięć, { $station } stacja; znak ma szerokość { $length }{ $north ->
    [up] , północ jest u góry
   *[unknown] { "" }
}
row-written = Zapisano

## Why a file is left out

file-elsewhere = robi go polecenie tussock report z pliku findings.json
file-tells-where = zdradziłby, gdzie jest ogród
file-local-metres = pozycje są w metrach lokalnych, bez współrzędnych geograficznych
file-not-counted = bez szerokości koszenia nic nie policzono
file-not-driven = nie było jazdy

## morning: gardens

garden-gain = { $garden }: do zyskania { $area } na noc
failed = Niepowodzenie
# What an alarm says. $why is a sentence of the store, in English.
alarm-less-visited = Przejechano { $found } trawnika, gdy w tylu godzinach zwykle { $usual }, od { $since }.
alarm-hours = { $value ->
    [lost_hours] { $found } jazdy, gdy zwykle { $usual }, od { $since }.
   *[silences] { $found } bez pozycji, gdy zwykle { $usual }, od { $since }.
}
alarm-receiver-worse = Błąd pozycji { $found }, gdy zwykle { $usual }, od { $since }.
alarm-stuck-spot = Utyka w jednym miejscu od { $since }, { $nights ->
    [one] 1 noc
    [few] { $nights } noce
   *[other] { $nights } nocy
}, ostatniej nocy { $found }: { $why }
alarm-missed-pocket = Pominięte od { $since }, { $nights ->
    [one] 1 noc
    [few] { $nights } noce
   *[other] { $nights } nocy
}: { $found }. { $why }
alarm-promise = Przejechano { $found } trawnika w ciągu { $count ->
    [one] 1 dnia
    [few] { $count } dni
    [many] { $count } dni
   *[other] { $count } dnia
}, a obiecano { $usual }, od { $since }.
alarm-absent = { $machine ->
    [none] Brak zapisu od { $since }, oczekiwane noce: { $nights }.
   *[other] Brak zapisu z kosiarki { $machine } od { $since }, oczekiwane noce: { $nights }.
}

## local page: one line each; what is in braces stays as it is

page-what-to-do = Co zrobić
page-open = Otwórz
page-see = Zobacz
page-stop = Zatrzymaj
page-compare = Porównaj
page-save = Zapisz
page-no-script = Ta strona wymaga JavaScriptu, który jest tu wyłączony.
page-how-far = Postęp pracy
page-open-title = Co kosiarka pominęła?
page-open-lead = Wybrać zapisane przez nią pozycje, upuścić je w dowolnym miejscu tej strony albo je wkleić. Nic nie opuszcza tego urządzenia: strona nie pozwala na żadne połączenie i działa bez sieci.
page-logs = Zapisy
page-logs-means = GPX, NMEA 0183, CSV, KML i inne, spakowane gzipem lub nie; z jednego ogrodu, jeden plik lub kilka. Zachowany findings.json otwiera się bezpośrednio.
page-choose-logs = Wybierz zapisy
page-paste = Wklej zapis
page-paste-text = Tekst zapisu
page-paste-take = Użyj tego tekstu
page-plan = Plan
page-plan-if = jeśli jest
page-plan-means = Trawnik, strefy, przeszkody, linie prowadzące i stacja, jako GeoJSON. Bez planu obrys rysuje się z jazdy.
page-choose-plan = Wybierz plan
page-machine = Kosiarka
page-width = Szerokość tarczy tnącej
page-cm = cm
page-width-means = Gdy pole jest puste, liczą się ustawienia; gdy i tam jej nie ma, odpowiedź dotyczy kilku szerokości.
page-choose-settings = Wybierz ustawienia
page-suggest = Wypróbuj zmiany i zaproponuj najlepszą (trwa dłużej)
page-find = Znajdź pominięte miejsca
page-demo = Użyj przykładowego ogrodu
page-kept = Przechowywane na tym urządzeniu
page-forget = Usuń wszystko, co jest przechowywane
page-cautions = Przed dotknięciem kosiarki zatrzymać ją i wyłączyć tak, by nie mogła ruszyć: noże są w ruchu. Dla montażu rejestratora, kopania i prac przy stacji są osobne ostrzeżenia na gotowej stronie.
page-page = Strona
page-hand-over = Strona do przekazania
page-ask-title = Zapytaj o miejsce
page-begin = Zacznij stronę od tej odpowiedzi
page-type-place = Wpisz miejsce
page-or-tap = Albo dotknąć go na mapie.
page-place = Miejsce
page-typed-in = wpisano w
page-metres = metry na wschód, na północ
page-degrees = stopnie, najpierw szerokość geograficzna
page-such-as = Na przykład 4.5,-2 albo 53.86006,12.42021. Metry liczą się od początku układu wyników.
page-said = Co o nim powiedziano
page-ask = Zapytaj
page-compare-title = Co dała zmiana?
page-before = Przed
page-after = Po
page-logs-before = Wybierz zapisy sprzed zmiany
page-the-plan = Wybierz plan
page-logs-after = Wybierz zapisy po zmianie
page-plan-changed = Wybierz plan, jeśli się zmienił
page-compare-means = Każda strona przyjmuje zapisy albo jeden findings.json. Szerokość koszenia i ustawienia są te, które podano w „Otwórz”.
page-print = Drukuj stronę
page-private = Bez miejsca, nazw i dat
page-keep-title = Przechowaj na tym urządzeniu
page-keep-means = Bez polecenia nic nie jest przechowywane. Przechowuje się wyniki, plan i ustawienia, w tej przeglądarce; może je otworzyć każdy, kto jej używa, i inne strony otwierane z tego urządzenia. Jeśli używają go inni, lepiej zapisać pliki.
page-garden-name = Nazwa ogrodu
page-keep = Przechowaj
page-drop = Tu upuścić zapisy, plan lub ustawienia
page-no-worker = moduł obliczeniowy nie może tu działać: { $reason }
page-not-let = ta przeglądarka na to nie pozwala
page-broke-off = praca się przerwała: { $why }
page-broke-off-hint = to błąd narzędzia albo urządzeniu zabrakło pamięci; pliki pozostały bez zmian
page-take-out = usuń
page-take-out-file = usuń { $file }
page-hint = wskazówka: { $hint }
page-seconds = { $stage }, { $seconds } s
page-starting = start
page-stopped = zatrzymano
page-reading = odczyt: { $file }
page-unreadable = { $file }: nie da się odczytać: { $reason }
page-choose-again = wybrać go ponownie
page-side-empty = jedna strona nie ma zapisu, oczekiwano zapisów lub findings.json po obu stronach
page-no-log = nie podano zapisu, oczekiwano zapisu (GPX, NMEA 0183, CSV, ...) lub findings.json
page-no-log-hint = wybrać pliki, upuścić je na tę stronę albo użyć przykładowego ogrodu
page-file-page = strona do przekazania
page-file-findings = wszystkie liczby; ten plik można tu znów otworzyć
page-file-geojson = wszystko, co ma miejsce, do map
page-file-gpx = prowadzi do fragmentów
page-file-comparison = wszystkie liczby
page-no-file = brak { $file }: { $why }
page-keeps-nothing = ta przeglądarka niczego dla tej strony nie przechowuje: { $reason }
page-no-reason = nie podano przyczyny
page-save-instead = zapisać zamiast tego findings.json
page-open-kept = otwórz
page-open-garden = otwórz { $garden }
page-is-kept = przechowano: { $garden }
page-cannot-delete = nie da się usunąć: { $reason }
page-clear-data = wyczyścić dane tej strony w ustawieniach przeglądarki
# The name of this language in itself: English, Deutsch, ...
page-this-language = polski
page-language = Język
page-remember = Zapamiętaj na tym urządzeniu
page-stage-drawing = rysowanie
page-stage-reading = odczyt
page-stage-comparing = porównywanie
page-stage-locating = wyznaczanie toru
page-stage-counting = liczenie
page-stage-calibrating = kalibrowanie
page-stage-diagnosing = szukanie przyczyn
page-stage-suggesting = szukanie zmian
