//! A hail table: prices by panel, number of dents and size. The program ships none; it is the user's own.

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};
use std::collections::HashMap;

use crate::TableError;

/// Prices by panel, number of dents and size.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct HailTable {
    /// Diameters of the gauge circles, mm, smallest first; the last may be open at the top (none).
    pub sizes_mm: Vec<Option<f64>>,
    /// A row for each panel and bracket of the count.
    pub rows: Vec<TableRow>,
    /// What a price is for.
    #[serde(default)]
    pub per: PricePer,
}

/// One panel and one bracket of the count.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct TableRow {
    /// The panel's name; none for all panels that have no rows of their own.
    pub panel: Option<String>,
    /// Fewest dents, from 1.
    pub from: u64,
    /// Most dents; none where the bracket is open at the top.
    pub to: Option<u64>,
    /// A price for each size.
    pub prices: Vec<Decimal>,
}

/// What a price of a table is for.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum PricePer {
    /// All dents of the panel (of one size, where each dent has its own) together.
    #[default]
    Panel,
    /// Each dent; the bracket is that of all dents on the panel.
    Dent,
}

/// Highest price in a table.
const DEAREST: i64 = 10_000_000;
/// Most sizes and most rows of a table.
const MOST_SIZES: usize = 50;
const MOST_ROWS: usize = 10_000;

impl HailTable {
    /// Checks it: sizes ascend, every panel's brackets go from 1 upwards without a hole or an overlap,
    /// every price is a price.
    ///
    /// # Errors
    /// The first fault, with its row and column.
    pub fn check(&self) -> Result<(), TableError> {
        let numbered = (1..).zip(&self.rows);
        self.check_rows(&numbered.collect::<Vec<_>>())
    }

    /// As [`check`](Self::check), with the numbers by which errors call the rows.
    pub(crate) fn check_rows(&self, rows: &[(usize, &TableRow)]) -> Result<(), TableError> {
        self.check_sizes()?;
        if rows.is_empty() || rows.len() > MOST_ROWS {
            return Err(TableError::Rows { rows: rows.len(), most: MOST_ROWS });
        }
        let mut panels: HashMap<Option<&str>, Vec<(usize, &TableRow)>> = HashMap::new();
        for (number, row) in rows {
            self.check_prices(*number, row)?;
            panels.entry(row.panel.as_deref()).or_default().push((*number, row));
        }
        let mut faults: Vec<TableError> = panels.into_values().filter_map(|rows| check_brackets(rows).err()).collect();
        faults.sort_by_key(TableError::row);
        faults.into_iter().next().map_or(Ok(()), Err)
    }

    fn check_sizes(&self) -> Result<(), TableError> {
        if self.sizes_mm.is_empty() || self.sizes_mm.len() > MOST_SIZES {
            return Err(TableError::Sizes { sizes: self.sizes_mm.len(), most: MOST_SIZES });
        }
        let mut before = 0.0;
        for (at, size) in self.sizes_mm.iter().enumerate() {
            let ascends = size.map_or(at + 1 == self.sizes_mm.len(), |size| size > before && size <= 5_000.0);
            if !ascends {
                return Err(TableError::SizeOrder { size: at + 1 });
            }
            before = size.unwrap_or(before);
        }
        Ok(())
    }

    fn check_prices(&self, row: usize, of: &TableRow) -> Result<(), TableError> {
        if of.prices.len() != self.sizes_mm.len() {
            return Err(TableError::Width { row, wanted: self.sizes_mm.len(), found: of.prices.len() });
        }
        let bad = of.prices.iter().position(|price| *price < Decimal::ZERO || *price > Decimal::from(DEAREST));
        bad.map_or(Ok(()), |at| {
            Err(TableError::Price { row, column: self.column(at), found: of.prices[at].to_string() })
        })
    }

    /// Name of a size's column.
    pub(crate) fn column(&self, at: usize) -> String {
        match (self.sizes_mm[at], at.checked_sub(1).and_then(|before| self.sizes_mm[before])) {
            (Some(size), _) => format!("up to {size} mm"),
            (None, Some(before)) => format!("over {before} mm"),
            (None, None) => "any size".to_owned(),
        }
    }
}

/// The rows of a table by panel, to be looked up often.
pub(crate) struct Rows<'a> {
    own: HashMap<&'a str, Vec<&'a TableRow>>,
    others: Vec<&'a TableRow>,
}

impl<'a> Rows<'a> {
    pub fn of(table: &'a HailTable) -> Self {
        let mut rows = Self { own: HashMap::new(), others: Vec::new() };
        for row in &table.rows {
            match &row.panel {
                Some(panel) => rows.own.entry(panel).or_default().push(row),
                None => rows.others.push(row),
            }
        }
        rows
    }

    /// Rows that hold for a panel: its own, else those for all others; none where there are neither.
    pub fn of_panel(&self, panel: &str) -> Option<&[&'a TableRow]> {
        let rows = self.own.get(panel).unwrap_or(&self.others);
        (!rows.is_empty()).then_some(rows)
    }
}

/// Checks one panel's brackets.
fn check_brackets(mut rows: Vec<(usize, &TableRow)>) -> Result<(), TableError> {
    rows.sort_by_key(|(number, row)| (row.from, row.to.is_none(), *number));
    let mut next = Some(1);
    for (row, bracket) in rows {
        let (from, to) = (bracket.from, bracket.to);
        match next {
            _ if from == 0 || to.is_some_and(|to| to < from) => {
                return Err(TableError::Bracket { row, text: bracket.text() });
            }
            Some(due) if from > due => return Err(TableError::Hole { row, due, text: bracket.text() }),
            Some(due) if from == due => next = to.map(|to| to + 1),
            _ => return Err(TableError::Overlap { row, text: bracket.text() }),
        }
    }
    Ok(())
}

impl TableRow {
    /// Whether its bracket holds so many dents.
    pub(crate) fn holds(&self, dents: u64) -> bool {
        self.from <= dents && self.to.is_none_or(|to| dents <= to)
    }

    /// Its bracket as people write it.
    pub(crate) fn text(&self) -> String {
        self.to.map_or(format!("{}+", self.from), |to| format!("{}-{to}", self.from))
    }
}
