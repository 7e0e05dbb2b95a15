//! What is known about one place, compared with the simulator's truth.

use crate::nights::{driven, found, invented, job, logged, of_width, sites};
use tussock::{AnalyseError, analyse, ask};
use tussock_plane::Site;
use tussock_simulate::gardens::{GardenKind, Surprise};
use tussock_simulate::{Counting, LogNoise, Machine, TrueRun, truth};
use tussock_types::{ComplaintSettings, GeoPoint, Place, Plan, Said, Settings, Trace};

const SEED: u64 = 20_261_201;
const CUT_WIDTH_M: f64 = 0.22;
const TRUTH_CELL_M: f64 = 0.05;

fn on_earth(at: GeoPoint) -> ComplaintSettings {
    ComplaintSettings {
        at_deg: Some([at.lat_deg, at.lon_deg]),
        ..ComplaintSettings::default()
    }
}

fn in_metres(at: Place) -> ComplaintSettings {
    ComplaintSettings {
        at_m: Some([at.east_m, at.north_m]),
        ..ComplaintSettings::default()
    }
}

struct Night {
    plan: Plan,
    site: Site,
    ground: Site,
    run: TrueRun,
    /// In centimetres.
    trace: Trace,
}

fn night(hours: f64) -> Night {
    let garden = invented(GardenKind::Convex, (300.0, 500.0), Surprise::None, SEED);
    let (site, ground) = sites(&garden.plan, &garden.ground);
    let run = driven(&ground, &Machine::default(), hours, SEED);
    Night {
        trace: logged(&run, &site, 1.0, LogNoise::CENTIMETRES, SEED + 1),
        plan: garden.plan,
        site,
        ground,
        run,
    }
}

#[test]
fn visits_of_places_lie_within_their_interval_at_every_grade() {
    let Night {
        plan,
        site,
        ground,
        run,
        ..
    } = night(8.0);
    let truth = truth(&run, &ground, &Counting::new(CUT_WIDTH_M, TRUTH_CELL_M));
    let grid = truth.lawn.grid;
    // Every so many cells of the lawn: places all over it.
    let cells: Vec<(usize, usize)> = truth.lawn.cells_on().collect();
    let places = cells.iter().step_by(cells.len() / 150);
    for noise in [LogNoise::CENTIMETRES, LogNoise::DECIMETRES, LogNoise::METRES] {
        let trace = logged(&run, &site, 1.0, noise, SEED + 1);
        let findings = found(&trace, &plan, CUT_WIDTH_M);
        let (mut held, mut asked, mut unsure) = (0, 0, 0);
        for (column, row) in places.clone() {
            let geo = site.frame.to_geo(grid.centre(*column, *row));
            let answer = ask(&findings, &on_earth(geo)).unwrap();
            let visits = answer.visits.unwrap();
            let true_visits = f64::from(truth.visits[row * grid.columns + column]);
            asked += 1;
            held +=
                usize::from((visits.low.unwrap() - 0.5..=visits.high.unwrap() + 0.5).contains(&true_visits));
            unsure += usize::from(matches!(answer.answer, Some(Said::PlaceCannotTell { .. })));
        }
        let share = f64::from(held as u32) / f64::from(asked);
        println!("{noise:?}: {held} of {asked} held, {unsure} cannot tell");
        assert!(share >= 0.85, "{noise:?}: {share}");
        assert!(unsure * 20 <= asked as usize, "{noise:?}: {unsure} of {asked}");
    }
}

#[test]
fn fewer_visits_than_the_lawn_has_are_said_to_be_fewer_and_a_drawn_outline_knows_no_more_than_it_saw() {
    let Night {
        plan, site, trace, ..
    } = night(8.0);
    let findings = found(&trace, &plan, CUT_WIDTH_M);
    let cells = findings.cells.as_ref().unwrap();
    let mut few = 0;
    for at in (0..cells.lawn_fraction.len())
        .filter(|at| cells.lawn_fraction[*at] > 0.9)
        .step_by(7)
    {
        let place = cells
            .grid
            .centre(at % cells.grid.columns, at / cells.grid.columns);
        match ask(&findings, &in_metres(place)).unwrap().answer.unwrap() {
            Said::PlaceOften { visits, lawn_visits } => {
                assert!(visits >= 0.5 * lawn_visits, "{visits} {lawn_visits}")
            }
            Said::PlaceFew { visits, lawn_visits } | Said::PlaceSeldom { visits, lawn_visits } => {
                few += 1;
                assert!(visits < 0.5 * lawn_visits, "{visits} {lawn_visits}");
            }
            _ => {}
        }
    }
    assert!(few > 0);

    let settings = of_width(CUT_WIDTH_M);
    let drawn = analyse(&job(std::slice::from_ref(&trace), None, &settings)).unwrap();
    let (_, high) = site.lawn.bounds().unwrap();
    let beyond = site
        .frame
        .to_geo(Place::new(high.east_m + 2.0, high.north_m + 2.0));
    let answer = ask(&drawn, &on_earth(beyond)).unwrap().answer;
    assert!(
        matches!(answer, Some(Said::PlaceBeyondOutline { .. })),
        "{answer:?}"
    );
}

#[test]
fn a_place_beside_the_lawn_is_not_counted_and_one_far_away_is_of_another_garden() {
    let Night {
        plan, site, trace, ..
    } = night(3.0);
    let findings = found(&trace, &plan, CUT_WIDTH_M);
    let (_, high) = site.lawn.bounds().unwrap();
    let asked = |place: Place| {
        let asked = ComplaintSettings {
            said: Some("here".to_owned()),
            ..on_earth(site.frame.to_geo(place))
        };
        ask(&findings, &asked).unwrap()
    };
    let beside = asked(Place::new(high.east_m + 2.0, high.north_m + 2.0));
    assert!(matches!(beside.answer, Some(Said::PlaceOffLawn { distance_m }) if distance_m > 2.0));
    assert_eq!(beside.said.as_deref(), Some("here"));
    let far = asked(Place::new(high.east_m + 400.0, 0.0)).answer;
    assert!(matches!(far, Some(Said::PlaceElsewhere { distance_m }) if distance_m > 390.0));
    let wide = ComplaintSettings {
        radius_m: 12.0,
        ..on_earth(
            site.frame
                .to_geo(Place::new(high.east_m + 2.0, high.north_m + 2.0)),
        )
    };
    let found = ask(&findings, &wide).unwrap().answer;
    assert!(!matches!(found, Some(Said::PlaceOffLawn { .. })), "{found:?}");

    let mut bare = findings.clone();
    bare.frame.origin_lat = None;
    let nowhere = on_earth(GeoPoint {
        lat_deg: 50.0,
        lon_deg: 5.0,
    });
    assert!(matches!(ask(&bare, &nowhere), Err(AnalyseError::NoPlaceOnEarth)));
    let neither = ComplaintSettings::default();
    assert!(matches!(
        ask(&bare, &neither),
        Err(AnalyseError::ComplaintWithoutPlace)
    ));
    bare.coverage = None;
    let middle = bare.lawn_outline[0][0][0].middle(bare.lawn_outline[0][0][2]);
    let needs = ask(&bare, &in_metres(middle)).unwrap();
    assert_eq!(
        (needs.answer, needs.visits),
        (Some(Said::PlaceNeedsWidth {}), None)
    );
}

#[test]
fn complaints_of_the_settings_are_answered_as_saved_findings_answer_them() {
    let Night {
        plan, site, trace, ..
    } = night(3.0);
    let (low, high) = site.lawn.bounds().unwrap();
    let mut settings = Settings {
        complaint: vec![
            on_earth(site.frame.to_geo(low.middle(high))),
            in_metres(Place::new(1.0, 1.0)),
        ],
        ..of_width(CUT_WIDTH_M)
    };
    settings.complaint[0].said = Some("always long here".to_owned());
    let analysed = |settings: &Settings| analyse(&job(std::slice::from_ref(&trace), Some(&plan), settings));
    let findings = analysed(&settings).unwrap();
    assert_eq!(findings.complaints.len(), 2);
    for (asked, found) in settings.complaint.iter().zip(&findings.complaints) {
        assert_eq!(&ask(&findings, asked).unwrap(), found);
    }
    assert_eq!(findings.complaints[0].said.as_deref(), Some("always long here"));
    assert!(
        findings.complaints[0]
            .visits
            .is_some_and(|visits| visits.high.is_some())
    );
    settings.complaint[1].at_m = None;
    assert!(matches!(
        analysed(&settings),
        Err(AnalyseError::ComplaintWithoutPlace)
    ));
}
