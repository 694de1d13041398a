//! How figures are written for people to read, on sheets and on screens:
//! lengths in mm or in feet and inches, angles, areas and volumes.

/// Lengths on sheets are rounded to this, mm: a pencil line on timber.
const MM_STEP: f64 = 0.5;
/// Millimetres in an inch, exactly.
const MM_PER_INCH: f64 = 25.4;
/// Parts of an inch on the sheets: a joiner's rule.
const INCH_PARTS: i64 = 16;
/// Lengths past this are not written, mm: no timber, and beyond it whole
/// sixteenths no longer fit an integer with room to spare.
const LONGEST: f64 = 1e9;
/// What is written for a figure that is not a number.
const NO_FIGURE: &str = "–";

/// How a job wants its lengths.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lengths {
    /// Millimetres to the nearest half.
    Millimetres,
    /// Feet and inches to the nearest sixteenth.
    FeetInches,
}

impl Lengths {
    /// From the `show` of a solution; anything but `feet-inches` is mm.
    #[must_use]
    pub fn from_show(show: &str) -> Self {
        if show == "feet-inches" { Self::FeetInches } else { Self::Millimetres }
    }

    /// A length without its unit, as written beside a drawing.
    #[must_use]
    pub fn write(self, mm: f64) -> String {
        if !mm.is_finite() || mm.abs() > LONGEST {
            return NO_FIGURE.to_owned();
        }
        match self {
            Self::Millimetres => halves(mm),
            Self::FeetInches => feet_inches(mm),
        }
    }

    /// A length with its unit, as written in a sentence.
    #[must_use]
    pub fn write_with_unit(self, mm: f64) -> String {
        let figure = self.write(mm);
        if self == Self::Millimetres && figure != NO_FIGURE { format!("{figure} mm") } else { figure }
    }

    /// A section: thickness by depth.
    #[must_use]
    pub fn section(self, thickness_mm: f64, depth_mm: f64) -> String {
        format!("{} × {}", self.write(thickness_mm), self.write(depth_mm))
    }

    /// What the sheet says about its lengths.
    #[must_use]
    pub const fn rounding(self) -> &'static str {
        match self {
            Self::Millimetres => "Lengths in mm, to the nearest 0.5",
            Self::FeetInches => "Lengths in feet and inches, to the nearest 1/16",
        }
    }

    /// A total of lengths, in m or in feet.
    #[must_use]
    pub fn total(self, mm: f64) -> String {
        if !mm.is_finite() {
            return NO_FIGURE.to_owned();
        }
        match self {
            Self::Millimetres => format!("{:.1} m", mm / 1000.0),
            Self::FeetInches => format!("{:.0} ft", mm / (12.0 * MM_PER_INCH)),
        }
    }
}

fn halves(mm: f64) -> String {
    let rounded = (mm / MM_STEP).round() * MM_STEP;
    // Adding zero turns -0 into 0.
    let rounded = rounded + 0.0;
    if rounded.fract() == 0.0 { format!("{rounded:.0}") } else { format!("{rounded:.1}") }
}

fn feet_inches(mm: f64) -> String {
    let sixteenths = (mm / MM_PER_INCH * INCH_PARTS as f64).round() as i64;
    let sign = if sixteenths < 0 { "-" } else { "" };
    let sixteenths = sixteenths.abs();
    let feet = sixteenths / (12 * INCH_PARTS);
    let inches = sixteenths / INCH_PARTS % 12;
    let (mut top, mut bottom) = (sixteenths % INCH_PARTS, INCH_PARTS);
    while top != 0 && top % 2 == 0 {
        top /= 2;
        bottom /= 2;
    }
    let fraction = if top == 0 { String::new() } else { format!("{top}/{bottom}") };
    let inches = match (inches, fraction.is_empty()) {
        (0, false) => format!("{fraction}\""),
        (_, false) => format!("{inches} {fraction}\""),
        (_, true) => format!("{inches}\""),
    };
    if feet == 0 { format!("{sign}{inches}") } else { format!("{sign}{feet}' {inches}") }
}

/// An angle in degrees to a tenth: a bevel set by eye against a protractor.
#[must_use]
pub fn degrees(deg: f64) -> String {
    if deg.is_finite() { format!("{}°", tenth(deg)) } else { NO_FIGURE.to_owned() }
}

/// A figure to one decimal, whole figures without it.
#[must_use]
pub fn tenth(value: f64) -> String {
    if !value.is_finite() {
        return NO_FIGURE.to_owned();
    }
    let text = format!("{:.1}", (value * 10.0).round() / 10.0 + 0.0);
    text.strip_suffix(".0").map_or(text.clone(), str::to_owned)
}

/// A figure to a fixed number of decimals.
#[must_use]
pub fn fixed(value: f64, decimals: usize) -> String {
    if value.is_finite() { format!("{value:.decimals$}") } else { NO_FIGURE.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn millimetres_are_written_to_the_nearest_half() {
        let mm = Lengths::Millimetres;
        assert_eq!(mm.write(3393.9), "3394");
        assert_eq!(mm.write(3394.3), "3394.5");
        assert_eq!(mm.write(-0.1), "0");
        assert_eq!(mm.write(f64::NAN), "–");
        assert_eq!(mm.write_with_unit(47.0), "47 mm");
    }

    #[test]
    fn feet_and_inches_are_written_to_the_nearest_sixteenth() {
        let ft = Lengths::FeetInches;
        assert_eq!(ft.write(304.8), "1' 0\"");
        assert_eq!(ft.write(25.4 * 64.0 + 25.4 * 3.0 / 16.0), "5' 4 3/16\"");
        assert_eq!(ft.write(25.4 / 2.0), "1/2\"");
        // Rounds up over a whole foot rather than writing 16/16 or 12".
        assert_eq!(ft.write(304.79), "1' 0\"");
        assert_eq!(ft.write(-25.4), "-1\"");
        assert_eq!(ft.write(f64::INFINITY), "–");
    }

    #[test]
    fn angles_keep_one_decimal_only_when_it_says_something() {
        assert_eq!(degrees(40.0), "40°");
        assert_eq!(degrees(30.679), "30.7°");
        assert_eq!(degrees(f64::NAN), "–");
    }
}
