//! Damages: marking, moving, removing.

use crate::app::App;
use crate::job_json::DamageJson;
use crate::trouble::{Answer, At, Body, Trouble};
use axum::Json;
use axum::extract::State;
use axum::http::StatusCode;
use dentwright_job::Panel;
use dentwright_store::{DamageChange, NewDamage};
use serde::Deserialize;
use utoipa::ToSchema;
use uuid::Uuid;

/// A damage that is marked.
#[derive(Debug, Deserialize, ToSchema)]
pub struct NewDamageJson {
    /// Made on a device without network; what comes again under it is the same damage.
    #[serde(default)]
    id: Option<Uuid>,
    panel: Panel,
    /// Place on the panel as it is drawn, from the left, 0 to 1.
    x: f64,
    /// From the top.
    y: f64,
    #[serde(default)]
    note: String,
}

/// What changes; a field that is left out stays as it is.
#[derive(Debug, Default, Deserialize, ToSchema)]
pub struct DamageChangeJson {
    panel: Option<Panel>,
    x: Option<f64>,
    y: Option<f64>,
    note: Option<String>,
}

/// Mark a damage on a job.
#[utoipa::path(post, path = "/api/jobs/{id}/damages", operation_id = "add_damage", params(("id" = Uuid, Path)),
    request_body = NewDamageJson,
    responses((status = 201, body = DamageJson), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn add(
    State(app): State<App>,
    At(job): At<Uuid>,
    Body(new): Body<NewDamageJson>,
) -> Answer<(StatusCode, Json<DamageJson>)> {
    let at = dentwright_job::At::new(new.x, new.y).map_err(Trouble::entered)?;
    let id = new.id.unwrap_or_else(Uuid::now_v7);
    let new = NewDamage { panel: new.panel, at, note: new.note };
    Ok((StatusCode::CREATED, Json(app.store.add_damage_as(id, job, &new, app.now()).await?.into())))
}

/// Change a damage.
#[utoipa::path(patch, path = "/api/damages/{id}", operation_id = "change_damage", params(("id" = Uuid, Path)),
    request_body = DamageChangeJson,
    responses((status = 200, body = DamageJson), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn change(
    State(app): State<App>,
    At(id): At<Uuid>,
    Body(to): Body<DamageChangeJson>,
) -> Answer<Json<DamageJson>> {
    let at = if to.x.is_some() || to.y.is_some() {
        let (_, now) = app.store.damage(id).await?;
        let moved = dentwright_job::At::new(to.x.unwrap_or(now.at.x()), to.y.unwrap_or(now.at.y()));
        Some(moved.map_err(Trouble::entered)?)
    } else {
        None
    };
    let to = DamageChange { panel: to.panel, at, note: to.note };
    Ok(Json(app.store.change_damage(id, &to).await?.into()))
}

/// Remove a damage with everything below it.
#[utoipa::path(delete, path = "/api/damages/{id}", operation_id = "remove_damage", params(("id" = Uuid, Path)),
    responses((status = 204), (status = 404, body = Trouble)))]
pub async fn remove(State(app): State<App>, At(id): At<Uuid>) -> Answer<StatusCode> {
    let (_, damage) = app.store.damage(id).await?;
    app.reads.cancel_all(damage.captures.iter().filter_map(|capture| capture.task));
    app.store.remove_damage(id).await?;
    Ok(StatusCode::NO_CONTENT)
}
