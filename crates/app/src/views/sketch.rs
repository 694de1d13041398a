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
    /// Where corner 1 lies on the ground of the picture, mm east and north.
    pub start: Option<[f64; 2]>,
    /// The walls in the order in which they were drawn; anticlockwise seen from above once they are closed.
    pub walls: Vec<SketchWall>,
    /// Diagonals from corner to corner.
    pub diagonals: Vec<Diagonal>,
    /// The last wall comes back to the first corner.
    pub closed: bool,
    /// The pitch of the roof, as typed.
    pub pitch: String,
    /// What the tape may be out by, mm, if that is not the usual 5.
    pub tolerance_mm: Option<f64>,
}

/// One wall of a sketch.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SketchWall {
    /// Direction, degrees anticlockwise from the right of the picture.
    pub heading_deg: f64,
    /// Its direction is known, typed or from a job, and not only drawn by eye. Square to wall A or at 45° to it needs
    /// no saying.
    pub known: bool,
    /// Length as drawn, mm; stands in until the tape is read.
    pub drawn_mm: f64,
    /// Length as typed, empty until then. A bare number is mm.
    pub tape: String,
    /// Inside angle at the corner where it starts, degrees as read with a bevel; empty when it was not.
    pub turn: String,
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

/// Asks how a sketch stands, and may take it one step further.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SketchAsk {
    /// The sketch.
    pub sketch: Sketch,
    /// Width that its picture may take, px.
    pub width: f64,
    /// Height that its picture may take, px.
    pub height: f64,
    /// What is done to it first, if anything.
    pub step: Option<SketchStep>,
}

/// One step of drawing.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "do", rename_all = "snake_case")]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub enum SketchStep {
    /// A touch: says what lies there, and on empty ground draws the next wall to it, or closes the plan at corner 1.
    Touch {
        /// Where, px of the picture.
        at: [f64; 2],
        /// Which directions a new wall may have.
        snap: Snap,
    },
    /// Moves the end of the last wall.
    Drag {
        /// Where to, px of the picture.
        at: [f64; 2],
        /// Which directions the wall may have.
        snap: Snap,
    },
    /// Draws the next wall without pointing.
    Ahead {
        /// Turn from the wall before, degrees: 0 straight on, 90 to the left, -90 to the right.
        turn_deg: f64,
        /// Its length as typed.
        tape: String,
    },
    /// Closes the plan with a wall back to corner 1.
    Close,
    /// Takes the last wall back.
    Back,
    /// Puts in a diagonal to be measured.
    Diagonal {
        /// From this corner, from 0.
        from: u32,
        /// To this corner.
        to: u32,
    },
    /// Takes a diagonal out.
    DropDiagonal {
        /// Its number, from 0.
        number: u32,
    },
}

/// Which directions a wall that is drawn may have.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub enum Snap {
    /// Square to wall A.
    #[default]
    Square,
    /// Square to wall A or at 45° to it.
    Half,
    /// Any, in whole degrees.
    Free,
}

/// How a sketch stands.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SketchView {
    /// The sketch after the step, set right where it could be: to be kept in place of the one that was sent.
    pub sketch: Sketch,
    /// The plan. Parts that can be touched are named as in `touched`.
    pub picture: Picture,
    /// What the touch met, or the wall or diagonal that the step put in.
    pub touched: Option<Touched>,
    /// The corners.
    pub corners: Vec<Corner>,
    /// The walls.
    pub walls: Vec<ReadingLine>,
    /// The diagonals.
    pub diagonals: Vec<ReadingLine>,
    /// Closing error, diagonals, size of the plan: as far as they can be told.
    pub figures: Vec<Figure>,
    /// How well the plan closes, a sentence; empty while that can't be told.
    pub closing: String,
    /// What is wrong, and which reading it is likely to be.
    pub notices: Vec<NoticeRow>,
    /// What to measure or draw next, a sentence.
    pub next: String,
    /// The wall or diagonal that `next` is about.
    pub next_part: Option<Touched>,
    /// The corners of a diagonal that `next` asks for and that is not in the sketch yet.
    pub next_diagonal: Option<[u32; 2]>,
    /// The pitch can't be read: why.
    pub pitch_fault: Option<String>,
    /// Lengths are typed in feet and inches.
    pub feet: bool,
    /// The job file, once the plan is whole.
    pub text: Option<String>,
}

/// A part of the sketch.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct Touched {
    /// Which kind.
    pub part: SketchPart,
    /// Its number of this kind, from 0.
    pub number: u32,
    /// Its name in the picture: `wall A`, `corner 2`, `diagonal 0`.
    pub name: String,
}

/// A kind of part of a sketch.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub enum SketchPart {
    /// A corner.
    Corner,
    /// A wall.
    Wall,
    /// A diagonal.
    Diagonal,
}

/// A corner.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct Corner {
    /// Its name: `corner 2`.
    pub name: String,
    /// Where, px.
    pub at: [f64; 2],
}

/// A wall or a diagonal.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct ReadingLine {
    /// Its name in the picture.
    pub name: String,
    /// What it is, for a list: `Wall A, corner 1 to 2`.
    pub label: String,
    /// From, to, px.
    pub line: [[f64; 2]; 2],
    /// Its length as shown; with a mark when it is drawn and not measured.
    pub length: String,
    /// The tape has been read.
    pub measured: bool,
    /// What is wrong with what was typed.
    pub fault: Option<String>,
    /// By how much the plan reads more or less than the tape, as shown.
    pub moved: Option<String>,
}
