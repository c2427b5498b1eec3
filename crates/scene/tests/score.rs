//! A score must give back the errors that were put in.

use dentwright_scene::reading::{ReadMaps, ReadSpot};
use dentwright_scene::{Scene, Truth, score};
use nalgebra::{Rotation3, Vector3};

fn scene() -> Scene {
    serde_json::from_str(
        r#"{"w": 200, "h": 160, "step": 0.5, "Rx": 3000, "Ry": 2500, "paint": [0.05, 0.05, 0.05],
        "tags": [{"id": 0, "x": -80, "y": -60, "size": 22}, {"id": 1, "x": 80, "y": -60, "size": 22},
                 {"id": 2, "x": 80, "y": 60, "size": 22}, {"id": 3, "x": -80, "y": 62, "size": 22}],
        "cam": {"pos": [20, -270, 640], "at": [0, 0, 0], "fov": 34},
        "setup_cam": {"pos": [-880, -260, 430], "at": [-70, 200, 280], "fov": 66},
        "board": {"pos": [0, 270, 520], "at": [0, 10, 0], "w": 708, "h": 398, "ids": [20, 21, 22, 23], "tag": 60},
        "dents": [{"x": 10, "y": 15, "a": 20, "b": 14, "depth": 0.4, "crown": 0.2, "rot": 30}]}"#,
    )
    .unwrap()
}

/// The truth itself as a reading in another frame, with an error added to every deviation.
fn reading_of(truth: &Truth, error_mm: f64, rows_unread: usize) -> ReadMaps {
    let (nx, ny, step) = (170, 120, 1.0);
    let turn = Rotation3::from_euler_angles(0.01, -0.015, 0.3);
    let shift = Vector3::new(5.0, -7.0, 2.0);
    let into = |p: Vector3<f64>| turn.inverse() * (p - shift);
    let mut maps = ReadMaps {
        nx,
        ny,
        origin: [-85.0, -60.0],
        step,
        deviation: vec![f32::NAN; nx * ny],
        height: vec![f32::NAN; nx * ny],
        sigma: vec![f32::NAN; nx * ny],
        tags: truth.tag_centres().into_iter().map(|(id, p)| (id, into(p))).collect(),
        spots: vec![],
    };
    for k in rows_unread * nx..nx * ny {
        let [x, y] = maps.place(k % nx, k / nx);
        // Walk along the reading's z until the truth's surface is met.
        let mut z = 0.0;
        let mut at = Vector3::zeros();
        for _ in 0..30 {
            at = turn * Vector3::new(x, y, z) + shift;
            let surface = truth.base_at(at.x, at.y).zip(truth.damage_at(at.x, at.y));
            let Some((base, damage)) = surface else { break };
            z += base + damage - at.z;
        }
        let Some(damage) = truth.damage_at(at.x, at.y) else { continue };
        maps.height[k] = z as f32;
        maps.deviation[k] = (damage + error_mm) as f32;
        maps.sigma[k] = 0.001;
    }
    let low = into(Vector3::new(10.0, 15.0, -0.4));
    let sound = into(Vector3::new(-60.0, 0.0, -0.6));
    maps.spots = vec![
        ReadSpot { x_mm: low.x, y_mm: low.y, height_mm: -0.4 },
        ReadSpot { x_mm: sound.x, y_mm: sound.y, height_mm: 0.007 },
    ];
    maps
}

#[test]
fn a_perfect_reading_in_another_frame_has_no_error() {
    let truth = Truth::of(&scene());
    let mut maps = reading_of(&truth, 0.0, 0);
    maps.spots.truncate(1);
    let s = score(&maps, &truth, 1600, 1200).unwrap();
    assert!(s.error_p95_um < 0.1, "{s:?}");
    assert!(s.tag_rms_mm < 1e-9 && s.within_two_sigma > 0.999 && s.false_spots.is_empty());
    let dent = &s.dents[0];
    assert!(dent.error_um.unwrap().abs() < 0.2 && (dent.spot_um.unwrap() + 400.0).abs() < 1e-9, "{dent:?}");
}

#[test]
fn a_lifted_reading_a_false_spot_and_a_gap_are_found() {
    let truth = Truth::of(&scene());
    let s = score(&reading_of(&truth, 0.003, 40), &truth, 1600, 1200).unwrap();
    assert!((s.error_p95_um - 3.0).abs() < 0.1 && (s.bias_um - 3.0).abs() < 0.05, "{s:?}");
    assert!(s.within_two_sigma < 0.01);
    assert_eq!(s.false_spots.len(), 1);
    let whole = score(&reading_of(&truth, 0.0, 0), &truth, 1600, 1200).unwrap().read_share;
    assert!(s.read_share < whole - 0.1, "{} against {whole}", s.read_share);
}

#[test]
fn too_few_tags_are_refused() {
    let truth = Truth::of(&scene());
    let mut maps = reading_of(&truth, 0.0, 0);
    maps.tags.truncate(2);
    assert!(score(&maps, &truth, 1600, 1200).is_err());
}
