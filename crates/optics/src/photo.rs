//! Photos as the phone wrote them: decode to grey, turn upright, focal length from EXIF.

use rayon::prelude::*;
use thiserror::Error;
use zune_core::{bytestream::ZCursor, colorspace::ColorSpace, options::DecoderOptions};

/// A grey photo as stored, not yet linear in light.
#[derive(Debug, Clone)]
pub struct Photo {
    /// Columns, px.
    pub width: usize,
    /// Rows, px.
    pub height: usize,
    /// Luma 0 to 255, row-major from the top.
    pub grey: Vec<u8>,
    /// 35 mm equivalent focal length from EXIF, mm.
    pub focal_35mm: Option<f64>,
}

/// Why a photo could not be used.
#[derive(Debug, Error, Clone, PartialEq, Eq)]
pub enum PhotoError {
    /// Neither JPEG nor PNG.
    #[error("is neither a JPEG nor a PNG photo")]
    Format,
    /// Truncated or damaged.
    #[error("is damaged or cut short ({0})")]
    Damaged(String),
    /// So small that nothing can be made out.
    #[error("is {0} x {1} px, too small to show a tag")]
    Small(usize, usize),
}

/// Largest side accepted, px: beyond any phone, below what would exhaust memory.
const MAX_SIDE_PX: usize = 16_384;
/// Smallest side accepted, px: a tag alone spans ten modules of three pixels; detector and filters need as much.
const MIN_SIDE_PX: usize = 32;

/// Decodes a JPEG or PNG and turns it upright by its EXIF orientation.
pub fn decode(bytes: &[u8]) -> Result<Photo, PhotoError> {
    let (width, height, grey) = if bytes.starts_with(&[0xff, 0xd8]) {
        jpeg(bytes)?
    } else if bytes.starts_with(b"\x89PNG") {
        png(bytes)?
    } else {
        return Err(PhotoError::Format);
    };
    if width.min(height) < MIN_SIDE_PX {
        return Err(PhotoError::Small(width, height));
    }
    let (focal_35mm, orientation) = exif_facts(bytes);
    Ok(upright(Photo { width, height, grey, focal_35mm }, orientation))
}

fn jpeg(bytes: &[u8]) -> Result<(usize, usize, Vec<u8>), PhotoError> {
    // A JPEG that lacks its end marker was cut short; decoders fill the rest with grey.
    let tail = &bytes[bytes.len().saturating_sub(64)..];
    if !tail.windows(2).any(|w| w == [0xff, 0xd9]) && !bytes.windows(2).any(|w| w == [0xff, 0xd9]) {
        return Err(PhotoError::Damaged("its end is missing".into()));
    }
    let options = DecoderOptions::default()
        .set_max_width(MAX_SIDE_PX)
        .set_max_height(MAX_SIDE_PX)
        .set_strict_mode(true)
        .jpeg_set_out_colorspace(ColorSpace::Luma);
    let mut decoder = zune_jpeg::JpegDecoder::new_with_options(ZCursor::new(bytes), options);
    let grey = decoder.decode().map_err(|e| PhotoError::Damaged(e.to_string()))?;
    let (width, height) = decoder.dimensions().ok_or_else(|| PhotoError::Damaged("no size".into()))?;
    if grey.len() != width * height {
        return Err(PhotoError::Damaged("fewer pixels than its header says".into()));
    }
    Ok((width, height, grey))
}

fn png(bytes: &[u8]) -> Result<(usize, usize, Vec<u8>), PhotoError> {
    let image = image::load_from_memory_with_format(bytes, image::ImageFormat::Png)
        .map_err(|e| PhotoError::Damaged(e.to_string()))?
        .into_luma8();
    Ok((image.width() as usize, image.height() as usize, image.into_raw()))
}

/// A photo's EXIF. Phones write fields that break the letter of the standard; the sound ones still count.
pub(crate) fn exif_of(bytes: &[u8]) -> Option<exif::Exif> {
    let read = exif::Reader::new().continue_on_error(true).read_from_container(&mut std::io::Cursor::new(bytes));
    read.or_else(|error| error.distill_partial_result(|_| {})).ok()
}

fn exif_facts(bytes: &[u8]) -> (Option<f64>, u32) {
    let Some(exif) = exif_of(bytes) else { return (None, 1) };
    let number = |tag| exif.get_field(tag, exif::In::PRIMARY).and_then(|f| f.value.get_uint(0));
    let focal = number(exif::Tag::FocalLengthIn35mmFilm).filter(|&f| f > 0).map(f64::from);
    (focal, number(exif::Tag::Orientation).unwrap_or(1))
}

/// Turns by the EXIF orientation (1 to 8, EXIF 2.32 table 4.6.4).
fn upright(photo: Photo, orientation: u32) -> Photo {
    let (w, h) = (photo.width, photo.height);
    if !(2..=8).contains(&orientation) {
        return photo;
    }
    let (nw, nh) = if orientation >= 5 { (h, w) } else { (w, h) };
    let source = |x: usize, y: usize| match orientation {
        2 => (w - 1 - x, y),
        3 => (w - 1 - x, h - 1 - y),
        4 => (x, h - 1 - y),
        5 => (y, x),
        6 => (y, h - 1 - x),
        7 => (w - 1 - y, h - 1 - x),
        _ => (w - 1 - y, x),
    };
    let mut grey = vec![0; w * h];
    grey.par_chunks_mut(nw).enumerate().for_each(|(y, row)| {
        for (x, value) in row.iter_mut().enumerate() {
            let (sx, sy) = source(x, y);
            *value = photo.grey[sy * w + sx];
        }
    });
    Photo { width: nw, height: nh, grey, focal_35mm: photo.focal_35mm }
}
