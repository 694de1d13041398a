//! What a timber is.

use serde::{Deserialize, Serialize};

/// Kind of a timber.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum MemberKind {
    /// Plate to ridge.
    CommonRafter,
    /// Plate to the end of a ridge, in line with it.
    CrownRafter,
    /// Plate to hip.
    JackRafter,
    /// Valley to ridge.
    ValleyJack,
    /// Valley to hip, or valley to valley.
    CrippleRafter,
    /// On a hip line.
    HipRafter,
    /// On a valley line.
    ValleyRafter,
    /// On a ridge line.
    RidgeBoard,
    /// On a wall.
    WallPlate,
    /// Across the rafters.
    Purlin,
    /// From a load-bearing line up to a purlin.
    Strut,
    /// Under the feet of struts, on a load-bearing line.
    SolePlate,
    /// Across a pair of rafters, lapped to their sides.
    Collar,
    /// On the plates, lapped to the feet of rafters.
    CeilingJoist,
    /// Across the ceiling joists, on top of them.
    Binder,
    /// From a purlin or rafter down to a binder.
    Hanger,
    /// Across a corner of the plates.
    AngleTie,
    /// From a corner of the plates to the angle tie.
    DragonTie,
    /// Across the rafters, above or below an opening.
    Trimmer,
    /// Beside an opening; carries the trimmers.
    TrimmingRafter,
    /// A rung between the rafters on the two sides of a gable.
    GableLadder,
    /// Between two rafters.
    Noggin,
    /// On the back of a rafter at the eaves.
    Sprocket,
    /// The board on the tails of the rafters.
    Fascia,
    /// The board under the tails of the rafters.
    Soffit,
    /// On the backs of the rafters behind the fascia.
    TiltingFillet,
    /// The board on the outermost rafter of a gable.
    BargeBoard,
    /// Laid on a slope under the valley of a smaller roof.
    LayBoard,
    /// In the front or the cheek of a dormer.
    Stud,
    /// Beside a butted splice, bolted.
    FishPlate,
    /// One of a pair of folding wedges in a hooked scarf.
    Wedge,
}

impl MemberKind {
    /// The trade's name for it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::CommonRafter => "common rafter",
            Self::CrownRafter => "crown rafter",
            Self::JackRafter => "jack rafter",
            Self::ValleyJack => "valley jack",
            Self::CrippleRafter => "cripple rafter",
            Self::HipRafter => "hip rafter",
            Self::ValleyRafter => "valley rafter",
            Self::RidgeBoard => "ridge board",
            Self::WallPlate => "wall plate",
            Self::Purlin => "purlin",
            Self::Strut => "strut",
            Self::SolePlate => "sole plate",
            Self::Collar => "collar",
            Self::CeilingJoist => "ceiling joist",
            Self::Binder => "binder",
            Self::Hanger => "hanger",
            Self::AngleTie => "angle tie",
            Self::DragonTie => "dragon tie",
            Self::Trimmer => "trimmer",
            Self::TrimmingRafter => "trimming rafter",
            Self::GableLadder => "ladder rung",
            Self::Noggin => "noggin",
            Self::Sprocket => "sprocket",
            Self::Fascia => "fascia board",
            Self::Soffit => "soffit board",
            Self::TiltingFillet => "tilting fillet",
            Self::BargeBoard => "barge board",
            Self::LayBoard => "lay board",
            Self::Stud => "stud",
            Self::FishPlate => "fish plate",
            Self::Wedge => "folding wedge",
        }
    }
}
