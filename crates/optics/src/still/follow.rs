//! Phase along a wave already roughly known, pixel by pixel: brightness, contrast and phase fitted in a window.
//!
//! `I = a + p cos φ + q sin φ` with the wave's own `φ`, weighted least squares under a near-Gaussian window;
//! the phase is `φ + atan2(-q, p)`. Made again along the outcome, so that what the window blurs out of a bend
//! comes back. White noise of `σ` a pixel leaves `σ √2 / (b · 2s√π)` rad under a window of `s` px and a contrast
//! of `b`.

use super::blur::blurred;
use crate::photo::Photo;
use rayon::prelude::*;
use std::f32::consts::{PI, TAU};

/// One axis followed.
#[derive(Debug, Clone)]
pub struct Followed {
    /// Wrapped phase, rad; NaN where the lines cannot be followed.
    pub phase: Vec<f32>,
    /// One-sigma doubt of it, rad.
    pub sigma: Vec<f32>,
    /// Lines were expected, and are not there or cannot be followed.
    pub lost: Vec<bool>,
}

/// Times the fit is made, each along the last one's outcome.
const TIMES: usize = 3;
/// Share of the window that must hold lines.
const LEAST_COVER: f32 = 0.75;
/// Contrast over the ordinary one below which there are no lines.
const LEAST_CONTRAST: f32 = 0.35;
/// What the wave leaves over its contrast, against what it ordinarily leaves: black and white lines are no sine.
const MOST_LEFT: f32 = 1.7;
/// The lines' rate along the expected direction, over the expected rate: slower ones soon stand still, faster
/// ones run into each other.
const SLOWEST: f32 = 0.4;
const FASTEST: f32 = 2.2;
/// Pixels to either side over which a rate is taken.
const REACH: usize = 3;
/// Doubt that no window takes away: response and edges are only roughly known, rad.
const LEAST_SIGMA: f32 = 0.03;
/// Levels at the ends of the scale say nothing.
const CLIPPED: u8 = 252;

/// Follows the lines from `along`, a wrapped phase in rad that is NaN where no lines are expected. `window_px` is
/// the standard deviation of the window.
pub fn follow(photo: &Photo, table: &[f32; 256], along: &[f32], window_px: f64) -> Followed {
    let width = photo.width;
    let radius = (window_px - 0.5).round().max(1.0) as usize;
    let mut phase = along.to_vec();
    let (mut fit, mut moved) = (Vec::new(), vec![0f32; along.len()]);
    for _ in 0..TIMES {
        fit = fitted(photo, table, &phase, radius);
        moved.par_iter_mut().zip(&mut phase).zip(&fit).for_each(|((moved, phase), fit)| {
            *moved = if fit.cover < LEAST_COVER { 0.0 } else { fit.turn };
            *phase = wrapped(*phase + *moved);
        });
    }
    let ordinary = |of: fn(&Fit) -> f32| {
        let mut all: Vec<f32> = fit.iter().step_by(37).filter(|f| f.cover > 0.9).map(of).collect();
        let middle = all.len() / 2;
        if all.is_empty() { 0.0 } else { *all.select_nth_unstable_by(middle, f32::total_cmp).1 }
    };
    let (contrast, left) = (ordinary(|f| f.contrast), ordinary(|f| f.left / f.contrast.max(1e-6)));
    let window = window_px.max(1.0) as f32;
    let noise = move |f: &Fit| f.left * (2f32.sqrt() / (2.0 * window * PI.sqrt())) / f.contrast.max(1e-6);
    let state: Vec<State> = (0..phase.len())
        .into_par_iter()
        .map(|i| {
            let f = &fit[i];
            if along[i].is_nan() {
                return State::Nothing;
            }
            let there = f.cover >= LEAST_COVER && f.contrast >= LEAST_CONTRAST * contrast;
            let clear = f.left <= MOST_LEFT * left * f.contrast;
            let steady = || rate(&phase, along, width, i).is_some_and(|r| (SLOWEST..=FASTEST).contains(&r));
            if there && clear && steady() { State::Known } else { State::Lost }
        })
        .collect();
    let known = |i: usize| state[i] == State::Known;
    let doubt = |i: usize| noise(&fit[i]).hypot(moved[i]).hypot(LEAST_SIGMA);
    Followed {
        sigma: (0..phase.len()).map(|i| if known(i) { doubt(i) } else { f32::NAN }).collect(),
        phase: (0..phase.len()).map(|i| if known(i) { phase[i] } else { f32::NAN }).collect(),
        lost: state.iter().map(|s| *s == State::Lost).collect(),
    }
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum State {
    Nothing,
    Known,
    Lost,
}

/// What a window holds: phase against the wave, contrast, standard deviation of what is left, share with lines.
#[derive(Clone, Copy)]
struct Fit {
    turn: f32,
    contrast: f32,
    left: f32,
    cover: f32,
}

fn fitted(photo: &Photo, table: &[f32; 256], along: &[f32], radius: usize) -> Vec<Fit> {
    let mean = |of: &(dyn Fn(f32, f32, f32) -> f32 + Sync)| {
        let values = along.par_iter().zip(&photo.grey).map(|(phase, &level)| {
            if phase.is_nan() || level >= CLIPPED {
                return 0.0;
            }
            let (sin, cos) = phase.sin_cos();
            of(table[usize::from(level)], cos, sin)
        });
        blurred(values.collect(), photo.width, radius)
    };
    let (one, c, s) = (mean(&|_, _, _| 1.0), mean(&|_, c, _| c), mean(&|_, _, s| s));
    let (cc, cs) = (mean(&|_, c, _| c * c), mean(&|_, c, s| c * s));
    let (v, vv) = (mean(&|v, _, _| v), mean(&|v, _, _| v * v));
    let (vc, vs) = (mean(&|v, c, _| v * c), mean(&|v, _, s| v * s));
    (0..along.len())
        .into_par_iter()
        .map(|i| {
            let w = one[i];
            if w < 1e-3 {
                return Fit { turn: 0.0, contrast: 0.0, left: 0.0, cover: 0.0 };
            }
            // Brightness eliminated: means and covariances under the window.
            let (mc, ms, mv) = (c[i] / w, s[i] / w, v[i] / w);
            let (acc, acs, ass) = (cc[i] / w - mc * mc, cs[i] / w - mc * ms, 1.0 - cc[i] / w - ms * ms);
            let (rc, rs) = (vc[i] / w - mv * mc, vs[i] / w - mv * ms);
            let det = acc * ass - acs * acs;
            if det < 1e-3 {
                return Fit { turn: 0.0, contrast: 0.0, left: 0.0, cover: 0.0 };
            }
            let (p, q) = ((ass * rc - acs * rs) / det, (acc * rs - acs * rc) / det);
            let left = (vv[i] / w - mv * mv - p * rc - q * rs).max(0.0).sqrt();
            Fit { turn: (-q).atan2(p), contrast: p.hypot(q), left, cover: w }
        })
        .collect()
}

/// Rate of a phase along another's direction, over the other's rate; `None` beside an unknown pixel.
fn rate(phase: &[f32], along: &[f32], width: usize, i: usize) -> Option<f32> {
    let (x, y) = (i % width, i / width);
    if x < REACH || y < REACH || x + REACH >= width || (y + REACH) * width >= phase.len() {
        return None;
    }
    let change = |of: &[f32], step: usize| {
        // By way of the middle: the change over the whole reach may pass half a turn.
        wrapped(of[i + REACH * step] - of[i]) + wrapped(of[i] - of[i - REACH * step])
    };
    let (a, b) = ((change(phase, 1), change(phase, width)), (change(along, 1), change(along, width)));
    let rate = (a.0 * b.0 + a.1 * b.1) / (b.0 * b.0 + b.1 * b.1);
    rate.is_finite().then_some(rate)
}

pub(super) fn wrapped(phase: f32) -> f32 {
    phase - TAU * (phase / TAU).round()
}
