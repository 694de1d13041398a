//! Sheets and lists: the printed pack, its cards, and lists for a spreadsheet,
//! laid out from a [`Solution`]. Nothing about the roof is computed here.
//!
//! Layout writes a display list in mm ([`sheet`]); one writer turns it into
//! PDF, another into SVG. Text is measured with the bundled font's own advance
//! widths, so what is laid out is what is printed.
//!
//! Not guaranteed: characters that DejaVu Sans lacks print as an empty box.

mod page;
mod pdf;
mod sheet;
mod svg;
mod text;
mod units;

use roof::solution::Solution;

/// Why a sheet or list could not be made.
#[derive(Debug, thiserror::Error, PartialEq, Eq)]
#[non_exhaustive]
pub enum PackError {
    /// A bundled font can't be read.
    #[error("a bundled font can't be read: this build is broken, install it again")]
    Font,
    /// A sheet has no size.
    #[error("a sheet has no size: this build is broken, install it again")]
    PageSize,
    /// The document can't be closed.
    #[error("the PDF can't be closed: {0}")]
    Pdf(String),
    /// No pattern piece or timber has this mark.
    #[error("no timber of this job is marked `{0}`: look up the marks in the cutting list")]
    NoPiece(String),
    /// The list can't be written.
    #[error("the list can't be written: {0}")]
    List(String),
}
