//! Warming a spot: how long until it is warm enough, how long it stays so, and what must not get so warm.

use dentwright_sheet::{HeatLimit, MetalRow, PaintRow, Range, WarmField, WarmSheet, Warmth, heat_limits, lowest_limit};
use serde::{Deserialize, Serialize};

/// Radius of what is warmed, mm.
const SPOT_MM: f64 = 60.0;
/// Loss of a face to still air, radiation counted, W/(m² K): free convection of gases 2 to 25, Incropera et al., table 1.1.
const AIR: Range = Range { low: 7.0, likely: 11.0, high: 18.0 };
/// Through foam or felt of 10 to 30 mm, 0.04 W/(m K): its resistance alone.
const FOAM: Range = Range { low: 1.3, likely: 2.0, high: 4.0 };
/// Into a brace that is bonded on and takes heat along, W/(m² K): ours, no published source.
const BRACE: Range = Range { low: 20.0, likely: 40.0, high: 90.0 };
/// Longest that is reckoned with, s.
const LONGEST_S: f64 = 3600.0;
/// Sheet that is reckoned with, mm, and its rings.
const REACH_MM: f64 = 300.0;
const RING_MM: f64 = 5.0;

/// What warms.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Warmer {
    /// Hot-air gun.
    HotAir,
    /// Infrared lamp.
    Lamp,
    /// Induction.
    Induction,
}

/// What lies on the back.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Backing {
    /// Air.
    Air,
    /// Foam or felt.
    Foam,
    /// A bonded brace.
    Brace,
}

/// A spot that is to be warmed.
#[derive(Debug, Clone, PartialEq)]
pub struct Warming<'a> {
    /// Metal.
    pub metal: &'a MetalRow,
    /// Thickness, mm.
    pub thickness_mm: f64,
    /// Paint, whose own limit applies always.
    pub paint: &'a PaintRow,
    /// With what.
    pub with: Warmer,
    /// On the back.
    pub backing: Backing,
    /// As it is now, °C; the air about it has that too.
    pub from_c: f64,
    /// As warm as it shall be, °C.
    pub to_c: f64,
    /// As cold as it may get again, °C.
    pub keep_c: f64,
    /// Names of the limits that apply beside the paint's.
    pub behind: &'a [String],
}

/// What comes of it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Warmed {
    /// Seconds until its middle is warm enough; none where it may not get so warm within the hour.
    #[cfg_attr(feature = "schema", schema(required))]
    pub reach_s: Option<Range>,
    /// Seconds for which it stays warm enough; none where it does not fall so far within the hour.
    #[cfg_attr(feature = "schema", schema(required))]
    pub stays_s: Option<Range>,
    /// Radius about the middle, mm, and warmth there, °C, when it has been reached.
    pub field: Vec<[f64; 2]>,
    /// The limit that applies.
    pub limit: HeatLimit,
    /// Whether what is wanted is over it.
    pub over: bool,
}

impl Warming<'_> {
    /// The answer. Every number is an estimate; what a gun or lamp gives is common practice, no published source.
    #[must_use]
    pub fn answer(&self) -> Warmed {
        let own = HeatLimit {
            name: "paint".into(),
            says: self.paint.says.clone(),
            limit_c: self.paint.limit_c,
            source: self.paint.source.clone(),
        };
        let named = heat_limits().into_iter().filter(|limit| self.behind.contains(&limit.name));
        let all: Vec<HeatLimit> = std::iter::once(own.clone()).chain(named).collect();
        let limit = lowest_limit(&all).cloned().unwrap_or(own);
        let (over, back) = (self.to_c > limit.limit_c, self.backing.loss());
        // the strongest warmth with the least loss, and the other way round
        let ways = [(1.0, AIR.low, back.low), (0.0, AIR.likely, back.likely), (-1.0, AIR.high, back.high)];
        let after = ways.map(|(strength, front, back)| {
            let mut field = WarmField::new(self.sheet(front, back), REACH_MM, RING_MM);
            let reached = field.until(Some(&self.with.warmth(strength)), self.to_c, LONGEST_S);
            let warm: Vec<[f64; 2]> = field.radius_mm.iter().zip(&field.temperature_c).map(|(r, c)| [*r, *c]).collect();
            let stays = reached.and_then(|_| field.until(None, self.keep_c, LONGEST_S));
            (reached, stays, warm)
        });
        let range = |times: [Option<f64>; 3]| {
            let [low, likely, high] = times;
            Some(Range { low: low?, likely: likely?, high: high.unwrap_or(LONGEST_S) })
        };
        let [soon, middle, late] = after;
        Warmed {
            reach_s: range([soon.0, middle.0, late.0]),
            stays_s: range([late.1.or(middle.1), middle.1, soon.1]),
            field: middle.2.into_iter().filter(|[r, _]| *r <= 2.0 * SPOT_MM).collect(),
            limit,
            over,
        }
    }

    fn sheet(&self, front_loss: f64, back_loss: f64) -> WarmSheet {
        WarmSheet {
            thickness_mm: self.thickness_mm,
            conductivity: self.metal.conductivity.likely,
            density: self.metal.density,
            heat_capacity: self.metal.heat_capacity,
            front_loss,
            back_loss,
            air_c: self.from_c,
        }
    }
}

impl Backing {
    fn loss(self) -> Range {
        match self {
            Self::Air => AIR,
            Self::Foam => FOAM,
            Self::Brace => BRACE,
        }
    }
}

impl Warmer {
    /// What it gives, from weak (−1) to strong (+1): common practice, no published source.
    fn warmth(self, strength: f64) -> Warmth {
        let radius_mm = SPOT_MM;
        match self {
            Self::HotAir => Warmth::Air { radius_mm, air_c: 180.0 + 40.0 * strength, gain: 60.0 + 20.0 * strength },
            Self::Lamp => Warmth::Power { radius_mm, power: 9e3 + 4e3 * strength },
            Self::Induction => Warmth::Power { radius_mm, power: 4e4 + 2e4 * strength },
        }
    }
}

/// Seconds until the middle of a spot warmed by hot air has fallen from one temperature to another, °C, in still air; none
/// where it does not fall so far within the hour, or is not warmer.
#[must_use]
pub fn cooling(
    metal: &MetalRow,
    paint: &PaintRow,
    thickness_mm: f64,
    [from_c, to_c, room_c]: [f64; 3],
) -> Option<Range> {
    let (with, backing) = (Warmer::HotAir, Backing::Air);
    let warming =
        Warming { metal, thickness_mm, paint, with, backing, from_c: room_c, to_c: from_c, keep_c: to_c, behind: &[] };
    (from_c > to_c && to_c > room_c).then(|| warming.answer().stays_s).flatten()
}

#[cfg(test)]
mod tests {
    use super::*;
    use dentwright_sheet::{metals, paints};

    #[test]
    fn a_warm_panel_falls_faster_than_by_its_faces_alone() {
        let (metals, paints) = (metals(), paints());
        let (steel, t) = (&metals[0], 0.7);
        let found = cooling(steel, &paints[0], t, [50.0, 40.0, 20.0]).unwrap();
        assert!(found.low < found.likely && found.likely < found.high);
        // Lumped capacity, τ = ρ c t / 2h (Incropera et al., chapter 5): the faces alone; the cold metal round the spot
        // takes heat too, so that it falls sooner, but not by an order.
        let lumped = steel.density * steel.heat_capacity * t * 1e-3 / (2.0 * AIR.likely) * (30.0_f64 / 20.0).ln();
        assert!(found.likely < lumped && found.likely > 0.1 * lumped, "{found:?} {lumped}");
        let none = |temperatures| cooling(steel, &paints[0], t, temperatures).is_none();
        assert!(none([30.0, 40.0, 20.0]) && none([50.0, 15.0, 20.0]));
    }

    #[test]
    fn the_lowest_limit_wins_and_induction_is_quickest() {
        let (metals, paints) = (metals(), paints());
        let behind = ["battery".to_owned(), "adhesive".to_owned()];
        let with = |with, backing, behind: &[String]| {
            let (metal, paint) = (&metals[0], &paints[0]);
            let (from_c, to_c, keep_c) = (15.0, 45.0, 35.0);
            Warming { metal, thickness_mm: 0.7, paint, with, backing, from_c, to_c, keep_c, behind }.answer()
        };
        let air = with(Warmer::HotAir, Backing::Air, &behind);
        assert!(air.limit.name == "battery" && !air.over);
        assert_eq!(with(Warmer::HotAir, Backing::Air, &[]).limit.name, "paint");
        let time = |warmed: Warmed| warmed.reach_s.unwrap().likely;
        // Without any loss a spot takes ρ c t ΔT / q (energy balance); with losses longer.
        let least = metals[0].density * metals[0].heat_capacity * 0.7e-3 * 30.0 / 4e4;
        let induction = time(with(Warmer::Induction, Backing::Air, &[]));
        assert!(induction > least && induction < 2.0 * least && induction < time(air), "{induction} {least}");
        let (foam, brace) = (with(Warmer::Lamp, Backing::Foam, &[]), with(Warmer::Lamp, Backing::Brace, &[]));
        let stays = |warmed: &Warmed| warmed.stays_s.map_or(0.0, |s| s.likely);
        assert!(stays(&foam) > stays(&brace), "{foam:?} {brace:?}");
        assert!(foam.field[0][1] >= 45.0 && foam.field.windows(2).all(|r| r[1][1] <= r[0][1] + 1e-9));
    }
}
