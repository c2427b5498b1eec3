//! Invoices to test with; all names are invented. Numbers of the worked examples are the standard's own.

#![allow(dead_code, reason = "each test takes what it needs")]

use dentwright_invoice::*;
use jiff::civil::date;
use rust_decimal::Decimal;

pub fn d(text: &str) -> Decimal {
    text.parse().unwrap()
}

pub fn seller() -> Party {
    Party {
        name: "Line & Light Dellen GmbH".into(),
        trade_name: "Line & Light".into(),
        register: "HRB 00000".into(),
        legal: "Geschäftsführung: M. Invented".into(),
        vat_id: "DE123456789".into(),
        tax_number: "12/345/67890".into(),
        endpoint: "shop@example.org".into(),
        endpoint_scheme: "EM".into(),
        address: Address {
            street: "Hafenzeile 4".into(),
            more: "Tor 2".into(),
            city: "Erfundenstadt".into(),
            postcode: "10999".into(),
            country: "DE".into(),
            ..Address::default()
        },
        contact: "M. Invented".into(),
        phone: "+49 555 0101".into(),
        email: "shop@example.org".into(),
    }
}

pub fn buyer() -> Party {
    Party {
        name: "Zoë Größe <\"&'>".into(),
        address: Address {
            street: "Beispielweg 12".into(),
            city: "Erfundenstadt".into(),
            postcode: "10998".into(),
            country: "DE".into(),
            ..Address::default()
        },
        email: "zoe@example.org".into(),
        ..Party::default()
    }
}

/// A hail job: dents by the hour, parts, a charge, a discount.
pub fn plain() -> Invoice {
    let tax = Tax::at(d("19"));
    let mut invoice = Invoice::new("2026-0042", date(2026, 11, 26), "EUR", seller(), buyer());
    invoice.due = Some(date(2026, 12, 10));
    invoice.terms = "Payable within 14 days without deduction".into();
    invoice.notes = vec!["Job 2026-117, plate EX 1, VIN 1M8GDM9AXKP042788".into()];
    invoice.buyer_reference = "2026-117".into();
    invoice.delivered = Some(date(2026, 11, 25));
    invoice.period = Some((date(2026, 11, 23), date(2026, 11, 25)));
    invoice.payment = Some(Payment {
        means: "58".into(),
        text: "SEPA".into(),
        remittance: "2026-0042".into(),
        account: "DE02120300000000202051".into(),
        holder: "Line & Light".into(),
        bank: "BYLADEM1001".into(),
    });
    invoice.lines = vec![
        Line::new("Roof: 46 dents, 15 mm", d("7.85"), HOUR, d("95.00"), tax),
        Line::new("Headlining lowered", d("2.5"), HOUR, d("95.00"), tax),
        Line { item: "C-6".into(), ..Line::new("Clips", d("6"), PIECE, d("1.355"), tax) },
    ];
    invoice.adjustments = vec![
        Adjustment {
            charge: true,
            amount: d("14.00"),
            base: None,
            percent: None,
            reason: "Cavity wax".into(),
            reason_code: String::new(),
            tax,
        },
        Adjustment {
            charge: false,
            amount: d("29.73"),
            base: Some(d("991.10")),
            percent: Some(d("3")),
            reason: "Discount".into(),
            reason_code: "95".into(),
            tax,
        },
    ];
    invoice
}

/// The same given back.
pub fn credit_note() -> Invoice {
    let mut note = plain();
    note.number = "2026-0043".into();
    note.kind = Kind::CreditNote;
    note.preceding = vec![Preceding { number: "2026-0042".into(), issued: Some(date(2026, 11, 26)) }];
    note
}

/// One line of a category without tax, with all that it needs.
pub fn of_category(category: Category) -> Invoice {
    let mut invoice = plain();
    invoice.adjustments.clear();
    invoice.lines.truncate(1);
    invoice.lines[0].tax = Tax::none(category);
    let (reason, code) = match category {
        Category::Standard | Category::Zero => ("", ""),
        Category::Exempt => ("Small business", "VATEX-EU-132"),
        Category::ReverseCharge => ("Reverse charge", "VATEX-EU-AE"),
        Category::IntraCommunity => ("Intra-community supply", "VATEX-EU-IC"),
        Category::Export => ("Export", "VATEX-EU-G"),
        Category::OutOfScope => ("Not subject to VAT", "VATEX-EU-O"),
    };
    if category.needs_reason() {
        invoice.exemptions = vec![Exemption { category, reason: reason.into(), code: code.into() }];
    }
    match category {
        Category::ReverseCharge | Category::IntraCommunity => {
            invoice.buyer.vat_id = "ATU12345678".into();
            invoice.buyer.address.country = "AT".into();
            invoice.deliver_to = invoice.buyer.address.clone();
        }
        Category::OutOfScope => invoice.seller.vat_id.clear(),
        _ => {}
    }
    invoice
}

/// Two rates, a part paid before, a total rounded to five cents, coins of no decimals and the rest.
pub fn all() -> Vec<(String, Invoice)> {
    let mut two = plain();
    two.lines[2].tax = Tax::at(d("7"));
    two.prepaid = d("200.00");
    two.rounding = d("0.02");
    two.payment = Some(Payment { means: "10".into(), ..Payment::default() });
    let mut yen = plain();
    yen.currency = "JPY".into();
    yen.adjustments.clear();
    let mut bare = Invoice::new("1", date(2026, 1, 2), "EUR", seller(), buyer());
    bare.seller.trade_name.clear();
    bare.seller.endpoint.clear();
    bare.buyer.email.clear();
    bare.terms = "Paid on the spot".into();
    bare.lines = vec![Line::new("One dent", d("1"), PIECE, d("80"), Tax::at(d("20")))];
    let mut odd = plain();
    odd.buyer.name = format!("{}\u{0}\u{1b} עברית العربية 👍", "x".repeat(400));
    odd.notes = vec!["two\nlines ]]> &amp; <cbc:ID>".into()];
    odd.lines[0].adjustments = vec![
        LineAdjustment { charge: false, amount: d("12.00"), reason: "Old damage".into(), reason_code: String::new() },
        LineAdjustment { charge: true, amount: d("3.50"), reason: "Late work".into(), reason_code: String::new() },
    ];
    odd.lines[1].quantity = d("-1");
    let mut list = vec![
        ("plain".to_owned(), plain()),
        ("credit".to_owned(), credit_note()),
        ("two-rates".to_owned(), two),
        ("yen".to_owned(), yen),
        ("bare".to_owned(), bare),
        ("odd".to_owned(), odd),
    ];
    use Category::*;
    for category in [Zero, Exempt, ReverseCharge, IntraCommunity, Export, OutOfScope] {
        list.push((format!("category-{}", category.code()), of_category(category)));
    }
    list.push(("example-2".to_owned(), ubl_example_2()));
    list.push(("example-5".to_owned(), cii_example_5()));
    list
}

/// The amounts of CEN's worked example 2 for UBL (`ubl-tc434-example2.xml`).
pub fn ubl_example_2() -> Invoice {
    let (high, low) = (Tax::at(d("25")), Tax::at(d("15")));
    let norwegian = |name: &str, vat: &str| Party {
        name: name.into(),
        vat_id: vat.into(),
        register: "123456789".into(),
        address: Address { city: "Invented".into(), country: "NO".into(), ..Address::default() },
        ..Party::default()
    };
    let mut invoice = Invoice::new(
        "EX-2",
        date(2013, 6, 30),
        "NOK",
        norwegian("Seller", "NO123456789MVA"),
        norwegian("Buyer", "NO987654321MVA"),
    );
    invoice.due = Some(date(2013, 7, 20));
    let on_line = |charge| LineAdjustment { charge, amount: d("12"), reason: "x".into(), reason_code: String::new() };
    let line = |quantity, unit, price, tax| Line::new("Item", d(quantity), unit, d(price), tax);
    invoice.lines = vec![
        Line { adjustments: vec![on_line(false), on_line(true)], ..line("1", "EA", "1273.00", high) },
        line("-1", "EA", "3.96", low),
        line("2", "EA", "2.48", low),
        line("-1", "EA", "25.00", Tax::none(Category::Exempt)),
        line("250", "MTR", "0.75", high),
    ];
    let whole = |charge, reason: &str, code: &str| Adjustment {
        charge,
        amount: d("100.00"),
        base: None,
        percent: None,
        reason: reason.into(),
        reason_code: code.into(),
        tax: high,
    };
    invoice.adjustments = vec![whole(false, "Promotion discount", ""), whole(true, "Freight", "")];
    invoice.exemptions =
        vec![Exemption { category: Category::Exempt, reason: "Exempt New Means of Transport".into(), code: "".into() }];
    invoice.prepaid = d("1000.00");
    invoice
}

/// The amounts of CEN's worked example 5 for CII (`CII_example5.xml`).
pub fn cii_example_5() -> Invoice {
    let (high, low) = (Tax::at(d("25")), Tax::at(d("12")));
    let mut invoice = Invoice::new("EX-5", date(2013, 4, 10), "DKK", seller(), buyer());
    invoice.terms = "50% prepaid, 50% within one month".into();
    invoice.due = Some(date(2013, 5, 10));
    let on_line = |charge| LineAdjustment { charge, amount: d("100"), reason: "x".into(), reason_code: String::new() };
    invoice.lines = vec![
        Line {
            adjustments: vec![on_line(false), on_line(true)],
            ..Line::new("Printing paper", d("1000"), PIECE, d("1"), high)
        },
        Line::new("Pen", d("100"), PIECE, d("5"), high),
        Line::new("Cookies", d("500"), PIECE, d("5"), low),
    ];
    let whole = |charge, reason: &str, code: &str| Adjustment {
        charge,
        amount: d("150"),
        base: Some(d("1500")),
        percent: Some(d("10")),
        reason: reason.into(),
        reason_code: code.into(),
        tax: high,
    };
    invoice.adjustments = vec![whole(false, "Loyal customer", "95"), whole(true, "Packaging", "ABL")];
    invoice.prepaid = d("2337.5");
    invoice
}
