//! Which phone took a photo, and at which zoom: the key under which a calibration is kept.

use crate::photo::exif_of;
use exif::{In, Tag, Value};

/// A phone at one zoom, as its photos tell by EXIF.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PhoneZoom {
    /// Maker and model.
    pub phone: String,
    /// 35 mm equivalent focal length, mm.
    pub focal_35mm: u32,
}

/// Phone and zoom of a photo; `None` where it does not tell both, as a frame of a video.
#[must_use]
pub fn phone_zoom(bytes: &[u8]) -> Option<PhoneZoom> {
    let exif = exif_of(bytes)?;
    let text = |tag| match exif.get_field(tag, In::PRIMARY).map(|f| &f.value) {
        Some(Value::Ascii(lines)) => lines.first().map(|line| String::from_utf8_lossy(line).trim().to_owned()),
        _ => None,
    };
    let focal = exif.get_field(Tag::FocalLengthIn35mmFilm, In::PRIMARY)?.value.get_uint(0).filter(|f| *f > 0)?;
    let named = [text(Tag::Make), text(Tag::Model)].into_iter().flatten().filter(|t| !t.is_empty());
    let phone = named.collect::<Vec<_>>().join(" ");
    (!phone.is_empty()).then_some(PhoneZoom { phone, focal_35mm: focal })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_rendered_photo_names_its_phone() {
        let photo = &dentwright_scene::demo::ALL[0].shrunk(8).unwrap().photos[1];
        let found = phone_zoom(&photo.jpeg).unwrap();
        assert_eq!((found.phone.as_str(), found.focal_35mm), ("Example Phone", 59));
        assert_eq!(phone_zoom(b"no photo"), None);
    }
}
