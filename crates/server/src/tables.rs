//! Jobs, dents and lines of quotes as tables for other programs (CSV, RFC 4180).
//!
//! Commas, CRLF, UTF-8, the names of the columns in the first line, decimals with a point, codes as in the API.

use crate::app::App;
use crate::books::Books;
use crate::trouble::{Answer, At, Trouble};
use axum::extract::State;
use axum::http::header;
use axum::response::{IntoResponse, Response};
use csv::{Terminator, WriterBuilder};
use dentwright_job::{Job, by_kind};
use dentwright_store::Store;
use std::fmt::Display;

/// `jobs.csv`, `dents.csv` or `lines.csv`.
#[utoipa::path(get, path = "/api/tables/{name}", operation_id = "table", params(("name" = String, Path)),
    responses((status = 200, content_type = "text/csv"), (status = 404, body = crate::trouble::Trouble)))]
pub async fn get(State(app): State<App>, At(name): At<String>) -> Answer<Response> {
    let jobs = app.store.jobs().await?;
    let rows = match name.as_str() {
        "jobs.csv" => jobs_table(&app, &jobs).await?,
        "dents.csv" => dents_table(&jobs),
        "lines.csv" => lines_table(&Books::open(&app).await?, &jobs),
        _ => return Err(Trouble::unknown(format!("there is no table {name}"))),
    };
    sent(&name, rows)
}

/// A table as an answer.
pub fn sent(name: &str, rows: Vec<Vec<String>>) -> Answer<Response> {
    let text = written(rows).map_err(|why| Trouble::own("writing the table", why))?;
    let heads = [
        (header::CONTENT_TYPE, "text/csv; charset=utf-8; header=present".to_owned()),
        (header::CONTENT_DISPOSITION, format!("attachment; filename=\"{name}\"")),
    ];
    Ok((heads, text).into_response())
}

fn written(rows: Vec<Vec<String>>) -> Result<Vec<u8>, String> {
    let mut writer = WriterBuilder::new().terminator(Terminator::CRLF).from_writer(Vec::new());
    rows.iter().try_for_each(|row| writer.write_record(row)).map_err(|why| why.to_string())?;
    writer.into_inner().map_err(|why| why.to_string())
}

fn heads(names: &[&str]) -> Vec<Vec<String>> {
    vec![names.iter().map(|name| (*name).to_owned()).collect()]
}

fn or_empty(value: Option<impl Display>) -> String {
    value.map(|value| value.to_string()).unwrap_or_default()
}

/// An enum's code.
fn code(value: &impl serde::Serialize) -> String {
    serde_json::to_value(value).ok().and_then(|value| value.as_str().map(str::to_owned)).unwrap_or_default()
}

async fn jobs_table(app: &App, jobs: &[Job]) -> Answer<Vec<Vec<String>>> {
    let (books, now) = (Books::open(app).await?, app.now());
    let mut rows = heads(&[
        "number",
        "id",
        "taken_in",
        "stage",
        "promised",
        "promised_time",
        "place",
        "finished",
        "customer",
        "phone",
        "email",
        "address",
        "plate",
        "vin",
        "make",
        "model",
        "year",
        "colour",
        "odometer_km",
        "damages",
        "dents",
        "net",
        "tax",
        "gross",
        "currency",
        "clocked_h",
        "notes",
    ]);
    for job in jobs {
        let quote = books.quote(&books.input(job)).ok().filter(|quote| !quote.lines.is_empty());
        let clocked_h = clocked_h(&app.store, job, now).await?;
        let (car, customer) = (&job.car, &job.customer);
        rows.push(vec![
            job.number.clone(),
            job.id.to_string(),
            job.created.to_string(),
            job.stage.code().to_owned(),
            or_empty(job.promised),
            or_empty(job.promised_time),
            job.place.clone(),
            or_empty(job.finished),
            customer.name.clone(),
            customer.phone.clone(),
            customer.email.clone(),
            customer.address.clone(),
            car.plate.clone(),
            or_empty(car.vin.as_ref().map(|vin| vin.as_str())),
            car.make.clone(),
            car.model.clone(),
            or_empty(car.year),
            car.colour.clone(),
            or_empty(car.odometer_km),
            job.damages.len().to_string(),
            job.dent_count().to_string(),
            or_empty(quote.as_ref().map(|quote| quote.net)),
            or_empty(quote.as_ref().map(|quote| quote.tax)),
            or_empty(quote.as_ref().map(|quote| quote.gross)),
            or_empty(quote.as_ref().map(|quote| &quote.currency)),
            format!("{clocked_h:.4}"),
            job.notes.clone(),
        ]);
    }
    Ok(rows)
}

async fn clocked_h(store: &Store, job: &Job, now: jiff::Timestamp) -> Answer<f64> {
    let seconds: i64 = by_kind(&store.times(Some(job.id)).await?, now).iter().map(|one| one.seconds).sum();
    Ok(seconds as f64 / 3600.0)
}

fn dents_table(jobs: &[Job]) -> Vec<Vec<String>> {
    let mut rows = heads(&[
        "job",
        "panel",
        "kind",
        "count",
        "length_mm",
        "width_mm",
        "depth_mm",
        "metal",
        "access",
        "place",
        "sharpness",
        "from",
        "note",
    ]);
    for job in jobs {
        for damage in &job.damages {
            for entry in &damage.dents {
                let dent = &entry.dent;
                let from = if matches!(entry.source, dentwright_job::Source::Hand) { "hand" } else { "reading" };
                rows.push(vec![
                    job.number.clone(),
                    damage.panel.code().to_owned(),
                    code(&dent.kind),
                    dent.count.to_string(),
                    dent.length_mm.to_string(),
                    dent.width_mm.to_string(),
                    dent.depth_mm.to_string(),
                    code(&dent.metal),
                    code(&dent.access),
                    code(&dent.place),
                    or_empty(dent.sharpness),
                    from.to_owned(),
                    damage.note.clone(),
                ]);
            }
        }
    }
    rows
}

fn lines_table(books: &Books, jobs: &[Job]) -> Vec<Vec<String>> {
    let mut rows = heads(&["job", "kind", "what", "quantity", "unit", "unit_price", "amount", "currency", "dents"]);
    for job in jobs {
        let Ok(quote) = books.quote(&books.input(job)) else { continue };
        for line in &quote.lines {
            rows.push(vec![
                job.number.clone(),
                code(&line.kind),
                line.what.clone(),
                line.quantity.to_string(),
                code(&line.unit),
                line.unit_price.to_string(),
                line.amount.to_string(),
                quote.currency.clone(),
                or_empty(line.count),
            ]);
        }
    }
    rows
}
