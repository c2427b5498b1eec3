//! Runs the trial on so many panels and prints its table: `cargo run --release -p dentwright-plan --example trial -- 10`;
//! `-- 3 0` lets only the planner work, on panel 3.

use dentwright_plan::{Run, TrialSettings, Worker, run, table, trial};

fn main() {
    let number = |k: usize| std::env::args().nth(k).and_then(|a| a.parse::<u64>().ok());
    let settings = TrialSettings::default();
    let runs = match (number(1), number(2)) {
        // one panel and one worker, the planner
        (Some(seed), Some(0)) => run(seed, Worker::Planner, &settings).into_iter().inspect(say).collect(),
        (panels, _) => trial(panels.unwrap_or(5), &settings, &say),
    };
    println!("worker | panels | met | moves | readings | taps | residual, µm | strain spent | paint strain | snaps");
    for r in table(&runs) {
        println!(
            "{:?} | {} | {} | {:.1} | {:.1} | {:.0} % | {:.0} | {:.3} | {:.3} | {}",
            r.worker,
            r.panels,
            r.met,
            r.moves,
            r.readings,
            100.0 * r.taps,
            1e3 * r.residual_mm,
            r.spent,
            r.paint_strain,
            r.snaps
        );
    }
}

fn say(r: &Run) {
    println!("{r:?}");
}
