//! What a sheet keeps of what it is given.

use serde::{Deserialize, Serialize};

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
    pub(crate) fn scatter(&self, held: f64, share: f64) -> f64 {
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
