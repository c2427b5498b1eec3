//! Balance of the round piece: Newton's method, and a drag that fades where it snaps.

use super::{Act, Look, Round};
use nalgebra::{Cholesky, DVector, Dyn, LU};

/// Out-of-balance force allowed, N.
const BALANCED_N: f64 = 0.01;
/// Distance from a level that is given, mm.
const LEVEL_MM: f64 = 1e-6;
/// Newton steps before a shape is given up.
const ROUNDS: usize = 25;
/// The same where it snaps, and the drag it starts with, N/mm a coefficient.
const SNAP_ROUNDS: usize = 100;
const DRAG: f64 = 20.0;
/// Share of the greatest out-of-balance force under which there is no drag any more.
const NO_DRAG: f64 = 1e-3;

impl Round {
    /// Finds balance under what acts and keeps what it leaves; the forces pressed. None where there is no rest: it then
    /// stands as before.
    pub fn settle(&mut self, act: &Act) -> Option<DVector<f64>> {
        self.newton(act, ROUNDS, 0.0)
    }

    /// The same for a sheet that snaps to another shape.
    pub fn snap(&mut self, act: &Act) -> Option<DVector<f64>> {
        self.newton(act, SNAP_ROUNDS, DRAG)
    }

    /// Moves the sheet as its stiffness says when a tip that stands as `act` says goes on by so much along z, mm.
    pub fn follow(&mut self, act: &Act, by: f64) {
        let Act::Tip(under, tip) = act else { return };
        let look = self.look(&self.now, act, 0.0);
        let mut along = DVector::zeros(self.now.len());
        for u in *under {
            let (_, slope) = tip(u.radius, self.sum(&u.share, u.cell, &self.now));
            for a in 0..4 {
                along[self.n() + u.cell + a] -= slope * u.area * u.share[a] * by;
            }
        }
        if let Some(step) = self.factor(&look, &self.now, 0.0, 0.0).0.solve(&along) {
            self.now += step;
        }
    }

    fn newton(&mut self, act: &Act, rounds: usize, drag: f64) -> Option<DVector<f64>> {
        let (mut now, mut force) = (self.now.clone(), 0.0);
        let mut look = self.look(&now, act, force);
        let mut worst = 0.0f64;
        for round in 0..rounds {
            let size = self.left_over(&look);
            if round > 0 && size < BALANCED_N && missing(act, &now).abs() < LEVEL_MM {
                (self.now, self.memory) = (now, look.memory);
                return Some(look.pressed);
            }
            worst = worst.max(size);
            let slowed = if size > NO_DRAG * worst { drag * size / worst } else { 0.0 };
            let (step, by) = self.step(&look, act, &now, slowed, drag)?;
            let before = look.force.dot(&step);
            let mut share = 1.0;
            (now, look, force) = loop {
                let moved = &now + share * &step;
                let next = self.look(&moved, act, force + share * by);
                let after = next.force.dot(&step);
                // a step that goes downhill may end steeper; only a climb means it went too far
                let level = if before < 0.0 { after } else { after.abs() } <= 0.8 * before.abs();
                if round == 0 || level || self.left_over(&next) < size || share < 0.05 {
                    break (moved, next, force + share * by);
                }
                share *= (before / (before - after)).clamp(0.1, 0.6);
            };
        }
        None
    }

    /// Newton's step, and that of the force of a load whose level is given.
    fn step(&self, look: &Look, act: &Act, now: &DVector<f64>, slowed: f64, drag: f64) -> Option<(DVector<f64>, f64)> {
        let (lu, f) = self.factor(look, now, slowed, drag);
        let mut step = lu.solve(&f)?;
        let mut by = 0.0;
        if let Act::Level(load, _) = act {
            let give = lu.solve(*load)?;
            by = (missing(act, now) - load.dot(&step)) / load.dot(&give);
            step += by * give;
        }
        step.iter().all(|v| v.is_finite()).then_some((step, by))
    }

    /// Holds the middle: no move along the radius, level. Where there is drag, it is raised until no direction gives way.
    fn factor(&self, look: &Look, now: &DVector<f64>, slowed: f64, drag: f64) -> (LU<f64, Dyn, Dyn>, DVector<f64>) {
        let n = self.n();
        let mut k = look.stiffness.clone();
        let mut f = -&look.force;
        let stiff = 1e3 * k[(n + 1, n + 1)].abs().max(k[(1, 1)].abs());
        k[(0, 0)] += stiff;
        f[0] -= stiff * now[0];
        let off = now[n] - now[n + 1];
        for (i, s) in [(n, 1.0), (n + 1, -1.0)] {
            f[i] -= s * stiff * off;
            for (j, t) in [(n, 1.0), (n + 1, -1.0)] {
                k[(i, j)] += s * t * stiff;
            }
        }
        if drag > 0.0 {
            (0..2 * n).for_each(|i| k[(i, i)] += slowed);
            let mut more = 0.05 * drag;
            while more < 1e6 * drag && Cholesky::new(k.clone()).is_none() {
                (0..2 * n).for_each(|i| k[(i, i)] += more);
                more *= 3.0;
            }
        }
        (k.lu(), f)
    }

    /// Length of the forces left over, N; what the middle bears itself is none of them.
    fn left_over(&self, look: &Look) -> f64 {
        let n = self.n();
        let square: f64 = (0..2 * n).filter(|i| ![0, n, n + 1].contains(i)).map(|i| look.force[i].powi(2)).sum();
        (square + (look.force[n] + look.force[n + 1]).powi(2)).sqrt()
    }

    /// Move of the middle for a small force `load` on the coefficients that sums to one, mm a newton.
    pub fn give(&self, load: &DVector<f64>) -> f64 {
        let look = self.look(&self.now, &Act::Forces(&DVector::zeros(self.now.len())), 0.0);
        let (lu, _) = self.factor(&look, &self.now, 0.0, 0.0);
        lu.solve(load).map_or(0.0, |x| x.dot(load))
    }
}

/// How far a level that is given is from there, mm.
fn missing(act: &Act, now: &DVector<f64>) -> f64 {
    if let Act::Level(load, level) = act { level - load.dot(now) } else { 0.0 }
}
