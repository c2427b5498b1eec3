//! Hail tables, and the finished jobs that hours are learned from.

use crate::error::known;
use crate::ids::{id, ms, new_id, of_json, time, to_json};
use crate::row::row;
use crate::{Store, StoreError};
use dentwright_price::{FinishedJob, HailTable};
use jiff::Timestamp;
use uuid::Uuid;

/// A hail table in the record.
#[derive(Debug, Clone, PartialEq)]
pub struct StoredTable {
    /// Its id.
    pub id: Uuid,
    /// Its name.
    pub name: String,
    /// When it was imported.
    pub created: Timestamp,
    /// Whether it is no longer offered.
    pub removed: bool,
    /// The table.
    pub table: HailTable,
}

row! {
    struct Row {
        id: String,
        name: String,
        created: i64,
        removed: i64,
        value: String,
    }
}

impl Store {
    /// Keeps a table, which has passed its check.
    ///
    /// # Errors
    /// When the record cannot be written.
    pub async fn add_hail_table(&self, name: &str, table: &HailTable, now: Timestamp) -> Result<Uuid, StoreError> {
        let new = new_id();
        sqlx::query("INSERT INTO hail_table (id, name, created, removed, value) VALUES ($1, $2, $3, 0, $4)")
            .bind(new.to_string())
            .bind(name)
            .bind(ms(now))
            .bind(to_json(table, "hail table")?)
            .execute(&self.pool)
            .await?;
        Ok(new)
    }

    /// All tables, newest first, those too that are no longer offered.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn hail_tables(&self) -> Result<Vec<StoredTable>, StoreError> {
        let rows: Vec<Row> =
            sqlx::query_as("SELECT id, name, created, removed, value FROM hail_table ORDER BY id DESC")
                .fetch_all(&self.pool)
                .await?;
        rows.into_iter().map(stored).collect()
    }

    /// Offers a table no longer; quotes that were made with it keep it.
    ///
    /// # Errors
    /// When there is none under this id.
    pub async fn remove_hail_table(&self, table: Uuid) -> Result<(), StoreError> {
        let done = sqlx::query("UPDATE hail_table SET removed = 1 WHERE id = $1 AND removed = 0")
            .bind(table.to_string())
            .execute(&self.pool)
            .await?;
        known((done.rows_affected() > 0).then_some(()), "hail table", table)
    }

    /// Keeps the worked time of a job; it takes the place of an earlier one, at its place in time.
    ///
    /// # Errors
    /// When the record cannot be written.
    pub async fn save_finished(&self, job: Uuid, finished: &FinishedJob, now: Timestamp) -> Result<(), StoreError> {
        sqlx::query(
            "INSERT INTO finished (job_id, since, value) VALUES ($1, $2, $3)
             ON CONFLICT (job_id) DO UPDATE SET value = excluded.value",
        )
        .bind(job.to_string())
        .bind(ms(now))
        .bind(to_json(finished, "finished job")?)
        .execute(&self.pool)
        .await?;
        Ok(())
    }

    /// Forgets the worked time of a job.
    ///
    /// # Errors
    /// When there is none.
    pub async fn remove_finished(&self, job: Uuid) -> Result<(), StoreError> {
        let done =
            sqlx::query("DELETE FROM finished WHERE job_id = $1").bind(job.to_string()).execute(&self.pool).await?;
        known((done.rows_affected() > 0).then_some(()), "worked time of the job", job)
    }

    /// All finished jobs with their ids, in the order in which they were finished.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn finished(&self) -> Result<Vec<(Uuid, FinishedJob)>, StoreError> {
        let rows: Vec<(String, String)> =
            sqlx::query_as("SELECT job_id, value FROM finished ORDER BY since, job_id").fetch_all(&self.pool).await?;
        rows.into_iter().map(|(job, value)| Ok((id(&job)?, of_json(&value, "finished job")?))).collect()
    }
}

fn stored(row: Row) -> Result<StoredTable, StoreError> {
    Ok(StoredTable {
        id: id(&row.id)?,
        name: row.name,
        created: time(row.created)?,
        removed: row.removed != 0,
        table: of_json(&row.value, "hail table")?,
    })
}
