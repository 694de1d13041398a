//! Trimming a hole in the frame: rafters in it are cut in two, and trimmers
//! between the trimming rafters carry their ends.

use super::{Hole, Misfit, rule};
use crate::SolveError;
use crate::carcass::Carcass;
use crate::fitted::beam::{Beam, axes};
use crate::frame::timber::{CutUse, EndOn, Made, Role, Timber, TimberId};
use crate::solution::{CutPlace, MemberKind};
use geometry::{DVec3, HalfPlan};

/// A trimming rafter's inner face may stand inside the hole's edge by rounding
/// only, mm.
const AT_EDGE: f64 = 0.01;

/// A hole as it was trimmed.
#[derive(Clone, Debug)]
pub struct Trimmed {
    /// The hole.
    pub hole: Hole,
    /// Inner faces of the trimming rafters, mm along the axis of the slope.
    pub inner: [f64; 2],
    /// Trimming rafters, those at the start of the wall first, from the hole outwards.
    pub trimming: [Vec<TimberId>; 2],
    /// Trimmers below and above, from the hole outwards.
    pub trimmers: [Vec<TimberId>; 2],
    /// Rafters cut: what is left of each below and above the hole.
    pub cut: Vec<[TimberId; 2]>,
}

impl Trimmed {
    /// Joist hangers: one at each end of both trimmers, one under each cut end
    /// (common practice).
    pub fn hangers(&self) -> u32 {
        (2 * self.trimmers.len() + 2 * self.cut.len()) as u32
    }
}

/// A rafter that runs past a hole: its id and its centre along the axis.
struct Passing {
    id: TimberId,
    at: f64,
    trims: bool,
}

/// Trim a hole.
///
/// # Errors
/// When the rafters beside it are not there.
pub fn trim(carcass: &mut Carcass<'_>, hole: &Hole) -> Result<Trimmed, SolveError> {
    let half = carcass.job.timber.rafter.size.thickness / 2.0;
    let passing = passing(carcass, hole);
    let missing = || hole.refused(Misfit::Beside);
    let below = passing.iter().rposition(|p| p.trims && p.at + half <= hole.x[0] + AT_EDGE).ok_or_else(missing)?;
    let above = passing.iter().position(|p| p.trims && p.at - half >= hole.x[1] - AT_EDGE).ok_or_else(missing)?;
    let between = passing.get(below + 1..above).ok_or_else(missing)?;
    let plies = rule::plies(carcass.job, between.len()).ok_or_else(missing)?;
    let outwards = |step: isize, from: usize| -> Option<Vec<TimberId>> {
        (0..plies as isize).map(|k| passing.get(from.checked_add_signed(k * step)?).map(|p| p.id)).collect()
    };
    let trimming = [outwards(-1, below).ok_or_else(missing)?, outwards(1, above).ok_or_else(missing)?];
    let inner = [passing[below].at + half, passing[above].at - half];
    touching(carcass, &trimming);
    let trimmers = [false, true].map(|upper| trimmers(carcass, hole, inner, plies, upper, &trimming));
    let mut cut = Vec::with_capacity(between.len());
    for rafter in between {
        let [Some(&lower), Some(&upper)] = [trimmers[0].last(), trimmers[1].last()] else { return Err(missing()) };
        cut.push(split(carcass, rafter.id, hole, plies, [lower, upper]));
    }
    Ok(Trimmed { hole: hole.clone(), inner, trimming, trimmers, cut })
}

/// Rafters that run the whole height of a hole, along the axis.
fn passing(carcass: &Carcass<'_>, hole: &Hole) -> Vec<Passing> {
    let [low, high] = hole.inward();
    let axis = hole.slope.axis;
    let mut out: Vec<Passing> = carcass
        .built()
        .filter(|(_, t)| t.role == Role::Rafter { face: hole.face })
        .filter(|(_, t)| t.dir.dot(t.foot) < low && t.dir.dot(t.head()) > high)
        .map(|(id, t)| Passing { id, at: axis.dot(t.foot), trims: t.kind == MemberKind::TrimmingRafter })
        .collect();
    out.sort_by(|a, b| a.at.total_cmp(&b.at));
    out
}

/// Trimming rafters that are bolted together lie on one another.
fn touching(carcass: &mut Carcass<'_>, trimming: &[Vec<TimberId>; 2]) {
    // Looking up the slope, the start of the wall is on the left.
    for (side, ids) in [Made::Right, Made::Left].into_iter().zip(trimming) {
        for pair in ids.windows(2) {
            let rest = (side, pair[0]);
            let rests = &mut carcass.timber_mut(pair[1]).rests;
            if !rests.contains(&rest) {
                rests.push(rest);
            }
        }
    }
}

/// The trimmers on one side of a hole, square to the slope and level with the
/// tops of the rafters.
fn trimmers(
    carcass: &mut Carcass<'_>,
    hole: &Hole,
    inner: [f64; 2],
    plies: usize,
    upper: bool,
    trimming: &[Vec<TimberId>; 2],
) -> Vec<TimberId> {
    let size = carcass.job.timber.rafter.size;
    let slope = &hole.slope;
    let mut out: Vec<TimberId> = Vec::with_capacity(plies);
    for ply in 0..plies {
        let away = size.thickness * (ply as f64 + 0.5);
        let middle = if upper { hole.s[1] + away } else { hole.s[0] - away };
        let origin = slope.point(inner[0], middle) - slope.normal() * size.depth;
        let axes = axes(origin, slope.axis.extend(0.0), slope.normal());
        let mut beam = Beam::new(MemberKind::Trimmer, size, axes, [0.0, inner[1] - inner[0]]);
        beam.wall = Some(hole.wall);
        let ends = [(Made::End(false), &trimming[0]), (Made::End(true), &trimming[1])];
        beam.rests.extend(ends.iter().filter_map(|(end, on)| on.first().map(|id| (*end, *id))));
        if let Some(&before) = out.last() {
            beam.rests.push((if upper { Made::Right } else { Made::Left }, before));
        }
        out.push(carcass.add(beam.timber()));
    }
    out
}

/// Cut a rafter in two, square to the slope: the ends lie against the
/// outermost trimmers.
fn split(carcass: &mut Carcass<'_>, id: TimberId, hole: &Hole, plies: usize, against: [TimberId; 2]) -> [TimberId; 2] {
    let trimmers = plies as f64 * carcass.job.timber.rafter.size.thickness;
    let slope = &hole.slope;
    let whole = carcass.timber(id).clone();
    let cells = carcass.wood(id).to_vec();
    let along = |s: f64| {
        let foot = whole.foot.extend(whole.base);
        (slope.point(0.0, s) - foot).dot(slope.up()) * slope.cos
    };

    let s = hole.s[0] - trimmers;
    let mut lower = whole.clone();
    lower.run = along(s);
    lower.ends[1] = EndOn::Timber(against[0]);
    lower.at_joint = None;
    let tag = square_end(&mut lower, CutPlace::Head, against[0]);
    let wood = cells.iter().filter_map(|c| c.clipped(slope.square(s), tag)).collect();
    *carcass.timber_mut(id) = lower;
    carcass.set_wood(id, wood);

    let s = hole.s[1] + trimmers;
    let mut upper = whole.clone();
    let run = along(s);
    upper.foot += upper.dir * run;
    upper.base += upper.slope * run;
    upper.run -= run;
    upper.ends[0] = EndOn::Timber(against[1]);
    upper.seat = None;
    upper.tails.clear();
    let tag = square_end(&mut upper, CutPlace::Foot, against[1]);
    let wood = cells.iter().filter_map(|c| c.clipped(slope.square(s).flipped(), tag)).collect();
    let above = carcass.take(upper, wood);
    // Below a hole that was trimmed before, the new piece is what is left.
    for [below, _] in carcass.trimmed.iter_mut().flat_map(|t| &mut t.cut).filter(|[below, _]| *below == id) {
        *below = above;
    }
    [id, above]
}

/// End a rafter's line and its outline at a trimmer.
fn square_end(rafter: &mut Timber, at: CutPlace, trimmer: TimberId) -> Made {
    let (end, out) = if at == CutPlace::Head { (rafter.head(), rafter.dir) } else { (rafter.foot, -rafter.dir) };
    rafter.cut(HalfPlan::through(end, out), CutUse::Against(trimmer), at);
    rafter.tag(CutUse::Against(trimmer), at)
}

/// Corners as plain numbers.
pub fn plain(points: [DVec3; 4]) -> [[f64; 3]; 4] {
    points.map(|p| p.to_array())
}
