//! How is a customer forgotten, and how long is anything kept?

use crate::clock::Clock;
use crate::night::{self, NightNumber};
use crate::store::{ColumnChoice, StoreChange};
use crate::table::{NIGHTS, Parted, TABLES};
use crate::{BatchError, Store};

/// Share of the nights that may expire in one run. A weekly run deletes 7 nights of 22 if 15 are kept, the fewest that can
/// be kept; a wrong clock or a slip in `retention_days` deletes most.
pub const USUAL_EXPIRY_FRACTION: f64 = 1.0 / 3.0;

/// What was too old.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Expired {
    /// First night that was kept.
    pub first: NightNumber,
    /// Number of nights (per garden) that were deleted.
    pub nights: usize,
    /// Number of rows deleted from all tables.
    pub rows: usize,
}

impl Store {
    /// Removes a garden from every table. Returns the number of rows removed; files that held them are rewritten without
    /// them.
    ///
    /// # Errors
    /// If the disk refuses; then nothing is forgotten yet.
    pub fn forget(&mut self, garden: &str) -> Result<usize, BatchError> {
        self.forget_marks(garden)?;
        let (change, count) = self.without(&|name| name == garden, NightNumber::MIN..=NightNumber::MAX)?;
        if !change.is_empty() {
            self.commit(change)?;
            self.publish(crate::Before::Goes)?;
        }
        Ok(count)
    }

    /// The newest night that can have begun: a log with a wrong time does not make the others old.
    pub(crate) fn newest_night(&self, clock: Clock) -> Option<NightNumber> {
        let nights = self.nights(&NIGHTS);
        nights.into_iter().rfind(|night| *night <= clock.latest_night())
    }

    /// Ends a run: deletes nights that are older than this many days before the newest that can have begun. The rolling
    /// state of gardens stays. Nights that were deleted before and came back, and those from before any run ended, are
    /// deleted without being counted.
    ///
    /// # Errors
    /// If more than the allowed share of the nights would be deleted, or the disk refuses; then nothing is deleted yet.
    pub fn expire(
        &mut self,
        days: Option<i32>,
        clock: Clock,
        at_most_fraction: f64,
    ) -> Result<Expired, BatchError> {
        let first_kept = days.and_then(|days| Some(self.newest_night(clock)? - days + 1));
        let Some(first_kept) = first_kept else {
            self.commit_expiry(StoreChange::default(), None)?;
            return Ok(Expired::default());
        };
        let counted_from = self.expired_before().unwrap_or(NightNumber::MIN);
        let nights = self.count_nights(counted_from..=NightNumber::MAX);
        let taken = self.count_nights(counted_from..=first_kept.saturating_sub(1));
        let gone = self.count_nights(NightNumber::MIN..=first_kept.saturating_sub(1));
        // A share typed in just as it was reported is enough.
        if taken as f64 > (at_most_fraction + 1e-9) * nights as f64 {
            return Err(BatchError::ExpiresTooMuch {
                first: night::words(first_kept),
                taken,
                nights,
                at_most_fraction,
            });
        }
        let (change, rows) = self.without(&|_| true, NightNumber::MIN..=first_kept.saturating_sub(1))?;
        self.commit_expiry(change, Some(first_kept))?;
        Ok(Expired {
            first: first_kept,
            nights: gone,
            rows,
        })
    }

    /// The change that removes rows of some gardens and nights, and the number of those rows.
    fn without(
        &self,
        gone: &dyn Fn(&str) -> bool,
        nights: std::ops::RangeInclusive<NightNumber>,
    ) -> Result<(StoreChange, usize), BatchError> {
        let mut change = StoreChange::default();
        let mut count = 0;
        let of_all_nights = *nights.end() == NightNumber::MAX;
        for table in TABLES {
            if table.parted == Parted::Not && !of_all_nights {
                continue;
            }
            for (night, row) in self.rows(table, ColumnChoice::Some(&[]), nights.clone(), gone)? {
                count += 1;
                change.drop(table, night, row[0].text().unwrap_or_default(), None);
            }
        }
        Ok((change, count))
    }
}
