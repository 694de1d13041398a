//! The bundled typeface: its data, and how wide a text is.

use std::sync::LazyLock;
use ttf_parser::{Face, GlyphId};

/// DejaVu Sans: has the fractions, degree sign and arrows that sheets use.
pub const REGULAR: &[u8] = include_bytes!("../fonts/DejaVuSans.ttf");
/// Its bold.
pub const BOLD: &[u8] = include_bytes!("../fonts/DejaVuSans-Bold.ttf");

/// Millimetres in a printer's point.
pub const MM_PER_POINT: f64 = 25.4 / 72.0;
/// Nothing on a sheet is smaller, pt: the least that is read at arm's length.
pub const SMALLEST_PT: f64 = 8.0;
/// Height of capitals and figures over the type size.
pub const CAP_HEIGHT: f64 = 0.73;
/// Depth below the line over the type size.
pub const DESCENT: f64 = 0.21;
/// Advance assumed for a glyph that the font does not measure, in ems.
const UNKNOWN_ADVANCE: f64 = 0.6;
/// Line spacing over the type size.
const LEADING: f64 = 1.22;

static FACES: LazyLock<[Option<Face<'static>>; 2]> =
    LazyLock::new(|| [Face::parse(REGULAR, 0).ok(), Face::parse(BOLD, 0).ok()]);

/// Size and weight of a text.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Style {
    /// Size, pt.
    pub size_pt: f64,
    /// Bold.
    pub bold: bool,
}

impl Style {
    /// Regular weight.
    pub const fn regular(size_pt: f64) -> Self {
        Self { size_pt, bold: false }
    }

    /// Bold.
    pub const fn bold(size_pt: f64) -> Self {
        Self { size_pt, bold: true }
    }

    /// The same weight in another size.
    pub const fn sized(self, size_pt: f64) -> Self {
        Self { size_pt, ..self }
    }

    /// Type size in mm.
    pub fn em_mm(self) -> f64 {
        self.size_pt * MM_PER_POINT
    }

    /// Height of capitals, mm.
    pub fn cap_mm(self) -> f64 {
        self.em_mm() * CAP_HEIGHT
    }

    /// From one line to the next, mm.
    pub fn line_mm(self) -> f64 {
        self.em_mm() * LEADING
    }

    /// Width of a text on one line, mm.
    pub fn width_mm(self, text: &str) -> f64 {
        text.chars().map(|c| self.glyph(c).1).sum::<f64>() * self.em_mm()
    }

    /// Glyph number of a character and its advance in ems; glyph 0, the box,
    /// where the font lacks the character.
    pub fn glyph(self, character: char) -> (u16, f64) {
        let [regular, bold] = &*FACES;
        let Some(face) = (if self.bold { bold } else { regular }) else { return (0, UNKNOWN_ADVANCE) };
        let id = face.glyph_index(character).unwrap_or(GlyphId(0));
        let advance =
            face.glyph_hor_advance(id).map_or(UNKNOWN_ADVANCE, |a| f64::from(a) / f64::from(face.units_per_em()));
        (id.0, advance)
    }

    /// The largest size, not above this style's and not below
    /// [`SMALLEST_PT`], at which the text fits, and the text, shortened with
    /// an ellipsis where even the smallest does not fit.
    pub fn fit(self, text: &str, width_mm: f64) -> (Self, String) {
        let width = self.width_mm(text);
        if width <= width_mm {
            return (self, text.to_owned());
        }
        let size = (self.size_pt * width_mm / width * 20.0).floor() / 20.0;
        if size >= SMALLEST_PT {
            return (self.sized(size), text.to_owned());
        }
        let small = self.sized(SMALLEST_PT.min(self.size_pt));
        (small, small.shorten(text, width_mm))
    }

    /// The text, cut with an ellipsis to fit the width.
    pub fn shorten(self, text: &str, width_mm: f64) -> String {
        if self.width_mm(text) <= width_mm {
            return text.to_owned();
        }
        let mut room = width_mm - self.width_mm("…");
        let mut kept = String::new();
        for c in text.chars() {
            room -= self.width_mm(c.encode_utf8(&mut [0; 4]));
            if room < 0.0 {
                break;
            }
            kept.push(c);
        }
        kept.truncate(kept.trim_end().len());
        kept.push('…');
        kept
    }

    /// The text broken at spaces into lines that fit the width; a single word
    /// that is wider is broken where it must be.
    pub fn wrap(self, text: &str, width_mm: f64) -> Vec<String> {
        let mut lines = Vec::new();
        let mut line = String::new();
        for word in text.split_whitespace() {
            let longer = if line.is_empty() { word.to_owned() } else { format!("{line} {word}") };
            if self.width_mm(&longer) <= width_mm {
                line = longer;
                continue;
            }
            if !line.is_empty() {
                lines.push(std::mem::take(&mut line));
            }
            line = self.break_word(word, width_mm, &mut lines);
        }
        if !line.is_empty() {
            lines.push(line);
        }
        lines
    }

    /// As [`Style::wrap`], but at most `most` lines, the last one shortened.
    pub fn wrap_at_most(self, text: &str, width_mm: f64, most: usize) -> Vec<String> {
        let mut lines = self.wrap(text, width_mm);
        if lines.len() > most {
            let rest = lines.split_off(most.saturating_sub(1)).join(" ");
            lines.push(self.shorten(&rest, width_mm));
        }
        lines
    }

    /// Pushes full lines of a word wider than a line; returns what is left.
    fn break_word(self, word: &str, width_mm: f64, lines: &mut Vec<String>) -> String {
        let mut line = String::new();
        let mut width = 0.0;
        for c in word.chars() {
            let advance = self.width_mm(c.encode_utf8(&mut [0; 4]));
            if width + advance > width_mm && !line.is_empty() {
                lines.push(std::mem::take(&mut line));
                width = 0.0;
            }
            line.push(c);
            width += advance;
        }
        line
    }
}

/// The text with control characters (line ends, tabs) turned into spaces.
pub fn one_line(text: &str) -> String {
    text.chars().map(|c| if c.is_control() { ' ' } else { c }).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn width_grows_with_size_and_bold_is_wider() {
        let text = "common rafter 47 × 150";
        let width = Style::regular(10.0).width_mm(text);
        assert!((Style::regular(20.0).width_mm(text) - 2.0 * width).abs() < 1e-9);
        assert!(Style::bold(10.0).width_mm(text) > width);
    }

    #[test]
    fn the_font_has_every_sign_the_sheets_use() {
        for c in "×°–…½→↔▲■●÷′″²³⚠'\"".chars() {
            assert_ne!(Style::regular(10.0).glyph(c).0, 0, "{c}");
            assert_ne!(Style::bold(10.0).glyph(c).0, 0, "{c}");
        }
    }

    #[test]
    fn fitted_text_fits() {
        for text in ["short", "a rather longer text than there is room for", "onewordthatislongerthanthelineiswide"] {
            let (style, fitted) = Style::regular(14.0).fit(text, 30.0);
            assert!(style.width_mm(&fitted) <= 30.0, "{fitted}");
            assert!(style.size_pt >= SMALLEST_PT);
            for line in Style::regular(9.0).wrap(text, 20.0) {
                assert!(Style::regular(9.0).width_mm(&line) <= 20.0, "{line}");
            }
        }
    }

    #[test]
    fn wrapping_keeps_every_word() {
        let text = "lay the square to the top edge and mark along the tongue";
        assert_eq!(Style::regular(9.0).wrap(text, 25.0).join(" "), text);
        assert_eq!(Style::regular(9.0).wrap_at_most(text, 25.0, 2).len(), 2);
    }
}
