//! A collar bolted or nailed to its rafters.

use super::crossing::Crossing;
use super::lapped::{Fastener, Lapped, Outcome, Timber};
use crate::annex::joints::Joints;
use crate::working::Working;

/// A collar on the side of a rafter, or a pair of collars with the rafter between.
#[derive(Clone, Copy, Debug)]
pub struct Collar<'a> {
    /// The collar (one of the pair), the first timber.
    pub collar: Timber<'a>,
    /// The rafter.
    pub rafter: Timber<'a>,
    /// Pitch, degrees.
    pub pitch_deg: f64,
    /// What joins them. [`Fastener::BoltsInPair`] for a pair of collars.
    pub fastener: Fastener,
    /// The collar is a tie in one case of load and a strut in another: both directions count for edges and ends.
    pub turns_round: bool,
}

impl Collar<'_> {
    /// The check for a force of `force_n` (design, N) along the collar, positive in tension. Its end is cut to the top of
    /// the rafter.
    pub fn check(&self, force_n: f64, kmod: f64, annex: &Joints, w: &mut Working) -> Outcome {
        let crossing = Crossing {
            pitch_deg: self.pitch_deg,
            level_depth_mm: self.collar.depth_mm,
            slope_depth_mm: self.rafter.depth_mm,
            underside_at_mm: 0.0,
            level_end_mm: None,
            slope_end_mm: None,
            tie: force_n >= 0.0,
            turns_round: self.turns_round,
        };
        let joint = Lapped { lap: crossing.lap(), timbers: [self.collar, self.rafter], fastener: self.fastener };
        joint.check(force_n, kmod, annex, w)
    }
}
