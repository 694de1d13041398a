//! The word that was probably meant.

/// Longest word that is looked for, in characters: the work grows with the square of it.
const LONGEST: usize = 40;

/// How many letters must be put in, taken out or changed between two words.
fn slips(a: &[char], b: &[char]) -> usize {
    let mut last: Vec<usize> = (0..=b.len()).collect();
    for (i, from) in a.iter().enumerate() {
        let mut diagonal = i;
        let mut left = i + 1;
        for (to, above) in b.iter().zip(last.iter_mut().skip(1)) {
            let here = (left + 1).min(*above + 1).min(diagonal + usize::from(from != to));
            diagonal = core::mem::replace(above, here);
            left = here;
        }
        if let Some(first) = last.first_mut() {
            *first = i + 1;
        }
    }
    last.last().copied().unwrap_or(a.len())
}

/// The nearest of some words, when it is near enough to be a slip: one letter in three, or its beginning.
pub(super) fn nearest<'a>(word: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let plain = |text: &str| -> Vec<char> {
        text.chars().filter(|c| c.is_alphanumeric()).flat_map(char::to_lowercase).take(LONGEST + 1).collect()
    };
    let word = plain(word);
    if word.is_empty() || word.len() > LONGEST {
        return None;
    }
    let near = |candidate: &'a str| {
        let other = plain(candidate);
        let begins = word.len() > 2 && (other.starts_with(&word) || word.starts_with(&other));
        let slips = if begins { 1 } else { slips(&word, &other) };
        (begins || slips <= word.len().max(other.len()) / 3).then_some((slips, candidate))
    };
    known.into_iter().filter_map(near).min_by_key(|(slips, _)| *slips).map(|(_, candidate)| candidate)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn slips_are_counted() {
        let count = |a: &str, b: &str| slips(&a.chars().collect::<Vec<_>>(), &b.chars().collect::<Vec<_>>());
        assert_eq!(count("hip", "hip"), 0);
        assert_eq!(count("hip", "hop"), 1);
        assert_eq!(count("hip", "ship"), 1);
        assert_eq!(count("", "hip"), 3);
        assert_eq!(count("kitten", "sitting"), 3);
    }

    #[test]
    fn only_near_words_are_meant() {
        let columns = ["what", "thickness_mm", "depth_mm", "price"];
        assert_eq!(nearest("Thickness", columns), Some("thickness_mm"));
        assert_eq!(nearest("prise", columns), Some("price"));
        assert_eq!(nearest("colour", columns), None);
    }
}
