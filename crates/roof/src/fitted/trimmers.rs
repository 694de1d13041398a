//! Trimming ceiling joists round a hole: joists in it are cut in two, and
//! trimmers between whole joists on both sides carry their ends.

use super::beam::Beam;
use super::contacts;
use crate::carcass::Carcass;
use crate::frame::timber::{CutUse, FrameCut, Made, Role, Timber, TimberId};
use crate::openings::{Misfit, rule};
use crate::solution::{CutPlace, MemberKind};
use geometry::{Cell, DVec2, DVec3, HalfPlan};
use job::Section;

/// What is left of a cut joist is at least this long, mm: room for its hanger
/// and its lap.
const LEAST_PIECE: f64 = 150.0;

/// Joists run along or across a wall when they miss it by less (as a sine).
const SQUARE: f64 = 1e-6;

/// Joists stand beside a hole, not in it, to within this, mm.
const TOUCH: f64 = 0.01;

/// Joists at heights nearer than this are level with one another, mm.
const LEVEL: f64 = 0.01;

/// A rectangle in plan, along a direction and square to it, mm.
#[derive(Clone, Copy, Debug)]
pub struct Rect {
    /// Unit vector.
    pub along: DVec2,
    /// Reach on it.
    pub x: [f64; 2],
    /// Reach on its left.
    pub y: [f64; 2],
}

impl Rect {
    /// The rectangle measured along another direction, square or parallel to
    /// its own.
    fn turned(&self, to: DVec2) -> Option<Self> {
        let flip = |[a, b]: [f64; 2], by: f64| if by > 0.0 { [a, b] } else { [-b, -a] };
        let (cos, sin) = (self.along.dot(to), self.along.perp_dot(to));
        if sin.abs() < SQUARE {
            return Some(Self { along: to, x: flip(self.x, cos), y: flip(self.y, cos) });
        }
        // A quarter turn to the left takes its left to `to`.
        (cos.abs() < SQUARE).then(|| Self { along: to, x: flip(self.y, sin), y: flip(self.x, -sin) })
    }

    /// The upright block over it between two heights.
    pub fn block(&self, z: [f64; 2]) -> Cell<Made> {
        let size = Section { thickness: self.y[1] - self.y[0], depth: z[1] - z[0] };
        let origin = self.along.perp() * ((self.y[0] + self.y[1]) / 2.0);
        let beam = Beam::level(MemberKind::Trimmer, size, origin, self.along, z[0], self.x);
        beam.cells.into_iter().next().unwrap_or(Cell { points: Vec::new(), faces: Vec::new() })
    }

    /// Its corners, anticlockwise.
    pub fn corners(&self) -> [DVec2; 4] {
        let at = |x: f64, y: f64| self.along * x + self.along.perp() * y;
        [at(self.x[0], self.y[0]), at(self.x[1], self.y[0]), at(self.x[1], self.y[1]), at(self.x[0], self.y[1])]
    }
}

/// How a hole in the joists was trimmed.
#[derive(Clone, Debug, Default)]
pub struct TrimmedJoists {
    /// The joists on both sides.
    pub beside: Vec<TimberId>,
    /// The trimmers.
    pub trimmers: Vec<TimberId>,
    /// What is left of the joists that are cut, in pairs.
    pub cut: Vec<[TimberId; 2]>,
    /// Underside and top of the joists, mm.
    pub z: [f64; 2],
}

/// A joist along the direction of those that are cut.
struct Joist {
    id: TimberId,
    /// Reach along the direction.
    reach: [f64; 2],
    /// Its two sides, square to it.
    sides: [f64; 2],
    /// Underside and top.
    z: [f64; 2],
}

/// Trim the joists round a hole.
///
/// # Errors
/// Why it cannot be done; nothing is changed then.
pub fn trim(carcass: &mut Carcass<'_>, wanted: &Rect) -> Result<TrimmedJoists, Misfit> {
    let along = direction(carcass, wanted).ok_or(Misfit::NoJoists)?;
    let rect = wanted.turned(along).ok_or(Misfit::JoistsSlant)?;
    let joists = joists(carcass, along);
    let t = joists.iter().map(|j| j.sides[1] - j.sides[0]).fold(0.0, f64::max);
    let (low, high) = (rect.y[0] + TOUCH, rect.y[1] - TOUCH);
    let most = carcass.job.timber.rafter.centres * (rule::most_cut(carcass.job) + 2) as f64;
    let abreast = |j: &&Joist| j.reach[0] < rect.x[1] && j.reach[1] > rect.x[0];
    let right =
        joists.iter().filter(abreast).filter(|j| j.sides[1] <= low).max_by(|a, b| a.sides[1].total_cmp(&b.sides[1]));
    let left =
        joists.iter().filter(abreast).filter(|j| j.sides[0] >= high).min_by(|a, b| a.sides[0].total_cmp(&b.sides[0]));
    let (Some(right), Some(left)) = (right, left) else { return Err(Misfit::NoJoists) };
    if low - right.sides[1] > most || left.sides[0] - high > most {
        return Err(Misfit::NoJoists);
    }
    let in_hole: Vec<&Joist> =
        joists.iter().filter(abreast).filter(|j| j.sides[0] < high && j.sides[1] > low).collect();
    let cut = in_hole.len();
    let centres = carcass.job.timber.rafter.centres;
    let limit = rule::most_cut(carcass.job);
    let plies = rule::plies(carcass.job, cut).ok_or(Misfit::TooManyCut {
        cut,
        most: limit,
        widest: (limit + 1) as f64 * centres - t,
    })?;
    let ends = [rect.x[0] - plies as f64 * t, rect.x[1] + plies as f64 * t];
    let z = right.z;
    let level = |j: &Joist| (j.z[0] - z[0]).abs() < LEVEL && (j.z[1] - z[1]).abs() < LEVEL;
    let whole = |j: &Joist| level(j) && j.reach[0] < ends[0] - LEAST_PIECE && j.reach[1] > ends[1] + LEAST_PIECE;
    if !(whole(left) && whole(right) && in_hole.iter().all(|j| whole(j))) {
        return Err(Misfit::JoistEnds);
    }
    let others: Vec<Vec<Beam>> = [false, true]
        .into_iter()
        .map(|upper| (0..plies).map(|ply| trimmer(&rect, t, [right, left], ply, upper)).collect())
        .collect();
    let ids: Vec<TimberId> = in_hole.iter().map(|j| j.id).collect();
    let blocked = |b: &Beam| carcass.in_the_way(&b.cells).into_iter().any(|id| !ids.contains(&id));
    if others.iter().flatten().any(blocked) {
        return Err(Misfit::JoistCarries);
    }
    let splits: Vec<Split> = ids
        .iter()
        .map(|id| Split::of(carcass, *id, along, ends).ok_or(Misfit::JoistCarries))
        .collect::<Result<_, _>>()?;
    let mut out = TrimmedJoists { beside: vec![right.id, left.id], z, ..TrimmedJoists::default() };
    let mut outermost = Vec::new();
    for side in others {
        for beam in side {
            out.trimmers.push(carcass.add(beam.timber()));
        }
        outermost.extend(out.trimmers.last().copied());
    }
    if let [lower, upper] = outermost[..] {
        out.cut = splits.into_iter().map(|s| s.make(carcass, [lower, upper].map(CutUse::Against))).collect();
    }
    Ok(out)
}

/// Part the joists that cross a hole, without trimming them: those that carry
/// others there stay.
pub fn part(carcass: &mut Carcass<'_>, rect: &Rect) {
    let ids: Vec<TimberId> = carcass.built().filter(|(_, t)| is_joist(t)).map(|(id, _)| id).collect();
    for id in ids {
        let z = span(carcass, id, DVec3::Z);
        if !carcass.in_the_way(&[rect.block(z)]).contains(&id) {
            continue;
        }
        let along = carcass.timber(id).axes().along.truncate();
        let reach = rect.corners().map(|p| along.dot(p));
        let ends = reach.iter().fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], d| [lo.min(*d), hi.max(*d)]);
        if let Some(split) = Split::of(carcass, id, along, ends) {
            split.make(carcass, [CutUse::Trim; 2]);
        }
    }
}

/// The direction of the joists in or nearest to a hole.
fn direction(carcass: &Carcass<'_>, rect: &Rect) -> Option<DVec2> {
    let middle = rect.corners().iter().sum::<DVec2>() / 4.0;
    let near = |t: &Timber| {
        let [a, b] = t.line().map(|p| p.truncate());
        let side = b - a;
        let share = ((middle - a).dot(side) / side.length_squared()).clamp(0.0, 1.0);
        (a + side * share - middle).length()
    };
    let all = carcass.built().filter(|(_, t)| is_joist(t));
    all.map(|(_, t)| (near(t), t.axes().along.truncate())).min_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, along)| along)
}

fn is_joist(t: &Timber) -> bool {
    t.kind == MemberKind::CeilingJoist && matches!(t.role, Role::Fitted { .. })
}

/// All joists that run along a direction.
fn joists(carcass: &Carcass<'_>, along: DVec2) -> Vec<Joist> {
    let parallel = |t: &&Timber| t.axes().along.truncate().perp_dot(along).abs() < SQUARE;
    let left = along.perp();
    carcass
        .built()
        .filter(|(_, t)| is_joist(t))
        .filter(|(_, t)| parallel(t))
        .map(|(id, _)| Joist {
            id,
            reach: span(carcass, id, along.extend(0.0)),
            sides: span(carcass, id, left.extend(0.0)),
            z: span(carcass, id, DVec3::Z),
        })
        .collect()
}

/// Reach of a timber's wood along a direction.
fn span(carcass: &Carcass<'_>, id: TimberId, by: DVec3) -> [f64; 2] {
    let points = carcass.wood(id).iter().flat_map(|c| &c.points).map(|p| by.dot(*p));
    points.fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], d| [lo.min(d), hi.max(d)])
}

/// A trimmer between the two joists beside a hole.
fn trimmer(rect: &Rect, t: f64, [right, left]: [&Joist; 2], ply: usize, upper: bool) -> Beam {
    let away = t * (ply as f64 + 0.5);
    let x = if upper { rect.x[1] + away } else { rect.x[0] - away };
    let size = Section { thickness: t, depth: right.z[1] - right.z[0] };
    // It runs to the left of the joists.
    let reach = [right.sides[1], left.sides[0]];
    let mut beam = Beam::level(MemberKind::Trimmer, size, rect.along * x, rect.along.perp(), right.z[0], reach);
    beam.rests = vec![(Made::End(false), right.id), (Made::End(true), left.id)];
    beam
}

/// A joist cut in two, before it is done.
struct Split {
    id: TimberId,
    along: DVec2,
    ends: [f64; 2],
    /// Timbers that lie on it or against it, by the piece that keeps them.
    holds: Vec<(TimberId, Made, usize)>,
}

impl Split {
    /// `None` when something hangs on the part that is cut out.
    fn of(carcass: &Carcass<'_>, id: TimberId, along: DVec2, ends: [f64; 2]) -> Option<Self> {
        let wood = [0, 1].map(|piece| {
            let plane = end(along, ends, piece);
            let left: Vec<_> = carcass.wood(id).iter().filter_map(|c| c.clipped(plane, Made::Inner)).collect();
            // Nothing can hang on a piece that is too short to keep.
            if length(&left, along) < LEAST_PIECE { Vec::new() } else { left }
        });
        let mut holds = Vec::new();
        for (other, t) in carcass.built().filter(|(other, _)| *other != id) {
            let cut = t.cuts.iter().enumerate().filter(|(_, c)| c.purpose == CutUse::Against(id));
            let cuts = cut.map(|(k, _)| Made::Cut(k as u16));
            for tag in t.rests.iter().filter(|(_, on)| *on == id).map(|(tag, _)| *tag).chain(cuts) {
                let on = |cells: &[Cell<Made>]| contacts::area(carcass.wood(other), tag, cells);
                let keeps = wood.iter().position(|w| on(w) > 0.0);
                match keeps {
                    Some(piece) => holds.push((other, tag, piece)),
                    None if on(carcass.wood(id)) > 0.0 => return None,
                    None => {}
                }
            }
        }
        Some(Self { id, along, ends, holds })
    }

    /// Cut it, the ends before and behind the hole for these purposes. A piece
    /// too short to keep is left out.
    fn make(self, carcass: &mut Carcass<'_>, purposes: [CutUse; 2]) -> [TimberId; 2] {
        let whole = carcass.timber(self.id).clone();
        let forward = whole.axes().along.truncate().dot(self.along) > 0.0;
        let mut ids = [self.id, self.id];
        for (piece, purpose) in purposes.into_iter().enumerate() {
            let at = if (piece == 0) == forward { CutPlace::Head } else { CutPlace::Foot };
            let mut timber = whole.clone();
            timber.cuts.push(FrameCut { purpose, at });
            let tag = Made::Cut((timber.cuts.len() - 1) as u16);
            let plane = end(self.along, self.ends, piece);
            let mut cells: Vec<Cell<Made>> =
                carcass.wood(self.id).iter().filter_map(|c| c.clipped(plane, tag)).collect();
            if length(&cells, self.along) < LEAST_PIECE {
                cells.clear();
            }
            timber.rests.retain(|(tag, on)| contacts::area(&cells, *tag, carcass.wood(*on)) > 0.0);
            shorten(&mut timber, &cells);
            if piece == 0 {
                // The whole joist is still needed for the other piece.
                ids[0] = carcass.take(timber, cells);
            } else {
                *carcass.timber_mut(self.id) = timber;
                carcass.set_wood(self.id, cells);
            }
        }
        for (other, tag, piece) in self.holds {
            let timber = carcass.timber_mut(other);
            for (_, on) in timber.rests.iter_mut().filter(|(t, on)| *t == tag && *on == self.id) {
                *on = ids[piece];
            }
            if let Made::Cut(k) = tag
                && let Some(cut) = timber.cuts.get_mut(usize::from(k))
                && cut.purpose == CutUse::Against(self.id)
            {
                cut.purpose = CutUse::Against(ids[piece]);
            }
        }
        ids
    }
}

/// Length of wood along a direction, mm; 0 of none.
fn length(cells: &[Cell<Made>], along: DVec2) -> f64 {
    let points = cells.iter().flat_map(|c| &c.points).map(|p| along.dot(p.truncate()));
    let [from, to] = points.fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], x| [lo.min(x), hi.max(x)]);
    (to - from).max(0.0)
}

/// The plane at which a piece ends; the wood is inside.
fn end(along: DVec2, ends: [f64; 2], piece: usize) -> geometry::Plane {
    let out = if piece == 0 { along } else { -along };
    super::beam::upright(HalfPlan::through(along * ends[piece], out))
}

/// Draw a joist's line as far as its wood reaches.
fn shorten(timber: &mut Timber, cells: &[Cell<Made>]) {
    if cells.is_empty() {
        timber.gone = true;
        return;
    }
    let axes = timber.axes();
    let points = cells.iter().flat_map(|c| &c.points).map(|p| axes.point(*p).x);
    let [from, to] = points.fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], x| [lo.min(x), hi.max(x)]);
    let old = timber.line()[0];
    let line = [from, to].map(|x| old + axes.along * (x - axes.point(old).x));
    let Role::Fitted { wall } = timber.role else { return };
    let (cuts, rests) = (core::mem::take(&mut timber.cuts), core::mem::take(&mut timber.rests));
    let notches = core::mem::take(&mut timber.notches);
    *timber = Timber::fitted(timber.kind, wall, timber.section, line, axes, cells.to_vec(), cuts);
    timber.rests = rests;
    timber.notches = notches;
}
