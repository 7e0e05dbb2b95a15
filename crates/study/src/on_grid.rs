//! How many cells of this grid were visited, by this rule?

use tussock_coverage::custom::{self, CustomGrid, CustomGridError, Division, GridCount, VisitRule};
use tussock_coverage::swath::{self, Sweep};
use tussock_locate::{Piece, Vertex};
use tussock_plane::Frame;
use tussock_survey::Survey;
use tussock_survey::survey::places;
use tussock_survey::{AnalyseError, Job};
use tussock_types::{GeoPoint, Place, Positions, Settings};

/// The three corners that span a grid: its origin, the end of the columns, and the end of the rows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum GridCorners {
    /// Metres on the logger's own plane, for logs in local metres.
    Local([Place; 3]),
    /// On Earth. The grid is on the tangent plane at its own origin, or on the plan's plane if the located path is counted.
    Earth([GeoPoint; 3]),
    /// On Earth, with latitude and longitude used as if they were the axes of a plane, as in a spreadsheet. Published counts
    /// are often made this way. A rotated grid then has no right angles on the ground. Only for rules without a width.
    Degrees([GeoPoint; 3]),
}

/// Which path is placed over the grid.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum GridPath {
    /// Every fix as logged, joined by straight lines unless the log breaks off. Nothing is removed or smoothed.
    #[default]
    AsLogged,
    /// The path found from the fixes ([`tussock_locate`]). Fixes are those that passed the outlier filter.
    Located,
}

/// The question.
#[derive(Clone, Copy)]
pub struct GridJob<'a> {
    /// Logs, plan and settings. The plan matters only for the located path.
    pub job: &'a Job<'a>,
    /// Where the grid lies.
    pub corners: GridCorners,
    /// Its cells.
    pub division: Division,
    /// What makes a cell visited.
    pub rule: VisitRule,
    /// Which path to use.
    pub path: GridPath,
    /// Coming back after this long is a new visit; 0 makes every entry one.
    pub new_pass_after_s: f64,
}

/// Why nothing was counted on a grid.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum GridJobError {
    /// The corners do not make a grid.
    #[error("{0}")]
    Grid(CustomGridError),
    /// The rule has a width that no machine has.
    #[error("the rule has a cutting width of {cut_width_m} m; expected 0.05 to 2 m")]
    CutWidth {
        /// As given.
        cut_width_m: f64,
    },
    /// Metres on one side, degrees on the other.
    #[error("the grid lies {grid}, the log {log}; expected both on Earth or both in local metres")]
    Apart {
        /// Where the corners lie.
        grid: &'static str,
        /// Where the positions lie.
        log: &'static str,
    },
    /// A grid in degrees has no metres.
    #[error(
        "a grid of degrees has no metres: {found}, expected the path as logged and a rule without a width"
    )]
    NoMetres {
        /// What was asked.
        found: &'static str,
    },
    /// The path could not be found.
    #[error(transparent)]
    Analyse(#[from] AnalyseError),
}

/// Counts visits on the user's own grid; see [`tussock_coverage::custom`] for the rules and their edges.
///
/// # Errors
/// [`GridJobError`].
pub fn count_on_grid(grid_job: &GridJob<'_>) -> Result<GridCount, GridJobError> {
    let job = grid_job.job;
    let width = match grid_job.rule {
        VisitRule::FixInside | VisitRule::PathCrosses => None,
        VisitRule::SwathCoversCentre { cut_width_m } | VisitRule::AreaWeighted { cut_width_m } => {
            Some(cut_width_m)
        }
    };
    if let Some(cut_width_m) = width.filter(|width_m| !(0.05..=2.0).contains(width_m)) {
        return Err(GridJobError::CutWidth { cut_width_m });
    }
    let locals = job
        .traces
        .iter()
        .filter(|trace| matches!(trace.positions, Positions::Local { .. }))
        .count();
    let on_earth = match locals {
        0 => true,
        all if all == job.traces.len() => false,
        _ => return Err(AnalyseError::MixedFrames.into()),
    };
    match (grid_job.corners, on_earth) {
        (GridCorners::Local(_), true) => {
            return Err(GridJobError::Apart {
                grid: "in local metres",
                log: "on Earth",
            });
        }
        (GridCorners::Earth(_) | GridCorners::Degrees(_), false) => {
            return Err(GridJobError::Apart {
                grid: "on Earth",
                log: "in local metres",
            });
        }
        (GridCorners::Degrees(_), true) if width.is_some() => {
            return Err(GridJobError::NoMetres {
                found: "the rule has a width",
            });
        }
        (GridCorners::Degrees(_), true) if grid_job.path == GridPath::Located => {
            return Err(GridJobError::NoMetres {
                found: "the located path was asked for",
            });
        }
        _ => {}
    }
    match grid_job.path {
        GridPath::AsLogged => as_logged(grid_job),
        GridPath::Located => located(grid_job),
    }
}

fn laid(corners: [Place; 3], division: Division) -> Result<CustomGrid, GridJobError> {
    CustomGrid::from_corners(corners[0], corners[1], corners[2], division).map_err(GridJobError::Grid)
}

fn in_degrees(point: GeoPoint) -> Place {
    Place::new(point.lon_deg, point.lat_deg)
}

fn as_logged(grid_job: &GridJob<'_>) -> Result<GridCount, GridJobError> {
    let (corners, frame) = match grid_job.corners {
        GridCorners::Local(corners) => (corners, None),
        GridCorners::Degrees(corners) => (corners.map(in_degrees), None),
        GridCorners::Earth(corners) => {
            let frame = Frame::at(corners[0]);
            (corners.map(|corner| frame.to_place(corner)), Some(frame))
        }
    };
    let grid = laid(corners, grid_job.division)?;
    let mut fixes: Vec<(f64, Place, u32)> = Vec::new();
    let mut pieces: Vec<Piece> = Vec::new();
    let mut run = 0;
    for trace in grid_job.job.traces {
        let (east_m, north_m) = match (&trace.positions, frame) {
            (Positions::Geographic { lat_deg, lon_deg }, None) => (lon_deg.clone(), lat_deg.clone()),
            _ => places(trace, frame.as_ref()),
        };
        for index in 0..trace.len() {
            let is_first = index == 0 || trace.segment[index] != trace.segment[index - 1];
            if is_first {
                run += 1;
                pieces.push(Piece::default());
            }
            let place = Place::new(east_m[index], north_m[index]);
            let time_s = trace.time_s[index];
            fixes.push((time_s, place, run));
            if let Some(piece) = pieces.last_mut() {
                piece.vertices.push(Vertex::passed(place, time_s));
            }
        }
    }
    // Each machine's fixes are joined to its own: the run number separates them.
    Ok(counted(&grid, fixes, &pieces, grid_job))
}

fn located(grid_job: &GridJob<'_>) -> Result<GridCount, GridJobError> {
    let survey = Survey::of(grid_job.job)?;
    let corners = match (grid_job.corners, survey.frame) {
        (GridCorners::Earth(corners), Some(frame)) => corners.map(|corner| frame.to_place(corner)),
        (GridCorners::Local(corners), _) => corners,
        (GridCorners::Earth(corners) | GridCorners::Degrees(corners), _) => corners.map(in_degrees),
    };
    let grid = laid(corners, grid_job.division)?;
    let mut fixes: Vec<(f64, Place, u32)> = Vec::new();
    let mut before = 0;
    for track in &survey.tracks {
        let kept = &track.kept;
        fixes.extend(
            (0..kept.len()).map(|index| (kept.time_s[index], kept.place(index), before + kept.run[index])),
        );
        before += kept.run.last().map_or(0, |run| run + 1);
    }
    Ok(counted(&grid, fixes, &survey.swept_as_located(), grid_job))
}

/// The count, with fixes in time order.
fn counted(
    grid: &CustomGrid,
    mut fixes: Vec<(f64, Place, u32)>,
    pieces: &[Piece],
    grid_job: &GridJob<'_>,
) -> GridCount {
    fixes.sort_by(|a, b| a.0.total_cmp(&b.0));
    let sweeps = sweeps(pieces, grid_job);
    custom::count(grid, grid_job.rule, fixes, &sweeps, grid_job.new_pass_after_s)
}

/// Sweeps of the disc if the rule has one, or else of the antenna.
fn sweeps(pieces: &[Piece], grid_job: &GridJob<'_>) -> Vec<Sweep> {
    match grid_job.rule {
        VisitRule::FixInside => Vec::new(),
        VisitRule::PathCrosses => swath::sweeps_of(pieces.iter(), &Settings::default()),
        _ => swath::sweeps_of(pieces.iter(), grid_job.job.settings),
    }
}
