//! Dents that the tests share.

use dentwright_price::{Access, Dent, Kind, Metal, Place};

/// A dent on a flat part of a steel panel with open access.
pub fn dent(kind: Kind, across_mm: f64, depth_mm: f64, count: u32) -> Dent {
    Dent {
        kind,
        length_mm: across_mm,
        width_mm: across_mm,
        depth_mm,
        metal: Metal::Steel,
        access: Access::Open,
        place: Place::Flat,
        sharpness: None,
        count,
    }
}

pub mod shop;
