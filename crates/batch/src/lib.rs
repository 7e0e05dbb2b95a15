//! The night shift: which of all these gardens need a visit, and since when?
//!
//! | question | item |
//! |---|---|
//! | what has come in since yesterday, and what does it show? | [`run::run`] |
//! | what should the operator do this morning? | [`morning::morning`] |
//! | where is everything kept, and who may read it? | [`Store`], [`table`] |
//! | since when is something worse, and is it mended? | [`Store::renew_alarms`], table `alarms` |
//! | what has the operator said about it? | [`Mark`] |
//! | which night does a fix belong to? | [`night`] |
//! | can a log belong to the night that it names? | [`Clock`] |
//! | how can one log that hangs be kept from stopping the others? | [`pool`], [`work`] |
//! | how is one garden processed on a machine that has no store? | [`apart`] |
//! | would a run find what it needs? | [`check`] |
//! | how is a customer forgotten? | [`Store::forget`] |
//!
//! A run lists the gardens, looks up what it knows about each log, and hands every garden with something new to a worker
//! process. Answers are collected and committed in hundreds. What is committed depends only on the logs and the clock, not
//! on the order in which logs came, how often they came, or how often the run was stopped.
//!
//! Exact: a log counts once, however many copies there are; a night holds all of its pieces; tables are complete or
//! unchanged. Approximate: each night is analysed by itself, so a pocket that luck explains in every single night stays
//! `not_yet` even if many nights together would decide it.
//!
//! Cost: the analysis of each new night, once. A run over known logs lists and compares them, and reads none.

mod alarms;
pub mod apart;
mod bucket;
pub mod check;
mod clock;
mod disk;
mod error;
#[cfg(test)]
mod error_tests;
pub mod forget;
mod gardens;
mod identity;
mod job;
mod last_visits;
mod marks;
pub mod morning;
pub mod night;
pub mod pool;
mod rows;
pub mod run;
#[cfg(feature = "s3")]
mod s3;
mod store;
pub mod table;
pub mod work;

pub use bucket::{Bucket, Folder, Listed, Objects, PlaceReach, SeenFile};
pub use clock::{Clock, USUAL_OLDEST_LOG_DAYS};
pub use disk::{Disk, RealDisk};
pub use error::BatchError;
pub use gardens::{Expected, GardenInput, LogInput, MANIFEST, Wishes, gardens};
pub use job::{Failed, GardenAnswer, GardenJob, JobStage, LogAnswer, LogRef, Message, NightAnswer};
pub use last_visits::LastVisits;
pub use marks::Mark;
pub use store::{Before, ColumnChoice, DropRows, PutRow, Store, StoreChange};
