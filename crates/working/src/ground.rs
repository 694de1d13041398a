//! The roof that a working speaks of: which timber lies in or between which
//! slopes. What lies where is looked up; figures are worked out anew.

use crate::slopes::{self, Corner, Slope};
use geometry::{Angle, DVec2, DVec3};
use job::Job;
use roof::solution::{AxisOut, Member, MemberKind, Solution};

/// A point lies on a plane or line when it misses it by less, mm: surfaces are
/// tidied by up to half of this.
const ON: f64 = 1.0;

/// Two plan directions are one when their sine is below this.
const ONE_WAY: f64 = 1e-4;

/// A job, its solution, and its slopes.
pub(crate) struct Ground<'a> {
    pub job: &'a Job,
    pub solution: &'a Solution,
    pub slopes: Vec<Slope>,
}

/// A hip or valley with the slopes on its sides.
pub(crate) struct Spine<'a> {
    /// The slope it is measured from: the one that starts higher.
    pub a: &'a Slope,
    /// The other.
    pub b: &'a Slope,
    pub corner: Corner,
}

/// What a timber is among the slopes.
pub(crate) enum Lies<'a> {
    /// In a slope, square to its plate.
    In(&'a Slope),
    /// On the line where two slopes meet.
    Between(Spine<'a>),
    /// Anything else.
    Free,
}

pub(crate) fn flat(p: [f64; 3]) -> DVec2 {
    DVec3::from_array(p).truncate()
}

/// Unit plan direction of a timber from foot to head.
pub(crate) fn plan_dir(axis: &AxisOut) -> DVec2 {
    (flat(axis.to) - flat(axis.from)).normalize_or_zero()
}

pub(crate) fn plan_run(axis: &AxisOut) -> f64 {
    (flat(axis.to) - flat(axis.from)).length()
}

impl<'a> Ground<'a> {
    pub(crate) fn new(job: &'a Job, solution: &'a Solution) -> Self {
        Self { job, solution, slopes: slopes::of(job, solution) }
    }

    pub(crate) fn member(&self, mark: &str) -> Option<&'a Member> {
        self.solution.members.iter().find(|m| m.mark == mark)
    }

    /// Where a timber lies.
    pub(crate) fn lies(&self, m: &Member) -> Lies<'_> {
        let (from, to) = (DVec3::from_array(m.axis.from), DVec3::from_array(m.axis.to));
        let dir = plan_dir(&m.axis);
        let on = |s: &&Slope| [from, to].iter().all(|p| (s.height(p.truncate()) - p.z).abs() < ON);
        match m.kind {
            MemberKind::HipRafter | MemberKind::ValleyRafter => self.spine(from, to, dir),
            MemberKind::CommonRafter
            | MemberKind::CrownRafter
            | MemberKind::JackRafter
            | MemberKind::ValleyJack
            | MemberKind::CrippleRafter
            | MemberKind::TrimmingRafter => self
                .slopes
                .iter()
                .filter(on)
                .find(|s| s.inward.perp_dot(dir).abs() < ONE_WAY && s.inward.dot(dir) > 0.0)
                .map_or(Lies::Free, Lies::In),
            _ => Lies::Free,
        }
    }

    fn spine(&self, from: DVec3, to: DVec3, dir: DVec2) -> Lies<'_> {
        let on = |s: &&Slope| [from, to].iter().all(|p| (s.height(p.truncate()) - p.z).abs() < ON);
        let near: Vec<&Slope> = self.slopes.iter().filter(on).collect();
        for (i, a) in near.iter().enumerate() {
            for b in &near[i + 1..] {
                let (a, b) = if a.base >= b.base { (*a, *b) } else { (*b, *a) };
                let Some(corner) = slopes::corner(a, b, a.base.max(b.base)) else { continue };
                if corner.dir.perp_dot(dir).abs() < ONE_WAY && corner.dir.dot(dir) > 0.0 {
                    return Lies::Between(Spine { a, b, corner });
                }
            }
        }
        Lies::Free
    }

    /// Slopes that pass through a point of the roof, other than those given.
    pub(crate) fn others_at(&self, p: [f64; 3], but: &[&Slope]) -> Vec<&Slope> {
        let (at, z) = (flat(p), p[2]);
        let mut found: Vec<&Slope> = self
            .slopes
            .iter()
            .filter(|s| !but.iter().any(|b| core::ptr::eq(*b, *s)) && (s.height(at) - z).abs() < ON)
            .collect();
        // Those that reach the point come before those that only would if they ran on.
        found.sort_by(|a, b| self.misses(a, at).total_cmp(&self.misses(b, at)));
        found
    }

    /// By how much the outline of a slope misses a plan point, mm.
    fn misses(&self, slope: &Slope, at: DVec2) -> f64 {
        let mut least = f64::INFINITY;
        let outlines =
            self.solution.faces.iter().filter(|f| f.id == slope.letter && (f.pitch_deg - slope.pitch).abs() < 1e-6);
        for face in outlines {
            for (k, p) in face.outline.iter().enumerate() {
                let Some(q) = face.outline.get((k + 1) % face.outline.len()) else { continue };
                let (p, side) = (flat(*p), flat(*q) - flat(*p));
                let share = ((at - p).dot(side) / side.length_squared().max(1e-9)).clamp(0.0, 1.0);
                least = least.min((at - p - side * share).length());
            }
        }
        // To the nearest mm, so that rounding does not choose between equals.
        least.round()
    }
}

/// Plan angle between two directions, folded into 0..90°.
pub(crate) fn plan_angle(a: DVec2, b: DVec2) -> f64 {
    Angle::from_rise_run(a.perp_dot(b).abs(), a.dot(b).abs()).to_deg()
}
