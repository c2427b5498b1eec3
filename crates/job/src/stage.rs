//! How far a job has come.

use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;

/// A stage of a job. A job may go back: a customer may withdraw, a car may return.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Stage {
    /// The car is here and its damage is being recorded.
    #[default]
    TakenIn,
    /// The customer has the quote.
    Quoted,
    /// The customer has agreed.
    Authorised,
    /// Work has begun.
    InWork,
    /// Work is done.
    Finished,
    /// The customer has the car.
    HandedOver,
}

/// A text that is no stage's code.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{0:?} is no stage of a job")]
pub struct NoSuchStage(pub String);

impl Stage {
    /// All stages in order.
    pub const ALL: [Self; 6] =
        [Self::TakenIn, Self::Quoted, Self::Authorised, Self::InWork, Self::Finished, Self::HandedOver];

    /// Its code, such as `in_work`.
    #[must_use]
    pub fn code(self) -> &'static str {
        match self {
            Self::TakenIn => "taken_in",
            Self::Quoted => "quoted",
            Self::Authorised => "authorised",
            Self::InWork => "in_work",
            Self::Finished => "finished",
            Self::HandedOver => "handed_over",
        }
    }
}

impl fmt::Display for Stage {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}

impl FromStr for Stage {
    type Err = NoSuchStage;

    fn from_str(text: &str) -> Result<Self, NoSuchStage> {
        Self::ALL.into_iter().find(|stage| stage.code() == text).ok_or_else(|| NoSuchStage(text.to_owned()))
    }
}
