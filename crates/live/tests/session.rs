//! A whole session with rendered photos, and with those that a hand or a slow screen spoils.

use dentwright_live::{Again, BoardLayout, ScreenTag, Session, Taken};
use dentwright_optics::{Capture, Photo, decode};
use dentwright_scene::demo;
use std::collections::HashMap;
use std::sync::LazyLock;

/// The rendered door's photos by name, at full size.
static PHOTOS: LazyLock<HashMap<String, Photo>> = LazyLock::new(|| {
    let capture = demo::ALL[0].render().unwrap();
    capture.photos.iter().map(|p| (p.file.clone(), decode(&p.jpeg).unwrap())).collect()
});

fn layout() -> BoardLayout {
    let tag = |id, x_px, y_px| ScreenTag { id, x_px, y_px, size_px: 120.0 };
    BoardLayout {
        width_px: 1416.0,
        height_px: 796.0,
        mm_per_px: 0.5,
        tags: vec![tag(20, 90.0, 90.0), tag(21, 1326.0, 90.0), tag(22, 1326.0, 706.0), tag(23, 90.0, 706.0)],
    }
}

fn photo(name: &str) -> Photo {
    PHOTOS[name].clone()
}

/// A session that has come to a turn with good photos.
fn at_turn(turn: usize) -> Session {
    let mut session = Session::new(22.0);
    session.lay_out(&layout()).unwrap();
    while session.turn() < turn {
        let name = session.shot().unwrap().file.clone();
        session.show(session.turn());
        let taken = session.take(session.turn(), photo(&name)).unwrap();
        assert_eq!(taken, Ok(if session.turn() == session.turns() { Taken::Done } else { Taken::Next }), "{name}");
    }
    session
}

/// What the session says to a photo of this turn.
fn say(session: &mut Session, photo: Photo) -> Result<Taken, Again> {
    session.show(session.turn());
    session.take(session.turn(), photo).unwrap()
}

/// A photo moved right by whole pixels.
fn moved(mut photo: Photo, px: usize) -> Photo {
    let width = photo.width;
    photo.grey.chunks_exact_mut(width).for_each(|row| row.rotate_right(px));
    photo
}

/// A photo blurred along its rows, to both sides alike, as by a shake.
fn shaken(mut photo: Photo) -> Photo {
    const REACH: usize = 4;
    let from = photo.grey.clone();
    let count = from.len();
    for (k, value) in photo.grey.iter_mut().enumerate().take(count - REACH).skip(REACH) {
        let sum: u32 = from[k - REACH..=k + REACH].iter().map(|v| u32::from(*v)).sum();
        *value = (sum / (2 * REACH as u32 + 1)) as u8;
    }
    photo
}

#[test]
fn good_photos_make_a_capture_of_26() {
    let session = at_turn(26);
    let capture = Capture::parse(&session.description().unwrap()).unwrap();
    assert_eq!((capture.frames.len(), capture.panel.tag_ids.len()), (26, 8));
    assert_eq!((capture.board.width_mm, capture.board.tags.len()), (708.0, 4));
    assert_eq!(capture.frames[12].file, "screen_u36_2.jpg");
    assert_eq!((capture.frames[12].periods, capture.frames[12].shift), (Some(36.0), Some(0.5)));
    assert!(at_turn(25).description().is_none(), "an unfinished session describes nothing");
}

#[test]
fn a_photo_counts_only_in_its_turn_and_once_its_picture_is_up() {
    let mut session = at_turn(3);
    let next = session.shot().unwrap().file.clone();
    assert_eq!(session.take(3, photo(&next)), None, "the screen has not said that it shows it");
    session.show(2);
    assert_eq!(session.take(3, photo(&next)), None, "late news of an earlier turn");
    session.show(3);
    assert_eq!(session.take(2, photo(&next)), None, "a late photo");
    assert_eq!(session.take(3, photo(&next)), Some(Ok(Taken::Next)));
}

#[test]
fn spoilt_photos_are_taken_again() {
    let mut session = at_turn(8);
    let name = session.shot().unwrap().file.clone();
    assert!(matches!(say(&mut session, moved(photo(&name), 5)), Err(Again::Moved { px }) if (px - 5.0).abs() < 0.5));
    assert!(matches!(say(&mut session, shaken(photo(&name))), Err(Again::Blurred { percent }) if percent < 80.0));
    let last = photo(&session.shots()[7].file.clone());
    assert_eq!(say(&mut session, last), Err(Again::Same));
    assert_eq!(session.turn(), 8);
    assert_eq!(say(&mut session, photo(&name)), Ok(Taken::Next));
    let small = Photo { width: 4, height: 4, grey: vec![0; 16], focal_35mm: None };
    assert!(matches!(say(&mut session, small), Err(Again::Size { .. })));
    let dark = Photo { grey: vec![0; 1280 * 960], width: 1280, height: 960, focal_35mm: None };
    assert_eq!(say(&mut session, dark), Err(Again::Lost));
}

/// A knock by more than a square of the tags' pattern is still measured, not lost.
#[test]
fn a_hard_knock_is_measured() {
    let session = at_turn(8);
    let name = session.shot().unwrap().file.clone();
    for by in [9, 14, 22, 28] {
        let said = say(&mut session.clone(), moved(photo(&name), by));
        assert!(matches!(said, Err(Again::Moved { px }) if (px - by as f64).abs() < 0.5), "{by}: {said:?}");
    }
}

/// A tripod that was knocked for good: after three tries the run goes on from there, since the reading undoes it.
#[test]
fn a_knock_is_borne_and_then_usual() {
    let mut session = at_turn(8);
    for tries in 0..4 {
        let name = session.shot().unwrap().file.clone();
        let said = say(&mut session, moved(photo(&name), 5));
        assert_eq!(said.is_ok(), tries == 3, "try {tries}: {said:?}");
    }
    let name = session.shot().unwrap().file.clone();
    assert_eq!(say(&mut session, moved(photo(&name), 5)), Ok(Taken::Next), "it stands there now");
    let name = session.shot().unwrap().file.clone();
    for _ in 0..6 {
        let far = say(&mut session, moved(photo(&name), 60));
        assert!(matches!(far, Err(Again::Moved { .. } | Again::Lost)), "so far nothing can be undone: {far:?}");
    }
}

#[test]
fn set_up_and_panel_photo_must_show_their_tags() {
    let mut session = at_turn(0);
    assert!(matches!(say(&mut session, photo("panel.jpg")), Err(Again::BoardTags { found: 0 })));
    let mut session = at_turn(1);
    let mut hidden = photo("panel.jpg");
    let half = hidden.grey.len() / 2;
    hidden.grey[..half].fill(90);
    assert!(matches!(say(&mut session, hidden), Err(Again::SharedTags { found }) if found < 4));
    assert_eq!(say(&mut session, photo("panel.jpg")), Ok(Taken::Next));
}

#[test]
fn another_screen_starts_over_and_again_goes_back() {
    let mut session = at_turn(9);
    session.lay_out(&layout()).unwrap();
    assert_eq!((session.turn(), session.is_shown()), (9, false), "the same screen goes on, once it shows again");
    session.begin_again(false);
    assert_eq!(session.turn(), 1);
    session.lay_out(&BoardLayout { mm_per_px: 0.4, ..layout() }).unwrap();
    assert_eq!(session.turn(), 0);
}
