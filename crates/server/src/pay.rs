//! The pay sheet of a period, on screen and as a table.

use crate::app::App;
use crate::books::Books;
use crate::tables::sent;
use crate::trouble::{Answer, Asked, Trouble};
use axum::Json;
use axum::extract::State;
use axum::response::Response;
use dentwright_job::{DoneJob, EntryState, Job, Pay, PayPeriod, PayRow, pay_sheet};
use dentwright_price::{QuoteInput, Split, UpliftOn, decimals};
use jiff::ToSpan;
use jiff::civil::Date;
use jiff::tz::TimeZone;
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};
use utoipa::{IntoParams, ToSchema};

/// The days that are asked for, both included, in the shop's own time.
#[derive(Debug, Clone, Copy, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
pub struct Days {
    #[param(value_type = String, format = Date)]
    from: Date,
    #[param(value_type = String, format = Date)]
    until: Date,
}

/// The pay sheet.
#[derive(Debug, Serialize, ToSchema)]
pub struct PaySheet {
    rows: Vec<PayRow>,
    currency: String,
    /// Numbers of jobs that were done within the period and on which nobody clocked: they are in no row.
    unclocked: Vec<String>,
    /// The same of jobs whose quote cannot be made, or is in another currency.
    unpriced: Vec<String>,
    /// Entries in doubt that began within the period: they count nowhere until they are set right.
    in_doubt: usize,
}

/// The pay sheet of a period.
#[utoipa::path(get, path = "/api/pay", operation_id = "pay", params(Days),
    responses((status = 200, body = PaySheet), (status = 422, body = Trouble)))]
pub async fn get(State(app): State<App>, Asked(days): Asked<Days>) -> Answer<Json<PaySheet>> {
    Ok(Json(sheet(&app, days).await?))
}

/// The same as a table (RFC 4180).
#[utoipa::path(get, path = "/api/pay.csv", operation_id = "pay_table", params(Days),
    responses((status = 200, content_type = "text/csv"), (status = 422, body = Trouble)))]
pub async fn table(State(app): State<App>, Asked(days): Asked<Days>) -> Answer<Response> {
    let sheet = sheet(&app, days).await?;
    let mut rows = vec![
        ["technician", "from", "until", "clocked_h", "jobs_done", "paid_by", "rate_or_percent", "pay", "currency"]
            .map(str::to_owned)
            .to_vec(),
    ];
    for row in &sheet.rows {
        let (by, rate) = match row.technician.pay {
            Pay::None => ("none", None),
            Pay::Hour { rate } => ("hour", Some(rate)),
            Pay::Share { percent } => ("share", Some(percent)),
        };
        let text = |value: Option<Decimal>| value.map(|value| value.to_string()).unwrap_or_default();
        rows.push(vec![
            row.technician.name.clone(),
            days.from.to_string(),
            days.until.to_string(),
            format!("{:.4}", row.clocked_s as f64 / 3600.0),
            row.jobs.len().to_string(),
            by.to_owned(),
            text(rate),
            text(row.pay),
            sheet.currency.clone(),
        ]);
    }
    sent(&format!("pay-{}-{}.csv", days.from, days.until), rows)
}

async fn sheet(app: &App, days: Days) -> Answer<PaySheet> {
    let period = period(days)?;
    let (books, now, entries) = (Books::open(app).await?, app.now(), app.store.times(None).await?);
    let currency = books.shop.currency.clone();
    let done = |job: &Job| job.finished.is_some_and(|at| period.from <= at && at < period.until);
    let (mut jobs, mut unpriced) = (Vec::new(), Vec::new());
    for job in app.store.jobs().await?.iter().filter(|job| done(job)) {
        match done_job(job, &books) {
            Some(priced) => jobs.push(priced),
            None => unpriced.push(job.number.clone()),
        }
    }
    let rows = pay_sheet(&app.store.crew().await?, &entries, &jobs, period, now, decimals(&currency));
    let clocked = |job: &DoneJob| entries.iter().any(|entry| entry.job == Some(job.id) && entry.counted_s(now) > 0);
    let unclocked = jobs.iter().filter(|job| !clocked(job)).map(|job| job.number.clone()).collect();
    let doubtful = |entry: &&dentwright_job::TimeEntry| {
        let within = period.from <= entry.started && entry.started < period.until;
        within && matches!(entry.state(now), EntryState::Backwards | EntryState::LeftRunning)
    };
    let in_doubt = entries.iter().filter(doubtful).count();
    Ok(PaySheet { rows, currency, unclocked, unpriced, in_doubt })
}

fn period(days: Days) -> Answer<PayPeriod> {
    let wrong = |why: &dyn std::fmt::Display| Trouble::entered(format!("these are no days of a pay sheet: {why}"));
    if days.until < days.from {
        return Err(wrong(&"they end before they begin"));
    }
    let start = |day: Date| day.to_zoned_datetime(TimeZone::system()).map(|zoned| zoned.timestamp());
    let after = days.until.checked_add(1.day()).map_err(|why| wrong(&why))?;
    let (from, until) = (start(days.from).map_err(|why| wrong(&why))?, start(after).map_err(|why| wrong(&why))?);
    Ok(PayPeriod { from, until })
}

/// A job with its labour; none where its quote cannot be made in the shop's currency.
fn done_job(job: &Job, books: &Books) -> Option<DoneJob> {
    let input = books.input(job);
    let quote = books.quote(&input).ok().filter(|quote| quote.currency == books.shop.currency)?;
    let split = quote.shares.map(|shares| shares.technician);
    let all = Split { technician_percent: Decimal::ONE_HUNDRED, on: UpliftOn::Labour };
    let mut pricing = input.pricing.clone();
    pricing.split = Some(all);
    let labour = books.quote(&QuoteInput { pricing, ..input }).ok()?.shares?.technician;
    Some(DoneJob { id: job.id, number: job.number.clone(), labour, split })
}
