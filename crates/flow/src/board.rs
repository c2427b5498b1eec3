//! Board points from either kind of board: a screen's are absolute, slid lines are settled by the pose solve.

use crate::error::ReadError;
use crate::gather::Gathered;
use crate::lines::one_contrast;
use crate::patterns::axis_name;
use crate::read::Seen;
use crate::reading_file::Note;
use crate::settle::FrameCheck;
use dentwright_optics::{
    Axis, BoardField, BoardTag, DEFAULT_GAMMA, LineField, Mirrored, Photo, Pixel, Role, Scene, SlidPhase, Slides,
    SmoothPanel, Steps, find_slides, find_tags, line_field, linear_table, predict, slid_phase, tag_corners,
};
use nalgebra::Vector2;
use std::f64::consts::TAU;

/// Board points of the panel photo's pixels.
pub(crate) enum BoardPoints {
    /// Known from the patterns.
    Screen(BoardField),
    /// Known up to an offset on the board, here its one-sigma, mm.
    Lines(LineField, f64),
}

impl BoardPoints {
    pub fn field(&self) -> &BoardField {
        match self {
            Self::Screen(field) => field,
            Self::Lines(lines, _) => &lines.field,
        }
    }

    /// One-sigma of a common offset of all points, mm.
    pub fn offset_sigma_mm(&self) -> f64 {
        match self {
            Self::Screen(_) => SCREEN_OFFSET_MM,
            Self::Lines(_, sigma) => *sigma,
        }
    }

    /// Once the scene is solved: slid lines take its offset, and areas apart their order.
    pub fn settle(&mut self, scene: &Scene) {
        if let Self::Lines(lines, _) = self {
            lines.shift(scene.offset_mm);
            lines.join(|pixel| predict(&scene.camera, &scene.layout, &scene.panel, pixel));
        }
    }
}

/// A screen's pattern stands still on it.
const SCREEN_OFFSET_MM: f64 = 1e-3;
/// An offset from board tags in the mirror image: rough edges of a mirrored corner, and the first slide.
const TAGS_OFFSET_MM: f64 = 3.0;
/// An offset from where the panel's plane would mirror the board.
const PLANE_OFFSET_MM: f64 = 100.0;

/// What tells which of the board's lines is which.
pub(crate) struct Anchoring<'a> {
    seen: &'a Seen,
    /// Corners of the board's tags in the mirror image.
    corners: Vec<Mirrored>,
}

impl<'a> Anchoring<'a> {
    pub fn new(seen: &'a Seen, corners: Vec<Mirrored>) -> Self {
        Self { seen, corners }
    }

    /// Board points of the lines' phases, and how they were counted.
    pub fn points(
        &self,
        u: &SlidPhase,
        v: &SlidPhase,
        width: usize,
        pitch_mm: f64,
    ) -> Result<(BoardPoints, Note), ReadError> {
        let mut lines = line_field(u, v, width, pitch_mm).ok_or(ReadError::NothingMirrored)?;
        lines.orient(|pixel| predict(&self.seen.cameras[0], &self.seen.layout, &SmoothPanel::plane(), pixel));
        let (sigma, text) = if lines.anchor(&self.corners) {
            (TAGS_OFFSET_MM, "which line is which was told by the board's tags in the mirror image")
        } else {
            (PLANE_OFFSET_MM, "which line is which was told by where the tags say panel and board stand")
        };
        Ok((BoardPoints::Lines(lines, sigma), Note { code: "lines_order".into(), text: text.into() }))
    }
}

/// Slid photos of both axes, understood by themselves, and board tags seen in the mirror image.
pub(crate) struct SlidLines {
    axes: [SlidAxis; 2],
    corners: Vec<Mirrored>,
    /// A remark on the mirror.
    doubt: Option<Note>,
}

/// Steps and phases of the slid photos, those left out that `checks` already dropped.
pub(crate) fn slid_lines(g: &Gathered, checks: &[FrameCheck]) -> Result<SlidLines, ReadError> {
    let table = linear_table(DEFAULT_GAMMA);
    let of_axis = |axis| slid_axis(g, axis, checks, &table);
    let ((u, v), corners) =
        rayon::join(|| rayon::join(|| of_axis(Axis::U), || of_axis(Axis::V)), || mirrored_corners(g));
    let axes = [u?, v?];
    let [u, v] = axes.each_ref().map(|axis| axis.steps(g, &table));
    let file = &checks[axes[0].frames[0]].file;
    let doubt = u.zip(v).map_or(Ok(None), |(u, v)| one_contrast(&u, &v, file))?;
    Ok(SlidLines { axes, corners, doubt })
}

impl SlidLines {
    /// Board points, and remarks. Photos that do not fit the others are named in `checks`.
    pub fn points(
        self,
        g: &Gathered,
        seen: &Seen,
        checks: &mut [FrameCheck],
    ) -> Result<(BoardPoints, Vec<Note>), ReadError> {
        let pitch_mm = g.capture.board.pitch_mm.unwrap_or_default();
        let width = g.first(Role::Panel).map_or(0, |(_, p)| p.width);
        let [u, v] = &self.axes;
        let (points, order) = Anchoring::new(seen, self.corners).points(&u.phase, &v.phase, width, pitch_mm)?;
        let mut notes = Vec::from_iter(self.doubt);
        if let BoardPoints::Lines(lines, _) = &points {
            for (axis, sign) in self.axes.iter().zip(lines.signs) {
                axis.remark(f64::from(sign) * pitch_mm, checks, &mut notes);
            }
        }
        notes.push(order);
        Ok((points, notes))
    }
}

/// The slid photos of one axis, understood.
struct SlidAxis {
    axis: Axis,
    /// Which frames of the capture the photos are.
    frames: Vec<usize>,
    slides: Slides,
    phase: SlidPhase,
}

fn slid_axis(g: &Gathered, axis: Axis, checks: &[FrameCheck], table: &[f32; 256]) -> Result<SlidAxis, ReadError> {
    let usable = |k: &usize| {
        let f = &g.capture.frames[*k];
        f.role == Role::Slide && f.axis == Some(axis) && checks[*k].ok
    };
    let frames: Vec<usize> = (0..g.photos.len()).filter(usable).collect();
    let photos: Vec<&Photo> = frames.iter().map(|&k| &g.photos[k]).collect();
    let slides = find_slides(&photos, table).map_err(|why| ReadError::Slides { axis: axis_name(axis), why })?;
    let phase = slid_phase(&photos, &slides, table);
    Ok(SlidAxis { axis, frames, slides, phase })
}

impl SlidAxis {
    /// The photos used, as steps of the lines' first harmonic.
    fn steps<'a>(&self, g: &'a Gathered, table: &'a [f32; 256]) -> Option<Steps<'a>> {
        let photos: Vec<&Photo> = self.slides.kept.iter().map(|&k| &g.photos[self.frames[k]]).collect();
        let shifts: Vec<f64> = self.slides.steps.iter().map(|step| step / TAU).collect();
        Steps::new(&photos, &shifts, 1.0, table)
    }

    /// Says how far the board was slid, which photos repeat one another and which were left out. The pitch is
    /// negative where the found steps run against the axis.
    fn remark(&self, pitch_mm: f64, checks: &mut [FrameCheck], notes: &mut Vec<Note>) {
        let (slides, axis) = (&self.slides, axis_name(self.axis));
        let slid = |step: &f64| format!("{:.1}", (-step * pitch_mm / TAU).rem_euclid(pitch_mm.abs()));
        let slid: Vec<String> = slides.steps.iter().map(slid).collect();
        let text =
            format!("along {axis} the lines stood {} mm on from the first photo, up to whole pitches", slid.join(", "));
        notes.push(Note { code: "slides".into(), text });
        for (photo, earlier) in slides.repeats.iter().map(|&(p, e)| (self.frames[p], self.frames[e])) {
            let note = format!("shows the lines where {} shows them; it adds nothing but light", checks[earlier].file);
            checks[photo].add(note);
        }
        for photo in (0..self.frames.len()).filter(|k| !slides.kept.contains(k)) {
            checks[self.frames[photo]].drop(format!(
                "does not fit the other photos of its axis: {:.0} % of the lines' brightness off, they are {:.0} % off",
                100.0 * slides.left[photo],
                100.0 * slides.noise / slides.amplitude
            ));
        }
    }
}

/// Corners of the board's own tags in the mirror image, found in the panel photo turned over.
pub(crate) fn mirrored_corners(g: &Gathered) -> Vec<Mirrored> {
    let Some((_, photo)) = g.first(Role::Panel) else { return Vec::new() };
    let mut turned = photo.clone();
    turned.grey.chunks_exact_mut(photo.width).for_each(<[u8]>::reverse);
    let ids: Vec<usize> = g.capture.board.tags.iter().map(|t| t.id).collect();
    let views = find_tags(&turned, &ids);
    let of = |tag: &BoardTag| {
        let corners = views.iter().find(|v| v.id == tag.id).map(|v| v.corners)?;
        let at = Vector2::new(tag.x_mm, tag.y_mm);
        let pairs = tag_corners(tag.size_mm).into_iter().zip(corners);
        let back = move |p: Pixel| Pixel::new(photo.width as f64 - p.x, p.y);
        Some(pairs.map(move |(c, p)| Mirrored { pixel: back(p), board_mm: at + c }))
    };
    g.capture.board.tags.iter().filter_map(of).flatten().collect()
}
