//! One reading laid on an earlier one by what the panel itself shows, for when its stickers were replaced.
//!
//! Paint has a texture of its own, and it stays: peel of a few millimetres, dirt under the clear coat, dents nobody
//! worked on. What is shorter than a centimetre is kept of both deviations and held within a few times its usual
//! size, so that the damage that was worked does not lead. Turn by turn the correlation over all shifts is taken
//! at once (by Fourier transform), the best place refined by least squares (Lucas and Kanade 1981).
//!
//! Limits: the panel is looked at about the same way up (within [`MOST_TURN_DEG`]); polished or repainted texture, or
//! a reading too coarse to show it, is not recognised, and said to be so.

use crate::fourier::Fourier;
use crate::gauss::between;
use crate::grid::{Grid, Map};
use crate::laying::{LaidBy, Laying};
use nalgebra::{Complex, Matrix3, Vector3};
use rayon::prelude::*;

/// Turns that are tried, degrees either way, and between them. Half a step moves the rim of a patch of 200 mm by less
/// than half the shortest wave kept.
const MOST_TURN_DEG: i32 = 24;
const TURNS_A_DEGREE: i32 = 2;
/// Cells of the search, mm.
const SEARCH_MM: f64 = 1.0;
/// What is kept of both maps: between these wavelengths, mm.
const BAND_MM: [f64; 2] = [2.0, 10.0];
/// Values are held within this many times their middle size.
const HELD: f32 = 3.0;
/// Correlation from which two maps show the same panel: maps of different panels reach 0.1 (tests).
const LEAST_LIKENESS: f64 = 0.3;
/// Area that must be read in both, mm²: several hundred waves of texture.
const LEAST_COMMON_MM2: f64 = 4_000.0;
/// Area over which texture says the same thing, mm²: about a wave each way.
const ALIKE_MM2: f64 = 9.0;
/// No place is known better, mm.
const FLOOR_MM: f64 = 0.02;

/// Lays a later deviation on an earlier one by their common texture; `None` where they have too little in common.
#[must_use]
pub fn lay_by_shape(earlier: &Map, later: &Map) -> Option<Laying> {
    let (a, b) = (Signal::of(earlier), Signal::of(later));
    let (coarse_a, coarse_b) = (a.at_step(SEARCH_MM), b.at_step(SEARCH_MM));
    let search = Search::new(&coarse_a, &coarse_b);
    let turns: Vec<f64> = (-MOST_TURN_DEG * TURNS_A_DEGREE..=MOST_TURN_DEG * TURNS_A_DEGREE)
        .map(|k| f64::from(k) / f64::from(TURNS_A_DEGREE))
        .collect();
    let tried = turns.par_iter().map(|t| search.best_shift(t.to_radians()));
    let (_, start) = tried.reduce(|| (f32::MIN, [0.0; 3]), |x, y| if y.0 > x.0 { y } else { x });
    refined(&a, &b, start)
}

/// What is kept of a deviation; zero where it was not read.
struct Signal {
    map: Map,
}

impl Signal {
    fn of(deviation: &Map) -> Self {
        let mut map = between(deviation, Some(BAND_MM[0]), Some(BAND_MM[1]));
        let mut sizes: Vec<f32> = map.values.iter().filter(|v| v.is_finite()).map(|v| v.abs()).collect();
        sizes.sort_by(f32::total_cmp);
        let most = HELD * sizes.get(sizes.len() / 2).copied().unwrap_or(0.0);
        map.values.iter_mut().for_each(|v| *v = v.clamp(-most, most));
        Self { map }
    }

    fn at_step(&self, step_mm: f64) -> Self {
        let grid = self.map.grid;
        let times = grid.step_mm / step_mm;
        let count = |n: usize| (((n - 1) as f64 * times) as usize + 1).max(2);
        let grid = Grid { step_mm, nx: count(grid.nx), ny: count(grid.ny), ..grid };
        let at = |i| {
            let (x, y) = grid.position(i);
            self.map.sample(x, y).map_or(f32::NAN, |v| v as f32)
        };
        Self { map: Map { grid, values: (0..grid.len()).map(at).collect() } }
    }
}

/// Correlation of the earlier map, turned, with the later one at all shifts.
struct Search<'a> {
    earlier: &'a Signal,
    later: Grid,
    /// Side of the square transform.
    n: usize,
    fourier: Fourier,
    /// Transform of the later map, conjugated.
    spectrum: Vec<Complex<f32>>,
}

impl<'a> Search<'a> {
    fn new(earlier: &'a Signal, later: &Signal) -> Self {
        let (e, l) = (earlier.map.grid, later.map.grid);
        // The turned earlier map lies in a square about its middle.
        let across = (e.nx as f64).hypot(e.ny as f64).ceil() as usize;
        let n = (across + l.nx.max(l.ny)).next_power_of_two();
        let fourier = Fourier::of(n);
        let mut spectrum = vec![Complex::default(); n * n];
        for iy in 0..l.ny {
            for ix in 0..l.nx {
                let value = later.map.values[iy * l.nx + ix];
                spectrum[iy * n + ix].re = if value.is_finite() { value } else { 0.0 };
            }
        }
        fourier.transform(&mut spectrum);
        spectrum.iter_mut().for_each(|v| *v = v.conj());
        Self { earlier, later: l, n, fourier, spectrum }
    }

    /// Best correlation at a turn, and the move `[turn, dx, dy]` that gives it.
    fn best_shift(&self, turn: f64) -> (f32, [f64; 3]) {
        let (e, n, step) = (self.earlier.map.grid, self.n, self.later.step_mm);
        let across = (e.nx as f64).hypot(e.ny as f64).ceil() as usize;
        let middle = e.at(e.nx / 2, e.ny / 2);
        let (sin, cos) = turn.sin_cos();
        let half = 0.5 * across as f64;
        let mut field = vec![Complex::default(); n * n];
        for iy in 0..across {
            for ix in 0..across {
                let (x, y) = ((ix as f64 - half) * step, (iy as f64 - half) * step);
                let value = self.earlier.map.sample(middle.0 + x * cos + y * sin, middle.1 + y * cos - x * sin);
                field[iy * n + ix].re = value.unwrap_or(0.0) as f32;
            }
        }
        self.fourier.transform(&mut field);
        // The correlation is real, so the conjugate that the inverse ends with can be left out.
        field.iter_mut().zip(&self.spectrum).for_each(|(f, s)| *f = (*f * s).conj());
        self.fourier.transform(&mut field);
        let best = (0..n * n).max_by(|&i, &j| field[i].re.total_cmp(&field[j].re)).unwrap_or(0);
        // Shift of the field over the later map: its cell (ix, iy) lies on the later one's (ix - sx, iy - sy).
        let signed = |k: usize| if k > n / 2 { k as f64 - n as f64 } else { k as f64 };
        let (sx, sy) = (signed(best % n), signed(best / n));
        let on = (self.later.x0_mm + (half - sx) * step, self.later.y0_mm + (half - sy) * step);
        let turned = (middle.0 * cos - middle.1 * sin, middle.0 * sin + middle.1 * cos);
        (field[best].re, [turn, on.0 - turned.0, on.1 - turned.1])
    }
}

/// Rounds of least squares; each nearly ends the work.
const ROUNDS: usize = 12;

fn refined(earlier: &Signal, later: &Signal, start: [f64; 3]) -> Option<Laying> {
    let grid = later.map.grid;
    let mut at = start;
    let mut fit = Fit::at(earlier, later, at)?;
    for _ in 0..ROUNDS {
        let step = fit.normal.lu().solve(&fit.right)?;
        let next = [at[0] + step[0], at[1] + step[1], at[2] + step[2]];
        let better = Fit::at(earlier, later, next)?;
        if better.likeness <= fit.likeness {
            break;
        }
        (at, fit) = (next, better);
    }
    if fit.likeness < LEAST_LIKENESS || fit.common as f64 * grid.step_mm.powi(2) < LEAST_COMMON_MM2 {
        return None;
    }
    // Neighbouring cells say the same thing, so each counts only its share.
    let alike = (ALIKE_MM2 / grid.step_mm.powi(2)).max(1.0);
    let doubt = fit.normal.try_inverse()? * (fit.left * alike);
    let middle = fit.middle;
    // The turn is about the origin: seen from the middle the shift is known better than there.
    let (mx, my) = (-(middle.1 - at[2]), middle.0 - at[1]);
    let seen = |m: f64, k: usize| doubt[(k, k)] + 2.0 * m * doubt[(0, k)] + m * m * doubt[(0, 0)];
    let place = (0.5 * (seen(mx, 1) + seen(my, 2))).max(0.0).sqrt();
    Some(Laying {
        turn_rad: at[0],
        dx_mm: at[1],
        dy_mm: at[2],
        by: LaidBy::Shape { likeness: fit.likeness },
        middle_x_mm: middle.0,
        middle_y_mm: middle.1,
        place_sigma_mm: place.hypot(FLOOR_MM),
        turn_sigma_rad: doubt[(0, 0)].max(0.0).sqrt(),
    })
}

/// Normal equations of a small further move, and how alike the maps are as they lie.
struct Fit {
    normal: Matrix3<f64>,
    right: Vector3<f64>,
    likeness: f64,
    /// Mean square of what differs.
    left: f64,
    common: usize,
    middle: (f64, f64),
}

impl Fit {
    fn at(earlier: &Signal, later: &Signal, [turn, dx, dy]: [f64; 3]) -> Option<Self> {
        let (grid, step) = (later.map.grid, later.map.grid.step_mm);
        let (sin, cos) = turn.sin_cos();
        let back = |x: f64, y: f64| ((x - dx) * cos + (y - dy) * sin, (y - dy) * cos - (x - dx) * sin);
        let sample = |x: f64, y: f64| {
            let (x, y) = back(x, y);
            earlier.map.sample(x, y)
        };
        let mut sums = Sums::default();
        for i in 0..grid.len() {
            let l = f64::from(later.map.values[i]);
            let (x, y) = grid.position(i);
            let Some(e) = sample(x, y).filter(|_| l.is_finite()) else { continue };
            let around = [sample(x + step, y), sample(x - step, y), sample(x, y + step), sample(x, y - step)];
            let [Some(right), Some(left), Some(up), Some(down)] = around else { continue };
            let (gx, gy) = ((right - left) / (2.0 * step), (up - down) / (2.0 * step));
            // A turn moves a place about the shift; a move takes the earlier map along.
            sums.add(e, l, Vector3::new(gx * (y - dy) - gy * (x - dx), -gx, -gy), (x, y));
        }
        (sums.count > 0.0 && sums.ee > 0.0 && sums.ll > 0.0).then(|| sums.fit())
    }
}

#[derive(Default)]
struct Sums {
    normal: Matrix3<f64>,
    right: Vector3<f64>,
    ee: f64,
    el: f64,
    ll: f64,
    count: f64,
    at: (f64, f64),
}

impl Sums {
    fn add(&mut self, e: f64, l: f64, g: Vector3<f64>, at: (f64, f64)) {
        self.normal += g * g.transpose();
        self.right += g * (l - e);
        self.ee += e * e;
        self.el += e * l;
        self.ll += l * l;
        self.count += 1.0;
        self.at = (self.at.0 + at.0, self.at.1 + at.1);
    }

    fn fit(self) -> Fit {
        Fit {
            normal: self.normal,
            right: self.right,
            likeness: self.el / (self.ee * self.ll).sqrt(),
            left: (self.ee - 2.0 * self.el + self.ll) / self.count,
            common: self.count as usize,
            middle: (self.at.0 / self.count, self.at.1 / self.count),
        }
    }
}
