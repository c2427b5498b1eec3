//! Working a panel into a measured shape: held without friction where the damage is, let go, and held anew until what
//! stays is the shape that was measured.
//!
//! Each round moves the mould by what is still missing of the shape, measured after an elastic release (the displacement
//! adjustment of forming dies: Gan and Wagoner 2004). The shape grows from nothing in one pass, so that no place is worked
//! further than it must be: along such a path plastic work is least for what it reaches (Ponter and Martin 1972).

use crate::edges::Held;
use crate::equilibrium::{Balance, Drive, Given, Tolerance, balance};
use crate::panel::Panel;
use nalgebra::Vector3;
use serde::{Deserialize, Serialize};

/// Out-of-balance force allowed on the way, N; the last release is held to the usual tolerance.
const ON_THE_WAY: Tolerance = Tolerance { force_n: 0.1, share: 1e-5, rounds: 30, drag: 0.0 };
/// Letting go of a sheet that may snap.
const LET_GO: Tolerance = Tolerance { force_n: 2e-3, share: 1e-5, rounds: 60, drag: 0.0 };
/// The same where it snaps: a sheet that was hardly worked goes back to where it came from.
const SNAPS: Tolerance = Tolerance { rounds: 200, drag: 0.5, ..LET_GO };
/// Rounds in which nothing stays do not count, up to so many.
const IDLE: usize = 16;
/// A round at full shape that gains less than this share of the misfit is the last.
const STALLED: f64 = 0.02;
/// While less than this share of the way stays, the sheet springs back whole and the mould goes faster: by this much a
/// round.
const NOTHING: f64 = 0.1;
const GROW: f64 = 1.6;
/// At full shape the mould goes further than what is missing by as much as fell short the round before, at most so many
/// times.
const FASTER: f64 = 3.0;
/// A misfit over this share of the way is no answer.
const REACHED: f64 = 0.3;
/// How often a step is halved before the work stops.
const HALVINGS: u32 = 3;

/// A place touched from both sides.
pub const BOTH: i8 = 2;

/// What the panel is worked into.
pub struct Mould<'a> {
    /// Deviation wanted at a place, mm.
    pub shape: &'a dyn Fn(f64, f64) -> f64,
    /// Which way a place is touched: −1 from outside, +1 from inside, 0 not at all, [`BOTH`] either way.
    pub touch: &'a dyn Fn(f64, f64) -> i8,
    /// Stiffness of the mould, N/mm³: what is shorter than `2π (D/k)^¼` is smoothed.
    pub stiffness: f64,
    /// Rounds while the shape grows, and at full shape at most.
    pub rounds: [usize; 2],
    /// Misfit that is near enough, root mean square over what is touched, mm.
    pub enough_mm: f64,
}

/// How near it came.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Worked {
    /// Root mean square of left less wanted where the mould touches, mm.
    pub misfit_mm: f64,
    /// Largest sum of the mould's pushes in size, N.
    pub force_n: f64,
    /// Rounds.
    pub rounds: usize,
}

/// The work could not be done.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum NotWorked {
    /// The caller asked to stop.
    #[error("stopped")]
    Cancelled,
    /// No balance.
    #[error("the sheet did not come to rest at {share:.0} % of the shape", share = 100.0 * .share)]
    NoRest {
        /// Share of the shape reached.
        share: f64,
    },
    /// The shape could not be made to stay.
    #[error("no work on this sheet leaves the measured shape: {misfit_mm:.3} mm are missing")]
    NotReached {
        /// Root mean square of what is missing, mm.
        misfit_mm: f64,
    },
    /// Nothing to touch.
    #[error("nothing here differs from the intended shape")]
    Nothing,
}

/// A place the mould may touch.
struct Spot {
    point: usize,
    touch: i8,
    /// Deviation before the work, mm.
    start: f64,
    /// Deviation at which it is held, mm.
    hold: f64,
    wanted: f64,
    /// Deviation left after the last release, mm.
    left: f64,
}

impl Spot {
    /// What should be left when this share of the way is done, mm.
    fn aim(&self, share: f64) -> f64 {
        self.start + share * (self.wanted - self.start)
    }
}

/// Works the panel from where it stands into the shape; `go_on` hears the share done and may stop the work.
pub fn work_into(panel: &mut Panel, mould: &Mould, go_on: &dyn Fn(f64) -> bool) -> Result<Worked, NotWorked> {
    let mut spots = spots(panel, mould);
    if spots.is_empty() {
        return Err(NotWorked::Nothing);
    }
    let edges = panel.patch.held.clone();
    let [growing, settling] = mould.rounds;
    let total = growing + settling;
    let mut worked = Worked { misfit_mm: f64::INFINITY, force_n: 0.0, rounds: 0 };
    let mut best: Option<(f64, Balance)> = None;
    let (mut gain, mut round, mut idle) = (1.0, 1, 0);
    while round <= total {
        if !go_on(round as f64 / total as f64) {
            return Err(NotWorked::Cancelled);
        }
        let share = (round as f64 / growing as f64).min(1.0);
        let before: Vec<f64> = spots.iter().map(|s| s.hold).collect();
        let asked: Vec<f64> = spots.iter().map(|s| s.aim(share) - s.left).collect();
        let left: Vec<f64> = spots.iter().map(|s| s.left).collect();
        spots.iter_mut().zip(&asked).for_each(|(s, asked)| s.hold += gain * asked);
        hold(panel, mould, &edges, &spots, &before).map_err(|()| NotWorked::NoRest { share })?;
        worked.force_n = worked.force_n.max(push(panel, &edges));
        panel.patch.held.clone_from(&edges);
        worked.rounds += 1;
        let free = release(panel).map_err(|()| NotWorked::NoRest { share })?;
        look(panel, mould, &mut spots, &free.places);
        let nothing_stays = stays(panel, &spots, share) < NOTHING;
        gain = match share {
            _ if nothing_stays => GROW * gain,
            _ if share < 1.0 => 1.0,
            _ => (gain / came(panel, &spots, &left, &asked)).clamp(1.0, FASTER),
        };
        if nothing_stays && idle < IDLE {
            idle += 1;
        } else {
            round += 1;
        }
        if share < 1.0 {
            continue;
        }
        let misfit = misfit(panel, &spots, share);
        let better = best.as_ref().map_or(f64::INFINITY, |b| b.0) - misfit;
        if better > 0.0 {
            best = Some((misfit, free));
        }
        if misfit <= mould.enough_mm || (better < STALLED * misfit && !nothing_stays) {
            break;
        }
    }
    let (misfit, free) = best.ok_or(NotWorked::Nothing)?;
    if misfit > REACHED * wanted(panel, &spots, 1.0) {
        return Err(NotWorked::NotReached { misfit_mm: misfit });
    }
    worked.misfit_mm = misfit;
    panel.stable = free.negative == 0;
    panel.patch.keep(free.places, free.memory);
    Ok(worked)
}

/// Holds the panel in the shape, with the metal free to slide along the mould, and takes the mould away without letting
/// the sheet move: how it stands then says whether it would stay, and the mould's pushes how hard it must be held.
///
/// # Errors
/// Nothing to touch, or the sheet finds no balance in the mould.
pub fn hold_in(panel: &mut Panel, mould: &Mould) -> Result<Worked, NotWorked> {
    let mut spots = spots(panel, mould);
    if spots.is_empty() {
        return Err(NotWorked::Nothing);
    }
    let edges = panel.patch.held.clone();
    let before: Vec<f64> = spots.iter().map(|s| s.hold).collect();
    spots.iter_mut().for_each(|s| s.hold = s.wanted);
    let held = hold(panel, mould, &edges, &spots, &before);
    let force_n = push(panel, &edges);
    panel.patch.held.clone_from(&edges);
    held.map_err(|()| NotWorked::NoRest { share: 1.0 })?;
    let places = panel.patch.places.clone();
    look(panel, mould, &mut spots, &places);
    Ok(Worked { misfit_mm: misfit(panel, &spots, 1.0), force_n, rounds: 1 })
}

fn spots(panel: &Panel, mould: &Mould) -> Vec<Spot> {
    let spot = |point: usize| {
        let [x, y] = panel.patch.mesh.points[point].at;
        let touch = (mould.touch)(x, y);
        (touch != 0).then(|| {
            let start = panel.deviation(x, y);
            Spot { point, touch, start, hold: start, wanted: (mould.shape)(x, y), left: start }
        })
    };
    panel.sheet_points().filter_map(spot).collect()
}

/// Brings the mould from where it stood to where it now stands, in parts where it must.
fn hold(panel: &mut Panel, mould: &Mould, edges: &[Held], spots: &[Spot], before: &[f64]) -> Result<(), ()> {
    let (mut parts, mut done) = (1u32, 0u32);
    while done < parts {
        let s = f64::from(done + 1) / f64::from(parts);
        let heights = spots.iter().zip(before).map(|(spot, b)| b + s * (spot.hold - b));
        panel.patch.held = edges.to_vec();
        for (spot, height) in spots.iter().zip(heights) {
            let point = &panel.patch.mesh.points[spot.point];
            let base = panel.patch.mesh.value(point.node, &point.shape, &panel.intended).z;
            let only = (spot.touch != BOTH).then_some(f64::from(spot.touch));
            let at = (point.node, point.shape);
            panel.patch.held.push(Held::to_height(at, point.area, base + height, mould.stiffness, only));
        }
        let places = panel.patch.places.clone();
        match balance(&panel.patch, &Drive::Nothing, Given::Force(0.0), &places, (0.0, 0.0), ON_THE_WAY) {
            Ok(found) => {
                panel.patch.keep(found.places, found.memory);
                done += 1;
            }
            Err(_) if parts >= 1 << HALVINGS => return Err(()),
            Err(_) => (parts, done) = (2 * parts, 2 * done),
        }
    }
    Ok(())
}

/// The panel with the mould taken away; where it snaps on the way to rest, slowed down.
fn release(panel: &Panel) -> Result<Balance, ()> {
    let rest = |tolerance| {
        balance(&panel.patch, &Drive::Nothing, Given::Force(0.0), &panel.patch.places, (0.0, 0.0), tolerance)
    };
    rest(LET_GO).or_else(|_| rest(SNAPS)).map_err(|_| ())
}

/// Sum of the mould's pushes in size, N.
fn push(panel: &Panel, edges: &[Held]) -> f64 {
    let mesh = &panel.patch.mesh;
    let of = |held: &Held| {
        let place = mesh.value(held.node, &held.shape, &panel.patch.places);
        held.forces(&place, &mesh.slopes(held.node, &held.shape, &panel.patch.places)).0[0].z.abs()
    };
    panel.patch.held[edges.len()..].iter().map(of).sum()
}

/// Notes what is left and what is wanted where each bit of sheet now stands.
fn look(panel: &Panel, mould: &Mould, spots: &mut [Spot], places: &[Vector3<f64>]) {
    let mesh = &panel.patch.mesh;
    for spot in spots {
        let point = &mesh.points[spot.point];
        let now = mesh.value(point.node, &point.shape, places);
        spot.left = now.z - mesh.at(now.x, now.y, &panel.intended).z;
        spot.wanted = (mould.shape)(now.x, now.y);
    }
}

/// What came of what was asked, as a share.
fn came(panel: &Panel, spots: &[Spot], left: &[f64], asked: &[f64]) -> f64 {
    let (came, all) = spots.iter().zip(left.iter().zip(asked)).fold((0.0, 0.0), |(came, all), (s, (left, asked))| {
        let a = panel.patch.mesh.points[s.point].area;
        (came + a * (s.left - left) * asked, all + a * asked * asked)
    });
    if came > 0.0 { came / all } else { f64::EPSILON }
}

/// Root mean square of what is left less what should be at this share of the way.
fn misfit(panel: &Panel, spots: &[Spot], share: f64) -> f64 {
    let (sum, area) = spots.iter().fold((0.0, 0.0), |(sum, area), s| {
        let a = panel.patch.mesh.points[s.point].area;
        (sum + a * (s.left - s.aim(share)).powi(2), area + a)
    });
    (sum / area).sqrt()
}

/// How much of this share of the way stays, 1 for all of it.
fn stays(panel: &Panel, spots: &[Spot], share: f64) -> f64 {
    let (came, all) = spots.iter().fold((0.0, 0.0), |(came, all), s| {
        let (a, way) = (panel.patch.mesh.points[s.point].area, s.aim(share) - s.start);
        (came + a * (s.left - s.start) * way, all + a * way * way)
    });
    came / all
}

/// Root mean square of this share of the way.
fn wanted(panel: &Panel, spots: &[Spot], share: f64) -> f64 {
    let (sum, area) = spots.iter().fold((0.0, 0.0), |(sum, area), s| {
        let a = panel.patch.mesh.points[s.point].area;
        (sum + a * (share * (s.wanted - s.start)).powi(2), area + a)
    });
    (sum / area).sqrt()
}
