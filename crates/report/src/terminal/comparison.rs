//! What did a change bring, in about twenty lines?

use super::{Sheet, Style};
use crate::messages::{named, say};
use crate::words::{self, area, percent};
use tussock_types::{ComparedPocket, ComparedSide, Comparison, LawnWhen};

/// Pockets that are shown; the page shows all.
const POCKETS_SHOWN: usize = 6;
/// Predictions that are shown.
const PREDICTIONS_SHOWN: usize = 4;

/// The answer of a comparison as text.
pub fn answer_comparison(comparison: &Comparison, style: Style) -> String {
    let mut sheet = Sheet::new(style);
    sheet.headline(&words::comparison_said(comparison));
    sheet.blank();
    side(&mut sheet, "Before", &comparison.before);
    side(&mut sheet, "After", &comparison.after);
    let difference = &comparison.difference;
    sheet.row(
        "Difference",
        &format!(
            "{}; {}",
            words::points_with_interval(difference.visited_fraction),
            words::difference_meaning(difference.is_real)
        ),
    );
    sheet.indented(super::LABEL_COLUMNS, &words::difference_sources(difference));
    sheet.row(
        "Ground",
        &say!("both-plans-have-area", area = area(comparison.common_m2)),
    );
    for ground in &comparison.changed {
        let when = match ground.lawn {
            LawnWhen::Before => "was lawn only before",
            LawnWhen::After => "is lawn only since",
        };
        sheet.indented(super::LABEL_COLUMNS, &format!("{} {when}", area(ground.area_m2)));
    }
    pockets(&mut sheet, &comparison.pockets);
    for held in comparison.predictions.iter().take(PREDICTIONS_SHOWN) {
        let built = if held.was_built { "built" } else { "not built" };
        sheet.row(
            &say!("change-id", id = words::plain(&held.id, 5)),
            &say!(
                "predicted-for",
                built = built,
                id = words::plain(&held.pocket, 8),
                percent = percent(held.predicted_fraction.estimate),
                interval = words::interval(held.predicted_fraction),
                percent_2 = percent(held.measured_fraction),
                held = words::prediction_meaning(held)
            ),
        );
    }
    for caution in comparison.cautions.iter().take(2) {
        sheet.row("Beware", &crate::text(caution));
    }
    sheet.into_text()
}

fn side(sheet: &mut Sheet, label: &str, side: &ComparedSide) {
    let equal = side
        .at_equal_hours_fraction
        .map(|fraction| say!("after-equal", percent = percent(fraction)))
        .unwrap_or_default();
    sheet.row(
        label,
        &say!(
            "driving-percent",
            percent = percent(side.visited_fraction.estimate),
            interval = words::interval(side.visited_fraction),
            equal = equal,
            count = say!("count-night", count = side.nights as usize),
            hours = words::hours(side.driving_h)
        ),
    );
}

fn pockets(sheet: &mut Sheet, pockets: &[ComparedPocket]) {
    if pockets.is_empty() {
        sheet.row("Pockets", "none on either side");
        return;
    }
    sheet.row("Pockets", &words::pocket_changes(pockets));
    let right = |text: &str, width: usize| {
        format!("{}{text}", " ".repeat(width.saturating_sub(words::columns(text))))
    };
    let line = |id: &str, size: &str, before: &str, after: &str, change: &str| {
        format!(
            "  {:<4}{}{}{}  {change}",
            words::plain(id, 4),
            right(size, 9),
            right(before, 10),
            right(after, 10)
        )
    };
    sheet.line(&line("id", "area", "before", "after", "what became of it"));
    for pocket in pockets.iter().take(POCKETS_SHOWN) {
        sheet.line(&line(
            &pocket.id,
            &area(pocket.area_m2),
            &percent(pocket.before_fraction.estimate),
            &percent(pocket.after_fraction.estimate),
            &named("pocket-change", &pocket.change),
        ));
    }
    if pockets.len() > POCKETS_SHOWN {
        sheet.indented(
            2,
            &say!("smaller-pockets", pockets = pockets.len() - POCKETS_SHOWN),
        );
    }
}
