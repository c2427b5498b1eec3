//! Sizes of dents by gauge circles, and the two rules by which a panel gets its size.
//!
//! Both are in use and disagree (common practice, no published source): each dent must lie wholly
//! inside the circle of its size, else it has the next one; or the whole panel has the size that most
//! of its dents have.

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use crate::Dent;

/// How dents get their size.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum SizeRule {
    /// Each dent its own: the smallest gauge circle that it lies wholly inside.
    #[default]
    Gauge,
    /// All dents of a panel the size that most of them have; the larger one if two have as many.
    Majority,
}

/// A price per dent up to a size.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct SizeClass {
    /// Diameter of its gauge circle, mm; none for all larger ones.
    pub up_to_mm: Option<f64>,
    /// Price of one dent.
    pub price: Decimal,
}

/// Slack for sizes that were worked out in binary, mm: a tenth of what a gauge can show.
const SLACK_MM: f64 = 1e-3;

/// Place of the smallest circle that a dent lies wholly inside; none if it is larger than all.
pub(crate) fn size_of(dent: &Dent, sizes_mm: &[Option<f64>]) -> Option<usize> {
    let across_mm = dent.length_mm.max(dent.width_mm);
    sizes_mm.iter().position(|limit_mm| limit_mm.is_none_or(|limit_mm| across_mm <= limit_mm + SLACK_MM))
}

/// Dents of one panel by size.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct BySize {
    /// The panel's name.
    pub what: String,
    /// How many dents of each size; larger ones than all are among the last.
    pub counts: Vec<u64>,
    /// How many are larger than all sizes.
    pub oversize: u64,
    /// Across the first of those, mm.
    pub oversize_mm: f64,
}

impl BySize {
    pub fn total(&self) -> u64 {
        self.counts.iter().sum()
    }

    /// Place of the size that most have, the larger one if two have as many.
    pub fn majority(&self) -> usize {
        let by_count = self.counts.iter().enumerate().max_by_key(|(_, count)| **count);
        by_count.map_or(0, |(place, _)| place)
    }
}
