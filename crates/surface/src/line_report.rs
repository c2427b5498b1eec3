//! How a body line runs: its height, its place sideways and its sharpness, station by station.
//!
//! Cross sections along the line are each levelled; their middle one, value by value, is the line's own profile
//! `P(t)`, which damage on a part of it does not pull. Each section is then fitted by `a + b t + c P(t) + d P′(t)`:
//! `c` is how sharp the line is there (1 = as the rest of it), `−d / c` how far it lies sideways. Its height is the
//! deviation from the intended shape on it, less its middle one.
//!
//! Limits: straight lines; where less than half the length is sound, the middle profile is that of the damage.

use crate::grid::Map;
use crate::line::BodyLine;
use nalgebra::{Matrix4, Vector4};
use serde::{Deserialize, Serialize};

/// A body line's run.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct LineReport {
    /// Direction of the line's normal from panel x, rad.
    pub normal_rad: f64,
    /// Distance of the line from the panel's origin along the normal, mm.
    pub offset_mm: f64,
    /// Turn of the surface across the line beyond the panel's own curvature, mrad, of its own profile.
    pub turn_mrad: f64,
    /// Stations along it.
    pub stations: Vec<Station>,
}

/// One place along a body line.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Station {
    /// Place along the line, mm.
    pub along_mm: f64,
    /// Panel x, mm.
    pub x_mm: f64,
    /// Panel y, mm.
    pub y_mm: f64,
    /// Height of the line over where it should be, mm.
    pub height_mm: f64,
    /// Its one-sigma doubt, mm.
    pub height_sigma_mm: f64,
    /// How far it lies sideways, along the normal, mm.
    pub sideways_mm: f64,
    /// Its one-sigma doubt, mm.
    pub sideways_sigma_mm: f64,
    /// Sharpness over that of the rest of the line.
    pub sharpness: f64,
    /// Its one-sigma doubt.
    pub sharpness_sigma: f64,
}

/// Between stations, mm.
const STATION_MM: f64 = 3.0;
/// Half a section's length across, mm, and between its places.
const ACROSS_MM: f64 = 12.0;
const STEP_MM: f64 = 0.5;
/// A section is the mean of so much along the line either way, mm: keeps peel out.
const ALONG_MM: f64 = 2.0;
/// Height of the line is the mean deviation this far to either side, mm.
const CREST_MM: f64 = 2.5;
/// Peel counts as this many independent places in a section: waves of some millimetres along 24 mm.
const INDEPENDENT: f64 = 8.0;
/// Fewer stations tell no profile of the line's own.
const LEAST_STATIONS: usize = 8;
/// A turn below this is no line, rad: a sixteenth of a degree.
const LEAST_TURN: f64 = 0.001;

/// How a body line runs between two places along it, mm; `None` where there is too little of it, or no line.
#[must_use]
pub fn line_report(
    height: &Map,
    deviation: &Map,
    sigma: &Map,
    line: &BodyLine,
    ends: (f64, f64),
) -> Option<LineReport> {
    let count = ((ends.1 - ends.0) / STATION_MM).floor();
    if !(1.0..10_000.0).contains(&count) {
        return None;
    }
    let along = |k: usize| ends.0 + (k as f64 + 0.5) * STATION_MM;
    let sections: Vec<(f64, Vec<f64>)> =
        (0..count as usize).filter_map(|k| Some((along(k), section(height, line, along(k))?))).collect();
    if sections.len() < LEAST_STATIONS {
        return None;
    }
    let profile = middle_profile(&sections);
    let turn = turn(&profile);
    if turn.abs() < LEAST_TURN {
        return None;
    }
    let mut stations: Vec<Station> =
        sections.iter().filter_map(|(s, z)| station(*s, z, &profile, deviation, sigma, line)).collect();
    let mut heights: Vec<f64> = stations.iter().map(|s| s.height_mm).collect();
    heights.sort_by(f64::total_cmp);
    let middle = heights.get(heights.len() / 2).copied()?;
    stations.iter_mut().for_each(|s| s.height_mm -= middle);
    Some(LineReport { normal_rad: line.normal_rad, offset_mm: line.offset_mm, turn_mrad: 1e3 * turn, stations })
}

/// Panel position of a place along and across a line.
fn place(line: &BodyLine, along: f64, across: f64) -> (f64, f64) {
    let (sin, cos) = line.normal_rad.sin_cos();
    let d = line.offset_mm + across;
    (d * cos - along * sin, d * sin + along * cos)
}

fn places() -> impl Iterator<Item = f64> {
    let n = (ACROSS_MM / STEP_MM) as i32;
    (-n..=n).map(|k| f64::from(k) * STEP_MM)
}

/// A section across, levelled; `None` where part of it was not read.
fn section(height: &Map, line: &BodyLine, along: f64) -> Option<Vec<f64>> {
    let mean = |t: f64| {
        let at = |s: f64| {
            let (x, y) = place(line, along + s, t);
            height.sample(x, y)
        };
        let all = [at(-ALONG_MM), at(-0.5 * ALONG_MM), at(0.0), at(0.5 * ALONG_MM), at(ALONG_MM)];
        all.into_iter().sum::<Option<f64>>().map(|sum| sum / 5.0)
    };
    let z: Vec<f64> = places().map(mean).collect::<Option<_>>()?;
    let n = z.len() as f64;
    let mid = z.iter().sum::<f64>() / n;
    let tt: f64 = places().map(|t| t * t).sum();
    let slope = places().zip(&z).map(|(t, v)| t * v).sum::<f64>() / tt;
    Some(places().zip(z).map(|(t, v)| v - mid - slope * t).collect())
}

/// The middle one of all sections, value by value.
fn middle_profile(sections: &[(f64, Vec<f64>)]) -> Vec<f64> {
    let n = sections[0].1.len();
    let middle = |k: usize| {
        let mut all: Vec<f64> = sections.iter().map(|s| s.1[k]).collect();
        all.sort_by(f64::total_cmp);
        all[all.len() / 2]
    };
    (0..n).map(middle).collect()
}

/// How far the slope turns in the inner half of the profile beyond its outer half: the panel's own curvature turns
/// alike in both.
fn turn(profile: &[f64]) -> f64 {
    let n = profile.len();
    let slope = |k: usize| derivative(profile, k);
    let (left, right) = (n / 4, n - 1 - n / 4);
    let inner = slope(right) - slope(left);
    inner - (slope(n - 1) - slope(right)) - (slope(left) - slope(0))
}

fn derivative(profile: &[f64], k: usize) -> f64 {
    let (a, b) = (k.saturating_sub(1), (k + 1).min(profile.len() - 1));
    (profile[b] - profile[a]) / ((b - a) as f64 * STEP_MM)
}

fn station(s: f64, z: &[f64], profile: &[f64], deviation: &Map, sigma: &Map, line: &BodyLine) -> Option<Station> {
    let mut normal = Matrix4::<f64>::zeros();
    let mut right = Vector4::<f64>::zeros();
    let row = |k: usize, t: f64| Vector4::new(1.0, t / ACROSS_MM, profile[k], derivative(profile, k));
    for (k, t) in places().enumerate() {
        let row = row(k, t);
        normal += row * row.transpose();
        right += row * z[k];
    }
    let inverse = normal.try_inverse()?;
    let c = inverse * right;
    let left: f64 = places().enumerate().map(|(k, t)| (z[k] - row(k, t).dot(&c)).powi(2)).sum::<f64>() / z.len() as f64;
    // Neighbouring places say the same thing, so fewer count.
    let doubt = inverse * (left * z.len() as f64 / INDEPENDENT);
    let sharpness = c[2];
    if sharpness.abs() < 0.1 {
        return None;
    }
    let crest = |map: &Map| {
        let at = |t: f64| {
            let (x, y) = place(line, s, t);
            map.sample(x, y)
        };
        let all: Vec<f64> =
            [-CREST_MM, -0.5 * CREST_MM, 0.0, 0.5 * CREST_MM, CREST_MM].into_iter().filter_map(at).collect();
        (!all.is_empty()).then(|| all.iter().sum::<f64>() / all.len() as f64)
    };
    let (x_mm, y_mm) = place(line, s, 0.0);
    Some(Station {
        along_mm: s,
        x_mm,
        y_mm,
        height_mm: crest(deviation)?,
        height_sigma_mm: crest(sigma)?,
        sideways_mm: -c[3] / sharpness,
        sideways_sigma_mm: doubt[(3, 3)].max(0.0).sqrt() / sharpness.abs(),
        sharpness,
        sharpness_sigma: doubt[(2, 2)].max(0.0).sqrt(),
    })
}

/// A line drawn by hand from one place to another, brought onto the ridge beside it, with the places along it where
/// it begins and ends; `None` for a stroke too short.
#[must_use]
pub fn drawn_line(height: &Map, from: (f64, f64), to: (f64, f64)) -> Option<(BodyLine, (f64, f64))> {
    let length = (to.0 - from.0).hypot(to.1 - from.1);
    if !(length > STATION_MM * LEAST_STATIONS as f64) {
        return None;
    }
    let start = BodyLine::through(from, to);
    let mut best = (0.0f64, start);
    for (turn, shift) in [(0.05, 6.0), (0.01, 1.2)] {
        let about = best.1;
        for i in -6..=6 {
            for j in -6..=6 {
                let angle = about.normal_rad + turn * f64::from(i) / 6.0;
                let middle = (0.5 * (from.0 + to.0), 0.5 * (from.1 + to.1));
                let aside = about.across_along(middle).0;
                let at = angle.cos() * middle.0 + angle.sin() * middle.1 - aside + shift * f64::from(j) / 6.0;
                let line = BodyLine { normal_rad: angle, offset_mm: at };
                let bend = mean_bend(height, &line, from, to);
                if bend > best.0 {
                    best = (bend, line);
                }
            }
        }
    }
    let line = best.1;
    let (a, b) = (line.across_along(from).1, line.across_along(to).1);
    Some((line, (a.min(b), a.max(b))))
}

/// Mean size of the second difference across a line, over 3 mm to either side.
fn mean_bend(height: &Map, line: &BodyLine, from: (f64, f64), to: (f64, f64)) -> f64 {
    let (a, b) = (line.across_along(from).1, line.across_along(to).1);
    let (mut sum, mut count, mut s) = (0.0, 0.0, a.min(b));
    while s < a.max(b) {
        let at = |t: f64| {
            let (x, y) = place(line, s, t);
            height.sample(x, y)
        };
        if let (Some(l), Some(m), Some(r)) = (at(-3.0), at(0.0), at(3.0)) {
            sum += l - 2.0 * m + r;
            count += 1.0;
        }
        s += 2.0;
    }
    if count > 0.0 { f64::abs(sum / count) } else { 0.0 }
}
