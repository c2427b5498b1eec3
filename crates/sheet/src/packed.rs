//! A panel's state as bytes: places and memory as single floats; a dent's with its recipe as JSON before them.

use crate::dent::{Dent, Recipe};
use crate::mould::Worked;
use crate::panel::Panel;
use crate::strain::Modes;
use crate::yielding::Memory;
use nalgebra::Vector3;
use serde::{Deserialize, Serialize};

/// Bytes that hold no dent of this form.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("these bytes hold no dent's state of this version")]
pub struct NotPacked;

#[derive(Serialize, Deserialize)]
struct Header {
    recipe: Recipe,
    at_mm: [f64; 2],
    worked: Worked,
    depth_mm: f64,
    #[serde(default)]
    held: Option<f64>,
    stable: bool,
}

impl Panel {
    /// How it stands and what it remembers, as bytes.
    pub fn pack(&self) -> Vec<u8> {
        let moves = self.patch.places.iter().zip(&self.intended).flat_map(|(now, rest)| modes(&(now - rest)));
        let memory = self.patch.memory.iter().flat_map(|m| {
            let [p, b] = [modes(&m.plastic), modes(&m.back)];
            [p[0], p[1], p[2], b[0], b[1], b[2], m.spent as f32]
        });
        moves.chain(memory).flat_map(f32::to_le_bytes).collect()
    }

    /// Takes up a state of the same panel.
    ///
    /// # Errors
    /// Where it is that of another one.
    pub fn unpack(&mut self, bytes: &[u8]) -> Result<(), NotPacked> {
        let (nodes, layers) = (self.patch.places.len(), self.patch.memory.len());
        if bytes.len() != 4 * (3 * nodes + 7 * layers) {
            return Err(NotPacked);
        }
        let values: Vec<f64> =
            bytes.chunks_exact(4).map(|c| f64::from(f32::from_le_bytes([c[0], c[1], c[2], c[3]]))).collect();
        let (moves, memory) = values.split_at(3 * nodes);
        let places = self.intended.iter().zip(moves.chunks(3)).map(|(p, m)| p + Vector3::new(m[0], m[1], m[2]));
        let places = places.collect();
        let memory = memory.chunks(7).map(|m| Memory {
            plastic: Modes::new(m[0], m[1], m[2]),
            back: Modes::new(m[3], m[4], m[5]),
            spent: m[6],
        });
        self.take_up(places, memory.collect());
        Ok(())
    }
}

impl Dent {
    /// The dent as bytes.
    pub fn pack(&self) -> Vec<u8> {
        let header = Header {
            recipe: self.recipe.clone(),
            at_mm: self.at_mm,
            worked: self.worked,
            depth_mm: self.depth_mm,
            held: self.held,
            stable: self.panel.stable,
        };
        let header = serde_json::to_vec(&header).expect("plain numbers and words");
        let mut bytes = (header.len() as u32).to_le_bytes().to_vec();
        bytes.extend(header);
        bytes.extend(self.panel.pack());
        bytes
    }

    /// The dent out of bytes.
    pub fn unpack(bytes: &[u8]) -> Result<Self, NotPacked> {
        let length = bytes.get(..4).ok_or(NotPacked)?.try_into().map(u32::from_le_bytes).map_err(|_| NotPacked)?;
        let header = bytes.get(4..4 + length as usize).ok_or(NotPacked)?;
        let header: Header = serde_json::from_slice(header).map_err(|_| NotPacked)?;
        let mut panel = header.recipe.panel().ok_or(NotPacked)?;
        panel.unpack(&bytes[4 + length as usize..])?;
        panel.stable = header.stable;
        let Header { recipe, at_mm, worked, depth_mm, held, .. } = header;
        Ok(Self { panel, recipe, at_mm, worked, depth_mm, held })
    }
}

fn modes(m: &Modes) -> [f32; 3] {
    [m[0] as f32, m[1] as f32, m[2] as f32]
}
