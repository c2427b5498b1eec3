//! What a move is made with, and what can be brought to a place at all.

use crate::act::Act;
use crate::fulcrum::Fulcrum;
use crate::inner_side::Flawed;
use crate::plan::Drawn;
use crate::planned::Planned;
use crate::reach::{Access, Blocked, Reach, ReachSettings, access};
use crate::tool::Rack;
use dentwright_sheet::{GlueRow, Tab};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::sync::Mutex;

/// Foot and stem of a common round tab, mm, and modulus of its plastic, MPa: common practice.
const TAB_FOOT_MM: f64 = 4.0;
const TAB_STEM_MM: f64 = 4.0;
const TAB_MPA: f64 = 2500.0;

/// What a move is made with.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(tag = "with", rename_all = "snake_case")]
pub enum Tooling {
    /// A bar of the rack, proved to reach on the drawing.
    Bar {
        /// Tool of the rack.
        tool: String,
        /// Tip on it, by its name in the rack.
        tip_on_it: String,
        /// Wall and opening it goes through.
        through: [String; 2],
        /// Trim that must come off first.
        trim: Option<String>,
        /// Angle between its push and the panel's normal, degrees.
        off_square_deg: f64,
        /// What it is worked over.
        fulcrum: Fulcrum,
        /// Force of the tip that it gives, N.
        gives_n: f64,
        /// How far its tip goes on, mm.
        goes_on_mm: f64,
        /// Length of bar behind the wall, mm.
        inside_mm: f64,
    },
    /// From behind; what is there has not been drawn, so whether anything reaches is not known.
    NotDrawn,
    /// A tab glued on.
    Tab {
        /// Glue on file.
        glue: String,
        /// Force it surely and perhaps holds, N.
        holds_n: [f64; 2],
    },
    /// A knock-down from the front.
    KnockDown,
}

/// What can be brought to places of one panel; every place is asked once.
pub struct Reachable<'a> {
    drawn: Option<&'a Drawn>,
    rack: &'a Rack,
    found: Mutex<BTreeMap<[i64; 2], Access>>,
}

impl<'a> Reachable<'a> {
    /// Of a drawing, or of none.
    ///
    /// # Errors
    /// Where the drawing cannot be used.
    pub fn new(drawn: Option<&'a Drawn>, rack: &'a Rack) -> Result<Self, Flawed> {
        drawn.map_or(Ok(()), |drawn| drawn.side.check())?;
        Ok(Self { drawn, rack, found: Mutex::default() })
    }

    /// Force the best tool gives at a place, N; endless where nothing is drawn.
    pub fn force(&self, at: [f64; 2]) -> Option<f64> {
        match self.drawn {
            None => Some(f64::INFINITY),
            Some(drawn) => self.ask(drawn, at, |a| a.reaches.iter().map(|r| r.levered.force_n).reduce(f64::max)),
        }
    }

    /// What stands in the way at a place, most often first; none where something reaches.
    pub fn blocked(&self, at: [f64; 2]) -> Option<Vec<Blocked>> {
        self.drawn.and_then(|drawn| self.ask(drawn, at, |a| a.reaches.is_empty().then(|| a.blocked.clone())))
    }

    /// What a move is made with.
    pub fn tooling(&self, planned: &Planned, glue: Option<&GlueRow>) -> Tooling {
        match (planned.act, self.drawn) {
            (Act::Tap | Act::Blend, _) => Tooling::KnockDown,
            (Act::Pull, _) => {
                let holds_n = glue.map_or([0.0; 2], |g| holds(g, planned.tip.radius, planned.paint_c));
                Tooling::Tab { glue: glue.map_or_else(String::new, |g| g.name.clone()), holds_n }
            }
            (Act::Push, None) => Tooling::NotDrawn,
            (Act::Push, Some(drawn)) => self.ask(drawn, planned.at_mm, |access| {
                let strong = |r: &&Reach| r.levered.force_n >= planned.force_n;
                let own = |r: &&Reach| r.tip == planned.tip.name && strong(r);
                let all = &access.reaches;
                let reach = all.iter().find(own).or_else(|| all.iter().find(strong)).or(all.first());
                reach.map_or(Tooling::NotDrawn, bar)
            }),
        }
    }

    fn ask<T>(&self, drawn: &Drawn, at: [f64; 2], then: impl FnOnce(&Access) -> T) -> T {
        let at = drawn.lies.carry(at);
        let key = at.map(|c| (10.0 * c).round() as i64);
        let nothing = || Access { reaches: Vec::new(), blocked: Vec::new() };
        if let Some(known) = self.found.lock().expect("no one panics holding it").get(&key) {
            return then(known);
        }
        let found = access(&drawn.side, self.rack, at, &ReachSettings::default()).unwrap_or_else(|_| nothing());
        let answer = then(&found);
        self.found.lock().expect("no one panics holding it").insert(key, found);
        answer
    }
}

/// Force a tab of this radius surely and perhaps holds at a temperature, N.
pub fn holds(glue: &GlueRow, radius_mm: f64, temperature_c: f64) -> [f64; 2] {
    let tab = Tab { radius_mm, foot_mm: TAB_FOOT_MM, e_mpa: TAB_MPA, stem_mm: TAB_STEM_MM };
    glue.hold(&tab, temperature_c, 0.0).holds_n
}

fn bar(reach: &Reach) -> Tooling {
    Tooling::Bar {
        tool: reach.tool.clone(),
        tip_on_it: reach.tip.clone(),
        through: reach.through.clone(),
        trim: reach.trim.clone(),
        off_square_deg: reach.off_square.to_degrees(),
        fulcrum: reach.levered.fulcrum.clone(),
        gives_n: reach.levered.force_n,
        goes_on_mm: reach.levered.travel_mm,
        inside_mm: reach.inside_mm,
    }
}
