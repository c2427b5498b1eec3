//! Invoice, credit note and receipt.
//!
//! What stands here is what VAT Directive 2006/112/EC, Article 226, asks for: day and number (1, 2), VAT
//! numbers of both (3, 4), names and addresses of both (5, in the paper's head), kind and amount of work
//! (6), day of supply (7), unit price, discount and what tax is taken on by rate (8), rate (9), tax (10),
//! why there is none (11, 11a).

use super::block::Block;
use super::set::{ATTACHED, Made};
use crate::ReportError;
use dentwright_invoice::{DAY, HOUR, Invoice, Kind, PIECE, Tax, Totals};

type Blocks = Result<Vec<Block>, ReportError>;
type Rows = Result<Vec<[String; 2]>, ReportError>;

pub(crate) fn bill(made: &Made) -> Blocks {
    let words = &made.with.words;
    let Some(invoice) = &made.data.invoice else { return Ok(vec![]) };
    let totals = Totals::of(invoice);
    let mut blocks = vec![Block::Pairs { rows: facts(made, invoice)? }];
    if !made.data.reason.is_empty() {
        blocks.push(Block::text(&made.data.reason));
    }
    blocks.push(lines(made, invoice)?);
    blocks.push(Block::Sums { rows: sums(made, invoice, &totals)? });
    blocks.extend(
        invoice.exemptions.iter().filter(|why| why.category.needs_reason()).map(|why| Block::text(&why.reason)),
    );
    blocks.extend(invoice.notes.iter().map(Block::small));
    let payment = payment(made, invoice)?;
    if !payment.is_empty() {
        blocks.push(Block::section(words.say("bill-payment")?));
        blocks.push(Block::Pairs { rows: payment });
    }
    blocks.extend(made.data.country.lines(made.data.job.language).invoice.iter().map(Block::small));
    if made.attached {
        blocks.push(Block::small(words.fill("bill-embedded", &[("file", ATTACHED)])?));
    }
    Ok(blocks)
}

/// Label and value of everything that is known.
fn known(made: &Made, rows: Vec<(&str, String)>) -> Rows {
    rows.into_iter()
        .filter(|(_, value)| !value.is_empty())
        .map(|(key, value)| Ok([made.with.words.say(key)?, value]))
        .collect()
}

fn facts(made: &Made, invoice: &Invoice) -> Rows {
    let words = &made.with.words;
    let day = |day: Option<jiff::civil::Date>| day.map(|day| made.date(day)).transpose().map(Option::unwrap_or_default);
    let period = invoice.period.map(|(first, last)| Ok(format!("{} – {}", made.date(first)?, made.date(last)?)));
    let corrects = invoice.preceding.iter().map(|one| match one.issued {
        Some(issued) => words.fill("bill-corrects-of", &[("number", &one.number), ("date", &made.date(issued)?)]),
        None => Ok(one.number.clone()),
    });
    known(
        made,
        vec![
            ("bill-issued", made.date(invoice.issued)?),
            ("bill-delivered", day(invoice.delivered)?),
            ("bill-period", period.transpose()?.unwrap_or_default()),
            ("bill-due", day(invoice.due)?),
            ("bill-corrects", corrects.collect::<Result<Vec<_>, ReportError>>()?.join(", ")),
            ("bill-seller-vat", invoice.seller.vat_id.clone()),
            ("bill-seller-tax", invoice.seller.tax_number.clone()),
            ("bill-seller-register", invoice.seller.register.clone()),
            ("bill-buyer-vat", invoice.buyer.vat_id.clone()),
            ("bill-reference", invoice.buyer_reference.clone()),
        ],
    )
}

fn lines(made: &Made, invoice: &Invoice) -> Result<Block, ReportError> {
    let (words, format) = (&made.with.words, &made.with.format);
    let money = |amount| made.money(amount, &invoice.currency);
    let rate = |tax: Tax| format!("{}\u{a0}%", format.quantity(tax.rate));
    let unit = |code: &str| match code {
        HOUR => words.say("unit-hour").map(|unit| format!("\u{a0}{unit}")),
        DAY => words.say("unit-day").map(|unit| format!("\u{a0}{unit}")),
        PIECE => Ok(String::new()),
        other => Ok(format!("\u{a0}{other}")),
    };
    let mut rows = Vec::new();
    for (index, line) in invoice.lines.iter().enumerate() {
        rows.push(vec![
            (index + 1).to_string(),
            line.name.clone(),
            format!("{}{}", format.quantity(line.quantity), unit(&line.unit)?),
            format.money_exact(line.price, &invoice.currency),
            rate(line.tax),
            money(line.net(invoice.coin())),
        ]);
    }
    for one in &invoice.adjustments {
        let amount = if one.charge { one.amount } else { -one.amount };
        let (none, reason) = (String::new(), one.reason.clone());
        rows.push(vec![none.clone(), reason, none.clone(), none, rate(one.tax), money(amount)]);
    }
    let head = ["dent-number", "bill-what", "bill-quantity", "bill-price", "bill-rate", "bill-amount"];
    Ok(Block::Table {
        head: head.iter().map(|key| words.say(key)).collect::<Result<_, _>>()?,
        numbers: vec![true, false, true, true, true, true],
        rows,
    })
}

fn sums(made: &Made, invoice: &Invoice, totals: &Totals) -> Rows {
    let (words, format) = (&made.with.words, &made.with.format);
    let money = |amount| made.money(amount, &invoice.currency);
    let mut rows = vec![[words.say("bill-net")?, money(totals.net)]];
    let name = made.data.country.tax_name(made.data.job.language);
    for one in &totals.by_rate {
        let rate = format!("{}\u{a0}%", format.quantity(one.tax.rate));
        let key = if one.tax.rate.is_zero() { "bill-no-tax" } else { "bill-tax" };
        let label = words.fill(key, &[("tax", name), ("rate", &rate), ("base", &money(one.base))])?;
        rows.push([label, money(one.amount)]);
    }
    rows.push([words.say("bill-gross")?, money(totals.gross)]);
    if !invoice.prepaid.is_zero() {
        rows.push([words.say("bill-prepaid")?, money(-invoice.prepaid)]);
    }
    if !invoice.rounding.is_zero() {
        rows.push([words.say("bill-rounding")?, money(invoice.rounding)]);
    }
    let due = if invoice.kind == Kind::CreditNote { "bill-credit" } else { "bill-pay" };
    rows.push([words.say(due)?, money(totals.due)]);
    Ok(rows)
}

fn payment(made: &Made, invoice: &Invoice) -> Rows {
    let payment = invoice.payment.clone().unwrap_or_default();
    let means = if payment.means.is_empty() { String::new() } else { means(made, &payment.means)? };
    known(
        made,
        vec![
            ("bill-terms", invoice.terms.clone()),
            ("bill-means", means),
            ("bill-account", payment.account),
            ("bill-bank", payment.bank),
            ("bill-holder", payment.holder),
            ("bill-remittance", payment.remittance),
        ],
    )
}

fn means(made: &Made, code: &str) -> Result<String, ReportError> {
    let words = &made.with.words;
    words.find(&format!("means-{code}")).map_or_else(|| words.say("means-other"), Ok)
}

pub(crate) fn receipt(made: &Made) -> Blocks {
    let words = &made.with.words;
    let (Some(invoice), Some(received)) = (&made.data.invoice, &made.data.received) else { return Ok(vec![]) };
    let totals = Totals::of(invoice);
    let money = |amount| made.money(amount, &invoice.currency);
    let open = totals.due - received.amount;
    let mut rows = vec![
        ("receipt-amount", money(received.amount)),
        ("receipt-date", made.date(received.date)?),
        ("receipt-means", means(made, &received.means)?),
        ("receipt-for", invoice.number.clone()),
    ];
    if !open.is_zero() {
        rows.push(("receipt-open", money(open)));
    }
    let mut taxed = sums(made, invoice, &totals)?;
    taxed.pop(); // what was still to be paid stands above
    Ok(vec![
        Block::text(words.fill("receipt-text", &[("name", &invoice.buyer.name)])?),
        Block::Pairs { rows: known(made, rows)? },
        Block::Sums { rows: taxed },
        super::set::signature(made, "sign-shop")?,
    ])
}
