//! Two versions of a job that grew from one, made into one again.
//!
//! A job is its **figures**: every key of the file with its value. Two
//! versions go together when each changed other figures than the other, no
//! matter on which lines these stand; where both changed one figure, to
//! different values, the two are given side by side, and nothing is chosen
//! for the user.
//!
//! ```
//! let base = "format = 1\ntitle = \"Boathouse\"\n[roof]\npitch = 40\n[roof.eaves]\noverhang = 300\n";
//! let ours = base.replace("40", "42.5");
//! let theirs = base.replace("300", "350");
//! let merge::Merged::Whole(text) = merge::merge(base, &ours, &theirs)? else { panic!("no figure clashes") };
//! assert_eq!(text, ours.replace("300", "350"));
//! # Ok::<(), merge::MergeError>(())
//! ```
//!
//! # How
//!
//! 1. The figures are merged key by key (`figures`, `decide`).
//! 2. The texts are merged line by line, as version control does. That keeps
//!    comments and layout of both sides. The result stands only when it holds
//!    the very figures of step 1, for lines can merge into nonsense.
//! 3. Where lines clash although figures do not, such as two keys of one group
//!    in braces, the figures that only theirs changed are put into ours in
//!    place (`place`), comments included.
//! 4. A job with faults that neither version had is no merge: these are
//!    clashes too.
//!
//! Corners and measured sides are figures one by one while their number stays;
//! a tick of a timber is one figure, and the further one of two holds.

mod clash;
mod decide;
mod figures;
mod lines;
mod place;
mod together;

pub use clash::{Apart, Clash, Side};
use decide::Decision;
use figures::{Figures, Splits};
use std::collections::BTreeMap;
use thiserror::Error;
use toml_edit::DocumentMut;

/// What two versions make.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Merged {
    /// One text that holds what either changed.
    Whole(String),
    /// Figures that both changed, to different values.
    Apart(Apart),
}

/// Why two versions can't be compared at all. Both stay as they are.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum MergeError {
    /// One of them is not TOML, so it has no figures.
    #[error("{side} can't be read, so it can't be merged: {why}. Keep one of the two, or correct it by hand")]
    Unreadable {
        /// Which.
        side: Side,
        /// What the reader says, with its place.
        why: String,
    },
}

/// Merges two versions that grew from `base`. An empty `base` stands for two
/// that have nothing in common.
///
/// # Errors
/// When ours or theirs can't be read as TOML. Faults of a job are no error: a
/// half-finished job is merged as it is.
pub fn merge(base: &str, ours: &str, theirs: &str) -> Result<Merged, MergeError> {
    if ours == theirs || base == theirs {
        return Ok(Merged::Whole(ours.to_owned()));
    }
    if base == ours {
        return Ok(Merged::Whole(theirs.to_owned()));
    }
    let three = Three::read(base, ours, theirs)?;
    let decision = three.decide(&BTreeMap::new());
    if !decision.clashes.is_empty() {
        let clashes = decision.clashes.iter().map(|path| three.clash(path)).collect();
        return Ok(Merged::Apart(Apart { clashes, text: three.text(&decision) }));
    }
    let Some(text) = three.text(&decision) else {
        return Ok(Merged::Apart(Apart { clashes: vec![Clash::of_layout()], text: None }));
    };
    let clashes = three.wrong_together(&text);
    Ok(if clashes.is_empty() { Merged::Whole(text) } else { Merged::Apart(Apart { clashes, text: Some(text) }) })
}

/// Merges with a side taken for each figure that clashes, by its path as in
/// [`Clash::path`]. Figures without a choice are as theirs.
///
/// `None` when the two are laid out so differently that no text holds both.
///
/// # Errors
/// As [`merge`].
pub fn settle(
    base: &str,
    ours: &str,
    theirs: &str,
    choices: &BTreeMap<String, Side>,
) -> Result<Option<String>, MergeError> {
    let three = Three::read(base, ours, theirs)?;
    let decision = three.decide(choices);
    Ok(three.text(&decision))
}

/// The three versions, read.
struct Three<'t> {
    texts: [&'t str; 3],
    documents: [DocumentMut; 3],
    splits: Splits,
    figures: [Figures; 3],
}

impl<'t> Three<'t> {
    fn read(base: &'t str, ours: &'t str, theirs: &'t str) -> Result<Self, MergeError> {
        let parse = |text: &str, side| {
            let unreadable = |error: toml_edit::TomlError| MergeError::Unreadable { side, why: error.to_string() };
            text.parse::<DocumentMut>().map_err(unreadable)
        };
        // Two versions that can be read have nothing in common when what they grew from can't.
        let documents = [base.parse().unwrap_or_default(), parse(ours, Side::Ours)?, parse(theirs, Side::Theirs)?];
        let splits = Splits::of(&documents);
        let figures = documents.each_ref().map(|document| Figures::of(document, &splits));
        Ok(Self { texts: [base, ours, theirs], documents, splits, figures })
    }

    fn decide(&self, choices: &BTreeMap<String, Side>) -> Decision {
        let [base, ours, theirs] = &self.figures;
        Decision::make(base, ours, theirs, choices)
    }

    /// The text that holds what was decided, if there is one.
    fn text(&self, decision: &Decision) -> Option<String> {
        let [base, ours, theirs] = &self.documents;
        let holds = |text: &String| {
            text.parse().is_ok_and(|document| Figures::of(&document, &self.splits).same_as(&decision.wanted))
        };
        let [base_text, ours_text, theirs_text] = self.texts;
        lines::merge(base_text, ours_text, theirs_text)
            .filter(holds)
            .or_else(|| place::into(ours, theirs, base, &decision.from_theirs).filter(holds))
            .or_else(|| place::into(theirs, ours, base, &decision.from_ours).filter(holds))
    }

    fn clash(&self, path: &figures::Path) -> Clash {
        Clash::of(path, self.figures.each_ref().map(|figures| figures.written(path)))
    }

    /// Clashes of figures that are right by themselves and wrong together.
    fn wrong_together(&self, text: &str) -> Vec<Clash> {
        let [_, ours, theirs] = self.texts;
        together::new_faults(ours, theirs, text)
            .into_iter()
            .map(|(path, what)| {
                Clash::together(what, &path, self.figures.each_ref().map(|figures| figures.written(&path)))
            })
            .collect()
    }
}
