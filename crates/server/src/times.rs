//! The time clock of a job.

use crate::app::App;
use crate::jobs::given;
use crate::trouble::{Answer, At, Body, Trouble};
use axum::Json;
use axum::extract::State;
use axum::http::StatusCode;
use dentwright_job::{EntryState, TimeEntry, WorkKind, WorkedByKind, by_kind, on_dents_s};
use dentwright_store::{NewTime, TimeError};
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

/// A stretch of work.
#[derive(Debug, Serialize, ToSchema)]
pub struct TimeJson {
    id: Uuid,
    technician: Uuid,
    kind: WorkKind,
    #[schema(value_type = String, format = DateTime)]
    started: Timestamp,
    /// None while it runs; before the start where a clock was set back.
    #[schema(value_type = Option<String>, format = DateTime, required)]
    stopped: Option<Timestamp>,
    state: EntryState,
    /// From start to stop or until now, s; below zero where a clock was set back.
    seconds: i64,
    /// Whether a person says that it is right as it stands.
    confirmed: bool,
}

impl TimeJson {
    fn of(entry: &TimeEntry, now: Timestamp) -> Self {
        let TimeEntry { id, technician, kind, started, stopped, confirmed, .. } = *entry;
        Self { id, technician, kind, started, stopped, state: entry.state(now), seconds: entry.seconds(now), confirmed }
    }
}

/// Worked time of a job.
#[derive(Debug, Serialize, ToSchema)]
pub struct TimesAnswer {
    /// In the order of their start.
    entries: Vec<TimeJson>,
    /// What counts, by kind.
    by_kind: Vec<WorkedByKind>,
    /// What counts on dents, without trim, s: what the hours may learn from.
    on_dents_s: i64,
    /// Entries in doubt, which count nowhere until they are set right.
    in_doubt: usize,
    /// The whole shop's time by kind.
    shop_by_kind: Vec<WorkedByKind>,
    /// The server's time, by which running clocks are shown.
    #[schema(value_type = String, format = DateTime)]
    now: Timestamp,
}

/// A stretch of work that begins now, or is entered whole.
#[derive(Debug, Deserialize, ToSchema)]
pub struct NewTimeJson {
    /// Its id, made by a device without network; sent twice it is one entry.
    #[serde(default)]
    id: Option<Uuid>,
    /// Whose; left out for the first of the crew.
    #[serde(default)]
    technician: Option<Uuid>,
    kind: WorkKind,
    /// From when; left out for now.
    #[schema(value_type = Option<String>, format = DateTime)]
    #[serde(default)]
    started: Option<Timestamp>,
    /// Until when; left out for a clock that runs.
    #[schema(value_type = Option<String>, format = DateTime)]
    #[serde(default)]
    stopped: Option<Timestamp>,
}

/// A clock that was started.
#[derive(Debug, Serialize, ToSchema)]
pub struct StartedJson {
    entry: TimeJson,
    /// The entry that ran until then and was stopped by it.
    #[schema(required)]
    stopped: Option<Uuid>,
}

/// What is set right; a field that is left out stays as it is.
#[derive(Debug, Default, Deserialize, ToSchema)]
pub struct TimeChange {
    technician: Option<Uuid>,
    kind: Option<WorkKind>,
    #[schema(value_type = Option<String>, format = DateTime)]
    started: Option<Timestamp>,
    /// `null` lets it run again.
    #[schema(value_type = Option<String>, format = DateTime)]
    #[serde(default, deserialize_with = "given")]
    stopped: Option<Option<Timestamp>>,
    /// Whether it is right as it stands.
    confirmed: Option<bool>,
}

/// When a clock is stopped.
#[derive(Debug, Default, Deserialize, ToSchema)]
pub struct StopTime {
    /// As a device without network noted it; left out for now.
    #[schema(value_type = Option<String>, format = DateTime)]
    #[serde(default)]
    at: Option<Timestamp>,
}

/// Worked time of a job.
#[utoipa::path(get, path = "/api/jobs/{id}/times", operation_id = "times", params(("id" = Uuid, Path)),
    responses((status = 200, body = TimesAnswer), (status = 404, body = Trouble)))]
pub async fn list(State(app): State<App>, At(id): At<Uuid>) -> Answer<Json<TimesAnswer>> {
    app.store.job(id).await?;
    let (now, all) = (app.now(), app.store.times(None).await?);
    let of_job: Vec<TimeEntry> = all.iter().filter(|entry| entry.job == Some(id)).copied().collect();
    let doubtful = |entry: &&TimeEntry| matches!(entry.state(now), EntryState::Backwards | EntryState::LeftRunning);
    Ok(Json(TimesAnswer {
        entries: of_job.iter().map(|entry| TimeJson::of(entry, now)).collect(),
        by_kind: by_kind(&of_job, now),
        on_dents_s: on_dents_s(&of_job, now),
        in_doubt: of_job.iter().filter(doubtful).count(),
        shop_by_kind: by_kind(&all, now),
        now,
    }))
}

/// Start a clock, or enter a stretch of work whole.
#[utoipa::path(post, path = "/api/jobs/{id}/times", operation_id = "add_time", params(("id" = Uuid, Path)),
    request_body = NewTimeJson,
    responses((status = 201, body = StartedJson), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn add(
    State(app): State<App>,
    At(id): At<Uuid>,
    Body(new): Body<NewTimeJson>,
) -> Answer<(StatusCode, Json<StartedJson>)> {
    let now = app.now();
    let started = new.started.unwrap_or(now);
    // What comes from a device without network is kept as it was noted, even where its clock was set back.
    let by_hand = new.id.is_none() && new.stopped.is_some();
    if by_hand {
        forwards(started, new.stopped)?;
    }
    let entered = NewTime {
        id: new.id,
        technician: new.technician,
        kind: new.kind,
        started,
        stopped: new.stopped,
        confirmed: by_hand,
    };
    let made = app.store.add_time(id, entered, now).await?;
    let answer = StartedJson { entry: TimeJson::of(&made.entry, now), stopped: made.stopped };
    Ok((StatusCode::CREATED, Json(answer)))
}

/// Stop a clock. One that was stopped already stays as it is.
#[utoipa::path(post, path = "/api/times/{id}/stop", operation_id = "stop_time", params(("id" = Uuid, Path)),
    request_body = StopTime,
    responses((status = 200, body = TimeJson), (status = 404, body = Trouble)))]
pub async fn stop(State(app): State<App>, At(id): At<Uuid>, Body(stop): Body<StopTime>) -> Answer<Json<TimeJson>> {
    let now = app.now();
    let at = stop.at.unwrap_or(now);
    let edit = move |entry: &mut TimeEntry| entry.stopped = entry.stopped.or(Some(at));
    Ok(Json(TimeJson::of(&app.store.change_time(id, edit, now).await?, now)))
}

/// Set an entry right. Times that were entered count as they stand.
#[utoipa::path(patch, path = "/api/times/{id}", operation_id = "change_time", params(("id" = Uuid, Path)),
    request_body = TimeChange,
    responses((status = 200, body = TimeJson), (status = 404, body = Trouble), (status = 409, body = Trouble),
        (status = 422, body = Trouble)))]
pub async fn change(State(app): State<App>, At(id): At<Uuid>, Body(to): Body<TimeChange>) -> Answer<Json<TimeJson>> {
    let (now, before) = (app.now(), app.store.time(id).await?);
    let (started, stopped) = (to.started.unwrap_or(before.started), to.stopped.unwrap_or(before.stopped));
    let confirmed = to.confirmed.unwrap_or(before.confirmed);
    if confirmed {
        forwards(started, stopped)?;
    }
    let edit = move |entry: &mut TimeEntry| {
        entry.technician = to.technician.unwrap_or(entry.technician);
        entry.kind = to.kind.unwrap_or(entry.kind);
        (entry.started, entry.stopped, entry.confirmed) = (started, stopped, confirmed);
    };
    Ok(Json(TimeJson::of(&app.store.change_time(id, edit, now).await?, now)))
}

/// Remove an entry.
#[utoipa::path(delete, path = "/api/times/{id}", operation_id = "remove_time", params(("id" = Uuid, Path)),
    responses((status = 204), (status = 404, body = Trouble)))]
pub async fn remove(State(app): State<App>, At(id): At<Uuid>) -> Answer<StatusCode> {
    app.store.remove_time(id).await?;
    Ok(StatusCode::NO_CONTENT)
}

/// Longest entry that is no slip of the pen, h.
const LONGEST_H: i64 = 24;

/// What a person enters must end after it begins, within a day.
fn forwards(started: Timestamp, stopped: Option<Timestamp>) -> Answer<()> {
    let Some(stopped) = stopped else { return Ok(()) };
    let seconds = stopped.duration_since(started).as_secs();
    let wrong = |code, message: &str, next| Err(Trouble::new(StatusCode::UNPROCESSABLE_ENTITY, code, message, next));
    match seconds {
        ..=0 => wrong("time_backwards", "This entry ends before it begins.", "Set its start or its end right."),
        _ if seconds > LONGEST_H * 3600 => wrong(
            "time_too_long",
            "This entry is longer than a day.",
            "Check the dates; enter each day's work on its own.",
        ),
        _ => Ok(()),
    }
}

impl From<TimeError> for Trouble {
    fn from(error: TimeError) -> Self {
        match error {
            TimeError::Store(error) => error.into(),
            TimeError::Runs => Self::new(
                StatusCode::CONFLICT,
                "clock_runs",
                "Another clock of this technician runs on this job.",
                "Stop that one first.",
            ),
        }
    }
}
