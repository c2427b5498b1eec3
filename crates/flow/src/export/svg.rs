//! The map as a drawing (SVG 1.1): the cells as a picture inside, spots, a scale bar and a legend as lines and text.
//! One unit is a millimetre.

use crate::picture::{colour_of, range_of_spots, small_png};
use dentwright_surface::{Map, Spot, SpotKind};
use std::fmt::Write as _;

/// Room round the map, mm.
const MARGIN: f64 = 4.0;
/// Room for scale and legend under it, mm.
const FOOT: f64 = 16.0;

/// A numbered place on the drawing: out of the panel with a whole ring, inward with a dashed one.
pub(crate) struct Numbered {
    /// Place, mm.
    pub at_mm: [f64; 2],
    /// Radius of its ring, mm.
    pub radius_mm: f64,
    /// Whether metal comes outward there.
    pub outward: bool,
    /// What stands beside it.
    pub says: String,
}

/// The drawing.
pub(super) fn svg(deviation: &Map, spots: &[Spot]) -> Result<Vec<u8>, image::ImageError> {
    svg_with(deviation, spots, &[])
}

/// The drawing with numbered places on it.
pub(crate) fn svg_with(deviation: &Map, spots: &[Spot], numbered: &[Numbered]) -> Result<Vec<u8>, image::ImageError> {
    let grid = deviation.grid;
    let (w, h) = (grid.nx as f64 * grid.step_mm, grid.ny as f64 * grid.step_mm);
    let range_mm = range_of_spots(spots);
    let picture = base64(&small_png(deviation, range_mm)?);
    let (width, height) = (w + 2.0 * MARGIN, h + 2.0 * MARGIN + FOOT);
    let mut text = format!(
        r##"<svg xmlns="http://www.w3.org/2000/svg" width="{width:.2}mm" height="{height:.2}mm" viewBox="0 0 {width:.2} {height:.2}" font-family="sans-serif" font-size="3.6">
<rect width="100%" height="100%" fill="#ffffff"/>
<image x="{MARGIN}" y="{MARGIN}" width="{w:.3}" height="{h:.3}" preserveAspectRatio="none" href="data:image/png;base64,{picture}"/>
"##
    );
    let place = |x: f64, y: f64| {
        let (fx, fy) = grid.locate(x, y);
        (MARGIN + (fx + 0.5) * grid.step_mm, MARGIN + h - (fy + 0.5) * grid.step_mm)
    };
    for (k, spot) in spots.iter().enumerate() {
        let (x, y) = place(spot.x_mm, spot.y_mm);
        let (a, b) = (0.5 * spot.length_mm + 1.0, 0.5 * spot.width_mm + 1.0);
        let ink = if spot.kind == SpotKind::Low { "#96fff0" } else { "#ffe196" };
        let _ = writeln!(
            text,
            r#"<ellipse cx="{x:.2}" cy="{y:.2}" rx="{a:.2}" ry="{b:.2}" transform="rotate({:.1} {x:.2} {y:.2})" fill="none" stroke="{ink}" stroke-width="0.5"/><text x="{:.2}" y="{:.2}" fill="{ink}">{} {:+.0} µm</text>"#,
            -spot.angle_deg,
            x + b.min(a) * 0.75 + 0.6,
            y - b.min(a) * 0.75 - 0.6,
            k + 1,
            1e3 * spot.height_mm
        );
    }
    for one in numbered {
        let (x, y) = place(one.at_mm[0], one.at_mm[1]);
        let dash = if one.outward { "" } else { r#" stroke-dasharray="1.2 0.8""# };
        let (r, says) = (one.radius_mm, &one.says);
        let _ = writeln!(
            text,
            r##"<circle cx="{x:.2}" cy="{y:.2}" r="{r:.2}" fill="none" stroke="#ffffff" stroke-width="0.6"{dash}/><text x="{:.2}" y="{:.2}" fill="#ffffff" font-weight="bold">{says}</text>"##,
            x + r + 0.8,
            y + 1.3
        );
    }
    let foot = MARGIN + h + 5.0;
    let bar = [100.0, 50.0, 20.0, 10.0, 5.0].into_iter().find(|b| *b <= 0.4 * w).unwrap_or(5.0);
    let _ = writeln!(
        text,
        r##"<path d="M{MARGIN} {foot:.2}h{bar}m0-1v2m-{bar}-2v2" stroke="#000000" stroke-width="0.4" fill="none"/><text x="{MARGIN}" y="{:.2}">{bar} mm</text>"##,
        foot + 5.5
    );
    legend(&mut text, MARGIN + w - 0.45 * w, foot - 1.5, 0.45 * w, range_mm);
    text.push_str("</svg>\n");
    Ok(text.into_bytes())
}

fn legend(text: &mut String, x: f64, y: f64, width: f64, range_mm: f64) {
    const STEPS: usize = 40;
    for k in 0..STEPS {
        let share = 2.0 * (k as f64 + 0.5) / STEPS as f64 - 1.0;
        let [r, g, b] = colour_of(share);
        let (at, wide) = (x + width * k as f64 / STEPS as f64, width / STEPS as f64 + 0.05);
        let _ = writeln!(
            text,
            r##"<rect x="{at:.2}" y="{y:.2}" width="{wide:.2}" height="3" fill="#{r:02x}{g:02x}{b:02x}"/>"##
        );
    }
    for (place, anchor, share) in [(0.0, "start", -1.0), (0.5, "middle", 0.0), (1.0, "end", 1.0)] {
        let _ = writeln!(
            text,
            r#"<text x="{:.2}" y="{:.2}" text-anchor="{anchor}">{:+.0} µm</text>"#,
            x + place * width,
            y + 7.0,
            1e3 * share * range_mm
        );
    }
}

/// Base64 (RFC 4648).
fn base64(bytes: &[u8]) -> String {
    const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let mut out = String::with_capacity(bytes.len() * 4 / 3 + 4);
    for chunk in bytes.chunks(3) {
        let word = chunk.iter().fold(0u32, |w, b| (w << 8) | u32::from(*b)) << (8 * (3 - chunk.len()));
        for k in 0..4 {
            let letter = LETTERS[(word >> (18 - 6 * k)) as usize & 63];
            out.push(if k <= chunk.len() { letter as char } else { '=' });
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::base64;

    #[test]
    fn the_test_vectors_of_rfc_4648() {
        let vectors = [("", ""), ("f", "Zg=="), ("fo", "Zm8="), ("foo", "Zm9v"), ("foobar", "Zm9vYmFy")];
        vectors.iter().for_each(|(plain, coded)| assert_eq!(base64(plain.as_bytes()), *coded));
    }
}
