//! A door of known shape rendered into photos, and read from the photos alone.

use dentwright_flow::{ReadSettings, read};
use dentwright_scene::recipes;
use std::sync::atomic::AtomicBool;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let folder = tempfile::tempdir()?;
    let recipe = recipes::named("demo_door_before").ok_or("no such recipe")?;
    let dents: Vec<f64> = recipe.scene.dents.iter().map(|d| d.depth).collect();
    recipe.render()?.write_photos(folder.path())?;

    let progress = |p: dentwright_flow::Progress| println!("{:3.0} % {}", p.done * 100.0, p.stage.name());
    let reading = read(folder.path(), &ReadSettings::default(), &progress, &AtomicBool::new(false))?;
    let deepest_mm = -reading.spots[0].height_mm;
    let true_mm = dents.iter().copied().fold(0.0, f64::max);
    println!("deepest low {:.1} µm, made {:.1} µm deep", deepest_mm * 1e3, true_mm * 1e3);
    assert!((deepest_mm - true_mm).abs() < 0.015 * true_mm + 0.001);
    Ok(())
}
