//! Reads a price list.

use super::cell::{is_item, per, price, size};
use super::columns::{Column, columns, parting, shown};
use super::date::is_date;
use super::fault::{PriceListFault, PriceListFaults};
use super::nearest::nearest;
use super::row::{PriceRow, TimberRow, class_of};
use super::said_twice::{said_twice, without_repeats};
use job::{Per, StrengthClass};

/// Largest list, bytes: a merchant's whole list takes some 100 kB, and a larger file is something else.
pub const LARGEST_LIST: usize = 1 << 20;

/// Most lines of a list: what is bought for a roof is a small part of it.
pub const MOST_ROWS: usize = 5000;

/// Words of timber in the column `what`.
pub(super) const TIMBER: &str = "timber";
/// Timber that is long and clean.
pub(super) const CLEAN: &str = "clean-timber";

/// Reads a price list; see [`prices`](super) for what it looks like. Lines that say the same thing again are one.
///
/// ```
/// let list = "what;thickness_mm;depth_mm;length_mm;class;price;per;dated\n\
///             timber;47;150;4800;C24;15,36;each;2026-11-02\n\
///             nails-100x4;;;;;4,10;kg;\n";
/// let rows = order::prices::read_csv(list.as_bytes())?;
/// let text = order::prices::put_into(&job::defaults_toml(), &rows)?;
/// let job = job::read(&text)?;
/// assert!(job.prices.iter().any(|price| price.item == "nails-100x4" && price.price == 4.1));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// Everything that is wrong with it, each with its line and what to do.
pub fn read_csv(text: &[u8]) -> Result<Vec<PriceRow>, PriceListFaults> {
    let text = text_of(text).map_err(PriceListFaults::one)?;
    let parting = parting(text);
    let mut reader = csv::ReaderBuilder::new()
        .delimiter(parting)
        .has_headers(false)
        .flexible(true)
        .trim(csv::Trim::All)
        .from_reader(text.as_bytes());
    let mut counted = Lines::of(text);
    let mut head: Option<Vec<Option<Column>>> = None;
    let (mut rows, mut faults, mut lines) = (Vec::new(), Vec::new(), 0_usize);
    for record in reader.records() {
        let Ok(record) = record else { continue };
        if record.iter().all(str::is_empty) {
            continue;
        }
        let line = counted.line_at(record.position().map_or(0, csv::Position::byte));
        let Some(head) = &head else {
            let (found, wrong) = columns(&record, line);
            faults.extend(wrong);
            // Without its columns nothing more can be said of a list.
            if found.iter().all(Option::is_none) {
                break;
            }
            head = Some(found);
            continue;
        };
        lines += 1;
        if lines > MOST_ROWS {
            faults.push(PriceListFault::new(
                line,
                "list-too-large",
                format!("There are more than {MOST_ROWS} prices"),
                "A roof is bought from far fewer, and reading them would only make you wait",
                "Take out what no roof is made of",
            ));
            break;
        }
        rows.extend(row(&record, head, line, parting != b',', &mut faults));
    }
    if faults.is_empty() && lines == 0 {
        faults.push(empty());
    }
    faults.extend(said_twice(&rows));
    match PriceListFaults::of(faults) {
        Some(faults) => Err(faults),
        None => Ok(without_repeats(rows)),
    }
}

/// Counts lines, however they end: records start behind the mark that ended the last, or within it.
struct Lines<'t> {
    bytes: &'t [u8],
    at: usize,
    line: u32,
}

impl<'t> Lines<'t> {
    const fn of(text: &'t str) -> Self {
        Self { bytes: text.as_bytes(), at: 0, line: 1 }
    }

    /// The line, from 1, of the record that starts at a byte or behind the ends of lines there.
    fn line_at(&mut self, start: u64) -> u32 {
        let start = usize::try_from(start).unwrap_or(usize::MAX);
        while let Some(byte) = self.bytes.get(self.at) {
            if self.at >= start && !matches!(byte, b'\r' | b'\n') {
                break;
            }
            let before_feed = *byte == b'\r' && self.bytes.get(self.at + 1) == Some(&b'\n');
            if matches!(byte, b'\r' | b'\n') && !before_feed {
                self.line = self.line.saturating_add(1);
            }
            self.at += 1;
        }
        self.line
    }
}

fn empty() -> PriceListFault {
    PriceListFault::new(
        0,
        "list-empty",
        "There are no prices in the list",
        "Nothing would be changed by it",
        "Write a line of column names, and a line for each price below it",
    )
}

/// The bytes as text.
fn text_of(bytes: &[u8]) -> Result<&str, PriceListFault> {
    if bytes.len() > LARGEST_LIST {
        return Err(PriceListFault::new(
            0,
            "list-too-large",
            format!("The list has {} kB, more than {}", bytes.len() / 1024, LARGEST_LIST / 1024),
            "A price list is far smaller, so this is most likely another file",
            "Choose the list, or take out what no roof is made of",
        ));
    }
    let text = std::str::from_utf8(bytes).ok().filter(|text| !text.contains('\0'));
    let Some(text) = text else {
        let upto = std::str::from_utf8(bytes).map_or_else(|e| e.valid_up_to(), |_| 0);
        let line = bytes.iter().take(upto).filter(|byte| **byte == b'\n').count() + 1;
        return Err(PriceListFault::new(
            u32::try_from(line).unwrap_or(u32::MAX),
            "not-text",
            "The list is not plain text",
            "A workbook, or letters written in an older way, cannot be told from noise",
            "Save it from the spreadsheet as CSV in UTF-8",
        ));
    };
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    if text.trim().is_empty() { Err(empty()) } else { Ok(text) }
}

/// A line of prices; `None` after a fault.
fn row(
    record: &csv::StringRecord,
    head: &[Option<Column>],
    line: u32,
    comma: bool,
    faults: &mut Vec<PriceListFault>,
) -> Option<PriceRow> {
    let before = faults.len();
    let beyond = record.iter().skip(head.len()).any(|cell| !cell.is_empty());
    if beyond {
        faults.push(PriceListFault::new(
            line,
            "line-length",
            format!("There are {} cells under {} columns", record.len(), head.len()),
            "What stands in which column cannot be told",
            if comma {
                "Look for a mark too many"
            } else {
                "Look for a decimal comma: write a point, or part the cells with semicolons"
            },
        ));
        return None;
    }
    let cell = |column: Column| {
        let place = head.iter().position(|c| *c == Some(column));
        place.and_then(|place| record.get(place)).unwrap_or("")
    };
    // What a missing column leaves open was told once.
    let has = |column: Column| head.contains(&Some(column));
    let price = if has(Column::Price) { price(cell(Column::Price), comma, line, faults) } else { None };
    let per = if has(Column::Per) { per(cell(Column::Per), line, faults) } else { None };
    let dated = dated(cell(Column::Dated), line, faults);
    let what = cell(Column::What);
    let plain = what.to_lowercase().replace(' ', "-");
    let is_timber = plain == TIMBER || plain == CLEAN;
    let timber = if is_timber {
        let timber = timber(&cell, plain == CLEAN, comma, line, faults);
        if let (Some(timber), Some(price), Some(per)) = (&timber, price, per) {
            faults.extend(unfit(timber, price, per, line));
        }
        timber
    } else {
        if has(Column::What) {
            item(what, &cell, line, faults);
        }
        None
    };
    if faults.len() > before {
        return None;
    }
    let item = if is_timber { String::new() } else { what.to_owned() };
    Some(PriceRow { line, item, timber, price: price?, per: per?, dated })
}

fn dated(text: &str, line: u32, faults: &mut Vec<PriceListFault>) -> Option<String> {
    if text.is_empty() || is_date(text) {
        return (!text.is_empty()).then(|| text.to_owned());
    }
    faults.push(PriceListFault::new(
        line,
        "bad-date",
        format!("The date `{}` cannot be read", shown(text)),
        "Day and month are written either way round in different countries",
        "Write year, month, day, as in 2026-11-02",
    ));
    None
}

/// What is wrong with an item that is not timber.
fn item<'c>(what: &str, cell: &impl Fn(Column) -> &'c str, line: u32, faults: &mut Vec<PriceListFault>) {
    if what.is_empty() {
        faults.push(PriceListFault::new(
            line,
            "what-missing",
            "The column `what` is empty",
            "A price must be of something",
            "Write timber, or the word of an item of the order",
        ));
    } else if !is_item(what) {
        faults.push(PriceListFault::new(
            line,
            "bad-item",
            format!("`{}` is not the word of an item", shown(what)),
            "Words of items have letters, digits, dashes and underscores, and stand in the order",
            nearest(what, [TIMBER, CLEAN]).map_or_else(
                || "Write the word that the order has for it, such as nails-100x4".to_owned(),
                |near| format!("Did you mean `{near}`? Otherwise write the word that the order has for it"),
            ),
        ));
    }
    let sized = [Column::Thickness, Column::Depth, Column::Length, Column::Class];
    if let Some(column) = sized.into_iter().find(|column| !cell(*column).is_empty()) {
        faults.push(PriceListFault::new(
            line,
            "sizes-of-no-timber",
            format!("`{}` has something in the column {}", shown(what), column.name()),
            "Only timber has sizes here: those of an item are in its word",
            "Leave it empty, or write timber for what",
        ));
    }
}

/// The timber of a line; `None` after a fault.
fn timber<'c>(
    cell: &impl Fn(Column) -> &'c str,
    clean: bool,
    comma: bool,
    line: u32,
    faults: &mut Vec<PriceListFault>,
) -> Option<TimberRow> {
    let mut read = |column: Column| size(cell(column), column, comma, line, faults);
    let (thickness, depth) = (read(Column::Thickness), read(Column::Depth));
    let length = read(Column::Length);
    let class = class(cell(Column::Class), line, faults);
    let sides = match (thickness, depth) {
        (Ok(Some(a)), Ok(Some(b))) => Some([a.min(b), a.max(b)]),
        (Ok(a), Ok(b)) => {
            let missing = if a.is_none() && b.is_some() { Column::Thickness } else { Column::Depth };
            let both = if a.is_none() && b.is_none() {
                "neither thickness nor depth".to_owned()
            } else {
                format!("no {}", missing.name())
            };
            faults.push(PriceListFault::new(
                line,
                "timber-size",
                format!("The timber has {both}"),
                "It cannot be told which timber of the roof it is for",
                "Write both sides of its section in millimetres",
            ));
            None
        }
        _ => None,
    };
    let [thickness_mm, depth_mm] = sides?;
    Some(TimberRow { thickness_mm, depth_mm, length_mm: length.ok()?, class: class.ok()?, clean })
}

fn class(text: &str, line: u32, faults: &mut Vec<PriceListFault>) -> Result<Option<StrengthClass>, ()> {
    if text.is_empty() {
        return Ok(None);
    }
    if let Some(class) = class_of(text) {
        return Ok(Some(class));
    }
    let near = nearest(text, StrengthClass::ALL.iter().map(|(name, _)| *name));
    faults.push(PriceListFault::new(
        line,
        "bad-class",
        format!("`{}` is not a strength class", shown(text)),
        "Timber of another class is not what was reckoned with",
        near.map_or_else(
            || "Write it as it is stamped, such as C16 or C24".to_owned(),
            |near| format!("Did you mean {near}?"),
        ),
    ));
    Err(())
}

/// A unit that timber does not go by.
fn unfit(timber: &TimberRow, price: f64, per: Per, line: u32) -> Option<PriceListFault> {
    let fault = |what: String, remedy: String| {
        PriceListFault::new(line, "timber-unit", what, "Timber goes each length, or by the metre", remedy)
    };
    match (per, timber.length_mm) {
        (Per::Metre, _) | (Per::Each, Some(_)) => None,
        (Per::Each, None) => Some(fault(
            format!("{} is priced each, but has no length", timber.words()),
            "Write its length in the column length_mm, or m for per".to_owned(),
        )),
        (Per::CubicMetre, _) => {
            // 1 m of it is thickness × depth / 10⁶ of a m³.
            let metre = price * timber.thickness_mm * timber.depth_mm / 1e6;
            Some(fault(
                format!("{} is priced by the m3", timber.words()),
                format!("{price} a m3 is {:.4} a metre of it: write that, and m for per", metre),
            ))
        }
        (other, _) => Some(fault(
            format!("{} is priced per {}", timber.words(), other.word()),
            "Ask for a price of a metre or of each length".to_owned(),
        )),
    }
}
