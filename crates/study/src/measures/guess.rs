//! Which pattern was it?
//!
//! A guess with its evidence, from the path alone: which part of it lies in lanes (a long leg beside and along the long leg before), which
//! part in spirals (turning one way for whole turns), which part in rounds (corner after corner to one side), how well the directions of
//! legs agree, and how it turns at edges. Chance is named only where legs point everywhere and nothing of the others shows: a strip, lanes
//! far apart and rounds inwards are no chance because they are not the usual lanes. The thresholds are ours (common practice, no source);
//! what lies between them is [`GuessedPattern::Undetermined`], and so is everything where positions do not carry such detail. How
//! often that is right, on two generators: `docs/patterns.md`.

use serde::{Deserialize, Serialize};
use tussock_coverage::luck;
use tussock_locate::{PathMethod, Piece, Vertex};
use tussock_plane::Vector;
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
/// With larger errors lanes merge into one band.
const MOST_ERROR_M: f64 = 0.3;
/// Long legs of lanes.
const LEAST_LEG_M: f64 = 1.0;
/// Legs of two adjacent lanes differ by less than this (cosine of 8 degrees).
const BESIDE_COS: f64 = 0.990;
/// And are no farther apart than this many cutting widths or, without a width, than this distance.
const BESIDE_WIDTHS: f64 = 2.0;
const BESIDE_M: f64 = 0.6;
/// Lanes far apart are still lanes, where nearly all of the path lies in such and the legs have one axis.
const FAR_BESIDE_WIDTHS: f64 = 5.0;
/// From this agreement on the legs have an axis; below the other they have none.
const ONE_AXIS: f64 = 0.9;
const NO_AXIS: f64 = 0.6;
/// So many lanes in a row, each beside the one before: chance turns a machine straight back once in a while, not three times.
const LEAST_CHAIN: usize = 4;
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
    let far_m = beside_m * FAR_BESIDE_WIDTHS / BESIDE_WIDTHS;
    let (mut path_m, mut lanes_m, mut far_lanes_m, mut spirals_m) = (0.0, 0.0, 0.0, 0.0);
    let mut directions = Vec::new();
    let mut has_legs = true;
    for track in &survey.tracks {
        path_m += track.path_m();
        has_legs &= track.method != PathMethod::Chords;
        for piece in &track.pieces {
            let long = long_legs(piece);
            lanes_m += in_lanes_m(&long, beside_m);
            far_lanes_m += in_lanes_m(&long, far_m);
            directions.extend(long.iter().map(|leg| (leg.2.angle_rad(), leg.3)));
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
    let (lanes_fraction, spirals_fraction) = (part(lanes_m), part(spirals_m));
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
    } else if part(far_lanes_m) >= MOST && spirals_fraction < HARDLY && axis_agreement_fraction >= ONE_AXIS {
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
    } else if part(far_lanes_m) < SOME
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

/// A long leg: from, to, unit vector and length.
type LongLeg = (Place, Place, Vector, f64);

fn long_legs(piece: &Piece) -> Vec<LongLeg> {
    let leg = |pair: &[Vertex]| {
        let (from, to) = (pair[0].place, pair[1].place);
        let (along, length_m) = (Vector::direction(from, to)?, from.distance_m(to));
        (length_m >= LEAST_LEG_M).then_some((from, to, along, length_m))
    };
    piece.vertices.windows(2).filter_map(leg).collect()
}

/// Path in long legs of which several in a row run back beside the one before.
fn in_lanes_m(long: &[LongLeg], beside_m: f64) -> f64 {
    let (mut lanes_m, mut first, mut back) = (0.0, 0, 0);
    for end in 1..=long.len() {
        if let Some(b) = long.get(end) {
            let a = &long[end - 1];
            let turned = a.2.dot(b.2);
            // The way across from the end of the one to the line of the other: the next lane begins beside the end.
            let off = Vector::between(a.1, b.0);
            let (aside_m, along_m) = (a.2.cross(off).abs(), a.2.dot(off).abs());
            if turned <= -BESIDE_COS && aside_m <= beside_m && along_m <= LEAST_LEG_M + beside_m {
                back += 1;
                continue;
            }
            // A lane that is driven in two legs goes straight on, and so does a curved leg.
            if turned >= BESIDE_COS && aside_m <= 0.5 * beside_m && along_m <= LEAST_LEG_M {
                continue;
            }
        }
        if back + 1 >= LEAST_CHAIN {
            lanes_m += long[first..end].iter().map(|leg| leg.3).sum::<f64>();
        }
        (first, back) = (end, 0);
    }
    lanes_m
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
