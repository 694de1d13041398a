//! How the job on the desk stands.

use super::{Done, Figure, Scene};
use crate::refusal::Refusal;
use serde::Serialize;

/// How the job on the desk stands after a call.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct Standing {
    /// The whole text of the job. What is kept, exported, sent and merged.
    pub text: String,
    /// What was done, a phrase for undo and redo: `Pitch of wall B 45°`. Empty when nothing changed.
    pub said: String,
    /// What the job is called.
    pub title: String,
    /// The roof, unless it can't be built as asked.
    pub overview: Option<Overview>,
    /// Why there is no roof.
    pub refusal: Option<Refusal>,
}

/// The roof at a glance.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct Overview {
    /// The figures that say most about the roof: pitch, rise, upstand, ridge, timber.
    pub figures: Vec<Figure>,
    /// What the carpenter should know.
    pub notices: Vec<NoticeRow>,
    /// The job says what the roof carries, so that its strength can be asked.
    pub loads: bool,
    /// The walls, in lettering order.
    pub walls: Vec<WallRow>,
    /// The ridges.
    pub ridges: Vec<RidgeRow>,
    /// Every timber, in the order of their marks.
    pub members: Vec<MemberRow>,
    /// Every pattern piece, in the order in which the bench takes them.
    pub pieces: Vec<PieceRow>,
    /// What can be changed of timbers, eaves and verges, by group.
    pub entries: Vec<Entry>,
    /// How much is done.
    pub tally: Tally,
    /// What the 3-D view needs besides its buffers.
    pub scene: Scene,
}

/// A notice.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct NoticeRow {
    /// `stop`, `warn` or `note`.
    pub level: String,
    /// Short stable name.
    pub code: String,
    /// What it says.
    pub text: String,
    /// Where: a wall, a timber's mark, a place in words.
    pub place: String,
    /// The timber it is about, if it is about one.
    pub mark: Option<String>,
}

/// A wall.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct WallRow {
    /// Its letter.
    pub wall: String,
    /// From, to in plan, mm.
    pub line: [[f64; 2]; 2],
    /// Its length as shown.
    pub length: String,
    /// Whether it is carried up as a gable.
    pub gable: bool,
    /// Its pitch, degrees; nothing for gables.
    pub pitch_deg: Option<f64>,
    /// Its pitch as shown, or the word for a gable.
    pub form: String,
}

/// A ridge whose height can be set.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct RidgeRow {
    /// Which; stays the same while the roof keeps its form.
    pub id: String,
    /// From, to, mm.
    pub line: [[f64; 3]; 2],
    /// Height above the datum of the plates, mm.
    pub height_mm: f64,
    /// As shown.
    pub height: String,
}

/// A timber in the list.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct MemberRow {
    /// Its mark.
    pub mark: String,
    /// The mark of its pattern piece.
    pub piece: String,
    /// What it is, in words.
    pub kind: String,
    /// Name for a screen reader: `jack rafter J3, wall A, 2318 mm, cut`.
    pub spoken: String,
    /// How far it is.
    pub done: Done,
    /// It was ticked, and has changed since: it may have to be cut again.
    pub changed: bool,
}

/// A pattern piece in the list.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct PieceRow {
    /// Its mark.
    pub mark: String,
    /// What it is, in words.
    pub kind: String,
    /// How many are to be cut.
    pub count: u32,
    /// How many of them are cut.
    pub cut: u32,
    /// How many of them are fixed.
    pub fixed: u32,
    /// Its section as shown.
    pub size: String,
    /// Long point to long point, as shown.
    pub length: String,
    /// The piece that it is the mirror image of.
    pub mirror_of: Option<String>,
    /// Some timber of it was ticked and has changed since.
    pub changed: bool,
}

/// Something of the job that can be changed.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct Entry {
    /// Its path in the job file.
    pub path: String,
    /// The group it is shown in: `Rafters`, `Eaves`.
    pub group: String,
    /// What it is, a phrase.
    pub label: String,
    /// Its value now, as it may be typed.
    pub value: String,
    /// The words to choose from, if it is a choice.
    pub choices: Vec<String>,
    /// Whether the job says it; otherwise the default holds.
    pub said: bool,
}

/// How much is done.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct Tally {
    /// Timbers in all.
    pub timbers: u32,
    /// Of these cut, fixed ones among them.
    pub cut: u32,
    /// Of these fixed.
    pub fixed: u32,
    /// Ticked, and changed since.
    pub changed: u32,
}
