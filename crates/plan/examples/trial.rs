//! Runs panels of the trial and prints every run as a line of JSON, and the table:
//! `cargo run --release -p dentwright-plan --example trial -- FROM TO [planner|masters]`.

use dentwright_plan::{TrialSettings, Worker, refusals, table, trial};

fn main() {
    let number = |k: usize| std::env::args().nth(k).and_then(|a| a.parse::<u64>().ok());
    let all = Worker::all();
    let workers = match std::env::args().nth(3).as_deref() {
        Some("planner") => &all[..1],
        Some("masters") => &all[1..],
        _ => &all[..],
    };
    let seeds = number(1).unwrap_or(0)..number(2).unwrap_or(5);
    let runs = trial(seeds, workers, &TrialSettings::default(), &|run| {
        println!("{}", serde_json::to_string(run).expect("plain numbers"));
    });
    for row in table(&runs) {
        eprintln!("{row:?}");
    }
    eprintln!("{:?}", refusals(&runs));
}
