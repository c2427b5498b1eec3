//! Whether the lines can be read at all: mirrored once, not too fine for the photo, not too blurred.

use crate::error::ReadError;
use crate::gather::Gathered;
use crate::reading_file::Note;
use crate::settle::FrameCheck;
use dentwright_optics::{Axis, Contrast, Photo, Role, Steps, two_families};

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

/// Swing of the contrast from which the lines are mirrored twice: a second mirror of a sixth of the first's strength.
/// One mirror left at most 0.035 in rendered captures, a second one of a tenth 0.09 and false spots of 6 µm.
const DOUBLE_SWING: f64 = 0.2;
const FAINT_SWING: f64 = 0.07;

/// Refuses what mirrors the lines twice, as told by their contrast along both axes, and remarks on what may.
/// `file` is one of the photos.
pub(crate) fn one_contrast(u: &Steps, v: &Steps, file: &str) -> Result<Option<Note>, ReadError> {
    let swing = Contrast::of(u).swing(&Contrast::of(v)).unwrap_or(0.0);
    if swing >= DOUBLE_SWING {
        return Err(ReadError::TwoReflections { file: file.into() });
    }
    let text = "the contrast of the lines rises and falls over the panel as if a faint second mirror lay behind it, \
                or the lens were far out of focus: spots of up to about 10 µm may not be there";
    Ok((swing >= FAINT_SWING).then(|| Note { code: "second_mirror".into(), text: text.into() }))
}

/// Pixels that a period of the lines must take: with fewer, flanks of dents show lines that are not there. 3.1 px gave
/// false spots in a rendered capture, 3.9 px none.
const LEAST_PX: f64 = 3.5;
/// Share of the coarser lines' contrast that the finest must keep: a disc of blur a period wide leaves a third of it,
/// one a fifth wider turns the lines into their reverse. 0.33 gave false spots at the rim in a rendered capture, 0.51
/// none.
const LEAST_KEPT: f64 = 0.4;
/// Fewer periods are no lines to compare with: the board's own light on the paint comes and goes with them.
const LEAST_PERIODS: f64 = 4.0;

/// Refuses lines too fine for the photos, or too far out of focus, by the next coarser ones. `file` is one of the
/// photos of the finest.
pub(crate) fn fit_for_photo(finest: &Steps, coarser: &Steps, file: &str) -> Result<(), ReadError> {
    if coarser.periods < LEAST_PERIODS {
        return Ok(());
    }
    let (fine, coarse, file) = (Contrast::of(finest), Contrast::of(coarser), file.to_owned());
    match (fine.closest_px(&coarse), fine.kept(&coarse)) {
        (Some(px), _) if px < LEAST_PX => Err(ReadError::TooFine { file, px }),
        (_, Some(kept)) if kept < LEAST_KEPT => Err(ReadError::TooSoft { file, percent: 100.0 * kept }),
        _ => Ok(()),
    }
}
