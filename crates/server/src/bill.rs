//! A job's quote as an invoice, and an invoice given back.

use crate::paper_issue::Issue;
use crate::trouble::{Answer, Trouble};
use dentwright_invoice::{
    Adjustment, Category, Exemption, Invoice, Kind, Line as InvoiceLine, PIECE, Party, Payment, Preceding, Tax, Totals,
};
use dentwright_job::{Billing, Job, Shop};
use dentwright_price::Quote;
use dentwright_report::{Country, Language, address_of, lines_of, rounded_to_cash};
use jiff::ToSpan;
use jiff::civil::Date;
use rust_decimal::Decimal;

/// The invoice of a job's quote; its number comes when it is issued.
#[expect(clippy::too_many_arguments, reason = "each is a noun of the invoice")]
pub fn invoice(
    job: &Job,
    shop: &Shop,
    billing: &Billing,
    pack: &Country,
    quote: &Quote,
    language: Language,
    body: &Issue,
    today: Date,
) -> Answer<Invoice> {
    let (seller, buyer) = (seller(shop, billing, pack), buyer(job, pack, &body.buyer_vat_id));
    let mut invoice = Invoice::new("", today, &quote.currency, seller, buyer);
    (invoice.lines, invoice.adjustments) =
        lines_of(quote, language).map_err(|why| Trouble::own("making the invoice", why))?;
    if !billing.exempt_reason.is_empty() {
        exempt(&mut invoice, &billing.exempt_reason);
    }
    invoice.delivered = Some(today);
    invoice.due = Some(today.checked_add(i64::from(billing.due_days).days()).map_err(Trouble::entered)?);
    invoice.buyer_reference = job.number.clone();
    let vin = job.car.vin.as_ref().map(|vin| vin.as_str().to_owned()).unwrap_or_default();
    let car: Vec<String> =
        [job.car.title(), job.car.plate.clone(), vin].into_iter().filter(|one| !one.is_empty()).collect();
    invoice.notes = if car.is_empty() { vec![] } else { vec![car.join(", ")] };
    let transfer = if billing.account.is_empty() { "10" } else { "58" };
    invoice.payment = Some(Payment {
        means: body.means.clone().unwrap_or_else(|| transfer.to_owned()),
        account: billing.account.replace(' ', ""),
        holder: shop.name.clone(),
        bank: billing.bank.clone(),
        ..Payment::default()
    });
    if body.means.as_deref() == Some("10") {
        let gross = Totals::of(&invoice).gross;
        invoice.rounding = rounded_to_cash(gross, pack.cash_step) - gross;
    }
    Ok(invoice)
}

fn seller(shop: &Shop, billing: &Billing, pack: &Country) -> Party {
    Party {
        name: shop.name.clone(),
        vat_id: billing.vat_id.replace(' ', ""),
        tax_number: if billing.tax_number.is_empty() { shop.tax_id.clone() } else { billing.tax_number.clone() },
        register: billing.register.clone(),
        address: address_of(&shop.address, &pack.code),
        phone: shop.phone.clone(),
        email: shop.email.clone(),
        ..Party::default()
    }
}

fn buyer(job: &Job, pack: &Country, vat_id: &str) -> Party {
    let customer = &job.customer;
    Party {
        name: customer.name.clone(),
        vat_id: vat_id.replace(' ', ""),
        address: address_of(&customer.address, &pack.code),
        phone: customer.phone.clone(),
        email: customer.email.clone(),
        ..Party::default()
    }
}

/// A shop that charges no tax says why, once.
fn exempt(invoice: &mut Invoice, reason: &str) {
    let none = Tax::none(Category::Exempt);
    invoice.lines.iter_mut().for_each(|line| line.tax = none);
    invoice.adjustments.iter_mut().for_each(|one| one.tax = none);
    let code = String::new();
    invoice.exemptions = vec![Exemption { category: Category::Exempt, reason: reason.to_owned(), code }];
}

/// An invoice given back, wholly or a net part of it shared between its rates as they stand on it.
pub fn credit_note(invoice: &Invoice, part: Option<Decimal>, reason: &str, today: Date) -> Result<Invoice, String> {
    let mut note = invoice.clone();
    note.kind = Kind::CreditNote;
    note.preceding = vec![Preceding { number: invoice.number.clone(), issued: Some(invoice.issued) }];
    note.issued = today;
    note.due = Some(today);
    note.prepaid = Decimal::ZERO;
    note.rounding = Decimal::ZERO;
    let Some(part) = part else { return Ok(note) };
    let totals = Totals::of(invoice);
    if part <= Decimal::ZERO || part > totals.net {
        return Err(format!("{part} is to be given back, but it must be above 0 and at most {}", totals.net));
    }
    let coin = invoice.coin();
    let name = if reason.is_empty() { invoice.number.clone() } else { reason.to_owned() };
    let mut rest = dentwright_price::round(part, coin);
    let last = totals.by_rate.len() - 1;
    note.adjustments = Vec::<Adjustment>::new();
    note.lines = totals
        .by_rate
        .iter()
        .enumerate()
        .map(|(index, rate)| {
            let share = if index == last { rest } else { dentwright_price::round(part * rate.base / totals.net, coin) };
            rest -= share;
            InvoiceLine::new(name.clone(), Decimal::ONE, PIECE, share, rate.tax)
        })
        .collect();
    Ok(note)
}
