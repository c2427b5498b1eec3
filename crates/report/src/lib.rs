//! A job on paper: PDF, human wording, languages.

mod data;

pub use data::*;

/// A finished report.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Report {
    /// The PDF file's bytes.
    pub pdf: Vec<u8>,
    /// Number of pages.
    pub pages: usize,
}

/// Why there is no report.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ReportError {
    /// A language file lacks a text, or it cannot be put together.
    #[error("the report's text {0:?} is missing or broken in its language file")]
    Words(String),
    /// A template does not compile.
    #[error("the report's template failed: {0}")]
    Template(String),
    /// The laid-out report cannot be written as PDF.
    #[error("the report cannot be written as PDF: {0}")]
    Pdf(String),
}
