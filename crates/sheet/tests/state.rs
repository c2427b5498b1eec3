//! Dents pressed with CalculiX solids; only their final shape is handed over, stretch and tension are compared.

use dentwright_sheet::*;
use dentwright_surface::{Grid, Map};

/// Yield stress of the solids, MPa.
const YIELD_MPA: f64 = 200.0;

/// A column of the solids: radius now, deviation left, larger plastic strain of the middle, stress along and round.
struct Truth {
    at: f64,
    left: f64,
    stretch: f64,
    stress: [f64; 2],
}

fn truth(csv: &str) -> Vec<Truth> {
    let row = |line: &str| {
        let v: Vec<f64> = line.split(',').map(|v| v.parse().expect("a number")).collect();
        Truth { at: v[1], left: v[2], stretch: v[3].max(v[4]), stress: [v[5], v[6]] }
    };
    csv.lines().skip(1).map(row).collect()
}

fn between(rows: &[Truth], r: f64, of: impl Fn(&Truth) -> f64) -> f64 {
    let k = rows.partition_point(|row| row.at < r).clamp(1, rows.len() - 1);
    let (a, b) = (&rows[k - 1], &rows[k]);
    let s = ((r - a.at) / (b.at - a.at)).clamp(0.0, 1.0);
    of(a) + s * (of(b) - of(a))
}

/// Where the dent's middle lies on the map, mm: nowhere special.
const OFF: [f64; 2] = [3.0, -2.0];
/// Half the map, mm.
const HALF: f64 = 85.0;

fn far(p: [f64; 2]) -> f64 {
    (p[0] - OFF[0]).hypot(p[1] - OFF[1])
}

fn found(rows: &[Truth], kinematic_share: f64) -> Dent {
    let n = 2 * HALF as usize + 1;
    let grid = Grid { x0_mm: -HALF, y0_mm: -HALF, step_mm: 1.0, nx: n, ny: n };
    let shape = Map::from_fn(grid, |x, y| between(rows, far([x, y]), |r| r.left));
    let sigma = Map::from_fn(grid, |_, _| 0.002);
    let hardening = Hardening::Swift { k_mpa: 530.0, n: 0.2, yield_mpa: YIELD_MPA };
    let settings = DentSettings {
        metal: Metal { e_mpa: 210000.0, nu: 0.3, hardening, kinematic_share },
        thickness_mm: 0.7,
        curvature: [0.0; 3],
        half_mm: HALF - 5.0,
        hold: Hold::Clamped,
        coarser: 1.0,
    };
    dent_state(&shape, &sigma, [0.0, 0.0], &settings, &|_| true).expect("a state")
}

/// Share of the area with the sign of tension right where the solids' own exceeds a tenth of yield.
fn sign_right(rows: &[Truth], points: &[Remains], areas: &[f64]) -> f64 {
    let (mut right, mut all) = (0.0, 0.0);
    for (p, area) in points.iter().zip(areas) {
        let r = far(p.at_mm);
        let stress = [between(rows, r, |t| t.stress[0]), between(rows, r, |t| t.stress[1])];
        let tension = if stress[0].abs() > stress[1].abs() { stress[0] } else { stress[1] };
        if tension.abs() > 0.1 * YIELD_MPA && r < HALF - 10.0 {
            all += area;
            right += if tension * p.tension_mpa > 0.0 { *area } else { 0.0 };
        }
    }
    assert!(all > 100.0, "only {all} mm² under tension");
    right / all
}

fn check(name: &str, csv: &str, kinematic_share: f64) {
    let rows = truth(csv);
    let dent = found(&rows, kinematic_share);
    let points = remains(&dent.panel);
    let areas: Vec<f64> = dent.panel.sheet_points().map(|i| dent.panel.patch.mesh.points[i].area).collect();
    let peak = points.iter().max_by(|a, b| a.stretch.total_cmp(&b.stretch)).expect("points");
    let known = rows.iter().map(|r| r.stretch).fold(0.0, f64::max);
    let right = sign_right(&rows, &points, &areas);
    let worked = dent.worked;
    println!("{name}: depth {:.2} mm, {worked:?}", dent.depth_mm);
    println!("  peak stretch {:.4}, solids {known:.4}, factor {:.2}", peak.stretch, peak.stretch / known);
    println!("  {:.1} mm off its place; sign of tension right on {:.1} %", far(peak.at_mm), 100.0 * right);
    assert!((1.0 / 1.5..1.5).contains(&(peak.stretch / known)));
    assert!(far(peak.at_mm) < 5.0 && right > 0.9);
    let packed = Dent::unpack(&dent.pack()).expect("the same dent");
    let again = remains(&packed.panel).iter().map(|p| p.stretch).fold(0.0, f64::max);
    assert!((again / peak.stretch - 1.0).abs() < 1e-4, "{again}");
}

#[test]
fn a_sharp_dent_pressed_by_solids() {
    check("load on 6 mm, isotropic", include_str!("calculix/disc_iso.csv"), 0.0);
}

#[test]
fn a_soft_dent_pressed_by_solids() {
    check("load on 15 mm, kinematic", include_str!("calculix/disc_kin.csv"), 1.0);
}

/// A hail dent of 0.15 mm on a door's crown, pressed in full; its shape with the doubt of a reading is handed over. A dent
/// this shallow springs back by several times what stays, so the mould has to go far before anything does.
#[test]
fn a_shallow_dent_on_a_crown() {
    let metal = metals().into_iter().find(|m| m.name == "steel_bh180_panel").expect("on file").likely();
    let curvature = [1.0 / 6000.0, 0.0, 1.0 / 1500.0].map(|k: f64| -k);
    let crown = |x: f64, y: f64| 0.5 * (curvature[0] * x * x + curvature[2] * y * y);
    let axis = || Axis::new(graded(-60.0, 60.0, &[Focus { at: 0.0, reach: 12.0, fine: 1.8 }], 1.3, 8.0));
    let mesh = Mesh::new(axis(), axis(), Outline::Rectangle, &crown, 2).expect("smooth");
    let mut truth = Panel::new(Patch::new(mesh, metal.clone(), 0.7, 7, &Edges::all(Hold::Clamped)));
    let tip = Tip::Sphere { radius_mm: 20.0 };
    let hit = Move { kind: Kind::Press, at: [0.0, 0.0], tip, bonded: false, goal: Goal::To(-1.65), steps: 12 };
    assert!(perform(&mut truth, &hit).converged);
    let grid = Grid { x0_mm: -58.0, y0_mm: -58.0, step_mm: 1.0, nx: 117, ny: 117 };
    let shape = Map::from_fn(grid, |x, y| truth.deviation(x, y));
    let sigma = Map::from_fn(grid, |_, _| 0.003);
    let settings =
        DentSettings { metal, thickness_mm: 0.7, curvature, half_mm: 55.0, hold: Hold::Clamped, coarser: 1.0 };
    let dent = dent_state(&shape, &sigma, [0.0, 0.0], &settings, &|_| true).expect("a state");
    let most = |panel: &Panel| remains(panel).iter().map(|p| p.stretch).fold(0.0, f64::max);
    let spent = |panel: &Panel| panel.max_plastic_strain();
    let (ours, theirs) = (most(&dent.panel), most(&truth));
    println!("shallow dent of {:.3} mm: {:?}", dent.depth_mm, dent.worked);
    println!("  peak stretch {ours:.5}, true {theirs:.5}; spent {:.5}, true {:.5}", spent(&dent.panel), spent(&truth));
    let left = dent.panel.deviation(0.0, 0.0);
    println!("  left {left:.3} mm");
    assert!((0.1..0.2).contains(&dent.depth_mm));
    assert!((left + dent.depth_mm).abs() < 0.1 * dent.depth_mm, "{left}");
    assert!((1.0 / 1.5..1.5).contains(&(ours / theirs)));
}

/// A low so wide and shallow that its metal bends well within its yield stress: nothing stays when it is let go, so it is
/// said to be held. In the middle of `w = w₀ exp(−r²/2s²)` a plate is bent by `w₀/s²` both ways, and its faces are under
/// `E (t/2) (w₀/s²) / (1 − ν)` (Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, article 11).
#[test]
fn a_low_that_would_spring_back_is_held() {
    let metal = metals().into_iter().find(|m| m.name == "steel_bh180_panel").expect("on file").likely();
    let (thickness_mm, s, depth) = (0.7, 40.0, 0.1);
    let grid = Grid { x0_mm: -150.0, y0_mm: -150.0, step_mm: 1.5, nx: 201, ny: 201 };
    let shape = Map::from_fn(grid, |x, y| -depth * (-(x * x + y * y) / (2.0 * s * s)).exp());
    let sigma = Map::from_fn(grid, |_, _| 0.001);
    let face = metal.e_mpa * 0.5 * thickness_mm * depth / (s * s) / (1.0 - metal.nu);
    let plate = face / metal.hardening.yield_mpa();
    let settings =
        DentSettings { metal, thickness_mm, curvature: [0.0; 3], half_mm: 110.0, hold: Hold::Clamped, coarser: 1.7 };
    let dent = dent_state(&shape, &sigma, [0.0; 2], &settings, &|_| true).expect("a state");
    let share = dent.held.expect("held");
    println!("at {share:.4} of yield, the plate {plate:.4}, {:?}", dent.worked);
    assert!((0.9..1.1).contains(&(share / plate)));
    assert!(dent.panel.max_plastic_strain() < 1e-9 && dent.worked.misfit_mm < 0.02 * depth);
    let again = Dent::unpack(&dent.pack()).expect("the same dent").held.expect("held");
    assert!((again / share - 1.0).abs() < 1e-9);
}
