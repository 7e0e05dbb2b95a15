//! What has the operator said about an alarm?
//!
//! `tussock-marks.json` in the store, replaced in one step and under its own lock: an alarm can be acknowledged while a run
//! is writing, and a kill loses nothing that was said.

use crate::night::{self, NightNumber};
use crate::store::Store;
use crate::{BatchError, Disk, RealDisk};
use serde::{Deserialize, Serialize};
use std::fs::File;
use std::path::Path;
use tussock_types::Alarm;

const MARKS: &str = "tussock-marks.json";
const LOCK: &str = ".tussock-marks-lock";

/// One statement of the operator: that an alarm is known, or that it should not be shown for a while.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Mark {
    /// Garden.
    pub garden: String,
    /// Kind of alarm; every kind if `None`.
    pub alarm: Option<Alarm>,
    /// Night after which it was said, `2026-05-01`.
    pub on: String,
    /// Last night that is not shown, if the alarm is muted; otherwise it is known.
    pub muted_until: Option<String>,
    /// Why.
    pub reason: Option<String>,
}

impl Mark {
    fn concerns(&self, garden: &str, alarm: Alarm) -> bool {
        self.garden == garden && self.alarm.is_none_or(|one| one == alarm)
    }

    /// Whether it keeps a garden's alarm off the list of a night.
    pub(crate) fn mutes(&self, garden: &str, alarm: Alarm, night: NightNumber) -> bool {
        let until = self.muted_until.as_deref().and_then(night::parse);
        self.concerns(garden, alarm) && until.is_some_and(|until| night <= until)
    }

    /// Whether an alarm that opened in one night and stands in another was acknowledged in between.
    pub(crate) fn acknowledges(
        &self,
        garden: &str,
        alarm: Alarm,
        opened: NightNumber,
        night: NightNumber,
    ) -> bool {
        let on = night::parse(&self.on).filter(|_| self.muted_until.is_none());
        self.concerns(garden, alarm) && on.is_some_and(|on| (opened..=night).contains(&on))
    }
}

fn read(folder: &Path) -> Result<Vec<Mark>, BatchError> {
    match RealDisk.read(&folder.join(MARKS)) {
        Ok(bytes) => serde_json::from_slice(&bytes).map_err(|error| BatchError::NoStore {
            path: folder.to_owned(),
            why: format!("{MARKS} is not one of ours: {error}"),
        }),
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => Ok(Vec::new()),
        Err(source) => Err(BatchError::Disk {
            path: folder.join(MARKS),
            what: "read",
            source,
        }),
    }
}

impl Store {
    /// Everything that the operator said, oldest first.
    ///
    /// # Errors
    /// If the file cannot be read or is not one of ours.
    pub fn marks(&self) -> Result<Vec<Mark>, BatchError> {
        read(self.path())
    }

    /// Keeps a mark. An earlier one for the same garden, kind of alarm and kind of mark is dropped.
    ///
    /// # Errors
    /// If the file cannot be read or written; earlier marks are then unchanged.
    pub fn mark(&self, mark: Mark) -> Result<(), BatchError> {
        change_marks(self.path(), |marks| {
            let of = |one: &Mark| (one.garden.clone(), one.alarm, one.muted_until.is_some());
            marks.retain(|one| of(one) != of(&mark));
            marks.push(mark);
        })
    }

    /// Removes a garden's marks.
    pub(crate) fn forget_marks(&self, garden: &str) -> Result<(), BatchError> {
        if self.marks()?.iter().all(|mark| mark.garden != garden) {
            return Ok(());
        }
        change_marks(self.path(), |marks| marks.retain(|mark| mark.garden != garden))
    }
}

fn change_marks(folder: &Path, change: impl FnOnce(&mut Vec<Mark>)) -> Result<(), BatchError> {
    let path = folder.join(MARKS);
    let failed = |source| BatchError::Disk {
        path: path.clone(),
        what: "written",
        source,
    };
    let lock = File::create(folder.join(LOCK)).map_err(failed)?;
    // Waits for another operator; if a file system has no locks, the last one to write wins.
    let _ = lock.lock();
    let mut marks = read(folder)?;
    change(&mut marks);
    let mut text = serde_json::to_vec_pretty(&marks)?;
    text.push(b'\n');
    let part = folder.join(format!("{MARKS}.part"));
    RealDisk.write(&part, &text).map_err(failed)?;
    RealDisk.rename(&part, &path).map_err(failed)
}
