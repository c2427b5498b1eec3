//! Two dents to hours with their reasons, and to a quote that is the sum of its lines.

use dentwright_price::{
    Access, Charge, Conditions, Dent, HoursSettings, Kind, Learned, Metal, Place, Pricing, QuoteInput, QuotedDent,
    RiLine, hours, quote,
};
use rust_decimal::Decimal;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let ding = Dent {
        kind: Kind::Round,
        length_mm: 25.0,
        width_mm: 25.0,
        depth_mm: 1.0,
        metal: Metal::Steel,
        access: Access::Open,
        place: Place::Flat,
        sharpness: None,
        count: 1,
    };
    let on_the_line = Dent { place: Place::BodyLine, metal: Metal::Aluminium, ..ding.clone() };
    let (warm, learned) = (Conditions::default(), Learned::start(&HoursSettings::default())?);
    let harder = hours(&on_the_line, &warm, &learned);
    println!("{:.2} h, between {:.2} and {:.2}", harder.likely, harder.low, harder.high);
    harder.because.iter().for_each(|factor| println!("  times {:.2}: {}", factor.times, factor.name));

    let named = |what: &str, dent| QuotedDent { what: what.into(), dent };
    let quote = quote(
        &QuoteInput {
            dents: vec![named("front door left", ding.clone()), named("front door left, body line", on_the_line)],
            pricing: Pricing {
                ri_lines: vec![RiLine { what: "door trim".into(), charge: Charge::Hours("0.8".parse()?) }],
                ..Pricing::new("95.00".parse()?, "19".parse()?, "EUR")
            },
        },
        &learned,
        None,
    )?;
    quote.lines.iter().for_each(|line| println!("{:28} {:>9}", line.what, line.amount));
    println!("net {}, tax {}, gross {}", quote.net, quote.tax, quote.gross);

    assert!(harder.likely > hours(&ding, &warm, &learned).likely);
    assert_eq!(quote.lines.iter().map(|line| line.amount).sum::<Decimal>(), quote.net);
    assert_eq!(quote.net + quote.tax, quote.gross);
    Ok(())
}
