//! Seller and buyer.

use serde::{Deserialize, Serialize};

/// Seller (BG-4) or buyer (BG-7).
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Party {
    /// BT-27, BT-44: name.
    pub name: String,
    /// BT-28, BT-45: name in trade, where it is another.
    pub trade_name: String,
    /// BT-30, BT-47: number in a register of companies.
    pub register: String,
    /// BT-33: legal form, share capital and the like (seller only).
    pub legal: String,
    /// BT-31, BT-48: VAT identifier, with its country's letters.
    pub vat_id: String,
    /// BT-32: local tax number (seller only).
    pub tax_number: String,
    /// BT-34, BT-49: electronic address.
    pub endpoint: String,
    /// BT-34-1, BT-49-1: its scheme (EAS), such as `EM` for a mail address.
    pub endpoint_scheme: String,
    /// BG-5, BG-8.
    pub address: Address,
    /// BT-41, BT-56: person or office to ask.
    pub contact: String,
    /// BT-42, BT-57.
    pub phone: String,
    /// BT-43, BT-58.
    pub email: String,
}

/// A postal address (BG-5, BG-8, BG-15).
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Address {
    /// BT-35, BT-50, BT-75: street and number.
    pub street: String,
    /// BT-36, BT-51, BT-76: more.
    pub more: String,
    /// BT-162, BT-163, BT-165: still more.
    pub line: String,
    /// BT-37, BT-52, BT-77.
    pub city: String,
    /// BT-38, BT-53, BT-78.
    pub postcode: String,
    /// BT-39, BT-54, BT-79: state or region.
    pub region: String,
    /// BT-40, BT-55, BT-80: ISO 3166-1 alpha-2.
    pub country: String,
}

impl Address {
    /// Whether nothing is known of it.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}
