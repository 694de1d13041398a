//! Props, braces and diagonals are where they say, and stand on what is there.

use super::bars::Bar;
use super::{Check, CheckFault};
use geometry::DVec3;

/// How far a point may be off the line of the timber that it is on, beyond the timber's own girth, mm.
const REACH: f64 = 60.0;
/// Lengths on the sheet agree with its points within this, mm.
const SAME: f64 = 0.01;

fn on(bar: &Bar, p: DVec3) -> bool {
    bar.distance(p) <= bar.girth + REACH
}

fn misplaced(step: u32, name: &str, from: &str) -> CheckFault {
    CheckFault::Misplaced { step, name: name.to_owned(), from: from.to_owned() }
}

/// A prop: plumb, its head on its timber's underside, its height that between its ends.
pub fn prop(check: &Check<'_>, step: u32, k: usize) -> Result<(), CheckFault> {
    let Some(prop) = check.sheet.props.get(k) else { return Ok(()) };
    let wrong = || misplaced(step, &prop.name, &prop.under);
    let bar = check.by_mark.get(prop.under.as_str()).and_then(|m| check.bars.0.get(*m)).ok_or_else(wrong)?;
    let (foot, head) = (DVec3::from_array(prop.foot), DVec3::from_array(prop.head));
    let plumb = (foot - head).truncate().length() < SAME;
    let high = (head.z - foot.z - prop.height_mm).abs() < SAME && prop.height_mm > 0.0;
    if plumb && high && bar.distance(head) < SAME { Ok(()) } else { Err(wrong()) }
}

/// A brace: its head on its timber, its foot on a fixed timber or the floor, as long as it says.
pub fn brace(check: &Check<'_>, step: u32, k: usize) -> Result<(), CheckFault> {
    let Some(brace) = check.sheet.braces.get(k) else { return Ok(()) };
    let wrong = || misplaced(step, &brace.name, &brace.from_mark);
    let (head, foot) = (DVec3::from_array(brace.from), DVec3::from_array(brace.to));
    let fixed = |mark: &str, p: DVec3| {
        let k = check.by_mark.get(mark).copied();
        k.is_some_and(|k| check.fixed.get(k).copied().unwrap_or(false) && check.bars.0.get(k).is_some_and(|b| on(b, p)))
    };
    let long = (head.distance(foot) - brace.length_mm).abs() < SAME;
    let footed = brace.to_mark.is_empty() || fixed(&brace.to_mark, foot);
    if long && footed && fixed(&brace.from_mark, head) { Ok(()) } else { Err(wrong()) }
}

/// A diagonal: nailed where it says to timbers that are fixed.
pub fn racking(check: &Check<'_>, step: u32, k: usize) -> Result<(), CheckFault> {
    let Some(piece) = check.sheet.permanent.get(k) else { return Ok(()) };
    for nailed in &piece.nailed {
        let wrong = || misplaced(step, &piece.name, &nailed.mark);
        let k = *check.by_mark.get(nailed.mark.as_str()).ok_or_else(wrong)?;
        let there = check.bars.0.get(k).is_some_and(|b| on(b, DVec3::from_array(nailed.at)));
        if !there || !check.fixed.get(k).copied().unwrap_or(false) {
            return Err(wrong());
        }
    }
    Ok(())
}
