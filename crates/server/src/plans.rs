//! Plans of readings, the moves made by them, and what the moves came to.

use crate::app::App;
use crate::metal::{MetalStateJson, suggested};
use crate::plan_json::{
    CameOfJson, CoolingAskedJson, CoolingJson, LookAgainJson, MadeMoveJson, PlanAskedJson, PlanJson, WorkJson,
    of_stored,
};
use crate::plan_work::{hand, of_value, tried, value, work, worked_out};
use crate::trouble::{Answer, At, Body, Trouble};
use axum::Json;
use axum::extract::{Query, State};
use axum::http::StatusCode;
use dentwright_flow::{CameOf, PlanFile, cooling};
use dentwright_sheet::{glues, metals, paints};
use dentwright_store::StoredMove;
use serde::Deserialize;
use uuid::Uuid;

/// Plan the repair from a reading.
#[utoipa::path(post, path = "/api/readings/{id}/plan", operation_id = "plan_repair", params(("id" = Uuid, Path)),
    request_body = PlanAskedJson,
    responses((status = 202), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn begin(State(app): State<App>, At(id): At<Uuid>, Body(asked): Body<PlanAskedJson>) -> Answer<StatusCode> {
    app.store.reading(id).await?;
    let on_file = |what: &str, name: &str, names: Vec<String>| match names.iter().any(|one| one == name) {
        true => Ok(()),
        false => Err(Trouble::entered(format!("no {what} on file is called {name}"))),
    };
    on_file("metal", &asked.metal, metals().into_iter().map(|row| row.name).collect())?;
    on_file("paint", &asked.paint, paints().into_iter().map(|row| row.name).collect())?;
    if let Some(glue) = &asked.glue {
        on_file("glue", glue, glues().into_iter().map(|row| row.name).collect())?;
    }
    let own = app.clone();
    app.plans.begin(id, move |under_way| async move { work(&own, id, asked, under_way).await });
    Ok(StatusCode::ACCEPTED)
}

/// The plan of a reading, or how far the work on it has come.
#[utoipa::path(get, path = "/api/readings/{id}/plan", operation_id = "plan", params(("id" = Uuid, Path)),
    responses((status = 200, body = PlanJson), (status = 404, body = Trouble)))]
pub async fn get(State(app): State<App>, At(id): At<Uuid>) -> Answer<Json<PlanJson>> {
    let reading = app.store.reading(id).await?;
    let (job, damage) = app.store.damage(reading.damage).await?;
    let suggested = suggested(app.store.job(job).await?.car.metal(damage.panel));
    let under_way = app.plans.of(id);
    let stored = app.store.plan(id).await?;
    let plan: Option<PlanFile> = stored.as_ref().and_then(|plan| worked_out(plan.file.clone()));
    let (state, fraction, error) = match under_way {
        Some(work) if work.failed.is_some() => (MetalStateJson::Failed, work.fraction(), work.failed),
        Some(work) => (MetalStateJson::Running, work.fraction(), None),
        None if plan.is_some() => (MetalStateJson::Done, 1.0, None),
        None => (MetalStateJson::None, 0.0, None),
    };
    let asked = match &stored {
        Some(plan) => Some(of_value(plan.asked.clone())?),
        None => asked_last(&app, reading.damage).await?,
    };
    let came_of = stored.as_ref().and_then(|plan| plan.came_of.clone());
    let came_of = came_of.and_then(worked_out::<CameOf>).map(CameOfJson::from);
    Ok(Json(PlanJson { state, fraction, error, plan, asked, suggested, came_of }))
}

/// What the damage's last plan was asked from, the spot apart: the next reading has others.
async fn asked_last(app: &App, damage: Uuid) -> Answer<Option<PlanAskedJson>> {
    let (_, whole) = app.store.damage(damage).await?;
    let mut plans = Vec::new();
    for reading in whole.captures.iter().flat_map(|capture| &capture.readings) {
        plans.extend(app.store.plan(reading.id).await?);
    }
    let last = plans.into_iter().max_by_key(|plan| plan.created);
    let asked = last.map(|plan| of_value::<PlanAskedJson>(plan.asked)).transpose()?;
    Ok(asked.map(|asked| PlanAskedJson { spot: None, ..asked }))
}

/// Stop the work on a plan; an earlier one stays.
#[utoipa::path(delete, path = "/api/readings/{id}/plan", operation_id = "cancel_plan", params(("id" = Uuid, Path)),
    responses((status = 204), (status = 404, body = Trouble)))]
pub async fn cancel(State(app): State<App>, At(id): At<Uuid>) -> Answer<StatusCode> {
    app.store.reading(id).await?;
    app.plans.cancel(id);
    Ok(StatusCode::NO_CONTENT)
}

/// Note a move that was made after a reading.
#[utoipa::path(post, path = "/api/readings/{id}/moves", operation_id = "note_move", params(("id" = Uuid, Path)),
    request_body = MadeMoveJson,
    responses((status = 201), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn note(State(app): State<App>, At(id): At<Uuid>, Body(made): Body<MadeMoveJson>) -> Answer<StatusCode> {
    if let Some(wrong) = made.wrong() {
        return Err(Trouble::entered(wrong));
    }
    let noted = StoredMove { id: made.id, reading: id, made: made.made, what: value(&made)? };
    app.store.note_move(&noted).await?;
    Ok(StatusCode::CREATED)
}

/// Take a noted move back.
#[utoipa::path(delete, path = "/api/moves/{id}", operation_id = "take_back_move", params(("id" = Uuid, Path)),
    responses((status = 204)))]
pub async fn take_back(State(app): State<App>, At(id): At<Uuid>) -> Answer<StatusCode> {
    app.store.take_back_move(id).await?;
    Ok(StatusCode::NO_CONTENT)
}

/// Whose work is meant.
#[derive(Debug, Deserialize)]
pub struct Whose {
    technician: Option<Uuid>,
}

/// The work on a damage: moves, what is known of the hand, when to look again.
#[utoipa::path(get, path = "/api/damages/{id}/work", operation_id = "work",
    params(("id" = Uuid, Path), ("technician" = Option<Uuid>, Query)),
    responses((status = 200, body = WorkJson), (status = 404, body = Trouble)))]
pub async fn of_damage(
    State(app): State<App>,
    At(id): At<Uuid>,
    Query(Whose { technician }): Query<Whose>,
) -> Answer<Json<WorkJson>> {
    let look_again = app.store.look_again(id).await?;
    let moves = app.store.made_moves(id).await?.into_iter().map(of_stored).collect::<Answer<Vec<_>>>()?;
    let known = hand(&app, id, Uuid::nil(), technician).await?;
    let mut count = 0;
    for plan in app.store.plans().await? {
        count += tried(&plan, technician)?.len();
    }
    let (mean, sigma) = (known.mean(), known.sigma());
    let hand = [[mean[0], sigma[0]], [mean[1], sigma[1]]];
    Ok(Json(WorkJson { moves, hand, tried: count, look_again }))
}

/// Set the day on which a damage is to be read again, or call it off.
#[utoipa::path(put, path = "/api/damages/{id}/look-again", operation_id = "look_again", params(("id" = Uuid, Path)),
    request_body = LookAgainJson, responses((status = 204), (status = 404, body = Trouble)))]
pub async fn look_again(
    State(app): State<App>,
    At(id): At<Uuid>,
    Body(asked): Body<LookAgainJson>,
) -> Answer<StatusCode> {
    app.store.set_look_again(id, asked.due).await?;
    Ok(StatusCode::NO_CONTENT)
}

/// How long a warmed panel stays warm enough.
#[utoipa::path(post, path = "/api/cooling", operation_id = "cooling", request_body = CoolingAskedJson,
    responses((status = 200, body = CoolingJson), (status = 422, body = Trouble)))]
pub async fn cool(Body(asked): Body<CoolingAskedJson>) -> Answer<Json<CoolingJson>> {
    let row = metals().into_iter().find(|row| row.name == asked.metal);
    let row = row.ok_or_else(|| Trouble::entered(format!("no metal on file is called {}", asked.metal)))?;
    let thickness = asked.thickness_mm.unwrap_or(row.thickness_mm.likely);
    let CoolingAskedJson { from_c, to_c, room_c, .. } = asked;
    let sane = [from_c, to_c, room_c].iter().all(|c| (-30.0..=150.0).contains(c));
    if !sane || !(0.3..=3.0).contains(&thickness) {
        return Err(Trouble::entered("a panel is 0.3 to 3 mm thick and has -30 to 150 °C"));
    }
    let paint = paints().swap_remove(0);
    let found = tokio::task::spawn_blocking(move || cooling(&row, &paint, thickness, [from_c, to_c, room_c])).await;
    let found = found.map_err(|why| Trouble::own("reckoning how it cools", why))?;
    Ok(Json(CoolingJson { seconds: found.map(|range| range.low), likely: found.map(|range| range.likely) }))
}
