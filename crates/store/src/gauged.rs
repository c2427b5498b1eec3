//! Readings that came of another one and a depth measured by hand. The one they came of stays, and is out of sight
//! while the other stands for it.

use crate::error::known;
use crate::ids::maybe_id;
use crate::{NewReading, Store, StoreError};
use jiff::Timestamp;
use uuid::Uuid;

/// Why a gauged reading stays.
#[derive(Debug, thiserror::Error)]
pub enum UngaugeError {
    /// No depth was joined to it.
    #[error("no depth was entered for this reading")]
    Plain,
    /// Another depth was joined to it, or moves were noted after it.
    #[error("something was noted on this reading since the depth was entered")]
    InUse,
    /// The record does not answer.
    #[error(transparent)]
    Store(#[from] StoreError),
}

impl From<sqlx::Error> for UngaugeError {
    fn from(error: sqlx::Error) -> Self {
        Self::Store(error.into())
    }
}

impl Store {
    /// Keeps a reading that came of another one, which from now on it stands for.
    ///
    /// # Errors
    /// When there is no such reading.
    pub async fn keep_gauged(&self, of: Uuid, new: NewReading, now: Timestamp) -> Result<Uuid, StoreError> {
        let shelves = self.shelves.clone().read_owned().await;
        let (entry, files) = self.entry(new).await?;
        let mut change = self.change().await?;
        let of_reading = "INSERT INTO reading (id, capture_id, created, version, settings, facts, gauged_of)
             SELECT $2, capture_id, $3, $4, $5, $6, id FROM reading WHERE id = $1";
        let reading = known(entry.insert(&mut change, of_reading, of, files, now).await?, "reading", of)?;
        change.commit().await?;
        drop(shelves);
        Ok(reading)
    }

    /// The reading that a gauged one came of; none for one that was read.
    ///
    /// # Errors
    /// When there is no such reading.
    pub async fn gauged_of(&self, reading: Uuid) -> Result<Option<Uuid>, StoreError> {
        let row: Option<(Option<String>,)> = sqlx::query_as("SELECT gauged_of FROM reading WHERE id = $1")
            .bind(reading.to_string())
            .fetch_optional(&self.pool)
            .await?;
        maybe_id(known(row, "reading", reading)?.0.as_deref())
    }

    /// Takes the last depth of a reading back: the reading is removed, the one it came of stands again. Gives that one.
    ///
    /// # Errors
    /// When no depth was joined to it, or something was noted on it since.
    pub async fn remove_gauged(&self, reading: Uuid) -> Result<Uuid, UngaugeError> {
        let of = self.gauged_of(reading).await?.ok_or(UngaugeError::Plain)?;
        let done = sqlx::query(
            "DELETE FROM reading WHERE id = $1
             AND NOT EXISTS (SELECT 1 FROM reading AS next WHERE next.gauged_of = $1)
             AND NOT EXISTS (SELECT 1 FROM made_move WHERE made_move.reading_id = $1)
             AND NOT EXISTS (SELECT 1 FROM behind WHERE behind.reading_id = $1)",
        )
        .bind(reading.to_string())
        .execute(&self.pool)
        .await?;
        if done.rows_affected() > 0 { Ok(of) } else { Err(UngaugeError::InUse) }
    }
}
