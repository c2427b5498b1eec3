//! The surface as triangles: binary PLY (Turk 1994) and binary STL (3D Systems 1989). Millimetres, panel frame.
//!
//! Four neighbouring cells that were read make two triangles, three make one; outward is up.

use crate::kept::KeptReading;
use dentwright_surface::Map;

/// Number of the corner on each cell, and triangles by corner numbers.
struct Mesh {
    cells: Vec<usize>,
    triangles: Vec<[u32; 3]>,
}

impl Mesh {
    fn of(height: &Map) -> Self {
        let grid = height.grid;
        let cells: Vec<usize> = (0..grid.len()).filter(|&i| height.values[i].is_finite()).collect();
        let mut number = vec![None; grid.len()];
        cells.iter().enumerate().for_each(|(k, &i)| number[i] = Some(k as u32));
        let mut triangles = Vec::with_capacity(2 * cells.len());
        for iy in 0..grid.ny.saturating_sub(1) {
            for ix in 0..grid.nx.saturating_sub(1) {
                let i = iy * grid.nx + ix;
                // Counter-clockwise from the lower left, seen from outside.
                match [number[i], number[i + 1], number[i + grid.nx + 1], number[i + grid.nx]] {
                    [Some(a), Some(b), Some(c), Some(d)] => triangles.extend([[a, b, c], [a, c, d]]),
                    [Some(a), Some(b), Some(c), None] => triangles.push([a, b, c]),
                    [Some(a), Some(b), None, Some(d)] => triangles.push([a, b, d]),
                    [Some(a), None, Some(c), Some(d)] => triangles.push([a, c, d]),
                    [None, Some(b), Some(c), Some(d)] => triangles.push([b, c, d]),
                    _ => {}
                }
            }
        }
        Self { cells, triangles }
    }
}

fn corner(height: &Map, cell: usize) -> [f32; 3] {
    let (x, y) = height.grid.position(cell);
    [x as f32, y as f32, height.values[cell]]
}

/// PLY with `x y z deviation sigma` at every corner, mm.
pub(super) fn ply(reading: &KeptReading) -> Vec<u8> {
    let mesh = Mesh::of(&reading.height);
    let mut out = format!(
        "ply\nformat binary_little_endian 1.0\ncomment millimetres, panel frame\nelement vertex {}\n\
         property float x\nproperty float y\nproperty float z\nproperty float deviation\nproperty float sigma\n\
         element face {}\nproperty list uchar int vertex_indices\nend_header\n",
        mesh.cells.len(),
        mesh.triangles.len()
    )
    .into_bytes();
    for &i in &mesh.cells {
        let more = [reading.deviation.values[i], reading.sigma.values[i]];
        corner(&reading.height, i).iter().chain(&more).for_each(|v| out.extend(v.to_le_bytes()));
    }
    for triangle in &mesh.triangles {
        out.push(3);
        triangle.iter().for_each(|k| out.extend(k.to_le_bytes()));
    }
    out
}

/// STL; its eighty letters of comment name the unit, which the form does not know.
pub(super) fn stl(height: &Map) -> Vec<u8> {
    let mesh = Mesh::of(height);
    let mut out = b"surface of a panel, millimetres".to_vec();
    out.resize(80, b' ');
    out.extend((mesh.triangles.len() as u32).to_le_bytes());
    for triangle in &mesh.triangles {
        let [a, b, c] = triangle.map(|k| corner(height, mesh.cells[k as usize]));
        let normal = normal(a, b, c);
        for point in [normal, a, b, c] {
            point.iter().for_each(|v| out.extend(v.to_le_bytes()));
        }
        out.extend([0, 0]);
    }
    out
}

fn normal(a: [f32; 3], b: [f32; 3], c: [f32; 3]) -> [f32; 3] {
    let to = |p: [f32; 3]| nalgebra::Vector3::new(p[0] - a[0], p[1] - a[1], p[2] - a[2]);
    to(b).cross(&to(c)).normalize().into()
}
