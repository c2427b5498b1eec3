//! Writes the sample report in both languages and measures how long one takes.
//!
//! `cargo run --release -p dentwright-report --example sample_report -- FOLDER`

mod sample;

use std::time::Instant;

use dentwright_report::{Language, LengthUnit, Paper, report};

const ROUNDS: u32 = 20;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let folder = std::path::PathBuf::from(std::env::args().nth(1).unwrap_or_else(|| "target/sample".into()));
    std::fs::create_dir_all(&folder)?;
    for (name, language, unit, paper) in [
        ("sample-en.pdf", Language::En, LengthUnit::Mm, Paper::A4),
        ("sample-de.pdf", Language::De, LengthUnit::Mm, Paper::A4),
        ("sample-inch.pdf", Language::En, LengthUnit::Inch, Paper::Letter),
    ] {
        let data = sample::sample(language, unit, paper);
        let started = Instant::now();
        let first = report(&data)?;
        let first_ms = started.elapsed().as_secs_f64() * 1e3;
        let started = Instant::now();
        for _ in 0..ROUNDS {
            assert_eq!(report(&data)?, first, "the same values make the same bytes");
        }
        let each_ms = started.elapsed().as_secs_f64() * 1e3 / f64::from(ROUNDS);
        std::fs::write(folder.join(name), &first.pdf)?;
        let (pages, kb) = (first.pages, first.pdf.len() / 1000);
        println!("{name}: {pages} pages, {kb} kB, first {first_ms:.0} ms, then {each_ms:.0} ms each");
        assert!(first.pdf.starts_with(b"%PDF") && pages >= 3);
    }
    Ok(())
}
