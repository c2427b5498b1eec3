//! Memory that a factor uses again and again.

use std::sync::Mutex;

/// Memory for matrices that are needed for a moment.
#[derive(Default)]
pub(crate) struct Room(Mutex<Vec<Vec<f64>>>);

/// A matrix in memory that belongs to the room, column by column.
pub(crate) struct Lent {
    pub values: Vec<f64>,
    pub rows: usize,
    pub columns: usize,
}

impl Room {
    /// A matrix with anything in it, in the smallest memory at hand that holds it.
    pub fn take(&self, rows: usize, columns: usize) -> Lent {
        let mut free = self.0.lock().expect("nobody panics holding it");
        let fits = |values: &Vec<f64>| values.len() >= rows * columns;
        let best = (0..free.len()).filter(|&i| fits(&free[i])).min_by_key(|&i| free[i].len());
        let values = best.map_or_else(|| vec![0.0; rows * columns], |i| free.swap_remove(i));
        Lent { values, rows, columns }
    }

    pub fn give(&self, values: Vec<f64>) {
        self.0.lock().expect("nobody panics holding it").push(values);
    }
}

impl Lent {
    pub fn slice(&self) -> &[f64] {
        &self.values[..self.rows * self.columns]
    }

    pub fn slice_mut(&mut self) -> &mut [f64] {
        &mut self.values[..self.rows * self.columns]
    }
}
