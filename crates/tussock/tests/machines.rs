//! Several machines, no plan, no width: the shapes of an answer.

use crate::nights::job;
use std::fmt::Write;
use tussock::{AnalyseError, Job, analyse};
use tussock_ingest::{Assembled, IngestError, LogFile, ReadOptions, assemble, read_log};
use tussock_plane::Site;
use tussock_simulate::gardens::{GardenKind, Wish, invent_as};
use tussock_simulate::{Dice, LogNoise, Machine, Run, Sampling, gpx_bytes, sample, simulate};
use tussock_types::{Findings, OutlineSource, Plan, PlanRole, PlanShape, Positions, Said, Settings, Trace};

const SEED: u64 = 41;
const CUT_WIDTH_M: f64 = 0.22;

/// Two machines in one garden at the same time.
fn two_machines() -> (Plan, Vec<Trace>) {
    let plan = invent_as(&Wish::new(GardenKind::Convex), SEED).plan;
    let (site, _) = Site::build(&plan).expect("an invented plan is sound");
    let traces = (0..2)
        .map(|number| {
            let run = simulate(&site, &Machine::default(), &Run::new(2.0, SEED + number)).expect("it drives");
            let mut sampling =
                Sampling::geographic(1.0, LogNoise::CENTIMETRES, SEED + 10 + number, site.frame);
            sampling.machine = format!("machine-{}", number + 1);
            sample(&run, &sampling)
        })
        .collect();
    (plan, traces)
}

/// Two machines in one garden at the same time, each with a station of its own, at two periods.
fn of_two_stations(noise: LogNoise, periods_s: [f64; 2], seed: u64) -> [Trace; 2] {
    let plan = invent_as(&Wish::new(GardenKind::Ell), seed).plan;
    [0, 1].map(|number| {
        let mut own = plan.clone();
        let lawn = own
            .features
            .iter()
            .find(|feature| feature.role == PlanRole::Lawn)
            .unwrap();
        // The second stands at the corner opposite in the list.
        let corners = lawn.shape.points();
        let corner = corners[corners.len() / 2];
        if number == 1 {
            let station = own
                .features
                .iter_mut()
                .find(|feature| feature.role == PlanRole::Station);
            station.unwrap().shape = PlanShape::Point(corner);
        }
        let (site, _) = Site::build(&own).expect("an invented plan is sound");
        let run = simulate(&site, &Machine::default(), &Run::new(3.0, seed + number)).expect("it drives");
        let site_of_both = Site::build(&plan).expect("an invented plan is sound").0;
        let mut sampling =
            Sampling::geographic(periods_s[number as usize], noise, seed + 10 + number, site.frame);
        sampling.frame = Some(site_of_both.frame);
        sample(&run, &sampling)
    })
}

/// Rows of both in order of time; of two at one time the first machine's comes first. With or without the names.
fn one_table(traces: &[Trace; 2], is_named: bool) -> String {
    let mut rows: Vec<(f64, usize, usize)> = Vec::new();
    for (machine, trace) in traces.iter().enumerate() {
        rows.extend(
            trace
                .time_s
                .iter()
                .enumerate()
                .map(|(index, &time_s)| (time_s, machine, index)),
        );
    }
    rows.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    let mut text = String::from(if is_named {
        "unix_s,lat,lon,mower\n"
    } else {
        "unix_s,lat,lon\n"
    });
    for (time_s, machine, index) in rows {
        let (lat, lon) = traces[machine].positions.pair(index);
        let _ = write!(text, "{time_s:.3},{lat:.9},{lon:.9}");
        text.push_str(match (is_named, machine) {
            (false, _) => "\n",
            (true, 0) => ",elm\n",
            (true, _) => ",oak\n",
        });
    }
    text
}

fn read(name: &str, text: &[u8]) -> Result<LogFile, IngestError> {
    read_log(name, text, &ReadOptions::default())
}

/// How many fixes of a trace stand at the places of another at their times.
fn of_its_own(found: &Trace, machine: &Trace) -> usize {
    let is_at = |index: usize| {
        let time_s = found.time_s[index];
        let at = machine.time_s.partition_point(|&other_s| other_s < time_s - 1e-4);
        at < machine.len()
            && (machine.time_s[at] - time_s).abs() < 1e-3
            && (machine.positions.pair(at).0 - found.positions.pair(index).0).abs() < 1e-8
            && (machine.positions.pair(at).1 - found.positions.pair(index).1).abs() < 1e-8
    };
    (0..found.len()).filter(|&index| is_at(index)).count()
}

/// Each trace holds the fixes of one machine, but for so many in a thousand.
fn are_told_apart(both: &Assembled, machines: &[Trace; 2], strays_per_thousand: usize) {
    assert_eq!(both.traces.len(), 2, "{:?}", both.inputs[0].notices);
    for (found, machine) in both.traces.iter().zip(machines) {
        let own = of_its_own(found, machine);
        assert!(
            (found.len() - own) * 1000 <= strays_per_thousand * found.len()
                && found.len() * 1000 >= 995 * machine.len(),
            "{own} of {} for {}",
            found.len(),
            machine.len()
        );
    }
    assert_eq!(both.inputs[0].machine, "machine-1 and machine-2");
}

#[test]
fn two_machines_in_one_table_are_told_apart_by_a_column_that_names_them() {
    for (seed, periods_s) in [(SEED, [1.0, 1.0]), (SEED + 1, [1.0, 1.7])] {
        let machines = of_two_stations(LogNoise::CENTIMETRES, periods_s, seed);
        let file = read("both.csv", one_table(&machines, true).as_bytes()).unwrap();
        assert!(file.facts.skipped.is_empty(), "{:?}", file.facts.skipped);
        are_told_apart(&assemble(vec![file]).unwrap(), &machines, 0);
    }
}

#[test]
fn two_machines_that_take_turns_in_one_table_are_told_apart_by_their_places() {
    for (seed, noise) in [
        (SEED, LogNoise::CENTIMETRES),
        (SEED + 1, LogNoise::DECIMETRES),
        (SEED + 2, LogNoise::METRES),
    ] {
        let machines = of_two_stations(noise, [1.0, 1.0], seed);
        let file = read("both.csv", one_table(&machines, false).as_bytes()).unwrap();
        are_told_apart(&assemble(vec![file]).unwrap(), &machines, 1);
    }
}

#[test]
fn two_tracks_of_one_file_that_overlap_in_time_are_two_machines() {
    let machines = of_two_stations(LogNoise::CENTIMETRES, [1.0, 2.0], SEED);
    let [one, other] = machines
        .each_ref()
        .map(|trace| String::from_utf8(gpx_bytes(trace)).unwrap());
    let track = &other[other.find("<trk>").unwrap()..other.find("</gpx>").unwrap()];
    let both = one.replace("</gpx>", &format!("{track}</gpx>"));
    let file = read("both.gpx", both.as_bytes()).unwrap();
    are_told_apart(&assemble(vec![file]).unwrap(), &machines, 0);
}

#[test]
fn two_machines_in_no_order_and_without_names_are_refused() {
    let machines = of_two_stations(LogNoise::CENTIMETRES, [1.0, 1.0], SEED);
    // Of each second, one of the two by chance.
    let mut dice = Dice::new(SEED, 0);
    let table = one_table(&machines, false);
    let mut lines = table.lines();
    let mut text = format!("{}\n", lines.next().unwrap());
    while let (Some(one), Some(other)) = (lines.next(), lines.next()) {
        text.push_str(if dice.happens(0.5) { one } else { other });
        text.push('\n');
    }
    let error = read("mixed.csv", text.as_bytes()).unwrap_err();
    assert!(matches!(error, IngestError::TwoMachines { .. }), "{error}");
    // Three in turn, without names: nobody could tell.
    let third = of_two_stations(LogNoise::CENTIMETRES, [1.0, 1.0], SEED + 5);
    let text: String = (0..machines[0].len().min(machines[1].len()).min(third[1].len()))
        .flat_map(|index| {
            [
                (&machines[0], index),
                (&machines[1], index),
                (&machines[0], index),
                (&third[1], index),
            ]
        })
        .fold(String::from("unix_s,lat,lon\n"), |mut text, (trace, index)| {
            let (lat, lon) = trace.positions.pair(index);
            let _ = writeln!(text, "{:.3},{lat:.9},{lon:.9}", trace.time_s[index]);
            text
        });
    let error = read("three.csv", text.as_bytes()).unwrap_err();
    assert!(matches!(error, IngestError::TwoMachines { .. }), "{error}");
}

#[test]
fn one_machine_is_never_taken_for_two() {
    for (seed, noise, period_s) in (0..6).flat_map(|seed| {
        [
            (LogNoise::METRES, 1.0),
            (LogNoise::METRES, 15.0),
            (LogNoise::DECIMETRES, 30.0),
        ]
        .map(|(noise, period_s)| (seed, noise, period_s))
    }) {
        let [machine, _] = of_two_stations(noise, [period_s, 60.0], SEED + seed);
        let mut text = String::from("unix_s,lat,lon,device\n");
        for index in 0..machine.len() {
            let (lat, lon) = machine.positions.pair(index);
            // Names that change from row to row are of one machine all the same: it is at one place.
            let _ = writeln!(
                text,
                "{:.3},{lat:.9},{lon:.9},{}",
                machine.time_s[index],
                index % 2
            );
        }
        let file = read("one.csv", text.as_bytes()).unwrap();
        assert!(
            file.others.is_empty() && file.trace.segment.iter().all(|&segment| segment == 0),
            "{seed} {period_s}"
        );
        assert_eq!(file.trace.len(), machine.len());
    }
}

#[test]
fn logs_of_two_gardens_are_refused_by_the_names_of_their_files() {
    let (plan, mut traces) = two_machines();
    let Positions::Geographic { lat_deg, .. } = &mut traces[1].positions else {
        panic!("it is on Earth")
    };
    // 890 m to the north.
    lat_deg.iter_mut().for_each(|lat| *lat += 0.008);
    let files = ["elm.gpx", "oak.gpx"]
        .iter()
        .zip(&traces)
        .map(|(name, trace)| read(name, &gpx_bytes(trace)).unwrap());
    let both = assemble(files.collect()).unwrap();
    assert_eq!(both.traces.len(), 2);
    let settings = Settings::default();
    let refused = |plan: Option<&Plan>| {
        let job = Job {
            inputs: &both.inputs,
            ..job(&both.traces, plan, &settings)
        };
        analyse(&job).unwrap_err()
    };
    let error = refused(None);
    assert!(
        matches!(&error, AnalyseError::TwoGardens { one, other, .. } if one == "elm.gpx" && other == "oak.gpx"),
        "{error}"
    );
    let error = refused(Some(&plan));
    assert!(
        matches!(&error, AnalyseError::LogOfAnotherGarden { files, .. } if files == "oak.gpx"),
        "{error}"
    );
}

fn found(traces: &[Trace], plan: Option<&Plan>, cut_width_m: Option<f64>) -> Findings {
    let mut settings = Settings::default();
    settings.machine.cut_width_m = cut_width_m;
    let job = job(traces, plan, &settings);
    analyse(&job).expect("the logs are sound")
}

fn visited_fraction(findings: &Findings) -> f64 {
    findings
        .coverage
        .as_ref()
        .expect("a width was given")
        .visited_fraction
        .estimate
}

#[test]
fn visits_of_two_machines_are_united() {
    let (plan, traces) = two_machines();
    let both = found(&traces, Some(&plan), Some(CUT_WIDTH_M));
    let alone: Vec<f64> = traces
        .iter()
        .map(|trace| {
            visited_fraction(&found(
                std::slice::from_ref(trace),
                Some(&plan),
                Some(CUT_WIDTH_M),
            ))
        })
        .collect();
    let united = visited_fraction(&both);
    assert!(united > alone[0].max(alone[1]) + 0.05, "{united} of {alone:?}");
    // Two independent random searches leave the product of what each leaves, except at edges and on the way home.
    let independent = 1.0 - (1.0 - alone[0]) * (1.0 - alone[1]);
    assert!(
        (united - independent).abs() < 0.05,
        "{united} against {independent}"
    );
    let machines: Vec<&str> = both.machines.iter().map(|machine| &machine.id[..]).collect();
    assert_eq!(machines, ["machine-1", "machine-2"]);
}

#[test]
fn areas_add_up_to_the_lawn() {
    let (plan, traces) = two_machines();
    let findings = found(&traces[..1], Some(&plan), Some(CUT_WIDTH_M));
    let areas = findings.coverage.as_ref().expect("a width was given");
    let sum = areas.visited_m2 + areas.missed_m2 + areas.not_yet_m2 + areas.unseen_m2 + areas.sliver_m2;
    assert!((sum - areas.lawn_m2).abs() < 1e-6 * areas.lawn_m2, "{areas:?}");
    let pockets: f64 = findings
        .missed_pockets
        .iter()
        .map(|pocket| pocket.area_m2)
        .sum::<f64>()
        + findings.not_yet.iter().map(|pocket| pocket.area_m2).sum::<f64>();
    assert!((pockets - areas.missed_m2 - areas.not_yet_m2).abs() < 1e-9 * areas.lawn_m2);
}

#[test]
fn without_a_plan_the_outline_is_drawn_from_the_trace() {
    let (plan, traces) = two_machines();
    let planned = found(&traces, Some(&plan), Some(CUT_WIDTH_M));
    let drawn = found(&traces, None, Some(CUT_WIDTH_M));
    assert_eq!(drawn.outline_source, OutlineSource::Trace);
    assert!(drawn.cautions.contains(&Said::OutlineFromDrive {}));
    let lawn_m2 = |findings: &Findings| findings.coverage.as_ref().expect("a width was given").lawn_m2;
    let ratio = lawn_m2(&drawn) / lawn_m2(&planned);
    assert!((0.95..1.03).contains(&ratio), "{ratio}");
}

#[test]
fn without_a_width_the_fraction_is_given_for_a_range_of_widths() {
    let (plan, traces) = two_machines();
    let findings = found(&traces, Some(&plan), None);
    assert!(findings.coverage.is_none() && findings.missed_pockets.is_empty());
    let rows = findings.by_width.expect("a row for each width");
    assert_eq!(
        (rows[0].cut_width_m, rows[rows.len() - 1].cut_width_m),
        (0.17, 0.35)
    );
    assert!(
        rows.windows(2)
            .all(|pair| pair[0].visited_fraction.estimate < pair[1].visited_fraction.estimate)
    );
}
