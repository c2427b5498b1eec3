//! The board as a lamp: how brightly its picture lights the panel.

use crate::picture::Shown;
use crate::pose::Board;
use crate::shape::{Shape, normal};
use nalgebra::Vector3;
use std::f64::consts::PI;

/// Nodes over the panel; between them light is interpolated linearly.
const NODES: [usize; 2] = [29, 23];
/// Patches over the board.
const PATCHES: [usize; 2] = [96, 54];

/// For every node on the panel, the share of each patch's radiance that falls on it (irradiance over π).
#[derive(Debug, Clone)]
pub struct Lamp {
    shares: Vec<f32>,
    patches: Vec<[f32; 2]>,
    half: [f32; 2],
}

/// Irradiance over π of one picture, for a board of radiance 1.
#[derive(Debug, Clone)]
pub struct Glow {
    nodes: Vec<f32>,
    half: [f32; 2],
}

impl Lamp {
    /// Works out the shares for a panel of `w` by `h` mm.
    #[must_use]
    pub fn new(shape: &Shape, board: &Board, w: f64, h: f64) -> Self {
        let patches: Vec<[f64; 2]> = centres(PATCHES, board.half).collect();
        let area = 4.0 * board.half[0] * board.half[1] / patches.len() as f64;
        let mut shares = Vec::with_capacity(NODES[0] * NODES[1] * patches.len());
        for j in 0..NODES[1] {
            for i in 0..NODES[0] {
                let x = (i as f64 / (NODES[0] - 1) as f64 - 0.5) * w;
                let y = (j as f64 / (NODES[1] - 1) as f64 - 0.5) * h;
                let rise = shape.base(x, y);
                let (point, n) = (Vector3::new(x, y, rise.z), normal(&rise));
                shares.extend(patches.iter().map(|[u, v]| {
                    let to = board.point(*u, *v) - point;
                    let r2 = to.norm_squared();
                    let cosines = (n.dot(&to) * -board.out.dot(&to)).max(0.0) / r2;
                    (cosines * area / (PI * r2)) as f32
                }));
            }
        }
        let patches = patches.iter().map(|p| p.map(|c| c as f32)).collect();
        Self { shares, patches, half: [(w / 2.0) as f32, (h / 2.0) as f32] }
    }

    /// Light of one picture over the panel.
    #[must_use]
    pub fn glow(&self, shown: &Shown) -> Glow {
        let light: Vec<f32> = self.patches.iter().map(|[u, v]| shown.at(*u, *v)).collect();
        let sum = |row: &[f32]| row.iter().zip(&light).map(|(s, l)| s * l).sum();
        Glow { nodes: self.shares.chunks_exact(light.len()).map(sum).collect(), half: self.half }
    }
}

impl Glow {
    /// Irradiance over π at a panel place.
    #[must_use]
    pub fn at(&self, x: f32, y: f32) -> f32 {
        let place = |at: f32, half: f32, n: usize| -> (usize, f32) {
            let p = ((at / half + 1.0) / 2.0 * (n - 1) as f32).clamp(0.0, (n - 1) as f32 - 1e-3);
            (p as usize, p.fract())
        };
        let (i, s) = place(x, self.half[0], NODES[0]);
        let (j, t) = place(y, self.half[1], NODES[1]);
        let k = j * NODES[0] + i;
        let row = |k: usize| self.nodes[k] + (self.nodes[k + 1] - self.nodes[k]) * s;
        let (below, above) = (row(k), row(k + NODES[0]));
        below + (above - below) * t
    }
}

fn centres(n: [usize; 2], half: [f64; 2]) -> impl Iterator<Item = [f64; 2]> {
    let middle = move |k: usize, axis: usize| ((k as f64 + 0.5) / n[axis] as f64 * 2.0 - 1.0) * half[axis];
    (0..n[0] * n[1]).map(move |k| [middle(k % n[0], 0), middle(k / n[0], 1)])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::{BoardPose, Scene};

    #[test]
    fn a_facing_square_gives_the_text_book_share() {
        let json = r#"{"w": 10, "h": 10, "Rx": 1e9, "Ry": 1e9, "paint": [0.5, 0.5, 0.5], "tags": []}"#;
        let scene: Scene = serde_json::from_str(json).unwrap();
        let pose = BoardPose { pos: [0.0, 0.0, 300.0], at: [0.0; 3], w: 600.0, h: 600.0, ..scene.board.clone() };
        let board = Board::new(&pose);
        let lamp = Lamp::new(&Shape::without_peel(&scene), &board, 10.0, 10.0);
        let white = Shown::Along { axis: crate::picture::Axis::U, half: 300.0, per_mm: 0.0, table: vec![1.0, 1.0] };
        // Small patch facing the middle of a square of half side a at distance a, four times the corner formula
        // (Howell, Catalogue of Radiation Heat Transfer Configuration Factors, B-4), A = B = 1.
        let corner = 2.0 / (2.0 * PI) * (1.0 / 2f64.sqrt()) * (1.0 / 2f64.sqrt()).atan();
        let found = f64::from(lamp.glow(&white).at(0.0, 0.0));
        assert!((found - 4.0 * corner).abs() < 2e-4, "{found} against {}", 4.0 * corner);
    }
}
