//! A reading with the photos it was made from as one zip, which another installation opens: `reading/` holds the
//! reading's own files, `capture/` the photos and their description, where they are at hand.

use std::io::{Cursor, Write};
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, result::ZipResult};

/// Folder of the reading's files in the zip.
pub const READING_FOLDER: &str = "reading/";
/// Folder of the photos.
pub const CAPTURE_FOLDER: &str = "capture/";

/// Packs files: name and bytes, those of the reading and those of its capture.
///
/// # Errors
/// Names that no zip can hold, such as two alike.
pub fn pack(reading: &[(String, Vec<u8>)], capture: &[(String, Vec<u8>)]) -> ZipResult<Vec<u8>> {
    let mut zip = zip::ZipWriter::new(Cursor::new(Vec::new()));
    for (folder, files) in [(READING_FOLDER, reading), (CAPTURE_FOLDER, capture)] {
        for (name, bytes) in files {
            // Photos are packed already.
            let photo = ["jpg", "jpeg", "png"].iter().any(|end| name.to_ascii_lowercase().ends_with(end));
            let method = if photo { CompressionMethod::Stored } else { CompressionMethod::Deflated };
            zip.start_file(format!("{folder}{name}"), SimpleFileOptions::default().compression_method(method))?;
            zip.write_all(bytes)?;
        }
    }
    Ok(zip.finish()?.into_inner())
}
