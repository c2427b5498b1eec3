//! The rehearsal: its panels answer as sheet does, and the score tells the truth.

use dentwright_plan::{Claim, Height, Rehearsal, Touch, levels};
use dentwright_sheet::{Kind, Tip};
use dentwright_surface::Map;

fn deepest(map: &Map) -> (f64, f64, f64) {
    let i = (0..map.values.len()).min_by(|a, b| map.values[*a].total_cmp(&map.values[*b])).unwrap();
    let (x, y) = map.grid.position(i);
    (x, y, f64::from(map.values[i]))
}

fn push(x_mm: f64, y_mm: f64, travel_mm: f64) -> Touch {
    Touch { kind: Kind::Push, x_mm, y_mm, tip: Tip::Sphere { radius_mm: 16.0 }, travel_mm }
}

#[test]
fn every_level_begins_with_damage_beyond_its_finish() {
    for level in levels() {
        let rehearsal = Rehearsal::begin(&level, 7).unwrap_or_else(|| panic!("{} finds no rest", level.name));
        let (_, _, low) = deepest(&rehearsal.deviation());
        println!("{}: {low:.3} mm", level.name);
        assert!(-low > 3e-3 * level.finish_um && -low < 5.0, "{}: {low}", level.name);
        assert!(!rehearsal.score().finished);
    }
}

#[test]
fn a_ding_is_pushed_up_and_the_same_moves_give_the_same_panel() {
    let level = &levels()[0];
    let work = || {
        let mut rehearsal = Rehearsal::begin(level, 3).unwrap();
        let start = deepest(&rehearsal.deviation());
        rehearsal.claims.push(Claim { x_mm: start.0, y_mm: start.1, height: Height::Low });
        for _ in 0..3 {
            let (x, y, low) = deepest(&rehearsal.deviation());
            let made = rehearsal.make(&push(x, y, 2.2 - low));
            assert!(!made.lost && made.held_mm > made.left_mm && made.aim_off_mm < 1.0, "{made:?}");
        }
        (start.2, rehearsal.score(), rehearsal.deviation())
    };
    let (start, score, end) = work();
    println!("{start:.3} mm, {score:?}");
    assert!(deepest(&end).2 > 0.6 * start, "the low has come up by two fifths or more");
    assert_eq!((score.reading, score.moves), (Some(1.0), 3));
    assert!(score.strain_spent > 0.0);
    assert_eq!(work().2, end);
}

#[test]
fn a_leaning_tip_shows_where_it_stands_and_leaves_nothing() {
    let rehearsal = Rehearsal::begin(&levels()[0], 3).unwrap();
    let before = rehearsal.deviation();
    let lean = rehearsal.lean(Kind::Push, [14.0, -9.0], Tip::Sphere { radius_mm: 8.0 }, 0.2).unwrap();
    let change = Map { grid: before.grid, values: lean.change_mm };
    let top = (0..change.values.len()).max_by(|a, b| change.values[*a].total_cmp(&change.values[*b])).unwrap();
    let (x, y) = change.grid.position(top);
    assert!((x - 14.0).hypot(y + 9.0) < 4.0, "{x} {y}");
    assert!((f64::from(change.values[top]) - 0.2).abs() < 0.05 && lean.force_n > 1.0);
    assert_eq!(rehearsal.deviation(), before);
    assert!(rehearsal.lean(Kind::Push, [500.0, 0.0], Tip::Point, 0.2).is_none(), "off the panel");
}

#[test]
fn cold_paint_cracks_where_warm_paint_holds() {
    let level = levels().into_iter().find(|level| level.name == "cold_panel").unwrap();
    let hard = |temperature_c: f64| {
        let mut rehearsal = Rehearsal::begin(&level, 1).unwrap();
        rehearsal.temperature_c = temperature_c;
        let (x, y, low) = deepest(&rehearsal.deviation());
        let touch = Touch { tip: Tip::Sphere { radius_mm: 11.0 }, ..push(x, y, 1.6 - low) };
        rehearsal.make(&touch)
    };
    let (cold, warm) = (hard(level.temperature_c), hard(35.0));
    println!("{cold:?} {warm:?}");
    assert!(cold.cracked && !warm.cracked && (cold.paint_strain - warm.paint_strain).abs() < 1e-12);
}

#[test]
fn the_quick_answer_stands_in_until_the_full_one_comes() {
    let mut rehearsal = Rehearsal::begin(&levels()[0], 5).unwrap();
    let (x, y, low) = deepest(&rehearsal.deviation());
    let touch = push(x, y, 2.0 - low);
    let quick = rehearsal.quick(&touch).unwrap();
    let before = rehearsal.deviation();
    let made = rehearsal.make(&touch);
    let at_tip = quick.sample(x, y).unwrap();
    println!("quick {at_tip:.3}, full {:.3} mm", made.left_mm);
    assert!((at_tip - made.left_mm).abs() < 0.25 * made.left_mm.abs().max(0.2), "{at_tip} {}", made.left_mm);
    assert_ne!(rehearsal.deviation(), before);
}

/// Travel at which the quick answer says that `wanted_mm` stays; none where no travel does.
fn travel_for(rehearsal: &Rehearsal, touch: Touch, wanted_mm: f64) -> Option<f64> {
    let left = |travel_mm: f64| {
        let map = rehearsal.quick(&Touch { travel_mm, ..touch })?;
        Some(map.sample(touch.x_mm, touch.y_mm)?.abs())
    };
    let (mut low, mut high) = (0.1, 8.0);
    for _ in 0..7 {
        let middle = 0.5 * (low + high);
        match left(middle) {
            Some(found) if found < wanted_mm => low = middle,
            _ => high = middle,
        }
    }
    Some(0.5 * (low + high))
}

#[test]
fn a_patient_hand_finishes_the_first_ding() {
    let mut rehearsal = Rehearsal::begin(&levels()[0], 3).unwrap();
    for _ in 0..24 {
        if rehearsal.score().finished {
            break;
        }
        let map = rehearsal.deviation();
        let i = (0..map.values.len()).max_by(|a, b| map.values[*a].abs().total_cmp(&map.values[*b].abs())).unwrap();
        let (out, (x_mm, y_mm)) = (f64::from(map.values[i]), map.grid.position(i));
        let kind = if out < 0.0 { Kind::Push } else { Kind::Tap };
        let touch = Touch { kind, tip: Tip::Sphere { radius_mm: 12.0 }, ..push(x_mm, y_mm, 1.0) };
        let Some(travel_mm) = travel_for(&rehearsal, touch, 0.8 * out.abs()) else { break };
        let made = rehearsal.make(&Touch { travel_mm, ..touch });
        println!("{kind:?} {x_mm:.1} {y_mm:.1}: {out:.3}, travel {travel_mm:.2}, left {:.3}", made.left_mm);
    }
    let score = rehearsal.score();
    println!("{score:?}");
    assert!(score.finished, "{score:?}");
}
