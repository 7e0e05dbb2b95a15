//! What the user supplied: files, or `-` for stdin. Nothing here is ever opened for writing.

use crate::exit::{CommandFailure, failure};
use std::fs::File;
use std::io::Read;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use tussock_ingest::{Assembled, LogFile, ReadOptions};
use tussock_types::{ErrorSeries, LimitSettings, Plan, PlanFault, Reference, Settings};

/// `-` stands for stdin.
pub(crate) fn is_stdin(path: &Path) -> bool {
    path == Path::new("-")
}

/// What a log is, for users who supplied something else.
pub(crate) const A_LOG: &str = "a log (GPX, NMEA 0183, CSV, ...)";

/// Checks that plan and settings exist, if they were given.
pub(crate) fn check_garden(plan: Option<&PathBuf>, settings: Option<&PathBuf>) -> Result<(), CommandFailure> {
    check(plan, "a plan (GeoJSON)")?;
    check(settings, "settings (TOML)")
}

/// The name of an input on screen and in findings.
pub(crate) fn name(path: &Path) -> String {
    if is_stdin(path) {
        "stdin".to_owned()
    } else {
        path.display().to_string()
    }
}

/// Looks at all inputs before reading any, so that a mistyped name is reported at once.
pub(crate) fn check<'a>(
    paths: impl IntoIterator<Item = &'a PathBuf>,
    expected: &str,
) -> Result<(), CommandFailure> {
    let mut stdin_seen = false;
    for path in paths {
        if is_stdin(path) {
            if stdin_seen {
                return Err(CommandFailure::told(
                    "stdin can be read once, expected - at most once",
                ));
            }
            stdin_seen = true;
            continue;
        }
        match std::fs::metadata(path) {
            Ok(found) if found.is_dir() => {
                let failure = failure!("{}: is a directory, expected {expected}", name(path));
                let files = expected
                    .starts_with("a log")
                    .then(|| path.join("*").display().to_string());
                return Err(failure.maybe_hint(files.map(|files| format!("name the files in it: {files}"))));
            }
            Ok(_) => {}
            Err(error) => return Err(unreadable(path, &error)),
        }
    }
    Ok(())
}

fn unreadable(path: &Path, error: &std::io::Error) -> CommandFailure {
    let said = match error.kind() {
        std::io::ErrorKind::NotFound => "does not exist".to_owned(),
        std::io::ErrorKind::PermissionDenied => "may not be read (permission denied)".to_owned(),
        _ => format!("cannot be read: {error}"),
    };
    failure!("{}: {said}", name(path))
}

fn open(path: &Path) -> Result<Box<dyn Read>, CommandFailure> {
    if is_stdin(path) {
        return Ok(Box::new(std::io::stdin().lock()));
    }
    match File::open(path) {
        Ok(file) => Ok(Box::new(file)),
        Err(error) => Err(unreadable(path, &error)),
    }
}

/// More than any plan, walk, settings or findings need: findings of a park have tens of millions of bytes.
const MOST_BYTES: u64 = 256 << 20;

/// All bytes of a small input (plan, walk, settings, findings).
pub(crate) fn bytes(path: &Path) -> Result<Vec<u8>, CommandFailure> {
    let mut bytes = Vec::new();
    open(path)?
        .take(MOST_BYTES + 1)
        .read_to_end(&mut bytes)
        .map_err(|error| unreadable(path, &error))?;
    if bytes.len() as u64 > MOST_BYTES {
        return Err(failure!(
            "{}: holds more than {MOST_BYTES} bytes, expected a plan, walk, settings or findings, which have less",
            name(path)
        ));
    }
    Ok(bytes)
}

/// Whether a file holds saved findings. Stdin counts as a log.
pub(crate) fn is_saved(path: &Path) -> Result<bool, CommandFailure> {
    if is_stdin(path) {
        return Ok(false);
    }
    let mut start = Vec::new();
    open(path)?
        .take(4096)
        .read_to_end(&mut start)
        .map_err(|error| unreadable(path, &error))?;
    Ok(tussock_report::looks_saved(&start))
}

/// Settings, or their defaults.
pub(crate) fn settings(path: Option<&Path>) -> Result<Settings, CommandFailure> {
    let Some(path) = path else {
        return Ok(Settings::default());
    };
    let mut settings = tussock_ingest::read_settings_bytes(&name(path), &bytes(path)?)?;
    let limits = settings.limits.clone();
    if let Some(card) = &mut settings.positions.card {
        // As everywhere: a name in a file is seen from the folder of that file.
        let file = path.parent().unwrap_or(Path::new("")).join(&card.file);
        check(
            [&file],
            "a device card (CSV: t_s,east_m,north_m), as positions.card says",
        )?;
        card.errors = Some(Arc::new(error_series(&file, &limits)?));
    }
    Ok(settings)
}

/// A plan and the faults of its text; faults of its ground are found later.
pub(crate) fn plan(path: &Path, settings: &Settings) -> Result<(Plan, Vec<PlanFault>), CommandFailure> {
    let read = tussock_ingest::read_plan(&name(path), &bytes(path)?, &settings.limits)?;
    Ok((read.plan, read.faults))
}

/// A surveyed path.
pub(crate) fn reference(path: &Path, options: &ReadOptions) -> Result<Reference, CommandFailure> {
    // Columns, date and strictness are about the logs.
    let options = ReadOptions {
        limits: options.limits.clone(),
        ..ReadOptions::default()
    };
    tussock_ingest::read_reference(&name(path), open(path)?, &options).map_err(unread)
}

/// A recorded error.
pub(crate) fn error_series(path: &Path, limits: &LimitSettings) -> Result<ErrorSeries, CommandFailure> {
    tussock_ingest::read_error_series(&name(path), open(path)?, limits).map_err(unread)
}

/// Reads all logs, one after the other, and joins those that belong together.
pub(crate) fn logs(
    paths: &[PathBuf],
    options: &ReadOptions,
    progress: &dyn Fn(&str, f64),
) -> Result<Assembled, CommandFailure> {
    let mut files: Vec<LogFile> = Vec::with_capacity(paths.len());
    for (index, path) in paths.iter().enumerate() {
        progress("reading", index as f64 / paths.len() as f64);
        let file = tussock_ingest::read_log(&name(path), open(path)?, options).map_err(unread)?;
        files.push(file);
    }
    tussock_ingest::assemble(files).map_err(unread)
}

fn unread(error: tussock_ingest::IngestError) -> CommandFailure {
    let hint = error.hint();
    CommandFailure::from(error).maybe_hint(hint)
}
