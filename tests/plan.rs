//! `tussock plan`: check, and from a walk.

use crate::support::{Folder, LAWN, assert_ran, at, garden, run};

#[test]
fn a_sound_plan_shows_its_areas_and_lengths() {
    let folder = Folder::with_garden();
    assert_ran!(
        folder.tussock("plan check garden.geojson").with_code(0),
        "plan-check"
    );
    let ran = folder
        .tussock("plan check garden.geojson --format json")
        .with_code(0);
    let told: serde_json::Value = serde_json::from_str(&ran.stdout).expect("stdout is JSON");
    assert_eq!(told["is_sound"], true);
    // 24 x 16 m of lawn, 3 x 3 m of flower bed out of it; corners are written to a millimetre.
    let lawn_m2 = told["lawn_m2"].as_f64().expect("a number");
    assert!((lawn_m2 - (24.0 * 16.0 - 9.0)).abs() < 0.05, "{lawn_m2}");
}

#[test]
fn a_plan_tried_on_paper_leaves_a_page_and_a_picture_and_nothing_of_others() {
    let folder = Folder::with_garden();
    let told = folder
        .tussock("plan check garden.geojson --cut-width 22cm --out paper")
        .with_code(0);
    assert!(
        told.stdout.contains("plan.html") && told.stdout.contains("plan.png"),
        "{}",
        told.stdout
    );
    let page = String::from_utf8(folder.read("paper/plan.html")).expect("a page is text");
    assert!(page.contains("Before digging") && page.contains("Driven over after 1"));
    // A page that somebody edited is theirs.
    folder.write("paper/plan.html", "my notes");
    folder
        .tussock("plan check garden.geojson --cut-width 22cm --out paper")
        .with_code(2);
    assert_eq!(folder.read("paper/plan.html"), b"my notes");
}

#[test]
fn a_faulty_plan_ends_with_2_and_every_fault_is_told() {
    let folder = Folder::new();
    folder.write(
        "garden.geojson",
        garden(&[(0.0, 0.0), (24.0, 16.0), (24.0, 0.0), (0.0, 16.0), (0.0, 0.0)]),
    );
    assert_ran!(
        folder.tussock("plan check garden.geojson").with_code(2),
        "plan-check-faulty"
    );
    let ran = folder
        .tussock("plan check garden.geojson --format json")
        .with_code(2);
    let told: serde_json::Value = serde_json::from_str(&ran.stdout).expect("stdout is JSON");
    assert_eq!(told["is_sound"], false);
    assert!(!told["faults"].as_array().expect("faults").is_empty());
}

/// A walk round the lawn and the bed, a waypoint at the station.
fn walk() -> String {
    let point = |corner: (f64, f64)| {
        let (lon, lat) = at(corner);
        format!("<trkpt lat=\"{lat:.8}\" lon=\"{lon:.8}\"/>")
    };
    let track = |name: &str, corners: &[(f64, f64)]| {
        // A step every half metre, as a receiver on a walk writes it.
        let mut points = String::new();
        for pair in corners.windows(2) {
            let ((e0, n0), (e1, n1)) = (pair[0], pair[1]);
            let steps = ((e1 - e0).hypot(n1 - n0) / 0.5).ceil().max(1.0);
            for step in 0..steps as u32 {
                let part = f64::from(step) / steps;
                points.push_str(&point((e0 + part * (e1 - e0), n0 + part * (n1 - n0))));
            }
        }
        points.push_str(&point(corners[corners.len() - 1]));
        format!("<trk><name>{name}</name><trkseg>{points}</trkseg></trk>\n")
    };
    let (lon, lat) = at((0.5, 8.0));
    format!(
        "<?xml version=\"1.0\"?>\n<gpx version=\"1.1\" creator=\"walk\" xmlns=\"http://www.topografix.com/GPX/1/1\">\n\
         <wpt lat=\"{lat:.8}\" lon=\"{lon:.8}\"><name>station</name></wpt>\n{}{}{}</gpx>\n",
        track("lawn front", LAWN),
        track(
            "exclusion flower bed",
            &[(15.0, 9.0), (18.0, 9.0), (18.0, 12.0), (15.0, 12.0), (15.0, 9.0)]
        ),
        track("guide to the bed", &[(0.5, 8.0), (13.0, 10.0)]),
    )
}

#[test]
fn a_walk_becomes_a_plan_that_passes_the_check() {
    let folder = Folder::new();
    folder.write("walk.gpx", walk());
    folder
        .tussock("plan from-walk walk.gpx --out garden.geojson")
        .with_code(0);
    let ran = folder
        .tussock("plan check garden.geojson --format json")
        .with_code(0);
    let told: serde_json::Value = serde_json::from_str(&ran.stdout).expect("stdout is JSON");
    let lawn_m2 = told["lawn_m2"].as_f64().expect("a number");
    assert!((lawn_m2 - 375.0).abs() < 1.0, "walked 375 m2, got {lawn_m2}");
    let roles: Vec<&str> = told["features"]
        .as_array()
        .expect("features")
        .iter()
        .filter_map(|row| row["role"].as_str())
        .collect();
    for role in ["lawn", "exclusion", "guide", "station"] {
        assert!(roles.contains(&role), "{roles:?}");
    }
}

#[test]
fn a_walk_goes_through_a_pipe() {
    let folder = Folder::new();
    folder.write("walk.gpx", walk());
    let made = folder.tussock("plan from-walk walk.gpx").with_code(0);
    run(&mut folder.command("plan check -"), made.stdout.as_bytes()).with_code(0);
}

#[test]
fn a_plan_that_exists_is_not_replaced() {
    let folder = Folder::with_garden();
    folder.write("walk.gpx", walk());
    let before = folder.content();
    assert_ran!(
        folder
            .tussock("plan from-walk walk.gpx --out garden.geojson")
            .with_code(2),
        "walk-out-exists"
    );
    assert_eq!(folder.content(), before);
}

#[test]
fn a_walk_without_a_lawn_is_refused() {
    let folder = Folder::new();
    let walk = walk();
    let (start, end) = (
        walk.find("<trk>").expect("a track"),
        walk.find("</trk>").expect("a track"),
    );
    folder.write("walk.gpx", walk.replace(&walk[start..end + "</trk>".len()], ""));
    assert_ran!(
        folder.tussock("plan from-walk walk.gpx").with_code(2),
        "walk-no-lawn"
    );
}

#[test]
fn foreign_names_are_asked_about_once_and_the_command_in_the_question_makes_the_plan() {
    let folder = Folder::new();
    let foreign = [
        ("lawn front", "Vorgarten"),
        ("exclusion flower bed", "l'étang"),
        ("guide to the bed", ""),
        ("station", "Ladestation"),
    ];
    let named = |text: String, (ours, theirs): (&str, &str)| {
        text.replace(&format!("<name>{ours}</name>"), &format!("<name>{theirs}</name>"))
    };
    folder.write("walk.gpx", foreign.into_iter().fold(walk(), named));
    let ran = folder
        .tussock("plan from-walk walk.gpx --out garden.geojson")
        .with_code(2);
    let command = ran.stderr.split_once("run: tussock ").expect("a command").1;
    let command = command.lines().next().expect("a line");
    assert_eq!(
        command,
        "plan from-walk walk.gpx --role Ladestation=station --role Vorgarten=lawn --role \"l'étang=exclusion\" --role \"track 1=guide\" \
         --out garden.geojson"
    );
    assert_ran!(ran, "walk-asked");
    // As a shell takes it apart.
    let arguments: Vec<String> = command
        .split('"')
        .enumerate()
        .flat_map(|(number, part)| match number % 2 {
            0 => part.split_whitespace().map(str::to_owned).collect(),
            _ => vec![part.to_owned()],
        })
        .collect();
    let mut accepted = folder.command("");
    accepted.args(arguments);
    run(&mut accepted, &[]).with_code(0);
    let ran = folder
        .tussock("plan check garden.geojson --format json")
        .with_code(0);
    let told: serde_json::Value = serde_json::from_str(&ran.stdout).expect("stdout is JSON");
    assert!((told["lawn_m2"].as_f64().expect("a number") - 375.0).abs() < 1.0);
    let faulty = folder
        .tussock("plan from-walk walk.gpx --role Vorgarten=grass")
        .with_code(2);
    assert!(
        faulty
            .stderr
            .starts_with("error: --role: \"Vorgarten=grass\", expected NAME=ROLE"),
        "{}",
        faulty.stderr
    );
}

#[test]
fn every_recorded_track_becomes_a_plan_or_one_clear_question() {
    fn files(folder: &std::path::Path, found: &mut Vec<std::path::PathBuf>) {
        for entry in std::fs::read_dir(folder).expect("the folder is there") {
            let path = entry.expect("the entry is there").path();
            match path.is_dir() {
                true => files(&path, found),
                false if path.extension().is_some_and(|end| end == "gpx") => found.push(path),
                false => {}
            }
        }
    }
    let mut found = Vec::new();
    files(
        &std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("fixtures/recordings/gpx"),
        &mut found,
    );
    assert!(found.len() >= 15, "{found:?}");
    for file in found {
        let mut command = crate::support::tussock();
        command.args(["plan", "from-walk"]).arg(&file);
        let ran = run(&mut command, &[]);
        let question = [
            "comes back to where it began",
            "no name says which track is the lawn",
            "no track has a name that begins with",
            "different position(s)",
        ];
        let is_asked = ran.code == Some(2)
            && ran.stderr.matches("error: ").count() == 1
            && question.iter().any(|words| ran.stderr.contains(words));
        assert!(ran.code == Some(0) || is_asked, "{}: {ran}", file.display());
    }
}

#[test]
fn a_walk_that_is_given_as_a_log_is_told_from_a_mowers() {
    // A fix a second round the lawn at 1.2 m/s.
    let mut points = String::new();
    let mut second = 0;
    for pair in LAWN.windows(2) {
        let ((e0, n0), (e1, n1)) = (pair[0], pair[1]);
        let steps = ((e1 - e0).hypot(n1 - n0) / 1.2).ceil();
        for step in 0..steps as u32 {
            let part = f64::from(step) / steps;
            let (lon, lat) = at((e0 + part * (e1 - e0), n0 + part * (n1 - n0)));
            points.push_str(&format!(
                "<trkpt lat=\"{lat:.8}\" lon=\"{lon:.8}\"><time>2026-05-01T10:{:02}:{:02}Z</time></trkpt>\n",
                second / 60,
                second % 60
            ));
            second += 1;
        }
    }
    let folder = Folder::new();
    folder.write(
        "walk.gpx",
        format!("<gpx version=\"1.1\" creator=\"x\"><trk><trkseg>\n{points}</trkseg></trk></gpx>"),
    );
    folder.write("fast.toml", "[machine]\nspeed_mps = 1.2\n");
    for line in [
        "inspect walk.gpx",
        "analyse walk.gpx --cut-width 22cm --no-suggestions",
    ] {
        let ran = folder.tussock(line).with_code(0);
        let said = ran.stdout.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(
            said.contains("This looks like a walk round") && said.contains("tussock plan from-walk FILE."),
            "{ran}"
        );
        // Who says that it is the mower is believed.
        let ran = folder
            .tussock(&format!("{line} --settings fast.toml"))
            .with_code(0);
        assert!(!ran.stdout.contains("looks like a walk"), "{ran}");
    }
    folder.tussock("plan from-walk walk.gpx").with_code(0);
}

/// The demo's plan moved by some metres, in degrees.
fn moved_demo(east_deg: f64, north_deg: f64) -> String {
    let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("fixtures/demo/plan.geojson");
    let mut plan: serde_json::Value =
        serde_json::from_str(&std::fs::read_to_string(path).expect("the demo has a plan")).expect("GeoJSON");
    fn shift(value: &mut serde_json::Value, east_deg: f64, north_deg: f64) {
        let Some(list) = value.as_array_mut() else {
            return;
        };
        match list.as_slice() {
            [lon, lat, ..] if lon.is_number() && lat.is_number() => {
                let (lon, lat) = (lon.as_f64().expect("a number"), lat.as_f64().expect("a number"));
                list[0] = (lon + east_deg).into();
                list[1] = (lat + north_deg).into();
            }
            _ => list
                .iter_mut()
                .for_each(|inner| shift(inner, east_deg, north_deg)),
        }
    }
    for feature in plan["features"].as_array_mut().expect("features") {
        shift(&mut feature["geometry"]["coordinates"], east_deg, north_deg);
    }
    plan.to_string()
}

/// A night of the demo and its plan beside it.
fn with_moved_demo() -> Folder {
    let folder = Folder::new();
    let log = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("fixtures/demo/before/2026-05-04.gpx.gz");
    std::fs::copy(log, folder.path("night.gpx.gz")).expect("the demo has a log");
    // 1e-5 degrees: 0.66 m east and 1.11 m north at 53.9 degrees.
    folder.write("garden.geojson", moved_demo(1e-5, 1e-5));
    folder
}

#[test]
fn a_plan_is_laid_where_the_log_says() {
    let folder = with_moved_demo();
    let before = folder.content();
    let ran = folder
        .tussock("plan align garden.geojson night.gpx.gz --out aligned.geojson")
        .with_code(0);
    assert!(ran.stderr.contains("m west and 1.1"), "{}", ran.stderr);
    assert!(ran.stderr.contains("m south"), "{}", ran.stderr);
    // What was given is as it was.
    let mut after = folder.content();
    after.retain(|name, _| name != "aligned.geojson");
    assert_eq!(after, before);
    // The moved plan lies where the log says.
    let again = folder
        .tussock("plan align aligned.geojson night.gpx.gz")
        .with_code(0);
    assert!(again.stderr.contains("left as it is"), "{}", again.stderr);
}

#[test]
fn analyse_writes_the_plan_as_the_log_shows_the_garden() {
    let folder = with_moved_demo();
    let line = "analyse night.gpx.gz --plan garden.geojson --cut-width 22cm --no-suggestions --write-plan mended.geojson";
    let ran = folder.tussock(line).with_code(0);
    assert!(
        ran.stderr.contains("plan written: moved 1.2") || ran.stderr.contains("plan written: moved 1.3"),
        "{}",
        ran.stderr
    );
    let again = folder
        .tussock("plan align mended.geojson night.gpx.gz")
        .with_code(0);
    assert!(again.stderr.contains("left as it is"), "{}", again.stderr);
    // What is there is not written over, and nothing can be mended without a plan.
    let before = folder.content();
    folder.tussock(line).with_code(2);
    folder
        .tussock("analyse night.gpx.gz --cut-width 22cm --write-plan other.geojson")
        .with_code(2);
    assert_eq!(folder.content(), before);
}
