//! Rehearsals as the API shows them.

use crate::rehearsal_work::of_json;
use crate::trouble::Answer;
use dentwright_flow::GridFacts;
use dentwright_plan::{Claim, Level, Made, Rehearsal, Score};
use dentwright_sheet::{Kind, Tip};
use dentwright_store::StoredRehearsal;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

/// A level, as a learner may know it.
#[derive(Debug, Serialize, ToSchema)]
pub struct LevelJson {
    pub name: String,
    /// Metal on file.
    pub metal: String,
    pub thickness_mm: f64,
    pub temperature_c: f64,
    /// What counts as done, µm.
    pub finish_um: f64,
    /// Whether a body line runs over the panel.
    pub body_line: bool,
}

/// A rehearsal to begin.
#[derive(Debug, Deserialize, ToSchema)]
pub struct NewRehearsalJson {
    /// Who learns.
    pub learner: String,
    pub level: String,
    /// The same seed brings the same panel; left out for a new one.
    #[serde(default)]
    pub seed: Option<u32>,
}

/// A rehearsal.
#[derive(Debug, Serialize, ToSchema)]
pub struct RehearsalJson {
    pub id: Uuid,
    pub learner: String,
    pub level: LevelJson,
    pub seed: u64,
    pub temperature_c: f64,
    pub grid: GridFacts,
    /// Intended height, row by row, mm.
    pub intended_mm: Vec<f32>,
    /// Deviation now, mm.
    pub deviation_mm: Vec<f32>,
    pub made: Vec<Made>,
    pub claims: Vec<Claim>,
    /// None before the end.
    #[schema(required)]
    pub score: Option<Score>,
}

/// An ended rehearsal, a line of a learner's sheet.
#[derive(Debug, Serialize, ToSchema)]
pub struct RehearsalRow {
    pub id: Uuid,
    pub learner: String,
    pub level: String,
    pub ended: String,
    pub score: Score,
}

/// A tip that leans on the sheet.
#[derive(Debug, Deserialize, ToSchema)]
pub struct LeanJson {
    pub kind: Kind,
    pub x_mm: f64,
    pub y_mm: f64,
    pub tip: Tip,
    /// Lift of the place, mm.
    pub lift_mm: f64,
}

/// Change of the panel's height.
#[derive(Debug, Serialize, ToSchema)]
pub struct ChangedJson {
    /// Row by row, mm; none where there is no answer.
    #[schema(required)]
    pub change_mm: Option<Vec<f32>>,
}

/// A move made, and how the panel stands.
#[derive(Debug, Serialize, ToSchema)]
pub struct MadeJson {
    pub made: Made,
    /// Row by row, mm.
    pub deviation_mm: Vec<f32>,
}

/// What was read off the lines, and how the learner stood.
#[derive(Debug, Deserialize, ToSchema)]
pub struct ClaimsJson {
    pub claims: Vec<Claim>,
    /// From the panel to the board, mm.
    pub board_mm: f64,
    /// From the panel to the eye, mm.
    pub eye_mm: f64,
    /// Which way is across the lines, radians from the panel's x.
    pub across_rad: f64,
}

/// What became of one claim.
#[derive(Debug, Serialize, ToSchema)]
pub struct ClaimedJson {
    pub claim: Claim,
    pub right: bool,
    /// Width of the lines there against lines elsewhere.
    pub width: f64,
    /// Whether they are upside down there.
    pub turned: bool,
}

/// The panel's temperature.
#[derive(Debug, Deserialize, ToSchema)]
pub struct WarmJson {
    pub temperature_c: f64,
}

/// A level, told.
pub fn told_level(level: Level) -> LevelJson {
    LevelJson {
        name: level.name,
        metal: level.metal,
        thickness_mm: level.thickness_mm,
        temperature_c: level.temperature_c,
        finish_um: level.finish_um,
        body_line: level.line.is_some(),
    }
}

/// A rehearsal, told.
pub fn told(stored: &StoredRehearsal, play: &Rehearsal) -> Answer<RehearsalJson> {
    let grid = Rehearsal::grid();
    Ok(RehearsalJson {
        id: stored.id,
        learner: stored.learner.clone(),
        level: told_level(play.level.clone()),
        seed: play.seed,
        temperature_c: play.temperature_c,
        grid: GridFacts { x0_mm: grid.x0_mm, y0_mm: grid.y0_mm, step_mm: grid.step_mm, nx: grid.nx, ny: grid.ny },
        intended_mm: play.intended().values,
        deviation_mm: play.deviation().values,
        made: play.made.clone(),
        claims: play.claims.clone(),
        score: stored.score.clone().map(of_json).transpose()?,
    })
}
