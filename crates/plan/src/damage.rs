//! Damages that are drawn for the trial; how deep they are left lies between what hail and door dings are and what the
//! readings of `docs/accuracy.md` were checked with.

use crate::dice::Dice;
use dentwright_sheet::{Goal, Kind, Move, Pace, Panel, Tip, perform_at};
use serde::{Deserialize, Serialize};

/// How far over the depth wanted a hit goes at first, mm, and how often it is repeated at most.
const FIRST_PRESS_MM: f64 = 0.6;
const PRESSES: usize = 10;
/// Kinds of damage that are drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Damage {
    /// One round hit, wide ball.
    Round,
    /// One hit, small ball.
    Sharp,
    /// Two hits that share tension.
    Double,
    /// A strip pressed in.
    Crease,
    /// A row of shallow hits.
    Hail,
    /// One soft wide hit.
    Soft,
    /// A high left by earlier work from behind.
    High,
    /// One hard sharp hit that stretches the metal.
    Stretched,
}

/// All of them.
pub const DAMAGES: [Damage; 8] = [
    Damage::Round,
    Damage::Sharp,
    Damage::Double,
    Damage::Crease,
    Damage::Hail,
    Damage::Soft,
    Damage::High,
    Damage::Stretched,
];

impl Damage {
    /// Does it to a panel; none where the sheet finds no rest.
    pub fn strike(self, panel: &mut Panel, dice: &mut Dice) -> Option<()> {
        let ball = |r: f64| Tip::Sphere { radius_mm: r };
        let near = |dice: &mut Dice, far: f64| [dice.between(-far, far), dice.between(-far, far)];
        // place, tip, how deep it is left
        let hits: Vec<([f64; 2], Tip, f64)> = match self {
            Self::Round => vec![(near(dice, 4.0), ball(dice.between(18.0, 40.0)), dice.between(0.15, 0.7))],
            Self::Sharp => vec![(near(dice, 4.0), ball(dice.between(9.0, 14.0)), dice.between(0.2, 0.9))],
            Self::Double => {
                let d = dice.between(8.0, 13.0);
                let r = dice.between(12.0, 25.0);
                vec![([-d, 0.0], ball(r), dice.between(0.15, 0.5)), ([d, 3.0], ball(r), dice.between(0.15, 0.5))]
            }
            Self::Crease => {
                let tip = Tip::Strip {
                    length_mm: dice.between(25.0, 45.0),
                    width_mm: dice.between(5.0, 9.0),
                    angle_deg: dice.between(-40.0, 40.0),
                };
                vec![([0.0, 0.0], tip, dice.between(0.15, 0.6))]
            }
            Self::Hail => (0..3)
                .map(|k| {
                    let at = [-18.0 + 18.0 * f64::from(k), dice.between(-12.0, 12.0)];
                    (at, ball(dice.between(12.0, 22.0)), dice.between(0.08, 0.3))
                })
                .collect(),
            Self::Soft => vec![(near(dice, 4.0), ball(dice.between(50.0, 80.0)), dice.between(0.15, 0.6))],
            Self::High => vec![(near(dice, 6.0), ball(dice.between(10.0, 18.0)), dice.between(0.05, 0.3))],
            Self::Stretched => vec![(near(dice, 4.0), ball(dice.between(8.0, 11.0)), dice.between(1.8, 3.0))],
        };
        let kind = if self == Self::High { Kind::Push } else { Kind::Press };
        hits.into_iter().try_for_each(|(at, tip, left)| press(panel, kind, at, tip, left))
    }
}

/// Presses until so much is left, mm; none where the sheet finds no rest.
fn press(panel: &mut Panel, kind: Kind, at: [f64; 2], tip: Tip, left: f64) -> Option<()> {
    let now = |panel: &Panel| kind.way() * panel.deviation(at[0], at[1]);
    let start = now(panel);
    let mut to = start + FIRST_PRESS_MM + left;
    for _ in 0..PRESSES {
        let goal = Goal::To(kind.way() * to);
        let wanted = Move { kind, at, tip, bonded: false, goal, steps: 4 };
        if !perform_at(panel, &wanted, Pace::COARSE).converged {
            return None;
        }
        let missing = left - (now(panel) - start);
        if missing < 0.1 * left {
            break;
        }
        to += missing.max(0.1);
    }
    Some(())
}
