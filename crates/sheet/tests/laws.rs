//! What must hold of any shell: forces are slopes of stiffness, turning strains nothing, what goes in comes out.

mod common;

use common::{elastic, even, flat, follow};
use dentwright_sheet::*;
use nalgebra::{Rotation3, Vector3};

fn bumpy(i: usize) -> Vector3<f64> {
    let f = |k: f64| (k * i as f64).sin();
    Vector3::new(0.02 * f(1.7), 0.02 * f(2.3), 0.15 * f(0.9))
}

#[test]
fn stiffness_is_the_derivative_of_the_forces() {
    let metal = Metal {
        e_mpa: 210000.0,
        nu: 0.3,
        hardening: Hardening::Swift { k_mpa: 530.0, n: 0.2, yield_mpa: 200.0 },
        kinematic_share: 0.3,
    };
    let crown = |x: f64, y: f64| -x * x / 200.0 - x * y / 300.0;
    let mesh = Mesh::new(even(-8.0, 8.0, 4), even(-10.0, 10.0, 4), Outline::Rectangle, &crown, 2).expect("smooth");
    let mut patch = Patch::new(mesh, metal, 0.7, 7, &Edges::all(Hold::Free));
    let moved: Vec<_> = patch.places.iter().enumerate().map(|(i, p)| p + bumpy(i)).collect();
    let first = patch.state(&moved).expect("smooth");
    assert!(first.memory.iter().any(|m| m.spent > 1e-3), "the check wants yielding");
    patch.keep(moved.clone(), first.memory);
    let further: Vec<_> = moved.iter().enumerate().map(|(i, p)| p + 0.3 * bumpy(i + 5)).collect();
    let here = patch.state(&further).expect("smooth");
    let largest = here.stiffness.blocks.iter().flatten().fold(0.0, |a: f64, b| a.max(b.abs()));
    for node in [0, 16, 24, 40] {
        for c in 0..3 {
            let slope = |step: f64| {
                let mut places = further.clone();
                places[node][c] += step;
                patch.state(&places).expect("smooth").force
            };
            let (up, down) = (slope(1e-6), slope(-1e-6));
            for row in 0..further.len() {
                let found = (up[row] - down[row]) / 2e-6;
                let block = here.stiffness.block(row, node).unwrap_or([0.0; 9]);
                for r in 0..3 {
                    let off = (found[r] - block[3 * c + r]).abs();
                    assert!(off < 2e-5 * largest, "{node} {c} {row} {r}: {} against {}", found[r], block[3 * c + r]);
                }
            }
        }
    }
}

#[test]
fn turning_and_shifting_strain_nothing() {
    let crown = |x: f64, y: f64| -x * x / 400.0 + y * y / 900.0;
    let mesh = Mesh::new(even(-50.0, 50.0, 6), even(-40.0, 40.0, 5), Outline::Rectangle, &crown, 2).expect("smooth");
    let patch = Patch::new(mesh, elastic(210000.0, 0.3), 0.7, 5, &Edges::all(Hold::Free));
    let turn = Rotation3::from_euler_angles(0.7, -1.1, 2.0);
    let moved: Vec<_> = patch.places.iter().map(|p| turn * p + Vector3::new(3.0, -20.0, 70.0)).collect();
    let force = patch.state(&moved).expect("smooth").force;
    let most = force.iter().map(|f| f.norm()).fold(0.0, f64::max);
    println!("largest force after a turn of two radians: {most:.2e} N");
    assert!(most < 1e-6, "{most}");
}

#[test]
fn even_stretch_passes_through_uneven_cells() {
    // patch test: a linear movement in the plane gives the same stress everywhere, no force inside
    let axis = || Axis::new(vec![0.0, 3.0, 4.0, 9.0, 15.0, 16.5, 20.0]);
    let mesh = Mesh::new(axis(), axis(), Outline::Rectangle, &|_, _| 0.0, 2).expect("flat");
    let mut patch = Patch::new(mesh, elastic(210000.0, 0.3), 0.7, 5, &Edges::all(Hold::Free));
    let pull = |p: &Vector3<f64>| Vector3::new(p.x * 1.001 + 2e-4 * p.y, p.y * 0.9995, 0.0);
    let moved: Vec<_> = patch.places.iter().map(pull).collect();
    let state = patch.state(&moved).expect("flat");
    let n = patch.mesh.y.splines();
    for (i, f) in state.force.iter().enumerate() {
        if (1..n - 1).contains(&(i / n)) && (1..n - 1).contains(&(i % n)) {
            assert!(f.norm() < 1e-6, "node {i}: {f}");
        }
    }
    patch.keep(moved, state.memory);
    let first = patch.strained(0).expect("flat").membrane;
    for i in 0..patch.mesh.points.len() {
        assert!((patch.strained(i).expect("flat").membrane - first).norm() < 1e-12);
    }
}

#[test]
fn what_a_push_here_moves_there_a_push_there_moves_here() {
    // Maxwell and Betti, on a crown that is pressed already
    let crown = |x: f64, y: f64| -(x * x + y * y) / 6000.0;
    let mesh =
        Mesh::new(even(-100.0, 100.0, 12), even(-100.0, 100.0, 12), Outline::Rectangle, &crown, 2).expect("smooth");
    let mut panel = Panel::new(Patch::new(mesh, elastic(210000.0, 0.3), 0.7, 5, &Edges::all(Hold::Clamped)));
    follow(&mut panel, Tip::Point, &[Given::Force(20.0)], -1.0);
    let state = panel.patch.state(&panel.patch.places).expect("smooth");
    let factor = panel.patch.factor(&state);
    let at = [[10.0, 5.0], [-40.0, 30.0]];
    let loads = at.map(|p| Load::new(&panel.patch.mesh, &Tip::Point, p, 1.0));
    let give = |from: &Load, to: &Load| {
        let mut x = vec![0.0; 3 * panel.patch.places.len()];
        from.share.iter().for_each(|(n, s)| x[3 * n + 2] = *s);
        factor.solve(&mut x);
        to.share.iter().map(|(n, s)| s * x[3 * n + 2]).sum::<f64>()
    };
    let (there, here) = (give(&loads[0], &loads[1]), give(&loads[1], &loads[0]));
    assert!(there.abs() > 1e-5 && (there / here - 1.0).abs() < 1e-9, "{there} {here}");
}

#[test]
fn an_elastic_press_gives_back_all_it_took() {
    let metal = elastic(210000.0, 0.3);
    let axis = || common::towards_middle(50.0, 1.5, 6.0);
    let mut panel = flat(axis(), axis(), Outline::Rectangle, metal, 0.7, Edges::all(Hold::Clamped));
    let wanted = Move {
        kind: Kind::Press,
        at: [0.0, 0.0],
        tip: Tip::Sphere { radius_mm: 10.0 },
        bonded: false,
        goal: Goal::To(-1.5),
        steps: 30,
    };
    let outcome = perform(&mut panel, &wanted);
    assert!(outcome.converged, "{:?}", outcome.stopped);
    assert!(outcome.at_tip_left_mm.abs() < 1e-6, "{}", outcome.at_tip_left_mm);
    // the way back lies on the way there
    let (up, down) = outcome.curve.split_at(31);
    for [travel, force] in down.iter().filter(|p| p[1] > 0.05 * outcome.peak_force_n) {
        let k = up.partition_point(|p| p[0] < *travel).clamp(1, up.len() - 1);
        let ([a, fa], [b, fb]) = (up[k - 1], up[k]);
        let on_line = fa + (fb - fa) * (travel - a) / (b - a);
        assert!((force / on_line - 1.0).abs() < 0.02, "at {travel}: {force} against {on_line}");
    }
}
