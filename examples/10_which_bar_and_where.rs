//! A door is drawn from behind; the rack is asked which bar reaches a dent, then what stands in the way elsewhere.

use dentwright_plan::{
    Blocked, Brace, Fulcrum, InnerSide, Opening, Outline, ReachSettings, Wall, access, starter_rack,
};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let opening = Opening {
        name: "speaker".into(),
        outline: Outline::Circle { at: [0.0, 0.0], radius: 80.0 },
        trim: Some("door lining".into()),
    };
    let inner = Wall {
        name: "inner sheet".into(),
        origin: [0.0, 0.0, -70.0],
        along: [1.0, 0.0, 0.0],
        out: [0.0, 0.0, -1.0],
        outline: Outline::Rectangle { at: [0.0, 0.0], size: [800.0, 500.0] },
        openings: vec![opening],
    };
    let beam = Brace {
        name: "beam".into(),
        line: vec![[-400.0, 120.0, -35.0], [400.0, 120.0, -35.0]],
        radius: 12.0,
        bears: true,
    };
    let door = InnerSide {
        outline: Outline::Rectangle { at: [0.0, 0.0], size: [800.0, 500.0] },
        curvature: [-1e-4, 0.0, -2e-4],
        walls: vec![inner],
        braces: vec![beam],
        bonded: vec![Outline::Rectangle { at: [-300.0, 0.0], size: [60.0, 60.0] }],
        behind: Vec::new(),
    };
    let rack = starter_rack();
    let settings = ReachSettings::default();

    let found = access(&door, &rack, [60.0, 20.0], &settings)?;
    let best = found.reaches.first().ok_or("nothing reaches")?;
    println!(
        "{} with {} through the {}, {:.0} degrees off square: {:.0} N over {:.0} mm, first off: {:?}",
        best.tool,
        best.tip,
        best.through[1],
        best.off_square.to_degrees(),
        best.levered.force_n,
        best.levered.travel_mm,
        best.trim
    );
    assert_eq!(best.trim.as_deref(), Some("door lining"));
    assert!(best.levered.force_n > 50.0 && best.levered.travel_mm > 0.0 && best.off_square < 0.4);
    let levers = found.reaches.iter().filter(|r| r.levered.fulcrum != Fulcrum::EndOn).count();
    println!("{} tools and tips reach, {levers} of them as levers", found.reaches.len());

    let edge = access(&door, &rack, [390.0, 0.0], &settings)?;
    assert_eq!(edge.blocked, [Blocked::Fold]);
    let glued = access(&door, &rack, [-300.0, 0.0], &settings)?;
    assert!(glued.reaches.is_empty() && glued.blocked == [Blocked::Bonded]);
    Ok(())
}
