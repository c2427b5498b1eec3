//! `map.png`: the deviation with lows and highs marked.

use crate::read::Reading;
use dentwright_surface::SpotKind;
use image::{Rgb, RgbImage};

/// Draws the deviation, y up; unread cells dark and hatched; lows teal, highs amber, spots ringed.
pub(crate) fn map_png(reading: &Reading) -> Result<Vec<u8>, image::ImageError> {
    let grid = reading.deviation.grid;
    let range = range_mm(reading);
    let mut picture = RgbImage::new(grid.nx as u32, grid.ny as u32);
    for (i, &d) in reading.deviation.values.iter().enumerate() {
        let (x, y) = ((i % grid.nx) as u32, (grid.ny - 1 - i / grid.nx) as u32);
        let colour = if d.is_finite() { colour(f64::from(d) / range) } else { hatch(x, y) };
        picture.put_pixel(x, y, Rgb(colour));
    }
    for spot in &reading.spots {
        let (fx, fy) = grid.locate(spot.x_mm, spot.y_mm);
        let radius = (0.5 * spot.length_mm / grid.step_mm + 3.0).max(5.0);
        let ink = if spot.kind == SpotKind::Low { [150, 255, 240] } else { [255, 225, 150] };
        for k in 0..720 {
            let a = f64::from(k).to_radians() * 0.5;
            let (x, y) = (fx + radius * a.cos(), grid.ny as f64 - 1.0 - fy + radius * a.sin());
            if x >= 0.0 && y >= 0.0 && (x as u32) < picture.width() && (y as u32) < picture.height() {
                picture.put_pixel(x as u32, y as u32, Rgb(ink));
            }
        }
    }
    let mut bytes = std::io::Cursor::new(Vec::new());
    picture.write_to(&mut bytes, image::ImageFormat::Png)?;
    Ok(bytes.into_inner())
}

/// Largest spot, at least ten micrometres, so that a sound panel looks calm.
fn range_mm(reading: &Reading) -> f64 {
    reading.spots.iter().map(|s| s.height_mm.abs()).fold(0.01, f64::max)
}

/// Signed square root of the share, so that small spots show beside a deep one.
fn colour(share: f64) -> [u8; 3] {
    let t = share.abs().min(1.0).sqrt();
    let end = if share < 0.0 { [0.0, 150.0, 160.0] } else { [235.0, 150.0, 20.0] };
    [0, 1, 2].map(|k| (46.0 + t * (end[k] - 46.0)) as u8)
}

fn hatch(x: u32, y: u32) -> [u8; 3] {
    if (x + y) % 8 == 0 { [70, 70, 74] } else { [18, 18, 20] }
}
