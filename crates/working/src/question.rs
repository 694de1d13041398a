//! Which figure is asked about.

use crate::WhyError;
use core::fmt;
use core::str::FromStr;

/// Which figure of a timber or of the roof.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Figure {
    /// True length on the pitch line.
    TrueLength,
    /// Long point to long point along the top edge.
    CutLength,
    /// The shortest timber that yields the piece.
    Stock,
    /// Slope from level.
    Pitch,
    /// Of a cut, on the wide side.
    Face,
    /// Of a cut, on the top edge.
    Edge,
    /// Mitre scale of the saw for a cut.
    Mitre,
    /// Tilt of the blade for a cut.
    Tilt,
    /// Length of a birdsmouth's seat.
    Seat,
    /// Height of a birdsmouth's plumb cut.
    Heel,
    /// Depth of a birdsmouth.
    Notch,
    /// Plumb height left above the plate: of a timber, or of the roof.
    Upstand,
    /// Backing of a hip: 0 on its left, 1 on its right.
    Backing,
    /// How far a dropped hip is lowered.
    Drop,
    /// A deduction from the true length.
    Less,
    /// A mark to pull with the tape.
    Tape,
    /// Highest point of the roof above the plates.
    Rise,
    /// Height of a ridge above the plates.
    Ridge,
    /// Pitch of a wall's slope.
    WallPitch,
    /// Overhang of a wall.
    Overhang,
    /// By how much the measured plan fails to close.
    Closing,
    /// Volume of all timber.
    Volume,
}

/// Every figure with its key, whether it is asked of something, and whether
/// that has several of it.
const KEYS: &[(Figure, &str, bool, bool)] = &[
    (Figure::TrueLength, "true-length", true, false),
    (Figure::CutLength, "cut-length", true, false),
    (Figure::Stock, "stock", true, false),
    (Figure::Pitch, "pitch", true, false),
    (Figure::Face, "face", true, true),
    (Figure::Edge, "edge", true, true),
    (Figure::Mitre, "mitre", true, true),
    (Figure::Tilt, "tilt", true, true),
    (Figure::Seat, "seat", true, false),
    (Figure::Heel, "heel", true, false),
    (Figure::Notch, "notch", true, false),
    (Figure::Upstand, "upstand", true, false),
    (Figure::Upstand, "upstand", false, false),
    (Figure::Backing, "backing", true, true),
    (Figure::Drop, "drop", true, false),
    (Figure::Less, "less", true, true),
    (Figure::Tape, "tape", true, true),
    (Figure::Rise, "rise", false, false),
    (Figure::Ridge, "ridge", true, false),
    (Figure::WallPitch, "wall-pitch", true, false),
    (Figure::Overhang, "overhang", true, false),
    (Figure::Closing, "closing", false, false),
    (Figure::Volume, "volume", false, false),
];

/// A figure that can be asked about. As text: `true-length J3`, `face J3 2`
/// (the number of the cut), `less J3 0` (of the deduction), `tape J3 1` (of the
/// mark), `backing H1 0`, `wall-pitch B`, `rise`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Question {
    /// Which figure.
    pub figure: Figure,
    /// Of what: a timber's mark or a wall's letter; empty for the roof's own.
    pub of: String,
    /// Which of several.
    pub number: usize,
}

impl Question {
    /// A figure of the roof.
    #[must_use]
    pub const fn roof(figure: Figure) -> Self {
        Self { figure, of: String::new(), number: 0 }
    }

    /// The one figure of this kind that a timber or wall has.
    #[must_use]
    pub fn of(figure: Figure, of: &str) -> Self {
        Self { figure, of: of.to_owned(), number: 0 }
    }

    /// One of several.
    #[must_use]
    pub fn nth(figure: Figure, of: &str, number: usize) -> Self {
        Self { figure, of: of.to_owned(), number }
    }
}

impl FromStr for Question {
    type Err = WhyError;

    fn from_str(text: &str) -> Result<Self, WhyError> {
        let unknown = || WhyError::NoFigure(text.to_owned());
        let words: Vec<&str> = text.split_whitespace().collect();
        let (of, number) = match words[..] {
            [_] => (None, None),
            [_, of] => (Some(of), None),
            [_, of, number] => (Some(of), Some(number.parse::<usize>().map_err(|_| unknown())?)),
            _ => return Err(unknown()),
        };
        KEYS.iter()
            .find(|(_, key, has_of, several)| {
                words.first() == Some(key) && *has_of == of.is_some() && *several == number.is_some()
            })
            .map(|(figure, ..)| Self {
                figure: *figure,
                of: of.unwrap_or_default().to_owned(),
                number: number.unwrap_or_default(),
            })
            .ok_or_else(unknown)
    }
}

impl fmt::Display for Question {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let own = !self.of.is_empty();
        let Some((_, key, _, several)) = KEYS.iter().find(|(figure, _, of, _)| *figure == self.figure && *of == own)
        else {
            return Ok(());
        };
        f.write_str(key)?;
        if own {
            write!(f, " {}", self.of)?;
        }
        if *several {
            write!(f, " {}", self.number)?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_key_is_read_as_it_is_written() {
        for text in ["true-length J3", "face J3 2", "backing H1 1", "upstand", "upstand J3", "rise", "wall-pitch B"] {
            assert_eq!(text.parse::<Question>().map(|q| q.to_string()), Ok(text.to_owned()));
        }
    }

    #[test]
    fn what_is_no_key_is_refused() {
        for text in ["", "face J3", "face J3 x", "true-length", "rise A", "width J3", "face J3 2 4"] {
            assert_eq!(text.parse::<Question>(), Err(WhyError::NoFigure(text.to_owned())));
        }
    }
}
