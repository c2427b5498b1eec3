//! Sizes in the description that cannot be.

use dentwright_flow::{ReadError, ReadSettings, Reading, read};
use dentwright_scene::recipes;
use std::path::Path;
use std::sync::atomic::AtomicBool;

fn read_folder(folder: &Path) -> Result<Reading, ReadError> {
    read(folder, &ReadSettings::default(), &|_| {}, &AtomicBool::new(false))
}

fn doubts_sizes(reading: &Reading) -> bool {
    reading.file(reading.scene.camera.size).notes.iter().any(|n| n.code == "sizes")
}

#[test]
fn a_wrong_board_is_an_error_and_a_wrong_tag_a_remark() {
    let folder = tempfile::tempdir().unwrap();
    recipes::named("door").unwrap().render().unwrap().write_photos(folder.path()).unwrap();
    let toml = std::fs::read_to_string(folder.path().join("capture.toml")).unwrap();
    let with = |from: &str, to: &str| {
        assert!(toml.contains(from), "{from} is in the description");
        std::fs::write(folder.path().join("capture.toml"), toml.replace(from, to)).unwrap();
        read_folder(folder.path())
    };
    assert!(!doubts_sizes(&with("width_mm = 708.0", "width_mm = 708.0").unwrap()));
    assert!(doubts_sizes(&with("tag_size_mm = 22.0", "tag_size_mm = 24.0").unwrap()));
    let Err(error) = with("x_mm = -309.0", "x_mm = -260.0") else { panic!("a board's tag 49 mm off passes") };
    assert!(matches!(error, ReadError::Inconsistent { .. }) && error.next().contains("board's size"), "{error}");
    let Err(error) = with("width_mm = 708.0", "width_mm = 600.0") else { panic!("a board 15 % narrow passes") };
    assert!(matches!(error, ReadError::Inconsistent { .. }), "{error}");
}
