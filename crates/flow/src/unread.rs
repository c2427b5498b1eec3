//! Why cells were not read, as well as the photos can say.

use crate::gather::Gathered;
use crate::settle::FrameCheck;
use dentwright_optics::{Axis, Photo, Role, Scene, linear_table};
use dentwright_surface::{Grid, Map, SlopeMap, areas, rings};
use nalgebra::Point3;
use rayon::prelude::*;
use std::collections::HashSet;

/// Why a cell holds no height. The numbers are those of `unread.npy`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[repr(u8)]
pub enum Unread {
    /// It was read.
    Read = 0,
    /// The board is not mirrored there.
    NotMirrored = 1,
    /// A tag lies there.
    Tag = 2,
    /// Cut off from the rest.
    CutOff = 3,
    /// Too bright for the camera.
    Clipped = 4,
    /// The lines are there but too faint.
    LowContrast = 5,
    /// Too steep: the mirror image turns over around it.
    Folded = 6,
    /// One still photo does not tell how the lines go on there.
    NotFollowed = 7,
    /// Filled in from a depth measured by hand.
    Gauged = 8,
}

/// Blanks every area but the largest, since others have no height in common with it, and says so.
pub(crate) fn keep_largest(slopes: &mut SlopeMap, scene: &Scene, tag_mm: f64) -> Vec<u8> {
    let grid = slopes.grid;
    let read: Vec<bool> = (0..grid.len()).map(|i| slopes.is_read(i)).collect();
    let mut keep = vec![false; grid.len()];
    if let Some(largest) = areas(&read, &grid).into_iter().max_by_key(Vec::len) {
        largest.into_iter().for_each(|i| keep[i] = true);
    }
    let on_tag = |i: usize| {
        let (x, y) = grid.position(i);
        scene.layout.tags.iter().any(|t| (t.pose[0] - x).hypot(t.pose[1] - y) < 0.85 * tag_mm)
    };
    let why = |i: usize| match (keep[i], read[i]) {
        (true, _) => Unread::Read,
        (_, true) => Unread::CutOff,
        _ if on_tag(i) => Unread::Tag,
        _ => Unread::NotMirrored,
    };
    let unread = (0..grid.len()).map(|i| why(i) as u8).collect();
    (0..grid.len()).filter(|&i| !keep[i]).for_each(|i| slopes.sigma[i] = f32::NAN);
    unread
}

/// Says more of the cells that were not read: faint, too bright, or inside a fold. `height` in the panel frame,
/// `lost` the pixels whose lines a still could not follow.
pub(crate) fn explain(
    g: &Gathered,
    checks: &[FrameCheck],
    scene: &Scene,
    height: &Map,
    lost: &[bool],
    unread: &mut [u8],
) {
    let grid = height.grid;
    let camera_from_panel = scene.layout.panel_from_camera.inverse();
    let light = [Axis::U, Axis::V].map(|axis| Finest::of(g, checks, axis));
    let pixel_of = |i: usize| {
        let (x, y) = grid.position(i);
        scene.camera.project(&(camera_from_panel * Point3::new(x, y, scene.panel.at(x, y).0)))
    };
    let contrast = |i: usize| {
        let pixel = pixel_of(i)?;
        let seen =
            light.iter().map(|set| set.around(pixel.x as usize, pixel.y as usize)).collect::<Option<Vec<_>>>()?;
        Some([seen[0], seen[1]])
    };
    let ordinary = ordinary(unread, contrast);
    let width = scene.camera.size.0;
    let is_lost =
        |i: usize| pixel_of(i).is_some_and(|p| lost.get(p.y as usize * width + p.x as usize).copied().unwrap_or(false));
    let better = |i: usize| {
        if unread[i] != Unread::NotMirrored as u8 {
            return None;
        }
        if is_lost(i) {
            return Some(Unread::NotFollowed);
        }
        let [u, v] = contrast(i)?;
        let share = (u.contrast / ordinary[0]).min(v.contrast / ordinary[1]);
        let clipped = u.clipped.max(v.clipped) >= CLIPPED_SHARE;
        let faint = (FAINT..CLEAR).contains(&share);
        if clipped { Some(Unread::Clipped) } else { faint.then_some(Unread::LowContrast) }
    };
    let told: Vec<Option<Unread>> = (0..grid.len()).into_par_iter().with_min_len(4096).map(better).collect();
    for code in [Unread::Clipped, Unread::LowContrast, Unread::NotFollowed] {
        let mask: Vec<bool> = told.iter().map(|t| *t == Some(code)).collect();
        patches(&mask, &grid).into_iter().for_each(|i| unread[i] = code as u8);
    }
    mark_folds(scene, height, unread);
}

/// Cells of a mask that lie in a patch at least five cells wide both ways: what is thinner is the rim of
/// something else.
fn patches(mask: &[bool], grid: &Grid) -> HashSet<usize> {
    let square = |i: usize| {
        let (ix, iy) = (i % grid.nx, i / grid.nx);
        (iy - RIM..=iy + RIM).flat_map(move |y| (ix - RIM..=ix + RIM).map(move |x| y * grid.nx + x))
    };
    let inside = |i: &usize| {
        let (ix, iy) = (i % grid.nx, i / grid.nx);
        mask[*i] && ix >= RIM && iy >= RIM && ix + RIM < grid.nx && iy + RIM < grid.ny
    };
    (0..mask.len()).filter(inside).filter(|&i| square(i).all(|k| mask[k])).flat_map(square).collect()
}

/// Cells that a mixed pixel can reach to either side of an edge.
const RIM: usize = 2;

/// Share of a pattern's photos that must be at the end of their scale for a place to count as too bright.
const CLIPPED_SHARE: f32 = 0.5;
/// Level from which a stored value is at the end of the scale, compression counted.
const CLIPPED_LEVEL: u8 = 252;
/// Contrast over the ordinary one that noise does not reach, and that would have been read.
const FAINT: f32 = 0.12;
const CLEAR: f32 = 0.5;
/// Half a side of the square over which light is averaged, px: keeps noise out.
const AROUND_PX: usize = 2;

/// The photos of the finest pattern along one axis.
struct Finest<'a> {
    photos: Vec<&'a Photo>,
    table: [f32; 256],
}

#[derive(Clone, Copy)]
struct Light {
    contrast: f32,
    clipped: f32,
}

impl<'a> Finest<'a> {
    fn of(g: &'a Gathered, checks: &[FrameCheck], axis: Axis) -> Self {
        let of_axis = |k: &usize| {
            let f = &g.capture.frames[*k];
            checks[*k].ok && f.axis == Some(axis) && matches!(f.role, Role::Pattern | Role::Slide)
        };
        let frames: Vec<usize> = (0..checks.len()).filter(of_axis).collect();
        let periods = |k: usize| g.capture.frames[k].periods.unwrap_or(0.0);
        let finest = frames.iter().map(|&k| periods(k)).fold(0.0, f64::max);
        let photos = frames.iter().filter(|k| periods(**k) >= finest).map(|&k| &g.photos[k]).collect();
        Self { photos, table: linear_table(dentwright_optics::DEFAULT_GAMMA) }
    }

    /// Brightest less darkest photo around a pixel, and the share of photos too bright there.
    fn around(&self, x: usize, y: usize) -> Option<Light> {
        if self.photos.is_empty() {
            return None;
        }
        let (mut low, mut high, mut clipped) = (f32::MAX, f32::MIN, 0.0);
        for photo in &self.photos {
            if x < AROUND_PX || y < AROUND_PX || x + AROUND_PX >= photo.width || y + AROUND_PX >= photo.height {
                return None;
            }
            let rows = y - AROUND_PX..=y + AROUND_PX;
            let square =
                rows.flat_map(|y| &photo.grey[y * photo.width + x - AROUND_PX..=y * photo.width + x + AROUND_PX]);
            let side = (2 * AROUND_PX + 1) as f32;
            let mean = square.map(|&l| self.table[usize::from(l)]).sum::<f32>() / (side * side);
            (low, high) = (low.min(mean), high.max(mean));
            clipped += f32::from(u8::from(photo.grey[y * photo.width + x] >= CLIPPED_LEVEL));
        }
        Some(Light { contrast: high - low, clipped: clipped / self.photos.len().max(1) as f32 })
    }
}

/// Middle contrast of the cells that were read, each axis.
fn ordinary(unread: &[u8], contrast: impl Fn(usize) -> Option<[Light; 2]>) -> [f32; 2] {
    let read = (0..unread.len()).step_by(101).filter(|&i| unread[i] == Unread::Read as u8);
    let seen: Vec<[Light; 2]> = read.filter_map(contrast).collect();
    [0, 1].map(|axis| {
        let mut all: Vec<f32> = seen.iter().map(|s| s[axis].contrast).collect();
        all.sort_by(f32::total_cmp);
        all.get(all.len() / 2).copied().unwrap_or(f32::MAX).max(f32::MIN_POSITIVE)
    })
}

/// Marks holes around which the metal bends beyond the fold limit, or at whose rim slopes contradicted themselves.
fn mark_folds(scene: &Scene, height: &Map, unread: &mut [u8]) {
    let grid = height.grid;
    let (eye, board) =
        (scene.layout.panel_from_camera.translation.vector, scene.layout.panel_from_board.translation.vector);
    let limit = FOLDS * 0.5 * (1.0 / eye.norm() + 1.0 / board.norm());
    let open = |i: usize| unread[i] != Unread::Read as u8 && unread[i] != Unread::Tag as u8;
    let holes = areas(&(0..grid.len()).map(open).collect::<Vec<_>>(), &grid);
    for hole in holes.iter().filter(|h| h.iter().all(|&i| !at_rim(i, &grid))) {
        let around = around(hole, &grid, unread);
        let bent = around.iter().filter(|&&i| sharpest_bend(height, i) > limit).count();
        let torn = hole.iter().any(|&i| unread[i] == Unread::Folded as u8);
        if torn || around.len() >= LEAST_AROUND && bent as f64 > BENT_SHARE * around.len() as f64 {
            hole.iter().for_each(|&i| unread[i] = Unread::Folded as u8);
        }
    }
}

/// Bend around a hole, in fold limits, that orange peel and dents that are read do not have.
const FOLDS: f64 = 2.0;
/// Share of the cells around a hole that must bend so.
const BENT_SHARE: f64 = 0.3;
/// Fewer cells around it say nothing.
const LEAST_AROUND: usize = 8;
/// Reach of the second difference, and of what counts as around a hole, mm.
const REACH_MM: f64 = 2.0;

fn at_rim(i: usize, grid: &Grid) -> bool {
    let (ix, iy) = (i % grid.nx, i / grid.nx);
    ix == 0 || iy == 0 || ix + 1 == grid.nx || iy + 1 == grid.ny
}

/// Read cells up to [`REACH_MM`] from a hole.
fn around(hole: &[usize], grid: &Grid, unread: &[u8]) -> Vec<usize> {
    let read = rings(grid, hole, REACH_MM, |i| unread[i] == Unread::Read as u8);
    read.into_iter().map(|(i, _)| i).collect()
}

/// Largest bend away from a cell to any of its four sides, 1/mm.
fn sharpest_bend(height: &Map, i: usize) -> f64 {
    let grid = height.grid;
    let reach = (REACH_MM / grid.step_mm).round().max(1.0) as isize;
    let (ix, iy) = ((i % grid.nx) as isize, (i / grid.nx) as isize);
    let at = |x: isize, y: isize| {
        let inside = x >= 0 && y >= 0 && (x as usize) < grid.nx && (y as usize) < grid.ny;
        if inside { f64::from(height.values[y as usize * grid.nx + x as usize]) } else { f64::NAN }
    };
    let square = (reach as f64 * grid.step_mm).powi(2);
    let bend = |dx: isize, dy: isize| {
        (at(ix, iy) - 2.0 * at(ix + dx * reach, iy + dy * reach) + at(ix + 2 * dx * reach, iy + 2 * dy * reach))
            / square
    };
    [(1, 0), (-1, 0), (0, 1), (0, -1)].map(|(dx, dy)| bend(dx, dy).abs()).into_iter().fold(0.0, f64::max)
}
