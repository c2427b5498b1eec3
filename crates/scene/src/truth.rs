//! What a set of photos was made from: the scene, and maps of its undamaged shape and its damage.

use crate::scene::Scene;
use crate::shape::Shape;
use dentwright_surface::{NpyError, npy_f32, npy_f64, read_npy};
use nalgebra::Vector3;
use std::io::{Cursor, Read, Write};
use std::path::{Path, PathBuf};
use thiserror::Error;

/// A scene with its maps. Panel frame, mm, rows go up.
#[derive(Debug, Clone)]
pub struct Truth {
    /// What stood where.
    pub scene: Scene,
    /// Places of the columns.
    pub x: Vec<f64>,
    /// Places of the rows.
    pub y: Vec<f64>,
    /// Undamaged height, `[y][x]`.
    pub base: Vec<f32>,
    /// Damage on it, negative is low, `[y][x]`. Orange peel is not in it.
    pub damage: Vec<f32>,
}

/// Why a truth set cannot be read or written.
#[derive(Debug, Error)]
pub enum TruthError {
    /// A file is missing or cannot be opened or written.
    #[error("{0}: {1}")]
    File(PathBuf, std::io::Error),
    /// `truth.json` does not describe a scene.
    #[error("{0}: {1}")]
    Scene(PathBuf, serde_json::Error),
    /// `truth.npz` is no archive of arrays.
    #[error("{0}: {1}")]
    Archive(PathBuf, zip::result::ZipError),
    /// One array in it cannot be read.
    #[error("{0}, {1}: {2}")]
    Array(PathBuf, &'static str, NpyError),
    /// The maps do not have the size their axes say.
    #[error("{0}: maps and axes differ in size")]
    Size(PathBuf),
}

impl Truth {
    /// Evaluates a scene's maps on its own grid.
    #[must_use]
    pub fn of(scene: &Scene) -> Self {
        let shape = Shape::without_peel(scene);
        let axis = |length: f64| -> Vec<f64> {
            let n = (length / scene.step).round() as usize;
            (0..=n).map(|i| (i as f64 - n as f64 / 2.0) * scene.step).collect()
        };
        let (x, y) = (axis(scene.w), axis(scene.h));
        let places = || y.iter().flat_map(|y| x.iter().map(move |x| (*x, *y)));
        let base = places().map(|(x, y)| shape.base(x, y).z as f32).collect();
        let damage = places().map(|(x, y)| shape.damage(x, y).z as f32).collect();
        Self { scene: scene.clone(), base, damage, x, y }
    }

    /// Reads `truth.json` and `truth.npz` of a folder.
    ///
    /// # Errors
    /// Missing or broken files.
    pub fn read(folder: &Path) -> Result<Self, TruthError> {
        let json_path = folder.join("truth.json");
        let text = std::fs::read_to_string(&json_path).map_err(|e| TruthError::File(json_path.clone(), e))?;
        let scene: Scene = serde_json::from_str(&text).map_err(|e| TruthError::Scene(json_path, e))?;
        let path = folder.join("truth.npz");
        let bytes = std::fs::read(&path).map_err(|e| TruthError::File(path.clone(), e))?;
        let mut zip = zip::ZipArchive::new(Cursor::new(bytes)).map_err(|e| TruthError::Archive(path.clone(), e))?;
        let mut values = |name: &'static str| -> Result<Vec<f64>, TruthError> {
            let mut entry = zip.by_name(&format!("{name}.npy")).map_err(|e| TruthError::Archive(path.clone(), e))?;
            let mut bytes = Vec::new();
            entry.read_to_end(&mut bytes).map_err(|e| TruthError::File(path.clone(), e))?;
            Ok(read_npy(&bytes).map_err(|e| TruthError::Array(path.clone(), name, e))?.values)
        };
        let (x, y) = (values("x")?, values("y")?);
        let single = |map: Vec<f64>| map.into_iter().map(|v| v as f32).collect::<Vec<_>>();
        let (base, damage) = (single(values("base")?), single(values("damage")?));
        if base.len() != x.len() * y.len() || damage.len() != base.len() || x.len() < 4 || y.len() < 4 {
            return Err(TruthError::Size(path));
        }
        Ok(Self { scene, x, y, base, damage })
    }

    /// Writes `truth.json` and `truth.npz` into a folder.
    ///
    /// # Errors
    /// Files that cannot be written.
    pub fn write(&self, folder: &Path) -> Result<(), TruthError> {
        let path = folder.join("truth.json");
        let text = serde_json::to_string_pretty(&self.scene).map_err(|e| TruthError::Scene(path.clone(), e))?;
        std::fs::write(&path, text + "\n").map_err(|e| TruthError::File(path, e))?;
        let path = folder.join("truth.npz");
        let shape = [self.y.len(), self.x.len()];
        let arrays = [
            ("x", npy_f64(&[self.x.len()], &self.x)),
            ("y", npy_f64(&[self.y.len()], &self.y)),
            ("base", npy_f32(&shape, &self.base)),
            ("damage", npy_f32(&shape, &self.damage)),
        ];
        let mut zip = zip::ZipWriter::new(Cursor::new(Vec::new()));
        for (name, bytes) in arrays {
            let stored = zip::write::SimpleFileOptions::default().compression_method(zip::CompressionMethod::Stored);
            zip.start_file(format!("{name}.npy"), stored).map_err(|e| TruthError::Archive(path.clone(), e))?;
            zip.write_all(&bytes).map_err(|e| TruthError::File(path.clone(), e))?;
        }
        let bytes = zip.finish().map_err(|e| TruthError::Archive(path.clone(), e))?.into_inner();
        std::fs::write(&path, bytes).map_err(|e| TruthError::File(path, e))
    }

    /// Undamaged height at a place, mm; `None` outside the maps.
    #[must_use]
    pub fn base_at(&self, x: f64, y: f64) -> Option<f64> {
        self.cubic(&self.base, x, y)
    }

    /// Damage at a place, mm; `None` outside the maps.
    #[must_use]
    pub fn damage_at(&self, x: f64, y: f64) -> Option<f64> {
        self.cubic(&self.damage, x, y)
    }

    /// Centre of every tag on the panel, with its number.
    #[must_use]
    pub fn tag_centres(&self) -> Vec<(usize, Vector3<f64>)> {
        let height = |t: &crate::scene::Sticker| Some(self.base_at(t.x, t.y)? + self.damage_at(t.x, t.y)?);
        self.scene.tags.iter().filter_map(|t| Some((t.id, Vector3::new(t.x, t.y, height(t)?)))).collect()
    }

    /// Catmull-Rom interpolation.
    fn cubic(&self, map: &[f32], x: f64, y: f64) -> Option<f64> {
        let nx = self.x.len();
        let (i, wx) = weights(&self.x, x)?;
        let (j, wy) = weights(&self.y, y)?;
        let row =
            |k: usize| -> f64 { wx.iter().enumerate().map(|(m, w)| w * f64::from(map[(j + k) * nx + i + m])).sum() };
        Some(wy.iter().enumerate().map(|(k, w)| w * row(k)).sum())
    }
}

/// First of four neighbours on an even axis and their weights; `None` where they do not all exist.
fn weights(axis: &[f64], at: f64) -> Option<(usize, [f64; 4])> {
    let place = (at - axis[0]) / (axis[1] - axis[0]);
    let whole = place.floor().clamp(1.0, axis.len() as f64 - 3.0);
    let t = place - whole;
    if !(-1.0..=2.0).contains(&t) {
        return None;
    }
    let w = [
        ((2.0 - t) * t - 1.0) * t / 2.0,
        ((3.0 * t - 5.0) * t * t + 2.0) / 2.0,
        ((4.0 - 3.0 * t) * t + 1.0) * t / 2.0,
        (t - 1.0) * t * t / 2.0,
    ];
    Some((whole as usize - 1, w))
}
