//! Depths measured by hand, joined to a reading: each makes a reading of its own that stands for the one before.

use crate::app::App;
use crate::changes::opened;
use crate::readings::{ReadingJson, of_stored};
use crate::reads::reading_of_folder;
use crate::trouble::{Answer, At, Body, Trouble};
use axum::Json;
use axum::extract::State;
use axum::http::StatusCode;
use dentwright_flow::{GaugeAsked, GaugeError, gauged, write_kept};
use dentwright_store::UngaugeError;
use uuid::Uuid;

/// Join a depth measured by hand to a reading. What comes of it is a reading of its own, which from then on stands in
/// the list for this one.
#[utoipa::path(post, path = "/api/readings/{id}/gauge", operation_id = "add_gauge", params(("id" = Uuid, Path)),
    request_body = GaugeAsked,
    responses((status = 201, body = ReadingJson), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn add(
    State(app): State<App>,
    At(id): At<Uuid>,
    Body(asked): Body<GaugeAsked>,
) -> Answer<(StatusCode, Json<ReadingJson>)> {
    // What was filled in before counts as read: the depths join the reading as it came from its photos.
    let mut all = vec![asked];
    let mut root = id;
    let mut before = opened(&app, root).await?;
    while let Some(of) = app.store.gauged_of(root).await? {
        all.extend(before.file.gauges.last().map(|one| one.asked));
        (root, before) = (of, opened(&app, of).await?);
    }
    all.reverse();
    let scratch = app.store.files().scratch()?;
    let out = scratch.path().join("reading");
    let work = move || -> Answer<_> {
        let joined = gauged(&before, &all)?;
        write_kept(&joined, &out).map_err(|why| Trouble::own("writing the reading", why))?;
        reading_of_folder(&out).map_err(|why| Trouble::own("writing the reading", why))
    };
    let new = tokio::task::spawn_blocking(work).await.map_err(|why| Trouble::own("joining the depth", why))??;
    let reading = app.store.keep_gauged(id, new, app.now()).await?;
    Ok((StatusCode::CREATED, Json(of_stored(&app, reading).await?)))
}

/// Take the last depth of a reading back: it is removed, and the reading before it stands again.
#[utoipa::path(delete, path = "/api/readings/{id}/gauge", operation_id = "remove_gauge", params(("id" = Uuid, Path)),
    responses((status = 200, body = ReadingJson), (status = 404, body = Trouble), (status = 409, body = Trouble)))]
pub async fn remove(State(app): State<App>, At(id): At<Uuid>) -> Answer<Json<ReadingJson>> {
    let before = app.store.remove_gauged(id).await?;
    Ok(Json(of_stored(&app, before).await?))
}

impl From<GaugeError> for Trouble {
    fn from(error: GaugeError) -> Self {
        Self::new(StatusCode::UNPROCESSABLE_ENTITY, error.code(), format!("{error}."), error.next())
    }
}

impl From<UngaugeError> for Trouble {
    fn from(error: UngaugeError) -> Self {
        match error {
            UngaugeError::Store(why) => why.into(),
            UngaugeError::Plain => Self::unknown(error),
            UngaugeError::InUse => {
                let next = "It stays. Read the photos again for a reading without it.";
                Self::new(StatusCode::CONFLICT, "gauge_in_use", format!("{error}."), next)
            }
        }
    }
}
