//! The figures of one timber: true length, deductions, cuts, marks.

use crate::frame::timber::{CutUse, Made, Role, Timber, TimberId, Top};
use crate::lengthening;
use crate::marking::{Axes, mark};
use crate::shape::Shape;
use crate::solution::{
    AxisOut, Bench, Birdsmouth, Cut, CutPlace, Deduction, Member, MemberKind, Size, SolidOut, TapeMark,
};
use geometry::surface::RoofPlane;
use geometry::{Angle, DVec3};

/// A deduction smaller than this is none, mm.
const NO_DEDUCTION: f64 = 0.005;

/// A cut that turns less than this from square across the edge is a plain cut, degrees.
const SQUARE_ACROSS: f64 = 0.05;

/// A face of a halving or splice turned further than this from square across lies along
/// the timber, degrees; the others are its shoulders.
const ACROSS_THE_GRAIN: f64 = 45.0;

/// A cut leaning nearer than this (n_x) to along the timber has no mark across
/// its top edge.
const ALONG_EDGE: f64 = 0.05;

/// A top that is out of square by less than this over its thickness is left as
/// it is sawn, mm.
const WORTH_PLANING: f64 = 0.5;

/// A face that looks up by less than this (as a sine) is plumb.
const OFF_PLUMB: f64 = 1e-9;

/// A cut whose normal points up to within this (1 - cosine) is level.
const OFF_LEVEL: f64 = 1e-9;

/// Everything about a timber but its mark and pattern piece.
pub fn of_timber(
    timbers: &[Timber],
    k: usize,
    shape: &Shape,
    marks: &[String],
    touches: &[Option<TimberId>],
) -> Member {
    let t = &timbers[k];
    let axes = t.axes();
    let local: Vec<DVec3> = shape.solid.points.iter().map(|p| axes.point(*p)).collect();
    let [start, end] = reach(local.iter().map(|p| p.x));
    let top: Vec<f64> = shape
        .solid
        .faces
        .iter()
        .filter(|f| matches!(f.tag, Made::Top | Made::TopLeft | Made::TopRight))
        .flat_map(|f| f.ring.iter().map(|i| local[*i as usize].x))
        .collect();
    let [top_start, top_end] = reach(top.iter().copied());
    let per_run = (1.0 + t.slope * t.slope).sqrt();
    let origin = axes.origin + axes.along * start;
    let (cuts, tape, names) = cuts_of(t, shape, &axes, start, (marks, touches));
    let lengthened = t.lengthened.as_deref();
    let [from, to] = t.line();
    let rise = to - from;
    Member {
        mark: marks[k].clone(),
        kind: t.kind,
        wall: None,
        size: Size { thickness_mm: t.section.thickness, depth_mm: t.section.depth },
        count_as: marks[k].clone(),
        mirror_of: None,
        true_length_mm: rise.length(),
        deductions: deductions(t, timbers, touches),
        cut_length_mm: (top_end - top_start).max(0.0),
        stock_length_mm: (end - start).max(0.0),
        pitch_deg: Angle::from_rise_run(rise.z, rise.truncate().length()).to_deg(),
        axis: AxisOut { from: from.to_array().map(plain), to: to.to_array().map(plain) },
        cuts,
        birdsmouth: birdsmouth(t, per_run),
        drop_mm: t.drop,
        backing_deg: backing(t, &axes),
        volume_m3: shape.solid.volume() / 1e9,
        bench: Bench {
            origin: origin.to_array().map(plain),
            along: axes.along.to_array().map(plain),
            up: axes.up.to_array().map(plain),
            across: axes.across.to_array().map(plain),
            points: local.iter().map(|p| [p.x - start, p.y, p.z].map(plain)).collect(),
        },
        marks: tape,
        splices: lengthened.map_or_else(Vec::new, |l| lengthening::splices(&l.splices, &axes, start, marks)),
        firred: !t.firring.is_empty(),
        solid: SolidOut {
            points: shape.solid.points.iter().map(|p| p.to_array().map(plain)).collect(),
            faces: shape.solid.faces.iter().map(|f| f.ring.to_vec()).collect(),
            names,
        },
    }
}

/// A number without the sign of zero: which of two zeros is the lesser is not
/// the same on all machines.
fn plain(v: f64) -> f64 {
    v + 0.0
}

fn reach(values: impl Iterator<Item = f64>) -> [f64; 2] {
    values.fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], v| [lo.min(v), hi.max(v)]).map(plain)
}

/// What the pitch line loses at each end, read on the centre line.
fn deductions(t: &Timber, timbers: &[Timber], touches: &[Option<TimberId>]) -> Vec<Deduction> {
    let per_run = (1.0 + t.slope * t.slope).sqrt();
    let mut out = Vec::new();
    let Some([foot, head]) = t.footprint.crossing(t.foot, t.dir) else { return out };
    let mut add = |mm: f64, tag: Made, at: CutPlace| {
        if mm.abs() > NO_DEDUCTION {
            out.push(Deduction { why: reason(t, tag, timbers, touches, mm), mm, slope_mm: mm * per_run, at });
        }
    };
    if t.seat.is_none() && t.kind != MemberKind::WallPlate {
        add(foot.0, foot.1, CutPlace::Foot);
    }
    if t.kind != MemberKind::WallPlate {
        add(t.run - head.0, head.1, CutPlace::Head);
    }
    out
}

fn reason(t: &Timber, tag: Made, timbers: &[Timber], touches: &[Option<TimberId>], mm: f64) -> String {
    if mm < 0.0 {
        return "run on past the joint, added".into();
    }
    let touched = match tag {
        Made::Cut(k) => touches.get(usize::from(k)).copied().flatten(),
        _ => None,
    };
    let Some(TimberId(id)) = touched else { return "cut back at the joint".into() };
    let other = &timbers[id as usize];
    let name = match other.kind {
        MemberKind::RidgeBoard => "ridge",
        MemberKind::HipRafter => "hip",
        MemberKind::ValleyRafter => "valley",
        MemberKind::Purlin => "purlin",
        _ => "common rafter",
    };
    let end_on = t.dir.dot(other.dir).abs() > 0.999_999;
    let square = t.dir.dot(other.dir).abs() < 1e-6;
    // A board fixed to a wall lies wholly on one side of its line.
    if square && other.half.contains(&0.0) {
        return format!("the {name} thickness");
    }
    match (end_on, square) {
        (true, _) => format!("{name} runs on past the joint"),
        (_, true) => format!("half the {name} thickness"),
        _ => format!("half the {name} thickness on the slant"),
    }
}

fn birdsmouth(t: &Timber, per_run: f64) -> Option<Birdsmouth> {
    let seat = t.seat?;
    // At the corner of the plate: plumb height of the notch below the underside line.
    let plumb = -(t.under_offset + t.base - seat.level);
    let back = t.dir.dot(t.foot) - seat.heel.offset;
    let heel = plumb + back * t.slope;
    (plumb > 0.0).then(|| Birdsmouth {
        depth_mm: plumb / per_run,
        seat_mm: if t.slope > 0.0 { heel / t.slope } else { 0.0 },
        plumb_mm: heel,
        upstand_mm: t.top_offset,
    })
}

/// Backing angles left and right from square across: tan = n_z / n_y of the
/// roof planes in the timber's own axes.
fn backing(t: &Timber, axes: &Axes) -> Option<[f64; 2]> {
    let (left, right) = match t.top {
        Top::Backed { left, right, .. } => (left, right),
        Top::Planed(plane) => (plane, plane),
        Top::Flat => return None,
    };
    let angle = |plane: RoofPlane, side: f64| {
        let n = axes.vector((plane.inward * -plane.tan_pitch).extend(1.0).normalize());
        Angle::from_rise_run(n.z * side, n.y).to_deg()
    };
    let both = [angle(left, 1.0), angle(right, -1.0)];
    let across = t.section.thickness * Angle::deg(both[0]).tan().abs();
    // Nobody takes a plane to less.
    (across > WORTH_PLANING || matches!(t.top, Top::Backed { .. })).then_some(both)
}

/// The cuts that are left on the solid, from tail to head, the tape marks of
/// those that cross the top edge, and a name for every face.
fn cuts_of(
    t: &Timber,
    shape: &Shape,
    axes: &Axes,
    start: f64,
    (marks, touches): (&[String], &[Option<TimberId>]),
) -> (Vec<Cut>, Vec<TapeMark>, Vec<String>) {
    let mut cuts = Vec::new();
    let mut tape = Vec::new();
    let mut names = Vec::with_capacity(shape.solid.faces.len());
    for face in &shape.solid.faces {
        let normal = face_normal(&shape.solid.points, &face.ring);
        let local = axes.vector(normal);
        let (purpose, at) = match face.tag {
            Made::Cut(k) => match t.cuts.get(usize::from(k)) {
                Some(c) => (Some(c.purpose), c.at),
                None => (None, CutPlace::Head),
            },
            Made::End(head) => (Some(CutUse::Trim), if head { CutPlace::Head } else { CutPlace::Foot }),
            _ => (None, CutPlace::Head),
        };
        let Some(purpose) = purpose else {
            names.push(plain_name(face.tag).to_string());
            continue;
        };
        let m = mark(local);
        let name = purlin_cut_name(t, purpose, at, (local, normal))
            .unwrap_or_else(|| cut_name(purpose, at, m.edge_deg, local.z, m.face_deg, normal.z));
        let against = match (purpose.other(), face.tag) {
            (Some(_), Made::Cut(k)) => {
                touches.get(usize::from(k)).copied().flatten().and_then(|id| marks.get(id.index()).cloned())
            }
            _ => None,
        };
        names.push(name.clone());
        let long_face = matches!(purpose, CutUse::Spliced(_)) && m.face_deg.max(m.edge_deg) > ACROSS_THE_GRAIN;
        if local.x.abs() > ALONG_EDGE && !matches!(purpose, CutUse::Seat | CutUse::Soffit) && !long_face {
            let p = axes.point(shape.solid.points[face.ring[0] as usize]);
            let on_edge = |z: f64| (local.dot(p) - local.y * t.section.depth - local.z * z) / local.x - start;
            // A pointed end has two cheeks that meet short of the far arris.
            let [low, high] = reach(face.ring.iter().map(|i| axes.point(shape.solid.points[*i as usize]).z));
            tape.push(TapeMark {
                name: name.clone(),
                left_mm: plain(on_edge(high)),
                right_mm: plain(on_edge(low)),
                left_across_mm: high,
                right_across_mm: low,
                face_angle_deg: m.face_deg,
                at,
            });
        }
        cuts.push(Cut {
            name,
            at,
            face_angle_deg: m.face_deg,
            edge_angle_deg: m.edge_deg,
            saw: m.saw,
            square: m.square,
            edge_square: m.edge_square,
            bevel_mm_in_100: m.bevel,
            edge_bevel_mm_in_100: m.edge_bevel,
            against,
        });
    }
    cuts.sort_by(|a: &Cut, b: &Cut| a.at.cmp(&b.at).then_with(|| a.name.cmp(&b.name)));
    tape.sort_by(|a: &TapeMark, b: &TapeMark| a.left_mm.min(a.right_mm).total_cmp(&b.left_mm.min(b.right_mm)));
    (cuts, tape, names)
}

fn plain_name(tag: Made) -> &'static str {
    match tag {
        Made::Left => "left",
        Made::Right => "right",
        Made::TopLeft => "backing left",
        Made::TopRight => "backing right",
        Made::Underside => "underside",
        _ => "top",
    }
}

/// The trade's name of a cut: by its place, whether it is plumb or level, and
/// for cheeks the side that they face. `rise` is how far its normal points up.
fn cut_name(purpose: CutUse, at: CutPlace, edge_deg: f64, across: f64, face_deg: f64, rise: f64) -> String {
    let place = match at {
        CutPlace::Tail => "tail",
        CutPlace::Foot => "foot",
        CutPlace::Head => "head",
    };
    let side = if across > 0.0 { "left" } else { "right" };
    match purpose {
        CutUse::Seat if at == CutPlace::Head => "seat cut on the purlin".into(),
        CutUse::Heel if at == CutPlace::Head => "plumb cut on the purlin".into(),
        CutUse::Seat => "seat cut".into(),
        CutUse::Heel => "heel plumb cut".into(),
        CutUse::Soffit => "soffit level cut".into(),
        CutUse::Halved(_) if face_deg > ACROSS_THE_GRAIN => format!("{place} halving"),
        CutUse::Halved(_) => format!("{place} halving shoulder"),
        CutUse::Spliced(_) if face_deg.max(edge_deg) > ACROSS_THE_GRAIN => format!("{place} splice face"),
        CutUse::Spliced(_) => format!("{place} splice end"),
        _ if edge_deg > SQUARE_ACROSS => format!("{place} cheek, facing {side}"),
        _ if face_deg < SQUARE_ACROSS => format!("{place} square cut"),
        _ if rise.abs() < OFF_PLUMB => format!("{place} plumb cut"),
        _ if rise.abs() > 1.0 - OFF_LEVEL => format!("{place} level cut"),
        _ => format!("{place} bevel cut"),
    }
}

/// What the cuts of a purlin are called where it passes under a hip or valley.
/// `local` and `world` are the cut's normal in the purlin's own axes and in
/// space.
fn purlin_cut_name(t: &Timber, purpose: CutUse, at: CutPlace, (local, world): (DVec3, DVec3)) -> Option<String> {
    let end = if at == CutPlace::Head { "head" } else { "foot" };
    let side = if local.z > 0.0 { "left" } else { "right" };
    match (t.kind, t.role, purpose) {
        (MemberKind::Purlin, Role::Fitted { .. }, CutUse::Against(_)) if world.z > OFF_PLUMB => {
            Some(format!("{end} lip cut"))
        }
        (MemberKind::Purlin, Role::Fitted { .. }, CutUse::Mitre(_)) => Some(format!("{end} mitre, facing {side}")),
        _ => None,
    }
}

/// Unit normal of a flat ring by Newell's sum.
fn face_normal(points: &[DVec3], ring: &[u32]) -> DVec3 {
    let mut n = DVec3::ZERO;
    let o = points[ring[0] as usize];
    for w in ring[1..].windows(2) {
        n += (points[w[0] as usize] - o).cross(points[w[1] as usize] - o);
    }
    n.normalize_or_zero()
}
