//! What the log says about the installation: passages, obstacles, reach, outings, hours, grass.

use crate::counted::Counted;
use crate::ground::Ground;
use crate::layout::Layout;
use std::collections::BTreeMap;
use tussock_coverage::distance::{self, Connectivity};
use tussock_coverage::laws;
use tussock_diagnose::outings::{self, Outing};
use tussock_diagnose::{luck, turf, turns};
use tussock_plane::BitGrid;
use tussock_types::{
    Coverage, HomeAlong, HoursFound, Installation, LowerCut, LowerCutAnswer, Night, OutOfReach,
    OutOfReachWhy, OutingsFound, OverTime, Passage, Settings, TurfFound, UnlistedObstacle, WayHome,
};

/// Everything that stands beside the layout in judging an installation.
pub(crate) struct Judged<'a> {
    pub(crate) ground: &'a Ground,
    pub(crate) layout: &'a Layout,
    pub(crate) counted: &'a Counted,
    pub(crate) drive: &'a luck::Drive,
    pub(crate) settings: &'a Settings,
    pub(crate) coverage: Option<&'a Coverage>,
    pub(crate) over_time: Option<&'a OverTime>,
    pub(crate) overdue_fraction: Option<f64>,
    pub(crate) nights: &'a [Night],
    /// Missed, not-yet and unseen pockets together.
    pub(crate) open_pockets: usize,
    /// Missed pockets.
    pub(crate) missed_pockets: usize,
    pub(crate) good_enough: bool,
}

/// Parts out of reach smaller than this are not listed one by one.
const LEAST_OUT_OF_REACH_M2: f64 = 0.5;

impl Judged<'_> {
    pub(crate) fn installation(&self) -> Installation {
        let guides = self.ground.guides();
        let outings: Vec<Outing> = self
            .ground
            .tracks
            .iter()
            .flat_map(|track| outings::outings(track, self.ground.lines(&guides)))
            .collect();
        Installation {
            setback_m: self.layout.setback_is_measured.then_some(self.layout.setback_m),
            passages: self.passages(),
            unlisted_obstacles: self.obstacles(),
            out_of_reach: self.out_of_reach(),
            ways_home: ways_home(&outings),
            outings: found(&outings),
            hours: self.hours(),
            lower_cut: self.lower_cut(),
            turf: self.turf(),
            slope: None,
        }
    }

    /// Lawn within the disc's reach.
    pub(crate) fn reachable_m2(&self) -> f64 {
        let out_m2: f64 = self.unreached().iter().map(|(area_m2, ..)| area_m2).sum();
        (self.drive.lawn_m2 - out_m2).max(0.0)
    }

    fn days(&self) -> f64 {
        (self.nights.len() as f64).max(1.0)
    }

    fn passages(&self) -> Vec<Passage> {
        self.layout
            .necks
            .iter()
            .enumerate()
            .map(|(number, (neck, traffic))| {
                let geo = self.ground.geo(neck.middle);
                Passage {
                    id: format!("P{}", number + 1),
                    across: neck.across,
                    lat: geo.map(|geo| geo.lat_deg),
                    lon: geo.map(|geo| geo.lon_deg),
                    width_m: neck.width_m,
                    free_width_m: neck.free_m(self.layout.setback_m),
                    length_m: neck.length_m,
                    behind_m2: neck.behind_m2,
                    crossings: Some(traffic.crossings as u64),
                    crossings_expected: Some(neck.crossings_expected(traffic.all_m, self.layout.setback_m)),
                    crossings_per_day: Some(traffic.crossings as f64 / self.days()),
                    share_fraction: Some(traffic.share_fraction(neck)),
                }
            })
            .collect()
    }

    fn obstacles(&self) -> Vec<UnlistedObstacle> {
        // A machine that was stuck turns back from nothing.
        let away: Vec<turns::Turn> =
            self.layout
                .inner
                .iter()
                .filter(|turn| {
                    self.layout.spots.iter().all(|spot| {
                        spot.place.distance_m(turn.place) > spot.radius_m + 0.5 + self.layout.error_m
                    })
                })
                .copied()
                .collect();
        turns::obstacles(&away, self.layout.setback_m, self.layout.error_m)
            .into_iter()
            .enumerate()
            .map(|(number, obstacle)| {
                let geo = self.ground.geo(obstacle.place);
                UnlistedObstacle {
                    id: format!("O{}", number + 1),
                    lat: geo.map(|geo| geo.lat_deg),
                    lon: geo.map(|geo| geo.lon_deg),
                    east_m: obstacle.place.east_m,
                    north_m: obstacle.place.north_m,
                    radius_m: obstacle.radius_m,
                    turns: obstacle.turns as u64,
                }
            })
            .collect()
    }

    /// Unreached lawn by parts: area, a place in it, whether the middle of the machine could be there.
    fn unreached(&self) -> Vec<(f64, tussock_types::Place, bool)> {
        let clearance = &self.layout.clearance;
        let grid = clearance.grid;
        let mut mask = BitGrid::new(grid);
        for cell in 0..clearance.clear_m.len() {
            let centre = clearance.centre(cell);
            let is_lawn = self
                .counted
                .count
                .grid
                .cell_at(centre)
                .is_some_and(|(column, row)| self.counted.count.lawn.get(column, row));
            if is_lawn && !self.layout.reach.reached[cell] {
                mask.set(cell % grid.columns, cell / grid.columns);
            }
        }
        distance::parts(&mask, Connectivity::Eight)
            .into_iter()
            .map(|part| {
                let cells: Vec<usize> = part
                    .runs
                    .iter()
                    .flat_map(|run| (run.start..run.end).map(|column| run.row * grid.columns + column))
                    .collect();
                let open = cells
                    .iter()
                    .filter(|cell| self.layout.reach.anywhere[**cell])
                    .count();
                // The roomiest cell is a place that one can walk to.
                let place = cells
                    .iter()
                    .max_by(|a, b| {
                        clearance.clear_m[**a]
                            .total_cmp(&clearance.clear_m[**b])
                            .then(b.cmp(a))
                    })
                    .map(|cell| clearance.centre(*cell))
                    .unwrap_or_default();
                (
                    cells.len() as f64 * grid.cell_m2(),
                    place,
                    2 * open >= cells.len(),
                )
            })
            .collect()
    }

    fn out_of_reach(&self) -> Vec<OutOfReach> {
        let mut parts: Vec<OutOfReach> = self
            .unreached()
            .into_iter()
            .filter(|(area_m2, ..)| *area_m2 >= LEAST_OUT_OF_REACH_M2)
            .map(|(area_m2, place, is_cut_off)| OutOfReach {
                area_m2,
                east_m: place.east_m,
                north_m: place.north_m,
                why: if is_cut_off {
                    OutOfReachWhy::CutOff
                } else {
                    OutOfReachWhy::Edge
                },
            })
            .collect();
        parts.sort_by(|a, b| b.area_m2.total_cmp(&a.area_m2));
        parts
    }

    fn hours(&self) -> Option<HoursFound> {
        let driving_h: f64 = self
            .nights
            .iter()
            .map(|night| night.hours.driving_h + night.hours.transit_h + night.hours.reversing_h)
            .sum::<f64>();
        let working_h: f64 = self
            .nights
            .iter()
            .map(|night| (night.end_s - night.start_s) / 3600.0)
            .sum();
        if driving_h <= 0.0 {
            return None;
        }
        let per_day = driving_h / self.days();
        let working_per_day = working_h / self.days();
        let promise = &self.settings.promise;
        let needed_h_per_day = self.over_time.zip(self.coverage).and_then(|(curve, coverage)| {
            let out = coverage.missed_m2 / coverage.lawn_m2.max(1e-9);
            let hours = laws::hours_to(
                promise.visited_fraction,
                &curve.driving_h,
                &curve.visited_fraction,
                out,
            )?;
            Some(hours / promise.days.max(1e-9) * working_per_day / per_day)
        });
        let allowed = allowed_h_per_day(self.settings);
        let target = format!(
            "{:.0} % within {} day{}",
            100.0 * promise.visited_fraction,
            promise.days,
            if promise.days == 1.0 { "" } else { "s" }
        );
        let sentence = match needed_h_per_day {
            Some(hours) if hours > 24.0 => format!(
                "{target} cannot be had with more hours: {hours:.0} working hours a day would be needed."
            ),
            Some(hours) => format!(
                "{target} needs about {hours:.1} working hours a day at this pace; it worked {working_per_day:.1}, of them {per_day:.1} driving."
            ),
            None if self.missed_pockets > 0 => format!(
                "No number of hours brings {target}: the missed ground is too large. It worked {working_per_day:.1} hours a day, of them {per_day:.1} driving."
            ),
            None => format!(
                "It worked {working_per_day:.1} hours a day, of them {per_day:.1} driving; what {target} needs cannot be told from this log."
            ),
        };
        Some(HoursFound {
            driving_h_per_day: per_day,
            working_h_per_day: working_per_day,
            allowed_h_per_day: allowed,
            needed_h_per_day: needed_h_per_day.filter(|hours| *hours <= 24.0),
            sentence,
        })
    }

    fn lower_cut(&self) -> Option<LowerCut> {
        let coverage = self.coverage?;
        let low = coverage
            .visited_fraction
            .low
            .unwrap_or(coverage.visited_fraction.estimate);
        // Slivers between passes stand for a day; pockets stand until somebody does something.
        let (answer, sentence) = if !self.good_enough {
            (
                LowerCutAnswer::CannotTell,
                "Whether every place was driven over at the present cutting height cannot be told from positions this poor."
                    .to_owned(),
            )
        } else if self.open_pockets == 0 && low >= 0.97 {
            (
                LowerCutAnswer::Yes,
                format!(
                    "Every place wide enough to see was driven over at the present height ({:.1} % of the lawn at least): the cutting height may be lowered by one step.",
                    100.0 * low
                ),
            )
        } else {
            let why = if self.open_pockets > 0 {
                format!(
                    "{} place{} wide enough to see {} not been driven over yet",
                    self.open_pockets,
                    if self.open_pockets == 1 { "" } else { "s" },
                    if self.open_pockets == 1 { "has" } else { "have" }
                )
            } else {
                format!(
                    "only {:.1} % of the lawn is sure to have been driven over",
                    100.0 * low
                )
            };
            (
                LowerCutAnswer::NotYet,
                format!(
                    "Leave the cutting height as it is: {why}, and high grass stops a machine that is set low."
                ),
            )
        };
        Some(LowerCut { answer, sentence })
    }

    fn turf(&self) -> Option<TurfFound> {
        let (growth_mm_per_day, growth_source) = turf::growth_mm_per_day(&self.settings.turf)?;
        let days = turf::allowed_interval_days(self.settings.turf.cut_height_mm?, growth_mm_per_day)?;
        let span_days = {
            let (start_s, end_s) = self.ground.span_s();
            (end_s - start_s) / 86_400.0
        };
        let sentence = match self.overdue_fraction {
            None => format!(
                "Grass growing {growth_mm_per_day:.1} mm a day may go {days:.1} days between visits (one-third rule); this log of {span_days:.1} days is too short to see whether any went longer."
            ),
            Some(overdue) if overdue > 0.02 => format!(
                "{:.0} % of the lawn went longer than {days:.1} days without a visit, which is more than grass growing {growth_mm_per_day:.1} mm a day should (one-third rule): more passes are needed.",
                100.0 * overdue
            ),
            Some(_) => {
                let mean = self.drive.path_m * self.drive.cut_width_m
                    / self.drive.lawn_m2.max(1e-9)
                    / span_days.max(1e-9)
                    * days;
                if mean > 12.0 {
                    format!(
                        "Each place is driven over {mean:.0} times in the {days:.1} days that the grass could wait (one-third rule): fewer hours would do, and spare the turf."
                    )
                } else {
                    format!(
                        "No more than {days:.1} days passed between visits, as grass growing {growth_mm_per_day:.1} mm a day needs (one-third rule)."
                    )
                }
            }
        };
        Some(TurfFound {
            growth_mm_per_day,
            growth_source,
            allowed_interval_h: 24.0 * days,
            overdue_fraction: self.overdue_fraction,
            sentence,
        })
    }
}

/// Mean working hours a day that the settings allow; `None` where they say nothing of some weekday.
pub(crate) fn allowed_h_per_day(settings: &Settings) -> Option<f64> {
    use tussock_types::Duty;
    let week = settings.hours.week();
    if week.contains(&Duty::Unknown) {
        return None;
    }
    let minutes = week.iter().filter(|duty| **duty == Duty::Work).count();
    Some(minutes as f64 / 60.0 / 7.0)
}

fn median(mut values: Vec<f64>) -> Option<f64> {
    values.sort_by(f64::total_cmp);
    values.get(values.len() / 2).copied()
}

fn ways_home(outings: &[Outing]) -> Vec<WayHome> {
    let mut ways: BTreeMap<HomeAlong, Vec<f64>> = BTreeMap::new();
    for (along, lasts_s) in outings.iter().filter_map(|outing| outing.home) {
        ways.entry(along).or_default().push(lasts_s / 60.0);
    }
    let mut ways: Vec<WayHome> = ways
        .into_iter()
        .map(|(along, minutes)| WayHome {
            along,
            times: minutes.len() as u64,
            median_min: median(minutes).unwrap_or(0.0),
        })
        .collect();
    ways.sort_by(|a, b| b.times.cmp(&a.times).then(a.along.cmp(&b.along)));
    ways
}

fn found(outings: &[Outing]) -> Option<OutingsFound> {
    let out: Vec<f64> = outings
        .iter()
        .filter(|outing| outing.is_back)
        .map(|outing| (outing.end_s - outing.start_s) / 60.0)
        .collect();
    let charging: Vec<f64> = outings
        .windows(2)
        .map(|pair| (pair[1].start_s - pair[0].end_s) / 60.0)
        .filter(|minutes| *minutes >= 0.0)
        .collect();
    Some(OutingsFound {
        count: outings.len() as u64,
        median_out_min: median(out).or_else(|| {
            median(
                outings
                    .iter()
                    .map(|outing| (outing.end_s - outing.start_s) / 60.0)
                    .collect(),
            )
        })?,
        median_charging_min: median(charging),
        starts: outings.iter().filter_map(|outing| outing.free_from).collect(),
        along_guide: outings.iter().filter(|outing| outing.along_guide).count() as u64,
    })
}
