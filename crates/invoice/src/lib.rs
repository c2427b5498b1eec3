//! An invoice by EN 16931: values, its rules, UBL and CII.
//!
//! # Entry points
//! Fill an [`Invoice`]; [`Totals::of`] adds it up, [`check()`] names every rule that it breaks, [`ubl()`] and
//! [`cii()`] write it as XML once it breaks none.
//!
//! # Conventions
//! Fields carry the standard's numbers, BT-… for one value and BG-… for a group. Money is decimal, in
//! the invoice's currency, with at most two decimals; a credit note's amounts are positive, its kind
//! says which way they go. Empty texts are values that are not there.
//!
//! # Idea
//! The totals and the tax breakdown are never entered but always worked out from lines, allowances
//! and charges, so the sums of the standard (BR-CO-10 to BR-CO-17) hold by construction. What is left
//! to break is checked by the standard's own rule names, so that a message of a receiving portal and
//! one of ours speak of the same thing. Both syntaxes are written from the same values.
//!
//! # Limits
//! Not written: a second tax currency (BT-6), payee and tax representative (BG-10, BG-11), card and
//! direct debit (BG-18, BG-19), attachments (BG-24), categories L and M, national subsets (CIUS).
//! Code lists are checked for countries; currencies and units only for their form. No legal advice.
//!
//! # References
//! EN 16931-1:2017 (semantic model and rules), CEN/TS 16931-3-2 (UBL 2.1), CEN/TS 16931-3-3 (CII);
//! UNTDID 1001, 4461, 5305, 5189, 7161; UN/ECE Recommendation 20; ISO 3166-1; ISO 4217.

mod check;
mod check_tax;
mod cii;
mod codes;
mod invoice;
mod party;
mod tax;
mod totals;
mod ubl;
mod xml;

pub use check::{Breach, check};
pub use cii::cii;
pub use codes::{COUNTRIES, DAY, HOUR, PIECE, is_country};
pub use invoice::{Adjustment, Invoice, Kind, Line, LineAdjustment, Payment, Preceding};
pub use party::{Address, Party};
pub use tax::{Category, Exemption, Tax};
pub use totals::{TaxTotal, Totals};
pub use ubl::ubl;
