//! Lengths and sizes as typed on the command line and printed on a terminal.

use job::{LengthUnit, Section, format_length, format_length_bare, parse_length, parse_pitch};
use roof::solution::{Size, Solution};

/// Reads a length: a plain number is mm, anything else names its unit.
pub fn length(text: &str) -> Result<f64, String> {
    match text.trim().parse::<f64>() {
        Ok(mm) if mm.is_finite() => Ok(mm),
        Ok(_) => Err(format!("{text} is not a length; write mm such as 5200, or a unit such as \"5.2 m\"")),
        Err(_) => parse_length(text).map_err(|error| error.to_string()),
    }
}

/// Reads a length that must be above zero.
pub fn measure(text: &str) -> Result<f64, String> {
    let mm = length(text)?;
    if mm > 0.0 { Ok(mm) } else { Err(format!("{text} is not above zero; write the size as the tape gives it")) }
}

/// Reads a section: thickness, an x, depth.
pub fn section(text: &str) -> Result<Section, String> {
    let Some((thickness, depth)) = text.split_once(['x', 'X', '×']) else {
        return Err(format!("{text} is not a size; write thickness x depth in mm, such as 47x150"));
    };
    Ok(Section { thickness: measure(thickness)?, depth: measure(depth)? })
}

/// Reads a pitch: a plain number is degrees, anything else as job files write it.
pub fn pitch(text: &str) -> Result<f64, String> {
    match text.trim().parse::<f64>() {
        Ok(degrees) if degrees.is_finite() => Ok(degrees),
        _ => parse_pitch(text).map_err(|error| error.to_string()),
    }
}

/// How a job wants its lengths printed.
#[derive(Clone, Copy, Debug)]
pub struct Show(LengthUnit);

impl Show {
    /// As this solution says.
    pub fn of(solution: &Solution) -> Self {
        Self(if solution.show == "feet-inches" { LengthUnit::FeetInches } else { LengthUnit::Millimetres })
    }

    /// A length with its unit.
    pub fn length(self, mm: f64) -> String {
        format_length(mm, self.0)
    }

    /// Thickness by depth.
    pub fn size(self, size: Size) -> String {
        format!("{} x {}", format_length_bare(size.thickness_mm, self.0), format_length_bare(size.depth_mm, self.0))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_plain_number_is_millimetres() {
        assert_eq!(length("5200"), Ok(5200.0));
        assert_eq!(length("5.2 m"), Ok(5200.0));
        assert_eq!(length("1' 6\""), Ok(457.2));
    }

    #[test]
    fn what_is_no_length_is_refused() {
        for text in ["NaN", "inf", "", "wide", "5,2 m"] {
            assert!(length(text).is_err(), "{text}");
        }
    }

    #[test]
    fn a_pitch_is_degrees_or_rise_in_run() {
        assert_eq!(pitch("37.5"), Ok(37.5));
        assert!((pitch("12 in 12").unwrap() - 45.0).abs() < 1e-9);
        for text in ["NaN", "steep", ""] {
            assert!(pitch(text).is_err(), "{text}");
        }
    }

    #[test]
    fn a_size_is_two_lengths() {
        assert_eq!(section("47x150"), Ok(Section { thickness: 47.0, depth: 150.0 }));
        assert_eq!(section("2\" × 6\""), Ok(Section { thickness: 2.0 * 25.4, depth: 6.0 * 25.4 }));
        assert!(section("47").is_err());
        assert!(section("47x").is_err());
        assert!(section("0x150").is_err());
    }
}
