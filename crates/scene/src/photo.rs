//! A photo as a phone would store it: JPEG with the few EXIF fields a reader uses.

use crate::sensor::Sensor;
use jpeg_encoder::{ColorType, Encoder, EncodingError, SamplingFactor};

/// A stored photo.
#[derive(Debug, Clone)]
pub struct Photo {
    /// File name in the capture folder.
    pub file: String,
    /// The JPEG file's bytes.
    pub jpeg: Vec<u8>,
}

/// Compresses pixels. `focal_35mm` goes into EXIF as a whole number; without it no EXIF is written.
///
/// # Errors
/// Sizes JPEG cannot hold.
pub fn compress(
    pixels: &[u8],
    width: usize,
    height: usize,
    sensor: &Sensor,
    focal_35mm: Option<f64>,
) -> Result<Vec<u8>, EncodingError> {
    let mut jpeg = Vec::new();
    let mut encoder = Encoder::new(&mut jpeg, sensor.quality);
    encoder.set_sampling_factor(if sensor.half_colour { SamplingFactor::F_2_2 } else { SamplingFactor::F_1_1 });
    if let Some(focal) = focal_35mm {
        encoder.add_exif_metadata(&exif(focal.round() as u16))?;
    }
    encoder.encode(pixels, width as u16, height as u16, ColorType::Rgb)?;
    Ok(jpeg)
}

/// TIFF block, little endian (Exif 2.32, JEITA CP-3451): make, model, orientation, 35 mm focal length.
fn exif(focal: u16) -> Vec<u8> {
    const ASCII: u16 = 2;
    const SHORT: u16 = 3;
    const LONG: u16 = 4;
    let (make, model) = (b"Example\0", b"Phone\0");
    // Header 8, then four entries of 12 with count and end 6, then the strings, then the second table.
    let strings = 8u32 + 2 + 4 * 12 + 4;
    let second = strings + (make.len() + model.len()) as u32;
    let mut out = b"II\x2a\0\x08\0\0\0".to_vec();
    let entry = |out: &mut Vec<u8>, tag: u16, kind: u16, count: u32, value: u32| {
        out.extend(tag.to_le_bytes());
        out.extend(kind.to_le_bytes());
        out.extend(count.to_le_bytes());
        out.extend(value.to_le_bytes());
    };
    out.extend(4u16.to_le_bytes());
    entry(&mut out, 0x010f, ASCII, make.len() as u32, strings);
    entry(&mut out, 0x0110, ASCII, model.len() as u32, strings + make.len() as u32);
    entry(&mut out, 0x0112, SHORT, 1, 1);
    entry(&mut out, 0x8769, LONG, 1, second);
    out.extend(0u32.to_le_bytes());
    out.extend(make);
    out.extend(model);
    out.extend(1u16.to_le_bytes());
    entry(&mut out, 0xa405, SHORT, 1, u32::from(focal));
    out.extend(0u32.to_le_bytes());
    out
}
