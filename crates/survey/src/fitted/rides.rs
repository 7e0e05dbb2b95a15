//! The machine's outings: when and along what it left, when and along what it started for home.
//!
//! An outing lies between two stays at the station. It is guided if its first drives follow a guide run. The ride home is
//! found backwards from the stay: drives that stay close to a guide run or to the line at which the machine turns. When its
//! time is up, a machine goes on roaming for minutes until it meets such a line, so roaming is counted up to the beginning
//! of that ride.

use tussock_locate::{HaltPlace, Track, Vertex};
use tussock_plane::{Edge, Site, Vector, nearest_on_piece};
use tussock_types::Place;

/// A machine follows a line to within this, apart from the position error.
const KEEPS_TO_M: f64 = 0.3;
/// Spacing of the places that are examined on a drive.
const STEP_M: f64 = 0.25;
/// Within this distance of the station the machine manoeuvres.
const APRON_M: f64 = 1.5;
/// Following a guide run for less than this is chance.
const LEAST_GUIDED_M: f64 = 4.0;
/// A stay this much longer than usual is a break between two days of work.
const BREAK_OVER_USUAL: f64 = 2.5;
/// And longer than this.
const BREAK_S: f64 = 3.0 * 3600.0;

/// What it rode along.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ride {
    /// The guide run with this number.
    Guide(usize),
    /// The line at which it turns.
    Edge,
    /// Nothing.
    Nothing,
}

/// One outing.
#[derive(Clone, Debug, PartialEq)]
pub struct OutingSeen {
    /// When it leaves the station; the start of the log if it was already out.
    pub start_s: f64,
    /// When it starts the ride home; the end of the log if it never did.
    pub homeward_s: f64,
    /// When it is back.
    pub end_s: f64,
    /// Whether both its ends are in the log, without a silence in between.
    pub is_whole: bool,
    /// The guide run along which it left, and where on it roaming began, as a fraction of its length.
    pub guide: Option<(usize, f64)>,
    /// Heading of the first long leg, anticlockwise from east, if it left without a guide run.
    pub heading_rad: Option<f64>,
    /// Where roaming began.
    pub began: Place,
    /// What it came home along.
    pub home: Ride,
}

/// Outings with the stays between them.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Seen {
    pub outings: Vec<OutingSeen>,
    /// Stays between two outings of one day.
    pub charging_s: Vec<f64>,
    /// Time from the first departure to the end of the log, without breaks between days.
    pub working_s: f64,
    /// Number of such breaks.
    pub breaks: usize,
}

struct Lines<'a> {
    guides: Vec<Vec<(Place, Place)>>,
    edges: &'a [Edge],
    setback_m: f64,
    corridor_m: f64,
    station: Place,
}

impl Lines<'_> {
    /// Whether a drive follows a line all the way.
    fn keeps(&self, from: Place, to: Place, near: impl Fn(Place) -> bool) -> bool {
        let steps = (from.distance_m(to) / STEP_M).ceil().max(1.0) as usize;
        (0..=steps).all(|step| {
            let share = step as f64 / steps as f64;
            let place = from.towards(to, share);
            place.distance_m(self.station) <= APRON_M || near(place)
        })
    }

    fn near_guide(&self, guide: usize, place: Place) -> bool {
        self.guides[guide]
            .iter()
            .any(|(from, to)| place.off_piece_m(*from, *to) <= self.corridor_m)
    }

    fn near_edge(&self, place: Place) -> bool {
        let off_m = self
            .edges
            .iter()
            .map(|edge| edge.distance_m(place))
            .fold(f64::INFINITY, f64::min);
        (off_m - self.setback_m.abs()).abs() <= self.corridor_m
    }
}

/// Outings of a track with a station.
pub(crate) fn seen(track: &Track, site: &Site, edges: &[Edge], setback_m: f64, sd_m: f64) -> Option<Seen> {
    let station = track.station?;
    let (first_s, last_s) = track.span_s?;
    let lines = Lines {
        guides: site
            .guides
            .iter()
            .map(|guide| guide.shape.windows(2).map(|pair| (pair[0], pair[1])).collect())
            .collect(),
        edges,
        setback_m,
        corridor_m: KEEPS_TO_M + 3.0 * sd_m,
        station,
    };
    let stays: Vec<(f64, f64)> = track
        .halts
        .iter()
        .filter(|halt| halt.at == HaltPlace::Station)
        .map(|halt| (halt.start_s, halt.end_s))
        .collect();
    let legs: Vec<(Vertex, Vertex)> = track.legs().collect();
    let mut outings = Vec::new();
    let mut since_s = first_s;
    let mut from_station = false;
    let mut ends: Vec<(f64, f64, bool)> = stays.iter().map(|stay| (stay.0, stay.1, true)).collect();
    ends.push((last_s, last_s, false));
    for (back_s, next_s, to_station) in ends {
        if back_s - since_s > 60.0 {
            let first = legs.partition_point(|leg| leg.1.arrive_s <= since_s + 1.0);
            let end = legs
                .partition_point(|leg| leg.1.arrive_s <= back_s + 1.0)
                .max(first);
            let is_silent = track
                .gaps
                .iter()
                .any(|gap| gap.end_s > since_s && gap.start_s < back_s && gap.end_s - gap.start_s > 60.0);
            outings.extend(outing(
                &legs[first..end],
                (since_s, back_s),
                (from_station, to_station),
                is_silent,
                &lines,
            ));
        }
        since_s = next_s;
        from_station = true;
    }
    let inner: Vec<f64> = stays
        .iter()
        .filter(|stay| stay.0 > first_s + 60.0 && stay.1 < last_s - 1.0)
        .map(|stay| stay.1 - stay.0)
        .collect();
    let mut sorted = inner.clone();
    sorted.sort_by(f64::total_cmp);
    let usual_s = sorted
        .get(sorted.len().saturating_sub(1) / 2)
        .copied()
        .unwrap_or(0.0);
    let is_break = |stay_s: f64| stay_s > BREAK_S && stay_s > BREAK_OVER_USUAL * usual_s.min(7200.0);
    let breaks_s: Vec<f64> = inner.iter().copied().filter(|stay_s| is_break(*stay_s)).collect();
    let silent_breaks_s: f64 = track
        .gaps
        .iter()
        .map(|gap| gap.end_s - gap.start_s)
        .filter(|gap_s| *gap_s > BREAK_S)
        .sum();
    let begins_s = outings
        .first()
        .map_or(first_s, |outing: &OutingSeen| outing.start_s);
    Some(Seen {
        working_s: (last_s - begins_s - breaks_s.iter().sum::<f64>() - silent_breaks_s).max(0.0),
        charging_s: inner.into_iter().filter(|stay_s| !is_break(*stay_s)).collect(),
        breaks: breaks_s.len(),
        outings,
    })
}

fn outing(
    legs: &[(Vertex, Vertex)],
    (since_s, back_s): (f64, f64),
    (from_station, to_station): (bool, bool),
    is_silent: bool,
    lines: &Lines<'_>,
) -> Option<OutingSeen> {
    let (first, _) = legs.first()?;
    let start_s = since_s;
    let length_m = |leg: &(Vertex, Vertex)| leg.0.place.distance_m(leg.1.place);
    // Out along a guide run: the one that it follows for longest.
    let mut guide = None;
    let mut roams_from = 0;
    if from_station {
        for number in 0..lines.guides.len() {
            let kept = legs
                .iter()
                .take_while(|leg| {
                    lines.keeps(leg.0.place, leg.1.place, |place| lines.near_guide(number, place))
                })
                .count();
            let away_m: f64 = legs[..kept].iter().map(length_m).sum();
            if kept > roams_from && away_m >= LEAST_GUIDED_M {
                roams_from = kept;
                let exit = legs[kept - 1].1.place;
                guide = Some((number, along_fraction(&lines.guides[number], exit)));
            }
        }
    }
    // A leg that happens to begin along a guide run is not guided: it leaves the run within a tenth of its length.
    if guide.is_some_and(|(_, along)| along < 0.1) {
        (guide, roams_from) = (None, 0);
    }
    let began = legs.get(roams_from).map_or(first.place, |leg| leg.0.place);
    let heading_rad = (from_station && guide.is_none())
        .then(|| {
            legs.iter()
                .take(6)
                .find(|leg| length_m(leg) >= 2.0)
                .map(|leg| Vector::between(leg.0.place, leg.1.place).angle_rad())
        })
        .flatten();
    // Home: backwards from the stay.
    let mut homeward_s = back_s;
    let mut home = Ride::Nothing;
    if to_station {
        let mut ridden_m = 0.0;
        for leg in legs[roams_from.min(legs.len())..].iter().rev() {
            let on_guide = (0..lines.guides.len()).find(|number| {
                lines.keeps(leg.0.place, leg.1.place, |place| lines.near_guide(*number, place))
            });
            let at_edge = || lines.keeps(leg.0.place, leg.1.place, |place| lines.near_edge(place));
            let ride = match on_guide {
                Some(number) => Ride::Guide(number),
                None if at_edge() => Ride::Edge,
                None => break,
            };
            ridden_m += length_m(leg);
            homeward_s = leg.0.leave_s;
            if home == Ride::Nothing && ridden_m > 2.0 * APRON_M {
                home = ride;
            }
        }
    }
    Some(OutingSeen {
        start_s,
        homeward_s: homeward_s.max(start_s),
        end_s: back_s,
        is_whole: from_station && to_station && !is_silent,
        guide,
        heading_rad,
        began,
        home,
    })
}

/// How far along a line the nearest place lies, as a fraction of the line's length.
fn along_fraction(line: &[(Place, Place)], place: Place) -> f64 {
    let (mut best, mut at_m, mut sum_m) = (f64::INFINITY, 0.0, 0.0);
    for (from, to) in line {
        let nearest = nearest_on_piece(*from, *to, place);
        let (length_m, along_m) = (from.distance_m(*to), from.distance_m(nearest));
        let off_m = nearest.distance_m(place);
        if off_m < best {
            (best, at_m) = (off_m, sum_m + along_m);
        }
        sum_m += length_m;
    }
    if sum_m > 0.0 { at_m / sum_m } else { 0.0 }
}
