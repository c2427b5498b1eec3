//! What the shop's invoices carry beside its head.

use serde::{Deserialize, Serialize};

/// How the shop bills.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(default)]
pub struct Billing {
    /// Country of the shop, ISO 3166-1 alpha-2; its pack gives texts, tax and paper.
    pub country: String,
    /// VAT identifier, with the country's letters.
    pub vat_id: String,
    /// Local tax number.
    pub tax_number: String,
    /// Number in a register of companies.
    pub register: String,
    /// Account to pay to, best an IBAN.
    pub account: String,
    /// BIC of its bank.
    pub bank: String,
    /// Days in which an invoice is to be paid.
    pub due_days: u32,
    /// Why the shop's work carries no tax, such as a small business; empty where it does.
    pub exempt_reason: String,
}

impl Default for Billing {
    /// Fourteen days to pay: common practice, no published source.
    fn default() -> Self {
        Self {
            country: String::new(),
            vat_id: String::new(),
            tax_number: String::new(),
            register: String::new(),
            account: String::new(),
            bank: String::new(),
            due_days: 14,
            exempt_reason: String::new(),
        }
    }
}

/// Longest time to pay that is no slip of the pen.
const MOST_DAYS: u32 = 365;

/// Why a shop's billing cannot be used.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum BillingError {
    /// The country is not two capital letters.
    #[error("the country is {0:?}, but must be two capital letters such as DE")]
    Country(String),
    /// A longer time than anyone gives.
    #[error("the time to pay is {0} days, but must be at most {MOST_DAYS}")]
    DueDays(u32),
}

impl Billing {
    /// Checks the values; an empty country is one that nobody has chosen yet.
    ///
    /// # Errors
    /// The first that cannot be.
    pub fn check(&self) -> Result<(), BillingError> {
        let letters = self.country.len() == 2 && self.country.bytes().all(|b| b.is_ascii_uppercase());
        if !self.country.is_empty() && !letters {
            return Err(BillingError::Country(self.country.clone()));
        }
        if self.due_days > MOST_DAYS {
            return Err(BillingError::DueDays(self.due_days));
        }
        Ok(())
    }
}
