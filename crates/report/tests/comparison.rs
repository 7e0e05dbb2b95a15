//! Before and after: terminal, page, file.

use crate::garden::{HOSTILE, comparison};
use tussock_report::{
    ReportError, Style, Voice, answer_comparison, comparison_from_json, comparison_to_json, html_comparison,
};
use tussock_types::{Comparison, Said};

fn bare() -> Comparison {
    Comparison {
        findings_before: None,
        findings_after: None,
        pockets: Vec::new(),
        predictions: Vec::new(),
        changed: Vec::new(),
        cautions: Vec::new(),
        ..comparison()
    }
}

#[test]
fn the_answer_says_what_the_change_brought_and_how_sure_that_is() {
    insta::assert_snapshot!(answer_comparison(&comparison(), Style::default()));
}

#[test]
fn a_comparison_comes_back_from_its_file_with_both_grounds() {
    let before = comparison();
    let text = comparison_to_json(&before).unwrap();
    let back = comparison_from_json(text.as_bytes()).unwrap();
    assert_eq!(comparison_to_json(&back).unwrap(), text);
    let squares = |side: &Comparison| {
        let findings = side.findings_before.as_ref().unwrap();
        findings.cells.as_ref().unwrap().visits_expected.clone()
    };
    assert_eq!(squares(&back), squares(&before));
    assert!(
        html_comparison(&back, Voice::default()).unwrap()
            == html_comparison(&before, Voice::default()).unwrap()
    );
    let bare = bare();
    let text = comparison_to_json(&bare).unwrap();
    assert_eq!(comparison_from_json(text.as_bytes()).unwrap(), bare);
}

#[test]
fn the_file_follows_the_published_schema() {
    let path = format!("{}/../../docs/comparison.schema.json", env!("CARGO_MANIFEST_DIR"));
    let schema: serde_json::Value = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    let validator = jsonschema::validator_for(&schema).unwrap();
    for sample in [comparison(), bare()] {
        let value: serde_json::Value = serde_json::from_str(&comparison_to_json(&sample).unwrap()).unwrap();
        let errors: Vec<String> = validator.iter_errors(&value).map(|e| e.to_string()).collect();
        assert!(errors.is_empty(), "{errors:?}");
        let mut less = value.clone();
        less.as_object_mut().unwrap().remove("difference");
        assert!(!validator.is_valid(&less));
    }
}

#[test]
fn a_number_that_is_not_finite_is_refused_by_name() {
    let mut sample = comparison();
    sample.findings_after.as_mut().unwrap().span.path_m = f64::NAN;
    let error = comparison_to_json(&sample).unwrap_err();
    assert!(matches!(&error, ReportError::NotFinite { field, .. } if field == "findings_after.span.path_m"));
}

#[test]
fn the_page_shows_both_maps_and_every_pocket() {
    let page = html_comparison(&comparison(), Voice::default())
        .unwrap()
        .replace('\u{a0}', " ");
    assert_eq!(page.matches("data:image/png;base64,").count(), 2);
    for text in [
        "mended",
        "unchanged",
        "+8.1 points",
        "the prediction holds",
        "0.9 points from night to night",
    ] {
        assert!(page.contains(text), "{text}");
    }
    assert!(
        html_comparison(&bare(), Voice::default())
            .unwrap()
            .contains("Only a summary was kept")
    );
}

#[test]
fn hostile_text_stays_text_before_and_after() {
    let mut sample = comparison();
    let hostile = || HOSTILE.to_owned();
    let said = |fault: String| Said::PlanFault { fault };
    sample.said = vec![said(format!("{HOSTILE}{}", "A".repeat(1 << 20)))];
    sample.tool_version = hostile();
    sample.before.names = vec![hostile(); 1_000];
    sample.pockets[0].id = hostile();
    sample.pockets[0].said = said(hostile());
    sample.predictions[0].id = Some(hostile());
    sample.predictions[0].pocket = hostile();
    sample.cautions = vec![said(hostile())];
    sample.findings_after.as_mut().unwrap().settings.garden.name = Some(hostile());
    let page = html_comparison(&sample, Voice::default()).unwrap();
    assert!(!page.contains("<script>alert") && !page.contains("onload='x'"));
    assert!(page.contains("&lt;script") && page.contains("{{ 7*7 }}"));
    let said = answer_comparison(&sample, Style::default());
    for text in [page, said] {
        assert!(!text.chars().any(|c| c != '\n' && c.is_control()));
        assert!(!text.contains('\u{202e}'));
        assert!(text.len() < 600_000, "{}", text.len());
    }
}
