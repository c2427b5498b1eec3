//! What the lines cannot say: places where they are lost, and all that such places enclose.

use super::follow::{Followed, wrapped};
use crate::slid::SlidPhase;
use dentwright_surface::{Grid, areas, widen};
use std::f32::consts::PI;

/// Phases of both axes where both can be followed without crossing a place where either is lost, and the mask of
/// what was lost. `margin_px` is kept from such places.
#[must_use]
pub fn followed_both(u: &Followed, v: &Followed, width: usize, margin_px: usize) -> (SlidPhase, SlidPhase, Vec<bool>) {
    let lines: Vec<bool> = (0..u.lost.len()).map(|i| u.phase[i].is_finite() && v.phase[i].is_finite()).collect();
    let mut lost: Vec<bool> = (0..lines.len()).map(|i| u.lost[i] || v.lost[i]).collect();
    for f in [u, v] {
        torn(&f.phase, width).into_iter().for_each(|i| lost[i] = true);
    }
    // A pixel is a cell of side one.
    let grid = Grid { x0_mm: 0.0, y0_mm: 0.0, step_mm: 1.0, nx: width, ny: lost.len() / width };
    let near = widen(&lost, &grid, margin_px as f64);
    let open: Vec<bool> = lines.iter().zip(&near).map(|(l, n)| *l && !n).collect();
    let main = largest(&open, &grid);
    let keep = |f: &Followed| {
        let value = |of: &[f32], i: usize| if main[i] { of[i] } else { f32::NAN };
        SlidPhase {
            phase: (0..main.len()).map(|i| value(&f.phase, i)).collect(),
            sigma: (0..main.len()).map(|i| value(&f.sigma, i)).collect(),
        }
    };
    let lost = (0..main.len()).map(|i| !main[i] && (near[i] || open[i])).collect();
    (keep(u), keep(v), lost)
}

/// Pixels around which the phase does not come back to itself: the lines end there.
fn torn(phase: &[f32], width: usize) -> Vec<usize> {
    let height = phase.len() / width;
    let round = |i: usize| {
        let corners = [i, i + 1, i + width + 1, i + width, i].map(|k| phase[k]);
        corners.windows(2).map(|p| wrapped(p[1] - p[0])).sum::<f32>()
    };
    (0..(height - 1) * width).filter(|i| i % width + 1 < width && round(*i).abs() > PI).collect()
}

/// The largest connected part of a mask.
fn largest(mask: &[bool], grid: &Grid) -> Vec<bool> {
    let mut out = vec![false; mask.len()];
    areas(mask, grid).into_iter().max_by_key(Vec::len).into_iter().flatten().for_each(|i| out[i] = true);
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_a_ring_encloses_is_lost_though_its_lines_look_sound() {
        let (w, h) = (80, 60);
        let ring = |i: usize| {
            let r = ((i % w) as f64 - 40.0).hypot((i / w) as f64 - 30.0);
            (12.0..15.0).contains(&r)
        };
        let phase: Vec<f32> = (0..w * h).map(|i| if ring(i) { f32::NAN } else { 0.1 }).collect();
        let sigma = phase.clone();
        let one = Followed { phase, sigma, lost: (0..w * h).map(ring).collect() };
        let (u, v, lost) = followed_both(&one, &one, w, 2);
        let middle = 30 * w + 40;
        assert!(u.phase[middle].is_nan() && v.phase[middle].is_nan() && lost[middle]);
        assert!(u.phase[30 * w + 5].is_finite() && !lost[30 * w + 5]);
    }
}
