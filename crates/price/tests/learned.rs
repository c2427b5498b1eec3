//! Learning on simulated shops: it finds the truth, its intervals hold what they say, and a model with
//! wrong noise is caught.

mod common;

use common::dent;
use common::shop::{Draw, Shop};
use dentwright_price::{
    Conditions, Dent, FinishedError, FinishedJob, HoursSettings, Kind, LearnError, Learned, Timed, calibration,
    foretell, hours, total_hours,
};

/// Share of all jobs of many drawn shops that came between low and high, by a model that starts from `said`.
fn coverage(said: &HoursSettings, shops: u64, jobs: usize, from: usize) -> f64 {
    let (mut inside, mut all) = (0, 0);
    for seed in 0..shops {
        let mut draw = Draw::new(seed);
        let shop = Shop::drawn(&HoursSettings::default(), &mut draw);
        let (foretold, _) = foretell(said, &shop.jobs(jobs, &mut draw)).unwrap();
        inside += foretold[from..].iter().filter(|one| (one.low..=one.high).contains(&one.worked)).count();
        all += jobs - from;
    }
    inside as f64 / all as f64
}

/// 120 shops of 60 jobs: 7,200 predictions.
#[test]
fn the_eighty_percent_interval_holds_eighty_percent() {
    let whole = coverage(&HoursSettings::default(), 120, 60, 0);
    let late = coverage(&HoursSettings::default(), 120, 60, 40);
    println!("80 % interval: {whole:.3} of all jobs, {late:.3} after 40 jobs");
    assert!((0.75..0.85).contains(&whole), "{whole}");
    assert!((0.75..0.85).contains(&late), "{late}");
}

/// The same measure refuses models that are sure of a wrong noise.
#[test]
fn a_model_with_wrong_noise_fails_that_measure() {
    for (times, bad) in [(0.5, 0.0..0.75), (2.0, 0.85..1.0)] {
        let mut said = HoursSettings::default();
        said.spread_own *= times;
        said.spread_shared *= times;
        said.width.spread_weight = 1e9;
        let share = coverage(&said, 40, 60, 20);
        println!("noise times {times}, never corrected: {share:.3}");
        assert!(bad.contains(&share), "{share}");
    }
}

/// A shop 1.5 widths and more away from what is shipped: wrong at first, right later, and at the rate at
/// which means of independent jobs settle.
#[test]
fn it_converges_to_an_odd_shop() {
    let shop = Shop::odd(0.45, 0.25);
    let miss = |jobs: usize| {
        let mut sum = 0.0;
        for seed in 0..12 {
            let mut draw = Draw::new(1_000 + seed);
            let learned = Learned::of(&HoursSettings::default(), &shop.jobs(jobs, &mut draw)).unwrap();
            for nth in 0..60 {
                let job = shop.job(nth, &mut draw);
                let said = total_hours(job.dents(), &job.conditions, &learned).likely;
                let true_h: f64 = job.dents().map(|dent| shop.expected(dent, &job.conditions)).sum();
                sum += (said / true_h).ln().powi(2) / (12.0 * 60.0);
            }
        }
        sum.sqrt()
    };
    let misses = [0, 10, 40, 160, 640].map(miss);
    println!("root mean square miss of ln hours after 0, 10, 40, 160, 640 jobs: {misses:.3?}");
    assert!(misses[0] > 0.3, "{misses:?}");
    assert!(misses.is_sorted_by(|a, b| a > b), "{misses:?}");
    assert!(misses[4] < 0.05, "{misses:?}");
    let rate = misses[2] / misses[4];
    assert!((2.0..8.0).contains(&rate), "16 times the jobs, {rate} times less"); // 4 by theory
}

/// Its intervals hold there too once it has seen some jobs, whatever the day's share of its spread.
#[test]
fn intervals_hold_in_an_odd_shop_after_forty_jobs() {
    for (own, day) in [(0.45, 0.25), (0.45, 0.1), (0.3, 0.3), (0.2, 0.4)] {
        let (mut inside, mut all) = (0.0, 0.0);
        for seed in 0..20 {
            let mut draw = Draw::new(2_000 + seed);
            let shop = Shop::odd(own, day);
            let (foretold, _) = foretell(&HoursSettings::default(), &shop.jobs(140, &mut draw)).unwrap();
            let calibration = calibration(&foretold[40..]).unwrap();
            inside += calibration.inside * 100.0;
            all += 100.0;
        }
        println!("odd shop, own {own}, day {day}, after 40 jobs: {:.3}", inside / all);
        assert!((0.75..0.85).contains(&(inside / all)), "{}", inside / all);
    }
}

/// Sums are learned about as well as their parts: the same jobs, timed line by line and as a whole.
#[test]
fn a_whole_job_teaches_what_its_lines_would_within_their_doubt() {
    let shop = Shop::odd(0.45, 0.25);
    let mut draw = Draw::new(7);
    let mut apart = shop.jobs(900, &mut draw);
    apart.retain(|job| job.timed.len() > 1);
    let together: Vec<FinishedJob> = apart.iter().map(whole).collect();
    let settings = HoursSettings::default();
    let (one, other) = (Learned::of(&settings, &apart).unwrap(), Learned::of(&settings, &together).unwrap());
    let mut worst = 0.0_f64;
    for (a, b) in one.coefficients().iter().zip(other.coefficients()) {
        let wide = (b.high / b.low).ln().abs().max(1e-6);
        worst = worst.max((a.now / b.now).ln().abs() / wide);
    }
    println!("{} jobs; largest difference over the 80 % width: {worst:.2}", apart.len());
    assert!(worst < 0.8, "{worst}");
}

fn whole(job: &FinishedJob) -> FinishedJob {
    let timed = Timed { dents: job.dents().cloned().collect(), worked_h: job.worked_h() };
    FinishedJob { timed: vec![timed], ..job.clone() }
}

/// Jobs are linearised one by one, so their order matters a little: far less than what is not known.
#[test]
fn the_order_of_jobs_matters_little() {
    let mut draw = Draw::new(11);
    let mut jobs = Shop::odd(0.45, 0.25).jobs(120, &mut draw);
    let settings = HoursSettings::default();
    let one = Learned::of(&settings, &jobs).unwrap();
    jobs.reverse();
    let other = Learned::of(&settings, &jobs).unwrap();
    let tests: Vec<FinishedJob> = Shop::odd(0.45, 0.25).jobs(100, &mut draw);
    let of = |learned: &Learned, job: &FinishedJob| total_hours(job.dents(), &job.conditions, learned);
    let worst = tests.iter().map(|job| (of(&one, job).likely / of(&other, job).likely).ln().abs()).fold(0.0, f64::max);
    println!("120 jobs backwards: likely hours of 100 others differ by up to {:.2} %", 100.0 * worst);
    assert!(worst > 0.0 && worst < 0.03, "{worst}");
}

#[test]
fn what_is_learned_survives_json_and_shows_its_doubt() {
    let mut draw = Draw::new(3);
    let learned = Learned::of(&HoursSettings::default(), &Shop::odd(0.45, 0.25).jobs(25, &mut draw)).unwrap();
    let json = serde_json::to_string(&learned).unwrap();
    let again: Learned = serde_json::from_str(&json).unwrap();
    assert_eq!((again.jobs(), learned.jobs()), (25, 25));
    for (a, b) in again.coefficients().iter().zip(learned.coefficients()) {
        assert!(a.name == b.name && (a.now - b.now).abs() < 1e-12 && (a.high - b.high).abs() < 1e-12, "{}", a.name);
    }
    let coefficients = learned.coefficients();
    let base = coefficients.iter().find(|one| one.name == "base_hours").unwrap();
    assert!((base.start - 0.65).abs() < 1e-12 && base.low < base.now && base.now < base.high);
    assert!(base.now > 0.75, "{base:?}"); // the truth is 0.98
    let [own, day] = learned.spreads();
    assert!((0.25..0.7).contains(&own) && (0.05..0.5).contains(&day), "{own} {day}"); // 0.45 and 0.25
    let start = Learned::start(&HoursSettings::default()).unwrap();
    let widths = |learned: &Learned| -> f64 { learned.coefficients().iter().map(|one| one.high - one.low).sum() };
    assert!(widths(&learned) < widths(&start));
    let ding = dent(Kind::Round, 25.0, 1.0, 1);
    let (before, after) =
        (hours(&ding, &Conditions::default(), &start), hours(&ding, &Conditions::default(), &learned));
    assert!(after.doubt.shop < before.doubt.shop);
    assert!((after.doubt.shop + after.doubt.day + after.doubt.dents - 1.0).abs() < 1e-12);
}

#[test]
fn a_time_that_cannot_be_is_refused_by_name() {
    let good = Timed { dents: vec![dent(Kind::Round, 25.0, 1.0, 1)], worked_h: 0.7 };
    let job = |timed| FinishedJob { what: "2026-007".into(), conditions: Conditions::default(), timed };
    let refused = |timed| Learned::of(&HoursSettings::default(), &[job(timed)]).unwrap_err();
    for worked_h in [0.0, -1.0, f64::NAN, f64::INFINITY, 10_001.0] {
        let error = refused(vec![good.clone(), Timed { worked_h, ..good.clone() }]);
        assert!(matches!(error, LearnError::Job(FinishedError::Time { nth: 2, .. })), "{error}");
    }
    assert_eq!(refused(vec![]).to_string(), "job 2026-007: nothing was timed");
    let error = refused(vec![Timed { dents: vec![], ..good.clone() }]).to_string();
    assert_eq!(error, "job 2026-007, time 1: there are no dents for 0.7 h");
    let flat = Dent { length_mm: -3.0, ..good.dents[0].clone() };
    let error = refused(vec![Timed { dents: vec![flat], ..good }]).to_string();
    assert_eq!(error, "job 2026-007, time 1: length_mm is -3, but must be over 0 and at most 5000");
}
