//! Writes the demo garden into `fixtures/demo`: `cargo run --release -p tussock-simulate --example demo`.

use std::path::Path;

mod garden;

fn main() -> std::io::Result<()> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../fixtures/demo");
    for file in garden::files() {
        let path = folder.join(&file.name);
        if let Some(parent) = path.parent() {
            std::fs::create_dir_all(parent)?;
        }
        std::fs::write(path, file.stored()?)?;
    }
    Ok(())
}
