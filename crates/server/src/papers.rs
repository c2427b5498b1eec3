//! Papers of a job: listed, issued, fetched.

use crate::app::App;
use crate::paper_issue::{Issue, issue};
use crate::trouble::{Answer, At, Body, Trouble};
use axum::Json;
use axum::extract::{Path, State};
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};
use dentwright_job::Billing;
use dentwright_report::{Country, PaperKind, countries};
use dentwright_store::StoredPaper;
use rust_decimal::Decimal;
use serde::Serialize;
use utoipa::ToSchema;
use uuid::Uuid;

/// A paper in a list.
#[derive(Debug, Serialize, ToSchema)]
pub struct PaperJson {
    /// Its id.
    pub id: Uuid,
    /// Its kind.
    pub kind: PaperKind,
    /// Its number; none for a paper without one.
    pub number: Option<String>,
    /// Its language's code.
    pub language: String,
    /// When it was issued, ISO 8601.
    pub created: String,
    /// The paper that it follows.
    pub follows: Option<Uuid>,
    /// What it comes to, with tax; none where it is about no money.
    pub gross: Option<Decimal>,
    /// ISO 4217 code.
    pub currency: Option<String>,
    /// Who signed it on glass.
    pub signed_by: Option<String>,
    /// Why an invoice carries no e-invoice: rules of EN 16931 that it breaks.
    pub no_e_invoice: Vec<String>,
    /// Its files.
    pub files: Vec<PaperFileJson>,
}

/// A file of a paper.
#[derive(Debug, Serialize, ToSchema)]
pub struct PaperFileJson {
    /// Its name.
    pub name: String,
    /// BLAKE3 of its bytes.
    pub hash: String,
    /// Its size, bytes.
    pub bytes: u64,
}

impl PaperJson {
    fn of(paper: StoredPaper) -> Answer<Self> {
        let facts = &paper.facts;
        let text = |value: &serde_json::Value| value.as_str().map(str::to_owned);
        let unreadable = || Trouble::own("reading a paper", format!("{} is no kind of paper", paper.kind));
        Ok(Self {
            id: paper.id,
            kind: PaperKind::of(&paper.kind).ok_or_else(unreadable)?,
            number: paper.number.clone(),
            language: paper.language.clone(),
            created: paper.created.to_string(),
            follows: paper.follows,
            gross: text(&facts["gross"]).and_then(|amount| amount.parse().ok()),
            currency: text(&facts["currency"]),
            signed_by: text(&facts["signature"]["name"]),
            no_e_invoice: facts["no_e_invoice"].as_array().into_iter().flatten().filter_map(text).collect(),
            files: paper
                .files
                .into_iter()
                .map(|file| PaperFileJson { name: file.name, hash: file.hash, bytes: file.bytes })
                .collect(),
        })
    }
}

/// Papers of a job, oldest first.
#[utoipa::path(get, path = "/api/jobs/{id}/papers", operation_id = "papers", params(("id" = Uuid, Path)),
    responses((status = 200, body = Vec<PaperJson>), (status = 404, body = Trouble)))]
pub async fn list(State(app): State<App>, At(id): At<Uuid>) -> Answer<Json<Vec<PaperJson>>> {
    app.store.job(id).await?;
    let papers = app.store.papers(Some(id)).await?;
    Ok(Json(papers.into_iter().map(PaperJson::of).collect::<Answer<_>>()?))
}

/// Issue a paper. What was issued is kept as it is; an invoice that is wrong is followed by a credit note.
#[utoipa::path(post, path = "/api/jobs/{id}/papers", operation_id = "issue_paper", params(("id" = Uuid, Path)),
    request_body = Issue, responses((status = 201, body = PaperJson), (status = 404, body = Trouble),
        (status = 409, body = Trouble), (status = 422, body = Trouble)))]
pub async fn add(State(app): State<App>, At(id): At<Uuid>, Body(body): Body<Issue>) -> Answer<Response> {
    let paper = issue(&app, id, body).await?;
    Ok((StatusCode::CREATED, Json(PaperJson::of(paper)?)).into_response())
}

/// A file of a paper, by its name.
#[utoipa::path(get, path = "/api/papers/{id}/{name}", operation_id = "paper_file",
    params(("id" = Uuid, Path), ("name" = String, Path)),
    responses((status = 200, content_type = "application/pdf"), (status = 404, body = Trouble)))]
pub async fn file(State(app): State<App>, Path((id, name)): Path<(Uuid, String)>) -> Answer<Response> {
    let paper = app.store.paper(id).await?;
    let bytes = app.store.paper_file(id, &name).await?;
    let kind = if name.ends_with(".pdf") { "application/pdf" } else { "application/xml" };
    let (stem, end) = (paper.number.unwrap_or_else(|| paper.kind.replace('_', "-")), name.split_once('.'));
    let shown = format!("inline; filename=\"{stem}.{}\"", end.map_or("pdf", |(_, end)| end));
    Ok(([(header::CONTENT_TYPE, kind.to_owned()), (header::CONTENT_DISPOSITION, shown)], bytes).into_response())
}

/// Countries that have a pack. No legal advice.
#[utoipa::path(get, path = "/api/countries", operation_id = "countries", responses((status = 200, body = Vec<Country>)))]
pub async fn packs() -> Json<&'static [Country]> {
    Json(countries())
}

/// How the shop bills.
#[utoipa::path(get, path = "/api/shop/billing", operation_id = "billing", responses((status = 200, body = Billing)))]
pub async fn billing(State(app): State<App>) -> Answer<Json<Billing>> {
    Ok(Json(app.store.billing().await?))
}

/// Change how the shop bills.
#[utoipa::path(put, path = "/api/shop/billing", operation_id = "save_billing", request_body = Billing,
    responses((status = 200, body = Billing), (status = 422, body = Trouble)))]
pub async fn save_billing(State(app): State<App>, Body(billing): Body<Billing>) -> Answer<Json<Billing>> {
    billing.check().map_err(Trouble::entered)?;
    app.store.save_billing(&billing, app.now()).await?;
    Ok(Json(billing))
}
