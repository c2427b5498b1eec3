//! Spots of a reading as dents of a damage: size and depth are measured, the rest is a first guess
//! that the technician corrects.

use dentwright_price::{Access, Dent, Kind, Metal, Place};
use dentwright_surface::{Spot, SpotKind};

/// What a reading does not tell.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TakeSettings {
    /// Only spots farther than this from the intended shape become dents, mm.
    pub limit_mm: f64,
    /// Metal of the panel.
    pub metal: Metal,
    /// How the back is reached.
    pub access: Access,
    /// Where on the panel the damage lies.
    pub place: Place,
    /// Whether it is hail: then round lows are hail dents.
    pub hail: bool,
}

/// A dent made of a spot.
#[derive(Debug, Clone, PartialEq)]
pub struct SpotDent {
    /// Place of the spot in the list given, from 0.
    pub spot: u32,
    /// The dent.
    pub dent: Dent,
    /// One standard deviation of its depth, mm.
    pub sigma_mm: f64,
    /// Whether its depth is a lower bound: part of the spot was too steep to read.
    pub at_least: bool,
}

/// A low this many times as long as wide is a crease; common practice, no published source.
const CREASE_LENGTHS: f64 = 2.5;
/// Depth over half width from which a low is sharp: one shop's rule of a depth of a tenth of the
/// width ([trade press](crate), no standard).
const SHARP: f64 = 0.2;

/// Dents of all spots that lie beyond the limit, in the order of the spots.
#[must_use]
pub fn dents_of_spots(spots: &[Spot], settings: &TakeSettings) -> Vec<SpotDent> {
    let beyond = |spot: &&Spot| spot.height_mm.abs() > settings.limit_mm;
    let numbered = spots.iter().zip(0u32..);
    numbered
        .filter(|(spot, _)| beyond(spot))
        .map(|(spot, number)| SpotDent {
            spot: number,
            dent: dent(spot, settings),
            sigma_mm: spot.sigma_mm,
            at_least: spot.at_least_mm.is_some(),
        })
        .collect()
}

fn dent(spot: &Spot, settings: &TakeSettings) -> Dent {
    Dent {
        kind: kind(spot, settings.hail),
        length_mm: spot.length_mm,
        width_mm: spot.width_mm,
        depth_mm: spot.at_least_mm.unwrap_or(spot.height_mm).abs(),
        metal: settings.metal,
        access: settings.access,
        place: settings.place,
        sharpness: None,
        count: 1,
    }
}

fn kind(spot: &Spot, hail: bool) -> Kind {
    let sharpness = 2.0 * spot.height_mm.abs() / spot.width_mm;
    match spot.kind {
        SpotKind::High => Kind::High,
        SpotKind::Low if spot.length_mm > CREASE_LENGTHS * spot.width_mm => Kind::Crease,
        SpotKind::Low if sharpness > SHARP => Kind::Sharp,
        SpotKind::Low if hail => Kind::Hail,
        SpotKind::Low => Kind::Round,
    }
}
