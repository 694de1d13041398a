//! The timbers of a roof with what each touches, as the order of work sees them.

use geometry::{DVec2, DVec3};
use job::Job;
use roof::solution::{CutPlace, Member, MemberKind, Solution};
use strength::carrying::touch::{Touch, touches};

/// A timber that ends this near to a wall's line, or crosses it, is built into that wall, mm (half a thick wall).
const BUILT_IN: f64 = 160.0;
/// Heights that agree within this are one level, mm.
const LEVEL: f64 = 5.0;
/// Places on a timber nearer to one another than this are one hold, mm, or the share of its length if that is less.
pub const ONE_HOLD_MM: f64 = 450.0;
/// See [`ONE_HOLD_MM`].
pub const ONE_HOLD_SHARE: f64 = 0.2;
/// How much longer a patch may be than its area over its width: laps that cross are no rectangles.
const MOST_OF_AREA: f64 = 1.2;
/// A face whose normal is nearer to a timber's length than this (as a cosine) is one of its ends.
const ENDWAYS: f64 = 0.3;

/// A place where a timber touches another.
#[derive(Clone, Copy, Debug)]
pub struct Contact {
    /// The other timber.
    pub other: usize,
    /// From where to where along this timber, mm from its foot end.
    pub reach: [f64; 2],
    /// Middle of the patch.
    pub at: DVec3,
    /// Whether it is at an end of this timber, rather than on its side.
    pub endways: bool,
}

/// A timber.
#[derive(Debug)]
pub struct Timber<'a> {
    /// Its figures.
    pub member: &'a Member,
    /// Foot end, on the underside.
    pub origin: DVec3,
    /// From foot to head.
    pub along: DVec3,
    /// Length over all, mm.
    pub length: f64,
    /// Centre of gravity, mm along it.
    pub balance: f64,
    /// What it touches.
    pub contacts: Vec<Contact>,
    /// Where walls or bearings carry it, mm along it.
    pub ground: Vec<f64>,
    /// Whether it lies on a wall for its whole length.
    pub on_wall: bool,
    /// The length before it in one spliced timber.
    pub before: Option<usize>,
}

impl Timber<'_> {
    /// How far along the timber a point is, mm, within its length.
    pub fn along_of(&self, point: DVec3) -> f64 {
        self.along.dot(point - self.origin).clamp(0.0, self.length)
    }

    /// The point of its underside at a distance along it.
    pub fn under(&self, s: f64) -> DVec3 {
        self.origin + self.along * s
    }

    /// Direction in plan, of length 1 (0 for an upright).
    pub fn heading(&self) -> DVec2 {
        self.along.truncate().normalize_or_zero()
    }

    /// Mark.
    pub fn mark(&self) -> &str {
        &self.member.mark
    }

    /// Kind.
    pub fn kind(&self) -> MemberKind {
        self.member.kind
    }
}

/// All timbers of a roof.
#[derive(Debug)]
pub struct Graph<'a> {
    /// The job.
    pub job: &'a Job,
    /// The roof.
    pub solution: &'a Solution,
    /// The timbers in the order of the solution.
    pub timbers: Vec<Timber<'a>>,
}

impl<'a> Graph<'a> {
    /// Find out what touches what.
    pub fn of(job: &'a Job, solution: &'a Solution) -> Self {
        let mut timbers: Vec<Timber<'a>> = solution.members.iter().map(timber).collect();
        for touch in touches(&solution.members, |_| true) {
            let (Some(a), Some(b)) = (timbers.get(touch.a), timbers.get(touch.b)) else { continue };
            let (mine, theirs) = (contact(a, b, &touch, touch.b), contact(b, a, &touch, touch.a));
            timbers[touch.a].contacts.push(mine);
            timbers[touch.b].contacts.push(theirs);
        }
        for t in &mut timbers {
            t.on_wall = on_wall(job, t);
            t.ground = ground(job, solution, t);
            let splice = t.member.splices.iter().find(|s| s.at == CutPlace::Foot);
            t.before = splice.and_then(|s| solution.members.iter().position(|m| m.mark == s.mate));
        }
        Self { job, solution, timbers }
    }

    /// Places along a timber that are held by what is fixed already.
    pub fn held_at(&self, k: usize, fixed: &[bool]) -> Vec<f64> {
        let Some(me) = self.timbers.get(k) else { return Vec::new() };
        let mut spots = me.ground.clone();
        for c in me.contacts.iter().filter(|c| fixed.get(c.other).copied().unwrap_or(false)) {
            let [low, high] = c.reach;
            // A short patch is one hold, at its middle.
            if high - low > ONE_HOLD_MM.min(ONE_HOLD_SHARE * me.length) {
                spots.extend(c.reach);
            } else {
                spots.push((low + high) / 2.0);
            }
        }
        spots.sort_by(f64::total_cmp);
        spots
    }

    /// Marks of the fixed timbers that a timber touches.
    pub fn rests_on(&self, k: usize, fixed: &[bool]) -> Vec<String> {
        let Some(me) = self.timbers.get(k) else { return Vec::new() };
        let mut on: Vec<String> = me
            .contacts
            .iter()
            .filter(|c| fixed.get(c.other).copied().unwrap_or(false))
            .filter_map(|c| Some(self.timbers.get(c.other)?.mark().to_owned()))
            .collect();
        if me.on_wall || !me.ground.is_empty() {
            on.push("wall".into());
        }
        on.sort();
        on.dedup();
        on
    }
}

fn timber(member: &Member) -> Timber<'_> {
    let bench = &member.bench;
    let reach = bench.points.iter().map(|p| p[0]).fold(0.0, f64::max);
    Timber {
        member,
        origin: DVec3::from_array(bench.origin),
        along: DVec3::from_array(bench.along),
        length: if reach.is_finite() { reach } else { 0.0 },
        balance: crate::lifts::balance(member)[0],
        contacts: Vec::new(),
        ground: Vec::new(),
        on_wall: false,
        before: None,
    }
}

fn contact(me: &Timber<'_>, other: &Timber<'_>, touch: &Touch, number: usize) -> Contact {
    let middle = me.along_of(touch.at);
    let half = shared_length(me, other, touch) / 2.0;
    let reach = [(middle - half).max(0.0), (middle + half).min(me.length)];
    let endways = touch.normal.dot(me.along).abs() > ENDWAYS;
    Contact { other: number, reach, at: touch.at, endways }
}

/// How far the patch of a touch reaches along a timber: where both have points in its plane.
fn shared_length(me: &Timber<'_>, other: &Timber<'_>, touch: &Touch) -> f64 {
    /// Points this near to the plane of a patch lie in it, mm: what a check of a frame allows, twice.
    const IN_PLANE: f64 = 0.15;
    let span = |of: &Timber<'_>| {
        let points = of.member.solid.points.iter().map(|p| DVec3::from_array(*p));
        let inside = points.filter(|p| touch.normal.dot(*p - touch.at).abs() < IN_PLANE);
        inside
            .map(|p| me.along.dot(p - me.origin))
            .fold([f64::INFINITY, f64::NEG_INFINITY], |[l, h], s| [l.min(s), h.max(s)])
    };
    let ([a, b], [c, d]) = (span(me), span(other));
    let length = b.min(d) - a.max(c);
    // A patch is about as wide as the shallower of its timbers is deep, so that its area limits its length.
    let deep = |t: &Timber<'_>| t.member.size.thickness_mm.max(t.member.size.depth_mm);
    let most = MOST_OF_AREA * touch.area / deep(me).min(deep(other)).max(1.0);
    if length.is_finite() { length.clamp(0.0, most.max(0.0)) } else { 0.0 }
}

/// Whether a timber lies on a wall or a bearing line for its whole length.
fn on_wall(job: &Job, t: &Timber<'_>) -> bool {
    let middle = t.under(t.length / 2.0);
    match t.kind() {
        MemberKind::WallPlate => {
            let wall = t.member.wall.as_ref().and_then(|w| job.walls.iter().position(|x| x.letter == *w));
            let Some((wall, line)) = wall.and_then(|k| Some((job.walls.get(k)?, wall_line(job, k)?))) else {
                return false;
            };
            let bed = wall.plate - job.timber.plate.thickness;
            (t.origin.z - bed).abs() < LEVEL && off_segment(middle.truncate(), line) < BUILT_IN
        }
        MemberKind::SolePlate => job.bearings.iter().any(|b| {
            let line = [DVec2::from_array(b.from), DVec2::from_array(b.to)];
            off_segment(middle.truncate(), line) < BUILT_IN
                && (t.origin.z - b.top).abs() < t.member.size.depth_mm + LEVEL
        }),
        MemberKind::RidgeBoard => {
            // The board of a lean-to lies along the wall that the rafters lean on.
            (0..job.walls.len())
                .filter_map(|k| wall_line(job, k))
                .any(|line| [0.0, t.length].iter().all(|s| off_segment(t.under(*s).truncate(), line) < BUILT_IN))
        }
        _ => false,
    }
}

/// Where walls and bearings carry a timber, mm along it.
fn ground(job: &Job, solution: &Solution, t: &Timber<'_>) -> Vec<f64> {
    if t.on_wall {
        return vec![0.0, t.length];
    }
    let ends = [t.under(0.0).truncate(), t.under(t.length).truncate()];
    let mut spots = Vec::new();
    match t.kind() {
        MemberKind::Purlin | MemberKind::GableLadder => {
            for line in solution.gables.iter().filter_map(|g| gable_line(&g.outline)) {
                spots.extend(met(ends, line, BUILT_IN).map(|share| (share * t.length).clamp(0.0, t.length)));
            }
        }
        MemberKind::CeilingJoist | MemberKind::Binder => {
            for b in job.bearings.iter().filter(|b| (t.origin.z - b.top).abs() < LEVEL) {
                let line = [DVec2::from_array(b.from), DVec2::from_array(b.to)];
                spots.extend(met(ends, line, 0.0).map(|share| share * t.length));
            }
        }
        MemberKind::Strut => {
            let foot = ends[0];
            let near = |b: &&job::BearingLine| {
                off_segment(foot, [DVec2::from_array(b.from), DVec2::from_array(b.to)]) < BUILT_IN
            };
            spots.extend(job.bearings.iter().find(near).map(|_| 0.0));
        }
        _ => {}
    }
    spots
}

/// The plate line of a wall.
pub fn wall_line(job: &Job, wall: usize) -> Option<[DVec2; 2]> {
    let mut first = 0;
    for ring in &job.loops {
        if let Some(k) = wall.checked_sub(first).filter(|k| *k < ring.len()) {
            let next = ring.get((k + 1) % ring.len())?;
            return Some([DVec2::from_array(*ring.get(k)?), DVec2::from_array(*next)]);
        }
        first += ring.len();
    }
    None
}

/// The line of a gable in plan: between the two points of its outline that are farthest apart.
pub fn gable_line(outline: &[[f64; 3]]) -> Option<[DVec2; 2]> {
    let first = DVec3::from_array(*outline.first()?).truncate();
    let points = || outline.iter().map(|p| DVec3::from_array(*p).truncate());
    let a = points().max_by(|p, q| p.distance(first).total_cmp(&q.distance(first)))?;
    let b = points().max_by(|p, q| p.distance(a).total_cmp(&q.distance(a)))?;
    Some([a, b])
}

/// How far a point is from a segment in plan, mm.
pub fn off_segment(p: DVec2, [a, b]: [DVec2; 2]) -> f64 {
    let length2 = (b - a).length_squared();
    let t = if length2 > 0.0 { ((p - a).dot(b - a) / length2).clamp(0.0, 1.0) } else { 0.0 };
    p.distance(a + (b - a) * t)
}

/// Where a segment meets another in plan, as a share of the first, when it does or stops within `reach` of it, mm.
fn met([a, b]: [DVec2; 2], [p, q]: [DVec2; 2], reach: f64) -> Option<f64> {
    /// Lines nearer to parallel than a degree or two do not cross (sine of the angle).
    const PARALLEL: f64 = 0.03;
    let (d, e) = (b - a, q - p);
    let turn = d.perp_dot(e);
    if turn.abs() <= PARALLEL * d.length() * e.length() {
        return None;
    }
    let t = (p - a).perp_dot(e) / turn;
    let u = (p - a).perp_dot(d) / turn;
    let (slack_t, slack_u) = (reach / d.length(), LEVEL / e.length());
    ((-slack_t..=1.0 + slack_t).contains(&t) && (-slack_u..=1.0 + slack_u).contains(&u)).then_some(t)
}
