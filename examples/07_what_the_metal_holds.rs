//! A dent is pressed; its shape alone is handed over; stretch, tension and oil can are found, and a push is tried.

use dentwright_sheet::{
    Axis, DentSettings, Edges, Focus, Goal, Hold, Kind, Mesh, Move, Outline, Panel, Patch, Tip, dent_state, give_map,
    graded, metals, oil_can, perform, quick, remains,
};
use dentwright_surface::{Grid, Map};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let metal = metals().into_iter().find(|m| m.name == "steel_bh180_panel").ok_or("not on file")?.likely();
    let mut truth = flat(metal.clone()).ok_or("a flat sheet")?;
    let tip = Tip::Sphere { radius_mm: 12.0 };
    let hit = Move { kind: Kind::Press, at: [0.0, 0.0], tip, bonded: false, goal: Goal::To(-4.0), steps: 12 };
    perform(&mut truth, &hit);

    let grid = Grid { x0_mm: -45.0, y0_mm: -45.0, step_mm: 1.5, nx: 61, ny: 61 };
    let shape = Map::from_fn(grid, |x, y| truth.deviation(x, y));
    let doubt = Map::from_fn(grid, |_, _| 0.002);
    let settings = DentSettings {
        metal,
        thickness_mm: 0.7,
        curvature: [0.0; 3],
        half_mm: 50.0,
        hold: Hold::Clamped,
        coarser: 1.5,
    };
    let dent = dent_state(&shape, &doubt, [0.0, 0.0], &settings, &|_| true)?;
    let most = |panel: &Panel| remains(panel).iter().map(|p| p.stretch).fold(0.0, f64::max);
    let (found, known) = (most(&dent.panel), most(&truth));
    println!("{:.2} mm deep; stretched {:.2} %, in truth {:.2} %", dent.depth_mm, 100.0 * found, 100.0 * known);
    assert!((1.0 / 1.5..1.5).contains(&(found / known)));

    let oil = oil_can(&dent.panel).ok_or("no stiffness")?;
    println!("stays where it is: {}; pops at {:?} N", oil.stable, oil.pops_at_n);
    assert!(oil.stable);

    let give = give_map(&dent.panel, 15).ok_or("no stiffness")?;
    let push = Move { kind: Kind::Push, goal: Goal::Travel(2.0), ..hit };
    let answer = quick(&dent.panel, &give, &push).ok_or("no quick answer")?;
    println!(
        "a push of 2 mm: {:.0} N, lift held {:.2} mm, left {:.2} mm",
        answer.force_n, answer.held_mm, answer.left_mm
    );
    assert!(answer.left_mm > 0.0 && answer.left_mm < answer.held_mm);
    Ok(())
}

fn flat(metal: dentwright_sheet::Metal) -> Option<Panel> {
    let focus = Focus { at: 0.0, reach: 6.0, fine: 1.8 };
    let axis = || Axis::new(graded(-50.0, 50.0, &[focus], 1.3, 7.0));
    let mesh = Mesh::new(axis(), axis(), Outline::Rectangle, &|_, _| 0.0, 2)?;
    Some(Panel::new(Patch::new(mesh, metal, 0.7, 7, &Edges::all(Hold::Clamped))))
}
