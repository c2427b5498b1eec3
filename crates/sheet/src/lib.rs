//! The metal: how a panel gives under a tip, what stays, and what bar, heat, glue and paint have to do with it.
//!
//! # Entry points
//! [`run_case`] for a case on file; [`Panel`] and [`perform`] for moves from code; [`oil_can()`]; [`work_into`], [`replay()`] and [`remains()`]
//! for a measured dent; [`Bar::leverage`], [`WarmField`], [`PaintRow::risk`], [`GlueRow::hold`]; [`metals()`].
//!
//! # Conventions
//! Millimetre, newton, megapascal, second, degree Celsius. Panel frame: z out of the panel toward the viewer; a press
//! goes inward (−z), a push outward. Plane tensors are carried as [`Modes`]. Every number is an estimate.
//!
//! # Idea
//! A Kirchhoff-Love shell of cubic splines that may turn freely, J2 plasticity in layers across the thickness, a rigid
//! tip without friction, Newton's method with the tip's level or force given.
//!
//! # Limits
//! Nothing within a thickness of a sharp edge; a tap is a slow press; no anisotropy. A move that does not come to rest
//! says where it stopped and gives no other number.
//!
//! # References
//! `docs/theory-metal.md`; checks against published values in `docs/checks-metal.md`.

mod bar;
mod case;
mod columns;
mod dent;
mod dissect;
mod edges;
mod equilibrium;
mod factor;
mod glue;
mod hardening;
mod heat;
mod lean;
mod look;
mod mesh;
mod metals;
mod mould;
mod moves;
mod newton;
mod oil_can;
mod packed;
mod paint;
mod panel;
mod part;
mod patch;
mod perform;
mod quadrature;
mod quick;
mod remains;
mod replay;
mod room;
mod round;
mod section;
mod shell;
mod spline;
mod stencil;
mod step;
mod strain;
mod tip;
mod yielding;

pub use bar::{Bar, BarSection, Length, Leverage, NoLever};
pub use case::{CaseError, CaseResult, MoveResult, run_case};
pub use dent::{Dent, DentSettings, Recipe, dent_state};
pub use edges::{Edges, Hold, Springs};
pub use equilibrium::{Balance, Drive, Given, Stopped, Tolerance, balance};
pub use factor::Factor;
pub use glue::{GLUE_TOML, GlueRow, Hold as GlueHold, LetsGo, Tab, glues, parse_glues};
pub use hardening::Hardening;
pub use heat::{HEAT_TOML, HeatLimit, WarmField, WarmSheet, Warmth, heat_limits, lowest_limit, parse_limits};
pub use lean::leant;
pub use mesh::{Mesh, Outline};
pub use metals::{Family, METALS_TOML, MetalRow, Range, metals, parse_metals};
pub use mould::{BOTH, Mould, NotWorked, Worked, hold_in, work_into};
pub use moves::{Goal, Kind, Move, Outcome};
pub use oil_can::{OilCan, oil_can};
pub use packed::NotPacked;
pub use paint::{PAINT_TOML, PaintRisk, PaintRow, Risk, face_strain, paints, parse_paints};
pub use panel::{Panel, largest};
pub use patch::{Folded, Patch, State};
pub use perform::{Pace, perform, perform_at};
pub use quick::{Quick, give_map, quick, quick_climb, quick_rise};
pub use remains::{Layer, Remains, face_stress, layer_map, remains};
pub use replay::{ReplayError, ReplaySettings, Replayed, replay};
pub use section::{Layers, Section, add_up};
pub use spline::{Axis, Focus, graded};
pub use strain::{LogStrain, Modes};
pub use tip::{Contact, Load, Tip};
pub use yielding::{Answer, Memory, Metal, answer, equivalent};
