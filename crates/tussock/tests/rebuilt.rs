//! Turns put back between sparse fixes, judged on invented gardens by the ground that was really driven over.
//!
//! Every garden is driven by a simulated machine and logged every 5 to 30 s. The path found from fixes and plan is painted
//! onto the cells of the truth; speed, wait and inset are not given.

use crate::nights::driven;
use std::fmt;
use tussock_coverage::swath;
use tussock_locate::{PathMethod, Surroundings, Track, locate};
use tussock_plane::{BitGrid, Region, Site};
use tussock_simulate::gardens::{GardenKind, Surprise, Wish, invent_as};
use tussock_simulate::{
    Counting, Lanes, LogNoise, Machine, Pattern, Sampling, Spell, TrueRun, Truth, TurnLaw, sample, truth,
};
use tussock_types::{Positions, Settings, Trace};

const CUT_WIDTH_M: f64 = 0.22;
const TRUTH_CELL_M: f64 = 0.03;
const HOURS: f64 = 8.0;
/// Seeds of the gardens; machines take theirs from them.
const SEEDS: [u64; 2] = [33, 34];
const LONG_SEEDS: [u64; 8] = [41, 42, 43, 44, 45, 46, 47, 48];
/// Seeds of the logs' errors count up from here.
const LOG_SEED: u64 = 2000;

#[derive(Clone, Copy, Debug, PartialEq)]
enum Manner {
    Roaming,
    Lanes,
    /// Legs bend, their speeds differ, wheels slip, and turns are taken from the heading.
    Careless,
    /// Something that is not in the plan stands in the middle.
    Obstructed,
}

/// A garden that was driven: site, where the plan lets the machine drive, truth.
struct Driven {
    site: Site,
    drivable: Region,
    run: TrueRun,
    truth: Truth,
}

impl Driven {
    fn new(kind: GardenKind, manner: Manner, seed: u64) -> Self {
        let surprise = match manner {
            Manner::Obstructed => Surprise::UnlistedObstacle { radius_m: 0.8 },
            _ => Surprise::None,
        };
        let wish = Wish {
            surprise,
            ..Wish::new(kind)
        };
        let garden = invent_as(&wish, seed);
        let (site, _) = Site::build(&garden.plan).expect("invented plans are sound");
        let pattern = match manner {
            Manner::Roaming | Manner::Careless | Manner::Obstructed => Pattern::Roaming,
            Manner::Lanes => Pattern::Lanes(Lanes::new(0.2, 17.0 * seed as f64, 0.02)),
        };
        let machine = Machine {
            pattern,
            speed_mps: 0.3 + 0.05 * (seed % 4) as f64,
            past_boundary_m: if seed.is_multiple_of(2) { -0.2 } else { 0.05 },
            ..Machine::default()
        };
        let machine = match manner {
            Manner::Careless => Machine {
                speed_sd_fraction: 0.02,
                curvature_sd_per_m: 0.003,
                slip_fraction: 0.01,
                turn_law: TurnLaw::FromHeading {
                    min_deg: 90.0,
                    max_deg: 170.0,
                },
                turning: Spell::Between {
                    min_s: 2.0,
                    max_s: 5.0,
                },
                ..machine
            },
            _ => machine,
        };
        // The machine meets the ground as it is.
        let (met, _) = Site::build_in(&garden.ground, site.frame).expect("the ground is sound");
        let run = driven(&met, &machine, HOURS, 1000 + seed);
        let truth = truth(&run, &site, &Counting::new(CUT_WIDTH_M, TRUTH_CELL_M));
        let zones = site.exclusions.iter().chain(&site.obstacles);
        let kept_out = Region::union_of(zones.map(|zone| &zone.shape)).expect("zones are sound");
        let outline = site.boundary.as_ref().unwrap_or(&site.drawn_lawn);
        let drivable = outline.minus(&kept_out).expect("zones are sound");
        Self {
            site,
            drivable,
            run,
            truth,
        }
    }

    fn log(&self, period_s: f64, noise: LogNoise, seed: u64) -> Trace {
        sample(&self.run, &Sampling::local(period_s, noise, seed))
    }

    fn located(&self, trace: &Trace, ground: Option<&Region>) -> Track {
        let Positions::Local { east_m, north_m } = &trace.positions else {
            panic!("the log is in metres");
        };
        locate(
            trace,
            east_m,
            north_m,
            Surroundings::of(&Settings::default())
                .on(ground)
                .with_station(self.site.station),
        )
    }

    /// Fraction of the lawn's cells that agree with the truth, and the error of the visited fraction.
    fn judged(&self, track: &Track) -> Judged {
        let mut visited = BitGrid::new(self.truth.lawn.grid);
        let sweeps = swath::sweeps(std::slice::from_ref(track), &Settings::default());
        swath::mark(
            &mut visited,
            sweeps.iter().map(|sweep| (sweep.from, sweep.to)),
            0.5 * CUT_WIDTH_M,
        );
        visited.and_in_place(&self.truth.lawn);
        let lawn = self.truth.lawn.count() as f64;
        let mut too_many = visited.clone();
        too_many.and_not_in_place(&self.truth.visited);
        let mut too_few = self.truth.visited.clone();
        too_few.and_not_in_place(&visited);
        Judged {
            agreeing: 1.0 - (too_many.count() + too_few.count()) as f64 / lawn,
            error_points: 100.0 * (visited.count() as f64 / lawn - self.truth.visited_fraction),
        }
    }
}

#[derive(Clone, Copy, Debug)]
struct Judged {
    agreeing: f64,
    error_points: f64,
}

/// The value that nine in ten do not exceed.
fn ninth(values: impl Iterator<Item = f64>) -> f64 {
    let mut values: Vec<f64> = values.collect();
    values.sort_by(f64::total_cmp);
    values[(values.len() * 9).div_ceil(10) - 1]
}

fn mean(values: impl Iterator<Item = f64>) -> f64 {
    let values: Vec<f64> = values.collect();
    values.iter().sum::<f64>() / values.len() as f64
}

const GRADES: [(&str, LogNoise); 3] = [
    ("none", LogNoise::NONE),
    ("cm", LogNoise::CENTIMETRES),
    ("dm", LogNoise::DECIMETRES),
];
const MANNERS: [Manner; 4] = [
    Manner::Roaming,
    Manner::Lanes,
    Manner::Careless,
    Manner::Obstructed,
];

/// Chords and rebuilt turns on the same logs.
struct Figures {
    chords: Vec<Judged>,
    rebuilt: Vec<Judged>,
    /// Logs that did not show how the machine turns.
    left_as_chords: usize,
}

impl Figures {
    fn of(gardens: &[Driven], period_s: f64, noise: LogNoise) -> Self {
        let (mut chords, mut rebuilt) = (Vec::new(), Vec::new());
        let mut left_as_chords = 0;
        for (number, driven) in gardens.iter().enumerate() {
            let trace = driven.log(period_s, noise, LOG_SEED + number as u64);
            chords.push(driven.judged(&driven.located(&trace, None)));
            let track = driven.located(&trace, Some(&driven.drivable));
            left_as_chords += usize::from(track.method != PathMethod::Rebuilt);
            rebuilt.push(driven.judged(&track));
        }
        Self {
            chords,
            rebuilt,
            left_as_chords,
        }
    }

    fn agreeing(judged: &[Judged]) -> f64 {
        mean(judged.iter().map(|one| one.agreeing))
    }

    fn least_agreeing(judged: &[Judged]) -> f64 {
        judged.iter().map(|one| one.agreeing).fold(1.0, f64::min)
    }

    fn ninth_error_points(judged: &[Judged]) -> f64 {
        ninth(judged.iter().map(|one| one.error_points.abs()))
    }
}

impl fmt::Display for Figures {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (chords, rebuilt) = (&self.chords, &self.rebuilt);
        write!(
            f,
            "{:.3}  {:.3}  {:.3}   {:+6.2}  {:+5.2}   {:5.2}  {:5.2}   {}",
            Self::agreeing(chords),
            Self::agreeing(rebuilt),
            Self::least_agreeing(rebuilt),
            mean(chords.iter().map(|one| one.error_points)),
            mean(rebuilt.iter().map(|one| one.error_points)),
            Self::ninth_error_points(chords),
            Self::ninth_error_points(rebuilt),
            self.left_as_chords,
        )
    }
}

fn gardens(manner: Manner, seeds: &[u64]) -> Vec<Driven> {
    let cases = GardenKind::ALL
        .into_iter()
        .flat_map(|kind| seeds.iter().map(move |seed| (kind, *seed)));
    cases
        .map(|(kind, seed)| Driven::new(kind, manner, seed))
        .collect()
}

/// Number of wrong cells of rebuilt turns for each wrong cell of chords.
fn wrong_share(figures: &Figures) -> f64 {
    (1.0 - Figures::agreeing(&figures.rebuilt)) / (1.0 - Figures::agreeing(&figures.chords))
}

#[test]
fn every_20_s_the_cells_driven_over_are_right_to_95_percent_and_their_share_to_tenths_of_a_point() {
    const LEAST_AGREEING: f64 = 0.95;
    let asked = [
        (Manner::Roaming, 0.6),
        (Manner::Obstructed, 0.6),
        (Manner::Lanes, 1.5),
    ];
    for (manner, most_points) in asked {
        let figures = Figures::of(&gardens(manner, &SEEDS), 20.0, LogNoise::CENTIMETRES);
        println!("{manner:?}: {figures}");
        assert_eq!(figures.left_as_chords, 0);
        let agreeing = Figures::agreeing(&figures.rebuilt);
        let points = Figures::ninth_error_points(&figures.rebuilt);
        assert!(
            agreeing >= LEAST_AGREEING,
            "{manner:?}: {agreeing:.3} of the cells"
        );
        assert!(points <= most_points, "{manner:?}: {points:.2} points");
        let chords_points = Figures::ninth_error_points(&figures.chords);
        assert!(
            chords_points > 2.0,
            "{chords_points:.2} points by chords: nothing to put right"
        );
    }
}

/// Drift moves whole swaths, which no turn can correct; the visited share of the lawn stays right.
#[test]
fn every_20_s_decimetres_of_drift_leave_the_visited_share_right() {
    let figures = Figures::of(&gardens(Manner::Roaming, &SEEDS), 20.0, LogNoise::DECIMETRES);
    println!("{figures}");
    assert_eq!(figures.left_as_chords, 0);
    let points = Figures::ninth_error_points(&figures.rebuilt);
    assert!(points <= 1.5, "{points:.2} points");
    assert!(wrong_share(&figures) < 0.95, "no better than chords");
}

/// If the error is ten swaths wide, no path can be right; less of the lawn must be missing than with chords.
#[test]
fn every_20_s_metres_of_drift_cost_less_with_turns_than_with_chords() {
    let figures = Figures::of(&gardens(Manner::Roaming, &SEEDS), 20.0, LogNoise::METRES);
    println!("{figures}");
    let points = [&figures.chords, &figures.rebuilt].map(|judged| Figures::ninth_error_points(judged));
    assert!(points[1] < 0.75 * points[0], "{points:?} points");
}

#[test]
fn without_position_error_rebuilt_turns_halve_the_wrong_cells_whatever_the_machine_and_the_period() {
    for manner in MANNERS {
        let gardens = gardens(manner, &SEEDS[..1]);
        for period_s in [10.0, 20.0, 30.0] {
            let figures = Figures::of(&gardens, period_s, LogNoise::NONE);
            println!("{manner:?} {period_s} s: {figures}");
            assert_eq!(figures.left_as_chords, 0);
            let share = wrong_share(&figures);
            assert!(
                share <= 0.5,
                "{manner:?} every {period_s} s: {share:.2} of the wrong cells left"
            );
        }
    }
}

#[test]
#[ignore = "prints the long table: five families of gardens, eight seeds, twelve logs each"]
fn the_long_table() {
    println!("                    cells that agree      mean error points  9 of 10 gardens   left");
    println!("manner grade  s     chord rebuilt least    chord rebuilt     chord rebuilt  as chords");
    for manner in MANNERS {
        let gardens = gardens(manner, &LONG_SEEDS);
        for (grade, noise) in GRADES {
            for period_s in [5.0, 10.0, 20.0, 30.0] {
                let figures = Figures::of(&gardens, period_s, noise);
                println!("{manner:10?} {grade:4} {period_s:2}  {figures}");
            }
        }
    }
}
