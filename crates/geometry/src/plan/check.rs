//! Every fault of a plan at once, each with its place.

use super::crossing::{crossings, walls_of};
use super::lattice::{Knot, inside, twice_area};
use super::{GRID, MOST_CROSSINGS, SHORTEST_WALL};
use crate::{CornerRef, DVec2, PlanFault};

/// Everything that is wrong with a plan: loop 0 is the outer one. An empty
/// list means that a roof can be asked for.
///
/// Corners are compared on a grid of [`GRID`], where the tests are exact.
/// Loops with corners that are no place are left out of the other tests, and
/// loops that cross are left out of the tests of inside and outside, whose
/// answers would mean nothing.
///
/// ```
/// use geometry::{DVec2, PlanFault, plan};
/// let bow_tie = [[0.0, 0.0], [4000.0, 3000.0], [4000.0, 0.0], [0.0, 3000.0]].map(DVec2::from_array).to_vec();
/// assert!(plan::check(&[bow_tie]).iter().any(|fault| matches!(fault, PlanFault::WallsCross { .. })));
/// ```
#[must_use]
pub fn check(loops: &[Vec<DVec2>]) -> Vec<PlanFault> {
    let mut faults = Vec::new();
    if loops.is_empty() {
        faults.push(PlanFault::TooFewCorners { ring: 0, corners: 0 });
    }
    let rings: Vec<Vec<Knot>> = loops.iter().enumerate().map(|(ring, l)| knots(ring, l, &mut faults)).collect();
    for (ring, corners) in rings.iter().enumerate() {
        short_walls(ring, corners, &mut faults);
    }
    let walls: Vec<_> = rings.iter().enumerate().flat_map(|(ring, corners)| walls_of(ring, corners)).collect();
    let crossed = crossings(&walls, MOST_CROSSINGS);
    faults.extend(crossed.iter().map(|&(first, second)| PlanFault::WallsCross { first, second }));
    let clean = |ring: usize| {
        rings.get(ring).is_some_and(|r| r.len() >= 3) && !crossed.iter().any(|(a, b)| a.ring == ring || b.ring == ring)
    };
    for (ring, corners) in rings.iter().enumerate().filter(|&(ring, _)| clean(ring)) {
        let area = twice_area(corners);
        if area != 0 && (area > 0) != (ring == 0) {
            faults.push(PlanFault::WrongWayRound { ring });
        }
    }
    misplaced_courtyards(&rings, clean, &mut faults);
    faults
}

/// A loop on the grid; empty when it cannot be tested any further.
fn knots(ring: usize, corners: &[DVec2], faults: &mut Vec<PlanFault>) -> Vec<Knot> {
    if corners.len() < 3 {
        faults.push(PlanFault::TooFewCorners { ring, corners: corners.len() });
        return Vec::new();
    }
    let before = faults.len();
    let mut knots = Vec::with_capacity(corners.len());
    for (corner, &p) in corners.iter().enumerate() {
        match Knot::of(p) {
            Some(knot) => knots.push(knot),
            None => faults.push(PlanFault::NotAPlace { at: CornerRef { ring, corner } }),
        }
    }
    if faults.len() > before { Vec::new() } else { knots }
}

fn short_walls(ring: usize, corners: &[Knot], faults: &mut Vec<PlanFault>) {
    let next = corners.iter().cycle().skip(1);
    for (corner, (a, b)) in corners.iter().zip(next).enumerate() {
        let length = a.distance(*b) * GRID;
        if a == b {
            let repeated = if corner + 1 == corners.len() { 0 } else { corner + 1 };
            faults.push(PlanFault::RepeatedCorner { at: CornerRef { ring, corner: repeated } });
        } else if length < SHORTEST_WALL {
            let at = CornerRef { ring, corner };
            faults.push(PlanFault::WallTooShort { at, length, shortest: SHORTEST_WALL });
        }
    }
}

/// Loops that do not cross are inside one another with all their corners or
/// with none, so that one corner of each tells.
fn misplaced_courtyards(rings: &[Vec<Knot>], clean: impl Fn(usize) -> bool, faults: &mut Vec<PlanFault>) {
    let Some((outer, courtyards)) = rings.split_first() else { return };
    for (k, courtyard) in courtyards.iter().enumerate().filter(|&(k, _)| clean(k + 1)) {
        let Some(&corner) = courtyard.first() else { continue };
        let outside = clean(0) && !inside(outer, corner);
        let nested =
            courtyards.iter().enumerate().any(|(other, ring)| other != k && clean(other + 1) && inside(ring, corner));
        if outside || nested {
            faults.push(PlanFault::CourtyardOutside { ring: k + 1 });
        }
    }
}

#[cfg(test)]
mod tests {
    use super::check;
    use crate::{CornerRef, DVec2, PlanFault};

    fn ring(corners: &[[f64; 2]]) -> Vec<DVec2> {
        corners.iter().map(|&c| DVec2::from_array(c)).collect()
    }

    const HOUSE: [[f64; 2]; 4] = [[0.0, 0.0], [9000.0, 0.0], [9000.0, 6000.0], [0.0, 6000.0]];

    #[test]
    fn a_house_with_a_courtyard_is_clean() {
        let yard = ring(&[[3000.0, 2000.0], [3000.0, 4000.0], [6000.0, 4000.0], [6000.0, 2000.0]]);
        assert_eq!(check(&[ring(&HOUSE), yard]), vec![]);
    }

    #[test]
    fn faults_are_all_named_with_their_places() {
        let at = |ring, corner| CornerRef { ring, corner };
        assert_eq!(check(&[]), vec![PlanFault::TooFewCorners { ring: 0, corners: 0 }]);
        let lost = ring(&[[0.0, 0.0], [f64::NAN, 0.0], [1.0, 2e6]]);
        assert_eq!(check(&[lost]), vec![PlanFault::NotAPlace { at: at(0, 1) }, PlanFault::NotAPlace { at: at(0, 2) }]);
        let mut turned = HOUSE;
        turned.reverse();
        assert_eq!(check(&[ring(&turned)]), vec![PlanFault::WrongWayRound { ring: 0 }]);
        let crossed = ring(&[[0.0, 0.0], [9000.0, 0.0], [0.0, 6000.0], [9000.0, 6000.0]]);
        assert_eq!(check(&[crossed]), vec![PlanFault::WallsCross { first: at(0, 1), second: at(0, 3) }]);
        let short = ring(&[[0.0, 0.0], [9000.0, 0.0], [9000.0, 6000.0], [20.0, 6000.0], [0.0, 6000.0]]);
        assert!(matches!(check(&[short])[..], [PlanFault::WallTooShort { at: CornerRef { ring: 0, corner: 3 }, .. }]));
        let twice = ring(&[[0.0, 0.0], [9000.0, 0.0], [9000.0, 0.0], [9000.0, 6000.0], [0.0, 6000.0], [0.0, 0.0]]);
        assert_eq!(
            check(&[twice]),
            vec![PlanFault::RepeatedCorner { at: at(0, 2) }, PlanFault::RepeatedCorner { at: at(0, 0) }]
        );
    }

    #[test]
    fn courtyards_lie_inside_and_not_in_one_another() {
        let yard =
            |x: f64, size: f64| ring(&[[x, 1000.0], [x, 1000.0 + size], [x + size, 1000.0 + size], [x + size, 1000.0]]);
        assert_eq!(check(&[ring(&HOUSE), yard(20_000.0, 1000.0)]), vec![PlanFault::CourtyardOutside { ring: 1 }]);
        let nested = ring(&[[1500.0, 1500.0], [1500.0, 2000.0], [2000.0, 2000.0], [2000.0, 1500.0]]);
        assert_eq!(check(&[ring(&HOUSE), yard(1000.0, 3000.0), nested]), vec![PlanFault::CourtyardOutside { ring: 2 }]);
    }

    #[test]
    fn a_spike_that_folds_back_is_a_crossing() {
        let spike = ring(&[[0.0, 0.0], [9000.0, 0.0], [9000.0, 6000.0], [9000.0, 3000.0], [0.0, 6000.0]]);
        let at = |corner| CornerRef { ring: 0, corner };
        // The fold itself, and the wall after it, which starts on the other.
        let crossings = [(1, 2), (1, 3)].map(|(a, b)| PlanFault::WallsCross { first: at(a), second: at(b) });
        assert_eq!(check(&[spike]), crossings);
    }
}
