//! Edits of a job's head that were made without network, laid together field by field.

use crate::app::App;
use crate::job_json::{CarJson, JobJson};
use crate::trouble::{Answer, At, Body, Trouble};
use axum::Json;
use axum::extract::State;
use dentwright_job::{Clash, Customer, Edit, Stage, merge};
use dentwright_store::{DamageChange, JobHead};
use jiff::civil::{Date, Time};
use serde::{Deserialize, Serialize};
use serde_json::{Value, json};
use utoipa::ToSchema;
use uuid::Uuid;

/// Most edits of one call: every field several times over.
const MOST_EDITS: usize = 500;
/// Where the notes of damages lie.
const NOTES: &str = "/damages/";
/// Objects whose names are not all known beforehand.
const OPEN: [&str; 1] = ["/car/metals"];

/// Edits in the order in which they were made.
#[derive(Debug, Deserialize, ToSchema)]
pub struct EditsJson {
    edits: Vec<Edit>,
}

/// What became of them.
#[derive(Debug, Serialize, ToSchema)]
pub struct MergedJson {
    /// The job, with every edit that could be made.
    job: JobJson,
    /// The others: somebody else has changed the same field since.
    clashes: Vec<Clash>,
}

/// What can be edited.
#[derive(Debug, Serialize, Deserialize)]
struct Head {
    stage: Stage,
    customer: Customer,
    car: CarJson,
    promised: Option<Date>,
    promised_time: Option<Time>,
    place: String,
    notes: String,
}

/// Edit fields of a job, each with the value that was last known. What somebody else has changed since is not
/// overwritten but comes back with both values.
#[utoipa::path(post, path = "/api/jobs/{id}/edits", operation_id = "edit_job", params(("id" = Uuid, Path)),
    request_body = EditsJson,
    responses((status = 200, body = MergedJson), (status = 404, body = Trouble), (status = 422, body = Trouble)))]
pub async fn edit(State(app): State<App>, At(job): At<Uuid>, Body(sent): Body<EditsJson>) -> Answer<Json<MergedJson>> {
    if sent.edits.len() > MOST_EDITS {
        return Err(Trouble::entered(format!("{} edits came at once, at most {MOST_EDITS} can", sent.edits.len())));
    }
    let (below, head): (Vec<Edit>, Vec<Edit>) = sent.edits.into_iter().partition(|edit| edit.field.starts_with(NOTES));
    let mut merged = Err(Trouble::own("laying edits together", "nothing was laid"));
    app.store.change_job(job, |now| merged = laid(now, &head), app.now()).await?;
    let mut clashes = merged?;
    clashes.extend(notes(&app, job, &below).await?);
    Ok(Json(MergedJson { job: app.store.job(job).await?.into(), clashes }))
}

/// Lays edits of the notes of damages, `/damages/{id}/note`, into the record.
async fn notes(app: &App, job: Uuid, edits: &[Edit]) -> Answer<Vec<Clash>> {
    if edits.is_empty() {
        return Ok(Vec::new());
    }
    let damages = app.store.job(job).await?.damages;
    let notes: serde_json::Map<_, _> =
        damages.iter().map(|one| (one.id.to_string(), json!({ "note": one.note }))).collect();
    let mut record = json!({ "damages": notes });
    let clashes = merge(&mut record, edits, &[]).map_err(Trouble::entered)?;
    for damage in &damages {
        let note = record["damages"][damage.id.to_string()]["note"].as_str();
        let note = note.ok_or_else(|| Trouble::entered("a note is a text"))?;
        if note != damage.note {
            let to = DamageChange { note: Some(note.to_owned()), ..DamageChange::default() };
            app.store.change_damage(damage.id, &to).await?;
        }
    }
    Ok(clashes)
}

/// Lays the edits into the head; where one of them cannot be, the head stays as it was.
fn laid(head: &mut JobHead, edits: &[Edit]) -> Answer<Vec<Clash>> {
    let own = |why: serde_json::Error| Trouble::own("laying edits together", why);
    let mut record = serde_json::to_value(Head {
        stage: head.stage,
        customer: head.customer.clone(),
        car: head.car.clone().into(),
        promised: head.promised,
        promised_time: head.promised_time,
        place: head.place.clone(),
        notes: head.notes.clone(),
    })
    .map_err(own)?;
    let clashes = merge(&mut record, edits, &OPEN).map_err(Trouble::entered)?;
    if let Some(metals) = record.pointer_mut(OPEN[0]).and_then(Value::as_object_mut) {
        metals.retain(|_, metal| !metal.is_null());
    }
    let to: Head = serde_json::from_value(record).map_err(Trouble::entered)?;
    (head.stage, head.customer, head.car) = (to.stage, to.customer, to.car.into());
    (head.promised, head.promised_time) = (to.promised, to.promised_time);
    (head.place, head.notes) = (to.place, to.notes);
    Ok(clashes)
}
