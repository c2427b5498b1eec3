//! Net shared between technician and shop, and net beside a conventional repair.

use crate::{Line, LineKind, UpliftOn, round};
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

/// How net is shared.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Split {
    /// The technician's part, %, 0 to 100.
    pub technician_percent: Decimal,
    /// Of which lines.
    pub on: UpliftOn,
}

/// Net, shared; the two add up to it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Shares {
    /// The technician's.
    pub technician: Decimal,
    /// The shop's.
    pub shop: Decimal,
}

/// Net beside what a conventional repair costs.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Against {
    /// The conventional repair, without tax.
    pub conventional: Decimal,
    /// How much less this quote is; below zero if it is more.
    pub saved: Decimal,
    /// The same in %, to tenths; none where the conventional repair costs nothing.
    pub saved_percent: Option<Decimal>,
}

/// Shares net: uplifts and the discount go with the plain lines in proportion.
pub(crate) fn shares(split: &Split, lines: &[Line], net: Decimal, coin: u32) -> Shares {
    let sum = |wanted: &dyn Fn(LineKind) -> bool| -> Decimal {
        lines.iter().filter(|line| wanted(line.kind)).map(|line| line.amount).sum()
    };
    let (part, all) = (sum(&|kind| kind.is_under(split.on)), sum(&|kind| kind.is_under(UpliftOn::All)));
    let share = if all.is_zero() { Decimal::ZERO } else { part / all };
    let technician = round(net * share * split.technician_percent / Decimal::ONE_HUNDRED, coin);
    Shares { technician, shop: net - technician }
}

pub(crate) fn against(conventional: Decimal, net: Decimal, coin: u32) -> Against {
    let conventional = round(conventional, coin);
    let saved = conventional - net;
    let saved_percent = (!conventional.is_zero()).then(|| round(saved / conventional * Decimal::ONE_HUNDRED, 1));
    Against { conventional, saved, saved_percent }
}
