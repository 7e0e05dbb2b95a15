//! Gardens, logs of them, and where the machine was.

use tussock_locate::{Surroundings, Track, locate};
use tussock_plane::Site;
use tussock_simulate::{LogNoise, Sampling, TrueRun, sample};
use tussock_types::{Plan, Positions, Settings};

pub(crate) fn site(plan: &Plan) -> Site {
    Site::build(plan).unwrap().0
}

/// Where the machine was, from a log of a run.
pub(crate) fn track(site: &Site, run: &TrueRun, noise: LogNoise, period_s: f64, seed: u64) -> Track {
    let trace = sample(run, &Sampling::geographic(period_s, noise, seed, site.frame));
    let Positions::Geographic { lat_deg, lon_deg } = &trace.positions else {
        panic!("the log is on Earth");
    };
    let (east_m, north_m) = site.frame.places(lat_deg, lon_deg);
    let ground = site.drivable();
    locate(
        &trace,
        &east_m,
        &north_m,
        Surroundings::of(&Settings::default())
            .on(ground.as_ref())
            .with_station(site.station),
    )
}
