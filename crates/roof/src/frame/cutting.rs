//! Who is cut against whom.
//!
//! All sides of timbers and all head and foot cuts are upright, so two
//! timbers share no wood when their outlines in plan do not overlap. Outlines
//! are convex: of two that overlap, the weaker is cut along the one side of the
//! stronger that takes the least off it.

use super::gable_ends::{RunOut, run_out};
use super::rafters::DRAWN_PAST;
use super::spines::{end_at, strip, tail_reach};
use super::timber::{CutUse, EndOn, Made, Role, Timber, TimberId};
use crate::solution::{CutPlace, MemberKind};
use geometry::surface::Surface;
use geometry::{DVec2, HalfPlan};
use job::{HipHead, Job, TailCut};

/// Outlines that run into one another by less than this only touch, mm.
const TOUCH: f64 = 1e-6;

/// Two timbers whose directions from a joint are this near to opposite (as a
/// cosine: half a degree) are in one line.
const OPPOSITE: f64 = -0.999_96;

/// A line passes through a joint when it misses its point by less, mm.
const THROUGH_POINT: f64 = 0.5;

/// A ridge is run on past its end by at most this many thicknesses to give
/// hips their bearing; sharper hips bear on what there is.
const FARTHEST_RIDGE_END: f64 = 6.0;

/// A rafter whose line ends this near to the head of a hip or valley meets the
/// joint there, mm.
const AT_HEAD: f64 = 1.0;

/// Timbers that pass over one another with this much daylight between, mm, are
/// no neighbours: more than a backed or hollow top differs from its flat one.
const PASSES_OVER: f64 = 60.0;

/// If the weaker timber would lose this many times what the stronger would,
/// the stronger is cut instead.
const TOO_DEAR: f64 = 8.0;

/// The best single cut that parts one timber from another: what it leaves of it.
struct Parting {
    half: HalfPlan,
    lost: f64,
}

/// Cut every timber to fit its neighbours.
pub fn resolve(job: &Job, surface: &Surface, timbers: &mut [Timber]) {
    draw_spines(job, surface, timbers);
    cut_tails(timbers);
    cut_at_lines(timbers);
    let mut ids: Vec<u32> = timbers
        .iter()
        .flat_map(|t| t.ends)
        .filter_map(|e| if let EndOn::Joint(j) = e { Some(j) } else { None })
        .collect();
    ids.sort_unstable();
    ids.dedup();
    for joint in ids {
        cut_at_joint(timbers, joint);
    }
    part_the_rest(timbers);
    trim_rafters(timbers);
}

/// Run to the whole mm: timbers that differ by rounding are alike.
fn whole_run(t: &Timber) -> i64 {
    t.run.round() as i64
}

/// The faces beside a spine, the lower number first: an order of timbers that
/// does not depend on how the plan lies.
fn faces(t: &Timber) -> [u32; 2] {
    match t.role {
        Role::Spine { left, right } => [left.0.min(right.0), left.0.max(right.0)],
        Role::Rafter { face } => [face.0; 2],
        Role::Plate { wall } => [wall.0; 2],
        Role::Fitted { .. } => [u32::MAX; 2],
    }
}

/// How firmly a timber keeps its place at its joint: lower is firmer. Last
/// commons and crown rafters come before hips at their own joint only.
fn class_at_joint(t: &Timber) -> u8 {
    if t.at_joint.is_some() { 3 } else { class(t) }
}

/// How firmly a timber keeps its place: lower is firmer.
fn class(t: &Timber) -> u8 {
    match t.kind {
        MemberKind::RidgeBoard if !t.through.is_empty() => 0,
        MemberKind::RidgeBoard | MemberKind::Purlin => 1,
        MemberKind::ValleyRafter if !t.through.is_empty() => 2,
        MemberKind::HipRafter | MemberKind::ValleyRafter => 4,
        _ => 5,
    }
}

/// Draw the strips of spines, past their ends where other timbers will cut them.
fn draw_spines(job: &Job, surface: &Surface, timbers: &mut [Timber]) {
    for k in 0..timbers.len() {
        if timbers[k].is_rafter() || timbers[k].kind == MemberKind::WallPlate {
            continue;
        }
        let mut past: Vec<f64> = (0..2).map(|end| past_end(job, timbers, k, end)).collect();
        let t = &mut timbers[k];
        let over: Vec<Option<RunOut>> = (0..2).map(|end| over_skew_gable(job, surface, t, end)).collect();
        for (past, over) in past.iter_mut().zip(&over) {
            *past = over.as_ref().map_or(*past, |o| o.past);
        }
        t.footprint = strip(t, past[0], past[1]);
        for (over, at) in over.into_iter().zip([CutPlace::Foot, CutPlace::Head]) {
            if let Some(over) = over {
                t.cut(over.verge, CutUse::Trim, at);
            }
        }
    }
}

/// How an end of a ridge runs out over a gable that is out of square to it.
fn over_skew_gable(job: &Job, surface: &Surface, t: &Timber, end: usize) -> Option<RunOut> {
    let runs_out = t.ends[end] == EndOn::Wall
        && t.over_verge[end]
        && matches!(t.kind, MemberKind::RidgeBoard | MemberKind::Purlin);
    let at = if end == 0 { t.foot } else { t.head() };
    runs_out.then(|| run_out(job, surface, at, t.dir, t.half[0].max(t.half[1])))?
}

fn past_end(job: &Job, timbers: &[Timber], k: usize, end: usize) -> f64 {
    let t = &timbers[k];
    match t.ends[end] {
        EndOn::Plate => tail_reach(t),
        EndOn::Wall if t.over_verge[end] && matches!(t.kind, MemberKind::RidgeBoard | MemberKind::Purlin) => {
            job.verge.overhang
        }
        EndOn::Wall | EndOn::Bare => 0.0,
        EndOn::Timber(_) => DRAWN_PAST * t.section.thickness.max(job.timber.ridge.size.thickness),
        EndOn::Joint(j) => {
            let here = |o: &&Timber| end_at(o, j).is_some() || o.through.contains(&j) || o.at_joint == Some(j);
            let others = timbers.iter().enumerate().filter(|(i, o)| *i != k && here(o)).map(|(_, o)| o);
            if t.kind == MemberKind::RidgeBoard {
                ridge_past_joint(job, t, end, j, others)
            } else if others.count() > 0 {
                DRAWN_PAST * t.section.thickness
            } else {
                0.0
            }
        }
    }
}

/// How far a ridge runs on past its end, so that what is framed against its
/// sides there bears fully: commons at the joint by half their thickness, and
/// hips (when they meet the ridge) by ½·ridge/tan δ + ½·hip/sin δ
/// (reference/geometry.md section 4, "ridge extra each end").
fn ridge_past_joint<'a>(
    job: &Job,
    ridge: &Timber,
    end: usize,
    joint: u32,
    others: impl Iterator<Item = &'a Timber>,
) -> f64 {
    let away = if end == 0 { ridge.dir } else { -ridge.dir };
    let mut past: f64 = 0.0;
    for o in others {
        if o.through.contains(&joint) {
            // It will be cut against the one that runs through.
            past = past.max(DRAWN_PAST * ridge.section.thickness);
            continue;
        }
        let out = direction_from(o, joint);
        let sine = away.perp_dot(out).abs();
        let cosine = away.dot(out);
        let bears = match o.kind {
            MemberKind::RidgeBoard => (o.foot - ridge.foot).length() > 0.0 && sine > 0.5,
            MemberKind::HipRafter => job.timber.hip.head == HipHead::Ridge,
            _ => o.at_joint == Some(joint) && sine > 0.5,
        };
        if bears && sine > 0.1 {
            let need = (o.section.thickness / 2.0 - ridge.section.thickness / 2.0 * cosine) / sine;
            past = past.max(need.min(FARTHEST_RIDGE_END * ridge.section.thickness));
        }
    }
    past
}

/// Plan direction in which a timber leaves a joint.
fn direction_from(t: &Timber, joint: u32) -> DVec2 {
    match end_at(t, joint) {
        Some(CutPlace::Foot) => t.dir,
        _ => -t.dir,
    }
}

/// Plumb tails are cut at the fascia in plan; other tails are cut in the solid.
fn cut_tails(timbers: &mut [Timber]) {
    for t in timbers.iter_mut() {
        // A valley's tail ends in two halves, cut one by one in the solid.
        if t.kind == MemberKind::ValleyRafter {
            continue;
        }
        for tail in t.tails.clone().into_iter().filter(|t| t.cut != TailCut::Square) {
            let out = -tail.plane.inward;
            let line = tail.plane.inward * (tail.plane.offset - tail.overhang);
            t.cut(HalfPlan::through(line, out), CutUse::Tail(tail.wall), CutPlace::Tail);
        }
    }
}

/// Cut ends that lie along another timber's centre line against its side.
fn cut_at_lines(timbers: &mut [Timber]) {
    for k in 0..timbers.len() {
        for end in 0..2 {
            let EndOn::Timber(id) = timbers[k].ends[end] else { continue };
            if timbers[k].at_joint.is_some() && end == 1 {
                continue;
            }
            let t = &timbers[k];
            let (at, line) = (if end == 1 { t.head() } else { t.foot }, &timbers[id.index()]);
            if line.run - line.along(at) < AT_HEAD {
                // At the very head of its line other timbers meet as well: it is
                // parted from all of them below.
                continue;
            }
            let toward = if end == 1 { -t.dir } else { t.dir };
            let half = timbers[id.index()].side_facing(toward).flipped();
            let at = if end == 1 { CutPlace::Head } else { CutPlace::Foot };
            timbers[k].cut(half, CutUse::Against(id), at);
        }
    }
}

/// Fit the timbers that meet at a joint, the firmest first.
fn cut_at_joint(timbers: &mut [Timber], joint: u32) {
    let mut here: Vec<usize> = (0..timbers.len())
        .filter(|k| {
            let t = &timbers[*k];
            end_at(t, joint).is_some() || t.through.contains(&joint) || t.at_joint == Some(joint)
        })
        .collect();
    let rank = |t: &Timber| (u8::from(!t.through.contains(&joint)), class_at_joint(t));
    here.sort_by(|a, b| {
        let (ta, tb) = (&timbers[*a], &timbers[*b]);
        rank(ta).cmp(&rank(tb)).then(whole_run(tb).cmp(&whole_run(ta))).then(faces(ta).cmp(&faces(tb))).then(a.cmp(b))
    });
    // Hips and valleys are first cut to what is firmer, then to one another.
    for (i, &weak) in here.iter().enumerate() {
        for &firm in &here[..i] {
            let hips = class(&timbers[weak]) == 4 && class(&timbers[firm]) == 4;
            let both_through = timbers[weak].through.contains(&joint);
            if !hips && !both_through {
                part(timbers, firm, weak);
            }
        }
    }
    let hips: Vec<usize> = here.into_iter().filter(|k| class(&timbers[*k]) == 4).collect();
    let pair = through_pair(timbers, &hips, joint);
    if let Some([a, b]) = pair {
        mitre(timbers, a, b, joint);
        for &k in hips.iter().filter(|k| **k != a && **k != b) {
            part(timbers, a, k);
            part(timbers, b, k);
        }
    }
    let rest: Vec<usize> = hips.into_iter().filter(|k| pair.is_none_or(|p| !p.contains(k))).collect();
    for i in 0..rest.len() {
        for j in i + 1..rest.len() {
            mitre(timbers, rest[i], rest[j], joint);
        }
    }
    trim(timbers, joint);
}

/// Of hips meeting in a point, the first pair in one line: they butt over
/// their full length and the others are cut against them.
fn through_pair(timbers: &[Timber], hips: &[usize], joint: u32) -> Option<[usize; 2]> {
    for (i, &a) in hips.iter().enumerate() {
        for &b in &hips[i + 1..] {
            let facing = direction_from(&timbers[a], joint).dot(direction_from(&timbers[b], joint));
            if facing < OPPOSITE && timbers[a].footprint.penetration(&timbers[b].footprint) > TOUCH {
                return Some([a, b]);
            }
        }
    }
    None
}

/// Part two equals by an upright plane through their joint that halves the
/// angle between them.
fn mitre(timbers: &mut [Timber], a: usize, b: usize, joint: u32) {
    if timbers[a].footprint.penetration(&timbers[b].footprint) <= TOUCH {
        return;
    }
    let (ta, tb) = (&timbers[a], &timbers[b]);
    let at = end_point(ta, joint);
    if (at - end_point(tb, joint)).length() > THROUGH_POINT {
        part(timbers, a, b);
        return;
    }
    let (u, v) = (direction_from(ta, joint), direction_from(tb, joint));
    // Square to the bisector: points from b's side to a's.
    let normal = (u - v).normalize_or_zero();
    if normal == DVec2::ZERO {
        part(timbers, a, b);
        return;
    }
    let (ea, eb) = (ta.end_near(at), tb.end_near(at));
    timbers[a].cut(HalfPlan::through(at, -normal), CutUse::Mitre(TimberId(b as u32)), ea);
    timbers[b].cut(HalfPlan::through(at, normal), CutUse::Mitre(TimberId(a as u32)), eb);
}

fn end_point(t: &Timber, joint: u32) -> DVec2 {
    match end_at(t, joint) {
        Some(CutPlace::Foot) => t.foot,
        _ => t.head(),
    }
}

/// Square off whatever still runs past a joint without having been cut there.
fn trim(timbers: &mut [Timber], joint: u32) {
    for t in timbers.iter_mut() {
        let Some(place) = end_at(t, joint) else { continue };
        if t.kind == MemberKind::RidgeBoard {
            continue;
        }
        let head = place == CutPlace::Head;
        let Some(crossing) = t.footprint.crossing(t.foot, t.dir) else { continue };
        let open = if head { crossing[1].1 == Made::End(true) } else { crossing[0].1 == Made::End(false) };
        if open {
            let (at, out) = if head { (t.head(), t.dir) } else { (t.foot, -t.dir) };
            t.cut(HalfPlan::through(at, out), CutUse::Trim, place);
        }
    }
}

/// Square off rafters that were drawn past an end and met nothing there.
fn trim_rafters(timbers: &mut [Timber]) {
    for t in timbers.iter_mut().filter(|t| t.is_rafter()) {
        let Some([foot, head]) = t.footprint.crossing(t.foot, t.dir) else { continue };
        if head.1 == Made::End(true) && head.0 > t.run {
            t.cut(HalfPlan::through(t.head(), t.dir), CutUse::Trim, CutPlace::Head);
        }
        if foot.1 == Made::End(false) && foot.0 < 0.0 && t.ends[0] != EndOn::Plate {
            t.cut(HalfPlan::through(t.foot, -t.dir), CutUse::Trim, CutPlace::Foot);
        }
    }
}

/// Whether the outlines of two timbers overlap and neither passes over the other.
fn meet(a: &Timber, b: &Timber) -> bool {
    a.footprint.penetration(&b.footprint) > TOUCH && !passes_over(a, b) && !passes_over(b, a)
}

/// Whether `over` lies clear above `under` wherever their outlines overlap.
fn passes_over(over: &Timber, under: &Timber) -> bool {
    let sides = under.footprint.sides().iter();
    let shared = sides.fold(over.footprint.clone(), |left, s| left.clipped(s.half, s.tag));
    let daylight = |p: DVec2| over.line_height(p) + over.under_offset - under.line_height(p) - under.top_offset;
    !shared.is_empty() && shared.corners().all(|p| daylight(p) > PASSES_OVER)
}

/// Cut `weak` along the side of `firm` that takes the least off it.
fn part(timbers: &mut [Timber], firm: usize, weak: usize) {
    if !timbers[firm].gone && meet(&timbers[firm], &timbers[weak]) {
        part_from(timbers, firm, weak);
    }
}

/// Cut `weak`, which overlaps `firm`, along the side of `firm` that takes the least off it.
fn part_from(timbers: &mut [Timber], firm: usize, weak: usize) {
    let Some(best) = parting(&timbers[firm], &timbers[weak]) else { return };
    let t = &timbers[weak];
    let toward = timbers[firm].footprint.corners().sum::<DVec2>() / timbers[firm].footprint.sides().len() as f64;
    let place = cut_place(t, best.half, toward);
    timbers[weak].cut(best.half, CutUse::Against(TimberId(firm as u32)), place);
}

/// The end that a cut takes off: the one with the most of the timber's line
/// outside it.
fn cut_place(t: &Timber, half: HalfPlan, toward: DVec2) -> CutPlace {
    let lean = half.normal.dot(t.dir);
    if lean.abs() > 0.02 { if lean > 0.0 { CutPlace::Head } else { CutPlace::Foot } } else { t.end_near(toward) }
}

/// Cut one of two timbers to the other wherever their outlines overlap, even
/// where one was taken to pass over the other: the second, or where a plate is
/// one of them, the one that loses less.
pub fn part_always(timbers: &mut [Timber], firm: usize, weak: usize) {
    if timbers[firm].footprint.penetration(&timbers[weak].footprint) <= TOUCH {
        return;
    }
    let is_plate = |k: usize| timbers[k].kind == MemberKind::WallPlate;
    let lost = |f: usize, w: usize| parting(&timbers[f], &timbers[w]).map_or(f64::INFINITY, |p| p.lost);
    if (is_plate(firm) || is_plate(weak)) && lost(weak, firm) < lost(firm, weak) {
        part_from(timbers, weak, firm);
    } else {
        part_from(timbers, firm, weak);
    }
}

fn parting(firm: &Timber, weak: &Timber) -> Option<Parting> {
    let whole = weak.footprint.area();
    firm.footprint
        .sides()
        .iter()
        .map(|s| {
            let half = s.half.flipped();
            let left = weak.footprint.clipped(half, Made::Inner).area();
            Parting { half, lost: whole - left }
        })
        .min_by(|a, b| a.lost.total_cmp(&b.lost))
}

/// Part all timbers that still overlap anywhere.
fn part_the_rest(timbers: &mut [Timber]) {
    let mut order: Vec<usize> =
        (0..timbers.len()).filter(|k| timbers[*k].kind != MemberKind::WallPlate && !timbers[*k].gone).collect();
    let boxes: Vec<(DVec2, DVec2)> = timbers.iter().map(|t| t.footprint.bounds()).collect();
    order.sort_by(|a, b| boxes[*a].0.x.total_cmp(&boxes[*b].0.x).then(a.cmp(b)));
    let mut pairs: Vec<(u8, u8, usize, usize)> = Vec::new();
    for (i, &a) in order.iter().enumerate() {
        for &b in &order[i + 1..] {
            if boxes[b].0.x > boxes[a].1.x {
                break;
            }
            if boxes[b].0.y > boxes[a].1.y || boxes[a].0.y > boxes[b].1.y {
                continue;
            }
            if meet(&timbers[a], &timbers[b]) {
                let (ca, cb) = (class(&timbers[a]), class(&timbers[b]));
                let (firm, weak) = if (ca, a) <= (cb, b) { (a, b) } else { (b, a) };
                pairs.push((class(&timbers[firm]), class(&timbers[weak]), firm, weak));
            }
        }
    }
    pairs.sort_unstable();
    for (_, _, firm, weak) in pairs {
        if !meet(&timbers[firm], &timbers[weak]) {
            continue;
        }
        let lost = |f: usize, w: usize| parting(&timbers[f], &timbers[w]).map_or(f64::INFINITY, |p| p.lost);
        if lost(firm, weak) > TOO_DEAR * lost(weak, firm) {
            part(timbers, weak, firm);
        } else {
            part(timbers, firm, weak);
        }
    }
}
