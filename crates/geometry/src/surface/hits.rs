//! Which segment a re-entrant corner runs into next, kept up to date as
//! segments come and go.
//!
//! Every re-entrant corner keeps its next hit. A new segment is tried against
//! the corners whose ways cross its cells, a new corner against the segments
//! whose swept cells it crosses. When the segment that a corner would have
//! hit is gone, the corner is searched afresh when its turn comes: its kept
//! height is then still a bound from below, because all segments made since
//! were tried against it. Ways are only followed up to the first collapse of
//! the two segments beside the corner, because that makes a new corner.

use super::state::{Corner, LEAST_RATE, Segment, State};
use crate::DVec2;

impl State<'_> {
    /// Height up to which the corner at the start of `s` keeps its way, and a
    /// hair more, so that what happens at one height is seen together.
    fn horizon(&self, s: usize) -> f64 {
        let segment = &self.segments[s];
        segment.collapse.min(self.segments[segment.prev].collapse).min(self.ceiling) + self.reach
    }

    /// The cells that a segment sweeps over, in the list kept for reuse: put it
    /// back into `self.cells` afterwards.
    fn swept_cells(&mut self, s: usize) -> Vec<usize> {
        let segment = &self.segments[s];
        let (a, b) = (&segment.start, &self.segments[segment.next].start);
        let end = segment.collapse.min(self.ceiling);
        let hull = [a.place(self.now), b.place(self.now), a.place(end), b.place(end)];
        let mut cells = core::mem::take(&mut self.cells);
        self.grid.cells(&hull, &mut cells);
        cells
    }

    /// Enters a new segment in the cells that it sweeps over.
    pub fn enter_segment(&mut self, s: usize) {
        let cells = self.swept_cells(s);
        for &cell in &cells {
            self.grid.segments[cell].push(s as u32);
        }
        self.cells = cells;
    }

    /// Tries the corners on their way through the cells of a new segment.
    pub fn try_corners(&mut self, s: usize) {
        let cells = self.swept_cells(s);
        for &cell in &cells {
            let mut list = core::mem::take(&mut self.grid.corners[cell]);
            list.retain(|&c| self.segments[c as usize].alive);
            for &c in &list {
                let corner = c as usize;
                let limit = self.segments[corner].start.hit.map_or(f64::INFINITY, |(z, _)| z);
                if let Some(z) = self.hit(corner, s, limit.min(self.horizon(corner))) {
                    self.keep(corner, z, s);
                }
            }
            self.grid.corners[cell] = list;
        }
        self.cells = cells;
    }

    /// Searches the next hit of the corner at the start of `s` afresh.
    pub fn search(&mut self, s: usize, enter: bool) {
        self.segments[s].start.hit = None;
        if !self.segments[s].start.reflex {
            return;
        }
        let corner = self.segments[s].start;
        let mut limit = self.horizon(s);
        let mut cells = core::mem::take(&mut self.cells);
        self.grid.cells(&[corner.place(self.now), corner.place(limit)], &mut cells);
        let mut found = None;
        for &cell in &cells {
            let mut list = core::mem::take(&mut self.grid.segments[cell]);
            list.retain(|&t| self.segments[t as usize].alive);
            for &t in &list {
                let target = t as usize;
                if let Some(z) = self.hit(s, target, limit) {
                    let better = found.is_none_or(|(best, which)| (z, target) < (best, which));
                    if better {
                        found = Some((z, target));
                        limit = z;
                    }
                }
            }
            self.grid.segments[cell] = list;
            if enter && !self.grid.corners[cell].contains(&(s as u32)) {
                self.grid.corners[cell].push(s as u32);
            }
        }
        self.cells = cells;
        if let Some((z, target)) = found {
            self.keep(s, z, target);
        }
    }

    fn keep(&mut self, corner: usize, z: f64, target: usize) {
        self.segments[corner].start.hit = Some((z, target));
        self.queue.push_split(z, corner, target);
    }

    /// Height, not above `limit`, at which the corner at the start of `c`
    /// runs into segment `t`.
    fn hit(&self, c: usize, t: usize, limit: f64) -> Option<f64> {
        let (segment, target): (&Segment, &Segment) = (&self.segments[c], &self.segments[t]);
        let corner: &Corner = &segment.start;
        let front = &self.fronts.fronts[target.front];
        let step = self.step_of(target.front);
        let here = corner.place(self.now);
        let closing = step.speed - front.inward.dot(corner.velocity);
        let gap = front.inward.dot(here) - step.at(self.now);
        if closing < LEAST_RATE || gap < -self.reach {
            return None;
        }
        let wait = (gap / closing).max(0.0);
        let z = self.now + wait;
        if z > limit || !target.alive || t == c || t == segment.prev {
            return None;
        }
        let next = &self.segments[target.next].start;
        // A corner born on the end of a segment leaves it at once.
        if corner.node == target.start.node || corner.node == next.node {
            return None;
        }
        let beside = [c, segment.prev].map(|s| self.step_of(self.segments[s].front).plane);
        if beside.contains(&step.plane) {
            return None;
        }
        let along = |p: DVec2| front.dir.dot(p);
        let at = along(here + corner.velocity * wait);
        let (low, high) = (along(target.start.place(z)), along(next.place(z)));
        (low - self.reach <= at && at <= high + self.reach).then_some(z)
    }
}
