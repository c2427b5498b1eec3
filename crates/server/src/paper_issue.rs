//! Issuing a paper: what it is made from, and the rules of what may follow what.

use crate::app::App;
use crate::bill::{credit_note, invoice};
use crate::report::load;
use crate::report_data::{Loaded, report_data};
use crate::trouble::{Answer, Trouble};
use axum::http::StatusCode;
use dentwright_invoice::{Invoice, Totals, check, cii, ubl};
use dentwright_job::{Job, OldDamage, Shop, Stage};
use dentwright_price::Quote;
use dentwright_report::{Country, Language, OldMark, PaperData, PaperKind, Received, Signature, country, paper};
use dentwright_store::{IssueError, MadePaper, NewPaper, StoredPaper};
use jiff::civil::Date;
use jiff::tz::TimeZone;
use rust_decimal::Decimal;
use serde::Deserialize;
use serde_json::json;
use utoipa::ToSchema;
use uuid::Uuid;

/// What to issue.
#[derive(Debug, Clone, Deserialize, ToSchema)]
pub struct Issue {
    /// Which paper.
    pub kind: PaperKind,
    /// Its language; the shop's where none is named.
    #[serde(default)]
    pub language: Option<Language>,
    /// The customer's signature (authorisation, supplement, cancellation notice).
    #[serde(default)]
    pub signature: Option<Signature>,
    /// Why (supplement, credit note).
    #[serde(default)]
    pub reason: String,
    /// The invoice that a credit note or receipt is about; the job's last where none is named.
    #[serde(default)]
    pub follows: Option<Uuid>,
    /// Net amount given back; the whole invoice where none is named (credit note).
    #[serde(default)]
    pub part: Option<Decimal>,
    /// Amount paid; all that is open where none is named (receipt).
    #[serde(default)]
    pub paid: Option<Decimal>,
    /// How it was paid, UNTDID 4461: `10` cash, `48` card, `58` transfer.
    #[serde(default)]
    pub means: Option<String>,
    /// The buyer's VAT identifier, where the buyer is a business (invoice).
    #[serde(default)]
    pub buyer_vat_id: String,
}

/// A conflict with what was issued before.
fn already(message: impl ToString, next: &str) -> Trouble {
    Trouble::new(StatusCode::CONFLICT, "already", message, next)
}

/// Issues a paper.
pub async fn issue(app: &App, id: Uuid, body: Issue) -> Answer<StoredPaper> {
    let _one = app.issuing.lock().await;
    let (job, shop) = (app.store.job(id).await?, app.store.shop().await?);
    let billing = app.store.billing().await?;
    let pack = pack_of(&billing.country, &shop);
    let papers = app.store.papers(Some(id)).await?;
    let today = app.now().to_zoned_datetime(TimeZone::system()).date();
    let mut data = start(app, &job, &shop, pack, &body, today).await?;
    let follows = following(&papers, &body)?;
    let series = match body.kind {
        PaperKind::Invoice => {
            let quote = data.job.quote.as_ref().ok_or_else(|| Trouble::entered("the job has no quote to bill"))?;
            not_billed_twice(&papers)?;
            data.invoice = Some(invoice(&job, &shop, &billing, pack, quote, data.job.language, &body, today)?);
            Some("I")
        }
        PaperKind::CreditNote => {
            let billed = billed(follows)?;
            let note = credit_note(&billed, body.part, &body.reason, today).map_err(Trouble::entered)?;
            let open = Totals::of(&billed).gross - credited(&papers, follows);
            if Totals::of(&note).gross > open {
                return Err(already("More would be given back than was billed.", "Enter a smaller amount."));
            }
            data.invoice = Some(note);
            Some("C")
        }
        PaperKind::Receipt => {
            let mut billed = billed(follows)?;
            billed.prepaid += paid(&papers, follows) + credited(&papers, follows);
            let open = Totals::of(&billed).due;
            let amount = body.paid.unwrap_or(open);
            if amount <= Decimal::ZERO || amount > open {
                return Err(already(format!("{amount} was entered, but {open} is open."), "Enter what was paid."));
            }
            let means = body.means.clone().unwrap_or_else(|| "10".to_owned());
            data.received = Some(Received { amount, date: today, means });
            data.invoice = Some(billed);
            Some("R")
        }
        PaperKind::Supplement => {
            data.before = Some(agreed(&papers).ok_or_else(|| {
                already(
                    "Nothing was agreed on yet that could be supplemented.",
                    "Issue an estimate or an authorisation first.",
                )
            })?);
            None
        }
        _ => None,
    };
    signed_where_it_must(&body)?;
    let new = NewPaper {
        job: id,
        kind: body.kind.code().to_owned(),
        series: series.map(str::to_owned),
        language: data.job.language.code().to_owned(),
        follows: follows.map(|paper| paper.id),
    };
    let issued = app.store.issue_paper(&new, app.now(), today.year(), move |number| made(data, number)).await;
    let issued = issued.map_err(|error| match error {
        IssueError::Made(why) => Trouble::own("making the paper", why),
        IssueError::Store(error) => error.into(),
    })?;
    advance(app, &job, body.kind).await?;
    Ok(issued)
}

/// The pack of the shop's country; where none was chosen, one of its currency.
pub fn pack_of(code: &str, shop: &Shop) -> &'static Country {
    let by_currency = match shop.currency.as_str() {
        "USD" => "US",
        "GBP" => "GB",
        "CHF" => "CH",
        "PLN" => "PL",
        _ => "DE",
    };
    let found = country(code).or_else(|| country(by_currency));
    found.expect("every code above has a pack")
}

async fn start(app: &App, job: &Job, shop: &Shop, pack: &Country, body: &Issue, today: Date) -> Answer<PaperData> {
    let quote = crate::quote::of_job(app, job).await?.filter(|quote| !quote.lines.is_empty());
    let bare = body.kind.is_numbered() || matches!(body.kind, PaperKind::Cancellation | PaperKind::Supplement);
    let loaded = if bare { Loaded::default() } else { load(app, job).await? };
    let hashes = job.damages.iter().flat_map(|damage| &damage.photos);
    let hashes = hashes.map(|photo| (photo.hash.clone(), photo.hash.clone())).collect();
    let mut report = report_data(job, shop, quote, loaded, today);
    report.paper = pack.paper;
    if body.kind == PaperKind::Evidence {
        // A row of hashes names its photo by the file's name.
        let names = job.damages.iter().flat_map(|damage| &damage.photos).map(|photo| photo.name.clone());
        let shown = report.damages.iter_mut().flat_map(|damage| &mut damage.photos);
        shown.zip(names).for_each(|(photo, name)| photo.caption = name);
    }
    if let Some(language) = body.language {
        report.language = language;
    }
    Ok(PaperData {
        kind: body.kind,
        number: String::new(),
        country: pack.clone(),
        before: None,
        reason: body.reason.clone(),
        signature: body.signature.clone(),
        invoice: None,
        received: None,
        promised: job.promised,
        hashes,
        old: old(app, job).await?,
        job: report,
    })
}

/// What was there before, as it was marked with the customer.
async fn old(app: &App, job: &Job) -> Answer<Vec<OldMark>> {
    let marks = app.store.old_damages(job.id).await?;
    let mark = |one: OldDamage| OldMark {
        panel: one.panel.code().to_owned(),
        kind: one.kind.code().to_owned(),
        note: one.note,
    };
    Ok(marks.into_iter().map(mark).collect())
}

/// The invoice that a credit note or receipt is about.
fn following<'a>(papers: &'a [StoredPaper], body: &Issue) -> Answer<Option<&'a StoredPaper>> {
    if !matches!(body.kind, PaperKind::CreditNote | PaperKind::Receipt) {
        return Ok(None);
    }
    let mut invoices = papers.iter().filter(|paper| paper.kind == PaperKind::Invoice.code());
    let found = match body.follows {
        Some(id) => invoices.find(|paper| paper.id == id),
        None => invoices.next_back(),
    };
    let none = || already("This job has no such invoice.", "Issue the invoice first.");
    found.map(Some).ok_or_else(none)
}

fn billed(follows: Option<&StoredPaper>) -> Answer<Invoice> {
    let facts = follows.map(|paper| paper.facts["invoice"].clone()).unwrap_or_default();
    serde_json::from_value(facts).map_err(|why| Trouble::own("reading the invoice", why))
}

/// Sum of what papers of a kind that follow an invoice come to.
fn sum(papers: &[StoredPaper], kind: PaperKind, follows: Option<&StoredPaper>, field: &str) -> Decimal {
    let of_invoice = |paper: &&StoredPaper| paper.kind == kind.code() && paper.follows == follows.map(|one| one.id);
    let amount = |paper: &StoredPaper| paper.facts[field].as_str().and_then(|text| text.parse::<Decimal>().ok());
    papers.iter().filter(of_invoice).filter_map(amount).sum()
}

fn credited(papers: &[StoredPaper], follows: Option<&StoredPaper>) -> Decimal {
    sum(papers, PaperKind::CreditNote, follows, "gross")
}

fn paid(papers: &[StoredPaper], follows: Option<&StoredPaper>) -> Decimal {
    sum(papers, PaperKind::Receipt, follows, "gross")
}

/// A second press of the button must not bill twice: an invoice in force is given back first.
fn not_billed_twice(papers: &[StoredPaper]) -> Answer<()> {
    let in_force = papers.iter().find(|paper| {
        let gross = paper.facts["gross"].as_str().and_then(|text| text.parse::<Decimal>().ok()).unwrap_or_default();
        paper.kind == PaperKind::Invoice.code() && credited(papers, Some(paper)) < gross
    });
    match in_force {
        Some(paper) => Err(already(
            format!("This job has the invoice {} already.", paper.number.as_deref().unwrap_or_default()),
            "Issue a credit note for it first, then the new invoice.",
        )),
        None => Ok(()),
    }
}

/// The quote of the last paper that was agreed on.
fn agreed(papers: &[StoredPaper]) -> Option<Quote> {
    let kinds = [PaperKind::Estimate, PaperKind::Authorisation, PaperKind::Supplement].map(PaperKind::code);
    let mut of_kind = papers.iter().rev().filter(|paper| kinds.contains(&paper.kind.as_str()));
    of_kind.find_map(|paper| serde_json::from_value(paper.facts["quote"].clone()).ok())
}

fn signed_where_it_must(body: &Issue) -> Answer<()> {
    match (&body.signature, body.kind) {
        (Some(signature), _) => signature.check().map_err(Trouble::entered),
        (None, PaperKind::Authorisation) => Err(Trouble::new(
            StatusCode::UNPROCESSABLE_ENTITY,
            "unsigned",
            "Nobody has signed.",
            "Let the customer sign on the pad.",
        )),
        (None, _) => Ok(()),
    }
}

/// Sets the paper; an invoice with its number in both syntaxes of the e-invoice, where it keeps the rules.
fn made(mut data: PaperData, number: Option<String>) -> Result<MadePaper, dentwright_report::ReportError> {
    data.number = number.clone().unwrap_or_default();
    let mut files = Vec::new();
    let mut breaches = Vec::new();
    let bill = matches!(data.kind, PaperKind::Invoice | PaperKind::CreditNote);
    if let Some(invoice) = data.invoice.as_mut().filter(|_| bill) {
        invoice.number = data.number.clone();
        if let Some(payment) = &mut invoice.payment {
            payment.remittance.clone_from(&data.number);
        }
        breaches = check(invoice).iter().map(ToString::to_string).collect();
        if breaches.is_empty() {
            files.push(("invoice.ubl.xml".to_owned(), ubl(invoice)));
            files.push(("invoice.cii.xml".to_owned(), cii(invoice)));
        }
    }
    files.insert(0, ("paper.pdf".to_owned(), paper(&data)?.pdf));
    let totals = data.invoice.as_ref().map(Totals::of);
    let gross = match (&data.received, &totals, &data.job.quote) {
        (Some(received), ..) => Some(received.amount),
        (None, Some(totals), _) => Some(totals.gross),
        (None, None, quote) => quote.as_ref().map(|quote| quote.gross),
    };
    let currency = data.invoice.as_ref().map(|one| &one.currency).or(data.job.quote.as_ref().map(|one| &one.currency));
    let facts = json!({
        "quote": data.job.quote,
        "invoice": data.invoice.as_ref().filter(|_| bill),
        "signature": data.signature,
        "reason": data.reason,
        "gross": gross,
        "currency": currency,
        "means": data.received.as_ref().map(|received| &received.means),
        "no_e_invoice": breaches,
    });
    Ok(MadePaper { facts, files })
}

/// A paper that was issued says how far the job has come; it never goes back.
async fn advance(app: &App, job: &Job, kind: PaperKind) -> Answer<()> {
    let reached = match kind {
        PaperKind::Estimate => Stage::Quoted,
        PaperKind::Authorisation => Stage::Authorised,
        _ => return Ok(()),
    };
    if job.stage < reached {
        app.store.change_job(job.id, move |head| head.stage = reached, app.now()).await?;
    }
    Ok(())
}
