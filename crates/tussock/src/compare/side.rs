//! One side of a comparison on the common ground.

use tussock_diagnose::night_simulation::{Access, CELL_M, Cast, Fractions, Scene};
use tussock_diagnose::suggest::as_driven;
use tussock_locate::HaltPlace;
use tussock_plane::{Region, Site, rasterise};
use tussock_simulate::Yard;
use tussock_study::statistics::{MORE_THAN_FITTED, mean, variance};
use tussock_survey::Survey;
use tussock_types::{Estimate, Findings, Night, Place};

/// Simulated runs behind the estimate of a night's luck.
const RUNS: u64 = 60;
/// Simulated nights behind the luck of a single night.
const NIGHT_RUNS: u64 = 200;
/// Amount of driving that is reshuffled as one piece.
const HALF_HOUR_S: f64 = 1800.0;
/// Fewer outings do not allow a jackknife.
const LEAST_OUTINGS: usize = 3;
/// A line that comes this close to the station ends an outing.
const AT_STATION_M: f64 = 1.0;

/// What one side shows of the common ground.
pub(crate) struct SideSeen {
    /// Visited part.
    pub(super) fraction: f64,
    /// The lawn of the common ground minus the side's own lawn.
    pub(super) common_less_own: f64,
    pub(super) position_sd: f64,
    /// Standard deviation between nights.
    pub(super) nightly_sd: Option<f64>,
    /// Visited part of each pocket.
    pub(crate) pockets: Vec<f64>,
    /// Its standard deviation between nights.
    pub(super) pocket_sds: Vec<Option<f64>>,
    /// Simulated runs without any change.
    runs: Option<Vec<Fractions>>,
    /// The machine fitted to this side, on its own plan; `None` if none fits.
    pub(super) cast: Option<Cast>,
    /// The common ground with its pockets.
    pub(super) scene: Scene,
    /// What each night visited by itself; empty if only a side's findings are known.
    pub(super) nights: Vec<NightSeen>,
    /// Standard deviation of a place on the path.
    pub(super) position_error_m: f64,
}

/// What a night visited of the common ground.
pub(crate) struct NightSeen {
    pub(super) whole: Fractions,
    /// Each half hour of driving by itself; a shorter remainder is left out.
    pub(super) half_hours: Vec<Fractions>,
}

/// The ground on which both sides are compared.
pub(super) struct CommonGround<'a> {
    /// Lawn of both plans.
    pub(super) lawn: &'a Region,
    /// Outlines of the pockets of both sides.
    pub(super) pockets: &'a [Region],
    pub(super) cut_width_m: f64,
}

impl SideSeen {
    pub(super) fn of(
        findings: &Findings,
        survey: Option<&Survey<'_>>,
        site: &Site,
        ground: &CommonGround<'_>,
        moved: &dyn Fn(Place) -> Place,
        seed: u64,
    ) -> Self {
        let common_site = Site {
            lawn: ground.lawn.clone(),
            ..site.clone()
        };
        let mut scene = Scene::of(&common_site, CELL_M, ground.cut_width_m);
        for outline in ground.pockets {
            scene.add(rasterise(outline, &scene.lawn.grid));
        }
        let outings = match survey {
            Some(survey) => outings_of_tracks(survey, moved),
            None => outings_of_lines(findings, site.station, moved),
        };
        let painted = scene.paint(outings.iter().flatten().copied());
        let seen = scene.fractions(&painted);
        // The count knows more about positions than plain painting does, so its estimate is transferred to the common
        // ground.
        let own = Scene::of(site, CELL_M, ground.cut_width_m);
        let own_fraction = own.fractions(&own.paint(outings.iter().flatten().copied())).lawn;
        let visited = findings.coverage.as_ref().map_or_else(
            || Estimate::bare(own_fraction),
            |coverage| coverage.visited_fraction,
        );
        let common_less_own = seen.lawn - own_fraction;
        let position_sd = visited
            .low
            .zip(visited.high)
            .map_or(0.0, |(low, high)| (high - low) / (2.0 * Estimate::END_SDS));
        let (cast, runs) = survey
            .and_then(|survey| rehearsed(survey, site, &scene, moved, seed, &seen))
            .unzip();
        let left_out: Vec<_> = if outings.len() >= LEAST_OUTINGS {
            (0..outings.len())
                .map(|out| {
                    let others = outings.iter().enumerate().filter(|(number, _)| *number != out);
                    scene.fractions(&scene.paint(others.flat_map(|(_, legs)| legs.iter().copied())))
                })
                .collect()
        } else {
            Vec::new()
        };
        let luck_sd = |of: &dyn Fn(&Fractions) -> f64| match &runs {
            Some(runs) => Some(variance(&runs.iter().map(of).collect::<Vec<f64>>()).sqrt()),
            None => jackknifed(&left_out.iter().map(of).collect::<Vec<f64>>()),
        };
        Self {
            fraction: (visited.estimate + common_less_own).clamp(0.0, 1.0),
            common_less_own,
            position_sd,
            nightly_sd: luck_sd(&|one| one.lawn).map(|sd| match runs {
                Some(_) => MORE_THAN_FITTED * sd,
                None => sd,
            }),
            pocket_sds: (0..ground.pockets.len())
                .map(|number| luck_sd(&|one| one.pockets[number]))
                .collect(),
            pockets: seen.pockets,
            runs,
            cast,
            nights: survey.map_or_else(Vec::new, |survey| nights(survey, findings, &scene, moved)),
            position_error_m: survey.map_or(0.0, |survey| {
                let errors_m = survey.tracks.iter().map(|track| track.position_error_m());
                errors_m.fold(0.0, f64::max)
            }),
            scene,
        }
    }

    /// Nights of this side's machine, longer or shorter by this factor; none if no machine fits.
    pub(super) fn simulated_nights(&self, times_night_h: f64, seed: u64) -> Vec<Fractions> {
        let Some(mut cast) = self.cast.clone() else {
            return Vec::new();
        };
        cast.run.hours *= times_night_h / self.nights.len().max(1) as f64;
        cast.play(&self.scene, seed, 0..NIGHT_RUNS).unwrap_or_default()
    }

    /// With position error alone: luck enters with the difference.
    pub(super) fn estimate(&self) -> Estimate {
        Estimate::of_fraction(self.fraction, self.position_sd)
    }

    /// The difference of a pocket that nine in ten pairs of unchanged logs stay below.
    pub(super) fn pocket_luck(&self, number: usize) -> Option<f64> {
        if let Some(runs) = &self.runs {
            let of = |run: &Fractions| run.pockets[number];
            let mut apart: Vec<f64> = runs
                .iter()
                .enumerate()
                .flat_map(|(at, one)| runs[at + 1..].iter().map(move |two| (of(one) - of(two)).abs()))
                .collect();
            apart.sort_by(f64::total_cmp);
            return apart.get(apart.len() * 9 / 10).copied();
        }
        self.pocket_sds
            .get(number)
            .copied()
            .flatten()
            .map(|sd| Estimate::END_SDS * std::f64::consts::SQRT_2 * sd)
    }
}

/// Standard deviation from values that each leave out one outing; `None` if there are too few outings.
fn jackknifed(left_out: &[f64]) -> Option<f64> {
    let count = left_out.len() as f64;
    (count > 1.0).then(|| (count - 1.0) * (variance(left_out) / count).sqrt())
}

/// The machine fitted to this side, on its own plan, and its runs; `None` if none fits.
fn rehearsed(
    survey: &Survey<'_>,
    site: &Site,
    scene: &Scene,
    moved: &dyn Fn(Place) -> Place,
    seed: u64,
    seen: &Fractions,
) -> Option<(Cast, Vec<Fractions>)> {
    // The machine is fitted in the frame of the log; in the common frame the site is the same, except for a shift of the
    // plane.
    let fitted = survey.machine().ok()?;
    let turns = survey.turns().ok()?.first()?;
    let (mut site, _) = as_driven(site, fitted, turns, moved);
    site.station = fitted.station.map(moved);
    let cast = Cast {
        yard: Yard::new(&site, fitted.machine.past_boundary_m).ok()?,
        machine: fitted.machine.clone(),
        run: fitted.run(0),
        access: Access::AsIs,
    };
    let runs = cast.play(scene, seed, 0..RUNS).ok()?;
    let lawn: Vec<f64> = runs.iter().map(|run| run.lawn).collect();
    // If this fails, the machine fits but the plan does not show the ground as it is.
    ((seen.lawn - mean(&lawn)).abs() <= 3.0 * variance(&lawn).sqrt() + 0.02).then_some((cast, runs))
}

/// What each night visited, in total and by half hours of driving.
fn nights(
    survey: &Survey<'_>,
    findings: &Findings,
    scene: &Scene,
    moved: &dyn Fn(Place) -> Place,
) -> Vec<NightSeen> {
    let seen = |legs: &[[Place; 2]]| scene.fractions(&scene.paint(legs.iter().copied()));
    let first_s = survey.span_s().0;
    let night_seen = |night: &Night| {
        let (mut all, mut half_hours) = (Legs::new(), Vec::new());
        for track in &survey.tracks {
            let (mut begun, mut driven_s) = (all.len(), 0.0);
            for (from, to) in track.legs() {
                if from.leave_s - first_s > night.end_s || to.arrive_s - first_s < night.start_s {
                    continue;
                }
                all.push([moved(from.place), moved(to.place)]);
                driven_s += to.arrive_s - from.leave_s;
                if driven_s >= HALF_HOUR_S {
                    half_hours.push(seen(&all[begun..]));
                    (begun, driven_s) = (all.len(), 0.0);
                }
            }
        }
        NightSeen {
            whole: seen(&all),
            half_hours,
        }
    };
    findings.nights.iter().flatten().map(night_seen).collect()
}

type Legs = Vec<[Place; 2]>;

/// Path of each outing: between stays at the station, bridging silences.
fn outings_of_tracks(survey: &Survey<'_>, moved: &dyn Fn(Place) -> Place) -> Vec<Legs> {
    let mut outings = Vec::new();
    for track in &survey.tracks {
        let stays_s: Vec<f64> = track
            .halts
            .iter()
            .filter(|halt| halt.at == HaltPlace::Station)
            .map(|halt| halt.end_s)
            .collect();
        let mut open: Legs = Vec::new();
        let mut next = 0;
        for (from, to) in track.legs() {
            let passed = stays_s[next..].partition_point(|end_s| *end_s <= from.leave_s + 1.0);
            if passed > 0 {
                next += passed;
                outings.extend(Some(std::mem::take(&mut open)).filter(|legs: &Legs| !legs.is_empty()));
            }
            open.push([moved(from.place), moved(to.place)]);
        }
        outings.extend(Some(open).filter(|legs| !legs.is_empty()));
    }
    outings
}

/// The same from lines that were kept for drawing.
fn outings_of_lines(
    findings: &Findings,
    station: Option<Place>,
    moved: &dyn Fn(Place) -> Place,
) -> Vec<Legs> {
    let mut outings = Vec::new();
    let is_home = |place: Place| station.is_some_and(|station| place.distance_m(station) <= AT_STATION_M);
    for line in &findings.driven_lines {
        let mut open: Legs = Vec::new();
        for pair in line.windows(2) {
            let leg = [moved(pair[0]), moved(pair[1])];
            open.push(leg);
            if is_home(leg[1]) && !is_home(leg[0]) {
                outings.push(std::mem::take(&mut open));
            }
        }
        outings.extend(Some(open).filter(|legs| !legs.is_empty()));
    }
    outings
}
