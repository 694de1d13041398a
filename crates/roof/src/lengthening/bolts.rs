//! Where the bolts of a splice go.

use super::form::Joint;
use super::proportions::BoltRules;
use super::types::Bolt;
use crate::solution::{BoltWay, SpliceForm};

/// Bolts of a long scarf stand about this far apart, in depths of the timber
/// (common practice).
const APART: f64 = 2.5;

/// Most bolts in one splice.
const MOST: usize = 8;

/// Free places are looked for in steps of this, mm.
const STEP: f64 = 5.0;

/// How many steps either way.
const TRIES: u32 = 40;

/// Distances are kept to within this, mm: rounding.
const ROUNDING: f64 = 1e-9;

/// Radius of a washer in diameters of its bolt (EN 1995-1-1 clause 10.4.3: at
/// least three diameters wide).
const WASHER: f64 = 1.5;

/// The bolts through a splice; `covered` are the parts of its length where
/// another timber lies on the sides that they come out of.
pub fn through(joint: &Joint, rules: &BoltRules, covered: &[[f64; 2]]) -> Vec<Bolt> {
    let [s, e] = joint.span();
    let c = joint.centre;
    let depth = joint.up[1] - joint.up[0];
    let pair = |from: f64, to: f64| {
        if to - from >= rules.along { vec![from, to] } else { vec![(from + to) / 2.0] }
    };
    let wanted: Vec<f64> = match joint.form {
        SpliceForm::HalfLap | SpliceForm::BoardSplay => return Vec::new(),
        SpliceForm::FishPlates => {
            let (near, far) = (pair(s + rules.end, c - rules.end), pair(c + rules.end, e - rules.end));
            near.into_iter().chain(far).collect()
        }
        SpliceForm::Splayed => {
            let (from, to) = (s + rules.end, e - rules.end);
            let gaps = (((to - from) / (APART * depth)).ceil() as usize).clamp(1, MOST - 1);
            (0..=gaps).map(|k| from + (to - from) * k as f64 / gaps as f64).collect()
        }
        SpliceForm::Hooked => {
            let key = joint.key() / 2.0;
            let third = |a: f64, b: f64| [a + (b - a) / 3.0, b - (b - a) / 3.0];
            third(s, c - key).into_iter().chain(third(c + key, e)).collect()
        }
    };
    let way = if joint.on_edge && joint.form != SpliceForm::FishPlates { BoltWay::Depth } else { BoltWay::Thickness };
    let mut along: Vec<f64> = Vec::with_capacity(wanted.len());
    for x in wanted {
        if joint.form == SpliceForm::FishPlates {
            along.push(x);
            continue;
        }
        let keep = WASHER * rules.diameter;
        let clear = |x: &f64| covered.iter().all(|[a, b]| *x <= a - keep || *x >= b + keep);
        let allowed = |x: &f64| {
            let apart = along.last().is_none_or(|last| x - last >= rules.along - ROUNDING);
            apart && *x >= s + rules.end - ROUNDING && *x <= e - rules.end + ROUNDING
        };
        let tries = || (0..TRIES).flat_map(|k| [x + STEP * f64::from(k), x - STEP * f64::from(k)]);
        // Where a board covers the whole side, heads and nuts are let in.
        let place = tries().find(|x| clear(x) && allowed(x)).or_else(|| tries().find(allowed));
        along.extend(place);
    }
    let [low, high] = joint.up;
    let inset = (depth / 3.0).max(rules.edge);
    // Staggered where the depth allows two rows.
    let rows = if depth - 2.0 * inset >= 0.0 && depth / 3.0 >= rules.across / 2.0 {
        [low + inset, high - inset]
    } else {
        [(low + high) / 2.0; 2]
    };
    let middle = (joint.across[0] + joint.across[1]) / 2.0;
    along
        .into_iter()
        .enumerate()
        .map(|(k, x)| {
            let up = if way == BoltWay::Depth { joint.height_at(x) } else { rows[k % 2] };
            let a = &joint.axes;
            Bolt { at: a.origin + a.along * x + a.up * up + a.across * middle, way, diameter: rules.diameter }
        })
        .collect()
}
