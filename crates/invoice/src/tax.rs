//! Tax categories (UNTDID 5305, the part that EN 16931 uses).

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

/// How something is taxed (BT-95, BT-102, BT-118, BT-151).
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Category {
    /// S: a rate above zero.
    #[default]
    Standard,
    /// Z: a rate of zero.
    Zero,
    /// E: exempt, with a reason.
    Exempt,
    /// AE: the buyer owes the tax.
    ReverseCharge,
    /// K: supply within the EU.
    IntraCommunity,
    /// G: export out of the EU.
    Export,
    /// O: outside the scope of the tax.
    OutOfScope,
}

impl Category {
    /// Its code.
    #[must_use]
    pub fn code(self) -> &'static str {
        match self {
            Self::Standard => "S",
            Self::Zero => "Z",
            Self::Exempt => "E",
            Self::ReverseCharge => "AE",
            Self::IntraCommunity => "K",
            Self::Export => "G",
            Self::OutOfScope => "O",
        }
    }

    /// The word by which the standard names its rules: `BR-AE-05`, `BR-IC-10`.
    pub(crate) fn rules(self) -> &'static str {
        match self {
            Self::IntraCommunity => "IC",
            other => other.code(),
        }
    }

    /// Whether the breakdown must say why there is no tax.
    #[must_use]
    pub fn needs_reason(self) -> bool {
        !matches!(self, Self::Standard | Self::Zero)
    }
}

/// Category and rate.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Tax {
    /// BT-151 and its like.
    pub category: Category,
    /// BT-152 and its like, %; zero unless the category is [`Category::Standard`].
    pub rate: Decimal,
}

impl Tax {
    /// A rate above zero, or zero rated.
    ///
    /// ```
    /// use dentwright_invoice::{Category, Tax};
    /// assert_eq!(Tax::at("19".parse().unwrap()).category, Category::Standard);
    /// assert_eq!(Tax::at("0.0".parse().unwrap()).category, Category::Zero);
    /// ```
    #[must_use]
    pub fn at(rate: Decimal) -> Self {
        let rate = rate.normalize();
        Self { category: if rate.is_zero() { Category::Zero } else { Category::Standard }, rate }
    }

    /// Without tax, for a reason that the category says.
    #[must_use]
    pub fn none(category: Category) -> Self {
        Self { category, rate: Decimal::ZERO }
    }
}

/// Why a category carries no tax.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Exemption {
    /// Which category.
    pub category: Category,
    /// BT-120, in words.
    pub reason: String,
    /// BT-121, a code of the VATEX list such as `VATEX-EU-AE`; may be empty.
    pub code: String,
}
