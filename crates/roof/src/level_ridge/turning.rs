//! One slope of a pair put on another line.

use super::pairs::{self, Pair, across_reach};
use super::{Levelled, OutOfParallel, PARALLEL};
use geometry::surface::{FaceId, RoofPlane, Surface, WallId};
use geometry::{Angle, DVec2};
use job::Job;

/// A corner slides along its other wall by at most this many times what the
/// slope is turned off the plate there: past it the two run nearly in line.
const MOST_SLIDE: f64 = 4.0;

/// Slopes put on another line.
pub struct Turn {
    /// What there is to say of it.
    pub told: OutOfParallel,
    /// The slopes.
    pub faces: Vec<FaceId>,
    /// The loops with their walls on that line; `None` where a neighbour runs
    /// along it.
    pub loops: Option<Vec<Vec<DVec2>>>,
}

/// The next pair of slopes that meet in a line that falls and should not, or
/// that should be one slope.
pub fn next(job: &Job, levelled: &Levelled, plates: &[Vec<DVec2>], loops: &[Vec<DVec2>]) -> Option<Turn> {
    let surface = &levelled.surface;
    let first_wall = |face: FaceId| surface.face(face).walls.first().copied();
    let refused = |pair: &Pair| {
        let walls = pair.faces.map(first_wall);
        levelled
            .told
            .iter()
            .any(|t| !t.packed && (walls == [Some(t.wall), Some(t.across)] || walls == [Some(t.across), Some(t.wall)]))
    };
    let pair = pairs::all(job, surface, plates).into_iter().find(|pair| !refused(pair))?;
    let Pair { falls, one, faces: [a, b], .. } = pair;
    let (turned, held) = if gives_way(levelled, a, b) { (a, b) } else { (b, a) };
    let (wall, across) = (first_wall(turned)?, first_wall(held)?);
    let plane = surface.face(turned).plane;
    let other = surface.face(held).plane.inward;
    // Two slopes that are to be one may both take either direction: the one that takes less.
    let (faces, ways) =
        if one { (vec![turned, held], vec![other, plane.inward]) } else { (vec![turned], vec![-other]) };
    let reach = |inward: DVec2| (inward, across_reach(job, surface, plates, &faces, inward));
    let (inward, [low, high]) =
        ways.into_iter().map(reach).min_by(|(_, a), (_, b)| (a[1] - a[0]).total_cmp(&(b[1] - b[0])))?;
    let by = high - low;
    let firring = by * plane.tan_pitch;
    let most = job.setting_out.packing;
    let pitch_deg = Angle::from_rise_run(most, by).to_deg();
    let told = OutOfParallel { wall, across, by, firring, pitch_deg, falls, one, packed: firring <= most };
    let line = RoofPlane { inward, offset: low, ..plane };
    Some(Turn { told, loops: turn(surface, loops, &faces, &line), faces })
}

/// Which of two slopes is turned: one that is packed already, the one that
/// fewer walls are square to or run with, then the one with the shorter wall.
fn gives_way(levelled: &Levelled, a: FaceId, b: FaceId) -> bool {
    let surface = &levelled.surface;
    let packed = |f: FaceId| surface.face(f).walls.iter().any(|w| levelled.plates[w.index()].is_some());
    let inward = |f: FaceId| surface.face(f).plane.inward;
    let company = |f: FaceId| {
        let walls = (0..surface.face_of_wall.len()).filter_map(|w| surface.wall_ends(WallId(w as u32)));
        let dirs = walls.map(|[p, q]| (q - p).normalize_or_zero());
        dirs.filter(|d| d.dot(inward(f)).abs() < PARALLEL || d.perp_dot(inward(f)).abs() < PARALLEL).count()
    };
    let length = |f: FaceId| {
        let walls = surface.face(f).walls.iter().filter_map(|w| surface.wall_ends(*w));
        // To the whole mm: a plan that is turned on its sheet is framed alike.
        walls.map(|[p, q]| (q - p).length()).sum::<f64>().round()
    };
    let order = packed(b).cmp(&packed(a)).then(company(a).cmp(&company(b)));
    order.then(length(a).total_cmp(&length(b))).then(b.cmp(&a)).is_lt()
}

/// The loops with all walls of some slopes on another line; `None` where a
/// neighbour runs along it.
fn turn(surface: &Surface, loops: &[Vec<DVec2>], faces: &[FaceId], line: &RoofPlane) -> Option<Vec<Vec<DVec2>>> {
    let mine = |wall: usize| faces.iter().any(|f| surface.face(*f).walls.contains(&WallId(wall as u32)));
    let mut out = loops.to_vec();
    let mut first = 0;
    for (ring, moved) in loops.iter().zip(&mut out) {
        let n = ring.len();
        for k in 0..n {
            let (before, after) = ((k + n - 1) % n, k);
            let along = match (mine(first + before), mine(first + after)) {
                (false, false) => continue,
                (true, true) => line.inward,
                (true, false) => (ring[(k + 1) % n] - ring[k]).normalize_or_zero(),
                (false, true) => (ring[k] - ring[before]).normalize_or_zero(),
            };
            let toward = along.dot(line.inward);
            if toward.abs() < 1.0 / MOST_SLIDE {
                return None;
            }
            moved[k] = ring[k] + along * ((line.offset - line.inward.dot(ring[k])) / toward);
        }
        first += n;
    }
    Some(out)
}
