//! What was installed, from a walk along its edges?
//!
//! Nobody in a garden writes GeoJSON. Walk once around each lawn and zone with a GPS logger, give each track a name, mark
//! the station and trees as waypoints, and the GPX file is a plan:
//!
//! | name (upper or lower case) | recorded as | becomes |
//! |---|---|---|
//! | `lawn ...` | track around it | lawn |
//! | `boundary ...`, `wire ...` | track around it | boundary |
//! | `zone ...`, `exclusion ...` | track around it | exclusion zone |
//! | `obstacle ...` | track around it | obstacle |
//! | `guide ...` | track from the station outwards | guide run |
//! | `station ...` | waypoint | charging station |
//! | anything that ends in a length, such as `tree 0.4 m`, `pole 10 cm` | waypoint | round obstacle of that radius |
//!
//! Tracks with other names, or none, are read by their shape. A single closed one is the lawn. If there are several, or none
//! is closed, nothing is assumed without asking: the error lists them with what each seems to be, and the user answers
//! ([`WalkRole`]). Once a lawn is known, tracks that remain unclear are left out and reported.
//!
//! Positions that jump away and back are left out; where the walker stood, one corner remains, the middle of the fixes;
//! white noise of decimetres and more is smoothed between corners. A good receiver's walk stays as it is.
//!
//! A walk may go past the start of a ring, or round it twice: the ring ends where the walk comes closest to its first
//! position, and what comes after is cut off. The gap that is left there is closed by a straight line if it is at most 5 m
//! and at most a quarter of the walk; otherwise the walk is refused. Corners are dropped if the line then moves by less than
//! 5 cm (Douglas & Peucker 1973), and loops of less than 3 m, which a walker who stands still draws, are cut off.
//!
//! Approximate: a walk is as good as its positions; a plan made from it is a few decimetres to metres off, and nothing here
//! can change that.
//!
//! Broken markup loses the position or the track that contains it, and is reported; a file that breaks off is refused.
//!
//! Cost: the whole file in memory; n log n for a walk of n positions, n^2 for one in which no corner can be dropped.

mod clean;
mod gpx;
mod place;
mod ring;
mod shape;

use crate::error::{listed, wanted};
use clean::{Cleaned, cleaned};
use gpx::{Recorded, WalkKind};
use place::distance_m;
use ring::RingFault;
pub use shape::WalkGuess;
use std::collections::{BTreeMap, BTreeSet};
use tussock_types::{
    ComplaintSettings, GeoPoint, GeoPolygon, Notice, Plan, PlanFeature, PlanRole, PlanShape, Said,
};

/// A plan made from a walk, with what the user should know about it.
#[derive(Clone, Debug, PartialEq)]
pub struct WalkedPlan {
    /// The plan, features in the order of the file.
    pub plan: Plan,
    /// Names without a meaning here, gaps that were closed, ends that were cut off.
    pub notices: Vec<Notice>,
}

/// What a track or waypoint is, according to the user.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WalkRole {
    /// Its name in the file, or the title that a question gave it.
    pub name: String,
    /// What it is.
    pub role: PlanRole,
}

/// One recorded thing from which no feature can be made.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("line {line}: \"{name}\": {found}{}", wanted(expected))]
pub struct WalkFault {
    /// Line of the file, from 1.
    pub line: u64,
    /// Name of the track or waypoint.
    pub name: String,
    /// What is wrong.
    pub found: String,
    /// What was expected instead.
    pub expected: String,
}

/// Why no plan could be made from a walk.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum WalkError {
    /// The bytes are not a GPX file.
    #[error("{name}: is not a GPX file: {found}, expected a file that begins with <gpx>")]
    NotGpx {
        /// Name of the file.
        name: String,
        /// What it seems to be.
        found: String,
    },
    /// The XML breaks off or is faulty.
    #[error("{name}: line {line}: faulty XML: {reason}")]
    FaultyXml {
        /// Name of the file.
        name: String,
        /// Line, from 1.
        line: u64,
        /// The parser's message.
        reason: String,
    },
    /// More positions than anybody walks.
    #[error("{name}: more than {limit} positions, expected the walk around one garden")]
    TooLong {
        /// Name of the file.
        name: String,
        /// How many are allowed.
        limit: usize,
    },
    /// No waypoint, although places were wanted.
    #[error("{name}: holds no waypoint with a position, expected one <wpt> for each place")]
    NoWaypoint {
        /// Name of the file.
        name: String,
    },
    /// No track is a lawn.
    #[error("{name}: no track has a name that begins with \"lawn\"; its names are {names}")]
    NoLawn {
        /// Name of the file.
        name: String,
        /// What is in it.
        names: String,
    },
    /// Tracks whose names do not say which of them is the lawn.
    #[error("{}", asked(name, guesses))]
    Unclear {
        /// Name of the file.
        name: String,
        /// Each one without a role, with what it seems to be.
        guesses: Vec<WalkGuess>,
    },
    /// The user names something that does not exist.
    #[error("{name}: nothing is called {wanted:?}; its names are {names}")]
    NoSuchName {
        /// Name of the file.
        name: String,
        /// What the user wrote.
        wanted: String,
        /// What is in it.
        names: String,
    },
    /// All tracks or waypoints that cannot become what their name says.
    #[error("{}", listed(name, faults))]
    Faults {
        /// Name of the file.
        name: String,
        /// Each fault.
        faults: Vec<WalkFault>,
    },
}

/// Positions of all tracks and routes, segment by segment, with or without times.
pub(crate) fn lines(name: &str, bytes: &[u8]) -> Result<Vec<Vec<GeoPoint>>, WalkError> {
    let mut lines = Vec::new();
    let contents = gpx::read(name, bytes)?;
    if contents.broken > 0 {
        // A path to measure against must be complete.
        return Err(WalkError::FaultyXml {
            name: name.to_owned(),
            line: contents.broken_line,
            reason: "an element does not end where it should".to_owned(),
        });
    }
    for track in contents.recorded {
        if track.kind != WalkKind::Track {
            continue;
        }
        let ends = track.piece_starts.iter().skip(1).copied();
        let ends = ends.chain([track.points.len()]);
        for (start, end) in track.piece_starts.iter().copied().zip(ends) {
            lines.push(track.points[start..end].to_vec());
        }
    }
    Ok(lines)
}

/// The places marked by waypoints, each with its name as what was said about it.
///
/// # Errors
/// [`WalkError`]; a file none of whose waypoints has a position counts as one without waypoints.
pub fn complaints_from_waypoints(name: &str, bytes: &[u8]) -> Result<Vec<ComplaintSettings>, WalkError> {
    let waypoints = gpx::read(name, bytes)?.recorded.into_iter();
    let complaints: Vec<ComplaintSettings> = waypoints
        .filter(|item| item.kind == WalkKind::Waypoint)
        .filter_map(|item| {
            let at = item.points.first()?;
            Some(ComplaintSettings {
                at_deg: Some([at.lat_deg, at.lon_deg]),
                said: (!item.name.is_empty()).then_some(item.name),
                ..ComplaintSettings::default()
            })
        })
        .collect();
    if complaints.is_empty() {
        return Err(WalkError::NoWaypoint {
            name: name.to_owned(),
        });
    }
    Ok(complaints)
}

/// Tracks that an error lists.
const MOST_LISTED: usize = 20;

/// One question about all tracks that nobody named.
fn asked(name: &str, guesses: &[WalkGuess]) -> String {
    let has_lawn = guesses.iter().any(|guess| guess.role == Some(PlanRole::Lawn));
    let mut text = match has_lawn {
        true => format!("{name}: no name says which track is the lawn; by their shape"),
        false => format!("{name}: no track is named as the lawn, and none comes back to where it began"),
    };
    for guess in guesses.iter().take(MOST_LISTED) {
        text.push_str(&format!(
            "\n  line {}: {:?}, {}: {}",
            guess.line,
            guess.title,
            guess.looks,
            guess.seems()
        ));
    }
    if guesses.len() > MOST_LISTED {
        text.push_str(&format!("\n  and {} more", guesses.len() - MOST_LISTED));
    }
    text
}

/// Makes a plan from a recorded walk. `roles` takes precedence over the names in the file.
///
/// # Errors
/// [`WalkError`]; faults of tracks and waypoints are reported all at once, and so are questions.
pub fn plan_from_walk(name: &str, bytes: &[u8], roles: &[WalkRole]) -> Result<WalkedPlan, WalkError> {
    let contents = gpx::read(name, bytes)?;
    let mut maker = Maker::default();
    if contents.broken > 0 {
        maker.notices.push(Notice {
            said: Said::WalkMarkupBroken {
                places: contents.broken as u64,
            },
            line: contents.broken_line,
        });
    }
    let mut recorded = contents.recorded;
    let titles = titles(&recorded);
    let mut meanings = meanings(name, &recorded, &titles, roles)?;
    let known: Vec<Option<PlanRole>> = meanings.iter().map(Meaning::role).collect();
    let mut guesses = shape::guesses(&recorded, &titles, &known);
    if !known.contains(&Some(PlanRole::Lawn)) {
        let at = only_ring(name, &recorded, &guesses)?;
        meanings[at] = Meaning::Role(PlanRole::Lawn);
        if let Some(guess) = guesses[at].take() {
            let said = Said::WalkTakenAsLawn {
                area_m2: guess.area_m2.unwrap_or(0.0),
                length_m: guess.length_m,
                track: guess.title,
            };
            maker.note(&recorded[at], said);
        }
    }
    for (at, item) in recorded.iter_mut().enumerate() {
        if item.name.is_empty() {
            item.name.clone_from(&titles[at]);
        }
        maker.take(item, meanings[at], guesses[at].as_ref());
    }
    if !maker.faults.is_empty() {
        return Err(WalkError::Faults {
            name: name.to_owned(),
            faults: maker.faults,
        });
    }
    let mut plan = Plan {
        features: maker.features,
    };
    turn_guides(&mut plan, &mut maker.notices);
    Ok(WalkedPlan {
        plan,
        notices: maker.notices,
    })
}

/// The track that is plainly the lawn although nothing says so: the only closed one.
fn only_ring(name: &str, recorded: &[Recorded], guesses: &[Option<WalkGuess>]) -> Result<usize, WalkError> {
    let is_ring = |at: &usize| guesses[*at].as_ref().is_some_and(WalkGuess::is_ring);
    let rings: Vec<usize> = (0..guesses.len()).filter(is_ring).collect();
    let is_track =
        |(item, guess): (&Recorded, &Option<WalkGuess>)| item.kind == WalkKind::Track && guess.is_some();
    let is_plain = |at: usize| {
        let guess = guesses[at].as_ref();
        guess.is_some_and(|guess| guess.is_plainly_lawn(guesses.iter().flatten()))
    };
    match rings[..] {
        [at] if is_plain(at) => Ok(at),
        _ if !recorded.iter().zip(guesses).any(is_track) => Err(WalkError::NoLawn {
            name: name.to_owned(),
            names: names(recorded.iter().map(|item| &item.name)),
        }),
        _ => Err(WalkError::Unclear {
            name: name.to_owned(),
            guesses: guesses.iter().flatten().cloned().collect(),
        }),
    }
}

/// The first names of a file, for a message.
fn names<'a>(names: impl Iterator<Item = &'a String>) -> String {
    let quoted: Vec<String> = names.take(MOST_LISTED).map(|name| format!("{name:?}")).collect();
    match quoted.is_empty() {
        true => "none".to_owned(),
        false => quoted.join(", "),
    }
}

/// What each is called: its name, numbered if it is missing or not unique.
fn titles(recorded: &[Recorded]) -> Vec<String> {
    let mut count: BTreeMap<&str, usize> = BTreeMap::new();
    for item in recorded {
        *count.entry(item.name.as_str()).or_default() += 1;
    }
    let mut taken: BTreeSet<String> = count.keys().map(|name| (*name).to_owned()).collect();
    let mut numbers: BTreeMap<&str, usize> = BTreeMap::new();
    let mut titles = Vec::with_capacity(recorded.len());
    for item in recorded {
        let plain = match (item.name.as_str(), item.kind) {
            ("", WalkKind::Track) => "track",
            ("", WalkKind::Waypoint) => "waypoint",
            (name, _) if count[name] == 1 => {
                titles.push(name.to_owned());
                continue;
            }
            (name, _) => name,
        };
        let number = numbers.entry(plain).or_default();
        let mut title = String::new();
        while title.is_empty() || !taken.insert(title.clone()) {
            *number += 1;
            title = format!("{plain} {number}");
        }
        titles.push(title);
    }
    titles
}

/// What everything is: as stated by the user, or else by its name.
fn meanings(
    file: &str,
    recorded: &[Recorded],
    titles: &[String],
    roles: &[WalkRole],
) -> Result<Vec<Meaning>, WalkError> {
    let mut given: Vec<Option<PlanRole>> = vec![None; recorded.len()];
    for WalkRole { name, role } in roles {
        let is_it = |at: &usize| titles[*at] == *name || (recorded[*at].name == *name && !name.is_empty());
        let found: Vec<usize> = (0..recorded.len()).filter(is_it).collect();
        if found.is_empty() {
            return Err(WalkError::NoSuchName {
                name: file.to_owned(),
                wanted: name.clone(),
                names: names(titles.iter()),
            });
        }
        found.into_iter().for_each(|at| given[at] = Some(*role));
    }
    Ok(recorded
        .iter()
        .zip(given)
        .map(|(item, given)| meaning(item, given))
        .collect())
}

/// What a name says about a track or waypoint.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Meaning {
    Role(PlanRole),
    Round { radius_m: f64 },
    Nothing,
}

/// The role that a name begins with.
fn role_of(name: &str) -> Option<PlanRole> {
    const WORDS: [(&str, PlanRole); 9] = [
        ("lawn", PlanRole::Lawn),
        ("boundary", PlanRole::Boundary),
        ("wire", PlanRole::Boundary),
        ("zone", PlanRole::Exclusion),
        ("exclusion", PlanRole::Exclusion),
        ("obstacle", PlanRole::Obstacle),
        ("guide", PlanRole::Guide),
        ("station", PlanRole::Station),
        ("charging station", PlanRole::Station),
    ];
    let name = name.to_lowercase();
    WORDS
        .into_iter()
        .find(|(word, _)| {
            // "zone2" and "lawn_front" too, but not "lawnmower".
            name.strip_prefix(word)
                .is_some_and(|rest| !rest.chars().next().is_some_and(char::is_alphabetic))
        })
        .map(|(_, role)| role)
}

/// A length at the end of a name, and the name without it: `tree 0.4 m` is (`tree`, 0.4).
fn length_at_end(name: &str) -> Option<(&str, f64)> {
    let name = name.trim_end();
    let lower = name.to_ascii_lowercase();
    let (number, unit_m) = if let Some(rest) = lower.strip_suffix("cm") {
        (rest, 0.01)
    } else {
        (lower.strip_suffix('m')?, 1.0)
    };
    let number = number.trim_end();
    let start = number
        .rfind(|letter: char| !(letter.is_ascii_digit() || letter == '.' || letter == ','))
        .map_or(0, |at| at + number[at..].chars().next().map_or(1, char::len_utf8));
    let value: f64 = number[start..].replace(',', ".").parse().ok()?;
    // Lower case in ASCII keeps every byte where it was.
    Some((name[..start].trim_end(), value * unit_m))
}

impl Meaning {
    fn role(&self) -> Option<PlanRole> {
        match self {
            Self::Role(role) => Some(*role),
            Self::Round { .. } => Some(PlanRole::Obstacle),
            Self::Nothing => None,
        }
    }
}

fn meaning(item: &Recorded, given: Option<PlanRole>) -> Meaning {
    let role = given.or_else(|| role_of(&item.name));
    match item.kind {
        WalkKind::Waypoint => match (role, length_at_end(&item.name)) {
            (Some(PlanRole::Station), _) => Meaning::Role(PlanRole::Station),
            (None | Some(PlanRole::Obstacle), Some((_, radius_m))) => Meaning::Round { radius_m },
            (Some(role), _) => Meaning::Role(role),
            (None, None) => Meaning::Nothing,
        },
        WalkKind::Track => role.map_or(Meaning::Nothing, Meaning::Role),
    }
}

#[derive(Default)]
struct Maker {
    features: Vec<PlanFeature>,
    /// Names that are taken, with the last number given to each.
    names: BTreeMap<String, usize>,
    notices: Vec<Notice>,
    faults: Vec<WalkFault>,
}

impl Maker {
    fn note(&mut self, item: &Recorded, said: Said) {
        let line = item.line;
        self.notices.push(Notice { said, line });
    }

    fn fault(&mut self, item: &Recorded, found: impl Into<String>, expected: impl Into<String>) {
        self.faults.push(WalkFault {
            line: item.line,
            name: item.name.clone(),
            found: found.into(),
            expected: expected.into(),
        });
    }

    fn add(&mut self, role: PlanRole, name: &str, shape: PlanShape, radius_m: Option<f64>) {
        let index = self.features.len();
        let name = self.free_name(name);
        self.features.push(PlanFeature {
            radius_m,
            ..PlanFeature::new(role, name, index, shape)
        });
    }

    /// The name, with a number if it is taken.
    fn free_name(&mut self, name: &str) -> String {
        let mut free = name.to_owned();
        let mut number = self.names.get(name).copied().unwrap_or(1);
        while self.names.contains_key(&free) {
            number += 1;
            free = format!("{name} {number}");
        }
        self.names.insert(name.to_owned(), number);
        self.names.entry(free.clone()).or_insert(1);
        free
    }

    fn take(&mut self, item: &Recorded, meaning: Meaning, guess: Option<&WalkGuess>) {
        if item.unusable > 0 {
            let said = Said::WalkPositionsSkipped {
                positions: item.unusable as u64,
                track: item.name.clone(),
            };
            self.note(item, said);
        }
        match (meaning, item.kind) {
            (Meaning::Nothing, _) => self.left_out(item, guess),
            (Meaning::Round { radius_m }, _) => self.round(item, radius_m),
            (Meaning::Role(PlanRole::Station), WalkKind::Waypoint) => match item.points.first() {
                Some(point) => self.add(PlanRole::Station, &item.name, PlanShape::Point(*point), None),
                None => self.fault(item, "the waypoint has no position", "latitude and longitude"),
            },
            (Meaning::Role(PlanRole::Obstacle), WalkKind::Waypoint) => {
                self.fault(
                    item,
                    "the waypoint has no radius",
                    "a name that ends in one, as \"obstacle rock 0.4 m\"",
                );
            }
            (Meaning::Role(role), WalkKind::Waypoint) => {
                let found = format!("a waypoint cannot be a {}", role.word());
                self.fault(item, found, "a track");
            }
            (Meaning::Role(PlanRole::Station), WalkKind::Track) => {
                self.fault(item, "a track cannot be a station", "a waypoint");
            }
            (Meaning::Role(PlanRole::Guide), WalkKind::Track) => self.guide(item),
            (Meaning::Role(role), WalkKind::Track) => self.ring(item, role),
        }
    }

    fn left_out(&mut self, item: &Recorded, guess: Option<&WalkGuess>) {
        let role = guess.and_then(|guess| guess.role);
        let said = Said::WalkNameUnknown {
            track: guess.map_or(&item.name, |guess| &guess.title).clone(),
            seems: role.map_or("", PlanRole::word).to_owned(),
        };
        self.note(item, said);
    }

    /// The walk without spikes and waits, which are reported.
    fn cleaned(&mut self, item: &Recorded) -> Cleaned {
        let walk = cleaned(&item.points, &item.times_s);
        if walk.spikes > 0 {
            let said = Said::WalkSpikesCut {
                positions: walk.spikes as u64,
                track: item.name.clone(),
            };
            self.note(item, said);
        }
        if walk.waits > 0 {
            let said = Said::WalkWaitsAsCorners {
                places: walk.waits as u64,
                track: item.name.clone(),
            };
            self.note(item, said);
        }
        walk
    }

    fn round(&mut self, item: &Recorded, radius_m: f64) {
        let title = length_at_end(&item.name).map_or("", |(title, _)| title);
        let title = if title.is_empty() { "obstacle" } else { title };
        match item.points.first() {
            _ if !(radius_m > 0.0 && radius_m <= 50.0) => {
                self.fault(
                    item,
                    format!("the radius is {radius_m} m"),
                    "a radius above 0 and up to 50 m",
                );
            }
            None => self.fault(item, "the waypoint has no position", "latitude and longitude"),
            Some(point) => self.add(
                PlanRole::Obstacle,
                title,
                PlanShape::Point(*point),
                Some(radius_m),
            ),
        }
    }

    fn guide(&mut self, item: &Recorded) {
        let line = ring::simplified_line(&self.cleaned(item));
        if line.len() < 2 {
            let found = format!("the track has {} different position(s)", line.len());
            self.fault(item, found, "at least 2, from the station outwards");
            return;
        }
        self.add(PlanRole::Guide, &item.name, PlanShape::Line(line), None);
    }

    fn ring(&mut self, item: &Recorded, role: PlanRole) {
        let ring = match ring::ring_of(&self.cleaned(item)) {
            Ok(ring) => ring,
            Err(RingFault::TooFew { corners }) => {
                let found = format!("the track has {corners} different position(s)");
                self.fault(item, found, "a walk around it, at least 3");
                return;
            }
            Err(RingFault::Open { gap_m, limit_m }) => {
                let found = format!("the walk does not come back to its start: it stays {gap_m:.1} m away");
                self.fault(item, found, format!("an end within {limit_m:.1} m of the start"));
                return;
            }
        };
        let track = || item.name.clone();
        if item.pieces > 1 {
            let said = Said::WalkPiecesJoined {
                pieces: item.pieces as u64,
                track: track(),
            };
            self.note(item, said);
        }
        if ring.cut_off_m > 0.5 {
            let said = Said::WalkOverlapCut {
                past_m: ring.cut_off_m,
                track: track(),
            };
            self.note(item, said);
        }
        if ring.gap_m > 0.5 {
            let said = Said::WalkGapClosed {
                gap_m: ring.gap_m,
                track: track(),
            };
            self.note(item, said);
        }
        if ring.loops_cut > 0 {
            let said = Said::WalkLoopsCut {
                loops: ring.loops_cut as u64,
                track: track(),
            };
            self.note(item, said);
        }
        let polygon = GeoPolygon {
            rings: vec![ring.points],
        };
        self.add(role, &item.name, PlanShape::Polygons(vec![polygon]), None);
    }
}

/// Reverses guide runs that end at the station instead of starting there.
fn turn_guides(plan: &mut Plan, notices: &mut Vec<Notice>) {
    let station = plan
        .of_role(PlanRole::Station)
        .find_map(|feature| match feature.shape {
            PlanShape::Point(point) => Some(point),
            _ => None,
        });
    let Some(station) = station else { return };
    for feature in plan
        .features
        .iter_mut()
        .filter(|feature| feature.role == PlanRole::Guide)
    {
        let PlanShape::Line(points) = &mut feature.shape else {
            continue;
        };
        let (Some(&first), Some(&last)) = (points.first(), points.last()) else {
            continue;
        };
        if distance_m(last, station) < distance_m(first, station) {
            points.reverse();
            let track = feature.name.clone();
            let said = Said::WalkGuideTurned { track };
            notices.push(Notice { said, line: 0 });
        }
    }
}

#[cfg(test)]
#[path = "walk_tests.rs"]
mod tests;
