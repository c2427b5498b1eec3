//! Reads under way: how far, and stopping one.

use crate::app::App;
use crate::trouble::{Answer, At, Trouble};
use axum::Json;
use axum::extract::State;
use axum::http::StatusCode;
use dentwright_flow::Stage;
use dentwright_store::{StoredTask, TaskState};
use serde::Serialize;
use utoipa::ToSchema;
use uuid::Uuid;

/// A read that waits, runs or has ended.
#[derive(Debug, Serialize, ToSchema)]
pub struct TaskJson {
    id: Uuid,
    state: StateJson,
    /// Name of the stage it is in.
    stage: &'static str,
    /// Share done, 0 to 1.
    fraction: f64,
    /// Every stage in order.
    stages: Vec<StageJson>,
    /// Why it has failed.
    #[schema(required)]
    error: Option<TaskErrorJson>,
    /// What it has given.
    #[schema(required)]
    reading_id: Option<Uuid>,
}

/// How far a task has come.
#[derive(Debug, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs)]
pub enum StateJson {
    Queued,
    Running,
    Done,
    Failed,
    Cancelled,
}

/// A stage of a read.
#[derive(Debug, Serialize, ToSchema)]
pub struct StageJson {
    name: &'static str,
    /// Share done, 0 to 1.
    done: f64,
}

/// Why a read has failed.
#[derive(Debug, Serialize, ToSchema)]
pub struct TaskErrorJson {
    code: String,
    message: String,
    next: String,
}

impl TaskJson {
    fn of(task: StoredTask, fraction: f64) -> Self {
        let stages = Stage::ALL.len() as f64;
        let done = |at: usize| (fraction * stages - at as f64).clamp(0.0, 1.0);
        let now = ((fraction * stages) as usize).min(Stage::ALL.len() - 1);
        Self {
            id: task.id,
            state: match task.state {
                TaskState::Queued => StateJson::Queued,
                TaskState::Running => StateJson::Running,
                TaskState::Done => StateJson::Done,
                TaskState::Failed => StateJson::Failed,
                TaskState::Cancelled => StateJson::Cancelled,
            },
            stage: Stage::ALL[now].name(),
            fraction,
            stages: Stage::ALL
                .iter()
                .enumerate()
                .map(|(at, stage)| StageJson { name: stage.name(), done: done(at) })
                .collect(),
            error: task.error.map(|error| TaskErrorJson { code: error.code, message: error.message, next: error.next }),
            reading_id: task.reading,
        }
    }
}

/// How far a read has come.
#[utoipa::path(get, path = "/api/tasks/{id}", operation_id = "task", params(("id" = Uuid, Path)),
    responses((status = 200, body = TaskJson), (status = 404, body = Trouble)))]
pub async fn get(State(app): State<App>, At(id): At<Uuid>) -> Answer<Json<TaskJson>> {
    let task = app.store.task(id).await?;
    let fraction = match task.state {
        TaskState::Done => 1.0,
        TaskState::Running => app.reads.fraction(id),
        TaskState::Queued | TaskState::Failed | TaskState::Cancelled => 0.0,
    };
    Ok(Json(TaskJson::of(task, fraction)))
}

/// Stop a read. Its photos stay; one that has ended stays as it is.
#[utoipa::path(delete, path = "/api/tasks/{id}", operation_id = "cancel_task", params(("id" = Uuid, Path)),
    responses((status = 204), (status = 404, body = Trouble)))]
pub async fn cancel(State(app): State<App>, At(id): At<Uuid>) -> Answer<StatusCode> {
    app.store.task(id).await?;
    if !app.store.cancel_task(id, TaskState::Queued, app.now()).await? {
        app.reads.cancel(id);
    }
    Ok(StatusCode::NO_CONTENT)
}
