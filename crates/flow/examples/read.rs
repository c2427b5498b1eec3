//! Reads a capture folder: `read CAPTURE READING`.

use dentwright_flow::{ReadSettings, read, write_reading};
use std::path::PathBuf;
use std::sync::atomic::AtomicBool;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut words = std::env::args().skip(1).map(PathBuf::from);
    let (capture, out) = words.next().zip(words.next()).ok_or("usage: read CAPTURE READING")?;
    let reading = read(&capture, &ReadSettings::default(), &|_| {}, &AtomicBool::new(false))?;
    write_reading(&reading, &out)?;
    println!("{} spots, {:?}", reading.spots.len(), reading.finish.verdict);
    Ok(())
}
