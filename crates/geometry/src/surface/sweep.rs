//! The sweep: fronts move inwards as height grows until nothing is left.

use super::error::SurfaceError;
use super::fronts::Fronts;
use super::near::Grid;
use super::queue::{Event, Queue};
use super::raw::{Origin, Raw, RawArc};
use super::resolve::Stuck;
use super::state::{Corner, Segment, State};
use super::types::WallId;
use crate::plan::Regular;
use crate::{Angle, DVec2};

/// Events and places closer than this are one, mm. Rounding stays under
/// 1e-6 mm on a site of 100 m, and what a tape can tell apart is a hundred
/// times more.
pub(super) const CLUSTER: f64 = 1e-3;

/// Steps of the sweep allowed for each wall and change of profile. Each step
/// takes out a segment, splits a loop or changes a profile; the specification
/// bounds them by 4 a wall, and merged lines and re-timed events add some.
const STEPS_PER_WALL: usize = 12;

/// On a big plan a round of the sweep goes up to the height at which one in
/// this many segments would have vanished. Higher numbers make shorter ways
/// but more rounds.
const PART_OF_ROUND: usize = 4;

/// Height of the shortest round, in units of the event cluster: well more than
/// what is looked at together.
const LEAST_ROUND: f64 = 16.0;

/// Sweeps a trued plan. `reach` is normally [`CLUSTER`].
pub(super) fn sweep(plan: &Regular, fronts: &Fronts, reach: f64) -> Result<Raw, SurfaceError> {
    let mut state = State::start(plan, fronts, reach);
    let lost =
        |state: &State<'_>, stuck: Stuck| SurfaceError::Lost { at: stuck.at, height: state.now, what: stuck.what };
    state.begin(plan).map_err(|stuck| lost(&state, stuck))?;
    let most = STEPS_PER_WALL * (plan.line_of_wall.len() + fronts.changes.len());
    let mut changes = fronts.changes.iter().copied().peekable();
    let mut events = Vec::new();
    for _ in 0..most {
        let change = changes.peek().copied().unwrap_or(f64::INFINITY);
        if !state.take_events(change, &mut events) {
            if state.alive == 0 {
                return Ok(state.raw);
            }
            if state.next_round() {
                continue;
            }
            if changes.next().is_none() {
                return Err(state.left_open());
            }
            state.change_profiles(change).map_err(|stuck| lost(&state, stuck))?;
            continue;
        }
        state.resolve(&events).map_err(|stuck| lost(&state, stuck))?;
    }
    let at = state.segments.iter().find(|s| s.alive).map_or(DVec2::ZERO, |s| s.start.at);
    Err(lost(&state, Stuck { at, what: "the fronts there never come to rest" }))
}

impl<'a> State<'a> {
    fn start(plan: &Regular, fronts: &'a Fronts, reach: f64) -> Self {
        let corners = || plan.loops.iter().flatten().copied();
        let low = corners().fold(DVec2::splat(f64::INFINITY), DVec2::min);
        let high = corners().fold(DVec2::splat(f64::NEG_INFINITY), DVec2::max);
        Self {
            fronts,
            step: vec![0; fronts.fronts.len()],
            segments: Vec::new(),
            alive: 0,
            now: fronts.base,
            ceiling: fronts.base,
            more_rounds: false,
            reach,
            grid: Grid::new(low, high, plan.line_of_wall.len()),
            queue: Queue::default(),
            raw: Raw::default(),
            cells: Vec::new(),
        }
    }

    /// A segment for every run of walls in line, a corner at every bend.
    fn begin(&mut self, plan: &Regular) -> Result<(), Stuck> {
        let mut base = 0;
        for ring in &plan.loops {
            let lines = &plan.line_of_wall[base..base + ring.len()];
            let bends: Vec<usize> =
                (0..ring.len()).filter(|&k| lines[k] != lines[(k + ring.len() - 1) % ring.len()]).collect();
            let first = self.segments.len();
            for (k, &bend) in bends.iter().enumerate() {
                let after = bends[(k + 1) % bends.len()];
                let count = (after + ring.len() - bend - 1) % ring.len() + 1;
                let mut walls: Vec<u32> = (0..count).map(|w| (base + (bend + w) % ring.len()) as u32).collect();
                walls.sort_unstable();
                self.raw.wall_sets.push(walls);
                let (node, at) = (self.node(ring[bend], self.now), ring[bend]);
                let left = lines[(bend + ring.len() - 1) % ring.len()];
                let start = self
                    .corner_between(left, lines[bend], node, at)
                    .ok_or(Stuck { at, what: "two walls side by side there are parallel" })?;
                self.segments.push(Segment {
                    front: lines[bend],
                    walls: (self.raw.wall_sets.len() - 1) as u32,
                    prev: first + (k + bends.len() - 1) % bends.len(),
                    next: first + (k + 1) % bends.len(),
                    start,
                    collapse: f64::INFINITY,
                    alive: true,
                });
            }
            base += ring.len();
        }
        self.alive = self.segments.len();
        for s in 0..self.segments.len() {
            let segment = self.segments[s];
            let step = *self.step_of(segment.front);
            if step.slopes() {
                let (from, to) = (segment.start.node, self.segments[segment.next].start.node);
                let (left, foot) = (Some(step.plane), Some((step.plane, segment.walls)));
                self.draw(RawArc { from, to, left, right: None, origin: Origin::Foot, foot });
            }
        }
        self.rebuild();
        Ok(())
    }

    /// Times everything afresh, up to a new ceiling: the next change of
    /// profile, or on a big plan the height by which a good part of what is
    /// left will have happened. Below a near ceiling corners and segments move
    /// little, so that few come near each other; each time the ceiling is
    /// reached fewer are left, so that all the rounds together cost little
    /// more than the first.
    fn rebuild(&mut self) {
        self.queue.clear();
        let alive: Vec<usize> = (0..self.segments.len()).filter(|&s| self.segments[s].alive).collect();
        let change = self.fronts.changes.iter().copied().find(|&z| z > self.now);
        let (low, high) = self.grid.corners_of_plan();
        self.grid = Grid::new(low, high, alive.len());
        // A slope of the steepest pitch allowed crosses the whole plan below
        // this height.
        let steepest = Angle::deg(*super::fronts::PITCH_RANGE.end()).tan();
        let top = self.now + (high - low).length() * steepest * 2.0 + 1.0;
        self.ceiling = change.unwrap_or(top);
        self.more_rounds = false;
        if !self.grid.is_list() {
            let mut collapses: Vec<f64> =
                alive.iter().map(|&s| self.collapse_of(s)).filter(|z| z.is_finite()).collect();
            let part = (alive.len() / PART_OF_ROUND).min(collapses.len() / 2);
            if !collapses.is_empty() {
                let (_, &mut part_done, _) = collapses.select_nth_unstable_by(part, f64::total_cmp);
                let near = part_done.max(self.now + LEAST_ROUND * self.reach);
                self.more_rounds = near < self.ceiling;
                self.ceiling = self.ceiling.min(near);
            }
        }
        self.set_going(&alive, &[]);
    }

    /// Moves on to a new ceiling when the last one was a near one.
    fn next_round(&mut self) -> bool {
        let more = self.alive > 0 && self.more_rounds;
        if more {
            self.now = self.now.max(self.ceiling);
            self.rebuild();
        }
        more
    }

    /// Takes out the lowest event and those at its height, unless a change of
    /// profile comes first or at the same height.
    fn take_events(&mut self, change: f64, events: &mut Vec<Event>) -> bool {
        events.clear();
        let mut limit = self.ceiling.min(change - self.reach);
        while let Some((z, event)) = self.queue.pop_up_to(limit) {
            let valid = match event {
                Event::Collapse(s) => self.segments[s].alive && self.segments[s].collapse == z,
                Event::Split(c, t) => {
                    let current = self.segments[c].alive && self.segments[c].start.hit == Some((z, t));
                    if current && !self.segments[t].alive {
                        self.search(c, false);
                        continue;
                    }
                    current
                }
            };
            // Equal entries come out one after the other.
            if !valid || events.last() == Some(&event) {
                continue;
            }
            if events.is_empty() {
                self.now = self.now.max(z);
                limit = (self.now + self.reach).min(change - self.reach);
            }
            events.push(event);
        }
        !events.is_empty()
    }

    /// Moves all fronts that change at height `z` to their next step.
    fn change_profiles(&mut self, z: f64) -> Result<(), Stuck> {
        self.now = z;
        let changes =
            |front: usize| self.fronts.fronts[front].steps.get(self.step[front] + 1).is_some_and(|step| step.from <= z);
        let changing: Vec<bool> = (0..self.fronts.fronts.len()).map(changes).collect();
        let old: Vec<usize> = (0..self.segments.len()).filter(|&s| self.segments[s].alive).collect();
        let mut nodes: Vec<Option<u32>> = vec![None; self.segments.len()];
        for &s in &old {
            let segment = self.segments[s];
            if changing[segment.front] || changing[self.segments[segment.prev].front] {
                let node =
                    if segment.start.born == z { segment.start.node } else { self.node(segment.start.place(z), z) };
                self.draw_corner(s, node);
                nodes[s] = Some(node);
            }
        }
        let before = self.step.clone();
        for (front, _) in changing.iter().enumerate().filter(|&(_, &c)| c) {
            self.step[front] += 1;
        }
        for &s in &old {
            let segment = self.segments[s];
            if !changing[segment.front] {
                continue;
            }
            let (Some(from), Some(to)) = (nodes[s], nodes[segment.next]) else { continue };
            let steps = &self.fronts.fronts[segment.front].steps;
            let (below, above) = (steps[before[segment.front]], *self.step_of(segment.front));
            let (left, right) = (above.slopes().then_some(above.plane), below.slopes().then_some(below.plane));
            let origin = match (left, right) {
                (Some(_), None) => Origin::Foot,
                (None, _) => Origin::Abutment,
                (Some(_), Some(_)) => Origin::Crease,
            };
            let foot = left.map(|plane| (plane, segment.walls));
            self.draw(RawArc { from, to, left, right, origin, foot });
        }
        let renumbered: Vec<usize> = self.renumber(&old);
        for (&s, &new) in old.iter().zip(&renumbered) {
            if let Some(node) = nodes[s] {
                let segment = self.segments[new];
                let left = self.segments[segment.prev].front;
                let at = segment.start.place(z);
                let corner: Corner = self
                    .corner_between(left, segment.front, node, at)
                    .ok_or(Stuck { at, what: "two fronts side by side there are parallel" })?;
                self.segments[new].start = corner;
            }
        }
        self.rebuild();
        Ok(())
    }

    /// Copies all living segments to new numbers, so that nothing kept about
    /// the old ones is taken for current.
    fn renumber(&mut self, old: &[usize]) -> Vec<usize> {
        let base = self.segments.len();
        let number = |s: usize| base + old.binary_search(&s).unwrap_or(0);
        for &s in old {
            let segment = self.segments[s];
            self.segments[s].alive = false;
            self.segments.push(Segment { prev: number(segment.prev), next: number(segment.next), ..segment });
        }
        (base..self.segments.len()).collect()
    }

    /// The error for fronts that are left when nothing more happens.
    fn left_open(&self) -> SurfaceError {
        let left = || self.segments.iter().filter(|s| s.alive);
        let mut walls: Vec<u32> = left().flat_map(|s| self.raw.wall_sets[s.walls as usize].iter().copied()).collect();
        walls.sort_unstable();
        walls.dedup();
        let walls: Vec<WallId> = walls.into_iter().map(WallId).collect();
        let count = left().count().max(1) as f64;
        let at = left().map(|s| s.start.place(self.now)).sum::<DVec2>() / count;
        let all_gables = left().all(|s| self.step[s.front] == 0);
        if all_gables {
            SurfaceError::GableNeverMet { walls, at, height: self.now }
        } else {
            SurfaceError::NeverCloses { walls, at, height: self.now }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::CLUSTER;
    use crate::plan::{GRID, LINE_TOLERANCE, SHORTEST_WALL};
    use crate::surface::tidy::FRAMING;

    /// Rounding on a site of 100 m, mm (reference/ says how it was estimated).
    const ROUNDING: f64 = 1e-6;

    #[test]
    fn sizes_of_tolerances_keep_apart() {
        let ladder = [ROUNDING, CLUSTER, GRID, LINE_TOLERANCE];
        assert!(ladder.windows(2).all(|pair| pair[1] / pair[0] > 9.999), "{ladder:?}");
        let framing = [LINE_TOLERANCE, FRAMING, SHORTEST_WALL / 10.0];
        assert!(framing.windows(2).all(|pair| pair[0] < pair[1]), "{framing:?}");
    }
}
