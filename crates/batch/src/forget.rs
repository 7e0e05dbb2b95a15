//! How is a customer forgotten, and how long is anything kept?

use crate::night::Night;
use crate::store::{Change, Columns};
use crate::table::TABLES;
use crate::{BatchError, Store};

impl Store {
    /// Takes a garden out of every table. Returns how many rows went; files that held them are written anew without them.
    ///
    /// # Errors
    /// When the disk refuses; then nothing is forgotten yet.
    pub fn forget(&mut self, garden: &str) -> Result<usize, BatchError> {
        self.drop_where(&|name| name == garden, Night::MIN..=Night::MAX)
    }

    /// Takes away every night before one. The rolling state of gardens stays.
    ///
    /// # Errors
    /// When the disk refuses; then nothing is taken away yet.
    pub fn keep_from(&mut self, first: Night) -> Result<usize, BatchError> {
        if first == Night::MIN {
            return Ok(0);
        }
        self.drop_where(&|_| true, Night::MIN..=first - 1)
    }

    fn drop_where(
        &mut self,
        gone: &dyn Fn(&str) -> bool,
        nights: std::ops::RangeInclusive<Night>,
    ) -> Result<usize, BatchError> {
        let mut change = Change::default();
        let mut count = 0;
        let of_all_nights = *nights.end() == Night::MAX;
        for table in TABLES {
            if table.parted == crate::table::Parted::Not && !of_all_nights {
                continue;
            }
            for (night, row) in self.rows(table, Columns::Some(&[]), nights.clone(), gone)? {
                count += 1;
                change.drop(table, night, row[0].text().unwrap_or_default(), None);
            }
        }
        if !change.is_empty() {
            self.commit(change)?;
        }
        Ok(count)
    }
}
