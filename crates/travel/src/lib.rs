//! A job that travels inside a page: one HTML file with the app, the core and
//! the job, which opens from a phone's files or a message with no server.
//!
//! The page is made when the app is built, with an empty element for the job.
//! The job's text stands in that element with `&` and `<` written as HTML
//! writes them, so that nothing in a title or a comment can end the element;
//! the app turns them back.
//!
//! ```
//! let page = format!("<!doctype html>{}", travel::PLACE);
//! let page = travel::one_file(&page, "title = \"</script>\"")?;
//! assert!(page.contains("title = \"&lt;/script>\""));
//! # Ok::<(), travel::NoPlace>(())
//! ```

use thiserror::Error;

/// The element of the page before its job is put in.
pub const PLACE: &str = "<script type=\"application/toml\" id=\"job\"></script>";

const OPENING: &str = "<script type=\"application/toml\" id=\"job\">";
const CLOSING: &str = "</script>";

/// The page has no place for a job, or several.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
#[error("the page of this build has {0} places for a job instead of one; build the app again with `make run`")]
pub struct NoPlace(usize);

/// Puts a job's text into the page.
///
/// # Errors
/// When the page does not have exactly one place for it.
pub fn one_file(page: &str, job: &str) -> Result<String, NoPlace> {
    let mut parts = page.split(PLACE);
    let (Some(before), Some(after), None) = (parts.next(), parts.next(), parts.next()) else {
        return Err(NoPlace(page.matches(PLACE).count()));
    };
    let job = job.replace('&', "&amp;").replace('<', "&lt;");
    Ok([before, OPENING, &job, CLOSING, after].concat())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// What the app reads: the text up to the end of the element, turned back.
    fn read_back(page: &str) -> String {
        let (_, rest) = page.split_once(OPENING).unwrap();
        let (job, _) = rest.split_once(CLOSING).unwrap();
        job.replace("&lt;", "<").replace("&amp;", "&")
    }

    #[test]
    fn nothing_in_a_job_ends_its_element() {
        let page = format!("<head>{PLACE}</head><body>kept</body>");
        for job in ["</script><script>alert(1)</script>", "# <!-- <script>", "title = \"&lt;&amp;<\"", "]]>", ""] {
            let made = one_file(&page, job).unwrap();
            let inside = made.split_once(OPENING).unwrap().1.split_once(CLOSING).unwrap().0;
            assert!(!inside.contains('<'), "{inside}");
            assert_eq!(read_back(&made), job);
            assert!(made.starts_with("<head>") && made.ends_with("</head><body>kept</body>"));
        }
    }

    #[test]
    fn a_page_without_a_place_is_refused() {
        assert_eq!(one_file("<p>", "a = 1"), Err(NoPlace(0)));
        assert_eq!(one_file(&PLACE.repeat(2), "a = 1"), Err(NoPlace(2)));
    }

    proptest! {
        #[test]
        fn every_text_comes_back(job in "[<>&/!a-z;\\-\n]{0,60}|\\PC{0,40}") {
            prop_assert_eq!(read_back(&one_file(PLACE, &job).unwrap()), job);
        }
    }
}
