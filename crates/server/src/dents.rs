//! Dents entered by hand, changed, removed.

use crate::app::App;
use crate::job_json::DentEntryJson;
use crate::trouble::{Answer, At, Body, Trouble};
use axum::Json;
use axum::extract::State;
use axum::http::StatusCode;
use dentwright_job::Source;
use dentwright_price::Dent;
use dentwright_store::NewDent;
use uuid::Uuid;

/// Enter a dent, or several alike.
#[utoipa::path(post, path = "/api/damages/{id}/dents", operation_id = "add_dent", params(("id" = Uuid, Path)),
    request_body = Dent,
    responses((status = 201, body = DentEntryJson), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn add(
    State(app): State<App>,
    At(damage): At<Uuid>,
    Body(dent): Body<Dent>,
) -> Answer<(StatusCode, Json<DentEntryJson>)> {
    dent.check().map_err(Trouble::entered)?;
    let added = app.store.add_dents(damage, &[NewDent { dent, source: Source::Hand }]).await?;
    let entry = added.into_iter().next().ok_or_else(|| Trouble::own("entering the dent", "nothing was added"))?;
    Ok((StatusCode::CREATED, Json(entry.into())))
}

/// Change a dent.
#[utoipa::path(put, path = "/api/dents/{id}", operation_id = "change_dent", params(("id" = Uuid, Path)),
    request_body = Dent,
    responses((status = 200, body = DentEntryJson), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn change(State(app): State<App>, At(id): At<Uuid>, Body(dent): Body<Dent>) -> Answer<Json<DentEntryJson>> {
    dent.check().map_err(Trouble::entered)?;
    Ok(Json(app.store.change_dent(id, &dent).await?.into()))
}

/// Remove a dent.
#[utoipa::path(delete, path = "/api/dents/{id}", operation_id = "remove_dent", params(("id" = Uuid, Path)),
    responses((status = 204), (status = 404, body = Trouble)))]
pub async fn remove(State(app): State<App>, At(id): At<Uuid>) -> Answer<StatusCode> {
    app.store.remove_dent(id).await?;
    Ok(StatusCode::NO_CONTENT)
}
