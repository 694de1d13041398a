//! Equilibrium, worked out from loads, reactions and end forces alone: nothing here knows of stiffness.

use super::frame::{Frame, Lie, Load};
use super::{Answer, FrameFault};

/// How far forces may be out of balance, as a share of the sum of the loads' sizes; moments as a share of that times
/// the size of the frame. Beyond it the answer is not given.
pub const BALANCE: f64 = 1e-6;

/// A force and its moment about a point, anticlockwise.
#[derive(Clone, Copy, Default)]
struct Sum {
    force: [f64; 2],
    moment: f64,
}

impl Sum {
    /// Add a force at a place, seen from the point that moments are taken about.
    fn add(&mut self, [x, y]: [f64; 2], [fx, fy]: [f64; 2], m: f64) {
        self.force[0] += fx;
        self.force[1] += fy;
        self.moment += x * fy - y * fx + m;
    }
}

/// The sum of the sizes of the loads, N; moments count as forces at the reach of the frame's size.
pub(super) fn loaded(loads: &[Load], lies: &[Lie], size: f64) -> f64 {
    let sizes = loads.iter().map(|load| match *load {
        Load::Node { fx, fy, m, .. } => fx.abs() + fy.abs() + m.abs() / size,
        Load::At { fx, fy, .. } => fx.abs() + fy.abs(),
        Load::Spread { bar, fx: [a, b], fy: [c, d] } => {
            lies[bar].length * (a.abs() + b.abs() + c.abs() + d.abs()) / 2.0
        }
        Load::Part { from_mm, to_mm, fx: [a, b], fy: [c, d], .. } => {
            (to_mm - from_mm) * (a.abs() + b.abs() + c.abs() + d.abs()) / 2.0
        }
    });
    sizes.sum()
}

/// Check the whole frame, each bar and each node.
pub(super) fn check(
    frame: &Frame,
    lies: &[Lie],
    loads: &[Load],
    answer: &Answer,
    case: usize,
) -> Result<(), FrameFault> {
    let size = frame.size();
    let origin = frame.nodes[frame.bars[0].from];
    let place = |node: usize| [frame.nodes[node].x - origin.x, frame.nodes[node].y - origin.y];
    let loaded = loaded(loads, lies, size);
    let mut whole = Sum::default();
    // Each bar about its own start; each node about itself.
    let mut bars = vec![Sum::default(); frame.bars.len()];
    let mut nodes = vec![Sum::default(); frame.nodes.len()];
    let spread = |bar: usize, [from, to]: [f64; 2], fx: [f64; 2], fy: [f64; 2], whole: &mut Sum, bars: &mut [Sum]| {
        let (along, run) = (lies[bar].along, to - from);
        let force = [run * (fx[0] + fx[1]) / 2.0, run * (fy[0] + fy[1]) / 2.0];
        // About where it begins: the integral of distance times force is run²(f + 2g)/6.
        let twist = run * run / 6.0 * (along[0] * (fy[0] + 2.0 * fy[1]) - along[1] * (fx[0] + 2.0 * fx[1]));
        let (start, arm) = (place(frame.bars[bar].from), along.map(|c| c * from));
        whole.add([start[0] + arm[0], start[1] + arm[1]], force, twist);
        bars[bar].add(arm, force, twist);
    };
    for load in loads {
        match *load {
            Load::Node { node, fx, fy, m } => {
                whole.add(place(node), [fx, fy], m);
                nodes[node].add([0.0; 2], [fx, fy], m);
            }
            Load::At { bar, at_mm, fx, fy } => {
                let start = place(frame.bars[bar].from);
                let arm = lies[bar].along.map(|c| c * at_mm);
                whole.add([start[0] + arm[0], start[1] + arm[1]], [fx, fy], 0.0);
                bars[bar].add(arm, [fx, fy], 0.0);
            }
            Load::Spread { bar, fx, fy } => spread(bar, [0.0, lies[bar].length], fx, fy, &mut whole, &mut bars),
            Load::Part { bar, from_mm, to_mm, fx, fy } => spread(bar, [from_mm, to_mm], fx, fy, &mut whole, &mut bars),
        }
    }
    for (bar, part) in frame.bars.iter().enumerate() {
        let forces = &answer.bars[bar];
        let lie = lies[bar];
        let reach = lie.along.map(|c| c * lie.length);
        for (node, arm, end) in [(part.from, [0.0; 2], forces.start), (part.to, reach, forces.end)] {
            let force = lie.out_of_bar([end[0], end[1]]);
            bars[bar].add(arm, force, end[2]);
            nodes[node].add([0.0; 2], force.map(|v| -v), -end[2]);
        }
    }
    for (support, reaction) in frame.supports.iter().zip(&answer.reactions) {
        let force = [reaction[0], reaction[1]];
        whole.add(place(support.node), force, reaction[2]);
        nodes[support.node].add([0.0; 2], force, reaction[2]);
    }
    let out = |sum: &Sum, what: &dyn Fn() -> String| {
        let by = (sum.force[0].abs() + sum.force[1].abs()).max(sum.moment.abs() / size);
        // Not a number is out of balance too.
        if by <= BALANCE * loaded {
            return Ok(());
        }
        Err(FrameFault::OutOfBalance { case, place: what(), by: by / loaded })
    };
    out(&whole, &|| "the whole frame".to_owned())?;
    for (bar, sum) in bars.iter().enumerate() {
        out(sum, &|| format!("bar {bar}"))?;
    }
    for (node, sum) in nodes.iter().enumerate() {
        out(sum, &|| format!("node {node}"))?;
    }
    Ok(())
}
