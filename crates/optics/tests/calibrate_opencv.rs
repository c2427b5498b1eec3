//! Our calibration of the rendered camera sheet against the lens behind it, and against OpenCV's of the same photos
//! (`tests/reference/calibrate.py`).

use dentwright_optics::{CalibrateError, Calibration, Photo, TagSheet, calibrate, decode};
use dentwright_scene::sheet::{self, CameraSheet};
use serde_json::Value;
use std::sync::LazyLock;

const SHEET: TagSheet = {
    let CameraSheet { first, columns, rows, tag_mm, pitch_mm } = CameraSheet::OURS;
    TagSheet { first, columns, rows, tag_mm, pitch_mm }
};
const NAMES: [&str; 8] = ["fx", "fy", "cx", "cy", "k1", "k2", "p1", "p2"];

static PHOTOS: LazyLock<Vec<Photo>> =
    LazyLock::new(|| sheet::photos().unwrap().iter().map(|p| decode(&p.jpeg).unwrap()).collect());
static OURS: LazyLock<Calibration> = LazyLock::new(|| calibrate(&PHOTOS, &SHEET).unwrap());

fn constants(c: &Calibration) -> [f64; 8] {
    let ([fx, fy], [cx, cy]) = (c.focal_px, c.centre_px);
    [fx, fy, cx, cy, c.radial[0], c.radial[1], c.tangential[0], c.tangential[1]]
}

/// Each constant within so many of its own sigmas of what it should be.
fn assert_near(wanted: [f64; 8], also_sigma: [f64; 8], most: f64, what: &str) -> f64 {
    let ours = constants(&OURS);
    let off = |k: usize| (ours[k] - wanted[k]) / OURS.sigma[k].hypot(also_sigma[k]);
    for k in 0..8 {
        println!("{} {:.5} ± {:.5}, {what} {:.5}: {:+.2} σ", NAMES[k], ours[k], OURS.sigma[k], wanted[k], off(k));
    }
    (0..8).for_each(|k| assert!(off(k).abs() < most, "{} is {:+.2} σ from {what}", NAMES[k], off(k)));
    (0..8).map(|k| off(k).powi(2)).sum::<f64>()
}

/// The doubt is neither too small (the truth lies within it) nor blown up to be safe: the focal length is known to
/// better than a part in a thousand.
#[test]
fn the_lens_behind_the_photos_lies_within_the_doubt() {
    let (focal, [cx, cy]) = sheet::truth();
    let [k1, k2] = sheet::DISTORTION;
    let squares = assert_near([focal, focal, cx, cy, k1, k2, 0.0, 0.0], [0.0; 8], 4.0, "the truth");
    assert!(squares < 30.0, "eight squares of sigmas sum to {squares:.1}");
    assert!((0.02..0.5).contains(&OURS.rms_px), "{} px", OURS.rms_px);
    assert!((2e-5..1e-3).contains(&OURS.focal_doubt()), "{}", OURS.focal_doubt());
    assert_eq!(OURS.photos, 9);
}

#[test]
fn opencv_finds_the_same_lens() {
    let text = include_str!("../../../tests/reference/calibration_opencv.json");
    let answer: Value = serde_json::from_str(text).unwrap();
    let eight = |name: &str| std::array::from_fn(|k| answer[name][k].as_f64().unwrap());
    assert_near(eight("constants"), eight("sigma"), 3.0, "OpenCV");
}

#[test]
fn poor_photos_are_refused() {
    assert!(matches!(calibrate(&PHOTOS[..3], &SHEET), Err(CalibrateError::Photos { good: 3, all: 3 })));
    let one_way: Vec<Photo> = vec![PHOTOS[0].clone(); 6];
    let alike = calibrate(&one_way, &SHEET);
    assert!(matches!(alike, Err(CalibrateError::Alike { .. })), "{alike:?}");
    let mut sizes = PHOTOS.clone();
    sizes[4] = Photo { width: 800, height: 600, grey: vec![0; 800 * 600], focal_35mm: None };
    assert!(matches!(calibrate(&sizes, &SHEET), Err(CalibrateError::Sizes(..))));
    let other = TagSheet { columns: 5, rows: 8, ..SHEET };
    let wrong = calibrate(&PHOTOS, &other);
    assert!(wrong.is_err(), "{wrong:?}");
}
