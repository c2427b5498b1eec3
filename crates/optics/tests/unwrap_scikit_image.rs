//! Unwrapping against scikit-image's `unwrap_phase` on the same masked, noisy phase
//! (tests/reference/make.py; van der Walt et al. 2014).

use dentwright_optics::unwrap;
use std::collections::HashMap;
use std::f32::consts::TAU;

const WIDTH: usize = 96;

fn floats(bytes: &[u8]) -> Vec<f32> {
    bytes.as_chunks::<4>().0.iter().map(|b| f32::from_le_bytes(*b)).collect()
}

#[test]
fn equals_scikit_image_up_to_whole_turns_of_each_area() {
    let phase = floats(include_bytes!("../../../tests/reference/unwrap_phase_80x96.f32"));
    let answer = floats(include_bytes!("../../../tests/reference/unwrap_answer_80x96.f32"));
    let mask: Vec<bool> =
        include_bytes!("../../../tests/reference/unwrap_mask_80x96.u8").iter().map(|&m| m != 0).collect();
    let (ours, area) = unwrap(&phase, &mask, WIDTH);
    let mut turns: HashMap<u32, i32> = HashMap::new();
    for i in 0..phase.len() {
        assert_eq!(ours[i].is_finite(), mask[i]);
        if !mask[i] {
            continue;
        }
        let apart = (ours[i] - answer[i]) / TAU;
        assert!((apart - apart.round()).abs() < 1e-4, "pixel {i}: {apart} turns apart");
        let expected = *turns.entry(area[i]).or_insert(apart.round() as i32);
        assert_eq!(apart.round() as i32, expected, "pixel {i} has another order than its area");
    }
    assert_eq!(turns.len(), 2, "the mask has two areas");
}
