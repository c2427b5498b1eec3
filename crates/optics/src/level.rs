//! The panel frame laid through the tags anew, once it is known better how they stand.
//!
//! The first estimate tells the tilt of the tags' plane from the size of each tag in one photo, a few degrees off.
//! Two readings whose frames are tilted differently see the same tags at distances that differ by half a percent;
//! so the frame follows the tags (`docs/frames.md`). Poses and tags are carried exactly, the panel's polynomial is
//! fitted anew; the descent that follows takes up what that leaves. A panel with a ridge is only shifted along z: the
//! ridge was found in a frame that stood level.

use crate::bundle::{FIXED, Problem};
use crate::locate::plane_through;
use crate::pixel::six_numbers;
use crate::smooth_panel::SmoothPanel;
use nalgebra::{DMatrix, DVector, Isometry3, Point3, Vector3};

/// Points each way, and how far they reach beyond the tags, for the fit of the polynomial.
const POINTS: i32 = 6;
const REACH: f64 = 1.2;
/// Tags nearer to one line than this were refused before; nothing is done then.
const LEAST_MM: f64 = 1.0;

/// Carries everything into the frame through the tags; leaves it as it is where they tell no plane.
pub(crate) fn level(problem: &mut Problem, p: &mut DVector<f64>) {
    let u = problem.unpack(p);
    let on_panel = |x: f64, y: f64| Point3::new(x, y, u.panel.at(x, y).0);
    let poses: Vec<[f64; 3]> = (0..problem.ids.len()).map(|k| std::array::from_fn(|i| p[FIXED + 3 * k + i])).collect();
    let (new_from_old, panel) = if u.panel.ridge.is_some() {
        let mean = poses.iter().map(|t| u.panel.at(t[0], t[1]).0).sum::<f64>() / poses.len() as f64;
        let mut panel = u.panel.clone();
        panel.c[0] -= mean;
        (Isometry3::translation(0.0, 0.0, -mean), panel)
    } else {
        let camera_from_panel = problem.panel_from_camera.inverse();
        let centre = |t: &[f64; 3]| (camera_from_panel * on_panel(t[0], t[1])).coords;
        let centres: Vec<Vector3<f64>> = poses.iter().map(centre).collect();
        let Some(panel_from_camera) = plane_through(&centres, LEAST_MM) else { return };
        let new_from_old = panel_from_camera * camera_from_panel;
        let Some(panel) = fitted(&u.panel, &sampled(&u.panel, &new_from_old)) else { return };
        (new_from_old, panel)
    };

    problem.panel_from_camera = new_from_old * problem.panel_from_camera;
    let s = p.as_mut_slice();
    s[0..6].copy_from_slice(&six_numbers(&(u.setup_from_panel * new_from_old.inverse())));
    s[6..12].copy_from_slice(&six_numbers(&(new_from_old * u.panel_from_board)));
    for (k, t) in poses.iter().enumerate() {
        let centre = new_from_old * on_panel(t[0], t[1]);
        let [ex, ey] = u.panel.tangents(t[0], t[1]);
        let along = new_from_old * (ex * t[2].cos() + ey * t[2].sin());
        let [ex, ey] = panel.tangents(centre.x, centre.y);
        s[FIXED + 3 * k..FIXED + 3 * k + 3].copy_from_slice(&[
            centre.x,
            centre.y,
            along.dot(&ey).atan2(along.dot(&ex)),
        ]);
    }
    s[FIXED + 3 * poses.len()..].copy_from_slice(&panel.c);
}

/// Points of a panel over and around its tags, carried into another frame.
fn sampled(panel: &SmoothPanel, new_from_old: &Isometry3<f64>) -> Vec<Point3<f64>> {
    let at = |i: i32| REACH * panel.scale_mm * f64::from(i) / f64::from(POINTS);
    let places = (-POINTS..=POINTS).flat_map(|iy| (-POINTS..=POINTS).map(move |ix| (at(ix), at(iy))));
    places.map(|(x, y)| new_from_old * Point3::new(x, y, panel.at(x, y).0)).collect()
}

/// The polynomial of the same degree through points, least squares.
fn fitted(like: &SmoothPanel, points: &[Point3<f64>]) -> Option<SmoothPanel> {
    let terms = SmoothPanel::terms(like.degree);
    let mut rows = DMatrix::zeros(points.len(), terms);
    for (i, q) in points.iter().enumerate() {
        for (j, share) in like.shares(q.x, q.y).enumerate() {
            rows[(i, j)] = share[0];
        }
    }
    let heights = DVector::from_iterator(points.len(), points.iter().map(|q| q.z));
    let c = rows.svd(true, true).solve(&heights, 1e-12).ok()?;
    Some(SmoothPanel { c: c.as_slice().to_vec(), ..like.clone() })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_turned_panel_is_the_same_surface() {
        let mut panel = SmoothPanel { scale_mm: 140.0, degree: 4, c: vec![0.0; SmoothPanel::terms(4)], ridge: None };
        panel.c[3] = -9.0;
        panel.c[5] = -4.0;
        panel.c[1] = 7.0;
        let turned = Isometry3::new(Vector3::new(1.0, -2.0, 3.0), Vector3::new(0.02, -0.06, 0.01));
        let grid = |n: i32| (-n..=n).flat_map(move |i| (-n..=n).map(move |j| (f64::from(i), f64::from(j))));
        let on = |x: f64, y: f64| turned * Point3::new(x, y, panel.at(x, y).0);
        let points: Vec<_> = grid(6).map(|(i, j)| on(25.0 * i, 25.0 * j)).collect();
        let again = fitted(&panel, &points).unwrap();
        let worst = grid(30).map(|(i, j)| on(4.5 * i, 4.5 * j)).map(|q| (again.at(q.x, q.y).0 - q.z).abs());
        let worst = worst.fold(0.0, f64::max);
        // A turned polynomial of degree four is none of degree four: a few micrometres over the whole panel.
        assert!((1e-9..5e-3).contains(&worst), "{worst}");
    }
}
