//! A round proposed from a reading, made by a hand the planner does not know, on a sheet it does not know.

use dentwright_plan::*;
use dentwright_sheet::paints;

fn settings() -> ProposeSettings {
    ProposeSettings {
        limit_mm: 0.02,
        average_mm: 6.0,
        moves: 2,
        tips: Tips::even(&[10.0, 18.0]),
        most_spent: 0.3,
        paint: paints().swap_remove(0),
        aged: false,
        panel_c: 20.0,
        most_c: 50.0,
        prove: true,
    }
}

#[test]
fn the_first_rounds_bring_a_dent_up_and_teach_the_hand() {
    let mut plant = Plant::draw(1).expect("a panel");
    let before = plant.residual_mm(6.0);
    let (mut map, mut hand) = (plant.read(), Hand::default());
    let model = Model::from_reading(&map, &plant.told, &|_| true).expect("a model");
    let doubt = hand.sigma()[0];
    for _ in 0..2 {
        let round = propose(&model, &map, &hand, &settings(), &Ways::open());
        assert!(!round.moves.is_empty() && round.moves.len() <= 2);
        for m in &round.moves {
            assert!(m.held_mm > 0.0 && m.spends <= 0.3 && m.leaves_mm[0] > 0.0);
            (0..m.times).for_each(|_| plant.make(m.act, m.at_mm, m.tip.radius, m.held_mm));
        }
        let next = plant.read();
        hand.learn(&compare(&round, &map, &next));
        map = next;
    }
    let after = plant.residual_mm(6.0);
    println!("{before:.3} mm, after two rounds {after:.3} mm; gain {:?} ± {:?}", hand.mean(), hand.sigma());
    assert!(after < 0.8 * before && hand.sigma()[0] < doubt);
}

#[test]
fn what_forbids_a_repair_is_told() {
    let mut plant = Plant::draw(1).expect("a panel");
    let map = plant.read();
    let model = Model::from_reading(&map, &plant.told, &|_| true).expect("a model");
    let paint = paints().swap_remove(0);
    let judged = |facts: Facts| can_be_done(&model, &paint, &facts);
    let rule = "no work on this panel".to_owned();
    let told = judged(Facts { makers_rule: Some(rule.clone()), ..Facts::default() });
    assert!(told.can == Can::No && told.reasons.contains(&Reason::MakersRule { rule }));
    let blocked = Some(vec![Blocked::NoOpening]);
    let told = judged(Facts { blocked: blocked.clone(), glue: false, ..Facts::default() });
    assert!(told.can == Can::No && told.reasons.iter().any(|r| matches!(r, Reason::Access { .. })));
    let told = judged(Facts { blocked, glue: true, ..Facts::default() });
    assert!(!told.reasons.iter().any(|r| matches!(r, Reason::Access { .. })), "glue is a way");
    let bonded = Some(vec![Blocked::Bonded]);
    assert_eq!(judged(Facts { blocked: bonded, glue: true, ..Facts::default() }).can, Can::No);
}
