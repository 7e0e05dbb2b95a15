//! Would a run find what it needs?
//!
//! The dry run: manifest, plans, settings, and each garden's most recently written log. Nothing is analysed, and there is no
//! store. Logs are read by this process, without the limits of workers.

use crate::bucket::{Bucket, PlaceReach};
use crate::run::{Done, JobsFor, KnownGardens, ShiftNews};
use crate::{BatchError, gardens, work};

/// Checks every garden of a place; reports like a run.
///
/// # Errors
/// If the place cannot be listed or the manifest is not sound.
pub fn check(
    place: &str,
    reach: PlaceReach,
    now_unix_s: f64,
    tell: &mut dyn FnMut(ShiftNews),
) -> Result<Done, BatchError> {
    let bucket = Bucket::open(place, reach)?;
    let wishes = gardens(&bucket)?;
    let mut done = Done {
        gardens: wishes.gardens.len(),
        ..Done::default()
    };
    tell(ShiftNews::Gardens(done.gardens));
    let mut known = KnownGardens::default();
    known.wanted = JobsFor::All;
    let clock = wishes.clock(now_unix_s);
    for mut job in known
        .jobs(place, &bucket, clock, &wishes.gardens, &mut done, tell)
        .jobs
    {
        let newest = job.logs.into_iter().max_by_key(|log| log.modified_unix_ms);
        job.logs = newest.into_iter().collect();
        let answer = work::try_job(&job, &bucket);
        done.logs += answer.logs.len();
        done.failures += answer.failed.len();
        tell(ShiftNews::Garden {
            garden: job.garden,
            logs: answer.logs.len(),
            nights: 0,
            failed: answer.failed,
        });
    }
    Ok(done)
}
