//! The title of a job, read even where the job has faults.

use toml_edit::DocumentMut;

/// What a job without a title is called.
const UNTITLED: &str = "Untitled job";

/// Longest title on the shelf, characters. Titles in a job are shorter; a text with faults may say anything.
const LONGEST: usize = 200;

/// The title of a job.
pub(super) fn title_of(text: &str) -> String {
    let title = text.parse::<DocumentMut>().ok().and_then(|job| job.get("title")?.as_str().map(str::to_owned));
    let plain: String = title.unwrap_or_default().chars().filter(|c| !c.is_control()).take(LONGEST).collect();
    if plain.trim().is_empty() { UNTITLED.to_owned() } else { plain }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn titles_are_read_from_jobs_with_faults_too() {
        assert_eq!(title_of("title = \"Barn\"\nroof = 7"), "Barn");
        for text in ["", "title = ", "title = 4", "title = \" \""] {
            assert_eq!(title_of(text), UNTITLED, "{text}");
        }
        assert_eq!(title_of("title = \"a\\nb\""), "ab");
    }
}
