//! The shop's tools: bars as bent lines, hooks, flat blades, with the tips, tabs and knock-downs that go on them.

use crate::inner_side::Flawed;
use dentwright_sheet::{Bar, BarSection, Length};
use nalgebra::{Isometry3, Point3, Vector3};
use serde::{Deserialize, Serialize};

/// The rack that comes with the program: generic shapes under our own names.
pub const RACK_TOML: &str = include_str!("../rack.toml");

/// What a shop owns.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct Rack {
    /// Bars, hooks, blades.
    pub tool: Vec<Tool>,
    /// Tips that go on them.
    pub tip: Vec<ToolTip>,
    /// Tabs for glue.
    pub tab: Vec<ToolTip>,
    /// Knock-downs.
    pub knock_down: Vec<ToolTip>,
}

/// A bar, hook or blade. Its frame: the tip's middle is the origin, it pushes along +z, and the bar is drawn in x and z.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct Tool {
    /// Name by which it is asked for.
    pub name: String,
    /// What a technician calls it.
    pub says: String,
    /// Corners of the bar's middle line `[x, z]` from the tip to the hand's end, mm.
    pub line: Vec<[f64; 2]>,
    /// Section; a blade lies flat: its width is across the drawing.
    pub section: BarSection,
    /// Young's modulus, MPa.
    pub e_mpa: f64,
    /// Yield stress, MPa.
    pub yield_mpa: f64,
    /// Source, or "common practice".
    pub source: String,
}

/// A tip, tab or knock-down head.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct ToolTip {
    /// Name by which it is asked for.
    pub name: String,
    /// Radius of what touches, mm.
    pub radius: f64,
    /// How hard.
    pub hardness: Hardness,
    /// Source, or "common practice".
    pub source: String,
}

/// How hard what touches is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Hardness {
    /// Rubber, leather: moves mass, leaves no mark.
    Soft,
    /// Wood, nylon.
    Medium,
    /// Steel: finishes, may mark.
    Hard,
}

/// A straight round length of a tool in its frame.
#[derive(Debug, Clone, Copy)]
pub struct Capsule {
    /// Its ends, mm.
    pub ends: [Point3<f64>; 2],
    /// Radius, mm.
    pub radius: f64,
}

/// The rack that comes with the program.
///
/// # Panics
/// Never: the file is tested.
pub fn starter_rack() -> Rack {
    parse_rack(RACK_TOML).expect("the file that comes with the program is tested")
}

/// A rack of a file of this form.
///
/// # Errors
/// Where the file is not of this form, or a tool in it has no length, section or strength.
pub fn parse_rack(text: &str) -> Result<Rack, RackError> {
    let rack: Rack = toml::from_str(text)?;
    rack.check()?;
    Ok(rack)
}

impl Rack {
    /// Checks what it holds.
    ///
    /// # Errors
    /// Names the first thing that cannot be used.
    pub fn check(&self) -> Result<(), Flawed> {
        self.tool.iter().try_for_each(Tool::check)?;
        let tips: Vec<&ToolTip> = self.tip.iter().chain(&self.tab).chain(&self.knock_down).collect();
        let flawed = |what: &str, flaw| Err(Flawed { what: what.to_owned(), flaw });
        if let Some(tip) = tips.iter().find(|tip| !(tip.radius > 0.0 && tip.radius < 200.0)) {
            return flawed(&tip.name, "has no radius");
        }
        let mut names: Vec<&str> = self.tool.iter().map(|t| t.name.as_str()).collect();
        names.extend(tips.iter().map(|tip| tip.name.as_str()));
        names.sort_unstable();
        match names.windows(2).find(|pair| pair[0] == pair[1]) {
            Some(pair) => flawed(pair[0], "is there twice"),
            None => Ok(()),
        }
    }
}

/// A rack that cannot be used.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum RackError {
    /// Not of the form.
    #[error("the rack cannot be read: {0}")]
    Form(#[from] toml::de::Error),
    /// A tool that is none.
    #[error(transparent)]
    Tool(#[from] Flawed),
}

impl Tool {
    fn check(&self) -> Result<(), Flawed> {
        let flawed = |flaw| Err(Flawed { what: self.name.clone(), flaw });
        let (i, _) = self.section.moments();
        if self.line.len() < 2 || self.line[0] != [0.0, 0.0] || !self.line.iter().flatten().all(|v| v.is_finite()) {
            return flawed("must start at its tip, 0 0, and go on to the hand");
        }
        if self.line.windows(2).any(|l| l[0] == l[1]) {
            return flawed("has two corners at one place");
        }
        if !(i > 0.0 && i.is_finite() && self.e_mpa > 0.0 && self.yield_mpa > 0.0) {
            return flawed("has no section or no strength");
        }
        Ok(())
    }

    /// Corners in its frame.
    pub fn corners(&self) -> Vec<Point3<f64>> {
        self.line.iter().map(|[x, z]| Point3::new(*x, 0.0, *z)).collect()
    }

    /// Round lengths that hold the whole bar: one a straight length, for a blade as many side by side as cover it.
    pub fn capsules(&self) -> Vec<Capsule> {
        let (aside, radius) = match self.section {
            BarSection::Round { diameter_mm } => (vec![0.0], 0.5 * diameter_mm),
            BarSection::Flat { width_mm: w, height_mm: h } => {
                let n = (w / h).ceil().max(1.0);
                let s = w / n;
                let at = (0..n as usize).map(|k| (k as f64 + 0.5) * s - 0.5 * w).collect();
                (at, 0.5 * s.hypot(h))
            }
        };
        let corners = self.corners();
        let lengths = corners.windows(2).flat_map(|l| {
            aside.iter().map(move |y| Capsule { ends: [0, 1].map(|k| l[k] + Vector3::y() * *y), radius })
        });
        lengths.collect()
    }

    /// Length of the middle line, mm.
    pub fn length(&self) -> f64 {
        self.line.windows(2).map(|l| (l[1][0] - l[0][0]).hypot(l[1][1] - l[0][1])).sum()
    }

    /// The bar as a lever in the plane of `push` and of the way from tip to hand, standing at `pose`; with the first axis
    /// of that plane. None where it stands along the push, which is no lever.
    pub fn lever(&self, pose: &Isometry3<f64>, push: &Vector3<f64>) -> Option<(Bar, Vector3<f64>)> {
        let corners: Vec<_> = self.corners().iter().map(|c| pose * c).collect();
        let to_hand = corners[corners.len() - 1] - corners[0];
        let flat = to_hand - push * to_hand.dot(push);
        if flat.norm() < 0.2 * to_hand.norm() {
            return None;
        }
        let along = flat.normalize();
        let section = self.section;
        let place = |c: &Point3<f64>| [(c - corners[0]).dot(&along), (c - corners[0]).dot(push)];
        let lengths = corners[1..].iter().map(|c| Length { to_mm: place(c), section }).collect();
        Some((Bar { tip_mm: [0.0, 0.0], lengths, e_mpa: self.e_mpa, yield_mpa: self.yield_mpa }, along))
    }
}
