//! What should the operator do this morning?
//!
//! Each garden is held against its own last two weeks under the same plan. Alarms come from `missed` pockets alone, never from
//! `not_yet`, and a change counts only when the last two logged nights both show it:
//!
//! | alarm | when |
//! |---|---|
//! | missed pocket | one identity was missed in at least two of the last three logged nights, the newest among them |
//! | stuck spot | one place took at least four minutes in at least two of the last three logged nights, the newest among them |
//! | lost hours | both nights drove at most three quarters of the usual hours, and half an hour less |
//! | less visited | the upper ends of both nights lie three points below all usual nights, and three of their standard deviations below the usual |
//! | absent | at least two expected nights in a row brought no log, of the garden or of one of its machines |
//! | receiver worse | position error of both nights at least twice the usual, and 5 cm more |
//! | silences | both nights were silent at least half an hour and twice as long as usual |
//!
//! Usual is the median of at least three earlier nights of the window. The numbers are common practice without a source.
//! Gardens that rest raise no alarm. What a visit gains is given in square metres of lawn that would be driven over each night:
//! the area of a pocket; swath width times speed times the time lost; the fraction lost times the lawn; the lawn where
//! nothing is heard.
//!
//! Cost: reads fifteen nights of four tables, a thousand gardens at a time.

use crate::BatchError;
use crate::gardens::Expected;
use crate::last_visits::LastVisits;
use crate::night::{self, NightNumber};
use crate::store::{ColumnChoice, Store};
use crate::table::{FAILURES, GARDENS, NIGHTS, POCKETS, STUCK_SPOTS, TableRow, Value};
use std::collections::{BTreeMap, BTreeSet, HashMap};
use tussock_types::math;
use tussock_types::{
    Alarm, Estimate, GardenMorning, Morning, MorningFailure, MorningNight, MorningReason, plural,
};

const WINDOW_NIGHTS: NightNumber = 14;
const AT_ONCE: usize = 1000;
const LEAST_USUAL: usize = 3;
const ABSENT_NIGHTS: usize = 2;
const STUCK_MIN: f64 = 4.0;
/// Less than this below all usual nights may still be luck.
const LESS_VISITED: f64 = 0.03;
/// Spots nearer than this on two nights are one place; about the reach within which episodes are gathered.
const SAME_SPOT_M: f64 = 2.0;
/// Where neither width nor speed is known.
const USUAL_SWATH_M2_PER_S: f64 = 0.22 * 0.4;

/// The morning after a night.
///
/// # Errors
/// When the store cannot be read.
pub fn morning(store: &Store, night: NightNumber) -> Result<Morning, BatchError> {
    let ever = NightNumber::MIN..=NightNumber::MAX;
    let names: BTreeSet<String> = store
        .rows(&GARDENS, ColumnChoice::Some(&[]), ever.clone(), &|_| true)?
        .into_iter()
        .filter_map(|(_, row)| row[0].text().map(str::to_owned))
        .collect();
    let names: Vec<String> = names.into_iter().collect();
    let mut out = Morning {
        schema_version: crate::table::SCHEMA_VERSION,
        tool_version: tussock::TOOL_VERSION.to_owned(),
        night: night::words(night),
        known: names.len() as u64,
        with_log: 0,
        resting: 0,
        gardens: Vec::new(),
        failures: failures(store, night)?,
    };
    let first_night = store.nights(&NIGHTS).first().copied().unwrap_or(night);
    for names in names.chunks(AT_ONCE) {
        let names: BTreeSet<&str> = names.iter().map(|name| &name[..]).collect();
        let window = night - WINDOW_NIGHTS..=night;
        let mut nights = by_garden(store.rows_of(&NIGHTS, ColumnChoice::All, window.clone(), &names)?);
        let pocket_columns = [
            "pocket",
            "id",
            "first_night",
            "verdict",
            "area_m2",
            "widest_m",
            "why",
        ];
        let mut pockets = by_garden(store.rows_of(
            &POCKETS,
            ColumnChoice::Some(&pocket_columns),
            window.clone(),
            &names,
        )?);
        let mut spots = by_garden(store.rows_of(&STUCK_SPOTS, ColumnChoice::All, window.clone(), &names)?);
        for (_, row) in store.rows_of(&GARDENS, ColumnChoice::All, ever.clone(), &names)? {
            let Some(name) = row[0].text().map(str::to_owned) else {
                continue;
            };
            let plan = row[GARDENS.at("plan_sha256")].clone();
            let mut own = nights.remove(&name).unwrap_or_default();
            out.with_log += u64::from(own.contains_key(&night));
            own.retain(|_, rows| rows[0][NIGHTS.at("plan_sha256")] == plan);
            let look = Look {
                night,
                first_night,
                garden: row,
                nights: own
                    .into_iter()
                    .map(|(night, mut rows)| (night, rows.swap_remove(0)))
                    .collect(),
                pockets: pockets.remove(&name).unwrap_or_default(),
                spots: spots.remove(&name).unwrap_or_default(),
            };
            if look.rests(night) {
                out.resting += 1;
                continue;
            }
            out.gardens.extend(look.garden(name));
        }
    }
    out.gardens.sort_by(|a, b| {
        b.gain_m2
            .total_cmp(&a.gain_m2)
            .then_with(|| a.garden.cmp(&b.garden))
    });
    Ok(out)
}

fn failures(store: &Store, night: NightNumber) -> Result<Vec<MorningFailure>, BatchError> {
    let mut found = store.rows(&FAILURES, ColumnChoice::All, night - 1..=night + 1, &|_| true)?;
    found.sort_by(|a, b| crate::table::order(&a.1, &b.1));
    let text = |row: &TableRow, name: &str| row[FAILURES.at(name)].text().unwrap_or_default().to_owned();
    Ok(found
        .iter()
        .map(|(_, row)| MorningFailure {
            garden: text(row, "garden"),
            what: text(row, "what"),
            reason: text(row, "reason"),
            detail: text(row, "detail"),
        })
        .collect())
}

type ByNight = BTreeMap<NightNumber, Vec<TableRow>>;

fn by_garden(rows: Vec<(NightNumber, TableRow)>) -> HashMap<String, ByNight> {
    let mut out: HashMap<String, ByNight> = HashMap::new();
    for (night, row) in rows {
        let garden = row[0].text().unwrap_or_default().to_owned();
        out.entry(garden).or_default().entry(night).or_default().push(row);
    }
    out
}

/// Everything about one garden that is looked at.
struct Look {
    night: NightNumber,
    first_night: NightNumber,
    garden: TableRow,
    nights: BTreeMap<NightNumber, TableRow>,
    pockets: ByNight,
    spots: ByNight,
}

impl Look {
    fn text(&self, name: &str) -> &str {
        self.garden[GARDENS.at(name)].text().unwrap_or_default()
    }

    fn rests(&self, night: NightNumber) -> bool {
        self.text("rests")
            .split(',')
            .filter_map(|span| span.split_once('/'))
            .filter_map(|(from, to)| Some(night::parse(from)?..=night::parse(to)?))
            .any(|span| span.contains(&night))
    }

    fn of(&self, night: NightNumber, name: &str) -> Option<f64> {
        self.nights.get(&night)?[NIGHTS.at(name)].number()
    }

    /// The newest logged nights, newest first, as far as they are no older than the alarm would be.
    fn newest(&self, count: usize) -> Vec<NightNumber> {
        self.nights.keys().rev().take(count).copied().collect()
    }

    /// The value of the last two logged nights and what was usual before, where both are known.
    fn against_usual(&self, name: &str, of_usual: &str) -> Option<([f64; 2], f64, NightNumber)> {
        let last = self.newest(2);
        let [newest, before] = last[..] else { return None };
        let mut usual: Vec<f64> = self
            .nights
            .range(..before)
            .filter_map(|(_, row)| row[NIGHTS.at(of_usual)].number())
            .collect();
        if usual.len() < LEAST_USUAL {
            return None;
        }
        Some((
            [self.of(newest, name)?, self.of(before, name)?],
            math::median(&mut usual)?,
            before,
        ))
    }

    /// Visited fraction that luck alone hardly ever falls below: one night differs from the next.
    fn unlucky_fraction(&self, before: NightNumber, usual: f64) -> Option<f64> {
        /// Standard deviation of a normal law over the median of absolute deviations.
        const SD_PER_MAD: f64 = 1.4826;
        const SDS: f64 = 3.0;
        let nights: Vec<f64> = self
            .nights
            .range(..before)
            .filter_map(|(_, row)| row[NIGHTS.at("visited_fraction")].number())
            .collect();
        let least = nights.iter().copied().fold(f64::INFINITY, f64::min);
        let mut off: Vec<f64> = nights.iter().map(|one| (one - usual).abs()).collect();
        let deviation = math::median(&mut off)?;
        Some(least.min(usual - SDS * SD_PER_MAD * deviation))
    }

    fn swath_m2_per_s(&self) -> f64 {
        let newest = self.newest(1).first().copied();
        let known =
            newest.and_then(|night| Some(self.of(night, "cut_width_m")? * self.of(night, "speed_mps")?));
        known.unwrap_or(USUAL_SWATH_M2_PER_S)
    }

    fn lawn_m2(&self) -> Option<f64> {
        self.nights
            .values()
            .rev()
            .find_map(|row| row[NIGHTS.at("lawn_m2")].number())
    }

    fn garden(&self, name: String) -> Option<GardenMorning> {
        let mut reasons = Vec::new();
        let heard = self.absent(&mut reasons);
        if heard {
            self.missed(&mut reasons);
            self.stuck(&mut reasons);
            self.changes(&mut reasons);
        }
        if reasons.is_empty() {
            return None;
        }
        let lawn_m2 = self.lawn_m2();
        reasons.sort_by(|a, b| {
            b.gain_m2
                .total_cmp(&a.gain_m2)
                .then(a.alarm.cmp(&b.alarm))
                .then_with(|| a.what.cmp(&b.what))
        });
        let sum_m2: f64 = reasons.iter().map(|reason| reason.gain_m2).sum();
        let days = self.garden[GARDENS.at("promised_days")].number();
        let state = match &self.garden[GARDENS.at("last_visits")] {
            // The state knows the newest night only.
            Value::Packed(packed) if *self.text("last_night") <= *night::words(self.night) => {
                LastVisits::unpack(packed)
            }
            _ => None,
        };
        let since = days.map(|days| self.night - days.ceil().clamp(1.0, 3660.0) as NightNumber + 1);
        Some(GardenMorning {
            garden: name,
            name: self.garden[GARDENS.at("name")].text().map(str::to_owned),
            gain_m2: lawn_m2.map_or(sum_m2, |lawn_m2| sum_m2.min(lawn_m2)),
            lawn_m2,
            reasons,
            visited_within_days_fraction: state
                .zip(since)
                .and_then(|(state, since)| state.visited_since_fraction(since)),
            promised_fraction: self.garden[GARDENS.at("promised_fraction")].number(),
            promised_days: days,
            nights: self
                .nights
                .iter()
                .map(|(night, row)| told_night(*night, row))
                .collect(),
        })
    }

    /// Expected logs that did not come. Returns whether the garden was heard of lately.
    fn absent(&self, reasons: &mut Vec<MorningReason>) -> bool {
        let expected = Expected::parse(self.text("expected"));
        let waited = |last: Option<NightNumber>| {
            let from = last.map_or(self.first_night, |last| last + 1);
            (from.max(self.night - 3650)..=self.night)
                .filter(|night| expected.holds(*night) && !self.rests(*night))
                .collect::<Vec<NightNumber>>()
        };
        let newest = self.newest(1).first().copied();
        let last =
            newest.or_else(|| night::parse(self.text("last_night")).filter(|last| *last <= self.night));
        let mut tell = |what: &str, who: &str, missing: &[NightNumber], gain_m2: f64| {
            let Some(since) = missing.first() else { return };
            let since = night::words(*since);
            reasons.push(MorningReason {
                alarm: Alarm::Absent,
                what: what.to_owned(),
                nights: missing.len() as u64,
                gain_m2,
                sentence: format!("No log{who} since {since}: {} expected nights.", missing.len()),
                since,
            });
        };
        let missing = waited(last);
        if missing.len() >= ABSENT_NIGHTS {
            tell("", "", &missing, self.lawn_m2().unwrap_or(0.0));
            return false;
        }
        let machines: Vec<(&str, NightNumber)> = self
            .text("machines")
            .split(',')
            .filter_map(|pair| pair.split_once('='))
            .filter_map(|(name, last)| Some((name, night::parse(last)?)))
            .collect();
        if machines.len() > 1 {
            for (name, last) in &machines {
                let missing = waited(Some(*last));
                if missing.len() >= ABSENT_NIGHTS {
                    let share_m2 = self.lawn_m2().unwrap_or(0.0) / machines.len() as f64;
                    tell(name, &format!(" of {name}"), &missing, share_m2);
                }
            }
        }
        true
    }

    fn missed(&self, reasons: &mut Vec<MorningReason>) {
        let last = self.newest(3);
        let Some(newest) = last.first() else { return };
        let at = |name: &str| POCKETS.at(name);
        let is_missed = |row: &&TableRow| row[at("verdict")].text() == Some("missed");
        for row in self.pockets.get(newest).into_iter().flatten().filter(is_missed) {
            let (Some(id), Some(area_m2)) = (row[at("id")].text(), row[at("area_m2")].number()) else {
                continue;
            };
            let holds = |night: &NightNumber| {
                let rows = self.pockets.get(night);
                rows.into_iter()
                    .flatten()
                    .filter(is_missed)
                    .any(|row| row[at("id")].text() == Some(id))
            };
            if last.iter().filter(|night| holds(night)).count() < 2 {
                continue;
            }
            let shown: Vec<NightNumber> = self.nights.keys().filter(|night| holds(night)).copied().collect();
            let since = row[at("first_night")].text().unwrap_or_default().to_owned();
            let widest = row[at("widest_m")]
                .number()
                .map(|widest_m| format!(", {widest_m:.1} m wide"))
                .unwrap_or_default();
            let why = row[at("why")].text().unwrap_or_default();
            reasons.push(MorningReason {
                alarm: Alarm::MissedPocket,
                what: id.to_owned(),
                nights: shown.len() as u64,
                gain_m2: area_m2,
                sentence: format!(
                    "Missed since {since}, {}: {area_m2:.1} m2{widest}. {why}",
                    plural(shown.len(), "night", "nights")
                ),
                since,
            });
        }
    }

    fn stuck(&self, reasons: &mut Vec<MorningReason>) {
        let last = self.newest(3);
        let Some(newest) = last.first() else { return };
        let place = |row: &TableRow| {
            Some((
                row[STUCK_SPOTS.at("east_m")].number()?,
                row[STUCK_SPOTS.at("north_m")].number()?,
            ))
        };
        let lost_min = |row: &TableRow| row[STUCK_SPOTS.at("lost_min")].number().unwrap_or(0.0);
        for row in self.spots.get(newest).into_iter().flatten() {
            let Some((east_m, north_m)) = place(row).filter(|_| lost_min(row) >= STUCK_MIN) else {
                continue;
            };
            let holds = |night: &NightNumber| {
                self.spots.get(night).into_iter().flatten().any(|other| {
                    lost_min(other) >= STUCK_MIN
                        && place(other)
                            .is_some_and(|(e_m, n_m)| math::hypot(e_m - east_m, n_m - north_m) <= SAME_SPOT_M)
                })
            };
            if last.iter().filter(|night| holds(night)).count() < 2 {
                continue;
            }
            let shown: Vec<NightNumber> = self.nights.keys().filter(|night| holds(night)).copied().collect();
            let since = shown
                .first()
                .map(|night| night::words(*night))
                .unwrap_or_default();
            let is_new = shown
                .first()
                .is_some_and(|first| self.nights.range(..first).count() >= LEAST_USUAL);
            let why = row[STUCK_SPOTS.at("why")].text().unwrap_or_default();
            reasons.push(MorningReason {
                alarm: Alarm::StuckSpot,
                what: row[1].text().unwrap_or_default().to_owned(),
                nights: shown.len() as u64,
                gain_m2: lost_min(row) * 60.0 * self.swath_m2_per_s(),
                sentence: format!(
                    "Stuck at {}place since {since}, {}, {:.0} min in the last: {why}",
                    if is_new { "a new " } else { "one " },
                    plural(shown.len(), "night", "nights"),
                    lost_min(row)
                ),
                since,
            });
        }
    }

    fn changes(&self, reasons: &mut Vec<MorningReason>) {
        let lawn_m2 = self.lawn_m2().unwrap_or(0.0);
        let mut push = |alarm, since: NightNumber, gain_m2: f64, what_is: String| {
            let since = night::words(since);
            reasons.push(MorningReason {
                alarm,
                what: String::new(),
                nights: 2,
                gain_m2,
                sentence: format!("{what_is}, since {since}."),
                since,
            });
        };
        if let Some((last, usual_h, since)) = self.against_usual("driving_h", "driving_h")
            && last
                .iter()
                .all(|last_h| *last_h <= 0.75 * usual_h && *last_h <= usual_h - 0.5)
        {
            let gain_m2 = ((usual_h - last[0]) * 3600.0 * self.swath_m2_per_s()).min(lawn_m2);
            push(
                Alarm::LostHours,
                since,
                gain_m2,
                format!("{:.1} h of driving where {usual_h:.1} h are usual", last[0]),
            );
        }
        if let (Some((highs, _, since)), Some((last, usual, before))) = (
            self.against_usual("visited_high_fraction", "visited_high_fraction"),
            self.against_usual("visited_fraction", "visited_fraction"),
        ) && let Some(unlucky) = self.unlucky_fraction(before, usual)
            && highs.iter().all(|high| *high < unlucky - LESS_VISITED)
        {
            let gain_m2 = (usual - last[0]).max(0.0) * lawn_m2;
            let text = format!(
                "{:.0} % of the lawn driven over where {:.0} % are usual",
                last[0] * 100.0,
                usual * 100.0
            );
            push(Alarm::LessVisited, since, gain_m2, text);
        }
        if let Some((last, usual_m, since)) = self.against_usual("position_error_m", "position_error_m")
            && last
                .iter()
                .all(|last_m| *last_m >= 2.0 * usual_m && *last_m >= usual_m + 0.05)
        {
            let text = format!(
                "Positions err by {:.0} cm where {:.0} cm are usual",
                last[0] * 100.0,
                usual_m * 100.0
            );
            push(Alarm::ReceiverWorse, since, 0.0, text);
        }
        if let Some((last, usual_h, since)) = self.against_usual("silent_h", "silent_h")
            && last
                .iter()
                .all(|last_h| *last_h >= 2.0 * usual_h && *last_h >= usual_h + 0.5)
        {
            push(
                Alarm::Silences,
                since,
                0.0,
                format!(
                    "{:.1} h without positions where {usual_h:.1} h are usual",
                    last[0]
                ),
            );
        }
    }
}

fn told_night(night: NightNumber, row: &TableRow) -> MorningNight {
    let number = |name: &str| row[NIGHTS.at(name)].number();
    MorningNight {
        night: night::words(night),
        visited_fraction: number("visited_fraction").map(|estimate| Estimate {
            estimate,
            low: number("visited_low_fraction"),
            high: number("visited_high_fraction"),
        }),
        missed_m2: number("missed_m2"),
        driving_h: number("driving_h"),
        stuck_min: number("stuck_min"),
        silent_h: number("silent_h"),
        position_error_m: number("position_error_m"),
    }
}
