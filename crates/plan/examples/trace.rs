//! One panel of the trial move by move: what was asked, what was foretold, what the sheet did:
//! `cargo run --release -p dentwright-plan --example trace -- SEED`.

use dentwright_plan::*;
use dentwright_sheet::paints;
use dentwright_surface::{Map, average};

fn extremes(map: &Map) -> (f64, f64) {
    let read = map.values.iter().filter(|v| v.is_finite()).map(|v| f64::from(*v));
    read.fold((0.0, 0.0), |(low, high), v| (v.min(low), v.max(high)))
}

fn main() {
    let seed = std::env::args().nth(1).and_then(|a| a.parse::<u64>().ok()).unwrap_or(5000);
    let t = TrialSettings::default();
    let mut plant = Plant::draw(seed).expect("a panel");
    let um = |v: f64| (1e3 * v).round();
    println!("== {seed} {:?} {} µm beyond {:?}", plant.damage, um(plant.residual_mm(6.0)), plant.beyond_repair());
    let mut hand = Hand::default();
    let mut map = plant.read();
    let mut model = match Model::from_reading(&map, &plant.told, &|_| true) {
        Ok(m) => m,
        Err(e) => return println!("no model {e}"),
    };
    let settings = ProposeSettings {
        limit_mm: t.limit_mm,
        average_mm: t.average_mm,
        moves: t.round,
        tips: Tips::even(&t.tips_mm),
        most_spent: 0.3,
        paint: paints().swap_remove(0),
        aged: false,
        panel_c: 20.0,
        most_c: 50.0,
        prove: true,
    };
    println!(
        "misfit {} can {:?}",
        um(model.misfit_mm),
        can_be_done(&model, &settings.paint, &Facts { glue: true, ..Facts::default() })
    );
    while plant.log.moves < t.most_moves {
        let (low, high) = extremes(&average(&map, t.average_mm));
        println!("-- low {} high {} moves {} misfit {}", um(low), um(high), plant.log.moves, um(model.misfit_mm));
        if high.max(-low) <= t.limit_mm {
            break;
        }
        let p = propose(&model, &map, &hand, &settings, &Ways::open());
        println!("   left out {}", p.left_out);
        if p.moves.is_empty() {
            println!("nothing");
            break;
        }
        for (m, c) in p.moves.iter().zip(&p.behind) {
            let b = plant.true_map().sample(m.at_mm[0], m.at_mm[1]).unwrap_or(f64::NAN);
            (0..m.times).for_each(|_| plant.make(m.act, m.at_mm, m.tip.radius, m.held_mm));
            let a = plant.true_map().sample(m.at_mm[0], m.at_mm[1]).unwrap_or(f64::NAN);
            println!(
                "   {:?} {:?} tip {} x{} held {:.3} depth {} foretold {}±{} got {}  proved {} curve {:.3?}",
                m.act,
                m.at_mm.map(|v| v.round()),
                m.tip.radius,
                m.times,
                m.held_mm,
                um(m.depth()),
                um(m.leaves_mm[0]),
                um(m.leaves_mm[1]),
                um(m.act.way() * (a - b)),
                p.proved,
                c.curve.corners
            );
        }
        let next = plant.read();
        let tried = compare(&p, &map, &next);
        for one in &tried {
            println!("   learned {} ± {}", um(one.left_mm), um(one.sigma_mm));
        }
        hand.learn(&tried);
        println!(
            "   expected {} ± {}, is {}; hand {:.2?} ± {:.2?}",
            um(p.expected_mm),
            um(p.sigma_mm),
            um(plant.residual_mm(6.0)),
            hand.mean(),
            hand.sigma()
        );
        let _ = model.follow(&tried, &next, &|_| true);
        map = next;
    }
    println!(
        "== {seed} {:?} end {} µm, {} moves, {} taps, snaps {} lost {} spent {:.4} paint {:.4}",
        plant.damage,
        um(plant.residual_mm(6.0)),
        plant.log.moves,
        plant.log.taps,
        plant.log.snaps,
        plant.log.lost,
        plant.spent(),
        plant.log.paint_strain
    );
}
