//! Depths measured by hand, joined to a kept reading: the reading stays, what comes of it is another.
//!
//! In a hole that was not read the map is filled in as the smoothest shape that meets the hole's rim and the depths
//! ([`dentwright_surface::fill`]); lows, highs and the verdict are then found anew. Where the map was read, a depth
//! changes nothing and is held against it.

use crate::gauge_file::{Agreement, GaugeAsked, GaugeFacts};
use crate::gauge_words::notes;
use crate::holes::{folds, holes};
use crate::kept::KeptReading;
use crate::on_photo::on_photo;
use crate::reading_file::SpotFacts;
use crate::unread::Unread;
use crate::unread_words::unread_facts;
use crate::write::outline;
use dentwright_surface::{Depth, FinishLimit, Map, Spot, SpotSettings, cell_at, fill, find_spots, hole_at, judge};
use std::collections::BTreeMap;
use thiserror::Error;

/// Why a depth cannot join a reading.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum GaugeError {
    /// A number that no gauge gives.
    #[error("{0}")]
    Wrong(&'static str),
    /// Outside what was read, where nothing tells the level.
    #[error("no metal that was read surrounds the place at x {x_mm:.0}, y {y_mm:.0} mm")]
    Outside {
        /// Panel x, mm.
        x_mm: f64,
        /// Panel y, mm.
        y_mm: f64,
    },
    /// A tag is no damage.
    #[error("a tag lies at x {x_mm:.0}, y {y_mm:.0} mm")]
    Tag {
        /// Panel x, mm.
        x_mm: f64,
        /// Panel y, mm.
        y_mm: f64,
    },
    /// The chord between the feet is not known.
    #[error("a foot of the gauge stands at x {x_mm:.0}, y {y_mm:.0} mm, where the panel was not read")]
    Foot {
        /// Panel x, mm.
        x_mm: f64,
        /// Panel y, mm.
        y_mm: f64,
    },
    /// The reading knows no millimetres.
    #[error("the reading is not true to scale")]
    Relative,
}

impl GaugeError {
    /// A stable name.
    #[must_use]
    pub fn code(&self) -> &'static str {
        match self {
            Self::Wrong(_) => "gauge_wrong",
            Self::Outside { .. } => "gauge_outside",
            Self::Tag { .. } => "gauge_tag",
            Self::Foot { .. } => "gauge_foot",
            Self::Relative => "gauge_relative",
        }
    }

    /// What to do next.
    #[must_use]
    pub fn next(&self) -> &'static str {
        match self {
            Self::Wrong(_) => "Give the depth in millimetres as the gauge shows it.",
            Self::Outside { .. } => "Choose a place in a hole that is surrounded by metal that was read.",
            Self::Tag { .. } => "Choose the place on the map where the gauge's tip stood.",
            Self::Foot { .. } => "Use a gauge whose feet stand on metal that was read, or measure against sound metal.",
            Self::Relative => "Read again with tags of known size.",
        }
    }
}

/// The reading that comes of a reading and depths measured on its panel. Give the reading as it was read, with all
/// depths: what was filled in before counts as read.
///
/// # Errors
/// The first depth that cannot be.
pub fn gauged(kept: &KeptReading, asked: &[GaugeAsked]) -> Result<KeptReading, GaugeError> {
    if kept.file.scale != "absolute" {
        return Err(GaugeError::Relative);
    }
    let mut shape = kept.height.less(&kept.deviation);
    let mut by_hole: BTreeMap<usize, (Vec<usize>, Vec<usize>)> = BTreeMap::new();
    for (number, one) in asked.iter().enumerate() {
        one.check()?;
        if let Some(hole) = hole_of(kept, one)? {
            by_hole.entry(hole[0]).or_insert_with(|| (hole, Vec::new())).1.push(number);
        }
    }
    for (hole, _) in by_hole.values() {
        // The intended shape goes on under a hole as smoothly as it is around it.
        let sure = Map { grid: shape.grid, values: vec![0.0; shape.values.len()] };
        let under = fill(&shape, &sure, hole, &[]).ok_or_else(|| outside(&asked[0]))?;
        under.cells.into_iter().for_each(|(i, z, _)| shape.values[i] = z);
    }
    let mut facts = asked.iter().map(|one| held_against(kept, &shape, one)).collect::<Result<Vec<_>, _>>()?;
    let mut joined = kept.clone();
    for (hole, numbers) in by_hole.values() {
        let depths: Vec<Depth> = numbers.iter().map(|&k| depth(&facts[k])).collect();
        let filled = fill(&kept.deviation, &kept.sigma, hole, &depths).ok_or_else(|| outside(&asked[numbers[0]]))?;
        for (i, z, sigma) in filled.cells {
            (joined.deviation.values[i], joined.sigma.values[i]) = (z, sigma);
            joined.height.values[i] = z + shape.values[i];
            joined.unread[i] = Unread::Gauged as u8;
        }
        let area_mm2 = hole.len() as f64 * kept.deviation.grid.step_mm.powi(2);
        numbers.iter().for_each(|&k| facts[k].filled_mm2 = Some(area_mm2));
    }
    joined.file.gauges = facts;
    judge_anew(&mut joined);
    Ok(joined)
}

/// The hole that a depth was measured in; none where the map was read.
fn hole_of(kept: &KeptReading, one: &GaugeAsked) -> Result<Option<Vec<usize>>, GaugeError> {
    let (x_mm, y_mm) = (one.x_mm, one.y_mm);
    let cell = cell_at(&kept.deviation.grid, x_mm, y_mm).ok_or_else(|| outside(one))?;
    if kept.unread[cell] == Unread::Tag as u8 {
        return Err(GaugeError::Tag { x_mm, y_mm });
    }
    if kept.deviation.values[cell].is_finite() {
        return Ok(None);
    }
    hole_at(&kept.deviation, x_mm, y_mm).map(Some).ok_or_else(|| outside(one))
}

fn outside(one: &GaugeAsked) -> GaugeError {
    GaugeError::Outside { x_mm: one.x_mm, y_mm: one.y_mm }
}

fn depth(of: &GaugeFacts) -> Depth {
    let GaugeAsked { x_mm, y_mm, .. } = of.asked;
    Depth { x_mm, y_mm, height_mm: of.against_shape_mm, sigma_mm: of.sigma_mm }
}

/// A depth against the intended shape, and against the map where that was read.
fn held_against(kept: &KeptReading, shape: &Map, one: &GaugeAsked) -> Result<GaugeFacts, GaugeError> {
    let own = 0.5 * one.doubt_mm;
    let (against_shape_mm, sigma_mm) = if one.span_mm > 0.0 {
        let feet = one.feet().map(|(x, y)| {
            let foot = kept.height.sample(x, y).zip(kept.sigma.sample(x, y));
            foot.ok_or(GaugeError::Foot { x_mm: x, y_mm: y })
        });
        let [(a, sa), (b, sb)] = [feet[0].clone()?, feet[1].clone()?];
        let under = shape.sample(one.x_mm, one.y_mm).ok_or_else(|| outside(one))?;
        (one.height_mm + 0.5 * (a + b) - under, own.hypot(0.5 * sa.hypot(sb)))
    } else {
        (one.height_mm, own)
    };
    let cell = cell_at(&kept.deviation.grid, one.x_mm, one.y_mm);
    let map = cell.map(|i| (f64::from(kept.deviation.values[i]), f64::from(kept.sigma.values[i])));
    let map = map.filter(|(d, s)| d.is_finite() && s.is_finite());
    Ok(GaugeFacts {
        asked: *one,
        against_shape_mm,
        sigma_mm,
        map_mm: map.map(|m| m.0),
        map_sigma_mm: map.map(|m| m.1),
        agrees: map.map(|(d, s)| Agreement::of((against_shape_mm - d) / sigma_mm.hypot(s))),
        filled_mm2: None,
    })
}

/// Holes, lows and highs, verdict and remarks of maps that were filled in.
fn judge_anew(kept: &mut KeptReading) {
    let limit = finish_limit(kept);
    let folds = folds(&kept.deviation, &kept.sigma, &kept.unread);
    let mut spots = find_spots(&kept.deviation, &kept.sigma, &folds, &spot_settings(&kept.file.settings));
    spots.retain(|spot| told(kept, spot));
    let holes = holes(&kept.unread, &kept.deviation.grid, limit.scale_mm);
    let (finish, of_spots) = judge(&kept.deviation, &kept.sigma, &spots, &holes, &limit);
    let to_photo = |x: f64, y: f64| on_photo(kept, [x, y]).unwrap_or_default();
    let spots = spots.into_iter().zip(of_spots).map(|(spot, finish)| SpotFacts {
        finish: Some(finish),
        at_px: to_photo(spot.x_mm, spot.y_mm),
        outline_px: outline(&spot).map(|(x, y)| to_photo(x, y)).collect(),
        spot,
    });
    let spots = spots.collect();
    let file = &mut kept.file;
    (file.spots, file.folds, file.finish) = (spots, folds, finish);
    file.unread = unread_facts(&kept.unread);
    if !kept.unread.contains(&(Unread::Folded as u8)) {
        file.notes.retain(|note| note.code != "folded");
    }
    file.notes.extend(notes(&file.gauges));
}

/// Whether a spot was read or measured: what is filled in away from every depth is too uncertain to be one of its own.
fn told(kept: &KeptReading, spot: &Spot) -> bool {
    let top = cell_at(&kept.deviation.grid, spot.x_mm, spot.y_mm);
    let filled = top.is_some_and(|i| kept.unread[i] == Unread::Gauged as u8);
    let measured = |one: &GaugeFacts| {
        (one.asked.x_mm - spot.x_mm).hypot(one.asked.y_mm - spot.y_mm) <= 0.5 * spot.length_mm
            && one.filled_mm2.is_some()
    };
    !filled || kept.file.gauges.iter().any(measured)
}

fn finish_limit(kept: &KeptReading) -> FinishLimit {
    let (finish, usual) = (&kept.file.finish, FinishLimit::default());
    FinishLimit {
        depth_mm: finish.limit_mm,
        slope: finish.slope_limit.unwrap_or(usual.slope),
        scale_mm: finish.scale_mm.unwrap_or(usual.scale_mm),
    }
}

/// What counted as a spot when the reading was made.
fn spot_settings(settings: &serde_json::Value) -> SpotSettings {
    let usual = SpotSettings::default();
    let told = |name: &str, usual: f64| settings["spots"][name].as_f64().unwrap_or(usual);
    SpotSettings {
        least_mm: told("least_mm", usual.least_mm),
        sigmas: told("sigmas", usual.sigmas),
        average_mm: told("average_mm", usual.average_mm),
        least_mm2: told("least_mm2", usual.least_mm2),
    }
}
