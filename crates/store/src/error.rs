//! Why something cannot be read from the record or written to it.

use crate::FileError;
use std::path::PathBuf;
use uuid::Uuid;

/// Why a shop's folder cannot be opened.
#[derive(Debug, thiserror::Error)]
pub enum OpenError {
    /// Another process has it open.
    #[error("the shop folder {0} is open in another Dentwright")]
    InUse(PathBuf),
    /// The folder cannot be made or written to.
    #[error("the shop folder {path} cannot be used: {why}")]
    Folder {
        /// The folder or the file in it.
        path: PathBuf,
        /// Why.
        why: std::io::Error,
    },
    /// The database cannot be opened.
    #[error("the record {path} cannot be opened: {why}")]
    Database {
        /// The file.
        path: PathBuf,
        /// Why.
        why: sqlx::Error,
    },
    /// The database cannot be brought to this version, or is of a later one.
    #[error("the record {path} is not of this version of Dentwright: {why}")]
    Version {
        /// The file.
        path: PathBuf,
        /// Why.
        why: sqlx::migrate::MigrateError,
    },
}

/// Why the record cannot answer.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// There is nothing under this id.
    #[error("there is no {what} {id}")]
    Unknown {
        /// `job`, `damage` and so on.
        what: &'static str,
        /// The id.
        id: Uuid,
    },
    /// The database does not answer.
    #[error("the record cannot be read or written: {0}")]
    Database(#[from] sqlx::Error),
    /// A file does not.
    #[error(transparent)]
    File(#[from] FileError),
    /// Something in the database is not of the form that this version writes.
    #[error("the record holds a {what} that cannot be understood: {why}")]
    Broken {
        /// What it should be.
        what: &'static str,
        /// Why it is not.
        why: String,
    },
}

impl StoreError {
    pub(crate) fn broken(what: &'static str) -> impl Fn(String) -> Self {
        move |why| Self::Broken { what, why }
    }
}

/// Something, or that there is none under this id.
pub(crate) fn known<T>(found: Option<T>, what: &'static str, id: Uuid) -> Result<T, StoreError> {
    found.ok_or(StoreError::Unknown { what, id })
}
