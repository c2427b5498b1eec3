//! Paint readings beside the car's others.

use dentwright_job::{PaintReading, PaintSays, Panel, judge_paint};
use proptest::prelude::*;
use uuid::Uuid;

fn read(panel: Panel, um: f64) -> PaintReading {
    PaintReading { id: Uuid::nil(), panel, um }
}

fn car(values: &[f64]) -> Vec<PaintReading> {
    Panel::ALL.into_iter().zip(values).map(|(panel, um)| read(panel, *um)).collect()
}

fn says(readings: &[PaintReading]) -> Vec<PaintSays> {
    judge_paint(readings).iter().map(|one| one.says).collect()
}

/// The example of the cited book's rule on the values 2.1, 2.6, 2.4, 2.5, 2.3, 2.1, 2.3, 2.6, 8.2, 8.3 names the
/// last two; here in tens of µm, each compared with the rest (numbers from memory).
#[test]
fn outliers_of_the_published_example_stand_out() {
    let found = says(&car(&[210.0, 260.0, 240.0, 250.0, 230.0, 210.0, 230.0, 260.0, 820.0, 830.0]));
    assert_eq!(&found[..8], &[PaintSays::Usual; 8]);
    assert_eq!(&found[8..], &[PaintSays::Thick; 2]);
}

#[test]
fn a_car_that_is_even_has_none_and_a_gauge_may_wander() {
    assert_eq!(says(&car(&[118.0, 126.0, 109.0, 121.0, 115.0, 131.0])), [PaintSays::Usual; 6]);
    assert_eq!(says(&car(&[120.0, 120.0, 120.0, 135.0])), [PaintSays::Usual; 4]);
}

#[test]
fn thick_and_thin_are_told_apart() {
    let found = says(&car(&[118.0, 310.0, 109.0, 121.0, 60.0, 124.0]));
    assert_eq!((found[1], found[4]), (PaintSays::Thick, PaintSays::Thin));
    assert_eq!(found.iter().filter(|says| **says == PaintSays::Usual).count(), 4);
}

#[test]
fn few_panels_say_nothing_and_one_wild_reading_of_a_panel_is_not_its_value() {
    assert_eq!(says(&car(&[118.0, 400.0, 121.0])), [PaintSays::TooFew; 3]);
    let mut readings = car(&[118.0, 119.0, 121.0, 124.0]);
    readings.extend([read(Panel::Bonnet, 640.0), read(Panel::Bonnet, 117.0)]);
    let bonnet = judge_paint(&readings)[0];
    assert_eq!((bonnet.um, bonnet.readings, bonnet.says), (118.0, 3, PaintSays::Usual));
}

#[test]
fn what_is_no_thickness_is_refused() {
    for um in [0.0, -118.0, 5_000.1, f64::NAN, f64::INFINITY] {
        assert!(read(Panel::Roof, um).check().is_err(), "{um}");
    }
    assert!(read(Panel::Roof, 118.0).check().is_ok());
}

proptest! {
    /// The order of reading does not matter, nor the unit beyond the least spread: shifting all shifts nothing.
    #[test]
    fn order_and_a_shift_of_all_change_nothing(mut values in prop::collection::vec(80.0..400.0, 4..12), by in 0.0..300.0) {
        let before = says(&car(&values));
        let shifted: Vec<f64> = values.iter().map(|um| um + by).collect();
        prop_assert_eq!(&before, &says(&car(&shifted)));
        let mut mixed = car(&values);
        mixed.reverse();
        prop_assert_eq!(&before, &says(&mixed));
        values[0] = 5_000.0;
        prop_assert_eq!(says(&car(&values))[0], PaintSays::Thick);
    }
}
