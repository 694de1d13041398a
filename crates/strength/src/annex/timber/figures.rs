//! The figures of a file as one list.

use crate::annex::Figure;

/// A figure with its name in the file, e.g. `kmod.two.short`.
#[derive(Clone, Debug, PartialEq)]
pub struct NamedFigure {
    /// Keys of the file, joined by dots.
    pub name: String,
    /// Value, source and standing.
    pub figure: Figure,
}

/// All figures at any depth of a table, in the order of their names.
pub(super) fn within(table: &toml::Table) -> Vec<NamedFigure> {
    let mut found = Vec::new();
    gather("", table, &mut found);
    found.sort_by(|a, b| a.name.cmp(&b.name));
    found
}

fn gather(above: &str, table: &toml::Table, found: &mut Vec<NamedFigure>) {
    for (key, value) in table {
        let toml::Value::Table(inner) = value else { continue };
        let name = if above.is_empty() { key.clone() } else { format!("{above}.{key}") };
        match value.clone().try_into::<Figure>() {
            Ok(figure) => found.push(NamedFigure { name, figure }),
            Err(_) => gather(&name, inner, found),
        }
    }
}
