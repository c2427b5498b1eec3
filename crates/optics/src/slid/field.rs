//! Phases of a slid line board to board points.
//!
//! Both axes are unwrapped over what mirrors lines on both. An area's board point is then known up to the
//! direction of sliding and a whole field's offset. Direction and a first offset come from where the tags say
//! the board stands, a better offset from the board's own tags in the mirror image where they can be seen;
//! the rest of it is an unknown of the pose solve ([`crate::refine`]).

use super::decode::SlidPhase;
use crate::bundle::Mirrored;
use crate::mask::{clean, erode};
use crate::mirrored::BoardField;
use crate::pixel::Pixel;
use crate::unwrap::unwrap;
use nalgebra::Vector2;
use std::collections::HashMap;
use std::f32::consts::TAU;

/// Board points by areas.
#[derive(Debug, Clone)]
pub struct LineField {
    /// Of the main area, and of others once they are joined.
    pub field: BoardField,
    pitch_mm: f32,
    /// Whether the photos' steps run along the board's axes or against them, once known: 1 or -1.
    pub signs: [f32; 2],
    /// Each axis unwrapped, mm, areas apart.
    unwrapped: [Vec<f32>; 2],
    sigma_mm: Vec<f32>,
    label: Vec<u32>,
    /// Areas by size, the largest first.
    areas: Vec<(u32, usize)>,
}

/// Pixels taken off the rim of the mask, where a pixel sees half sticker and half board.
const RIM_PX: usize = 2;
/// Areas of fewer pixels are specks.
const SMALLEST_AREA_PX: usize = 200;
/// Deviation of a pixel's board point that no phase tells, mm: quantisation by the few steps apart.
const LEAST_SIGMA: f32 = 0.02;

/// Unwraps the phases of both axes; `None` where nothing is mirrored.
pub fn line_field(u: &SlidPhase, v: &SlidPhase, width: usize, pitch_mm: f64) -> Option<LineField> {
    let known: Vec<bool> = u.phase.iter().zip(&v.phase).map(|(a, b)| a.is_finite() && b.is_finite()).collect();
    let inside = erode(&clean(&known, width), width, RIM_PX);
    let mask: Vec<bool> = inside.iter().zip(&known).map(|(i, k)| *i && *k).collect();
    let ((u_rad, label), (v_rad, _)) =
        rayon::join(|| unwrap(&u.phase, &mask, width), || unwrap(&v.phase, &mask, width));
    let mut sizes: HashMap<u32, usize> = HashMap::new();
    label.iter().filter(|l| **l != u32::MAX).for_each(|l| *sizes.entry(*l).or_default() += 1);
    let mut areas: Vec<(u32, usize)> = sizes.into_iter().filter(|a| a.1 >= SMALLEST_AREA_PX).collect();
    areas.sort_by_key(|a| (usize::MAX - a.1, a.0));
    if areas.is_empty() {
        return None;
    }
    let scale = pitch_mm as f32 / TAU;
    let sigma = u.sigma.iter().zip(&v.sigma).map(|(a, b)| scale * a.hypot(*b).hypot(LEAST_SIGMA));
    let blank = vec![f32::NAN; mask.len()];
    let field = BoardField {
        width,
        height: mask.len() / width,
        u_mm: blank.clone(),
        v_mm: blank.clone(),
        sigma_mm: blank,
        undecided: 0,
    };
    let unwrapped = [u_rad, v_rad].map(|phase| phase.into_iter().map(|p| p * scale).collect());
    let mut out = LineField {
        field,
        pitch_mm: pitch_mm as f32,
        signs: [1.0; 2],
        unwrapped,
        sigma_mm: sigma.collect(),
        label,
        areas,
    };
    let main = out.areas[0].0;
    out.show(main, [0.0; 2]);
    Some(out)
}

impl LineField {
    /// Lays the main area on a rough prediction of the board points: direction, then offset.
    pub fn orient(&mut self, predict: impl Fn(&Pixel) -> Option<Vector2<f64>>) {
        let main = self.areas[0].0;
        let seen = self.compared(main, &predict);
        let signs = [0, 1].map(|axis| {
            let n = seen.len().max(1) as f64;
            let mean = seen.iter().fold((0.0, 0.0), |s, (q, p)| (s.0 + q[axis] / n, s.1 + p[axis] / n));
            let alike: f64 = seen.iter().map(|(q, p)| (q[axis] - mean.0) * (p[axis] - mean.1)).sum();
            if alike < 0.0 { -1.0 } else { 1.0 }
        });
        self.signs = signs;
        for (values, sign) in self.unwrapped.iter_mut().zip(signs) {
            values.iter_mut().for_each(|v| *v *= sign);
        }
        let offset = [0, 1].map(|axis| median(seen.iter().map(|(q, p)| p[axis] - signs[axis] as f64 * q[axis])));
        self.shift(Vector2::from(offset));
    }

    /// Lays the field on board tags seen in the mirror image; says whether that could be done.
    pub fn anchor(&mut self, corners: &[Mirrored]) -> bool {
        let apart: Vec<Vector2<f64>> =
            corners.iter().filter_map(|c| self.field.sample(&c.pixel).map(|(b, _)| c.board_mm - b)).collect();
        if apart.len() >= LEAST_CORNERS {
            self.shift(Vector2::from([0, 1].map(|axis| median(apart.iter().map(|d| d[axis])))));
        }
        apart.len() >= LEAST_CORNERS
    }

    /// Joins the areas that a good prediction of the board points puts on one order each.
    pub fn join(&mut self, predict: impl Fn(&Pixel) -> Option<Vector2<f64>>) {
        let pitch = f64::from(self.pitch_mm);
        let others = self.areas[1..].to_vec();
        for area in others {
            let seen = self.compared(area.0, &predict);
            if seen.len() < 20 {
                continue;
            }
            let apart = [0, 1].map(|axis| median(seen.iter().map(|(q, p)| (p[axis] - q[axis]) / pitch)));
            if apart.iter().all(|d| (d - d.round()).abs() < SURE_ORDER) {
                self.show(area.0, apart.map(|d| (d.round() * pitch) as f32));
            } else {
                self.field.undecided += area.1;
            }
        }
    }

    /// Moves everything by an offset on the board.
    pub fn shift(&mut self, by: Vector2<f64>) {
        for (values, by) in self.unwrapped.iter_mut().zip(by.iter()) {
            values.iter_mut().for_each(|v| *v += *by as f32);
        }
        self.show(self.areas[0].0, [0.0; 2]);
    }

    fn show(&mut self, area: u32, offset: [f32; 2]) {
        for i in (0..self.label.len()).filter(|&i| self.label[i] == area) {
            self.field.u_mm[i] = self.unwrapped[0][i] + offset[0];
            self.field.v_mm[i] = self.unwrapped[1][i] + offset[1];
            self.field.sigma_mm[i] = self.sigma_mm[i];
        }
    }

    /// Pairs of found and predicted board points on a lattice of an area.
    fn compared(
        &self,
        area: u32,
        predict: &impl Fn(&Pixel) -> Option<Vector2<f64>>,
    ) -> Vec<(Vector2<f64>, Vector2<f64>)> {
        let width = self.field.width;
        let of = |i: usize| {
            let found = Vector2::new(f64::from(self.unwrapped[0][i]), f64::from(self.unwrapped[1][i]));
            predict(&Pixel::new((i % width) as f64 + 0.5, (i / width) as f64 + 0.5)).map(|p| (found, p))
        };
        (0..self.label.len())
            .filter(|i| self.label[*i] == area && (i % width) % 7 == 3 && (i / width) % 7 == 3)
            .filter_map(of)
            .collect()
    }
}

/// Corners that make an offset.
const LEAST_CORNERS: usize = 3;
/// An area's order is taken where it is this near to a whole number of pitches on both axes.
const SURE_ORDER: f64 = 0.2;

fn median(values: impl Iterator<Item = f64>) -> f64 {
    let mut all: Vec<f64> = values.collect();
    if all.is_empty() {
        return 0.0;
    }
    let middle = all.len() / 2;
    *all.select_nth_unstable_by(middle, f64::total_cmp).1
}
