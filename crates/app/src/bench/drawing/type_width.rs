//! How wide a text will be on a screen whose font is not known: never
//! narrower than the widest of the usual fonts sets it in bold.

/// Width of a digit or letter, in heights of the type.
const USUAL: f64 = 0.72;
/// Width of stops, quotes, blanks and strokes.
const NARROW: f64 = 0.4;
/// Width of wide capitals.
const WIDE: f64 = 1.0;

/// Width of a text, px, at this height of type.
pub fn width(text: &str, size: f64) -> f64 {
    let of = |char: char| match char {
        ' ' | '.' | ',' | '\'' | '"' | '/' | 'i' | 'l' | 'I' | '-' => NARROW,
        'M' | 'W' | 'm' | 'w' => WIDE,
        _ => USUAL,
    };
    text.chars().map(of).sum::<f64>() * size
}
