//! Arguments after checking: what the user wants, in the types of the rooms below.

use crate::args::{AnalyseArguments, LogArguments, VoiceArguments};
use crate::exit::{CommandFailure, failure};
use crate::units;
use tussock_ingest::{Policy, ReadOptions, WalkRole};
use tussock_report::Voice;
use tussock_types::{
    ComplaintSettings, GardenSettings, GeoPoint, Language, LimitSettings, PlanRole, Settings, with_causes,
};

/// Cutting widths that a machine can have. The analysis accepts the same range; it is checked here before anything is read.
const CUT_WIDTH_M: std::ops::RangeInclusive<f64> = 0.05..=2.0;

/// A cutting width that a machine can have, if one is given.
pub(crate) fn cut_width_m(typed: Option<&str>) -> Result<Option<f64>, CommandFailure> {
    let Some(typed) = typed else { return Ok(None) };
    let cut_width_m = units::length_m("--cut-width", typed, "22cm")?;
    if CUT_WIDTH_M.contains(&cut_width_m) {
        return Ok(Some(cut_width_m));
    }
    Err(failure!(
        "--cut-width: {typed:?} is {cut_width_m} m, expected 5 cm to 2 m"
    ))
}

/// In which voices the page and the terminal speak.
#[derive(Clone, Copy)]
pub(crate) struct Voices {
    /// To the customer.
    pub(crate) page: Voice,
    /// To who typed the command.
    pub(crate) terminal: Voice,
}

/// As asked for; else the page as the settings of the garden say, and the terminal as the environment says.
pub(crate) fn voices(asked: VoiceArguments, garden: &GardenSettings) -> Voices {
    // POSIX.1-2017, section 8.2: the first of these that is set and not empty.
    let locale = || {
        let set = ["LC_ALL", "LC_MESSAGES", "LANG"].map(|name| std::env::var(name).unwrap_or_default());
        set.into_iter().find(|locale| !locale.is_empty())
    };
    let units = asked.units.or(garden.units).unwrap_or_default();
    let of_terminal = || Language::of_locale(&locale()?);
    let page = asked.language.or(garden.language).unwrap_or_default();
    let terminal = asked.language.or_else(of_terminal).unwrap_or_default();
    Voices {
        page: Voice::new(page, units),
        terminal: Voice::new(terminal, units),
    }
}

/// How logs are read.
pub(crate) fn read_options(arguments: &LogArguments) -> Result<ReadOptions, CommandFailure> {
    Ok(ReadOptions {
        date: arguments.date.as_deref().map(date).transpose()?,
        columns: (arguments.columns.as_deref().map(str::parse).transpose())
            .map_err(|error| failure!("--columns: {}", with_causes(&error)))?,
        policy: if arguments.strict {
            Policy::Strict
        } else {
            Policy::Lenient
        },
        limits: LimitSettings::default(),
    })
}

fn date(typed: &str) -> Result<time::Date, CommandFailure> {
    let format = time::macros::format_description!("[year]-[month]-[day]");
    time::Date::parse(typed, format)
        .map_err(|_| failure!("--date: {typed:?} is no date, expected year-month-day, such as 2026-05-01"))
}

/// A position on Earth.
pub(crate) fn position(option: &str, typed: &str) -> Result<GeoPoint, CommandFailure> {
    typed.parse().map_err(|error| failure!("{option}: {error}"))
}

/// Places that somebody pointed at, with what was said.
pub(crate) fn complaints(typed: &[String]) -> Result<Vec<ComplaintSettings>, CommandFailure> {
    let complaint = |typed: &String| {
        let (place, said) = match typed.split_once('=') {
            Some((place, said)) => (place, Some(said.trim().to_owned())),
            None => (typed.as_str(), None),
        };
        let at = position("--complaint", place)?;
        Ok(ComplaintSettings {
            at_deg: Some([at.lat_deg, at.lon_deg]),
            said: said.filter(|said| !said.is_empty()),
            ..ComplaintSettings::default()
        })
    };
    typed.iter().map(complaint).collect()
}

/// What the tracks of a walk are.
pub(crate) fn walk_roles(typed: &[String]) -> Result<Vec<WalkRole>, CommandFailure> {
    let role = |typed: &String| {
        // The last equals sign: a name may contain others.
        let (name, word) = typed.rsplit_once('=').unwrap_or((typed, ""));
        let role = PlanRole::ALL
            .into_iter()
            .find(|role| role.word().eq_ignore_ascii_case(word.trim()));
        match role.filter(|_| !name.is_empty()) {
            Some(role) => Ok(WalkRole {
                name: name.to_owned(),
                role,
            }),
            None => Err(failure!(
                "--role: {typed:?}, expected NAME=ROLE with lawn, boundary, exclusion, obstacle, guide or station as role"
            )),
        }
    };
    typed.iter().map(role).collect()
}

/// Sets the number of worker threads.
pub(crate) fn threads(wanted: Option<usize>) -> Result<(), CommandFailure> {
    let Some(count) = wanted else { return Ok(()) };
    if count == 0 || count > 1024 {
        return Err(failure!("--threads: {count}, expected 1 to 1024"));
    }
    rayon::ThreadPoolBuilder::new()
        .num_threads(count)
        .build_global()
        .map_err(|error| failure!("--threads: {count} threads cannot be started: {error}"))
}

/// The threshold of `--fail-under`.
pub(crate) fn fail_under(arguments: &AnalyseArguments) -> Result<Option<f64>, CommandFailure> {
    arguments
        .fail_under
        .as_deref()
        .map(|typed| units::percent_as_fraction("--fail-under", typed))
        .transpose()
}

/// A threshold on a share of the lawn needs a width for counting.
pub(crate) fn threshold_has_width(threshold: Option<f64>, settings: &Settings) -> Result<(), CommandFailure> {
    if threshold.is_some() && settings.machine.cut_width_m.is_none() {
        return Err(CommandFailure::told(
            "--fail-under: no cutting width is given, so nothing is counted that could fall below",
        )
        .hint("give it with --cut-width 22cm, or as machine.cut_width_m in the settings"));
    }
    Ok(())
}
