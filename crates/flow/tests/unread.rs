//! What could not be read says why, and sound metal says nothing of the kind.

use dentwright_flow::{ReadSettings, Reading, Unread, read};
use dentwright_optics::decode;
use dentwright_scene::dent::Dent;
use dentwright_scene::{Truth, recipes};
use dentwright_surface::SpotKind;
use std::path::Path;
use std::sync::atomic::AtomicBool;

fn read_folder(folder: &Path) -> Reading {
    read(folder, &ReadSettings::default(), &|_| {}, &AtomicBool::new(false)).unwrap()
}

fn cells(reading: &Reading, why: Unread) -> usize {
    reading.unread.iter().filter(|&&v| v == why as u8).count()
}

/// Middle of the cells with that code, photo pixels.
fn middle(reading: &Reading, why: Unread) -> (f64, f64) {
    let grid = reading.deviation.grid;
    let to_photo = |i: usize| {
        let (x, y) = grid.position(i);
        let at = nalgebra::Point3::new(x, y, reading.scene.panel.at(x, y).0);
        reading.scene.camera.project(&(reading.scene.layout.panel_from_camera.inverse() * at)).unwrap()
    };
    let all: Vec<_> = (0..grid.len()).filter(|&i| reading.unread[i] == why as u8).map(to_photo).collect();
    let n = all.len() as f64;
    (all.iter().map(|p| p.x).sum::<f64>() / n, all.iter().map(|p| p.y).sum::<f64>() / n)
}

#[test]
fn a_dent_too_steep_is_folded_and_one_that_is_read_is_not() {
    let mut recipe = recipes::named("door").unwrap();
    let folder = tempfile::tempdir().unwrap();
    recipe.render().unwrap().write_photos(folder.path()).unwrap();
    assert_eq!(cells(&read_folder(folder.path()), Unread::Folded), 0);

    recipe.scene.dents = vec![Dent { x: -20.0, y: 5.0, a: 9.0, b: 8.0, depth: 2.2, ..recipe.scene.dents[0] }];
    recipe.render().unwrap().write_photos(folder.path()).unwrap();
    let reading = read_folder(folder.path());
    let folded_mm2 = cells(&reading, Unread::Folded) as f64 * reading.deviation.grid.step_mm.powi(2);
    // Bent beyond ½(1/D + 1/Dc), about 1/800 mm, is where 2·2.2/81 · exp(-r²/81) exceeds it: 17.5 by 15.5 mm.
    assert!((20.0..850.0).contains(&folded_mm2), "{folded_mm2} mm²");
    let file = reading.file(reading.scene.camera.size);
    // One dent is one spot, though its hole parts what was read of it; and it goes as far as its rim at least.
    let torn: Vec<_> = file.spots.iter().map(|s| &s.spot).filter(|s| !s.folds.is_empty()).collect();
    assert_eq!((torn.len(), file.folds.len(), torn[0].folds.as_slice()), (1, 1, &[0][..]));
    let bound = -torn[0].at_least_mm.unwrap();
    assert!(torn[0].kind == SpotKind::Low && (0.35 * 2.2..2.2).contains(&bound), "at least {bound} mm of 2.2");
    assert!(file.notes.iter().any(|n| n.code == "folded") && file.unread.iter().any(|u| u.code == "folded"));
}

#[test]
fn glare_is_clipped_and_a_dull_patch_is_low_contrast() {
    let folder = tempfile::tempdir().unwrap();
    recipes::named("flat").unwrap().render().unwrap().write_photos(folder.path()).unwrap();
    let clean = read_folder(folder.path());
    assert_eq!((cells(&clean, Unread::Clipped), cells(&clean, Unread::LowContrast)), (0, 0));

    let (glare, dull) = ((640, 560), (960, 600));
    for frame in clean.frames.iter().filter(|f| f.file.starts_with("screen")) {
        let path = folder.path().join(&frame.file);
        let photo = decode(&std::fs::read(&path).unwrap()).unwrap();
        let mut picture = image::GrayImage::from_raw(photo.width as u32, photo.height as u32, photo.grey).unwrap();
        for (dx, dy) in (0..40).flat_map(|y| (0..40).map(move |x| (x, y))) {
            picture.put_pixel(glare.0 + dx, glare.1 + dy, image::Luma([255]));
            let level = f32::from(picture.get_pixel(dull.0 + dx, dull.1 + dy).0[0]);
            picture.put_pixel(dull.0 + dx, dull.1 + dy, image::Luma([(110.0 + 0.2 * (level - 110.0)) as u8]));
        }
        let mut bytes = std::io::Cursor::new(Vec::new());
        picture.write_to(&mut bytes, image::ImageFormat::Png).unwrap();
        std::fs::write(path, bytes.into_inner()).unwrap();
    }
    let reading = read_folder(folder.path());
    for (why, at) in [(Unread::Clipped, glare), (Unread::LowContrast, dull)] {
        let (x, y) = middle(&reading, why);
        let off = (x - f64::from(at.0) - 20.0).hypot(y - f64::from(at.1) - 20.0);
        assert!(cells(&reading, why) > 100 && off < 8.0, "{why:?}: {} cells, {off} px off", cells(&reading, why));
    }
}

/// Every bound lies under the true depth wherever the dent and whatever its form, and above a quarter of it: a hole takes
/// most of a small sharp dent.
#[test]
fn the_rim_of_a_fold_bounds_its_depth() {
    let door = recipes::named("door").unwrap();
    let dent = Dent { crown: 0.1, ..door.scene.dents[1] };
    let cases = [
        ("small and sharp", Dent { x: 15.0, y: -10.0, a: 7.0, b: 7.0, depth: 1.5, ..dent }),
        ("crease", Dent { x: -25.0, y: -10.0, a: 30.0, b: 8.0, depth: 2.0, rot: 30.0, crease: Some(2.0), ..dent }),
        ("high", Dent { x: -25.0, y: -10.0, a: 8.0, b: 8.0, depth: -1.6, crown: 0.0, ..dent }),
        ("in a crown", Dent { x: 20.0, y: 20.0, a: 12.0, b: 12.0, depth: 3.0, crown: 0.5, ..dent }),
    ];
    for (name, dent) in cases {
        let mut recipe = door.clone();
        recipe.scene.dents = vec![dent];
        let folder = tempfile::tempdir().unwrap();
        recipe.render().unwrap().write_photos(folder.path()).unwrap();
        let reading = read_folder(folder.path());
        let truth = Truth::of(&recipe.scene);
        let far =
            truth.damage.iter().map(|d| f64::from(*d)).fold(0.0, |a, d| if d.abs() > f64::abs(a) { d } else { a });
        assert!(!reading.folds.is_empty(), "{name}");
        for fold in &reading.folds {
            println!(
                "{name}: {:?} at least {:?} of {far:.2} mm, {:.0} mm across",
                fold.kind, fold.at_least_mm, fold.across_mm
            );
            let Some(bound) = fold.at_least_mm else { continue };
            assert!(bound.signum() == far.signum() && bound.abs() < far.abs(), "{name}: {bound} of {far}");
        }
        let largest = &reading.folds[0];
        assert!(largest.at_least_mm.unwrap() / far > 0.25, "{name}: {:?}", largest.at_least_mm);
    }
}
