//! Hours of one line of dents, and of several together: a distribution, not a number.
//!
//! `likely` is the expectation at the coefficients as they are known, so that it adds up: the likely
//! hours of a car are the sum of its lines'. `low` and `high` do not add, since dents that take longer
//! and dents that take less partly cancel: the hours of dent i are `μᵢ·e^S·e^Oᵢ` (up to a constant
//! that makes `μᵢ` the expectation), `S` shared by the whole car, `Oᵢ` its own. The sum over the own
//! parts is taken as lognormal with the right mean and variance (Fenton's method: L. F. Fenton, "The
//! sum of log-normal probability distributions in scatter transmission systems", IRE Transactions on
//! Communications Systems 8, 1960), the shared part is added to its logarithm, and the doubt of the
//! coefficients and of the spread itself make it Student's t.

use serde::{Deserialize, Serialize};

use crate::features::features;
use crate::sum::Sum;
use crate::view::View;
use crate::{Conditions, Dent, Learned, StudentT};

/// Hours of work with their doubt.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Hours {
    /// One time in ten it takes less than this, h (with the shipped `spread_z`).
    pub low: f64,
    /// As often less as more, h.
    #[serde(default)]
    pub middle: f64,
    /// The expectation, h.
    pub likely: f64,
    /// One time in ten it takes more than this, h.
    pub high: f64,
    /// What the likely hours are made of: their product. Empty for a sum over several lines.
    pub because: Vec<Factor>,
    /// Where the doubt comes from.
    #[serde(default)]
    pub doubt: Doubt,
}

/// One factor of the likely hours.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Factor {
    /// `base`, `area`, `depth`, `sharpness`, `kind`, `metal`, `access`, `place`, `paint`, `cold` or
    /// `count`.
    pub name: String,
    /// Times (for `base`: hours).
    pub times: f64,
}

/// Shares of the variance of the logarithm of hours; together 1 (all 0 where there are no dents).
#[derive(Debug, Clone, Copy, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Doubt {
    /// By the dents' own spread: one goes better, the other worse.
    pub dents: f64,
    /// By what the car and the day share.
    pub day: f64,
    /// By not knowing the shop's coefficients: this part shrinks with every finished job.
    pub shop: f64,
}

/// Hours of one line: a dent, or `count` dents alike.
///
/// ```
/// use dentwright_price::{Access, Conditions, Dent, HoursSettings, Kind, Learned, Metal, Place, hours};
/// let ding = Dent {
///     kind: Kind::Round, length_mm: 25.0, width_mm: 25.0, depth_mm: 1.0, metal: Metal::Steel,
///     access: Access::Open, place: Place::Flat, sharpness: None, count: 1,
/// };
/// let learned = Learned::start(&HoursSettings::default()).unwrap();
/// let hours = hours(&ding, &Conditions::default(), &learned);
/// assert!((hours.likely - 0.65).abs() < 1e-4); // the dent that all others are compared with
/// assert!(hours.low < hours.middle && hours.middle < hours.likely && hours.likely < hours.high);
/// ```
///
/// The dent is expected to pass its `check`.
#[must_use]
pub fn hours(dent: &Dent, conditions: &Conditions, learned: &Learned) -> Hours {
    let at = learned.best().regression.mean();
    let factor =
        |(name, place, value): (&str, usize, f64)| Factor { name: name.to_owned(), times: (at[place] * value).exp() };
    let because = features(dent, conditions, &learned.settings).into_iter().map(factor).collect();
    Hours { because, ..total_hours([dent], conditions, learned) }
}

/// Hours of several lines together, with their doubt added as the file's page says.
#[must_use]
pub fn total_hours<'a>(dents: impl IntoIterator<Item = &'a Dent>, conditions: &Conditions, learned: &Learned) -> Hours {
    let sum = learned.sum(dents, conditions);
    if sum.expected <= 0.0 {
        let (low, middle, likely, high) = (0.0, 0.0, 0.0, 0.0);
        return Hours { low, middle, likely, high, because: Vec::new(), doubt: Doubt::default() };
    }
    let log = learned.best().log_hours(&sum);
    let away = learned.best().away * log.scale;
    Hours {
        low: (log.location - away).exp(),
        middle: log.location.exp(),
        likely: sum.expected,
        high: (log.location + away).exp(),
        because: Vec::new(),
        doubt: doubt(&sum, learned.best()),
    }
}

/// Likely hours of one line.
pub(crate) fn expected_hours(dent: &Dent, conditions: &Conditions, learned: &Learned) -> f64 {
    learned.sum([dent], conditions).expected
}

/// Distribution of the logarithm of the hours of several lines together; none without dents.
#[must_use]
pub fn log_distribution<'a>(
    dents: impl IntoIterator<Item = &'a Dent>,
    conditions: &Conditions,
    learned: &Learned,
) -> Option<StudentT> {
    let sum = learned.sum(dents, conditions);
    (sum.expected > 0.0).then(|| learned.best().log_hours(&sum))
}

fn doubt(sum: &Sum, view: &View) -> Doubt {
    let (dents, day, shop) = (view.own(sum), view.shared, view.regression.doubt(&sum.features));
    let all = dents + day + shop;
    Doubt { dents: dents / all, day: day / all, shop: shop / all }
}
