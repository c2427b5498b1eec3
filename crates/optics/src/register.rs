//! How far a photo has moved against the panel photo, by the tags both show.
//!
//! Tag by tag the photo's patch is taken for the panel photo's, brighter or darker, shifted a little:
//! `I(x) = a P(x - d) + b`, least squares in one step (Lucas and Kanade 1981), repeated from the nearest
//! whole pixel. A tripod that was knocked turns the camera, so all tags move by one similarity.

use crate::homography::Homography;
use crate::photo::Photo;
use crate::pixel::Pixel;
use crate::tags::{TagView, find_tags};
use nalgebra::{DMatrix, DVector, Matrix3, Matrix4, Vector4};
use rayon::prelude::*;

/// A photo against the panel photo.
#[derive(Debug, Clone, Copy)]
pub struct Drift {
    /// Where a pixel of the panel photo is in this photo.
    pub map: Homography,
    /// Largest movement of a tag, px.
    pub most_px: f64,
    /// Root mean square of what that map leaves of the tags' movements, px.
    pub left_px: f64,
    /// Strength of the tags' edges against the panel photo's in the same light: 1 is as sharp.
    pub sharpness: f64,
}

/// Tags that must be followed for a movement to be known.
const LEAST_TAGS: usize = 3;

/// What the tags may differ from one movement of the camera before they are looked for anew, px.
const ASTRAY_PX: f64 = 0.5;

/// Movement and sharpness of a photo; `None` where fewer than three tags can be followed. Where a knock was so large that
/// they are not found from where they were, they are looked for in the whole photo.
pub fn drift(panel: &Photo, photo: &Photo, tags: &[TagView]) -> Option<Drift> {
    let near = similarity(&followed(panel, photo, tags.iter().map(|t| (t, (0, 0)))));
    if near.is_some_and(|d| d.left_px <= ASTRAY_PX) {
        return near;
    }
    let ids: Vec<usize> = tags.iter().map(|t| t.id).collect();
    let seen = find_tags(photo, &ids);
    let start = |t: &TagView| seen.iter().find(|s| s.id == t.id).map(|s| s.centre() - t.centre());
    let starts = tags.iter().filter_map(|t| start(t).map(|by| (t, (by.x.round() as i64, by.y.round() as i64))));
    let far = similarity(&followed(panel, photo, starts));
    match (near, far) {
        (Some(near), Some(far)) => Some(if far.left_px < near.left_px { far } else { near }),
        (near, far) => far.or(near),
    }
}

/// Places, movements and sharpness of the tags that can be followed, each from a whole-pixel guess.
fn followed<'a>(
    panel: &Photo,
    photo: &Photo,
    starts: impl Iterator<Item = (&'a TagView, (i64, i64))>,
) -> Vec<(Pixel, Pixel, f64)> {
    let one = |(t, start)| follow(panel, photo, t, start).map(|(moved, sharp)| (t.centre(), moved, sharp));
    starts.filter_map(one).collect()
}

/// The one movement of the camera that followed tags tell.
fn similarity(followed: &[(Pixel, Pixel, f64)]) -> Option<Drift> {
    if followed.len() < LEAST_TAGS {
        return None;
    }
    let middle = followed.iter().map(|f| f.0).sum::<Pixel>() / followed.len() as f64;
    // Unknown: shift right and down, stretch, turn.
    let design = DMatrix::from_fn(2 * followed.len(), 4, |row, k| {
        let p = followed[row / 2].0 - middle;
        match (row % 2, k) {
            (0, 0) | (1, 1) => 1.0,
            (0, 2) | (1, 3) => p.x,
            (0, 3) => -p.y,
            (1, 2) => p.y,
            _ => 0.0,
        }
    });
    let moved = DVector::from_fn(2 * followed.len(), |row, _| followed[row / 2].1[row % 2]);
    let s = design.clone().svd(true, true).solve(&moved, 1e-9).ok()?;
    let left = &design * &s - &moved;
    let (stretch, turn) = (s[2], s[3]);
    let shift =
        Pixel::new(s[0], s[1]) - Pixel::new(stretch * middle.x - turn * middle.y, turn * middle.x + stretch * middle.y);
    let map = Matrix3::new(1.0 + stretch, -turn, shift.x, turn, 1.0 + stretch, shift.y, 0.0, 0.0, 1.0);
    let mut sharp: Vec<f64> = followed.iter().map(|f| f.2).collect();
    sharp.sort_by(f64::total_cmp);
    Some(Drift {
        map: Homography(map),
        most_px: followed.iter().map(|f| f.1.norm()).fold(0.0, f64::max),
        left_px: (left.norm_squared() / followed.len() as f64).sqrt(),
        sharpness: sharp[sharp.len() / 2],
    })
}

/// Whole-pixel restarts before a tag counts as lost.
const RESTARTS: usize = 8;
/// Every how many pixels one is looked at, both ways.
const EVERY_PX: usize = 2;

/// Movement of one tag (px), looked for from a whole-pixel guess on, and the strength of its edges.
fn follow(panel: &Photo, photo: &Photo, tag: &TagView, start: (i64, i64)) -> Option<(Pixel, f64)> {
    let low = tag.corners.iter().fold(Pixel::repeat(f64::MAX), |a, c| a.inf(c));
    let high = tag.corners.iter().fold(Pixel::repeat(f64::MIN), |a, c| a.sup(c));
    let inside = |v: f64, n: usize| (v.max(1.0) as usize).min(n - 2);
    let xs = inside(low.x, panel.width)..inside(high.x, panel.width);
    let ys = inside(low.y, panel.height)..inside(high.y, panel.height);
    let at = |p: &Photo, x: usize, y: usize| f64::from(p.grey[y * p.width + x]);
    let slopes = |p: &Photo, x: usize, y: usize| {
        (0.5 * (at(p, x + 1, y) - at(p, x - 1, y)), 0.5 * (at(p, x, y + 1) - at(p, x, y - 1)))
    };
    let mut whole = start;
    for _ in 0..RESTARTS {
        let (mut normal, mut right) = (Matrix4::zeros(), Vector4::zeros());
        let (mut edges, mut edges_here, mut light, mut light_here) = (0.0, 0.0, 0.0, 0.0);
        for y in ys.clone().step_by(EVERY_PX) {
            for x in xs.clone().step_by(EVERY_PX) {
                let (sx, sy) = (x as i64 + whole.0, y as i64 + whole.1);
                if sx < 1 || sy < 1 || sx as usize + 1 >= photo.width || sy as usize + 1 >= photo.height {
                    return None;
                }
                let (gx, gy) = slopes(panel, x, y);
                let (hx, hy) = slopes(photo, sx as usize, sy as usize);
                let row = Vector4::new(at(panel, x, y), 1.0, gx, gy);
                normal += row * row.transpose();
                right += row * at(photo, sx as usize, sy as usize);
                edges += gx * gx + gy * gy;
                edges_here += hx * hx + hy * hy;
                light += at(panel, x, y);
                light_here += at(photo, sx as usize, sy as usize);
            }
        }
        let s = normal.cholesky()?.solve(&right);
        let gain = s[0];
        if !(gain > LEAST_GAIN) {
            return None;
        }
        let d = Pixel::new(-s[2] / gain, -s[3] / gain);
        if d.amax() <= 0.75 {
            let moved = Pixel::new(whole.0 as f64, whole.1 as f64) + d;
            // Paper in other light keeps its edges in proportion to its brightness.
            return Some((moved, (edges_here / edges).sqrt() * light / light_here));
        }
        let step = |v: f64| v.clamp(-4.0, 4.0).round() as i64;
        whole = (whole.0 + step(d.x), whole.1 + step(d.y));
    }
    None
}

/// A tag darker than this against the panel photo is not followed.
const LEAST_GAIN: f64 = 0.1;

/// The photo as it would be had it not moved: cubic between pixels (Keys 1981, a = -1/2).
pub fn brought_back(photo: &Photo, map: &Homography) -> Photo {
    let (w, h) = (photo.width, photo.height);
    let tap = |t: f64| {
        let (t2, t3) = (t * t, t * t * t);
        [-0.5 * t + t2 - 0.5 * t3, 1.0 - 2.5 * t2 + 1.5 * t3, 0.5 * t + 2.0 * t2 - 1.5 * t3, 0.5 * (t3 - t2)]
    };
    let mut grey = vec![0; w * h];
    grey.par_chunks_mut(w).enumerate().for_each(|(y, row)| {
        for (x, value) in row.iter_mut().enumerate() {
            let q = map.map(&Pixel::new(x as f64 + 0.5, y as f64 + 0.5)).unwrap_or_default();
            let (fx, fy) = (q.x - 0.5, q.y - 0.5);
            let (x0, y0) = (fx.floor(), fy.floor());
            let (wx, wy) = (tap(fx - x0), tap(fy - y0));
            let mut sum = 0.0;
            for (j, wy) in wy.iter().enumerate() {
                let sy = (y0 as i64 + j as i64 - 1).clamp(0, h as i64 - 1) as usize;
                for (i, wx) in wx.iter().enumerate() {
                    let sx = (x0 as i64 + i as i64 - 1).clamp(0, w as i64 - 1) as usize;
                    sum += wx * wy * f64::from(photo.grey[sy * w + sx]);
                }
            }
            *value = (sum + 0.5).clamp(0.0, 255.0) as u8;
        }
    });
    Photo { width: w, height: h, grey, focal_35mm: photo.focal_35mm }
}
