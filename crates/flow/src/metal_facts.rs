//! A metal's state as a page of facts: the largest of everything, each with its doubt.

use crate::GridFacts;
use crate::metal_file::{Check, Doubtful, Forced, MetalFile, OilCanFacts, Place, SheetFacts};
use dentwright_sheet::{Dent, OilCan, Remains, remains};
use dentwright_surface::Grid;

/// How far peak stretch was off solids at worst (`docs/checks-metal.md`), share; stands for what no variant shows.
const METHOD: f64 = 0.15;
/// The same for tension.
const METHOD_TENSION: f64 = 0.3;
/// Taken where a variant found no rest.
const UNKNOWN: f64 = 0.3;
/// A high of this share of the low's depth is a crown, and metal at this share of its yield is held; common practice, no
/// published source.
const CROWN: f64 = 0.1;
const TENSE: f64 = 0.2;

/// What was found out about a dent.
pub(crate) struct Found<'a> {
    pub dent: &'a Dent,
    /// What stays at its points.
    pub points: &'a [Remains],
    /// The dent on coarser cells: likely, then two of each thing that is not known.
    pub tried: &'a [Option<Dent>],
    /// As it is, and if brought level.
    pub oil_can: [Option<OilCan>; 2],
    pub check: Option<Check>,
    pub half_mm: f64,
}

impl Found<'_> {
    /// The page of facts; `off_mm` is how far the intended shape is off the smooth one taken.
    pub fn facts(&self, sheet: SheetFacts, grid: Grid, off_mm: f64) -> MetalFile {
        let Spread { stretch, tension } = Spread::of(self.tried);
        let bent = |p: &Remains| p.bent_outer.abs().max(p.bent_inner.abs());
        let pull = |p: &Remains| self.place(p, p.tension_mpa, tension);
        let [pulled, pressed] = [self.most(&|p| p.tension_mpa), self.most(&|p| -p.tension_mpa)];
        let stays = |_: &&Remains| self.dent.held.is_none();
        let held_by_crown = self.held_by_crown(sheet.yield_mpa.likely);
        MetalFile {
            word: "estimate".into(),
            sheet,
            at_mm: self.dent.at_mm,
            half_mm: self.half_mm,
            depth_mm: self.dent.depth_mm,
            misfit_mm: self.dent.worked.misfit_mm,
            intended_off_mm: off_mm,
            held: self.dent.held,
            stretch: self.most(&|p| p.stretch).filter(stays).map(|p| self.place(p, p.stretch, stretch)),
            area_gained_mm2: self.gained(),
            bent: self.most(&bent).filter(stays).map(|p| self.place(p, bent(p), stretch)),
            pulled: pulled.filter(|p| p.tension_mpa > 0.0).map(pull),
            pressed: pressed.filter(|p| p.tension_mpa < 0.0).map(pull),
            held_by_crown: held_by_crown.map(|at| self.on_panel(at)),
            oil_can_now: self.oil_can[0].as_ref().map(|found| self.oil_can_facts(found, tension)),
            oil_can_level: self.oil_can[1].as_ref().map(|found| self.oil_can_facts(found, tension)),
            check: self.check,
            grid: GridFacts { x0_mm: grid.x0_mm, y0_mm: grid.y0_mm, step_mm: grid.step_mm, nx: grid.nx, ny: grid.ny },
            version: env!("CARGO_PKG_VERSION").into(),
        }
    }

    fn most(&self, f: &dyn Fn(&Remains) -> f64) -> Option<&Remains> {
        self.points.iter().max_by(|a, b| f(a).total_cmp(&f(b)))
    }

    fn on_panel(&self, at: [f64; 2]) -> [f64; 2] {
        [at[0] + self.dent.at_mm[0], at[1] + self.dent.at_mm[1]]
    }

    fn deviation(&self, p: &Remains) -> f64 {
        self.dent.panel.deviation(p.at_mm[0], p.at_mm[1])
    }

    /// A value with its doubt, given as a share, and its place.
    fn place(&self, p: &Remains, value: f64, doubt: f64) -> Place {
        Place {
            value: Doubtful { value, doubt: doubt * value.abs() },
            at_mm: self.on_panel(p.at_mm),
            deviation_mm: self.deviation(p),
        }
    }

    /// Surface gained for good, mm².
    fn gained(&self) -> f64 {
        let panel = &self.dent.panel;
        let areas = panel.sheet_points().map(|i| panel.patch.mesh.points[i].area);
        areas.zip(self.points).map(|(area, p)| area * p.area).sum()
    }

    /// A crown under tension beside a low, which it holds.
    fn held_by_crown(&self, yield_mpa: f64) -> Option<[f64; 2]> {
        let low = self.points.iter().map(|p| self.deviation(p)).fold(0.0, f64::min);
        let crown = self.most(&|p| self.deviation(p))?;
        let proud = low < 0.0 && self.deviation(crown) > CROWN * low.abs();
        (proud && crown.tension_mpa.abs() > TENSE * yield_mpa).then_some(crown.at_mm)
    }

    fn oil_can_facts(&self, found: &OilCan, doubt: f64) -> OilCanFacts {
        OilCanFacts {
            stable: found.stable,
            stiffness_n_per_mm: found.lowest_stiffness_n_per_mm,
            softest_at_mm: self.on_panel(found.softest_at_mm),
            pops: found.pops_at_n.zip(found.pops_after_mm).map(|(force, travel_mm)| Forced {
                force_n: Doubtful { value: force, doubt: doubt * force },
                travel_mm,
                stays: found.stays_popped.unwrap_or(false),
            }),
        }
    }
}

/// How far the variants part, as shares of the likely one's values.
struct Spread {
    stretch: f64,
    tension: f64,
}

impl Spread {
    fn of(tried: &[Option<Dent>]) -> Self {
        let of = |dent: &Option<Dent>| dent.as_ref().map(|dent| peaks(&remains(&dent.panel)));
        let peaks: Vec<Option<[f64; 2]>> = tried.iter().map(of).collect();
        let half_range = |pair: &[Option<[f64; 2]>], k: usize| match (pair[0], pair[1], peaks[0]) {
            (Some(low), Some(high), Some(likely)) => 0.5 * (low[k] - high[k]).abs() / likely[k].max(1e-9),
            _ => UNKNOWN,
        };
        let sum = |k: usize, own: f64| {
            let pairs = peaks.get(1..).unwrap_or_default().chunks_exact(2);
            pairs.map(|pair| half_range(pair, k).powi(2)).fold(own * own, |a, b| a + b).sqrt()
        };
        Self { stretch: sum(0, METHOD), tension: sum(1, METHOD_TENSION) }
    }
}

/// Largest stretch and largest tension in size.
fn peaks(points: &[Remains]) -> [f64; 2] {
    let most = |f: &dyn Fn(&Remains) -> f64| points.iter().map(f).fold(0.0, f64::max);
    [most(&|p| p.stretch), most(&|p| p.tension_mpa.abs())]
}
