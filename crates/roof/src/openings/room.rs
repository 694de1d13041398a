//! Whether a hole, its trimmers and its trimming rafters have room in a slope.

use super::{Hole, Misfit, Slope};
use crate::SolveError;
use crate::frame::FaceLine;
use crate::frame::trimming::Stood;
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

/// A rectangle in plan: along the axis of a slope, and inwards from its plate line.
#[derive(Clone, Copy)]
struct Rect {
    low: DVec2,
    high: DVec2,
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
    /// Look at holes before rafters stand: with as few of them cut as can be.
    ///
    /// # Errors
    /// The first hole that has no room.
    pub fn for_holes(&self, holes: &[Hole]) -> Result<(), SolveError> {
        let trimmed: Vec<Trimmed<'_>> = holes.iter().map(|hole| Trimmed { hole, inner: hole.x, plies: 1 }).collect();
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
                .or_else(|| self.in_face(one))
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
    fn rect(&self, one: &Trimmed<'_>) -> Rect {
        let plies = one.plies as f64 * self.thickness();
        let [low, high] = self.reach(one);
        let slope = &one.hole.slope;
        Rect {
            low: DVec2::new(one.inner[0] - plies, slope.inward(low, 0.0)),
            high: DVec2::new(one.inner[1] + plies, slope.inward(high, self.depth())),
        }
    }

    /// The lower trimmer must lie above the plates, and above the ceiling
    /// joists that are lapped to the rafters there.
    fn above_plate(&self, one: &Trimmed<'_>) -> Option<Misfit> {
        let slope = &one.hole.slope;
        let joist = self.job.timber.parts.ceiling_joist.map_or(0.0, |j| j.depth);
        let [low, _] = self.reach(one);
        // The lowest arris of the trimmer.
        let over = slope.point(0.0, low).z - slope.cos * self.depth() - slope.plane.base_height;
        let higher = (joist - over) / slope.sin;
        (higher > 0.0).then_some(Misfit::Eaves { higher })
    }

    /// No line of the roof may come near.
    fn in_face(&self, one: &Trimmed<'_>) -> Option<Misfit> {
        let (slope, rect) = (&one.hole.slope, self.rect(one).shrunk(TOUCH));
        let face = self.surface.face(one.hole.face);
        let n = face.outline.len();
        let at = |k: usize| flat(slope, self.surface.node(face.outline[k % n]).truncate());
        let stub = |kind| LEAST_STUB + self.half_of(kind);
        let mut inside = false;
        let mut nearest: Option<(f64, Misfit)> = None;
        let middle = (rect.low + rect.high) / 2.0;
        for k in 0..n {
            let (a, b) = (at(k), at(k + 1));
            if (a.y > middle.y) != (b.y > middle.y) && middle.x < a.x + (middle.y - a.y) * (b.x - a.x) / (b.y - a.y) {
                inside = !inside;
            }
            let (kind, needed) = match self.surface.arc(face.arcs[k]).kind {
                ArcKind::Eaves if a.y.abs() < AT_PLATE => continue,
                ArcKind::Verge => ("gable", self.job.verge.inset.max(0.0)),
                kind => (line_word(kind), stub(kind)),
            };
            let off = rect.off(a, b);
            if (off <= 0.0 || off + 2.0 * TOUCH < needed) && nearest.as_ref().is_none_or(|(o, _)| off < *o) {
                nearest = Some((off, Misfit::Line { kind, needed }));
            }
        }
        for line in self.lines.iter().filter(|l| l.face == one.hole.face) {
            let needed = stub(ArcKind::Valley);
            if rect.off(flat(slope, line.from), flat(slope, line.to)) + 2.0 * TOUCH < needed {
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

    /// Two holes abreast share at most a trimming rafter.
    fn taken(&self, one: &Trimmed<'_>, other: &Trimmed<'_>) -> Option<Misfit> {
        if one.hole.face != other.hole.face {
            return None;
        }
        let ([a, b], [c, d]) = (self.reach(one), self.reach(other));
        let abreast = a < d + LEAST_STUB && c < b + LEAST_STUB;
        let t = self.thickness();
        let apart = one.inner[0] >= other.inner[1] + t - AT_PLATE || other.inner[0] >= one.inner[1] + t - AT_PLATE;
        (abreast && !apart).then(|| Misfit::Taken { by: other.hole.name.clone() })
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

impl Rect {
    fn shrunk(self, by: f64) -> Self {
        Self { low: self.low + by, high: self.high - by }
    }

    /// Distance to a segment, mm; 0 where they meet.
    fn off(&self, a: DVec2, b: DVec2) -> f64 {
        if self.meets(a, b) {
            return 0.0;
        }
        let corners = [self.low, DVec2::new(self.high.x, self.low.y), self.high, DVec2::new(self.low.x, self.high.y)];
        let from_corners = corners.iter().map(|c| to_segment(*c, a, b)).fold(f64::INFINITY, f64::min);
        let from_ends =
            [a, b].iter().map(|p| (p.clamp(self.low, self.high) - p).length()).fold(f64::INFINITY, f64::min);
        from_corners.min(from_ends)
    }

    /// Whether a segment passes through.
    fn meets(&self, a: DVec2, b: DVec2) -> bool {
        let mut part = [0.0_f64, 1.0];
        for (low, high, a, d) in [(self.low.x, self.high.x, a.x, b.x - a.x), (self.low.y, self.high.y, a.y, b.y - a.y)]
        {
            if d == 0.0 {
                if a < low || a > high {
                    return false;
                }
                continue;
            }
            let (enter, leave) = ((low - a) / d, (high - a) / d);
            part = [part[0].max(enter.min(leave)), part[1].min(enter.max(leave))];
        }
        part[0] <= part[1]
    }
}

fn to_segment(p: DVec2, a: DVec2, b: DVec2) -> f64 {
    let side = b - a;
    let share =
        if side.length_squared() > 0.0 { ((p - a).dot(side) / side.length_squared()).clamp(0.0, 1.0) } else { 0.0 };
    (a + side * share - p).length()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn distance_of_a_rectangle_to_segments() {
        let rect = Rect { low: DVec2::ZERO, high: DVec2::new(4.0, 2.0) };
        assert_eq!(rect.off(DVec2::new(-1.0, 1.0), DVec2::new(9.0, 1.5)), 0.0);
        assert_eq!(rect.off(DVec2::new(-3.0, -4.0), DVec2::new(-3.0, 9.0)), 3.0);
        assert_eq!(rect.off(DVec2::new(7.0, 6.0), DVec2::new(9.0, 9.0)), 5.0);
        let beside = rect.off(DVec2::new(4.0, 4.0), DVec2::new(6.0, 2.0));
        assert!((beside - 2.0_f64.sqrt()).abs() < 1e-12);
    }
}
