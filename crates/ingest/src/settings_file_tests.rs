//! Settings with every kind of fault, and the reference page.

use super::*;
use proptest::prelude::*;
use std::collections::BTreeSet;
use tussock_types::ComplaintSettings;

fn faults(text: &str) -> Vec<String> {
    match read_settings("garden.toml", text) {
        Err(SettingsError::Faults { faults, .. }) => faults.iter().map(ToString::to_string).collect(),
        other => panic!("{other:?}"),
    }
}

#[track_caller]
fn only(text: &str, expected: &str) {
    assert_eq!(faults(text), [expected]);
}

#[test]
fn an_empty_file_is_the_default() {
    assert_eq!(read_settings("garden.toml", "").unwrap(), Settings::default());
    assert_eq!(
        read_settings("garden.toml", "\u{feff}# nothing\n[machine]\n").unwrap(),
        Settings::default()
    );
}

#[test]
fn settings_are_read() {
    let text = r#"
        [machine]
        cut_width_m = 0.22
        speed_mps = 1
        cuts_in_transit = false
        [turf]
        grass = "warm"
        [hours]
        monday = ["8:00-12:00", "14:00-24:00"]
        sunday = []
        [garden]
        name = "Mill Lane 3"
        time_zone = "-03:30"
        [positions]
        origin_lat_deg = 52
        origin_lon_deg = 5.25
        [limits]
        plan_corners = 0x1000
        fixes = 1_000
    "#;
    let settings = read_settings("garden.toml", text).unwrap();
    assert_eq!(
        (settings.machine.cut_width_m, settings.machine.speed_mps),
        (Some(0.22), Some(1.0))
    );
    assert!(!settings.machine.cuts_in_transit);
    assert_eq!(settings.turf.grass, tussock_types::Grass::Warm);
    assert_eq!(settings.hours.sunday, Some(Vec::new()));
    assert_eq!(settings.garden.time_zone.as_deref(), Some("-03:30"));
    assert_eq!(
        (settings.limits.plan_corners, settings.limits.fixes),
        (4096, 1000)
    );
    assert_eq!(settings.pockets, tussock_types::PocketSettings::default());
}

#[test]
fn unknown_keys_and_tables_name_the_nearest_known_one() {
    only(
        "[machine]\ncut_width = 0.22\n",
        "line 2: machine.cut_width is not known, expected machine.cut_width_m as the nearest known key",
    );
    only(
        "[machin]\n",
        "line 1: machin is not known, expected [machine] as the nearest known table",
    );
    only(
        "\ncut_width_m = 0.22\n",
        "line 2: cut_width_m is not known, expected it in the table [machine]",
    );
    only(
        "[machine]\nmin_width_m = 1.0\n",
        "line 2: machine.min_width_m is not known, expected it in the table [pockets]",
    );
    only(
        "machine = 3\n",
        "line 1: machine is a number, expected a table [machine]",
    );
    only(
        "[hours]\nmunday = []\n",
        "line 2: hours.munday is not known, expected hours.monday as the nearest known key",
    );
}

/// Exactly: an inch is 0.0254 m (the international yard of 1959).
#[test]
fn lengths_may_be_typed_with_their_unit() {
    for (typed, width_m) in [
        ("22cm", 0.22),
        ("9in", 0.2286),
        ("0.75 ft", 0.2286),
        ("220 mm", 0.22),
    ] {
        let settings =
            read_settings("garden.toml", &format!("[machine]\ncut_width_m = \"{typed}\"\n")).unwrap();
        let found_m = settings.machine.cut_width_m.unwrap();
        assert!((found_m - width_m).abs() < 1e-12, "{typed}: {found_m}");
    }
}

#[test]
fn values_of_the_wrong_kind_or_size_are_named_with_what_is_allowed() {
    only(
        "[machine]\n\ncut_width_m = 40\n",
        "line 3: machine.cut_width_m is 40, expected a number from 0.05 to 2",
    );
    only(
        "[machine]\ncut_width_m = 0.0\n",
        "line 2: machine.cut_width_m is 0.0, expected a number from 0.05 to 2",
    );
    only(
        "[machine]\ncut_width_m = nan\n",
        "line 2: machine.cut_width_m is nan, expected a number from 0.05 to 2",
    );
    only(
        "[machine]\ncut_width_m = \"wide\"\n",
        "line 2: machine.cut_width_m is \"wide\", expected a number from 0.05 to 2",
    );
    only(
        "[machine]\ncut_width_m = \"40 ft\"\n",
        "line 2: machine.cut_width_m is \"40 ft\", expected a number from 0.05 to 2",
    );
    only(
        "[machine]\ncuts_in_transit = 1\n",
        "line 2: machine.cuts_in_transit is 1, expected true or false",
    );
    only(
        "[promise]\nvisited_fraction = 95\n",
        "line 2: promise.visited_fraction is 95, expected a number from 0 to 1",
    );
    only(
        "[turf]\ngrass = \"blue\"\n",
        "line 2: turf.grass is \"blue\", expected \"cool\" or \"warm\"",
    );
    only(
        "[limits]\ncells = 1.5\n",
        "line 2: limits.cells is 1.5, expected a whole number from 100 up",
    );
    only(
        "[limits]\nfixes = -1\n",
        "line 2: limits.fixes is -1, expected a whole number from 1 up",
    );
    only(
        "[limits]\nfixes = 99999999999999999999\n",
        "line 2: limits.fixes is 99999999999999999999, expected a whole number from 1 up",
    );
    only(
        "[garden]\nname = {a = 1}\n",
        "line 2: garden.name is a table, expected a text of at most 200 characters",
    );
    only(
        "[garden]\ntime_zone = \"Middle/Earth\"\n",
        "line 2: garden.time_zone is \"Middle/Earth\", expected a name such as \"Europe/Berlin\", an offset such as \"+02:00\", or \"UTC\"",
    );
}

#[test]
fn working_hours_are_checked() {
    let form = "expected a list such as [\"08:00-12:00\", \"14:00-19:00\"]";
    only(
        "[hours]\nmonday = \"08:00-12:00\"\n",
        &format!("line 2: hours.monday is \"08:00-12:00\", {form}"),
    );
    only(
        "[hours]\nmonday = [\"8-12\"]\n",
        &format!("line 2: hours.monday is [\"8-12\"], {form}"),
    );
    only(
        "[hours]\nmonday = [\"08:00-25:00\"]\n",
        &format!("line 2: hours.monday is [\"08:00-25:00\"], {form}"),
    );
    only(
        "[hours]\nmonday = [8]\n",
        &format!("line 2: hours.monday is [8], {form}"),
    );
    only(
        "[hours]\nmonday = [\"22:00-06:00\"]\n",
        "line 2: hours.monday is [\"22:00-06:00\"], expected \"22:00-06:00\" to end after it starts (one past midnight is two: up to 24:00, and from 00:00 on the next day)",
    );
    only(
        "[hours]\nmonday = [\"08:00-12:00\", \"11:00-13:00\"]\n",
        "line 2: hours.monday is [\"08:00-12:00\", \"11:00-13:00\"], expected \"11:00-13:00\" to start after the one before it has ended",
    );
    assert_eq!(day_span_min("08:05-24:00"), Some((485, 1440)));
    for wrong in [
        "",
        "08:00",
        "08:00-",
        "08:0-09:00",
        "08:60-09:00",
        "-1:00-02:00",
        "24:01-25:00",
        "008:00-09:00",
    ] {
        assert_eq!(day_span_min(wrong), None, "{wrong}");
    }
}

#[test]
fn an_origin_has_both_coordinates() {
    only(
        "[positions]\norigin_lat_deg = 52.0\n",
        "line 1: positions.origin_lon_deg is missing, expected both coordinates of the origin or none",
    );
}

#[test]
fn all_faults_come_at_once_in_the_order_of_the_file() {
    let found = faults("[pockets]\nmin_width_m = -1\n[machine]\ncut_width_m = 40\nwidth = 3\n[grass]\n");
    assert_eq!(found.len(), 4);
    let lines: Vec<&str> = found.iter().map(|fault| &fault[..6]).collect();
    assert_eq!(lines, ["line 2", "line 4", "line 5", "line 6"]);
}

#[test]
fn what_is_not_toml_is_refused_with_line_and_column() {
    let error = read_settings("garden.toml", "[machine]\ncut_width_m = 0,22\n").unwrap_err();
    assert!(
        error
            .to_string()
            .starts_with("garden.toml: line 2, column 16: not TOML: "),
        "{error}"
    );
    let error = read_settings("garden.toml", "{\"machine\": 1}").unwrap_err();
    assert!(matches!(error, SettingsError::NotToml { line: 1, .. }), "{error}");
    let twice = read_settings("garden.toml", "[machine]\nspeed_mps = 1\nspeed_mps = 2\n").unwrap_err();
    assert!(matches!(twice, SettingsError::NotToml { line: 3, .. }), "{twice}");
}

#[test]
fn every_setting_is_in_the_list_and_nothing_else() {
    // Through JSON, where keys without a default are null instead of absent.
    let all = serde_json::to_value(Settings::default()).unwrap();
    let mut expected = BTreeSet::new();
    // Of a table that may be there several times, one.
    let mut all = all;
    all["complaint"] = serde_json::to_value(ComplaintSettings::default()).unwrap();
    for (table, keys) in all.as_object().unwrap() {
        for key in keys.as_object().unwrap().keys() {
            expected.insert((table.clone(), key.clone()));
        }
    }
    let listed: Vec<_> = TABLES
        .iter()
        .flat_map(|table| table.key.iter().map(|key| (table.name.clone(), key.name.clone())))
        .collect();
    assert_eq!(BTreeSet::from_iter(listed.iter().cloned()), expected);
    assert_eq!(listed.len(), expected.len());
    for table in TABLES.iter() {
        for key in &table.key {
            let default = &all[&table.name][&key.name];
            assert_eq!(default.is_null(), key.default.is_none(), "{}", key.name);
        }
    }
}

#[test]
fn the_reference_reads_back_as_the_default() {
    let text = settings_reference();
    assert_eq!(read_settings("reference", &text).unwrap(), Settings::default());
    assert!(text.lines().all(|line| line.chars().count() <= 102), "{text}");
    // And with every example switched on, each value is allowed.
    let names: Vec<String> = TABLES
        .iter()
        .flat_map(|table| &table.key)
        // One place of the two.
        .filter(|key| key.default.is_none() && key.name != "at_m")
        .map(|key| format!("# {} = ", key.name))
        .chain(["# [[complaint]]".to_owned()])
        .collect();
    let switched_on: String = text
        .lines()
        .map(|line| match names.iter().any(|name| line.starts_with(name)) {
            true => format!("{}\n", &line[2..]),
            false => format!("{line}\n"),
        })
        .collect();
    let all = read_settings("reference", &switched_on).unwrap();
    assert_eq!(all.machine.cut_width_m, Some(0.22));
    assert_eq!(all.garden.time_zone.as_deref(), Some("Europe/Berlin"));
    assert_eq!(all.complaint[0].at_deg, Some([40.00006, -30.00012]));
    assert_eq!(all.complaint[0].radius_m, ComplaintSettings::default().radius_m);
    assert_eq!(all.visit.serial.as_deref(), Some("SN 4711"));
}

#[test]
fn complaints_are_of_one_place_each() {
    let good = "[[complaint]]\nat = [40, -30.5]\nsaid = \"brown\"\n\n[[complaint]]\nat_m = [4.5, -2]\nradius_m = 1.5\n";
    let settings = read_settings("garden.toml", good).unwrap();
    assert_eq!(settings.complaint.len(), 2);
    assert_eq!(settings.complaint[0].at_deg, Some([40.0, -30.5]));
    assert_eq!(
        (settings.complaint[1].at_m, settings.complaint[1].radius_m),
        (Some([4.5, -2.0]), 1.5)
    );
    for (text, words) in [
        (
            "[[complaint]]\nsaid = \"x\"\n",
            "complaint.at is missing, expected one of complaint.at and complaint.at_m",
        ),
        (
            "[[complaint]]\nat = [40, -30]\nat_m = [1, 2]\n",
            "complaint.at is given beside complaint.at_m, expected one of complaint.at and complaint.at_m",
        ),
        (
            "[[complaint]]\nat = [400, -30]\n",
            "line 2: complaint.at is [400, -30], expected a list of two numbers, from -90 to 90",
        ),
        (
            "[[complaint]]\nat = [40]\n",
            "complaint.at is [40], expected a list of two numbers",
        ),
        (
            "[complaint]\nat = [40, -30]\n",
            "complaint is a table, expected a table [[complaint]]",
        ),
        (
            "complaint = [3]\n",
            "complaint is a number, expected a table [[complaint]]",
        ),
        (
            "[[machine]]\ncut_width_m = 0.2\n",
            "machine is a list, expected a table [machine]",
        ),
        (
            "[[complaint]]\nat = [40, -30]\nradius = 3\n",
            "complaint.radius is not known, expected complaint.radius_m",
        ),
    ] {
        let error = read_settings("garden.toml", text).unwrap_err().to_string();
        assert!(error.contains(words), "{text}: {error}");
    }
}

proptest! {
    #[test]
    fn no_text_makes_the_reader_panic(text in "[\\[\\]{}=\"'a-z0-9_.,#\\n -]{0,120}", inside in "[a-z_]{1,12}") {
        let _ = read_settings("x", &text);
        let _ = read_settings("x", &format!("[machine]\n{inside} = {text}\n"));
    }

    #[test]
    fn any_settings_in_range_read_back(width_m in 0.05f64..2.0, days in 0.01f64..365.0, cells in 100u64..1_000_000_000) {
        let mut settings = Settings::default();
        settings.machine.cut_width_m = Some(width_m);
        settings.promise.days = days;
        settings.limits.cells = cells;
        let text = toml::to_string(&settings).unwrap();
        prop_assert_eq!(read_settings("x", &text).unwrap(), settings);
    }
}
