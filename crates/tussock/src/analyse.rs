//! From traces to findings, laid out like a table of contents: survey, count, pockets, hours, installation, advice.

use crate::as_logged_remark::as_logged_remark;
use crate::{Advice, AnalyseError, Calibrate, Job, Stage, Survey, TOOL_VERSION, ask, verdict};
use tussock_check::{Checks, claims, count};
use tussock_diagnose::installation::Judged;
use tussock_diagnose::pocket_verdicts::PocketVerdicts;
use tussock_diagnose::site_analysis::SiteAnalysis;
use tussock_diagnose::{advice, spots};
use tussock_locate::{HaltPlace, Track};
use tussock_plane::Region;
use tussock_survey::calibrate::{Calibrated, as_logged, calibrate};
use tussock_survey::coverage_count::CoverageCount;
use tussock_survey::outline::{DrawnLawn, UnturnedStretch};
use tussock_survey::{interval, log_findings, nights, over_time, promise, unseen};
use tussock_types::{
    Coverage, DrawnOutline, Estimate, Findings, Installation, LogLevel, LogVerdict, Night, OutlineSource,
    OverTime, Place, PlanFit, SCHEMA_VERSION, Said, SiteVisit, StuckSpot, UnlistedIsland, UnturnedEdge,
};

/// Finds how much of the lawn was visited, what was missed, and where the machine got stuck.
///
/// The same job gives the same findings, to the last bit. Cost: a few tenths of a second for a night of 28,800 fixes.
///
/// # Errors
/// [`AnalyseError`] if the job cannot be done at all. Poor data is not an error; the verdict in the findings covers it.
pub fn analyse(job: &Job<'_>) -> Result<Findings, AnalyseError> {
    analyse_as(job, Calibrate::Auto)
}

/// The same, with a choice whether logs like this one are simulated to correct the visited fraction.
///
/// # Errors
/// As [`analyse()`].
pub fn analyse_as(job: &Job<'_>, wish: Calibrate) -> Result<Findings, AnalyseError> {
    job.tell(Stage::Locating, 0.0);
    analyse_survey(&Survey::of(job)?, wish)
}

/// The same for logs that have already been surveyed.
///
/// # Errors
/// As [`analyse()`].
pub fn analyse_survey(survey: &Survey<'_>, wish: Calibrate) -> Result<Findings, AnalyseError> {
    let (job, settings) = (survey.job(), survey.settings());
    survey.must_be_a_garden()?;
    job.tell(Stage::Counting, 0.4);
    let (lawn, drive) = (survey.lawn()?, survey.drive()?);
    let counted = CoverageCount::of(survey)?;
    let calibrated = calibrate(survey, wish, &counted, drive.pattern);

    job.tell(Stage::Diagnosing, 0.7);
    let cells = counted.squares();
    let site = SiteAnalysis::of(survey)?;
    let driven_zones = log_findings::driven_zones(survey);
    let mut log_verdict = verdict::verdict(survey, &driven_zones);
    log_verdict.remarks.extend(calibrated.remark());
    let mut checks = tussock_check::of_log(survey);
    let (logged, contradicted) = visited(survey, &counted, &calibrated, &mut checks)?;
    if contradicted.is_none() && !interval::rests_on_lanes(survey, drive) {
        // Otherwise the squares belong to a path that the headline does not use.
        checks.extend(count::cell_sum(&cells, logged));
    }
    checks.extend(count::as_logged(survey, &counted, logged));
    checks.hold_to(&mut log_verdict);
    let hidden = unseen::hidden_fraction(survey, &counted.count, &cells, drive);
    let visited = interval::beyond_silences(checks.widened(logged, counted.as_logged_fraction()), hidden);
    // If two ways of counting contradict each other, no ground is read from the path.
    let shown_m = match &contradicted {
        Some(_) => {
            let (width_m, height_m) = survey.extent_m();
            width_m.max(height_m)
        }
        None => verdict::shown_width_m(survey),
    };
    log_verdict.remarks.extend(contradicted);
    let mut pockets = PocketVerdicts::of(survey, &counted, &cells, &site, shown_m)?;
    pockets.hold_to(&mut log_verdict);
    checks.extend(claims::silences(survey, &pockets.missed));
    checks.extend(Some(claims::shown_ground(
        &log_verdict,
        &pockets.not_yet,
        &pockets.unseen,
    )));
    checks.hold_to(&mut log_verdict);
    let stuck_spots = spots::stuck_findings(survey, &site);
    let stuck_spots = placed(stuck_spots, &lawn.region, shown_m, &mut log_verdict);
    let nights = nights::nights(survey, settings.machine.cut_width_m.map(|_| &counted));
    let mut filled = Filled::of(survey, &counted, visited, &pockets, &nights);
    filled.promise_no_more_than(&log_verdict, lawn.source);
    let revisits = filled.coverage.is_some().then(|| counted.revisits(survey));
    let (installation, reachable_m2) = Judged {
        survey,
        layout: &site,
        counted: &counted,
        drive,
        coverage: filled.coverage.as_ref(),
        over_time: filled.over_time.as_ref(),
        overdue_fraction: revisits.as_ref().and_then(|revisits| revisits.overdue_fraction),
        nights: &nights.nights,
        open_pockets: pockets.missed.len() + pockets.not_yet.len() + pockets.unseen.len(),
        missed_pockets: pockets.missed.len(),
        shows_all: log_verdict.positions == LogLevel::Good
            && log_verdict.level != LogLevel::Unusable
            && lawn.source == OutlineSource::Plan,
    }
    .installation();
    if let Some(coverage) = filled.coverage.as_mut() {
        coverage.reachable_m2 = Some(reachable_m2);
        coverage.as_logged_differs = as_logged_remark(survey, coverage, hidden);
    }
    if filled.coverage.is_none() {
        // Without a width the gaps between passes are a guess, and so are pockets.
        pockets = PocketVerdicts::default();
    }

    let mut findings = Findings {
        schema_version: SCHEMA_VERSION,
        tool_version: TOOL_VERSION.to_owned(),
        settings: settings.clone(),
        inputs: log_findings::inputs(job),
        frame: survey.frame_findings(),
        log_verdict,
        checks: checks.into_findings(),
        span: log_findings::span(survey, job.traces),
        positions: log_findings::positions(survey),
        plan_fit: log_findings::plan_fit(survey, driven_zones)
            .map(|fit| with_unlisted(fit, &installation, survey)),
        machines: log_findings::machines(&survey.tracks),
        complaints: Vec::new(),
        visit: (settings.visit != SiteVisit::default()).then(|| settings.visit.clone()),
        silences: log_findings::silences(survey),
        by_width: filled.coverage.is_none().then(|| counted.by_width(survey)),
        unseen: filled.coverage.is_some().then_some(pockets.unseen),
        coverage: filled.coverage,
        revisits,
        over_time: filled.over_time,
        missed_pockets: pockets.missed,
        not_yet: pockets.not_yet,
        stuck_spots,
        worn_lines: spots::worn_findings(&site, &cells),
        strays: spots::stray_findings(survey, &site),
        possible_stops: Some(spots::possible_stops(survey)),
        installation: Some(installation),
        cautions: cautions(survey, lawn.source, &nights.nights),
        nights: Some(nights.nights),
        fit: None,
        reference: None,
        suggestions: None,
        change_set: Vec::new(),
        plan: survey.plan().cloned(),
        lawn_outline: lawn.region.rings(),
        outline_source: lawn.source,
        drawn_outline: lawn.drawn.as_ref().map(|drawn| drawn_outline(drawn, survey)),
        driven_lines: driven_lines(&survey.tracks),
        cells: Some(cells),
    };
    let is_unsure = |fit: &PlanFit| log_findings::is_plan_unsure(survey, fit);
    let is_withheld = findings.plan_fit.as_ref().is_some_and(is_unsure);
    if is_withheld {
        for pocket in &mut findings.missed_pockets {
            pocket.causes = Some(Vec::new());
            pocket.next_look = None;
            pocket.why = Said::CauseWithheld {};
        }
        findings.suggestions = Some(Vec::new());
    } else if job.advice == Advice::Given {
        job.tell(Stage::Suggesting, 0.8);
        advice::advise(&mut findings, survey);
    }
    if let Some(shift) = log_findings::shift(survey) {
        shift.findings(&mut findings, survey.frame.as_ref());
    }
    // This comes last, because it asks the finished findings.
    findings.complaints = (settings.complaint.iter())
        .map(|asked| ask(&findings, asked))
        .collect::<Result<_, _>>()?;
    job.tell(Stage::Diagnosing, 1.0);
    Ok(findings)
}

/// What the plan lacks: things that turned the machine, the large ones among them as islands.
fn with_unlisted(fit: PlanFit, installation: &Installation, survey: &Survey<'_>) -> PlanFit {
    let obstacles = &installation.unlisted_obstacles;
    let islands = obstacles
        .iter()
        .filter(|thing| thing.radius_m >= log_findings::ISLAND_RADIUS_M && thing.presence.is_at_the_end());
    let discs: Vec<Region> = islands
        .filter_map(|thing| Region::disc(Place::new(thing.east_m, thing.north_m), thing.radius_m).ok())
        .collect();
    PlanFit {
        unlisted_islands: islands_found(&discs, survey),
        unlisted_obstacles: obstacles.clone(),
        ..fit
    }
}

/// Ground that was circled and never entered, numbered.
fn islands_found(shapes: &[Region], survey: &Survey<'_>) -> Vec<UnlistedIsland> {
    let placed = shapes.iter().filter_map(|shape| Some((shape, shape.centroid()?)));
    let island = |(number, (shape, middle)): (usize, (&Region, Place))| {
        let geo = survey.geo(middle);
        UnlistedIsland {
            id: format!("I{}", number + 1),
            lat: geo.map(|geo| geo.lat_deg),
            lon: geo.map(|geo| geo.lon_deg),
            east_m: middle.east_m,
            north_m: middle.north_m,
            area_m2: shape.area_m2(),
            outline: shape.rings().into_iter().flatten().next().unwrap_or_default(),
        }
    };
    placed.enumerate().map(island).collect()
}

fn drawn_outline(drawn: &DrawnLawn, survey: &Survey<'_>) -> DrawnOutline {
    let unturned = drawn.unturned.map(|UnturnedStretch { middle, length_m }| {
        let geo = survey.geo(middle);
        UnturnedEdge {
            lat: geo.map(|geo| geo.lat_deg),
            lon: geo.map(|geo| geo.lon_deg),
            east_m: middle.east_m,
            north_m: middle.north_m,
            length_m,
        }
    });
    DrawnOutline {
        setback_m: drawn.setback_m,
        edge_sd_m: drawn.edge_sd_m,
        islands: islands_found(&drawn.islands, survey),
        unturned,
    }
}

/// Stuck spots, if positions show places at all: not if the smallest thing they show is half the garden.
fn placed(
    spots: Vec<StuckSpot>,
    lawn: &Region,
    shown_m: f64,
    log_verdict: &mut LogVerdict,
) -> Vec<StuckSpot> {
    let across_m = lawn.bounds().map_or(0.0, |(low, high)| low.distance_m(high));
    if spots.is_empty() || shown_m < 0.5 * across_m {
        return spots;
    }
    let lost_min = spots.iter().map(|spot| spot.minutes).sum();
    log_verdict.remarks.push(Said::StopsNotPlaced { lost_min });
    Vec::new()
}

/// The visited fraction by every method that the log allows, and what to report if they contradict each other.
fn visited(
    survey: &Survey<'_>,
    counted: &CoverageCount,
    calibrated: &Calibrated,
    checks: &mut Checks,
) -> Result<(Estimate, Option<Said>), AnalyseError> {
    let width_effect = counted.width_effect(survey);
    if let Calibrated::Done(calibration) = calibrated {
        return Ok((calibration.estimate(counted, width_effect), None));
    }
    let by_path = interval::visited(survey, counted, survey.drive()?, width_effect);
    let Some(as_logged) = as_logged(survey, counted) else {
        return Ok((by_path, None));
    };
    let (check, follows) = count::two_roads(by_path, as_logged);
    let contradicted = check.consequence.clone();
    checks.extend(Some((check, follows)));
    Ok((as_logged.with(by_path), contradicted))
}

/// Areas and hours; nothing without a cutting width.
#[derive(Default)]
struct Filled {
    coverage: Option<Coverage>,
    over_time: Option<OverTime>,
}

impl Filled {
    fn of(
        survey: &Survey<'_>,
        counted: &CoverageCount,
        visited: Estimate,
        pockets: &PocketVerdicts,
        nights: &nights::Nights,
    ) -> Self {
        if survey.settings().machine.cut_width_m.is_none() {
            return Self::default();
        }
        let coverage = counted.coverage(survey, pockets.areas(), visited);
        Self {
            over_time: Some(over_time::over_time(counted, survey, &coverage, nights)),
            coverage: Some(coverage),
        }
    }

    /// No promise over ground that the log cannot show, and none without an outline.
    fn promise_no_more_than(&mut self, verdict: &LogVerdict, source: OutlineSource) {
        if source == OutlineSource::Trace || verdict.level == LogLevel::Unusable {
            self.over_time
                .iter_mut()
                .for_each(|over_time| over_time.promise = promise::CANNOT_TELL);
        }
    }
}

/// Lines for drawing, about ten thousand corners at most.
fn driven_lines(tracks: &[Track]) -> Vec<Vec<Place>> {
    const MOST_CORNERS: usize = 20_000;
    let corners: usize = tracks
        .iter()
        .flat_map(|track| &track.pieces)
        .map(|piece| piece.vertices.len())
        .sum();
    let stride = corners.div_ceil(MOST_CORNERS).max(1);
    tracks
        .iter()
        .flat_map(|track| &track.pieces)
        .filter(|piece| piece.vertices.len() > 1)
        .map(|piece| {
            let last = piece.vertices.len() - 1;
            piece
                .vertices
                .iter()
                .enumerate()
                .filter(|(index, _)| index % stride == 0 || *index == last)
                .map(|(_, vertex)| vertex.place)
                .collect()
        })
        .collect()
}

/// Less driving in the dark calls for no caution.
const LEAST_DARK_H: f64 = 0.1;

fn cautions(survey: &Survey<'_>, source: OutlineSource, nights: &[Night]) -> Vec<Said> {
    let dark = nights.iter().filter_map(|night| night.dark.as_ref());
    let dark_h: f64 = dark.map(|dark| dark.driven_h).sum();
    let mut halts = survey.tracks.iter().flat_map(|track| &track.halts);
    let stood = halts.any(|halt| halt.at == HaltPlace::Elsewhere);
    let faults = survey.plan_faults.iter().map(|fault| Said::PlanFault {
        fault: fault.to_string(),
    });
    std::iter::once(Said::BladesOnLawn {})
        .chain((source == OutlineSource::Trace).then_some(Said::OutlineFromDrive {}))
        .chain(faults)
        .chain(stood.then_some(Said::DigAtSpot {}))
        .chain((dark_h >= LEAST_DARK_H).then_some(Said::DrivenInTheDark { dark_h }))
        .chain([Said::LocalCodes {}])
        .collect()
}
