//! Causes in words: a sentence for the customer, evidence for and against for the technician.

use crate::causes::{Chance, Judgement, Reason};
use crate::pocket::Shape;
use crate::site_analysis::SiteAnalysis;
use crate::{causes, passages};
use tussock_coverage::luck;
use tussock_types::math;
use tussock_types::{CauseFindings, decimal, plural, times};

/// Sentences about one pocket.
pub(crate) struct Told {
    pub(crate) why: String,
    pub(crate) causes: Vec<CauseFindings>,
}

/// Puts a judgement into words.
pub(crate) fn told(
    judgement: &Judgement,
    shape: &Shape,
    layout: &SiteAnalysis,
    drive: &luck::Drive,
    chance: Chance,
) -> Told {
    let words = Words {
        shape,
        layout,
        drive,
        chance,
        hours: drive.path_m / drive.speed_mps.max(1e-9) / 3600.0,
    };
    let causes = judgement
        .reasons
        .iter()
        .map(|reason| CauseFindings {
            cause: reason.cause(),
            weight_fraction: None,
            evidence_for: words.evidence_for(reason),
            evidence_against: words.evidence_against(reason, judgement),
        })
        .collect();
    let why = judgement
        .reasons
        .first()
        .map(|reason| words.sentence(reason))
        .unwrap_or_default();
    Told { why, causes }
}

struct Words<'a> {
    shape: &'a Shape,
    layout: &'a SiteAnalysis,
    drive: &'a luck::Drive,
    chance: Chance,
    hours: f64,
}

fn metres(value_m: f64) -> String {
    format!("{} m", decimal(value_m, if value_m < 1.0 { 2 } else { 1 }))
}

fn percent(fraction: f64) -> String {
    format!("{:.0} %", 100.0 * fraction)
}

impl Words<'_> {
    fn neck(&self, number: usize) -> Option<&(passages::Neck, passages::Traffic)> {
        self.layout.necks.get(number)
    }

    /// "4 times", or "at least 4 times" where the log may have hidden short visits.
    fn crossings(&self, crossings: usize) -> String {
        let counted = times(crossings);
        if self.layout.error_m > 0.4 && crossings > 0 {
            format!("at least {counted}")
        } else {
            counted
        }
    }

    fn sentence(&self, reason: &Reason) -> String {
        let area = format!("{:.0} m2", self.shape.area_m2);
        match reason {
            Reason::TooSmall => format!(
                "It stayed undriven, but these positions are too poor to show why a gap {} wide was left; walk there.",
                metres(self.shape.widest_m)
            ),
            Reason::ShutNeck { neck } => self.neck(*neck).map_or_else(String::new, |(neck, _)| {
                format!(
                    "The part behind ({:.0} m2) cannot be reached: the gap is {} wide and the mower needs more than {}.",
                    neck.behind_m2,
                    metres(neck.width_m),
                    metres(2.0 * self.layout.setback_m)
                )
            }),
            Reason::NoWayIn => format!(
                "This part ({area}) has no way in: by the plan it is not joined to the ground that the mower starts from."
            ),
            Reason::OutOfReachAtEdge => format!(
                "The mower turns {} before the edge here, so that its disc does not get to this strip.",
                metres(self.layout.setback_m)
            ),
            Reason::Zone { zone, inside_m, .. } => {
                let name = self.layout.zone_name(*zone);
                let way = self.zone_direction(*zone);
                format!(
                    "The zone{} seems to lie elsewhere than it is drawn{way}: the mower drove {inside_m:.0} m inside the drawn zone and turned at a line outside it.",
                    quoted(name)
                )
            }
            Reason::Stuck { spot, neck } => {
                let spot = &self.layout.spots[*spot];
                let minutes = spot.lost_s / 60.0;
                let past = neck
                    .and_then(|number| self.neck(number))
                    .map(|(_, traffic)| traffic.crossings.div_ceil(2));
                let past = match past {
                    Some(past) => format!(" and got past it {}", self.crossings(past)),
                    None => String::new(),
                };
                format!(
                    "The mower got stuck {} ({minutes:.0} min) on the way to this part{past}.",
                    times(spot.episodes)
                )
            }
            Reason::BlockedNeck { neck, expected, .. } => {
                self.neck(*neck).map_or_else(String::new, |(neck, _)| {
                    format!(
                        "The {} passage seems shut: {} to be expected in {:.1} h, none happened.",
                        metres(neck.width_m),
                        plural(expected.round() as usize, "crossing was", "crossings were"),
                        self.hours
                    )
                })
            }
            Reason::Body { turns, .. } => format!(
                "Something about {} wide stands here that the plan does not show: the mower turned round at it {} and never got in.",
                metres(self.shape.widest_m),
                times(*turns)
            ),
            Reason::Strip { turns } => {
                let width_m = self.shape.area_m2 / self.shape.length_m.max(0.1);
                let edge = self.edge_words();
                let turned = if *turns >= 3 {
                    format!(
                        ": the mower turns {} before the edge here, {} elsewhere",
                        metres(self.turn_distance_here_m()),
                        metres(self.layout.setback_m.max(0.0))
                    )
                } else {
                    String::new()
                };
                format!(
                    "Along {} of {edge} a strip {} wide stays{turned}.",
                    metres(self.shape.length_m),
                    metres(width_m)
                )
            }
            Reason::Narrow { neck } => self.neck(*neck).map_or_else(String::new, |(neck, traffic)| {
                format!(
                    "{} in {:.1} h did the mower find its way through the {} passage; the {:.0} m2 behind got {} of their share.",
                    capital(&match traffic.crossings.div_ceil(2) {
                        0 => "not once".to_owned(),
                        entries => format!("only {}", self.crossings(entries)),
                    }),
                    self.hours,
                    metres(neck.width_m),
                    neck.behind_m2,
                    percent(traffic.share_ratio(neck))
                )
            }),
            Reason::Seldom { neck } => self.neck(*neck).map_or_else(String::new, |(neck, traffic)| {
                format!(
                    "Nothing blocks this part, but the mower comes too seldom: the {:.0} m2 behind the {} passage got {} of their fair share, and at the present outings it will stay so.",
                    neck.behind_m2,
                    metres(neck.width_m),
                    percent(traffic.share_ratio(neck))
                )
            }),
            Reason::Thin { density_fraction } => format!(
                "Nothing blocks this part, but the mower comes too seldom: the ground round it got {} of its fair share.",
                percent(*density_fraction)
            ),
            Reason::Nothing => {
                "It stays undriven more often than luck explains, but this log does not show why; walk there.".to_owned()
            }
        }
    }

    fn evidence_for(&self, reason: &Reason) -> Vec<String> {
        let mut evidence = Vec::new();
        match reason {
            Reason::TooSmall | Reason::Nothing => evidence.push(self.odds()),
            Reason::ShutNeck { neck } | Reason::Narrow { neck } | Reason::Seldom { neck } => {
                if let Some((neck, traffic)) = self.neck(*neck) {
                    evidence.push(format!(
                        "Narrowest width {}, of it {} free for the mower's middle, {} long.",
                        metres(neck.width_m),
                        metres(neck.free_m(self.layout.setback_m).max(0.0)),
                        metres(neck.length_m)
                    ));
                    let expected = neck.crossings_expected(traffic.all_m, self.layout.setback_m);
                    let expected = expected.round() as usize;
                    if traffic.crossings.max(expected) > 0 {
                        evidence.push(format!(
                            "Changed sides {}; free roaming would have {} on this path.",
                            self.crossings(traffic.crossings),
                            times(expected)
                        ));
                    }
                    evidence.push(format!(
                        "{:.0} m driven behind it, {} of the fair share.",
                        traffic.behind_m,
                        percent(traffic.share_ratio(neck))
                    ));
                }
            }
            Reason::NoWayIn => evidence.push("No path was driven in it.".to_owned()),
            Reason::OutOfReachAtEdge => evidence.push(format!(
                "Nine of ten of its cells lie within {} of the edge.",
                metres(self.shape.edge_p90_m)
            )),
            Reason::Zone { inside_m, turns, .. } => {
                evidence.push(format!("{inside_m:.0} m of path inside the zone as drawn."));
                evidence.push(format!(
                    "{} beside this pocket, where the plan has no edge.",
                    plural(*turns, "turn", "turns")
                ));
            }
            Reason::Stuck { spot, neck } => {
                let spot = &self.layout.spots[*spot];
                evidence.push(format!(
                    "{}, {:.0} min in all, {} without one.",
                    plural(spot.episodes, "stop", "stops"),
                    spot.lost_s / 60.0,
                    plural(spot.passes_through, "pass", "passes")
                ));
                if let Some((neck, traffic)) = neck.and_then(|number| self.neck(number)) {
                    evidence.push(format!(
                        "The part behind got {} of its fair share.",
                        percent(traffic.share_ratio(neck))
                    ));
                }
            }
            Reason::BlockedNeck { expected, turns, .. } => {
                evidence.push(format!(
                    "{} expected, 0 counted.",
                    plural(expected.round() as usize, "crossing", "crossings")
                ));
                evidence.push(format!(
                    "{} in front of it, where the plan has no edge.",
                    plural(*turns, "turn", "turns")
                ));
            }
            Reason::Body { turns, wrap_fraction } => {
                evidence.push(format!(
                    "{} at it, along {} of its free rim.",
                    plural(*turns, "turn", "turns"),
                    percent(*wrap_fraction)
                ));
                let passes = self.passes_expected().round() as usize;
                if passes > 0 {
                    let passes = plural(passes, "pass", "passes");
                    evidence.push(format!(
                        "{passes} over ground of this width to be expected, none came."
                    ));
                }
            }
            Reason::Strip { turns } => {
                evidence.push(format!(
                    "{} long, {} at its widest, nine of ten cells within {} of the edge.",
                    metres(self.shape.length_m),
                    metres(self.shape.widest_m),
                    metres(self.shape.edge_p90_m)
                ));
                if *turns > 0 {
                    evidence.push(format!(
                        "{} along its inner side.",
                        plural(*turns, "turn", "turns")
                    ));
                }
            }
            Reason::Thin { density_fraction } => {
                evidence.push(format!(
                    "Within 3 m of it {} of the lawn's mean path was driven.",
                    percent(*density_fraction)
                ));
                if let Some(share) = self.chance.as_is_share_fraction {
                    evidence.push(format!(
                        "Simulated runs from this station give it {} of the lawn's mean.",
                        percent(share)
                    ));
                }
            }
        }
        evidence
    }

    fn evidence_against(&self, reason: &Reason, judgement: &Judgement) -> Vec<String> {
        let mut against = Vec::new();
        let error_m = self.layout.error_m;
        match reason {
            Reason::ShutNeck { neck } => {
                if let Some((neck, _)) = self.neck(*neck)
                    && neck.free_m(self.layout.setback_m) > -0.05
                {
                    against.push("The gap is within 5 cm of what the mower needs: measure it.".to_owned());
                }
            }
            Reason::Body { turns, .. } if *turns < 6 => {
                against.push(format!("Only {}.", plural(*turns, "turn", "turns")))
            }
            Reason::BlockedNeck { .. } if error_m > 0.4 => {
                against.push("Positions this poor hide short visits.".to_owned());
            }
            Reason::Strip { .. } if self.shape.widest_m < 3.0 * error_m => {
                against.push("The strip is thinner than three times the position error.".to_owned());
            }
            Reason::Zone { .. } => {
                against.push("The zone may be drawn right and opened on purpose.".to_owned());
            }
            Reason::Stuck { .. } => {
                if let Some((neck, _)) = judgement.neck.and_then(|number| self.neck(number))
                    && neck.free_m(self.layout.setback_m) < causes::NARROW_M
                {
                    against.push(format!(
                        "The part also lies behind a {} passage.",
                        metres(neck.width_m)
                    ));
                }
            }
            Reason::Narrow { neck } | Reason::Seldom { neck } => {
                if let Some((_, traffic)) = self.neck(*neck)
                    && traffic.crossings > 0
                    && self.hours < 12.0
                {
                    against.push("One lucky outing would change these figures much.".to_owned());
                }
            }
            Reason::Thin { .. } if self.chance.as_is_fraction.is_some_and(|fraction| fraction > 0.05) => {
                against.push("Luck of these outings leaves such a place now and then.".to_owned());
            }
            _ => {}
        }
        against
    }

    /// How unlikely luck is.
    fn odds(&self) -> String {
        let width = metres(self.shape.widest_m);
        match self.drive.pattern {
            luck::Pattern::Lanes => format!("A whole tour of lanes leaves no gap {width} wide to luck."),
            luck::Pattern::Roaming if self.chance.free_fraction < 0.001 => {
                format!("Luck alone leaves a gap {width} wide in less than 1 of 1,000 such lawns.")
            }
            luck::Pattern::Roaming => format!(
                "Luck alone leaves a gap {width} wide in about 1 of {:.0} such lawns.",
                1.0 / self.chance.free_fraction.max(1e-9)
            ),
        }
    }

    /// Passes over a body of the pocket's width: legs that hit a disc, 2 rho R.
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

    /// "the north edge": the side of the lawn on which it lies.
    fn edge_words(&self) -> String {
        let edge = self.layout.region.edges().map(|(from, to)| {
            let at = tussock_plane::nearest_on_piece(from, to, self.shape.place);
            (at.distance_m(self.shape.place), from, to)
        });
        let Some((_, from, to)) = edge.min_by(|a, b| a.0.total_cmp(&b.0)) else {
            return "the edge".to_owned();
        };
        // Outwards from the pocket's middle to the edge.
        let at = tussock_plane::nearest_on_piece(from, to, self.shape.place);
        let (east_m, north_m) = (
            at.east_m - self.shape.place.east_m,
            at.north_m - self.shape.place.north_m,
        );
        format!(
            "the {} edge",
            crate::spots::compass(math::atan2(east_m, north_m).to_degrees().rem_euclid(360.0))
        )
    }

    /// ", about 1.2 m further east": from the drawn zone to the undriven ground.
    fn zone_direction(&self, zone: usize) -> String {
        let Some(middle) = self.layout.zone_middle(zone) else {
            return String::new();
        };
        let (east_m, north_m) = (
            self.shape.place.east_m - middle.east_m,
            self.shape.place.north_m - middle.north_m,
        );
        if math::hypot(east_m, north_m) < 0.3 {
            return String::new();
        }
        format!(
            ", further {}",
            crate::spots::compass(math::atan2(east_m, north_m).to_degrees().rem_euclid(360.0))
        )
    }
}

fn quoted(name: &str) -> String {
    if name.is_empty() {
        String::new()
    } else {
        format!(" \"{name}\"")
    }
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters
        .next()
        .map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
