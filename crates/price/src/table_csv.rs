//! Reads a hail table from CSV as spreadsheets write it.
//!
//! One row per panel and bracket of the count, one column per size:
//! ```text
//! panel;dents;10 mm;20 mm;over 20 mm
//! bonnet;1-5;60;80;110
//! bonnet;6+;90;120;1.150,50
//! *;1+;100;140;190
//! ```
//! Columns parted by `;`, `,`, tab or `|`; cells may be quoted (RFC 4180); decimals by point or comma,
//! thousands by the other one, an apostrophe or a space, as the file's own cells show; currency signs
//! are dropped.

use crate::table_cells::{Decimals, bracket, records, size};
use crate::{HailTable, PricePer, TableError, TableRow};

/// Largest file, bytes.
const MOST_BYTES: usize = 4_000_000;

impl HailTable {
    /// Reads a table. `panel` gives a panel's name from what a row calls it; none where it is no panel.
    ///
    /// ```
    /// use dentwright_price::{HailTable, PricePer};
    /// let text = "panel;dents;10 mm;20 mm\nroof;1-5;60,50;80\nroof;6+;90;1.120,00\n";
    /// let table = HailTable::from_csv(text, PricePer::Panel, |name| Some(name.to_owned())).unwrap();
    /// assert_eq!(table.rows[1].prices[1].to_string(), "1120.00");
    /// assert_eq!(table.rows[1].to, None); // open at the top
    /// ```
    ///
    /// # Errors
    /// The first fault, with its row and column.
    pub fn from_csv(text: &str, per: PricePer, panel: impl Fn(&str) -> Option<String>) -> Result<Self, TableError> {
        if text.len() > MOST_BYTES {
            return Err(TableError::TooLong { bytes: text.len(), most: MOST_BYTES });
        }
        let records = records(text.trim_start_matches('\u{feff}'))?;
        let ((_, heading), rows) = records.split_first().ok_or(TableError::Heading)?;
        if heading.len() < 3 {
            return Err(TableError::Heading);
        }
        let sizes = heading.iter().enumerate().skip(2);
        let sizes_mm =
            sizes.map(|(at, cell)| size(cell).ok_or_else(|| TableError::Size { column: at + 1, found: cell.clone() }));
        let mut table = Self { sizes_mm: sizes_mm.collect::<Result<_, _>>()?, rows: Vec::new(), per };
        let decimals = Decimals::of(rows.iter().flat_map(|(_, cells)| cells.iter().skip(2)));
        for (number, cells) in rows {
            table.rows.push(row(*number, cells, heading, decimals, &panel)?);
        }
        let numbered: Vec<_> = rows.iter().map(|(number, _)| *number).zip(&table.rows).collect();
        table.check_rows(&numbered)?;
        Ok(table)
    }
}

fn row(
    number: usize,
    cells: &[String],
    heading: &[String],
    decimals: Decimals,
    panel: &impl Fn(&str) -> Option<String>,
) -> Result<TableRow, TableError> {
    let (wanted, found) = (heading.len() - 2, cells.len().saturating_sub(2));
    if wanted != found {
        return Err(TableError::Width { row: number, wanted, found });
    }
    let panel = match cells[0].as_str() {
        "*" => None,
        name => Some(panel(name).ok_or_else(|| TableError::Panel { row: number, found: name.to_owned() })?),
    };
    let (from, to) = bracket(&cells[1]).ok_or_else(|| TableError::Bracket { row: number, text: cells[1].clone() })?;
    let priced = cells.iter().zip(heading).skip(2);
    let prices = priced.map(|(cell, column)| decimals.price(cell).map_err(|fault| fault.at(number, column, cell)));
    Ok(TableRow { panel, from, to, prices: prices.collect::<Result<_, _>>()? })
}
