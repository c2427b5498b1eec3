//! Where the tip behind the panel stands: two photos, before and while it is leaned on lightly.

use crate::kept::KeptReading;
use crate::known_lens::KnownLens;
use crate::tip_error::TipError;
use crate::tip_file::{AimFacts, TipFile, TipFrame, TipTag};
use crate::tip_ground::Ground;
use dentwright_optics::{
    DEFAULT_GAMMA, LinesMoved, Photo, Pixel, TagView, brought_back, decode, drift, find_tags, linear_table, lines_moved,
};
use dentwright_surface::{Bump, BumpSettings, SlopeChange, find_bump};
use nalgebra::{Matrix2, Vector2};
use std::f64::consts::{FRAC_PI_2, PI, TAU};

/// What may be told beforehand.
#[derive(Debug, Clone)]
pub struct TipSettings {
    /// Side of the tags' black squares, mm; a reading knows its own.
    pub tag_mm: f64,
    /// Where the tip should stand, mm, in the same frame as the answer.
    pub aim_mm: Option<[f64; 2]>,
    /// Lenses of the phone that were calibrated before.
    pub lenses: Vec<KnownLens>,
}

impl Default for TipSettings {
    fn default() -> Self {
        Self { tag_mm: 22.0, aim_mm: None, lenses: Vec::new() }
    }
}

/// A photo as it came: its name and its bytes.
#[derive(Debug, Clone, Copy)]
pub struct TipPhoto<'a> {
    /// What it is called when something is wrong with it.
    pub name: &'a str,
    /// JPEG or PNG.
    pub bytes: &'a [u8],
}

/// A tip that was found.
#[derive(Debug, Clone)]
pub struct Tip {
    /// What is told of it.
    pub file: TipFile,
    /// The loaded photo, laid on the one before.
    pub photo: Photo,
    /// How its lines moved.
    pub lines: LinesMoved,
    /// Scale of the photo at the tip.
    pub mm_per_px: f64,
}

/// Finds the tip. Places are in the frame of `reading` where one is given, else in one laid through the tags: origin
/// in their middle, x to the photo's right, y up.
///
/// # Errors
/// Whatever hides the tip, in words that say what to do.
pub fn find_tip(
    before: TipPhoto,
    loaded: TipPhoto,
    settings: &TipSettings,
    reading: Option<&KeptReading>,
) -> Result<Tip, TipError> {
    let (first, second) = rayon::join(|| opened(before), || opened(loaded));
    let (first, second) = (first?, second?);
    if (first.width, first.height) != (second.width, second.height) {
        return Err(TipError::Sizes);
    }
    let tags = panel_tags(&first, reading);
    let ground = match reading {
        Some(reading) => Ground::of_reading(&first, &tags, reading, &settings.lenses)?,
        None => Ground::of_tags(&first, &tags, settings.tag_mm, &settings.lenses)?,
    };
    let (second, moved_px) = laid_on(&first, second, &tags)?;
    let lines = lines_moved(&first, &second, &linear_table(DEFAULT_GAMMA)).ok_or(TipError::NoLines)?;
    let (samples, about) = slope_changes(&lines, &ground, first.width).ok_or(TipError::NoLines)?;
    let bump = find_bump(&samples, &about).ok_or(TipError::NoLines)?;
    judged(&bump, &about, across(&lines, &ground, &bump))?;
    let place = Vector2::new(bump.x_mm, bump.y_mm);
    let uneven = Matrix2::identity() * (UNEVEN * bump.width_mm).powi(2);
    let covariance = bump.covariance + ground.doubt(place) + uneven;
    let px = |place: Vector2<f64>| ground.pixel(place).map(<[f64; 2]>::from);
    let aim = settings.aim_mm.map(|aim| AimFacts::of(aim, place, &covariance, px(aim.into())));
    let file = TipFile {
        frame: if reading.is_some() { TipFrame::Reading } else { TipFrame::Tags },
        place_mm: place.into(),
        sigma_mm: [covariance[(0, 0)].sqrt(), covariance[(1, 1)].sqrt()],
        largest_sigma_mm: covariance.symmetric_eigenvalues().max().sqrt(),
        at_px: px(place),
        lines_moved: bump.lobe / TAU,
        lines_moved_sigma: bump.lobe_sigma / TAU,
        width_mm: bump.width_mm,
        aim,
        camera_moved_px: moved_px,
        tags: ground.tags.iter().map(|&(id, at)| TipTag { id, x_mm: at.x, y_mm: at.y }).collect(),
        photos: [before.name.into(), loaded.name.into()],
        version: env!("CARGO_PKG_VERSION").into(),
    };
    let mm_per_px = ground.pixel(place).and_then(|p| ground.mm_per_px(&p)).unwrap_or(1.0);
    Ok(Tip { file, photo: second, lines, mm_per_px })
}

/// Lobes are not quite alike, since the lines answer to a slope unevenly over the panel: share of the bump's width by
/// which that moves the middle, one-sigma. A guess from rendered photos.
const UNEVEN: f64 = 0.025;

fn opened(photo: TipPhoto) -> Result<Photo, TipError> {
    decode(photo.bytes).map_err(|why| TipError::Photo { file: photo.name.into(), why })
}

/// The tags on the panel: the reading's, or all there are.
fn panel_tags(photo: &Photo, reading: Option<&KeptReading>) -> Vec<TagView> {
    let ids: Option<Vec<usize>> = reading.map(|r| r.file.panel_tags.iter().map(|t| t.id).collect());
    let mut tags = find_tags(photo, ids.as_deref().unwrap_or_default());
    tags.retain(|t| ids.as_ref().is_none_or(|ids| ids.contains(&t.id)));
    tags
}

/// Movement of a tag up to which nothing is done, px: what is left is taken up with all that changes slowly.
const STILL_PX: f64 = 0.1;
/// Beyond this the mirror image itself has changed too much, px.
const FAR_PX: f64 = 15.0;
/// What the movements of the tags may differ from one turn of the camera, px.
const LEFT_PX: f64 = 0.5;

/// The second photo as it would be had the camera not moved, and how far it had, px.
fn laid_on(first: &Photo, second: Photo, tags: &[TagView]) -> Result<(Photo, f64), TipError> {
    let Some(drift) = drift(first, &second, tags) else {
        return Err(TipError::Moved("its tags cannot be followed from one to the other".into()));
    };
    if drift.most_px > FAR_PX || drift.left_px > LEFT_PX {
        return Err(TipError::Moved(format!("a tag moved by {:.1} px", drift.most_px)));
    }
    let back = if drift.most_px > STILL_PX { brought_back(&second, &drift.map) } else { second };
    Ok((back, drift.most_px))
}

/// The phase's change on the panel, a lattice of half a window. The phase changes with the slope across the lines.
fn slope_changes(lines: &LinesMoved, ground: &Ground, width: usize) -> Option<(Vec<SlopeChange>, BumpSettings)> {
    let every = (0.5 * lines.window_px).round().max(1.0) as usize;
    let height = lines.change.len() / width;
    let lattice = (0..height).step_by(every).flat_map(|y| (0..width).step_by(every).map(move |x| (x, y)));
    let known = lattice.filter(|(x, y)| lines.change[y * width + x].is_finite());
    let (mut samples, mut middle) = (Vec::new(), Pixel::zeros());
    for (x, y) in known {
        let pixel = Pixel::new(x as f64 + 0.5, y as f64 + 0.5);
        let place = ground.place(&pixel)?;
        middle += pixel;
        samples.push(SlopeChange { x_mm: place.x, y_mm: place.y, change: f64::from(lines.change[y * width + x]) });
    }
    let mm_per_px = ground.mm_per_px(&(middle / samples.len() as f64))?;
    let window_mm = lines.window_px * mm_per_px;
    let settings = BumpSettings {
        alike_mm: ALIKE * window_mm,
        apart_mm: every as f64 * mm_per_px,
        widths_mm: [window_mm, WIDEST_MM],
    };
    Some((samples, settings))
}

/// Errors are alike over so many windows.
const ALIKE: f64 = 3.0;
/// A panel that gives over more than this gives as a whole, mm.
const WIDEST_MM: f64 = 80.0;

/// Direction on the panel in which the phase grows, rad from x.
fn across(lines: &LinesMoved, ground: &Ground, bump: &Bump) -> f64 {
    let pixel = ground.pixel(Vector2::new(bump.x_mm, bump.y_mm)).unwrap_or_default();
    let scale: Matrix2<f64> = ground.scale(&pixel).unwrap_or_else(Matrix2::identity);
    let grows = scale.try_inverse().unwrap_or_else(Matrix2::identity).transpose() * lines.rate;
    grows.y.atan2(grows.x)
}

/// A lobe must stand so many spreads of what is left above it: of several hundred places the best one reaches three by
/// chance.
const STANDS_OUT: f64 = 4.0;
/// And so many of its own doubts.
const SURE: f64 = 4.0;
/// Share of the place's surroundings whose lines must be followed.
const LEAST_COVER: f64 = 0.6;
/// How far the lobes may lie aside from the direction across the lines, rad.
const MOST_ASIDE: f64 = 0.6;

fn judged(bump: &Bump, about: &BumpSettings, across_rad: f64) -> Result<(), TipError> {
    if bump.lobe < STANDS_OUT * bump.left || bump.lobe < SURE * bump.lobe_sigma {
        return Err(TipError::Faint { lobe: bump.lobe / TAU, noise: bump.left / TAU });
    }
    if bump.cover < LEAST_COVER {
        return Err(TipError::Hidden);
    }
    let aside = (bump.direction_rad - across_rad + FRAC_PI_2).rem_euclid(PI) - FRAC_PI_2;
    if aside.abs() > MOST_ASIDE {
        return Err(TipError::NotATip("its two sides do not lie across the lines"));
    }
    if bump.width_mm > 0.95 * about.widths_mm[1] {
        return Err(TipError::NotATip("the panel moved as a whole"));
    }
    Ok(())
}
