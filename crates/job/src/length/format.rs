//! Writes a length.

use super::{MM_PER_INCH, SIXTEENTHS_PER_INCH};
use crate::LengthUnit;

/// Writes a length, given in millimetres, with its unit.
///
/// Millimetres come with one decimal only when it is not zero (`8400 mm`,
/// `47.5 mm`); feet and inches to the nearest sixteenth (`27' 6 1/2"`).
///
/// ```
/// use job::{LengthUnit, format_length};
/// assert_eq!(format_length(8400.04, LengthUnit::Millimetres), "8400 mm");
/// assert_eq!(format_length(8394.7, LengthUnit::FeetInches), "27' 6 1/2\"");
/// ```
#[must_use]
pub fn format_length(mm: f64, unit: LengthUnit) -> String {
    match unit {
        LengthUnit::Millimetres => format!("{} mm", format_length_bare(mm, unit)),
        LengthUnit::FeetInches => format_length_bare(mm, unit),
    }
}

/// As [`format_length`], but leaves out the `mm`: for drawings and for tables
/// that name the unit once.
#[must_use]
pub fn format_length_bare(mm: f64, unit: LengthUnit) -> String {
    match unit {
        LengthUnit::Millimetres => millimetres(mm),
        LengthUnit::FeetInches => feet_inches(mm),
    }
}

fn millimetres(mm: f64) -> String {
    let text = format!("{mm:.1}");
    let text = text.strip_suffix(".0").unwrap_or(&text);
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

fn feet_inches(mm: f64) -> String {
    // A cast from f64 stops at the ends of i64 and turns NaN into 0.
    let sixteenths = (mm / MM_PER_INCH * SIXTEENTHS_PER_INCH as f64).round() as i64;
    let sign = if sixteenths < 0 { "-" } else { "" };
    let sixteenths = sixteenths.unsigned_abs();
    let (feet, sixteenths) = (sixteenths / (12 * SIXTEENTHS_PER_INCH), sixteenths % (12 * SIXTEENTHS_PER_INCH));
    let (inches, part) = (sixteenths / SIXTEENTHS_PER_INCH, sixteenths % SIXTEENTHS_PER_INCH);
    let inches = match part {
        0 => format!("{inches}\""),
        _ => {
            let twos = part.trailing_zeros();
            let fraction = format!("{}/{}\"", part >> twos, SIXTEENTHS_PER_INCH >> twos);
            if inches == 0 { fraction } else { format!("{inches} {fraction}") }
        }
    };
    if feet == 0 { format!("{sign}{inches}") } else { format!("{sign}{feet}' {inches}") }
}
