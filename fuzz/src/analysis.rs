//! A whole analysis of an odd garden, and what must hold of everything that comes out.

use super::hold;
use super::odd::{Odd, invent};
use arbitrary::Unstructured;
use tussock::types::{
    Coverage, Estimate, Findings, LimitSettings, LogLevel, LogVerdict, OutlineSource, Plan, PromiseVerdict,
};
use tussock::{Advice, Job, Side, Sides, align, analyse, check_plan, compare, inspect, plan_from_trace};
use tussock_batch::{Bucket, GardenJob, Listed, LogRef, Objects, SeenFile};
use tussock_ingest::{ReadOptions, assemble, plan_from_walk, read_log, read_plan, read_settings};

/// An odd log may cost so many times what the same log costs without oddities ...
const MOST_TIMES: u64 = 10;
/// ... and is not looked at below this: processor time of one garden, of analysis, inspection and all else together.
const LEAST_COST_NS: u64 = 3_000_000_000;
/// No garden costs more, however large: without optimisation, on a slow machine.
const MOST_COST_NS: u64 = 60_000_000_000;
/// Areas that should add up may be off by so much of the lawn.
const AREA_ROUNDING: f64 = 1e-9;

/// What came of a garden.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tally {
    /// Analyses that gave findings.
    pub analysed: u32,
    /// Analyses that were refused with a word.
    pub refused: u32,
    /// Comparisons that were made.
    pub compared: u32,
    /// Plans that were drawn from the drive.
    pub drawn: u32,
    /// Plans that were aligned.
    pub aligned: u32,
    /// Nights of the night shift.
    pub nights: u32,
}

impl Tally {
    /// Both together.
    pub fn add(&mut self, other: Self) {
        self.analysed += other.analysed;
        self.refused += other.refused;
        self.compared += other.compared;
        self.drawn += other.drawn;
        self.aligned += other.aligned;
        self.nights += other.nights;
    }
}

/// A garden from any bytes, tried with everything that the library does.
///
/// # Panics
/// Where something does not hold.
pub fn analysis(data: &[u8]) {
    tally(data);
}

/// The same, saying what came of it.
///
/// # Panics
/// Where something does not hold.
pub fn tally(data: &[u8]) -> Tally {
    let mut bytes = Unstructured::new(data);
    let Ok((odd, twin)) = invent(&mut bytes) else {
        return Tally::default();
    };
    // A tenth of all gardens get suggestions: those cost more than all else together.
    let advice = match bytes.int_in_range(0..=9) {
        Ok(1) => Advice::Given,
        _ => Advice::LeftOut,
    };
    let (cost_ns, tally) = on_one_thread(&odd, advice);
    assert!(
        cost_ns <= MOST_COST_NS,
        "{} ms on a processor: {}",
        cost_ns / 1_000_000,
        odd.said
    );
    if cost_ns > LEAST_COST_NS {
        let usual_ns = on_one_thread(&twin, advice).0.max(LEAST_COST_NS / MOST_TIMES);
        assert!(
            cost_ns <= MOST_TIMES * usual_ns,
            "{} ms on a processor, {} ms without what is odd: {}",
            cost_ns / 1_000_000,
            usual_ns / 1_000_000,
            odd.said
        );
    }
    tally
}

/// Nanoseconds on a processor, all work on one thread; 0 where nobody counts them.
fn on_one_thread(odd: &Odd, advice: Advice) -> (u64, Tally) {
    let on_processor_ns = || -> u64 {
        std::fs::read_to_string("/proc/thread-self/schedstat")
            .ok()
            .and_then(|text| text.split_whitespace().next()?.parse().ok())
            .unwrap_or(0)
    };
    let pool = rayon::ThreadPoolBuilder::new()
        .num_threads(1)
        .stack_size(8 << 20)
        .build()
        .expect("a thread");
    pool.install(|| {
        let before_ns = on_processor_ns();
        let tally = try_out(odd, advice);
        (on_processor_ns() - before_ns, tally)
    })
}

fn try_out(odd: &Odd, advice: Advice) -> Tally {
    let mut tally = night_shift(odd);
    let settings = match read_settings("settings", &odd.settings) {
        Ok(settings) => settings,
        Err(error) => {
            assert!(!error.to_string().is_empty());
            return tally;
        }
    };
    let plan = odd.plan.as_ref().and_then(|text| plan_of(text, &settings.limits));
    let options = ReadOptions {
        limits: settings.limits.clone(),
        ..ReadOptions::default()
    };
    let files: Vec<_> = odd
        .logs
        .iter()
        .filter_map(|(name, log)| read_log(name, &log[..], &options).ok())
        .inspect(hold)
        .collect();
    // Each file alone and all together: some faults show in one way only.
    let Ok(together) = assemble(files.clone()) else {
        return tally;
    };
    let mut parts: Vec<_> = files
        .into_iter()
        .filter_map(|file| assemble(vec![file]).ok())
        .collect();
    parts.truncate(2);
    let mut jobs: Vec<Job<'_>> = Vec::new();
    for logs in [&together].into_iter().chain(parts.iter().skip(1)) {
        jobs.push(Job {
            traces: &logs.traces,
            inputs: &logs.inputs,
            plan: plan.as_ref(),
            settings: &settings,
            seed: 7,
            advice,
            progress: None,
        });
    }
    let found: Vec<Option<Findings>> = jobs.iter().map(|job| answered(job, &odd.said)).collect();
    for findings in &found {
        tally.analysed += u32::from(findings.is_some());
        tally.refused += u32::from(findings.is_none());
    }
    if let [Some(before), .., Some(after)] = &found[..] {
        tally.compared += u32::from(compared((before, &jobs[0]), (after, &jobs[1]), &odd.said));
    }
    let job = &jobs[0];
    if let Ok(aligned) = align(job) {
        assert!(aligned.offset.sd_m.is_finite(), "{}", odd.said);
        assert!(check_plan(&aligned.plan).is_sound(), "aligned: {}", odd.said);
        tally.aligned += 1;
    }
    if let Ok(drawn) = plan_from_trace(job) {
        let report = check_plan(&drawn);
        assert!(report.is_sound(), "{:?}: {}", report.faults, odd.said);
        tally.drawn += 1;
    }
    tally
}

/// A plan as the door lets it in. What has a fatal fault is refused, there and behind it.
fn plan_of(text: &str, limits: &LimitSettings) -> Option<Plan> {
    let read = read_plan("plan", text.as_bytes(), limits).ok()?;
    let report = check_plan(&read.plan);
    assert_eq!(
        report.is_sound(),
        report.faults.iter().all(|fault| !fault.is_fatal)
    );
    walked(&read.plan);
    Some(read.plan)
}

/// The plan as somebody would have walked it.
fn walked(plan: &Plan) {
    use std::fmt::Write as _;
    use tussock::types::PlanShape;
    let mut gpx = String::from("<gpx version=\"1.1\">");
    for feature in &plan.features {
        let lines = match &feature.shape {
            PlanShape::Polygons(polygons) => polygons
                .iter()
                .flat_map(|polygon| polygon.rings.clone())
                .collect(),
            PlanShape::Line(points) => vec![points.clone()],
            PlanShape::Point(point) => vec![vec![*point]],
        };
        for line in lines {
            let _ = write!(gpx, "<trk><name>{}</name><trkseg>", feature.role.word());
            for point in line {
                let _ = write!(
                    gpx,
                    "<trkpt lat=\"{}\" lon=\"{}\"/>",
                    point.lat_deg, point.lon_deg
                );
            }
            gpx.push_str("</trkseg></trk>");
        }
    }
    gpx.push_str("</gpx>");
    if let Ok(walked) = plan_from_walk("walk", gpx.as_bytes(), &[]) {
        let report = check_plan(&walked.plan);
        assert!(report.rows.len() <= walked.plan.features.len());
    }
}

/// Inspects and analyses, and holds what comes out.
fn answered(job: &Job<'_>, said: &str) -> Option<Findings> {
    let inspection = inspect(job);
    match &inspection {
        Ok(inspection) => {
            let text = tussock_report::inspection_to_json(inspection);
            text.unwrap_or_else(|error| panic!("inspection: {error}: {said}"));
            let told = tussock_report::answer_inspection(inspection, tussock_report::Style::default());
            assert!(!told.is_empty());
            let width_m = inspection.log_verdict.smallest_findable_width_m;
            assert!(width_m > 0.0, "{width_m}: {said}");
        }
        Err(error) => assert!(!error.to_string().is_empty()),
    }
    let findings = match analyse(job) {
        Ok(findings) => findings,
        Err(error) => {
            assert!(!error.to_string().is_empty());
            return None;
        }
    };
    let inspection = inspection.unwrap_or_else(|error| panic!("analysed, not inspected: {error}: {said}"));
    let levels = |verdict: &LogVerdict| (verdict.level, verdict.positions, verdict.duration);
    assert_eq!(
        levels(&inspection.log_verdict),
        levels(&findings.log_verdict),
        "inspected and analysed: {said}"
    );
    holds(&findings, said);
    let read: usize = job.traces.iter().map(tussock::types::Trace::len).sum();
    let span = &findings.span;
    let left_out: u64 = span.fixes_left_out.values().sum();
    assert_eq!(span.fixes_read, read as u64, "{said}");
    assert_eq!(
        span.fixes_used + span.fixes_carried + left_out,
        span.fixes_read,
        "{span:?}: {said}"
    );
    Some(findings)
}

fn compared(before: (&Findings, &Job<'_>), after: (&Findings, &Job<'_>), said: &str) -> bool {
    let side = |(findings, job)| Side {
        names: vec!["log".to_owned()],
        findings,
        job: Some(job),
    };
    match compare(&Sides {
        before: side(before),
        after: side(after),
        seed: 7,
    }) {
        Ok(comparison) => {
            let text = tussock_report::comparison_to_json(&comparison);
            text.unwrap_or_else(|error| panic!("comparison: {error}: {said}"));
            let page = tussock_report::html_comparison(&comparison, tussock_report::Voice::default());
            page.unwrap_or_else(|error| panic!("comparison: {error}: {said}"));
            true
        }
        Err(error) => {
            assert!(!error.to_string().is_empty());
            false
        }
    }
}

/// What holds for all findings: every number finite, parts that make the whole, claims that the log carries.
fn holds(findings: &Findings, said: &str) {
    let text = tussock_report::to_json(findings).unwrap_or_else(|error| panic!("{error}: {said}"));
    let again = tussock_report::from_json(text.as_bytes()).unwrap_or_else(|error| panic!("{error}: {said}"));
    assert_eq!(
        tussock_report::to_json(&again).ok().as_deref(),
        Some(&text[..]),
        "{said}"
    );
    let page = tussock_report::html(findings, tussock_report::Voice::default())
        .unwrap_or_else(|error| panic!("{error}: {said}"));
    assert!(!page.contains(">NaN") && !page.contains(" NaN"), "{said}");
    let told = tussock_report::answer(findings, tussock_report::Style::default());
    assert!(!told.contains("NaN") && !told.contains(" inf"), "{told}\n{said}");
    if findings.frame.origin_lat.is_some() {
        tussock_report::geojson(findings).unwrap_or_else(|error| panic!("{error}: {said}"));
        tussock_report::pockets_gpx(findings, tussock_report::Voice::default())
            .unwrap_or_else(|error| panic!("{error}: {said}"));
    }
    if findings.cells.is_some() {
        tussock_report::cells_parquet(findings).unwrap_or_else(|error| panic!("{error}: {said}"));
    }
    if let Some(coverage) = &findings.coverage {
        adds_up(coverage, said);
        let claimed: f64 = findings.missed_pockets.iter().map(|pocket| pocket.area_m2).sum();
        assert!(
            coverage.missed_m2 <= claimed + AREA_ROUNDING * coverage.lawn_m2,
            "pockets {claimed} m2, missed {} m2: {said}",
            coverage.missed_m2
        );
    }
    assert!(
        findings.missed_pockets.is_empty() || findings.log_verdict.level != LogLevel::Unusable,
        "missed pockets of a log that shows nothing: {said}"
    );
    let findable_m = findings.log_verdict.smallest_findable_width_m;
    for pocket in &findings.missed_pockets {
        assert!(
            pocket.widest_m > findable_m - 0.1,
            "findable {findable_m} m, {pocket:?}: {said}"
        );
        assert!(
            pocket.area_m2 > 0.0 && pocket.widest_m > 0.0,
            "{pocket:?}: {said}"
        );
    }
    let span = &findings.span;
    let spent_s = span.driving_s + span.halted_s + span.silent_s + span.at_station_s.unwrap_or(0.0);
    assert!(spent_s >= 0.0 && span.path_m >= 0.0, "{span:?}: {said}");
    if let Some(over_time) = &findings.over_time {
        let rises = |column: &[f64]| column.windows(2).all(|pair| pair[0] <= pair[1]);
        assert!(
            rises(&over_time.driving_h) && rises(&over_time.visited_fraction),
            "{said}"
        );
        assert!(
            over_time.promise.verdict != PromiseVerdict::Kept
                || (findings.outline_source == OutlineSource::Plan
                    && findings.log_verdict.level != LogLevel::Unusable),
            "a promise kept that the log cannot show: {said}"
        );
    }
}

fn adds_up(coverage: &Coverage, said: &str) {
    let parts_m2 = [
        coverage.visited_m2,
        coverage.missed_m2,
        coverage.not_yet_m2,
        coverage.unseen_m2,
        coverage.sliver_m2,
    ];
    assert!(parts_m2.iter().all(|part| *part >= 0.0), "{coverage:?}: {said}");
    let sum_m2: f64 = parts_m2.iter().sum();
    assert!(
        coverage.lawn_m2 > 0.0 && (sum_m2 - coverage.lawn_m2).abs() <= AREA_ROUNDING * coverage.lawn_m2,
        "parts make {sum_m2} m2: {coverage:?}: {said}"
    );
    let lawns = coverage.lawns.iter().map(|lawn| &lawn.visited_fraction);
    for Estimate { estimate, low, high } in lawns.chain([&coverage.visited_fraction]) {
        let (low, high) = (low.unwrap_or(*estimate), high.unwrap_or(*estimate));
        assert!(
            0.0 <= low && low <= *estimate && *estimate <= high && high <= 1.0,
            "{low} {estimate} {high}: {said}"
        );
    }
    for fraction in [coverage.as_logged_fraction, coverage.cell_error_fraction] {
        assert!((0.0..=1.0).contains(&fraction), "{coverage:?}: {said}");
    }
}

/// A place with one garden.
struct Place(Odd);

impl Objects for Place {
    fn read(&self, path: &str) -> std::io::Result<Vec<u8>> {
        let Odd {
            plan, settings, logs, ..
        } = &self.0;
        let log = logs
            .iter()
            .find(|(name, _)| name == path)
            .map(|(_, log)| log.clone());
        match path {
            "plan" => plan.clone().map(String::into_bytes),
            "settings" => Some(settings.clone().into_bytes()),
            _ => log,
        }
        .ok_or_else(|| std::io::ErrorKind::NotFound.into())
    }

    fn list(&self, _: &str) -> std::io::Result<Listed> {
        let found = |(name, log): &(String, Vec<u8>)| SeenFile {
            path: name.clone(),
            bytes: log.len() as u64,
            modified_unix_ms: 0,
        };
        Ok((Vec::new(), self.0.logs.iter().map(found).collect()))
    }
}

/// The same garden in the night shift: each log is read or a failure, each night analysed or one.
fn night_shift(odd: &Odd) -> Tally {
    let bucket = Bucket::over("place", Box::new(Place(odd.clone())));
    let logs = odd.logs.iter().map(|(path, log)| LogRef {
        path: path.clone(),
        machine: None,
        bytes: log.len() as u64,
        modified_unix_ms: 1_777_700_000_000,
        known: None,
        is_there: true,
    });
    let job = GardenJob {
        place: "place".to_owned(),
        garden: "odd".to_owned(),
        plan: "plan".to_owned(),
        settings: "settings".to_owned(),
        reach: tussock_batch::PlaceReach::Anywhere,
        clock: tussock_batch::Clock {
            now_unix_s: 1_777_700_000.0,
            night_turns_at_h: 12,
            oldest_log_days: tussock_batch::USUAL_OLDEST_LOG_DAYS,
        },
        logs: logs.collect(),
        done: Vec::new(),
        failed: Vec::new(),
        advice: None,
    };
    let answer = tussock_batch::work::do_job(&job, &bucket, &mut |_| Ok(())).expect("a garden is answered");
    assert!(
        !answer.logs.is_empty() || !answer.failed.is_empty(),
        "a garden without a word: {}",
        odd.said
    );
    assert!(
        answer.failed.iter().all(|failed| !failed.detail.is_empty()),
        "{}",
        odd.said
    );
    Tally {
        nights: answer.nights.len() as u32,
        ..Tally::default()
    }
}
