//! What did a change bring?
//!
//! There are two sides, each a log or saved findings, compared on the ground that is lawn in both plans; lawn in only one of
//! them is listed separately. Both are placed on the planes of their plans, whatever the offset between plan and log, since
//! each receiver has an offset of its own. Places in the comparison, and in the findings that it holds for drawing, are on
//! the plane of the plan before. A difference has two errors that are stated separately: that of the positions, from the
//! intervals of both sides, and that from night to night. The second is the variation from run to run of a machine fitted to
//! the side's own log ([`tussock_diagnose::night_simulation`]) or, if none can be fitted, the jackknife over outings
//! (Quenouille 1956, DOI 10.1093/biomet/43.3-4.353; Tukey 1958). Pockets are judged by half hours of driving, so that
//! looking every morning does no harm, and no gain counts that is smaller than the difference between two logs without any
//! change.
//!
//! Exact: areas of the plans; which cells of 0.1 m are under the path. Approximate: the fraction of saved findings whose
//! lines were thinned for drawing (about ten nights or more). Cost: two analyses at most, 60 runs a side.

mod predictions;
mod side;

use crate::built::built;
use crate::{AnalyseError, Job, TOOL_VERSION, ask};
use predictions::{AfterPlan, predictions};
use side::{CommonGround, SideSeen};
use tussock_diagnose::night_simulation::Fractions;
use tussock_plane::{Frame, Region, Site};
use tussock_study::statistics::{BeforeAndSince, Decided, decided, error_of_night, normal_quantile};
use tussock_survey::Survey;
use tussock_survey::plan_offset::PlanShift;
use tussock_types::math;
use tussock_types::{
    ChangedGround, ComparedPocket, ComparedSide, Comparison, ComplaintFindings, ComplaintSettings,
    Difference, Estimate, Findings, GeoPoint, LawnWhen, MissedPocket, Place, PlanFitVerdict, PocketChange,
    SCHEMA_VERSION, Said,
};

/// Smaller patches of changed ground come from drawing.
const LEAST_CHANGED_M2: f64 = 0.5;
/// A pocket visited to this fraction is mended, or was none.
const MENDED_FRACTION: f64 = 0.85;
/// A pocket that was visited to this fraction before is new.
const NEW_FRACTION: f64 = 0.5;
/// A fitted machine explains a pocket if this part of its nights visit no more of it than the log did plus `EXPLAINED_WITHIN`.
const EXPLAINED_FRACTION: f64 = 0.3;
const EXPLAINED_WITHIN: f64 = 0.05;
/// Driving hours that differ by less than this part count as equal.
const EQUAL_HOURS: f64 = 0.05;

/// One side.
#[derive(Clone)]
pub struct Side<'a> {
    /// Its name: the names of the logs or of the findings.
    pub names: Vec<String>,
    /// What was found.
    pub findings: &'a Findings,
    /// The job it was found from, if available: the luck from night to night is then better known.
    pub job: Option<&'a Job<'a>>,
}

/// What is compared.
#[derive(Clone)]
pub struct Sides<'a> {
    /// Before the change.
    pub before: Side<'a>,
    /// After it.
    pub after: Side<'a>,
    /// Seed of everything random.
    pub seed: u64,
}

/// Why nothing was compared.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum CompareError {
    /// Lawns can only be compared on plans.
    #[error("no plan on the side {side} (expected a plan on both sides)")]
    NoPlan {
        /// `before` or `after`.
        side: &'static str,
    },
    /// Without a width nothing was counted.
    #[error("no cutting width on the side {side} (expected the same width on both sides)")]
    NoWidth {
        /// `before` or `after`.
        side: &'static str,
    },
    /// Two widths.
    #[error("cutting width {before_m} m before and {after_m} m after (expected one width)")]
    WidthsDiffer {
        /// Before.
        before_m: f64,
        /// After.
        after_m: f64,
    },
    /// Findings that do not state where they lie cannot be placed over others.
    #[error(
        "private findings and findings on Earth cannot be laid over each other (expected both of one kind)"
    )]
    NoPlace,
    /// Two gardens.
    #[error("the two plans have {common_m2:.1} m2 of lawn in common (expected plans of one garden)")]
    NothingInCommon {
        /// Lawn of both.
        common_m2: f64,
    },
    /// A side could not be analysed.
    #[error(transparent)]
    Analyse(#[from] AnalyseError),
}

impl CompareError {
    /// What the user can do about it.
    pub const fn hint(&self) -> Option<&'static str> {
        match self {
            Self::NoWidth { .. } => {
                Some("give it with --cut-width 22cm, or as machine.cut_width_m in the settings")
            }
            Self::Analyse(error) => error.hint(),
            _ => None,
        }
    }
}

/// The site of a side on a frame.
fn site_of(findings: &Findings, frame: Frame, side: &'static str) -> Result<Site, CompareError> {
    let plan = findings.plan.as_ref().ok_or(CompareError::NoPlan { side })?;
    Site::build_in(plan, frame)
        .map(|(site, _)| site)
        .map_err(|faults| AnalyseError::PlanFaults(faults).into())
}

fn frame_of(findings: &Findings) -> Result<Frame, CompareError> {
    let (lat_deg, lon_deg) = findings
        .frame
        .origin_lat
        .zip(findings.frame.origin_lon)
        .ok_or(CompareError::NoPlace)?;
    Ok(Frame::at(GeoPoint { lat_deg, lon_deg }))
}

/// Compares two sides.
///
/// # Errors
/// [`CompareError`] if the two are not of the same garden, or do not say enough.
pub fn compare(sides: &Sides<'_>) -> Result<Comparison, CompareError> {
    let (laid_before, laid_after) = (
        PlanShift::undone(sides.before.findings),
        PlanShift::undone(sides.after.findings),
    );
    let (before, after) = (&laid_before, &laid_after);
    let width_of = |findings: &Findings, side| {
        findings
            .settings
            .machine
            .cut_width_m
            .ok_or(CompareError::NoWidth { side })
    };
    let (before_m, after_m) = (width_of(before, "before")?, width_of(after, "after")?);
    if (before_m - after_m).abs() > 0.005 {
        return Err(CompareError::WidthsDiffer { before_m, after_m });
    }
    let (frame, after_frame) = (frame_of(before)?, frame_of(after)?);
    let site_before = site_of(before, frame, "before")?;
    let site_after = site_of(after, frame, "after")?;
    let region = |result: Result<Region, tussock_plane::RegionError>| result.map_err(AnalyseError::Region);
    let common = region(site_before.lawn.intersect(&site_after.lawn))?;
    let common_m2 = common.area_m2();
    if common_m2 < 0.2 * site_before.lawn.area_m2().min(site_after.lawn.area_m2()) || common_m2 < 1.0 {
        return Err(CompareError::NothingInCommon { common_m2 });
    }
    let moved = |place: Place| frame.to_place(after_frame.to_geo(place));
    let pockets = pockets_of(before, after, &moved, &common);
    let outlines: Vec<Region> = pockets.iter().map(|pocket| pocket.region.clone()).collect();
    let survey_before = sides.before.job.map(Survey::of).transpose()?;
    let survey_after = sides.after.job.map(Survey::of).transpose()?;
    let ground = CommonGround {
        lawn: &common,
        pockets: &outlines,
        cut_width_m: before_m,
    };
    let seen_before = SideSeen::of(
        before,
        survey_before.as_ref(),
        &site_before,
        &ground,
        &|place| place,
        sides.seed,
    );
    let seen_after = SideSeen::of(
        after,
        survey_after.as_ref(),
        &site_after,
        &ground,
        &moved,
        sides.seed,
    );
    let position_sd = math::hypot(seen_before.position_sd, seen_after.position_sd);
    // If one side's luck is unknown, the other's stands in for it.
    let nightly = match (seen_before.nightly_sd, seen_after.nightly_sd) {
        (Some(one), Some(two)) => Some(math::hypot(one, two)),
        (Some(one), None) | (None, Some(one)) => Some(one * std::f64::consts::SQRT_2),
        (None, None) => None,
    };
    let equal_hours = shorter_h(before, after);
    let at_equal = |findings: &Findings, seen: &SideSeen| {
        let hours = equal_hours?;
        Some((fraction_at(findings, hours)? + seen.common_less_own).clamp(0.0, 1.0))
    };
    let (equal_before, equal_after) = (at_equal(before, &seen_before), at_equal(after, &seen_after));
    // If hours differ, what more hours bring is no effect of the change.
    let change = match equal_before.zip(equal_after) {
        Some((one, two)) => two - one,
        None => seen_after.fraction - seen_before.fraction,
    };
    let sd = math::hypot(position_sd, nightly.unwrap_or(0.0));
    let visited_fraction = Estimate {
        estimate: change,
        low: Some((change - Estimate::END_SDS * sd).max(-1.0)),
        high: Some((change + Estimate::END_SDS * sd).min(1.0)),
    };
    let difference = Difference {
        visited_fraction,
        position_sd_fraction: position_sd,
        nightly_sd_fraction: nightly,
        // What may be one night's luck is not a difference, nor is what comes of looking every morning.
        is_real: nightly.is_some()
            && change.abs() > -normal_quantile(error_of_night(seen_after.nights.len().max(1), 1)) * sd,
    };
    let of_before = |pocket: &&Both| pocket.found == LawnWhen::Before;
    let times_night_h = hours_per_night(after) / hours_per_night(before).max(1e-9);
    let sequence = Sequence {
        before: &seen_before,
        after: &seen_after,
        unchanged: seen_before.simulated_nights(times_night_h, sides.seed),
        tests: pockets.iter().filter(of_before).count(),
        seed: sides.seed,
    };
    let compared: Vec<ComparedPocket> = pockets
        .iter()
        .enumerate()
        .map(|(number, pocket)| {
            let decided = sequence.decided(number).filter(|_| of_before(&pocket));
            judged(pocket, number, &seen_before, &seen_after, decided)
        })
        .collect();
    let after_plan = AfterPlan {
        site: &site_after,
        survey: survey_before.as_ref(),
        times_night_h,
        times_log_h: after.span.driving_s / before.span.driving_s.max(1.0),
        seed: sides.seed,
    };
    let predictions = predictions(
        before,
        &site_before,
        &after_plan,
        &pockets,
        &seen_before,
        &seen_after,
    );
    let cautions = [
        is_plan_unsure(before).then_some(Said::PlanUnsureBefore {}),
        is_plan_unsure(after).then_some(Said::PlanUnsureAfter {}),
        Some(Said::OtherReasons {}),
        equal_before.map(|_| Said::AtEqualHours {}),
        nightly.is_none().then_some(Said::NightsUnknown {}),
    ];
    let told_side = |side: &Side<'_>, seen: &SideSeen, equal: Option<f64>| ComparedSide {
        names: side.names.clone(),
        nights: side
            .findings
            .nights
            .as_ref()
            .map_or(1, |nights| nights.len().max(1)) as u32,
        driving_h: side.findings.span.driving_s / 3600.0,
        visited_fraction: seen.estimate(),
        at_equal_hours_fraction: equal,
    };
    Ok(Comparison {
        schema_version: SCHEMA_VERSION,
        tool_version: TOOL_VERSION.to_owned(),
        said: [
            complaints(sides.before.findings, sides.after.findings),
            said(&difference, &compared),
            decision(&compared, seen_after.nights.len()),
        ]
        .concat(),
        common_m2,
        changed: [
            changed(&site_before.lawn, &site_after.lawn, LawnWhen::Before),
            changed(&site_after.lawn, &site_before.lawn, LawnWhen::After),
        ]
        .concat(),
        before: told_side(&sides.before, &seen_before, equal_before),
        after: told_side(&sides.after, &seen_after, equal_after),
        difference,
        pockets: compared,
        predictions,
        findings_before: Some(Box::new(before.clone())),
        findings_after: Some(Box::new(after.clone())),
        cautions: cautions.into_iter().flatten().collect(),
    })
}

/// Nights after the change compared with what was there before, pocket by pocket.
struct Sequence<'a> {
    before: &'a SideSeen,
    after: &'a SideSeen,
    /// Simulated nights without the change; empty if no machine fits.
    unchanged: Vec<Fractions>,
    /// Pockets found before.
    tests: usize,
    seed: u64,
}

impl Sequence<'_> {
    /// Whether and when it is decided that more of a pocket is driven over; `None` if only a side's findings are known.
    fn decided(&self, number: usize) -> Option<Decided> {
        let of = |all: &[Fractions]| -> Vec<f64> { all.iter().map(|one| one.pockets[number]).collect() };
        // A machine that does not explain the pocket as it was says nothing about luck there.
        let was = self.before.pockets[number];
        let unchanged = of(&self.unchanged);
        let as_low = unchanged
            .iter()
            .filter(|night| **night <= was + EXPLAINED_WITHIN)
            .count();
        let is_explained = as_low as f64 >= EXPLAINED_FRACTION * unchanged.len() as f64;
        let seen = BeforeAndSince {
            before_fraction: self
                .before
                .nights
                .iter()
                .flat_map(|night| of(&night.half_hours))
                .collect(),
            after_fraction: self
                .after
                .nights
                .iter()
                .map(|night| of(&night.half_hours))
                .collect(),
            nights_fraction: self
                .after
                .nights
                .iter()
                .map(|night| night.whole.pockets[number])
                .collect(),
            unchanged_fraction: if is_explained { unchanged } else { Vec::new() },
        };
        let is_empty = seen.before_fraction.is_empty() || seen.after_fraction.iter().all(Vec::is_empty);
        (!is_empty).then(|| decided(&seen, self.tests, self.seed))
    }
}

/// Whether a log does not show how its plan lies, or some edges lie elsewhere.
fn is_plan_unsure(findings: &Findings) -> bool {
    let verdict = findings.plan_fit.as_ref().map(|fit| fit.verdict);
    !matches!(verdict, Some(PlanFitVerdict::Fits | PlanFitVerdict::Moved))
}

/// A pocket of either side on the common ground.
pub(crate) struct Both {
    pub(crate) id: String,
    found: LawnWhen,
    region: Region,
    middle: Place,
}

fn pockets_of(
    before: &Findings,
    after: &Findings,
    moved: &impl Fn(Place) -> Place,
    common: &Region,
) -> Vec<Both> {
    let both = |pocket: &MissedPocket, found: LawnWhen| {
        let to = |place: Place| {
            if found == LawnWhen::After {
                moved(place)
            } else {
                place
            }
        };
        let rings = pocket
            .outline
            .iter()
            .map(|ring| ring.iter().map(|place| to(*place)).collect())
            .collect();
        let region = Region::from_rings(vec![rings]).ok()?.intersect(common).ok()?;
        (region.area_m2() > 0.2).then(|| Both {
            id: pocket.id.clone(),
            found,
            middle: to(Place::new(pocket.east_m, pocket.north_m)),
            region,
        })
    };
    let mut all: Vec<Both> = before
        .missed_pockets
        .iter()
        .filter_map(|pocket| both(pocket, LawnWhen::Before))
        .collect();
    let old = all.len();
    for pocket in after
        .missed_pockets
        .iter()
        .filter_map(|pocket| both(pocket, LawnWhen::After))
    {
        // The rest of an old pocket is not a new one.
        let is_old = all[..old].iter().any(|other| {
            other
                .region
                .intersect(&pocket.region)
                .is_ok_and(|shared| shared.area_m2() > 0.5 * pocket.region.area_m2())
        });
        if !is_old {
            all.push(pocket);
        }
    }
    all.sort_by(|a, b| b.region.area_m2().total_cmp(&a.region.area_m2()));
    all
}

fn judged(
    pocket: &Both,
    number: usize,
    before: &SideSeen,
    after: &SideSeen,
    decided: Option<Decided>,
) -> ComparedPocket {
    let (one, two) = (before.pockets[number], after.pockets[number]);
    let position_sd = math::hypot(before.position_sd, after.position_sd);
    // The difference that nine in ten pairs of logs of the unchanged machine stay below.
    let (luck_before, luck_after) = (before.pocket_luck(number), after.pocket_luck(number));
    // The side without the missed pocket's change knows the machine best.
    let luck = match pocket.found {
        LawnWhen::Before => luck_before.or(luck_after),
        LawnWhen::After => luck_after.or(luck_before),
    }
    .unwrap_or(0.5);
    // Ground at the pocket's outline comes and goes with the positions, so allow a shift by their error.
    let error_m = math::hypot(before.position_error_m, after.position_error_m);
    let at_outline = error_m * pocket.region.perimeter_m() / (std::f64::consts::PI * pocket.region.area_m2());
    let least = math::hypot(luck, Estimate::END_SDS * math::hypot(position_sd, at_outline)).max(0.02);
    let is_beyond =
        (two - one).abs() > least && decided.is_none_or(|decided| matches!(decided, Decided::After(_)));
    let change = match pocket.found {
        LawnWhen::Before if two >= MENDED_FRACTION && two - one > 0.2 => PocketChange::Mended,
        LawnWhen::Before if two > one && is_beyond => PocketChange::Better,
        LawnWhen::After if one >= NEW_FRACTION => PocketChange::New,
        _ => PocketChange::Unchanged,
    };
    let within_luck = match change {
        PocketChange::Mended => !is_beyond,
        _ => change == PocketChange::Unchanged && two > one + 0.2,
    };
    let with_luck = |value: f64, seen: &SideSeen| {
        let sd = math::hypot(
            seen.position_sd,
            seen.pocket_sds.get(number).copied().flatten().unwrap_or(0.0),
        );
        Estimate::of_fraction(value, sd)
    };
    ComparedPocket {
        id: pocket.id.clone(),
        found: pocket.found,
        area_m2: pocket.region.area_m2(),
        middle: pocket.middle,
        outline: pocket.region.rings().into_iter().next().unwrap_or_default(),
        change,
        before_fraction: with_luck(one, before),
        after_fraction: with_luck(two, after),
        decided_after_nights: match decided {
            Some(Decided::After(nights)) if is_beyond => Some(nights),
            _ => None,
        },
        more_nights: match decided {
            Some(Decided::More(nights)) => Some(nights),
            _ => None,
        },
        said: Said::PocketCompared {
            pocket: pocket.id.clone(),
            before_fraction: one,
            after_fraction: two,
            change,
            within_luck: within_luck.into(),
        },
    }
}

fn changed(lawn: &Region, other: &Region, when: LawnWhen) -> Vec<ChangedGround> {
    let Ok(only) = lawn.minus(other) else {
        return Vec::new();
    };
    only.parts()
        .iter()
        .filter(|part| part.area_m2() >= LEAST_CHANGED_M2)
        .map(|part| ChangedGround {
            area_m2: part.area_m2(),
            middle: part.centroid().unwrap_or_default(),
            lawn: when,
        })
        .collect()
}

fn hours_per_night(findings: &Findings) -> f64 {
    let nights = findings.nights.as_ref().map_or(1, |nights| nights.len().max(1));
    findings.span.driving_s / 3600.0 / nights as f64
}

/// Driving hours of the shorter side; `None` if both are equally long.
fn shorter_h(before: &Findings, after: &Findings) -> Option<f64> {
    let (one, two) = (before.span.driving_s / 3600.0, after.span.driving_s / 3600.0);
    ((one - two).abs() > EQUAL_HOURS * one.max(two)).then_some(one.min(two))
}

/// Visited fraction after this many driving hours.
fn fraction_at(findings: &Findings, hours: f64) -> Option<f64> {
    let curve = findings.over_time.as_ref()?;
    let after = curve.driving_h.partition_point(|at| *at < hours);
    match (after.checked_sub(1), curve.driving_h.get(after)) {
        (Some(last), Some(next_h)) => {
            let last_h = curve.driving_h[last];
            let share = (hours - last_h) / (next_h - last_h).max(1e-9);
            let (a, b) = (curve.visited_fraction[last], curve.visited_fraction[after]);
            Some(a + share * (b - a))
        }
        (None, Some(_)) => curve.visited_fraction.first().copied(),
        (_, None) => curve.visited_fraction.last().copied(),
    }
}

/// Places asked about on either side: how often they were driven over before and since.
fn complaints(before: &Findings, after: &Findings) -> Vec<Said> {
    let mut asked: Vec<&ComplaintFindings> = Vec::new();
    for complaint in before.complaints.iter().chain(&after.complaints) {
        if !asked
            .iter()
            .any(|known| (known.lat, known.lon) == (complaint.lat, complaint.lon))
        {
            asked.push(complaint);
        }
    }
    let compared = |complaint: &ComplaintFindings| {
        let place = ComplaintSettings {
            at_deg: complaint.lat.zip(complaint.lon).map(|(lat, lon)| [lat, lon]),
            ..ComplaintSettings::default()
        };
        let visits = |findings: &Findings| Some(ask(findings, &place).ok()?.visits?.estimate);
        Some(Said::PlaceCompared {
            said: complaint.said.clone().unwrap_or_default(),
            before_visits: visits(before)?,
            before_h: before.span.driving_s / 3600.0,
            after_visits: visits(after)?,
            after_h: after.span.driving_s / 3600.0,
        })
    };
    asked.into_iter().filter_map(compared).collect()
}

/// After how many nights the largest pocket that changed was decided, or how many more nights would decide the largest open
/// one.
fn decision(pockets: &[ComparedPocket], nights: usize) -> Vec<Said> {
    let largest = |of: &dyn Fn(&ComparedPocket) -> Option<u32>| {
        let told = pockets.iter().filter_map(|pocket| Some((pocket, of(pocket)?)));
        told.max_by(|(one, _), (other, _)| one.area_m2.total_cmp(&other.area_m2))
    };
    let decided = largest(&|pocket| pocket.decided_after_nights).filter(|_| nights > 1);
    let decided = decided.map(|(pocket, decided)| Said::ChangeDecided {
        pocket: pocket.id.clone(),
        decided: decided.into(),
        nights: nights as u64,
    });
    let open = largest(&|pocket| pocket.more_nights).map(|(pocket, more)| Said::ChangeOpen {
        pocket: pocket.id.clone(),
        more: more.into(),
    });
    [decided, open].into_iter().flatten().collect()
}

/// What became of the largest pocket that changed, then of the others, then of the lawn.
fn said(difference: &Difference, pockets: &[ComparedPocket]) -> Vec<Said> {
    let points = 100.0 * difference.visited_fraction.estimate;
    let lawn = match difference.is_real {
        _ if difference.nightly_sd_fraction.is_none() => Said::LawnUnknown {},
        true if points > 0.0 => Said::LawnMore { points },
        true => Said::LawnLess { points: -points },
        false => Said::LawnAlike {},
    };
    let changed = pockets
        .iter()
        .filter(|pocket| pocket.change != PocketChange::Unchanged);
    let largest = changed.max_by(|one, other| one.area_m2.total_cmp(&other.area_m2));
    let named = |change: PocketChange| {
        let others = pockets.iter().filter(|pocket| pocket.change == change);
        let others = others.filter(|pocket| largest.is_none_or(|largest| !std::ptr::eq(largest, *pocket)));
        let ids: Vec<&str> = others.take(3).map(|pocket| pocket.id.as_str()).collect();
        (!ids.is_empty()).then(|| ids.join(", "))
    };
    [
        largest.map(|pocket| pocket.said.clone()),
        named(PocketChange::Mended).map(|pockets| Said::PocketsMended { pockets }),
        named(PocketChange::Better).map(|pockets| Said::PocketsBetter { pockets }),
        named(PocketChange::New).map(|pockets| Said::PocketsNew { pockets }),
        Some(lawn),
    ]
    .into_iter()
    .flatten()
    .collect()
}
