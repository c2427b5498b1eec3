//! Shells that turn far or snap, against published tables.

mod common;

use common::{assert_near, elastic, even, flat, follow};
use dentwright_sheet::*;

/// Cantilever under an end force, Sze, Liu and Lo (2004), Finite Elements in Analysis and Design 40, 1551: L 10, b 1,
/// h 0.1, E 1.2e6, ν 0, P up to 4. Turns by more than a radian.
#[test]
fn a_cantilever_turns_right_over() {
    let edges = Edges { left: Hold::Clamped, right: Hold::Free, bottom: Hold::Free, top: Hold::Free };
    let mut panel = flat(even(-5.0, 5.0, 16), even(-0.5, 0.5, 4), Outline::Rectangle, elastic(1.2e6, 0.0), 0.1, edges);
    let load = Load::new(&panel.patch.mesh, &Tip::Point, [5.0, 0.0], 1.0);
    let known = [(2.0, 1.604, 4.933), (3.0, 2.541, 6.031), (4.0, 3.286, 6.698)];
    let (mut level, mut force) = (0.0, 0.0);
    for k in 1..=40 {
        let p = 0.1 * f64::from(k);
        let patch = &panel.patch;
        let found =
            balance(patch, &Drive::Load(&load), Given::Force(p), &patch.places, (level, force), Tolerance::default())
                .unwrap_or_else(|e| panic!("{p}: {e}"));
        (level, force) = (found.level, found.force);
        panel.patch.keep(found.places, found.memory);
        if let Some((_, u, w)) = known.iter().find(|(at, ..)| (at - p).abs() < 1e-9) {
            let end = panel.patch.mesh.at(5.0, 0.0, &panel.patch.places);
            assert_near(&format!("cantilever P {p} along"), 5.0 - end.x, *u, 0.005);
            assert_near(&format!("cantilever P {p} across"), end.z, *w, 0.005);
        }
    }
}

/// Hinged cylindrical roof, the same paper: R 2540, half angle 0.1, half length 254, E 3102.75, ν 0.3; limit and least
/// load as transcribed in the MBDyn project's tests.
#[test]
fn a_hinged_roof_snaps_where_the_table_says() {
    let (radius, half_angle, half_length): (f64, f64, f64) = (2540.0, 0.1, 254.0);
    let half = radius * half_angle.sin();
    let arc = |x: f64, _: f64| (radius * radius - x * x).sqrt() - radius;
    let sides = Edges { left: Hold::Pinned, right: Hold::Pinned, bottom: Hold::Free, top: Hold::Free };
    let run = |h: f64, levels: &[f64]| {
        let mesh = Mesh::new(even(-half, half, 12), even(-half_length, half_length, 12), Outline::Rectangle, &arc, 2);
        let mut panel = Panel::new(Patch::new(mesh.expect("smooth"), elastic(3102.75, 0.3), h, 3, &sides));
        let given: Vec<_> = levels.iter().map(|l| Given::Level(-l)).collect();
        follow(&mut panel, Tip::Point, &given, -1.0).into_iter().map(|(_, p)| p).collect::<Vec<_>>()
    };
    // away from the turning points the table, of elements that shear, stands up to 0.13 mm further at the same load:
    // a Kirchhoff sheet has no shear under the point
    let thick = [(7.057, 0.6381), (11.293, 0.7421), (19.852, 0.1729), (24.049, 0.3871)];
    let levels: Vec<f64> = (1..=120).map(|k| 0.25 * f64::from(k)).collect();
    let forces = run(12.7, &levels);
    let limit = forces[..60].iter().copied().fold(0.0, f64::max);
    assert_near("roof 12.7, limit load", limit, 2226.3, 0.01);
    assert_near("roof 12.7, least load", forces[60..].iter().copied().fold(f64::INFINITY, f64::min), 518.7, 0.03);
    for (w, p) in thick {
        let k = levels.partition_point(|l| *l < w);
        let s = (w - levels[k - 1]) / 0.25;
        assert_near(&format!("roof 12.7 at {w}"), forces[k - 1] + s * (forces[k] - forces[k - 1]), 3000.0 * p, 0.02);
    }
    let thin = run(6.35, &levels[..56]);
    assert_near("roof 6.35, limit load", thin.iter().copied().fold(0.0, f64::max), 585.9, 0.01);
}

/// Clamped shallow cap under an even pressure: the pressure at which it snaps, in parts of the full sphere's
/// `2E/√(3(1−ν²)) (t/R)²`, by a boundary-value solution of its axisymmetric equations; compare Budiansky (1959), Huang
/// (1964). `λ = 2 [3(1−ν²)]^¼ √(H/t)`.
#[test]
fn a_clamped_cap_snaps_at_its_pressure() {
    let (a, t, e, nu): (f64, f64, f64, f64) = (50.0, 0.7, 210000.0, 0.3);
    let root = (3.0 * (1.0 - nu * nu)).sqrt();
    for (lambda, known) in [(4.0f64, 0.5635), (5.0, 0.6159)] {
        let height = t * lambda * lambda / (4.0 * root);
        let radius = a * a / (2.0 * height);
        let crown = |x: f64, y: f64| -(x * x + y * y) / (2.0 * radius);
        let axis = || even(-a, a, 24);
        let mesh = Mesh::new(axis(), axis(), Outline::Disc(2.0 * a), &crown, 2).expect("smooth");
        let mut panel = Panel::new(Patch::new(mesh, elastic(e, nu), t, 5, &Edges::all(Hold::Clamped)));
        let load = Load::new(&panel.patch.mesh, &Tip::Disc { radius_mm: a }, [0.0, 0.0], -1.0);
        let start = load.level(&panel.patch.places);
        // the first top of the path; past it the mean height may turn back
        let (mut force, mut top) = (0.0, 0.0f64);
        for k in 1..=100 {
            let (patch, given) = (&panel.patch, Given::Level(start - 0.01 * height * f64::from(k)));
            let found = balance(patch, &Drive::Load(&load), given, &patch.places, (0.0, force), Tolerance::default());
            let Ok(found) = found else { break };
            force = found.force;
            top = top.max(force);
            if force < 0.98 * top {
                break;
            }
            panel.patch.keep(found.places, found.memory);
        }
        assert!(force < top, "a top was passed");
        let unit = 2.0 * e / root * (t / radius).powi(2) * std::f64::consts::PI * a * a;
        assert_near(&format!("cap of λ {lambda}, share of the sphere's pressure"), top / unit, known, 0.01);
    }
}

/// Fully plastic disc, simply supported, even load: 6.51 M₀/a² by von Mises (Hopkins and Wang 1955), between 6 by
/// Tresca (Hopkins and Prager 1953) and its 2/√3. A thick plate, free to slide, so that nothing but bending carries.
#[test]
fn a_supported_disc_collapses_at_its_limit_load() {
    let (a, t, y): (f64, f64, f64) = (100.0, 40.0, 200.0);
    let metal = Metal {
        e_mpa: 210000.0,
        nu: 0.3,
        hardening: Hardening::Linear { yield_mpa: y, h_mpa: 0.0 },
        kinematic_share: 0.0,
    };
    let stiff = 210000.0 * t * 50.0;
    let hold = Hold::Spring(Springs { in_plane: 1.0, out_of_plane: stiff, turning: 0.0 });
    let mut panel = flat(even(-a, a, 20), even(-a, a, 20), Outline::Disc(2.0 * a), metal, t, Edges::all(hold));
    let levels: Vec<_> = (1..=30).map(|k| Given::Level(-0.05 * f64::from(k))).collect();
    let found = follow(&mut panel, Tip::Disc { radius_mm: a }, &levels, -1.0);
    let unit = y * t * t / 4.0 * std::f64::consts::PI;
    let shares: Vec<f64> = found.iter().map(|(_, p)| p / unit).collect();
    println!("{shares:.3?}");
    assert_near("collapse of a supported disc, p a²/M₀", shares[29], 6.51, 0.02);
    assert!(shares[29] / shares[19] < 1.01, "a plateau: {shares:?}");
}
