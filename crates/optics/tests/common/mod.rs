//! The published data beside the project, and the NPY files in it.

use std::path::PathBuf;

/// A folder of published data, `None` with a word to say so where it is not beside the project.
pub fn published(folder: &str) -> Option<PathBuf> {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../../shared/data").join(folder);
    if path.is_dir() {
        return Some(path);
    }
    println!("skipped: the published data {folder} is not beside the project");
    None
}

#[allow(dead_code)] // not every test file reads NPY
/// The numbers of an NPY file of doubles, bytes or truth values, in C order (NumPy enhancement proposal 1).
pub fn npy(path: PathBuf) -> Vec<f64> {
    let bytes = std::fs::read(&path).unwrap();
    let start = 10 + usize::from(u16::from_le_bytes([bytes[8], bytes[9]]));
    let header = String::from_utf8_lossy(&bytes[10..start]);
    assert!(header.contains("'fortran_order': False"), "{} is not in C order", path.display());
    let data = &bytes[start..];
    if header.contains("'<f8'") {
        data.as_chunks::<8>().0.iter().map(|b| f64::from_le_bytes(*b)).collect()
    } else {
        assert!(header.contains("'|u1'") || header.contains("'|b1'"), "unknown kind of {}", path.display());
        data.iter().map(|&b| f64::from(b)).collect()
    }
}
