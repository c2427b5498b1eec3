//! One camera's look at the scene, ray by ray: geometry once, to be shaded with any picture on the board.
//!
//! Each pixel is the mean of a few rays spread over its area, each through another part of the lens opening. A ray
//! meets paint, a sticker, a speck of dirt, the board itself or the surroundings. Paint is a clear coat (refractive
//! index 1.5, unpolarised Fresnel reflection) over a diffuse base. The surroundings have one radiance in all directions.
//! Limits: one reflection (two where the sheet is clear), no light from the panel on the board, no polarisation.

use crate::dent::Rise;
use crate::light::Glow;
use crate::noise::Random;
use crate::picture::Shown;
use crate::pose::{Board, Camera, mirrored};
use crate::recipe::{Back, Stuck};
use crate::scene::{CameraPose, Scene};
use crate::shape::{Met, Shape, normal};
use crate::tag;
use nalgebra::Vector3;
use rayon::prelude::*;

/// What is needed to look: the scene made ready.
#[derive(Debug, Clone)]
pub struct Stage {
    /// The scene as described.
    pub scene: Scene,
    /// The panel.
    pub shape: Shape,
    /// The board.
    pub board: Board,
    /// Specks of dirt: place and radius, mm.
    pub dirt: Vec<[f64; 3]>,
    /// Trim, badges, stickers.
    pub stuck: Vec<Stuck>,
    /// A second mirror behind the panel.
    pub back: Option<Back>,
    /// Radiance of the surroundings.
    pub surroundings: f32,
    /// Radiance of the board's full white.
    pub white: f32,
}

/// How finely a photo is traced.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fineness {
    /// Photo width, pixels.
    pub width: usize,
    /// Photo height, pixels.
    pub height: usize,
    /// Rays along each side of a pixel.
    pub rays: usize,
}

/// Rows of traced pixels.
#[derive(Debug, Clone)]
pub struct View {
    /// Photo width, pixels.
    pub width: usize,
    /// Photo height, pixels.
    pub height: usize,
    rows: Vec<Row>,
}

/// A row: what each pixel gets whatever the board shows, and where its rays meet the board.
#[derive(Debug, Clone, Default)]
pub struct Row {
    pixels: Vec<Pixel>,
    rays: Vec<BoardRay>,
}

#[derive(Debug, Clone, Copy, Default)]
struct Pixel {
    /// Radiance from the surroundings, red, green, blue.
    steady: [f32; 3],
    /// Diffuse reflectance toward the camera, to be lit by the board.
    diffuse: [f32; 3],
    /// Panel place the diffuse light comes from.
    place: [f32; 2],
    /// Rays that meet the board.
    rays: u8,
}

/// A ray that ends on the board.
#[derive(Debug, Clone, Copy)]
struct BoardRay {
    u: f32,
    v: f32,
    /// Share of the board's radiance that reaches the pixel.
    share: f32,
}

/// Reflectance of a sticker's white and black, and of dirt.
const STICKER: [f32; 2] = [0.82, 0.02];
const DIRT: f32 = 0.15;

impl View {
    /// Traces a whole photo and keeps it.
    #[must_use]
    pub fn trace(stage: &Stage, pose: &CameraPose, fineness: Fineness) -> Self {
        let eye = Eye::new(stage, pose, fineness);
        let rows = (0..fineness.height).into_par_iter().map(|j| eye.row(j)).collect();
        Self { width: fineness.width, height: fineness.height, rows }
    }

    /// Radiance of every pixel with a picture on the board, three values a pixel.
    #[must_use]
    pub fn shade(&self, stage: &Stage, shown: &Shown, glow: &Glow) -> Vec<f32> {
        let mut out = vec![0.0; self.width * self.height * 3];
        out.chunks_exact_mut(self.width * 3).zip(&self.rows).for_each(|(line, row)| {
            row.shade(stage.white, shown, glow, line);
        });
        out
    }

    /// Mean board place of each pixel whose rays all meet the board: where the camera looks, `(u, v)` in mm.
    #[must_use]
    pub fn board_places(&self, all_rays: usize) -> Vec<Option<[f32; 2]>> {
        let mut places = Vec::with_capacity(self.width * self.height);
        for row in &self.rows {
            let mut next = 0;
            for pixel in &row.pixels {
                let rays = &row.rays[next..next + usize::from(pixel.rays)];
                next += rays.len();
                let mean = |of: fn(&BoardRay) -> f32| rays.iter().map(of).sum::<f32>() / rays.len() as f32;
                places.push((rays.len() == all_rays).then(|| [mean(|r| r.u), mean(|r| r.v)]));
            }
        }
        places
    }
}

/// Traces a photo and shades it at once, row by row, without keeping its geometry.
#[must_use]
pub fn snap(stage: &Stage, pose: &CameraPose, fineness: Fineness, shown: &Shown, glow: &Glow) -> Vec<f32> {
    let eye = Eye::new(stage, pose, fineness);
    let mut out = vec![0.0; fineness.width * fineness.height * 3];
    out.par_chunks_exact_mut(fineness.width * 3)
        .enumerate()
        .for_each(|(j, line)| eye.row(j).shade(stage.white, shown, glow, line));
    out
}

impl Row {
    fn shade(&self, white: f32, shown: &Shown, glow: &Glow, line: &mut [f32]) {
        let mut next = 0;
        for (pixel, out) in self.pixels.iter().zip(line.as_chunks_mut::<3>().0) {
            let mut mirrored = 0.0;
            for ray in &self.rays[next..next + usize::from(pixel.rays)] {
                mirrored += ray.share * shown.at(ray.u, ray.v);
            }
            next += usize::from(pixel.rays);
            let lit = if pixel.diffuse[0] > 0.0 { glow.at(pixel.place[0], pixel.place[1]) } else { 0.0 };
            for ((out, steady), diffuse) in out.iter_mut().zip(pixel.steady).zip(pixel.diffuse) {
                *out = steady + white * (mirrored + diffuse * lit);
            }
        }
    }
}

/// A camera with its lens opening, ready to trace.
struct Eye<'a> {
    stage: &'a Stage,
    camera: Camera,
    fineness: Fineness,
    focus: f64,
    aperture: f64,
    panel_box: PixelBox,
    board_box: PixelBox,
}

/// Pixels outside of which a thing is surely not seen.
struct PixelBox {
    low: [f64; 2],
    high: [f64; 2],
}

impl PixelBox {
    /// Around points; the whole photo where one of them lies behind the camera.
    fn around(camera: &Camera, points: impl Iterator<Item = Vector3<f64>>) -> Self {
        let (mut low, mut high) = ([f64::MAX; 2], [f64::MIN; 2]);
        for point in points {
            let Some(at) = camera.pixel(&point) else {
                return Self { low: [f64::MIN; 2], high: [f64::MAX; 2] };
            };
            for k in 0..2 {
                low[k] = low[k].min(at[k] - BLUR_ROOM_PX);
                high[k] = high[k].max(at[k] + BLUR_ROOM_PX);
            }
        }
        Self { low, high }
    }

    fn holds(&self, i: usize, j: usize) -> bool {
        (self.low[0]..=self.high[0]).contains(&(i as f64)) && (self.low[1]..=self.high[1]).contains(&(j as f64))
    }
}

/// Room left for what is out of focus.
const BLUR_ROOM_PX: f64 = 24.0;

impl<'a> Eye<'a> {
    fn new(stage: &'a Stage, pose: &CameraPose, fineness: Fineness) -> Self {
        let camera = Camera::new(pose, fineness.width, fineness.height);
        let focus = pose.focus.unwrap_or_else(|| camera.depth(&Vector3::from(pose.at)));
        let (w, h) = (stage.scene.w / 2.0, stage.scene.h / 2.0);
        let steps = || (-8..=8).map(|k| f64::from(k) / 8.0);
        let sheet = steps().flat_map(|s| steps().map(move |t| (s * w, t * h)));
        let panel = sheet.map(|(x, y)| Vector3::new(x, y, stage.shape.base(x, y).z));
        let panel_box = PixelBox::around(&camera, panel);
        let [u, v] = stage.board.half;
        let corners = [[-u, -v], [u, -v], [u, v], [-u, v]].into_iter();
        let board_box = PixelBox::around(&camera, corners.map(|[u, v]| stage.board.point(u, v)));
        Self { stage, camera, fineness, focus, aperture: pose.aperture, panel_box, board_box }
    }

    fn row(&self, j: usize) -> Row {
        let n = self.fineness.rays;
        let mut random = Random::new(self.stage.scene.seed.wrapping_add(j as u64 * 7919));
        let mut row = Row::default();
        row.pixels.reserve(self.fineness.width);
        let mut near = Met::default();
        for i in 0..self.fineness.width {
            let mut pixel = Pixel::default();
            if !self.panel_box.holds(i, j) && !self.board_box.holds(i, j) {
                pixel.steady = [self.stage.surroundings; 3];
                row.pixels.push(pixel);
                continue;
            }
            let turn = random.unit();
            let mut on_panel = 0.0f32;
            for k in 0..n * n {
                let px = i as f64 + ((k % n) as f64 + 0.5) / n as f64;
                let py = j as f64 + ((k / n) as f64 + 0.5) / n as f64;
                let (from, along) = self.ray(px, py, k, turn);
                on_panel += self.follow(&from, &along, &mut near, &mut pixel, &mut row.rays);
            }
            if on_panel > 0.0 {
                pixel.place = pixel.place.map(|p| p / on_panel);
            }
            row.pixels.push(pixel);
        }
        row
    }

    /// The k-th ray of a pixel: through its own part of the opening, to the place in focus.
    fn ray(&self, px: f64, py: f64, k: usize, turn: f64) -> (Vector3<f64>, Vector3<f64>) {
        let sharp = self.camera.eye + self.camera.ray(px, py) * self.focus;
        let all = (self.fineness.rays * self.fineness.rays) as f64;
        // Rays spread evenly over the disc along a sunflower's spiral, turned anew for each pixel.
        let radius = self.aperture * ((k as f64 + 0.5) / all).sqrt();
        let (sin, cos) = (std::f64::consts::TAU * (turn + k as f64 * 0.618_033_988_75)).sin_cos();
        let [right, down] = self.camera.across();
        let from = self.camera.eye + right * (radius * cos) + down * (radius * sin);
        (from, sharp - from)
    }

    /// Adds one ray to its pixel; gives 1 where it met the panel.
    fn follow(
        &self,
        from: &Vector3<f64>,
        along: &Vector3<f64>,
        near: &mut Met,
        pixel: &mut Pixel,
        rays: &mut Vec<BoardRay>,
    ) -> f32 {
        let stage = self.stage;
        let weight = 1.0 / (self.fineness.rays * self.fineness.rays) as f32;
        let mut reach = |pixel: &mut Pixel, [u, v, _]: [f64; 3], share: f32| {
            pixel.rays += 1;
            rays.push(BoardRay { u: u as f32, v: v as f32, share });
        };
        let met = stage.shape.meet_near(from, along, near);
        let far = met.as_ref().map_or(f64::MAX, |m| (m.point - from).norm() / along.norm());
        // The board itself, where it stands in front.
        if let Some(at) = stage.board.meet(from, along).filter(|at| stage.board.holds(at[0], at[1]) && at[2] < far) {
            reach(pixel, at, weight);
            return 0.0;
        }
        let Some(met) = met else {
            pixel.steady = pixel.steady.map(|s| s + weight * stage.surroundings);
            return 0.0;
        };
        *near = met;
        let Met { point, rise } = met;
        pixel.place[0] += point.x as f32;
        pixel.place[1] += point.y as f32;
        if let Some(grey) = stage.matt(point.x, point.y) {
            for c in 0..3 {
                pixel.diffuse[c] += weight * grey;
                pixel.steady[c] += weight * grey * stage.surroundings;
            }
            return 1.0;
        }
        let n = normal(&rise);
        let shine = fresnel(-along.dot(&n) / along.norm()) as f32;
        for c in 0..3 {
            let base = (1.0 - shine) * stage.scene.paint[c] as f32;
            pixel.diffuse[c] += weight * base;
            pixel.steady[c] += weight * base * stage.surroundings;
        }
        let mut mirror = |point: &Vector3<f64>, n: &Vector3<f64>, share: f32| match stage
            .board
            .meet(point, &mirrored(along, n))
            .filter(|at| stage.board.holds(at[0], at[1]))
        {
            Some(at) => reach(pixel, at, weight * share),
            None => pixel.steady = pixel.steady.map(|s| s + weight * share * stage.surroundings),
        };
        mirror(&point, &n, shine);
        if let Some(back) = &stage.back {
            let deeper = along * (back.thickness_mm / CLEAR_INDEX / -along.dot(&n));
            let rise = Rise { dx: rise.dx - back.bend[0] * point.x, dy: rise.dy - back.bend[1] * point.y, ..rise };
            mirror(&(point + deeper), &normal(&rise), shine * back.share as f32);
        }
        1.0
    }
}

/// Index of refraction of clear coat and glass.
const CLEAR_INDEX: f64 = 1.5;

impl Stage {
    /// Reflectance where a sticker or dirt lies on the paint.
    fn matt(&self, x: f64, y: f64) -> Option<f32> {
        for t in &self.scene.tags {
            let (dx, dy) = ((x - t.x) / t.size, (y - t.y) / t.size);
            if dx * dx + dy * dy > 0.8 {
                continue;
            }
            let (sin, cos) = t.rot.to_radians().sin_cos();
            let (right, up) = (cos * dx + sin * dy, cos * dy - sin * dx);
            if right.abs().max(up.abs()) <= crate::mirror::STICKER_BY_TAG / 2.0 {
                return Some(STICKER[usize::from(!tag::is_white(t.id, right, up))]);
            }
        }
        let on = |s: &&Stuck| (x - s.at[0]).abs() < s.size[0] / 2.0 && (y - s.at[1]).abs() < s.size[1] / 2.0;
        let stuck = self.stuck.iter().find(on).map(|s| s.grey as f32);
        stuck.or_else(|| self.dirt.iter().any(|[dx, dy, r]| (x - dx).hypot(y - dy) < *r).then_some(DIRT))
    }
}

/// Share of unpolarised light a clear coat of refractive index 1.5 mirrors at this cosine of incidence.
#[must_use]
pub fn fresnel(cosine: f64) -> f64 {
    let index = CLEAR_INDEX;
    let inside = (1.0 - (1.0 - cosine * cosine) / (index * index)).sqrt();
    let s = (cosine - index * inside) / (cosine + index * inside);
    let p = (inside - index * cosine) / (inside + index * cosine);
    (s * s + p * p) / 2.0
}
