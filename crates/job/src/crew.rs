//! Who works in the shop, and how they are paid.

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// Someone who works in the shop.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Technician {
    /// Their id.
    pub id: Uuid,
    /// Their name; empty for the one who works alone.
    pub name: String,
    /// How they are paid.
    pub pay: Pay,
    /// Whether they no longer work here.
    pub gone: bool,
}

/// How a technician is paid.
#[derive(Debug, Clone, Copy, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(tag = "by", rename_all = "snake_case")]
pub enum Pay {
    /// Not by this sheet, as the owner.
    #[default]
    None,
    /// For each clocked hour.
    Hour {
        /// Pay of an hour, in the shop's currency.
        rate: Decimal,
    },
    /// A share of the labour of the jobs that were finished.
    Share {
        /// %, 0 to 100.
        percent: Decimal,
    },
}

/// Why somebody's pay cannot be used.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum PayError {
    /// No pay of an hour.
    #[error("the pay of an hour is {0}, but must be from 0 to 100000")]
    Rate(Decimal),
    /// No percentage.
    #[error("the share is {0} %, but must be from 0 to 100")]
    Percent(Decimal),
}

/// Dearest hour that is not a slip of the pen, in any currency.
const DEAREST_HOUR: i64 = 100_000;

impl Pay {
    /// Checks the numbers.
    ///
    /// # Errors
    /// When a number is not one that anybody is paid.
    pub fn check(self) -> Result<(), PayError> {
        match self {
            Self::Hour { rate } if rate < Decimal::ZERO || rate > Decimal::from(DEAREST_HOUR) => {
                Err(PayError::Rate(rate))
            }
            Self::Share { percent } if percent < Decimal::ZERO || percent > Decimal::ONE_HUNDRED => {
                Err(PayError::Percent(percent))
            }
            _ => Ok(()),
        }
    }
}
