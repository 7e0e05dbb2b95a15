//! The arrows between the rooms, and the habits that a compiler does not hold.
//!
//! Reads `cargo metadata` and the sources. What is allowed stands in the tables below; a new arrow or exception is a
//! line there, with its reason in the same commit.

use cargo_metadata::{DependencyKind, Metadata, MetadataCommand, Package};
use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

/// Who may stand on whom. Arrows run down only.
const ARROWS: &[(&str, &[&str])] = &[
    ("tussock-types", &[]),
    ("tussock-ingest", &["tussock-types"]),
    ("tussock-plane", &["tussock-types"]),
    ("tussock-report", &["tussock-types"]),
    ("tussock-locate", &["tussock-types", "tussock-plane"]),
    ("tussock-simulate", &["tussock-types", "tussock-plane"]),
    (
        "tussock-coverage",
        &["tussock-types", "tussock-plane", "tussock-locate"],
    ),
    (
        "tussock-survey",
        &[
            "tussock-types",
            "tussock-plane",
            "tussock-locate",
            "tussock-coverage",
            "tussock-simulate",
        ],
    ),
    (
        "tussock-study",
        &[
            "tussock-types",
            "tussock-plane",
            "tussock-locate",
            "tussock-coverage",
            "tussock-simulate",
            "tussock-survey",
        ],
    ),
    (
        "tussock-diagnose",
        &[
            "tussock-types",
            "tussock-plane",
            "tussock-locate",
            "tussock-coverage",
            "tussock-simulate",
            "tussock-survey",
        ],
    ),
    (
        "tussock-check",
        &[
            "tussock-types",
            "tussock-plane",
            "tussock-locate",
            "tussock-coverage",
            "tussock-simulate",
            "tussock-survey",
        ],
    ),
    (
        "tussock",
        &[
            "tussock-types",
            "tussock-plane",
            "tussock-locate",
            "tussock-coverage",
            "tussock-simulate",
            "tussock-survey",
            "tussock-study",
            "tussock-diagnose",
            "tussock-check",
        ],
    ),
    (
        "tussock-batch",
        &["tussock-types", "tussock-ingest", "tussock-report", "tussock"],
    ),
    ("tussock-testkit", &[]),
    (
        "tussock-cli",
        &[
            "tussock-types",
            "tussock-ingest",
            "tussock-report",
            "tussock-simulate",
            "tussock-batch",
            "tussock",
        ],
    ),
    (
        "tussock-python",
        &[
            "tussock-types",
            "tussock-ingest",
            "tussock-report",
            "tussock-simulate",
            "tussock-batch",
            "tussock",
        ],
    ),
    (
        "tussock-web",
        &["tussock-types", "tussock-ingest", "tussock-report", "tussock"],
    ),
];

/// Never, not even in tests: a saved result is drawn by code that knows no algorithm, and truth is not computed by
/// what it judges.
const BLIND: &[(&str, &[&str])] = &[
    (
        "tussock-report",
        &[
            "tussock-locate",
            "tussock-coverage",
            "tussock-survey",
            "tussock-study",
            "tussock-diagnose",
            "tussock-check",
            "tussock-simulate",
            "tussock",
        ],
    ),
    (
        "tussock-simulate",
        &[
            "tussock-locate",
            "tussock-coverage",
            "tussock-survey",
            "tussock-study",
            "tussock-diagnose",
            "tussock-check",
            "tussock",
        ],
    ),
];

/// Libraries that belong to one room (outside tests).
const AT_HOME: &[(&str, &[&str])] = &[
    ("clap", &["tussock-cli"]),
    ("kdam", &["tussock-cli"]),
    ("ctrlc", &["tussock-cli"]),
    ("anstream", &["tussock-cli"]),
    ("terminal_size", &["tussock-cli"]),
    ("tempfile", &["tussock-cli"]),
    ("parquet", &["tussock-report", "tussock-batch"]),
    ("object_store", &["tussock-batch"]),
    ("tokio", &["tussock-batch"]),
    ("rustix", &["tussock-batch"]),
    ("minijinja", &["tussock-report"]),
    ("resvg", &["tussock-report"]),
    ("png", &["tussock-report"]),
    ("quick-xml", &["tussock-ingest"]),
    ("toml", &["tussock-ingest", "tussock-batch"]),
    ("encoding_rs", &["tussock-ingest"]),
    // Words stand in the catalogue of the windows.
    ("fluent-bundle", &["tussock-report"]),
    // Polygon operations stand behind the guarded door of the ground.
    ("geo", &["tussock-plane"]),
    ("rstar", &["tussock-plane", "tussock-diagnose"]),
    // Machines are drawn in the sandbox, pasts that agree with a log in locating, errors of positions in the count, nights and
    // gardens in studies.
    (
        "rand",
        &[
            "tussock-simulate",
            "tussock-locate",
            "tussock-coverage",
            "tussock-study",
        ],
    ),
    (
        "rand_chacha",
        &[
            "tussock-simulate",
            "tussock-locate",
            "tussock-coverage",
            "tussock-study",
        ],
    ),
    ("pyo3", &["tussock-python"]),
    ("numpy", &["tussock-python"]),
];

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn metadata() -> Metadata {
    MetadataCommand::new()
        .manifest_path(root().join("Cargo.toml"))
        .no_deps()
        .exec()
        .expect("cargo metadata runs")
}

fn room<'a>(metadata: &'a Metadata, name: &str) -> &'a Package {
    metadata
        .packages
        .iter()
        .find(|package| package.name.as_str() == name)
        .expect("the room is there")
}

#[test]
fn arrows_run_down_only() {
    let metadata = metadata();
    let allowed: BTreeMap<&str, &[&str]> = ARROWS.iter().copied().collect();
    let mut seen = 0;
    for package in &metadata.packages {
        let name = package.name.as_str();
        let below = allowed
            .get(name)
            .unwrap_or_else(|| panic!("{name} has no line in the table of arrows"));
        for dependency in package
            .dependencies
            .iter()
            .filter(|dependency| dependency.path.is_some())
        {
            if dependency.kind == DependencyKind::Normal {
                seen += 1;
                assert!(
                    below.contains(&dependency.name.as_str()),
                    "{name} must not see {}",
                    dependency.name
                );
            }
        }
    }
    assert!(
        seen > 15,
        "only {seen} arrows were seen: is the list of packages whole?"
    );
}

#[test]
fn report_sees_no_algorithm_and_truth_is_not_computed_by_what_it_judges() {
    let metadata = metadata();
    for (name, unseen) in BLIND {
        for dependency in &room(&metadata, name).dependencies {
            assert!(
                !unseen.contains(&dependency.name.as_str()),
                "{name} must not see {}",
                dependency.name
            );
        }
    }
}

#[test]
fn libraries_stay_in_their_room() {
    let metadata = metadata();
    for package in &metadata.packages {
        for dependency in package
            .dependencies
            .iter()
            .filter(|dependency| dependency.kind == DependencyKind::Normal)
        {
            if let Some((_, homes)) = AT_HOME.iter().find(|(library, _)| *library == dependency.name) {
                let name = package.name.as_str();
                assert!(
                    homes.contains(&name),
                    "{} belongs to {homes:?}, not to {name}",
                    dependency.name
                );
            }
        }
    }
}

/// Calls that a library crate does not make.
const UNSPOKEN: &[(&str, &str)] = &[
    ("println!", "prints"),
    ("print!(", "prints"),
    ("dbg!", "prints"),
    ("process::exit", "exits"),
    ("env::var", "reads the environment"),
    ("env::args", "reads arguments"),
    ("std::fs", "opens a path"),
    ("File::open", "opens a path"),
    ("SystemTime", "asks the clock"),
    ("Instant::now", "asks the clock"),
];

#[test]
fn library_rooms_neither_print_nor_exit_nor_open_paths_nor_ask_the_clock() {
    let mut files = 0;
    for path in sources() {
        // The command does all of that; the kit of tests reads fixtures and ships with nothing.
        if ["crates/cli", "crates/testkit"]
            .iter()
            .any(|room| path.starts_with(root().join(room)))
        {
            continue;
        }
        files += 1;
        // The night shift keeps a store and ends workers that take too long.
        let is_batch = path.starts_with(root().join("crates/batch"));
        for (number, line) in shipped_lines(&path) {
            for (call, what) in UNSPOKEN {
                if is_batch && *what == "opens a path" {
                    continue;
                }
                assert!(!line.contains(call), "{}:{number} {what}: {line}", path.display());
            }
        }
    }
    assert!(files > 30, "only {files} sources were seen");
}

/// Endings that name a unit.
const UNITS: &[&str] = &[
    "_m",
    "_m2",
    "_mm",
    "_cm",
    "_px",
    "_s",
    "_min",
    "_h",
    "_days",
    "_mps",
    "_mps2",
    "_deg",
    "_rad",
    "_per_m",
    "_per_m2",
    "_per_s",
    "_fraction",
    "_h_per_day",
    "_c",
    "_mm_per_day",
    "_m2_per_s",
    "_m_per_h",
    "_unix_s",
    "_m2_per_s4",
    "_nats",
    "_per_root_s",
];

/// Numbers without a unit, and why.
const BARE: &[(&str, &str)] = &[
    // Contract names of findings.json.
    ("guide", "number of a guide run and the part of its length"),
    ("home", "way home and its seconds"),
    ("aspect", "ratio of two lengths"),
    ("area_ratio", "ratio"),
    ("lawn", "visited part of the lawn"),
    ("pockets", "visited part of each pocket"),
    ("most_visits", "visits"),
    ("pocket_fraction_in_log", "part of the pocket"),
    ("crossings_expected", "changes of side"),
    ("share_ratio", "path over its fair share"),
    ("crossings_per_day", "changes of side"),
    ("most_minutes", "minutes"),
    ("logged", "unit told by the words beside it"),
    ("lat", "contract: degrees"),
    ("lon", "contract: degrees"),
    ("origin_lat", "contract: degrees"),
    ("origin_lon", "contract: degrees"),
    ("estimate", "contract: unit of the field that holds it"),
    ("low", "contract: unit of the field that holds it"),
    ("high", "contract: unit of the field that holds it"),
    ("p50", "contract: unit of the field that holds it"),
    ("p90", "contract: unit of the field that holds it"),
    ("p99", "contract: unit of the field that holds it"),
    ("median_per_cell", "visits"),
    ("mean_per_cell", "visits"),
    ("histogram", "contract: parts of the lawn"),
    ("gini", "dimensionless coefficient"),
    ("efficiency", "contract: 0 to 1"),
    ("gini_of_poisson", "dimensionless coefficient"),
    ("dispersion", "variance over mean"),
    ("variation", "standard deviation over mean"),
    ("one_axis", "mean resultant length, 0 to 1"),
    ("two_axes", "mean resultant length, 0 to 1"),
    ("mirror_correlation", "correlation, -1 to 1"),
    ("swept_times", "swept area over lawn area"),
    ("driving_h_to_95", "hours"),
    ("driving_h_to_99", "hours"),
    ("a", "unit of the measure that is compared"),
    ("b", "unit of the measure that is compared"),
    ("by_garden", "unit of the measure that is compared"),
    ("mean", "unit of the measure that is compared"),
    ("position_sd", "unit of the measure that is compared"),
    ("night_sd", "unit of the measure that is compared"),
    ("garden_sd", "unit of the measure that is compared"),
    ("cohen_d", "standard deviations"),
    ("cliffs_delta", "difference of two parts, -1 to 1"),
    ("hours_more_needed", "contract: hours"),
    ("hours_to_95", "contract: hours"),
    ("hours_to_99", "contract: hours"),
    ("hours_to_decide", "contract: hours"),
    ("probability", "probability"),
    ("certainty", "contract: probability"),
    ("statistic", "unit of the check"),
    ("expected_low", "unit of the check"),
    ("expected_high", "unit of the check"),
    ("tails", "degrees of freedom"),
    ("median", "unit of what holds it"),
    ("minutes", "contract: minutes"),
    ("days", "contract: days"),
    ("hours", "hours"),
    ("times_mean", "ratio"),
    ("mean_visits", "visits"),
    ("place_share", "part of a whole"),
    ("covariance", "metres and metres a second, mixed"),
    ("log_likelihood", "nats"),
    ("visited_probability", "contract: probability"),
    ("visits", "number of visits, or swept area over cell area"),
    ("edge_visits", "mean visits"),
    ("interior_visits", "mean visits"),
    ("visits_expected", "contract: visits"),
    ("hdop", "dimensionless dilution"),
    ("max_hdop", "dimensionless dilution"),
    ("error_factor", "ratio"),
    ("first", "degrees or metres, told by the enum beside it"),
    ("second", "degrees or metres, told by the enum beside it"),
    ("value", "unit told by the sentence that shows it"),
    ("variance", "square of the unit of the value beside it"),
    ("surprise", "mean square of normalised residuals"),
    ("weight", "trust, 0 to 1"),
    ("along", "unit vector"),
    ("east", "metres, or part of a unit vector"),
    ("north", "metres, or part of a unit vector"),
    ("fractions", "parts of the lawn, 0 to 1"),
    ("of", "components of the state and their weights"),
    ("slip", "unit vector and metres"),
    ("lost", "metres, and their standard deviation"),
    ("turns", "numbers of steps and edges, and trust"),
    ("clustering", "Moran's I, -1 to 1"),
    ("burstiness", "-1 to 1"),
    ("turn_agreement", "length of a mean unit vector"),
    ("mean_passes", "number of passes"),
    ("cost", "unit of the prices that the caller gives"),
];

#[test]
fn every_public_number_carries_its_unit_in_its_name() {
    let mut seen = 0;
    let mut bare = Vec::new();
    for path in sources() {
        for (number, line) in shipped_lines(&path) {
            let Some((name, kind)) = field(&line) else {
                continue;
            };
            if !kind.contains("f64") && !kind.contains("f32") {
                continue;
            }
            seen += 1;
            let has_unit = UNITS.iter().any(|unit| name.ends_with(unit));
            let is_known = BARE.iter().any(|(known, _)| *known == name);
            if !has_unit && !is_known && !is_private_pair(kind) {
                bare.push(format!("{}:{number} {name}: {kind}", path.display()));
            }
        }
    }
    assert!(seen > 100, "only {seen} numbers were seen");
    assert!(bare.is_empty(), "numbers without a unit:\n{}", bare.join("\n"));
}

/// `pub name: type,` of a struct.
fn field(line: &str) -> Option<(&str, &str)> {
    let rest = line.trim().strip_prefix("pub ")?;
    let (name, kind) = rest.split_once(':')?;
    let is_name = name
        .chars()
        .all(|letter| letter.is_ascii_lowercase() || letter.is_ascii_digit() || letter == '_');
    (is_name && !kind.starts_with(':')).then(|| (name, kind.trim().trim_end_matches(',')))
}

/// Texts that a result holds: names, dates and words of other people. All else that is said is a code with values.
const TEXTS: &[&str] = &[
    "tool_version",
    "start",
    "end",
    "time",
    "last_visit",
    "date",
    "id",
    "suggestion_ids",
    "pocket_ids",
    "together_with",
    "pocket",
    "name",
    "names",
    "said",
    "sunset",
    "dusk",
    "dawn",
    "sunrise",
    "who",
    "when",
    "machine",
    "serial",
    "done",
    "from",
    "sunset",
    "dusk",
    "dawn",
    "sunrise",
];

#[test]
fn reasons_are_codes_with_values_and_sentences_stand_in_the_catalogue_alone() {
    let mut sentences = Vec::new();
    let (mut texts, mut codes) = (0, 0);
    for path in sources() {
        let room = path
            .strip_prefix(root().join("crates"))
            .expect("it lies in a room");
        let is_result = ["findings.rs", "installation.rs", "comparison.rs"]
            .iter()
            .any(|name| room == Path::new("types/src").join(name));
        // Windows and counters speak; the door says what it thinks of a log in the log's facts, a guess of a pattern is no finding.
        if [
            "report",
            "batch",
            "cli",
            "python",
            "ingest",
            "testkit",
            "study",
            "tussock/src/measures",
            "types/src/math.rs",
        ]
        .iter()
        .any(|other| room.starts_with(other))
        {
            continue;
        }
        for (number, line) in shipped_lines(&path) {
            if let Some((name, kind)) = field(&line).filter(|_| is_result) {
                codes += usize::from(kind.contains("Said"));
                texts += usize::from(kind.contains("String"));
                if kind.contains("String") && !TEXTS.contains(&name) {
                    sentences.push(format!("{}:{number} {name}: {kind}", room.display()));
                }
            }
            let literals = line.split('"').skip(1).step_by(2);
            let is_sentence = |text: &str| {
                text.ends_with('.')
                    && text.starts_with(|c: char| c.is_uppercase())
                    && text.matches(' ').count() > 2
            };
            sentences.extend(
                literals
                    .filter(|text| is_sentence(text))
                    .map(|text| format!("{}:{number} {text}", room.display())),
            );
        }
    }
    assert!(
        texts > 10 && codes > 10,
        "{texts} texts and {codes} codes were seen"
    );
    assert!(sentences.is_empty(), "expected Said:\n{}", sentences.join("\n"));
}

/// Shapes of other libraries with f64 inside are no numbers.
fn is_private_pair(kind: &str) -> bool {
    ["MultiPolygon<f64>", "Polygon<f64>", "Fn("]
        .iter()
        .any(|shape| kind.contains(shape))
}

#[test]
fn every_dependency_says_why_it_is_here() {
    let manifest = std::fs::read_to_string(root().join("Cargo.toml")).expect("the manifest is there");
    let dependencies = manifest
        .split("[workspace.dependencies]")
        .nth(1)
        .and_then(|rest| rest.split("\n[").next())
        .expect("the table is there");
    let lines: Vec<&str> = dependencies
        .lines()
        .map(str::trim)
        .filter(|line| !line.is_empty())
        .collect();
    assert!(lines.len() > 20);
    for line in &lines {
        let is_ours = line.contains("path = \"crates/");
        let reason = line
            .split_once('#')
            .map(|(_, reason)| reason.trim())
            .unwrap_or_default();
        assert!(is_ours || reason.len() >= 8, "no reason beside: {line}");
    }
    let names: Vec<&str> = lines
        .iter()
        .filter(|line| !line.contains("path ="))
        .filter_map(|line| line.split_whitespace().next())
        .collect();
    let mut sorted = names.clone();
    sorted.sort_unstable();
    assert_eq!(names, sorted, "keep them sorted");
}

#[test]
fn every_room_keeps_the_shared_lints_and_has_a_line_in_the_map() {
    let map = std::fs::read_to_string(root().join("DEVELOPERS.md")).expect("DEVELOPERS.md is there");
    for package in &metadata().packages {
        let manifest = std::fs::read_to_string(&package.manifest_path).expect("the manifest is there");
        assert!(
            manifest.contains("[lints]\nworkspace = true"),
            "{} does not keep the lints",
            package.name
        );
        let folder = package
            .manifest_path
            .parent()
            .and_then(|folder| folder.file_name())
            .unwrap_or_default();
        let name = if package.name.as_str() == "tussock-cli" {
            "cli"
        } else {
            folder
        };
        assert!(
            map.contains(&format!("| `{name}` |")),
            "{name} is not on the map of DEVELOPERS.md"
        );
    }
}

fn sources() -> Vec<PathBuf> {
    fn walk(folder: &Path, found: &mut Vec<PathBuf>) {
        for entry in std::fs::read_dir(folder).expect("the folder is there") {
            let path = entry.expect("the entry is there").path();
            if path.is_dir() {
                walk(&path, found);
            } else if path.extension().is_some_and(|ending| ending == "rs") {
                found.push(path);
            }
        }
    }
    let mut found = Vec::new();
    for package in std::fs::read_dir(root().join("crates")).expect("the rooms are there") {
        let folder = package.expect("the room is there").path();
        let source = folder.join("src");
        walk(if source.is_dir() { &source } else { &folder }, &mut found);
    }
    let is_test = |path: &PathBuf| {
        path.file_stem()
            .is_some_and(|stem| stem.to_string_lossy().ends_with("_tests"))
    };
    found.retain(|path| !is_test(path));
    found.sort();
    found
}

/// Lines that ship: without comments, and only above the tests at the end of a file.
fn shipped_lines(path: &Path) -> Vec<(usize, String)> {
    let text = std::fs::read_to_string(path).expect("the source is there");
    let lines: Vec<&str> = text.lines().collect();
    // Tests inside of a file end it; those in files of their own are named anywhere.
    let is_end = |number: usize| {
        let behind = lines
            .iter()
            .skip(number + 1)
            .find(|line| !line.trim_start().starts_with("#["));
        lines[number] == "#[cfg(test)]" && behind.is_some_and(|line| line.ends_with('{'))
    };
    lines
        .iter()
        .enumerate()
        .take_while(|(number, _)| !is_end(*number))
        .filter(|(_, line)| !line.trim_start().starts_with("//"))
        .map(|(index, line)| (index + 1, (*line).to_owned()))
        .collect()
}

/// Names of types that stand in two rooms because a caller of Python sees the same thing.
const SAME_IN_PYTHON: &[&str] = &[
    "Comparison",
    "Findings",
    "Hand",
    "Plan",
    "Reference",
    "Settings",
    "Store",
    "Trace",
];

/// Names that still mean two things. Each goes from here when one of the two is renamed; none comes.
const STILL_TWO_MEANINGS: &[&str] = &[
    "Chain",
    "Drive",
    "Foot",
    "Line",
    "Lines",
    "Near",
    "Nights",
    "Node",
    "Pace",
    "Part",
    "Pattern",
    "Piece",
    "Positions",
    "PossibleStop",
    "Scene",
    "Seen",
    "Shape",
    "Side",
    "Smoothed",
    "Span",
    "Spell",
    "Stand",
    "Start",
    "State",
    "Step",
    "Stray",
    "StuckSpot",
    "Tiles",
    "Turn",
    "Vector",
];

#[test]
fn no_type_name_has_two_meanings() {
    let mut homes: BTreeMap<String, Vec<PathBuf>> = BTreeMap::new();
    for path in sources() {
        for (_, line) in shipped_lines(&path) {
            if let Some(name) = type_name(&line) {
                homes.entry(name.to_owned()).or_default().push(path.clone());
            }
        }
    }
    assert!(homes.len() > 300, "only {} types were seen", homes.len());
    let allowed = |name: &str, places: &[PathBuf]| {
        let python = root().join("crates/python");
        let is_wrapper = places.len() == 2 && places.iter().any(|path| path.starts_with(&python));
        STILL_TWO_MEANINGS.contains(&name) || is_wrapper && SAME_IN_PYTHON.contains(&name)
    };
    homes.retain(|_, places| places.len() > 1);
    let settled: Vec<_> = (STILL_TWO_MEANINGS.iter())
        .filter(|name| !homes.contains_key(**name))
        .collect();
    assert!(
        settled.is_empty(),
        "these have one meaning now, take them from the list: {settled:?}"
    );
    homes.retain(|name, places| !allowed(name, places));
    assert!(homes.is_empty(), "names with two meanings: {homes:#?}");
}

/// The name of a type that a line begins to define; types that belong to a trait are indented.
fn type_name(line: &str) -> Option<&str> {
    let mut words = line.split_whitespace();
    let mut word = words.next()?;
    if word.starts_with("pub") {
        word = words.next()?;
    }
    let is_type = ["struct", "enum", "trait"].contains(&word) || word == "type" && !line.starts_with(' ');
    let name = words.next()?;
    let end = name.find(|letter: char| !letter.is_alphanumeric() && letter != '_');
    is_type.then(|| &name[..end.unwrap_or(name.len())])
}

/// Imports that run back within a room, to be mended: room, from, to.
const RUN_BACK: &[(&str, &str, &str)] = &[
    ("types", "installation", "findings"),
    ("simulate", "lanes", "drive"),
    ("report", "messages", "words"),
    ("python", "findings", "work"),
    ("batch", "apart", "run"),
    ("batch", "apart", "gardens"),
    ("batch", "bucket", "s3"),
];

#[test]
fn imports_within_a_room_run_one_way() {
    let mut seen_back: BTreeSet<&(&str, &str, &str)> = BTreeSet::new();
    for folder in std::fs::read_dir(root().join("crates")).expect("the rooms are there") {
        let source = folder.expect("the room is there").path().join("src");
        let Ok(library) = std::fs::read_to_string(source.join("lib.rs")) else {
            continue;
        };
        let room = source
            .parent()
            .and_then(Path::file_name)
            .expect("a room has a name");
        let room = room.to_string_lossy().into_owned();
        let mut imports: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
        let mut exported: BTreeMap<String, String> = BTreeMap::new();
        for path in sources()
            .iter()
            .filter(|path| path.starts_with(&source) && !path.ends_with("lib.rs"))
        {
            let first = path
                .strip_prefix(&source)
                .ok()
                .and_then(|path| path.iter().next());
            let module = first
                .map(|name| name.to_string_lossy().replace(".rs", ""))
                .expect("a file in the room");
            let text = shipped_lines(path)
                .into_iter()
                .map(|(_, line)| line)
                .collect::<Vec<_>>()
                .join("\n");
            if library.contains(&format!("pub use {module}::*;")) {
                exported.extend(public_names(&text).map(|name| (name, module.clone())));
            }
            imports.entry(module).or_default().extend(own_imports(&text));
        }
        for line in library.split("pub use ").skip(1) {
            let (module, names) = line
                .split_once(';')
                .and_then(|(line, _)| line.split_once("::"))
                .unwrap_or_default();
            exported.extend(words(names).map(|name| (name, module.to_owned())));
        }
        let modules: BTreeSet<String> = imports.keys().cloned().collect();
        for (module, names) in &mut imports {
            *names = std::mem::take(names)
                .into_iter()
                .map(|name| exported.get(&name).cloned().unwrap_or(name))
                .filter(|name| name != module && modules.contains(name))
                .filter(|name| {
                    let back = RUN_BACK
                        .iter()
                        .find(|back| **back == (room.as_str(), module.as_str(), name.as_str()));
                    seen_back.extend(back);
                    back.is_none()
                })
                .collect();
        }
        // Take away what imports nothing, again and again: what is left runs in circles.
        while let Some(free) = imports
            .iter()
            .find(|(_, names)| names.is_empty())
            .map(|(module, _)| module.clone())
        {
            imports.remove(&free);
            imports.values_mut().for_each(|names| {
                names.remove(&free);
            });
        }
        assert!(
            imports.is_empty(),
            "imports of {room} run in a circle: {imports:?}"
        );
    }
    let mended: Vec<_> = RUN_BACK
        .iter()
        .filter(|back| !seen_back.contains(*back))
        .collect();
    assert!(
        mended.is_empty(),
        "these imports are gone, take them from the list: {mended:?}"
    );
}

/// What `crate::` leads to in a source.
fn own_imports(text: &str) -> BTreeSet<String> {
    text.split("crate::")
        .skip(1)
        .flat_map(|rest| match rest.strip_prefix('{') {
            Some(list) => words(list.split('}').next().unwrap_or_default()).collect::<Vec<_>>(),
            None => words(rest).take(1).collect(),
        })
        .collect()
}

fn words(text: &str) -> impl Iterator<Item = String> + '_ {
    text.split(|letter: char| !letter.is_alphanumeric() && letter != '_')
        .filter(|word| !word.is_empty())
        .map(str::to_owned)
}

/// Names of public items at the outermost level.
fn public_names(text: &str) -> impl Iterator<Item = String> + '_ {
    text.lines().filter_map(|line| {
        let mut words = line.strip_prefix("pub ")?.split_whitespace();
        words.next()?;
        let name = words.next()?;
        Some(
            name.split(|letter: char| !letter.is_alphanumeric() && letter != '_')
                .next()?
                .to_owned(),
        )
    })
}

/// Each quantity, and the one place where it is worked out: a pattern that only its definition matches, and the file.
const DEFINITIONS: &[(&str, &str, &str)] = &[
    ("vector on the plane", "pub struct Vector ", "plane/src/vector.rs"),
    ("edge of a region", "pub struct Edge ", "plane/src/vector.rs"),
    ("distance transform", "pub fn squared(", "plane/src/distance.rs"),
    ("connected parts", "pub fn parts(mask", "plane/src/distance.rs"),
    ("median", "fn median(values", "types/src/math.rs"),
    ("quantile", "fn quantile(sorted", "types/src/math.rs"),
    (
        "position error",
        "fn position_error_m(&self) -> f64 {\n        if let",
        "locate/src/track.rs",
    ),
    ("turns", "pub fn turns(track", "locate/src/turns.rs"),
    (
        "setback, expected",
        "pub fn expected(machine",
        "locate/src/turns.rs",
    ),
    (
        "setback, measured",
        "pub fn measured(track",
        "locate/src/turns.rs",
    ),
    ("station and outings", "pub fn at_station(", "locate/src/halts.rs"),
    (
        "stays where a receiver smooths",
        "pub fn stays(kept",
        "locate/src/stays.rs",
    ),
    (
        "visited fraction as logged",
        "pub fn as_logged(survey",
        "survey/src/calibrate/as_logged.rs",
    ),
    ("transit", "pub fn transits(track", "locate/src/activities.rs"),
    ("swath on cells", "pub fn for_each_span(", "coverage/src/swath.rs"),
    ("chance of a gap", "fn log_expected(", "coverage/src/luck.rs"),
    (
        "random-search law",
        "fn random_search_fraction(",
        "simulate/src/laws.rs",
    ),
    (
        "lawn",
        "pub fn lawn(&self) -> Result<&Lawn",
        "survey/src/survey.rs",
    ),
    ("swept path", "pub fn sweeps(&self)", "survey/src/survey.rs"),
    ("pattern", "pub fn pattern(tracks", "survey/src/pattern.rs"),
    ("fitted machine", "pub fn fit(\n", "survey/src/fitted.rs"),
    (
        "visited fraction",
        "pub fn visited_fraction(&self) -> f64 {\n        let found",
        "survey/src/coverage_count.rs",
    ),
    ("its interval", "pub fn visited(\n", "survey/src/interval.rs"),
];

#[test]
fn each_quantity_has_one_definition() {
    let sources: Vec<(String, String)> = sources()
        .into_iter()
        .map(|path| {
            let text = std::fs::read_to_string(&path).expect("a source can be read");
            (path.display().to_string().replace('\\', "/"), text)
        })
        .collect();
    for (quantity, definition, home) in DEFINITIONS {
        let places: Vec<&str> = sources
            .iter()
            .flat_map(|(path, text)| text.matches(definition).map(|_| path.as_str()))
            .collect();
        assert!(
            places.len() == 1 && places[0].ends_with(home),
            "{quantity} ({definition}) is defined in {places:?}, expected once, in {home}"
        );
    }
}
