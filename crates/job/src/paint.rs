//! Paint readings of a car, each panel held against the same car's others.
//!
//! A panel's value is the median of its readings. The others' median and their median absolute deviation
//! (MAD) say what is usual on this car; a panel stands out where its modified z-score
//! `0.6745 (x − median) / MAD` is beyond 3.5 (B. Iglewicz, D. C. Hoaglin, How to Detect and Handle Outliers,
//! ASQC 1993). The panel itself is left out of what it is compared with, so that one repainted panel of few
//! does not hide itself. Films of one car differ by some µm even as they left the factory, and hand gauges
//! read a few µm apart: a MAD below 8 µm counts as 8 (common practice, no published source). It says that a
//! panel differs, never why.

use crate::Panel;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use uuid::Uuid;

/// Beyond this modified z-score a value stands out (Iglewicz and Hoaglin 1993).
const STANDS_OUT: f64 = 3.5;
/// 0.75 quantile of the normal distribution, by which a MAD becomes a standard deviation.
const QUANTILE: f64 = 0.6745;
/// Least spread that is believed, µm; common practice, no published source.
const LEAST_MAD_UM: f64 = 8.0;
/// Fewest other panels that make a comparison.
const FEWEST_OTHERS: usize = 3;
/// What gauges show, µm: above, filler and not a reading of paint.
const MOST_UM: f64 = 5_000.0;

/// A reading of the paint gauge.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct PaintReading {
    /// Its id.
    pub id: Uuid,
    /// On which panel.
    pub panel: Panel,
    /// Thickness of the film, µm.
    pub um: f64,
}

/// A thickness that is none.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("the paint reading is {0} µm, but must be over 0 and at most 5000")]
pub struct PaintError(pub f64);

impl PaintReading {
    /// Checks that it is a thickness.
    ///
    /// # Errors
    /// When it is not over 0 and at most 5000 µm.
    pub fn check(&self) -> Result<(), PaintError> {
        if self.um > 0.0 && self.um <= MOST_UM { Ok(()) } else { Err(PaintError(self.um)) }
    }
}

/// A panel's paint beside the car's other panels.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct PanelPaint {
    /// Which panel.
    pub panel: Panel,
    /// Median of its readings, µm.
    pub um: f64,
    /// How many readings.
    pub readings: usize,
    /// Median of the other panels, µm; none where none was read.
    #[cfg_attr(feature = "schema", schema(required))]
    pub others_um: Option<f64>,
    /// How far the other panels lie from their median in the middle, µm.
    #[cfg_attr(feature = "schema", schema(required))]
    pub spread_um: Option<f64>,
    /// What that says.
    pub says: PaintSays,
}

/// What a panel's paint says beside the others.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum PaintSays {
    /// As the others.
    Usual,
    /// Thicker than the others: painted over or filled, perhaps.
    Thick,
    /// Thinner than the others: polished or sanded, perhaps.
    Thin,
    /// Too few other panels were read.
    TooFew,
}

/// Every panel that was read, in the order of the panels.
///
/// ```
/// use dentwright_job::{PaintReading, PaintSays, Panel, judge_paint};
/// let read = |panel, um| PaintReading { id: uuid::Uuid::nil(), panel, um };
/// let car = [
///     read(Panel::Bonnet, 262.0), read(Panel::Roof, 118.0), read(Panel::FrontDoorLeft, 124.0), read(Panel::BootLid, 112.0),
/// ];
/// let judged = judge_paint(&car);
/// // The others: median 118, MAD 6, believed as 8; 0.6745 (262 − 118) / 8 = 12.1 > 3.5
/// assert_eq!((judged[0].says, judged[0].others_um), (PaintSays::Thick, Some(118.0)));
/// assert_eq!(judged[1].says, PaintSays::Usual);
/// ```
#[must_use]
pub fn judge_paint(readings: &[PaintReading]) -> Vec<PanelPaint> {
    let mut of_panel: BTreeMap<Panel, Vec<f64>> = BTreeMap::new();
    for reading in readings {
        of_panel.entry(reading.panel).or_default().push(reading.um);
    }
    let counts: BTreeMap<Panel, usize> = of_panel.iter().map(|(panel, all)| (*panel, all.len())).collect();
    let medians: Vec<(Panel, f64)> =
        of_panel.into_iter().filter_map(|(panel, all)| Some((panel, median(all)?))).collect();
    let judged = medians.iter().map(|(panel, um)| {
        let others: Vec<f64> = medians.iter().filter(|(other, _)| other != panel).map(|(_, um)| *um).collect();
        judge(*panel, *um, counts[panel], &others)
    });
    judged.collect()
}

fn judge(panel: Panel, um: f64, readings: usize, others: &[f64]) -> PanelPaint {
    let others_um = median(others.to_vec());
    let spread_um = others_um.and_then(|middle| median(others.iter().map(|other| (other - middle).abs()).collect()));
    let says = match (others_um, spread_um) {
        (Some(middle), Some(mad)) if others.len() >= FEWEST_OTHERS => {
            let z = QUANTILE * (um - middle) / mad.max(LEAST_MAD_UM);
            match z {
                _ if z > STANDS_OUT => PaintSays::Thick,
                _ if z < -STANDS_OUT => PaintSays::Thin,
                _ => PaintSays::Usual,
            }
        }
        _ => PaintSays::TooFew,
    };
    PanelPaint { panel, um, readings, others_um, spread_um, says }
}

fn median(mut values: Vec<f64>) -> Option<f64> {
    values.sort_by(f64::total_cmp);
    let middle = values.len() / 2;
    match values.len() {
        0 => None,
        many if many % 2 == 1 => Some(values[middle]),
        _ => Some(f64::midpoint(values[middle - 1], values[middle])),
    }
}
