//! The dent lines of a quote, by the way of pricing.

use rust_decimal::{Decimal, RoundingStrategy};
use std::collections::HashMap;

use crate::hours::expected_hours;
use crate::sizes::{BySize, size_of};
use crate::table::Rows;
use crate::{
    HailTable, Hours, Learned, Line, LineKind, PricePer, PricedBy, QuoteError, QuoteInput, SizeClass, SizeRule,
    TableRow, Unit, hundredths,
};

/// Hours times the rate, a line each.
pub(crate) fn by_hours(input: &QuoteInput, learned: &Learned, coin: u32) -> Vec<Line> {
    let pricing = &input.pricing;
    let line = |quoted: &crate::QuotedDent| {
        let likely = hundredths(expected_hours(&quoted.dent, &pricing.conditions, learned));
        let line = Line::new(LineKind::Dent, &quoted.what, likely, Unit::Hour, pricing.hourly_rate, coin);
        Line { count: Some(u64::from(quoted.dent.count)), ..line }
    };
    input.dents.iter().map(line).collect()
}

/// All dents as one amount for so many hours.
pub(crate) fn by_whole_hours(dent_hours: f64, rate: Decimal, coin: u32) -> Vec<Line> {
    vec![Line::new(LineKind::Dent, "", hundredths(dent_hours), Unit::Hour, rate, coin)]
}

/// Days times a price: those entered, or so many hours' up to the next half day.
pub(crate) fn by_days(input: &QuoteInput, dent_hours: f64, coin: u32) -> Vec<Line> {
    let PricedBy::DayRate { day_rate, hours_per_day, days } = &input.pricing.way else { return Vec::new() };
    if input.dents.is_empty() && days.is_none() {
        return Vec::new();
    }
    let needed = || {
        let halves = hundredths(dent_hours) * Decimal::TWO / *hours_per_day;
        halves.round_dp_with_strategy(0, RoundingStrategy::AwayFromZero) / Decimal::TWO
    };
    let line = Line::new(LineKind::Dent, "", days.unwrap_or_else(needed), Unit::Day, *day_rate, coin);
    vec![Line { count: Some(dent_count(input)), ..line }]
}

fn dent_count(input: &QuoteInput) -> u64 {
    input.dents.iter().map(|quoted| u64::from(quoted.dent.count)).sum()
}

/// What a table is taken with.
pub(crate) struct Sized<'a> {
    pub table: &'a HailTable,
    rows: Rows<'a>,
    pub panels: Vec<BySize>,
    pub oversize: Option<Decimal>,
}

impl<'a> Sized<'a> {
    /// Sorts the dents of every panel into the table's sizes.
    pub fn of(input: &QuoteInput, table: &'a HailTable, oversize: Option<Decimal>) -> Self {
        let mut places: HashMap<&str, usize> = HashMap::new();
        let mut panels: Vec<BySize> = Vec::new();
        for quoted in &input.dents {
            let place = *places.entry(&quoted.what).or_insert_with(|| {
                let counts = vec![0; table.sizes_mm.len()];
                panels.push(BySize { what: quoted.what.clone(), counts, oversize: 0, oversize_mm: 0.0 });
                panels.len() - 1
            });
            let (panel, many) = (&mut panels[place], u64::from(quoted.dent.count));
            let size = size_of(&quoted.dent, &table.sizes_mm);
            panel.counts[size.unwrap_or(table.sizes_mm.len() - 1)] += many;
            if size.is_none() {
                panel.oversize += many;
                panel.oversize_mm = panel.oversize_mm.max(quoted.dent.length_mm.max(quoted.dent.width_mm));
            }
        }
        Self { table, rows: Rows::of(table), panels, oversize }
    }

    /// Lines by a rule, panel by panel.
    pub fn lines(&self, rule: SizeRule, coin: u32) -> Result<Vec<Line>, QuoteError> {
        let panels = self.panels.iter().map(|panel| self.panel_lines(panel, rule, coin));
        Ok(panels.collect::<Result<Vec<_>, _>>()?.concat())
    }

    /// Lines of one panel by a rule.
    pub fn panel_lines(&self, panel: &BySize, rule: SizeRule, coin: u32) -> Result<Vec<Line>, QuoteError> {
        let groups: Vec<(usize, u64)> = match rule {
            SizeRule::Gauge => panel.counts.iter().copied().enumerate().filter(|(_, dents)| *dents > 0).collect(),
            SizeRule::Majority => vec![(panel.majority(), panel.total())],
        };
        let mut lines = Vec::new();
        for (size, dents) in groups {
            lines.push(self.group_line(panel, size, dents, coin)?);
        }
        if panel.oversize > 0 {
            let largest_mm = self.table.sizes_mm.iter().flatten().copied().fold(0.0, f64::max);
            let (what, across_mm) = (panel.what.clone(), panel.oversize_mm);
            let each = self.oversize.ok_or(QuoteError::Oversize { what, across_mm, largest_mm })?;
            let line =
                Line::new(LineKind::Oversize, &panel.what, Decimal::from(panel.oversize), Unit::Piece, each, coin);
            lines.push(Line { count: Some(panel.oversize), ..line });
        }
        Ok(lines)
    }

    fn group_line(&self, panel: &BySize, size: usize, dents: u64, coin: u32) -> Result<Line, QuoteError> {
        let what = || panel.what.clone();
        let (looked_up, pieces) = match self.table.per {
            PricePer::Panel => (dents, Decimal::ONE),
            PricePer::Dent => (panel.total(), Decimal::from(dents)),
        };
        let rows = self.rows.of_panel(&panel.what).ok_or_else(|| QuoteError::NotInTable { what: what() })?;
        let row = rows.iter().find(|row| row.holds(looked_up));
        let price = row.ok_or_else(|| QuoteError::TableEnds { what: what(), dents: looked_up })?.prices[size];
        let line = Line::new(LineKind::Dent, &panel.what, pieces, Unit::Piece, price, coin);
        Ok(Line { count: Some(dents), size_mm: self.table.sizes_mm[size], ..line })
    }
}

/// A price per dent by size as the table that it is.
pub(crate) fn table_of_classes(classes: &[SizeClass]) -> HailTable {
    let prices = classes.iter().map(|class| class.price).collect();
    let sizes_mm = classes.iter().map(|class| class.up_to_mm).collect();
    HailTable { sizes_mm, rows: vec![TableRow { panel: None, from: 1, to: None, prices }], per: PricePer::Dent }
}

/// Hours at one end of the doubt.
pub(crate) fn ends(hours: &Hours) -> [f64; 2] {
    [hours.low, hours.high]
}
