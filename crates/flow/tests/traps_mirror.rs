//! Traps of the mirror and what stands before it: things on the paint, a nudged tripod, a second mirror, a lens out of
//! focus, lines too fine. What can be read is held to the contract for screens; what cannot is refused by name.

mod common;

use common::{assert_contract, door, read_recipe, scored, within_contract};
use dentwright_flow::{FrameCheck, ReadError, Reading};
use dentwright_scene::recipe::{Back, Nudged, Stuck};
use dentwright_scene::score::{Lay, compare};
use dentwright_scene::{Recipe, recipes};

fn refused(recipe: &Recipe) -> ReadError {
    match read_recipe(recipe) {
        Err(error) => {
            println!("refused: {error}. {}", error.next());
            assert!(!error.next().is_empty());
            error
        }
        Ok(reading) => panic!("read, with {} spots", reading.spots.len()),
    }
}

fn has_note(reading: &Reading, code: &str) -> bool {
    reading.notes.iter().any(|n| n.code == code)
}

#[test]
fn trim_badges_stickers_and_dirt_are_left_out() {
    let mut recipe = door();
    let stuck = |at, size, grey| Stuck { at, size, grey };
    recipe.traps.stuck = vec![
        stuck([-60.0, 60.0], [60.0, 12.0], 0.5),
        stuck([95.0, -30.0], [30.0, 30.0], 0.9),
        stuck([5.0, -60.0], [3.0, 60.0], 0.05),
    ];
    recipe.traps.dirt = 40;
    let capture = recipe.render().unwrap();
    let (_, maps, score) = scored(&capture);
    let cells = compare(&maps, &capture.truth, &Lay::by_tags(&maps, &capture.truth).unwrap());
    let within = |x: f64, y: f64, s: &Stuck, rim: f64| {
        (x - s.at[0]).abs() < s.size[0] / 2.0 + rim && (y - s.at[1]).abs() < s.size[1] / 2.0 + rim
    };
    for s in &recipe.traps.stuck {
        assert!(!cells.iter().any(|c| within(c.x, c.y, s, 0.0)), "read on {s:?}");
        // Two-sided: what is left out goes little beyond the thing.
        assert!(cells.iter().any(|c| within(c.x, c.y, s, 4.0)), "nothing read within 4 mm of {s:?}");
    }
    assert_contract("things on the paint", &score, 0.88);
}

#[test]
fn a_nudged_tripod_and_a_changed_light_do_no_harm() {
    let reading = within_contract("nudged", &recipes::named("nudged").unwrap().shrunk(2));
    assert!(reading.frames.iter().any(|f| f.note.contains("undone")));
    assert_eq!(reading.frames.iter().filter(|f| !f.ok).count(), 1);
}

/// Knocked by more than a square of the tags' pattern: up to 30 px are undone, and no more are tried.
#[test]
fn a_hard_knock_is_undone_and_too_hard_a_one_left_out() {
    let mut recipe = door();
    let knocks = [[9.0, 2.0], [-18.0, 7.0], [25.0, -6.0], [38.0, 5.0]];
    let files = ["screen_u36_0.jpg", "screen_v20_0.jpg", "screen_v5_0.jpg", "screen_v5_1.jpg"];
    recipe.traps.nudged = files.iter().zip(knocks).map(|(file, by)| Nudged { file: (*file).into(), by }).collect();
    let reading = within_contract("hard knocks", &recipe);
    let told: Vec<_> = reading.frames.iter().filter(|f| !f.ok || !f.note.is_empty()).collect();
    assert_eq!(told.len(), files.len(), "{told:?}");
    for (file, by) in files.iter().zip(knocks) {
        let FrameCheck { ok, note, .. } = told.iter().find(|f| f.file == *file).unwrap();
        let size = by[0].hypot(by[1]);
        assert_eq!(*ok, size < 30.0, "{told:?}");
        let px: f64 = note.split("moved by ").nth(1).and_then(|t| t.split(" px").next()).unwrap().parse().unwrap();
        assert!((px - size).abs() < 0.5, "{note} for {size}");
    }
}

/// A sound clear sheet over black: nothing on it may be found.
fn sheet(share: f64, bend: f64) -> Recipe {
    let mut recipe = door();
    (recipe.scene.paint, recipe.scene.dents) = ([0.0; 3], Vec::new());
    recipe.traps.back = Some(Back { thickness_mm: 5.0, share, bend: [bend; 2] });
    recipe
}

#[test]
fn front_and_back_of_a_clear_sheet_are_refused() {
    for (share, bend) in [(0.8, 4e-4), (0.8, 1e-4), (0.4, 4e-4)] {
        let error = refused(&sheet(share, bend));
        assert!(matches!(&error, ReadError::TwoReflections { file } if file.starts_with("screen_u36")), "{error}");
    }
    let mut slid = sheet(0.8, 4e-4);
    (slid.photos.slides, slid.scene.board.pitch) = (7, 20.0);
    let error = refused(&slid);
    assert!(matches!(&error, ReadError::TwoReflections { file } if file.starts_with("slide_")), "{error}");
}

#[test]
fn a_faint_second_mirror_is_said_and_one_mirror_is_not() {
    let faint = read_recipe(&sheet(0.15, 4e-4)).unwrap();
    // It does harm: the sheet is sound, and yet has spots.
    assert!(has_note(&faint, "second_mirror") && faint.spots.iter().any(|s| s.height_mm.abs() > 0.005));
    let one = read_recipe(&sheet(0.0, 0.0)).unwrap();
    assert!(!has_note(&one, "second_mirror") && one.spots.iter().all(|s| s.height_mm.abs() < 0.005));
}

#[test]
fn front_and_back_that_run_parallel_show_one_surface() {
    let reading = within_contract("parallel sheet", &sheet(0.8, 0.0));
    assert!(reading.spots.iter().all(|s| s.height_mm.abs() < 0.005));
}

#[test]
fn a_phone_focused_on_the_board_still_reads() {
    let mut recipe = door();
    recipe.scene.cam.focus = Some(1300.0);
    within_contract("focused on the board", &recipe);
}

#[test]
fn a_wide_lens_out_of_focus_is_refused_with_what_is_blurred() {
    // Focused on the panel through 24 mm of lens the board blurs over a whole period.
    let mut recipe = door();
    (recipe.scene.cam.aperture, recipe.photos.rays) = (12.0, 5);
    let error = refused(&recipe);
    assert!(matches!(error, ReadError::TooSoft { percent, .. } if (1.0..40.0).contains(&percent)), "{error}");
    // Focused on the board through 8 mm the tags blur, and the photo that lacks them is named.
    (recipe.scene.cam.aperture, recipe.scene.cam.focus, recipe.photos.rays) = (4.0, Some(1300.0), 3);
    let error = refused(&recipe);
    assert!(matches!(&error, ReadError::Locate { file, .. } if file == "panel.jpg"), "{error}");
}

#[test]
fn lines_as_fine_as_the_photos_pixels_are_refused_and_coarser_ones_read() {
    let with = |u: u32, v: u32| {
        let mut recipe = door();
        (recipe.photos.u, recipe.photos.v, recipe.photos.rays) = (vec![1, 6, 36, u], vec![1, 5, 20, v], 3);
        recipe
    };
    for (u, v) in [(280, 158), (180, 100)] {
        let error = refused(&with(u, v));
        let ReadError::TooFine { file, px } = &error else { panic!("{error}") };
        assert!(file.starts_with(&format!("screen_u{u}")) && (1.5..3.5).contains(px), "{error}");
    }
    within_contract("four pixels a period", &with(130, 73));
}

#[test]
fn a_screens_pixels_beat_with_the_sensors_and_make_no_spots() {
    // The lens's opening closed and its focus on the board: every screen pixel of 0.52 mm is sharp, half a sensor pixel.
    let mut recipe = door();
    (recipe.scene.cam.aperture, recipe.photos.rays, recipe.photos.screen_pixel_mm) = (0.0, 3, 0.52);
    within_contract("screen pixels", &recipe);
}
