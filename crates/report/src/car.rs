//! The drawn car: our own, unfolded, the same as in the web app (`web/src/lib/car.ts`) but lying
//! on its side to save paper: front to the left, the car's left side below. No car in particular.

use std::fmt::Write;

/// Size of the drawing as the app has it, front up; a unit is about a centimetre.
const WIDTH: f64 = 420.0;
const HEIGHT: f64 = 640.0;
/// Lays the drawing down: front up becomes front to the left.
const LAID_DOWN: &str = "matrix(0 -1 1 0 0 420)";
/// Turns a left outline into a right one.
const MIRROR: &str = "matrix(-1 0 0 1 420 0)";

/// A panel's outline and the box around it: left, top, width, height.
type Outline = (&'static str, &'static str, [f64; 4]);

const MIDDLE: [Outline; 7] = [
    ("front_bumper", "M132 52 Q132 20 168 14 Q210 8 252 14 Q288 20 288 52 Q210 40 132 52Z", [132.0, 11.0, 156.0, 41.0]),
    ("bonnet", "M136 62 Q210 48 284 62 L290 178 Q210 160 130 178Z", [130.0, 55.0, 160.0, 123.0]),
    ("boot_lid", "M140 470 Q210 482 280 470 L282 560 Q210 578 138 560Z", [138.0, 470.0, 144.0, 99.0]),
    ("tailgate", "M146 420 Q210 432 274 420 L284 560 Q210 578 136 560Z", [136.0, 420.0, 148.0, 149.0]),
    (
        "rear_bumper",
        "M132 574 Q210 592 288 574 L286 606 Q282 624 252 628 Q210 633 168 628 Q138 624 134 606Z",
        [132.0, 574.0, 156.0, 57.0],
    ),
    ("roof", "M152 246 Q210 236 268 246 L272 408 Q210 420 148 408Z", [148.0, 241.0, 124.0, 173.0]),
    (
        "fuel_flap",
        "M352 436 h16 a6 6 0 0 1 6 6 v16 a6 6 0 0 1 -6 6 h-16 a6 6 0 0 1 -6 -6 v-16 a6 6 0 0 1 6 -6Z",
        [346.0, 436.0, 28.0, 28.0],
    ),
];

/// Outlines of the left side; the right side is their mirror image.
const SIDE: [Outline; 6] = [
    ("front_wing", "M44 66 Q96 50 122 64 L116 186 L40 186 L40 172 A38 38 0 0 0 40 98 Z", [40.0, 57.0, 82.0, 129.0]),
    ("front_door", "M40 192 L92 192 L92 304 L40 304Z", [40.0, 192.0, 52.0, 112.0]),
    ("rear_door", "M40 310 L92 310 L92 392 Q88 410 74 418 L40 418Z", [40.0, 310.0, 52.0, 108.0]),
    (
        "rear_wing",
        "M78 422 Q94 414 98 396 L122 420 L126 562 Q96 574 56 566 L44 546 A38 38 0 0 0 40 474 L40 424Z",
        [40.0, 396.0, 86.0, 174.0],
    ),
    ("roof_rail", "M124 202 Q132 228 140 244 L136 412 L122 408 L118 300Z", [118.0, 202.0, 22.0, 210.0]),
    ("sill", "M8 192 L32 192 L32 418 L8 418 Q4 305 8 192Z", [6.0, 192.0, 26.0, 226.0]),
];

/// Windscreen; then the side windows, left.
const GLASS: [&str; 3] = [
    "M134 188 Q210 170 286 188 L268 238 Q210 228 152 238Z",
    "M97 196 L114 204 L114 300 L97 300Z",
    "M97 310 L114 310 L116 402 L99 390Z",
];
const REAR_GLASS: &str = "M149 416 Q210 428 271 416 L279 462 Q210 474 141 462Z";
const TAILGATE_GLASS: &str = "M160 432 Q210 440 260 432 L268 478 Q210 488 152 478Z";
/// Centres of the wheels, left.
const WHEELS: [[f64; 2]; 2] = [[30.0, 135.0], [30.0, 510.0]];

/// A panel as it is drawn.
struct Panel {
    code: String,
    outline: &'static str,
    within: [f64; 4],
    mirrored: bool,
}

/// All panels; of boot lid and tailgate both.
fn panels() -> Vec<Panel> {
    let middle = MIDDLE.into_iter().map(|(code, outline, within)| Panel {
        code: code.to_owned(),
        outline,
        within,
        mirrored: false,
    });
    let sides = SIDE.into_iter().flat_map(|(code, outline, within)| {
        let [left, top, width, height] = within;
        [("left", left, false), ("right", WIDTH - left - width, true)].map(|(side, left, mirrored)| Panel {
            code: format!("{code}_{side}"),
            outline,
            within: [left, top, width, height],
            mirrored,
        })
    });
    // The flap lies on a wing, so it is drawn after it.
    sides.chain(middle).collect()
}

/// Codes of the panels that the drawing knows.
#[cfg(test)]
pub(crate) fn codes() -> Vec<String> {
    panels().into_iter().map(|panel| panel.code).collect()
}

/// A numbered place: panel code, place in the panel's box (right and down as the app draws it),
/// number.
pub(crate) type Mark<'a> = (&'a str, (f64, f64), usize);

/// Draws the car with its marks, as SVG.
pub(crate) fn draw(marks: &[Mark]) -> String {
    let hatch = marks.iter().any(|(code, ..)| *code == "tailgate");
    let mut svg = format!(r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {HEIGHT} {WIDTH}">"#);
    let _ = write!(
        svg,
        r##"<g transform="{LAID_DOWN}" fill="#fff" stroke="#5b6b73" stroke-width="1.3" stroke-linejoin="round">"##
    );
    svg.push_str(&glass(hatch));
    for panel in panels() {
        if panel.code == if hatch { "boot_lid" } else { "tailgate" } {
            continue;
        }
        let hit = marks.iter().any(|(code, ..)| *code == panel.code);
        let fill = if hit { r##" fill="#d6e7ea" stroke="#17505c" stroke-width="2.2""## } else { "" };
        let turn = if panel.mirrored { format!(r#" transform="{MIRROR}""#) } else { String::new() };
        let _ = write!(svg, r#"<path d="{}"{turn}{fill}/>"#, panel.outline);
    }
    if hatch {
        let _ = write!(svg, r##"<path d="{TAILGATE_GLASS}" fill="#eef1f2" stroke="#a9b3b8"/>"##);
    }
    svg.push_str("</g>");
    for &(code, at, number) in marks {
        if let Some((x, y)) = place(code, at) {
            svg.push_str(&mark(x, y, number));
        }
    }
    svg.push_str("</svg>");
    svg
}

fn mark(x: f64, y: f64, number: usize) -> String {
    let baseline = y + 4.4;
    format!(
        r##"<circle cx="{x:.1}" cy="{y:.1}" r="10.5" fill="#17505c" stroke="#fff" stroke-width="1.5"/><text x="{x:.1}" y="{baseline:.1}" font-family="Libertinus Serif" font-weight="600" font-size="13.5" fill="#fff" text-anchor="middle">{number}</text>"##
    )
}

/// Where a place on a panel lies in the drawing as laid down.
fn place(code: &str, (across, down): (f64, f64)) -> Option<(f64, f64)> {
    let panel = panels().into_iter().find(|panel| panel.code == code)?;
    let share = |value: f64| {
        if value.is_finite() { value.clamp(0.0, 1.0) } else { 0.5 }
    };
    let [left, top, width, height] = panel.within;
    let (x, y) = (left + share(across) * width, top + share(down) * height);
    Some((y, WIDTH - x))
}

/// Glass and wheels: drawn, but no panels.
fn glass(hatch: bool) -> String {
    let mut svg = String::from(r##"<g fill="#eef1f2" stroke="#a9b3b8">"##);
    for turn in ["", MIRROR] {
        let _ = write!(svg, r#"<g transform="{turn}">"#);
        for [x, y] in WHEELS {
            let _ = write!(svg, r#"<ellipse cx="{x}" cy="{y}" rx="17" ry="30"/>"#);
        }
        for outline in &GLASS[1..] {
            let _ = write!(svg, r#"<path d="{outline}"/>"#);
        }
        svg.push_str("</g>");
    }
    let _ = write!(svg, r#"<path d="{}"/>"#, GLASS[0]);
    if !hatch {
        let _ = write!(svg, r#"<path d="{REAR_GLASS}"/>"#);
    }
    svg.push_str("</g>");
    svg
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn marks_lie_on_their_side_of_the_car() {
        let (front, left) = place("front_door_left", (0.5, 0.5)).unwrap();
        let (rear, right) = place("rear_door_right", (0.5, 0.5)).unwrap();
        assert!(right < 0.3 * WIDTH && left > 0.7 * WIDTH && front < rear);
        assert_eq!(place("bonnet", (0.5, f64::NAN)), Some((116.5, 210.0)));
        assert_eq!(place("spoiler", (0.5, 0.5)), None);
    }

    #[test]
    fn a_hit_panel_is_filled_and_numbered() {
        let svg = draw(&[("tailgate", (0.5, 0.5), 7)]);
        assert_eq!(svg.matches("#d6e7ea").count(), 1);
        assert!(svg.contains(">7</text>") && svg.contains(TAILGATE_GLASS) && !svg.contains(REAR_GLASS));
    }

    /// A place that was tapped on the screen must be the same place on paper.
    #[test]
    fn paper_and_screen_draw_the_same_car() {
        let app = concat!(env!("CARGO_MANIFEST_DIR"), "/../../web/src/lib/car.ts");
        let app = std::fs::read_to_string(app).expect("the app's drawing is part of the project");
        for (code, outline, within) in MIDDLE.into_iter().chain(SIDE) {
            let within = within.map(|value| value.to_string()).join(", ");
            assert!(app.contains(&format!("'{outline}', {within}]")), "{code} differs");
        }
        for outline in GLASS.into_iter().chain([REAR_GLASS, TAILGATE_GLASS]) {
            assert!(app.contains(outline), "{outline} differs");
        }
    }
}
