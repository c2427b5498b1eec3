//! Scores a reading against the truth that lies beside its photos: `score CAPTURE READING [--json]`.

use anyhow::{Context, Result};
use dentwright_scene::{ReadMaps, Score, Truth, score};
use std::path::PathBuf;

fn main() -> Result<()> {
    let mut words = std::env::args_os().skip(1);
    let (capture, reading) = words.next().zip(words.next()).context("usage: score CAPTURE READING [--json]")?;
    let (capture, json) = (PathBuf::from(capture), words.any(|w| w == "--json"));
    let truth = Truth::read(&capture)?;
    let maps = ReadMaps::read(&PathBuf::from(reading))?;
    let (width, height) = image::image_dimensions(capture.join("panel.jpg"))?;
    let score = score(&maps, &truth, width as usize, height as usize)?;
    if json {
        println!("{}", serde_json::to_string_pretty(&score)?);
    } else {
        print_score(&score);
    }
    Ok(())
}

fn print_score(s: &Score) {
    println!(
        "error µm     p50 {:.2}  p95 {:.2}  max {:.1}  bias {:.2}  sound p95 {:.2}   ({} cells)",
        s.error_p50_um, s.error_p95_um, s.error_max_um, s.bias_um, s.sound_p95_um, s.cells
    );
    println!("within 2σ    {:.1} %  (median σ {:.2} µm)", s.within_two_sigma * 100.0, s.sigma_p50_um);
    println!("read         {:.1} % of {:.0} cm²", s.read_share * 100.0, s.readable_cm2);
    println!("tags         {:.3} mm rms", s.tag_rms_mm);
    for d in &s.dents {
        let size = d.true_um.abs();
        let part = d.error_um.map(|e| format!("{:+.2} µm ({:+.2} %)", e, 100.0 * e.abs() / size));
        println!(
            "dent         at {:.0},{:.0}: true {:.1}  read {:?}  spot {:?}  error {}",
            d.x_mm,
            d.y_mm,
            d.true_um,
            d.read_um,
            d.spot_um,
            part.unwrap_or_else(|| "not read".into())
        );
    }
    for f in &s.false_spots {
        println!("FALSE SPOT   {:.1} µm at {:.1},{:.1} (reading's frame)", f.height_mm * 1e3, f.x_mm, f.y_mm);
    }
}
