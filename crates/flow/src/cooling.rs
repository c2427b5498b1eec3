//! How long a warmed panel stays warm enough.

use dentwright_sheet::{MetalRow, Range, WarmField, WarmSheet, Warmth};

/// A hot-air gun, common practice: radius of what it warms, mm; its air, °C; gain, W/(m² K).
const GUN: Warmth = Warmth::Air { radius_mm: 60.0, air_c: 180.0, gain: 60.0 };
/// Loss of a face to still air, radiation counted, W/(m² K): free convection of gases 2 to 25, Incropera et al., table 1.1.
const LOSS: Range = Range { low: 7.0, likely: 11.0, high: 18.0 };
/// Longest that is reckoned with, s.
const LONGEST_S: f64 = 3600.0;
/// Sheet that is reckoned with, mm, and its rings.
const REACH_MM: f64 = 300.0;
const RING_MM: f64 = 5.0;

/// Seconds until the middle of a warmed spot has fallen from one temperature to another, °C, in still air; none where it
/// does not fall so far within the hour, or is not warmer.
///
/// The spot is warmed by a hot-air gun until its middle has `from_c`; then both faces cool. `high` is with the least
/// loss, `low` with the most.
#[must_use]
pub fn cooling(metal: &MetalRow, thickness_mm: f64, [from_c, to_c, room_c]: [f64; 3]) -> Option<Range> {
    let after = |loss: f64| {
        let sheet = WarmSheet {
            thickness_mm,
            conductivity: metal.conductivity.likely,
            density: metal.density,
            heat_capacity: metal.heat_capacity,
            front_loss: loss,
            back_loss: loss,
            air_c: room_c,
        };
        let mut field = WarmField::new(sheet, REACH_MM, RING_MM);
        field.until(Some(&GUN), from_c, LONGEST_S)?;
        field.until(None, to_c, LONGEST_S)
    };
    let falls = from_c > to_c && to_c > room_c;
    let [low, likely, high] = [LOSS.high, LOSS.likely, LOSS.low].map(|loss| falls.then(|| after(loss)).flatten());
    Some(Range { low: low?, likely: likely?, high: high.unwrap_or(LONGEST_S) })
}

#[cfg(test)]
mod tests {
    use super::*;
    use dentwright_sheet::metals;

    #[test]
    fn a_warm_panel_falls_faster_than_by_its_faces_alone() {
        let metals = metals();
        let steel = &metals[0];
        let t = 0.7;
        let found = cooling(steel, t, [50.0, 40.0, 20.0]).unwrap();
        assert!(found.low < found.likely && found.likely < found.high);
        // Lumped capacity, τ = ρ c t / 2h (Incropera et al., chapter 5): the faces alone; the cold metal round the spot
        // takes heat too, so that it falls sooner, but not by an order.
        let lumped = steel.density * steel.heat_capacity * t * 1e-3 / (2.0 * LOSS.likely) * (30.0_f64 / 20.0).ln();
        assert!(found.likely < lumped && found.likely > 0.1 * lumped, "{found:?} {lumped}");
        assert!(cooling(steel, t, [30.0, 40.0, 20.0]).is_none() && cooling(steel, t, [50.0, 15.0, 20.0]).is_none());
    }
}
