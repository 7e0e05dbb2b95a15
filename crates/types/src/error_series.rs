//! How a receiver erred.

/// What a receiver reported minus where it really was: columns of one length, times increasing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ErrorSeries {
    /// Seconds from any moment.
    pub time_s: Vec<f64>,
    /// Error to the east.
    pub east_m: Vec<f64>,
    /// Error to the north.
    pub north_m: Vec<f64>,
}

impl ErrorSeries {
    /// East and north error at this time after the start of the series: on a straight line between two rows; after the end
    /// it runs back to the start, and so on. Zero without rows.
    pub fn at(&self, time_s: f64) -> (f64, f64) {
        let (Some(first_s), Some(last_s)) = (self.time_s.first(), self.time_s.last()) else {
            return (0.0, 0.0);
        };
        let lasts_s = last_s - first_s;
        let turned_s = if lasts_s > 0.0 {
            time_s.rem_euclid(2.0 * lasts_s)
        } else {
            0.0
        };
        let seen_s = first_s + turned_s.min(2.0 * lasts_s - turned_s);
        let after = self
            .time_s
            .partition_point(|row_s| *row_s <= seen_s)
            .min(self.time_s.len() - 1);
        let before = after.saturating_sub(1);
        let lapse_s = self.time_s[after] - self.time_s[before];
        let share = if lapse_s > 0.0 {
            ((seen_s - self.time_s[before]) / lapse_s).clamp(0.0, 1.0)
        } else {
            0.0
        };
        let between = |column: &[f64]| column[before] + share * (column[after] - column[before]);
        (between(&self.east_m), between(&self.north_m))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_series_runs_to_and_fro() {
        let series = ErrorSeries {
            time_s: vec![10.0, 11.0, 13.0],
            east_m: vec![0.0, 1.0, 3.0],
            north_m: vec![0.0, -1.0, -3.0],
        };
        for (time_s, east_m) in [
            (0.0, 0.0),
            (0.5, 0.5),
            (2.0, 2.0),
            (3.0, 3.0),
            (4.0, 2.0),
            (6.0, 0.0),
            (7.0, 1.0),
            (-1.0, 1.0),
        ] {
            assert_eq!(series.at(time_s), (east_m, -east_m), "{time_s}");
        }
        assert_eq!(ErrorSeries::default().at(1.0), (0.0, 0.0));
    }
}
