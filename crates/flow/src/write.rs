//! A reading laid down as files, whole or not at all.

use crate::holes::folds;
use crate::kept::KeptReading;
use crate::known_lens::CameraSource;
use crate::picture::map_png;
use crate::read::Reading;
use crate::reading_file::*;
use crate::stand::StandFacts;
use crate::unread::Unread;
use crate::unread_words::unread_facts;
use dentwright_surface::{Fold, Map, Spot, npy_u8};
use nalgebra::Point3;
use std::path::{Path, PathBuf};
use thiserror::Error;

/// Why a reading could not be written.
#[derive(Debug, Error)]
pub enum WriteError {
    /// The disk said no.
    #[error("{path} could not be written: {why}")]
    Disk {
        /// Where.
        path: PathBuf,
        /// Why.
        why: std::io::Error,
    },
    /// The picture or JSON could not be made.
    #[error("{0}")]
    Encode(String),
}

impl Reading {
    /// The reading as its JSON file.
    pub fn file(&self, photo_size: (usize, usize)) -> ReadingFile {
        let grid = self.deviation.grid;
        let scene = &self.scene;
        let to_photo = |x: f64, y: f64| -> [f64; 2] {
            let z = self.height.sample(x, y).unwrap_or_else(|| scene.panel.at(x, y).0);
            let p = scene.layout.panel_from_camera.inverse() * Point3::new(x, y, z);
            scene.camera.project(&p).map_or([0.0; 2], |q| [q.x, q.y])
        };
        ReadingFile {
            panel_tags: scene
                .layout
                .tags
                .iter()
                .map(|t| {
                    let z_mm = scene.panel.at(t.pose[0], t.pose[1]).0;
                    PanelTagPlace { id: t.id, x_mm: t.pose[0], y_mm: t.pose[1], z_mm }
                })
                .collect(),
            grid: GridFacts { x0_mm: grid.x0_mm, y0_mm: grid.y0_mm, step_mm: grid.step_mm, nx: grid.nx, ny: grid.ny },
            maps: Maps {
                deviation: "deviation.npy".into(),
                height: "height.npy".into(),
                sigma: "sigma.npy".into(),
                unread: "unread.npy".into(),
            },
            spots: self
                .spots
                .iter()
                .zip(&self.spot_finish)
                .map(|(s, finish)| SpotFacts {
                    spot: s.clone(),
                    finish: Some(*finish),
                    at_px: to_photo(s.x_mm, s.y_mm),
                    outline_px: outline(s).map(|(x, y)| to_photo(x, y)).collect(),
                })
                .collect(),
            folds: self.folds.clone(),
            gauges: Vec::new(),
            photo: PhotoFacts { file: self.panel_photo.clone(), width_px: photo_size.0, height_px: photo_size.1 },
            read_fraction: self.deviation.read_fraction(),
            scale: "absolute".into(),
            finish: self.finish.clone(),
            texture: Some(self.texture.clone()),
            unread: unread_facts(&self.unread),
            notes: self.notes(),
            camera: CameraFacts {
                focal_px: scene.camera.focal_px,
                k1: scene.camera.k1,
                source: self.camera_source.name().into(),
                calibrated: match &self.camera_source {
                    CameraSource::Calibrated(made) => Some(made.clone()),
                    _ => None,
                },
                gamma: self.gamma,
                corner_rms_px: scene.corner_rms_px,
                board_median_mm: scene.board_median_mm,
            },
            stand: Some(StandFacts::of(scene, self.board_mm)),
            frames: self
                .frames
                .iter()
                .map(|f| FrameFacts {
                    file: f.file.clone(),
                    role: format!("{:?}", f.role).to_lowercase(),
                    ok: f.ok,
                    note: f.note.clone(),
                })
                .collect(),
            version: env!("CARGO_PKG_VERSION").into(),
            settings: serde_json::json!({
                "finish": self.settings.finish,
                "still": self.settings.still,
                "intended": {
                    "degree": self.settings.intended.degree,
                    "sample_mm": self.settings.intended.sample_mm,
                    "sound_mm": self.settings.intended.sound_mm,
                    "margin_mm": self.settings.intended.margin_mm,
                },
                "spots": {
                    "least_mm": self.settings.spots.least_mm,
                    "sigmas": self.settings.spots.sigmas,
                    "average_mm": self.settings.spots.average_mm,
                    "least_mm2": self.settings.spots.least_mm2,
                },
            }),
        }
    }

    fn notes(&self) -> Vec<Note> {
        let (code, source) = match &self.camera_source {
            CameraSource::Calibrated(_) => {
                ("camera_calibrated", "the lens was known from photos of the camera sheet, and was refined")
            }
            CameraSource::Exif => {
                ("camera_exif", "the camera's focal length came from the photo's EXIF and was refined")
            }
            CameraSource::Guess => (
                "camera_guess",
                "the photos do not say their focal length; an ordinary phone's was assumed and refined",
            ),
        };
        let mut notes = vec![Note { code: code.into(), text: source.into() }];
        if self.scene.corner_rms_px > DOUBTFUL_CORNERS_PX {
            let text = format!(
                "the tags' corners do not fit together ({:.1} px off): check tag size and board size, and that the tags lie flat",
                self.scene.corner_rms_px
            );
            notes.push(Note { code: "sizes".into(), text });
        }
        if self.unread.contains(&(Unread::Folded as u8)) {
            let text = "part of a low or high was too steep to read: it goes farther than the height said for it";
            notes.push(Note { code: "folded".into(), text: text.into() });
        }
        notes.extend(self.notes.iter().cloned());
        notes
    }
}

/// Corners of flat tags of the right size come within 0.25 px.
const DOUBTFUL_CORNERS_PX: f64 = 0.35;

/// A spot's outline on the panel, mm.
pub(crate) fn outline(s: &Spot) -> impl Iterator<Item = (f64, f64)> {
    (0..24).map(|k| ellipse(s, k))
}

fn ellipse(s: &Spot, k: usize) -> (f64, f64) {
    let a = k as f64 / 24.0 * std::f64::consts::TAU;
    let (along, across) = (0.5 * s.length_mm * a.cos(), 0.5 * s.width_mm * a.sin());
    let (sin, cos) = s.angle_deg.to_radians().sin_cos();
    (s.x_mm + along * cos - across * sin, s.y_mm + along * sin + across * cos)
}

/// Writes all files of a reading into `dir`, which is made anew: first beside it, then put in place.
pub fn write_reading(reading: &Reading, dir: &Path) -> Result<(), WriteError> {
    let file = reading.file(reading.scene.camera.size);
    lay_down(&file, [&reading.deviation, &reading.height, &reading.sigma], &reading.unread, &reading.folds, dir)
}

/// Writes all files of a reading that was opened, as [`write_reading`] does.
pub fn write_kept(kept: &KeptReading, dir: &Path) -> Result<(), WriteError> {
    // their cells are not in the file
    let folds = folds(&kept.deviation, &kept.sigma, &kept.unread);
    lay_down(&kept.file, [&kept.deviation, &kept.height, &kept.sigma], &kept.unread, &folds, dir)
}

fn lay_down(
    file: &ReadingFile,
    [deviation, height, sigma]: [&Map; 3],
    unread: &[u8],
    folds: &[Fold],
    dir: &Path,
) -> Result<(), WriteError> {
    let json = serde_json::to_vec_pretty(file).map_err(|e| WriteError::Encode(e.to_string()))?;
    let spots: Vec<Spot> = file.spots.iter().map(|one| one.spot.clone()).collect();
    let picture = map_png(deviation, &spots, folds).map_err(|e| WriteError::Encode(e.to_string()))?;
    let grid = deviation.grid;
    let files = [
        ("deviation.npy", deviation.to_npy()),
        ("height.npy", height.to_npy()),
        ("sigma.npy", sigma.to_npy()),
        ("unread.npy", npy_u8(&[grid.ny, grid.nx], unread)),
        ("map.png", picture),
        ("reading.json", json),
    ];
    put(&files, dir)
}

/// Puts files into a folder, all or nothing: first beside it, then in place.
pub(crate) fn put(files: &[(&str, Vec<u8>)], dir: &Path) -> Result<(), WriteError> {
    let name = dir.file_name().map(|n| n.to_string_lossy().into_owned()).unwrap_or_else(|| "reading".into());
    let beside = dir.with_file_name(format!(".{name}.part"));
    let disk = |path: &Path| {
        let path = path.to_owned();
        move |why| WriteError::Disk { path, why }
    };
    let _ = std::fs::remove_dir_all(&beside);
    std::fs::create_dir_all(&beside).map_err(disk(&beside))?;
    for (file, bytes) in files {
        std::fs::write(beside.join(file), bytes).map_err(disk(&beside.join(file)))?;
    }
    std::fs::create_dir_all(dir).map_err(disk(dir))?;
    for (file, _) in files {
        std::fs::rename(beside.join(file), dir.join(file)).map_err(disk(&dir.join(file)))?;
    }
    let _ = std::fs::remove_dir(&beside);
    Ok(())
}
