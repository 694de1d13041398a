//! Cells of a price list.

use super::columns::{Column, shown};
use super::fault::PriceListFault;
use super::nearest::nearest;
use job::{LONGEST_TEXT, Limits, PRICE, Per, SECTION, STOCK_LENGTH};

/// A side under this could be metres: thicknesses and depths of timber.
const LARGEST_IN_METRES: f64 = 0.5;
/// A length up to this could be metres, over it centimetres.
const LONGEST_IN_METRES: f64 = 20.0;

/// A number, with a decimal comma where commas do not part cells.
fn number(text: &str, comma: bool) -> Option<f64> {
    let plain = |c: char| c.is_ascii_digit() || c == '.' || c == '-' || c == '+' || (comma && c == ',');
    if !text.chars().all(plain) || (text.contains(',') && text.contains('.')) {
        return None;
    }
    text.replace(',', ".").parse::<f64>().ok().filter(|value| value.is_finite())
}

/// Whether a text is figures with one comma before the last three of them: `1,150`.
fn is_in_threes(text: &str) -> bool {
    let digits = |part: &str, most: usize| {
        !part.is_empty() && part.len() <= most && part.bytes().all(|byte| byte.is_ascii_digit())
    };
    text.split_once(',').is_some_and(|(whole, rest)| digits(whole, 3) && rest.len() == 3 && digits(rest, 3))
}

/// A price; `None` with a fault.
pub(super) fn price(text: &str, comma: bool, line: u32, faults: &mut Vec<PriceListFault>) -> Option<f64> {
    if text.is_empty() {
        faults.push(PriceListFault::new(
            line,
            "price-missing",
            "There is no price",
            "Nothing can be summed without it",
            "Write the price, or take the line out until it is known",
        ));
        return None;
    }
    if comma && is_in_threes(text) {
        faults.push(PriceListFault::new(
            line,
            "bad-number",
            format!("The price `{}` can be read in two ways", shown(text)),
            "A comma before three figures parts thousands to one reader and decimals to another",
            format!("Write {} or {}", text.replace(',', ""), text.replace(',', ".")),
        ));
        return None;
    }
    let Some(value) = number(text, comma) else {
        faults.push(PriceListFault::new(
            line,
            "bad-number",
            format!("The price `{}` cannot be read", shown(text)),
            "A price is one number, without a currency, a unit or marks between thousands",
            if comma { "Write it as in 1234,50 or 1234.50" } else { "Write it as in 1234.50" },
        ));
        return None;
    };
    let Limits { least, most, .. } = PRICE;
    if value <= 0.0 {
        faults.push(PriceListFault::new(
            line,
            "price-not-positive",
            format!("The price is {value}"),
            "A price is more than nothing: what is in the yard belongs in the job, and a discount in the prices it is of",
            "Write what is paid, or take the line out",
        ));
        return None;
    }
    if !(least..=most).contains(&value) {
        faults.push(PriceListFault::new(
            line,
            "out-of-range",
            format!("The price {value} is outside {least} to {most}"),
            "It is most likely a slip of the point or of the unit",
            "Look at it again, and at what it is a price of",
        ));
        return None;
    }
    Some(value)
}

/// A size of timber, mm. `Ok(None)` when nothing is written; `Err` after a fault.
pub(super) fn size(
    text: &str,
    column: Column,
    comma: bool,
    line: u32,
    faults: &mut Vec<PriceListFault>,
) -> Result<Option<f64>, ()> {
    if text.is_empty() {
        return Ok(None);
    }
    let name = column.name();
    let Some(value) = number(text, comma) else {
        faults.push(PriceListFault::new(
            line,
            "bad-number",
            format!("`{}` in the column {name} cannot be read", shown(text)),
            "Sizes are numbers of millimetres, without a unit",
            "Write it as in 4800",
        ));
        return Err(());
    };
    let Limits { least, most, .. } = if column == Column::Length { STOCK_LENGTH } else { SECTION };
    if (least..=most).contains(&value) {
        return Ok(Some(value));
    }
    let fault = |code: &str, why: &str, remedy: String| {
        PriceListFault::new(
            line,
            code,
            format!("{value} in the column {name} is outside {least} to {most} mm"),
            why,
            remedy,
        )
    };
    let mixed = "The column is in millimetres, and units mixed in it would be bought wrong";
    faults.push(if column == Column::Length && value > 0.0 && value <= LONGEST_IN_METRES {
        fault("units-mixed", mixed, format!("Is this metres? Then write {}", tenths(value * 1000.0)))
    } else if column == Column::Length && value > 0.0 && value < least {
        fault("units-mixed", mixed, "Is this feet or centimetres? Write it in millimetres".to_owned())
    } else if column != Column::Length && value > 0.0 && value < LARGEST_IN_METRES {
        fault("units-mixed", mixed, format!("Is this metres? Then write {}", tenths(value * 1000.0)))
    } else if column != Column::Length && value > 0.0 && value < least {
        fault(
            "units-mixed",
            mixed,
            format!(
                "Is this inches or centimetres? Two inches are 50 or 47 mm, {value} cm are {} mm",
                tenths(value * 10.0)
            ),
        )
    } else {
        fault("out-of-range", "No timber of it is sold", "Look at it again".to_owned())
    });
    Err(())
}

/// A number to a tenth.
fn tenths(value: f64) -> f64 {
    (value * 10.0).round() / 10.0
}

/// A unit; `None` with a fault.
pub(super) fn per(text: &str, line: u32, faults: &mut Vec<PriceListFault>) -> Option<Per> {
    let plain = text.to_lowercase().replace('²', "2").replace('³', "3");
    let found = Per::ALL.iter().find(|(word, _)| *word == plain).map(|(_, per)| *per);
    if found.is_none() {
        let words = Per::ALL.iter().map(|(word, _)| *word);
        let all: Vec<&str> = words.clone().collect();
        let remedy = match meant(&plain).or_else(|| nearest(&plain, words)) {
            Some(near) => format!("Did you mean `{near}`? There are: {}", all.join(", ")),
            None => format!("Write one of: {}", all.join(", ")),
        };
        faults.push(PriceListFault::new(
            line,
            "bad-unit",
            if text.is_empty() {
                "There is no unit".to_owned()
            } else {
                format!("The unit `{}` is not known", shown(text))
            },
            "A price without what it is a price of cannot be used",
            remedy,
        ));
    }
    found
}

/// What people write for the units.
fn meant(word: &str) -> Option<&'static str> {
    const OTHERS: [(&str, &str); 14] = [
        ("ea", "each"),
        ("piece", "each"),
        ("length", "each"),
        ("no", "each"),
        ("100", "hundred"),
        ("1000", "thousand"),
        ("metre", "m"),
        ("meter", "m"),
        ("lm", "m"),
        ("sqm", "m2"),
        ("cube", "m3"),
        ("cum", "m3"),
        ("kilo", "kg"),
        ("box", "each"),
    ];
    OTHERS.iter().find(|(other, _)| *other == word).map(|(_, per)| *per)
}

/// Whether a text can be the word of an item: a name in a job.
pub(super) fn is_item(text: &str) -> bool {
    let plain = |byte: u8| byte.is_ascii_alphanumeric() || byte == b'-' || byte == b'_';
    !text.is_empty() && text.len() <= LONGEST_TEXT && text.bytes().all(plain)
}
