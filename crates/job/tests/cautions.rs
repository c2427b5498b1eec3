//! Which cautions apply where.

use dentwright_job::{At, Car, Caution, CautionCode as Code, Damage, DentEntry, Panel, Source, cautions};
use dentwright_price::{Access, Dent, Kind, Metal, Place};
use uuid::Uuid;

fn damage(panel: Panel, accesses: &[Access]) -> Damage {
    let entry = |access: &Access| DentEntry {
        id: Uuid::nil(),
        dent: Dent {
            kind: Kind::Round,
            length_mm: 25.0,
            width_mm: 25.0,
            depth_mm: 1.0,
            metal: Metal::Steel,
            access: *access,
            place: Place::Flat,
            sharpness: None,
            count: 1,
        },
        source: Source::Hand,
    };
    Damage {
        id: Uuid::nil(),
        panel,
        at: At::new(0.5, 0.5).unwrap(),
        note: String::new(),
        dents: accesses.iter().map(entry).collect(),
        photos: Vec::new(),
        captures: Vec::new(),
    }
}

/// A car that somebody has looked at for high voltage.
fn looked(high_voltage: bool) -> Car {
    Car { high_voltage: Some(high_voltage), ..Car::default() }
}

fn codes(car: &Car, damages: &[Damage]) -> Vec<Code> {
    let mut codes: Vec<Code> = cautions(car, damages).into_iter().map(|caution| caution.code).collect();
    codes.dedup();
    codes
}

#[test]
fn a_car_without_damage_has_none() {
    assert!(cautions(&looked(true), &[]).is_empty());
}

#[test]
fn glue_from_the_front_has_no_corrosion_but_burns() {
    let found = codes(&looked(false), &[damage(Panel::FrontDoorLeft, &[Access::GlueOnly])]);
    assert_eq!(found, [Code::HeatPaint, Code::Solvent, Code::HotGlue, Code::Noise, Code::EyesHands]);
}

#[test]
fn a_tool_behind_a_roof_rail_meets_the_curtain() {
    let found = codes(&looked(false), &[damage(Panel::RoofRailRight, &[Access::TrimOff])]);
    assert_eq!(found, [Code::AirbagCurtain, Code::HeatPaint, Code::Noise, Code::EyesHands, Code::Corrosion]);
    let glued = codes(&Car::default(), &[damage(Panel::RoofRailRight, &[Access::GlueOnly])]);
    assert!(!glued.contains(&Code::AirbagCurtain));
}

#[test]
fn doors_and_pillars_hold_airbags_and_trim_hides_cameras() {
    let open = codes(&Car::default(), &[damage(Panel::RearDoorRight, &[Access::Open])]);
    assert!(open.contains(&Code::AirbagSeatPillar) && !open.contains(&Code::RadarCamera));
    let trim = codes(&Car::default(), &[damage(Panel::RearDoorRight, &[Access::TrimOff])]);
    assert!(trim.contains(&Code::AirbagSeatPillar) && trim.contains(&Code::RadarCamera));
}

#[test]
fn lids_have_struts_and_bumpers_have_radars() {
    for lid in [Panel::Bonnet, Panel::BootLid, Panel::Tailgate] {
        assert!(codes(&Car::default(), &[damage(lid, &[Access::GlueOnly])]).contains(&Code::GasStrut), "{lid}");
    }
    assert!(codes(&Car::default(), &[damage(Panel::RearBumper, &[Access::GlueOnly])]).contains(&Code::RadarCamera));
}

#[test]
fn a_brace_is_never_detached() {
    let found = codes(&Car::default(), &[damage(Panel::Bonnet, &[Access::Open, Access::Braced])]);
    assert!(found.contains(&Code::BondedStructure));
    assert!(!codes(&Car::default(), &[damage(Panel::Bonnet, &[Access::Open])]).contains(&Code::BondedStructure));
}

#[test]
fn high_voltage_and_where_nobody_has_looked() {
    let at = [damage(Panel::SillLeft, &[Access::Open])];
    let unknown = codes(&Car::default(), &at);
    assert!(unknown.contains(&Code::VoltageUnknown) && !unknown.contains(&Code::HighVoltage));
    let none = codes(&looked(false), &at);
    assert!(!none.contains(&Code::HighVoltage) && !none.contains(&Code::VoltageUnknown));
    assert!(codes(&looked(true), &at).contains(&Code::HighVoltage));
}

#[test]
fn where_no_way_is_known_every_way_counts() {
    for accesses in [&[][..], &[Access::None][..]] {
        let found = codes(&Car::default(), &[damage(Panel::FrontDoorLeft, accesses)]);
        for code in [Code::AirbagSeatPillar, Code::HotGlue, Code::BondedStructure, Code::Corrosion, Code::RadarCamera] {
            assert!(found.contains(&code), "{code:?} with {accesses:?}");
        }
    }
}

#[test]
fn each_panel_is_named_once_and_order_is_grave_first() {
    let twice = [damage(Panel::Bonnet, &[Access::Open]), damage(Panel::Bonnet, &[Access::Open])];
    let found = cautions(&Car::default(), &twice);
    let strut = Caution { code: Code::GasStrut, panel: Some(Panel::Bonnet) };
    assert_eq!(found.iter().filter(|caution| **caution == strut).count(), 1);
    assert!(found.windows(2).all(|pair| pair[0].code <= pair[1].code));
}
