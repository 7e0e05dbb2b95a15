//! Why can an analysis not continue?

use tussock_plane::RegionError;
use tussock_types::{PlanFault, plural};

/// Why an analysis cannot continue.
#[derive(Clone, Debug, thiserror::Error)]
#[non_exhaustive]
pub enum AnalyseError {
    /// Nothing was logged.
    #[error(
        "no usable fix: {read} were read, {gated} of them taken out for poor quality or as jumps (expected at least two)"
    )]
    NoFixes {
        /// Fixes in the traces.
        read: usize,
        /// Fixes that the outlier filter removed.
        gated: usize,
    },
    /// The machine stood still.
    #[error(
        "the positions never leave a circle of {extent_m:.1} m: the machine did not drive (expected at least {least_m} m)"
    )]
    NoMovement {
        /// Extent of all positions.
        extent_m: f64,
        /// Least extent that counts as driving.
        least_m: f64,
    },
    /// The plan is not sound.
    #[error("the plan has {} that must be mended first", count(.0))]
    PlanFaults(
        /// All faults, including the fatal ones.
        Vec<PlanFault>,
    ),
    /// The log was made somewhere else.
    #[error(
        "plan and log lie {} apart: the middle of the log is at {log_lat_deg:.6}, {log_lon_deg:.6}, the lawn at \
         {plan_lat_deg:.6}, {plan_lon_deg:.6}{}",
        distance(*.distance_m),
        if *.is_swapped { "; with latitude and longitude of the plan exchanged they would meet (GeoJSON wants longitude first)" } else { "" }
    )]
    PlanAndLogFarApart {
        /// How far.
        distance_m: f64,
        /// Middle of the log.
        log_lat_deg: f64,
        /// Middle of the log.
        log_lon_deg: f64,
        /// Middle of the plan.
        plan_lat_deg: f64,
        /// Middle of the plan.
        plan_lon_deg: f64,
        /// Whether exchanging latitude and longitude would bring them together.
        is_swapped: bool,
    },
    /// Logs of two gardens, and no plan that has both.
    #[error(
        "{one} and {other} lie {} apart: logs of two gardens in one call (expected those of one, or a plan that has both lawns)",
        distance(*.apart_m)
    )]
    TwoGardens {
        /// Files of one.
        one: String,
        /// Files of the other.
        other: String,
        /// Between the ground of the two.
        apart_m: f64,
    },
    /// One of several logs was made somewhere else.
    #[error("{files} was logged {} from the lawn of the plan: a log of another garden (expected logs of this one)", distance(*.distance_m))]
    LogOfAnotherGarden {
        /// The files.
        files: String,
        /// From the box round the lawn to the middle of the log.
        distance_m: f64,
    },
    /// The log was made in a garden of another shape.
    #[error(
        "the plan is of another garden, or lacks a part of this one: of {turns} turns in the log, {:.0} % were made at its edges \
         and {:.0} % metres outside it, wherever it is laid within {} m (expected seven in ten and more, and one in ten at most)",
        100.0 * .explained_fraction,
        100.0 * .outside_fraction,
        tussock_locate::plan_fit::MOST_OFFSET_M
    )]
    PlanOfAnotherGarden {
        /// Turns in the log.
        turns: usize,
        /// The fraction of them that an edge explains.
        explained_fraction: f64,
        /// The fraction of them that was made metres outside the plan.
        outside_fraction: f64,
    },
    /// The surveyed path cannot be compared with the log.
    #[error("{name}: {why}")]
    ReferenceApart {
        /// Name of the surveyed path.
        name: String,
        /// What keeps them apart.
        why: &'static str,
    },
    /// Nothing can be counted.
    #[error("no cutting width is given; expected one, such as 0.22 m")]
    NoCutWidth,
    /// No machine has such a width.
    #[error("cutting width {cut_width_m} m (expected 0.05 to 2 m)")]
    CutWidthOutOfRange {
        /// The width.
        cut_width_m: f64,
    },
    /// No stay shows how the receiver errs.
    #[error(
        "the machine never stands for ten minutes in this log (expected a stay, which shows how the receiver errs)"
    )]
    NeverStands,
    /// A card is of one receiver.
    #[error(
        "the logs are of {machines} machines (expected those of one: each receiver has errors of its own)"
    )]
    SeveralReceivers {
        /// How many.
        machines: usize,
    },
    /// Nobody opened the device card.
    #[error(
        "the device card {file:?} was not read (expected positions.card to be read together with the settings)"
    )]
    CardNotRead {
        /// Its name.
        file: String,
    },
    /// Too little standing time.
    #[error(
        "the device card {file:?} does not show how the receiver errs: it lasts {lasts_s:.0} s, or holds its positions (expected the error of \
         ten minutes at rest and more, as tussock inspect --write-error writes it)"
    )]
    CardTellsNothing {
        /// Its name.
        file: String,
        /// How long it lasts.
        lasts_s: f64,
    },
    /// Metres of the log's own cannot be laid over a plan.
    #[error(
        "the log is in metres of its own and the plan on Earth (expected positions.origin_lat_deg and \
         positions.origin_lon_deg in the settings, or no plan)"
    )]
    LocalLogWithPlan,
    /// A log in metres of its own, where geographic coordinates are needed.
    #[error(
        "the log is in metres of its own, and plans and degrees are of places on Earth (expected positions.origin_lat_deg and \
         positions.origin_lon_deg in the settings)"
    )]
    NoPlaceOnEarth,
    /// A complaint without a place.
    #[error("a complaint has no place (expected one of complaint.at and complaint.at_m)")]
    ComplaintWithoutPlace,
    /// Some logs are on Earth and some in metres.
    #[error("some logs are on Earth and some in metres of their own (expected one kind)")]
    MixedFrames,
    /// Too large for a garden.
    #[error("the positions extend over {extent_m:.0} m (limit {limit_m:.0} m, raised by limits.extent_m)")]
    ExtentTooLarge {
        /// Extent.
        extent_m: f64,
        /// Limit.
        limit_m: f64,
    },
    /// Too many fixes.
    #[error("{} (limit {limit}, raised by limits.fixes)", plural(*fixes, "fix", "fixes"))]
    TooManyFixes {
        /// Fixes in all traces.
        fixes: u64,
        /// Limit.
        limit: u64,
    },
    /// No mower can be followed from fix to fix.
    #[error(
        "one fix every {} says nothing of a lawn: a mower turns too often to be followed for longer than {limit_s:.0} s \
         (expected a logger that writes one fix a second)",
        period(*.period_s)
    )]
    TooCoarse {
        /// Usual time between two fixes.
        period_s: f64,
        /// Longest time at which a lawn can be counted.
        limit_s: f64,
    },
    /// More lawn than can be counted, even with the largest cells that a swath still covers.
    #[error(
        "the lawn fills a box of {width_m:.0} by {height_m:.0} m, which takes {cells} cells of half a swath (limit {limit}, \
         raised by limits.cells)"
    )]
    LawnTooLarge {
        /// Box round the lawn, west to east.
        width_m: f64,
        /// Box round the lawn, south to north.
        height_m: f64,
        /// Number of cells of half a swath in it.
        cells: u64,
        /// Limit.
        limit: u64,
    },
    /// More path than can be counted.
    #[error(
        "a path of {:.0} km sweeps {cells} cells (limit {limit}, 100 times limits.cells: expected fewer logs at a time)",
        .path_m / 1000.0
    )]
    PathTooLong {
        /// Length of the path.
        path_m: f64,
        /// Cells that the path sweeps, each counted as often as it is swept.
        cells: u64,
        /// Limit.
        limit: u64,
    },
    /// Nothing that could be a lawn.
    #[error(
        "no outline can be drawn from this trace: nothing of it is wider than {least_m} m (expected a plan, or a longer log)"
    )]
    NoOutline {
        /// Least width of a lawn.
        least_m: f64,
    },
    /// The log does not show where the plan lies.
    #[error("the plan cannot be aligned: {why}")]
    CannotAlign {
        /// Why not.
        why: String,
    },
    /// Polygon work failed.
    #[error("polygon work on the plan failed")]
    Region(#[from] RegionError),
}

impl AnalyseError {
    /// What the user can do about it.
    pub const fn hint(&self) -> Option<&'static str> {
        match self {
            Self::PlanAndLogFarApart { is_swapped: true, .. } => {
                Some("the plan lists latitude first; GeoJSON wants [longitude, latitude]")
            }
            Self::PlanAndLogFarApart { .. } | Self::PlanOfAnotherGarden { .. } => {
                Some("take the plan of the garden in which this log was made")
            }
            Self::NeverStands => {
                Some("let the logger stand for an hour under the open sky, and give that log")
            }
            Self::CardNotRead { .. } => {
                Some("leave positions.card out here, or ask the command, which reads it")
            }
            Self::LocalLogWithPlan => Some("leave out the plan to draw the outline from the log"),
            Self::NoOutline { .. } => Some("give a plan of the garden, which says where its lawn is"),
            _ => None,
        }
    }
}

fn count(faults: &[PlanFault]) -> String {
    plural(
        faults.iter().filter(|fault| fault.is_fatal).count(),
        "fault",
        "faults",
    )
}

/// A time between fixes as people say it.
pub fn period(period_s: f64) -> String {
    if period_s < 120.0 {
        format!("{period_s:.0} s")
    } else {
        format!("{:.0} minutes", period_s / 60.0)
    }
}

fn distance(distance_m: f64) -> String {
    if distance_m < 1000.0 {
        format!("{distance_m:.0} m")
    } else {
        format!("{:.1} km", distance_m / 1000.0)
    }
}
