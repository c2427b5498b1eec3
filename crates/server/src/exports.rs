//! Readings for other programs and other installations, and those that come from there.

use crate::app::App;
use crate::captures::FilesForm;
use crate::changes::opened;
use crate::trouble::{Answer, At, Trouble};
use crate::unpack::unpack_reading;
use crate::upload::receive;
use axum::Json;
use axum::extract::{Multipart, State};
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};
use dentwright_flow::{Form, KeptReading, export, pack};
use dentwright_store::NewReading;
use serde::Serialize;
use std::path::PathBuf;
use utoipa::ToSchema;
use uuid::Uuid;

/// Ending and name of the form that another installation opens.
const PACKED: &str = "zip";

/// A reading that was taken over.
#[derive(Debug, Serialize, ToSchema)]
pub struct TakenOver {
    reading_id: Uuid,
}

/// A reading in a form: `ply`, `stl`, `x3p`, `csv`, `png`, `svg`, or `zip` for another installation.
#[utoipa::path(get, path = "/api/readings/{id}/export/{form}", operation_id = "export_reading",
    params(("id" = Uuid, Path), ("form" = String, Path)),
    responses((status = 200, content_type = "application/octet-stream"), (status = 404, body = Trouble)))]
pub async fn get(State(app): State<App>, At((id, form)): At<(Uuid, String)>) -> Answer<Response> {
    let (media, bytes) = if form == PACKED {
        ("application/zip", packed(&app, id).await?)
    } else {
        let known = Form::named(&form).ok_or_else(|| Trouble::unknown(format!("there is no form {form}")))?;
        let reading = opened(&app, id).await?;
        let made = tokio::task::spawn_blocking(move || export(&reading, known)).await;
        let made = made.map_err(|why| Trouble::own("writing the reading", why))?;
        (known.media(), made.map_err(|why| Trouble::own("writing the reading", why))?)
    };
    let name = format!("attachment; filename=\"reading-{}.{form}\"", &id.to_string()[..8]);
    let heads = [(header::CONTENT_TYPE, media.to_owned()), (header::CONTENT_DISPOSITION, name)];
    Ok((heads, bytes).into_response())
}

/// The reading's files and its photos in one zip.
async fn packed(app: &App, id: Uuid) -> Answer<Vec<u8>> {
    let reading = app.store.reading(id).await?;
    let capture = app.store.capture(reading.capture).await?;
    let files = app.store.files().clone();
    let work = move || -> Answer<Vec<u8>> {
        let get = |name: &str, hash: &str| -> Answer<(String, Vec<u8>)> { Ok((name.to_owned(), files.read(hash)?)) };
        let mut own = vec![("reading.json".to_owned(), reading.facts.clone().into_bytes())];
        for (name, hash) in &reading.files {
            own.push(get(name, hash)?);
        }
        let photos = capture.files.iter().map(|file| get(&file.name, &file.hash)).collect::<Answer<Vec<_>>>()?;
        pack(&own, &photos).map_err(|why| Trouble::own("packing the reading", why))
    };
    tokio::task::spawn_blocking(work).await.map_err(|why| Trouble::own("packing the reading", why))?
}

/// Take over a reading that another installation packed.
#[utoipa::path(post, path = "/api/damages/{id}/readings", operation_id = "take_over_reading", params(("id" = Uuid, Path)),
    request_body(content = FilesForm, content_type = "multipart/form-data"),
    responses((status = 201, body = TakenOver), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn take_over(
    State(app): State<App>,
    At(damage): At<Uuid>,
    form: Multipart,
) -> Answer<(StatusCode, Json<TakenOver>)> {
    app.store.damage(damage).await?;
    let scratch = app.store.files().scratch()?;
    let received = receive(form, scratch.path()).await?;
    let folder = scratch.path().to_owned();
    let work = move || {
        let [one] = &received[..] else { return Err(no_reading("Choose one packed reading at a time.")) };
        let (reading, photos) = unpack_reading(one, &folder)?;
        let kept =
            KeptReading::open(&folder.join("reading")).map_err(|why| no_reading(&format!("{}: {why}.", one.name)))?;
        Ok((kept.file, reading, photos))
    };
    let done = tokio::task::spawn_blocking(work).await.map_err(|why| Trouble::own("unpacking the reading", why))?;
    let (file, reading, photos) = done?;
    let facts = std::fs::read_to_string(scratch.path().join("reading/reading.json"));
    let facts = facts.map_err(|why| Trouble::own("unpacking the reading", why))?;
    let files = reading.into_iter().filter(|(name, _)| name != "reading.json").collect::<Vec<(String, PathBuf)>>();
    let new = NewReading { version: file.version, settings: file.settings, facts, files };
    let reading_id = app.store.take_over(damage, photos, new, app.now()).await?;
    Ok((StatusCode::CREATED, Json(TakenOver { reading_id })))
}

fn no_reading(message: &str) -> Trouble {
    let next = "Choose a zip that was saved from a reading under “Take it along”.";
    Trouble::new(StatusCode::UNPROCESSABLE_ENTITY, "no_reading", message, next)
}
