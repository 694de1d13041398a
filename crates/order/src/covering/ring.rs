//! Rings in the measure of a slope: `x` along the wall, `y` up the slope, mm.

use geometry::DVec2;

/// Twice-signed area halved: positive anticlockwise, mm².
pub fn area(ring: &[DVec2]) -> f64 {
    let Some(&o) = ring.first() else { return 0.0 };
    ring.windows(2).map(|w| (w[0] - o).perp_dot(w[1] - o)).sum::<f64>() / 2.0
}

/// What of a ring lies on the side of a line where `side × (coordinate − at)` is positive. A ring that falls apart
/// keeps its parts joined along the line: its area is right.
fn kept(ring: &[DVec2], coordinate: impl Fn(DVec2) -> f64, at: f64, side: f64) -> Vec<DVec2> {
    let mut out = Vec::with_capacity(ring.len() + 2);
    let off = |p: DVec2| side * (coordinate(p) - at);
    for (k, &a) in ring.iter().enumerate() {
        let b = ring[(k + 1) % ring.len()];
        let (da, db) = (off(a), off(b));
        if da >= 0.0 {
            out.push(a);
        }
        if (da > 0.0 && db < 0.0) || (da < 0.0 && db > 0.0) {
            out.push(a + (b - a) * (da / (da - db)));
        }
    }
    out
}

/// What of a ring lies between two heights.
pub fn band(ring: &[DVec2], low: f64, high: f64) -> Vec<DVec2> {
    kept(&kept(ring, |p| p.y, low, 1.0), |p| p.y, high, -1.0)
}

/// What of a ring lies between two uprights.
pub fn upright(ring: &[DVec2], low: f64, high: f64) -> Vec<DVec2> {
    kept(&kept(ring, |p| p.x, low, 1.0), |p| p.x, high, -1.0)
}

/// Where a level line at a height runs inside a ring: from and to, in order.
pub fn level(ring: &[DVec2], at: f64) -> Vec<[f64; 2]> {
    let mut cuts: Vec<f64> = Vec::new();
    for (k, &a) in ring.iter().enumerate() {
        let b = ring[(k + 1) % ring.len()];
        if (a.y <= at) != (b.y <= at) {
            cuts.push(a.x + (b.x - a.x) * ((at - a.y) / (b.y - a.y)));
        }
    }
    cuts.sort_by(f64::total_cmp);
    cuts.chunks_exact(2).map(|pair| [pair[0], pair[1]]).collect()
}

/// How much of a level line lies inside a ring and outside its holes, mm.
pub fn level_length(ring: &[DVec2], holes: &[Vec<DVec2>], at: f64) -> f64 {
    let sum = |ring: &[DVec2]| level(ring, at).iter().map(|[a, b]| b - a).sum::<f64>();
    (sum(ring) - holes.iter().map(|hole| sum(hole)).sum::<f64>()).max(0.0)
}

/// The longest level line inside a ring between two heights, and the parts that it has there, mm.
pub fn widest(ring: &[DVec2], low: f64, high: f64) -> (f64, usize) {
    /// A line is read this far beside a corner, mm: it says on which side.
    const BESIDE: f64 = 1e-3;
    let inside = ring.iter().flat_map(|p| [p.y - BESIDE, p.y + BESIDE]).filter(|y| *y > low && *y < high);
    [low + BESIDE, high - BESIDE].into_iter().chain(inside).fold((0.0, 0), |best, at| {
        let parts = level(ring, at);
        let length = parts.iter().map(|[a, b]| b - a).sum::<f64>();
        if length > best.0 { (length, parts.len()) } else { best }
    })
}

/// Lowest and highest of a ring.
pub fn heights(ring: &[DVec2]) -> [f64; 2] {
    ring.iter().fold([f64::INFINITY, f64::NEG_INFINITY], |[a, b], p| [a.min(p.y), b.max(p.y)])
}

/// What of a stretch lies between two heights and two uprights.
pub fn stretch([a, b]: [DVec2; 2], low: DVec2, high: DVec2) -> Option<[DVec2; 2]> {
    let d = b - a;
    let (mut from, mut to) = (0.0_f64, 1.0_f64);
    for (start, step, min, max) in [(a.x, d.x, low.x, high.x), (a.y, d.y, low.y, high.y)] {
        if step == 0.0 {
            if !(start >= min && start <= max) {
                return None;
            }
            continue;
        }
        let (p, q) = ((min - start) / step, (max - start) / step);
        from = from.max(p.min(q));
        to = to.min(p.max(q));
    }
    (from <= to).then(|| [a + d * from, a + d * to])
}
