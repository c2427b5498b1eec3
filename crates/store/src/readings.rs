//! Readings: written once, never changed.

use crate::captures::insert_capture;
use crate::error::known;
use crate::files::Filed;
use crate::ids::{id, ms, new_id, of_json, time};
use crate::open::Change;
use crate::rows::FileRow;
use crate::{Store, StoreError};
use jiff::Timestamp;
use std::path::PathBuf;
use uuid::Uuid;

/// A reading that was just made.
#[derive(Debug, Clone, PartialEq)]
pub struct NewReading {
    /// Version of the program that made it.
    pub version: String,
    /// Its settings, JSON.
    pub settings: serde_json::Value,
    /// What it found: its own JSON file.
    pub facts: String,
    /// Its files, each a name and a file in a [scratch folder](crate::Files::scratch).
    pub files: Vec<(String, PathBuf)>,
}

/// A reading in the record.
#[derive(Debug, Clone, PartialEq)]
pub struct StoredReading {
    /// Its id.
    pub id: Uuid,
    /// The capture it was made from.
    pub capture: Uuid,
    /// The damage that the capture shows.
    pub damage: Uuid,
    /// When it was made.
    pub created: Timestamp,
    /// Version of the program that made it.
    pub version: String,
    /// Its settings, JSON.
    pub settings: serde_json::Value,
    /// What it found: its own JSON file.
    pub facts: String,
    /// Its files, each a name and a hash.
    pub files: Vec<(String, String)>,
}

impl Store {
    /// Keeps a reading and ends the task that made it, both or neither.
    ///
    /// # Errors
    /// When the task is no longer running, as after its capture was removed.
    pub async fn keep_reading(&self, task: Uuid, new: NewReading, now: Timestamp) -> Result<Uuid, StoreError> {
        let shelves = self.shelves.clone().read_owned().await;
        let (entry, files) = self.entry(new).await?;
        let mut change = self.change().await?;
        let of_task = "INSERT INTO reading (id, capture_id, created, version, settings, facts)
             SELECT $2, task.capture_id, $3, $4, $5, $6 FROM task WHERE task.id = $1 AND task.state = 'running'";
        let reading = known(entry.insert(&mut change, of_task, task, files, now).await?, "task", task)?;
        sqlx::query("UPDATE task SET state = 'done', reading_id = $2, changed = $3 WHERE id = $1")
            .bind(task.to_string())
            .bind(reading.to_string())
            .bind(ms(now))
            .execute(&mut *change)
            .await?;
        change.commit().await?;
        drop(shelves);
        Ok(reading)
    }

    /// Takes over a reading that was made elsewhere, with the photos that came with it, as a capture of its own.
    ///
    /// # Errors
    /// When there is no such damage.
    pub async fn take_over(
        &self,
        damage: Uuid,
        photos: Vec<(String, PathBuf)>,
        new: NewReading,
        now: Timestamp,
    ) -> Result<Uuid, StoreError> {
        let shelves = self.shelves.clone().read_owned().await;
        let (photo_names, photos) = self.filed(photos).await?;
        let (entry, files) = self.entry(new).await?;
        let mut change = self.change().await?;
        let capture = insert_capture(&mut change, damage, photo_names, photos, now).await?;
        let of_capture = "INSERT INTO reading (id, capture_id, created, version, settings, facts)
             VALUES ($2, $1, $3, $4, $5, $6)";
        let reading = known(entry.insert(&mut change, of_capture, capture, files, now).await?, "capture", capture)?;
        change.commit().await?;
        drop(shelves);
        Ok(reading)
    }

    /// A reading.
    ///
    /// # Errors
    /// When there is none under this id.
    pub async fn reading(&self, reading: Uuid) -> Result<StoredReading, StoreError> {
        let row: Option<(String, String, i64, String, String, String)> = sqlx::query_as(
            "SELECT reading.capture_id, capture.damage_id, reading.created, reading.version, reading.settings,
                    reading.facts
             FROM reading JOIN capture ON capture.id = reading.capture_id WHERE reading.id = $1",
        )
        .bind(reading.to_string())
        .fetch_optional(&self.pool)
        .await?;
        let (capture, damage, created, version, settings, facts) = known(row, "reading", reading)?;
        let files: Vec<FileRow> = sqlx::query_as(
            "SELECT reading_id AS of, name, hash, bytes FROM reading_file WHERE reading_id = $1 ORDER BY name",
        )
        .bind(reading.to_string())
        .fetch_all(&self.pool)
        .await?;
        Ok(StoredReading {
            id: reading,
            capture: id(&capture)?,
            damage: id(&damage)?,
            created: time(created)?,
            version,
            settings: of_json(&settings, "settings")?,
            facts,
            files: files.into_iter().map(|file| (file.name, file.hash)).collect(),
        })
    }
}

/// What of a new reading stands in its row.
pub(crate) struct Entry {
    version: String,
    settings: String,
    facts: String,
}

impl Store {
    /// A new reading's row, and its files taken in.
    pub(crate) async fn entry(&self, new: NewReading) -> Result<(Entry, (Vec<String>, Vec<Filed>)), StoreError> {
        let files = self.filed(new.files).await?;
        Ok((Entry { version: new.version, settings: new.settings.to_string(), facts: new.facts }, files))
    }
}

impl Entry {
    /// Enters a reading with its files: `sql` makes row `$2` of what `$1` tells, `$3` to `$6` being when, version, settings
    /// and facts. Its id; none where there was nothing to make it of.
    pub async fn insert(
        self,
        change: &mut Change,
        sql: &'static str,
        of: Uuid,
        (names, filed): (Vec<String>, Vec<Filed>),
        now: Timestamp,
    ) -> Result<Option<Uuid>, StoreError> {
        let reading = new_id();
        let done = sqlx::query(sql)
            .bind(of.to_string())
            .bind(reading.to_string())
            .bind(ms(now))
            .bind(self.version)
            .bind(self.settings)
            .bind(self.facts)
            .execute(&mut **change)
            .await?;
        if done.rows_affected() == 0 {
            return Ok(None);
        }
        insert_files(change, reading, names, filed).await?;
        Ok(Some(reading))
    }
}

/// Enters the files of a reading.
async fn insert_files(
    change: &mut Change,
    reading: Uuid,
    names: Vec<String>,
    filed: Vec<Filed>,
) -> Result<(), StoreError> {
    for (name, file) in names.into_iter().zip(filed) {
        sqlx::query("INSERT INTO reading_file (reading_id, name, hash, bytes) VALUES ($1, $2, $3, $4)")
            .bind(reading.to_string())
            .bind(name)
            .bind(file.hash)
            .bind(i64::try_from(file.bytes).unwrap_or(i64::MAX))
            .execute(&mut **change)
            .await?;
    }
    Ok(())
}
