//! Openings, dormers, and the lines inside the plan that carry load.

use schemars::JsonSchema;

/// A hole in a slope, or in the ceiling.
#[derive(Clone, Debug, PartialEq)]
pub struct Opening {
    /// Its name in the file.
    pub name: String,
    /// What it is for.
    pub kind: OpeningKind,
    /// The wall whose slope it lies in: an index into [`crate::Job::walls`].
    pub wall: usize,
    /// Along the plate line from the start of the wall to the near edge of the
    /// opening, mm.
    pub along: f64,
    /// From the plate line to the lower edge of the opening, mm.
    pub up: Distance,
    /// Clear width along the wall, mm.
    pub width: f64,
    /// Clear height, measured as `up` is, mm.
    pub height: f64,
    /// Chimneys: thickness of the masonry round the flue, mm.
    pub flue_wall: Option<f64>,
}

/// A distance up a slope.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Distance {
    /// Along the slope, mm.
    Slope(f64),
    /// Level, in plan, mm.
    Plan(f64),
}

/// What an opening is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "kebab-case")]
pub enum OpeningKind {
    /// A window in the slope; trimmed square to it.
    RoofWindow,
    /// A chimney that passes through the slope; measured in plan.
    Chimney,
    /// A hatch in the ceiling; measured in plan from the wall.
    Hatch,
}

/// A dormer on a slope.
#[derive(Clone, Debug, PartialEq)]
pub struct Dormer {
    /// Its name in the file.
    pub name: String,
    /// Its roof.
    pub kind: DormerKind,
    /// The wall whose slope it stands on: an index into [`crate::Job::walls`].
    pub wall: usize,
    /// Along the plate line from the start of the wall to the outside of its
    /// near cheek, mm.
    pub along: f64,
    /// From the plate line of the wall to the outside of its front, level, mm.
    pub back: f64,
    /// Outside of cheek to outside of cheek, mm.
    pub width: f64,
    /// Height of its plates above those of the wall, mm.
    pub plate: f64,
    /// Pitch of its roof, degrees.
    pub pitch_deg: f64,
    /// How its roof meets the main slope.
    pub valley: ValleyAs,
}

/// The roof of a dormer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "kebab-case")]
pub enum DormerKind {
    /// A ridge square to the main slope, with a gable in front.
    Gable,
    /// One slope that falls towards the front, flatter than the main slope.
    LeanTo,
}

/// How the valley of a dormer is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "kebab-case")]
pub enum ValleyAs {
    /// Boards laid on the backs of the main rafters.
    LayBoard,
    /// Valley rafters, framed into the main slope.
    Rafter,
}

/// A wall or beam inside the plan that carries load down.
#[derive(Clone, Debug, PartialEq)]
pub struct BearingLine {
    /// Its name in the file.
    pub name: String,
    /// One end of its centre line in plan, mm.
    pub from: [f64; 2],
    /// The other end.
    pub to: [f64; 2],
    /// Height of its top above the datum of the job, mm.
    pub top: f64,
}
