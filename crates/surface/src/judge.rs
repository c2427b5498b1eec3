//! Done, not done, or cannot tell: what is left against a finish limit, by probability, place by place.
//!
//! Two things are judged at the scale the limit names, which keeps peel out: how far the panel lies off
//! ([`longer_than`] of the deviation), and how steep that is over a run of twice the scale, since a mirrored line
//! bends with the slope. Each cell has a chance to be over the limit, from its value and its doubt; nothing is
//! assumed of how likely dents are. Cells of one spot, and elsewhere of one centimetre, share their error, so the
//! largest chance stands for them all. The panel is done where the chance that no place is over reaches
//! [`SURE`]; not done where some place is over with that chance; else nobody can tell, and what would settle it is
//! said.
//!
//! Limits: what was not read is judged only as a hole; beyond the rim of what was read nothing is said.

use crate::finish::{Finish, FinishLimit, Hole, Settle, SettleCode, SpotFinish, Verdict};
use crate::gauss::longer_than;
use crate::grid::Map;
use crate::normal::below;
use crate::spots::Spot;
use rayon::prelude::*;

/// Chance from which something counts as sure.
pub const SURE: f64 = 0.95;
/// The one-sided normal value of [`SURE`].
const SURE_SIGMAS: f64 = 1.645;
/// Side of the patches of sound metal whose cells share their error, mm; as for the volume of a change.
const PATCH_MM: f64 = 10.0;
/// A spot's cells lie within its ellipse times this.
const SPOT_REACH: f64 = 1.3;
/// No reading has less doubt, mm: peel itself.
const LEAST_SIGMA_MM: f64 = 0.0003;

/// Judges a deviation against a limit: the whole, and spot by spot.
#[must_use]
pub fn judge(
    deviation: &Map,
    sigma: &Map,
    spots: &[Spot],
    holes: &[Hole],
    limit: &FinishLimit,
) -> (Finish, Vec<SpotFinish>) {
    let cells = Cells::of(deviation, sigma, limit);
    let owner = owners(deviation, spots);
    let mut worst_of_spot: Vec<Option<usize>> = vec![None; spots.len()];
    let grid = deviation.grid;
    let across = ((PATCH_MM / grid.step_mm).round() as usize).max(1);
    let patches_x = grid.nx.div_ceil(across);
    let mut worst_of_patch: Vec<Option<usize>> = vec![None; patches_x * grid.ny.div_ceil(across)];
    for i in (0..grid.len()).filter(|&i| !cells.excess[i].is_nan()) {
        let place = match owner[i] {
            Some(spot) => &mut worst_of_spot[spot],
            None => &mut worst_of_patch[(i / grid.nx / across) * patches_x + (i % grid.nx) / across],
        };
        if place.is_none_or(|worst| cells.excess[i] > cells.excess[worst]) {
            *place = Some(i);
        }
    }
    let of_spots = spots.iter().zip(&worst_of_spot).map(|(spot, worst)| cells.spot(spot, *worst)).collect();
    let patches: Vec<usize> = worst_of_patch.into_iter().flatten().collect();
    let whole = cells.whole(&worst_of_spot, &patches, holes);
    (whole, of_spots)
}

/// Per cell: value, and how far beyond the limit.
struct Cells<'a> {
    limit: &'a FinishLimit,
    smooth: Map,
    sigma: &'a Map,
    /// How far beyond the limit, in doubts; the larger of depth and slope. NaN where nothing was read.
    excess: Vec<f64>,
}

impl<'a> Cells<'a> {
    fn of(deviation: &Map, sigma: &'a Map, limit: &'a FinishLimit) -> Self {
        let smooth = longer_than(deviation, limit.scale_mm);
        let mut cells = Self { limit, smooth, sigma, excess: Vec::new() };
        let worse = |i: usize| {
            let [deep, _, steep] = cells.sigmas(i);
            if deep.is_nan() { f64::NAN } else { deep.max(steep) }
        };
        cells.excess = (0..deviation.grid.len()).into_par_iter().with_min_len(4096).map(worse).collect();
        cells
    }

    /// Slope at a cell, and its doubt.
    fn slope(&self, i: usize) -> (f64, f64) {
        slope_at(&self.smooth, self.sigma, i, self.limit.scale_mm)
    }

    /// How far a cell is beyond the limit on its own side, on the other side, and in slope, in doubts.
    fn sigmas(&self, i: usize) -> [f64; 3] {
        let (d, s) = (f64::from(self.smooth.values[i].abs()), f64::from(self.sigma.values[i]));
        let (g, gs) = self.slope(i);
        let steep = if g.is_finite() { (g.hypot(gs) - self.limit.slope) / gs } else { f64::NEG_INFINITY };
        [(d - self.limit.depth_mm) / s, (-d - self.limit.depth_mm) / s, steep]
    }

    /// The chance that a cell is over the limit.
    fn over(&self, i: usize) -> f64 {
        let [deep, other, steep] = self.sigmas(i);
        let either = (below(deep) + below(other)).min(1.0);
        1.0 - (1.0 - either) * (1.0 - below(steep))
    }

    fn spot(&self, spot: &Spot, worst: Option<usize>) -> SpotFinish {
        let Some(worst) = worst else {
            let settle = Settle {
                code: SettleCode::ReadTheRest,
                x_mm: spot.x_mm,
                y_mm: spot.y_mm,
                sigma_mm: None,
                needed_sigma_mm: None,
            };
            let unknown = Verdict::CannotTell;
            return SpotFinish { verdict: unknown, over: 0.5, slope: 0.0, slope_sigma: 0.0, settle: Some(settle) };
        };
        let over = self.over(worst);
        let verdict = match over {
            p if p >= SURE => Verdict::NotDone,
            p if p <= 1.0 - SURE => Verdict::Done,
            _ => Verdict::CannotTell,
        };
        let (slope, slope_sigma) = Some(self.slope(worst)).filter(|s| s.0.is_finite()).unwrap_or_default();
        let settle = (verdict == Verdict::CannotTell).then(|| self.settle(worst, SURE_SIGMAS));
        SpotFinish { verdict, over, slope, slope_sigma, settle }
    }

    fn whole(&self, spots: &[Option<usize>], patches: &[usize], holes: &[Hole]) -> Finish {
        let spots: Vec<usize> = spots.iter().copied().flatten().collect();
        let chance = |i: &usize| self.over(*i);
        let within: f64 = spots.iter().chain(patches).map(|i| 1.0 - chance(i)).product();
        // The worst of many patches is over by chance more often than one that stands out as a spot.
        let by_chance = patches.iter().map(chance).fold(0.0, f64::max);
        let over = (1.0 - patches.len() as f64 * (1.0 - by_chance)).max(0.0);
        let over = spots.iter().map(chance).fold(over, f64::max);
        let steep = holes.iter().filter(|h| h.steep).max_by(|a, b| a.area_mm2.total_cmp(&b.area_mm2));
        let hole = steep.or_else(|| holes.iter().max_by(|a, b| a.area_mm2.total_cmp(&b.area_mm2)));
        let worst = spots.iter().chain(patches).copied().max_by(|a, b| self.excess[*a].total_cmp(&self.excess[*b]));
        let verdict = match (steep, hole) {
            (Some(_), _) => Verdict::NotDone,
            _ if over >= SURE => Verdict::NotDone,
            (_, None) if within >= SURE => Verdict::Done,
            _ => Verdict::CannotTell,
        };
        let in_doubt = within < SURE && verdict == Verdict::CannotTell;
        let settle = match (hole, worst) {
            (_, Some(worst)) if in_doubt => {
                let many = (1.0 - (1.0 - SURE) / patches.len().max(1) as f64).clamp(SURE, 1.0);
                Some(self.settle(worst, if spots.contains(&worst) { SURE_SIGMAS } else { sigmas_of(many) }))
            }
            (Some(hole), _) if verdict != Verdict::Done => Some(hole.settle()),
            _ => None,
        };
        Finish {
            limit_mm: self.limit.depth_mm,
            slope_limit: Some(self.limit.slope),
            scale_mm: Some(self.limit.scale_mm),
            verdict,
            reason: self.reason(verdict, worst, steep.is_some(), hole.is_some()),
            within: Some(within),
            over: Some(over),
            settle,
        }
    }

    /// What would tell whether a cell is over: a doubt small enough beside its distance from the limit.
    fn settle(&self, i: usize, sigmas: f64) -> Settle {
        let s = f64::from(self.sigma.values[i]);
        let depth = (f64::from(self.smooth.values[i].abs()) - self.limit.depth_mm).abs() / sigmas;
        let (g, gs) = self.slope(i);
        let slope = if g.is_finite() { s * (g - self.limit.slope).abs() / (sigmas * gs) } else { f64::INFINITY };
        let needed = depth.min(slope);
        let (x_mm, y_mm) = self.smooth.grid.position(i);
        let code = if needed < LEAST_SIGMA_MM { SettleCode::AtTheLimit } else { SettleCode::LessDoubt };
        Settle { code, x_mm, y_mm, sigma_mm: Some(s), needed_sigma_mm: Some(needed) }
    }

    fn reason(&self, verdict: Verdict, worst: Option<usize>, steep: bool, hole: bool) -> String {
        let FinishLimit { depth_mm, slope, .. } = self.limit;
        let limit = format!("the limit is {:.0} µm and {:.1} mrad", depth_mm * 1e3, slope * 1e3);
        let Some(i) = worst else { return format!("nothing was read; {limit}") };
        let (d, s) = (f64::from(self.smooth.values[i].abs()) * 1e3, 2e3 * f64::from(self.sigma.values[i]));
        let g = self.slope(i).0 * 1e3;
        let at =
            if g.is_finite() { format!("{d:.0} ± {s:.1} µm, {g:.1} mrad") } else { format!("{d:.0} ± {s:.1} µm") };
        match verdict {
            Verdict::NotDone if steep => format!("a place is too steep to be read; {limit}"),
            Verdict::NotDone => format!("the place farthest over it has {at}; {limit}"),
            Verdict::Done => format!("the place nearest to it has {at}; {limit}"),
            Verdict::CannotTell if hole => format!("a place inside was not read; elsewhere at most {at}; {limit}"),
            Verdict::CannotTell => format!("{at} may lie on either side of it; {limit}"),
        }
    }
}

impl Hole {
    fn settle(&self) -> Settle {
        let code = if self.steep { SettleCode::Closer } else { SettleCode::ReadTheRest };
        Settle { code, x_mm: self.x_mm, y_mm: self.y_mm, sigma_mm: None, needed_sigma_mm: None }
    }
}

/// Slope over a run of twice the scale about a cell, and its doubt; NaN where an end was not read.
fn slope_at(smooth: &Map, sigma: &Map, i: usize, scale_mm: f64) -> (f64, f64) {
    let grid = smooth.grid;
    let reach = ((scale_mm / grid.step_mm).round() as usize).max(1);
    let run_mm = 2.0 * reach as f64 * grid.step_mm;
    let along = |at: usize, length: usize, stride: usize| {
        if at < reach || at + reach >= length {
            return (f64::NAN, f64::NAN);
        }
        let (a, b) = (i - reach * stride, i + reach * stride);
        let rise = f64::from(smooth.values[b]) - f64::from(smooth.values[a]);
        (rise / run_mm, f64::from(sigma.values[a]).hypot(f64::from(sigma.values[b])) / run_mm)
    };
    let ((gx, sx), (gy, sy)) = (along(i % grid.nx, grid.nx, 1), along(i / grid.nx, grid.ny, grid.nx));
    let g = gx.hypot(gy);
    let s = if g > 0.0 { (gx * sx).hypot(gy * sy) / g } else { sx.max(sy) };
    (g, s)
}

/// Which spot a cell belongs to.
fn owners(map: &Map, spots: &[Spot]) -> Vec<Option<usize>> {
    let grid = map.grid;
    let mut owner = vec![None; grid.len()];
    // Small ellipses last, so that a spot inside a large one keeps its own cells: also a low within the thin ring of a
    // high, which has the smaller area.
    let mut order: Vec<usize> = (0..spots.len()).collect();
    let spans = |k: usize| spots[k].length_mm * spots[k].width_mm;
    order.sort_by(|&a, &b| spans(b).total_cmp(&spans(a)));
    for k in order {
        let s = &spots[k];
        let (sin, cos) = s.angle_deg.to_radians().sin_cos();
        let (long, wide) = (0.5 * SPOT_REACH * s.length_mm, 0.5 * SPOT_REACH * s.width_mm);
        let (fx, fy) = grid.locate(s.x_mm, s.y_mm);
        let reach = long / grid.step_mm;
        let range = |f: f64, n: usize| (f - reach).max(0.0) as usize..((f + reach + 2.0).max(0.0) as usize).min(n);
        for iy in range(fy, grid.ny) {
            for ix in range(fx, grid.nx) {
                let (x, y) = grid.at(ix, iy);
                let (x, y) = (x - s.x_mm, y - s.y_mm);
                let (u, v) = ((x * cos + y * sin) / long, (y * cos - x * sin) / wide);
                if u * u + v * v <= 1.0 {
                    owner[iy * grid.nx + ix] = Some(k);
                }
            }
        }
    }
    owner
}

/// The value a standard normal stays under with a chance, by halving.
fn sigmas_of(chance: f64) -> f64 {
    let (mut low, mut high) = (0.0, 8.0);
    for _ in 0..50 {
        let middle = 0.5 * (low + high);
        if below(middle) < chance { low = middle } else { high = middle }
    }
    low
}
