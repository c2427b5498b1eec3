//! Quotes: lines, percentages, rounding, tax; all amounts worked by hand.

mod common;

use common::dent;
use dentwright_price::{
    Charge, Discount, HoursSettings, Kind, LineKind, Part, Quote, QuoteError, QuoteInput, QuotedDent, RiLine, Stacking,
    Sundry, Uplift, UpliftOn, quote,
};
use proptest::prelude::*;
use rust_decimal::Decimal;

fn money(text: &str) -> Decimal {
    text.parse().unwrap()
}

fn plain() -> QuoteInput {
    QuoteInput {
        dents: vec![QuotedDent { what: "bonnet".into(), dent: dent(Kind::Round, 25.0, 1.0, 1) }],
        ri_lines: vec![],
        uplifts: vec![],
        add_or_compound: Stacking::Add,
        hourly_rate: money("95.00"),
        parts: vec![],
        sundries: vec![],
        discount: None,
        tax_percent: money("19"),
        currency: "EUR".into(),
    }
}

fn uplift(percent: &str, on: UpliftOn) -> Uplift {
    Uplift { what: format!("{percent} %"), percent: money(percent), on }
}

fn made(input: &QuoteInput) -> Quote {
    quote(input, &HoursSettings::default()).unwrap()
}

fn amounts(quote: &Quote) -> Vec<String> {
    quote.lines.iter().map(|line| line.amount.to_string()).collect()
}

/// 0.65 h × 95.00 = 61.75; tax 11.7325 → 11.73.
#[test]
fn one_ding() {
    let quote = made(&plain());
    assert_eq!(amounts(&quote), ["61.75"]);
    assert_eq!(quote.tax, money("11.73"));
    assert_eq!(quote.gross, money("73.48"));
    assert!(quote.gross_low < quote.gross && quote.gross < quote.gross_high);
}

fn with_everything(stacking: Stacking) -> QuoteInput {
    QuoteInput {
        ri_lines: vec![
            RiLine { what: "headlining".into(), charge: Charge::Hours(money("1.5")) },
            RiLine { what: "lamp".into(), charge: Charge::Amount(money("30")) },
        ],
        uplifts: vec![uplift("10", UpliftOn::Labour), uplift("25", UpliftOn::Dents)],
        add_or_compound: stacking,
        parts: vec![Part { what: "clip".into(), quantity: money("6"), unit_price: money("1.35") }],
        sundries: vec![Sundry { what: "cavity wax".into(), amount: money("9.90") }],
        discount: Some(Discount::Percent(money("5"))),
        ..plain()
    }
}

/// Uplifts: 25 % of 61.75 = 15.4375 → 15.44; 10 % of (61.75 + 142.50 + 30.00) = 23.425 → 23.43.
/// Discount: 5 % of 291.12 = 14.556 → 14.56. Net 276.56, tax 52.5464 → 52.55.
#[test]
fn percentages_that_add() {
    let quote = made(&with_everything(Stacking::Add));
    assert_eq!(amounts(&quote), ["61.75", "142.50", "30.00", "8.10", "9.90", "15.44", "23.43", "-14.56"]);
    assert_eq!((quote.net, quote.tax, quote.gross), (money("276.56"), money("52.55"), money("329.11")));
}

/// The 10 % are now also on the 25 %: 10 % of (61.75 · 1.25 + 172.50) = 24.96875 → 24.97.
#[test]
fn percentages_that_compound() {
    let quote = made(&with_everything(Stacking::Compound));
    assert_eq!(amounts(&quote)[5..7], ["15.44", "24.97"]);
    assert_eq!(quote.add_or_compound, Stacking::Compound);
}

#[test]
fn a_yen_has_no_cents() {
    let quote = made(&QuoteInput { currency: "JPY".into(), hourly_rate: money("9001"), ..plain() });
    assert_eq!(amounts(&quote), ["5851"]); // 0.65 × 9001 = 5850.65
    assert_eq!(quote.gross.scale(), 0);
}

#[test]
fn a_discount_takes_at_most_everything() {
    let input = QuoteInput { discount: Some(Discount::Amount(money("5000"))), ..plain() };
    assert_eq!(made(&input).gross, Decimal::ZERO);
}

#[test]
fn without_dents_there_is_no_doubt() {
    let quote = made(&QuoteInput { dents: vec![], ..with_everything(Stacking::Compound) });
    assert_eq!((quote.gross_low, quote.gross_high), (quote.gross, quote.gross));
    assert_eq!(quote.hours.high, 0.0);
}

#[test]
fn what_cannot_be_priced_is_named() {
    let mut input = plain();
    input.dents[0].dent.depth_mm = f64::NAN;
    let error = quote(&input, &HoursSettings::default()).unwrap_err().to_string();
    assert_eq!(error, "dent line 1 (bonnet): depth_mm is NaN, but must be at most 500");

    let input = QuoteInput { hourly_rate: money("-1"), ..plain() };
    let error = quote(&input, &HoursSettings::default()).unwrap_err().to_string();
    assert_eq!(error, "the hourly rate is -1, but must be 0 to 10000000");

    let input = QuoteInput { currency: "euro".into(), ..plain() };
    assert_eq!(quote(&input, &HoursSettings::default()), Err(QuoteError::Currency("euro".into())));
}

/// The largest numbers that pass the checks do not overflow; larger hours are refused.
#[test]
fn the_largest_numbers_are_answered() {
    let most = money("10000000");
    let part = Part { what: "p".into(), quantity: most, unit_price: most };
    let input = QuoteInput {
        hourly_rate: most,
        parts: vec![part; 2_000],
        uplifts: vec![uplift("100", UpliftOn::All); 20],
        add_or_compound: Stacking::Compound,
        tax_percent: money("100"),
        ..plain()
    };
    assert!(made(&input).gross > Decimal::ZERO);

    let mut input = plain();
    input.dents[0].dent = dent(Kind::Crease, 5_000.0, 500.0, u32::MAX);
    let error = quote(&input, &HoursSettings::default()).unwrap_err();
    assert!(matches!(error, QuoteError::TooManyHours { .. }), "{error}");
}

#[test]
fn an_ri_line_is_plain_json() {
    let line = RiLine { what: "lamp".into(), charge: Charge::Hours(money("0.4")) };
    let json = serde_json::to_string(&line).unwrap();
    assert_eq!(json, r#"{"what":"lamp","hours":"0.4"}"#);
    assert_eq!(serde_json::from_str::<RiLine>(&json).unwrap(), line);
}

fn cents(most: i64) -> impl Strategy<Value = Decimal> {
    (0..most).prop_map(|cents| Decimal::new(cents, 2))
}

fn any_uplift() -> impl Strategy<Value = Uplift> {
    let on = proptest::sample::select(vec![UpliftOn::Dents, UpliftOn::Labour, UpliftOn::All]);
    ("[a-c]", cents(6_000), on).prop_map(|(what, percent, on)| Uplift { what, percent, on })
}

prop_compose! {
    fn any_input()(
        dents in prop::collection::vec((2.0..90.0_f64, 0.0..5.0_f64, 1_u32..30), 0..8),
        ri in prop::collection::vec(cents(900), 0..4),
        parts in prop::collection::vec((cents(900), cents(9_000)), 0..4),
        uplifts in prop::collection::vec(any_uplift(), 0..5),
        compound in any::<bool>(),
        discount in prop::option::of(cents(10_000)),
        hourly_rate in cents(20_000),
        tax_percent in cents(3_000),
    ) -> QuoteInput {
        let quoted = |(across, depth, count)| QuotedDent { what: "d".into(), dent: dent(Kind::Round, across, depth, count) };
        QuoteInput {
            dents: dents.into_iter().map(quoted).collect(),
            ri_lines: ri.into_iter().map(|hours| RiLine { what: "r".into(), charge: Charge::Hours(hours) }).collect(),
            uplifts,
            add_or_compound: if compound { Stacking::Compound } else { Stacking::Add },
            hourly_rate,
            parts: parts.into_iter().map(|(quantity, unit_price)| Part { what: "p".into(), quantity, unit_price }).collect(),
            sundries: vec![],
            discount: discount.map(Discount::Percent),
            tax_percent,
            currency: "EUR".into(),
        }
    }
}

proptest! {
    #[test]
    fn a_quote_is_the_sum_of_its_lines(input in any_input()) {
        let quote = made(&input);
        prop_assert_eq!(quote.net, quote.lines.iter().map(|line| line.amount).sum::<Decimal>());
        prop_assert_eq!(quote.gross, quote.net + quote.tax);
        prop_assert!(quote.gross_low <= quote.gross && quote.gross <= quote.gross_high);
        let rounded = quote.lines.iter().all(|line| (line.amount - line.quantity * line.unit_price).abs() <= money("0.005"));
        prop_assert!(rounded);
        prop_assert!(quote.lines.iter().all(|line| line.amount.scale() == 2));
    }

    #[test]
    fn the_order_of_entry_changes_nothing(input in any_input(), turn in 0_usize..8) {
        let mut other = input.clone();
        other.dents.reverse();
        other.ri_lines.reverse();
        let (parts, uplifts) = (other.parts.len().max(1), other.uplifts.len().max(1));
        other.parts.rotate_left(turn % parts);
        other.uplifts.rotate_left(turn % uplifts);
        let (one, two) = (made(&input), made(&other));
        prop_assert_eq!((one.net, one.tax, one.gross), (two.net, two.tax, two.gross));
        prop_assert_eq!((one.gross_low, one.gross_high), (two.gross_low, two.gross_high));
        let sorted = |quote: &Quote| {
            let mut amounts: Vec<_> = quote.lines.iter().map(|line| (line.kind, line.amount)).collect();
            amounts.sort();
            amounts
        };
        prop_assert_eq!(sorted(&one), sorted(&two));
    }

    #[test]
    fn one_more_dent_never_makes_a_quote_cheaper(input in any_input(), across_mm in 2.0..90.0_f64) {
        let mut more = input.clone();
        more.dents.push(QuotedDent { what: "one more".into(), dent: dent(Kind::Hail, across_mm, 0.3, 1) });
        prop_assert!(made(&more).gross >= made(&input).gross);
    }

    #[test]
    fn compounding_is_never_cheaper_than_adding(input in any_input()) {
        let stacked = |add_or_compound| made(&QuoteInput { add_or_compound, ..input.clone() });
        prop_assert!(stacked(Stacking::Compound).gross >= stacked(Stacking::Add).gross);
        prop_assert!(stacked(Stacking::Add).lines.iter().filter(|line| line.kind == LineKind::Discount).all(|line| line.amount <= Decimal::ZERO));
    }
}
