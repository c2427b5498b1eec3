//! Where a plan's time goes, processor seconds: `cargo run --release -p dentwright-plan --example cost -- SEED`.

use dentwright_plan::*;
use dentwright_sheet::{Pace, oil_can, paints, perform_at};

fn main() {
    let seed = std::env::args().nth(1).and_then(|a| a.parse::<u64>().ok()).unwrap_or(1);
    let mut clock = cpu();
    let mut lap = |what: &str| {
        let now = cpu();
        println!("{what:40} {:6.2} s", now - clock);
        clock = now;
    };
    let mut plant = Plant::draw(seed).expect("a panel");
    lap("panel drawn and hit");
    let map = plant.read();
    let mut model = match Model::from_reading(&map, &plant.told, &|_| true) {
        Ok(model) => model,
        Err(why) => return println!("{:?} of {:.3} mm: {why}", plant.damage, plant.residual_mm(6.0)),
    };
    lap(&format!("first reading worked in, {:.3} mm off", model.misfit_mm));
    println!("{:?} of {:.3} mm", plant.damage, plant.residual_mm(6.0));
    let level = level(&model);
    lap("brought level");
    let oil = level.as_ref().map(oil_can).ok();
    lap("oil can");
    println!("{:?} {}", plant.damage, oil.is_some());
    let settings = ProposeSettings {
        limit_mm: 0.02,
        average_mm: 6.0,
        moves: 3,
        tips: Tips::even(&[10.0, 18.0]),
        most_spent: 0.3,
        paint: paints().swap_remove(0),
        aged: false,
        panel_c: 20.0,
        most_c: 50.0,
        prove: false,
    };
    let hand = Hand::default();
    propose(&model, &map, &hand, &settings, &Ways::open());
    lap("a round by quick answers");
    let round = propose(&model, &map, &hand, &ProposeSettings { prove: true, ..settings }, &Ways::open());
    lap("the same, proved");
    for pace in [Pace::FINE, Pace::COARSE] {
        let first = &round.moves[0];
        let mut panel = model.again().expect("the same sheet");
        let done =
            perform_at(&mut panel, &first.act.on_sheet(first.at_mm, first.tip.radius, 1.3 * first.held_mm), pace);
        let left = panel.deviation(first.at_mm[0], first.at_mm[1]);
        let (steps, n) = (done.curve.len(), done.iterations);
        lap(&format!("one full solve, {steps} steps, {n} iterations, {left:.4}, snaps {:?}", done.snapped_at_mm));
    }
    for m in &round.moves {
        plant.make(m.act, m.at_mm, m.tip.radius, m.held_mm);
    }
    lap(&format!("{} moves made", round.moves.len()));
    let next = plant.read();
    println!("{:.3} {:.3}", plant.residual_mm(6.0), round.expected_mm);
    model.take(&next, &|_| true).expect("not stopped");
    lap(&format!("second reading worked in, {:.3} mm off", model.misfit_mm));
    plant.beyond_repair();
    lap("beyond repair in truth");
}

/// Processor time of all threads so far, s.
fn cpu() -> f64 {
    let stat = std::fs::read_to_string("/proc/self/stat").unwrap_or_default();
    let ticks =
        |k: usize| stat.rsplit(") ").next().and_then(|s| s.split(' ').nth(k)?.parse::<f64>().ok()).unwrap_or(0.0);
    0.01 * (ticks(11) + ticks(12))
}
