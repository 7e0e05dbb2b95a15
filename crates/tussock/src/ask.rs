//! What is known about one place?
//!
//! Question: the customer points at a corner. How often was it driven over, when last, how does that compare with the lawn,
//! and what follows? Findings are enough to answer it, saved ones too.
//!
//! Method. The squares of the map around the place, weighted by how likely the position error puts it there, show how often it
//! may have been driven over; by chance, a point of a square sees more or fewer passes than the square does on average.
//! Pockets, ground without evidence and stuck spots are those of the findings. The answer is one of: as often as the lawn, so look at blades,
//! height, growth or slope; less often, by luck or more than luck explains; never, and why; this log cannot tell.
//!
//! Exact: which pocket or spot holds the place. Approximate: the interval of the visits, blurred by squares of decimetres
//! and by the position error. Cost: one look at each square.

use crate::AnalyseError;
use tussock_plane::{Frame, Region, RegionError};
use tussock_survey::log_findings::rfc3339;
use tussock_types::math;
use tussock_types::{Cells, ComplaintFindings, ComplaintSettings, Estimate, Findings, GeoPoint, Place, Said};

/// Position error if nothing shows it: that of unaided receivers (common practice, no source).
const ASSUMED_ERROR_M: f64 = 2.0;
/// Less than this share of the lawn's mean counts as seldom.
const SELDOM_SHARE: f64 = 0.5;
/// Fewer expected visits count as none: at most one point in four of such a square was passed over.
const NEVER_VISITS: f64 = 0.25;

/// Squares farther away than this many position errors do not count.
const FARTHEST_SDS: f64 = 3.0;

/// A place farther from the lawn than this belongs to another garden.
const FARTHEST_M: f64 = 50.0;

/// What the findings know about a place that somebody pointed at.
///
/// # Errors
/// [`AnalyseError`] if nothing says which place is meant.
///
/// # Example
/// ```no_run
/// # fn example(findings: &tussock::types::Findings) -> Result<(), tussock::AnalyseError> {
/// let asked = tussock::types::ComplaintSettings {
///     at_deg: Some([40.00006, -30.00012]),
///     ..Default::default()
/// };
/// let found = tussock::ask(findings, &asked)?;
/// println!("{:?}, because {:?}", found.visits, found.answer);
/// # Ok(())
/// # }
/// ```
pub fn ask(findings: &Findings, asked: &ComplaintSettings) -> Result<ComplaintFindings, AnalyseError> {
    let origin = findings.frame.origin_lat.zip(findings.frame.origin_lon);
    let frame = origin.map(|(lat_deg, lon_deg)| Frame::at(GeoPoint { lat_deg, lon_deg }));
    let place = match (asked.at_deg, asked.at_m, &frame) {
        (Some([lat_deg, lon_deg]), _, Some(frame)) => frame.to_place(GeoPoint { lat_deg, lon_deg }),
        (None, Some([east_m, north_m]), _) => Place::new(east_m, north_m),
        (Some(_), _, None) => return Err(AnalyseError::NoPlaceOnEarth),
        (None, None, _) => return Err(AnalyseError::ComplaintWithoutPlace),
    };
    let geo = frame.map(|frame| frame.to_geo(place));
    let mut found = ComplaintFindings {
        lat: geo.map(|geo| geo.lat_deg),
        lon: geo.map(|geo| geo.lon_deg),
        east_m: place.east_m,
        north_m: place.north_m,
        said: asked.said.clone(),
        visits: None,
        last_visit: None,
        due_h: None,
        answer: None,
    };
    let lawn = Region::from_rings(findings.lawn_outline.clone())?;
    let off_lawn_m = if lawn.contains(place) {
        0.0
    } else {
        lawn.edge_distance_m(place)
    };
    if off_lawn_m > FARTHEST_M {
        let distance_m = off_lawn_m;
        found.answer = Some(Said::PlaceElsewhere { distance_m });
        return Ok(found);
    }
    let error_m = error_m(findings);
    let reach_m = Estimate::END_SDS * error_m;
    if let Some(cells) = findings.cells.as_ref().filter(|_| findings.coverage.is_some()) {
        let around = Around::of(cells, place, error_m, findings.settings.machine.cut_width_m);
        found.visits = around.visits;
        found.last_visit = (findings.span.start_unix_s.zip(around.last_s))
            .and_then(|(start_s, last_s)| rfc3339(start_s + last_s));
        let visits = around.visits.filter(|visits| visits.estimate >= NEVER_VISITS);
        found.due_h = visits.map(|visits| findings.span.driving_s / 3600.0 / visits.estimate);
    }
    let reach_m = reach_m.max(asked.radius_m);
    found.answer = Some(match of_ground_found(findings, place, reach_m)? {
        Some(said) => said,
        None if off_lawn_m > reach_m => {
            let distance_m = off_lawn_m;
            match findings.drawn_outline {
                Some(_) => Said::PlaceBeyondOutline { distance_m },
                None => Said::PlaceOffLawn { distance_m },
            }
        }
        None if findings.coverage.is_none() => Said::PlaceNeedsWidth {},
        None => {
            let revisits = findings.revisits.as_ref();
            let lawn_visits = revisits.map_or(0.0, |revisits| revisits.mean_per_cell);
            by_visits(found.visits, lawn_visits, error_m, asked.radius_m)
        }
    });
    Ok(found)
}

/// The remaining position error per axis: the one stated in the verdict, or else the one that the log shows.
fn error_m(findings: &Findings) -> f64 {
    match findings.log_verdict.advice {
        Said::PositionsRight { error_m } | Said::PositionsOff { error_m } => error_m,
        _ => math::hypot(
            findings.positions.white_m.unwrap_or(0.0),
            findings.positions.drift_m.unwrap_or(ASSUMED_ERROR_M),
        ),
    }
}

/// What the squares around a place show.
struct Around {
    visits: Option<Estimate>,
    /// Last visit, seconds from the start of the span.
    last_s: Option<f64>,
}

/// To a thousandth of a visit: findings that were saved hold places to so many digits, and answer the same.
fn rounded(visits: f64) -> f64 {
    (1000.0 * visits).round() / 1000.0
}

impl Around {
    fn of(cells: &Cells, place: Place, error_m: f64, cut_width_m: Option<f64>) -> Self {
        let grid = cells.grid;
        // Squares that hold the place, or may hold it.
        let within_m = FARTHEST_SDS * error_m + 0.5 * std::f64::consts::SQRT_2 * grid.cell_m;
        let mut near: Vec<(f64, usize)> = (0..grid.columns * grid.rows)
            .filter(|&at| cells.lawn_fraction[at] > 0.0)
            .map(|at| {
                (
                    grid.centre(at % grid.columns, at / grid.columns)
                        .distance_m(place),
                    at,
                )
            })
            .filter(|(distance_m, _)| *distance_m <= within_m)
            .collect();
        near.sort_by(|a, b| a.0.total_cmp(&b.0));
        let Some(&(_, here)) = near.first() else {
            return Self {
                visits: None,
                last_s: None,
            };
        };
        // Each square counts as often as the true place lies in it, given the error and that of a square's middle; by
        // comparison with the nearest one, so that the weights cannot all vanish.
        let sd_m = error_m.max(grid.cell_m / 12.0_f64.sqrt());
        let weigh =
            |distance_m: f64| math::exp(0.5 * (near[0].0.powi(2) - distance_m.powi(2)) / sd_m.powi(2));
        let weights = near.iter().map(|(distance_m, at)| {
            let visits = f64::from(cells.visits_expected[*at]);
            (weigh(*distance_m), visits)
        });
        let weights: Vec<(f64, f64)> = weights.collect();
        let sum: f64 = weights.iter().map(|(weight, _)| weight).sum();
        let estimate = weights
            .iter()
            .map(|(weight, visits)| weight * visits)
            .sum::<f64>()
            / sum;
        let apart = |(weight, visits): &(f64, f64)| weight * (visits - estimate).powi(2);
        let between = weights.iter().map(apart).sum::<f64>() / sum;
        // A pass covers some squares only in part, and a point of them is under it or not. If a swath crosses a square that
        // is as wide as it is from all sides on average (4/pi of its side, Cauchy), each rim leaves a sixth of that width to
        // chance.
        let rims = 4.0 / std::f64::consts::PI * grid.cell_m / 3.0 / cut_width_m.unwrap_or(grid.cell_m);
        let end = Estimate::END_SDS * (between + estimate * rims.min(1.0)).sqrt();
        let last_s = f64::from(cells.last_visit_s[here]);
        Self {
            visits: Some(Estimate {
                estimate: rounded(estimate),
                low: Some(rounded((estimate - end).max(0.0))),
                high: Some(rounded(estimate + end)),
            }),
            last_s: last_s.is_finite().then_some(last_s),
        }
    }
}

/// The spot, pocket, island or ground without evidence that holds a place, or is closer to it than its position is known.
fn of_ground_found(findings: &Findings, place: Place, reach_m: f64) -> Result<Option<Said>, RegionError> {
    let is_at = |outline: &[Vec<Place>]| -> Result<bool, RegionError> {
        let region = Region::from_rings(vec![outline.to_vec()])?;
        Ok(region.contains(place) || region.edge_distance_m(place) <= reach_m)
    };
    for spot in &findings.stuck_spots {
        let middle = Place::new(spot.east_m, spot.north_m);
        if middle.distance_m(place) <= spot.radius_m + reach_m {
            let (spot, lost_min) = (spot.id.clone(), spot.minutes);
            return Ok(Some(Said::PlaceIsStuckSpot { spot, lost_min }));
        }
    }
    for pocket in &findings.missed_pockets {
        if is_at(&pocket.outline)? {
            let (pocket, area_m2) = (pocket.id.clone(), pocket.area_m2);
            return Ok(Some(Said::PlaceNever { pocket, area_m2 }));
        }
    }
    for ground in findings.unseen.iter().flatten() {
        if is_at(&ground.outline)? {
            let ground = ground.id.clone();
            return Ok(Some(Said::PlaceUnseen { ground }));
        }
    }
    for not_yet in &findings.not_yet {
        if is_at(&not_yet.outline)? {
            let pocket = not_yet.id.clone();
            return Ok(Some(match not_yet.hours_to_decide {
                Some(decided_h) => Said::PlaceNotYet { pocket, decided_h },
                None => Said::PlaceNotYetOpen { pocket },
            }));
        }
    }
    for island in findings.drawn_outline.iter().flat_map(|drawn| &drawn.islands) {
        if is_at(std::slice::from_ref(&island.outline))? {
            let (island, area_m2) = (island.id.clone(), island.area_m2);
            return Ok(Some(Said::PlaceInIsland { island, area_m2 }));
        }
    }
    Ok(None)
}

/// What the visits to a place on open lawn show, compared with those of the lawn.
fn by_visits(visits: Option<Estimate>, lawn_visits: f64, error_m: f64, radius_m: f64) -> Said {
    let Some(Estimate {
        estimate: visits,
        low: Some(low),
        high: Some(high),
    }) = visits
    else {
        return Said::PlaceCannotTell { error_m };
    };
    let seldom = SELDOM_SHARE * lawn_visits;
    let is_blurred = error_m > radius_m && low < NEVER_VISITS && high > lawn_visits;
    if visits < NEVER_VISITS {
        match is_blurred {
            true => Said::PlaceCannotTell { error_m },
            false => Said::PlaceGap {},
        }
    } else if high < seldom {
        Said::PlaceSeldom { visits, lawn_visits }
    } else if visits < seldom {
        Said::PlaceFew { visits, lawn_visits }
    } else {
        Said::PlaceOften { visits, lawn_visits }
    }
}
