//! The quote of a job.

use crate::app::App;
use crate::trouble::{Answer, At, Body, Trouble};
use axum::Json;
use axum::extract::State;
use dentwright_job::{Job, Pricing, Shop, quote_input};
use dentwright_price::{Hours, HoursSettings, Quote, hours};
use serde::Serialize;
use utoipa::ToSchema;
use uuid::Uuid;

/// What was entered and what comes of it.
#[derive(Debug, Serialize, ToSchema)]
pub struct QuoteAnswer {
    /// What was entered beside the dents.
    input: Pricing,
    quote: Quote,
    /// Hours of each dent line, with what made them.
    dent_hours: Vec<DentHours>,
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
    pub fn of(job: &Job, shop: &Shop, settings: &HoursSettings) -> Answer<Self> {
        let whole = quote_input(job, shop);
        let quote = dentwright_price::quote(&whole, settings).map_err(Trouble::entered)?;
        let dent_hours =
            whole.dents.iter().map(|line| DentHours { what: line.what.clone(), hours: hours(&line.dent, settings) });
        let input = job.pricing.clone().unwrap_or_else(|| Pricing::of_shop(shop));
        Ok(Self { input, quote, dent_hours: dent_hours.collect() })
    }

    /// The quote alone.
    pub fn into_quote(self) -> Quote {
        self.quote
    }
}

/// The quote of a job as it stands; none where what was entered gives none.
pub async fn of_job(app: &App, job: &Job, shop: &Shop) -> Answer<Option<Quote>> {
    let settings = app.store.hours().await?;
    Ok(QuoteAnswer::of(job, shop, &settings).ok().map(QuoteAnswer::into_quote))
}

/// The quote of a job.
#[utoipa::path(get, path = "/api/jobs/{id}/quote", operation_id = "quote", params(("id" = Uuid, Path)),
    responses((status = 200, body = QuoteAnswer), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn get(State(app): State<App>, At(id): At<Uuid>) -> Answer<Json<QuoteAnswer>> {
    let (job, shop, settings) = (app.store.job(id).await?, app.store.shop().await?, app.store.hours().await?);
    Ok(Json(QuoteAnswer::of(&job, &shop, &settings)?))
}

/// Change what the quote is made from. What gives no quote is not saved.
#[utoipa::path(put, path = "/api/jobs/{id}/quote", operation_id = "save_quote", params(("id" = Uuid, Path)),
    request_body = Pricing,
    responses((status = 200, body = QuoteAnswer), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn put(State(app): State<App>, At(id): At<Uuid>, Body(input): Body<Pricing>) -> Answer<Json<QuoteAnswer>> {
    let (shop, settings) = (app.store.shop().await?, app.store.hours().await?);
    let job = Job { pricing: Some(input.clone()), ..app.store.job(id).await? };
    let answer = QuoteAnswer::of(&job, &shop, &settings)?;
    app.store.save_pricing(id, &input, app.now()).await?;
    Ok(Json(answer))
}
