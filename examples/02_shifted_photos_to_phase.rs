//! Four photos of one shifted sine to its phase, pixel by pixel.

use dentwright_optics::{Photo, demodulate, linear_table};
use std::f64::consts::TAU;

fn main() {
    let (width, height) = (256, 16);
    let phase_of = |x: usize| 0.05 * x as f64 - 1.0;
    let photo = |shift: f64| {
        let level = |x: usize| 127.5 + 100.0 * (phase_of(x) + TAU * shift).cos();
        let grey = (0..width * height).map(|i| level(i % width).round() as u8).collect();
        Photo { width, height, grey, focal_35mm: None }
    };
    let shifts = [0.0, 0.25, 0.5, 0.75];
    let photos = shifts.map(photo);
    let photos: Vec<&Photo> = photos.iter().collect();
    // The levels above are linear in light already: exponent 1.
    let found = demodulate(&photos, &shifts, 1.0, &linear_table(1.0)).expect("four quarter steps determine a phase");
    let worst = (0..width)
        .map(|x| f64::from(found.phase[x]) - phase_of(x))
        .map(|d| (d - TAU * (d / TAU).round()).abs())
        .fold(0.0, f64::max);
    println!("largest error {:.1} mrad with levels rounded to one of 255", worst * 1e3);
    assert!(worst > 0.0 && worst < 0.01);
}
