//! From a rendered capture to a plan: it works where the dent is, marks the photo there, and asks for the worst input once.

use dentwright_flow::{
    KeptReading, PlanError, PlanFile, PlanSettings, ReadSettings, plan_repair, read, write_plan, write_reading,
};
use dentwright_scene::recipes;
use std::sync::atomic::AtomicBool;

#[test]
fn a_reading_becomes_a_plan_on_file() {
    let folder = tempfile::tempdir().unwrap();
    recipes::named("flat").unwrap().render().unwrap().write_photos(folder.path()).unwrap();
    let reading = read(folder.path(), &ReadSettings::default(), &|_| {}, &AtomicBool::new(false)).unwrap();
    write_reading(&reading, &folder.path().join("reading")).unwrap();
    let kept = KeptReading::open(&folder.path().join("reading")).unwrap();
    let settings = PlanSettings { rounds: 1, moves: 2, ..Default::default() };

    let wrong = |settings: PlanSettings| plan_repair(&kept, &settings, None, &|_| true).err().unwrap();
    assert_eq!(wrong(PlanSettings { spot: Some(99), ..settings.clone() }).code(), "no_spot");
    assert_eq!(wrong(PlanSettings { metal: "tin".into(), ..settings.clone() }).code(), "not_on_file");
    assert!(matches!(wrong(PlanSettings { thickness_mm: Some(9.0), ..settings.clone() }), PlanError::Wrong(_)));

    let file = plan_repair(&kept, &settings, None, &|_| true).unwrap().file;
    let spot = &kept.file.spots[0];
    let first = &file.plan.rounds[0].moves[0].planned;
    let off = (first.at_mm[0] - spot.spot.x_mm).hypot(first.at_mm[1] - spot.spot.y_mm);
    assert!(off < 8.0, "the first move is {off} mm from the deepest place");
    // the mark on the photo agrees with the reading's own place of the spot
    let mark = dentwright_flow::on_photo(&kept, [spot.spot.x_mm, spot.spot.y_mm]).unwrap();
    assert!((mark[0] - spot.at_px[0]).hypot(mark[1] - spot.at_px[1]) < 0.5, "{mark:?} {:?}", spot.at_px);
    let out = folder.path().join("plan");
    write_plan(&file, &kept, &out).unwrap();
    let again: PlanFile = serde_json::from_slice(&std::fs::read(out.join("plan.json")).unwrap()).unwrap();
    assert_eq!(again.at_px[0].len(), file.plan.rounds[0].moves.len());
    let words = std::fs::read_to_string(out.join("plan.txt")).unwrap();
    assert!(words.contains("Round 1") && words.contains("Why:") && words.contains("maker's procedure"));
    println!("{words}");
}
