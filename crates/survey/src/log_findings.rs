//! What a log contains, as stated in the findings: files, times, position errors.

use crate::Job;
use crate::Survey;
use crate::plan_offset::PlanShift;
use std::collections::HashMap;
use tussock_locate::activities::{self, Activity};
use tussock_locate::{Gap, Piece, Track, plan_fit};
use tussock_plane::{Joins, Vector};
use tussock_types::{
    DrivenZone, InputFindings, LeftOut, MachineFindings, NoiseSource, Place, PlanEdge, PlanFit,
    PlanFitVerdict, PlanOffset, PositionFindings, ReceiverStep, Said, Silence, Span, Trace, math,
};

/// The files, as they were given.
pub fn inputs(job: &Job<'_>) -> Vec<InputFindings> {
    job.inputs
        .iter()
        .cloned()
        .map(|facts| InputFindings { facts })
        .collect()
}

/// Times and lengths of all tracks together.
pub fn span(survey: &Survey<'_>, traces: &[Trace]) -> Span {
    let tracks = &survey.tracks;
    let (start_s, end_s) = survey.span_s();
    let sum = |value: &dyn Fn(&Track) -> f64| tracks.iter().map(value).sum::<f64>();
    let guides = survey.guides();
    let lines = survey.lines(&guides);
    let mut spent_s: HashMap<Activity, f64> = HashMap::new();
    for spell in tracks.iter().flat_map(|track| activities::spells(track, lines)) {
        *spent_s.entry(spell.activity).or_default() += spell.end_s - spell.start_s;
    }
    let spent_s = |activity: Activity| spent_s.get(&activity).copied().unwrap_or(0.0);
    let tells_transit = tracks.iter().any(|track| activities::tells_transit(track, lines));
    let knows_station = tracks.iter().any(|track| track.station.is_some());
    let count = |value: &dyn Fn(&Track) -> usize| tracks.iter().map(|track| value(track) as u64).sum::<u64>();
    let (poor, jumps) = (
        count(&|track| track.gated_quality),
        count(&|track| track.gated_jumps),
    );
    let outings = tracks
        .iter()
        .map(|track| track.outings)
        .fold(None, |all: Option<usize>, one| match (all, one) {
            (Some(all), Some(one)) => Some(all + one),
            (one, other) => one.or(other),
        });
    Span {
        start: rfc3339(start_s),
        end: rfc3339(end_s),
        start_unix_s: start_s.is_finite().then_some(start_s),
        fixes_read: traces.iter().map(|trace| trace.len() as u64).sum(),
        fixes_used: count(&|track| track.fixes_used),
        fixes_carried: count(&|track| track.carried.iter().map(|carried| carried.fixes).sum()),
        period_s: tracks.first().map_or(1.0, |track| track.period_s),
        fixes_left_out: [(LeftOut::PoorQuality, poor), (LeftOut::Jump, jumps)]
            .into_iter()
            .filter(|(_, fixes)| *fixes > 0)
            .collect(),
        path_m: sum(&Track::path_m),
        driving_s: spent_s(Activity::Driving) + spent_s(Activity::Transit) + spent_s(Activity::Reversing),
        transit_s: tells_transit.then(|| spent_s(Activity::Transit)),
        at_station_s: knows_station.then(|| spent_s(Activity::AtStation)),
        halted_s: spent_s(Activity::Halted) + spent_s(Activity::Turning),
        carried_s: Some(spent_s(Activity::Carried)),
        silent_s: spent_s(Activity::Silent),
        speed_mps: tracks.iter().find_map(|track| track.speed_mps),
        outings: outings.map(|outings| outings as u64),
    }
}

/// Silences of all tracks together, longest first.
pub fn silences(survey: &Survey<'_>) -> Vec<Silence> {
    let (start_s, _) = survey.span_s();
    let silence = |gap: &Gap| Silence {
        start: rfc3339(gap.start_s),
        end: rfc3339(gap.end_s),
        start_s: gap.start_s - start_s,
        duration_s: gap.end_s - gap.start_s,
        moved_m: gap.moved_m,
        place: None,
        bridged_m2: None,
    };
    let gaps = survey.tracks.iter().flat_map(|track| &track.gaps);
    let mut silences: Vec<Silence> = gaps.map(silence).collect();
    silences.sort_by(|a, b| {
        b.duration_s
            .total_cmp(&a.duration_s)
            .then(a.start_s.total_cmp(&b.start_s))
    });
    silences.truncate(20);
    silences
}

/// Seconds since 1970 as RFC 3339 in UTC, to the second.
pub fn rfc3339(unix_s: f64) -> Option<String> {
    if !unix_s.is_finite() {
        return None;
    }
    let time = time::OffsetDateTime::from_unix_timestamp(unix_s.floor() as i64).ok()?;
    time.format(&time::format_description::well_known::Rfc3339).ok()
}

/// What is known about the position error: that of the machine with the poorest positions.
pub fn positions(survey: &Survey<'_>) -> PositionFindings {
    let (tracks, poorest) = (&survey.tracks, survey.poorest());
    PositionFindings {
        white_m: poorest.map(|track| track.noise.white_m),
        drift_m: poorest.and_then(|track| track.noise.drift_m),
        filtered_m: None,
        filtered_time_s: None,
        drift_time_s: poorest.and_then(|track| track.noise.drift_time_s),
        tails: None,
        source: poorest.map_or(NoiseSource::Default, |track| {
            let stood = track
                .halts
                .iter()
                .any(|halt| halt.at == tussock_locate::HaltPlace::Station);
            match track.noise.source {
                NoiseSource::StationScatter if !stood => NoiseSource::RestScatter,
                source => source,
            }
        }),
        steps: tracks
            .iter()
            .flat_map(|track| &track.steps)
            .map(|step| ReceiverStep {
                time: rfc3339(step.time_s),
                east_m: step.east_m,
                north_m: step.north_m,
            })
            .collect(),
        anchored: poorest
            .and_then(|track| track.anchored.as_ref())
            .map(|anchored| anchored.is_held()),
    }
}

/// Radius from which a thing that turns the machine counts as ground of its own: a flower bed, a pond.
pub const ISLAND_RADIUS_M: f64 = 0.4;

/// Metre logs explain up to 0.86 of the turns with the plan of another garden, and 0.96 and more with the right one.
pub const TOLD_FRACTION: f64 = 0.9;

/// How plan and log are displaced against each other, if the log shows it.
pub fn plan_fit(survey: &Survey<'_>, driven_zones: Vec<DrivenZone>) -> Option<PlanFit> {
    let offset = plan_offset(survey)?;
    let displaced = survey.plan_fit().into_iter().flat_map(|fit| fit.displaced());
    // The edges are those of the plan as drawn; whatever was moved with it lies where the log shows it.
    let laid = survey.laid.as_ref().filter(|laid| laid.moved.is_some());
    let by = laid.map(|_| PlanShift::from(&offset));
    let edges: Vec<PlanEdge> = displaced.map(|fit| plan_edge(fit, by.as_ref())).collect();
    let is_explained = survey
        .plan_fit()
        .is_none_or(|fit| fit.explained_fraction >= TOLD_FRACTION);
    let is_told = survey.laid.is_some() || (is_held(survey) && is_explained);
    Some(PlanFit {
        verdict: match (is_told, edges.is_empty(), offset.is_beside()) {
            (false, ..) => PlanFitVerdict::Unknown,
            (true, false, _) => PlanFitVerdict::EdgesDiffer,
            (true, true, true) => PlanFitVerdict::Moved,
            (true, true, false) => PlanFitVerdict::Fits,
        },
        offset: Some(offset),
        edges,
        driven_zones,
        unlisted_obstacles: Vec::new(),
        unlisted_islands: Vec::new(),
    })
}

/// Whether the plan may be displaced, or belong to another garden, as far as the log shows: then nothing can be blamed on
/// it.
pub fn is_plan_unsure(survey: &Survey<'_>, fit: &PlanFit) -> bool {
    let may_be_another = |turns: &plan_fit::TurnsFit| turns.error_m >= plan_fit::MOST_TELLING_M;
    fit.verdict == PlanFitVerdict::Unknown && survey.plan_fit().is_none_or(may_be_another)
}

/// The message that an edge lies elsewhere than drawn.
pub fn edge_said(edge: &plan_fit::EdgeFit) -> Said {
    let out = -edge.edge.inwards();
    let edge_deg = math::atan2(out.east, out.north).to_degrees();
    let (offset_m, turns) = (edge.inside_m.abs(), edge.turns as u64);
    match edge.inside_m > 0.0 {
        true => Said::EdgeInside {
            edge_deg,
            offset_m,
            turns,
        },
        false => Said::EdgeOutside {
            edge_deg,
            offset_m,
            turns,
        },
    }
}

fn plan_edge(fit: &plan_fit::EdgeFit, by: Option<&PlanShift>) -> PlanEdge {
    let end = |end: Vector| {
        let place = Place::from(end + fit.edge.inwards() * fit.inside_m);
        by.map_or(place, |by| by.place(place))
    };
    PlanEdge {
        edge: fit.number as u64,
        offset_m: -fit.inside_m,
        sd_m: fit.sd_m,
        line: [end(fit.edge.from), end(fit.edge.end())],
    }
}

/// Zones that the machine drives over like the lawn: those in which the path is at least half as dense. Only the part that
/// is deeper inside than position errors and bodies reach counts.
pub fn driven_zones(survey: &Survey<'_>) -> Vec<DrivenZone> {
    const AS_DENSE: f64 = 0.5;
    const LEAST_M: f64 = 5.0;
    let drive = survey.must_be_a_garden().and_then(|()| survey.drive());
    let (Some(site), Ok(drive)) = (&survey.site, drive) else {
        return Vec::new();
    };
    let margin_m = 0.3 + 2.0 * survey.position_error_m();
    let usual_per_m = drive.path_m / drive.lawn_m2.max(1e-9);
    let line = |piece: &Piece| -> Vec<Place> { piece.vertices.iter().map(|vertex| vertex.place).collect() };
    let lines: Vec<Vec<Place>> = (survey.tracks.iter())
        .flat_map(|track| track.pieces.iter().map(line))
        .collect();
    let found = site.exclusions.iter().filter_map(|zone| {
        let deep = zone.shape.grown_by(-margin_m, Joins::Mitred).ok()?;
        let path_m: f64 = lines.iter().map(|line| deep.length_inside_m(line)).sum();
        let is_driven = path_m > LEAST_M.max(AS_DENSE * usual_per_m * deep.area_m2());
        is_driven.then_some(DrivenZone {
            feature: zone.feature,
            path_m,
        })
    });
    found.collect()
}

/// Whether the edges of the plan held the path of the log with the poorest positions.
fn is_held(survey: &Survey<'_>) -> bool {
    let anchored = survey.poorest().and_then(|track| track.anchored.as_ref());
    anchored.is_some_and(|anchored| anchored.is_held())
}

/// Each machine.
pub fn machines(tracks: &[Track]) -> Vec<MachineFindings> {
    let machine = |track: &Track| MachineFindings {
        id: track.machine.clone(),
        model: None,
        speed_mps: track.speed_mps,
        turning_radius_m: None,
        setback_m: None,
        legs_m: None,
        turns: None,
        trusted: None,
        outings: track.outings.map(|outings| outings as u64),
    };
    tracks.iter().map(machine).collect()
}

/// How the plan lies in the log's frame, if there was a plan to show it: in the log with the poorest positions, or in all
/// logs if they did not need it.
pub fn plan_offset(survey: &Survey<'_>) -> Option<PlanOffset> {
    let Some(laid) = &survey.laid else {
        return held_offset(survey.poorest()?);
    };
    Some(laid.fit.offset)
}

/// The offset that was found together with the path.
pub fn held_offset(track: &Track) -> Option<PlanOffset> {
    let anchored = track.anchored.as_ref()?;
    // Without edges only the station shows it, and only if the machine stood there.
    let is_told = anchored.edges != tussock_locate::anchor::EdgeUse::None || anchored.offset.is_beside();
    is_told.then_some(anchored.offset)
}

/// How far the plan was moved to match the log; `None` if it was not, or if the path was found in the log's frame.
pub fn shift(survey: &Survey<'_>) -> Option<PlanShift> {
    if survey.tracks.iter().any(|track| track.anchored.is_none()) {
        return None;
    }
    let offset = held_offset(survey.poorest()?).filter(PlanOffset::is_beside)?;
    Some(PlanShift::from(&offset))
}
