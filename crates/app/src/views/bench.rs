//! The card of a piece, for one hand at the bench.

use super::Done;
use picture::Picture;
use serde::Serialize;

/// A figure that is shown.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct Figure {
    /// What it is: `True length`.
    pub label: String,
    /// As shown, with its unit.
    pub value: String,
    /// The key to ask why with.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "bindings", ts(optional))]
    pub why: Option<String>,
}

/// The card of a piece.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct Card {
    /// The mark of the piece.
    pub piece: String,
    /// The timber that was asked for.
    pub mark: String,
    /// What it is: `Jack rafter`.
    pub kind: String,
    /// Its section as shown.
    pub size: String,
    /// The timbers to be cut from it, with how far each is.
    pub members: Vec<(String, Done)>,
    /// The piece that it is the mirror image of.
    pub mirror_of: Option<String>,
    /// The figures that are read first: stock, cut length, true length.
    pub figures: Vec<Figure>,
    /// The piece as it lies on the trestles, from its right side, and its top edge.
    pub picture: Picture,
    /// The marks in the order in which the tape is pulled.
    pub steps: Vec<Step>,
    /// Every cut with its settings.
    pub cuts: Vec<CutRow>,
    /// What to mind of this piece.
    pub notices: Vec<String>,
}

/// One mark to set out.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct Step {
    /// The name that parts of the picture have that belong to it.
    pub name: String,
    /// Where on the tape, from the end that was marked first, as shown.
    pub tape: Figure,
    /// What to do there, a sentence.
    pub words: String,
    /// The settings to mark it with; nothing when it is square across.
    pub ways: Option<Ways>,
}

/// A cut with its settings.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct CutRow {
    /// Its name: `plumb cut`.
    pub name: String,
    /// `head`, `foot` or `tail` in words.
    pub at: String,
    /// The timber it lies against.
    pub against: Option<String>,
    /// Its settings.
    pub ways: Ways,
}

/// The settings of one cut, four ways.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct Ways {
    /// In degrees, from square across: face and edge.
    pub degrees: Vec<Figure>,
    /// On a roofing square: what to hold on blade and tongue, and which to mark.
    pub square: Vec<Figure>,
    /// On a bevel gauge: mm in 100.
    pub gauge: Vec<Figure>,
    /// On a saw: mitre and tilt.
    pub saw: Vec<Figure>,
}
