//! A lens that was calibrated before the reading: where the solve for camera and poses begins.

use dentwright_optics::{Calibration, Camera, Photo};

/// A calibrated phone at one zoom.
#[derive(Debug, Clone, PartialEq)]
pub struct KnownLens {
    /// Its constants.
    pub calibration: Calibration,
    /// Zoom it holds for, 35 mm equivalent focal length as photos tell it, mm.
    pub focal_35mm: u32,
    /// Day it was calibrated on, as it is to be told.
    pub made: String,
}

/// What a reading goes by where it begins.
pub(crate) struct FirstCamera {
    pub camera: Camera,
    /// Relative one-sigma of the focal length.
    pub sigma: f64,
    pub source: CameraSource,
}

/// Where the first guess of a camera came from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum CameraSource {
    /// A calibration of the day told.
    Calibrated(String),
    /// The photo's EXIF.
    Exif,
    /// Nothing: an ordinary phone.
    Guess,
}

impl CameraSource {
    /// As it stands in a reading's file.
    #[must_use]
    pub fn name(&self) -> &'static str {
        match self {
            Self::Calibrated(_) => "calibrated",
            Self::Exif => "exif",
            Self::Guess => "guess",
        }
    }
}

/// Long side of the 35 mm frame.
const FULL_FRAME_MM: f64 = 36.0;
/// Ordinary phone main camera, where EXIF says nothing.
const GUESSED_35MM: f64 = 27.0;
/// How far that guess may be off, relative, one-sigma.
pub(crate) const GUESSED_SIGMA: f64 = 0.2;
/// A phone's focal length goes along with its focus: a calibration holds to no better than this, relative. A guess.
const FOCUS_SIGMA: f64 = 0.01;

/// First guess of a photo's camera: the calibration of its zoom and shape, else what the photo says, else an ordinary
/// phone's.
pub(crate) fn first_camera(photo: &Photo, lenses: &[KnownLens]) -> FirstCamera {
    let size = (photo.width, photo.height);
    let zoom = photo.focal_35mm;
    let known = lenses.iter().filter(|lens| zoom.is_some_and(|f| f.round() == f64::from(lens.focal_35mm)));
    if let Some((lens, scaled)) = known.filter_map(|l| Some((l, l.calibration.at_size(size)?))).next() {
        let sigma = scaled.focal_doubt().hypot(FOCUS_SIGMA);
        return FirstCamera { camera: scaled.plain(), sigma, source: CameraSource::Calibrated(lens.made.clone()) };
    }
    let source = if zoom.is_some() { CameraSource::Exif } else { CameraSource::Guess };
    let (f35, sigma) = zoom.map_or((GUESSED_35MM, GUESSED_SIGMA), |f| (f, 0.005 + 0.3 / f));
    let focal_px = f35 / FULL_FRAME_MM * photo.width.max(photo.height) as f64;
    FirstCamera { camera: Camera { focal_px, size, k1: 0.0 }, sigma, source }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn photo(width: usize, height: usize, focal_35mm: Option<f64>) -> Photo {
        Photo { width, height, grey: vec![0; width * height], focal_35mm }
    }

    fn lens() -> KnownLens {
        let calibration = Calibration {
            size: (400, 300),
            focal_px: [320.0, 322.0],
            centre_px: [200.0, 150.0],
            radial: [0.02, 0.0],
            tangential: [0.0; 2],
            sigma: [0.5; 8],
            rms_px: 0.2,
            photos: 8,
        };
        KnownLens { calibration, focal_35mm: 28, made: "2026-11-20".into() }
    }

    #[test]
    fn a_lens_counts_at_its_own_zoom_and_shape_alone() {
        let found = first_camera(&photo(800, 600, Some(28.0)), &[lens()]);
        assert_eq!(found.source, CameraSource::Calibrated("2026-11-20".into()));
        assert!((found.camera.focal_px - 642.0).abs() < 1e-9 && found.camera.k1 == 0.02);
        assert!(found.sigma > FOCUS_SIGMA && found.sigma < 0.011);
        assert_eq!(first_camera(&photo(800, 600, Some(52.0)), &[lens()]).source, CameraSource::Exif);
        assert_eq!(first_camera(&photo(600, 800, Some(28.0)), &[lens()]).source, CameraSource::Exif);
        assert_eq!(first_camera(&photo(800, 600, None), &[lens()]).source, CameraSource::Guess);
    }
}
