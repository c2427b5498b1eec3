//! Quotes: lines, percentages, rounding, tax; all amounts worked by hand.

mod common;

use common::dent;
use dentwright_price::{
    Charge, Discount, HoursSettings, Kind, Learned, Part, Pricing, Quote, QuoteError, QuoteInput, QuotedDent, RiLine,
    Stacking, Sundry, Uplift, UpliftOn, quote,
};
use rust_decimal::Decimal;

fn money(text: &str) -> Decimal {
    text.parse().unwrap()
}

fn plain() -> QuoteInput {
    QuoteInput {
        dents: vec![QuotedDent { what: "bonnet".into(), dent: dent(Kind::Round, 25.0, 1.0, 1) }],
        pricing: Pricing::new(money("95.00"), money("19"), "EUR"),
    }
}

/// The plain quote with its pricing changed.
fn with(change: impl FnOnce(&mut Pricing)) -> QuoteInput {
    let mut input = plain();
    change(&mut input.pricing);
    input
}

fn uplift(percent: &str, on: UpliftOn) -> Uplift {
    Uplift { what: format!("{percent} %"), percent: money(percent), on }
}

fn made(input: &QuoteInput) -> Quote {
    tried(input).unwrap()
}

fn tried(input: &QuoteInput) -> Result<Quote, QuoteError> {
    quote(input, &Learned::start(&HoursSettings::default()).unwrap(), None)
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
    with(|pricing| {
        pricing.ri_lines = vec![
            RiLine { what: "headlining".into(), charge: Charge::Hours(money("1.5")) },
            RiLine { what: "lamp".into(), charge: Charge::Amount(money("30")) },
        ];
        pricing.uplifts = vec![uplift("10", UpliftOn::Labour), uplift("25", UpliftOn::Dents)];
        pricing.add_or_compound = stacking;
        pricing.parts = vec![Part { what: "clip".into(), quantity: money("6"), unit_price: money("1.35") }];
        pricing.sundries = vec![Sundry { what: "cavity wax".into(), amount: money("9.90") }];
        pricing.discount = Some(Discount::Percent(money("5")));
    })
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
    assert_eq!(quote.gross_stacked_otherwise, Some(made(&with_everything(Stacking::Add)).gross));
}

#[test]
fn a_yen_has_no_cents() {
    let quote = made(&with(|pricing| {
        pricing.currency = "JPY".into();
        pricing.hourly_rate = money("9001");
    }));
    assert_eq!(amounts(&quote), ["5851"]); // 0.65 × 9001 = 5850.65
    assert_eq!(quote.gross.scale(), 0);
}

#[test]
fn a_discount_takes_at_most_everything() {
    let input = with(|pricing| pricing.discount = Some(Discount::Amount(money("5000"))));
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
    let error = tried(&input).unwrap_err().to_string();
    assert_eq!(error, "dent line 1 (bonnet): depth_mm is NaN, but must be at most 500");

    let input = with(|pricing| pricing.hourly_rate = money("-1"));
    let error = tried(&input).unwrap_err().to_string();
    assert_eq!(error, "the hourly rate is -1, but must be 0 to 10000000");

    let input = with(|pricing| pricing.currency = "euro".into());
    assert_eq!(tried(&input), Err(QuoteError::Currency("euro".into())));

    let mut input = plain();
    input.dents[0].what = "ü".repeat(400);
    let error = tried(&input).unwrap_err().to_string();
    assert!(error.starts_with("a text has 400 letters, but a line holds at most 200"), "{error}");

    let input = with(|pricing| pricing.conditions.panel_c = Some(-80.0));
    assert!(tried(&input).unwrap_err().to_string().starts_with("the panels' temperature is -80 °C"));
}

/// The largest numbers that pass the checks do not overflow; larger hours are refused.
#[test]
fn the_largest_numbers_are_answered() {
    let most = money("10000000");
    let part = Part { what: "p".into(), quantity: most, unit_price: most };
    let input = with(|pricing| {
        pricing.hourly_rate = most;
        pricing.parts = vec![part; 2_000];
        pricing.uplifts = vec![uplift("100", UpliftOn::All); 20];
        pricing.add_or_compound = Stacking::Compound;
        pricing.tax_percent = money("100");
        pricing.goods_tax_percent = Some(money("99.99"));
    });
    assert!(made(&input).gross > Decimal::ZERO);

    let mut input = plain();
    input.dents[0].dent = dent(Kind::Crease, 5_000.0, 500.0, u32::MAX);
    let error = tried(&input).unwrap_err();
    assert!(matches!(error, QuoteError::Dent { .. }) && error.to_string().contains("99999"), "{error}");
    input.dents[0].dent = dent(Kind::Crease, 5_000.0, 500.0, 99_999);
    input.dents = vec![input.dents[0].clone(); 1_000];
    let error = tried(&input).unwrap_err();
    assert!(matches!(error, QuoteError::TooManyHours { .. }), "{error}");
}

#[test]
fn an_ri_line_is_plain_json() {
    let line = RiLine { what: "lamp".into(), charge: Charge::Hours(money("0.4")) };
    let json = serde_json::to_string(&line).unwrap();
    assert_eq!(json, r#"{"what":"lamp","hours":"0.4"}"#);
    assert_eq!(serde_json::from_str::<RiLine>(&json).unwrap(), line);
}

/// The input as the web app has sent it from the first: one flat object.
#[test]
fn an_input_is_one_flat_object() {
    let json = r#"{"dents":[],"hourly_rate":"80","tax_percent":"7.7","currency":"CHF"}"#;
    let input: QuoteInput = serde_json::from_str(json).unwrap();
    assert_eq!(input, QuoteInput { dents: vec![], pricing: Pricing::new(money("80"), money("7.7"), "CHF") });
    let there_and_back: QuoteInput =
        serde_json::from_str(&serde_json::to_string(&with_everything(Stacking::Add)).unwrap()).unwrap();
    assert_eq!(there_and_back, with_everything(Stacking::Add));
}
