//! What the moves between two readings came to, and the planner's sheet taken on to the later one.

use crate::compare::lay;
use crate::kept::KeptReading;
use crate::plan::{AVERAGE_MM, PlanError};
use crate::planned_sheet::PlannedSheet;
use crate::sheet_patch::piece;
use dentwright_plan::{Hand, MadeMove, NotPlanned, Outcome, Placing, RoundOutcome, Tried, round_outcome};
use dentwright_surface::Map;
use serde::{Deserialize, Serialize};

/// Readings that lie on each other worse than this, mm one sigma, do not tell what a move did.
const LAID_MM: f64 = 1.5;

/// What was done since an earlier reading.
pub struct Worked<'a> {
    /// The earlier reading.
    pub reading: &'a KeptReading,
    /// The planner's sheet as it stood there.
    pub sheet: PlannedSheet,
    /// Moves made since, places in that reading's frame.
    pub made: &'a [MadeMove],
}

/// What moves came to. Places are in the later reading's frame.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CameOf {
    /// The moves.
    pub made: Vec<MadeMove>,
    /// What each was foretold to leave, and left.
    pub moves: Vec<Outcome>,
    /// Largest residual before them, mm.
    #[serde(default)]
    pub stood_out_mm: f64,
    /// Largest residual foretold and its one-sigma doubt, mm.
    pub foretold_mm: [f64; 2],
    /// Largest residual found, mm.
    pub found_mm: f64,
    /// Gain of the hand and share of the sheet, each with one sigma, before and after.
    pub hand_before: [[f64; 2]; 2],
    /// After.
    pub hand_after: [[f64; 2]; 2],
    /// What the hand learned from.
    pub tried: Vec<Tried>,
    /// The hand as it is known now.
    pub hand: Hand,
}

/// An earlier plan's sheet laid on a later reading.
pub(crate) struct Since {
    sheet: PlannedSheet,
    lies: Placing,
    /// The later reading's deviation in the sheet's frame.
    map: Map,
    /// What the moves came to; none where none were noted.
    pub came_of: Option<CameOf>,
}

impl Since {
    /// None where the readings do not lie on each other.
    pub fn of(worked: Worked, reading: &KeptReading, hand: &Hand) -> Option<Self> {
        let Worked { reading: earlier, sheet, made } = worked;
        let laying = lay(earlier, reading).ok()?;
        let on = Placing::of(&laying);
        let lies = sheet.lies.then(&on);
        if laying.place_sigma_at((lies.shift_mm[0], lies.shift_mm[1])) > LAID_MM {
            return None;
        }
        let map = piece(&reading.deviation, &lies, sheet.map.grid);
        let carried = |m: &MadeMove| MadeMove { at_mm: on.carry(m.at_mm), ..*m };
        let came_of = (!made.is_empty()).then(|| {
            let own = |m: &MadeMove| MadeMove { at_mm: sheet.lies.back(m.at_mm), ..*m };
            let own: Vec<MadeMove> = made.iter().map(own).collect();
            let outcome = round_outcome(&sheet.model, &sheet.map, &map, &own, hand, AVERAGE_MM);
            CameOf::of(outcome, made.iter().map(carried).collect(), hand)
        });
        Some(Self { sheet, lies, map, came_of })
    }

    /// Whether a place of the later reading lies well inside the sheet.
    pub fn holds(&self, place: [f64; 2]) -> bool {
        self.sheet.holds(self.lies, place)
    }

    /// The sheet as it stands at the later reading.
    ///
    /// # Errors
    /// Where the caller stopped it.
    pub fn on(self, go_on: &dyn Fn(f64) -> bool) -> Result<PlannedSheet, PlanError> {
        let Self { mut sheet, lies, map, came_of } = self;
        let made = came_of.map(|came| came.tried).unwrap_or_default();
        sheet.model.follow(&made, &map, &|s| go_on(0.3 * s)).map_err(NotPlanned::from)?;
        Ok(PlannedSheet { lies, map, ..sheet })
    }
}

impl CameOf {
    fn of(outcome: RoundOutcome, made: Vec<MadeMove>, hand: &Hand) -> Self {
        let RoundOutcome { moves, stood_out_mm, foretold_mm, found_mm, tried } = outcome;
        let mut after = hand.clone();
        after.learn(&tried);
        let told = |hand: &Hand| {
            let (mean, sigma) = (hand.mean(), hand.sigma());
            [[mean[0], sigma[0]], [mean[1], sigma[1]]]
        };
        let (hand_before, hand_after) = (told(hand), told(&after));
        Self { made, moves, stood_out_mm, foretold_mm, found_mm, hand_before, hand_after, tried, hand: after }
    }
}
