//! The promised jobs as a calendar file.

use crate::app::App;
use crate::trouble::{Answer, Trouble};
use axum::extract::State;
use axum::http::header;
use axum::response::{IntoResponse, Response};
use dentwright_job::{Job, Stage};
use dentwright_report::{CALENDAR_MEDIA, PromisedFor, PromisedJob, calendar};
use jiff::tz::TimeZone;

/// Promised jobs that were not handed over yet, as a calendar (RFC 5545) in the shop's language.
#[utoipa::path(get, path = "/api/calendar.ics", operation_id = "calendar",
    responses((status = 200, content_type = "text/calendar")))]
pub async fn get(State(app): State<App>) -> Answer<Response> {
    let (shop, jobs) = (app.store.shop().await?, app.store.jobs().await?);
    let promised: Vec<PromisedJob> = jobs
        .iter()
        .filter(|job| job.stage != Stage::HandedOver)
        .filter_map(|job| promised(job, &TimeZone::system()))
        .collect();
    let language = crate::report_data::language_of(&shop);
    let file = calendar(&shop.name, &promised, app.now(), language).map_err(|why| Trouble::own("the calendar", why))?;
    let heads =
        [(header::CONTENT_TYPE, CALENDAR_MEDIA), (header::CONTENT_DISPOSITION, "inline; filename=\"promised.ics\"")];
    Ok((heads, file).into_response())
}

fn promised(job: &Job, zone: &TimeZone) -> Option<PromisedJob> {
    let day = job.promised?;
    let moment = job
        .promised_time
        .and_then(|time| jiff::civil::DateTime::from_parts(day, time).to_zoned_datetime(zone.clone()).ok());
    let car = [job.car.title(), job.car.plate.clone()].into_iter().filter(|text| !text.is_empty()).collect::<Vec<_>>();
    Some(PromisedJob {
        id: job.id.to_string(),
        number: job.number.clone(),
        when: moment.map_or(PromisedFor::Day(day), |moment| PromisedFor::Moment(moment.timestamp())),
        car: car.join(", "),
        customer: job.customer.name.clone(),
        phone: job.customer.phone.clone(),
        place: job.place.clone(),
        stage: job.stage.code().to_owned(),
        dents: job.dent_count(),
        notes: job.notes.clone(),
    })
}
