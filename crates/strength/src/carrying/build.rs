//! All units of a roof.

use super::places::{Rest, SAME_PLACE, Under};
use super::run::Run;
use super::unit::{Kind, Piece, Role, Unit};
use super::{Carrying, is_rafter};
use crate::statics::{Bar, Frame, Hold, Node, Support};
use job::{Feet, RidgeAs};
use roof::solution::MemberKind;
use std::collections::{BTreeSet, VecDeque};

/// How far apart along the ridge the heads of a pair may stand, as a share of the rafters' centres.
const STAGGER: f64 = 0.5;

/// A timber that nothing holds up, or only at one place.
#[derive(Clone, Debug, PartialEq)]
pub struct NotHeld {
    /// The run.
    pub run: usize,
    /// At how many places it is held up.
    pub places: usize,
}

/// The units of a roof, and what could not be made one.
#[derive(Clone, Debug, Default)]
pub struct Units {
    /// The units; those that carry others come after what they carry, as far as that goes.
    pub units: Vec<Unit>,
    /// Timbers that are not held up.
    pub not_held: Vec<NotHeld>,
}

/// Make all units.
///
/// `e`: modulus along the grain, N/mm².
#[must_use]
pub fn units(roof: &Carrying<'_>, e: f64) -> Units {
    let build = Build { roof, e };
    let mut out = Units::default();
    let pairs = build.pairs();
    let paired: BTreeSet<usize> = pairs.iter().flatten().copied().collect();
    let of = |which: &dyn Fn(&Run) -> bool| -> Vec<usize> {
        roof.runs.iter().enumerate().filter(|(k, r)| which(r) && !paired.contains(k)).map(|(k, _)| k).collect()
    };
    // Joists and binders first, then rafters, what the rafters lie on, and what that stands on.
    let mut push = |runs: Vec<usize>, kind: fn(usize) -> Kind| {
        for run in runs {
            build.single(run, kind(run), &mut out);
        }
    };
    push(of(&|r| r.kind == MemberKind::CeilingJoist), Kind::Level);
    push(of(&|r| r.kind == MemberKind::Binder), Kind::Level);
    push(of(&|r| r.kind == MemberKind::Hanger), Kind::Post);
    push(of(&|r| is_rafter(r.kind)), Kind::Sloping);
    push(of(&|r| r.kind == MemberKind::Trimmer), Kind::Level);
    push(of(&|r| matches!(r.kind, MemberKind::HipRafter | MemberKind::ValleyRafter)), Kind::Sloping);
    for [left, right] in pairs {
        let unit = build.pair(left, right);
        out.units.push(unit);
    }
    let mut push = |runs: Vec<usize>, kind: fn(usize) -> Kind| {
        for run in runs {
            build.single(run, kind(run), &mut out);
        }
    };
    if roof.job.strong.ridge == RidgeAs::Beam {
        push(of(&|r| r.kind == MemberKind::RidgeBoard), Kind::Level);
    }
    push(of(&|r| r.kind == MemberKind::Purlin), Kind::Level);
    push(of(&|r| r.kind == MemberKind::Strut), Kind::Post);
    out
}

struct Build<'a, 'r> {
    roof: &'a Carrying<'r>,
    e: f64,
}

/// One side of a frame: the nodes of a sloping run from its tail to its head.
struct Side {
    run: usize,
    /// Places along the run, mm, rising, with what is there.
    places: Vec<f64>,
    rests: Vec<Rest>,
}

impl Build<'_, '_> {
    fn run(&self, run: usize) -> &Run {
        &self.roof.runs[run]
    }

    fn bar(&self, run: &Run, from: usize, to: usize, hinge_to: bool) -> Bar {
        let (b, h) = (run.thickness, run.depth);
        Bar { hinge_to, ..Bar::stiff(from, to, self.e * b * h, self.e * b * h * h * h / 12.0) }
    }

    /// Pairs of rafters that lean on one another over a ridge board.
    fn pairs(&self) -> Vec<[usize; 2]> {
        if self.roof.job.strong.ridge == RidgeAs::Beam {
            return Vec::new();
        }
        let most = STAGGER * self.roof.job.timber.rafter.centres;
        let mut pairs = Vec::new();
        for (ridge, board) in self.roof.runs.iter().enumerate().filter(|(_, r)| r.kind == MemberKind::RidgeBoard) {
            // Whole rafters, from a foot to this ridge, on either side.
            let mut sides: [Vec<(f64, usize)>; 2] = [Vec::new(), Vec::new()];
            for contact in &self.roof.contacts[ridge] {
                let rafter = self.run(contact.other);
                if is_rafter(rafter.kind) && self.has_foot(contact.other) {
                    let side = usize::from(contact.normal.dot(board.across) < 0.0);
                    // A rafter at the end of a ridge, in line with it, has none across from it.
                    if contact.normal.dot(board.across).abs() > 0.5 {
                        sides[side].push((board.along_of(contact.at), contact.other));
                    }
                }
            }
            for side in &mut sides {
                side.sort_by(|a, b| a.0.total_cmp(&b.0));
            }
            let [left, mut right] = sides;
            for (at, rafter) in left {
                let across = right
                    .iter()
                    .enumerate()
                    .map(|(k, (other, _))| (k, (other - at).abs()))
                    .filter(|(_, off)| *off < most)
                    .min_by(|a, b| a.1.total_cmp(&b.1));
                if let Some((k, _)) = across {
                    pairs.push([rafter, right.remove(k).1]);
                }
            }
        }
        pairs
    }

    /// Whether a rafter stands on a plate or on a valley with its foot, and is no piece above an opening.
    fn has_foot(&self, run: usize) -> bool {
        self.foot_under(run).is_some_and(|under| match under {
            Under::Wall(_) => true,
            Under::Run(on, _) => self.run(on).kind == MemberKind::ValleyRafter,
            _ => false,
        })
    }

    /// What a rafter stands on with its foot.
    fn foot_under(&self, run: usize) -> Option<Under> {
        let foot = self.run(run).pitch_line[0];
        self.roof.rests(run).into_iter().find(|r| (r.at - foot).abs() < SAME_PLACE).map(|r| r.under)
    }

    fn side(&self, run: usize, extra: &[f64]) -> Side {
        let me = self.run(run);
        let rests = self.roof.rests(run);
        let [foot, head] = me.pitch_line;
        let sloping = me.along.z.abs() > 1e-6;
        let mut places = if sloping { vec![foot, head] } else { vec![0.0, me.length] };
        if sloping && foot > SAME_PLACE {
            // The tail hangs out beyond the plate.
            places.push(0.0);
        }
        places.extend(rests.iter().map(|r| r.at));
        places.extend(me.splices.iter().map(|s| s.at));
        places.extend(extra);
        places.sort_by(f64::total_cmp);
        places.dedup_by(|next, kept| (*next - *kept).abs() < SAME_PLACE);
        Side { run, places, rests }
    }

    /// Adds a side to a unit; gives its nodes. `place` maps a distance along the run to a node of the frame.
    fn add_side(&self, unit: &mut Unit, side: &Side, place: impl Fn(f64) -> Node, head_hinged: bool) -> Vec<usize> {
        let me = self.run(side.run);
        let first = unit.frame.nodes.len();
        unit.frame.nodes.extend(side.places.iter().map(|s| place(*s)));
        let last = side.places.len() - 1;
        for k in 1..=last {
            let at = side.places[k];
            let hinge = me.splices.iter().any(|s| !s.stiff() && (s.at - at).abs() < SAME_PLACE);
            let bar = self.bar(me, first + k - 1, first + k, (hinge && k < last) || (head_hinged && k == last));
            unit.frame.bars.push(bar);
            unit.pieces.push(Piece { run: side.run, from: side.places[k - 1], to: at, role: Role::Timber });
        }
        (first..=first + last).collect()
    }

    fn empty(kind: Kind) -> Unit {
        Unit {
            kind,
            frame: Frame::default(),
            pieces: Vec::new(),
            under: Vec::new(),
            apex: None,
            far_foot: None,
            tied: false,
            needs_held: false,
        }
    }

    /// A timber by itself: its lowest rest holds it sideways too.
    fn single(&self, run: usize, kind: Kind, out: &mut Units) {
        let me = self.run(run);
        let side = self.side(run, &[]);
        let needed = if matches!(kind, Kind::Post(_)) { 1 } else { 2 };
        if side.rests.len() < needed {
            out.not_held.push(NotHeld { run, places: side.rests.len() });
        }
        if side.rests.is_empty() {
            return;
        }
        let mut unit = Self::empty(kind);
        if needed == 1 || side.rests.len() < needed {
            // What has one place to stand on passes everything on to that place.
            unit.kind = Kind::Post(run);
            unit.under.push(side.rests[0].under.clone());
            out.units.push(unit);
            return;
        }
        let level = (1.0 - me.along.z * me.along.z).max(0.0).sqrt();
        let nodes = self.add_side(&mut unit, &side, |s| Node { x: s * level, y: s * me.along.z }, false);
        for (k, rest) in side.rests.iter().enumerate() {
            if let Some(node) = node_at(&side.places, &nodes, rest.at) {
                unit.frame.supports.push(if k == 0 { Support::pin(node) } else { Support::roller(node) });
                unit.under.push(rest.under.clone());
            }
        }
        out.units.push(unit);
    }

    /// Two rafters that lean on one another.
    fn pair(&self, left: usize, right: usize) -> Unit {
        let collar = self.collar(left, right);
        let extra = |k: usize| collar.map(|c| c.1[k]).into_iter().collect::<Vec<f64>>();
        let sides = [self.side(left, &extra(0)), self.side(right, &extra(1))];
        let mut unit = Self::empty(Kind::Pair { left, right });
        let span: f64 = [left, right].iter().map(|r| plan_run(self.run(*r))).sum();
        let mut nodes: [Vec<usize>; 2] = [Vec::new(), Vec::new()];
        for (k, side) in sides.iter().enumerate() {
            let me = self.run(side.run);
            let level = (1.0 - me.along.z * me.along.z).max(0.0).sqrt();
            let foot = me.pitch_line[0];
            let z = me.origin.z + me.along.z * foot;
            let place = |s: f64| {
                let out = (s - foot) * level;
                Node { x: if k == 0 { out } else { span - out }, y: z + (s - foot) * me.along.z }
            };
            nodes[k] = self.add_side(&mut unit, side, place, true);
        }
        self.join_heads(&mut unit, &nodes, &sides);
        for (k, side) in sides.iter().enumerate() {
            let (foot, head) = (self.run(side.run).pitch_line[0], self.run(side.run).pitch_line[1]);
            for rest in &side.rests {
                let Some(node) = node_at(&side.places, &nodes[k], rest.at) else { continue };
                let at_foot = (rest.at - foot).abs() < SAME_PLACE;
                // The heads lean on one another through the board, which holds nothing up.
                if (rest.at - head).abs() < SAME_PLACE {
                    continue;
                }
                if at_foot && k == 1 {
                    unit.far_foot = Some(unit.frame.supports.len());
                }
                unit.frame.supports.push(if at_foot { Support::pin(node) } else { Support::roller(node) });
                unit.under.push(rest.under.clone());
            }
        }
        if let Some((run, at)) = collar {
            let ends = [0, 1].map(|k| node_at(&sides[k].places, &nodes[k], at[k]));
            if let [Some(from), Some(to)] = ends {
                let timber = self.run(run);
                unit.frame.bars.push(Bar { hinge_from: true, ..self.bar(timber, from, to, true) });
                unit.pieces.push(Piece { run, from: 0.0, to: timber.length, role: Role::Timber });
            }
        }
        self.add_tie(&mut unit, left, right, &sides, &nodes);
        // A valley that a foot stands on is kept from moving aside by the jacks across from it.
        let on_walls = [left, right].iter().all(|r| matches!(self.foot_under(*r), Some(Under::Wall(_))));
        if on_walls && (self.roof.job.strong.feet == Feet::Free || unit.tied) {
            release(&mut unit);
        }
        if unit.frame.prepare().is_err() {
            // Without tie, purlin or beam two rafters only stand while something holds both feet.
            hold(&mut unit);
            unit.needs_held = true;
        }
        unit
    }

    /// Makes the two heads one node.
    fn join_heads(&self, unit: &mut Unit, nodes: &[Vec<usize>; 2], sides: &[Side; 2]) {
        let head = |k: usize| {
            let at = self.run(sides[k].run).pitch_line[1];
            node_at(&sides[k].places, &nodes[k], at)
        };
        if let (Some(keep), Some(gone)) = (head(0), head(1)) {
            for bar in &mut unit.frame.bars {
                for end in [&mut bar.from, &mut bar.to] {
                    if *end == gone {
                        *end = keep;
                    } else if *end > gone {
                        *end -= 1;
                    }
                }
            }
            // The second side was added last and its head is its last node, so no other node moves.
            unit.frame.nodes.remove(gone);
            unit.apex = Some(keep);
        }
    }

    /// The collar that both rafters touch, with where it crosses each, mm along them.
    fn collar(&self, left: usize, right: usize) -> Option<(usize, [f64; 2])> {
        let touched =
            |rafter: usize| self.roof.contacts[rafter].iter().filter(|c| self.run(c.other).kind == MemberKind::Collar);
        touched(left).find_map(|a| {
            let b = touched(right).find(|b| b.other == a.other)?;
            Some((a.other, [self.run(left).along_of(a.at), self.run(right).along_of(b.at)]))
        })
    }

    /// A tie between the feet, when joists lapped to both are one with another.
    fn add_tie(&self, unit: &mut Unit, left: usize, right: usize, sides: &[Side; 2], nodes: &[Vec<usize>; 2]) {
        let joists = |rafter: usize| -> Vec<usize> {
            let contacts = self.roof.contacts[rafter].iter();
            contacts.filter(|c| self.run(c.other).kind == MemberKind::CeilingJoist).map(|c| c.other).collect()
        };
        let (from, to) = (joists(left), joists(right));
        let Some(first) = from.iter().find(|j| self.reaches(**j, &to)) else { return };
        let foot = |k: usize| node_at(&sides[k].places, &nodes[k], self.run(sides[k].run).pitch_line[0]);
        if let (Some(a), Some(b)) = (foot(0), foot(1)) {
            let timber = self.run(*first);
            unit.frame.bars.push(Bar { hinge_from: true, ..self.bar(timber, a, b, true) });
            unit.pieces.push(Piece { run: *first, from: 0.0, to: timber.length, role: Role::Tie });
            unit.tied = true;
        }
    }

    /// Whether joists lead from one to another of these, lapped side to side, with packing between or not.
    fn reaches(&self, from: usize, to: &[usize]) -> bool {
        let along = self.run(from).along;
        let mut seen = BTreeSet::from([from]);
        let mut next = VecDeque::from([from]);
        while let Some(joist) = next.pop_front() {
            if to.contains(&joist) {
                return true;
            }
            for contact in &self.roof.contacts[joist] {
                let other = self.run(contact.other);
                let leads = matches!(other.kind, MemberKind::CeilingJoist | MemberKind::Noggin)
                    && other.along.cross(along).length() < 0.01
                    && contact.normal.dot(along).abs() < 0.1;
                if leads && seen.insert(contact.other) {
                    next.push_back(contact.other);
                }
            }
        }
        false
    }
}

/// Level distance from the foot of a rafter to its head, mm.
fn plan_run(run: &Run) -> f64 {
    let level = (1.0 - run.along.z * run.along.z).max(0.0).sqrt();
    (run.pitch_line[1] - run.pitch_line[0]) * level
}

fn node_at(places: &[f64], nodes: &[usize], at: f64) -> Option<usize> {
    let off = |k: &usize| (places[*k] - at).abs();
    let k = (0..places.len()).min_by(|a, b| off(a).total_cmp(&off(b)))?;
    (off(&k) < 2.0 * SAME_PLACE).then(|| nodes[k])
}

/// Let the far foot of a pair move out.
pub fn release(unit: &mut Unit) {
    if let Some(support) = unit.far_foot.and_then(|k| unit.frame.supports.get_mut(k)) {
        support.x = Hold::Free;
    }
}

/// Hold the far foot of a pair.
pub fn hold(unit: &mut Unit) {
    if let Some(support) = unit.far_foot.and_then(|k| unit.frame.supports.get_mut(k)) {
        support.x = Hold::Held;
    }
}
