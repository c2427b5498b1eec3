//! From the values to PDF bytes.

use typst::diag::SourceDiagnostic;
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};

use crate::view;
use crate::world::ReportWorld;
use crate::{Report, ReportData, ReportError};

/// Makes the report.
///
/// The same values give the same bytes. A photo that cannot be decoded is named in its place;
/// a map whose sizes do not fit is left out.
///
/// # Errors
/// When a template or a language file of the program is broken; entered values cannot cause one.
pub fn report(data: &ReportData) -> Result<Report, ReportError> {
    let _evict = EvictAfter;
    pdf(&report_world(data)?)
}

/// Sets a world's pages and writes them as PDF.
pub(crate) fn pdf(world: &ReportWorld) -> Result<Report, ReportError> {
    written(world, PdfStandards::default())
}

/// Sets a world's pages and writes them as PDF/A-3b, to be kept for years.
pub(crate) fn archive(world: &ReportWorld) -> Result<Report, ReportError> {
    let standards = PdfStandards::new(&[PdfStandard::A_3b]);
    written(world, standards.map_err(|error| ReportError::Pdf(error.message().to_string()))?)
}

fn written(world: &ReportWorld, standards: PdfStandards) -> Result<Report, ReportError> {
    let document = set(world)?;
    let options = PdfOptions {
        creator: typst::foundations::Smart::Custom(Some("Dentwright".to_owned())),
        standards,
        ..PdfOptions::default()
    };
    let pdf = typst_pdf::pdf(&document, &options).map_err(|errors| ReportError::Pdf(first(&errors)))?;
    Ok(Report { pdf, pages: document.pages().len() })
}

/// Sets the pages of a report.
#[cfg(test)]
pub(crate) fn lay_out(data: &ReportData) -> Result<PagedDocument, ReportError> {
    set(&report_world(data)?)
}

/// All text of all pages, one piece a line.
#[cfg(test)]
pub(crate) fn text_of(data: &ReportData) -> String {
    text(&lay_out(data).unwrap())
}

/// All text of a paper.
#[cfg(test)]
pub(crate) fn papers_text(data: &crate::PaperData) -> String {
    text(&set(&crate::papers::world(data).unwrap()).unwrap())
}

#[cfg(test)]
fn text(document: &PagedDocument) -> String {
    fn collect(frame: &typst::layout::Frame, text: &mut String) {
        for (_, item) in frame.items() {
            match item {
                typst::layout::FrameItem::Group(group) => collect(&group.frame, text),
                typst::layout::FrameItem::Text(piece) => {
                    text.push_str(&piece.text);
                    text.push('\n');
                }
                _ => {}
            }
        }
    }
    let mut text = String::new();
    document.pages().iter().for_each(|page| collect(&page.frame, &mut text));
    text
}

fn report_world(data: &ReportData) -> Result<ReportWorld, ReportError> {
    Ok(ReportWorld::new("report.typ", view::files(data)?))
}

fn set(world: &ReportWorld) -> Result<PagedDocument, ReportError> {
    typst::compile::<PagedDocument>(world).output.map_err(|errors| ReportError::Template(first(&errors)))
}

fn first(errors: &[SourceDiagnostic]) -> String {
    errors.first().map_or_else(String::new, |error| error.message.to_string())
}

/// Empties typst's cache when a report is made or has failed: photos would stay in it, megabytes
/// a report, for as long as the server runs.
pub(crate) struct EvictAfter;

impl Drop for EvictAfter {
    fn drop(&mut self) {
        comemo::evict(0);
    }
}
