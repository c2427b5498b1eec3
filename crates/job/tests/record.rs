//! Codes, places, shops, spots as dents, and what a quote is made from.

use dentwright_job::{
    At, Car, Damage, DentEntry, Job, Panel, Shop, Source, Stage, TakeSettings, dents_of_spots, quote_input,
};
use dentwright_price::{Access, HoursSettings, Kind, Learned, Metal, Place, Pricing, quote};
use dentwright_surface::{Spot, SpotKind};
use jiff::Timestamp;
use rust_decimal::Decimal;
use uuid::Uuid;

#[test]
fn codes_are_the_same_in_text_and_json() {
    for panel in Panel::ALL {
        assert_eq!(serde_json::to_string(&panel).unwrap(), format!("\"{panel}\""));
        assert_eq!(panel.code().parse(), Ok(panel));
    }
    for stage in Stage::ALL {
        assert_eq!(serde_json::to_string(&stage).unwrap(), format!("\"{stage}\""));
        assert_eq!(stage.code().parse(), Ok(stage));
    }
    assert!("bonnet ".parse::<Panel>().unwrap_err().to_string().contains("bonnet "));
    assert!("sold".parse::<Stage>().is_err());
}

#[test]
fn a_place_is_on_the_panel() {
    assert!(At::new(0.0, 1.0).is_ok());
    for (x, y) in [(-0.001, 0.5), (0.5, 1.001), (f64::NAN, 0.5), (0.5, f64::INFINITY)] {
        assert!(At::new(x, y).is_err(), "{x} {y}");
    }
}

#[test]
fn a_shop_is_checked() {
    assert_eq!(Shop::default().check(), Ok(()));
    let bad = [
        Shop { currency: "eur".into(), ..Shop::default() },
        Shop { currency: "EURO".into(), ..Shop::default() },
        Shop { hourly_rate: Decimal::NEGATIVE_ONE, ..Shop::default() },
        Shop { tax_percent: Decimal::from(101), ..Shop::default() },
        Shop { finish_limit_um: f64::NAN, ..Shop::default() },
        Shop { finish_limit_um: 0.0, ..Shop::default() },
    ];
    for shop in bad {
        assert!(shop.check().is_err(), "{shop:?}");
    }
}

fn spot(kind: SpotKind, height_mm: f64, length_mm: f64, width_mm: f64) -> Spot {
    Spot {
        kind,
        x_mm: 0.0,
        y_mm: 0.0,
        height_mm,
        sigma_mm: 0.001,
        length_mm,
        width_mm,
        angle_deg: 0.0,
        area_mm2: 1.0,
        volume_mm3: 1.0,
        at_least_mm: None,
        folds: Vec::new(),
    }
}

const TAKE: TakeSettings =
    TakeSettings { limit_mm: 0.01, metal: Metal::Aluminium, access: Access::TrimOff, place: Place::Flat, hail: false };

#[test]
fn only_spots_beyond_the_limit_become_dents() {
    let spots = [
        spot(SpotKind::Low, -0.4, 30.0, 25.0),
        spot(SpotKind::High, 0.05, 20.0, 10.0),
        spot(SpotKind::Low, -0.01, 20.0, 20.0),
        spot(SpotKind::Low, -0.0101, 60.0, 20.0),
    ];
    let dents = dents_of_spots(&spots, &TAKE);
    let seen: Vec<_> = dents.iter().map(|d| (d.spot, d.dent.kind, d.dent.depth_mm)).collect();
    assert_eq!(seen, [(0, Kind::Round, 0.4), (1, Kind::High, 0.05), (3, Kind::Crease, 0.0101)]);
    assert!(dents.iter().all(|d| d.dent.check().is_ok() && d.dent.metal == Metal::Aluminium && d.dent.count == 1));
}

#[test]
fn hail_and_sharp_lows_are_told_apart() {
    let spots = [spot(SpotKind::Low, -0.2, 20.0, 18.0), spot(SpotKind::Low, -2.0, 18.0, 16.0)];
    let kinds: Vec<Kind> =
        dents_of_spots(&spots, &TakeSettings { hail: true, ..TAKE }).iter().map(|d| d.dent.kind).collect();
    assert_eq!(kinds, [Kind::Hail, Kind::Sharp]);
}

#[test]
fn a_quote_is_made_of_the_dents_of_all_damages() {
    let spots = [spot(SpotKind::Low, -0.4, 30.0, 25.0), spot(SpotKind::Low, -0.2, 15.0, 14.0)];
    let damage = |panel| Damage {
        id: Uuid::nil(),
        panel,
        at: At::new(0.2, 0.3).unwrap(),
        note: String::new(),
        dents: dents_of_spots(&spots, &TAKE)
            .into_iter()
            .map(|d| DentEntry { id: Uuid::nil(), dent: d.dent, source: Source::Hand })
            .collect(),
        photos: Vec::new(),
        captures: Vec::new(),
    };
    let job = Job {
        id: Uuid::nil(),
        number: "2026-001".into(),
        created: Timestamp::UNIX_EPOCH,
        stage: Stage::TakenIn,
        customer: Default::default(),
        car: Car::default(),
        promised: None,
        promised_time: None,
        place: String::new(),
        finished: None,
        notes: String::new(),
        damages: vec![damage(Panel::Bonnet), damage(Panel::Roof)],
        pricing: None,
    };
    assert_eq!(job.dent_count(), 4);
    let shop = Shop { hourly_rate: Decimal::from(80), ..Shop::default() };
    let quoted = quote(&quote_input(&job, &shop), &Learned::start(&HoursSettings::default()).unwrap(), None).unwrap();
    let whats: Vec<&str> = quoted.lines.iter().map(|line| line.what.as_str()).collect();
    assert_eq!(whats, ["bonnet", "bonnet", "roof", "roof"]);
    assert!(quoted.lines.iter().all(|line| line.unit_price == Decimal::from(80)));

    // What was entered stands, whatever the shop asks by now.
    let pricing = Pricing { hourly_rate: Decimal::from(70), ..shop.pricing() };
    let entered = Job { pricing: Some(pricing), ..job };
    assert_eq!(quote_input(&entered, &shop).pricing.hourly_rate, Decimal::from(70));
}
