//! The values of an invoice, by the semantic model of EN 16931-1.

use crate::{Address, Exemption, Party, Tax};
use dentwright_price::{decimals, round};
use jiff::civil::Date;
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

/// An invoice or a credit note.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Invoice {
    /// BT-1: number, unbroken.
    pub number: String,
    /// BT-2: day of issue.
    pub issued: Date,
    /// BT-3.
    pub kind: Kind,
    /// BT-5: ISO 4217.
    pub currency: String,
    /// BT-9: day by which it is to be paid.
    pub due: Option<Date>,
    /// BT-10: the buyer's own reference.
    pub buyer_reference: String,
    /// BT-13: the buyer's order.
    pub order: String,
    /// BT-20: terms of payment, in words.
    pub terms: String,
    /// BT-22: notes.
    pub notes: Vec<String>,
    /// BG-3: what it corrects or follows.
    pub preceding: Vec<Preceding>,
    /// BG-4.
    pub seller: Party,
    /// BG-7.
    pub buyer: Party,
    /// BT-72: day the work was handed over.
    pub delivered: Option<Date>,
    /// BG-14: first and last day of the work.
    pub period: Option<(Date, Date)>,
    /// BG-15: where, if not at the buyer's.
    pub deliver_to: Address,
    /// BG-16.
    pub payment: Option<Payment>,
    /// BG-20 and BG-21.
    pub adjustments: Vec<Adjustment>,
    /// Why a category is without tax (BT-120, BT-121).
    pub exemptions: Vec<Exemption>,
    /// BT-113: paid before.
    pub prepaid: Decimal,
    /// BT-114: added so that the amount due can be paid in coins.
    pub rounding: Decimal,
    /// BG-25.
    pub lines: Vec<Line>,
}

/// What sort of paper it is (BT-3, UNTDID 1001).
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// 380: the buyer owes.
    #[default]
    Invoice,
    /// 381: the seller gives back.
    CreditNote,
}

impl Kind {
    /// Its code.
    #[must_use]
    pub fn code(self) -> &'static str {
        match self {
            Self::Invoice => "380",
            Self::CreditNote => "381",
        }
    }
}

/// An earlier invoice (BG-3).
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Preceding {
    /// BT-25.
    pub number: String,
    /// BT-26.
    pub issued: Option<Date>,
}

/// How it is to be paid (BG-16).
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Payment {
    /// BT-81, UNTDID 4461: `10` cash, `30` credit transfer, `48` card, `58` SEPA credit transfer.
    pub means: String,
    /// BT-82: the same in words.
    pub text: String,
    /// BT-83: what the buyer writes on it.
    pub remittance: String,
    /// BT-84: account, best an IBAN.
    pub account: String,
    /// BT-85: whose.
    pub holder: String,
    /// BT-86: BIC.
    pub bank: String,
}

/// Something taken off (BG-20) or added (BG-21) on the whole.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Adjustment {
    /// Added (true) or taken off.
    pub charge: bool,
    /// BT-92, BT-99: without tax, not negative.
    pub amount: Decimal,
    /// BT-93, BT-100: what the percentage was taken on.
    pub base: Option<Decimal>,
    /// BT-94, BT-101, %.
    pub percent: Option<Decimal>,
    /// BT-97, BT-104: why.
    pub reason: String,
    /// BT-98, BT-105: UNTDID 5189 or 7161; may be empty.
    pub reason_code: String,
    /// BT-95, BT-96, BT-102, BT-103.
    pub tax: Tax,
}

/// One line (BG-25). BT-126, its number, is its place.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Line {
    /// BT-153: what it is.
    pub name: String,
    /// BT-154: more words.
    pub description: String,
    /// BT-127: note.
    pub note: String,
    /// BT-155: the seller's own number of it.
    pub item: String,
    /// BT-129.
    pub quantity: Decimal,
    /// BT-130: UN/ECE Recommendation 20, such as [`crate::HOUR`].
    pub unit: String,
    /// BT-146: price of `price_quantity` units, without tax.
    pub price: Decimal,
    /// BT-149: one, but for prices of a hundred and the like.
    pub price_quantity: Decimal,
    /// BG-27 and BG-28.
    pub adjustments: Vec<LineAdjustment>,
    /// BG-30.
    pub tax: Tax,
}

/// Something taken off (BG-27) or added (BG-28) on one line.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct LineAdjustment {
    /// Added (true) or taken off.
    pub charge: bool,
    /// BT-136, BT-141: without tax, not negative.
    pub amount: Decimal,
    /// BT-139, BT-144: why.
    pub reason: String,
    /// BT-140, BT-145.
    pub reason_code: String,
}

impl Line {
    /// A plain line: so many units at a price.
    #[must_use]
    pub fn new(name: impl Into<String>, quantity: Decimal, unit: &str, price: Decimal, tax: Tax) -> Self {
        Self {
            name: name.into(),
            description: String::new(),
            note: String::new(),
            item: String::new(),
            quantity,
            unit: unit.to_owned(),
            price,
            price_quantity: Decimal::ONE,
            adjustments: Vec::new(),
            tax,
        }
    }

    /// BT-131: what the line comes to, without tax, rounded to `coin` decimals.
    #[must_use]
    pub fn net(&self, coin: u32) -> Decimal {
        let units = if self.price_quantity.is_zero() { Decimal::ONE } else { self.price_quantity };
        let plain = round(self.quantity * self.price / units, coin);
        let signed = |one: &LineAdjustment| if one.charge { one.amount } else { -one.amount };
        round(plain + self.adjustments.iter().map(signed).sum::<Decimal>(), coin)
    }
}

impl Invoice {
    /// Decimals of its money: those of the currency, at most two (BR-DEC-*).
    #[must_use]
    pub fn coin(&self) -> u32 {
        decimals(&self.currency).min(2)
    }

    /// An invoice of today's number with nothing on it; fill the rest.
    #[must_use]
    pub fn new(number: impl Into<String>, issued: Date, currency: &str, seller: Party, buyer: Party) -> Self {
        Self {
            number: number.into(),
            issued,
            kind: Kind::Invoice,
            currency: currency.to_owned(),
            due: None,
            buyer_reference: String::new(),
            order: String::new(),
            terms: String::new(),
            notes: Vec::new(),
            preceding: Vec::new(),
            seller,
            buyer,
            delivered: None,
            period: None,
            deliver_to: Address::default(),
            payment: None,
            adjustments: Vec::new(),
            exemptions: Vec::new(),
            prepaid: Decimal::ZERO,
            rounding: Decimal::ZERO,
            lines: Vec::new(),
        }
    }
}
