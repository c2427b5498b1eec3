//! Pictures on their way into the report: each checked first, so that one broken photo leaves a
//! line of text in its place and not a report that cannot be made.

use serde_json::{Value, json};
use typst::foundations::{Bytes, Smart};
use typst::visualize::{ExchangeFormat, RasterImage};

use crate::words::Words;
use crate::{NamedImage, ReportError};

/// Pictures given by name, and those that the report has asked for so far.
pub(crate) struct Pictures<'a> {
    given: &'a [NamedImage],
    files: Vec<(String, Bytes)>,
}

impl<'a> Pictures<'a> {
    pub(crate) fn new(given: &'a [NamedImage]) -> Self {
        Self { given, files: Vec::new() }
    }

    /// A photo by its name: the file that it is under, or why there is none.
    pub(crate) fn photo(&mut self, name: &str, words: &Words) -> Result<Value, ReportError> {
        let given = self.given.iter().find(|image| image.name == name);
        match given.and_then(|image| decoded(&image.bytes)) {
            Some((bytes, aspect)) => Ok(json!({ "file": self.add(bytes), "aspect": aspect })),
            None => Ok(json!({ "missing": words.fill("photo-missing", &[("name", name)])? })),
        }
    }

    /// Files pixels or a photo under a name of our own; entered names never reach typst's paths.
    pub(crate) fn add(&mut self, bytes: Bytes) -> String {
        let name = format!("picture-{}", self.files.len());
        self.files.push((name.clone(), bytes));
        name
    }

    pub(crate) fn into_files(self) -> Vec<(String, Bytes)> {
        self.files
    }
}

/// The bytes with width over height, if they are a whole picture of a kind that typst knows. Typst keeps what it
/// decoded here and does not decode it again.
fn decoded(bytes: &[u8]) -> Option<(Bytes, f64)> {
    let format = ExchangeFormat::detect(bytes)?;
    let bytes = Bytes::new(bytes.to_vec());
    let image = RasterImage::new(bytes.clone(), format, Smart::Auto).ok()?;
    Some((bytes, f64::from(image.width()) / f64::from(image.height().max(1))))
}
