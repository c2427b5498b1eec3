//! Tag corners against published ones in three outdoor photos: AprilRobotics/apriltag, commit 1c21707a,
//! `test/data`; photos NASA Kennedy, CC BY-SA 2.0.

mod common;

use dentwright_optics::{Pixel, decode, every_tag};
use std::path::Path;

/// The published corners were found without refining edges (their `test_detection.c`), ours with: up to a pixel
/// lies between the two, centres agree far better.
const CORNER_PX: f64 = 1.0;
const CENTRE_PX: f64 = 0.3;

#[test]
fn tags_are_where_the_published_ones_are() {
    let Some(folder) = common::published("tag_photos") else { return };
    let (mut found, mut all) = (0, 0);
    for name in ["33369213973_9d9bb4cc96_c", "34085369442_304b6bafd9_c", "34139872896_defdb2f8d9_c"] {
        let photo = decode(&std::fs::read(folder.join(name).with_extension("jpg")).unwrap()).unwrap();
        let ours = every_tag(&photo);
        let theirs = published_tags(&folder.join(name).with_extension("txt"));
        all += theirs.len();
        found +=
            theirs.iter().filter(|(id, corners)| ours.iter().any(|o| o.id == *id && same(&o.corners, corners))).count();
    }
    println!("{found} of {all} published tags found");
    assert!(all == 47 && found >= 44, "{found} of {all} published tags found");
}

fn same(ours: &[Pixel; 4], theirs: &[Pixel; 4]) -> bool {
    let centre = |c: &[Pixel; 4]| c.iter().sum::<Pixel>() / 4.0;
    worst(ours, theirs) < CORNER_PX && (centre(ours) - centre(theirs)).norm() < CENTRE_PX
}

/// Largest distance of a corner from its nearest published one, px; their order has changed since.
fn worst(ours: &[Pixel; 4], theirs: &[Pixel; 4]) -> f64 {
    let nearest = |p: &Pixel| theirs.iter().map(|q| (p - q).norm()).fold(f64::MAX, f64::min);
    ours.iter().map(nearest).fold(0.0, f64::max)
}

/// `id, (x y), (x y), (x y), (x y)` a line.
fn published_tags(path: &Path) -> Vec<(usize, [Pixel; 4])> {
    let text = std::fs::read_to_string(path).unwrap();
    let numbers = |line: &str| -> Vec<f64> {
        line.split(|c: char| !(c.is_ascii_digit() || c == '.' || c == '-')).filter_map(|n| n.parse().ok()).collect()
    };
    let tag = |n: Vec<f64>| (n[0] as usize, std::array::from_fn(|k| Pixel::new(n[1 + 2 * k], n[2 + 2 * k])));
    text.lines().map(numbers).filter(|n| n.len() == 9).map(tag).collect()
}
