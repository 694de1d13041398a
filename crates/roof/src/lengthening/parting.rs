//! One timber made into its lengths.

use super::faces::{area_on, flats, flats_near};
use super::fittings::start_of;
use super::form::{Around, Joint, WEDGE_TAPER};
use super::types::{Bolt, Lengthened, Splice};
use crate::carcass::{Carcass, bounds_of};
use crate::frame::timber::{Body, EndOn, Made, Timber, TimberId};
use crate::solution::{CutPlace, SpliceForm};
use geometry::{Cell, HalfPlan, Plane};

/// Least area of a contact that is worth declaring, mm²: the check of the frame
/// sees no less.
const LEAST_CONTACT: f64 = 2.0;

/// A splice with its bolts.
pub struct Planned {
    /// The joint.
    pub joint: Joint,
    /// Its bolts, from the foot.
    pub bolts: Vec<Bolt>,
}

/// Make a timber into lengths at these splices, in their order from the foot,
/// and let everything that touched it name the length that it touches. The
/// length at the foot keeps the timber's id. Gives back who stands around each
/// splice; the ids of the fittings are those that will be added next.
pub fn part(carcass: &mut Carcass<'_>, id: TimberId, splices: &[Planned]) -> Vec<Around> {
    let old = carcass.timber(id).clone();
    let wood = carcass.wood(id).to_vec();
    let next = carcass.next_id().0;
    let count = splices.len() as u32;
    let ids: Vec<TimberId> = core::iter::once(id).chain((0..count).map(|k| TimberId(next + k))).collect();
    let around: Vec<Around> = (0..count)
        .map(|k| Around {
            halves: [ids[k as usize], ids[k as usize + 1]],
            fittings: [TimberId(next + count + 2 * k), TimberId(next + count + 2 * k + 1)],
        })
        .collect();
    for (part, piece_id) in ids.iter().enumerate() {
        let mut piece = length_of(&old, &ids, part, splices);
        let mut cells = wood.clone();
        let below = part.checked_sub(1).map(|k| (k, false));
        let above = (part < splices.len()).then_some((part, true));
        for (k, foot) in below.into_iter().chain(above) {
            for notch in splices[k].joint.holes(foot, &around[k]) {
                let hole: Vec<(Plane, Made)> =
                    notch.faces.iter().map(|f| (f.plane, piece.tag(f.purpose, f.at))).collect();
                cells = geometry::carve(&cells, &hole, Made::Inner);
            }
        }
        if let Body::Fitted { cells: own, .. } = &mut piece.body {
            own.clone_from(&cells);
        }
        if part == 0 {
            *carcass.timber_mut(id) = piece;
        } else {
            carcass.add(piece);
        }
        carcass.set_wood(*piece_id, cells);
    }
    declare(carcass, &ids, &wood);
    around
}

/// One length of a timber; its wood is not yet cut.
fn length_of(old: &Timber, ids: &[TimberId], part: usize, splices: &[Planned]) -> Timber {
    let axes = old.axes();
    let [from, to] = old.line();
    let [x0, x1] = [axes.point(from).x, axes.point(to).x];
    let on_line = |x: f64| from + (to - from) * ((x - x0) / (x1 - x0));
    let below = part.checked_sub(1).and_then(|k| splices.get(k));
    let above = splices.get(part);
    let foot = below.map_or(from, |s| on_line(s.joint.ends_of_wood()[0]));
    let head = above.map_or(to, |s| on_line(s.joint.ends_of_wood()[1]));
    let mut piece = old.clone();
    piece.foot = foot.truncate();
    piece.base = foot.z;
    piece.run = (head - foot).truncate().length();
    if below.is_some() {
        piece.ends[0] = EndOn::Bare;
        piece.tails.clear();
        piece.seat = None;
        piece.over_verge[0] = false;
        piece.footprint = piece.footprint.clipped(HalfPlan::through(foot.truncate(), -old.dir), Made::End(false));
    }
    if above.is_some() {
        piece.ends[1] = EndOn::Bare;
        piece.at_joint = None;
        piece.over_verge[1] = false;
        piece.footprint = piece.footprint.clipped(HalfPlan::through(head.truncate(), old.dir), Made::End(true));
    }
    if let Body::Fitted { line, .. } = &mut piece.body {
        *line = [foot, head];
    }
    // The bolts of a butt go through one half or the other, those of a scarf
    // through both.
    let own = |planned: &Planned, at: CutPlace, bolt: &Bolt| {
        let x = planned.joint.axes.point(bolt.at).x;
        planned.joint.form != SpliceForm::FishPlates || (x < planned.joint.centre) == (at == CutPlace::Head)
    };
    let seen = |planned: &Planned, at: CutPlace, mate: TimberId| Splice {
        form: planned.joint.form,
        at,
        mate,
        length: planned.joint.length,
        start: start_of(&planned.joint),
        bolts: planned.bolts.iter().filter(|b| own(planned, at, b)).copied().collect(),
        wedge_taper: (planned.joint.form == SpliceForm::Hooked).then_some(WEDGE_TAPER),
    };
    let foot_splice = below.map(|s| seen(s, CutPlace::Foot, ids[part - 1]));
    let head_splice = above.map(|s| seen(s, CutPlace::Head, ids[part + 1]));
    piece.lengthened = Some(Box::new(Lengthened {
        first: ids[0],
        part,
        parts: ids.len(),
        splices: foot_splice.into_iter().chain(head_splice).collect(),
    }));
    piece
}

/// Point every declared contact with the whole timber at the length it touches.
fn declare(carcass: &mut Carcass<'_>, ids: &[TimberId], wood: &[Cell<Made>]) {
    let whole = ids[0];
    let pieces: Vec<_> = ids.iter().map(|id| flats(carcass.wood(*id))).collect();
    let around = bounds_of(wood);
    for other in carcass.beside(wood) {
        if ids.contains(&other) {
            continue;
        }
        let timber = carcass.timber(other);
        let named = timber.rests.iter().any(|(_, id)| *id == whole)
            || timber.cuts.iter().any(|c| c.purpose.other() == Some(whole));
        if !named {
            continue;
        }
        let mine = flats_near(carcass.wood(other), around);
        let touched = |tag: Made| -> Vec<(TimberId, f64)> {
            let areas = ids.iter().zip(&pieces).map(|(id, piece)| (*id, area_on(&mine, tag, piece)));
            areas.filter(|(_, area)| *area > LEAST_CONTACT).collect()
        };
        let most = |tag: Made| touched(tag).into_iter().max_by(|a, b| a.1.total_cmp(&b.1)).map(|(id, _)| id);
        let cuts: Vec<_> = timber
            .cuts
            .iter()
            .enumerate()
            .filter(|(_, c)| c.purpose.other() == Some(whole))
            .filter_map(|(k, _)| Some((k, most(Made::Cut(k as u16))?)))
            .collect();
        let rests: Vec<_> = timber
            .rests
            .iter()
            .flat_map(|(tag, id)| {
                let found = if *id == whole { touched(*tag) } else { Vec::new() };
                if found.is_empty() { vec![(*tag, *id)] } else { found.iter().map(|(id, _)| (*tag, *id)).collect() }
            })
            .collect();
        let timber = carcass.timber_mut(other);
        for (k, id) in cuts {
            timber.cuts[k].purpose = timber.cuts[k].purpose.against(id);
        }
        timber.rests = rests;
    }
    for (id, piece) in ids.iter().zip(&pieces) {
        let (rests, own) = (carcass.timber(*id).rests.clone(), carcass.box_of(*id));
        let kept = rests
            .into_iter()
            .filter(|(tag, on)| area_on(piece, *tag, &flats_near(carcass.wood(*on), own)) > LEAST_CONTACT);
        let kept = kept.collect();
        carcass.timber_mut(*id).rests = kept;
    }
}
