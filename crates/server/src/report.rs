//! The report of a job, as PDF.

use crate::app::App;
use crate::books::Books;
use crate::changes::{SeriesReading, compared, series_of};
use crate::metal::known;
use crate::photos::small;
use crate::quote::QuoteAnswer;
use crate::readings::{facts, map, photo_hash};
use crate::report_data::{Loaded, LoadedChange, LoadedReading, report_data};
use crate::trouble::{Answer, At, Trouble};
use axum::extract::State;
use axum::http::header;
use axum::response::{IntoResponse, Response};
use dentwright_flow::MetalFile;
use dentwright_job::{Damage, Job};
use dentwright_report::{NamedImage, report};
use jiff::tz::TimeZone;
use uuid::Uuid;

/// Photos on paper are at most 170 mm wide; at this width that is 200 dots an inch.
const PAPER_WIDTH: u32 = 1340;

/// The report.
#[utoipa::path(get, path = "/api/jobs/{id}/report.pdf", operation_id = "report", params(("id" = Uuid, Path)),
    responses((status = 200, content_type = "application/pdf"), (status = 404, body = Trouble)))]
pub async fn pdf(State(app): State<App>, At(id): At<Uuid>) -> Answer<Response> {
    let (job, books) = (app.store.job(id).await?, Books::open(&app).await?);
    // A job without dents has no quote, which is no reason to have no report.
    let priced = QuoteAnswer::of(&job, &books, 0).ok().map(QuoteAnswer::into_quote);
    let quote = priced.filter(|quote| !quote.lines.is_empty());
    let loaded = load(&app, &job).await?;
    let date = app.now().to_zoned_datetime(TimeZone::system()).date();
    let name = format!("attachment; filename=\"{}.pdf\"", job.number);
    let made = tokio::task::spawn_blocking(move || report(&report_data(&job, &books.shop, quote, loaded, date))).await;
    let made = made.map_err(|why| Trouble::own("making the report", why))?;
    let made = made.map_err(|why| Trouble::own("making the report", why))?;
    Ok(([(header::CONTENT_TYPE, "application/pdf".to_owned()), (header::CONTENT_DISPOSITION, name)], made.pdf)
        .into_response())
}

/// Photos and readings that the report shows.
pub async fn load(app: &App, job: &Job) -> Answer<Loaded> {
    let mut loaded = Loaded::default();
    for damage in &job.damages {
        for photo in &damage.photos {
            let bytes = small(app, photo.hash.clone(), PAPER_WIDTH).await?;
            loaded.images.push(NamedImage { name: photo.hash.clone(), bytes });
        }
        for id in shown_readings(damage) {
            let reading = app.store.reading(id).await?;
            let photo = photo_hash(app, &reading).await?;
            let bytes = small(app, photo.clone(), PAPER_WIDTH).await?;
            loaded.images.push(NamedImage { name: photo.clone(), bytes });
            let facts = facts(&reading)?;
            let deviation = map(app, &reading, &facts.maps.deviation).await?;
            let metal = metal(app, id).await?;
            let one = LoadedReading { created: reading.created, facts, photo, deviation, metal };
            loaded.readings.entry(damage.id).or_default().push(one);
        }
        if let Some(change) = changed(app, damage).await? {
            loaded.changes.insert(damage.id, change);
        }
    }
    Ok(loaded)
}

/// What the work changed at a damage: nothing with fewer than two readings, or where they cannot be laid on each other.
async fn changed(app: &App, damage: &Damage) -> Answer<Option<LoadedChange>> {
    let shown = shown_readings(damage);
    let [first, last] = shown[..] else { return Ok(None) };
    let Ok(compared) = compared(app, first, last).await else { return Ok(None) };
    let series = series_of(app, damage).await?;
    let step = |one: SeriesReading| (one.created, one.entry, one.kept.deviation);
    Ok(Some(LoadedChange { compared, series: series.into_iter().map(step).collect() }))
}

/// What the metal of a reading holds, where somebody asked.
async fn metal(app: &App, reading: Uuid) -> Answer<Option<(MetalFile, [Vec<u8>; 2])>> {
    let Some(facts) = known(app, reading).await? else { return Ok(None) };
    let maps = [app.store.metal_map(reading, "stretch").await?, app.store.metal_map(reading, "tension").await?];
    Ok(Some((facts, maps)))
}

/// The first and the last reading of a damage: how it was and how it is.
fn shown_readings(damage: &Damage) -> Vec<Uuid> {
    let mut readings: Vec<_> = damage.captures.iter().flat_map(|capture| &capture.readings).collect();
    readings.sort_by_key(|reading| reading.created);
    let mut shown: Vec<Uuid> = readings.first().into_iter().chain(readings.last()).map(|reading| reading.id).collect();
    shown.dedup();
    shown
}
