//! Exact division of a path into legs and halts.
//!
//! Question: in which stretches did the machine drive straight at one speed, and in which did it stand still? With white
//! noise w and a slow random walk of rate q, steps between fixes are nearly a first-order moving average: with k = 2 + q dt
//! / w^2 and theta = (k - sqrt(k^2 - 4)) / 2 the whitened steps e_i = dz_i + theta e_(i-1) have variance w^2 / theta. A leg
//! of unknown heading and of a speed near the usual one, a halt, and single mixed steps (a turn between two fixes) each have
//! a cost in nats. (If fixes are 1.5 s apart or more, a wait may hold a single fix, between two mixed steps.) Dynamic
//! programming over all starts finds the cheapest division (optimal partitioning, Jackson et al. 2005). Exact for that cost,
//! except that starts whose cost exceeds the best by `HOPELESS_NATS` are dropped, and that in precise logs starts are tried
//! only where the path bends.
//!
//! Where the receiver says that its error is several times the usual one, steps count for less in proportion.
//!
//! Cost: fixes times the starts that are still alive, usually a few tens.

use crate::NoiseEstimate;
use crate::blocks::Blocks;
use tussock_plane::Vector;
use tussock_types::math;

/// Cost of a new leg, in nats.
const LEG_NATS: f64 = 6.0;
/// Cost of a new halt, in nats.
const HALT_NATS: f64 = 8.0;
/// Cost of a halt of a few seconds, the wait at a turn, in nats.
const WAIT_NATS: f64 = 2.0;
/// Longest wait at a turn.
const WAIT_S: f64 = 4.5;
/// From this time between fixes on, a wait at a turn may hold a single fix.
const ONE_FIX_WAIT_S: f64 = 1.5;
/// Cost of a step that holds a turn, a start or a stop, in nats.
const MIXED_NATS: f64 = 3.0;
/// Starts that cost more than the best by this are dropped.
const HOPELESS_NATS: f64 = 30.0;
/// No leg or halt is considered over a longer time; neighbours are merged afterwards.
const LONGEST_S: f64 = 200.0;

/// What one step between fixes looks like.
#[derive(Clone, Copy, Debug)]
pub struct StepLaw {
    /// Moving-average coefficient of the whitening.
    theta: f64,
    /// Variance of a whitened step, per axis.
    innovation_m2: f64,
    /// Usual speed.
    speed_mps: f64,
    /// Scatter of the speed from leg to leg.
    speed_sd_mps: f64,
    /// A mixed step is at most this long per second.
    mixed_mps: f64,
    /// White part.
    white_m: f64,
    /// Slow part.
    slow_m: f64,
    /// Whether fixes are so far apart that a wait at a turn may hold just one of them. At shorter periods, waits of one fix
    /// would cut up straight drives.
    waits_hold_one_fix: bool,
}

impl StepLaw {
    /// The law for a noise estimate, a speed and a usual step between fixes.
    pub fn new(noise: &NoiseEstimate, speed_mps: f64, step_s: f64) -> Self {
        let white_m = noise.white_m;
        let k = 2.0 + noise.drift_rate_m2_per_s * step_s / (white_m * white_m);
        let theta = (k - (k * k - 4.0).max(0.0).sqrt()) / 2.0;
        // A precise log measures the speed of each leg by itself; a poor one needs the machine's usual speed.
        let share = if white_m < 0.05 { 0.25 } else { 0.03 };
        Self {
            theta,
            innovation_m2: white_m * white_m / theta,
            speed_mps,
            speed_sd_mps: share * speed_mps,
            mixed_mps: 1.3 * speed_mps,
            white_m,
            slow_m: noise.slow_m(),
            waits_hold_one_fix: step_s >= ONE_FIX_WAIT_S,
        }
    }
}

/// Leg or halt.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PartKind {
    /// Straight drive.
    Leg,
    /// Standing.
    Halt,
}

/// A stretch of fixes, from the first to the last, both included.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Part {
    /// Leg or halt.
    pub kind: PartKind,
    /// First fix.
    pub first: usize,
    /// Last fix.
    pub last: usize,
}

/// A start that is still in the running.
#[derive(Clone, Copy, Default)]
struct Start {
    fix: usize,
    base: f64,
    e: Vector,
    m_s: f64,
    s_ee: f64,
    s_me: Vector,
    s_mm: f64,
    /// Cost as a leg, up to the current fix.
    leg: f64,
}

/// How the cheapest division up to a fix ends.
#[derive(Clone, Copy)]
struct Step {
    cost: f64,
    kind: PartKind,
    start: usize,
}

impl Step {
    const NONE: Self = Self::new(f64::INFINITY, PartKind::Halt, 0);

    const fn new(cost: f64, kind: PartKind, start: usize) -> Self {
        Self { cost, kind, start }
    }
}

/// Divides one run into legs and halts. Fewer than two fixes give a single halt, none give nothing.
pub fn segment(blocks: &Blocks, law: &StepLaw) -> Vec<Part> {
    let count = blocks.time_s.len();
    if count == 0 {
        return Vec::new();
    }
    let mut ends = vec![Step::NONE; count];
    ends[0].cost = 0.0;
    let mut mixed_before = vec![false; count];
    let mut starts = vec![Start::default()];
    for fix in 1..count {
        let dt_s = blocks.time_s[fix] - blocks.time_s[fix - 1];
        let step_m = Vector::between(blocks.place(fix - 1), blocks.place(fix));
        let (before, after) = (blocks.error_factor_at(fix - 1), blocks.error_factor_at(fix));
        // Where the receiver says that its error grows or shrinks, its slow part jumps.
        let jump_m2 = ((after - before) * law.slow_m).powi(2);
        let scale = (before.max(after).powi(2) + jump_m2 / law.innovation_m2).sqrt();
        let mut best = Step::NONE;
        for start in &mut starts {
            start.advance(step_m, dt_s, law, scale);
            start.leg = start.leg_cost(law);
            let lapse_s = blocks.time_s[fix] - blocks.time_s[start.fix];
            let leg = start.base + start.leg + LEG_NATS;
            if leg < best.cost && lapse_s >= 1.4 {
                best = Step::new(leg, PartKind::Leg, start.fix);
            }
            let halt = start.base + start.s_ee / 2.0 + if lapse_s <= WAIT_S { WAIT_NATS } else { HALT_NATS };
            if halt < best.cost {
                best = Step::new(halt, PartKind::Halt, start.fix);
            }
        }
        // A step may hold the turn itself.
        let length_m = math::hypot(step_m.east, step_m.north);
        let mixed = ends[fix - 1].cost + MIXED_NATS;
        let may_mix = length_m <= law.mixed_mps * dt_s + 4.0 * scale * law.white_m;
        mixed_before[fix] = may_mix && mixed < best.cost;
        let base = if mixed_before[fix] { mixed } else { best.cost };
        // Between two such steps a wait may hold a single fix, if fixes are far enough apart.
        ends[fix] = match mixed + WAIT_NATS {
            wait if law.waits_hold_one_fix && may_mix && wait < best.cost => {
                Step::new(wait, PartKind::Halt, fix)
            }
            _ => best,
        };
        starts.retain(|start| {
            let cheapest = start.base + (start.leg + LEG_NATS).min(start.s_ee / 2.0 + WAIT_NATS);
            cheapest <= base + HOPELESS_NATS && blocks.time_s[fix] - blocks.time_s[start.fix] < LONGEST_S
        });
        if starts.is_empty() || mixed_before[fix] || may_bend(blocks, fix, law) {
            starts.push(Start {
                fix,
                base,
                ..Start::default()
            });
        }
    }
    let mut parts = trace_back(&ends, &mixed_before, count);
    for part in &mut parts {
        if part.kind == PartKind::Leg && stands(blocks, *part, law) {
            part.kind = PartKind::Halt;
        }
    }
    merge_halts(&mut parts);
    parts
}

/// Whether a stretch that fits a very slow leg is a halt: drift moves the position, not the wheels.
fn stands(blocks: &Blocks, part: Part, law: &StepLaw) -> bool {
    const SLOW_SHARE: f64 = 0.15;
    let lapse_s = blocks.time_s[part.last] - blocks.time_s[part.first];
    let moved_m = blocks.place(part.first).distance_m(blocks.place(part.last));
    lapse_s >= 5.0 && moved_m < SLOW_SHARE * law.speed_mps * lapse_s
}

/// Joins halts that were cut in two only because of the longest time.
fn merge_halts(parts: &mut Vec<Part>) {
    parts.dedup_by(|later, earlier| {
        let one =
            later.kind == PartKind::Halt && earlier.kind == PartKind::Halt && later.first <= earlier.last;
        if one {
            earlier.last = later.last;
        }
        one
    });
}

impl Start {
    fn advance(&mut self, step_m: Vector, dt_s: f64, law: &StepLaw, scale: f64) {
        self.e = step_m + self.e * law.theta;
        self.m_s = dt_s + law.theta * self.m_s;
        let weight = 1.0 / (law.innovation_m2 * scale * scale);
        self.s_ee += self.e.dot(self.e) * weight;
        self.s_me = self.s_me + self.e * self.m_s * weight;
        self.s_mm += self.m_s * self.m_s * weight;
    }

    /// Cost of these steps as a leg: any heading, speed near the usual one.
    fn leg_cost(&self, law: &StepLaw) -> f64 {
        let pull = math::hypot(self.s_me.east, self.s_me.north);
        let trust = 1.0 / (law.speed_sd_mps * law.speed_sd_mps);
        let speed = (pull + law.speed_mps * trust) / (self.s_mm + trust);
        (self.s_ee - 2.0 * speed * pull + speed * speed * self.s_mm + (speed - law.speed_mps).powi(2) * trust)
            / 2.0
    }
}

/// False if a precise log shows that the path continues straight at one speed through this fix.
fn may_bend(blocks: &Blocks, fix: usize, law: &StepLaw) -> bool {
    const REACH: usize = 2;
    if fix < REACH || fix + REACH >= blocks.time_s.len() {
        return true;
    }
    let (before_s, after_s) = (
        blocks.time_s[fix] - blocks.time_s[fix - REACH],
        blocks.time_s[fix + REACH] - blocks.time_s[fix],
    );
    // Noise of the velocity difference between the two sides; precise if a turn stands out far above it.
    let noise_mps = blocks.error_factor_at(fix) * law.white_m * 6.0_f64.sqrt() / before_s.min(after_s);
    if law.speed_mps < 10.0 * noise_mps {
        return true;
    }
    let change_mps = |column: &[f64]| {
        (column[fix + REACH] - column[fix]) / after_s - (column[fix] - column[fix - REACH]) / before_s
    };
    math::hypot(change_mps(&blocks.east_m), change_mps(&blocks.north_m)) > 3.0 * noise_mps
}

fn trace_back(ends: &[Step], mixed_before: &[bool], count: usize) -> Vec<Part> {
    let part = |kind, first, last| Part { kind, first, last };
    let mut parts = Vec::new();
    let mut fix = count - 1;
    if mixed_before[fix] {
        // The last step belongs to nothing; end the division before it.
        fix -= 1;
        if count == 2 {
            return vec![part(PartKind::Leg, 0, 1)];
        }
    }
    while fix > 0 {
        let step = ends[fix];
        parts.push(part(step.kind, step.start, fix));
        // Before a wait of one fix there is a mixed step, whatever costs more here.
        let is_one_fix = step.start == fix;
        fix = step.start;
        if fix > 0 && (is_one_fix || mixed_before[fix]) {
            fix -= 1;
        }
    }
    if parts.is_empty() {
        parts.push(part(PartKind::Halt, 0, count - 1));
    }
    parts.reverse();
    parts
}
