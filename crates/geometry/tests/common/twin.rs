//! A slow twin of the sweep: no queue, no neighbours, no grid. After each
//! event it looks at every pair again, and it re-traces the whole slice.

use geometry::surface::{Slope, WallProfile};
use geometry::{Angle, DVec2, DVec3};

/// Nodes and events closer than this are one, mm.
const NEAR: f64 = 1e-3;
/// Events less than this above the last belong to it, mm.
const LATER: f64 = 1e-6;
/// Sine of the angle below which directions are the same.
const SAME_WAY: f64 = 1e-8;

struct Line {
    dir: DVec2,
    inward: DVec2,
    offset: f64,
    /// Heights from which speeds hold, rising.
    steps: Vec<(f64, f64)>,
}

impl Line {
    fn speed(&self, z: f64) -> f64 {
        self.steps.iter().rev().find(|(from, _)| *from <= z).map_or(0.0, |s| s.1)
    }

    fn at(&self, z: f64) -> f64 {
        let mut offset = self.offset;
        for (k, (from, speed)) in self.steps.iter().enumerate() {
            let to = self.steps.get(k + 1).map_or(z, |s| s.0.min(z));
            offset += speed * (to - from).max(0.0);
        }
        offset
    }

    fn same_way(&self, other: &Self) -> bool {
        self.dir.dot(other.dir) > 0.0 && self.dir.perp_dot(other.dir).abs() < SAME_WAY
    }
}

/// A piece of front in a slice: from node to node.
#[derive(Clone, Copy)]
struct Piece {
    line: usize,
    from: usize,
    to: usize,
}

pub struct Twin {
    lines: Vec<Line>,
    loops: Vec<Vec<usize>>,
    now: f64,
    pub nodes: Vec<DVec3>,
}

/// Nodes above the plates by the slow way; `None` when it loses its way.
pub fn nodes(loops: &[Vec<DVec2>], walls: &[WallProfile]) -> Option<Vec<DVec3>> {
    let base = walls.iter().map(|w| w.plate_height).fold(f64::INFINITY, f64::min);
    let mut twin = Twin { lines: Vec::new(), loops: Vec::new(), now: base, nodes: Vec::new() };
    for ring in loops {
        let first = twin.lines.len();
        for (k, &a) in ring.iter().enumerate() {
            let dir = (ring[(k + 1) % ring.len()] - a).normalize();
            let wall = &walls[twin.lines.len()];
            let mut steps: Vec<(f64, f64)> = Vec::new();
            for step in &wall.steps {
                let speed = match step.slope {
                    Slope::Vertical => 0.0,
                    Slope::Pitch(p) => 1.0 / Angle::deg(p).tan(),
                };
                steps.push((step.from_height.max(wall.plate_height), speed));
            }
            twin.lines.push(Line { dir, inward: dir.perp(), offset: dir.perp().dot(a), steps });
        }
        let chain: Vec<usize> = (0..ring.len())
            .filter(|&k| {
                let before = (k + ring.len() - 1) % ring.len();
                !twin.lines[first + before].same_way(&twin.lines[first + k])
            })
            .map(|k| first + k)
            .collect();
        twin.loops.push(chain);
    }
    let mut changes: Vec<f64> =
        twin.lines.iter().flat_map(|l| l.steps.iter().map(|s| s.0)).filter(|&z| z > base).collect();
    changes.sort_by(f64::total_cmp);
    changes.dedup();
    for _ in 0..20 * walls.len() + 50 {
        if twin.loops.is_empty() {
            return Some(twin.nodes);
        }
        let change = changes.iter().copied().find(|&z| z > twin.now).unwrap_or(f64::INFINITY);
        let next = twin.next_event(change);
        if !next.is_finite() {
            return None;
        }
        twin.replan(next, next == change)?;
    }
    None
}

impl Twin {
    /// Corner between two lines; `None` when they are parallel.
    fn corner(&self, left: usize, right: usize, z: f64) -> Option<DVec2> {
        let (l, r) = (&self.lines[left], &self.lines[right]);
        let det = l.inward.perp_dot(r.inward);
        let (a, b) = (l.at(z), r.at(z));
        let p = DVec2::new(a * r.inward.y - b * l.inward.y, l.inward.x * b - r.inward.x * a) / det;
        (det.abs() > SAME_WAY).then_some(p)
    }

    /// Every piece with its corners now and one millimetre up at the speeds
    /// that hold now, which is enough because all moves are straight.
    fn moves(&self) -> Option<Vec<(usize, [DVec2; 4], bool)>> {
        let mut all = Vec::new();
        for chain in &self.loops {
            let n = chain.len();
            for k in 0..n {
                let (before, this, after) = (chain[(k + n - 1) % n], chain[k], chain[(k + 1) % n]);
                let (a, va) = self.corner_move(before, this)?;
                let (b, vb) = self.corner_move(this, after)?;
                let reflex = self.lines[before].dir.perp_dot(self.lines[this].dir) < 0.0;
                all.push((this, [a, b, va, vb], reflex));
            }
        }
        Some(all)
    }

    fn corner_move(&self, left: usize, right: usize) -> Option<(DVec2, DVec2)> {
        let (l, r) = (&self.lines[left], &self.lines[right]);
        let det = l.inward.perp_dot(r.inward);
        let (a, b) = (l.speed(self.now), r.speed(self.now));
        let v = DVec2::new(a * r.inward.y - b * l.inward.y, l.inward.x * b - r.inward.x * a) / det;
        Some((self.corner(left, right, self.now)?, v))
    }

    fn next_event(&self, limit: f64) -> f64 {
        let Some(moves) = self.moves() else { return f64::INFINITY };
        let mut best = limit;
        for (line, [a, b, va, vb], reflex) in &moves {
            let dir = self.lines[*line].dir;
            let (length, growth) = (dir.dot(*b - *a), dir.dot(*vb - *va));
            if growth < -1e-9 {
                best = best.min(self.now + (length / -growth).max(LATER));
            }
            if !reflex {
                continue;
            }
            for (other, [c, d, vc, vd], _) in &moves {
                let target = &self.lines[*other];
                let gap = target.inward.dot(*a) - target.at(self.now);
                let closing = target.speed(self.now) - target.inward.dot(*va);
                let wait = gap / closing;
                if closing < 1e-9 || wait < LATER || self.now + wait >= best {
                    continue;
                }
                let along = |p: DVec2, v: DVec2| target.dir.dot(p + v * wait);
                if along(*c, *vc) - NEAR <= along(*a, *va) && along(*a, *va) <= along(*d, *vd) + NEAR {
                    best = self.now + wait;
                }
            }
        }
        best
    }

    /// Everything that happens at height `z`.
    fn replan(&mut self, z: f64, change: bool) -> Option<()> {
        let moves = self.moves()?;
        let wait = z - self.now;
        // All corners at z, merged.
        let mut places: Vec<DVec2> = Vec::new();
        let mut corners_at: Vec<usize> = Vec::new();
        let node_at = |p: DVec2, places: &mut Vec<DVec2>| match places.iter().position(|q| q.distance(p) < NEAR) {
            Some(k) => k,
            None => {
                places.push(p);
                places.len() - 1
            }
        };
        let mut pieces: Vec<Piece> = Vec::new();
        for (line, [a, b, va, vb], _) in &moves {
            let from = node_at(*a + *va * wait, &mut places);
            let to = node_at(*b + *vb * wait, &mut places);
            corners_at.resize(places.len(), 0);
            corners_at[from] += 1;
            pieces.push(Piece { line: *line, from, to });
        }
        let changing = |line: usize| change && self.lines[line].steps.iter().any(|s| s.0 == z);
        let mut marked: Vec<bool> = corners_at.iter().map(|&c| c > 1).collect();
        for p in &pieces {
            if p.from == p.to || changing(p.line) {
                marked[p.from] = true;
                marked[p.to] = true;
            }
        }
        // Cut at nodes, drop what has no length, cancel what runs both ways.
        let mut cut: Vec<Piece> = Vec::new();
        for p in pieces.iter().filter(|p| p.from != p.to) {
            let (a, b, dir) = (places[p.from], places[p.to], self.lines[p.line].dir);
            let mut on: Vec<(f64, usize)> = (0..places.len())
                .filter(|&n| n != p.from && n != p.to && dir.perp_dot(places[n] - a).abs() < NEAR)
                .map(|n| (dir.dot(places[n] - a), n))
                .filter(|&(t, _)| t > 0.0 && t < dir.dot(b - a))
                .collect();
            on.sort_by(|x, y| x.0.total_cmp(&y.0));
            let mut from = p.from;
            for to in on.iter().map(|o| o.1).chain([p.to]) {
                marked[to] |= to != p.to;
                cut.push(Piece { line: p.line, from, to });
                from = to;
            }
        }
        let mut k = 0;
        while k < cut.len() {
            let back = (k + 1..cut.len()).find(|&j| cut[j].from == cut[k].to && cut[j].to == cut[k].from);
            if let Some(j) = back {
                cut.swap_remove(j);
                cut.swap_remove(k);
            } else {
                k += 1;
            }
        }
        let chains = self.retrace(cut)?;
        self.loops.clear();
        for chain in chains {
            let joined = self.join(chain, z, &mut marked)?;
            if !joined.is_empty() {
                self.loops.push(joined);
            }
        }
        let fresh = (0..places.len()).filter(|&n| marked[n]);
        self.nodes.extend(fresh.map(|n| DVec3::new(places[n].x, places[n].y, z)));
        self.now = z;
        Some(())
    }

    /// Loops of pieces: at a node the first way on clockwise from the way back.
    fn retrace(&self, mut cut: Vec<Piece>) -> Option<Vec<Vec<Piece>>> {
        let turn = |back: DVec2, out: DVec2| {
            let angle = -Angle::from_rise_run(back.perp_dot(out), back.dot(out)).to_rad();
            if angle < 0.0 { angle + core::f64::consts::TAU } else { angle }
        };
        let mut chains = Vec::new();
        while let Some(first) = cut.pop() {
            let mut chain = vec![first];
            loop {
                let last = *chain.last()?;
                let back = -self.lines[last.line].dir;
                let ways = (0..cut.len()).filter(|&k| cut[k].from == last.to);
                let best = ways.min_by(|&a, &b| {
                    turn(back, self.lines[cut[a].line].dir).total_cmp(&turn(back, self.lines[cut[b].line].dir))
                });
                let home = (first.from == last.to).then(|| turn(back, self.lines[first.line].dir));
                match (best, home) {
                    (Some(k), Some(h)) if turn(back, self.lines[cut[k].line].dir) < h => chain.push(cut.swap_remove(k)),
                    (_, Some(_)) => break,
                    (Some(k), None) => chain.push(cut.swap_remove(k)),
                    (None, None) => return None,
                }
            }
            chains.push(chain);
        }
        Some(chains)
    }

    /// Whether `a` goes on rather than `b`: it is the faster, now or when the
    /// two first differ.
    fn goes_on(&self, a: usize, b: usize, z: f64) -> bool {
        let (a, b) = (&self.lines[a], &self.lines[b]);
        let mut heights: Vec<f64> = a.steps.iter().chain(&b.steps).map(|s| s.0).filter(|&h| h > z).collect();
        heights.push(z);
        heights.sort_by(f64::total_cmp);
        heights.iter().map(|&h| (a.speed(h), b.speed(h))).find(|(x, y)| x != y).is_none_or(|(x, y)| x > y)
    }

    /// Joins pieces in one direction: the faster line goes on.
    fn join(&self, mut chain: Vec<Piece>, z: f64, marked: &mut [bool]) -> Option<Vec<usize>> {
        let mut k = 0;
        let mut steady = 0;
        while chain.len() > 1 && steady < chain.len() {
            let next = (k + 1) % chain.len();
            let (a, b) = (chain[k], chain[next]);
            if self.lines[a.line].same_way(&self.lines[b.line]) {
                let (sa, sb) = (self.lines[a.line].speed(z), self.lines[b.line].speed(z));
                if sa != sb {
                    let slow = if sa < sb { a } else { b };
                    marked[slow.from] = true;
                    marked[slow.to] = true;
                }
                let line = if self.goes_on(a.line, b.line, z) { a.line } else { b.line };
                chain[k] = Piece { line, from: a.from, to: b.to };
                chain.remove(next);
                k = if next < k { k - 1 } else { k };
                steady = 0;
            } else {
                k = next;
                steady += 1;
            }
        }
        (chain.len() != 1).then(|| chain.iter().map(|p| p.line).collect())
    }
}
