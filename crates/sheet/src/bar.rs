//! A bar over a fulcrum: what the tip gives for what the hand gives, and how far the bar bends.
//!
//! A bent beam of straight lengths, statically determinate: the hand's force and the tip's balance about the
//! fulcrum; the bar's bending follows from the moment along it (Euler and Bernoulli; Castigliano's theorem).

use serde::{Deserialize, Serialize};

/// Cross-section of a bar.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum BarSection {
    /// Solid and round.
    Round {
        /// Diameter, mm.
        diameter_mm: f64,
    },
    /// A flat, bent the way `height_mm` stands.
    Flat {
        /// Across the bending, mm.
        width_mm: f64,
        /// Along the bending, mm.
        height_mm: f64,
    },
}

impl BarSection {
    /// Second moment of area, mm⁴, and section modulus, mm³.
    pub fn moments(&self) -> (f64, f64) {
        match *self {
            Self::Round { diameter_mm: d } => {
                let i = std::f64::consts::PI * d.powi(4) / 64.0;
                (i, 2.0 * i / d)
            }
            Self::Flat { width_mm: w, height_mm: h } => {
                let i = w * h.powi(3) / 12.0;
                (i, 2.0 * i / h)
            }
        }
    }
}

/// A straight length of a bar.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema), schema(as = BarLength))]
pub struct Length {
    /// Where it ends, mm, in the plane the bar is bent in; it starts where the one before ended.
    pub to_mm: [f64; 2],
    /// Its section.
    pub section: BarSection,
}

/// A bar in the plane in which it is worked. The tip pushes along y.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Bar {
    /// Where the tip is, mm.
    pub tip_mm: [f64; 2],
    /// Lengths from the tip to the hand's end.
    pub lengths: Vec<Length>,
    /// Young's modulus, MPa.
    pub e_mpa: f64,
    /// Yield stress, MPa.
    pub yield_mpa: f64,
}

/// What a bar does.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Leverage {
    /// Force of the tip, N.
    pub tip_force_n: f64,
    /// Force on the fulcrum, N.
    pub fulcrum_force_n: f64,
    /// Tip's force a force of the hand.
    pub advantage: f64,
    /// How far the hand goes for the bar's own bending alone, mm.
    pub hand_lost_mm: f64,
    /// How far the tip goes when the hand goes `hand_travel_mm`, mm.
    pub tip_travel_mm: f64,
    /// Largest stress in the bar, MPa.
    pub stress_mpa: f64,
    /// That stress over the yield stress: at one the bar stays bent.
    pub used: f64,
}

/// A fulcrum that is not on the way from the tip to the hand.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[error("the fulcrum must lie between tip and hand, away from both")]
pub struct NoLever;

impl Bar {
    /// Leverage for a force of the hand along y at the bar's end, over a fulcrum at `fulcrum_x_mm`, when the hand goes
    /// `hand_travel_mm`.
    pub fn leverage(&self, hand_force_n: f64, hand_travel_mm: f64, fulcrum_x_mm: f64) -> Result<Leverage, NoLever> {
        let hand_x = self.lengths.last().ok_or(NoLever)?.to_mm[0];
        let (arm, load) = ((hand_x - fulcrum_x_mm).abs(), (self.tip_mm[0] - fulcrum_x_mm).abs());
        let between = (hand_x - fulcrum_x_mm) * (self.tip_mm[0] - fulcrum_x_mm) < 0.0;
        if !(arm > 0.0 && load > 0.0 && between) {
            return Err(NoLever);
        }
        let advantage = arm / load;
        let tip_force = hand_force_n * advantage;
        let (energy, stress) = self.bending(tip_force, hand_force_n, fulcrum_x_mm);
        // the hand's work in bending the bar, force times way over two
        let lost = if hand_force_n > 0.0 { 2.0 * energy / hand_force_n } else { 0.0 };
        Ok(Leverage {
            tip_force_n: tip_force,
            fulcrum_force_n: tip_force + hand_force_n,
            advantage,
            hand_lost_mm: lost,
            tip_travel_mm: (hand_travel_mm - lost) / advantage,
            stress_mpa: stress,
            used: stress / self.yield_mpa,
        })
    }

    /// Energy of bending, N mm, and largest stress, MPa: the moment is the load's lever arm in x on either side.
    fn bending(&self, tip_force: f64, hand_force: f64, fulcrum_x: f64) -> (f64, f64) {
        let side = (self.tip_mm[0] - fulcrum_x).signum();
        let hand_x = self.lengths[self.lengths.len() - 1].to_mm[0];
        let moment = |x: f64| {
            if (x - fulcrum_x) * side >= 0.0 {
                tip_force * (self.tip_mm[0] - x).abs()
            } else {
                hand_force * (hand_x - x).abs()
            }
        };
        let (mut energy, mut stress) = (0.0, 0.0f64);
        let mut from = self.tip_mm;
        for length in &self.lengths {
            let (i, modulus) = length.section.moments();
            let [dx, dy] = [length.to_mm[0] - from[0], length.to_mm[1] - from[1]];
            // the moment turns its course at the fulcrum; on either side it is straight, so Simpson is exact
            let turn = if dx != 0.0 { ((fulcrum_x - from[0]) / dx).clamp(0.0, 1.0) } else { 0.0 };
            for [a, b] in [[0.0, turn], [turn, 1.0]] {
                let at = |s: f64| moment(from[0] + dx * s);
                let (m0, m1, m2) = (at(a), at(0.5 * (a + b)), at(b));
                energy += (b - a) * dx.hypot(dy) / 6.0 * (m0 * m0 + 4.0 * m1 * m1 + m2 * m2) / (2.0 * self.e_mpa * i);
                stress = stress.max(m0.max(m2) / modulus);
            }
            from = length.to_mm;
        }
        (energy, stress)
    }
}
