//! Bars, heat, paint, glue and the files they read, against closed forms.

mod common;

use common::assert_near;
use dentwright_sheet::*;

fn round(to_mm: [f64; 2], diameter_mm: f64) -> Length {
    Length { to_mm, section: BarSection::Round { diameter_mm } }
}

fn bar(lengths: Vec<Length>) -> Bar {
    Bar { tip_mm: [0.0, 0.0], lengths, e_mpa: 210000.0, yield_mpa: 900.0 }
}

/// Two cantilevers back to back at the fulcrum: the hand loses `F a³/3EI + (a/b) T b³/3EI` (Timoshenko, Strength of
/// Materials).
#[test]
fn a_straight_bar_bends_as_two_cantilevers() {
    let (a, b, f): (f64, f64, f64) = (600.0, 150.0, 100.0);
    let found = bar(vec![round([750.0, 0.0], 12.0)]).leverage(f, 60.0, b).expect("a lever");
    let ei = 210000.0 * std::f64::consts::PI * 12f64.powi(4) / 64.0;
    assert_near("advantage", found.advantage, 4.0, 1e-12);
    // the tip's bending shows at the hand times the advantage
    let lost = f * a.powi(3) / (3.0 * ei) + 4.0 * (4.0 * f) * b.powi(3) / (3.0 * ei);
    assert_near("hand lost", found.hand_lost_mm, lost, 1e-9);
    assert_near("stress", found.stress_mpa, f * a * 32.0 / (std::f64::consts::PI * 1728.0), 1e-9);
    assert_near("tip travel", found.tip_travel_mm, (60.0 - lost) / 4.0, 1e-9);
}

/// Stepped cantilever: the thin outer part adds `F c³/3E (1/I₂ − 1/I₁)`, c its length from the hand.
#[test]
fn a_thinner_grip_gives_more() {
    let thick =
        bar(vec![round([300.0, 0.0], 16.0), round([750.0, 0.0], 16.0)]).leverage(100.0, 0.0, 150.0).expect("a lever");
    let stepped =
        bar(vec![round([300.0, 0.0], 16.0), round([750.0, 0.0], 10.0)]).leverage(100.0, 0.0, 150.0).expect("a lever");
    let i = |d: f64| std::f64::consts::PI * d.powi(4) / 64.0;
    let more = 100.0 * 450f64.powi(3) / (3.0 * 210000.0) * (1.0 / i(10.0) - 1.0 / i(16.0));
    assert_near("thinner grip", stepped.hand_lost_mm - thick.hand_lost_mm, more, 1e-9);
    assert!(bar(vec![round([750.0, 0.0], 16.0)]).leverage(100.0, 0.0, 800.0).is_err());
}

fn steel(loss: f64) -> WarmSheet {
    WarmSheet {
        thickness_mm: 0.7,
        conductivity: 52.0,
        density: 7850.0,
        heat_capacity: 470.0,
        front_loss: 0.5 * loss,
        back_loss: 0.5 * loss,
        air_c: 20.0,
    }
}

/// Lumped warming, Incropera et al., chapter 5: 0.7 mm steel at 20 °C in gas of 120 °C, h 25 W/(m² K), after 60 s.
#[test]
fn a_sheet_in_hot_gas_warms_as_one_lump() {
    let mut field = WarmField::new(WarmSheet { air_c: 120.0, ..steel(25.0) }, 100.0, 5.0);
    field.temperature_c.fill(20.0);
    field.go(None, 60.0, 0.02);
    assert_near("lump after 60 s", field.temperature_c[0], 64.05, 0.0005);
}

/// Even flux on a disc of an endless losing sheet (Carslaw and Jaeger, chapter 5; Bessel functions): 1 kW/m² within
/// 25 mm, h 25: rise 9.76 K in the middle, 6.43 at the rim, 2.48 at twice the rim.
#[test]
fn a_lamp_warms_by_the_bessel_functions() {
    let mut field = WarmField::new(steel(25.0), 400.0, 0.5);
    field.go(Some(&Warmth::Power { radius_mm: 25.0, power: 1000.0 }), 2000.0, 2.0);
    let at = |r: f64| {
        let i = (r / 0.5 - 0.5).floor() as usize;
        0.5 * (field.temperature_c[i] + field.temperature_c[i + 1]) - 20.0
    };
    assert_near("lamp, middle", field.temperature_c[0] - 20.0, 9.76, 0.002);
    assert_near("lamp, rim", at(25.0), 6.43, 0.003);
    assert_near("lamp, twice the rim", at(50.0), 2.48, 0.004);
}

/// A pulse of heat spreads as `Q/(4π k t s) e^(−r²/4as)` where nothing is lost (Carslaw and Jaeger, chapter 10).
#[test]
fn a_pulse_spreads_by_the_closed_form() {
    let mut field = WarmField::new(steel(0.0), 200.0, 0.5);
    // 1 kJ within 1 mm in a hundredth of a second
    let power = 1000.0 / (std::f64::consts::PI * 0.001f64.powi(2) * 0.01);
    field.go(Some(&Warmth::Power { radius_mm: 1.0, power }), 0.01, 0.001);
    field.go(None, 5.0, 0.002);
    assert_near("pulse, middle after 5 s", field.temperature_c[0] - 20.0, 437.2, 0.01);
    let i = 60;
    let rise = 0.5 * (field.temperature_c[i - 1] + field.temperature_c[i]) - 20.0;
    assert_near("pulse, 30 mm after 5 s", rise, 18.0, 0.01);
}

#[test]
fn warming_takes_time_and_so_does_cooling() {
    let mut field = WarmField::new(steel(20.0), 200.0, 2.0);
    let hot = Warmth::Air { radius_mm: 60.0, air_c: 120.0, gain: 60.0 };
    let up = field.until(Some(&hot), 45.0, 600.0).expect("reaches 45 °C");
    let down = field.until(None, 30.0, 3600.0).expect("falls to 30 °C");
    assert!(up > 5.0 && up < 120.0 && down > up, "{up} {down}");
    assert!(field.until(None, 90.0, 20.0).is_none());
}

#[test]
fn paint_that_is_warm_takes_more_and_old_paint_less() {
    for paint in paints() {
        let (cold, warm) = (paint.takes(15.0, false), paint.takes(50.0, false));
        assert!(warm[0] > cold[0] && warm[1] > cold[1], "{}", paint.name);
        assert!(paint.takes(15.0, true)[0] < cold[0]);
        assert_eq!(paint.risk(0.2 * cold[0], 30.0, false).risk, Risk::Low);
        assert_eq!(paint.risk(2.0 * warm[1], 50.0, false).risk, Risk::High);
        assert!(paint.risk(0.2 * cold[0], 30.0, true).risk >= Risk::Raised);
    }
    // membrane 1 % and a crown of 20 mm radius on 0.7 mm sheet under 0.13 mm of paint
    assert_near("strain on the face", face_strain(0.01, 1.0 / 20.0, 0.7, 0.13), 0.034, 1e-9);
}

#[test]
fn glue_holds_best_where_it_is_neither_cold_nor_hot() {
    let glue = &glues()[0];
    let best = glue.strength(20.0)[1];
    assert!(glue.strength(2.0)[1] < best && glue.strength(60.0)[1] < best);
    let tab = Tab { radius_mm: 12.5, foot_mm: 4.0, e_mpa: 2500.0, stem_mm: 4.0 };
    assert_eq!(glue.hold(&tab, 20.0, 100.0).first, LetsGo::Metal);
    assert_eq!(glue.hold(&tab, 20.0, 2000.0).first, LetsGo::Glue);
    assert_eq!(glue.hold(&tab, 65.0, 100.0).first, LetsGo::Glue);
}

#[test]
fn every_metal_on_file_is_sound_and_says_its_source() {
    let metals = metals();
    assert!(metals.len() >= 7);
    for m in &metals {
        assert!(m.hardening.fault().is_none() && !m.source.is_empty(), "{}", m.name);
        assert_eq!(m.hardening.yield_mpa(), m.yield_mpa.likely, "{}", m.name);
        for r in [m.e_mpa, m.yield_mpa, m.kinematic_share, m.thickness_mm, m.conductivity] {
            assert!(r.low <= r.likely && r.likely <= r.high, "{}", m.name);
        }
    }
    let limits = heat_limits();
    assert!(limits.iter().all(|limit| limit.source.contains("common practice")));
    assert_eq!(lowest_limit(&limits).map(|limit| limit.name.as_str()), Some("battery"));
}
