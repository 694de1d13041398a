//! What timbers are shown or hidden together.

use roof::solution::MemberKind as Kind;

/// The layer of a kind.
pub(super) const fn of(kind: Kind) -> &'static str {
    match kind {
        Kind::CommonRafter
        | Kind::CrownRafter
        | Kind::JackRafter
        | Kind::ValleyJack
        | Kind::CrippleRafter
        | Kind::HipRafter
        | Kind::ValleyRafter
        | Kind::TrimmingRafter
        | Kind::Trimmer => "rafters",
        Kind::RidgeBoard => "ridges",
        Kind::WallPlate => "plates",
        Kind::Purlin
        | Kind::Strut
        | Kind::SolePlate
        | Kind::Collar
        | Kind::CeilingJoist
        | Kind::Binder
        | Kind::Hanger
        | Kind::AngleTie
        | Kind::DragonTie
        | Kind::Stud
        | Kind::FishPlate
        | Kind::Wedge => "inside",
        Kind::GableLadder
        | Kind::Noggin
        | Kind::Sprocket
        | Kind::Fascia
        | Kind::Soffit
        | Kind::TiltingFillet
        | Kind::BargeBoard
        | Kind::LayBoard => "edges",
    }
}
