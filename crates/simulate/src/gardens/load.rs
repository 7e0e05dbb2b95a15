//! Many gardens over many nights, with known faults: what an operator's night shift has to cope with.
//!
//! Each garden is generated from its number, so any of them can be made without the others. Some gardens have a fault that
//! begins in its own night, and some of those are mended again; some logs come late, twice, cut off, damaged or not at all.
//!
//! Cost: a night of 8 h at 1 Hz takes about 30 ms to drive and 60 ms to write.

use super::{GardenKind, InventedGarden, Surprise, Wish, invent_as};
use crate::dice::Dice;
use crate::machine::{Machine, Manner, Run, SimulateError, Spell, StuckSpot};
use crate::sample::{LogNoise, Sampling, sample};
use crate::simulate;
use crate::write::gpx_bytes;
use tussock_plane::Site;
use tussock_types::{Place, Plan, worded};

worded! {
    /// What is wrong in a garden.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    LoadTrouble,
    /// A word for files.
    word {
        /// Nothing.
        None = "none",
        /// A fence that is missing from the plan closes off a part.
        BlockedPart = "blocked_part",
        /// A place catches the machine.
        StuckSpot = "stuck_spot",
        /// Positions are ten times worse.
        ReceiverWorse = "receiver_worse",
        /// There are no more logs.
        Absent = "absent",
    }
}

worded! {
    /// What happens to one log on its way.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    LogFate,
    /// A word for files.
    word {
        /// It comes.
        Whole = "whole",
        /// It comes a few nights late.
        Late = "late",
        /// It comes under two names.
        Twice = "twice",
        /// Its end is missing.
        CutOff = "cut_off",
        /// It is no longer a log.
        Damaged = "damaged",
    }
}

/// What the load should be like.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LoadWish {
    /// Nights.
    pub nights: u32,
    /// Length of a night's log.
    pub hours: f64,
    /// Time between two fixes.
    pub period_s: f64,
    /// Least and largest area of a lawn.
    pub area_m2: (f64, f64),
    /// Share of gardens with a fault.
    pub trouble_fraction: f64,
    /// Share of logs that do not arrive whole and in time.
    pub fault_fraction: f64,
    /// First fix of the first night, seconds since 1970 in UTC.
    pub start_unix_s: f64,
    /// Random seed.
    pub seed: u64,
}

/// One garden of a load.
#[derive(Clone, Debug, PartialEq)]
pub struct LoadGarden {
    /// `garden-0001`.
    pub name: String,
    /// The garden as drawn, and as it is while the fault lasts.
    pub garden: InventedGarden,
    /// Its fault.
    pub trouble: LoadTrouble,
    /// First night of it, from 0.
    pub from_night: u32,
    /// First night without it again; beyond the last night if it is not mended.
    pub until_night: u32,
    /// Where the machine is caught, on the plan's plane.
    pub stuck_at: Option<Place>,
    /// Cutting width of its machine.
    pub cut_width_m: f64,
    seed: u64,
}

/// One night's log.
#[derive(Clone, Debug, PartialEq)]
pub struct LoadLog {
    /// The log as it was delivered.
    pub bytes: Vec<u8>,
    /// What happened to it.
    pub fate: LogFate,
    /// The night after which it is there.
    pub arrives_night: u32,
    /// Hours that the machine really drove.
    pub driving_h: f64,
}

/// Generates the garden with this number.
pub fn load_garden(number: u32, wish: &LoadWish) -> LoadGarden {
    let seed = wish.seed.wrapping_mul(1_000_003).wrapping_add(u64::from(number));
    let mut dice = Dice::new(seed, 13);
    let trouble = if dice.happens(wish.trouble_fraction) {
        LoadTrouble::ALL[1 + dice.below(4)]
    } else {
        LoadTrouble::None
    };
    let kind = match trouble {
        // Ground with a part that a fence can close off.
        LoadTrouble::BlockedPart => [GardenKind::Ell, GardenKind::You][dice.below(2)],
        _ => GardenKind::ALL[dice.below(GardenKind::ALL.len())],
    };
    let garden = invent_as(
        &Wish {
            area_m2: wish.area_m2,
            surprise: if trouble == LoadTrouble::BlockedPart {
                Surprise::BlockedPart
            } else {
                Surprise::None
            },
            ..Wish::new(kind)
        },
        seed,
    );
    // After several nights that show what is usual, if there are enough.
    let from_night = if wish.nights > 6 {
        4 + dice.below((wish.nights - 6) as usize) as u32
    } else {
        0
    };
    let until_night = if dice.happens(0.3) {
        from_night + 4
    } else {
        u32::MAX
    };
    let stuck_at = (trouble == LoadTrouble::StuckSpot)
        .then(|| middle(&garden.plan))
        .flatten();
    LoadGarden {
        name: format!("garden-{:04}", number + 1),
        garden,
        trouble,
        from_night,
        until_night: if trouble == LoadTrouble::None {
            from_night
        } else {
            until_night
        },
        stuck_at,
        cut_width_m: 0.22,
        seed,
    }
}

/// A place well inside the lawn.
fn middle(plan: &Plan) -> Option<Place> {
    let (site, _) = Site::build(plan).ok()?;
    let (low, high) = site.lawn.bounds()?;
    let steps = 12;
    (1..steps)
        .flat_map(|row| (1..steps).map(move |column| (column, row)))
        .map(|(column, row)| {
            let part = |from_m: f64, to_m: f64, step: i32| {
                from_m + (to_m - from_m) * f64::from(step) / f64::from(steps)
            };
            Place::new(
                part(low.east_m, high.east_m, column),
                part(low.north_m, high.north_m, row),
            )
        })
        .filter(|place| site.lawn.contains(*place))
        .max_by(|a, b| {
            site.lawn
                .edge_distance_m(*a)
                .total_cmp(&site.lawn.edge_distance_m(*b))
        })
}

impl LoadGarden {
    /// Whether the fault is present in a night.
    pub fn is_troubled(&self, night: u32) -> bool {
        self.trouble != LoadTrouble::None && (self.from_night..self.until_night).contains(&night)
    }

    /// The log of a night; none while the garden is absent.
    ///
    /// # Errors
    /// If the machine has no room, which should not happen in a generated garden.
    pub fn log(&self, night: u32, wish: &LoadWish) -> Result<Option<LoadLog>, SimulateError> {
        let troubled = self.is_troubled(night);
        if troubled && self.trouble == LoadTrouble::Absent {
            return Ok(None);
        }
        let is_blocked = troubled && self.trouble == LoadTrouble::BlockedPart;
        let plan = if is_blocked {
            &self.garden.ground
        } else {
            &self.garden.plan
        };
        let Ok((site, _)) = Site::build(plan) else {
            return Ok(None);
        };
        let seed = self.seed.wrapping_mul(10_007).wrapping_add(u64::from(night));
        let mut dice = Dice::new(seed, 17);
        let spot = StuckSpot {
            place: self.stuck_at.unwrap_or(Place::new(0.0, 0.0)),
            radius_m: 0.6,
            probability: 0.5,
            duration: Spell::Between {
                min_s: 200.0,
                max_s: 400.0,
            },
            manner: Manner::Stands,
        };
        let run = Run {
            stuck_spots: if troubled && self.stuck_at.is_some() {
                vec![spot]
            } else {
                Vec::new()
            },
            ..Run::new(wish.hours, seed)
        };
        let true_run = simulate(&site, &Machine::default(), &run)?;
        let noise = if troubled && self.trouble == LoadTrouble::ReceiverWorse {
            LogNoise {
                white_m: 0.1,
                drift_m: 0.15,
                drift_time_s: 600.0,
            }
        } else {
            LogNoise::CENTIMETRES
        };
        let sampling = Sampling {
            start_unix_s: wish.start_unix_s + 86_400.0 * f64::from(night),
            ..Sampling::geographic(wish.period_s, noise, seed.wrapping_add(1), site.frame)
        };
        let mut bytes = gpx_bytes(&sample(&true_run, &sampling));
        let mut arrives_night = night;
        let fate = if dice.happens(wish.fault_fraction) {
            [LogFate::Late, LogFate::Twice, LogFate::CutOff, LogFate::Damaged][dice.below(4)]
        } else {
            LogFate::Whole
        };
        match fate {
            LogFate::Late => arrives_night = night + 1 + dice.below(2) as u32,
            LogFate::CutOff => bytes.truncate(bytes.len() * 3 / 5),
            LogFate::Damaged => bytes
                .iter_mut()
                .for_each(|byte| *byte = byte.wrapping_mul(167).wrapping_add(13)),
            LogFate::Whole | LogFate::Twice => {}
        }
        let driving_s = true_run.driving_s();
        Ok(Some(LoadLog {
            bytes,
            fate,
            arrives_night,
            driving_h: driving_s / 3600.0,
        }))
    }
}
