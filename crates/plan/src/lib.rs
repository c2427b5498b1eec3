//! What to do next: which tool reaches a place, which moves in which order, and whether it can be done at all.
//!
//! # Entry points
//! [`access`] for the tools of a rack that reach a place from behind; [`Model`] and [`propose`] for the next round from a
//! reading; [`Hand`] and [`compare`] to learn from it; [`can_be_done`]; [`trial`] for all of it on panels nobody knows; [`Rehearsal`]
//! for a learner on one.
//!
//! # Conventions
//! Millimetre, newton, radian, degree Celsius. Panel frame: z out of the panel toward the viewer. Every number is an
//! estimate.
//!
//! # Idea
//! Ways of bars are proved clear by distance. Of many moves, quickly answered, one bounded least-squares problem tells which
//! together bring the panel level; the few that matter are put right by full solves. After every reading the sheet and the
//! hand have learned and all is done anew.
//!
//! # Limits
//! A reach that exists may be missed. One round is planned at a time, in order of size. Drilling, and parting bonded or
//! welded metal, are not among the moves.
//!
//! # References
//! `docs/theory-plan.md`.

mod act;
mod ahead;
mod bridge;
mod candidates;
mod clear;
mod compare;
mod curve;
mod custom;
mod damage;
mod dice;
mod follow;
mod foresee;
mod fulcrum;
mod hand;
mod inner_side;
mod insert;
mod keep;
mod level;
mod made;
mod masters;
mod model;
mod outline;
mod paint;
mod placing;
mod plan;
mod planned;
mod plant;
mod propose;
mod prove;
mod reach;
mod rehearsal;
mod solid;
mod sparse;
mod table;
mod tips;
mod to_go;
mod together;
mod tool;
mod tooling;
mod trial;
mod verdict;
mod ways;
mod went_over;

pub use act::Act;
pub use bridge::bridge;
pub use candidates::Candidate;
pub use compare::compare;
pub use curve::Curve;
pub use custom::Departure;
pub use damage::{DAMAGES, Damage};
pub use dice::Dice;
pub use fulcrum::{Fulcrum, HAND_N, Levered};
pub use hand::{Hand, Tried};
pub use inner_side::{Behind, BehindKind, Brace, Flawed, InnerSide, Opening, Wall};
pub use level::level;
pub use made::{MadeMove, Outcome, RoundOutcome, round_outcome};
pub use masters::{RULES, Rule};
pub use model::{Known, Model};
pub use outline::Outline;
pub use paint::paint_strain;
pub use placing::Placing;
pub use plan::{Asked, Drawn, NotPlanned, Placed, Plan, ReadAgain, Round, plan};
pub use planned::{Lines, Planned, Why};
pub use plant::{Log, Plant};
pub use propose::{Proposal, ProposeSettings, propose};
pub use reach::{Access, Blocked, FOLD_MM, Reach, ReachSettings, access, tool_reaches};
pub use rehearsal::{
    Claim, Height, Hit, LEVELS_TOML, Lean, Level, Line, LinesOver, Made, Rehearsal, Score, Touch, levels, lines_over,
    read_right,
};
pub use sparse::Sparse;
pub use table::{Refusals, Row, refusals, table};
pub use tips::Tips;
pub use tool::{Capsule, Hardness, RACK_TOML, Rack, RackError, Tool, ToolTip, parse_rack, starter_rack};
pub use tooling::{Reachable, Tooling, holds};
pub use trial::{Run, TrialSettings, Worker, run, trial};
pub use verdict::{Can, CanBeDone, Facts, Reason, can_be_done};
pub use ways::Ways;
pub use went_over::went_over;
