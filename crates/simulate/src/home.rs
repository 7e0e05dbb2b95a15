//! Which way is home, and which way round?
//!
//! Along a guide run back to its beginning, or along the edge to the station by the shorter way, changing to a guide run
//! where one crosses. An edge that leads to neither (around an island, or of a part that only a guide run reaches) is no way
//! home.
//!
//! Exact up to rounding. Cost: once per outing, corners of one ring times pieces of the guide runs.

use crate::drive::{Driver, Yard};
use crate::ground::{GroundPart, GuideLine, OnRing};
use crate::machine::EdgeRound;
use crate::run::Doing;
use tussock_plane::Vector;

/// A night has its round along the edge in so much time.
const DAY_S: f64 = 86_400.0;

impl Driver<'_> {
    pub(crate) fn is_edge_round_due(&self) -> bool {
        match self.machine.edge_round {
            EdgeRound::Never => false,
            EdgeRound::EachOuting => true,
            EdgeRound::EachNight => self.edge_round_in != Some((self.time_s / DAY_S) as u64),
        }
    }

    /// To the edge and once round along it, where this outing begins so.
    pub(crate) fn round_if_due(&mut self) {
        let begins = self.part().nearest_on_ring(self.place);
        let Some(begins) = begins.filter(|_| self.is_edge_round_due()) else {
            return;
        };
        self.edge_round_in = Some((self.time_s / DAY_S) as u64);
        let line = GuideLine::new(self.part().rings[begins.ring].clone());
        let mut way = vec![begins.place];
        way.extend(line.way(begins.ring_m, line.length_m()));
        way.extend(line.way(0.0, begins.ring_m));
        for corner in way {
            self.go(corner, self.machine.speed_mps, Doing::Driving);
        }
    }

    /// From a place on a guide run to the station.
    pub(crate) fn home_along_guide(&mut self, guide: usize, along_m: f64) {
        self.note(|outing, _| outing.home_guide = Some(guide));
        let way = self.yard.guides[guide].way(along_m, 0.0);
        self.follow(&way);
        self.go_to_station();
    }

    pub(crate) fn go_to_station(&mut self) {
        if let Some(station) = self.yard.station {
            self.go(station, self.machine.speed_mps, Doing::Transit);
        }
        self.part = self.yard.home_part;
    }

    /// Along the edge, by the shorter way, to the station or a guide run; false if this edge leads to neither.
    pub(crate) fn home_along_edge(&mut self, edge: usize) -> bool {
        let part = self.part();
        let ring = part.edges[edge].ring;
        let Some(here) = part.nearest_on(self.place, ring) else {
            return false;
        };
        let around_m = part.ring_length_m(ring);
        let gate = self
            .yard
            .gate
            .filter(|gate| self.part == self.yard.home_part && gate.ring == ring);
        let ahead_m = |gate: OnRing| (gate.ring_m - here.ring_m).rem_euclid(around_m);
        let walks = [1.0, -1.0].map(|direction| {
            let to_gate_m = gate.map(|gate| {
                if direction > 0.0 {
                    ahead_m(gate)
                } else {
                    around_m - ahead_m(gate)
                }
            });
            ring_walk(
                self.yard,
                part,
                here,
                direction,
                to_gate_m.unwrap_or(around_m),
                gate.map(|gate| gate.place),
            )
        });
        let [onwards, backwards] = walks;
        let chosen = match gate {
            Some(gate) if ahead_m(gate) <= around_m / 2.0 => onwards,
            Some(_) => backwards,
            None if onwards.guide.is_some()
                && (backwards.guide.is_none() || onwards.length_m <= backwards.length_m) =>
            {
                onwards
            }
            None => backwards,
        };
        if gate.is_none() && chosen.guide.is_none() {
            return false;
        }
        self.follow(&chosen.way);
        match chosen.guide {
            Some((guide, along_m)) => self.home_along_guide(guide, along_m),
            None => self.go_to_station(),
        }
        true
    }
}

/// A way along a ring.
struct RingWalk {
    way: Vec<Vector>,
    length_m: f64,
    /// The guide run at which it ends, and the distance along it.
    guide: Option<(usize, f64)>,
}

fn ring_walk(
    yard: &Yard,
    part: &GroundPart,
    here: OnRing,
    direction: f64,
    length_m: f64,
    end: Option<Vector>,
) -> RingWalk {
    let ring = &part.rings[here.ring];
    let line = GuideLine::new(ring.clone());
    let around_m = line.length_m();
    let mut corners: Vec<Vector> = Vec::new();
    let till_m = here.ring_m + direction * length_m;
    if direction > 0.0 {
        corners.extend(line.way(here.ring_m, till_m.min(around_m)));
        if till_m > around_m {
            corners.extend(line.way(0.0, till_m - around_m));
        }
    } else {
        corners.extend(line.way(here.ring_m, till_m.max(0.0)));
        if till_m < 0.0 {
            corners.extend(line.way(around_m, till_m + around_m));
        }
    }
    if let (Some(end), Some(last)) = (end, corners.last_mut()) {
        *last = end;
    }
    let mut way = Vec::new();
    let mut walked_m = 0.0;
    let mut from = here.place;
    for corner in corners {
        let step = corner - from;
        let Some(heading) = step.unit() else { continue };
        let reach_m = step.length();
        let met = yard
            .guides
            .iter()
            .enumerate()
            .filter_map(|(number, line)| {
                let (distance_m, along_m) = line.crossing(from, heading, -1e-9, reach_m)?;
                Some((distance_m, number, along_m))
            })
            .min_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        if let Some((distance_m, number, along_m)) = met {
            way.push(from + heading * distance_m);
            return RingWalk {
                way,
                length_m: walked_m + distance_m,
                guide: Some((number, along_m)),
            };
        }
        way.push(corner);
        walked_m += reach_m;
        from = corner;
    }
    RingWalk {
        way,
        length_m: walked_m,
        guide: None,
    }
}
