//! A customer's data, taken out of the record.
//!
//! It is ordered first and done a while later, so that it can be called off; the record itself holds the order,
//! so that it is kept even where the browser that gave it is gone. Of a job there stays what names nobody: car
//! without plate and number, dents, quote, hours. Papers with a number stay for as long as tax law wants them.

use crate::damages::{Scope, hashes};
use crate::error::known;
use crate::ids::{id, ms, time};
use crate::open::Change;
use crate::{Store, StoreError};
use jiff::Timestamp;
use sqlx::AssertSqlSafe;
use uuid::Uuid;

/// When the customer's data of a job goes, or went.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct ErasureState {
    /// When it goes; none where it stays.
    pub due: Option<Timestamp>,
    /// When it went.
    pub done: Option<Timestamp>,
}

const DUE: &str = "SELECT id FROM job WHERE erase_due <= $1";
/// Tables of a job that name nobody and stay; what others keep about it goes, whatever they are.
const STAY_OF_JOB: [&str; 4] = ["damage", "quote_input", "time_entry", "paper"];
/// The same of a damage.
const STAY_OF_DAMAGE: [&str; 1] = ["dent"];

impl Store {
    /// Whether a job's customer's data is to go, or went.
    ///
    /// # Errors
    /// When there is no such job.
    pub async fn erasure(&self, job: Uuid) -> Result<ErasureState, StoreError> {
        let row: Option<(Option<i64>, Option<i64>)> = sqlx::query_as("SELECT erase_due, erased FROM job WHERE id = $1")
            .bind(job.to_string())
            .fetch_optional(&self.pool)
            .await?;
        let (due, done) = known(row, "job", job)?;
        Ok(ErasureState { due: due.map(time).transpose()?, done: done.map(time).transpose()? })
    }

    /// Orders the erasure of jobs for a moment, or calls it off; all or none of them. What has gone stays gone.
    ///
    /// # Errors
    /// When a job is not there.
    pub async fn order_erasure(&self, jobs: &[Uuid], due: Option<Timestamp>) -> Result<(), StoreError> {
        let mut change = self.change().await?;
        for job in jobs {
            let done = sqlx::query("UPDATE job SET erase_due = $2 WHERE id = $1")
                .bind(job.to_string())
                .bind(due.map(ms))
                .execute(&mut *change)
                .await?;
            known((done.rows_affected() > 0).then_some(()), "job", *job)?;
        }
        change.commit().await?;
        Ok(())
    }

    /// Jobs whose customers' data is due to go.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn erasures_due(&self, now: Timestamp) -> Result<Vec<Uuid>, StoreError> {
        let due: Vec<String> = sqlx::query_scalar(DUE).bind(ms(now)).fetch_all(&self.pool).await?;
        due.iter().map(|job| id(job)).collect()
    }

    /// Does what was ordered and is due; the jobs whose customers' data went.
    ///
    /// # Errors
    /// When the record cannot be written; then nothing of it was done.
    pub async fn erase_due(&self, now: Timestamp) -> Result<Vec<Uuid>, StoreError> {
        let alone = self.shelves.clone().write_owned().await;
        let mut change = self.change().await?;
        let due: Vec<String> = sqlx::query_scalar(DUE).bind(ms(now)).fetch_all(&mut *change).await?;
        let jobs = due.iter().map(|job| id(job)).collect::<Result<Vec<Uuid>, _>>()?;
        let mut unnamed = Vec::new();
        for job in &jobs {
            unnamed.extend(hashes(&mut change, Scope::Job(*job)).await?);
            unnamed.extend(crate::papers::remove_unnumbered(&mut change, *job).await?);
            erase(&mut change, *job, now).await?;
        }
        change.commit().await?;
        self.remove_unnamed(unnamed, alone).await?;
        Ok(jobs)
    }

    /// Removes the numbered papers of erased and removed jobs that were issued before a moment: the law wants
    /// them no longer. Their numbers are not given again. How many there were.
    ///
    /// # Errors
    /// When the record cannot be written.
    pub async fn remove_old_papers(&self, before: Timestamp) -> Result<u64, StoreError> {
        let alone = self.shelves.clone().write_owned().await;
        let mut change = self.change().await?;
        let old = "SELECT paper.id FROM paper LEFT JOIN job ON job.id = paper.job_id
                   WHERE paper.created < $1 AND (job.id IS NULL OR job.erased IS NOT NULL)";
        let unnamed: Vec<String> =
            sqlx::query_scalar(AssertSqlSafe(format!("SELECT hash FROM paper_file WHERE paper_id IN ({old})")))
                .bind(ms(before))
                .fetch_all(&mut *change)
                .await?;
        // A paper that follows an old one is younger and may stay; it no longer says which it followed.
        sqlx::query(AssertSqlSafe(format!("UPDATE paper SET follows = NULL WHERE follows IN ({old})")))
            .bind(ms(before))
            .execute(&mut *change)
            .await?;
        let gone = sqlx::query(AssertSqlSafe(format!("DELETE FROM paper WHERE id IN ({old})")))
            .bind(ms(before))
            .execute(&mut *change)
            .await?
            .rows_affected();
        change.commit().await?;
        self.remove_unnamed(unnamed, alone).await?;
        Ok(gone)
    }
}

async fn erase(change: &mut Change, job: Uuid, now: Timestamp) -> Result<(), StoreError> {
    let job = job.to_string();
    let belonging: Vec<(String, String, String)> = sqlx::query_as(
        "SELECT list.name, key.\"from\", key.\"table\" FROM sqlite_master AS list
         JOIN pragma_foreign_key_list(list.name) AS key
         WHERE list.type = 'table' AND key.\"table\" IN ('job', 'damage')",
    )
    .fetch_all(&mut **change)
    .await?;
    for (table, column, of) in belonging {
        let (stay, whose) = match of.as_str() {
            "job" => (&STAY_OF_JOB[..], "= $1"),
            _ => (&STAY_OF_DAMAGE[..], "IN (SELECT id FROM damage WHERE job_id = $1)"),
        };
        if !stay.contains(&table.as_str()) {
            let gone = format!("DELETE FROM \"{table}\" WHERE \"{column}\" {whose}");
            sqlx::query(AssertSqlSafe(gone)).bind(&job).execute(&mut **change).await?;
        }
    }
    for blank in [
        "UPDATE customer SET name = '', address = '', phone = '', email = ''
         WHERE id = (SELECT customer_id FROM job WHERE job.id = $1)",
        "UPDATE car SET vin = NULL, plate = '' WHERE id = (SELECT car_id FROM job WHERE job.id = $1)",
        "UPDATE damage SET note = '' WHERE job_id = $1",
    ] {
        sqlx::query(blank).bind(&job).execute(&mut **change).await?;
    }
    sqlx::query("UPDATE job SET notes = '', place = '', erase_due = NULL, erased = $2, changed = $2 WHERE id = $1")
        .bind(&job)
        .bind(ms(now))
        .execute(&mut **change)
        .await?;
    Ok(())
}
