//! What does a plan promise, in words that page and terminal share?

use crate::messages::{Voice, say};
use crate::words::{self, metres, percent};
use minijinja::{Value, context, value::Serde};
use serde::Serialize;
use tussock_types::{ForecastDays, Passage, PlanForecast, Said, Settings};

/// Days in the table, if the forecast goes that far.
const DAYS: [usize; 3] = [1, 3, 7];

#[derive(Serialize)]
struct PassageRow {
    id: String,
    width: String,
    free: String,
    behind: String,
    changes: String,
    share: String,
    done: String,
}

/// What page and terminal say.
pub(crate) fn told(voice: Voice, forecast: &PlanForecast, settings: &Settings) -> Value {
    let typical = forecast.typical.as_deref();
    context! {
        title => settings.garden.name.as_deref().map(words::name).filter(|name| !name.is_empty())
            .unwrap_or_else(|| say!(voice, "plan-on-paper")),
        forecast => Serde(PlanForecast { typical: None, ..forecast.clone() }),
        everywhere => match settings.machine.cut_width_m {
            Some(_) => everywhere(voice, forecast),
            None => say!(voice, "give-width-for-days"),
        },
        promise => Serde(&settings.promise),
        days => forecast.days.as_ref().map(|days| Serde(day_rows(voice, days))),
        passages => Serde(passage_rows(voice, forecast)),
        missed => Serde(typical.map(|typical| &typical.missed_pockets)),
        suggestions => Serde(typical.and_then(|typical| typical.suggestions.as_ref())),
        cut_width_m => settings.machine.cut_width_m,
        cautions => Serde([Said::Dig {}, Said::HoursByDay {}, Said::BladesOnLawn {}, Said::LocalCodes {}]),
    }
}

/// Whether the machine gets everywhere.
fn everywhere(voice: Voice, forecast: &PlanForecast) -> String {
    let parts_m2: f64 = forecast.out_of_reach.iter().map(|part| part.area_m2).sum();
    match forecast.out_of_reach.len() {
        0 => say!(voice, "reaches-everything"),
        count => say!(
            voice,
            "leaves-parts",
            count = count,
            area = words::area(voice, parts_m2)
        ),
    }
}

/// Day, the fraction driven over by its end, and the range of nine in ten.
fn day_rows(voice: Voice, days: &ForecastDays) -> Vec<(String, String, String)> {
    let told = DAYS
        .iter()
        .filter_map(|day| Some((day, days.visited_fraction.get(day - 1)?)));
    told.map(|(day, fraction)| {
        let (low, high) = (fraction.low.unwrap_or_default(), fraction.high.unwrap_or(1.0));
        let range = say!(
            voice,
            "nine-in-ten-gardens",
            low = percent(voice, low),
            high = percent(voice, high)
        );
        (
            say!(voice, "count-day", count = *day),
            percent(voice, fraction.estimate),
            range,
        )
    })
    .collect()
}

fn passage_rows(voice: Voice, forecast: &PlanForecast) -> Vec<PassageRow> {
    let row = |(number, passage): (usize, &Passage)| {
        let share = forecast
            .passage_share_fraction
            .get(number)
            .copied()
            .unwrap_or_default();
        let done = forecast.passage_done_fraction.get(number);
        let done = done.map_or_else(String::new, |done| {
            let told = DAYS.iter().filter_map(|day| Some((day, done.get(day - 1)?)));
            let told = told.map(|(day, fraction)| {
                say!(
                    voice,
                    "done-after",
                    count = *day,
                    share = percent(voice, *fraction)
                )
            });
            words::listed(voice, told, words::ListMark::Comma)
        });
        PassageRow {
            id: passage.id.clone(),
            width: metres(voice, passage.width_m),
            free: match passage.free_width_m > 0.0 {
                true => metres(voice, passage.free_width_m),
                false => say!(voice, "no-way-through"),
            },
            behind: words::area(voice, passage.behind_m2),
            changes: passage
                .crossings_expected
                .map_or_else(String::new, |times| words::number(voice, times, 1)),
            share: percent(voice, share),
            done,
        }
    };
    forecast.passages.iter().enumerate().map(row).collect()
}
