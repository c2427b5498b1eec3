//! Lines of a quote: the plain ones, percentages on top, what is taken off.

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use crate::{Charge, Discount, Pricing, Stacking, Uplift, UpliftOn, round};

/// One line of a quote: `amount` is `quantity` times `unit_price`, rounded.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Line {
    /// What sort of line.
    pub kind: LineKind,
    /// Its text, as entered.
    pub what: String,
    /// How many dents the line stands for (dent and oversize lines only).
    #[serde(default)]
    pub count: Option<u64>,
    /// Diameter of the gauge circle that the line's dents were priced by, mm (dent lines by size only; none
    /// where the size is open at the top).
    #[serde(default)]
    pub size_mm: Option<f64>,
    /// What an uplift is on (uplifts only).
    #[serde(default)]
    pub on: Option<UpliftOn>,
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
    /// On top for dents larger than a table's sizes.
    Oversize,
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

impl LineKind {
    /// Whether an uplift or a share on `on` is taken on such a line; never on uplifts and discounts.
    #[must_use]
    pub fn is_under(self, on: UpliftOn) -> bool {
        match self {
            Self::Dent | Self::Oversize => true,
            Self::RemoveInstall => on >= UpliftOn::Labour,
            Self::Part | Self::Sundry => on == UpliftOn::All,
            Self::Uplift | Self::Discount => false,
        }
    }
}

/// What a line's quantity counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Unit {
    /// Hours of work.
    Hour,
    /// Days of work.
    Day,
    /// Pieces.
    Piece,
    /// Percent.
    Percent,
}

impl Line {
    pub(crate) fn new(
        kind: LineKind,
        what: &str,
        quantity: Decimal,
        unit: Unit,
        unit_price: Decimal,
        coin: u32,
    ) -> Self {
        let amount = round(quantity * unit_price, coin);
        Self { kind, what: what.to_owned(), count: None, size_mm: None, on: None, quantity, unit, unit_price, amount }
    }
}

pub(crate) fn sum(lines: &[Line]) -> Decimal {
    lines.iter().map(|line| line.amount).sum()
}

/// R&I, parts and sundries.
pub(crate) fn plain(pricing: &Pricing, coin: u32) -> Vec<Line> {
    let (one, rate) = (Decimal::ONE, pricing.hourly_rate);
    let ri = pricing.ri_lines.iter().map(|ri| match ri.charge {
        Charge::Hours(h) => Line::new(LineKind::RemoveInstall, &ri.what, h, Unit::Hour, rate, coin),
        Charge::Amount(amount) => Line::new(LineKind::RemoveInstall, &ri.what, one, Unit::Piece, amount, coin),
    });
    let parts = pricing
        .parts
        .iter()
        .map(|part| Line::new(LineKind::Part, &part.what, part.quantity, Unit::Piece, part.unit_price, coin));
    let sundries = pricing
        .sundries
        .iter()
        .map(|sundry| Line::new(LineKind::Sundry, &sundry.what, one, Unit::Piece, sundry.amount, coin));
    ri.chain(parts).chain(sundries).collect()
}

/// Percentages on top of the plain lines.
pub(crate) fn uplifts(pricing: &Pricing, plain: &[Line], stacking: Stacking, coin: u32) -> Vec<Line> {
    let mut pools = Pools::of(plain);
    let mut uplifts: Vec<&Uplift> = pricing.uplifts.iter().collect();
    uplifts.sort_by(|a, b| (a.on, a.percent, &a.what).cmp(&(b.on, b.percent, &b.what)));
    let line = |uplift: &Uplift| {
        let base = pools.under(uplift.on);
        if stacking == Stacking::Compound {
            pools.raise(uplift);
        }
        let unit_price = base / Decimal::ONE_HUNDRED;
        let line = Line::new(LineKind::Uplift, &uplift.what, uplift.percent, Unit::Percent, unit_price, coin);
        Line { on: Some(uplift.on), ..line }
    };
    uplifts.into_iter().map(line).collect()
}

/// What is taken off the sum before it.
pub(crate) fn discount(pricing: &Pricing, before: Decimal, coin: u32) -> Option<Line> {
    let line = |quantity, unit, price: Decimal| Line::new(LineKind::Discount, "", quantity, unit, -price, coin);
    match pricing.discount? {
        Discount::Percent(percent) => Some(line(percent, Unit::Percent, before / Decimal::ONE_HUNDRED)),
        Discount::Amount(amount) => Some(line(Decimal::ONE, Unit::Piece, amount.min(before))),
    }
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
        let under =
            |on| -> Decimal { lines.iter().filter(|line| line.kind.is_under(on)).map(|line| line.amount).sum() };
        let (dents, labour, all) = (under(UpliftOn::Dents), under(UpliftOn::Labour), under(UpliftOn::All));
        Self { dents, remove_install: labour - dents, rest: all - labour }
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
