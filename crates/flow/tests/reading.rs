//! Captures of known truth read from the photos alone, and captures that cannot be read.
//!
//! The bounds are the project's accuracy contract for screen captures (docs/accuracy.md). The two
//! independently rendered sets are looked for beside the project and skipped where they are absent.

use dentwright_flow::{ReadError, ReadSettings, Reading, read, write_reading};
use dentwright_scene::{ReadMaps, Score, Truth, recipes, score};
use std::path::{Path, PathBuf};
use std::sync::atomic::AtomicBool;

fn read_folder(folder: &Path) -> Result<Reading, ReadError> {
    read(folder, &ReadSettings::default(), &|_| {}, &AtomicBool::new(false))
}

fn scored(capture: &Path) -> Score {
    let out = tempfile::tempdir().unwrap();
    let reading = read_folder(capture).unwrap();
    write_reading(&reading, &out.path().join("reading")).unwrap();
    let maps = ReadMaps::read(&out.path().join("reading")).unwrap();
    let (width, height) = reading.scene.camera.size;
    score(&maps, &Truth::read(capture).unwrap(), width, height).unwrap()
}

fn rendered(recipe: &str, divisor: usize) -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    recipes::named(recipe).unwrap().shrunk(divisor).render().unwrap().write(folder.path()).unwrap();
    folder
}

fn assert_contract(s: &Score, spots_must_be_true: bool) {
    // Two-sided: an error under 0.05 µm would mean the truth leaked into the reading.
    assert!((0.05..=3.0).contains(&s.error_p95_um), "95th percentile {} µm", s.error_p95_um);
    assert!(s.read_share >= 0.95, "read {}", s.read_share);
    for d in s.dents.iter().filter(|d| d.true_um.abs() > 50.0) {
        let error = d.error_um.expect("every dent is read");
        assert!(error.abs() <= 0.015 * d.true_um.abs() + 1.0, "dent of {} µm off by {error} µm", d.true_um);
    }
    assert!(s.within_two_sigma >= 0.9, "within two sigma {}", s.within_two_sigma);
    assert!(!spots_must_be_true || s.false_spots.is_empty(), "false spots {:?}", s.false_spots);
}

#[test]
fn a_door_with_three_dents_is_read_within_the_contract() {
    assert_contract(&scored(rendered("door", 1).path()), true);
}

#[test]
fn a_sound_panel_has_no_spots() {
    let s = scored(rendered("sound_silver", 1).path());
    assert_contract(&s, true);
}

#[test]
fn a_body_line_does_not_ruin_the_rest() {
    assert_contract(&scored(rendered("body_line", 1).path()), false);
}

#[test]
fn the_independent_sets_are_read_within_the_contract() {
    let sets = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../../shared/captures");
    if !sets.is_dir() {
        println!("skipped: the independently rendered sets are not beside the project");
        return;
    }
    for (name, strict) in [("shared_door", true), ("shared_wing", true)] {
        let s = scored(&sets.join(name));
        println!("{name}: 95th percentile {:.2} µm, within 2σ {:.3}", s.error_p95_um, s.within_two_sigma);
        assert_contract(&s, strict);
    }
}

#[test]
fn bad_captures_name_the_photo_and_leave_nothing_behind() {
    let good = rendered("door", 4);
    let file = |name: &str| good.path().join(name);
    let toml = std::fs::read_to_string(file("capture.toml")).unwrap();

    let setup = std::fs::read(file("setup.jpg")).unwrap();
    std::fs::write(file("setup.jpg"), &setup[..setup.len() / 2]).unwrap();
    let error = read_folder(good.path()).unwrap_err();
    assert!(matches!(&error, ReadError::Photo { file, .. } if file == "setup.jpg"), "{error}");

    std::fs::remove_file(file("setup.jpg")).unwrap();
    let error = read_folder(good.path()).unwrap_err();
    assert!(error.to_string().contains("setup.jpg") && !error.next().is_empty(), "{error}");
    std::fs::write(file("setup.jpg"), &setup).unwrap();

    std::fs::write(file("capture.toml"), toml.replace("tag36h11", "tag16h5")).unwrap();
    assert!(matches!(read_folder(good.path()), Err(ReadError::Capture(_))));
    std::fs::write(file("capture.toml"), toml.replace("\"setup.jpg\"", "\"../setup.jpg\"")).unwrap();
    assert!(matches!(read_folder(good.path()), Err(ReadError::Capture(_))));
    std::fs::write(file("capture.toml"), &toml).unwrap();

    // The panel photo is replaced by a set-up-like view without any of the panel's tags.
    let ids = toml.replace("tag_ids = [", "tag_ids = [500, 501, 502, 503]\nunused = [");
    std::fs::write(file("capture.toml"), ids).unwrap();
    let error = read_folder(good.path()).unwrap_err();
    assert!(matches!(&error, ReadError::Locate { .. }), "{error}");
    std::fs::write(file("capture.toml"), &toml).unwrap();

    let stop = AtomicBool::new(true);
    let stopped = read(good.path(), &ReadSettings::default(), &|_| {}, &stop);
    assert!(matches!(stopped, Err(ReadError::Cancelled)));
}
