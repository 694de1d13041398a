//! A lapped joint: a force from one timber into another through nails or bolts. How many it needs, how many fit, and
//! whether the timbers would split.

use super::bolts::Bolt;
use super::lap::{Fit, Lap};
use super::nails::{BoreFirst, Nail, bore_first};
use super::spacing::Spacings;
use super::{MOST_FASTENERS, Part, Use, in_a_row, splitting};
use crate::annex::joints::Joints;
use crate::eurocode::wood::Wood;
use crate::working::Working;
use geometry::Angle;

/// What joins the timbers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fastener {
    /// Nails through the head side into the other.
    Nails {
        /// The nail.
        nail: Nail,
        /// The timber, 0 or 1, at the head.
        head_in: usize,
        /// Staggered across the grain by at least 1d, so that all count.
        staggered: bool,
    },
    /// Bolts through both, in one plane.
    Bolts(Bolt),
    /// Bolts through a pair of first timbers with the second between them: two planes.
    BoltsInPair(Bolt),
}

/// A timber of the joint.
#[derive(Clone, Copy, Debug)]
pub struct Timber<'a> {
    /// Its strength class.
    pub wood: &'a Wood,
    /// Thickness along the fastener, mm.
    pub thickness_mm: f64,
    /// Depth, mm.
    pub depth_mm: f64,
}

/// A joint.
#[derive(Clone, Debug)]
pub struct Lapped<'a> {
    /// Where they lap.
    pub lap: Lap,
    /// The first timber of the lap, the second.
    pub timbers: [Timber<'a>; 2],
    /// What joins them.
    pub fastener: Fastener,
}

/// What a joint comes to.
#[derive(Clone, Debug, PartialEq)]
pub struct Outcome {
    /// Design capacity of one fastener, all its planes, N. 0 when the point of a nail is not deep enough.
    pub each_n: f64,
    /// Fasteners that the force needs; `None` when they carry nothing, or far too many were needed.
    pub needed: Option<u32>,
    /// Fasteners that fit.
    pub fit: Fit,
    /// Whether as many fit as are needed.
    pub fits: bool,
    /// Use of as many as are needed, or of all that fit if those are fewer.
    pub used: Use,
    /// Splitting of the first timber and of the second.
    pub splitting: [Use; 2],
    /// Whether the point of the nail is deep enough; always so for bolts.
    pub pointside_ok: bool,
    /// Why holes must be bored for the nails; `None` when they need not. The nails are not counted differently for it: a job
    /// that bores says so by [`Nail::bored`].
    pub bore_first: Option<BoreFirst>,
}

impl Outcome {
    /// The check that is used furthest.
    #[must_use]
    pub fn worst(&self) -> Use {
        self.splitting.iter().fold(self.used, |worst, next| worst.worse(*next))
    }
}

impl Lapped<'_> {
    fn part(&self, timber: usize) -> Part<'_> {
        let Timber { wood, thickness_mm, .. } = self.timbers[timber];
        Part { wood, thickness_mm, angle_deg: self.lap.angle_deg(timber) }
    }

    fn spacings(&self, annex: &Joints) -> [Spacings; 2] {
        [0, 1].map(|timber| {
            let angle = self.lap.angle_deg(timber);
            match self.fastener {
                Fastener::Nails { nail, .. } => Spacings::nail(&nail, self.timbers[timber].wood.rho_k, angle, annex),
                Fastener::Bolts(bolt) | Fastener::BoltsInPair(bolt) => Spacings::bolt(bolt.diameter_mm, angle, annex),
            }
        })
    }

    /// Design capacity of one fastener, and whether its point is deep enough.
    fn each(&self, kmod: f64, annex: &Joints, w: &mut Working) -> (f64, bool) {
        let (first, second) = (self.part(0), self.part(1));
        match self.fastener {
            Fastener::Nails { nail, head_in, .. } => {
                let (head, point) = if head_in == 0 { (first, second) } else { (second, first) };
                let shear = nail.in_shear(&head, &point, annex, w);
                let each = if shear.pointside_ok { shear.capacity.design_n(kmod, annex, w) } else { 0.0 };
                (each, shear.pointside_ok)
            }
            Fastener::Bolts(bolt) => {
                (bolt.single_shear(&first, &second, annex, w).capacity.design_n(kmod, annex, w), true)
            }
            Fastener::BoltsInPair(bolt) => {
                let each = bolt.double_shear(&first, &second, annex, w).capacity.design_n(kmod, annex, w);
                (2.0 * each, true)
            }
        }
    }

    /// Fasteners that count, of as many in each row.
    fn counting(&self, rows: &[u32], fit: &Fit, annex: &Joints) -> f64 {
        let mut quiet = Working::off();
        let count = |n: &u32| match self.fastener {
            Fastener::Nails { nail, staggered, .. } => {
                in_a_row::nails(*n, fit.apart_mm / nail.diameter_mm, nail.bored, staggered, annex, &mut quiet)
            }
            Fastener::Bolts(bolt) | Fastener::BoltsInPair(bolt) => {
                let angle = self.lap.angle_deg(fit.along);
                in_a_row::bolts(*n, fit.apart_mm, bolt.diameter_mm, angle, annex, &mut quiet)
            }
        };
        rows.iter().map(count).sum()
    }

    /// The check for a force of `force_n` (design, N) between the timbers.
    pub fn check(&self, force_n: f64, kmod: f64, annex: &Joints, w: &mut Working) -> Outcome {
        let (each_n, pointside_ok) = self.each(kmod, annex, w);
        let fit = self.lap.fit(&self.spacings(annex), MOST_FASTENERS, w);
        let least = match self.fastener {
            Fastener::Nails { .. } => annex.nails.least_in_joint.value as u32,
            Fastener::Bolts(_) | Fastener::BoltsInPair(_) => 1,
        };
        let needed = self.needed(force_n.abs(), each_n, least.max(1), &fit, annex);
        w.line("fasteners needed", needed.map_or(0.0, f64::from), "", "EN 1995-1-1 8.3.1, 8.5.1", || match needed {
            Some(_) => format!("{:.0} N / {each_n:.0} N each, those in a row counted by n_ef", force_n.abs()),
            None => format!("{:.0} N cannot be carried at {each_n:.0} N each", force_n.abs()),
        });
        let fits = needed.is_some_and(|n| n <= fit.count());
        let rows = fit.spread(needed.unwrap_or(MOST_FASTENERS));
        let counting = self.counting(&rows, &fit, annex);
        let clause = match self.fastener {
            Fastener::Nails { .. } => "EN 1995-1-1 8.3.1",
            Fastener::Bolts(_) | Fastener::BoltsInPair(_) => "EN 1995-1-1 8.5.1",
        };
        let used = Use::of(force_n, counting * each_n, clause, "fasteners of the joint");
        w.line("fasteners of the joint", used.ratio, "", clause, || {
            format!("{:.0} / ({counting:.2} × {each_n:.0})", force_n.abs())
        });
        let splitting = [0, 1].map(|timber| self.splitting(timber, force_n.abs(), &fit, kmod, annex, w));
        let bore_first = self.bore_first(annex, w);
        Outcome { each_n, needed, fit, fits, used, splitting, pointside_ok, bore_first }
    }

    fn bore_first(&self, annex: &Joints, w: &mut Working) -> Option<BoreFirst> {
        let Fastener::Nails { nail, .. } = self.fastener else { return None };
        let easily = annex.nails.softwood_splits_easily.value > 0.0;
        let bore = |timber: usize, w: &mut Working| {
            let part = self.part(timber);
            bore_first(&nail, &part, easily && part.wood.softwood, annex, w)
        };
        bore(0, w).or_else(|| bore(1, w))
    }

    /// Fewest fasteners, spread over as many rows as fit, that carry the force.
    fn needed(&self, force_n: f64, each_n: f64, least: u32, fit: &Fit, annex: &Joints) -> Option<u32> {
        /// Rounding that does not ask for another fastener.
        const HAIR: f64 = 1e-9;
        if fit.places.is_empty() {
            // There are no rows to reduce for; say at least what plain numbers would ask.
            return super::whole_number(force_n, each_n, f64::from(least));
        }
        let rows = u32::try_from(fit.rows()).unwrap_or(1).max(1);
        let carries = |n: u32| {
            let in_rows: Vec<u32> = (0..rows).map(|row| n / rows + u32::from(row < n % rows)).collect();
            self.counting(&in_rows, fit, annex) * each_n * (1.0 + HAIR) >= force_n
        };
        (least..=MOST_FASTENERS).find(|n| each_n > 0.0 && carries(*n))
    }

    /// Splitting of one timber by the part of the force that lies across its grain.
    fn splitting(&self, timber: usize, force_n: f64, fit: &Fit, kmod: f64, annex: &Joints, w: &mut Working) -> Use {
        /// Share of the force across the grain that is only rounding.
        const ALONG: f64 = 1e-6;
        let share = Angle::deg(self.lap.angle_deg(timber)).sin();
        let Timber { thickness_mm, depth_mm, .. } = self.timbers[timber];
        if share < ALONG || fit.places.is_empty() {
            return Use { ratio: 0.0, clause: "EN 1995-1-1 8.1.4", name: "splitting at the joint" };
        }
        let from_edge = self.lap.furthest_from_loaded_edge_mm(timber, &fit.places).unwrap_or(0.0);
        // No more of the breadth counts than the fastener goes in.
        let breadth = match self.fastener {
            Fastener::Nails { nail, head_in, .. } if head_in != timber => {
                nail.pointside_mm(self.timbers[head_in.min(1)].thickness_mm, thickness_mm)
            }
            Fastener::BoltsInPair(_) if timber == 0 => 2.0 * thickness_mm,
            _ => thickness_mm,
        };
        let capacity = splitting::characteristic_n(breadth, depth_mm, from_edge, annex, w);
        splitting::check(force_n * share, capacity, kmod, annex, w)
    }
}
