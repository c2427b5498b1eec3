//! The quote of a job.

use crate::app::App;
use crate::books::Books;
use crate::trouble::{Answer, At, Body, Trouble};
use axum::Json;
use axum::extract::{Query, State};
use axum::http::StatusCode;
use dentwright_job::Job;
use dentwright_price::{Foretold, Hours, Pricing, Quote, hours};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

/// What was entered and what comes of it.
#[derive(Debug, Serialize, ToSchema)]
pub struct QuoteAnswer {
    /// What was entered beside the dents.
    input: Pricing,
    /// When that was last saved; a save names it, so that two who edit one quote do not undo each other.
    saved: i64,
    quote: Quote,
    /// Hours of each dent line, with what made them.
    dent_hours: Vec<DentHours>,
    /// What was said of this job's hours before it was learned, and what was worked; none until its worked
    /// time is known.
    #[schema(required)]
    worked: Option<Foretold>,
}

/// Hours of a dent line.
#[derive(Debug, Serialize, ToSchema)]
pub struct DentHours {
    /// The panel's code.
    what: String,
    hours: Hours,
}

impl QuoteAnswer {
    /// The quote as it stands.
    pub fn of(job: &Job, books: &Books, saved: i64) -> Answer<Self> {
        let whole = books.input(job);
        let quote = books.quote(&whole).map_err(Trouble::entered)?;
        let (conditions, learned) = (&whole.pricing.conditions, &books.hours.learned);
        let dent_hours = whole
            .dents
            .iter()
            .map(|line| DentHours { what: line.what.clone(), hours: hours(&line.dent, conditions, learned) })
            .collect();
        let worked = books.hours.foretold.iter().find(|one| one.what == job.number).cloned();
        Ok(Self { input: whole.pricing, saved, quote, dent_hours, worked })
    }

    /// The quote alone.
    pub fn into_quote(self) -> Quote {
        self.quote
    }
}

/// The quote of a job as it stands; none where what was entered gives none.
pub async fn of_job(app: &App, job: &Job) -> Answer<Option<Quote>> {
    let books = Books::open(app).await?;
    Ok(QuoteAnswer::of(job, &books, 0).ok().map(QuoteAnswer::into_quote))
}

/// The quote of a job.
#[utoipa::path(get, path = "/api/jobs/{id}/quote", operation_id = "quote", params(("id" = Uuid, Path)),
    responses((status = 200, body = QuoteAnswer), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn get(State(app): State<App>, At(id): At<Uuid>) -> Answer<Json<QuoteAnswer>> {
    let (job, books) = (app.store.job(id).await?, Books::open(&app).await?);
    Ok(Json(QuoteAnswer::of(&job, &books, app.store.pricing_saved(id).await?)?))
}

/// Which save the entries began from.
#[derive(Debug, Deserialize)]
pub struct Since {
    since: Option<i64>,
}

/// Change what the quote is made from. What gives no quote is not saved, nor what another device has changed since.
#[utoipa::path(put, path = "/api/jobs/{id}/quote", operation_id = "save_quote",
    params(("id" = Uuid, Path), ("since" = Option<i64>, Query)),
    request_body = Pricing,
    responses((status = 200, body = QuoteAnswer), (status = 404, body = Trouble), (status = 409, body = Trouble),
        (status = 422, body = Trouble)))]
pub async fn put(
    State(app): State<App>,
    At(id): At<Uuid>,
    Query(Since { since }): Query<Since>,
    Body(input): Body<Pricing>,
) -> Answer<Json<QuoteAnswer>> {
    let books = Books::open(&app).await?;
    let job = Job { pricing: Some(input.clone()), ..app.store.job(id).await? };
    let now = app.now();
    let answer = QuoteAnswer::of(&job, &books, now.as_millisecond())?;
    if !app.store.save_pricing(id, &input, since, now).await? {
        let message = "This quote was changed on another device meanwhile.";
        let next = "Take over what was entered there, or keep what is entered here.";
        return Err(Trouble::new(StatusCode::CONFLICT, "quote_changed", message, next));
    }
    Ok(Json(answer))
}
