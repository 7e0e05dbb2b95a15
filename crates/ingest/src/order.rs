//! Turns fixes in file order into a trace in strictly increasing time.
//!
//! - Fixes already in order stay as they are, at the cost of one comparison each.
//! - Within a track, the fixes that do not belong to a longest chain of increasing times (Fredman 1975) are out of place.
//!   Ten or more of them in a row with increasing times are a block that was written late and is put where it belongs. Fewer
//!   count as late if they fill holes in the usual step of time, and are put there; elsewhere they are faults of the clock
//!   and are skipped.
//! - Tracks in the wrong order are sorted. A track with the newest fix first is reversed.
//! - Of two fixes at one instant, the one of better quality stays, or else the first.
//!
//! Cost: linear for a log in order, otherwise O(n log n).

use crate::clock::{DAY_S, ROLLOVER_DAYS, day_of, day_words, first_day, last_day};
use crate::ledger::Ledger;
use crate::reading::{FoundFix, NO_MORE, Reading, rank};
use tussock_types::{Positions, Said, SkipReason, Trace};

/// This many fixes in a row are a block, not a fault.
const BLOCK: usize = 10;

/// Once put where they belong, late fixes are at least and at most these fractions of the usual step away from their
/// neighbours: a clock that was set back lands between fixes, or far from any.
const HOLE_STEPS: std::ops::RangeInclusive<f64> = 0.7..=3.0;

/// Puts a reading in order. What is left out goes to the ledger.
pub(crate) fn settle(reading: &mut Reading) -> Trace {
    let mut found = std::mem::take(&mut reading.found);
    if !reading.rises {
        found = sorted(found, reading);
    }
    let mut trace = reading.ground.trace();
    reserve(&mut trace, found.len());
    let (mut segment, mut last) = (0, None);
    // Column by column, with as many fixes at a time as fit into the processor's cache.
    for some in found.chunks(256) {
        trace.time_s.extend(some.iter().map(|one| one.fix.time_s));
        let (a, b) = match &mut trace.positions {
            Positions::Geographic { lat_deg, lon_deg } => (lat_deg, lon_deg),
            Positions::Local { east_m, north_m } => (east_m, north_m),
        };
        a.extend(some.iter().map(|one| one.fix.first));
        b.extend(some.iter().map(|one| one.fix.second));
        trace.segment.extend(some.iter().map(|one| {
            if last.is_some_and(|last| last != one.fix.segment) {
                segment += 1;
            }
            last = Some(one.fix.segment);
            segment
        }));
        trace.quality.extend(some.iter().map(|one| one.fix.quality));
        trace.hdop.extend(some.iter().map(|one| one.fix.hdop));
        trace
            .claimed_sd_m
            .extend(some.iter().map(|one| one.fix.claimed_sd_m));
        trace.speed_mps.extend(some.iter().map(|one| one.fix.speed_mps));
        trace.course_deg.extend(some.iter().map(|one| one.fix.course_deg));
        trace
            .height_msl_m
            .extend(some.iter().map(|one| one.fix.height_msl_m));
        trace.satellites.extend(some.iter().map(|one| one.fix.satellites));
    }
    trace
}

fn reserve(trace: &mut Trace, fixes: usize) {
    match &mut trace.positions {
        Positions::Geographic {
            lat_deg: a,
            lon_deg: b,
        }
        | Positions::Local {
            east_m: a,
            north_m: b,
        } => {
            a.reserve_exact(fixes);
            b.reserve_exact(fixes);
        }
    }
    trace.time_s.reserve_exact(fixes);
    trace.segment.reserve_exact(fixes);
    trace.quality.reserve_exact(fixes);
    trace.hdop.reserve_exact(fixes);
    trace.claimed_sd_m.reserve_exact(fixes);
    trace.speed_mps.reserve_exact(fixes);
    trace.course_deg.reserve_exact(fixes);
    trace.height_msl_m.reserve_exact(fixes);
    trace.satellites.reserve_exact(fixes);
}

/// Drops fixes with times that no log can contain, such as receivers' default dates.
pub(crate) fn drop_impossible_times(reading: &mut Reading) {
    let range = f64::from(first_day()) * DAY_S..f64::from(last_day()) * DAY_S;
    if let Some((first_s, last_s)) = reading.rising_s()
        && range.contains(&first_s)
        && range.contains(&last_s)
    {
        return;
    }
    if reading.found.iter().all(|one| range.contains(&one.fix.time_s)) {
        return;
    }
    let Reading {
        found, more, ledger, ..
    } = reading;
    found.retain(|one| {
        let fits = range.contains(&one.fix.time_s);
        if !fits {
            drop_fix(one, SkipReason::OutOfRange, more, ledger);
        }
        fits
    });
}

/// Removes the bytes of a fix from the used ones.
fn drop_fix(one: &FoundFix, reason: SkipReason, more: &[crate::reading::More], ledger: &mut Ledger) {
    ledger.unused(one.start, one.end, reason, one.count);
    let mut next = one.more;
    while next != NO_MORE {
        let Some(piece) = more.get(next as usize) else {
            break;
        };
        ledger.unused(piece.start, piece.start + u64::from(piece.length), reason, 1);
        next = piece.next;
    }
}

fn sorted(found: Vec<FoundFix>, reading: &mut Reading) -> Vec<FoundFix> {
    let mut kept: Vec<FoundFix> = Vec::with_capacity(found.len());
    let (mut block, mut late) = (0_u32, 0);
    let mut from = 0;
    while from < found.len() {
        let segment = found[from].fix.segment;
        let to = found[from..]
            .iter()
            .position(|one| one.fix.segment != segment)
            .map_or(found.len(), |n| from + n);
        late += put_track(&found[from..to], &mut kept, &mut block, reading);
        block += 1;
        from = to;
    }
    if late > 0 {
        reading.notice(0, Said::LateFixes { fixes: late as u64 });
    }
    kept.sort_by(|a, b| a.fix.time_s.total_cmp(&b.fix.time_s));
    let Reading { more, ledger, .. } = reading;
    let mut out: Vec<FoundFix> = Vec::with_capacity(kept.len());
    for one in kept {
        match out.last_mut() {
            Some(last) if last.fix.time_s >= one.fix.time_s => {
                if better(&one, last) {
                    drop_fix(last, SkipReason::DuplicateTime, more, ledger);
                    *last = one;
                } else {
                    drop_fix(&one, SkipReason::DuplicateTime, more, ledger);
                }
            }
            _ => out.push(one),
        }
    }
    if interleaved(&out) {
        reading.notice(0, Said::TracksOverlap {});
    }
    out
}

fn better(one: &FoundFix, other: &FoundFix) -> bool {
    let (a, b) = (rank(one.fix.quality), rank(other.fix.quality));
    a > b || (a == b && one.fix.hdop < other.fix.hdop)
}

/// True if two tracks alternate in time order more often than there are tracks.
fn interleaved(found: &[FoundFix]) -> bool {
    let changes = found
        .windows(2)
        .filter(|pair| pair[0].fix.segment != pair[1].fix.segment)
        .count();
    let mut segments: Vec<u32> = found.iter().map(|one| one.fix.segment).collect();
    segments.sort_unstable();
    segments.dedup();
    changes + 1 > segments.len()
}

/// Passes on the fixes of one track, each block under its own number; returns how many were late.
fn put_track(track: &[FoundFix], kept: &mut Vec<FoundFix>, block: &mut u32, reading: &mut Reading) -> usize {
    let mut keep = |one: &FoundFix, block: u32| {
        let mut one = *one;
        one.fix.segment = block;
        kept.push(one);
    };
    if track
        .windows(2)
        .all(|pair| pair[0].fix.time_s <= pair[1].fix.time_s)
    {
        track.iter().for_each(|one| keep(one, *block));
        return 0;
    }
    let falling = track
        .windows(2)
        .filter(|pair| pair[1].fix.time_s < pair[0].fix.time_s)
        .count();
    let turned: Vec<FoundFix>;
    let mut track = track;
    if track.len() >= BLOCK && falling * 10 >= (track.len() - 1) * 9 {
        turned = track.iter().rev().copied().collect();
        track = &turned;
        reading.notice(0, Said::NewestFirst {});
    }
    let mut in_chain = longest_chain(track);
    let late = join_late(track, &mut in_chain);
    let main = *block;
    let mut index = 0;
    while index < track.len() {
        if in_chain[index] {
            keep(&track[index], main);
            index += 1;
            continue;
        }
        let mut end = index + 1;
        while end < track.len() && !in_chain[end] && track[end].fix.time_s >= track[end - 1].fix.time_s {
            end += 1;
        }
        if end - index >= BLOCK {
            *block += 1;
            track[index..end].iter().for_each(|one| keep(one, *block));
            reading.notice(0, Said::BlockOutOfOrder {});
        } else {
            let Reading { more, ledger, .. } = reading;
            track[index..end]
                .iter()
                .for_each(|one| drop_fix(one, SkipReason::TimeReversed, more, ledger));
        }
        index = end;
    }
    late
}

/// Marks late fixes that fill holes of the chain as parts of it, and counts them.
fn join_late(track: &[FoundFix], in_chain: &mut [bool]) -> usize {
    let mut order: Vec<usize> = (0..track.len()).collect();
    order.sort_by(|&a, &b| track[a].fix.time_s.total_cmp(&track[b].fix.time_s));
    let step_s = |a: usize, b: usize| track[b].fix.time_s - track[a].fix.time_s;
    let mut steps_s: Vec<f64> = order.windows(2).map(|pair| step_s(pair[0], pair[1])).collect();
    steps_s.retain(|&step_s| step_s > 0.0);
    if steps_s.is_empty() {
        return 0;
    }
    let middle = steps_s.len() / 2;
    let usual_s = *steps_s.select_nth_unstable_by(middle, f64::total_cmp).1;
    let fits = |a: usize, b: usize| HOLE_STEPS.contains(&(step_s(a, b) / usual_s));
    let (mut late, mut from) = (0, 0);
    while from < order.len() {
        if in_chain[order[from]] {
            from += 1;
            continue;
        }
        // Neighbours out of place fill a hole together or not at all.
        let length = order[from..]
            .iter()
            .take_while(|&&index| !in_chain[index])
            .count();
        let with_ends = &order[from.saturating_sub(1)..(from + length + 1).min(order.len())];
        if length < BLOCK && with_ends.windows(2).all(|pair| fits(pair[0], pair[1])) {
            order[from..from + length]
                .iter()
                .for_each(|&index| in_chain[index] = true);
            late += length;
        }
        from += length;
    }
    late
}

/// Marks a longest chain of fixes whose times do not decrease.
fn longest_chain(track: &[FoundFix]) -> Vec<bool> {
    let time = |index: usize| track[index].fix.time_s;
    let mut tails: Vec<usize> = Vec::new();
    let mut before: Vec<usize> = vec![usize::MAX; track.len()];
    for (index, previous) in before.iter_mut().enumerate() {
        let place = tails.partition_point(|&tail| time(tail) <= time(index));
        if place > 0 {
            *previous = tails[place - 1];
        }
        if place == tails.len() {
            tails.push(index);
        } else {
            tails[place] = index;
        }
    }
    let mut marks = vec![false; track.len()];
    let mut at = tails.last().copied().unwrap_or(usize::MAX);
    while at != usize::MAX {
        marks[at] = true;
        at = before[at];
    }
    marks
}

/// Shifts fixes that are 1024 weeks too early, if the log itself or a given date shows it.
///
/// GPS satellites send ten bits of the week number, so a receiver that resolves them wrongly is off by 7168 days
/// (IS-GPS-200). Evidence is a step of just that length (to within a day) from one fix to the next, or a given date that is
/// that far (to within a day) from the first fix. A date that merely looks old is no evidence: old logs are real.
pub(crate) fn repair_rollover(reading: &mut Reading, date: Option<time::Date>) {
    let rollover_s = f64::from(ROLLOVER_DAYS) * DAY_S;
    let is_rollover = |step_s: f64| (step_s.abs() - rollover_s).abs() <= DAY_S;
    let is_short = reading
        .rising_s()
        .is_some_and(|(first_s, last_s)| last_s - first_s < rollover_s - DAY_S);
    let step = (!is_short).then(|| {
        reading.found.windows(2).find_map(|pair| {
            let (a, b) = (pair[0].fix.time_s, pair[1].fix.time_s);
            is_rollover(b - a).then_some(a.max(b))
        })
    });
    let mut shifted = 0_u64;
    let mut shift_before = |limit_s: f64, found: &mut [FoundFix]| {
        for one in found.iter_mut().filter(|one| one.fix.time_s < limit_s) {
            one.fix.time_s += rollover_s;
            shifted += 1;
        }
    };
    if let Some(late_s) = step.flatten() {
        shift_before(late_s - rollover_s / 2.0, &mut reading.found);
    }
    if let (Some(first), Some(date)) = (reading.found.first(), date) {
        let given_s = f64::from(day_of(date)) * DAY_S;
        if is_rollover(given_s + DAY_S / 2.0 - first.fix.time_s) && given_s > first.fix.time_s {
            shift_before(given_s - rollover_s / 2.0, &mut reading.found);
        }
    }
    if shifted > 0 {
        reading.look_at_order();
        note_rollover(reading, shifted);
    }
}

/// Records that times were shifted by 1024 weeks.
pub(crate) fn note_rollover(reading: &mut Reading, shifted: u64) {
    let day = reading
        .found
        .first()
        .map_or(0, |one| (one.fix.time_s / DAY_S).floor() as i32);
    let said = Said::WeekRolloverRepaired {
        fixes: shifted,
        days: ROLLOVER_DAYS as u64,
        date: day_words(day),
    };
    reading.notice(0, said);
}
