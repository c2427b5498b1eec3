//! The planner's sheet as bytes, so that the next reading's plan goes on from it.

use crate::model::{Known, Model};
use dentwright_sheet::NotPacked;
use serde::{Deserialize, Serialize};

#[derive(Serialize, Deserialize)]
struct Header {
    known: Known,
    misfit_mm: f64,
    stable: bool,
}

impl Model {
    /// What is known of the sheet as JSON, its length before it, then how it stands.
    ///
    /// # Panics
    /// Never: plain numbers and words.
    #[must_use]
    pub fn pack(&self) -> Vec<u8> {
        let header = Header { known: self.known.clone(), misfit_mm: self.misfit_mm, stable: self.panel.stable };
        let header = serde_json::to_vec(&header).expect("plain numbers and words");
        let mut bytes = (header.len() as u32).to_le_bytes().to_vec();
        bytes.extend(header);
        bytes.extend(self.panel.pack());
        bytes
    }

    /// The sheet out of bytes.
    ///
    /// # Errors
    /// Where they are not of this version's form.
    pub fn unpack(bytes: &[u8]) -> Result<Self, NotPacked> {
        let length = bytes.get(..4).and_then(|b| b.try_into().ok()).map(u32::from_le_bytes).ok_or(NotPacked)?;
        let (header, state) = bytes[4..].split_at_checked(length as usize).ok_or(NotPacked)?;
        let Header { known, misfit_mm, stable } = serde_json::from_slice(header).map_err(|_| NotPacked)?;
        let mut panel = known.panel().ok_or(NotPacked)?;
        panel.unpack(state)?;
        panel.stable = stable;
        Ok(Self { known, panel, misfit_mm })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plant::Plant;

    #[test]
    fn a_sheet_comes_back_as_it_was() {
        let mut plant = Plant::draw(1).unwrap();
        let map = plant.read();
        let model = Model::from_reading(&map, &plant.told, &|_| true).unwrap();
        let bytes = model.pack();
        let again = Model::unpack(&bytes).unwrap();
        assert_eq!(again.known, model.known);
        for (x, y) in [(0.0, 0.0), (12.0, -7.0), (-30.0, 21.0)] {
            let (a, b) = (model.panel.deviation(x, y), again.panel.deviation(x, y));
            assert!((a - b).abs() < 1e-5, "{a} {b}");
        }
        assert!((again.panel.max_plastic_strain() - model.panel.max_plastic_strain()).abs() < 1e-6);
        assert!(Model::unpack(&bytes[..bytes.len() - 4]).is_err() && Model::unpack(b"{}").is_err());
    }
}
