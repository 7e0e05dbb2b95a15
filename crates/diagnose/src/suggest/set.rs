//! Which changes go together?
//!
//! Question: several pockets can be mended; which changes should be made, in which order, and what does each add to those
//! before it? A second guide run takes outings from the first, and one moved zone may open the way to two pockets, so
//! single gains cannot be added up.
//!
//! Method. Greedily by gain for cost: what most increases the ground of the pockets that is driven over, for its hours of
//! work, given what was chosen already. For a gain that is monotone and submodular (what is added later adds no more than
//! it would have added earlier) this reaches at least 1 - 1/e of the best (Nemhauser, Wolsey & Fisher 1978, DOI
//! 10.1007/BF01588971, for equal costs). A gain once seen therefore bounds later ones, and a change is only run again where
//! its bound is still the best (Minoux 1978). A step must gain for certain (bootstrap of the mean), at least a tenth of its
//! pocket, and the lawn's mean may not fall by more than half a point.
//!
//! Approximate: gains of guide runs are nearly submodular, not exactly. Cost: 32 runs for each suggestion tried in a step,
//! 68 more for the one chosen.

use super::trial::{LAWN_LOSS, Runs, least_mean_gain};
use super::{FIRST_RUNS, RUNS, Told, Workshop, changes};
use crate::night_simulation::{Cast, Fractions};
use std::ops::Range;
use tussock_plane::{Named, Region};
use tussock_simulate::SimulateError;
use tussock_types::math::mean;
use tussock_types::{Estimate, MissedPocket, SetStep, Suggestion, SuggestionKind};

/// A step adds at least this part of its own pocket.
const LEAST_PART: f64 = 0.1;
/// Every change costs the way to the garden as well.
const VISIT_H: f64 = 1.0;

/// Runs of several changes: ground of all pockets that is driven over, as a part of it, and the lawn.
fn of_all(runs: &[Fractions], areas_m2: &[f64]) -> Runs {
    let whole_m2: f64 = areas_m2.iter().sum();
    let part = |run: &Fractions| {
        let parts = run.pockets.iter().zip(areas_m2);
        parts.map(|(part, area_m2)| part * area_m2).sum::<f64>() / whole_m2
    };
    Runs {
        lawn: runs.iter().map(|run| run.lawn).collect(),
        pocket: runs.iter().map(part).collect(),
    }
}

impl Workshop<'_> {
    /// The changes that go together, each with what it adds; empty where that is fewer than two.
    pub(super) fn together(
        &self,
        pockets: &[MissedPocket],
        found: &[Told],
    ) -> Result<Vec<SetStep>, SimulateError> {
        let areas_m2: Vec<f64> = pockets.iter().map(|pocket| pocket.area_m2).collect();
        let whole_m2: f64 = areas_m2.iter().sum();
        let play = |cast: &Cast, numbers: Range<u64>| {
            let runs = cast.play(&self.scene, self.question.seed, numbers)?;
            Ok::<_, SimulateError>(of_all(&runs, &areas_m2))
        };
        let mut now = of_all(&self.before, &areas_m2);
        let mut left: Vec<(f64, &Told)> = found.iter().map(|told| (f64::INFINITY, told)).collect();
        let (mut chosen, mut steps): (Vec<&Suggestion>, Vec<SetStep>) = (Vec::new(), Vec::new());
        // The one with the highest bound is run; if it keeps the highest after that, it is the next step.
        let mut seen: Vec<(String, Cast, Runs)> = Vec::new();
        while let Some(at) = (0..left.len()).max_by(|a, b| left[*a].0.total_cmp(&left[*b].0)) {
            let (_, told) = left[at];
            let suggestion = &told.suggestion;
            if let Some(fresh) = seen.iter().position(|(id, ..)| *id == suggestion.id) {
                let (_, cast, mut runs) = seen.swap_remove(fresh);
                left.remove(at);
                runs.append(play(&cast, FIRST_RUNS..RUNS)?);
                let gained_m2 = whole_m2 * (mean(&runs.pocket) - mean(&now.pocket));
                let own_m2 = pockets
                    .iter()
                    .filter(|pocket| suggestion.pocket_ids.contains(&pocket.id));
                let is_worth = least_mean_gain(&now.pocket, &runs.pocket, self.question.seed) > 0.0
                    && gained_m2 >= LEAST_PART * own_m2.map(|pocket| pocket.area_m2).sum::<f64>()
                    && mean(&runs.lawn) >= mean(&now.lawn) - LAWN_LOSS;
                if is_worth {
                    steps.push(SetStep {
                        id: suggestion.id.clone(),
                        gained_m2,
                        pockets_fraction_after: Estimate {
                            estimate: mean(&runs.pocket),
                            ..runs.pocket_estimate(self.widened)
                        },
                        visited_fraction_after: Estimate {
                            estimate: mean(&runs.lawn),
                            ..runs.lawn_estimate(self.widened)
                        },
                    });
                    chosen.push(suggestion);
                    (now, seen) = (runs, Vec::new());
                }
                continue;
            }
            let with = [chosen.as_slice(), &[suggestion]].concat();
            let Some(cast) = self.with_all(&with) else {
                left.remove(at);
                continue;
            };
            let runs = play(&cast, 0..FIRST_RUNS)?;
            let first = &now.pocket[..runs.pocket.len()];
            left[at].0 = (mean(&runs.pocket) - mean(first)) / (VISIT_H + told.effort_h);
            seen.push((suggestion.id.clone(), cast, runs));
        }
        steps.truncate(if steps.len() < 2 { 0 } else { steps.len() });
        Ok(steps)
    }

    /// The machine with all of these changes; `None` if they do not fit together.
    fn with_all(&self, suggestions: &[&Suggestion]) -> Option<Cast> {
        let (mut site, mut times) = (self.site.clone(), 1.0_f64);
        let per_day_h = self.question.fitted.hours / self.question.fitted.days.max(1) as f64;
        for one in suggestions {
            let shape = || Region::from_rings(vec![vec![one.geometry.clone()]]).ok();
            match one.kind {
                SuggestionKind::GuideRun => {
                    site.guides.push(Named {
                        name: one.id.clone(),
                        feature: usize::MAX,
                        shape: one.geometry.clone(),
                    });
                    site.guide_shares_fraction.push(one.outing_share_fraction);
                }
                SuggestionKind::ZoneMove | SuggestionKind::ZoneShrink => {
                    let zone = |zone: &Named<Region>| Some(zone.feature) == one.feature;
                    let number = site.exclusions.iter().position(zone)?;
                    site = changes::with_zone(&site, number, &shape()?);
                }
                SuggestionKind::ZoneAdd => site.exclusions.push(Named {
                    name: one.id.clone(),
                    feature: usize::MAX,
                    shape: shape()?,
                }),
                SuggestionKind::BoundaryShift => site.boundary = Some(shape()?),
                SuggestionKind::MoreHours => {}
            }
            times = times.max(1.0 + one.added_h_per_day.unwrap_or(0.0) / per_day_h);
        }
        if site.guide_shares_fraction.iter().flatten().sum::<f64>() > 1.0 + 1e-9 {
            return None;
        }
        let mut cast = self.on(&site)?;
        cast.run.hours *= times;
        Some(cast)
    }
}
