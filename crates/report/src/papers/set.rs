//! From a paper's values to its PDF.

use super::block::Block;
use super::{PaperData, PaperKind, bill, evidence, finish, hybrid, order};
use crate::render::{EvictAfter, archive};
use crate::view::{Setting, files_with};
use crate::world::ReportWorld;
use crate::{Report, ReportError};
use dentwright_invoice::{check, cii};
use jiff::civil::Date;
use rust_decimal::Decimal;
use serde_json::json;
use typst::foundations::Bytes;

/// Name of the invoice's data inside its PDF; hybrid invoices of France and Germany are looked for under it.
pub(crate) const ATTACHED: &str = "factur-x.xml";
const SIGNATURE: &str = "signature.svg";

/// What blocks are made with.
pub(crate) struct Made<'a, 'b> {
    pub(crate) data: &'a PaperData,
    pub(crate) with: &'b Setting<'a>,
    /// Whether the invoice's data go into the file.
    pub(crate) attached: bool,
}

impl Made<'_, '_> {
    pub(crate) fn money(&self, amount: Decimal, currency: &str) -> String {
        self.with.format.money(amount, currency)
    }

    pub(crate) fn date(&self, day: Date) -> Result<String, ReportError> {
        self.with.format.date(day, &self.with.words)
    }
}

/// Makes a paper as PDF/A-3b. The same values give the same bytes.
///
/// An invoice or credit note that breaks no rule of EN 16931 carries itself as CII XML, with the metadata by
/// which hybrid invoices are known; one that breaks a rule is a plain paper.
///
/// # Errors
/// When a template or a language file of the program is broken; entered values cannot cause one.
pub fn paper(data: &PaperData) -> Result<Report, ReportError> {
    let _evict = EvictAfter;
    let mut report = archive(&world(data)?)?;
    if attachment(data).is_some() {
        report.pdf = hybrid::marked(&report.pdf, ATTACHED).unwrap_or(report.pdf);
    }
    Ok(report)
}

/// Everything that the templates see of a paper.
pub(crate) fn world(data: &PaperData) -> Result<ReportWorld, ReportError> {
    let xml = attachment(data);
    let mut files = files_with(&data.job, |view, with| {
        let made = Made { data, with, attached: xml.is_some() };
        let blocks = blocks(&made)?;
        let words = &with.words;
        let mut numbers = vec![];
        if !data.number.is_empty() {
            numbers.push([words.say("paper-number")?, data.number.clone()]);
        }
        if !data.job.number.is_empty() {
            numbers.push([words.say("job-number")?, data.job.number.clone()]);
        }
        view["title"] = words.say(&format!("paper-{}", data.kind.code()))?.into();
        view["numbers"] = json!(numbers);
        view["blocks"] = json!(blocks);
        view["attach"] = json!(xml.is_some().then_some(ATTACHED));
        let day = data.job.date;
        view["stamp"] = json!([day.year(), day.month(), day.day()]);
        view["small_print"] = words.say("no-legal-advice")?.into();
        Ok(())
    })?;
    if let Some(xml) = &xml {
        files.push((ATTACHED.to_owned(), Bytes::new(xml.clone())));
    }
    if let Some(signature) = &data.signature {
        files.push((SIGNATURE.to_owned(), Bytes::from_string(signature.svg())));
    }
    Ok(ReportWorld::new("paper.typ", files))
}

fn attachment(data: &PaperData) -> Option<Vec<u8>> {
    let bill = matches!(data.kind, PaperKind::Invoice | PaperKind::CreditNote);
    let invoice = data.invoice.as_ref().filter(|_| bill)?;
    check(invoice).is_empty().then(|| cii(invoice))
}

fn blocks(made: &Made) -> Result<Vec<Block>, ReportError> {
    match made.data.kind {
        PaperKind::Estimate => order::estimate(made),
        PaperKind::Authorisation => order::authorisation(made),
        PaperKind::Supplement => order::supplement(made),
        PaperKind::WorkOrder => order::work_order(made),
        PaperKind::Evidence => evidence::evidence(made),
        PaperKind::Certificate => finish::certificate(made),
        PaperKind::Warranty => finish::warranty(made),
        PaperKind::Cancellation => order::cancellation(made),
        PaperKind::Invoice | PaperKind::CreditNote => bill::bill(made),
        PaperKind::Receipt => bill::receipt(made),
    }
}

/// A place to sign; with the strokes where somebody has signed and the label is theirs.
pub(crate) fn signature(made: &Made, label: &str) -> Result<Block, ReportError> {
    let words = &made.with.words;
    let signed = made.data.signature.as_ref().filter(|_| label == "sign-customer");
    let at = signed.map(|signed| {
        let civil = signed.at.to_zoned_datetime(jiff::tz::TimeZone::UTC);
        let time = civil.time().strftime("%H:%M:%S").to_string();
        words.fill("signed-at", &[("date", &made.date(civil.date())?), ("time", &time)])
    });
    Ok(Block::Signature {
        label: words.say(label)?,
        name: signed.map_or_else(String::new, |signed| signed.name.clone()),
        at: at.transpose()?.unwrap_or_default(),
        file: signed.map(|_| SIGNATURE.to_owned()),
        below: if signed.is_some() { String::new() } else { words.say("sign-date")? },
    })
}
