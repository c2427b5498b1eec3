//! A job on paper: PDF, human wording, languages.
//!
//! # Entry points
//! [`report()`] makes a PDF of a [`ReportData`]; [`paper()`] one of the job's papers from a [`PaperData`], in the
//! words of a [`Country`]; [`print_sheet`] makes tags, line boards and the camera sheet at
//! true scale; [`caution()`] gives the words of one caution.
//!
//! # Conventions
//! Values come in millimetres, hours and decimal money; they leave in the language's own
//! writing. Places on a panel run right and down, maps run right and up.
//!
//! # Idea
//! Values are turned into texts here, by language files (`lang/*.ftl`) that a translator can
//! edit, and handed to the templates (`templates/*.typ`) as one JSON file; the templates only
//! set them. They compile in a closed world: no file, network, clock or font of the machine.
//! Entered text arrives as string values and is never read as markup.
//!
//! # Limits
//! The sample of four pages with three photos of 0.5 MP and a map of 480 × 300 cells takes about
//! 100 ms and 240 kB (`cargo run --release -p dentwright-report --example sample_report`).
//! Photos go into the file as they are, so give them scaled down for paper. Letters that neither font has,
//! such as Chinese ones, are set as boxes; a word of more than 26 letters may break anywhere. Texts that a reading
//! wrote are English: a verdict's reason is left out of other papers, remarks are said in their own words.
//!
//! # References
//! Fonts: Libertinus Serif, SIL Open Font License 1.1; DejaVu Sans Mono, its own permissive licence, for letters
//! that the first lacks. PDF/A: ISO 19005-3. VAT Directive 2006/112/EC, Article 226. Cautions: trade practice, with the
//! flash point of isopropanol from the NIOSH Pocket Guide and the noise level from HSE,
//! "Noise in motor vehicle repair".

#[cfg(test)]
extern crate self as dentwright_report; // the tests share the sample of the example

mod calendar;
mod car;
mod cautions;
mod change_view;
mod colour;
mod damage_view;
mod data;
mod format;
mod map;
mod metal_view;
mod method_view;
#[cfg(test)]
mod paper_tests;
mod papers;
mod pictures;
mod print;
mod quote_view;
mod render;
#[cfg(test)]
#[path = "../examples/sample/mod.rs"]
mod sample;
mod settable;
#[cfg(test)]
mod tests;
mod view;
mod words;
mod world;

pub use calendar::{CALENDAR_MEDIA, PromisedFor, PromisedJob, calendar};
pub use cautions::{CAUTION_CODES, Caution, caution, cautions_always};
pub use data::*;
pub use papers::*;
pub use print::{BOARD_IDS, LineBoard, PANEL_IDS, PrintError, STICKER_MM, Sheet, print_sheet};
pub use render::report;

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
