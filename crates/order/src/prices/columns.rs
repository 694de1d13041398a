//! Columns of a price list, and what parts them.

use super::fault::PriceListFault;
use super::nearest::nearest;

/// A column.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Column {
    What,
    Thickness,
    Depth,
    Length,
    Class,
    Price,
    Per,
    Dated,
}

impl Column {
    /// Every column with its name, in the order in which they are written.
    pub(super) const ALL: [(Self, &'static str); 8] = [
        (Self::What, "what"),
        (Self::Thickness, "thickness_mm"),
        (Self::Depth, "depth_mm"),
        (Self::Length, "length_mm"),
        (Self::Class, "class"),
        (Self::Price, "price"),
        (Self::Per, "per"),
        (Self::Dated, "dated"),
    ];

    /// Columns that must be there.
    const NEEDED: [Self; 3] = [Self::What, Self::Price, Self::Per];

    pub(super) fn name(self) -> &'static str {
        Self::ALL.iter().find(|(column, _)| *column == self).map_or("", |(_, name)| name)
    }

    fn of(name: &str) -> Option<Self> {
        let plain = name.trim().to_lowercase().replace([' ', '-'], "_");
        Self::ALL.iter().find(|(_, known)| *known == plain).map(|(column, _)| *column)
    }
}

/// What may part cells.
const PARTINGS: [u8; 3] = [b',', b';', b'\t'];

/// What parts the cells of a list: that which makes most known columns of its first line, the comma when nothing does.
pub(super) fn parting(text: &str) -> u8 {
    let first = text.lines().find(|line| !line.trim().is_empty()).unwrap_or("");
    let known = |parting: u8| {
        first.split(char::from(parting)).filter(|cell| Column::of(cell.trim().trim_matches('"')).is_some()).count()
    };
    let mut best = (b',', 0);
    for parting in PARTINGS {
        let cells = first.split(char::from(parting)).count();
        let count = known(parting) * LONGEST_HEAD + cells.min(LONGEST_HEAD - 1);
        if count > best.1 {
            best = (parting, count);
        }
    }
    best.0
}

/// More cells than any head has: a known column counts more than any number of unknown ones.
const LONGEST_HEAD: usize = 1000;

/// The columns of a head, `None` for those that are not known, and what is wrong with them.
pub(super) fn columns(head: &csv::StringRecord, line: u32) -> (Vec<Option<Column>>, Vec<PriceListFault>) {
    let mut faults = Vec::new();
    let found: Vec<Option<Column>> = head.iter().map(Column::of).collect();
    let missing = |column: Column| !found.contains(&Some(column));
    for (place, (name, column)) in head.iter().zip(&found).enumerate() {
        match column {
            Some(column) if found.iter().take(place).any(|other| other == &Some(*column)) => {
                faults.push(PriceListFault::new(
                    line,
                    "column-twice",
                    format!("The column `{}` is there twice", column.name()),
                    "Which of them counts cannot be told",
                    "Take one of them out",
                ));
            }
            None if !name.trim().is_empty() => {
                let free = Column::ALL.iter().filter(|(column, _)| missing(*column)).map(|(_, name)| *name);
                let remedy = nearest(name, free).map_or_else(
                    || format!("Take it out, or use one of: {}", names()),
                    |near| format!("Did you mean `{near}`? Otherwise take it out"),
                );
                faults.push(PriceListFault::new(
                    line,
                    "column-unknown",
                    format!("The column `{}` is not known", shown(name)),
                    "What it says would be passed over in silence",
                    remedy,
                ));
            }
            _ => {}
        }
    }
    for column in Column::NEEDED.into_iter().filter(|column| missing(*column)) {
        let unknown = head.iter().zip(&found).filter(|(_, found)| found.is_none()).map(|(name, _)| name);
        let remedy = nearest(column.name(), unknown).map_or_else(
            || format!("Write a first line with the names of the columns: {}", names()),
            |near| format!("Name it so in the first line, where `{}` may be meant for it", shown(near)),
        );
        faults.push(PriceListFault::new(
            line,
            "column-missing",
            format!("There is no column `{}`", column.name()),
            "No price can be told without it",
            remedy,
        ));
    }
    (found, faults)
}

fn names() -> String {
    Column::ALL.map(|(_, name)| name).join(", ")
}

/// Longest that a cell is quoted in a message, in characters.
const SHOWN: usize = 40;

/// A cell as it is quoted in a message.
pub(super) fn shown(cell: &str) -> String {
    let short: String = cell.chars().filter(|c| !c.is_control()).take(SHOWN).collect();
    if cell.chars().count() > SHOWN { format!("{short}…") } else { short }
}
