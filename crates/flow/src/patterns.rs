//! From the pattern photos to the board point of every pixel, each photo checked against its set.

use crate::error::ReadError;
use crate::gather::Gathered;
use crate::lines::{fit_for_photo, one_contrast};
use crate::reading_file::Note;
use crate::settle::FrameCheck;
use dentwright_optics::{
    Axis, BoardField, DEFAULT_GAMMA, Photo, Role, Shown, Steps, board_field, estimate_gamma, linear_table, shown_steps,
    shown_steps_at,
};
use rayon::prelude::*;

/// The photos of one pattern: indices of the frames and the shifts they show, periods.
struct Set {
    axis: Axis,
    periods: f64,
    frames: Vec<usize>,
    shifts: Vec<f64>,
}

/// Board point of every pixel, the response exponent, and remarks. Photos that do not show what the file says are
/// named in `checks` and left out.
pub(crate) fn mirrored_points(
    g: &Gathered,
    checks: &mut [FrameCheck],
) -> Result<(BoardField, f64, Vec<Note>), ReadError> {
    let mut sets = sets(g, checks);
    if sets.is_empty() {
        return Err(ReadError::NotScreen);
    }
    let gamma = response(g, &sets);
    let table = linear_table(gamma);
    for axis in [Axis::U, Axis::V] {
        if let Some(finest) = sets.iter_mut().rev().find(|s| s.axis == axis) {
            let shown = finest.steps(g, &table, checks).map(|s| shown_steps(&s, &finest.shifts))?;
            finest.correct(shown, checks);
        }
    }
    let finest = |axis| sets.iter().rev().find(|s| s.axis == axis).map(|s| (s.steps(g, &table, checks), s.frames[0]));
    let mut notes = Vec::new();
    if let (Some((u, frame)), Some((v, _))) = (finest(Axis::U), finest(Axis::V)) {
        notes.extend(one_contrast(&u?, &v?, &checks[frame].file)?);
    }
    let mut field = joined(g, &sets, &table, checks)?;
    if check_coarse(g, &mut sets, &table, &field, checks)? {
        field = joined(g, &sets, &table, checks)?;
    }
    Ok((field, gamma, notes))
}

/// Refuses finest patterns that are too fine or too blurred, as far as the next coarser ones can tell.
pub(crate) fn fit_for_photos(g: &Gathered, checks: &[FrameCheck]) -> Result<(), ReadError> {
    let (sets, table) = (sets(g, checks), linear_table(DEFAULT_GAMMA));
    for axis in [Axis::U, Axis::V] {
        let mut from_finest = sets.iter().rev().filter(|s| s.axis == axis);
        let (Some(finest), Some(coarser)) = (from_finest.next(), from_finest.next()) else { continue };
        let [fine, coarse] = [finest, coarser].map(|s| s.steps(g, &table, checks));
        // Photos that give no phase are told of later, with what is wrong with them.
        if let (Ok(fine), Ok(coarse)) = (fine, coarse) {
            fit_for_photo(&fine, &coarse, &checks[finest.frames[0]].file)?;
        }
    }
    Ok(())
}

/// Patterns of both axes, each axis from coarse to fine.
fn sets(g: &Gathered, checks: &[FrameCheck]) -> Vec<Set> {
    let mut sets: Vec<Set> = Vec::new();
    for (k, frame) in g.capture.frames.iter().enumerate().filter(|(k, f)| f.role == Role::Pattern && checks[*k].ok) {
        let (Some(axis), Some(periods), Some(shift)) = (frame.axis, frame.periods, frame.shift) else { continue };
        let same = |s: &&mut Set| s.axis == axis && (s.periods - periods).abs() < SAME_PERIODS;
        match sets.iter_mut().find(same) {
            Some(set) => {
                set.frames.push(k);
                set.shifts.push(shift);
            }
            None => sets.push(Set { axis, periods, frames: vec![k], shifts: vec![shift] }),
        }
    }
    sets.sort_by(|a, b| a.axis.cmp(&b.axis).then(a.periods.total_cmp(&b.periods)));
    sets
}

/// Patterns whose numbers of periods differ by less are one.
const SAME_PERIODS: f64 = 1e-6;

impl Set {
    fn steps<'a>(&self, g: &'a Gathered, table: &'a [f32; 256], checks: &[FrameCheck]) -> Result<Steps<'a>, ReadError> {
        let photos: Vec<&Photo> = self.frames.iter().map(|&k| &g.photos[k]).collect();
        Steps::new(&photos, &self.shifts, self.periods, table).ok_or_else(|| {
            let of_this = |k: &usize| {
                let f = &g.capture.frames[*k];
                f.axis == Some(self.axis) && f.periods.is_some_and(|p| (p - self.periods).abs() < SAME_PERIODS)
            };
            let dropped: Vec<String> = (0..checks.len())
                .filter(|k| !checks[*k].ok && of_this(k))
                .map(|k| format!("; {}: {}", checks[k].file, checks[k].note))
                .collect();
            let why = format!(
                "the {} usable photos with {} periods are not shifted enough{}",
                photos.len(),
                self.periods,
                dropped.concat()
            );
            ReadError::Patterns { axis: axis_name(self.axis), why }
        })
    }

    /// Takes over what the photos show: bad ones leave, slightly wrong shifts are corrected. True where
    /// anything changed. Where most disagree the check itself has no footing, and nothing is changed.
    fn correct(&mut self, shown: Option<Vec<Shown>>, checks: &mut [FrameCheck]) -> bool {
        let Some(shown) = shown else { return false };
        let bad: Vec<usize> = (0..shown.len()).filter(|&k| !shown[k].good).collect();
        if bad.is_empty() || bad.len() > shown.len() / 3 {
            return false;
        }
        for &k in &bad {
            let (s, said) = (shown[k], self.shifts[k]);
            let off = (s.shift - said) - (s.shift - said).round();
            if (s.gain - 1.0).abs() < SAME_CONTRAST && off.abs() < SMALL_SHIFT {
                self.shifts[k] = said + off;
                checks[self.frames[k]].note = format!("its shift is {:.3}, not {said}; corrected", said + off);
                continue;
            }
            let same = |j: &usize| {
                let apart = s.shift - shown[*j].shift;
                shown[*j].good && (apart - apart.round()).abs() < SMALL_SHIFT
            };
            let note = if (s.gain - 1.0).abs() >= SAME_CONTRAST {
                format!("its contrast is {:.2} times that of the others: blurred, or the light changed", s.gain)
            } else if let Some(other) = (0..shown.len()).find(same) {
                format!("shows the same step as {}", checks[self.frames[other]].file)
            } else {
                format!("shows the shift {:.2}, not {said}", s.shift.rem_euclid(1.0))
            };
            checks[self.frames[k]].drop(note);
        }
        let keep: Vec<bool> = self.frames.iter().map(|&k| checks[k].ok).collect();
        self.frames.retain({
            let mut keep = keep.iter();
            move |_| keep.next() == Some(&true)
        });
        self.shifts.retain({
            let mut keep = keep.iter();
            move |_| keep.next() == Some(&true)
        });
        true
    }
}

/// Contrast within which a photo is one of the others.
const SAME_CONTRAST: f64 = 0.1;
/// Error of a shift that can be corrected rather than be a mistake, periods.
const SMALL_SHIFT: f64 = 0.04;

fn joined(g: &Gathered, sets: &[Set], table: &[f32; 256], checks: &[FrameCheck]) -> Result<BoardField, ReadError> {
    let of = |axis| -> Result<Vec<Steps>, ReadError> {
        let list: Vec<&Set> = sets.iter().filter(|s| s.axis == axis).collect();
        let wrong = |why: String| Err(ReadError::Patterns { axis: axis_name(axis), why });
        match list.first() {
            None => wrong("there are none".into()),
            Some(coarse) if coarse.periods > 1.0 => {
                wrong(format!("the coarsest has {} periods, one that spans the board once is needed", coarse.periods))
            }
            Some(_) => list.iter().map(|s| s.steps(g, table, checks)).collect(),
        }
    };
    let board = &g.capture.board;
    let width = g.first(Role::Panel).map_or(0, |(_, p)| p.width);
    Ok(board_field(&of(Axis::U)?, &of(Axis::V)?, width, (board.width_mm, board.height_mm)))
}

/// Checks the coarser patterns where the finest have already said which board point is mirrored. True where
/// any was corrected.
fn check_coarse(
    g: &Gathered,
    sets: &mut [Set],
    table: &[f32; 256],
    field: &BoardField,
    checks: &mut [FrameCheck],
) -> Result<bool, ReadError> {
    let known = field.lattice(CHECKED_PIXELS);
    let board = &g.capture.board;
    let mut changed = false;
    for axis in [Axis::U, Axis::V] {
        let fraction: Vec<(usize, f64)> = known
            .iter()
            .map(|m| {
                let share = match axis {
                    Axis::U => m.board_mm.x / board.width_mm,
                    Axis::V => m.board_mm.y / board.height_mm,
                };
                (m.pixel.y as usize * field.width + m.pixel.x as usize, share + 0.5)
            })
            .collect();
        let finest = sets.iter().rposition(|s| s.axis == axis);
        for k in (0..sets.len()).filter(|k| sets[*k].axis == axis && Some(*k) != finest).collect::<Vec<_>>() {
            let shown = shown_steps_at(&sets[k].steps(g, table, checks)?, &sets[k].shifts, &fraction);
            changed |= sets[k].correct(shown, checks);
        }
    }
    Ok(changed)
}

const CHECKED_PIXELS: usize = 4_000;

pub(crate) fn axis_name(axis: Axis) -> &'static str {
    match axis {
        Axis::U => "u",
        Axis::V => "v",
    }
}

/// Response exponent: the middle one of all sets, so that one odd photo does not decide.
fn response(g: &Gathered, sets: &[Set]) -> f64 {
    let mut told: Vec<f64> =
        sets.par_iter().filter_map(|s| quarters(g, s)).map(|photos| estimate_gamma(&photos)).collect();
    told.sort_by(f64::total_cmp);
    told.get(told.len() / 2).copied().unwrap_or(DEFAULT_GAMMA)
}

/// The four quarter-period steps in order, if a set has them.
fn quarters<'a>(g: &'a Gathered, set: &Set) -> Option<Vec<&'a Photo>> {
    (0..4)
        .map(|k| {
            let at = set.shifts.iter().position(|s| (s.rem_euclid(1.0) - 0.25 * f64::from(k)).abs() < 1e-6)?;
            Some(&g.photos[set.frames[at]])
        })
        .collect()
}
