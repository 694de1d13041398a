//! Whether a hole is clear of all timber, from the document alone.

use job::{Distance, Job, Opening, OpeningKind};
use roof::solution::Solution;

/// Wood may touch the side of a hole, mm.
const TOUCH: f64 = 0.01;

/// Edges of timbers are looked at this often, mm.
const STEP: f64 = 15.0;

/// Points along every edge of every timber.
fn edge_points(s: &Solution) -> impl Iterator<Item = (&str, [f64; 3])> {
    s.members.iter().flat_map(|m| {
        m.solid.faces.iter().flat_map(move |ring| {
            (0..ring.len()).flat_map(move |k| {
                let a = m.solid.points[ring[k] as usize];
                let b = m.solid.points[ring[(k + 1) % ring.len()] as usize];
                let length = (0..3).map(|i| (b[i] - a[i]).powi(2)).sum::<f64>().sqrt();
                let count = (length / STEP).ceil().max(1.0);
                (0..=count as usize).map(move |j| {
                    let t = j as f64 / count;
                    (m.mark.as_str(), core::array::from_fn(|i| a[i] + (b[i] - a[i]) * t))
                })
            })
        })
    })
}

fn sub(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    core::array::from_fn(|i| a[i] - b[i])
}

fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    (0..3).map(|i| a[i] * b[i]).sum()
}

/// No timber reaches into the hole of an opening, square to the slope.
pub fn assert_hole_clear(job: &Job, s: &Solution, opening: &Opening) {
    let out = s.openings.iter().find(|o| o.name == opening.name).expect("every opening is in the document");
    let [o, b, _, d] = out.outline;
    let (along, up) = (sub(b, o), sub(d, o));
    let (w, h) = (dot(along, along).sqrt(), dot(up, up).sqrt());
    let square: [f64; 3] = core::array::from_fn(|i| {
        let (j, k) = ((i + 1) % 3, (i + 2) % 3);
        along[j] * up[k] - along[k] * up[j]
    });
    let depth = job.timber.rafter.size.depth;
    let inside = |p: [f64; 3]| {
        let v = sub(p, o);
        let (x, y) = (dot(v, along) / w, dot(v, up) / h);
        // From the tops of the rafters down to their undersides.
        let deep = -(0..3).map(|i| v[i] * square[i]).sum::<f64>() / (w * h);
        x > TOUCH && x < w - TOUCH && y > TOUCH && y < h - TOUCH && deep > -TOUCH && deep < depth + TOUCH
    };
    for (mark, p) in edge_points(s) {
        assert!(
            !inside(p),
            "{mark} reaches into {} at {p:?} {:?} {opening:?} {:?}",
            opening.name,
            out.outline,
            job.eaves
        );
    }
}

/// Nor, for a chimney, into the upright space that the stack and its clearance
/// take.
pub fn assert_clear(job: &Job, s: &Solution, opening: &Opening) {
    assert_hole_clear(job, s, opening);
    if opening.kind != OpeningKind::Chimney {
        return;
    }
    let wall = &s.plan.walls[opening.wall];
    let (from, to) = (wall.from, wall.to);
    let length = wall.length_mm;
    let dir = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
    let pitch = geometry::Angle::deg(wall.pitch_deg.expect("a sloping wall"));
    let up = match opening.up {
        Distance::Plan(up) => up,
        Distance::Slope(up) => up * pitch.cos(),
    };
    let clear = opening.flue_wall.map_or(40.0, |w| 40.0_f64.min((200.0 - w).max(0.0)));
    for (mark, p) in edge_points(s) {
        let v = [p[0] - from[0], p[1] - from[1]];
        let (x, y) = (v[0] * dir[0] + v[1] * dir[1], v[1] * dir[0] - v[0] * dir[1]);
        let within = x > opening.along - clear + TOUCH
            && x < opening.along + opening.width + clear - TOUCH
            && y > up - clear + TOUCH
            && y < up + opening.height + clear - TOUCH;
        assert!(!within, "{mark} is too near the stack of {} at {p:?}", opening.name);
    }
}
