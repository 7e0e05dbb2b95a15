//! What is handed to the customer?
//!
//! One page in one file: no script, no network (a content security policy forbids it), pictures as data. It
//! answers in this order: is the log good enough, what was missed, why, what to change; then the map and the
//! rest, deeper things folded away. Every number has its unit, its interval where there is one, and a plain
//! sentence.
//!
//! Text from outside is cut, freed of acting characters and escaped by the template engine; only drawings made
//! here are let through unescaped.

mod compare;
mod facts;
mod plots;
mod stills;

use crate::map::{Drawing, Furniture};
use crate::terminal::{later, verdict_sentence};
use crate::words::{self, area, hours, percent, plural};
use crate::{ReportError, ramp, raster};
use facts::{Activity, Change, Fact, Input, NotYet, Pocket, Spot};
use minijinja::{AutoEscape, Environment, value::Serde};
use serde::Serialize;
use time::format_description::well_known::Rfc3339;
use time::macros::format_description;
use time::{OffsetDateTime, UtcOffset};
use tussock_types::{Comparison, Findings, OutlineSource, PlanRole};

const PAGE: &str = include_str!("../../templates/report.html");
const COMPARE_PAGE: &str = include_str!("../../templates/compare.html");
const STYLE: &str = include_str!("../../templates/report.css");

/// Everything that the template shows.
#[derive(Serialize)]
struct Page {
    style: &'static str,
    version: String,
    title: String,
    garden: Option<String>,
    remarks: Option<String>,
    when: String,
    verdict: Verdict,
    missed: Missed,
    why: Vec<Why>,
    change: Change4,
    map: String,
    map_key: Vec<Key>,
    visit_key: Vec<Key>,
    pockets: Vec<Pocket>,
    not_yet: Vec<NotYet>,
    spots: Vec<Spot>,
    unseen: Vec<[String; 3]>,
    worn: Vec<[String; 2]>,
    strays: Vec<[String; 3]>,
    changes: Vec<Change>,
    stills: Vec<stills::Still>,
    still_key: [String; 2],
    over_time: Option<OverTimePlot>,
    histogram: Option<String>,
    revisits: Vec<Fact>,
    activities: Vec<Activity>,
    lawns: Vec<[String; 3]>,
    widths: Vec<[String; 2]>,
    method: Vec<Fact>,
    inputs: Vec<Input>,
    cautions: Vec<String>,
    placeless: bool,
}

#[derive(Serialize)]
struct Verdict {
    word: &'static str,
    sentence: String,
    advice: String,
    remarks: Vec<String>,
}

#[derive(Serialize)]
struct Missed {
    figure: String,
    caption: String,
    interval: String,
    meaning: String,
    strip: Option<String>,
    parts: Vec<Part>,
    flattering: bool,
}

#[derive(Serialize)]
struct Part {
    class: &'static str,
    label: &'static str,
    figure: String,
}

#[derive(Serialize)]
struct Why {
    id: String,
    head: String,
    text: String,
}

/// The fourth answer.
#[derive(Serialize)]
struct Change4 {
    word: String,
    text: String,
    walk: Vec<Walk>,
}

/// A place to walk to.
#[derive(Serialize)]
struct Walk {
    id: String,
    to: String,
    look: String,
}

#[derive(Serialize)]
struct Key {
    sample: String,
    words: String,
}

#[derive(Serialize)]
struct OverTimePlot {
    svg: String,
    facts: Vec<Fact>,
}

/// The findings as `report.html`.
///
/// # Errors
/// [`ReportError::Page`] when the template cannot be filled, which would be a fault of ours.
pub fn html(findings: &Findings) -> Result<String, ReportError> {
    render("report.html", PAGE, page(findings))
}

/// A comparison as `comparison.html`.
///
/// # Errors
/// [`ReportError::Page`] when the template cannot be filled, which would be a fault of ours.
pub fn html_comparison(comparison: &Comparison) -> Result<String, ReportError> {
    render("comparison.html", COMPARE_PAGE, compare::page(comparison))
}

fn render(name: &str, template: &str, page: impl Serialize) -> Result<String, ReportError> {
    let failed = |source| ReportError::Page { source };
    let mut environment = Environment::new();
    environment.set_auto_escape_callback(|_| AutoEscape::Html);
    environment.add_template(name, template).map_err(failed)?;
    let template = environment.get_template(name).map_err(failed)?;
    template.render(Serde(page)).map_err(failed)
}

fn page(findings: &Findings) -> Page {
    let garden = &findings.settings.garden;
    let name = garden
        .name
        .as_deref()
        .map(words::name)
        .filter(|name| !name.is_empty());
    let drawing = Drawing::of(findings, Furniture::Bare);
    let sentences = |texts: &[String]| texts.iter().map(|text| words::sentence(text)).collect::<Vec<_>>();
    let visit_key = drawing
        .ground
        .as_ref()
        .map(|ground| visit_key(ground.scale))
        .unwrap_or_default();
    Page {
        style: STYLE,
        version: words::plain(&findings.tool_version, 20),
        title: name.clone().unwrap_or_else(|| "Lawn report".to_owned()),
        garden: name,
        remarks: garden
            .remarks
            .as_deref()
            .map(words::sentence)
            .filter(|text| !text.is_empty()),
        when: when(findings),
        verdict: Verdict {
            word: if findings.log_verdict.good_enough {
                "Yes"
            } else {
                "No"
            },
            sentence: verdict_sentence(&findings.log_verdict),
            advice: words::sentence(&findings.log_verdict.advice),
            remarks: sentences(&findings.log_verdict.remarks),
        },
        missed: missed(findings),
        why: why(findings),
        change: change(findings),
        map: drawing.svg(),
        map_key: map_key(findings),
        visit_key,
        pockets: findings.missed_pockets.iter().map(facts::pocket).collect(),
        not_yet: facts::not_yet(findings),
        spots: findings.stuck_spots.iter().map(facts::spot).collect(),
        unseen: unseen(findings),
        worn: worn(findings),
        strays: strays(findings),
        changes: findings.suggestions.iter().flatten().map(facts::change).collect(),
        stills: stills::stills(findings),
        still_key: [ramp::hex(raster::BEFORE), ramp::hex(raster::SINCE)],
        over_time: over_time(findings),
        histogram: findings.revisits.as_ref().and_then(plots::histogram),
        revisits: findings
            .revisits
            .as_ref()
            .map(facts::revisit_facts)
            .unwrap_or_default(),
        activities: facts::activities(findings),
        lawns: lawns(findings),
        widths: widths(findings),
        method: facts::method_facts(findings),
        inputs: facts::inputs(findings),
        cautions: sentences(&findings.cautions),
        placeless: findings.frame.origin().is_none(),
    }
}

/// An offset from UTC as the settings write it; anything else is UTC.
fn offset(text: Option<&str>) -> UtcOffset {
    let parsed = text.and_then(|text| {
        let format = format_description!("[offset_hour sign:mandatory]:[offset_minute]");
        UtcOffset::parse(text.trim(), format).ok()
    });
    parsed.unwrap_or(UtcOffset::UTC)
}

fn when(findings: &Findings) -> String {
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
        (Some(start), Some(end)) => format!("{start} to {end} ({zone_words})"),
        _ => "without dates".to_owned(),
    };
    let logs = plural(findings.inputs.len(), "log file", "log files");
    let driven = words::duration(findings.span.driving_s);
    format!("{span}. {driven} of driving, from {logs}.")
}

fn missed(findings: &Findings) -> Missed {
    let flattering = findings.outline_source == OutlineSource::Trace;
    let Some(coverage) = &findings.coverage else {
        return Missed {
            figure: "Not counted".to_owned(),
            caption: "no cutting width was given".to_owned(),
            interval: String::new(),
            meaning: "How much was driven over depends on the width of the cutting disc; the table for each \
                      width is below."
                .to_owned(),
            strip: None,
            parts: Vec::new(),
            flattering,
        };
    };
    let parts = [
        ("visited", "driven over", coverage.visited_m2),
        ("missed", "missed", coverage.missed_m2),
        ("notyet", "not yet", coverage.not_yet_m2),
        ("unseen", "without evidence", coverage.unseen_m2),
        ("sliver", "gaps too thin to see", coverage.sliver_m2),
    ];
    let strip: Vec<(&str, f64)> = parts
        .iter()
        .map(|&(class, _, part_m2)| (class, part_m2))
        .collect();
    Missed {
        figure: percent(coverage.visited_fraction.estimate),
        caption: format!("of {} lawn was driven over", area(coverage.lawn_m2)),
        interval: words::interval(coverage.visited_fraction),
        meaning: facts::of_a_hundred(findings, coverage),
        strip: Some(plots::strip(&strip)),
        parts: parts
            .into_iter()
            .filter(|&(class, _, part_m2)| class != "unseen" || part_m2 > 0.0)
            .map(|(class, label, part_m2)| Part {
                class,
                label,
                figure: area(part_m2),
            })
            .collect(),
        flattering,
    }
}

fn why(findings: &Findings) -> Vec<Why> {
    let mut rows = Vec::new();
    for pocket in findings.missed_pockets.iter().take(4) {
        let first = pocket.causes.as_ref().and_then(|causes| causes.first());
        rows.push(Why {
            id: words::plain(&pocket.id, 12),
            head: match first {
                Some(found) => format!(
                    "{} ({})",
                    words::cause(found.cause),
                    words::whole_percent(found.weight_fraction)
                ),
                None => "not luck".to_owned(),
            },
            text: match first {
                Some(found) => format!(
                    "{} {}",
                    words::cause_meaning(found.cause),
                    words::sentence(&pocket.why)
                ),
                None => words::sentence(&pocket.why),
            },
        });
    }
    for spot in findings.stuck_spots.iter().take(2) {
        rows.push(Why {
            id: words::plain(&spot.id, 12),
            head: format!("{} lost here", words::minutes(spot.minutes)),
            text: words::sentence(&spot.why),
        });
    }
    rows
}

fn change(findings: &Findings) -> Change4 {
    let suggestions = findings.suggestions.as_deref().unwrap_or_default();
    if let Some(first) = suggestions.first() {
        let more = match suggestions.len() - 1 {
            0 => String::new(),
            more => format!(" {} below.", plural(more, "more change is", "more changes are")),
        };
        return Change4 {
            word: words::suggestion(first.kind).to_owned(),
            text: format!(
                "{} Predicted for the pocket: {} if nothing changes, {} if changed ({}).{more}",
                words::sentence(&first.why),
                percent(first.predicted.pocket_fraction_before.estimate),
                percent(first.predicted.pocket_fraction_after.estimate),
                words::interval(first.predicted.pocket_fraction_after)
            ),
            walk: Vec::new(),
        };
    }
    if !findings.log_verdict.good_enough {
        return Change4 {
            word: "Log again first".to_owned(),
            text: "Change nothing in the garden on the strength of this log. Mend the log as said under 1."
                .to_owned(),
            walk: Vec::new(),
        };
    }
    let walk = walk(findings);
    if !walk.is_empty() {
        return Change4 {
            word: "Walk there and look".to_owned(),
            text:
                "What a change would bring has not been predicted yet. Take a tape and look at these places \
                   before you change anything:"
                    .to_owned(),
            walk,
        };
    }
    let decide_h = findings
        .not_yet
        .iter()
        .filter_map(|pocket| pocket.hours_to_decide)
        .fold(None, later);
    match (findings.coverage.is_some(), decide_h) {
        (false, _) => Change4 {
            word: "Give the cutting width".to_owned(),
            text: "Measure the width of the cutting disc and count again.".to_owned(),
            walk,
        },
        (true, Some(decide_h)) => Change4 {
            word: "Nothing yet".to_owned(),
            text: format!(
                "Let it run on. After {} of driving in all, what is still bare can be told from bad luck.",
                hours(decide_h)
            ),
            walk,
        },
        (true, None) => Change4 {
            word: "Nothing".to_owned(),
            text: "No ground was left out that luck does not explain.".to_owned(),
            walk,
        },
    }
}

fn walk(findings: &Findings) -> Vec<Walk> {
    let pockets = findings.missed_pockets.iter().take(4).map(|pocket| {
        let place = tussock_types::Place::new(pocket.east_m, pocket.north_m);
        let to = words::tape(&pocket.tape).unwrap_or_else(|| words::position(pocket.lat, pocket.lon, place));
        Walk {
            id: words::plain(&pocket.id, 12),
            to,
            look: "Is there a way in that is wider than the machine? Does the line at which it turns lie where the \
                   plan shows it? Is anything standing, lying or growing in the way?"
                .to_owned(),
        }
    });
    let spots = findings.stuck_spots.iter().take(3).map(|spot| {
        let place = tussock_types::Place::new(spot.east_m, spot.north_m);
        Walk {
            id: words::plain(&spot.id, 12),
            to: words::position(spot.lat, spot.lon, place),
            look: "Look for ruts, roots, a lip, soft ground, and for marks of wheels that spun.".to_owned(),
        }
    });
    pockets.chain(spots).collect()
}

fn visit_key(scale: ramp::VisitScale) -> Vec<Key> {
    let ticks = scale.ticks();
    let last = ticks.len();
    let key = |(index, visits): (usize, f64)| Key {
        sample: ramp::hex(scale.colour(visits)),
        words: match visits {
            0.0 => "never".to_owned(),
            v if index == last => format!("{} and more", words::number(v, 0)),
            v => words::number(v, 0),
        },
    };
    std::iter::once(0.0)
        .chain(ticks.iter().copied())
        .enumerate()
        .map(key)
        .collect()
}

fn map_key(findings: &Findings) -> Vec<Key> {
    let entries = crate::map::legend_entries(findings);
    let key = |(sample, words): (String, &'static str)| Key {
        sample: format!(
            "<svg viewBox=\"0 -14 34 20\" width=\"34\" height=\"20\" aria-hidden=\"true\">{sample}</svg>"
        ),
        words: words.to_owned(),
    };
    let mut keys: Vec<Key> = entries.into_iter().map(key).collect();
    let station = findings
        .plan
        .as_ref()
        .is_some_and(|plan| plan.of_role(PlanRole::Station).next().is_some());
    if station {
        keys.push(Key {
            sample: "<svg viewBox=\"0 -14 34 20\" width=\"34\" height=\"20\" aria-hidden=\"true\"><path \
                     d=\"M8,-5h18v9h-18z M6.5,-5l10.5,-7 10.5,7z\" fill=\"#fffefa\" stroke=\"#1c2431\" \
                     stroke-width=\"1.6\"/></svg>"
                .to_owned(),
            words: "charging station".to_owned(),
        });
    }
    keys
}

fn unseen(findings: &Findings) -> Vec<[String; 3]> {
    let row = |ground: &tussock_types::UnseenGround| {
        [
            words::plain(&ground.id, 12),
            area(ground.area_m2),
            words::sentence(&ground.why),
        ]
    };
    findings.unseen.iter().flatten().map(row).collect()
}

fn worn(findings: &Findings) -> Vec<[String; 2]> {
    let row = |worn: &tussock_types::WornLine| {
        [
            words::plain(&worn.id, 12),
            format!("{} times the lawn's mean", words::number(worn.times_mean, 1)),
        ]
    };
    findings.worn_lines.iter().flatten().map(row).collect()
}

fn strays(findings: &Findings) -> Vec<[String; 3]> {
    let row = |stray: &tussock_types::Stray| {
        [
            words::plain(&stray.id, 12),
            words::duration(stray.duration_s),
            format!("{} outside", words::metres(stray.farthest_m)),
        ]
    };
    findings.strays.iter().flatten().map(row).collect()
}

fn over_time(findings: &Findings) -> Option<OverTimePlot> {
    let over_time = findings.over_time.as_ref()?;
    let promise = &findings.settings.promise;
    let svg = plots::over_time(over_time, promise.visited_fraction)?;
    let mut list = Vec::new();
    if let Some(efficiency) = over_time.efficiency {
        list.push(facts::fact(
            "Pattern efficiency",
            words::whole_percent(efficiency),
            format!("The machine {}.", words::efficiency(efficiency)),
        ));
    }
    let reach = |reach_h: Option<f64>| reach_h.map_or_else(|| "out of reach".to_owned(), hours);
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
        Some(probability) => format!(
            "Probability that it is kept: {}.",
            words::whole_percent(probability)
        ),
        None => "Its probability is not worked out yet.".to_owned(),
    };
    list.push(facts::fact(
        "The promise",
        words::promise(over_time.promise.verdict).to_owned(),
        format!(
            "{} of the lawn within {}. {probability}",
            percent(promise.visited_fraction),
            words::days(promise.days)
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
            format!("{} cm", words::number(row.cut_width_m * 100.0, 0)),
            figure,
        ]
    };
    findings.by_width.iter().flatten().map(row).collect()
}
