//! How did a receiver err, second by second?
//!
//! A table with the columns `t_s`, `east_m` and `north_m` (in any order; others are ignored): what a receiver reported minus
//! where it really was. Every row must be complete and later than the one before, or the file is refused with its line: a
//! series is a measurement that somebody made, not a log of which to make the best.

use crate::IngestError;
use crate::source::Source;
use std::fmt::Write as _;
use tussock_types::{ErrorSeries, LimitSettings};

/// Columns, in the order of the values.
const COLUMNS: [&str; 3] = ["t_s", "east_m", "north_m"];

/// Reads a recorded error from a table, packed or not.
///
/// # Errors
/// [`IngestError`]: a row that is not numeric or is out of order is [`IngestError::ErrorSeries`] with its line.
///
/// # Panics
/// Never.
pub fn read_error_series(
    name: &str,
    input: impl std::io::Read,
    limits: &LimitSettings,
) -> Result<ErrorSeries, IngestError> {
    let source = Source::read(name, input, limits)?;
    let text = String::from_utf8_lossy(&source.text);
    let fault = |line: usize, found: String, expected: &'static str| IngestError::ErrorSeries {
        name: name.into(),
        line: line as u64,
        found,
        expected,
    };
    let mut lines = (1..)
        .zip(text.lines())
        .filter(|(_, line)| !line.trim().is_empty() && !line.starts_with('#'));
    let (line, header) = lines.next().unwrap_or((1, ""));
    let names: Vec<&str> = header.split(',').map(str::trim).collect();
    let mut columns = [0; 3];
    for (column, wanted) in columns.iter_mut().zip(COLUMNS) {
        let at = names.iter().position(|name| *name == wanted);
        *column = at.ok_or_else(|| fault(line, format!("{header:?}"), "the columns t_s,east_m,north_m"))?;
    }
    let mut series = ErrorSeries::default();
    for (line, row) in lines {
        let cells: Vec<&str> = row.split(',').collect();
        let number = |column: usize| {
            let value = cells.get(column).and_then(|cell| cell.trim().parse::<f64>().ok());
            value
                .filter(|value| value.is_finite())
                .ok_or_else(|| fault(line, format!("{row:?}"), "a number in each of t_s,east_m,north_m"))
        };
        let [time_s, east_m, north_m] = [number(columns[0])?, number(columns[1])?, number(columns[2])?];
        if series.time_s.last().is_some_and(|last_s| time_s <= *last_s) {
            return Err(fault(
                line,
                format!("t_s {time_s}"),
                "a time later than the row before",
            ));
        }
        series.time_s.push(time_s);
        series.east_m.push(east_m);
        series.north_m.push(north_m);
    }
    if series.time_s.len() < 2 {
        return Err(fault(
            line,
            format!("{} rows", series.time_s.len()),
            "two rows or more",
        ));
    }
    Ok(series)
}

/// The same table as text: seconds to milliseconds, metres to a tenth of a millimetre.
pub fn write_error_series(series: &ErrorSeries) -> String {
    let mut text = COLUMNS.join(",") + "\n";
    for row in 0..series.time_s.len() {
        let (time_s, east_m, north_m) = (series.time_s[row], series.east_m[row], series.north_m[row]);
        let _ = writeln!(text, "{time_s:.3},{east_m:.4},{north_m:.4}");
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Result<ErrorSeries, String> {
        read_error_series("error.csv", text.as_bytes(), &LimitSettings::default())
            .map_err(|error| error.to_string())
    }

    #[test]
    fn columns_stand_in_any_order() {
        let series = read("# by hand\nnorth_m,t_s,hdop,east_m\n2,0,1,1\n4,0.5,1,3\n").expect("two rows");
        assert_eq!(series.time_s, [0.0, 0.5]);
        assert_eq!((series.east_m, series.north_m), (vec![1.0, 3.0], vec![2.0, 4.0]));
    }

    #[test]
    fn a_faulty_row_is_told_with_its_line() {
        for (text, told) in [
            (
                "t_s,east_m\n0,1\n",
                "line 1: found \"t_s,east_m\", expected the columns t_s,east_m,north_m",
            ),
            (
                "t_s,east_m,north_m\n0,1,2\n1,x,2\n",
                "line 3: found \"1,x,2\", expected a number in each of t_s,east_m,north_m",
            ),
            (
                "t_s,east_m,north_m\n1,1,2\n1,1,2\n",
                "line 3: found t_s 1, expected a time later than the row before",
            ),
            (
                "t_s,east_m,north_m\n1,1,2\n",
                "line 1: found 1 rows, expected two rows or more",
            ),
        ] {
            let error = read(text).expect_err(text);
            assert!(error.ends_with(told), "{error}");
        }
    }
}
