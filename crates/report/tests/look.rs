//! Writes the sample outputs where a person can look at them.

mod garden;

use std::path::Path;

#[test]
fn samples_are_written_for_looking_at() {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("look");
    std::fs::create_dir_all(&folder).unwrap();
    for (name, findings) in [("first", garden::findings()), ("full", garden::full_findings())] {
        let picture = tussock_report::map_png(&findings, 1400).unwrap();
        std::fs::write(folder.join(format!("{name}.png")), picture).unwrap();
        std::fs::write(
            folder.join(format!("{name}.svg")),
            tussock_report::map_svg(&findings),
        )
        .unwrap();
    }
    println!("{}", folder.display());
}
