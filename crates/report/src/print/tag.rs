//! A tag of the family 36h11 as rectangles.

use super::page::Page;
use dentwright_scene::tag::{MODULES, is_white};

/// Side of a tag with one module of white all round, in sides of its black square.
pub(crate) const WITH_WHITE: f64 = 1.25;

/// Draws a tag's black square with its upper left corner at a place.
///
/// White runs are drawn along rows and then along columns, so that no seam between two rectangles shows
/// through where a printer or screen softens edges.
pub(crate) fn draw(page: &mut Page, id: usize, x: f64, y: f64, size_mm: f64) {
    page.fill(x, y, size_mm, size_mm, false);
    let n = MODULES as usize;
    let module = size_mm / n as f64;
    let middle = |k: usize| (k as f64 + 0.5) / n as f64 - 0.5;
    let white = |column: usize, row: usize| is_white(id, middle(column), -middle(row));
    for row in 0..n {
        for (start, length) in runs(|column| white(column, row), n) {
            let (dx, dy) = (start as f64 * module, row as f64 * module);
            page.fill(x + dx, y + dy, length as f64 * module, module, true);
        }
    }
    for column in 0..n {
        for (start, length) in runs(|row| white(column, row), n).filter(|run| run.1 > 1) {
            let (dx, dy) = (column as f64 * module, start as f64 * module);
            page.fill(x + dx, y + dy, module, length as f64 * module, true);
        }
    }
}

/// First and length of each run of true.
fn runs(is: impl Fn(usize) -> bool, n: usize) -> impl Iterator<Item = (usize, usize)> {
    let mut found: Vec<(usize, usize)> = Vec::new();
    for k in (0..n).filter(|k| is(*k)) {
        match found.last_mut() {
            Some((start, length)) if *start + *length == k => *length += 1,
            _ => found.push((k, 1)),
        }
    }
    found.into_iter()
}
