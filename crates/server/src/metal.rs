//! What the metal of a reading holds, and moves tried on it.

use crate::app::App;
use crate::metal_work::ReadingMaps;
use crate::readings::{facts, map};
use crate::trouble::{Answer, At, Body, Trouble};
use axum::Json;
use axum::extract::State;
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};
use dentwright_flow::{Asked, AskedError, Backing, MetalFile, MetalSettings, Tried, Warmed, Warmer, Warming, try_move};
use dentwright_price::Metal;
use dentwright_sheet::{HeatLimit, Range, glues, heat_limits, metals, paints};
use dentwright_surface::Grid;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

/// What is on file for the metal's questions.
#[derive(Debug, Serialize, ToSchema)]
pub struct OnFileJson {
    metals: Vec<MetalOnFileJson>,
    paints: Vec<NamedJson>,
    glues: Vec<NamedJson>,
    /// What is on or behind a panel that must not get too warm.
    heat_limits: Vec<HeatLimit>,
}

/// A metal on file.
#[derive(Debug, Serialize, ToSchema)]
pub struct MetalOnFileJson {
    name: String,
    says: String,
    thickness_mm: Range,
    yield_mpa: Range,
    source: String,
}

/// A row on file.
#[derive(Debug, Serialize, ToSchema)]
pub struct NamedJson {
    name: String,
    says: String,
    source: String,
}

/// What is asked of the metal.
#[derive(Debug, Deserialize, ToSchema)]
pub struct MetalAskedJson {
    /// Name of the metal on file.
    metal: String,
    /// Thickness as measured, mm; left out where it is not known.
    #[serde(default)]
    thickness_mm: Option<f64>,
    /// Place of the spot in the reading's list, from 0.
    spot: usize,
}

/// How far the work on a metal has come, and its answer.
#[derive(Debug, Serialize, ToSchema)]
pub struct MetalJson {
    state: MetalStateJson,
    /// Share done, 0 to 1.
    fraction: f64,
    /// Why there is no answer.
    #[schema(required)]
    error: Option<Trouble>,
    /// What the metal holds.
    #[schema(required)]
    facts: Option<MetalFile>,
    /// Metal on file that stands for what the car's record says.
    suggested: &'static str,
}

/// State of the work.
#[derive(Debug, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs)]
pub enum MetalStateJson {
    None,
    Running,
    Failed,
    Done,
}

/// Metals, paints and glues on file.
#[utoipa::path(get, path = "/api/metals", operation_id = "metals", responses((status = 200, body = OnFileJson)))]
pub async fn on_file() -> Json<OnFileJson> {
    let named = |name: String, says: String, source: String| NamedJson { name, says, source };
    Json(OnFileJson {
        metals: metals()
            .into_iter()
            .map(|m| MetalOnFileJson {
                name: m.name,
                says: m.says,
                thickness_mm: m.thickness_mm,
                yield_mpa: m.yield_mpa,
                source: m.source,
            })
            .collect(),
        paints: paints().into_iter().map(|p| named(p.name, p.says, p.source)).collect(),
        heat_limits: heat_limits(),
        glues: glues().into_iter().map(|g| named(g.name.clone(), g.name, g.source)).collect(),
    })
}

/// Work out what the metal round a spot of a reading holds.
#[utoipa::path(post, path = "/api/readings/{id}/metal", operation_id = "know_metal", params(("id" = Uuid, Path)),
    request_body = MetalAskedJson,
    responses((status = 202), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn begin(State(app): State<App>, At(id): At<Uuid>, Body(asked): Body<MetalAskedJson>) -> Answer<StatusCode> {
    let reading = app.store.reading(id).await?;
    let facts = facts(&reading)?;
    if !metals().iter().any(|row| row.name == asked.metal) {
        return Err(Trouble::entered(format!("no metal on file is called {}", asked.metal)));
    }
    if asked.thickness_mm.is_some_and(|t| !(0.3..=3.0).contains(&t)) {
        return Err(Trouble::entered("a panel's thickness is 0.3 to 3 mm"));
    }
    let spot = facts.spots.get(asked.spot).ok_or_else(|| Trouble::entered("this reading has no such spot"))?;
    let settings = MetalSettings {
        metal: asked.metal,
        thickness_mm: asked.thickness_mm,
        at_mm: [spot.spot.x_mm, spot.spot.y_mm],
        length_mm: spot.spot.length_mm,
    };
    let g = &facts.grid;
    let grid = Grid { x0_mm: g.x0_mm, y0_mm: g.y0_mm, step_mm: g.step_mm, nx: g.nx, ny: g.ny };
    let files = [
        map(&app, &reading, &facts.maps.height).await?,
        map(&app, &reading, &facts.maps.deviation).await?,
        map(&app, &reading, &facts.maps.sigma).await?,
    ];
    app.metals.begin(app.store.clone(), id, ReadingMaps { grid, files }, settings);
    Ok(StatusCode::ACCEPTED)
}

/// What the metal of a reading holds, or how far the work on it has come.
#[utoipa::path(get, path = "/api/readings/{id}/metal", operation_id = "metal", params(("id" = Uuid, Path)),
    responses((status = 200, body = MetalJson), (status = 404, body = Trouble)))]
pub async fn get(State(app): State<App>, At(id): At<Uuid>) -> Answer<Json<MetalJson>> {
    let reading = app.store.reading(id).await?;
    let (job, damage) = app.store.damage(reading.damage).await?;
    let suggested = suggested(app.store.job(job).await?.car.metal(damage.panel));
    let under_way = app.metals.queue.of(id);
    let facts = known(&app, id).await?;
    let (state, fraction, error) = match under_way {
        Some(work) if work.failed.is_some() => (MetalStateJson::Failed, work.fraction(), work.failed),
        Some(work) => (MetalStateJson::Running, work.fraction(), None),
        None if facts.is_some() => (MetalStateJson::Done, 1.0, None),
        None => (MetalStateJson::None, 0.0, None),
    };
    Ok(Json(MetalJson { state, fraction, error, facts, suggested }))
}

/// What the metal of a reading holds; none where nobody asked yet.
pub async fn known(app: &App, reading: Uuid) -> Answer<Option<MetalFile>> {
    let text = app.store.metal_facts(reading).await?;
    let parsed = text.map(|text| serde_json::from_str(&text)).transpose();
    parsed.map_err(|why| Trouble::own("understanding an earlier answer on the metal", why))
}

/// Stop the work on a reading's metal; what was known before stays.
#[utoipa::path(delete, path = "/api/readings/{id}/metal", operation_id = "cancel_metal", params(("id" = Uuid, Path)),
    responses((status = 204), (status = 404, body = Trouble)))]
pub async fn cancel(State(app): State<App>, At(id): At<Uuid>) -> Answer<StatusCode> {
    app.store.reading(id).await?;
    app.metals.queue.cancel(id);
    Ok(StatusCode::NO_CONTENT)
}

/// A map of what the metal holds: `stretch`, `tension`, `bent_outer`, `bent_inner`, `direction`, as NPY.
#[utoipa::path(get, path = "/api/readings/{id}/metal/maps/{name}", operation_id = "metal_map",
    params(("id" = Uuid, Path), ("name" = String, Path)),
    responses((status = 200, content_type = "application/octet-stream"), (status = 404, body = Trouble)))]
pub async fn map_file(State(app): State<App>, At((id, name)): At<(Uuid, String)>) -> Answer<Response> {
    let bytes = app.store.metal_map(id, &name).await?;
    Ok(([(header::CONTENT_TYPE, "application/octet-stream"), (header::CACHE_CONTROL, "no-store")], bytes)
        .into_response())
}

/// Try a move: what it lifts while held, what stays, the force, the paint, the glue, the bar.
#[utoipa::path(post, path = "/api/readings/{id}/metal/try", operation_id = "try_move", params(("id" = Uuid, Path)),
    request_body = Asked,
    responses((status = 200, body = Tried), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn try_one(State(app): State<App>, At(id): At<Uuid>, Body(asked): Body<Asked>) -> Answer<Json<Tried>> {
    let ready = app.metals.ready(&app.store, id).await?;
    let tried = tokio::task::spawn_blocking(move || try_move(&ready.dent, &ready.give, &asked)).await;
    let tried = tried.map_err(|why| Trouble::own("trying the move", why))?;
    Ok(Json(tried.map_err(|why: AskedError| Trouble::entered(why))?))
}

/// A spot that is to be warmed.
#[derive(Debug, Deserialize, ToSchema)]
pub struct WarmingAskedJson {
    /// Name of the metal on file.
    metal: String,
    /// Thickness, mm; left out for the metal's likely one.
    #[serde(default)]
    thickness_mm: Option<f64>,
    /// Name of the paint on file.
    paint: String,
    /// With what.
    with: Warmer,
    /// What lies on the back.
    backing: Backing,
    /// As it is now, °C.
    from_c: f64,
    /// As warm as it shall be, °C.
    to_c: f64,
    /// As cold as it may get again, °C.
    keep_c: f64,
    /// Names of the heat limits that apply beside the paint's.
    behind: Vec<String>,
}

/// How long to warm a spot, how long it stays warm, and what must not get so warm.
#[utoipa::path(post, path = "/api/warming", operation_id = "warming", request_body = WarmingAskedJson,
    responses((status = 200, body = Warmed), (status = 422, body = Trouble)))]
pub async fn warming(Body(asked): Body<WarmingAskedJson>) -> Answer<Json<Warmed>> {
    let metal = metals().into_iter().find(|row| row.name == asked.metal);
    let metal = metal.ok_or_else(|| Trouble::entered(format!("no metal on file is called {}", asked.metal)))?;
    let paint = paints().into_iter().find(|row| row.name == asked.paint);
    let paint = paint.ok_or_else(|| Trouble::entered(format!("no paint on file is called {}", asked.paint)))?;
    let thickness_mm = asked.thickness_mm.unwrap_or(metal.thickness_mm.likely);
    let WarmingAskedJson { with, backing, from_c, to_c, keep_c, behind, .. } = asked;
    let sane = [from_c, to_c, keep_c].iter().all(|c| (-30.0..=150.0).contains(c));
    if !sane || !(0.3..=3.0).contains(&thickness_mm) {
        return Err(Trouble::entered("a panel is 0.3 to 3 mm thick and has -30 to 150 °C"));
    }
    if !(to_c > keep_c && keep_c >= from_c) {
        return Err(Trouble::entered("it is warmed from what it has now to more than it shall keep"));
    }
    let work = move || {
        let (metal, paint, behind) = (&metal, &paint, &behind[..]);
        Warming { metal, thickness_mm, paint, with, backing, from_c, to_c, keep_c, behind }.answer()
    };
    let found = tokio::task::spawn_blocking(work).await;
    found.map(Json).map_err(|why| Trouble::own("reckoning how it warms", why))
}

/// The row on file that a word of the record stands for; the technician may choose another.
pub fn suggested(metal: Metal) -> &'static str {
    match metal {
        Metal::Steel => "steel_bh180_panel",
        Metal::HighStrengthSteel => "steel_dp500_panel",
        Metal::Aluminium => "aluminium_6016_panel",
    }
}
