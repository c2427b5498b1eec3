//! What the metal of a reading holds: one answer a reading, the last one.

use crate::error::known;
use crate::ids::ms;
use crate::{Store, StoreError};
use jiff::Timestamp;
use uuid::Uuid;

/// A metal's state, to be kept.
#[derive(Debug, Clone, PartialEq)]
pub struct NewMetal {
    /// The numbers, JSON.
    pub facts: String,
    /// The dent as bytes.
    pub state: Vec<u8>,
    /// Its maps, each a name and NPY bytes.
    pub maps: Vec<(String, Vec<u8>)>,
}

impl Store {
    /// Keeps what the metal of a reading holds in place of what was kept before.
    ///
    /// # Errors
    /// When there is no such reading.
    pub async fn keep_metal(&self, reading: Uuid, new: &NewMetal, now: Timestamp) -> Result<(), StoreError> {
        self.reading(reading).await?;
        let mut change = self.change().await?;
        sqlx::query("DELETE FROM metal WHERE reading_id = $1").bind(reading.to_string()).execute(&mut *change).await?;
        sqlx::query("INSERT INTO metal (reading_id, created, facts, state) VALUES ($1, $2, $3, $4)")
            .bind(reading.to_string())
            .bind(ms(now))
            .bind(&new.facts)
            .bind(&new.state)
            .execute(&mut *change)
            .await?;
        for (name, bytes) in &new.maps {
            sqlx::query("INSERT INTO metal_map (reading_id, name, bytes) VALUES ($1, $2, $3)")
                .bind(reading.to_string())
                .bind(name)
                .bind(bytes)
                .execute(&mut *change)
                .await?;
        }
        change.commit().await?;
        Ok(())
    }

    /// The numbers of a reading's metal, JSON; none where nobody asked yet.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn metal_facts(&self, reading: Uuid) -> Result<Option<String>, StoreError> {
        let row: Option<(String,)> = sqlx::query_as("SELECT facts FROM metal WHERE reading_id = $1")
            .bind(reading.to_string())
            .fetch_optional(&self.pool)
            .await?;
        Ok(row.map(|(facts,)| facts))
    }

    /// The dent of a reading's metal, as bytes.
    ///
    /// # Errors
    /// When there is none.
    pub async fn metal_state(&self, reading: Uuid) -> Result<Vec<u8>, StoreError> {
        let row: Option<(Vec<u8>,)> = sqlx::query_as("SELECT state FROM metal WHERE reading_id = $1")
            .bind(reading.to_string())
            .fetch_optional(&self.pool)
            .await?;
        Ok(known(row, "state of the metal", reading)?.0)
    }

    /// A map of a reading's metal, NPY.
    ///
    /// # Errors
    /// When there is none of this name.
    pub async fn metal_map(&self, reading: Uuid, name: &str) -> Result<Vec<u8>, StoreError> {
        let row: Option<(Vec<u8>,)> = sqlx::query_as("SELECT bytes FROM metal_map WHERE reading_id = $1 AND name = $2")
            .bind(reading.to_string())
            .bind(name)
            .fetch_optional(&self.pool)
            .await?;
        Ok(known(row, "map of the metal", reading)?.0)
    }
}
