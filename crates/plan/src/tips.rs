//! What may touch the metal: tips, tabs and heads, by the way they are used.

use crate::act::Act;
use crate::tool::{Hardness, Rack, ToolTip};

/// Blunt heads spread a small high; sharper ones lower it: from this radius on, mm (common practice).
const BLENDS_FROM_MM: f64 = 12.0;

/// What touches, by the way it is used.
#[derive(Debug, Clone, PartialEq)]
pub struct Tips {
    /// From behind.
    pub push: Vec<ToolTip>,
    /// Glued on.
    pub pull: Vec<ToolTip>,
    /// From the front.
    pub tap: Vec<ToolTip>,
}

impl Tips {
    /// Those of a rack that a model with cells of this size can tell apart, and the names of those it cannot.
    #[must_use]
    pub fn of(rack: &Rack, cell_mm: f64) -> (Self, Vec<String>) {
        let least = 0.7 * cell_mm;
        let told = |tips: &[ToolTip]| tips.iter().filter(|t| t.radius >= least).cloned().collect::<Vec<_>>();
        let all = rack.tip.iter().chain(&rack.tab).chain(&rack.knock_down);
        let fine = all.filter(|t| t.radius < least).map(|t| t.name.clone()).collect();
        (Self { push: told(&rack.tip), pull: told(&rack.tab), tap: told(&rack.knock_down) }, fine)
    }

    /// The same radii for every way, mm, harder the finer.
    #[must_use]
    pub fn even(radii_mm: &[f64]) -> Self {
        let tip = |radius: &f64| ToolTip {
            name: format!("ball_{radius:.0}"),
            radius: *radius,
            hardness: match *radius {
                r if r >= 14.0 => Hardness::Soft,
                r if r >= 8.0 => Hardness::Medium,
                _ => Hardness::Hard,
            },
            source: "common practice".into(),
        };
        let tips: Vec<ToolTip> = radii_mm.iter().map(tip).collect();
        Self { push: tips.clone(), pull: tips.clone(), tap: tips }
    }

    /// Those for one way.
    #[must_use]
    pub fn for_act(&self, act: Act) -> Vec<&ToolTip> {
        match act {
            Act::Push => self.push.iter().collect(),
            Act::Pull => self.pull.iter().collect(),
            Act::Tap => self.tap.iter().collect(),
            Act::Blend => self.tap.iter().filter(|t| t.radius >= BLENDS_FROM_MM).collect(),
        }
    }
}
