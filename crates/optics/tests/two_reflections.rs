//! Lines mirrored by the front and the back of a glass are told from lines mirrored once.
//!
//! Two real frames: YangDDgood/Deflectometry, commit 1f4aa6e5, Apache-2.0. Looked for beside the project and
//! skipped where absent.

use dentwright_optics::{Photo, decode, two_families};
use std::path::PathBuf;

fn shared(folder: &str) -> Option<PathBuf> {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../../shared").join(folder);
    if !path.is_dir() {
        println!("skipped: {} is not there", path.display());
        return None;
    }
    Some(path)
}

/// The frames as photos: grey bitmaps with a palette, rows from the bottom (BITMAPINFOHEADER, 8 bits a pixel).
fn bitmap(bytes: &[u8]) -> Photo {
    let number = |at: usize| u32::from_le_bytes(bytes[at..at + 4].try_into().unwrap()) as usize;
    let (start, width, height, bits) = (number(10), number(18), number(22), number(28) & 0xffff);
    let row = (width * bits / 8).div_ceil(4) * 4;
    let grey = (0..width * height).map(|i| bytes[start + (height - 1 - i / width) * row + (i % width) * bits / 8]);
    Photo { width, height, grey: grey.collect(), focal_35mm: None }
}

#[test]
fn a_glass_mirrors_two_sets_of_lines() {
    let Some(folder) = shared("data/two_reflections") else { return };
    for name in ["5.bmp", "6.bmp"] {
        let photo = bitmap(&std::fs::read(folder.join(name)).unwrap());
        let (share, tiles) = two_families(&photo, 2);
        println!("{name}: {share:.2} of {tiles} tiles");
        assert!(share >= 0.6 && tiles >= 5, "{name}: {share} of {tiles}");
    }
}

#[test]
fn painted_panels_mirror_one() {
    let files = [
        "captures/shared_door/screen_u36_0.jpg",
        "captures/shared_door/screen_v20_1.jpg",
        "captures/shared_wing/screen_u36_2.jpg",
        "captures/shared_lid/slide_v_0.jpg",
        "captures/shared_lid/still_u.jpg",
    ];
    let Some(folder) = shared("") else { return };
    for file in files {
        let photo = decode(&std::fs::read(folder.join(file)).unwrap()).unwrap();
        let (share, tiles) = two_families(&photo, 2);
        println!("{file}: {share:.2} of {tiles} tiles");
        assert!(share <= 0.4 && tiles >= 5, "{file}: {share} of {tiles}");
    }
}
