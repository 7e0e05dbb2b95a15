//! Finds rows of cells under a capsule.

use tussock_locate::activities::backs_off;
use tussock_locate::{Piece, Track};
use tussock_plane::{BitGrid, Vector};
use tussock_types::math;
use tussock_types::{Grid, Place, Settings};

/// One straight sweep of the cutting disc, or one stand (both ends equal).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sweep {
    /// Middle of the disc at the start.
    pub from: Place,
    /// Middle of the disc at the end.
    pub to: Place,
    /// Time at the start.
    pub start_s: f64,
    /// Time at the end.
    pub end_s: f64,
    /// Time on the move before it, over all machines.
    pub driving_before_s: f64,
    /// Time on the move within it.
    pub driving_s: f64,
}

/// Shorter ways back are a wobble of the path.
const LEAST_REVERSE_M: f64 = 0.1;

/// The sweeps of several tracks in time order, with the cutting disc offset from the antenna as the settings say.
///
/// The body points in the direction of driving, except while it backs off ([`backs_off`]). A stand sweeps a disc. Backing
/// out of the station is not distinguished from driving out.
pub fn sweeps(tracks: &[Track], settings: &Settings) -> Vec<Sweep> {
    sweeps_of(tracks.iter().flat_map(|track| &track.pieces), settings)
}

/// The same for pieces of path, in any order.
pub fn sweeps_of<'a>(pieces: impl Iterator<Item = &'a Piece>, settings: &Settings) -> Vec<Sweep> {
    let forward_m = settings.machine.cutter_forward_m - settings.machine.antenna_forward_m;
    let left_m = -settings.machine.antenna_left_m;
    let shifts = forward_m != 0.0 || left_m != 0.0;
    let mut sweeps = Vec::new();
    for piece in pieces {
        let still = |place: Place, start_s: f64, end_s: f64| Sweep {
            from: place,
            to: place,
            start_s,
            end_s,
            driving_before_s: 0.0,
            driving_s: 0.0,
        };
        let mut last_end: Option<(Place, f64)> = None;
        let mut before = None;
        for pair in piece.vertices.windows(2) {
            let (from, to) = (pair[0], pair[1]);
            let backwards = before.is_some_and(|before| backs_off(before, (from, to), LEAST_REVERSE_M));
            before = Some((from, to));
            let facing = if backwards { -1.0 } else { 1.0 };
            let along = Vector::direction(from.place, to.place).filter(|_| shifts);
            let shift = along.map_or(Vector::default(), |along| {
                (along * forward_m + along.left() * left_m) * facing
            });
            let moved = |place: Place| Place::from(Vector::from(place) + shift);
            let sweep = Sweep {
                from: moved(from.place),
                to: moved(to.place),
                start_s: from.leave_s,
                end_s: to.arrive_s.max(from.leave_s),
                driving_before_s: 0.0,
                driving_s: (to.arrive_s - from.leave_s).max(0.0),
            };
            match last_end {
                // A turn on the spot carries the disc from one side to the other.
                Some((place, since_s)) if shifts => {
                    sweeps.push(Sweep {
                        to: sweep.from,
                        ..still(place, since_s, from.leave_s)
                    });
                }
                Some((place, since_s)) if from.leave_s > since_s => {
                    sweeps.push(still(place, since_s, from.leave_s))
                }
                None if from.leave_s > from.arrive_s => {
                    sweeps.push(still(sweep.from, from.arrive_s, from.leave_s));
                }
                _ => {}
            }
            sweeps.push(sweep);
            last_end = Some((sweep.to, sweep.end_s));
        }
        match (last_end, piece.vertices.last()) {
            (Some((place, since_s)), Some(last)) if last.leave_s > since_s => {
                sweeps.push(still(place, since_s, last.leave_s));
            }
            (None, Some(only)) => sweeps.push(still(only.place, only.arrive_s, only.leave_s)),
            _ => {}
        }
    }
    sweeps.sort_by(|a, b| a.start_s.total_cmp(&b.start_s));
    let mut driven_s = 0.0;
    for sweep in &mut sweeps {
        sweep.driving_before_s = driven_s;
        driven_s += sweep.driving_s;
    }
    sweeps
}

/// Calls `paint(row, first column, one past the last)` for each row of cells whose centres lie within `radius_m` of the
/// segment from `from` to `to`.
pub fn for_each_span(
    grid: &Grid,
    from: Place,
    to: Place,
    radius_m: f64,
    paint: impl FnMut(usize, usize, usize),
) {
    for_each_span_in(grid, 0..grid.rows, from, to, radius_m, paint);
}

/// The same for some rows of the grid.
pub(crate) fn for_each_span_in(
    grid: &Grid,
    rows: std::ops::Range<usize>,
    from: Place,
    to: Place,
    radius_m: f64,
    mut paint: impl FnMut(usize, usize, usize),
) {
    // In cells, origin at the centre of the first cell.
    let scale = 1.0 / grid.cell_m;
    let (ax, ay) = (
        (from.east_m - grid.east_min_m) * scale - 0.5,
        (from.north_m - grid.north_min_m) * scale - 0.5,
    );
    let (bx, by) = (
        (to.east_m - grid.east_min_m) * scale - 0.5,
        (to.north_m - grid.north_min_m) * scale - 0.5,
    );
    let radius = radius_m * scale;
    let lowest = (ay.min(by) - radius).ceil().max(rows.start as f64);
    let highest = (ay.max(by) + radius).floor().min(rows.end as f64 - 1.0);
    if !(lowest <= highest) || ax.max(bx) + radius < 0.0 || ax.min(bx) - radius > grid.columns as f64 {
        return;
    }
    let capsule = Capsule::new((ax, ay), (bx, by), radius);
    let rim = capsule.straight_rim();
    for row in lowest as usize..=highest as usize {
        let y = row as f64;
        let (left, right) = match &rim {
            Some(rim) if rim.rows.contains(&y) => rim.span_at(y),
            _ => capsule.span_at(y),
        };
        // Round up and down to whole cells by conversion: without newer instructions `ceil` and `floor` are calls.
        let (left, right) = (left.max(0.0), right.min(grid.columns as f64 - 1.0));
        if left <= right {
            let first = left as usize + usize::from((left as usize as f64) < left);
            let end = right as usize + 1;
            if first < end {
                paint(row, first, end);
            }
        }
    }
}

/// All points within a radius of a segment; lengths in any one unit.
pub(crate) struct Capsule {
    from: (f64, f64),
    to: (f64, f64),
    radius: f64,
    length: f64,
    /// Unit vector along it.
    along: (f64, f64),
}

impl Capsule {
    pub(crate) fn new(from: (f64, f64), to: (f64, f64), radius: f64) -> Self {
        let step = (to.0 - from.0, to.1 - from.1);
        let length = math::hypot(step.0, step.1);
        let along = if length > 0.0 {
            (step.0 / length, step.1 / length)
        } else {
            (1.0, 0.0)
        };
        Self {
            from,
            to,
            radius,
            length,
            along,
        }
    }

    /// The rows on which its rim runs beside the segment, not before or beyond an end; `None` for a segment that is level.
    fn straight_rim(&self) -> Option<StraightRim> {
        let (c, s) = self.along;
        let sideways = self.radius * c.abs();
        (s.abs() > 1e-9).then(|| StraightRim {
            rows: self.from.1.min(self.to.1) + sideways..=self.from.1.max(self.to.1) - sideways,
            from: self.from,
            slope: c / s,
            half: self.radius / s.abs(),
        })
    }

    /// Where the level line at `y` enters and leaves it; the first is above the second if the line misses it.
    #[inline]
    pub(crate) fn span_at(&self, y: f64) -> (f64, f64) {
        let ((ax, ay), (bx, by), (c, s)) = (self.from, self.to, self.along);
        let (radius, length) = (self.radius, self.length);
        let (mut left, mut right) = (f64::INFINITY, f64::NEG_INFINITY);
        for (x, centre_y) in [(ax, ay), (bx, by)] {
            let square = radius * radius - (y - centre_y) * (y - centre_y);
            if square >= 0.0 {
                let half = square.sqrt();
                left = left.min(x - half);
                right = right.max(x + half);
            }
        }
        if length > 0.0 {
            let up = y - ay;
            let (mut low, mut high) = (f64::NEG_INFINITY, f64::INFINITY);
            if s.abs() > 1e-12 {
                let (one, two) = (ax + (up * c - radius) / s, ax + (up * c + radius) / s);
                low = low.max(one.min(two));
                high = high.min(one.max(two));
            } else if (up * c).abs() > radius {
                high = f64::NEG_INFINITY;
            }
            if c.abs() > 1e-12 {
                let (one, two) = (ax - up * s / c, ax + (length - up * s) / c);
                low = low.max(one.min(two));
                high = high.min(one.max(two));
            } else if !(0.0..=length).contains(&(up * s)) {
                high = f64::NEG_INFINITY;
            }
            if low <= high {
                left = left.min(low);
                right = right.max(high);
            }
        }
        (left, right)
    }
}

/// Rows between the ends of a capsule: its span moves by the same step from one row to the next.
struct StraightRim {
    rows: std::ops::RangeInclusive<f64>,
    from: (f64, f64),
    /// Sideways movement per row upwards.
    slope: f64,
    half: f64,
}

impl StraightRim {
    #[inline]
    fn span_at(&self, y: f64) -> (f64, f64) {
        let middle = self.from.0 + (y - self.from.1) * self.slope;
        (middle - self.half, middle + self.half)
    }
}

/// Marks the swath of many segments.
pub fn mark(mask: &mut BitGrid, segments: impl Iterator<Item = (Place, Place)>, radius_m: f64) {
    let grid = mask.grid;
    for (from, to) in segments {
        for_each_span(&grid, from, to, radius_m, |row, start, end| {
            mask.set_span(row, start, end)
        });
    }
}

/// The cells under some sweeps.
pub fn swept(grid: Grid, sweeps: &[Sweep], radius_m: f64) -> BitGrid {
    let mut mask = BitGrid::new(grid);
    mark(
        &mut mask,
        sweeps.iter().map(|sweep| (sweep.from, sweep.to)),
        radius_m,
    );
    mask
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn slow(grid: &Grid, from: Place, to: Place, radius_m: f64) -> Vec<(usize, usize)> {
        let mut found = Vec::new();
        for row in 0..grid.rows {
            for column in 0..grid.columns {
                let at = grid.centre(column, row);
                let (dx, dy) = (to.east_m - from.east_m, to.north_m - from.north_m);
                let square = dx * dx + dy * dy;
                let along = if square > 0.0 {
                    (((at.east_m - from.east_m) * dx + (at.north_m - from.north_m) * dy) / square)
                        .clamp(0.0, 1.0)
                } else {
                    0.0
                };
                let near = Place::new(from.east_m + along * dx, from.north_m + along * dy);
                if near.distance_m(at) <= radius_m {
                    found.push((column, row));
                }
            }
        }
        found
    }

    #[test]
    fn backing_off_does_not_turn_the_body_round() {
        let at = |east_m: f64, arrive_s: f64, leave_s: f64| tussock_locate::Vertex {
            place: Place::new(east_m, 0.0),
            arrive_s,
            leave_s,
        };
        // The antenna is half a metre ahead: five metres east, one back, then a real turn and two metres west.
        let piece = Piece {
            vertices: vec![
                at(0.0, 0.0, 0.0),
                at(5.0, 10.0, 10.0),
                at(4.0, 12.0, 13.0),
                at(1.0, 19.0, 19.0),
            ],
        };
        let mut settings = Settings::default();
        settings.machine.antenna_forward_m = 0.5;
        let swept: Vec<(f64, f64)> = sweeps_of([&piece].into_iter(), &settings)
            .iter()
            .filter(|sweep| sweep.driving_s > 0.0)
            .map(|sweep| (sweep.from.east_m, sweep.to.east_m))
            .collect();
        assert_eq!(swept, [(-0.5, 4.5), (4.5, 3.5), (4.5, 1.5)]);
    }

    proptest! {
        #[test]
        fn spans_hold_the_cells_that_a_distance_test_finds(
            ax in -2.0..8.0_f64, ay in -2.0..8.0_f64, bx in -2.0..8.0_f64, by in -2.0..8.0_f64,
            axis in 0..4_u8, radius_m in 0.05..1.5_f64,
        ) {
            // Axis-parallel and standing sweeps are the ones that divide by zero.
            let (bx, by) = match axis { 0 => (ax, by), 1 => (bx, ay), 2 => (ax, ay), _ => (bx, by) };
            let grid = Grid { east_min_m: 0.0, north_min_m: 0.0, cell_m: 0.13, columns: 46, rows: 41 };
            let mut fast = Vec::new();
            for_each_span(&grid, Place::new(ax, ay), Place::new(bx, by), radius_m, |row, start, end| {
                fast.extend((start..end).map(|column| (column, row)));
            });
            // Cells whose centre lies on the rim to the last digits may fall on either side.
            let inner = slow(&grid, Place::new(ax, ay), Place::new(bx, by), radius_m - 1e-9);
            let outer = slow(&grid, Place::new(ax, ay), Place::new(bx, by), radius_m + 1e-9);
            prop_assert!(inner.iter().all(|cell| fast.contains(cell)));
            prop_assert!(fast.iter().all(|cell| outer.contains(cell)));
        }
    }
}
