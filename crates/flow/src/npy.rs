//! Maps as NPY files, format version 1.0 (NumPy enhancement proposal 1).

use dentwright_surface::Map;

/// A map out of a file.
#[derive(Debug, Clone, PartialEq)]
pub struct MapFile {
    /// Rows.
    pub rows: usize,
    /// Columns.
    pub columns: usize,
    /// `rows` rows of `columns` values.
    pub values: Vec<f32>,
}

const MAGIC: &[u8] = b"\x93NUMPY\x01\x00";

/// A map as NPY.
pub(crate) fn npy_f32(map: &Map) -> Vec<u8> {
    let bytes: Vec<u8> = map.values.iter().flat_map(|v| v.to_le_bytes()).collect();
    npy("<f4", map.grid.ny, map.grid.nx, &bytes)
}

/// An array of `rows` times `columns` as NPY.
pub(crate) fn npy(kind: &str, rows: usize, columns: usize, data: &[u8]) -> Vec<u8> {
    let mut header = format!("{{'descr': '{kind}', 'fortran_order': False, 'shape': ({rows}, {columns}), }}");
    while (10 + header.len() + 1) % 64 != 0 {
        header.push(' ');
    }
    header.push('\n');
    let mut out = MAGIC.to_vec();
    out.extend((header.len() as u16).to_le_bytes());
    out.extend(header.as_bytes());
    out.extend(data);
    out
}

/// Reads a map that [`write_reading`](crate::write_reading) has written; none where the bytes are something else.
#[must_use]
pub fn read_map(bytes: &[u8]) -> Option<MapFile> {
    let after = bytes.strip_prefix(MAGIC)?;
    let (length, after) = after.split_first_chunk::<2>()?;
    let (header, data) = after.split_at_checked(usize::from(u16::from_le_bytes(*length)))?;
    let header = std::str::from_utf8(header).ok()?;
    if !header.contains("'<f4'") || !header.contains("'fortran_order': False") {
        return None;
    }
    let shape = header.split_once("'shape': (")?.1.split_once(')')?.0;
    let (rows, columns) = shape.split_once(',')?;
    let (rows, columns) = (rows.trim().parse().ok()?, columns.trim().parse().ok()?);
    let (values, rest) = data.as_chunks::<4>();
    let whole = rest.is_empty() && usize::checked_mul(rows, columns)? == values.len();
    whole.then(|| MapFile { rows, columns, values: values.iter().map(|v| f32::from_le_bytes(*v)).collect() })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_written_map_is_read_again() {
        let values = [1.5f32, -2.0, 0.25, f32::MAX, 0.0, -0.001];
        let bytes = npy("<f4", 2, 3, &values.map(f32::to_le_bytes).concat());
        let map = read_map(&bytes).unwrap();
        assert_eq!((map.rows, map.columns, map.values), (2, 3, values.to_vec()));
        assert_eq!(read_map(&bytes[..bytes.len() - 1]), None);
        assert_eq!(read_map(b"something else"), None);
    }
}
