//! What should the operator do this morning?
//!
//! The open alarms are those in the store's table for the night in question (`alarms.rs` says when one opens and is mended),
//! and two that depend on the date:
//!
//! | alarm | when |
//! |---|---|
//! | absent | at least three expected nights in a row brought no log, from the garden or from one of its machines |
//! | promise | less of the lawn was driven over within the promised days than was promised, by a point or more |
//!
//! If ten or more gardens that are at least one in twenty of those expected (one in four on the first morning) fell silent
//! in the same night, or three or more that are two thirds of all, their delivery is at fault: they get one line. Gardens
//! that rest raise no alarm.
//!
//! A visit gains the square metres of lawn that would then be driven over each night: the sum over the parts (pockets,
//! places that catch the machine, lost hours), or the whole (less visited, the promise), whichever is larger; the entire
//! lawn if nothing is heard. A broken promise makes it worth half as much again, and so do fourteen days. These shares have
//! no source.
//!
//! Cost: reads fifteen nights of one table and three tables without nights, a thousand gardens at a time.

use crate::BatchError;
use crate::alarms::{Episode, by_garden};
use crate::gardens::Expected;
use crate::last_visits::LastVisits;
use crate::marks::Mark;
use crate::night::{self, NightNumber};
use crate::store::{ColumnChoice, Store};
use crate::table::{ALARMS, FAILURES, GARDENS, NIGHTS, TableRow, Value};
use std::collections::{BTreeMap, BTreeSet};
use tussock_types::{
    Alarm, AlarmState, AlarmTold, Estimate, GardenClock, GardenMorning, Morning, MorningDelivery,
    MorningFailure, MorningMended, MorningNight, MorningReason,
};

const WINDOW_NIGHTS: NightNumber = 14;
/// Number of nights in which gardens that fall silent together are counted.
const DELIVERY_NIGHTS: NightNumber = 60;
const AT_ONCE: usize = 1000;
const ABSENT_NIGHTS: usize = 3;
/// Rounding of squares and days: falling short of the promise by this much does not break it.
const PROMISE_SLACK: f64 = 0.01;
const BROKEN_PROMISE: f64 = 0.5;
const LONG_OPEN: f64 = 0.5;
const LONG_OPEN_DAYS: f64 = 14.0;

/// The night to report on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NightChoice {
    /// The same for all.
    Date(NightNumber),
    /// For each garden, the newest whose work is over by its own clock ([`night::last_over`]).
    LastOver {
        /// Now, seconds since 1970.
        now_unix_s: f64,
    },
}

impl NightChoice {
    fn of(self, garden: &TableRow) -> NightNumber {
        match self {
            Self::Date(night) => night,
            Self::LastOver { now_unix_s } => {
                let turn_h = garden[GARDENS.at("night_turns_at_h")].count();
                let turn_h = turn_h.and_then(|hour| u8::try_from(hour).ok());
                let zone = GardenClock::of(garden[GARDENS.at("time_zone")].text());
                night::last_over(now_unix_s, &zone, turn_h.unwrap_or(night::USUAL_TURN_H))
            }
        }
    }
}

/// The morning after a night. It has the name of the newest night of any garden.
///
/// # Errors
/// If the store cannot be read.
pub fn morning(store: &Store, choice: NightChoice) -> Result<Morning, BatchError> {
    let ever = NightNumber::MIN..=NightNumber::MAX;
    let clocks = ColumnChoice::Some(&["time_zone", "night_turns_at_h"]);
    let nights: BTreeMap<String, NightNumber> = store
        .rows(&GARDENS, clocks, ever.clone(), &|_| true)?
        .into_iter()
        .filter_map(|(_, row)| Some((row[0].text()?.to_owned(), choice.of(&row))))
        .collect();
    let night = nights
        .values()
        .max()
        .copied()
        .unwrap_or_else(|| choice.of(&GARDENS.empty()));
    let oldest = nights.values().min().copied().unwrap_or(night);
    let names: Vec<&str> = nights.keys().map(String::as_str).collect();
    let marks = store.marks()?;
    let mut out = Morning {
        schema_version: crate::table::SCHEMA_VERSION,
        tool_version: tussock::TOOL_VERSION.to_owned(),
        night: night::words(night),
        known: names.len() as u64,
        with_log: 0,
        resting: 0,
        gardens: Vec::new(),
        deliveries: Vec::new(),
        muted: 0,
        mended: Vec::new(),
        failures: failures(store, night)?,
    };
    let first_night = store.nights(&NIGHTS).first().copied().unwrap_or(night);
    let mut silent = SilentAtOnce::default();
    let mut looks: Vec<(String, Look, Vec<ToldReason>)> = Vec::new();
    for names in names.chunks(AT_ONCE) {
        let names: BTreeSet<&str> = names.iter().copied().collect();
        let window = oldest - WINDOW_NIGHTS..=night;
        let mut own_nights = by_garden(store.rows_of(&NIGHTS, ColumnChoice::All, window, &names)?);
        let mut alarms = by_garden(store.rows_of(&ALARMS, ColumnChoice::All, ever.clone(), &names)?);
        for (_, row) in store.rows_of(&GARDENS, ColumnChoice::All, ever.clone(), &names)? {
            let Some(name) = row[0].text().map(str::to_owned) else {
                continue;
            };
            let plan = row[GARDENS.at("plan_sha256")].clone();
            let night = nights[&name];
            let mut own = own_nights.remove(&name).unwrap_or_default();
            out.with_log += u64::from(own.contains_key(&night));
            own.retain(|of, rows| {
                (night - WINDOW_NIGHTS..=night).contains(of) && rows[0][NIGHTS.at("plan_sha256")] == plan
            });
            let alarms = alarms
                .remove(&name)
                .unwrap_or_default()
                .remove(&0)
                .unwrap_or_default();
            let look = Look {
                night,
                first_night,
                garden: row,
                nights: own
                    .into_iter()
                    .map(|(night, mut rows)| (night, rows.swap_remove(0)))
                    .collect(),
                alarms: alarms.iter().filter_map(Episode::of).collect(),
            };
            if look.rests(night) {
                out.resting += 1;
                continue;
            }
            for one in look.alarms.iter() {
                if let Some((mended, _)) = one.mended.filter(|(_, closed)| *closed == night) {
                    out.mended.push(MorningMended {
                        garden: name.clone(),
                        alarm: one.alarm,
                        since: night::words(one.since),
                        mended: night::words(mended),
                    });
                }
            }
            silent.take(&look);
            let reasons = look.reasons();
            if !reasons.is_empty() {
                looks.push((name, look, reasons));
            }
        }
    }
    out.deliveries = silent.deliveries();
    let late: Vec<NightNumber> = out
        .deliveries
        .iter()
        .filter_map(|one| night::parse(&one.since))
        .collect();
    // A garden that also lacked the night or two before would not have been reported without it.
    let is_delivery = |reason: &MorningReason| {
        let since = night::parse(&reason.since).filter(|_| reason.what.is_empty());
        let mut late = late.iter();
        reason.alarm == Alarm::Absent
            && since
                .is_some_and(|since| late.any(|late| (since..since + ABSENT_NIGHTS as i32).contains(late)))
    };
    let mut gardens = Vec::new();
    for (name, look, mut reasons) in looks {
        reasons.retain(|(_, reason)| !is_delivery(reason));
        if reasons.is_empty() {
            continue;
        }
        match look.told(name, reasons, &marks) {
            Some(garden) => gardens.push(garden),
            None => out.muted += 1,
        }
    }
    let is_known = |garden: &GardenMorning| {
        let mut reasons = garden.reasons.iter();
        reasons.all(|reason| reason.state == AlarmState::Acknowledged)
    };
    gardens.sort_by(|a, b| {
        is_known(a)
            .cmp(&is_known(b))
            .then(b.worth_m2.total_cmp(&a.worth_m2))
            .then_with(|| a.garden.cmp(&b.garden))
    });
    out.gardens = gardens;
    Ok(out)
}

impl Store {
    /// The night of a garden to report on; none if the store knows no garden of this name.
    ///
    /// # Errors
    /// If the store cannot be read.
    pub fn night_of(&self, garden: &str, choice: NightChoice) -> Result<Option<NightNumber>, BatchError> {
        let clocks = ColumnChoice::Some(&["time_zone", "night_turns_at_h"]);
        let ever = NightNumber::MIN..=NightNumber::MAX;
        let rows = self.rows_of(&GARDENS, clocks, ever, &BTreeSet::from([garden]))?;
        Ok(rows.first().map(|(_, row)| choice.of(row)))
    }
}

/// Gardens by the first expected night that brought no log.
#[derive(Default)]
struct SilentAtOnce {
    /// Newest night of any garden.
    newest: NightNumber,
    silent: BTreeMap<NightNumber, u64>,
    expected: BTreeMap<NightNumber, u64>,
}

impl SilentAtOnce {
    fn take(&mut self, look: &Look) {
        let Some(last) = look.last_logged() else { return };
        self.newest = self.newest.max(look.night);
        for night in (look.night - DELIVERY_NIGHTS..=look.night).filter(|night| look.expects(*night)) {
            *self.expected.entry(night).or_insert(0) += 1;
        }
        if let Some(first) = (last + 1..=look.night).find(|night| look.expects(*night)) {
            *self.silent.entry(first).or_insert(0) += 1;
        }
    }

    fn deliveries(self) -> Vec<MorningDelivery> {
        let mut out = Vec::new();
        for (since, gardens) in self.silent {
            let expected = self.expected.get(&since).copied().unwrap_or(u64::MAX);
            // Some logs of the newest night are always late.
            let one_in = if since == self.newest { 4 } else { 20 };
            let many = gardens >= 10 && gardens.saturating_mul(one_in) >= expected;
            if many || gardens >= 3 && gardens.saturating_mul(3) >= expected.saturating_mul(2) {
                out.push(MorningDelivery {
                    since: night::words(since),
                    gardens,
                    expected,
                });
            }
        }
        out
    }
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

/// A reason, and the night in which it was first reported.
type ToldReason = (NightNumber, MorningReason);

/// Everything that is examined about one garden.
struct Look {
    night: NightNumber,
    first_night: NightNumber,
    garden: TableRow,
    nights: BTreeMap<NightNumber, TableRow>,
    alarms: Vec<Episode>,
}

impl Look {
    fn text(&self, name: &str) -> &str {
        self.garden[GARDENS.at(name)].text().unwrap_or_default()
    }

    fn number(&self, name: &str) -> Option<f64> {
        self.garden[GARDENS.at(name)].number()
    }

    fn rests(&self, night: NightNumber) -> bool {
        self.text("rests")
            .split(',')
            .filter_map(|span| span.split_once('/'))
            .filter_map(|(from, to)| Some(night::parse(from)?..=night::parse(to)?))
            .any(|span| span.contains(&night))
    }

    fn expects(&self, night: NightNumber) -> bool {
        Expected::parse(self.text("expected")).holds(night) && !self.rests(night)
    }

    /// Newest night with a log, up to the night in question.
    fn last_logged(&self) -> Option<NightNumber> {
        let newest = self.nights.keys().next_back().copied();
        newest.or_else(|| night::parse(self.text("last_night")).filter(|last| *last <= self.night))
    }

    fn lawn_m2(&self) -> Option<f64> {
        let mut nights = self.nights.values().rev();
        nights.find_map(|row| row[NIGHTS.at("lawn_m2")].number())
    }

    /// The open reasons, with the night in which each was first reported.
    fn reasons(&self) -> Vec<ToldReason> {
        let mut reasons = Vec::new();
        if self.absent(&mut reasons) {
            reasons.extend(self.promise());
        }
        let open = self.alarms.iter().filter(|one| one.is_open(self.night));
        reasons.extend(open.map(|one| (one.opened, told_alarm(one))));
        reasons
    }

    /// The garden as reported; nothing if all of it is muted.
    fn told(&self, name: String, reasons: Vec<ToldReason>, marks: &[Mark]) -> Option<GardenMorning> {
        let mut reasons: Vec<MorningReason> = reasons
            .into_iter()
            .filter(|(_, reason)| {
                !marks
                    .iter()
                    .any(|mark| mark.mutes(&name, reason.alarm, self.night))
            })
            .map(|(opened, mut reason)| {
                let mut known = marks.iter().rev();
                if let Some(mark) =
                    known.find(|mark| mark.acknowledges(&name, reason.alarm, opened, self.night))
                {
                    reason.state = AlarmState::Acknowledged;
                    reason.said.clone_from(&mark.reason);
                }
                reason
            })
            .collect();
        reasons.sort_by(|a, b| {
            b.gain_m2
                .total_cmp(&a.gain_m2)
                .then(a.alarm.cmp(&b.alarm))
                .then_with(|| a.what.cmp(&b.what))
        });
        let since = reasons
            .iter()
            .filter_map(|reason| night::parse(&reason.since))
            .min()?;
        let days_open = u64::try_from(self.night - since + 1).unwrap_or(1);
        let sum_m2 = |is_whole: bool| -> f64 {
            let of_kind = reasons
                .iter()
                .filter(|reason| matches!(reason.alarm, Alarm::LessVisited | Alarm::Promise) == is_whole);
            let gains = of_kind.map(|reason| reason.gain_m2);
            if is_whole {
                gains.fold(0.0, f64::max)
            } else {
                gains.sum()
            }
        };
        let lawn_m2 = self.lawn_m2();
        let gain_m2 = f64::max(sum_m2(true), sum_m2(false)).min(lawn_m2.unwrap_or(f64::INFINITY));
        let is_broken = reasons.iter().any(|reason| reason.alarm == Alarm::Promise);
        let promise = 1.0 + if is_broken { BROKEN_PROMISE } else { 0.0 };
        let worth_m2 = gain_m2 * promise * (1.0 + LONG_OPEN * (days_open as f64 / LONG_OPEN_DAYS).min(1.0));
        Some(GardenMorning {
            garden: name,
            night: night::words(self.night),
            name: self.garden[GARDENS.at("name")].text().map(str::to_owned),
            gain_m2,
            worth_m2,
            days_open,
            outline_m: serde_json::from_str(self.text("outline")).unwrap_or_default(),
            lawn_m2,
            reasons,
            visited_within_days_fraction: self
                .state()
                .zip(self.promised_days())
                .and_then(|(state, days)| state.visited_since_fraction(self.night - days + 1)),
            promised_fraction: self.number("promised_fraction"),
            promised_days: self.number("promised_days"),
            nights: self
                .nights
                .iter()
                .map(|(night, row)| told_night(*night, row))
                .collect(),
            window: (self.night - WINDOW_NIGHTS..=self.night)
                .map(night::words)
                .collect(),
        })
    }

    fn promised_days(&self) -> Option<NightNumber> {
        self.number("promised_days")
            .map(|days| days.ceil().clamp(1.0, 3660.0) as NightNumber)
    }

    /// The rolling state, if it is that of the night in question: it knows the newest night only.
    fn state(&self) -> Option<LastVisits> {
        match &self.garden[GARDENS.at("last_visits")] {
            Value::Packed(packed) if *self.text("last_night") <= *night::words(self.night) => {
                LastVisits::unpack(packed)
            }
            _ => None,
        }
    }

    /// A broken promise, provided that at least half of the nights that it covers were logged.
    fn promise(&self) -> Option<ToldReason> {
        let (promised, days) = self.number("promised_fraction").zip(self.promised_days())?;
        let first = self.night - days + 1;
        let of_days = (first..=self.night).filter(|night| self.expects(*night)).count();
        let logged = self.nights.range(first..).count();
        if 2 * logged < of_days {
            return None;
        }
        let (state, earliest) = (self.state()?, night::parse(self.text("plan_since"))? + days - 1);
        let since = state.overdue_since(self.night, days, 1.0 - promised + PROMISE_SLACK, earliest)?;
        let visited = state.visited_since_fraction(first)?;
        let words = night::words(since);
        let told = AlarmTold::Promise {
            visited_fraction: visited,
            promised_fraction: promised,
            days: days as u64,
        };
        let gain_m2 = (promised - visited).max(0.0) * self.lawn_m2().unwrap_or(0.0);
        let nights = self.nights.range(since..).count();
        Some((since, reason(Alarm::Promise, "", words, nights, gain_m2, told)))
    }

    /// Expected logs that did not come. Returns whether the garden was heard from recently.
    fn absent(&self, reasons: &mut Vec<ToldReason>) -> bool {
        let waited = |last: Option<NightNumber>| {
            let from = last.map_or(self.first_night, |last| last + 1);
            (from.max(self.night - 3650)..=self.night)
                .filter(|night| self.expects(*night))
                .collect::<Vec<NightNumber>>()
        };
        let mut tell = |what: &str, missing: &[NightNumber], gain_m2: f64| {
            let (Some(first), Some(told)) = (missing.first(), missing.get(ABSENT_NIGHTS - 1)) else {
                return false;
            };
            let since = night::words(*first);
            let absent = reason(
                Alarm::Absent,
                what,
                since,
                missing.len(),
                gain_m2,
                AlarmTold::Absent,
            );
            reasons.push((*told, absent));
            true
        };
        if tell("", &waited(self.last_logged()), self.lawn_m2().unwrap_or(0.0)) {
            return false;
        }
        let machines: Vec<(&str, NightNumber)> = self
            .text("machines")
            .split(',')
            .filter_map(|pair| pair.split_once('='))
            .filter_map(|(name, last)| Some((name, night::parse(last)?)))
            .collect();
        if machines.len() > 1 {
            let share_m2 = self.lawn_m2().unwrap_or(0.0) / machines.len() as f64;
            for (name, last) in &machines {
                tell(name, &waited(Some(*last)), share_m2);
            }
        }
        true
    }
}

fn reason(
    alarm: Alarm,
    what: &str,
    since: String,
    nights: usize,
    gain_m2: f64,
    told: AlarmTold,
) -> MorningReason {
    let mut reason = MorningReason {
        alarm,
        what: what.to_owned(),
        since,
        nights: nights as u64,
        gain_m2,
        state: AlarmState::Open,
        said: None,
        at_deg: None,
        sentence: String::new(),
        told: Some(told),
    };
    reason.sentence = tussock_report::alarm_sentence(&reason, tussock_report::Voice::default());
    reason
}

/// An alarm of the table as a reason.
fn told_alarm(one: &Episode) -> MorningReason {
    let since = night::words(one.since);
    let found = one.found.unwrap_or(0.0);
    let usual = one.law.map_or(0.0, |(usual, _)| usual);
    let why = one.why.clone();
    let told = match one.alarm {
        Alarm::LessVisited => AlarmTold::LessVisited {
            found_fraction: found,
            usual_fraction: usual,
        },
        Alarm::LostHours | Alarm::Silences => AlarmTold::Hours {
            found_h: found,
            usual_h: usual,
        },
        Alarm::ReceiverWorse => AlarmTold::ReceiverWorse {
            found_m: found,
            usual_m: usual,
        },
        Alarm::StuckSpot => AlarmTold::Stuck {
            found_min: found,
            why,
        },
        Alarm::MissedPocket | Alarm::Absent | Alarm::Promise => AlarmTold::Missed { found_m2: found, why },
    };
    MorningReason {
        at_deg: one.place[2].zip(one.place[3]),
        ..reason(
            one.alarm,
            &one.what,
            since,
            one.nights as usize,
            one.gain_m2,
            told,
        )
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
