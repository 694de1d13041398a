//! Figures in formulas of a working.

/// Four figures or so, without zeros at the end: `13.21`, `0.287`, `297400`.
pub(super) fn say(value: f64) -> String {
    let places = match value.abs() {
        size if size >= 1000.0 => 0,
        size if size >= 100.0 => 1,
        size if size >= 10.0 => 2,
        _ => 3,
    };
    let text = format!("{value:.places$}");
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text }
}

#[cfg(test)]
mod tests {
    use super::say;

    #[test]
    fn figures_are_short() {
        let said = [13.2139, 0.2874, 297_400.4, 100.0, 1.3, 0.0].map(say);
        assert_eq!(said, ["13.21", "0.287", "297400", "100", "1.3", "0"]);
    }
}
