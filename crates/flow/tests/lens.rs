//! A reading that knows the phone's lens beforehand.

use dentwright_flow::{CameraSource, KnownLens, ReadError, ReadSettings, Reading, read};
use dentwright_optics::Calibration;
use dentwright_scene::recipes;
use std::path::Path;
use std::sync::atomic::AtomicBool;

fn read_with(folder: &Path, lenses: Vec<KnownLens>) -> Result<Reading, ReadError> {
    read(folder, &ReadSettings { lenses, ..ReadSettings::default() }, &|_| {}, &AtomicBool::new(false))
}

/// A lens of photos of this size.
fn lens(size: (usize, usize), focal_px: f64, focal_35mm: u32) -> KnownLens {
    let calibration = Calibration {
        size,
        focal_px: [focal_px; 2],
        centre_px: [0.5 * size.0 as f64, 0.5 * size.1 as f64],
        radial: [0.0; 2],
        tangential: [0.0; 2],
        sigma: [1e-4 * focal_px; 8],
        rms_px: 0.2,
        photos: 9,
    };
    KnownLens { calibration, focal_35mm, made: "2026-11-20".into() }
}

#[test]
fn a_calibrated_lens_is_begun_from_and_told() {
    let folder = tempfile::tempdir().unwrap();
    let recipe = recipes::named("door").unwrap();
    recipe.render().unwrap().write_photos(folder.path()).unwrap();
    let without = read_with(folder.path(), Vec::new()).unwrap();
    assert_eq!(without.camera_source, CameraSource::Exif);
    let (size, focal) = (without.scene.camera.size, without.scene.camera.focal_px);
    let zoom = (focal / size.0.max(size.1) as f64 * 36.0).round() as u32;

    // Half of one percent off: as a lens goes along with its focus.
    let known = read_with(folder.path(), vec![lens(size, 1.005 * focal, zoom)]).unwrap();
    assert_eq!(known.camera_source, CameraSource::Calibrated("2026-11-20".into()));
    let file = known.file(size);
    assert_eq!((file.camera.source.as_str(), file.camera.calibrated.as_deref()), ("calibrated", Some("2026-11-20")));
    assert!(file.notes.iter().any(|note| note.code == "camera_calibrated"));
    let off = known.scene.camera.focal_px / focal - 1.0;
    assert!(off.abs() < 0.004, "the photos still count: {off}");
    let apart = known.deviation.values.iter().zip(&without.deviation.values).filter(|(a, b)| (**a - **b).is_finite());
    let (sum, n) = apart.fold((0.0f64, 0.0f64), |(s, n), (a, b)| (s + f64::from(a - b).powi(2), n + 1.0));
    let rms_um = 1e3 * (sum / n).sqrt();
    println!("focal length {off:+.5}, deviation {rms_um:.3} µm apart");
    assert!(rms_um < 0.5 && n > 10_000.0, "{rms_um}");

    // Another zoom is another lens; one that cannot be is refused in words.
    let other = read_with(folder.path(), vec![lens(size, 0.5 * focal, zoom / 2)]).unwrap();
    assert_eq!(other.camera_source, CameraSource::Exif);
    let Err(ReadError::Inconsistent { detail }) = read_with(folder.path(), vec![lens(size, 1.2 * focal, zoom)]) else {
        panic!("a lens 20 % off passes")
    };
    assert!(detail.contains("focal length"), "{detail}");
}
