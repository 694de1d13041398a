//! Walls that are all but in line, roofed as one: their plates are packed or
//! set over to one line, so that their slopes are one slope.

use geometry::DVec2;
use job::{Job, Wall, places};

/// Furthest that an end of a plate is set over or packed out, mm: what still
/// lies on a wall of ordinary thickness.
const FURTHEST: f64 = 50.0;

/// Walls already this near to one line need nothing, mm.
const NEAR_ENOUGH: f64 = 1e-6;

/// A plate that is moved by less is not told of, mm: no tape reads it.
const WORTH_A_WORD: f64 = 0.5;

/// Rounds over all groups of walls: a corner of two of them is moved by both,
/// and settles within a few.
const ROUNDS: usize = 60;

/// A wall whose plate is moved.
#[derive(Clone, Debug)]
pub struct Moved {
    /// Its number.
    pub wall: usize,
    /// How far each end moves into the building, mm.
    pub inwards: [f64; 2],
}

struct Side {
    wall: usize,
    ring: usize,
    ends: [usize; 2],
}

/// The job with such walls in line, and what was moved; `None` if there are none.
pub fn made(job: &Job) -> Option<(Job, Vec<Moved>)> {
    let sides = sides(job);
    let groups = groups(job, &sides);
    if groups.is_empty() {
        return None;
    }
    let mut loops = places(&job.loops);
    let along: Vec<Option<DVec2>> = groups.iter().map(|group| facing_it(job, &sides, group)).collect();
    for _ in 0..ROUNDS {
        let mut most: f64 = 0.0;
        for (group, along) in groups.iter().zip(&along) {
            let ends: Vec<(usize, usize)> =
                group.iter().flat_map(|s| sides[*s].ends.map(|end| (sides[*s].ring, end))).collect();
            let points: Vec<DVec2> = ends.iter().map(|(ring, end)| loops[*ring][*end]).collect();
            let line = along.and_then(|dir| line_along(&points, dir)).or_else(|| line_through(&points));
            let Some((on, normal)) = line else { continue };
            for (ring, end) in ends {
                let off = normal.dot(loops[ring][end] - on);
                loops[ring][end] -= normal * off;
                most = most.max(off.abs());
            }
        }
        if most < NEAR_ENOUGH {
            break;
        }
    }
    let mut moved = Vec::new();
    for side in &sides {
        let [a, b] = side.ends.map(|end| DVec2::from_array(job.loops[side.ring][end]));
        let inward = (b - a).normalize_or_zero().perp();
        let inwards = [(0, a), (1, b)].map(|(k, was)| inward.dot(loops[side.ring][side.ends[k]] - was));
        if inwards.iter().any(|by| by.abs() > FURTHEST) {
            return None;
        }
        if inwards.iter().any(|by| by.abs() > WORTH_A_WORD) {
            moved.push(Moved { wall: side.wall, inwards });
        }
    }
    if moved.is_empty() {
        return None;
    }
    let mut straight = job.clone();
    straight.loops = loops.iter().map(|ring| ring.iter().map(|p| p.to_array()).collect()).collect();
    Some((straight, moved))
}

fn sides(job: &Job) -> Vec<Side> {
    let mut sides = Vec::with_capacity(job.walls.len());
    for (ring, corners) in job.loops.iter().enumerate() {
        let n = corners.len();
        for k in 0..n {
            sides.push(Side { wall: sides.len(), ring, ends: [k, (k + 1) % n] });
        }
    }
    sides
}

/// Whether the slopes of two walls in one line would be one slope.
fn alike(a: &Wall, b: &Wall) -> bool {
    let own = |w: &Wall| (w.gable, w.plate, w.half_hip, w.gablet, w.upper);
    own(a) == own(b) && (a.gable || a.pitch_deg == b.pitch_deg)
}

/// Walls that face one way and whose ends all lie near one line.
fn groups(job: &Job, sides: &[Side]) -> Vec<Vec<usize>> {
    let loops = places(&job.loops);
    let ends = |s: &Side| s.ends.map(|end| loops[s.ring][end]);
    let facing = |s: &Side| {
        let [a, b] = ends(s);
        (b - a).normalize_or_zero()
    };
    let mut free: Vec<usize> = (0..sides.len()).collect();
    let length = |s: usize| {
        let [a, b] = ends(&sides[s]);
        (b - a).length()
    };
    // The longest walls gather the others.
    free.sort_by(|a, b| length(*b).total_cmp(&length(*a)).then(a.cmp(b)));
    let mut out = Vec::new();
    while !free.is_empty() {
        let lead = free.remove(0);
        let mut group = vec![lead];
        let mut k = 0;
        while k < free.len() {
            let s = free[k];
            let mut points: Vec<DVec2> = group.iter().flat_map(|g| ends(&sides[*g])).collect();
            points.extend(ends(&sides[s]));
            let fits = line_through(&points)
                .is_some_and(|(on, normal)| points.iter().all(|p| normal.dot(*p - on).abs() <= FURTHEST));
            let wall = |s: usize| job.walls.get(sides[s].wall);
            let same = wall(lead).zip(wall(s)).is_some_and(|(a, b)| alike(a, b));
            if same && fits && facing(&sides[lead]).dot(facing(&sides[s])) > 0.0 {
                group.push(free.remove(k));
            } else {
                k += 1;
            }
        }
        if group.len() > 1 {
            out.push(group);
        }
    }
    out
}

/// The direction of the longest other wall that runs along a group: parallel
/// to it, the ridge between them is level.
fn facing_it(job: &Job, sides: &[Side], group: &[usize]) -> Option<DVec2> {
    let loops = places(&job.loops);
    let vector = |s: usize| loops[sides[s].ring][sides[s].ends[1]] - loops[sides[s].ring][sides[s].ends[0]];
    let points: Vec<DVec2> = group.iter().flat_map(|s| sides[*s].ends.map(|end| loops[sides[*s].ring][end])).collect();
    let others = (0..sides.len()).filter(|s| !group.contains(s));
    let along = others.filter(|s| line_along(&points, vector(*s).normalize_or_zero()).is_some());
    let longest = along.max_by(|a, b| vector(*a).length().total_cmp(&vector(*b).length()).then(b.cmp(a)))?;
    Some(vector(longest).normalize_or_zero())
}

/// The line of a given direction in the middle of some points that all lie
/// near it.
fn line_along(points: &[DVec2], dir: DVec2) -> Option<(DVec2, DVec2)> {
    let (middle, normal) = (points.iter().sum::<DVec2>() / points.len() as f64, dir.perp());
    let near = points.iter().all(|p| normal.dot(*p - middle).abs() <= FURTHEST);
    (near && dir != DVec2::ZERO).then_some((middle, normal))
}

/// The line that lies nearest to some points: a point on it and its normal.
fn line_through(points: &[DVec2]) -> Option<(DVec2, DVec2)> {
    let middle = points.iter().sum::<DVec2>() / points.len() as f64;
    let (mut xx, mut xy, mut yy) = (0.0, 0.0, 0.0);
    for p in points {
        let d = *p - middle;
        (xx, xy, yy) = (xx + d.x * d.x, xy + d.x * d.y, yy + d.y * d.y);
    }
    // The direction of most spread halves the angle of (xx - yy, 2 xy).
    let double = DVec2::new(xx - yy, 2.0 * xy);
    let size = double.length();
    if size <= f64::EPSILON * (xx + yy) {
        return None;
    }
    let along =
        if double.x >= 0.0 { DVec2::new(size + double.x, double.y) } else { DVec2::new(double.y, size - double.x) };
    Some((middle, along.normalize_or_zero().perp()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_line_runs_along_the_points_whichever_way_they_lie() {
        for turn in 0..36 {
            let a = geometry::Angle::deg(10.0 * f64::from(turn));
            let dir = DVec2::new(a.cos(), a.sin());
            let points: Vec<DVec2> = (0..5).map(|k| DVec2::new(3.0, 7.0) + dir * f64::from(k * k)).collect();
            let (on, normal) = line_through(&points).expect("they spread");
            assert!(normal.dot(dir).abs() < 1e-12, "{turn}");
            assert!(points.iter().all(|p| normal.dot(*p - on).abs() < 1e-9), "{turn}");
        }
    }
}
