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
/// The numbers of an NPY file, in C order.
pub fn npy(path: PathBuf) -> Vec<f64> {
    dentwright_surface::read_npy(&std::fs::read(&path).unwrap()).unwrap().values
}
