//! Cells of a hail table: records of a CSV, brackets, sizes, prices.

use crate::TableError;
use rust_decimal::Decimal;

/// What may part columns, the likeliest first.
const PARTED_BY: [char; 4] = [';', '\t', ',', '|'];
/// Millimetres in an inch.
const INCH_MM: f64 = 25.4;

/// Records with the line each begins on; empty lines are left out.
pub(crate) fn records(text: &str) -> Result<Vec<(usize, Vec<String>)>, TableError> {
    let first = text.lines().find(|line| !line.trim().is_empty()).unwrap_or_default();
    let parted = |by: &char| first.matches(*by).count();
    let by = PARTED_BY.into_iter().rev().max_by_key(parted).unwrap_or(';');
    let (mut records, mut cells, mut cell) = (Vec::new(), Vec::new(), String::new());
    let (mut line, mut begun, mut quoted) = (1, 1, None);
    let mut letters = text.chars().peekable();
    while let Some(letter) = letters.next() {
        match letter {
            '"' if quoted.is_some() && letters.peek() == Some(&'"') => {
                letters.next();
                cell.push('"');
            }
            '"' if quoted.is_some() => quoted = None,
            '"' if cell.trim().is_empty() => quoted = Some(line),
            _ if letter == by && quoted.is_none() => cells.push(std::mem::take(&mut cell)),
            '\n' if quoted.is_none() => {
                cells.push(std::mem::take(&mut cell));
                records.push((begun, std::mem::take(&mut cells)));
                line += 1;
                begun = line;
            }
            _ => {
                line += usize::from(letter == '\n');
                cell.push(letter);
            }
        }
    }
    if let Some(row) = quoted {
        return Err(TableError::Quotation { row });
    }
    cells.push(cell);
    records.push((begun, cells));
    let trimmed =
        |(line, cells): (usize, Vec<String>)| (line, cells.iter().map(|cell| cell.trim().to_owned()).collect());
    let empty = |(_, cells): &(usize, Vec<String>)| cells.iter().all(String::is_empty);
    Ok(records.into_iter().map(trimmed).filter(|record| !empty(record)).collect())
}

/// A bracket of the count: `1-5`, `6`, `201+`, `>200`, `≤5`.
pub(crate) fn bracket(text: &str) -> Option<(u64, Option<u64>)> {
    let numbers: Vec<u64> = runs(text).map(str::parse).collect::<Result<_, _>>().ok()?;
    let words: String = text.chars().filter(|c| !c.is_ascii_digit() && !c.is_whitespace()).collect();
    match (numbers.as_slice(), words.to_lowercase().as_str()) {
        ([from, to], "-" | "–" | "—" | ".." | "..." | "…" | "to" | "bis" | "à" | "a") => {
            Some((*from, Some(*to)))
        }
        ([one], "") => Some((*one, Some(*one))),
        ([from], "+" | ">=" | "≥" | "from" | "ab") => Some((*from, None)),
        ([before], ">" | "over" | "über") => Some((before.checked_add(1)?, None)),
        ([to], "<=" | "≤" | "upto" | "bis") => Some((1, Some(*to))),
        _ => None,
    }
}

fn runs(text: &str) -> impl Iterator<Item = &str> {
    text.split(|c: char| !c.is_ascii_digit()).filter(|run| !run.is_empty())
}

/// A size: `20`, `20 mm`, `≤ 20,5 mm`, `0.75 in`; open at the top as `>20`, `over 20 mm`, `20+`.
#[allow(clippy::option_option, reason = "no size, an open one, a limit")]
pub(crate) fn size(text: &str) -> Option<Option<f64>> {
    let text = text.to_lowercase();
    let is_figure = |c: char| c.is_ascii_digit() || c == '.' || c == ',';
    let figures: String = text.chars().filter(|c| is_figure(*c)).collect();
    let words: String = text.chars().filter(|c| !is_figure(*c) && !c.is_whitespace()).collect();
    let (inch, words) = match words.strip_suffix("inch").or(words.strip_suffix("in")).or(words.strip_suffix('"')) {
        Some(words) => (true, words),
        None => (false, words.strip_suffix("mm").unwrap_or(&words)),
    };
    let value: f64 = figures.replace(',', ".").parse().ok()?;
    let mm = if inch { value * INCH_MM } else { value };
    match words {
        "" | "<=" | "≤" | "<" | "upto" | "bis" => Some(Some(mm)),
        ">" | "over" | "über" | "+" => Some(None),
        _ => None,
    }
}

/// Which sign parts the decimals in a file, as far as its own cells show.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Decimals {
    Point,
    Comma,
    Unknown,
}

/// Why a cell is no price.
pub(crate) enum PriceFault {
    Missing,
    Wrong,
    Unclear,
}

impl PriceFault {
    pub fn at(&self, row: usize, column: &str, cell: &str) -> TableError {
        let (column, found) = (column.to_owned(), cell.to_owned());
        match self {
            Self::Missing => TableError::Missing { row, column },
            Self::Wrong => TableError::Price { row, column, found },
            Self::Unclear => TableError::Unclear { row, column, found },
        }
    }
}

impl Decimals {
    /// The first cell that leaves no choice decides; one that decides otherwise is then no price.
    pub fn of<'a>(cells: impl Iterator<Item = &'a String>) -> Self {
        cells.map(|cell| Self::of_cell(cell)).find(|found| *found != Self::Unknown).unwrap_or(Self::Unknown)
    }

    fn of_cell(cell: &str) -> Self {
        let figures = bare(cell);
        let (points, commas) = (figures.matches('.').count(), figures.matches(',').count());
        let after = figures.rsplit(['.', ',']).next().map_or(0, str::len);
        match (points, commas) {
            (0, 0) => Self::Unknown,
            (_, 0) if points > 1 => Self::Comma,
            (0, _) if commas > 1 => Self::Point,
            (1, 0) if after != 3 => Self::Point,
            (0, 1) if after != 3 => Self::Comma,
            (1, 0) | (0, 1) => Self::Unknown,
            _ if figures.rfind('.') > figures.rfind(',') => Self::Point,
            _ => Self::Comma,
        }
    }

    pub fn price(self, cell: &str) -> Result<Decimal, PriceFault> {
        let figures = bare(cell);
        if figures.is_empty() {
            return Err(if cell.trim().is_empty() { PriceFault::Missing } else { PriceFault::Wrong });
        }
        let (point, thousands) = match self {
            Self::Point => ('.', ','),
            Self::Comma => (',', '.'),
            Self::Unknown if figures.contains(['.', ',']) => return Err(PriceFault::Unclear),
            Self::Unknown => ('.', ','),
        };
        let (whole, parts) = figures.split_once(point).unwrap_or((&figures, ""));
        let mut groups = whole.split(thousands).skip(1);
        if parts.contains(thousands) || groups.any(|group| group.len() != 3) {
            return Err(PriceFault::Wrong);
        }
        let plain = format!("{}.{parts}", whole.replace(thousands, ""));
        let plain = plain.trim_end_matches('.');
        if !plain.starts_with(|c: char| c.is_ascii_digit()) {
            return Err(PriceFault::Wrong);
        }
        plain.parse().map_err(|_| PriceFault::Wrong)
    }
}

/// A cell without currency signs, spaces and apostrophes.
fn bare(cell: &str) -> String {
    let cell = cell.trim().trim_matches(|c| matches!(c, '€' | '$' | '£' | '¥'));
    cell.chars().filter(|c| !c.is_whitespace() && !matches!(c, '\'' | '’')).collect()
}
