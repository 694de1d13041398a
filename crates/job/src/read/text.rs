//! From bytes to a TOML document.

use crate::fault::{self, Fault, Faults};
use crate::limits::LARGEST_FILE;
use toml::Spanned;
use toml::de::DeTable;

/// Most faults of syntax reported at once: one slip often upsets the lines
/// after it, so a longer list only hides the first.
const MOST_SYNTAX_FAULTS: usize = 10;

/// The bytes as text, if they are the text of a job at all.
pub(super) fn check(bytes: &[u8]) -> Result<&str, Faults> {
    if bytes.len() > LARGEST_FILE {
        return Err(whole_file(
            "file-too-large",
            format!("The file is {} bytes long; a job file has at most {LARGEST_FILE}", bytes.len()),
            "A job takes a few kilobytes, so this is some other file",
            "Pick the job file, or split the job",
        ));
    }
    let text = match core::str::from_utf8(bytes) {
        Ok(text) => text,
        Err(error) => {
            let good = bytes.get(..error.valid_up_to()).unwrap_or_default();
            return Err(not_text(&String::from_utf8_lossy(good), "The bytes here are not UTF-8 text"));
        }
    };
    if let Some((before, _)) = text.split_once('\0') {
        return Err(not_text(before, "There is a zero byte here, which no text has"));
    }
    if text.trim_start_matches('\u{feff}').trim().is_empty() {
        return Err(whole_file(
            "file-empty",
            "The file is empty".to_owned(),
            "A job needs at least a format, a title, the corners of its plates and a pitch",
            "Start from a shape or from the commented example",
        ));
    }
    Ok(text)
}

/// The text as a document, or the faults of its syntax.
pub(super) fn parse(text: &str) -> Result<Spanned<DeTable<'_>>, Faults> {
    let (document, errors) = DeTable::parse_recoverable(text);
    let mut places: Vec<_> = errors.iter().map(|error| (error.span().unwrap_or(0..text.len()), error)).collect();
    places.sort_by_key(|(span, _)| span.start);
    // More on the same line only follows from the first.
    places.dedup_by(|(next, _), (first, _)| !text.get(first.start..next.start).is_some_and(|line| line.contains('\n')));
    let faults = places.into_iter().take(MOST_SYNTAX_FAULTS).map(|(span, error)| Fault {
        span,
        line: 0,
        column: 0,
        code: "syntax",
        what: format!("This is not TOML: {}", error.message().trim().trim_end_matches('.').replace('\n', "; ")),
        why: "The file cannot be understood from here on".to_owned(),
        remedy: "Write `key = value` on a line of its own, texts in quotes, lists in [brackets]".to_owned(),
        nearest: None,
    });
    let mut faults: Vec<Fault> = faults.collect();
    fault::place(&mut faults, text);
    match Faults::from_list(faults) {
        None => Ok(document),
        Some(faults) => Err(faults),
    }
}

/// A fault of the file as a whole.
fn whole_file(code: &'static str, what: String, why: &str, remedy: &str) -> Faults {
    let (why, remedy) = (why.to_owned(), remedy.to_owned());
    Fault { span: 0..0, line: 1, column: 1, code, what, why, remedy, nearest: None }.into()
}

/// Bytes that are no text, after some that are.
fn not_text(before: &str, what: &str) -> Faults {
    let mut fault = Fault {
        span: before.len()..before.len() + 1,
        line: 0,
        column: 0,
        code: "not-text",
        what: what.to_owned(),
        why: "A job file is plain text, so this is another kind of file or was saved in another encoding".to_owned(),
        remedy: "Pick the job file, or save it again as plain text in UTF-8".to_owned(),
        nearest: None,
    };
    fault::place(core::slice::from_mut(&mut fault), before);
    fault.into()
}
