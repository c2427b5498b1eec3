//! How one Newton step's cost grows with the patch: `cargo run --release -p dentwright-sheet --example growth`.

use dentwright_sheet::*;
use std::time::Instant;

fn main() {
    let hardening = Hardening::Swift { k_mpa: 530.0, n: 0.2, yield_mpa: 200.0 };
    let metal = Metal { e_mpa: 210000.0, nu: 0.3, hardening, kinematic_share: 0.4 };
    let mut before = 0.0;
    for cells in [25, 50, 100] {
        let axis = || Axis::new((0..=cells).map(|i| -100.0 + 200.0 * i as f64 / cells as f64).collect());
        let mesh = Mesh::new(axis(), axis(), Outline::Rectangle, &|_, _| 0.0, 2).expect("flat");
        let patch = Patch::new(mesh, metal.clone(), 0.7, 9, &Edges::all(Hold::Clamped));
        let best = (0..5)
            .map(|_| {
                let start = Instant::now();
                let state = patch.state(&patch.places).expect("flat");
                let sum = start.elapsed().as_secs_f64();
                let factor = patch.factor(&state);
                let mut x = vec![1.0; 3 * patch.places.len()];
                factor.solve(&mut x);
                assert_eq!(factor.negative(), 0);
                (start.elapsed().as_secs_f64(), sum)
            })
            .min_by(|a, b| a.0.total_cmp(&b.0))
            .expect("five runs");
        println!("{cells}² cells: {:.0} ms, of which forces and stiffness {:.0} ms", 1e3 * best.0, 1e3 * best.1);
        assert!(before == 0.0 || best.0 / before < 12.0, "four times the cells, at most some eight times the work");
        before = best.0;
    }
}
