//! Cautions in words, by the codes that the record's logic gives.

use crate::words::Words;
use crate::{Language, ReportError};

/// Codes of all cautions that have words, in the order of a report.
pub const CAUTION_CODES: [&str; 13] = [
    "airbag_curtain",
    "airbag_seat_pillar",
    "high_voltage",
    "voltage_unknown",
    "gas_strut",
    "heat_paint",
    "solvent",
    "hot_glue",
    "noise",
    "eyes_hands",
    "radar_camera",
    "bonded_structure",
    "corrosion",
];

/// A caution in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Caution {
    /// What it is about, two or three words.
    pub title: String,
    /// What to do.
    pub text: String,
}

/// The words of a caution; none for a code that is not one of [`CAUTION_CODES`].
///
/// # Errors
/// When the language file is broken.
///
/// ```
/// use dentwright_report::{Language, caution};
/// let strut = caution("gas_strut", Language::En)?.unwrap();
/// assert!(strut.text.contains("Prop the lid"));
/// assert_eq!(caution("no_such_code", Language::En)?, None);
/// # Ok::<(), dentwright_report::ReportError>(())
/// ```
pub fn caution(code: &str, language: Language) -> Result<Option<Caution>, ReportError> {
    Ok(in_words(code, &Words::new(language)?))
}

/// What always stands above the cautions: the maker's procedure, local code, licensed people.
///
/// # Errors
/// When the language file is broken.
pub fn cautions_always(language: Language) -> Result<String, ReportError> {
    Words::new(language)?.say("cautions-always")
}

pub(crate) fn in_words(code: &str, words: &Words) -> Option<Caution> {
    let title = words.find(&format!("caution-{code}-title"))?;
    let text = words.find(&format!("caution-{code}"))?;
    Some(Caution { title, text })
}
