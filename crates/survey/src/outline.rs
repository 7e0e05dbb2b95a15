//! The outline of a lawn, and the islands in it, from the drive alone.
//!
//! Question: where is a lawn of which nobody has drawn a plan, what stands in it, and how far off may its edges be?
//!
//! Method. The swath is grown until neighbouring passes meet, holes are filled, and it is shrunk again (morphological
//! closing, Serra 1982); anything no wider than a few swaths (a walk to the gate, the way along a guide run) is dropped.
//! Turns lie on edges: their distances from this first outline show how deep inside it the machine turns, and the outline is
//! moved to where the edge of such a machine is, between half of its body and half of its disc, the limits of the distance
//! that a machine keeps. Ground inside that was never driven on is an island if the machine turned at it about as often per
//! metre as at the outer edge; ground left out by chance turns nobody.
//!
//! Exact to about one cell: `CELL_M`, more in boxes of several hectares. Approximate: how far beyond its turns the edge
//! lies, which no log shows; corners that the disc does not reach are cut off. Unknown: whether ground that turned the
//! machine is a flower bed or lawn behind a fence, so the user is asked about islands. Cost: a few distance transforms of
//! the box.

use crate::AnalyseError;
use tussock_coverage::pockets::{Pocket, pockets};
use tussock_coverage::{swath, visits};
use tussock_locate::turns::{self, Setback, SetbackSource, Turn};
use tussock_locate::{Track, noise};
use tussock_plane::{BitGrid, Region, Vector, distance, outlines};
use tussock_types::math;
use tussock_types::{Grid, MachineSettings, Place};

const CELL_M: f64 = 0.05;
/// Passes closer to each other than twice this have lawn between them.
const CLOSE_M: f64 = 1.5;
/// Boxes of more than a hectare are drawn on coarser cells.
const MOST_CELLS: u64 = 4_000_000;
/// Narrower ground is a way, not a lawn.
const LEAST_WIDTH_M: f64 = 1.0;
/// Narrower gaps between passes are left everywhere.
const LEAST_GAP_M: f64 = 0.3;
/// Turns within this distance of a gap's rim were made at it: half a body and the way past it (common practice, no source).
const AT_GAP_M: f64 = 0.15;
/// Fewer turns at a gap may be chance.
const LEAST_TURNS: usize = 4;
/// A gap is an island if it turned the machine this often, compared with an edge of the same length: half is the least that
/// a body in the shadow of others gets.
const LEAST_SHARE: f64 = 0.4;
/// Cell sides that follow a slanting line are longer than the line by 4 / pi, averaged over all directions (Cauchy 1832).
const SIDES_OVER_LINE: f64 = 4.0 / std::f64::consts::PI;
/// The distance between an edge and the turns at it is uncertain by at least this.
const LEAST_SETBACK_SD_M: f64 = 0.06;
/// Poorer positions do not show which edge turned the machine.
const MOST_GATHERED_M: f64 = 0.5;
/// Spacing of the places that are examined on an edge.
const STEP_M: f64 = 0.25;
/// An edge belongs to the turns within this distance of where they lie inside it: as many per metre as an hour of driving
/// leaves.
const BESIDE_TURN_M: f64 = 0.5;
/// Shorter stretches without a turn occur everywhere.
const LEAST_UNTURNED_M: f64 = 3.0;

/// A lawn as drawn from the drive.
#[derive(Clone, Debug)]
pub struct DrawnLawn {
    /// Its outline, without islands.
    pub region: Region,
    /// Ground inside that turned the machine and was never entered, largest first.
    pub islands: Vec<Region>,
    /// How far inside its edges the machine is assumed to turn.
    pub setback_m: f64,
    /// How far off the edges may be, as a standard deviation.
    pub edge_sd_m: f64,
    /// The longest stretch of the outer edge without a turn.
    pub unturned: Option<UnturnedStretch>,
}

/// A stretch of an edge at which the machine never turned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UnturnedStretch {
    /// Its middle.
    pub middle: Place,
    /// Along the edge.
    pub length_m: f64,
}

impl DrawnLawn {
    /// The outline including the islands.
    ///
    /// # Errors
    /// [`AnalyseError::Region`], if polygon work fails.
    pub fn whole(&self) -> Result<Region, AnalyseError> {
        let shapes = std::iter::once(&self.region).chain(&self.islands);
        Ok(Region::union_of(shapes)?)
    }
}

/// Draws the lawn; `cut_width_m` is the width to paint with.
///
/// # Errors
/// [`AnalyseError::NoOutline`] if no ground is wide enough for a lawn.
pub fn drawn_lawn(
    tracks: &[Track],
    machine: &MachineSettings,
    cut_width_m: f64,
    most_cells: u64,
) -> Result<DrawnLawn, AnalyseError> {
    let mut hull = Hull::of(tracks, cut_width_m, most_cells)?;
    let first = hull.region(0.0)?;
    let turns: Vec<Turn> = (tracks.iter())
        .flat_map(|track| turns::turns(track, &first, &[]))
        .collect();
    let error_m = tracks.iter().map(shown_error_m).fold(0.0, f64::max);
    let setback = assumed(machine, cut_width_m);
    let first_inside = inside(tracks, &turns, cut_width_m, error_m);
    let at_edge = turns.iter().filter(|turn| turn.at.is_some()).count();
    let turns_per_m = at_edge as f64 / first.perimeter_m().max(1e-9);
    let ahead_m = 0.5 * cut_width_m + AT_GAP_M + error_m;
    let mut gaps = hull.gaps(LEAST_GAP_M + 2.0 * error_m);
    gaps.retain(|gap| is_island(gap, &hull, &turns, ahead_m, turns_per_m));
    gaps.iter().for_each(|gap| hull.take_out(gap));
    let region = hull.region(setback.inside_m - first_inside.0)?;
    let mut islands = Vec::new();
    for hole in region
        .rings()
        .into_iter()
        .flat_map(|rings| rings.into_iter().skip(1))
    {
        islands.push(Region::from_rings(vec![vec![hole]])?);
    }
    islands.retain(|island| island.area_m2() >= LEAST_GAP_M * LEAST_GAP_M);
    islands.sort_by(|a, b| b.area_m2().total_cmp(&a.area_m2()));
    Ok(DrawnLawn {
        unturned: unturned(
            &region,
            &turns,
            hull.grid,
            setback.inside_m + BESIDE_TURN_M + 2.0 * error_m,
        ),
        region,
        islands,
        setback_m: setback.inside_m,
        edge_sd_m: [setback.sd_m, first_inside.1, shared_drift_m(tracks)]
            .into_iter()
            .fold(0.0, math::hypot),
    })
}

/// How far inside the first outline the machine turns, and its standard deviation.
///
/// The outermost of all drifts drew that outline (white errors did not, since paths are smooth): the largest of n
/// independent normal ones is about sqrt(2 ln n) standard deviations (from memory). A machine that turns farther inside than
/// that turns where it likes, and the outline is that far inside if positions are so poor that no turn shows its edge.
fn inside(tracks: &[Track], turns: &[Turn], cut_width_m: f64, error_m: f64) -> (f64, f64) {
    let driving_s: f64 = tracks.iter().map(Track::driving_s).sum();
    // Each side of a lawn sees a quarter of them.
    let errors = (0.25 * driving_s / (2.0 * noise::USUAL_DRIFT_TIME_S)).max(2.0);
    let drift_m = tracks
        .iter()
        .filter_map(|track| track.noise.drift_m)
        .fold(0.0, f64::max);
    let most_m = 0.5 * cut_width_m + (2.0 * math::ln(errors)).sqrt() * drift_m;
    match Setback::gathered(turns, error_m).filter(|_| error_m <= MOST_GATHERED_M) {
        Some((inside_m, sd_m)) => (inside_m.min(most_m), sd_m),
        None => (most_m, 0.5 * error_m),
    }
}

/// How far inside its edges a machine turns if no plan shows it: the stated value, or else between half its disc, so that it
/// cuts up to the edge, and half its body, so that it stays on the lawn.
fn assumed(machine: &MachineSettings, cut_width_m: f64) -> Setback {
    let expected = Setback::expected(machine);
    let (disc_m, body_m) = (
        0.5 * cut_width_m,
        machine.body_width_m.map(|width_m| 0.5 * width_m),
    );
    match (expected.source, body_m) {
        (SetbackSource::Usual, Some(body_m)) if body_m > disc_m => Setback {
            inside_m: 0.5 * (disc_m + body_m),
            sd_m: LEAST_SETBACK_SD_M.max(0.5 * (body_m - disc_m)),
            ..expected
        },
        (SetbackSource::Usual, _) => Setback {
            inside_m: disc_m.max(expected.inside_m),
            sd_m: 2.0 * LEAST_SETBACK_SD_M,
            ..expected
        },
        _ => expected,
    }
}

/// Position error as far as the log shows it: a drift that nothing shows is no reason to shift the estimate.
fn shown_error_m(track: &Track) -> f64 {
    match track.unseen_drift_m() {
        Some(_) => track.noise.white_m,
        None => track.position_error_m(),
    }
}

/// Drift that is common to all turns at one edge: that of the poorest log, over as many drift times as it drove.
fn shared_drift_m(tracks: &[Track]) -> f64 {
    let shared = |track: &Track| {
        let drift_m = (track.noise.drift_m).unwrap_or_else(|| track.unseen_drift_m().unwrap_or(0.0));
        let drift_s = track.noise.drift_time_s.unwrap_or(noise::USUAL_DRIFT_TIME_S);
        drift_m * (2.0 * drift_s / track.driving_s().max(2.0 * drift_s)).sqrt()
    };
    tracks.iter().map(shared).fold(0.0, f64::max)
}

/// Whether the machine turned at a gap about as often per metre as at the outer edge.
fn is_island(gap: &Pocket, hull: &Hull, turns: &[Turn], ahead_m: f64, turns_per_m: f64) -> bool {
    let grid = gap.cells.grid;
    let leads_in = |turn: &&Turn| {
        let ahead: Place = (Vector::from(turn.place) + turn.into * ahead_m).into();
        (grid.cell_at(ahead)).is_some_and(|(column, row)| gap.cells.get(column, row))
    };
    let turned = turns.iter().filter(leads_in).count();
    let expected = turns_per_m * hull.rim_m(gap);
    turned >= LEAST_TURNS && turned as f64 >= LEAST_SHARE * expected
}

/// The longest stretch of an outer edge that lies farther than `reach_m` from every turn.
fn unturned(region: &Region, turns: &[Turn], grid: Grid, reach_m: f64) -> Option<UnturnedStretch> {
    let mut turned = BitGrid::new(grid);
    swath::mark(
        &mut turned,
        turns.iter().map(|turn| (turn.place, turn.place)),
        reach_m,
    );
    let is_turned = |place: Place| {
        let cell = grid.cell_at(place);
        cell.is_none_or(|(column, row)| turned.get(column, row))
    };
    let mut longest: Option<UnturnedStretch> = None;
    for ring in region.rings().iter().filter_map(|rings| rings.first()) {
        let pieces = ring.windows(2).flat_map(|edge| {
            let (piece_m, middles) = edge[0].pieces(edge[1], STEP_M);
            middles.map(move |middle| (middle, piece_m))
        });
        let pieces: Vec<(Place, f64)> = pieces.collect();
        let (mut stretch, mut length_m): (Vec<Place>, f64) = (Vec::new(), 0.0);
        // Go round twice, because a stretch may pass the place where the ring begins.
        for &(place, piece_m) in pieces.iter().chain(&pieces) {
            if is_turned(place) || stretch.len() == pieces.len() {
                stretch.clear();
                length_m = 0.0;
                continue;
            }
            stretch.push(place);
            length_m += piece_m;
            if length_m >= LEAST_UNTURNED_M && longest.is_none_or(|before| length_m > before.length_m) {
                let middle = stretch[stretch.len() / 2];
                longest = Some(UnturnedStretch { middle, length_m });
            }
        }
    }
    longest
}

/// Ground that the drive encloses.
struct Hull {
    grid: Grid,
    /// Under the disc.
    swept: BitGrid,
    /// The hull itself.
    ground: BitGrid,
}

impl Hull {
    fn of(tracks: &[Track], cut_width_m: f64, most_cells: u64) -> Result<Self, AnalyseError> {
        let drives = || {
            let legs = tracks.iter().flat_map(Track::legs);
            legs.map(|(from, to)| (from.place, to.place))
        };
        // The box of the path, not of the fixes: the path may lie beside them.
        let (low, high) =
            Place::bounds(drives().flat_map(|(from, to)| [from, to])).ok_or(Self::NO_OUTLINE)?;
        let margin_m = CLOSE_M + cut_width_m + 3.0 * CELL_M;
        let low = Place::new(low.east_m - margin_m, low.north_m - margin_m);
        let high = Place::new(high.east_m + margin_m, high.north_m + margin_m);
        let grid = visits::grid_over(low, high, CELL_M, most_cells.min(MOST_CELLS));
        let mut swept = BitGrid::new(grid);
        swath::mark(&mut swept, drives(), 0.5 * cut_width_m);
        let mut painted = BitGrid::new(grid);
        // Growing in one step: paint with a wider brush.
        swath::mark(&mut painted, drives(), 0.5 * cut_width_m + CLOSE_M);
        fill_holes(&mut painted);
        let squares = distance::squared(grid.columns, grid.rows, |column, row| !painted.get(column, row));
        let shrink_cells = CLOSE_M / grid.cell_m + 0.5;
        let ground = grid_of_widest(grid, |column, row| {
            f64::from(squares[row * grid.columns + column]) >= shrink_cells * shrink_cells
        });
        match ground.count() {
            0 => Err(Self::NO_OUTLINE),
            _ => Ok(Self { grid, swept, ground }),
        }
    }

    /// Removes a gap from the lawn.
    fn take_out(&mut self, gap: &Pocket) {
        let (column_start, row_start) = corner_of(self.grid, gap);
        for (column, row) in gap.cells.cells_on() {
            self.ground.clear(column_start + column, row_start + row);
        }
    }

    const NO_OUTLINE: AnalyseError = AnalyseError::NoOutline {
        least_m: LEAST_WIDTH_M,
    };

    /// Cells of the hull with its edge moved outwards by `beyond_m`.
    fn within(&self, beyond_m: f64) -> BitGrid {
        let (grid, ground) = (self.grid, &self.ground);
        // Distances run from centre to centre: the edge lies half a cell before the first centre outside.
        let cells = beyond_m.abs() / grid.cell_m + 0.5;
        let is_outwards = beyond_m > 0.0;
        let squares = distance::squared(grid.columns, grid.rows, |column, row| {
            ground.get(column, row) == is_outwards
        });
        grid_of_widest(grid, |column, row| {
            let is_near = f64::from(squares[row * grid.columns + column]) < cells * cells;
            is_near == is_outwards
        })
    }

    /// The same as a region.
    fn region(&self, beyond_m: f64) -> Result<Region, AnalyseError> {
        let kept = self.within(beyond_m);
        if kept.count() == 0 {
            return Err(Self::NO_OUTLINE);
        }
        let region = Region::from_rings(outlines(&kept))?;
        Ok(Region::from_rings(region.outline_simplified(self.grid.cell_m))?)
    }

    /// Ground inside that was never driven on and is at least this wide.
    fn gaps(&self, least_width_m: f64) -> Vec<Pocket> {
        let mut free = self.ground.clone();
        free.and_not_in_place(&self.swept);
        pockets(&free, least_width_m, least_width_m * least_width_m)
    }

    /// Length of the part of a gap's rim that borders on ground of the hull.
    fn rim_m(&self, gap: &Pocket) -> f64 {
        let (column_start, row_start) = corner_of(self.grid, gap);
        let own = gap.cells.grid;
        let borders = |column: i64, row: i64| {
            let is_own = (0..own.columns as i64).contains(&column)
                && (0..own.rows as i64).contains(&row)
                && gap.cells.get(column as usize, row as usize);
            let (column, row) = (column + column_start as i64, row + row_start as i64);
            let is_on_grid =
                (0..self.grid.columns as i64).contains(&column) && (0..self.grid.rows as i64).contains(&row);
            !is_own && is_on_grid && self.ground.get(column as usize, row as usize)
        };
        let sides: usize = (gap.cells.cells_on())
            .map(|(column, row)| {
                let (column, row) = (column as i64, row as i64);
                [(1, 0), (-1, 0), (0, 1), (0, -1)]
                    .into_iter()
                    .filter(|(east, north)| borders(column + east, row + north))
                    .count()
            })
            .sum();
        sides as f64 * own.cell_m / SIDES_OVER_LINE
    }
}

/// First column and row of a pocket on the grid that it was cut from.
fn corner_of(grid: Grid, pocket: &Pocket) -> (usize, usize) {
    let own = pocket.cells.grid;
    let cells = |from_m: f64, to_m: f64| ((to_m - from_m) / grid.cell_m).round() as usize;
    (
        cells(grid.east_min_m, own.east_min_m),
        cells(grid.north_min_m, own.north_min_m),
    )
}

/// The requested cells, without ways.
fn grid_of_widest(grid: Grid, is_on: impl Fn(usize, usize) -> bool) -> BitGrid {
    let mut lawn = BitGrid::new(grid);
    for row in 0..grid.rows {
        for column in (0..grid.columns).filter(|column| is_on(*column, row)) {
            lawn.set(column, row);
        }
    }
    let mut kept = BitGrid::new(grid);
    for pocket in pockets(&lawn, LEAST_WIDTH_M, 2.0) {
        let (column_start, row_start) = corner_of(grid, &pocket);
        let own = pocket.cells.grid;
        for row in 0..own.rows {
            distance::runs_of_row(pocket.cells.row(row), own.columns, |start, end| {
                kept.set_span(row_start + row, column_start + start, column_start + end);
            });
        }
    }
    kept
}

/// Fills free ground that does not reach the rim of the grid.
fn fill_holes(painted: &mut BitGrid) {
    let grid = painted.grid;
    let (columns, rows) = (grid.columns, grid.rows);
    let mut free = BitGrid::new(grid);
    for row in 0..rows {
        free.set_span(row, 0, columns);
    }
    free.and_not_in_place(painted);
    for part in distance::parts(&free, distance::Connectivity::Four) {
        let window = part.window();
        let on_rim = window.column_start == 0
            || window.row_start == 0
            || window.column_end == columns
            || window.row_end == rows;
        if !on_rim {
            part.runs
                .iter()
                .for_each(|run| painted.set_span(run.row, run.start, run.end));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use tussock_plane::Vector;

    fn square(side_m: f64) -> Region {
        let corners = [
            (0.0, 0.0),
            (side_m, 0.0),
            (side_m, side_m),
            (0.0, side_m),
            (0.0, 0.0),
        ];
        let ring = corners.map(|(east_m, north_m)| Place::new(east_m, north_m));
        Region::from_rings(vec![vec![ring.to_vec()]]).unwrap()
    }

    #[test]
    fn the_edge_to_walk_first_is_the_one_that_turned_nobody() {
        let turn = |east_m: f64, north_m: f64| Turn {
            place: Place::new(east_m, north_m),
            time_s: 0.0,
            into: Vector::new(1.0, 0.0),
            into_m: 5.0,
            onward: Vector::new(-1.0, 0.0),
            onward_m: 5.0,
            edge_m: 0.15,
            at: None,
        };
        let grid = visits::grid_over(Place::new(-1.0, -1.0), Place::new(11.0, 11.0), 0.1, 100_000);
        let along = |step: i32| 0.3 + 0.4 * f64::from(step);
        // All along the western, southern and eastern edges.
        let three: Vec<Turn> = (0..25)
            .flat_map(|step| {
                [
                    turn(0.15, along(step)),
                    turn(along(step), 0.15),
                    turn(9.85, along(step)),
                ]
            })
            .collect();
        let UnturnedStretch { middle, length_m } = unturned(&square(10.0), &three, grid, 0.65).unwrap();
        assert!(middle.distance_m(Place::new(5.0, 10.0)) < 0.3, "{middle:?}");
        // Turns in the corners are beside its ends.
        assert!((length_m - 8.4).abs() < 0.5, "{length_m}");
        let all: Vec<Turn> = (three.iter().copied())
            .chain((0..25).map(|step| turn(along(step), 9.85)))
            .collect();
        assert_eq!(unturned(&square(10.0), &all, grid, 0.65), None);
        // It is one stretch, round the corner at which the ring begins.
        let far: Vec<Turn> = (0..25)
            .flat_map(|step| [turn(9.85, along(step)), turn(along(step), 9.85)])
            .collect();
        let UnturnedStretch { middle, length_m } = unturned(&square(10.0), &far, grid, 0.65).unwrap();
        assert!(middle.distance_m(Place::new(0.0, 0.0)) < 0.3, "{middle:?}");
        assert!((length_m - 18.4).abs() < 0.5, "{length_m}");
    }

    #[test]
    fn a_machine_of_which_little_is_known_turns_between_half_its_disc_and_half_its_body() {
        let mut machine = MachineSettings::default();
        assert_eq!(assumed(&machine, 0.22).inside_m, 0.15);
        machine.body_width_m = Some(0.5);
        let between = assumed(&machine, 0.22);
        assert!((between.inside_m - 0.18).abs() < 1e-12 && (between.sd_m - 0.07).abs() < 1e-12);
        machine.past_boundary_m = Some(0.3);
        assert_eq!(assumed(&machine, 0.22).inside_m, -0.3);
    }
}
