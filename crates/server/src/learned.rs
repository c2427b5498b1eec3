//! What the shop's finished jobs have taught, and the worked time of a job.

use crate::app::App;
use crate::books::shop_hours;
use crate::trouble::{Answer, At, Body, Trouble};
use axum::Json;
use axum::extract::State;
use axum::http::StatusCode;
use dentwright_job::Job;
use dentwright_price::{Calibration, Coefficient, Conditions, Dent, FinishedJob, Foretold, Timed, calibration};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

/// What is known of the shop's hours.
#[derive(Debug, Serialize, ToSchema)]
pub struct LearnedAnswer {
    /// How many finished jobs it was learned from.
    jobs: u32,
    /// Spread of one dent's hours (standard deviation of their logarithm), its own.
    spread_own: f64,
    /// Spread that all dents of a car share.
    spread_shared: f64,
    coefficients: Vec<Coefficient>,
    /// How well finished jobs were predicted; none before the first.
    #[schema(required)]
    calibration: Option<Calibration>,
    /// The last jobs, newest first, with what was said of each before it was learned.
    foretold: Vec<Foretold>,
}

/// Worked time of a job: once for the whole job, or damage by damage.
#[derive(Debug, Deserialize, ToSchema)]
pub struct WorkedInput {
    times: Vec<WorkedTime>,
}

/// Worked time on the dents of one damage, or on all.
#[derive(Debug, Deserialize, ToSchema)]
pub struct WorkedTime {
    /// The damage; left out for the whole job.
    #[serde(default)]
    damage: Option<Uuid>,
    /// Worked time on its dents without R&I, s.
    worked_s: f64,
}

/// Jobs that are shown.
const SHOWN: usize = 100;

/// What was learned, and how well it has predicted.
#[utoipa::path(get, path = "/api/shop/hours/learned", operation_id = "learned",
    responses((status = 200, body = LearnedAnswer)))]
pub async fn get(State(app): State<App>) -> Answer<Json<LearnedAnswer>> {
    let hours = shop_hours(&app).await?;
    let [spread_own, spread_shared] = hours.learned.spreads();
    Ok(Json(LearnedAnswer {
        jobs: hours.learned.jobs(),
        spread_own,
        spread_shared,
        coefficients: hours.learned.coefficients(),
        calibration: calibration(&hours.foretold),
        foretold: hours.foretold.iter().rev().take(SHOWN).cloned().collect(),
    }))
}

/// Enter the worked time of a job; the hours are learned from it. Entering it again takes the earlier one's
/// place.
#[utoipa::path(put, path = "/api/jobs/{id}/worked", operation_id = "save_worked", params(("id" = Uuid, Path)),
    request_body = WorkedInput,
    responses((status = 200, body = Foretold), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn put(State(app): State<App>, At(id): At<Uuid>, Body(worked): Body<WorkedInput>) -> Answer<Json<Foretold>> {
    let job = app.store.job(id).await?;
    let finished = finished(&job, &worked)?;
    finished.check().map_err(Trouble::entered)?;
    app.store.save_finished(id, &finished, app.now()).await?;
    let hours = shop_hours(&app).await?;
    let said = hours.foretold.iter().find(|one| one.what == job.number).cloned();
    said.map(Json).ok_or_else(|| Trouble::own("learning the hours", "the job is not among those learned"))
}

/// Take the worked time of a job back; the hours forget it.
#[utoipa::path(delete, path = "/api/jobs/{id}/worked", operation_id = "remove_worked", params(("id" = Uuid, Path)),
    responses((status = 204), (status = 404, body = Trouble)))]
pub async fn remove(State(app): State<App>, At(id): At<Uuid>) -> Answer<StatusCode> {
    app.store.remove_finished(id).await?;
    Ok(StatusCode::NO_CONTENT)
}

fn finished(job: &Job, worked: &WorkedInput) -> Answer<FinishedJob> {
    let whole = worked.times.iter().any(|time| time.damage.is_none());
    let mut seen: Vec<_> = worked.times.iter().map(|time| time.damage).collect();
    seen.sort_unstable();
    seen.dedup();
    if seen.len() < worked.times.len() || whole && worked.times.len() > 1 {
        return Err(Trouble::entered(
            "a damage was timed twice; enter one time for the whole job, or one for each damage",
        ));
    }
    let timed = worked.times.iter().map(|time| {
        let dents = dents(job, time.damage)?;
        Ok(Timed { dents, worked_h: time.worked_s / 3600.0 })
    });
    let conditions = job.pricing.as_ref().map_or_else(Conditions::default, |pricing| pricing.conditions);
    Ok(FinishedJob { what: job.number.clone(), conditions, timed: timed.collect::<Answer<_>>()? })
}

/// Dents of a damage, or of all.
fn dents(job: &Job, damage: Option<Uuid>) -> Answer<Vec<Dent>> {
    if let Some(id) = damage.filter(|id| job.damages.iter().all(|damage| damage.id != *id)) {
        return Err(Trouble::unknown(format!("there is no damage {id} on this job")));
    }
    let wanted = job.damages.iter().filter(|one| damage.is_none_or(|id| id == one.id));
    Ok(wanted.flat_map(|damage| &damage.dents).map(|entry| entry.dent.clone()).collect())
}
