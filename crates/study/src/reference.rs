//! How far is a log from a surveyed path?
//!
//! ```text
//!    fix x
//!        |  cross-track: to the nearest place of the path (to the segment, not to the vertex)
//!   o====f========g====o   f nearest place, g where the machine should have been then: along-track from g to f
//! ```
//!
//! Method, after ISO 12188-1:2010 (Test procedures for positioning and guidance systems in agriculture, part 1: dynamic
//! testing of satellite-based positioning devices). Cross-track error is the signed distance to the segment: the distance to
//! the nearest sample is too large, by 8 % at 1.25 m/s (Trans. ASABE 59(6):1609-1616, 2016). If the path has times,
//! along-track error is the distance along it from where the machine should have been to the nearest place, and timing error
//! is the time at which it passed minus the time at which it should have passed. Pass-to-pass error is the change of the
//! cross-track error between two adjacent passes within 15 minutes (the window given by the EGNOS user support, citing the
//! standard). The standard's own wording of root mean square and 95 % was not available: both follow common use, with 95 %
//! of the sizes by the nearest rank.
//!
//! There are two sets of errors: fixes as logged (after the outlier filter), and the path found from them at the same times.
//! Halts are left out, because the test is dynamic.
//!
//! Exact: distances, for the matched segment. Approximate: which segment is meant. With times it is the nearest one that was
//! due within [`DUE_WITHIN_S`]; without, the nearest of all, so an error of more than half the distance between two
//! neighbouring lanes is measured to the wrong lane and comes out too small. Fixes farther than [`BESIDE_M`] are counted
//! separately.
//!
//! Cost: the segments within [`BESIDE_M`] of each fix.

use std::collections::HashMap;
use tussock_locate::Track;
use tussock_plane::{Frame, Leg, LegIndex, Vector, nearest_on_piece};
use tussock_survey::Survey;
use tussock_survey::{AnalyseError, Job};
use tussock_types::{
    ErrorLength, ErrorTime, GeoPoint, Place, Positions, Reference, ReferenceErrors, ReferenceFindings,
};

/// Farther from the path than this, the machine was doing something else (common practice, no source).
pub const BESIDE_M: f64 = 10.0;
/// A segment is considered if it was due within this time before or after.
pub const DUE_WITHIN_S: f64 = 60.0;
/// Window of pass-to-pass accuracy: 15 minutes.
pub const PASSES_WITHIN_S: f64 = 900.0;
/// Passes are adjacent if they are this close (common practice, no source), and are parallel or opposite to within this
/// angle.
const PASSES_APART_M: f64 = 2.5;
const PASSES_TURNED_COS: f64 = 0.985;
/// All fixes within this time belong to one pass.
const ONE_PASS_S: f64 = 30.0;
/// Fixes of two passes are compared if they are abreast to within this.
const ABREAST_M: f64 = 0.5;

/// Errors of a log against a surveyed path. Both are on Earth, or both in local metres with the same origin.
///
/// # Errors
/// [`AnalyseError`], as for an analysis; [`AnalyseError::ReferenceApart`] if the two cannot be matched.
pub fn against_reference(
    survey: &Survey<'_>,
    reference: &Reference,
) -> Result<ReferenceFindings, AnalyseError> {
    let path = Surveyed::of(reference, survey.frame.as_ref(), survey.job())?;
    let mut logged = Errors::default();
    let mut located = Errors::default();
    let (mut compared_fixes, mut beside_fixes, mut halted_fixes) = (0, 0, 0);
    for track in &survey.tracks {
        let mut halts = track.halts.iter().peekable();
        let mut along = Along::of(track);
        for index in 0..track.kept.len() {
            let time_s = track.kept.time_s[index];
            while halts.peek().is_some_and(|halt| halt.end_s < time_s) {
                halts.next();
            }
            if halts.peek().is_some_and(|halt| halt.start_s <= time_s) {
                halted_fixes += 1;
                continue;
            }
            let Some(matched) = path.matched(track.kept.place(index), time_s) else {
                beside_fixes += 1;
                continue;
            };
            compared_fixes += 1;
            logged.enter(&matched, time_s);
            if let Some(matched) = along
                .place_at(time_s)
                .and_then(|place| path.matched(place, time_s))
            {
                located.enter(&matched, time_s);
            }
        }
    }
    Ok(ReferenceFindings {
        name: reference.name.clone(),
        length_m: path.length_m(),
        is_timed: path.times_s.is_some(),
        compared_fixes,
        beside_fixes,
        beside_m: BESIDE_M,
        halted_fixes,
        logged: logged.found(),
        located: located.found(),
    })
}

/// The surveyed path on the plane.
struct Surveyed {
    index: LegIndex,
    /// Distance along the path at the start of each leg.
    at_m: Vec<f64>,
    /// Times at both ends of each leg.
    times_s: Option<Vec<(f64, f64)>>,
}

/// The nearest place on the path.
struct Matched {
    foot: Place,
    /// Unit vector along it there.
    heading: Vector,
    cross_m: f64,
    along_m: Option<f64>,
    late_s: Option<f64>,
}

impl Surveyed {
    fn of(reference: &Reference, frame: Option<&Frame>, job: &Job<'_>) -> Result<Self, AnalyseError> {
        let log_is_local = job
            .traces
            .iter()
            .any(|trace| matches!(trace.positions, Positions::Local { .. }));
        let apart = |why: &'static str| AnalyseError::ReferenceApart {
            name: reference.name.clone(),
            why,
        };
        let corners: Vec<Place> = match (&reference.positions, frame, log_is_local) {
            (Positions::Local { east_m, north_m }, _, true) => east_m
                .iter()
                .zip(north_m)
                .map(|(east_m, north_m)| Place::new(*east_m, *north_m))
                .collect(),
            (Positions::Local { .. }, _, false) => {
                return Err(apart("it is in local metres and the log on Earth"));
            }
            (Positions::Geographic { lat_deg, lon_deg }, Some(frame), _) => lat_deg
                .iter()
                .zip(lon_deg)
                .map(|(lat_deg, lon_deg)| {
                    frame.to_place(GeoPoint {
                        lat_deg: *lat_deg,
                        lon_deg: *lon_deg,
                    })
                })
                .collect(),
            (Positions::Geographic { .. }, None, _) => {
                return Err(apart(
                    "it lies on Earth and the log in local metres without an origin",
                ));
            }
        };
        let (mut legs, mut at_m, mut times_s, mut way_m) = (Vec::new(), Vec::new(), Vec::new(), 0.0);
        for index in 1..corners.len() {
            if reference.piece.get(index) != reference.piece.get(index - 1) {
                continue;
            }
            let (from, to) = (corners[index - 1], corners[index]);
            let ends_s = reference
                .time_s
                .as_ref()
                .and_then(|times| Some((*times.get(index - 1)?, *times.get(index)?)));
            let (start_s, end_s) = ends_s.unwrap_or_default();
            legs.push(Leg {
                from,
                to,
                start_s,
                end_s,
            });
            at_m.push(way_m);
            times_s.push((start_s, end_s));
            way_m += from.distance_m(to);
        }
        if !(way_m > 0.0) {
            return Err(apart("it has no two places, expected a path"));
        }
        Ok(Self {
            index: LegIndex::build(legs),
            at_m,
            times_s: reference.time_s.as_ref().map(|_| times_s),
        })
    }

    fn length_m(&self) -> f64 {
        let last = self.index.legs().last().map_or(0.0, Leg::length_m);
        self.at_m.last().map_or(0.0, |at_m| at_m + last)
    }

    /// Distance along the path at which the machine should have been; `None` before, after and between pieces.
    fn due_at_m(&self, time_s: f64) -> Option<f64> {
        let times_s = self.times_s.as_ref()?;
        let leg = times_s.partition_point(|(_, end_s)| *end_s < time_s);
        let (start_s, end_s) = *times_s.get(leg)?;
        if time_s < start_s {
            return None;
        }
        let share = if end_s > start_s {
            (time_s - start_s) / (end_s - start_s)
        } else {
            0.0
        };
        Some(self.at_m[leg] + share * self.index.legs()[leg].length_m())
    }

    fn matched(&self, place: Place, time_s: f64) -> Option<Matched> {
        /// Differences in distance smaller than this are ignored: at a corner two legs share their end.
        const AS_NEAR_M: f64 = 1e-9;
        let mut best: Option<(f64, f64, usize, Place, f64)> = None;
        for leg in self.index.within(place, BESIDE_M) {
            let Leg { from, to, .. } = self.index.legs()[leg];
            let length_m = from.distance_m(to);
            let foot = nearest_on_piece(from, to, place);
            let distance_m = foot.distance_m(place);
            let along_m = from.distance_m(foot);
            let late_s = self.times_s.as_ref().map_or(0.0, |times_s| {
                let (start_s, end_s) = times_s[leg];
                if length_m > 0.0 {
                    time_s - (start_s + along_m / length_m * (end_s - start_s))
                } else {
                    // It stood there: in time during the whole stay.
                    time_s - time_s.clamp(start_s, end_s.max(start_s))
                }
            });
            if late_s.abs() > DUE_WITHIN_S {
                continue;
            }
            let is_better = best.is_none_or(|(best_m, best_s, ..)| {
                distance_m < best_m - AS_NEAR_M
                    || (distance_m <= best_m + AS_NEAR_M && late_s.abs() < f64::abs(best_s))
            });
            if is_better {
                best = Some((distance_m, late_s, leg, foot, self.at_m[leg] + along_m));
            }
        }
        let (distance_m, late_s, leg, foot, foot_m) = best?;
        let heading = self.heading(leg)?;
        let left_m = heading.cross(Vector::between(foot, place));
        let is_timed = self.times_s.is_some();
        Some(Matched {
            foot,
            heading,
            cross_m: distance_m.copysign(left_m),
            along_m: self.due_at_m(time_s).map(|due_m| foot_m - due_m),
            late_s: is_timed.then_some(late_s),
        })
    }

    /// Unit vector along a leg, or along the nearest leg before or after it that has a length.
    fn heading(&self, leg: usize) -> Option<Vector> {
        let legs = self.index.legs();
        let of = |leg: &Leg| Vector::direction(leg.from, leg.to);
        legs[..=leg]
            .iter()
            .rev()
            .find_map(of)
            .or_else(|| legs[leg..].iter().find_map(of))
    }
}

/// Walks the pieces of a track forwards in time.
struct Along<'a> {
    corners: Vec<(&'a tussock_locate::Vertex, bool)>,
    next: usize,
}

impl<'a> Along<'a> {
    fn of(track: &'a Track) -> Self {
        let corners = track.pieces.iter().flat_map(|piece| {
            piece
                .vertices
                .iter()
                .enumerate()
                .map(|(index, vertex)| (vertex, index > 0))
        });
        Self {
            corners: corners.collect(),
            next: 0,
        }
    }

    /// Place on the path; times must not decrease. `None` in a silence.
    fn place_at(&mut self, time_s: f64) -> Option<Place> {
        while self
            .corners
            .get(self.next)
            .is_some_and(|(corner, _)| corner.leave_s < time_s)
        {
            self.next += 1;
        }
        let (to, is_joined) = *self.corners.get(self.next)?;
        if to.arrive_s <= time_s {
            return Some(to.place);
        }
        if !is_joined {
            return None;
        }
        let (from, _) = *self.corners.get(self.next.checked_sub(1)?)?;
        let share = (time_s - from.leave_s) / (to.arrive_s - from.leave_s).max(1e-9);
        Some(from.place.towards(to.place, share))
    }
}

#[derive(Default)]
struct Errors {
    cross_m: Vec<f64>,
    along_m: Vec<f64>,
    late_s: Vec<f64>,
    feet: Vec<Foot>,
}

/// A fix's nearest place, for the comparison of passes.
struct Foot {
    time_s: f64,
    place: Place,
    heading: Vector,
    cross_m: f64,
}

impl Errors {
    fn enter(&mut self, matched: &Matched, time_s: f64) {
        self.cross_m.push(matched.cross_m);
        self.along_m.extend(matched.along_m);
        self.late_s.extend(matched.late_s);
        self.feet.push(Foot {
            time_s,
            place: matched.foot,
            heading: matched.heading,
            cross_m: matched.cross_m,
        });
    }

    fn found(self) -> ReferenceErrors {
        let passes_m = pass_to_pass_m(&self.feet);
        ReferenceErrors {
            cross_track: length(self.cross_m),
            along_track: length(self.along_m),
            timing: length(self.late_s).map(|found| ErrorTime {
                values: found.values,
                mean_s: found.mean_m,
                rms_s: found.rms_m,
                p95_s: found.p95_m,
                max_s: found.max_m,
            }),
            pass_to_pass: length(passes_m),
        }
    }
}

/// Change of the cross-track error from each fix to the nearest one abreast on a later pass.
fn pass_to_pass_m(feet: &[Foot]) -> Vec<f64> {
    let tile = |place: Place| {
        (
            (place.east_m / PASSES_APART_M).floor() as i64,
            (place.north_m / PASSES_APART_M).floor() as i64,
        )
    };
    let mut tiles: HashMap<(i64, i64), Vec<usize>> = HashMap::new();
    let mut order: Vec<usize> = (0..feet.len()).collect();
    order.sort_by(|a, b| feet[*a].time_s.total_cmp(&feet[*b].time_s));
    for index in &order {
        tiles.entry(tile(feet[*index].place)).or_default().push(*index);
    }
    let mut changes_m = Vec::new();
    for index in order {
        let here = &feet[index];
        let (column, row) = tile(here.place);
        let mut best: Option<([f64; 3], f64)> = None;
        for near in (-1..=1).flat_map(|dx| (-1..=1).map(move |dy| (column + dx, row + dy))) {
            let Some(others) = tiles.get(&near) else { continue };
            let first = others.partition_point(|other| feet[*other].time_s <= here.time_s + ONE_PASS_S);
            for other in &others[first..] {
                let there = &feet[*other];
                if there.time_s > here.time_s + PASSES_WITHIN_S {
                    break;
                }
                let turned = here.heading.dot(there.heading);
                let off = Vector::between(here.place, there.place);
                let (abreast_m, apart_m) = (here.heading.dot(off).abs(), here.heading.cross(off).abs());
                if turned.abs() < PASSES_TURNED_COS || abreast_m > ABREAST_M || apart_m > PASSES_APART_M {
                    continue;
                }
                // The nearest line first; of one line the earliest pass; of one pass the fix that is most nearly abreast.
                let late_s = ((there.time_s - here.time_s) / ONE_PASS_S).floor();
                let key = [(apart_m * 1e3).round(), late_s, abreast_m];
                if best.is_none_or(|(least, _)| key < least) {
                    // On the way back, left is right.
                    let change_m = there.cross_m * turned.signum() - here.cross_m;
                    best = Some((key, change_m));
                }
            }
        }
        changes_m.extend(best.map(|(_, change_m)| change_m));
    }
    changes_m
}

fn length(mut values_m: Vec<f64>) -> Option<ErrorLength> {
    if values_m.is_empty() {
        return None;
    }
    let count = values_m.len() as f64;
    let mean_m = values_m.iter().sum::<f64>() / count;
    let rms_m = (values_m.iter().map(|value| value * value).sum::<f64>() / count).sqrt();
    for value in &mut values_m {
        *value = value.abs();
    }
    values_m.sort_by(f64::total_cmp);
    let rank = (0.95 * count).ceil() as usize;
    Some(ErrorLength {
        values: values_m.len() as u64,
        mean_m,
        rms_m,
        p95_m: values_m[rank.saturating_sub(1)],
        max_m: values_m[values_m.len() - 1],
    })
}
