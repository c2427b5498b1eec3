//! Why there is no quote.

use rust_decimal::Decimal;

use crate::{DentError, SettingsError};

/// Why a quote cannot be made. Each names the line it is about.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum QuoteError {
    /// The hours settings are not usable.
    #[error(transparent)]
    Settings(#[from] SettingsError),
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
}
