//! What covers the slopes: tiles, slates or sheets, battens, underlay, edges, ventilation.
//!
//! A covering is data of a region ([`Coverings`]); the job may put its maker's figures over it ([`Chosen`]). [`cover`]
//! lays it on the real slopes with their overhangs: courses of one equal gauge from the eaves up, each piece whole or
//! cut by a hip, a valley, a verge, a wall or a hole.
//!
//! Not counted: roofs and cheeks of dormers, mortar, flashing at openings beyond one set each, what a sprocket bends.

mod air;
mod along;
mod chosen;
mod count;
mod cover;
mod fault;
mod figures;
mod notes;
mod order_lines;
mod out;
mod ring;
mod rows;
mod slope;
pub mod sums;
mod under;

pub use air::{eaves_slot, ridge_slot, share_of_floor};
pub use chosen::Chosen;
pub use cover::cover;
pub use fault::CoverFault;
pub use figures::{
    BattenKind, BattenSize, Between, Bond, Common, Covering, Coverings, Figure, Hung, Joints, LapStep, Share, Standing,
    UnderlayLap, Ventilation, VentilationShare, Way,
};
pub use out::{Battens, CoverLine, CoverNotice, CoverUnit, Covered, Cuts, SlopeCovered, Source, Underlay, Vent};

/// Who decides how a covering is fixed.
pub const CAUTION: &str = "Fixing against wind is not worked out here: the maker's fixing specification for the site, to BS 5534, decides how many pieces are nailed or clipped and whether the covering may be used at this pitch and exposure.";

/// Lengths that differ less are the same, mm: a tape reads no finer, and a lap no better than that is none the worse.
const SAME: f64 = 0.05;

/// Pitches that differ less are the same, degrees: 0.2 mm in 1.2 m, less than a level shows.
const SAME_PITCH: f64 = 0.01;

/// Eaves whose heights differ less lie in one level, mm: a batten takes that up.
const ONE_LEVEL: f64 = 5.0;
