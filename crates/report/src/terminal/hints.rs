//! What could the reader do next to learn more?

use crate::messages::Voice;
use crate::messages::say;
use crate::words;
use tussock_types::{Findings, OutlineSource, Place, PromiseVerdict, Said};

/// What to do to learn more, most important first: sentences without a full stop, for lines that begin with `hint:`.
pub fn hints(findings: &Findings, voice: Voice) -> Vec<String> {
    let mut hints = Vec::new();
    if findings.coverage.is_none() {
        hints.push(say!(voice, "measure-width-cutting-disc-give"));
    }
    if findings.outline_source == OutlineSource::Trace {
        hints.push(say!(voice, "walk-once-round-lawn"));
        let unturned = findings.drawn_outline.as_ref().and_then(|drawn| drawn.unturned);
        hints.extend(unturned.map(|edge| {
            let at = Place::new(edge.east_m, edge.north_m);
            say!(
                voice,
                "walk-first-hint",
                length = words::metres(voice, edge.length_m),
                place = words::position(voice, edge.lat, edge.lon, at)
            )
        }));
    }
    if (findings.log_verdict.remarks.iter()).any(|said| said.is_of_plan() && *said != Said::TurnsNotAtEdge {})
    {
        hints.push(say!(voice, "mended-plan-is-written"));
    }
    let driven_h = findings.span.driving_s / 3600.0;
    if let Some(more_h) = super::decide_h(findings)
        .map(|h| h - driven_h)
        .filter(|h| h.is_finite() && *h > 0.0)
        && findings.missed_pockets.is_empty()
    {
        hints.push(say!(
            voice,
            "log-driving-more-give",
            hours = words::hours(voice, more_h)
        ));
    }
    let cannot_tell = findings
        .over_time
        .as_ref()
        .is_some_and(|over_time| over_time.promise.verdict == PromiseVerdict::CannotTell);
    if cannot_tell && hints.is_empty() {
        hints.push(say!(
            voice,
            "promise-give-logs-as",
            days = words::days(voice, findings.settings.promise.days)
        ));
    }
    hints
}
