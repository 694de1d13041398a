//! The foot of a rafter on the side of a ceiling joist that ties it: the joint that holds a close-couple roof together.

use super::bolts::Bolt;
use super::crossing::Crossing;
use super::lapped::{Fastener, Lapped, Outcome, Timber};
use super::nails::Nail;
use crate::annex::joints::Joints;
use crate::working::Working;
use geometry::Angle;

/// A rafter foot nailed to a joist.
#[derive(Clone, Copy, Debug)]
pub struct RafterFoot<'a> {
    /// The joist, the first timber.
    pub joist: Timber<'a>,
    /// The rafter, the second timber.
    pub rafter: Timber<'a>,
    /// Pitch, degrees.
    pub pitch_deg: f64,
    /// Seat of the birdsmouth, mm; the lap is measured from its outer end.
    pub seat_mm: f64,
    /// Square end of the joist, mm inwards (+) or outwards (−) of the outer end of the seat; `None` when it is cut to the
    /// slope of the rafter.
    pub joist_end_mm: Option<f64>,
    /// Plumb end of the rafter in the same way; `None` when a tail runs past.
    pub rafter_end_mm: Option<f64>,
    /// The nail, driven through the rafter into the joist.
    pub nail: Nail,
    /// Nails staggered by at least 1d.
    pub staggered: bool,
    /// Wind may also push the foot outwards the other way.
    pub turns_round: bool,
}

/// Something else that would carry the force.
#[derive(Clone, Debug, PartialEq)]
pub enum Instead {
    /// A deeper joist, so a bigger lap, with as many nails as needed.
    DeeperJoist {
        /// Its depth, mm.
        depth_mm: f64,
        /// Nails that it takes.
        nails: u32,
    },
    /// Bolts.
    Bolts {
        /// Diameter, mm.
        diameter_mm: f64,
        /// How many.
        count: u32,
    },
}

impl Instead {
    /// In words of the trade.
    #[must_use]
    pub fn words(&self) -> String {
        match self {
            Self::DeeperJoist { depth_mm, nails } => format!("a joist {depth_mm:.0} mm deep takes the {nails} nails"),
            Self::Bolts { diameter_mm, count: 1 } => format!("1 bolt M{diameter_mm:.0} with washers"),
            Self::Bolts { diameter_mm, count } => format!("{count} bolts M{diameter_mm:.0} with washers"),
        }
    }
}

/// What a rafter foot comes to.
#[derive(Clone, Debug, PartialEq)]
pub struct Foot {
    /// The nailed joint.
    pub nailed: Outcome,
    /// What would carry the force when the nails do not fit; empty when they do, or when nothing of what is tried does.
    pub instead: Vec<Instead>,
}

/// Tie force at the foot of a couple of rafters under an even load on plan: `T = w L / (4 tan α)`, N, from `w` in N/mm of
/// plan along one rafter (its pitch times the load on area) and the span of the couple in mm.
pub fn tie_force_n(load_n_per_mm: f64, span_mm: f64, pitch_deg: f64, w: &mut Working) -> f64 {
    let value = load_n_per_mm * span_mm / (4.0 * Angle::deg(pitch_deg).tan());
    w.line("tie force at the foot T_d", value, "N", "statics of a couple", || {
        format!("{load_n_per_mm:.4} × {span_mm} / (4 × tan {pitch_deg}°)")
    })
}

impl<'a> RafterFoot<'a> {
    fn with(&self, joist_depth_mm: f64, fastener: Fastener) -> Lapped<'a> {
        let crossing = Crossing {
            pitch_deg: self.pitch_deg,
            level_depth_mm: joist_depth_mm,
            slope_depth_mm: self.rafter.depth_mm,
            underside_at_mm: self.seat_mm,
            level_end_mm: self.joist_end_mm,
            slope_end_mm: self.rafter_end_mm,
            tie: true,
            turns_round: self.turns_round,
        };
        let joist = Timber { depth_mm: joist_depth_mm, ..self.joist };
        Lapped { lap: crossing.lap(), timbers: [joist, self.rafter], fastener }
    }

    /// The check for a tie force of `force_n` (design, N, along the joist).
    pub fn check(&self, force_n: f64, kmod: f64, annex: &Joints, w: &mut Working) -> Foot {
        let nails = Fastener::Nails { nail: self.nail, head_in: 1, staggered: self.staggered };
        let nailed = self.with(self.joist.depth_mm, nails).check(force_n, kmod, annex, w);
        let instead = if nailed.fits { Vec::new() } else { self.instead(force_n, nails, kmod, annex) };
        Foot { nailed, instead }
    }

    fn instead(&self, force_n: f64, nails: Fastener, kmod: f64, annex: &Joints) -> Vec<Instead> {
        let carries = |depth_mm: f64, fastener: Fastener| {
            let outcome = self.with(depth_mm, fastener).check(force_n, kmod, annex, &mut Working::off());
            outcome.needed.filter(|_| outcome.fits && outcome.worst().ratio <= 1.0)
        };
        let deeper = annex.tried.joist_depths_mm.values.iter().filter(|depth| **depth > self.joist.depth_mm).find_map(
            |depth_mm| carries(*depth_mm, nails).map(|nails| Instead::DeeperJoist { depth_mm: *depth_mm, nails }),
        );
        let bolts = annex.tried.bolts_mm.values.iter().find_map(|diameter_mm| {
            let bolt = Fastener::Bolts(Bolt::black(*diameter_mm, annex));
            carries(self.joist.depth_mm, bolt).map(|count| Instead::Bolts { diameter_mm: *diameter_mm, count })
        });
        deeper.into_iter().chain(bolts).collect()
    }
}
