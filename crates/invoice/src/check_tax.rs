//! Rules of the tax categories: BR-S-*, BR-Z-*, BR-E-*, BR-AE-*, BR-IC-*, BR-G-*, BR-O-*.
//!
//! Each category has the same rules under its own letters: 02 to 04 who must have a number (by a line,
//! an allowance, a charge), 05 to 07 which rate (the same), 10 the reason.

use crate::check::{Found, said};
use crate::{Category, Invoice, Tax};
use rust_decimal::Decimal;

pub(crate) fn taxes(found: &mut Found, invoice: &Invoice) {
    for (index, line) in invoice.lines.iter().enumerate() {
        one(found, invoice, line.tax, 0, &format!("line {}", index + 1));
    }
    for adjustment in &invoice.adjustments {
        let (nth, place) = if adjustment.charge { (2, "charge") } else { (1, "allowance") };
        one(found, invoice, adjustment.tax, nth, place);
    }
    let used = used(invoice);
    for category in &used {
        reason(found, invoice, *category);
    }
    let alone = !used.contains(&Category::OutOfScope) || used.len() == 1;
    found.need(alone, "BR-O-11", "tax", "what is outside the scope of the tax cannot stand beside what is not");
    if used.contains(&Category::IntraCommunity) {
        let when = invoice.delivered.is_some() || invoice.period.is_some();
        found.need(when, "BR-IC-11", "delivery", "supply within the EU needs the day or the period of delivery");
        found.need(said(&invoice.deliver_to.country), "BR-IC-12", "delivery", "and the country it went to");
    }
}

fn used(invoice: &Invoice) -> Vec<Category> {
    let lines = invoice.lines.iter().map(|line| line.tax.category);
    let mut used: Vec<Category> = lines.chain(invoice.adjustments.iter().map(|one| one.tax.category)).collect();
    used.sort();
    used.dedup();
    used
}

/// `nth` is 0 for a line, 1 for an allowance, 2 for a charge: the last digit of the rule's name.
fn one(found: &mut Found, invoice: &Invoice, tax: Tax, nth: u8, place: &str) {
    let rule = |first: u8| format!("BR-{}-{:02}", tax.category.rules(), first + nth);
    let (seller, buyer) = (&invoice.seller, &invoice.buyer);
    let seller_any = said(&seller.vat_id) || said(&seller.tax_number);
    let seller_vat = said(&seller.vat_id);
    let buyer_vat = said(&buyer.vat_id);
    let buyer_any = buyer_vat || said(&buyer.register);
    let (kept, what) = match tax.category {
        Category::Standard | Category::Zero | Category::Exempt => {
            (seller_any, "the seller's VAT identifier or tax number is missing")
        }
        Category::ReverseCharge => {
            (seller_any && buyer_any, "the seller's tax number and the buyer's VAT identifier are needed")
        }
        Category::IntraCommunity => (seller_vat && buyer_vat, "both VAT identifiers are needed"),
        Category::Export => (seller_vat, "the seller's VAT identifier is missing"),
        Category::OutOfScope => (!seller_vat && !buyer_vat, "outside the scope of the tax no VAT identifier may stand"),
    };
    found.need(kept, &rule(2), place, what);
    let (kept, what) = match tax.category {
        Category::Standard => (tax.rate > Decimal::ZERO, "the standard category needs a rate above zero"),
        _ => (tax.rate.is_zero(), "this tax category has no rate"),
    };
    found.need(kept, &rule(5), place, what);
}

fn reason(found: &mut Found, invoice: &Invoice, category: Category) {
    let why = invoice.exemption(category).is_some_and(|one| said(&one.reason) || said(&one.code));
    let rule = format!("BR-{}-10", category.rules());
    found.need(!category.needs_reason() || why, &rule, "tax", "say why there is no tax");
}
