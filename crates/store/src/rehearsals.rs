//! Rehearsals of learners, with the panel after each move for a replay.

use crate::error::known;
use crate::ids::{id, ms, new_id, of_json, time};
use crate::row::row;
use crate::{Store, StoreError};
use jiff::Timestamp;
use uuid::Uuid;

/// A rehearsal in the record.
#[derive(Debug, Clone, PartialEq)]
pub struct StoredRehearsal {
    /// Its id.
    pub id: Uuid,
    /// Who learns.
    pub learner: String,
    /// Name of the level.
    pub level: String,
    /// What moved the hits.
    pub seed: u64,
    /// When it was begun.
    pub begun: Timestamp,
    /// When it was ended.
    pub ended: Option<Timestamp>,
    /// What was read off the lines.
    pub claims: serde_json::Value,
    /// The moves.
    pub made: serde_json::Value,
    /// What was reached; none before the end.
    pub score: Option<serde_json::Value>,
}

row! {
    struct Row {
        id: String,
        learner: String,
        level: String,
        seed: i64,
        begun: i64,
        ended: Option<i64>,
        claims: String,
        made: String,
        score: Option<String>,
    }
}

const ONE: &str = "SELECT id, learner, level, seed, begun, ended, claims, made, score FROM rehearsal WHERE id = $1";
const ENDED: &str = "SELECT id, learner, level, seed, begun, ended, claims, made, score FROM rehearsal
    WHERE ended IS NOT NULL ORDER BY id DESC";

impl Store {
    /// Writes down that a rehearsal was begun, and how its panel stands (NPY).
    ///
    /// # Errors
    /// When the record cannot be written.
    pub async fn begin_rehearsal(
        &self,
        learner: &str,
        level: &str,
        seed: u64,
        start: &[u8],
        now: Timestamp,
    ) -> Result<Uuid, StoreError> {
        let rehearsal = new_id();
        let mut writing = self.pool.begin().await?;
        sqlx::query(
            "INSERT INTO rehearsal (id, learner, level, seed, begun, claims, made)
             VALUES ($1, $2, $3, $4, $5, '[]', '[]')",
        )
        .bind(rehearsal.to_string())
        .bind(learner)
        .bind(level)
        .bind(seed.cast_signed())
        .bind(ms(now))
        .execute(&mut *writing)
        .await?;
        sqlx::query("INSERT INTO rehearsal_step (rehearsal_id, step, deviation) VALUES ($1, 0, $2)")
            .bind(rehearsal.to_string())
            .bind(start)
            .execute(&mut *writing)
            .await?;
        writing.commit().await?;
        Ok(rehearsal)
    }

    /// Writes the moves down with the panel after the last of them, the `step`-th (NPY).
    ///
    /// # Errors
    /// When there is none under this id, or the record cannot be written.
    pub async fn keep_rehearsed(
        &self,
        rehearsal: Uuid,
        made: &serde_json::Value,
        step: usize,
        deviation: &[u8],
    ) -> Result<(), StoreError> {
        let mut writing = self.pool.begin().await?;
        let done = sqlx::query("UPDATE rehearsal SET made = $2 WHERE id = $1")
            .bind(rehearsal.to_string())
            .bind(made.to_string())
            .execute(&mut *writing)
            .await?;
        known((done.rows_affected() > 0).then_some(()), "rehearsal", rehearsal)?;
        sqlx::query(
            "INSERT INTO rehearsal_step (rehearsal_id, step, deviation) VALUES ($1, $2, $3)
             ON CONFLICT (rehearsal_id, step) DO UPDATE SET deviation = excluded.deviation",
        )
        .bind(rehearsal.to_string())
        .bind(i64::try_from(step).unwrap_or(i64::MAX))
        .bind(deviation)
        .execute(&mut *writing)
        .await?;
        writing.commit().await?;
        Ok(())
    }

    /// Writes down what was read off the lines.
    ///
    /// # Errors
    /// When there is none under this id, or the record cannot be written.
    pub async fn keep_claims(&self, rehearsal: Uuid, claims: &serde_json::Value) -> Result<(), StoreError> {
        let done = sqlx::query("UPDATE rehearsal SET claims = $2 WHERE id = $1")
            .bind(rehearsal.to_string())
            .bind(claims.to_string())
            .execute(&self.pool)
            .await?;
        known((done.rows_affected() > 0).then_some(()), "rehearsal", rehearsal)
    }

    /// Ends a rehearsal with its score.
    ///
    /// # Errors
    /// When there is none under this id, or the record cannot be written.
    pub async fn end_rehearsal(
        &self,
        rehearsal: Uuid,
        score: &serde_json::Value,
        now: Timestamp,
    ) -> Result<(), StoreError> {
        let done = sqlx::query("UPDATE rehearsal SET score = $2, ended = $3 WHERE id = $1")
            .bind(rehearsal.to_string())
            .bind(score.to_string())
            .bind(ms(now))
            .execute(&self.pool)
            .await?;
        known((done.rows_affected() > 0).then_some(()), "rehearsal", rehearsal)
    }

    /// One rehearsal.
    ///
    /// # Errors
    /// When there is none under this id, or the record cannot be read.
    pub async fn rehearsal(&self, rehearsal: Uuid) -> Result<StoredRehearsal, StoreError> {
        let row: Option<Row> = sqlx::query_as(ONE).bind(rehearsal.to_string()).fetch_optional(&self.pool).await?;
        stored(known(row, "rehearsal", rehearsal)?)
    }

    /// All that were ended, newest first.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn rehearsals(&self) -> Result<Vec<StoredRehearsal>, StoreError> {
        let rows: Vec<Row> = sqlx::query_as(ENDED).fetch_all(&self.pool).await?;
        rows.into_iter().map(stored).collect()
    }

    /// How the panel stood after so many moves, NPY.
    ///
    /// # Errors
    /// When there were not so many, or the record cannot be read.
    pub async fn rehearsal_step(&self, rehearsal: Uuid, step: usize) -> Result<Vec<u8>, StoreError> {
        let found: Option<(Vec<u8>,)> =
            sqlx::query_as("SELECT deviation FROM rehearsal_step WHERE rehearsal_id = $1 AND step = $2")
                .bind(rehearsal.to_string())
                .bind(i64::try_from(step).unwrap_or(i64::MAX))
                .fetch_optional(&self.pool)
                .await?;
        Ok(known(found, "step of the rehearsal", rehearsal)?.0)
    }
}

fn stored(row: Row) -> Result<StoredRehearsal, StoreError> {
    Ok(StoredRehearsal {
        id: id(&row.id)?,
        learner: row.learner,
        level: row.level,
        seed: row.seed.cast_unsigned(),
        begun: time(row.begun)?,
        ended: row.ended.map(time).transpose()?,
        claims: of_json(&row.claims, "rehearsal")?,
        made: of_json(&row.made, "rehearsal")?,
        score: row.score.map(|text| of_json(&text, "rehearsal")).transpose()?,
    })
}
