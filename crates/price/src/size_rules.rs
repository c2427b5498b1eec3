//! Both size rules side by side, since shops and insurers disagree on which one holds.

use crate::lines::sum;
use crate::ways::Sized;
use crate::{Line, SizeRule};
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

/// What the quote comes to by each rule.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct SizeRules {
    /// The one that the quote goes by.
    pub chosen: SizeRule,
    /// Gross with each dent at its own size; none where the table ends before.
    pub gauge: Option<Decimal>,
    /// Gross with every panel at the size of its majority; none where the table ends before.
    pub majority: Option<Decimal>,
    /// Panel by panel.
    pub panels: Vec<PanelSizes>,
}

/// One panel by each rule.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct PanelSizes {
    /// The panel's name.
    pub what: String,
    /// Its dents by size, smallest first; sizes without dents are left out.
    pub sizes: Vec<SizeCount>,
    /// How many of them are larger than all sizes.
    pub oversize: u64,
    /// Diameter of the circle that its majority lies in, mm; none where that size is open at the top.
    pub majority_mm: Option<f64>,
    /// Its lines' sum with each dent at its own size; none where the table ends before.
    pub gauge: Option<Decimal>,
    /// Its lines' sum at the size of its majority; none where the table ends before.
    pub majority: Option<Decimal>,
}

/// So many dents of a size.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct SizeCount {
    /// Diameter of the circle that they lie in, mm; none where the size is open at the top.
    pub up_to_mm: Option<f64>,
    /// How many.
    pub dents: u64,
}

/// Prices the same dents by both rules.
pub(crate) fn both(sized: &Sized, chosen: SizeRule, gross: impl Fn(Vec<Line>) -> Decimal, coin: u32) -> SizeRules {
    let of_rule = |rule| sized.lines(rule, coin).ok().map(&gross);
    let panels = sized.panels.iter().map(|panel| {
        let of_rule = |rule| sized.panel_lines(panel, rule, coin).ok().map(|lines| sum(&lines));
        let counted = sized.table.sizes_mm.iter().zip(&panel.counts).filter(|(_, dents)| **dents > 0);
        PanelSizes {
            what: panel.what.clone(),
            sizes: counted.map(|(up_to_mm, dents)| SizeCount { up_to_mm: *up_to_mm, dents: *dents }).collect(),
            oversize: panel.oversize,
            majority_mm: sized.table.sizes_mm[panel.majority()],
            gauge: of_rule(SizeRule::Gauge),
            majority: of_rule(SizeRule::Majority),
        }
    });
    SizeRules {
        chosen,
        gauge: of_rule(SizeRule::Gauge),
        majority: of_rule(SizeRule::Majority),
        panels: panels.collect(),
    }
}
