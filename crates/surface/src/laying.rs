//! One reading laid on an earlier one: the turn and the shift between two panel frames.
//!
//! Every reading chooses its own frame. Tags that were left on the panel tell how the frames lie: of all pairs of
//! common tags the one that most others agree with is taken (Fischler and Bolles 1981, with all pairs tried), and
//! the turn and shift of those that agree fitted to them (Kabsch 1976, in the plane). A tag that was lifted and
//! stuck elsewhere disagrees and is left out.
//!
//! Limits: the panel lies in one plane near enough: what tilt or bow differs goes into the intended shape.

use crate::grid::{Grid, Map};
use serde::{Deserialize, Serialize};

/// Centre of a numbered tag in a panel frame, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TagPlace {
    /// Its number.
    pub id: usize,
    /// Panel x, mm.
    pub x_mm: f64,
    /// Panel y, mm.
    pub y_mm: f64,
}

/// What told how two readings lie on each other.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum LaidBy {
    /// Tags that stayed where they were.
    Tags {
        /// How many.
        count: usize,
        /// Tags with the same number that lie elsewhere now.
        moved: usize,
    },
    /// The panel's own texture and shape.
    Shape {
        /// Correlation of what both readings show, 0 to 1.
        likeness: f64,
    },
}

/// The move from the earlier reading's frame to the later one's: turned about the origin, then shifted.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Laying {
    /// Turn from x toward y, rad.
    pub turn_rad: f64,
    /// Shift along x, mm.
    pub dx_mm: f64,
    /// Shift along y, mm.
    pub dy_mm: f64,
    /// What told it.
    pub by: LaidBy,
    /// Middle of what told it, later frame, mm.
    pub middle_x_mm: f64,
    /// Middle of what told it, later frame, mm.
    pub middle_y_mm: f64,
    /// One-sigma of the shift in that middle, mm each way.
    pub place_sigma_mm: f64,
    /// One-sigma of the turn, rad.
    pub turn_sigma_rad: f64,
}

impl Laying {
    /// A place of the earlier reading in the later one's frame, mm.
    #[must_use]
    pub fn carry(&self, (x, y): (f64, f64)) -> (f64, f64) {
        let (sin, cos) = self.turn_rad.sin_cos();
        (x * cos - y * sin + self.dx_mm, x * sin + y * cos + self.dy_mm)
    }

    /// A place of the later reading in the earlier one's frame, mm.
    #[must_use]
    pub fn back(&self, (x, y): (f64, f64)) -> (f64, f64) {
        let (sin, cos) = self.turn_rad.sin_cos();
        let (x, y) = (x - self.dx_mm, y - self.dy_mm);
        (x * cos + y * sin, y * cos - x * sin)
    }

    /// One-sigma of where a place of the later reading lies on the earlier one, mm.
    #[must_use]
    pub fn place_sigma_at(&self, (x, y): (f64, f64)) -> f64 {
        let far = (x - self.middle_x_mm).hypot(y - self.middle_y_mm);
        self.place_sigma_mm.hypot(self.turn_sigma_rad * far)
    }

    /// A map of the earlier reading on a grid of the later one; NaN where nothing was read.
    #[must_use]
    pub fn laid(&self, earlier: &Map, grid: Grid) -> Map {
        let at = |i: usize| {
            let (x, y) = self.back(grid.position(i));
            earlier.sample(x, y).map_or(f32::NAN, |v| v as f32)
        };
        Map { grid, values: (0..grid.len()).map(at).collect() }
    }
}

/// Tags that agree within this stayed where they were, mm: readings of one panel put them within 0.1 mm of each other
/// (known-truth captures), and nobody sticks a tag back so near.
const AGREE_MM: f64 = 0.5;
/// Fewer tags could agree by chance.
const LEAST_TAGS: usize = 3;
/// No tag's centre is known better, mm, one-sigma; from known-truth captures.
const TAG_SIGMA_MM: f64 = 0.04;

/// Lays a later reading on an earlier one by the tags that both show; `None` where fewer than three stayed.
#[must_use]
pub fn lay_by_tags(earlier: &[TagPlace], later: &[TagPlace]) -> Option<Laying> {
    let pairs: Vec<Pair> = earlier
        .iter()
        .filter_map(|e| later.iter().find(|l| l.id == e.id).map(|l| ((e.x_mm, e.y_mm), (l.x_mm, l.y_mm))))
        .collect();
    let mut best: Vec<Pair> = Vec::new();
    for i in 0..pairs.len() {
        for j in i + 1..pairs.len() {
            let (turn, shift) = fitted(&[pairs[i], pairs[j]]);
            let agree: Vec<Pair> = pairs.iter().copied().filter(|p| off(p, turn, shift) < AGREE_MM).collect();
            if agree.len() > best.len() {
                best = agree;
            }
        }
    }
    if best.len() < LEAST_TAGS {
        return None;
    }
    let n = best.len() as f64;
    let (turn_rad, shift) = fitted(&best);
    let squares: f64 = best.iter().map(|p| off(p, turn_rad, shift).powi(2)).sum();
    let sigma = (squares / (2.0 * n - 3.0)).sqrt().max(TAG_SIGMA_MM);
    let middle = mean(best.iter().map(|p| p.1));
    let spread: f64 = best.iter().map(|p| (p.1.0 - middle.0).powi(2) + (p.1.1 - middle.1).powi(2)).sum();
    Some(Laying {
        turn_rad,
        dx_mm: shift.0,
        dy_mm: shift.1,
        by: LaidBy::Tags { count: best.len(), moved: pairs.len() - best.len() },
        middle_x_mm: middle.0,
        middle_y_mm: middle.1,
        place_sigma_mm: sigma / n.sqrt(),
        turn_sigma_rad: sigma / spread.sqrt(),
    })
}

/// A tag's centre in the earlier and in the later frame.
type Pair = ((f64, f64), (f64, f64));

/// Turn and shift that bring the earlier places of all pairs onto the later ones, least squares.
fn fitted(pairs: &[Pair]) -> (f64, (f64, f64)) {
    let (a, b) = (mean(pairs.iter().map(|p| p.0)), mean(pairs.iter().map(|p| p.1)));
    let (mut dot, mut cross) = (0.0, 0.0);
    for (p, q) in pairs {
        let ((px, py), (qx, qy)) = ((p.0 - a.0, p.1 - a.1), (q.0 - b.0, q.1 - b.1));
        dot += px * qx + py * qy;
        cross += px * qy - py * qx;
    }
    let turn = cross.atan2(dot);
    let (sin, cos) = turn.sin_cos();
    (turn, (b.0 - (a.0 * cos - a.1 * sin), b.1 - (a.0 * sin + a.1 * cos)))
}

fn off(((x, y), later): &Pair, turn: f64, shift: (f64, f64)) -> f64 {
    let (sin, cos) = turn.sin_cos();
    (x * cos - y * sin + shift.0 - later.0).hypot(x * sin + y * cos + shift.1 - later.1)
}

fn mean(places: impl ExactSizeIterator<Item = (f64, f64)>) -> (f64, f64) {
    let n = places.len() as f64;
    places.fold((0.0, 0.0), |s, p| (s.0 + p.0 / n, s.1 + p.1 / n))
}

#[cfg(test)]
mod tests {
    use super::*;

    const TRUE: (f64, f64, f64) = (0.31, 12.0, -40.0);

    fn tags() -> Vec<TagPlace> {
        let places = [(-90.0, -60.0), (85.0, -55.0), (92.0, 61.0), (-80.0, 66.0), (3.0, 70.0)];
        places.iter().enumerate().map(|(id, &(x_mm, y_mm))| TagPlace { id, x_mm, y_mm }).collect()
    }

    fn carried(tags: &[TagPlace]) -> Vec<TagPlace> {
        let (sin, cos) = TRUE.0.sin_cos();
        let at = |t: &TagPlace| (t.x_mm * cos - t.y_mm * sin + TRUE.1, t.x_mm * sin + t.y_mm * cos + TRUE.2);
        tags.iter().map(|t| TagPlace { id: t.id, x_mm: at(t).0, y_mm: at(t).1 }).collect()
    }

    #[test]
    fn tags_tell_turn_and_shift_and_a_moved_tag_is_left_out() {
        let mut later = carried(&tags());
        later[2].x_mm += 7.0;
        later[3].y_mm += 0.06;
        let laying = lay_by_tags(&tags(), &later).unwrap();
        assert_eq!(laying.by, LaidBy::Tags { count: 4, moved: 1 });
        assert!((laying.turn_rad - TRUE.0).abs() < 5e-4, "{laying:?}");
        let (x, y) = laying.carry(laying.back((20.0, -7.0)));
        assert!((x - 20.0).abs() < 1e-9 && (y + 7.0).abs() < 1e-9);
        // Two-sided: the doubt is neither nothing nor a millimetre, and grows away from the tags.
        let (near, far) =
            (laying.place_sigma_at((laying.middle_x_mm, laying.middle_y_mm)), laying.place_sigma_at((400.0, 0.0)));
        assert!((0.01..0.2).contains(&near) && far > 1.5 * near, "{near} {far}");
    }

    #[test]
    fn stickers_that_were_replaced_say_nothing() {
        let mut later = carried(&tags());
        for (k, tag) in later.iter_mut().enumerate() {
            tag.x_mm += 9.0 * (k as f64 * 2.3).sin();
            tag.y_mm += 11.0 * (k as f64 * 1.7).cos();
        }
        assert!(lay_by_tags(&tags(), &later).is_none());
        assert!(lay_by_tags(&tags()[..2], &carried(&tags())[..2]).is_none());
    }
}
