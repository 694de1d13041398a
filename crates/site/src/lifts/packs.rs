//! Packs: timbers of a kind with their weight, and how many go up at once.

use super::Lift;
use roof::solution::MemberKind;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// All timbers of one kind.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Pack {
    /// Kind.
    pub kind: MemberKind,
    /// How many.
    pub pieces: u32,
    /// Weight of all, dry, kg.
    pub kg: f64,
    /// Weight of all, damp, kg.
    pub damp_kg: f64,
    /// The heaviest piece, damp, kg.
    pub heaviest_kg: f64,
    /// The longest piece, mm.
    pub longest_mm: f64,
    /// Pieces that one lift of a hoist takes, reckoned by the heaviest, damp; 0 when it takes none.
    pub each_lift: u32,
    /// Lifts with the hoist; none when it takes no piece.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub lifts: Option<u32>,
}

/// The packs of a roof, by kind, for a hoist that lifts so many kg.
#[must_use]
pub fn packs(lifts: &[Lift], hoist_kg: f64) -> Vec<Pack> {
    let mut by_kind: BTreeMap<MemberKind, Pack> = BTreeMap::new();
    for lift in lifts {
        let pack = by_kind.entry(lift.kind).or_insert(Pack {
            kind: lift.kind,
            pieces: 0,
            kg: 0.0,
            damp_kg: 0.0,
            heaviest_kg: 0.0,
            longest_mm: 0.0,
            each_lift: 0,
            lifts: None,
        });
        pack.pieces += 1;
        pack.kg += lift.kg;
        pack.damp_kg += lift.damp_kg;
        pack.heaviest_kg = pack.heaviest_kg.max(lift.damp_kg);
        pack.longest_mm = pack.longest_mm.max(lift.length_mm);
    }
    let mut packs: Vec<Pack> = by_kind.into_values().collect();
    for pack in &mut packs {
        let fit = if pack.heaviest_kg > 0.0 { (hoist_kg / pack.heaviest_kg).floor() } else { 0.0 };
        // A capacity that is no number takes nothing.
        pack.each_lift = if fit >= 1.0 { fit.min(f64::from(pack.pieces)) as u32 } else { 0 };
        pack.lifts = (pack.each_lift > 0).then(|| pack.pieces.div_ceil(pack.each_lift));
    }
    packs
}
