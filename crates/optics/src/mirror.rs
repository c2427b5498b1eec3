//! Where a pixel's ray, mirrored by the smooth panel, lands on the board, and what moves that place.

use crate::bundle::{FIXED, Mirrored, OFFSET, POSES, Problem, STEP, Unpacked};
use crate::locate::Layout;
use crate::pixel::{Camera, Pixel, isometry, six_numbers};
use crate::smooth_panel::SmoothPanel;
use nalgebra::{Isometry3, Point3, Vector2, Vector3};

/// Everything that decides where mirrored rays land, at one set of parameters.
pub(crate) struct Mirror<'a> {
    problem: &'a Problem<'a>,
    u: &'a Unpacked,
    eye: Point3<f64>,
    board_from_panel: Isometry3<f64>,
    /// The board moved by a step of each of its six numbers.
    moved: [Isometry3<f64>; 6],
    /// The camera with a longer focal length and with more distortion.
    changed: [Camera; 2],
}

/// How far a mirrored point misses, in units of sigma, and the change of that by every parameter that
/// [`Mirror::parameters`] names.
pub(crate) struct Slope {
    pub miss: Vector2<f64>,
    pub by: Vec<Vector2<f64>>,
}

/// Stands for a ray that never comes to the board, mm.
const FAR_MM: f64 = 1e4;

impl<'a> Mirror<'a> {
    pub fn new(problem: &'a Problem, u: &'a Unpacked) -> Self {
        let pose = six_numbers(&u.panel_from_board);
        let moved = std::array::from_fn(|k| {
            let mut pose = pose;
            pose[k] += STEP;
            isometry(&pose).inverse()
        });
        let mut changed = [u.cameras[0]; 2];
        changed[0].focal_px *= STEP.exp();
        changed[1].k1 += STEP;
        let eye = problem.panel_from_camera * Point3::origin();
        Self { problem, u, eye, board_from_panel: u.panel_from_board.inverse(), moved, changed }
    }

    /// Indices of the parameters that move a mirrored point: board pose, focal length, distortion, offset, panel.
    pub fn parameters(&self) -> Vec<usize> {
        let panel = FIXED + 3 * self.problem.ids.len();
        (POSES - 6..POSES)
            .chain([POSES, POSES + 2, OFFSET, OFFSET + 1])
            .chain(panel..panel + self.u.panel.c.len())
            .collect()
    }

    /// By how much a mirrored point misses, in units of sigma.
    pub fn miss(&self, seen: &Mirrored) -> Vector2<f64> {
        self.off(seen, self.through(&self.u.cameras[0], seen))
    }

    /// The miss and its derivatives: board and slopes at the hit by forward differences, the panel's
    /// coefficients through the ray's length and the slopes at the hit by the chain rule.
    pub fn slope(&self, seen: &Mirrored) -> Slope {
        let ray = self.ray(&self.u.cameras[0], seen);
        let (hit, slopes) = self.u.panel.meet(&self.eye, &ray);
        let Some(landed) = land(&hit, slopes, &ray, &self.board_from_panel) else {
            return Slope { miss: self.off(seen, None), by: vec![Vector2::zeros(); self.parameters().len()] };
        };
        let ahead = |other: Option<Vector2<f64>>| other.map_or(Vector2::zeros(), |o| (o - landed) / STEP);
        let along = ahead(land(&(hit + ray * STEP), slopes, &ray, &self.board_from_panel));
        let tilted_x = ahead(land(&hit, (slopes.0 + STEP, slopes.1), &ray, &self.board_from_panel));
        let tilted_y = ahead(land(&hit, (slopes.0, slopes.1 + STEP), &ray, &self.board_from_panel));
        let closing = ray.z - slopes.0 * ray.x - slopes.1 * ray.y;
        let [xx, xy, yy] = self.u.panel.bends(hit.x, hit.y);
        let of_coefficient = |[z, zx, zy]: [f64; 3]| {
            let s = z / closing;
            along * s
                + tilted_x * (zx + (xx * ray.x + xy * ray.y) * s)
                + tilted_y * (zy + (xy * ray.x + yy * ray.y) * s)
        };
        let sigma = self.problem.settings.board_sigma_mm;
        let board = self.moved.iter().map(|board| ahead(land(&hit, slopes, &ray, board)));
        let camera = self.changed.iter().map(|camera| ahead(self.through(camera, seen)));
        let offset = [-Vector2::x(), -Vector2::y()];
        let panel = self.u.panel.shares(hit.x, hit.y).map(of_coefficient);
        Slope {
            miss: self.off(seen, Some(landed)),
            by: board.chain(camera).chain(offset).chain(panel).map(|d| d / sigma).collect(),
        }
    }

    fn ray(&self, camera: &Camera, seen: &Mirrored) -> Vector3<f64> {
        self.problem.panel_from_camera * camera.ray(&seen.pixel)
    }

    fn through(&self, camera: &Camera, seen: &Mirrored) -> Option<Vector2<f64>> {
        let ray = self.ray(camera, seen);
        let (hit, slopes) = self.u.panel.meet(&self.eye, &ray);
        land(&hit, slopes, &ray, &self.board_from_panel)
    }

    fn off(&self, seen: &Mirrored, landed: Option<Vector2<f64>>) -> Vector2<f64> {
        let miss = landed.map_or(Vector2::new(FAR_MM, FAR_MM), |b| b - seen.board_mm - self.u.offset);
        miss / self.problem.settings.board_sigma_mm
    }
}

/// Where a pixel of the reading camera looks on the board by way of a smooth panel, mm.
pub fn predict(camera: &Camera, layout: &Layout, panel: &SmoothPanel, pixel: &Pixel) -> Option<Vector2<f64>> {
    let origin = layout.panel_from_camera * Point3::origin();
    let ray = layout.panel_from_camera * camera.ray(pixel);
    let (hit, slopes) = panel.meet(&origin, &ray);
    land(&hit, slopes, &ray, &layout.panel_from_board.inverse())
}

/// Where a ray that hits the panel with these slopes ends on the board, mm.
fn land(
    hit: &Point3<f64>,
    slopes: (f64, f64),
    ray: &Vector3<f64>,
    board_from_panel: &Isometry3<f64>,
) -> Option<Vector2<f64>> {
    let n = Vector3::new(-slopes.0, -slopes.1, 1.0).normalize();
    let out = board_from_panel * (ray - n * (2.0 * ray.dot(&n)));
    let from = board_from_panel * hit;
    let t = -from.z / out.z;
    (t > 0.0).then(|| Vector2::new(from.x + t * out.x, from.y + t * out.y))
}
