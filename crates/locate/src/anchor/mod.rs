//! Where was the machine really, if positions wander by decimetres or metres?
//!
//! Question: a log drifts by much more than the width of a swath; what does the ground that it drove on reveal about the
//! drift?
//!
//! Method. Legs are straight and driven at one speed, corners join them, a stand does not move, the station lies where the
//! plan shows it, and a free-driving machine turns at the edge of the lawn, at one distance from it. All of this forms a
//! chain of linear equations around a first guess: place, velocity, drift (first-order Gauss-Markov), the offset and
//! rotation between plan and log, and the distance at which it turns ([`state`]). A Kalman filter and smoother ([`filter`])
//! solves it; the guess is improved and the edges are searched for again ([`edges`]) a few times, loosely at first. The
//! edges are used only if they make the logged positions likelier than they are without: lanes and wrong plans switch them
//! off.
//!
//! Exact: the smoothing, given legs and edges. Approximate: which edge it was; turns, by the clock of the log. Known limits:
//! an error that is fixed to a place looks like a displaced edge if [`crate::local_bias`] does not see it, as under metre
//! drift. Cost: a few milliseconds a pass for a night.

pub mod chain;
pub mod edges;
pub mod filter;
pub mod state;
pub mod timing;

use crate::plan_fit::{self, EdgeTurn, TurnsFit};
use chain::{Build, Chain, Drive};
use edges::UnsureTurn;
use filter::{Forward, Matrix, Sight, Smoothed, Start, Vector, Wander};
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::SeedableRng;
use state::{DRIFT, INSET, OFFSET, PLACE, SIZE, TURNED};
use tussock_plane::{Edge, Region, Vector as Heading};
use tussock_types::math;
use tussock_types::{Place, PlanOffset};

/// What is known in advance.
#[derive(Clone, Copy, Debug)]
pub struct Known<'a> {
    /// White part per axis.
    pub white_m: f64,
    /// Slow part per axis.
    pub drift_m: f64,
    /// Drift time.
    pub drift_time_s: f64,
    /// Usual speed.
    pub speed_mps: f64,
    /// Scatter of the speed from leg to leg, as a fraction of it.
    pub speed_scatter_fraction: f64,
    /// Where the machine may be: the boundary or the lawn, without zones and obstacles.
    pub ground: Option<&'a Region>,
    /// Station in the plan.
    pub station: Option<Place>,
    /// Expected distance inside the edge at which it turns, and how sure that is.
    pub inset_m: (f64, f64),
}

/// Whether and how edges were used.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum EdgeUse {
    /// No plan, or too few turns.
    None,
    /// Used: what they added to the likelihood of the logged positions.
    Used {
        /// Gain in nats.
        gain_nats: f64,
        /// Turns that were assigned to an edge.
        turns: usize,
        /// Mean trust in the edges, over all turns.
        weight_fraction: f64,
    },
    /// Not used because they do not fit: lanes, or a wrong plan.
    Refused {
        /// What they add to the likelihood of the logged positions.
        gain_nats: f64,
        /// Mean trust in the edges, over all turns.
        weight_fraction: f64,
    },
}

/// The answer. Places are on the drawn plan: the log's places minus the offset between the two.
#[derive(Clone, Debug, PartialEq)]
pub struct Anchored {
    /// The chain, with its sights.
    pub chain: Chain,
    /// Expected place of each corner.
    pub corners: Vec<Place>,
    /// Standard deviation of the place of each corner, root of the mean square over both axes.
    pub corner_sd_m: Vec<f64>,
    /// How edges were used.
    pub edges: EdgeUse,
    /// Where the plan lies, as far as the log shows it, rotated about its middle.
    pub offset: PlanOffset,
    /// Edges of the ground.
    pub edge_lines: Vec<Edge>,
    /// Turns that were assigned to an edge: step, number of the edge, weight.
    pub turns: Vec<(usize, usize, f64)>,
    /// Distance inside the edge at which it turns.
    pub inset_m: f64,
    /// Legs that run along an edge and hardly go beyond that distance: number of the leg, number of the edge.
    pub followed: Vec<(usize, usize)>,
    /// Speed.
    pub speed_mps: f64,
    /// Usual wait at a turn.
    pub usual_wait_s: f64,
    /// How the plan lies according to the turns of the path that was found without its edges.
    pub fit: Option<TurnsFit>,
    /// Mean square of normalised surprises; 1 if the noise model is right.
    pub surprise: f64,
    start: Vector,
    start_sd: Vector,
    wander: Wander,
    run: Forward,
    /// Expected state at each step.
    pub states: Vec<Vector>,
}

/// If the mean trust in the edges, over all turns, is below this, the plan is not believed: right plans give 0.63 and more,
/// plans rotated by 12 degrees under metre drift 0.5 and less.
const LEAST_WEIGHT: f64 = 0.55;
/// The same for small drift, where likelihood reveals a wrong plan.
const LEAST_WEIGHT_SMALL_DRIFT: f64 = 0.4;
/// If the likelihood falls by more than this per turn, edges are not believed.
const MOST_LOSS_NATS: f64 = 0.1;
/// With larger drift the next lane is as likely as this one.
const LANES_TOO_CLOSE_M: f64 = 0.5;
/// From this fraction of the way driven along one axis on, the pattern is lanes.
const LANES_FROM: f64 = 0.7;
/// A turn takes no longer than this.
const MOST_TURN_S: f64 = 5.0;
/// Legs within this sine of an edge's direction run along it.
const ALONG_SINE: f64 = 0.1;
/// Shorter legs are ignored.
const LEAST_FOLLOWED_M: f64 = 2.0;
/// Mean distance beyond the line at which the machine turns, over the positions' standard deviation: 0.8 if they merely err.
const MOST_STRAY_SD: f64 = 1.1;
/// Fewer turns show nothing.
const LEAST_TURNS: usize = 20;
/// How loosely edges are held, pass by pass.
const LOOSE: [f64; 7] = [1.0, 0.5, 0.25, 0.1, 0.0, 0.0, 0.0];
const PASSES_WITHOUT: usize = 3;
/// Plans that are farther off than this are searched for where the turns show them.
const FAR_OFFSET_M: f64 = 0.5;
/// Standard deviation of a station's drawn place.
const STATION_SD_M: f64 = 0.08;
/// A stand at the station lasts at least this long.
const STATION_LEAST_S: f64 = 300.0;

struct Work<'a> {
    known: Known<'a>,
    drives: Vec<Drive>,
    build: Build,
    chain: Chain,
    wander: Wander,
    start: Vector,
    start_sd: Vector,
    start_spread: Matrix,
    about: [f64; 2],
    speed_mps: f64,
    usual_wait_s: f64,
    /// Sights that belong to each step regardless of the edges.
    firm: Vec<usize>,
    edges: Vec<Edge>,
    turns: Vec<(usize, usize, f64)>,
}

/// Finds the path of drives.
pub fn anchor(drives: Vec<Drive>, build: &Build, known: &Known<'_>) -> Anchored {
    let mut work = Work::new(drives, build, known);
    let (mut run, mut smoothed) = work.pass();
    for _ in 1..PASSES_WITHOUT {
        work.straighten(&smoothed);
        work.sharpen();
        (run, smoothed) = work.pass();
    }
    let fit = work.plan_fit(&smoothed);
    if fit.as_ref().is_some_and(|fit| work.starts_at(fit)) {
        (run, smoothed) = work.pass();
    }
    let without_nats = run.fix_nats;
    let without = (work.chain.clone(), work.speed_mps);
    let mut used = EdgeUse::None;
    if !work.edges.is_empty() && work.chain.legs.len() >= LEAST_TURNS {
        for loose in LOOSE {
            work.straighten(&smoothed);
            work.see_edges(&run, &smoothed, loose * (3.0 * known.drift_m).min(1.5));
            (run, smoothed) = work.pass();
        }
        let turns = work.turns.len();
        let gain_nats = run.fix_nats - without_nats;
        let weight = work.turns.iter().map(|turn| turn.2).sum::<f64>() / work.chain.legs.len() as f64;
        let least_weight = if known.drift_m > LANES_TOO_CLOSE_M {
            LEAST_WEIGHT
        } else {
            LEAST_WEIGHT_SMALL_DRIFT
        };
        let in_lanes = known.drift_m > LANES_TOO_CLOSE_M && work.lanes_share() > LANES_FROM;
        if turns >= LEAST_TURNS
            && weight >= least_weight
            && gain_nats >= -MOST_LOSS_NATS * turns as f64
            && !in_lanes
        {
            used = EdgeUse::Used {
                gain_nats,
                turns,
                weight_fraction: weight,
            };
        } else {
            used = EdgeUse::Refused {
                gain_nats,
                weight_fraction: weight,
            };
            work.turns.clear();
            (work.chain, work.speed_mps) = without;
            (run, smoothed) = work.pass();
        }
    }
    work.finish(run, smoothed, used, fit)
}

impl<'a> Work<'a> {
    fn new(drives: Vec<Drive>, build: &Build, known: &Known<'a>) -> Self {
        let about = known
            .ground
            .and_then(Region::centroid)
            .map_or([0.0; 2], |middle| [middle.east_m, middle.north_m]);
        let wander = Wander {
            drift_m: known.drift_m,
            drift_time_s: known.drift_time_s,
            place_m_per_root_s: 0.005,
            speed_mps_per_root_s: 0.0005,
        };
        let mut start = [0.0; SIZE];
        start[INSET] = known.inset_m.0;
        let mut start_sd = [0.0; SIZE];
        start_sd[DRIFT] = known.drift_m;
        start_sd[DRIFT + 1] = known.drift_m;
        let sees_plan = known.ground.is_some() || known.station.is_some();
        if sees_plan {
            start_sd[OFFSET] = 1.0;
            start_sd[OFFSET + 1] = 1.0;
        }
        if known.ground.is_some() {
            start_sd[TURNED] = 0.01;
            start_sd[INSET] = known.inset_m.1;
        }
        let mut start_spread = [[0.0; SIZE]; SIZE];
        for at in 0..SIZE {
            start_spread[at][at] = start_sd[at] * start_sd[at];
        }
        let mut work = Self {
            known: *known,
            drives,
            build: *build,
            chain: Chain::default(),
            wander,
            start,
            start_sd,
            start_spread,
            about,
            speed_mps: known.speed_mps,
            usual_wait_s: 1.0,
            firm: Vec::new(),
            edges: known.ground.map(Edge::all_of).unwrap_or_default(),
            turns: Vec::new(),
        };
        work.rebuild();
        work
    }

    /// Builds the chain again from the drives.
    fn rebuild(&mut self) {
        self.chain = Chain::build(&self.drives, &self.build);
        self.see_station();
        self.firm = self.chain.steps.iter().map(|step| step.sights.len()).collect();
        self.set_starts();
    }

    /// Improves the times of the corners, given directions and speed.
    fn sharpen(&mut self) {
        if let Some(wait_s) = timing::usual_wait_s(&self.drives, self.speed_mps) {
            self.usual_wait_s = wait_s;
        }
        // A fix relative to its neighbours within a few seconds.
        let noise_m = (self.known.white_m.powi(2) + 3.0 * self.build.drift_rate_m2_per_s).sqrt();
        for drive in &mut self.drives {
            timing::sharpen(drive, self.speed_mps, self.usual_wait_s, noise_m);
        }
        self.rebuild();
    }

    fn pass(&self) -> (Forward, Smoothed) {
        let run = filter::forward(&self.chain.steps, &self.start, &self.start_spread, &self.wander);
        let smoothed = filter::smooth(&self.chain.steps, &run, &self.wander);
        (run, smoothed)
    }

    /// Sets the velocity with which each leg begins, and the precision of its ends.
    fn set_starts(&mut self) {
        let speed_mps = self.speed_mps;
        for leg in &self.chain.legs {
            let first = &mut self.chain.steps[leg.from + 1].moved;
            first.start = Some(Start {
                velocity_mps: [speed_mps * leg.along[0], speed_mps * leg.along[1]],
                along: leg.along,
                sd_mps: [self.known.speed_scatter_fraction * speed_mps, 0.35 * speed_mps],
            });
            first.slip = Some((leg.along, speed_mps * leg.timing_s[0]));
            let last = &mut self.chain.steps[leg.to].moved;
            let more_s = if leg.to == leg.from + 1 {
                leg.timing_s[0]
            } else {
                0.0
            };
            last.slip = Some((leg.along, speed_mps * math::hypot(leg.timing_s[1], more_s)));
        }
    }

    /// Takes directions from the result so far, and the usual speed and wait from the fixes along them.
    fn straighten(&mut self, smoothed: &Smoothed) {
        for leg in &mut self.chain.legs {
            let (from, to) = (&smoothed.state[leg.from], &smoothed.state[leg.to]);
            let way = [to[PLACE] - from[PLACE], to[PLACE + 1] - from[PLACE + 1]];
            let length_m = math::hypot(way[0], way[1]);
            if length_m > 0.05 {
                leg.along = [way[0] / length_m, way[1] / length_m];
            }
            self.drives[leg.drive].spans[leg.span].along = leg.along;
        }
        if let Some(speed_mps) =
            timing::pace(&self.drives, self.known.white_m, self.build.drift_rate_m2_per_s)
        {
            self.speed_mps = speed_mps.clamp(0.8 * self.known.speed_mps, 1.25 * self.known.speed_mps);
        }
        self.set_starts();
    }

    /// Ties long stands near the station to it.
    fn see_station(&mut self) {
        let Some(station) = self.known.station else {
            return;
        };
        let reach_m = 1.0 + 3.0 * math::hypot(self.known.drift_m, self.known.white_m);
        for stand in &self.chain.stands {
            if stand.end_s - stand.start_s < STATION_LEAST_S || stand.steps.is_empty() {
                continue;
            }
            let count = stand.steps.len() as f64;
            let mean = |axis: usize| {
                stand
                    .steps
                    .clone()
                    .map(|at| self.chain.steps[at].sights[axis].value)
                    .sum::<f64>()
                    / count
            };
            if Place::new(mean(0), mean(1)).distance_m(station) > reach_m {
                continue;
            }
            for at in stand.steps.clone() {
                for (axis, value) in [station.east_m, station.north_m].into_iter().enumerate() {
                    self.chain.steps[at].sights.push(Sight {
                        of: vec![(PLACE + axis, 1.0), (OFFSET + axis, -1.0)],
                        value,
                        variance: STATION_SD_M * STATION_SD_M,
                        is_fix: false,
                    });
                }
            }
        }
    }

    /// How the plan lies according to the turns alone, with edges unknown.
    fn plan_fit(&self, smoothed: &Smoothed) -> Option<TurnsFit> {
        let turn = |(leg, onward): (chain::ChainLeg, [f64; 2])| {
            let to = &smoothed.state[leg.to];
            EdgeTurn {
                place: Place::new(to[PLACE], to[PLACE + 1]),
                time_s: leg.end_s,
                into: Heading::new(leg.along[0], leg.along[1]),
                onward: Heading::new(onward[0], onward[1]),
            }
        };
        let turns: Vec<EdgeTurn> = self.turning_legs().map(turn).filter(EdgeTurn::is_sharp).collect();
        let known = &self.known;
        let error = plan_fit::TurnError {
            each_m: known.white_m,
            shared_m: known.drift_m,
            shared_s: known.drift_time_s,
        };
        plan_fit::fit(&turns, &self.edges, known.inset_m, error)
    }

    /// Starts where the turns show the plan, if that is far from where it is drawn; returns whether it does.
    fn starts_at(&mut self, fit: &TurnsFit) -> bool {
        let offset = fit.offset;
        let offset_m = math::hypot(offset.east_m, offset.north_m);
        if !fit.is_trusted() || offset_m < FAR_OFFSET_M.max(3.0 * offset.sd_m) {
            return false;
        }
        let turned_rad = offset.rotation_deg.to_radians();
        let arm = [
            self.about[0] - offset.about_east_m,
            self.about[1] - offset.about_north_m,
        ];
        self.start[OFFSET] = offset.east_m - turned_rad * arm[1];
        self.start[OFFSET + 1] = offset.north_m + turned_rad * arm[0];
        self.start[TURNED] = turned_rad;
        true
    }

    /// Finds the edge at which each leg ended, given all fixes and the edges of the previous round.
    fn see_edges(&mut self, run: &Forward, smoothed: &Smoothed, loose_m: f64) {
        self.turns.clear();
        let mut sights: Vec<(usize, Sight)> = Vec::new();
        let turning: Vec<_> = self.turning_legs().collect();
        for (leg, onward) in turning {
            let own = self.chain.steps[leg.to].sights.get(self.firm[leg.to]).cloned();
            let seen = self.edge_at(
                &smoothed.state[leg.to],
                leg.along,
                onward,
                loose_m,
                own.as_ref(),
                |of| smoothed.variance(run, leg.to, of),
            );
            if let Some((edge, weight, sight)) = seen {
                self.turns.push((leg.to, edge, weight));
                sights.push((leg.to, sight));
            }
        }
        self.forget_edges();
        for (step, sight) in sights {
            self.chain.steps[step].sights.push(sight);
        }
    }

    /// Fraction of the way driven along one axis: resultant of the doubled angles, weighted by length.
    fn lanes_share(&self) -> f64 {
        let (mut cos, mut sin, mut sum) = (0.0, 0.0, 0.0);
        for leg in &self.chain.legs {
            let [a, b] = leg.along;
            let lapse_s = leg.lapse_s();
            cos += lapse_s * (a * a - b * b);
            sin += lapse_s * 2.0 * a * b;
            sum += lapse_s;
        }
        if sum > 0.0 {
            math::hypot(cos, sin) / sum
        } else {
            0.0
        }
    }

    fn forget_edges(&mut self) {
        for (step, firm) in self.chain.steps.iter_mut().zip(&self.firm) {
            step.sights.truncate(*firm);
        }
    }

    /// Legs that end in a turn, and the direction of the next.
    fn turning_legs(&self) -> impl Iterator<Item = (chain::ChainLeg, [f64; 2])> + '_ {
        self.chain.legs.windows(2).filter_map(|pair| {
            let (leg, next) = (pair[0], pair[1]);
            (next.drive == leg.drive && next.start_s - leg.end_s <= MOST_TURN_S).then_some((leg, next.along))
        })
    }

    /// The edge at which a turn was made, seen from a state.
    fn edge_at(
        &self,
        state: &Vector,
        into: [f64; 2],
        onward: [f64; 2],
        loose_m: f64,
        own: Option<&Sight>,
        variance: impl Fn(&[(usize, f64)]) -> f64,
    ) -> Option<(usize, f64, Sight)> {
        let arm = [state[PLACE] - self.about[0], state[PLACE + 1] - self.about[1]];
        let place = on_plan(state, self.about);
        let east = [(PLACE, 1.0), (OFFSET, -1.0), (TURNED, arm[1])];
        let north = [(PLACE + 1, 1.0), (OFFSET + 1, -1.0), (TURNED, -arm[0])];
        let both: Vec<(usize, f64)> = east.iter().chain(&north).copied().collect();
        let (ee, nn) = (variance(&east), variance(&north));
        let en = 0.5 * (variance(&both) - ee - nn);
        let mut at = [place.east_m, place.north_m];
        let mut spread_m2 = [ee, en, nn];
        if let Some(own) = own {
            // Without what this very turn contributed before: no edge may vouch for itself.
            let [a, b] = [own.of[0].1, own.of[1].1];
            let pull = [ee * a + en * b, en * a + nn * b];
            let known = a * pull[0] + b * pull[1];
            let left = (own.variance - known).max(0.02 * own.variance);
            let off = own.value - state[INSET] - a * at[0] - b * at[1];
            for axis in 0..2 {
                at[axis] -= pull[axis] * off / left;
            }
            spread_m2 = [
                ee + pull[0] * pull[0] / left,
                en + pull[0] * pull[1] / left,
                nn + pull[1] * pull[1] / left,
            ];
        }
        let turn = UnsureTurn {
            place: Place::new(at[0], at[1]),
            spread_m2,
            into: tussock_plane::Vector::new(into[0], into[1]),
            onward: tussock_plane::Vector::new(onward[0], onward[1]),
        };
        let found = edges::find(&self.edges, &turn, state[INSET], 0.0, loose_m)?;
        let edge = self.edges[found.edge];
        let (a, b) = (-edge.inwards().east, -edge.inwards().north);
        let sight = Sight {
            of: vec![
                (PLACE, a),
                (PLACE + 1, b),
                (OFFSET, -a),
                (OFFSET + 1, -b),
                (TURNED, a * arm[1] - b * arm[0]),
                (INSET, 1.0),
            ],
            // Distance of the edge's line from the origin, off the lawn.
            value: edge.inside_m(Place::new(0.0, 0.0)),
            variance: (edges::EDGE_SD_M * edges::EDGE_SD_M + loose_m * loose_m) / found.weight,
            is_fix: false,
        };
        Some((found.edge, found.weight, sight))
    }

    fn finish(self, run: Forward, smoothed: Smoothed, edges: EdgeUse, fit: Option<TurnsFit>) -> Anchored {
        let corners = self
            .chain
            .corners
            .iter()
            .map(|corner| on_plan(&smoothed.state[corner.step], self.about))
            .collect();
        let corner_sd_m = self
            .chain
            .corners
            .iter()
            .map(|corner| {
                let east = smoothed.variance(&run, corner.step, &[(PLACE, 1.0), (OFFSET, -1.0)]);
                let north = smoothed.variance(&run, corner.step, &[(PLACE + 1, 1.0), (OFFSET + 1, -1.0)]);
                (0.5 * (east + north)).sqrt()
            })
            .collect();
        let last = smoothed.state.last().copied().unwrap_or(self.start);
        let sd_m = self.chain.steps.len().checked_sub(1).map_or(1.0, |last| {
            (0.5 * (smoothed.variance(&run, last, &[(OFFSET, 1.0)])
                + smoothed.variance(&run, last, &[(OFFSET + 1, 1.0)])))
            .sqrt()
        });
        let mut found = Anchored {
            corners,
            corner_sd_m,
            edges,
            offset: PlanOffset {
                east_m: last[OFFSET],
                north_m: last[OFFSET + 1],
                rotation_deg: last[TURNED].to_degrees(),
                about_east_m: self.about[0],
                about_north_m: self.about[1],
                sd_m,
            },
            inset_m: last[INSET],
            edge_lines: self.edges,
            turns: self.turns,
            speed_mps: self.speed_mps,
            usual_wait_s: self.usual_wait_s,
            fit,
            surprise: run.surprise,
            start: self.start,
            start_sd: self.start_sd,
            wander: self.wander,
            run,
            states: smoothed.state,
            chain: self.chain,
            followed: Vec::new(),
        };
        found.followed = found.follows();
        found
    }
}

/// Place of a state on the drawn plan.
fn on_plan(state: &Vector, about: [f64; 2]) -> Place {
    let arm = [state[PLACE] - about[0], state[PLACE + 1] - about[1]];
    Place::new(
        state[PLACE] - state[OFFSET] + state[TURNED] * arm[1],
        state[PLACE + 1] - state[OFFSET + 1] - state[TURNED] * arm[0],
    )
}

impl Anchored {
    /// Root mean square of the corners' standard deviations.
    pub fn usual_corner_sd_m(&self) -> f64 {
        let squares: f64 = self.corner_sd_m.iter().map(|sd_m| sd_m * sd_m).sum();
        (squares / (self.corner_sd_m.len() as f64).max(1.0)).sqrt()
    }

    /// Remaining position error per axis, as found in simulated gardens: what the model knows, and a third more at metre
    /// drift, because turns that were missed or assigned to a wrong edge are not in it.
    pub fn error_m(&self) -> f64 {
        const SURE_M: f64 = 0.1;
        const UNSURE_M: f64 = 0.4;
        const MORE: f64 = 0.33;
        let known_m = self.usual_corner_sd_m();
        let share = ((known_m - SURE_M) / (UNSURE_M - SURE_M)).clamp(0.0, 1.0);
        known_m * (1.0 + MORE * share)
    }

    /// Whether the edges of the ground hold the path.
    pub fn is_held(&self) -> bool {
        matches!(self.edges, EdgeUse::Used { .. })
    }

    /// Share of legs whose end an edge explains, each weighted by how far it is trusted.
    pub fn explained_fraction(&self) -> f64 {
        let trust: f64 = self.turns.iter().map(|turn| turn.2).sum();
        trust / (self.chain.legs.len() as f64).max(1.0)
    }

    /// Legs that run along an edge, near the line at which turns are made; none if such legs go beyond it.
    fn follows(&self) -> Vec<(usize, usize)> {
        if !self.is_held() {
            return Vec::new();
        }
        let usual_sd_m = self.usual_corner_sd_m();
        let about = [self.offset.about_east_m, self.offset.about_north_m];
        let reach_m = 3.0 * usual_sd_m + 0.1;
        let mut found = Vec::new();
        let (mut sum_m, mut outside) = (0.0, 0_u32);
        for (number, leg) in self.chain.legs.iter().enumerate() {
            let (from, to) = (
                on_plan(&self.states[leg.from], about),
                on_plan(&self.states[leg.to], about),
            );
            if from.distance_m(to) < LEAST_FOLLOWED_M {
                continue;
            }
            let middle = from.middle(to);
            let edge = self.edge_lines.iter().position(|edge| {
                tussock_plane::Vector::new(leg.along[0], leg.along[1])
                    .dot(edge.inwards())
                    .abs()
                    < ALONG_SINE
                    && edge.is_beside(middle)
                    && (edge.inside_m(middle) - self.inset_m).abs() < reach_m
            });
            if let Some(edge) = edge {
                let off_m = self.edge_lines[edge].inside_m(middle) - self.inset_m;
                if off_m < 0.0 {
                    sum_m -= off_m;
                    outside += 1;
                }
                found.push((number, edge));
            }
        }
        // Position errors put them off the line by as much as positions err, and no farther.
        let mean_m = sum_m / (outside as f64).max(1.0);
        if mean_m > MOST_STRAY_SD * usual_sd_m + edges::EDGE_SD_M {
            return Vec::new();
        }
        found
    }

    /// Moves the turns that were made at an edge to where such turns are made in this past.
    ///
    /// The smoother holds an edge loosely ([`edges::EDGE_SD_M`]), because it may be the wrong one. A past in which each turn
    /// strays by as much would paint a rim that the machine never reached.
    fn put_at_edges(&self, corners: &mut [Place], past: &[Vector]) {
        let mut at = 0;
        let mut is_put = vec![false; corners.len()];
        for &(step, edge, _) in &self.turns {
            while at < self.chain.corners.len() && self.chain.corners[at].step < step {
                at += 1;
            }
            let Some(corner) = corners
                .get_mut(at)
                .filter(|_| self.chain.corners[at].step == step)
            else {
                continue;
            };
            let edge = &self.edge_lines[edge];
            let off_m = past[step][INSET] - edge.inside_m(*corner);
            *corner = edge.moved_in(*corner, off_m);
            is_put[at] = true;
        }
        for &(leg, edge) in &self.followed {
            let leg = self.chain.legs[leg];
            for step in [leg.from, leg.to] {
                let Some(at) = self.corner_at(step) else { continue };
                if !is_put[at] {
                    let edge = &self.edge_lines[edge];
                    let beyond_m = past[step][INSET] - edge.inside_m(corners[at]);
                    corners[at] = edge.moved_in(corners[at], beyond_m.max(0.0));
                }
            }
        }
    }

    /// The corner at which a leg begins or ends.
    fn corner_at(&self, step: usize) -> Option<usize> {
        // If it waits at the corner, a leg sets out a few steps after the corner was reached.
        let after = self.chain.corners.partition_point(|corner| corner.step <= step);
        after.checked_sub(1)
    }

    /// Another past that agrees with the log: the place of each corner on the drawn plan.
    pub fn draw(&self, seed: u64, number: u64) -> Vec<Place> {
        let mut dice = ChaCha8Rng::seed_from_u64(seed);
        dice.set_stream(number);
        let past = filter::draw(
            &self.chain.steps,
            &self.run,
            &self.start,
            &self.start_sd,
            &self.wander,
            &mut dice,
        );
        let about = [self.offset.about_east_m, self.offset.about_north_m];
        let mut corners: Vec<Place> = self
            .chain
            .corners
            .iter()
            .map(|corner| on_plan(&past[corner.step], about))
            .collect();
        self.put_at_edges(&mut corners, &past);
        corners
    }
}
