//! How does the plan lie in the log?
//!
//! Question: a drawing and a receiver seldom agree to a metre, one side may be drawn wrong, and the plan may belong to
//! another garden. How must the plan be moved and rotated so that the machine turns at its edges, at one distance from them,
//! and which edges are not where it turns?
//!
//! Method: each turn belongs to the edge that the machine drove at and left, the one closest to the usual distance. Offset,
//! rotation and distance are the least squares of those residuals, with less weight the farther off they are (a Welsch
//! weight whose scale is tightened step by step; iteratively reweighted, Holland & Welsch 1977, DOI
//! 10.1080/03610927708827533). The fit starts where the plan is drawn; if the turns do not gather there, a coarse search
//! over offsets and rotations starts it elsewhere. What is left is a residual for each edge.
//!
//! Exact for turns that were made at their edge. Approximate: which edge it was, and that errors of turns are independent.
//! Limits: offsets of more than [`MOST_OFFSET_M`] and rotations of more than about 3 degrees are not searched for. Cost:
//! turns times edges for each of about ten steps; the search costs a hundred times as much and is made only for plans that
//! do not fit as drawn.

use tussock_plane::{Edge, Vector};
use tussock_types::math;
use tussock_types::{Place, PlanOffset};

/// Offsets are searched for up to this.
pub const MOST_OFFSET_M: f64 = 4.0;
/// Fewer turns show nothing.
pub const LEAST_TURNS: usize = 20;
/// If a plan explains this share of the turns, the search ends.
const FITS_FRACTION: f64 = 0.9;
/// If no more turns than this are left over, no edge is drawn wrong.
const ALL_FRACTION: f64 = 0.98;
/// A plan of another garden explains fewer of the turns than this: right plans explain 0.92 and more, or 0.78 with one side
/// wrong, plans of others up to 0.65 (twenty pairs of independently written gardens, at centimetres).
pub const LEAST_EXPLAINED: f64 = 0.6;
/// A machine that reaches almost none of its edges shows nothing about them.
const LEAST_REACHED: f64 = 0.03;
/// And fewer of its edges lie where the machine turns.
const LEAST_MATCHED: f64 = 0.6;
/// With larger position errors, turns are too uncertain to show this by themselves: a sky that is worse than stated leaves
/// just as few at the edges.
const PRECISE_M: f64 = 0.06;
/// If more turns than this are farther outside than anybody misdraws, a part of the garden is not in the plan: of the pairs
/// at decimetres nine in ten have more, right plans have none.
const MOST_OUTSIDE: f64 = 0.05;
const FAR_OUTSIDE_M: f64 = 2.0;
/// Unless the plan explains at least this share of the turns.
const MOST_EXPLAINED: f64 = 0.85;
/// Larger position errors explain the turns of any garden, and fewer turns than this none.
pub const MOST_TELLING_M: f64 = 0.5;
const LEAST_TELLING_TURNS: usize = 80;
/// If each half of a log finds the plan somewhere else, the receiver moved, in the garden of the plan.
pub(crate) const HALF_EXPLAINED: f64 = 0.8;
/// Offsets that are a metre larger gather at least this share more of the turns. Ends of a lawn gather a quarter of them each,
/// to within some 4 % of all by chance.
const TURNS_PER_M: f64 = 0.03;
/// Number of turns that the search uses.
const SEARCHED_TURNS: usize = 120;
/// Step of the search.
const SEARCH_STEP_M: f64 = 0.5;
const SEARCH_TURNS_RAD: [f64; 5] = [-0.05, -0.025, 0.0, 0.025, 0.05];
/// Scales of the weights, tightened from a search step to the scatter of turns.
const SCALES_M: [f64; 8] = [0.5, 0.35, 0.25, 0.18, 0.12, 0.08, 0.06, 0.06];
/// Turns whose distance differs from the usual by more scales than this are not explained.
const EXPLAINED_SCALES: f64 = 2.5;
/// Smaller turns may be bends of a curved drive (cosine of 45 degrees).
const SHARP: f64 = 0.707;
/// The machine drives at an edge at least this steeply, and leaves it.
const LEAST_INTO: f64 = 0.1;
/// Edges that are off by less are drawn well.
pub const DISPLACED_M: f64 = 0.12;
/// Fewer turns show nothing about an edge.
const LEAST_EDGE_TURNS: usize = 8;

/// How a plan lies in a log.
#[derive(Clone, Debug, PartialEq)]
pub struct TurnsFit {
    /// Where it lies, rotated about the middle of the turns.
    pub offset: PlanOffset,
    /// How far inside its edges the machine turns.
    pub inset_m: f64,
    /// Number of turns that were used.
    pub turns: usize,
    /// Fraction of them that an edge explains.
    pub explained_fraction: f64,
    /// Fraction of the edges, by length, at which enough turns were made and which lie as drawn.
    pub matched_fraction: f64,
    /// Fraction of the turns that were made metres outside the plan.
    pub outside_fraction: f64,
    /// Assumed position error, standard deviation per axis.
    pub error_m: f64,
    /// Where each edge lies at which enough turns were made.
    pub edges: Vec<EdgeFit>,
}

/// Where an edge lies, once the whole plan has been moved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EdgeFit {
    /// The edge as drawn.
    pub edge: Edge,
    /// Its number among the edges of the ground.
    pub number: usize,
    /// How far it lies inside the drawn edge; negative outside.
    pub inside_m: f64,
    /// Standard deviation of that.
    pub sd_m: f64,
    /// Number of turns behind it.
    pub turns: usize,
}

impl EdgeFit {
    /// Whether it is displaced by more than chance and by more than this distance.
    pub fn is_off(&self, least_m: f64) -> bool {
        self.inside_m.abs() > f64::max(least_m, 4.0 * self.sd_m)
    }
}

impl TurnsFit {
    /// Whether the turns were made in a garden of another shape: metres outside this one or, if positions are precise, away
    /// from its edges. Turns away from all edges, as in spirals, do not count as evidence while the edges have theirs.
    pub fn is_another_garden(&self) -> bool {
        let is_outside = self.outside_fraction > MOST_OUTSIDE && self.explained_fraction < MOST_EXPLAINED;
        let is_elsewhere = self.explained_fraction < LEAST_EXPLAINED
            && self.explained_fraction > LEAST_REACHED
            && self.matched_fraction < LEAST_MATCHED
            && self.error_m < PRECISE_M;
        self.turns >= LEAST_TELLING_TURNS && self.error_m < MOST_TELLING_M && (is_outside || is_elsewhere)
    }

    /// Whether the turns gather at its edges at all; if not, the fit shows nothing about the plan.
    pub fn is_trusted(&self) -> bool {
        self.explained_fraction >= LEAST_EXPLAINED || self.matched_fraction >= LEAST_MATCHED
    }

    /// Edges that are displaced from where they are drawn by so much that a person would move them.
    pub fn displaced(&self) -> impl Iterator<Item = &EdgeFit> {
        self.edges.iter().filter(|edge| edge.is_off(DISPLACED_M))
    }
}

/// A turn that an edge may have caused.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EdgeTurn {
    /// Where.
    pub place: Place,
    /// When.
    pub time_s: f64,
    /// Heading before, a unit vector.
    pub into: Vector,
    /// Heading after.
    pub onward: Vector,
}

impl EdgeTurn {
    /// Whether an edge may have caused it: others may be bends of a curved drive.
    pub fn is_sharp(&self) -> bool {
        self.into.dot(self.onward) < SHARP
    }
}

/// Position error of turns.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TurnError {
    /// The part of each turn by itself, standard deviation per axis.
    pub each_m: f64,
    /// The part that turns close together in time share.
    pub shared_m: f64,
    /// Time over which it changes.
    pub shared_s: f64,
}

impl TurnError {
    pub(crate) fn total_m(&self) -> f64 {
        math::hypot(self.each_m, self.shared_m)
    }

    /// What is left of the shared part in a mean over this time.
    fn shared_over_m(&self, span_s: f64) -> f64 {
        self.shared_m / (1.0 + span_s / (2.0 * self.shared_s)).sqrt()
    }
}

/// What is fitted: how far the log lies east and north of the plan, its rotation, and how far inside the machine turns.
type Lie = [f64; 4];

struct Fitting<'a> {
    turns: &'a [EdgeTurn],
    edges: &'a [Edge],
    about: Vector,
    /// Expected distance inside the edges, and how sure that is.
    inset_m: (f64, f64),
    error: TurnError,
}

/// A turn's distance from an edge minus the usual one, and how that changes with what is fitted.
struct Residual {
    off_m: f64,
    past_m: f64,
    edge: usize,
    by: Lie,
}

/// Fits a plan's edges to the turns of a log; `None` if there are too few turns.
pub fn fit(turns: &[EdgeTurn], edges: &[Edge], inset_m: (f64, f64), error: TurnError) -> Option<TurnsFit> {
    if turns.len() < LEAST_TURNS || edges.is_empty() {
        return None;
    }
    let count = turns.len() as f64;
    let sum = turns
        .iter()
        .fold(Vector::default(), |sum, turn| sum + turn.place.into());
    let fitting = Fitting {
        turns,
        edges,
        about: sum * (1.0 / count),
        inset_m,
        error,
    };
    let mut best = fitting.refined([0.0, 0.0, 0.0, inset_m.0], None);
    if fitting.explained_fraction(&best) < FITS_FRACTION {
        for start in fitting.searched() {
            best = fitting.better(best, fitting.refined(start, None));
        }
    }
    if fitting.explained_fraction(&best) < ALL_FRACTION {
        // One edge that is drawn wrong pulls the others with it; without it they lie right. In a rectangle that could be
        // said of any edge, so the expected distance decides.
        let without = fitting.edges_turned_at(&best).into_iter();
        let lies = without.map(|edge| fitting.refined(best, Some(edge)));
        let ranked = lies
            .chain([best])
            .map(|lie| (fitting.displaced(&lie), fitting.unexpected(&lie), lie));
        best = ranked
            .min_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)))
            .map_or(best, |(_, _, lie)| lie);
    }
    let fits = fitting.edge_fits(&best);
    let length_m = |edge: &Edge| edge.length_m;
    let whole_m: f64 = edges.iter().map(length_m).sum();
    // Turns that were made elsewhere scatter about an edge.
    let sharp_m = math::hypot(
        0.3 * fitting.last_scale_m(),
        error.shared_over_m(fitting.span_s()),
    );
    let matched = fits
        .iter()
        .filter(|fit| !fit.is_off(DISPLACED_M) && fit.sd_m <= sharp_m);
    let matched_m: f64 = matched.map(|fit| fit.edge.length_m).sum();
    let [east_m, north_m, turned_rad, inset_m] = best;
    Some(TurnsFit {
        offset: PlanOffset {
            east_m,
            north_m,
            rotation_deg: turned_rad.to_degrees(),
            about_east_m: fitting.about.east,
            about_north_m: fitting.about.north,
            sd_m: fitting.sd_m(&best),
        },
        inset_m,
        turns: turns.len(),
        explained_fraction: fitting.explained_fraction(&best),
        matched_fraction: matched_m / whole_m,
        outside_fraction: fitting.outside_fraction(&best),
        error_m: error.total_m(),
        edges: fits,
    })
}

impl Fitting<'_> {
    /// A scale of the weights, including the position error.
    fn with_error_m(&self, scale_m: f64) -> f64 {
        math::hypot(scale_m, self.error.total_m())
    }

    /// Scatter of turns about the distance at which they are made.
    fn last_scale_m(&self) -> f64 {
        self.with_error_m(SCALES_M[SCALES_M.len() - 1])
    }

    /// The edge at which a turn was made, if no other is nearer.
    fn residual(&self, turn: &EdgeTurn, lie: &Lie) -> Option<Residual> {
        let [_, _, turned_rad, inset_m] = *lie;
        let back = |vector: Vector| vector.turned(-turned_rad);
        let place = self.on_plan(turn.place, lie);
        let arm = Vector::from(place) - self.about;
        let (into, onward) = (back(turn.into), back(turn.onward));
        let mut found: Option<(usize, f64, f64)> = None;
        let mut nearest_m2 = f64::INFINITY;
        for (number, edge) in self.edges.iter().enumerate() {
            let inwards = edge.inwards();
            if into.dot(inwards) > -LEAST_INTO || onward.dot(inwards) < -LEAST_INTO {
                continue;
            }
            let (off_m, past_m) = (edge.inside_m(place) - inset_m, edge.past_m(place));
            let square_m2 = off_m * off_m + past_m * past_m;
            if found.is_none() || square_m2 < nearest_m2 {
                (found, nearest_m2) = (Some((number, off_m, past_m)), square_m2);
            }
        }
        found.map(|(number, off_m, past_m)| {
            let inwards = self.edges[number].inwards();
            let east = back(Vector::new(1.0, 0.0)).dot(inwards);
            let north = back(Vector::new(0.0, 1.0)).dot(inwards);
            // Rotating the plan further moves the arm clockwise in its frame.
            let turn = Vector::new(arm.north, -arm.east).dot(inwards);
            Residual {
                off_m,
                past_m,
                edge: number,
                by: [-east, -north, turn, -1.0],
            }
        })
    }

    /// Residuals with their weights at a scale.
    fn weighted(&self, lie: &Lie, scale_m: f64) -> impl Iterator<Item = (Residual, f64)> + '_ {
        let lie = *lie;
        self.turns.iter().filter_map(move |turn| {
            let residual = self.residual(turn, &lie)?;
            let square = (residual.off_m.powi(2) + residual.past_m.powi(2)) / (scale_m * scale_m);
            Some((residual, math::exp(-0.5 * square)))
        })
    }

    /// Normal equations at a scale: their matrix and their right side.
    fn equations(&self, lie: &Lie, without: Option<usize>, scale_m: f64) -> ([[f64; 4]; 4], Lie) {
        let (mut matrix, mut right) = ([[0.0; 4]; 4], [0.0; 4]);
        let others = self
            .weighted(lie, scale_m)
            .filter(|(residual, _)| Some(residual.edge) != without);
        for (residual, weight) in others {
            for (row, (cells, right)) in matrix.iter_mut().zip(&mut right).enumerate() {
                let pull = weight * residual.by[row];
                for (cell, by) in cells.iter_mut().zip(residual.by) {
                    *cell += pull * by;
                }
                *right -= pull * residual.off_m;
            }
        }
        // The expected distance, and next to nothing for the rest, so that the equations have a solution.
        let trust = (scale_m / self.inset_m.1).powi(2);
        matrix[3][3] += trust;
        right[3] += trust * (self.inset_m.0 - lie[3]);
        for (at, sd) in [2.0, 2.0, 0.03].into_iter().enumerate() {
            matrix[at][at] += (scale_m / sd) * (scale_m / sd);
        }
        (matrix, right)
    }

    /// The nearest solution from a start, tightening the scale, without the turns at one edge.
    fn refined(&self, start: Lie, without: Option<usize>) -> Lie {
        let mut lie = start;
        for scale_m in SCALES_M {
            let (matrix, right) = self.equations(&lie, without, self.with_error_m(scale_m));
            let Some(step) = solved(matrix, right) else { break };
            (lie.iter_mut().zip(step)).for_each(|(value, step)| *value += step);
        }
        lie
    }

    /// The one of two solutions that gathers more of the turns. If one end of a lawn is out of reach, a plan moved by as much
    /// gathers as many turns as the plan where it is drawn, so each metre costs some.
    fn better(&self, one: Lie, other: Lie) -> Lie {
        let gathered = |lie: &Lie| -> f64 {
            let weights = self.weighted(lie, self.last_scale_m()).map(|(_, weight)| weight);
            let cost = TURNS_PER_M * math::hypot(lie[0], lie[1]) * self.turns.len() as f64;
            weights.sum::<f64>() - cost
        };
        if gathered(&other) > gathered(&one) {
            other
        } else {
            one
        }
    }

    /// Edges that lie elsewhere than drawn.
    fn displaced(&self, lie: &Lie) -> usize {
        let edges = self.edge_fits(lie);
        edges.iter().filter(|edge| edge.is_off(DISPLACED_M)).count()
    }

    /// How far a solution is from what was expected, in squared standard deviations: drawings are off by a few decimetres.
    fn unexpected(&self, lie: &Lie) -> f64 {
        const DRAWN_M: f64 = 0.5;
        let offset = (lie[0] * lie[0] + lie[1] * lie[1]) / (DRAWN_M * DRAWN_M);
        offset + ((lie[3] - self.inset_m.0) / self.inset_m.1).powi(2)
    }

    /// Edges at which turns were made, each once.
    fn edges_turned_at(&self, lie: &Lie) -> Vec<usize> {
        let mut turns = vec![0; self.edges.len()];
        for residual in self.turns.iter().filter_map(|turn| self.residual(turn, lie)) {
            turns[residual.edge] += 1;
        }
        (0..turns.len())
            .filter(|edge| turns[*edge] >= LEAST_EDGE_TURNS)
            .collect()
    }

    /// Starts that gather more of the turns than others around them, best first.
    fn searched(&self) -> Vec<Lie> {
        const STARTS: usize = 4;
        let stride = self.turns.len().div_ceil(SEARCHED_TURNS);
        let some: Vec<EdgeTurn> = self.turns.iter().step_by(stride).copied().collect();
        let few = Fitting {
            turns: &some,
            ..*self
        };
        let scale_m = self.with_error_m(SEARCH_STEP_M);
        let steps = (MOST_OFFSET_M / SEARCH_STEP_M) as i32;
        let mut scored: Vec<(f64, Lie)> = Vec::new();
        for turned_rad in SEARCH_TURNS_RAD {
            for east in -steps..=steps {
                for north in -steps..=steps {
                    let offset_m = |at: i32| f64::from(at) * SEARCH_STEP_M;
                    let lie = [offset_m(east), offset_m(north), turned_rad, self.inset_m.0];
                    let score = few.weighted(&lie, scale_m).map(|(_, weight)| weight).sum();
                    scored.push((score, lie));
                }
            }
        }
        scored.sort_by(|a, b| b.0.total_cmp(&a.0));
        let mut starts: Vec<Lie> = Vec::new();
        for (_, lie) in scored {
            let is_new = |start: &Lie| {
                math::hypot(start[0] - lie[0], start[1] - lie[1]) > 1.5 * SEARCH_STEP_M || start[2] != lie[2]
            };
            if starts.iter().all(is_new) {
                starts.push(lie);
            }
            if starts.len() == STARTS {
                break;
            }
        }
        starts
    }

    fn explained_fraction(&self, lie: &Lie) -> f64 {
        let most_m = EXPLAINED_SCALES * self.last_scale_m();
        let is_explained = |residual: &Residual| residual.off_m.abs() <= most_m && residual.past_m <= most_m;
        let explained =
            (self.turns.iter()).filter(|turn| self.residual(turn, lie).as_ref().is_some_and(is_explained));
        explained.count() as f64 / self.turns.len() as f64
    }

    fn outside_fraction(&self, lie: &Lie) -> f64 {
        let least_m = FAR_OUTSIDE_M + EXPLAINED_SCALES * self.last_scale_m();
        let is_outside = |turn: &&EdgeTurn| {
            let place = self.on_plan(turn.place, lie);
            let crossed = self.edges.iter().filter(|edge| is_crossed_eastwards(edge, place));
            crossed.count() % 2 == 0 && self.edges.iter().all(|edge| edge.distance_m(place) > least_m)
        };
        self.turns.iter().filter(is_outside).count() as f64 / self.turns.len() as f64
    }

    /// A place of the log on the plan as drawn.
    fn on_plan(&self, place: Place, lie: &Lie) -> Place {
        let [east_m, north_m, turned_rad, _] = *lie;
        let arm = Vector::from(place) - self.about - Vector::new(east_m, north_m);
        (self.about + arm.turned(-turned_rad)).into()
    }

    /// Standard deviation of the offset per axis: that of the least squares, given the scatter of the residuals.
    fn sd_m(&self, lie: &Lie) -> f64 {
        let scale_m = self.last_scale_m();
        let (matrix, _) = self.equations(lie, None, scale_m);
        let (mut squares, mut weights) = (0.0, 0.0);
        for (residual, weight) in self.weighted(lie, scale_m) {
            squares += weight * residual.off_m * residual.off_m;
            weights += weight;
        }
        let scatter_m2 = squares / f64::max(weights - 4.0, 1.0);
        let variance = |axis: usize| {
            let mut unit = [0.0; 4];
            unit[axis] = 1.0;
            solved(matrix, unit).map_or(f64::INFINITY, |column| column[axis])
        };
        let of_each_m = (0.5 * scatter_m2 * (variance(0) + variance(1))).sqrt();
        math::hypot(of_each_m, self.error.shared_over_m(self.span_s()))
    }

    /// Time from the first turn to the last.
    fn span_s(&self) -> f64 {
        let times_s = || self.turns.iter().map(|turn| turn.time_s);
        times_s().fold(f64::NEG_INFINITY, f64::max) - times_s().fold(f64::INFINITY, f64::min)
    }

    /// Where each edge lies according to its own turns.
    fn edge_fits(&self, lie: &Lie) -> Vec<EdgeFit> {
        let (scale_m, shared_m) = (self.last_scale_m(), self.error.shared_over_m(self.span_s()));
        const REACH_M: f64 = 1.5;
        let mut off_m: Vec<Vec<f64>> = vec![Vec::new(); self.edges.len()];
        for turn in self.turns {
            if let Some(residual) = self.residual(turn, lie)
                && residual.off_m.abs() <= REACH_M
                && residual.past_m == 0.0
            {
                off_m[residual.edge].push(residual.off_m);
            }
        }
        let edges = self.edges.iter().enumerate().zip(off_m);
        edges
            .filter(|(_, off_m)| off_m.len() >= LEAST_EDGE_TURNS)
            .filter_map(|((number, edge), mut off_m)| {
                let turns = off_m.len();
                let inside_m = math::median(&mut off_m)?;
                let mut spread_m: Vec<f64> = off_m.iter().map(|off_m| (off_m - inside_m).abs()).collect();
                // The median of the distances from the median of a normal deviate is 0.6745 of its standard deviation.
                let scatter_m = math::median(&mut spread_m)? / 0.6745;
                let of_each_m = 1.25 * f64::max(scatter_m, 0.3 * scale_m) / (turns as f64).sqrt();
                let sd_m = math::hypot(of_each_m, shared_m);
                Some(EdgeFit {
                    edge: *edge,
                    number,
                    inside_m,
                    sd_m,
                    turns,
                })
            })
            .collect()
    }
}

/// Whether an edge is crossed on the way due east of a place.
fn is_crossed_eastwards(edge: &Edge, place: Place) -> bool {
    let (from, to) = (edge.from, edge.end());
    let is_across = (from.north > place.north_m) != (to.north > place.north_m);
    is_across && {
        let share = (place.north_m - from.north) / (to.north - from.north);
        from.east + share * (to.east - from.east) > place.east_m
    }
}

/// Solves four equations by elimination with pivots; `None` where they have no single solution.
fn solved(mut matrix: [[f64; 4]; 4], mut right: Lie) -> Option<Lie> {
    for at in 0..4 {
        let pivot = (at..4).max_by(|a, b| matrix[*a][at].abs().total_cmp(&matrix[*b][at].abs()))?;
        if !(matrix[pivot][at].abs() > 1e-12) {
            return None;
        }
        matrix.swap(at, pivot);
        right.swap(at, pivot);
        for row in at + 1..4 {
            let factor = matrix[row][at] / matrix[at][at];
            let above = matrix[at];
            for (cell, above) in matrix[row].iter_mut().zip(above).skip(at) {
                *cell -= factor * above;
            }
            right[row] -= factor * right[at];
        }
    }
    for at in (0..4).rev() {
        let known: f64 = (at + 1..4).map(|column| matrix[at][column] * right[column]).sum();
        right[at] = (right[at] - known) / matrix[at][at];
    }
    Some(right)
}

#[cfg(test)]
#[path = "plan_fit_tests.rs"]
mod tests;
