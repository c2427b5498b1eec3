//! Everything refined at once: tags in both photos, mirrored board points, a smooth panel.
//!
//! Unknown: set-up camera and board poses, both focal lengths and distortions (with priors), one corner
//! inset per photo and kind of tag, where the tags lie on the panel, and the panel itself as a polynomial.
//! The reading camera stays put within a round, which fixes the frame; after each the frame is laid through the tags
//! anew ([`level`](crate::level)). Damage does not obey the polynomial: mirrored points are down-weighted by Geman and McClure's function with a scale that
//! shrinks (graduated non-convexity, Blake and Zisserman 1987).

use crate::capture::Capture;
use crate::level::level;
use crate::locate::{Layout, PanelTag, tag_corners};
use crate::mirror::{Mirror, Slope};
use crate::pixel::{Camera, Pixel, isometry, six_numbers};
use crate::smooth_panel::SmoothPanel;
use crate::tags::TagView;
use dentwright_surface::Ridge;
use nalgebra::{DMatrix, DVector, Isometry3, Point3, Rotation2, Vector2};
use rayon::prelude::*;
use std::sync::Arc;

/// A pixel and the board point it mirrors.
#[derive(Debug, Clone, Copy)]
pub struct Mirrored {
    /// In the panel photo.
    pub pixel: Pixel,
    /// Board coordinates, mm.
    pub board_mm: Vector2<f64>,
}

/// What the solve may assume.
#[derive(Debug, Clone)]
pub struct BundleSettings {
    /// One-sigma of a tag corner, px, after the inset.
    pub corner_sigma_px: f64,
    /// One-sigma of a mirrored point on sound metal, mm on the board: orange peel, about 1 mrad.
    pub board_sigma_mm: f64,
    /// Relative one-sigma of the focal lengths, reading and set-up.
    pub focal_sigma: [f64; 2],
    /// One-sigma of the radial distortion.
    pub k1_sigma: f64,
    /// Degree of the panel polynomial.
    pub degree: usize,
    /// Body line on top of the polynomial, once it is known.
    pub ridge: Option<Arc<Ridge>>,
    /// One-sigma of a common offset of all mirrored points on the board, mm: next to nothing where their
    /// board points are absolute, wide where lines were only counted from one another.
    pub offset_sigma_mm: f64,
}

/// The refined scene.
#[derive(Debug, Clone)]
pub struct Scene {
    /// Reading camera.
    pub camera: Camera,
    /// Set-up camera.
    pub setup_camera: Camera,
    /// Where everything stands.
    pub layout: Layout,
    /// The panel without its damage.
    pub panel: SmoothPanel,
    /// Root mean square of the tag corners, px.
    pub corner_rms_px: f64,
    /// Common offset of the true board points from those given, mm.
    pub offset_mm: Vector2<f64>,
    /// Median distance of mirrored points from the smooth panel's prediction, mm on the board.
    pub board_median_mm: f64,
}

/// Numbers of the set-up camera's and the board's pose; the board's come second.
pub(crate) const POSES: usize = 12;
const CAMERAS: usize = 4;
const INSETS: usize = 3;
const OFFSETS: usize = 2;
/// First of the two numbers of the common offset.
pub(crate) const OFFSET: usize = POSES + CAMERAS + INSETS;
pub(crate) const FIXED: usize = OFFSET + OFFSETS;

pub(crate) struct Problem<'a> {
    capture: &'a Capture,
    cameras: [Camera; 2],
    pub(crate) panel_from_camera: Isometry3<f64>,
    pub(crate) ids: Vec<usize>,
    panel_views: Vec<&'a TagView>,
    setup_views: Vec<&'a TagView>,
    mirrored: &'a [Mirrored],
    pub(crate) settings: &'a BundleSettings,
    pub(crate) scale_mm: f64,
}

/// The parameters as what they stand for.
pub(crate) struct Unpacked {
    pub(crate) setup_from_panel: Isometry3<f64>,
    pub(crate) panel_from_board: Isometry3<f64>,
    pub(crate) cameras: [Camera; 2],
    insets: [f64; 3],
    pub(crate) offset: Vector2<f64>,
    pub(crate) panel: SmoothPanel,
}

impl Problem<'_> {
    pub(crate) fn unpack(&self, p: &DVector<f64>) -> Unpacked {
        let s = p.as_slice();
        let camera = |k: usize| {
            let mut c = self.cameras[k];
            c.focal_px *= s[POSES + k].exp();
            c.k1 = s[POSES + 2 + k];
            c
        };
        let at = FIXED + 3 * self.ids.len();
        Unpacked {
            setup_from_panel: isometry(&s[0..6]),
            panel_from_board: isometry(&s[6..12]),
            cameras: [camera(0), camera(1)],
            insets: [s[16], s[17], s[18]],
            offset: Vector2::new(s[OFFSET], s[OFFSET + 1]),
            panel: SmoothPanel {
                scale_mm: self.scale_mm,
                degree: self.settings.degree,
                c: s[at..].to_vec(),
                ridge: self.settings.ridge.clone(),
            },
        }
    }

    /// Corners of tag `k` on the panel, panel frame: laid on the tangent plane's projection.
    fn tag_points(&self, p: &DVector<f64>, u: &Unpacked, k: usize) -> [Point3<f64>; 4] {
        let t = &p.as_slice()[FIXED + 3 * k..FIXED + 3 * k + 3];
        let [ex, ey] = u.panel.tangents(t[0], t[1]);
        let turn = Rotation2::new(t[2]);
        tag_corners(self.capture.panel.tag_size_mm).map(|c| {
            let c = turn * c;
            let q = ex * c.x + ey * c.y;
            let (x, y) = (t[0] + q.x, t[1] + q.y);
            Point3::new(x, y, u.panel.at(x, y).0)
        })
    }

    /// Residuals of corners and priors, in units of sigma.
    fn anchors(&self, p: &DVector<f64>) -> Vec<f64> {
        let u = self.unpack(p);
        let mut r = Vec::new();
        let camera_from_panel = self.panel_from_camera.inverse();
        let sigma = self.settings.corner_sigma_px;
        let push = |r: &mut Vec<f64>, camera: &Camera, points: [Point3<f64>; 4], view: &TagView, inset: f64| {
            let seen = points.map(|q| camera.project(&q).unwrap_or(Pixel::new(-1e4, -1e4)));
            for (predicted, found) in inset_corners(seen, inset).into_iter().zip(view.corners) {
                r.extend([(predicted.x - found.x) / sigma, (predicted.y - found.y) / sigma]);
            }
        };
        for (k, id) in self.ids.iter().enumerate() {
            let points = self.tag_points(p, &u, k);
            if let Some(view) = self.panel_views.iter().find(|v| v.id == *id) {
                push(&mut r, &u.cameras[0], points.map(|q| camera_from_panel * q), view, u.insets[0]);
            }
            if let Some(view) = self.setup_views.iter().find(|v| v.id == *id) {
                push(&mut r, &u.cameras[1], points.map(|q| u.setup_from_panel * q), view, u.insets[1]);
            }
        }
        for tag in &self.capture.board.tags {
            if let Some(view) = self.setup_views.iter().find(|v| v.id == tag.id) {
                let points = tag_corners(tag.size_mm).map(|c| {
                    let on_board = Point3::new(tag.x_mm + c.x, tag.y_mm + c.y, 0.0);
                    u.setup_from_panel * (u.panel_from_board * on_board)
                });
                push(&mut r, &u.cameras[1], points, view, u.insets[2]);
            }
        }
        let s = p.as_slice();
        r.push(s[POSES] / self.settings.focal_sigma[0]);
        r.push(s[POSES + 1] / self.settings.focal_sigma[1]);
        r.push(s[POSES + 2] / self.settings.k1_sigma);
        r.push(s[POSES + 3] / self.settings.k1_sigma);
        r.extend(u.insets.map(|i| (i - INSET_PRIOR_PX) / INSET_SIGMA_PX));
        r.extend(u.offset.iter().map(|o| o / self.settings.offset_sigma_mm));
        r
    }

    /// Distances on the board between where each mirrored point should be and is, in units of sigma.
    fn misses(&self, p: &DVector<f64>) -> Vec<Vector2<f64>> {
        let u = self.unpack(p);
        let mirror = Mirror::new(self, &u);
        self.mirrored.par_iter().with_min_len(64).map(|seen| mirror.miss(seen)).collect()
    }
}

/// Residuals that are priors: focal lengths and distortions, insets, offset.
const PRIORS: usize = CAMERAS + INSETS + OFFSETS;
const INSET_PRIOR_PX: f64 = 0.3;
const INSET_SIGMA_PX: f64 = 0.5;

/// Moves each corner inward along both of its sides.
fn inset_corners(c: [Pixel; 4], inset: f64) -> [Pixel; 4] {
    std::array::from_fn(|i| {
        let toward = |k: usize| (c[(i + k) % 4] - c[i]).try_normalize(1e-9).unwrap_or_default();
        let (next, last) = (toward(1), toward(3));
        let sine = next.perp(&last).abs().max(0.2);
        c[i] + (next + last) * (inset / sine)
    })
}

/// Refines the scene.
pub fn refine(
    capture: &Capture,
    cameras: [Camera; 2],
    layout: &Layout,
    views: [&[TagView]; 2],
    mirrored: &[Mirrored],
    settings: &BundleSettings,
) -> Scene {
    let ids: Vec<usize> = layout.tags.iter().map(|t| t.id).collect();
    let mut problem = Problem {
        capture,
        cameras,
        panel_from_camera: layout.panel_from_camera,
        panel_views: views[0].iter().collect(),
        setup_views: views[1].iter().collect(),
        mirrored,
        settings,
        scale_mm: layout.tags.iter().flat_map(|t| [t.pose[0].abs(), t.pose[1].abs()]).fold(50.0, f64::max),
        ids,
    };
    let mut p = DVector::zeros(FIXED + 3 * layout.tags.len() + SmoothPanel::terms(settings.degree));
    p.as_mut_slice()[0..6].copy_from_slice(&six_numbers(&layout.setup_from_panel));
    p.as_mut_slice()[6..12].copy_from_slice(&six_numbers(&layout.panel_from_board));
    p[POSES + 2] = cameras[0].k1;
    p[POSES + 3] = cameras[1].k1;
    p.as_mut_slice()[16..19].fill(INSET_PRIOR_PX);
    for (k, tag) in layout.tags.iter().enumerate() {
        p.as_mut_slice()[FIXED + 3 * k..FIXED + 3 * k + 3].copy_from_slice(&tag.pose);
    }
    for (k, scale_mm) in SCALES_MM.into_iter().enumerate() {
        p = descend(&problem, p, scale_mm);
        if k + 1 < SCALES_MM.len() {
            level(&mut problem, &mut p);
        }
    }
    finish(&problem, &p)
}

/// Robust scales in turn, mm on the board: from a whole panel's curvature not yet known to peel.
const SCALES_MM: [f64; 7] = [400.0, 100.0, 40.0, 20.0, 10.0, 6.0, 4.0];
const STEPS_PER_SCALE: usize = 8;
/// Relative gain below which a scale has given what it can.
const LEAST_GAIN: f64 = 1e-5;

/// Geman and McClure's weight of a miss.
fn weight(miss: &Vector2<f64>, scale: f64) -> f64 {
    let q = 1.0 + miss.norm_squared() / (scale * scale);
    1.0 / (q * q)
}

fn cost(anchors: &[f64], misses: &[Vector2<f64>], scale: f64) -> f64 {
    let robust = |m: &Vector2<f64>| m.norm_squared() / (1.0 + m.norm_squared() / (scale * scale));
    anchors.iter().map(|v| v * v).sum::<f64>() + misses.iter().map(robust).sum::<f64>()
}

/// A few Levenberg-Marquardt steps at one robust scale.
fn descend(problem: &Problem, mut p: DVector<f64>, scale_mm: f64) -> DVector<f64> {
    let scale = scale_mm / problem.settings.board_sigma_mm;
    let mut damping = 1e-6;
    let mut now = cost(&problem.anchors(&p), &problem.misses(&p), scale);
    for _ in 0..STEPS_PER_SCALE {
        let (normal, gradient) = normal_equations(problem, &p, scale);
        let mut improved = false;
        for _ in 0..6 {
            let mut damped = normal.clone();
            for i in 0..p.len() {
                damped[(i, i)] *= 1.0 + damping;
                damped[(i, i)] += 1e-12;
            }
            let Some(factor) = damped.cholesky() else {
                damping *= 100.0;
                continue;
            };
            let trial = &p - factor.solve(&gradient);
            let then = cost(&problem.anchors(&trial), &problem.misses(&trial), scale);
            if then < now {
                improved = (now - then) / now > LEAST_GAIN;
                (p, now) = (trial, then);
                damping = (damping * 0.1).max(1e-12);
                break;
            }
            damping *= 30.0;
        }
        if !improved {
            break;
        }
    }
    p
}

/// `JᵀJ` and `Jᵀr`: the anchors by forward differences, the mirrored points by the chain rule.
fn normal_equations(problem: &Problem, p: &DVector<f64>, scale: f64) -> (DMatrix<f64>, DVector<f64>) {
    let anchors = DVector::from_vec(problem.anchors(p));
    let columns: Vec<DVector<f64>> = (0..p.len())
        .into_par_iter()
        .map(|i| {
            let mut q = p.clone();
            q[i] += STEP;
            (DVector::from_vec(problem.anchors(&q)) - &anchors) / STEP
        })
        .collect();
    let jacobian = DMatrix::from_columns(&columns);
    let (mut normal, mut gradient) = (jacobian.tr_mul(&jacobian), jacobian.tr_mul(&anchors));
    let u = problem.unpack(p);
    let mirror = Mirror::new(problem, &u);
    let at = mirror.parameters();
    let rows: Vec<Slope> = problem.mirrored.par_iter().with_min_len(32).map(|seen| mirror.slope(seen)).collect();
    for row in rows {
        let w = weight(&row.miss, scale);
        for (a, da) in at.iter().zip(&row.by) {
            gradient[*a] += w * da.dot(&row.miss);
            for (b, db) in at.iter().zip(&row.by) {
                normal[(*b, *a)] += w * da.dot(db);
            }
        }
    }
    (normal, gradient)
}

/// Forward-difference step: parameters are mm, rad, px or logarithms, all smooth at this size.
pub(crate) const STEP: f64 = 1e-6;

fn finish(problem: &Problem, p: &DVector<f64>) -> Scene {
    let u = problem.unpack(p);
    let r = problem.anchors(p);
    let corners = &r[..r.len() - PRIORS];
    let mean_square = corners.iter().map(|v| v * v).sum::<f64>() / corners.len().max(1) as f64;
    let mut distance: Vec<f64> = problem.misses(p).iter().map(|m| m.norm() * problem.settings.board_sigma_mm).collect();
    distance.sort_by(f64::total_cmp);
    let tags = problem.ids.iter().enumerate().map(|(k, &id)| {
        let t = &p.as_slice()[FIXED + 3 * k..FIXED + 3 * k + 3];
        PanelTag { id, pose: [t[0], t[1], t[2]] }
    });
    Scene {
        camera: u.cameras[0],
        setup_camera: u.cameras[1],
        layout: Layout {
            panel_from_camera: problem.panel_from_camera,
            setup_from_panel: u.setup_from_panel,
            panel_from_board: u.panel_from_board,
            tags: tags.collect(),
        },
        panel: u.panel,
        offset_mm: u.offset,
        corner_rms_px: mean_square.sqrt() * problem.settings.corner_sigma_px,
        board_median_mm: distance.get(distance.len() / 2).copied().unwrap_or(0.0),
    }
}
