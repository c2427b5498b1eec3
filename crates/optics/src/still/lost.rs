//! What the lines cannot say: places where they are lost, and all that such places enclose.

use super::follow::{Followed, wrapped};
use crate::slid::SlidPhase;
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
    let near = near(&lost, width, margin_px);
    let open: Vec<bool> = lines.iter().zip(&near).map(|(l, n)| *l && !n).collect();
    let main = largest(&open, width);
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

/// Pixels no farther than `by` from a marked one, in rows and columns.
fn near(marked: &[bool], width: usize, by: usize) -> Vec<bool> {
    let spread = |marked: &[bool], step: usize, line: &dyn Fn(usize) -> usize, length: usize| {
        let mut out = vec![false; marked.len()];
        for start in 0..marked.len() / length {
            let at = |k: usize| line(start) + k * step;
            let mut since = usize::MAX;
            for k in (0..length).chain((0..length).rev()) {
                since = if marked[at(k)] { 0 } else { since.saturating_add(1) };
                out[at(k)] |= since <= by;
            }
        }
        out
    };
    let height = marked.len() / width;
    let across = spread(marked, 1, &|row| row * width, width);
    spread(&across, width, &|column| column, height)
}

/// The largest connected part of a mask.
fn largest(mask: &[bool], width: usize) -> Vec<bool> {
    let mut label = vec![0u32; mask.len()];
    let (mut best, mut count) = ((0, 0), 0);
    for start in 0..mask.len() {
        if !mask[start] || label[start] != 0 {
            continue;
        }
        count += 1;
        let (mut stack, mut size) = (vec![start], 0);
        label[start] = count;
        while let Some(i) = stack.pop() {
            size += 1;
            let x = i % width;
            let beside =
                [(x > 0).then(|| i - 1), (x + 1 < width).then_some(i + 1), i.checked_sub(width), Some(i + width)];
            for k in beside.into_iter().flatten().filter(|&k| k < mask.len()) {
                if mask[k] && label[k] == 0 {
                    label[k] = count;
                    stack.push(k);
                }
            }
        }
        best = best.max((size, count));
    }
    label.iter().map(|l| best.1 != 0 && *l == best.1).collect()
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
