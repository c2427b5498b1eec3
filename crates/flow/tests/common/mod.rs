//! Rendered captures read and scored, and the phases they should show.

#![allow(dead_code)] // each test file takes what it needs

use dentwright_flow::{ReadError, ReadSettings, Reading, read, write_reading};
use dentwright_optics::{Photo, decode};
use dentwright_scene::view::{Fineness, View};
use dentwright_scene::{Capture, ReadMaps, Recipe, Score, recipes, score};
use std::f64::consts::{PI, TAU};
use std::sync::atomic::AtomicBool;

/// A dark door with three dents, in small photos: an ordinary capture for one trap to be added to.
pub fn door() -> Recipe {
    recipes::named("door").unwrap().shrunk(2)
}

pub fn read_recipe(recipe: &Recipe) -> Result<Reading, ReadError> {
    let folder = tempfile::tempdir().unwrap();
    recipe.render().unwrap().write_photos(folder.path()).unwrap();
    read(folder.path(), &ReadSettings::default(), &|_| {}, &AtomicBool::new(false))
}

/// The reading of a rendered capture, its maps and its score.
pub fn scored(capture: &Capture) -> (Reading, ReadMaps, Score) {
    let folder = tempfile::tempdir().unwrap();
    capture.write_photos(folder.path()).unwrap();
    let reading = read(folder.path(), &ReadSettings::default(), &|_| {}, &AtomicBool::new(false)).unwrap();
    write_reading(&reading, &folder.path().join("reading")).unwrap();
    let maps = ReadMaps::read(&folder.path().join("reading")).unwrap();
    let (width, height) = reading.scene.camera.size;
    let score = score(&maps, &capture.truth, width, height).unwrap();
    (reading, maps, score)
}

/// Holds a score to the contract for screens (docs/accuracy.md), with a share of the mirrored area of its own.
pub fn assert_contract(name: &str, s: &Score, least_read: f64) {
    let worst = s.dents.iter().filter_map(|d| d.error_um).fold(0.0f64, |a, e| a.max(e.abs()));
    println!(
        "{name}: 95th percentile {:.2} µm, within 2σ {:.3}, read {:.3}, worst dent off by {worst:.2} µm, tags {:.2} mm",
        s.error_p95_um, s.within_two_sigma, s.read_share, s.tag_rms_mm
    );
    // Two-sided: an error under 0.05 µm would mean the truth leaked into the reading.
    assert!((0.05..=3.0).contains(&s.error_p95_um), "{name}: 95th percentile {} µm", s.error_p95_um);
    assert!(s.read_share >= least_read, "{name}: read {}", s.read_share);
    for d in s.dents.iter().filter(|d| d.true_um.abs() > 50.0) {
        let error = d.error_um.expect("every dent is read");
        assert!(error.abs() <= 0.015 * d.true_um.abs() + 1.0, "{name}: dent of {} µm off by {error} µm", d.true_um);
    }
    assert!(s.within_two_sigma >= 0.9, "{name}: within two sigma {}", s.within_two_sigma);
    assert!(s.false_spots.is_empty(), "{name}: false spots {:?}", s.false_spots);
}

/// Renders, reads, scores and holds to the contract.
pub fn within_contract(name: &str, recipe: &Recipe) -> Reading {
    let (reading, _, score) = scored(&recipe.render().unwrap());
    assert_contract(name, &score, 0.95);
    reading
}

/// The photos of one pattern, in the order of their steps.
pub fn photos(capture: &Capture, pattern: &str) -> Vec<Photo> {
    let of = capture.photos.iter().filter(|p| p.file.starts_with(&format!("screen_{pattern}_")));
    of.map(|p| decode(&p.jpeg).unwrap()).collect()
}

/// Where along the board's width each pixel looks, 0 to 1; `None` where it does not wholly meet the board.
pub fn true_share(recipe: &Recipe) -> Vec<Option<f64>> {
    let (stage, rays) = (recipe.stage(), recipe.photos.rays);
    let [width, height] = recipe.photos.size;
    let view = View::trace(&stage, &recipe.scene.cam, Fineness { width, height, rays });
    let share = |u: f32| f64::from(u) / recipe.scene.board.w + 0.5;
    view.board_places(rays * rays).into_iter().map(|at| at.map(|[u, _]| share(u))).collect()
}

/// The error of a phase that nine of ten mirroring pixels keep, mrad.
pub fn phase_error_mrad(found: &[f32], periods: f64, shares: &[Option<f64>]) -> f64 {
    let off = |(f, s): (&f32, &Option<f64>)| Some((f64::from(*f) - TAU * periods * (*s)? + PI).rem_euclid(TAU) - PI);
    let mut all: Vec<f64> = found.iter().zip(shares).filter_map(off).map(f64::abs).collect();
    let at = all.len() * 9 / 10;
    1e3 * *all.select_nth_unstable_by(at, f64::total_cmp).1
}
