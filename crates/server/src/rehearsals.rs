//! Rehearsals of learners on simulated panels.

use crate::app::App;
use crate::rehearsal_json::{
    ChangedJson, ClaimedJson, ClaimsJson, LeanJson, LevelJson, MadeJson, NewRehearsalJson, RehearsalJson, RehearsalRow,
    WarmJson, told, told_level,
};
use crate::rehearsal_work::{Play, as_json, of_json};
use crate::trouble::{Answer, At, Body, Trouble};
use axum::Json;
use axum::extract::State;
use axum::http::StatusCode;
use dentwright_plan::{Claim, LinesOver, Rehearsal, Score, Touch, levels, lines_over, read_right};
use dentwright_sheet::Tip;
use dentwright_store::StoredRehearsal;
use dentwright_surface::Map;
use uuid::Uuid;

/// A panel is warmed to this at most, °C: a shop's working range ends at 52, common practice, no published source.
const WARMEST_C: f64 = 60.0;
const MOST_LEARNER: usize = 80;
const MOST_CLAIMS: usize = 20;
const MOST_MOVES: usize = 200;

/// Levels to rehearse on.
#[utoipa::path(get, path = "/api/rehearsal-levels", operation_id = "rehearsal_levels",
    responses((status = 200, body = [LevelJson])))]
pub async fn level_list() -> Json<Vec<LevelJson>> {
    Json(levels().into_iter().map(told_level).collect())
}

/// Ended rehearsals, newest first.
#[utoipa::path(get, path = "/api/rehearsals", operation_id = "rehearsals", responses((status = 200, body = [RehearsalRow])))]
pub async fn list(State(app): State<App>) -> Answer<Json<Vec<RehearsalRow>>> {
    let row = |one: StoredRehearsal| {
        let ended = one.ended.unwrap_or(one.begun).to_string();
        let score = of_json(one.score.unwrap_or_default())?;
        Ok(RehearsalRow { id: one.id, learner: one.learner, level: one.level, ended, score })
    };
    app.store.rehearsals().await?.into_iter().map(row).collect::<Answer<Vec<_>>>().map(Json)
}

/// Begin a rehearsal.
#[utoipa::path(post, path = "/api/rehearsals", operation_id = "begin_rehearsal", request_body = NewRehearsalJson,
    responses((status = 201, body = RehearsalJson), (status = 422, body = Trouble)))]
pub async fn begin(
    State(app): State<App>,
    Body(asked): Body<NewRehearsalJson>,
) -> Answer<(StatusCode, Json<RehearsalJson>)> {
    let learner = asked.learner.trim().to_owned();
    if learner.is_empty() || learner.chars().count() > MOST_LEARNER {
        return Err(Trouble::entered(format!("a learner's name has 1 to {MOST_LEARNER} letters")));
    }
    let level = levels().into_iter().find(|level| level.name == asked.level);
    let level = level.ok_or_else(|| Trouble::entered(format!("there is no level called {}", asked.level)))?;
    let now = app.now();
    let seed = asked.seed.map_or_else(|| now.as_millisecond().unsigned_abs() % 1_000_000, u64::from);
    let begun = Play::begin(level, seed).await?;
    let start = begun.deviation().to_npy();
    let id = app.store.begin_rehearsal(&learner, &begun.level.name, seed, &start, now).await?;
    let stored = app.store.rehearsal(id).await?;
    let told = told(&stored, &begun);
    app.rehearsals.keep(id, begun);
    Ok((StatusCode::CREATED, Json(told?)))
}

/// A rehearsal as it stands.
#[utoipa::path(get, path = "/api/rehearsals/{id}", operation_id = "rehearsal", params(("id" = Uuid, Path)),
    responses((status = 200, body = RehearsalJson), (status = 404, body = Trouble)))]
pub async fn get(State(app): State<App>, At(id): At<Uuid>) -> Answer<Json<RehearsalJson>> {
    let stored = app.store.rehearsal(id).await?;
    let play = app.rehearsals.of(&app.store, id).await?;
    let play = play.lock().await;
    told(&stored, &play).map(Json)
}

/// Lean a tip on: the lines show where it stands. Nothing of it stays.
#[utoipa::path(post, path = "/api/rehearsals/{id}/lean", operation_id = "lean", params(("id" = Uuid, Path)),
    request_body = LeanJson,
    responses((status = 200, body = ChangedJson), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn lean(State(app): State<App>, At(id): At<Uuid>, Body(asked): Body<LeanJson>) -> Answer<Json<ChangedJson>> {
    if !(0.0..=1.0).contains(&asked.lift_mm) {
        return Err(Trouble::entered("a tip leans on with 0 to 1 mm of lift"));
    }
    sound_tip(&asked.tip)?;
    let play = app.rehearsals.of(&app.store, id).await?;
    let at = [asked.x_mm, asked.y_mm];
    let leant = play.with(move |play| play.lean(asked.kind, at, asked.tip, asked.lift_mm)).await?;
    Ok(Json(ChangedJson { change_mm: leant.map(|lean| lean.change_mm) }))
}

/// What a move would leave, at once and only about; to be shown until the move itself is solved.
#[utoipa::path(post, path = "/api/rehearsals/{id}/foretell", operation_id = "foretell_move", params(("id" = Uuid, Path)),
    request_body = Touch,
    responses((status = 200, body = ChangedJson), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn foretell(State(app): State<App>, At(id): At<Uuid>, Body(touch): Body<Touch>) -> Answer<Json<ChangedJson>> {
    sound_touch(&touch)?;
    let play = app.rehearsals.of(&app.store, id).await?;
    let change = play.with(move |play| play.quick(&touch)).await?;
    Ok(Json(ChangedJson { change_mm: change.map(|map| map.values) }))
}

/// Make a move.
#[utoipa::path(post, path = "/api/rehearsals/{id}/moves", operation_id = "rehearse_move", params(("id" = Uuid, Path)),
    request_body = Touch,
    responses((status = 200, body = MadeJson), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn make(State(app): State<App>, At(id): At<Uuid>, Body(touch): Body<Touch>) -> Answer<Json<MadeJson>> {
    sound_touch(&touch)?;
    open(&app, id).await?;
    let play = app.rehearsals.of(&app.store, id).await?;
    let mut play = play.lock_owned().await;
    if play.made.len() >= MOST_MOVES {
        return Err(Trouble::entered(format!("{MOST_MOVES} moves are enough for one panel")));
    }
    let (play, made) = tokio::task::spawn_blocking(move || {
        let made = play.make(&touch);
        (play, made)
    })
    .await
    .map_err(|why| Trouble::own("making the move", why))?;
    let deviation = play.deviation();
    app.store.keep_rehearsed(id, &as_json(&play.made)?, play.made.len(), &deviation.to_npy()).await?;
    Ok(Json(MadeJson { made, deviation_mm: deviation.values }))
}

/// Warm the panel, or let it cool.
#[utoipa::path(put, path = "/api/rehearsals/{id}/temperature", operation_id = "warm", params(("id" = Uuid, Path)),
    request_body = WarmJson,
    responses((status = 204), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn warm(State(app): State<App>, At(id): At<Uuid>, Body(asked): Body<WarmJson>) -> Answer<StatusCode> {
    if !(-20.0..=WARMEST_C).contains(&asked.temperature_c) {
        return Err(Trouble::entered(format!("a panel is warmed to {WARMEST_C:.0} °C at most")));
    }
    open(&app, id).await?;
    app.rehearsals.of(&app.store, id).await?.lock().await.temperature_c = asked.temperature_c;
    Ok(StatusCode::NO_CONTENT)
}

/// Say what the lines tell, before the work; answered with what is so, and how the lines look there.
#[utoipa::path(put, path = "/api/rehearsals/{id}/claims", operation_id = "claim", params(("id" = Uuid, Path)),
    request_body = ClaimsJson,
    responses((status = 200, body = [ClaimedJson]), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn claim(
    State(app): State<App>,
    At(id): At<Uuid>,
    Body(asked): Body<ClaimsJson>,
) -> Answer<Json<Vec<ClaimedJson>>> {
    let numbers = asked.claims.iter().flat_map(|claim| [claim.x_mm, claim.y_mm]);
    let far = [asked.board_mm, asked.eye_mm].iter().all(|mm| (50.0..=10_000.0).contains(mm));
    if asked.claims.len() > MOST_CLAIMS || !far || !numbers.chain([asked.across_rad]).all(f64::is_finite) {
        return Err(Trouble::entered(format!(
            "say what at most {MOST_CLAIMS} places are, from a board and an eye before the panel"
        )));
    }
    open(&app, id).await?;
    let play = app.rehearsals.of(&app.store, id).await?;
    let mut play = play.lock().await;
    if !play.made.is_empty() {
        return Err(Trouble::entered("the panel is read before the first move"));
    }
    play.claims.clone_from(&asked.claims);
    app.store.keep_claims(id, &as_json(&play.claims)?).await?;
    let map = play.deviation();
    let right = read_right(&play.claims, &map, 1e-3 * play.level.finish_um);
    let told = |(claim, right): (&Claim, bool)| {
        let bend = bend(&map, claim, asked.across_rad);
        let LinesOver { width, turned } = lines_over(bend, asked.board_mm, asked.eye_mm);
        ClaimedJson { claim: *claim, right, width, turned }
    };
    Ok(Json(play.claims.iter().zip(right).map(told).collect()))
}

/// End a rehearsal: the score.
#[utoipa::path(post, path = "/api/rehearsals/{id}/end", operation_id = "end_rehearsal", params(("id" = Uuid, Path)),
    responses((status = 200, body = Score), (status = 404, body = Trouble)))]
pub async fn end(State(app): State<App>, At(id): At<Uuid>) -> Answer<Json<Score>> {
    let play = app.rehearsals.of(&app.store, id).await?;
    let score = play.lock().await.score();
    app.store.end_rehearsal(id, &as_json(&score)?, app.now()).await?;
    app.rehearsals.forget(id);
    Ok(Json(score))
}

/// How the panel stood after so many moves, for a replay.
#[utoipa::path(get, path = "/api/rehearsals/{id}/steps/{step}", operation_id = "rehearsal_step",
    params(("id" = Uuid, Path), ("step" = usize, Path)),
    responses((status = 200, body = [f32]), (status = 404, body = Trouble)))]
pub async fn step(State(app): State<App>, At((id, step)): At<(Uuid, usize)>) -> Answer<Json<Vec<f32>>> {
    let bytes = app.store.rehearsal_step(id, step).await?;
    let map = Map::from_npy(Rehearsal::grid(), &bytes).map_err(|why| Trouble::own("reading a step", why))?;
    Ok(Json(map.values))
}

/// An ended rehearsal is only looked at.
async fn open(app: &App, id: Uuid) -> Answer<()> {
    match app.store.rehearsal(id).await?.ended {
        Some(_) => Err(Trouble::entered("this rehearsal is over; begin another")),
        None => Ok(()),
    }
}

fn sound_touch(touch: &Touch) -> Answer<()> {
    let half = -Rehearsal::grid().x0_mm;
    if !(touch.x_mm.abs() <= half && touch.y_mm.abs() <= half) {
        return Err(Trouble::entered("the tip is off the panel"));
    }
    if !(touch.travel_mm > 0.0 && touch.travel_mm <= 12.0) {
        return Err(Trouble::entered("a travel is above 0 and at most 12 mm"));
    }
    sound_tip(&touch.tip)
}

fn sound_tip(tip: &Tip) -> Answer<()> {
    match *tip {
        Tip::Sphere { radius_mm } | Tip::Disc { radius_mm } if (3.0..=40.0).contains(&radius_mm) => Ok(()),
        _ => Err(Trouble::entered("a tip here is a ball or a disc of 3 to 40 mm in radius")),
    }
}

/// Cells over which a bend is taken, each way.
const BEND_CELLS: f64 = 3.0;

/// How much more hollow a place is than the intended surface, across the lines, 1/mm.
fn bend(map: &Map, claim: &Claim, across_rad: f64) -> f64 {
    let far = BEND_CELLS * map.grid.step_mm;
    let (dx, dy) = (far * across_rad.cos(), far * across_rad.sin());
    let at = |k: f64| map.sample(claim.x_mm + k * dx, claim.y_mm + k * dy).unwrap_or(0.0);
    (at(-1.0) - 2.0 * at(0.0) + at(1.0)) / far.powi(2)
}
