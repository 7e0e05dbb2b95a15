//! Where does everything lie according to the log?
//!
//! Question: the plan holds positions, and plan and log are displaced; in whose frame are the answers? Paths, cells and
//! pockets are worked out on the plan's plane, where the edge of the lawn is. Anyone who walks to a pocket has a receiver
//! and no plan. If the offset between the two is more than chance, everything is therefore moved by it, once, at the end,
//! including the plan as drawn. The plane itself (its origin) stays.
//!
//! Exact for places, lines and outlines: a rotation and a shift. Squares keep their axes east and north: their grid is
//! shifted, and if the rotation would put any of its squares off by more than `MOST_SKEW_M`, each square of a new grid takes
//! the values of the old square under its centre, right to within half a square. Without an offset nothing is touched.

use tussock_plane::Frame;
use tussock_types::math;
use tussock_types::{
    Cells, Findings, GeoPoint, Grid, Installation, Place, Plan, PlanOffset, Suggestion, Tape,
    UnlistedObstacle,
};

/// Squares may be off by this much before a rotated grid is resampled.
const MOST_SKEW_M: f64 = 0.03;

/// Moves anything that has a place in metres and, where known, on Earth.
macro_rules! point {
    ($shift:ident, $one:ident, $frame:ident) => {
        let on_earth = (&mut $one.lat, &mut $one.lon);
        $shift.point(on_earth, (&mut $one.east_m, &mut $one.north_m), $frame);
    };
}

/// A rotation about a place, then a shift: from the plan's plane into the log's frame.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlanShift {
    /// Anticlockwise.
    turned_rad: f64,
    about: Place,
    east_m: f64,
    north_m: f64,
}

impl From<&PlanOffset> for PlanShift {
    fn from(offset: &PlanOffset) -> Self {
        Self {
            turned_rad: offset.rotation_deg.to_radians(),
            about: Place::new(offset.about_east_m, offset.about_north_m),
            east_m: offset.east_m,
            north_m: offset.north_m,
        }
    }
}

impl PlanShift {
    /// Findings moved back to the plan's plane, where two logs of one garden meet: each receiver has an offset of its own.
    pub fn undone(findings: &Findings) -> Findings {
        let mut laid = findings.clone();
        // With several machines only one offset is stated, and not all of them may have been moved by it.
        let offset = findings.plan_offset().filter(PlanOffset::is_beside);
        if let Some(offset) = offset.filter(|_| findings.machines.len() == 1) {
            let origin = findings.frame.origin_lat.zip(findings.frame.origin_lon);
            let frame = origin.map(|(lat_deg, lon_deg)| Frame::at(GeoPoint { lat_deg, lon_deg }));
            Self::from(&offset).reversed().findings(&mut laid, frame.as_ref());
        }
        laid
    }

    /// From the log's frame into the plan's plane.
    fn reversed(&self) -> Self {
        Self {
            turned_rad: -self.turned_rad,
            about: Place::new(self.about.east_m + self.east_m, self.about.north_m + self.north_m),
            east_m: -self.east_m,
            north_m: -self.north_m,
        }
    }

    /// A place of the plan where the log has it.
    pub fn place(&self, place: Place) -> Place {
        let (sin, cos) = math::sin_cos(self.turned_rad);
        let (east_m, north_m) = (
            place.east_m - self.about.east_m,
            place.north_m - self.about.north_m,
        );
        Place::new(
            self.about.east_m + cos * east_m - sin * north_m + self.east_m,
            self.about.north_m + sin * east_m + cos * north_m + self.north_m,
        )
    }

    /// Moves every point of a plan.
    pub fn plan(&self, plan: &mut Plan, frame: &Frame) {
        plan.for_each_point(|point| *point = frame.to_geo(self.place(frame.to_place(*point))));
    }

    /// Moves everything that was found. It takes the findings apart by name, so that no new field is forgotten.
    pub fn findings(&self, findings: &mut Findings, frame: Option<&Frame>) {
        let Findings {
            schema_version: _,
            tool_version: _,
            settings: _,
            inputs: _,
            frame: _,
            log_verdict: _,
            checks: _,
            span: _,
            positions: _,
            plan_fit,
            machines: _,
            // These are on Earth and read off the fixes, so they are already in the log's frame.
            complaints: _,
            visit: _,
            silences: _,
            coverage: _,
            by_width: _,
            revisits: _,
            over_time: _,
            missed_pockets,
            not_yet,
            unseen,
            stuck_spots,
            worn_lines,
            strays,
            // Read off the fixes: they lie in the log's frame already.
            possible_stops: _,
            installation,
            nights: _,
            fit: _,
            reference: _,
            suggestions,
            change_set: _,
            cautions: _,
            plan,
            lawn_outline,
            outline_source: _,
            // Only for logs without a plan, which nothing moves.
            drawn_outline: _,
            driven_lines,
            cells,
        } = findings;
        for pocket in missed_pockets {
            point!(self, pocket, frame);
            self.lines(&mut pocket.outline);
            self.tape(&mut pocket.tape);
        }
        for pocket in not_yet {
            point!(self, pocket, frame);
            self.lines(&mut pocket.outline);
            self.tape(&mut pocket.tape);
        }
        for ground in unseen.iter_mut().flatten() {
            self.lines(&mut ground.outline);
        }
        for spot in stuck_spots {
            point!(self, spot, frame);
            // A course runs clockwise.
            if let Some(course_deg) = &mut spot.approach_deg {
                *course_deg = (*course_deg - self.turned_rad.to_degrees()).rem_euclid(360.0);
            }
        }
        for worn in worn_lines.iter_mut().flatten() {
            self.line(&mut worn.line);
        }
        for stray in strays.iter_mut().flatten() {
            self.metres(&mut stray.east_m, &mut stray.north_m);
        }
        if let Some(installation) = installation {
            self.installation(installation, frame);
        }
        if let Some(fit) = plan_fit {
            for edge in &mut fit.edges {
                self.line(&mut edge.line);
            }
            self.obstacles(&mut fit.unlisted_obstacles, frame);
            for island in &mut fit.unlisted_islands {
                point!(self, island, frame);
                self.line(&mut island.outline);
            }
        }
        for Suggestion { geometry, .. } in suggestions.iter_mut().flatten() {
            self.line(geometry);
        }
        if let (Some(plan), Some(frame)) = (plan, frame) {
            self.plan(plan, frame);
        }
        lawn_outline.iter_mut().for_each(|part| self.lines(part));
        self.lines(driven_lines);
        if let Some(cells) = cells {
            *cells = self.cells(cells);
        }
    }

    fn installation(&self, installation: &mut Installation, frame: Option<&Frame>) {
        let Installation {
            setback_m: _,
            passages,
            unlisted_obstacles,
            out_of_reach,
            ways_home: _,
            outings,
            hours: _,
            lower_cut: _,
            turf: _,
            slope,
        } = installation;
        for passage in passages {
            self.line(&mut passage.across);
            let [a, b] = passage.across;
            let middle = a.middle(b);
            tell((&mut passage.lat, &mut passage.lon), middle, frame);
        }
        self.obstacles(unlisted_obstacles, frame);
        for part in out_of_reach {
            self.metres(&mut part.east_m, &mut part.north_m);
        }
        if let Some(outings) = outings {
            self.line(&mut outings.starts);
        }
        if let Some(slope) = slope {
            slope.steepest_at = self.place(slope.steepest_at);
        }
    }

    fn obstacles(&self, obstacles: &mut [UnlistedObstacle], frame: Option<&Frame>) {
        for found in obstacles {
            point!(self, found, frame);
        }
    }

    fn metres(&self, east_m: &mut f64, north_m: &mut f64) {
        let to = self.place(Place::new(*east_m, *north_m));
        (*east_m, *north_m) = (to.east_m, to.north_m);
    }

    fn point(
        &self,
        on_earth: (&mut Option<f64>, &mut Option<f64>),
        (east_m, north_m): (&mut f64, &mut f64),
        frame: Option<&Frame>,
    ) {
        self.metres(east_m, north_m);
        tell(on_earth, Place::new(*east_m, *north_m), frame);
    }

    fn line(&self, line: &mut [Place]) {
        line.iter_mut().for_each(|place| *place = self.place(*place));
    }

    fn lines(&self, lines: &mut [Vec<Place>]) {
        lines.iter_mut().for_each(|line| self.line(line));
    }

    fn tape(&self, tape: &mut [Tape]) {
        for one in tape {
            self.metres(&mut one.from_east_m, &mut one.from_north_m);
        }
    }

    fn cells(&self, cells: &Cells) -> Cells {
        let old = cells.grid;
        let (width_m, height_m) = (old.columns as f64 * old.cell_m, old.rows as f64 * old.cell_m);
        let corner = |right: f64, up: f64| {
            Place::new(old.east_min_m + right * width_m, old.north_min_m + up * height_m)
        };
        let (middle, to) = (corner(0.5, 0.5), self.place(corner(0.5, 0.5)));
        let stepped = Grid {
            east_min_m: old.east_min_m + to.east_m - middle.east_m,
            north_min_m: old.north_min_m + to.north_m - middle.north_m,
            ..old
        };
        let skew_m = self.turned_rad.abs() * 0.5 * math::hypot(width_m, height_m);
        if skew_m <= MOST_SKEW_M {
            return Cells {
                grid: stepped,
                ..cells.clone()
            };
        }
        let corners =
            [(0.0, 0.0), (0.0, 1.0), (1.0, 0.0), (1.0, 1.0)].map(|(right, up)| self.place(corner(right, up)));
        let span = |of: fn(&Place) -> f64| {
            corners
                .iter()
                .map(of)
                .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| {
                    (low.min(value), high.max(value))
                })
        };
        let (west_m, east_m) = span(|place| place.east_m);
        let (south_m, north_m) = span(|place| place.north_m);
        let grid = Grid {
            east_min_m: west_m,
            north_min_m: south_m,
            cell_m: old.cell_m,
            columns: ((east_m - west_m) / old.cell_m).ceil() as usize,
            rows: ((north_m - south_m) / old.cell_m).ceil() as usize,
        };
        let back = self.reversed();
        let under: Vec<Option<usize>> = (0..grid.cells())
            .map(|at| {
                let place = back.place(grid.centre(at % grid.columns, at / grid.columns));
                old.cell_at(place).map(|(column, row)| row * old.columns + column)
            })
            .collect();
        let read = |column: &[f32], outside: f32| -> Vec<f32> {
            under
                .iter()
                .map(|at| at.map_or(outside, |at| column[at]))
                .collect()
        };
        Cells {
            grid,
            lawn_fraction: read(&cells.lawn_fraction, 0.0),
            visited_probability: read(&cells.visited_probability, 0.0),
            visits_expected: read(&cells.visits_expected, 0.0),
            first_visit_s: read(&cells.first_visit_s, f32::NAN),
            last_visit_s: read(&cells.last_visit_s, f32::NAN),
        }
    }
}

/// Writes the position on Earth of a place, if there was one.
fn tell((lat, lon): (&mut Option<f64>, &mut Option<f64>), place: Place, frame: Option<&Frame>) {
    if let (Some(lat), Some(lon), Some(frame)) = (lat, lon, frame) {
        let to = frame.to_geo(place);
        (*lat, *lon) = (to.lat_deg, to.lon_deg);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const QUARTER: PlanShift = PlanShift {
        turned_rad: std::f64::consts::FRAC_PI_2,
        about: Place {
            east_m: 3.0,
            north_m: -2.0,
        },
        east_m: 0.5,
        north_m: 0.25,
    };

    fn strip() -> Cells {
        let grid = Grid {
            east_min_m: 0.0,
            north_min_m: 0.0,
            cell_m: 0.5,
            columns: 8,
            rows: 2,
        };
        let lawn_fraction: Vec<f32> = (0..16).map(|at| at as f32 / 16.0).collect();
        Cells {
            grid,
            visited_probability: lawn_fraction.clone(),
            visits_expected: lawn_fraction.clone(),
            first_visit_s: vec![f32::NAN; 16],
            last_visit_s: vec![f32::NAN; 16],
            lawn_fraction,
        }
    }

    #[test]
    fn a_quarter_turn_about_a_place_leaves_it_there_but_for_the_step() {
        let about = QUARTER.place(Place::new(3.0, -2.0));
        assert!(about.distance_m(Place::new(3.5, -1.75)) < 1e-12);
        let east = QUARTER.place(Place::new(4.0, -2.0));
        assert!(east.distance_m(Place::new(3.5, -0.75)) < 1e-12, "{east:?}");
        assert!(QUARTER.reversed().place(east).distance_m(Place::new(4.0, -2.0)) < 1e-12);
    }

    #[test]
    fn a_step_without_a_turn_moves_the_grid_and_no_value() {
        let step = PlanShift {
            turned_rad: 0.0,
            ..QUARTER
        };
        let (before, after) = (strip(), step.cells(&strip()));
        assert!((after.grid.east_min_m - 0.5).abs() < 1e-12 && (after.grid.north_min_m - 0.25).abs() < 1e-12);
        assert_eq!(after.lawn_fraction, before.lawn_fraction);
        assert_eq!((after.grid.columns, after.grid.rows), (8, 2));
    }

    #[test]
    fn a_turned_grid_is_read_anew_under_the_middle_of_each_square() {
        let before = strip();
        // A quarter turn puts squares on squares: the closed form.
        let after = QUARTER.cells(&before);
        assert_eq!((after.grid.columns, after.grid.rows), (2, 8));
        for row in 0..2 {
            for column in 0..8 {
                let to = QUARTER.place(before.grid.centre(column, row));
                let (x, y) = after.grid.cell_at(to).expect("the new grid covers the old one");
                assert_eq!(
                    after.lawn_fraction[y * 2 + x],
                    before.lawn_fraction[row * 8 + column]
                );
            }
        }
    }
}
