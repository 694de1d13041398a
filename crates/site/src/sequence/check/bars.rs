//! Timbers as bars with pins where they touch.

use geometry::DVec3;
use job::Job;
use roof::solution::{MemberKind, Solution};
use strength::carrying::touch::touches;

/// Pins on a timber nearer to one another than this count as one, mm: several nails through a lap hold no timber
/// upright by themselves.
const ONE_PIN_MM: f64 = 450.0;
/// The same as a share of the length of a short timber.
const ONE_PIN_SHARE: f64 = 0.2;
/// A timber up to this long may hang on the nails at one place, mm: a jack in the corner of the eaves that has no
/// plate under it, until a board holds its other end.
pub const STUB: f64 = 900.0;
/// Half of a thick wall, mm: what ends so near to the line of a wall is built into it.
const IN_WALL: f64 = 160.0;
/// Heights within this agree, mm.
const AGREE: f64 = 5.0;

/// A pin between two timbers, or between a timber and what never moves.
#[derive(Clone, Copy, Debug)]
pub struct Pin {
    /// The other timber; `None`: a wall.
    pub other: Option<usize>,
    /// Along this timber, mm, as one with those near it.
    pub at: f64,
    /// Along the other timber, mm.
    pub other_at: f64,
    /// Along this timber, mm, where it is.
    pub exact: f64,
}

/// A timber as a bar.
#[derive(Clone, Debug)]
pub struct Bar {
    /// Mark.
    pub mark: String,
    /// Foot end on the underside.
    pub start: DVec3,
    /// From foot to head.
    pub along: DVec3,
    /// Over all, mm.
    pub length: f64,
    /// Greater side of its section, mm.
    pub girth: f64,
    /// Centre of gravity along it, mm.
    pub weight_at: f64,
    /// Whether it lies on a wall for its length.
    pub lies_on_wall: bool,
    /// Whether it stands upright.
    pub upright: bool,
    /// Its pins.
    pub pins: Vec<Pin>,
    /// Lengths bolted to it in one line: the other length, and the middle of the splice along this one, mm.
    pub bolted: Vec<(usize, f64)>,
    /// Every length spliced to it, bolted or not.
    pub spliced: Vec<usize>,
    /// Volume, m³, for shares only.
    pub volume: f64,
}

impl Bar {
    /// Distance along the bar of a point, within its ends, mm.
    pub fn station(&self, p: DVec3) -> f64 {
        (p - self.start).dot(self.along).clamp(0.0, self.length)
    }

    /// How far a point is from the bar's line, mm.
    pub fn distance(&self, p: DVec3) -> f64 {
        p.distance(self.start + self.along * self.station(p))
    }
}

/// All timbers.
#[derive(Debug)]
pub struct Bars(pub Vec<Bar>);

impl Bars {
    /// Timbers of a roof with their pins.
    pub fn of(job: &Job, solution: &Solution) -> Self {
        let mut bars: Vec<Bar> = solution.members.iter().map(bar).collect();
        let mut raw: Vec<(usize, Option<usize>, DVec3)> = Vec::new();
        for t in touches(&solution.members, |_| true) {
            let (Some(a), Some(b)) = (bars.get(t.a), bars.get(t.b)) else { continue };
            for p in patch_ends(
                a,
                b,
                &solution.members[t.a].solid.points,
                &solution.members[t.b].solid.points,
                t.at,
                t.normal,
                t.area,
            ) {
                raw.push((t.a, Some(t.b), p));
                raw.push((t.b, Some(t.a), p));
            }
        }
        for (k, member) in solution.members.iter().enumerate() {
            let Some(bar) = bars.get_mut(k) else { continue };
            for splice in &member.splices {
                let Some(other) = solution.members.iter().position(|m| m.mark == splice.mate) else { continue };
                bar.spliced.push(other);
                if !splice.bolts.is_empty() {
                    bar.bolted.push((other, (splice.from_mm + splice.length_mm / 2.0).clamp(0.0, bar.length)));
                }
            }
            bar.lies_on_wall = bears_all_along(job, member.kind, member.wall.as_deref(), bar);
            for p in borne_at(job, solution, member.kind, bar) {
                raw.push((k, None, p));
            }
        }
        // Places by timber, drawn together; then the pins themselves.
        let places: Vec<Vec<f64>> = (0..bars.len())
            .map(|k| raw.iter().filter(|r| r.0 == k).map(|r| bars[k].station(r.2)).collect())
            .map(|mut s: Vec<f64>| {
                s.sort_by(f64::total_cmp);
                s
            })
            .collect();
        let together: Vec<Vec<(f64, f64)>> =
            places.iter().enumerate().map(|(k, s)| drawn_together(s, one_pin(&bars[k]))).collect();
        let as_one = |k: usize, s: f64| {
            let found = together[k].iter().find(|(exact, _)| *exact == s);
            found.map_or(s, |(_, at)| *at)
        };
        let pins: Vec<(usize, Pin)> = raw
            .iter()
            .map(|(k, other, p)| {
                let exact = bars[*k].station(*p);
                let other_at = other.map_or(0.0, |o| as_one(o, bars[o].station(*p)));
                (*k, Pin { other: *other, at: as_one(*k, exact), other_at, exact })
            })
            .collect();
        for (k, pin) in pins {
            bars[k].pins.push(pin);
        }
        Self(bars)
    }

    /// Mark of a timber.
    pub fn mark(&self, k: usize) -> String {
        self.0.get(k).map_or(String::new(), |b| b.mark.clone())
    }
}

/// Distance below which pins of a timber are one, mm.
pub fn one_pin(bar: &Bar) -> f64 {
    ONE_PIN_MM.min(ONE_PIN_SHARE * bar.length)
}

fn bar(m: &roof::solution::Member) -> Bar {
    let start = DVec3::from_array(m.bench.origin);
    let along = DVec3::from_array(m.bench.along);
    let stations = m.solid.points.iter().map(|p| along.dot(DVec3::from_array(*p) - start));
    let length = stations.fold(0.0, f64::max);
    // Upright: within about 18° of plumb.
    let upright = along.z.abs() > 0.95;
    Bar {
        mark: m.mark.clone(),
        start,
        along,
        length,
        girth: m.size.depth_mm.max(m.size.thickness_mm),
        weight_at: middle_of_wood(m, along, start),
        lies_on_wall: false,
        upright,
        pins: Vec::new(),
        bolted: Vec::new(),
        spliced: Vec::new(),
        volume: m.volume_m3,
    }
}

/// Centre of gravity along a timber by slices of its solid's signed tetrahedra in world axes.
fn middle_of_wood(m: &roof::solution::Member, along: DVec3, start: DVec3) -> f64 {
    let p: Vec<DVec3> = m.solid.points.iter().map(|p| DVec3::from_array(*p) - start).collect();
    let (mut sum, mut first) = (0.0, 0.0);
    for face in &m.solid.faces {
        let at = |k: usize| face.get(k).and_then(|n| p.get(*n as usize)).copied().unwrap_or(DVec3::ZERO);
        for k in 1..face.len().saturating_sub(1) {
            let (a, b, c) = (at(0), at(k), at(k + 1));
            let v = a.dot(b.cross(c));
            sum += v;
            first += v * along.dot(a + b + c) / 4.0;
        }
    }
    if sum.abs() > 0.0 { first / sum } else { 0.0 }
}

/// One point of a patch, or its two ends where it is long.
fn patch_ends(a: &Bar, b: &Bar, pa: &[[f64; 3]], pb: &[[f64; 3]], at: DVec3, normal: DVec3, area: f64) -> Vec<DVec3> {
    /// A point lies in the plane of a patch within this, mm.
    const IN_PLANE: f64 = 0.15;
    let range = |dir: DVec3, points: &[[f64; 3]]| {
        let flat = points.iter().map(|p| DVec3::from_array(*p)).filter(|p| normal.dot(*p - at).abs() < IN_PLANE);
        flat.map(|p| dir.dot(p)).fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), s| (l.min(s), h.max(s)))
    };
    let mut best = (0.0, DVec3::ZERO);
    for dir in [a.along, b.along] {
        let ((al, ah), (bl, bh)) = (range(dir, pa), range(dir, pb));
        // A patch is about as wide as the shallower of the two is deep, so that its area bounds its length.
        let long = (ah.min(bh) - al.max(bl)).min(1.2 * area / a.girth.min(b.girth).max(1.0));
        if long.is_finite() && long > best.0 {
            best = (long, dir);
        }
    }
    let short = one_pin(a).min(one_pin(b));
    if best.0 > short { vec![at - best.1 * (best.0 / 2.0), at + best.1 * (best.0 / 2.0)] } else { vec![at] }
}

/// Sorted places drawn together: those that lie closest first, as long as a group stays within `reach`; each with the
/// middle of its group.
fn drawn_together(places: &[f64], reach: f64) -> Vec<(f64, f64)> {
    let mut groups: Vec<Vec<f64>> = places.iter().map(|s| vec![*s]).collect();
    loop {
        let width = |k: usize| groups[k + 1].last().copied().unwrap_or(0.0) - groups[k].first().copied().unwrap_or(0.0);
        let Some(k) = (0..groups.len().saturating_sub(1)).min_by(|a, b| width(*a).total_cmp(&width(*b))) else { break };
        if width(k) > reach {
            break;
        }
        let next = groups.remove(k + 1);
        groups[k].extend(next);
    }
    let middle = |g: &[f64]| (g.first().copied().unwrap_or(0.0) + g.last().copied().unwrap_or(0.0)) / 2.0;
    groups.iter().flat_map(|g| g.iter().map(|s| (*s, middle(g)))).collect()
}

type Segment = [[f64; 2]; 2];

fn walls(job: &Job) -> Vec<(String, Segment)> {
    let sides = job.loops.iter().flat_map(|ring| ring.iter().zip(ring.iter().cycle().skip(1)));
    job.walls.iter().zip(sides).map(|(w, (a, b))| (w.letter.clone(), [*a, *b])).collect()
}

/// Distance in plan from a segment, and where along the segment the nearest place is, 0 to 1.
fn near(p: DVec3, [a, b]: Segment) -> (f64, f64) {
    let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
    let l2 = dx * dx + dy * dy;
    let t = if l2 > 0.0 { (((p.x - a[0]) * dx + (p.y - a[1]) * dy) / l2).clamp(0.0, 1.0) } else { 0.0 };
    let (x, y) = (a[0] + t * dx - p.x, a[1] + t * dy - p.y);
    ((x * x + y * y).sqrt(), t)
}

fn bears_all_along(job: &Job, kind: MemberKind, letter: Option<&str>, bar: &Bar) -> bool {
    let middle = bar.start + bar.along * (bar.length / 2.0);
    let end = bar.start + bar.along * bar.length;
    match kind {
        MemberKind::WallPlate => job.walls.iter().zip(walls(job)).any(|(wall, (name, line))| {
            letter == Some(name.as_str())
                && near(middle, line).0 < IN_WALL
                && (bar.start.z + job.timber.plate.thickness - wall.plate).abs() < AGREE
        }),
        MemberKind::SolePlate => job
            .bearings
            .iter()
            .any(|b| near(middle, [b.from, b.to]).0 < IN_WALL && (bar.start.z - b.top).abs() < bar.girth + AGREE),
        // The board of a lean-to is fixed to the wall behind it.
        MemberKind::RidgeBoard => {
            walls(job).iter().any(|(_, line)| near(bar.start, *line).0 < IN_WALL && near(end, *line).0 < IN_WALL)
        }
        _ => false,
    }
}

fn borne_at(job: &Job, solution: &Solution, kind: MemberKind, bar: &Bar) -> Vec<DVec3> {
    /// Steps in which a timber is walked along to see where a wall is under it, mm.
    const WALK: f64 = 20.0;
    let lines: Vec<Segment> = match kind {
        MemberKind::Purlin | MemberKind::GableLadder => {
            solution.gables.iter().filter_map(|g| foot_line(&g.outline)).collect()
        }
        MemberKind::CeilingJoist | MemberKind::Binder => {
            job.bearings.iter().filter(|b| (bar.start.z - b.top).abs() < AGREE).map(|b| [b.from, b.to]).collect()
        }
        MemberKind::Strut => {
            let found = job.bearings.iter().any(|b| near(bar.start, [b.from, b.to]).0 < IN_WALL);
            return if found { vec![bar.start] } else { Vec::new() };
        }
        _ => return Vec::new(),
    };
    let reach = if matches!(kind, MemberKind::Purlin | MemberKind::GableLadder) { IN_WALL } else { WALK };
    let heading = bar.along.truncate().normalize_or_zero();
    let mut found = Vec::new();
    for line in lines {
        let side = geometry::DVec2::new(line[1][0] - line[0][0], line[1][1] - line[0][1]).normalize_or_zero();
        // What runs along a wall is not carried across it.
        if side.perp_dot(heading).abs() < 0.03 {
            continue;
        }
        let steps = (bar.length / WALK).ceil().max(1.0);
        let places = (0..=steps as usize).map(|n| bar.start + bar.along * (bar.length * n as f64 / steps));
        if let Some((p, off)) = places.map(|p| (p, near(p, line).0)).min_by(|a, b| a.1.total_cmp(&b.1))
            && off <= reach
        {
            found.push(p);
        }
    }
    found
}

/// The longest line of an outline in plan.
fn foot_line(outline: &[[f64; 3]]) -> Option<Segment> {
    let mut best: Option<(f64, Segment)> = None;
    for a in outline {
        for b in outline {
            let d = (a[0] - b[0]) * (a[0] - b[0]) + (a[1] - b[1]) * (a[1] - b[1]);
            if best.is_none_or(|(most, _)| d > most) {
                best = Some((d, [[a[0], a[1]], [b[0], b[1]]]));
            }
        }
    }
    best.map(|(_, line)| line)
}
