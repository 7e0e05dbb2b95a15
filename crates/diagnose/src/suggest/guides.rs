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
/// Parts of its stretch in the pocket by which a guide run is shortened,
const SHORTER: [f64; 2] = [0.67, 0.33];
/// where that saves this much.
const LEAST_CUT_M: f64 = 0.5;
/// Step in which that stretch is measured.
const LOOK_M: f64 = 0.1;
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
                changes.push(self.guide(laid.line.clone(), laid.wire_m, share));
            }
        }
        changes
    }

    /// The machine with one more guide run.
    fn guide(&self, line: Vec<Place>, wire_m: f64, share_fraction: f64) -> Change {
        let mut guides: Vec<Vec<Place>> = self.site.guides.iter().map(|guide| guide.shape.clone()).collect();
        guides.push(line.clone());
        let mut shares = self.site.guide_shares_fraction.clone();
        shares.push(Some(share_fraction));
        let mut cast = self.cast.clone();
        cast.yard = cast.yard.with_guides(&guides, &shares);
        Change {
            geometry: line,
            wire_m: Some(wire_m),
            share_fraction: Some(share_fraction),
            effort_h: 1.0 + wire_m / METRES_AN_HOUR,
            ..self.blank(SuggestionKind::GuideRun, cast)
        }
    }

    /// The same guide run ending earlier in the pocket, the shortest first, then whole with the next smaller share of outings.
    pub(super) fn smaller_guides(&self, largest: &Change, pocket: usize) -> Vec<Change> {
        let (line, mask) = (&largest.geometry, &self.scene.pockets[pocket]);
        let (Some(wire_m), Some(share)) = (largest.wire_m, largest.share_fraction) else {
            return Vec::new();
        };
        let is_inside = |cut_m: &f64| {
            let end = shortened(line, *cut_m).last().copied();
            end.and_then(|end| mask.grid.cell_at(end))
                .is_some_and(|(column, row)| mask.get(column, row))
        };
        let steps = (1..=(way::length_m(line) / LOOK_M) as usize).map(|step| LOOK_M * step as f64);
        let inside_m = steps.take_while(is_inside).last().unwrap_or(0.0);
        let shorter = SHORTER
            .map(|part| (100.0 * part * inside_m).round() / 100.0)
            .into_iter()
            .filter(|cut_m| *cut_m >= LEAST_CUT_M && *cut_m < wire_m)
            .map(|cut_m| self.guide(shortened(line, cut_m), wire_m - cut_m, share));
        let rarer = SHARES.into_iter().rev().find(|less| *less < share);
        let rarer = rarer.map(|less| self.guide(line.clone(), wire_m, less));
        shorter.chain(rarer).collect()
    }
}

/// A line that ends this much earlier, to the centimetre.
fn shortened(line: &[Place], cut_m: f64) -> Vec<Place> {
    let (mut left, mut cut_m) = (line.to_vec(), cut_m);
    while let [.., from, to] = left[..] {
        let piece_m = from.distance_m(to);
        left.pop();
        if piece_m > cut_m {
            left.push(way::rounded(to.towards(from, cut_m / piece_m)));
            break;
        }
        cut_m -= piece_m;
    }
    left
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_shortened_line_loses_whole_pieces_and_a_part_of_one() {
        let line =
            [(0.0, 0.0), (10.0, 0.0), (10.0, 4.0)].map(|(east_m, north_m)| Place::new(east_m, north_m));
        assert_eq!(shortened(&line, 1.0), [line[0], line[1], Place::new(10.0, 3.0)]);
        assert_eq!(shortened(&line, 6.0), [line[0], Place::new(8.0, 0.0)]);
        assert_eq!(shortened(&line, 20.0), [line[0]]);
    }
}
