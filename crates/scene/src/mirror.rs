//! Which of a panel's places mirror the board, and where the mirror image is turned over.

use crate::pose::{Board, Camera, mirrored};
use crate::scene::{Scene, Sticker};
use crate::truth::Truth;
use nalgebra::Vector3;
use rayon::prelude::*;

/// What the camera sees at each cell of a truth's grid, `[y][x]`.
#[derive(Debug, Clone)]
pub struct Mirroring {
    /// Board point `(u, v)`, mm, where the board is seen in the panel.
    pub board: Vec<Option<[f64; 2]>>,
    /// Mirrored, right way round, beside the tags: all that can be read there.
    pub readable: Vec<bool>,
    /// Mirrored but turned over by too strong a curvature.
    pub folded: Vec<bool>,
}

impl Mirroring {
    /// Looks at every cell from the reading position, for photos of `width` by `height` pixels.
    #[must_use]
    pub fn of(truth: &Truth, width: usize, height: usize) -> Self {
        let (nx, ny) = (truth.x.len(), truth.y.len());
        let camera = Camera::new(&truth.scene.cam, width, height);
        let board = Board::new(&truth.scene.board);
        let seen: Vec<Option<[f64; 2]>> = (0..nx * ny)
            .into_par_iter()
            .map(|k| look(truth, &camera, &board, [width as f64, height as f64], k % nx, k / nx))
            .collect();
        let way = |k: usize| orientation(&seen, nx, ny, k);
        let ways: Vec<f64> = (0..nx * ny).map(way).collect();
        let usual = ways.iter().map(|w| w.signum()).filter(|w| w.is_finite()).sum::<f64>().signum();
        let folded: Vec<bool> = ways.iter().map(|w| w * usual <= 0.0).collect();
        let readable = (0..nx * ny)
            .map(|k| {
                let free = !truth.scene.tags.iter().any(|t| covers(t, truth.x[k % nx], truth.y[k / nx]));
                ways[k].is_finite() && !folded[k] && free
            })
            .collect();
        Self { board: seen, readable, folded }
    }
}

/// Side of a tag's sticker by the side of its black square: one module of white all round.
pub const STICKER_BY_TAG: f64 = 1.25;

fn covers(tag: &Sticker, x: f64, y: f64) -> bool {
    let (sin, cos) = tag.rot.to_radians().sin_cos();
    let (dx, dy) = (x - tag.x, y - tag.y);
    let half = tag.size * STICKER_BY_TAG / 2.0;
    (cos * dx + sin * dy).abs() <= half && (cos * dy - sin * dx).abs() <= half
}

fn look(truth: &Truth, camera: &Camera, board: &Board, size: [f64; 2], i: usize, j: usize) -> Option<[f64; 2]> {
    let (nx, ny) = (truth.x.len(), truth.y.len());
    let height = |i: usize, j: usize| f64::from(truth.base[j * nx + i]) + f64::from(truth.damage[j * nx + i]);
    let (left, right) = (i.saturating_sub(1), (i + 1).min(nx - 1));
    let (below, above) = (j.saturating_sub(1), (j + 1).min(ny - 1));
    let dx = (height(right, j) - height(left, j)) / (truth.x[right] - truth.x[left]);
    let dy = (height(i, above) - height(i, below)) / (truth.y[above] - truth.y[below]);
    let point = Vector3::new(truth.x[i], truth.y[j], height(i, j));
    let [px, py] = camera.pixel(&point)?;
    if px < 0.0 || py < 0.0 || px > size[0] || py > size[1] || board.hides(&camera.eye, &point) {
        return None;
    }
    let n = Vector3::new(-dx, -dy, 1.0).normalize();
    let [u, v, _] = board.meet(&point, &mirrored(&(point - camera.eye), &n))?;
    board.holds(u, v).then_some([u, v])
}

/// Sign of the change of board area with panel area; not a number where a neighbour sees no board.
fn orientation(seen: &[Option<[f64; 2]>], nx: usize, ny: usize, k: usize) -> f64 {
    let (i, j) = (k % nx, k / nx);
    if i == 0 || j == 0 || i + 1 == nx || j + 1 == ny {
        return f64::NAN;
    }
    let (Some(a), Some(b), Some(c), Some(d), Some(_)) = (seen[k - 1], seen[k + 1], seen[k - nx], seen[k + nx], seen[k])
    else {
        return f64::NAN;
    };
    (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0])
}

/// The largest share of a scene's panel that can be read, by area.
#[must_use]
pub fn readable_share(scene: &Scene, width: usize, height: usize) -> f64 {
    let mirroring = Mirroring::of(&Truth::of(scene), width, height);
    mirroring.readable.iter().filter(|r| **r).count() as f64 / mirroring.readable.len() as f64
}
