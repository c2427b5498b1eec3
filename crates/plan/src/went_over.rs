//! A round that made it worse: the sheet gave way, as an oil can does, or the hand went far over. Then the work stops,
//! since what the planner takes the sheet for has failed, and going on drives it from one side to the other.

use crate::verdict::Reason;

/// More stands out by more than this, mm, about a third of a panel's thickness: what a crown that rises beside a low, or a
/// reading, may not do.
const MORE_MM: f64 = 0.2;
/// And by more than this share of what stood out.
const MORE: f64 = 0.5;

/// Why to stop after a round, from the largest residual before and after it, mm; none where it did no harm.
#[must_use]
pub fn went_over(before_mm: f64, after_mm: f64) -> Option<Reason> {
    let more = after_mm - before_mm;
    (more > MORE_MM && more > MORE * before_mm).then_some(Reason::WentOver { before_mm, after_mm })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sheet_that_went_to_the_other_side_stops_the_work_and_a_raised_crown_does_not() {
        assert_eq!(went_over(0.029, 0.434), Some(Reason::WentOver { before_mm: 0.029, after_mm: 0.434 }));
        assert!(went_over(0.5, 1.2).is_some());
        assert!(went_over(0.02, 0.15).is_none() && went_over(2.0, 2.4).is_none() && went_over(0.4, 0.1).is_none());
    }
}
