//! Ways that are told against dense sampling on random inner sides: no reach that is none, and how many are missed.

mod common;

use common::{goes_through, hits, scene, surface};
use dentwright_plan::*;
use nalgebra::{Isometry3, Point3, Translation3, UnitQuaternion, Vector3};
use rayon::prelude::*;

/// Random inner sides.
const SCENES: u64 = 300;
/// Places asked on each.
const PLACES: usize = 1;

fn place(dice: &mut Dice, side: &InnerSide) -> [f64; 2] {
    let c = side.outline.corners();
    [0, 1].map(|k| dice.between(c[0][k] + 30.0, c[2][k] - 30.0))
}

/// Checks one reach; what is wrong with it.
fn wrong(side: &InnerSide, rack: &Rack, reach: &Reach, at: [f64; 2]) -> Option<String> {
    let tool = rack.tool.iter().find(|t| t.name == reach.tool).expect("its tool");
    let tip = rack.tip.iter().find(|t| t.name == reach.tip).expect("its tip");
    let chains = surface(tool, tip.radius, 0.0, 8.0);
    let wall = side.walls.iter().find(|w| w.name == reach.through[0]).expect("its wall");
    let before = chains.iter().flatten().all(|p| {
        let d = reach.way[0] * p - Point3::from(wall.origin);
        d.dot(&Vector3::from(wall.out)) > 0.0
    });
    if !before {
        return Some("does not start before the opening".into());
    }
    for w in reach.way.windows(2) {
        let far = tool.length();
        let way =
            (w[1].translation.vector - w[0].translation.vector).norm() + far * w[0].rotation.angle_to(&w[1].rotation);
        let n = (way / 6.0).ceil().max(1.0) as usize;
        let pose = |k: usize| {
            let s = k as f64 / n as f64;
            let q = w[0].rotation.slerp(&w[1].rotation, s);
            Isometry3::from_parts(Translation3::from(w[0].translation.vector.lerp(&w[1].translation.vector, s)), q)
        };
        for k in 0..n {
            if hits(side, &chains, &pose(k + 1)) || goes_through(side, &chains, &pose(k), &pose(k + 1)) {
                return Some(format!("hits something on its way, pose {:?}", pose(k + 1)));
            }
        }
    }
    let last = reach.way[reach.way.len() - 1];
    let push = last.rotation * Vector3::z();
    let normal = side.normal(at[0], at[1]);
    let aim = Vector3::new(at[0], at[1], side.height(at[0], at[1]));
    let left = (aim - last.translation.vector).norm() - tip.radius;
    if !(0.0..2.0).contains(&left) {
        return Some(format!("the tip stands {left} mm from the panel"));
    }
    let off = push.angle(&normal);
    ((off - reach.off_square).abs() > 1e-6 || off > 0.4).then(|| format!("{off} rad off square"))
}

#[test]
fn no_reach_is_told_that_is_none() {
    let rack = starter_rack();
    let results: Vec<(usize, usize, Vec<String>)> = (0..SCENES)
        .into_par_iter()
        .map(|seed| {
            let mut dice = Dice::new(seed);
            let side = scene(&mut dice);
            let (mut asked, mut told, mut wrongs) = (0, 0, Vec::new());
            for _ in 0..PLACES {
                let at = place(&mut dice, &side);
                // one tip a place is enough here
                let tip = rack.tip[dice.one_of(rack.tip.len())].clone();
                let rack = Rack { tip: vec![tip], ..rack.clone() };
                let access = access(&side, &rack, at, &ReachSettings::default()).expect("a drawing");
                asked += rack.tool.len() * side.walls.iter().map(|w| w.openings.len()).sum::<usize>();
                told += access.reaches.len();
                let found = access.reaches.iter().take(2).filter_map(|r| wrong(&side, &rack, r, at));
                wrongs.extend(found.map(|w| format!("scene {seed} at {at:?}: {w}")));
            }
            (asked, told, wrongs)
        })
        .collect();
    let asked: usize = results.iter().map(|r| r.0).sum();
    let told: usize = results.iter().map(|r| r.1).sum();
    let wrongs: Vec<_> = results.into_iter().flat_map(|r| r.2).collect();
    println!("{SCENES} inner sides, {asked} tools and openings asked, {told} reaches told, {} wrong", wrongs.len());
    assert!(told > 150, "only {told} reaches: the scenes are too tight to test anything");
    assert!(wrongs.is_empty(), "{wrongs:#?}");
}

/// A bar drawn out at random: small moves that are clear and bring it further out are kept.
fn comes_out(
    side: &InnerSide,
    wall: &Wall,
    chains: &[Vec<Point3<f64>>],
    pose: Isometry3<f64>,
    dice: &mut Dice,
) -> bool {
    let out = Vector3::from(wall.out).normalize();
    let height = |pose: &Isometry3<f64>| {
        let z = chains.iter().flatten().map(|p| (pose * p - Point3::from(wall.origin)).dot(&out));
        z.map(|z| z.min(20.0)).sum::<f64>()
    };
    let all_out =
        |pose: &Isometry3<f64>| chains.iter().flatten().all(|p| (pose * p - Point3::from(wall.origin)).dot(&out) > 0.5);
    let (mut pose, mut stuck) = (pose, 0);
    for _ in 0..600 {
        if all_out(&pose) {
            return true;
        }
        let big = if stuck > 20 { 0.3 } else { 1.0 };
        let step = Vector3::new(dice.normal(), dice.normal(), dice.normal()) * 3.0 * big + out * 3.0 * big;
        let turn = Vector3::new(dice.normal(), dice.normal(), dice.normal()) * 0.03 * big;
        // turned about the bar's place in the opening's plane
        let inside = chains.iter().flatten().map(|p| pose * p);
        let about = inside
            .min_by(|a, b| {
                let z = |p: &Point3<f64>| (p - Point3::from(wall.origin)).dot(&out).abs();
                z(a).total_cmp(&z(b))
            })
            .expect("points");
        let rotation = UnitQuaternion::from_scaled_axis(turn);
        let origin = about + rotation * (Point3::from(pose.translation.vector) - about) + step;
        let next = Isometry3::from_parts(origin.coords.into(), rotation * pose.rotation);
        if height(&next) > height(&pose) && !hits(side, chains, &next) && !goes_through(side, chains, &pose, &next) {
            (pose, stuck) = (next, 0);
        } else {
            stuck += 1;
            if stuck > 60 {
                return false;
            }
        }
    }
    false
}

#[test]
fn few_reaches_that_exist_are_missed() {
    let rack = starter_rack();
    let margin = ReachSettings::default().margin_mm;
    let results: Vec<(usize, usize)> = (0..SCENES / 3)
        .into_par_iter()
        .map(|seed| {
            let mut dice = Dice::new(10_000 + seed);
            let side = scene(&mut dice);
            let (mut found, mut missed) = (0, 0);
            for _ in 0..2 {
                let at = place(&mut dice, &side);
                let tool = &rack.tool[dice.one_of(rack.tool.len())];
                let tip = &rack.tip[dice.one_of(rack.tip.len())];
                let ours = tool_reaches(&side, tool, tip, at, &ReachSettings::default());
                let chains = surface(tool, tip.radius, margin, 20.0);
                let openings = side.walls.iter().flat_map(|w| (0..w.openings.len()).map(move |o| (w, o))).zip(&ours);
                for ((wall, o), ours) in openings {
                    if sampled(&side, wall, o, tool, tip, at, &chains, &mut dice) {
                        found += 1;
                        missed += usize::from(matches!(ours, Err(why) if *why != Blocked::NoFulcrum));
                    }
                }
            }
            (found, missed)
        })
        .collect();
    let found: usize = results.iter().map(|r| r.0).sum();
    let missed: usize = results.iter().map(|r| r.1).sum();
    println!(
        "the sampler found {found} reaches; {missed} of them were missed ({:.1} %)",
        100.0 * missed as f64 / found as f64
    );
    assert!(found > 20 && (missed as f64) < 0.5 * found as f64);
}

/// Whether random poses and a random way find this tool reaching through this opening.
#[expect(clippy::too_many_arguments, reason = "one question of a test")]
fn sampled(
    side: &InnerSide,
    wall: &Wall,
    opening: usize,
    tool: &Tool,
    tip: &ToolTip,
    at: [f64; 2],
    chains: &[Vec<Point3<f64>>],
    dice: &mut Dice,
) -> bool {
    let normal = side.normal(at[0], at[1]);
    let stands = Point3::new(at[0], at[1], side.height(at[0], at[1])) - normal * (tip.radius + margin_and_way());
    let (mut tries, mut ways) = (0, 0);
    while tries < 300 && ways < 3 {
        tries += 1;
        let square = UnitQuaternion::rotation_between(&Vector3::z(), &normal).expect("not upside down");
        let turn = UnitQuaternion::from_axis_angle(&Vector3::z_axis(), dice.between(0.0, std::f64::consts::TAU));
        let tilt = Vector3::new(dice.between(-0.24, 0.24), dice.between(-0.24, 0.24), 0.0);
        let rotation = square * turn * UnitQuaternion::from_scaled_axis(tilt);
        let pose = Isometry3::from_parts(stands.coords.into(), rotation);
        let line: Vec<_> = tool.corners().iter().map(|c| local(wall, &(pose * c))).collect();
        let crossings: Vec<_> = line.windows(2).filter(|l| (l[0].z < 0.0) != (l[1].z < 0.0)).collect();
        let [l] = crossings[..] else { continue };
        let q = l[0].lerp(&l[1], l[0].z / (l[0].z - l[1].z));
        let outside = line[line.len() - 1].z > 90.0;
        if !outside || wall.openings[opening].outline.depth([q.x, q.y]) < 1.0 || hits(side, chains, &pose) {
            continue;
        }
        ways += 1;
        if comes_out(side, wall, chains, pose, dice) {
            return true;
        }
    }
    false
}

fn local(wall: &Wall, p: &Point3<f64>) -> Vector3<f64> {
    let [a, b, c] = wall.axes();
    let d = p - Point3::from(wall.origin);
    Vector3::new(d.dot(&a), d.dot(&b), d.dot(&c))
}

/// The sampler's bar is thicker by the margin, its tip too.
fn margin_and_way() -> f64 {
    ReachSettings::default().margin_mm + 1.5
}
