//! What would a logger on this machine have recorded?
//!
//! The exact place at every period, plus position error like that of satellite receivers: a white part and, per axis, a
//! first-order Gauss-Markov drift (Gelb 1974, section 3.8), started in its stationary state and discretised exactly,
//! `d(t + dt) = phi d(t) + sqrt(1 - phi^2) sd n` with `phi = exp(-dt / tau)`. Windows of poor sky scale the error; a
//! [`Bend`] is error that is fixed to a place, as beside a wall. The recorded error of a real receiver can be added instead.
//!
//! Exact: the law of the error at the sampled times, whatever the period. Approximate: speed and course are those of the
//! true path with an error of their own, and HDOP varies by a few per cent; no law stands behind those columns.
//!
//! Cost: a few normal deviates per fix.

use crate::dice::Dice;
use crate::run::{Doing, TrueRun};
use tussock_plane::Frame;
use tussock_plane::Vector;
use tussock_types::math;
use tussock_types::{ErrorSeries, Fix, FixQuality, Place, Trace};

/// Error of a receiver's positions, per axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LogNoise {
    /// Standard deviation of the part that is new in every fix.
    pub white_m: f64,
    /// Standard deviation of the part that wanders.
    pub drift_m: f64,
    /// Time after which the wandering part has lost 63 % of its memory.
    pub drift_time_s: f64,
}

impl LogNoise {
    /// No error at all.
    pub const NONE: Self = Self {
        white_m: 0.0,
        drift_m: 0.0,
        drift_time_s: 600.0,
    };
    /// With carrier-phase corrections.
    pub const CENTIMETRES: Self = Self {
        white_m: 0.01,
        drift_m: 0.015,
        drift_time_s: 600.0,
    };
    /// With good corrections.
    pub const DECIMETRES: Self = Self {
        white_m: 0.08,
        drift_m: 0.3,
        drift_time_s: 600.0,
    };
    /// With satellites alone.
    pub const METRES: Self = Self {
        white_m: 0.3,
        drift_m: 2.0,
        drift_time_s: 300.0,
    };
}

/// A stretch of time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TimeWindow {
    /// From, seconds from the start of the run.
    pub start_s: f64,
    /// To.
    pub end_s: f64,
}

impl TimeWindow {
    fn holds(&self, time_s: f64) -> bool {
        time_s >= self.start_s && time_s < self.end_s
    }
}

/// A stretch of poor reception.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PoorSky {
    /// When it happens.
    pub window: TimeWindow,
    /// The error is the usual one times this factor, and so is the HDOP.
    pub error_factor: f64,
    /// What the receiver reports about itself during that time.
    pub quality: FixQuality,
}

/// Error that is fixed to a place: full in the middle, zero at the radius.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bend {
    /// Middle.
    pub place: Place,
    /// Reach.
    pub radius_m: f64,
    /// Offset in the middle.
    pub east_m: f64,
    /// Offset in the middle.
    pub north_m: f64,
}

/// How a run is logged.
#[derive(Clone, Debug, PartialEq)]
pub struct Sampling {
    /// Time between two fixes.
    pub period_s: f64,
    /// Position error.
    pub noise: LogNoise,
    /// Recorded error of a receiver, in addition to the noise.
    pub recorded: Option<ErrorSeries>,
    /// Random seed of the error; independent of the run's.
    pub seed: u64,
    /// No fixes in these.
    pub outages: Vec<TimeWindow>,
    /// Worse fixes in these.
    pub poor_sky: Vec<PoorSky>,
    /// Error fixed to places.
    pub bends: Vec<Bend>,
    /// What the receiver reports about itself.
    pub quality: FixQuality,
    /// Dilution of precision that it reports in the open.
    pub hdop: f64,
    /// Time of the run's start, seconds since 1970 in UTC.
    pub start_unix_s: f64,
    /// Plane that turns metres into latitudes and longitudes; without it the log is in local metres.
    pub frame: Option<Frame>,
    /// Name of the machine.
    pub machine: String,
    /// Antenna ahead of the machine's middle.
    pub antenna_forward_m: f64,
    /// Antenna left of the middle line.
    pub antenna_left_m: f64,
    /// Height above mean sea level.
    pub height_msl_m: f64,
}

impl Sampling {
    /// A log in local metres, without gaps, started on 1 May 2026 at 20:00 UTC.
    pub fn local(period_s: f64, noise: LogNoise, seed: u64) -> Self {
        let sd_m = math::hypot(noise.white_m, noise.drift_m);
        let quality = match sd_m {
            sd_m if sd_m < 0.05 => FixQuality::RtkFixed,
            sd_m if sd_m < 0.5 => FixQuality::RtkFloat,
            _ => FixQuality::Autonomous,
        };
        Self {
            period_s,
            noise,
            recorded: None,
            seed,
            outages: Vec::new(),
            poor_sky: Vec::new(),
            bends: Vec::new(),
            quality,
            hdop: if quality == FixQuality::Autonomous {
                1.1
            } else {
                0.7
            },
            start_unix_s: 1_777_665_600.0,
            frame: None,
            machine: "machine-1".to_owned(),
            antenna_forward_m: 0.0,
            antenna_left_m: 0.0,
            height_msl_m: 412.0,
        }
    }

    /// The same as latitudes and longitudes.
    pub fn geographic(period_s: f64, noise: LogNoise, seed: u64, frame: Frame) -> Self {
        Self {
            frame: Some(frame),
            ..Self::local(period_s, noise, seed)
        }
    }
}

/// One axis of drift.
struct AxisDrift {
    value: f64,
}

impl AxisDrift {
    fn new(dice: &mut Dice) -> Self {
        Self { value: dice.normal() }
    }

    /// Value in standard deviations after a time.
    fn after(&mut self, keeps: f64, dice: &mut Dice) -> f64 {
        self.value = keeps * self.value + (1.0 - keeps * keeps).max(0.0).sqrt() * dice.normal();
        self.value
    }
}

/// Logs a run. There is a fix at every whole period from the start to the end; a fix after an outage opens a new segment. A
/// period that is not a positive number gives an empty log.
pub fn sample(run: &TrueRun, sampling: &Sampling) -> Trace {
    let mut trace = match sampling.frame {
        Some(_) => Trace::geographic(sampling.machine.clone()),
        None => Trace::local(sampling.machine.clone()),
    };
    if !(sampling.period_s > 0.0 && sampling.period_s.is_finite()) {
        return trace;
    }
    let noise = sampling.noise;
    let (mut drift_dice, mut white_dice, mut side_dice) = (
        Dice::new(sampling.seed, 1),
        Dice::new(sampling.seed, 2),
        Dice::new(sampling.seed, 3),
    );
    let keeps = if noise.drift_time_s > 0.0 {
        math::exp(-sampling.period_s / noise.drift_time_s)
    } else {
        0.0
    };
    let sky_keeps = math::exp(-sampling.period_s / 900.0);
    let [mut east, mut north] = [AxisDrift::new(&mut drift_dice), AxisDrift::new(&mut drift_dice)];
    let mut sky = AxisDrift::new(&mut side_dice);
    let mut piece = 0;
    let mut segment = 0;
    let mut was_out = false;
    let fixes = (run.end_s() / sampling.period_s).floor() as u64;
    for number in 0..=fixes {
        let time_s = number as f64 * sampling.period_s;
        if number > 0 {
            east.after(keeps, &mut drift_dice);
            north.after(keeps, &mut drift_dice);
            sky.after(sky_keeps, &mut side_dice);
        }
        // Drawn for every epoch, so that an outage does not change the fixes after it.
        let white = Vector::new(white_dice.normal(), white_dice.normal());
        let (speed_error, course_error) = (side_dice.normal(), side_dice.normal());
        if sampling.outages.iter().any(|window| window.holds(time_s)) {
            was_out = true;
            continue;
        }
        if was_out && !trace.is_empty() {
            segment += 1;
        }
        was_out = false;
        while piece + 2 < run.vertices.len() && run.vertices[piece + 1].time_s <= time_s {
            piece += 1;
        }
        let moment = run.moment(piece, time_s);
        let poor = sampling.poor_sky.iter().find(|poor| poor.window.holds(time_s));
        let factor = poor.map_or(1.0, |poor| poor.error_factor);
        let heading = Vector::of_angle(moment.heading_rad);
        let antenna =
            moment.place + heading * sampling.antenna_forward_m + heading.left() * sampling.antenna_left_m;
        let error = (white * noise.white_m + Vector::new(east.value, north.value) * noise.drift_m) * factor;
        let (east_m, north_m) = sampling
            .recorded
            .as_ref()
            .map_or((0.0, 0.0), |series| series.at(time_s));
        let seen = antenna + error + Vector::new(east_m, north_m) + bend_at(&sampling.bends, moment.place);
        let (first, second) = match &sampling.frame {
            Some(frame) => {
                let point = frame.to_geo(seen.into());
                (point.lat_deg, point.lon_deg)
            }
            None => (seen.east, seen.north),
        };
        let speed_mps = moment.velocity_mps.length();
        let moves = speed_mps > 0.05 && run.vertices[piece].doing != Doing::Stuck;
        let course_deg = 90.0 - (moment.velocity_mps.angle_rad() + 0.02 * course_error).to_degrees();
        let hdop = sampling.hdop * factor * (1.0 + 0.06 * sky.value).max(0.5);
        trace.push(Fix {
            time_s: sampling.start_unix_s + time_s,
            first,
            second,
            segment,
            quality: poor.map_or(sampling.quality, |poor| poor.quality),
            hdop: hdop as f32,
            claimed_sd_m: ((noise.white_m * noise.white_m + noise.drift_m * noise.drift_m).sqrt() * factor)
                as f32,
            speed_mps: (speed_mps + 0.01 * speed_error).max(0.0) as f32,
            course_deg: if moves {
                course_deg.rem_euclid(360.0) as f32
            } else {
                f32::NAN
            },
            height_msl_m: sampling.height_msl_m as f32,
            satellites: (20.0 / factor.max(0.1)).clamp(5.0, 24.0) as u8,
        });
    }
    trace
}

fn bend_at(bends: &[Bend], place: Vector) -> Vector {
    let mut sum = Vector::default();
    for bend in bends {
        let part = (place - Vector::from(bend.place)).length() / bend.radius_m;
        if part < 1.0 {
            // A smooth bell: flat in the middle and at the rim.
            let height = (1.0 - part * part) * (1.0 - part * part);
            sum = sum + Vector::new(bend.east_m, bend.north_m) * height;
        }
    }
    sum
}
