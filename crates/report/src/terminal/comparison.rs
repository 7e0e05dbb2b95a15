//! What did a change bring, in about twenty lines?

use super::{Sheet, Style};
use crate::words::{self, area, percent};
use tussock_types::{ComparedPocket, ComparedSide, Comparison, LawnWhen};

/// Pockets that are shown; the page shows all.
const POCKETS_SHOWN: usize = 6;
/// Predictions that are shown.
const PREDICTIONS_SHOWN: usize = 4;

/// The answer of a comparison as text.
pub fn answer_comparison(comparison: &Comparison, style: Style) -> String {
    let mut sheet = Sheet::new(style);
    sheet.headline(&words::sentence(&comparison.sentence));
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
        &format!("{} that both plans have", area(comparison.common_m2)),
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
            &format!("Change {}", words::plain(&held.id, 5)),
            &format!(
                "{built}; predicted for {}: {} ({}), measured {}: {}",
                words::plain(&held.pocket, 8),
                percent(held.predicted_fraction.estimate),
                words::interval(held.predicted_fraction),
                percent(held.measured_fraction),
                words::prediction_meaning(held)
            ),
        );
    }
    for caution in comparison.cautions.iter().take(2) {
        sheet.row("Beware", &words::sentence(caution));
    }
    sheet.into_text()
}

fn side(sheet: &mut Sheet, label: &str, side: &ComparedSide) {
    let equal = side
        .at_equal_hours_fraction
        .map(|fraction| format!(", {} after equal hours", percent(fraction)))
        .unwrap_or_default();
    sheet.row(
        label,
        &format!(
            "{} ({}){equal}; {}, {} of driving",
            percent(side.visited_fraction.estimate),
            words::interval(side.visited_fraction),
            words::plural(side.nights as usize, "night", "nights"),
            words::hours(side.driving_h)
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
            words::pocket_change(pocket.change),
        ));
    }
    if pockets.len() > POCKETS_SHOWN {
        sheet.indented(2, &format!("and {} smaller", pockets.len() - POCKETS_SHOWN));
    }
}
