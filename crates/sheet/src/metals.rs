//! Metals and gauges on file, a source a row.

use crate::hardening::Hardening;
use crate::yielding::Metal;
use serde::{Deserialize, Serialize};

/// The file that comes with the program; an own file of the same form may be read instead.
pub const METALS_TOML: &str = include_str!("../metals.toml");

/// A value known within bounds.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct Range {
    /// Lowest to be expected.
    pub low: f64,
    /// Taken where one number is needed.
    pub likely: f64,
    /// Highest to be expected.
    pub high: f64,
}

/// A sheet metal. Units MPa, mm, kg/m³, W/(m K), J/(kg K), 1/K.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MetalRow {
    /// Name by which it is asked for.
    pub name: String,
    /// What a technician calls it.
    pub says: String,
    /// Steel or aluminium.
    pub family: Family,
    /// Young's modulus.
    pub e_mpa: Range,
    /// Poisson's ratio.
    pub nu: f64,
    /// Yield stress as it stands in the panel, formed and baked.
    pub yield_mpa: Range,
    /// Flow stress at the likely yield.
    pub hardening: Hardening,
    /// Kinematic share.
    pub kinematic_share: Range,
    /// Usual thickness of an outer skin.
    pub thickness_mm: Range,
    /// Density.
    pub density: f64,
    /// Heat conduction.
    pub conductivity: Range,
    /// Heat capacity.
    pub heat_capacity: f64,
    /// Growth by warmth.
    pub expansion: f64,
    /// Where the row's numbers come from, and which are common practice.
    pub source: String,
}

/// Family of metal.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Family {
    /// Steel.
    Steel,
    /// Aluminium.
    Aluminium,
}

impl MetalRow {
    /// The metal at its likely values.
    pub fn likely(&self) -> Metal {
        Metal {
            e_mpa: self.e_mpa.likely,
            nu: self.nu,
            hardening: self.hardening.clone(),
            kinematic_share: self.kinematic_share.likely,
        }
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    metal: Vec<MetalRow>,
}

/// Metals of a file of this form.
pub fn parse_metals(text: &str) -> Result<Vec<MetalRow>, toml::de::Error> {
    toml::from_str::<File>(text).map(|file| file.metal)
}

/// Metals that come with the program.
pub fn metals() -> Vec<MetalRow> {
    parse_metals(METALS_TOML).expect("the file that comes with the program is tested")
}
