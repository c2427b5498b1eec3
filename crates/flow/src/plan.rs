//! From a reading to the next moves: what the last moves came to, the damage, the sheet it lies in, the plan, its places
//! on the photo.

use crate::came_of::{CameOf, Since, Worked};
use crate::kept::KeptReading;
use crate::plan_file::PlanFile;
use crate::planned_sheet::PlannedSheet;
use crate::sheet_patch::{SheetPatch, sheet_patch};
use dentwright_plan::{Asked, Drawn, Facts, Hand, NotPlanned, ProposeSettings, Rack, Tips, plan, starter_rack};
use dentwright_sheet::{GlueRow, MetalRow, PaintRow, glues, metals, paints};

/// What the technician sets.
#[derive(Debug, Clone)]
pub struct PlanSettings {
    /// Place of the damage in the reading's list of spots, from 0; none for the deepest.
    pub spot: Option<usize>,
    /// Name of the metal on file.
    pub metal: String,
    /// Thickness as measured, mm; none for the metal's likely one.
    pub thickness_mm: Option<f64>,
    /// What is behind, and how the reading's frame lies in the drawing's; none where it was not drawn.
    pub behind: Option<Drawn>,
    /// The shop's tools.
    pub rack: Rack,
    /// What is known of the hand.
    pub hand: Hand,
    /// Name of the paint on file.
    pub paint: String,
    /// Name of the glue on file; none where none may be used.
    pub glue: Option<String>,
    /// Temperature of the panel now, °C.
    pub panel_c: f64,
    /// Warmest the paint may get, °C: the lowest limit that applies.
    pub most_c: f64,
    /// Finish limit, mm; none for the reading's own.
    pub limit_mm: Option<f64>,
    /// Moves between two readings at most.
    pub moves: usize,
    /// Rounds foretold at most.
    pub rounds: usize,
    /// A rule of the maker that forbids the repair, age of the paint, costs.
    pub facts: Facts,
}

impl Default for PlanSettings {
    fn default() -> Self {
        Self {
            spot: None,
            metal: "steel_bh180_panel".into(),
            thickness_mm: None,
            behind: None,
            rack: starter_rack(),
            hand: Hand::default(),
            paint: "factory".into(),
            glue: None,
            panel_c: 20.0,
            most_c: 50.0,
            limit_mm: None,
            moves: 3,
            rounds: 3,
            facts: Facts::default(),
        }
    }
}

/// No plan.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum PlanError {
    /// Not on file.
    #[error("no {what} on file is called {name}; there are {}", .known.join(", "))]
    NotOnFile {
        /// `metal`, `paint` or `glue`.
        what: &'static str,
        /// As asked.
        name: String,
        /// What there is.
        known: Vec<String>,
    },
    /// A number out of bounds.
    #[error("{0}")]
    Wrong(&'static str),
    /// The reading lists no such spot.
    #[error("the reading lists {count} lows and highs, number {asked} is none of them")]
    NoSpot {
        /// How many there are.
        count: usize,
        /// As asked, from 1.
        asked: usize,
    },
    /// Heights of unknown scale.
    #[error("the reading's heights are relative only")]
    Relative,
    /// The planner found none.
    #[error(transparent)]
    NotPlanned(#[from] NotPlanned),
}

impl PlanError {
    /// Short stable name.
    #[must_use]
    pub fn code(&self) -> &'static str {
        match self {
            Self::NotOnFile { .. } => "not_on_file",
            Self::Wrong(_) => "value",
            Self::NoSpot { .. } => "no_spot",
            Self::Relative => "relative",
            Self::NotPlanned(_) => "not_planned",
        }
    }

    /// What to do next.
    #[must_use]
    pub fn next(&self) -> &'static str {
        match self {
            Self::NotOnFile { .. } => "Give one of these names.",
            Self::Wrong(_) => "Correct that number.",
            Self::NoSpot { .. } => "Leave the number out to plan for the deepest.",
            Self::Relative => "Plan from a reading of a screen or a slid board.",
            Self::NotPlanned(NotPlanned::Drawing(_)) => "Correct the drawing of what is behind; see docs/reference.md.",
            Self::NotPlanned(_) => "Check metal and thickness; read the damage again from closer.",
        }
    }
}

/// A plan with what it leaves for the next one.
pub struct PlanMade {
    /// The plan.
    pub file: PlanFile,
    /// The planner's sheet; none where there was never anything to plan.
    pub sheet: Option<PlannedSheet>,
    /// What the moves before this reading came to; none where none are known, or the readings do not lie on each other.
    pub came_of: Option<CameOf>,
}

/// Plans the repair of one damage of a reading, going on from what was planned and made before it; `go_on` hears the
/// share done and may stop it.
///
/// # Errors
/// Something is not on file or out of bounds, the reading has no scale, or the sheet cannot be worked into what was read.
pub fn plan_repair(
    reading: &KeptReading,
    settings: &PlanSettings,
    worked: Option<Worked>,
    go_on: &dyn Fn(f64) -> bool,
) -> Result<PlanMade, PlanError> {
    let chosen = Chosen::of(settings)?;
    if reading.file.scale != "absolute" {
        return Err(PlanError::Relative);
    }
    let limit_mm = settings.limit_mm.unwrap_or(reading.file.finish.limit_mm);
    let since = worked.and_then(|worked| Since::of(worked, reading, &settings.hand));
    let came_of = since.as_ref().and_then(|since| since.came_of.clone());
    let Some(spot) = spot(reading, settings)? else {
        let sheet = since.map(|since| since.on(go_on)).transpose()?;
        return Ok(PlanMade { file: PlanFile::level(reading, limit_mm), sheet, came_of });
    };
    let place = [reading.file.spots[spot].spot.x_mm, reading.file.spots[spot].spot.y_mm];
    let hand = came_of.as_ref().map_or_else(|| settings.hand.clone(), |came| came.hand.clone());
    let sheet = since.filter(|since| since.holds(place)).map(|since| since.on(go_on)).transpose()?;
    let (patch, model, hand) = match sheet.map(PlannedSheet::into_patch) {
        Some((patch, model)) => (patch, Some(model), hand),
        // what was learned of places lies in the frame of another sheet
        None => (sheet_patch(reading, spot, &chosen.metal, chosen.thickness_mm), None, hand.at_another_sheet()),
    };
    let cell_mm = 2.0 * patch.known.half_mm / patch.known.cells as f64;
    let (tips, fine) = Tips::of(&settings.rack, cell_mm);
    let behind = settings.behind.as_ref();
    let behind = behind.map(|drawn| Drawn { side: drawn.side.clone(), lies: patch.lies.then(&drawn.lies) });
    let asked = Asked {
        deviation: &patch.deviation,
        known: &patch.known,
        model,
        hand: &hand,
        settings: chosen.propose(settings, tips, limit_mm),
        facts: Facts { glue: chosen.glue.is_some(), most_c: Some(settings.most_c), ..settings.facts.clone() },
        behind: behind.as_ref(),
        rack: &settings.rack,
        glue: chosen.glue.as_ref(),
        last_round_mm: came_of.as_ref().map(|came| [came.stood_out_mm, came.found_mm]),
        rounds: settings.rounds,
    };
    let (mut made, model) = plan(asked, go_on)?;
    made.carry(&patch.lies);
    let file = chosen.file(reading, made, &patch, limit_mm, fine, settings);
    let SheetPatch { lies, deviation, off_mm, .. } = patch;
    let sheet = model.map(|model| PlannedSheet { lies, off_mm, map: deviation, model });
    Ok(PlanMade { file, sheet, came_of })
}

/// The spot that is planned for; none where nothing stands out.
fn spot(reading: &KeptReading, settings: &PlanSettings) -> Result<Option<usize>, PlanError> {
    let count = reading.file.spots.len();
    match settings.spot {
        Some(k) if k >= count => Err(PlanError::NoSpot { count, asked: k + 1 }),
        Some(k) => Ok(Some(k)),
        None => Ok((count > 0).then_some(0)),
    }
}

/// What was chosen from the files, checked.
struct Chosen {
    metal: MetalRow,
    thickness_mm: f64,
    paint: PaintRow,
    glue: Option<GlueRow>,
}

impl Chosen {
    fn of(settings: &PlanSettings) -> Result<Self, PlanError> {
        let metal = named("metal", &settings.metal, metals(), |row| &row.name)?;
        let paint = named("paint", &settings.paint, paints(), |row| &row.name)?;
        let glue = settings.glue.as_ref().map(|name| named("glue", name, glues(), |row| &row.name)).transpose()?;
        let thickness_mm = settings.thickness_mm.unwrap_or(metal.thickness_mm.likely);
        let wrong = |what| Err(PlanError::Wrong(what));
        if !(0.3..=3.0).contains(&thickness_mm) {
            return wrong("a panel is 0.3 to 3 mm thick");
        }
        if !(-20.0..=70.0).contains(&settings.panel_c) || !(0.0..=85.0).contains(&settings.most_c) {
            return wrong("a panel has -20 to 70 °C, and the paint may get 0 to 85 °C warm");
        }
        if settings.limit_mm.is_some_and(|l| !(0.001..=1.0).contains(&l)) {
            return wrong("a finish limit is 1 to 1000 µm");
        }
        if !(1..=6).contains(&settings.moves) || !(1..=8).contains(&settings.rounds) {
            return wrong("a round has 1 to 6 moves, and 1 to 8 rounds are foretold");
        }
        Ok(Self { metal, thickness_mm, paint, glue })
    }

    fn propose(&self, settings: &PlanSettings, tips: Tips, limit_mm: f64) -> ProposeSettings {
        ProposeSettings {
            limit_mm,
            average_mm: AVERAGE_MM,
            moves: settings.moves,
            tips,
            most_spent: MOST_SPENT,
            paint: self.paint.clone(),
            aged: settings.facts.aged,
            panel_c: settings.panel_c,
            most_c: settings.most_c,
            prove: true,
        }
    }

    fn file(
        &self,
        reading: &KeptReading,
        made: dentwright_plan::Plan,
        patch: &SheetPatch,
        limit_mm: f64,
        fine: Vec<String>,
        settings: &PlanSettings,
    ) -> PlanFile {
        let mut file = PlanFile::of(reading, made, limit_mm);
        file.sheet = Some(patch.facts(&self.metal, self.thickness_mm));
        file.paint = Some(self.paint.name.clone());
        file.fine_tips = fine;
        file.cautions(settings.behind.as_ref().map(|drawn| &drawn.side), settings.facts.glue || self.glue.is_some());
        file
    }
}

/// Averaging before a place counts, mm: a planner's sheet knows nothing finer.
pub(crate) const AVERAGE_MM: f64 = 6.0;
/// Most equivalent plastic strain one stroke may spend: ours.
const MOST_SPENT: f64 = 0.3;

fn named<T>(what: &'static str, name: &str, rows: Vec<T>, of: impl Fn(&T) -> &String) -> Result<T, PlanError> {
    let known = rows.iter().map(|row| of(row).clone()).collect();
    let found = rows.into_iter().find(|row| of(row) == name);
    found.ok_or_else(|| PlanError::NotOnFile { what, name: name.to_owned(), known })
}
