//! Turns log files into one trace for each machine.
//!
//! - The same content under two names is read once.
//! - Files of one machine make one trace in time order. A file that continues within the usual period of the previous one
//!   continues its segment; any other begins a new one.
//! - If two files overlap in time they are compared at common times. A median distance of more than 5 m, and more than three
//!   times the accuracy of both positions, means two machines; otherwise the second file repeats the first, and its
//!   overlapping fixes are left out.
//!
//! The accuracy of positions comes from the log: the standard deviation that the receiver claims, else HDOP times a usual
//! range error for the kind of fix, else that range error alone.
//!
//! Cost: linear in the fixes, times the number of machines.

use crate::LogFile;
use crate::clock::{DAY_S, day_words};
use crate::error::IngestError;
use std::collections::BTreeMap;
use tussock_types::math;
use tussock_types::{Fix, FixQuality, LogFacts, Notice, Positions, Said, SkipReason, Skipped, Trace};

/// All logs of one job, sorted by machine.
#[derive(Clone, Debug, PartialEq)]
pub struct Assembled {
    /// One trace for each machine, `machine-1`, `machine-2` in the order in which their first files were given.
    pub traces: Vec<Trace>,
    /// Facts about each file, in the order given.
    pub inputs: Vec<LogFacts>,
}

/// Two machines are at least this far apart at the same times.
pub(crate) const APART_M: f64 = 5.0;
/// Between fixes further apart in time there is no interpolation.
const BRIDGE_S: f64 = 10.0;

/// Sorts logs by machine and puts them in time order.
///
/// # Errors
/// If logs on Earth and logs in local metres are mixed.
///
/// # Panics
/// Never.
pub fn assemble(files: Vec<LogFile>) -> Result<Assembled, IngestError> {
    refuse_mixed(&files)?;
    let mut seen: BTreeMap<String, String> = BTreeMap::new();
    let mut inputs: Vec<LogFacts> = Vec::with_capacity(files.len());
    let mut traces: Vec<(usize, Trace)> = Vec::new();
    for (index, mut file) in files.into_iter().enumerate() {
        match seen.get(&file.facts.sha256) {
            Some(first) => same_again(&mut file.facts, first),
            None => {
                seen.insert(file.facts.sha256.clone(), file.facts.name.clone());
                traces.push((index, file.trace));
                traces.extend(file.others.into_iter().map(|trace| (index, trace)));
            }
        }
        inputs.push(file.facts);
    }
    // Files are added in time order, so a trace only ever grows at its end or is repeated.
    traces.retain(|(_, trace)| !trace.is_empty());
    traces.sort_by(|(a, one), (b, other)| one.time_s[0].total_cmp(&other.time_s[0]).then(a.cmp(b)));
    let mut machines: Vec<MachineLogs> = Vec::new();
    for (index, trace) in traces {
        // Of several machines that it may belong to, the one last seen nearest to where it begins.
        let home = machines
            .iter()
            .enumerate()
            .filter(|(_, machine)| !is_another(&machine.trace, &trace) && !machine.trace.is_far_from(&trace))
            .min_by(|(_, one), (_, other)| one.away_m(&trace).total_cmp(&other.away_m(&trace)))
            .map(|(home, _)| home);
        match home {
            Some(home) => machines[home].take(index, trace, &mut inputs),
            None => machines.push(MachineLogs {
                first_file: index,
                files: vec![index],
                trace,
            }),
        }
    }
    machines.sort_by_key(|machine| machine.first_file);
    let mut out = Vec::with_capacity(machines.len());
    for (number, mut machine) in machines.into_iter().enumerate() {
        let name = format!("machine-{}", number + 1);
        for &file in &machine.files {
            // A file of two machines has the names of both.
            let names = &mut inputs[file].machine;
            if names.is_empty() {
                names.clone_from(&name);
            } else if !names.split(" and ").any(|known| known == name) {
                *names = format!("{names} and {name}");
            }
        }
        machine.trace.machine = name;
        out.push(machine.trace);
    }
    name_repeats(&mut inputs);
    Ok(Assembled { traces: out, inputs })
}

fn refuse_mixed(files: &[LogFile]) -> Result<(), IngestError> {
    let is_local = |file: &&LogFile| matches!(file.trace.positions, Positions::Local { .. });
    let local = files.iter().find(is_local);
    let geographic = files.iter().find(|file| !is_local(file));
    match (local, geographic) {
        (Some(local), Some(geographic)) => Err(IngestError::MixedPositions {
            local: local.facts.name.clone(),
            geographic: geographic.facts.name.clone(),
        }),
        _ => Ok(()),
    }
}

/// A file whose content was read before: all of it is skipped.
fn same_again(facts: &mut LogFacts, first: &str) {
    let count = facts.fixes;
    facts.fixes = 0;
    facts.bytes_used = 0;
    facts.skipped = BTreeMap::from([(SkipReason::SameLogTwice, count)]);
    facts.skipped_bytes = BTreeMap::from([(SkipReason::SameLogTwice, facts.bytes)]);
    facts.places = vec![Skipped {
        reason: SkipReason::SameLogTwice,
        byte_start: 0,
        byte_end: facts.bytes,
        line: 1,
        count,
        excerpt: String::new(),
    }];
    let log = first.to_owned();
    facts.notices.push(Notice {
        said: Said::SameLogTwice { log },
        line: 0,
    });
}

/// A repeated file belongs to the machine of the file that it repeats.
fn name_repeats(inputs: &mut [LogFacts]) {
    for index in 0..inputs.len() {
        if inputs[index].machine.is_empty() {
            let twin = inputs
                .iter()
                .find(|other| other.sha256 == inputs[index].sha256 && !other.machine.is_empty())
                .map(|other| other.machine.clone());
            inputs[index].machine = twin.unwrap_or_default();
        }
    }
}

struct MachineLogs {
    first_file: usize,
    files: Vec<usize>,
    trace: Trace,
}

impl MachineLogs {
    /// Distance from where the machine was when another trace begins to where that one begins.
    fn away_m(&self, other: &Trace) -> f64 {
        let before = self
            .trace
            .time_s
            .partition_point(|&time_s| time_s <= other.time_s[0])
            .saturating_sub(1);
        let mine = &self.trace.positions;
        mine.distance_m(mine.pair(before), other.positions.pair(0))
    }

    /// Adds another file of the same machine. It begins no earlier than the trace does.
    fn take(&mut self, index: usize, other: Trace, inputs: &mut [LogFacts]) {
        self.first_file = self.first_file.min(index);
        self.files.push(index);
        let mine = std::mem::replace(&mut self.trace, empty_like(&other));
        let (merged, left_out) = merged(&mine, &other);
        self.trace = merged;
        if left_out > 0 {
            let facts = &mut inputs[index];
            facts.fixes = facts.fixes.saturating_sub(left_out);
            *facts.skipped.entry(SkipReason::DuplicateTime).or_default() += left_out;
            let day = day_words((other.time_s[0] / DAY_S).floor() as i32);
            let said = Said::OverlapsAnotherLog {
                fixes: left_out,
                date: day,
            };
            facts.notices.push(Notice { said, line: 0 });
        }
    }
}

fn empty_like(trace: &Trace) -> Trace {
    match trace.positions {
        Positions::Geographic { .. } => Trace::geographic(""),
        Positions::Local { .. } => Trace::local(""),
    }
}

/// Usual time between fixes: the median.
fn period_s(trace: &Trace) -> f64 {
    let mut steps: Vec<f64> = trace.time_s.windows(2).map(|pair| pair[1] - pair[0]).collect();
    math::median(&mut steps).unwrap_or(1.0)
}

/// Both traces in one, and how many fixes of the second were left out because the first covers their time.
fn merged(mine: &Trace, other: &Trace) -> (Trace, u64) {
    let mut out = empty_like(mine);
    let continues_s = 1.5 * period_s(mine).max(period_s(other));
    let covers_s = (2.5 * period_s(mine)).min(BRIDGE_S);
    let (mut a, mut b) = (0, 0);
    let mut left_out = 0;
    let mut segment = 0_u32;
    let mut last: Option<(bool, u32, f64)> = None;
    let mut lay = |fix: Fix, is_mine: bool, out: &mut Trace| {
        if let Some((was_mine, was, time_s)) = last {
            let goes_on = if was_mine == is_mine {
                was == fix.segment
            } else {
                fix.time_s - time_s <= continues_s
            };
            if !goes_on {
                segment += 1;
            }
        }
        last = Some((is_mine, fix.segment, fix.time_s));
        out.push(Fix { segment, ..fix });
    };
    while a < mine.len() || b < other.len() {
        if b >= other.len() || (a < mine.len() && mine.time_s[a] <= other.time_s[b]) {
            lay(mine.fix(a), true, &mut out);
            a += 1;
            continue;
        }
        let time_s = other.time_s[b];
        let covered = a > 0
            && (mine.time_s[a - 1] == time_s
                || (a < mine.len()
                    && mine.segment[a - 1] == mine.segment[a]
                    && mine.time_s[a] - mine.time_s[a - 1] <= covers_s));
        if covered {
            left_out += 1;
        } else {
            lay(other.fix(b), false, &mut out);
        }
        b += 1;
    }
    (out, left_out)
}

/// True if the other trace is at other places at the same times.
fn is_another(mine: &Trace, other: &Trace) -> bool {
    is_another_at(mine, other, 1)
}

/// The same, where both are known at so many common times at least.
pub(crate) fn is_another_at(mine: &Trace, other: &Trace, least: usize) -> bool {
    let mut apart: Vec<f64> = Vec::new();
    let mut a = 0;
    for b in 0..other.len() {
        let time_s = other.time_s[b];
        while a < mine.len() && mine.time_s[a] < time_s {
            a += 1;
        }
        if a == mine.len() {
            break;
        }
        let place = if mine.time_s[a] == time_s {
            mine.positions.pair(a)
        } else if a > 0 && mine.time_s[a] - mine.time_s[a - 1] <= BRIDGE_S {
            let share = (time_s - mine.time_s[a - 1]) / (mine.time_s[a] - mine.time_s[a - 1]);
            let (from, to) = (mine.positions.pair(a - 1), mine.positions.pair(a));
            (from.0 + share * (to.0 - from.0), from.1 + share * (to.1 - from.1))
        } else {
            continue;
        };
        apart.push(mine.positions.distance_m(place, other.positions.pair(b)));
    }
    let worth_m = math::hypot(worth_m(mine), worth_m(other));
    apart.len() >= least
        && math::median(&mut apart).is_some_and(|median_m| median_m > APART_M && median_m > 3.0 * worth_m)
}

/// Standard deviation per axis that the positions of a trace are worth, in the middle of it.
fn worth_m(trace: &Trace) -> f64 {
    if matches!(trace.positions, Positions::Local { .. }) {
        return 0.1;
    }
    let mut worth: Vec<f64> = (0..trace.len())
        .step_by(trace.len() / 10_000 + 1)
        .map(|index| {
            let claimed = f64::from(trace.claimed_sd_m[index]);
            if claimed.is_finite() {
                return claimed;
            }
            let hdop = f64::from(trace.hdop[index]);
            range_error_m(trace.quality[index]) * if hdop.is_finite() { hdop } else { 1.2 }
        })
        .collect();
    math::median(&mut worth).unwrap_or(2.0)
}

/// Usual range error by kind of fix, rounded up from receivers' data sheets (common practice, no single source).
fn range_error_m(quality: FixQuality) -> f64 {
    match quality {
        FixQuality::RtkFixed => 0.02,
        FixQuality::RtkFloat => 0.4,
        FixQuality::Differential | FixQuality::Precise => 1.0,
        _ => 1.5,
    }
}
