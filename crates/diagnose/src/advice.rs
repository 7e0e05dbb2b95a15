//! What to change, given what was found.

use crate::suggest::{self, Question};
use tussock_simulate::{Manner, Spell, StuckSpot};
use tussock_survey::Survey;
use tussock_survey::fitted::Fitted;
use tussock_types::{Findings, FitFound, Place, Said};

/// Places that caught the machine less often do not count yet.
const LEAST_EPISODES: u64 = 3;

/// Adds the fit and the suggestions to findings that are otherwise complete.
///
/// Adds nothing if there is no plan, no width or no missed pocket: the machine is fitted only when it is needed.
pub fn advise(findings: &mut Findings, survey: &Survey<'_>) {
    let (Some(site), Some(cut_width_m)) = (&survey.site, survey.settings().machine.cut_width_m) else {
        return;
    };
    if findings.missed_pockets.is_empty() {
        findings.suggestions = Some(Vec::new());
        return;
    }
    let refused = |said: Said| FitFound {
        is_trusted: false,
        said,
        runs: 0,
        rows: Vec::new(),
    };
    let spots: Vec<StuckSpot> = findings
        .stuck_spots
        .iter()
        .filter(|spot| spot.episodes >= LEAST_EPISODES)
        .map(|spot| StuckSpot {
            place: Place::new(spot.east_m, spot.north_m),
            radius_m: spot.radius_m.clamp(0.2, 3.0),
            probability: spot.episodes as f64 / (spot.episodes + spot.passes_through).max(1) as f64,
            duration: Spell::Fixed {
                s: 60.0 * spot.minutes / spot.episodes.max(1) as f64,
            },
            manner: Manner::Stands,
        })
        .collect();
    let fitted = match survey.machine() {
        Ok(fitted) => Fitted {
            stuck_spots: spots.clone(),
            ..fitted.clone()
        },
        Err(why) => {
            findings.fit = Some(refused(why.said()));
            findings.suggestions = Some(Vec::new());
            return;
        }
    };
    let (Some(track), Ok([turns, ..])) = (survey.tracks.first(), survey.turns()) else {
        return;
    };
    let found = suggest::suggest(&Question {
        site,
        fitted: &fitted,
        track,
        turns,
        pockets: &findings.missed_pockets,
        stuck_spots: &spots,
        cut_width_m,
        seed: survey.job().seed,
    });
    match found {
        Ok(found) => {
            for pocket in &mut findings.missed_pockets {
                pocket.suggestion_ids = found
                    .suggestions
                    .iter()
                    .filter(|suggestion| suggestion.pocket_ids.contains(&pocket.id))
                    .map(|suggestion| suggestion.id.clone())
                    .collect();
            }
            findings.fit = Some(found.fit);
            findings.change_set = found.change_set;
            findings.suggestions = Some(found.suggestions);
        }
        Err(why) => {
            findings.fit = Some(refused(Said::NotSimulated { why: why.to_string() }));
            findings.suggestions = Some(Vec::new());
        }
    }
}
