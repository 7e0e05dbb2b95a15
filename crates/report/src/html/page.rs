//! Everything that the page shows, gathered.

use super::facts::{self, ChangeEntry, Fact, NotYetEntry, PocketEntry, SpotEntry, TimeRow, WornEntry};
use super::handout::{self, Handout};
use super::method::{self, Input};
use super::plots;
use super::site_facts::{self, Fit, SiteFacts, Surveyed, Work};
use super::summary::{self, Answer};
use super::{Head, stills};
use crate::map::{Drawing, Furniture, Grounds, key, legend_entries, page_entries};
use crate::messages::{named, say};
use crate::raster::wait_colour;
use crate::words::{self, area, hours, percent};
use crate::{ramp, raster};
use serde::Serialize;
use time::format_description::well_known::Rfc3339;
use time::macros::format_description;
use time::{OffsetDateTime, UtcOffset};
use tussock_types::math;
use tussock_types::{Findings, Place, PlanRole, Said};

/// Everything that the template shows.
#[derive(Serialize)]
pub(super) struct Page {
    head: Head,
    version: String,
    title: String,
    remarks: Option<String>,
    when: String,
    log_remarks: Vec<String>,
    answers: Vec<Answer>,
    finder: Vec<FinderEntry>,
    map: Map,
    pockets: Vec<PocketEntry>,
    changes: Vec<ChangeEntry>,
    not_yet: Vec<NotYetEntry>,
    spots: Vec<SpotEntry>,
    unseen: Vec<ListEntry>,
    worn: Vec<WornEntry>,
    strays: Vec<ListEntry>,
    possible_stops: Vec<String>,
    lie: Option<SiteFacts>,
    work: Option<Work>,
    stills: Vec<stills::Still>,
    still_key: [String; 2],
    over_time: Option<OverTimePlot>,
    histogram: Option<String>,
    waits: Option<String>,
    revisits: Vec<Fact>,
    nights: Option<plots::Nights>,
    activities: Vec<TimeRow>,
    lawns: Vec<[String; 3]>,
    widths: Vec<[String; 2]>,
    has_width: bool,
    has_interval: bool,
    fit: Option<Fit>,
    surveyed: Option<Surveyed>,
    method: Vec<Fact>,
    inputs: Vec<Input>,
    cautions: Vec<String>,
    paper: Handout,
}

/// The map and what stands around it.
#[derive(Serialize)]
pub(super) struct Map {
    pub(super) svg: String,
    pub(super) scale: Option<String>,
    /// Grounds to choose from: key, words, and the key of each.
    grounds: Vec<GroundKey>,
    /// The legend, which is the switchboard.
    key: Vec<Switch>,
    placeless: bool,
    is_tall: bool,
}

#[derive(Serialize)]
struct GroundKey {
    layer: &'static str,
    name: &'static str,
    title: String,
    steps: Vec<Step>,
}

#[derive(Serialize)]
pub(super) struct Step {
    colour: String,
    words: String,
}

#[derive(Serialize)]
struct Switch {
    layer: &'static str,
    is_on: bool,
    samples: Vec<[String; 2]>,
}

/// A place on the map, in the list beside it.
#[derive(Serialize)]
struct FinderEntry {
    key: String,
    id: String,
    words: String,
}

/// A row with an id that can be found on the map.
#[derive(Serialize)]
struct ListEntry {
    key: String,
    id: String,
    text: String,
}

#[derive(Serialize)]
struct OverTimePlot {
    svg: String,
    facts: Vec<Fact>,
}

pub(super) fn page(findings: &Findings) -> Page {
    let garden = &findings.settings.garden;
    let sentences = |said: &[Said]| said.iter().map(crate::text).collect::<Vec<_>>();
    let revisits = findings.revisits.as_ref();
    let plot_waits = revisits.and_then(|revisits| plots::waits(revisits.interval_h, allowed_h(findings)));
    Page {
        head: Head::new(),
        version: words::plain(&findings.tool_version, 20),
        title: title(findings),
        remarks: garden
            .remarks
            .as_deref()
            .map(words::sentence)
            .filter(|text| !text.is_empty()),
        when: when(findings),
        log_remarks: sentences(&findings.log_verdict.remarks),
        answers: summary::answers(findings),
        finder: finder(findings),
        map: map(findings),
        pockets: facts::pockets(findings),
        changes: facts::changes(findings),
        not_yet: facts::not_yet(findings),
        spots: facts::spots(findings),
        unseen: unseen(findings),
        worn: facts::worn(findings),
        strays: strays(findings),
        possible_stops: possible_stops(findings),
        lie: site_facts::lie(findings),
        work: site_facts::work(findings),
        stills: stills::stills(findings),
        still_key: [ramp::hex(raster::BEFORE), ramp::hex(raster::SINCE)],
        over_time: over_time(findings),
        histogram: revisits.and_then(plots::histogram),
        waits: plot_waits,
        revisits: revisits.map(facts::revisit_facts).unwrap_or_default(),
        nights: findings.nights.as_deref().and_then(plots::nights),
        activities: facts::activities(findings),
        lawns: lawns(findings),
        widths: widths(findings),
        has_width: findings.coverage.is_some(),
        has_interval: findings
            .coverage
            .as_ref()
            .is_some_and(|coverage| coverage.visited_fraction.low.is_some()),
        fit: findings.fit.as_ref().map(site_facts::fit),
        surveyed: findings.reference.as_ref().map(site_facts::surveyed),
        method: method::method_facts(findings),
        inputs: method::inputs(findings),
        cautions: sentences(&findings.cautions),
        paper: handout::paper(findings),
    }
}

/// The name of the garden, or what the page is.
pub(super) fn title(findings: &Findings) -> String {
    let name = findings.settings.garden.name.as_deref().map(words::name);
    name.filter(|name| !name.is_empty())
        .unwrap_or_else(|| say!("lawn-report"))
}

/// Longest allowed wait, where the grass is known.
fn allowed_h(findings: &Findings) -> Option<f64> {
    let turf = findings.installation.as_ref()?.turf.as_ref()?;
    Some(turf.allowed_interval_h).filter(|h| h.is_finite() && *h > 0.0)
}

/// End of the log, in seconds from its start: of the last night, else of the last visit.
fn end_s(findings: &Findings) -> f64 {
    let nights = findings.nights.iter().flatten().map(|night| night.end_s);
    let visits = findings.cells.iter().flat_map(|cells| &cells.last_visit_s);
    let last = |values: &mut dyn Iterator<Item = f64>| values.filter(|s| s.is_finite()).fold(0.0, f64::max);
    last(&mut nights.clone()).max(last(&mut visits.map(|&s| f64::from(s))))
}

fn map(findings: &Findings) -> Map {
    let drawing = Drawing::of(findings, Furniture::Bare);
    let grounds = Grounds::All {
        allowed_h: allowed_h(findings),
        end_s: end_s(findings),
    };
    Map {
        svg: drawing.page_svg("Map of the lawn, north up", grounds),
        scale: drawing.scale_svg(findings),
        grounds: drawing
            .ground
            .as_ref()
            .map(|ground| ground_keys(findings, ground))
            .unwrap_or_default(),
        key: switches(findings),
        placeless: findings.frame.origin().is_none(),
        is_tall: drawing.height > 0.75 * drawing.width,
    }
}

fn ground_keys(findings: &Findings, ground: &raster::Ground) -> Vec<GroundKey> {
    let mut keys = vec![GroundKey {
        layer: "visits",
        name: "visits",
        title: say!("times-driven-over-darker"),
        steps: visit_key(ground.scale),
    }];
    if let Some((low_h, high_h)) = ground.waits_h() {
        let step = |index: usize| {
            let share = index as f64 / 4.0;
            Step {
                colour: ramp::hex(wait_colour(share)),
                words: hours(low_h * math::powf(high_h / low_h, share)),
            }
        };
        let mut steps: Vec<Step> = (0..=4).map(step).collect();
        steps.push(Step {
            colour: ramp::hex(ramp::NEVER),
            words: say!("less-than-twice"),
        });
        keys.push(GroundKey {
            layer: "waits",
            name: "revisit interval",
            title: say!("usual-time-between-two"),
            steps,
        });
    }
    if let Some(allowed_h) = allowed_h(findings) {
        keys.push(GroundKey {
            layer: "overdue",
            name: "overdue",
            title: say!("last-visit-longer-ago", hours = hours(allowed_h)),
            steps: vec![
                Step {
                    colour: "url(#hatch)".to_owned(),
                    words: "overdue".to_owned(),
                },
                Step {
                    colour: ramp::hex(raster::BEFORE),
                    words: say!("time-again"),
                },
            ],
        });
    }
    keys
}

/// Entries of one layer are one switch.
fn switches(findings: &Findings) -> Vec<Switch> {
    let mut switches: Vec<Switch> = Vec::new();
    for entry in legend_entries(findings).into_iter().chain(page_entries(findings)) {
        let sample = [
            format!(
                "<svg viewBox=\"0 -14 34 20\" width=\"34\" height=\"20\" aria-hidden=\"true\">{}</svg>",
                entry.sample
            ),
            entry.words.to_owned(),
        ];
        match switches
            .iter_mut()
            .find(|switch| switch.layer == entry.layer.key())
        {
            Some(switch) => switch.samples.push(sample),
            None => switches.push(Switch {
                layer: entry.layer.key(),
                is_on: entry.layer.is_on(),
                samples: vec![sample],
            }),
        }
    }
    let has_station = findings
        .plan
        .as_ref()
        .is_some_and(|plan| plan.of_role(PlanRole::Station).next().is_some());
    if has_station && let Some(switch) = switches.iter_mut().find(|switch| switch.layer == "plan") {
        switch
            .samples
            .push([STATION.to_owned(), say!("charging-station")]);
    }
    switches
}

const STATION: &str = "<svg viewBox=\"0 -14 34 20\" width=\"34\" height=\"20\" aria-hidden=\"true\"><path \
    d=\"M8,-5h18v9h-18z M6.5,-5l10.5,-7 10.5,7z\" fill=\"#fffefa\" stroke=\"#1c2431\" stroke-width=\"1.6\"/></svg>";

/// Places in the list beside the map.
fn finder(findings: &Findings) -> Vec<FinderEntry> {
    let mut found = Vec::new();
    let mut add = |letter: char, index: usize, id: &str, text: String| {
        found.push(FinderEntry {
            key: key(letter, index),
            id: words::plain(id, 8),
            words: text,
        });
    };
    for (index, pocket) in findings.missed_pockets.iter().enumerate().take(12) {
        add(
            'm',
            index,
            &pocket.id,
            say!("missed-area-again", area = area(pocket.area_m2)),
        );
    }
    for (index, spot) in findings.stuck_spots.iter().enumerate().take(6) {
        add(
            's',
            index,
            &spot.id,
            say!("stuck-lost", time = words::minutes(spot.minutes)),
        );
    }
    for (index, change) in findings.suggestions.iter().flatten().enumerate().take(8) {
        add(
            'g',
            index,
            &change.id,
            named("suggestion", &change.kind).to_lowercase(),
        );
    }
    for (index, pocket) in findings.not_yet.iter().enumerate().take(6) {
        add(
            'n',
            index,
            &pocket.id,
            say!("not-yet-area", area = area(pocket.area_m2)),
        );
    }
    found
}

/// An offset from UTC as the settings write it; anything else is UTC.
fn offset(text: Option<&str>) -> UtcOffset {
    let parsed = text.and_then(|text| {
        let format = format_description!("[offset_hour sign:mandatory]:[offset_minute]");
        UtcOffset::parse(text.trim(), format).ok()
    });
    parsed.unwrap_or(UtcOffset::UTC)
}

pub(super) fn when(findings: &Findings) -> String {
    let zone = offset(findings.settings.garden.time_zone.as_deref());
    let day = format_description!("[day padding:none] [month repr:long] [year], [hour]:[minute]");
    let read = |text: &Option<String>| {
        let time = OffsetDateTime::parse(text.as_deref()?, &Rfc3339).ok()?;
        time.to_offset(zone).format(day).ok()
    };
    let zone_words = match zone {
        zone if zone.is_utc() => "UTC".to_owned(),
        zone => {
            let (hours, minutes, _) = zone.as_hms();
            format!("UTC{hours:+03}:{:02}", minutes.unsigned_abs())
        }
    };
    let span = match (read(&findings.span.start), read(&findings.span.end)) {
        (Some(start), Some(end)) => say!("to-start", start = start, end = end, zone_words = zone_words),
        _ => say!("without-dates"),
    };
    let logs = say!("count-log-file", count = findings.inputs.len());
    let driven = words::duration(findings.span.driving_s);
    say!("driving-from", span = span, driven = driven, logs = logs)
}

pub(super) fn visit_key(scale: ramp::VisitScale) -> Vec<Step> {
    let ticks = scale.ticks();
    let last = ticks.len();
    let step = |(index, visits): (usize, f64)| Step {
        colour: ramp::hex(scale.colour(visits)),
        words: match visits {
            0.0 => "never".to_owned(),
            v if index == last => format!("{}+", words::number(v, 0)),
            v => words::number(v, 0),
        },
    };
    std::iter::once(0.0)
        .chain(ticks.iter().copied())
        .enumerate()
        .map(step)
        .collect()
}

fn unseen(findings: &Findings) -> Vec<ListEntry> {
    let row = |(index, ground): (usize, &tussock_types::UnseenGround)| ListEntry {
        key: key('u', index),
        id: words::plain(&ground.id, 12),
        text: say!(
            "without-evidence-area",
            area = area(ground.area_m2),
            said = crate::text(&ground.why)
        ),
    };
    findings.unseen.iter().flatten().enumerate().map(row).collect()
}

fn strays(findings: &Findings) -> Vec<ListEntry> {
    let row = |(index, stray): (usize, &tussock_types::Stray)| ListEntry {
        key: key('x', index),
        id: words::plain(&stray.id, 12),
        text: say!(
            "outside-boundary-for-after",
            length = words::metres(stray.farthest_m),
            time = words::duration(stray.duration_s),
            time_2 = words::duration(stray.start_s),
            log = if stray.came_back {
                "it came back by itself"
            } else {
                "it did not come back within this log"
            }
        ),
    };
    findings.strays.iter().flatten().enumerate().map(row).collect()
}

fn possible_stops(findings: &Findings) -> Vec<String> {
    let row = |stop: &tussock_types::PossibleStop| {
        say!(
            "silence-after-start-may",
            time = words::minutes(stop.most_minutes),
            time_2 = words::duration(stop.start_s),
            place = words::position(None, None, Place::new(stop.east_m, stop.north_m))
        )
    };
    findings
        .possible_stops
        .iter()
        .flatten()
        .take(20)
        .map(row)
        .collect()
}

fn over_time(findings: &Findings) -> Option<OverTimePlot> {
    let over_time = findings.over_time.as_ref()?;
    let promise = &findings.settings.promise;
    let svg = plots::over_time(
        over_time,
        findings
            .coverage
            .as_ref()
            .map(|coverage| coverage.visited_fraction),
        promise.visited_fraction,
    )?;
    let mut list = Vec::new();
    if let Some(efficiency) = over_time.efficiency {
        list.push(facts::fact(
            "Pattern efficiency",
            words::whole_percent(efficiency),
            say!("machine-efficiency", efficiency = words::efficiency(efficiency)),
        ));
    }
    let reach = |reach_h: Option<f64>| reach_h.map_or_else(|| say!("out-reach"), hours);
    list.push(facts::fact(
        "To 95 % of the lawn",
        reach(over_time.hours_to_95),
        "Hours of driving at this pace; out of reach where part of the lawn does not fill up at all.",
    ));
    list.push(facts::fact(
        "To 99 %",
        reach(over_time.hours_to_99),
        "The same for all but a hundredth.",
    ));
    let probability = match over_time.promise.probability {
        Some(probability) => say!(
            "probability-kept-percent-again",
            percent = words::whole_percent(probability)
        ),
        None => say!("its-probability-not-worked"),
    };
    list.push(facts::fact(
        "The promise",
        named("promise", &over_time.promise.verdict).to_owned(),
        say!(
            "lawn-within-percent-days-probability",
            percent = percent(promise.visited_fraction),
            days = words::days(promise.days),
            probability = probability
        ),
    ));
    Some(OverTimePlot { svg, facts: list })
}

fn lawns(findings: &Findings) -> Vec<[String; 3]> {
    let lawns = findings.coverage.iter().flat_map(|coverage| &coverage.lawns);
    let rows: Vec<[String; 3]> = lawns
        .map(|lawn| {
            let fraction = lawn.visited_fraction;
            let figure = format!("{} ({})", percent(fraction.estimate), words::interval(fraction));
            [words::name(&lawn.name), area(lawn.lawn_m2), figure]
        })
        .collect();
    if rows.len() > 1 { rows } else { Vec::new() }
}

fn widths(findings: &Findings) -> Vec<[String; 2]> {
    let row = |row: &tussock_types::WidthRow| {
        let figure = format!(
            "{} ({})",
            percent(row.visited_fraction.estimate),
            words::interval(row.visited_fraction)
        );
        [
            say!("cm-number", number = words::number(row.cut_width_m * 100.0, 0)),
            figure,
        ]
    };
    findings.by_width.iter().flatten().map(row).collect()
}
