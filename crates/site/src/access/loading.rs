//! Whether people and a stack are too heavy for a bay: on average, and on a patch.

use super::rules::LoadClass;
use super::statement::{Basis, Verdict};
use serde::{Deserialize, Serialize};

/// Standard acceleration of free fall, m/s².
pub const GRAVITY: f64 = 9.806_65;
/// Newtons in a kilonewton.
const N_PER_KN: f64 = 1000.0;

/// What a bay carries, kN: a spread load in kN/m² on a bay by a width in m.
#[must_use]
pub fn bay_kn(spread: f64, bay_m: f64, width_m: f64) -> f64 {
    spread * bay_m * width_m
}

/// Kilograms that weigh so many kN.
#[must_use]
pub fn kilograms(kn: f64) -> f64 {
    kn * N_PER_KN / GRAVITY
}

/// Kilonewtons of so many kg.
#[must_use]
pub fn kilonewtons(kg: f64) -> f64 {
    kg * GRAVITY / N_PER_KN
}

/// The share of a stack that lies in one bay, kg: evenly along its length.
#[must_use]
pub fn share_in_bay(stack_kg: f64, length_m: f64, bay_m: f64) -> f64 {
    if length_m > bay_m { stack_kg * bay_m / length_m } else { stack_kg }
}

/// How many pieces a weight is, whole ones; none for what is not a weight.
#[must_use]
pub fn whole_pieces(left_kg: f64, piece_kg: f64) -> u32 {
    let pieces = left_kg / piece_kg;
    if pieces >= 0.0 { pieces.floor() as u32 } else { 0 }
}

/// A stack on the platform.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Stack {
    /// What lies in it, e.g. `common rafter C1`.
    pub what: String,
    /// How many.
    pub pieces: u32,
    /// Length of each, mm.
    pub length_mm: f64,
    /// All of it, kg.
    pub kg: f64,
}

/// One bay with people and a stack on it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct BayCheck {
    /// Name of the load class.
    pub class: String,
    /// Spread load, kN/m².
    pub spread_kn_m2: f64,
    /// How the spread load was come by.
    pub spread_basis: Basis,
    /// What the bay carries, kg.
    pub capacity_kg: f64,
    /// People on it.
    pub people: u32,
    /// Their weight with tools, kg.
    pub people_kg: f64,
    /// Left for material, kg; below 0 with too many people.
    pub left_kg: f64,
    /// The share of the stack in the bay, kg.
    pub share_kg: f64,
    /// The average over the bay.
    pub average: Verdict,
    /// The heaviest half metre of the stack, kN.
    pub patch_kn: f64,
    /// What a patch of half a metre square carries, kN.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub patch_limit_kn: Option<f64>,
    /// The patch.
    pub patch: Verdict,
    /// Pieces of the stack that fit beside the people, by the average.
    pub pieces_fit: u32,
    /// People that the bay carries with nothing else on it.
    pub people_fit: u32,
}

impl BayCheck {
    /// The worse of the average and the patch.
    #[must_use]
    pub fn overall(&self) -> Verdict {
        self.average.max(self.patch)
    }
}

/// What stands on a bay.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OnBay<'a> {
    /// The stack.
    pub stack: &'a Stack,
    /// People.
    pub people: u32,
    /// Weight of one with tools, kg.
    pub person_kg: f64,
    /// Length of the bay, m.
    pub bay_m: f64,
    /// Width of the platform, m.
    pub width_m: f64,
    /// Side of the patch, m.
    pub patch_m: f64,
}

/// Check one bay. The stack is taken as no wider than the patch, which is the worse case.
#[must_use]
pub fn check_bay(class: &LoadClass, on: &OnBay<'_>) -> BayCheck {
    let spread = class.spread.own();
    let basis = class.spread.basis();
    let capacity = kilograms(bay_kn(spread, on.bay_m, on.width_m));
    let people_kg = f64::from(on.people) * on.person_kg;
    let left = capacity - people_kg;
    let length_m = on.stack.length_mm / 1000.0;
    let share = share_in_bay(on.stack.kg, length_m, on.bay_m);
    let patch_kn = kilonewtons(share_in_bay(on.stack.kg, length_m, on.patch_m));
    let limit = class.patch.as_ref();
    let patch = limit.map_or(Verdict::Ask, |limit| Verdict::at_most(patch_kn, limit.own(), limit.basis()));
    let piece_share = share / f64::from(on.stack.pieces.max(1));
    BayCheck {
        class: class.name.clone(),
        spread_kn_m2: spread,
        spread_basis: basis,
        capacity_kg: capacity,
        people: on.people,
        people_kg,
        left_kg: left,
        share_kg: share,
        average: Verdict::at_most(share, left, basis),
        patch_kn,
        patch_limit_kn: limit.map(super::rules::Figure::own),
        patch,
        pieces_fit: whole_pieces(left, piece_share),
        people_fit: whole_pieces(capacity, on.person_kg),
    }
}
