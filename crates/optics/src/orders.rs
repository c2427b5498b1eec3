//! The finest phase to an absolute fraction of the board.
//!
//! The finest phase of each axis is unwrapped over the region, then each connected area takes the one
//! order on which most of its pixels agree by the coarser patterns. A light paint scatters the board's own
//! light and shifts coarse phases, so single pixels may vote wrong; areas do not.

use crate::demodulate::{Phase, angle};
use crate::steps::Steps;
use crate::unwrap::unwrap;
use rayon::prelude::*;
use std::f32::consts::TAU;

/// Areas of fewer pixels are specks.
const SMALLEST_AREA_PX: usize = 200;
/// Distance between the pixels that vote, px, both ways; the coarser patterns are decoded only there.
const VOTE_EVERY_PX: usize = 3;

/// Fraction of the board per pixel (NaN where unknown), and how many pixels stayed without an order.
pub(crate) fn board_fraction(fine: &Phase, coarse: &[Steps], mask: &[bool], width: usize) -> (Vec<f32>, usize) {
    let (mut phase, label) = unwrap(&fine.phase, mask, width);
    let order = orders(fine, coarse, &phase, &label, width);
    let scale = 1.0 / (TAU * fine.periods as f32);
    let lost = phase
        .par_chunks_mut(width)
        .zip(label.par_chunks(width))
        .map(|(phase, label)| {
            let mut lost = 0;
            for (p, l) in phase.iter_mut().zip(label).filter(|(_, l)| **l != u32::MAX) {
                match order.binary_search_by_key(l, |o| o.0) {
                    Ok(k) => *p = (*p + TAU * order[k].1 as f32) * scale,
                    Err(_) => (*p, lost) = (f32::NAN, lost + 1),
                }
            }
            lost
        })
        .sum();
    (phase, lost)
}

/// The order of every area on which enough pixels voted, by label.
fn orders(fine: &Phase, coarse: &[Steps], phase: &[f32], label: &[u32], width: usize) -> Vec<(u32, i32)> {
    let height = phase.len() / width;
    let mut votes: Vec<(u32, i32)> = (0..height)
        .into_par_iter()
        .step_by(VOTE_EVERY_PX)
        .flat_map_iter(|y| (y * width..(y + 1) * width).step_by(VOTE_EVERY_PX))
        .filter(|&i| label[i] != u32::MAX)
        .map(|i| (label[i], ((absolute(coarse, fine, i) - phase[i]) / TAU).round() as i32))
        .collect();
    votes.par_sort_unstable();
    votes
        .chunk_by(|a, b| a.0 == b.0)
        .filter(|area| area.len() * VOTE_EVERY_PX * VOTE_EVERY_PX >= SMALLEST_AREA_PX)
        .filter_map(|area| area.chunk_by(|a, b| a.1 == b.1).max_by_key(|same| same.len()).map(|same| same[0]))
        .collect()
}

/// Fine phase with the order that the coarser patterns give at this one pixel, coarse to fine.
fn absolute(coarse: &[Steps], fine: &Phase, pixel: usize) -> f32 {
    let mut known: Option<(f32, f64)> = None;
    let mut refine = |phase: f32, periods: f64| {
        let value = match known {
            None => phase.rem_euclid(TAU),
            Some((before, fewer)) => {
                let guess = before * (periods / fewer) as f32;
                phase + TAU * ((guess - phase) / TAU).round()
            }
        };
        known = Some((value, periods));
        value
    };
    for steps in coarse {
        let (c, s) = steps.phasor(pixel);
        refine(angle(s, c), steps.periods);
    }
    refine(fine.phase[pixel], fine.periods)
}
