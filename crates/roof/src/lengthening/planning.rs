//! Which splice a timber gets, and where.

use super::bolts;
use super::faces::{Touch, flats, touches};
use super::form::Joint;
use super::parting::Planned;
use super::proportions::{Proportions, proportions};
use super::spots::{self, Ground, Lengths, bending};
use crate::SolveError;
use crate::carcass::{Carcass, TOUCH};
use crate::frame::timber::{Made, Timber, TimberId};
use crate::marking::Axes;
use crate::rules::{self, Id};
use crate::solution::{MemberKind, SpliceForm};
use geometry::{Cell, DVec3, Plane};
use job::{Section, SpliceKind};

/// Length of a half lap in a run of plate, mm: the shorter of the 6 to 8 in of
/// laps in light timber (Fairham, Woodwork Joints; reference/geometry.md 7).
const PLATE_LAP: f64 = 150.0;

/// A short piece of plate carries three rafters: so many bays of them.
const RAFTERS_ON_PLATE: f64 = 3.0;

/// Room left between a fish plate and what stands beside it, mm.
const PLATE_ROOM: f64 = 2.0;

/// A cut that leans less than this from along the timber (n_x) does not bound
/// its splices: it runs beside them.
const ALONG: f64 = 0.05;

/// A support longer than this along a board is no tail, mm.
const TAIL: f64 = 300.0;

/// Deepest indent of a hooked scarf, as a share of the depth: twice as much is
/// left in either half.
const DEEPEST_INDENT: f64 = 0.2;

/// Wood wanted between a splice and an end or the next splice, in depths of the
/// timber; where the stock does not allow it, one depth.
const WANTED: f64 = 3.0;

/// What a splice half under the seat of a rafter costs, in bends of a beam.
const UNDER_SEAT: f64 = 10.0;

/// A lap keeps this far from the seats of rafters, mm: the nails of their feet
/// go into whole wood.
const SEAT_ROOM: f64 = 10.0;

/// What a butt behind the end of another timber costs, in bends of a beam.
const BUTT_COVERED: f64 = 0.2;

/// How the splices of one timber are made.
pub struct Plan {
    /// From the foot.
    pub splices: Vec<Planned>,
    /// Thickness of its fish plates, mm.
    pub plate: f64,
    /// Not of the kind that the job asks for.
    pub instead: bool,
    /// How much the timber bends at the worst of them, from 0 to 1.
    pub bends: f64,
    /// Not clear of those of its neighbour.
    pub beside: bool,
}

impl Plan {
    /// Middles of the splices measured along the timber in the world, mm, so
    /// that they compare with those of a parallel timber.
    pub fn middles(&self, timber: &Timber) -> Vec<f64> {
        let axes = timber.axes();
        self.splices.iter().map(|s| s.joint.centre + axes.along.dot(axes.origin)).collect()
    }
}

/// One way of splicing a timber.
struct Way {
    form: SpliceForm,
    length: f64,
    least: f64,
    instead: bool,
}

/// What kind of place a timber looks for.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Place {
    OverWall,
    BetweenRafters,
    OverTail,
    WhereItBendsLeast,
}

impl Place {
    const fn of(kind: MemberKind) -> Self {
        match kind {
            MemberKind::WallPlate | MemberKind::SolePlate => Self::OverWall,
            MemberKind::RidgeBoard => Self::BetweenRafters,
            MemberKind::Fascia
            | MemberKind::Soffit
            | MemberKind::BargeBoard
            | MemberKind::TiltingFillet
            | MemberKind::LayBoard => Self::OverTail,
            _ => Self::WhereItBendsLeast,
        }
    }
}

/// Plan the splices of a timber; `beside` are the middles of those of its
/// neighbour (see [`Plan::middles`]), from which they keep away if they can.
///
/// # Errors
/// When no splice fits.
pub fn plan(carcass: &Carcass<'_>, id: TimberId, beside: &[f64]) -> Result<Plan, SolveError> {
    let touching = touches(carcass, id);
    match planned(carcass, id, &touching, beside) {
        Err(_) if !beside.is_empty() => Ok(Plan { beside: true, ..planned(carcass, id, &touching, &[])? }),
        result => result,
    }
}

fn planned(carcass: &Carcass<'_>, id: TimberId, touching: &[Touch], beside: &[f64]) -> Result<Plan, SolveError> {
    let timber = carcass.timber(id);
    let job = carcass.job;
    let Measured { axes, reach, across, sides } = measured(carcass, id);
    let Section { thickness, depth } = timber.section;
    let sizes = proportions(&job.region, thickness, depth, &job.timber.joint);
    let plate = sizes.fish_thickness.ceil();
    let place = Place::of(timber.kind);
    // A bolt up the depth needs its distance from both sides.
    let on_edge = match place {
        Place::OverWall => true,
        Place::OverTail => false,
        Place::BetweenRafters | Place::WhereItBendsLeast => thickness >= 2.0 * sizes.bolts.edge,
    };
    let joint = |form, centre: f64, length: f64| {
        let [up, across] = section_at(carcass, id, [centre - length / 2.0, centre + length / 2.0]);
        Joint {
            form,
            axes,
            centre,
            length,
            up: if form == SpliceForm::FishPlates { sides } else { up },
            across,
            on_edge,
            indent: sizes.indent.min(DEEPEST_INDENT * depth),
        }
    };
    let supports = sorted(touching.iter().filter(|t| carries(carcass, t)).map(|t| middle(t.span)).collect());
    let spans = |wanted: &dyn Fn(&Touch) -> bool| {
        spots::merged(touching.iter().filter(|t| wanted(t)).map(|t| t.span).collect())
    };
    let around = Around {
        seats: spans(&|t| t.facing.y > 0.5),
        sides: spans(&|t| t.facing.z.abs() > 0.5),
        tails: sorted(touching.iter().filter(|t| is_tail(carcass, t)).map(|t| middle(t.span)).collect()),
        supports: &supports,
    };
    let ways = ways(carcass, timber, place, &sizes, on_edge);
    // The first way that finds a place is taken; a lap of a plate that would
    // come under the seat of a rafter gives way to the next.
    let mut best: Option<(f64, &Way, Vec<f64>)> = None;
    let cut: Vec<(DVec3, [f64; 2])> = cut_faces(carcass, id, &axes);
    let hints = hints(touching);
    for way in &ways {
        let mut ground = ground(&cut, reach, way);
        if way.form == SpliceForm::FishPlates {
            if sides[1] - sides[0] < depth / 2.0 {
                continue;
            }
            ground.closed.extend(beside_it(carcass, id, &axes, [reach, sides, across], plate));
        }
        let offset = axes.along.dot(axes.origin);
        ground.beside = beside.iter().map(|b| [b - offset - way.length, b - offset + way.length]).collect();
        ground.hints.clone_from(&hints);
        let lengths = Lengths { splice: way.length, longest: job.timber.joint.longest, least: way.least };
        let cost = |c: f64| cost_at(c, place, way, reach, &around);
        let Some(middles) = spots::choose(&ground, &lengths, cost) else { continue };
        let sum = if place == Place::OverWall { middles.iter().map(|c| cost(*c)).sum() } else { 0.0 };
        if best.as_ref().is_none_or(|(least, ..)| sum < *least) {
            best = Some((sum, way, middles));
        }
        if best.as_ref().is_some_and(|(least, ..)| *least <= 0.0) {
            break;
        }
    }
    if let Some((_, way, middles)) = best {
        let bends = match place {
            Place::WhereItBendsLeast => middles.iter().map(|c| bending(*c, reach, &supports)).fold(0.0, f64::max),
            Place::OverWall | Place::BetweenRafters | Place::OverTail => 0.0,
        };
        let covered: Vec<[f64; 2]> = touching
            .iter()
            .filter(|t| if on_edge { t.facing.y.abs() > 0.5 } else { t.facing.z.abs() > 0.5 })
            .map(|t| t.span)
            .collect();
        let bolted = job.timber.joint.bolted || job.timber.joint.kind == SpliceKind::FishPlates;
        let splices = middles
            .into_iter()
            .map(|c| {
                let joint = joint(way.form, c, way.length);
                let bolts = if bolted { bolts::through(&joint, &sizes.bolts, &covered) } else { Vec::new() };
                Planned { joint, bolts }
            })
            .collect();
        return Ok(Plan { splices, plate, instead: way.instead, bends, beside: false });
    }
    let splice = ways.last().map_or(0.0, |way| way.length);
    Err(SolveError::NoSplice {
        kind: timber.kind.name(),
        length: reach[1] - reach[0],
        longest: job.timber.joint.longest,
        splice,
        x: timber.foot.x,
        y: timber.foot.y,
    })
}

/// The ways to splice a timber, the one that the job asks for first.
fn ways(carcass: &Carcass<'_>, timber: &Timber, place: Place, sizes: &Proportions, on_edge: bool) -> Vec<Way> {
    let joint = carcass.job.timber.joint;
    let rules = rules::of(&carcass.job.region);
    let Section { thickness, depth } = timber.section;
    let way = |form, length, instead| [WANTED, 1.0].map(|n| Way { form, length, least: n * depth, instead });
    match place {
        Place::OverWall => {
            let length = PLATE_LAP.max(rules.value(Id::PlateLapLength) * timber.section.thickness);
            // At least so long, or over so many rafters; see `plate-length`.
            let whole = rules.value(Id::PlateLength) - length;
            let rafters = RAFTERS_ON_PLATE * carcass.job.timber.rafter.centres;
            let least = [whole.max(rafters), rafters, depth];
            return least.map(|least| Way { form: SpliceForm::HalfLap, length, least, instead: false }).into();
        }
        Place::OverTail => return way(SpliceForm::BoardSplay, thickness, false).into(),
        Place::BetweenRafters | Place::WhereItBendsLeast => {}
    }
    // Where there is no room for fish plates, their bolts go through a scarf.
    let bolted = joint.bolted || joint.kind == SpliceKind::FishPlates;
    let plain = job::JointRules { kind: SpliceKind::Splayed, bolted, ..joint };
    let splayed = proportions(&carcass.job.region, thickness, depth, &plain).scarf_length;
    let bolts = sizes.bolts;
    let asked = match joint.kind {
        SpliceKind::Splayed => vec![(SpliceForm::Splayed, splayed)],
        SpliceKind::Hooked if on_edge => vec![(SpliceForm::Hooked, sizes.scarf_length)],
        SpliceKind::Hooked => Vec::new(),
        // Two bolts in a half; where there is no room, one.
        SpliceKind::FishPlates => {
            let two = sizes.fish_length.max(4.0 * bolts.end + 2.0 * bolts.along);
            vec![(SpliceForm::FishPlates, two), (SpliceForm::FishPlates, 4.0 * bolts.end)]
        }
    };
    let instead = (joint.kind != SpliceKind::Splayed).then(|| way(SpliceForm::Splayed, splayed, true));
    asked.into_iter().flat_map(|(form, length)| way(form, length, false)).chain(instead.into_iter().flatten()).collect()
}

/// A timber in its own axes, mm.
struct Measured {
    axes: Axes,
    /// Along it.
    reach: [f64; 2],
    /// Across its thickness.
    across: [f64; 2],
    /// Up the depth of its wide sides.
    sides: [f64; 2],
}

fn measured(carcass: &Carcass<'_>, id: TimberId) -> Measured {
    let axes = carcass.timber(id).axes();
    let wood = carcass.wood(id);
    let over = |value: fn(DVec3) -> f64, tags: &[Made]| {
        wood.iter()
            .flat_map(|c| c.faces.iter().map(move |f| (c, f)))
            .filter(|(_, f)| tags.is_empty() || tags.contains(&f.tag))
            .flat_map(|(c, f)| f.ring.iter().map(|k| c.points[*k as usize]))
            .map(|p| value(axes.point(p)))
            .fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], x| [lo.min(x), hi.max(x)])
    };
    let left = over(|p| p.y, &[Made::Left]);
    let right = over(|p| p.y, &[Made::Right]);
    Measured {
        axes,
        reach: reach(&axes, wood),
        across: over(|p| p.z, &[]),
        sides: [left[0].max(right[0]), left[1].min(right[1])],
    }
}

/// Reach of the wood of a timber up its depth and across its thickness, between
/// two places along it, mm.
fn section_at(carcass: &Carcass<'_>, id: TimberId, [from, to]: [f64; 2]) -> [[f64; 2]; 2] {
    let axes = carcass.timber(id).axes();
    let ends = [
        Plane::through(axes.origin + axes.along * to, axes.along),
        Plane::through(axes.origin + axes.along * from, -axes.along),
    ];
    let between = |c: &Cell<Made>| c.within(ends.iter().copied(), Made::Inner);
    let none = [[f64::INFINITY, f64::NEG_INFINITY]; 2];
    carcass.wood(id).iter().filter_map(between).flat_map(|c| c.points).fold(none, |[up, across], p| {
        let p = axes.point(p);
        [[up[0].min(p.y), up[1].max(p.y)], [across[0].min(p.z), across[1].max(p.z)]]
    })
}

/// Reach of some wood along a timber, mm.
pub fn reach(axes: &Axes, wood: &[Cell<Made>]) -> [f64; 2] {
    wood.iter()
        .flat_map(|c| &c.points)
        .map(|p| axes.point(*p).x)
        .fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], x| [lo.min(x), hi.max(x)])
}

/// Places worth a look: abreast of everything that touches the timber, and
/// midway between two such.
fn hints(touching: &[Touch]) -> Vec<f64> {
    let mut at = sorted(touching.iter().map(|t| middle(t.span)).collect());
    let between: Vec<f64> = at.windows(2).map(|w| middle([w[0], w[1]])).collect();
    at.extend(between);
    at
}

fn sorted(mut values: Vec<f64>) -> Vec<f64> {
    values.sort_by(f64::total_cmp);
    values
}

fn middle([a, b]: [f64; 2]) -> f64 {
    (a + b) / 2.0
}

/// Whether a contact carries the timber: struts wherever they meet it, anything
/// else from below.
fn carries(carcass: &Carcass<'_>, touch: &Touch) -> bool {
    matches!(carcass.timber(touch.other).kind, MemberKind::Strut | MemberKind::Hanger) || touch.facing.y < -0.5
}

/// The ends and cuts of a timber: which way they face, and their reach along it.
fn cut_faces(carcass: &Carcass<'_>, id: TimberId, axes: &Axes) -> Vec<(DVec3, [f64; 2])> {
    let all = flats(carcass.wood(id));
    let cut = all.iter().filter(|f| matches!(f.tag, Made::Cut(_) | Made::End(_)));
    cut.map(|f| (f.facing(axes), f.span(axes))).collect()
}

/// The ends of a timber and where other cuts are in the way.
fn ground(cut: &[(DVec3, [f64; 2])], reach: [f64; 2], way: &Way) -> Ground {
    let closed = cut
        .iter()
        .filter(|(facing, [a, b])| {
            // Fish plates lie on sides that nothing is cut off.
            let beside = way.form == SpliceForm::FishPlates && facing.z.abs() > facing.y.abs();
            facing.x.abs() > ALONG || b - a < way.length || beside
        })
        .map(|(_, span)| *span)
        .collect();
    Ground { reach, closed, ..Ground::default() }
}

/// Where something stands so close beside a timber that no fish plate fits.
fn beside_it(carcass: &Carcass<'_>, id: TimberId, axes: &Axes, [x, u, z]: [[f64; 2]; 3], plate: f64) -> Vec<[f64; 2]> {
    let mut out = Vec::new();
    for side in [[z[0] - plate, z[0]], [z[1], z[1] + plate]] {
        let slab = super::form::bar(axes, x, u, side);
        let planes = [(axes.across, side), (axes.up, u), (axes.along, x)].map(|(n, [low, high])| {
            let at = |v: f64| axes.origin + n * v;
            [Plane::through(at(high - TOUCH), n), Plane::through(at(low + TOUCH), -n)]
        });
        for other in carcass.beside(core::slice::from_ref(&slab)).into_iter().filter(|o| *o != id) {
            for cell in carcass.wood(other) {
                if let Some(left) = cell.within(planes.iter().flatten().copied(), Made::Inner) {
                    let [a, b] = reach(axes, &[left]);
                    out.push([a - PLATE_ROOM, b + PLATE_ROOM]);
                }
            }
        }
    }
    out
}

/// Whether a contact of a board is with the tail of a rafter, or a rung of a
/// gable ladder.
fn is_tail(carcass: &Carcass<'_>, touch: &Touch) -> bool {
    let other = carcass.timber(touch.other);
    let frame = other.is_rafter()
        || matches!(other.kind, MemberKind::HipRafter | MemberKind::ValleyRafter | MemberKind::GableLadder);
    frame && touch.span[1] - touch.span[0] < TAIL
}

/// What touches a timber, as stretches along it that do not overlap, in order, mm.
struct Around<'a> {
    /// What lies on its top.
    seats: Vec<[f64; 2]>,
    /// What stands against its wide sides.
    sides: Vec<[f64; 2]>,
    /// Middles of the tails behind it, in order.
    tails: Vec<f64>,
    /// Middles of what carries it, in order.
    supports: &'a [f64],
}

/// What a splice with its middle at `c` costs; see the constants above.
fn cost_at(c: f64, place: Place, way: &Way, reach: [f64; 2], around: &Around<'_>) -> f64 {
    let half = way.length / 2.0;
    let shared = |[a, b]: &[f64; 2]| ((c + half).min(*b) - (c - half).max(*a)).max(0.0);
    let butts = || {
        let covered = |x: f64| {
            let next = around.sides.partition_point(|[a, _]| *a < x);
            next > 0 && x < around.sides[next - 1][1]
        };
        [c - half, c + half].into_iter().filter(|x| covered(*x)).count() as f64 * BUTT_COVERED
    };
    match place {
        Place::OverWall => {
            let first = around.seats.partition_point(|[_, b]| b + SEAT_ROOM <= c - half);
            let near = around.seats[first..].iter().take_while(|[a, _]| a - SEAT_ROOM < c + half);
            let seats = near.map(|[a, b]| shared(&[a - SEAT_ROOM, b + SEAT_ROOM])).sum::<f64>();
            UNDER_SEAT * seats / way.length
        }
        Place::BetweenRafters => butts(),
        Place::OverTail => {
            let next = around.tails.partition_point(|t| *t < c);
            let nearest = &around.tails[next.saturating_sub(1)..(next + 1).min(around.tails.len())];
            nearest.iter().map(|t| (c - t).abs()).reduce(f64::min).unwrap_or(0.0)
        }
        Place::WhereItBendsLeast => bending(c, reach, around.supports) + butts(),
    }
}
