//! From a case to a panel: cells fine where tips press, coarse where nothing happens.

use super::CaseError;
use super::heights::Heights;
use super::input::{Case, EdgeInput, EdgesInput, OutlineInput, PatchInput, SheetInput};
use crate::edges::{Edges, Hold, Springs, brace};
use crate::hardening::Hardening;
use crate::mesh::{Mesh, Outline};
use crate::moves::Move;
use crate::panel::Panel;
use crate::patch::Patch;
use crate::spline::{Axis, Focus, graded};
use crate::yielding::Metal;
use dentwright_surface::Grid;
use std::path::Path;

/// Layers across the thickness.
const LAYERS: usize = 9;
/// Growth of cells from one to the next.
const GROWTH: f64 = 1.3;
/// Smallest cell, in thicknesses: below, lines across the sheet no longer stay straight.
const SMALLEST: f64 = 0.8;
/// Cells at most: beyond, a move takes minutes and its force changes by parts in a thousand.
const MOST_CELLS: usize = 3000;
/// A brace gives this little, in parts of the sheet's own modulus a mm.
const BRACE: f64 = 1.0;

/// Grid of the case's maps: both ends of the patch are on it.
pub fn grid(patch: &PatchInput) -> Grid {
    let cells = |length: f64| (length / patch.step_mm).round() as usize;
    let (nx, ny) = (cells(patch.width_mm), cells(height(patch)));
    let half = |n: usize| -0.5 * n as f64 * patch.step_mm;
    Grid { x0_mm: half(nx), y0_mm: half(ny), step_mm: patch.step_mm, nx: nx + 1, ny: ny + 1 }
}

fn height(patch: &PatchInput) -> f64 {
    match patch.outline {
        OutlineInput::Disc => patch.width_mm,
        OutlineInput::Rectangle => patch.height_mm.unwrap_or(patch.width_mm),
    }
}

/// The panel of a case; files are looked for beside it in `folder`.
pub fn panel(case: &Case, moves: &[Move], folder: &Path) -> Result<Panel, CaseError> {
    let input = &case.patch;
    check(input, &case.sheet)?;
    let metal = metal(&case.sheet)?;
    let measured = load(&input.deviation, input, folder)?;
    let intended = load(&input.intended, input, folder)?;
    let radii = [input.radius_x_mm, input.radius_y_mm];
    let base = |x: f64, y: f64| match &intended {
        Some(heights) => heights.at(x, y),
        None => arc(radii[0], x) + arc(radii[1], y),
    };
    let rest = |x: f64, y: f64| base(x, y) + measured.as_ref().map_or(0.0, |d| d.at(x, y));
    let coarse = (input.width_mm.min(height(input)) / 20.0).min(10.0);
    let coarse = if measured.is_some() || intended.is_some() { coarse.min(input.step_mm) } else { coarse };
    let outline = match input.outline {
        OutlineInput::Rectangle => Outline::Rectangle,
        OutlineInput::Disc => Outline::Disc(input.width_mm),
    };
    let axes = axes(input, moves, case.sheet.thickness_mm, coarse);
    let mesh = |z: &dyn Fn(f64, f64) -> f64| {
        Mesh::new(axes[0].clone(), axes[1].clone(), outline, z, 2)
            .ok_or_else(|| CaseError::Wrong("the intended surface folds over itself".into()))
    };
    let edges = edges(input, &case.sheet, &metal);
    let mut patch = Patch::new(mesh(&rest)?, metal, case.sheet.thickness_mm, LAYERS, &edges);
    let stiff = BRACE * patch.metal.e_mpa;
    for line in &input.braces {
        patch.held.extend(brace(&patch.mesh, *line, stiff));
    }
    let mut panel = Panel::new(patch);
    if measured.is_some() {
        panel.intended = mesh(&base)?.rest;
    }
    Ok(panel)
}

/// Both axes: fine at every move's tip and at the edges, all of it larger by one factor where that is too many cells.
fn axes(patch: &PatchInput, moves: &[Move], thickness: f64, coarse: f64) -> [Axis; 2] {
    let axis = |length: f64, which: usize, larger: f64| {
        let ends = [-0.5 * length, 0.5 * length];
        let edges = ends.map(|at| Focus { at, reach: 0.0, fine: 0.5 * coarse });
        let tips = moves.iter().map(|m| focus(m, which, thickness, coarse));
        let foci: Vec<Focus> = tips.chain(edges).map(|f| Focus { fine: larger * f.fine, ..f }).collect();
        Axis::new(graded(ends[0], ends[1], &foci, GROWTH, larger * coarse))
    };
    let mut larger = 1.0;
    loop {
        let axes = [axis(patch.width_mm, 0, larger), axis(height(patch), 1, larger)];
        if axes[0].cells() * axes[1].cells() <= MOST_CELLS {
            return axes;
        }
        larger *= 1.1;
    }
}

/// Height of a crown of this radius at `s` from its top.
fn arc(radius: f64, s: f64) -> f64 {
    if radius == 0.0 { 0.0 } else { radius.signum() * ((radius * radius - s * s).sqrt() - radius.abs()) }
}

/// Cells about a tip: a sixteenth of a ball's width where it presses; ten along both sides of a flat face, five
/// across one that is turned, fewer under an even pressure, which has no rim that bites.
fn focus(m: &Move, which: usize, thickness: f64, coarse: f64) -> Focus {
    use crate::tip::Tip;
    let (half, narrow) = (m.tip.half(), 0.5 * m.tip.narrowest());
    let turned = matches!(m.tip, Tip::Strip { angle_deg, .. } if angle_deg % 90.0 != 0.0);
    let size = if turned { 2.0 * narrow } else { half[which] };
    let (fine, reach) = match m.tip {
        Tip::Sphere { radius_mm } if !m.even() => (0.12 * radius_mm, 0.4 * radius_mm),
        Tip::Point => (1.5 * thickness, 2.0),
        _ if m.even() => (0.3 * size, half[which]),
        _ => (0.2 * size, half[which] + 1.0),
    };
    Focus { at: m.at[which], reach, fine: fine.max(SMALLEST * thickness).min(coarse) }
}

fn check(patch: &PatchInput, sheet: &SheetInput) -> Result<(), CaseError> {
    let wrong = |what: &str| Err(CaseError::Wrong(what.into()));
    let (w, h) = (patch.width_mm, height(patch));
    if !(w > 0.0 && h > 0.0 && patch.step_mm > 0.0) {
        return wrong("width, height and step must be above zero");
    }
    if w / patch.step_mm < 4.0 || w / patch.step_mm > 2000.0 || h / patch.step_mm < 4.0 || h / patch.step_mm > 2000.0 {
        return wrong("a patch is 4 to 2000 steps wide");
    }
    if !(sheet.thickness_mm > 0.0) {
        return wrong("thickness must be above zero");
    }
    for (radius, length) in [(patch.radius_x_mm, w), (patch.radius_y_mm, h)] {
        if radius != 0.0 && !(radius.abs() > 0.5 * length) {
            return wrong("a crown's radius must be over half the patch");
        }
    }
    if matches!(patch.edges, EdgesInput::All(EdgeInput::Free)) && patch.braces.is_empty() {
        return wrong("a patch whose edges are all free is held by nothing: give it a brace, springs or a held side");
    }
    Ok(())
}

/// The metal of a case: its own numbers, else those on file, else plain steel's.
pub fn metal(sheet: &SheetInput) -> Result<Metal, CaseError> {
    let wrong = |what: String| CaseError::Wrong(what);
    let on_file = match &sheet.metal {
        None => None,
        Some(name) => {
            let known = crate::metals::metals();
            Some(
                known
                    .into_iter()
                    .find(|m| m.name == *name)
                    .ok_or_else(|| wrong(format!("no metal on file is called {name}")))?,
            )
        }
    };
    let of_file = on_file.map(|m| m.likely());
    let e_mpa = sheet.e_mpa.or(of_file.as_ref().map(|m| m.e_mpa)).ok_or_else(|| wrong("give e_mpa or metal".into()))?;
    let nu = sheet.nu.or(of_file.as_ref().map(|m| m.nu)).ok_or_else(|| wrong("give nu or metal".into()))?;
    let hardening =
        sheet.hardening.clone().or(of_file.as_ref().map(|m| m.hardening.clone())).unwrap_or(Hardening::Elastic);
    let kinematic_share = sheet.kinematic_share.or(of_file.as_ref().map(|m| m.kinematic_share)).unwrap_or(0.0);
    if !(e_mpa > 0.0 && nu > -1.0 && nu < 0.5 && (0.0..=1.0).contains(&kinematic_share)) {
        return Err(wrong("e_mpa above 0, nu between -1 and 0.5, kinematic_share 0 to 1".into()));
    }
    if let Some(fault) = hardening.fault() {
        return Err(wrong(fault.into()));
    }
    Ok(Metal { e_mpa, nu, hardening, kinematic_share })
}

fn edges(patch: &PatchInput, sheet: &SheetInput, metal: &Metal) -> Edges {
    let rest = || Springs::rest_of_panel(patch.width_mm.min(height(patch)), sheet.thickness_mm, metal);
    let springs = patch.spring.unwrap_or_else(rest);
    let hold = |edge| match edge {
        EdgeInput::Clamped => Hold::Clamped,
        EdgeInput::Pinned => Hold::Pinned,
        EdgeInput::Free => Hold::Free,
        EdgeInput::Spring => Hold::Spring(springs),
    };
    match patch.edges {
        EdgesInput::All(edge) => Edges::all(hold(edge)),
        EdgesInput::Sides { left, right, bottom, top } => {
            Edges { left: hold(left), right: hold(right), bottom: hold(bottom), top: hold(top) }
        }
    }
}

fn load(name: &str, patch: &PatchInput, folder: &Path) -> Result<Option<Heights>, CaseError> {
    if name.is_empty() {
        return Ok(None);
    }
    Heights::read(&folder.join(name), &grid(patch)).map(Some)
}
