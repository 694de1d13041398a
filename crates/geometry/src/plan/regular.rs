//! Truing up a plan: walls that a tape cannot tell from parallel become
//! parallel, walls that it cannot tell from being in line come to lie on one
//! line. What follows can then compare directions bit by bit.

use std::collections::BTreeMap;

use super::{DIRECTION_TOLERANCE, LINE_TOLERANCE};
use crate::{Angle, DVec2};

/// Rounds of giving back their own direction to walls that truing up would
/// move too far. Each round frees at least one wall; after these all are.
const ROUNDS: usize = 6;

/// The line that one or more walls stand on.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Line {
    /// Unit vector along the walls. Opposite walls have exactly negated bits.
    pub dir: DVec2,
    /// Unit vector into the building: `dir` turned left.
    pub inward: DVec2,
    /// `inward · p` for a point of the line, mm.
    pub offset: f64,
    /// Kind of profile that all its walls share, as numbered by the caller.
    pub kind: usize,
}

/// A trued plan.
#[derive(Clone, Debug)]
pub(crate) struct Regular {
    /// Corners, as many as were given.
    pub loops: Vec<Vec<DVec2>>,
    /// Lines in order of their first walls.
    pub lines: Vec<Line>,
    /// For every wall, its line.
    pub line_of_wall: Vec<usize>,
    /// For every wall, how far the corner where it starts moved, mm.
    pub moved: Vec<f64>,
    /// Walls in line with the wall before them but of another kind.
    pub unlike_neighbours: Vec<usize>,
}

/// A wall as it is measured.
#[derive(Clone, Copy)]
struct Wall {
    from: DVec2,
    to: DVec2,
    length: f64,
    before: usize,
    after: usize,
    kind: usize,
}

/// A wall's direction: one of a list of unit vectors, taken forwards or back.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Heading {
    class: usize,
    backwards: bool,
}

/// Trues up a plan that [`super::check`] finds clean. `kinds` numbers the
/// profile of each wall; only walls of one kind share a line.
///
/// # Errors
/// The number of a wall at whose start no rule can place the corner.
pub(crate) fn regularise(loops: &[Vec<DVec2>], kinds: &[usize]) -> Result<Regular, usize> {
    let walls = measure(loops, kinds);
    let mut own = vec![false; walls.len()];
    let mut worst = 0;
    for _ in 0..ROUNDS {
        let trued = true_up(&walls, &own);
        let astray: Vec<usize> =
            (0..walls.len()).filter(|&k| !trued.moved.get(k).is_some_and(|m| *m <= LINE_TOLERANCE)).collect();
        let Some(&first) = astray.first() else { return Ok(fold(loops, trued)) };
        worst = first;
        for k in astray {
            own[k] = true;
            own[walls[k].before] = true;
        }
    }
    let trued = true_up(&walls, &vec![true; walls.len()]);
    if trued.moved.iter().all(|m| *m <= LINE_TOLERANCE) { Ok(fold(loops, trued)) } else { Err(worst) }
}

fn measure(loops: &[Vec<DVec2>], kinds: &[usize]) -> Vec<Wall> {
    let mut walls = Vec::with_capacity(kinds.len());
    for ring in loops {
        let base = walls.len();
        for (k, &from) in ring.iter().enumerate() {
            let to = ring[(k + 1) % ring.len()];
            walls.push(Wall {
                from,
                to,
                length: (to - from).length(),
                before: base + (k + ring.len() - 1) % ring.len(),
                after: base + (k + 1) % ring.len(),
                kind: kinds.get(base + k).copied().unwrap_or_default(),
            });
        }
    }
    walls
}

/// The outcome of one round, corners in one row.
struct Trued {
    corners: Vec<DVec2>,
    lines: Vec<Line>,
    line_of_wall: Vec<usize>,
    moved: Vec<f64>,
    unlike_neighbours: Vec<usize>,
}

fn fold(loops: &[Vec<DVec2>], trued: Trued) -> Regular {
    let mut corners = trued.corners.into_iter();
    let loops = loops.iter().map(|ring| corners.by_ref().take(ring.len()).collect()).collect();
    Regular {
        loops,
        lines: trued.lines,
        line_of_wall: trued.line_of_wall,
        moved: trued.moved,
        unlike_neighbours: trued.unlike_neighbours,
    }
}

fn true_up(walls: &[Wall], own: &[bool]) -> Trued {
    let (headings, axes) = directions(walls, own);
    let (lines, line_of_wall) = place_lines(walls, &headings, &axes);
    let mut unlike_neighbours = Vec::new();
    let mut corners = Vec::with_capacity(walls.len());
    for (k, wall) in walls.iter().enumerate() {
        let (before, this) = (&lines[line_of_wall[wall.before]], &lines[line_of_wall[k]]);
        let straight = headings[wall.before] == headings[k];
        if straight && walls[wall.before].kind != wall.kind {
            unlike_neighbours.push(k);
        }
        corners.push(if straight {
            wall.from + this.inward * (this.offset - this.inward.dot(wall.from))
        } else {
            crossing(before, this, wall.from)
        });
    }
    let moved = walls.iter().zip(&corners).map(|(w, c)| (*c - w.from).length()).collect();
    Trued { corners, lines, line_of_wall, moved, unlike_neighbours }
}

/// Where two lines cross, worked out from a point nearby to lose no digits.
fn crossing(a: &Line, b: &Line, near: DVec2) -> DVec2 {
    let (da, db) = (a.offset - a.inward.dot(near), b.offset - b.inward.dot(near));
    let det = a.inward.perp_dot(b.inward);
    near + DVec2::new(da * b.inward.y - db * a.inward.y, a.inward.x * db - b.inward.x * da) / det
}

/// Directions shared by walls, longest walls first, each taking the nearest
/// direction within its own tolerance.
fn directions(walls: &[Wall], own: &[bool]) -> (Vec<Heading>, Vec<DVec2>) {
    let mut order: Vec<usize> = (0..walls.len()).collect();
    order.sort_by(|&a, &b| walls[b].length.total_cmp(&walls[a].length).then(a.cmp(&b)));
    let mut axes: Vec<DVec2> = Vec::new();
    let mut headings = vec![Heading { class: 0, backwards: false }; walls.len()];
    // Angles from 0 to pi are positive, so that their bits sort as they do.
    let mut by_angle: BTreeMap<u64, usize> = BTreeMap::new();
    for k in order {
        let wall = &walls[k];
        let dir = (wall.to - wall.from) / wall.length;
        let key = half_turn(dir).to_bits();
        let strays = |class: &usize| dir.perp_dot(axes[*class]).abs() * wall.length;
        let below = by_angle.range(..=key).next_back().or_else(|| by_angle.iter().next_back());
        let above = by_angle.range(key..).next().or_else(|| by_angle.iter().next());
        let nearest = [below, above]
            .into_iter()
            .flatten()
            .map(|(_, &class)| class)
            .min_by(|a, b| strays(a).total_cmp(&strays(b)).then(a.cmp(b)));
        let class = match nearest.filter(|class| strays(class) < DIRECTION_TOLERANCE && !own[k]) {
            Some(class) => class,
            None => {
                axes.push(dir);
                if !own[k] {
                    by_angle.insert(key, axes.len() - 1);
                }
                axes.len() - 1
            }
        };
        headings[k] = Heading { class, backwards: dir.dot(axes[class]) < 0.0 };
    }
    (headings, axes)
}

/// Angle of a line through the plan, 0 up to pi, radians.
fn half_turn(dir: DVec2) -> f64 {
    let angle = Angle::from_rise_run(dir.y, dir.x).to_rad();
    let folded = if angle < 0.0 { angle + core::f64::consts::PI } else { angle };
    folded.max(0.0) + 0.0
}

/// Runs of neighbours in one direction and of one kind share a line. Runs in
/// one direction that are less than the tolerance apart lie in one place,
/// whatever their kinds.
fn place_lines(walls: &[Wall], headings: &[Heading], axes: &[DVec2]) -> (Vec<Line>, Vec<usize>) {
    let inward = |h: Heading| {
        let axis = if h.backwards { -axes[h.class] } else { axes[h.class] };
        (axis, axis.perp())
    };
    let mut runs: Vec<(Heading, usize, f64, f64, usize)> = Vec::new();
    let mut run_of_wall = vec![usize::MAX; walls.len()];
    for k in 0..walls.len() {
        if run_of_wall[k] != usize::MAX {
            continue;
        }
        let joined = |a: usize, b: usize| headings[a] == headings[b] && walls[a].kind == walls[b].kind;
        let mut first = k;
        while joined(walls[first].before, first) && walls[first].before != k {
            first = walls[first].before;
        }
        let (mut weight, mut moment, mut next) = (0.0, 0.0, first);
        loop {
            let wall = &walls[next];
            run_of_wall[next] = runs.len();
            weight += wall.length;
            moment += wall.length * inward(headings[k]).1.dot((wall.from + wall.to) * 0.5);
            if !joined(next, wall.after) || wall.after == first {
                break;
            }
            next = wall.after;
        }
        runs.push((headings[k], walls[k].kind, moment / weight, weight, k));
    }
    let mut order: Vec<usize> = (0..runs.len()).collect();
    order.sort_by(|&a, &b| {
        let (ra, rb) = (&runs[a], &runs[b]);
        ra.0.cmp(&rb.0).then(ra.2.total_cmp(&rb.2)).then(a.cmp(&b))
    });
    // Groups of runs less than the tolerance from the first of the group; the
    // longest run of each says where the line is.
    let mut longest_of_run: Vec<usize> = (0..runs.len()).collect();
    let mut start = 0;
    while start < order.len() {
        let head = &runs[order[start]];
        let tail = order[start..].iter().position(|&r| {
            let run = &runs[r];
            run.0 != head.0 || run.2 - head.2 >= LINE_TOLERANCE
        });
        let end = tail.map_or(order.len(), |t| start + t);
        let group = &order[start..end];
        let longest = group.iter().copied().max_by(|&a, &b| runs[a].3.total_cmp(&runs[b].3).then(b.cmp(&a)));
        for &run in group {
            longest_of_run[run] = longest.unwrap_or(run);
        }
        start = end;
    }
    let mut lines = Vec::new();
    let mut line_of_run: BTreeMap<(usize, usize), usize> = BTreeMap::new();
    let line_of_wall = run_of_wall
        .iter()
        .map(|&run| {
            let leader = longest_of_run[run];
            let kind = runs[run].1;
            *line_of_run.entry((leader, kind)).or_insert_with(|| {
                let (heading, _, offset, _, _) = runs[leader];
                let (dir, inward) = inward(heading);
                lines.push(Line { dir, inward, offset, kind });
                lines.len() - 1
            })
        })
        .collect();
    (lines, line_of_wall)
}

#[cfg(test)]
mod tests {
    use super::regularise;
    use crate::DVec2;

    fn ring(corners: &[[f64; 2]]) -> Vec<DVec2> {
        corners.iter().map(|&c| DVec2::from_array(c)).collect()
    }

    #[test]
    fn a_wall_on_either_side_of_a_wing_lies_on_one_line() {
        let tee = ring(&[
            [0.0, 0.0],
            [14_000.0, 0.0],
            [14_000.0, 8000.0],
            [9000.0, 8000.4],
            [9000.0, 12_000.0],
            [5000.0, 12_000.0],
            [5000.0, 7999.8],
            [0.0, 8000.0],
        ]);
        let trued = regularise(&[tee], &[0; 8]).expect("a plain tee");
        assert_eq!(trued.line_of_wall[2], trued.line_of_wall[6]);
        let (front, back) = (trued.lines[trued.line_of_wall[0]], trued.lines[trued.line_of_wall[2]]);
        assert_eq!(front.dir, -back.dir);
        assert!(trued.moved.iter().all(|m| *m < 0.5));
    }

    #[test]
    fn unlike_walls_in_line_are_named() {
        let split = ring(&[[0.0, 0.0], [5000.0, 0.0], [10_000.0, 0.0], [10_000.0, 6000.0], [0.0, 6000.0]]);
        let trued = regularise(std::slice::from_ref(&split), &[0, 1, 0, 0, 0]).expect("a plain rectangle");
        assert_eq!(trued.unlike_neighbours, vec![1]);
        let trued = regularise(&[split], &[0; 5]).expect("a plain rectangle");
        assert_eq!(trued.unlike_neighbours, vec![]);
        assert_eq!(trued.lines.len(), 4);
    }

    #[test]
    fn a_bent_wall_keeps_its_bend() {
        let bent = ring(&[[0.0, 0.0], [5000.0, -2.0], [10_000.0, 0.0], [10_000.0, 6000.0], [0.0, 6000.0]]);
        let trued = regularise(std::slice::from_ref(&bent), &[0; 5]).expect("a plain plan");
        assert_eq!(trued.lines.len(), 5);
        assert!((trued.loops[0][1] - bent[1]).length() < 1.0);
    }
}
