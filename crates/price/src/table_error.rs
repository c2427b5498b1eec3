//! Why a hail table cannot be used.

/// Why a hail table cannot be used. Rows are called by their line in the file (the heading is line 1),
/// columns by their heading.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum TableError {
    /// The file is larger than any table.
    #[error("the file has {bytes} bytes, but a table has at most {most}")]
    TooLong {
        /// Its size.
        bytes: usize,
        /// How large it may be.
        most: usize,
    },
    /// There is no heading, or it has no sizes.
    #[error(
        "line 1 should name the columns: panel, dents, then the sizes in mm, such as: panel;dents;10 mm;20 mm;over 20 mm"
    )]
    Heading,
    /// A heading that is no size.
    #[error(
        "line 1, column {column}: {found:?} is no size; write the diameter of its gauge circle in mm, such as 20 mm"
    )]
    Size {
        /// Which column, from 1.
        column: usize,
        /// What stands there.
        found: String,
    },
    /// Sizes that do not ascend.
    #[error(
        "size {size} is not larger than the one before; sizes go from small to large, and only the last may be open"
    )]
    SizeOrder {
        /// Which size, from 1.
        size: usize,
    },
    /// No size, or too many.
    #[error("the table has {sizes} sizes, but must have 1 to {most}")]
    Sizes {
        /// How many.
        sizes: usize,
        /// How many there may be.
        most: usize,
    },
    /// No row, or too many.
    #[error("the table has {rows} rows, but must have 1 to {most}")]
    Rows {
        /// How many.
        rows: usize,
        /// How many there may be.
        most: usize,
    },
    /// A row with more or fewer cells than the heading.
    #[error("line {row} has {found} prices, but the heading has {wanted} sizes")]
    Width {
        /// Which row.
        row: usize,
        /// Sizes of the heading.
        wanted: usize,
        /// Prices of the row.
        found: usize,
    },
    /// A panel that is not known.
    #[error(
        "line {row}, column panel: {found:?} is no panel; write its name, or * for all panels without rows of their own"
    )]
    Panel {
        /// Which row.
        row: usize,
        /// What stands there.
        found: String,
    },
    /// A bracket that cannot be read.
    #[error("line {row}, column dents: {text:?} is no bracket; write 1-5, 6 or 201+")]
    Bracket {
        /// Which row.
        row: usize,
        /// What stands there.
        text: String,
    },
    /// A bracket that leaves counts out.
    #[error("line {row}, column dents: a hole before {text}: nothing holds {due} dents of this panel")]
    Hole {
        /// The row after the hole.
        row: usize,
        /// The first count that is missing.
        due: u64,
        /// The bracket after the hole.
        text: String,
    },
    /// A bracket that begins before the one before has ended.
    #[error("line {row}, column dents: {text} overlaps another bracket of this panel")]
    Overlap {
        /// Which row.
        row: usize,
        /// The bracket.
        text: String,
    },
    /// A cell without a price.
    #[error("line {row}, column {column}: the price is missing")]
    Missing {
        /// Which row.
        row: usize,
        /// The column's heading.
        column: String,
    },
    /// A cell that is no price.
    #[error("line {row}, column {column}: {found:?} is no price from 0 to 10000000")]
    Price {
        /// Which row.
        row: usize,
        /// The column's heading.
        column: String,
        /// What stands there.
        found: String,
    },
    /// A cell that could be read in two ways.
    #[error(
        "line {row}, column {column}: {found:?} may be thousands or a fraction; write 1200 or 1.20 with two decimals"
    )]
    Unclear {
        /// Which row.
        row: usize,
        /// The column's heading.
        column: String,
        /// What stands there.
        found: String,
    },
    /// A quoted cell that does not end.
    #[error("line {row}: a cell begins with a quotation mark and does not end")]
    Quotation {
        /// Which row.
        row: usize,
    },
}

impl TableError {
    /// Line that it is about; 0 for the whole table.
    pub(crate) fn row(&self) -> usize {
        match self {
            Self::Width { row, .. }
            | Self::Panel { row, .. }
            | Self::Bracket { row, .. }
            | Self::Hole { row, .. }
            | Self::Overlap { row, .. }
            | Self::Missing { row, .. }
            | Self::Price { row, .. }
            | Self::Unclear { row, .. }
            | Self::Quotation { row } => *row,
            _ => 0,
        }
    }
}
