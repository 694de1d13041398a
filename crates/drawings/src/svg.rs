//! A sheet as SVG, in mm.

use std::fmt::Write as _;

use crate::sheet::{Dash, Item, Pen, Role, Sheet, Text};
use crate::xml::escaped;

/// Writes a sheet as one SVG document.
pub fn write(sheet: &Sheet, title: &str) -> String {
    let mut out = String::new();
    let (w, h) = (figure(sheet.width), figure(sheet.height));
    // Writing to a String can't fail, so the results are not looked at.
    let _ = write!(
        out,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}mm\" height=\"{h}mm\" viewBox=\"0 0 {w} {h}\" role=\"img\" \
         font-family=\"'DejaVu Sans', Verdana, sans-serif\"><title>{}</title>",
        escaped(title.chars())
    );
    let mut depth = 0_usize;
    for item in &sheet.items {
        match item {
            Item::Path { points, closed, fill, pen } => {
                let list: Vec<String> = points.iter().map(|p| format!("{},{}", figure(p[0]), figure(p[1]))).collect();
                let name = if *closed { "polygon" } else { "polyline" };
                let fill = fill.map_or("none".to_owned(), grey);
                let _ = write!(out, "<{name} points=\"{}\" fill=\"{fill}\"{}/>", list.join(" "), stroke(*pen));
            }
            Item::Text(text) => write_text(&mut out, text),
            Item::Begin(Role::Figure(words)) => {
                depth += 1;
                let _ = write!(out, "<g role=\"img\" aria-label=\"{}\">", escaped(words.chars()));
            }
            Item::Begin(_) => {
                depth += 1;
                out.push_str("<g>");
            }
            Item::End => {
                if depth > 0 {
                    depth -= 1;
                    out.push_str("</g>");
                }
            }
        }
    }
    out.push_str(&"</g>".repeat(depth));
    out.push_str("</svg>\n");
    out
}

fn write_text(out: &mut String, text: &Text) {
    let [x, y] = text.at.map(figure);
    let place = if text.along == [1.0, 0.0] {
        format!("x=\"{x}\" y=\"{y}\"")
    } else {
        let [c, s] = text.along;
        format!("transform=\"matrix({} {} {} {} {x} {y})\"", ratio(c), ratio(s), ratio(-s), ratio(c))
    };
    let weight = if text.style.bold { " font-weight=\"bold\"" } else { "" };
    let fill = if text.grey == 0 { String::new() } else { format!(" fill=\"{}\"", grey(text.grey)) };
    // The length is stated so that a reader with another font keeps the layout.
    let _ = write!(
        out,
        "<text {place} font-size=\"{}\"{weight}{fill} textLength=\"{}\" lengthAdjust=\"spacingAndGlyphs\">{}</text>",
        figure(text.style.em_mm()),
        figure(text.width),
        escaped(text.text.chars())
    );
}

fn stroke(pen: Option<Pen>) -> String {
    let Some(pen) = pen else { return String::new() };
    let mut out =
        format!(" stroke=\"{}\" stroke-width=\"{}\" stroke-linejoin=\"round\"", grey(pen.grey), figure(pen.width));
    if pen.dash == Dash::Solid {
        out.push_str(" stroke-linecap=\"round\"");
    } else {
        let list: Vec<String> = pen.dash.pattern().iter().map(|&v| figure(v)).collect();
        let _ = write!(out, " stroke-dasharray=\"{}\"", list.join(" "));
    }
    out
}

fn grey(value: u8) -> String {
    format!("#{value:02x}{value:02x}{value:02x}")
}

/// To the hundredth of a mm: finer than any printer.
fn figure(mm: f64) -> String {
    let text = format!("{:.2}", mm + 0.0);
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text.is_empty() || text == "-0" { "0".to_owned() } else { text.to_owned() }
}

fn ratio(value: f64) -> String {
    format!("{value:.5}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_are_short_and_true() {
        assert_eq!(figure(10.0), "10");
        assert_eq!(figure(0.126), "0.13");
        assert_eq!(figure(-0.001), "0");
    }

    #[test]
    fn text_is_escaped() {
        let mut sheet = Sheet::new(10.0, 10.0);
        sheet.text([1.0, 1.0], crate::sheet::Anchor::Start, crate::text::Style::regular(8.0), "<A> & \"B\"");
        let svg = write(&sheet, "a\u{1}b");
        assert!(svg.contains("&lt;A&gt; &amp; &quot;B&quot;"));
        assert!(svg.contains("<title>a b</title>"));
    }
}
