//! The evidence pack: counts, photos with their hashes, maps before and after.

use super::block::Block;
use super::order::panel;
use super::set::Made;
use crate::{Damage, ReportError};
use std::collections::BTreeMap;

/// Hexadecimal digits of a hash between two spaces, so that it can be read aloud and broken over lines.
const GROUP: usize = 16;

pub(crate) fn evidence(made: &Made) -> Result<Vec<Block>, ReportError> {
    let mut blocks = vec![Block::Overview];
    blocks.extend(counts(made)?);
    blocks.push(Block::Damages);
    blocks.extend(photos(made)?);
    blocks.push(Block::Methods);
    Ok(blocks)
}

/// Dents by panel, with the span of their sizes and depths.
fn counts(made: &Made) -> Result<Vec<Block>, ReportError> {
    let (words, format) = (&made.with.words, &made.with.format);
    let mut of_panel: BTreeMap<usize, (&str, Vec<&Damage>)> = BTreeMap::new();
    let damages = &made.data.job.damages;
    for damage in damages {
        let first = damages.iter().position(|one| one.panel == damage.panel).unwrap_or_default();
        of_panel.entry(first).or_insert((damage.panel.as_str(), vec![])).1.push(damage);
    }
    let row = |name: String, of: &[&Damage]| {
        let rows: Vec<_> = of.iter().flat_map(|damage| &damage.dents).collect();
        let count: u64 = rows.iter().map(|row| u64::from(row.dent.count)).sum();
        let span = |values: Vec<f64>, write: &dyn Fn(f64) -> String| {
            let (low, high) =
                (values.iter().copied().fold(f64::INFINITY, f64::min), values.iter().copied().fold(0.0, f64::max));
            if values.is_empty() { "–".to_owned() } else { format!("{}–{}", write(low), write(high)) }
        };
        let sizes = span(rows.iter().map(|row| row.dent.length_mm).collect(), &|mm| format.across(mm));
        let depths = span(rows.iter().map(|row| row.dent.depth_mm).collect(), &|mm| format.depth(mm, None));
        vec![name, format.number(count as f64, 0), sizes, depths]
    };
    if of_panel.is_empty() {
        return Ok(vec![]);
    }
    let mut rows: Vec<Vec<String>> = of_panel.values().map(|(code, of)| row(panel(made, code), of)).collect();
    if rows.len() > 1 {
        rows.push(row(words.say("evidence-all")?, &damages.iter().collect::<Vec<_>>()));
    }
    let unit = [("unit", format.length_unit())];
    Ok(vec![
        Block::section(words.say("evidence-counts")?),
        Block::Table {
            head: vec![
                words.say("evidence-panel")?,
                words.say("evidence-dents")?,
                words.fill("evidence-sizes", &unit)?,
                words.fill("evidence-depths", &unit)?,
            ],
            numbers: vec![false, true, true, true],
            rows,
        },
    ])
}

fn photos(made: &Made) -> Result<Vec<Block>, ReportError> {
    let words = &made.with.words;
    let shown = made
        .data
        .job
        .damages
        .iter()
        .enumerate()
        .flat_map(|(index, damage)| damage.photos.iter().map(move |photo| (index + 1, photo)));
    let hash = |name: &str| {
        made.data.hashes.iter().find(|(of, _)| of == name).map_or("–".to_owned(), |(_, hash)| grouped(hash))
    };
    let rows: Vec<Vec<String>> =
        shown.map(|(number, photo)| vec![number.to_string(), photo.caption.clone(), hash(&photo.image)]).collect();
    if rows.is_empty() {
        return Ok(vec![]);
    }
    Ok(vec![
        Block::section(words.say("evidence-photos")?),
        Block::Table {
            head: vec![words.say("dent-number")?, words.say("evidence-photo")?, words.say("evidence-hash")?],
            numbers: vec![true, false, false],
            rows,
        },
        Block::small(words.say("evidence-hash-text")?),
    ])
}

fn grouped(hash: &str) -> String {
    let digits: Vec<char> = hash.chars().collect();
    digits.chunks(GROUP).map(|group| group.iter().collect::<String>()).collect::<Vec<_>>().join(" ")
}
