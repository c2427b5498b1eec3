//! Each photo checked against the panel photo by the tags both show.

use crate::gather::Gathered;
use dentwright_optics::{Drift, Role, TagView, brought_back, drift};
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
