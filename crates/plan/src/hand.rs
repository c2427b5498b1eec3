//! Learning the technician's hand and the sheet: how much held lift a wanted one becomes, and how much more or less of it
//! stays than computed.
//!
//! Two numbers on a grid: the hand's gain `g` and the sheet's share `m`. A move asked for `h` held leaves `m L(g h)`, `L`
//! being the computed lift left by lift held. Prior normal in both; after each reading every move's measured change
//! multiplies it by its likelihood (Bayes). For a straight `L` and a known `m` this is the conjugate normal update.

use serde::{Deserialize, Serialize};

/// Gains on the grid.
const GAINS: (f64, f64, usize) = (0.3, 2.5, 111);
/// Shares on the grid.
const SHARES: (f64, f64, usize) = (0.4, 1.8, 29);
/// Doubt of a hand nobody has seen, and of a sheet whose metal is on file: standard deviations about 1.
const PRIOR: [f64; 2] = [0.4, 0.25];

/// Lift left by lift held, straight between corners; nothing at none, and straight on beyond the last.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Curve {
    /// `[held, left]`, mm, both growing, both positive.
    pub corners: Vec<[f64; 2]>,
}

impl Curve {
    /// What stays of a lift held, mm.
    pub fn left(&self, held: f64) -> f64 {
        self.between(held, 0, 1)
    }

    /// What must be held for this to stay, mm.
    pub fn held(&self, left: f64) -> f64 {
        self.between(left, 1, 0)
    }

    fn between(&self, x: f64, from: usize, to: usize) -> f64 {
        let mut last = [[0.0; 2]; 2];
        for c in &self.corners {
            last = [last[1], *c];
            if c[from] >= x {
                break;
            }
        }
        let [a, b] = last;
        if b[from] > a[from] { a[to] + (b[to] - a[to]) * ((x - a[from]) / (b[from] - a[from])) } else { b[to] }
    }
}

/// A move that was made and read.
#[derive(Debug, Clone, PartialEq)]
pub struct Tried {
    /// Lift that was asked for, mm, in size.
    pub held_mm: f64,
    /// What the sheet was thought to keep of it.
    pub curve: Curve,
    /// What it kept, mm, in the same sense.
    pub left_mm: f64,
    /// One-sigma doubt of that, reading and computation together, mm.
    pub sigma_mm: f64,
}

/// What is known of hand and sheet.
#[derive(Debug, Clone, PartialEq)]
pub struct Hand {
    /// Probability of each gain and share, gains outermost.
    weight: Vec<f64>,
}

impl Default for Hand {
    fn default() -> Self {
        Self::with_doubt(PRIOR)
    }
}

impl Hand {
    /// Nothing known but these standard deviations of gain and share about 1.
    pub fn with_doubt(sigma: [f64; 2]) -> Self {
        let bell = |v: f64, s: f64| (-0.5 * ((v - 1.0) / s).powi(2)).exp();
        let mut hand = Self { weight: grid().map(|[g, m]| bell(g, sigma[0]) * bell(m, sigma[1])).collect() };
        hand.norm();
        hand
    }

    /// Learns from moves that were read.
    pub fn learn(&mut self, tried: &[Tried]) {
        for t in tried {
            let likely = grid().map(|[g, m]| {
                let off = t.left_mm - m * t.curve.left(g * t.held_mm);
                // heavier tails than the normal's: a tip that slipped must not decide
                (1.0 + (off / t.sigma_mm).powi(2) / TAILS).powf(-0.5 * (TAILS + 1.0))
            });
            let next: Vec<f64> = self.weight.iter().zip(likely).map(|(w, l)| w * l).collect();
            self.weight = next;
            self.norm();
        }
    }

    /// Mean gain and share.
    pub fn mean(&self) -> [f64; 2] {
        let sum = |k: usize| grid().zip(&self.weight).map(|(v, w)| w * v[k]).sum();
        [sum(0), sum(1)]
    }

    /// Their standard deviations.
    pub fn sigma(&self) -> [f64; 2] {
        let mean = self.mean();
        [0, 1].map(|k| grid().zip(&self.weight).map(|(v, w)| w * (v[k] - mean[k]).powi(2)).sum::<f64>().sqrt())
    }

    /// What a lift asked for leaves: mean and standard deviation, mm.
    pub fn leaves(&self, curve: &Curve, held: f64) -> [f64; 2] {
        let (mut sum, mut square) = (0.0, 0.0);
        for ([g, m], w) in grid().zip(&self.weight) {
            let left = m * curve.left(g * held);
            sum += w * left;
            square += w * left * left;
        }
        [sum, (square - sum * sum).max(0.0).sqrt()]
    }

    /// The lift to ask for, up to `most`, so that what stays is expected nearest to `wanted`: least mean square, so the
    /// less is known, the less is asked.
    pub fn ask(&self, curve: &Curve, wanted: f64, most: f64) -> f64 {
        let cost = |held: f64| {
            let [mean, sigma] = self.leaves(curve, held);
            (mean - wanted).powi(2) + sigma * sigma
        };
        let (mut low, mut high) = (0.0, most);
        for _ in 0..30 {
            let (a, b) = (low + 0.382 * (high - low), low + 0.618 * (high - low));
            if cost(a) < cost(b) { high = b } else { low = a }
        }
        0.5 * (low + high)
    }

    fn norm(&mut self) {
        let sum: f64 = self.weight.iter().sum();
        self.weight.iter_mut().for_each(|w| *w /= sum);
    }
}

/// Degrees of freedom of the likelihood's tails.
const TAILS: f64 = 8.0;

fn grid() -> impl Iterator<Item = [f64; 2]> {
    let at = |(low, high, n): (f64, f64, usize), k: usize| low + (high - low) * k as f64 / (n - 1) as f64;
    (0..GAINS.2).flat_map(move |i| (0..SHARES.2).map(move |j| [at(GAINS, i), at(SHARES, j)]))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Normal prior, straight curve, one known number: posterior precision is the sum of precisions. The tails' weight
    /// makes the likelihood a little wider than the normal's.
    #[test]
    fn a_straight_curve_learns_by_the_closed_form() {
        let mut hand = Hand::with_doubt([0.3, 1e-6]);
        let curve = Curve { corners: vec![[1.0, 0.5]] };
        let sigma = 0.05;
        for left in [0.66, 0.64, 0.65, 0.65] {
            hand.learn(&[Tried { held_mm: 1.0, curve: curve.clone(), left_mm: left, sigma_mm: sigma }]);
        }
        let (prior, each) = (1.0 / 0.09, 0.25 / (sigma * sigma));
        let known = (prior * 1.0 + 4.0 * each * 1.3) / (prior + 4.0 * each);
        let spread = (prior + 4.0 * each).sqrt().recip();
        assert!((hand.mean()[0] - known).abs() < 0.01, "{} {known}", hand.mean()[0]);
        assert!((hand.sigma()[0] / spread - 1.0).abs() < 0.15, "{} {spread}", hand.sigma()[0]);
    }

    #[test]
    fn less_is_asked_while_less_is_known() {
        let curve = Curve { corners: vec![[0.3, 0.0], [1.0, 0.3], [2.0, 1.1]] };
        let known = Hand::with_doubt([0.02, 1e-6]);
        assert!((known.ask(&curve, 0.5, 5.0) - curve.held(0.5)).abs() < 0.02);
        assert!(Hand::default().ask(&curve, 0.5, 5.0) < curve.held(0.5));
    }
}
