//! Texture of rendered panels whose peel is known, and marks of tools on one of them.

use dentwright_flow::{ReadSettings, Reading, read};
use dentwright_scene::dent::Dent;
use dentwright_scene::peel::Peel;
use dentwright_scene::{Recipe, recipes};
use dentwright_surface::{Map, MarkKind, TagPlace, bands, lay_by_tags};
use std::sync::atomic::AtomicBool;

fn read_recipe(recipe: &Recipe) -> Reading {
    let folder = tempfile::tempdir().unwrap();
    recipe.render().unwrap().write_photos(folder.path()).unwrap();
    read(folder.path(), &ReadSettings::default(), &|_| {}, &AtomicBool::new(false)).unwrap()
}

/// Where a place of the scene lies in a reading.
fn places(recipe: &Recipe, reading: &Reading) -> dentwright_surface::Laying {
    let truth: Vec<TagPlace> = recipe.scene.tags.iter().map(|t| TagPlace { id: t.id, x_mm: t.x, y_mm: t.y }).collect();
    let found: Vec<TagPlace> =
        reading.scene.layout.tags.iter().map(|t| TagPlace { id: t.id, x_mm: t.pose[0], y_mm: t.pose[1] }).collect();
    lay_by_tags(&truth, &found).unwrap()
}

/// Sixteen taps of a sharp tip from inside, 3 µm high, 4.5 mm apart, the first of them here.
fn taps(x: f64, y: f64) -> impl Iterator<Item = Dent> {
    let at = move |k: i32| (x + 4.5 * f64::from(k % 4), y + 4.5 * f64::from(k / 4));
    let tap = |(x, y)| Dent { x, y, a: 1.6, b: 1.6, depth: -0.003, crown: 0.0, rot: 0.0, crease: None };
    (0..16).map(at).map(tap)
}

#[test]
fn the_bands_of_a_panel_are_those_of_its_peel() {
    let mut recipe = recipes::named("sound_silver").unwrap();
    recipe.scene.peel = 0.0008;
    let reading = read_recipe(&recipe);
    let lay = places(&recipe, &reading);
    let scene = &recipe.scene;
    let peel = Peel::new(scene.w, scene.h, scene.peel, scene.peel_seed.unwrap_or(scene.seed));
    let grid = reading.deviation.grid;
    let inside = 0.5 * scene.w.min(scene.h) - 5.0;
    let truth = Map::from_fn(grid, |x, y| {
        let (x, y) = lay.back((x, y));
        if x.abs().max(y.abs()) < inside { peel.rise(x, y).z } else { f64::NAN }
    });
    let both: Vec<bool> =
        truth.values.iter().zip(&reading.deviation.values).map(|(t, d)| t.is_finite() && d.is_finite()).collect();
    let (expected, found) = (bands(&truth, &both), bands(&reading.deviation, &both));
    for (e, f) in expected.iter().zip(&found) {
        println!("{} to {} mm: {:?} µm read, {:?} true", e.from_mm, e.to_mm, f.sq_um, e.sq_um);
    }
    let ratio = |k: usize| found[k].sq_um.unwrap() / expected[k].sq_um.unwrap();
    // A blurred photo loses a little of the finest waves; noise adds to them.
    assert!((0.85..1.15).contains(&ratio(3)), "3 to 10 mm: {}", ratio(3));
    assert!((0.6..1.2).contains(&ratio(2)), "1 to 3 mm: {}", ratio(2));
    assert!(reading.texture.marks.is_empty(), "{:?}", reading.texture.marks);
    let sq = reading.texture.areal.unwrap().sq_um;
    assert!((0.4..1.2).contains(&sq), "{sq}");
}

#[test]
fn marks_of_a_sharp_tip_are_seen_and_a_dent_is_none() {
    let mut recipe = recipes::named("demo_door_round_1").unwrap();
    let without = read_recipe(&recipe);
    assert!(without.texture.marks.is_empty(), "{:?}", without.texture.marks);
    recipe.scene.dents.extend(taps(-70.0, -30.0));
    let reading = read_recipe(&recipe);
    let (x, y) = places(&recipe, &reading).carry((-63.2, -23.2));
    let near = reading.texture.marks.iter().find(|m| (m.x_mm - x).hypot(m.y_mm - y) < 8.0);
    assert!(
        near.is_some_and(|m| m.kind == MarkKind::Rougher && m.sq_um > 1.5 * m.panel_sq_um),
        "{:?}",
        reading.texture
    );
}

/// The rim of a fold is no mark of a tool; taps beside one are.
#[test]
fn the_rim_of_a_fold_is_no_mark_and_taps_beside_it_are() {
    let folded = |x: f64, y: f64, depth: f64, rot: f64, crease: Option<f64>| {
        let (a, b) = if crease.is_some() { (30.0, 8.0) } else { (9.0, 8.0) };
        Dent { x, y, a, b, depth, crown: 0.1, rot, crease }
    };
    let forms = [folded(-20.0, 5.0, 2.2, 20.0, None), folded(5.0, -10.0, 2.6, 60.0, None)];
    let crease = folded(-25.0, -10.0, 2.0, 30.0, Some(2.0));
    for (k, form) in forms.into_iter().chain([crease]).enumerate() {
        let mut recipe = recipes::named("door").unwrap();
        recipe.scene.dents[0] = form;
        let reading = read_recipe(&recipe);
        assert!(!reading.folds.is_empty(), "form {k} folds");
        println!("form {k}: {} folds, {} marks", reading.folds.len(), reading.texture.marks.len());
        assert!(reading.texture.marks.is_empty(), "form {k}: {:?}", reading.texture.marks);
        recipe.scene.dents.extend(taps(-88.0, 25.0));
        let reading = read_recipe(&recipe);
        let (x, y) = places(&recipe, &reading).carry((-81.2, 31.8));
        let near = reading.texture.marks.iter().find(|m| (m.x_mm - x).hypot(m.y_mm - y) < 8.0);
        assert!(near.is_some_and(|m| m.kind == MarkKind::Rougher), "form {k}: {:?}", reading.texture.marks);
    }
}
