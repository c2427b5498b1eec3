//! Sheets as a printer would get them: set, rendered to pixels by Poppler's pdftoppm, measured, and searched by
//! our own tag detector. Skipped with a word where pdftoppm is not installed.

use dentwright_optics::{Photo, TagView, decode, every_tag};
use dentwright_report::{BOARD_IDS, Language, LineBoard, PANEL_IDS, Paper, PrintError, Sheet, print_sheet};
use dentwright_scene::sheet::CameraSheet;
use std::process::Command;

const DPI: f64 = 300.0;

/// Pixels of so many millimetres; an inch is 25.4 mm by definition.
fn px(mm: f64) -> f64 {
    mm / 25.4 * DPI
}

/// The pages of a sheet; none where pdftoppm is missing.
fn rendered(sheet: Sheet, paper: Paper) -> Option<Vec<Photo>> {
    let made = print_sheet(sheet, Language::En, paper).unwrap();
    let folder = tempfile::tempdir().unwrap();
    let (pdf, out) = (folder.path().join("sheet.pdf"), folder.path().join("page"));
    std::fs::write(&pdf, &made.pdf).unwrap();
    let run = Command::new("pdftoppm").args(["-png", "-gray", "-r", "300"]).arg(&pdf).arg(&out).status();
    let Ok(status) = run else {
        println!("skipped: pdftoppm is not installed");
        return None;
    };
    assert!(status.success());
    let mut names: Vec<_> = std::fs::read_dir(folder.path()).unwrap().flatten().map(|e| e.path()).collect();
    names.retain(|path| path.extension().is_some_and(|e| e == "png"));
    names.sort();
    let pages: Vec<Photo> = names.iter().map(|p| decode(&std::fs::read(p).unwrap()).unwrap()).collect();
    assert_eq!(pages.len(), made.pages);
    Some(pages)
}

/// Mean length of a tag's sides along the page's two directions, px.
fn sides(tag: &TagView) -> (f64, f64) {
    let c = &tag.corners;
    let (a, b) =
        (((c[0] - c[1]).norm() + (c[2] - c[3]).norm()) / 2.0, ((c[1] - c[2]).norm() + (c[3] - c[0]).norm()) / 2.0);
    if (c[0] - c[1]).x.abs() > (c[0] - c[1]).y.abs() { (a, b) } else { (b, a) }
}

/// Each side to the pixel that rendering rounds to, their mean far closer: a printer's "fit to page" is 3 to 6 %.
fn assert_true_size(tags: &[TagView], size_mm: f64) {
    let both: Vec<(f64, f64)> = tags.iter().map(sides).collect();
    for (tag, (across, down)) in tags.iter().zip(&both) {
        let off = (across - px(size_mm)).abs().max((down - px(size_mm)).abs());
        assert!(off < 1.5, "tag {} is {across:.2} × {down:.2} px for {:.2}", tag.id, px(size_mm));
    }
    let mean = |of: fn(&(f64, f64)) -> f64| both.iter().map(of).sum::<f64>() / both.len() as f64 / px(size_mm) - 1.0;
    let (across, down) = (mean(|s| s.0), mean(|s| s.1));
    assert!(across.abs().max(down.abs()) < 0.0015, "{across:.5} across, {down:.5} down");
}

fn ids(tags: &[TagView]) -> Vec<usize> {
    let mut ids: Vec<usize> = tags.iter().map(|tag| tag.id).collect();
    ids.sort_unstable();
    ids
}

/// Longest run of dark pixels in a line of the page.
fn longest_dark(line: impl Iterator<Item = u8>) -> usize {
    let mut runs = (0, 0);
    for grey in line {
        runs = if grey < 128 { (runs.0 + 1, runs.1.max(runs.0 + 1)) } else { (0, runs.1) };
    }
    runs.1
}

/// The two rulers, found as the longest dark lines in the margins.
fn assert_rulers(page: &Photo) {
    let row = |y: usize| longest_dark(page.grey[y * page.width..][..page.width].iter().copied());
    let foot = page.height - px(14.0) as usize..page.height - px(8.0) as usize;
    let across = foot.map(row).max().unwrap() as f64;
    let column = |x: usize| longest_dark((0..page.height).map(|y| page.grey[y * page.width + x]));
    let up = (px(4.0) as usize..px(8.0) as usize).map(column).max().unwrap() as f64;
    // The end ticks add half their thickness to each end: 0.15 mm, 1.8 px.
    assert!((across - px(150.0) - 1.8).abs() < 2.0, "{across} px for {}", px(150.0));
    assert!((up - px(100.0) - 1.8).abs() < 2.0, "{up} px for {}", px(100.0));
}

#[test]
fn stickers_have_their_size_and_are_found_again() {
    for (paper, size_mm) in [(Paper::A4, 22.0), (Paper::Letter, 22.0), (Paper::A4, 41.5)] {
        let Some(pages) = rendered(Sheet::Stickers { size_mm }, paper) else { return };
        let found: Vec<TagView> = pages.iter().flat_map(every_tag).collect();
        assert_eq!(ids(&found), PANEL_IDS.collect::<Vec<_>>());
        assert_true_size(&found, size_mm);
        pages.iter().for_each(assert_rulers);
    }
}

#[test]
fn corner_tags_lie_as_on_the_board() {
    for paper in [Paper::A4, Paper::Letter] {
        let Some(pages) = rendered(Sheet::Corners { size_mm: 60.0 }, paper) else { return };
        let found = every_tag(&pages[0]);
        assert_eq!(ids(&found), BOARD_IDS);
        assert_true_size(&found, 60.0);
        let at = |id: usize| found.iter().find(|tag| tag.id == id).unwrap().centre();
        assert!(at(20).x < at(21).x && at(23).x < at(22).x && at(20).y < at(23).y && at(21).y < at(22).y);
        // Upright as the reading expects a board's tags: the first corner is the upper right one.
        for tag in &found {
            let from = tag.corners[0] - tag.centre();
            assert!(from.x > 0.0 && from.y < 0.0, "tag {} stands {from:?}", tag.id);
        }
    }
}

#[test]
fn camera_sheet_is_the_same_on_every_paper() {
    let sheet = CameraSheet::OURS;
    for paper in [Paper::A4, Paper::Letter] {
        let Some(pages) = rendered(Sheet::Camera, paper) else { return };
        let found = every_tag(&pages[0]);
        assert_eq!(ids(&found), (sheet.first..sheet.first + sheet.columns * sheet.rows).collect::<Vec<_>>());
        assert_true_size(&found, sheet.tag_mm);
        let at = |k: usize| found.iter().find(|tag| tag.id == sheet.first + k).unwrap().centre();
        let (right, down) = (at(sheet.columns - 1) - at(0), at(sheet.columns * (sheet.rows - 1)) - at(0));
        assert!((right.norm() / px(sheet.pitch_mm * (sheet.columns - 1) as f64) - 1.0).abs() < 5e-4);
        assert!((down.norm() / px(sheet.pitch_mm * (sheet.rows - 1) as f64) - 1.0).abs() < 5e-4);
        assert_rulers(&pages[0]);
    }
}

/// Where dark begins along a line of pixels, to a part of a pixel.
fn edges(line: &[u8]) -> Vec<f64> {
    let crossing = |k: usize| {
        let (a, b) = (f64::from(line[k]), f64::from(line[k + 1]));
        (a >= 127.5 && b < 127.5).then(|| k as f64 + 0.5 + (a - 127.5) / (a - b))
    };
    (0..line.len() - 1).filter_map(crossing).collect()
}

#[test]
fn a_sheet_of_lines_ends_where_the_next_begins() {
    let board = LineBoard { pitch_mm: 9.5, across: 2, down: 1, tag_mm: 40.0 };
    for paper in [Paper::A4, Paper::Letter] {
        let Some(pages) = rendered(Sheet::Lines(board), paper) else { return };
        assert_eq!(pages.len(), 3, "a plan and two sheets");
        let (wide, high) = board.sheet_mm(paper);
        let page = &pages[1];
        let y = px(16.0 + high / 2.0) as usize;
        let found = edges(&page.grey[y * page.width..][..page.width]);
        // The ruler at the left has a foot of 100 mm only; it does not reach the middle of the page.
        let found: Vec<f64> = found.into_iter().filter(|x| *x > px(13.0)).collect();
        let lines = (wide / board.pitch_mm).round() as usize;
        assert!(found.len() >= lines, "{} of {lines} lines", found.len());
        for (k, at) in found.iter().take(lines).enumerate() {
            let wanted = px(14.0 + k as f64 * board.pitch_mm);
            assert!((at - wanted).abs() < 1.0, "line {k} begins at {at:.2} px, not {wanted:.2}");
        }
        assert!((wide / board.pitch_mm).fract() < 1e-9, "whole pitches: black at the left edge, white at the right");
        pages.iter().for_each(assert_rulers);
    }
}

#[test]
fn a_board_describes_itself() {
    let board = LineBoard::default();
    let text = format!(
        "[panel]\ntag_family = \"tag36h11\"\ntag_size_mm = 22\ntag_ids = [0, 1, 2, 3]\n\n{}\n\
         [[frames]]\nfile = \"s.jpg\"\nrole = \"setup\"\n\n[[frames]]\nfile = \"p.jpg\"\nrole = \"panel\"\n",
        board.description(Paper::A4)
    );
    let capture = dentwright_optics::Capture::parse(&text).unwrap();
    assert_eq!((capture.board.width_mm, capture.board.height_mm), board.board_mm(Paper::A4));
    assert_eq!(capture.board.tags.len(), 4);
    // Flush with the corner: half the board less half of the tag with its white.
    assert!((capture.board.tags[0].x_mm + board.board_mm(Paper::A4).0 / 2.0 - 37.5).abs() < 1e-9);
}

#[test]
fn sizes_that_do_not_fit_are_refused() {
    for size_mm in [0.0, 5.0, 400.0, f64::NAN, f64::INFINITY, -3.0] {
        let refused = print_sheet(Sheet::Stickers { size_mm }, Language::De, Paper::A4);
        assert!(matches!(refused, Err(PrintError::Size { .. })), "{size_mm}");
    }
    let board = LineBoard { pitch_mm: 0.0, ..LineBoard::default() };
    assert!(print_sheet(Sheet::Lines(board), Language::En, Paper::A4).is_err());
}
