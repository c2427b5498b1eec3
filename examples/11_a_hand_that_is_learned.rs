//! A simulated panel is read, worked as proposed by a hand nobody knows, and read again: what the moves came to, and what
//! is known of the hand afterwards.

use dentwright_plan::{Hand, MadeMove, Model, Plant, ProposeSettings, Tips, Ways, propose, round_outcome};
use dentwright_sheet::paints;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut panel = Plant::draw(7).ok_or("no panel")?;
    let before = panel.read();
    let model = Model::from_reading(&before, &panel.told, &|_| true)?;
    let mut hand = Hand::default();
    let settings = ProposeSettings {
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
    };
    let round = propose(&model, &before, &hand, &settings, &Ways::open());
    let mut made = Vec::new();
    for m in &round.moves {
        println!("{:?} at {:.0?} mm, lift {:.2} mm, {} times", m.act, m.at_mm, m.held_mm, m.times);
        (0..m.times).for_each(|_| panel.make(m.act, m.at_mm, m.tip.radius, m.held_mm));
        let (act, at_mm, held_mm, times) = (m.act, m.at_mm, m.held_mm, m.times);
        made.push(MadeMove { act, at_mm, radius_mm: m.tip.radius, held_mm, times });
    }
    let after = panel.read();
    let came = round_outcome(&model, &before, &after, &made, &hand, settings.average_mm);
    for one in &came.moves {
        let [foretold, doubt] = one.foretold_mm;
        println!(
            "foretold {foretold:.3} ± {:.3} mm, left {:.3} ± {:.3} mm",
            2.0 * doubt,
            one.left_mm,
            2.0 * one.sigma_mm
        );
        assert!((one.left_mm - foretold).abs() < 3.0 * doubt.hypot(one.sigma_mm));
    }
    let unsure = hand.sigma()[0];
    hand.learn(&came.tried);
    println!("gain {:.2} ± {:.2}", hand.mean()[0], 2.0 * hand.sigma()[0]);
    assert!(!made.is_empty() && hand.sigma()[0] < unsure);
    Ok(())
}
