//! Finds the word that was probably meant.

/// Longest word that a suggestion is looked for, in characters. Longer ones
/// are no slips of the pen, and the work grows with the square of it.
const LONGEST: usize = 40;

/// How many slips (a letter too many, too few, wrong, or two swapped) lie
/// between two words.
fn slips(a: &[char], b: &[char]) -> usize {
    // Rows of the usual table of edit distances, with swaps of neighbours:
    // `before` and `last` are the two rows above the one being filled.
    let mut before: Vec<usize> = Vec::new();
    let mut last: Vec<usize> = (0..=b.len()).collect();
    for (i, ca) in a.iter().enumerate() {
        let mut row = vec![i + 1];
        for (j, cb) in b.iter().enumerate() {
            let mut cost = (row[j] + 1).min(last[j + 1] + 1).min(last[j] + usize::from(ca != cb));
            if i > 0 && j > 0 && *ca == b[j - 1] && a[i - 1] == *cb {
                cost = cost.min(before[j - 1] + 1);
            }
            row.push(cost);
        }
        before = core::mem::replace(&mut last, row);
    }
    last[b.len()]
}

/// The candidate nearest to the word, if it is near enough to be a slip: at
/// most one slip in three letters. Capitals, `-` and `_` count as alike. The
/// earlier candidate wins a draw.
#[must_use]
pub fn nearest<'a>(word: &str, candidates: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let plain = |text: &str| -> Vec<char> {
        text.chars().take(LONGEST + 1).flat_map(char::to_lowercase).map(|c| if c == '_' { '-' } else { c }).collect()
    };
    let word = plain(word);
    if word.len() > LONGEST {
        return None;
    }
    let near = |candidate: &'a str| {
        let other = plain(candidate);
        let most = word.len().max(other.len()) / 3;
        // At least as many slips as one word is longer: often enough to know.
        let can_be = word.len().abs_diff(other.len()) <= most;
        let slips = if can_be { slips(&word, &other) } else { usize::MAX };
        if slips <= most { Some((slips, candidate)) } else { None }
    };
    candidates.into_iter().filter_map(near).min_by_key(|(slips, _)| *slips).map(|(_, candidate)| candidate)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn finds_slips_of_the_pen() {
        let keys = ["pitch", "eaves", "verge", "walls"];
        assert_eq!(nearest("pich", keys), Some("pitch"));
        assert_eq!(nearest("ptich", keys), Some("pitch"));
        assert_eq!(nearest("Eaves", keys), Some("eaves"));
        assert_eq!(nearest("wall", keys), Some("walls"));
        assert_eq!(nearest("centers", ["size", "centres"]), Some("centres"));
        assert_eq!(nearest("from_start", ["from-start", "from-end"]), Some("from-start"));
    }

    #[test]
    fn leaves_other_words_alone() {
        assert_eq!(nearest("chimney", ["pitch", "eaves"]), None);
        assert_eq!(nearest(&"x".repeat(5000), ["pitch"]), None);
        assert_eq!(nearest("", ["pitch"]), None);
    }

    #[test]
    fn counts_each_kind_of_slip_once() {
        let count = |a: &str, b: &str| slips(&a.chars().collect::<Vec<_>>(), &b.chars().collect::<Vec<_>>());
        assert_eq!(count("hip", "hip"), 0);
        assert_eq!(count("hip", "hips"), 1);
        assert_eq!(count("hip", "hop"), 1);
        assert_eq!(count("hip", "ihp"), 1);
        assert_eq!(count("", "hip"), 3);
    }
}
