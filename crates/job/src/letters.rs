//! Wall letters: A, B … Z, AA, AB ….

/// The letter of a wall, counted from 0 in lettering order.
///
/// ```
/// assert_eq!(job::wall_letter(0), "A");
/// assert_eq!(job::wall_letter(25), "Z");
/// assert_eq!(job::wall_letter(26), "AA");
/// ```
#[must_use]
pub fn wall_letter(index: usize) -> String {
    let mut letters = Vec::new();
    let mut rest = index;
    loop {
        // The remainder is below 26, so the cast keeps it whole.
        letters.push(char::from(b'A' + (rest % 26) as u8));
        if rest < 26 {
            return letters.iter().rev().collect();
        }
        rest = rest / 26 - 1;
    }
}

/// The wall of a letter, counted from 0. `None` if it is not made of capital
/// letters, or is longer than any plan needs.
#[must_use]
pub fn wall_index(letter: &str) -> Option<usize> {
    /// Four letters name more than 400 000 walls, more than a file can hold.
    const LONGEST: usize = 4;
    if letter.is_empty() || letter.len() > LONGEST || !letter.bytes().all(|byte| byte.is_ascii_uppercase()) {
        return None;
    }
    let count = letter.bytes().fold(0, |count, byte| count * 26 + usize::from(byte - b'A') + 1);
    Some(count - 1)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_and_indices_are_each_others_inverse() {
        for index in 0..20_000 {
            assert_eq!(wall_index(&wall_letter(index)), Some(index));
        }
        assert_eq!(wall_letter(701), "ZZ");
        assert_eq!(wall_letter(702), "AAA");
    }

    #[test]
    fn other_words_are_not_letters() {
        for word in ["", "a", "A1", "É", "AAAAA"] {
            assert_eq!(wall_index(word), None, "{word}");
        }
    }
}
