//! What a reading says of depths measured by hand.

use crate::gauge_file::{Agreement, GaugeFacts};
use crate::reading_file::Note;

/// One remark a depth.
pub(crate) fn notes(gauges: &[GaugeFacts]) -> Vec<Note> {
    gauges.iter().map(note).collect()
}

fn note(of: &GaugeFacts) -> Note {
    let gauge = format!(
        "depth by gauge of {:.2} ± {:.2} mm at x {:.0}, y {:.0} mm",
        of.against_shape_mm,
        2.0 * of.sigma_mm,
        of.asked.x_mm,
        of.asked.y_mm
    );
    let note = |code: &str, text: String| Note { code: code.into(), text };
    let (Some(agrees), Some(map), Some(sigma)) = (of.agrees, of.map_mm, of.map_sigma_mm) else {
        let across = of.filled_mm2.map_or(0.0, |area| 2.0 * (area / std::f64::consts::PI).sqrt());
        let text = format!(
            "{gauge}; the middle, {across:.0} mm across, is filled in as the smoothest shape that meets it, and lows, \
             highs and the verdict use that"
        );
        return note("gauge", text);
    };
    // The map is read a good deal finer than a gauge.
    let apart = format!("{gauge}; the map has {map:.3} ± {:.3} mm there", 2.0 * sigma);
    match agrees {
        Agreement::Agrees => note("gauge_agrees", format!("{apart}: they agree")),
        Agreement::Near => {
            let off = (of.against_shape_mm - map).abs();
            note("gauge_near", format!("{apart}: they are {off:.2} mm apart, a little more than their doubt"))
        }
        Agreement::Disagrees => {
            let off = (of.against_shape_mm - map).abs();
            let text = format!(
                "{apart}: they are {off:.2} mm apart, more than three times their doubt: check the tag size and the \
                 board size, the gauge's zero, and the place"
            );
            note("gauge_off", text)
        }
    }
}
