//! Texts from the language files, which a translator can edit.

use fluent_bundle::{FluentArgs, FluentBundle, FluentResource};

use crate::{Language, ReportError};

/// Texts of a language: what reports and sheets say, what papers say.
pub(crate) fn texts(language: Language) -> [&'static str; 2] {
    match language {
        Language::En => [include_str!("../lang/en.ftl"), include_str!("../lang/papers.en.ftl")],
        Language::De => [include_str!("../lang/de.ftl"), include_str!("../lang/papers.de.ftl")],
        Language::Fr => [include_str!("../lang/fr.ftl"), include_str!("../lang/papers.fr.ftl")],
        Language::It => [include_str!("../lang/it.ftl"), include_str!("../lang/papers.it.ftl")],
        Language::Es => [include_str!("../lang/es.ftl"), include_str!("../lang/papers.es.ftl")],
        Language::Pl => [include_str!("../lang/pl.ftl"), include_str!("../lang/papers.pl.ftl")],
    }
}

/// The texts of one language.
pub(crate) struct Words {
    bundle: FluentBundle<FluentResource>,
}

impl Words {
    /// Reads a language's files.
    pub(crate) fn new(language: Language) -> Result<Self, ReportError> {
        let tag = language.code();
        let broken = || ReportError::Words(format!("{tag}.ftl"));
        let mut bundle = FluentBundle::new(vec![tag.parse().map_err(|_| broken())?]);
        // Marks around placeables are for mixed writing directions; on paper they would only
        // break words apart for whoever copies the text.
        bundle.set_use_isolating(false);
        for text in texts(language) {
            let resource = FluentResource::try_new(text.to_owned()).map_err(|_| broken())?;
            bundle.add_resource(resource).map_err(|_| broken())?;
        }
        Ok(Self { bundle })
    }

    /// The text of a key.
    pub(crate) fn say(&self, key: &str) -> Result<String, ReportError> {
        self.fill(key, &[])
    }

    /// The text of a key with its places filled.
    pub(crate) fn fill(&self, key: &str, with: &[(&str, &str)]) -> Result<String, ReportError> {
        self.get(key, with).ok_or_else(|| ReportError::Words(key.to_owned()))
    }

    /// The text of a key that may be unknown, such as one made from a code.
    pub(crate) fn find(&self, key: &str) -> Option<String> {
        self.get(key, &[])
    }

    fn get(&self, key: &str, with: &[(&str, &str)]) -> Option<String> {
        let pattern = self.bundle.get_message(key)?.value()?;
        let args: FluentArgs = with.iter().copied().collect();
        let mut errors = Vec::new();
        let text = self.bundle.format_pattern(pattern, Some(&args), &mut errors).into_owned();
        errors.is_empty().then_some(text)
    }
}
