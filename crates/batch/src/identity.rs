//! Is this the same pocket as last night?
//!
//! It is if the two overlap by at least half of the smaller one. Of several, the one with the largest overlap keeps the
//! name; the others get new names. A pocket that does not show for several nights is remembered for two weeks, so that a
//! night in which a lucky drive or a missing log hid it does not give it another name.
//!
//! Identities follow from the nights' pockets alone: a late night is inserted in order and the nights after it are named
//! again.

use crate::night::{self, NightNumber};
use crate::table::{POCKETS, TableRow, Value};
use std::collections::BTreeMap;
use tussock::plane::Region;
use tussock_types::Place;

/// A pocket is remembered for this many nights.
pub(crate) const MEMORY_NIGHTS: NightNumber = 14;
const LEAST_SHARE: f64 = 0.5;

struct KnownPocket {
    id: String,
    first_night: String,
    nights: i64,
    last: NightNumber,
    region: Region,
}

/// Names the pockets of a garden over its nights. `before` are rows of the nights before the first one to be named; they
/// already have names. Rows of `nights` get `id`, `first_night` and `nights`.
pub(crate) fn name(before: &[(NightNumber, TableRow)], nights: &mut BTreeMap<NightNumber, Vec<TableRow>>) {
    let (id_at, first_at, nights_at) = (POCKETS.at("id"), POCKETS.at("first_night"), POCKETS.at("nights"));
    let mut known: Vec<KnownPocket> = Vec::new();
    let mut sorted: Vec<&(NightNumber, TableRow)> = before.iter().collect();
    sorted.sort_by_key(|(night, _)| *night);
    for (night, row) in sorted {
        let (Some(id), Some(first), Some(count)) =
            (row[id_at].text(), row[first_at].text(), row[nights_at].count())
        else {
            continue;
        };
        known.retain(|one| one.id != id);
        known.push(KnownPocket {
            id: id.to_owned(),
            first_night: first.to_owned(),
            nights: count,
            last: *night,
            region: region(row),
        });
    }
    for (night, rows) in nights {
        known.retain(|one| night - one.last <= MEMORY_NIGHTS);
        let regions: Vec<Region> = rows.iter().map(region).collect();
        let mut pairs: Vec<(f64, usize, usize)> = Vec::new();
        for (at, new) in regions.iter().enumerate() {
            for (old_at, old) in known.iter().enumerate() {
                let smaller_m2 = new.area_m2().min(old.region.area_m2());
                // If polygon work fails the pockets count as different: a new name does less harm than a wrong one.
                let common_m2 = new.intersect(&old.region).map_or(0.0, |common| common.area_m2());
                if smaller_m2 > 0.0 && common_m2 >= LEAST_SHARE * smaller_m2 {
                    pairs.push((common_m2, at, old_at));
                }
            }
        }
        pairs.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)).then(a.2.cmp(&b.2)));
        let mut heir: Vec<Option<usize>> = vec![None; rows.len()];
        let mut taken = vec![false; known.len()];
        for (_, at, old_at) in pairs {
            if heir[at].is_none() && !taken[old_at] {
                heir[at] = Some(old_at);
                taken[old_at] = true;
            }
        }
        for ((row, region), heir) in rows.iter_mut().zip(regions).zip(heir) {
            let words = night::words(*night);
            match heir {
                Some(old_at) => {
                    let old = &mut known[old_at];
                    old.nights += i64::from(old.last != *night);
                    old.last = *night;
                    old.region = region;
                }
                None => known.push(KnownPocket {
                    id: format!("{words}/{}", row[1].text().unwrap_or_default()),
                    first_night: words,
                    nights: 1,
                    last: *night,
                    region,
                }),
            }
            let Some(one) = heir.map_or(known.last(), |at| known.get(at)) else {
                continue;
            };
            row[id_at] = one.id.clone().into();
            row[first_at] = one.first_night.clone().into();
            row[nights_at] = Value::Count(one.nights);
        }
    }
}

/// The ground of a row; empty if its outline is not sound.
fn region(row: &TableRow) -> Region {
    row[POCKETS.at("outline")]
        .text()
        .and_then(|text| serde_json::from_str::<Vec<Vec<(f64, f64)>>>(text).ok())
        .map(|rings| {
            rings
                .iter()
                .map(|ring| {
                    ring.iter()
                        .map(|(east_m, north_m)| Place::new(*east_m, *north_m))
                        .collect()
                })
                .collect::<Vec<Vec<Place>>>()
        })
        .and_then(|rings| Region::from_rings(vec![rings]).ok())
        .unwrap_or_else(Region::empty)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pocket(name: &str, west_m: f64, side_m: f64) -> TableRow {
        let mut row = POCKETS.empty();
        row[0] = "g".into();
        row[1] = name.into();
        let east_m = west_m + side_m;
        let ring = [
            (west_m, 0.0),
            (east_m, 0.0),
            (east_m, side_m),
            (west_m, side_m),
            (west_m, 0.0),
        ];
        row[POCKETS.at("outline")] = serde_json::to_string(&[ring]).unwrap().into();
        row
    }

    fn ids(rows: &[TableRow]) -> Vec<String> {
        rows.iter()
            .map(|row| format!("{} {}", row[2].text().unwrap(), row[4].count().unwrap()))
            .collect()
    }

    #[test]
    fn a_pocket_keeps_its_name_while_half_of_the_smaller_stays() {
        let mut nights = BTreeMap::from([
            (20_000, vec![pocket("M1", 0.0, 2.0), pocket("M2", 10.0, 1.0)]),
            // Moved by half a metre; when it is moved by one, half of it overlaps.
            (20_001, vec![pocket("M1", 10.5, 1.0), pocket("M2", 0.5, 2.0)]),
            (20_003, vec![pocket("M1", 1.6, 2.0), pocket("M2", 20.0, 2.0)]),
            (20_040, vec![pocket("M1", 1.6, 2.0)]),
        ]);
        name(&[], &mut nights);
        assert_eq!(ids(&nights[&20_000]), ["2024-10-04/M1 1", "2024-10-04/M2 1"]);
        assert_eq!(ids(&nights[&20_001]), ["2024-10-04/M2 2", "2024-10-04/M1 2"]);
        // 0.9 of 2 m are common: less than half.
        assert_eq!(ids(&nights[&20_003]), ["2024-10-07/M1 1", "2024-10-07/M2 1"]);
        // After more than two weeks it is another.
        assert_eq!(ids(&nights[&20_040]), ["2024-11-13/M1 1"]);
    }

    #[test]
    fn naming_in_two_steps_is_naming_in_one() {
        let all = |from: NightNumber| -> BTreeMap<NightNumber, Vec<TableRow>> {
            (from..20_006)
                .map(|night| {
                    let drift_m = 0.3 * f64::from(night - 20_000);
                    (
                        night,
                        vec![pocket("M1", drift_m, 1.5), pocket("M2", 8.0 - drift_m, 1.0)],
                    )
                })
                .collect()
        };
        let mut whole = all(20_000);
        name(&[], &mut whole);
        let before: Vec<(NightNumber, TableRow)> = whole
            .range(..20_003)
            .flat_map(|(night, rows)| rows.iter().map(|row| (*night, row.clone())))
            .collect();
        let mut rest = all(20_003);
        name(&before, &mut rest);
        assert!(rest.iter().all(|(night, rows)| whole[night] == *rows));
    }
}
