//! Will the paint take the way back: strain on its face against what paint of that kind takes when that warm.

use serde::{Deserialize, Serialize};

/// Paints on file.
pub const PAINT_TOML: &str = include_str!("../paint.toml");

/// What a paint takes: `ε(T) = ε_cold + (ε_most − ε_cold) e^(−((T − T_g)/w)²)`, most near its softening.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PaintRow {
    /// Name by which it is asked for.
    pub name: String,
    /// What a technician calls it.
    pub says: String,
    /// Softening temperature, °C.
    pub softens_c: f64,
    /// Width of the softening, K.
    pub width_k: f64,
    /// Strain taken when cold: lowest to be expected and likely.
    pub cold: [f64; 2],
    /// Strain taken at best: lowest and likely.
    pub most: [f64; 2],
    /// Factor for aged or second paint.
    pub aged_factor: f64,
    /// Whole film, mm.
    pub film_mm: f64,
    /// Warmer than this the paint itself suffers, °C.
    pub limit_c: f64,
    /// Source, or "common practice".
    pub source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    paint: Vec<PaintRow>,
}

/// Paints of a file of this form.
pub fn parse_paints(text: &str) -> Result<Vec<PaintRow>, toml::de::Error> {
    toml::from_str::<File>(text).map(|file| file.paint)
}

/// Paints that come with the program.
pub fn paints() -> Vec<PaintRow> {
    parse_paints(PAINT_TOML).expect("the file that comes with the program is tested")
}

/// Risk to the paint; never a promise.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema), schema(as = PaintRiskLevel))]
#[serde(rename_all = "snake_case")]
pub enum Risk {
    /// Well within what such paint takes.
    Low,
    /// Within what it likely takes, not surely.
    Raised,
    /// Beyond what it likely takes.
    High,
}

/// A judgement with its reasons.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct PaintRisk {
    /// Risk.
    pub risk: Risk,
    /// Strain on the paint's face.
    pub strain: f64,
    /// What such paint takes at least, and likely.
    pub takes: [f64; 2],
    /// Why, in words.
    pub reasons: Vec<String>,
}

/// Largest strain on the paint's outer face from the sheet's largest stretch and its change of curvature (1/mm, hollow
/// to crown positive).
pub fn face_strain(membrane: f64, curvature: f64, thickness_mm: f64, film_mm: f64) -> f64 {
    membrane + curvature * (0.5 * thickness_mm + film_mm)
}

impl PaintRow {
    /// Strain taken at a temperature: lowest and likely.
    pub fn takes(&self, temperature_c: f64, aged: bool) -> [f64; 2] {
        let warm = (-((temperature_c - self.softens_c) / self.width_k).powi(2)).exp();
        let factor = if aged { self.aged_factor } else { 1.0 };
        std::array::from_fn(|i| factor * (self.cold[i] + (self.most[i] - self.cold[i]) * warm))
    }

    /// Risk of `strain` at a temperature.
    pub fn risk(&self, strain: f64, temperature_c: f64, aged: bool) -> PaintRisk {
        let takes = self.takes(temperature_c, aged);
        let mut risk = match strain.abs() {
            s if s > takes[1] => Risk::High,
            s if s > 0.5 * takes[0] => Risk::Raised,
            _ => Risk::Low,
        };
        let mut reasons = vec![format!(
            "{:.1} % strain on the paint; such paint takes {:.1} to {:.1} % at {temperature_c:.0} °C",
            100.0 * strain.abs(),
            100.0 * takes[0],
            100.0 * takes[1]
        )];
        if aged {
            reasons.push("aged or second paint takes less".into());
            risk = risk.max(Risk::Raised);
        }
        if temperature_c > self.limit_c {
            reasons.push(format!("over {:.0} °C the paint itself suffers", self.limit_c));
            risk = Risk::High;
        }
        PaintRisk { risk, strain, takes, reasons }
    }
}
