//! Simulated shops: coefficients that nobody knows, jobs with the hours that they took. Every dent's time
//! is drawn on its own, so that nothing here uses the formulas for sums that it is to check.

#![allow(dead_code, reason = "each test takes what it needs")]

use dentwright_price::{
    Access, Conditions, Dent, FinishedJob, HoursSettings, Kind, Learned, Metal, Paint, Place, Timed, hours,
};

/// Numbers from a seed (SplitMix64: Steele, Lea, Flood, OOPSLA 2014; normals by Box and Muller, 1958).
pub struct Draw(u64);

impl Draw {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) ^ 0x5851_f42d_4c95_7f2d)
    }

    pub fn uniform(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^= z >> 31;
        ((z >> 11) as f64 + 0.5) / (1_u64 << 53) as f64
    }

    pub fn normal(&mut self) -> f64 {
        let (u, v) = (self.uniform(), self.uniform());
        (-2.0 * u.ln()).sqrt() * (std::f64::consts::TAU * v).cos()
    }

    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.uniform()
    }

    pub fn whole(&mut self, low: u32, high: u32) -> u32 {
        low + (self.uniform() * f64::from(high - low + 1)) as u32
    }

    pub fn of<T: Copy>(&mut self, all: &[T]) -> T {
        all[(self.uniform() * all.len() as f64) as usize]
    }
}

/// A shop whose truth is known here only.
pub struct Shop {
    truth: HoursSettings,
    known: Learned,
}

impl Shop {
    /// A shop with these true coefficients and spreads.
    pub fn of(truth: HoursSettings) -> Self {
        Self { known: Learned::start(&truth).unwrap(), truth }
    }

    /// A shop drawn from what the settings say of shops: its coefficients by their widths, its spread by
    /// its weight.
    pub fn drawn(settings: &HoursSettings, draw: &mut Draw) -> Self {
        let (mut truth, width) = (settings.clone(), &settings.width);
        let weight = width.spread_weight as u32;
        let chi: f64 = (0..weight).map(|_| draw.normal().powi(2)).sum();
        let stretch = (f64::from(weight) / chi).sqrt();
        truth.spread_own *= stretch;
        truth.spread_shared *= stretch;
        let mut times = |value: &mut f64, width: f64| *value *= (width * stretch * draw.normal()).exp();
        times(&mut truth.base_hours, width.base);
        times(&mut truth.cold_times, width.cold);
        let (k, m, a, p) = (&mut truth.kind, &mut truth.metal, &mut truth.access, &mut truth.place);
        for kind in [&mut k.hail, &mut k.soft, &mut k.sharp, &mut k.crease, &mut k.high] {
            times(kind, width.kind);
        }
        [&mut m.high_strength_steel, &mut m.aluminium].into_iter().for_each(|one| times(one, width.metal));
        for access in [&mut a.trim_off, &mut a.braced, &mut a.glue_only, &mut a.none] {
            times(access, width.access);
        }
        [&mut p.body_line, &mut p.edge, &mut p.rail].into_iter().for_each(|one| times(one, width.place));
        times(&mut truth.paint.old, width.paint);
        times(&mut truth.paint.repainted, width.paint);
        truth.area_power += width.power * stretch * draw.normal();
        truth.depth_power += width.power * stretch * draw.normal();
        truth.sharpness_power += width.power * stretch * draw.normal();
        truth.count_power += width.count_power * stretch * draw.normal();
        // Within what settings may be; few shops are moved by this.
        truth.sharpness_power = truth.sharpness_power.clamp(0.0, truth.area_power);
        truth.count_power = truth.count_power.min(1.0);
        truth.spread_own = truth.spread_own.min(1.0);
        Self::of(truth)
    }

    /// A shop far from the shipped coefficients, with these spreads.
    pub fn odd(spread_own: f64, spread_shared: f64) -> Self {
        let mut truth = HoursSettings { base_hours: 0.98, area_power: 0.62, ..HoursSettings::default() };
        (truth.spread_own, truth.spread_shared) = (spread_own, spread_shared);
        truth.kind.hail = 0.20;
        truth.access.glue_only = 1.8;
        truth.metal.aluminium = 1.45;
        Self::of(truth)
    }

    /// A job of this shop; a third are timed line by line, the others as a whole.
    pub fn job(&self, nth: usize, draw: &mut Draw) -> FinishedJob {
        let conditions = Conditions {
            paint: draw.of(&[Paint::Factory, Paint::Factory, Paint::Factory, Paint::Old, Paint::Repainted]),
            panel_c: (draw.uniform() < 0.4).then(|| draw.between(5.0, 40.0)),
        };
        let lines = if draw.uniform() < 0.4 { draw.whole(3, 8) } else { draw.whole(1, 3) };
        let dents: Vec<Dent> = (0..lines).map(|_| any_dent(lines > 3, draw)).collect();
        let day = self.truth.spread_shared * draw.normal() - 0.5 * self.truth.spread_shared.powi(2);
        let worked: Vec<f64> = dents.iter().map(|dent| day.exp() * self.worked(dent, &conditions, draw)).collect();
        let timed = if draw.uniform() < 0.33 {
            dents.into_iter().zip(worked).map(|(dent, worked_h)| Timed { dents: vec![dent], worked_h }).collect()
        } else {
            vec![Timed { dents, worked_h: worked.iter().sum() }]
        };
        FinishedJob { what: format!("{nth}"), conditions, timed }
    }

    pub fn jobs(&self, count: usize, draw: &mut Draw) -> Vec<FinishedJob> {
        (0..count).map(|nth| self.job(nth, draw)).collect()
    }

    /// Expected hours of a line in this shop.
    pub fn expected(&self, dent: &Dent, conditions: &Conditions) -> f64 {
        hours(dent, conditions, &self.known).likely
    }

    /// Hours of a line on an ordinary day: every dent of it drawn on its own.
    fn worked(&self, dent: &Dent, conditions: &Conditions, draw: &mut Draw) -> f64 {
        let each = self.expected(dent, conditions) / f64::from(dent.count);
        let own = self.truth.spread_own;
        (0..dent.count).map(|_| each * (own * draw.normal() - 0.5 * own * own).exp()).sum()
    }
}

fn any_dent(hail: bool, draw: &mut Draw) -> Dent {
    let kind = if hail { Kind::Hail } else { draw.of(&Kind::ALL) };
    let length_mm = if hail { draw.between(8.0, 35.0) } else { draw.between(12.0, 120.0) };
    let depth_mm = length_mm * draw.between(0.01, 0.05);
    Dent {
        kind,
        length_mm,
        width_mm: length_mm * if kind == Kind::Crease { draw.between(0.15, 0.4) } else { draw.between(0.8, 1.0) },
        depth_mm,
        metal: draw.of(&[Metal::Steel, Metal::Steel, Metal::HighStrengthSteel, Metal::Aluminium]),
        access: draw.of(&Access::ALL[..4]),
        place: draw.of(&[Place::Flat, Place::Flat, Place::BodyLine, Place::Edge, Place::Rail]),
        sharpness: None,
        count: if hail { draw.whole(3, 60) } else { 1 },
    }
}
