//! A view of the timber: from its right side, or from above.

use super::along::{Along, Stretch};
use super::outline::{Face, Place};
use super::sheet::Sheet;
use crate::bench::steps::Set;
use picture::{Ink, Pt};
use roof::solution::Member;

/// A face that turns away further is not seen.
const EDGE_ON: f64 = 1e-6;
/// Depth and half length of a tooth where a timber is broken, px.
const TOOTH: [f64; 2] = [3.0, 7.0];
/// Points of one face are no further apart than this from an end of a stretch, px.
const AT_BREAK: f64 = 0.01;
/// A mark and a face this far apart along the timber can't belong together, mm.
const FAR: f64 = 1e9;

/// Which way one looks at the timber.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// From above, its left side up.
    Top,
    /// From its right side.
    Right,
}

/// A view: how places on the timber land in the picture.
pub struct View<'a> {
    pub along: &'a Along,
    pub side: Side,
    /// The value that lies at the top of the view: up, or across; mm.
    pub high: f64,
    /// Where that is, px.
    pub y: f64,
}

impl View<'_> {
    /// What runs down the picture, mm.
    fn value(&self, place: Place) -> f64 {
        match self.side {
            Side::Top => place[2],
            Side::Right => place[1],
        }
    }

    /// How near the eye a place is.
    fn nearness(&self, place: Place) -> f64 {
        match self.side {
            Side::Top => place[1],
            Side::Right => -place[2],
        }
    }

    pub fn y(&self, value: f64) -> f64 {
        self.y + (self.high - value) / self.along.scale
    }

    pub fn at(&self, place: Place) -> Pt {
        [self.along.x(place[0]), self.y(self.value(place))]
    }

    /// Draws the faces that are seen, the far ones first, each with the step that makes it.
    pub fn draw(&self, sheet: &mut Sheet, faces: &[Face], step_of: impl Fn(&Face) -> Option<String>) {
        let mut seen: Vec<&Face> = faces.iter().filter(|face| self.nearness(face.normal) > EDGE_ON).collect();
        seen.sort_by(|a, b| self.nearness(a.middle()).total_cmp(&self.nearness(b.middle())));
        let last = self.along.stretches.len().saturating_sub(1);
        for face in seen {
            let step = step_of(face);
            let ink = if face.is_sawn() { Ink::Sawn } else { Ink::Wood };
            for (number, stretch) in self.along.stretches.iter().enumerate() {
                let ends = [number > 0, number < last];
                for ring in &face.loops {
                    sheet.area(ink, step.as_deref(), self.on_stretch(ring, stretch, ends));
                }
            }
        }
    }

    /// What of a ring lies on a stretch, torn where the timber is broken.
    fn on_stretch(&self, ring: &[Place], stretch: &Stretch, broken: [bool; 2]) -> Vec<Pt> {
        let mut ring = ring.to_vec();
        if broken[0] {
            ring = cut_off(&ring, stretch.from, 1.0);
        }
        if broken[1] {
            ring = cut_off(&ring, stretch.to, -1.0);
        }
        let end = stretch.x + (stretch.to - stretch.from) / self.along.scale;
        let at = |p: &Place| [stretch.x + (p[0] - stretch.from) / self.along.scale, self.y(self.value(*p))];
        let points: Vec<Pt> = ring.iter().map(at).collect();
        let mut torn = Vec::with_capacity(points.len());
        for (a, b) in points.iter().zip(points.iter().cycle().skip(1)) {
            torn.push(*a);
            let on = |x: f64| (a[0] - x).abs() < AT_BREAK && (b[0] - x).abs() < AT_BREAK;
            if (broken[0] && on(stretch.x)) || (broken[1] && on(end)) {
                tear(&mut torn, *a, *b);
            }
        }
        torn
    }
}

/// The part of a ring on one side of a place along the timber.
fn cut_off(ring: &[Place], limit: f64, sign: f64) -> Vec<Place> {
    let mut kept = Vec::with_capacity(ring.len() + 2);
    for (a, b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
        let (da, db) = ((a[0] - limit) * sign, (b[0] - limit) * sign);
        if da >= 0.0 {
            kept.push(*a);
        }
        if (da >= 0.0) != (db >= 0.0) {
            let t = da / (da - db);
            kept.push([limit, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t]);
        }
    }
    kept
}

/// Teeth down a broken end; they stand at the same heights on both its sides.
fn tear(points: &mut Vec<Pt>, a: Pt, b: Pt) {
    let [depth, half] = TOOTH;
    let (low, high) = (a[1].min(b[1]), a[1].max(b[1]));
    let first = (low / half).floor() as i64 + 1;
    let last = (high / half).ceil() as i64 - 1;
    let mut teeth: Vec<Pt> =
        (first..=last).map(|k| [a[0] + if k % 2 == 0 { depth } else { -depth }, k as f64 * half]).collect();
    if a[1] > b[1] {
        teeth.reverse();
    }
    points.extend(teeth);
}

/// The step at which a face is set out: that of its name, of several the nearest.
pub fn step_of(face: &Face, sets: &[Set<'_>]) -> Option<usize> {
    let middle = face.middle()[0];
    let apart = |set: &Set<'_>| match set {
        Set::Mark(_, mark) if mark.name == face.name => ((mark.left_mm + mark.right_mm) / 2.0 - middle).abs(),
        Set::Seat(_) if face.name == crate::bench::steps::SEAT => 0.0,
        _ => FAR,
    };
    let nearest = sets.iter().enumerate().min_by(|a, b| apart(a.1).total_cmp(&apart(b.1)));
    nearest.filter(|(_, set)| apart(set) < FAR).map(|(step, _)| step)
}

/// Lines on the right side of the timber where a sawn face comes out of it.
pub fn lines_on_side(face: &Face, member: &Member) -> Vec<[Place; 2]> {
    /// A place this near the side is on it, mm.
    const ON: f64 = 0.1;
    let side = -member.size.thickness_mm / 2.0;
    let on = |p: &Place| (p[2] - side).abs() < ON;
    let edges = face.loops.iter().flat_map(|ring| ring.iter().zip(ring.iter().cycle().skip(1)));
    edges.filter(|(a, b)| on(a) && on(b)).map(|(a, b)| if a[1] < b[1] { [*a, *b] } else { [*b, *a] }).collect()
}
