//! The renderer against closed forms, each bound on both sides.

use dentwright_scene::pose::{Board, Camera, mirrored};
use dentwright_scene::shape::{Shape, normal};
use dentwright_scene::view::{Fineness, View};
use dentwright_scene::{Recipe, Scene, demo, recipes};
use nalgebra::{Matrix3, Vector3};

fn scene(json_fields: &str) -> Scene {
    let json = format!(r#"{{"paint": [0.05, 0.05, 0.05], "tags": [], {json_fields}}}"#);
    serde_json::from_str(&json).unwrap()
}

fn recipe(scene: Scene) -> Recipe {
    Recipe { about: String::new(), scene, photos: Default::default(), traps: Default::default() }
}

/// Board places seen in a pinhole view of 320 by 240 pixels.
fn places(mut scene: Scene) -> Vec<Option<[f32; 2]>> {
    scene.cam.aperture = 0.0;
    let stage = recipe(scene.clone()).stage();
    let fineness = Fineness { width: 320, height: 240, rays: 1 };
    View::trace(&stage, &scene.cam, fineness).board_places(1)
}

#[test]
fn a_flat_mirror_shows_the_board_by_a_homography() {
    let scene = scene(r#""Rx": 1e12, "Ry": 1e12"#);
    let seen = places(scene.clone());
    // The board mirrored in z = 0 is a plane in space; its camera matrix takes (u, v, 1) to pixels.
    let (camera, board) = (Camera::new(&scene.cam, 320, 240), Board::new(&scene.board));
    let flip = |p: Vector3<f64>| Vector3::new(p.x, p.y, -p.z);
    let ray = |px: f64, py: f64| camera.ray(px, py);
    let to_space = Matrix3::from_columns(&[flip(board.u), flip(board.v), flip(board.middle) - camera.eye]);
    let mut compared = 0;
    for (k, at) in seen.iter().enumerate() {
        let Some([u, v]) = at else { continue };
        let uvw = to_space.try_inverse().unwrap() * ray((k % 320) as f64 + 0.5, (k / 320) as f64 + 0.5);
        assert!((uvw.x / uvw.z - f64::from(*u)).abs() < 1e-3, "pixel {k}");
        assert!((uvw.y / uvw.z - f64::from(*v)).abs() < 1e-3, "pixel {k}");
        compared += 1;
    }
    assert!(compared > 20_000, "{compared}");
}

#[test]
fn a_low_inverts_at_the_depth_of_diameter_squared_over_eight_distances() {
    // Looking straight on from a long way off, a dish of depth h and diameter d has radius d²/8h; its mirror image
    // of a board at distance D shrinks to nothing along one axis where D is half that radius twice over: h = d²/8D
    // for a board and an eye at the same distance D.
    let distance = 610.0;
    let spread = |depth: f64| {
        let radius = 20.0f64.powi(2) / (8.0 * depth);
        let shape = Shape::without_peel(&scene(&format!(r#""Rx": {}, "Ry": {}"#, -radius, -radius)));
        let eye = Vector3::new(0.0, 0.0, distance);
        let height = |x: f64| {
            let met = shape.meet(&eye, &(Vector3::new(x, 0.0, 0.0) - eye)).unwrap();
            let out = mirrored(&(met.point - eye), &normal(&met.rise));
            (met.point + out * ((distance - met.point.z) / out.z)).x
        };
        (height(0.5) - height(-0.5)) / 1.0
    };
    // A flat mirror spreads a step on the panel twofold on the board; at the inversion depth not at all.
    let inversion = 20.0f64.powi(2) / (8.0 * distance);
    assert!((spread(1e-9) - 2.0).abs() < 1e-3);
    assert!(spread(inversion).abs() < 2e-3, "{}", spread(inversion));
    assert!(spread(inversion * 0.9) > 0.15 && spread(inversion * 1.1) < -0.15);
}

#[test]
fn a_dip_of_ten_micrometres_shifts_a_line_by_2_4_mm() {
    // A dish 10 µm deep and 20 mm across has a rim slope of 4h/d = 2 mrad; doubled by the mirror, over 610 mm.
    let radius = 20.0f64.powi(2) / (8.0 * 0.01);
    let dish = Shape::without_peel(&scene(&format!(r#""Rx": {}, "Ry": {}"#, -radius, -radius)));
    let met = dish.meet(&Vector3::new(10.0, 0.0, 610.0), &Vector3::new(0.0, 0.0, -1.0)).unwrap();
    let out = mirrored(&Vector3::new(0.0, 0.0, -1.0), &normal(&met.rise));
    let shift = (out.x / out.z * 610.0).abs();
    assert!((shift - 2.44).abs() < 0.01, "{shift}");
}

#[test]
fn a_sphere_shows_the_board_where_the_mirror_law_says() {
    // Paraboloid of radius R against the exact normal condition: the found normal bisects eye and board.
    let scene = scene(r#""Rx": 900.0, "Ry": 900.0"#);
    let (camera, board) = (Camera::new(&scene.cam, 320, 240), Board::new(&scene.board));
    let shape = Shape::without_peel(&scene);
    let mut compared = 0;
    for (k, at) in places(scene.clone()).iter().enumerate().step_by(37) {
        let Some([u, v]) = at else { continue };
        let along = camera.ray((k % 320) as f64 + 0.5, (k / 320) as f64 + 0.5);
        let p = shape.meet(&camera.eye, &along).unwrap().point;
        let to_board = (board.point(f64::from(*u), f64::from(*v)) - p).normalize();
        let bisector = (to_board + (camera.eye - p).normalize()).normalize();
        let slope = [-bisector.x / bisector.z, -bisector.y / bisector.z];
        assert!((slope[0] + p.x / 900.0).abs() < 1e-6 && (slope[1] + p.y / 900.0).abs() < 1e-6);
        assert!((p.z + (p.x * p.x + p.y * p.y) / 1800.0).abs() < 1e-7);
        compared += 1;
    }
    assert!(compared > 300, "{compared}");
}

#[test]
fn a_lens_with_distortion_sees_along_the_ray_it_images() {
    let mut scene = scene(r#""Rx": 3000.0, "Ry": 3000.0"#);
    scene.cam.distortion = [0.05, -0.03];
    scene.cam.axis_offset = [0.01, -0.005];
    let camera = Camera::new(&scene.cam, 1600, 1200);
    for (px, py) in [(10.0, 20.0), (800.0, 600.0), (1500.0, 1100.0)] {
        let [x, y] = camera.pixel(&(camera.eye + camera.ray(px, py) * 700.0)).unwrap();
        assert!((x - px).abs() < 1e-6 && (y - py).abs() < 1e-6);
    }
}

#[test]
fn a_small_capture_is_whole_and_the_same_each_time() {
    let once = demo::ALL[0].shrunk(4).unwrap();
    let again = demo::ALL[0].shrunk(4).unwrap();
    assert_eq!(once.photos.len(), 26);
    for (a, b) in once.photos.iter().zip(&again.photos) {
        assert_eq!(a.jpeg, b.jpeg, "{}", a.file);
    }
    let folder = tempfile::tempdir().unwrap();
    once.write(folder.path()).unwrap();
    let truth = dentwright_scene::Truth::read(folder.path()).unwrap();
    assert_eq!(truth.scene, once.truth.scene);
    assert_eq!(truth.damage, once.truth.damage);
    let low = truth.damage.iter().copied().fold(f32::MAX, f32::min);
    assert!((low + 0.42).abs() < 0.01, "{low}");
}

#[test]
fn mishaps_do_what_they_say() {
    let mut recipe = recipes::named("wrong_step").unwrap().shrunk(8);
    recipe.photos.sensor.full_electrons = 1e9;
    recipe.photos.sensor.read_electrons = 0.0;
    let capture = recipe.render().unwrap();
    let pixels = |name: &str| {
        let photo = capture.photos.iter().find(|p| p.file == name).unwrap();
        image::load_from_memory(&photo.jpeg).unwrap().to_luma8().into_raw()
    };
    let unlike =
        |a: &[u8], b: &[u8]| a.iter().zip(b).map(|(a, b)| f64::from(a.abs_diff(*b))).sum::<f64>() / a.len() as f64;
    // What is left between two photos of one picture is rounding that falls the other way.
    let same = unlike(&pixels("screen_u36_7.jpg"), &pixels("screen_u36_0.jpg"));
    let next = unlike(&pixels("screen_u36_1.jpg"), &pixels("screen_u36_0.jpg"));
    assert!(same < 0.3 && next > 2.0, "{same} {next}");
    recipe.traps.repeats[0].shows = "nothing.jpg".into();
    assert!(recipe.render().unwrap_err().to_string().contains("nothing.jpg"));
}
