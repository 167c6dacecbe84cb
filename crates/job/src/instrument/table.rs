//! What there is to choose from, side by side.

/// Things side by side.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Table {
    /// What stands above each column; the first names the things.
    pub heads: [&'static str; 3],
    /// The things.
    pub rows: Vec<TableRow>,
}

/// One of the things of a [`Table`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TableRow {
    /// Its name.
    pub name: String,
    /// What more to know of it.
    pub note: String,
    /// Its figures, one a column.
    pub cells: [String; 2],
}
