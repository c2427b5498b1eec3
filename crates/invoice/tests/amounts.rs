//! Amounts: the standard's worked examples, our XML read back by another parser, laws of the sums.

mod common;

use common::*;
use dentwright_invoice::*;
use proptest::prelude::*;
use roxmltree::{Document, Node};
use rust_decimal::Decimal;

#[test]
fn worked_example_2() {
    let totals = Totals::of(&ubl_example_2());
    let is = |value: Decimal, published: &str| assert_eq!(value, d(published));
    is(totals.lines, "1436.50");
    is(totals.allowances, "100.00");
    is(totals.charges, "100.00");
    is(totals.net, "1436.50");
    is(totals.tax, "365.28");
    is(totals.gross, "1801.78");
    is(totals.due, "801.78");
    let rates: Vec<_> = totals.by_rate.iter().map(|one| (one.tax.category.code(), one.base, one.amount)).collect();
    assert_eq!(rates, [("S", d("1.00"), d("0.15")), ("S", d("1460.50"), d("365.13")), ("E", d("-25.00"), d("0.00"))]);
}

#[test]
fn worked_example_5() {
    let totals = Totals::of(&cii_example_5());
    assert_eq!([totals.lines, totals.net, totals.tax, totals.gross], ["4000", "4000", "675", "4675"].map(d));
    assert_eq!([totals.allowances, totals.charges, totals.due], ["150", "150", "2337.5"].map(d));
    let rates: Vec<_> = totals.by_rate.iter().map(|one| (one.tax.rate, one.base, one.amount)).collect();
    assert_eq!(rates, [(d("12"), d("2500"), d("300")), (d("25"), d("1500"), d("375"))]);
}

fn named<'a>(node: Node<'a, 'a>, name: &'a str) -> impl Iterator<Item = Node<'a, 'a>> {
    node.descendants().filter(move |one| one.tag_name().name() == name)
}

fn decimal(node: Node<'_, '_>) -> Decimal {
    node.text().unwrap().parse().unwrap()
}

/// Amounts of a document by the names of its elements, totals first, then a row for each line and each rate.
#[derive(Debug, PartialEq)]
struct Read {
    totals: Vec<Decimal>,
    lines: Vec<[Decimal; 3]>,
    rates: Vec<[Decimal; 3]>,
}

fn read(bytes: &[u8], totals: [&str; 7], group: &str, line: [&str; 4], rate: [&str; 4]) -> Read {
    let text = std::str::from_utf8(bytes).unwrap();
    let document = Document::parse(text).unwrap();
    let root = document.root();
    let sums = named(root, group).next().unwrap();
    let total = |name: &&str| named(sums, name).next().or_else(|| named(root, name).next()).map(decimal);
    let row = |node, names: [&str; 3]| {
        names.map(|name| named(node, name).last().map(decimal).unwrap_or_default().normalize())
    };
    Read {
        totals: totals.iter().map(|name| total(name).unwrap_or_default().normalize()).collect(),
        lines: named(root, line[0]).map(|node| row(node, [line[1], line[2], line[3]])).collect(),
        rates: named(root, rate[0])
            .filter(|node| node.children().any(|child| child.tag_name().name() == rate[1]))
            .map(|node| row(node, [rate[1], rate[2], rate[3]]))
            .collect(),
    }
}

fn of_ubl(bytes: &[u8], credit: bool) -> Read {
    let (line, quantity) =
        if credit { ("CreditNoteLine", "CreditedQuantity") } else { ("InvoiceLine", "InvoicedQuantity") };
    read(
        bytes,
        [
            "LineExtensionAmount",
            "AllowanceTotalAmount",
            "ChargeTotalAmount",
            "TaxExclusiveAmount",
            "TaxAmount",
            "TaxInclusiveAmount",
            "PayableAmount",
        ],
        "LegalMonetaryTotal",
        [line, quantity, "PriceAmount", "LineExtensionAmount"],
        ["TaxSubtotal", "TaxableAmount", "TaxAmount", "Percent"],
    )
}

fn of_cii(bytes: &[u8]) -> Read {
    read(
        bytes,
        [
            "LineTotalAmount",
            "AllowanceTotalAmount",
            "ChargeTotalAmount",
            "TaxBasisTotalAmount",
            "TaxTotalAmount",
            "GrandTotalAmount",
            "DuePayableAmount",
        ],
        "SpecifiedTradeSettlementHeaderMonetarySummation",
        ["IncludedSupplyChainTradeLineItem", "BilledQuantity", "ChargeAmount", "LineTotalAmount"],
        ["ApplicableTradeTax", "BasisAmount", "CalculatedAmount", "RateApplicablePercent"],
    )
}

fn expected(invoice: &Invoice) -> Read {
    let totals = Totals::of(invoice);
    let coin = invoice.coin();
    let all = [totals.lines, totals.allowances, totals.charges, totals.net, totals.tax, totals.gross, totals.due];
    Read {
        totals: all.iter().map(Decimal::normalize).collect(),
        lines: invoice
            .lines
            .iter()
            .map(|one| [one.quantity, one.price, one.net(coin)].map(|v| v.normalize()))
            .collect(),
        rates: totals.by_rate.iter().map(|one| [one.base, one.amount, one.tax.rate].map(|v| v.normalize())).collect(),
    }
}

#[test]
fn another_parser_reads_the_same_amounts() {
    for (name, invoice) in all() {
        let wanted = expected(&invoice);
        assert_eq!(of_ubl(&ubl(&invoice), invoice.kind == Kind::CreditNote), wanted, "{name}, UBL");
        assert_eq!(of_cii(&cii(&invoice)), wanted, "{name}, CII");
    }
}

#[test]
fn entered_text_comes_back_as_it_was() {
    let mut invoice = plain();
    let hostile = "]]> <cbc:ID>&amp;\"' {$x} ünïcode 👍 עברית";
    invoice.buyer.name = hostile.into();
    for bytes in [ubl(&invoice), cii(&invoice)] {
        let text = String::from_utf8(bytes).unwrap();
        let document = Document::parse(&text).unwrap();
        assert!(document.descendants().any(|node| node.text() == Some(hostile)), "{text}");
    }
}

#[test]
fn three_decimals_are_refused_and_not_cut() {
    let mut invoice = plain();
    invoice.currency = "KWD".into();
    assert!(check(&invoice).iter().any(|one| one.rule == "BR-DEC-09"));
    let mut invoice = plain();
    invoice.prepaid = d("1.005");
    assert!(check(&invoice).iter().any(|one| one.rule == "BR-DEC-16"));
}

fn any_line() -> impl Strategy<Value = Line> {
    (-500i64..5000, 0i64..90_000, 0usize..3).prop_map(|(quantity, price, rate)| {
        let rate = ["19", "7", "5.5"][rate];
        Line::new("x", Decimal::new(quantity, 2), HOUR, Decimal::new(price, 3), Tax::at(d(rate)))
    })
}

proptest! {
    /// BR-CO-10 to 16 and BR-S-08, worked out here once more from what was written.
    #[test]
    fn sums_hold_in_any_order(lines in prop::collection::vec(any_line(), 1..20), seed in any::<u64>()) {
        let mut invoice = plain();
        invoice.lines = lines;
        let totals = Totals::of(&invoice);
        let turn = (seed as usize) % invoice.lines.len();
        invoice.lines.rotate_left(turn);
        prop_assert_eq!(&Totals::of(&invoice), &totals);
        let read = of_cii(&cii(&invoice));
        let lines: Decimal = read.lines.iter().map(|line| line[2]).sum();
        prop_assert_eq!(lines, totals.lines);
        prop_assert_eq!(read.rates.iter().map(|rate| rate[0]).sum::<Decimal>(), totals.net);
        prop_assert_eq!(read.rates.iter().map(|rate| rate[1]).sum::<Decimal>(), totals.tax);
        prop_assert_eq!(totals.net + totals.tax, totals.gross);
        prop_assert_eq!(totals.lines - totals.allowances + totals.charges, totals.net);
    }
}
