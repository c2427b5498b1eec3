//! A case on file: what is written, and what is refused.

use dentwright_sheet::{CaseError, run_case};
use serde_json::Value;
use std::path::Path;

const CASE: &str = r#"
[patch]
outline = "rectangle"
width_mm = 80
height_mm = 60
step_mm = 4
radius_x_mm = 800
edges = "clamped"
[sheet]
thickness_mm = 0.7
e_mpa = 210000
nu = 0.3
hardening = { kind = "swift", k_mpa = 530, n = 0.2, yield_mpa = 200 }
kinematic_share = 0.4
[[moves]]
kind = "press"
x_mm = 4
y_mm = -2
tip = { shape = "sphere", radius_mm = 12 }
to_mm = -2
steps = 10
[[moves]]
kind = "push"
x_mm = 4
y_mm = -2
tip = { shape = "disc", radius_mm = 4 }
bonded = true
force_n = 60
steps = 6
"#;

fn run(text: &str, folder: &Path) -> Result<Value, CaseError> {
    let file = folder.join("case.toml");
    std::fs::write(&file, text).expect("a temporary file");
    run_case(&file, &folder.join("out"))?;
    let json = std::fs::read_to_string(folder.join("out/result.json")).expect("result.json");
    Ok(serde_json::from_str(&json).expect("JSON"))
}

#[test]
fn a_case_leaves_its_numbers_and_maps() {
    let folder = tempfile::tempdir().expect("a folder");
    let result = run(CASE, folder.path()).expect("a case that runs");
    assert_eq!(result["converged"], true);
    assert_eq!(result["word"], "estimate");
    let moves = result["moves"].as_array().expect("moves");
    let number = |m: &Value, key: &str| m[key].as_f64().unwrap_or_else(|| panic!("{key} in {m}"));
    assert_eq!(moves.len(), 2);
    let press = &moves[0];
    // the tip's level is the sheet's, but for what the contact gives
    assert!((number(press, "at_tip_held_mm") + 2.0).abs() < 0.02);
    let left = number(press, "at_tip_left_mm");
    assert!(left < -0.05 && left > -2.0, "{left}");
    assert!((number(press, "springback_mm") - (number(press, "at_tip_held_mm") - left).abs()).abs() < 1e-12);
    assert!(number(press, "lowest_left_mm") <= left + 1e-9);
    assert!(number(press, "max_plastic_strain") > 1e-3 && number(press, "max_membrane_strain") > 0.0);
    // on virgin metal all strain is this move's
    assert_eq!(number(press, "plastic_strain_spent"), number(press, "max_plastic_strain"));
    let curve = press["curve"].as_array().expect("curve");
    assert!(curve.len() > 14, "steps up and down: {}", curve.len());
    let peak = curve.iter().map(|p| p[1].as_f64().expect("force")).fold(0.0, f64::max);
    assert!((peak - number(press, "peak_force_n")).abs() < 1e-9 && peak > 50.0);
    assert_eq!(curve[curve.len() - 1][1], 0.0);
    assert!((number(&moves[1], "peak_force_n") - 60.0).abs() < 0.01);
    assert!(number(&moves[1], "at_tip_left_mm") > left - 1e-6, "a push does not deepen");
    assert_eq!(result["oil_can"]["stable"], true);
    assert!(result["oil_can"]["lowest_stiffness_n_per_mm"].as_f64().expect("stiffness") > 10.0);
    for (name, three) in [("deviation_2.npy", 1), ("plastic_outer_1.npy", 1), ("membrane_stress_2.npy", 3)] {
        let bytes = std::fs::read(folder.path().join("out").join(name)).expect(name);
        assert_eq!(bytes.len(), 128 + 4 * 21 * 16 * three, "{name}");
    }
}

#[test]
fn what_makes_no_sense_is_said() {
    let folder = tempfile::tempdir().expect("a folder");
    let refused = [
        (CASE.replace("clamped", "free"), "held by nothing"),
        (CASE.replace("to_mm = -2", "to_mm = -2\nforce_n = 3"), "one of to_mm"),
        (CASE.replace("x_mm = 4", "x_mm = 400"), "off the patch"),
        (CASE.replace("to_mm = -2", "to_mm = nan"), "must be numbers"),
        (CASE.replace("force_n = 60", "force_n = 0"), "above zero"),
        (CASE.replace("n = 0.2", "n = 2.0"), "hardening"),
        (CASE.replace("thickness_mm = 0.7", "thickness_mm = 0.0"), "thickness"),
        (CASE.replace("steps = 10", "stepz = 10"), "stepz"),
        (CASE.replace("edges = \"clamped\"", "deviation = \"none.npy\""), "none.npy"),
    ];
    for (text, says) in refused {
        let error = run(&text, folder.path()).expect_err(says).to_string();
        assert!(error.contains(says), "{error} does not say {says}");
        assert!(!folder.path().join("out/result.json").exists());
    }
}
