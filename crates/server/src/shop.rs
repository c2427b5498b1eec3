//! The shop's settings and the hours settings.

use crate::app::App;
use crate::trouble::{Answer, Body, Trouble};
use axum::Json;
use axum::extract::State;
use dentwright_job::Shop;
use dentwright_price::HoursSettings;

/// The shop.
#[utoipa::path(get, path = "/api/shop", operation_id = "shop", responses((status = 200, body = Shop)))]
pub async fn get(State(app): State<App>) -> Answer<Json<Shop>> {
    Ok(Json(app.store.shop().await?))
}

/// Change the shop.
#[utoipa::path(put, path = "/api/shop", operation_id = "save_shop", request_body = Shop,
    responses((status = 200, body = Shop), (status = 422, body = Trouble)))]
pub async fn put(State(app): State<App>, Body(shop): Body<Shop>) -> Answer<Json<Shop>> {
    shop.check().map_err(Trouble::entered)?;
    app.store.save_shop(&shop, app.now()).await?;
    Ok(Json(shop))
}

/// The coefficients of the hours formula.
#[utoipa::path(get, path = "/api/shop/hours", operation_id = "hours", responses((status = 200, body = HoursSettings)))]
pub async fn get_hours(State(app): State<App>) -> Answer<Json<HoursSettings>> {
    Ok(Json(app.store.hours().await?))
}

/// Change the coefficients of the hours formula.
#[utoipa::path(put, path = "/api/shop/hours", operation_id = "save_hours", request_body = HoursSettings,
    responses((status = 200, body = HoursSettings), (status = 422, body = Trouble)))]
pub async fn put_hours(State(app): State<App>, Body(hours): Body<HoursSettings>) -> Answer<Json<HoursSettings>> {
    hours.check().map_err(Trouble::entered)?;
    app.store.save_hours(&hours, app.now()).await?;
    Ok(Json(hours))
}
