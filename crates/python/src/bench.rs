//! The researcher's bench: measures of a pattern, counts on a grid of one's own, comparisons over gardens.

use crate::door::{Class, Fault, work};
use crate::work::{AskedOf, ask, ask_survey, json};
use numpy::PyArray1;
use pyo3::prelude::*;
use serde::Deserialize;
use tussock::coverage::custom::{Division, VisitRule};
use tussock::statistics::{
    self, GardenPair, NightDifference, NightPairing, Resampling, Spread, compare_paired as compare_gardens,
};
use tussock::types::{GeoPoint, Place};
use tussock::{GridCorners, GridJob, GridJobError, GridPath};

/// Measures of a pattern, as JSON.
#[pyfunction]
pub(crate) fn measures(py: Python<'_>, asked: AskedOf) -> PyResult<String> {
    ask_survey(py, asked, tussock::measures::measures)
}

/// Field, unit, meaning and source of every measure.
#[pyfunction]
pub(crate) fn definitions() -> Vec<(&'static str, &'static str, &'static str, &'static str)> {
    let each = tussock::measures::DEFINITIONS.iter();
    each.map(|of| (of.field, of.unit, of.meaning, of.source))
        .collect()
}

/// Which pattern it was, as JSON.
#[pyfunction]
pub(crate) fn guess_pattern(py: Python<'_>, asked: AskedOf) -> PyResult<String> {
    ask_survey(py, asked, tussock::measures::guess_pattern)
}

#[derive(Clone, Copy, Deserialize)]
#[serde(rename_all = "snake_case")]
enum Rule {
    FixInside,
    PathCrosses,
    SwathCoversCentre,
    AreaWeighted,
}

#[derive(Clone, Copy, Deserialize)]
#[serde(rename_all = "snake_case")]
enum Axes {
    Local,
    Earth,
    Degrees,
}

#[derive(Clone, Copy, Deserialize)]
#[serde(rename_all = "snake_case")]
enum PathWanted {
    AsLogged,
    Located,
}

/// A grid as the Python half writes it.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct GridWanted {
    axes: Axes,
    corners: [(f64, f64); 3],
    columns: Option<usize>,
    rows: Option<usize>,
    cell_m: Option<f64>,
    rule: Rule,
    cut_width_m: Option<f64>,
    path: PathWanted,
    new_pass_after_s: f64,
}

impl GridWanted {
    fn rule(&self) -> Result<VisitRule, Fault> {
        let width = || {
            self.cut_width_m.ok_or_else(|| {
                Fault::new(
                    Class::Analyse,
                    "no_width",
                    "a rule with a swath and no cut_width_m, expected 0.05 to 2 m",
                )
            })
        };
        Ok(match self.rule {
            Rule::FixInside => VisitRule::FixInside,
            Rule::PathCrosses => VisitRule::PathCrosses,
            Rule::SwathCoversCentre => VisitRule::SwathCoversCentre {
                cut_width_m: width()?,
            },
            Rule::AreaWeighted => VisitRule::AreaWeighted {
                cut_width_m: width()?,
            },
        })
    }

    fn corners(&self) -> GridCorners {
        let places = self.corners.map(|(east_m, north_m)| Place::new(east_m, north_m));
        let points = self
            .corners
            .map(|(lat_deg, lon_deg)| GeoPoint { lat_deg, lon_deg });
        match self.axes {
            Axes::Local => GridCorners::Local(places),
            Axes::Earth => GridCorners::Earth(points),
            Axes::Degrees => GridCorners::Degrees(points),
        }
    }

    fn division(&self) -> Result<Division, Fault> {
        match (self.columns, self.rows, self.cell_m) {
            (Some(columns), Some(rows), None) => Ok(Division::Counts { columns, rows }),
            (None, None, Some(cell_m)) => Ok(Division::Sides {
                column_m: cell_m,
                row_m: cell_m,
            }),
            _ => Err(Fault::new(
                Class::Analyse,
                "division",
                format!(
                    "columns {:?}, rows {:?}, cell_m {:?}; expected columns and rows, or cell_m alone",
                    self.columns, self.rows, self.cell_m
                ),
            )),
        }
    }
}

/// Columns, rows, visited cells, visited area; then visited fraction, visits and hits of each cell.
type Counted<'py> = (
    usize,
    usize,
    usize,
    f64,
    Bound<'py, PyArray1<f64>>,
    Bound<'py, PyArray1<f64>>,
    Bound<'py, PyArray1<u32>>,
);

/// Counts visits on a grid of the user's own.
#[pyfunction]
pub(crate) fn count_on_grid<'py>(
    py: Python<'py>,
    asked: AskedOf,
    wish_json: String,
) -> PyResult<Counted<'py>> {
    let count = ask(py, asked, move |job| {
        let wanted: GridWanted = serde_json::from_str(&wish_json)
            .map_err(|error| Fault::new(Class::Analyse, "grid", error.to_string()))?;
        tussock::count_on_grid(&GridJob {
            job,
            corners: wanted.corners(),
            division: wanted.division()?,
            rule: wanted.rule()?,
            path: match wanted.path {
                PathWanted::AsLogged => GridPath::AsLogged,
                PathWanted::Located => GridPath::Located,
            },
            new_pass_after_s: wanted.new_pass_after_s,
        })
        .map_err(|error| match error {
            GridJobError::Analyse(error) => error.into(),
            _ => Fault::of(Class::Analyse, &error),
        })
    })?;
    let (cells_visited, visited_m2) = (count.cells_visited(), count.visited_m2());
    Ok((
        count.grid.columns(),
        count.grid.rows(),
        cells_visited,
        visited_m2,
        PyArray1::from_vec(py, count.visited_fraction),
        PyArray1::from_vec(py, count.visits),
        PyArray1::from_vec(py, count.hits),
    ))
}

/// Compares two patterns over gardens, as JSON: gardens are drawn, then nights within each.
#[pyfunction]
pub(crate) fn compare_paired(
    py: Python<'_>,
    gardens: Vec<(String, Vec<f64>, Vec<f64>)>,
    are_paired: bool,
    draws: usize,
    seed: u64,
) -> PyResult<String> {
    work(py, move || {
        let gardens: Vec<GardenPair> = gardens
            .into_iter()
            .map(|(name, a, b)| GardenPair { name, a, b })
            .collect();
        let pairing = if are_paired {
            NightPairing::Together
        } else {
            NightPairing::Apart
        };
        let resampling = Resampling {
            draws,
            seed,
            ..Resampling::default()
        };
        let found = compare_gardens(&gardens, pairing, &resampling)
            .map_err(|error| Fault::of(Class::Compare, &error))?;
        json(&found)
    })
}

/// The spread of a measure apart by its origin, as JSON: nights of each garden, each with the deviation that position error gives it.
#[pyfunction]
pub(crate) fn spread_of(py: Python<'_>, gardens: Vec<Vec<(f64, f64)>>) -> PyResult<String> {
    work(py, move || {
        let gardens: Vec<Vec<NightDifference>> = gardens
            .into_iter()
            .map(|nights| {
                nights
                    .into_iter()
                    .map(|(value, position_sd)| NightDifference { value, position_sd })
                    .collect()
            })
            .collect();
        let found = statistics::spread_of(&gardens).map_err(|error| Fault::of(Class::Compare, &error))?;
        json(&found)
    })
}

/// Standard deviations of position error, nights and gardens.
type SpreadTuple = (f64, f64, f64);

fn spread((position_sd, night_sd, garden_sd): SpreadTuple) -> Result<Spread, Fault> {
    for (what, value) in [
        ("position_sd", position_sd),
        ("night_sd", night_sd),
        ("garden_sd", garden_sd),
    ] {
        // Written so that NaN fails too.
        if !(value >= 0.0 && value.is_finite()) {
            let message = format!("{what} is {value}, expected a standard deviation of 0 or more");
            return Err(Fault::new(Class::Compare, "out_of_range", message));
        }
    }
    Ok(Spread {
        position_sd,
        night_sd,
        garden_sd,
        mean: 0.0,
        gardens: 0,
        nights: 0,
    })
}

/// Nights of each pattern that are needed in each of so many gardens; `None` where no number will do.
#[pyfunction]
pub(crate) fn nights_needed(
    py: Python<'_>,
    spreads: SpreadTuple,
    difference: f64,
    gardens: usize,
    level: f64,
    power: f64,
) -> PyResult<Option<usize>> {
    work(py, move || {
        statistics::nights_needed(&spread(spreads)?, difference, gardens, level, power)
            .map_err(|error| Fault::of(Class::Compare, &error))
    })
}

/// Gardens that are needed with so many nights of each pattern in each.
#[pyfunction]
pub(crate) fn gardens_needed(
    py: Python<'_>,
    spreads: SpreadTuple,
    difference: f64,
    nights: usize,
    level: f64,
    power: f64,
) -> PyResult<usize> {
    work(py, move || {
        statistics::gardens_needed(&spread(spreads)?, difference, nights, level, power)
            .map_err(|error| Fault::of(Class::Compare, &error))
    })
}

/// Probability that a true difference is seen.
#[pyfunction]
pub(crate) fn power(
    py: Python<'_>,
    spreads: SpreadTuple,
    difference: f64,
    gardens: usize,
    nights: usize,
    level: f64,
) -> PyResult<f64> {
    work(py, move || {
        if gardens == 0 || nights == 0 {
            let message = format!("{gardens} gardens of {nights} nights, expected at least one of each");
            return Err(Fault::new(Class::Compare, "out_of_range", message));
        }
        if !(level > 0.0 && level < 1.0) {
            let message = format!("level is {level}, expected a probability such as 0.05");
            return Err(Fault::new(Class::Compare, "out_of_range", message));
        }
        Ok(statistics::power(
            &spread(spreads)?,
            difference,
            gardens,
            nights,
            level,
        ))
    })
}
