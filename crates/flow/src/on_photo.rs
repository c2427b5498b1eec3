//! A place of the panel marked on the panel photo.

use crate::kept::KeptReading;

/// Where a place of the panel (mm) lies in the panel photo, px; none in readings of early versions, or behind the camera.
#[must_use]
pub fn on_photo(reading: &KeptReading, [x, y]: [f64; 2]) -> Option<[f64; 2]> {
    let (stand, camera, photo) = (reading.file.stand?, &reading.file.camera, &reading.file.photo);
    let z = reading.height.sample(x, y).unwrap_or(0.0);
    let from_eye = [x - stand.eye_mm[0], y - stand.eye_mm[1], z - stand.eye_mm[2]];
    let along = |axis: [f64; 3]| (0..3).map(|k| axis[k] * from_eye[k]).sum::<f64>();
    let (right, down, ahead) = (along(stand.right), along(stand.down), along(stand.ahead));
    if ahead <= 0.0 {
        return None;
    }
    let (u, v) = (right / ahead, down / ahead);
    let scale = camera.focal_px * (1.0 + camera.k1 * (u * u + v * v));
    Some([0.5 * photo.width_px as f64 + scale * u, 0.5 * photo.height_px as f64 + scale * v])
}
