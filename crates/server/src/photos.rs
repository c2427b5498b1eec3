//! Photos of damages.

use crate::app::App;
use crate::captures::FilesForm;
use crate::picture::{scaled, upright};
use crate::trouble::{Answer, Asked, At, Trouble};
use crate::upload::{Received, receive};
use axum::Json;
use axum::extract::{Multipart, State};
use axum::http::{StatusCode, header};
use axum::response::IntoResponse;
use dentwright_store::FileError;
use serde::Deserialize;
use std::path::PathBuf;
use utoipa::IntoParams;
use uuid::Uuid;

/// Widths that screens ask for, px.
const WIDTHS: std::ops::RangeInclusive<u32> = 64..=2400;
const SCREEN_WIDTH: u32 = 1600;

/// How large a photo is wanted.
#[derive(Debug, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
pub struct Size {
    /// Width, px.
    width: Option<u32>,
}

/// Add photos to a damage.
#[utoipa::path(post, path = "/api/damages/{id}/photos", operation_id = "send_photos", params(("id" = Uuid, Path)),
    request_body(content = FilesForm, content_type = "multipart/form-data"),
    responses((status = 201, body = [String]), (status = 404, body = Trouble), (status = 413, body = Trouble),
        (status = 422, body = Trouble)))]
pub async fn upload(
    State(app): State<App>,
    At(damage): At<Uuid>,
    form: Multipart,
) -> Answer<(StatusCode, Json<Vec<String>>)> {
    app.store.damage(damage).await?;
    let scratch = app.store.files().scratch()?;
    let received = receive(form, scratch.path()).await?;
    let checked =
        tokio::task::spawn_blocking(move || received.into_iter().map(check).collect::<Answer<Vec<_>>>()).await;
    let photos = checked.map_err(|why| Trouble::own("looking at the photos", why))??;
    let added = app.store.add_photos(damage, photos, app.now()).await?;
    Ok((StatusCode::CREATED, Json(added.into_iter().map(|photo| photo.hash).collect())))
}

/// A photo that can be shown, as its name and its file.
pub fn check(photo: Received) -> Answer<(String, PathBuf)> {
    let bytes = std::fs::read(&photo.path).map_err(|why| Trouble::own("looking at the photos", why))?;
    match upright(&bytes) {
        Ok(_) => Ok((photo.name, photo.path)),
        Err(why) => {
            let message = format!("{} is no photo that can be shown ({why}).", photo.name);
            let next = "Send JPEG or PNG photos. If it is one, copy it from the phone again. None of these was kept.";
            Err(Trouble::new(StatusCode::UNPROCESSABLE_ENTITY, "photo", message, next))
        }
    }
}

/// A photo made smaller, as JPEG.
#[utoipa::path(get, path = "/api/photos/{hash}", operation_id = "photo", params(("hash" = String, Path), Size),
    responses((status = 200, content_type = "image/jpeg"), (status = 404, body = Trouble)))]
pub async fn get(State(app): State<App>, At(hash): At<String>, Asked(size): Asked<Size>) -> Answer<impl IntoResponse> {
    if !app.store.is_photo(&hash).await? {
        return Err(FileError::Unknown(hash).into());
    }
    let width = size.width.unwrap_or(SCREEN_WIDTH).clamp(*WIDTHS.start(), *WIDTHS.end());
    let jpeg = small(&app, hash, width).await?;
    // A hash never changes its content.
    let keep = (header::CACHE_CONTROL, "private, max-age=31536000, immutable");
    Ok(([(header::CONTENT_TYPE, "image/jpeg"), keep], jpeg))
}

/// Remove a photo of a damage.
#[utoipa::path(delete, path = "/api/damages/{id}/photos/{hash}", operation_id = "remove_photo",
    params(("id" = Uuid, Path), ("hash" = String, Path)),
    responses((status = 204), (status = 404, body = Trouble)))]
pub async fn remove(State(app): State<App>, At((damage, hash)): At<(Uuid, String)>) -> Answer<StatusCode> {
    app.store.remove_photo(damage, &hash).await?;
    Ok(StatusCode::NO_CONTENT)
}

/// A filed photo as JPEG of at most this width.
pub async fn small(app: &App, hash: String, most_width: u32) -> Answer<Vec<u8>> {
    let files = app.store.files().clone();
    let work = move || {
        let bytes = files.read(&hash)?;
        scaled(&bytes, most_width).map_err(|why| {
            let next = "Take it again; the file is kept as it came.";
            Trouble::new(StatusCode::UNPROCESSABLE_ENTITY, "photo", format!("this photo cannot be shown ({why})"), next)
        })
    };
    tokio::task::spawn_blocking(work).await.map_err(|why| Trouble::own("making a photo smaller", why))?
}
