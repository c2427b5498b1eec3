//! One still photo each way to board points: the quick look.

use crate::board::{Anchoring, BoardPoints, mirrored_corners};
use crate::error::ReadError;
use crate::gather::Gathered;
use crate::patterns::axis_name;
use crate::read::{Seen, solve};
use crate::reading_file::Note;
use crate::settle::FrameCheck;
use dentwright_optics::{
    Axis, DEFAULT_GAMMA, Photo, Pixel, Role, Scene, SlidPhase, SmoothPanel, carrier, follow, followed_both,
    linear_table, predict,
};
use rayon::prelude::*;
use std::f64::consts::TAU;

/// What the stills give.
pub(crate) struct StillPoints {
    pub points: BoardPoints,
    pub notes: Vec<Note>,
    /// Pixels whose lines could not be followed.
    pub lost: Vec<bool>,
}

/// Doubt of a phase at a glance, rad.
const ROUGH_SIGMA: f32 = 0.3;
/// Standard deviation of the window along the lines found, in their periods: enough to tell brightness from lines.
const WINDOW_PERIODS: f64 = 0.55;

/// Board points of the stills. The lines are found twice: around the places of a lattice, which is enough to know
/// how panel and board stand, then along what that predicts.
pub(crate) fn still_points(g: &Gathered, seen: &Seen, checks: &[FrameCheck]) -> Result<StillPoints, ReadError> {
    let stills = [still(g, Axis::U, checks)?, still(g, Axis::V, checks)?];
    let (width, pitch_mm) = (stills[0].width, g.capture.board.pitch_mm.unwrap_or_default());
    let table = linear_table(DEFAULT_GAMMA);
    let both = |work: &(dyn Fn(usize) -> Vec<f32> + Sync)| rayon::join(|| work(0), || work(1));
    let plane = SmoothPanel::plane();
    let pitches =
        |axis: usize, p: &Pixel| predict(&seen.cameras[0], &seen.layout, &plane, p).map(|board| board[axis] / pitch_mm);
    let (u, v) = both(&|axis| carrier(stills[axis], &table, |p| pitches(axis, p)));
    let anchoring = Anchoring::new(seen, mirrored_corners(g));
    let rough = |phase: Vec<f32>| SlidPhase { sigma: vec![ROUGH_SIGMA; phase.len()], phase };
    let (mut points, _) = anchoring.points(&rough(u), &rough(v), width, pitch_mm)?;
    let scene = solve(g, seen, &seen.layout, &mut points, None)?;
    let along = expected(g, &scene, pitch_mm, stills[0]);
    let window_px = WINDOW_PERIODS * along.iter().map(|a| TAU / ordinary_rate(a, width)).fold(0.0, f64::max);
    let follow = |axis: usize| follow(stills[axis], &table, &along[axis], window_px);
    let (u, v) = rayon::join(|| follow(0), || follow(1));
    let (u, v, lost) = followed_both(&u, &v, width, window_px.round() as usize);
    let (points, order) = anchoring.points(&u, &v, width, pitch_mm)?;
    let text = "a quick look from one photo each way: nothing finer than about a line is seen, and where the lines \
                cannot be followed there is no number; slide the board for a full reading";
    Ok(StillPoints { points, notes: vec![Note { code: "still".into(), text: text.into() }, order], lost })
}

/// The first usable still of an axis.
fn still<'a>(g: &'a Gathered, axis: Axis, checks: &[FrameCheck]) -> Result<&'a Photo, ReadError> {
    let of_axis = |k: &usize| g.capture.frames[*k].role == Role::Still && g.capture.frames[*k].axis == Some(axis);
    let all: Vec<usize> = (0..checks.len()).filter(of_axis).collect();
    match all.iter().find(|&&k| checks[k].ok) {
        Some(&k) => Ok(&g.photos[k]),
        None => {
            let dropped = all.iter().map(|&k| format!("; {}: {}", checks[k].file, checks[k].note));
            let why = format!("there is no usable still photo{}", dropped.collect::<String>());
            Err(ReadError::Patterns { axis: axis_name(axis), why })
        }
    }
}

/// The phase that the smooth panel would show at every pixel along each axis, rad, wrapped; NaN off the board.
fn expected(g: &Gathered, scene: &Scene, pitch_mm: f64, photo: &Photo) -> [Vec<f32>; 2] {
    let (width, board) = (photo.width, &g.capture.board);
    let half = [0.5 * board.width_mm, 0.5 * board.height_mm];
    let at = |i: usize| {
        let pixel = Pixel::new((i % width) as f64 + 0.5, (i / width) as f64 + 0.5);
        let on = predict(&scene.camera, &scene.layout, &scene.panel, &pixel)?;
        (on.x.abs() < half[0] + pitch_mm && on.y.abs() < half[1] + pitch_mm).then_some(on)
    };
    let points: Vec<_> = (0..photo.grey.len()).into_par_iter().map(at).collect();
    [0, 1].map(|axis| {
        let phase = |on: &nalgebra::Vector2<f64>| {
            let turns = on[axis] / pitch_mm;
            (TAU * (turns - turns.round())) as f32
        };
        points.iter().map(|p| p.as_ref().map_or(f32::NAN, phase)).collect()
    })
}

/// Middle rate of a wrapped phase, rad per px.
fn ordinary_rate(phase: &[f32], width: usize) -> f64 {
    let inside = (0..phase.len().saturating_sub(width)).step_by(53).filter(|i| i % width + 1 < width);
    let change = |i: usize, k: usize| {
        let d = f64::from(phase[k] - phase[i]);
        d - TAU * (d / TAU).round()
    };
    let mut all: Vec<f64> =
        inside.map(|i| change(i, i + 1).hypot(change(i, i + width))).filter(|r| r.is_finite()).collect();
    all.sort_by(f64::total_cmp);
    all.get(all.len() / 2).copied().unwrap_or(1.0).max(1e-3)
}
