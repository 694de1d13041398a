//! Any bytes as a plan with a pitch for every wall.

use geometry::DVec2;
use geometry::surface::{WallProfile, check, solve};

/// Most corners of a plan made from bytes: enough for every kind of event,
/// few enough that a fuzzer tries many plans in a second.
pub const MOST_CORNERS: usize = 40;
/// Bytes of one corner: two coordinates of 16 bits, low byte first, and the
/// pitch of the wall that starts there.
pub const CORNER_BYTES: usize = 5;
/// Step between pitches, degrees: bytes 1 to 255 reach from 5° to 80° and a
/// little past both ends, so that refused pitches are tried too.
const PITCH_STEP: f64 = 0.33;
/// Pitch below byte 1, degrees.
const PITCH_BASE: f64 = 4.0;

/// Makes a plan of one loop from bytes and solves its roof surface: either a
/// surface that passes its check, or an error. Coordinates are whole mm, the
/// pitch byte 0 is a gable. A clockwise loop is turned round first, so that
/// half of all inputs are not refused at the door. Returns whether a roof was
/// made.
///
/// # Panics
/// When a surface is returned that does not pass its check.
pub fn plan(bytes: &[u8]) -> bool {
    let corners = bytes.chunks_exact(CORNER_BYTES).take(MOST_CORNERS);
    let mut corners: Vec<(DVec2, WallProfile)> = corners.filter_map(corner).collect();
    let doubled_area: f64 = (0..corners.len()).map(|k| turn(&corners, k)).sum();
    if doubled_area < 0.0 {
        corners.reverse();
    }
    let (places, profiles): (Vec<DVec2>, Vec<WallProfile>) = corners.into_iter().unzip();
    match solve(&[places], &profiles) {
        Ok(surface) => {
            let faults = check(&surface, &profiles).err();
            assert!(faults.is_none(), "a surface does not pass its check: {faults:?}");
            true
        }
        Err(_) => false,
    }
}

fn corner(bytes: &[u8]) -> Option<(DVec2, WallProfile)> {
    let &[x0, x1, y0, y1, pitch] = bytes else { return None };
    let place = DVec2::new(i16::from_le_bytes([x0, x1]).into(), i16::from_le_bytes([y0, y1]).into());
    let profile = match pitch {
        0 => WallProfile::gable(0.0),
        step => WallProfile::slope(0.0, PITCH_BASE + PITCH_STEP * f64::from(step)),
    };
    Some((place, profile))
}

/// Twice the signed area of the triangle of the datum, corner `k` and the next.
fn turn(corners: &[(DVec2, WallProfile)], k: usize) -> f64 {
    let next = (k + 1) % corners.len();
    match (corners.get(k), corners.get(next)) {
        (Some((a, _)), Some((b, _))) => a.perp_dot(*b),
        _ => 0.0,
    }
}
