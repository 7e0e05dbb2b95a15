//! The visits to a garden: order, the customer's pocket, and what stays private.

use crate::garden::{HOSTILE, comparison};
use tussock_report::{Privacy, Style, Voice, answer_visits, html_visits, visits, visits_to_json};
use tussock_types::{Comparison, Said, SiteVisit, VisitDone};

fn on(start_unix_s: f64, who: &str) -> Comparison {
    let mut sample = comparison();
    let visit = SiteVisit {
        who: Some(who.to_owned()),
        when: None,
        machine: Some("mower 7".to_owned()),
        serial: Some("S-112".to_owned()),
        done: Some("moved the zone by the shed".to_owned()),
    };
    let after = sample.findings_after.as_mut().unwrap();
    after.visit = Some(visit);
    after.span.start_unix_s = Some(start_unix_s);
    let before = sample.findings_before.as_mut().unwrap();
    before.complaints[0].said = Some("long grass".to_owned());
    before.complaints[0].answer = Some(Said::PlaceNever {
        pocket: "M2".to_owned(),
        area_m2: 2.0,
    });
    sample.pockets[0].decided_after_nights = Some(2);
    sample
}

fn told(privacy: Privacy) -> Vec<VisitDone> {
    let later = ("b".to_owned(), on(2e9, "Alder"));
    visits(vec![later, ("a".to_owned(), on(1e9, "Birch"))], privacy)
}

#[test]
fn visits_stand_in_the_order_of_their_logs_with_the_pocket_that_the_customer_meant() {
    let told = told(Privacy::Full);
    let folders: Vec<&str> = told.iter().map(|visit| visit.name.as_str()).collect();
    assert_eq!(folders, ["a", "b"]);
    assert_eq!(told[0].pocket.as_ref().unwrap().id, "M2");
    let (text, page) = (
        answer_visits(&told, Style::default()),
        html_visits(&told, Voice::default()).unwrap(),
    );
    for shown in [&text, &page] {
        for part in [
            "Alder",
            "mower 7",
            "S-112",
            "long grass",
            "moved the zone by the shed",
            "M2",
        ] {
            assert!(shown.contains(part), "{part} in {shown}");
        }
        assert!(shown.find("Birch") < shown.find("Alder"));
    }
}

#[test]
fn without_a_complaint_the_largest_pocket_before_is_told_with_its_decision() {
    let mut sample = on(1e9, "Alder");
    sample.findings_before.as_mut().unwrap().complaints.clear();
    let told = visits(vec![("a".to_owned(), sample)], Privacy::Full);
    assert_eq!(told[0].pocket.as_ref().unwrap().id, "M1");
    assert!(answer_visits(&told, Style::default()).contains("decided after 2 nights"));
}

#[test]
fn private_visits_tell_nobody_and_no_day() {
    let told = told(Privacy::Private);
    let all = [
        answer_visits(&told, Style::default()),
        html_visits(&told, Voice::default()).unwrap(),
        visits_to_json(&told).unwrap(),
    ];
    for shown in all {
        assert!(shown.contains("M2"));
        for part in ["Alder", "mower 7", "S-112", "long grass", "by the shed", "2026-"] {
            assert!(!shown.contains(part), "{part} in {shown}");
        }
    }
}

#[test]
fn hostile_visits_stay_text() {
    let told = visits(vec![(HOSTILE.to_owned(), on(1e9, HOSTILE))], Privacy::Full);
    let page = html_visits(&told, Voice::default()).unwrap();
    assert!(!page.contains("<script>alert") && !page.contains("onload='x'"));
    assert!(!answer_visits(&told, Style::default()).contains('\u{202e}'));
}
