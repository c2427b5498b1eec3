//! A quote: lines, their sum, tax, and how far the total may move.
//!
//! **Rounding.** Hours are rounded to hundredths, each line's amount to the currency's smallest
//! coin, half away from zero. Net is the sum of the lines as printed; tax is taken once, on net.
//! So anyone can add a printed quote up. Uplifts are worked out in an order of their own (by
//! what they are on, percent, text), so that the order of entry changes nothing.

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use crate::check::{check, check_hours};
use crate::{
    Charge, Discount, Hours, HoursSettings, QuoteError, QuoteInput, Stacking, Uplift, UpliftOn, decimals, hours,
    hundredths, round, total_hours,
};

/// A quote. All money in `currency`, with all its decimals.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Quote {
    /// What is charged, in the order of the paper.
    pub lines: Vec<Line>,
    /// Sum of the lines.
    pub net: Decimal,
    /// Tax on net, %.
    pub tax_percent: Decimal,
    /// Tax on net.
    pub tax: Decimal,
    /// Net and tax.
    pub gross: Decimal,
    /// Gross if the dents take their low hours.
    pub gross_low: Decimal,
    /// Gross if the dents take their high hours.
    pub gross_high: Decimal,
    /// Hours of the dents together, with their doubt. R&I hours are not among them.
    pub hours: Hours,
    /// Whether percentages were added or compounded.
    pub add_or_compound: Stacking,
    /// ISO 4217 code of the currency.
    pub currency: String,
}

/// One line of a quote: `amount` is `quantity` times `unit_price`, rounded.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Line {
    /// What sort of line.
    pub kind: LineKind,
    /// Its text, as entered.
    pub what: String,
    /// How many dents the line stands for (dent lines only).
    #[serde(default)]
    pub count: Option<u32>,
    /// How many of the unit.
    pub quantity: Decimal,
    /// What the quantity counts.
    pub unit: Unit,
    /// Price of one unit; for percentages, what they are taken on, divided by 100.
    pub unit_price: Decimal,
    /// What the line comes to.
    pub amount: Decimal,
}

/// What sort of line it is; the order is the paper's.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum LineKind {
    /// Work on dents.
    Dent,
    /// Removing and installing.
    RemoveInstall,
    /// A part.
    Part,
    /// Something small.
    Sundry,
    /// A percentage on top.
    Uplift,
    /// Taken off; its amount is negative.
    Discount,
}

/// What a line's quantity counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Unit {
    /// Hours of work.
    Hour,
    /// Pieces.
    Piece,
    /// Percent.
    Percent,
}

/// Makes the quote.
///
/// # Errors
/// When the settings, a dent, a percentage or an amount is out of its range; the first one found.
pub fn quote(input: &QuoteInput, settings: &HoursSettings) -> Result<Quote, QuoteError> {
    settings.check()?;
    check(input)?;
    let hours = total_hours(input.dents.iter().map(|quoted| &quoted.dent), settings);
    check_hours(&hours)?;
    let coin = decimals(&input.currency);
    let mut lines = dent_lines(input, settings, coin);
    lines.extend(plain_lines(input, coin));
    lines.extend(uplift_lines(input, Pools::of(&lines), coin));
    lines.extend(discount_line(input, sum(&lines), coin));

    let net = round(sum(&lines), coin);
    let tax = round(net * input.tax_percent / Decimal::ONE_HUNDRED, coin);
    let gross = net + tax;
    let gross_low = gross_at(input, &lines, hours.low, coin).min(gross);
    let gross_high = gross_at(input, &lines, hours.high, coin).max(gross);
    Ok(Quote {
        lines,
        net,
        tax_percent: input.tax_percent,
        tax,
        gross,
        gross_low,
        gross_high,
        hours,
        add_or_compound: input.add_or_compound,
        currency: input.currency.clone(),
    })
}

fn dent_lines(input: &QuoteInput, settings: &HoursSettings, coin: u32) -> Vec<Line> {
    let line = |quoted: &crate::QuotedDent| {
        let quantity = hundredths(hours(&quoted.dent, settings).likely);
        let mut line = Line::new(LineKind::Dent, &quoted.what, quantity, Unit::Hour, input.hourly_rate, coin);
        line.count = Some(quoted.dent.count);
        line
    };
    input.dents.iter().map(line).collect()
}

fn plain_lines(input: &QuoteInput, coin: u32) -> Vec<Line> {
    let one = Decimal::ONE;
    let ri = input.ri_lines.iter().map(|ri| match ri.charge {
        Charge::Hours(h) => Line::new(LineKind::RemoveInstall, &ri.what, h, Unit::Hour, input.hourly_rate, coin),
        Charge::Amount(amount) => Line::new(LineKind::RemoveInstall, &ri.what, one, Unit::Piece, amount, coin),
    });
    let parts = input
        .parts
        .iter()
        .map(|part| Line::new(LineKind::Part, &part.what, part.quantity, Unit::Piece, part.unit_price, coin));
    let sundries = input
        .sundries
        .iter()
        .map(|sundry| Line::new(LineKind::Sundry, &sundry.what, one, Unit::Piece, sundry.amount, coin));
    ri.chain(parts).chain(sundries).collect()
}

fn uplift_lines(input: &QuoteInput, mut pools: Pools, coin: u32) -> Vec<Line> {
    let mut uplifts: Vec<&Uplift> = input.uplifts.iter().collect();
    uplifts.sort_by(|a, b| (a.on, a.percent, &a.what).cmp(&(b.on, b.percent, &b.what)));
    let line = |uplift: &Uplift| {
        let base = pools.under(uplift.on);
        if input.add_or_compound == Stacking::Compound {
            pools.raise(uplift);
        }
        let unit_price = base / Decimal::ONE_HUNDRED;
        Line::new(LineKind::Uplift, &uplift.what, uplift.percent, Unit::Percent, unit_price, coin)
    };
    uplifts.into_iter().map(line).collect()
}

fn discount_line(input: &QuoteInput, before: Decimal, coin: u32) -> Option<Line> {
    let line = |quantity, unit, price: Decimal| Line::new(LineKind::Discount, "", quantity, unit, -price, coin);
    match input.discount? {
        Discount::Percent(percent) => Some(line(percent, Unit::Percent, before / Decimal::ONE_HUNDRED)),
        Discount::Amount(amount) => Some(line(Decimal::ONE, Unit::Piece, amount.min(before))),
    }
}

/// Gross if all dents together took `dent_hours`; everything else as in the lines.
fn gross_at(input: &QuoteInput, lines: &[Line], dent_hours: f64, coin: u32) -> Decimal {
    let mut pools = Pools::of(lines);
    pools.dents = round(hundredths(dent_hours) * input.hourly_rate, coin);
    let uplifts = sum(&uplift_lines(input, pools, coin));
    let before = pools.under(UpliftOn::All) + uplifts;
    let net = before + discount_line(input, before, coin).map_or(Decimal::ZERO, |line| line.amount);
    round(net, coin) + round(net * input.tax_percent / Decimal::ONE_HUNDRED, coin)
}

impl Line {
    fn new(kind: LineKind, what: &str, quantity: Decimal, unit: Unit, unit_price: Decimal, coin: u32) -> Self {
        let amount = round(quantity * unit_price, coin);
        Self { kind, what: what.to_owned(), count: None, quantity, unit, unit_price, amount }
    }
}

fn sum(lines: &[Line]) -> Decimal {
    lines.iter().map(|line| line.amount).sum()
}

/// What uplifts are taken on, kept apart because they may be on a part of it only.
#[derive(Debug, Clone, Copy)]
struct Pools {
    dents: Decimal,
    remove_install: Decimal,
    rest: Decimal,
}

impl Pools {
    fn of(lines: &[Line]) -> Self {
        let of_kind =
            |wanted: &[LineKind]| lines.iter().filter(|line| wanted.contains(&line.kind)).map(|line| line.amount).sum();
        Self {
            dents: of_kind(&[LineKind::Dent]),
            remove_install: of_kind(&[LineKind::RemoveInstall]),
            rest: of_kind(&[LineKind::Part, LineKind::Sundry]),
        }
    }

    fn under(&self, on: UpliftOn) -> Decimal {
        match on {
            UpliftOn::Dents => self.dents,
            UpliftOn::Labour => self.dents + self.remove_install,
            UpliftOn::All => self.dents + self.remove_install + self.rest,
        }
    }

    fn raise(&mut self, uplift: &Uplift) {
        let times = Decimal::ONE + uplift.percent / Decimal::ONE_HUNDRED;
        self.dents *= times;
        if uplift.on >= UpliftOn::Labour {
            self.remove_install *= times;
        }
        if uplift.on == UpliftOn::All {
            self.rest *= times;
        }
    }
}
