//! The record on disk: a database and a folder of files.
//!
//! # Entry points
//! [`Store::open`] opens a shop's folder or makes it; every other method reads or writes one noun.
//!
//! # Conventions
//! Ids are UUIDs, version 7, made here, so that they sort by time. Photos and maps are filed under
//! the BLAKE3 hash of their content and never changed. Times are arguments, except in ids.
//!
//! # Idea
//! A shop is one folder: `record.sqlite` with what was entered and found, `files/ab/abcdef…` with
//! what was photographed and computed, `tmp` for what is on its way. A file is written beside, made
//! durable and then renamed, and only then named by the database: a crash leaves at most a file that
//! nobody names. The SQL is the same for SQLite and PostgreSQL.
//!
//! # Limits
//! One process a folder, held by a lock. SQLite only, so far. Files are removed with the last
//! damage that names them; those orphaned by a crash stay.

mod archive;
mod cameras;
mod captures;
mod crew;
mod damages;
mod dents;
mod devices;
mod erasure;
mod error;
mod files;
mod gauged;
mod ids;
mod import;
mod job_photos;
mod jobs;
mod metals;
mod migrations;
mod open;
mod papers;
mod photos;
mod pricing;
mod readings;
mod rehearsals;
mod row;
mod rows;
mod settings;
mod take_in;
mod taps;
mod tasks;
mod times;
mod work;

pub use archive::{ARCHIVE_FORM, Archive};
pub use cameras::{NewCamera, StoredCamera};
pub use captures::StoredCapture;
pub use damages::{DamageChange, NewDamage};
pub use dents::NewDent;
pub use erasure::ErasureState;
pub use error::{OpenError, StoreError};
pub use files::{FileError, Filed, Files};
pub use gauged::UngaugeError;
pub use import::{ImportError, Imported};
pub use jobs::{JobHead, NewJob};
pub use metals::NewMetal;
pub use open::Store;
pub use papers::{IssueError, MadePaper, NewPaper, PaperFile, StoredPaper, paper_number};
pub use pricing::StoredTable;
pub use readings::{NewReading, StoredReading};
pub use rehearsals::StoredRehearsal;
pub use taps::{CountError, Tap};
pub use tasks::{Claimed, StoredTask, TaskError, TaskState};
pub use times::{NewTime, StartedTime, TimeError};
pub use work::{NewPlan, StoredBehind, StoredMove, StoredPlan};
