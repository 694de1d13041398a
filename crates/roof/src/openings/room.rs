//! Whether a hole, its trimmers and its trimming rafters have room in a slope.

use super::patch::Patch;
use super::{Hole, Misfit, Slope, rule};
use crate::SolveError;
use crate::frame::trimming::Stood;
use crate::frame::{FaceLine, is_ridge};
use geometry::DVec2;
use geometry::surface::{ArcKind, Surface};
use job::Job;

/// Rafter that is left between a trimmer and the next line of the roof, mm:
/// room to nail a joist hanger (common practice).
const LEAST_STUB: f64 = 100.0;

/// Lines level with the plate line to within this are the eaves, mm.
const AT_PLATE: f64 = 0.5;

/// Timber that only touches a line does not cross it: rounding of places, mm.
const TOUCH: f64 = 0.01;

/// What is trimmed for a hole: it and the timber round it.
struct Trimmed<'a> {
    hole: &'a Hole,
    /// Inner faces of its trimming rafters, mm along the axis.
    inner: [f64; 2],
    /// Trimming rafters on each side, and trimmers above and below.
    plies: usize,
}

/// Everything that a hole must keep clear of.
pub struct Room<'a> {
    /// The job.
    pub job: &'a Job,
    /// Its surface.
    pub surface: &'a Surface,
    /// Lines inside faces that carry timber.
    pub lines: &'a [FaceLine],
}

impl Room<'_> {
    /// Look at holes before rafters stand: at least as many are cut as full
    /// centres make.
    ///
    /// # Errors
    /// The first hole that has no room.
    pub fn for_holes(&self, holes: &[Hole]) -> Result<(), SolveError> {
        let rafter = &self.job.timber.rafter;
        let plies = |hole: &Hole| {
            let bays = (hole.x[1] - hole.x[0] + rafter.size.thickness) / rafter.centres;
            // Too many are refused when the rafters stand and can be counted.
            rule::plies(self.job, (bays - TOUCH).ceil().max(1.0) as usize - 1).unwrap_or(1)
        };
        let trimmed: Vec<Trimmed<'_>> =
            holes.iter().map(|hole| Trimmed { hole, inner: hole.x, plies: plies(hole) }).collect();
        self.check(&trimmed)
    }

    /// Look at holes with their trimming rafters where they stand.
    ///
    /// # Errors
    /// The first hole that has no room.
    pub fn for_stood(&self, stood: &[Stood]) -> Result<(), SolveError> {
        let trimmed: Vec<Trimmed<'_>> =
            stood.iter().map(|s| Trimmed { hole: &s.hole, inner: s.inner, plies: s.plies }).collect();
        self.check(&trimmed)
    }

    fn check(&self, trimmed: &[Trimmed<'_>]) -> Result<(), SolveError> {
        for (k, one) in trimmed.iter().enumerate() {
            let misfit = self
                .above_plate(one)
                .or_else(|| self.cover_in_face(one.hole))
                .or_else(|| self.in_face(one.hole, &self.timber(one)))
                .or_else(|| self.purlins(one))
                .or_else(|| trimmed[..k].iter().find_map(|other| self.taken(one, other)));
            if let Some(misfit) = misfit {
                return Err(one.hole.refused(misfit));
            }
        }
        Ok(())
    }

    fn thickness(&self) -> f64 {
        self.job.timber.rafter.size.thickness
    }

    fn depth(&self) -> f64 {
        self.job.timber.rafter.size.depth
    }

    /// Reach of the trimmers up the slope, mm.
    fn reach(&self, one: &Trimmed<'_>) -> [f64; 2] {
        let trimmers = one.plies as f64 * self.thickness();
        [one.hole.s[0] - trimmers, one.hole.s[1] + trimmers]
    }

    /// The hole and all timber that trims it, in plan.
    fn timber(&self, one: &Trimmed<'_>) -> Patch {
        let plies = one.plies as f64 * self.thickness();
        let [low, high] = self.reach(one);
        let slope = &one.hole.slope;
        let low = DVec2::new(one.inner[0] - plies, slope.inward(low, 0.0));
        let high = DVec2::new(one.inner[1] + plies, slope.inward(high, self.depth()));
        Patch::rect(low + TOUCH, high - TOUCH)
    }

    /// The lower trimmer must lie above the plates, and above the ceiling
    /// joists that are lapped to the rafters there; the hole must lie above
    /// what is fixed on the backs of the rafters at the eaves.
    fn above_plate(&self, one: &Trimmed<'_>) -> Option<Misfit> {
        let slope = &one.hole.slope;
        let joist = self.job.timber.parts.ceiling_joist.map_or(0.0, |j| j.depth);
        let [low, _] = self.reach(one);
        // The lowest arris of the trimmer.
        let over = slope.point(0.0, low).z - slope.cos * self.depth() - slope.plane.base_height;
        let sprocket = self.job.eaves.sprocket.map_or(0.0, |s| s.reach / slope.cos);
        // A fillet starts at the fascia, at the plate line at the highest.
        let fillet = self.job.timber.parts.fillet.map_or(0.0, |f| f.depth);
        let lowest = one.hole.cover.iter().map(|p| p.y / slope.cos).fold(one.hole.s[0], f64::min);
        let higher = ((joist - over) / slope.sin).max(sprocket.max(fillet) - lowest);
        (higher > 0.0).then_some(Misfit::Eaves { higher })
    }

    /// What lies on the slope round a hole must lie on its face.
    fn cover_in_face(&self, hole: &Hole) -> Option<Misfit> {
        if hole.cover.is_empty() {
            return None;
        }
        let top = self.depth_of(hole)[1];
        let over = hole.cover.iter().map(|p| p.y / hole.slope.cos).fold(0.0, f64::max) - top;
        if over > 0.0 {
            return Some(Misfit::RidgeHigh { over });
        }
        self.in_face(hole, &Patch::new(hole.cover.clone()))
    }

    /// No line of the roof may come near a patch of its slope.
    fn in_face(&self, hole: &Hole, patch: &Patch) -> Option<Misfit> {
        let slope = &hole.slope;
        let face = self.surface.face(hole.face);
        let n = face.outline.len();
        let at = |k: usize| flat(slope, self.surface.node(face.outline[k % n]).truncate());
        let stub = |kind| LEAST_STUB + self.half_of(kind);
        let mut inside = false;
        let mut nearest: Option<(f64, Misfit)> = None;
        let middle = patch.middle();
        for k in 0..n {
            let (a, b) = (at(k), at(k + 1));
            if (a.y > middle.y) != (b.y > middle.y) && middle.x < a.x + (middle.y - a.y) * (b.x - a.x) / (b.y - a.y) {
                inside = !inside;
            }
            let arc = self.surface.arc(face.arcs[k]);
            let kind = if is_ridge(self.surface, arc) { ArcKind::Ridge } else { arc.kind };
            let (kind, needed) = match kind {
                ArcKind::Eaves if a.y.abs() < AT_PLATE => continue,
                ArcKind::Verge => ("gable", self.job.verge.inset.max(0.0)),
                kind => (line_word(kind), stub(kind)),
            };
            let off = patch.off(a, b);
            if (off <= 0.0 || off + 2.0 * TOUCH < needed) && nearest.as_ref().is_none_or(|(o, _)| off < *o) {
                nearest = Some((off, Misfit::Line { kind, needed }));
            }
        }
        for line in self.lines.iter().filter(|l| l.face == hole.face) {
            let needed = stub(ArcKind::Valley);
            if patch.off(flat(slope, line.from), flat(slope, line.to)) + 2.0 * TOUCH < needed {
                return Some(Misfit::Line { kind: line_word(ArcKind::Valley), needed });
            }
        }
        nearest.map(|(_, misfit)| misfit).or((!inside).then_some(Misfit::Outside))
    }

    /// Half the thickness of the timber on a line, mm.
    fn half_of(&self, kind: ArcKind) -> f64 {
        let timber = &self.job.timber;
        let size = match kind {
            ArcKind::Hip | ArcKind::BrokenHip => timber.hip.size,
            ArcKind::Valley => timber.valley.size,
            ArcKind::Ridge | ArcKind::PitchBreak => timber.ridge.size,
            ArcKind::Eaves | ArcKind::Verge | ArcKind::Abutment => return 0.0,
        };
        size.thickness / 2.0
    }

    /// Purlins lie under the rafters of the slope.
    fn purlins(&self, one: &Trimmed<'_>) -> Option<Misfit> {
        let purlin = self.job.timber.parts.purlin.as_ref()?;
        let half = (purlin.size.thickness + purlin.size.depth) / 2.0;
        let [low, high] = self.reach(one);
        let [foot, top] = self.depth_of(one.hole);
        let halfway = [(foot + top) / 2.0];
        // Slopes that start higher up have no plate to measure from.
        let up = if purlin.up.is_empty() || foot > AT_PLATE { &halfway[..] } else { &purlin.up };
        up.iter().find(|up| **up + half > low && **up - half < high).map(|up| Misfit::Purlin { up: *up })
    }

    /// Lowest and highest place of the face of a hole, up the slope, mm.
    fn depth_of(&self, hole: &Hole) -> [f64; 2] {
        let outline = self.surface.face(hole.face).outline.iter();
        let up = outline.map(|n| flat(&hole.slope, self.surface.node(*n).truncate()).y / hole.slope.cos);
        up.fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], s| [lo.min(s), hi.max(s)])
    }

    /// Two holes abreast share at most a trimming rafter, and none cuts those
    /// of another.
    fn taken(&self, one: &Trimmed<'_>, other: &Trimmed<'_>) -> Option<Misfit> {
        if one.hole.face != other.hole.face {
            return None;
        }
        let ([a, b], [c, d]) = (self.height(one), self.height(other));
        let abreast = a < d + LEAST_STUB && c < b + LEAST_STUB;
        let t = self.thickness();
        let ([e, f], [g, h]) = (self.sides(one), self.sides(other));
        let apart = e >= h + t - AT_PLATE || g >= f + t - AT_PLATE;
        let name = || other.hole.name.clone();
        if abreast && !apart {
            return Some(Misfit::Taken { by: name() });
        }
        (self.cuts(one, other) || self.cuts(other, one)).then(|| Misfit::TrimmingRafters { of: name() })
    }

    /// Whether a trimming rafter of `other` stands between those of `one`: they
    /// run the whole slope.
    fn cuts(&self, one: &Trimmed<'_>, other: &Trimmed<'_>) -> bool {
        (0..other.plies).any(|ply| {
            let out = self.thickness() * (ply as f64 + 0.5);
            [other.inner[0] - out, other.inner[1] + out].iter().any(|at| *at > one.inner[0] && *at < one.inner[1])
        })
    }

    /// Reach up the slope of everything at a hole, mm.
    fn height(&self, one: &Trimmed<'_>) -> [f64; 2] {
        let up = one.hole.cover.iter().map(|p| p.y / one.hole.slope.cos);
        up.fold(self.reach(one), |[lo, hi], s| [lo.min(s), hi.max(s)])
    }

    /// Inner faces of its trimming rafters; what covers more of the slope
    /// counts as if it had trimming rafters along its outsides.
    fn sides(&self, one: &Trimmed<'_>) -> [f64; 2] {
        let t = self.thickness();
        one.hole.cover.iter().fold(one.inner, |[lo, hi], p| [lo.min(p.x + t), hi.max(p.x - t)])
    }
}

/// A plan point along the axis of a slope and inwards from its plate line.
fn flat(slope: &Slope, p: DVec2) -> DVec2 {
    DVec2::new(slope.axis.dot(p), slope.plane.inward.dot(p) - slope.plane.offset)
}

const fn line_word(kind: ArcKind) -> &'static str {
    match kind {
        ArcKind::Eaves => "foot of the slope",
        ArcKind::Ridge => "ridge",
        ArcKind::Hip | ArcKind::BrokenHip => "hip",
        ArcKind::Valley => "valley",
        ArcKind::Verge => "gable",
        ArcKind::PitchBreak => "break in pitch",
        ArcKind::Abutment => "wall that is carried up",
    }
}
