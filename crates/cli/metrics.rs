//! Where a run's figures for Prometheus go: a file of ours, whole or not at all.

use crate::exit::{CommandFailure, failure};
use crate::outputs::{folder_of, stage};
use std::path::{Path, PathBuf};

const FIRST_LINE: &str = "# HELP tussock_run_exit_code ";

/// A file that may be written.
pub(crate) struct MetricsFile(PathBuf);

/// Checks that the file may be written: it does not exist, or it is one of ours.
pub(crate) fn probe(path: &Path) -> Result<MetricsFile, CommandFailure> {
    match std::fs::read(path) {
        Ok(bytes) if !bytes.starts_with(FIRST_LINE.as_bytes()) => Err(failure!(
            "--metrics: {} was not written by this command (expected no file, or one that begins {FIRST_LINE:?})",
            path.display()
        )),
        Err(error) if error.kind() != std::io::ErrorKind::NotFound => {
            Err(failure!("--metrics: {}: cannot be read: {error}", path.display()))
        }
        _ => Ok(MetricsFile(path.to_owned())),
    }
}

impl MetricsFile {
    /// Replaces the file with these figures.
    pub(crate) fn write(&self, text: &str) -> Result<(), CommandFailure> {
        let cannot = |error| failure!("--metrics: {}: cannot be written: {error}", self.0.display());
        let file = stage(&folder_of(&self.0), text.as_bytes()).map_err(cannot)?;
        file.persist(&self.0).map_err(|error| cannot(error.error))?;
        Ok(())
    }
}
