//! `plan.json` and the plan in plain words, laid down whole or not at all.

use crate::export::svg::{Numbered, svg_with};
use crate::kept::KeptReading;
use crate::on_photo::on_photo;
use crate::plan_words::words;
use crate::sheet_patch::PatchFacts;
use crate::write::{WriteError, put};
use dentwright_plan::{BehindKind, Can, CanBeDone, InnerSide, Placed, Plan};
use serde::{Deserialize, Serialize};
use std::path::Path;

/// A caution that applies; what is to be done is what the maker, the local code and licensed people say.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Caution {
    /// An airbag or belt tensioner is drawn behind.
    Airbag,
    /// A high-voltage battery or its lines are drawn behind.
    HighVoltage,
    /// Wiring is drawn behind.
    Wiring,
    /// Glass is drawn behind.
    Glass,
    /// Hot glue and solvent.
    Glue,
    /// Tapping is loud and may throw chips.
    Tapping,
    /// Nothing is drawn behind: look before a bar goes in.
    NotDrawn,
    /// The inside is to be protected from rust again.
    Corrosion,
}

/// The whole file.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct PlanFile {
    /// The plan.
    #[serde(flatten)]
    pub plan: Plan,
    /// Where every move lies on the panel photo, px, round by round; none where the reading does not tell.
    pub at_px: Vec<Vec<Option<[f64; 2]>>>,
    /// The photo.
    pub photo: String,
    /// Finish limit, mm.
    pub limit_mm: f64,
    /// The sheet it goes by; none where nothing stands out.
    pub sheet: Option<PatchFacts>,
    /// Paint on file it goes by.
    pub paint: Option<String>,
    /// Tips of the rack that are too fine for this model to tell what they do.
    pub fine_tips: Vec<String>,
    /// Cautions that apply.
    pub cautions: Vec<Caution>,
    /// Version of the program.
    pub version: String,
}

impl PlanFile {
    /// A plan with its places on the photo.
    #[must_use]
    pub fn of(reading: &KeptReading, plan: Plan, limit_mm: f64) -> Self {
        let marks =
            |round: &dentwright_plan::Round| round.moves.iter().map(|m| on_photo(reading, m.planned.at_mm)).collect();
        Self {
            at_px: plan.rounds.iter().map(marks).collect(),
            plan,
            photo: reading.file.photo.file.clone(),
            limit_mm,
            sheet: None,
            paint: None,
            fine_tips: Vec::new(),
            cautions: Vec::new(),
            version: env!("CARGO_PKG_VERSION").into(),
        }
    }

    /// Nothing stands out.
    #[must_use]
    pub fn level(reading: &KeptReading, limit_mm: f64) -> Self {
        let plan = Plan {
            verdict: CanBeDone { can: Can::Yes, reasons: Vec::new() },
            level: true,
            rounds: Vec::new(),
            departures: Vec::new(),
            unreached_mm: Vec::new(),
            hand: [[1.0, 0.0]; 2],
            bridged: 0.0,
            misfit_mm: 0.0,
        };
        Self::of(reading, plan, limit_mm)
    }

    /// Notes the cautions that apply.
    pub(crate) fn cautions(&mut self, behind: Option<&InnerSide>, glue: bool) {
        let kinds = behind.map(|side| side.behind.iter().map(|b| b.kind).collect::<Vec<_>>()).unwrap_or_default();
        let has = |kind| kinds.contains(&kind);
        let all = [
            (has(BehindKind::Airbag), Caution::Airbag),
            (has(BehindKind::Battery), Caution::HighVoltage),
            (has(BehindKind::Wiring), Caution::Wiring),
            (has(BehindKind::Glass), Caution::Glass),
            (glue, Caution::Glue),
            (true, Caution::Tapping),
            (behind.is_none(), Caution::NotDrawn),
            (true, Caution::Corrosion),
        ];
        self.cautions = all.into_iter().filter(|c| c.0).map(|c| c.1).collect();
    }

    /// The plan in plain words.
    #[must_use]
    pub fn words(&self) -> String {
        words(self)
    }
}

/// Writes `plan.json`, `plan.txt` and `plan.svg`, the map with the first round's places in their order, into `dir`.
///
/// # Errors
/// The disk says no.
pub fn write_plan(file: &PlanFile, reading: &KeptReading, dir: &Path) -> Result<(), WriteError> {
    let json = serde_json::to_vec_pretty(file).map_err(|e| WriteError::Encode(e.to_string()))?;
    let places: Vec<Numbered> = file.plan.rounds.first().map(|r| numbered(&r.moves)).unwrap_or_default();
    let drawing = svg_with(&reading.deviation, &[], &places).map_err(|e| WriteError::Encode(e.to_string()))?;
    put(&[("plan.json", json), ("plan.txt", file.words().into_bytes()), ("plan.svg", drawing)], dir)
}

fn numbered(moves: &[Placed]) -> Vec<Numbered> {
    let one = |(k, m): (usize, &Placed)| {
        let p = &m.planned;
        let says = format!("{} {} {:.1} mm", k + 1, format!("{:?}", p.act).to_lowercase(), p.held_mm);
        Numbered { at_mm: p.at_mm, radius_mm: 0.5 * p.tip.radius, outward: p.act.way() > 0.0, says }
    };
    moves.iter().enumerate().map(one).collect()
}
