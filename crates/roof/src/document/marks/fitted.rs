//! Marks of what is fitted to the frame: by the rafter it is fixed to, or by
//! the place along a wall where it starts.

use super::grid::Grid;
use super::{Given, Marks, listed_under, rafters, spines};
use crate::frame::timber::{Role, Timber, TimberId};
use crate::solution::MemberKind;
use geometry::surface::Surface;
use geometry::{DVec2, DVec3};
use job::Job;

/// What a mark of a kind goes by.
#[derive(Clone, Copy, PartialEq)]
enum By {
    /// The letter of its wall: what runs along the whole of it.
    Wall,
    /// The first of the rafters that it is fixed to.
    Rafter,
    /// Where it starts along its wall.
    Spot,
    /// The same, and how far up the slope it lies; in a ceiling, its joist.
    Climb,
    /// The corner of the plan.
    Corner,
    /// The timber that it joins.
    Joined,
}

/// Words for the marks, in the order of the lists.
const PARTS: &[(MemberKind, &str, By)] = &[
    (MemberKind::WallPlate, "Plate", By::Spot),
    (MemberKind::RidgeBoard, "Ridge", By::Spot),
    (MemberKind::Purlin, "Purlin", By::Wall),
    (MemberKind::Strut, "Strut", By::Spot),
    (MemberKind::SolePlate, "Sole", By::Spot),
    (MemberKind::Collar, "Collar", By::Rafter),
    (MemberKind::CeilingJoist, "Joist", By::Rafter),
    (MemberKind::Binder, "Binder", By::Spot),
    (MemberKind::Hanger, "Hanger", By::Spot),
    (MemberKind::AngleTie, "Tie", By::Corner),
    (MemberKind::DragonTie, "Dragon", By::Corner),
    (MemberKind::Trimmer, "Trim", By::Climb),
    (MemberKind::CommonRafter, "Rafter", By::Spot),
    (MemberKind::ValleyJack, "Jack", By::Spot),
    (MemberKind::Stud, "Stud", By::Spot),
    (MemberKind::GableLadder, "Rung", By::Rafter),
    (MemberKind::Noggin, "Noggin", By::Rafter),
    (MemberKind::Sprocket, "Sprock", By::Rafter),
    (MemberKind::Fascia, "Fascia", By::Wall),
    (MemberKind::Soffit, "Soffit", By::Wall),
    (MemberKind::TiltingFillet, "Fillet", By::Wall),
    (MemberKind::BargeBoard, "Barge", By::Wall),
    (MemberKind::LayBoard, "Layboard", By::Spot),
    (MemberKind::FishPlate, "Fish", By::Joined),
    (MemberKind::Wedge, "Wedge", By::Joined),
];

/// A noggin between two ceiling joists where they lap.
const LAP_BLOCK: &str = "Block";

/// A trimmer round a hatch or a stack in the ceiling.
const IN_CEILING: &str = "Ceil";

/// Trimmers of a slope are told apart by how far up it they lie, in these
/// steps, mm: less than any rafter is thick but the thinnest, so that two that
/// are bolted together differ.
const STEP: f64 = 40.0;

/// A timber with its name before it is made unique, and its place in the list.
struct Named {
    timber: usize,
    name: String,
    count: usize,
    wall: usize,
    at: DVec3,
}

/// Name what is fitted to the frame.
pub fn name(job: &Job, surface: &Surface, timbers: &[Timber], grid: &Grid, marks: &mut Marks, given: &mut Given) {
    let mut rank = vec![usize::MAX; timbers.len()];
    for (k, spot) in rafters::spots(surface, timbers).iter().enumerate() {
        rank[spot.timber] = k;
    }
    let corners = spines::corners(surface);
    for &(kind, word, by) in PARTS {
        let of_kind = timbers
            .iter()
            .enumerate()
            .filter(|(_, t)| t.kind == kind && t.is_numbered() && matches!(t.role, Role::Fitted { .. }));
        let mut all: Vec<Named> = of_kind
            .map(|(k, t)| {
                let ends = whole_line(timbers, k);
                let wall = listed_under(t).map_or_else(
                    || grid.nearest(((ends[0] + ends[1]) / 2.0).truncate()),
                    geometry::surface::WallId::index,
                );
                let start = start(grid, wall, ends);
                let mut count = usize::from(t.slot) + 1;
                let listed = marks.walls[k].as_deref();
                let (word, tail) = match by {
                    By::Wall => {
                        let row = core::mem::replace(&mut count, 1);
                        let row = if row > 1 { row.to_string() } else { String::new() };
                        (word, format!("{}{row}", job.walls.get(wall).map_or("", |w| w.letter.as_str())))
                    }
                    By::Rafter => fixed_to(timbers, t, listed, &rank, marks).map_or_else(
                        || (word, grid.spot(wall, start.truncate())),
                        |(on, tail)| {
                            let lap = kind == MemberKind::Noggin && on == MemberKind::CeilingJoist;
                            (if lap { LAP_BLOCK } else { word }, tail)
                        },
                    ),
                    By::Climb => match fixed_to(timbers, t, listed, &rank, marks) {
                        Some((MemberKind::CeilingJoist, tail)) => (IN_CEILING, tail),
                        _ => {
                            count = climb(surface, wall, t);
                            (word, grid.spot(wall, start.truncate()))
                        }
                    },
                    By::Spot => (word, grid.spot(wall, start.truncate())),
                    By::Corner => {
                        let off = |c: &&spines::Corner| (c.at - start.truncate()).length();
                        let corner = corners.iter().filter(|c| !c.hollow).min_by(|a, b| off(a).total_cmp(&off(b)));
                        (word, corner.map_or(0, |c| c.number).to_string())
                    }
                    By::Joined => (word, others(t).find_map(|id| short(timbers, id, marks)).unwrap_or_default()),
                };
                let dir = grid.dir(wall).unwrap_or(DVec2::X);
                let at = DVec3::new(dir.dot(start.truncate()), dir.perp().dot(start.truncate()), start.z);
                Named { timber: k, name: format!("{word}-{tail}"), count, wall, at }
            })
            .collect();
        all.sort_by(|a, b| {
            let along = a.at.x.total_cmp(&b.at.x).then(a.at.y.total_cmp(&b.at.y)).then(a.at.z.total_cmp(&b.at.z));
            a.wall.cmp(&b.wall).then(along).then(a.timber.cmp(&b.timber))
        });
        // Those that know their place in a row first, so that no other takes it.
        let (known, others): (Vec<&Named>, Vec<&Named>) = all.iter().partition(|n| n.count > 1);
        for n in known.into_iter().chain(others) {
            marks.names[n.timber] = given.unique(&n.name, n.count);
        }
        marks.order.extend(all.iter().map(|n| n.timber));
    }
}

/// How far up the slope of its wall a timber lies square to the rafters, in
/// whole steps.
fn climb(surface: &Surface, wall: usize, t: &Timber) -> usize {
    let Some([a, b]) = surface.wall_ends(geometry::surface::WallId(wall as u32)) else { return 1 };
    let (axes, inward) = (t.axes(), (b - a).normalize_or_zero().perp());
    // The top edge is square to the slope.
    let top = axes.origin + axes.up * t.section.depth;
    let slope = inward.extend(0.0) - axes.up * axes.up.dot(inward.extend(0.0));
    (slope.normalize_or_zero().dot(top - a.extend(0.0)) / STEP).max(1.0) as usize
}

/// The end of a timber that comes first along its wall; of one across the
/// wall, the one nearer to it.
fn start(grid: &Grid, wall: usize, ends: [DVec3; 2]) -> DVec3 {
    const ACROSS: f64 = 1.0;
    let dir = grid.dir(wall).unwrap_or(DVec2::X);
    let [a, b] = ends.map(|p| (dir.dot(p.truncate()), dir.perp().dot(p.truncate())));
    let first = if (a.0 - b.0).abs() > ACROSS { a.0 < b.0 } else { a.1 <= b.1 };
    ends[usize::from(!first)]
}

/// The timbers that a timber lies on or is cut against.
fn others(t: &Timber) -> impl Iterator<Item = TimberId> + '_ {
    t.rests.iter().map(|(_, on)| *on).chain(t.cuts.iter().filter_map(|c| c.purpose.other()))
}

/// What a timber is fixed to, as it stands in a mark: the first rafter of the
/// wall it is listed under, or of any, along the walls; else a joist, else a
/// hip or valley.
fn fixed_to(
    timbers: &[Timber],
    t: &Timber,
    listed: Option<&str>,
    rank: &[usize],
    marks: &Marks,
) -> Option<(MemberKind, String)> {
    let rafters = others(t).map(|id| whole(timbers, id).index()).filter(|k| rank[*k] != usize::MAX);
    let rafter = rafters.min_by_key(|k| (marks.walls[*k].as_deref() != listed, rank[*k]));
    if let Some(k) = rafter {
        return Some((MemberKind::CommonRafter, marks.stations[k].clone()));
    }
    let is_joist = |id: &TimberId| timbers[id.index()].kind == MemberKind::CeilingJoist;
    let joists = others(t).filter(is_joist).map(|id| marks.names[whole(timbers, id).index()].as_str());
    if let Some(name) = joists.filter(|n| !n.is_empty()).min() {
        return Some((MemberKind::CeilingJoist, name.split_once('-').map_or("", |(_, tail)| tail).to_owned()));
    }
    others(t).find_map(|id| Some((timbers[id.index()].kind, short(timbers, id, marks)?)))
}

/// Both ends of a timber, all its lengths together.
fn whole_line(timbers: &[Timber], first: usize) -> [DVec3; 2] {
    let [foot, head] = timbers[first].line();
    let last = |t: &&Timber| t.lengthened.as_ref().is_some_and(|l| l.first.index() == first && l.part + 1 == l.parts);
    let on = timbers[first].lengthened.is_some();
    [foot, timbers.iter().filter(|_| on).find(last).map_or(head, |t| t.line()[1])]
}

/// The first length of a timber, which has its name.
fn whole(timbers: &[Timber], id: TimberId) -> TimberId {
    timbers[id.index()].lengthened.as_ref().map_or(id, |l| l.first)
}

/// The mark of a timber within another's: `R1` for `Ridge-1`, `PA` for `Plate-A`.
fn short(timbers: &[Timber], id: TimberId, marks: &Marks) -> Option<String> {
    let id = whole(timbers, id);
    let name = marks.names.get(id.index()).filter(|n| !n.is_empty())?;
    let Some((word, tail)) = name.split_once('-').filter(|(word, _)| word.len() > 2) else { return Some(name.clone()) };
    let letters = match timbers[id.index()].kind {
        MemberKind::Purlin | MemberKind::Fascia | MemberKind::Soffit | MemberKind::TiltingFillet => 2,
        _ => 1,
    };
    Some(format!("{}{tail}", word.get(..letters).unwrap_or(word)))
}
