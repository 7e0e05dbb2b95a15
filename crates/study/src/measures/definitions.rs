//! What does each measure mean, in which unit, and whose is it?

/// One measure as papers need it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Definition {
    /// Its field in [`super::Measures`].
    pub field: &'static str,
    /// Its unit; empty for fractions, ratios and counts.
    pub unit: &'static str,
    /// What it is.
    pub meaning: &'static str,
    /// Where it was published.
    pub source: &'static str,
}

const fn define(
    field: &'static str,
    unit: &'static str,
    meaning: &'static str,
    source: &'static str,
) -> Definition {
    Definition {
        field,
        unit,
        meaning,
        source,
    }
}

const KOOPMAN: &str = "Koopman 1946";
const EP496: &str = "ASAE EP496; Applied Sciences 2020, 10(1):329";
const LANES: &str = "AgriEngineering 2025, 7(2):30 gives the overlap in centimetres";

/// Every measure. Positions are those of the located path.
pub const DEFINITIONS: &[Definition] = &[
    define(
        "swept_times",
        "",
        "cutting width times driven path over lawn area",
        KOOPMAN,
    ),
    define(
        "visited_fraction",
        "",
        "visited area over lawn area, as counted",
        "AgriEngineering 2022, 4(3):592-605",
    ),
    define(
        "curve",
        "m, h",
        "visited fraction against driven path (the default axis: the laws are stated in swept area, so speed, halts and charging cancel out), driving time (for promises) and outings (for settings of the station), beside the random law 1 - exp(-w s / A) and the exhaustive line min(1, w s / A)",
        "Koopman 1946; Gage 1993",
    ),
    define(
        "efficiency",
        "",
        "0 on the random law, 1 on the exhaustive line, once the swept area equals the lawn",
        "Gage 1993",
    ),
    define(
        "swept_again_fraction",
        "",
        "swept area that had been swept before, whenever that was; grows with the hours",
        KOOPMAN,
    ),
    define(
        "lane_spacing.spacing_m",
        "m",
        "median distance between the middle lines of lanes that follow each other, from at least four lanes in a row; also `spacing_p10_m`, `spacing_p90_m` and the number of `pairs`",
        LANES,
    ),
    define(
        "lane_spacing.overlap_m",
        "m",
        "cutting width less that distance: ground that neighbouring passes share, however often the lawn was mown; negative for a strip between them",
        LANES,
    ),
    define(
        "lane_spacing.overlap_fraction",
        "",
        "the same over the cutting width",
        LANES,
    ),
    define(
        "field_work.field_s",
        "s",
        "time away from the station: driving, turning and standing, without silences and being carried",
        EP496,
    ),
    define(
        "field_work.area_per_h_m2",
        "m2/h",
        "visited area over that time (effective field capacity)",
        EP496,
    ),
    define(
        "field_work.field_efficiency_fraction",
        "",
        "visited area over width, usual driving speed and that time",
        EP496,
    ),
    define(
        "field_work.path_per_area_m_per_m2",
        "m/m2",
        "driven path over visited area; 1 / width without any overlap",
        "Applied Sciences 2020, 10(1):329",
    ),
    define(
        "way.straightness_fraction",
        "",
        "distance between the ends of a stretch of 10 m over its length, mean",
        "Batschelet 1981; Benhamou 2004: it depends on the scale",
    ),
    define(
        "way.turn_angles_deg",
        "deg",
        "series of the angles from each leg of a metre or more to the next, to the left positive",
        "Batschelet 1981",
    ),
    define(
        "way.turn_agreement",
        "",
        "length of the mean unit vector of these angles",
        "Batschelet 1981",
    ),
    define(
        "wheels.mean_passes",
        "",
        "mean passes of the two driven wheels over a point of the lawn, each on ground 0.1 m wide, half of `machine.track_width_m` beside the path; turns on the spot are left out",
        "Kroulik et al. 2009",
    ),
    define(
        "wheels.trafficked_fraction",
        "",
        "part of the lawn that a wheel went over at least once (trampling)",
        "Kroulik et al. 2009",
    ),
    define(
        "wheels.repeatedly_fraction",
        "",
        "part of the lawn that wheels went over more than once",
        "Kroulik et al. 2009",
    ),
    define(
        "visits.gini",
        "",
        "Gini coefficient of the visits of cells: 0 when all are equal; beside that of a Poisson law of the same mean",
        "Gini 1912",
    ),
    define(
        "visits.dispersion",
        "",
        "variance over mean of the visits of cells: 1 for a Poisson law",
        "Fisher 1925",
    ),
    define(
        "evenness",
        "",
        "Gini coefficient after each quarter of the driven path, beside that of a Poisson law",
        "Gini 1912",
    ),
    define(
        "clustering",
        "",
        "Moran's I of the mean visits of squares of a metre that share a side: 0 for chance, towards 1 where much visited ground lies together",
        "Moran 1950",
    ),
    define(
        "revisits.longer_fraction",
        "",
        "part of the intervals between visits of a cell that are longer than `interval_h`, the unfinished last one censored; also `median_h`",
        "Kaplan & Meier 1958; Greenwood 1926",
    ),
    define(
        "revisits.burstiness",
        "",
        "standard deviation less mean of finished intervals, over their sum: -1 for a clock, 0 for chance, towards 1 where visits come in bursts",
        "Goh & Barabasi 2008",
    ),
    define(
        "turns",
        "deg",
        "angle to the edge against uniform and Lambert's law, by Kolmogorov and Smirnov",
        "Santalo 1976; Mazzolo, arXiv:2011.06343; Marsaglia, Tsang & Wang 2003",
    ),
    define(
        "legs",
        "m",
        "legs of a metre or more, beside the mean chord pi A / P",
        "Santalo 1976 (Cauchy-Crofton)",
    ),
    define(
        "lanes",
        "deg",
        "mean direction of doubled angles, weighted by length",
        "Mardia & Jupp 2000",
    ),
    define(
        "edge",
        "",
        "visited fraction and visits of a strip along the edge, one cutting width wide, against the rest",
        "none; both parts are counted alike",
    ),
    define(
        "driving_h_to_95",
        "h",
        "driving time to 95 %, read off the curve or continued by its own law; also `driving_h_to_99`",
        KOOPMAN,
    ),
];
