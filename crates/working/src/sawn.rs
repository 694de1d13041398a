//! What a cut of a timber follows in plan, found by where it lies on the solid.

use crate::chain::{Chain, Shown, Unit};
use crate::ground::{Ground, flat, plan_dir};
use crate::ways::{self, Way};
use geometry::{DVec2, DVec3};
use roof::solution::{Cut, Member, WallOut};

/// A cut's face is found again by its angles within this, degrees.
const SAME_ANGLES: f64 = 1e-6;

/// A face is upright when its normal points up by less than this (a sine).
const UPRIGHT: f64 = 1e-7;

/// Directions and places agree within this: as a sine, and in mm.
const SAME_WAY: f64 = 2e-5;
const SAME_PLACE: f64 = 0.02;

/// An upright cut, as a line in plan.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Line {
    /// Unit normal out of the timber.
    pub out: DVec2,
    /// Where it crosses the centre line, from the foot of the pitch line, mm in plan.
    pub centre: f64,
    /// How far it moves towards the head for each mm to the left.
    pub lean: f64,
}

/// What an upright cut follows.
pub(crate) enum Follows<'a> {
    /// Square across the timber.
    Square,
    /// The side of another timber, this far from its centre line, mm.
    Side(&'a Member, f64),
    /// The square end of another timber.
    End(&'a Member),
    /// Halfway between it and another.
    Mitre(&'a Member),
    /// The fascia of a wall.
    Fascia(&'a WallOut),
}

/// The normal of a cut's face on the solid and a point of it.
pub(crate) fn face(m: &Member, cut: &Cut) -> Option<(DVec3, DVec3)> {
    let axes = [m.bench.along, m.bench.up, m.bench.across].map(DVec3::from_array);
    m.solid.faces.iter().zip(&m.solid.names).filter(|(_, name)| **name == cut.name).find_map(|(ring, _)| {
        let points: Option<Vec<DVec3>> =
            ring.iter().map(|i| m.solid.points.get(*i as usize).copied().map(DVec3::from_array)).collect();
        let points = points?;
        let first = *points.first()?;
        let mut normal = DVec3::ZERO;
        for pair in points.windows(2) {
            if let [p, q] = pair {
                normal += (*p - first).cross(*q - first);
            }
        }
        let normal = normal.normalize_or_zero();
        let marked = roof::mark(DVec3::from_array(axes.map(|a| normal.dot(a))));
        let same = (marked.face_deg - cut.face_angle_deg).abs() < SAME_ANGLES
            && (marked.edge_deg - cut.edge_angle_deg).abs() < SAME_ANGLES;
        same.then_some((normal, first))
    })
}

/// A cut as a line in plan, if it is upright.
pub(crate) fn line(m: &Member, cut: &Cut) -> Option<Line> {
    let (normal, point) = face(m, cut)?;
    let dir = plan_dir(&m.axis);
    let out = normal.truncate();
    let toward = out.dot(dir);
    if normal.z.abs() > UPRIGHT || toward.abs() < UPRIGHT {
        return None;
    }
    let centre = out.dot(point.truncate() - flat(m.axis.from)) / toward;
    Some(Line { out: out.normalize_or_zero(), centre, lean: -out.dot(dir.perp()) / toward })
}

/// What an upright cut follows.
pub(crate) fn follows<'a>(ground: &Ground<'a>, m: &Member, cut: &Cut, line: &Line) -> Option<Follows<'a>> {
    let dir = plan_dir(&m.axis);
    if let Some(other) = cut.against.as_deref().and_then(|mark| ground.member(mark)) {
        let theirs = plan_dir(&other.axis);
        if line.out.dot(theirs).abs() < SAME_WAY {
            let at = flat(m.axis.from) + dir * line.centre;
            let off = theirs.perp_dot(at - flat(other.axis.from)).abs();
            return Some(Follows::Side(other, off));
        }
        if line.out.perp_dot(theirs).abs() < SAME_WAY {
            return Some(Follows::End(other));
        }
        // Leaving the joint, one way or the other.
        let halves = [dir - theirs, dir + theirs];
        if halves.iter().any(|n| line.out.perp_dot(n.normalize_or_zero()).abs() < SAME_WAY) {
            return Some(Follows::Mitre(other));
        }
        return None;
    }
    let fascia = ground.solution.plan.walls.iter().find(|w| fascia_here(w, m, line));
    let square = line.out.perp_dot(dir).abs() < SAME_WAY;
    fascia.map(Follows::Fascia).or(square.then_some(Follows::Square))
}

fn fascia_here(w: &WallOut, m: &Member, line: &Line) -> bool {
    let from = DVec2::from_array(w.from);
    let inward = (DVec2::from_array(w.to) - from).normalize_or_zero().perp();
    let at = flat(m.axis.from) + plan_dir(&m.axis) * line.centre;
    line.out.perp_dot(inward).abs() < SAME_WAY && (inward.dot(at - from) + w.overhang_mm).abs() < SAME_PLACE
}

/// Plan angle of an upright cut from square across, degrees.
pub(crate) fn turn(chain: &mut Chain, ground: &Ground<'_>, m: &Member, follows: &Follows<'_>, line: &Line) -> Shown {
    let words = "Plan angle of the cut from square across";
    let me = Way::Timber(m);
    match follows {
        Follows::Square => chain.given(format!("{words}: none"), 0.0, Unit::Degrees),
        Follows::Side(other, _) => {
            let between = ways::between(chain, ground, me, Way::Timber(other));
            chain.angle(words, format!("90° − {between}"))
        }
        Follows::Fascia(wall) => {
            let between = ways::between(chain, ground, me, Way::Wall(wall));
            if between.value >= 90.0 {
                return chain.given(format!("{words}: none"), 0.0, Unit::Degrees);
            }
            chain.angle(words, format!("90° − {between}"))
        }
        Follows::End(other) => ways::between(chain, ground, me, Way::Timber(other)),
        Follows::Mitre(other) => {
            let between = ways::between(chain, ground, me, Way::Timber(other));
            let half = format!("{between} ÷ 2");
            let acute = line.out.dot(plan_dir(&m.axis)).abs() < core::f64::consts::FRAC_1_SQRT_2;
            chain.angle(format!("{words}: the two share it"), if acute { format!("90° − {half}") } else { half })
        }
    }
}

/// How far short of the crossing of the two centre lines the cut ends the
/// timber, level, mm. `None` for what follows no side of a timber.
pub(crate) fn short_of(chain: &mut Chain, ground: &Ground<'_>, m: &Member, follows: &Follows<'_>) -> Option<Shown> {
    let Follows::Side(other, off) = follows else { return None };
    let name = format!("{} {}", other.kind.name(), other.mark);
    let thick = chain.given(format!("Thickness of {name}"), other.size.thickness_mm, Unit::Millimetres);
    let half = if (off - thick.value / 2.0).abs() < SAME_PLACE {
        chain.length("Half of it", format!("{thick} ÷ 2"))
    } else if (off - thick.value).abs() < SAME_PLACE {
        thick
    } else {
        chain.read_off("from the centre line of that timber to the side that the cut lies on", *off, Unit::Millimetres)
    };
    let between = ways::between(chain, ground, Way::Timber(m), Way::Timber(other));
    if between.value >= 90.0 {
        return Some(chain.conclude("They stand square, so that is it", &half));
    }
    Some(chain.length("The same on the slant, level along the timber", format!("{half} ÷ sin {between}")))
}
