//! The discrete Fourier transform of a square whose side is a power of two (Cooley and Tukey 1965).

use nalgebra::Complex;

/// Factors for squares of one side.
pub(crate) struct Fourier {
    side: usize,
    /// `exp(-2πi k / side)`.
    factors: Vec<Complex<f32>>,
}

impl Fourier {
    /// For squares of this side, a power of two.
    pub fn of(side: usize) -> Self {
        let factor = |k| {
            let (sin, cos) = (-std::f64::consts::TAU * k as f64 / side as f64).sin_cos();
            Complex::new(cos as f32, sin as f32)
        };
        Self { side, factors: (0..side / 2).map(factor).collect() }
    }

    /// Transforms rows, then columns, in place; not divided by anything. The inverse is the conjugate of the
    /// transform of the conjugate.
    pub fn transform(&self, values: &mut [Complex<f32>]) {
        for _ in 0..2 {
            values.chunks_exact_mut(self.side).for_each(|row| self.row(row));
            for i in 0..self.side {
                for j in i + 1..self.side {
                    values.swap(i * self.side + j, j * self.side + i);
                }
            }
        }
    }

    fn row(&self, row: &mut [Complex<f32>]) {
        let n = self.side;
        let bits = n.trailing_zeros();
        for i in 0..n {
            let j = i.reverse_bits() >> (usize::BITS - bits);
            if i < j {
                row.swap(i, j);
            }
        }
        let mut half = 1;
        while half < n {
            let stride = n / (2 * half);
            for block in row.chunks_exact_mut(2 * half) {
                let (low, high) = block.split_at_mut(half);
                for (k, (a, b)) in low.iter_mut().zip(high).enumerate() {
                    let turned = *b * self.factors[k * stride];
                    (*a, *b) = (*a + turned, *a - turned);
                }
            }
            half *= 2;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_wave_is_one_line_and_the_inverse_brings_it_back() {
        let n = 16;
        let wave = |i: usize| {
            let turn = std::f32::consts::TAU * (3.0 * (i % n) as f32 + 5.0 * (i / n) as f32) / n as f32;
            Complex::new(turn.cos(), turn.sin())
        };
        let start: Vec<Complex<f32>> = (0..n * n).map(wave).collect();
        let mut values = start.clone();
        let fourier = Fourier::of(n);
        fourier.transform(&mut values);
        for (i, v) in values.iter().enumerate() {
            let expected = if i == 5 * n + 3 { (n * n) as f32 } else { 0.0 };
            assert!((v - Complex::new(expected, 0.0)).norm() < 1e-3, "{i}: {v}");
        }
        values.iter_mut().for_each(|v| *v = v.conj());
        fourier.transform(&mut values);
        assert!(values.iter().zip(&start).all(|(v, s)| (v.conj() / (n * n) as f32 - s).norm() < 1e-5));
    }
}
