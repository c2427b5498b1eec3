//! The sorts of papers.

use serde::{Deserialize, Serialize};

/// A sort of paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum PaperKind {
    /// What the work will cost, before it begins.
    Estimate,
    /// The customer's word that the work may begin.
    Authorisation,
    /// What changed since then, and why.
    Supplement,
    /// What is to be done, for whoever does it; without prices.
    WorkOrder,
    /// Photos, maps and counts, before and after.
    Evidence,
    /// How the panels were handed over.
    Certificate,
    /// What the shop stands in for afterwards.
    Warranty,
    /// The consumer's right to cancel work agreed away from the shop.
    Cancellation,
    /// What is owed.
    Invoice,
    /// What is given back.
    CreditNote,
    /// What was paid.
    Receipt,
}

impl PaperKind {
    /// All of them, in the order of a job.
    pub const ALL: [Self; 11] = [
        Self::Estimate,
        Self::Authorisation,
        Self::Supplement,
        Self::WorkOrder,
        Self::Evidence,
        Self::Certificate,
        Self::Warranty,
        Self::Cancellation,
        Self::Invoice,
        Self::CreditNote,
        Self::Receipt,
    ];

    /// Its code, such as `work_order`.
    #[must_use]
    pub fn code(self) -> &'static str {
        match self {
            Self::Estimate => "estimate",
            Self::Authorisation => "authorisation",
            Self::Supplement => "supplement",
            Self::WorkOrder => "work_order",
            Self::Evidence => "evidence",
            Self::Certificate => "certificate",
            Self::Warranty => "warranty",
            Self::Cancellation => "cancellation",
            Self::Invoice => "invoice",
            Self::CreditNote => "credit_note",
            Self::Receipt => "receipt",
        }
    }

    /// The paper of a code.
    #[must_use]
    pub fn of(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.code() == code)
    }

    /// Whether its numbers must be unbroken.
    #[must_use]
    pub fn is_numbered(self) -> bool {
        matches!(self, Self::Invoice | Self::CreditNote | Self::Receipt)
    }
}
