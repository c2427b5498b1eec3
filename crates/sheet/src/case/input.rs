//! A case as it is written down.

use crate::edges::Springs;
use crate::hardening::Hardening;
use crate::moves::{Goal, Kind, Move};
use crate::tip::Tip;
use serde::Deserialize;

/// A case file.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Case {
    /// The piece of panel.
    pub patch: PatchInput,
    /// The metal.
    pub sheet: SheetInput,
    /// Moves in order.
    #[serde(default)]
    pub moves: Vec<MoveInput>,
}

/// `[patch]`.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PatchInput {
    /// Outline.
    #[serde(default)]
    pub outline: OutlineInput,
    /// Along x, mm; the diameter of a disc.
    pub width_mm: f64,
    /// Along y, mm; the width where it is left out.
    pub height_mm: Option<f64>,
    /// Distance of the maps' places, mm.
    pub step_mm: f64,
    /// Radius of curvature along x, mm, crowned outward; 0 is flat.
    #[serde(default)]
    pub radius_x_mm: f64,
    /// Along y.
    #[serde(default)]
    pub radius_y_mm: f64,
    /// Intended heights instead of radii: an NPY file on the maps' places, mm.
    #[serde(default)]
    pub intended: String,
    /// Measured deviation to start from, free of stress: an NPY file on the maps' places, mm.
    #[serde(default)]
    pub deviation: String,
    /// How it is held.
    #[serde(default)]
    pub edges: EdgesInput,
    /// Springs of edges that are held by springs; else estimated from a sheet three times as wide.
    pub spring: Option<Springs>,
    /// Braces behind the sheet: lines `[x0, y0, x1, y1]`, mm, on which it rests.
    #[serde(default)]
    pub braces: Vec<[f64; 4]>,
}

/// Outline.
#[derive(Debug, Clone, Copy, Default, PartialEq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum OutlineInput {
    /// A rectangle.
    #[default]
    Rectangle,
    /// A disc.
    Disc,
}

/// One word for all sides, or a word a side.
#[derive(Debug, Clone, Copy, Deserialize)]
#[serde(untagged)]
pub enum EdgesInput {
    /// All alike.
    All(EdgeInput),
    /// Side by side.
    Sides {
        /// Low x.
        left: EdgeInput,
        /// High x.
        right: EdgeInput,
        /// Low y.
        bottom: EdgeInput,
        /// High y.
        top: EdgeInput,
    },
}

impl Default for EdgesInput {
    fn default() -> Self {
        Self::All(EdgeInput::Clamped)
    }
}

/// How an edge is held.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum EdgeInput {
    /// Neither moves nor turns.
    Clamped,
    /// Does not move.
    Pinned,
    /// Not held.
    Free,
    /// On springs.
    Spring,
}

/// `[sheet]`.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SheetInput {
    /// Thickness, mm.
    pub thickness_mm: f64,
    /// A metal on file, whose numbers hold where none are given here.
    pub metal: Option<String>,
    /// Young's modulus, MPa.
    pub e_mpa: Option<f64>,
    /// Poisson's ratio.
    pub nu: Option<f64>,
    /// Flow stress.
    pub hardening: Option<Hardening>,
    /// Share of kinematic hardening.
    pub kinematic_share: Option<f64>,
}

/// `[[moves]]`.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MoveInput {
    kind: Kind,
    #[serde(default)]
    x_mm: f64,
    #[serde(default)]
    y_mm: f64,
    tip: Tip,
    #[serde(default)]
    bonded: bool,
    to_mm: Option<f64>,
    travel_mm: Option<f64>,
    force_n: Option<f64>,
    #[serde(default = "usual_steps")]
    steps: usize,
}

fn usual_steps() -> usize {
    24
}

impl MoveInput {
    /// The move, or what is wrong with it.
    pub fn parse(&self) -> Result<Move, String> {
        let goal = match (self.to_mm, self.travel_mm, self.force_n) {
            (Some(to), None, None) => Goal::To(to),
            (None, Some(travel), None) => Goal::Travel(travel.abs()),
            (None, None, Some(force)) => Goal::Force(force.abs()),
            _ => return Err("a move needs one of to_mm, travel_mm, force_n".into()),
        };
        let (Goal::To(far) | Goal::Travel(far) | Goal::Force(far)) = goal;
        if ![far, self.x_mm, self.y_mm].iter().all(|v| v.is_finite()) {
            return Err("a move's place and goal must be numbers".into());
        }
        if !matches!(goal, Goal::To(_)) && far == 0.0 {
            return Err("travel_mm and force_n must be above zero".into());
        }
        let sizes = match self.tip {
            Tip::Sphere { radius_mm: a } | Tip::Disc { radius_mm: a } => [a, a],
            Tip::Rectangle { width_mm: a, height_mm: b } | Tip::Strip { length_mm: a, width_mm: b, .. } => [a, b],
            Tip::Point => [1.0, 1.0],
        };
        if sizes.iter().any(|s| !(*s > 0.0)) {
            return Err("a tip needs sizes above zero".into());
        }
        if self.steps == 0 || self.steps > 2000 {
            return Err("a move needs 1 to 2000 steps".into());
        }
        let at = [self.x_mm, self.y_mm];
        Ok(Move { kind: self.kind, at, tip: self.tip, bonded: self.bonded, goal, steps: self.steps })
    }
}
