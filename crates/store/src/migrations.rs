//! The tables and every change of them, in order. One that shipped is never edited: the record knows its checksum.

use sqlx::SqlSafeStr;
use sqlx::migrate::{Migration, MigrationType, Migrator};
use std::borrow::Cow;

macro_rules! migrations {
    ($($number:literal $name:literal),+ $(,)?) => {
        [$(($number, $name, include_str!(concat!("../migrations/", $number, "_", $name, ".sql")))),+]
    };
}

/// All of them.
pub(crate) fn migrations() -> Migrator {
    let all = migrations![
        "0001" "record",
        "0002" "camera",
        "0005" "pricing",
        "0006" "papers",
        "0007" "metal",
        "0008" "day",
        "0009" "take_in",
        "0011" "rehearsal",
        "0012" "work",
        "0013" "gauge",
    ];
    let one = |(number, name, text): (&str, &'static str, &'static str)| {
        let number = number.parse().expect("four digits");
        Migration::new(number, Cow::Borrowed(name), MigrationType::Simple, text.into_sql_str(), false)
    };
    Migrator::with_migrations(all.into_iter().map(one).collect())
}

#[cfg(test)]
mod tests {
    #[test]
    fn every_file_is_listed() {
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/migrations");
        let files = std::fs::read_dir(folder).unwrap().count();
        assert_eq!(super::migrations().iter().count(), files);
    }
}
