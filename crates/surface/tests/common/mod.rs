//! Random maps for the tests of laws and coverage.
#![allow(dead_code)] // not every test file needs all of it

use dentwright_surface::{Grid, Map, longer_than};

/// Random numbers that are the same every time (Marsaglia's xorshift64*).
pub struct Random(u64);

impl Random {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1)
    }

    /// Even between 0 and 1.
    pub fn even(&mut self) -> f64 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        (self.0.wrapping_mul(0x2545_f491_4f6c_dd1d) >> 11) as f64 / (1u64 << 53) as f64
    }

    /// Standard normal (Box and Muller).
    pub fn normal(&mut self) -> f64 {
        let (a, b) = (self.even().max(1e-300), self.even());
        (-2.0 * a.ln()).sqrt() * (std::f64::consts::TAU * b).cos()
    }
}

/// A random field whose values are alike over `length_mm`, with standard deviation `sigma_mm`.
pub fn field(grid: Grid, length_mm: f64, sigma_mm: f64, random: &mut Random) -> Map {
    let white = Map { grid, values: (0..grid.len()).map(|_| random.normal() as f32).collect() };
    let mut smooth = longer_than(&white, length_mm);
    let square = smooth.values.iter().map(|v| f64::from(v * v)).sum::<f64>() / grid.len() as f64;
    let times = (sigma_mm / square.sqrt()) as f32;
    smooth.values.iter_mut().for_each(|v| *v *= times);
    smooth
}

/// A round bump, 1 at its middle.
pub fn bump(x: f64, y: f64, radius: f64) -> f64 {
    (-(x * x + y * y) / (2.0 * radius * radius)).exp()
}

pub fn sum(a: &Map, b: &Map) -> Map {
    Map { grid: a.grid, values: a.values.iter().zip(&b.values).map(|(a, b)| a + b).collect() }
}

pub fn even(grid: Grid, value: f64) -> Map {
    Map { grid, values: vec![value as f32; grid.len()] }
}
