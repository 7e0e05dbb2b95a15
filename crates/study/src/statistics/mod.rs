//! Do two patterns differ, by how much, and how many nights are needed to show it?
//!
//! | question | item |
//! |---|---|
//! | what is the mean difference, with its interval? | [`compare_paired`] |
//! | how large is that compared with its spread? | [`cohen_d_paired`], [`cliffs_delta`] |
//! | how much of the spread is position error, nights, gardens? | [`spread_of`] |
//! | how many nights and gardens are needed? | [`nights_needed`], [`gardens_needed`], [`power`] |
//! | does a sample follow a law? | [`kolmogorov_smirnov`] |
//! | what is the interval of any other figure? | [`bootstrap`] |
//!
//! Nights of one garden are not independent: they share its shape, its grass and its machine. So gardens are drawn first,
//! then nights within each (hierarchical bootstrap: Davison & Hinkley, *Bootstrap Methods and their Application*, 1997,
//! section 3.8; Saravanan, Berman & Sober, *Application of the hierarchical bootstrap to multi-level data in neuroscience*,
//! 2020). Treating nights as independent would, in the worst case, make an interval too narrow by the square root of the
//! number of nights in a garden.
//!
//! Everything random is seeded: the same numbers give the same answer.

mod bootstrap;
mod effect;
mod fit;
mod nested;
mod normal;
mod power;
mod sequential;

pub use bootstrap::{
    Compared, GardenPair, IntervalKind, NightPairing, Resampling, StatisticsError, bootstrap, compare_paired,
};
pub use effect::{cliffs_delta, cohen_d_paired};
pub use fit::{LawFit, kolmogorov_smirnov};
pub use nested::{NightDifference, Spread, spread_of};
pub use normal::{normal_below, normal_quantile};
pub use power::{gardens_needed, nights_needed, power};
pub use sequential::{BeforeAndSince, Decided, MORE_THAN_FITTED, decided, error_of_night};
pub use tussock_types::math::{mean, quantile, variance};

#[cfg(test)]
mod tests {
    use super::*;

    /// NumPy 2.4.6, quantiles of type 7.
    #[test]
    fn alg_19_quantiles_lie_straight_between_neighbours() {
        let data = [3.0, 5.0, 7.0, 7.0, 8.0, 9.0, 10.0, 12.0, 15.0, 18.0];
        for (fraction, expected) in [(0.05, 3.9), (0.25, 7.0), (0.5, 8.5), (0.75, 11.5), (0.95, 16.65)] {
            assert!((quantile(&data, fraction).unwrap() - expected).abs() < 1e-9);
        }
        assert_eq!(quantile(&[], 0.5), None);
        assert!((mean(&data) - 9.4).abs() < 1e-12);
    }
}
