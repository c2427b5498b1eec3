//! Laws that hold for every quote, whatever the way of pricing.

mod common;

use common::dent;
use dentwright_price::{
    Charge, Discount, HailTable, HoursSettings, Kind, Learned, Line, LineKind, Part, PricePer, PricedBy, Pricing,
    Quote, QuoteInput, QuotedDent, RiLine, SizeClass, SizeRule, Split, Stacking, Sundry, TaxRounding, Uplift, UpliftOn,
    decimals, quote,
};
use proptest::prelude::*;
use rust_decimal::Decimal;

const TABLE: &str = "panel;dents;10 mm;20 mm;35 mm
roof;1-5;60;80;110,50
roof;6-20;90;120;150
roof;21+;190;220;250
*;1-3;40;50;66
*;4+;70,05;80;99
";

fn table(per: PricePer) -> HailTable {
    HailTable::from_csv(TABLE, per, |name| Some(name.to_owned())).unwrap()
}

fn made(input: &QuoteInput) -> Quote {
    let per = if input.dents.len() % 2 == 0 { PricePer::Panel } else { PricePer::Dent };
    made_by(input, &table(per))
}

fn made_by(input: &QuoteInput, table: &HailTable) -> Quote {
    let learned = Learned::start(&HoursSettings::default()).unwrap();
    quote(input, &learned, Some(table)).unwrap()
}

fn cents(most: i64) -> impl Strategy<Value = Decimal> {
    (0..most).prop_map(|cents| Decimal::new(cents, 2))
}

fn any_uplift() -> impl Strategy<Value = Uplift> {
    ("[a-c]", cents(6_000), any_on()).prop_map(|(what, percent, on)| Uplift { what, percent, on })
}

fn any_on() -> impl Strategy<Value = UpliftOn> {
    proptest::sample::select(vec![UpliftOn::Dents, UpliftOn::Labour, UpliftOn::All])
}

fn any_way() -> impl Strategy<Value = PricedBy> {
    let rule = || proptest::sample::select(vec![SizeRule::Gauge, SizeRule::Majority]);
    let classes = |prices: Vec<Decimal>| -> Vec<SizeClass> {
        let limits = [Some(8.0), Some(30.0), None];
        limits.into_iter().zip(prices).map(|(up_to_mm, price)| SizeClass { up_to_mm, price }).collect()
    };
    prop_oneof![
        Just(PricedBy::Hours),
        (prop::collection::vec(cents(9_000), 3), rule())
            .prop_map(move |(prices, size_rule)| PricedBy::SizeClasses { classes: classes(prices), size_rule }),
        (rule(), cents(4_000)).prop_map(|(size_rule, each)| PricedBy::HailTable {
            table: "t".into(),
            size_rule,
            oversize: Some(each)
        }),
        (cents(90_000), prop::option::of(cents(900))).prop_map(|(day_rate, days)| PricedBy::DayRate {
            day_rate,
            hours_per_day: Decimal::new(75, 1),
            days
        }),
    ]
}

prop_compose! {
    fn any_pricing()(
        way in any_way(),
        ri in prop::collection::vec(cents(900), 0..4),
        parts in prop::collection::vec((cents(900), cents(9_000)), 0..4),
        sundries in prop::collection::vec(cents(2_000), 0..3),
        uplifts in prop::collection::vec(any_uplift(), 0..5),
        compound in any::<bool>(),
        discount in prop::option::of(cents(10_000)),
        (hourly_rate, tax_percent, conventional) in (cents(20_000), cents(3_000), prop::option::of(cents(900_000))),
        goods_tax_percent in prop::option::of(cents(3_000)),
        (by_line, share, on) in (any::<bool>(), prop::option::of(cents(10_000)), any_on()),
        currency in proptest::sample::select(vec!["EUR", "JPY", "KWD"]),
    ) -> Pricing {
        Pricing {
            way,
            ri_lines: ri.into_iter().map(|hours| RiLine { what: "r".into(), charge: Charge::Hours(hours) }).collect(),
            uplifts,
            add_or_compound: if compound { Stacking::Compound } else { Stacking::Add },
            parts: parts.into_iter().map(|(quantity, unit_price)| Part { what: "p".into(), quantity, unit_price }).collect(),
            sundries: sundries.into_iter().map(|amount| Sundry { what: "s".into(), amount }).collect(),
            discount: discount.map(Discount::Percent),
            goods_tax_percent,
            tax_rounding: if by_line { TaxRounding::Line } else { TaxRounding::Invoice },
            split: share.map(|technician_percent| Split { technician_percent, on }),
            conventional,
            ..Pricing::new(hourly_rate, tax_percent, currency)
        }
    }
}

prop_compose! {
    fn any_input()(
        dents in prop::collection::vec((2.0..60.0_f64, 0.0..5.0_f64, 1_u32..30, 0_usize..3), 0..9),
        pricing in any_pricing(),
    ) -> QuoteInput {
        let quoted = |(across, depth, count, panel): (f64, f64, u32, usize)| QuotedDent {
            what: ["roof", "bonnet", "boot_lid"][panel].into(),
            dent: dent(Kind::Round, across, depth, count),
        };
        QuoteInput { dents: dents.into_iter().map(quoted).collect(), pricing }
    }
}

fn by_size(input: &QuoteInput) -> bool {
    matches!(input.pricing.way, PricedBy::SizeClasses { .. } | PricedBy::HailTable { .. })
}

/// Lines that are charged, without what percentages make of them, in an order of their own.
fn plain(quote: &Quote) -> Vec<(LineKind, String, String, Decimal)> {
    let of = |line: &Line| (line.kind, line.what.clone(), format!("{:?}", line.size_mm), line.amount);
    let mut lines: Vec<_> = quote.lines.iter().filter(|line| line.kind.is_under(UpliftOn::All)).map(of).collect();
    lines.sort();
    lines
}

proptest! {
    #[test]
    fn a_quote_is_the_sum_of_its_lines(input in any_input()) {
        let quote = made(&input);
        let coin = decimals(&quote.currency);
        let half_coin = Decimal::new(5, coin + 1);
        prop_assert_eq!(quote.net, quote.lines.iter().map(|line| line.amount).sum::<Decimal>());
        prop_assert_eq!(quote.gross, quote.net + quote.tax);
        prop_assert_eq!(quote.tax, quote.taxes.iter().map(|one| one.tax).sum::<Decimal>());
        prop_assert_eq!(quote.net, quote.taxes.iter().map(|one| one.on).sum::<Decimal>());
        prop_assert!(quote.gross_low <= quote.gross && quote.gross <= quote.gross_high);
        prop_assert!(quote.lines.iter().all(|line| (line.amount - line.quantity * line.unit_price).abs() <= half_coin));
        prop_assert!(quote.lines.iter().all(|line| line.amount.scale() == coin));
        let shared = quote.shares.as_ref();
        prop_assert!(shared.is_none_or(|shares| shares.technician + shares.shop == quote.net && shares.technician >= Decimal::ZERO));
        prop_assert!(quote.against.as_ref().is_none_or(|against| against.conventional - against.saved == quote.net));
        prop_assert_eq!(quote.size_rules.is_some(), by_size(&input));
    }

    #[test]
    fn the_order_of_entry_changes_nothing(input in any_input(), turn in 0_usize..8) {
        let mut other = input.clone();
        other.dents.reverse();
        let pricing = &mut other.pricing;
        pricing.ri_lines.reverse();
        let (parts, uplifts) = (pricing.parts.len().max(1), pricing.uplifts.len().max(1));
        pricing.parts.rotate_left(turn % parts);
        pricing.uplifts.rotate_left(turn % uplifts);
        let (one, two) = (made(&input), made(&other));
        prop_assert_eq!((one.net, one.tax, one.gross), (two.net, two.tax, two.gross));
        prop_assert_eq!((one.gross_low, one.gross_high), (two.gross_low, two.gross_high));
        prop_assert_eq!(&one.shares, &two.shares);
        prop_assert_eq!(plain(&one), plain(&two));
    }

    /// A line more leaves every other plain line as it was.
    #[test]
    fn another_line_changes_no_line(input in any_input(), amount in cents(9_000)) {
        let mut more = input.clone();
        more.pricing.sundries.push(Sundry { what: "one more".into(), amount });
        let (before, mut after) = (plain(&made(&input)), plain(&made(&more)));
        let at = after.iter().position(|line| line.1 == "one more").unwrap();
        after.remove(at);
        prop_assert_eq!(before, after);
    }

    /// A dent more changes other dents' lines only on its own panel of a table, or in the one line of a day rate.
    #[test]
    fn another_dent_changes_its_own_panel_only(input in any_input(), across_mm in 2.0..60.0_f64) {
        let mut more = input.clone();
        more.dents.push(QuotedDent { what: "roof".into(), dent: dent(Kind::Hail, across_mm, 0.3, 1) });
        let table = table(PricePer::Panel);
        let (before, after) = (made_by(&input, &table), made_by(&more, &table));
        let others = |quote: &Quote| -> Vec<_> {
            let by_days = matches!(input.pricing.way, PricedBy::DayRate { .. });
            plain(quote).into_iter().filter(|line| if by_days { line.0 > LineKind::Oversize } else { line.1 != "roof" }).collect()
        };
        prop_assert_eq!(others(&before), others(&after));
        if matches!(input.pricing.way, PricedBy::Hours) {
            let kept = plain(&after);
            prop_assert!(plain(&before).iter().all(|line| kept.contains(line)));
        }
        // In a table a dent may move its panel to a cheaper majority; else it never makes a quote cheaper.
        prop_assert!(by_size(&input) || after.gross >= before.gross);
    }

    #[test]
    fn compounding_is_never_cheaper_than_adding(input in any_input()) {
        let stacked = |add_or_compound| {
            let mut input = input.clone();
            input.pricing.add_or_compound = add_or_compound;
            made(&input)
        };
        let (add, compound) = (stacked(Stacking::Add), stacked(Stacking::Compound));
        prop_assert!(compound.net >= add.net);
        prop_assert_eq!(add.gross_stacked_otherwise.is_some(), input.pricing.uplifts.len() > 1);
        prop_assert!(add.gross_stacked_otherwise.is_none_or(|gross| gross == compound.gross));
    }

    /// Both rules stand beside each other, whichever is chosen.
    #[test]
    fn the_rule_that_is_not_chosen_is_what_the_other_choice_gives(input in any_input()) {
        let mut other = input.clone();
        if let PricedBy::SizeClasses { size_rule, .. } | PricedBy::HailTable { size_rule, .. } = &mut other.pricing.way {
            *size_rule = if *size_rule == SizeRule::Gauge { SizeRule::Majority } else { SizeRule::Gauge };
            let (one, two) = (made(&input), made(&other));
            let (rules, mirrored) = (one.size_rules.unwrap(), two.size_rules.unwrap());
            prop_assert_eq!((rules.gauge, rules.majority), (mirrored.gauge, mirrored.majority));
            let chosen = |rules: &dentwright_price::SizeRules| if rules.chosen == SizeRule::Gauge { rules.gauge } else { rules.majority };
            prop_assert_eq!((chosen(&rules), chosen(&mirrored)), (Some(one.gross), Some(two.gross)));
        }
    }
}
