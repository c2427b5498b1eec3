//! What a paper consists of, in order; `paper.typ` sets it.

use serde::Serialize;

/// One part of a paper. All texts are ready to be set.
#[derive(Debug, Clone, Serialize)]
#[serde(tag = "block", rename_all = "snake_case")]
pub(crate) enum Block {
    /// A heading.
    Section { title: String },
    /// A paragraph.
    Text { text: String },
    /// A paragraph in small type.
    Small { text: String },
    /// A paragraph that must be seen.
    Boxed { title: String, text: String },
    /// Label and value, one pair a row.
    Pairs { rows: Vec<[String; 2]> },
    /// A table; `numbers` says which columns stand to the right.
    Table { head: Vec<String>, numbers: Vec<bool>, rows: Vec<Vec<String>> },
    /// Label and amount, the last one strong.
    Sums { rows: Vec<[String; 2]> },
    /// Things to tick, with room to write beside.
    Ticks { rows: Vec<String> },
    /// A place to sign, or what was signed.
    Signature { label: String, name: String, at: String, file: Option<String>, below: String },
    /// The drawn car with the list of damages.
    Overview,
    /// Every damage: photos, maps, dents.
    Damages,
    /// The quote.
    Quote,
    /// The cautions that apply.
    Cautions,
    /// How it was measured.
    Methods,
}

impl Block {
    pub(crate) fn section(title: impl Into<String>) -> Self {
        Self::Section { title: title.into() }
    }

    pub(crate) fn text(text: impl Into<String>) -> Self {
        Self::Text { text: text.into() }
    }

    pub(crate) fn small(text: impl Into<String>) -> Self {
        Self::Small { text: text.into() }
    }
}
