//! Which pattern was it?
//!
//! A guess with its evidence, from the path alone: which part of it lies in lanes (a long leg beside and along the long leg before), which
//! part in spirals (turning one way for whole turns), which part in rounds (corner after corner to one side), how well the directions of
//! legs agree, and how it turns at edges. Chance is named only where legs point everywhere and nothing of the others shows: a strip, lanes
//! far apart and rounds inwards are no chance because they are not the usual lanes. The thresholds are ours (common practice, no source);
//! what lies between them is [`GuessedPattern::Undetermined`], and so is everything where positions do not carry such detail. How
//! often that is right, on two generators: `docs/patterns.md`.

use super::in_lanes::{FAR_BESIDE_WIDTHS, InLanes, MOST_ERROR_M, long_legs};
use serde::{Deserialize, Serialize};
use tussock_coverage::luck;
use tussock_locate::{PathMethod, Piece};
use tussock_survey::AnalyseError;
use tussock_survey::{Survey, pattern};
use tussock_types::math;
use tussock_types::{Place, plural};

/// A pattern that can be recognised in a log.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum GuessedPattern {
    /// Straight on until an edge, then another way.
    Roaming,
    /// To and fro in lanes.
    Lanes,
    /// Spirals.
    Spiral,
    /// Lanes for a part and chance for another.
    Combined,
    /// The log does not show it.
    Undetermined,
}

/// The guess and its evidence.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PatternGuess {
    /// The guess.
    pub pattern: GuessedPattern,
    /// Path that was examined.
    pub path_m: f64,
    /// Part of it in long legs that run beside and along the previous long leg.
    pub lanes_fraction: f64,
    /// Part of it in stretches that turn one way for two turns or more.
    pub spirals_fraction: f64,
    /// Part of it in long legs that turn one way, corner after corner, for two turns or more.
    pub rounds_fraction: f64,
    /// How well the directions of long legs agree, up to half or quarter turns: 0 for none, 1 for one.
    pub axis_agreement_fraction: f64,
    /// Turns at an edge.
    pub edge_turns: u64,
    /// Standard deviation of a place on the path.
    pub position_sd_m: f64,
    /// For and against, one sentence each.
    pub evidence: Vec<String>,
}

/// Shorter paths do not show a pattern.
const LEAST_PATH_M: f64 = 200.0;
/// Adjacent lanes are no farther apart than this many cutting widths or, without a width, than this distance.
const BESIDE_WIDTHS: f64 = 2.0;
const BESIDE_M: f64 = 0.6;
/// From this agreement on the legs have an axis; below the other they have none.
const ONE_AXIS: f64 = 0.9;
const NO_AXIS: f64 = 0.6;
/// Chords into which a path is cut to search for spirals.
const CHORD_M: f64 = 0.8;
/// From chord to chord a spiral turns by less than this, and one way for this many turns.
const MOST_BEND_RAD: f64 = 1.2;
const LEAST_TURNS: f64 = 2.0;
/// It may bend back by this much, because of position error.
const BACK_RAD: f64 = 0.08;
/// Nearly all, some, hardly any.
const MOST: f64 = 0.7;
const SOME: f64 = 0.2;
const HARDLY: f64 = 0.1;

/// Guesses the pattern of surveyed logs.
///
/// # Errors
/// [`AnalyseError`].
pub fn guess_pattern(survey: &Survey<'_>) -> Result<PatternGuess, AnalyseError> {
    survey.must_be_a_garden()?;
    let beside_m = survey
        .settings()
        .machine
        .cut_width_m
        .map_or(BESIDE_M, |width_m| BESIDE_WIDTHS * width_m);
    // Lanes far apart are still lanes, where nearly all of the path lies in such and the legs have one axis.
    let far_m = beside_m * FAR_BESIDE_WIDTHS / BESIDE_WIDTHS;
    let (mut path_m, mut spirals_m) = (0.0, 0.0);
    let (mut lanes, mut far_lanes) = (InLanes::default(), InLanes::default());
    let mut directions = Vec::new();
    let mut has_legs = true;
    for track in &survey.tracks {
        path_m += track.path_m();
        has_legs &= track.method != PathMethod::Chords;
        for piece in &track.pieces {
            let long = long_legs(piece);
            lanes.add(&long, beside_m);
            far_lanes.add(&long, far_m);
            directions.extend(long.iter().map(|leg| (leg.along.angle_rad(), leg.length_m)));
            spirals_m += in_spirals_m(piece);
        }
    }
    let position_sd_m = survey.position_error_m();
    let edge_turns = match survey.site {
        Some(_) => survey.turn_pairs().len() as u64,
        None => 0,
    };
    let part = |of_m: f64| {
        if path_m > 0.0 {
            (of_m / path_m).min(1.0)
        } else {
            0.0
        }
    };
    let (lanes_fraction, spirals_fraction) = (part(lanes.path_m), part(spirals_m));
    let rounds_fraction = pattern::rounds_fraction(&survey.tracks);
    let axis_agreement_fraction = luck::agreement(&directions, 2.0).max(luck::agreement(&directions, 4.0));
    let mut evidence = vec![
        format!(
            "{:.0} % of the path lies in long legs beside and along the one before.",
            100.0 * lanes_fraction
        ),
        format!(
            "{:.0} % of the path turns one way for at least {LEAST_TURNS} turns.",
            100.0 * spirals_fraction
        ),
        format!(
            "{:.0} % turns one way in corners, round after round.",
            100.0 * rounds_fraction
        ),
        format!("The directions of long legs agree to {axis_agreement_fraction:.2} (0 for none, 1 for one)."),
    ];
    evidence.push(match &survey.site {
        Some(_) => format!(
            "{} at an edge could be told.",
            plural(edge_turns, "turn", "turns")
        ),
        None => "Without a plan turns at an edge cannot be told.".to_owned(),
    });
    let pattern = if path_m < LEAST_PATH_M {
        evidence.push(format!(
            "{path_m:.0} m of path are too short for a pattern; {LEAST_PATH_M} m are not."
        ));
        GuessedPattern::Undetermined
    } else if position_sd_m > MOST_ERROR_M || !has_legs {
        evidence.push(format!(
            "Positions are good to {position_sd_m:.2} m or too far apart in time: lanes side by side cannot be told."
        ));
        GuessedPattern::Undetermined
    } else if lanes_fraction >= MOST && spirals_fraction < SOME {
        GuessedPattern::Lanes
    } else if part(far_lanes.path_m) >= MOST
        && spirals_fraction < HARDLY
        && axis_agreement_fraction >= ONE_AXIS
    {
        evidence.push("Lanes lie far apart.".to_owned());
        GuessedPattern::Lanes
    } else if spirals_fraction >= SOME && lanes_fraction < SOME {
        GuessedPattern::Spiral
    } else if lanes_fraction >= SOME
        && spirals_fraction < HARDLY
        && rounds_fraction < HARDLY
        && axis_agreement_fraction < ONE_AXIS
    {
        GuessedPattern::Combined
    } else if part(far_lanes.path_m) < SOME
        && spirals_fraction < HARDLY
        && rounds_fraction < SOME
        && axis_agreement_fraction < NO_AXIS
    {
        evidence.push("Neither lanes nor spirals: the way after a turn seems drawn by chance.".to_owned());
        GuessedPattern::Roaming
    } else {
        evidence.push("Several patterns would show these parts.".to_owned());
        GuessedPattern::Undetermined
    };
    Ok(PatternGuess {
        pattern,
        path_m,
        lanes_fraction,
        spirals_fraction,
        rounds_fraction,
        axis_agreement_fraction,
        edge_turns,
        position_sd_m,
        evidence,
    })
}

/// Path in stretches that turn one way for whole turns.
fn in_spirals_m(piece: &Piece) -> f64 {
    let mut places: Vec<Place> = Vec::new();
    for pair in piece.vertices.windows(2) {
        let (from, to) = (pair[0].place, pair[1].place);
        if places.is_empty() {
            places.push(from);
        }
        // Long legs are cut so that straight ones show as straight; short ones are collected until they are long enough.
        let Some(last) = places.last().copied() else {
            continue;
        };
        let gap_m = last.distance_m(to);
        let steps = (gap_m / CHORD_M).floor() as usize;
        for step in 1..=steps {
            let share = step as f64 * CHORD_M / gap_m;
            places.push(last.towards(to, share));
        }
    }
    let headings: Vec<f64> = places
        .windows(2)
        .map(|pair| math::atan2(pair[1].north_m - pair[0].north_m, pair[1].east_m - pair[0].east_m))
        .collect();
    let tau = std::f64::consts::TAU;
    let bends: Vec<f64> = headings
        .windows(2)
        .map(|pair| {
            let raw = pair[1] - pair[0];
            raw - (raw / tau).round() * tau
        })
        .collect();
    let mut inside = vec![false; bends.len()];
    for side in [1.0, -1.0] {
        let (mut first, mut turned) = (0, 0.0);
        for at in 0..=bends.len() {
            let goes_on = bends.get(at).is_some_and(|bend| {
                let bend = side * bend;
                bend > -BACK_RAD && bend < MOST_BEND_RAD
            });
            if goes_on {
                turned += side * bends[at];
                continue;
            }
            if turned >= LEAST_TURNS * tau {
                inside[first..at].fill(true);
            }
            (first, turned) = (at + 1, 0.0);
        }
    }
    inside.iter().filter(|is_in| **is_in).count() as f64 * CHORD_M
}
