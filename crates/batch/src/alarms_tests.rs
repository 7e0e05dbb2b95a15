//! Alarms on histories drawn by hand.

use super::*;
use tussock_types::Alarm::{LessVisited, LostHours, MissedPocket, ReceiverWorse, StuckSpot};

const FIRST: NightNumber = 20_000;

/// What a night shows: visited fraction, hours driving, span, position error.
#[derive(Clone, Copy)]
struct Shown {
    visited: f64,
    driving_h: f64,
    span_h: f64,
    error_m: f64,
}

/// Quiet nights scatter by two points, five per cent of the hours, and a tenth of the error, in a fixed order.
fn quiet(number: usize) -> Shown {
    let odd = [0.3, -1.0, 0.9, -0.4, 1.2, -1.3, 0.1, 0.6, -0.7, -0.2][number % 10];
    let other = [-0.8, 0.2, 1.1, -1.2, 0.5, 0.4, -0.1, -0.6, 1.0][number % 9];
    Shown {
        visited: 0.92 + 0.02 * odd,
        driving_h: 6.0 + 0.3 * other,
        span_h: 8.0 + 0.2 * odd,
        error_m: 0.04 * (1.0 + 0.1 * other),
    }
}

fn night_row(shown: Shown) -> TableRow {
    row!(NIGHTS {
        garden: "a",
        lawn_m2: 400.0,
        visited_fraction: shown.visited,
        driving_h: shown.driving_h,
        span_h: shown.span_h,
        silent_h: 0.2,
        position_error_m: shown.error_m,
    })
}

fn nights(count: usize, show: impl Fn(usize) -> Option<Shown>) -> BTreeMap<NightNumber, TableRow> {
    let shown =
        (0..count).filter_map(|number| Some((FIRST + number as NightNumber, night_row(show(number)?))));
    shown.collect()
}

fn episodes(nights: &BTreeMap<NightNumber, TableRow>, before: Vec<Episode>) -> Vec<Episode> {
    let none = BTreeMap::new();
    let history = History {
        nights,
        pockets: &none,
        spots: &none,
        before,
    };
    history.episodes()
}

/// Kind, first night, night that decided it, first night without it, counted from 0.
type Told = (Alarm, i32, i32, Option<i32>);

fn told(episodes: &[Episode]) -> Vec<Told> {
    let from = |night: NightNumber| night - FIRST;
    episodes
        .iter()
        .map(|one| {
            let mended = one.mended.map(|(first, _)| from(first));
            (one.alarm, from(one.since), from(one.opened), mended)
        })
        .collect()
}

fn worse(number: usize) -> Shown {
    Shown {
        visited: quiet(number).visited - 0.15,
        ..quiet(number)
    }
}

#[test]
fn an_alarm_stays_from_its_onset_until_it_is_mended_against_what_was_usual_before() {
    let fault = |number: usize| {
        if (20..45).contains(&number) {
            worse(number)
        } else {
            quiet(number)
        }
    };
    let found = episodes(&nights(60, |number| Some(fault(number))), Vec::new());
    assert_eq!(told(&found), [(LessVisited, 20, 21, Some(45))]);
    let one = &found[0];
    // Twenty-five bad nights have not become what is usual.
    assert!((one.law.unwrap().0 - 0.92).abs() < 0.01, "{one:?}");
    assert!((one.found.unwrap() - 0.77).abs() < 0.01, "{one:?}");
    assert!((one.gain_m2 - 60.0).abs() < 5.0, "{one:?}");
    for (night, is_open) in [
        (20, false),
        (21, true),
        (44, true),
        (45, true),
        (46, false),
        (59, false),
    ] {
        assert_eq!(one.is_open(FIRST + night), is_open, "{night}");
    }
    // Still there: open, however long.
    let found = episodes(
        &nights(60, |number| {
            Some(if number < 20 { quiet(number) } else { worse(number) })
        }),
        Vec::new(),
    );
    assert_eq!(told(&found), [(LessVisited, 20, 21, None)]);
    // Quiet nights are quiet.
    assert_eq!(
        told(&episodes(&nights(180, |number| Some(quiet(number))), Vec::new())),
        []
    );
}

#[test]
fn rain_is_no_fault_and_as_much_in_fewer_hours_is_as_usual() {
    let rainy = |number: usize| match number {
        15 | 16 | 30 | 31 => Shown {
            // 0.92 in 6 h is 0.72 in 3 h.
            visited: quiet(number).visited - 0.2,
            driving_h: 3.0,
            ..quiet(number)
        },
        _ => quiet(number),
    };
    assert_eq!(
        told(&episodes(&nights(60, |number| Some(rainy(number))), Vec::new())),
        []
    );
}

#[test]
fn one_odd_night_and_a_log_cut_short_raise_nothing() {
    let odd = |number: usize| match number {
        15 | 30 => worse(number),
        // A log that ends after half of the night shows half of it, and nothing of the rest.
        22 | 23 | 40 => Shown {
            visited: 0.6,
            driving_h: 3.0,
            span_h: 4.0,
            error_m: 0.5,
        },
        _ => quiet(number),
    };
    assert_eq!(
        told(&episodes(&nights(60, |number| Some(odd(number))), Vec::new())),
        []
    );
    // If it goes on like that, hours are lost: reported, since the first of those nights; a short log shows nothing of the
    // rest.
    let short = |number: usize| if number < 22 { quiet(number) } else { odd(22) };
    let found = episodes(&nights(30, |number| Some(short(number))), Vec::new());
    assert_eq!(told(&found), [(LostHours, 22, 24, None)]);
}

#[test]
fn a_fault_is_found_through_nights_that_did_not_come_and_a_good_one_in_between() {
    let worse_receiver = |number: usize| Shown {
        error_m: if number >= 18 && number != 20 {
            0.25
        } else {
            quiet(number).error_m
        },
        ..quiet(number)
    };
    let shown = |number: usize| (number % 7 != 5).then(|| worse_receiver(number));
    let found = episodes(&nights(40, shown), Vec::new());
    assert_eq!(told(&found), [(ReceiverWorse, 18, 22, None)]);
}

#[test]
fn a_night_that_comes_late_reopens_what_it_changes_whatever_the_order() {
    let folder = tempfile::TempDir::new().unwrap();
    let mut store = Store::open_to_write(folder.path(), "1").unwrap();
    let fault = |number: usize| {
        if number >= 20 {
            worse(number)
        } else {
            quiet(number)
        }
    };
    let stored = |store: &Store| -> Vec<Episode> {
        let ever = NightNumber::MIN..=NightNumber::MAX;
        let rows = store.rows(&ALARMS, ColumnChoice::All, ever, &|_| true).unwrap();
        rows.iter().filter_map(|(_, row)| Episode::of(row)).collect()
    };
    let mut change = StoreChange::default();
    change.put(&GARDENS, 0, row!(GARDENS { garden: "a" }));
    let mut arrive = |store: &mut Store, numbers: &mut dyn Iterator<Item = usize>| {
        let mut change = std::mem::take(&mut change);
        for number in numbers {
            change.put(&NIGHTS, FIRST + number as NightNumber, night_row(fault(number)));
        }
        store.commit(change).unwrap();
        store.renew_alarms().unwrap();
    };
    arrive(
        &mut store,
        &mut (0..24).filter(|number| ![20, 21].contains(number)),
    );
    assert_eq!(told(&stored(&store)), [(LessVisited, 22, 23, None)]);
    arrive(&mut store, &mut [21, 20].into_iter());
    assert_eq!(told(&stored(&store)), [(LessVisited, 20, 21, None)]);
    // Nothing new: nothing is written.
    let files = store.table_files(&ALARMS);
    store.renew_alarms().unwrap();
    assert_eq!(store.table_files(&ALARMS), files);
}

#[test]
fn an_alarm_outlives_the_nights_that_opened_it() {
    let fault = |number: usize| {
        if (20..80).contains(&number) {
            worse(number)
        } else {
            quiet(number)
        }
    };
    let all = nights(100, |number| Some(fault(number)));
    let kept = |from: i32, to: i32| -> BTreeMap<NightNumber, TableRow> {
        let rows = all.range(FIRST + from..FIRST + to);
        rows.map(|(night, row)| (*night, row.clone())).collect()
    };
    let before = episodes(&kept(0, 50), Vec::new());
    assert_eq!(told(&before), [(LessVisited, 20, 21, None)]);
    // Fifteen nights are kept, all of them bad: the alarm goes on, and ends when the fault is mended.
    let later = episodes(&kept(45, 60), before.clone());
    assert_eq!(told(&later), [(LessVisited, 20, 21, None)]);
    assert_eq!(later[0].law, before[0].law);
    let mended = episodes(&kept(75, 90), later);
    assert_eq!(told(&mended), [(LessVisited, 20, 21, Some(80))]);
    // And is not told twice once it is over.
    assert_eq!(
        told(&episodes(&kept(85, 100), mended)),
        [(LessVisited, 20, 21, Some(80))]
    );
}

#[test]
fn pockets_and_spots_need_two_nights_of_three_and_go_after_three_without() {
    let all = nights(30, |number| Some(quiet(number)));
    let pocket = |id: &str| {
        row!(POCKETS {
            garden: "a",
            id: id,
            verdict: "missed",
            area_m2: 7.0,
            why: "A fence.",
            said: r#"{"code":"nothing_driven_in","values":{}}"#,
        })
    };
    let spot = |name: &str, east_m: f64, lost_min: f64| {
        row!(STUCK_SPOTS {
            garden: "a",
            spot: name,
            east_m: east_m,
            north_m: 3.0,
            lost_min: lost_min,
        })
    };
    let at = |numbers: &[i32], row: &dyn Fn(i32) -> TableRow| -> ByNight {
        numbers
            .iter()
            .map(|number| (FIRST + number, vec![row(*number)]))
            .collect()
    };
    let pockets = at(&[2, 10, 12, 13, 15, 16], &|_| pocket("p"));
    // It drifts by half a metre each night and stays one spot; a place that takes three minutes is none.
    let spots = at(&[5, 6, 8, 9, 20, 21], &|number| {
        spot(
            "S1",
            0.5 * f64::from(number % 3),
            if number < 20 { 9.0 } else { 3.0 },
        )
    });
    let history = History {
        nights: &all,
        pockets: &pockets,
        spots: &spots,
        before: Vec::new(),
    };
    let found = history.episodes();
    assert_eq!(
        told(&found),
        [(StuckSpot, 5, 6, Some(10)), (MissedPocket, 10, 12, Some(17))]
    );
    assert_eq!(found[1].nights, 5);
    assert_eq!(found[1].gain_m2, 7.0);
    assert_eq!(found[1].why, Some(Said::NothingDrivenIn {}));
    assert_eq!(found[0].what, format!("{}/S1", night::words(FIRST + 5)));
    assert!(found[0].gain_m2 > 0.0 && found[0].gain_m2 < 5.0, "{found:?}");
    // As kept, and back.
    for one in &found {
        assert_eq!(Episode::of(&one.row("a", "p")).as_ref(), Some(one));
    }
}
