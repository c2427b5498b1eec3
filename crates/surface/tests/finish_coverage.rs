//! Whether the verdicts' probabilities are honest: many panels of known truth, read with the doubt that is said.

mod common;

use common::{Random, bump, even, field, sum};
use dentwright_surface::{
    FinishLimit, Grid, Hole, Map, SettleCode, SpotSettings, Verdict, find_spots, judge, longer_than,
};

const GRID: Grid = Grid { x0_mm: 0.0, y0_mm: 0.0, step_mm: 1.0, nx: 110, ny: 90 };
const LIMIT: FinishLimit = FinishLimit { depth_mm: 0.010, slope: 0.001, scale_mm: 5.0 };

/// A panel with up to three dents whose depths lie evenly about the limit.
fn panel(random: &mut Random) -> Map {
    let count = (4.0 * random.even()) as usize;
    let dents: Vec<[f64; 4]> = (0..count)
        .map(|_| {
            let depth = LIMIT.depth_mm * 2.2 * (2.0 * random.even() - 1.0);
            [20.0 + 70.0 * random.even(), 20.0 + 50.0 * random.even(), depth, 5.0 + 7.0 * random.even()]
        })
        .collect();
    Map::from_fn(GRID, |x, y| dents.iter().map(|[dx, dy, h, r]| h * bump(x - dx, y - dy, *r)).sum())
}

/// Whether a panel of known shape is within the limit, by the limit's own definition.
fn is_within(truth: &Map) -> bool {
    let smooth = longer_than(truth, LIMIT.scale_mm);
    let value = |ix: usize, iy: usize| f64::from(smooth.values[iy * GRID.nx + ix]);
    let run = 2.0 * LIMIT.scale_mm;
    let deep = smooth.values.iter().any(|v| f64::from(v.abs()) > LIMIT.depth_mm);
    let steep = (5..GRID.ny - 5).any(|iy| {
        (5..GRID.nx - 5).any(|ix| {
            let (gx, gy) = (value(ix + 5, iy) - value(ix - 5, iy), value(ix, iy + 5) - value(ix, iy - 5));
            gx.hypot(gy) / run > LIMIT.slope
        })
    });
    !deep && !steep
}

#[derive(Default)]
struct Tally {
    done: usize,
    done_wrongly: usize,
    not_done: usize,
    not_done_wrongly: usize,
    cannot_tell: usize,
    said_within: f64,
    within: f64,
}

fn tally(sigma_mm: f64, alike_mm: f64, panels: u64) -> Tally {
    let mut tally = Tally::default();
    for k in 0..panels {
        let mut random = Random::new(1000 + k);
        let truth = panel(&mut random);
        let read = sum(&truth, &field(GRID, alike_mm, sigma_mm, &mut random));
        let sigma = even(GRID, sigma_mm);
        let spots = find_spots(&read, &sigma, &[], &SpotSettings::default());
        let (finish, of_spots) = judge(&read, &sigma, &spots, &[], &LIMIT);
        assert_eq!(of_spots.len(), spots.len());
        let within = is_within(&truth);
        tally.said_within += finish.within.unwrap();
        tally.within += f64::from(u8::from(within));
        match finish.verdict {
            Verdict::Done => {
                tally.done += 1;
                tally.done_wrongly += usize::from(!within);
            }
            Verdict::NotDone => {
                tally.not_done += 1;
                tally.not_done_wrongly += usize::from(within);
            }
            Verdict::CannotTell => {
                tally.cannot_tell += 1;
                assert!(finish.settle.is_some());
            }
        }
    }
    println!(
        "σ {:.1} µm alike over {alike_mm} mm: done {} ({} wrongly), not done {} ({} wrongly), cannot tell {}; said within {:.2}, true {:.2}",
        1e3 * sigma_mm,
        tally.done,
        tally.done_wrongly,
        tally.not_done,
        tally.not_done_wrongly,
        tally.cannot_tell,
        tally.said_within / panels as f64,
        tally.within / panels as f64
    );
    tally
}

#[test]
fn done_and_not_done_are_wrong_no_more_often_than_said() {
    // From a twentieth of the limit, an ordinary reading, to a third of it; errors alike over a few millimetres, as
    // of noise, and over tens of them, as of poses.
    let (mut done, mut done_wrongly, mut not_done, mut not_done_wrongly) = (0, 0, 0, 0);
    for (sigma_mm, alike_mm) in [(0.0005, 8.0), (0.001, 20.0), (0.002, 8.0), (0.002, 20.0), (0.0033, 20.0)] {
        let t = tally(sigma_mm, alike_mm, 300);
        done += t.done;
        done_wrongly += t.done_wrongly;
        not_done += t.not_done;
        not_done_wrongly += t.not_done_wrongly;
        assert!(t.done_wrongly as f64 <= 0.05 * t.done as f64 + 3.0, "done wrongly {} of {}", t.done_wrongly, t.done);
        assert!(t.not_done_wrongly as f64 <= 0.05 * t.not_done as f64 + 3.0);
        // The said chance never promises more than comes true.
        assert!(t.said_within <= t.within + 15.0, "said {} true {}", t.said_within, t.within);
    }
    assert!(done > 200 && not_done > 400, "{done} done, {not_done} not done");
    assert!((done_wrongly as f64) <= 0.05 * done as f64 && (not_done_wrongly as f64) <= 0.05 * not_done as f64);
}

#[test]
fn an_ordinary_reading_tells_nearly_always_and_a_poor_one_seldom() {
    let good = tally(0.0005, 10.0, 150);
    let poor = tally(0.005, 10.0, 150);
    assert!(good.cannot_tell <= 30, "{} of 150", good.cannot_tell);
    assert!(poor.done == 0 && poor.cannot_tell >= 60, "done {}, cannot tell {}", poor.done, poor.cannot_tell);
}

#[test]
fn a_spots_chance_comes_true_as_often_as_said() {
    // One dent about the limit's depth, so that its chance is what is judged.
    let (mut said, mut over, mut far, mut all) = (0.0, 0.0, 0, 0);
    let sigma_mm = 0.0015;
    for k in 0..600 {
        let mut random = Random::new(50_000 + k);
        let depth = LIMIT.depth_mm * (0.5 + random.even());
        let truth = Map::from_fn(GRID, |x, y| -depth * bump(x - 55.0, y - 45.0, 14.0));
        let read = sum(&truth, &field(GRID, 30.0, sigma_mm, &mut random));
        let sigma = even(GRID, sigma_mm);
        let spots = find_spots(&read, &sigma, &[], &SpotSettings::default());
        let (_, of_spots) = judge(&read, &sigma, &spots, &[], &LIMIT);
        let Some(first) = of_spots.first() else { continue };
        all += 1;
        said += first.over;
        over += f64::from(u8::from(!is_within(&truth)));
        far += usize::from(first.verdict != Verdict::CannotTell);
    }
    // The worst of a spot's cells stands for it, which is a little above the truth: on the safe side, and by less than
    // one in ten.
    println!("said over {said:.0}, truly over {over:.0}, told {far} of {all}");
    let more = (said - over) / f64::from(all);
    assert!((-0.02..0.09).contains(&more), "said {said}, true {over} of {all}");
}

#[test]
fn what_would_settle_it_is_said_and_settles_it() {
    let truth = Map::from_fn(GRID, |x, y| -0.0085 * bump(x - 55.0, y - 45.0, 14.0));
    let spots = |sigma: f64| find_spots(&truth, &even(GRID, sigma), &[], &SpotSettings::default());
    let at = |sigma: f64| judge(&truth, &even(GRID, sigma), &spots(sigma), &[], &LIMIT);
    let (finish, of_spots) = at(0.0018);
    assert_eq!((finish.verdict, of_spots[0].verdict), (Verdict::CannotTell, Verdict::CannotTell));
    let settle = finish.settle.unwrap();
    assert_eq!(settle.code, SettleCode::LessDoubt);
    let needed = settle.needed_sigma_mm.unwrap();
    assert!(needed < 0.0018 && needed > 0.0003, "{needed}");
    assert_eq!(at(0.95 * needed).0.verdict, Verdict::Done);
    let near = Map::from_fn(GRID, |x, y| -0.0103 * bump(x - 55.0, y - 45.0, 14.0));
    let found = find_spots(&near, &even(GRID, 0.001), &[], &SpotSettings::default());
    let (finish, _) = judge(&near, &even(GRID, 0.001), &found, &[], &LIMIT);
    assert_eq!(finish.settle.map(|s| s.code), Some(SettleCode::AtTheLimit));
}

#[test]
fn holes_are_not_called_done_and_a_steep_one_is_work() {
    let (flat, sigma) = (even(GRID, 0.0), even(GRID, 0.0005));
    let hole = |steep| Hole { x_mm: 40.0, y_mm: 30.0, area_mm2: 150.0, steep };
    let verdict = |holes: &[Hole]| judge(&flat, &sigma, &[], holes, &LIMIT).0;
    assert_eq!(verdict(&[]).verdict, Verdict::Done);
    let open = verdict(&[hole(false)]);
    assert_eq!((open.verdict, open.settle.unwrap().code), (Verdict::CannotTell, SettleCode::ReadTheRest));
    let steep = verdict(&[hole(false), hole(true)]);
    assert_eq!((steep.verdict, steep.settle.unwrap().code), (Verdict::NotDone, SettleCode::Closer));
    let slope = Map::from_fn(GRID, |x, _| 0.008 * ((x - 55.0) / 4.0).tanh());
    assert_eq!(judge(&slope, &sigma, &[], &[], &LIMIT).0.verdict, Verdict::NotDone, "steep though not deep");
}

#[test]
fn a_low_within_the_thin_ring_of_a_high_keeps_its_own_depth() {
    // Deep and gentle, so that its depth alone is over the limit; the ring stays far within it.
    let read = Map::from_fn(GRID, |x, y| {
        let far = (x - 55.0).hypot(y - 45.0);
        let ring = if x < 60.0 { 0.006 * (-((far - 36.0) / 2.5).powi(2)).exp() } else { 0.0 };
        -0.1 * bump(x - 55.0, y - 45.0, 12.0) + ring
    });
    let sigma = even(GRID, 0.0005);
    let spots = find_spots(&read, &sigma, &[], &SpotSettings::default());
    let (low, high) = (spots.iter().position(|s| s.height_mm < -0.04), spots.iter().position(|s| s.height_mm > 0.0));
    let (low, high) = (low.unwrap(), high.unwrap());
    assert!(spots[high].area_mm2 < spots[low].area_mm2 && spots[high].length_mm > spots[low].length_mm, "{spots:?}");
    let (_, of_spots) = judge(&read, &sigma, &spots, &[], &LIMIT);
    assert_eq!([of_spots[low].verdict, of_spots[high].verdict], [Verdict::NotDone, Verdict::Done]);
}
