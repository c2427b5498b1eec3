//! The recipes that come with the program, by name.

use crate::recipe::Recipe;

macro_rules! recipes {
    ($($name:literal),+ $(,)?) => {
        /// Name and text of every recipe.
        pub const ALL: &[(&str, &str)] = &[$(($name, include_str!(concat!("../recipes/", $name, ".toml")))),+];
    };
}

recipes!("door");

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
