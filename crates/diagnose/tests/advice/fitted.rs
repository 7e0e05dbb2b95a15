//! Is the fitted machine the one that drove?

use super::world::{site, track};
use approx::assert_abs_diff_eq;
use tussock_diagnose::night_simulation::{Access, CELL_M, Cast, Scene};
use tussock_plane::Site;
use tussock_simulate::gardens::{GardenKind, Wish, invent_as};
use tussock_simulate::{
    Lanes, LogNoise, Machine, Pattern, Run, Spell, TrueRun, TurnLaw, TurnPair, Yard, simulate,
};
use tussock_survey::fitted::{Fitted, JOINT_TURNS, NoFit, fit};
use tussock_types::Settings;

fn fitted(site: &Site, track: &tussock_locate::Track) -> Result<Fitted, NoFit> {
    let ground = site.drivable().expect("there is ground");
    let turns = [tussock_locate::turns::turns(track, &ground, &[])];
    fit(
        site,
        &ground,
        std::slice::from_ref(track),
        &turns,
        &Settings::default(),
    )
}

fn machine(number: u64) -> Machine {
    Machine {
        speed_mps: 0.3 + 0.05 * (number % 4) as f64,
        past_boundary_m: if number.is_multiple_of(2) { -0.15 } else { -0.3 },
        turn_law: match number % 3 {
            0 => TurnLaw::UniformFromNormal,
            1 => TurnLaw::ReflectWithSpread { sd_deg: 30.0 },
            _ => TurnLaw::FromHeading {
                min_deg: 60.0,
                max_deg: 160.0,
            },
        },
        roaming: Spell::Between {
            min_s: 3300.0,
            max_s: 4500.0,
        },
        ..Machine::default()
    }
}

/// Garden, truth and fit by number; every second garden has a guide run that takes half of the outings.
fn fitted_garden(number: u64, noise: LogNoise) -> (Machine, TrueRun, f64, Fitted) {
    let plan = invent_as(
        &Wish {
            guide_share_fraction: (number % 2 == 1).then_some(0.5),
            ..Wish::new(GardenKind::ALL[(number % 5) as usize])
        },
        number,
    )
    .plan;
    let site = site(&plan);
    let machine = machine(number);
    let run = simulate(&site, &machine, &Run::new(8.0, number)).unwrap();
    let track = track(&site, &run, noise, 1.0, number);
    let fitted = fitted(&site, &track).unwrap();
    (machine, run, track.span_s.unwrap().0, fitted)
}

#[test]
fn speed_setback_turning_time_and_outings_come_out_of_the_log() {
    for (noise, setback_m) in [(LogNoise::CENTIMETRES, 0.01), (LogNoise::DECIMETRES, 0.03)] {
        let (mut began, mut ended) = (0, 0);
        for number in 0..6 {
            let (machine, run, start_s, fitted) = fitted_garden(number, noise);
            assert_abs_diff_eq!(fitted.machine.speed_mps, machine.speed_mps, epsilon = 0.003);
            assert_abs_diff_eq!(
                fitted.machine.past_boundary_m,
                machine.past_boundary_m,
                epsilon = setback_m
            );
            let Spell::Between { min_s, max_s } = fitted.machine.turning else {
                panic!("waits are a range")
            };
            assert_abs_diff_eq!(0.5 * (min_s + max_s), 2.0, epsilon = 0.25);
            assert_eq!(fitted.outings.len(), run.outings.len());
            for (truth, found) in run.outings.iter().zip(&fitted.outings) {
                assert_abs_diff_eq!(found.start_s - start_s, truth.start_s, epsilon = 10.0);
                began += usize::from(found.guide.map(|guide| guide.0) == truth.guide);
                // The ride begins where the continued drive meets a line, about half a minute after the time is over.
                let late_s = found.homeward_s - start_s - truth.homeward_s;
                ended += usize::from((-40.0..100.0).contains(&late_s));
            }
            if let Some(share) = fitted.guide_shares_fraction.first().copied().flatten() {
                let along = run.outings.iter().filter(|outing| outing.guide.is_some()).count() as f64;
                let expected = (along + 2.0) / (run.outings.len() as f64 + 4.0);
                assert_abs_diff_eq!(share, expected, epsilon = 1e-9);
            }
        }
        // Of 24 outings.
        assert!(began >= 24 && ended >= 23, "{began} {ended}");
    }
}

/// Mean cosine of the angle between the way out and the mirrored way in: 1 for a mirror, 0.64 for none at all.
fn mirror_like(pairs: &[TurnPair]) -> f64 {
    pairs
        .iter()
        .map(|pair| (pair.out_rad - pair.mirror_rad).cos())
        .sum::<f64>()
        / pairs.len() as f64
}

#[test]
fn the_law_of_the_turns_is_taken_over() {
    const SEED: u64 = 21;
    let plan = invent_as(&Wish::new(GardenKind::Islands), SEED).plan;
    let site = site(&plan);
    let laws = [
        TurnLaw::UniformFromNormal,
        TurnLaw::CosineFromNormal,
        TurnLaw::ReflectWithSpread { sd_deg: 15.0 },
    ];
    let found: Vec<(f64, f64)> = laws
        .into_iter()
        .map(|turn_law| {
            let machine = Machine {
                turn_law,
                ..Machine::default()
            };
            let run = simulate(&site, &machine, &Run::new(16.0, SEED)).unwrap();
            let track = track(&site, &run, LogNoise::CENTIMETRES, 1.0, SEED);
            let fitted = fitted(&site, &track).unwrap();
            let TurnLaw::Observed { pairs, neighbours } = fitted.machine.turn_law else {
                panic!("{} turns give a law", fitted.turns)
            };
            assert!(pairs.len() >= JOINT_TURNS && neighbours < pairs.len());
            let sine = pairs.iter().map(|pair| pair.out_rad.sin().abs()).sum::<f64>() / pairs.len() as f64;
            (sine, mirror_like(&pairs))
        })
        .collect();
    // Mean sine of the way out: 2/pi if all directions are equally likely, 1/2 by the cosine law.
    assert_abs_diff_eq!(found[0].0, 2.0 / std::f64::consts::PI, epsilon = 0.06);
    assert_abs_diff_eq!(found[1].0, 0.5, epsilon = 0.06);
    assert!(found[2].1 > 0.9, "{found:?}");
    assert!(found[0].1 < 0.75 && found[1].1 < 0.8, "{found:?}");
}

#[test]
fn runs_of_the_fitted_machine_visit_as_much_as_runs_of_the_true_one() {
    for number in [0, 2, 3] {
        let (machine, _, _, fitted) = fitted_garden(number, LogNoise::CENTIMETRES);
        let plan = invent_as(
            &Wish {
                guide_share_fraction: (number % 2 == 1).then_some(0.5),
                ..Wish::new(GardenKind::ALL[(number % 5) as usize])
            },
            number,
        )
        .plan;
        let site = site(&plan);
        let scene = Scene::of(&site, CELL_M, 0.22);
        let mean = |machine: Machine, site: &Site, run: Run| {
            let cast = Cast {
                yard: Yard::new(site, machine.past_boundary_m).unwrap(),
                machine,
                run,
                access: Access::AsIs,
            };
            let runs = cast.play(&scene, 1, 0..48).unwrap();
            runs.iter().map(|run| run.lawn).sum::<f64>() / runs.len() as f64
        };
        let truth = mean(machine, &site, Run::new(8.0, 0));
        let own = mean(fitted.machine.clone(), &fitted.site(&site), fitted.run(0));
        // The luck of 48 runs is half a point; the outings of one night make up the rest.
        assert_abs_diff_eq!(own, truth, epsilon = 0.025);
    }
}

#[test]
fn lanes_are_refused_and_so_is_a_log_without_turns() {
    const SEED: u64 = 9;
    let plan = invent_as(&Wish::new(GardenKind::Convex), SEED).plan;
    let site = site(&plan);
    let machine = Machine {
        pattern: Pattern::Lanes(Lanes::new(0.18, 30.0, 0.02)),
        ..Machine::default()
    };
    let fit_of = |machine: &Machine, hours: f64| {
        let run = simulate(&site, machine, &Run::new(hours, SEED)).unwrap();
        let track = track(&site, &run, LogNoise::CENTIMETRES, 1.0, SEED);
        fitted(&site, &track)
    };
    assert_eq!(fit_of(&machine, 3.0).unwrap_err(), NoFit::Lanes);
    assert!(matches!(
        fit_of(&Machine::default(), 0.1),
        Err(NoFit::TooFewTurns { .. })
    ));
}
