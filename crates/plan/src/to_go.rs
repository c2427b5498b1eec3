//! How much is still to be done where a map stands as it does: about how many moves. What the next move is chosen by.
//!
//! A guess, ours: one move for the place that stands out most and more the farther it does, and one for every patch as
//! large as what a move lifts that is over the limit. Nothing where all of it is within the limit. A high counts a little
//! more, since it was made by going too far and the way back is not tried yet.

use crate::candidates::Candidate;
use crate::hand::Hand;

/// The finish aimed at, share of the limit: readings and hands are not exact.
const WITHIN: f64 = 0.9;
/// What is within the limit counts so much, since what is done beside it raises or lowers it too; and the worst place so much
/// more than as a part of its patch.
const WITHIN_COUNTS: f64 = 0.5;
const WORST: f64 = 1.5;
/// A move that should leave less than this share of the limit is not worth making: hands scatter by more.
const WORTH: f64 = 0.4;
/// What one move lifts, mm².
const LIFTED_MM2: f64 = 700.0;
/// A high for a low.
const HIGH: f64 = 1.05;
/// Cells that a move changes by less than this share of its own are left as they are.
const TOUCHED: f64 = 0.01;
/// Cells that a move changes by more than this share of its own are its place.
const OWN: f64 = 0.5;
/// Share of hands that may leave more than is allowed, and halvings to find the lift.
const OVER: f64 = 0.1;
const HALVINGS: usize = 12;
/// Lifts tried in a row, coarse and then fine.
const LIFTS: usize = 10;

/// A map, cell by cell, mm, and how it is judged.
pub struct ToGo<'a> {
    /// What stands out, mm.
    pub read: &'a [f64],
    /// Finish limit, mm.
    pub limit_mm: f64,
    /// Area of a cell, mm².
    pub cell_mm2: f64,
    /// What one hand in ten may leave, times what the place is off level.
    pub boldness: f64,
}

/// A lift to ask for and what it is expected to come to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Chosen {
    /// Lift, mm.
    pub held_mm: f64,
    /// Moves to go after it, expected.
    pub to_go: f64,
}

impl ToGo<'_> {
    /// Moves to go, about.
    pub fn now(&self) -> f64 {
        let (patch, most) = self.over(self.read.iter().copied());
        patch + WORST * most
    }

    /// The lift between none and `most_mm` from which least is left to do, in the mean over what is not known; none where
    /// nothing would stay.
    pub fn lift(&self, c: &Candidate, hand: &Hand, most_mm: f64) -> Option<Chosen> {
        let square: Vec<usize> = (0..self.read.len()).filter(|i| c.column[*i].abs() > TOUCHED).collect();
        let rest = (0..self.read.len()).filter(|i| c.column[*i].abs() <= TOUCHED).map(|i| self.read[i]);
        let rest = self.over(rest);
        let draws = hand.draws();
        let most_mm = self.not_over(c, hand, &draws, most_mm);
        let after = |held: f64| {
            let one = |draw: &[f64; 3]| {
                let x = hand.left_of(&c.curve, held, draw);
                let (patch, most) = self.over(square.iter().map(|i| self.read[*i] + x * c.column[*i]));
                patch + rest.0 + WORST * most.max(rest.1)
            };
            Chosen { held_mm: held, to_go: draws.iter().map(one).sum::<f64>() / draws.len() as f64 }
        };
        let [gain, share] = hand.mean();
        let least = c.curve.held(WORTH * self.limit_mm / share) / gain;
        let best = |low: f64, high: f64| {
            let all = (1..=LIFTS).map(|k| after(low + (high - low) * k as f64 / LIFTS as f64));
            all.min_by(|a, b| a.to_go.total_cmp(&b.to_go))
        };
        if most_mm <= least {
            return (most_mm > 0.0).then(|| after(most_mm));
        }
        let step = (most_mm - least) / LIFTS as f64;
        let coarse = best(least, most_mm)?;
        let fine = best((coarse.held_mm - step).max(least), (coarse.held_mm + step).min(most_mm))?;
        Some(if fine.to_go < coarse.to_go { fine } else { coarse })
    }

    /// The largest lift up to `most_mm` of which no more than one hand in ten leaves more than [`ToGo::boldness`] allows: beyond
    /// a steep part of its curve a place may come to stand out by more than before.
    fn not_over(&self, c: &Candidate, hand: &Hand, draws: &[[f64; 3]], most_mm: f64) -> f64 {
        let off = |i: usize| if c.column[i].abs() > OWN { -self.read[i] * c.column[i].signum() } else { 0.0 };
        let depth = (0..self.read.len()).map(off).fold(0.0, f64::max);
        let bound = self.boldness * depth + self.limit_mm;
        let over = |held: f64| {
            let far = draws.iter().filter(|draw| hand.left_of(&c.curve, held, draw) > bound).count();
            far as f64 > OVER * draws.len() as f64
        };
        if !over(most_mm) {
            return most_mm;
        }
        let (mut low, mut high) = (0.0, most_mm);
        for _ in 0..HALVINGS {
            let middle = 0.5 * (low + high);
            if over(middle) { high = middle } else { low = middle }
        }
        low
    }

    /// Patches that stand out, weighed by how far, and the same of the worst place where it is over the limit.
    fn over(&self, cells: impl Iterator<Item = f64>) -> (f64, f64) {
        let (mut patch, mut most) = (0.0, 0.0f64);
        for v in cells {
            let u = v.abs() / (WITHIN * self.limit_mm);
            let weight = if v > 0.0 { HIGH } else { 1.0 };
            let one = if u > 1.0 { 1.0 + 2.0 * u.ln() } else { WITHIN_COUNTS * u * u };
            patch += weight * one;
            if u > 1.0 {
                most = most.max(weight * one);
            }
        }
        (patch * self.cell_mm2 / LIFTED_MM2, most)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::curve::Curve;

    /// A push that lifts the middle one of three cells by one and its neighbours by `beside`.
    fn push(beside: f64) -> Candidate {
        Candidate::pushed(vec![[1.0, 0.0], [1.5, 0.2], [2.0, 0.5]], vec![beside, 1.0, beside])
    }

    fn to_go(read: &[f64]) -> ToGo<'_> {
        ToGo { read, limit_mm: 0.02, cell_mm2: 100.0, boldness: 1.5 }
    }

    #[test]
    fn deeper_and_wider_is_more_to_go() {
        let now = |read: &[f64]| to_go(read).now();
        assert!(now(&[0.0, 0.01, 0.0]) < 0.05);
        assert!(now(&[0.0, -0.03, 0.0]) > 1.0 && now(&[0.0, -0.3, 0.0]) > 1.0 + now(&[0.0, -0.03, 0.0]));
        assert!(
            now(&[-0.03, -0.03, 0.0]) > now(&[0.0, -0.03, 0.0]) && now(&[0.0, 0.03, 0.0]) > now(&[0.0, -0.03, 0.0])
        );
    }

    #[test]
    fn a_known_hand_asks_for_what_is_missing_and_an_unknown_one_for_less() {
        let read = [0.0, -0.2, 0.0];
        let lift = |sigma: [f64; 2]| to_go(&read).lift(&push(0.0), &Hand::with_doubt(sigma), 2.0).expect("a lift");
        let (known, unknown) = (lift([0.01, 0.01]), lift([0.3, 0.2]));
        assert!((known.held_mm - 1.5).abs() < 0.06, "{known:?}");
        assert!(unknown.held_mm < known.held_mm && unknown.to_go > known.to_go, "{unknown:?}");
    }

    #[test]
    fn a_low_hemmed_in_by_highs_is_lifted_no_farther_than_they_may() {
        let read = [0.016, -0.1, 0.016];
        let lift =
            |beside: f64| to_go(&read).lift(&push(beside), &Hand::with_doubt([0.01, 0.01]), 2.0).expect("a lift");
        assert!(lift(0.5).held_mm < lift(0.0).held_mm - 0.02, "{:?} {:?}", lift(0.5), lift(0.0));
    }

    #[test]
    fn a_steep_part_is_kept_away_from() {
        let read = [0.0, -0.06, 0.0];
        let steep = Candidate { curve: Curve { corners: vec![[1.0, 0.0], [1.5, 0.05], [1.6, 1.5]] }, ..push(0.0) };
        let hand = Hand::with_doubt([0.1, 0.1]);
        let far = |held: f64| {
            let draws = hand.draws();
            let over = draws.iter().filter(|draw| hand.left_of(&steep.curve, held, draw) > 1.5 * 0.06 + 0.02).count();
            over as f64 / draws.len() as f64
        };
        let careful = to_go(&read).lift(&steep, &hand, 1.7).expect("a lift").held_mm;
        assert!(far(careful) <= 0.1 && far(1.1 * careful) > 0.1, "{careful}: {} {}", far(careful), far(1.1 * careful));
        let bold = ToGo { boldness: 40.0, ..to_go(&read) }.lift(&steep, &hand, 1.7).expect("a lift").held_mm;
        assert!(bold > careful, "{bold} {careful}");
    }
}
