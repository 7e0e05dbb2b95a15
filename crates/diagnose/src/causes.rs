//! Why was it missed?
//!
//! Question: which of the things that a technician can change keeps the machine out of a pocket?
//!
//! Method: a decision table; the first line that holds gives the cause. Lines that hold once the thresholds are relaxed by
//! 30 % are named as also possible. err is the position error that is left, s the setback, W the width of the neck before
//! the pocket, and g = W - 2 s; "inner turns" are turns farther than s + 0.3 m + 2.4 err from every edge of the plan.
//!
//! | # | holds when | cause | why this threshold |
//! |---|---|---|---|
//! | 1 | narrower than 4 err | undetermined | a gap no wider than the error has no shape |
//! | 2 | W <= 2 s + 0.02 m (+ 0.5 err), never entered | walled_off | the body does not fit; a shut gap explains everything behind it |
//! | 3 | under 30 % of it within the disc's reach: a part without a way in | walled_off | |
//! | 4 | the same, within s + 0.3 m of an edge | edge_band | the setback keeps the disc off |
//! | 5 | a drawn zone within 3 m (or 1.5 roots of the area) was driven into, and 2 inner turns at the pocket | zone_misplaced | the zone is there, but elsewhere |
//! | 6 | a stuck spot of 2 or more episodes within 2.5 m of the neck, or behind it within 3 m of the pocket, share behind below 50 %; without a neck within 2 m of the pocket | beyond_stuck_spot | a person can walk there |
//! | 7 | nothing behind the neck, 5 crossings expected (8 at metre errors), 3 inner turns in front or 7 crossings | walled_off | something that the plan lacks stands in the passage |
//! | 8 | 3 inner turns around it, at 35 % of its free rim, hardly visited | edge_band if it lies along an edge, else walled_off | turns mean a solid object |
//! | 9 | thin strip along an edge | edge_band | |
//! | 10 | share behind the neck below 60 % | narrow_passage if g < 1.5 m, else too_few_visits | below 1.5 m the gap itself lets under one in 500 to 1,000 m of path through, and widening helps; above, guiding helps |
//! | 11 | luck of this layout leaves it often and gives it below 60 % of its share, or paths within 3 m are below half as dense | too_few_visits | more nights do not mend it in proportion |
//! | 12 | else | undetermined | |
//!
//! Approximate: every threshold. The docs show how often the first cause is right on invented gardens.

use crate::clearance::{Clearance, Reach};
use crate::passages::{Neck, Positions, Traffic};
use crate::pocket::Shape;
use crate::stuck::Spot;
use tussock_locate::turns::Turn;
use tussock_plane::{Named, Region};
use tussock_types::{Cause, OutlineSource, Place};

/// Everything from which a cause can be read.
#[derive(Clone, Copy, Debug)]
pub struct Scene<'a> {
    /// Where the edges came from: only a plan can show ground without a way in.
    pub outline: OutlineSource,
    /// Ground on which the machine may drive according to the plan.
    pub ground: &'a Region,
    /// Its clearance.
    pub clearance: &'a Clearance,
    /// What the disc reaches.
    pub reach: &'a Reach,
    /// Its necks, narrowest first, with what the path did at each.
    pub necks: &'a [(Neck, Traffic)],
    /// All turns.
    pub turns: &'a [Turn],
    /// Those without an edge near them.
    pub inner: &'a [Turn],
    /// Stuck spots.
    pub spots: &'a [Spot],
    /// Exclusion zones as drawn.
    pub zones: &'a [Named<Region>],
    /// Driven path.
    pub lines: &'a [&'a [Place]],
    /// Its length.
    pub path_m: f64,
    /// Lawn.
    pub lawn_m2: f64,
    /// Driving hours.
    pub driving_h: f64,
    /// Distance inside the edge at which the machine turns.
    pub setback_m: f64,
    /// Position error that is left, per axis.
    pub error_m: f64,
}

/// What luck says about a pocket.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chance {
    /// Probability that a machine with free access would leave a pocket this wide.
    pub free_fraction: f64,
    /// The same for this layout, station and outings; `None` if it was not simulated.
    pub as_is_fraction: Option<f64>,
    /// Path density there over the lawn's mean, in simulated runs of this layout.
    pub as_is_share_fraction: Option<f64>,
}

/// Why a line of the table holds, with the figures that its message needs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reason {
    /// Narrower than the error.
    TooSmall,
    /// The neck is shut for the machine.
    ShutNeck {
        /// Number of the neck.
        neck: usize,
    },
    /// No way in, according to the plan.
    NoWayIn,
    /// Out of reach along an edge.
    OutOfReachAtEdge,
    /// The zone lies elsewhere.
    Zone {
        /// Number of the zone.
        zone: usize,
        /// Path inside the drawn zone.
        inside_m: f64,
        /// Inner turns at the pocket.
        turns: usize,
    },
    /// A stuck spot on the way.
    Stuck {
        /// Number of the spot.
        spot: usize,
        /// Number of the neck.
        neck: Option<usize>,
    },
    /// Something blocks the neck.
    BlockedNeck {
        /// Number of the neck.
        neck: usize,
        /// Expected number of crossings.
        expected: f64,
        /// Inner turns in front.
        turns: usize,
    },
    /// An object of this size.
    Body {
        /// Turns at it.
        turns: usize,
        /// Share of the free rim with turns.
        wrap_fraction: f64,
    },
    /// A strip along an edge.
    Strip {
        /// Turns at its inner side.
        turns: usize,
    },
    /// Too narrow.
    Narrow {
        /// Number of the neck.
        neck: usize,
    },
    /// Wide enough, but seldom found.
    Seldom {
        /// Number of the neck.
        neck: usize,
    },
    /// Open, and thinly visited.
    Thin {
        /// Path density within 3 m over the lawn's.
        density_fraction: f64,
    },
    /// Nothing holds.
    Nothing,
}

impl Reason {
    /// The cause that this is a reason for.
    pub const fn cause(&self) -> Cause {
        match self {
            Self::TooSmall | Self::Nothing => Cause::Undetermined,
            Self::ShutNeck { .. } | Self::NoWayIn | Self::BlockedNeck { .. } | Self::Body { .. } => {
                Cause::WalledOff
            }
            Self::OutOfReachAtEdge | Self::Strip { .. } => Cause::EdgeBand,
            Self::Zone { .. } => Cause::ZoneMisplaced,
            Self::Stuck { .. } => Cause::BeyondStuckSpot,
            Self::Narrow { .. } => Cause::NarrowPassage,
            Self::Seldom { .. } | Self::Thin { .. } => Cause::TooFewVisits,
        }
    }
}

/// Reasons, the likeliest first.
#[derive(Clone, Debug, PartialEq)]
pub struct Judgement {
    /// Reasons.
    pub reasons: Vec<Reason>,
    /// The neck before the pocket.
    pub neck: Option<usize>,
}

/// Free width below which it is the gap itself that keeps the machine out.
pub const NARROW_M: f64 = 1.5;
/// Larger errors are those of metre logs.
const METRES_M: f64 = 0.4;

/// Reads the table for one pocket.
pub fn judge(scene: &Scene<'_>, shape: &Shape, chance: Chance) -> Judgement {
    let neck = scene
        .necks
        .iter()
        .position(|(neck, _)| shape.behind_fraction(scene.clearance, neck) >= 0.6);
    let table = Table {
        scene,
        shape,
        chance,
        neck,
        facts: Facts::of(scene, shape),
    };
    let first = table.reasons(1.0).next().unwrap_or(Reason::Nothing);
    let mut reasons = vec![first];
    if !matches!(first, Reason::TooSmall | Reason::Nothing) {
        for more in table.reasons(0.7) {
            let is_new = reasons.iter().all(|reason| reason.cause() != more.cause());
            if is_new && !matches!(more, Reason::TooSmall | Reason::Nothing) {
                reasons.push(more);
            }
        }
    }
    Judgement { reasons, neck }
}

/// Figures about a pocket that several lines need.
struct Facts {
    /// Inner turns next to it.
    turns: usize,
    /// Share of its free rim that has an inner turn nearby.
    wrap_fraction: f64,
    /// Share of its rim next to an edge of the plan.
    contact_fraction: f64,
    /// Whether the turns along it keep a constant distance from the edge.
    is_along_edge: bool,
    /// Path density within 3 m over the lawn's.
    density_fraction: f64,
    reach_fraction: f64,
    anywhere_fraction: f64,
}

impl Facts {
    fn of(scene: &Scene<'_>, shape: &Shape) -> Self {
        let (s, err) = (scene.setback_m.max(0.0), scene.error_m);
        let at: Vec<&Turn> = scene
            .inner
            .iter()
            .filter(|turn| shape.distance_m(turn.place) <= s + 0.45 + 1.5 * err)
            .collect();
        let contact_m = 0.25 + s + err;
        let edge_at = |place: Place| scene.clearance.at_m(place);
        let free: Vec<Place> = shape
            .rim
            .iter()
            .copied()
            .filter(|place| edge_at(*place) > contact_m)
            .collect();
        let wrapped = free
            .iter()
            .filter(|place| {
                at.iter()
                    .any(|turn| turn.place.distance_m(**place) <= 1.0 + s + err)
            })
            .count();
        let share = |part: usize, of: usize| part as f64 / (of as f64).max(1.0);
        let fraction = |mask: &[bool]| {
            let hit = |place: &&Place| scene.clearance.cell(**place).is_some_and(|cell| mask[cell]);
            share(shape.cells.iter().filter(hit).count(), shape.cells.len())
        };
        Self {
            turns: at.len(),
            wrap_fraction: share(wrapped, free.len()),
            contact_fraction: 1.0 - share(free.len(), shape.rim.len()),
            is_along_edge: keeps_one_distance(scene.inner, &at, err),
            density_fraction: density(scene, shape),
            reach_fraction: fraction(&scene.reach.reached),
            anywhere_fraction: fraction(&scene.reach.anywhere),
        }
    }
}

/// Whether a row of linked turns that includes some of the pocket's own keeps a constant distance from the edge over three
/// times that distance. A strip may be in pieces, and the row goes on beyond a piece.
fn keeps_one_distance(turns: &[Turn], own: &[&Turn], error_m: f64) -> bool {
    const LINK_M: f64 = 2.5;
    crate::turns::linked(turns.iter().map(|turn| turn.place), LINK_M)
        .into_iter()
        .filter(|group| group.len() >= 4)
        .filter(|group| {
            group
                .iter()
                .any(|turn| own.iter().any(|mine| mine.place == turns[*turn].place))
        })
        .any(|group| {
            let mut off: Vec<f64> = group.iter().map(|turn| turns[*turn].edge_m).collect();
            off.sort_by(f64::total_cmp);
            let (low_m, middle_m, high_m) = (off[off.len() / 4], off[off.len() / 2], off[3 * off.len() / 4]);
            let length_m = group
                .iter()
                .flat_map(|a| group.iter().map(move |b| (a, b)))
                .map(|(a, b)| turns[*a].place.distance_m(turns[*b].place))
                .fold(0.0, f64::max);
            high_m - low_m <= 0.25 + error_m && middle_m <= 2.0 && length_m >= 3.0 * middle_m
        })
}

/// Path within 3 m of a pocket, per ground there, against the lawn's mean.
fn density(scene: &Scene<'_>, shape: &Shape) -> f64 {
    const AROUND_M: f64 = 3.0;
    const STEP_M: f64 = 0.5;
    let cell_m2 = scene.clearance.grid.cell_m2();
    let near = shape.around(scene.clearance, AROUND_M);
    let ground_m2 = near.iter().filter(|one| **one).count() as f64 * cell_m2;
    if ground_m2 < 1.0 || !(scene.path_m > 0.0) {
        return 1.0;
    }
    let mut inside_m = 0.0;
    for line in scene.lines {
        for pair in line.windows(2) {
            let (piece_m, places) = pair[0].pieces(pair[1], STEP_M);
            for place in places {
                if scene.clearance.cell(place).is_some_and(|cell| near[cell]) {
                    inside_m += piece_m;
                }
            }
        }
    }
    inside_m / ground_m2 / (scene.path_m / scene.lawn_m2.max(1e-9))
}

struct Table<'a> {
    scene: &'a Scene<'a>,
    shape: &'a Shape,
    chance: Chance,
    neck: Option<usize>,
    facts: Facts,
}

impl Table<'_> {
    /// Lines of the table that hold, in order, with thresholds multiplied by `firm` (1: as they are).
    fn reasons(&self, firm: f64) -> impl Iterator<Item = Reason> + '_ {
        let lines: [fn(&Self, f64) -> Option<Reason>; 9] = [
            Self::too_small,
            Self::shut,
            Self::out_of_reach,
            Self::zone,
            Self::stuck,
            Self::blocked,
            Self::body,
            Self::strip,
            Self::seldom,
        ];
        let is_known =
            |reason: &Reason| self.scene.outline == OutlineSource::Plan || reason.cause() != Cause::WalledOff;
        (lines.into_iter().filter_map(move |line| line(self, firm))).filter(is_known)
    }

    fn positions(&self) -> Positions {
        Positions::of(self.scene.error_m)
    }

    fn too_small(&self, firm: f64) -> Option<Reason> {
        (self.shape.widest_m < firm * 4.0 * self.scene.error_m).then_some(Reason::TooSmall)
    }

    fn at_neck(&self) -> Option<(usize, &Neck, f64, Traffic)> {
        let number = self.neck?;
        let (neck, traffic) = self.scene.necks.get(number)?;
        Some((number, neck, traffic.share_ratio(neck), *traffic))
    }

    fn shut(&self, firm: f64) -> Option<Reason> {
        let (number, neck, _, traffic) = self.at_neck()?;
        let slack_m = (0.02 + 0.5 * self.scene.error_m.min(METRES_M)) / firm;
        (neck.free_m(self.scene.setback_m) <= slack_m && !traffic.has_entered(neck, self.positions()))
            .then_some(Reason::ShutNeck { neck: number })
    }

    fn out_of_reach(&self, firm: f64) -> Option<Reason> {
        if self.facts.reach_fraction >= 0.3 / firm {
            return None;
        }
        if self.facts.anywhere_fraction >= 0.3 {
            return Some(Reason::NoWayIn);
        }
        (self.shape.edge_p90_m <= self.scene.setback_m + 0.3).then_some(Reason::OutOfReachAtEdge)
    }

    fn zone(&self, firm: f64) -> Option<Reason> {
        let err = self.scene.error_m;
        let within_m = f64::max(3.0, 1.5 * self.shape.area_m2.sqrt()) / firm;
        if self.facts.turns < 2 {
            return None;
        }
        let rho = self.scene.path_m / self.scene.lawn_m2.max(1e-9);
        self.scene.zones.iter().enumerate().find_map(|(number, zone)| {
            let near = self
                .shape
                .rim
                .iter()
                .map(|place| {
                    if zone.shape.contains(*place) {
                        0.0
                    } else {
                        zone.shape.edge_distance_m(*place)
                    }
                })
                .fold(f64::INFINITY, f64::min);
            if near > within_m {
                return None;
            }
            let area_m2 = zone.shape.area_m2();
            let shrunk_m = (0.2 + 2.0 * err).min(0.35 * area_m2.sqrt());
            let core = zone
                .shape
                .grown_by(-shrunk_m, tussock_plane::Joins::Mitred)
                .ok()?;
            if core.is_empty() {
                return None;
            }
            let inside_m: f64 = self
                .scene
                .lines
                .iter()
                .map(|line| core.length_inside_m(line))
                .sum();
            (inside_m > firm && inside_m > firm * 0.1 * rho * core.area_m2()).then_some(Reason::Zone {
                zone: number,
                inside_m,
                turns: self.facts.turns,
            })
        })
    }

    fn stuck(&self, firm: f64) -> Option<Reason> {
        let spots = self
            .scene
            .spots
            .iter()
            .enumerate()
            .filter(|(_, spot)| spot.episodes >= 2);
        match self.at_neck() {
            Some((number, neck, share, _)) if share < 0.5 / firm => spots
                .filter(|(_, spot)| {
                    let off_m = nearest_on_chord(neck, spot.place) - spot.radius_m.min(1.0);
                    let is_behind = neck.is_behind(self.scene.clearance, spot.place) == Some(true);
                    off_m <= 2.5 / firm + self.scene.error_m
                        || (is_behind && self.shape.distance_m(spot.place) <= 3.0 / firm)
                })
                .max_by_key(|(_, spot)| spot.episodes)
                .map(|(spot, _)| Reason::Stuck {
                    spot,
                    neck: Some(number),
                }),
            Some(_) => None,
            None => spots
                .filter(|(_, spot)| self.shape.distance_m(spot.place) <= 2.0 / firm)
                .max_by_key(|(_, spot)| spot.episodes)
                .map(|(spot, _)| Reason::Stuck { spot, neck: None }),
        }
    }

    fn blocked(&self, firm: f64) -> Option<Reason> {
        let (number, neck, _, traffic) = self.at_neck()?;
        let expected = neck.crossings_expected(traffic.all_m, self.scene.setback_m);
        let is_coarse = self.positions() == Positions::Coarse;
        let needed = if is_coarse { 8.0 } else { 5.0 };
        let reach_m = 0.5 * neck.width_m + neck.length_m + 1.5;
        let turns = self
            .scene
            .inner
            .iter()
            .filter(|turn| turn.place.distance_m(neck.middle) <= reach_m)
            .count()
            .max(self.facts.turns);
        // So many missing crossings need no turns as evidence.
        let turned = is_coarse || turns >= 3 || expected >= 7.0;
        (!traffic.has_entered(neck, self.positions()) && expected >= firm * needed && turned).then_some(
            Reason::BlockedNeck {
                neck: number,
                expected,
                turns,
            },
        )
    }

    fn body(&self, firm: f64) -> Option<Reason> {
        let facts = &self.facts;
        if facts.turns < 3 || facts.wrap_fraction < firm * 0.35 || self.shape.visited_fraction > 0.05 {
            return None;
        }
        let is_strip = facts.contact_fraction >= 0.25
            && self.shape.aspect >= 2.5
            && self.shape.length_m >= 3.0
            && self.shape.edge_p90_m <= 2.2;
        Some(if is_strip || facts.is_along_edge {
            Reason::Strip { turns: facts.turns }
        } else {
            Reason::Body {
                turns: facts.turns,
                wrap_fraction: facts.wrap_fraction,
            }
        })
    }

    fn strip(&self, firm: f64) -> Option<Reason> {
        (self.facts.contact_fraction >= firm * 0.35
            && self.shape.aspect >= firm * 4.0
            && self.shape.length_m >= firm * 4.0
            && self.shape.edge_p90_m <= 1.6 / firm)
            .then_some(Reason::Strip {
                turns: self.facts.turns,
            })
    }

    fn seldom(&self, firm: f64) -> Option<Reason> {
        if let Some((number, neck, share, _)) = self.at_neck()
            && share < 0.6 / firm
        {
            return Some(if neck.free_m(self.scene.setback_m) < NARROW_M {
                Reason::Narrow { neck: number }
            } else {
                Reason::Seldom { neck: number }
            });
        }
        let by_layout = self
            .chance
            .as_is_fraction
            .zip(self.chance.as_is_share_fraction)
            .is_some_and(|(fraction, share)| fraction > 0.05 && share < 0.6 / firm);
        (by_layout || self.facts.density_fraction < 0.5 / firm).then_some(Reason::Thin {
            density_fraction: self.facts.density_fraction,
        })
    }
}

fn nearest_on_chord(neck: &Neck, place: Place) -> f64 {
    place.off_piece_m(neck.across[0], neck.across[1])
}
