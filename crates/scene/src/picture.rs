//! What the board shows.

use crate::scene::BoardPose;
use crate::tag;
use std::f64::consts::TAU;

/// One picture on the board.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Picture {
    /// Plain light with the corner tags on it.
    Tags,
    /// `1/2 + 1/2 cos(2π(periods·s + shift))`, raised to `gamma` where the screen is not linear.
    Sine {
        /// Across (u) or up (v).
        axis: Axis,
        /// Whole waves over the lit area.
        periods: f64,
        /// In waves.
        shift: f64,
        /// 1 for a screen that was linearised.
        gamma: f64,
        /// Pitch of the screen's pixels, mm: one brightness each, the last sixth dark. 0: none to be seen.
        pixel_mm: f64,
    },
    /// Black and white lines of the board's pitch.
    Lines {
        /// The axis that is measured, across the lines.
        axis: Axis,
        /// How far the lines were slid, mm.
        slid_mm: f64,
    },
}

/// A board axis.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Axis {
    /// To the right.
    U,
    /// Up.
    V,
}

impl Axis {
    /// As capture files name it.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::U => "u",
            Self::V => "v",
        }
    }
}

/// Brightness of the plain board between its tags, of full white.
const PLAIN: f64 = 0.8;
/// What a screen still gives where it is black.
const BLACK: f64 = 0.002;
/// Share of a screen's pixel that is dark, along each axis.
const DARK_SHARE: f64 = 1.0 / 6.0;
/// Printed and shown edges are this soft, mm.
const EDGE_MM: f64 = 0.3;

/// A picture made ready for many look-ups: brightness 0 to 1 at any board place.
#[derive(Debug, Clone)]
pub enum Shown {
    /// Depends on one axis only: a table over that axis.
    Along {
        /// Which.
        axis: Axis,
        /// Half the board's length along it, mm.
        half: f32,
        /// Table steps per mm.
        per_mm: f32,
        /// Brightness at even steps.
        table: Vec<f32>,
    },
    /// Plain with tags.
    Tagged {
        /// Number and centre of each tag, mm.
        tags: Vec<(usize, f64, f64)>,
        /// Side of their black squares, mm.
        size: f64,
    },
}

impl Shown {
    /// Puts a picture on a board.
    #[must_use]
    pub fn new(picture: Picture, board: &BoardPose) -> Self {
        match picture {
            Picture::Tags => Self::Tagged { tags: board.tag_centres(), size: board.tag },
            Picture::Sine { axis, periods, shift, gamma, pixel_mm } => Self::along(axis, board, |at, length| {
                let place = if pixel_mm > 0.0 { (at / pixel_mm).floor() * pixel_mm + 0.5 * pixel_mm } else { at };
                let dark = pixel_mm > 0.0 && at / pixel_mm - (at / pixel_mm).floor() > 1.0 - DARK_SHARE;
                let wave = 0.5 + 0.5 * (TAU * (periods * (place / length + 0.5) + shift)).cos();
                BLACK + if dark { 0.0 } else { (1.0 - BLACK) * wave.powf(gamma) }
            }),
            Picture::Lines { axis, slid_mm } => Self::along(axis, board, |at, _| {
                // Distance to the nearest edge between white and black, positive in the white.
                let place = ((at - slid_mm) / board.pitch).rem_euclid(1.0);
                let inside = (0.25 - (place - 0.25).abs().min((place - 1.25).abs())) * board.pitch;
                BLACK + (1.0 - BLACK) * (0.5 + inside / EDGE_MM).clamp(0.0, 1.0)
            }),
        }
    }

    /// Brightness at a board place inside the lit area.
    #[must_use]
    pub fn at(&self, u: f32, v: f32) -> f32 {
        match self {
            Self::Along { axis, half, per_mm, table } => {
                let at = if *axis == Axis::U { u } else { v };
                let place = ((at + half) * per_mm).clamp(0.0, (table.len() - 2) as f32);
                let k = place as usize;
                table[k] + (table[k + 1] - table[k]) * (place - k as f32)
            }
            Self::Tagged { tags, size } => {
                for (id, tag_u, tag_v) in tags {
                    let (right, up) = ((f64::from(u) - tag_u) / size, (f64::from(v) - tag_v) / size);
                    if right.abs().max(up.abs()) < 0.5 + 1.0 / f64::from(tag::MODULES) {
                        return if tag::is_white(*id, right, up) { 1.0 } else { BLACK as f32 };
                    }
                }
                PLAIN as f32
            }
        }
    }

    fn along(axis: Axis, board: &BoardPose, light: impl Fn(f64, f64) -> f64) -> Self {
        let length = if axis == Axis::U { board.w } else { board.h };
        // Twenty steps per mm: a wave of 10 mm is straight between two to 1 in 20,000.
        let per_mm = 20.0;
        let steps = (length * per_mm).ceil() as usize + 2;
        let table = (0..steps).map(|k| light(k as f64 / per_mm - length / 2.0, length) as f32).collect();
        Self::Along { axis, half: (length / 2.0) as f32, per_mm: per_mm as f32, table }
    }
}
