//! Jobs: the list, taking in, changing, removing.

use crate::app::App;
use crate::books::Books;
use crate::job_json::{CarJson, JobJson};
use crate::trouble::{Answer, Asked, At, Body, Trouble};
use axum::Json;
use axum::extract::State;
use axum::http::StatusCode;
use dentwright_job::{Customer, Job, Stage};
use dentwright_store::NewJob;
use jiff::civil::{Date, Time};
use jiff::tz::TimeZone;
use rust_decimal::Decimal;
use serde::{Deserialize, Deserializer, Serialize};
use utoipa::{IntoParams, ToSchema};
use uuid::Uuid;

/// Which jobs are wanted; empty for all.
#[derive(Debug, Default, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
#[serde(default)]
pub struct Wanted {
    /// Words, each of which is part of a name, a plate, a car, a VIN, a job number, a place or a note.
    search: String,
    /// Code of a stage.
    stage: String,
}

/// A job in the list.
#[derive(Debug, Serialize, ToSchema)]
pub struct JobRow {
    id: Uuid,
    number: String,
    customer_name: String,
    car_title: String,
    plate: String,
    stage: Stage,
    #[schema(value_type = Option<String>, format = Date, required)]
    promised: Option<Date>,
    /// At what time of that day; none for any.
    #[schema(value_type = Option<String>, required)]
    promised_time: Option<Time>,
    /// Where the car stands.
    place: String,
    /// Whether somebody's clock runs on it.
    running: bool,
    damage_count: usize,
    /// Total of its quote with tax; none where nothing was entered yet.
    #[schema(required)]
    gross: Option<Decimal>,
    /// Currency of the total.
    #[schema(required)]
    currency: Option<String>,
}

/// A car that is taken in.
#[derive(Debug, Default, Deserialize, ToSchema)]
#[serde(default)]
pub struct NewJobJson {
    /// Made on a device without network; what comes again under it is the same job.
    id: Option<Uuid>,
    customer: Customer,
    car: CarJson,
    #[schema(value_type = Option<String>, format = Date)]
    promised: Option<Date>,
    #[schema(value_type = Option<String>)]
    promised_time: Option<Time>,
    place: String,
    notes: String,
}

/// What changes; a field that is left out stays as it is.
#[derive(Debug, Default, Deserialize, ToSchema)]
pub struct JobChange {
    stage: Option<Stage>,
    customer: Option<Customer>,
    car: Option<CarJson>,
    /// `null` takes the promise back.
    #[schema(value_type = Option<String>, format = Date)]
    #[serde(default, deserialize_with = "given")]
    promised: Option<Option<Date>>,
    /// `null` for any time of the day.
    #[schema(value_type = Option<String>)]
    #[serde(default, deserialize_with = "given")]
    promised_time: Option<Option<Time>>,
    place: Option<String>,
    notes: Option<String>,
}

/// Tells `null` from a field that is left out.
pub fn given<'de, D: Deserializer<'de>, T: Deserialize<'de>>(from: D) -> Result<Option<Option<T>>, D::Error> {
    Option::deserialize(from).map(Some)
}

/// The jobs, newest first.
#[utoipa::path(get, path = "/api/jobs", operation_id = "jobs", params(Wanted),
    responses((status = 200, body = [JobRow]), (status = 422, body = Trouble)))]
pub async fn list(State(app): State<App>, Asked(wanted): Asked<Wanted>) -> Answer<Json<Vec<JobRow>>> {
    let stage = match wanted.stage.as_str() {
        "" => None,
        code => Some(code.parse::<Stage>().map_err(Trouble::entered)?),
    };
    let books = Books::open(&app).await?;
    let jobs = app.store.jobs().await?;
    let running = app.store.running().await?;
    let search = wanted.search.to_lowercase();
    let wanted = jobs.into_iter().filter(|job| stage.is_none_or(|stage| job.stage == stage) && is_found(job, &search));
    let row = |job: Job| {
        let input = books.input(&job);
        let total = if input.dents.is_empty() { None } else { books.quote(&input).ok() };
        JobRow {
            id: job.id,
            car_title: job.car.title(),
            number: job.number,
            customer_name: job.customer.name,
            plate: job.car.plate,
            stage: job.stage,
            promised: job.promised,
            promised_time: job.promised_time,
            place: job.place,
            running: running.contains(&job.id),
            damage_count: job.damages.len(),
            currency: total.as_ref().map(|quote| quote.currency.clone()),
            gross: total.map(|quote| quote.gross),
        }
    };
    Ok(Json(wanted.map(row).collect()))
}

fn is_found(job: &Job, search: &str) -> bool {
    let vin = job.car.vin.as_ref().map_or("", |number| number.as_str());
    let (car, customer) = (job.car.title(), &job.customer);
    let mut texts = vec![&job.number, &customer.name, &customer.phone, &job.car.plate, &car, &job.place, &job.notes];
    texts.extend(job.damages.iter().map(|damage| &damage.note));
    let mut texts: Vec<String> = texts.into_iter().map(|text| text.to_lowercase()).collect();
    texts.push(vin.to_lowercase());
    // A plate is typed with and without its gaps.
    texts.push(texts[3].replace([' ', '-'], ""));
    search.split_whitespace().all(|word| texts.iter().any(|text| text.contains(word)))
}

/// Take a car in.
#[utoipa::path(post, path = "/api/jobs", operation_id = "take_in", request_body = NewJobJson,
    responses((status = 201, body = JobJson), (status = 422, body = Trouble)))]
pub async fn take_in(State(app): State<App>, Body(new): Body<NewJobJson>) -> Answer<(StatusCode, Json<JobJson>)> {
    let id = new.id.unwrap_or_else(Uuid::now_v7);
    let new = NewJob {
        customer: new.customer,
        car: new.car.into(),
        promised: new.promised,
        promised_time: new.promised_time,
        place: new.place,
        notes: new.notes,
    };
    let now = app.now();
    let year = now.to_zoned_datetime(TimeZone::system()).year();
    Ok((StatusCode::CREATED, Json(app.store.take_in_as(id, &new, now, year).await?.into())))
}

/// A job with everything below it.
#[utoipa::path(get, path = "/api/jobs/{id}", operation_id = "job", params(("id" = Uuid, Path)),
    responses((status = 200, body = JobJson), (status = 404, body = Trouble)))]
pub async fn get(State(app): State<App>, At(id): At<Uuid>) -> Answer<Json<JobJson>> {
    Ok(Json(app.store.job(id).await?.into()))
}

/// Change a job.
#[utoipa::path(patch, path = "/api/jobs/{id}", operation_id = "change_job", params(("id" = Uuid, Path)),
    request_body = JobChange, responses((status = 200, body = JobJson), (status = 404, body = Trouble)))]
pub async fn change(State(app): State<App>, At(id): At<Uuid>, Body(to): Body<JobChange>) -> Answer<Json<JobJson>> {
    let edit = move |head: &mut dentwright_store::JobHead| {
        head.stage = to.stage.unwrap_or(head.stage);
        head.promised = to.promised.unwrap_or(head.promised);
        head.promised_time = to.promised_time.unwrap_or(head.promised_time).filter(|_| head.promised.is_some());
        head.place = to.place.unwrap_or_else(|| std::mem::take(&mut head.place));
        if let Some(customer) = to.customer {
            head.customer = customer;
        }
        if let Some(car) = to.car {
            head.car = car.into();
        }
        if let Some(notes) = to.notes {
            head.notes = notes;
        }
    };
    Ok(Json(app.store.change_job(id, edit, app.now()).await?.into()))
}

/// Remove a job with everything below it.
#[utoipa::path(delete, path = "/api/jobs/{id}", operation_id = "remove_job", params(("id" = Uuid, Path)),
    responses((status = 204), (status = 404, body = Trouble)))]
pub async fn remove(State(app): State<App>, At(id): At<Uuid>) -> Answer<StatusCode> {
    for damage in app.store.job(id).await?.damages {
        app.reads.cancel_all(damage.captures.iter().filter_map(|capture| capture.task));
    }
    app.store.remove_job(id).await?;
    Ok(StatusCode::NO_CONTENT)
}
