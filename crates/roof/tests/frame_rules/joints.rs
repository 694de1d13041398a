//! Cuts lie against the timbers that they name, and are worth making.

use super::roofs::{Broken, all};
use crate::reading::{area_vector, member, vec3};
use geometry::DVec3;
use roof::solution::Member;

/// Faces in contact part by no more than this, mm (the contract of the solver).
const GAP: f64 = 0.05;

/// Faces that overlap by less than this do not bear on one another, mm.
const BEARING: f64 = 0.05;

/// A cut narrower than this can neither be marked nor made, mm.
const LEAST_CUT: f64 = 1.0;

fn faces(m: &Member) -> impl Iterator<Item = (&str, Vec<DVec3>)> {
    let point = |k: &u32| vec3(m.solid.points[*k as usize]);
    m.solid.faces.iter().zip(&m.solid.names).map(move |(ring, name)| (name.as_str(), ring.iter().map(point).collect()))
}

/// Reach of a ring along a direction.
fn reach(ring: &[DVec3], along: DVec3) -> [f64; 2] {
    ring.iter().map(|p| along.dot(*p)).fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], v| [lo.min(v), hi.max(v)])
}

/// Whether two flat rings face one another in contact: opposite, in one
/// plane, and abreast both across and in height.
fn touch(a: &[DVec3], b: &[DVec3]) -> bool {
    let normal = area_vector(a).normalize();
    if normal.dot(area_vector(b).normalize()) > -0.999_999 {
        return false;
    }
    let across = DVec3::new(-normal.y, normal.x, 0.0).normalize_or(DVec3::X);
    let up = normal.cross(across);
    let abreast = |along: DVec3, by: f64| {
        let ([a0, a1], [b0, b1]) = (reach(a, along), reach(b, along));
        a1.min(b1) - a0.max(b0) > by
    };
    abreast(normal, -GAP) && abreast(across, BEARING) && abreast(up, BEARING)
}

#[test]
fn cuts_lie_against_the_timbers_they_name() {
    let mut broken = Broken::default();
    for roof in all() {
        let s = &roof.solution;
        for m in &s.members {
            for cut in &m.cuts {
                let Some(mark) = &cut.against else { continue };
                let other = member(s, mark);
                let bears = faces(m)
                    .filter(|(name, _)| *name == cut.name)
                    .any(|(_, mine)| faces(other).any(|(_, theirs)| touch(&mine, &theirs)));
                broken.unless(bears, || {
                    format!("{}: {} of {} ({}) does not lie against {mark}", roof.name, cut.name, m.mark, m.kind.name())
                });
            }
        }
    }
    broken.finish(5000);
}

#[test]
fn no_cut_is_too_narrow_to_make() {
    let mut broken = Broken::default();
    for roof in all() {
        for m in &roof.solution.members {
            for (name, ring) in faces(m) {
                let normal = area_vector(&ring).normalize();
                let across = DVec3::new(-normal.y, normal.x, 0.0).normalize_or(DVec3::X);
                let [lo, hi] = reach(&ring, across);
                broken.unless(hi - lo > LEAST_CUT, || {
                    format!("{}: {name} of {} ({}) is {:.3} mm wide", roof.name, m.mark, m.kind.name(), hi - lo)
                });
            }
        }
    }
    broken.finish(20_000);
}
