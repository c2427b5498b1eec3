//! Photos made smaller for screen and paper, upright. The originals stay as they came.

use image::codecs::jpeg::JpegEncoder;
use image::metadata::Orientation;
use image::{DynamicImage, ImageDecoder, ImageError, ImageReader, Limits};
use std::io::Cursor;

/// Beyond any phone, below what would exhaust memory.
const MOST_SIDE_PX: u32 = 16_384;
const MOST_BYTES: u64 = 1 << 30;
const QUALITY: u8 = 85;

/// Decodes a JPEG or PNG and turns it upright by its EXIF orientation.
///
/// # Errors
/// When it is damaged, cut short, too large or of another kind.
pub fn upright(bytes: &[u8]) -> Result<DynamicImage, ImageError> {
    let mut reader = ImageReader::new(Cursor::new(bytes)).with_guessed_format()?;
    let mut limits = Limits::default();
    limits.max_image_width = Some(MOST_SIDE_PX);
    limits.max_image_height = Some(MOST_SIDE_PX);
    limits.max_alloc = Some(MOST_BYTES);
    reader.limits(limits);
    let mut decoder = reader.into_decoder()?;
    let orientation = decoder.orientation().unwrap_or(Orientation::NoTransforms);
    let mut picture = DynamicImage::from_decoder(decoder)?;
    picture.apply_orientation(orientation);
    Ok(picture)
}

/// A JPEG of at most this width, px; never larger than the photo.
///
/// # Errors
/// As [`upright`].
pub fn scaled(bytes: &[u8], most_width: u32) -> Result<Vec<u8>, ImageError> {
    let picture = upright(bytes)?;
    let picture = if picture.width() > most_width {
        let height = (u64::from(picture.height()) * u64::from(most_width)).div_ceil(u64::from(picture.width()));
        picture.thumbnail_exact(most_width, u32::try_from(height).unwrap_or(u32::MAX).max(1))
    } else {
        picture
    };
    let mut jpeg = Vec::new();
    picture.to_rgb8().write_with_encoder(JpegEncoder::new_with_quality(&mut jpeg, QUALITY))?;
    Ok(jpeg)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_photo_is_made_smaller_and_never_larger() {
        let mut png = Vec::new();
        let photo = DynamicImage::new_rgb8(300, 200);
        photo.write_to(&mut Cursor::new(&mut png), image::ImageFormat::Png).unwrap();
        let size = |bytes: &[u8]| upright(bytes).map(|p| (p.width(), p.height())).unwrap();
        assert_eq!(size(&scaled(&png, 120).unwrap()), (120, 80));
        assert_eq!(size(&scaled(&png, 1000).unwrap()), (300, 200));
        assert!(scaled(&png[..40], 120).is_err());
        assert!(scaled(b"no picture", 120).is_err());
    }
}
