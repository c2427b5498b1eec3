//! Unwrapping over the region, and the one absolute order of each connected area.
//!
//! Sorting by reliability, following a non-continuous path (Herráez, Burton, Lalor, Gdeisat 2002):
//! neighbours are joined from the most to the least reliable pair. Stretches of a row along which the phase
//! runs smoothly are one piece from the start, so only their seams are sorted.

use rayon::prelude::*;
use std::f32::consts::{FRAC_PI_2, PI, TAU};

/// Unwraps `phase` (rad, in (-π, π]) where `mask` holds. Returns the unwrapped phase and, per pixel, the
/// label of its connected area (`u32::MAX` outside the mask; labels are below the number of pixels). Each
/// area is right up to a multiple of 2π.
pub fn unwrap(phase: &[f32], mask: &[bool], width: usize) -> (Vec<f32>, Vec<u32>) {
    let reliability = reliabilities(phase, mask, width);
    let (mut out, mut label, stretches) = stretches(phase, &reliability, mask, width);
    let mut seams = seams(&out, &reliability, &label, width);
    seams.sort_unstable_by(|a, b| a.doubt.total_cmp(&b.doubt));
    let mut groups = Groups::new(stretches);
    for s in &seams {
        groups.join(s.from as usize, s.to as usize, s.jump);
    }
    let found: Vec<(u32, f32)> = (0..stretches)
        .map(|k| {
            let (root, turns) = groups.find(k);
            (root as u32, TAU * turns as f32)
        })
        .collect();
    out.par_chunks_mut(width).zip(label.par_chunks_mut(width)).for_each(|(out, label)| {
        for (value, label) in out.iter_mut().zip(label).filter(|(_, l)| **l != u32::MAX) {
            let (root, turn) = found[*label as usize];
            *value += turn;
            *label = root;
        }
    });
    (out, label)
}

/// Nearest whole turn taken off a difference of two wrapped phases.
fn wrap(d: f32) -> f32 {
    if d > PI {
        d - TAU
    } else if d < -PI {
        d + TAU
    } else {
        d
    }
}

/// Second difference of the phase: small is reliable (equation 3 of the paper, without the diagonals).
fn reliabilities(phase: &[f32], mask: &[bool], width: usize) -> Vec<f32> {
    let height = phase.len() / width;
    let mut out = vec![RIM; phase.len()];
    out.par_chunks_mut(width).enumerate().filter(|(y, _)| *y > 0 && y + 1 < height).for_each(|(y, row)| {
        let [above, here, below] = [y - 1, y, y + 1].map(|k| &phase[k * width..(k + 1) * width]);
        let [m_above, m_here, m_below] = [y - 1, y, y + 1].map(|k| &mask[k * width..(k + 1) * width]);
        for x in 1..width - 1 {
            let inside = m_here[x] & m_here[x - 1] & m_here[x + 1] & m_above[x] & m_below[x];
            let h = wrap(here[x - 1] - here[x]) - wrap(here[x] - here[x + 1]);
            let v = wrap(above[x] - here[x]) - wrap(here[x] - below[x]);
            row[x] = if inside { (h * h + v * v).sqrt() } else { RIM };
        }
    });
    out
}

/// What stands for the second difference where a neighbour is missing: the largest there is.
const RIM: f32 = TAU;
/// Second difference up to which two neighbours are joined without waiting their turn, rad. Together with
/// steps below a quarter turn no loop of four such pairs can contradict itself.
const SMOOTH: f32 = 1.2;

/// Cuts every row into stretches of smooth phase. Returns the phase unwrapped along each stretch (NaN
/// outside the mask), each pixel's stretch, and how many there are.
fn stretches(phase: &[f32], reliability: &[f32], mask: &[bool], width: usize) -> (Vec<f32>, Vec<u32>, usize) {
    let (mut out, mut label) = (vec![f32::NAN; phase.len()], vec![u32::MAX; phase.len()]);
    let counts: Vec<u32> = out
        .par_chunks_mut(width)
        .zip(label.par_chunks_mut(width))
        .enumerate()
        .map(|(y, (out, label))| {
            let row = y * width..(y + 1) * width;
            cut_row(&phase[row.clone()], &reliability[row.clone()], &mask[row], out, label)
        })
        .collect();
    let mut total = 0;
    let starts = counts.iter().map(|n| {
        total += n;
        total - n
    });
    let starts: Vec<u32> = starts.collect();
    label.par_chunks_mut(width).zip(starts).for_each(|(row, start)| {
        row.iter_mut().filter(|l| **l != u32::MAX).for_each(|l| *l += start);
    });
    (out, label, total as usize)
}

fn cut_row(phase: &[f32], reliability: &[f32], mask: &[bool], out: &mut [f32], label: &mut [u32]) -> u32 {
    let (mut count, mut turns) = (0, 0);
    for x in (0..phase.len()).filter(|&x| mask[x]) {
        let joined = x > 0 && mask[x - 1] && reliability[x - 1] < SMOOTH && reliability[x] < SMOOTH;
        let step = if joined { phase[x] - phase[x - 1] } else { TAU };
        if wrap(step).abs() < FRAC_PI_2 && joined {
            turns += i32::from(step < -PI) - i32::from(step > PI);
        } else {
            (count, turns) = (count + 1, 0);
        }
        out[x] = phase[x] + TAU * turns as f32;
        label[x] = count - 1;
    }
    count
}

/// Two stretches that touch, by their most reliable pair of pixels.
struct Seam {
    doubt: f32,
    from: u32,
    to: u32,
    /// Turns `to` has more than `from`.
    jump: i32,
}

fn seams(out: &[f32], reliability: &[f32], label: &[u32], width: usize) -> Vec<Seam> {
    let height = out.len() / width;
    let between = |a: usize, b: usize| Seam {
        doubt: reliability[a] + reliability[b],
        from: label[a],
        to: label[b],
        jump: ((out[a] - out[b]) / TAU).round() as i32,
    };
    let of_row = |y: usize| {
        let mut found: Vec<Seam> = Vec::new();
        let row = y * width..(y + 1) * width;
        for a in row.clone() {
            let b = a + width;
            if y + 1 == height || label[a] == u32::MAX || label[b] == u32::MAX {
                continue;
            }
            match found.last_mut().filter(|s| (s.from, s.to) == (label[a], label[b])) {
                Some(last) if last.doubt <= reliability[a] + reliability[b] => {}
                Some(last) => *last = between(a, b),
                None => found.push(between(a, b)),
            }
        }
        let apart = |a: &usize| label[*a] != label[a + 1] && label[*a] != u32::MAX && label[a + 1] != u32::MAX;
        found.extend((row.start..row.end - 1).filter(apart).map(|a| between(a, a + 1)));
        found
    };
    (0..height).into_par_iter().flat_map_iter(of_row).collect()
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
        let wrapped: Vec<f32> = truth.iter().map(|&t| t - TAU * (t / TAU).round()).collect();
        let (out, label) = unwrap(&wrapped, &vec![true; w * h], w);
        let offset = out[0] - truth[0];
        assert!((offset / TAU - (offset / TAU).round()).abs() < 1e-3);
        assert!(out.iter().zip(&truth).all(|(o, t)| (o - t - offset).abs() < 1e-3));
        assert!(label.iter().all(|&l| l == label[0]));
    }
}
