//! What changed between two quotes, line by line.

use dentwright_price::{Line, LineKind, Quote};
use rust_decimal::Decimal;

/// A line of one quote beside its like in the other.
#[derive(Debug, Clone, PartialEq)]
pub struct LineChange {
    /// The later line, or the earlier one where it has gone.
    pub line: Line,
    /// What it came to; none where it is new.
    pub before: Option<Decimal>,
    /// What it comes to; none where it has gone.
    pub after: Option<Decimal>,
}

impl LineChange {
    /// How much dearer.
    #[must_use]
    pub fn more(&self) -> Decimal {
        self.after.unwrap_or_default() - self.before.unwrap_or_default()
    }
}

/// Lines that differ, in the order of the later quote, then those that have gone. Lines are alike if their
/// kind, text and count are; several alike are taken in order. The changes' sum is that of the nets.
#[must_use]
pub fn changes(before: &Quote, after: &Quote) -> Vec<LineChange> {
    let mut rest: Vec<&Line> = before.lines.iter().collect();
    let mut found = Vec::new();
    for line in &after.lines {
        let same = rest.iter().position(|old| alike(old, line) && old.amount == line.amount);
        let like = same.or_else(|| rest.iter().position(|old| alike(old, line)));
        let old = like.map(|at| rest.remove(at).amount);
        if old != Some(line.amount) {
            found.push(LineChange { line: line.clone(), before: old, after: Some(line.amount) });
        }
    }
    found.extend(rest.into_iter().map(|old| LineChange { line: old.clone(), before: Some(old.amount), after: None }));
    found
}

fn alike(a: &Line, b: &Line) -> bool {
    let same = a.kind == b.kind && a.what == b.what;
    same && (a.kind != LineKind::Dent || a.count == b.count)
}
