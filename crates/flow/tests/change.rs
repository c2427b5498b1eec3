//! Before and after on rendered captures of known truth: laid by tags, laid by texture where the stickers were
//! replaced, the change and its doubt, the series of a repair.

use dentwright_flow::{CompareError, KeptReading, ReadSettings, compare, read, series, write_change, write_reading};
use dentwright_scene::scene::Sticker;
use dentwright_scene::{Recipe, Truth, recipes};
use dentwright_surface::{LaidBy, TagPlace, Way, lay_by_tags};
use std::sync::atomic::AtomicBool;

/// A reading of a recipe, as it is opened again from its folder, with the truth it was rendered from.
fn kept(recipe: &Recipe) -> (KeptReading, Truth) {
    let folder = tempfile::tempdir().unwrap();
    recipe.render().unwrap().write_photos(folder.path()).unwrap();
    let reading = read(folder.path(), &ReadSettings::default(), &|_| {}, &AtomicBool::new(false)).unwrap();
    let out = folder.path().join("reading");
    write_reading(&reading, &out).unwrap();
    (KeptReading::open(&out).unwrap(), Truth::of(&recipe.scene))
}

fn named(name: &str) -> Recipe {
    recipes::named(name).unwrap()
}

/// 95th percentile of the change's error, µm; the share of cells where it lies within twice its said doubt; and the
/// middle doubt, µm.
fn scored(before: &(KeptReading, Truth), after: &(KeptReading, Truth)) -> (f64, f64, f64) {
    let compared = compare(&before.0, &after.0).unwrap();
    let of_truth: Vec<TagPlace> =
        after.1.scene.tags.iter().map(|t| TagPlace { id: t.id, x_mm: t.x, y_mm: t.y }).collect();
    let lay = lay_by_tags(&of_truth, &after.0.tags()).unwrap();
    let grid = compared.change.map.grid;
    let (mut errors, mut within) = (Vec::new(), 0usize);
    for i in 0..grid.len() {
        let (x, y) = lay.back(grid.position(i));
        let (Some(a), Some(b)) = (after.1.damage_at(x, y), before.1.damage_at(x, y)) else { continue };
        let error = f64::from(compared.change.map.values[i]) - (a - b);
        if error.is_finite() {
            errors.push(error.abs());
            within += usize::from(error.abs() <= 2.0 * f64::from(compared.change.sigma.values[i]));
        }
    }
    errors.sort_by(f64::total_cmp);
    let mut doubts: Vec<f32> = compared.change.sigma.values.iter().copied().filter(|s| s.is_finite()).collect();
    doubts.sort_by(f32::total_cmp);
    let doubt = 1e3 * f64::from(doubts[doubts.len() / 2]);
    let (p95, within) = (1e3 * errors[errors.len() * 95 / 100], within as f64 / errors.len() as f64);
    println!("change: 95th percentile {p95:.2} µm, within 2σ {within:.3}, middle σ {doubt:.2} µm");
    (p95, within, doubt)
}

#[test]
fn a_repair_of_four_readings_is_laid_by_its_tags_and_told_with_its_doubt() {
    let all: Vec<(KeptReading, Truth)> =
        ["demo_door_before", "demo_door_round_1", "demo_door_round_2", "demo_door_after"]
            .map(|n| kept(&named(n)))
            .into();
    for pair in all.windows(2) {
        let (p95_um, within, doubt_um) = scored(&pair[0], &pair[1]);
        // Two readings of 3 µm each, and not better than one could be.
        assert!((0.05..=4.3).contains(&p95_um), "{p95_um} µm");
        // The texture both readings show is no error of their difference: its doubt is below that of two readings
        // taken as if they had nothing in common (0.58 µm), and still holds.
        assert!(within >= 0.90 && (0.05..0.45).contains(&doubt_um), "within {within}, σ {doubt_um} µm");
    }
    let whole = compare(&all[0].0, &all[3].0).unwrap();
    assert!(matches!(whole.laying.by, LaidBy::Tags { count, moved: 0 } if count >= 6), "{:?}", whole.laying);
    let up = &whole.change.worked[0];
    assert!(up.way == Way::Better && (up.change_mm - 0.416).abs() < 0.008, "{up:?}");
    let round = compare(&all[1].0, &all[2].0).unwrap();
    let worse: Vec<_> = round.change.worked.iter().filter(|w| w.way == Way::Worse).collect();
    assert!(worse.len() == 1 && (worse[0].after_mm - 0.022).abs() < 0.003, "{:?}", round.change.worked);

    let readings: Vec<KeptReading> = all.into_iter().map(|a| a.0).collect();
    let steps = series(&readings);
    assert!(steps.iter().all(|s| s.laying.is_some()));
    let left: Vec<f64> = steps.iter().map(|s| s.residual.volume.mm3).collect();
    println!("left, mm³: {left:?}");
    assert!(left.windows(2).all(|w| w[1] < 0.7 * w[0]), "{left:?}");
    assert!((steps[0].residual.largest_mm + 0.42).abs() < 0.01);

    let out = tempfile::tempdir().unwrap();
    write_change(&whole, &[], &out.path().join("change")).unwrap();
    for name in ["change.json", "change.npy", "change_sigma.npy", "before.npy", "change.png"] {
        assert!(out.path().join("change").join(name).is_file(), "{name}");
    }
}

#[test]
fn with_replaced_stickers_the_texture_tells_and_another_panel_is_refused() {
    let before = kept(&named("demo_door_before"));
    let mut recipe = named("demo_door_round_1");
    let moved = |t: &Sticker| Sticker {
        x: t.x + 9.0 * (t.id as f64).sin(),
        y: t.y - 8.0 * (t.id as f64 * 2.0).cos(),
        rot: t.rot + 5.0,
        ..*t
    };
    recipe.scene.tags = recipe.scene.tags.iter().map(moved).collect();
    let after = kept(&recipe);
    assert!(lay_by_tags(&before.0.tags(), &after.0.tags()).is_none());
    let compared = compare(&before.0, &after.0).unwrap();
    println!("{:?}", compared.laying);
    assert!(matches!(compared.laying.by, LaidBy::Shape { .. }) && compared.laying.place_sigma_mm < 0.3);
    let (p95_um, within, _) = scored(&before, &after);
    assert!((0.05..=4.3).contains(&p95_um) && (0.90..=0.99).contains(&within), "{p95_um} µm, within {within}");

    recipe.scene.peel_seed = Some(999);
    recipe.scene.dents.clear();
    assert_eq!(compare(&before.0, &kept(&recipe).0).unwrap_err(), CompareError::NotLaid);
}
