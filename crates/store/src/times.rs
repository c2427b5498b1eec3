//! Worked time: clocks started and stopped, entries set right by hand.

use crate::crew::somebody;
use crate::error::known;
use crate::ids::{code, id, maybe_id, ms, new_id, of_code, time};
use crate::open::Change;
use crate::row::row;
use crate::{Store, StoreError};
use dentwright_job::{TimeEntry, WorkKind};
use jiff::Timestamp;
use std::collections::HashSet;
use uuid::Uuid;

/// A stretch of work that is begun, or entered whole.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NewTime {
    /// Its id, where a device without network gave it one; sent twice it is one entry.
    pub id: Option<Uuid>,
    /// Whose; none for the first of the crew.
    pub technician: Option<Uuid>,
    /// What.
    pub kind: WorkKind,
    /// From when.
    pub started: Timestamp,
    /// Until when; none for one that runs from now on.
    pub stopped: Option<Timestamp>,
    /// Whether a person entered it as it is.
    pub confirmed: bool,
}

/// A clock that was started.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct StartedTime {
    /// The entry.
    pub entry: TimeEntry,
    /// The entry of the same technician on the same job that ran until then, and was stopped by it.
    pub stopped: Option<Uuid>,
}

/// Why an entry was not changed.
#[derive(Debug, thiserror::Error)]
pub enum TimeError {
    /// Two clocks of one technician would run on one job.
    #[error("another clock of this technician runs on this job")]
    Runs,
    /// The record does not answer.
    #[error(transparent)]
    Store(#[from] StoreError),
}

row! {
    struct Row {
        id: String,
        job_id: Option<String>,
        technician_id: String,
        kind: String,
        started: i64,
        stopped: Option<i64>,
        confirmed: i64,
    }
}

/// All columns of a [`Row`]; what follows says which.
macro_rules! times {
    ($which:literal) => {
        concat!("SELECT id, job_id, technician_id, kind, started, stopped, confirmed FROM time_entry ", $which)
    };
}

impl Store {
    /// Begins an entry of a job, or enters a whole one. A clock of the same technician that runs on the job
    /// stops when another begins.
    ///
    /// # Errors
    /// When there is no such job or technician.
    pub async fn add_time(&self, job: Uuid, new: NewTime, now: Timestamp) -> Result<StartedTime, StoreError> {
        let mut change = self.change().await?;
        let found: Option<String> = sqlx::query_scalar("SELECT id FROM job WHERE id = $1")
            .bind(job.to_string())
            .fetch_optional(&mut *change)
            .await?;
        known(found, "job", job)?;
        if let Some(there) = match new.id {
            Some(id) => one(&mut change, id).await?,
            None => None,
        } {
            return Ok(StartedTime { entry: there, stopped: None });
        }
        let technician = somebody(&mut change, new.technician, now).await?;
        let stopped =
            if new.stopped.is_none() { stop_running(&mut change, job, technician, new.started).await? } else { None };
        let entry = TimeEntry {
            id: new.id.unwrap_or_else(new_id),
            job: Some(job),
            technician,
            kind: new.kind,
            started: new.started,
            stopped: new.stopped,
            confirmed: new.confirmed,
        };
        insert(&mut change, &entry).await?;
        change.commit().await?;
        Ok(StartedTime { entry, stopped })
    }

    /// An entry.
    ///
    /// # Errors
    /// When there is none under this id.
    pub async fn time(&self, entry: Uuid) -> Result<TimeEntry, StoreError> {
        let row: Option<Row> =
            sqlx::query_as(times!("WHERE id = $1")).bind(entry.to_string()).fetch_optional(&self.pool).await?;
        stored(known(row, "time entry", entry)?)
    }

    /// Changes an entry; its id and job stay.
    ///
    /// # Errors
    /// When there is none under this id, or two clocks of one technician would run on one job.
    pub async fn change_time(
        &self,
        entry: Uuid,
        edit: impl FnOnce(&mut TimeEntry) + Send,
        now: Timestamp,
    ) -> Result<TimeEntry, TimeError> {
        let mut change = self.change().await?;
        let mut to = known(one(&mut change, entry).await?, "time entry", entry)?;
        edit(&mut to);
        to.technician = somebody(&mut change, Some(to.technician), now).await?;
        if to.stopped.is_none() && other_runs(&mut change, &to).await? {
            return Err(TimeError::Runs);
        }
        update(&mut change, &to).await?;
        change.commit().await.map_err(StoreError::from)?;
        Ok(to)
    }

    /// Removes an entry.
    ///
    /// # Errors
    /// When there is none under this id.
    pub async fn remove_time(&self, entry: Uuid) -> Result<(), StoreError> {
        let done =
            sqlx::query("DELETE FROM time_entry WHERE id = $1").bind(entry.to_string()).execute(&self.pool).await?;
        known((done.rows_affected() > 0).then_some(()), "time entry", entry)
    }

    /// Entries of a job, or of the whole shop, in the order of their start.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn times(&self, job: Option<Uuid>) -> Result<Vec<TimeEntry>, StoreError> {
        let rows: Vec<Row> = match job {
            Some(job) => {
                let of_job = sqlx::query_as(times!("WHERE job_id = $1 ORDER BY started, id"));
                of_job.bind(job.to_string()).fetch_all(&self.pool).await?
            }
            None => sqlx::query_as(times!("ORDER BY started, id")).fetch_all(&self.pool).await?,
        };
        rows.into_iter().map(stored).collect()
    }

    /// Jobs on which somebody's clock runs.
    ///
    /// # Errors
    /// When the record cannot be read.
    pub async fn running(&self) -> Result<HashSet<Uuid>, StoreError> {
        let jobs: Vec<String> =
            sqlx::query_scalar("SELECT job_id FROM time_entry WHERE stopped IS NULL AND job_id IS NOT NULL")
                .fetch_all(&self.pool)
                .await?;
        jobs.iter().map(|job| id(job)).collect()
    }
}

async fn one(change: &mut Change, entry: Uuid) -> Result<Option<TimeEntry>, StoreError> {
    let row: Option<Row> =
        sqlx::query_as(times!("WHERE id = $1")).bind(entry.to_string()).fetch_optional(&mut **change).await?;
    row.map(stored).transpose()
}

/// Stops the technician's clock on the job, where one runs, at the moment as noted; its id.
async fn stop_running(
    change: &mut Change,
    job: Uuid,
    technician: Uuid,
    at: Timestamp,
) -> Result<Option<Uuid>, StoreError> {
    let stopped: Option<String> = sqlx::query_scalar(
        "UPDATE time_entry SET stopped = $3 WHERE job_id = $1 AND technician_id = $2 AND stopped IS NULL RETURNING id",
    )
    .bind(job.to_string())
    .bind(technician.to_string())
    .bind(ms(at))
    .fetch_optional(&mut **change)
    .await?;
    maybe_id(stopped.as_deref())
}

async fn other_runs(change: &mut Change, entry: &TimeEntry) -> Result<bool, StoreError> {
    let others: i64 = sqlx::query_scalar(
        "SELECT COUNT(*) FROM time_entry
         WHERE job_id = $1 AND technician_id = $2 AND stopped IS NULL AND id <> $3",
    )
    .bind(entry.job.map(|job| job.to_string()))
    .bind(entry.technician.to_string())
    .bind(entry.id.to_string())
    .fetch_one(&mut **change)
    .await?;
    Ok(others > 0)
}

async fn insert(change: &mut Change, entry: &TimeEntry) -> Result<(), StoreError> {
    sqlx::query(
        "INSERT INTO time_entry (id, job_id, technician_id, kind, started, stopped, confirmed)
         VALUES ($1, $2, $3, $4, $5, $6, $7)",
    )
    .bind(entry.id.to_string())
    .bind(entry.job.map(|job| job.to_string()))
    .bind(entry.technician.to_string())
    .bind(code(&entry.kind))
    .bind(ms(entry.started))
    .bind(entry.stopped.map(ms))
    .bind(i64::from(entry.confirmed))
    .execute(&mut **change)
    .await?;
    Ok(())
}

async fn update(change: &mut Change, entry: &TimeEntry) -> Result<(), StoreError> {
    sqlx::query(
        "UPDATE time_entry SET technician_id = $2, kind = $3, started = $4, stopped = $5, confirmed = $6 WHERE id = $1",
    )
    .bind(entry.id.to_string())
    .bind(entry.technician.to_string())
    .bind(code(&entry.kind))
    .bind(ms(entry.started))
    .bind(entry.stopped.map(ms))
    .bind(i64::from(entry.confirmed))
    .execute(&mut **change)
    .await?;
    Ok(())
}

fn stored(row: Row) -> Result<TimeEntry, StoreError> {
    Ok(TimeEntry {
        id: id(&row.id)?,
        job: maybe_id(row.job_id.as_deref())?,
        technician: id(&row.technician_id)?,
        kind: of_code(&row.kind, "kind of work")?,
        started: time(row.started)?,
        stopped: row.stopped.map(time).transpose()?,
        confirmed: row.confirmed != 0,
    })
}
