//! What does the lawn look like, on a terminal without pictures?
//!
//! One character for a patch twice as tall as wide, since that is the shape of a character. Shades show how often it was
//! driven over; missed ground and signs have letters, so that nothing depends on colour. A patch shows what most of its lawn
//! is; a missed pocket smaller than a patch is still shown, at its middle.

use super::{Sheet, Style};
use crate::messages::say;
use crate::words;
use tussock_types::{Findings, Place, PlanRole, PlanShape};

/// Columns of the map; wider maps show no more and scroll away.
const WIDEST: usize = 76;
/// Lines of the map.
const TALLEST: usize = 24;
/// From seldom to often.
const SHADES: [char; 4] = ['░', '▒', '▓', '█'];
const BARE: char = '·';
const MISSED: char = '/';
const NOT_YET: char = '?';
const STUCK: char = 'X';
const STATION: char = 'H';

/// The lawn in characters, with its key; empty if nothing was counted.
pub fn answer_map(findings: &Findings, style: Style) -> String {
    let mut sheet = Sheet::new(style);
    let Some(chart) = Chart::of(findings, sheet.width().min(WIDEST)) else {
        return String::new();
    };
    sheet.blank();
    for line in chart.lines() {
        sheet.line(&line);
    }
    let most = chart.edges_visits;
    let number = |visits: f64| words::number(style.voice, visits, 0);
    sheet.indented(
        0,
        &say!(
            style.voice,
            "chart-key",
            bare = BARE,
            one = SHADES[0],
            first = number(most[0]),
            two = SHADES[1],
            second = number(most[1]),
            three = SHADES[2],
            third = number(most[2]),
            four = SHADES[3],
            missed = MISSED,
            not_yet = NOT_YET,
            stuck = STUCK,
            station = STATION,
            length = words::metres(style.voice, chart.column_m),
            north = if findings.frame.origin().is_some() {
                "up"
            } else {
                "unknown"
            }
        ),
    );
    sheet.into_text()
}

struct Chart {
    columns: usize,
    rows: usize,
    west_m: f64,
    south_m: f64,
    column_m: f64,
    /// Visits at which one shade becomes the next.
    edges_visits: [f64; 3],
    signs: Vec<char>,
}

fn is_inside(rings: &[Vec<Place>], place: Place) -> bool {
    let mut odd = false;
    for edge in rings.iter().flat_map(|ring| ring.windows(2)) {
        let (a, b) = (edge[0], edge[1]);
        if (a.north_m > place.north_m) != (b.north_m > place.north_m) {
            let share = (place.north_m - a.north_m) / (b.north_m - a.north_m);
            odd ^= place.east_m < a.east_m + share * (b.east_m - a.east_m);
        }
    }
    odd
}

impl Chart {
    fn of(findings: &Findings, width_columns: usize) -> Option<Self> {
        let cells = findings.cells.as_ref()?;
        let grid = cells.grid;
        let is_lawn = |square: usize| cells.lawn_fraction.get(square).is_some_and(|lawn| *lawn > 0.0);
        let squares = || (0..grid.cells()).filter(|&square| is_lawn(square));
        let first = squares().next()?;
        let mut bounds = (
            first % grid.columns,
            first % grid.columns,
            first / grid.columns,
            0,
        );
        for square in squares() {
            let (column, row) = (square % grid.columns, square / grid.columns);
            bounds = (
                bounds.0.min(column),
                bounds.1.max(column),
                bounds.2.min(row),
                bounds.3.max(row),
            );
        }
        let (wide_m, tall_m) = (
            (bounds.1 - bounds.0 + 1) as f64 * grid.cell_m,
            (bounds.3 - bounds.2 + 1) as f64 * grid.cell_m,
        );
        let column_m = (wide_m / width_columns as f64)
            .max(tall_m / (2.0 * TALLEST as f64))
            .max(grid.cell_m);
        let columns = ((wide_m / column_m).ceil() as usize).clamp(1, WIDEST);
        let rows = ((tall_m / (2.0 * column_m)).ceil() as usize).clamp(1, TALLEST);
        let mut chart = Self {
            columns,
            rows,
            west_m: grid.east_min_m + bounds.0 as f64 * grid.cell_m,
            south_m: grid.north_min_m + bounds.2 as f64 * grid.cell_m,
            column_m,
            edges_visits: [2.0, 4.0, 8.0],
            signs: vec![' '; columns * rows],
        };
        let mut lawn = vec![0.0; columns * rows];
        let mut visits = vec![0.0; columns * rows];
        for square in squares() {
            let centre = grid.centre(square % grid.columns, square / grid.columns);
            let Some(at) = chart.at(centre) else { continue };
            let part = f64::from(cells.lawn_fraction[square]);
            lawn[at] += part;
            let expected = cells.visits_expected.get(square).copied().unwrap_or(0.0);
            visits[at] += part * f64::from(if expected.is_finite() { expected } else { 0.0 });
        }
        let patch = 2.0 * (column_m / grid.cell_m).powi(2);
        let means: Vec<Option<f64>> = lawn
            .iter()
            .zip(&visits)
            .map(|(lawn, visits)| (*lawn >= 0.35 * patch).then(|| visits / lawn))
            .collect();
        chart.edges_visits = edges(&means);
        for (sign, mean) in chart.signs.iter_mut().zip(&means) {
            if let Some(mean) = mean {
                let shade = chart.edges_visits.iter().filter(|edge| mean > *edge).count();
                *sign = if *mean < 0.5 { BARE } else { SHADES[shade] };
            }
        }
        chart.mark(findings);
        Some(chart)
    }

    fn at(&self, place: Place) -> Option<usize> {
        let column = ((place.east_m - self.west_m) / self.column_m).floor();
        let row = ((place.north_m - self.south_m) / (2.0 * self.column_m)).floor();
        let is_in = column >= 0.0 && row >= 0.0 && column < self.columns as f64 && row < self.rows as f64;
        is_in.then(|| row as usize * self.columns + column as usize)
    }

    fn put(&mut self, place: Place, sign: char) {
        if let Some(at) = self.at(place) {
            self.signs[at] = sign;
        }
    }

    fn fill(&mut self, outline: &[Vec<Place>], middle: Place, sign: char) {
        for at in 0..self.signs.len() {
            let centre = Place::new(
                self.west_m + ((at % self.columns) as f64 + 0.5) * self.column_m,
                self.south_m + ((at / self.columns) as f64 + 0.5) * 2.0 * self.column_m,
            );
            if is_inside(outline, centre) {
                self.signs[at] = sign;
            }
        }
        self.put(middle, sign);
    }

    /// What was found; the more important comes later and so covers the rest.
    fn mark(&mut self, findings: &Findings) {
        for pocket in &findings.not_yet {
            self.fill(
                &pocket.outline,
                Place::new(pocket.east_m, pocket.north_m),
                NOT_YET,
            );
        }
        for pocket in &findings.missed_pockets {
            self.fill(&pocket.outline, Place::new(pocket.east_m, pocket.north_m), MISSED);
        }
        for spot in &findings.stuck_spots {
            self.put(Place::new(spot.east_m, spot.north_m), STUCK);
        }
        let stations = findings
            .plan
            .iter()
            .flat_map(|plan| plan.of_role(PlanRole::Station));
        for station in stations {
            if let PlanShape::Point(point) = station.shape
                && let Some(place) = findings.frame.to_place(point)
            {
                self.put(place, STATION);
            }
        }
        for pocket in &findings.missed_pockets {
            self.name(Place::new(pocket.east_m, pocket.north_m), &pocket.id);
        }
    }

    /// An id over the middle of a pocket, if it is short and plain.
    fn name(&mut self, place: Place, id: &str) {
        let is_plain = id.len() <= 4 && id.chars().all(|c| c.is_ascii_alphanumeric());
        let Some(at) = self.at(place).filter(|_| is_plain) else {
            return;
        };
        let start = at.saturating_sub(id.len() / 2);
        let row = at / self.columns;
        for (index, letter) in id.chars().enumerate() {
            let at = start + index;
            if at / self.columns == row && at < self.signs.len() {
                self.signs[at] = letter;
            }
        }
    }

    /// North first.
    fn lines(&self) -> impl Iterator<Item = String> {
        self.signs
            .chunks(self.columns)
            .rev()
            .map(|row| row.iter().collect())
    }
}

/// The quartiles of the patches' visits, as whole numbers.
fn edges(means: &[Option<f64>]) -> [f64; 3] {
    let mut seen: Vec<f64> = means
        .iter()
        .flatten()
        .copied()
        .filter(|mean| *mean >= 0.5)
        .collect();
    seen.sort_unstable_by(f64::total_cmp);
    let at = |part: f64| {
        seen.get((seen.len() as f64 * part) as usize)
            .map_or(1.0, |mean| mean.round().max(1.0))
    };
    let first = at(0.25);
    let second = at(0.5).max(first + 1.0);
    [first, second, at(0.75).max(second + 1.0)]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shades_change_at_whole_numbers_that_rise() {
        let means: Vec<Option<f64>> = (0..100).map(|n| Some(f64::from(n) / 10.0)).collect();
        assert_eq!(edges(&means), [3.0, 5.0, 8.0]);
        assert_eq!(edges(&[Some(1.0); 9]), [1.0, 2.0, 3.0]);
        assert_eq!(edges(&[]), [1.0, 2.0, 3.0]);
    }
}
