//! What screen and camera may ask.

use super::sessions::Live;
use super::state::{LiveState, ScreenJson, trouble};
use crate::app::App;
use crate::door::new_code;
use crate::pair::qr_svg;
use crate::trouble::{Answer, Asked, At, Body, Trouble};
use axum::Json;
use axum::body::Bytes;
use axum::extract::State;
use axum::http::StatusCode;
use dentwright_live::Taken;
use dentwright_optics::{Photo, decode};
use serde::{Deserialize, Serialize};
use std::path::PathBuf;
use std::sync::Arc;
use std::time::Duration;
use utoipa::{IntoParams, ToSchema};
use uuid::Uuid;

/// A question waits this long for news; shorter than anything in between would cut a quiet connection.
const PATIENCE: Duration = Duration::from_secs(20);
/// Tags on panels: those of a sheet of stickers fit.
const TAG_MM: std::ops::RangeInclusive<f64> = 8.0..=100.0;

/// How a session begins.
#[derive(Debug, Deserialize, ToSchema)]
pub struct LiveBegin {
    /// Side of the panel tags' black squares, mm.
    tag_mm: f64,
}

/// Where screen and camera go.
#[derive(Debug, Serialize, ToSchema)]
pub struct LiveOffer {
    code: String,
    /// For the screen; may be typed.
    board_address: String,
    /// For a phone in this network, encrypted; none where the server is closed to other devices.
    #[schema(required)]
    camera_address: Option<String>,
    /// That address as a QR code, SVG.
    #[schema(required)]
    camera_picture: Option<String>,
    /// Where a phone gets the certificate of this computer's own authority.
    #[schema(required)]
    authority_address: Option<String>,
}

/// Begin a live session for a damage. An earlier one of the same damage ends.
#[utoipa::path(post, path = "/api/damages/{id}/live", operation_id = "begin_live", params(("id" = Uuid, Path)),
    request_body = LiveBegin,
    responses((status = 201, body = LiveOffer), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn begin(
    State(app): State<App>,
    At(damage): At<Uuid>,
    Body(given): Body<LiveBegin>,
) -> Answer<(StatusCode, Json<LiveOffer>)> {
    app.store.damage(damage).await?;
    if !TAG_MM.contains(&given.tag_mm) {
        return Err(Trouble::entered(format!("the tag size is {} mm, but must be from 8 to 100", given.tag_mm)));
    }
    let code = new_code().map_err(|why| Trouble::own("making a code", why))?;
    app.live.begin(&code, damage, given.tag_mm, app.store.files(), app.now())?;
    let camera_address = app.door.secure_address(&format!("#/camera/{code}"));
    let camera_picture = camera_address.as_deref().map(qr_svg).transpose();
    let camera_picture = camera_picture.map_err(|why| Trouble::own("drawing the QR code", why))?;
    let authority_address = camera_address.is_some().then(|| app.door.plain_address("authority.crt"));
    let board_address = app.door.plain_address(&format!("board/{code}"));
    let offer = LiveOffer { code, board_address, camera_address, camera_picture, authority_address };
    Ok((StatusCode::CREATED, Json(offer)))
}

/// What a question knows already.
#[derive(Debug, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
pub struct LiveAsked {
    /// The version known; the answer waits until there is another.
    #[serde(default)]
    after: u64,
}

/// A session; with `after` the answer comes when something has changed, or after twenty seconds.
#[utoipa::path(get, path = "/api/live/{code}", operation_id = "live", params(("code" = String, Path), LiveAsked),
    responses((status = 200, body = LiveState), (status = 404, body = Trouble)))]
pub async fn state(
    State(app): State<App>,
    At(code): At<String>,
    Asked(asked): Asked<LiveAsked>,
) -> Answer<Json<LiveState>> {
    let live = find(&app, &code)?;
    let mut version = live.version.subscribe();
    let news = version.wait_for(|version| *version > asked.after);
    let _ = tokio::time::timeout(PATIENCE, news).await;
    let live = find(&app, &code)?;
    answer(&app, &live).await
}

/// The screen says how large it is and where its tags are.
#[utoipa::path(put, path = "/api/live/{code}/board", operation_id = "live_board", params(("code" = String, Path)),
    request_body = ScreenJson,
    responses((status = 200, body = LiveState), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn lay_out(
    State(app): State<App>,
    At(code): At<String>,
    Body(screen): Body<ScreenJson>,
) -> Answer<Json<LiveState>> {
    let live = find(&app, &code)?;
    let laid = live.inner().session.lay_out(&screen.into());
    laid.map_err(|why| {
        let next = "Measure the screen again, with a bank card or a tape.";
        Trouble::new(StatusCode::UNPROCESSABLE_ENTITY, "live_screen", format!("{why}."), next)
    })?;
    live.changed();
    answer(&app, &live).await
}

/// The screen shows the picture of a turn.
#[utoipa::path(post, path = "/api/live/{code}/shown/{turn}", operation_id = "live_shown",
    params(("code" = String, Path), ("turn" = usize, Path)),
    responses((status = 204), (status = 404, body = Trouble)))]
pub async fn shown(State(app): State<App>, At((code, turn)): At<(String, usize)>) -> Answer<StatusCode> {
    let live = find(&app, &code)?;
    live.inner().session.show(turn);
    live.changed();
    Ok(StatusCode::NO_CONTENT)
}

/// The photo of a turn. One that must be taken again is refused with the reason; one that comes too late is
/// passed over.
#[utoipa::path(post, path = "/api/live/{code}/photos/{turn}", operation_id = "live_photo",
    params(("code" = String, Path), ("turn" = usize, Path)),
    request_body(content = Vec<u8>, content_type = "image/jpeg"),
    responses((status = 200, body = LiveState), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn photo(
    State(app): State<App>,
    At((code, turn)): At<(String, usize)>,
    bytes: Bytes,
) -> Answer<Json<LiveState>> {
    let live = find(&app, &code)?;
    let kept = live.clone();
    let judged = tokio::task::spawn_blocking(move || judge(&kept, turn, &bytes)).await;
    let taken = judged.map_err(|why| Trouble::own("looking at the photo", why))?;
    live.changed();
    if taken? == Some(Taken::Done) {
        finish(&app, &live).await?;
        live.changed();
    }
    answer(&app, &live).await
}

/// How a run begins again.
#[derive(Debug, Deserialize, ToSchema)]
pub struct LiveAgain {
    /// With the set-up photo too.
    setup: bool,
}

/// Begin again, with the set-up photo or with the panel photo.
#[utoipa::path(post, path = "/api/live/{code}/again", operation_id = "live_again", params(("code" = String, Path)),
    request_body = LiveAgain, responses((status = 200, body = LiveState), (status = 404, body = Trouble)))]
pub async fn again(
    State(app): State<App>,
    At(code): At<String>,
    Body(given): Body<LiveAgain>,
) -> Answer<Json<LiveState>> {
    let live = find(&app, &code)?;
    {
        let mut inner = live.inner();
        if inner.taken.is_none() {
            inner.session.begin_again(given.setup);
            inner.again = None;
        }
    }
    live.changed();
    answer(&app, &live).await
}

/// End a session. A capture that it has made stays.
#[utoipa::path(delete, path = "/api/live/{code}", operation_id = "end_live", params(("code" = String, Path)),
    responses((status = 204)))]
pub async fn end(State(app): State<App>, At(code): At<String>) -> StatusCode {
    app.live.end(&code);
    StatusCode::NO_CONTENT
}

fn find(app: &App, code: &str) -> Answer<Arc<Live>> {
    app.live.get(code, app.now()).ok_or_else(|| {
        let next = "Begin a new one at the damage, and open its address on the screen and on the phone.";
        Trouble::new(StatusCode::NOT_FOUND, "live_over", "This live session is over.", next)
    })
}

async fn answer(app: &App, live: &Live) -> Answer<Json<LiveState>> {
    let language = app.store.shop().await?.language;
    Ok(Json(LiveState::of(live, language)))
}

/// Decodes, judges and files a photo.
fn judge(live: &Live, turn: usize, bytes: &[u8]) -> Answer<Option<Taken>> {
    let photo: Photo = decode(bytes).map_err(|why| {
        let next = "Take it again.";
        Trouble::new(StatusCode::UNPROCESSABLE_ENTITY, "photo", format!("The photo {why}."), next)
    })?;
    let mut inner = live.inner();
    let Some(judged) = inner.session.take(turn, photo) else { return Ok(None) };
    match judged {
        Ok(taken) => {
            inner.again = None;
            std::fs::write(inner.path(turn), bytes).map_err(|why| Trouble::own("keeping the photo", why))?;
            Ok(Some(taken))
        }
        Err(again) => {
            let told = trouble(&again);
            inner.again = Some(again);
            Err(told)
        }
    }
}

/// Files the whole capture and queues its read.
async fn finish(app: &App, live: &Live) -> Answer<()> {
    let files = whole(live)?;
    let taken = app.store.add_capture(live.damage, files, app.now()).await?;
    live.inner().taken = Some(taken);
    app.reads.look();
    Ok(())
}

fn whole(live: &Live) -> Answer<Vec<(String, PathBuf)>> {
    let inner = live.inner();
    let text = inner.session.description().ok_or_else(|| Trouble::own("describing the capture", "it is not whole"))?;
    let path = inner.folder.path().join("capture.toml");
    std::fs::write(&path, text).map_err(|why| Trouble::own("describing the capture", why))?;
    let photos = inner.session.shots().iter().enumerate().map(|(turn, shot)| (shot.file.clone(), inner.path(turn)));
    Ok(photos.chain([("capture.toml".to_owned(), path)]).collect())
}
