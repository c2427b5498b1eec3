//! Photos that went wrong are found, named, and put right or left out; sound photos are left alone.

use dentwright_flow::{FrameCheck, ReadError, ReadSettings, Reading, read};
use dentwright_scene::recipe::{Blurred, Recipe, Repeats};
use dentwright_scene::recipes;
use std::path::Path;
use std::sync::atomic::AtomicBool;

fn read_folder(folder: &Path) -> Result<Reading, ReadError> {
    read(folder, &ReadSettings::default(), &|_| {}, &AtomicBool::new(false))
}

fn read_recipe(recipe: Recipe) -> Result<Reading, ReadError> {
    let folder = tempfile::tempdir().unwrap();
    recipe.render().unwrap().write_photos(folder.path()).unwrap();
    read_folder(folder.path())
}

/// Photos of which anything is said: file, used or not, note.
fn remarks(reading: &Reading) -> Vec<(&str, bool, &str)> {
    let told = reading.frames.iter().filter(|f: &&FrameCheck| !f.ok || !f.note.is_empty());
    told.map(|f| (f.file.as_str(), f.ok, f.note.as_str())).collect()
}

#[test]
fn a_nudged_photo_is_brought_back_and_a_relit_one_left_out() {
    let reading = read_recipe(recipes::named("nudged").unwrap()).unwrap();
    let told = remarks(&reading);
    assert_eq!(told.len(), 2, "{told:?}");
    let (file, ok, note) = told[0];
    assert!(file == "screen_u36_2.jpg" && ok && note.contains("2.9 px"), "{told:?}");
    let (file, ok, note) = told[1];
    assert!(file == "screen_v20_1.jpg" && !ok && note.contains("1.3"), "{told:?}");
}

#[test]
fn a_repeated_and_a_blurred_photo_are_left_out() {
    let reading = read_recipe(recipes::named("wrong_step").unwrap()).unwrap();
    let told = remarks(&reading);
    assert_eq!(told.len(), 2, "{told:?}");
    let (file, ok, note) = told[0];
    assert!(file == "screen_u36_7.jpg" && !ok && note.contains("screen_u36_0.jpg"), "{told:?}");
    let (file, ok, note) = told[1];
    assert!(file == "screen_v20_3.jpg" && !ok && note.contains("blurred"), "{told:?}");
}

#[test]
fn a_coarse_photo_of_the_wrong_step_is_left_out() {
    let mut recipe = recipes::named("door").unwrap();
    recipe.traps.repeats = vec![Repeats { file: "screen_v5_1.jpg".into(), shows: "screen_v5_3.jpg".into() }];
    let reading = read_recipe(recipe).unwrap();
    let told = remarks(&reading);
    assert_eq!(told.len(), 1, "{told:?}");
    assert!(told[0].0 == "screen_v5_1.jpg" && !told[0].1, "{told:?}");
}

#[test]
fn sound_photos_are_left_alone() {
    for name in ["door", "noisy", "white_low_contrast"] {
        let reading = read_recipe(recipes::named(name).unwrap()).unwrap();
        assert!(remarks(&reading).is_empty(), "{name}: {:?}", remarks(&reading));
    }
}

#[test]
fn too_few_usable_photos_are_an_error_that_names_the_bad_ones() {
    let mut recipe = recipes::named("door").unwrap().shrunk(2);
    let blurred = |file: &str| Blurred { file: file.into(), by_px: 5.0 };
    recipe.traps.blurred = vec![blurred("screen_u36_1.jpg"), blurred("screen_u36_2.jpg")];
    let error = read_recipe(recipe).expect_err("two of four steps are not enough").to_string();
    assert!(error.contains("screen_u36_1.jpg") && error.contains("screen_u36_2.jpg"), "{error}");
}
