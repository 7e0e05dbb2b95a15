//! Which gardens are there, and what has come in?
//!
//! Without a manifest every folder of the place is a garden: `<garden>/plan.geojson`, `<garden>/settings.toml`,
//! `<garden>/logs/...`. Logs in a folder of their own below `logs` belong to a machine of that name. `gardens.toml` at the
//! place sets what applies to all gardens, and may list them with their paths, the weekdays whose night should bring a log,
//! and the periods in which nothing is expected.

use crate::apart::plain;
use crate::bucket::{Bucket, PlaceReach};
use crate::clock::{Clock, ROLLOVER_DAYS, USUAL_OLDEST_LOG_DAYS};
use crate::night::{self, NightNumber, USUAL_TURN_H};
use crate::{BatchError, SeenFile};
use serde::{Deserialize, Serialize};

/// The manifest's name.
pub const MANIFEST: &str = "gardens.toml";
/// Greatest depth of folders below `logs`.
const DEEPEST: usize = 4;

/// What applies to all gardens.
#[derive(Clone, Debug, PartialEq)]
pub struct Wishes {
    /// Hour of the day at which a night ends and the next begins, unless a garden has its own.
    pub night_turns_at_h: u8,
    /// Logs of nights that lie this many days back or more are set aside.
    pub oldest_log_days: i32,
    /// Suggestions are made for this many gardens, those with the most missed ground.
    pub worst_gardens: usize,
    /// Nights older than this many days are deleted; without it, nights are kept for ever.
    pub retention_days: Option<i32>,
    /// The gardens, in the order of their names.
    pub gardens: Vec<GardenInput>,
}

/// One garden.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct GardenInput {
    /// Its name.
    pub name: String,
    /// Path of the plan.
    pub plan: String,
    /// Path of the settings; the file may be missing.
    pub settings: String,
    /// Folder of the logs.
    pub logs: String,
    /// Weekdays whose night should bring a log.
    pub expected: Expected,
    /// First and last nights of periods without alarms.
    pub rests: Vec<(NightNumber, NightNumber)>,
    /// Name of the machine for logs that are not in a machine's folder.
    pub machine: Option<String>,
    /// Hour by the garden's clock at which a night ends and the next begins.
    pub night_turns_at_h: u8,
}

/// Weekdays whose night should bring a log, from Monday on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Expected(pub [bool; 7]);

impl Expected {
    /// `1111111`.
    pub fn words(self) -> String {
        self.0.map(|day| if day { '1' } else { '0' }).iter().collect()
    }

    /// Parses the same text; anything else means every night.
    pub fn parse(text: &str) -> Self {
        let mut days = [true; 7];
        for (day, letter) in days.iter_mut().zip(text.chars()) {
            *day = letter != '0';
        }
        Self(days)
    }

    /// Whether a night should bring a log.
    pub fn holds(self, night: NightNumber) -> bool {
        self.0
            .get(night::weekday(night) as usize)
            .copied()
            .unwrap_or(true)
    }
}

/// One log in the place.
#[derive(Clone, Debug, PartialEq)]
pub struct LogInput {
    /// Where and how large.
    pub found: SeenFile,
    /// Machine, if the place names it.
    pub machine: Option<String>,
}

impl Wishes {
    /// The time for these gardens.
    pub fn clock(&self, now_unix_s: f64) -> Clock {
        Clock {
            now_unix_s,
            night_turns_at_h: self.night_turns_at_h,
            oldest_log_days: self.oldest_log_days,
        }
    }
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Manifest {
    night_turns_at_h: Option<u8>,
    oldest_log_days: Option<i32>,
    worst_gardens: Option<usize>,
    retention_days: Option<i32>,
    expected: Option<Vec<String>>,
    rests: Option<Vec<String>>,
    #[serde(default)]
    garden: Vec<ManifestGarden>,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct ManifestGarden {
    name: String,
    machine: Option<String>,
    night_turns_at_h: Option<u8>,
    plan: Option<String>,
    settings: Option<String>,
    logs: Option<String>,
    expected: Option<Vec<String>>,
    rests: Option<Vec<String>>,
}

const WEEKDAYS: [&str; 7] = [
    "monday",
    "tuesday",
    "wednesday",
    "thursday",
    "friday",
    "saturday",
    "sunday",
];
/// Suggestions take a few seconds per garden.
const USUAL_WORST_GARDENS: usize = 10;

/// Reads the manifest, or lists the folders if it names no gardens.
///
/// # Errors
/// If the place cannot be listed or the manifest is not sound.
pub fn gardens(bucket: &Bucket) -> Result<Wishes, BatchError> {
    let (folders, files) = bucket.list("")?;
    let manifest = match files.iter().find(|file| file.path == MANIFEST) {
        None => None,
        Some(_) => Some(manifest(&bucket.read(MANIFEST)?)?),
    };
    wishes(manifest, folders, bucket.reach())
}

fn fault(why: String) -> BatchError {
    BatchError::Manifest {
        file: MANIFEST.to_owned(),
        why,
    }
}

fn manifest(bytes: &[u8]) -> Result<Manifest, BatchError> {
    let text = std::str::from_utf8(bytes).map_err(|error| fault(format!("is not UTF-8 text: {error}")))?;
    toml::from_str(text).map_err(|error| fault(error.to_string()))
}

fn wishes(manifest: Option<Manifest>, folders: Vec<String>, reach: PlaceReach) -> Result<Wishes, BatchError> {
    let manifest = manifest.unwrap_or_default();
    let turn_h = |given: Option<u8>, or_h: u8| match given.unwrap_or(or_h) {
        hour @ 0..=23 => Ok(hour),
        hour => Err(fault(format!("night_turns_at_h: {hour}, expected 0 to 23"))),
    };
    let night_turns_at_h = turn_h(manifest.night_turns_at_h, USUAL_TURN_H)?;
    let oldest_log_days = manifest.oldest_log_days.unwrap_or(USUAL_OLDEST_LOG_DAYS);
    if !(15..=ROLLOVER_DAYS).contains(&oldest_log_days) {
        return Err(fault(format!(
            "oldest_log_days: {oldest_log_days}, expected 15 to {ROLLOVER_DAYS}: 1024 weeks back a week counter rolled over"
        )));
    }
    if let Some(days) = manifest
        .retention_days
        .filter(|days| !(15..=100_000).contains(days))
    {
        return Err(fault(format!(
            "retention_days: {days}, expected at least 15: a garden is compared with its own last two weeks"
        )));
    }
    let listed = if manifest.garden.is_empty() {
        folders
            .into_iter()
            .filter(|folder| !folder.starts_with('.'))
            .map(|name| ManifestGarden {
                name,
                ..ManifestGarden::default()
            })
            .collect()
    } else {
        manifest.garden
    };
    let mut gardens = Vec::with_capacity(listed.len());
    for garden in listed {
        let name = garden.name;
        if name.is_empty() || name.chars().any(char::is_control) {
            return Err(fault(format!(
                "garden name {name:?}, expected text without control characters"
            )));
        }
        let path = |given: Option<String>, key: &str, usual: &str| {
            let path = given.unwrap_or_else(|| format!("{name}/{usual}"));
            if reach == PlaceReach::Inside && plain(&path).is_none() {
                return Err(fault(format!(
                    "garden {name:?}: {key} {path:?} leads out of the folder of {MANIFEST} (expected a path inside; --allow-outside lets it)"
                )));
            }
            Ok(path)
        };
        gardens.push(GardenInput {
            plan: path(garden.plan, "plan", "plan.geojson")?,
            settings: path(garden.settings, "settings", "settings.toml")?,
            logs: path(garden.logs, "logs", "logs")?,
            expected: expected(garden.expected.as_ref().or(manifest.expected.as_ref()))?,
            rests: rests(garden.rests.as_ref().or(manifest.rests.as_ref()))?,
            machine: garden.machine,
            night_turns_at_h: turn_h(garden.night_turns_at_h, night_turns_at_h)?,
            name,
        });
    }
    gardens.sort_by(|a, b| a.name.cmp(&b.name));
    if let Some(twice) = gardens.windows(2).find(|pair| pair[0].name == pair[1].name) {
        return Err(fault(format!(
            "garden {:?} stands there twice, expected once",
            twice[0].name
        )));
    }
    Ok(Wishes {
        night_turns_at_h,
        oldest_log_days,
        worst_gardens: manifest.worst_gardens.unwrap_or(USUAL_WORST_GARDENS),
        retention_days: manifest.retention_days,
        gardens,
    })
}

fn expected(given: Option<&Vec<String>>) -> Result<Expected, BatchError> {
    let Some(given) = given else {
        return Ok(Expected([true; 7]));
    };
    let mut days = [false; 7];
    for word in given {
        let at = WEEKDAYS.iter().position(|day| day == word).ok_or_else(|| {
            fault(format!(
                "expected: {word:?} is no weekday, expected monday to sunday"
            ))
        })?;
        days[at] = true;
    }
    Ok(Expected(days))
}

fn rests(given: Option<&Vec<String>>) -> Result<Vec<(NightNumber, NightNumber)>, BatchError> {
    given
        .into_iter()
        .flatten()
        .map(|text| {
            text.split_once('/')
                .and_then(|(from, to)| Some((night::parse(from)?, night::parse(to)?)))
                .filter(|(from, to)| from <= to)
                .ok_or_else(|| {
                    fault(format!(
                        "rests: {text:?}, expected two dates such as 2026-11-01/2027-03-15"
                    ))
                })
        })
        .collect()
}

impl GardenInput {
    /// The time for this garden, whose nights may turn at their own hour.
    pub(crate) fn clock(&self, of_all: Clock) -> Clock {
        Clock {
            night_turns_at_h: self.night_turns_at_h,
            ..of_all
        }
    }

    /// The logs of this garden.
    ///
    /// # Errors
    /// If the folder cannot be listed.
    pub fn logs(&self, bucket: &Bucket) -> Result<Vec<LogInput>, BatchError> {
        let mut out = Vec::new();
        let (machines, files) = bucket.list(&self.logs)?;
        let plain = |found: SeenFile, machine: Option<&String>| LogInput {
            found,
            machine: machine.cloned(),
        };
        out.extend(files.into_iter().map(|found| plain(found, self.machine.as_ref())));
        for folder in machines {
            let machine = folder.rsplit('/').next().unwrap_or_default().to_owned();
            let mut open = vec![(folder, 1)];
            while let Some((folder, depth)) = open.pop() {
                let (deeper, files) = bucket.list(&folder)?;
                out.extend(files.into_iter().map(|found| plain(found, Some(&machine))));
                if depth < DEEPEST {
                    open.extend(deeper.into_iter().map(|folder| (folder, depth + 1)));
                }
            }
        }
        // By convention, files that another program is still writing have such names.
        out.retain(|log| {
            let name = log.found.path.rsplit('/').next().unwrap_or_default();
            !name.starts_with('.') && !name.ends_with(".part") && !name.ends_with(".tmp")
        });
        out.sort_by(|a, b| a.found.path.cmp(&b.found.path));
        Ok(out)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(text: &str) -> Result<Wishes, BatchError> {
        wishes(
            Some(manifest(text.as_bytes())?),
            vec!["b".to_owned(), "a".to_owned()],
            PlaceReach::Inside,
        )
    }

    #[test]
    fn a_manifest_without_gardens_sets_what_holds_for_all_folders() {
        let wishes =
            of("worst_gardens = 2\nexpected = [\"monday\"]\nrests = [\"2026-11-01/2027-03-15\"]").unwrap();
        assert_eq!(wishes.gardens.len(), 2);
        assert_eq!(wishes.gardens[0].plan, "a/plan.geojson");
        let monday = night::parse("2026-05-04").unwrap();
        assert!(wishes.gardens[0].expected.holds(monday) && !wishes.gardens[0].expected.holds(monday + 1));
        assert_eq!(
            Expected::parse(&wishes.gardens[0].expected.words()),
            wishes.gardens[0].expected
        );
        assert_eq!(wishes.gardens[0].rests.len(), 1);
    }

    #[test]
    fn paths_that_lead_out_of_the_manifests_folder_are_refused_unless_they_are_wanted() {
        for line in [
            "name = \"a\"\nplan = \"../plan.geojson\"",
            "name = \"a\"\nsettings = \"/etc/settings.toml\"",
            "name = \"a\"\nlogs = \"a/../../logs\"",
            "name = \"..\"",
            "name = \"/home\"",
        ] {
            let text = format!("[[garden]]\n{line}");
            let told = of(&text).unwrap_err().to_string();
            assert!(told.contains("leads out of the folder of gardens.toml"), "{told}");
            let read = manifest(text.as_bytes()).unwrap();
            assert!(
                wishes(Some(read), Vec::new(), PlaceReach::Anywhere).is_ok(),
                "{line}"
            );
        }
        for path in ["plans/../a/logs", "./logs/", "a//logs", "..logs"] {
            let wishes = of(&format!("[[garden]]\nname = \"a\"\nlogs = \"{path}\"")).unwrap();
            assert_eq!(wishes.gardens[0].logs, path);
        }
    }

    #[test]
    fn faults_of_a_manifest_name_the_value_and_what_was_expected() {
        for (text, part) in [
            ("night_turns_at_h = 24", "expected 0 to 23"),
            (
                "[[garden]]\nname = \"a\"\nnight_turns_at_h = 30",
                "30, expected 0 to 23",
            ),
            ("oldest_log_days = 8000", "expected 15 to 7168"),
            ("expected = [\"moonday\"]", "\"moonday\" is no weekday"),
            ("rests = [\"2026-11-01\"]", "expected two dates"),
            ("retention_days = 3", "at least 15"),
            ("widht = 3", "unknown field `widht`"),
            (
                "[[garden]]\nname = \"a\"\n[[garden]]\nname = \"a\"",
                "stands there twice",
            ),
        ] {
            let told = of(text).unwrap_err().to_string();
            assert!(told.contains(part), "{told}");
        }
    }
}
