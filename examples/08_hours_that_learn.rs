//! A shop that is slower than common practice times thirty jobs: the hours become its own, the doubt shrinks,
//! and how well they were predicted is known.

use dentwright_price::{
    Access, Conditions, Dent, FinishedJob, HoursSettings, Kind, Learned, Metal, Place, Timed, calibration, foretell,
    hours, total_hours,
};

fn dent(kind: Kind, across_mm: f64, count: u32) -> Dent {
    Dent {
        kind,
        length_mm: across_mm,
        width_mm: across_mm,
        depth_mm: 0.03 * across_mm,
        metal: Metal::Steel,
        access: Access::Open,
        place: Place::Flat,
        sharpness: None,
        count,
    }
}

/// The nth job of a shop that takes 1.4 times the shipped hours, give or take: every third is timed dent by
/// dent, the others as a whole.
fn job(nth: u32, start: &Learned) -> FinishedJob {
    let conditions = Conditions::default();
    let across_mm = f64::from(18 + 7 * nth % 40);
    let dents = [dent(Kind::Round, across_mm, 1), dent(Kind::Hail, 14.0, 5 + nth % 9), dent(Kind::Sharp, 25.0, 1)];
    let sway = |turn: u32| 1.4 * (0.3 * f64::from(nth * 13 + turn * 7).sin()).exp();
    let worked = |dents: &[Dent], turn| total_hours(dents, &conditions, start).likely * sway(turn);
    let timed = if nth % 3 == 0 {
        (0..)
            .zip(&dents)
            .map(|(turn, dent)| Timed { dents: vec![dent.clone()], worked_h: worked(std::slice::from_ref(dent), turn) })
            .collect()
    } else {
        vec![Timed { dents: dents.to_vec(), worked_h: worked(&dents, 0) }]
    };
    FinishedJob { what: format!("job {nth}"), conditions, timed }
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let settings = HoursSettings::default();
    let start = Learned::start(&settings)?;
    let jobs: Vec<FinishedJob> = (1..=30).map(|nth| job(nth, &start)).collect();
    let (foretold, learned) = foretell(&settings, &jobs)?;

    let ding = dent(Kind::Round, 25.0, 1);
    let of = |learned: &Learned| hours(&ding, &Conditions::default(), learned);
    for (when, hours) in [("before", of(&start)), ("after 30 jobs", of(&learned))] {
        println!(
            "{when}: {:.2} h, between {:.2} and {:.2}; {:.0} % of the doubt is about the shop",
            hours.likely,
            hours.low,
            hours.high,
            100.0 * hours.doubt.shop
        );
    }
    for one in learned
        .coefficients()
        .iter()
        .filter(|one| ["base_hours", "kind.hail", "kind.sharp"].contains(&one.name.as_str()))
    {
        println!("  {:11} {:.3} → {:.3}, between {:.3} and {:.3}", one.name, one.start, one.now, one.low, one.high);
    }
    let late = calibration(&foretold[10..]).ok_or("there are jobs")?;
    println!(
        "jobs 11 to 30, each predicted before it was learned: {:.0} % between low and high, usually within a factor of {:.2}",
        100.0 * late.inside,
        late.usual_miss
    );

    let times = of(&learned).likely / of(&start).likely;
    assert!((1.2..1.6).contains(&times), "1.4 times as long, but {times}");
    assert!(of(&learned).doubt.shop < 0.5 * of(&start).doubt.shop);
    assert!(foretold[0].rank > 0.5, "common practice was too short for this shop");
    assert!(late.inside >= 0.6 && late.usual_miss < 1.5);
    Ok(())
}
