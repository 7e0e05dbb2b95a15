//! Writes the sample outputs where a person can look at them.

use crate::garden;
use std::path::Path;
use tussock_report::{Privacy, Voice, html_comparison, html_forecast, left_out, map_svg, outputs};

const FILES: [&str; 7] = [
    "cells.parquet",
    "findings.geojson",
    "findings.json",
    "legs.parquet",
    "map.png",
    "pockets.gpx",
    "report.html",
];

#[test]
fn samples_are_written_whole_for_looking_at() {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("look");
    let samples = [
        ("first", garden::findings(), Privacy::Full),
        ("full", garden::full_findings(), Privacy::Full),
        ("crowded", garden::crowded_findings(), Privacy::Full),
        ("private", garden::full_findings(), Privacy::Private),
        ("local", garden::local_findings(), Privacy::Full),
        ("without-width", garden::findings_without_width(), Privacy::Full),
        ("bare", garden::bare_findings(), Privacy::Full),
        ("hostile", garden::hostile_findings(), Privacy::Full),
    ];
    for (name, findings, privacy) in samples {
        let folder = folder.join(name);
        std::fs::create_dir_all(&folder).unwrap();
        // Each file is there, or it is said why not.
        let mut named: Vec<&str> = left_out(&findings, privacy, Voice::default())
            .iter()
            .map(|(file, _)| *file)
            .collect();
        for output in outputs(&findings, privacy, Voice::default()).unwrap() {
            println!("{name}/{}: {} bytes", output.name, output.bytes.len());
            assert!(!output.bytes.is_empty(), "{name}/{}", output.name);
            named.push(output.name);
            std::fs::write(folder.join(output.name), output.bytes).unwrap();
        }
        named.sort_unstable();
        assert_eq!(named, FILES, "{name}");
        let svg = map_svg(&findings, Voice::default());
        assert!(svg.ends_with("</svg>") && !svg.contains("NaN"), "{name}/map.svg");
        std::fs::write(folder.join("map.svg"), svg).unwrap();
    }
    let page = html_comparison(&garden::comparison(), Voice::default()).unwrap();
    assert!(page.trim_end().ends_with("</html>"));
    std::fs::create_dir_all(folder.join("comparison")).unwrap();
    std::fs::write(folder.join("comparison/comparison.html"), page).unwrap();
    let mut settings = tussock_types::Settings::default();
    settings.machine.cut_width_m = Some(0.22);
    let page = html_forecast(&garden::forecast(), &settings, "0.1.0", Voice::default()).unwrap();
    std::fs::create_dir_all(folder.join("forecast")).unwrap();
    std::fs::write(folder.join("forecast/plan.html"), page).unwrap();
    println!("{}", folder.display());
}
