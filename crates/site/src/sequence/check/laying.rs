//! A timber that is let go lies where it is put.

use super::{Check, CheckFault};
use geometry::DVec3;

/// What holds a timber must be apart by this share of its length.
const APART: f64 = 0.15;
/// The centre of gravity may be this far outside of what holds it, as a share of the length: nails at the last hold.
const OUTSIDE: f64 = 0.02;

/// Whether a timber, or several lengths spliced before they are lifted, lies on what is fixed so far: on a wall; or at
/// two places apart with the centre of gravity between them; a short one, at one place; an upright, at its foot (its
/// head is seen to at the end of the step).
pub fn lies(check: &Check<'_>, step: u32, lengths: &[usize]) -> Result<(), CheckFault> {
    let Some(first) = lengths.first().and_then(|k| check.bars.0.get(*k)) else { return Ok(()) };
    let on = |other: Option<usize>| other.is_none_or(|o| check.fixed.get(o).copied().unwrap_or(false));
    let (mut low, mut high, mut length) = (f64::INFINITY, f64::NEG_INFINITY, 0.0_f64);
    let (mut weight, mut moment) = (0.0, 0.0);
    for bar in lengths.iter().filter_map(|k| check.bars.0.get(*k)) {
        let shift = (bar.start - first.start).dot(first.along);
        let pins = bar.pins.iter().filter(|p| on(p.other)).map(|p| p.exact);
        let props = check.props.iter().filter_map(|p| check.sheet.props.get(*p)).filter(|p| p.under == bar.mark);
        let heads = props.map(|p| bar.station(DVec3::from_array(p.head)));
        for s in pins.chain(heads) {
            (low, high) = (low.min(s + shift), high.max(s + shift));
        }
        length = length.max(bar.length + shift);
        weight += bar.volume;
        moment += bar.volume * (bar.weight_at + shift);
    }
    let middle = if weight > 0.0 { moment / weight } else { length / 2.0 };
    let slack = OUTSIDE * length;
    let balanced = high - low >= APART * length && low - slack <= middle && middle <= high + slack;
    let hangs = length <= super::bars::STUB && low <= high;
    let stands = first.upright && low <= middle;
    if first.lies_on_wall || balanced || hangs || stands {
        Ok(())
    } else {
        Err(CheckFault::Falls { step, mark: first.mark.clone() })
    }
}
