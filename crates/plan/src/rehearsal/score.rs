//! How a rehearsal went: reading, precision, moves, strain spent.

use dentwright_surface::Map;
use serde::{Deserialize, Serialize};

/// Low or high.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema), schema(as = ClaimedHeight))]
#[serde(rename_all = "snake_case")]
pub enum Height {
    /// Below the true surface.
    Low,
    /// Above it.
    High,
}

/// What a learner read off the lines.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Claim {
    /// Where, x, mm.
    pub x_mm: f64,
    /// Where, y, mm.
    pub y_mm: f64,
    /// What stands there.
    pub height: Height,
}

/// The score.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema), schema(as = RehearsalScore))]
pub struct Score {
    /// Share of what was read that is so; none where nothing was read off.
    pub reading: Option<f64>,
    /// Middle distance of a tip from the nearest place that stood out most its way, mm; none without moves.
    pub aim_off_mm: Option<f64>,
    /// Moves made.
    pub moves: usize,
    /// Of these from the front.
    pub from_front: usize,
    /// Plastic strain added by the work, most worked layer.
    pub strain_spent: f64,
    /// Largest deviation left, µm.
    pub left_um: f64,
    /// What counts as done, µm.
    pub finish_um: f64,
    /// Whether that was reached.
    pub finished: bool,
    /// Moves on which the sheet snapped.
    pub snaps: usize,
    /// Whether the paint cracked.
    pub cracked: bool,
}

/// Nearer than this to a place that stands out, mm, a claim is about it.
const NEAR_MM: f64 = 8.0;

/// Whether each claim is so: within eight millimetres something stands out that way by more than `least_mm`, and more than
/// anything does the other way.
#[must_use]
pub fn read_right(claims: &[Claim], deviation: &Map, least_mm: f64) -> Vec<bool> {
    let so = |claim: &Claim| {
        let near = (0..deviation.grid.len()).filter(|&i| {
            let (x, y) = deviation.grid.position(i);
            (x - claim.x_mm).hypot(y - claim.y_mm) <= NEAR_MM
        });
        let (low, high) =
            near.map(|i| f64::from(deviation.values[i])).fold((0.0f64, 0.0f64), |(l, h), v| (l.min(v), h.max(v)));
        match claim.height {
            Height::Low => -low > least_mm && -low > high,
            Height::High => high > least_mm && high > -low,
        }
    };
    claims.iter().map(so).collect()
}

/// Middle value; none of nothing.
pub(super) fn middle(mut all: Vec<f64>) -> Option<f64> {
    all.sort_by(f64::total_cmp);
    all.get(all.len() / 2).copied()
}

#[cfg(test)]
mod tests {
    use super::*;
    use dentwright_surface::Grid;

    #[test]
    fn a_claim_is_right_by_sign_and_place() {
        let grid = Grid { x0_mm: -30.0, y0_mm: -30.0, step_mm: 1.0, nx: 61, ny: 61 };
        let bump = |x: f64, y: f64, at: f64| (-((x - at).powi(2) + y * y) / 30.0).exp();
        let map = Map::from_fn(grid, |x, y| 0.3 * bump(x, y, 15.0) - 0.5 * bump(x, y, -15.0));
        let claim = |x_mm: f64, height| Claim { x_mm, y_mm: 2.0, height };
        let claims = [
            claim(-15.0, Height::Low),
            claim(-15.0, Height::High),
            claim(17.0, Height::High),
            claim(0.0, Height::High),
        ];
        assert_eq!(read_right(&claims, &map, 0.05), [true, false, true, false]);
    }
}
