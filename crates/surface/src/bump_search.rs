//! Places where a bump's lobes explain much of how the slope changed: the starts of its fit.
//!
//! For a middle and a width the lobes are linear, so what they explain beside the slow terms is a closed formula.
//! Middles lie on a lattice of half a width, widths half as large again each time.

use crate::bump::{Frame, SLOW, SlopeChange};
use nalgebra::{Matrix2, SMatrix, SVector, Vector2};
use std::collections::HashMap;

/// Where a bump may have risen.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Start {
    pub strength: Vector2<f64>,
    pub middle: Vector2<f64>,
    pub width_mm: f64,
}

/// Samples that are searched at most.
const SEARCHED: usize = 2_000;
/// Share of the samples whose changes are taken as they are; larger ones as if they were no larger.
const BELIEVED: f64 = 0.98;
/// Each width over the one before, and the lattice's step in widths.
const WIDER: f64 = 1.5;
const STEP: f64 = 0.5;
/// Lobes end here, in widths.
const REACH: f64 = 3.5;

type Slow = SVector<f64, SLOW>;

/// The best starts, no two of them within a width of each other.
pub(crate) fn likely(samples: &[SlopeChange], frame: &Frame, widths_mm: [f64; 2], count: usize) -> Vec<Start> {
    let every = samples.len().div_ceil(SEARCHED);
    let thin: Vec<SlopeChange> = samples.iter().copied().step_by(every).collect();
    let Some(search) = Search::new(thin, frame) else { return Vec::new() };
    let mut found: Vec<(f64, Start)> = Vec::new();
    let mut width_mm = widths_mm[0];
    while width_mm <= widths_mm[1] {
        found.extend(search.with_width(width_mm));
        width_mm *= WIDER;
    }
    found.sort_by(|a, b| b.0.total_cmp(&a.0));
    let mut chosen: Vec<Start> = Vec::new();
    for (_, start) in found {
        let near = |c: &Start| (c.middle - start.middle).norm() < c.width_mm.max(start.width_mm);
        if chosen.len() < count && !chosen.iter().any(near) {
            chosen.push(start);
        }
    }
    chosen
}

struct Search {
    /// Place, slow terms, and change less its slow part.
    samples: Vec<(Vector2<f64>, Slow, f64)>,
    /// Inverse of the slow terms' normal equations.
    slow: SMatrix<f64, SLOW, SLOW>,
}

impl Search {
    fn new(samples: Vec<SlopeChange>, frame: &Frame) -> Option<Self> {
        let terms: Vec<Slow> = samples.iter().map(|s| frame.slow(s)).collect();
        let normal: SMatrix<f64, SLOW, SLOW> = terms.iter().map(|t| t * t.transpose()).sum();
        let right: Slow = terms.iter().zip(&samples).map(|(t, s)| t * s.change).sum();
        let slow = normal.try_inverse()?;
        let c = slow * right;
        let left: Vec<f64> = terms.iter().zip(&samples).map(|(t, s)| s.change - t.dot(&c)).collect();
        let mut sizes: Vec<f64> = left.iter().map(|v| v.abs()).collect();
        let at = ((sizes.len() - 1) as f64 * BELIEVED) as usize;
        let most = *sizes.select_nth_unstable_by(at, f64::total_cmp).1;
        let places = samples.iter().map(|s| Vector2::new(s.x_mm, s.y_mm));
        let samples = places.zip(terms).zip(left).map(|((p, t), v)| (p, t, v.clamp(-most, most)));
        Some(Self { samples: samples.collect(), slow })
    }

    /// What lobes of one width explain at every middle of the lattice.
    fn with_width(&self, w: f64) -> Vec<(f64, Start)> {
        let (step, square) = (STEP * w, |p: &Vector2<f64>, side: f64| p.map(|v| (v / side).floor() as i64));
        let mut near: HashMap<Vector2<i64>, Vec<usize>> = HashMap::new();
        for (k, (p, ..)) in self.samples.iter().enumerate() {
            near.entry(square(p, REACH * w)).or_default().push(k);
        }
        let mut middles: Vec<Vector2<i64>> = self.samples.iter().map(|(p, ..)| square(p, step)).collect();
        middles.sort_by_key(|m| (m.x, m.y));
        middles.dedup();
        let explained = |m: Vector2<i64>| {
            let middle = m.map(|v| (v as f64 + 0.5) * step);
            let home = square(&middle, REACH * w);
            let around = (-1..=1).flat_map(|i| (-1..=1).map(move |j| home + Vector2::new(i, j)));
            let samples = around.filter_map(|s| near.get(&s)).flatten().map(|&k| &self.samples[k]);
            self.explained(middle, w, samples)
        };
        middles.into_iter().filter_map(explained).collect()
    }

    fn explained<'a>(
        &self,
        middle: Vector2<f64>,
        w: f64,
        samples: impl Iterator<Item = &'a (Vector2<f64>, Slow, f64)>,
    ) -> Option<(f64, Start)> {
        let (mut own, mut with_slow, mut right) =
            (Matrix2::zeros(), SMatrix::<f64, 2, SLOW>::zeros(), Vector2::zeros());
        for (place, slow, change) in samples {
            let at = (place - middle) / w;
            let lobes = at * (-0.5 * at.norm_squared()).exp();
            own += lobes * lobes.transpose();
            with_slow += lobes * slow.transpose();
            right += lobes * *change;
        }
        let alone = own - with_slow * self.slow * with_slow.transpose();
        let strength = alone.cholesky()?.solve(&right);
        Some((strength.dot(&right), Start { strength, middle, width_mm: w }))
    }
}
