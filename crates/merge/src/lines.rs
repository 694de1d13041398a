//! The merge of lines.

/// Texts longer than this are merged by their figures alone: comparing lines
/// takes time with the square of what differs, and no job written by a person
/// is so long. Bytes.
const LONGEST: usize = 200_000;

/// The three texts merged line by line; none where lines clash.
pub(crate) fn merge(base: &str, ours: &str, theirs: &str) -> Option<String> {
    let longest = base.len().max(ours.len()).max(theirs.len());
    if longest > LONGEST { None } else { diffy::merge(base, ours, theirs).ok() }
}
