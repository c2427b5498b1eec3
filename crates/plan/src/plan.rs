//! The plan: verdict, rounds of moves in order, several of them foretold, and where it parts from the trade.

use crate::ahead::Ahead;
use crate::custom::Departure;
use crate::hand::Hand;
use crate::inner_side::{Flawed, InnerSide};
use crate::model::{Known, Model, largest};
use crate::placing::Placing;
use crate::planned::Planned;
use crate::propose::ProposeSettings;
use crate::tool::Rack;
use crate::tooling::{Reachable, Tooling};
use crate::verdict::{Can, CanBeDone, Facts, Reason, can_be_done};
use crate::went_over::went_over;
use dentwright_sheet::{GlueRow, NotWorked};
use dentwright_surface::{Map, average};
use serde::{Deserialize, Serialize};

/// A round that takes away less than this share of what is left is the last one foretold; a later one that takes away nothing
/// is not.
const STANDS_STILL: f64 = 0.05;

/// What is behind a panel as it was drawn.
#[derive(Debug, Clone)]
pub struct Drawn {
    /// The drawing.
    pub side: InnerSide,
    /// How the frame in question lies in the drawing's.
    pub lies: Placing,
}

/// What a plan is asked from. Places are in the patch's frame.
pub struct Asked<'a> {
    /// Deviation measured, mm.
    pub deviation: &'a Map,
    /// What is known of the sheet.
    pub known: &'a Known,
    /// The sheet as it was taken to be so far; none at the first reading.
    pub model: Option<Model>,
    /// The hand.
    pub hand: &'a Hand,
    /// What the technician sets.
    pub settings: ProposeSettings,
    /// What is no matter of the metal; what stands in the way is found here.
    pub facts: Facts,
    /// What is behind the panel; none where it was not drawn.
    pub behind: Option<&'a Drawn>,
    /// The shop's tools.
    pub rack: &'a Rack,
    /// Glue on file; none where none is used.
    pub glue: Option<&'a GlueRow>,
    /// Largest residual before and after the last round, mm; none where none was made.
    pub last_round_mm: Option<[f64; 2]>,
    /// Rounds foretold at most.
    pub rounds: usize,
}

/// A move of a round with what it is made with.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Placed {
    /// The move.
    #[serde(flatten)]
    pub planned: Planned,
    /// What it is made with.
    pub tooling: Tooling,
}

/// Why to stop after a round.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum ReadAgain {
    /// What comes next hangs on what these moves leave.
    DoubtGrows,
    /// It should be level: find out whether it is done.
    ShouldBeLevel,
}

/// Moves between two readings.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Round {
    /// Moves in order.
    pub moves: Vec<Placed>,
    /// Largest residual before it, mm.
    pub before_mm: f64,
    /// Largest residual expected after it, mm.
    pub expected_mm: f64,
    /// One-sigma doubt of that, this round's and those before it, mm.
    pub sigma_mm: f64,
    /// Whether full solves prove every move; later rounds are foretold by quick answers.
    pub proved: bool,
    /// Moves left out because the sheet would pop on the way, or nothing would stay.
    pub left_out: usize,
    /// Why to read again after it.
    pub read_again: ReadAgain,
}

/// What a master would tell the apprentice. Every number is an estimate.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema), schema(as = RepairPlan))]
pub struct Plan {
    /// Whether it can be done, and why not.
    pub verdict: CanBeDone,
    /// Whether it is level already.
    pub level: bool,
    /// Rounds; the first is to be made, the others are foretold and will change with the next reading.
    pub rounds: Vec<Round>,
    /// Where the first round parts from what the trade does as a rule.
    pub departures: Vec<Departure>,
    /// Lows that neither a bar nor glue reaches, mm.
    pub unreached_mm: Vec<[f64; 2]>,
    /// Gain of the hand and share of the sheet, each with one sigma.
    pub hand: [[f64; 2]; 2],
    /// Share of the patch that was not read and is bridged.
    pub bridged: f64,
    /// How far the computed sheet is off what was read, root mean square over the damage, mm.
    pub misfit_mm: f64,
}

impl Plan {
    /// Brings its places to another frame.
    pub fn carry(&mut self, to: &Placing) {
        let moves = self.rounds.iter_mut().flat_map(|round| &mut round.moves);
        moves.for_each(|placed| placed.planned.at_mm = to.carry(placed.planned.at_mm));
        self.unreached_mm.iter_mut().for_each(|place| *place = to.carry(*place));
        self.departures.iter_mut().for_each(|one| one.carry(to));
    }
}

/// No plan can be had.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum NotPlanned {
    /// The sheet cannot be worked into what was read.
    #[error(transparent)]
    Sheet(#[from] NotWorked),
    /// The drawing of what is behind cannot be used.
    #[error(transparent)]
    Drawing(#[from] Flawed),
}

/// Where not even a copy of the sheet can be had.
fn not_computed() -> CanBeDone {
    CanBeDone { can: Can::Yes, reasons: vec![Reason::NotComputed] }
}

/// Makes the plan, and hands back the sheet it goes by; `go_on` hears the share done and may stop it.
///
/// # Errors
/// Where the sheet cannot be worked into what was read, or the drawing cannot be used.
pub fn plan(mut asked: Asked, go_on: &dyn Fn(f64) -> bool) -> Result<(Plan, Option<Model>), NotPlanned> {
    let reachable = Reachable::new(asked.behind, asked.rack)?;
    let smooth = average(asked.deviation, asked.settings.average_mm);
    let mean = asked.hand.mean();
    let sigma = asked.hand.sigma();
    let mut made = Plan {
        verdict: CanBeDone { can: Can::Yes, reasons: Vec::new() },
        level: largest(&smooth) <= asked.settings.limit_mm,
        rounds: Vec::new(),
        departures: Vec::new(),
        unreached_mm: Vec::new(),
        hand: [[mean[0], sigma[0]], [mean[1], sigma[1]]],
        bridged: 1.0 - asked.deviation.read_fraction(),
        misfit_mm: 0.0,
    };
    if made.level {
        return Ok((made, asked.model));
    }
    let first = asked.model.take();
    let mut model = match first {
        Some(model) => model,
        None => Model::from_reading(asked.deviation, asked.known, &|s| go_on(0.3 * s))?,
    };
    made.misfit_mm = model.misfit_mm;
    asked.facts.blocked = lowest(&smooth).and_then(|at| reachable.blocked(at));
    let given = model.again().map(|panel| Model { known: model.known.clone(), panel, misfit_mm: model.misfit_mm });
    let mut ahead = Ahead::of(asked.deviation);
    let judge = || given.as_ref().map(|model| can_be_done(model, &asked.settings.paint, &asked.facts));
    let mut of_first = made.clone();
    let first_round = || ahead.round(&mut model, &asked, &reachable, true, &mut of_first);
    let (verdict, mut found) = rayon::join(judge, first_round);
    made = Plan { verdict: verdict.unwrap_or_else(not_computed), ..of_first };
    if let Some(over) = asked.last_round_mm.and_then(|[before, after]| went_over(before, after)) {
        made.verdict = CanBeDone { can: Can::No, reasons: [vec![over], made.verdict.reasons].concat() };
    }
    for number in 1..=asked.rounds {
        if !go_on(0.3 + 0.7 * number as f64 / asked.rounds as f64) {
            return Err(NotWorked::Cancelled.into());
        }
        let Some(round) = found.take() else { break };
        let stands_still = round.expected_mm > (1.0 - STANDS_STILL) * round.before_mm;
        if number > 1 && round.expected_mm >= round.before_mm {
            break;
        }
        let level = round.expected_mm <= asked.settings.limit_mm;
        made.rounds.push(round);
        if stands_still || level || number == asked.rounds {
            break;
        }
        found = ahead.round(&mut model, &asked, &reachable, false, &mut made);
    }
    Ok((made, given))
}

fn lowest(map: &Map) -> Option<[f64; 2]> {
    let read = (0..map.grid.len()).filter(|i| map.values[*i].is_finite());
    let i = read.min_by(|a, b| map.values[*a].total_cmp(&map.values[*b]))?;
    let (x, y) = map.grid.position(i);
    Some([x, y])
}
