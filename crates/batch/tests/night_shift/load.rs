//! Invented gardens and their contents in the tables, shared by all tests that start whole nights.

use std::collections::BTreeMap;
use std::path::Path;
use tussock::simulate::gardens::load::{LoadGarden, LoadWish};
use tussock_batch::table::{TABLES, TableRow, order};
use tussock_batch::{ColumnChoice, Store, night};

/// 2026-05-01T20:00:00Z.
pub(crate) const START_UNIX_S: f64 = 1_777_665_600.0;

/// When all logs were written, after all nights that are invented here.
pub(crate) const WRITTEN_UNIX_S: f64 = START_UNIX_S + 60.0 * 86_400.0;

/// Small gardens with short nights, without faults of gardens or logs.
pub(crate) fn wish(nights: u32) -> LoadWish {
    LoadWish {
        nights,
        hours: 0.3,
        period_s: 2.0,
        area_m2: (120.0, 200.0),
        trouble_fraction: 0.0,
        fault_fraction: 0.0,
        start_unix_s: START_UNIX_S,
        seed: 5,
    }
}

/// Plan and settings of a garden, and a folder for its logs, below `gardens`.
pub(crate) fn lay_out(gardens: &Path, garden: &LoadGarden) {
    let place = gardens.join(&garden.name);
    std::fs::create_dir_all(place.join("logs")).unwrap();
    let plan = tussock_ingest::write_plan(&garden.garden.plan);
    std::fs::write(place.join("plan.geojson"), plan).unwrap();
    std::fs::write(
        place.join("settings.toml"),
        format!("[machine]\ncut_width_m = {}\n", garden.cut_width_m),
    )
    .unwrap();
}

/// A log of a garden, by its name below `logs`.
pub(crate) fn put_log(gardens: &Path, garden: &LoadGarden, name: &str, bytes: &[u8]) {
    let path = gardens.join(&garden.name).join("logs").join(name);
    std::fs::create_dir_all(path.parent().unwrap()).unwrap();
    std::fs::write(&path, bytes).unwrap();
    // What is believed of a log hangs on when it was written.
    let written = std::time::UNIX_EPOCH + std::time::Duration::from_secs_f64(WRITTEN_UNIX_S);
    let file = std::fs::File::options().write(true).open(path).unwrap();
    file.set_modified(written).unwrap();
}

pub(crate) fn log_of(garden: &LoadGarden, night: u32, wish: &LoadWish) -> Vec<u8> {
    garden.log(night, wish).unwrap().unwrap().bytes
}

/// Rows by table and night (0 if a table has none).
pub(crate) type Content = BTreeMap<(&'static str, night::NightNumber), Vec<TableRow>>;

/// Every row of a store, in order.
pub(crate) fn content(store: &Path) -> Content {
    let store = Store::open(store).unwrap();
    let mut out = Content::new();
    for table in TABLES {
        let ever = night::NightNumber::MIN..=night::NightNumber::MAX;
        for (night, row) in store.rows(table, ColumnChoice::All, ever, &|_| true).unwrap() {
            out.entry((table.name, night)).or_default().push(row);
        }
    }
    out.values_mut().for_each(|rows| rows.sort_by(order));
    out
}
