//! A recipe carried out: photos, `capture.toml` and truth, in memory or in a folder.

use crate::light::Lamp;
use crate::noise::Random;
use crate::photo::{Photo, compress};
use crate::picture::{Axis, Picture, Shown};
use crate::pose::Board;
use crate::recipe::{Recipe, RecipeError};
use crate::sensor::{blur, nudge};
use crate::shape::Shape;
use crate::truth::{Truth, TruthError};
use crate::view::{Fineness, Stage, View, snap};
use rayon::prelude::*;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use thiserror::Error;

/// What a phone and a tape measure would hand over, and what nobody would know.
#[derive(Debug, Clone)]
pub struct Capture {
    /// All photos.
    pub photos: Vec<Photo>,
    /// Text of `capture.toml`.
    pub toml: String,
    /// What it was made from.
    pub truth: Truth,
}

/// Why a recipe cannot be carried out.
#[derive(Debug, Error)]
pub enum CaptureError {
    /// The recipe contradicts itself.
    #[error(transparent)]
    Recipe(#[from] RecipeError),
    /// No recipe of that name comes with the program.
    #[error("no recipe {0}")]
    NoSuchRecipe(&'static str),
    /// A photo cannot be compressed.
    #[error("{0}: {1}")]
    Jpeg(String, jpeg_encoder::EncodingError),
    /// A file cannot be written.
    #[error("{0}: {1}")]
    File(PathBuf, std::io::Error),
    /// The truth cannot be written.
    #[error(transparent)]
    Truth(#[from] TruthError),
}

/// One frame of a capture.
#[derive(Debug, Clone)]
struct Frame {
    file: String,
    role: &'static str,
    picture: Picture,
    /// Lines of `capture.toml` beyond file and role.
    more: String,
}

impl Recipe {
    /// Renders every photo.
    ///
    /// # Errors
    /// A mishap that names no photo, or sizes a JPEG cannot have.
    pub fn render(&self) -> Result<Capture, CaptureError> {
        let frames = self.frames();
        self.check(&frames)?;
        let stage = self.stage();
        let lamp = Lamp::new(&stage.shape, &stage.board, self.scene.w, self.scene.h);
        let view = View::trace(&stage, &self.scene.cam, self.fineness(self.photos.size));
        let exposure = self.exposure(&stage, &lamp, &view);
        let shoot = |(k, frame): (usize, &Frame)| {
            let shown = Shown::new(self.shown_in(frame, &frames), &self.scene.board);
            let glow = lamp.glow(&shown);
            if frame.role == "setup" {
                let light = snap(&stage, &self.scene.setup_cam, self.fineness(self.photos.setup_size), &shown, &glow);
                return self.store(frame, k, light, 1.0 / stage.white);
            }
            self.store(frame, k, view.shade(&stage, &shown, &glow), exposure)
        };
        let photos = frames.par_iter().enumerate().map(shoot).collect::<Result<Vec<_>, _>>()?;
        Ok(Capture { photos, toml: self.toml(&frames), truth: Truth::of(&self.scene) })
    }

    /// The scene made ready to look at.
    #[must_use]
    pub fn stage(&self) -> Stage {
        let mut random = Random::new(self.scene.seed ^ 0x6469_7274);
        let speck = |random: &mut Random| {
            let along = |random: &mut Random, length: f64| (random.unit() - 0.5) * length * 0.8;
            [along(random, self.scene.w), along(random, self.scene.h), 0.4 + 1.1 * random.unit()]
        };
        Stage {
            scene: self.scene.clone(),
            shape: Shape::of(&self.scene),
            board: Board::new(&self.scene.board),
            dirt: (0..self.traps.dirt).map(|_| speck(&mut random)).collect(),
            stuck: self.traps.stuck.clone(),
            back: self.traps.back,
            surroundings: 1.0,
            white: self.photos.board_over_room as f32,
        }
    }

    fn fineness(&self, [width, height]: [usize; 2]) -> Fineness {
        Fineness { width, height, rays: self.photos.rays }
    }

    /// Sets the brightest hundredth of the panel with the whole board white to where the recipe wants it.
    fn exposure(&self, stage: &Stage, lamp: &Lamp, view: &View) -> f32 {
        let white = Picture::Sine { axis: Axis::U, periods: 0.0, shift: 0.0, gamma: 1.0, pixel_mm: 0.0 };
        let shown = Shown::new(white, &self.scene.board);
        let light = view.shade(stage, &shown, &lamp.glow(&shown));
        let mirrors = if stage.back.is_some() { 2 } else { 1 };
        let places = view.board_places(mirrors * self.photos.rays * self.photos.rays);
        let mut seen: Vec<f32> =
            light.chunks_exact(3).zip(places).filter(|(_, at)| at.is_some()).map(|(l, _)| l[1]).collect();
        if seen.is_empty() {
            return 0.4;
        }
        let k = (seen.len() - 1) * 99 / 100;
        self.photos.expose_to as f32 / *seen.select_nth_unstable_by(k, f32::total_cmp).1
    }

    fn store(&self, frame: &Frame, k: usize, mut light: Vec<f32>, exposure: f32) -> Result<Photo, CaptureError> {
        let setup = frame.role == "setup";
        let [width, height] = if setup { self.photos.setup_size } else { self.photos.size };
        let mut exposure = exposure;
        for b in self.traps.brighter.iter().filter(|b| b.file == frame.file) {
            exposure *= b.times as f32;
        }
        for b in self.traps.blurred.iter().filter(|b| b.file == frame.file) {
            blur(&mut light, width, height, b.by_px);
        }
        for n in self.traps.nudged.iter().filter(|n| n.file == frame.file) {
            light = nudge(&light, width, height, n.by);
        }
        let start = self.scene.seed.wrapping_mul(1009).wrapping_add(k as u64);
        let bytes = self.photos.sensor.expose(&light, exposure, start);
        let fov = if setup { self.scene.setup_cam.fov } else { self.scene.cam.fov };
        let focal_35mm = self.photos.exif.then(|| FILM_WIDTH_MM / 2.0 / (fov.to_radians() / 2.0).tan());
        let jpeg = compress(&bytes, width, height, &self.photos.sensor, focal_35mm)
            .map_err(|e| CaptureError::Jpeg(frame.file.clone(), e))?;
        Ok(Photo { file: frame.file.clone(), jpeg })
    }

    fn shown_in(&self, frame: &Frame, all: &[Frame]) -> Picture {
        let repeats = self.traps.repeats.iter().find(|r| r.file == frame.file);
        let other = repeats.and_then(|r| all.iter().find(|f| f.file == r.shows));
        other.unwrap_or(frame).picture
    }

    fn check(&self, frames: &[Frame]) -> Result<(), RecipeError> {
        let t = &self.traps;
        let nudged = t.nudged.iter().map(|n| &n.file);
        let brighter = t.brighter.iter().map(|b| &b.file);
        let repeats = t.repeats.iter().flat_map(|r| [&r.file, &r.shows]);
        let blurred = t.blurred.iter().map(|b| &b.file);
        let mut named = nudged.chain(brighter).chain(repeats).chain(blurred);
        match named.find(|name| !frames.iter().any(|f| &f.file == *name)) {
            Some(name) => Err(RecipeError::NoSuchPhoto(name.clone())),
            None => Ok(()),
        }
    }

    fn frames(&self) -> Vec<Frame> {
        let plain = |role: &'static str| Frame {
            file: format!("{role}.jpg"),
            role,
            picture: Picture::Tags,
            more: String::new(),
        };
        let mut frames = vec![plain("setup"), plain("panel")];
        let mut random = Random::new(self.scene.seed ^ 0x7374_6570);
        if self.lines() {
            for axis in [Axis::U, Axis::V] {
                frames.extend(self.line_frames(axis, &mut random));
            }
        } else {
            for (axis, waves) in [(Axis::U, &self.photos.u), (Axis::V, &self.photos.v)] {
                for periods in waves {
                    frames.extend(self.wave_frames(axis, *periods, &mut random));
                }
            }
        }
        frames
    }

    fn wave_frames(&self, axis: Axis, periods: u32, random: &mut Random) -> Vec<Frame> {
        let (gamma, pixel_mm) = (self.photos.screen_gamma, self.photos.screen_pixel_mm);
        let frame = |k: u32| {
            let shift = f64::from(k) / f64::from(self.photos.steps);
            let off = self.traps.shift_error * (2.0 * random.unit() - 1.0);
            Frame {
                file: format!("screen_{}{periods}_{k}.jpg", axis.name()),
                role: "pattern",
                picture: Picture::Sine { axis, periods: f64::from(periods), shift: shift + off, gamma, pixel_mm },
                more: format!("axis = \"{}\"\nperiods = {periods}\nshift = {shift:?}\n", axis.name()),
            }
        };
        (0..self.photos.steps).map(frame).collect()
    }

    fn line_frames(&self, axis: Axis, random: &mut Random) -> Vec<Frame> {
        let pitch = self.scene.board.pitch;
        let frame = |role: &'static str, file: String, slid_mm: f64| Frame {
            file,
            role,
            picture: Picture::Lines { axis, slid_mm },
            more: format!("axis = \"{}\"\n", axis.name()),
        };
        let name = axis.name();
        let mut slid = 0.0;
        let mut frames = Vec::new();
        for k in 0..self.photos.slides as usize {
            let slid_mm = self.photos.slid_mm.get(k).copied().unwrap_or(slid);
            frames.push(frame("slide", format!("slide_{name}_{k}.jpg"), slid_mm));
            // Nudged by hand: a sixth of the pitch, give or take half of that.
            slid += pitch * (0.5 + random.unit()) / f64::from(self.photos.slides.max(2));
        }
        if self.photos.stills {
            frames.push(frame("still", format!("still_{name}.jpg"), 0.0));
        }
        frames
    }

    fn lines(&self) -> bool {
        self.photos.slides > 0 || self.photos.stills
    }

    fn toml(&self, frames: &[Frame]) -> String {
        let (tags, board) = (&self.scene.tags, &self.scene.board);
        let ids: Vec<String> = tags.iter().map(|t| t.id.to_string()).collect();
        let size = tags.first().map_or(0.0, |t| t.size);
        let mut text = format!(
            "[panel]\ntag_family = \"tag36h11\"\ntag_size_mm = {size:?}\ntag_ids = [{}]\n\n\
             [board]\nkind = \"{}\"\nwidth_mm = {:?}\nheight_mm = {:?}\n",
            ids.join(", "),
            if self.lines() { "lines" } else { "screen" },
            board.w,
            board.h
        );
        if self.lines() {
            let _ = writeln!(text, "pitch_mm = {:?}", board.pitch);
        }
        for (id, u, v) in board.tag_centres() {
            let _ =
                write!(text, "\n[[board.tags]]\nid = {id}\nx_mm = {u:?}\ny_mm = {v:?}\nsize_mm = {:?}\n", board.tag);
        }
        for f in frames {
            let _ = write!(text, "\n[[frames]]\nfile = \"{}\"\nrole = \"{}\"\n{}", f.file, f.role, f.more);
        }
        text
    }
}

/// EXIF's 35 mm focal length, as these photos count it: for the film's width.
const FILM_WIDTH_MM: f64 = 36.0;

impl Capture {
    /// Writes photos and `capture.toml` into a folder: what a reading may see.
    ///
    /// # Errors
    /// Files that cannot be written.
    pub fn write_photos(&self, folder: &Path) -> Result<(), CaptureError> {
        let write = |name: &str, bytes: &[u8]| {
            let path = folder.join(name);
            std::fs::write(&path, bytes).map_err(|e| CaptureError::File(path, e))
        };
        std::fs::create_dir_all(folder).map_err(|e| CaptureError::File(folder.into(), e))?;
        write("capture.toml", self.toml.as_bytes())?;
        self.photos.iter().try_for_each(|p| write(&p.file, &p.jpeg))
    }

    /// Writes photos, `capture.toml` and the truth into a folder.
    ///
    /// # Errors
    /// Files that cannot be written.
    pub fn write(&self, folder: &Path) -> Result<(), CaptureError> {
        self.write_photos(folder)?;
        Ok(self.truth.write(folder)?)
    }
}
