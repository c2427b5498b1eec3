//! Unwrapping over the region, and the one absolute order of each connected area.
//!
//! Sorting by reliability, following a non-continuous path (Herráez, Burton, Lalor, Gdeisat 2002):
//! edges between neighbours are joined from the most to the least reliable; here edges are binned
//! instead of sorted, which keeps the order up to the width of a bin.

use std::f32::consts::{PI, TAU};

/// Unwraps `phase` (rad) where `mask` holds. Returns the unwrapped phase and, per pixel, the label of its
/// connected area (`u32::MAX` outside the mask). Each area is right up to a multiple of 2π.
pub fn unwrap(phase: &[f32], mask: &[bool], width: usize) -> (Vec<f32>, Vec<u32>) {
    let reliability = reliabilities(phase, mask, width);
    let mut groups = Groups::new(phase.len());
    for edge in edges_by_reliability(&reliability, mask, width) {
        let (a, b) = ((edge >> 1) as usize, (edge >> 1) as usize + if edge & 1 == 1 { width } else { 1 });
        groups.join(a, b, ((phase[a] - phase[b]) / TAU).round() as i32);
    }
    let mut out = vec![f32::NAN; phase.len()];
    let mut label = vec![u32::MAX; phase.len()];
    for i in 0..phase.len() {
        if mask[i] {
            let (root, turns) = groups.find(i);
            out[i] = phase[i] + TAU * turns as f32;
            label[i] = root as u32;
        }
    }
    (out, label)
}

fn wrap(d: f32) -> f32 {
    d - TAU * (d / TAU).round()
}

/// Second difference of the phase: small is reliable (equation 3 of the paper, without the diagonals).
fn reliabilities(phase: &[f32], mask: &[bool], width: usize) -> Vec<f32> {
    use rayon::prelude::*;
    let n = phase.len();
    (0..n)
        .into_par_iter()
        .with_min_len(4096)
        .map(|i| {
            let x = i % width;
            let inner = x > 0 && x + 1 < width && i >= width && i + width < n;
            if !(mask[i] && inner && mask[i - 1] && mask[i + 1] && mask[i - width] && mask[i + width]) {
                return 2.0 * PI;
            }
            let h = wrap(phase[i - 1] - phase[i]) - wrap(phase[i] - phase[i + 1]);
            let v = wrap(phase[i - width] - phase[i]) - wrap(phase[i] - phase[i + width]);
            (h * h + v * v).sqrt()
        })
        .collect()
}

/// Edges as `pixel << 1 | vertical`, most reliable first.
fn edges_by_reliability(reliability: &[f32], mask: &[bool], width: usize) -> Vec<u32> {
    const BINS: usize = 1024;
    let bin =
        |a: usize, b: usize| (((reliability[a] + reliability[b]) * (BINS as f32 / (4.0 * PI))) as usize).min(BINS - 1);
    let each = |f: &mut dyn FnMut(usize, u32)| {
        for i in 0..mask.len() {
            if !mask[i] {
                continue;
            }
            if i % width + 1 < width && mask[i + 1] {
                f(bin(i, i + 1), (i as u32) << 1);
            }
            if i + width < mask.len() && mask[i + width] {
                f(bin(i, i + width), (i as u32) << 1 | 1);
            }
        }
    };
    let mut starts = vec![0usize; BINS + 1];
    each(&mut |b, _| starts[b + 1] += 1);
    for b in 0..BINS {
        starts[b + 1] += starts[b];
    }
    let mut edges = vec![0u32; starts[BINS]];
    each(&mut |b, edge| {
        edges[starts[b]] = edge;
        starts[b] += 1;
    });
    edges
}

/// Union-find whose links carry whole turns relative to the parent.
struct Groups {
    parent: Vec<u32>,
    turns: Vec<i32>,
    size: Vec<u32>,
}

impl Groups {
    fn new(n: usize) -> Self {
        Self { parent: (0..n as u32).collect(), turns: vec![0; n], size: vec![1; n] }
    }

    fn find(&mut self, i: usize) -> (usize, i32) {
        let (mut root, mut total) = (i, 0);
        while self.parent[root] as usize != root {
            total += self.turns[root];
            root = self.parent[root] as usize;
        }
        let (mut at, mut rest) = (i, total);
        while self.parent[at] as usize != root && at != root {
            let (next, step) = (self.parent[at] as usize, self.turns[at]);
            self.parent[at] = root as u32;
            self.turns[at] = rest;
            rest -= step;
            at = next;
        }
        (root, total)
    }

    /// Joins so that `b` has `jump` turns more than `a`.
    fn join(&mut self, a: usize, b: usize, jump: i32) {
        let ((ra, ta), (rb, tb)) = (self.find(a), self.find(b));
        if ra == rb {
            return;
        }
        // turns(b) relative to ra must be ta + jump.
        let shift = ta + jump - tb;
        if self.size[ra] >= self.size[rb] {
            self.parent[rb] = ra as u32;
            self.turns[rb] = shift;
            self.size[ra] += self.size[rb];
        } else {
            self.parent[ra] = rb as u32;
            self.turns[ra] = -shift;
            self.size[rb] += self.size[ra];
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_wrapped_paraboloid_comes_back_up_to_one_constant() {
        let (w, h) = (120, 90);
        let truth: Vec<f32> = (0..w * h)
            .map(|i| {
                let (x, y) = ((i % w) as f32 - 60.0, (i / w) as f32 - 45.0);
                0.012 * x * x + 0.009 * y * y + 0.3 * x
            })
            .collect();
        let wrapped: Vec<f32> = truth.iter().map(|&t| wrap(t)).collect();
        let (out, label) = unwrap(&wrapped, &vec![true; w * h], w);
        let offset = out[0] - truth[0];
        assert!((offset / TAU - (offset / TAU).round()).abs() < 1e-3);
        assert!(out.iter().zip(&truth).all(|(o, t)| (o - t - offset).abs() < 1e-3));
        assert!(label.iter().all(|&l| l == label[0]));
    }
}
