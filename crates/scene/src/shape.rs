//! The panel's surface: exact heights and normals, and where a ray meets it.

use crate::dent::{Dent, Rise};
use crate::line::BodyLine;
use crate::peel::Peel;
use crate::scene::Scene;
use nalgebra::Vector3;

/// A surface that can be evaluated anywhere.
#[derive(Debug, Clone)]
pub struct Shape {
    half_w: f64,
    half_h: f64,
    curve: [f64; 2],
    cubic: [f64; 4],
    quartic: [f64; 3],
    lines: Vec<BodyLine>,
    dents: Vec<Dent>,
    peel: Option<Peel>,
}

impl Shape {
    /// The panel as it is mirrored, orange peel included.
    #[must_use]
    pub fn of(scene: &Scene) -> Self {
        let peel =
            (scene.peel > 0.0).then(|| Peel::new(scene.w, scene.h, scene.peel, scene.peel_seed.unwrap_or(scene.seed)));
        Self { peel, ..Self::without_peel(scene) }
    }

    /// The panel without its orange peel, as the truth maps hold it.
    #[must_use]
    pub fn without_peel(scene: &Scene) -> Self {
        Self {
            half_w: scene.w / 2.0,
            half_h: scene.h / 2.0,
            curve: [1.0 / scene.rx, 1.0 / scene.ry],
            cubic: scene.cubic,
            quartic: scene.quartic,
            lines: scene.bodylines.clone(),
            dents: scene.dents.clone(),
            peel: None,
        }
    }

    /// Undamaged height and slopes.
    #[must_use]
    pub fn base(&self, x: f64, y: f64) -> Rise {
        let [kx, ky] = self.curve;
        let [a, b, c, d] = self.cubic;
        let [e, f, g] = self.quartic;
        let (xx, yy) = (x * x, y * y);
        let mut rise = Rise {
            z: -(kx * xx + ky * yy) / 2.0
                + (a * xx * x + b * xx * y + c * x * yy + d * yy * y)
                + (e * xx * xx + f * xx * yy + g * yy * yy),
            dx: -kx * x + 3.0 * a * xx + 2.0 * b * x * y + c * yy + 4.0 * e * xx * x + 2.0 * f * x * yy,
            dy: -ky * y + b * xx + 2.0 * c * x * y + 3.0 * d * yy + 2.0 * f * xx * y + 4.0 * g * yy * y,
        };
        for line in &self.lines {
            rise += line.rise(x, y);
        }
        rise
    }

    /// Damage alone.
    #[must_use]
    pub fn damage(&self, x: f64, y: f64) -> Rise {
        let mut rise = Rise::default();
        for dent in &self.dents {
            rise += dent.rise(x, y);
        }
        rise
    }

    /// All of it: base, damage and peel.
    #[must_use]
    pub fn rise(&self, x: f64, y: f64) -> Rise {
        let mut rise = self.base(x, y);
        rise += self.damage(x, y);
        if let Some(peel) = &self.peel {
            rise += peel.rise(x, y);
        }
        rise
    }

    /// Whether a place lies on the sheet.
    #[must_use]
    pub fn holds(&self, x: f64, y: f64) -> bool {
        x.abs() <= self.half_w && y.abs() <= self.half_h
    }

    /// Where a ray from `eye` along `along` meets the sheet, with the surface there; `None` beside it.
    #[must_use]
    pub fn meet(&self, eye: &Vector3<f64>, along: &Vector3<f64>) -> Option<Met> {
        self.meet_near(eye, along, &Met::default())
    }

    /// The same, looking first near where a neighbouring ray met it, which saves most of the work.
    ///
    /// Peel is left out of the place, which it moves by less than a thousandth of a pixel, and put into the slopes.
    #[must_use]
    pub fn meet_near(&self, eye: &Vector3<f64>, along: &Vector3<f64>, near: &Met) -> Option<Met> {
        let plane = &near.rise;
        let above = eye.z - near.point.z - plane.dx * (eye.x - near.point.x) - plane.dy * (eye.y - near.point.y);
        let mut t = -above / (along.z - plane.dx * along.x - plane.dy * along.y);
        // Newton; a car panel is flat enough for it to settle in one to four steps.
        for _ in 0..MOST_STEPS {
            let p = eye + along * t;
            if p.x.abs() > FAR_BESIDE * self.half_w || p.y.abs() > FAR_BESIDE * self.half_h {
                return None;
            }
            // Beyond the sheet the surface goes on as a plane.
            let (x, y) = (p.x.clamp(-self.half_w, self.half_w), p.y.clamp(-self.half_h, self.half_h));
            let mut rise = self.base(x, y);
            rise += self.damage(x, y);
            let miss = p.z - rise.z - rise.dx * (p.x - x) - rise.dy * (p.y - y);
            t -= miss / (along.z - rise.dx * along.x - rise.dy * along.y);
            if miss.abs() < SETTLED_MM {
                return (t > 0.0 && self.holds(p.x, p.y)).then(|| self.with_peel(eye + along * t, rise));
            }
        }
        None
    }

    fn with_peel(&self, point: Vector3<f64>, mut rise: Rise) -> Met {
        if let Some(peel) = &self.peel {
            rise += peel.rise(point.x, point.y);
        }
        Met { point, rise }
    }
}

/// Where a ray met the sheet.
#[derive(Debug, Clone, Copy, Default)]
pub struct Met {
    /// The place, panel frame, mm.
    pub point: Vector3<f64>,
    /// Height and slopes there.
    pub rise: Rise,
}

/// A tenth of a micrometre: the last step then leaves slopes right to a microradian even at a radius of 50 mm.
const SETTLED_MM: f64 = 1e-4;
/// More than any ray needs that meets the sheet at all.
const MOST_STEPS: usize = 12;
/// A ray this many half sizes off the middle does not come back to the sheet.
const FAR_BESIDE: f64 = 3.0;

/// Unit normal of a surface with these slopes, toward the viewer.
#[must_use]
pub fn normal(rise: &Rise) -> Vector3<f64> {
    Vector3::new(-rise.dx, -rise.dy, 1.0).normalize()
}
