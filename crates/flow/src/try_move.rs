//! What a move would do to a metal whose state is known: quick answer, force through a bar, paint, glue.

use dentwright_sheet::{
    Bar, Dent, GlueHold, Goal, Kind, Leverage, Move, NoLever, PaintRisk, Quick, Tab, Tip, face_strain, glues, paints,
    quick, remains,
};
use dentwright_surface::Map;
use serde::{Deserialize, Serialize};

/// A move to try.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema), schema(as = MoveAsked))]
pub struct Asked {
    /// Push from inside, press or tap from outside, pull by a tab.
    pub kind: Kind,
    /// Where, in the reading's frame, mm.
    pub x_mm: f64,
    /// Where, mm.
    pub y_mm: f64,
    /// What touches.
    pub tip: Tip,
    /// Travel from first touch, mm.
    pub travel_mm: f64,
    /// Temperature of the panel, °C.
    pub temperature_c: f64,
    /// Name of the paint on file.
    pub paint: String,
    /// Whether it is aged or a second paint.
    pub aged: bool,
    /// Name of the glue on file, for a pull.
    pub glue: Option<String>,
    /// The bar that pushes, with its fulcrum's place along it, mm.
    pub bar: Option<BarAsked>,
}

/// A bar over a fulcrum.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct BarAsked {
    /// The bar.
    pub bar: Bar,
    /// The fulcrum's place, mm.
    pub fulcrum_x_mm: f64,
}

/// What a move would do. Every number is an estimate.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema), schema(as = MoveTried))]
pub struct Tried {
    /// The quick answer; none where the sheet pops on the way or the place is off the patch.
    pub answer: Option<MoveFacts>,
    /// Whether the paint takes this move.
    pub paint: Option<PaintRisk>,
    /// Whether it takes the whole way back to level here.
    pub paint_way_back: Option<PaintRisk>,
    /// Whether the glue holds the pull.
    pub glue: Option<GlueHold>,
    /// What the bar makes of it: the hand's force and the bar's own bending.
    pub lever: Option<LeverFacts>,
}

/// A quick answer with where it starts from.
#[derive(Debug, Clone, Copy, Serialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct MoveFacts {
    /// Deviation at the place before the move, mm.
    pub before_mm: f64,
    /// What the move does.
    #[serde(flatten)]
    pub quick: Quick,
}

/// A lever's answer.
#[derive(Debug, Clone, Copy, Serialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct LeverFacts {
    /// Force of the hand, N.
    pub hand_force_n: f64,
    /// The rest.
    #[serde(flatten)]
    pub leverage: Leverage,
}

/// A move that makes no sense.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum AskedError {
    /// A number out of bounds.
    #[error("{0}")]
    Wrong(&'static str),
    /// Not on file.
    #[error("no {what} on file is called {name}")]
    NotOnFile {
        /// `paint` or `glue`.
        what: &'static str,
        /// As asked.
        name: String,
    },
    /// The sheet would spring back whole.
    #[error("let go, this sheet springs back by itself; something round it holds it")]
    Held,
    /// The fulcrum is off the bar.
    #[error(transparent)]
    Lever(#[from] NoLever),
}

/// Foot of a common round tab: thickness and stem, mm, and modulus of its plastic, MPa; common practice.
const TAB_FOOT_MM: f64 = 4.0;
const TAB_STEM_MM: f64 = 4.0;
const TAB_MPA: f64 = 2500.0;

/// Tries a move on a dent; `give` is how far its sheet gives under a light push.
pub fn try_move(dent: &Dent, give: &Map, asked: &Asked) -> Result<Tried, AskedError> {
    check(asked)?;
    if dent.held.is_some() {
        return Err(AskedError::Held);
    }
    let paint = paints().into_iter().find(|row| row.name == asked.paint);
    let paint = paint.ok_or_else(|| AskedError::NotOnFile { what: "paint", name: asked.paint.clone() })?;
    let at = [asked.x_mm - dent.at_mm[0], asked.y_mm - dent.at_mm[1]];
    let wanted =
        Move { kind: asked.kind, at, tip: asked.tip, bonded: false, goal: Goal::Travel(asked.travel_mm), steps: 1 };
    let on_patch = dent.panel.patch.mesh.holds(at[0], at[1]);
    let found = if on_patch { quick(&dent.panel, give, &wanted) } else { None };
    let risk = |strain: f64| paint.risk(strain, asked.temperature_c, asked.aged);
    let thickness = dent.recipe.thickness_mm;
    let film = 1.0 + 2.0 * paint.film_mm / thickness;
    let glue = match (&asked.glue, found, asked.kind) {
        (Some(name), Some(quick), Kind::Pull) => {
            let row = glues().into_iter().find(|row| row.name == *name);
            let row = row.ok_or_else(|| AskedError::NotOnFile { what: "glue", name: name.clone() })?;
            let tab = Tab { radius_mm: round(&asked.tip), foot_mm: TAB_FOOT_MM, e_mpa: TAB_MPA, stem_mm: TAB_STEM_MM };
            Some(row.hold(&tab, asked.temperature_c, quick.force_n))
        }
        _ => None,
    };
    let lever = match (&asked.bar, found, asked.kind) {
        (Some(one), Some(quick), Kind::Push) => Some(lever(one, quick.force_n)?),
        _ => None,
    };
    Ok(Tried {
        answer: found.map(|quick| MoveFacts { before_mm: dent.panel.deviation(at[0], at[1]), quick }),
        paint: found.map(|quick| risk(film * quick.face_strain)),
        paint_way_back: on_patch.then(|| risk(way_back(dent, at, paint.film_mm))),
        glue,
        lever,
    })
}

/// Strain the paint's face takes when a place is brought back level: what its bending and stretch put in.
fn way_back(dent: &Dent, at: [f64; 2], film_mm: f64) -> f64 {
    let far = |p: [f64; 2]| (p[0] - at[0]).hypot(p[1] - at[1]);
    let points = remains(&dent.panel);
    let near = points.iter().min_by(|a, b| far(a.at_mm).total_cmp(&far(b.at_mm)));
    let t = dent.recipe.thickness_mm;
    near.map_or(0.0, |p| face_strain(p.stretch, p.bent_outer.abs() / (0.5 * t), t, film_mm))
}

/// The hand's force for a force of the tip.
fn lever(asked: &BarAsked, tip_force_n: f64) -> Result<LeverFacts, NoLever> {
    let unit = asked.bar.leverage(1.0, 0.0, asked.fulcrum_x_mm)?;
    let hand_force_n = tip_force_n / unit.advantage;
    Ok(LeverFacts { hand_force_n, leverage: asked.bar.leverage(hand_force_n, 0.0, asked.fulcrum_x_mm)? })
}

/// Radius of a round tab of the same area.
fn round(tip: &Tip) -> f64 {
    match *tip {
        Tip::Sphere { radius_mm } | Tip::Disc { radius_mm } => radius_mm,
        Tip::Rectangle { width_mm: a, height_mm: b } | Tip::Strip { length_mm: a, width_mm: b, .. } => {
            (a * b / std::f64::consts::PI).sqrt()
        }
        Tip::Point => 1.0,
    }
}

fn check(asked: &Asked) -> Result<(), AskedError> {
    let wrong = |what| Err(AskedError::Wrong(what));
    if !(asked.x_mm.is_finite() && asked.y_mm.is_finite()) {
        return wrong("give the place in mm");
    }
    if !(asked.travel_mm > 0.0 && asked.travel_mm <= 15.0) {
        return wrong("a travel is above 0 and at most 15 mm");
    }
    if !(-20.0..=120.0).contains(&asked.temperature_c) {
        return wrong("a panel's temperature is -20 to 120 °C");
    }
    let size = round(&asked.tip);
    if asked.tip != Tip::Point && !(1.0..=60.0).contains(&size) {
        return wrong("a tip is 1 to 60 mm in radius");
    }
    Ok(())
}
