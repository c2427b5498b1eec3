//! How a body line of a reading runs, drawn on its map.

use crate::app::App;
use crate::changes::opened;
use crate::trouble::{Answer, Asked, At, Trouble};
use axum::Json;
use axum::extract::State;
use axum::http::StatusCode;
use dentwright_flow::body_line;
use dentwright_surface::LineReport;
use serde::Deserialize;
use utoipa::IntoParams;
use uuid::Uuid;

/// Where the line was drawn, panel frame of the reading, mm.
#[derive(Debug, Clone, Copy, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
pub struct Drawn {
    from_x_mm: f64,
    from_y_mm: f64,
    to_x_mm: f64,
    to_y_mm: f64,
}

/// How the body line runs that was drawn on a map: height, place sideways, sharpness.
#[utoipa::path(get, path = "/api/readings/{id}/line", operation_id = "body_line", params(("id" = Uuid, Path), Drawn),
    responses((status = 200, body = LineReport), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn get(State(app): State<App>, At(id): At<Uuid>, Asked(drawn): Asked<Drawn>) -> Answer<Json<LineReport>> {
    let reading = opened(&app, id).await?;
    let (from, to) = ((drawn.from_x_mm, drawn.from_y_mm), (drawn.to_x_mm, drawn.to_y_mm));
    let told = tokio::task::spawn_blocking(move || body_line(&reading, from, to)).await;
    let told = told.map_err(|why| Trouble::own("looking along the line", why))?;
    let none = |why: dentwright_flow::LineError| {
        Trouble::new(StatusCode::UNPROCESSABLE_ENTITY, "no_line", format!("{why}."), why.next())
    };
    Ok(Json(told.map_err(none)?))
}
