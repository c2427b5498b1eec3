//! Before and after: a later reading laid on an earlier one, and a whole repair as a series.

use crate::kept::KeptReading;
use dentwright_surface::{
    Change, ChangeSettings, Laying, Map, Measured, Residual, change, lay_by_shape, lay_by_tags, residual,
};
use thiserror::Error;

/// Two readings of one damage, laid on each other.
#[derive(Debug, Clone)]
pub struct Compared {
    /// How the earlier one lies on the later one.
    pub laying: Laying,
    /// What changed.
    pub change: Change,
    /// What was left before, on what both read.
    pub before: Residual,
    /// What is left now, on what both read.
    pub after: Residual,
}

/// Why two readings cannot be compared.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum CompareError {
    /// Neither tags nor texture say how they lie.
    #[error(
        "fewer than three tags stayed where they were, and the paint's texture does not tell how the two readings lie on each other"
    )]
    NotLaid,
    /// They lie beside each other.
    #[error("the two readings show different places")]
    NothingCommon,
    /// Heights of unknown scale.
    #[error("the {which} reading's heights are relative only")]
    Relative {
        /// `earlier` or `later`.
        which: &'static str,
    },
}

impl CompareError {
    /// Short stable name.
    #[must_use]
    pub fn code(&self) -> &'static str {
        match self {
            Self::NotLaid => "not_laid",
            Self::NothingCommon => "nothing_common",
            Self::Relative { .. } => "relative",
        }
    }

    /// What to do next.
    #[must_use]
    pub fn next(&self) -> &'static str {
        match self {
            Self::NotLaid => {
                "Leave at least three tags stuck through the whole repair; check that both readings are of one damage."
            }
            Self::NothingCommon => "Choose two readings of the same damage.",
            Self::Relative { .. } => "Compare readings from a screen or a slid board.",
        }
    }
}

/// Share of the later reading that must be in the earlier one too.
const LEAST_COMMON: f64 = 0.02;

/// How an earlier reading lies on a later one: by the tags that stayed, else by the paint's texture.
///
/// # Errors
/// Where neither tells.
pub fn lay(earlier: &KeptReading, later: &KeptReading) -> Result<Laying, CompareError> {
    lay_by_tags(&earlier.tags(), &later.tags())
        .or_else(|| lay_by_shape(&earlier.deviation, &later.deviation))
        .ok_or(CompareError::NotLaid)
}

/// Compares a later reading with an earlier one.
///
/// # Errors
/// Where they cannot be laid on each other, have nothing in common, or no scale.
pub fn compare(earlier: &KeptReading, later: &KeptReading) -> Result<Compared, CompareError> {
    for (which, one) in [("earlier", earlier), ("later", later)] {
        if one.file.scale != "absolute" {
            return Err(CompareError::Relative { which });
        }
    }
    let laying = lay(earlier, later)?;
    let settings = ChangeSettings::default();
    let change = change(earlier.measured(), later.measured(), &laying, &settings);
    if change.common_fraction < LEAST_COMMON {
        return Err(CompareError::NothingCommon);
    }
    let common: Vec<bool> = change.map.values.iter().map(|v| v.is_finite()).collect();
    let sigma = laying.laid(&earlier.sigma, later.deviation.grid);
    let left = |deviation: &Map, sigma: &Map| {
        let (deviation, sigma) = (only(deviation, &common), only(sigma, &common));
        residual(Measured { deviation: &deviation, sigma: &sigma }, &settings)
    };
    let (before, after) = (left(&change.before, &sigma), left(&later.deviation, &later.sigma));
    Ok(Compared { laying, change, before, after })
}

/// A reading in a series.
#[derive(Debug, Clone)]
pub struct SeriesStep {
    /// How it lies on the last one; none where that cannot be told.
    pub laying: Option<Laying>,
    /// What was left of the damage, on what all readings that were laid have in common; of one that was not laid,
    /// on all it read.
    pub residual: Residual,
}

/// A whole repair: readings of one damage, oldest first, laid on the last.
#[must_use]
pub fn series(readings: &[KeptReading]) -> Vec<SeriesStep> {
    let Some(last) = readings.last() else { return Vec::new() };
    let grid = last.deviation.grid;
    let settings = ChangeSettings::default();
    let layings: Vec<Option<Laying>> = readings.iter().map(|one| lay(one, last).ok()).collect();
    let laid: Vec<Option<(Map, Map)>> = readings
        .iter()
        .zip(&layings)
        .map(|(one, laying)| laying.map(|l| (l.laid(&one.deviation, grid), l.laid(&one.sigma, grid))))
        .collect();
    let common: Vec<bool> =
        (0..grid.len()).map(|i| laid.iter().flatten().all(|(d, _)| d.values[i].is_finite())).collect();
    let step = |k: usize| {
        let residual = match &laid[k] {
            None => residual(readings[k].measured(), &settings),
            Some((deviation, sigma)) => {
                let (deviation, sigma) = (only(deviation, &common), only(sigma, &common));
                residual(Measured { deviation: &deviation, sigma: &sigma }, &settings)
            }
        };
        SeriesStep { laying: layings[k], residual }
    };
    (0..readings.len()).map(step).collect()
}

/// A map on some of its cells.
fn only(map: &Map, cells: &[bool]) -> Map {
    let value = |(v, on): (&f32, &bool)| if *on { *v } else { f32::NAN };
    Map { grid: map.grid, values: map.values.iter().zip(cells).map(value).collect() }
}
