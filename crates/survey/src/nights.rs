//! Each night separately: hours by activity, what it visited alone, and how much of the lawn was filled by its end.

use crate::Survey;
use crate::coverage_count::CoverageCount;
use crate::log_findings::rfc3339;
use crate::sun;
use std::collections::VecDeque;
use tussock_coverage::swath;
use tussock_locate::activities::{self, Activity, Spell};
use tussock_plane::BitGrid;
use tussock_types::{ActivityHours, DarkHours, GardenClock, GeoPoint, Night};

const DAY_S: f64 = 86_400.0;
/// A clock that is earlier than 2000-01-01 was never set: it knows no night.
const CLOCKS_SET_UNIX_S: f64 = 946_684_800.0;
/// The day turns where least was driven, on a clock of so many steps.
const STEPS: usize = 96;

/// Nights, and what runs of nights visited by themselves.
#[derive(Clone, Debug, Default)]
pub struct Nights {
    /// One for each night.
    pub nights: Vec<Night>,
    /// Visited fraction of each run of as many consecutive nights as the promise has days; empty for shorter logs, and
    /// without a cutting width.
    pub stretches_fraction: Vec<f64>,
}

/// Nights (or days) of a log. A day turns at the time of day at which the machine drives least.
pub fn nights(survey: &Survey<'_>, counted: Option<&CoverageCount>) -> Nights {
    let (settings, sweeps, cut_width_m) = (survey.settings(), survey.sweeps(), survey.swath_m());
    let (first_s, last_s) = survey.span_s();
    if !(last_s > first_s) {
        return Nights::default();
    }
    let guides = survey.guides();
    let spells: Vec<Spell> = survey
        .tracks
        .iter()
        .flat_map(|track| activities::spells(track, survey.lines(&guides)))
        .collect();
    // Summer time that begins or ends within a log moves its days by an hour, which is less than the gap between two drives.
    let zone_s = f64::from(GardenClock::of(settings.garden.time_zone.as_deref()).offset_s(first_s));
    let turn_s = quietest_s(&spells, zone_s);
    // Spans between two turns of the day that hold any drive.
    let day_of = |time_s: f64| ((time_s + zone_s - turn_s) / DAY_S).floor();
    let from_day = day_of(first_s);
    let days = (day_of(last_s) - from_day) as usize + 1;
    let mut nights: Vec<Night> = Vec::new();
    let stretch = settings.promise.days.ceil().clamp(1.0, 366.0) as usize;
    let mut latest: VecDeque<BitGrid> = VecDeque::new();
    let mut stretches = Vec::new();
    let mut so_far = counted.map(|counted| BitGrid::new(counted.count.grid));
    for day in 0..days.min(3660) {
        let start_s = (from_day + day as f64) * DAY_S - zone_s + turn_s;
        let end_s = start_s + DAY_S;
        let within = |from_s: f64, to_s: f64| (from_s.max(start_s), to_s.min(end_s));
        let mut hours = ActivityHours::default();
        let (mut out_s, mut back_s) = (f64::INFINITY, f64::NEG_INFINITY);
        for spell in &spells {
            let (from_s, to_s) = within(spell.start_s, spell.end_s);
            if to_s <= from_s {
                continue;
            }
            let spent_h = (to_s - from_s) / 3600.0;
            *match spell.activity {
                Activity::AtStation => &mut hours.at_station_h,
                Activity::Driving => &mut hours.driving_h,
                Activity::Transit => &mut hours.transit_h,
                Activity::Turning => &mut hours.turning_h,
                Activity::Reversing => &mut hours.reversing_h,
                Activity::Halted => &mut hours.halted_h,
                Activity::Carried => &mut hours.carried_h,
                Activity::Silent => &mut hours.silent_h,
            } += spent_h;
            if spell.activity.is_drive() {
                out_s = out_s.min(from_s);
                back_s = back_s.max(to_s);
            }
        }
        if !(back_s > out_s) {
            continue;
        }
        let (mut alone, mut upto) = (None, None);
        if let (Some(counted), Some(so_far)) = (counted, so_far.as_mut()) {
            let lawn = &counted.count.lawn;
            let cells = (lawn.count() as f64).max(1.0);
            let mut mask = BitGrid::new(lawn.grid);
            let mine = sweeps
                .iter()
                .filter(|sweep| sweep.start_s < end_s && sweep.end_s > start_s)
                .map(|sweep| (sweep.from, sweep.to));
            swath::mark(&mut mask, mine, 0.5 * cut_width_m);
            mask.and_in_place(lawn);
            so_far.or_in_place(&mask);
            alone = Some(mask.count() as f64 / cells);
            upto = Some(so_far.count() as f64 / cells);
            latest.push_back(mask);
            if latest.len() > stretch {
                latest.pop_front();
            }
            if latest.len() == stretch {
                let mut all = BitGrid::new(lawn.grid);
                latest.iter().for_each(|one| all.or_in_place(one));
                stretches.push(all.count() as f64 / cells);
            }
        }
        let place = survey.frame.map(|frame| frame.origin());
        nights.push(Night {
            dark: place.and_then(|place| dark(&spells, place, start_s, end_s)),
            date: date(out_s + zone_s),
            start_s: out_s - first_s,
            end_s: back_s - first_s,
            hours,
            visited_fraction: alone,
            visited_so_far_fraction: upto,
        });
    }
    Nights {
        nights,
        stretches_fraction: stretches,
    }
}

/// What of the drives between two moments fell in the dark; `None` where the clock was never set.
fn dark(spells: &[Spell], place: GeoPoint, start_s: f64, end_s: f64) -> Option<DarkHours> {
    if start_s < CLOCKS_SET_UNIX_S {
        return None;
    }
    let sun = sun::crossings(place, sun::HORIZON_DEG, start_s, end_s);
    let civil = sun::crossings(place, sun::CIVIL_DEG, start_s, end_s);
    let drives = spells.iter().filter(|spell| spell.activity.is_drive());
    let of_both_s =
        |spell: &Spell, &(from_s, to_s): &(f64, f64)| spell.end_s.min(to_s) - spell.start_s.max(from_s);
    let dark_s = |spell: &Spell| {
        civil
            .below_s
            .iter()
            .map(|dark| of_both_s(spell, dark).max(0.0))
            .sum::<f64>()
    };
    let driven_s: f64 = drives.map(dark_s).sum();
    Some(DarkHours {
        driven_h: driven_s / 3600.0,
        sunset: sun.sets_s.and_then(rfc3339),
        dusk: civil.sets_s.and_then(rfc3339),
        dawn: civil.rises_s.and_then(rfc3339),
        sunrise: sun.rises_s.and_then(rfc3339),
    })
}

/// Time of day at which least is driven, in the middle of the longest such time.
fn quietest_s(spells: &[Spell], zone_s: f64) -> f64 {
    let step_s = DAY_S / STEPS as f64;
    let mut driven_s = [0.0_f64; STEPS];
    for spell in spells.iter().filter(|spell| spell.activity.is_drive()) {
        let mut at_s = spell.start_s;
        while at_s < spell.end_s {
            let of_day_s = (at_s + zone_s).rem_euclid(DAY_S);
            let step = ((of_day_s / step_s) as usize).min(STEPS - 1);
            let next_s = (at_s + step_s - of_day_s % step_s).min(spell.end_s);
            driven_s[step] += next_s - at_s;
            at_s = next_s.max(at_s + 1e-3);
        }
    }
    let least_s = driven_s.iter().copied().fold(f64::INFINITY, f64::min);
    let is_quiet = |step: usize| driven_s[step % STEPS] <= least_s + 1.0;
    let (mut best, mut longest) = (0, 0);
    for from in 0..STEPS {
        if !is_quiet(from) {
            continue;
        }
        let run = (0..STEPS).take_while(|more| is_quiet(from + more)).count();
        if run > longest {
            (best, longest) = (from, run);
        }
    }
    ((best as f64 + 0.5 * longest as f64) * step_s).rem_euclid(DAY_S)
}

fn date(local_unix_s: f64) -> Option<String> {
    let time = time::OffsetDateTime::from_unix_timestamp(local_unix_s.floor() as i64).ok()?;
    Some(time.date().to_string())
}
