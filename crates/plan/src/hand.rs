//! Learning the technician's hand and the sheet: how much held lift a wanted one becomes, and how much more or less of it
//! stays than computed.
//!
//! Two numbers on a grid: the hand's gain `g` and the sheet's share `m`. A move asked for `h` held leaves `m L(g h)`, `L`
//! being the computed lift left by lift held. Prior normal in both; after each reading every move's measured change
//! multiplies it by its likelihood (Bayes). For a straight `L` and a known `m` this is the conjugate normal update. No hand
//! repeats a lift exactly: a share of the lift held is scatter, which hardly matters for a large lift left and decides over
//! a small one, since most of what is held springs back.

use serde::{Deserialize, Serialize};

/// Gains on the grid.
const GAINS: (f64, f64, usize) = (0.3, 2.5, 111);
/// Shares on the grid.
const SHARES: (f64, f64, usize) = (0.4, 1.8, 29);
/// Doubt of a hand nobody has seen, and of a sheet whose metal is on file: standard deviations about 1.
const PRIOR: [f64; 2] = [0.4, 0.25];

/// How well a hand repeats a lift, one sigma, share of what is held: ours, no published source.
const SCATTER: f64 = 0.055;

/// What stays is near what was wanted within this share of it.
const BAND: f64 = 0.3;
/// Lifts weighed against each other, coarse and then fine.
const ASKED: usize = 16;
/// A lift is raised by at most this factor over the largest that was tried on the damage: what the sheet does beyond is
/// only computed (common practice: more, little by little).
const RAISED: f64 = 1.35;

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

    /// Scatter of what stays where what is held scatters by this share, one sigma, mm.
    fn scatter(&self, held: f64, share: f64) -> f64 {
        0.5 * (self.left(held * (1.0 + share)) - self.left(held * (1.0 - share)))
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
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
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
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Hand {
    /// Probability of each gain and share, gains outermost.
    weight: Vec<f64>,
    /// How well it repeats a lift, one sigma, share of what is held.
    scatter: f64,
    /// Largest lift asked so far, mm; none before anything was tried.
    #[serde(default)]
    furthest_mm: Option<f64>,
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
        let weight = grid().map(|[g, m]| bell(g, sigma[0]) * bell(m, sigma[1])).collect();
        let mut hand = Self { weight, scatter: SCATTER, furthest_mm: None };
        hand.norm();
        hand
    }

    /// A hand whose gain was told, with its doubt, on a sheet of metal on file.
    pub fn told(gain: f64, sigma: f64) -> Self {
        let bell = |v: f64, at: f64, s: f64| (-0.5 * ((v - at) / s).powi(2)).exp();
        let weight = grid().map(|[g, m]| bell(g, gain, sigma) * bell(m, 1.0, PRIOR[1])).collect();
        let mut hand = Self { weight, scatter: SCATTER, furthest_mm: None };
        hand.norm();
        hand
    }

    /// The same hand at another sheet: of that nothing is known yet.
    #[must_use]
    pub fn at_another_sheet(&self) -> Self {
        let shares = SHARES.2;
        let gains: Vec<f64> = self.weight.chunks(shares).map(|row| row.iter().sum()).collect();
        let bell = |m: f64| (-0.5 * ((m - 1.0) / PRIOR[1]).powi(2)).exp();
        let weight = grid().enumerate().map(|(i, [_, m])| gains[i / shares] * bell(m)).collect();
        let mut hand = Self { weight, scatter: self.scatter, furthest_mm: None };
        hand.norm();
        hand
    }

    /// Learns from moves that were read.
    pub fn learn(&mut self, tried: &[Tried]) {
        for t in tried {
            self.furthest_mm = Some(self.furthest_mm.map_or(t.held_mm, |f| f.max(t.held_mm)));
            let likely = grid().map(|[g, m]| {
                let held = g * t.held_mm;
                let off = t.left_mm - m * t.curve.left(held);
                let sigma = t.sigma_mm.hypot(m * t.curve.scatter(held, self.scatter));
                // heavier tails than the normal's: a tip that slipped must not decide
                (1.0 + (off / sigma).powi(2) / TAILS).powf(-0.5 * (TAILS + 1.0)) / sigma
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
            square += w * (left * left + (m * curve.scatter(g * held, self.scatter)).powi(2));
        }
        [sum, (square - sum * sum).max(0.0).sqrt()]
    }

    /// The lift to ask for, up to `most` and not far over what was tried: the one that most likely leaves what is wanted,
    /// to within `limit` or a share of what is wanted. The less is known, the less is asked. Where hardly anything is
    /// missing the mean square would ask for nothing, since scatter may be larger than what is missing; a move that
    /// goes too far is put right by the next.
    pub fn ask(&self, curve: &Curve, wanted: f64, most: f64, limit: f64) -> f64 {
        let most = self.furthest_mm.map_or(most, |f| most.min(RAISED * f));
        let within = limit.max(BAND * wanted);
        let best = |low: f64, high: f64| {
            let lifts = (1..=ASKED).map(|k| low + (high - low) * k as f64 / ASKED as f64);
            lifts
                .map(|held| (held, self.leaves_within(curve, held, [wanted - within, wanted + within])))
                .fold((0.0, -1.0), |best, one| if one.1 > best.1 { one } else { best })
                .0
        };
        let (coarse, step) = (best(0.0, most), most / ASKED as f64);
        best(coarse - step, (coarse + step).min(most))
    }

    /// Probability that a lift asked for leaves something within these bounds, mm.
    fn leaves_within(&self, curve: &Curve, held: f64, [low, high]: [f64; 2]) -> f64 {
        let one = |([g, m], w): ([f64; 2], &f64)| {
            let (left, sigma) = (m * curve.left(g * held), m * curve.scatter(g * held, self.scatter));
            let below = |v: f64| below((v - left) / sigma.max(1e-6));
            w * (below(high) - below(low))
        };
        grid().zip(&self.weight).filter(|(_, w)| **w > 1e-6).map(one).sum()
    }

    fn norm(&mut self) {
        let sum: f64 = self.weight.iter().sum();
        self.weight.iter_mut().for_each(|w| *w /= sum);
    }
}

/// Share of a normal distribution below a value, within 1e-3: logistic in `x` and `x³` (Bowling and others 2009).
fn below(x: f64) -> f64 {
    1.0 / (1.0 + (-1.5976 * x - 0.070_56 * x * x * x).exp())
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
        let mut hand = Hand { scatter: 0.0, ..Hand::with_doubt([0.3, 1e-6]) };
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
    fn a_hand_keeps_its_gain_at_another_sheet() {
        let curve = Curve { corners: vec![[0.5, 0.0], [2.0, 1.0]] };
        let mut hand = Hand::default();
        let tried = Tried { held_mm: 1.0, curve, left_mm: 0.6, sigma_mm: 0.02 };
        hand.learn(&[tried]);
        let other = hand.at_another_sheet();
        assert!((other.mean()[0] - hand.mean()[0]).abs() < 1e-9 && hand.mean()[0] > 1.1);
        assert!(
            (other.mean()[1] - Hand::default().mean()[1]).abs() < 1e-9 && other.sigma()[0] <= hand.sigma()[0] + 1e-9
        );
    }

    #[test]
    fn less_is_asked_while_less_is_known() {
        let curve = Curve { corners: vec![[0.3, 0.0], [1.0, 0.3], [2.0, 1.1]] };
        let known = Hand { scatter: 0.0, ..Hand::with_doubt([0.02, 1e-6]) };
        assert!((known.ask(&curve, 0.5, 5.0, 0.02) - curve.held(0.5)).abs() < 0.15);
        assert!(Hand::default().ask(&curve, 0.5, 5.0, 0.02) < curve.held(0.5));
        // though what scatters is more than what is missing, it is asked for
        let some = Hand::with_doubt([0.05, 0.05]).ask(&curve, 0.03, 5.0, 0.02);
        assert!((0.3..0.5).contains(&some), "{some}");
        assert!((below(1.0) - 0.8413).abs() < 1e-3 && (below(-2.0) - 0.0228).abs() < 1e-3);
    }
}
