//! Vehicle identification numbers: their form, and the check digit where one is due.
//!
//! Form by ISO 3779: 17 characters, digits and capital letters without I, O and Q. Check digit in
//! the ninth place by 49 CFR 565.15(c): letters become numbers, each place has a weight, and the
//! sum modulo 11 is the digit, 10 being X. It is due for vehicles made for North America; elsewhere
//! makers use the ninth place as they like, so there it is a remark and never an error.

use serde::{Deserialize, Serialize};
use std::fmt;

/// Characters of a VIN.
const LENGTH: usize = 17;
/// Weight of each place, 49 CFR 565.15(c)(2) table IV; the check digit itself weighs nothing.
const WEIGHTS: [u32; LENGTH] = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2];
/// Place of the check digit, from 0.
const CHECK_AT: usize = 8;

/// A vehicle identification number of the right form, in capitals.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Vin(String);

/// What the ninth place says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CheckDigit {
    /// It is the check digit of the others.
    Fits,
    /// The car was made for North America, where it is due, and it is not: a slip of the pen.
    Differs {
        /// What it should be.
        due: char,
    },
    /// It is not, but no rule asks for it.
    NotDue,
}

/// Why a text is no VIN.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum VinError {
    /// Too short or too long.
    #[error("a VIN has 17 characters, this one has {0}")]
    Length(usize),
    /// A character that no VIN has.
    #[error("a VIN has no {found:?}, as in place {place}{hint}")]
    Character {
        /// What stands there.
        found: char,
        /// Where, from 1.
        place: usize,
        /// What may be meant, or nothing.
        hint: &'static str,
    },
}

impl Vin {
    /// Reads a VIN; spaces and hyphens are dropped, letters become capitals.
    ///
    /// # Errors
    /// Names the first character that cannot be, else the wrong length.
    ///
    /// ```
    /// use dentwright_job::{CheckDigit, Vin};
    /// let vin = Vin::parse("1m8gdm9axkp042788").unwrap();
    /// assert_eq!(vin.check_digit(), CheckDigit::Fits);
    /// assert!(Vin::parse("1M8GDM9AXKPO42788").unwrap_err().to_string().contains("'O'"));
    /// ```
    pub fn parse(text: &str) -> Result<Self, VinError> {
        let vin: String =
            text.chars().filter(|c| !c.is_whitespace() && *c != '-').map(|c| c.to_ascii_uppercase()).collect();
        if let Some((at, found)) = vin.chars().enumerate().find(|(_, c)| value(*c).is_none()) {
            return Err(VinError::Character { found, place: at + 1, hint: hint(found) });
        }
        if vin.len() != LENGTH {
            return Err(VinError::Length(vin.len()));
        }
        Ok(Self(vin))
    }

    /// The 17 characters.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// Compares the ninth place with the others.
    #[must_use]
    pub fn check_digit(&self) -> CheckDigit {
        let due = check_digit(&self.0).unwrap_or('0');
        let fits = self.0.as_bytes()[CHECK_AT] == due as u8;
        match (fits, self.is_north_american()) {
            (true, _) => CheckDigit::Fits,
            (false, true) => CheckDigit::Differs { due },
            (false, false) => CheckDigit::NotDue,
        }
    }

    /// Whether the maker is in North America: the first character is 1 to 5 (ISO 3780).
    #[must_use]
    pub fn is_north_american(&self) -> bool {
        matches!(self.0.as_bytes()[0], b'1'..=b'5')
    }
}

/// The check digit that 17 characters should have; none where they are not of a VIN's form. What
/// stands in the ninth place does not matter.
///
/// ```
/// assert_eq!(dentwright_job::check_digit("1M8GDM9A0KP042788"), Some('X'));
/// ```
#[must_use]
pub fn check_digit(vin: &str) -> Option<char> {
    if vin.chars().count() != LENGTH {
        return None;
    }
    let sum = vin.chars().zip(WEIGHTS).map(|(c, weight)| value(c).map(|v| v * weight)).sum::<Option<u32>>()?;
    match sum % 11 {
        10 => Some('X'),
        digit => char::from_digit(digit, 10),
    }
}

/// Number of a character, 49 CFR 565.15(c)(1) table III; none for I, O, Q and everything else.
fn value(c: char) -> Option<u32> {
    match c {
        '0'..='9' => c.to_digit(10),
        'A'..='H' => Some(c as u32 - 'A' as u32 + 1),
        'J'..='N' => Some(c as u32 - 'J' as u32 + 1),
        'P' => Some(7),
        'R' => Some(9),
        'S'..='Z' => Some(c as u32 - 'S' as u32 + 2),
        _ => None,
    }
}

fn hint(found: char) -> &'static str {
    match found {
        'I' => "; a 1 may be meant",
        'O' | 'Q' => "; a 0 may be meant",
        _ => "",
    }
}

impl fmt::Display for Vin {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl TryFrom<String> for Vin {
    type Error = VinError;

    fn try_from(text: String) -> Result<Self, VinError> {
        Self::parse(&text)
    }
}

impl From<Vin> for String {
    fn from(vin: Vin) -> Self {
        vin.0
    }
}
