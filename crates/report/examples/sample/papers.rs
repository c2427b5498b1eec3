//! Papers' values, all invented.

use super::sample;
use dentwright_invoice::{Address, Invoice, Kind, Party, Payment, Preceding};
use dentwright_report::*;
use jiff::civil::date;

/// A paper of the sample job in a language.
pub fn sample_paper(kind: PaperKind, language: Language, pack: &str) -> PaperData {
    let country = country(pack).unwrap().clone();
    let mut job = sample(language, LengthUnit::Mm, country.paper);
    let quote = job.quote.clone().unwrap();
    let mut before = quote.clone();
    before.lines.remove(2);
    before.lines[3].amount -= rust_decimal::Decimal::new(40_00, 2);
    before.net = before.lines.iter().map(|line| line.amount).sum();
    job.notes = "Old scratch on the rear bumper.\nStone chips on the bonnet.".into();
    let bill = matches!(kind, PaperKind::Invoice | PaperKind::CreditNote | PaperKind::Receipt);
    PaperData {
        kind,
        number: if kind.is_numbered() { "R-2026-0042".into() } else { String::new() },
        country,
        before: Some(before),
        reason: match kind {
            PaperKind::CreditNote => "The headlining was charged twice.".into(),
            PaperKind::Supplement => "With the trim off, a third dent and a hidden brace came to light.".into(),
            _ => String::new(),
        },
        signature: matches!(kind, PaperKind::Authorisation | PaperKind::Supplement).then(signature),
        invoice: bill.then(|| sample_invoice(&job, kind)),
        received: Some(Received { amount: "500.00".parse().unwrap(), date: date(2026, 11, 27), means: "10".into() }),
        promised: Some(date(2026, 11, 28)),
        old: vec![OldMark { panel: "front_bumper".into(), kind: "chip".into(), note: "by the plate".into() }],
        hashes: vec![
            ("door photo".into(), "0123456789abcdef".repeat(4)),
            ("roof".into(), "fedcba9876543210".repeat(4)),
        ],
        job,
    }
}

/// The invoice of the sample's quote.
pub fn sample_invoice(job: &ReportData, kind: PaperKind) -> Invoice {
    let address = |street: &str| Address {
        street: street.into(),
        city: "Invented Town".into(),
        postcode: "10999".into(),
        country: "DE".into(),
        ..Address::default()
    };
    let seller = Party {
        name: job.shop.name.clone(),
        vat_id: "DE123456789".into(),
        address: address("Unit 4, Harbour Row"),
        phone: job.shop.phone.clone(),
        email: job.shop.email.clone(),
        ..Party::default()
    };
    let buyer = Party { name: job.customer.name.clone(), address: address("12 Example Street"), ..Party::default() };
    let quote = job.quote.as_ref().unwrap();
    let mut invoice = Invoice::new("R-2026-0042", date(2026, 11, 26), &quote.currency, seller, buyer);
    (invoice.lines, invoice.adjustments) = lines_of(quote, job.language).unwrap();
    invoice.delivered = Some(date(2026, 11, 25));
    invoice.due = Some(date(2026, 12, 10));
    invoice.notes = vec!["Exempla Tourer, plate IT-ML 417, VIN 1M8GDM9AXKP042788".into()];
    invoice.buyer_reference = job.number.clone();
    invoice.payment = Some(Payment {
        means: "58".into(),
        remittance: "R-2026-0042".into(),
        account: "DE02120300000000202051".into(),
        holder: job.shop.name.clone(),
        bank: "BYLADEM1001".into(),
        ..Payment::default()
    });
    if kind == PaperKind::CreditNote {
        invoice.kind = Kind::CreditNote;
        invoice.number = "G-2026-0003".into();
        invoice.preceding = vec![Preceding { number: "R-2026-0041".into(), issued: Some(date(2026, 11, 20)) }];
    }
    invoice
}

/// An invoice of 90 lines with a 400-letter name, and addresses that run from right to left.
pub fn hard_paper() -> PaperData {
    let mut data = sample_paper(PaperKind::Invoice, Language::En, "DE");
    let long = "Wolfeschlegelsteinhausenbergerdorff".repeat(12)[..400].to_owned();
    data.job.customer.name = long.clone();
    data.job.customer.address = "רחוב הדוגמה 12\nشارع المثال 7\n10999 Erfundenstadt".into();
    data.job.shop.name = "שלום Dellen 👍 שם ארוך".into();
    let invoice = data.invoice.as_mut().unwrap();
    invoice.buyer.name = long.clone();
    invoice.lines = (0..90).map(|_| invoice.lines[0].clone()).collect();
    invoice.lines[40].name = long;
    data
}

/// Loops and a stroke under them.
pub fn signature() -> Signature {
    let loops = (0..220).map(|k| {
        let t = f64::from(k) / 220.0;
        [0.08 + 0.75 * t + 0.05 * (38.0 * t).sin(), 0.2 + 0.09 * (38.0 * t).cos() - 0.04 * t]
    });
    let under = (0..40).map(|k| [0.15 + 0.018 * f64::from(k), 0.31 + 0.0004 * f64::from(k)]);
    Signature {
        name: "Mara Invented".into(),
        at: "2026-11-25T14:03:22Z".parse().unwrap(),
        strokes: vec![loops.collect(), under.collect()],
    }
}
