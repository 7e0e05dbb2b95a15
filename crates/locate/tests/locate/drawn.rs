//! Drives drawn by hand, and logs of them.

use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;
use rand_distr::{Distribution, StandardNormal};
use tussock_locate::{Surroundings, Track, locate};
use tussock_types::{Fix, Place, Positions, Settings, Trace};

/// A day in 2026, so that times are as large as in a real log.
pub(crate) const START_S: f64 = 1_780_000_000.0;

/// A corner and the time that the machine waits there.
pub(crate) struct Corner {
    pub(crate) place: Place,
    pub(crate) wait_s: f64,
}

/// A corner with a wait.
pub(crate) fn corner(east_m: f64, north_m: f64, wait_s: f64) -> Corner {
    Corner {
        place: Place::new(east_m, north_m),
        wait_s,
    }
}

/// Times of one corner: where, when it arrives, when it leaves.
#[derive(Clone, Copy)]
pub(crate) struct Stop {
    pub(crate) place: Place,
    pub(crate) arrive_s: f64,
    pub(crate) leave_s: f64,
}

/// A polyline driven at one speed with waits at its corners.
pub(crate) struct Drive {
    pub(crate) stops: Vec<Stop>,
}

impl Drive {
    pub(crate) fn new(corners: &[Corner], speed_mps: f64) -> Self {
        let mut stops: Vec<Stop> = Vec::new();
        for corner in corners {
            let arrive_s = stops.last().map_or(START_S, |last| {
                last.leave_s + last.place.distance_m(corner.place) / speed_mps
            });
            stops.push(Stop {
                place: corner.place,
                arrive_s,
                leave_s: arrive_s + corner.wait_s,
            });
        }
        Self { stops }
    }

    /// Six legs of 5 to 11 m with turns of many sizes, waits of 2 s, repeated around the same corners.
    pub(crate) fn around(rounds: usize, speed_mps: f64) -> Self {
        let round = [
            (0.0, 0.0),
            (8.0, 0.0),
            (8.3, 6.1),
            (3.0, 9.0),
            (-2.4, 3.7),
            (4.0, -5.5),
            (12.6, 1.9),
        ];
        let corners: Vec<Corner> = (0..rounds)
            .flat_map(|_| round)
            .map(|(east_m, north_m)| corner(east_m, north_m, 2.0))
            .collect();
        Self::new(&corners, speed_mps)
    }

    pub(crate) fn end_s(&self) -> f64 {
        self.stops.last().map_or(START_S, |stop| stop.leave_s)
    }

    pub(crate) fn length_m(&self) -> f64 {
        self.stops
            .windows(2)
            .map(|pair| pair[0].place.distance_m(pair[1].place))
            .sum()
    }

    pub(crate) fn driving_s(&self) -> f64 {
        self.stops
            .windows(2)
            .map(|pair| pair[1].arrive_s - pair[0].leave_s)
            .sum()
    }

    /// Where it is at a time.
    pub(crate) fn at(&self, time_s: f64) -> Place {
        let next = self.stops.partition_point(|stop| stop.arrive_s <= time_s);
        let last = self.stops[next.saturating_sub(1)];
        match self.stops.get(next) {
            Some(to) if time_s > last.leave_s => {
                let part = (time_s - last.leave_s) / (to.arrive_s - last.leave_s);
                last.place.towards(to.place, part)
            }
            _ => last.place,
        }
    }

    /// Fixes once a second, without any error.
    pub(crate) fn fixes(&self) -> Vec<Fix> {
        let count = (self.end_s() - START_S).floor() as u32;
        (0..=count)
            .map(|second| {
                let time_s = START_S + f64::from(second);
                let place = self.at(time_s);
                Fix::bare(time_s, place.east_m, place.north_m)
            })
            .collect()
    }

    /// Fixes once a second with white noise on each axis.
    pub(crate) fn noisy_fixes(&self, white_m: f64, seed: u64) -> Vec<Fix> {
        let mut dice = ChaCha8Rng::seed_from_u64(seed);
        let mut fixes = self.fixes();
        for fix in &mut fixes {
            let east: f64 = StandardNormal.sample(&mut dice);
            let north: f64 = StandardNormal.sample(&mut dice);
            fix.first += white_m * east;
            fix.second += white_m * north;
        }
        fixes
    }
}

/// Locates fixes on the plane.
pub(crate) fn located(fixes: &[Fix], station: Option<Place>, settings: &Settings) -> Track {
    let mut trace = Trace::local("drawn");
    fixes.iter().for_each(|fix| trace.push(*fix));
    let Positions::Local { east_m, north_m } = trace.positions.clone() else {
        panic!("the trace lies on a plane");
    };
    locate(
        &trace,
        &east_m,
        &north_m,
        Surroundings::of(settings).with_station(station),
    )
}

/// Locates without settings and without a drawn station.
pub(crate) fn plainly_located(fixes: &[Fix]) -> Track {
    located(fixes, None, &Settings::default())
}

/// Length if fixes are joined as they are.
pub(crate) fn raw_path_m(fixes: &[Fix]) -> f64 {
    fixes
        .windows(2)
        .map(|pair| (pair[1].first - pair[0].first).hypot(pair[1].second - pair[0].second))
        .sum()
}
