//! A signature as it was written on glass: strokes, drawn as lines and not as a picture.

use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use std::fmt::Write;

/// A signature.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Signature {
    /// Who signed.
    pub name: String,
    /// When, by the clock of the device.
    #[cfg_attr(feature = "schema", schema(value_type = String))]
    pub at: Timestamp,
    /// Strokes of the pen, each a list of places: right and down, in widths of the pad.
    pub strokes: Vec<Vec<[f64; 2]>>,
}

/// Why strokes are no signature.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum SignatureError {
    /// There is none, or no more than a dot.
    #[error("nothing was signed: the strokes together are shorter than a twentieth of the pad")]
    Empty,
    /// A place that is none.
    #[error("a stroke leaves the pad, or has a place that is no number")]
    Outside,
    /// More than any hand writes.
    #[error("the signature has more than {MOST} places")]
    TooLong,
}

/// Height of the pad, in widths.
pub const PAD_HEIGHT: f64 = 0.4;
/// Shortest way of the pen that is a signature, in widths of the pad: longer than a slip of a glove.
const SHORTEST: f64 = 0.05;
/// A minute of writing at 240 places a second.
const MOST: usize = 14_400;
/// A pen may go over the edge by this much.
const OVER: f64 = 0.05;
/// Units of the drawing in the pad's width.
const UNITS: f64 = 1000.0;

impl Signature {
    /// Checks that somebody signed.
    ///
    /// # Errors
    /// The first fault found.
    pub fn check(&self) -> Result<(), SignatureError> {
        if self.strokes.iter().map(Vec::len).sum::<usize>() > MOST {
            return Err(SignatureError::TooLong);
        }
        let on = |[x, y]: &[f64; 2]| (-OVER..=1.0 + OVER).contains(x) && (-OVER..=PAD_HEIGHT + OVER).contains(y);
        if !self.strokes.iter().flatten().all(on) {
            return Err(SignatureError::Outside);
        }
        let long = |stroke: &Vec<[f64; 2]>| stroke.windows(2).map(|two| distance(two[0], two[1])).sum::<f64>();
        let way: f64 = self.strokes.iter().map(long).sum();
        if way < SHORTEST { Err(SignatureError::Empty) } else { Ok(()) }
    }

    /// The strokes as SVG.
    pub(crate) fn svg(&self) -> String {
        let mut path = String::new();
        for stroke in &self.strokes {
            for (index, [x, y]) in stroke.iter().enumerate() {
                let verb = if index == 0 { 'M' } else { 'L' };
                let _ = write!(path, "{verb}{:.1} {:.1}", x * UNITS, y * UNITS);
            }
            if let ([only], true) = (stroke.as_slice(), stroke.len() == 1) {
                let _ = write!(path, "L{:.1} {:.1}", only[0] * UNITS + 1.0, only[1] * UNITS);
            }
        }
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {UNITS} {}\"><path d=\"{path}\" fill=\"none\" \
             stroke=\"#16324a\" stroke-width=\"7\" stroke-linecap=\"round\" stroke-linejoin=\"round\"/></svg>",
            UNITS * PAD_HEIGHT
        )
    }
}

fn distance(a: [f64; 2], b: [f64; 2]) -> f64 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}

#[cfg(test)]
mod tests {
    use super::*;

    fn signed(strokes: Vec<Vec<[f64; 2]>>) -> Signature {
        Signature { name: "Invented".into(), at: Timestamp::UNIX_EPOCH, strokes }
    }

    #[test]
    fn a_dot_or_a_slip_is_no_signature() {
        assert_eq!(signed(vec![]).check(), Err(SignatureError::Empty));
        assert_eq!(signed(vec![vec![[0.5, 0.2]]]).check(), Err(SignatureError::Empty));
        assert_eq!(signed(vec![vec![[0.5, 0.2], [0.53, 0.2]]]).check(), Err(SignatureError::Empty));
        assert_eq!(signed(vec![vec![[0.2, 0.2], [0.6, 0.1]]]).check(), Ok(()));
        assert_eq!(signed(vec![vec![[0.2, 0.2], [0.6, f64::NAN]]]).check(), Err(SignatureError::Outside));
        assert_eq!(signed(vec![vec![[0.2, 0.2], [0.6, 0.9]]]).check(), Err(SignatureError::Outside));
        assert_eq!(signed(vec![vec![[0.2, 0.2]; 20_000]]).check(), Err(SignatureError::TooLong));
    }

    #[test]
    fn strokes_are_lines_of_the_drawing() {
        let svg = signed(vec![vec![[0.1, 0.2], [0.25, 0.3]], vec![[0.5, 0.1]]]).svg();
        assert!(svg.contains("M100.0 200.0L250.0 300.0M500.0 100.0L501.0 100.0"), "{svg}");
    }
}
