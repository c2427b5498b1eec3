//! Captures: folders of photos, kept as lists of files.

use crate::damages::{Captures, Scope, scoped};
use crate::error::known;
use crate::files::{Filed, Files};
use crate::ids::{id, maybe_id, ms, new_id, time};
use crate::open::Change;
use crate::rows::FileRow;
use crate::{Store, StoreError};
use dentwright_job::{Capture, CaptureFile, ReadingEntry};
use jiff::Timestamp;
use sqlx::SqlitePool;
use std::collections::HashMap;
use std::path::{Path, PathBuf};
use uuid::Uuid;

/// A capture and what it belongs to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StoredCapture {
    /// Its id.
    pub id: Uuid,
    /// The damage it shows.
    pub damage: Uuid,
    /// Its files.
    pub files: Vec<CaptureFile>,
}

/// Enters a capture and the files it names.
pub(crate) async fn insert_capture(
    change: &mut Change,
    damage: Uuid,
    names: Vec<String>,
    filed: Vec<Filed>,
    now: Timestamp,
) -> Result<Uuid, StoreError> {
    let capture = new_id();
    let done = sqlx::query(
        "INSERT INTO capture (id, damage_id, created) SELECT $2, damage.id, $3 FROM damage WHERE damage.id = $1",
    )
    .bind(damage.to_string())
    .bind(capture.to_string())
    .bind(ms(now))
    .execute(&mut **change)
    .await?;
    known((done.rows_affected() > 0).then_some(()), "damage", damage)?;
    for (name, file) in names.into_iter().zip(filed) {
        sqlx::query("INSERT INTO capture_file (capture_id, name, hash, bytes) VALUES ($1, $2, $3, $4)")
            .bind(capture.to_string())
            .bind(name)
            .bind(file.hash)
            .bind(i64::try_from(file.bytes).unwrap_or(i64::MAX))
            .execute(&mut **change)
            .await?;
    }
    Ok(capture)
}

impl Store {
    /// Files a capture and queues its reading. Each file is a name and a file in a
    /// [scratch folder](crate::Files::scratch), which is gone from there afterwards.
    ///
    /// # Errors
    /// When there is no such damage.
    ///
    /// Answers with the ids of the capture and of the task.
    pub async fn add_capture(
        &self,
        damage: Uuid,
        files: Vec<(String, PathBuf)>,
        now: Timestamp,
    ) -> Result<(Uuid, Uuid), StoreError> {
        let shelves = self.shelves.clone().read_owned().await;
        let (names, filed) = self.filed(files).await?;
        let mut change = self.change().await?;
        let capture = insert_capture(&mut change, damage, names, filed, now).await?;
        let task = crate::tasks::queue(&mut change, capture, now).await?;
        change.commit().await?;
        drop(shelves);
        Ok((capture, task))
    }

    /// Moves files from a scratch folder onto the shelves: their names, and what they became.
    pub(crate) async fn filed(&self, files: Vec<(String, PathBuf)>) -> Result<(Vec<String>, Vec<Filed>), StoreError> {
        let (names, paths): (Vec<_>, Vec<_>) = files.into_iter().unzip();
        let take = move |files: &Files| paths.iter().map(|path| files.take(path)).collect::<Result<Vec<_>, _>>();
        Ok((names, self.on_disk(take).await?))
    }

    /// A capture with its files.
    ///
    /// # Errors
    /// When there is none under this id.
    pub async fn capture(&self, capture: Uuid) -> Result<StoredCapture, StoreError> {
        let damage: Option<String> = sqlx::query_scalar("SELECT damage_id FROM capture WHERE id = $1")
            .bind(capture.to_string())
            .fetch_optional(&self.pool)
            .await?;
        let damage = id(&known(damage, "capture", capture)?)?;
        let rows: Vec<FileRow> = sqlx::query_as(
            "SELECT capture_id AS of, name, hash, bytes FROM capture_file WHERE capture_id = $1 ORDER BY name",
        )
        .bind(capture.to_string())
        .fetch_all(&self.pool)
        .await?;
        Ok(StoredCapture { id: capture, damage, files: rows.into_iter().map(file).collect() })
    }

    /// Lays a capture's files into a folder, each checked against its hash.
    ///
    /// # Errors
    /// When there is no such capture, or a file is damaged.
    pub async fn lay_out(&self, capture: Uuid, folder: &Path) -> Result<(), StoreError> {
        let capture = self.capture(capture).await?;
        let folder = folder.to_owned();
        self.on_disk(move |files| {
            capture.files.iter().try_for_each(|file| files.copy(&file.hash, &folder.join(&file.name)))
        })
        .await
    }
}

/// Captures below damages, with their files, tasks and readings.
pub(crate) async fn captures(pool: &SqlitePool, scope: Scope) -> Result<Captures, StoreError> {
    let rows: Vec<(String, String, i64)> = scoped!(
        scope,
        "SELECT capture.id, capture.damage_id, capture.created FROM capture
         JOIN damage ON damage.id = capture.damage_id",
        "ORDER BY capture.id"
    )
    .fetch_all(pool)
    .await?;
    let mut files = files(pool, scope).await?;
    let mut readings = readings(pool, scope).await?;
    let tasks = tasks(pool, scope).await?;
    let mut of_damage = Captures::new();
    for (capture, damage, created) in rows {
        of_damage.entry(damage).or_default().push(Capture {
            id: id(&capture)?,
            created: time(created)?,
            files: files.remove(&capture).unwrap_or_default(),
            task: maybe_id(tasks.get(&capture).map(String::as_str))?,
            readings: readings.remove(&capture).unwrap_or_default(),
        });
    }
    Ok(of_damage)
}

async fn files(pool: &SqlitePool, scope: Scope) -> Result<HashMap<String, Vec<CaptureFile>>, StoreError> {
    let rows: Vec<FileRow> = scoped!(
        scope,
        "SELECT capture_file.capture_id AS of, capture_file.name, capture_file.hash, capture_file.bytes
         FROM capture_file JOIN capture ON capture.id = capture_file.capture_id
         JOIN damage ON damage.id = capture.damage_id",
        "ORDER BY capture_file.name"
    )
    .fetch_all(pool)
    .await?;
    let mut of_capture: HashMap<String, Vec<CaptureFile>> = HashMap::new();
    for row in rows {
        of_capture.entry(row.of.clone()).or_default().push(file(row));
    }
    Ok(of_capture)
}

async fn readings(pool: &SqlitePool, scope: Scope) -> Result<HashMap<String, Vec<ReadingEntry>>, StoreError> {
    // One that a gauged reading stands for is listed no more, unless moves were noted after it.
    let rows: Vec<(String, String, i64, bool)> = scoped!(
        scope,
        "SELECT reading.capture_id, reading.id, reading.created,
                EXISTS (SELECT 1 FROM reading AS next WHERE next.gauged_of = reading.id)
                AND NOT EXISTS (SELECT 1 FROM made_move WHERE made_move.reading_id = reading.id)
         FROM reading JOIN capture ON capture.id = reading.capture_id JOIN damage ON damage.id = capture.damage_id",
        "ORDER BY reading.id"
    )
    .fetch_all(pool)
    .await?;
    let mut of_capture: HashMap<String, Vec<ReadingEntry>> = HashMap::new();
    for (capture, reading, created, _) in rows.into_iter().filter(|row| !row.3) {
        let entry = ReadingEntry { id: id(&reading)?, created: time(created)? };
        of_capture.entry(capture).or_default().push(entry);
    }
    Ok(of_capture)
}

/// The last task of each capture.
async fn tasks(pool: &SqlitePool, scope: Scope) -> Result<HashMap<String, String>, StoreError> {
    let rows: Vec<(String, String)> = scoped!(
        scope,
        "SELECT task.capture_id, task.id
         FROM task JOIN capture ON capture.id = task.capture_id JOIN damage ON damage.id = capture.damage_id",
        "ORDER BY task.id"
    )
    .fetch_all(pool)
    .await?;
    Ok(rows.into_iter().collect())
}

fn file(row: FileRow) -> CaptureFile {
    CaptureFile { name: row.name, hash: row.hash, bytes: u64::try_from(row.bytes).unwrap_or(0) }
}
