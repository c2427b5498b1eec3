//! Printed tags in a photo: family 36h11, found by the reference detector.
//!
//! Corner order, as the detector gives it, in the tag's own y-up frame with half side `h`:
//! (h, h), (-h, h), (-h, -h), (h, -h). Corners found on a lit or blurred tag sit a little inside the true
//! ones; the bundle fits one inset per photo and kind of tag.

use crate::homography::Homography;
use crate::photo::Photo;
use crate::pixel::Pixel;
use apriltag::{DetectorBuilder, Family, Image};
use rayon::prelude::*;

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

/// Photos wider than this are searched at half size, those wider than twice this at a third; corners are still
/// refined at full size.
const DECIMATE_ABOVE_PX: usize = 1000;
/// A true tag stands out by far more; below this the code was guessed from noise.
const MIN_DECISION_MARGIN: f32 = 15.0;

/// All tags of a photo, each id once, in order of id. A large photo is searched at half size, then again at
/// full size around every tag found there; the whole of it at full size only where one of `wanted` is
/// still missing.
pub fn find_tags(photo: &Photo, wanted: &[usize]) -> Vec<TagView> {
    let mut found = first_look(photo);
    if is_large(photo) && wanted.iter().any(|id| found.iter().all(|f| f.id != *id)) {
        add_missing(&mut found, surest(detect(photo, 1.0)));
    }
    found
}

/// As [`find_tags`], for tags that lie on planes: `planes` holds, plane by plane, how the tags lie to each
/// other (another view of them, or their places in millimetres). Missed tags are looked for where the others
/// of their plane say they are, first as they are, then magnified; the whole photo is searched again where
/// a plane still has fewer than `least` tags.
pub fn find_planar_tags(photo: &Photo, planes: &[&[TagView]], least: usize) -> Vec<TagView> {
    let mut found = first_look(photo);
    let look_nearby = |found: &mut Vec<TagView>, magnified: usize| {
        let nearby: Vec<_> = planes.iter().flat_map(|plane| missing(found, plane)).collect();
        for corners in nearby {
            add_missing(found, surest(search_around(photo, &corners, 1.0, magnified)));
        }
    };
    look_nearby(&mut found, 1);
    let seen = |plane: &[TagView]| plane.iter().filter(|t| found.iter().any(|f| f.id == t.id)).count();
    if is_large(photo) && planes.iter().any(|plane| seen(plane) < least.min(plane.len())) {
        add_missing(&mut found, surest(detect(photo, 1.0)));
    }
    look_nearby(&mut found, MAGNIFIED);
    found
}

/// A search of the whole photo, a large one made smaller for it.
fn first_look(photo: &Photo) -> Vec<TagView> {
    match photo.width.max(photo.height) {
        side if side > 2 * DECIMATE_ABOVE_PX => sharpened(photo, surest(detect(photo, 3.0))),
        side if side > DECIMATE_ABOVE_PX => sharpened(photo, surest(detect(photo, 2.0))),
        _ => surest(detect(photo, 1.0)),
    }
}

/// Times a crop is magnified for tags whose squares span too few pixels for the detector.
const MAGNIFIED: usize = 3;

/// Tags found at half size, with their corners from full size where they are found there too: a corner at
/// half size can be off by several pixels.
fn sharpened(photo: &Photo, found: Vec<TagView>) -> Vec<TagView> {
    let again = |tag: TagView| {
        let near = surest(search_around(photo, &tag.corners, 0.5, 1));
        near.into_iter().find(|t| t.id == tag.id).unwrap_or(tag)
    };
    found.into_par_iter().map(again).collect()
}

fn add_missing(found: &mut Vec<TagView>, more: Vec<TagView>) {
    let new: Vec<_> = more.into_iter().filter(|m| found.iter().all(|f| f.id != m.id)).collect();
    found.extend(new);
    found.sort_by_key(|f| f.id);
}

/// Where the tags of a plane that were not found should be, px.
fn missing(found: &[TagView], plane: &[TagView]) -> Vec<[Pixel; 4]> {
    let seen = |tag: &TagView| found.iter().find(|f| f.id == tag.id);
    let pairs: Vec<_> = plane
        .iter()
        .filter_map(|t| Some((t, seen(t)?)))
        .flat_map(|(t, f)| t.corners.into_iter().zip(f.corners))
        .collect();
    if pairs.len() < 4 * TAGS_THAT_TELL {
        return Vec::new();
    }
    let Some(map) = Homography::fit(&pairs) else { return Vec::new() };
    let predicted = |t: &TagView| {
        let corners = t.corners.map(|c| map.map(&c));
        corners.iter().all(Option::is_some).then(|| corners.map(Option::unwrap_or_default))
    };
    plane.iter().filter(|t| seen(t).is_none()).filter_map(predicted).collect()
}

/// Tags of a plane that must be known to say where its others are.
const TAGS_THAT_TELL: usize = 2;

/// Searches a crop, `magnified` times: the expected tag and `around` times its own size to every side.
fn search_around(photo: &Photo, corners: &[Pixel; 4], around: f64, magnified: usize) -> Vec<(f32, TagView)> {
    let low = corners.iter().fold(Pixel::repeat(f64::MAX), |a, c| a.inf(c));
    let high = corners.iter().fold(Pixel::repeat(f64::MIN), |a, c| a.sup(c));
    let margin = around * (high - low).max().max(LEAST_MARGIN_PX);
    let x = (low.x - margin).max(0.0) as usize..((high.x + margin).max(0.0) as usize).min(photo.width);
    let y = (low.y - margin).max(0.0) as usize..((high.y + margin).max(0.0) as usize).min(photo.height);
    if x.len() < LEAST_MARGIN_PX as usize || y.len() < LEAST_MARGIN_PX as usize {
        return Vec::new();
    }
    let grey = y.clone().flat_map(|row| &photo.grey[row * photo.width..][x.clone()]).copied().collect();
    let crop = Photo { width: x.len(), height: y.len(), grey, focal_35mm: None };
    let corner = Pixel::new(x.start as f64, y.start as f64);
    let mut found = detect(&enlarged(crop, magnified), 1.0);
    let to_photo = |c: &mut Pixel| *c = *c / magnified as f64 + corner;
    found.iter_mut().for_each(|f| f.1.corners.iter_mut().for_each(to_photo));
    found
}

/// No crop has less around the expected tag, px: predictions are off by the panel's curvature.
const LEAST_MARGIN_PX: f64 = 60.0;

/// The photo a whole number of times larger, linear between pixel centres.
fn enlarged(photo: Photo, times: usize) -> Photo {
    if times < 2 {
        return photo;
    }
    let (width, height) = (photo.width * times, photo.height * times);
    let place = |k: usize, n: usize| {
        let f = ((k as f64 + 0.5) / times as f64 - 0.5).clamp(0.0, (n - 1) as f64);
        let first = (f as usize).min(n.saturating_sub(2));
        (first, f - first as f64)
    };
    let value = |i: usize| {
        let ((x, tx), (y, ty)) = (place(i % width, photo.width), place(i / width, photo.height));
        let at = |x: usize, y: usize| f64::from(photo.grey[y * photo.width + x]);
        let along = |y: usize| at(x, y) * (1.0 - tx) + at(x + 1, y) * tx;
        (along(y) * (1.0 - ty) + along(y + 1) * ty + 0.5) as u8
    };
    Photo { width, height, grey: (0..width * height).map(value).collect(), focal_35mm: photo.focal_35mm }
}

fn is_large(photo: &Photo) -> bool {
    photo.width.max(photo.height) > DECIMATE_ABOVE_PX
}

/// Each id once, in order.
fn surest(mut found: Vec<(f32, TagView)>) -> Vec<TagView> {
    found.sort_by(|a, b| a.1.id.cmp(&b.1.id).then(b.0.total_cmp(&a.0)));
    found.dedup_by_key(|f| f.1.id);
    found.into_iter().map(|f| f.1).collect()
}

/// All tags of a photo, searched at full size; an id that is there several times comes several times.
pub fn every_tag(photo: &Photo) -> Vec<TagView> {
    detect(photo, 1.0).into_iter().map(|found| found.1).collect()
}

/// One search at a decimation, each tag with its decision margin.
fn detect(photo: &Photo, decimation: f32) -> Vec<(f32, TagView)> {
    let Ok(mut image) = Image::zeros_with_stride(photo.width, photo.height, photo.width) else { return Vec::new() };
    let stride = image.stride();
    for (row, source) in image.as_slice_mut().chunks_mut(stride).zip(photo.grey.chunks(photo.width)) {
        row[..photo.width].copy_from_slice(source);
    }
    let Ok(mut detector) = DetectorBuilder::new().add_family_bits(Family::tag_36h11(), 1).build() else {
        return Vec::new();
    };
    // Photos are searched side by side; the detector's own threads gain nothing beside that.
    detector.set_thread_number(1);
    detector.set_decimation(decimation);
    detector
        .detect(&image)
        .iter()
        .filter(|d| d.decision_margin() > MIN_DECISION_MARGIN)
        .map(|d| (d.decision_margin(), TagView { id: d.id(), corners: d.corners().map(|[x, y]| Pixel::new(x, y)) }))
        .collect()
}
