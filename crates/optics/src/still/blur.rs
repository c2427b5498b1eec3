//! A window's weighted means: three moving sums each way come near a Gaussian.

use rayon::prelude::*;

/// Moving sums in turn; three are within 3 % of a Gaussian.
const TIMES: usize = 3;

/// Mean under the window of every pixel; `radius` is half a side of one moving sum, px. Its standard deviation is
/// about `radius + 1/2`. Outside the image counts as zero.
pub(super) fn blurred(mut values: Vec<f32>, width: usize, radius: usize) -> Vec<f32> {
    let mut other = vec![0f32; values.len()];
    for _ in 0..TIMES {
        values.par_chunks(width).zip(other.par_chunks_mut(width)).for_each(|(row, out)| along(row, out, radius));
        down(&other, &mut values, width, radius);
    }
    values
}

fn along(row: &[f32], out: &mut [f32], radius: usize) {
    let n = row.len();
    let scale = 1.0 / (2 * radius + 1) as f32;
    let mut sum: f64 = row[..radius.min(n)].iter().map(|v| f64::from(*v)).sum();
    for x in 0..n {
        if x + radius < n {
            sum += f64::from(row[x + radius]);
        }
        if x > radius {
            sum -= f64::from(row[x - radius - 1]);
        }
        out[x] = sum as f32 * scale;
    }
}

/// Columns a band at a time, so that both cores have work and the running sums stay near.
const BAND: usize = 64;

fn down(from: &[f32], to: &mut [f32], width: usize, radius: usize) {
    let height = from.len() / width;
    let scale = 1.0 / (2 * radius + 1) as f32;
    let starts: Vec<usize> = (0..width).step_by(BAND).collect();
    let bands: Vec<Vec<f32>> = starts
        .par_iter()
        .map(|&start| {
            let columns = BAND.min(width - start);
            let row = |y: usize| &from[y * width + start..y * width + start + columns];
            let mut sums = vec![0f64; columns];
            let mut out = Vec::with_capacity(columns * height);
            for y in 0..height + radius {
                if y < height {
                    sums.iter_mut().zip(row(y)).for_each(|(s, v)| *s += f64::from(*v));
                }
                if y > 2 * radius {
                    sums.iter_mut().zip(row(y - 2 * radius - 1)).for_each(|(s, v)| *s -= f64::from(*v));
                }
                if y >= radius {
                    out.extend(sums.iter().map(|s| *s as f32 * scale));
                }
            }
            out
        })
        .collect();
    for (start, band) in starts.iter().zip(&bands) {
        let columns = BAND.min(width - start);
        for (y, row) in band.chunks_exact(columns).enumerate() {
            to[y * width + start..y * width + start + columns].copy_from_slice(row);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_single_bright_pixel_spreads_to_the_window_and_keeps_its_sum() {
        let (w, h, r) = (61, 57, 4);
        let mut image = vec![0f32; w * h];
        image[28 * w + 30] = 1.0;
        let out = blurred(image, w, r);
        let sum: f32 = out.iter().sum();
        assert!((sum - 1.0).abs() < 1e-4, "{sum}");
        let spread: f64 = (0..w * h).map(|i| f64::from(out[i]) * ((i % w) as f64 - 30.0).powi(2)).sum();
        // Variance of three moving sums of 2r + 1: 3 ((2r + 1)² - 1) / 12.
        let expected = 3.0 * ((2 * r + 1).pow(2) as f64 - 1.0) / 12.0;
        assert!((spread / expected - 1.0).abs() < 1e-3, "{spread} {expected}");
        assert!((out[28 * w + 25] - out[23 * w + 30]).abs() < 1e-6);
    }
}
