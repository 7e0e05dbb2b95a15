//! A night whose truth is known, as loggers of all kinds would have it.

use tussock_ingest::read_error_series;
use tussock_plane::Site;
use tussock_simulate::gardens::{GardenKind, Wish, invent_as};
use tussock_simulate::{Counting, LogNoise, Machine, Run, Sampling, TrueRun, sample, simulate, truth};
use tussock_types::{ErrorSeries, FixQuality, LimitSettings, Plan, Settings, Trace};

const HOURS: f64 = 8.0;
const CUT_WIDTH_M: f64 = 0.22;
/// A logger that is fed by the motor wakes and falls asleep so long after the machine does.
const SLUGGISH_S: f64 = 20.0;

/// Recorded errors of two telephones (`fixtures/errors`).
pub(crate) fn phones() -> [(&'static str, ErrorSeries); 2] {
    [
        (
            "phone-a.csv",
            include_str!("../../../fixtures/errors/phone-a.csv"),
        ),
        (
            "phone-b.csv",
            include_str!("../../../fixtures/errors/phone-b.csv"),
        ),
    ]
    .map(|(name, text)| {
        let series = read_error_series(name, text.as_bytes(), &LimitSettings::default());
        (name, series.expect("a series"))
    })
}

/// Plan, drive, truth and what the user says of the machine.
pub(crate) struct KnownNight {
    pub(crate) plan: Plan,
    pub(crate) settings: Settings,
    pub(crate) true_fraction: f64,
    site: Site,
    run: TrueRun,
    seed: u64,
}

impl KnownNight {
    pub(crate) fn of(kind: GardenKind, seed: u64) -> Self {
        let plan = invent_as(&Wish::new(kind), seed).plan;
        let (site, _) = Site::build(&plan).expect("invented plans are sound");
        let machine = Machine::default();
        let run = simulate(&site, &machine, &Run::new(HOURS, seed)).expect("there is room");
        let mut settings = Settings::default();
        settings.machine.cut_width_m = Some(CUT_WIDTH_M);
        settings.machine.body_width_m = Some(-2.0 * machine.past_boundary_m);
        Self {
            true_fraction: truth(&run, &site, &Counting::new(CUT_WIDTH_M, 0.05)).visited_fraction,
            plan,
            settings,
            site,
            run,
            seed,
        }
    }

    /// A fix a second, with errors of this law and those that were recorded on top; the receiver does not say how good it is.
    pub(crate) fn log(&self, noise: LogNoise, recorded: Option<&ErrorSeries>) -> Trace {
        let sampling = Sampling {
            recorded: recorded.cloned(),
            quality: FixQuality::Unknown,
            ..Sampling::geographic(1.0, noise, self.seed, self.site.frame)
        };
        sample(&self.run, &sampling)
    }

    /// A log without the fixes that were made while the machine stood at its station.
    pub(crate) fn without_stays(&self, log: &Trace) -> Trace {
        let sleeps = |time_s: f64| {
            let since_s = time_s - log.time_s[0];
            let mut stays = self.run.stays.iter();
            stays.any(|stay| (stay.start_s + SLUGGISH_S..=stay.end_s - SLUGGISH_S).contains(&since_s))
        };
        let mut awake = Trace::geographic(&log.machine);
        (0..log.len())
            .filter(|index| !sleeps(log.time_s[*index]))
            .for_each(|index| awake.push(log.fix(index)));
        awake
    }
}
