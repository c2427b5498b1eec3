//! What a standing bar can be levered over, and what its tip then gives.

use crate::clear::Room;

use crate::insert::{Passing, Shape};
use crate::solid::{Near, Solid, to_segment};
use crate::tool::Tool;
use nalgebra::{Isometry3, Point3, Unit, UnitQuaternion, Vector3};
use serde::{Deserialize, Serialize};

/// What one hand gives on a bar's end, N: common practice, no published source.
pub const HAND_N: f64 = 250.0;
/// The same end on.
const END_ON_N: f64 = 150.0;
/// How far the hand goes, mm, and end on: common practice.
const HAND_TRAVEL_MM: f64 = 80.0;
const END_ON_TRAVEL_MM: f64 = 30.0;
/// A bar is not asked for more than this share of what bends it for good.
const MOST_USED: f64 = 0.8;
/// A gap up to this much between bar and fulcrum is packed, mm: common practice.
const PACKED_MM: f64 = 15.0;
/// A fulcrum counts as under the bar when this share of the way to it is against the push.
const UNDER: f64 = 0.6;
/// How far the bar is swung to see what is in its way, rad, and in how many steps.
const SWING: (f64, usize) = (0.2, 8);
/// Fulcrums that are tried for room to swing.
const SWUNG: usize = 3;
/// Places along a rim and a bar are this far apart, mm.
const STRIDE: f64 = 4.0;

/// What the bar is worked over.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(tag = "over", rename_all = "snake_case")]
pub enum Fulcrum {
    /// The rim of the opening it goes through; pad it.
    Rim {
        /// Where, mm.
        at: [f64; 3],
        /// What the gap is packed with, mm.
        packing: f64,
    },
    /// A brace that bears.
    Brace {
        /// Which.
        name: String,
        /// Where on the bar, mm.
        at: [f64; 3],
        /// What the gap is packed with, mm.
        packing: f64,
    },
    /// None: pushed end on.
    EndOn,
}

/// What the tip gives.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Levered {
    /// Over what.
    pub fulcrum: Fulcrum,
    /// Force of the tip, N.
    pub force_n: f64,
    /// How far the tip goes on, mm.
    pub travel_mm: f64,
    /// Tip's force a force of the hand.
    pub advantage: f64,
}

/// The best fulcrum of a bar that stands at `pose` and passes the opening there; none where there is none.
pub fn lever(
    tool: &Tool,
    shape: &Shape,
    pose: &Isometry3<f64>,
    passing: &Passing,
    [wall, opening]: [usize; 2],
    solid: &Solid,
) -> Option<Levered> {
    let push = pose.rotation * Vector3::z();
    let Some((bar, along)) = tool.lever(pose, &push) else {
        return Some(Levered {
            fulcrum: Fulcrum::EndOn,
            force_n: END_ON_N,
            travel_mm: END_ON_TRAVEL_MM,
            advantage: 1.0,
        });
    };
    let tip = pose * shape.corners[0];
    let axis = Unit::new_normalize(push.cross(&along));
    let mut given: Vec<_> = candidates(shape, pose, passing, [wall, opening], solid, &push)
        .into_iter()
        .filter_map(|(near, on_bar, fulcrum)| {
            let x = (on_bar - tip).dot(&along);
            let full = bar.leverage(HAND_N, HAND_TRAVEL_MM, x).ok()?;
            let share = (MOST_USED / full.used).min(1.0);
            let given = bar.leverage(share * HAND_N, HAND_TRAVEL_MM, x).ok()?;
            (given.tip_travel_mm > 0.0).then_some((near, on_bar, fulcrum, x, given))
        })
        .collect();
    given.sort_by(|a, b| (b.4.tip_force_n * b.4.tip_travel_mm).total_cmp(&(a.4.tip_force_n * a.4.tip_travel_mm)));
    // the strongest that leaves the bar room to swing
    given.into_iter().take(SWUNG).find_map(|(near, on_bar, fulcrum, x, given)| {
        let travel_mm = given.tip_travel_mm.min(swing(shape, pose, &on_bar, &axis, near, solid) * x);
        let (force_n, advantage) = (given.tip_force_n, given.advantage);
        (travel_mm > 0.0).then_some(Levered { fulcrum, force_n, travel_mm, advantage })
    })
}

type Candidate = (Near, Point3<f64>, Fulcrum);

/// Places under the bar that bear it: solid, the place on the bar, and what it is.
fn candidates(
    shape: &Shape,
    pose: &Isometry3<f64>,
    passing: &Passing,
    [wall, opening]: [usize; 2],
    solid: &Solid,
    push: &Vector3<f64>,
) -> Vec<Candidate> {
    let corners: Vec<_> = shape.corners.iter().map(|c| pose * c).collect();
    let radius = shape.parts[0].radius;
    let under = |on_bar: &Point3<f64>, at: &Point3<f64>, less: f64| {
        let v = at - on_bar;
        let gap = v.norm() - radius - less;
        (v.dot(push) < -UNDER * v.norm() && gap < PACKED_MM).then_some(gap.max(0.0))
    };
    let mut found = Vec::new();
    let side = solid.side;
    let the_wall = &side.walls[wall];
    let rim = the_wall.openings[opening].outline.corners();
    for (k, a) in rim.iter().enumerate() {
        let (a, b) = (the_wall.place(*a), the_wall.place(rim[(k + 1) % rim.len()]));
        let n = ((b - a).norm() / STRIDE).ceil().max(1.0) as usize;
        for i in 0..n {
            let at = a + (b - a) * (i as f64 / n as f64);
            let on_bar = nearest_on(&corners, &at);
            if let Some(packing) = under(&on_bar, &at, 0.0) {
                found.push((Near::Wall(wall), on_bar, Fulcrum::Rim { at: at.coords.into(), packing }));
            }
        }
    }
    for (k, brace) in side.braces.iter().enumerate().filter(|(_, b)| b.bears) {
        let n = (passing.inside / STRIDE).ceil() as usize;
        for i in 1..n {
            let on_bar = pose * shape.at(passing.inside * i as f64 / n as f64);
            for l in brace.line.windows(2) {
                let (a, b) = (Point3::from(l[0]), Point3::from(l[1]));
                let at = a + (b - a) * to_segment(&on_bar, &a, &b).1;
                if let Some(packing) = under(&on_bar, &at, brace.radius) {
                    let (name, at) = (brace.name.clone(), on_bar.coords.into());
                    found.push((Near::Brace(k), on_bar, Fulcrum::Brace { name, at, packing }));
                }
            }
        }
    }
    found
}

fn nearest_on(corners: &[Point3<f64>], at: &Point3<f64>) -> Point3<f64> {
    let on = |l: &[Point3<f64>]| {
        let (d, s) = to_segment(at, &l[0], &l[1]);
        (d, l[0] + (l[1] - l[0]) * s)
    };
    corners.windows(2).map(on).min_by(|a, b| a.0.total_cmp(&b.0)).map_or(corners[0], |(_, p)| p)
}

/// How far the bar can be turned about the fulcrum before it meets anything but fulcrum and panel, rad.
fn swing(
    shape: &Shape,
    pose: &Isometry3<f64>,
    about: &Point3<f64>,
    axis: &Unit<Vector3<f64>>,
    near: Near,
    solid: &Solid,
) -> f64 {
    let but = [Near::Skin, near];
    let room = Room { solid, margin: 0.0, but: &but };
    let turned = |k: usize| {
        let rotation = UnitQuaternion::from_axis_angle(axis, SWING.0 * k as f64 / SWING.1 as f64);
        let origin = about + rotation * (Point3::from(pose.translation.vector) - about);
        Isometry3::from_parts(origin.coords.into(), rotation * pose.rotation)
    };
    let free = (1..=SWING.1).take_while(|k| room.moves(&shape.parts, &turned(k - 1), &turned(*k)).is_ok()).count();
    SWING.0 * free as f64 / SWING.1 as f64
}
