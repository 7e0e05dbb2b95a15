//! `tussock visits`: which visits did a garden have, and what did each bring?

use crate::args::VisitsArguments;
use crate::exit::{CommandFailure, Exit, failure};
use crate::inputs::{self, name};
use crate::outputs::{OutputFolder, Rendered};
use crate::printer::Printer;
use crate::{CommandResult, commands, wishes};
use std::fs;
use std::path::{Path, PathBuf};
use tussock_report::Privacy;
use tussock_types::{Comparison, GardenSettings, with_causes};

/// What a comparison is called.
const COMPARISON: &str = "comparison.json";
/// Folders are searched this deep, so that a link in a circle ends.
const DEEPEST: usize = 4;

pub(crate) fn run(arguments: &VisitsArguments, printer: &Printer) -> CommandResult {
    let folder = &arguments.folder;
    let out = (arguments.out.as_ref())
        .map(|path| OutputFolder::probe(path, []))
        .transpose()?;
    let mut paths = Vec::new();
    gather(folder, DEEPEST, &mut paths)?;
    if paths.is_empty() {
        return Err(failure!(
            "{}: no {COMPARISON} in it, expected one for each visit",
            name(folder)
        )
        .hint("tussock compare --out DIR writes one"));
    }
    let compared: Vec<(String, Comparison)> = paths
        .iter()
        .map(|path| read(folder, path))
        .collect::<Result<_, _>>()?;
    let garden = garden(&compared);
    let visits = tussock_report::visits(compared, Privacy::from(arguments.private));
    let voices = wishes::voices(arguments.voice, &garden);
    let written = match &out {
        None => Vec::new(),
        Some(out) => out.write(&[Rendered {
            name: "visits.html".to_owned(),
            bytes: tussock_report::html_visits(&visits, voices.page)?.into_bytes(),
        }])?,
    };
    let human = || tussock_report::answer_visits(&visits, printer.style(voices.terminal));
    let json = || tussock_report::visits_to_json(&visits);
    commands::tell(arguments.format, human, json, &written, printer, voices.terminal)?;
    Ok(Exit::Done)
}

/// Every comparison in a folder and in those in it, in the order of their names.
fn gather(folder: &Path, deep: usize, found: &mut Vec<PathBuf>) -> Result<(), CommandFailure> {
    let unreadable = |error| failure!("{}: cannot be listed: {error}", name(folder));
    let entries = fs::read_dir(folder).map_err(unreadable)?;
    let mut paths: Vec<PathBuf> = entries
        .map(|entry| entry.map(|entry| entry.path()))
        .collect::<Result<_, _>>()
        .map_err(unreadable)?;
    paths.sort();
    for path in paths {
        if path.is_dir() && deep > 0 {
            gather(&path, deep - 1, found)?;
        } else if path.file_name().is_some_and(|name| name == COMPARISON) {
            found.push(path);
        }
    }
    Ok(())
}

fn read(folder: &Path, path: &Path) -> Result<(String, Comparison), CommandFailure> {
    let comparison = tussock_report::comparison_from_json(&inputs::bytes(path)?)
        .map_err(|error| failure!("{}: {}", name(path), with_causes(&error)))?;
    let within = path.parent().and_then(|parent| parent.strip_prefix(folder).ok());
    Ok((within.map(name).unwrap_or_default(), comparison))
}

/// The garden's own settings, as the last of the comparisons has them.
fn garden(compared: &[(String, Comparison)]) -> GardenSettings {
    let sides = compared
        .iter()
        .rev()
        .filter_map(|(_, comparison)| comparison.findings_after.as_ref());
    sides
        .map(|findings| findings.settings.garden.clone())
        .next()
        .unwrap_or_default()
}
