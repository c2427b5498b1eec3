//! Readings: facts, maps, spots taken over as dents.

use crate::app::App;
use crate::job_json::DentEntryJson;
use crate::photos::small;
use crate::trouble::{Answer, At, Trouble};
use axum::Json;
use axum::extract::State;
use axum::http::header;
use axum::response::{IntoResponse, Response};
use dentwright_flow::ReadingFile;
use dentwright_job::{Damage, DentEntry, Job, Source, SpotDent, TakeSettings, dents_of_spots};
use dentwright_price::{Access, Kind, Place};
use dentwright_store::{NewDent, Store, StoredReading};
use dentwright_surface::{Spot, SpotKind};
use serde::Serialize;
use utoipa::ToSchema;
use uuid::Uuid;

/// The panel photo is shown at most this wide, px.
const PHOTO_WIDTH: u32 = 2400;
/// From this many lows on one panel they are taken for hail; common practice, no published source. The
/// technician corrects it with one tap.
const HAIL_LOWS: usize = 6;

/// A reading.
#[derive(Debug, Serialize, ToSchema)]
pub struct ReadingJson {
    id: Uuid,
    capture_id: Uuid,
    damage_id: Uuid,
    created: String,
    /// What was found, as `reading.json` has it.
    #[serde(flatten)]
    facts: ReadingFile,
}

/// What was found, out of the record's text.
pub fn facts(reading: &StoredReading) -> Answer<ReadingFile> {
    serde_json::from_str(&reading.facts).map_err(|why| Trouble::own("understanding an earlier reading", why))
}

/// A reading.
#[utoipa::path(get, path = "/api/readings/{id}", operation_id = "reading", params(("id" = Uuid, Path)),
    responses((status = 200, body = ReadingJson), (status = 404, body = Trouble)))]
pub async fn get(State(app): State<App>, At(id): At<Uuid>) -> Answer<Json<ReadingJson>> {
    Ok(Json(of_stored(&app, id).await?))
}

/// A reading out of the record.
pub async fn of_stored(app: &App, id: Uuid) -> Answer<ReadingJson> {
    let reading = app.store.reading(id).await?;
    let facts = facts(&reading)?;
    let created = reading.created.to_string();
    Ok(ReadingJson { id, capture_id: reading.capture, damage_id: reading.damage, created, facts })
}

/// A file of a reading: its maps (`deviation.npy`, `height.npy`, `sigma.npy`, `unread.npy`, `map.png`), or
/// `photo`, the panel photo on which its spots lie.
#[utoipa::path(get, path = "/api/readings/{id}/files/{name}", operation_id = "reading_file",
    params(("id" = Uuid, Path), ("name" = String, Path)),
    responses((status = 200, content_type = "application/octet-stream"), (status = 404, body = Trouble)))]
pub async fn file(State(app): State<App>, At((id, name)): At<(Uuid, String)>) -> Answer<Response> {
    let reading = app.store.reading(id).await?;
    let (kind, bytes) = if name == "photo" {
        ("image/jpeg", small(&app, photo_hash(&app, &reading).await?, PHOTO_WIDTH).await?)
    } else {
        let kind = if name.ends_with(".png") { "image/png" } else { "application/octet-stream" };
        (kind, map(&app, &reading, &name).await?)
    };
    // A reading is never changed.
    let keep = (header::CACHE_CONTROL, "private, max-age=31536000, immutable");
    Ok(([(header::CONTENT_TYPE, kind), keep], bytes).into_response())
}

/// A map of a reading, as filed.
pub async fn map(app: &App, reading: &StoredReading, name: &str) -> Answer<Vec<u8>> {
    let found = reading.files.iter().find(|(file, _)| file == name).map(|(_, hash)| hash.clone());
    let hash = found.ok_or_else(|| Trouble::unknown(format!("this reading has no file {name}")))?;
    let files = app.store.files().clone();
    let bytes = tokio::task::spawn_blocking(move || files.read(&hash)).await;
    Ok(bytes.map_err(|why| Trouble::own("reading a map", why))??)
}

/// Hash of the panel photo on which a reading's spots lie.
pub async fn photo_hash(app: &App, reading: &StoredReading) -> Answer<String> {
    let name = facts(reading)?.photo.file;
    let capture = app.store.capture(reading.capture).await?;
    let file = capture.files.into_iter().find(|file| file.name == name);
    file.map(|file| file.hash).ok_or_else(|| Trouble::unknown(format!("the capture has no photo {name}")))
}

/// Enter the spots of a reading that lie beyond its finish limit as dents. Those taken before stay as they are.
#[utoipa::path(post, path = "/api/readings/{id}/take", operation_id = "take", params(("id" = Uuid, Path)),
    responses((status = 200, body = [DentEntryJson]), (status = 404, body = Trouble)))]
pub async fn take(State(app): State<App>, At(id): At<Uuid>) -> Answer<Json<Vec<DentEntryJson>>> {
    let added = take_spots(&app.store, id).await?;
    Ok(Json(added.into_iter().map(DentEntryJson::from).collect()))
}

/// Enters the spots of a reading that lie beyond its finish limit as dents of its damage; those that are new.
///
/// # Errors
/// When there is no such reading, or a spot makes no dent that can be priced.
pub async fn take_spots(store: &Store, id: Uuid) -> Answer<Vec<DentEntry>> {
    let reading = store.reading(id).await?;
    let facts = facts(&reading)?;
    let (job, damage) = store.damage(reading.damage).await?;
    let job = store.job(job).await?;
    let spots: Vec<Spot> = facts.spots.into_iter().map(|one| one.spot).collect();
    let settings = take_settings(&job, &damage, &spots, facts.finish.limit_mm);
    let new = |one: SpotDent| {
        one.dent.check().map_err(|why| Trouble::entered(format!("spot {}: {why}", one.spot + 1)))?;
        let SpotDent { spot, dent, sigma_mm, at_least } = one;
        Ok(NewDent { dent, source: Source::Reading { reading: id, spot, sigma_mm, at_least } })
    };
    let dents = dents_of_spots(&spots, &settings).into_iter().map(new).collect::<Answer<Vec<_>>>()?;
    Ok(store.add_dents(reading.damage, &dents).await?)
}

/// What a reading does not tell: from the dents that are there already, else a first guess.
fn take_settings(job: &Job, damage: &Damage, spots: &[Spot], limit_mm: f64) -> TakeSettings {
    let last = damage.dents.last().map(|entry| &entry.dent);
    let lows = spots.iter().filter(|spot| spot.kind == SpotKind::Low && spot.height_mm.abs() > limit_mm).count();
    TakeSettings {
        limit_mm,
        metal: last.map_or_else(|| job.car.metal(damage.panel), |dent| dent.metal),
        access: last.map_or(Access::Open, |dent| dent.access),
        place: last.map_or(Place::Flat, |dent| dent.place),
        hail: last.map_or(lows >= HAIL_LOWS, |dent| dent.kind == Kind::Hail),
    }
}
