//! Before and during the work: estimate, authorisation, supplement, work order, notice of the right to cancel.

use super::OldMark;
use super::block::Block;
use super::changes::changes;
use super::set::{Made, signature};
use crate::quote_view;
use crate::words::Words;
use crate::{Country, Language, ReportError};
use dentwright_price::{LineKind, Quote};

type Blocks = Result<Vec<Block>, ReportError>;

/// What a customer is told before the work: the same everywhere, then the country's own. No legal advice.
///
/// # Errors
/// When a language file of the program is broken.
///
/// ```
/// use dentwright_report::{Language, consent, country};
/// let told = consent(country("DE").unwrap(), Language::De).unwrap();
/// assert!(told.len() > 6 && told.last().unwrap().contains("BGB"));
/// ```
pub fn consent(country: &Country, language: Language) -> Result<Vec<String>, ReportError> {
    let mut told = general(&Words::new(language)?)?;
    told.extend(country.lines(language).consent.iter().cloned());
    Ok(told)
}

/// The marks of old damage, a line each, then what was written down beside them.
fn old(made: &Made) -> Result<String, ReportError> {
    let line = |mark: &OldMark| {
        let what = made.with.words.say(&format!("old-{}", mark.kind))?;
        let note = if mark.note.is_empty() { String::new() } else { format!(" ({})", mark.note) };
        Ok(format!("{}: {what}{note}", panel(made, &mark.panel)))
    };
    let mut lines = made.data.old.iter().map(line).collect::<Result<Vec<_>, ReportError>>()?;
    lines.extend((!made.data.job.notes.is_empty()).then(|| made.data.job.notes.clone()));
    Ok(lines.join("\n"))
}

fn general(words: &Words) -> Result<Vec<String>, ReportError> {
    let keys = ["paint", "hidden", "result", "glue", "never", "photos"];
    keys.iter().map(|key| words.say(&format!("consent-{key}"))).collect()
}

pub(crate) fn estimate(made: &Made) -> Blocks {
    let mut blocks = vec![Block::Overview, Block::Damages];
    blocks.extend(made.data.job.quote.as_ref().map(|_| Block::Quote));
    blocks.push(Block::Cautions);
    Ok(blocks)
}

pub(crate) fn authorisation(made: &Made) -> Blocks {
    let (words, data) = (&made.with.words, made.data);
    let mut blocks = vec![Block::Overview];
    if let Some(quote) = &data.job.quote {
        blocks.push(Block::Quote);
        let gross = made.money(quote.gross, &quote.currency);
        blocks.push(Block::text(words.fill("authorise-text", &[("shop", &data.job.shop.name), ("gross", &gross)])?));
    }
    if let Some(day) = data.promised {
        blocks.push(Block::Pairs { rows: vec![[words.say("promised")?, made.date(day)?]] });
    }
    blocks.push(Block::section(words.say("consent-title")?));
    blocks.extend(general(words)?.into_iter().map(Block::text));
    let old = old(made)?;
    if !old.is_empty() {
        blocks.push(Block::Boxed { title: words.say("consent-old")?, text: old });
    }
    blocks.extend(data.country.lines(data.job.language).consent.iter().map(Block::text));
    blocks.push(signature(made, "sign-customer")?);
    Ok(blocks)
}

pub(crate) fn supplement(made: &Made) -> Blocks {
    let (words, data) = (&made.with.words, made.data);
    let mut blocks = vec![Block::Boxed { title: words.say("supplement-why")?, text: data.reason.clone() }];
    if let (Some(before), Some(after)) = (&data.before, &data.job.quote) {
        blocks.extend(compared(made, before, after)?);
        blocks.push(Block::Quote);
    }
    blocks.push(Block::text(words.say("supplement-authorise")?));
    blocks.push(signature(made, "sign-customer")?);
    Ok(blocks)
}

fn compared(made: &Made, before: &Quote, after: &Quote) -> Blocks {
    let words = &made.with.words;
    let changed = changes(before, after);
    if changed.is_empty() {
        return Ok(vec![Block::text(words.say("supplement-same")?)]);
    }
    let money = |amount| made.money(amount, &after.currency);
    let row = |one: &super::LineChange| {
        Ok(vec![
            quote_view::what(&one.line, None, made.with)?,
            one.before.map_or_else(|| words.say("supplement-new"), |amount| Ok(money(amount)))?,
            one.after.map_or_else(|| words.say("supplement-gone"), |amount| Ok(money(amount)))?,
            money(one.more()),
        ])
    };
    let head = ["what", "before", "after", "more"].map(|key| words.say(&format!("supplement-{key}")));
    Ok(vec![
        Block::text(words.say("supplement-text")?),
        Block::Table {
            head: head.into_iter().collect::<Result<_, _>>()?,
            numbers: vec![false, true, true, true],
            rows: changed.iter().map(row).collect::<Result<_, ReportError>>()?,
        },
        Block::Sums {
            rows: vec![
                [words.say("supplement-net-before")?, money(before.net)],
                [words.say("supplement-net-after")?, money(after.net)],
                [words.say("supplement-gross-before")?, money(before.gross)],
                [words.say("supplement-gross-after")?, money(after.gross)],
            ],
        },
    ])
}

pub(crate) fn work_order(made: &Made) -> Blocks {
    let (words, data) = (&made.with.words, made.data);
    let ticks = |keys: &[&str]| -> Result<Block, ReportError> {
        Ok(Block::Ticks { rows: keys.iter().map(|key| words.say(key)).collect::<Result<_, _>>()? })
    };
    let mut blocks = Vec::new();
    if let Some(day) = data.promised {
        blocks.push(Block::Pairs { rows: vec![[words.say("promised")?, made.date(day)?]] });
    }
    blocks.push(Block::Overview);
    blocks.push(Block::section(words.say("order-before")?));
    blocks.push(ticks(&["order-wash", "order-old", "order-paint", "order-maker"])?);
    let quoted = data.job.quote.iter().flat_map(|quote| &quote.lines);
    let trim: Vec<String> =
        quoted.filter(|line| line.kind == LineKind::RemoveInstall).map(|line| line.what.clone()).collect();
    if !trim.is_empty() {
        blocks.push(Block::section(words.say("order-trim")?));
        blocks.push(Block::Ticks { rows: trim });
    }
    blocks.push(Block::Cautions);
    blocks.push(Block::Damages);
    blocks.push(Block::section(words.say("order-after")?));
    blocks.push(ticks(&["order-corrosion", "order-refit", "order-photos", "order-walk"])?);
    blocks.push(signature(made, "sign-technician")?);
    Ok(blocks)
}

pub(crate) fn cancellation(made: &Made) -> Blocks {
    let (words, data) = (&made.with.words, made.data);
    let (shop, right) = (&data.job.shop, &data.country.cancellation);
    let contact: Vec<&str> =
        [&shop.phone, &shop.email].into_iter().map(String::as_str).filter(|text| !text.is_empty()).collect();
    let days = made.with.format.number(f64::from(right.days), 0);
    let text = if right.business_days { "cancel-text-business" } else { "cancel-text" };
    let mut blocks = vec![
        Block::text(words.fill(text, &[("days", &days)])?),
        Block::text(words.fill("cancel-how", &[("shop", &shop.name), ("contact", &contact.join(", "))])?),
        Block::text(words.say("cancel-effects")?),
        Block::text(words.say("cancel-begun")?),
        Block::text(words.say("cancel-lost")?),
    ];
    blocks.extend(data.country.lines(data.job.language).cancellation.iter().map(Block::text));
    blocks.push(Block::Ticks { rows: vec![words.say("cancel-begin")?] });
    blocks.push(signature(made, "sign-customer")?);
    blocks.push(Block::section(words.say("cancel-form")?));
    let to = [vec![shop.name.clone()], crate::view::lines(&shop.address), vec![shop.email.clone()]].concat();
    let to: Vec<String> = to.into_iter().filter(|line| !line.is_empty()).collect();
    blocks.push(Block::Pairs {
        rows: vec![
            [words.say("cancel-form-to")?, to.join(", ")],
            [words.say("cancel-form-job")?, format!("{} · {}", data.job.number, data.job.car.title)],
            [words.say("cancel-form-made")?, made.date(data.job.date)?],
            [words.say("cancel-form-name")?, data.job.customer.name.clone()],
            [words.say("cancel-form-address")?, crate::view::lines(&data.job.customer.address).join(", ")],
        ],
    });
    blocks.push(Block::text(words.say("cancel-form-text")?));
    blocks.push(Block::Signature {
        label: format!("{} · {}", words.say("sign-date")?, words.say("sign-customer")?),
        name: String::new(),
        at: String::new(),
        file: None,
        below: String::new(),
    });
    Ok(blocks)
}

/// A panel's name, or its code where there is no word for it.
pub(crate) fn panel(made: &Made, code: &str) -> String {
    made.with.words.find(&format!("panel-{code}")).unwrap_or_else(|| code.to_owned())
}
