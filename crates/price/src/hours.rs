//! Hours of one line of dents, and of all of them together.
//!
//! `likely` is the expectation, so that it adds up: the likely hours of a car are the sum of its
//! lines'. `low` and `high` do not add, since dents that take longer and dents that take less
//! partly cancel: the hours of dent i are `mᵢ·e^S·e^Oᵢ` (up to a constant that makes `mᵢ` the
//! expectation), `S` shared by the whole car, `Oᵢ` its own. The sum over the own parts is taken
//! as lognormal with the right mean and variance (Fenton's method: L. F. Fenton, "The sum of
//! log-normal probability distributions in scatter transmission systems", IRE Transactions on
//! Communications Systems 8, 1960), and the shared part is then added to its logarithm.

use serde::{Deserialize, Serialize};

use crate::{Dent, HoursSettings};

/// Hours of work with their doubt.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Hours {
    /// One time in ten it takes less than this, h (with the shipped `spread_z`).
    pub low: f64,
    /// The expectation, h.
    pub likely: f64,
    /// One time in ten it takes more than this, h.
    pub high: f64,
    /// What the likely hours are made of: their product. Empty for a sum over several lines.
    pub because: Vec<Factor>,
}

/// One factor of the likely hours.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Factor {
    /// `base`, `area`, `depth`, `sharpness`, `kind`, `metal`, `access`, `place` or `count`.
    pub name: String,
    /// Times (for `base`: hours).
    pub times: f64,
}

/// Hours of one line: a dent, or `count` dents alike.
///
/// ```
/// use dentwright_price::{Access, Dent, HoursSettings, Kind, Metal, Place, hours};
/// let ding = Dent {
///     kind: Kind::Round, length_mm: 25.0, width_mm: 25.0, depth_mm: 1.0, metal: Metal::Steel,
///     access: Access::Open, place: Place::Flat, sharpness: None, count: 1,
/// };
/// let hours = hours(&ding, &HoursSettings::default());
/// assert!((hours.likely - 0.65).abs() < 1e-4); // the dent that all others are compared with
/// assert!(hours.low < hours.likely && hours.likely < hours.high);
/// ```
///
/// The dent and the settings are expected to pass their `check`.
#[must_use]
pub fn hours(dent: &Dent, settings: &HoursSettings) -> Hours {
    let because = factors(dent, settings);
    let likely = because.iter().map(|factor| factor.times).product();
    let own = own_variance(likely, dent.count);
    Hours { because, ..spread(likely, own, settings) }
}

/// Hours of several lines together, with their doubt added as the file's page says.
#[must_use]
pub fn total_hours<'a>(dents: impl IntoIterator<Item = &'a Dent>, settings: &HoursSettings) -> Hours {
    let (mut likely, mut own) = (0.0, 0.0);
    for dent in dents {
        let of_line: f64 = factors(dent, settings).iter().map(|factor| factor.times).product();
        likely += of_line;
        own += own_variance(of_line, dent.count);
    }
    spread(likely, own, settings)
}

fn factors(dent: &Dent, settings: &HoursSettings) -> Vec<Factor> {
    let depth = dent.depth_mm.abs() / settings.depth_ref_mm;
    let sharpness = dent.sharpness() / settings.sharpness_ref;
    let factor = |name: &str, times| Factor { name: name.to_owned(), times };
    vec![
        factor("base", settings.base_hours),
        factor("area", (dent.area_mm2() / settings.area_ref_mm2).powf(settings.area_power)),
        factor("depth", f64::midpoint(1.0, depth).powf(settings.depth_power)),
        factor("sharpness", f64::midpoint(1.0, sharpness).powf(settings.sharpness_power)),
        factor("kind", settings.of_kind(dent.kind)),
        factor("metal", settings.of_metal(dent.metal)),
        factor("access", settings.of_access(dent.access)),
        factor("place", settings.of_place(dent.place)),
        factor("count", f64::from(dent.count).powf(settings.count_power)),
    ]
}

/// Σ mᵢ² over the `count` dents of a line, h²: what the variance is proportional to.
fn own_variance(likely: f64, count: u32) -> f64 {
    likely * likely / f64::from(count)
}

/// Low and high around an expectation; `own` is Σ mᵢ² over all dents, h².
fn spread(likely: f64, own: f64, settings: &HoursSettings) -> Hours {
    if likely <= 0.0 {
        return Hours { low: 0.0, likely: 0.0, high: 0.0, because: Vec::new() };
    }
    let relative = (settings.spread_own.powi(2)).exp_m1() * own / (likely * likely);
    let variance = settings.spread_shared.powi(2) + relative.ln_1p();
    let (middle, away) = (-variance / 2.0, settings.spread_z * variance.sqrt());
    Hours { low: likely * (middle - away).exp(), likely, high: likely * (middle + away).exp(), because: Vec::new() }
}
