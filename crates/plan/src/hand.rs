//! Learning the technician's hand and the sheet: how much held lift a wanted one becomes, and how much more or less of it
//! stays than computed.
//!
//! Two numbers on a grid: the hand's gain `g` and the sheet's share `m`. A move asked for `h` held leaves `m L(g h)`, `L`
//! being the computed lift left by lift held. Prior normal in both; after each reading every move's measured change
//! multiplies it by its likelihood (Bayes). For a straight `L` and a known `m` this is the scalar Kalman filter. No hand
//! repeats a lift exactly: a share of the lift held is scatter, which hardly matters for a large lift left and decides over
//! a small one, since most of what is held springs back.

use crate::act::Act;
use crate::curve::Curve;
use serde::{Deserialize, Serialize};

/// Gains on the grid.
const GAINS: (f64, f64, usize) = (0.3, 2.5, 111);
/// Shares on the grid.
const SHARES: (f64, f64, usize) = (0.4, 1.8, 29);
/// Doubt of a hand nobody has seen, and of a sheet whose metal is on file: standard deviations about 1.
const PRIOR: [f64; 2] = [0.4, 0.25];

/// How well a hand repeats a lift, one sigma, share of what is held: ours, no published source.
const SCATTER: f64 = 0.055;

/// By how much places differ in what must be held there, one sigma, share of it; how near they are alike, mm; and how a move
/// there says less with every one after it.
const PLACES: f64 = 0.1;
const ALIKE_MM: f64 = 9.0;
const FADES: f64 = 0.85;
/// How often the gain is spread over its neighbours on the grid a move: 0.04 in all.
const DRIFTS: usize = 8;
/// Draws of what is not known, and how far apart in them neighbours of the scatter lie.
const DRAWS: usize = 24;
const SKIPPED: usize = 7;
/// A lift is raised by at most this factor over the largest that was tried on the damage: what the sheet does beyond is
/// only computed (common practice: more, little by little).
const RAISED: f64 = 1.5;

/// A move that was made and read.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Tried {
    /// What was done.
    pub act: Act,
    /// Place in the sheet's frame, mm.
    pub at_mm: [f64; 2],
    /// Radius of what touched, mm.
    pub radius_mm: f64,
    /// How often.
    pub times: usize,
    /// Lift that was asked for, mm, in size.
    pub held_mm: f64,
    /// What the sheet was thought to keep of it.
    pub curve: Curve,
    /// What it kept of each time, mm, in the same sense.
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
    /// How far a place may differ from those that were tried in what must be held there, one sigma, share of it.
    #[serde(skip, default = "places")]
    unlike: f64,
    /// Largest lift asked so far, mm; none before anything was tried.
    #[serde(default)]
    furthest_mm: Option<f64>,
    /// Moves on the damage at hand, last ones last: places of a sheet give each in its own way.
    #[serde(skip)]
    near: Vec<Tried>,
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
        let mut hand = Self { weight, scatter: SCATTER, unlike: PLACES, furthest_mm: None, near: Vec::new() };
        hand.norm();
        hand
    }

    /// A hand whose gain was told, with its doubt, on a sheet of metal on file.
    pub fn told(gain: f64, sigma: f64) -> Self {
        let bell = |v: f64, at: f64, s: f64| (-0.5 * ((v - at) / s).powi(2)).exp();
        let weight = grid().map(|[g, m]| bell(g, gain, sigma) * bell(m, 1.0, PRIOR[1])).collect();
        let mut hand = Self { weight, scatter: SCATTER, unlike: PLACES, furthest_mm: None, near: Vec::new() };
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
        let mut hand = Self { weight, scatter: self.scatter, unlike: PLACES, furthest_mm: None, near: Vec::new() };
        hand.norm();
        hand
    }

    /// Learns from moves that were read.
    pub fn learn(&mut self, tried: &[Tried]) {
        for t in tried {
            self.drift();
            self.furthest_mm = Some(self.furthest_mm.map_or(t.held_mm, |f| f.max(t.held_mm)));
            let next: Vec<f64> = grid().zip(&self.weight).map(|(v, w)| w * self.likely(t, v, PLACES)).collect();
            self.weight = next;
            self.norm();
            self.near.push(t.clone());
        }
    }

    /// How likely a move came to what it did, for a gain and a share, where places differ by this share of the lift held.
    fn likely(&self, t: &Tried, [g, m]: [f64; 2], places: f64) -> f64 {
        let held = g * t.held_mm;
        let off = t.left_mm - m * t.curve.left(held);
        let sigma = t.sigma_mm.hypot(m * t.curve.scatter(held, self.scatter.hypot(places)));
        // heavier tails than the normal's: a tip that slipped must not decide
        (1.0 + (off / sigma).powi(2) / TAILS).powf(-0.5 * (TAILS + 1.0)) / sigma
    }

    /// The hand with what is known of a place: moves made there say more of it than others do.
    #[must_use]
    pub fn there(&self, act: Act, at_mm: [f64; 2]) -> Self {
        let mut own = Self { near: Vec::new(), ..self.clone() };
        let mut known = 0.0f64;
        for (age, t) in self.near.iter().rev().enumerate().filter(|(_, t)| t.act == act) {
            let far = (t.at_mm[0] - at_mm[0]).hypot(t.at_mm[1] - at_mm[1]);
            let share = (-(far / ALIKE_MM).powi(2)).exp() * FADES.powi(age as i32);
            if share < 0.05 {
                continue;
            }
            known = known.max(share);
            for (v, w) in grid().zip(&mut own.weight).filter(|(_, w)| **w > 1e-9) {
                *w *= (self.likely(t, v, 0.0) / self.likely(t, v, PLACES)).powf(share);
            }
            own.norm();
        }
        own.unlike = PLACES * (1.0 - known).sqrt();
        own
    }

    /// What was learned fades a little with every move: no two places of a sheet give alike, and what it gives changes as
    /// it is worked.
    fn drift(&mut self) {
        let n = SHARES.2;
        for _ in 0..DRIFTS {
            let old = self.weight.clone();
            let at = |i: usize, j: usize| old[i * n + j];
            for i in 1..GAINS.2 - 1 {
                (0..n).for_each(|j| self.weight[i * n + j] = 0.25 * (at(i - 1, j) + at(i + 1, j)) + 0.5 * at(i, j));
            }
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

    /// What a lift asked for leaves: mean and standard deviation, mm. Where a place was not tried yet it may give sooner or
    /// later than others: that counts here, but not in [`Hand::draws`], by which lifts are chosen.
    pub fn leaves(&self, curve: &Curve, held: f64) -> [f64; 2] {
        let (mut sum, mut square) = (0.0, 0.0);
        let scatter = self.scatter.hypot(self.unlike);
        for ([g, m], w) in grid().zip(&self.weight).filter(|(_, w)| **w > 1e-9) {
            for [node, share] in NODES {
                let left = m * curve.left(g * held * (1.0 + node * scatter).max(0.0));
                sum += w * share * left;
                square += w * share * left * left;
            }
        }
        [sum, (square - sum * sum).max(0.0).sqrt()]
    }

    /// Gains, shares and scatters as likely as each other, drawn evenly from what is known: always the same ones.
    pub fn draws(&self) -> Vec<[f64; 3]> {
        let (mut all, mut sum, mut next) = (Vec::with_capacity(DRAWS), 0.0, 0);
        for ([g, m], w) in grid().zip(&self.weight) {
            sum += w;
            while next < DRAWS && sum * DRAWS as f64 >= next as f64 + 0.5 {
                all.push([g, m, self.scatter * bell_at((next * SKIPPED % DRAWS) as f64 + 0.5)]);
                next += 1;
            }
        }
        all
    }

    /// What a lift asked for leaves for one of these, mm.
    pub fn left_of(&self, curve: &Curve, held: f64, [g, m, scatter]: &[f64; 3]) -> f64 {
        m * curve.left(g * held * (1.0 + scatter))
    }

    /// The largest lift to ask for, up to `most`, mm: not far over what was tried.
    pub fn up_to(&self, most: f64) -> f64 {
        self.furthest_mm.map_or(most, |f| most.min(RAISED * f))
    }

    fn norm(&mut self) {
        let sum: f64 = self.weight.iter().sum();
        self.weight.iter_mut().for_each(|w| *w /= sum);
    }
}

fn places() -> f64 {
    PLACES
}

/// Gauss-Hermite quadrature of five points for the normal distribution: sigmas and weights (Abramowitz and Stegun 1964, 25.4.46).
const NODES: [[f64; 2]; 5] = [
    [-2.856_970_013_872_8, 0.011_257_411_327_720_7],
    [-1.355_626_179_974_27, 0.222_075_922_005_613],
    [0.0, 0.533_333_333_333_333],
    [1.355_626_179_974_27, 0.222_075_922_005_613],
    [2.856_970_013_872_8, 0.011_257_411_327_720_7],
];

/// Where a normal distribution has `k` of [`DRAWS`] below it: bisection of the logistic form in `x` and `x³`, within 1e-3
/// (Bowling and others 2009).
fn bell_at(k: f64) -> f64 {
    let p = k / DRAWS as f64;
    let below = |x: f64| 1.0 / (1.0 + (-1.5976 * x - 0.070_56 * x * x * x).exp());
    let (mut low, mut high) = (-5.0, 5.0);
    for _ in 0..40 {
        let x = 0.5 * (low + high);
        if below(x) < p { low = x } else { high = x }
    }
    0.5 * (low + high)
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

    fn pushed(curve: Curve, left_mm: f64, sigma_mm: f64) -> Tried {
        Tried { act: Act::Push, at_mm: [0.0; 2], radius_mm: 10.0, times: 1, held_mm: 1.0, curve, left_mm, sigma_mm }
    }

    /// Normal prior, straight curve, one known number that drifts: the scalar Kalman filter (Kalman 1960). The tails' weight
    /// makes the likelihood a little wider than the normal's.
    #[test]
    fn a_straight_curve_learns_by_the_closed_form() {
        let mut hand = Hand { scatter: 0.0, ..Hand::with_doubt([0.3, 1e-6]) };
        let curve = Curve { corners: vec![[1.0, 0.5]] };
        let sigma = 0.05;
        let (mut mean, mut variance) = (1.0, 0.09);
        for left in [0.66, 0.64, 0.65, 0.65] {
            hand.learn(&[pushed(curve.clone(), left, sigma)]);
            let step = (GAINS.1 - GAINS.0) / (GAINS.2 - 1) as f64;
            variance += 0.5 * DRIFTS as f64 * step * step;
            let noise = sigma * sigma + (0.5 * PLACES * 1.3f64).powi(2);
            let weight = 0.5 * variance / (0.25 * variance + noise);
            mean += weight * (left - 0.5 * mean);
            variance *= 1.0 - 0.5 * weight;
        }
        assert!((hand.mean()[0] - mean).abs() < 0.02, "{} {mean}", hand.mean()[0]);
        assert!((hand.sigma()[0] / variance.sqrt() - 1.0).abs() < 0.15, "{} {}", hand.sigma()[0], variance.sqrt());
    }

    /// A move made at a place says more of it than of another.
    #[test]
    fn a_place_is_known_best_where_it_was_tried() {
        let mut hand = Hand::default();
        let curve = Curve { corners: vec![[0.5, 0.0], [2.0, 1.0]] };
        hand.learn(&[pushed(curve.clone(), 0.6, 0.01)]);
        let leaves = |hand: &Hand| hand.leaves(&curve, 1.0);
        let (here, far) = (hand.there(Act::Push, [1.0, 0.0]), hand.there(Act::Push, [60.0, 0.0]));
        assert_eq!(leaves(&far), leaves(&hand));
        assert_eq!(leaves(&hand.there(Act::Tap, [1.0, 0.0])), leaves(&hand));
        assert!((leaves(&here)[0] - 0.6).abs() < (leaves(&far)[0] - 0.6).abs() + 1e-9);
        assert!(leaves(&here)[1] < leaves(&far)[1], "{:?} {:?}", leaves(&here), leaves(&far));
    }

    /// Near the lift at which something begins to stay more stays in the mean than at the mean lift: of a normal lift beyond a
    /// kink the mean is `μ Φ(μ/σ) + σ φ(μ/σ)` (Tobin 1958), and the square `(μ² + σ²) Φ(μ/σ) + μ σ φ(μ/σ)`.
    #[test]
    fn what_is_left_near_the_beginning_is_the_mean_over_the_scatter() {
        let hand = Hand { scatter: 0.06, unlike: 0.08, ..Hand::with_doubt([1e-6, 1e-6]) };
        let curve = Curve { corners: vec![[1.0, 0.0], [3.0, 2.0]] };
        for held in [0.95, 1.0, 1.1, 1.3, 1.8] {
            let (mu, sigma) = (held - 1.0, 0.1 * held);
            let (below, bell) = normal(mu / sigma);
            let mean = mu * below + sigma * bell;
            let square = (mu * mu + sigma * sigma) * below + mu * sigma * bell;
            let [left, doubt] = hand.leaves(&curve, held);
            assert!((left - mean).abs() < 0.012, "{held}: {left} {mean}");
            assert!((doubt - (square - mean * mean).sqrt()).abs() < 0.015, "{held}: {doubt} {}", square - mean * mean);
        }
    }

    /// Distribution and density of the normal law, the first by Simpson's rule.
    fn normal(x: f64) -> (f64, f64) {
        let bell = |t: f64| (-0.5 * t * t).exp() / std::f64::consts::TAU.sqrt();
        let (from, n) = (-8.0, 400);
        let step = (x - from) / n as f64;
        let weight = |k: usize| if k == 0 || k == n { 1.0 } else { 2.0 * (1 + k % 2) as f64 };
        let sum: f64 = (0..=n).map(|k| weight(k) * bell(from + step * k as f64)).sum();
        (sum * step / 3.0, bell(x))
    }

    #[test]
    fn a_hand_keeps_its_gain_at_another_sheet() {
        let curve = Curve { corners: vec![[0.5, 0.0], [2.0, 1.0]] };
        let mut hand = Hand::default();
        hand.learn(&[pushed(curve, 0.6, 0.02)]);
        let other = hand.at_another_sheet();
        assert!((other.mean()[0] - hand.mean()[0]).abs() < 1e-9 && hand.mean()[0] > 1.1);
        assert!(
            (other.mean()[1] - Hand::default().mean()[1]).abs() < 1e-9 && other.sigma()[0] <= hand.sigma()[0] + 1e-9
        );
    }

    #[test]
    fn draws_have_the_mean_and_the_spread() {
        let hand = Hand::with_doubt([0.2, 0.1]);
        let draws = hand.draws();
        let n = draws.len() as f64;
        let mean = |k: usize| draws.iter().map(|d| d[k]).sum::<f64>() / n;
        let sigma = |k: usize| (draws.iter().map(|d| (d[k] - mean(k)).powi(2)).sum::<f64>() / n).sqrt();
        assert_eq!(draws.len(), DRAWS);
        assert!((mean(0) - 1.0).abs() < 0.02 && (sigma(0) - 0.2).abs() < 0.02, "{} {}", mean(0), sigma(0));
        assert!(mean(2).abs() < 1e-3 && (sigma(2) / SCATTER - 1.0).abs() < 0.06, "{} {}", mean(2), sigma(2));
        let curve = Curve { corners: vec![[0.3, 0.0], [1.0, 0.3], [2.0, 1.1]] };
        let left = draws.iter().map(|d| hand.left_of(&curve, 1.2, d)).sum::<f64>() / n;
        assert!((left - hand.leaves(&curve, 1.2)[0]).abs() < 0.02, "{left} {:?}", hand.leaves(&curve, 1.2));
    }
}
