//! One side of a comparison on the common ground.

use super::{CompareError, Side};
use tussock_diagnose::night_simulation::{Access, CELL_M, Cast, Fractions, Scene};
use tussock_locate::HaltPlace;
use tussock_plane::{Region, Site, rasterise};
use tussock_simulate::Yard;
use tussock_survey::Survey;
use tussock_types::{Estimate, Findings, Place};

/// Simulated runs behind the luck of a night.
const RUNS: u64 = 60;
/// The fitted machine knows not everything that differs from night to night.
const MORE_THAN_FITTED: f64 = 1.15;
/// Fewer outings give no jackknife.
const LEAST_OUTINGS: usize = 3;
/// A line that comes this near to the station ends an outing.
const AT_STATION_M: f64 = 1.0;

/// What one side shows of the common ground.
pub(crate) struct SideSeen {
    /// Visited part.
    pub(super) fraction: f64,
    /// What the common ground has more than the side's own lawn.
    pub(super) common_less_own: f64,
    pub(super) position_sd: f64,
    /// Standard deviation from night to night.
    pub(super) nightly_sd: Option<f64>,
    /// Visited part of each pocket.
    pub(crate) pockets: Vec<f64>,
    /// Its standard deviation from night to night.
    pub(super) pocket_sds: Vec<Option<f64>>,
    /// Pocket fractions of simulated runs without any change.
    pocket_runs: Option<Vec<Vec<f64>>>,
}

impl SideSeen {
    pub(super) fn of(
        side: &Side<'_>,
        site: &Site,
        common: &Region,
        outlines: &[Region],
        moved: &dyn Fn(Place) -> Place,
        cut_width_m: f64,
        seed: u64,
    ) -> Result<Self, CompareError> {
        let common_site = Site {
            lawn: common.clone(),
            ..site.clone()
        };
        let mut scene = Scene::of(&common_site, CELL_M, cut_width_m);
        for outline in outlines {
            scene.add(rasterise(outline, &scene.lawn.grid));
        }
        let survey = side.job.map(Survey::of).transpose()?;
        let outings = match &survey {
            Some(survey) => outings_of_tracks(survey, moved),
            None => outings_of_lines(side.findings, site.station, moved),
        };
        let painted = scene.paint(outings.iter().flatten().copied());
        let seen = scene.fractions(&painted);
        // The count knows more of positions than plain painting: its estimate, on the common ground.
        let own = Scene::of(site, CELL_M, cut_width_m);
        let own_fraction = own.fractions(&own.paint(outings.iter().flatten().copied())).lawn;
        let visited = side.findings.coverage.as_ref().map_or_else(
            || Estimate::bare(own_fraction),
            |coverage| coverage.visited_fraction,
        );
        let common_less_own = seen.lawn - own_fraction;
        let position_sd = visited
            .low
            .zip(visited.high)
            .map_or(0.0, |(low, high)| (high - low) / (2.0 * Estimate::END_SDS));
        let rehearsed = survey
            .as_ref()
            .and_then(|survey| rehearsed(survey, site, &scene, moved, seed, &seen));
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
        let jackknifed = |of: &dyn Fn(&Fractions) -> f64| {
            let count = left_out.len() as f64;
            (!left_out.is_empty()).then(|| {
                let mean = left_out.iter().map(of).sum::<f64>() / count;
                let sum: f64 = left_out.iter().map(|one| (of(one) - mean).powi(2)).sum();
                ((count - 1.0) / count * sum).sqrt()
            })
        };
        let sd_of = |values: &[f64]| {
            let count = values.len() as f64;
            let mean = values.iter().sum::<f64>() / count;
            (values.iter().map(|value| (value - mean).powi(2)).sum::<f64>() / (count - 1.0)).sqrt()
        };
        let nightly_sd = match &rehearsed {
            Some(runs) => Some(MORE_THAN_FITTED * sd_of(&runs.lawn)),
            None => jackknifed(&|one| one.lawn),
        };
        let pocket_sds = (0..outlines.len())
            .map(|number| match &rehearsed {
                Some(runs) => Some(sd_of(&runs.pockets[number])),
                None => jackknifed(&|one| one.pockets[number]),
            })
            .collect();
        Ok(Self {
            fraction: (visited.estimate + common_less_own).clamp(0.0, 1.0),
            common_less_own,
            position_sd,
            nightly_sd,
            pockets: seen.pockets,
            pocket_sds,
            pocket_runs: rehearsed.map(|runs| runs.pockets),
        })
    }

    /// With position error alone: luck stands in the difference.
    pub(super) fn estimate(&self) -> Estimate {
        Estimate::of_fraction(self.fraction, self.position_sd)
    }

    /// What two logs without a change differ by in nine of ten, for a pocket.
    pub(super) fn pocket_luck(&self, number: usize) -> Option<f64> {
        if let Some(runs) = self.pocket_runs.as_ref().map(|all| &all[number]) {
            let mut apart: Vec<f64> = runs
                .iter()
                .enumerate()
                .flat_map(|(at, one)| runs[at + 1..].iter().map(move |two| (one - two).abs()))
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

struct Rehearsed {
    lawn: Vec<f64>,
    pockets: Vec<Vec<f64>>,
}

/// Runs of the machine fitted to this side, on its own plan; `None` where none fits.
fn rehearsed(
    survey: &Survey<'_>,
    site: &Site,
    scene: &Scene,
    moved: &dyn Fn(Place) -> Place,
    seed: u64,
    seen: &Fractions,
) -> Option<Rehearsed> {
    // The machine is fitted where the log lies; on the common frame the site is the same but for a shift of the plane.
    let fitted = survey.machine().ok()?;
    let mut site = fitted.site(site);
    site.station = fitted.station.map(moved);
    let cast = Cast {
        yard: Yard::new(&site, fitted.machine.past_boundary_m).ok()?,
        machine: fitted.machine.clone(),
        run: fitted.run(0),
        access: Access::AsIs,
    };
    let runs = cast.play(scene, seed, 0..RUNS).ok()?;
    let lawn: Vec<f64> = runs.iter().map(|run| run.lawn).collect();
    let mean = lawn.iter().sum::<f64>() / lawn.len() as f64;
    let far = (lawn.iter().map(|one| (one - mean).powi(2)).sum::<f64>() / lawn.len() as f64).sqrt();
    // Ground that the plan does not show as it is: the machine fits, the plan does not.
    if (seen.lawn - mean).abs() > 3.0 * far + 0.02 {
        return None;
    }
    let pockets = (0..seen.pockets.len())
        .map(|number| runs.iter().map(|run| run.pockets[number]).collect())
        .collect();
    Some(Rehearsed { lawn, pockets })
}

type Legs = Vec<[Place; 2]>;

/// Path of each outing: between stays at the station, and across silences.
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
