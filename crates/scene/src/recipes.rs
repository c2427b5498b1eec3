//! The recipes that come with the program, by name.

use crate::recipe::Recipe;

macro_rules! recipes {
    ($($name:literal),+ $(,)?) => {
        /// Name and text of every recipe.
        pub const ALL: &[(&str, &str)] = &[$(($name, include_str!(concat!("../recipes/", $name, ".toml")))),+];
    };
}

recipes!(
    "bent",
    "board_outside",
    "body_line",
    "crease",
    "curved",
    "deep_sharp",
    "demo_bonnet_hail",
    "demo_door_after",
    "demo_door_before",
    "demo_door_round_1",
    "demo_door_round_2",
    "demo_door_steep",
    "demo_wing_crown",
    "dirty_clipped",
    "door",
    "far_steep",
    "flat",
    "gamma",
    "lid_slid",
    "low_wing_slid",
    "micro",
    "noisy",
    "nudged",
    "slid_edge",
    "slid_knocked",
    "slid_repeated",
    "slid_sound",
    "slid_uneven",
    "slid_white",
    "sound_dark",
    "sound_silver",
    "still_deep",
    "still_finish",
    "twelve_megapixel",
    "white_low_contrast",
    "wing",
    "wrong_step",
);

/// A recipe by its name.
#[must_use]
pub fn named(name: &str) -> Option<Recipe> {
    let (_, text) = ALL.iter().find(|r| r.0 == name)?;
    Recipe::parse(text).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_recipe_parses() {
        for (name, text) in ALL {
            Recipe::parse(text).unwrap_or_else(|e| panic!("{name}: {e}"));
        }
    }
}
