//! Rows of the database as structs.

/// A struct whose fields come each from the column of its name. sqlx derives the same, but its derive brings a second
/// SQLite into the build.
macro_rules! row {
    ($(#[$about:meta])* $vis:vis struct $name:ident { $($of:vis $field:ident: $type:ty),* $(,)? }) => {
        $(#[$about])*
        $vis struct $name { $($of $field: $type),* }

        impl<'r> sqlx::FromRow<'r, sqlx::sqlite::SqliteRow> for $name {
            fn from_row(row: &'r sqlx::sqlite::SqliteRow) -> sqlx::Result<Self> {
                use sqlx::Row as _;
                Ok(Self { $($field: row.try_get(stringify!($field))?),* })
            }
        }
    };
}
pub(crate) use row;
