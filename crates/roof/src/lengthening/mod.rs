//! Timbers longer than the stock, made of lengths with splices between them.
//!
//! It comes last, when everything else is in place: a splice keeps clear of
//! other cuts, stands where the timber bends least, and not beside that of a
//! neighbour. Half of a timber is the timber with the other half's wood taken
//! out of it, so that both together are the whole one.

mod bolts;
mod faces;
mod fittings;
mod form;
mod out;
mod parting;
mod planning;
mod proportions;
mod spots;
mod telling;
mod types;

use crate::SolveError;
use crate::carcass::Carcass;
use crate::frame::timber::{Role, TimberId};
use crate::solution::MemberKind;
use geometry::surface::FaceId;
pub use out::{BoltOut, BoltWay, SpliceForm, SpliceOut, splices};
use planning::Plan;
pub use proportions::{BoltRules, Proportions, proportions};
use telling::Told;
pub use types::Lengthened;

/// A timber is too long when it is longer than the stock by more than this, mm:
/// rounding.
const LONGER: f64 = 1e-6;

/// Rafters nearer than this along the eaves stand at one station, mm.
const ONE_STATION: f64 = 1.0;

/// Splice every timber that is longer than the stock.
///
/// # Errors
/// When the stock is too short for the splices that a timber needs.
pub fn place(carcass: &mut Carcass<'_>) -> Result<(), SolveError> {
    let longest = carcass.job.timber.joint.longest;
    let long: Vec<TimberId> = carcass.built().map(|(id, _)| id).filter(|id| is_long(carcass, *id, longest)).collect();
    if long.is_empty() {
        return Ok(());
    }
    carcass.settle();
    let mut told = Told::default();
    for id in long {
        if carcass.timber(id).is_rafter() {
            continue;
        }
        let plan = planning::plan(carcass, id, &[])?;
        told.note(carcass, id, &plan);
        build(carcass, id, plan);
    }
    let mut station: Option<(FaceId, f64)> = None;
    let (mut here, mut beside): (Vec<f64>, Vec<f64>) = (Vec::new(), Vec::new());
    for (face, at, id) in rafters(carcass) {
        if station.is_none_or(|(f, a)| f != face || (at - a).abs() > ONE_STATION) {
            let next = station.is_some_and(|(f, _)| f == face);
            beside = if next { core::mem::take(&mut here) } else { Vec::new() };
            here.clear();
            station = Some((face, at));
        }
        if !is_long(carcass, id, longest) {
            continue;
        }
        let plan = planning::plan(carcass, id, &beside)?;
        told.note(carcass, id, &plan);
        here.extend(plan.middles(carcass.timber(id)));
        build(carcass, id, plan);
    }
    told.remark(carcass);
    Ok(())
}

/// Whether the wood of a timber is longer than the stock.
fn is_long(carcass: &Carcass<'_>, id: TimberId, longest: f64) -> bool {
    let timber = carcass.timber(id);
    let fitting = matches!(timber.kind, MemberKind::FishPlate | MemberKind::Wedge);
    let [from, to] = planning::reach(&timber.axes(), carcass.wood(id));
    !fitting && to - from > longest + LONGER
}

/// Rafters face by face in the order in which they stand.
fn rafters(carcass: &Carcass<'_>) -> Vec<(FaceId, f64, TimberId)> {
    let mut out: Vec<(FaceId, f64, TimberId)> = carcass
        .built()
        .filter_map(|(id, t)| {
            let Role::Rafter { face } = t.role else { return None };
            Some((face, -carcass.surface.face(face).plane.inward.perp().dot(t.foot), id))
        })
        .collect();
    out.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)).then(a.2.cmp(&b.2)));
    out
}

/// Cut the timber and add what holds its splices together.
fn build(carcass: &mut Carcass<'_>, id: TimberId, plan: Plan) {
    let wall = match carcass.timber(id).role {
        Role::Plate { wall } => Some(wall),
        Role::Fitted { wall } => wall,
        Role::Spine { .. } | Role::Rafter { .. } => None,
    };
    let around = parting::part(carcass, id, &plan.splices);
    for (planned, around) in plan.splices.iter().zip(&around) {
        match planned.joint.form {
            SpliceForm::FishPlates => {
                fittings::fish_plates(carcass, &planned.joint, around, plan.plate, wall, &planned.bolts);
            }
            SpliceForm::Hooked => fittings::wedges(carcass, &planned.joint, around, wall),
            SpliceForm::HalfLap | SpliceForm::Splayed | SpliceForm::BoardSplay => {}
        }
    }
}
