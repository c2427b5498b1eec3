//! Who works in the shop.

use crate::app::App;
use crate::trouble::{Answer, At, Body, Trouble};
use axum::Json;
use axum::extract::State;
use axum::http::StatusCode;
use dentwright_job::{Pay, Technician};
use serde::Deserialize;
use utoipa::ToSchema;
use uuid::Uuid;

/// Somebody who is taken in or changed.
#[derive(Debug, Default, Deserialize, ToSchema)]
#[serde(default)]
pub struct TechnicianInput {
    name: String,
    pay: Pay,
    /// Whether they no longer work here; their entries stay.
    gone: bool,
}

/// Everybody, those too who have gone.
#[utoipa::path(get, path = "/api/crew", operation_id = "crew", responses((status = 200, body = [Technician])))]
pub async fn list(State(app): State<App>) -> Answer<Json<Vec<Technician>>> {
    Ok(Json(app.store.crew().await?))
}

/// Take somebody in.
#[utoipa::path(post, path = "/api/crew", operation_id = "add_technician", request_body = TechnicianInput,
    responses((status = 201, body = Technician), (status = 422, body = Trouble)))]
pub async fn add(State(app): State<App>, Body(new): Body<TechnicianInput>) -> Answer<(StatusCode, Json<Technician>)> {
    new.pay.check().map_err(Trouble::entered)?;
    Ok((StatusCode::CREATED, Json(app.store.add_technician(new.name.trim(), new.pay, app.now()).await?)))
}

/// Change somebody.
#[utoipa::path(put, path = "/api/crew/{id}", operation_id = "change_technician", params(("id" = Uuid, Path)),
    request_body = TechnicianInput,
    responses((status = 200, body = Technician), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn change(
    State(app): State<App>,
    At(id): At<Uuid>,
    Body(to): Body<TechnicianInput>,
) -> Answer<Json<Technician>> {
    to.pay.check().map_err(Trouble::entered)?;
    let changed = Technician { id, name: to.name.trim().to_owned(), pay: to.pay, gone: to.gone };
    app.store.change_technician(&changed).await?;
    Ok(Json(changed))
}
