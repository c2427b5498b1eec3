//! Pressed, let go, pushed back, let go: against solids computed with CalculiX 2.20, decks and numbers in `calculix/`.

mod common;

use common::{assert_near, elastic};
use dentwright_sheet::*;

fn steel(kinematic_share: f64) -> Metal {
    let hardening = Hardening::Swift { k_mpa: 530.0, n: 0.2, yield_mpa: 200.0 };
    Metal { e_mpa: 210000.0, nu: 0.3, hardening, kinematic_share }
}

/// Cells fine within `half` of the middle and at the sides.
fn axis(side: f64, half: f64, fine: f64) -> Axis {
    let focus = |at, reach, fine| Focus { at, reach, fine };
    let foci = [focus(0.0, half, fine), focus(-side, 0.0, 2.5), focus(side, 0.0, 2.5)];
    Axis::new(graded(-side, side, &foci, 1.3, 6.0))
}

/// A clamped disc or cap of 0.7 mm.
fn disc(radius: f64, loaded: f64, crown: f64, metal: Metal) -> Panel {
    let axis = || axis(radius, loaded, 0.2 * loaded);
    let height = |x: f64, y: f64| if crown == 0.0 { 0.0 } else { (crown * crown - x * x - y * y).sqrt() - crown };
    let mesh = Mesh::new(axis(), axis(), Outline::Disc(2.0 * radius), &height, 2).expect("smooth");
    Panel::new(Patch::new(mesh, metal, 0.7, 9, &Edges::all(Hold::Clamped)))
}

/// An even load on the middle, pressed and then pushed back; what came of either.
fn press_and_push(panel: &mut Panel, tip: Tip, goals: [Goal; 2]) -> [Outcome; 2] {
    let mut go = |kind, goal| {
        let outcome = perform(panel, &Move { kind, at: [0.0, 0.0], tip, bonded: true, goal, steps: 24 });
        assert!(outcome.converged, "{:?}", outcome.stopped);
        outcome
    };
    [go(Kind::Press, goals[0]), go(Kind::Push, goals[1])]
}

/// Held and left after pressing, held and left after pushing back, each with the difference that is allowed, mm.
fn compare(what: &str, found: &[Outcome; 2], known: [f64; 4], allowed: [f64; 4]) {
    let ours = [&found[0], &found[1]].map(|o| [o.at_tip_held_mm, o.at_tip_left_mm]).concat();
    for (i, name) in ["pressed", "left", "pushed back", "left again"].into_iter().enumerate() {
        let off = ours[i] - known[i];
        println!("{what}, {name}: ours {:.4}, reference {:.4}, difference {off:+.4} mm", ours[i], known[i]);
        assert!(off.abs() < allowed[i], "{what}, {name}: {} against {}", ours[i], known[i]);
    }
}

/// Largest plastic strain where the solids' outermost points lie, 5.3 % of half the thickness below either face.
fn near_the_face(panel: &Panel) -> f64 {
    let (n, zeta) = (panel.patch.layers.len(), &panel.patch.layers.zeta);
    let face = zeta[n - 1];
    let share = 0.053 * face / (face - zeta[n - 2]);
    let deeper = |face: usize, next: usize, m: &[Memory]| m[face].spent + share * (m[next].spent - m[face].spent);
    let at = |m: &[Memory]| deeper(0, 1, m).max(deeper(n - 1, n - 2, m));
    panel.patch.memory.chunks_exact(n).map(at).fold(0.0, f64::max)
}

fn by_force(press: f64, push: f64) -> [Goal; 2] {
    [Goal::Force(press), Goal::Force(push)]
}

#[test]
fn a_wide_load_equals_solids() {
    // deck `wide`, all isotropic, and `wide_kinematic`
    for (share, known) in
        [(0.0, [-1.766872, -0.559163, 1.264917, -0.086044]), (1.0, [-1.767108, -0.557851, 1.267038, -0.026840])]
    {
        let mut panel = disc(60.0, 10.0, 0.0, steel(share));
        let found = press_and_push(&mut panel, Tip::Disc { radius_mm: 10.0 }, by_force(500.0, 250.0));
        compare(&format!("wide load, kinematic share {share}"), &found, known, [0.01, 0.01, 0.01, 0.02]);
        let strain = if share == 0.0 { 0.010104 } else { 0.010727 };
        assert_near("wide load, peak plastic strain", near_the_face(&panel), strain, 0.1);
    }
}

/// A patch only seven thicknesses across driven to 7 % plastic strain, moved by its mean travel: what stays to a
/// hundredth of a millimetre, forces within 1.5 %.
#[test]
fn a_narrow_load_moved_by_its_travel_equals_solids() {
    let mut panel = disc(100.0, 5.0, 0.0, steel(0.0));
    let found = press_and_push(&mut panel, Tip::Disc { radius_mm: 5.0 }, [Goal::To(-5.4), Goal::To(1.5)]);
    compare("narrow load by travel", &found, [-5.707573, -3.613003, 1.194178, -0.214420], [0.02, 0.03, 0.02, 0.05]);
    assert_near("narrow load by travel, force to press", found[0].peak_force_n, 1493.2, 0.03);
    assert_near("narrow load by travel, force to push back", found[1].peak_force_n, 389.3, 0.05);
    assert_near("narrow load by travel, peak plastic strain", near_the_face(&panel), 0.079815, 0.1);
}

/// The same patch moved by its force. The last state magnifies 1.3 % of force into seven hundredths of a millimetre, over
/// the 0.05 aimed for: solids shear across the thickness under the patch's rim, which a Kirchhoff sheet cannot.
#[test]
fn a_narrow_load_moved_by_its_force_is_near_solids() {
    let mut panel = disc(100.0, 5.0, 0.0, steel(0.0));
    let found = press_and_push(&mut panel, Tip::Disc { radius_mm: 5.0 }, by_force(1400.0, 400.0));
    compare("narrow load by force", &found, [-5.459985, -3.344958, 1.476828, 0.076554], [0.05, 0.05, 0.08, 0.08]);
}

#[test]
fn a_cap_gives_elastically_as_solids_do() {
    let mut panel = disc(60.0, 8.0, 1000.0, elastic(210000.0, 0.3));
    let found = press_and_push(&mut panel, Tip::Disc { radius_mm: 8.0 }, by_force(60.0, 60.0));
    assert_near("cap pressed by 60 N", found[0].at_tip_held_mm, -0.2085654, 0.01);
    assert_near("cap pushed by 60 N", found[1].at_tip_held_mm, 0.1512358, 0.01);
}

/// An 80 × 60 mm sheet under 16 × 6 mm; C3D20R solids, four across the thickness. Two across are 1.5 % too stiff.
#[test]
fn a_rectangle_equals_solids() {
    let mesh = Mesh::new(axis(40.0, 8.0, 2.0), axis(30.0, 3.0, 1.0), Outline::Rectangle, &|_, _| 0.0, 2).expect("flat");
    let mut panel = Panel::new(Patch::new(mesh, steel(0.0), 0.7, 9, &Edges::all(Hold::Clamped)));
    let found = press_and_push(&mut panel, Tip::Rectangle { width_mm: 16.0, height_mm: 6.0 }, by_force(400.0, 200.0));
    compare("rectangle", &found, [-1.085189, -0.472877, 0.575760, -0.063616], [0.01, 0.03, 0.02, 0.02]);
    assert_near("rectangle, peak plastic strain", near_the_face(&panel), 0.021015, 0.1);
}
