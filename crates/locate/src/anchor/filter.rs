//! A Kalman filter and smoother for a chain of steps with few, sparse measurements each.
//!
//! Question: given how a machine moves and what was seen of it, where was it, how sure is that, and what else might have
//! happened? Measurements enter one by one (sequential processing, Bierman 1977), so nothing ever has to be inverted. The
//! backward run is the modified Bryson-Frazier recursion (Bierman, Fixed interval smoothing with discrete measurements,
//! 1973), which needs no inverse either. Other pasts that agree with the same measurements are drawn by mean correction
//! (Durbin & Koopman 2002, DOI 10.1093/biomet/89.3.603): an invented past is filtered with the gains that already exist.
//!
//! Exact for linear models with normal errors. Cost: a few hundred multiplications per measurement.

use super::state::{DRIFT, PLACE, SIZE, SPEED};
use rand::Rng;
use rand_distr::{Distribution, StandardNormal};
use tussock_types::math;

/// A state: see [`super::state`].
pub type Vector = [f64; SIZE];
/// Its covariance.
pub type Matrix = [[f64; SIZE]; SIZE];

/// A measurement of a weighted sum of a few components.
#[derive(Clone, Debug, PartialEq)]
pub struct Sight {
    /// Component and weight.
    pub of: Vec<(usize, f64)>,
    /// What was seen.
    pub value: f64,
    /// How well.
    pub variance: f64,
    /// Whether it is a logged position: only those judge the model.
    pub is_fix: bool,
}

impl Sight {
    fn expected(&self, state: &Vector) -> f64 {
        self.of.iter().map(|(at, weight)| weight * state[*at]).sum()
    }
}

/// The velocity is reset: a leg begins.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Start {
    /// Expected velocity.
    pub velocity_mps: [f64; 2],
    /// Unit vector along it.
    pub along: [f64; 2],
    /// Standard deviation, along and across.
    pub sd_mps: [f64; 2],
}

/// What happens between one step and the next.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Move {
    /// Time that passes.
    pub dt_s: f64,
    /// Whether the wheels turn.
    pub drives: bool,
    /// A leg begins before the time passes.
    pub start: Option<Start>,
    /// The time of a turn is not exact: after everything else, the place slips along this direction by this much.
    pub slip: Option<([f64; 2], f64)>,
    /// The place is lost (a silence): it starts again around here, with this standard deviation.
    pub lost: Option<([f64; 2], f64)>,
}

/// One step of the chain: a move, then the sights.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Step {
    /// How it came here.
    pub moved: Move,
    /// What is seen here.
    pub sights: Vec<Sight>,
}

/// How the state wanders by itself.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wander {
    /// Drift, standard deviation per axis.
    pub drift_m: f64,
    /// Drift time.
    pub drift_time_s: f64,
    /// Wandering of the place while driving, metres per root second.
    pub place_m_per_root_s: f64,
    /// Wandering of the velocity while driving, metres per second and root second.
    pub speed_mps_per_root_s: f64,
}

/// The results of the forward run that the backward run needs.
#[derive(Clone, Debug, PartialEq)]
pub struct Forward {
    /// Expected state before the sights of each step.
    pub before: Vec<Vector>,
    spread: Vec<Matrix>,
    gains: Vec<Gain>,
    /// Where the gains of each step begin.
    first_gain: Vec<usize>,
    /// Log likelihood of the logged positions.
    pub fix_nats: f64,
    /// Number of logged coordinates in it.
    pub fix_count: usize,
    /// Mean square of the normalised surprises of the logged positions: 1 if the model is right.
    pub surprise: f64,
}

#[derive(Clone, Copy, Debug, PartialEq)]
struct Gain {
    gain: Vector,
    variance: f64,
}

/// The smoothed chain.
pub struct Smoothed {
    /// State at each step, given all sights.
    pub state: Vec<Vector>,
    /// Covariance of the place, the installation's offset and the inset, see [`Smoothed::covariance`].
    backward: Vec<Matrix>,
}

fn keeps(wander: &Wander, dt_s: f64) -> f64 {
    math::exp(-dt_s / wander.drift_time_s)
}

fn advance_mean(state: &mut Vector, moved: &Move, wander: &Wander) {
    if let Some((place, _)) = moved.lost {
        state[PLACE..PLACE + 2].copy_from_slice(&place);
    }
    if let Some(start) = moved.start {
        state[SPEED..SPEED + 2].copy_from_slice(&start.velocity_mps);
    }
    if moved.drives {
        for axis in 0..2 {
            state[PLACE + axis] += moved.dt_s * state[SPEED + axis];
        }
    }
    let keeps = keeps(wander, moved.dt_s);
    for axis in 0..2 {
        state[DRIFT + axis] *= keeps;
    }
}

fn advance_spread(spread: &mut Matrix, moved: &Move, wander: &Wander) {
    if let Some((_, sd_m)) = moved.lost {
        clear(spread, PLACE);
        spread[PLACE][PLACE] = sd_m * sd_m;
        spread[PLACE + 1][PLACE + 1] = sd_m * sd_m;
    }
    if let Some(start) = moved.start {
        clear(spread, SPEED);
        let [a, b] = start.along;
        let [along, across] = start.sd_mps.map(|sd_mps| sd_mps * sd_mps);
        spread[SPEED][SPEED] = along * a * a + across * b * b;
        spread[SPEED + 1][SPEED + 1] = along * b * b + across * a * a;
        spread[SPEED][SPEED + 1] = (along - across) * a * b;
        spread[SPEED + 1][SPEED] = spread[SPEED][SPEED + 1];
    }
    let dt_s = moved.dt_s;
    if moved.drives {
        for axis in 0..2 {
            add_multiple(spread, PLACE + axis, SPEED + axis, dt_s);
        }
        for axis in 0..2 {
            spread[PLACE + axis][PLACE + axis] += wander.place_m_per_root_s.powi(2) * dt_s;
            spread[SPEED + axis][SPEED + axis] += wander.speed_mps_per_root_s.powi(2) * dt_s;
        }
    }
    if let Some(([a, b], sd_m)) = moved.slip {
        let variance = sd_m * sd_m;
        spread[PLACE][PLACE] += variance * a * a;
        spread[PLACE + 1][PLACE + 1] += variance * b * b;
        spread[PLACE][PLACE + 1] += variance * a * b;
        spread[PLACE + 1][PLACE] += variance * a * b;
    }
    let keeps = keeps(wander, dt_s);
    for axis in 0..2 {
        scale(spread, DRIFT + axis, keeps);
        spread[DRIFT + axis][DRIFT + axis] += wander.drift_m.powi(2) * (1.0 - keeps * keeps);
    }
}

/// Multiplies a component by a factor: its row and its column.
fn scale(matrix: &mut Matrix, at: usize, factor: f64) {
    matrix[at].iter_mut().for_each(|cell| *cell *= factor);
    matrix.iter_mut().for_each(|row| row[at] *= factor);
}

/// Adds a multiple of one component to another: rows, then columns.
fn add_multiple(matrix: &mut Matrix, to: usize, from: usize, factor: f64) {
    let other = matrix[from];
    for (cell, other) in matrix[to].iter_mut().zip(other) {
        *cell += factor * other;
    }
    matrix.iter_mut().for_each(|row| row[to] += factor * row[from]);
}

/// Forgets two components, starting with `first`.
fn clear(spread: &mut Matrix, first: usize) {
    for axis in first..first + 2 {
        spread[axis] = [0.0; SIZE];
        for row in spread.iter_mut() {
            row[axis] = 0.0;
        }
    }
}

/// Runs forward through the chain.
pub fn forward(steps: &[Step], start: &Vector, start_spread: &Matrix, wander: &Wander) -> Forward {
    let mut state = *start;
    let mut spread = *start_spread;
    let sights = steps.iter().map(|step| step.sights.len()).sum();
    let mut found = Forward {
        before: Vec::with_capacity(steps.len()),
        spread: Vec::with_capacity(steps.len()),
        gains: Vec::with_capacity(sights),
        first_gain: Vec::with_capacity(steps.len()),
        fix_nats: 0.0,
        fix_count: 0,
        surprise: 0.0,
    };
    for step in steps {
        advance_mean(&mut state, &step.moved, wander);
        advance_spread(&mut spread, &step.moved, wander);
        found.before.push(state);
        found.spread.push(spread);
        found.first_gain.push(found.gains.len());
        for sight in &step.sights {
            found.take_in(sight, &mut state, &mut spread);
        }
    }
    found.surprise /= (found.fix_count as f64).max(1.0);
    found
}

impl Forward {
    /// Improves the state by one sight.
    fn take_in(&mut self, sight: &Sight, state: &mut Vector, spread: &mut Matrix) {
        let mut pull = [0.0; SIZE];
        for (at, weight) in &sight.of {
            for (sum, cell) in pull.iter_mut().zip(&spread[*at]) {
                *sum += weight * cell;
            }
        }
        let seen: f64 = sight.of.iter().map(|(at, weight)| weight * pull[*at]).sum();
        let variance = sight.variance + seen;
        let surprise = sight.value - sight.expected(state);
        if sight.is_fix {
            self.fix_nats -=
                0.5 * (surprise * surprise / variance + math::ln(std::f64::consts::TAU * variance));
            self.fix_count += 1;
            self.surprise += surprise * surprise / variance;
        }
        let gain = pull.map(|pull| pull / variance);
        for (cell, gain) in state.iter_mut().zip(&gain) {
            *cell += gain * surprise;
        }
        for row in 0..SIZE {
            for column in 0..SIZE {
                spread[row][column] -= gain[row] * pull[column];
            }
        }
        self.gains.push(Gain { gain, variance });
    }
}

/// Runs back through the chain: every state, given all sights.
pub fn smooth(steps: &[Step], run: &Forward, wander: &Wander) -> Smoothed {
    let mut lambda = [0.0; SIZE];
    let mut big = [[0.0; SIZE]; SIZE];
    let mut smoothed = Smoothed {
        state: vec![[0.0; SIZE]; steps.len()],
        backward: vec![[[0.0; SIZE]; SIZE]; steps.len()],
    };
    for (index, step) in steps.iter().enumerate().rev() {
        // Compute the surprises again, forward within the step, because the backward run uses them.
        let surprises = surprises(step, run, index, &run.before[index]);
        for (number, sight) in step.sights.iter().enumerate().rev() {
            let gain = &run.gains[run.first_gain[index] + number];
            back_through_sight(&mut lambda, sight, gain, surprises[number]);
            let times: Vector = std::array::from_fn(|row| {
                big[row]
                    .iter()
                    .zip(&gain.gain)
                    .map(|(cell, gain)| cell * gain)
                    .sum::<f64>()
            });
            let quad: f64 = times.iter().zip(&gain.gain).map(|(cell, gain)| cell * gain).sum();
            for (at, weight) in &sight.of {
                for other in 0..SIZE {
                    big[*at][other] -= weight * times[other];
                    big[other][*at] -= weight * times[other];
                }
            }
            for (at, weight) in &sight.of {
                for (other, other_weight) in &sight.of {
                    big[*at][*other] += weight * other_weight * (quad + 1.0 / gain.variance);
                }
            }
        }
        smoothed.backward[index] = big;
        smoothed.state[index] = corrected(&run.before[index], &run.spread[index], &lambda);
        back_through_move(&mut lambda, &step.moved, wander);
        back_spread(&mut big, &step.moved, wander);
    }
    smoothed
}

fn surprises(step: &Step, run: &Forward, index: usize, before: &Vector) -> Vec<f64> {
    let mut state = *before;
    step.sights
        .iter()
        .enumerate()
        .map(|(number, sight)| {
            let surprise = sight.value - sight.expected(&state);
            let gain = &run.gains[run.first_gain[index] + number].gain;
            for (cell, gain) in state.iter_mut().zip(gain) {
                *cell += gain * surprise;
            }
            surprise
        })
        .collect()
}

fn back_through_sight(lambda: &mut Vector, sight: &Sight, gain: &Gain, surprise: f64) {
    let along: f64 = lambda
        .iter()
        .zip(&gain.gain)
        .map(|(cell, gain)| cell * gain)
        .sum();
    for (at, weight) in &sight.of {
        lambda[*at] -= weight * (along + surprise / gain.variance);
    }
}

fn back_through_move(lambda: &mut Vector, moved: &Move, wander: &Wander) {
    let keeps = keeps(wander, moved.dt_s);
    for axis in 0..2 {
        lambda[DRIFT + axis] *= keeps;
        if moved.drives {
            lambda[SPEED + axis] += moved.dt_s * lambda[PLACE + axis];
        }
        if moved.start.is_some() {
            lambda[SPEED + axis] = 0.0;
        }
        if moved.lost.is_some() {
            lambda[PLACE + axis] = 0.0;
        }
    }
}

fn back_spread(big: &mut Matrix, moved: &Move, wander: &Wander) {
    let keeps = keeps(wander, moved.dt_s);
    for axis in 0..2 {
        scale(big, DRIFT + axis, keeps);
        if moved.drives {
            add_multiple(big, SPEED + axis, PLACE + axis, moved.dt_s);
        }
    }
    if moved.start.is_some() {
        clear(big, SPEED);
    }
    if moved.lost.is_some() {
        clear(big, PLACE);
    }
}

/// State minus spread times lambda.
fn corrected(state: &Vector, spread: &Matrix, lambda: &Vector) -> Vector {
    std::array::from_fn(|row| {
        state[row]
            - spread[row]
                .iter()
                .zip(lambda)
                .map(|(cell, lambda)| cell * lambda)
                .sum::<f64>()
    })
}

impl Smoothed {
    /// Variance of a weighted sum of components at a step.
    pub fn variance(&self, run: &Forward, step: usize, of: &[(usize, f64)]) -> f64 {
        let spread = &run.spread[step];
        let mut pull = [0.0; SIZE];
        for (at, weight) in of {
            for (sum, cell) in pull.iter_mut().zip(&spread[*at]) {
                *sum += weight * cell;
            }
        }
        let prior: f64 = of.iter().map(|(at, weight)| weight * pull[*at]).sum();
        let known: f64 = self.backward[step]
            .iter()
            .zip(&pull)
            .map(|(row, one)| one * row.iter().zip(&pull).map(|(cell, two)| cell * two).sum::<f64>())
            .sum();
        (prior - known).max(0.0)
    }
}

/// Another past that agrees with the same sights: states before the sights of each step.
pub fn draw(
    steps: &[Step],
    run: &Forward,
    start: &Vector,
    start_sd: &Vector,
    wander: &Wander,
    dice: &mut impl Rng,
) -> Vec<Vector> {
    let mut normal = || -> f64 { StandardNormal.sample(dice) };
    // An invented past around zero, and what would have been seen of it.
    let mut made_up: Vector = std::array::from_fn(|at| start_sd[at] * normal());
    let mut past = Vec::with_capacity(steps.len());
    let mut residual = *start;
    let mut lambda_inputs = Vec::with_capacity(run.gains.len());
    let mut before = Vec::with_capacity(steps.len());
    for (index, step) in steps.iter().enumerate() {
        wandered(&mut made_up, &step.moved, wander, &mut normal);
        advance_mean(&mut residual, &step.moved, wander);
        past.push(made_up);
        before.push(residual);
        for (number, sight) in step.sights.iter().enumerate() {
            let seen = sight.expected(&made_up) + sight.variance.sqrt() * normal();
            let surprise = sight.value - seen - sight.expected(&residual);
            let gain = &run.gains[run.first_gain[index] + number].gain;
            for (cell, gain) in residual.iter_mut().zip(gain) {
                *cell += gain * surprise;
            }
            lambda_inputs.push(surprise);
        }
    }
    let mut lambda = [0.0; SIZE];
    for (index, step) in steps.iter().enumerate().rev() {
        for (number, sight) in step.sights.iter().enumerate().rev() {
            let at = run.first_gain[index] + number;
            back_through_sight(&mut lambda, sight, &run.gains[at], lambda_inputs[at]);
        }
        let smooth = corrected(&before[index], &run.spread[index], &lambda);
        for (cell, smooth) in past[index].iter_mut().zip(&smooth) {
            *cell += smooth;
        }
        back_through_move(&mut lambda, &step.moved, wander);
    }
    past
}

/// Moves an invented state, with all expectations zero.
fn wandered(state: &mut Vector, moved: &Move, wander: &Wander, normal: &mut impl FnMut() -> f64) {
    if let Some((_, sd_m)) = moved.lost {
        state[PLACE] = sd_m * normal();
        state[PLACE + 1] = sd_m * normal();
    }
    if let Some(start) = moved.start {
        let along = start.sd_mps[0] * normal();
        let across = start.sd_mps[1] * normal();
        state[SPEED] = along * start.along[0] - across * start.along[1];
        state[SPEED + 1] = along * start.along[1] + across * start.along[0];
    }
    let dt_s = moved.dt_s;
    let root_s = dt_s.max(0.0).sqrt();
    if moved.drives {
        for axis in 0..2 {
            state[PLACE + axis] += dt_s * state[SPEED + axis] + wander.place_m_per_root_s * root_s * normal();
            state[SPEED + axis] += wander.speed_mps_per_root_s * root_s * normal();
        }
    }
    if let Some(([a, b], sd_m)) = moved.slip {
        let slip_m = sd_m * normal();
        state[PLACE] += a * slip_m;
        state[PLACE + 1] += b * slip_m;
    }
    let keeps = keeps(wander, dt_s);
    let fresh_m = wander.drift_m * (1.0 - keeps * keeps).max(0.0).sqrt();
    for axis in 0..2 {
        state[DRIFT + axis] = keeps * state[DRIFT + axis] + fresh_m * normal();
    }
}
