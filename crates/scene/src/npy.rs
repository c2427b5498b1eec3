//! NPY arrays, the plain array format of NumPy: read what a truth set or a reading holds, write our own.
//!
//! Limits: little endian, C order, one or two axes, the four number types used here.
//! Source: NumPy Enhancement Proposal 1, "A Simple File Format for NumPy Arrays".

use std::fmt::Write as _;
use thiserror::Error;

/// An array of one or two axes, row by row.
#[derive(Debug, Clone, PartialEq)]
pub struct Array {
    /// Lengths of the axes, slowest first: `[ny, nx]` or `[n]`.
    pub shape: Vec<usize>,
    /// The values, last axis fastest.
    pub values: Vec<f64>,
}

/// Why bytes are no array.
#[derive(Debug, Error)]
pub enum NpyError {
    /// The first bytes are not those of an NPY file.
    #[error("not an NPY array")]
    NotNpy,
    /// A number type or order outside the four read here.
    #[error("an NPY array of a kind that is not read here: {0}")]
    Kind(String),
    /// The header promises more values than the bytes hold.
    #[error("an NPY array cut short: {found} values, {wanted} wanted")]
    CutShort {
        /// Values in the bytes.
        found: usize,
        /// Values the header names.
        wanted: usize,
    },
}

/// Reads `<f8`, `<f4`, `|u1` or `|b1` values.
///
/// # Errors
/// Bytes that are no such array.
pub fn read(bytes: &[u8]) -> Result<Array, NpyError> {
    let (header, body) = split(bytes)?;
    if header.contains("'fortran_order': True") {
        return Err(NpyError::Kind("Fortran order".into()));
    }
    let shape = shape_of(header)?;
    let values: Vec<f64> = match kind_of(header)? {
        "<f8" => body.as_chunks::<8>().0.iter().map(|b| f64::from_le_bytes(*b)).collect(),
        "<f4" => body.as_chunks::<4>().0.iter().map(|b| f64::from(f32::from_le_bytes(*b))).collect(),
        "|u1" | "|b1" => body.iter().map(|b| f64::from(*b)).collect(),
        other => return Err(NpyError::Kind(other.into())),
    };
    let wanted = shape.iter().product();
    if values.len() < wanted {
        return Err(NpyError::CutShort { found: values.len(), wanted });
    }
    Ok(Array { shape, values: values[..wanted].to_vec() })
}

/// Bytes of a float64 array.
#[must_use]
pub fn write_f64(shape: &[usize], values: &[f64]) -> Vec<u8> {
    let mut out = head("<f8", shape);
    out.extend(values.iter().flat_map(|v| v.to_le_bytes()));
    out
}

/// Bytes of a float32 array.
#[must_use]
pub fn write_f32(shape: &[usize], values: &[f32]) -> Vec<u8> {
    let mut out = head("<f4", shape);
    out.extend(values.iter().flat_map(|v| v.to_le_bytes()));
    out
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
    let header = bytes.get(start..start + length).ok_or(NpyError::NotNpy)?;
    let header = std::str::from_utf8(header).map_err(|_| NpyError::NotNpy)?;
    Ok((header, &bytes[start + length..]))
}

fn kind_of(header: &str) -> Result<&str, NpyError> {
    let after = header.split("'descr':").nth(1).ok_or(NpyError::NotNpy)?;
    after.split('\'').nth(1).ok_or(NpyError::NotNpy)
}

fn shape_of(header: &str) -> Result<Vec<usize>, NpyError> {
    let after = header.split("'shape':").nth(1).ok_or(NpyError::NotNpy)?;
    let inside = after.split(['(', ')']).nth(1).ok_or(NpyError::NotNpy)?;
    inside
        .split(',')
        .map(str::trim)
        .filter(|n| !n.is_empty())
        .map(|n| n.parse().map_err(|_| NpyError::NotNpy))
        .collect()
}

fn head(kind: &str, shape: &[usize]) -> Vec<u8> {
    let mut axes = String::new();
    for n in shape {
        let _ = write!(axes, "{n}, ");
    }
    let mut text = format!("{{'descr': '{kind}', 'fortran_order': False, 'shape': ({}), }}", axes.trim_end());
    // The data starts at a multiple of 64 bytes, the header ends in a new line (NEP 1).
    let padding = 64 - (MAGIC.len() + 4 + text.len() + 1) % 64;
    text.push_str(&" ".repeat(padding));
    text.push('\n');
    let mut out = MAGIC.to_vec();
    out.extend([1, 0]);
    out.extend((text.len() as u16).to_le_bytes());
    out.extend(text.as_bytes());
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_written_is_read_again() {
        let values = [1.5, -2.25, f64::INFINITY, 0.0, 1e-9, 7.0];
        let array = read(&write_f64(&[2, 3], &values)).unwrap();
        assert_eq!(array, Array { shape: vec![2, 3], values: values.to_vec() });
        let single = read(&write_f32(&[6], &values.map(|v| v as f32))).unwrap();
        assert_eq!(single.shape, vec![6]);
        assert_eq!(single.values[1], -2.25);
        assert_eq!(write_f32(&[1], &[1.0]).len() % 64, 4);
    }

    #[test]
    fn broken_bytes_are_refused() {
        assert!(matches!(read(b"PK..........").unwrap_err(), NpyError::NotNpy));
        let mut cut = write_f64(&[4], &[1.0, 2.0, 3.0, 4.0]);
        cut.truncate(cut.len() - 8);
        assert!(matches!(read(&cut).unwrap_err(), NpyError::CutShort { found: 3, wanted: 4 }));
    }
}
