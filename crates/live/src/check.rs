//! Whether a photo counts: it shows its tags, something new, as sharply as the others, from the same place.

use dentwright_optics::{Board, Drift, Photo, Pixel, TagView, drift, find_tags};
use thiserror::Error;

/// Why a photo must be taken again.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum Again {
    /// Too few of the board's tags.
    #[error("the set-up photo shows {found} of the board's tags; at least 3 are needed")]
    BoardTags {
        /// How many were found.
        found: usize,
    },
    /// Too few tags on the panel.
    #[error("the photo shows {found} of the panel's tags; at least 4 are needed")]
    PanelTags {
        /// How many were found.
        found: usize,
    },
    /// Panel and set-up photo have too few tags in common.
    #[error("the photo shows {found} of the panel tags that the set-up photo shows; at least 4 are needed")]
    SharedTags {
        /// How many were found.
        found: usize,
    },
    /// The photo's size has changed.
    #[error("the photo is {width} x {height} px, the one of the panel is not")]
    Size {
        /// Its width, px.
        width: usize,
        /// Its height, px.
        height: usize,
    },
    /// The tags of the panel cannot be followed.
    #[error("the panel's tags are not where they were: the camera was moved, or it is too dark")]
    Lost,
    /// The camera moved.
    #[error("the camera moved by {px:.1} px")]
    Moved {
        /// By how much, px.
        px: f64,
    },
    /// Edges are weaker than in the other photos.
    #[error("the photo is blurred: its edges are {percent:.0} % as strong as the others'")]
    Blurred {
        /// Of the usual strength.
        percent: f64,
    },
    /// The photo shows what the last one showed.
    #[error("the photo shows what the last one showed: the screen had not changed yet")]
    Same,
}

impl Again {
    /// A short stable name.
    #[must_use]
    pub fn code(&self) -> &'static str {
        match self {
            Self::BoardTags { .. } => "live_board_tags",
            Self::PanelTags { .. } | Self::SharedTags { .. } => "live_panel_tags",
            Self::Size { .. } => "live_size",
            Self::Lost => "live_lost",
            Self::Moved { .. } => "live_moved",
            Self::Blurred { .. } => "live_blurred",
            Self::Same => "live_same",
        }
    }

    /// What to do.
    #[must_use]
    pub fn next(&self) -> &'static str {
        match self {
            Self::BoardTags { .. } => "Stand so that the whole screen is in the picture, sharp and not burnt out.",
            Self::PanelTags { .. } => "Go closer, or stick more tags around the damage; four must be whole and sharp.",
            Self::SharedTags { .. } => "Take the set-up photo again, so that it shows the same tags.",
            Self::Size { .. } => "Keep the phone as it is, upright or lying, and start again from the panel photo.",
            Self::Lost | Self::Moved { .. } => "Stand the phone on something firm and do not touch it.",
            Self::Blurred { .. } => "Wait until nothing shakes; tap the panel to focus on it.",
            Self::Same => "Wait longer after each picture.",
        }
    }

    /// Whether the reading can undo it, or drop the one photo, so that the run may go on after a few tries.
    pub(crate) fn can_be_borne(&self) -> bool {
        matches!(self, Self::Moved { px } if *px < FAR_PX) || matches!(self, Self::Same)
    }
}

/// Movement between two photos that is taken for noise, px; what stays is undone by the reading.
const STILL_PX: f64 = 1.5;
/// A movement that changes the mirror image too much to be undone, px.
const FAR_PX: f64 = 30.0;
/// Sharpness over the usual below which a photo is blurred; the reading drops those below 0.75.
const BLURRED: f64 = 0.8;
/// Grey levels by which the most changed hundredth of the pixels differs at least when a new pattern is up.
const LEAST_CHANGE: u8 = 12;
const CHANGED_SHARE: f64 = 0.01;
const EVERY_PX: usize = 13;
const LEAST_PANEL_TAGS: usize = 4;
const LEAST_BOARD_TAGS: usize = 3;

/// The tags of a set-up photo that lie on the panel.
pub(crate) fn panel_tags_of_setup(photo: &Photo, board: &Board) -> Result<Vec<usize>, Again> {
    let of_board: Vec<usize> = board.tags.iter().map(|t| t.id).collect();
    let found = find_tags(photo, &of_board);
    let (board_tags, others): (Vec<_>, Vec<_>) = found.into_iter().partition(|t| of_board.contains(&t.id));
    if board_tags.len() < LEAST_BOARD_TAGS {
        return Err(Again::BoardTags { found: board_tags.len() });
    }
    if others.len() < LEAST_PANEL_TAGS {
        return Err(Again::PanelTags { found: others.len() });
    }
    Ok(others.into_iter().map(|t| t.id).collect())
}

/// What later photos are held against.
#[derive(Debug, Clone)]
pub(crate) struct Reference {
    panel: Photo,
    pub tags: Vec<TagView>,
    last: Photo,
    /// Where the middle of the panel photo went in the last good photo, px.
    moved: Pixel,
    sharpness: Vec<f64>,
}

impl Reference {
    /// From the panel photo; `in_setup` are the panel's tags of the set-up photo.
    pub fn new(panel: Photo, in_setup: &[usize]) -> Result<Self, Again> {
        let found = find_tags(&panel, in_setup);
        let tags: Vec<TagView> = found.into_iter().filter(|t| in_setup.contains(&t.id)).collect();
        if tags.len() < LEAST_PANEL_TAGS {
            return Err(Again::SharedTags { found: tags.len() });
        }
        Ok(Self { last: panel.clone(), panel, tags, moved: Pixel::zeros(), sharpness: vec![1.0] })
    }

    /// Judges a photo of a pattern. It becomes the one before the next, unless it is refused; `bear` takes it
    /// although something is wrong that can be borne.
    pub fn judge(&mut self, photo: Photo, bear: bool) -> Result<(), Again> {
        if (photo.width, photo.height) != (self.panel.width, self.panel.height) {
            return Err(Again::Size { width: photo.width, height: photo.height });
        }
        let drift = drift(&self.panel, &photo, &self.tags).ok_or(Again::Lost)?;
        let moved = self.middle(&drift);
        let wrong = self.wrong(&photo, &drift, &moved);
        match wrong {
            Some(again) if !(bear && again.can_be_borne()) => return Err(again),
            _ => {}
        }
        self.moved = moved;
        self.sharpness.push(drift.sharpness);
        self.last = photo;
        Ok(())
    }

    fn middle(&self, drift: &Drift) -> Pixel {
        let middle = Pixel::new(self.panel.width as f64, self.panel.height as f64) / 2.0;
        drift.map.map(&middle).map_or(Pixel::zeros(), |to| to - middle)
    }

    fn wrong(&self, photo: &Photo, drift: &Drift, moved: &Pixel) -> Option<Again> {
        let by = (moved - self.moved).norm();
        let mut usual = self.sharpness.clone();
        usual.sort_by(f64::total_cmp);
        let sharp = drift.sharpness / usual[usual.len() / 2];
        match () {
            () if by > STILL_PX => Some(Again::Moved { px: by }),
            () if sharp < BLURRED => Some(Again::Blurred { percent: 100.0 * sharp }),
            () if change(&self.last, photo) < LEAST_CHANGE => Some(Again::Same),
            () => None,
        }
    }
}

/// By how many grey levels two photos differ where they differ most.
fn change(a: &Photo, b: &Photo) -> u8 {
    let mut all: Vec<u8> = a.grey.iter().zip(&b.grey).step_by(EVERY_PX).map(|(a, b)| a.abs_diff(*b)).collect();
    let at = ((all.len() as f64 * (1.0 - CHANGED_SHARE)) as usize).min(all.len().saturating_sub(1));
    if all.is_empty() { 0 } else { *all.select_nth_unstable(at).1 }
}
