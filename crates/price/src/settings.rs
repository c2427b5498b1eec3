//! The coefficients of the hours formula, as one settings file keeps them.

use serde::{Deserialize, Serialize};

/// Coefficients of [`hours`](crate::hours()) before the shop's own jobs were learned, and how far each
/// may be off. The formula and each one's ground: `hours.toml`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct HoursSettings {
    /// Expected hours of the dent compared with, h.
    pub base_hours: f64,
    /// Area of the dent compared with, mm².
    pub area_ref_mm2: f64,
    /// Depth of the dent compared with, mm.
    pub depth_ref_mm: f64,
    /// Depth over half width of the dent compared with.
    pub sharpness_ref: f64,
    /// Power of the area; raise it where wide dents take longer than quoted.
    pub area_power: f64,
    /// Power of the depth; raise it where deep dents take longer than quoted.
    pub depth_power: f64,
    /// Power of the sharpness; at most `area_power`, so that wider never costs less.
    pub sharpness_power: f64,
    /// Power of the count, 0 to 1; below 1 many alike cost less each.
    pub count_power: f64,
    /// Times for every 10 °C that the panel is colder than `cold_under_c`.
    #[serde(default = "cold_times")]
    pub cold_times: f64,
    /// Temperature from which a panel is warm enough, °C.
    #[serde(default = "cold_under_c")]
    pub cold_under_c: f64,
    /// Spread of one dent's hours (standard deviation of their logarithm).
    pub spread_own: f64,
    /// Spread that all dents of a car share (standard deviation of the logarithm).
    pub spread_shared: f64,
    /// How many spreads low and high lie from the middle; 1.2816 for 10 % and 90 %.
    pub spread_z: f64,
    /// Times for the kind.
    pub kind: KindTimes,
    /// Times for the metal.
    pub metal: MetalTimes,
    /// Times for the access.
    pub access: AccessTimes,
    /// Times for the place.
    pub place: PlaceTimes,
    /// Times for the paint.
    #[serde(default)]
    pub paint: PaintTimes,
    /// How far the numbers above may be off for a shop.
    #[serde(default)]
    pub width: Widths,
}

/// How many times as long each kind takes as a round ding of its size and depth.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
#[allow(missing_docs, reason = "the fields are the names of `Kind`")]
pub struct KindTimes {
    pub round: f64,
    pub hail: f64,
    pub soft: f64,
    pub sharp: f64,
    pub crease: f64,
    pub high: f64,
}

/// How many times as long each metal takes as steel.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
#[allow(missing_docs, reason = "the fields are the names of `Metal`")]
pub struct MetalTimes {
    pub steel: f64,
    pub high_strength_steel: f64,
    pub aluminium: f64,
}

/// How many times as long each access takes as an open one.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
#[allow(missing_docs, reason = "the fields are the names of `Access`")]
pub struct AccessTimes {
    pub open: f64,
    pub trim_off: f64,
    pub braced: f64,
    pub glue_only: f64,
    pub none: f64,
}

/// How many times as long each place takes as a flat part of a panel.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
#[allow(missing_docs, reason = "the fields are the names of `Place`")]
pub struct PlaceTimes {
    pub flat: f64,
    pub body_line: f64,
    pub edge: f64,
    pub rail: f64,
}

/// How many times as long each paint takes as one in order.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
#[allow(missing_docs, reason = "the fields are the names of `Paint`")]
pub struct PaintTimes {
    pub factory: f64,
    pub old: f64,
    pub repainted: f64,
}

/// How far the coefficients may be off for a shop that has not timed its work: standard deviations, of
/// the logarithm for factors, of the power itself for powers. Wider learns faster from few jobs.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct Widths {
    /// Of `base_hours`: how fast a technician is.
    pub base: f64,
    /// Of the powers of area, depth and sharpness.
    pub power: f64,
    /// Of the power of the count.
    pub count_power: f64,
    /// Of each kind against a round ding.
    pub kind: f64,
    /// Of each metal against steel.
    pub metal: f64,
    /// Of each access against an open one.
    pub access: f64,
    /// Of each place against a flat one.
    pub place: f64,
    /// Of each paint against one in order.
    pub paint: f64,
    /// Of `cold_times`.
    pub cold: f64,
    /// As many timed dents as the two spreads are worth; more learns them slower.
    pub spread_weight: f64,
}

/// Why settings cannot be used.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum SettingsError {
    /// The text is not TOML of this form.
    #[error("the hours settings cannot be read: {0}")]
    Text(String),
    /// A coefficient is out of its range.
    #[error("the hours setting {field} is {value}, but must be {must}")]
    Value {
        /// The coefficient's name, with its table.
        field: &'static str,
        /// What it holds.
        value: f64,
        /// What it may hold.
        must: &'static str,
    },
}

/// The settings file that ships with the program, comments and all.
pub const HOURS_TOML: &str = include_str!("../hours.toml");

impl Default for HoursSettings {
    /// The settings of [`HOURS_TOML`].
    fn default() -> Self {
        Self::from_toml(HOURS_TOML).expect("a test reads the shipped settings")
    }
}

// Settings that were kept before these fields existed get the shipped ones.
fn cold_times() -> f64 {
    HoursSettings::default().cold_times
}

fn cold_under_c() -> f64 {
    HoursSettings::default().cold_under_c
}

impl Default for PaintTimes {
    fn default() -> Self {
        HoursSettings::default().paint
    }
}

impl Default for Widths {
    fn default() -> Self {
        HoursSettings::default().width
    }
}

impl HoursSettings {
    /// Reads and checks settings.
    ///
    /// # Errors
    /// When the text is not of this form, or a coefficient is out of its range.
    pub fn from_toml(text: &str) -> Result<Self, SettingsError> {
        let settings: Self = toml::from_str(text).map_err(|error| SettingsError::Text(error.to_string()))?;
        settings.check()?;
        Ok(settings)
    }

    /// Checks that every coefficient is finite and in its range.
    ///
    /// # Errors
    /// Names the first coefficient that is not.
    pub fn check(&self) -> Result<(), SettingsError> {
        for (field, value) in self.times() {
            range(field, value, 1e-3, 1e3, "0.001 to 1000")?;
        }
        for (field, value) in [("base_hours", self.base_hours), ("depth_ref_mm", self.depth_ref_mm)] {
            range(field, value, 1e-3, 1e3, "0.001 to 1000")?;
        }
        range("area_ref_mm2", self.area_ref_mm2, 1.0, 1e6, "1 to 1000000")?;
        range("sharpness_ref", self.sharpness_ref, 1e-4, 10.0, "0.0001 to 10")?;
        range("area_power", self.area_power, 0.0, 3.0, "0 to 3")?;
        range("depth_power", self.depth_power, 0.0, 3.0, "0 to 3")?;
        range("sharpness_power", self.sharpness_power, 0.0, self.area_power, "0 to area_power")?;
        range("count_power", self.count_power, 0.5, 1.0, "0.5 to 1")?;
        range("cold_times", self.cold_times, 1e-3, 1e3, "0.001 to 1000")?;
        range("cold_under_c", self.cold_under_c, -30.0, 60.0, "-30 to 60")?;
        for (field, value) in self.width.each() {
            range(field, value, 0.0, 2.0, "0 to 2")?;
        }
        range("width.spread_weight", self.width.spread_weight, 1.0, 1e9, "1 to 1000000000")?;
        range("spread_own", self.spread_own, 0.01, 1.0, "0.01 to 1")?;
        range("spread_shared", self.spread_shared, 0.0, 1.0, "0 to 1")?;
        // Below one spread the expectation, which lies above the middle, could pass the high.
        range("spread_z", self.spread_z, 1.0, 4.0, "1 to 4")
    }

    /// The factors of all groups, in the order of the groups and of their members.
    pub(crate) fn times(&self) -> [(&'static str, f64); 21] {
        [
            ("kind.round", self.kind.round),
            ("kind.hail", self.kind.hail),
            ("kind.soft", self.kind.soft),
            ("kind.sharp", self.kind.sharp),
            ("kind.crease", self.kind.crease),
            ("kind.high", self.kind.high),
            ("metal.steel", self.metal.steel),
            ("metal.high_strength_steel", self.metal.high_strength_steel),
            ("metal.aluminium", self.metal.aluminium),
            ("access.open", self.access.open),
            ("access.trim_off", self.access.trim_off),
            ("access.braced", self.access.braced),
            ("access.glue_only", self.access.glue_only),
            ("access.none", self.access.none),
            ("place.flat", self.place.flat),
            ("place.body_line", self.place.body_line),
            ("place.edge", self.place.edge),
            ("place.rail", self.place.rail),
            ("paint.factory", self.paint.factory),
            ("paint.old", self.paint.old),
            ("paint.repainted", self.paint.repainted),
        ]
    }
}

impl Widths {
    fn each(&self) -> [(&'static str, f64); 9] {
        [
            ("width.base", self.base),
            ("width.power", self.power),
            ("width.count_power", self.count_power),
            ("width.kind", self.kind),
            ("width.metal", self.metal),
            ("width.access", self.access),
            ("width.place", self.place),
            ("width.paint", self.paint),
            ("width.cold", self.cold),
        ]
    }
}

fn range(field: &'static str, value: f64, least: f64, most: f64, must: &'static str) -> Result<(), SettingsError> {
    // A comparison with a value that is not a number is false, so NaN is refused here too.
    if value >= least && value <= most { Ok(()) } else { Err(SettingsError::Value { field, value, must }) }
}
