//! Can it be done: yes, with texture, or no, and why.
//!
//! Access, edges, bonded zones and the maker's rule forbid outright. Stretch is judged by bringing the planner's sheet level
//! and asking whether it stays and pops (`level.rs`); paint by the strain on its face at the warmest a shop works.

use crate::level::brought_level;
use crate::model::Model;
use crate::paint::paint_strain;
use crate::reach::Blocked;
use dentwright_sheet::{PaintRow, Risk, remains};
use serde::{Deserialize, Serialize};

/// Warmth at which paint is judged, °C: the upper end of a shop's working range (common practice).
const WARM_C: f64 = 50.0;
/// Surface gained for good over which a sharp dent is beyond what shops take on: +4 % (common practice).
const MOST_AREA: f64 = 0.04;

/// Whether it can be done.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Can {
    /// Yes.
    Yes,
    /// Near level, then texture matched or painted: push to paint.
    PushToPaint,
    /// No.
    No,
}

/// A reason against, or a doubt.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema), schema(as = PlanReason))]
#[serde(tag = "reason", rename_all = "snake_case")]
pub enum Reason {
    /// Brought level it pops: at this force, or it does not stay at all.
    OilCan {
        /// Force, N; none where it does not stay.
        pops_at_n: Option<f64>,
    },
    /// More surface than can be taken up.
    Stretched {
        /// Surface gained, share.
        area: f64,
    },
    /// The paint may crack.
    Paint {
        /// Strain on its face.
        strain: f64,
        /// Risk at the warmest a shop works, or the paint may get here.
        risk: Risk,
    },
    /// Nothing reaches from behind and glue may not be used.
    Access {
        /// What stands in the way.
        blocked: Vec<Blocked>,
    },
    /// The maker forbids it.
    MakersRule {
        /// As entered.
        rule: String,
    },
    /// Conventional repair costs less, both as the user reckons them.
    Dearer {
        /// This repair.
        ours: f64,
        /// Conventional repair.
        conventional: f64,
    },
    /// The planner's sheet could not be brought level.
    NotComputed,
    /// More stands out after the last round than before it: the sheet gave way, or the hand went far over.
    WentOver {
        /// Largest residual before the round, mm.
        before_mm: f64,
        /// After it.
        after_mm: f64,
    },
}

/// Facts that are no matter of the metal.
#[derive(Debug, Clone, Default)]
pub struct Facts {
    /// What stands in the way behind, where nothing reaches.
    pub blocked: Option<Vec<Blocked>>,
    /// Whether a tab may be glued on.
    pub glue: bool,
    /// A rule of the maker that forbids the repair.
    pub makers_rule: Option<String>,
    /// Whether the paint is aged or a second coat.
    pub aged: bool,
    /// What this repair and a conventional one cost, in one coin.
    pub costs: Option<[f64; 2]>,
    /// Warmest the paint may get here, °C; none where only the shop's working range binds.
    pub most_c: Option<f64>,
}

/// The answer with its reasons.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct CanBeDone {
    /// The answer.
    pub can: Can,
    /// Why not, or what stays doubtful.
    pub reasons: Vec<Reason>,
}

/// Judges the damage a model stands for; follow the maker's procedure whatever this says.
pub fn can_be_done(model: &Model, paint: &PaintRow, facts: &Facts) -> CanBeDone {
    let mut reasons = Vec::new();
    let mut can = Can::Yes;
    let mut against = |worst: Can, reason: Reason| {
        can = can.max(worst);
        reasons.push(reason);
    };
    if let Some(rule) = &facts.makers_rule {
        against(Can::No, Reason::MakersRule { rule: rule.clone() });
    }
    if let Some(blocked) = &facts.blocked {
        let never = blocked.iter().any(|b| matches!(b, Blocked::Fold | Blocked::Bonded | Blocked::OffPanel));
        if never || !facts.glue {
            against(Can::No, Reason::Access { blocked: blocked.clone() });
        }
    }
    if let Some([ours, conventional]) = facts.costs.filter(|[ours, conventional]| ours > conventional) {
        against(Can::Yes, Reason::Dearer { ours, conventional });
    }
    let area = remains(&model.panel).iter().map(|r| r.area).fold(0.0, f64::max);
    if area > MOST_AREA {
        against(Can::PushToPaint, Reason::Stretched { area });
    }
    let strain = paint_strain(&model.panel, paint.film_mm);
    let warm = facts.most_c.map_or(WARM_C, |c| c.min(WARM_C));
    let risk = paint.risk(strain, warm, facts.aged).risk;
    if risk > Risk::Low {
        against(if risk == Risk::High { Can::PushToPaint } else { Can::Yes }, Reason::Paint { strain, risk });
    }
    match brought_level(model) {
        Some(level) if level.pops() => against(Can::No, Reason::OilCan { pops_at_n: level.pops_at_n() }),
        Some(_) => {}
        None => against(Can::Yes, Reason::NotComputed),
    }
    CanBeDone { can, reasons }
}
