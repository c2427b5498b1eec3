//! The state of a measured dent by replaying the hit: the impact of a ball whose remaining shape is the one measured,
//! with all the stretch and tension it leaves.
//!
//! One hit straight in, on metal without earlier damage. Depth is found by the secant method for each ball; the ball is the
//! one whose whole remaining shape comes nearest. Where the shape does not fit, the hit was another one, and the
//! misfit says so.

use crate::edges::{Edges, Hold};
use crate::mesh::{Mesh, Outline};
use crate::moves::{Goal, Kind, Move};
use crate::panel::Panel;
use crate::patch::Patch;
use crate::perform::perform;
use crate::spline::{Axis, Focus, graded};
use crate::tip::Tip;
use crate::yielding::Metal;
use dentwright_surface::Map;

/// Presses tried for each ball.
const TRIES: usize = 6;
/// Depth is met when within this share.
const MET: f64 = 0.02;
/// Layers across the thickness.
const LAYERS: usize = 7;

/// What is known about the panel.
#[derive(Debug, Clone)]
pub struct ReplaySettings {
    /// Metal.
    pub metal: Metal,
    /// Thickness, mm.
    pub thickness_mm: f64,
    /// Radii of the intended crown along x and y, mm; 0 is flat.
    pub radii_mm: [f64; 2],
    /// Half the patch that is replayed, mm.
    pub half_mm: f64,
    /// How the patch is held.
    pub hold: Hold,
    /// Radii of the balls tried, mm.
    pub balls_mm: Vec<f64>,
}

/// A replayed hit.
pub struct Replayed {
    /// The panel after it, its origin at the deepest place.
    pub panel: Panel,
    /// Where the hit was, mm in the map's frame.
    pub at_mm: [f64; 2],
    /// Radius of the ball, mm.
    pub ball_mm: f64,
    /// How deep it went, mm.
    pub pressed_mm: f64,
    /// Force it took if slow, N.
    pub force_n: f64,
    /// Root mean square of replayed less measured where the dent is deeper than a tenth of its depth, mm.
    pub misfit_mm: f64,
    /// The same over the depth: over about a tenth, the hit was another one.
    pub misfit_share: f64,
}

/// No hit could be replayed.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum ReplayError {
    /// Nothing below the intended surface.
    #[error("the map holds no low")]
    NoLow,
    /// The press could not be computed.
    #[error("no hit leaves a low of {depth_mm:.2} mm here")]
    NoHit {
        /// Depth wanted, mm.
        depth_mm: f64,
    },
}

/// Replays the hit that left the deepest low of a map of deviation.
pub fn replay(deviation: &Map, settings: &ReplaySettings) -> Result<Replayed, ReplayError> {
    let cells = deviation.values.iter().enumerate().filter(|(_, v)| v.is_finite());
    let (deepest, depth) = cells.min_by(|a, b| a.1.total_cmp(b.1)).ok_or(ReplayError::NoLow)?;
    let (at, depth) = (deviation.grid.position(deepest), f64::from(-depth));
    if depth <= 0.0 {
        return Err(ReplayError::NoLow);
    }
    let best = settings
        .balls_mm
        .iter()
        .filter_map(|ball| hit(settings, *ball, depth))
        .map(|(panel, pressed, force, ball)| {
            let misfit = misfit(&panel, deviation, at, depth);
            Replayed {
                panel,
                at_mm: [at.0, at.1],
                ball_mm: ball,
                pressed_mm: pressed,
                force_n: force,
                misfit_mm: misfit,
                misfit_share: misfit / depth,
            }
        })
        .min_by(|a, b| a.misfit_mm.total_cmp(&b.misfit_mm));
    best.ok_or(ReplayError::NoHit { depth_mm: depth })
}

/// Panel, depth pressed, force and ball of the hit that leaves `depth`.
fn hit(settings: &ReplaySettings, ball: f64, depth: f64) -> Option<(Panel, f64, f64, f64)> {
    // nothing stays of a press of nothing; what springs back is guessed at two thicknesses
    let (mut shallow, mut deep) = ((0.0, 0.0), None::<(f64, f64)>);
    let mut pressed = depth + 2.0 * settings.thickness_mm;
    for _ in 0..TRIES {
        let mut panel = panel(settings, ball)?;
        let wanted = Move {
            kind: Kind::Press,
            at: [0.0, 0.0],
            tip: Tip::Sphere { radius_mm: ball },
            bonded: false,
            goal: Goal::To(-pressed),
            steps: (4.0 * pressed / settings.thickness_mm).ceil().clamp(6.0, 24.0) as usize,
        };
        let outcome = perform(&mut panel, &wanted);
        if !outcome.converged {
            return None;
        }
        let left = -outcome.at_tip_left_mm;
        if (left / depth - 1.0).abs() < MET {
            return Some((panel, pressed, outcome.peak_force_n, ball));
        }
        let now = (pressed, left);
        if left < depth {
            shallow = now;
        } else {
            deep = Some(now);
        }
        pressed = match deep {
            Some(deep) => shallow.0 + (deep.0 - shallow.0) * (depth - shallow.1) / (deep.1 - shallow.1),
            None => pressed + 1.2 * (depth - left).max(0.2 * depth),
        };
    }
    None
}

fn panel(settings: &ReplaySettings, ball: f64) -> Option<Panel> {
    let t = settings.thickness_mm;
    let focus = Focus { at: 0.0, reach: 0.4 * ball, fine: (0.15 * ball).clamp(t, 4.0) };
    let breaks = graded(-settings.half_mm, settings.half_mm, &[focus], 1.3, settings.half_mm / 8.0);
    let axis = || Axis::new(breaks.clone());
    let arc = |r: f64, s: f64| if r == 0.0 { 0.0 } else { r.signum() * ((r * r - s * s).sqrt() - r.abs()) };
    let crown = |x: f64, y: f64| arc(settings.radii_mm[0], x) + arc(settings.radii_mm[1], y);
    let mesh = Mesh::new(axis(), axis(), Outline::Rectangle, &crown, 2)?;
    Some(Panel::new(Patch::new(mesh, settings.metal.clone(), t, LAYERS, &Edges::all(settings.hold))))
}

fn misfit(panel: &Panel, measured: &Map, at: (f64, f64), depth: f64) -> f64 {
    let (mut sum, mut count) = (0.0, 0.0);
    for (i, value) in measured.values.iter().enumerate() {
        let (x, y) = measured.grid.position(i);
        let (x, y) = (x - at.0, y - at.1);
        if f64::from(*value) < -0.1 * depth && panel.patch.mesh.holds(x, y) {
            sum += (panel.deviation(x, y) - f64::from(*value)).powi(2);
            count += 1.0;
        }
    }
    (sum / f64::max(count, 1.0)).sqrt()
}
