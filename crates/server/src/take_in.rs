//! Taking a car in: old damage, paint readings, photos of the checklist, consent, what was signed.

use crate::app::App;
use crate::captures::FilesForm;
use crate::paper_issue::pack_of;
use crate::photos::check;
use crate::trouble::{Answer, Asked, At, Body, Trouble};
use crate::upload::receive;
use axum::Json;
use axum::extract::{Multipart, State};
use axum::http::StatusCode;
use dentwright_job::{OldDamage, OldKind, PaintReading, Panel, PanelPaint, Shot, judge_paint};
use dentwright_report::{Language, Signature, consent};
use serde::{Deserialize, Serialize};
use serde_json::json;
use utoipa::{IntoParams, ToSchema};
use uuid::Uuid;

/// What was recorded when the car was taken in.
#[derive(Debug, Serialize, ToSchema)]
pub struct TakenInJson {
    old: Vec<OldJson>,
    paint: Vec<PaintReading>,
    /// Each panel that was read, beside the car's others.
    judged: Vec<PanelPaint>,
    photos: Vec<CarPhotoJson>,
    /// What was signed last; none where nothing was.
    #[schema(required)]
    signed: Option<SignedJson>,
}

/// A mark of old damage.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
pub struct OldJson {
    id: Uuid,
    panel: Panel,
    /// Place on the panel as it is drawn, from the left, 0 to 1.
    x: f64,
    /// From the top.
    y: f64,
    kind: OldKind,
    #[serde(default)]
    note: String,
}

/// A photo of the checklist.
#[derive(Debug, Serialize, ToSchema)]
pub struct CarPhotoJson {
    shot: Shot,
    /// Hash of the photo.
    hash: String,
}

/// What is signed at the car.
#[derive(Debug, Deserialize, ToSchema)]
pub struct ToSign {
    /// Made on the device; what comes again under it is the same.
    id: Uuid,
    signature: Signature,
    /// The words that were shown.
    consent: Vec<String>,
    /// The old damage that was shown.
    old: Vec<OldJson>,
}

/// Who signed, when, and what.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
pub struct SignedJson {
    name: String,
    /// By the clock of the device, RFC 3339.
    at: String,
    old: Vec<OldJson>,
    consent: Vec<String>,
}

/// In which language.
#[derive(Debug, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
pub struct Spoken {
    language: Language,
}

impl From<OldDamage> for OldJson {
    fn from(old: OldDamage) -> Self {
        let (x, y) = (old.at.x(), old.at.y());
        Self { id: old.id, panel: old.panel, x, y, kind: old.kind, note: old.note }
    }
}

impl OldJson {
    fn parsed(self) -> Answer<OldDamage> {
        let at = dentwright_job::At::new(self.x, self.y).map_err(Trouble::entered)?;
        Ok(OldDamage { id: self.id, panel: self.panel, at, kind: self.kind, note: self.note })
    }
}

/// What was recorded when the car was taken in.
#[utoipa::path(get, path = "/api/jobs/{id}/take-in", operation_id = "taken_in", params(("id" = Uuid, Path)),
    responses((status = 200, body = TakenInJson), (status = 404, body = Trouble)))]
pub async fn get(State(app): State<App>, At(job): At<Uuid>) -> Answer<Json<TakenInJson>> {
    app.store.job(job).await?;
    let paint = app.store.paint_readings(job).await?;
    let signed = app.store.signed(job).await?.and_then(|(_, value)| serde_json::from_value(value).ok());
    let photos = app.store.job_photos(job).await?;
    Ok(Json(TakenInJson {
        old: app.store.old_damages(job).await?.into_iter().map(OldJson::from).collect(),
        judged: judge_paint(&paint),
        paint,
        photos: photos.into_iter().map(|(shot, photo)| CarPhotoJson { shot, hash: photo.hash }).collect(),
        signed,
    }))
}

/// Mark old damage, or change the mark.
#[utoipa::path(put, path = "/api/jobs/{id}/old-damages", operation_id = "save_old_damage", params(("id" = Uuid, Path)),
    request_body = OldJson,
    responses((status = 204), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn save_old(State(app): State<App>, At(job): At<Uuid>, Body(old): Body<OldJson>) -> Answer<StatusCode> {
    app.store.save_old_damage(job, &old.parsed()?, app.now()).await?;
    Ok(StatusCode::NO_CONTENT)
}

/// Take a mark of old damage away.
#[utoipa::path(delete, path = "/api/jobs/{id}/old-damages/{old}", operation_id = "remove_old_damage",
    params(("id" = Uuid, Path), ("old" = Uuid, Path)), responses((status = 204)))]
pub async fn remove_old(State(app): State<App>, At((job, old)): At<(Uuid, Uuid)>) -> Answer<StatusCode> {
    app.store.remove_old_damage(job, old).await?;
    Ok(StatusCode::NO_CONTENT)
}

/// Keep a paint reading.
#[utoipa::path(put, path = "/api/jobs/{id}/paint", operation_id = "save_paint", params(("id" = Uuid, Path)),
    request_body = PaintReading,
    responses((status = 204), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn save_paint(
    State(app): State<App>,
    At(job): At<Uuid>,
    Body(read): Body<PaintReading>,
) -> Answer<StatusCode> {
    read.check().map_err(Trouble::entered)?;
    app.store.save_paint_reading(job, &read, app.now()).await?;
    Ok(StatusCode::NO_CONTENT)
}

/// Take a paint reading back.
#[utoipa::path(delete, path = "/api/jobs/{id}/paint/{read}", operation_id = "remove_paint",
    params(("id" = Uuid, Path), ("read" = Uuid, Path)), responses((status = 204)))]
pub async fn remove_paint(State(app): State<App>, At((job, read)): At<(Uuid, Uuid)>) -> Answer<StatusCode> {
    app.store.remove_paint_reading(job, read).await?;
    Ok(StatusCode::NO_CONTENT)
}

/// Add photos to a place of the checklist.
#[utoipa::path(post, path = "/api/jobs/{id}/photos/{shot}", operation_id = "send_job_photos",
    params(("id" = Uuid, Path), ("shot" = Shot, Path)),
    request_body(content = FilesForm, content_type = "multipart/form-data"),
    responses((status = 204), (status = 404, body = Trouble), (status = 413, body = Trouble),
        (status = 422, body = Trouble)))]
pub async fn photos(State(app): State<App>, At((job, shot)): At<(Uuid, Shot)>, form: Multipart) -> Answer<StatusCode> {
    app.store.job(job).await?;
    let scratch = app.store.files().scratch()?;
    let received = receive(form, scratch.path()).await?;
    let checked =
        tokio::task::spawn_blocking(move || received.into_iter().map(check).collect::<Answer<Vec<_>>>()).await;
    let photos = checked.map_err(|why| Trouble::own("looking at the photos", why))??;
    app.store.add_job_photos(job, shot, photos, app.now()).await?;
    Ok(StatusCode::NO_CONTENT)
}

/// Take a photo off the checklist.
#[utoipa::path(delete, path = "/api/jobs/{id}/photos/{shot}/{hash}", operation_id = "remove_job_photo",
    params(("id" = Uuid, Path), ("shot" = Shot, Path), ("hash" = String, Path)),
    responses((status = 204), (status = 404, body = Trouble)))]
pub async fn remove_photo(
    State(app): State<App>,
    At((job, shot, hash)): At<(Uuid, Shot, String)>,
) -> Answer<StatusCode> {
    app.store.remove_job_photo(job, shot, &hash).await?;
    Ok(StatusCode::NO_CONTENT)
}

/// What a customer is told before the work, by the shop's country and in a language. No legal advice.
#[utoipa::path(get, path = "/api/consent", operation_id = "consent", params(Spoken),
    responses((status = 200, body = [String])))]
pub async fn told(State(app): State<App>, Asked(spoken): Asked<Spoken>) -> Answer<Json<Vec<String>>> {
    let (shop, billing) = (app.store.shop().await?, app.store.billing().await?);
    let pack = pack_of(&billing.country, &shop);
    Ok(Json(consent(pack, spoken.language).map_err(|why| Trouble::own("finding the consent text", why))?))
}

/// Keep what the customer signed at the car.
#[utoipa::path(put, path = "/api/jobs/{id}/signed", operation_id = "sign_at_car", params(("id" = Uuid, Path)),
    request_body = ToSign,
    responses((status = 204), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn sign(State(app): State<App>, At(job): At<Uuid>, Body(sent): Body<ToSign>) -> Answer<StatusCode> {
    sent.signature.check().map_err(Trouble::entered)?;
    let value = json!({
        "name": sent.signature.name, "at": sent.signature.at, "strokes": sent.signature.strokes,
        "old": sent.old, "consent": sent.consent,
    });
    app.store.keep_signed(job, Some(sent.id), &value, app.now()).await?;
    Ok(StatusCode::NO_CONTENT)
}
