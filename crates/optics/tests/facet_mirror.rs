//! Phase and normals against the published deflectometry of a mirror facet: Sandia National Laboratories,
//! OpenCSP, commit 356e3a98, `opencsp/test/data/sofast_fringe`, Apache-2.0.

mod common;

use common::{npy, published};
use dentwright_optics::{Photo, bisector, demodulate};
use nalgebra::{Matrix3, Point3, Vector3};
use std::f64::consts::TAU;

const WIDTH: usize = 203;
const HEIGHT: usize = 154;
const FRAMES: usize = 32;
/// Finest period of both axes.
const PERIODS: f64 = 63.9;
/// First frame of the finest period: y comes first, four steps of four periods each.
const FINEST_Y: usize = 12;
const FINEST_X: usize = 28;

#[test]
fn the_finest_phase_is_the_published_screen_fraction() {
    let Some(folder) = published("facet_mirror") else { return };
    let levels = npy(folder.join("fringe_frames.npy"));
    let mask = npy(folder.join("expected_mask.npy"));
    let fraction = npy(folder.join("expected_screen_fraction.npy"));
    let table = linear_table(&npy(folder.join("response_camera.npy")), &npy(folder.join("response_display.npy")));
    let inside: Vec<usize> = (0..WIDTH * HEIGHT).filter(|&i| mask[i] != 0.0).collect();
    for (first, row) in [(FINEST_X, 0), (FINEST_Y, 1)] {
        let photos: Vec<Photo> = (first..first + 4).map(|k| frame(&levels, k)).collect();
        let photos: Vec<&Photo> = photos.iter().collect();
        let phase = demodulate(&photos, &[0.0, 0.25, 0.5, 0.75], PERIODS, &table).unwrap();
        for (n, &pixel) in inside.iter().enumerate() {
            let published = fraction[row * inside.len() + n];
            // Their x pattern runs against its steps; their y pattern does too, counted from the top.
            let along = if row == 0 { published } else { 1.0 - published };
            let turns = -f64::from(phase.phase[pixel]) / TAU - PERIODS * along;
            let off = (turns - turns.round()).abs() / PERIODS;
            assert!(off < 4e-7, "pixel {pixel}: {off} of the screen off");
        }
    }
}

#[test]
fn the_bisector_is_the_published_slope() {
    let Some(folder) = published("facet_mirror") else { return };
    let columns = |name: &str| {
        let all = npy(folder.join(name));
        let n = all.len() / 3;
        (0..n).map(|i| Vector3::new(all[i], all[n + i], all[2 * n + i])).collect::<Vec<_>>()
    };
    let (rays, surface, screen) = (
        columns("expected_pixel_rays.npy"),
        columns("expected_surface_points_m.npy"),
        columns("expected_screen_points_m.npy"),
    );
    let slopes = npy(folder.join("expected_slopes.npy"));
    let alignment = npy(folder.join("expected_alignment.npy"));
    let turn = Matrix3::from_fn(|r, c| alignment[4 * r + c]).transpose();
    for i in 0..rays.len() {
        // Surface points and slopes are in the facet's aligned frame; rays and screen points are not.
        let p = Point3::from(turn * surface[i]);
        let n = turn.transpose() * bisector(&p, &(p - rays[i]), &Point3::from(screen[i]));
        for (ours, published) in [(-n.x / n.z, slopes[i]), (-n.y / n.z, slopes[rays.len() + i])] {
            assert!((ours - published).abs() < 1e-12, "point {i}: {ours} instead of {published}");
        }
    }
}

/// Display level, full scale 1, of every camera level: the published response undone.
fn linear_table(camera: &[f64], display: &[f64]) -> [f32; 256] {
    std::array::from_fn(|level| {
        let level = level as f64;
        let k = camera.partition_point(|&c| c <= level).clamp(1, camera.len() - 1);
        let t = ((level - camera[k - 1]) / (camera[k] - camera[k - 1])).clamp(0.0, 1.0);
        ((display[k - 1] + t * (display[k] - display[k - 1])) / 255.0) as f32
    })
}

fn frame(levels: &[f64], k: usize) -> Photo {
    let grey = (0..WIDTH * HEIGHT).map(|i| levels[i * FRAMES + k] as u8).collect();
    Photo { width: WIDTH, height: HEIGHT, grey, focal_35mm: None }
}
