//! A customer's data: what would go and what stays, said before; ordered, called off, done.

use crate::app::App;
use crate::paper_issue::pack_of;
use crate::trouble::{Answer, At, Body, Trouble};
use axum::Json;
use axum::extract::State;
use axum::http::StatusCode;
use dentwright_job::{Customer, Job, Stage};
use jiff::civil::{Date, date};
use jiff::tz::TimeZone;
use jiff::{SignedDuration, Timestamp};
use serde::{Deserialize, Serialize};
use std::time::Duration;
use utoipa::ToSchema;
use uuid::Uuid;

/// Time in which an order can be called off: long enough to notice a slip of the finger. Common practice, no
/// published source.
const GRACE: SignedDuration = SignedDuration::from_mins(10);
/// How often the record is looked through for what is due.
const EVERY: Duration = Duration::from_secs(20);

/// What the erasure of a customer's data takes, and what it leaves.
#[derive(Debug, Serialize, ToSchema)]
pub struct ErasurePlan {
    customer: Customer,
    /// Jobs under this name, the asked one first.
    jobs: Vec<ErasureJob>,
    /// Whole years after the year of issue in which numbered papers are kept.
    keep_years: u32,
    /// Where the years come from.
    keep_source: String,
    /// When it will be done, where it was ordered for the asked job.
    #[schema(value_type = Option<String>, format = DateTime, required)]
    due: Option<Timestamp>,
    /// When it was done.
    #[schema(value_type = Option<String>, format = DateTime, required)]
    done: Option<Timestamp>,
}

/// A job of the customer.
#[derive(Debug, Serialize, ToSchema)]
pub struct ErasureJob {
    id: Uuid,
    number: String,
    car_title: String,
    plate: String,
    stage: Stage,
    /// Whether phone, mail or address say that it is the same person.
    same: bool,
    photos: usize,
    readings: usize,
    /// Papers without a number, which go.
    papers: usize,
    /// Papers with a number, which are kept.
    kept: Vec<KeptPaper>,
}

/// A paper that is kept.
#[derive(Debug, Serialize, ToSchema)]
pub struct KeptPaper {
    number: String,
    /// Last day on which it is kept.
    #[schema(value_type = String, format = Date)]
    until: Date,
}

/// Which jobs lose their customer's data.
#[derive(Debug, Deserialize, ToSchema)]
pub struct ErasureOrder {
    jobs: Vec<Uuid>,
}

/// When it will be done.
#[derive(Debug, Serialize, ToSchema)]
pub struct ErasureOrdered {
    #[schema(value_type = String, format = DateTime)]
    due: Timestamp,
}

/// What would go and what stays.
#[utoipa::path(get, path = "/api/jobs/{id}/erasure", operation_id = "erasure", params(("id" = Uuid, Path)),
    responses((status = 200, body = ErasurePlan), (status = 404, body = Trouble)))]
pub async fn plan(State(app): State<App>, At(id): At<Uuid>) -> Answer<Json<ErasurePlan>> {
    let (asked, state) = (app.store.job(id).await?, app.store.erasure(id).await?);
    let keep = &pack_of(&app.store.billing().await?.country, &app.store.shop().await?).keep;
    let named = |job: &Job| job.id != id && same_name(&job.customer, &asked.customer);
    let others: Vec<Job> = app.store.jobs().await?.into_iter().filter(named).collect();
    let mut jobs = Vec::new();
    for job in std::iter::once(&asked).chain(&others) {
        jobs.push(of_job(&app, job, &asked.customer, keep.years).await?);
    }
    let (keep_years, keep_source) = (keep.years, keep.source.clone());
    Ok(Json(ErasurePlan { customer: asked.customer, jobs, keep_years, keep_source, due: state.due, done: state.done }))
}

/// Order the erasure. It is done ten minutes later, by the shop itself, and can be called off until then.
#[utoipa::path(post, path = "/api/erasure", operation_id = "order_erasure", request_body = ErasureOrder,
    responses((status = 202, body = ErasureOrdered), (status = 404, body = Trouble)))]
pub async fn order(
    State(app): State<App>,
    Body(order): Body<ErasureOrder>,
) -> Answer<(StatusCode, Json<ErasureOrdered>)> {
    let due = app.now() + GRACE;
    app.store.order_erasure(&order.jobs, Some(due)).await?;
    Ok((StatusCode::ACCEPTED, Json(ErasureOrdered { due })))
}

/// Call an erasure off.
#[utoipa::path(delete, path = "/api/jobs/{id}/erasure", operation_id = "call_off_erasure", params(("id" = Uuid, Path)),
    responses((status = 204), (status = 404, body = Trouble), (status = 409, body = Trouble)))]
pub async fn call_off(State(app): State<App>, At(id): At<Uuid>) -> Answer<StatusCode> {
    if app.store.erasure(id).await?.done.is_some() {
        let next = "What is left of the job names nobody. A copy of the shop from before still holds it.";
        let message = "The customer's data of this job is gone already.";
        return Err(Trouble::new(StatusCode::CONFLICT, "erased", message, next));
    }
    app.store.order_erasure(&[id], None).await?;
    Ok(StatusCode::NO_CONTENT)
}

/// Does what is due from now on, until the shop closes.
pub async fn keep_at_it(app: App) {
    loop {
        if let Err(why) = do_due(&app, app.now()).await {
            tracing::error!("erasing what is due did not work, and is tried again: {}", why);
        }
        tokio::time::sleep(EVERY).await;
    }
}

/// Does what is due, and lets papers go whose time is over.
pub async fn do_due(app: &App, now: Timestamp) -> Answer<()> {
    for job in app.store.erasures_due(now).await? {
        let damages = app.store.job(job).await?.damages;
        let captures = damages.iter().flat_map(|damage| &damage.captures);
        app.reads.cancel_all(captures.filter_map(|capture| capture.task));
    }
    app.store.erase_due(now).await?;
    let country = app.store.billing().await?.country;
    if !country.is_empty() {
        let years = pack_of(&country, &app.store.shop().await?).keep.years;
        app.store.remove_old_papers(kept_since(now, years)).await?;
    }
    Ok(())
}

/// The first moment of the years whose papers are kept.
fn kept_since(now: Timestamp, years: u32) -> Timestamp {
    let year = now.to_zoned_datetime(TimeZone::system()).year() - i16::try_from(years).unwrap_or(i16::MAX / 2);
    let first = date(year.max(1), 1, 1).to_zoned_datetime(TimeZone::system());
    first.map_or(Timestamp::UNIX_EPOCH, |first| first.timestamp())
}

async fn of_job(app: &App, job: &Job, customer: &Customer, years: u32) -> Answer<ErasureJob> {
    let papers = app.store.papers(Some(job.id)).await?;
    let until = |issued: Timestamp| {
        let year = issued.to_zoned_datetime(TimeZone::system()).year();
        date(year.saturating_add(i16::try_from(years).unwrap_or(i16::MAX)).min(9999), 12, 31)
    };
    let kept = papers
        .iter()
        .filter_map(|paper| Some(KeptPaper { number: paper.number.clone()?, until: until(paper.created) }));
    let kept: Vec<KeptPaper> = kept.collect();
    let captures = || job.damages.iter().flat_map(|damage| &damage.captures);
    Ok(ErasureJob {
        id: job.id,
        number: job.number.clone(),
        car_title: job.car.title(),
        plate: job.car.plate.clone(),
        stage: job.stage,
        same: same_person(&job.customer, customer),
        photos: job.damages.iter().map(|damage| damage.photos.len()).sum::<usize>()
            + captures().map(|capture| capture.files.len()).sum::<usize>(),
        readings: captures().map(|capture| capture.readings.len()).sum(),
        papers: papers.len() - kept.len(),
        kept,
    })
}

fn plain(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase()
}

fn same_name(a: &Customer, b: &Customer) -> bool {
    !a.name.trim().is_empty() && plain(&a.name) == plain(&b.name)
}

/// The same name, and something beside it that is the same and not empty.
fn same_person(a: &Customer, b: &Customer) -> bool {
    let beside = [(&a.phone, &b.phone), (&a.email, &b.email), (&a.address, &b.address)];
    same_name(a, b) && beside.iter().any(|(a, b)| !a.trim().is_empty() && plain(a) == plain(b))
}
