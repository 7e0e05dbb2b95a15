//! The invented garden before and after a guide run was laid.

#![allow(clippy::unwrap_used)]

use super::extras::between;
use super::{M1, M2, findings, full_findings};
use tussock_types::*;

fn pocket(id: &str, found: LawnWhen, index: usize, change: PocketChange) -> ComparedPocket {
    let source = &full_findings().missed_pockets[index];
    let after = match change {
        PocketChange::Mended => between(0.97, 0.94, 0.99),
        PocketChange::Better => between(0.55, 0.4, 0.7),
        PocketChange::Unchanged | PocketChange::New => between(0.01, 0.0, 0.04),
    };
    ComparedPocket {
        id: id.to_owned(),
        found,
        area_m2: source.area_m2,
        middle: Place::new(source.east_m, source.north_m),
        outline: source.outline.clone(),
        change,
        before_fraction: if change == PocketChange::New {
            between(0.96, 0.92, 0.99)
        } else {
            between(0.0, 0.0, 0.03)
        },
        after_fraction: after,
        decided_after_nights: (change == PocketChange::Mended).then_some(1),
        more_nights: (change == PocketChange::Unchanged).then_some(3),
        said: Said::PocketCompared {
            pocket: id.to_owned(),
            before_fraction: 0.0,
            after_fraction: after.estimate,
            change,
            within_luck: Whether::No,
        },
    }
}

/// Everything that a comparison can contain, with no list empty.
pub(crate) fn comparison() -> Comparison {
    let before = full_findings();
    let mut after = findings();
    after.missed_pockets.remove(0);
    let share = before.coverage.as_ref().unwrap().visited_fraction.estimate;
    let side = |name: &str, share: f64, hours: f64| ComparedSide {
        names: vec![name.to_owned()],
        nights: 2,
        driving_h: hours,
        visited_fraction: between(share, share - 0.004, share + 0.004),
        at_equal_hours_fraction: Some(share - 0.002),
    };
    Comparison {
        schema_version: SCHEMA_VERSION,
        tool_version: "0.1.0".to_owned(),
        said: vec![
            Said::LawnMore { points: 8.1 },
            Said::PocketsMended {
                pockets: "M1".to_owned(),
            },
        ],
        common_m2: before.coverage.as_ref().unwrap().lawn_m2 - 4.0,
        changed: vec![ChangedGround {
            area_m2: 4.0,
            middle: M2,
            lawn: LawnWhen::After,
        }],
        before: side("night-0601.nmea", share, 16.0),
        after: side("night-0608.nmea", share + 0.081, 15.0),
        difference: Difference {
            visited_fraction: between(0.081, 0.066, 0.096),
            position_sd_fraction: 0.003,
            nightly_sd_fraction: Some(0.0085),
            is_real: true,
        },
        pockets: vec![
            pocket("M1", LawnWhen::Before, 0, PocketChange::Mended),
            pocket("M2", LawnWhen::Before, 1, PocketChange::Unchanged),
        ],
        predictions: vec![PredictionHeld {
            id: Some("G1".to_owned()),
            built: BuiltAs::Suggested,
            pocket: "M1".to_owned(),
            predicted_fraction: between(0.81, 0.66, 0.9),
            measured_fraction: 0.87,
            holds: true,
        }],
        findings_before: Some(Box::new(before)),
        findings_after: Some(Box::new(Findings {
            missed_pockets: after
                .missed_pockets
                .into_iter()
                .filter(|pocket| pocket.east_m != M1.east_m)
                .collect(),
            ..after
        })),
        cautions: vec![Said::AtEqualHours {}],
    }
}
