//! The shells and beams of MacNeal and Harder (1985), A proposed standard set of problems to test finite element
//! accuracy, Finite Elements in Analysis and Design 1, 3. Values quoted from memory of it.

mod common;

use common::{assert_near, elastic, even};
use dentwright_sheet::*;
use nalgebra::Vector3;
use std::f64::consts::{FRAC_PI_2, PI};

/// A side held stiffly along some axes of the frame, and against turning where it is a plane of symmetry.
fn along(x: f64, y: f64, z: f64, turning: f64) -> Hold {
    Hold::Along { spring: [x, y, z], turning }
}

/// A patch of a curved sheet over `u` and `v`.
fn patch(
    u: (f64, f64, usize),
    v: (f64, f64, usize),
    map: &dyn Fn(f64, f64) -> Vector3<f64>,
    (e, nu, t): (f64, f64, f64),
    edges: Edges,
) -> Patch {
    let mesh = Mesh::mapped(even(u.0, u.1, u.2), even(v.0, v.1, v.2), Outline::Rectangle, map, 2).expect("smooth");
    Patch::new(mesh, elastic(e, nu), t, 5, &edges)
}

/// Movement of every node under small forces at places `(u, v)`.
fn bend(patch: &Patch, forces: &[([f64; 2], Vector3<f64>)]) -> Vec<Vector3<f64>> {
    let mut x = vec![0.0; 3 * patch.places.len()];
    for ([u, v], f) in forces {
        let (node, shape) = patch.mesh.locate(*u, *v);
        for (k, n) in patch.mesh.nodes(node).into_iter().enumerate() {
            (0..3).for_each(|c| x[3 * n + c] += shape[0][k] * f[c]);
        }
    }
    let state = patch.state(&patch.places).expect("smooth");
    patch.factor(&state).solve(&mut x);
    x.chunks_exact(3).map(Vector3::from_column_slice).collect()
}

/// An even load over the sheet's own area, as forces at its points.
fn everywhere(patch: &Patch, load: Vector3<f64>) -> Vec<([f64; 2], Vector3<f64>)> {
    patch.mesh.points.iter().map(|p| (p.at, p.area * load)).collect()
}

#[test]
fn a_roof_on_diaphragms_sags() {
    let (radius, e, t) = (25.0, 4.32e8, 0.25);
    let (stiff, turning) = (50.0 * e * t, 500.0 * e * t * t * t);
    let edges = Edges {
        left: along(stiff, 0.0, 0.0, turning),
        right: Hold::Free,
        bottom: along(0.0, stiff, 0.0, turning),
        top: along(stiff, 0.0, stiff, 0.0),
    };
    let end = 40f64.to_radians() * radius;
    let map = |u: f64, v: f64| Vector3::new(radius * (u / radius).sin(), v, radius * (u / radius).cos());
    let patch = patch((0.0, end, 12), (0.0, 25.0, 12), &map, (e, 0.0, t), edges);
    let moved = bend(&patch, &everywhere(&patch, Vector3::new(0.0, 0.0, -90.0)));
    assert_near("roof of Scordelis and Lo, free edge", -patch.mesh.at(end, 0.0, &moved).z, 0.3024, 0.01);
}

#[test]
fn a_cylinder_on_diaphragms_is_pinched() {
    let (radius, e, t) = (300.0, 3e6, 3.0);
    let (stiff, turning) = (50.0 * e * t, 500.0 * e * t * t * t);
    let edges = Edges {
        left: along(stiff, 0.0, 0.0, turning),
        right: along(0.0, 0.0, stiff, turning),
        bottom: along(0.0, stiff, 0.0, turning),
        top: along(stiff, 0.0, stiff, 0.0),
    };
    let map = |u: f64, v: f64| Vector3::new(radius * (u / radius).sin(), v, radius * (u / radius).cos());
    let patch = patch((0.0, FRAC_PI_2 * radius, 32), (0.0, 300.0, 32), &map, (e, 0.3, t), edges);
    let moved = bend(&patch, &[([0.0, 0.0], Vector3::new(0.0, 0.0, -0.25))]);
    assert_near("pinched cylinder, under the load", -patch.mesh.at(0.0, 0.0, &moved).z, 1.8248e-5, 0.01);
}

#[test]
fn a_hemisphere_with_a_hole_is_pinched() {
    let (radius, e, t) = (10.0, 6.825e7, 0.04);
    let (stiff, turning) = (50.0 * e * t, 500.0 * e * t * t * t);
    let edges = Edges {
        left: along(0.0, stiff, 0.0, turning),
        right: along(stiff, 0.0, 0.0, turning),
        bottom: Hold::Free,
        top: along(0.0, 0.0, 1e-3, 0.0),
    };
    let map = |u: f64, v: f64| radius * Vector3::new(v.cos() * u.cos(), v.cos() * u.sin(), v.sin());
    let patch = patch((0.0, FRAC_PI_2, 20), (0.0, 72f64.to_radians(), 20), &map, (e, 0.3, t), edges);
    let loads = [([0.0, 0.0], Vector3::new(1.0, 0.0, 0.0)), ([FRAC_PI_2, 0.0], Vector3::new(0.0, -1.0, 0.0))];
    let moved = bend(&patch, &loads);
    assert_near("hemisphere with a hole, under the load", patch.mesh.at(0.0, 0.0, &moved).x, 0.094, 0.01);
}

/// A strip clamped at its start: movement of its end under a unit force spread along it. Computed a hundred times as
/// large, which is a hundred times as stiff: what clamps it gives by a fiftieth of a millimetre of sheet.
fn strip(
    (length, half, t): (f64, f64, f64),
    (e, nu): (f64, f64),
    map: &dyn Fn(f64, f64) -> Vector3<f64>,
    force: Vector3<f64>,
) -> f64 {
    let edges = Edges { left: Hold::Clamped, right: Hold::Free, bottom: Hold::Free, top: Hold::Free };
    let (length, half, t) = (100.0 * length, 100.0 * half, 100.0 * t);
    let large = |u: f64, v: f64| 100.0 * map(0.01 * u, 0.01 * v);
    let patch = patch((0.0, length, 24), (-half, half, 4), &large, (e, nu, t), edges);
    let loads: Vec<_> = (0..20).map(|i| ([length, half * (0.1 * f64::from(i) - 0.95)], force / 20.0)).collect();
    let moved = bend(&patch, &loads);
    100.0 * patch.mesh.at(length, 0.0, &moved).dot(&force)
}

#[test]
fn a_straight_beam_bends_and_stretches() {
    let flat = |u: f64, v: f64| Vector3::new(u, v, 0.0);
    let beam = |force| strip((6.0, 0.1, 0.1), (1e7, 0.3), &flat, force);
    assert_near("straight beam, along", beam(Vector3::x()), 3.0e-5, 0.02);
    assert_near("straight beam, in its plane", beam(Vector3::y()), 0.1081, 0.01);
    assert_near("straight beam, out of its plane", beam(Vector3::z()), 0.4321, 0.01);
}

#[test]
fn a_curved_beam_bends() {
    let (middle, half) = (4.22, 0.1);
    let map = |u: f64, v: f64| (middle - v) * Vector3::new((u / middle).sin(), -(u / middle).cos(), 0.0);
    let beam = |force| strip((FRAC_PI_2 * middle, half, 0.1), (1e7, 0.25), &map, force);
    assert_near("curved beam, in its plane, across its end", beam(Vector3::x()), 0.08734, 0.015);
    // a bar twice as wide as thick twists more than a Kirchhoff plate lets it: its sides shear across the thickness. The
    // table says 0.5022; closed form with the plate's own stiffness against twist, G w t³/3, as here:
    let bend = 1e7 * 0.2 * 0.1f64.powi(3) / 12.0;
    let twist = 4e6 * 0.2 * 0.1f64.powi(3) / 3.0;
    let plate = 4.22f64.powi(3) * (PI / 4.0 / bend + (0.75 * PI - 2.0) / twist);
    assert_near("curved beam, out of its plane, as a plate", beam(Vector3::z()), plate, 0.02);
}

#[test]
fn a_twisted_beam_bends() {
    let map = |u: f64, v: f64| {
        let turn = FRAC_PI_2 * u / 12.0;
        Vector3::new(u, v * turn.cos(), v * turn.sin())
    };
    let beam = |force| strip((12.0, 0.55, 0.32), (29e6, 0.22), &map, force);
    assert_near("twisted beam, in the plane of its end", beam(Vector3::z()), 0.005424, 0.02);
    assert_near("twisted beam, out of it", beam(Vector3::y()), 0.001754, 0.02);
}

#[test]
fn long_plates_bend_by_the_table() {
    // 2 × 10, thickness 1e-4, E 1.7472e7, ν 0.3, even load 1e-4 or 4e-4 in the middle; here a hundred times as wide under
    // loads that give the same
    let plate = |hold: Hold, even_load: bool| {
        let flat = |u: f64, v: f64| Vector3::new(u, v, 0.0);
        let patch = patch((-500.0, 500.0, 60), (-100.0, 100.0, 16), &flat, (1.7472e7, 0.3, 1e-4), Edges::all(hold));
        let loads = match even_load {
            true => everywhere(&patch, Vector3::new(0.0, 0.0, 1e-12)),
            false => vec![([0.0, 0.0], Vector3::new(0.0, 0.0, 4e-8))],
        };
        patch.mesh.at(0.0, 0.0, &bend(&patch, &loads)).z
    };
    assert_near("plate 1:5 supported, even", plate(Hold::Pinned, true), 12.97, 0.01);
    assert_near("plate 1:5 supported, middle", plate(Hold::Pinned, false), 16.96, 0.01);
    // an endless strip gives 2.604, which the ends five widths apart no longer touch
    assert_near("plate 1:5 clamped, even", plate(Hold::Clamped, true), 2.56, 0.02);
    assert_near("plate 1:5 clamped, middle", plate(Hold::Clamped, false), 7.23, 0.01);
}
