//! What every sheet carries: its title, and two rulers that tell whether it was printed at true scale.

use super::page::{BOTTOM_MM, Page, SIDE_MM};
use crate::ReportError;
use crate::words::Words;

/// Length of the ruler along the foot of the page, mm.
pub(crate) const ACROSS_MM: u32 = 150;
/// Length of the ruler along the left edge, mm.
pub(crate) const UP_MM: u32 = 100;
/// Distance of the standing ruler from the left edge, mm.
pub(crate) const FROM_LEFT_MM: f64 = 6.0;
/// Distance of the lying ruler from the lower edge, mm.
pub(crate) const FROM_FOOT_MM: f64 = 11.0;
/// Thickness of a ruler's ticks, mm.
const TICK_MM: f64 = 0.15;

/// Puts title, rulers and the words about them on a page.
pub(crate) fn furnish(page: &mut Page, title: &str, words: &Words) -> Result<(), ReportError> {
    page.text(SIDE_MM, 8.0, 11.0, title);
    lying(page, SIDE_MM, page.height - FROM_FOOT_MM);
    standing(page, FROM_LEFT_MM, page.height - BOTTOM_MM);
    let (across, up) = (ACROSS_MM.to_string(), UP_MM.to_string());
    let told = words.fill("print-check", &[("across", &across), ("up", &up)])?;
    page.paragraph(SIDE_MM, page.height - BOTTOM_MM + 4.0, 7.5, page.width - 2.0 * SIDE_MM, told);
    Ok(())
}

fn lying(page: &mut Page, x: f64, y: f64) {
    page.line((x, y), (f64::from(ACROSS_MM), 0.0), TICK_MM, false);
    for mm in 0..=ACROSS_MM {
        let at = x + f64::from(mm);
        page.line((at, y), (0.0, -tick(mm)), TICK_MM, false);
        if mm % 10 == 0 {
            page.text(at - 1.4, y + 1.0, 6.0, mm.to_string());
        }
    }
}

fn standing(page: &mut Page, x: f64, foot: f64) {
    page.line((x, foot), (0.0, -f64::from(UP_MM)), TICK_MM, false);
    for mm in 0..=UP_MM {
        let at = foot - f64::from(mm);
        page.line((x, at), (tick(mm), 0.0), TICK_MM, false);
    }
}

fn tick(mm: u32) -> f64 {
    match mm {
        _ if mm % 10 == 0 => 4.0,
        _ if mm % 5 == 0 => 2.8,
        _ => 1.8,
    }
}
