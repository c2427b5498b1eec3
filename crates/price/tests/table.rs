//! Hail tables: what is read, what is refused and how, and quotes by them worked by hand.

mod common;

use common::dent;
use dentwright_price::{
    HailTable, HoursSettings, Kind, Learned, LineKind, PricePer, PricedBy, Pricing, Quote, QuoteError, QuoteInput,
    QuotedDent, SizeClass, SizeRule, TableError, quote,
};
use rust_decimal::Decimal;

fn known(name: &str) -> Option<String> {
    let name = name.to_lowercase();
    ["roof", "bonnet", "boot_lid"].contains(&name.as_str()).then_some(name)
}

fn read(text: &str) -> Result<HailTable, TableError> {
    HailTable::from_csv(text, PricePer::Panel, known)
}

const PLAIN: &str = "panel;dents;10 mm;20 mm;35 mm\nroof;1-5;60;80;110,50\nroof;6+;90;120;1.150,00\n*;1+;40;50;66\n";

#[test]
fn the_same_table_is_read_from_any_spreadsheet() {
    let plain = read(PLAIN).unwrap();
    let others = [
        "\u{feff}Panel,Dents,≤10mm,≤20 mm,up to 35\r\nRoof,1–5,60,80,110.50\r\nROOF,>5,€ 90,120,\"1,150.00\"\r\n*,1+,40,50,66\r\n",
        "p\td\t10\t20\t35\n\nroof\t1 to 5\t60\t80\t110,50\nroof\t6+\t90\t120\t1 150,00\n*\t≥1\t40\t50\t66",
        "p|\"d\"|10|20|35\n*|1+|40|50|66\nroof|6+|90|120|1'150.00 €\nroof|≤5|60|80|\"110.50\"\n",
    ];
    for text in others {
        let mut other = read(text).unwrap();
        other.rows.sort_by_key(|row| (row.panel.is_none(), row.from));
        assert_eq!(other, plain, "{text}");
    }
    let inches = read("p;d;0.5 in;over 0.5 in\n*;1+;1;2\n").unwrap();
    assert_eq!(inches.sizes_mm, [Some(12.7), None]);
}

#[test]
fn a_fault_is_named_by_row_and_column() {
    let cases = [
        (
            PLAIN.replace("roof;6+", "roof;7+"),
            "line 3, column dents: a hole before 7+: nothing holds 6 dents of this panel",
        ),
        (PLAIN.replace("roof;6+", "roof;5+"), "line 3, column dents: 5+ overlaps another bracket of this panel"),
        (
            PLAIN.replace("roof;1-5", "roof;2-5"),
            "line 2, column dents: a hole before 2-5: nothing holds 1 dents of this panel",
        ),
        (PLAIN.replace("roof;1-5", "roof;1+"), "line 3, column dents: 6+ overlaps another bracket of this panel"),
        (PLAIN.replace("roof;1-5", "roof;5-1"), "line 2, column dents: \"5-1\" is no bracket; write 1-5, 6 or 201+"),
        (PLAIN.replace("roof;1-5", "roof;few"), "line 2, column dents: \"few\" is no bracket; write 1-5, 6 or 201+"),
        (PLAIN.replace(";80;", ";;"), "line 2, column 20 mm: the price is missing"),
        (PLAIN.replace(";80;", ";-80;"), "line 2, column 20 mm: \"-80\" is no price from 0 to 10000000"),
        (PLAIN.replace(";80;", ";ask;"), "line 2, column 20 mm: \"ask\" is no price from 0 to 10000000"),
        (PLAIN.replace(";80;", ";80.50;"), "line 2, column 35 mm: \"110,50\" is no price from 0 to 10000000"),
        (
            PLAIN.replace(";80;", ";99000000;"),
            "line 2, column up to 20 mm: \"99000000\" is no price from 0 to 10000000",
        ),
        (
            PLAIN.replace("roof;1-5", "rooof;1-5"),
            "line 2, column panel: \"rooof\" is no panel; write its name, or * for all panels without rows of their own",
        ),
        (PLAIN.replace("90;120;1.150,00", "90;120"), "line 3 has 2 prices, but the heading has 3 sizes"),
        (
            PLAIN.replace("20 mm", "dime"),
            "line 1, column 4: \"dime\" is no size; write the diameter of its gauge circle in mm, such as 20 mm",
        ),
        (
            PLAIN.replace("20 mm", "8 mm"),
            "size 2 is not larger than the one before; sizes go from small to large, and only the last may be open",
        ),
        (PLAIN.replace("roof;6+", "\"roof;6+"), "line 3: a cell begins with a quotation mark and does not end"),
        (
            "p;d;10\n*;1+;1.200\n".into(),
            "line 2, column 10: \"1.200\" may be thousands or a fraction; write 1200 or 1.20 with two decimals",
        ),
        ("p;d;10\n".into(), "the table has 0 rows, but must have 1 to 10000"),
    ];
    for (text, wanted) in cases {
        assert_eq!(read(&text).unwrap_err().to_string(), wanted, "{text}");
    }
    for text in ["", "\n\n", "panel;dents\nroof;1+\n"] {
        assert_eq!(read(text), Err(TableError::Heading), "{text:?}");
    }
}

fn by(way: PricedBy, dents: &[(&str, f64, u32)]) -> QuoteInput {
    let quoted = |(what, across_mm, count): &(&str, f64, u32)| QuotedDent {
        what: (*what).into(),
        dent: dent(Kind::Hail, *across_mm, 0.4, *count),
    };
    let pricing = Pricing { way, ..Pricing::new(Decimal::from(95), Decimal::from(19), "EUR") };
    QuoteInput { dents: dents.iter().map(quoted).collect(), pricing }
}

fn hail(size_rule: SizeRule, oversize: Option<i64>, dents: &[(&str, f64, u32)]) -> QuoteInput {
    by(PricedBy::HailTable { table: "t".into(), size_rule, oversize: oversize.map(Decimal::from) }, dents)
}

fn made(input: &QuoteInput, per: PricePer) -> Result<Quote, QuoteError> {
    let table = HailTable { per, ..read(PLAIN).unwrap() };
    quote(input, &Learned::start(&HoursSettings::default()).unwrap(), Some(&table))
}

fn amounts(quote: &Quote) -> Vec<String> {
    quote.lines.iter().map(|line| line.amount.to_string()).collect()
}

const CAR: [(&str, f64, u32); 4] = [("roof", 9.0, 4), ("roof", 12.0, 7), ("bonnet", 20.0, 3), ("roof", 10.0, 1)];

/// Roof: 5 dents up to 10 mm (60), 7 up to 20 mm (120); bonnet: 3 up to 20 mm (50, by *).
/// By the majority the roof's 12 are all up to 20 mm: 120. With tax 273.70 and 202.30.
#[test]
fn both_size_rules_side_by_side() {
    let gauge = made(&hail(SizeRule::Gauge, None, &CAR), PricePer::Panel).unwrap();
    assert_eq!(amounts(&gauge), ["60.00", "120.00", "50.00"]);
    let majority = made(&hail(SizeRule::Majority, None, &CAR), PricePer::Panel).unwrap();
    assert_eq!(amounts(&majority), ["120.00", "50.00"]);
    let rules = gauge.size_rules.unwrap();
    let money = |text: &str| Some(text.parse::<Decimal>().unwrap());
    assert_eq!((rules.gauge, rules.majority), (money("273.70"), money("202.30")));
    let roof = &rules.panels[0];
    assert_eq!((roof.gauge, roof.majority, roof.majority_mm), (money("180.00"), money("120.00"), Some(20.0)));
    assert_eq!((gauge.gross_low, gauge.gross_high), (gauge.gross, gauge.gross));
}

/// Prices per dent: the roof's 12 dents are in the bracket 6+; 5 × 90 and 7 × 120; bonnet 3 × 50.
#[test]
fn prices_per_dent_take_the_bracket_of_the_whole_panel() {
    let quote = made(&hail(SizeRule::Gauge, None, &CAR), PricePer::Dent).unwrap();
    assert_eq!(amounts(&quote), ["450.00", "840.00", "150.00"]);
    assert_eq!(quote.lines[1].count, Some(7));
}

/// As many of one size as of the other: the larger one.
#[test]
fn a_tie_goes_to_the_larger_size() {
    let quote =
        made(&hail(SizeRule::Majority, None, &[("bonnet", 9.0, 2), ("bonnet", 30.0, 2)]), PricePer::Panel).unwrap();
    assert_eq!(amounts(&quote), ["66.00"]);
}

/// A dent must lie wholly inside its circle, by its longer way across; one of exactly the size does.
#[test]
fn a_dent_that_sticks_out_has_the_next_size() {
    for (across_mm, wanted) in [(10.0, "40.00"), (10.01, "50.00"), (20.0, "50.00"), (20.01, "66.00")] {
        let quote = made(&hail(SizeRule::Gauge, None, &[("bonnet", across_mm, 1)]), PricePer::Panel).unwrap();
        assert_eq!(amounts(&quote), [wanted], "{across_mm} mm");
    }
}

#[test]
fn oversize_dents_count_as_the_largest_size_and_add() {
    let car = [("bonnet", 36.0, 2), ("bonnet", 30.0, 1)];
    let quote = made(&hail(SizeRule::Gauge, Some(25), &car), PricePer::Panel).unwrap();
    assert_eq!(amounts(&quote), ["66.00", "50.00"]);
    assert_eq!(quote.lines[1].kind, LineKind::Oversize);
    let error = made(&hail(SizeRule::Gauge, None, &car), PricePer::Panel).unwrap_err().to_string();
    assert_eq!(
        error,
        "a dent on bonnet is 36.0 mm across, the hail table ends at 35 mm; enter what an oversize dent costs on top, or 0"
    );
}

#[test]
fn where_a_table_ends_is_said() {
    let learned = Learned::start(&HoursSettings::default()).unwrap();
    let ends = read("p;d;20\nroof;1-5;60\nroof;6-9;90\n").unwrap();
    let tried = |dents: &[(&str, f64, u32)]| quote(&hail(SizeRule::Gauge, None, dents), &learned, Some(&ends));
    let error = tried(&[("roof", 9.0, 10)]).unwrap_err();
    assert_eq!(error, QuoteError::TableEnds { what: "roof".into(), dents: 10 });
    let error = tried(&[("bonnet", 9.0, 1)]).unwrap_err();
    assert_eq!(error, QuoteError::NotInTable { what: "bonnet".into() });
    let error = quote(&hail(SizeRule::Gauge, None, &[]), &learned, None).unwrap_err();
    assert_eq!(error, QuoteError::NoTable);
}

/// 2 × 15.00 and 1 × 40.00.
#[test]
fn size_classes_are_a_price_per_dent() {
    let class = |up_to_mm, price| SizeClass { up_to_mm, price: Decimal::from(price) };
    let classes = vec![class(Some(12.0), 15), class(None, 40)];
    let way = |classes| PricedBy::SizeClasses { classes, size_rule: SizeRule::Gauge };
    let dents = [("roof", 9.0, 2), ("roof", 45.0, 1)];
    let quote = made(&by(way(classes), &dents), PricePer::Panel).unwrap();
    assert_eq!(amounts(&quote), ["30.00", "40.00"]);
    let twice = way(vec![class(Some(12.0), 15), class(Some(12.0), 40)]);
    let error = made(&by(twice, &dents), PricePer::Panel).unwrap_err();
    assert_eq!(error, QuoteError::Table(TableError::SizeOrder { size: 2 }));
}

/// A million dents in one line, and a hundred thousand lines: neither takes long. A million lines are
/// refused at once.
#[test]
fn a_storm_of_dents_takes_no_time() {
    let began = std::time::Instant::now();
    let storm = made(&hail(SizeRule::Gauge, None, &[("roof", 9.0, 99_999)]), PricePer::Dent).unwrap();
    assert_eq!(amounts(&storm), ["8999910.00"]);
    assert!(storm.hours.likely > 1_000.0);
    let error = made(&hail(SizeRule::Gauge, None, &[("roof", 9.0, 1_000_000)]), PricePer::Dent).unwrap_err();
    assert!(error.to_string().contains("at most 99999"), "{error}");
    let lines = vec![("roof", 9.0, 1); 100_000];
    for way in [PricedBy::Hours, hail(SizeRule::Gauge, None, &[]).pricing.way] {
        made(&by(way, &lines), PricePer::Panel).unwrap();
    }
    let too_many = by(PricedBy::Hours, &vec![("roof", 9.0, 1); 1_000_000]);
    let error = made(&too_many, PricePer::Panel).unwrap_err().to_string();
    assert_eq!(error, "there are more than 100000 lines");
    let took = began.elapsed();
    println!("99,999 dents in a line, twice 100,000 lines, a million lines refused: {took:.1?}");
    assert!(took.as_secs() < 20, "{took:?}");
}
