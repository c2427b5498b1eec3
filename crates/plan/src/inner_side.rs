//! What is behind a panel: walls with openings, braces, bonded zones, things to keep away from.
//!
//! Panel frame: z out of the panel toward the viewer, so that what is behind has negative z.

use crate::outline::Outline;
use nalgebra::{Point3, Vector3};
use serde::{Deserialize, Serialize};

/// What is behind one panel.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct InnerSide {
    /// The panel's own outline seen from outside, mm; its line is the folded edge.
    pub outline: Outline,
    /// Panel curvature `z = ½(k₀x² + 2k₁xy + k₂y²)`, 1/mm.
    #[serde(default)]
    pub curvature: [f64; 3],
    /// Walls with their openings: inner sheet, closing panels, lamp pocket.
    pub walls: Vec<Wall>,
    /// Braces, bows, beams.
    #[serde(default)]
    pub braces: Vec<Brace>,
    /// Where a brace or mat is glued to the panel, seen from outside.
    #[serde(default)]
    pub bonded: Vec<Outline>,
    /// Things to keep away from.
    #[serde(default)]
    pub behind: Vec<Behind>,
}

/// A thin flat wall with openings.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct Wall {
    /// What it is.
    pub name: String,
    /// Where its own plane begins, mm.
    pub origin: [f64; 3],
    /// Direction of its first axis.
    pub along: [f64; 3],
    /// Direction toward the one who holds the bar.
    pub out: [f64; 3],
    /// How far it goes, in its plane: along, and `out × along`.
    pub outline: Outline,
    /// Its openings.
    pub openings: Vec<Opening>,
}

/// An opening that exists.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct Opening {
    /// What it is: window slot, drain hole, lamp pocket.
    pub name: String,
    /// Its rim in the wall's plane.
    pub outline: Outline,
    /// Trim that must come off first.
    #[serde(default)]
    pub trim: Option<String>,
}

/// A brace.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct Brace {
    /// What it is.
    pub name: String,
    /// Middle line, mm.
    pub line: Vec<[f64; 3]>,
    /// Half of what it measures across, mm: it is taken as round.
    pub radius: f64,
    /// Whether a bar may be levered over it.
    pub bears: bool,
}

/// Something no bar may come near.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema), schema(as = ThingBehind))]
#[serde(deny_unknown_fields)]
pub struct Behind {
    /// What it is.
    pub kind: BehindKind,
    /// One corner, mm.
    pub from: [f64; 3],
    /// The other.
    pub to: [f64; 3],
    /// Distance to keep, mm.
    pub keep: f64,
}

/// Kinds of things behind a panel.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum BehindKind {
    /// Wiring.
    Wiring,
    /// Airbag or belt tensioner.
    Airbag,
    /// Glass.
    Glass,
    /// High-voltage battery or its lines.
    Battery,
    /// Anything else solid.
    Solid,
}

/// A drawing that cannot be used.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("{what} {flaw}: draw it anew")]
pub struct Flawed {
    /// What.
    pub what: String,
    /// What is wrong with it.
    pub flaw: &'static str,
}

impl Wall {
    /// Unit axes: along, across, out. The first is made square to the last.
    pub fn axes(&self) -> [Vector3<f64>; 3] {
        let out = Vector3::from(self.out).normalize();
        let along = Vector3::from(self.along);
        let along = (along - out * along.dot(&out)).normalize();
        [along, out.cross(&along), out]
    }

    /// A place of the wall's plane in the panel's frame.
    pub fn place(&self, [u, v]: [f64; 2]) -> Point3<f64> {
        let [a, b, _] = self.axes();
        Point3::from(self.origin) + a * u + b * v
    }
}

impl InnerSide {
    /// Height of the panel, mm.
    pub fn height(&self, x: f64, y: f64) -> f64 {
        let [a, b, c] = self.curvature;
        0.5 * (a * x * x + 2.0 * b * x * y + c * y * y)
    }

    /// Direction square to the panel, outward.
    pub fn normal(&self, x: f64, y: f64) -> Vector3<f64> {
        let [a, b, c] = self.curvature;
        Vector3::new(-(a * x + b * y), -(b * x + c * y), 1.0).normalize()
    }

    /// Checks the drawing.
    ///
    /// # Errors
    /// Names the first thing that cannot be used.
    pub fn check(&self) -> Result<(), Flawed> {
        let flawed = |what: &str, flaw: &'static str| Err(Flawed { what: what.to_owned(), flaw });
        let outline = |what: &str, o: &Outline| o.flaw().map_or(Ok(()), |flaw| flawed(what, flaw));
        outline("the panel", &self.outline)?;
        self.bonded.iter().try_for_each(|b| outline("a bonded zone", b))?;
        for wall in &self.walls {
            outline(&wall.name, &wall.outline)?;
            wall.openings.iter().try_for_each(|o| outline(&o.name, &o.outline))?;
            let (along, out) = (Vector3::from(wall.along), Vector3::from(wall.out));
            if !(along.cross(&out).norm() > 1e-6 && Vector3::from(wall.origin).norm().is_finite()) {
                return flawed(&wall.name, "has no plane");
            }
        }
        for brace in &self.braces {
            let finite = brace.line.iter().flatten().all(|v| v.is_finite());
            if brace.line.len() < 2 || !finite || !(brace.radius > 0.0) {
                return flawed(&brace.name, "has no length or no radius");
            }
        }
        let solid = |b: &Behind| b.from.iter().chain(&b.to).all(|v| v.is_finite()) && b.keep >= 0.0;
        if self.behind.iter().all(solid) { Ok(()) } else { flawed("a thing behind", "has no place") }
    }
}
