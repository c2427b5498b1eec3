//! From a reading to what the metal holds: stretch, tension, oil can, each with its doubt.

use crate::metal_facts::Found;
use crate::metal_file::{Check, MetalFile, SheetFacts};
use crate::panel_curve::panel_curve;
use dentwright_sheet::{
    Dent, DentSettings, Goal, Hold, Kind, Layer, Metal, MetalRow, Move, NotWorked, Range, Remains, Springs, Tip,
    dent_state, give_map, layer_map, metals, oil_can, perform, quick, remains,
};
use dentwright_surface::{Grid, Map};
use rayon::prelude::*;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};

/// What is known about the sheet.
#[derive(Debug, Clone)]
pub struct MetalSettings {
    /// Name of the metal on file.
    pub metal: String,
    /// Thickness as measured, mm; none where it is not known.
    pub thickness_mm: Option<f64>,
    /// Middle of the damage in the reading's frame, mm.
    pub at_mm: [f64; 2],
    /// Its longest extent, mm.
    pub length_mm: f64,
}

/// No state can be had.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum MetalError {
    /// Not on file.
    #[error("no metal on file is called {0}")]
    NoSuchMetal(String),
    /// Not a sheet.
    #[error("a thickness of {0} mm is not a panel's: give 0.3 to 3 mm")]
    Thickness(f64),
    /// The work stopped.
    #[error(transparent)]
    NotWorked(#[from] NotWorked),
}

/// A metal's state in memory.
pub struct KnownMetal {
    /// The numbers.
    pub facts: MetalFile,
    /// The maps, by the names in the facts.
    pub maps: Vec<(&'static str, Map)>,
    /// The dent, to try moves on.
    pub dent: Dent,
}

/// Widest thickness doubt of a reading by gauge, mm.
const GAUGE_MM: f64 = 0.03;
/// Step of the maps, mm.
const STEP_MM: f64 = 1.5;
/// Cells of the variants, in usual ones.
const COARSER: f64 = 1.7;
/// A move tried in full, to say how far the quick answer is off: travel in thicknesses.
const CHECKED_TRAVEL: f64 = 3.0;
/// Places each way at which the sheet's give is asked.
const GIVES: usize = 21;

/// Maps of a metal, by name.
const MAPS: [(&str, Layer); 5] = [
    ("stretch", Layer::Stretch),
    ("tension", Layer::Tension),
    ("bent_outer", Layer::BentOuter),
    ("bent_inner", Layer::BentInner),
    ("direction", Layer::Direction),
];

/// Share done at the end of each part of the work.
const DONE: [f64; 5] = [0.35, 0.7, 0.8, 0.92, 1.0];

/// What the metal of a reading holds. `progress` hears the share done.
pub fn know_metal(
    height: &Map,
    deviation: &Map,
    sigma: &Map,
    settings: &MetalSettings,
    progress: &(dyn Fn(f64) + Sync),
    cancel: &AtomicBool,
) -> Result<KnownMetal, MetalError> {
    let row = row(settings)?;
    let thickness = thickness(&row, settings)?;
    let half = (1.6 * settings.length_mm).clamp(45.0, 110.0);
    let (curvature, off_mm) = panel_curve(height, deviation, settings.at_mm, half);
    let go_on = |part: usize, share: f64| {
        let from = if part == 0 { 0.0 } else { DONE[part - 1] };
        progress(from + (DONE[part] - from) * share);
        !cancel.load(Ordering::Relaxed)
    };
    let state = |metal: Metal, t: f64, coarser: f64, hear: &dyn Fn(f64) -> bool| {
        let hold = Hold::Spring(Springs::rest_of_curved_panel(2.0 * half, t, &metal));
        let settings_of = DentSettings { metal, thickness_mm: t, curvature, half_mm: half, hold, coarser };
        dent_state(deviation, sigma, settings.at_mm, &settings_of, hear)
    };
    let dent = state(row.likely(), thickness.likely, 1.0, &|s| go_on(0, s))?;
    // of a sheet that is held nothing hangs on what the metal takes
    let variants = if dent.held.is_none() { variants(&row, &thickness) } else { Vec::new() };
    let ended = AtomicUsize::new(0);
    let one = |(metal, t): &(Metal, f64)| {
        let hear = |_| go_on(1, ended.load(Ordering::Relaxed) as f64 / variants.len() as f64);
        let found = unless_stopped(state(metal.clone(), *t, COARSER, &hear));
        ended.fetch_add(1, Ordering::Relaxed);
        Ok(found?.filter(|dent| dent.held.is_none()))
    };
    let tried = variants.par_iter().map(one).collect::<Result<Vec<_>, NotWorked>>()?;
    let now = if dent.held.is_none() { oil_can(&dent.panel) } else { None };
    let level = match dent.held {
        None => unless_stopped(dent.level(&|s| go_on(3, 0.8 * s)))?.and_then(|dent| oil_can(&dent.panel)),
        // let go it springs back
        Some(_) => dent.recipe.panel().and_then(|panel| oil_can(&panel)),
    };
    if !go_on(4, 0.0) {
        return Err(NotWorked::Cancelled.into());
    }
    let check = if dent.held.is_none() { check(&dent) } else { None };
    let points = remains(&dent.panel);
    let grid = map_grid(settings.at_mm, half);
    let map = |(name, layer)| (name, layer_map(&dent.panel, &points, layer, grid, settings.at_mm));
    let maps = MAPS.into_iter().map(map).collect();
    let sheet = SheetFacts {
        metal: row.name,
        says: row.says,
        source: row.source,
        thickness_mm: thickness,
        yield_mpa: row.yield_mpa,
        kinematic_share: row.kinematic_share,
    };
    let found = Found { dent: &dent, points: &points, tried: &tried, oil_can: [now, level], check, half_mm: half };
    let facts = found.facts(sheet, grid, off_mm);
    go_on(4, 1.0);
    Ok(KnownMetal { facts, maps, dent })
}

/// What was found; none where it found no rest, which is an answer too. Only a stop is passed on.
fn unless_stopped(found: Result<Dent, NotWorked>) -> Result<Option<Dent>, NotWorked> {
    match found {
        Err(NotWorked::Cancelled) => Err(NotWorked::Cancelled),
        other => Ok(other.ok()),
    }
}

fn row(settings: &MetalSettings) -> Result<MetalRow, MetalError> {
    let found = metals().into_iter().find(|m| m.name == settings.metal);
    found.ok_or_else(|| MetalError::NoSuchMetal(settings.metal.clone()))
}

fn thickness(row: &MetalRow, settings: &MetalSettings) -> Result<Range, MetalError> {
    match settings.thickness_mm {
        None => Ok(row.thickness_mm),
        Some(t) if (0.3..=3.0).contains(&t) => Ok(Range { low: t - GAUGE_MM, likely: t, high: t + GAUGE_MM }),
        Some(t) => Err(MetalError::Thickness(t)),
    }
}

/// The likely metal, then with thickness, yield stress and kinematic share at either end of what is known.
fn variants(row: &MetalRow, thickness: &Range) -> Vec<(Metal, f64)> {
    let (likely, t) = (row.likely(), thickness.likely);
    let with_yield =
        |to: f64| Metal { hardening: likely.hardening.scaled(to / row.yield_mpa.likely), ..likely.clone() };
    let with_share = |share: f64| Metal { kinematic_share: share, ..likely.clone() };
    vec![
        (likely.clone(), t),
        (likely.clone(), thickness.low),
        (likely.clone(), thickness.high),
        (with_yield(row.yield_mpa.low), t),
        (with_yield(row.yield_mpa.high), t),
        (with_share(row.kinematic_share.low), t),
        (with_share(row.kinematic_share.high), t),
    ]
}

fn map_grid(at: [f64; 2], half: f64) -> Grid {
    let n = 2 * (half / STEP_MM).floor() as usize + 1;
    let low = |c: f64| c - STEP_MM * (n / 2) as f64;
    Grid { x0_mm: low(at[0]), y0_mm: low(at[1]), step_mm: STEP_MM, nx: n, ny: n }
}

/// One push solved in full where the damage is deepest, beside its quick answer.
fn check(dent: &Dent) -> Option<Check> {
    let points = remains(&dent.panel);
    let deviation = |p: &Remains| dent.panel.deviation(p.at_mm[0], p.at_mm[1]);
    let at = points.iter().max_by(|a, b| deviation(a).abs().total_cmp(&deviation(b).abs()))?.at_mm;
    let before = dent.panel.deviation(at[0], at[1]);
    let travel = CHECKED_TRAVEL * dent.recipe.thickness_mm;
    let kind = if before < 0.0 { Kind::Push } else { Kind::Press };
    let tip = Tip::Sphere { radius_mm: 8.0 };
    let wanted = Move { kind, at, tip, bonded: false, goal: Goal::Travel(travel), steps: 8 };
    let fast = quick(&dent.panel, &give_map(&dent.panel, GIVES)?, &wanted)?;
    let mut panel = dent.recipe.panel()?;
    panel.take_up(dent.panel.patch.places.clone(), dent.panel.patch.memory.clone());
    let full = perform(&mut panel, &wanted);
    full.converged.then_some(Check {
        travel_mm: travel,
        full_left_mm: full.at_tip_left_mm - before,
        quick_left_mm: fast.left_mm,
        full_force_n: full.peak_force_n,
        quick_force_n: fast.force_n,
    })
}
