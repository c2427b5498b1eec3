//! What the metal holds, from a reading of rendered photos.

use dentwright_flow::{MetalSettings, ReadSettings, know_metal, read};
use dentwright_scene::demo;
use std::sync::atomic::AtomicBool;

#[test]
fn the_metal_of_a_read_dent_is_known_with_its_doubt() {
    let folder = tempfile::tempdir().unwrap();
    demo::ALL[1].render().unwrap().write_photos(folder.path()).unwrap();
    let go_on = AtomicBool::new(false);
    let reading = read(folder.path(), &ReadSettings::default(), &|_| {}, &go_on).unwrap();
    let spot = &reading.spots[0];
    println!("{spot:?}");
    let settings = MetalSettings {
        metal: "steel_bh180_panel".into(),
        thickness_mm: Some(0.7),
        at_mm: [spot.x_mm, spot.y_mm],
        length_mm: spot.length_mm,
    };
    let known = know_metal(&reading.height, &reading.deviation, &reading.sigma, &settings, &|_| {}, &go_on).unwrap();
    let facts = known.facts;
    println!("{facts:?}");
    let stretch = facts.stretch.as_ref().unwrap().value;
    // At least the mean stretch of a cap of this depth and width, (8/3)(h/D)² along its middle line; the press that left
    // it went far deeper, but a hail dent stretches less than two percent (common practice, no published source).
    let cap = 8.0 / 3.0 * (spot.height_mm / spot.length_mm).powi(2);
    assert!(stretch.value > cap && stretch.value < 0.02, "{stretch:?} {cap}");
    assert!((0.05..1.0).contains(&(stretch.doubt / stretch.value)), "{stretch:?}");
    assert!(facts.misfit_mm < 0.15 * facts.depth_mm, "{} of {}", facts.misfit_mm, facts.depth_mm);
}
