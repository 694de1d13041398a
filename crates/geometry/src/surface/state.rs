//! The state of the sweep: loops of front segments and the corners between
//! them, each corner moving on a straight line in plan as height grows.

use super::fronts::{Fronts, Step};
use super::near::Grid;
use super::queue::Queue;
use super::raw::{Origin, Raw, RawArc};
use crate::{DVec2, DVec3};

/// A corner between two segments, on its way.
#[derive(Clone, Copy, Debug)]
pub(super) struct Corner {
    /// Node where it was born.
    pub node: u32,
    /// Height at which it was born, mm.
    pub born: f64,
    /// Where the two front lines crossed then, mm.
    pub at: DVec2,
    /// Way in plan per height.
    pub velocity: DVec2,
    /// Whether the building is on more than half of the way round it.
    pub reflex: bool,
    /// The next segment that it runs into: height and segment.
    pub hit: Option<(f64, usize)>,
}

impl Corner {
    pub fn place(&self, z: f64) -> DVec2 {
        self.at + self.velocity * (z - self.born)
    }
}

/// A segment of a front between two corners, the building on its left.
#[derive(Clone, Copy, Debug)]
pub(super) struct Segment {
    pub front: usize,
    /// The walls that it rose from, as a number of [`Raw::wall_sets`].
    pub walls: u32,
    pub prev: usize,
    pub next: usize,
    /// The corner where it starts.
    pub start: Corner,
    /// Height at which it has no length left, mm.
    pub collapse: f64,
    pub alive: bool,
}

/// Everything that the sweep carries along.
pub(super) struct State<'a> {
    pub fronts: &'a Fronts,
    /// For every front, the number of its step in force.
    pub step: Vec<usize>,
    pub segments: Vec<Segment>,
    pub alive: usize,
    pub now: f64,
    /// Events are looked for up to this height.
    pub ceiling: f64,
    /// Whether the ceiling is a near one, with more to come above it.
    pub more_rounds: bool,
    /// Events and places closer than this are one, mm.
    pub reach: f64,
    pub grid: Grid,
    pub queue: Queue,
    pub raw: Raw,
    /// Kept between calls to save allocations.
    pub cells: Vec<usize>,
}

impl State<'_> {
    /// The step of a front that is in force.
    pub fn step_of(&self, front: usize) -> &Step {
        &self.fronts.fronts[front].steps[self.step[front]]
    }

    pub fn place(&self, corner: usize, z: f64) -> DVec2 {
        self.segments[corner].start.place(z)
    }

    pub fn node(&mut self, at: DVec2, z: f64) -> u32 {
        self.raw.nodes.push(DVec3::new(at.x, at.y, z));
        u32::try_from(self.raw.nodes.len() - 1).unwrap_or(u32::MAX)
    }

    /// The corner between two fronts, born at a node. `None` when they are
    /// parallel.
    pub fn corner_between(&self, left: usize, right: usize, node: u32, at: DVec2) -> Option<Corner> {
        let (l, r) = (&self.fronts.fronts[left], &self.fronts.fronts[right]);
        let det = l.inward.perp_dot(r.inward);
        if det == 0.0 {
            return None;
        }
        let solve = |a: f64, b: f64| DVec2::new(a * r.inward.y - b * l.inward.y, l.inward.x * b - r.inward.x * a) / det;
        let (sl, sr) = (self.step_of(left), self.step_of(right));
        let gap = |inward: DVec2, step: &Step| step.at(self.now) - inward.dot(at);
        Some(Corner {
            node,
            born: self.now,
            at: at + solve(gap(l.inward, sl), gap(r.inward, sr)),
            velocity: solve(sl.speed, sr.speed),
            reflex: det < 0.0,
            hit: None,
        })
    }

    /// Draws the way of a corner up to a node.
    pub fn draw_corner(&mut self, corner: usize, to: u32) {
        let (right, from) = (self.segments[corner], self.segments[corner].start);
        let left = self.segments[right.prev];
        let (sl, sr) = (self.step_of(left.front), self.step_of(right.front));
        let (l, r) = (sl.slopes().then_some(sl.plane), sr.slopes().then_some(sr.plane));
        let origin = match (l.is_some() && r.is_some(), from.reflex) {
            (true, _) => Origin::Crease,
            (false, true) => Origin::Abutment,
            (false, false) => Origin::Verge,
        };
        if origin == Origin::Abutment && (l.is_some() || r.is_some()) {
            let upright = if l.is_none() { left.walls } else { right.walls };
            self.raw.cheeks.push((upright, from.at));
        }
        self.draw(RawArc { from: from.node, to, left: l, right: r, origin, foot: None });
    }

    /// Keeps an arc that borders a face.
    pub fn draw(&mut self, arc: RawArc) {
        if arc.from != arc.to && (arc.left.is_some() || arc.right.is_some()) {
            self.raw.arcs.push(arc);
        }
    }

    /// The set of walls of both sets.
    pub fn union_of_walls(&mut self, a: u32, b: u32) -> u32 {
        if a == b {
            return a;
        }
        let mut all: Vec<u32> = [a, b].iter().flat_map(|&k| self.raw.wall_sets[k as usize].iter().copied()).collect();
        all.sort_unstable();
        all.dedup();
        self.raw.wall_sets.push(all);
        u32::try_from(self.raw.wall_sets.len() - 1).unwrap_or(u32::MAX)
    }

    /// Height at which a segment has no length left.
    pub fn collapse_of(&self, s: usize) -> f64 {
        let segment = &self.segments[s];
        let dir = self.fronts.fronts[segment.front].dir;
        let end = &self.segments[segment.next].start;
        let length = dir.dot(end.place(self.now) - segment.start.place(self.now));
        let growth = dir.dot(end.velocity - segment.start.velocity);
        if growth < -LEAST_RATE { self.now + length.max(0.0) / -growth } else { f64::INFINITY }
    }

    /// Sets down when a segment vanishes.
    pub fn time_collapse(&mut self, s: usize) {
        let collapse = self.collapse_of(s);
        self.segments[s].collapse = collapse;
        if collapse <= self.ceiling + self.reach {
            self.queue.push_collapse(collapse, s);
        }
    }
}

/// Rates of closing below this (mm per mm of height) are rounding errors of
/// rates that are nought: with them a gap would take longer to close than any
/// roof is high.
pub(super) const LEAST_RATE: f64 = 1e-9;
