//! The capture folder into memory: description and decoded photos.

use crate::error::ReadError;
use dentwright_optics::{Capture, Frame, Photo, Role, decode};
use rayon::prelude::*;
use std::path::Path;
use std::sync::atomic::{AtomicUsize, Ordering};

/// A capture with its photos, in the order of its frames.
pub(crate) struct Gathered {
    pub capture: Capture,
    pub photos: Vec<Photo>,
}

impl Gathered {
    /// The first photo of a role.
    pub fn first(&self, role: Role) -> Option<(&Frame, &Photo)> {
        self.capture.frames.iter().zip(&self.photos).find(|(f, _)| f.role == role)
    }
}

/// Checks what can be told of a capture folder before any photo is decoded: its description, and that
/// every photo which it names is there.
///
/// # Errors
/// The first thing that is wrong.
pub fn check_folder(folder: &Path) -> Result<(), ReadError> {
    let capture = description(folder)?;
    match capture.frames.iter().find(|frame| !folder.join(&frame.file).is_file()) {
        Some(frame) => Err(ReadError::MissingPhoto { file: frame.file.clone() }),
        None => Ok(()),
    }
}

fn description(folder: &Path) -> Result<Capture, ReadError> {
    let text = std::fs::read_to_string(folder.join("capture.toml"))
        .map_err(|_| ReadError::NoCapture { folder: folder.display().to_string() })?;
    Ok(Capture::parse(&text)?)
}

/// Pixels of all photos together at most, one byte each: 40 photos of 50 MP.
const MOST_PIXELS: usize = 2_000_000_000;

pub(crate) fn gather(folder: &Path) -> Result<Gathered, ReadError> {
    let capture = description(folder)?;
    let held = AtomicUsize::new(0);
    let photos = capture
        .frames
        .par_iter()
        .map(|frame| {
            let bytes = std::fs::read(folder.join(&frame.file))
                .map_err(|_| ReadError::MissingPhoto { file: frame.file.clone() })?;
            let file = || frame.file.clone();
            if held.load(Ordering::Relaxed) > MOST_PIXELS {
                return Err(ReadError::TooLarge { file: file() });
            }
            let photo = decode(&bytes).map_err(|why| ReadError::Photo { file: file(), why })?;
            held.fetch_add(photo.grey.len(), Ordering::Relaxed);
            Ok(photo)
        })
        .collect::<Result<Vec<_>, _>>()?;
    let gathered = Gathered { capture, photos };
    same_size(&gathered)?;
    Ok(gathered)
}

/// Every photo but the set-up one must be as large as the panel photo.
fn same_size(g: &Gathered) -> Result<(), ReadError> {
    let Some((_, panel)) = g.first(Role::Panel) else { return Ok(()) };
    let size = |p: &Photo| format!("{} x {} px", p.width, p.height);
    let odd = g
        .capture
        .frames
        .iter()
        .zip(&g.photos)
        .find(|(f, p)| f.role != Role::Setup && (p.width, p.height) != (panel.width, panel.height));
    match odd {
        Some((f, p)) => Err(ReadError::Zoom { file: f.file.clone(), found: size(p), expected: size(panel) }),
        None => Ok(()),
    }
}
