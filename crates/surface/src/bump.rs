//! Where a small bump rose, from how one component of the slope changed.
//!
//! The slope of a round bump, taken in one direction, is two lobes of opposite sign with the bump's middle between them.
//! The lobes of `exp(-r²/2w²)` are fitted to scattered samples together with what changes slowly (a camera that moved
//! a little, a panel that gave as a whole: a polynomial of second degree), by least squares with Geman and McClure's
//! weight. The form need not be the true one: what is round leaves residuals that are odd about the middle, and those
//! do not move it. The doubt is the sandwich estimate over patches whose errors are alike (Liang and Zeger 1986), so
//! that wrong forms and errors that hang together count.
//!
//! Limits: one bump; its lobes must stand out from what is left.

use crate::bump_search::{Start, likely};
use nalgebra::{Matrix2, SMatrix, SVector, Vector2};
use std::collections::HashMap;

/// How the slope changed at one place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SlopeChange {
    /// Place, mm.
    pub x_mm: f64,
    /// Place, mm.
    pub y_mm: f64,
    /// Change, in any unit.
    pub change: f64,
}

/// A bump that rose.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bump {
    /// Its middle, mm.
    pub x_mm: f64,
    /// Its middle, mm.
    pub y_mm: f64,
    /// Covariance of the middle, mm².
    pub covariance: Matrix2<f64>,
    /// From the middle to where a lobe is strongest, mm.
    pub width_mm: f64,
    /// One-sigma of that, mm.
    pub width_sigma_mm: f64,
    /// Change at the top of a lobe, in the samples' unit; and the direction in which the slope was taken, rad from x.
    pub lobe: f64,
    /// One-sigma of that.
    pub lobe_sigma: f64,
    /// See `lobe`.
    pub direction_rad: f64,
    /// Spread of what the fit leaves, in the samples' unit: 1.4826 times its middle size.
    pub left: f64,
    /// Share of the bump's surroundings, out to where the lobes are strongest, that holds samples.
    pub cover: f64,
}

/// What is known beforehand.
#[derive(Debug, Clone, Copy)]
pub struct BumpSettings {
    /// Distance over which errors are alike, mm.
    pub alike_mm: f64,
    /// Distance between neighbouring samples, mm.
    pub apart_mm: f64,
    /// Smallest and largest distance from the middle to the top of a lobe, mm.
    pub widths_mm: [f64; 2],
}

/// Slow terms, two lobes' strengths, place and logarithm of the width.
const TERMS: usize = SLOW + 5;
pub(crate) const SLOW: usize = 6;
type Terms = SVector<f64, TERMS>;
type Normal = SMatrix<f64, TERMS, TERMS>;

/// Candidates that are fitted in full.
const CANDIDATES: usize = 6;
/// Times the weights are made anew, and Gauss and Newton's steps for each.
const ROUNDS: usize = 6;
const STEPS: usize = 4;
/// A residual of so many spreads counts a quarter.
const OUTLYING: f64 = 3.0;
/// A lobe's top over its strength: `exp(-1/2)`.
const TOP: f64 = 0.606_530_659_712_633_4;
/// Fewer samples tell nothing.
const LEAST_SAMPLES: usize = 100;

/// The bump among the samples that explains the changes best; `None` where there is none, or too few samples. Whether
/// it stands out is the caller's to judge.
#[must_use]
pub fn find_bump(samples: &[SlopeChange], settings: &BumpSettings) -> Option<Bump> {
    if samples.len() < LEAST_SAMPLES {
        return None;
    }
    let frame = Frame::over(samples);
    let fits = likely(samples, &frame, settings.widths_mm, CANDIDATES).into_iter().map(|start| {
        let fit = fitted(samples, &frame, settings, &begun(&start));
        (cost(samples, &frame, &fit), fit)
    });
    let inside = fits.filter(|(_, fit)| cover(samples, settings, fit) > 0.0);
    let (_, fit) = inside.min_by(|a, b| a.0.total_cmp(&b.0))?;
    Some(told(samples, &frame, settings, &fit))
}

/// The patch, for terms of order one.
pub(crate) struct Frame {
    middle: Vector2<f64>,
    half_mm: f64,
}

impl Frame {
    fn over(samples: &[SlopeChange]) -> Self {
        let places = || samples.iter().map(|s| Vector2::new(s.x_mm, s.y_mm));
        let low = places().fold(Vector2::repeat(f64::MAX), |a, p| a.inf(&p));
        let high = places().fold(Vector2::repeat(f64::MIN), |a, p| a.sup(&p));
        Self { middle: 0.5 * (low + high), half_mm: (0.5 * (high - low).amax()).max(1.0) }
    }

    /// What changes slowly: the terms of second degree.
    pub fn slow(&self, s: &SlopeChange) -> SVector<f64, SLOW> {
        let p = (Vector2::new(s.x_mm, s.y_mm) - self.middle) / self.half_mm;
        SVector::from([1.0, p.x, p.y, p.x * p.x, p.x * p.y, p.y * p.y])
    }

    /// The model at a sample, and its derivatives by every term.
    fn model(&self, s: &SlopeChange, t: &Terms) -> (f64, Terms) {
        let w = t[SLOW + 4].exp();
        let (x, y) = ((s.x_mm - t[SLOW + 2]) / w, (s.y_mm - t[SLOW + 3]) / w);
        let (a, b, bell) = (t[SLOW], t[SLOW + 1], (-0.5 * (x * x + y * y)).exp());
        let along = a * x + b * y;
        let slow = self.slow(s);
        let mut by = Terms::zeros();
        by.fixed_rows_mut::<SLOW>(0).copy_from(&slow);
        by[SLOW] = x * bell;
        by[SLOW + 1] = y * bell;
        by[SLOW + 2] = (along * x - a) * bell / w;
        by[SLOW + 3] = (along * y - b) * bell / w;
        by[SLOW + 4] = along * bell * (x * x + y * y - 1.0);
        (slow.dot(&t.fixed_rows::<SLOW>(0)) + along * bell, by)
    }

    fn left(&self, s: &SlopeChange, t: &Terms) -> f64 {
        s.change - self.model(s, t).0
    }
}

/// The terms of a start: nothing has changed slowly yet.
fn begun(start: &Start) -> Terms {
    let mut terms = Terms::zeros();
    let of_bump = [start.strength.x, start.strength.y, start.middle.x, start.middle.y, start.width_mm.ln()];
    terms.fixed_rows_mut::<5>(SLOW).copy_from_slice(&of_bump);
    terms
}

/// Weighted least squares from a start, the weights made anew in between.
fn fitted(samples: &[SlopeChange], frame: &Frame, settings: &BumpSettings, start: &Terms) -> Terms {
    let mut terms = *start;
    for _ in 0..ROUNDS {
        let spread = spread(samples, frame, &terms);
        let weights: Vec<f64> = samples.iter().map(|s| weight(frame.left(s, &terms) / spread)).collect();
        for _ in 0..STEPS {
            let (normal, right) = normal(samples, frame, &weights, &terms);
            let Some(step) = damped(normal).cholesky().map(|c| c.solve(&right)) else { return terms };
            // No step farther than half a width, nor to a width that was not asked for.
            let w = terms[SLOW + 4].exp();
            let far = step[SLOW + 2].hypot(step[SLOW + 3]) / (0.5 * w);
            terms += step / far.max(step[SLOW + 4].abs() / 0.3).max(1.0);
            let [least, most] = settings.widths_mm.map(f64::ln);
            terms[SLOW + 4] = terms[SLOW + 4].clamp(least, most);
        }
    }
    terms
}

/// Geman and McClure's weight of a residual in spreads.
fn weight(spreads: f64) -> f64 {
    (1.0 + (spreads / OUTLYING).powi(2)).powi(-2)
}

/// Geman and McClure's cost, at a scale common to all fits.
fn cost(samples: &[SlopeChange], frame: &Frame, terms: &Terms) -> f64 {
    let all = middle_size(samples.iter().map(|s| s.change).collect()).max(f64::MIN_POSITIVE);
    let share = |left: f64| (left / all).powi(2) / (1.0 + (left / all).powi(2));
    samples.iter().map(|s| share(frame.left(s, terms))).sum()
}

fn spread(samples: &[SlopeChange], frame: &Frame, terms: &Terms) -> f64 {
    middle_size(samples.iter().map(|s| frame.left(s, terms)).collect()).max(f64::MIN_POSITIVE)
}

/// 1.4826 times the middle size, the standard deviation of a normal distribution.
pub(crate) fn middle_size(mut all: Vec<f64>) -> f64 {
    all.iter_mut().for_each(|v| *v = v.abs());
    let at = all.len() / 2;
    if all.is_empty() { 0.0 } else { 1.4826 * *all.select_nth_unstable_by(at, f64::total_cmp).1 }
}

fn normal(samples: &[SlopeChange], frame: &Frame, weights: &[f64], terms: &Terms) -> (Normal, Terms) {
    let (mut normal, mut right) = (Normal::zeros(), Terms::zeros());
    for (s, w) in samples.iter().zip(weights) {
        let (value, by) = frame.model(s, terms);
        normal.ger(*w, &by, &by, 1.0);
        right += by * (*w * (s.change - value));
    }
    (normal, right)
}

/// Normal equations that can be solved though a term should say nothing.
fn damped(mut normal: Normal) -> Normal {
    for k in 0..TERMS {
        normal[(k, k)] = normal[(k, k)] * (1.0 + 1e-6) + 1e-12;
    }
    normal
}

/// The fit with its doubts.
fn told(samples: &[SlopeChange], frame: &Frame, settings: &BumpSettings, terms: &Terms) -> Bump {
    let left = spread(samples, frame, terms);
    let weights: Vec<f64> = samples.iter().map(|s| weight(frame.left(s, terms) / left)).collect();
    let (normal, _) = normal(samples, frame, &weights, terms);
    let inverse = damped(normal).try_inverse().unwrap_or_else(|| Normal::identity() * f64::INFINITY);
    let w = terms[SLOW + 4].exp();
    let meat = meat(samples, frame, &weights, settings.alike_mm, terms);
    let covariance = inverse * meat * inverse * few_patches(w / settings.alike_mm);
    let (a, b) = (terms[SLOW], terms[SLOW + 1]);
    let strength = a.hypot(b).max(f64::MIN_POSITIVE);
    let along = Vector2::new(a, b) / strength;
    let of_lobe = covariance.fixed_view::<2, 2>(SLOW, SLOW).into_owned();
    Bump {
        x_mm: terms[SLOW + 2],
        y_mm: terms[SLOW + 3],
        covariance: covariance.fixed_view::<2, 2>(SLOW + 2, SLOW + 2).into_owned(),
        width_mm: w,
        width_sigma_mm: w * covariance[(SLOW + 4, SLOW + 4)].max(0.0).sqrt(),
        lobe: TOP * strength,
        lobe_sigma: TOP * along.dot(&(of_lobe * along)).max(0.0).sqrt(),
        direction_rad: b.atan2(a),
        left,
        cover: cover(samples, settings, terms),
    }
}

/// Sums of the patches' scores squared, the mean of patches laid in four ways.
fn meat(samples: &[SlopeChange], frame: &Frame, weights: &[f64], alike_mm: f64, terms: &Terms) -> Normal {
    let mut sum = Normal::zeros();
    for (ox, oy) in [(0.0, 0.0), (0.5, 0.0), (0.0, 0.5), (0.5, 0.5)] {
        let mut scores: HashMap<(i64, i64), Terms> = HashMap::new();
        for (s, w) in samples.iter().zip(weights) {
            let patch = ((s.x_mm / alike_mm + ox).floor() as i64, (s.y_mm / alike_mm + oy).floor() as i64);
            let (value, by) = frame.model(s, terms);
            *scores.entry(patch).or_insert_with(Terms::zeros) += by * (*w * (s.change - value));
        }
        // In a fixed order, so that the sum is always the same.
        let mut scores: Vec<_> = scores.into_iter().collect();
        scores.sort_by_key(|(patch, _)| *patch);
        scores.iter().for_each(|(_, score)| sum.ger(0.25, score, score, 1.0));
    }
    sum
}

/// What the sandwich estimate is short of where few patches lie on the lobes: patches over patches less the five terms
/// of the bump. The lobes reach to three widths.
fn few_patches(widths: f64) -> f64 {
    let patches = std::f64::consts::PI * (3.0 * widths).powi(2);
    patches / (patches - 5.0).max(0.25 * patches)
}

fn cover(samples: &[SlopeChange], settings: &BumpSettings, terms: &Terms) -> f64 {
    let w = terms[SLOW + 4].exp();
    let near = |s: &&SlopeChange| (s.x_mm - terms[SLOW + 2]).hypot(s.y_mm - terms[SLOW + 3]) <= w;
    let held = samples.iter().filter(near).count() as f64 * settings.apart_mm.powi(2);
    (held / (std::f64::consts::PI * w * w)).min(1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// An even spread of numbers between -1 and 1, the same every time (additive recurrence of Roberts 2018).
    fn noise(k: usize, seed: f64) -> f64 {
        let at = |share: f64| (k as f64 * share + seed).fract();
        2.0 * ((at(0.754_877_666) + at(0.569_840_291) + at(0.362_651_7)) / 3.0 - 0.5)
    }

    /// Changes on a lattice of 2 mm around a bump at (12.3, -7.7), in the direction of x turned by 0.4 rad.
    fn changes(lobe: f64, profile: impl Fn(f64) -> f64, seed: f64) -> Vec<SlopeChange> {
        let place = |k: usize| (2.0 * (k % 80) as f64 - 80.0, 2.0 * (k / 80) as f64 - 50.0);
        let (sin, cos) = (0.4f64).sin_cos();
        let change = |k: usize| {
            let (x_mm, y_mm) = place(k);
            let (dx, dy) = (x_mm - 12.3, y_mm + 7.7);
            let slow = 0.3 + 0.004 * x_mm - 0.002 * y_mm + 2e-5 * x_mm * y_mm;
            let lobes = lobe * (dx * cos + dy * sin) * profile(dx.hypot(dy));
            SlopeChange { x_mm, y_mm, change: slow + lobes + 0.05 * noise(k, seed) }
        };
        (0..80 * 50).map(change).filter(|s| (s.x_mm - 20.0).hypot(s.y_mm - 25.0) > 8.0).collect()
    }

    const SETTINGS: BumpSettings = BumpSettings { alike_mm: 6.0, apart_mm: 2.0, widths_mm: [4.0, 60.0] };

    #[test]
    fn the_middle_is_found_whatever_round_form_the_bump_has() {
        let bell = |r: f64| (-0.5 * r * r / 144.0).exp() / 12.0;
        // A plate clamped at 40 mm under a point: its slope goes as r ln(r/a).
        let plate = |r: f64| if r < 40.0 { -((r + 0.1) / 40.0).ln() / 14.7 } else { 0.0 };
        for (seed, profile) in [(0.1, &bell as &dyn Fn(f64) -> f64), (0.37, &plate)] {
            let bump = find_bump(&changes(1.0, profile, seed), &SETTINGS).unwrap();
            let off = (bump.x_mm - 12.3).hypot(bump.y_mm + 7.7);
            let sigma = bump.covariance.trace().sqrt();
            assert!(off < 3.0 * sigma && sigma < 0.5, "{off} of {sigma}: {bump:?}");
            assert!((bump.direction_rad - 0.4).abs() < 0.1 && bump.cover > 0.9, "{bump:?}");
            assert!(bump.lobe > 8.0 * bump.left, "{bump:?}");
        }
    }

    #[test]
    fn where_nothing_rose_no_lobe_stands_out() {
        for seed in [0.2, 0.55, 0.81] {
            let bump = find_bump(&changes(0.0, |_| 0.0, seed), &SETTINGS);
            assert!(bump.is_none_or(|b| b.lobe < 3.0 * b.left), "{bump:?}");
        }
    }
}
