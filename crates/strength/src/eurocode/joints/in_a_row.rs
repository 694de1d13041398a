//! Several fasteners one behind another along the grain carry less than their number: EN 1995-1-1 8.3.1.1(8), 8.5.1.1(4).

use crate::annex::joints::Joints;
use crate::working::Working;
use geometry::Angle;

/// `k_ef` of nails that stand `spacing_d` diameters apart: table 8.1, straight between its rows. Below 7d (bored: 4d) the
/// table has no figure; 0 is given, that is: they count as one.
#[must_use]
pub fn k_ef(spacing_d: f64, bored: bool, annex: &Joints) -> f64 {
    let r = &annex.in_a_row;
    let mut rows = vec![(r.nail_far_d.value, r.nail_far.value), (r.nail_middle_d.value, r.nail_middle.value)];
    rows.push((r.nail_near_d.value, r.nail_near.value));
    if bored {
        rows.push((r.nail_bored_d.value, r.nail_bored.value));
    }
    // A spacing of 10d that was worked out as 9.9999999 is 10d.
    const HAIR: f64 = 1e-9;
    let spacing_d = spacing_d + HAIR;
    if spacing_d >= rows[0].0 {
        return rows[0].1;
    }
    for pair in rows.windows(2) {
        let ((far, at_far), (near, at_near)) = (pair[0], pair[1]);
        if spacing_d >= near {
            return at_near + (at_far - at_near) * (spacing_d - near) / (far - near);
        }
    }
    0.0
}

/// `n_ef = n^k_ef` of `count` nails in a row along the grain (8.17). Nails staggered across the grain by at least 1d all
/// count.
pub fn nails(count: u32, spacing_d: f64, bored: bool, staggered: bool, annex: &Joints, w: &mut Working) -> f64 {
    let count = f64::from(count);
    if staggered || count <= 1.0 {
        return w
            .line("nails that count n_ef", count, "", "EN 1995-1-1 8.3.1.1(8)", || "each in a line of its own".into());
    }
    let power = k_ef(spacing_d, bored, annex);
    let value = libm::pow(count, power);
    w.line("nails that count n_ef", value, "", "EN 1995-1-1 8.17", || {
        format!("{count}^{power:.3}, {spacing_d:.1} d apart")
    })
}

/// `n_ef` of `count` bolts in a row along the grain, `spacing_mm` apart, for a force at `angle_deg` to the grain (8.34): the
/// least of n and `n^0.9 (a1 / 13d)^0.25` along the grain, n across it, straight between.
pub fn bolts(count: u32, spacing_mm: f64, diameter_mm: f64, angle_deg: f64, annex: &Joints, w: &mut Working) -> f64 {
    let r = &annex.in_a_row;
    let n = f64::from(count);
    if n <= 1.0 {
        return n;
    }
    let apart = spacing_mm / (r.bolt_far_d.value * diameter_mm);
    let along = (libm::pow(n, r.bolt_power.value) * libm::pow(apart.max(0.0), r.bolt_root.value)).min(n);
    let along = if along.is_finite() { along.max(1.0) } else { 1.0 };
    // The angle itself, folded into 0 to 90 through its sine so that any input gives a share of 0 to 1.
    let share = Angle::from_sin(Angle::deg(angle_deg).sin().abs()).to_deg() / 90.0;
    let value = along + (n - along) * share.clamp(0.0, 1.0);
    w.line("bolts that count n_ef", value, "", "EN 1995-1-1 8.34", || {
        format!(
            "{n}^{} × ({spacing_mm:.0} / ({} × {diameter_mm}))^{}, no more than {n}",
            r.bolt_power.value, r.bolt_far_d.value, r.bolt_root.value
        )
    })
}
