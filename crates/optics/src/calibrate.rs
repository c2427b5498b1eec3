//! A lens from photos of one flat sheet of tags.
//!
//! Each photo's homography gives a first focal length and pose (Zhang 2000, "A flexible new technique for camera
//! calibration"); then Gauss-Newton with Levenberg's damping over the eight constants, a pose and a corner inset a
//! photo. The doubt is the residual variance times the inverse of the normal equations. Scale does not matter: a
//! sheet printed two percent too small gives the same lens; one that is not flat does not.

use crate::homography::Homography;
use crate::lens::{CONSTANTS, Calibration};
use crate::locate::{plane_pose, tag_corners};
use crate::photo::Photo;
use crate::pixel::{Camera, Pixel, isometry, six_numbers};
use crate::tags::{TagView, find_tags};
use nalgebra::{DMatrix, DVector, Point3, Vector2};
use rayon::prelude::*;
use thiserror::Error;

/// A flat grid of tags, numbered row by row from the upper left.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TagSheet {
    /// First id.
    pub first: usize,
    /// Tags in a row.
    pub columns: usize,
    /// Rows.
    pub rows: usize,
    /// Side of a black square, mm.
    pub tag_mm: f64,
    /// From tag to tag, both ways, mm.
    pub pitch_mm: f64,
}

/// Why photos give no calibration.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum CalibrateError {
    /// Too few photos that show enough of the sheet.
    #[error("only {good} of {all} photos show enough of the camera sheet; at least {LEAST_PHOTOS} are needed")]
    Photos {
        /// Usable.
        good: usize,
        /// Given.
        all: usize,
    },
    /// Photos of different sizes.
    #[error("the photos have different sizes: {0} x {1} px and {2} x {3} px")]
    Sizes(usize, usize, usize, usize),
    /// All from one direction.
    #[error("the photos are too much alike to tell the focal length (it would be good to {percent:.0} % only)")]
    Alike {
        /// One-sigma of the focal length, percent.
        percent: f64,
    },
    /// Corners lie far from where any lens would put them.
    #[error("the tags do not lie as on the sheet: their corners are {rms_px:.1} px off")]
    NotTheSheet {
        /// Root mean square, px.
        rms_px: f64,
    },
}

impl CalibrateError {
    /// What to do.
    #[must_use]
    pub fn next(&self) -> &'static str {
        match self {
            Self::Photos { .. } => "Fill the picture with the sheet, sharp and evenly lit; six to twelve photos.",
            Self::Sizes(..) => "Take all photos with one zoom, and all upright or all lying.",
            Self::Alike { .. } => "Tilt the phone by 20 to 40 degrees, to all four sides, in some of the photos.",
            Self::NotTheSheet { .. } => "Glue the camera sheet on something flat, and take photos of that sheet only.",
        }
    }
}

/// Fewer leave the focal length and the poses to one another.
pub const LEAST_PHOTOS: usize = 5;
/// Tags of a photo that count.
const LEAST_TAGS: usize = 8;
/// Worst focal length that helps a reading more than the photo's own whole number of millimetres.
const WORST_FOCAL: f64 = 0.02;
/// A flat sheet and sharp photos leave a tenth to three tenths.
const WORST_RMS_PX: f64 = 1.5;
/// Found corners lie inside the true ones by about as much as the lens blurs, px.
const INSET_SIGMA_PX: f64 = 1.0;
const OF_PHOTO: usize = 7;
const ROUNDS: usize = 60;
/// Beyond so many times the root mean square a corner was mistaken.
const OUTLIER: f64 = 4.5;

impl TagSheet {
    /// Corners of a tag on the sheet, mm, x right and y up from the first tag's centre; `None` for other ids.
    #[must_use]
    pub fn corners(&self, id: usize) -> Option<[Vector2<f64>; 4]> {
        let k = id.checked_sub(self.first).filter(|k| *k < self.columns * self.rows)?;
        let centre = Vector2::new((k % self.columns) as f64, -((k / self.columns) as f64)) * self.pitch_mm;
        Some(tag_corners(self.tag_mm).map(|c| c + centre))
    }
}

/// One corner: on the sheet, toward its two neighbours there, and in the photo.
#[derive(Debug, Clone, Copy)]
struct Corner {
    on_sheet: Vector2<f64>,
    inward: Vector2<f64>,
    seen: Pixel,
}

/// Calibrates from photos of a sheet.
///
/// # Errors
/// Too few photos that show it, photos of different sizes, or all from one direction.
pub fn calibrate(photos: &[Photo], sheet: &TagSheet) -> Result<Calibration, CalibrateError> {
    let Some(first) = photos.first() else { return Err(CalibrateError::Photos { good: 0, all: 0 }) };
    let size = (first.width, first.height);
    if let Some(odd) = photos.iter().find(|p| (p.width, p.height) != size) {
        return Err(CalibrateError::Sizes(size.0, size.1, odd.width, odd.height));
    }
    let ids: Vec<usize> = (sheet.first..sheet.first + sheet.columns * sheet.rows).collect();
    let views: Vec<Vec<TagView>> = photos.par_iter().map(|photo| find_tags(photo, &ids)).collect();
    calibrate_views(&views, size, sheet)
}

/// As [`calibrate`], from tags that were found already.
///
/// # Errors
/// As there.
pub fn calibrate_views(
    views: &[Vec<TagView>],
    size: (usize, usize),
    sheet: &TagSheet,
) -> Result<Calibration, CalibrateError> {
    let corners = |view: &Vec<TagView>| view.iter().flat_map(|tag| corners_of(tag, sheet)).collect::<Vec<_>>();
    let mut seen: Vec<Vec<Corner>> = views.iter().map(corners).filter(|c| c.len() >= 4 * LEAST_TAGS).collect();
    if seen.len() < LEAST_PHOTOS {
        return Err(CalibrateError::Photos { good: seen.len(), all: views.len() });
    }
    let alike = CalibrateError::Alike { percent: 100.0 };
    let start = first_guess(&seen, size).ok_or(alike.clone())?;
    let solved = descend(&seen, size, start);
    let rms = rms_px(&seen, size, &solved);
    seen.iter_mut().enumerate().for_each(|(k, corners)| {
        let of_photo = |c: &Corner| miss(&lens(&solved, size), part(&solved, k), c).norm();
        corners.retain(|c| of_photo(c) < OUTLIER * rms * 2f64.sqrt());
    });
    let solved = descend(&seen, size, solved);
    let (normal, _) = normal_equations(&seen, size, &solved);
    let rms_px = rms_px(&seen, size, &solved);
    if !(rms_px < WORST_RMS_PX) {
        return Err(CalibrateError::NotTheSheet { rms_px });
    }
    let inverse = normal.try_inverse().ok_or(alike)?;
    let freedom = 2 * seen.iter().map(Vec::len).sum::<usize>() - solved.len();
    let variance = rms_px * rms_px * 2.0 * seen.iter().map(Vec::len).sum::<usize>() as f64 / freedom as f64;
    let sigma = std::array::from_fn(|k| (inverse[(k, k)] * variance).sqrt());
    let found = Calibration { sigma, rms_px, photos: seen.len(), ..lens(&solved, size) };
    if !(found.focal_doubt() < WORST_FOCAL) {
        return Err(CalibrateError::Alike { percent: 100.0 * found.focal_doubt() });
    }
    Ok(found)
}

fn corners_of(tag: &TagView, sheet: &TagSheet) -> Vec<Corner> {
    let Some(on_sheet) = sheet.corners(tag.id) else { return Vec::new() };
    let centre = on_sheet.iter().sum::<Vector2<f64>>() / 4.0;
    let corner = |k: usize| Corner {
        on_sheet: on_sheet[k],
        inward: (centre - on_sheet[k]) / (0.5 * sheet.tag_mm),
        seen: tag.corners[k],
    };
    (0..4).map(corner).collect()
}

/// Focal length from all homographies together, axis in the middle, no distortion; then each photo's pose.
/// With `ω = diag(1/f², 1/f², 1)` every homography's first two columns are at right angles and of one length.
fn first_guess(seen: &[Vec<Corner>], size: (usize, usize)) -> Option<DVector<f64>> {
    let middle = Pixel::new(size.0 as f64, size.1 as f64) / 2.0;
    let unit = size.0.max(size.1) as f64;
    let (mut above, mut below) = (0.0, 0.0);
    for corners in seen {
        let pairs: Vec<_> = corners.iter().map(|c| (c.on_sheet, (c.seen - middle) / unit)).collect();
        let h = Homography::fit(&pairs)?.0;
        let (a, b) = (h.column(0) / h.column(0).norm(), h.column(1) / h.column(0).norm());
        for (flat, deep) in
            [(a.x * b.x + a.y * b.y, a.z * b.z), (a.x * a.x + a.y * a.y - b.x * b.x - b.y * b.y, a.z * a.z - b.z * b.z)]
        {
            above -= flat * deep;
            below += flat * flat;
        }
    }
    let inverse_square = above / below;
    let focal_px = if inverse_square > 0.0 { unit / inverse_square.sqrt() } else { unit };
    let focal_px = focal_px.clamp(0.4 * unit, 6.0 * unit);
    let camera = Camera { focal_px, size, k1: 0.0 };
    let mut all = vec![focal_px, focal_px, middle.x, middle.y, 0.0, 0.0, 0.0, 0.0];
    for corners in seen {
        let pairs: Vec<_> = corners.iter().map(|c| (c.on_sheet, c.seen)).collect();
        all.extend(six_numbers(&plane_pose(&camera, &pairs)?));
        all.push(0.0);
    }
    Some(DVector::from_vec(all))
}

fn lens(p: &DVector<f64>, size: (usize, usize)) -> Calibration {
    Calibration::of_constants(&p.as_slice()[..CONSTANTS], size)
}

/// Pose and inset of a photo.
fn part(p: &DVector<f64>, photo: usize) -> &[f64] {
    &p.as_slice()[CONSTANTS + OF_PHOTO * photo..][..OF_PHOTO]
}

/// From where a corner should be found to where it is, px. The inset is given in px of the sheet's middle.
fn miss(lens: &Calibration, of_photo: &[f64], corner: &Corner) -> Vector2<f64> {
    let pose = isometry(&of_photo[..6]);
    let inset_mm = of_photo[6] * pose.translation.vector.z.abs() / lens.focal_px[0];
    let at = corner.on_sheet + corner.inward * inset_mm;
    let expected = lens.project(&(pose * Point3::new(at.x, at.y, 0.0)));
    expected.map_or(Vector2::repeat(FAR_PX), |e| e - corner.seen)
}

/// What a corner behind the camera misses by.
const FAR_PX: f64 = 1e4;

fn rms_px(seen: &[Vec<Corner>], size: (usize, usize), p: &DVector<f64>) -> f64 {
    let count = 2 * seen.iter().map(Vec::len).sum::<usize>();
    (squares(seen, size, p) / count as f64).sqrt()
}

fn squares(seen: &[Vec<Corner>], size: (usize, usize), p: &DVector<f64>) -> f64 {
    let lens = lens(p, size);
    let of_photo = |(k, corners): (usize, &Vec<Corner>)| {
        corners.iter().map(|c| miss(&lens, part(p, k), c).norm_squared()).sum::<f64>()
    };
    seen.iter().enumerate().map(of_photo).sum()
}

fn cost(seen: &[Vec<Corner>], size: (usize, usize), p: &DVector<f64>) -> f64 {
    let insets = (0..seen.len()).map(|k| (part(p, k)[6] / INSET_SIGMA_PX).powi(2)).sum::<f64>();
    squares(seen, size, p) + insets
}

fn descend(seen: &[Vec<Corner>], size: (usize, usize), mut p: DVector<f64>) -> DVector<f64> {
    let (mut damping, mut now) = (1e-4, cost(seen, size, &p));
    for _ in 0..ROUNDS {
        let (normal, gradient) = normal_equations(seen, size, &p);
        let mut gain = 0.0;
        for _ in 0..8 {
            let mut damped = normal.clone();
            (0..p.len()).for_each(|i| damped[(i, i)] *= 1.0 + damping);
            let Some(factor) = damped.cholesky() else {
                damping *= 100.0;
                continue;
            };
            let trial = &p - factor.solve(&gradient);
            let then = cost(seen, size, &trial);
            if then < now {
                gain = (now - then) / now;
                (p, now, damping) = (trial, then, (damping * 0.1).max(1e-12));
                break;
            }
            damping *= 10.0;
        }
        if gain < 1e-10 {
            break;
        }
    }
    p
}

/// `JᵀJ` and `Jᵀr` by central differences; a photo's corners depend on the lens and on that photo alone.
fn normal_equations(seen: &[Vec<Corner>], size: (usize, usize), p: &DVector<f64>) -> (DMatrix<f64>, DVector<f64>) {
    let blocks: Vec<_> = seen.par_iter().enumerate().map(|(k, corners)| block(corners, size, p, k)).collect();
    let (mut normal, mut gradient) = (DMatrix::zeros(p.len(), p.len()), DVector::zeros(p.len()));
    for (photo, (jtj, jtr)) in blocks.iter().enumerate() {
        let at = |i: usize| if i < CONSTANTS { i } else { i + OF_PHOTO * photo };
        for i in 0..CONSTANTS + OF_PHOTO {
            gradient[at(i)] += jtr[i];
            (0..CONSTANTS + OF_PHOTO).for_each(|j| normal[(at(i), at(j))] += jtj[(i, j)]);
        }
        let inset = at(CONSTANTS + OF_PHOTO - 1);
        normal[(inset, inset)] += INSET_SIGMA_PX.powi(-2);
        gradient[inset] += p[inset] * INSET_SIGMA_PX.powi(-2);
    }
    (normal, gradient)
}

fn block(corners: &[Corner], size: (usize, usize), p: &DVector<f64>, photo: usize) -> (DMatrix<f64>, DVector<f64>) {
    let own: Vec<f64> = p.as_slice()[..CONSTANTS].iter().chain(part(p, photo)).copied().collect();
    let misses = |own: &[f64]| {
        let lens = Calibration::of_constants(&own[..CONSTANTS], size);
        DVector::from_iterator(
            2 * corners.len(),
            corners.iter().flat_map(|c| <[f64; 2]>::from(miss(&lens, &own[CONSTANTS..], c))),
        )
    };
    let column = |i: usize| {
        let step = 1e-6 * own[i].abs().max(if i < 4 { 1.0 } else { 1e-2 });
        let moved = |by: f64| {
            let mut other = own.clone();
            other[i] += by;
            misses(&other)
        };
        (moved(step) - moved(-step)) / (2.0 * step)
    };
    let jacobian = DMatrix::from_columns(&(0..own.len()).map(column).collect::<Vec<_>>());
    (jacobian.tr_mul(&jacobian), jacobian.tr_mul(&misses(&own)))
}
