//! Maps as pictures: `map.png` with lows and highs marked, and plain ones.

use dentwright_surface::{Fold, Map, Spot, SpotKind};
use image::{Rgb, RgbImage};

/// Draws a deviation, y up; unread cells dark and hatched, those too steep to read in the colour of a low or high where
/// that is told; lows teal, highs amber, spots ringed.
pub(crate) fn map_png(deviation: &Map, spots: &[Spot], folds: &[Fold]) -> Result<Vec<u8>, image::ImageError> {
    let grid = deviation.grid;
    let range_mm = range_of_spots(spots);
    let mut picture = drawn(deviation, range_mm);
    for (fold, &i) in folds.iter().flat_map(|fold| fold.cells.iter().map(move |i| (fold, i))) {
        let (x, y) = ((i % grid.nx) as u32, (grid.ny - 1 - i / grid.nx) as u32);
        if (x + y) % 8 < 2 {
            picture.put_pixel(x, y, Rgb(fold.kind.map_or([200, 200, 204], ink_of)));
        }
    }
    for spot in spots {
        let (fx, fy) = grid.locate(spot.x_mm, spot.y_mm);
        let radius = (0.5 * spot.length_mm / grid.step_mm + 3.0).max(5.0);
        for k in 0..720 {
            let a = f64::from(k).to_radians() * 0.5;
            let (x, y) = (fx + radius * a.cos(), grid.ny as f64 - 1.0 - fy + radius * a.sin());
            if x >= 0.0 && y >= 0.0 && (x as u32) < picture.width() && (y as u32) < picture.height() {
                picture.put_pixel(x as u32, y as u32, Rgb(ink_of(spot.kind)));
            }
        }
    }
    encoded(&picture)
}

fn ink_of(kind: SpotKind) -> [u8; 3] {
    if kind == SpotKind::Low { [150, 255, 240] } else { [255, 225, 150] }
}

/// A map alone, one pixel a cell; colours end at `range_mm`.
pub(crate) fn small_png(map: &Map, range_mm: f64) -> Result<Vec<u8>, image::ImageError> {
    encoded(&drawn(map, range_mm))
}

/// Where the colours of a deviation end, mm: at the largest spot, at least ten micrometres, so that a sound panel looks
/// calm.
pub(crate) fn range_of_spots(spots: &[Spot]) -> f64 {
    spots.iter().map(|s| s.height_mm.abs()).fold(LEAST_RANGE_MM, f64::max)
}

/// Where the colours of a map should end, mm.
pub(crate) fn range_of(map: &Map) -> f64 {
    let largest = map.values.iter().filter(|v| v.is_finite()).map(|v| v.abs()).fold(0.0, f32::max);
    f64::from(largest).max(LEAST_RANGE_MM)
}

const LEAST_RANGE_MM: f64 = 0.01;

fn drawn(map: &Map, range_mm: f64) -> RgbImage {
    let grid = map.grid;
    RgbImage::from_fn(grid.nx as u32, grid.ny as u32, |x, y| {
        let d = map.values[(grid.ny - 1 - y as usize) * grid.nx + x as usize];
        Rgb(if d.is_finite() { colour_of(f64::from(d) / range_mm) } else { hatch(x, y) })
    })
}

fn encoded(picture: &RgbImage) -> Result<Vec<u8>, image::ImageError> {
    let mut bytes = std::io::Cursor::new(Vec::new());
    picture.write_to(&mut bytes, image::ImageFormat::Png)?;
    Ok(bytes.into_inner())
}

/// Signed square root of the share, so that small spots show beside a deep one.
pub(crate) fn colour_of(share: f64) -> [u8; 3] {
    let t = share.abs().min(1.0).sqrt();
    let end = if share < 0.0 { [0.0, 150.0, 160.0] } else { [235.0, 150.0, 20.0] };
    [0, 1, 2].map(|k| (46.0 + t * (end[k] - 46.0)) as u8)
}

fn hatch(x: u32, y: u32) -> [u8; 3] {
    if (x + y) % 8 == 0 { [70, 70, 74] } else { [18, 18, 20] }
}
