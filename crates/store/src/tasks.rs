//! Reads that wait, run or have ended: a queue in one table.

use crate::error::known;
use crate::ids::{code, id, maybe_id, ms, new_id, of_code};
use crate::open::Change;
use crate::row::row;
use crate::{Store, StoreError};
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// How far a task has come.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum TaskState {
    /// Waits for those before it.
    Queued,
    /// Is being worked on.
    Running,
    /// Has given a reading.
    Done,
    /// Has given an error.
    Failed,
    /// Was stopped by the user.
    Cancelled,
}

/// Why a task has failed, in words for the technician.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TaskError {
    /// Short stable name.
    pub code: String,
    /// What is wrong with what.
    pub message: String,
    /// What to do.
    pub next: String,
}

/// A task in the record.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StoredTask {
    /// Its id.
    pub id: Uuid,
    /// The capture it reads.
    pub capture: Uuid,
    /// How far it has come.
    pub state: TaskState,
    /// Why it has failed.
    pub error: Option<TaskError>,
    /// What it has given.
    pub reading: Option<Uuid>,
}

/// A task that is now ours to do.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Claimed {
    /// The task.
    pub task: Uuid,
    /// The capture to read.
    pub capture: Uuid,
}

row! {
    struct TaskRow {
        capture_id: String,
        state: String,
        error_code: Option<String>,
        error_message: Option<String>,
        error_next: Option<String>,
        reading_id: Option<String>,
    }
}

impl Store {
    /// Queues one more reading of a capture.
    ///
    /// # Errors
    /// When there is no such capture.
    pub async fn add_task(&self, capture: Uuid, now: Timestamp) -> Result<Uuid, StoreError> {
        self.capture(capture).await?;
        let mut change = self.change().await?;
        let task = queue(&mut change, capture, now).await?;
        change.commit().await?;
        Ok(task)
    }

    /// A task.
    ///
    /// # Errors
    /// When there is none under this id.
    pub async fn task(&self, task: Uuid) -> Result<StoredTask, StoreError> {
        let row: Option<TaskRow> = sqlx::query_as(
            "SELECT capture_id, state, error_code, error_message, error_next, reading_id FROM task WHERE id = $1",
        )
        .bind(task.to_string())
        .fetch_optional(&self.pool)
        .await?;
        let row = known(row, "task", task)?;
        let error = row.error_code.map(|code| TaskError {
            code,
            message: row.error_message.unwrap_or_default(),
            next: row.error_next.unwrap_or_default(),
        });
        Ok(StoredTask {
            id: task,
            capture: id(&row.capture_id)?,
            state: of_code(&row.state, "task state")?,
            error,
            reading: maybe_id(row.reading_id.as_deref())?,
        })
    }

    /// Takes the longest waiting task; it runs from now on. None where none waits.
    ///
    /// # Errors
    /// When the record cannot be written.
    pub async fn claim_task(&self, now: Timestamp) -> Result<Option<Claimed>, StoreError> {
        let row: Option<(String, String)> = sqlx::query_as(
            "UPDATE task SET state = 'running', changed = $1
             WHERE state = 'queued' AND id = (SELECT MIN(id) FROM task WHERE state = 'queued')
             RETURNING id, capture_id",
        )
        .bind(ms(now))
        .fetch_optional(&self.pool)
        .await?;
        row.map(|(task, capture)| Ok(Claimed { task: id(&task)?, capture: id(&capture)? })).transpose()
    }

    /// Ends a running task with an error.
    ///
    /// # Errors
    /// When the record cannot be written. A task that is gone is no error.
    pub async fn fail_task(&self, task: Uuid, error: &TaskError, now: Timestamp) -> Result<(), StoreError> {
        sqlx::query(
            "UPDATE task SET state = 'failed', error_code = $2, error_message = $3, error_next = $4, changed = $5
             WHERE id = $1 AND state = 'running'",
        )
        .bind(task.to_string())
        .bind(&error.code)
        .bind(&error.message)
        .bind(&error.next)
        .bind(ms(now))
        .execute(&self.pool)
        .await?;
        Ok(())
    }

    /// Cancels a task that waits (or runs, once its work has ended). Whether it did.
    ///
    /// # Errors
    /// When the record cannot be written.
    pub async fn cancel_task(&self, task: Uuid, was: TaskState, now: Timestamp) -> Result<bool, StoreError> {
        let done = sqlx::query("UPDATE task SET state = 'cancelled', changed = $3 WHERE id = $1 AND state = $2")
            .bind(task.to_string())
            .bind(code(&was))
            .bind(ms(now))
            .execute(&self.pool)
            .await?;
        Ok(done.rows_affected() > 0)
    }

    /// Ends every task that an ended process left running. How many.
    ///
    /// # Errors
    /// When the record cannot be written.
    pub async fn fail_interrupted(&self, error: &TaskError, now: Timestamp) -> Result<u64, StoreError> {
        let done = sqlx::query(
            "UPDATE task SET state = 'failed', error_code = $1, error_message = $2, error_next = $3, changed = $4
             WHERE state = 'running'",
        )
        .bind(&error.code)
        .bind(&error.message)
        .bind(&error.next)
        .bind(ms(now))
        .execute(&self.pool)
        .await?;
        Ok(done.rows_affected())
    }
}

pub(crate) async fn queue(change: &mut Change, capture: Uuid, now: Timestamp) -> Result<Uuid, StoreError> {
    let task = new_id();
    sqlx::query("INSERT INTO task (id, capture_id, state, created, changed) VALUES ($1, $2, 'queued', $3, $3)")
        .bind(task.to_string())
        .bind(capture.to_string())
        .bind(ms(now))
        .execute(&mut **change)
        .await?;
    Ok(task)
}
