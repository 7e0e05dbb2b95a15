//! What the log shows about the installation: passages, obstacles, reach, outings, hours, grass.

use crate::site_analysis::SiteAnalysis;
use crate::turns;
use std::collections::BTreeMap;
use tussock_coverage::{luck, turf};
use tussock_locate::Track;
use tussock_locate::turns::Turn;
use tussock_survey::Survey;
use tussock_survey::coverage_count::CoverageCount;
use tussock_survey::laws;
use tussock_survey::outings::{self, Outing};
use tussock_types::math;
use tussock_types::{
    Coverage, HomeAlong, HoursFound, Installation, LowerCut, LowerCutAnswer, Night, OutOfReach, OutingsFound,
    OutlineSource, OverTime, Passage, Said, Settings, TurfFound, UnlistedObstacle, WayHome,
};

/// Everything besides the layout that is needed to judge an installation.
pub struct Judged<'a> {
    /// Where everything lies.
    pub survey: &'a Survey<'a>,
    /// Room, passages, turns.
    pub layout: &'a SiteAnalysis,
    /// The count.
    pub counted: &'a CoverageCount,
    /// Path and pace.
    pub drive: &'a luck::Drive,
    /// Areas; `None` without a cutting width.
    pub coverage: Option<&'a Coverage>,
    /// The filling curve; `None` in the same case.
    pub over_time: Option<&'a OverTime>,
    /// Fraction of lawn that waits longer than it may, if that is known.
    pub overdue_fraction: Option<f64>,
    /// Night by night.
    pub nights: &'a [Night],
    /// Missed, not-yet and unseen pockets together.
    pub open_pockets: usize,
    /// Missed pockets.
    pub missed_pockets: usize,
    /// Whether there is a plan and positions show pockets as small as asked for.
    pub shows_all: bool,
}

/// Smaller parts out of reach are not listed separately.
const LEAST_OUT_OF_REACH_M2: f64 = 0.5;

impl Judged<'_> {
    /// The installation, and the lawn within the disc's reach.
    pub fn installation(&self) -> (Installation, f64) {
        let guides = self.survey.guides();
        let outings: Vec<Outing> = self
            .survey
            .tracks
            .iter()
            .flat_map(|track| outings::outings(track, self.survey.lines(&guides)))
            .collect();
        // Edges drawn from the drive lie where the machine could reach.
        let mut out_of_reach = match self.layout.outline {
            OutlineSource::Plan => self.left_out(),
            OutlineSource::Trace => Vec::new(),
        };
        let out_m2: f64 = out_of_reach.iter().map(|part| part.area_m2).sum();
        out_of_reach.retain(|part| part.area_m2 >= LEAST_OUT_OF_REACH_M2);
        let installation = Installation {
            setback_m: self.layout.setback_is_measured.then_some(self.layout.setback_m),
            passages: self.passages(),
            unlisted_obstacles: self.obstacles(),
            out_of_reach,
            ways_home: ways_home(&outings),
            outings: found(&outings),
            hours: self.hours(),
            lower_cut: self.lower_cut(),
            turf: self.turf(),
            slope: None,
        };
        (installation, (self.drive.lawn_m2 - out_m2).max(0.0))
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
                let geo = self.survey.geo(neck.middle);
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
                    share_ratio: Some(traffic.share_ratio(neck)),
                }
            })
            .collect()
    }

    fn obstacles(&self) -> Vec<UnlistedObstacle> {
        // A stuck machine turns away from nothing.
        let away: Vec<Turn> =
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
        let error_m = self.layout.error_m;
        let legs = || self.survey.tracks.iter().flat_map(Track::straight_legs);
        turns::obstacles(&away, self.layout.setback_m, error_m)
            .into_iter()
            .filter(|thing| !thing.is_driven_through(legs(), error_m))
            .enumerate()
            .map(|(number, obstacle)| {
                let geo = self.survey.geo(obstacle.place);
                UnlistedObstacle {
                    id: format!("O{}", number + 1),
                    lat: geo.map(|geo| geo.lat_deg),
                    lon: geo.map(|geo| geo.lon_deg),
                    east_m: obstacle.place.east_m,
                    north_m: obstacle.place.north_m,
                    radius_m: obstacle.radius_m,
                    turns: obstacle.turns as u64,
                    presence: obstacle.presence(legs(), error_m),
                }
            })
            .collect()
    }

    /// Lawn that the disc does not reach, slivers included.
    fn left_out(&self) -> Vec<OutOfReach> {
        let count = &self.counted.count;
        self.layout.reach.left_out(&self.layout.clearance, |place| {
            count
                .grid
                .cell_at(place)
                .is_some_and(|(column, row)| count.lawn.get(column, row))
        })
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
        let promise = &self.survey.settings().promise;
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
        let allowed = allowed_h_per_day(self.survey.settings());
        let (promised_fraction, promised_days) = (promise.visited_fraction, promise.days);
        let (worked_h, driven_h) = (working_per_day, per_day);
        let said = match needed_h_per_day {
            Some(needed_h) if needed_h > 24.0 => Said::PromiseBeyondHours {
                promised_fraction,
                promised_days,
                needed_h,
            },
            Some(needed_h) => Said::PromiseNeedsHours {
                promised_fraction,
                promised_days,
                needed_h,
                worked_h,
                driven_h,
            },
            None if self.missed_pockets > 0 => Said::PromiseBeyondReach {
                promised_fraction,
                promised_days,
                worked_h,
                driven_h,
            },
            None => Said::PromiseHoursUnknown {
                promised_fraction,
                promised_days,
                worked_h,
                driven_h,
            },
        };
        Some(HoursFound {
            driving_h_per_day: per_day,
            working_h_per_day: working_per_day,
            allowed_h_per_day: allowed,
            needed_h_per_day: needed_h_per_day.filter(|hours| *hours <= 24.0),
            said,
        })
    }

    fn lower_cut(&self) -> Option<LowerCut> {
        let coverage = self.coverage?;
        let low = coverage
            .visited_fraction
            .low
            .unwrap_or(coverage.visited_fraction.estimate);
        // Slivers between passes last for a day; pockets last until somebody does something.
        let (answer, said) = if !self.shows_all {
            (LowerCutAnswer::CannotTell, Said::LowerCutUnknown {})
        } else if self.open_pockets > 0 {
            let places = self.open_pockets as u64;
            (LowerCutAnswer::NotYet, Said::LowerCutPlacesOpen { places })
        } else if low >= 0.97 {
            (
                LowerCutAnswer::Yes,
                Said::LowerCut {
                    visited_fraction: low,
                },
            )
        } else {
            (
                LowerCutAnswer::NotYet,
                Said::LowerCutUnsure {
                    visited_fraction: low,
                },
            )
        };
        Some(LowerCut { answer, said })
    }

    fn turf(&self) -> Option<TurfFound> {
        let (growth_mm_per_day, growth_source) = turf::growth_mm_per_day(&self.survey.settings().turf)?;
        let allowed_days =
            turf::allowed_interval_days(self.survey.settings().turf.cut_height_mm?, growth_mm_per_day)?;
        let (start_s, end_s) = self.survey.span_s();
        let log_days = (end_s - start_s) / 86_400.0;
        let growth_mm = growth_mm_per_day;
        let swept_m2 = self.drive.path_m * self.drive.cut_width_m;
        let passes = swept_m2 / self.drive.lawn_m2.max(1e-9) / log_days.max(1e-9) * allowed_days;
        let said = match self.overdue_fraction {
            None => Said::GrassLogTooShort {
                growth_mm,
                allowed_days,
                log_days,
            },
            Some(overdue_fraction) if overdue_fraction > 0.02 => Said::GrassOverdue {
                overdue_fraction,
                growth_mm,
                allowed_days,
            },
            Some(_) if passes > 12.0 => Said::GrassTooManyPasses { passes, allowed_days },
            Some(_) => Said::GrassEnoughPasses {
                growth_mm,
                allowed_days,
            },
        };
        Some(TurfFound {
            growth_mm_per_day,
            growth_source,
            allowed_interval_h: 24.0 * allowed_days,
            overdue_fraction: self.overdue_fraction,
            said,
        })
    }
}

/// Mean working hours per day that the settings allow; `None` if they do not mention some weekday.
pub fn allowed_h_per_day(settings: &Settings) -> Option<f64> {
    use tussock_types::Duty;
    let week = settings.hours.week();
    if week.contains(&Duty::Unknown) {
        return None;
    }
    let minutes = week.iter().filter(|duty| **duty == Duty::Work).count();
    Some(minutes as f64 / 60.0 / 7.0)
}

fn ways_home(outings: &[Outing]) -> Vec<WayHome> {
    let mut ways: BTreeMap<HomeAlong, Vec<f64>> = BTreeMap::new();
    for (along, lasts_s) in outings.iter().filter_map(|outing| outing.home) {
        ways.entry(along).or_default().push(lasts_s / 60.0);
    }
    let mut ways: Vec<WayHome> = ways
        .into_iter()
        .map(|(along, mut minutes)| WayHome {
            along,
            times: minutes.len() as u64,
            median_min: math::median(&mut minutes).unwrap_or(0.0),
        })
        .collect();
    ways.sort_by(|a, b| b.times.cmp(&a.times).then(a.along.cmp(&b.along)));
    ways
}

fn found(outings: &[Outing]) -> Option<OutingsFound> {
    let mut out: Vec<f64> = outings
        .iter()
        .filter(|outing| outing.is_back)
        .map(|outing| (outing.end_s - outing.start_s) / 60.0)
        .collect();
    let mut charging: Vec<f64> = outings
        .windows(2)
        .map(|pair| (pair[1].start_s - pair[0].end_s) / 60.0)
        .filter(|minutes| *minutes >= 0.0)
        .collect();
    Some(OutingsFound {
        count: outings.len() as u64,
        median_out_min: math::median(&mut out).or_else(|| {
            let all = outings
                .iter()
                .map(|outing| (outing.end_s - outing.start_s) / 60.0);
            math::median(&mut all.collect::<Vec<f64>>())
        })?,
        median_charging_min: math::median(&mut charging),
        starts: outings.iter().filter_map(|outing| outing.free_from).collect(),
        along_guide: outings.iter().filter(|outing| outing.along_guide).count() as u64,
    })
}
