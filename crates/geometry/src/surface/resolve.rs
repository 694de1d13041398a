//! One event: everything that happens at one height, resolved at once by
//! re-planarising the slice around it.

use core::cmp::Ordering;
use std::collections::BTreeSet;

use super::queue::Event;
use super::raw::{Origin, RawArc, Takeover};
use super::slice::{Piece, Strand, cancel, continuations, merge, nodes_on, pieces};
use super::state::{Corner, Segment, State};
use crate::DVec2;

/// The sweep cannot go on: what was found wrong and where.
#[derive(Clone, Copy, Debug)]
pub(super) struct Stuck {
    pub at: DVec2,
    pub what: &'static str,
}

/// The segments that an event touches, cut into pieces at the nodes there.
struct Slice {
    /// Touched segments, rising.
    touched: Vec<usize>,
    /// Corners at the ends of touched segments (numbers of the segments that
    /// start there), rising.
    corners: Vec<usize>,
    node_of_corner: Vec<usize>,
    nodes: Vec<DVec2>,
    left: Vec<Piece>,
    met: Vec<(Piece, Piece)>,
}

/// A segment to be made. Ends that the event leaves alone keep their corner.
#[derive(Clone, Copy)]
struct Fresh {
    front: usize,
    walls: u32,
    from: usize,
    to: usize,
    /// Untouched corner where it starts.
    kept_start: Option<usize>,
    /// Untouched corner where it ends.
    kept_end: Option<usize>,
    prev: Option<usize>,
    next: Option<usize>,
    gone: bool,
}

/// A front that another took over, from node to node.
struct TakenOver {
    slower: usize,
    faster: usize,
    walls: (u32, u32),
    from: usize,
    to: usize,
}

/// Either an answer, or segments that must be touched as well.
enum Attempt<T> {
    Done(T),
    Grow(Vec<usize>),
}

impl State<'_> {
    /// Resolves events at the height `now`. The first is sure to happen; the
    /// others do if their places agree.
    pub fn resolve(&mut self, events: &[Event]) -> Result<(), Stuck> {
        let mut touched = BTreeSet::new();
        for event in events {
            match *event {
                Event::Collapse(s) => touched.extend([self.segments[s].prev, s, self.segments[s].next]),
                Event::Split(c, t) => touched.extend([self.segments[c].prev, c, t]),
            }
        }
        loop {
            let slice = match self.slice(&touched, events.first().copied()) {
                Attempt::Done(slice) => slice,
                Attempt::Grow(more) => {
                    touched.extend(more);
                    continue;
                }
            };
            let mut fresh = self.chain(&slice)?;
            match self.join_parallels(&slice, &mut fresh)? {
                Attempt::Done(taken) => return self.commit(&slice, &fresh, &taken),
                Attempt::Grow(more) => touched.extend(more),
            }
        }
    }

    /// Whether both segments at a corner are touched.
    fn is_within(&self, touched: &[usize], corner: usize) -> bool {
        touched.binary_search(&corner).is_ok() && touched.binary_search(&self.segments[corner].prev).is_ok()
    }

    fn slice(&self, touched: &BTreeSet<usize>, sure: Option<Event>) -> Attempt<Slice> {
        let touched: Vec<usize> = touched.iter().copied().collect();
        let mut corners: Vec<usize> = touched.iter().flat_map(|&s| [s, self.segments[s].next]).collect();
        corners.sort_unstable();
        corners.dedup();
        let index = |corner: usize| corners.binary_search(&corner).unwrap_or(0);
        let points: Vec<DVec2> = corners.iter().map(|&c| self.place(c, self.now)).collect();
        let forced = match sure {
            Some(Event::Collapse(s)) => vec![(index(s), index(self.segments[s].next))],
            _ => Vec::new(),
        };
        let (node_of_corner, nodes) = merge(&points, &forced, self.reach);
        let strands: Vec<Strand> = touched
            .iter()
            .map(|&s| Strand {
                from: node_of_corner[index(s)],
                to: node_of_corner[index(self.segments[s].next)],
                dir: self.fronts.fronts[self.segments[s].front].dir,
            })
            .collect();
        let forced_on = match sure {
            Some(Event::Split(c, t)) => {
                touched.binary_search(&t).map(|k| vec![(node_of_corner[index(c)], k)]).unwrap_or_default()
            }
            _ => Vec::new(),
        };
        let on = nodes_on(&strands, &nodes, &forced_on, self.reach);
        // A corner at the rim of what is touched must have its node alone.
        let mut corners_at = vec![0usize; nodes.len()];
        node_of_corner.iter().for_each(|&n| corners_at[n] += 1);
        let mut crowded: Vec<bool> = corners_at.iter().map(|&count| count > 1).collect();
        on.iter().flatten().for_each(|&n| crowded[n] = true);
        let more: Vec<usize> = corners
            .iter()
            .zip(&node_of_corner)
            .filter(|&(&c, &n)| crowded[n] && !self.is_within(&touched, c))
            .flat_map(|(&c, _)| [c, self.segments[c].prev])
            .collect();
        if !more.is_empty() {
            return Attempt::Grow(more);
        }
        let (left, met) = cancel(pieces(&strands, &on));
        Attempt::Done(Slice { touched, corners, node_of_corner, nodes, left, met })
    }

    /// Links the pieces that are left into chains.
    fn chain(&self, slice: &Slice) -> Result<Vec<Fresh>, Stuck> {
        let mut kept_at: Vec<Option<usize>> = vec![None; slice.nodes.len()];
        for (&corner, &node) in slice.corners.iter().zip(&slice.node_of_corner) {
            if !self.is_within(&slice.touched, corner) {
                kept_at[node] = Some(corner);
            }
        }
        let mut fresh: Vec<Fresh> = Vec::with_capacity(slice.left.len());
        let (mut incoming, mut outgoing) = (vec![Vec::new(); slice.nodes.len()], vec![Vec::new(); slice.nodes.len()]);
        for (k, piece) in slice.left.iter().enumerate() {
            let segment = &self.segments[slice.touched[piece.strand]];
            let (kept_start, kept_end) = (kept_at[piece.from], kept_at[piece.to]);
            fresh.push(Fresh {
                front: segment.front,
                walls: segment.walls,
                from: piece.from,
                to: piece.to,
                kept_start,
                kept_end,
                prev: None,
                next: None,
                gone: false,
            });
            if kept_start.is_none() {
                outgoing[piece.from].push(k);
            }
            if kept_end.is_none() {
                incoming[piece.to].push(k);
            }
        }
        let dir = |k: &usize| self.fronts.fronts[fresh[*k].front].dir;
        let mut links = Vec::with_capacity(fresh.len());
        for (node, (ins, outs)) in incoming.iter().zip(&outgoing).enumerate() {
            let (to, from): (Vec<DVec2>, Vec<DVec2>) = (ins.iter().map(dir).collect(), outs.iter().map(dir).collect());
            let pairs = continuations(&to, &from)
                .ok_or(Stuck { at: slice.nodes[node], what: "the fronts there do not pair off" })?;
            links.extend(ins.iter().zip(pairs).map(|(&k, pair)| (k, outs[pair])));
        }
        for (k, next) in links {
            fresh[k].next = Some(next);
            fresh[next].prev = Some(k);
        }
        Ok(fresh)
    }

    /// Joins neighbours on one plane. Of neighbours in line with each other
    /// the faster takes the slower one over: the flatter slope goes on.
    fn join_parallels(&mut self, slice: &Slice, fresh: &mut [Fresh]) -> Result<Attempt<Vec<TakenOver>>, Stuck> {
        let mut taken = Vec::new();
        let mut more = Vec::new();
        loop {
            let mut changed = false;
            for a in 0..fresh.len() {
                let Some(b) = fresh[a].next.filter(|_| !fresh[a].gone) else { continue };
                let (fa, fb) = (fresh[a], fresh[b]);
                let dirs = (self.fronts.fronts[fa.front].dir, self.fronts.fronts[fb.front].dir);
                if dirs.0 != dirs.1 {
                    continue;
                }
                if a == b {
                    return Err(Stuck { at: slice.nodes[fa.to], what: "a front runs into itself" });
                }
                let (sa, sb) = (self.step_of(fa.front), self.step_of(fb.front));
                let (front, walls) = if sa.plane == sb.plane || sa.speed == sb.speed {
                    match self.which_goes_on(fa.front, fb.front) {
                        Ordering::Equal => (fa.front, self.union_of_walls(fa.walls, fb.walls)),
                        Ordering::Greater => (fa.front, fa.walls),
                        Ordering::Less => (fb.front, fb.walls),
                    }
                } else {
                    let (slow, fast) = if sa.speed < sb.speed { (fa, fb) } else { (fb, fa) };
                    let rim = if sa.speed < sb.speed {
                        slow.kept_start.map(|corner| self.segments[corner].prev)
                    } else {
                        slow.kept_end
                    };
                    if let Some(beyond) = rim {
                        more.push(beyond);
                        continue;
                    }
                    taken.push(TakenOver {
                        slower: slow.front,
                        faster: fast.front,
                        walls: (slow.walls, fast.walls),
                        from: slow.from,
                        to: slow.to,
                    });
                    (fast.front, fast.walls)
                };
                fresh[a] = Fresh { front, walls, to: fb.to, kept_end: fb.kept_end, next: fb.next, ..fa };
                fresh[b].gone = true;
                if fb.next == Some(a) {
                    fresh[a].next = Some(a);
                    fresh[a].prev = Some(a);
                } else if let Some(next) = fb.next {
                    fresh[next].prev = Some(a);
                }
                changed = true;
            }
            if !changed {
                break;
            }
        }
        Ok(if more.is_empty() { Attempt::Done(taken) } else { Attempt::Grow(more) })
    }

    /// Which of two fronts on one plane a joined segment follows: the one that
    /// will be the flatter when they part, or both when they never do.
    fn which_goes_on(&self, a: usize, b: usize) -> Ordering {
        if a == b {
            return Ordering::Equal;
        }
        let ahead = |front: usize| &self.fronts.fronts[front].steps[self.step[front] + 1..];
        for (x, y) in ahead(a).iter().zip(ahead(b)) {
            let order = y.from.total_cmp(&x.from).then(x.speed.total_cmp(&y.speed));
            if order.is_ne() {
                // The one to change first goes on if it then is the faster.
                let (first, now) = (if x.from <= y.from { x } else { y }, self.step_of(a).speed);
                let first_is_a = x.from <= y.from;
                let faster = if x.from == y.from { x.speed > y.speed } else { (first.speed > now) == first_is_a };
                return if faster { Ordering::Greater } else { Ordering::Less };
            }
        }
        match (ahead(a).len(), ahead(b).len()) {
            (m, n) if m == n => a.cmp(&b).reverse(),
            (m, n) => {
                let (longer, more) = if m > n { (a, n) } else { (b, m) };
                let gets_faster = ahead(longer).get(more).is_some_and(|s| s.speed > self.step_of(longer).speed);
                if gets_faster == (longer == a) { Ordering::Greater } else { Ordering::Less }
            }
        }
    }

    /// Draws what has come to an end and sets the new segments going.
    fn commit(&mut self, slice: &Slice, fresh: &[Fresh], taken: &[TakenOver]) -> Result<(), Stuck> {
        let z = self.now;
        let mut drawn: Vec<Option<u32>> = vec![None; slice.nodes.len()];
        for (&corner, &node) in slice.corners.iter().zip(&slice.node_of_corner) {
            if self.is_within(&slice.touched, corner) {
                let id = self.drawn_node(&mut drawn, slice, node);
                self.draw_corner(corner, id);
            }
        }
        for (a, b) in &slice.met {
            let (from, to) = (self.drawn_node(&mut drawn, slice, a.from), self.drawn_node(&mut drawn, slice, a.to));
            let plane = |piece: &Piece| {
                let step = self.step_of(self.segments[slice.touched[piece.strand]].front);
                step.slopes().then_some(step.plane)
            };
            let (left, right) = (plane(b), plane(a));
            let origin = if left.is_some() && right.is_some() { Origin::Crease } else { Origin::Verge };
            self.draw(RawArc { from, to, left, right, origin, foot: None });
        }
        for t in taken {
            let (from, to) = (self.drawn_node(&mut drawn, slice, t.from), self.drawn_node(&mut drawn, slice, t.to));
            let (slow, fast) = (*self.step_of(t.slower), *self.step_of(t.faster));
            let right = slow.slopes().then_some(slow.plane);
            let origin = if right.is_some() { Origin::Crease } else { Origin::Foot };
            let foot = Some((fast.plane, t.walls.1));
            self.draw(RawArc { from, to, left: Some(fast.plane), right, origin, foot });
            let at = (slice.nodes[t.from] + slice.nodes[t.to]) * 0.5;
            self.raw.takeovers.push(Takeover { steeper: t.walls.0, flatter: t.walls.1, at, height: z });
        }
        self.replace(slice, fresh, &mut drawn)
    }

    fn drawn_node(&mut self, drawn: &mut [Option<u32>], slice: &Slice, node: usize) -> u32 {
        match drawn[node] {
            Some(id) => id,
            None => {
                let id = self.node(slice.nodes[node], self.now);
                drawn[node] = Some(id);
                id
            }
        }
    }

    /// Takes the touched segments out and puts the new ones in.
    fn replace(&mut self, slice: &Slice, fresh: &[Fresh], drawn: &mut [Option<u32>]) -> Result<(), Stuck> {
        let mut number = vec![usize::MAX; fresh.len()];
        let base = self.segments.len();
        for (count, (k, _)) in fresh.iter().enumerate().filter(|(_, f)| !f.gone).enumerate() {
            number[k] = base + count;
        }
        let mut news = Vec::with_capacity(fresh.len());
        for (k, f) in fresh.iter().enumerate().filter(|(_, f)| !f.gone) {
            let lost = Stuck { at: slice.nodes[f.from], what: "two fronts side by side there are parallel" };
            let (prev, start): (usize, Corner) = match (f.kept_start, f.prev) {
                (Some(corner), _) => (self.segments[corner].prev, self.segments[corner].start),
                (None, Some(prev)) => {
                    let node = self.drawn_node(drawn, slice, f.from);
                    let left = fresh[prev].front;
                    let corner = self.corner_between(left, f.front, node, slice.nodes[f.from]).ok_or(lost)?;
                    (number[prev], corner)
                }
                (None, None) => return Err(lost),
            };
            let next = match (f.kept_end, f.next) {
                (Some(corner), _) => corner,
                (None, Some(next)) => number[next],
                (None, None) => return Err(lost),
            };
            news.push((
                number[k],
                Segment { front: f.front, walls: f.walls, prev, next, start, collapse: f64::INFINITY, alive: true },
            ));
        }
        for &s in &slice.touched {
            self.segments[s].alive = false;
        }
        self.alive = self.alive + news.len() - slice.touched.len();
        let mut rim = Vec::new();
        for &(id, segment) in &news {
            self.segments.push(segment);
            if segment.prev < base {
                self.segments[segment.prev].next = id;
            }
            if segment.next < base {
                self.segments[segment.next].prev = id;
                rim.push(segment.next);
            }
        }
        let ids: Vec<usize> = news.iter().map(|(id, _)| *id).collect();
        self.set_going(&ids, &rim);
        Ok(())
    }

    /// Times new segments, and finds the hits of their corners and of the
    /// corners that end them.
    pub fn set_going(&mut self, new: &[usize], rim: &[usize]) {
        for &s in new {
            self.time_collapse(s);
        }
        for &s in new {
            self.enter_segment(s);
        }
        for &s in new.iter().chain(rim) {
            self.search(s, true);
        }
        for &s in new {
            self.try_corners(s);
        }
    }
}
