//! What can a template do with a value of the findings?
//!
//! Write it with its unit, put it into words from the catalogue, or draw it. A template reads the findings themselves, so a
//! figure is one step from the page; a misspelled name is an error when the page is filled, not a gap.

use crate::messages::{self, Voice, message};
use crate::words;
use minijinja::value::{Kwargs, Serde};
use minijinja::{Environment, Error, Value, context};
use serde::Deserialize;
use tussock_types::{
    Check, Comparison, Estimate, Findings, InputFindings, LogVerdict, OverTime, Place, PlanOffset,
    PredictionHeld, ReferenceFindings, Said, SetStep, Span, StuckSpot, Suggestion, Tape, WayHome,
};

/// Anything with a place: a pocket, a spot, a point asked about.
#[derive(Deserialize)]
struct Somewhere {
    lat: Option<f64>,
    lon: Option<f64>,
    east_m: f64,
    north_m: f64,
    #[serde(default)]
    tape: Vec<Tape>,
}

impl Somewhere {
    fn place(&self) -> Place {
        Place::new(self.east_m, self.north_m)
    }
}

/// The name of a filter, and what it writes.
type Filter<T> = (&'static str, fn(Voice, T) -> String);
type TextFilter = (&'static str, fn(&str) -> String);

/// Numbers in words.
const NUMBERS: [Filter<f64>; 21] = [
    ("area", words::area),
    ("bare_area", words::bare_area),
    ("chance", words::chance),
    ("compass", messages::compass),
    ("count", |voice, value| words::number(voice, value, 0)),
    ("days", words::days),
    ("duration", words::duration),
    ("efficiency", words::efficiency),
    ("figure", words::figure),
    ("fine_length", |voice, value_m| words::length(voice, value_m, 2)),
    ("hours", words::hours),
    ("metres", words::metres),
    ("millimetres", |voice, mm| words::millimetres(voice, mm, 1)),
    ("minutes", words::minutes),
    ("path_length", words::path_length),
    ("percent", words::percent),
    ("step", words::step),
    ("speed", words::speed),
    ("whole_cm", words::whole_cm),
    ("whole_minutes", words::whole_minutes),
    ("whole_percent", words::whole_percent),
];

/// Estimates in words.
const ESTIMATES: [Filter<Estimate>; 4] = [
    ("interval", words::interval),
    ("points", words::points_with_interval),
    ("range", words::range),
    ("with_interval", words::with_interval),
];

/// Text from outside, made harmless, and our own words.
const TEXTS: [TextFilter; 4] = [
    ("capital", words::capital),
    ("id", |text| words::plain(text, 12)),
    ("name", words::name),
    ("sentence", words::sentence),
];

/// If single logs differ by more than this part of a pocket, one of them proves nothing.
const WIDE: f64 = 0.5;

/// Gives a template all of them.
pub(crate) fn add(to: &mut Environment<'_>, voice: Voice) {
    for (name, write) in NUMBERS {
        to.add_filter(name, move |value: f64| write(voice, value));
    }
    for (name, write) in ESTIMATES {
        to.add_filter(name, move |estimate: Serde<Estimate>| write(voice, estimate.0));
    }
    for (name, write) in TEXTS {
        to.add_filter(name, move |text: String| write(&text));
    }
    to.add_filter("number", move |value: f64, decimals: usize| {
        words::number(voice, value, decimals)
    });
    to.add_filter("decimal", words::decimal);
    to.add_filter("hours_or", move |value_h: Option<f64>, without: String| {
        value_h.map_or(without, |value_h| words::hours(voice, value_h))
    });
    to.add_filter("plain", |text: String, letters: usize| {
        words::plain(&text, letters)
    });
    to.add_filter("whole_sentences", |text: String, letters: usize| {
        words::whole_sentences(&text, letters)
    });
    to.add_filter("key", |letter: char, index: usize| crate::map::key(letter, index));
    to.add_filter("listed", move |parts: Vec<String>, mark: Option<String>| {
        let mark = match mark.as_deref() {
            Some(";") => words::ListMark::Semicolon,
            _ => words::ListMark::Comma,
        };
        words::listed(voice, parts, mark)
    });
    to.add_filter("text", move |said: Serde<Said>| messages::said(voice, &said));
    to.add_filter("named", move |word: Value, id: String| {
        messages::named(voice, &id, &word)
    });
    to.add_filter("position", move |at: Serde<Somewhere>| {
        words::position(voice, at.lat, at.lon, at.place())
    });
    to.add_filter("tapes", move |at: Serde<Somewhere>| {
        words::tapes(voice, &at.tape, at.place())
    });
    to.add_filter("whereabouts", move |at: Serde<Somewhere>| {
        let tape = words::tape(voice, &at.tape, at.place());
        tape.unwrap_or_else(|| words::position(voice, at.lat, at.lon, at.place()))
    });
    to.add_filter("why_stuck", move |spot: Serde<StuckSpot>| {
        words::why_stuck(voice, &spot)
    });
    to.add_filter("verdict", move |verdict: Serde<LogVerdict>| {
        words::verdict_sentence(voice, &verdict)
    });
    to.add_filter("check_is", move |check: Serde<Check>| {
        words::check_is(voice, &check)
    });
    to.add_filter("reach", move |over_time: Serde<OverTime>| {
        words::reach(voice, &over_time)
    });
    to.add_filter("fit_figure", move |what: String| words::fit_figure(voice, &what));
    to.add_filter("fit_scale", move |what: String| words::fit_scale(voice, &what));
    to.add_filter("left", |text: String, width: usize| format!("{text:<width$}"));
    to.add_filter("right", |text: String, width: usize| words::right(&text, width));
    to.add_filter("fixes", move |span: Serde<Span>| words::fixes(voice, &span));
    to.add_filter("ways_home", move |ways: Serde<Vec<WayHome>>| {
        words::ways_home(voice, &ways)
    });
    to.add_filter("is_wide", |estimate: Serde<Estimate>| {
        (estimate.high.zip(estimate.low)).is_some_and(|(high, low)| high - low > WIDE)
    });
    to.add_filter("ladder", move |suggestion: Serde<Suggestion>| {
        words::ladder(voice, &suggestion)
    });
    to.add_filter("change_set", move |steps: Serde<Vec<SetStep>>| {
        words::change_set(voice, &steps)
    });
    to.add_filter("cost", move |suggestion: Serde<Suggestion>| {
        words::cost(voice, &suggestion)
    });
    to.add_filter("is_beside", |offset: Serde<PlanOffset>| offset.is_beside());
    to.add_filter("prediction_meaning", move |held: Serde<PredictionHeld>| {
        words::prediction_meaning(voice, &held)
    });
    to.add_filter("place_in", place_in);
    to.add_function("say", move |id: String, values: Kwargs| {
        let named = values.args().map(|name| Ok((name, values.peek::<Value>(name)?)));
        let named = named.collect::<Result<Vec<_>, Error>>()?;
        let values: Vec<_> = named
            .iter()
            .map(|(name, value)| (*name, messages::value(value)))
            .collect();
        Ok::<_, Error>(message(voice, &id, &values))
    });
}

/// The position in a list of an item with an id.
fn place_in(id: Value, list: Value) -> Result<Option<usize>, Error> {
    let mut items = list.try_iter()?;
    Ok(items.position(|item| item.get_attr("id").is_ok_and(|of| of == id)))
}

/// Fields of a result by name, for a template.
macro_rules! fields {
    ($of:ident: $($field:ident),+ $(,)?) => {
        minijinja::context! { $($field => minijinja::value::Serde(&$of.$field)),+ }
    };
}
pub(crate) use fields;

/// The findings as a template sees them: everything except the long lists of places and squares, which are drawn.
pub(crate) fn shown(findings: &Findings) -> Value {
    fields!(findings: tool_version, settings, log_verdict, checks, span, positions, plan_fit, coverage, by_width, revisits, over_time,
        missed_pockets, not_yet, unseen, stuck_spots, worn_lines, strays, possible_stops, installation, fit, suggestions, change_set,
        cautions, outline_source, drawn_outline, visit)
}

/// A log file as a template sees it: of the skipped places, only the first for each reason.
pub(crate) fn input(voice: Voice, input: &InputFindings) -> Value {
    let facts = &input.facts;
    let skipped = facts.skipped.iter().map(|(reason, pieces)| {
        let place = facts.places.iter().find(|place| place.reason == *reason);
        context! {
            pieces,
            why => messages::named(voice, "skip-reason", reason),
            line => place.map(|place| place.line),
            excerpt => place.map(|place| &place.excerpt[..]),
        }
    });
    context! {
        format => facts.format.words(),
        skipped => skipped.collect::<Vec<Value>>(),
        ..fields!(facts: name, made_by, machine, fixes, sha256, bytes, bytes_used, resolution_m, notices)
    }
}

/// What both windows say about a surveyed path.
pub(crate) fn surveyed(voice: Voice, found: &ReferenceFindings) -> Value {
    context! {
        compared_fixes => found.compared_fixes,
        head => words::reference_head(voice, found),
        heads => words::reference_heads(voice).to_vec(),
        rows => Serde(words::reference_rows(voice, found)),
        note => words::reference_note(voice, found),
    }
}

/// What both windows say about a change.
pub(crate) fn compared(voice: Voice, comparison: &Comparison) -> Value {
    let found = fields!(comparison: tool_version, difference, common_m2, changed, before, after, pockets, predictions, cautions);
    context! {
        sentence => words::comparison_said(voice, comparison),
        meaning => words::difference_meaning(voice, comparison.difference.is_real),
        sources => words::difference_sources(voice, &comparison.difference),
        pocket_sum => words::pocket_changes(voice, &comparison.pockets),
        ..found
    }
}
