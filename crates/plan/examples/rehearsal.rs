//! Milliseconds of each answer of a rehearsal: `rehearsal [LEVEL]`; medians over ten moves.

use dentwright_plan::{Rehearsal, Touch, levels};
use dentwright_sheet::{Kind, Tip};
use std::time::Instant;

fn main() {
    let name = std::env::args().nth(1).unwrap_or_else(|| "first_ding".into());
    let Some(level) = levels().into_iter().find(|level| level.name == name) else {
        eprintln!("no level is called {name}");
        return;
    };
    let since = Instant::now();
    let mut rehearsal = Rehearsal::begin(&level, 1).expect("the hits find rest");
    println!("begin {:.0} ms", ms(since));
    let mut times = [Vec::new(), Vec::new(), Vec::new()];
    for _ in 0..10 {
        let map = rehearsal.deviation();
        let out = |i: &usize| map.values[*i].abs();
        let i = (0..map.values.len()).max_by(|a, b| out(a).total_cmp(&out(b))).expect("a map has cells");
        let (x_mm, y_mm) = map.grid.position(i);
        let kind = if map.values[i] < 0.0 { Kind::Push } else { Kind::Tap };
        let travel_mm = 1.8 + f64::from(out(&i));
        let touch = Touch { kind, x_mm, y_mm, tip: Tip::Sphere { radius_mm: 12.0 }, travel_mm };
        let since = Instant::now();
        let _ = rehearsal.lean(kind, [x_mm, y_mm], touch.tip, 0.2);
        times[0].push(ms(since));
        let since = Instant::now();
        let _ = rehearsal.quick(&touch);
        times[1].push(ms(since));
        let since = Instant::now();
        let made = rehearsal.make(&touch);
        times[2].push(ms(since));
        println!(
            "{kind:?} at {x_mm:.1} {y_mm:.1}: left {:.3} mm, {:.0} N, aim off {:.1} mm",
            made.left_mm, made.force_n, made.aim_off_mm
        );
    }
    for (what, mut all) in ["lean", "quick", "full"].into_iter().zip(times) {
        all.sort_by(f64::total_cmp);
        println!("{what}: {:.1} ms, most {:.1}", all[all.len() / 2], all[all.len() - 1]);
    }
    println!("{:?}", rehearsal.score());
}

fn ms(since: Instant) -> f64 {
    1e3 * since.elapsed().as_secs_f64()
}
