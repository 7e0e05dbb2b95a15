//! Checks that were made, and what follows from those that fail.

use tussock_types::math;
use tussock_types::{Check, CheckKind, Estimate, LogLevel, LogVerdict, Said};

/// What a failed check does to the headline; in words, this is the check's consequence.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Follows {
    /// Nothing here: another stage acts on it, or it only informs.
    Nothing,
    /// The interval is widened to hold this answer too.
    Holds {
        /// The other answer.
        fraction: f64,
    },
    /// The interval becomes this many times as wide, on both sides.
    Times {
        /// The factor.
        times: f64,
    },
    /// The same, and what was counted without the model is held too: fixes do not lie about the path as they should.
    TimesAndAsLogged {
        /// The factor.
        times: f64,
    },
    /// This standard deviation is added to the interval, independent of what it already has.
    Adds {
        /// As a fraction of the lawn.
        sd_fraction: f64,
    },
}

/// The checks that were made, each with its consequence in case it fails.
#[derive(Clone, Debug, Default)]
pub struct Checks(Vec<(Check, Follows)>);

impl Checks {
    /// Adds a check, if it could be made.
    pub fn extend(&mut self, made: Option<(Check, Follows)>) {
        self.0.extend(made);
    }

    /// The headline, with an interval wide enough for the checks that fail.
    pub fn widened(&self, visited: Estimate, as_logged_fraction: f64) -> Estimate {
        // If the two roads contradict each other, the headline does not rest on the path, which all other checks question.
        if self
            .failing()
            .any(|(check, _)| check.check == CheckKind::TwoRoads)
        {
            return visited;
        }
        self.failing()
            .fold(visited, |visited, (_, follows)| match *follows {
                Follows::Nothing => visited,
                Follows::Holds { fraction } => holding(visited, fraction),
                Follows::Times { times } => reaching(visited, |half| times * half),
                Follows::TimesAndAsLogged { times } => {
                    holding(reaching(visited, |half| times * half), as_logged_fraction)
                }
                Follows::Adds { sd_fraction } => {
                    reaching(visited, |half| math::hypot(half, Estimate::END_SDS * sd_fraction))
                }
            })
    }

    /// A log whose interval had to be widened is not a good log, however fine its positions, and no log shows what it leaves
    /// undecided.
    pub fn hold_to(&self, verdict: &mut LogVerdict) {
        let doubts = self.failing().any(|(_, follows)| *follows != Follows::Nothing);
        // An unusable log claims nothing that a check could take back.
        if doubts && verdict.level != LogLevel::Unusable {
            verdict.positions = verdict.positions.max(LogLevel::Limited);
            verdict.level = verdict.level.max(LogLevel::Limited);
        }
        for (check, _) in self.failing() {
            if let Some(Said::ShowsWider { widest_m }) = check.consequence {
                verdict.shows_from(widest_m);
            }
        }
    }

    /// The checks for the findings, in their usual order.
    pub fn into_findings(self) -> Vec<Check> {
        let mut checks: Vec<Check> = self.0.into_iter().map(|(check, _)| check).collect();
        let place = |kind: CheckKind| CheckKind::ALL.iter().position(|one| *one == kind);
        checks.sort_by_key(|check| place(check.check));
        checks
    }

    fn failing(&self) -> impl Iterator<Item = &(Check, Follows)> {
        self.0.iter().filter(|(check, _)| !check.holds)
    }
}

fn holding(visited: Estimate, fraction: f64) -> Estimate {
    Estimate {
        low: visited.low.map(|low| low.min(fraction)),
        high: visited.high.map(|high| high.max(fraction)),
        ..visited
    }
}

/// The interval with both halves changed by the rule, kept within 0 and 1.
fn reaching(visited: Estimate, rule: impl Fn(f64) -> f64) -> Estimate {
    let estimate = visited.estimate;
    Estimate {
        estimate,
        low: visited.low.map(|low| (estimate - rule(estimate - low)).max(0.0)),
        high: visited
            .high
            .map(|high| (estimate + rule(high - estimate)).min(1.0)),
    }
}
