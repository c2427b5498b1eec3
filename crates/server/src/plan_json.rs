//! Plans and moves as the app sees them.

use crate::trouble::Trouble;
use dentwright_flow::{CameOf, PlanFile, PlanSettings};
use dentwright_plan::{Act, Facts, MadeMove, Outcome};
use dentwright_store::StoredMove;
use jiff::Timestamp;
use jiff::civil::Date;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

/// What a plan is asked from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct PlanAskedJson {
    /// Place of the spot in the reading's list, from 0; none for the deepest.
    #[serde(default)]
    pub spot: Option<usize>,
    /// Name of the metal on file.
    pub metal: String,
    /// Thickness as measured, mm; none for the metal's likely one.
    #[serde(default)]
    pub thickness_mm: Option<f64>,
    /// Name of the paint on file.
    pub paint: String,
    /// Whether it is aged or a second coat.
    #[serde(default)]
    pub aged: bool,
    /// Name of the glue on file; none where none may be used.
    #[serde(default)]
    pub glue: Option<String>,
    /// Temperature of the panel now, °C.
    pub panel_c: f64,
    /// Warmest the paint may get, °C.
    pub most_c: f64,
    /// A rule of the maker that forbids the repair, in its words.
    #[serde(default)]
    pub makers_rule: Option<String>,
    /// What this repair and a conventional one cost.
    #[serde(default)]
    pub costs: Option<[f64; 2]>,
    /// Who works; none in a shop of one.
    #[serde(default)]
    pub technician: Option<Uuid>,
}

impl PlanAskedJson {
    /// As the planner takes it; rack, hand and drawing are the caller's.
    pub fn settings(&self) -> PlanSettings {
        PlanSettings {
            spot: self.spot,
            metal: self.metal.clone(),
            thickness_mm: self.thickness_mm,
            paint: self.paint.clone(),
            glue: self.glue.clone(),
            panel_c: self.panel_c,
            most_c: self.most_c,
            facts: Facts {
                makers_rule: self.makers_rule.clone().filter(|rule| !rule.trim().is_empty()),
                aged: self.aged,
                costs: self.costs,
                ..Facts::default()
            },
            ..PlanSettings::default()
        }
    }
}

/// How far the work on a plan has come, and its answer.
#[derive(Debug, Serialize, ToSchema)]
pub struct PlanJson {
    pub state: crate::metal::MetalStateJson,
    /// Share done, 0 to 1.
    pub fraction: f64,
    /// Why there is no plan.
    #[schema(required)]
    pub error: Option<Trouble>,
    /// The plan.
    #[schema(required)]
    pub plan: Option<PlanFile>,
    /// As it was asked, else as the damage's last plan was.
    #[schema(required)]
    pub asked: Option<PlanAskedJson>,
    /// Metal on file that stands for what the car's record says.
    pub suggested: &'static str,
    /// What the moves before this reading came to; none where none were noted.
    #[schema(required)]
    pub came_of: Option<CameOfJson>,
}

/// What moves came to.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
pub struct CameOfJson {
    /// Move by move; places in this reading's frame.
    pub moves: Vec<MoveOutcomeJson>,
    /// Largest residual foretold and its one-sigma doubt, mm.
    pub foretold_mm: [f64; 2],
    /// Largest residual found, mm.
    pub found_mm: f64,
    /// Gain of the hand and share of the sheet, each with one sigma, before.
    pub hand_before: [[f64; 2]; 2],
    /// After.
    pub hand_after: [[f64; 2]; 2],
}

/// What a move came to.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
pub struct MoveOutcomeJson {
    /// What was made.
    #[serde(flatten)]
    pub made: MadeMove,
    /// What it was foretold to leave, and left.
    #[serde(flatten)]
    pub outcome: Outcome,
}

impl From<CameOf> for CameOfJson {
    fn from(came: CameOf) -> Self {
        let one = |(made, outcome)| MoveOutcomeJson { made, outcome };
        Self {
            moves: came.made.into_iter().zip(came.moves).map(one).collect(),
            foretold_mm: came.foretold_mm,
            found_mm: came.found_mm,
            hand_before: came.hand_before,
            hand_after: came.hand_after,
        }
    }
}

/// A move that was made; its place is in the reading's frame.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
pub struct MadeMoveJson {
    /// Made where it was noted; noting it twice is noting it once.
    pub id: Uuid,
    pub act: Act,
    pub at_mm: [f64; 2],
    /// Name of the tip; empty where it has none.
    #[serde(default)]
    pub tip: String,
    /// Radius of what touched, mm.
    pub radius_mm: f64,
    /// Lift that was meant, mm.
    pub held_mm: f64,
    pub times: usize,
    /// Whether the plan proposed it.
    #[serde(default)]
    pub planned: bool,
    /// When it was made.
    #[schema(value_type = String)]
    pub made: Timestamp,
    #[serde(default)]
    pub technician: Option<Uuid>,
    /// How warm the paint was made, °C; none where nobody noted it.
    #[serde(default)]
    pub warmed_c: Option<f64>,
}

impl MadeMoveJson {
    /// As the planner takes it.
    pub fn told(&self) -> MadeMove {
        let Self { act, at_mm, radius_mm, held_mm, times, .. } = *self;
        MadeMove { act, at_mm, radius_mm, held_mm, times }
    }

    /// The first thing about it that cannot be.
    pub fn wrong(&self) -> Option<&'static str> {
        let finite = self.at_mm.iter().all(|c| c.abs() < 5000.0);
        match () {
            () if !finite => Some("the place is off the panel"),
            () if !(1.0..=200.0).contains(&self.radius_mm) => Some("a tip has a radius of 1 to 200 mm"),
            () if !(self.held_mm > 0.0 && self.held_mm <= 30.0) => Some("a lift is above 0 and at most 30 mm"),
            () if !(1..=50).contains(&self.times) => Some("a move is made 1 to 50 times"),
            () if self.tip.len() > 80 => Some("the tip's name is too long"),
            () if self.warmed_c.is_some_and(|c| !(-20.0..=150.0).contains(&c)) => Some("the paint is not so warm"),
            () => None,
        }
    }
}

/// A move of a damage.
#[derive(Debug, Serialize, ToSchema)]
pub struct MoveOfDamageJson {
    #[serde(flatten)]
    pub made: MadeMoveJson,
    /// The reading after which it was made.
    pub reading: Uuid,
}

/// The work on a damage.
#[derive(Debug, Serialize, ToSchema)]
pub struct WorkJson {
    /// Moves, oldest first.
    pub moves: Vec<MoveOfDamageJson>,
    /// What is known of the hand: gain, and share of the sheet of a panel nobody touched, each with one sigma.
    pub hand: [[f64; 2]; 2],
    /// Moves it was learned from.
    pub tried: usize,
    /// Day on which it is to be read again.
    #[schema(required, value_type = Option<String>)]
    pub look_again: Option<Date>,
}

/// Day on which a damage is to be read again.
#[derive(Debug, Deserialize, ToSchema)]
pub struct LookAgainJson {
    /// None to call it off.
    #[schema(value_type = Option<String>)]
    pub due: Option<Date>,
}

/// A panel that cools.
#[derive(Debug, Deserialize, ToSchema)]
pub struct CoolingAskedJson {
    /// Name of the metal on file.
    pub metal: String,
    /// Thickness, mm; none for the metal's likely one.
    #[serde(default)]
    pub thickness_mm: Option<f64>,
    /// As it is now, °C.
    pub from_c: f64,
    /// As it shall not fall below, °C.
    pub to_c: f64,
    /// Air about it, °C.
    pub room_c: f64,
}

/// How long a panel stays warm enough.
#[derive(Debug, Serialize, ToSchema)]
pub struct CoolingJson {
    /// Soonest, s; none where it does not fall so far within the hour.
    #[schema(required)]
    pub seconds: Option<f64>,
    /// Likely, s.
    #[schema(required)]
    pub likely: Option<f64>,
}

/// A move out of the record.
pub fn of_stored(stored: StoredMove) -> Result<MoveOfDamageJson, Trouble> {
    let made = serde_json::from_value(stored.what).map_err(|why| Trouble::own("understanding a noted move", why))?;
    Ok(MoveOfDamageJson { made, reading: stored.reading })
}
