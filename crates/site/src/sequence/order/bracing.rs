//! Where a temporary brace finds a hold, and how it is cut.

use super::super::graph::Graph;
use super::super::rules::BraceRules;
use super::super::types::{Brace, BraceCut, BraceWay};
use geometry::{Angle, DVec2, DVec3};
use roof::solution::{MemberKind, Size};
use strength::carrying::is_rafter;

/// Step between places along a timber that are tried as footings, mm: a carpenter nails to within a hand.
const TRY_EVERY: f64 = 250.0;
/// A brace keeps this far from the ends of what it is nailed to, mm: nails split ends.
const FROM_END: f64 = 100.0;
/// Least drop of a brace, mm: below this there is no room for one.
const LEAST_DROP: f64 = 100.0;
/// A brace is taken for one along (or across) a timber when the cosine in plan is at least this: within about 50°.
const IN_LINE: f64 = 0.64;

/// What a brace is asked to do.
#[derive(Clone, Copy, Debug)]
pub struct Ask {
    /// The timber to hold.
    pub timber: usize,
    /// Where along it, mm.
    pub at: f64,
    /// Which way.
    pub way: BraceWay,
    /// The side in plan on which its foot goes; 0 for either.
    pub side: f64,
}

#[derive(Clone, Copy, Debug)]
struct Foot {
    on: Option<usize>,
    at: DVec3,
    score: f64,
}

/// The best brace for what is asked, with a footing on what is fixed; on the floor when there is none.
pub fn brace(graph: &Graph<'_>, rules: &BraceRules, fixed: &[bool], ask: Ask, name: String) -> Option<Brace> {
    let me = graph.timbers.get(ask.timber)?;
    let head = me.under(ask.at);
    let heading = me.heading();
    let toward = match ask.way {
        BraceWay::Along => heading,
        BraceWay::Across => heading.perp(),
    };
    let judge = |at: DVec3, extra: f64| -> Option<f64> {
        let d = at - head;
        let level = d.truncate().length();
        let drop = -d.z;
        if drop < LEAST_DROP || level <= 0.0 {
            return None;
        }
        let slope = Angle::from_rise_run(drop, level).to_deg();
        let in_line = d.truncate().dot(toward) / level;
        let right_side = ask.side == 0.0 || in_line * ask.side > 0.0;
        let fits = (rules.least_slope_deg.value..=rules.most_slope_deg.value).contains(&slope);
        (fits && right_side && in_line.abs() >= IN_LINE).then(|| {
            let best = rules.best_slope_deg.value;
            (slope - best).abs() / best + 0.8 * (1.0 - in_line.abs()) + d.length() / METRES_OF_WORTH + extra
        })
    };
    let mut found: Option<Foot> = None;
    let mut offer = |on: Option<usize>, at: DVec3, extra: f64| {
        if let Some(score) = judge(at, extra).filter(|s| found.is_none_or(|f| *s < f.score)) {
            found = Some(Foot { on, at, score });
        }
    };
    for (k, t) in graph.timbers.iter().enumerate() {
        if k == ask.timber || !fixed.get(k).copied().unwrap_or(false) {
            continue;
        }
        let extra = match t.kind() {
            MemberKind::CeilingJoist => 0.0,
            MemberKind::WallPlate | MemberKind::SolePlate if t.on_wall => 0.1,
            // Only when there is neither plate nor joist.
            kind if is_rafter(kind) => 5.0,
            MemberKind::HipRafter | MemberKind::ValleyRafter => 5.0,
            _ => continue,
        };
        let top = if extra > 1.0 { 0.0 } else { height(graph, k) };
        let mut s = FROM_END;
        while s < t.length - FROM_END {
            offer(Some(k), t.under(s) + DVec3::Z * top, extra);
            s += TRY_EVERY;
        }
    }
    // The floor at the level of the plates, straight out.
    let level = plate_level(graph, head.truncate());
    let out = head.z - level;
    for side in [1.0, -1.0] {
        let plan = head.truncate() + toward * (side * out);
        if inside(graph, plan) {
            offer(None, plan.extend(level), 10.0);
        }
    }
    let foot = found?;
    let size = Size { thickness_mm: rules.thickness_mm.value, depth_mm: rules.width_mm.value };
    let to_mark = foot.on.and_then(|k| graph.timbers.get(k)).map_or(String::new(), |t| t.mark().to_owned());
    let d = foot.at - head;
    // Against the side of the timber when the brace comes at it, plumb and nailed to it when it runs past.
    let (flank, plan) = (heading.perp(), d.truncate().normalize_or_zero());
    let head_plane = if flank.dot(plan).abs() >= COMES_AT { flank } else { plan };
    Some(Brace {
        name,
        way: ask.way,
        from_mark: me.mark().to_owned(),
        from: head.to_array(),
        to_mark,
        to: foot.at.to_array(),
        length_mm: d.length(),
        slope_deg: Angle::from_rise_run(-d.z, d.truncate().length()).to_deg(),
        head_cut: cut(-d, head_plane.extend(0.0)),
        foot_cut: cut(-d, DVec3::Z),
        size,
    })
}

/// A brace is cut against the side of a timber when it is nearer to square to it than 60° in plan (cosine).
const COMES_AT: f64 = 0.5;
/// How many mm of brace weigh as much as 45° of slope in the choice of a footing: short braces are stiff ones.
const METRES_OF_WORTH: f64 = 8_000.0;

/// A cut's angles from square: its plane's normal in the axes of a brace that rises along `rise`, its width plumb.
fn cut(rise: DVec3, normal: DVec3) -> BraceCut {
    let along = rise.normalize_or_zero();
    let across = DVec3::Z.cross(along).normalize_or_zero();
    let up = along.cross(across);
    let (x, y, z) = (normal.dot(along).abs(), normal.dot(up), normal.dot(across));
    BraceCut {
        face_angle_deg: Angle::from_rise_run(y.abs(), x).to_deg(),
        edge_angle_deg: Angle::from_rise_run(z.abs(), x).to_deg(),
    }
}

/// Height of a timber's solid over its underside at the foot end, mm: the depth of one that lies level.
fn height(graph: &Graph<'_>, k: usize) -> f64 {
    let Some(t) = graph.timbers.get(k) else { return 0.0 };
    let top = t.member.solid.points.iter().map(|p| p[2]).fold(f64::NEG_INFINITY, f64::max);
    (top - t.origin.z).clamp(0.0, t.member.size.depth_mm.max(t.member.size.thickness_mm))
}

/// Height of the plate of the wall nearest to a place, mm.
pub fn plate_level(graph: &Graph<'_>, at: DVec2) -> f64 {
    let near = graph.job.walls.iter().enumerate().filter_map(|(k, w)| {
        let line = super::super::graph::wall_line(graph.job, k)?;
        Some((super::super::graph::off_segment(at, line), w.plate))
    });
    near.min_by(|a, b| a.0.total_cmp(&b.0)).map_or(0.0, |(_, plate)| plate)
}

/// Whether a place lies inside the plan.
pub fn inside(graph: &Graph<'_>, p: DVec2) -> bool {
    let mut odd = false;
    for ring in &graph.job.loops {
        for (a, b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
            if (a[1] > p.y) != (b[1] > p.y) && p.x < a[0] + (p.y - a[1]) / (b[1] - a[1]) * (b[0] - a[0]) {
                odd = !odd;
            }
        }
    }
    odd
}
