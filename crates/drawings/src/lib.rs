//! Sheets and lists: the printed pack, its cards, and lists for a spreadsheet,
//! laid out from a [`Solution`]. Nothing about the roof is computed here.
//!
//! Layout writes a display list in mm (`sheet`); one writer turns it into
//! PDF, another into SVG. Text is measured with the bundled font's own advance
//! widths, so what is laid out is what is printed.
//!
//! Not guaranteed: characters that DejaVu Sans lacks print as an empty box.

mod card;
mod cover;
mod facets;
mod flow;
mod gable_sheet;
mod heel;
mod layout;
mod lists;
mod marks;
mod members_csv;
mod order_sheets;
mod page;
mod painting;
mod pdf;
mod piece_view;
mod plan;
mod sheet;
mod site_sheets;
mod spreadsheet;
mod strength_sheets;
mod strips;
mod survey_sheet;
mod svg;
mod table;
mod text;
mod vec3;
mod view3d;
mod xml;

use ::order::whole::Order;
use ::site::whole::Site;
use roof::solution::Solution;

use layout::Room;
pub use marks::ranges;
pub use members_csv::members_csv;
pub use order_sheets::order_sheets;
use page::Page;
use sheet::Sheet;
pub use site_sheets::SitePapers;
pub use spreadsheet::csv::order_csv;
pub use spreadsheet::order_xlsx;
pub use strength_sheets::sheet::StrengthPapers;
pub use strength_sheets::spans::{MOST_CENTRES, span_sheets, spans_csv};
pub use strength_sheets::words::{KindUse, Matter, by_kind, figure, for_engineer, percent, verdict, written_span};

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

/// The printed pack: cover, setting-out strips, a card for every pattern
/// piece, cutting list. A4 on its side, black on white, as a tagged PDF. The
/// same solution gives the same bytes everywhere.
///
/// # Errors
/// [`PackError::Font`], [`PackError::PageSize`] or [`PackError::Pdf`] when
/// writing the document fails.
pub fn pack(solution: &Solution) -> Result<Vec<u8>, PackError> {
    pack_with(solution, &Papers::default())
}

/// What the pack may hold besides the roof: each where it was worked out.
#[derive(Clone, Copy, Default)]
pub struct Papers<'a> {
    /// The roof's strength.
    pub strength: Option<StrengthPapers<'a>>,
    /// What to buy, and how to cut it.
    pub order: Option<&'a Order>,
    /// Putting it up.
    pub site: Option<&'a Site>,
}

/// The printed pack with sheets of the order, the strength and the site behind its lists, when those were worked out.
///
/// # Errors
/// As [`pack`].
pub fn pack_with(solution: &Solution, papers: &Papers<'_>) -> Result<Vec<u8>, PackError> {
    let mut pages = cover::pages(solution);
    pages.extend(cover::inside(solution));
    pages.extend(survey_sheet::pages(solution));
    pages.extend(gable_sheet::pages(solution));
    pages.extend(strips::pages(solution));
    for (k, piece) in solution.pieces.iter().enumerate() {
        // A piece and its mirror image share a card: that of the first of them.
        let mirror = piece.mirror_of.as_ref().and_then(|m| solution.pieces.iter().position(|p| p.mark == *m));
        if mirror.is_none_or(|m| m > k) {
            pages.extend(card::pages(solution, piece, mirror.map(|m| &solution.pieces[m])));
        }
    }
    pages.extend(lists::pages(solution));
    if let Some(order) = papers.order {
        pages.extend(order_sheets(solution, order));
    }
    if let Some(papers) = &papers.strength {
        pages.extend(strength_sheets::sheet::pages(solution, papers));
    }
    if let Some(site) = papers.site {
        pages.extend(site_sheets::site_pages(solution, &SitePapers::of(site)));
    }
    write(pages, solution, "Sheets for setting out and cutting a roof")
}

/// Sheets for putting the roof up and for its access: steps, props, holds, lifts, programme, access, records.
///
/// # Errors
/// As [`pack`].
pub fn site_pdf(solution: &Solution, papers: &SitePapers<'_>) -> Result<Vec<u8>, PackError> {
    write(site_sheets::site_pages(solution, papers), solution, "Sheets for putting a roof up")
}

/// The card of one pattern piece as a PDF of its own. The mark may be that of
/// any timber cut from the piece.
///
/// # Errors
/// [`PackError::NoPiece`] when nothing has that mark; otherwise as [`pack`].
pub fn piece_card(solution: &Solution, piece_mark: &str) -> Result<Vec<u8>, PackError> {
    let piece = solution
        .pieces
        .iter()
        .find(|p| p.mark == piece_mark)
        .or_else(|| solution.pieces.iter().find(|p| p.members.iter().any(|m| m == piece_mark)))
        .ok_or_else(|| PackError::NoPiece(piece_mark.to_owned()))?;
    write(card::pages(solution, piece, None), solution, "A card for cutting a timber")
}

/// The sheets of the order as a PDF of their own: what to buy, how to cut it, what is kept, what goes up.
///
/// # Errors
/// As [`pack`].
pub fn order_pdf(solution: &Solution, order: &Order) -> Result<Vec<u8>, PackError> {
    write(order_sheets(solution, order), solution, "What to buy for a roof, and how to cut it")
}

/// Labels for all timbers in the order of the cutting plan: A4 upright, three by eight of 70 by 37 mm.
///
/// # Errors
/// As [`pack`].
pub fn labels_pdf(solution: &Solution, order: &Order) -> Result<Vec<u8>, PackError> {
    let info = pdf::Info { title: &solution.title, subject: "Labels for the timbers of a roof" };
    pdf::write(&order_sheets::labels::sheets(solution, order), &info)
}

/// The plan of the roof as SVG, to scale when printed at 100 %.
#[must_use]
pub fn plan_svg(solution: &Solution) -> String {
    let mut sheet = Sheet::new(PICTURE[0], PICTURE[1]);
    plan::draw(&mut sheet, solution, plan::Layer::Rafters, PICTURE_ROOM);
    svg::write(&sheet, &format!("Plan of the roof: {}", solution.title))
}

/// The frame in three dimensions as SVG.
#[must_use]
pub fn frame_svg(solution: &Solution) -> String {
    let mut sheet = Sheet::new(PICTURE[0], PICTURE[1]);
    view3d::draw(&mut sheet, solution, PICTURE_ROOM);
    svg::write(&sheet, &format!("The frame: {}", solution.title))
}

/// Width and height of a picture, mm.
const PICTURE: [f64; 2] = [277.0, 190.0];
const PICTURE_ROOM: Room = Room { x: 4.0, y: 4.0, w: PICTURE[0] - 8.0, h: PICTURE[1] - 8.0 };

fn write(pages: Vec<Page>, solution: &Solution, subject: &str) -> Result<Vec<u8>, PackError> {
    pdf::write(&page::frame(pages, solution), &pdf::Info { title: &solution.title, subject })
}

#[cfg(test)]
#[path = "../tests/fixture/mod.rs"]
mod fixture;
#[cfg(test)]
mod layout_checks;
#[cfg(test)]
#[path = "../tests/order_fixture/mod.rs"]
mod order_fixture;
