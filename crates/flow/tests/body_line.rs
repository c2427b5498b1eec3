//! A body line of a rendered panel, drawn a little beside it: a sound one, and one with a low in it.

use dentwright_flow::{KeptReading, LineError, ReadSettings, body_line, read, write_reading};
use dentwright_scene::dent::Dent;
use dentwright_scene::{Recipe, recipes};
use dentwright_surface::{LineReport, TagPlace, lay_by_tags};
use std::sync::atomic::AtomicBool;

fn told(recipe: &Recipe) -> (LineReport, KeptReading) {
    let folder = tempfile::tempdir().unwrap();
    recipe.render().unwrap().write_photos(folder.path()).unwrap();
    let reading = read(folder.path(), &ReadSettings::default(), &|_| {}, &AtomicBool::new(false)).unwrap();
    write_reading(&reading, &folder.path().join("reading")).unwrap();
    let kept = KeptReading::open(&folder.path().join("reading")).unwrap();
    let truth: Vec<TagPlace> = recipe.scene.tags.iter().map(|t| TagPlace { id: t.id, x_mm: t.x, y_mm: t.y }).collect();
    let lay = lay_by_tags(&truth, &kept.tags()).unwrap();
    let line = recipe.scene.bodylines[0];
    let at = |x: f64, beside: f64| lay.carry((x, line.y0 + line.slope * x + beside));
    let report = body_line(&kept, at(-95.0, 2.0), at(95.0, -2.0)).unwrap();
    for s in &report.stations {
        println!(
            "{:6.1}: {:+7.1} µm ± {:.1}, {:+.2} mm ± {:.2} sideways, sharpness {:.2} ± {:.2}",
            s.along_mm,
            1e3 * s.height_mm,
            2e3 * s.height_sigma_mm,
            s.sideways_mm,
            2.0 * s.sideways_sigma_mm,
            s.sharpness,
            2.0 * s.sharpness_sigma
        );
    }
    (report, kept)
}

#[test]
fn a_sound_line_runs_true_and_a_low_in_it_is_told() {
    let mut recipe = recipes::named("body_line").unwrap();
    recipe.scene.bodylines[0].radius = 8.0;
    recipe.scene.dents.clear();
    let (sound, kept) = told(&recipe);
    assert!(sound.stations.len() > 40);
    // Two-sided: peel and noise alone leave something.
    let most = |f: &dyn Fn(&dentwright_surface::Station) -> f64| sound.stations.iter().map(f).fold(0.0, f64::max);
    let (height, sideways) = (most(&|s| s.height_mm.abs()), most(&|s| s.sideways_mm.abs()));
    assert!((1e-5..0.006).contains(&height), "{height}");
    assert!((1e-4..0.5).contains(&sideways), "{sideways}");
    assert!(most(&|s| (s.sharpness - 1.0).abs()) < 0.15);
    assert_eq!(body_line(&kept, (0.0, 0.0), (2.0, 0.0)).unwrap_err(), LineError::Short);

    let low = Dent { x: 0.0, y: 30.0, a: 12.0, b: 10.0, depth: 0.08, crown: 0.0, rot: 0.0, crease: None };
    recipe.scene.dents = vec![low];
    let (hit, _) = told(&recipe);
    let lowest = hit.stations.iter().min_by(|a, b| a.height_mm.total_cmp(&b.height_mm)).unwrap();
    // Over 2.5 mm to either side the crest's mean is 97 % of the low's depth.
    assert!((lowest.height_mm + 0.0775).abs() < 0.008, "{lowest:?}");
    let ends = hit.stations.iter().filter(|s| (s.along_mm - lowest.along_mm).abs() > 45.0);
    assert!(ends.map(|s| s.height_mm.abs()).fold(0.0, f64::max) < 0.008);
}
