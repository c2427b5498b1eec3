//! How the yield stress grows with plastic strain.

use serde::{Deserialize, Serialize};

/// Flow stress of one uniaxial pull against logarithmic plastic strain; stresses in MPa.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum Hardening {
    /// `K (ε₀ + p)ⁿ`, with `ε₀` such that it starts at the yield stress (Swift 1952).
    Swift {
        /// K.
        k_mpa: f64,
        /// n.
        n: f64,
        /// Stress at which plastic strain starts.
        yield_mpa: f64,
    },
    /// `Y + Q (1 − e^(−b p))` (Voce 1948).
    Voce {
        /// Y.
        yield_mpa: f64,
        /// Q, what hardening adds in the end.
        #[serde(alias = "sat_mpa")]
        q_mpa: f64,
        /// b, how fast it comes.
        b: f64,
    },
    /// `Y + H p`; `H = 0` is the perfectly plastic metal.
    Linear {
        /// Y.
        yield_mpa: f64,
        /// H.
        #[serde(default, alias = "modulus_mpa", alias = "hardening_mpa")]
        h_mpa: f64,
    },
    /// Straight between `[plastic strain, stress]` pairs, level after the last.
    Table {
        /// Pairs in growing strain, the first at zero strain.
        #[serde(alias = "table", alias = "rows")]
        points: Vec<[f64; 2]>,
    },
    /// Never yields.
    Elastic,
}

impl Hardening {
    /// Stress at which the first plastic strain appears, MPa; infinite for [`Hardening::Elastic`].
    pub fn yield_mpa(&self) -> f64 {
        match self {
            Self::Swift { yield_mpa, .. } | Self::Voce { yield_mpa, .. } | Self::Linear { yield_mpa, .. } => *yield_mpa,
            Self::Table { points } => points[0][1],
            Self::Elastic => f64::INFINITY,
        }
    }

    /// Flow stress and its slope at plastic strain `p`, MPa.
    pub fn at(&self, p: f64) -> (f64, f64) {
        self.past_onset(self.onset(), p)
    }

    /// `ε₀` of Swift's curve; zero for the others.
    pub(crate) fn onset(&self) -> f64 {
        match self {
            Self::Swift { k_mpa, n, yield_mpa } => (yield_mpa / k_mpa).powf(1.0 / n),
            _ => 0.0,
        }
    }

    /// [`Hardening::at`] where [`Hardening::onset`] is at hand: found once for many layers.
    pub(crate) fn past_onset(&self, onset: f64, p: f64) -> (f64, f64) {
        match self {
            Self::Swift { yield_mpa, n, .. } if p == 0.0 => (*yield_mpa, n * yield_mpa / onset),
            Self::Swift { k_mpa, n, .. } => {
                let base = onset + p;
                let stress = k_mpa * base.powf(*n);
                (stress, n * stress / base)
            }
            Self::Voce { yield_mpa, q_mpa, b } => {
                let left = q_mpa * (-b * p).exp();
                (yield_mpa + q_mpa - left, b * left)
            }
            Self::Linear { yield_mpa, h_mpa } => (yield_mpa + h_mpa * p, *h_mpa),
            Self::Table { points } => table(points, p),
            Self::Elastic => (f64::INFINITY, 0.0),
        }
    }

    /// The same curve with all its stresses times `by`.
    pub fn scaled(&self, by: f64) -> Self {
        match self.clone() {
            Self::Swift { k_mpa, n, yield_mpa } => Self::Swift { k_mpa: k_mpa * by, n, yield_mpa: yield_mpa * by },
            Self::Voce { yield_mpa, q_mpa, b } => Self::Voce { yield_mpa: yield_mpa * by, q_mpa: q_mpa * by, b },
            Self::Linear { yield_mpa, h_mpa } => Self::Linear { yield_mpa: yield_mpa * by, h_mpa: h_mpa * by },
            Self::Table { points } => Self::Table { points: points.iter().map(|[p, s]| [*p, s * by]).collect() },
            Self::Elastic => Self::Elastic,
        }
    }

    /// What is wrong with the numbers, if anything.
    pub fn fault(&self) -> Option<&'static str> {
        let sound = match self {
            Self::Swift { k_mpa, n, yield_mpa } => *yield_mpa > 0.0 && k_mpa > yield_mpa && *n > 0.0 && *n <= 1.0,
            Self::Voce { yield_mpa, q_mpa, b } => *yield_mpa > 0.0 && *q_mpa >= 0.0 && *b >= 0.0,
            Self::Linear { yield_mpa, h_mpa } => *yield_mpa > 0.0 && *h_mpa >= 0.0,
            Self::Table { points } => {
                points.first().is_some_and(|first| first[0] == 0.0 && first[1] > 0.0)
                    && points.windows(2).all(|w| w[1][0] > w[0][0] && w[1][1] >= w[0][1])
            }
            Self::Elastic => true,
        };
        (!sound).then_some("hardening needs a positive yield stress and a curve that does not fall")
    }
}

fn table(points: &[[f64; 2]], p: f64) -> (f64, f64) {
    let after = points.partition_point(|point| point[0] <= p);
    match points.get(after) {
        Some([p1, s1]) => {
            let [p0, s0] = points[after - 1];
            let slope = (s1 - s0) / (p1 - p0);
            (s0 + slope * (p - p0), slope)
        }
        None => (points[points.len() - 1][1], 0.0),
    }
}
