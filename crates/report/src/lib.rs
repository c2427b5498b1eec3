//! A job on paper: PDF, human wording, languages.
