//! After the work: certificate of finish, warranty on workmanship.

use super::block::Block;
use super::order::panel;
use super::set::{Made, signature};
use crate::{Damage, ReportError, Verdict};

type Blocks = Result<Vec<Block>, ReportError>;

pub(crate) fn certificate(made: &Made) -> Blocks {
    let words = &made.with.words;
    let open: Vec<String> =
        made.data.job.damages.iter().filter(|one| not_proved(one)).map(|one| panel(made, &one.panel)).collect();
    let end = match open.as_slice() {
        [] => words.say("certificate-done")?,
        panels => words.fill("certificate-open", &[("panels", &panels.join(", "))])?,
    };
    Ok(vec![
        Block::text(end),
        Block::text(words.say("certificate-text")?),
        Block::Overview,
        Block::small(words.say("certificate-limits")?),
        signature(made, "sign-shop")?,
        Block::Methods,
    ])
}

/// Whether the last reading does not show that the finish limit is met.
fn not_proved(damage: &Damage) -> bool {
    damage.readings.last().is_some_and(|reading| reading.finish.verdict != Verdict::Done)
}

pub(crate) fn warranty(made: &Made) -> Blocks {
    let (words, data) = (&made.with.words, made.data);
    let months = made.with.format.number(f64::from(data.country.warranty.months), 0);
    let day = made.date(data.job.date)?;
    let with = [("shop", data.job.shop.name.as_str()), ("months", &months), ("date", &day)];
    let count = |damage: &Damage| damage.dents.iter().map(|row| row.dent.count).sum::<u32>();
    let places = data.job.damages.iter().enumerate().map(|(index, damage)| {
        let dents = made.with.format.number(f64::from(count(damage)), 0);
        vec![(index + 1).to_string(), panel(made, &damage.panel), dents]
    });
    let mut blocks = vec![
        Block::text(words.fill("warranty-text", &with)?),
        Block::text(words.say("warranty-not")?),
        Block::text(words.say("warranty-rights")?),
    ];
    blocks.extend(data.country.lines(data.job.language).warranty.iter().map(Block::text));
    blocks.push(Block::section(words.say("warranty-places")?));
    blocks.push(Block::Table {
        head: vec![words.say("dent-number")?, words.say("evidence-panel")?, words.say("evidence-dents")?],
        numbers: vec![true, false, true],
        rows: places.collect(),
    });
    blocks.push(signature(made, "sign-shop")?);
    Ok(blocks)
}
