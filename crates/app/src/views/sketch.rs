//! A plan while it is being measured: walls by turn and tape, diagonals, and
//! how well they close. It may be half finished.

use super::{Figure, NoticeRow};
use picture::Picture;
use serde::{Deserialize, Serialize};

/// What was drawn and measured so far. The device keeps it as it is.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct Sketch {
    /// What the job will be called.
    pub title: String,
    /// The walls, anticlockwise seen from above, in the order in which they were drawn.
    pub walls: Vec<SketchWall>,
    /// Diagonals from corner to corner.
    pub diagonals: Vec<Diagonal>,
    /// The last wall comes back to the first corner.
    pub closed: bool,
    /// The pitch of the roof, as typed.
    pub pitch: String,
}

/// One wall of a sketch.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SketchWall {
    /// Direction as drawn, degrees anticlockwise from the first wall; square to it where it snapped.
    pub heading_deg: f64,
    /// Length as drawn, mm; stands in until the tape is read.
    pub drawn_mm: f64,
    /// Length as typed, empty until then.
    pub tape: String,
}

/// A diagonal.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct Diagonal {
    /// From this corner, from 0.
    pub from: u32,
    /// To this corner.
    pub to: u32,
    /// Length as typed, empty until then.
    pub tape: String,
}

/// How a sketch stands.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SketchView {
    /// The plan, each wall and corner by its letter.
    pub picture: Picture,
    /// The corners in px of the picture.
    pub corners: Vec<Corner>,
    /// The walls.
    pub walls: Vec<WallLine>,
    /// Px of the picture in a metre, to turn a touch into a length.
    pub px_per_m: f64,
    /// Closing error, size of the plan, out of square: as far as they can be told.
    pub figures: Vec<Figure>,
    /// What is wrong, and which reading it is likely to be.
    pub notices: Vec<NoticeRow>,
    /// What to measure or draw next, a sentence.
    pub next: String,
    /// The job file, once the plan is whole.
    pub text: Option<String>,
}

/// A corner.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct Corner {
    /// Its name.
    pub name: String,
    /// Where, px.
    pub at: [f64; 2],
}

/// A wall.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct WallLine {
    /// Its letter.
    pub wall: String,
    /// From, to, px.
    pub line: [[f64; 2]; 2],
    /// Its length as shown; with a mark when it is drawn and not measured.
    pub length: String,
    /// The tape has been read.
    pub measured: bool,
    /// What is wrong with what was typed.
    pub fault: Option<String>,
    /// By how much the adjustment moved it, as shown.
    pub moved: Option<String>,
}
