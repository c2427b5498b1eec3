//! The order of photos, and what the screen shows for each.

use dentwright_optics::{Axis, Board, Frame, Role};

/// What the screen shows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Picture {
    /// Plain with its tags.
    Tags,
    /// Brightness `1/2 + 1/2 cos(2π(periods·s + shift))`, in light, not in the screen's own values.
    Wave {
        /// Measured axis.
        axis: Axis,
        /// Across the lit area.
        periods: u32,
        /// In periods.
        shift: f64,
    },
}

/// One photo to be taken.
#[derive(Debug, Clone, PartialEq)]
pub struct Shot {
    /// Its file name.
    pub file: String,
    /// What it is for.
    pub role: Role,
    /// What the screen shows meanwhile.
    pub picture: Picture,
}

/// Length of the finest wave, mm. On the reference screen this gives the 36 and 20 periods whose accuracy
/// `docs/accuracy.md` states.
const FINEST_MM: f64 = 19.8;
/// Fewer are no finer pattern; more than sixty would be too fine for a phone at reading distance.
const FINE_PERIODS: std::ops::RangeInclusive<f64> = 9.0..=60.0;
/// Even steps of each wave.
const STEPS: u32 = 4;

/// The photos of a screen of this size: set-up, panel, then both axes from coarse to fine.
#[must_use]
pub fn plan(board: &Board) -> Vec<Shot> {
    let plain = |role, file: &str| Shot { file: file.to_owned(), role, picture: Picture::Tags };
    let mut shots = vec![plain(Role::Setup, "setup.jpg"), plain(Role::Panel, "panel.jpg")];
    for (axis, length_mm, name) in [(Axis::U, board.width_mm, "u"), (Axis::V, board.height_mm, "v")] {
        for periods in waves(length_mm) {
            shots.extend((0..STEPS).map(|k| Shot {
                file: format!("screen_{name}{periods}_{k}.jpg"),
                role: Role::Pattern,
                picture: Picture::Wave { axis, periods, shift: f64::from(k) / f64::from(STEPS) },
            }));
        }
    }
    shots
}

/// One period, the geometric middle, the finest: no step multiplies by more than eight.
fn waves(length_mm: f64) -> [u32; 3] {
    let fine = (length_mm / FINEST_MM).round().clamp(*FINE_PERIODS.start(), *FINE_PERIODS.end());
    [1, fine.sqrt().ceil() as u32, fine as u32]
}

impl Shot {
    /// As `capture.toml` names it.
    #[must_use]
    pub fn frame(&self) -> Frame {
        let (axis, periods, shift) = match self.picture {
            Picture::Tags => (None, None, None),
            Picture::Wave { axis, periods, shift } => (Some(axis), Some(f64::from(periods)), Some(shift)),
        };
        Frame { file: self.file.clone(), role: self.role, axis, periods, shift }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::board::tests::layout;

    #[test]
    fn the_reference_screen_has_its_26_photos() {
        let shots = plan(&layout().board().unwrap());
        assert_eq!(shots.len(), 26);
        let names: Vec<&str> = shots.iter().map(|s| s.file.as_str()).collect();
        assert_eq!(&names[..3], ["setup.jpg", "panel.jpg", "screen_u1_0.jpg"]);
        for name in ["screen_u6_3.jpg", "screen_u36_2.jpg", "screen_v5_0.jpg", "screen_v20_3.jpg"] {
            assert!(names.contains(&name), "{name}");
        }
    }

    #[test]
    fn no_step_from_coarse_to_fine_is_too_wide() {
        for length_mm in [90.0, 160.0, 250.0, 400.0, 708.0, 1200.0, 3000.0] {
            let [one, middle, fine] = waves(length_mm);
            assert!(one == 1 && middle <= 8 && fine <= 8 * middle && fine > middle, "{length_mm}: {middle} {fine}");
        }
    }
}
