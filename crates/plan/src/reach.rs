//! Which tool reaches a place of the panel from behind: through which opening, over which fulcrum, how far off square,
//! with what force and travel left.
//!
//! A tool is stood at the place in many headings and tilts; those that stand clear and pass an opening are fed in by
//! `insert.rs`. Everything is proved clear, so a reach that is told exists on the drawing; one that exists may be missed.

use crate::clear::Room;
use crate::fulcrum::{Levered, lever};
use crate::inner_side::{BehindKind, Flawed, InnerSide};
use crate::insert::{Passing, Shape, way_in};
use crate::solid::{Near, Solid};
use crate::tool::{Capsule, Rack, Tool, ToolTip};
use nalgebra::{Isometry3, Point3, Rotation3, UnitQuaternion, Vector3};
use rayon::prelude::*;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::f64::consts::TAU;

/// Headings tried all round, and the stride in which they are taken, so that those tried first lie apart.
const HEADINGS: usize = 60;
const HEADING_STRIDE: usize = 23;
/// Tilts off square tried, along and across the bar, degrees.
const TILTS: [f64; 5] = [0.0, 7.0, -7.0, 14.0, -14.0];
/// Way left to the panel when the tip stands ready, mm.
const READY_MM: f64 = 1.5;
/// The bar must stand out of the opening by so much, mm, for a hand.
const HAND_ROOM_MM: f64 = 90.0;
/// Standing poses that are tried for a way in, an opening.
const POSES: usize = 20;
/// Nearer to a folded edge nothing is pushed, mm: trade press on paintless repair (Body Shop Business).
pub const FOLD_MM: f64 = 25.0;

/// What is asked.
#[derive(Debug, Clone, Copy)]
pub struct ReachSettings {
    /// Distance the bar keeps from everything on its way, mm: what the drawing may be wrong by.
    pub margin_mm: f64,
}

impl Default for ReachSettings {
    fn default() -> Self {
        Self { margin_mm: 2.0 }
    }
}

/// A tool that reaches.
#[derive(Debug, Clone)]
pub struct Reach {
    /// Tool.
    pub tool: String,
    /// Tip on it.
    pub tip: String,
    /// Wall and opening it goes through.
    pub through: [String; 2],
    /// Trim that must come off first.
    pub trim: Option<String>,
    /// Angle between its push and the panel's normal, rad.
    pub off_square: f64,
    /// What it gives.
    pub levered: Levered,
    /// Length of bar behind the wall, mm.
    pub inside_mm: f64,
    /// The way in: panel frame from tool frame, first before the opening, last standing ready. Between two of them the
    /// tip goes straight and the bar turns evenly.
    pub way: Vec<Isometry3<f64>>,
}

/// Why nothing reaches.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(tag = "why", rename_all = "snake_case")]
pub enum Blocked {
    /// The place is not on the panel.
    OffPanel,
    /// Nearer than 25 mm to a folded edge.
    Fold,
    /// Something is glued to the panel there; it is not detached.
    Bonded,
    /// No bar that stands there passes an opening.
    NoOpening,
    /// A wall is in the way.
    Wall {
        /// Which.
        name: String,
    },
    /// A brace is in the way.
    Brace {
        /// Which.
        name: String,
    },
    /// A thing to keep away from is in the way.
    Behind {
        /// What.
        kind: BehindKind,
    },
    /// The panel's own curve is in the way.
    Skin,
    /// It could be brought there but not levered.
    NoFulcrum,
}

/// Access to one place.
#[derive(Debug, Clone)]
pub struct Access {
    /// Tools that reach, squarest and strongest first.
    pub reaches: Vec<Reach>,
    /// What stood in the way of the others, most frequent first.
    pub blocked: Vec<Blocked>,
}

/// Access to a place of the panel with everything in a rack.
///
/// # Errors
/// Where the drawing of what is behind cannot be used.
pub fn access(side: &InnerSide, rack: &Rack, at: [f64; 2], settings: &ReachSettings) -> Result<Access, Flawed> {
    side.check()?;
    if let Some(why) = refused(side, at) {
        return Ok(Access { reaches: Vec::new(), blocked: vec![why] });
    }
    let pairs: Vec<_> = rack.tool.iter().flat_map(|tool| rack.tip.iter().map(move |tip| (tool, tip))).collect();
    let tried: Vec<_> =
        pairs.par_iter().flat_map_iter(|(tool, tip)| tool_reaches(side, tool, tip, at, settings)).collect();
    let mut reaches = Vec::new();
    let mut counts: BTreeMap<Blocked, usize> = BTreeMap::new();
    for one in tried {
        match one {
            Ok(reach) => reaches.push(reach),
            Err(why) => *counts.entry(why).or_default() += 1,
        }
    }
    let rank = |r: &Reach| (r.off_square / 0.1).round() - 0.01 * r.levered.force_n.min(400.0) / 100.0;
    reaches.sort_by(|a: &Reach, b: &Reach| rank(a).total_cmp(&rank(b)));
    let mut blocked: Vec<_> = counts.into_iter().collect();
    blocked.sort_by_key(|(_, n)| std::cmp::Reverse(*n));
    let mut blocked: Vec<Blocked> = blocked.into_iter().map(|(why, _)| why).collect();
    if reaches.is_empty() && blocked.is_empty() {
        blocked.push(Blocked::NoOpening);
    }
    Ok(Access { reaches, blocked })
}

/// What forbids a place whatever the tool.
fn refused(side: &InnerSide, at: [f64; 2]) -> Option<Blocked> {
    match side.outline.depth(at) {
        d if d < 0.0 => Some(Blocked::OffPanel),
        d if d < FOLD_MM => Some(Blocked::Fold),
        _ if side.bonded.iter().any(|zone| zone.depth(at) > 0.0) => Some(Blocked::Bonded),
        _ => None,
    }
}

/// The best reach of one tool and tip through every opening, or why not.
pub fn tool_reaches(
    side: &InnerSide,
    tool: &Tool,
    tip: &ToolTip,
    at: [f64; 2],
    settings: &ReachSettings,
) -> Vec<Result<Reach, Blocked>> {
    let mut parts = tool.capsules();
    parts.push(Capsule { ends: [Point3::origin(); 2], radius: tip.radius });
    let shape = Shape::new(tool.corners(), parts);
    let solid = Solid::new(side);
    let room = Room { solid: &solid, margin: settings.margin_mm, but: &[] };
    let poses = poses(side, tip, at);
    let openings = side.walls.iter().enumerate().flat_map(|(w, wall)| (0..wall.openings.len()).map(move |o| [w, o]));
    openings
        .map(|[w, o]| {
            let found = through(&shape, tool, &poses, [w, o], &room)?;
            let (wall, opening) = (&side.walls[w], &side.walls[w].openings[o]);
            let stands = found.way[found.way.len() - 1];
            let push = stands.rotation * Vector3::z();
            Ok(Reach {
                tool: tool.name.clone(),
                tip: tip.name.clone(),
                through: [wall.name.clone(), opening.name.clone()],
                trim: opening.trim.clone(),
                off_square: push.angle(&side.normal(at[0], at[1])),
                levered: found.levered,
                inside_mm: found.passing.inside,
                way: found.way,
            })
        })
        .collect()
}

struct Found {
    passing: Passing,
    levered: Levered,
    way: Vec<Isometry3<f64>>,
}

/// The squarest standing pose that passes this opening, can be levered and can be brought there.
fn through(
    shape: &Shape,
    tool: &Tool,
    poses: &[Isometry3<f64>],
    [w, o]: [usize; 2],
    room: &Room,
) -> Result<Found, Blocked> {
    let (solid, side) = (room.solid, room.solid.side);
    let opening = &side.walls[w].openings[o];
    let mut why = None;
    let mut tried = 0;
    for pose in poses {
        let Some(passing) = shape.passes(pose, w, solid).filter(|p| opening.outline.depth(p.at) > room.margin) else {
            continue;
        };
        let hand = solid.in_wall(w, &(pose * shape.corners[shape.corners.len() - 1])).z;
        if hand < HAND_ROOM_MM {
            continue;
        }
        if let Err(near) = room.stands(&shape.parts, pose) {
            why = why.or(Some(blocked(side, near)));
            continue;
        }
        let Some(levered) = lever(tool, shape, pose, &passing, [w, o], solid) else {
            why = why.or(Some(Blocked::NoFulcrum));
            continue;
        };
        match way_in(shape, pose, &passing, [w, o], room) {
            Ok(way) => return Ok(Found { passing, levered, way }),
            Err(near) => why = why.or(Some(blocked(side, near))),
        }
        tried += 1;
        if tried >= POSES {
            break;
        }
    }
    Err(why.unwrap_or(Blocked::NoOpening))
}

/// Poses in which the tip stands ready, squarest first.
fn poses(side: &InnerSide, tip: &ToolTip, at: [f64; 2]) -> Vec<Isometry3<f64>> {
    let normal = side.normal(at[0], at[1]);
    let place = Point3::new(at[0], at[1], side.height(at[0], at[1])) - normal * (tip.radius + READY_MM);
    let square = UnitQuaternion::rotation_between(&Vector3::z(), &normal).unwrap_or_else(UnitQuaternion::identity);
    let mut tilts: Vec<_> = TILTS.iter().flat_map(|a| TILTS.iter().map(move |b| [*a, *b])).collect();
    tilts.sort_by(|a, b| a[0].hypot(a[1]).total_cmp(&b[0].hypot(b[1])));
    let pose = |tilt: [f64; 2], k: usize| {
        let heading = TAU * (k * HEADING_STRIDE % HEADINGS) as f64 / HEADINGS as f64;
        let [a, b] = tilt.map(f64::to_radians);
        let turned = Rotation3::from_axis_angle(&Vector3::z_axis(), heading)
            * Rotation3::from_axis_angle(&Vector3::y_axis(), a)
            * Rotation3::from_axis_angle(&Vector3::x_axis(), b);
        Isometry3::from_parts(place.coords.into(), square * UnitQuaternion::from_rotation_matrix(&turned))
    };
    tilts.iter().flat_map(|tilt| (0..HEADINGS).map(|k| pose(*tilt, k))).collect()
}

fn blocked(side: &InnerSide, near: Near) -> Blocked {
    match near {
        Near::Skin => Blocked::Skin,
        Near::Wall(k) => Blocked::Wall { name: side.walls[k].name.clone() },
        Near::Brace(k) => Blocked::Brace { name: side.braces[k].name.clone() },
        Near::Behind(k) => Blocked::Behind { kind: side.behind[k].kind },
    }
}
