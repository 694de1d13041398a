//! Which way a frame that does not stand can move.

use super::fault::{FrameFault, Way};
use nalgebra::{DMatrix, SymmetricEigen};

/// Sweeps after which the search for the loosest movement gives up.
const SWEEPS: usize = 10_000;
/// A shift counts beside a turn when it is more than this share of turn times size of the frame.
const SHIFT_COUNTS: f64 = 1e-6;

/// The movement that strains a frame least, given its scaled stiffness; empty when it cannot be found.
pub(super) fn loosest(scaled: DMatrix<f64>) -> Vec<f64> {
    let Some(modes) = SymmetricEigen::try_new(scaled, f64::EPSILON, SWEEPS) else { return Vec::new() };
    let least = modes.eigenvalues.imin();
    modes.eigenvectors.column(least).iter().copied().collect()
}

/// The fault of a frame whose nodes can move so: the node and way of the largest movement.
pub(super) fn fault(moved: &[[f64; 3]], size: f64) -> FrameFault {
    let most = |way: usize| {
        moved
            .iter()
            .enumerate()
            .map(|(node, v)| (node, v[way].abs()))
            .fold((0, 0.0), |best, next| if next.1 > best.1 { next } else { best })
    };
    let (sideways, up, turn) = (most(0), most(1), most(2));
    let (node, way) = if sideways.1.max(up.1) <= SHIFT_COUNTS * turn.1 * size {
        (turn.0, Way::Turning)
    } else if sideways.1 >= up.1 {
        (sideways.0, Way::Sideways)
    } else {
        (up.0, Way::UpAndDown)
    };
    FrameFault::Mechanism { node, way }
}

/// A moment on a node where every bar is hinged.
pub(super) const fn turning(node: usize) -> FrameFault {
    FrameFault::Mechanism { node, way: Way::Turning }
}
