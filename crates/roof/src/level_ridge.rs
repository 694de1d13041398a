//! Level ridges over plates that are out of parallel.
//!
//! Two slopes that face one another over plates out of parallel meet in a line
//! that falls. A ridge is kept level instead by turning the slope of one wall
//! until its level lines run with the other's: the plane stays flat, and rises
//! over its own plate towards one end. There its rafters stand on firring.

use crate::SolveError;
use crate::frame::heights;
use crate::profiles;
use crate::surface_words;
use geometry::surface::{self, ArcKind, FaceId, RoofArc, RoofPlane, Surface, WallId, WallProfile};
use geometry::{Angle, DVec2};
use job::{Job, RidgeRun};

/// Slopes whose fall lines are nearer to opposite than this (as a cosine: 10°)
/// face one another; past it their plates are not meant to be parallel.
const FACING: f64 = -0.985;

/// Slopes turned from one another by less than this (as a sine) are parallel:
/// truing up leaves no smaller turn.
const PARALLEL: f64 = 1e-9;

/// Slopes in one direction whose lines are nearer than this lie on one line, mm.
const IN_LINE: f64 = 1e-6;

/// Two plates are told to be out of parallel from this on, mm over a wall:
/// less is not worth a word.
const WORTH_A_WORD: f64 = 1.0;

/// Rounds of levelling, a pair of slopes in each: a wing's ridge may be seen
/// only when the main one is level.
const ROUNDS: usize = 12;

/// What was done about plates out of parallel, in the order in which it was.
#[derive(Clone, Debug, PartialEq)]
pub struct OutOfParallel {
    /// The wall that is packed, or would be.
    pub wall: WallId,
    /// The wall across the ridge.
    pub across: WallId,
    /// How far the two plates run together over the length of the first, mm.
    pub by: f64,
    /// Most firring under its rafters, mm.
    pub firring: f64,
    /// The pitch at which the firring would be as much as the job allows, degrees.
    pub pitch_deg: f64,
    /// How much the ridge falls over its length if nothing is packed, mm.
    pub falls: f64,
    /// The two slopes face the same way and are to be one.
    pub one: bool,
    /// Whether the wall is packed.
    pub packed: bool,
}

/// A roof surface with its ridges level where the job wants them so.
#[derive(Clone, Debug)]
pub struct Levelled {
    /// The surface.
    pub surface: Surface,
    /// For every wall whose slope was turned: its plate line.
    pub plates: Vec<Option<PlateLine>>,
    /// The corners of the plates, one for the start of every wall.
    pub corners: Vec<DVec2>,
    /// What there is to say.
    pub told: Vec<OutOfParallel>,
}

/// The line that a plate is bedded on, where its slope was turned off it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlateLine {
    /// Where it starts, mm.
    pub from: DVec2,
    /// Unit vector along it, the building on its left.
    pub dir: DVec2,
}

impl PlateLine {
    /// Where a line through `p` along `dir` crosses the plate line, as a
    /// distance from `p`; `None` if it runs along the plate.
    pub fn crossing(&self, p: DVec2, dir: DVec2) -> Option<f64> {
        let square = self.dir.perp();
        let toward = square.dot(dir);
        (toward.abs() > PARALLEL).then(|| square.dot(self.from - p) / toward)
    }
}

/// The roof surface of a job.
///
/// # Errors
/// When there is no roof over its plan.
pub fn surface_of(job: &Job) -> Result<Levelled, SolveError> {
    let given: Vec<Vec<DVec2>> =
        job.loops.iter().map(|ring| ring.iter().map(|p| DVec2::from_array(*p)).collect()).collect();
    let profiles: Vec<WallProfile> = job.walls.iter().map(profiles::of_wall).collect();
    let surface = surface::solve(&given, &profiles)
        .map_err(|source| SolveError::Surface { words: surface_words::of(job, &source), source })?;
    // As the surface has trued them.
    let plates = surface.loops.clone();
    let corners = plates.iter().flatten().copied().collect();
    let mut levelled = Levelled { surface, plates: vec![None; job.walls.len()], corners, told: Vec::new() };
    let mut loops = plates.clone();
    for _ in 0..ROUNDS {
        let Some(Turn { told, faces, loops: turned }) = next_turn(job, &levelled, &plates, &loops) else { break };
        let trial =
            turned.filter(|_| told.packed).and_then(|loops| Some((surface::solve(&loops, &profiles).ok()?, loops)));
        levelled.told.retain(|known| known.wall != told.wall || known.across != told.across);
        let Some((surface, turned)) = trial else {
            levelled.told.push(OutOfParallel { packed: false, ..told });
            continue;
        };
        let walls: Vec<WallId> = faces.iter().flat_map(|f| levelled.surface.face(*f).walls.clone()).collect();
        for wall in walls {
            levelled.plates[wall.index()] = plate_line(&plates, wall);
        }
        loops = turned;
        levelled.surface = surface;
        levelled.told.push(told);
    }
    Ok(levelled)
}

/// Both ends of a wall.
fn ends_of(loops: &[Vec<DVec2>], wall: WallId) -> Option<[DVec2; 2]> {
    let mut k = wall.index();
    for ring in loops {
        if k < ring.len() {
            return Some([ring[k], ring[(k + 1) % ring.len()]]);
        }
        k -= ring.len();
    }
    None
}

fn plate_line(plates: &[Vec<DVec2>], wall: WallId) -> Option<PlateLine> {
    let [from, to] = ends_of(plates, wall)?;
    Some(PlateLine { from, dir: (to - from).normalize_or_zero() })
}

/// Slopes put on another line.
struct Turn {
    told: OutOfParallel,
    faces: Vec<FaceId>,
    /// `None` where a neighbour runs along it.
    loops: Option<Vec<Vec<DVec2>>>,
}

/// Two slopes that meet in a line that should be level, or none at all.
struct Pair {
    /// Length of the line in plan, mm.
    length: f64,
    falls: f64,
    /// They face the same way: they should be one slope.
    one: bool,
    faces: [FaceId; 2],
}

/// The next pair of slopes that meet in a line that falls and should not, or
/// that should be one slope.
fn next_turn(job: &Job, levelled: &Levelled, plates: &[Vec<DVec2>], loops: &[Vec<DVec2>]) -> Option<Turn> {
    if job.setting_out.ridge == RidgeRun::AsItFalls {
        return None;
    }
    let surface = &levelled.surface;
    let first_wall = |face: FaceId| surface.face(face).walls.first().copied();
    let refused = |pair: &Pair| {
        let walls = pair.faces.map(first_wall);
        levelled
            .told
            .iter()
            .any(|t| !t.packed && (walls == [Some(t.wall), Some(t.across)] || walls == [Some(t.across), Some(t.wall)]))
    };
    let mut pairs: Vec<Pair> = surface.arcs.iter().filter_map(|arc| pair_at(surface, arc)).collect();
    pairs.extend(halves(job, surface, plates));
    pairs.retain(|pair| !refused(pair));
    pairs.sort_by(|a, b| b.one.cmp(&a.one).then(b.length.total_cmp(&a.length)).then(a.faces.cmp(&b.faces)));
    let Pair { falls, one, faces: [a, b], .. } = *pairs.first()?;
    let (turned, held) = if gives_way(levelled, a, b) { (a, b) } else { (b, a) };
    let (wall, across) = (first_wall(turned)?, first_wall(held)?);
    let plane = surface.face(turned).plane;
    let other = surface.face(held).plane.inward;
    let (faces, inward) = if one { (vec![turned, held], other) } else { (vec![turned], -other) };
    let mut inward = inward;
    let [mut low, mut high] = across_reach(job, surface, plates, &faces, inward);
    if one {
        // Either direction will do for both: the one that takes less.
        let own = across_reach(job, surface, plates, &faces, plane.inward);
        if own[1] - own[0] < high - low {
            (inward, [low, high]) = (plane.inward, own);
        }
    }
    let by = high - low;
    let firring = by * plane.tan_pitch;
    let most = job.setting_out.packing;
    let pitch_deg = Angle::from_rise_run(most, by).to_deg();
    let told = OutOfParallel { wall, across, by, firring, pitch_deg, falls, one, packed: firring <= most };
    let line = RoofPlane { inward, offset: low, ..plane };
    Some(Turn { told, loops: turn(surface, loops, &faces, &line), faces })
}

/// The slopes beside a line, if it should be level or none at all.
fn pair_at(surface: &Surface, arc: &RoofArc) -> Option<Pair> {
    let faces = [arc.left?, arc.right?];
    let [p, q] = faces.map(|f| surface.face(f).plane);
    let facing = p.inward.dot(q.inward);
    let apart = p.inward.perp_dot(q.inward).abs() > PARALLEL || (p.offset - q.offset).abs() > IN_LINE;
    let one = facing > -FACING && p.tan_pitch == q.tan_pitch && p.base_height == q.base_height && apart;
    let over = facing < FACING && matches!(arc.kind, ArcKind::Ridge | ArcKind::Hip | ArcKind::BrokenHip);
    if !(one || over && p.inward.perp_dot(q.inward).abs() > PARALLEL) {
        return None;
    }
    let (from, to) = (surface.node(arc.from), surface.node(arc.to));
    let [a, b] = faces;
    Some(Pair {
        length: (to - from).truncate().length(),
        falls: (to.z - from.z).abs(),
        one,
        faces: [a.min(b), a.max(b)],
    })
}

/// Slopes that face the same third one across a ridge, on either side of a
/// wing, and lie so near to one line that firring makes one slope of them.
fn halves(job: &Job, surface: &Surface, plates: &[Vec<DVec2>]) -> Vec<Pair> {
    let plane = |f: FaceId| surface.face(f).plane;
    let mut across: Vec<[FaceId; 2]> = Vec::new();
    for arc in &surface.arcs {
        if let (Some(a), Some(b)) = (arc.left, arc.right)
            && plane(a).inward.dot(plane(b).inward) < FACING
        {
            across.extend([[a, b], [b, a]]);
        }
    }
    across.sort_unstable();
    across.dedup();
    let mut out = Vec::new();
    for (k, [third, a]) in across.iter().enumerate() {
        for [_, b] in across[k + 1..].iter().take_while(|[other, _]| other == third) {
            let (p, q) = (plane(*a), plane(*b));
            let reach = [p, q].map(|plane| across_reach(job, surface, plates, &[*a, *b], plane.inward));
            let by = reach.iter().map(|[low, high]| high - low).fold(f64::INFINITY, f64::min);
            let near = by * p.tan_pitch <= job.setting_out.packing;
            let apart = p.inward.perp_dot(q.inward).abs() > PARALLEL || (p.offset - q.offset).abs() > IN_LINE;
            if near && apart && p.tan_pitch == q.tan_pitch && p.base_height == q.base_height {
                out.push(Pair { length: 0.0, falls: 0.0, one: true, faces: [*a, *b] });
            }
        }
    }
    out
}

/// Least and greatest reach of the plates under some slopes along a direction.
fn across_reach(job: &Job, surface: &Surface, plates: &[Vec<DVec2>], faces: &[FaceId], inward: DVec2) -> [f64; 2] {
    let walls = faces.iter().flat_map(|f| &surface.face(*f).walls);
    let reach = walls.filter_map(|w| reach_of(job, plates, *w)).flatten().map(|p| inward.dot(p));
    reach.fold([f64::INFINITY, f64::NEG_INFINITY], |[low, high], d| [low.min(d), high.max(d)])
}

/// Both ends of the plate of a wall, run out under the verges beside it.
fn reach_of(job: &Job, plates: &[Vec<DVec2>], wall: WallId) -> Option<[DVec2; 2]> {
    let [from, to] = ends_of(plates, wall)?;
    let mut first = 0;
    let ring = plates.iter().map(Vec::len).find(|n| {
        let here = wall.index() < first + n;
        first += if here { 0 } else { *n };
        here
    })?;
    let k = wall.index() - first;
    let past = |neighbour: usize| {
        let upright = job.walls.get(first + neighbour).is_some_and(heights::starts_upright);
        if upright { job.verge.overhang } else { 0.0 }
    };
    let along = (to - from).normalize_or_zero();
    Some([from - along * past((k + ring - 1) % ring), to + along * past((k + 1) % ring)])
}

/// Which of two slopes is turned: one that is packed already, the one that fewer walls are square to or
/// run with, then the one with the shorter wall.
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

/// A corner slides along its other wall by at most this many times what the
/// slope is turned off the plate there: past it the two run nearly in line.
const MOST_SLIDE: f64 = 4.0;

impl OutOfParallel {
    /// Whether it is worth a word.
    pub fn is_told(&self) -> bool {
        self.by >= WORTH_A_WORD
    }
}
