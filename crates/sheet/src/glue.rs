//! Does the glue hold for the pull wanted, or does it let go first.

use serde::{Deserialize, Serialize};

/// Glues on file.
pub const GLUE_TOML: &str = include_str!("../glue.toml");

/// A glue: strength of the bond when pulled square, by temperature.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct GlueRow {
    /// Name by which it is asked for.
    pub name: String,
    /// `[°C, lowest MPa, likely MPa]`, growing in temperature.
    pub strength: Vec<[f64; 3]>,
    /// Share of it left when the edge peels, as it does under a tab that bends: lowest and likely.
    pub peel: [f64; 2],
    /// Source, or "common practice".
    pub source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    glue: Vec<GlueRow>,
}

/// Glues of a file of this form.
pub fn parse_glues(text: &str) -> Result<Vec<GlueRow>, toml::de::Error> {
    toml::from_str::<File>(text).map(|file| file.glue)
}

/// Glues that come with the program.
pub fn glues() -> Vec<GlueRow> {
    parse_glues(GLUE_TOML).expect("the file that comes with the program is tested")
}

/// A round tab.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Tab {
    /// Radius, mm.
    pub radius_mm: f64,
    /// Thickness of its foot, mm.
    pub foot_mm: f64,
    /// Its modulus, MPa.
    pub e_mpa: f64,
    /// Radius of the stem that is pulled, mm.
    pub stem_mm: f64,
}

/// What lets go first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum LetsGo {
    /// The metal follows; the glue holds even at its weakest.
    Metal,
    /// It may go either way.
    Either,
    /// The glue lets go before the pull is reached.
    Glue,
}

/// A pull judged.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema), schema(as = GlueHold))]
pub struct Hold {
    /// Force at which the glue lets go: lowest and likely, N.
    pub holds_n: [f64; 2],
    /// How far the tab's rim bends away under the pull, mm.
    pub rim_bends_mm: f64,
    /// What lets go first.
    pub first: LetsGo,
}

impl GlueRow {
    /// Strength at a temperature, lowest and likely, MPa: straight between the rows, level outside.
    pub fn strength(&self, temperature_c: f64) -> [f64; 2] {
        let rows = &self.strength;
        let after = rows.partition_point(|r| r[0] <= temperature_c);
        if after == 0 || after == rows.len() {
            let row = rows[after.min(rows.len() - 1)];
            return [row[1], row[2]];
        }
        let (a, b) = (rows[after - 1], rows[after]);
        let s = (temperature_c - a[0]) / (b[0] - a[0]);
        [a[1] + s * (b[1] - a[1]), a[2] + s * (b[2] - a[2])]
    }

    /// Whether a square pull of `force_n` on the tab holds.
    pub fn hold(&self, tab: &Tab, temperature_c: f64, force_n: f64) -> Hold {
        let area = std::f64::consts::PI * tab.radius_mm.powi(2);
        let strength = self.strength(temperature_c);
        let holds_n = std::array::from_fn(|i| strength[i] * self.peel[i] * area);
        let first = match force_n {
            f if f <= holds_n[0] => LetsGo::Metal,
            f if f <= holds_n[1] => LetsGo::Either,
            _ => LetsGo::Glue,
        };
        Hold { holds_n, rim_bends_mm: tab.rim_bends(force_n / area), first }
    }
}

impl Tab {
    /// Bending of the rim of a disc held at its stem under even pressure, ν = 0.35: a cantilever wedge from the stem,
    /// `w = q L⁴/(8 D)`, L the overhang; an upper estimate, since a ring stiffens itself.
    fn rim_bends(&self, pressure: f64) -> f64 {
        let d = self.e_mpa * self.foot_mm.powi(3) / (12.0 * (1.0 - 0.35 * 0.35));
        pressure * (self.radius_mm - self.stem_mm).max(0.0).powi(4) / (8.0 * d)
    }
}
