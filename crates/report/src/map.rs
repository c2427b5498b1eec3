//! The picture of a map: pixels, spots on it, scale bar, legend.

use serde_json::{Value, json};

use crate::colour::{STOPS, UNREAD, colour, hex};
use crate::format::Format;
use crate::{LengthUnit, Map, Spot};

/// Most spots that carry their number in the picture; the table has them all.
const MOST_NUMBERED: usize = 60;
/// A map coarser than this is not worth a picture, and typst needs one pixel at least.
const LEAST_CELLS: usize = 2;

/// A map's pixels, one a cell, top row first.
pub(crate) struct Picture {
    pub(crate) rgb: Vec<u8>,
    pub(crate) about: Value,
}

/// Draws a map of heights whose colours end at `most_mm`, or at its own largest value; none if its sizes do not fit its
/// values, or nothing in it was read.
pub(crate) fn draw(map: &Map, spots: &[Spot], most_mm: Option<f64>, format: &Format) -> Option<Picture> {
    let scale = Scale { most: most_mm, unit: format.height_unit_mm(), say: &|value| format.height(value) };
    draw_as(map, spots, &scale, format)
}

/// What a map's colours stand for.
pub(crate) struct Scale<'a> {
    /// Value at the ends of the colours; none for the map's own largest.
    pub(crate) most: Option<f64>,
    /// What round numbers are counted in.
    pub(crate) unit: f64,
    /// Writes a value.
    pub(crate) say: &'a dyn Fn(f64) -> String,
}

/// Draws a map of anything.
pub(crate) fn draw_as(map: &Map, spots: &[Spot], scale: &Scale, format: &Format) -> Option<Picture> {
    let fits = map.nx >= LEAST_CELLS && map.ny >= LEAST_CELLS && map.deviation_mm.len() == map.nx * map.ny;
    if !(fits && map.step_mm > 0.0 && map.step_mm.is_finite()) {
        return None;
    }
    let own = map.deviation_mm.iter().filter(|mm| mm.is_finite()).fold(0.0_f32, |most, mm| most.max(mm.abs()));
    if own == 0.0 {
        return None;
    }
    let most = scale.most.unwrap_or(f64::from(own));
    let range = scale.unit * nice_above(most / scale.unit);
    let pixels = map.deviation_mm.chunks(map.nx).rev().flatten();
    let rgb = pixels.flat_map(|&mm| colour(mm / range as f32)).collect();
    let (width_mm, height_mm) = (map.nx as f64 * map.step_mm, map.ny as f64 * map.step_mm);
    let marks: Vec<Value> = spots.iter().enumerate().filter_map(|(index, spot)| mark(index, spot, map)).collect();
    let ticks = [-1.0, -0.5, 0.0, 0.5, 1.0].map(|share| (scale.say)(share * range));
    let about = json!({
        "nx": map.nx,
        "ny": map.ny,
        "aspect": width_mm / height_mm,
        "spots": marks,
        "bar": bar(width_mm, format),
        "stops": STOPS.map(hex),
        "unread": hex(UNREAD),
        "ticks": ticks,
    });
    Some(Picture { rgb, about })
}

/// A spot as shares of the picture, its turn clockwise as typst counts.
fn mark(index: usize, spot: &Spot, map: &Map) -> Option<Value> {
    let (width_mm, height_mm) = (map.nx as f64 * map.step_mm, map.ny as f64 * map.step_mm);
    let x = (spot.x_mm - map.x0_mm) / width_mm + 0.5 / map.nx as f64;
    let y = 1.0 - (spot.y_mm - map.y0_mm) / height_mm - 0.5 / map.ny as f64;
    let inside = (0.0..=1.0).contains(&x) && (0.0..=1.0).contains(&y);
    (inside && index < MOST_NUMBERED).then(|| {
        json!({
            "number": (index + 1).to_string(),
            "x": x, "y": y,
            "length": spot.length_mm / width_mm,
            "width": spot.width_mm / width_mm,
            "turn": if spot.angle_deg.is_finite() { -spot.angle_deg } else { 0.0 },
            "low": spot.height_mm < 0.0,
        })
    })
}

/// A scale bar of a round length, about a quarter of the picture.
fn bar(width_mm: f64, format: &Format) -> Value {
    let unit_mm = match format.unit {
        LengthUnit::Mm => 1.0,
        LengthUnit::Inch => 25.4,
    };
    let length = nice_above(0.17 * width_mm / unit_mm);
    let places = if length < 1.0 { 2 } else { 0 };
    json!({
        "share": length * unit_mm / width_mm,
        "label": format!("{}\u{a0}{}", format.number(length, places), format.length_unit()),
    })
}

/// The next 1, 2 or 5 times a power of ten, at or above.
fn nice_above(value: f64) -> f64 {
    let power = 10.0_f64.powf(value.log10().floor());
    let steps = [1.0, 2.0, 5.0, 10.0];
    // A hair of slack, so that 0.5 does not become 1.0 by rounding.
    power * steps.into_iter().find(|step| step * power >= value * (1.0 - 1e-6)).unwrap_or(10.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Language;

    const FORMAT: Format = Format { language: Language::En, unit: LengthUnit::Mm };

    /// 40 × 20 cells of 2 mm with one low cell at column 30, row 5.
    fn map() -> Map {
        let mut deviation_mm = vec![0.0; 40 * 20];
        deviation_mm[5 * 40 + 30] = -0.5;
        deviation_mm[0] = f32::NAN;
        Map { x0_mm: -10.0, y0_mm: 4.0, step_mm: 2.0, nx: 40, ny: 20, deviation_mm }
    }

    fn spot() -> Spot {
        Spot {
            x_mm: 50.0,
            y_mm: 14.0,
            height_mm: -0.5,
            sigma_mm: 0.001,
            length_mm: 8.0,
            width_mm: 4.0,
            angle_deg: 30.0,
            at_least_mm: None,
        }
    }

    /// The low cell's pixel is the deepest blue, 14 rows from the top, and the spot lies on it.
    #[test]
    fn rows_go_up_and_spots_lie_on_their_cells() {
        let picture = draw(&map(), &[spot()], None, &FORMAT).unwrap();
        let pixel = 3 * (14 * 40 + 30);
        assert_eq!(picture.rgb[pixel..pixel + 3], STOPS[0]);
        assert_eq!(picture.rgb[3 * 19 * 40..][..3], UNREAD);
        let mark = &picture.about["spots"][0];
        assert!((mark["x"].as_f64().unwrap() * 40.0 - 30.5).abs() < 1e-9);
        assert!((mark["y"].as_f64().unwrap() * 20.0 - 14.5).abs() < 1e-9);
    }

    #[test]
    fn scale_bar_and_legend_are_round() {
        let picture = draw(&map(), &[], None, &FORMAT).unwrap();
        assert_eq!(picture.about["bar"]["label"], "20\u{a0}mm");
        assert_eq!(picture.about["bar"]["share"], 0.25);
        assert_eq!(picture.about["ticks"][0], "−500\u{a0}µm");
    }

    #[test]
    fn what_is_no_map_is_not_drawn() {
        assert!(draw(&Map { nx: 41, ..map() }, &[], None, &FORMAT).is_none());
        assert!(draw(&Map { step_mm: 0.0, ..map() }, &[], None, &FORMAT).is_none());
        let unread = Map { deviation_mm: vec![f32::NAN; 800], ..map() };
        assert!(draw(&unread, &[], None, &FORMAT).is_none());
    }
}
