//! NPY arrays, the plain array format of NumPy: bytes in, bytes out.
//!
//! Limits: little endian; the four number types used here.
//! Source: NumPy Enhancement Proposal 1, "A Simple File Format for NumPy Arrays".

use crate::grid::{Grid, Map};
use std::fmt::Write as _;
use thiserror::Error;

/// An array, row by row.
#[derive(Debug, Clone, PartialEq)]
pub struct Array {
    /// Lengths of the axes, slowest first: `[ny, nx]` for a map.
    pub shape: Vec<usize>,
    /// The values, last axis fastest.
    pub values: Vec<f64>,
}

/// Why bytes are no array.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum NpyError {
    /// The first bytes are not those of an NPY file, or its header cannot be understood.
    #[error("not an NPY array")]
    NotNpy,
    /// A number type outside the four read here.
    #[error("an NPY array of a kind that is not read here: {0}")]
    Kind(String),
    /// The header names another count of values than the bytes hold.
    #[error("an NPY array of {found} values where its header says {wanted}")]
    Count {
        /// Values in the bytes.
        found: usize,
        /// Values the header names.
        wanted: usize,
    },
    /// A map of another grid.
    #[error("an NPY array of shape {found:?} where {ny} rows of {nx} are wanted")]
    Shape {
        /// Shape in the file.
        found: Vec<usize>,
        /// Rows wanted.
        ny: usize,
        /// Columns wanted.
        nx: usize,
    },
}

/// Reads `<f8`, `<f4`, `|u1` or `|b1` values, in C or Fortran order.
///
/// # Errors
/// Bytes that are no such array.
pub fn read_npy(bytes: &[u8]) -> Result<Array, NpyError> {
    let (header, body) = split(bytes)?;
    let shape = shape_of(header)?;
    let (values, rest): (Vec<f64>, usize) = match kind_of(header)? {
        "<f8" => (body.as_chunks::<8>().0.iter().map(|b| f64::from_le_bytes(*b)).collect(), body.len() % 8),
        "<f4" => (body.as_chunks::<4>().0.iter().map(|b| f64::from(f32::from_le_bytes(*b))).collect(), body.len() % 4),
        "|u1" | "|b1" => (body.iter().map(|b| f64::from(*b)).collect(), 0),
        other => return Err(NpyError::Kind(other.into())),
    };
    let wanted = shape.iter().try_fold(1usize, |n, k| n.checked_mul(*k)).ok_or(NpyError::NotNpy)?;
    if values.len() != wanted || rest != 0 {
        return Err(NpyError::Count { found: values.len(), wanted });
    }
    let values = if header.contains("'fortran_order': True") { turned(&values, &shape) } else { values };
    Ok(Array { shape, values })
}

/// Bytes of a float64 array.
#[must_use]
pub fn npy_f64(shape: &[usize], values: &[f64]) -> Vec<u8> {
    with_head("<f8", shape, values.iter().flat_map(|v| v.to_le_bytes()))
}

/// Bytes of a float32 array.
#[must_use]
pub fn npy_f32(shape: &[usize], values: &[f32]) -> Vec<u8> {
    with_head("<f4", shape, values.iter().flat_map(|v| v.to_le_bytes()))
}

/// Bytes of an array of bytes.
#[must_use]
pub fn npy_u8(shape: &[usize], values: &[u8]) -> Vec<u8> {
    with_head("|u1", shape, values.iter().copied())
}

impl Map {
    /// The map as NPY, float32, shape `(ny, nx)`.
    #[must_use]
    pub fn to_npy(&self) -> Vec<u8> {
        npy_f32(&[self.grid.ny, self.grid.nx], &self.values)
    }

    /// A map out of NPY bytes.
    ///
    /// # Errors
    /// Bytes that are no array, or one of another shape than the grid's.
    pub fn from_npy(grid: Grid, bytes: &[u8]) -> Result<Self, NpyError> {
        let array = read_npy(bytes)?;
        if array.shape != [grid.ny, grid.nx] {
            return Err(NpyError::Shape { found: array.shape, ny: grid.ny, nx: grid.nx });
        }
        Ok(Self { grid, values: array.values.iter().map(|v| *v as f32).collect() })
    }
}

const MAGIC: &[u8] = b"\x93NUMPY";

fn split(bytes: &[u8]) -> Result<(&str, &[u8]), NpyError> {
    if bytes.len() < 12 || !bytes.starts_with(MAGIC) {
        return Err(NpyError::NotNpy);
    }
    let (start, length) = if bytes[6] == 1 {
        (10, usize::from(u16::from_le_bytes([bytes[8], bytes[9]])))
    } else {
        (12, u32::from_le_bytes([bytes[8], bytes[9], bytes[10], bytes[11]]) as usize)
    };
    let (header, body) = bytes[start..].split_at_checked(length).ok_or(NpyError::NotNpy)?;
    Ok((std::str::from_utf8(header).map_err(|_| NpyError::NotNpy)?, body))
}

fn kind_of(header: &str) -> Result<&str, NpyError> {
    let after = header.split("'descr':").nth(1).ok_or(NpyError::NotNpy)?;
    after.split('\'').nth(1).ok_or(NpyError::NotNpy)
}

fn shape_of(header: &str) -> Result<Vec<usize>, NpyError> {
    let after = header.split("'shape':").nth(1).ok_or(NpyError::NotNpy)?;
    let inside = after.split(['(', ')']).nth(1).ok_or(NpyError::NotNpy)?;
    let axes = inside.split(',').map(str::trim).filter(|n| !n.is_empty());
    axes.map(|n| n.parse().map_err(|_| NpyError::NotNpy)).collect()
}

/// Values whose first axis is the fastest, in the order of the last.
fn turned(values: &[f64], shape: &[usize]) -> Vec<f64> {
    let place = |flat: usize| {
        let (mut rest, mut along) = (flat, vec![0; shape.len()]);
        for axis in (0..shape.len()).rev() {
            along[axis] = rest % shape[axis];
            rest /= shape[axis];
        }
        along.iter().zip(shape).rev().fold(0, |at, (k, n)| at * n + k)
    };
    (0..values.len()).map(|flat| values[place(flat)]).collect()
}

fn with_head(kind: &str, shape: &[usize], body: impl Iterator<Item = u8>) -> Vec<u8> {
    let mut axes = String::new();
    for n in shape {
        let _ = write!(axes, "{n}, ");
    }
    let axes = if shape.len() > 1 { axes.trim_end_matches(", ") } else { axes.trim_end() };
    let mut text = format!("{{'descr': '{kind}', 'fortran_order': False, 'shape': ({axes}), }}");
    // The data starts at a multiple of 64 bytes, the header ends in a new line (NEP 1).
    let padding = (64 - (MAGIC.len() + 4 + text.len() + 1) % 64) % 64;
    text.push_str(&" ".repeat(padding));
    text.push('\n');
    let mut out = MAGIC.to_vec();
    out.extend([1, 0]);
    out.extend((text.len() as u16).to_le_bytes());
    out.extend(text.as_bytes());
    out.extend(body);
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_written_is_read_again() {
        let values = [1.5, -2.25, f64::INFINITY, 0.0, 1e-9, 7.0];
        let array = read_npy(&npy_f64(&[2, 3], &values)).unwrap();
        assert_eq!(array, Array { shape: vec![2, 3], values: values.to_vec() });
        let single = read_npy(&npy_f32(&[6], &values.map(|v| v as f32))).unwrap();
        assert_eq!((single.shape, single.values[1]), (vec![6], -2.25));
        assert_eq!(npy_f32(&[1], &[1.0]).len() % 64, 4);
        assert_eq!(read_npy(&npy_u8(&[2, 1], &[3, 250])).unwrap().values, [3.0, 250.0]);
        assert!(String::from_utf8_lossy(&npy_u8(&[2, 1], &[3, 250])).contains("'shape': (2, 1), }"));
    }

    #[test]
    fn a_map_keeps_its_holes_and_wants_its_own_grid() {
        let grid = Grid { x0_mm: 0.0, y0_mm: 0.0, step_mm: 1.0, nx: 3, ny: 2 };
        let map = Map { grid, values: vec![1.0, f32::NAN, -0.5, 0.0, 2.0, 3.0] };
        let again = Map::from_npy(grid, &map.to_npy()).unwrap();
        assert!(again.values[1].is_nan() && again.values[2] == -0.5);
        assert!(matches!(Map::from_npy(Grid { nx: 2, ny: 3, ..grid }, &map.to_npy()), Err(NpyError::Shape { .. })));
    }

    #[test]
    fn columns_first_is_turned_and_broken_bytes_are_refused() {
        let mut columns = npy_f32(&[2, 3], &[1.0, 4.0, 2.0, 5.0, 3.0, 6.0]);
        let at = columns.windows(5).position(|w| w == b"False").unwrap();
        columns[at..at + 5].copy_from_slice(b"True ");
        assert_eq!(read_npy(&columns).unwrap().values, [1.0, 2.0, 3.0, 4.0, 5.0, 6.0]);
        assert_eq!(read_npy(b"PK.........."), Err(NpyError::NotNpy));
        let whole = npy_f64(&[4], &[1.0, 2.0, 3.0, 4.0]);
        assert_eq!(read_npy(&whole[..whole.len() - 8]), Err(NpyError::Count { found: 3, wanted: 4 }));
        assert!(matches!(read_npy(&whole[..whole.len() - 3]), Err(NpyError::Count { .. })));
        assert_eq!(read_npy(&whole[..40]), Err(NpyError::NotNpy));
    }
}
