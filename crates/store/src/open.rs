//! Opening a shop's folder.

use crate::migrations::migrations;
use crate::{FileError, Files, OpenError, StoreError};
use sqlx::SqlitePool;
use sqlx::sqlite::{SqliteConnectOptions, SqliteJournalMode, SqlitePoolOptions, SqliteSynchronous};
use std::fs::{self, File, TryLockError};
use std::path::Path;
use std::sync::Arc;
use std::time::Duration;
use tokio::sync::{Mutex, RwLock};

/// A writer waits this long for another one to finish.
const PATIENCE: Duration = Duration::from_secs(10);
/// Connections to the database: a few readers beside the one writer.
const CONNECTIONS: u32 = 4;

/// A shop's record, opened. Clones share it.
#[derive(Debug, Clone)]
pub struct Store {
    pub(crate) pool: SqlitePool,
    files: Files,
    /// Filing takes it shared, removing files takes it alone: so no file goes that is about to be named.
    pub(crate) shelves: Arc<RwLock<()>>,
    /// Papers get their numbers one after the other.
    pub(crate) issuing: Arc<Mutex<()>>,
    _lock: Arc<File>,
}

/// A change that is made whole or not at all.
pub(crate) type Change = sqlx::Transaction<'static, sqlx::Sqlite>;

impl Store {
    /// Opens a shop's folder, makes it where it is absent, and brings it to this version.
    ///
    /// # Errors
    /// When the folder cannot be written to, is open elsewhere, or is of a later version.
    pub async fn open(folder: &Path) -> Result<Self, OpenError> {
        let unusable = |why| OpenError::Folder { path: folder.to_owned(), why };
        fs::create_dir_all(folder).map_err(unusable)?;
        let lock = lock(folder)?;
        let files = Files::open(folder).map_err(|error| match error {
            FileError::Disk { path, why, .. } => OpenError::Folder { path, why },
            other => OpenError::Folder { path: folder.to_owned(), why: std::io::Error::other(other) },
        })?;
        let path = folder.join("record.sqlite");
        let options = SqliteConnectOptions::new()
            .filename(&path)
            .create_if_missing(true)
            .foreign_keys(true)
            .journal_mode(SqliteJournalMode::Wal)
            .synchronous(SqliteSynchronous::Full)
            .busy_timeout(PATIENCE);
        let pool = SqlitePoolOptions::new()
            .max_connections(CONNECTIONS)
            .connect_with(options)
            .await
            .map_err(|why| OpenError::Database { path: path.clone(), why })?;
        migrations().run(&pool).await.map_err(|why| OpenError::Version { path, why })?;
        Ok(Self { pool, files, shelves: Arc::default(), issuing: Arc::default(), _lock: Arc::new(lock) })
    }

    /// The files.
    #[must_use]
    pub fn files(&self) -> &Files {
        &self.files
    }

    /// Closes the database; what was written before is on the disk.
    pub async fn close(&self) {
        self.pool.close().await;
    }

    /// Begins a change. SQLite is told at once that something will be written, so that two changes wait
    /// for one another instead of failing half-way; PostgreSQL's word for it is `BEGIN`.
    pub(crate) async fn change(&self) -> Result<Change, StoreError> {
        Ok(self.pool.begin_with("BEGIN IMMEDIATE").await?)
    }

    /// Does work on files where it does not hold up others.
    pub(crate) async fn on_disk<T: Send + 'static>(
        &self,
        work: impl FnOnce(&Files) -> Result<T, FileError> + Send + 'static,
    ) -> Result<T, StoreError> {
        let files = self.files.clone();
        let done = tokio::task::spawn_blocking(move || work(&files)).await;
        let panicked = |why: tokio::task::JoinError| StoreError::Broken { what: "file", why: why.to_string() };
        Ok(done.map_err(panicked)??)
    }
}

fn lock(folder: &Path) -> Result<File, OpenError> {
    let path = folder.join("lock");
    let unusable = |why| OpenError::Folder { path: path.clone(), why };
    let file = File::create(&path).map_err(unusable)?;
    match file.try_lock() {
        Ok(()) => Ok(file),
        Err(TryLockError::WouldBlock) => Err(OpenError::InUse(folder.to_owned())),
        Err(TryLockError::Error(why)) => Err(unusable(why)),
    }
}
