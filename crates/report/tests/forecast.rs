//! The page of a plan that is tried on paper.

use crate::garden::{HOSTILE, forecast};
use tussock_report::{Voice, html_forecast};
use tussock_types::{ForecastDays, PlanForecast, Settings};

fn page(forecast: &PlanForecast, settings: &Settings) -> String {
    html_forecast(forecast, settings, "0.1.0", Voice::default())
        .unwrap()
        .replace('\u{a0}', " ")
}

#[test]
fn the_page_tells_reach_days_passages_wire_and_what_is_assumed() {
    let mut settings = Settings::default();
    settings.machine.cut_width_m = Some(0.22);
    let page = page(&forecast(), &settings);
    for text in [
        "One part of the lawn, 3.2 m² in all, cannot be reached.",
        "takes about 9.0 h of work a day",
        "Driven over after 1 day",
        "in nine of ten runs 74.0 % to 80.0 %",
        "50.0 % of runs after 3 days",
        "trim them by hand",
        "Weak places, and why",
        "What would mend them",
        "Before you dig",
        "Local codes",
    ] {
        assert!(page.contains(text), "{text}");
    }
    assert_eq!(page.matches("data:image/png;base64,").count(), 1);
}

#[test]
fn without_a_width_the_page_says_what_to_give_and_draws_nothing() {
    let bare = PlanForecast {
        days: None,
        typical: None,
        passage_done_fraction: Vec::new(),
        out_of_reach: Vec::new(),
        ..forecast()
    };
    let page = page(&bare, &Settings::default());
    assert!(!page.contains("gets everywhere") && page.contains("machine.cut_width_m"));
    assert!(!page.contains("data:image/png") && !page.contains("trim them"));
}

#[test]
fn a_promise_that_no_hours_keep_is_said_to_be_one_and_names_stay_text() {
    let mut settings = Settings::default();
    settings.garden.name = Some(HOSTILE.to_owned());
    let mut forecast = forecast();
    let days = forecast.days.take().unwrap();
    forecast.days = Some(ForecastDays {
        needed_h_per_day: None,
        ..days
    });
    let page = page(&forecast, &settings);
    assert!(page.contains("cannot be reached with more hours alone"));
    assert!(!page.contains("<script>alert") && !page.contains(HOSTILE));
}
