//! Hours: the reported times that the shipped coefficients were set by, and laws that hold for any.

mod common;

use common::dent;
use dentwright_price::{Access, Dent, HoursSettings, Kind, Metal, Place, hours, total_hours};
use proptest::prelude::*;

fn likely(dent: &Dent) -> f64 {
    hours(dent, &HoursSettings::default()).likely
}

fn any_dent() -> impl Strategy<Value = Dent> {
    let kinds = [Kind::Round, Kind::Hail, Kind::Soft, Kind::Sharp, Kind::Crease, Kind::High];
    let metals = [Metal::Steel, Metal::HighStrengthSteel, Metal::Aluminium];
    let accesses = [Access::Open, Access::TrimOff, Access::Braced, Access::GlueOnly, Access::None];
    let places = [Place::Flat, Place::BodyLine, Place::Edge, Place::Rail];
    let words = (
        proptest::sample::select(kinds.to_vec()),
        proptest::sample::select(metals.to_vec()),
        proptest::sample::select(accesses.to_vec()),
        proptest::sample::select(places.to_vec()),
    );
    (words, 2.0..400.0_f64, 2.0..400.0_f64, 0.0..20.0_f64, 1_u32..500).prop_map(
        |((kind, metal, access, place), length_mm, width_mm, depth_mm, count)| Dent {
            kind,
            length_mm,
            width_mm,
            depth_mm,
            metal,
            access,
            place,
            sharpness: None,
            count,
        },
    )
}

/// Reported by practised people: ten hail dents in 20 minutes.
#[test]
fn ten_hail_dents_take_about_twenty_minutes() {
    let minutes = 60.0 * likely(&dent(Kind::Hail, 15.0, 0.4, 10));
    assert!((17.0..25.0).contains(&minutes), "{minutes}");
}

/// 1000 dents at 2 minutes are 33 h, three days for one person.
#[test]
fn a_thousand_hail_dents_take_about_three_days() {
    let hours = likely(&dent(Kind::Hail, 15.0, 0.4, 1000));
    assert!((28.0..38.0).contains(&hours), "{hours}");
}

#[test]
fn an_easy_ding_takes_half_an_hour_to_an_hour() {
    for (across_mm, depth_mm) in [(20.0, 0.8), (25.0, 1.0), (30.0, 1.2)] {
        let hours = likely(&dent(Kind::Round, across_mm, depth_mm, 1));
        assert!((0.45..1.0).contains(&hours), "{across_mm} mm: {hours}");
    }
}

/// Reported from an examination: about 20 minutes; a shop's day is slower.
#[test]
fn five_centimetres_on_a_rail_take_twenty_minutes_to_an_hour() {
    let on_rail = Dent { place: Place::Rail, ..dent(Kind::Soft, 50.0, 0.8, 1) };
    assert!((0.33..1.0).contains(&likely(&on_rail)), "{}", likely(&on_rail));
}

/// Two lines worked by hand with Fenton's formula: m = 0.65 h each, own 0.35, shared 0.2.
/// σ² = 0.04 + ln(1 + (e^0.1225 - 1) / 2) = 0.10314; low and high 1.3 · e^(-0.05157 ∓ 1.2816 · 0.32116).
#[test]
fn doubt_of_two_dents_is_the_one_worked_by_hand() {
    let settings = HoursSettings { area_ref_mm2: 12.5 * 12.5 * std::f64::consts::PI, ..HoursSettings::default() };
    let ding = dent(Kind::Round, 25.0, 1.0, 1);
    let total = total_hours([&ding, &ding], &settings);
    assert!((total.likely - 1.3).abs() < 1e-9);
    assert!((total.low - 0.8181).abs() < 2e-3, "{}", total.low);
    assert!((total.high - 1.8634).abs() < 2e-3, "{}", total.high);
}

#[test]
fn doubt_shrinks_with_many_dents_but_not_below_the_shared_part() {
    let settings = HoursSettings::default();
    let relative = |count| {
        let hours = hours(&dent(Kind::Hail, 15.0, 0.4, count), &settings);
        (hours.high / hours.low).ln()
    };
    assert!(relative(100) < 0.6 * relative(1));
    let shared_only = 2.0 * settings.spread_z * settings.spread_shared;
    assert!(relative(100_000) > shared_only && relative(100_000) < 1.001 * shared_only);
}

proptest! {
    #[test]
    fn deeper_wider_longer_or_more_never_takes_less(dent in any_dent(), grow in 1.0..3.0_f64, more in 0_u32..500) {
        let settings = HoursSettings::default();
        let before = hours(&dent, &settings);
        let larger = [
            Dent { depth_mm: dent.depth_mm * grow, ..dent.clone() },
            Dent { width_mm: dent.width_mm * grow, ..dent.clone() },
            Dent { length_mm: dent.length_mm * grow, ..dent.clone() },
            Dent { count: dent.count + more, ..dent.clone() },
        ];
        for dent in larger {
            let after = hours(&dent, &settings);
            let least = 1.0 - 1e-12;
            prop_assert!(after.likely >= least * before.likely);
            prop_assert!(after.low >= least * before.low);
            prop_assert!(after.high >= least * before.high);
        }
    }

    #[test]
    fn likely_is_the_product_of_its_factors_and_lies_between_low_and_high(dent in any_dent()) {
        let hours = hours(&dent, &HoursSettings::default());
        let product: f64 = hours.because.iter().map(|factor| factor.times).product();
        prop_assert!((product / hours.likely - 1.0).abs() < 1e-12);
        prop_assert!(0.0 < hours.low && hours.low < hours.likely && hours.likely < hours.high);
    }

    #[test]
    fn likely_hours_add_up_and_doubt_is_less_than_the_sum_of_doubts(dents in prop::collection::vec(any_dent(), 2..12)) {
        let settings = HoursSettings::default();
        let total = total_hours(&dents, &settings);
        let lines: Vec<_> = dents.iter().map(|dent| hours(dent, &settings)).collect();
        let sum: f64 = lines.iter().map(|line| line.likely).sum();
        prop_assert!((total.likely / sum - 1.0).abs() < 1e-9);
        prop_assert!(total.high < lines.iter().map(|line| line.high).sum());
        prop_assert!(total.low > lines.iter().map(|line| line.low).sum());
    }
}
