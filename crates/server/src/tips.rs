//! Where the tip behind the panel stands: told from two photos, which are not kept.

use crate::app::App;
use crate::captures::FilesForm;
use crate::changes::opened;
use crate::reads::known_lenses;
use crate::trouble::{Answer, At, Trouble};
use crate::upload::receive;
use axum::Json;
use axum::extract::{Multipart, Query, State};
use axum::http::StatusCode;
use dentwright_flow::{TipFile, TipPhoto, TipSettings, find_tip};
use serde::Deserialize;
use uuid::Uuid;

/// Where the tip should stand, mm; both or none.
#[derive(Debug, Deserialize)]
pub struct Aim {
    x_mm: Option<f64>,
    y_mm: Option<f64>,
}

/// Find the tip from two photos of the mirrored lines: the first before, the second while it is leaned on lightly. Places
/// are in the reading's frame.
#[utoipa::path(post, path = "/api/readings/{id}/tip", operation_id = "find_tip",
    params(("id" = Uuid, Path), ("x_mm" = Option<f64>, Query), ("y_mm" = Option<f64>, Query)),
    request_body(content = FilesForm, content_type = "multipart/form-data"),
    responses((status = 200, body = TipFile), (status = 404, body = Trouble), (status = 413, body = Trouble),
        (status = 422, body = Trouble)))]
pub async fn find(
    State(app): State<App>,
    At(id): At<Uuid>,
    Query(Aim { x_mm, y_mm }): Query<Aim>,
    form: Multipart,
) -> Answer<Json<TipFile>> {
    let reading = opened(&app, id).await?;
    let scratch = app.store.files().scratch()?;
    let received = receive(form, scratch.path()).await?;
    let lenses =
        known_lenses(&app.store, scratch.path()).await.map_err(|why| Trouble::own("looking for the lens", why))?;
    let [before, loaded] = &received[..] else {
        return Err(Trouble::entered("two photos are needed: before, and while the tip is leaned on"));
    };
    let read = |path: &std::path::Path| std::fs::read(path).map_err(|why| Trouble::own("reading the photos", why));
    let (first, second) = (read(&before.path)?, read(&loaded.path)?);
    let names = [before.name.clone(), loaded.name.clone()];
    let work = move || {
        let settings = TipSettings { aim_mm: x_mm.zip(y_mm).map(<[f64; 2]>::from), lenses, ..TipSettings::default() };
        let photo = |k: usize, bytes| TipPhoto { name: &names[k], bytes };
        find_tip(photo(0, &first), photo(1, &second), &settings, Some(&reading)).map(|tip| tip.file)
    };
    let found = tokio::task::spawn_blocking(work).await.map_err(|why| Trouble::own("finding the tip", why))?;
    let told = |why: dentwright_flow::TipError| {
        Trouble::new(StatusCode::UNPROCESSABLE_ENTITY, "tip", format!("{why}."), why.next())
    };
    found.map(Json).map_err(told)
}
