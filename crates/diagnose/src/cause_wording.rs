//! Causes as data: why for the customer, evidence for and against for the technician.

use crate::causes;
use crate::causes::{Chance, Judgement, Reason};
use crate::passages::{Neck, Traffic};
use crate::pocket::Shape;
use crate::site_analysis::SiteAnalysis;
use tussock_coverage::luck;
use tussock_types::{Cause, CauseFindings, NextLook, Place, Said, math};

/// What is said about one pocket.
pub(crate) struct CauseWording {
    pub(crate) why: Said,
    pub(crate) causes: Vec<CauseFindings>,
    pub(crate) next_look: Option<Said>,
}

/// A look at the ground is right in this share of cases (common practice, no source).
const LOOK_IS_RIGHT: f64 = 0.9;
/// With less doubt than this between two causes, another night is not worth waiting for: a look costs less.
const LEAST_DOUBT_BITS: f64 = 0.5;

/// Why a pocket was missed.
pub(crate) fn cause_wording(
    judgement: &Judgement,
    shape: &Shape,
    layout: &SiteAnalysis,
    drive: &luck::Drive,
    chance: Chance,
    has_plan: bool,
) -> CauseWording {
    let seen = Seen {
        shape,
        layout,
        drive,
        chance,
        has_plan,
        driven_h: drive.path_m / drive.speed_mps.max(1e-9) / 3600.0,
    };
    let causes = (1..)
        .zip(&judgement.reasons)
        .map(|(rank, reason)| CauseFindings {
            cause: reason.cause(),
            rank,
            certainty_fraction: None,
            evidence_for: seen.evidence_for(reason),
            evidence_against: seen.evidence_against(reason, judgement).into_iter().collect(),
        })
        .collect();
    let first = judgement.reasons.first();
    let next_look = match judgement.reasons.as_slice() {
        [first, second, ..] => Some(next_look(first, second, chance.as_is_fraction, seen.driven_h)),
        _ => None,
    };
    CauseWording {
        why: first
            .and_then(|reason| seen.why(reason))
            .unwrap_or(Said::NotShown {}),
        causes,
        next_look,
    }
}

/// The best way to distinguish two causes that were equally likely before this log: a look at the ground, or another log of
/// the same length. It is the one that removes more entropy (Lindley 1956, DOI 10.1214/aoms/1177728069); what a log would
/// show comes from the simulated nights of the layout.
fn next_look(first: &Reason, second: &Reason, as_is_fraction: Option<f64>, driven_h: f64) -> Said {
    // If one cause shuts the machine out and the other does not, a visit decides; under the open one, this share of logs
    // shows one.
    let shuts = |reason: &Reason| {
        let cause = reason.cause();
        matches!(cause, Cause::WalledOff | Cause::EdgeBand | Cause::ZoneMisplaced)
    };
    let told_fraction = match as_is_fraction {
        Some(left_fraction) if shuts(first) != shuts(second) => 1.0 - left_fraction,
        _ => 0.0,
    };
    // Both were equally likely before this log, which showed no visit: the open one is now as likely as luck makes that.
    let open = (1.0 - told_fraction) / (2.0 - told_fraction);
    let by_log = bits(open * told_fraction) - open * bits(told_fraction);
    let seen_there = open * LOOK_IS_RIGHT + (1.0 - open) * (1.0 - LOOK_IS_RIGHT);
    let by_look = bits(seen_there) - bits(LOOK_IS_RIGHT);
    let is_log = told_fraction > 0.0 && by_log > by_look && bits(open) >= LEAST_DOUBT_BITS;
    let of = |reason: &Reason| match reason {
        Reason::Zone { .. } => Some(NextLook::Zone),
        Reason::Stuck { .. } => Some(NextLook::StuckSpot),
        Reason::ShutNeck { .. } => Some(NextLook::Width),
        Reason::BlockedNeck { .. } => Some(NextLook::Passage),
        Reason::NoWayIn | Reason::Body { .. } => Some(NextLook::Ground),
        Reason::OutOfReachAtEdge | Reason::Strip { .. } => Some(NextLook::Edge),
        _ => None,
    };
    Said::LookDecides {
        look: match of(first).or_else(|| of(second)) {
            _ if is_log => NextLook::AnotherLog,
            Some(look) => look,
            None => NextLook::Width,
        },
        log_h: driven_h,
        told_fraction,
    }
}

/// Entropy of two outcomes, in bits.
fn bits(fraction: f64) -> f64 {
    let part = |p: f64| {
        if p > 0.0 {
            -p * math::ln(p) / std::f64::consts::LN_2
        } else {
            0.0
        }
    };
    part(fraction) + part(1.0 - fraction)
}

/// Two crossings make one visit to the part behind: one in, the next out.
fn entries(traffic: &Traffic) -> u64 {
    traffic.crossings.div_ceil(2) as u64
}

/// Poorer positions hide short visits.
const POOR_M: f64 = 0.4;

struct Seen<'a> {
    shape: &'a Shape,
    layout: &'a SiteAnalysis,
    drive: &'a luck::Drive,
    chance: Chance,
    has_plan: bool,
    driven_h: f64,
}

impl Seen<'_> {
    fn neck(&self, number: usize) -> Option<&(Neck, Traffic)> {
        self.layout.necks.get(number)
    }

    /// Whether the log may have hidden short visits besides those that were counted.
    fn hides(&self, crossings: u64) -> bool {
        self.layout.error_m > POOR_M && crossings > 0
    }

    fn why(&self, reason: &Reason) -> Option<Said> {
        let Shape {
            area_m2,
            widest_m,
            length_m,
            ..
        } = *self.shape;
        let setback_m = self.layout.setback_m;
        Some(match reason {
            Reason::TooSmall => Said::TooNarrowToExplain { widest_m },
            Reason::ShutNeck { neck } => {
                let (neck, _) = self.neck(*neck)?;
                Said::GapTooNarrow {
                    behind_m2: neck.behind_m2,
                    width_m: neck.width_m,
                    needed_m: 2.0 * setback_m,
                }
            }
            Reason::NoWayIn if self.has_plan => Said::NoWayIn { area_m2 },
            Reason::NoWayIn => Said::NoWayInDriven { area_m2 },
            Reason::OutOfReachAtEdge => Said::TurnsBeforeEdge { setback_m },
            Reason::Zone { zone, inside_m, .. } => {
                let middle = self.layout.zone_middle(*zone);
                let (zone, path_m) = (self.layout.zone_name(*zone).to_owned(), *inside_m);
                match middle.filter(|middle| middle.distance_m(self.shape.place) >= 0.3) {
                    Some(middle) => Said::ZoneElsewhereTowards {
                        zone,
                        path_m,
                        towards_deg: course_deg(middle, self.shape.place),
                    },
                    None => Said::ZoneElsewhere { zone, path_m },
                }
            }
            Reason::Stuck { spot, neck } => {
                let spot = &self.layout.spots[*spot];
                let (times, lost_min) = (spot.episodes as u64, spot.lost_s / 60.0);
                match neck
                    .and_then(|number| self.neck(number))
                    .map(|(_, traffic)| entries(traffic))
                {
                    Some(past) => Said::StuckOnTheWayPast {
                        times,
                        lost_min,
                        past,
                        at_least: self.hides(past).into(),
                    },
                    None => Said::StuckOnTheWay { times, lost_min },
                }
            }
            Reason::BlockedNeck { neck, expected, .. } => Said::PassageShut {
                width_m: self.neck(*neck)?.0.width_m,
                expected: expected.round() as u64,
                driven_h: self.driven_h,
            },
            Reason::Body { turns, .. } => {
                let turns = *turns as u64;
                match self.has_plan {
                    true => Said::SomethingStands { widest_m, turns },
                    false => Said::SomethingMayStand { widest_m, turns },
                }
            }
            Reason::Strip { turns } => {
                let (width_m, edge_deg) = (area_m2 / length_m.max(0.1), self.edge_deg());
                if *turns < 3 {
                    Said::StripStays {
                        length_m,
                        width_m,
                        edge_deg,
                    }
                } else {
                    Said::StripStaysTurns {
                        length_m,
                        width_m,
                        edge_deg,
                        here_m: self.turn_distance_here_m(),
                        elsewhere_m: setback_m.max(0.0),
                    }
                }
            }
            Reason::Narrow { neck } => {
                let (neck, traffic) = self.neck(*neck)?;
                Said::PassageSeldomFound {
                    entries: entries(traffic),
                    at_least: self.hides(entries(traffic)).into(),
                    driven_h: self.driven_h,
                    width_m: neck.width_m,
                    behind_m2: neck.behind_m2,
                    share_ratio: traffic.share_ratio(neck),
                }
            }
            Reason::Seldom { neck } => {
                let (neck, traffic) = self.neck(*neck)?;
                Said::BehindPassageSeldom {
                    behind_m2: neck.behind_m2,
                    width_m: neck.width_m,
                    share_ratio: traffic.share_ratio(neck),
                }
            }
            Reason::Thin { density_fraction } => Said::ComesSeldom {
                share_ratio: *density_fraction,
            },
            Reason::Nothing => Said::NotShown {},
        })
    }

    fn evidence_for(&self, reason: &Reason) -> Vec<Said> {
        let Shape {
            widest_m,
            length_m,
            edge_p90_m: within_m,
            ..
        } = *self.shape;
        match reason {
            Reason::TooSmall | Reason::Nothing => vec![self.odds()],
            Reason::ShutNeck { neck } | Reason::Narrow { neck } | Reason::Seldom { neck } => self
                .neck(*neck)
                .map_or_else(Vec::new, |found| self.of_neck(found)),
            Reason::NoWayIn => vec![Said::NothingDrivenIn {}],
            Reason::OutOfReachAtEdge => vec![Said::CellsNearEdge { within_m }],
            Reason::Zone { inside_m, turns, .. } => vec![
                Said::PathInZone { path_m: *inside_m },
                Said::TurnsBeside { turns: *turns as u64 },
            ],
            Reason::Stuck { spot, neck } => {
                let spot = &self.layout.spots[*spot];
                let stops = Said::StopsOnTheWay {
                    stops: spot.episodes as u64,
                    lost_min: spot.lost_s / 60.0,
                    passes: spot.passes_through as u64,
                };
                let behind =
                    neck.and_then(|number| self.neck(number))
                        .map(|(neck, traffic)| Said::ShareBehind {
                            share_ratio: traffic.share_ratio(neck),
                        });
                std::iter::once(stops).chain(behind).collect()
            }
            Reason::BlockedNeck { expected, turns, .. } => vec![
                Said::CrossingsExpected {
                    expected: expected.round() as u64,
                },
                Said::TurnsInFront { turns: *turns as u64 },
            ],
            Reason::Body { turns, wrap_fraction } => {
                let around = Said::TurnsAround {
                    turns: *turns as u64,
                    rim_fraction: *wrap_fraction,
                };
                let passes = self.passes_expected().round() as u64;
                let expected = (passes > 0).then_some(Said::PassesExpected { passes });
                std::iter::once(around).chain(expected).collect()
            }
            Reason::Strip { turns } => {
                let shape = Said::StripShape {
                    length_m,
                    widest_m,
                    within_m,
                };
                let along = (*turns > 0).then_some(Said::TurnsAlong { turns: *turns as u64 });
                std::iter::once(shape).chain(along).collect()
            }
            Reason::Thin { density_fraction } => {
                let nearby = Said::PathNearby {
                    share_ratio: *density_fraction,
                };
                let simulated = self.chance.as_is_share_fraction;
                let simulated = simulated.map(|share_ratio| Said::ShareSimulated { share_ratio });
                std::iter::once(nearby).chain(simulated).collect()
            }
        }
    }

    fn of_neck(&self, (neck, traffic): &(Neck, Traffic)) -> Vec<Said> {
        let setback_m = self.layout.setback_m;
        let crossings = traffic.crossings as u64;
        let expected = neck.crossings_expected(traffic.all_m, setback_m).round() as u64;
        let width = Said::PassageWidth {
            width_m: neck.width_m,
            free_m: neck.free_m(setback_m).max(0.0),
            length_m: neck.length_m,
        };
        let crossed = (crossings.max(expected) > 0).then(|| Said::PassageCrossings {
            crossings,
            expected,
            at_least: self.hides(crossings).into(),
        });
        let behind = Said::DrivenBehind {
            path_m: traffic.behind_m,
            share_ratio: traffic.share_ratio(neck),
        };
        [Some(width), crossed, Some(behind)]
            .into_iter()
            .flatten()
            .collect()
    }

    fn evidence_against(&self, reason: &Reason, judgement: &Judgement) -> Option<Said> {
        let error_m = self.layout.error_m;
        let setback_m = self.layout.setback_m;
        match reason {
            Reason::ShutNeck { neck } => {
                (self.neck(*neck)?.0.free_m(setback_m) > -0.05).then_some(Said::GapNearlyWide {})
            }
            Reason::Body { turns, .. } => (*turns < 6).then_some(Said::FewTurns { turns: *turns as u64 }),
            Reason::BlockedNeck { .. } => (error_m > POOR_M).then_some(Said::VisitsHidden {}),
            Reason::Strip { .. } => (self.shape.widest_m < 3.0 * error_m).then_some(Said::StripThin {}),
            Reason::Zone { .. } => Some(Said::ZoneMayBeOpen {}),
            Reason::Stuck { .. } => {
                let (neck, _) = self.neck(judgement.neck?)?;
                (neck.free_m(setback_m) < causes::NARROW_M).then_some(Said::AlsoBehindPassage {
                    width_m: neck.width_m,
                })
            }
            Reason::Narrow { neck } | Reason::Seldom { neck } => {
                let is_seen = self.neck(*neck)?.1.crossings > 0;
                (is_seen && self.driven_h < 12.0).then_some(Said::OneOutingMatters {})
            }
            Reason::Thin { .. } => (self.chance.as_is_fraction? > luck::MISSED_CHANCE_FRACTION)
                .then_some(Said::LuckLeavesSuch {}),
            _ => None,
        }
    }

    /// How unlikely luck is.
    fn odds(&self) -> Said {
        let width_m = self.shape.widest_m;
        match self.drive.pattern {
            luck::Pattern::Lanes => Said::LuckNotLanes { width_m },
            luck::Pattern::Roaming if self.chance.free_fraction < 0.001 => {
                Said::LuckUnderThousandth { width_m }
            }
            luck::Pattern::Roaming => Said::LuckOneIn {
                width_m,
                lawns: (1.0 / self.chance.free_fraction).round() as u64,
            },
        }
    }

    /// Expected passes over an object of the pocket's width: legs that hit a disc, 2 rho R.
    fn passes_expected(&self) -> f64 {
        self.drive.path_m / self.drive.lawn_m2.max(1e-9) * self.shape.widest_m
    }

    /// Median distance from the edge of the inner turns beside the pocket.
    fn turn_distance_here_m(&self) -> f64 {
        let mut off: Vec<f64> = self
            .layout
            .inner
            .iter()
            .filter(|turn| {
                self.shape.distance_m(turn.place)
                    <= self.layout.setback_m.max(0.0) + 0.45 + 1.5 * self.layout.error_m
            })
            .map(|turn| turn.edge_m)
            .collect();
        off.sort_by(f64::total_cmp);
        off.get(off.len() / 2).copied().unwrap_or(0.0)
    }

    /// Course outwards from the pocket's middle to the nearest edge: the side of the lawn on which the pocket lies.
    fn edge_deg(&self) -> f64 {
        let place = self.shape.place;
        let edges = self.layout.region.edges();
        let nearest = edges
            .map(|(from, to)| tussock_plane::nearest_on_piece(from, to, place))
            .min_by(|a, b| a.distance_m(place).total_cmp(&b.distance_m(place)));
        nearest.map_or(0.0, |at| course_deg(place, at))
    }
}

/// Compass course from one place to another.
fn course_deg(from: Place, to: Place) -> f64 {
    math::atan2(to.east_m - from.east_m, to.north_m - from.north_m)
        .to_degrees()
        .rem_euclid(360.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_abs_diff_eq;

    fn look(first: Reason, second: Reason, as_is_fraction: Option<f64>) -> NextLook {
        match next_look(&first, &second, as_is_fraction, 8.0) {
            Said::LookDecides { look, .. } => look,
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn entropy_is_that_of_every_table() {
        assert_abs_diff_eq!(bits(0.5), 1.0, epsilon = 1e-12);
        assert_abs_diff_eq!(bits(0.9), 0.468_995_593_6, epsilon = 1e-9);
        assert_abs_diff_eq!(bits(0.0) + bits(1.0), 0.0);
    }

    #[test]
    fn another_log_is_asked_for_where_it_tells_more_than_a_look_at_the_ground() {
        let (shut, open) = (
            Reason::BlockedNeck {
                neck: 0,
                expected: 9.0,
                turns: 4,
            },
            Reason::Narrow { neck: 0 },
        );
        // An open passage shows itself in four logs of five, or in one of two; if it always would, this log has already
        // decided.
        assert_eq!(look(shut, open, Some(0.2)), NextLook::AnotherLog);
        assert_eq!(look(shut, open, Some(0.5)), NextLook::Passage);
        assert_eq!(look(shut, open, Some(0.0)), NextLook::Passage);
        assert_eq!(look(shut, open, None), NextLook::Passage);
        // Two causes that both let it in look the same in any log.
        assert_eq!(
            look(
                open,
                Reason::Thin {
                    density_fraction: 0.3
                },
                Some(0.0)
            ),
            NextLook::Width
        );
        assert_eq!(
            look(Reason::NoWayIn, Reason::Strip { turns: 4 }, Some(0.0)),
            NextLook::Ground
        );
    }
}
