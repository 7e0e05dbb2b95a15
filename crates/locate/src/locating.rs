//! The one call that finds a track.

use crate::anchor::{self, Anchored, chain};
use crate::turns::Setback;
use crate::{Halt, Kept, NoiseEstimate, PathMethod, Piece, Track, Vertex};
use crate::{
    carried, drift, halts, local_bias, noise, outlier_filter, path, segment, sparse_turns, straight,
};
use tussock_plane::Region;
use tussock_types::math;
use tussock_types::{Place, Settings, Trace};

/// Between fixes further apart than this a mower turns too often to be followed: turns are put back, or left out.
pub const SPARSE_PERIOD_S: f64 = 4.0;

/// Fixes closer than this are averaged to about one a second before legs are told apart: within a second nothing
/// happens that a swath would notice.
const BLOCK_S: f64 = 0.9;

/// Where half of the time is driven in legs shorter than this, the machine does not drive straight, or not at a steady
/// speed.
const STRAIGHT_LEG_S: f64 = 6.0;

/// Length of leg that parts the driving time in halves; `None` without legs. Sorts.
fn half_time_leg_s(legs_s: &mut [f64]) -> Option<f64> {
    legs_s.sort_by(f64::total_cmp);
    let half_s = 0.5 * legs_s.iter().sum::<f64>();
    let mut seen_s = 0.0;
    legs_s.iter().copied().find(|leg_s| {
        seen_s += leg_s;
        seen_s >= half_s
    })
}

/// White part where sparse fixes show none: between centimetre and decimetre logs (common practice, no source).
const SPARSE_WHITE_M: f64 = 0.05;
/// Rests of sparse logs: white part that the box is made for, and least time.
const SPARSE_REST_WHITE_M: f64 = 0.5;
const SPARSE_REST_S: f64 = 600.0;

/// Halts within this radius are standing, wheels spinning at most.
const STANDING_RADIUS_M: f64 = 0.25;

/// From this error on a swath's width is no longer large against it, and more than the fixes is needed.
const POOR_WHITE_M: f64 = 0.03;
const POOR_DRIFT_M: f64 = 0.06;
fn is_poor(noise: &NoiseEstimate) -> bool {
    noise.white_m > POOR_WHITE_M || noise.drift_m.is_some_and(|drift_m| drift_m > POOR_DRIFT_M)
}

/// Legs and halts are told apart anew when the drift turns out to walk faster or slower than this.
const RATE_MATTERS: f64 = 1.3;
/// And when the machine drives faster or slower than this.
const PACE_MATTERS: f64 = 1.04;

/// Legs and halts of every run.
fn segmented(kept: &Kept, noise: &NoiseEstimate, speed_mps: f64) -> Vec<(path::Blocks, Vec<segment::Part>)> {
    kept.runs()
        .into_iter()
        .map(|run| {
            let blocks = path::blocks(kept, run, BLOCK_S);
            let law = segment::StepLaw::new(noise, speed_mps, path::median_step_s(&blocks));
            let parts = segment::segment(&blocks, &law);
            (blocks, parts)
        })
        .collect()
}

/// Takes the noise model from the stands that were found, where they last long enough.
fn refine(noise: &mut NoiseEstimate, runs: &[(path::Blocks, Vec<segment::Part>)]) {
    /// Ends are cut: the machine may still be rolling into place.
    const END_CUT_S: f64 = 30.0;
    /// Of one stand alone the slow part comes out too small by so much.
    const ONE_STAND: f64 = 1.2;
    let mut stands = Vec::new();
    for (blocks, parts) in runs {
        for part in parts {
            let (start_s, end_s) = (blocks.time_s[part.first], blocks.time_s[part.last]);
            if part.kind != segment::PartKind::Halt || end_s - start_s < 6.0 * END_CUT_S {
                continue;
            }
            let first = blocks
                .time_s
                .partition_point(|time_s| *time_s < start_s + END_CUT_S);
            let end = blocks
                .time_s
                .partition_point(|time_s| *time_s <= end_s - END_CUT_S);
            if (first..end).any(|index| blocks.error_factor_at(index) > 1.0) {
                continue;
            }
            stands.push(drift::Stand {
                fixes: path::Blocks {
                    time_s: blocks.time_s[first..end].to_vec(),
                    east_m: blocks.east_m[first..end].to_vec(),
                    north_m: blocks.north_m[first..end].to_vec(),
                    ..path::Blocks::default()
                },
                place: 0,
            });
        }
    }
    drift::same_place(&mut stands);
    let Some(fit) = drift::fit(&stands) else {
        return;
    };
    noise.drift_rate_m2_per_s = fit.rate_m2_per_s();
    noise.drift_m = Some(if stands.len() == 1 {
        ONE_STAND * fit.drift_m
    } else {
        fit.drift_m
    });
    noise.drift_time_s = Some(fit.drift_time_s);
    // A stand that is far smoother than the drive was filtered by the receiver.
    if fit.white_m > 0.5 * noise.white_m && fit.white_m < 1.5 * noise.white_m {
        noise.white_m = fit.white_m;
    }
    noise.source = tussock_types::NoiseSource::StationScatter;
}

/// Corners as unbroken pieces, one for each drive.
pub(crate) fn pieces_of(chain: &chain::Chain, corners: &[Place]) -> Vec<Piece> {
    let mut pieces: Vec<Piece> = Vec::new();
    let mut drive = None;
    for (corner, place) in chain.corners.iter().zip(corners) {
        if drive != Some(corner.drive) {
            drive = Some(corner.drive);
            pieces.push(Piece::default());
        }
        if let Some(piece) = pieces.last_mut() {
            piece.vertices.push(Vertex {
                place: *place,
                arrive_s: corner.arrive_s,
                leave_s: corner.leave_s,
            });
        }
    }
    in_order(&mut pieces);
    pieces
}

/// Lets no corner begin before the one before it ended: two that are timed apart may cross by some hundredths of a second
/// where legs are shorter than their timing is exact.
fn in_order(pieces: &mut [Piece]) {
    let mut now_s = f64::NEG_INFINITY;
    for vertex in pieces.iter_mut().flat_map(|piece| &mut piece.vertices) {
        vertex.arrive_s = vertex.arrive_s.max(now_s);
        vertex.leave_s = vertex.leave_s.max(vertex.arrive_s);
        now_s = vertex.leave_s;
    }
}

/// The fixes moved to where the path says that they were made.
fn on_the_path(kept: &Kept, pieces: &[Piece]) -> Kept {
    let mut moved = kept.clone();
    let mut vertices = pieces.iter().flat_map(|piece| &piece.vertices).peekable();
    let mut last: Option<&Vertex> = None;
    for index in 0..kept.len() {
        let time_s = kept.time_s[index];
        while let Some(vertex) = vertices.next_if(|vertex| vertex.arrive_s <= time_s) {
            last = Some(vertex);
        }
        let place = match (last, vertices.peek()) {
            (Some(from), Some(to)) if time_s > from.leave_s && to.arrive_s > from.leave_s => {
                let share = (time_s - from.leave_s) / (to.arrive_s - from.leave_s);
                Place::new(
                    from.place.east_m + share * (to.place.east_m - from.place.east_m),
                    from.place.north_m + share * (to.place.north_m - from.place.north_m),
                )
            }
            (Some(only), _) => only.place,
            (None, Some(next)) => next.place,
            (None, None) => continue,
        };
        (moved.east_m[index], moved.north_m[index]) = (place.east_m, place.north_m);
    }
    moved
}

/// Finds the path behind drives whose positions are poor.
fn anchor_drives(
    drives: Vec<chain::Drive>,
    noise: &NoiseEstimate,
    speed_mps: f64,
    ground: Option<&Region>,
    station: Option<Place>,
    settings: &Settings,
) -> Anchored {
    let drift_rate_m2_per_s = noise.drift_rate_m2_per_s;
    let drift_m = noise.drift_m.unwrap_or(0.0).max(1e-3);
    let build = chain::Build {
        white_m: noise.white_m,
        drift_rate_m2_per_s,
        leg_block_s: (noise.white_m / drift_rate_m2_per_s.sqrt()).clamp(0.9, 6.0),
        stand_block_s: 20.0,
        lost_sd_m: 10.0,
    };
    let setback = Setback::expected(&settings.machine);
    let known = anchor::Known {
        white_m: noise.white_m,
        drift_m,
        drift_time_s: noise
            .drift_time_s
            .unwrap_or(2.0 * drift_m * drift_m / drift_rate_m2_per_s)
            .clamp(20.0, 7200.0),
        speed_mps,
        speed_scatter_fraction: 0.01,
        ground,
        station,
        inset_m: (setback.inside_m, setback.sd_m),
    };
    anchor::anchor(drives, &build, &known)
}

/// Finds the path behind a trace.
///
/// `east_m` and `north_m` are the places of the trace's fixes on the plane, `station` the one in the plan, `ground` where
/// the plan lets the machine drive: within the boundary (else the lawn as drawn), outside zones and obstacles.
/// Never panics; an empty or resting trace gives a track without legs.
///
/// # Panics
/// When the columns differ in length.
pub fn locate(
    trace: &Trace,
    east_m: &[f64],
    north_m: &[f64],
    station: Option<Place>,
    ground: Option<&Region>,
    settings: &Settings,
) -> Track {
    locate_as(trace, east_m, north_m, station, ground, settings, Hold::WherePoor)
}

/// When positions are held by speed, corners, station and edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hold {
    /// Where their error is not small against a swath.
    WherePoor,
    /// Always, to see how the plan lies in the log.
    Always,
}

/// The same, saying when positions are held.
///
/// # Panics
/// When the columns differ in length.
pub fn locate_as(
    trace: &Trace,
    east_m: &[f64],
    north_m: &[f64],
    station: Option<Place>,
    ground: Option<&Region>,
    settings: &Settings,
    hold: Hold,
) -> Track {
    let track = locate_once(trace, east_m, north_m, station, ground, settings, hold);
    let found = match (track.method, track.speed_mps) {
        (PathMethod::Legs | PathMethod::Anchored, Some(speed_mps))
            if track
                .noise
                .drift_m
                .is_none_or(|drift_m| drift_m <= local_bias::MOST_DRIFT_M) =>
        {
            local_bias::find(&track.kept, &track.pieces, track.noise.white_m, speed_mps)
        }
        _ => None,
    };
    let Some(found) = found else { return track };
    let (logged_east_m, logged_north_m) = (east_m, north_m);
    let straightened: Vec<Place> = east_m
        .iter()
        .zip(north_m)
        .map(|(east_m, north_m)| found.straightened(Place::new(*east_m, *north_m)))
        .collect();
    let east_m: Vec<f64> = straightened.iter().map(|place| place.east_m).collect();
    let north_m: Vec<f64> = straightened.iter().map(|place| place.north_m).collect();
    let mut better = locate_once(trace, &east_m, &north_m, station, ground, settings, hold);
    // Straightened positions that a machine cannot have driven are none.
    if better.gated_jumps > track.gated_jumps {
        return track;
    }
    as_logged(&mut better.kept, trace, logged_east_m, logged_north_m);
    better.bent = Some(found);
    better
}

/// Puts the fixes back to where they were logged; both are in time order.
fn as_logged(kept: &mut Kept, trace: &Trace, east_m: &[f64], north_m: &[f64]) {
    let mut at = 0;
    for index in 0..kept.len() {
        // Fixes without a time were not kept.
        while at < trace.len() && !(trace.time_s[at] >= kept.time_s[index]) {
            at += 1;
        }
        if trace.time_s.get(at) == Some(&kept.time_s[index]) {
            (kept.east_m[index], kept.north_m[index]) = (east_m[at], north_m[at]);
        }
    }
}

/// The same with positions as they are.
fn locate_once(
    trace: &Trace,
    east_m: &[f64],
    north_m: &[f64],
    station: Option<Place>,
    ground: Option<&Region>,
    settings: &Settings,
    hold: Hold,
) -> Track {
    let is_held = |noise: &NoiseEstimate| hold == Hold::Always || is_poor(noise);
    assert!(
        east_m.len() == trace.len() && north_m.len() == trace.len(),
        "columns of a trace differ in length"
    );
    let gated = outlier_filter::gate(trace, east_m, north_m, &settings.positions);
    let kept = gated.kept;
    let period_s = noise::usual_period_s(&kept);
    let mut rough = noise::roughness(&kept, period_s);
    // Between sparse fixes the machine turns: second differences say nothing of the error.
    let is_sparse = period_s > SPARSE_PERIOD_S;
    let straight_white_m = is_sparse.then(|| sparse_turns::white_m(&kept)).flatten();
    if is_sparse {
        rough.white_m = straight_white_m.unwrap_or(rough.white_m.min(SPARSE_WHITE_M));
    }
    let speed_mps = settings
        .machine
        .speed_mps
        .or_else(|| noise::usual_speed_mps(&kept, rough.white_m, 0.0));
    let claims = noise::Claims::of(trace);
    // Sparse or poor, nothing but a long stay keeps within a few metres.
    let long_rests = is_sparse
        .then(|| halts::rests(&kept, rough.white_m.max(SPARSE_REST_WHITE_M), SPARSE_REST_S))
        .filter(|rests| !rests.is_empty());
    let rests = long_rests.unwrap_or_else(|| halts::rests(&kept, rough.white_m, 60.0));
    if is_sparse && straight_white_m.is_none() {
        // What standing time shows is not to be measured by a guess.
        rough.white_m = noise::LEAST_WHITE_M;
    }
    let mut noise = noise::estimate(&kept, &rests, rough, period_s, speed_mps, &claims);
    if let (Some(white_m), true) = (
        straight_white_m,
        noise.source != tussock_types::NoiseSource::StationScatter,
    ) {
        noise.drift_rate_m2_per_s *= (white_m / noise.white_m).powi(2);
        noise.white_m = white_m;
        noise.source = tussock_types::NoiseSource::DrivingRoughness;
    }

    let span_s = kept.time_s.first().copied().zip(kept.time_s.last().copied());
    let usual_mps = settings
        .machine
        .speed_mps
        .or_else(|| noise::usual_speed_mps(&kept, noise.white_m, noise.drift_rate_m2_per_s))
        .or(speed_mps);
    let (kept, carried) = carried::lift_out(kept, &noise, usual_mps, ground);
    let is_whole = carried.is_empty();
    let found_speed_mps = |noise: &NoiseEstimate| {
        settings
            .machine
            .speed_mps
            .or_else(|| noise::usual_speed_mps(&kept, noise.white_m, noise.drift_rate_m2_per_s))
    };
    let mut speed_mps = if is_whole {
        usual_mps
    } else {
        found_speed_mps(&noise).or(speed_mps)
    };
    let mut method = match speed_mps {
        Some(_) if period_s > SPARSE_PERIOD_S => PathMethod::Chords,
        Some(_) => PathMethod::Legs,
        None => PathMethod::Chords,
    };
    let turns = ground.filter(|_| is_sparse).and_then(|ground| {
        let how = sparse_turns::estimate(&kept, ground, &noise, settings.machine.speed_mps)?;
        sparse_turns::Outline::of(ground, how.inset_m).map(|outline| (how, outline))
    });
    if turns.is_some() {
        method = PathMethod::Rebuilt;
    }
    let mut pieces = Vec::new();
    let mut drives = Vec::new();
    let mut allowed_drift_m = None;
    if let (PathMethod::Legs, Some(first_mps)) = (method, speed_mps) {
        let mut runs = segmented(&kept, &noise, first_mps);
        let first_noise = noise;
        refine(&mut noise, &runs);
        let rate = noise.drift_rate_m2_per_s / first_noise.drift_rate_m2_per_s;
        let better_mps = is_held(&noise)
            .then(|| found_speed_mps(&noise))
            .flatten()
            .unwrap_or(first_mps);
        let pace = better_mps / first_mps;
        if is_held(&noise)
            && (!(1.0 / RATE_MATTERS..RATE_MATTERS).contains(&rate)
                || !(1.0 / PACE_MATTERS..PACE_MATTERS).contains(&pace))
        {
            runs = segmented(&kept, &noise, better_mps);
            speed_mps = Some(better_mps);
        }
        let speed_mps = speed_mps.unwrap_or(first_mps);
        allowed_drift_m = straight::allowed_drift_m(&runs);
        let mut legs_s = Vec::new();
        for (blocks, parts) in runs {
            legs_s.extend(
                parts
                    .iter()
                    .filter(|part| part.kind == segment::PartKind::Leg)
                    .map(|part| blocks.time_s[part.last] - blocks.time_s[part.first]),
            );
            if is_held(&noise) {
                let timing_s = math::hypot(0.3_f64, 0.7 * noise.white_m / speed_mps);
                drives.push(chain::Drive::new(blocks, &parts, timing_s));
            } else {
                pieces.push(path::from_parts(&blocks, &parts, &noise));
            }
        }
        if half_time_leg_s(&mut legs_s).is_some_and(|leg_s| leg_s < STRAIGHT_LEG_S) {
            method = PathMethod::Smoothed;
        } else if is_held(&noise) {
            method = PathMethod::Anchored;
        }
    }
    let mut anchored = None;
    let mut halts_found = halts::long_halts(&kept, &noise, settings.pockets.stuck_after_s.min(60.0));
    let mut stands_noise = noise;
    if let (PathMethod::Anchored, Some(speed_mps)) = (method, speed_mps) {
        let found = anchor_drives(drives, &noise, speed_mps, ground, station, settings);
        pieces = pieces_of(&found.chain, &found.corners);
        // Standing is told from the path, which wanders less than the fixes.
        let sd_m = found.usual_corner_sd_m();
        stands_noise = NoiseEstimate {
            white_m: 0.02 + 0.1 * sd_m,
            drift_m: Some(sd_m),
            drift_rate_m2_per_s: 1e-6,
            drift_time_s: None,
            source: noise.source,
        };
        let moved = on_the_path(&kept, &pieces);
        halts_found = halts::long_halts(&moved, &stands_noise, settings.pockets.stuck_after_s.min(60.0));
        anchored = Some(Box::new(found));
    } else if method != PathMethod::Legs {
        pieces = kept
            .runs()
            .into_iter()
            .map(|run| match (method, speed_mps) {
                (PathMethod::Smoothed, Some(speed_mps)) => path::smoothed(&kept, run, &noise, speed_mps),
                (PathMethod::Rebuilt, _) => match &turns {
                    Some((how, outline)) => sparse_turns::rebuild(&kept, run, outline, &halts_found, how),
                    None => path::chords(&kept, run, &halts_found),
                },
                _ => path::chords(&kept, run, &halts_found),
            })
            .collect();
    }
    if matches!(method, PathMethod::Legs | PathMethod::Smoothed) {
        // A wider halt is driving to and fro in a corner: that ground was swept.
        let standing: Vec<Halt> = halts_found
            .iter()
            .copied()
            .filter(|halt| {
                halt.radius_m <= STANDING_RADIUS_M + 4.0 * noise.white_m + noise.drift_m.unwrap_or(0.0)
            })
            .collect();
        pieces
            .iter_mut()
            .for_each(|piece| path::collapse_halts(piece, &standing, &noise));
    }
    in_order(&mut pieces);
    let (halts, station, outings) =
        halts::at_station(halts_found, station, &stands_noise, &kept, &gated.steps);
    Track {
        machine: trace.machine.clone(),
        pieces: pieces
            .into_iter()
            .filter(|piece| !piece.vertices.is_empty())
            .collect(),
        halts,
        gaps: gated.gaps,
        steps: gated.steps,
        carried,
        method,
        noise,
        reckoned_drift: noise::reckoned_drift(
            noise.drift_m,
            settings.positions.drift_m,
            allowed_drift_m,
            &claims,
        ),
        period_s,
        speed_mps,
        fixes_used: kept.len(),
        gated_quality: gated.quality,
        gated_jumps: gated.jumps,
        station,
        outings,
        span_s,
        read_s: gated.read_s,
        kept,
        anchored,
        bent: None,
    }
}
