//! What is known of a line of dents, as the numbers that the regression has coefficients for.
//!
//! `ln(hours expected) = x·β`; the order of `x` is fixed here, once.

use crate::{Access, Conditions, Dent, HoursSettings, Kind, Metal, Paint, Place};

/// How many coefficients there are.
pub(crate) const SIZE: usize = PAINT + Paint::ALL.len();
/// Coefficients before the groups: base, area, depth, sharpness, count, cold.
const KIND: usize = 6;
const METAL: usize = KIND + Kind::ALL.len();
const ACCESS: usize = METAL + Metal::ALL.len();
const PLACE: usize = ACCESS + Access::ALL.len();
const PAINT: usize = PLACE + Place::ALL.len();

/// How many features a line has that are not zero by their kind.
const EACH: usize = 11;

/// One feature of a line: its name, its coefficient's place, its value.
pub(crate) type Feature = (&'static str, usize, f64);

/// The features of a line of dents.
pub(crate) fn features(dent: &Dent, conditions: &Conditions, settings: &HoursSettings) -> [Feature; EACH] {
    let depth = dent.depth_mm.abs() / settings.depth_ref_mm;
    let sharpness = dent.sharpness() / settings.sharpness_ref;
    let cold = conditions.panel_c.map_or(0.0, |panel_c| (settings.cold_under_c - panel_c).max(0.0) / 10.0);
    [
        ("base", 0, 1.0),
        ("area", 1, (dent.area_mm2() / settings.area_ref_mm2).ln()),
        ("depth", 2, f64::midpoint(1.0, depth).ln()),
        ("sharpness", 3, f64::midpoint(1.0, sharpness).ln()),
        ("kind", KIND + dent.kind as usize, 1.0),
        ("metal", METAL + dent.metal as usize, 1.0),
        ("access", ACCESS + dent.access as usize, 1.0),
        ("place", PLACE + dent.place as usize, 1.0),
        ("paint", PAINT + conditions.paint as usize, 1.0),
        ("cold", 5, cold),
        ("count", 4, f64::from(dent.count).ln()),
    ]
}

/// A coefficient before anything was learned.
pub(crate) struct Start {
    /// Its name, such as `depth_power` or `kind.crease`.
    pub name: &'static str,
    /// Its value: a power, or the logarithm of a factor.
    pub mean: f64,
    /// Its standard deviation; none for what is compared with.
    pub width: f64,
    /// Whether it is the logarithm of a factor.
    pub factor: bool,
}

/// All coefficients in the order of the features.
pub(crate) fn starts(settings: &HoursSettings) -> Vec<Start> {
    let (s, width) = (settings, &settings.width);
    let power = |name, mean, width| Start { name, mean, width, factor: false };
    let times = |name, times: f64, width| Start { name, mean: times.ln(), width, factor: true };
    let mut all = vec![
        times("base_hours", s.base_hours, width.base),
        power("area_power", s.area_power, width.power),
        power("depth_power", s.depth_power, width.power),
        power("sharpness_power", s.sharpness_power, width.power),
        power("count_power", s.count_power, width.count_power),
        times("cold_times", s.cold_times, width.cold),
    ];
    // The first of a group is what the others are compared with: the base carries it.
    let mut group = |names: &[(&'static str, f64)], width: f64| {
        let each = names.iter().enumerate();
        all.extend(each.map(|(at, (name, of))| times(name, *of, if at == 0 { 0.0 } else { width })));
    };
    let named = s.times();
    let (kinds, rest) = named.split_at(Kind::ALL.len());
    let (metals, rest) = rest.split_at(Metal::ALL.len());
    let (accesses, rest) = rest.split_at(Access::ALL.len());
    let (places, paints) = rest.split_at(Place::ALL.len());
    group(kinds, width.kind);
    group(metals, width.metal);
    group(accesses, width.access);
    group(places, width.place);
    group(paints, width.paint);
    all
}
