//! Days, shares, taxes, conventional repair; worked by hand.

mod common;

use common::dent;
use dentwright_price::{
    Charge, HoursSettings, Kind, Learned, Part, PricedBy, Pricing, Quote, QuoteInput, QuotedDent, RiLine, Split,
    TaxRounding, UpliftOn, quote,
};
use rust_decimal::Decimal;

fn money(text: &str) -> Decimal {
    text.parse().unwrap()
}

fn made(change: impl FnOnce(&mut Pricing)) -> Quote {
    let mut input = QuoteInput {
        dents: vec![QuotedDent { what: "bonnet".into(), dent: dent(Kind::Round, 25.0, 1.0, 1) }],
        pricing: Pricing::new(money("95"), money("19"), "EUR"),
    };
    change(&mut input.pricing);
    quote(&input, &Learned::start(&HoursSettings::default()).unwrap(), None).unwrap()
}

/// 0.65 h of 8 are half a day: 200.00. Entered days count as entered.
#[test]
fn days_go_up_to_the_next_half() {
    let by_days = |days: Option<&str>| {
        made(|pricing| {
            let days = days.map(money);
            pricing.way = PricedBy::DayRate { day_rate: money("400"), hours_per_day: money("8"), days };
        })
    };
    assert_eq!(by_days(None).net, money("200.00"));
    assert_eq!(by_days(Some("1.25")).net, money("500.00"));
    assert_eq!(by_days(Some("1.25")).gross_high, by_days(Some("1.25")).gross);
}

fn with_parts(pricing: &mut Pricing) {
    let part = |name: &str, price| Part { what: name.into(), quantity: Decimal::ONE, unit_price: money(price) };
    pricing.parts = vec![part("clip", "3.33"), part("seal", "3.33"), part("plug", "3.33")];
}

/// Net 61.75 + 9.99 = 71.74. On the invoice 13.6306 → 13.63; by line 11.73 + 3 × 0.63 = 13.62.
#[test]
fn tax_is_rounded_where_the_law_puts_it() {
    assert_eq!(made(with_parts).tax, money("13.63"));
    let by_line = made(|pricing| {
        with_parts(pricing);
        pricing.tax_rounding = TaxRounding::Line;
    });
    assert_eq!(by_line.tax, money("13.62"));
}

/// Work without tax, goods at 8.25 %: 9.99 → 0.824 → 0.82.
#[test]
fn goods_may_have_a_tax_of_their_own() {
    let quote = made(|pricing| {
        with_parts(pricing);
        pricing.tax_percent = Decimal::ZERO;
        pricing.goods_tax_percent = Some(money("8.25"));
    });
    let taxes: Vec<_> = quote.taxes.iter().map(|one| (one.on.to_string(), one.tax.to_string())).collect();
    assert_eq!(taxes, [("61.75".into(), "0.00".into()), ("9.99".into(), "0.82".into())]);
    assert_eq!(quote.gross, money("72.56"));
}

/// Labour 61.75 + 38.25 = 100.00 of 109.99 net; 40 % of it are 40.00.
#[test]
fn net_is_shared_between_technician_and_shop() {
    let quote = made(|pricing| {
        with_parts(pricing);
        pricing.ri_lines = vec![RiLine { what: "lamp".into(), charge: Charge::Amount(money("38.25")) }];
        pricing.split = Some(Split { technician_percent: money("40"), on: UpliftOn::Labour });
    });
    let shares = quote.shares.unwrap();
    assert_eq!((shares.technician, shares.shop), (money("40.00"), money("69.99")));
}

/// 61.75 beside 850: 788.25 less, 92.7 %.
#[test]
fn beside_a_conventional_repair() {
    let against = made(|pricing| pricing.conventional = Some(money("850"))).against.unwrap();
    assert_eq!((against.saved, against.saved_percent), (money("788.25"), Some(money("92.7"))));
    let dearer = made(|pricing| pricing.conventional = Some(money("50"))).against.unwrap();
    assert_eq!(dearer.saved, money("-11.75"));
}

/// 0.65 h × 7.125 KWD = 4.63125 → 4.631; tax 5 % of it 0.232.
#[test]
fn a_dinar_has_thousandths() {
    let quote = made(|pricing| {
        pricing.currency = "KWD".into();
        pricing.hourly_rate = money("7.125");
        pricing.tax_percent = money("5");
    });
    assert_eq!((quote.net.to_string(), quote.tax.to_string()), ("4.631".into(), "0.232".into()));
}
