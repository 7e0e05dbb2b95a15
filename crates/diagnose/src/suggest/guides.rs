//! Guide runs to try for a pocket.
//!
//! Before any run, those that hardly ever let a machine out inside are dropped: with a share `s` of outings and a fraction
//! `i` of the exits inside, at least one of `n` outings ends inside with probability `1 - (1 - s i)^n`.

use super::{Change, Workshop, way};
use tussock_types::math;
use tussock_types::{Place, SuggestionKind};

/// Shares of outings that are tried.
const SHARES: [f64; 3] = [0.4, 0.6, 0.8];
/// Also tried if there are many outings.
const SMALL_SHARE: f64 = 0.3;
const MANY_OUTINGS: f64 = 8.0;
/// A guide run that lets the machine out inside in fewer than half of the nights is left out.
const LEAST_ODDS: f64 = 0.5;
/// About this many metres can be laid in an hour.
const METRES_AN_HOUR: f64 = 25.0;
/// An existing guide run that ends this close to a pocket's new end is the same one.
const SAME_END_M: f64 = 1.5;

impl Workshop<'_> {
    /// Number of outings in a run as long as the log.
    fn outings(&self) -> f64 {
        let machine = &self.cast.machine;
        let middle_s = |spell: &tussock_simulate::Spell| {
            let (least_s, most_s) = spell.range_s();
            0.5 * (least_s + most_s)
        };
        // The ride home takes a few minutes.
        let round_s = middle_s(&machine.roaming) + middle_s(&machine.charging) + 180.0;
        (self.cast.run.hours * 3600.0 / round_s).ceil().max(1.0)
    }

    pub(super) fn guide_runs(&self, pocket: usize) -> Vec<Change> {
        let Some(station) = self.site.station else {
            return Vec::new();
        };
        let mask = &self.scene.pockets[pocket];
        let existing: Vec<Vec<Place>> = self.site.guides.iter().map(|guide| guide.shape.clone()).collect();
        let taken: f64 = self.site.guide_shares_fraction.iter().flatten().sum();
        let outings = self.outings();
        let exits = self.cast.machine.guide_exit_fraction;
        let mut shares = SHARES.to_vec();
        if outings > MANY_OUTINGS {
            shares.push(SMALL_SHARE);
        }
        let mut changes = Vec::new();
        for (_, laid) in way::guide_lines(&self.room, station, &existing, mask) {
            let is_there = existing.iter().any(|guide| {
                guide
                    .last()
                    .zip(laid.line.last())
                    .is_some_and(|(a, b)| a.distance_m(*b) <= SAME_END_M)
            });
            if is_there {
                continue;
            }
            let inside = way::inside_fraction(&laid.line, exits, mask);
            for share in shares.iter().copied().filter(|share| share + taken <= 1.0 + 1e-9) {
                // Exits just before the mouth help too, so little is required here.
                let odds = 1.0 - math::powf(1.0 - share * inside.max(0.2), outings);
                if odds < LEAST_ODDS {
                    continue;
                }
                let mut guides = existing.clone();
                guides.push(laid.line.clone());
                let mut all_shares = self.site.guide_shares_fraction.clone();
                all_shares.push(Some(share));
                let mut cast = self.cast.clone();
                cast.yard = cast.yard.with_guides(&guides, &all_shares);
                changes.push(Change {
                    geometry: laid.line.clone(),
                    wire_m: Some(laid.wire_m),
                    share_fraction: Some(share),
                    effort_h: 1.0 + laid.wire_m / METRES_AN_HOUR,
                    ..self.blank(SuggestionKind::GuideRun, cast)
                });
            }
        }
        changes
    }
}
