//! The session: what is up, what was shot, what comes next.

use crate::board::{BoardLayout, LayoutError};
use crate::check::{Again, Reference, panel_tags_of_setup};
use crate::plan::{Shot, plan};
use dentwright_optics::{Board, Capture, PanelTags, Photo, Role};

/// A capture under way.
#[derive(Debug, Clone)]
pub struct Session {
    tag_mm: f64,
    board: Option<Board>,
    shots: Vec<Shot>,
    turn: usize,
    shown: bool,
    tries: u32,
    in_setup: Vec<usize>,
    reference: Option<Reference>,
}

/// What became of a photo that was taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Taken {
    /// It is kept as the photo of its turn; the next turn begins.
    Next,
    /// It is kept, and it was the last.
    Done,
}

/// Tries after which what can be borne is borne.
const TRIES: u32 = 3;
/// Turn of the panel photo.
const PANEL_TURN: usize = 1;

impl Session {
    /// A session for tags of this size on the panel, mm.
    #[must_use]
    pub fn new(tag_mm: f64) -> Self {
        Self {
            tag_mm,
            board: None,
            shots: Vec::new(),
            turn: 0,
            shown: false,
            tries: 0,
            in_setup: Vec::new(),
            reference: None,
        }
    }

    /// The screen says how it is laid out. One that differs from before starts the session over.
    ///
    /// # Errors
    /// A screen that cannot be the board; nothing has changed then.
    pub fn lay_out(&mut self, layout: &BoardLayout) -> Result<(), LayoutError> {
        let board = layout.board()?;
        let same = self.board.as_ref().is_some_and(|b| same_board(b, &board));
        if !same {
            let shots = plan(&board);
            *self = Self { board: Some(board), shots, ..Self::new(self.tag_mm) };
        }
        self.shown = false;
        Ok(())
    }

    /// Whether a screen is known.
    #[must_use]
    pub fn has_board(&self) -> bool {
        self.board.is_some()
    }

    /// The turn, from 0; equal to [`Session::turns`] when all is done.
    #[must_use]
    pub fn turn(&self) -> usize {
        self.turn
    }

    /// How many turns there are; 0 without a screen.
    #[must_use]
    pub fn turns(&self) -> usize {
        self.shots.len()
    }

    /// What is to be shot now; none without a screen and when all is done.
    #[must_use]
    pub fn shot(&self) -> Option<&Shot> {
        self.shots.get(self.turn)
    }

    /// Every photo of the session, in order.
    #[must_use]
    pub fn shots(&self) -> &[Shot] {
        &self.shots
    }

    /// Whether the screen shows this turn's picture.
    #[must_use]
    pub fn is_shown(&self) -> bool {
        self.shown
    }

    /// The screen shows the picture of a turn. Late news of an earlier turn changes nothing.
    pub fn show(&mut self, turn: usize) {
        self.shown |= turn == self.turn && self.shot().is_some();
    }

    /// A photo of a turn. None when it is not this turn's, or its picture was not up: then it is passed over.
    ///
    /// # Errors
    /// When it must be taken again.
    pub fn take(&mut self, turn: usize, photo: Photo) -> Option<Result<Taken, Again>> {
        let role = self.shot().filter(|_| turn == self.turn && self.shown)?.role;
        let judged = match role {
            Role::Setup => {
                let board = self.board.as_ref()?;
                panel_tags_of_setup(&photo, board).map(|ids| self.in_setup = ids)
            }
            Role::Panel => Reference::new(photo, &self.in_setup).map(|reference| self.reference = Some(reference)),
            Role::Pattern | Role::Slide | Role::Still => {
                let bear = self.tries >= TRIES;
                self.reference.as_mut()?.judge(photo, bear)
            }
        };
        Some(judged.map(|()| self.advance()).inspect_err(|_| self.tries += 1))
    }

    fn advance(&mut self) -> Taken {
        (self.turn, self.shown, self.tries) = (self.turn + 1, false, 0);
        if self.turn == self.shots.len() { Taken::Done } else { Taken::Next }
    }

    /// Begins again: with the set-up photo, or with the panel photo where that one is good.
    pub fn begin_again(&mut self, with_setup: bool) {
        self.turn = if with_setup { 0 } else { self.turn.min(PANEL_TURN) };
        (self.shown, self.tries, self.reference) = (false, 0, None);
    }

    /// The `capture.toml` of the finished session; none before.
    #[must_use]
    pub fn description(&self) -> Option<String> {
        let (board, reference) = (self.board.clone()?, self.reference.as_ref()?);
        if self.turn < self.shots.len() {
            return None;
        }
        let tag_ids = reference.tags.iter().map(|t| t.id).collect();
        let capture = Capture {
            panel: PanelTags { tag_family: "tag36h11".to_owned(), tag_size_mm: self.tag_mm, tag_ids },
            board,
            frames: self.shots.iter().map(Shot::frame).collect(),
        };
        toml::to_string(&capture).ok()
    }
}

/// The same screen to a thousandth of a millimetre.
fn same_board(a: &Board, b: &Board) -> bool {
    let near = |a: f64, b: f64| (a - b).abs() < 1e-3;
    near(a.width_mm, b.width_mm) && near(a.height_mm, b.height_mm) && a.tags.len() == b.tags.len()
}
