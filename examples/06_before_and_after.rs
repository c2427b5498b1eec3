//! The same door before and after the work: what is left, and whether it is done.

use dentwright_flow::{ReadSettings, Reading, read};
use dentwright_scene::recipes;
use std::sync::atomic::AtomicBool;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let before = reading_of("demo_door_before")?;
    let after = reading_of("demo_door_after")?;
    println!("before: {}", before.finish.reason);
    println!("after:  {}", after.finish.reason);
    let deepest_um = |r: &Reading| r.spots.first().map_or(0.0, |s| s.height_mm.abs() * 1e3);
    println!("deepest spot {:.1} µm before, {:.1} µm after", deepest_um(&before), deepest_um(&after));
    assert!(deepest_um(&after) < 0.1 * deepest_um(&before));
    Ok(())
}

fn reading_of(recipe: &str) -> Result<Reading, Box<dyn std::error::Error>> {
    let folder = tempfile::tempdir()?;
    recipes::named(recipe).ok_or("no such recipe")?.render()?.write_photos(folder.path())?;
    Ok(read(folder.path(), &ReadSettings::default(), &|_| {}, &AtomicBool::new(false))?)
}
