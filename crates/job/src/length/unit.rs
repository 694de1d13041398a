//! Units of length that may be written.

/// A unit of length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Unit {
    Metre,
    Centimetre,
    Millimetre,
    Foot,
    Inch,
}

impl Unit {
    /// The unit of a sign or word.
    pub(super) fn from_word(word: &str) -> Option<Self> {
        match word.to_lowercase().as_str() {
            "m" | "metre" | "metres" => Some(Self::Metre),
            "cm" | "centimetre" | "centimetres" => Some(Self::Centimetre),
            "mm" | "millimetre" | "millimetres" => Some(Self::Millimetre),
            "'" | "ft" | "foot" | "feet" => Some(Self::Foot),
            "\"" | "''" | "in" | "ins" | "inch" | "inches" => Some(Self::Inch),
            _ => None,
        }
    }

    /// Millimetres in one of it, exact by definition.
    pub(super) fn millimetres(self) -> f64 {
        match self {
            Self::Metre => 1000.0,
            Self::Centimetre => 10.0,
            Self::Millimetre => 1.0,
            Self::Foot => super::MM_PER_FOOT,
            Self::Inch => super::MM_PER_INCH,
        }
    }

    /// Feet or inches.
    pub(super) fn is_imperial(self) -> bool {
        matches!(self, Self::Foot | Self::Inch)
    }

    /// Whether it may be written straight after another: the same system, and
    /// smaller.
    pub(super) fn may_follow(self, other: Self) -> bool {
        self.is_imperial() == other.is_imperial() && self.millimetres() < other.millimetres()
    }
}
