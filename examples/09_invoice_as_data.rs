//! An invoice and its credit note by EN 16931, as UBL and as CII, with its totals.

use dentwright_invoice::{Address, HOUR, Invoice, Kind, Line, PIECE, Party, Preceding, Tax, Totals, check, cii, ubl};
use jiff::civil::date;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let at = |street: &str| Address {
        street: street.into(),
        city: "Erfundenstadt".into(),
        postcode: "10999".into(),
        country: "DE".into(),
        ..Address::default()
    };
    let seller = Party {
        name: "Line & Light".into(),
        vat_id: "DE123456789".into(),
        address: at("Hafenzeile 4"),
        ..Party::default()
    };
    let buyer = Party { name: "Mara Invented".into(), address: at("Beispielweg 12"), ..Party::default() };
    let mut invoice = Invoice::new("I-2026-0001", date(2026, 11, 26), "EUR", seller, buyer);
    let tax = Tax::at("19".parse()?);
    invoice.lines = vec![
        Line::new("Roof, 46 dents", "7.85".parse()?, HOUR, "95.00".parse()?, tax),
        Line::new("Clips", "6".parse()?, PIECE, "1.35".parse()?, tax),
    ];
    println!("without a day to pay: {}", check(&invoice)[0]);
    assert_eq!(check(&invoice)[0].rule, "BR-CO-25");
    invoice.due = Some(date(2026, 12, 10));
    assert!(check(&invoice).is_empty());

    let totals = Totals::of(&invoice);
    println!("net {}, tax {}, total {}", totals.net, totals.tax, totals.gross);
    assert_eq!(totals.net.to_string(), "753.85"); // 7.85 × 95 + 6 × 1.35
    assert_eq!(totals.tax.to_string(), "143.23"); // 19 % of it
    assert_eq!(totals.gross.to_string(), "897.08");

    let [as_ubl, as_cii] = [ubl(&invoice), cii(&invoice)].map(|bytes| String::from_utf8_lossy(&bytes).into_owned());
    assert!(as_ubl.contains("<cbc:PayableAmount currencyID=\"EUR\">897.08</cbc:PayableAmount>"));
    assert!(as_cii.contains("<ram:DuePayableAmount>897.08</ram:DuePayableAmount>"));

    let preceding = Preceding { number: invoice.number.clone(), issued: Some(invoice.issued) };
    let note = Invoice { number: "C-2026-0001".into(), kind: Kind::CreditNote, preceding: vec![preceding], ..invoice };
    assert!(check(&note).is_empty());
    assert!(String::from_utf8_lossy(&ubl(&note)).contains("<cbc:CreditNoteTypeCode>381<"));
    Ok(())
}
