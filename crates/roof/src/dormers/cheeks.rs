//! The cheeks of a dormer: studs from the trimming rafters up.

use super::parts::{STUD_CENTRES, Site, cut_on, put, spaced};
use crate::carcass::Carcass;
use crate::fitted::beam::Beam;
use crate::frame::timber::Made;
use crate::solution::{CutPlace, MemberKind};
use geometry::DVec3;

/// A stud shorter than this is left out, mm: it would split when nailed.
const SHORTEST_STUD: f64 = 150.0;

/// Place the studs of one cheek, all of them `behind` a place. `top` gives the height up to which a stud can
/// stand at `y`; `head` cuts it there, and says which uncut face bears, if any.
pub fn studs(
    carcass: &mut Carcass<'_>,
    site: &Site<'_>,
    side: usize,
    behind: f64,
    top: &dyn Fn(f64) -> f64,
    head: &dyn Fn(&mut Beam) -> Option<Made>,
) {
    let l = site.layout;
    let Some(under) = site.under_cheek(side) else { return };
    let stud = site.stud();
    let half = stud.thickness / 2.0;
    // Behind the studs of the front, and clear of the sole plate.
    let first = (l.front + l.plate.depth).max(site.trimmed.hole.s[0] * l.slope.cos).max(behind) + half;
    let tall = |y: f64| top(y) - l.over_main(y + half, 0.0) >= SHORTEST_STUD;
    // The cheek runs out where its roof comes down on the main rafters.
    let run_out = last_tall(first, &tall);
    let Some(last) = run_out else { return };
    for y in spaced(first, last, STUD_CENTRES) {
        let reach = [l.over_main(y - half, 0.0), top(y)];
        let origin = l.point(l.in_cheek(side, 0.0), y, 0.0);
        let mut beam = site.beam(MemberKind::Stud, stud, origin, [DVec3::Z, l.cheek_inward(side)], reach);
        cut_on(&mut beam, l.on_main(0.0), under, CutPlace::Foot);
        let bears = head(&mut beam);
        put(carcass, beam, bears.as_slice());
    }
}

/// The farthest place at which a stud is tall enough, to the nearest mm; the
/// height falls steadily inwards.
fn last_tall(first: f64, tall: &dyn Fn(f64) -> bool) -> Option<f64> {
    if !tall(first) {
        return None;
    }
    let mut step = 1.0;
    while tall(first + step) && step < FARTHEST {
        step *= 2.0;
    }
    let (mut near, mut far) = (first, first + step);
    while far - near > 1.0 {
        let middle = (near + far) / 2.0;
        if tall(middle) { near = middle } else { far = middle }
    }
    Some(near)
}

/// No cheek is longer than this, mm.
const FARTHEST: f64 = 65_536.0;

#[cfg(test)]
mod tests {
    use super::last_tall;

    #[test]
    fn a_cheek_runs_out_where_its_studs_get_short() {
        let at = last_tall(100.0, &|y| y < 1234.5).expect("the first is tall");
        assert!((1233.0..1234.5).contains(&at));
        assert_eq!(last_tall(100.0, &|y| y < 50.0), None);
    }
}
