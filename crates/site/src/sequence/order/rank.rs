//! When the trade fixes a timber: its part of the roof, and its turn within that part.

use super::super::graph::{Graph, Timber};
use super::systems::{Systems, under_struts};
use roof::solution::MemberKind;
use strength::carrying::is_rafter;

/// A turn within a part of a roof, or before or after all parts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Turn {
    /// Plates and sole plates on walls.
    Plates,
    /// Angle and dragon ties.
    Ties,
    /// Ceiling joists.
    Joists,
    /// Trimmers of hatches.
    HatchTrimmers,
    /// Sole plates of struts, on the joists.
    StrutSoles,
    /// Sole plates, studs and plates of a dormer.
    DormerFrame,
    /// Ridges, and purlins at a break of pitch.
    Spine,
    /// Crown rafters.
    Crown,
    /// Hips.
    Hips,
    /// Valley rafters and lay boards.
    Valleys,
    /// Purlins.
    Purlins,
    /// Struts.
    Struts,
    /// Common rafters and those beside openings.
    Commons,
    /// Jacks and cripples.
    Jacks,
    /// Trimmers of openings.
    Trimmers,
    /// What is left of rafters that an opening cuts.
    CutRafters,
    /// Collars.
    Collars,
    /// Binders.
    Binders,
    /// Hangers.
    Hangers,
    /// Noggins.
    Noggins,
    /// Rungs of gable ladders.
    Ladder,
    /// Sprockets.
    Sprockets,
    /// Tilting fillets.
    Fillets,
    /// Fascia boards.
    Fascia,
    /// Soffit boards.
    Soffit,
    /// Barge boards.
    Barge,
}

/// Order of a timber: stage (before the parts, in them, after them), part, turn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Rank {
    /// 0 before all parts of the roof, 1 in them, 2 after them.
    pub stage: u8,
    /// The part.
    pub part: usize,
    /// The turn.
    pub turn: Turn,
}

/// The rank of each timber.
pub fn ranks(graph: &Graph<'_>, systems: &Systems) -> Vec<Rank> {
    let mut ranks: Vec<Rank> = graph.timbers.iter().enumerate().map(|(k, t)| rank(graph, systems, k, t)).collect();
    // Fish plates and wedges go with the later of the lengths that they join.
    for (k, t) in graph.timbers.iter().enumerate() {
        if matches!(t.kind(), MemberKind::FishPlate | MemberKind::Wedge) {
            let joined = t.contacts.iter().filter_map(|c| graph.timbers.get(c.other).map(|o| (c.other, o)));
            let carried = joined.filter(|(_, o)| !matches!(o.kind(), MemberKind::FishPlate | MemberKind::Wedge));
            if let Some(rank) = carried.filter(|(_, o)| !o.member.splices.is_empty()).map(|(o, _)| ranks[o]).max() {
                ranks[k] = rank;
            }
        }
    }
    ranks
}

fn rank(graph: &Graph<'_>, systems: &Systems, k: usize, t: &Timber<'_>) -> Rank {
    let part = systems.of.get(k).copied().unwrap_or(systems.count);
    let touches = |which: &dyn Fn(MemberKind) -> bool| {
        t.contacts.iter().filter_map(|c| graph.timbers.get(c.other)).any(|o| which(o.kind()))
    };
    let (stage, turn) = match t.kind() {
        MemberKind::WallPlate | MemberKind::SolePlate if t.on_wall => (0, Turn::Plates),
        MemberKind::AngleTie | MemberKind::DragonTie => (0, Turn::Ties),
        MemberKind::CeilingJoist => (0, Turn::Joists),
        MemberKind::Trimmer if touches(&|o| o == MemberKind::CeilingJoist) && !touches(&is_rafter) => {
            (0, Turn::HatchTrimmers)
        }
        MemberKind::SolePlate if under_struts(graph, t) => (0, Turn::StrutSoles),
        MemberKind::WallPlate | MemberKind::SolePlate | MemberKind::Stud => (1, Turn::DormerFrame),
        MemberKind::RidgeBoard => (1, Turn::Spine),
        MemberKind::Purlin if systems.pitch_break.get(k).copied().unwrap_or(false) => (1, Turn::Spine),
        MemberKind::CrownRafter => (1, Turn::Crown),
        MemberKind::HipRafter => (1, Turn::Hips),
        MemberKind::ValleyRafter | MemberKind::LayBoard | MemberKind::FishPlate | MemberKind::Wedge => {
            (1, Turn::Valleys)
        }
        MemberKind::Purlin => (1, Turn::Purlins),
        MemberKind::Strut => (1, Turn::Struts),
        kind if is_rafter(kind) && is_cut(graph, t) => (1, Turn::CutRafters),
        MemberKind::CommonRafter | MemberKind::TrimmingRafter => (1, Turn::Commons),
        MemberKind::JackRafter | MemberKind::ValleyJack | MemberKind::CrippleRafter => (1, Turn::Jacks),
        MemberKind::Trimmer => (1, Turn::Trimmers),
        MemberKind::Collar => (1, Turn::Collars),
        MemberKind::Binder => (1, Turn::Binders),
        MemberKind::Hanger => (1, Turn::Hangers),
        MemberKind::Noggin => (2, Turn::Noggins),
        MemberKind::GableLadder => (2, Turn::Ladder),
        MemberKind::Sprocket => (2, Turn::Sprockets),
        MemberKind::TiltingFillet => (2, Turn::Fillets),
        MemberKind::Fascia => (2, Turn::Fascia),
        MemberKind::Soffit => (2, Turn::Soffit),
        MemberKind::BargeBoard => (2, Turn::Barge),
    };
    Rank { stage, part: if stage == 1 { part } else { 0 }, turn }
}

/// Whether a rafter ends against a trimmer.
fn is_cut(graph: &Graph<'_>, t: &Timber<'_>) -> bool {
    let ends = t.contacts.iter().filter(|c| c.endways).filter_map(|c| graph.timbers.get(c.other));
    ends.into_iter().any(|o| o.kind() == MemberKind::Trimmer)
}
