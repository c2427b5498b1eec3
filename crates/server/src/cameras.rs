//! Calibrated cameras.

use crate::app::App;
use crate::captures::FilesForm;
use crate::trouble::{Answer, At, Trouble};
use crate::upload::{Received, receive};
use axum::Json;
use axum::extract::{Multipart, State};
use axum::http::StatusCode;
use dentwright_optics::{CalibrateError, Calibration, PhoneZoom, TagSheet, calibrate, decode, phone_zoom};
use dentwright_scene::sheet::CameraSheet;
use dentwright_store::{NewCamera, StoredCamera};
use serde::Serialize;
use utoipa::ToSchema;
use uuid::Uuid;

/// A camera that was calibrated: one phone at one zoom.
#[derive(Debug, Serialize, ToSchema)]
pub struct CameraJson {
    id: Uuid,
    created: String,
    /// Maker and model.
    phone: String,
    /// 35 mm equivalent focal length, mm.
    focal_35mm: u32,
    width_px: u32,
    height_px: u32,
    /// Focal length, mean of across and down, px.
    focal_px: f64,
    /// One-sigma of it, relative.
    focal_doubt: f64,
    /// What is left of the tags' corners, px.
    rms_px: f64,
    photos: usize,
}

/// All calibrated cameras, newest first; of one phone and zoom the newest counts.
#[utoipa::path(get, path = "/api/cameras", operation_id = "cameras", responses((status = 200, body = [CameraJson])))]
pub async fn list(State(app): State<App>) -> Answer<Json<Vec<CameraJson>>> {
    app.store.cameras().await?.into_iter().map(told).collect::<Answer<Vec<_>>>().map(Json)
}

/// Calibrate a camera by photos of the camera sheet.
#[utoipa::path(post, path = "/api/cameras", operation_id = "calibrate",
    request_body(content = FilesForm, content_type = "multipart/form-data"),
    responses((status = 201, body = CameraJson), (status = 413, body = Trouble), (status = 422, body = Trouble)))]
pub async fn add(State(app): State<App>, form: Multipart) -> Answer<(StatusCode, Json<CameraJson>)> {
    let scratch = app.store.files().scratch()?;
    let received = receive(form, scratch.path()).await?;
    let made = tokio::task::spawn_blocking(move || made_of(&received)).await;
    let new = made.map_err(|why| Trouble::own("calibrating", why))??;
    let now = app.now();
    let id = app.store.add_camera(&new, now).await?;
    Ok((StatusCode::CREATED, Json(told(StoredCamera { id, created: now, camera: new })?)))
}

/// Forget a calibration.
#[utoipa::path(delete, path = "/api/cameras/{id}", operation_id = "remove_camera", params(("id" = Uuid, Path)),
    responses((status = 204), (status = 404, body = Trouble)))]
pub async fn remove(State(app): State<App>, At(id): At<Uuid>) -> Answer<StatusCode> {
    app.store.remove_camera(id).await?;
    Ok(StatusCode::NO_CONTENT)
}

fn told(stored: StoredCamera) -> Answer<CameraJson> {
    let StoredCamera { id, created, camera } = stored;
    let lens: Calibration = serde_json::from_value(camera.value)
        .map_err(|why| Trouble::own("understanding an earlier calibration", why))?;
    Ok(CameraJson {
        id,
        created: created.to_string(),
        phone: camera.phone,
        focal_35mm: camera.focal_35mm,
        width_px: camera.size_px.0,
        height_px: camera.size_px.1,
        focal_px: lens.plain().focal_px,
        focal_doubt: lens.focal_doubt(),
        rms_px: lens.rms_px,
        photos: lens.photos,
    })
}

/// The calibration of photos that are all of one phone and zoom.
fn made_of(received: &[Received]) -> Answer<NewCamera> {
    let mut photos = Vec::new();
    let mut phone: Option<(PhoneZoom, &str)> = None;
    for one in received {
        let bytes = std::fs::read(&one.path).map_err(|why| Trouble::own("reading the upload", why))?;
        let refused = |code: &str, why: String, next: &str| {
            Trouble::new(StatusCode::UNPROCESSABLE_ENTITY, code, format!("{} {why}.", one.name), next)
        };
        let this = phone_zoom(&bytes).ok_or_else(|| {
            let next = "Send the photos as the phone wrote them: other programs strip what they say of the camera.";
            refused("camera_unnamed", "does not say which phone took it at which zoom".into(), next)
        })?;
        match &phone {
            Some((first, name)) if *first != this => {
                let next = "Calibrate one phone at one zoom at a time.";
                return Err(refused("camera_mixed", format!("is of another phone or zoom than {name}"), next));
            }
            Some(_) => {}
            None => phone = Some((this, &one.name)),
        }
        photos.push(decode(&bytes).map_err(|why| refused("photo", why.to_string(), "Copy it from the phone again."))?);
    }
    let CameraSheet { first, columns, rows, tag_mm, pitch_mm } = CameraSheet::OURS;
    let lens = calibrate(&photos, &TagSheet { first, columns, rows, tag_mm, pitch_mm })?;
    let Some((PhoneZoom { phone, focal_35mm }, _)) = phone else {
        return Err(CalibrateError::Photos { good: 0, all: 0 }.into());
    };
    let px = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
    let value = serde_json::to_value(lens).map_err(|why| Trouble::own("keeping the calibration", why))?;
    Ok(NewCamera { phone, focal_35mm, size_px: (px(lens.size.0), px(lens.size.1)), value })
}

impl From<CalibrateError> for Trouble {
    fn from(error: CalibrateError) -> Self {
        Self::new(StatusCode::UNPROCESSABLE_ENTITY, "calibration", format!("{error}."), error.next())
    }
}
