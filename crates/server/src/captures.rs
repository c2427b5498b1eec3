//! Captures: photos come, a read is queued.

use crate::app::App;
use crate::trouble::{Answer, At, Trouble};
use crate::unpack::{DESCRIPTION, unpack};
use crate::upload::{Received, is_zip, receive, twice};
use axum::Json;
use axum::extract::{Multipart, State};
use axum::http::StatusCode;
use dentwright_flow::check_folder;
use serde::Serialize;
use std::path::{Path, PathBuf};
use utoipa::ToSchema;
use uuid::Uuid;

/// A form with files.
#[derive(ToSchema)]
#[allow(dead_code, reason = "describes the form")]
pub struct FilesForm {
    /// The files, each under this name.
    #[schema(value_type = Vec<String>, format = Binary)]
    files: Vec<Vec<u8>>,
}

/// A capture that was taken and whose read is queued.
#[derive(Debug, Serialize, ToSchema)]
pub struct Taken {
    capture_id: Uuid,
    task_id: Uuid,
}

/// A read that is queued.
#[derive(Debug, Serialize, ToSchema)]
pub struct Queued {
    task_id: Uuid,
}

/// Send the photos of a capture with their capture.toml, or a zip of the folder, and read it.
#[utoipa::path(post, path = "/api/damages/{id}/captures", operation_id = "send_capture", params(("id" = Uuid, Path)),
    request_body(content = FilesForm, content_type = "multipart/form-data"),
    responses((status = 201, body = Taken), (status = 404, body = Trouble), (status = 413, body = Trouble),
        (status = 422, body = Trouble)))]
pub async fn upload(
    State(app): State<App>,
    At(damage): At<Uuid>,
    form: Multipart,
) -> Answer<(StatusCode, Json<Taken>)> {
    app.store.damage(damage).await?;
    let scratch = app.store.files().scratch()?;
    let received = receive(form, scratch.path()).await?;
    let folder = scratch.path().to_owned();
    let gathered = tokio::task::spawn_blocking(move || gather(received, &folder)).await;
    let files = gathered.map_err(|why| Trouble::own("looking through the upload", why))??;
    let (capture_id, task_id) = app.store.add_capture(damage, files, app.now()).await?;
    app.reads.look();
    Ok((StatusCode::CREATED, Json(Taken { capture_id, task_id })))
}

/// Read a capture once more; earlier readings stay.
#[utoipa::path(post, path = "/api/captures/{id}/read", operation_id = "read_again", params(("id" = Uuid, Path)),
    responses((status = 201, body = Queued), (status = 404, body = Trouble)))]
pub async fn read_again(State(app): State<App>, At(capture): At<Uuid>) -> Answer<(StatusCode, Json<Queued>)> {
    let task_id = app.store.add_task(capture, app.now()).await?;
    app.reads.look();
    Ok((StatusCode::CREATED, Json(Queued { task_id })))
}

/// Zips opened, the description found, every photo that it names there.
fn gather(received: Vec<Received>, folder: &Path) -> Answer<Vec<(String, PathBuf)>> {
    let mut files: Vec<Received> = Vec::new();
    for one in received {
        let more = if is_zip(&one.name) { unpack(&one, folder)? } else { vec![one] };
        for file in more {
            if files.iter().any(|there| there.name == file.name) {
                return Err(twice(&file.name));
            }
            files.push(file);
        }
    }
    if !files.iter().any(|file| file.name == DESCRIPTION) {
        return Err(no_description(&files));
    }
    let named = folder.join("capture");
    let lay = |file: Received| -> std::io::Result<(String, PathBuf)> {
        let path = named.join(&file.name);
        std::fs::rename(&file.path, &path)?;
        Ok((file.name, path))
    };
    let laid = std::fs::create_dir(&named).and_then(|()| files.into_iter().map(lay).collect());
    let laid = laid.map_err(|why| Trouble::own("sorting the upload", why))?;
    check_folder(&named)?;
    Ok(laid)
}

fn no_description(files: &[Received]) -> Trouble {
    let first = files.first().map_or_else(String::new, |file| format!(", starting with {}", file.name));
    let message = format!("There is no {DESCRIPTION} among these files{first}.");
    let next = "Choose the whole capture folder, with the capture.toml that lists its photos.";
    Trouble::new(StatusCode::UNPROCESSABLE_ENTITY, "no_capture_toml", message, next)
}
