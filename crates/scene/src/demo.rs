//! Invented captures to try the program with: a door before, between and after its rounds, a bonnet with hail, a wing
//! with a crown, a door with a dent too steep to read.

use crate::capture::{Capture, CaptureError};
use crate::recipes;

/// One demo capture and where it belongs in a demo job.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Demo {
    /// Name of its recipe.
    pub recipe: &'static str,
    /// Panel of the car, in the words of a job.
    pub panel: &'static str,
    /// Whether it was taken after the work.
    pub after: bool,
}

/// The demo captures in the order of the work.
pub const ALL: [Demo; 7] = [
    Demo { recipe: "demo_door_before", panel: "front_door_left", after: false },
    Demo { recipe: "demo_bonnet_hail", panel: "bonnet", after: false },
    Demo { recipe: "demo_wing_crown", panel: "front_wing_right", after: false },
    Demo { recipe: "demo_door_round_1", panel: "front_door_left", after: false },
    Demo { recipe: "demo_door_round_2", panel: "front_door_left", after: false },
    Demo { recipe: "demo_door_after", panel: "front_door_left", after: true },
    Demo { recipe: "demo_door_steep", panel: "rear_door_left", after: false },
];

impl Demo {
    /// Renders its photos (1.2 MP each; about two seconds a capture on two cores).
    ///
    /// # Errors
    /// As [`crate::Recipe::render`].
    pub fn render(&self) -> Result<Capture, CaptureError> {
        self.shrunk(1)
    }

    /// The same with photos a whole number of times smaller, for quick trials.
    ///
    /// # Errors
    /// As [`crate::Recipe::render`].
    pub fn shrunk(&self, divisor: usize) -> Result<Capture, CaptureError> {
        let recipe = recipes::named(self.recipe).ok_or(CaptureError::NoSuchRecipe(self.recipe))?;
        recipe.shrunk(divisor).render()
    }
}
