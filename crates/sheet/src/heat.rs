//! Warming a spot and letting it cool: temperature of a thin painted sheet, even across its thickness.
//!
//! `ρ c t ∂T/∂τ = k t ΔT − h_f (T − T_f) − h_b (T − T_b) + q`, round the spot, stepped implicitly (the sheet's Biot
//! number is under a thousandth, so one temperature across it is enough: Incropera et al., chapter 5).

use serde::{Deserialize, Serialize};

/// A thin sheet as heat sees it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct WarmSheet {
    /// Thickness, mm.
    pub thickness_mm: f64,
    /// Heat conduction, W/(m K).
    pub conductivity: f64,
    /// Density, kg/m³.
    pub density: f64,
    /// Heat capacity, J/(kg K).
    pub heat_capacity: f64,
    /// Loss of the face to air or to what blows on it, W/(m² K).
    pub front_loss: f64,
    /// Loss of the back: air, foam, a brace, W/(m² K).
    pub back_loss: f64,
    /// Air about it, °C.
    pub air_c: f64,
}

/// What warms a spot of some radius.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Warmth {
    /// Lamp or induction: power into the sheet, W/m².
    Power {
        /// Radius of the spot, mm.
        radius_mm: f64,
        /// W/m².
        power: f64,
    },
    /// Hot air of some temperature.
    Air {
        /// Radius of the spot, mm.
        radius_mm: f64,
        /// °C.
        air_c: f64,
        /// Gain from it, W/(m² K).
        gain: f64,
    },
}

/// The file of limits.
pub const HEAT_TOML: &str = include_str!("../heat.toml");

/// A limit from what is on or behind the sheet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct HeatLimit {
    /// Name by which it is asked for.
    pub name: String,
    /// What it protects.
    pub says: String,
    /// °C.
    pub limit_c: f64,
    /// Source, or "common practice".
    pub source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    limit: Vec<HeatLimit>,
}

/// Limits of a file of this form.
///
/// # Errors
/// Where it is not of this form.
pub fn parse_limits(text: &str) -> Result<Vec<HeatLimit>, toml::de::Error> {
    toml::from_str::<File>(text).map(|file| file.limit)
}

/// Limits that come with the program.
///
/// # Panics
/// Never: the file is tested.
pub fn heat_limits() -> Vec<HeatLimit> {
    parse_limits(HEAT_TOML).expect("the file that comes with the program is tested")
}

/// The limit that applies: the lowest.
pub fn lowest_limit(limits: &[HeatLimit]) -> Option<&HeatLimit> {
    limits.iter().min_by(|a, b| a.limit_c.total_cmp(&b.limit_c))
}

/// Rings round the spot's middle with their temperatures.
#[derive(Debug, Clone, PartialEq)]
pub struct WarmField {
    sheet: WarmSheet,
    /// Middle of each ring, mm.
    pub radius_mm: Vec<f64>,
    /// Temperature of each, °C.
    pub temperature_c: Vec<f64>,
    width_mm: f64,
}

impl WarmField {
    /// A sheet at the air's temperature out to `reach_mm`, in rings of `width_mm`.
    pub fn new(sheet: WarmSheet, reach_mm: f64, width_mm: f64) -> Self {
        let n = (reach_mm / width_mm).ceil() as usize;
        let radius_mm: Vec<f64> = (0..n).map(|i| (i as f64 + 0.5) * width_mm).collect();
        Self { sheet, temperature_c: vec![sheet.air_c; n], radius_mm, width_mm }
    }

    /// Goes `seconds` on in steps of `step_s`, warmed or left alone.
    pub fn go(&mut self, warmth: Option<&Warmth>, seconds: f64, step_s: f64) {
        let steps = (seconds / step_s).ceil().max(1.0) as usize;
        for _ in 0..steps {
            self.step(warmth, seconds / steps as f64);
        }
    }

    /// Seconds until the middle passes `goal_c`, at most `longest_s`; none where it does not.
    pub fn until(&mut self, warmth: Option<&Warmth>, goal_c: f64, longest_s: f64) -> Option<f64> {
        let rising = self.temperature_c[0] < goal_c;
        let step = 0.05;
        let mut time = 0.0;
        while time < longest_s {
            let before = self.temperature_c[0];
            self.step(warmth, step);
            let now = self.temperature_c[0];
            if (now >= goal_c) == rising {
                return Some(time + step * (goal_c - before) / (now - before));
            }
            time += step;
        }
        None
    }

    /// One implicit step (backward Euler), rings as finite volumes.
    fn step(&mut self, warmth: Option<&Warmth>, dt: f64) {
        let s = &self.sheet;
        let mm = 1e-3;
        let (t, w, n) = (s.thickness_mm * mm, self.width_mm * mm, self.radius_mm.len());
        let store = s.density * s.heat_capacity * t / dt;
        let (mut lower, mut middle, mut upper, mut right) = (vec![0.0; n], vec![0.0; n], vec![0.0; n], vec![0.0; n]);
        for i in 0..n {
            let r = self.radius_mm[i] * mm;
            let flow = |edge: f64| s.conductivity * t * edge / (r * w * w);
            lower[i] = if i > 0 { -flow(r - 0.5 * w) } else { 0.0 };
            upper[i] = if i + 1 < n { -flow(r + 0.5 * w) } else { 0.0 };
            middle[i] = store + s.front_loss + s.back_loss - lower[i] - upper[i];
            right[i] = store * self.temperature_c[i] + (s.front_loss + s.back_loss) * s.air_c;
            match warmth {
                Some(Warmth::Power { radius_mm, power }) => right[i] += power * self.share(i, *radius_mm),
                Some(Warmth::Air { radius_mm, air_c, gain }) => {
                    let extra = gain * self.share(i, *radius_mm);
                    middle[i] += extra;
                    right[i] += extra * air_c;
                }
                None => {}
            }
        }
        self.temperature_c = tridiagonal(&lower, &middle, &upper, &right);
    }

    /// Share of ring `i` within a radius.
    fn share(&self, i: usize, radius: f64) -> f64 {
        let (inner, outer) = (self.radius_mm[i] - 0.5 * self.width_mm, self.radius_mm[i] + 0.5 * self.width_mm);
        ((radius.clamp(inner, outer).powi(2) - inner * inner) / (outer * outer - inner * inner)).clamp(0.0, 1.0)
    }
}

/// Thomas's algorithm.
fn tridiagonal(lower: &[f64], middle: &[f64], upper: &[f64], right: &[f64]) -> Vec<f64> {
    let n = middle.len();
    let (mut c, mut x) = (vec![0.0; n], right.to_vec());
    let mut pivot = middle[0];
    x[0] /= pivot;
    for i in 1..n {
        c[i] = upper[i - 1] / pivot;
        pivot = middle[i] - lower[i] * c[i];
        x[i] = (x[i] - lower[i] * x[i - 1]) / pivot;
    }
    for i in (0..n - 1).rev() {
        x[i] -= c[i + 1] * x[i + 1];
    }
    x
}
