//! Reasons, departures from common practice, and cautions of a plan in plain words.

use crate::plan_file::Caution;
use dentwright_plan::{Blocked, Departure, Reason};

/// Where a round parts from common practice.
pub fn departure(departure: &Departure) -> String {
    match departure {
        Departure::CrownsFirst { planned_mm, trade_mm } => format!(
            "Unlike common practice the low comes before the crown: {} are left against {}.",
            um(*planned_mm),
            um(*trade_mm)
        ),
        Departure::CrownLeft { at_mm, height_mm, changes_mm } => format!(
            "Unlike common practice the crown of {} at {} is not tapped yet: the other moves change it by {:+.0} µm.",
            um(*height_mm),
            place(*at_mm),
            1e3 * changes_mm
        ),
        Departure::TiedTogether { tie, first_share } => format!(
            "Unlike common practice both of two tied dents are worked in one round, the first to {:.0} %: one moves by {:.0} % of the other, which is reckoned with.",
            100.0 * first_share,
            100.0 * tie
        ),
    }
}

/// A reason against.
pub fn reason(reason: &Reason) -> String {
    match reason {
        Reason::OilCan { pops_at_n: Some(n) } => format!("brought level it is an oil can: it pops at {n:.0} N"),
        Reason::OilCan { pops_at_n: None } => "brought level it does not stay: an oil can".into(),
        Reason::Stretched { area } => format!("stretched: {:.1} % more surface than the panel had", 100.0 * area),
        Reason::Paint { strain, risk } => format!(
            "paint: {:.1} % strain on its face on the way back, {} risk even when warm",
            100.0 * strain,
            format!("{risk:?}").to_lowercase()
        ),
        Reason::Access { blocked } => {
            format!("nothing reaches: {}", blocked.iter().map(why_blocked).collect::<Vec<_>>().join(", "))
        }
        Reason::MakersRule { rule } => format!("the maker forbids it: {rule}"),
        Reason::Dearer { ours, conventional } => {
            format!("dearer than conventional repair: {ours:.0} against {conventional:.0}")
        }
        Reason::WentOver { before_mm, after_mm } => format!(
            "after the last round {} stand out, before it {}: the sheet gave way or the hand went far over. Stop; read and think again before anything else",
            um(*after_mm),
            um(*before_mm)
        ),
        Reason::NotComputed => "whether it oil-cans when level could not be computed".into(),
    }
}

fn why_blocked(blocked: &Blocked) -> String {
    match blocked {
        Blocked::OffPanel => "not on the panel drawn".into(),
        Blocked::Fold => "nearer than 25 mm to a folded edge".into(),
        Blocked::Bonded => "something is bonded to the panel there".into(),
        Blocked::NoOpening => "no bar that stands there passes an opening".into(),
        Blocked::Wall { name } | Blocked::Brace { name } => format!("{name} is in the way"),
        Blocked::Behind { kind } => format!("{} is in the way", format!("{kind:?}").to_lowercase()),
        Blocked::Skin => "the panel's own curve is in the way".into(),
        Blocked::NoFulcrum => "there is no fulcrum".into(),
    }
}

/// A caution.
pub fn caution(caution: Caution) -> &'static str {
    match caution {
        Caution::Airbag => "Airbag or belt tensioner behind: disconnect and wait as its maker says; no bar near it.",
        Caution::HighVoltage => "High voltage behind: trained people isolate it and prove it dead; keep heat away.",
        Caution::Wiring => "Wiring behind: keep bars clear of it.",
        Caution::Glass => "Glass behind: guard it; a bar on its edge breaks it.",
        Caution::Glue => {
            "Hot glue burns the skin; no heat until the solvent has gone; glue can lift weak or repainted paint."
        }
        Caution::Tapping => "Tapping: hearing and eye protection; gloves at sheet edges.",
        Caution::NotDrawn => {
            "Nothing was drawn behind: look for airbags, wiring, glass and bonded braces before a bar goes in."
        }
        Caution::Corrosion => {
            "Protect the inside from rust again after the work. Never drill; never part what is bonded or welded."
        }
    }
}

/// A place of the panel.
pub fn place([x, y]: [f64; 2]) -> String {
    format!("x {x:.0}, y {y:.0} mm")
}

/// A length, in µm below a millimetre.
pub fn um(mm: f64) -> String {
    if mm.abs() < 0.9995 { format!("{:.0} µm", 1e3 * mm) } else { format!("{mm:.2} mm") }
}
