//! The word that was probably meant.

/// Shortest beginning that stands for a word, letters.
const LEAST_BEGINNING: usize = 3;

/// The word of which another is the beginning, as `Thickness` is of `thickness_mm`, or else the nearest of them.
pub(super) fn nearest<'a>(word: &str, known: impl IntoIterator<Item = &'a str> + Clone) -> Option<&'a str> {
    let plain = |text: &str| text.to_lowercase().replace(['-', ' '], "_");
    let short = plain(word);
    let begins = |candidate: &&str| {
        let whole = plain(candidate);
        whole.starts_with(&short) || short.starts_with(&whole)
    };
    let begun = if short.len() < LEAST_BEGINNING { None } else { known.clone().into_iter().find(begins) };
    begun.or_else(|| job::nearest(word, known))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_near_words_are_meant() {
        let columns = ["what", "thickness_mm", "depth_mm", "price"];
        assert_eq!(nearest("Thickness", columns), Some("thickness_mm"));
        assert_eq!(nearest("price each", columns), Some("price"));
        assert_eq!(nearest("prise", columns), Some("price"));
        assert_eq!(nearest("colour", columns), None);
        assert_eq!(nearest("", columns), None);
    }
}
