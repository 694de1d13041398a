//! Text inside XML.

/// Text as XML holds it: marks escaped, and characters that XML 1.0 has no way to hold made spaces.
pub(crate) fn escaped(text: impl IntoIterator<Item = char>) -> String {
    let mut out = String::new();
    for c in text {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            c if c.is_control() || matches!(c, '\u{fffe}' | '\u{ffff}') => out.push(' '),
            c => out.push(c),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_that_xml_cannot_hold_is_made_holdable() {
        assert_eq!(escaped("a<b> & \"c\"\u{1}\n".chars()), "a&lt;b&gt; &amp; &quot;c&quot;  ");
    }
}
