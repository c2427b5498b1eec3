//! Renders a named recipe, a recipe file, or a `truth.json`: `render RECIPE OUT_DIR [--small N]`, `render --list`.

use anyhow::{Context, Result, bail};
use dentwright_scene::{Recipe, recipes};
use std::path::Path;
use std::time::Instant;

fn main() -> Result<()> {
    let words: Vec<String> = std::env::args().skip(1).collect();
    if words.iter().any(|w| w == "--list") {
        for (name, text) in recipes::ALL {
            println!("{name:22} {}", Recipe::parse(text)?.about);
        }
        return Ok(());
    }
    let [name, out, rest @ ..] = words.as_slice() else { bail!("usage: render RECIPE OUT_DIR [--small N] | --list") };
    let mut recipe = load(name)?;
    if let [_, divisor] = rest {
        recipe = recipe.shrunk(divisor.parse().context("--small takes a whole number")?);
    }
    let start = Instant::now();
    let capture = recipe.render()?;
    let rendered = start.elapsed();
    capture.write(Path::new(out))?;
    println!(
        "{name}: {} photos rendered in {:.2} s, {:.2} s with writing",
        capture.photos.len(),
        rendered.as_secs_f64(),
        start.elapsed().as_secs_f64()
    );
    Ok(())
}

fn load(name: &str) -> Result<Recipe> {
    if let Some(recipe) = recipes::named(name) {
        return Ok(recipe);
    }
    let text = std::fs::read_to_string(name).with_context(|| format!("no recipe and no file {name}; see --list"))?;
    if name.ends_with(".json") {
        let scene = serde_json::from_str(&text)?;
        let (photos, traps) = Default::default();
        return Ok(Recipe { about: name.into(), scene, photos, traps });
    }
    Ok(Recipe::parse(&text)?)
}
