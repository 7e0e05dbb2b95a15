//! Where would this machine drive on this site?
//!
//! ```text
//! station -> straight out or along a guide run -> roam: leg, turn, leg, turn ... -> time over
//!    ^                                                                               |
//!    +-- charge <- along a guide run or the edge <- drive on until one is met <------+
//! ```
//!
//! Event by event: a leg is one ray cast, so a night costs as many casts as it has turns. The machine never leaves the
//! turning region by more than rounding, except along guide runs and between lawn and station. A leg shorter than two
//! centimetres is drawn again; if nothing else is possible, the longest free way is taken.

use crate::dice::Dice;
use crate::ground::{GroundPart, GuideLine, OnRing, RayHit, turning_region};
use crate::machine::{Departure, HomeWay, Machine, Pattern, Run, SimulateError, TurnLaw};
use crate::run::{Doing, Stay, TrueHalt, TrueOuting, TrueRun, TrueVertex};
use std::f64::consts::TAU;
use tussock_plane::Vector;
use tussock_plane::{Region, Site};
use tussock_types::Place;

/// A shorter leg is drawn again.
pub(crate) const SHORTEST_LEG_M: f64 = 0.02;
/// At most this often; then the longest free way is taken.
pub(crate) const DRAWS: usize = 64;
/// Curved legs are driven in straight pieces of this length.
const CURVE_PIECE_M: f64 = 0.5;

/// Runs one machine on one site.
///
/// # Errors
/// [`SimulateError`] for values that no machine has, and for sites without room.
pub fn simulate(site: &Site, machine: &Machine, run: &Run) -> Result<TrueRun, SimulateError> {
    Yard::new(site, machine.past_boundary_m)?.drive(machine, run)
}

/// A site prepared for machines that turn at one line: worth keeping if many runs are made.
#[derive(Clone, Debug)]
pub struct Yard {
    region: Region,
    past_boundary_m: f64,
    pub(crate) parts: Vec<GroundPart>,
    pub(crate) guides: Vec<GuideLine>,
    guide_shares_fraction: Vec<Option<f64>>,
    pub(crate) station: Option<Vector>,
    /// The part that contains the station.
    pub(crate) home_part: usize,
    /// Where the station's way meets that part's edge.
    pub(crate) gate: Option<OnRing>,
}

impl Yard {
    /// Works out the turning region of a site.
    ///
    /// # Errors
    /// [`SimulateError::NoRoom`] and errors of the polygon engine.
    pub fn new(site: &Site, past_boundary_m: f64) -> Result<Self, SimulateError> {
        crate::machine::check("past_boundary_m", past_boundary_m, -5.0, 5.0, "-5 to 5 m")?;
        let region = turning_region(site, past_boundary_m)?;
        let parts = GroundPart::all_of(&region);
        let station = site.station.map(Vector::from);
        let distance_m = |part: &GroundPart| match station {
            Some(station) if !part.contains(station) => part
                .nearest_on_ring(station)
                .map_or(f64::INFINITY, |on| on.distance_m),
            Some(_) => 0.0,
            None => -part.region.area_m2(),
        };
        let home_part = parts
            .iter()
            .enumerate()
            .min_by(|a, b| distance_m(a.1).total_cmp(&distance_m(b.1)))
            .map(|(number, _)| number)
            .ok_or(SimulateError::NoRoom {
                past_boundary_m,
                lawn_m2: site.lawn.area_m2(),
            })?;
        let gate = station.and_then(|station| parts[home_part].nearest_on_ring(station));
        Ok(Self {
            past_boundary_m,
            guides: lines_of(site.guides.iter().map(|guide| guide.shape.as_slice())),
            guide_shares_fraction: site.guide_shares_fraction.clone(),
            region,
            parts,
            station,
            home_part,
            gate,
        })
    }

    /// The same ground with other guide runs and shares; the turning line is not worked out again.
    #[must_use]
    pub fn with_guides(&self, guides: &[Vec<Place>], shares_fraction: &[Option<f64>]) -> Self {
        Self {
            guides: lines_of(guides.iter().map(Vec::as_slice)),
            guide_shares_fraction: shares_fraction.to_vec(),
            ..self.clone()
        }
    }

    /// Ground on which the machine's middle can be, including parts that it cannot reach.
    pub const fn turning_region(&self) -> &Region {
        &self.region
    }

    /// Runs a machine. It must turn at the line for which the yard was made.
    ///
    /// # Errors
    /// [`SimulateError::OutOfRange`].
    pub fn drive(&self, machine: &Machine, run: &Run) -> Result<TrueRun, SimulateError> {
        machine.check()?;
        run.check()?;
        let here_m = self.past_boundary_m;
        crate::machine::check(
            "past_boundary_m",
            machine.past_boundary_m,
            here_m,
            here_m,
            "that of the yard",
        )?;
        let mut driver = Driver::new(self, machine, run);
        match machine.pattern {
            Pattern::Roaming | Pattern::Spiral { .. } => driver.roam(),
            Pattern::Lanes { .. } | Pattern::Combined { .. } => crate::lanes::drive(&mut driver)?,
        }
        Ok(driver.finish())
    }
}

fn lines_of<'a>(guides: impl Iterator<Item = &'a [Place]>) -> Vec<GuideLine> {
    guides
        .map(|guide| GuideLine::new(guide.iter().copied().map(Vector::from).collect()))
        .collect()
}

/// How a leg ended.
#[derive(Clone, Copy, Debug)]
pub(crate) enum LegEnd {
    /// At an edge, by number.
    Edge(usize),
    /// On a guide run, this far along it.
    Guide(usize, f64),
    /// In a stuck spot; the machine has gone on to face this way.
    Freed(Vector),
    /// As far as was requested.
    Done,
}

/// What can end a leg besides the edge.
#[derive(Clone, Copy, Debug)]
pub(crate) struct LegLimits {
    /// From this time on, a guide run is taken when it is met.
    pub(crate) guides_from_s: f64,
    /// The leg is no longer than this.
    pub(crate) within_m: f64,
}

pub(crate) struct Driver<'a> {
    pub(crate) yard: &'a Yard,
    pub(crate) machine: &'a Machine,
    pub(crate) run: &'a Run,
    pub(crate) dice: Dice,
    pub(crate) observed: Vec<(f64, f64)>,
    pub(crate) time_s: f64,
    pub(crate) end_s: f64,
    pub(crate) place: Vector,
    pub(crate) heading: Vector,
    pub(crate) part: usize,
    /// Number of the vertex with which the present leg began, and its speed.
    pub(crate) leg_begins: usize,
    pub(crate) leg_speed_mps: f64,
    /// The 24 hours of the last round along the edge.
    pub(crate) edge_round_in: Option<u64>,
    pub(crate) record: TrueRun,
}

impl<'a> Driver<'a> {
    pub(crate) fn new(yard: &'a Yard, machine: &'a Machine, run: &'a Run) -> Self {
        let mut dice = Dice::new(run.seed, 0);
        let part = &yard.parts[yard.home_part];
        let place = yard.station.unwrap_or_else(|| somewhere_in(part, &mut dice));
        let observed = match &machine.turn_law {
            TurnLaw::Observed { pairs, .. } => {
                let mut sorted: Vec<(f64, f64)> = pairs
                    .iter()
                    .flat_map(|pair| [(pair.mirror_rad, pair.out_rad), (-pair.mirror_rad, -pair.out_rad)])
                    .collect();
                sorted.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
                sorted
            }
            _ => Vec::new(),
        };
        let into_lawn = yard
            .gate
            .map_or(Vector::new(1.0, 0.0), |gate| part.edges[gate.edge].inwards());
        Self {
            yard,
            machine,
            run,
            dice,
            observed,
            time_s: 0.0,
            end_s: run.hours * 3600.0,
            place,
            heading: -into_lawn,
            part: yard.home_part,
            leg_begins: 0,
            leg_speed_mps: machine.speed_mps,
            edge_round_in: None,
            record: TrueRun {
                seed: run.seed,
                ..TrueRun::default()
            },
        }
    }

    fn finish(mut self) -> TrueRun {
        self.corner(Doing::AtStation);
        let mut record = self.record;
        record.cut_at(self.end_s);
        record
    }

    pub(crate) fn corner(&mut self, doing: Doing) {
        self.record.vertices.push(TrueVertex {
            time_s: self.time_s,
            place: self.place.into(),
            heading_rad: self.heading.angle_rad(),
            doing,
        });
    }

    pub(crate) fn is_over(&self) -> bool {
        self.time_s >= self.end_s
    }

    pub(crate) const fn part(&self) -> &'a GroundPart {
        // Through the yard's own lifetime, so that the driver can move on while it holds a part.
        let yard: &'a Yard = self.yard;
        &yard.parts.as_slice()[self.part]
    }

    /// Drives straight to a place.
    pub(crate) fn go(&mut self, to: Vector, speed_mps: f64, doing: Doing) {
        let step = to - self.place;
        let Some(heading) = step.unit() else { return };
        let duration_s = step.length() / speed_mps;
        if self.time_s + duration_s <= self.time_s {
            return;
        }
        self.heading = if doing == Doing::Reversing {
            -heading
        } else {
            heading
        };
        self.corner(doing);
        self.time_s += duration_s;
        self.place = to;
    }

    /// Drives along corners.
    pub(crate) fn follow(&mut self, way: &[Vector]) {
        for corner in way {
            self.go(*corner, self.machine.speed_mps, Doing::Transit);
        }
    }

    pub(crate) fn wait(&mut self, duration_s: f64, doing: Doing) {
        if self.time_s + duration_s <= self.time_s {
            return;
        }
        self.corner(doing);
        let start_s = self.time_s;
        self.time_s += duration_s;
        if doing == Doing::AtStation {
            self.record.stays.push(Stay {
                start_s,
                end_s: self.time_s,
            });
        } else {
            self.record.halts.push(TrueHalt {
                start_s,
                end_s: self.time_s,
                place: self.place.into(),
                doing,
            });
        }
    }

    /// Stands until the turn is done.
    pub(crate) fn turn_to(&mut self, heading: Vector, share: f64) {
        let turning_s = self.dice.spell_s(&self.machine.turning) * share;
        self.wait(turning_s, Doing::Turning);
        self.heading = heading;
    }

    pub(crate) fn stay(&mut self, duration_s: f64) {
        self.wait(duration_s, Doing::AtStation);
    }

    pub(crate) fn charge(&mut self) {
        let charging_s = self.dice.spell_s(&self.machine.charging);
        self.stay(charging_s);
    }

    /// The time before the first outing.
    pub(crate) fn begin(&mut self) {
        if self.yard.station.is_some() {
            self.stay(self.run.start_stay_s);
        }
    }

    /// Straight out of the station, if there is one; returns the time at which the outing's time is over.
    pub(crate) fn set_out(&mut self) -> f64 {
        self.open_outing(None);
        if self.yard.station.is_none() {
            self.round_if_due();
            return f64::INFINITY;
        }
        let ends_s = self.time_s + self.dice.spell_s(&self.machine.roaming);
        self.part = self.yard.home_part;
        self.go_to_gate();
        self.round_if_due();
        ends_s
    }

    /// Stays where it is until the run is over.
    pub(crate) fn strand(&mut self) {
        let left_s = self.end_s - self.time_s;
        self.wait(left_s, Doing::Stranded);
    }

    fn open_outing(&mut self, guide: Option<usize>) {
        self.record.outings.push(TrueOuting {
            start_s: self.time_s,
            homeward_s: self.end_s,
            end_s: self.end_s,
            guide,
            guide_exit: None,
            home_guide: None,
        });
    }

    pub(crate) fn note(&mut self, change: impl FnOnce(&mut TrueOuting, f64)) {
        let now_s = self.time_s;
        if let Some(outing) = self.record.outings.last_mut() {
            change(outing, now_s);
        }
    }

    fn roam(&mut self) {
        if self.yard.station.is_none() {
            self.open_outing(None);
            self.round_if_due();
            self.heading = Vector::of_angle(self.dice.between(0.0, TAU));
            self.spirals_until(f64::INFINITY);
            self.legs_until(f64::INFINITY);
            return;
        }
        self.begin();
        while !self.is_over() {
            let roaming_s = self.dice.spell_s(&self.machine.roaming);
            let homeward_s = self.time_s + roaming_s;
            self.leave();
            self.spirals_until(homeward_s);
            self.legs_until(homeward_s);
            if self.is_over() {
                return;
            }
            self.note(|outing, end_s| outing.end_s = end_s);
            self.charge();
        }
    }

    /// One outing by chance between two in lanes; at the station before and after, if there is one.
    pub(crate) fn roam_once(&mut self) {
        let homeward_s = self.time_s + self.dice.spell_s(&self.machine.roaming);
        if self.yard.station.is_some() {
            self.leave();
            self.legs_until(homeward_s);
            if !self.is_over() {
                self.note(|outing, end_s| outing.end_s = end_s);
                self.charge();
            }
            return;
        }
        self.heading = self.free_heading(|dice| Vector::of_angle(dice.between(0.0, TAU)));
        while !self.is_over() && self.time_s < homeward_s {
            let limits = LegLimits {
                guides_from_s: f64::INFINITY,
                within_m: ((homeward_s - self.time_s) * self.machine.speed_mps).max(SHORTEST_LEG_M),
            };
            match self.leg(limits) {
                LegEnd::Edge(edge) => self.turn_at_edge(edge),
                LegEnd::Freed(heading) => self.heading = heading,
                LegEnd::Guide(..) | LegEnd::Done => {}
            }
        }
    }

    /// From the station to the first leg of the outing, heading set.
    fn leave(&mut self) {
        let pick = if self.is_edge_round_due() {
            None
        } else {
            self.pick_guide()
        };
        self.open_outing(pick.map(|(guide, _, _)| guide));
        if let Some((guide, part, exit_m)) = pick {
            let line = &self.yard.guides[guide];
            let mut way = vec![line.corners[0]];
            way.extend(line.way(0.0, exit_m));
            self.follow(&way);
            self.part = part;
            self.note(|outing, _| outing.guide_exit = way.last().map(|place| (*place).into()));
            let heading = self.free_heading(|dice| Vector::of_angle(dice.between(0.0, TAU)));
            self.turn_to(heading, 1.0);
            return;
        }
        self.part = self.yard.home_part;
        self.go_to_gate();
        self.round_if_due();
        let spread_rad = self.machine.departure_spread_deg.to_radians();
        let gate_edge = self.yard.gate.map(|gate| self.part().edges[gate.edge]);
        let is_inside = self
            .yard
            .station
            .is_some_and(|station| self.part().contains(station));
        let seen: &[f64] = &self.machine.departure_headings_rad;
        let heading = match gate_edge {
            _ if !seen.is_empty() => self.free_heading(|dice| {
                let picked_rad = seen[dice.below(seen.len())];
                Vector::of_angle(picked_rad + dice.between(-spread_rad, spread_rad))
            }),
            Some(edge) if !is_inside => {
                self.free_heading(|dice| edge.inwards().turned(dice.between(-spread_rad, spread_rad)))
            }
            _ => self.free_heading(|dice| Vector::of_angle(dice.between(0.0, TAU))),
        };
        match self.machine.departure {
            Departure::Forwards => self.heading = heading,
            Departure::Backwards => self.turn_to(heading, 1.0),
        }
    }

    /// From the station onto the lawn.
    pub(crate) fn go_to_gate(&mut self) {
        let (Some(station), Some(gate)) = (self.yard.station, self.yard.gate) else {
            return;
        };
        if self.part().contains(station) {
            return;
        }
        let doing = match self.machine.departure {
            Departure::Forwards => Doing::Transit,
            Departure::Backwards => Doing::Reversing,
        };
        self.go(gate.place, self.machine.speed_mps, doing);
    }

    /// Draws whether this outing goes along a guide run, and where it leaves it: guide, part, distance along it.
    fn pick_guide(&mut self) -> Option<(usize, usize, f64)> {
        let mut left = self.dice.unit();
        let machine = self.machine;
        let share = |guide: usize| self.yard.guide_shares_fraction.get(guide).copied().flatten();
        let guide = (0..self.yard.guides.len()).find(|&guide| {
            left -= share(guide).unwrap_or(machine.guide_share_fraction);
            left < 0.0
        })?;
        let line = &self.yard.guides[guide];
        let (low, high) = machine.guide_exit_fraction;
        for _ in 0..DRAWS {
            let exit_m = self.dice.between(low, high) * line.length_m();
            let place = line.place(exit_m);
            if let Some(part) = self.yard.parts.iter().position(|part| part.contains(place)) {
                return Some((guide, part, exit_m));
            }
        }
        None
    }

    /// Draws a heading until there is room for a leg.
    pub(crate) fn free_heading(&mut self, mut draw: impl FnMut(&mut Dice) -> Vector) -> Vector {
        let part = self.part();
        for _ in 0..DRAWS {
            let heading = draw(&mut self.dice);
            if part.cast(self.place, heading, SHORTEST_LEG_M).is_none() {
                return heading;
            }
        }
        let room_m = |heading: Vector| {
            part.cast(self.place, heading, f64::INFINITY)
                .map_or(0.0, |hit| hit.distance_m)
        };
        let fan = (0..DRAWS).map(|step| Vector::of_angle(step as f64 * TAU / DRAWS as f64));
        fan.max_by(|a, b| room_m(*a).total_cmp(&room_m(*b)))
            .unwrap_or(self.heading)
    }

    /// Legs and turns until home is reached (or the run is over).
    fn legs_until(&mut self, homeward_s: f64) {
        let (guides_from_s, edges_from_s) = match self.machine.home_way {
            HomeWay::GuideOrBoundary => (homeward_s, homeward_s),
            HomeWay::GuideElseBoundary { search_s } => (homeward_s, homeward_s + search_s),
        };
        while !self.is_over() {
            if self.time_s > homeward_s + self.machine.give_up_s {
                self.strand();
                return;
            }
            let limits = LegLimits {
                guides_from_s,
                within_m: f64::INFINITY,
            };
            let end = self.leg(limits);
            if self.time_s >= homeward_s {
                self.note(|outing, _| outing.homeward_s = homeward_s);
            }
            match end {
                LegEnd::Edge(edge) => {
                    if self.time_s >= edges_from_s && self.home_along_edge(edge) {
                        return;
                    }
                    self.turn_at_edge(edge);
                }
                LegEnd::Guide(guide, along_m) => {
                    self.home_along_guide(guide, along_m);
                    return;
                }
                LegEnd::Freed(heading) => self.heading = heading,
                LegEnd::Done => {}
            }
        }
    }

    /// Drives one leg along the present heading.
    pub(crate) fn leg(&mut self, limits: LegLimits) -> LegEnd {
        let machine = self.machine;
        let mut speed_mps = machine.speed_mps;
        if machine.speed_sd_fraction > 0.0 {
            speed_mps *= (1.0 + machine.speed_sd_fraction * self.dice.normal()).max(0.1);
        }
        if machine.slip_fraction > 0.0 {
            speed_mps *= 1.0 - self.dice.between(0.0, 2.0 * machine.slip_fraction);
        }
        let own_per_m = if machine.curvature_sd_per_m > 0.0 {
            machine.curvature_sd_per_m * self.dice.normal()
        } else {
            0.0
        };
        let is_curved = own_per_m != 0.0 || machine.heading_walk_deg > 0.0 || machine.slope_pull_per_m > 0.0;
        let downhill = Vector::of_angle(machine.downhill_deg.to_radians());
        (self.leg_begins, self.leg_speed_mps) = (self.record.vertices.len(), speed_mps);
        let mut left_m = limits.within_m;
        loop {
            let piece_m = if is_curved {
                left_m.min(CURVE_PIECE_M)
            } else {
                left_m
            };
            let heading = self.heading;
            let hit = self.part().cast(self.place, heading, piece_m);
            let reach_m = match hit {
                Some(RayHit { distance_m, .. }) => distance_m,
                None if piece_m.is_finite() => piece_m,
                // No edge although the ground ends somewhere: back to the nearest one.
                None => return self.back_to_edge(),
            };
            let start = self.place;
            let guide = self.first_guide(heading, reach_m, speed_mps, limits.guides_from_s);
            let open_m = guide.map_or(reach_m, |(distance_m, _, _)| distance_m);
            if let Some((spot, caught_m)) = self.caught(heading, open_m) {
                self.go(start + heading * caught_m, speed_mps, Doing::Driving);
                return LegEnd::Freed(self.stick(spot, heading, caught_m));
            }
            self.go(start + heading * open_m, speed_mps, Doing::Driving);
            self.heading = heading;
            if let Some((_, number, along_m)) = guide {
                return LegEnd::Guide(number, along_m);
            }
            if let Some(hit) = hit {
                return LegEnd::Edge(hit.edge);
            }
            left_m -= piece_m;
            if left_m <= 1e-9 {
                return LegEnd::Done;
            }
            if self.is_over() {
                return LegEnd::Done;
            }
            let mut bend_rad = (own_per_m + machine.slope_pull_per_m * heading.cross(downhill)) * piece_m;
            if machine.heading_walk_deg > 0.0 {
                bend_rad += machine.heading_walk_deg.to_radians() * piece_m.sqrt() * self.dice.normal();
            }
            self.heading = heading.turned(bend_rad);
        }
    }

    /// The first guide run met on a stretch after a time: distance, number, distance along it.
    fn first_guide(
        &self,
        heading: Vector,
        reach_m: f64,
        speed_mps: f64,
        from_s: f64,
    ) -> Option<(f64, usize, f64)> {
        let after_m = ((from_s - self.time_s) * speed_mps).max(1e-6);
        if after_m >= reach_m {
            return None;
        }
        let meets = self.yard.guides.iter().enumerate().filter_map(|(number, line)| {
            line.crossing(self.place, heading, after_m, reach_m)
                .map(|(distance_m, along_m)| (distance_m, number, along_m))
        });
        meets.min_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)))
    }

    /// If rounding ever puts the machine where no edge is ahead, it goes on from the nearest edge.
    fn back_to_edge(&mut self) -> LegEnd {
        match self.part().nearest_on_ring(self.place) {
            Some(on) => {
                self.go(on.place, self.machine.speed_mps, Doing::Driving);
                LegEnd::Edge(on.edge)
            }
            None => LegEnd::Done,
        }
    }
}

/// A place on a part's ground, by trial; a corner if the ground is too thin to hit.
pub(crate) fn somewhere_in(part: &GroundPart, dice: &mut Dice) -> Vector {
    if let Some((low, high)) = part.region.bounds() {
        for _ in 0..10_000 {
            let place = Vector::new(
                dice.between(low.east_m, high.east_m),
                dice.between(low.north_m, high.north_m),
            );
            if part.contains(place) {
                return place;
            }
        }
    }
    part.edges.first().map_or(Vector::default(), |edge| edge.from)
}
