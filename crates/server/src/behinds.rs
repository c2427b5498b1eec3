//! What is behind a damage, which tools of the shop reach a place of it, and those tools.

use crate::app::App;
use crate::changes::opened;
use crate::plan_work::{drawn, of_value, rack, value};
use crate::trouble::{Answer, At, Body, Trouble};
use axum::Json;
use axum::extract::State;
use axum::http::StatusCode;
use dentwright_plan::{Blocked, InnerSide, Levered, Rack, Reach, ReachSettings, access};
use dentwright_store::StoredBehind;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

/// Tools told for a place at most.
const MOST_REACHES: usize = 12;

/// What is behind a damage.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
pub struct BehindJson {
    /// The reading over which it was drawn; places are in its frame.
    reading: Uuid,
    /// The drawing.
    side: InnerSide,
}

/// A place that is to be reached.
#[derive(Debug, Deserialize, ToSchema)]
pub struct ReachAskedJson {
    /// The reading in whose frame the place is given.
    reading: Uuid,
    /// Place, mm.
    at_mm: [f64; 2],
}

/// What reaches a place.
#[derive(Debug, Serialize, ToSchema)]
pub struct ReachesJson {
    /// Tools that reach, squarest and strongest first.
    reaches: Vec<ReachJson>,
    /// What stood in the way of the others, most frequent first.
    blocked: Vec<Blocked>,
}

/// A tool that reaches.
#[derive(Debug, Serialize, ToSchema)]
pub struct ReachJson {
    /// Tool of the rack, and the tip on it.
    tool: String,
    tip: String,
    /// Wall and opening it goes through.
    through: [String; 2],
    /// Trim that must come off first.
    #[schema(required)]
    trim: Option<String>,
    /// Angle between its push and the panel's normal, degrees.
    off_square_deg: f64,
    /// What it gives.
    levered: Levered,
    /// Length of bar behind the wall, mm.
    inside_mm: f64,
    /// Corners of the bar as it stands ready, from the tip to the hand, mm; drawing's frame.
    stands_mm: Vec<[f64; 3]>,
}

/// What is behind a damage; nothing where it was not drawn.
#[utoipa::path(get, path = "/api/damages/{id}/behind", operation_id = "behind", params(("id" = Uuid, Path)),
    responses((status = 200, body = Option<BehindJson>), (status = 404, body = Trouble)))]
pub async fn get(State(app): State<App>, At(id): At<Uuid>) -> Answer<Json<Option<BehindJson>>> {
    app.store.damage(id).await?;
    let behind = app.store.behind(id).await?;
    let json = |one: StoredBehind| -> Answer<_> { Ok(BehindJson { reading: one.reading, side: of_value(one.side)? }) };
    Ok(Json(behind.map(json).transpose()?))
}

/// Keep what is behind a damage.
#[utoipa::path(put, path = "/api/damages/{id}/behind", operation_id = "draw_behind", params(("id" = Uuid, Path)),
    request_body = BehindJson,
    responses((status = 204), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn draw(State(app): State<App>, At(id): At<Uuid>, Body(drawn): Body<BehindJson>) -> Answer<StatusCode> {
    drawn.side.check().map_err(Trouble::entered)?;
    let (_, damage) = app.store.damage(id).await?;
    let own = damage.captures.iter().flat_map(|capture| &capture.readings).any(|one| one.id == drawn.reading);
    if !own {
        return Err(Trouble::unknown("this damage has no such reading"));
    }
    let behind = StoredBehind { reading: drawn.reading, side: value(&drawn.side)? };
    app.store.draw_behind(id, &behind).await?;
    Ok(StatusCode::NO_CONTENT)
}

/// Forget what was drawn behind a damage.
#[utoipa::path(delete, path = "/api/damages/{id}/behind", operation_id = "forget_behind", params(("id" = Uuid, Path)),
    responses((status = 204)))]
pub async fn forget(State(app): State<App>, At(id): At<Uuid>) -> Answer<StatusCode> {
    app.store.forget_behind(id).await?;
    Ok(StatusCode::NO_CONTENT)
}

/// Which tools of the shop reach a place from behind, and what stands in the way of the others.
#[utoipa::path(post, path = "/api/damages/{id}/reach", operation_id = "reach", params(("id" = Uuid, Path)),
    request_body = ReachAskedJson,
    responses((status = 200, body = ReachesJson), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn reach(
    State(app): State<App>,
    At(id): At<Uuid>,
    Body(asked): Body<ReachAskedJson>,
) -> Answer<Json<ReachesJson>> {
    let reading = opened(&app, asked.reading).await?;
    let drawn = drawn(&app, id, &reading).await?;
    let drawn = drawn.ok_or_else(|| Trouble::unknown("what is behind this damage was not drawn"))?;
    let rack = rack(&app).await?;
    let work = move || {
        let at = drawn.lies.carry(asked.at_mm);
        let found = access(&drawn.side, &rack, at, &ReachSettings::default()).map_err(Trouble::entered)?;
        let reaches = found.reaches.iter().take(MOST_REACHES).map(|one| reached(one, &rack)).collect();
        Ok(ReachesJson { reaches, blocked: found.blocked })
    };
    tokio::task::spawn_blocking(work).await.map_err(|why| Trouble::own("looking for a way", why))?.map(Json)
}

fn reached(one: &Reach, rack: &Rack) -> ReachJson {
    let tool = rack.tool.iter().find(|tool| tool.name == one.tool);
    let corners = tool.map(dentwright_plan::Tool::corners).unwrap_or_default();
    let stands = one.way.last().map(|pose| corners.iter().map(|c| (pose * c).into()).collect());
    ReachJson {
        tool: one.tool.clone(),
        tip: one.tip.clone(),
        through: one.through.clone(),
        trim: one.trim.clone(),
        off_square_deg: one.off_square.to_degrees(),
        levered: one.levered.clone(),
        inside_mm: one.inside_mm,
        stands_mm: stands.unwrap_or_default(),
    }
}

/// The shop's tools; the starter rack until others were saved.
#[utoipa::path(get, path = "/api/rack", operation_id = "rack", responses((status = 200, body = Rack)))]
pub async fn tools(State(app): State<App>) -> Answer<Json<Rack>> {
    rack(&app).await.map(Json)
}

/// Save the shop's tools.
#[utoipa::path(put, path = "/api/rack", operation_id = "save_rack", request_body = Rack,
    responses((status = 204), (status = 422, body = Trouble)))]
pub async fn save_tools(State(app): State<App>, Body(rack): Body<Rack>) -> Answer<StatusCode> {
    rack.check().map_err(Trouble::entered)?;
    app.store.save_rack(Some(&value(&rack)?), app.now()).await?;
    Ok(StatusCode::NO_CONTENT)
}

/// Go back to the starter rack.
#[utoipa::path(delete, path = "/api/rack", operation_id = "starter_rack", responses((status = 204)))]
pub async fn forget_tools(State(app): State<App>) -> Answer<StatusCode> {
    app.store.save_rack(None, app.now()).await?;
    Ok(StatusCode::NO_CONTENT)
}
