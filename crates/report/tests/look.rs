//! Writes the sample outputs where a person can look at them.

#![allow(clippy::unwrap_used)]

mod garden;

use std::path::Path;
use tussock_report::{Privacy, html_comparison, map_svg, outputs};

#[test]
fn samples_are_written_for_looking_at() {
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
        for output in outputs(&findings, privacy).unwrap() {
            println!("{name}/{}: {} bytes", output.name, output.bytes.len());
            std::fs::write(folder.join(output.name), output.bytes).unwrap();
        }
        std::fs::write(folder.join("map.svg"), map_svg(&findings)).unwrap();
    }
    let page = html_comparison(&garden::comparison()).unwrap();
    std::fs::create_dir_all(folder.join("comparison")).unwrap();
    std::fs::write(folder.join("comparison/comparison.html"), page).unwrap();
    println!("{}", folder.display());
}
