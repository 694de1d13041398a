//! What may hold between the walls of a plan: which of them come near to
//! square or parallel, in line, or equal.

use super::{Plates, Relation};
use crate::{Angle, DVec2};
use core::f64::consts::FRAC_PI_2;

/// Walls further from square than this are not meant to be, radians (5°):
/// past it a wall too short to move its corners far would be turned at will.
const MOST_TURN: f64 = 0.087;

/// The walls of a plan in one row.
pub(super) struct Walls {
    /// Where each starts.
    pub corners: Vec<DVec2>,
    /// The number of the next wall round its loop.
    pub next: Vec<usize>,
    /// What each does above its plate.
    pub kinds: Vec<usize>,
}

/// Which way a wall runs in its family.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Heading {
    /// The family.
    pub family: usize,
    /// Quarter turns from the family's own direction, 0 to 3.
    pub quarters: u8,
}

/// A direction that walls share, along it or square to it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Family {
    /// Its angle, radians.
    pub angle: f64,
    /// Its longest wall.
    pub leader: usize,
}

impl Heading {
    /// Unit vector along the wall, for the family's direction.
    pub fn along(self, family: DVec2) -> DVec2 {
        match self.quarters {
            0 => family,
            1 => family.perp(),
            2 => -family,
            _ => -family.perp(),
        }
    }
}

impl Walls {
    pub fn of(loops: &[Vec<DVec2>], kinds: &[usize]) -> Self {
        let corners: Vec<DVec2> = loops.iter().flatten().copied().collect();
        let mut next = Vec::with_capacity(corners.len());
        for ring in loops {
            let first = next.len();
            next.extend((0..ring.len()).map(|k| first + (k + 1) % ring.len()));
        }
        Self { corners, next, kinds: kinds.to_vec() }
    }

    pub fn count(&self) -> usize {
        self.corners.len()
    }

    /// From the start to the end of a wall as measured.
    pub fn way(&self, wall: usize) -> DVec2 {
        self.corners[self.next[wall]] - self.corners[wall]
    }

    pub fn length(&self, wall: usize) -> f64 {
        self.way(wall).length()
    }

    fn angle(&self, wall: usize) -> f64 {
        let way = self.way(wall);
        Angle::from_rise_run(way.y, way.x).to_rad()
    }
}

/// How far a wall's angle is from the nearest quarter turn of a family, and
/// how many quarters that is.
fn off_square(angle: f64, family: f64) -> (f64, u8) {
    let turns = (angle - family) / FRAC_PI_2;
    let nearest = turns.round();
    ((turns - nearest) * FRAC_PI_2, (nearest.rem_euclid(4.0)) as u8 % 4)
}

/// Families of the walls in `loose`, the longest walls leading; a wall alone
/// makes none. Headings are filled in, families added.
pub(super) fn families(
    plates: &Plates<'_>,
    walls: &Walls,
    loose: &[usize],
    headings: &mut [Option<Heading>],
    families: &mut Vec<Family>,
) {
    let mut open: Vec<usize> = loose.to_vec();
    open.sort_by(|a, b| walls.length(*b).total_cmp(&walls.length(*a)).then(a.cmp(b)));
    // Both ends of a wall may be moved, and both of the one that leads.
    let slack = |wall: usize| 2.0 * plates.within / walls.length(wall);
    while let Some(&leader) = open.first() {
        let lead = walls.angle(leader);
        let near = |wall: &usize| {
            let off = off_square(walls.angle(*wall), lead).0.abs();
            off <= (slack(*wall) + slack(leader)).min(MOST_TURN)
        };
        let members: Vec<usize> = open.iter().copied().filter(near).collect();
        open.retain(|wall| !members.contains(wall));
        if members.len() < 2 {
            continue;
        }
        // Long walls know their direction better, by the square of their length.
        let weight = |wall: usize| walls.length(wall) * walls.length(wall);
        let total: f64 = members.iter().map(|w| weight(*w)).sum();
        let mean = members.iter().map(|w| weight(*w) * off_square(walls.angle(*w), lead).0).sum::<f64>() / total;
        let angle = lead + mean;
        let family = families.len();
        families.push(Family { angle, leader });
        for wall in members {
            headings[wall] = Some(Heading { family, quarters: off_square(walls.angle(wall), angle).1 });
        }
    }
    keep_unlike_apart(walls, headings);
}

/// Neighbours in one direction lie in one line; where they do unlike things
/// above their plates the roof over them would be torn, so the shorter one
/// keeps its own direction.
fn keep_unlike_apart(walls: &Walls, headings: &mut [Option<Heading>]) {
    for wall in 0..walls.count() {
        let next = walls.next[wall];
        if headings[wall].is_some() && headings[wall] == headings[next] && walls.kinds[wall] != walls.kinds[next] {
            let shorter = if walls.length(wall) < walls.length(next) { wall } else { next };
            headings[shorter] = None;
        }
    }
}

/// Walls of one heading that come near one line, each with the longest of its
/// line.
pub(super) fn in_line(
    plates: &Plates<'_>,
    walls: &Walls,
    headings: &[Option<Heading>],
    families: &[Family],
) -> Vec<Relation> {
    let offset = |wall: usize, heading: Heading| {
        let family = families[heading.family].angle;
        let square = heading.along(unit(family)).perp();
        square.dot(walls.corners[wall] + walls.way(wall) * 0.5)
    };
    alike(walls, headings, 2.0 * plates.within, offset)
        .into_iter()
        // Neighbours meet in a corner: they are in line already.
        .filter(|(a, b)| walls.next[*a] != *b && walls.next[*b] != *a)
        .map(|(a, b)| Relation::InLine(a, b))
        .collect()
}

/// Walls of one family that come near one length, each with the longest of
/// that length.
pub(super) fn equal(plates: &Plates<'_>, walls: &Walls, headings: &[Option<Heading>]) -> Vec<Relation> {
    // Along a family or against it, the length is the same.
    let halved: Vec<Option<Heading>> = headings.iter().map(|h| h.map(|h| Heading { quarters: 0, ..h })).collect();
    alike(walls, &halved, 2.0 * plates.within, |wall, _| walls.length(wall))
        .into_iter()
        .map(|(a, b)| Relation::Equal(a, b))
        .collect()
}

/// Pairs of walls with one heading whose value differs by less than `most`:
/// each wall with the longest of its group.
fn alike(
    walls: &Walls,
    headings: &[Option<Heading>],
    most: f64,
    value: impl Fn(usize, Heading) -> f64,
) -> Vec<(usize, usize)> {
    let mut open: Vec<(usize, Heading, f64)> =
        headings.iter().enumerate().filter_map(|(wall, heading)| heading.map(|h| (wall, h, value(wall, h)))).collect();
    open.sort_by(|a, b| walls.length(b.0).total_cmp(&walls.length(a.0)).then(a.0.cmp(&b.0)));
    let mut pairs = Vec::new();
    while !open.is_empty() {
        let (leader, heading, at) = open.remove(0);
        open.retain(|(wall, h, v)| {
            let joins = *h == heading && (v - at).abs() <= most;
            if joins {
                pairs.push((leader, *wall));
            }
            !joins
        });
    }
    pairs
}

/// Unit vector at an angle in radians.
pub(super) fn unit(angle: f64) -> DVec2 {
    let angle = Angle::rad(angle);
    DVec2::new(angle.cos(), angle.sin())
}
