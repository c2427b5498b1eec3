//! Areal figures against surfalize on the same grid, and the split by scale against waves of known height.

mod common;

use common::{Random, bump, field, sum};
use dentwright_surface::{Grid, Map, Mark, MarkKind, areal, bands, marks};
use std::path::PathBuf;

fn reference(name: &str) -> Vec<u8> {
    std::fs::read(PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../tests/reference").join(name)).unwrap()
}

#[test]
fn figures_equal_those_of_surfalize() {
    let grid = Grid { x0_mm: 0.0, y0_mm: 0.0, step_mm: 0.5, nx: 64, ny: 48 };
    let height = reference("areal_height_48x64.f32");
    let values = height.as_chunks::<4>().0.iter().map(|b| f32::from_le_bytes(*b)).collect();
    let ours = areal(&Map { grid, values }).unwrap();
    let answer: Vec<f64> =
        reference("areal_answer_1x8.f64").as_chunks::<8>().0.iter().map(|b| f64::from_le_bytes(*b)).collect();
    let found = [ours.sa_um, ours.sq_um, ours.sp_um, ours.sv_um, ours.sz_um, ours.ssk, ours.sku, ours.sdq_mrad];
    for (k, (found, answer)) in found.iter().zip(&answer).enumerate() {
        assert!((found - answer).abs() < 2e-5 * answer.abs().max(0.1), "figure {k}: {found} against {answer}");
    }
    assert!(areal(&Map::unread(grid)).is_none());
}

const GRID: Grid = Grid { x0_mm: 0.0, y0_mm: 0.0, step_mm: 0.5, nx: 360, ny: 260 };

#[test]
fn a_wave_is_told_in_its_own_band_and_what_is_too_fine_is_said() {
    let wave = |length: f64| Map::from_fn(GRID, |x, y| 0.001 * (std::f64::consts::TAU * (x + 0.4 * y) / length).sin());
    let all = vec![true; GRID.len()];
    // Waves run aslant: their length is that over √(1 + 0.4²). A sine of 1 µm has 0.707 µm, of which the band passes the
    // difference of two Gaussian transmissions (ISO 16610-61): 0.713 of 5.5 mm, 0.671 of 17 mm.
    for (length, band, passes) in [(5.5 * 1.077, 3, 0.713), (17.0 * 1.077, 4, 0.671)] {
        let found = bands(&wave(length), &all);
        let here = found[band].sq_um.unwrap();
        assert!((here - std::f64::consts::FRAC_1_SQRT_2 * passes).abs() < 0.02, "{length}: {found:?}");
        let elsewhere = found.iter().enumerate().filter(|(k, _)| *k != band).filter_map(|(_, b)| b.sq_um);
        assert!(elsewhere.fold(0.0, f64::max) < 0.45 * here, "{found:?}");
    }
    let found = bands(&wave(6.0), &all);
    assert_eq!((found[0].sq_um, found[1].sq_um), (None, None));
    assert_eq!(found[2].seen_from_mm, Some(2.0));
}

/// Marks on a panel without folds.
fn marks_of(map: &Map) -> Vec<Mark> {
    marks(map, &vec![false; map.grid.len()])
}

#[test]
fn dents_are_no_texture_and_texture_is_no_dent() {
    let peel = field(GRID, 3.0, 0.0005, &mut Random::new(3));
    let dented = Map::from_fn(GRID, |x, y| -0.2 * bump(x - 90.0, y - 60.0, 12.0));
    let both = sum(&peel, &dented);
    let sound: Vec<bool> = dented.values.iter().map(|d| d.abs() < 0.0005).collect();
    let (alone, beside) = (bands(&peel, &sound), bands(&both, &sound));
    for k in [2, 3] {
        let (a, b) = (alone[k].sq_um.unwrap(), beside[k].sq_um.unwrap());
        assert!((a - b).abs() < 0.1 * a && a > 0.05, "band {k}: {a} alone, {b} beside a dent");
    }
    assert!(marks_of(&both).is_empty(), "{:?}", marks_of(&both));
}

#[test]
fn marks_of_tools_and_polished_places_are_told_apart() {
    for seed in 0..4 {
        let peel = field(GRID, 3.0, 0.0005, &mut Random::new(30 + seed));
        assert!(marks_of(&peel).is_empty(), "{:?}", marks_of(&peel));
        // Sixteen taps of a sharp tip, 3 µm high and 2.5 mm across, as on the rendered door; a place where the peel was polished to a quarter.
        let taps = Map::from_fn(GRID, |x, y| {
            let tap = |k: usize| bump(x - 50.0 - 4.5 * (k % 4) as f64, y - 40.0 - 4.5 * (k / 4) as f64, 1.1);
            0.003 * (0..16).map(tap).sum::<f64>()
        });
        let mut worked = sum(&peel, &taps);
        for i in 0..GRID.len() {
            let (x, y) = GRID.position(i);
            if (x - 130.0).hypot(y - 80.0) < 14.0 {
                worked.values[i] *= 0.25;
            }
        }
        let found = marks_of(&worked);
        let near = |kind: MarkKind, x: f64, y: f64| {
            found.iter().filter(|m| m.kind == kind && (m.x_mm - x).hypot(m.y_mm - y) < 8.0).count()
        };
        assert_eq!((near(MarkKind::Rougher, 56.8, 46.8), near(MarkKind::Smoother, 130.0, 80.0)), (1, 1), "{found:?}");
        assert_eq!(found.len(), 2, "{found:?}");
    }
}
