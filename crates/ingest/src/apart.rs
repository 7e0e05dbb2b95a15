//! Whose fix is this, where a file holds those of two machines?
//!
//! - Tracks of a file (or the rows of each value of a column that names machines) that overlap in time are compared at common times, as
//!   files are; those that are apart belong to different machines.
//! - One track whose positions jump to and fro is dealt out to two: each fix goes on from where its machine was; where both were about as
//!   near, it is the other one's turn. That is believed where they do take turns, or never were so near, and neither then moves
//!   faster than a mower does; else the log is refused, since nobody could tell whose swath it was. So are three without names.
//!
//! Approximate: two machines that are logged in turn, fix by fix, and nearly always within 5 m of each other are one.
//!
//! Cost: linear, but for tracks that overlap in time, which are compared in pairs.

use crate::assemble::{APART_M, is_another_at};
use crate::error::IngestError;
use crate::reading::{FoundFix, PositionsOn, Reading};
use tussock_types::{Positions, Trace, math};

/// More tracks than this are not compared in pairs.
const MOST_TRACKS: usize = 200;
/// Two tracks are compared at so many common times at least, and so many of those of the shorter: clocks have faults.
const LEAST_COMMON: usize = 30;
const COMMON: f64 = 0.2;
/// Of the steps of more than 5 m so many lead back soon, where machines take turns: a single fix that is off makes half as many.
const TO_AND_FRO: f64 = 0.8;
/// Soon is within so many fixes more.
const SOON: usize = 3;
/// Two fixes that differ by less in each number, degrees or metres, are within 5 m.
const SHORT_DEG: f64 = 3e-5;
/// Back is nearer than this part of the step.
const BACK: f64 = 0.3;
/// So many such steps, as part of all, are no accident; fewer in number neither.
const LEAST_FRACTION: f64 = 0.05;
const LEAST_STEPS: usize = 50;
/// Dealt out, so many fixes at least go to the other machine than the one before.
const TURNS: f64 = 0.9;
/// No mower is faster; of its steps so many may seem to be.
const MOST_MPS: f64 = 3.0;
const TOO_FAST_FRACTION: f64 = 0.01;

/// The fixes of each machine, in the order in which they stand in the file; one list where it holds one machine.
pub(crate) fn machines(name: &str, reading: &mut Reading) -> Result<Vec<Vec<FoundFix>>, IngestError> {
    let found = std::mem::take(&mut reading.found);
    let kind = reading.ground.trace().positions;
    let machine_of = if reading.rises && !reading.names_machines {
        Vec::new()
    } else {
        by_track(&found, reading.ground)
    };
    let count = machine_of.iter().max().map_or(1, |last| last + 1);
    let mut lists = vec![Vec::new(); count];
    if count > 1 {
        for one in found {
            lists[machine_of[one.fix.segment as usize]].push(one);
        }
    } else if let Some(apart_m) = to_and_fro_m(&found, &kind) {
        let dealt = dealt_out(&found, &kind);
        lists = dealt.ok_or_else(|| IngestError::TwoMachines {
            name: name.into(),
            apart_m,
        })?;
    } else {
        lists[0] = found;
    }
    if reading.names_machines {
        // A name that changes parts nothing that one machine drove.
        lists.iter_mut().flatten().for_each(|one| one.fix.segment = 0);
    }
    Ok(lists)
}

/// The machine of each track, by the track's number.
fn by_track(found: &[FoundFix], ground: PositionsOn) -> Vec<usize> {
    let tracks = found
        .iter()
        .map(|one| one.fix.segment as usize + 1)
        .max()
        .unwrap_or(0);
    if !(2..=MOST_TRACKS).contains(&tracks) {
        return Vec::new();
    }
    let mut in_time: Vec<&FoundFix> = found.iter().collect();
    in_time.sort_by(|a, b| a.fix.time_s.total_cmp(&b.fix.time_s));
    let mut traces = vec![ground.trace(); tracks];
    in_time
        .iter()
        .for_each(|one| traces[one.fix.segment as usize].push(one.fix));
    let mut machines: Vec<Vec<usize>> = Vec::new();
    let mut machine_of = vec![0; tracks];
    for (track, trace) in traces.iter().enumerate().filter(|(_, trace)| !trace.is_empty()) {
        let is_other = |members: &Vec<usize>| {
            let least = |one: &Trace| LEAST_COMMON.max((COMMON * one.len().min(trace.len()) as f64) as usize);
            members
                .iter()
                .any(|&one| is_another_at(&traces[one], trace, least(&traces[one])))
        };
        // Of several machines that it may belong to, the one whose last track ends nearest to where it begins.
        let away_m = |members: &[usize]| {
            members.last().map_or(f64::INFINITY, |&last| {
                let before = &traces[last].positions;
                before.distance_m(before.pair(before.len() - 1), trace.positions.pair(0))
            })
        };
        let home = (0..machines.len())
            .filter(|&machine| !is_other(&machines[machine]))
            .min_by(|&a, &b| away_m(&machines[a]).total_cmp(&away_m(&machines[b])));
        let home = home.unwrap_or_else(|| {
            machines.push(Vec::new());
            machines.len() - 1
        });
        machines[home].push(track);
        machine_of[track] = home;
    }
    machine_of
}

fn apart_m(kind: &Positions, one: &FoundFix, other: &FoundFix) -> f64 {
    let [one, other] = [one, other].map(|found| (found.fix.first, found.fix.second));
    kind.distance_m(one, other)
}

/// How far apart, in the middle, the places are between which positions jump to and fro; `None` where they do not.
fn to_and_fro_m(found: &[FoundFix], kind: &Positions) -> Option<f64> {
    let mut steps_m = Vec::new();
    let mut back = 0;
    for (index, pair) in found.windows(2).enumerate() {
        // Mostly a step is short in both numbers, which is told without the cosine of a latitude.
        let (first, second) = (
            pair[0].fix.first - pair[1].fix.first,
            pair[0].fix.second - pair[1].fix.second,
        );
        if first.abs().max(second.abs()) < SHORT_DEG {
            continue;
        }
        let step_m = apart_m(kind, &pair[0], &pair[1]);
        if step_m > APART_M {
            steps_m.push(step_m);
            let mut soon = found[index + 2..].iter().take(SOON);
            back += usize::from(soon.any(|one| apart_m(kind, &pair[0], one) < BACK * step_m));
        }
    }
    let (steps, all) = (steps_m.len(), found.len());
    let is_told = steps >= LEAST_STEPS
        && steps as f64 >= LEAST_FRACTION * all as f64
        && back as f64 >= TO_AND_FRO * steps as f64;
    if is_told { math::median(&mut steps_m) } else { None }
}

/// Fixes dealt out to two machines; `None` where it cannot be said whose they are.
fn dealt_out(found: &[FoundFix], kind: &Positions) -> Option<Vec<Vec<FoundFix>>> {
    // The first two that are apart begin; what stands before them is as near to one of them as anything.
    let begins = found
        .windows(2)
        .position(|pair| apart_m(kind, &pair[0], &pair[1]) > APART_M)?;
    let mut last = [&found[begins], &found[begins + 1]];
    let mut lists = [Vec::new(), Vec::new()];
    let (mut before, mut turns, mut unsure, mut too_fast) = (1, 0, 0, 0);
    for one in found {
        let away_m = last.map(|of| apart_m(kind, of, one));
        // Where both are as near, it is the turn of the other one.
        let mine = if (away_m[0] - away_m[1]).abs() < APART_M {
            unsure += 1;
            1 - before
        } else {
            usize::from(away_m[1] < away_m[0])
        };
        turns += usize::from(mine != before);
        let step_s = (one.fix.time_s - last[mine].fix.time_s).abs().max(1.0);
        too_fast += usize::from(away_m[mine] > MOST_MPS * step_s + APART_M);
        last[mine] = one;
        before = mine;
        lists[mine].push(*one);
    }
    let fixes = found.len() as f64;
    let is_sure = unsure == 0 || turns as f64 >= TURNS * fixes;
    (is_sure && too_fast as f64 <= TOO_FAST_FRACTION * fixes).then(|| lists.to_vec())
}
