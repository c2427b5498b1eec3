//! The state of a measured dent: the plastic strain that explains its shape in equilibrium without load, with the stress
//! inside the yield surface.
//!
//! The sheet is worked from its intended shape into the measured one by a mould without friction that touches only where
//! metal was moved, and only from the side it was moved from ([`work_into`]). What it then holds is a state of the same
//! shell and metal that moves are tried on, so oil can and moves go on from it.

use crate::edges::{Edges, Hold};
use crate::mesh::{Mesh, Outline};
use crate::mould::{BOTH, Mould, NotWorked, Worked, hold_in, work_into};
use crate::panel::Panel;
use crate::patch::Patch;
use crate::remains::face_stress;
use crate::spline::{Axis, Focus, graded};
use crate::yielding::Metal;
use dentwright_surface::{Map, average};
use serde::{Deserialize, Serialize};

/// Layers across the thickness.
const LAYERS: usize = 7;
/// Growth of cells from one to the next.
const GROWTH: f64 = 1.3;
/// Cells across the part of a dent that is over half its depth.
const CELLS_ACROSS: f64 = 11.0;
/// Fine cells are for what lies within this share of the half patch; other damage in it gets coarser ones.
const OWN: f64 = 0.5;
/// Share of the greatest deviation below which metal counts as not touched.
const TOUCHED: f64 = 0.1;
/// Waves shorter than this many cells are smoothed by the mould.
const SMOOTHED_CELLS: f64 = 4.0;

/// Rounds while the shape grows, and at full shape at most.
const ROUNDS: [usize; 2] = [12, 6];
/// The same on coarser cells, where only a change is asked.
const FEW_ROUNDS: [usize; 2] = [8, 2];
/// The same while it is brought level.
const LEVEL_ROUNDS: [usize; 2] = [6, 4];

/// What is known about the panel.
#[derive(Debug, Clone)]
pub struct DentSettings {
    /// Metal.
    pub metal: Metal,
    /// Thickness, mm.
    pub thickness_mm: f64,
    /// Intended curvature along x, across and along y, 1/mm: `z = ½(k₀ x² + 2 k₁ x y + k₂ y²)` about the patch's middle.
    pub curvature: [f64; 3],
    /// Half the patch that is computed, mm.
    pub half_mm: f64,
    /// How the patch is held.
    pub hold: Hold,
    /// Cells are this many times the usual size; 1 for an answer, more for how it changes.
    pub coarser: f64,
}

/// All that makes the undamaged panel again.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Recipe {
    /// Ends of the cells along x and y, mm.
    pub breaks: [Vec<f64>; 2],
    /// As in [`DentSettings`].
    pub curvature: [f64; 3],
    /// Metal.
    pub metal: Metal,
    /// Thickness, mm.
    pub thickness_mm: f64,
    /// How it is held.
    pub hold: Hold,
    /// Stiffness of the mould, N/mm³.
    pub mould: f64,
}

/// A dent with what it holds.
pub struct Dent {
    /// The panel as it stands, its origin at `at_mm`.
    pub panel: Panel,
    /// What makes the panel without the dent.
    pub recipe: Recipe,
    /// Middle of the patch in the map's frame, mm.
    pub at_mm: [f64; 2],
    /// How near the shape came to the measured one.
    pub worked: Worked,
    /// Greatest deviation in the patch, in size, mm.
    pub depth_mm: f64,
    /// Where the sheet would spring back if let go, so that something round it holds it in its shape: its largest stress, as
    /// a share of what it takes for good. None where it stays by itself.
    pub held: Option<f64>,
}

/// The state of the damage round `at` of a map of deviation with its one-sigma doubt; `go_on` hears the share done and
/// may stop the work. Where no work on the sheet leaves the shape and it would
/// spring back whole, it is that of a sheet held in it from outside.
///
/// # Errors
/// Nothing stands out, the sheet finds no balance, no work leaves the shape, or the caller stopped it.
pub fn dent_state(
    deviation: &Map,
    sigma: &Map,
    at: [f64; 2],
    settings: &DentSettings,
    go_on: &dyn Fn(f64) -> bool,
) -> Result<Dent, NotWorked> {
    let smooth = average(deviation, 2.0 * deviation.grid.step_mm);
    let damage = Damage::of(&smooth, sigma, at, settings.half_mm).ok_or(NotWorked::Nothing)?;
    let recipe = recipe(settings, &damage);
    let mut panel = recipe.panel().ok_or(NotWorked::Nothing)?;
    let shape = |x: f64, y: f64| smooth.sample(x + at[0], y + at[1]).unwrap_or(0.0);
    let mould = Mould {
        shape: &shape,
        touch: &|x, y| damage.touch(shape(x, y)),
        stiffness: recipe.mould,
        rounds: if settings.coarser > 1.0 { FEW_ROUNDS } else { ROUNDS },
        enough_mm: (0.005 * damage.depth_mm).max(damage.sigma_mm),
    };
    let (worked, held) = match work_into(&mut panel, &mould, go_on) {
        Ok(worked) => (worked, None),
        Err(missing @ NotWorked::NotReached { .. }) => {
            panel = recipe.panel().ok_or(NotWorked::Nothing)?;
            // what holds it does so from either side, the sound metal round it too
            let worked = hold_in(&mut panel, &Mould { touch: &|_, _| BOTH, ..mould })?;
            let stress = face_stress(&panel).ok_or(NotWorked::NoRest { share: 1.0 })?;
            let share = stress / settings.metal.hardening.yield_mpa();
            if share > 1.0 {
                return Err(missing);
            }
            (worked, Some(share))
        }
        Err(other) => return Err(other),
    };
    Ok(Dent { panel, recipe, at_mm: at, worked, depth_mm: damage.depth_mm, held })
}

impl Dent {
    /// The same dent brought level, held from both sides where it is out of place; the stretch stays in it.
    pub fn level(&self, go_on: &dyn Fn(f64) -> bool) -> Result<Dent, NotWorked> {
        let mut panel = self.recipe.panel().ok_or(NotWorked::Nothing)?;
        panel.take_up(self.panel.patch.places.clone(), self.panel.patch.memory.clone());
        let limit = TOUCHED * self.depth_mm;
        let mould = Mould {
            shape: &|_, _| 0.0,
            touch: &|x, y| if self.panel.deviation(x, y).abs() > limit { BOTH } else { 0 },
            stiffness: self.recipe.mould,
            rounds: LEVEL_ROUNDS,
            enough_mm: 0.01 * self.depth_mm,
        };
        let worked = work_into(&mut panel, &mould, go_on)?;
        let recipe = self.recipe.clone();
        Ok(Dent { panel, recipe, at_mm: self.at_mm, worked, depth_mm: self.depth_mm, held: None })
    }
}

impl Recipe {
    /// The panel without the dent; none where its intended shape folds.
    pub fn panel(&self) -> Option<Panel> {
        let [a, b, c] = self.curvature;
        let intended = |x: f64, y: f64| 0.5 * (a * x * x + 2.0 * b * x * y + c * y * y);
        let [x, y] = self.breaks.each_ref().map(|b| Axis::new(b.clone()));
        let mesh = Mesh::new(x, y, Outline::Rectangle, &intended, 2)?;
        let edges = Edges::all(self.hold);
        Some(Panel::new(Patch::new(mesh, self.metal.clone(), self.thickness_mm, LAYERS, &edges)))
    }
}

fn recipe(settings: &DentSettings, damage: &Damage) -> Recipe {
    let (t, half) = (settings.thickness_mm, settings.half_mm);
    let fine = settings.coarser * (damage.across_mm / CELLS_ACROSS).clamp(1.2 * t, 4.0);
    let breaks = damage.reach_mm.map(|[low, high]| {
        let focus = Focus { at: 0.5 * (low + high), reach: 0.5 * (high - low) + fine, fine };
        graded(-half, half, &[focus], GROWTH, half / 8.0)
    });
    let metal = &settings.metal;
    let bending = metal.e_mpa * t.powi(3) / (12.0 * (1.0 - metal.nu * metal.nu));
    Recipe {
        breaks,
        curvature: settings.curvature,
        metal: metal.clone(),
        thickness_mm: t,
        hold: settings.hold,
        mould: bending * (std::f64::consts::TAU / (SMOOTHED_CELLS * fine)).powi(4),
    }
}

/// What the map says about size.
struct Damage {
    depth_mm: f64,
    /// Doubt at the deepest place.
    sigma_mm: f64,
    /// Width of what is over half the depth, the narrower way, mm.
    across_mm: f64,
    /// Box of what is over half the depth about the patch's middle, mm.
    reach_mm: [[f64; 2]; 2],
}

impl Damage {
    fn of(map: &Map, sigma: &Map, at: [f64; 2], half: f64) -> Option<Self> {
        let grid = map.grid;
        let here: Vec<(f64, f64, f64, f64)> = (0..grid.len())
            .map(|i| (grid.position(i), f64::from(map.values[i]), f64::from(sigma.values[i])))
            .map(|((x, y), w, s)| (x - at[0], y - at[1], w, s))
            .filter(|(x, y, w, _)| w.is_finite() && x.abs() <= half && y.abs() <= half)
            .collect();
        let near = here.iter().filter(|p| p.0.hypot(p.1) <= OWN * half);
        let deepest = near.max_by(|a, b| a.2.abs().total_cmp(&b.2.abs()))?;
        let depth = deepest.2.abs();
        let mut reach = [[f64::INFINITY, f64::NEG_INFINITY]; 2];
        let mut area = 0.0;
        let own = |p: &&(f64, f64, f64, f64)| p.0.hypot(p.1) <= OWN * half && p.2.abs() >= 0.5 * depth;
        for (x, y, ..) in here.iter().filter(own) {
            for (r, v) in reach.iter_mut().zip([x, y]) {
                *r = [r[0].min(*v), r[1].max(*v)];
            }
            area += grid.step_mm.powi(2);
        }
        let longest = reach.iter().map(|r| r[1] - r[0]).fold(grid.step_mm, f64::max);
        let across = (4.0 * area / std::f64::consts::PI / longest).min(longest);
        let sigma_mm = if deepest.3.is_finite() { deepest.3 } else { 0.0 };
        (depth > 3.0 * sigma_mm && depth > 0.0).then_some(Self {
            depth_mm: depth,
            sigma_mm,
            across_mm: across,
            reach_mm: reach,
        })
    }

    fn touch(&self, w: f64) -> i8 {
        let limit = (TOUCHED * self.depth_mm).max(3.0 * self.sigma_mm);
        if w < -limit { -1 } else { i8::from(w > limit) }
    }
}
