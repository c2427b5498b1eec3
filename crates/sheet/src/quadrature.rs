//! Points and weights on −1 to 1, and over what of a rectangle lies inside a convex region.

use std::f64::consts::PI;

/// Gauss-Legendre rule of `n` points: `(place, weight)`.
pub fn gauss(n: usize) -> Vec<(f64, f64)> {
    (0..n)
        .map(|i| {
            let mut x = -(PI * (i as f64 + 0.75) / (n as f64 + 0.5)).cos();
            for _ in 0..50 {
                let (p, dp) = legendre(n, x);
                x -= p / dp;
            }
            let (_, dp) = legendre(n, x);
            (x, 2.0 / ((1.0 - x * x) * dp * dp))
        })
        .collect()
}

/// Gauss-Lobatto rule of `n` points, both ends among them.
pub fn lobatto(n: usize) -> Vec<(f64, f64)> {
    let order = n - 1;
    let ends = 2.0 / (n * order) as f64;
    (0..n)
        .map(|i| {
            if i == 0 || i == order {
                return (if i == 0 { -1.0 } else { 1.0 }, ends);
            }
            let mut x = -(PI * i as f64 / order as f64).cos();
            for _ in 0..50 {
                // the inner points are the zeros of P'; (1 − x²) P'' = 2x P' − n(n+1) P
                let (p, dp) = legendre(order, x);
                let ddp = (2.0 * x * dp - (order * n) as f64 * p) / (1.0 - x * x);
                x -= dp / ddp;
            }
            let (p, _) = legendre(order, x);
            (x, ends / (p * p))
        })
        .collect()
}

/// Gauss-Lobatto on either side of zero, `n` points in all, `n` odd and at least 5. Bending that is plastic through and
/// through turns its sign in the middle, which a rule over the whole misses by some per cent.
pub fn halved_lobatto(n: usize) -> Vec<(f64, f64)> {
    let half = lobatto(n / 2 + 1);
    let (end, middle) = (half.len() - 1, half[0].1);
    let lower = half[..end].iter().map(|(x, w)| (0.5 * (x - 1.0), 0.5 * w));
    let upper = half[1..].iter().map(|(x, w)| (0.5 * (x + 1.0), 0.5 * w));
    lower.chain([(0.0, middle)]).chain(upper).collect()
}

/// Legendre polynomial of degree `n` and its slope.
fn legendre(n: usize, x: f64) -> (f64, f64) {
    let (mut before, mut p) = (1.0, x);
    for k in 2..=n {
        let k = k as f64;
        (before, p) = (p, ((2.0 * k - 1.0) * x * p - (k - 1.0) * before) / k);
    }
    (p, n as f64 * (x * p - before) / (x * x - 1.0))
}

/// A convex region of the plane, known by its cuts along y.
pub trait Convex {
    /// Places in x, growing, between which both ends of the cut move smoothly; first and last bound the region.
    fn corners(&self) -> Vec<f64>;
    /// Lower and upper end of the cut at `x`; `None` outside.
    fn cut(&self, x: f64) -> Option<(f64, f64)>;
}

/// A disc.
#[derive(Debug, Clone, Copy)]
pub struct Disc {
    /// Centre, mm.
    pub centre: [f64; 2],
    /// Radius, mm.
    pub radius: f64,
}

impl Convex for Disc {
    fn corners(&self) -> Vec<f64> {
        vec![self.centre[0] - self.radius, self.centre[0] + self.radius]
    }

    fn cut(&self, x: f64) -> Option<(f64, f64)> {
        let half = (self.radius.powi(2) - (x - self.centre[0]).powi(2)).sqrt();
        half.is_finite().then_some((self.centre[1] - half, self.centre[1] + half))
    }
}

/// A rectangle, turned.
#[derive(Debug, Clone, Copy)]
pub struct Bar {
    /// Centre, mm.
    pub centre: [f64; 2],
    /// Half sides, mm.
    pub half: [f64; 2],
    /// Turn of the first side from x, rad.
    pub turn: f64,
}

impl Bar {
    fn vertices(&self) -> [[f64; 2]; 4] {
        let (s, c) = self.turn.sin_cos();
        [[-1.0, -1.0], [1.0, -1.0], [1.0, 1.0], [-1.0, 1.0]].map(|[a, b]| {
            let (u, v) = (a * self.half[0], b * self.half[1]);
            [self.centre[0] + c * u - s * v, self.centre[1] + s * u + c * v]
        })
    }
}

impl Convex for Bar {
    fn corners(&self) -> Vec<f64> {
        let mut x = self.vertices().map(|v| v[0]).to_vec();
        x.sort_by(f64::total_cmp);
        x.dedup_by(|a, b| (*a - *b).abs() < 1e-9);
        x
    }

    fn cut(&self, x: f64) -> Option<(f64, f64)> {
        let v = self.vertices();
        let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
        for i in 0..4 {
            let ([x0, y0], [x1, y1]) = (v[i], v[(i + 1) % 4]);
            if (x - x0) * (x - x1) <= 0.0 && (x1 - x0).abs() > 1e-12 {
                let y = y0 + (y1 - y0) * (x - x0) / (x1 - x0);
                (low, high) = (low.min(y), high.max(y));
            }
        }
        (low < high).then_some((low, high))
    }
}

/// Points `(x, y, weight)` over the part of the rectangle `x`, `y` inside `region`, `n` each way a smooth piece.
pub fn inside(region: &dyn Convex, x: [f64; 2], y: [f64; 2], n: usize) -> Vec<(f64, f64, f64)> {
    between(region, x, n, |low, high| vec![[low.max(y[0]), high.min(y[1])]], y)
}

/// Points over the part of the rectangle outside `region`.
pub fn outside(region: &dyn Convex, x: [f64; 2], y: [f64; 2], n: usize) -> Vec<(f64, f64, f64)> {
    between(region, x, n, |low, high| vec![[y[0], low.min(y[1])], [high.max(y[0]), y[1]]], y)
}

fn between(
    region: &dyn Convex,
    x: [f64; 2],
    n: usize,
    pieces: impl Fn(f64, f64) -> Vec<[f64; 2]>,
    y: [f64; 2],
) -> Vec<(f64, f64, f64)> {
    let rule = gauss(n);
    let mut points = Vec::new();
    for [x0, x1] in strips(region, x, y) {
        for (s, ws) in &rule {
            let at = 0.5 * (x0 + x1) + 0.5 * (x1 - x0) * s;
            let (low, high) = region.cut(at).unwrap_or((f64::INFINITY, f64::NEG_INFINITY));
            for [y0, y1] in pieces(low, high) {
                if y1 > y0 {
                    points.extend(rule.iter().map(|(r, wr)| {
                        (at, 0.5 * (y0 + y1) + 0.5 * (y1 - y0) * r, 0.25 * (x1 - x0) * (y1 - y0) * ws * wr)
                    }));
                }
            }
        }
    }
    points
}

/// The x range cut where the region's outline turns or crosses the rectangle's lower and upper side.
fn strips(region: &dyn Convex, x: [f64; 2], y: [f64; 2]) -> Vec<[f64; 2]> {
    let mut cuts = vec![x[0], x[1]];
    cuts.extend(region.corners().into_iter().filter(|c| *c > x[0] && *c < x[1]));
    cuts.sort_by(f64::total_cmp);
    let pieces: Vec<[f64; 2]> = cuts.windows(2).map(|w| [w[0], w[1]]).collect();
    for [a, b] in pieces {
        for end in 0..2 {
            for level in y {
                let side = |at: f64| region.cut(at).map(|c| [c.0, c.1][end] - level);
                let (Some(mut f0), Some(f1)) = (side(a), side(b)) else { continue };
                if f0 * f1 >= 0.0 {
                    continue;
                }
                let (mut low, mut high) = (a, b);
                for _ in 0..60 {
                    let middle = 0.5 * (low + high);
                    match side(middle) {
                        Some(f) if f * f0 > 0.0 => (low, f0) = (middle, f),
                        _ => high = middle,
                    }
                }
                cuts.push(0.5 * (low + high));
            }
        }
    }
    cuts.sort_by(f64::total_cmp);
    cuts.windows(2).filter(|w| w[1] - w[0] > 1e-9).map(|w| [w[0], w[1]]).collect()
}
