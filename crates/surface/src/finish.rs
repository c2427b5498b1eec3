//! Done, not done, or cannot tell: the residual against a finish limit, doubt counted.

use crate::grid::Map;
use serde::{Deserialize, Serialize};

/// The answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub enum Verdict {
    /// Every cell is within the limit, doubt counted.
    #[serde(rename = "done")]
    Done,
    /// Some place is surely over it.
    #[serde(rename = "not done")]
    NotDone,
    /// The doubt straddles the limit.
    #[serde(rename = "cannot tell")]
    CannotTell,
}

/// Verdict with its reason in plain words.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Finish {
    /// The limit, mm.
    pub limit_mm: f64,
    /// The answer.
    pub verdict: Verdict,
    /// Why.
    pub reason: String,
}

/// Judges a deviation map (already averaged over the finish scale) against a limit, two sigma each way.
pub fn judge(deviation: &Map, sigma: &Map, limit_mm: f64) -> Finish {
    let um = |mm: f64| mm * 1000.0;
    let cells = deviation.values.iter().zip(&sigma.values).filter(|(d, s)| d.is_finite() && s.is_finite());
    let (mut surely, mut maybe, mut at) = (0.0f64, 0.0f64, 0.0f64);
    for (d, s) in cells {
        let (d, s) = (f64::from(d.abs()), f64::from(*s));
        surely = surely.max(d - 2.0 * s);
        maybe = maybe.max(d + 2.0 * s);
        at = at.max(d);
    }
    let limit = um(limit_mm);
    let (verdict, reason) = if surely > limit_mm {
        (Verdict::NotDone, format!("the largest residual is {:.0} µm, over the limit of {limit:.0} µm", um(at)))
    } else if maybe <= limit_mm {
        (
            Verdict::Done,
            format!("nothing stands out by more than {:.0} µm, doubt counted; the limit is {limit:.0} µm", um(maybe)),
        )
    } else {
        (
            Verdict::CannotTell,
            format!(
                "the largest residual is {:.0} µm and could be up to {:.0} µm; the limit is {limit:.0} µm",
                um(at),
                um(maybe)
            ),
        )
    };
    Finish { limit_mm, verdict, reason }
}
