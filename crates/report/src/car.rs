//! The drawn car: our own, unfolded, front to the left, the left side below and the right side
//! above. No car in particular.

use std::fmt::Write;

/// A panel: its codes, its outline in the view it belongs to, and the box around it
/// (x, y, width, height).
struct Panel {
    code: &'static str,
    view: View,
    outline: &'static str,
    within: [f64; 4],
}

/// Which part of the unfolded car, and so how its outlines are placed.
#[derive(Clone, Copy, PartialEq)]
enum View {
    Above,
    Left,
    Right,
}

const SIZE: [f64; 2] = [392.0, 220.0];
/// Room above and below, for the wheels.
const ROOM: f64 = 4.0;
/// Where the left side's outlines start, down from the top; the right side is its mirror image.
const SIDE_DOWN: f64 = 150.0;

const RAIL: (&str, [f64; 4]) = (
    "M116,32 C128,12 150,3 190,2 L240,2 C270,3 285,10 301,29 L294,31 C281,14 268,8 240,7 L190,7 C155,8 139,14 125,33 Z",
    [116.0, 2.0, 185.0, 31.0],
);
const FRONT_WING: (&str, [f64; 4]) = (
    "M38,38 C58,32 88,31 114,33 L121,35 L126,57 L111,57 C109,43 100,36 88,36 C76,36 67,43 65,57 L43,57 C38,52 36,44 38,38 Z",
    [36.0, 31.0, 90.0, 26.0],
);
const FRONT_DOOR: (&str, [f64; 4]) = (
    "M123,35 L206,34 L208,59 L128,59 Z",
    [123.0, 34.0, 85.0, 25.0],
);
const REAR_DOOR: (&str, [f64; 4]) = (
    "M208,34 L285,34 C277,41 270,48 268,59 L210,59 Z",
    [208.0, 34.0, 77.0, 25.0],
);
const REAR_WING: (&str, [f64; 4]) = (
    "M288,34 C306,30 342,31 358,36 C362,43 361,51 356,57 L337,57 C335,43 325,36 313,36 C301,36 291,43 289,57 L270,57 C272,48 279,41 288,34 Z",
    [270.0, 30.0, 92.0, 27.0],
);
const SILL: (&str, [f64; 4]) = (
    "M112,61 L288,61 L286,66 L114,66 Z",
    [112.0, 61.0, 176.0, 5.0],
);

const fn side(
    code: &'static str,
    view: View,
    (outline, within): (&'static str, [f64; 4]),
) -> Panel {
    Panel {
        code,
        view,
        outline,
        within,
    }
}

const fn above(code: &'static str, outline: &'static str, within: [f64; 4]) -> Panel {
    Panel {
        code,
        view: View::Above,
        outline,
        within,
    }
}

const REAR_LID: (&str, [f64; 4]) = (
    "M293,83 C312,82 330,83 344,87 C349,94 351,102 351,110 C351,118 349,126 344,133 C330,137 312,138 293,137 C299,128 301,119 301,110 C301,101 299,92 293,83 Z",
    [293.0, 82.0, 58.0, 56.0],
);

const PANELS: [Panel; 19] = [
    above(
        "front_bumper",
        "M36,84 C26,92 23,100 23,110 C23,120 26,128 36,136 L44,134 C36,126 34,118 34,110 C34,102 36,94 44,86 Z",
        [23.0, 84.0, 21.0, 52.0],
    ),
    above(
        "bonnet",
        "M47,86 C70,81 95,80 116,81 C110,90 108,100 108,110 C108,120 110,130 116,139 C95,140 70,139 47,134 C40,126 37,118 37,110 C37,102 40,94 47,86 Z",
        [37.0, 80.0, 79.0, 60.0],
    ),
    above(
        "roof",
        "M153,88 C190,85 225,85 258,88 C261,96 262,103 262,110 C262,117 261,124 258,132 C225,135 190,135 153,132 C150,124 149,117 149,110 C149,103 150,96 153,88 Z",
        [149.0, 85.0, 113.0, 50.0],
    ),
    above("boot_lid", REAR_LID.0, REAR_LID.1),
    above("tailgate", REAR_LID.0, REAR_LID.1),
    above(
        "rear_bumper",
        "M347,86 L355,84 C364,92 367,101 367,110 C367,119 364,128 355,136 L347,134 C352,126 354,118 354,110 C354,102 352,94 347,86 Z",
        [347.0, 84.0, 20.0, 52.0],
    ),
    side("roof_rail_left", View::Left, RAIL),
    side("front_wing_left", View::Left, FRONT_WING),
    side("front_door_left", View::Left, FRONT_DOOR),
    side("rear_door_left", View::Left, REAR_DOOR),
    side("rear_wing_left", View::Left, REAR_WING),
    side("sill_left", View::Left, SILL),
    side("roof_rail_right", View::Right, RAIL),
    side("front_wing_right", View::Right, FRONT_WING),
    side("front_door_right", View::Right, FRONT_DOOR),
    side("rear_door_right", View::Right, REAR_DOOR),
    side("rear_wing_right", View::Right, REAR_WING),
    side("sill_right", View::Right, SILL),
    side(
        "fuel_flap",
        View::Right,
        (
            "M340,40 L350,40 L350,49 L340,49 Z",
            [340.0, 40.0, 10.0, 9.0],
        ),
    ),
];

/// Codes of the panels that the drawing knows.
#[cfg(test)]
pub(crate) fn codes() -> impl Iterator<Item = &'static str> {
    PANELS.iter().map(|panel| panel.code)
}

/// Draws the car as SVG with numbered marks: (panel code, place in its box, number).
pub(crate) fn draw<'a>(
    marks: impl Iterator<Item = (&'a str, (f64, f64), usize)> + Clone,
) -> String {
    let [width, height] = SIZE;
    let (top, tall) = (-ROOM, height + 2.0 * ROOM);
    let mut svg =
        format!(r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 {top} {width} {tall}">"#);
    svg.push_str(
        r##"<g fill="#fff" stroke="#5b6b73" stroke-width="0.9" stroke-linejoin="round">"##,
    );
    for view in [View::Above, View::Left, View::Right] {
        let _ = write!(svg, r#"<g transform="{}">"#, placed(view));
        svg.push_str(glass(view));
        for panel in PANELS
            .iter()
            .filter(|panel| panel.view == view && panel.code != "tailgate")
        {
            let hit = marks
                .clone()
                .any(|(code, ..)| code == panel.code || stands_for(panel.code, code));
            let fill = if hit {
                r##" fill="#dcebee" stroke="#17505c" stroke-width="1.4""##
            } else {
                ""
            };
            let _ = write!(svg, r#"<path d="{}"{fill}/>"#, panel.outline);
        }
        svg.push_str("</g>");
    }
    svg.push_str("</g>");
    for (code, at, number) in marks {
        if let Some((x, y)) = place(code, at) {
            let _ = write!(
                svg,
                r##"<circle cx="{x:.1}" cy="{y:.1}" r="6.4" fill="#17505c" stroke="#fff" stroke-width="1"/>"##
            );
            let _ = write!(
                svg,
                r##"<text x="{x:.1}" y="{:.1}" font-family="Libertinus Serif" font-weight="600" font-size="8.6" fill="#fff" text-anchor="middle">{number}</text>"##,
                y + 2.9
            );
        }
    }
    svg.push_str("</svg>");
    svg
}

/// Where a place on a panel lies in the whole drawing.
fn place(code: &str, (across, down): (f64, f64)) -> Option<(f64, f64)> {
    let panel = PANELS.iter().find(|panel| panel.code == code)?;
    let share = |value: f64| {
        if value.is_finite() {
            value.clamp(0.0, 1.0)
        } else {
            0.5
        }
    };
    let [left, top, width, height] = panel.within;
    let x = left + share(across) * width;
    let y = top + share(down) * height;
    Some(match panel.view {
        View::Above => (x, y),
        View::Left => (x, SIDE_DOWN + y),
        // Down on paper is up in the mirrored outline.
        View::Right => (
            x,
            SIZE[1] - SIDE_DOWN - (top + (1.0 - share(down)) * height),
        ),
    })
}

fn stands_for(drawn: &str, code: &str) -> bool {
    drawn == "boot_lid" && code == "tailgate"
}

fn placed(view: View) -> String {
    match view {
        View::Above => String::new(),
        View::Left => format!("translate(0 {SIDE_DOWN})"),
        View::Right => format!("matrix(1 0 0 -1 0 {})", SIZE[1] - SIDE_DOWN),
    }
}

/// Glass and wheels: drawn, but no panels.
fn glass(view: View) -> &'static str {
    match view {
        View::Above => {
            r##"<g fill="#eef1f2" stroke="#a9b3b8"><path d="M120,82 L150,88 C147,96 146,103 146,110 C146,117 147,124 150,132 L120,138 C114,128 112,119 112,110 C112,101 114,92 120,82 Z"/><path d="M261,88 L290,84 C296,92 298,101 298,110 C298,119 296,128 290,136 L261,132 C264,124 265,117 265,110 C265,103 264,96 261,88 Z"/></g>"##
        }
        View::Left | View::Right => {
            r##"<g fill="#eef1f2" stroke="#a9b3b8"><path d="M129,32 C141,16 158,9 190,9 L240,9 C265,10 278,16 291,31 Z"/><circle cx="88" cy="55" r="17"/><circle cx="88" cy="55" r="9"/><circle cx="313" cy="55" r="17"/><circle cx="313" cy="55" r="9"/></g>"##
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn marks_lie_on_their_side_of_the_car() {
        let (_, left) = place("front_door_left", (0.5, 0.5)).unwrap();
        let (_, right) = place("front_door_right", (0.5, 0.5)).unwrap();
        assert!(right < 80.0 && left > 140.0);
        let (_, upper) = place("front_door_right", (0.5, 0.0)).unwrap();
        assert!(upper < right);
        assert_eq!(place("spoiler", (0.5, 0.5)), None);
    }

    #[test]
    fn a_hit_panel_is_filled_and_numbered() {
        let svg = draw([("tailgate", (0.5, f64::NAN), 7)].into_iter());
        assert_eq!(svg.matches("#dcebee").count(), 1);
        assert!(svg.contains(">7</text>"));
    }
}
