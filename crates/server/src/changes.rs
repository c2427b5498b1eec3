//! Before and after: what changed between two readings, and the series of a damage.

use crate::app::App;
use crate::readings::{facts, map};
use crate::trouble::{Answer, At, Trouble};
use axum::Json;
use axum::extract::State;
use axum::http::header;
use axum::response::{IntoResponse, Response};
use dentwright_flow::{ChangeFile, Compared, KeptError, KeptReading, SeriesEntry, compare, series};
use dentwright_job::Damage;
use dentwright_surface::Verdict;
use jiff::Timestamp;
use serde::Serialize;
use std::collections::{HashMap, VecDeque};
use std::sync::{Arc, Mutex};
use utoipa::ToSchema;
use uuid::Uuid;

/// Comparisons of late, so that a screen which asks for a change and its maps has it reckoned once.
#[derive(Default)]
pub struct Changes {
    late: Mutex<VecDeque<Known>>,
}

/// Two readings and how they compare.
type Known = ((Uuid, Uuid), Arc<Compared>);

/// How many are kept: those of one screen and of the next.
const KEPT: usize = 3;

impl Changes {
    fn known(&self, pair: (Uuid, Uuid)) -> Option<Arc<Compared>> {
        let late = self.late.lock().unwrap_or_else(|broken| broken.into_inner());
        late.iter().find(|(of, _)| *of == pair).map(|(_, compared)| compared.clone())
    }

    fn keep(&self, pair: (Uuid, Uuid), compared: Arc<Compared>) {
        let mut late = self.late.lock().unwrap_or_else(|broken| broken.into_inner());
        late.push_front((pair, compared));
        late.truncate(KEPT);
    }
}

/// A reading of a series.
#[derive(Debug, Serialize, ToSchema)]
pub struct SeriesReadingJson {
    id: Uuid,
    created: String,
    verdict: Verdict,
    /// Grid of its maps, as they are filed.
    grid: dentwright_flow::GridFacts,
    #[serde(flatten)]
    entry: SeriesEntry,
}

/// What changed between an earlier reading and this one.
#[utoipa::path(get, path = "/api/readings/{id}/change/{earlier}", operation_id = "change",
    params(("id" = Uuid, Path), ("earlier" = Uuid, Path)),
    responses((status = 200, body = ChangeFile), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn get(State(app): State<App>, At((id, earlier)): At<(Uuid, Uuid)>) -> Answer<Json<ChangeFile>> {
    Ok(Json(compared(&app, earlier, id).await?.file()))
}

/// A map of a change, under its name there.
#[utoipa::path(get, path = "/api/readings/{id}/change/{earlier}/files/{name}", operation_id = "change_file",
    params(("id" = Uuid, Path), ("earlier" = Uuid, Path), ("name" = String, Path)),
    responses((status = 200, content_type = "application/octet-stream"), (status = 404, body = Trouble)))]
pub async fn file(State(app): State<App>, At((id, earlier, name)): At<(Uuid, Uuid, String)>) -> Answer<Response> {
    let compared = compared(&app, earlier, id).await?;
    let map = match name.as_str() {
        "change.npy" => &compared.change.map,
        "change_sigma.npy" => &compared.change.sigma,
        "before.npy" => &compared.change.before,
        _ => return Err(Trouble::unknown(format!("a change has no file {name}"))),
    };
    Ok(([(header::CONTENT_TYPE, "application/octet-stream")], map.to_npy()).into_response())
}

/// All readings of a damage, oldest first, laid on the last one, with what was left at each.
#[utoipa::path(get, path = "/api/damages/{id}/series", operation_id = "series", params(("id" = Uuid, Path)),
    responses((status = 200, body = [SeriesReadingJson]), (status = 404, body = Trouble)))]
pub async fn of_damage(State(app): State<App>, At(id): At<Uuid>) -> Answer<Json<Vec<SeriesReadingJson>>> {
    let (_, damage) = app.store.damage(id).await?;
    let json = |one: SeriesReading| SeriesReadingJson {
        id: one.id,
        created: one.created.to_string(),
        verdict: one.kept.file.finish.verdict,
        grid: one.kept.file.grid,
        entry: one.entry,
    };
    Ok(Json(series_of(&app, &damage).await?.into_iter().map(json).collect()))
}

/// A reading of a series, with its maps.
pub struct SeriesReading {
    /// Its id.
    pub id: Uuid,
    /// When it was made.
    pub created: Timestamp,
    /// How it lies, and what was left.
    pub entry: SeriesEntry,
    /// The reading itself.
    pub kept: KeptReading,
}

/// The series of a damage, oldest first.
pub async fn series_of(app: &App, damage: &Damage) -> Answer<Vec<SeriesReading>> {
    let mut all: Vec<_> = damage.captures.iter().flat_map(|capture| capture.readings.iter().copied()).collect();
    all.sort_by_key(|reading| (reading.created, reading.id));
    let mut kept = Vec::new();
    for reading in &all {
        kept.push(opened(app, reading.id).await?);
    }
    let work = move || {
        let entries: Vec<SeriesEntry> = series(&kept).iter().map(SeriesEntry::from).collect();
        let one = |((of, entry), kept): ((dentwright_job::ReadingEntry, SeriesEntry), KeptReading)| SeriesReading {
            id: of.id,
            created: of.created,
            entry,
            kept,
        };
        all.into_iter().zip(entries).zip(kept).map(one).collect()
    };
    in_background("comparing the readings", work).await
}

/// The comparison of two readings of one damage.
pub async fn compared(app: &App, earlier: Uuid, later: Uuid) -> Answer<Arc<Compared>> {
    if let Some(known) = app.changes.known((earlier, later)) {
        return Ok(known);
    }
    let (before, after) = (opened(app, earlier).await?, opened(app, later).await?);
    let made = in_background("comparing the readings", move || compare(&before, &after)).await??;
    let made = Arc::new(made);
    app.changes.keep((earlier, later), made.clone());
    Ok(made)
}

/// A kept reading with its maps, out of the record.
pub async fn opened(app: &App, id: Uuid) -> Answer<KeptReading> {
    let reading = app.store.reading(id).await?;
    let names = facts(&reading)?.maps;
    let mut files: HashMap<String, Vec<u8>> = HashMap::new();
    for name in [names.deviation, names.sigma, names.height, names.unread] {
        let bytes = map(app, &reading, &name).await?;
        files.insert(name, bytes);
    }
    files.insert("reading.json".to_owned(), reading.facts.into_bytes());
    let open = move || {
        KeptReading::of(|name| {
            files.remove(name).ok_or_else(|| KeptError::File { path: name.into(), why: "it is not there".into() })
        })
    };
    in_background("opening a reading", open).await?.map_err(|why| Trouble::own("opening a reading", why))
}

/// Work that takes the processor, away from the requests.
async fn in_background<T: Send + 'static>(what: &'static str, work: impl FnOnce() -> T + Send + 'static) -> Answer<T> {
    tokio::task::spawn_blocking(work).await.map_err(|why| Trouble::own(what, why))
}
