//! The one call that finds a track.

use crate::anchor::{self, Anchored, chain};
use crate::turns::Setback;
use crate::{Halt, Kept, NoiseEstimate, PathMethod, Piece, ReceiverLaw, Track, Vertex};
use crate::{
    blocks, carried, drift, halts, local_bias, noise, outlier_filter, parts, path, receiver, segment,
    sparse_turns, stays, stepped, straight,
};
use tussock_plane::Region;
use tussock_types::math;
use tussock_types::{NoiseSource, Place, Settings, Trace};

/// If fixes are further apart than this, a mower turns too often to be followed: turns are put back, or left out.
pub const SPARSE_PERIOD_S: f64 = 4.0;

/// If half of the time is driven in legs shorter than this, the machine does not drive straight, or not at a steady speed.
const STRAIGHT_LEG_S: f64 = 6.0;

/// The leg length that divides the driving time into halves; `None` without legs. Sorts.
fn half_time_leg_s(legs_s: &mut [f64]) -> Option<f64> {
    legs_s.sort_by(f64::total_cmp);
    let half_s = 0.5 * legs_s.iter().sum::<f64>();
    let mut seen_s = 0.0;
    legs_s.iter().copied().find(|leg_s| {
        seen_s += leg_s;
        seen_s >= half_s
    })
}

/// White part if sparse fixes show none: between centimetre and decimetre logs (common practice, no source).
const SPARSE_WHITE_M: f64 = 0.05;
/// Rests of sparse logs: the white part that the box is designed for, and their least duration.
const SPARSE_REST_WHITE_M: f64 = 0.5;
const SPARSE_REST_S: f64 = 600.0;

/// Halts within this radius are standing, or spinning wheels at most.
const STANDING_RADIUS_M: f64 = 0.25;

/// From this error on, the width of a swath is no longer large compared with it, and fixes alone are not enough.
const POOR_WHITE_M: f64 = 0.03;
const POOR_DRIFT_M: f64 = 0.06;
fn is_poor(noise: &NoiseEstimate) -> bool {
    noise.white_m > POOR_WHITE_M || noise.drift_m.is_some_and(|drift_m| drift_m > POOR_DRIFT_M)
}

/// Nobody carries a machine faster than this (common practice, no source).
const JOG_MPS: f64 = 2.0;
/// Legs and halts are separated again if the rate of the drift turns out to differ by this factor.
const RATE_MATTERS: f64 = 1.3;
/// The same for the driving speed.
const PACE_MATTERS: f64 = 1.04;

/// Legs and halts of every run.
fn segmented(
    kept: &Kept,
    noise: &NoiseEstimate,
    speed_mps: f64,
) -> Vec<(blocks::Blocks, Vec<segment::Part>)> {
    kept.runs()
        .into_iter()
        .map(|run| {
            let blocks = blocks::blocks(kept, run, blocks::BLOCK_S);
            let law = segment::StepLaw::new(noise, speed_mps, blocks::median_step_s(&blocks));
            let parts = segment::segment(&blocks, &law);
            (blocks, parts)
        })
        .collect()
}

/// Takes the noise model from the stands that were found, if they last long enough.
fn refine(noise: &mut NoiseEstimate, runs: &[(blocks::Blocks, Vec<segment::Part>)]) {
    /// The ends are cut off: the machine may still be rolling into place.
    const END_CUT_S: f64 = 30.0;
    /// From a single stand the slow part comes out too small by this factor.
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
                fixes: blocks::Blocks {
                    time_s: blocks.time_s[first..end].to_vec(),
                    east_m: blocks.east_m[first..end].to_vec(),
                    north_m: blocks.north_m[first..end].to_vec(),
                    ..blocks::Blocks::default()
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
    noise.source = NoiseSource::StationScatter;
}

/// The fixes moved to where they were made according to the path.
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
                from.place.towards(to.place, share)
            }
            (Some(only), _) => only.place,
            (None, Some(next)) => next.place,
            (None, None) => continue,
        };
        (moved.east_m[index], moved.north_m[index]) = (place.east_m, place.north_m);
    }
    moved
}

/// Finds the path of drives with poor positions.
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
/// `east_m` and `north_m` are the places of the trace's fixes on the plane.
/// Data never makes it panic; an empty or resting trace gives a track without legs.
///
/// # Panics
/// When the columns differ in length.
pub fn locate(trace: &Trace, east_m: &[f64], north_m: &[f64], known: Surroundings<'_>) -> Track {
    let once = |east_m: &[f64], north_m: &[f64]| locate_once(trace, east_m, north_m, known);
    let (mut track, moved) = stepped::located(
        once,
        &trace.time_s,
        (east_m, north_m),
        known.ground,
        known.settings,
    );
    let (steady_east_m, steady_north_m) = match &moved {
        Some((east_m, north_m)) => (east_m.as_slice(), north_m.as_slice()),
        None => (east_m, north_m),
    };
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
    if let Some(found) = found {
        let places = steady_east_m.iter().zip(steady_north_m);
        let straightened = places.map(|(east_m, north_m)| found.straightened(Place::new(*east_m, *north_m)));
        let (bent_east_m, bent_north_m): (Vec<f64>, Vec<f64>) =
            straightened.map(|place| (place.east_m, place.north_m)).unzip();
        let better = once(&bent_east_m, &bent_north_m);
        // Straightened positions that a machine cannot have driven are not used.
        if better.gated_jumps <= track.gated_jumps {
            track = Track {
                bent: Some(found),
                steps: track.steps,
                ..better
            };
        }
    }
    if moved.is_some() || track.bent.is_some() {
        as_logged(&mut track.kept, trace, east_m, north_m);
    }
    track
}

/// Moves the fixes back to where they were logged; both are in time order.
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

/// The same with positions as they are: outlier filter, error law, carried stretches, path, stands.
fn locate_once(trace: &Trace, east_m: &[f64], north_m: &[f64], known: Surroundings<'_>) -> Track {
    let Surroundings {
        station,
        settings,
        receiver,
        ..
    } = known;
    assert!(
        east_m.len() == trace.len() && north_m.len() == trace.len(),
        "columns of a trace differ in length"
    );
    let claims = noise::Claims::of(trace);
    let expected_drift_m = noise::expected_drift_m(receiver.map(|law| law.drift_m), &claims);
    let gate = |max_speed_mps| {
        let positions = &settings.positions;
        outlier_filter::gate(trace, east_m, north_m, positions, expected_drift_m, max_speed_mps)
    };
    let mut gated = gate(settings.positions.max_speed_mps);
    let mut pace = Pace::of(&gated.kept, known, &claims);
    // If the driving speed is known, smaller jumps show. A machine carried by hand moves a step per second.
    let fastest_mps = pace
        .speed_mps
        .map(|speed_mps| (carried::FASTER * speed_mps).max(JOG_MPS));
    if let Some(fastest_mps) = fastest_mps.filter(|mps| *mps < settings.positions.max_speed_mps) {
        let closer = gate(fastest_mps);
        if closer.jumps == gated.jumps && closer.steps.len() > gated.steps.len() {
            gated = closer;
            pace = Pace::of(&gated.kept, known, &claims);
        }
    }
    let span_s = (gated.kept.time_s.first().copied()).zip(gated.kept.time_s.last().copied());
    let stood = pace.period_s <= SPARSE_PERIOD_S && stays::stood_throughout(&gated.kept);
    let is_followed = !stood && pace.period_s <= SPARSE_PERIOD_S && pace.speed_mps.is_some();
    let stays = match is_followed {
        true => stays::stays(&gated.kept),
        false => Vec::new(),
    };
    let by_card = || {
        let law = receiver.filter(|_| is_followed)?.smooth?;
        stays::Smoothing::known(&gated.kept, &stays, law)
    };
    let shown = match stood {
        true => stays::Smoothing::of_standing(&gated.kept, pace.period_s),
        false => stays::Smoothing::of(&gated.kept, &stays, pace.period_s).or_else(by_card),
    };
    let (kept, carried, mut found, smoothing) = if stood {
        let found = Found::of_standing(&gated.kept, &pace);
        (gated.kept, Vec::new(), found, shown)
    } else {
        followed(gated.kept, &pace, shown, known)
    };
    match &smoothing {
        Some(smoothing) => found.stands_as(&kept, smoothing),
        None if is_poor(&found.noise) => found.halts = stays::of_one_stay(found.halts, &stays),
        None => {}
    }
    let (halts, station, outings) =
        halts::at_station(found.halts, station, &found.stands_noise, &kept, &gated.steps);
    Track {
        machine: trace.machine.clone(),
        pieces: found.pieces,
        halts,
        smooths: smoothing.is_some(),
        stays: smoothing.map_or_else(Vec::new, |smoothing| smoothing.stays),
        gaps: gated.gaps,
        steps: gated.steps,
        carried,
        method: found.method,
        noise: found.noise,
        reckoned_drift: noise::reckoned_drift(&found.noise, found.allowed_drift_m, &claims),
        period_s: pace.period_s,
        speed_mps: found.speed_mps,
        fixes_used: kept.len(),
        gated_quality: gated.quality,
        gated_jumps: gated.jumps,
        station,
        outings,
        span_s,
        read_s: gated.read_s,
        kept,
        anchored: found.anchored,
        bent: None,
    }
}

/// The path of a machine that drives. An error that is over within seconds is taken for such where nothing else lays the turns along the
/// edges of the ground.
fn followed(
    kept: Kept,
    pace: &Pace,
    shown: Option<stays::Smoothing>,
    known: Surroundings<'_>,
) -> (Kept, Vec<carried::Carried>, Found, Option<stays::Smoothing>) {
    let is_fast = shown
        .as_ref()
        .is_some_and(|shown| shown.path_noise(&pace.noise).is_some());
    let spare = is_fast.then(|| kept.clone());
    let smooths = shown.clone().filter(|shown| shown.smooths());
    let (ordinary, carried, found) = followed_under(kept, pace, pace.noise, smooths.as_ref(), known);
    match spare {
        Some(spare) if !found.is_held() => {
            let path_noise = shown.as_ref().and_then(|shown| shown.path_noise(&pace.noise));
            let path_noise = path_noise.unwrap_or(pace.noise);
            let (kept, carried, found) = followed_under(spare, pace, path_noise, shown.as_ref(), known);
            (kept, carried, found, shown)
        }
        _ => (ordinary, carried, found, smooths),
    }
}

/// The same with legs found under one law.
fn followed_under(
    kept: Kept,
    pace: &Pace,
    path_noise: NoiseEstimate,
    smoothing: Option<&stays::Smoothing>,
    known: Surroundings<'_>,
) -> (Kept, Vec<carried::Carried>, Found) {
    let noise = smoothing.map_or(pace.noise, |smoothing| smoothing.noise(&pace.noise));
    let usual_mps = |kept: &Kept| {
        let shown_mps = pace
            .stated_mps
            .or(smoothing.and_then(|smoothing| smoothing.speed_mps));
        shown_mps
            .or_else(|| pace.usual_mps(kept, &pace.noise))
            .or(pace.speed_mps)
    };
    let first_mps = usual_mps(&kept);
    let (kept, carried) = carried::lift_out(kept, &noise, first_mps, known.ground);
    let speed_mps = match carried.is_empty() {
        true => first_mps,
        false => usual_mps(&kept),
    };
    let pace = Pace {
        noise: path_noise,
        ..*pace
    };
    let found = Found::of(&kept, &pace, speed_mps, known);
    (kept, carried, found)
}

/// What is known about the site.
#[derive(Clone, Copy)]
pub struct Surroundings<'a> {
    /// The station in the plan.
    pub station: Option<Place>,
    /// Where the plan lets the machine drive: within the boundary (else the lawn as drawn), outside zones and obstacles.
    pub ground: Option<&'a Region>,
    /// What the user wants.
    pub settings: &'a Settings,
    /// How the receiver errs.
    pub receiver: Option<&'a ReceiverLaw>,
}

impl<'a> Surroundings<'a> {
    /// Nothing but settings.
    pub const fn of(settings: &'a Settings) -> Self {
        Self {
            station: None,
            ground: None,
            settings,
            receiver: None,
        }
    }

    /// On such ground.
    #[must_use]
    pub const fn on(self, ground: Option<&'a Region>) -> Self {
        Self { ground, ..self }
    }

    /// With a station.
    #[must_use]
    pub const fn with_station(self, station: Option<Place>) -> Self {
        Self { station, ..self }
    }
}

/// Error law and speed before the path is known.
#[derive(Clone, Copy)]
struct Pace {
    period_s: f64,
    noise: NoiseEstimate,
    /// Driving speed, as far as the roughness of the log shows it.
    speed_mps: Option<f64>,
    /// The same, as stated by the user.
    stated_mps: Option<f64>,
}

impl Pace {
    fn of(kept: &Kept, known: Surroundings<'_>, claims: &noise::Claims) -> Self {
        let period_s = noise::usual_period_s(kept);
        let mut rough = noise::roughness(kept, period_s);
        // Between sparse fixes the machine turns, so second differences say nothing about the error.
        let is_sparse = period_s > SPARSE_PERIOD_S;
        let straight_white_m = is_sparse.then(|| sparse_turns::white_m(kept)).flatten();
        if is_sparse {
            rough.white_m = straight_white_m.unwrap_or(rough.white_m.min(SPARSE_WHITE_M));
        }
        let stated_mps = known.settings.machine.speed_mps;
        let speed_mps = stated_mps.or_else(|| noise::usual_speed_mps(kept, rough.white_m, 0.0));
        // In sparse or poor logs, only a long stay keeps within a few metres.
        let long_rests = is_sparse
            .then(|| halts::rests(kept, rough.white_m.max(SPARSE_REST_WHITE_M), SPARSE_REST_S))
            .filter(|rests| !rests.is_empty());
        let rests = long_rests.unwrap_or_else(|| halts::rests(kept, rough.white_m, 60.0));
        if is_sparse && straight_white_m.is_none() {
            // What standing time shows must not be judged by a guess.
            rough.white_m = noise::LEAST_WHITE_M;
        }
        let seen = noise::estimate(kept, &rests, rough, period_s, speed_mps, claims);
        let mut noise = match known.receiver.filter(|_| !seen.shows_drift) {
            Some(receiver) => receiver.fill(seen.noise),
            None => seen.noise,
        };
        if let (Some(white_m), true) = (straight_white_m, noise.source != NoiseSource::StationScatter) {
            if !noise.is_known() {
                noise.drift_rate_m2_per_s *= (white_m / noise.white_m).powi(2);
                noise.source = NoiseSource::DrivingRoughness;
            }
            noise.white_m = white_m;
        }
        Self {
            period_s,
            noise,
            speed_mps,
            stated_mps,
        }
    }

    /// Speed under an error law; the user's, if stated.
    fn usual_mps(&self, kept: &Kept, noise: &NoiseEstimate) -> Option<f64> {
        self.stated_mps
            .or_else(|| noise::usual_speed_mps(kept, noise.white_m, noise.drift_rate_m2_per_s))
    }
}

/// The path, with what was found along with it.
struct Found {
    method: PathMethod,
    pieces: Vec<Piece>,
    halts: Vec<Halt>,
    noise: NoiseEstimate,
    /// Error with which the stands were found.
    stands_noise: NoiseEstimate,
    speed_mps: Option<f64>,
    allowed_drift_m: Option<f64>,
    anchored: Option<Box<Anchored>>,
}

impl Found {
    fn nothing(noise: NoiseEstimate, speed_mps: Option<f64>) -> Self {
        Self {
            method: PathMethod::Chords,
            pieces: Vec::new(),
            halts: Vec::new(),
            noise,
            stands_noise: noise,
            speed_mps,
            allowed_drift_m: None,
            anchored: None,
        }
    }

    /// One halt for each unbroken stretch, and the error law of all of it.
    fn of_standing(kept: &Kept, pace: &Pace) -> Self {
        let runs = kept.runs();
        let mut noise = pace.noise;
        if let Some(fit) = receiver::drift_at_rest(kept, &runs) {
            noise.white_m = fit.white_m.max(noise::LEAST_WHITE_M);
            noise.drift_m = Some(fit.drift_m);
            noise.drift_rate_m2_per_s = fit.rate_m2_per_s();
            noise.drift_time_s = Some(fit.drift_time_s);
            noise.source = NoiseSource::StationScatter;
        }
        let halts: Vec<Halt> = runs
            .into_iter()
            .map(|run| {
                let ends_s = (kept.time_s[run.start], kept.time_s[run.end - 1]);
                halts::halt(kept, run, ends_s)
            })
            .collect();
        let stand = |halt: &Halt| Piece {
            vertices: vec![Vertex::of_halt(halt)],
        };
        Self {
            pieces: halts.iter().map(stand).collect(),
            halts,
            ..Self::nothing(noise, None)
        }
    }

    fn of(kept: &Kept, pace: &Pace, speed_mps: Option<f64>, site: Surroundings<'_>) -> Self {
        let halt_s = site.settings.pockets.stuck_after_s.min(60.0);
        let noise = pace.noise;
        let found = Self::nothing(noise, speed_mps);
        let mut found = match (pace.period_s > SPARSE_PERIOD_S, speed_mps) {
            (true, _) => found.between_sparse_fixes(kept, site, halt_s),
            (false, None) => found.along_chords(kept, halt_s),
            (false, Some(first_mps)) => found.along_legs(kept, pace, first_mps, site, halt_s),
        };
        parts::in_order(&mut found.pieces);
        found.pieces.retain(|piece| !piece.vertices.is_empty());
        found
    }

    fn halt(mut self, kept: &Kept, halt_s: f64) -> Self {
        self.halts = halts::long_halts(kept, &self.noise, halt_s);
        self.stands_noise = self.noise;
        self
    }

    fn along_chords(mut self, kept: &Kept, halt_s: f64) -> Self {
        self = self.halt(kept, halt_s);
        let chords = |run| path::chords(kept, run, &self.halts);
        self.pieces = kept.runs().into_iter().map(chords).collect();
        self
    }

    /// Puts turns back where the edge of the ground shows them; otherwise uses chords.
    fn between_sparse_fixes(mut self, kept: &Kept, site: Surroundings<'_>, halt_s: f64) -> Self {
        let turns = site.ground.and_then(|ground| {
            let how = sparse_turns::estimate(kept, ground, &self.noise, site.settings.machine.speed_mps)?;
            sparse_turns::Outline::of(ground, how.inset_m).map(|outline| (how, outline))
        });
        let Some((how, outline)) = turns else {
            return self.along_chords(kept, halt_s);
        };
        self.method = PathMethod::Rebuilt;
        self = self.halt(kept, halt_s);
        let rebuilt = |run| sparse_turns::rebuild(kept, run, &outline, &self.halts, &how);
        self.pieces = kept.runs().into_iter().map(rebuilt).collect();
        self
    }

    /// Straight legs at one speed; held by edges if positions are poor, smoothed if the machine does not drive straight.
    fn along_legs(
        mut self,
        kept: &Kept,
        pace: &Pace,
        first_mps: f64,
        site: Surroundings<'_>,
        halt_s: f64,
    ) -> Self {
        let mut runs = segmented(kept, &self.noise, first_mps);
        let first_noise = self.noise;
        refine(&mut self.noise, &runs);
        let held = is_poor(&self.noise);
        if held {
            let rate = self.noise.drift_rate_m2_per_s / first_noise.drift_rate_m2_per_s;
            let better_mps = pace.usual_mps(kept, &self.noise).unwrap_or(first_mps);
            if !(1.0 / RATE_MATTERS..RATE_MATTERS).contains(&rate)
                || !(1.0 / PACE_MATTERS..PACE_MATTERS).contains(&(better_mps / first_mps))
            {
                runs = segmented(kept, &self.noise, better_mps);
                self.speed_mps = Some(better_mps);
            }
        }
        let speed_mps = self.speed_mps.unwrap_or(first_mps);
        self.allowed_drift_m = straight::allowed_drift_m(&runs);
        self = self.halt(kept, halt_s);
        if is_winding(&runs) {
            self.method = PathMethod::Smoothed;
            let smoothed = |run| path::smoothed(kept, run, &self.noise, speed_mps);
            self.pieces = kept.runs().into_iter().map(smoothed).collect();
            self.collapse_stands();
        } else if held {
            self.method = PathMethod::Anchored;
            self.hold(kept, runs, speed_mps, site, halt_s);
        } else {
            self.method = PathMethod::Legs;
            let legs = |(blocks, parts): &(blocks::Blocks, Vec<segment::Part>)| {
                path::from_parts(blocks, parts, &self.noise)
            };
            self.pieces = runs.iter().map(legs).collect();
            self.collapse_stands();
        }
        self
    }

    /// Combines legs, one speed, corners, the station and the edges.
    fn hold(
        &mut self,
        kept: &Kept,
        runs: Vec<(blocks::Blocks, Vec<segment::Part>)>,
        speed_mps: f64,
        site: Surroundings<'_>,
        halt_s: f64,
    ) {
        let timing_s = math::hypot(0.3, 0.7 * self.noise.white_m / speed_mps);
        let drives = runs
            .into_iter()
            .map(|(blocks, parts)| chain::Drive::new(blocks, &parts, timing_s))
            .collect();
        let found = anchor_drives(
            drives,
            &self.noise,
            speed_mps,
            site.ground,
            site.station,
            site.settings,
        );
        self.pieces = found.chain.pieces(&found.corners);
        // Standing is read from the path, which wanders less than the fixes.
        let sd_m = found.usual_corner_sd_m();
        self.stands_noise = NoiseEstimate {
            white_m: 0.02 + 0.1 * sd_m,
            drift_m: Some(sd_m),
            drift_rate_m2_per_s: 1e-6,
            drift_time_s: None,
            source: self.noise.source,
        };
        self.halts = halts::long_halts(&on_the_path(kept, &self.pieces), &self.stands_noise, halt_s);
        self.anchored = Some(Box::new(found));
    }

    /// One corner for each stand. A wider halt is driving to and fro in a corner, so that ground was swept.
    fn collapse_stands(&mut self) {
        let noise = self.noise;
        let most_m = STANDING_RADIUS_M + 4.0 * noise.white_m + noise.drift_m.unwrap_or(0.0);
        let standing: Vec<Halt> = (self.halts.iter().copied())
            .filter(|halt| halt.radius_m <= most_m)
            .collect();
        for piece in &mut self.pieces {
            path::collapse_halts(piece, &standing, &noise);
        }
    }

    /// Whether the edges of the ground hold the path.
    fn is_held(&self) -> bool {
        self.anchored.as_ref().is_some_and(|anchored| anchored.is_held())
    }

    /// Uses the stays of a receiver that smooths as halts, and takes the speed and the slow part of the error from them.
    fn stands_as(&mut self, kept: &Kept, smoothing: &stays::Smoothing) {
        self.noise = smoothing.noise(&self.noise);
        self.speed_mps = smoothing.speed_mps.or(self.speed_mps);
        self.halts = stays::as_halts(kept, &smoothing.stays);
        self.stands_noise = self.noise;
        for piece in &mut self.pieces {
            path::collapse_halts(piece, &self.halts, &self.noise);
        }
    }
}

/// Whether half of the time is driven in legs so short that this is not straight driving at a steady speed.
fn is_winding(runs: &[(blocks::Blocks, Vec<segment::Part>)]) -> bool {
    let leg_s = |blocks: &blocks::Blocks, part: &segment::Part| {
        (part.kind == segment::PartKind::Leg).then(|| blocks.time_s[part.last] - blocks.time_s[part.first])
    };
    let mut legs_s: Vec<f64> = runs
        .iter()
        .flat_map(|(blocks, parts)| parts.iter().filter_map(|part| leg_s(blocks, part)))
        .collect();
    half_time_leg_s(&mut legs_s).is_some_and(|leg_s| leg_s < STRAIGHT_LEG_S)
}
