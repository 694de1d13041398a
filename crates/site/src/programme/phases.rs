//! The phases of the work, and what waits for what.

use job::WorkItem;
use roof::solution::MemberKind;
use serde::{Deserialize, Serialize};

/// Who does a phase.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Gang {
    /// Scaffolders.
    Scaffolders,
    /// Carpenters, who do one thing after the other.
    Carpenters,
    /// Roofers.
    Roofers,
}

/// A phase of the work.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Phase {
    /// The scaffold or other access goes up.
    AccessUp,
    /// Plates and straps.
    Plates,
    /// Ceiling joists as ties, and ties across corners.
    Joists,
    /// Pattern pairs tried, and the set cut.
    Cutting,
    /// Common rafters, ridge and collars.
    MainFrame,
    /// Hips, valleys and jacks.
    HipsValleys,
    /// Purlins and struts.
    Purlins,
    /// Openings trimmed, dormers.
    Openings,
    /// Gable ladders, fascia, soffit, barge boards.
    EavesVerges,
    /// Binders and hangers under the roof.
    Inside,
    /// Underlay and battens.
    UnderlayBattens,
    /// The covering.
    Covering,
    /// Cappings, lead, gutters, and what is left to put right.
    Edges,
    /// The access comes down.
    AccessDown,
}

impl Phase {
    /// Every phase, none before one that it waits for.
    pub const ALL: [Self; 14] = [
        Self::AccessUp,
        Self::Plates,
        Self::Joists,
        Self::Cutting,
        Self::MainFrame,
        Self::HipsValleys,
        Self::Purlins,
        Self::Openings,
        Self::EavesVerges,
        Self::Inside,
        Self::UnderlayBattens,
        Self::Covering,
        Self::Edges,
        Self::AccessDown,
    ];

    /// Its name on the sheets.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::AccessUp => "Access up",
            Self::Plates => "Plates and straps",
            Self::Joists => "Ceiling joists and ties",
            Self::Cutting => "Pattern pair, and cutting the set",
            Self::MainFrame => "Main frame",
            Self::HipsValleys => "Hips, valleys and jacks",
            Self::Purlins => "Purlins and struts",
            Self::Openings => "Openings and dormers",
            Self::EavesVerges => "Noggins, straps, eaves and verges",
            Self::Inside => "Binders and hangers",
            Self::UnderlayBattens => "Underlay and battens",
            Self::Covering => "Covering",
            Self::Edges => "Cappings, lead, gutters and putting right",
            Self::AccessDown => "Access down",
        }
    }

    /// Who does it.
    #[must_use]
    pub const fn gang(self) -> Gang {
        match self {
            Self::AccessUp | Self::AccessDown => Gang::Scaffolders,
            Self::UnderlayBattens | Self::Covering | Self::Edges => Gang::Roofers,
            _ => Gang::Carpenters,
        }
    }

    /// Whether it stops in bad weather.
    #[must_use]
    pub const fn exposed(self) -> bool {
        !matches!(self, Self::Inside)
    }

    /// What must be done before it: by the order of the work, and because the carpenters do one thing at a time.
    #[must_use]
    pub const fn after(self) -> &'static [Self] {
        match self {
            Self::AccessUp => &[],
            Self::Plates => &[Self::AccessUp],
            Self::Joists => &[Self::Plates],
            // The set is cut to the plates as they lie.
            Self::Cutting => &[Self::Plates, Self::Joists],
            Self::MainFrame => &[Self::Joists, Self::Cutting],
            Self::HipsValleys => &[Self::MainFrame],
            Self::Purlins => &[Self::HipsValleys],
            Self::Openings => &[Self::Purlins],
            Self::EavesVerges => &[Self::Openings],
            // Binders and hangers go on under the felt, in the dry.
            Self::Inside | Self::UnderlayBattens => &[Self::EavesVerges],
            Self::Covering => &[Self::UnderlayBattens],
            Self::Edges => &[Self::Covering],
            Self::AccessDown => &[Self::Edges],
        }
    }
}

/// The phase in which a timber is fixed, and what its hours are given for; nothing for what goes with another.
pub(super) const fn of_member(kind: MemberKind) -> Option<(Phase, WorkItem)> {
    use MemberKind as Kind;
    Some(match kind {
        Kind::WallPlate | Kind::SolePlate => (Phase::Plates, WorkItem::Plate),
        Kind::CommonRafter | Kind::CrownRafter | Kind::TrimmingRafter => (Phase::MainFrame, WorkItem::Rafter),
        Kind::RidgeBoard => (Phase::MainFrame, WorkItem::Ridge),
        Kind::Collar => (Phase::MainFrame, WorkItem::Collar),
        Kind::JackRafter | Kind::ValleyJack | Kind::CrippleRafter => (Phase::HipsValleys, WorkItem::Jack),
        Kind::HipRafter | Kind::ValleyRafter => (Phase::HipsValleys, WorkItem::Hip),
        Kind::LayBoard => (Phase::HipsValleys, WorkItem::Board),
        Kind::Purlin => (Phase::Purlins, WorkItem::Purlin),
        Kind::Strut => (Phase::Purlins, WorkItem::Strut),
        Kind::CeilingJoist => (Phase::Joists, WorkItem::CeilingJoist),
        Kind::AngleTie | Kind::DragonTie => (Phase::Joists, WorkItem::Tie),
        Kind::Binder => (Phase::Inside, WorkItem::Binder),
        Kind::Hanger => (Phase::Inside, WorkItem::Strut),
        // What keeps the rafters upright is there before the roof is loaded.
        Kind::Noggin | Kind::GableLadder | Kind::Sprocket => (Phase::EavesVerges, WorkItem::Noggin),
        Kind::Fascia | Kind::Soffit | Kind::BargeBoard | Kind::TiltingFillet => (Phase::EavesVerges, WorkItem::Board),
        // Trimmers are within the hours of their opening, studs within those of their dormer, plates and wedges of a
        // splice within those of the timber.
        Kind::Trimmer | Kind::Stud | Kind::FishPlate | Kind::Wedge => return None,
    })
}
