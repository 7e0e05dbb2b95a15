//! Saved findings come back as they were.

use crate::garden::{bare_findings, findings, full_findings, hostile_findings, inspection};
use tussock_report::{ReportError, from_json, inspection_to_json, to_json};
use tussock_types::{Cells, Findings};

/// NaN equals nothing, so columns are compared by their bits.
fn bits(cells: &Cells) -> Vec<Vec<u32>> {
    let Cells {
        grid: _,
        lawn_fraction,
        visited_probability,
        visits_expected,
        first_visit_s,
        last_visit_s,
    } = cells;
    [
        lawn_fraction,
        visited_probability,
        visits_expected,
        first_visit_s,
        last_visit_s,
    ]
    .iter()
    .map(|column| column.iter().map(|value| value.to_bits()).collect())
    .collect()
}

fn assert_same(left: &Findings, right: &Findings) {
    assert_eq!(left.cells.as_ref().map(bits), right.cells.as_ref().map(bits));
    assert_eq!(
        left.cells.as_ref().map(|cells| cells.grid),
        right.cells.as_ref().map(|cells| cells.grid)
    );
    let without = |findings: &Findings| Findings {
        cells: None,
        ..findings.clone()
    };
    assert_eq!(without(left), without(right));
}

#[test]
fn everything_comes_back_bit_for_bit() {
    for sample in [findings(), full_findings(), bare_findings(), hostile_findings()] {
        let text = to_json(&sample).unwrap();
        let back = from_json(text.as_bytes()).unwrap();
        assert_same(&sample, &back);
        assert_eq!(to_json(&back).unwrap(), text);
    }
}

#[test]
fn zero_has_no_sign_in_any_json() {
    let mut sample = findings();
    sample.missed_pockets[0].east_m = -0.0;
    sample.missed_pockets[0].visited_fraction = -0.0;
    (sample.missed_pockets[0].lat, sample.missed_pockets[0].lon) = (Some(-0.0), Some(-0.0));
    for text in [
        to_json(&sample).unwrap(),
        tussock_report::geojson(&sample).unwrap(),
    ] {
        assert!(
            text.contains("0.0") && !text.contains("-0.0,") && !text.contains("-0.0\n"),
            "{text}"
        );
    }
}

#[test]
fn never_visited_squares_survive_as_nan() {
    let sample = findings();
    let never = |findings: &Findings| {
        findings
            .cells
            .as_ref()
            .unwrap()
            .first_visit_s
            .iter()
            .filter(|seconds| seconds.is_nan())
            .count()
    };
    assert!(never(&sample) > 0);
    let back = from_json(to_json(&sample).unwrap().as_bytes()).unwrap();
    assert_eq!(never(&back), never(&sample));
}

#[test]
fn a_number_that_is_not_finite_is_refused_by_name() {
    let mut sample = findings();
    sample.missed_pockets[1].tape[0].distance_m = f64::INFINITY;
    let error = to_json(&sample).unwrap_err();
    assert_eq!(
        error.to_string(),
        "missed_pockets[1].tape[0].distance_m is inf, expected a finite number"
    );
    let mut look = inspection();
    look.extent_m.1 = f64::NAN;
    let error = inspection_to_json(&look).unwrap_err();
    assert_eq!(error.to_string(), "extent_m[1] is NaN, expected a finite number");
}

#[test]
fn other_versions_and_other_files_are_refused() {
    let text = to_json(&bare_findings()).unwrap();
    let other = text.replacen("\"schema_version\": 2", "\"schema_version\": 1", 1);
    assert_eq!(
        from_json(other.as_bytes()).unwrap_err().to_string(),
        "findings of schema version 1, expected 2; run `tussock analyse` on the log again"
    );
    assert_eq!(
        from_json(b"[]").unwrap_err().to_string(),
        "findings of schema version none, expected 2; run `tussock analyse` on the log again"
    );
    assert!(matches!(
        from_json(b"{\n nonsense").unwrap_err(),
        ReportError::NotFindings { line: 2, .. }
    ));
    assert!(matches!(
        from_json(b"{\"schema_version\": 2}").unwrap_err(),
        ReportError::NotFindings { .. }
    ));
}

#[test]
fn squares_that_do_not_unpack_are_refused_with_their_column() {
    let text = to_json(&findings()).unwrap();
    let mut value: serde_json::Value = serde_json::from_str(&text).unwrap();
    let long = value["cells"]["visits_expected"].clone();
    let try_with = |change: &dyn Fn(&mut serde_json::Value)| {
        let mut value = value.clone();
        change(&mut value["cells"]);
        from_json(value.to_string().as_bytes()).unwrap_err().to_string()
    };
    let error = try_with(&|cells| cells["last_visit_s"] = "!".into());
    assert!(
        error.starts_with("cells, column \"last_visit_s\": no base64"),
        "{error}"
    );
    let error = try_with(&|cells| cells["last_visit_s"] = "AAAA".into());
    assert!(
        error.starts_with("cells, column \"last_visit_s\": no zlib"),
        "{error}"
    );
    let error = try_with(&|cells| cells["grid"]["rows"] = 3.into());
    assert!(error.contains("more than"), "{error}");
    let error = try_with(&|cells| cells["grid"]["rows"] = 1_000.into());
    assert!(error.contains("bytes, expected 240000 numbers"), "{error}");
    let error = try_with(&|cells| cells["grid"]["rows"] = u64::MAX.into());
    assert!(error.contains("at most 64000000 squares"), "{error}");
    let error = try_with(&|cells| cells["grid"]["cell_m"] = 0.0.into());
    assert!(error.contains("positive side"), "{error}");
    let error = try_with(&|cells| cells["packing"] = "another".into());
    assert!(error.contains("\"another\""), "{error}");
    value["cells"]["visits_expected"] = long;
    assert!(from_json(value.to_string().as_bytes()).is_ok());
}
