//! Why there is no quote.

use rust_decimal::Decimal;

use crate::{ConditionsError, DentError, TableError};

/// Why a quote cannot be made. Each names the line it is about.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum QuoteError {
    /// A dent is not usable.
    #[error("dent line {line} ({what}): {error}")]
    Dent {
        /// Its place in the list, from 1.
        line: usize,
        /// Its text.
        what: String,
        /// What is wrong with it.
        error: DentError,
    },
    /// A number of the quote is out of its range.
    #[error("{what} is {value}, but must be {must}")]
    Value {
        /// What the number is.
        what: String,
        /// What it is now.
        value: Decimal,
        /// What it may be.
        must: &'static str,
    },
    /// There are more lines or uplifts than any quote has.
    #[error("there are more than {most} {what}")]
    TooMany {
        /// `lines` or `uplifts`.
        what: &'static str,
        /// How many there may be.
        most: usize,
    },
    /// The hours come to more than a million.
    #[error("the dents come to {hours:.0} hours; check their sizes, counts and the hours settings")]
    TooManyHours {
        /// The high hours, h.
        hours: f64,
    },
    /// The currency is not three capital letters.
    #[error("the currency is {0:?}, but must be three capital letters such as EUR")]
    Currency(String),
    /// A text is longer than a line of a paper.
    #[error("a text has {letters} letters, but a line holds at most {most}; shorten \"{begin}…\"")]
    Text {
        /// How its text begins.
        begin: String,
        /// How long it is.
        letters: usize,
        /// How long it may be.
        most: usize,
    },
    /// Paint or temperature cannot be.
    #[error(transparent)]
    Conditions(#[from] ConditionsError),
    /// The hail table or the size classes are not usable.
    #[error(transparent)]
    Table(#[from] TableError),
    /// The input names a hail table that is not there.
    #[error("no hail table is chosen, or it was removed; choose one or another way of pricing")]
    NoTable,
    /// The hail table has no rows for a panel.
    #[error("the hail table has no rows for {what}, and none for all panels (*)")]
    NotInTable {
        /// The panel's name.
        what: String,
    },
    /// The hail table ends before the count.
    #[error("the hail table ends before {dents} dents on {what}; give its last bracket no upper end, such as 201+")]
    TableEnds {
        /// The panel's name.
        what: String,
        /// How many dents it has.
        dents: u64,
    },
    /// A dent is larger than all sizes, and nothing says what that costs.
    #[error(
        "a dent on {what} is {across_mm:.1} mm across, the hail table ends at {largest_mm} mm; enter what an oversize dent costs on top, or 0"
    )]
    Oversize {
        /// The panel's name.
        what: String,
        /// How wide the dent is, mm.
        across_mm: f64,
        /// The largest size, mm.
        largest_mm: f64,
    },
}
