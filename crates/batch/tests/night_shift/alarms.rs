//! Are the right gardens reported in the morning, and no others?

use super::{House, first_night, log_of, wish};
use std::collections::BTreeMap;
use tussock::simulate::gardens::load::{LoadGarden, LoadTrouble, LoadWish, load_garden};
use tussock_batch::morning::{self, NightChoice};
use tussock_batch::table::POCKETS;
use tussock_batch::{ColumnChoice, Store};
use tussock_types::Alarm;

const NIGHTS: u32 = 13;
/// An alarm stands until this many nights have shown that it is mended.
const GONE_AFTER_NIGHTS: u32 = 3;
/// An alarm comes within this many nights of the fault.
const WITHIN_NIGHTS: u32 = 3;

fn alarms_wish() -> LoadWish {
    LoadWish {
        hours: 4.0,
        period_s: 2.0,
        area_m2: (200.0, 260.0),
        trouble_fraction: 0.7,
        ..wish(NIGHTS)
    }
}

/// The alarms that a fault should raise, at least one of them.
fn expected(trouble: LoadTrouble) -> &'static [Alarm] {
    match trouble {
        LoadTrouble::None => &[],
        LoadTrouble::BlockedPart => &[Alarm::MissedPocket],
        LoadTrouble::StuckSpot => &[Alarm::StuckSpot],
        LoadTrouble::ReceiverWorse => &[Alarm::ReceiverWorse],
        LoadTrouble::Absent => &[Alarm::Absent],
    }
}

#[derive(Debug, Default)]
struct Score {
    /// Faults, and those that were reported in time.
    troubles: usize,
    told: usize,
    /// Gardens reported, garden by garden and night by night, and those of them with a fault.
    alarms: usize,
    right: usize,
    /// Pockets that stay from one night to the next, and those that keep their identity.
    stay: usize,
    same: usize,
    /// Nights of mended gardens, and those on which they were still reported.
    mended: usize,
    still: usize,
    wrong: Vec<String>,
}

fn score(gardens: u32, mend: bool) -> Score {
    let wish = alarms_wish();
    let house = House::new();
    let gardens: Vec<LoadGarden> = (0..gardens)
        .map(|number| {
            let mut garden = load_garden(number, &wish);
            // What is usual takes some nights to know.
            garden.from_night = 4 + number % 2;
            garden.until_night = if mend {
                garden.from_night + WITHIN_NIGHTS
            } else {
                NIGHTS
            };
            if garden.trouble == LoadTrouble::None {
                garden.until_night = garden.from_night;
            }
            garden
        })
        .collect();
    for garden in &gardens {
        house.garden(garden);
        for night in 0..NIGHTS {
            if garden.is_troubled(night) && garden.trouble == LoadTrouble::Absent {
                continue;
            }
            house.log(garden, &format!("{night:02}.gpx"), &log_of(garden, night, &wish));
        }
    }
    assert!(house.run("store").success());
    let store = Store::open(&house.path("store")).unwrap();
    let mut score = Score::default();
    let mut told: BTreeMap<(String, u32), Vec<(Alarm, String)>> = BTreeMap::new();
    for night in 0..NIGHTS {
        let night_number = first_night() + night as tussock_batch::night::NightNumber;
        for garden in morning::morning(&store, NightChoice::Date(night_number))
            .unwrap()
            .gardens
        {
            let reasons = garden
                .reasons
                .into_iter()
                .map(|reason| (reason.alarm, reason.sentence))
                .collect();
            told.insert((garden.garden, night), reasons);
        }
    }
    for garden in &gardens {
        let alarms = |night: u32| {
            told.get(&(garden.name.clone(), night))
                .map_or(&[][..], Vec::as_slice)
        };
        if garden.trouble != LoadTrouble::None {
            score.troubles += 1;
            let in_time = (garden.from_night..garden.from_night + WITHIN_NIGHTS).any(|night| {
                alarms(night)
                    .iter()
                    .any(|(alarm, _)| expected(garden.trouble).contains(alarm))
            });
            score.told += usize::from(in_time);
            if !in_time {
                score.wrong.push(format!(
                    "{}: {:?} from {} not told",
                    garden.name, garden.trouble, garden.from_night
                ));
            }
        }
        for night in 0..NIGHTS {
            let found = alarms(night);
            if !found.is_empty() {
                score.alarms += 1;
                if garden.is_troubled(night)
                    || garden.is_troubled(night.saturating_sub(GONE_AFTER_NIGHTS - 1))
                {
                    score.right += 1;
                } else {
                    score.wrong.push(format!(
                        "{} night {night} ({:?}): {found:?}",
                        garden.name, garden.trouble
                    ));
                }
            }
            if garden.trouble != LoadTrouble::None && night + 1 >= garden.until_night + GONE_AFTER_NIGHTS {
                score.mended += 1;
                score.still += usize::from(!found.is_empty());
            }
        }
    }
    identities(&store, &mut score);
    score
}

/// Identity, east, north, area.
type Pocket = (String, f64, f64, f64);

/// Pockets of at least two square metres that overlap from night to night are one.
fn identities(store: &Store, score: &mut Score) {
    let at = |name: &str| POCKETS.at(name);
    let mut by_night: BTreeMap<(String, i64), Vec<Pocket>> = BTreeMap::new();
    for (night, row) in store
        .rows(
            &POCKETS,
            ColumnChoice::All,
            first_night()..=first_night() + NIGHTS as tussock_batch::night::NightNumber,
            &|_| true,
        )
        .unwrap()
    {
        let number = |name: &str| row[at(name)].number().unwrap_or(f64::NAN);
        if row[at("verdict")].text() != Some("missed") || number("area_m2") < 2.0 {
            continue;
        }
        by_night
            .entry((row[0].text().unwrap().to_owned(), i64::from(night)))
            .or_default()
            .push((
                row[at("id")].text().unwrap().to_owned(),
                number("east_m"),
                number("north_m"),
                number("area_m2"),
            ));
    }
    for ((garden, night), pockets) in &by_night {
        let Some(next) = by_night.get(&(garden.clone(), night + 1)) else {
            continue;
        };
        for (id, east_m, north_m, area_m2) in pockets {
            // The same ground by size and place, whatever it is called.
            let partner = next.iter().find(|(_, e_m, n_m, a_m2)| {
                (e_m - east_m).hypot(n_m - north_m) < 0.3 * area_m2.sqrt()
                    && (a_m2 / area_m2).ln().abs() < 0.3
            });
            if let Some((next_id, ..)) = partner {
                score.stay += 1;
                score.same += usize::from(next_id == id);
            }
        }
    }
}

fn judge(score: &Score, least_stay: usize) {
    let share = |part: usize, of: usize| part as f64 / (of as f64).max(1.0);
    println!("{score:#?}");
    assert!(
        score.troubles >= 4 && score.alarms >= 8 && score.stay >= least_stay,
        "{score:#?}"
    );
    assert!(share(score.told, score.troubles) >= 0.9, "recall: {score:#?}");
    assert!(share(score.right, score.alarms) >= 0.9, "precision: {score:#?}");
    assert!(
        score.stay == 0 || share(score.same, score.stay) >= 0.95,
        "identity: {score:#?}"
    );
    assert!(share(score.still, score.mended) <= 0.1, "mended: {score:#?}");
}

#[test]
fn injected_troubles_are_told_within_three_nights_and_nothing_else_is() {
    judge(&score(8, true), 0);
}

#[test]
#[ignore = "takes minutes: tests/run --full"]
fn injected_troubles_of_many_gardens_are_told_within_three_nights_and_nothing_else_is() {
    judge(&score(60, true), 10);
    judge(&score(60, false), 20);
}
