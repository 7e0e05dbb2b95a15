//! What may be shown of a garden without telling where it is?
//!
//! Taken out: the origin and every latitude and longitude, dates and times of day, names (garden, files,
//! machines, makers of files, lawns, plan features, remarks), digests of inputs, excerpts of logs, and the drawn
//! plan, whose corners are places on Earth. Kept: everything in metres and seconds from the start. Names that
//! found their way into sentences are replaced there too, and so is anything in a sentence that looks like a date or like
//! degrees with many decimals.
//!
//! Known limit: the outline of a lawn is itself a shape that somebody could look for from above.

use std::collections::BTreeMap;
use tussock_types::{Findings, FitFound, Installation, PlanRole};

/// The findings without place on Earth, names, dates and digests.
pub fn redact(findings: &Findings) -> Findings {
    let mut private = findings.clone();
    let names = stand_ins(findings);
    private.settings.garden = Default::default();
    private.settings.positions.origin_lat_deg = None;
    private.settings.positions.origin_lon_deg = None;
    private.frame.origin_lat = None;
    private.frame.origin_lon = None;
    private.plan = None;
    for (index, input) in private.inputs.iter_mut().enumerate() {
        let facts = &mut input.facts;
        facts.name = format!("log-{}", index + 1);
        facts.sha256 = String::new();
        facts.made_by = None;
        facts.machine = names.stand_in(&facts.machine, || "machine".to_owned());
        for place in &mut facts.places {
            place.excerpt = String::new();
        }
        for notice in &mut facts.notices {
            notice.sentence = names.replace(&notice.sentence);
        }
    }
    private.span.start = None;
    private.span.end = None;
    private.span.start_unix_s = None;
    private
        .positions
        .steps
        .iter_mut()
        .for_each(|step| step.time = None);
    for (index, machine) in private.span.machines.iter_mut().enumerate() {
        *machine = names.stand_in(machine, || format!("machine-{}", index + 1));
    }
    let verdict = &mut private.log_verdict;
    replace_all(
        &names,
        std::iter::once(&mut verdict.advice).chain(&mut verdict.remarks),
    );
    for (index, lawn) in private
        .coverage
        .iter_mut()
        .flat_map(|coverage| &mut coverage.lawns)
        .enumerate()
    {
        lawn.name = names.stand_in(&lawn.name, || format!("lawn-{}", index + 1));
    }
    for pocket in &mut private.missed_pockets {
        (pocket.lat, pocket.lon) = (None, None);
        pocket.why = names.replace(&pocket.why);
        replace_all(&names, pocket.tape.iter_mut().map(|tape| &mut tape.from));
        for cause in pocket.causes.iter_mut().flatten() {
            replace_all(
                &names,
                cause.evidence_for.iter_mut().chain(&mut cause.evidence_against),
            );
        }
    }
    for pocket in &mut private.not_yet {
        (pocket.lat, pocket.lon) = (None, None);
        replace_all(&names, pocket.tape.iter_mut().map(|tape| &mut tape.from));
    }
    replace_all(
        &names,
        private.unseen.iter_mut().flatten().map(|ground| &mut ground.why),
    );
    for spot in &mut private.stuck_spots {
        (spot.lat, spot.lon) = (None, None);
        spot.why = names.replace(&spot.why);
    }
    for suggestion in private.suggestions.iter_mut().flatten() {
        suggestion.why = names.replace(&suggestion.why);
        replace_all(&names, suggestion.cautions.iter_mut());
    }
    if let Some(installation) = &mut private.installation {
        redact_installation(&names, installation);
    }
    for night in private.nights.iter_mut().flatten() {
        night.date = None;
    }
    if let Some(fit) = &mut private.fit {
        let FitFound {
            is_trusted: _,
            sentence,
            runs: _,
            rows,
        } = fit;
        replace_all(
            &names,
            std::iter::once(sentence).chain(rows.iter_mut().map(|row| &mut row.what)),
        );
    }
    if let Some(reference) = &mut private.reference {
        reference.name = "reference".to_owned();
    }
    replace_all(&names, private.cautions.iter_mut());
    private
}

/// Every field is named, so that one added later has to be thought of here.
fn redact_installation(names: &StandIns, installation: &mut Installation) {
    let Installation {
        setback_m: _,
        passages,
        unlisted_obstacles,
        out_of_reach: _,
        ways_home: _,
        outings: _,
        hours,
        lower_cut,
        turf,
        slope: _,
    } = installation;
    for passage in passages {
        (passage.lat, passage.lon) = (None, None);
    }
    for obstacle in unlisted_obstacles {
        (obstacle.lat, obstacle.lon) = (None, None);
    }
    let sentences = [
        hours.as_mut().map(|hours| &mut hours.sentence),
        lower_cut.as_mut().map(|lower| &mut lower.sentence),
        turf.as_mut().map(|turf| &mut turf.sentence),
    ];
    replace_all(names, sentences.into_iter().flatten());
}

fn replace_all<'a>(names: &StandIns, texts: impl Iterator<Item = &'a mut String>) {
    for text in texts {
        *text = names.replace(text);
    }
}

/// Names and what stands in for them, longest name first.
struct StandIns {
    pairs: Vec<(String, String)>,
}

fn stand_ins(findings: &Findings) -> StandIns {
    let mut pairs = BTreeMap::new();
    let mut add = |name: &str, stand_in: String| {
        let name = name.trim();
        // A name of one letter would eat into every word; a word for a role tells nothing.
        let is_role = PlanRole::ALL.iter().any(|role| role.word() == name);
        if name.chars().count() > 1 && name != stand_in && !is_role {
            pairs.entry(name.to_owned()).or_insert(stand_in);
        }
    };
    let garden = &findings.settings.garden;
    for text in garden.name.iter().chain(&garden.remarks) {
        add(text, "the garden".to_owned());
    }
    let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
    for feature in findings.plan.iter().flat_map(|plan| &plan.features) {
        let count = counts.entry(feature.role.word()).or_insert(0);
        *count += 1;
        add(&feature.name, format!("{}-{count}", feature.role.word()));
    }
    for (index, lawn) in findings
        .coverage
        .iter()
        .flat_map(|coverage| &coverage.lawns)
        .enumerate()
    {
        add(&lawn.name, format!("{}-{}", PlanRole::Lawn.word(), index + 1));
    }
    for (index, machine) in findings.span.machines.iter().enumerate() {
        add(machine, format!("machine-{}", index + 1));
    }
    for (index, input) in findings.inputs.iter().enumerate() {
        add(&input.facts.name, format!("log-{}", index + 1));
        add(&input.facts.machine, format!("machine-{}", index + 1));
        add(&input.facts.sha256, "the file".to_owned());
        if let Some(made_by) = &input.facts.made_by {
            add(made_by, "a logger".to_owned());
        }
    }
    let mut pairs: Vec<(String, String)> = pairs.into_iter().collect();
    pairs.sort_by_key(|(name, _)| std::cmp::Reverse(name.len()));
    StandIns { pairs }
}

impl StandIns {
    /// What stands in for a whole name; one too short to look for in sentences gets `other`.
    fn stand_in(&self, name: &str, other: impl Fn() -> String) -> String {
        let known = self.pairs.iter().find(|(known, _)| known == name.trim());
        known.map_or_else(other, |(_, stand_in)| stand_in.clone())
    }

    fn replace(&self, text: &str) -> String {
        let mut out = text.to_owned();
        for (name, stand_in) in &self.pairs {
            if out.contains(name.as_str()) {
                out = out.replace(name.as_str(), stand_in);
            }
        }
        without_dates_and_degrees(&out)
    }
}

/// Takes out runs of digits that read as a date, a time of day or degrees with four decimals and more.
fn without_dates_and_degrees(text: &str) -> String {
    let mut out = String::new();
    let mut run = String::new();
    for c in text.chars().chain(std::iter::once('\0')) {
        let joins = c.is_ascii_digit() || (!run.is_empty() && matches!(c, '-' | ':' | '.' | '/' | 'T' | 'Z'));
        if joins {
            run.push(c);
            continue;
        }
        if !run.is_empty() {
            let tail_at = run
                .trim_end_matches(|c: char| !c.is_ascii_digit() && c != 'Z')
                .len();
            let (core, tail) = run.split_at(tail_at);
            out.push_str(if tells_when_or_where(core) {
                "[left out]"
            } else {
                core
            });
            out.push_str(tail);
            run.clear();
        }
        if c != '\0' {
            out.push(c);
        }
    }
    out
}

fn tells_when_or_where(run: &str) -> bool {
    let marks = |mark: char| run.matches(mark).count();
    let is_date = marks('-') >= 2 || marks('/') >= 2 || marks('.') >= 2;
    let is_clock = marks(':') >= 1;
    let decimals = run.split_once('.').map_or(0, |(_, part)| part.len());
    is_date || is_clock || decimals >= 4
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dates_clocks_and_degrees_leave_sentences_and_other_numbers_stay() {
        assert_eq!(
            without_dates_and_degrees("since 2026-06-01T22:10:05Z at 47.1234567, about 3.25 m, 12 times."),
            "since [left out] at [left out], about 3.25 m, 12 times."
        );
        assert_eq!(
            without_dates_and_degrees("on 1.6.2026 at 22:10."),
            "on [left out] at [left out]."
        );
        assert_eq!(
            without_dates_and_degrees("exclusion-2 and 5-6 m"),
            "exclusion-2 and 5-6 m"
        );
    }
}
