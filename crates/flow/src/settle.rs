//! Each photo checked against the panel photo by the tags both show.

use crate::error::ReadError;
use crate::gather::Gathered;
use dentwright_optics::{Axis, Drift, Photo, Role, TagView, brought_back, drift, two_families};
use rayon::prelude::*;

/// A photo of the capture, and what became of it.
#[derive(Debug, Clone)]
pub struct FrameCheck {
    /// File name.
    pub file: String,
    /// What it shows.
    pub role: Role,
    /// Whether it was used.
    pub ok: bool,
    /// What was found; empty where nothing is to be said.
    pub note: String,
}

impl FrameCheck {
    /// Adds to what was found.
    pub(crate) fn add(&mut self, note: String) {
        self.note = if self.note.is_empty() { note } else { format!("{}; {note}", self.note) };
    }

    pub(crate) fn drop(&mut self, note: String) {
        (self.ok, self.note) = (false, note);
    }
}

/// Movement of a tag up to which nothing is done, px: what noise alone makes of it stays below half.
const STILL_PX: f64 = 0.25;
/// Movement beyond which the reflection itself has changed too much, px.
const FAR_PX: f64 = 30.0;
/// What the movements of the tags may differ from one turn of the camera, px.
const LEFT_PX: f64 = 0.5;
/// Sharpness over that of the middle photo below which a photo is blurred: a blur of 5 px leaves 0.16.
const BLURRED: f64 = 0.75;

/// Brings nudged pattern, slide and still photos back, and drops those that are blurred or moved too far.
pub(crate) fn settle(g: &mut Gathered, tags: &[TagView]) -> Vec<FrameCheck> {
    let mut checks: Vec<FrameCheck> = g
        .capture
        .frames
        .iter()
        .map(|f| FrameCheck { file: f.file.clone(), role: f.role, ok: true, note: String::new() })
        .collect();
    let Some(panel) = g.capture.frames.iter().position(|f| f.role == Role::Panel) else { return checks };
    let patterns: Vec<usize> =
        (0..checks.len()).filter(|&k| matches!(checks[k].role, Role::Pattern | Role::Slide | Role::Still)).collect();
    let drifts: Vec<Option<Drift>> =
        patterns.par_iter().map(|&k| drift(&g.photos[panel], &g.photos[k], tags)).collect();
    let mut sharp: Vec<f64> = drifts.iter().flatten().map(|d| d.sharpness).collect();
    sharp.sort_by(f64::total_cmp);
    let ordinary = sharp.get(sharp.len() / 2).copied().unwrap_or(1.0);
    for (&k, drift) in patterns.iter().zip(&drifts) {
        match drift {
            None => checks[k].drop("its tags cannot be followed: the camera was moved, or it is too dark".into()),
            Some(d) if d.sharpness < BLURRED * ordinary => {
                checks[k].drop(format!("blurred: edges {:.0} % as strong as usual", 100.0 * d.sharpness / ordinary));
            }
            Some(d) if d.most_px <= STILL_PX => {}
            Some(d) if d.most_px > FAR_PX || d.left_px > LEFT_PX => {
                checks[k].drop(format!("the camera moved by {:.1} px, more than can be undone", d.most_px));
            }
            Some(d) => {
                g.photos[k] = brought_back(&g.photos[k], &d.map);
                checks[k].note = format!("the camera moved by {:.1} px; undone", d.most_px);
            }
        }
    }
    checks
}

/// Share of the tiles with lines that must show two sets before it is glass, and tiles that must show lines.
const DOUBLE_SHARE: f64 = 0.6;
const LEAST_TILES: usize = 5;

/// Samples along a photo's long side: a tile then shows the same part of the panel, and as much of its dents, whatever
/// the photo's size.
const SAMPLES: f64 = 800.0;
/// How far from half a period the shift between two photos may be for one to be taken from the other, periods.
const NEARLY_OPPOSITE: f64 = 0.15;

/// The photo less the one whose lines stand half a period on, where there is one: tags and what else stands still
/// leave it, the lines stay as they are.
fn lines_alone(g: &Gathered, checks: &[FrameCheck], k: usize) -> Photo {
    let (frame, photo) = (&g.capture.frames[k], &g.photos[k]);
    let opposite = |j: &usize| {
        let other = &g.capture.frames[*j];
        let apart = other.shift.zip(frame.shift).map(|(a, b)| ((a - b).rem_euclid(1.0) - 0.5).abs());
        checks[*j].ok
            && (other.role, other.axis, other.periods) == (frame.role, frame.axis, frame.periods)
            && apart.is_some_and(|a| a <= NEARLY_OPPOSITE)
            && g.photos[*j].grey.len() == photo.grey.len()
    };
    let Some(j) = (0..checks.len()).find(opposite) else { return photo.clone() };
    let half = |(a, b): (&u8, &u8)| (128 + (i16::from(*a) - i16::from(*b)) / 2).clamp(0, 255) as u8;
    Photo { grey: photo.grey.iter().zip(&g.photos[j].grey).map(half).collect(), ..photo.clone() }
}

/// Refuses what mirrors the lines twice. One photo of the finest lines along each axis tells.
pub(crate) fn one_mirror(g: &Gathered, checks: &[FrameCheck]) -> Result<(), ReadError> {
    let finest = |axis: Axis| {
        let lines = |k: &usize| {
            let f = &g.capture.frames[*k];
            checks[*k].ok && f.axis == Some(axis) && !matches!(f.role, Role::Panel | Role::Setup)
        };
        let periods = |k: usize| g.capture.frames[k].periods.unwrap_or(0.0);
        (0..checks.len()).filter(lines).max_by(|&a, &b| periods(a).total_cmp(&periods(b)))
    };
    let double = |k: &usize| {
        let photo = lines_alone(g, checks, *k);
        let together = (photo.width.max(photo.height) as f64 / SAMPLES).round().max(1.0) as usize;
        let (share, tiles) = two_families(&photo, together);
        tiles >= LEAST_TILES && share >= DOUBLE_SHARE
    };
    match [Axis::U, Axis::V].into_iter().filter_map(finest).find(double) {
        Some(k) => Err(ReadError::TwoReflections { file: checks[k].file.clone() }),
        None => Ok(()),
    }
}
