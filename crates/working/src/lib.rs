//! Why a figure is what it is: its working in words and sums that an apprentice
//! follows, with the picture that goes with it.
//!
//! A figure is asked for by its key, a text: see [`Question`].

mod question;
mod words;

pub use question::Question;
pub use words::{Line, Working};

/// Why no working can be given.
#[derive(Debug, thiserror::Error, PartialEq, Eq)]
#[non_exhaustive]
pub enum WhyError {
    /// Nothing has this key.
    #[error("no figure is known as `{0}`: ask for one that the card or the plan shows")]
    NoFigure(String),
}
