//! Random inner sides, and a checker of ways that knows nothing of how they were found: it moves points of the bar's
//! surface in small steps and looks whether one of them is in, or went through, something solid.

use dentwright_plan::{Behind, BehindKind, Brace, Dice, InnerSide, Opening, Outline, Tool, Wall};
use dentwright_sheet::BarSection;
use nalgebra::{Isometry3, Point3, Vector3};
use std::f64::consts::TAU;

/// A door or lid with what is behind it, drawn at random.
pub fn scene(dice: &mut Dice) -> InnerSide {
    let (w, h) = (dice.between(500.0, 900.0), dice.between(350.0, 600.0));
    let gap = dice.between(35.0, 120.0);
    let mut inner = Wall {
        name: "inner sheet".into(),
        origin: [0.0, 0.0, -gap],
        along: [1.0, 0.0, 0.0],
        out: [dice.between(-0.1, 0.1), dice.between(-0.1, 0.1), -1.0],
        outline: Outline::Rectangle { at: [0.0, 0.0], size: [w, h] },
        openings: Vec::new(),
    };
    for k in 0..1 + dice.one_of(4) {
        let at = [dice.between(-0.4, 0.4) * w, dice.between(-0.4, 0.4) * h];
        inner.openings.push(Opening { name: format!("hole {k}"), outline: outline(dice, at, 120.0), trim: None });
    }
    let side_wall = |dice: &mut Dice, name: &str, way: f64| {
        let mut openings = Vec::new();
        for k in 0..1 + dice.one_of(2) {
            let at = [dice.between(-0.4, 0.4) * w, -0.5 * gap * way];
            let size = [dice.between(14.0, 0.8 * w), dice.between(12.0, 0.8 * gap)];
            openings.push(Opening {
                name: format!("{name} {k}"),
                outline: Outline::Rectangle { at, size },
                trim: Some("strip".into()),
            });
        }
        Wall {
            name: name.into(),
            origin: [0.0, way * (0.5 * h - 5.0), 0.0],
            along: [1.0, 0.0, 0.0],
            out: [0.0, way, 0.0],
            // out × along: the wall's second axis is −z·way
            outline: Outline::Rectangle { at: [0.0, -0.5 * gap * way], size: [w, gap + 20.0] },
            openings,
        }
    };
    let mut walls = vec![inner, side_wall(dice, "top slot", 1.0)];
    // the second axis of a wall is out × along
    for wall in &mut walls[1..] {
        let v = wall.axes()[1];
        let sign = -v.z.signum();
        let fix = |o: &mut Outline| {
            if let Outline::Rectangle { at, .. } = o {
                at[1] = sign * 0.5 * gap;
            }
        };
        fix(&mut wall.outline);
        wall.openings.iter_mut().for_each(|o| fix(&mut o.outline));
    }
    let place =
        |dice: &mut Dice| [dice.between(-0.5, 0.5) * w, dice.between(-0.5, 0.5) * h, -dice.between(0.2, 1.0) * gap];
    let braces = (0..dice.one_of(4))
        .map(|k| Brace {
            name: format!("brace {k}"),
            line: vec![place(dice), place(dice), place(dice)],
            radius: dice.between(4.0, 15.0),
            bears: dice.one_of(2) == 0,
        })
        .collect();
    let behind = (0..dice.one_of(3))
        .map(|_| {
            let from = place(dice);
            let to = [0, 1, 2].map(|k| from[k] + dice.between(-80.0, 80.0));
            Behind { kind: BehindKind::Wiring, from, to, keep: dice.between(0.0, 10.0) }
        })
        .collect();
    let k = |dice: &mut Dice| -1.0 / dice.between(1200.0, 8000.0);
    InnerSide {
        outline: Outline::Rectangle { at: [0.0, 0.0], size: [w, h] },
        curvature: [k(dice), dice.between(-3e-5, 3e-5), k(dice)],
        walls,
        braces,
        bonded: Vec::new(),
        behind,
    }
}

fn outline(dice: &mut Dice, at: [f64; 2], most: f64) -> Outline {
    match dice.one_of(3) {
        0 => Outline::Circle { at, radius: dice.between(8.0, 0.5 * most) },
        1 => Outline::Rectangle { at, size: [dice.between(15.0, most), dice.between(15.0, most)] },
        _ => {
            let n = 3 + dice.one_of(4);
            let turns: Vec<f64> = (0..n).map(|k| TAU * (k as f64 + dice.between(0.0, 0.8)) / n as f64).collect();
            let corner = |t: f64, r: f64| [at[0] + r * t.cos(), at[1] + r * t.sin()];
            Outline::Polygon { corners: turns.into_iter().map(|t| corner(t, dice.between(0.3, 0.5) * most)).collect() }
        }
    }
}

/// Points of a bar's surface in its frame, in chains: neighbours in a chain are near each other.
pub fn surface(tool: &Tool, tip_radius: f64, more: f64, step: f64) -> Vec<Vec<Point3<f64>>> {
    let line: Vec<Point3<f64>> = tool.line.iter().map(|[x, z]| Point3::new(*x, 0.0, *z)).collect();
    let mut chains = Vec::new();
    for l in line.windows(2) {
        let d = (l[1] - l[0]).normalize();
        let (side, up) = (Vector3::y(), d.cross(&Vector3::y()));
        let n = ((l[1] - l[0]).norm() / step).ceil() as usize;
        let around: Vec<Vector3<f64>> = match tool.section {
            BarSection::Round { diameter_mm } => {
                let r = 0.5 * diameter_mm + more;
                (0..6).map(|k| TAU * f64::from(k) / 6.0).map(|t| (side * t.cos() + up * t.sin()) * r).collect()
            }
            BarSection::Flat { width_mm, height_mm } => {
                let (a, b) = (0.5 * width_mm + more, 0.5 * height_mm + more);
                [-1.0, -0.5, 0.0, 0.5, 1.0]
                    .iter()
                    .flat_map(|s| [side * (a * s) + up * b, side * (a * s) - up * b])
                    .collect()
            }
        };
        for offset in around.into_iter().chain([Vector3::zeros()]) {
            chains.push((0..=n).map(|k| l[0] + (l[1] - l[0]) * (k as f64 / n as f64) + offset).collect());
        }
    }
    for k in 0..8 {
        let meridian = |j: usize| {
            let (a, b) = (TAU * k as f64 / 8.0, TAU * j as f64 / 24.0);
            Point3::from(Vector3::new(a.cos() * b.sin(), a.sin() * b.sin(), b.cos()) * (tip_radius + more))
        };
        chains.push((0..=12).map(meridian).collect());
    }
    chains
}

/// By crossings of a ray, written without the library's distance.
fn holds(outline: &Outline, p: [f64; 2]) -> bool {
    match outline {
        Outline::Circle { at, radius } => (p[0] - at[0]).powi(2) + (p[1] - at[1]).powi(2) < radius * radius,
        other => {
            // winding number by angles
            let c = other.corners();
            let angle = |q: [f64; 2]| (q[1] - p[1]).atan2(q[0] - p[0]);
            let turns = (0..c.len()).map(|k| {
                let d = angle(c[(k + 1) % c.len()]) - angle(c[k]);
                d - TAU * (d / TAU).round()
            });
            turns.sum::<f64>().abs() > 3.0
        }
    }
}

fn solid_wall(wall: &Wall, p: &Point3<f64>) -> bool {
    let out = Vector3::from(wall.out).normalize();
    let along = Vector3::from(wall.along);
    let u = (along - out * along.dot(&out)).normalize();
    let v = out.cross(&u);
    let d = p - Point3::from(wall.origin);
    let flat = [d.dot(&u), d.dot(&v)];
    holds(&wall.outline, flat) && !wall.openings.iter().any(|o| holds(&o.outline, flat))
}

fn through_wall(side: &InnerSide, a: &Point3<f64>, b: &Point3<f64>) -> bool {
    side.walls.iter().any(|wall| {
        let height = |p: &Point3<f64>| (p - Point3::from(wall.origin)).dot(&Vector3::from(wall.out));
        let (za, zb) = (height(a), height(b));
        (za < 0.0) != (zb < 0.0) && solid_wall(wall, &(a + (b - a) * (za / (za - zb))))
    })
}

fn in_solid(side: &InnerSide, p: &Point3<f64>) -> bool {
    let front = p.z > side.height(p.x, p.y) && holds(&side.outline, [p.x, p.y]);
    let brace = side.braces.iter().any(|b| {
        b.line.windows(2).any(|l| {
            let (a, c) = (Point3::from(l[0]), Point3::from(l[1]));
            // within a ball at either end, or between the ends and near the line by the cross product
            let (d, e) = (c - a, p - a);
            let near = d.cross(&e).norm() < b.radius * d.norm() && (0.0..d.norm_squared()).contains(&d.dot(&e));
            near || e.norm() < b.radius || (p - c).norm() < b.radius
        })
    });
    let behind = side.behind.iter().any(|b| {
        (0..3).all(|k| p[k] > b.from[k].min(b.to[k]) - b.keep && p[k] < b.from[k].max(b.to[k]) + b.keep)
            && (0..3).filter(|k| p[*k] < b.from[*k].min(b.to[*k]) || p[*k] > b.from[*k].max(b.to[*k])).count() <= 1
    });
    front || brace || behind
}

/// Whether the bar standing at `pose` is in something.
pub fn hits(side: &InnerSide, chains: &[Vec<Point3<f64>>], pose: &Isometry3<f64>) -> bool {
    chains.iter().any(|chain| {
        let placed: Vec<_> = chain.iter().map(|p| pose * p).collect();
        placed.iter().any(|p| in_solid(side, p)) || placed.windows(2).any(|l| through_wall(side, &l[0], &l[1]))
    })
}

/// Whether a point of the bar goes through a wall on a small move.
pub fn goes_through(side: &InnerSide, chains: &[Vec<Point3<f64>>], a: &Isometry3<f64>, b: &Isometry3<f64>) -> bool {
    chains.iter().flatten().any(|p| through_wall(side, &(a * p), &(b * p)))
}
