//! The papers of a job, from estimate to receipt.
//!
//! A paper is a list of blocks, put together here in words of one language and set by `paper.typ`. All
//! papers are PDF/A-3b; an invoice carries itself as XML.

mod bill;
mod block;
mod changes;
mod country;
mod evidence;
mod finish;
mod hybrid;
mod kind;
mod of_quote;
mod order;
mod parties;
mod set;
mod signature;

pub use changes::{LineChange, changes};
pub use country::{
    CancellationRight, Coin, Country, CountryRate, CountryTaxes, Lines, WarrantyTime, countries, country,
};
pub use kind::PaperKind;
pub use of_quote::{lines_of, rounded_to_cash};
pub use order::consent;
pub use parties::address_of;
pub use set::paper;
#[cfg(test)]
pub(crate) use set::world;
pub use signature::{PAD_HEIGHT, Signature, SignatureError};

use crate::ReportData;
use dentwright_invoice::Invoice;
use dentwright_price::Quote;
use jiff::civil::Date;
use rust_decimal::Decimal;

/// Everything that papers show. What a paper does not need may be absent.
#[derive(Debug, Clone, PartialEq)]
pub struct PaperData {
    /// Which paper.
    pub kind: PaperKind,
    /// The job: language, shop, customer, car, damages, quote, photos.
    pub job: ReportData,
    /// Number of the paper itself; empty where it has none.
    pub number: String,
    /// The country's pack.
    pub country: Country,
    /// The quote that was agreed on so far (supplement).
    pub before: Option<Quote>,
    /// Why (supplement, credit note).
    pub reason: String,
    /// The signature (authorisation, supplement, cancellation notice).
    pub signature: Option<Signature>,
    /// The invoice or credit note; for a receipt the invoice that was paid.
    pub invoice: Option<Invoice>,
    /// What was paid (receipt).
    pub received: Option<Received>,
    /// Day the car was promised for (work order, authorisation).
    pub promised: Option<Date>,
    /// Hash of each photo's file, by its name in the job's images (evidence).
    pub hashes: Vec<(String, String)>,
    /// Damage that was there before and is not part of the work (authorisation).
    pub old: Vec<OldMark>,
}

/// Damage that was there before.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OldMark {
    /// Panel code.
    pub panel: String,
    /// Code of what it is, such as `scratch`.
    pub kind: String,
    /// Anything to add, as entered.
    pub note: String,
}

/// A payment.
#[derive(Debug, Clone, PartialEq)]
pub struct Received {
    /// How much, with tax.
    pub amount: Decimal,
    /// When.
    pub date: Date,
    /// UNTDID 4461: `10` cash, `30` and `58` transfer, `48` card.
    pub means: String,
}
