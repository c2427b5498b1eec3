//! What to take care of, from where the damage lies and how its back is reached.
//!
//! Practice of the trade, without a published source for the choice itself; the texts (in the report
//! and the app) name theirs. Above all of them stands: the vehicle maker's procedure, local code,
//! licensed people. A caution too many costs a glance, one too few may cost more: where nothing is
//! known of the access, those of every access apply.

use crate::{Car, Damage, Panel};
use dentwright_price::Access;
use std::collections::BTreeSet;

/// A caution; the order is that of a report, the gravest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum CautionCode {
    /// Curtain airbags along the roof rails.
    AirbagCurtain,
    /// Airbags and tensioners in seats and pillars.
    AirbagSeatPillar,
    /// More than 60 V DC.
    HighVoltage,
    /// Nobody has looked whether there is more than 60 V DC.
    VoltageUnknown,
    /// Struts under pressure.
    GasStrut,
    /// Heat and paint.
    HeatPaint,
    /// Cleaning alcohol burns.
    Solvent,
    /// Hot glue.
    HotGlue,
    /// Hammering.
    Noise,
    /// Eyes and hands.
    EyesHands,
    /// Radars and cameras may need calibration.
    RadarCamera,
    /// Bonded or welded structure stays on.
    BondedStructure,
    /// Corrosion protection behind the panel.
    Corrosion,
}

/// A caution and the panel it is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Caution {
    /// Which.
    pub code: CautionCode,
    /// Where; none where it is for the whole work.
    pub panel: Option<Panel>,
}

impl CautionCode {
    /// All of them, in order.
    pub const ALL: [Self; 13] = [
        Self::AirbagCurtain,
        Self::AirbagSeatPillar,
        Self::HighVoltage,
        Self::VoltageUnknown,
        Self::GasStrut,
        Self::HeatPaint,
        Self::Solvent,
        Self::HotGlue,
        Self::Noise,
        Self::EyesHands,
        Self::RadarCamera,
        Self::BondedStructure,
        Self::Corrosion,
    ];

    /// Its code, by which its text is found.
    #[must_use]
    pub fn code(self) -> &'static str {
        match self {
            Self::AirbagCurtain => "airbag_curtain",
            Self::AirbagSeatPillar => "airbag_seat_pillar",
            Self::HighVoltage => "high_voltage",
            Self::VoltageUnknown => "voltage_unknown",
            Self::GasStrut => "gas_strut",
            Self::HeatPaint => "heat_paint",
            Self::Solvent => "solvent",
            Self::HotGlue => "hot_glue",
            Self::Noise => "noise",
            Self::EyesHands => "eyes_hands",
            Self::RadarCamera => "radar_camera",
            Self::BondedStructure => "bonded_structure",
            Self::Corrosion => "corrosion",
        }
    }
}

/// Cautions for work on these damages, in order, each once a panel.
#[must_use]
pub fn cautions(car: &Car, damages: &[Damage]) -> Vec<Caution> {
    let mut found = BTreeSet::new();
    for damage in damages {
        let ways = Ways::of(damage);
        let here = CautionCode::ALL.into_iter().filter(|code| applies(*code, damage.panel, &ways));
        found.extend(here.map(|code| Caution { code, panel: Some(damage.panel) }));
    }
    if !damages.is_empty() {
        let whole = [CautionCode::Noise, CautionCode::EyesHands, CautionCode::HeatPaint];
        let charged = match car.high_voltage {
            Some(true) => Some(CautionCode::HighVoltage),
            Some(false) => None,
            None => Some(CautionCode::VoltageUnknown),
        };
        found.extend(whole.into_iter().chain(charged).map(|code| Caution { code, panel: None }));
    }
    found.into_iter().collect()
}

fn applies(code: CautionCode, panel: Panel, ways: &Ways) -> bool {
    match code {
        CautionCode::AirbagCurtain => panel.is_roof_or_rail() && ways.behind,
        CautionCode::AirbagSeatPillar => (panel.is_door() || panel.is_sill_or_rear_wing()) && ways.behind,
        CautionCode::GasStrut => panel.is_lid(),
        CautionCode::Solvent | CautionCode::HotGlue => ways.glue,
        CautionCode::RadarCamera => {
            let beside_sensors = matches!(panel, Panel::BootLid | Panel::Tailgate) || panel.is_door();
            panel.is_bumper() || beside_sensors && ways.trim
        }
        CautionCode::BondedStructure => ways.braced,
        CautionCode::Corrosion => ways.behind,
        // For the whole work, whatever the panel.
        CautionCode::HighVoltage
        | CautionCode::VoltageUnknown
        | CautionCode::HeatPaint
        | CautionCode::Noise
        | CautionCode::EyesHands => false,
    }
}

/// The ways on which tools come to a damage.
struct Ways {
    /// From behind the panel.
    behind: bool,
    /// With trim taken off.
    trim: bool,
    /// Past a brace.
    braced: bool,
    /// From the front by glue.
    glue: bool,
}

impl Ways {
    fn of(damage: &Damage) -> Self {
        let any = |wanted: &[Access]| {
            let open = damage.dents.is_empty() || damage.dents.iter().any(|entry| entry.dent.access == Access::None);
            open || damage.dents.iter().any(|entry| wanted.contains(&entry.dent.access))
        };
        Self {
            behind: any(&[Access::Open, Access::TrimOff, Access::Braced]),
            trim: any(&[Access::TrimOff]),
            braced: any(&[Access::Braced]),
            glue: any(&[Access::GlueOnly]),
        }
    }
}
