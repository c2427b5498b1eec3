//! Small captures as bytes of the fuzz target `fuzz/fuzz_targets/capture.rs`: `fuzz_seed FOLDER`.

use dentwright_scene::{Capture, recipes};
use std::path::PathBuf;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let folder = PathBuf::from(std::env::args().nth(1).ok_or("usage: fuzz_seed FOLDER")?);
    std::fs::create_dir_all(&folder)?;
    for (name, divisor) in [("door", 4), ("slid_sound", 4), ("still_finish", 4), ("door", 16)] {
        let recipe = recipes::named(name).ok_or("no such recipe")?.shrunk(divisor);
        std::fs::write(folder.join(format!("{name}_{divisor}")), seed(&recipe.render()?))?;
    }
    Ok(())
}

/// The panel photo stands for all but the set-up photo.
fn seed(capture: &Capture) -> Vec<u8> {
    let photo = |file: &str| capture.photos.iter().find(|p| p.file == file).map_or(&[][..], |p| &p.jpeg);
    let renamed = |line: &str| match line.strip_prefix("file = ") {
        Some("\"setup.jpg\"") => "file = \"b.png\"\n".to_owned(),
        Some(_) => "file = \"a.jpg\"\n".to_owned(),
        None => format!("{line}\n"),
    };
    let toml: String = capture.toml.lines().map(renamed).collect();
    let (first, second) = (photo("panel.jpg"), photo("setup.jpg"));
    let mut bytes = Vec::new();
    bytes.extend((toml.len() as u32).to_le_bytes());
    bytes.extend((first.len() as u32).to_le_bytes());
    [toml.as_bytes(), first, second].iter().for_each(|part| bytes.extend_from_slice(part));
    bytes
}
