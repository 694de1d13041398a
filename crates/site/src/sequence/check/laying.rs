//! A timber that is let go lies where it is put.

use super::{Check, CheckFault};
use geometry::DVec3;

/// What holds a timber must be apart by this share of its length.
const APART: f64 = 0.15;
/// The centre of gravity may be this far outside of what holds it, as a share of the length: nails at the last hold.
const OUTSIDE: f64 = 0.02;

/// Whether a timber lies on what is fixed so far: on a wall; or at two places apart with its centre of gravity between
/// them; a short one, at one place; an upright, at its foot (its head is seen to at the end of the step).
pub fn lies(check: &Check<'_>, step: u32, k: usize) -> Result<(), CheckFault> {
    let falls = || CheckFault::Falls { step, mark: check.bars.mark(k) };
    let bar = check.bars.0.get(k).ok_or_else(falls)?;
    if bar.lies_on_wall {
        return Ok(());
    }
    let on = |other: Option<usize>| other.is_none_or(|o| check.fixed.get(o).copied().unwrap_or(false));
    let pins = bar.pins.iter().filter(|p| on(p.other)).map(|p| p.exact);
    let props = check.props.iter().filter_map(|p| check.sheet.props.get(*p)).filter(|p| p.under == bar.mark);
    let heads = props.map(|p| bar.station(DVec3::from_array(p.head)));
    let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
    for s in pins.chain(heads) {
        (low, high) = (low.min(s), high.max(s));
    }
    let slack = OUTSIDE * bar.length;
    let balanced = low - slack <= bar.weight_at && bar.weight_at <= high + slack;
    let hangs = bar.length <= super::bars::STUB && low <= high;
    let stands = bar.upright && low <= bar.weight_at;
    if (high - low >= APART * bar.length && balanced) || stands || hangs { Ok(()) } else { Err(falls()) }
}
