//! From pixels of a photo to places of the panel, by its tags: in a reading's frame, or in one laid through the tags.

use crate::kept::KeptReading;
use crate::known_lens::{KnownLens, first_camera};
use crate::tip_error::TipError;
use dentwright_optics::{Camera, Photo, Pixel, TagView, plane_pose, resect, squared_plane};
use dentwright_surface::Map;
use nalgebra::{Isometry3, Matrix2, Point3, Vector2};

/// The panel as a photo sees it.
pub(crate) struct Ground<'a> {
    camera: Camera,
    panel_from_camera: Isometry3<f64>,
    /// Height of the panel, from a reading; without one it is taken for flat.
    height: Option<&'a Map>,
    /// Tags, panel frame, mm.
    pub tags: Vec<(usize, Vector2<f64>)>,
}

/// Tags that tell where a panel is.
const LEAST_TAGS: usize = 4;
/// Tags that miss their places in the reading by more than this were stuck elsewhere since, px.
const MOST_MISSED_PX: f64 = 3.0;
/// Doubt of a place in a reading's frame, mm: as of the tags of two readings.
const READING_SIGMA_MM: f64 = 0.1;
/// The same in a frame through the tags of one photo, whose found corners sit up to a pixel inside the true ones and
/// tell the plane's tilt to a few tenths of a degree: share of the distance from the tags' middle. A guess from
/// known-truth captures.
const PLANE_SHARE: f64 = 0.01;
/// One-sigma of a panel's curvature along either axis, 1/mm: radii of panels begin at 1 to 2 m.
const CURVATURE_SIGMA: f64 = 1.0 / 2500.0;

impl<'a> Ground<'a> {
    /// In the frame of a reading of this panel, whose tags stick where they did.
    pub fn of_reading(
        photo: &Photo,
        tags: &[TagView],
        reading: &'a KeptReading,
        lenses: &[KnownLens],
    ) -> Result<Self, TipError> {
        let places = &reading.file.panel_tags;
        let known: Vec<(&TagView, Point3<f64>)> = tags
            .iter()
            .filter_map(|t| {
                let place = places.iter().find(|p| p.id == t.id)?;
                Some((t, Point3::new(place.x_mm, place.y_mm, place.z_mm)))
            })
            .collect();
        if known.len() < LEAST_TAGS {
            return Err(TipError::TagsOfReading { found: known.len() });
        }
        let camera = camera_of(photo, reading, lenses);
        let flat: Vec<(Vector2<f64>, Pixel)> = known.iter().map(|(t, p)| (p.coords.xy(), t.centre())).collect();
        let seen: Vec<(Point3<f64>, Pixel)> = known.iter().map(|(t, p)| (*p, t.centre())).collect();
        let (camera_from_panel, _) = plane_pose(&camera, &flat)
            .and_then(|start| resect(&camera, &seen, &start))
            .filter(|(_, missed)| *missed < MOST_MISSED_PX)
            .ok_or(TipError::OtherTags)?;
        let tags = known.iter().map(|(t, p)| (t.id, p.coords.xy())).collect();
        Ok(Self { camera, panel_from_camera: camera_from_panel.inverse(), height: Some(&reading.height), tags })
    }

    /// In a frame laid through the tags: origin in their middle, x to the photo's right.
    pub fn of_tags(photo: &Photo, tags: &[TagView], tag_mm: f64, lenses: &[KnownLens]) -> Result<Self, TipError> {
        let camera = first_camera(photo, lenses).camera;
        let (panel_from_camera, tags) =
            squared_plane(&camera, tags, tag_mm).map_err(|_| TipError::Tags { found: tags.len() })?;
        let tags = tags.iter().map(|t| (t.id, Vector2::new(t.pose[0], t.pose[1]))).collect();
        Ok(Self { camera, panel_from_camera, height: None, tags })
    }

    /// The place of the panel that a pixel shows, mm.
    pub fn place(&self, pixel: &Pixel) -> Option<Vector2<f64>> {
        let (eye, ray) = (self.panel_from_camera * Point3::origin(), self.panel_from_camera * self.camera.ray(pixel));
        let mut z = 0.0;
        for _ in 0..4 {
            let ahead = (z - eye.z) / ray.z;
            if !(ahead > 0.0) {
                return None;
            }
            let p = eye + ray * ahead;
            match self.height.and_then(|map| map.sample(p.x, p.y)) {
                Some(height) => z = height,
                None => return Some(p.coords.xy()),
            }
        }
        let p = eye + ray * ((z - eye.z) / ray.z);
        Some(p.coords.xy())
    }

    /// The pixel that shows a place of the panel.
    pub fn pixel(&self, place: Vector2<f64>) -> Option<Pixel> {
        let z = self.height.and_then(|map| map.sample(place.x, place.y)).unwrap_or(0.0);
        self.camera.project(&(self.panel_from_camera.inverse() * Point3::new(place.x, place.y, z)))
    }

    /// How places change with pixels around one, mm per px; columns across and down.
    pub fn scale(&self, pixel: &Pixel) -> Option<Matrix2<f64>> {
        let here = self.place(pixel)?;
        let to = |x: f64, y: f64| Some(self.place(&(pixel + Pixel::new(x, y)))? - here);
        Some(Matrix2::from_columns(&[to(1.0, 0.0)?, to(0.0, 1.0)?]))
    }

    /// Scale of the photo at a pixel.
    pub fn mm_per_px(&self, pixel: &Pixel) -> Option<f64> {
        self.scale(pixel).map(|scale| scale.determinant().abs().sqrt())
    }

    /// Covariance of a place, mm², from what is not known of the panel and the camera's stand.
    pub fn doubt(&self, place: Vector2<f64>) -> Matrix2<f64> {
        if self.height.is_some() {
            return Matrix2::identity() * READING_SIGMA_MM.powi(2);
        }
        let count = self.tags.len() as f64;
        let middle = self.tags.iter().map(|t| t.1).sum::<Vector2<f64>>() / count;
        let square = |v: Vector2<f64>| v.component_mul(&v);
        let of_tags = self.tags.iter().map(|t| square(t.1 - middle)).sum::<Vector2<f64>>() / count;
        // The tags' plane lies through the mean height of a curved panel at the tags.
        let above = 0.5 * CURVATURE_SIGMA * (square(place - middle) - of_tags).norm();
        let eye = self.panel_from_camera.translation.vector;
        let aside = (place - eye.xy()) / eye.z * above;
        aside * aside.transpose() + Matrix2::identity() * (PLANE_SHARE * (place - middle).norm()).powi(2)
    }
}

/// The camera of the reading where the photo has its zoom, else what the photo says.
fn camera_of(photo: &Photo, reading: &KeptReading, lenses: &[KnownLens]) -> Camera {
    let first = first_camera(photo, lenses).camera;
    let (facts, of) = (&reading.file.camera, &reading.file.photo);
    let same = (photo.width, photo.height) == (of.width_px, of.height_px);
    let near = (facts.focal_px / first.focal_px - 1.0).abs() < SAME_ZOOM;
    if same && near { Camera { focal_px: facts.focal_px, k1: facts.k1, ..first } } else { first }
}

/// Focal lengths within this of each other are one zoom; EXIF tells them to a few percent.
const SAME_ZOOM: f64 = 0.06;
