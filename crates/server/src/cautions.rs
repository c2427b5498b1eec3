//! Cautions of a job.

use crate::app::App;
use crate::trouble::{Answer, Asked, Trouble};
use axum::Json;
use axum::extract::State;
use dentwright_job::{Panel, cautions};
use serde::{Deserialize, Serialize};
use utoipa::{IntoParams, ToSchema};
use uuid::Uuid;

/// Which job.
#[derive(Debug, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
pub struct OfJob {
    job: Uuid,
}

/// A caution by its code; the words are the app's and the report's.
#[derive(Debug, Serialize, ToSchema)]
pub struct CautionRow {
    code: &'static str,
    /// The panel it is for; none for the whole work.
    #[schema(required)]
    panel: Option<Panel>,
}

/// What to take care of on a job.
#[utoipa::path(get, path = "/api/cautions", operation_id = "cautions", params(OfJob),
    responses((status = 200, body = [CautionRow]), (status = 404, body = Trouble)))]
pub async fn list(State(app): State<App>, Asked(of): Asked<OfJob>) -> Answer<Json<Vec<CautionRow>>> {
    let job = app.store.job(of.job).await?;
    let found = cautions(&job.car, &job.damages);
    Ok(Json(found.into_iter().map(|one| CautionRow { code: one.code.code(), panel: one.panel }).collect()))
}
