//! The business rules of EN 16931-1, by their names.
//!
//! Rules about sums (BR-CO-10 to BR-CO-17, BR-S-08 and its like) cannot be broken: [`crate::Totals`] works
//! the sums out. Neither can those about types (a day is a day). What is left stands here and in
//! `check_tax`.

use crate::check_tax::taxes;
use crate::{Address, Category, Exemption, Invoice, Party, Payment, Totals, is_country};
use dentwright_price::decimals;
use rust_decimal::Decimal;

/// A rule that an invoice breaks.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Breach {
    /// The standard's name of the rule, such as `BR-06`.
    pub rule: String,
    /// Where: `seller`, `line 3` and the like.
    pub place: String,
    /// What is missing or wrong, in words.
    pub what: String,
}

impl std::fmt::Display for Breach {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}: {} ({})", self.place, self.what, self.rule)
    }
}

/// Breaches as they are found.
#[derive(Default)]
pub(crate) struct Found(pub(crate) Vec<Breach>);

impl Found {
    /// Notes a breach unless `kept`.
    pub(crate) fn need(&mut self, kept: bool, rule: &str, place: &str, what: &str) {
        if !kept {
            self.0.push(Breach { rule: rule.to_owned(), place: place.to_owned(), what: what.to_owned() });
        }
    }
}

/// Every rule that the invoice breaks, in the order of its fields; none where it may go out.
#[must_use]
pub fn check(invoice: &Invoice) -> Vec<Breach> {
    let mut found = Found::default();
    document(&mut found, invoice);
    parties(&mut found, invoice);
    payment(&mut found, invoice);
    lines(&mut found, invoice);
    adjustments(&mut found, invoice);
    taxes(&mut found, invoice);
    found.0
}

impl Invoice {
    /// Why a category is without tax, if that is said.
    #[must_use]
    pub fn exemption(&self, category: Category) -> Option<&Exemption> {
        self.exemptions.iter().find(|one| one.category == category && category.needs_reason())
    }
}

/// Whether there is anything to read in a text.
pub(crate) fn said(text: &str) -> bool {
    !text.trim().is_empty()
}

fn document(found: &mut Found, invoice: &Invoice) {
    found.need(said(&invoice.number), "BR-02", "invoice", "it has no number");
    let code = &invoice.currency;
    let letters = code.len() == 3 && code.bytes().all(|b| b.is_ascii_uppercase());
    found.need(letters, "BR-CL-04", "invoice", "the currency must be three capital letters of ISO 4217");
    found.need(decimals(code) <= 2, "BR-DEC-09", "invoice", "the standard allows amounts of two decimals only");
    if let Some((first, last)) = invoice.period {
        found.need(first <= last, "BR-29", "period", "the last day lies before the first");
    }
    for one in &invoice.preceding {
        found.need(said(&one.number), "BR-55", "preceding invoice", "its number is missing");
    }
    let totals = Totals::of(invoice);
    let when = invoice.due.is_some() || said(&invoice.terms);
    found.need(
        totals.due <= Decimal::ZERO || when,
        "BR-CO-25",
        "payment",
        "say by which day or on what terms it is to be paid",
    );
    for (amount, rule) in [(invoice.prepaid, "BR-DEC-16"), (invoice.rounding, "BR-DEC-17")] {
        coins(found, amount, rule, "totals");
    }
}

fn parties(found: &mut Found, invoice: &Invoice) {
    let (seller, buyer) = (&invoice.seller, &invoice.buyer);
    found.need(said(&seller.name), "BR-06", "seller", "the name is missing");
    found.need(said(&buyer.name), "BR-07", "buyer", "the name is missing");
    let known = [&seller.register, &seller.vat_id].into_iter().any(|text| said(text));
    found.need(known, "BR-CO-26", "seller", "a VAT identifier or a number in a register is needed to know them by");
    country(found, &seller.address, "BR-09", "seller");
    country(found, &buyer.address, "BR-11", "buyer");
    if !invoice.deliver_to.is_empty() {
        country(found, &invoice.deliver_to, "BR-57", "place of delivery");
    }
    for (party, scheme_rule, place) in [(seller, "BR-62", "seller"), (buyer, "BR-63", "buyer")] {
        vat_id(found, party, place);
        let complete = !said(&party.endpoint) || said(&party.endpoint_scheme);
        found.need(complete, scheme_rule, place, "the electronic address needs its scheme");
    }
}

fn country(found: &mut Found, address: &Address, rule: &str, place: &str) {
    let code = &address.country;
    found.need(said(code), rule, place, "the country is missing");
    found.need(!said(code) || is_country(code), "BR-CL-14", place, "the country must be a code of ISO 3166-1");
}

/// BR-CO-09: the number begins with its country's letters; Greece writes EL.
fn vat_id(found: &mut Found, party: &Party, place: &str) {
    let prefixed = party.vat_id.get(..2).is_some_and(|start| start == "EL" || is_country(start));
    found.need(
        !said(&party.vat_id) || prefixed,
        "BR-CO-09",
        place,
        "the VAT identifier must begin with its country's two letters",
    );
}

fn payment(found: &mut Found, invoice: &Invoice) {
    let Some(Payment { means, account, .. }) = &invoice.payment else {
        return;
    };
    found.need(said(means), "BR-49", "payment", "the means of payment is missing");
    let transfer = matches!(means.as_str(), "30" | "58");
    found.need(!transfer || said(account), "BR-61", "payment", "a transfer needs the account");
}

fn lines(found: &mut Found, invoice: &Invoice) {
    found.need(!invoice.lines.is_empty(), "BR-16", "invoice", "it has no line");
    for (index, line) in invoice.lines.iter().enumerate() {
        let place = format!("line {}", index + 1);
        found.need(said(&line.name), "BR-25", &place, "the item has no name");
        found.need(said(&line.unit), "BR-23", &place, "the quantity has no unit");
        found.need(line.price >= Decimal::ZERO, "BR-27", &place, "the price is below zero; turn the quantity's sign");
        found.need(line.price_quantity > Decimal::ZERO, "PEPPOL-EN16931-R121", &place, "a price is for more than none");
        for one in &line.adjustments {
            let (reason, most) = if one.charge { ("BR-44", "BR-DEC-27") } else { ("BR-42", "BR-DEC-24") };
            let why = said(&one.reason) || said(&one.reason_code);
            found.need(why, reason, &place, "what is taken off or added needs a reason");
            found.need(one.amount >= Decimal::ZERO, reason, &place, "what is taken off or added is not below zero");
            coins(found, one.amount, most, &place);
        }
    }
}

fn adjustments(found: &mut Found, invoice: &Invoice) {
    for one in &invoice.adjustments {
        let (place, reason, most) =
            if one.charge { ("charge", "BR-38", "BR-DEC-05") } else { ("allowance", "BR-33", "BR-DEC-01") };
        let why = said(&one.reason) || said(&one.reason_code);
        found.need(why, reason, place, "a reason is missing");
        found.need(one.amount >= Decimal::ZERO, reason, place, "the amount is below zero");
        coins(found, one.amount, most, place);
    }
}

fn coins(found: &mut Found, amount: Decimal, rule: &str, place: &str) {
    found.need(amount.normalize().scale() <= 2, rule, place, "the amount has more than two decimals");
}
