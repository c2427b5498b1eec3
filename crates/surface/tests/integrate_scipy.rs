//! Integration against SciPy's `spsolve` on the same weighted equations (tests/reference/make.py; Virtanen et
//! al. 2020).

use dentwright_surface::{Grid, IntegrateSettings, SlopeMap, integrate};
use std::collections::BTreeMap;

const GRID: Grid = Grid { x0_mm: 0.0, y0_mm: 0.0, step_mm: 0.5, nx: 60, ny: 44 };

fn floats(bytes: &[u8]) -> Vec<f32> {
    bytes.as_chunks::<4>().0.iter().map(|b| f32::from_le_bytes(*b)).collect()
}

fn doubles(bytes: &[u8]) -> Vec<f64> {
    bytes.as_chunks::<8>().0.iter().map(|b| f64::from_le_bytes(*b)).collect()
}

#[test]
fn equals_scipy_up_to_the_constant_of_each_area() {
    let slopes = SlopeMap {
        grid: GRID,
        dzdx: floats(include_bytes!("../../../tests/reference/integrate_dzdx_44x60.f32")),
        dzdy: floats(include_bytes!("../../../tests/reference/integrate_dzdy_44x60.f32")),
        sigma: floats(include_bytes!("../../../tests/reference/integrate_sigma_44x60.f32")),
    };
    let answer = doubles(include_bytes!("../../../tests/reference/integrate_answer_44x60.f64"));
    let area = include_bytes!("../../../tests/reference/integrate_area_44x60.u8");
    let settings = IntegrateSettings { tolerance: 1e-9, ..Default::default() };
    let height = integrate(&slopes, None, &settings);
    let mut cells: BTreeMap<u8, Vec<usize>> = BTreeMap::new();
    for i in 0..GRID.len() {
        assert_eq!(height.values[i].is_finite(), answer[i].is_finite(), "cell {i}");
        if answer[i].is_finite() {
            cells.entry(area[i]).or_default().push(i);
        }
    }
    assert_eq!(cells.len(), 2, "the mask has two areas");
    for area in cells.values() {
        let mean = area.iter().map(|&i| f64::from(height.values[i])).sum::<f64>() / area.len() as f64;
        for &i in area {
            let off_mm = f64::from(height.values[i]) - mean - answer[i];
            assert!(off_mm.abs() < 1e-6, "cell {i} is {off_mm} mm off; heights reach 0.3 mm");
        }
    }
}
