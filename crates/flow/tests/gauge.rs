//! Depths measured by hand join readings of rendered dents that folded: the fill holds the truth within its doubt.

use dentwright_flow::{Agreement, GaugeAsked, GaugeError, KeptReading, ReadSettings, gauged, read, write_kept};
use dentwright_scene::dent::Dent;
use dentwright_scene::score::{Lay, compare};
use dentwright_scene::{ReadMaps, Truth, recipes};
use nalgebra::Vector3;
use std::sync::atomic::AtomicBool;

struct Case {
    kept: KeptReading,
    truth: Truth,
    lay: Lay,
}

impl Case {
    fn of(dent: Dent) -> Self {
        let mut recipe = recipes::named("door").unwrap();
        recipe.scene.dents[0] = dent;
        let folder = tempfile::tempdir().unwrap();
        recipe.render().unwrap().write_photos(folder.path()).unwrap();
        let reading = read(folder.path(), &ReadSettings::default(), &|_| {}, &AtomicBool::new(false)).unwrap();
        let kept = KeptReading::just_made(reading);
        let truth = Truth::of(&recipe.scene);
        let lay = Lay::by_tags(&maps(&kept), &truth).unwrap();
        Self { kept, truth, lay }
    }

    /// A place of the truth in the reading, and the damage there, mm.
    fn at(&self, x: f64, y: f64) -> (f64, f64, f64) {
        let damage = self.truth.damage_at(x, y).unwrap();
        let p = self.lay.back(&Vector3::new(x, y, self.truth.base_at(x, y).unwrap() + damage));
        (p.x, p.y, damage)
    }

    fn gauge(&self, x: f64, y: f64, off_mm: f64) -> GaugeAsked {
        let (x_mm, y_mm, damage) = self.at(x, y);
        GaugeAsked { x_mm, y_mm, height_mm: damage + off_mm, doubt_mm: 0.05, span_mm: 0.0, angle_deg: 0.0 }
    }

    /// Error and said doubt of the cells that were not read before, mm.
    fn filled(&self, joined: &KeptReading) -> Vec<(f64, f64)> {
        let cells = compare(&maps(joined), &self.truth, &self.lay);
        let new = cells.iter().filter(|cell| self.kept.deviation.values[cell.index].is_nan());
        new.map(|cell| (cell.error_um() / 1e3, cell.sigma_um / 1e3)).collect()
    }
}

fn maps(kept: &KeptReading) -> ReadMaps {
    let out = tempfile::tempdir().unwrap();
    write_kept(kept, &out.path().join("reading")).unwrap();
    ReadMaps::read(&out.path().join("reading")).unwrap()
}

fn within(cells: &[(f64, f64)]) -> f64 {
    cells.iter().filter(|(e, s)| e.abs() <= 2.0 * s).count() as f64 / cells.len() as f64
}

const DENT: Dent = Dent { x: -20.0, y: 5.0, a: 9.0, b: 8.0, depth: 2.2, crown: 0.1, rot: 20.0, crease: None };

#[test]
fn the_fill_holds_the_truth_within_its_doubt() {
    let forms = [
        DENT,
        Dent { x: 5.0, y: -12.0, a: 14.0, b: 9.0, depth: 2.6, crown: 0.0, ..DENT },
        Dent { x: -25.0, y: -10.0, a: 30.0, b: 8.0, depth: 2.0, rot: 30.0, crease: Some(2.0), ..DENT },
        Dent { x: -25.0, y: -10.0, a: 8.0, b: 8.0, depth: -1.6, crown: 0.0, rot: 0.0, crease: None },
    ];
    let (mut sum, mut count) = (0.0, 0.0);
    for form in forms {
        let case = Case::of(form);
        for (beside, off_mm) in [((0.0, 0.0), 0.02), ((1.0, -0.8), -0.02), ((-2.5, 2.0), 0.01)] {
            let gauge = case.gauge(form.x + beside.0, form.y + beside.1, off_mm);
            let joined = gauged(&case.kept, &[gauge]).unwrap();
            let cells = case.filled(&joined);
            let share = within(&cells);
            let rms = (cells.iter().map(|(e, _)| e * e).sum::<f64>() / cells.len() as f64).sqrt();
            println!(
                "{} x {} x {} mm beside {beside:?}: {:.1} % of {} within 2 sigma, rms {:.0} µm",
                form.a,
                form.b,
                form.depth,
                100.0 * share,
                cells.len(),
                1e3 * rms
            );
            assert!(rms < 0.1 * form.depth.abs() && cells.len() > 500);
            (sum, count) = (sum + share, count + 1.0);
            // One dent is one spot, as deep as the gauge says and no longer at least so.
            let spot = &joined.file.spots[0].spot;
            let most = if beside.0.hypot(beside.1) < 2.0 { 0.1 } else { 0.2 };
            assert!((spot.height_mm.abs() / form.depth.abs() - 1.0).abs() < most, "{spot:?}");
            assert!(spot.at_least_mm.is_none() && joined.file.folds.is_empty());
            assert!(joined.file.notes.iter().any(|n| n.code == "gauge") && joined.file.gauges[0].filled_mm2.is_some());
        }
    }
    let share = sum / count;
    assert!((0.90..0.999).contains(&share), "{share} of the filled cells within 2 sigma");
}

#[test]
fn a_depth_where_the_map_was_read_checks_it_and_changes_nothing() {
    let case = Case::of(DENT);
    let sound = case.gauge(-20.0, 22.0, 0.01);
    let joined = gauged(&case.kept, &[sound, GaugeAsked { height_mm: sound.height_mm - 0.3, ..sound }]).unwrap();
    assert_eq!(case.filled(&joined).len(), 0);
    let agrees: Vec<_> = joined.file.gauges.iter().map(|g| g.agrees.unwrap()).collect();
    assert_eq!(agrees, [Agreement::Agrees, Agreement::Disagrees]);
    assert!(joined.file.notes.iter().any(|n| n.code == "gauge_off" && n.text.contains("tag size")));
    assert_eq!(joined.file.folds.len(), case.kept.file.folds.len());

    // A gauge on feet, zeroed on a flat plate, shows the depth under the chord: here 60 mm, across the panel.
    let height = |x: f64, y: f64| case.truth.base_at(x, y).unwrap() + case.truth.damage_at(x, y).unwrap();
    let (x_mm, y_mm, damage) = case.at(-20.0, 5.0);
    let shown = height(-20.0, 5.0) - 0.5 * (height(-50.0, 5.0) + height(10.0, 5.0));
    let feet = GaugeAsked { x_mm, y_mm, height_mm: shown, doubt_mm: 0.05, span_mm: 60.0, angle_deg: 0.0 };
    let joined = gauged(&case.kept, &[feet]).unwrap();
    let told = joined.file.gauges[0];
    assert!((shown - damage).abs() > 0.1, "the panel's own curve counts: {shown} against {damage}");
    assert!((told.against_shape_mm - damage).abs() < 0.02, "{told:?}, truly {damage}");

    let refused = |one: GaugeAsked| gauged(&case.kept, &[one]).unwrap_err();
    let outside = refused(GaugeAsked { x_mm: 900.0, ..sound });
    assert!(matches!(outside, GaugeError::Outside { .. }), "{outside}");
    assert!(matches!(refused(GaugeAsked { height_mm: 80.0, ..sound }), GaugeError::Wrong(_)));
    assert!(matches!(refused(GaugeAsked { doubt_mm: 0.0, ..sound }), GaugeError::Wrong(_)));
    assert!(matches!(refused(GaugeAsked { span_mm: 900.0, ..feet }), GaugeError::Foot { .. }));
    let tags = case.kept.file.panel_tags.iter();
    let on_tags: Vec<_> = tags.map(|tag| refused(GaugeAsked { x_mm: tag.x_mm, y_mm: tag.y_mm, ..sound })).collect();
    let told = |one: &GaugeError| matches!(one, GaugeError::Tag { .. } | GaugeError::Outside { .. });
    assert!(on_tags.iter().all(told), "{on_tags:?}");
}
