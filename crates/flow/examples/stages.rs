//! Seconds per stage of a reading: `stages CAPTURE [RUNS]`; the best of the runs of each stage.

use dentwright_flow::{Progress, ReadSettings, Stage, read, write_reading};
use std::cell::RefCell;
use std::path::PathBuf;
use std::sync::atomic::AtomicBool;
use std::time::Instant;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut words = std::env::args().skip(1);
    let capture = PathBuf::from(words.next().ok_or("usage: stages CAPTURE [RUNS]")?);
    let runs: usize = words.next().map_or(Ok(5), |n| n.parse())?;
    let mut best = vec![f64::MAX; Stage::ALL.len() + 1];
    for _ in 0..runs {
        let begun = RefCell::new(Vec::new());
        let note = |p: Progress| {
            let mut begun = begun.borrow_mut();
            if begun.len() == p.stage as usize {
                begun.push(Instant::now());
            }
        };
        let reading = read(&capture, &ReadSettings::default(), &note, &AtomicBool::new(false))?;
        begun.borrow_mut().push(Instant::now());
        let out = std::env::temp_dir().join(format!("stages-{}", std::process::id()));
        write_reading(&reading, &out)?;
        begun.borrow_mut().push(Instant::now());
        std::fs::remove_dir_all(&out)?;
        for (least, pair) in best.iter_mut().zip(begun.borrow().windows(2)) {
            *least = least.min((pair[1] - pair[0]).as_secs_f64());
        }
    }
    for (name, seconds) in Stage::ALL.iter().map(|s| s.name()).chain(["files"]).zip(&best) {
        println!("{name:8} {seconds:.3}");
    }
    println!("{:8} {:.3}", "all", best.iter().sum::<f64>());
    Ok(())
}
