//! A whole plan from a reading: verdict, rounds, tools, and what is never proposed.

use dentwright_plan::*;
use dentwright_sheet::{glues, paints};
use dentwright_surface::Map;

/// How the patch lies in the drawing.
const LIES: Placing = Placing { turn_rad: 0.3, shift_mm: [120.0, -40.0] };

fn settings(rack: &Rack) -> ProposeSettings {
    ProposeSettings {
        limit_mm: 0.02,
        average_mm: 6.0,
        moves: 2,
        tips: Tips::of(rack, 8.2).0,
        most_spent: 0.3,
        paint: paints().swap_remove(0),
        aged: false,
        panel_c: 15.0,
        most_c: 45.0,
        prove: true,
    }
}

fn planned(map: &Map, known: &Known, behind: Option<&InnerSide>, glue: bool) -> Plan {
    let (rack, hand, glues) = (starter_rack(), Hand::default(), glues());
    let drawn = behind.map(|side| Drawn { side: side.clone(), lies: LIES });
    let asked = Asked {
        deviation: map,
        known,
        model: None,
        hand: &hand,
        settings: settings(&rack),
        facts: Facts { glue, ..Facts::default() },
        behind: drawn.as_ref(),
        rack: &rack,
        glue: glue.then(|| &glues[0]),
        last_round_mm: None,
        rounds: 2,
    };
    let (mut made, _) = plan(asked, &|_| true).expect("a plan");
    made.carry(&LIES);
    made
}

/// An inner side with one large opening, and with something bonded where the dent is.
fn behind(bonded: bool) -> InnerSide {
    let bonded = if bonded { "bonded = [{ shape = \"circle\", at = [120, -40], radius = 60 }]" } else { "" };
    let text = format!(
        "outline = {{ shape = \"rectangle\", at = [0, 0], size = [900, 600] }}\n{bonded}\n[[walls]]\nname = \"inner sheet\"\n\
         origin = [0, 0, -90]\nalong = [1, 0, 0]\nout = [0, 0, -1]\n\
         outline = {{ shape = \"rectangle\", at = [0, 0], size = [900, 600] }}\n\
         openings = [{{ name = \"large hole\", outline = {{ shape = \"rectangle\", at = [60, 40], size = [300, 260] }} }}]\n"
    );
    toml::from_str(&text).expect("a drawing")
}

#[test]
fn a_plan_says_what_where_with_what_and_why() {
    let mut plant = Plant::draw(0).expect("a panel");
    let map = plant.read();
    let made = planned(&map, &plant.told, None, false);
    let first = made.rounds.first().expect("a round");
    assert!(first.proved && first.expected_mm < first.before_mm && first.sigma_mm > 0.0);
    assert!(made.rounds.len() == 2 && !made.rounds[1].proved && made.rounds[1].sigma_mm >= first.sigma_mm);
    for one in made.rounds.iter().flat_map(|r| &r.moves) {
        let p = &one.planned;
        let apart = (p.at_mm[0] - LIES.shift_mm[0]).hypot(p.at_mm[1] - LIES.shift_mm[1]);
        assert!(apart < 65.0 && (1..=3).contains(&p.times) && p.held_mm > p.leaves_mm[0] && p.leaves_mm[1] > 0.0);
        assert!(
            p.force_n > 1.0 && (15.0..=45.0).contains(&p.paint_c) && p.spends <= 0.3 && p.stop_at_mm >= p.leaves_mm[0]
        );
        assert!(matches!(
            (p.act, &one.tooling),
            (Act::Push, Tooling::NotDrawn) | (Act::Tap | Act::Blend, Tooling::KnockDown)
        ));
    }
    let text = serde_json::to_string(&made).expect("plain");
    assert_eq!(serde_json::from_str::<Plan>(&text).expect("the same").rounds.len(), 2);
}

#[test]
fn tools_are_named_glue_stands_in_and_bonded_metal_is_refused() {
    let mut plant = Plant::draw(0).expect("a panel");
    let map = plant.read();
    let with = planned(&map, &plant.told, Some(&behind(false)), false);
    let tooled = with.rounds[0].moves.iter().filter(|m| m.planned.act == Act::Push);
    assert!(tooled.clone().count() > 0);
    for one in tooled {
        assert!(
            matches!(&one.tooling, Tooling::Bar { through, .. } if through[1] == "large hole"),
            "{:?}",
            one.tooling
        );
    }
    let bonded = planned(&map, &plant.told, Some(&behind(true)), true);
    assert_eq!(bonded.verdict.can, Can::No);
    let pushes = bonded.rounds.iter().flat_map(|r| &r.moves).filter(|m| m.planned.act == Act::Push).count();
    assert_eq!(pushes, 0, "nothing is pushed where something is bonded");
}

#[test]
fn a_level_panel_needs_no_plan_and_a_stop_is_heeded() {
    let mut plant = Plant::draw(0).expect("a panel");
    let map = plant.read();
    let (rack, hand) = (starter_rack(), Hand::default());
    let asked = |map, rounds| Asked {
        deviation: map,
        known: &plant.told,
        model: None,
        hand: &hand,
        settings: settings(&rack),
        facts: Facts::default(),
        behind: None,
        rack: &rack,
        glue: None,
        last_round_mm: None,
        rounds,
    };
    assert!(plan(asked(&map, 1), &|_| false).is_err());
    let flat = Map::from_fn(map.grid, |_, _| 0.001);
    let level = plan(asked(&flat, 1), &|_| true).expect("a plan").0;
    assert!(level.level && level.rounds.is_empty());

    let over = plan(Asked { last_round_mm: Some([0.1, 0.6]), ..asked(&map, 1) }, &|_| true).expect("a plan").0;
    assert_eq!(over.verdict.can, Can::No, "a round that made it worse ends the work");
    assert_eq!(over.verdict.reasons[0], Reason::WentOver { before_mm: 0.1, after_mm: 0.6 });
    let better = plan(Asked { last_round_mm: Some([0.6, 0.4]), ..asked(&map, 1) }, &|_| true).expect("a plan").0;
    assert_eq!(better.verdict.can, Can::Yes);
}
