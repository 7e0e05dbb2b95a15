//! From traces to findings.

use crate::calibrate::{Calibrated, calibrate};
use crate::coverage_count::{self, CoverageCount};
use crate::ground::{Ground, paint_width_m};
use crate::installation::Judged;
use crate::plan_offset::PlanShift;
use crate::pocket_verdicts::PocketVerdicts;
use crate::site_analysis::SiteAnalysis;
use crate::spots::{self, stuck_findings};
use crate::{
    Advice, AnalyseError, Calibrate, Job, Stage, TOOL_VERSION, advice, inspect, interval, nights, promise,
    verdict,
};
use tussock_coverage::swath;
use tussock_locate::{HaltPlace, Track};
use tussock_plane::{Leg, LegIndex};
use tussock_types::{Findings, LogLevel, OutlineSource, Place, SCHEMA_VERSION};

/// Says how much of the lawn was visited, what was missed, and where it got stuck.
///
/// Same job, same findings, to the last bit. Cost: a night of 28,800 fixes takes a few tenths of a second.
///
/// # Errors
/// [`AnalyseError`] where the job cannot be done at all. Poor data is not an error; the verdict in the findings says so.
pub fn analyse(job: &Job<'_>) -> Result<Findings, AnalyseError> {
    analyse_as(job, Calibrate::Auto)
}

/// The same, saying whether logs like this one are simulated to correct the visited fraction.
///
/// # Errors
/// As [`analyse()`].
pub fn analyse_as(job: &Job<'_>, wish: Calibrate) -> Result<Findings, AnalyseError> {
    let settings = job.settings;
    match settings.machine.cut_width_m {
        Some(cut_width_m) if !(0.05..=2.0).contains(&cut_width_m) => {
            return Err(AnalyseError::CutWidthOutOfRange { cut_width_m });
        }
        _ => {}
    }
    job.tell(Stage::Locating, 0.0);
    let ground = Ground::of(job)?;
    ground.must_be_a_garden(job)?;
    job.tell(Stage::Counting, 0.4);

    let paint_width_m = paint_width_m(settings);
    let (lawn_region, outline_source) = ground.lawn(settings)?;
    let sweeps = swath::sweeps_of(ground.all_swept(settings).iter(), settings);
    let counted = CoverageCount::of(&ground, &lawn_region, &sweeps, settings, paint_width_m, job.seed);
    let by_width = settings
        .machine
        .cut_width_m
        .is_none()
        .then(|| counted.by_width(&sweeps));
    let drive = coverage_count::drive(
        &counted.count.lawn,
        lawn_region.area_m2(),
        &ground,
        &sweeps,
        paint_width_m,
    );
    let calibrated = calibrate(job, wish, &ground, &lawn_region, &counted, drive.pattern);
    job.tell(Stage::Diagnosing, 0.7);

    let index = LegIndex::build(legs(&ground.tracks));
    let cells = counted.squares();
    let layout = SiteAnalysis::of(&ground, &lawn_region, &index, settings, paint_width_m);
    let mut log_verdict = verdict::verdict(&ground, job.traces, job.inputs, settings, Some(&drive));
    log_verdict.remarks.extend(calibrated.remark());
    let mut pockets = PocketVerdicts::of(&counted, &ground, &drive, &cells, &layout, job);
    pockets.hold_to(&mut log_verdict);
    let stuck_spots = stuck_findings(&ground, &layout);

    let nights = nights::nights(
        &ground,
        settings.machine.cut_width_m.map(|_| &counted),
        &sweeps,
        settings,
        paint_width_m,
    );
    let (known_width, mut coverage, over_time, revisits) = match settings.machine.cut_width_m {
        None => (false, None, None, None),
        Some(cut_width_m) => {
            let width_effect = counted.width_effect(&sweeps, cut_width_m, settings.machine.cut_width_sd_m);
            let visited = match &calibrated {
                Calibrated::Done(calibration) => calibration.estimate(&counted, width_effect),
                _ => interval::visited(&counted, &ground, &drive, settings, width_effect),
            };
            let coverage = counted.coverage(&ground, &pockets, visited, cut_width_m);
            let mut over_time = counted.over_time(&ground, &coverage, &sweeps, &nights, settings);
            if outline_source == OutlineSource::Trace || log_verdict.level == LogLevel::Unusable {
                over_time.promise = promise::CANNOT_TELL;
            }
            let revisits = counted.revisits(&ground, &settings.turf);
            (true, Some(coverage), Some(over_time), Some(revisits))
        }
    };
    let judged = Judged {
        ground: &ground,
        layout: &layout,
        counted: &counted,
        drive: &drive,
        settings,
        coverage: coverage.as_ref(),
        over_time: over_time.as_ref(),
        overdue_fraction: revisits.as_ref().and_then(|revisits| revisits.overdue_fraction),
        nights: &nights.nights,
        open_pockets: pockets.missed.len() + pockets.not_yet.len() + pockets.unseen.len(),
        missed_pockets: pockets.missed.len(),
        shows_all: log_verdict.positions == LogLevel::Good
            && log_verdict.level != LogLevel::Unusable
            && outline_source == OutlineSource::Plan,
    };
    let (installation, reachable_m2) = judged.installation();
    if let Some(coverage) = coverage.as_mut() {
        coverage.reachable_m2 = Some(reachable_m2);
    }
    let worn_lines = spots::worn_findings(&layout, &cells);
    let strays = spots::stray_findings(&ground, &layout);
    let PocketVerdicts {
        missed,
        not_yet,
        unseen,
        ..
    } = pockets;
    let mut findings = Findings {
        schema_version: SCHEMA_VERSION,
        tool_version: TOOL_VERSION.to_owned(),
        settings: settings.clone(),
        inputs: inspect::inputs(job),
        frame: ground.frame_findings(),
        log_verdict,
        span: inspect::span(&ground, job.traces),
        positions: inspect::positions(&ground.tracks),
        coverage,
        by_width,
        revisits,
        over_time,
        // Without a width the gaps between passes are a guess, and so are pockets.
        missed_pockets: if known_width { missed } else { Vec::new() },
        not_yet: if known_width { not_yet } else { Vec::new() },
        unseen: known_width.then_some(unseen),
        stuck_spots,
        worn_lines,
        strays,
        possible_stops: Some(spots::possible_stops(&ground)),
        installation: Some(installation),
        nights: Some(nights.nights),
        fit: None,
        reference: None,
        suggestions: None,
        cautions: cautions(&ground, outline_source),
        plan: job.plan.cloned(),
        lawn_outline: lawn_region.rings(),
        outline_source,
        driven_lines: driven_lines(&ground.tracks),
        cells: Some(cells),
    };
    if job.advice == Advice::Given {
        job.tell(Stage::Suggesting, 0.8);
        advice::advise(&mut findings, &ground, settings, job.seed);
    }
    if let Some(moved) = PlanShift::of(&ground) {
        moved.findings(&mut findings, ground.frame.as_ref());
    }
    job.tell(Stage::Diagnosing, 1.0);
    Ok(findings)
}

fn legs(tracks: &[Track]) -> Vec<Leg> {
    let mut legs: Vec<Leg> = tracks.iter().flat_map(Track::straight_legs).collect();
    legs.sort_by(|a, b| a.start_s.total_cmp(&b.start_s));
    legs
}

/// Lines for drawing, at most some ten thousand corners.
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

fn cautions(ground: &Ground, source: OutlineSource) -> Vec<String> {
    let mut cautions = vec![
        "Moving blades: stop and disable the machine before you touch it; keep children and pets off the lawn while it \
         works."
            .to_owned(),
    ];
    if source == OutlineSource::Trace {
        cautions.push(
            "No plan was given: the outline is drawn from the drive itself, so ground beyond the outermost drive is not \
             counted as missed and islands count as lawn. The visited fraction is flattering."
                .to_owned(),
        );
    }
    cautions.extend(ground.plan_faults.iter().map(|fault| format!("Plan: {fault}.")));
    let stood = ground
        .tracks
        .iter()
        .flat_map(|track| &track.halts)
        .any(|halt| halt.at == HaltPlace::Elsewhere);
    if stood {
        cautions.push(
            "Before you dig at a stuck spot: have buried cables and pipes located; private lines are not marked. Roots may \
             belong to a protected tree."
                .to_owned(),
        );
    }
    cautions.push("Local codes and the machine's own manual come first.".to_owned());
    cautions
}
