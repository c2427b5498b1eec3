//! Printed tags in a photo: family 36h11, found by the reference detector.
//!
//! Corner order, as the detector gives it, in the tag's own y-up frame with half side `h`:
//! (h, h), (-h, h), (-h, -h), (h, -h). Corners found on a lit or blurred tag sit a little inside the true
//! ones; the bundle fits one inset per photo and kind of tag.

use crate::photo::Photo;
use crate::pixel::Pixel;
use apriltag::{DetectorBuilder, Family, Image};

/// One tag seen in one photo.
#[derive(Debug, Clone, PartialEq)]
pub struct TagView {
    /// Its number.
    pub id: usize,
    /// Corners in the order of the module page, px.
    pub corners: [Pixel; 4],
}

impl TagView {
    /// Mean of the corners, px.
    pub fn centre(&self) -> Pixel {
        self.corners.iter().sum::<Pixel>() / 4.0
    }
}

/// Photos wider than this are searched at half size; corners are still refined at full size.
const DECIMATE_ABOVE_PX: usize = 1000;
/// A true tag stands out by far more; below this the code was guessed from noise.
const MIN_DECISION_MARGIN: f32 = 15.0;

/// All tags of a photo, each id once (the surest), in order of id. Searched at half size first, and at full
/// size only where one of `wanted` is still missing.
pub fn find_tags(photo: &Photo, wanted: &[usize]) -> Vec<TagView> {
    let large = photo.width.max(photo.height) > DECIMATE_ABOVE_PX;
    let mut found = if large { search(photo, 2.0) } else { Vec::new() };
    if !large || wanted.iter().any(|id| found.iter().all(|f| f.1.id != *id)) {
        found.extend(search(photo, 1.0));
    }
    found.sort_by(|a, b| a.1.id.cmp(&b.1.id).then(b.0.total_cmp(&a.0)));
    found.dedup_by_key(|f| f.1.id);
    found.into_iter().map(|f| f.1).collect()
}

/// All tags of a photo, searched at full size; an id that is there several times comes several times.
pub fn every_tag(photo: &Photo) -> Vec<TagView> {
    search(photo, 1.0).into_iter().map(|found| found.1).collect()
}

/// One search at a decimation, each tag with its decision margin.
fn search(photo: &Photo, decimation: f32) -> Vec<(f32, TagView)> {
    let Ok(mut image) = Image::zeros_with_stride(photo.width, photo.height, photo.width) else { return Vec::new() };
    let stride = image.stride();
    for (row, source) in image.as_slice_mut().chunks_mut(stride).zip(photo.grey.chunks(photo.width)) {
        row[..photo.width].copy_from_slice(source);
    }
    let Ok(mut detector) = DetectorBuilder::new().add_family_bits(Family::tag_36h11(), 1).build() else {
        return Vec::new();
    };
    detector.set_thread_number(2);
    detector.set_decimation(decimation);
    detector
        .detect(&image)
        .iter()
        .filter(|d| d.decision_margin() > MIN_DECISION_MARGIN)
        .map(|d| (d.decision_margin(), TagView { id: d.id(), corners: d.corners().map(|[x, y]| Pixel::new(x, y)) }))
        .collect()
}
