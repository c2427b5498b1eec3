//! From photos to lows and highs.

use crate::board::{BoardPoints, SlidLines, slid_lines};
use crate::doubt::doubt;
use crate::error::ReadError;
use crate::gather::{Gathered, gather};
use crate::holes::{folds, holes};
use crate::known_lens::{CameraSource, GUESSED_SIGMA, KnownLens, first_camera};
use crate::lines::one_mirror;
use crate::patterns::{fit_for_photos, mirrored_points};
use crate::reading_file::Note;
use crate::settle::{FrameCheck, settle};
use crate::still::{StillPoints, still_points};
use crate::texture::{TextureFacts, texture_of};
use crate::unread::{Unread, explain, keep_largest};
use dentwright_optics::{
    Board, BoardField, BoardKind, BoardTag, BundleSettings, Camera, DEFAULT_GAMMA, Layout, PanelTag, Pixel, Role,
    Scene, TagView, find_planar_tags, find_tags, grid_over, panel_plane, refine, setup_and_board, slopes_on,
    tag_corners,
};
use dentwright_surface::{
    Finish, FinishLimit, Fold, Grid, IntegrateSettings, IntendedSettings, Map, Ridge, SlopeMap, Spot, SpotFinish,
    SpotSettings, contradicted, find_spots, integrate, intended_shape, judge,
};
use rayon::prelude::*;
use std::path::Path;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

/// What a reading may be told.
#[derive(Debug, Clone, Default)]
pub struct ReadSettings {
    /// What counts as done.
    pub finish: FinishLimit,
    /// Takes the still photos of a line board though slid ones are there: the quick look.
    pub still: bool,
    /// Intended shape.
    pub intended: IntendedSettings,
    /// Lows and highs.
    pub spots: SpotSettings,
    /// Lenses of the phone that were calibrated before.
    pub lenses: Vec<KnownLens>,
}

/// A part of the work, in order.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stage {
    /// Photos decoded.
    Photos,
    /// Tags found.
    Tags,
    /// Phases and board points.
    Lines,
    /// Poses refined.
    Poses,
    /// Slopes and height.
    Shape,
    /// Intended shape, lows and highs.
    Spots,
}

impl Stage {
    /// All stages in order.
    pub const ALL: [Stage; 6] = [Self::Photos, Self::Tags, Self::Lines, Self::Poses, Self::Shape, Self::Spots];

    /// A short name.
    pub fn name(self) -> &'static str {
        match self {
            Self::Photos => "photos",
            Self::Tags => "tags",
            Self::Lines => "lines",
            Self::Poses => "poses",
            Self::Shape => "shape",
            Self::Spots => "spots",
        }
    }
}

/// How far the work has come.
#[derive(Debug, Clone, Copy)]
pub struct Progress {
    /// The stage begun.
    pub stage: Stage,
    /// Share of the whole done, 0 to 1.
    pub done: f32,
}

/// A finished reading, in memory.
#[derive(Debug, Clone)]
pub struct Reading {
    /// Deviation from the intended shape, mm.
    pub deviation: Map,
    /// Height in the panel frame, mm.
    pub height: Map,
    /// One-sigma doubt of the deviation, mm.
    pub sigma: Map,
    /// Why a cell was not read, as [`Unread`](crate::Unread) numbers it.
    pub unread: Vec<u8>,
    /// Holes that were too steep to read.
    pub folds: Vec<Fold>,
    /// Lows and highs.
    pub spots: Vec<Spot>,
    /// Done or not, spot by spot.
    pub spot_finish: Vec<SpotFinish>,
    /// Done or not.
    pub finish: Finish,
    /// The paint's texture.
    pub texture: TextureFacts,
    /// Poses, cameras, tags.
    pub scene: Scene,
    /// Response exponent used.
    pub gamma: f64,
    /// Where the panel photo's camera was first known from.
    pub camera_source: CameraSource,
    /// Every photo, and whether it was used.
    pub frames: Vec<FrameCheck>,
    /// Panel photo's file name.
    pub panel_photo: String,
    /// The board's lit width and height, mm.
    pub board_mm: [f64; 2],
    /// Remarks on the photos.
    pub notes: Vec<Note>,
    /// Settings used.
    pub settings: ReadSettings,
}

/// Reads a capture folder.
pub fn read(
    folder: &Path,
    settings: &ReadSettings,
    progress: &dyn Fn(Progress),
    cancel: &AtomicBool,
) -> Result<Reading, ReadError> {
    let begin = |stage: Stage| -> Result<(), ReadError> {
        progress(Progress { stage, done: stage as usize as f32 / Stage::ALL.len() as f32 });
        if cancel.load(Ordering::Relaxed) { Err(ReadError::Cancelled) } else { Ok(()) }
    };
    begin(Stage::Photos)?;
    let mut gathered = gather(folder)?;
    begin(Stage::Tags)?;
    let panel_views = panel_tags(&gathered)?;
    let mut frames = settle(&mut gathered, &panel_views);
    fit_for_photos(&gathered, &frames)?;
    one_mirror(&gathered, &frames)?;
    begin(Stage::Lines)?;
    // The set-up photo is the largest and none of the lines: both are looked at side by side.
    let (seen, lines) = rayon::join(
        || locate(&gathered, panel_views, &settings.lenses),
        || understood(&gathered, settings.still, &mut frames),
    );
    let seen = seen?;
    let (mut board, gamma, notes, lost) = match lines? {
        Lines::Screen(field, gamma, notes) => (BoardPoints::Screen(field), gamma, notes, Vec::new()),
        Lines::Slid(lines) => {
            let (points, notes) = lines.points(&gathered, &seen, &mut frames)?;
            (points, DEFAULT_GAMMA, notes, Vec::new())
        }
        Lines::Still => {
            let StillPoints { points, notes, lost } = still_points(&gathered, &seen, &frames)?;
            (points, DEFAULT_GAMMA, notes, lost)
        }
    };
    begin(Stage::Poses)?;
    let mut scene = solve(&gathered, &seen, &seen.layout, &mut board, None)?;
    begin(Stage::Shape)?;
    let (mut height, mut unread) = shape(&gathered, board.field(), &scene)?;
    begin(Stage::Spots)?;
    let mut intended = intended_shape(&height, &settings.intended);
    for _ in 0..RIDGE_ROUNDS {
        // No smooth panel has a body line: with it known, tags and board stand better, and the line stands there.
        let Some(ridge) = intended.ridge.clone() else { break };
        let before = scene.layout;
        scene = solve(&gathered, &seen, &before, &mut board, Some(ridge))?;
        (height, unread) = shape(&gathered, board.field(), &scene)?;
        intended = intended_shape(&height, &settings.intended);
        if furthest_mm(&before, &scene.layout) < RIDGE_STAYS_MM {
            break;
        }
    }
    let deviation = height.less(&intended.shape);
    let sigma = doubt(&deviation, &intended, !lost.is_empty());
    explain(&gathered, &frames, &scene, &height, &lost, &mut unread);
    let judged = || {
        let folds = folds(&deviation, &sigma, &unread);
        let spots = find_spots(&deviation, &sigma, &folds, &settings.spots);
        let holes = holes(&unread, &height.grid, settings.finish.scale_mm);
        let (finish, spot_finish) = judge(&deviation, &sigma, &spots, &holes, &settings.finish);
        (folds, spots, finish, spot_finish)
    };
    let ((folds, spots, finish, spot_finish), texture) =
        rayon::join(judged, || texture_of(&deviation, &intended.sound, &unread));
    Ok(Reading {
        height,
        deviation,
        sigma,
        unread,
        folds,
        spots,
        spot_finish,
        finish,
        texture,
        scene,
        gamma,
        camera_source: seen.camera_source,
        board_mm: [gathered.capture.board.width_mm, gathered.capture.board.height_mm],
        panel_photo: gathered.first(Role::Panel).map(|(f, _)| f.file.clone()).unwrap_or_default(),
        frames,
        notes,
        settings: settings.clone(),
    })
}

pub(crate) struct Seen {
    pub cameras: [Camera; 2],
    focal_sigma: [f64; 2],
    camera_source: CameraSource,
    views: [Vec<TagView>; 2],
    pub layout: Layout,
}

/// What the pattern or slide photos show by themselves.
enum Lines {
    /// Board points, the response exponent, and remarks.
    Screen(BoardField, f64, Vec<Note>),
    /// Steps and phases.
    Slid(Box<SlidLines>),
    /// Nothing yet: one photo needs to know how everything stands.
    Still,
}

fn understood(g: &Gathered, still: bool, frames: &mut [FrameCheck]) -> Result<Lines, ReadError> {
    match g.capture.board.kind {
        BoardKind::Screen => mirrored_points(g, frames).map(|(field, gamma, notes)| Lines::Screen(field, gamma, notes)),
        BoardKind::Lines if still || g.first(Role::Slide).is_none() => Ok(Lines::Still),
        BoardKind::Lines => slid_lines(g, frames).map(|lines| Lines::Slid(Box::new(lines))),
    }
}

fn panel_tags(g: &Gathered) -> Result<Vec<TagView>, ReadError> {
    let (_, panel) = g.first(Role::Panel).ok_or(ReadError::NotScreen)?;
    let ids = &g.capture.panel.tag_ids;
    Ok(find_tags(panel, ids).into_iter().filter(|v| ids.contains(&v.id)).collect())
}

fn locate(g: &Gathered, panel_views: Vec<TagView>, lenses: &[KnownLens]) -> Result<Seen, ReadError> {
    let (Some((panel_frame, panel)), Some((setup_frame, setup))) = (g.first(Role::Panel), g.first(Role::Setup)) else {
        return Err(ReadError::NotScreen);
    };
    let setup_views = find_planar_tags(setup, &[&panel_views, &board_tags(&g.capture.board)], TAGS_TO_STAND_ON);
    let [first, first_setup] = [panel, setup].map(|photo| first_camera(photo, lenses));
    let (camera, setup_camera) = (first.camera, first_setup.camera);
    let fail = |file: &str| {
        let file = file.to_owned();
        move |why| ReadError::Locate { file, why }
    };
    let (panel_from_camera, tags) =
        panel_plane(&camera, &panel_views, g.capture.panel.tag_size_mm).map_err(fail(&panel_frame.file))?;
    let (setup_from_panel, panel_from_board) =
        setup_and_board(&setup_camera, &setup_views, &tags, &g.capture).map_err(fail(&setup_frame.file))?;
    Ok(Seen {
        cameras: [camera, setup_camera],
        focal_sigma: [first.sigma, first_setup.sigma],
        camera_source: first.source,
        views: [panel_views, setup_views],
        layout: Layout { panel_from_camera, setup_from_panel, panel_from_board, tags },
    })
}

/// Panel tags that locating needs at least.
const TAGS_TO_STAND_ON: usize = 4;

/// The board's tags as they lie on it, mm.
fn board_tags(board: &Board) -> Vec<TagView> {
    let on_board =
        |t: &BoardTag| TagView { id: t.id, corners: tag_corners(t.size_mm).map(|c| c + Pixel::new(t.x_mm, t.y_mm)) };
    board.tags.iter().map(on_board).collect()
}

/// Rounds of solving with a body line at most, and how far the tags may move on the panel before the line that was
/// found among them has to be found anew, mm: a crease of 25 mm radius is told to a few tenths.
const RIDGE_ROUNDS: usize = 3;
const RIDGE_STAYS_MM: f64 = 0.3;

fn furthest_mm(before: &Layout, after: &Layout) -> f64 {
    let moved = |(a, b): (&PanelTag, &PanelTag)| (a.pose[0] - b.pose[0]).hypot(a.pose[1] - b.pose[1]);
    before.tags.iter().zip(&after.tags).map(moved).fold(0.0, f64::max)
}

/// Mirrored points that enter the pose solve; more do not change it.
const POSE_POINTS: usize = 500;
/// Fewer known pixels than this are no reading.
const LEAST_PIXELS: usize = 2_000;

pub(crate) fn solve(
    g: &Gathered,
    seen: &Seen,
    layout: &Layout,
    board: &mut BoardPoints,
    ridge: Option<Ridge>,
) -> Result<Scene, ReadError> {
    let field = board.field();
    if field.u_mm.iter().filter(|u| u.is_finite()).count() < LEAST_PIXELS {
        return Err(ReadError::NothingMirrored);
    }
    let settings = BundleSettings {
        corner_sigma_px: 0.15,
        board_sigma_mm: 1.0,
        focal_sigma: seen.focal_sigma,
        k1_sigma: 0.01,
        degree: 4,
        ridge: ridge.map(Arc::new),
        offset_sigma_mm: board.offset_sigma_mm(),
    };
    let mirrored = field.lattice(POSE_POINTS);
    let scene = refine(&g.capture, seen.cameras, layout, [&seen.views[0], &seen.views[1]], &mirrored, &settings);
    if scene.corner_rms_px > WORST_CORNERS_PX || scene.board_median_mm > WORST_BOARD_MM {
        let detail = format!(
            "tag corners are {:.1} px off, lines {:.0} mm on the board",
            scene.corner_rms_px, scene.board_median_mm
        );
        return Err(ReadError::Inconsistent { detail });
    }
    for (k, camera) in [&scene.camera, &scene.setup_camera].into_iter().enumerate() {
        let off = camera.focal_px / seen.cameras[k].focal_px - 1.0;
        let told = seen.focal_sigma[k] < GUESSED_SIGMA;
        if told && off.abs() > WORST_FOCAL_SIGMAS * seen.focal_sigma[k] {
            let percent = 100.0 * off.abs();
            let detail = format!("the focal length would have to be {percent:.0} % off what the photo says");
            return Err(ReadError::Inconsistent { detail });
        }
    }
    board.settle(&scene);
    Ok(scene)
}

/// Beyond these the poses are wrong, not merely noisy.
const WORST_CORNERS_PX: f64 = 3.0;
const WORST_BOARD_MM: f64 = 30.0;
/// A focal length this many sigmas off means that a size in the description is wrong.
const WORST_FOCAL_SIGMAS: f64 = 4.0;

/// Height, and why cells were not read. Geometry and shape are iterated: the first
/// pass stands on the smooth panel and a coarser grid, the next on the height it gave.
fn shape(g: &Gathered, field: &BoardField, scene: &Scene) -> Result<(Map, Vec<u8>), ReadError> {
    let grid = grid_over(field, scene).ok_or(ReadError::NothingMirrored)?;
    let slopes = |grid: Grid, above: Option<&Map>| slopes_on(grid, field, scene, above);
    let climb = |slopes: &mut SlopeMap, start: Option<&Map>, tolerance: f64| {
        let unread = keep_largest(slopes, scene, g.capture.panel.tag_size_mm);
        let height = integrate(slopes, start, &IntegrateSettings { tolerance, ..Default::default() });
        (centred(height), unread)
    };
    let first = climb(&mut slopes(grid.coarser(), None), None, 1e-4).0.resampled(grid);
    let mut fine = slopes(grid, Some(&first));
    let (mut above, mut unread) = climb(&mut fine, Some(&first), 1e-6);
    let mut torn = vec![false; grid.len()];
    for _ in 0..ROUNDS {
        let off = contradicted(&fine, &above);
        if !off.contains(&true) {
            break;
        }
        for i in (0..off.len()).filter(|&i| off[i]) {
            (torn[i], fine.sigma[i]) = (true, f32::NAN);
        }
        (above, unread) = climb(&mut fine, Some(&above), 1e-6);
    }
    for (why, _) in unread.iter_mut().zip(&torn).filter(|(why, torn)| **torn && **why == Unread::NotMirrored as u8) {
        *why = Unread::Folded as u8;
    }
    Ok((on_panel(&above, scene), unread))
}

/// Times what contradicts itself is taken out: the worst hides the less bad.
const ROUNDS: usize = 4;

/// Height with its median at zero.
fn centred(mut height: Map) -> Map {
    let mut all: Vec<f32> = height.values.iter().copied().filter(|v| v.is_finite()).collect();
    if !all.is_empty() {
        let middle = all.len() / 2;
        let median = *all.select_nth_unstable_by(middle, f32::total_cmp).1;
        height.values.iter_mut().for_each(|v| *v -= median);
    }
    height
}

fn on_panel(above: &Map, scene: &Scene) -> Map {
    let grid = above.grid;
    let value = |i: usize| {
        let (x, y) = grid.position(i);
        (f64::from(above.values[i]) + scene.panel.at(x, y).0) as f32
    };
    Map { grid, values: (0..grid.len()).into_par_iter().with_min_len(4096).map(value).collect() }
}
