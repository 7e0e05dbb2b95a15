//! `tussock simulate gardens`: many invented gardens, with the truth beside them.

use super::simulate::{period_s, start_unix_s};
use crate::args::SimulateGardensArguments;
use crate::exit::{CommandFailure, Exit, failure};
use crate::outputs::{NewFile, folder_of};
use crate::printer::Printer;
use crate::progress::Progress;
use crate::{CommandResult, units};
use serde_json::{Value, json};
use std::fs;
use std::path::Path;
use tussock_simulate::gardens::load::{LoadTrouble, LoadWish, LogFate, load_garden};
use tussock_types::plural;

pub(crate) fn run(arguments: &SimulateGardensArguments, printer: &Printer) -> CommandResult {
    let wish = LoadWish {
        nights: arguments.nights,
        hours: arguments.hours,
        period_s: period_s(&arguments.period)?,
        area_m2: area_m2(&arguments.area)?,
        trouble_fraction: units::percent_as_fraction("--troubled", &arguments.troubled)?,
        fault_fraction: units::percent_as_fraction("--faulty", &arguments.faulty)?,
        start_unix_s: start_unix_s(&arguments.start)?,
        seed: arguments.seed,
    };
    if !(wish.hours > 0.0 && wish.hours <= 24.0) {
        return Err(failure!(
            "--hours: {}, expected more than 0 and at most 24",
            wish.hours
        ));
    }
    let out = NewFile::probe(&arguments.out)?;
    let progress = Progress::new();
    // Everything is made beside its final place, so that the folder is complete or not there at all.
    let above = folder_of(&arguments.out);
    let unwritten = |error: std::io::Error| {
        failure!(
            "--out: {} cannot be written: {}",
            arguments.out.display(),
            error.kind()
        )
    };
    fs::create_dir_all(&above).map_err(unwritten)?;
    let folder = tempfile::TempDir::with_prefix_in(".tussock-", &above).map_err(unwritten)?;
    let mut truth = Vec::new();
    for number in 0..arguments.count {
        progress.tell(
            "inventing gardens",
            f64::from(number) / f64::from(arguments.count),
        );
        truth.push(garden(number, &wish, folder.path())?);
    }
    let text = json!({"tool_version": tussock::TOOL_VERSION, "seed": wish.seed, "hours": wish.hours, "gardens": truth});
    fs::write(folder.path().join("truth.json"), format!("{text:#}\n")).map_err(unwritten)?;
    drop(progress);
    fs::rename(folder.path(), out.path()).map_err(unwritten)?;
    // It has another name now, so nothing is left to remove.
    let _ = folder.keep();
    printer.note(&format!(
        "{}: {}, {}",
        out.path().display(),
        plural(arguments.count, "garden", "gardens"),
        plural(arguments.nights, "night", "nights")
    ));
    Ok(Exit::Done)
}

fn garden(number: u32, wish: &LoadWish, folder: &Path) -> Result<Value, CommandFailure> {
    let invented = load_garden(number, wish);
    let name = &invented.name;
    let failed = |error: std::io::Error| failure!("{name}: cannot be written: {}", error.kind());
    let write = |path: &Path, bytes: &[u8]| -> Result<(), CommandFailure> {
        if let Some(above) = path.parent() {
            fs::create_dir_all(above).map_err(failed)?;
        }
        fs::write(path, bytes).map_err(failed)
    };
    let place = folder.join("gardens").join(name);
    write(
        &place.join("plan.geojson"),
        tussock_ingest::write_plan(&invented.garden.plan).as_ref(),
    )?;
    let settings = format!(
        "[machine]\ncut_width_m = {}\n\n[garden]\nname = \"{name}\"\n",
        invented.cut_width_m
    );
    write(&place.join("settings.toml"), settings.as_bytes())?;
    fs::create_dir_all(place.join("logs")).map_err(failed)?;
    let mut logs = Vec::new();
    for night in 0..wish.nights {
        let Some(log) = invented.log(night, wish)? else {
            logs.push(json!({"night": night, "fate": "absent"}));
            continue;
        };
        let home = if log.fate == LogFate::Late {
            folder
                .join("late")
                .join(format!("night-{:02}", log.arrives_night))
                .join(name)
        } else {
            place.clone()
        };
        write(
            &home.join("logs").join(format!("night-{night:03}.gpx")),
            &log.bytes,
        )?;
        if log.fate == LogFate::Twice {
            write(
                &home.join("logs").join(format!("night-{night:03}-again.gpx")),
                &log.bytes,
            )?;
        }
        logs.push(json!({
            "night": night, "fate": log.fate.word(), "arrives_night": log.arrives_night,
            "driving_h": log.driving_h, "troubled": invented.is_troubled(night),
        }));
    }
    let is_troubled = invented.trouble != LoadTrouble::None;
    Ok(json!({
        "garden": name,
        "trouble": invented.trouble.word(),
        "from_night": is_troubled.then_some(invented.from_night),
        "until_night": (is_troubled && invented.until_night < wish.nights).then_some(invented.until_night),
        "stuck_at": invented.stuck_at.map(|place| json!({"east_m": place.east_m, "north_m": place.north_m})),
        "logs": logs,
    }))
}

fn area_m2(typed: &str) -> Result<(f64, f64), CommandFailure> {
    typed
        .split_once('-')
        .and_then(|(least, most)| Some((least.trim().parse().ok()?, most.trim().parse().ok()?)))
        .filter(|(least, most): &(f64, f64)| *least >= 50.0 && least <= most && *most <= 1e5)
        .ok_or_else(|| {
            failure!("--area: {typed:?}, expected least and largest square metres such as 300-900")
        })
}
