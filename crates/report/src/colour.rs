//! The colours of a map: blue for low, near white for level, red for high, so that the two
//! stay apart for the colour-blind and on a grey printer the strong ones are both dark.

/// From deepest low to tallest high, evenly spaced.
pub(crate) const STOPS: [[u8; 3]; 7] =
    [[16, 52, 104], [56, 116, 176], [158, 198, 224], [246, 245, 241], [244, 190, 152], [207, 94, 68], [120, 18, 34]];
/// Where nothing was read.
pub(crate) const UNREAD: [u8; 3] = [205, 205, 200];

/// Colour of a deviation as a share of the range, −1 to 1; NaN is unread.
pub(crate) fn colour(share: f32) -> [u8; 3] {
    if share.is_nan() {
        return UNREAD;
    }
    let along = (share.clamp(-1.0, 1.0) + 1.0) / 2.0 * (STOPS.len() - 1) as f32;
    let first = (along as usize).min(STOPS.len() - 2);
    let part = along - first as f32;
    std::array::from_fn(|c| {
        let (from, to) = (f32::from(STOPS[first][c]), f32::from(STOPS[first + 1][c]));
        (from + part * (to - from)).round() as u8
    })
}

/// A colour as `#rrggbb`.
pub(crate) fn hex([r, g, b]: [u8; 3]) -> String {
    format!("#{r:02x}{g:02x}{b:02x}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ends_middle_and_unread() {
        assert_eq!(colour(-1.0), STOPS[0]);
        assert_eq!(colour(0.0), STOPS[3]);
        assert_eq!(colour(7.0), STOPS[6]);
        assert_eq!(colour(f32::NAN), UNREAD);
        assert_eq!(hex(UNREAD), "#cdcdc8");
    }
}
