//! Dents counted on a device and sent together.

use crate::app::App;
use crate::job_json::JobJson;
use crate::trouble::{Answer, At, Body, Trouble};
use axum::Json;
use axum::extract::State;
use dentwright_job::Panel;
use dentwright_price::Dent;
use dentwright_store::{CountError, Tap};
use serde::Deserialize;
use utoipa::ToSchema;
use uuid::Uuid;

/// Most taps of one call; more are sent in several.
const MOST_TAPS: usize = 1_000;

/// Taps in the order in which they were made.
#[derive(Debug, Deserialize, ToSchema)]
pub struct TapsJson {
    taps: Vec<TapJson>,
}

/// Dents counted, or taken back.
#[derive(Debug, Deserialize, ToSchema)]
pub struct TapJson {
    /// Made on the device; what comes again under it counts once.
    id: Uuid,
    /// The damage; made where it is not there yet.
    damage: Uuid,
    panel: Panel,
    /// What was counted; its count is not looked at.
    dent: Dent,
    /// How many; below zero where they are taken back.
    by: i32,
}

/// Count dents of a job, all of the call or none.
#[utoipa::path(post, path = "/api/jobs/{id}/taps", operation_id = "count", params(("id" = Uuid, Path)),
    request_body = TapsJson,
    responses((status = 200, body = JobJson), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn count(State(app): State<App>, At(job): At<Uuid>, Body(sent): Body<TapsJson>) -> Answer<Json<JobJson>> {
    if sent.taps.len() > MOST_TAPS {
        return Err(Trouble::entered(format!("{} taps came at once, at most {MOST_TAPS} can", sent.taps.len())));
    }
    let taps = sent.taps.into_iter().map(tap).collect::<Answer<Vec<_>>>()?;
    match app.store.count(job, &taps, app.now()).await {
        Ok(job) => Ok(Json(job.into())),
        Err(CountError::Store(error)) => Err(error.into()),
        Err(CountError::Dent(error)) => Err(Trouble::entered(error)),
    }
}

fn tap(sent: TapJson) -> Answer<Tap> {
    let dent = Dent { count: sent.by.unsigned_abs().max(1), ..sent.dent };
    dent.check().map_err(Trouble::entered)?;
    Ok(Tap { id: sent.id, damage: sent.damage, panel: sent.panel, dent, by: sent.by })
}
