//! What holds a splice together: fish plates and folding wedges.

use super::form::{Around, Joint, WEDGE_TAPER, bar};
use super::types::{Bolt, Lengthened, Splice};
use crate::carcass::Carcass;
use crate::frame::timber::{CutUse, FrameCut, Made, Timber, TimberId};
use crate::marking::Axes;
use crate::solution::{CutPlace, MemberKind};
use geometry::DVec3;
use geometry::surface::WallId;
use job::Section;

/// Add the fish plates on both sides of a butt: the left one, then the right one.
pub fn fish_plates(
    carcass: &mut Carcass<'_>,
    joint: &Joint,
    around: &Around,
    thickness: f64,
    wall: Option<WallId>,
    bolts: &[Bolt],
) {
    let [from, to] = joint.span();
    let depth = joint.up[1] - joint.up[0];
    for (side, against, out) in [(1, Made::Right, 1.0), (0, Made::Left, -1.0)] {
        let a = &joint.axes;
        let middle = joint.across[side] + out * thickness / 2.0;
        let origin = a.origin + a.along * from + a.up * joint.up[0] + a.across * middle;
        let axes = Axes { origin, ..*a };
        let centre = origin + a.up * (depth / 2.0);
        let cell = bar(&axes, [0.0, to - from], [0.0, depth], [-thickness / 2.0, thickness / 2.0]);
        let mut plate = Timber::fitted(
            MemberKind::FishPlate,
            wall,
            Section { thickness, depth },
            [centre, centre + a.along * (to - from)],
            axes,
            vec![cell],
            Vec::new(),
        );
        plate.rests = around.halves.map(|half| (against, half)).to_vec();
        let own = carcass.next_id();
        plate.lengthened = Some(Box::new(one_of(own, joint, around.halves[0], bolts, None)));
        carcass.add(plate);
    }
}

/// Add the folding wedges of a hooked scarf: the one towards the foot, then the
/// one towards the head.
pub fn wedges(carcass: &mut Carcass<'_>, joint: &Joint, around: &Around, wall: Option<WallId>) {
    let [x, up, across] = joint.key_space();
    let a = &joint.axes;
    // Driven across the timber: its thickness is their length.
    let axes = Axes {
        origin: a.origin + a.along * joint.centre + a.up * up[0] + a.across * across[0],
        along: a.across,
        up: a.up,
        across: -a.along,
    };
    let (length, depth, key) = (across[1] - across[0], up[1] - up[0], x[1] - x[0]);
    let block = bar(&axes, [0.0, length], [0.0, depth], [-key / 2.0, key / 2.0]);
    let between = joint.between_wedges();
    let thick = (key + WEDGE_TAPER * length) / 2.0;
    let [foot, head] = around.halves;
    let first = carcass.next_id();
    let ids = [first, TimberId(first.0 + 1)];
    for (k, (plane, side)) in [(between, Made::Left), (between.flipped(), Made::Right)].into_iter().enumerate() {
        let cuts = vec![FrameCut { purpose: CutUse::Against(ids[1 - k]), at: CutPlace::Head }];
        let cells = block.clipped(plane, Made::Cut(0)).into_iter().collect();
        let along = axes.origin + axes.up * (depth / 2.0);
        let mut wedge = Timber::fitted(
            MemberKind::Wedge,
            wall,
            Section { thickness: thick, depth },
            [along, along + axes.along * length],
            axes,
            cells,
            cuts,
        );
        let hooks = if k == 0 { head } else { foot };
        wedge.rests = vec![(side, hooks), (Made::Underside, foot), (Made::Top, head)];
        wedge.lengthened = Some(Box::new(one_of(ids[k], joint, foot, &[], Some(WEDGE_TAPER))));
        carcass.add(wedge);
    }
}

fn one_of(own: TimberId, joint: &Joint, mate: TimberId, bolts: &[Bolt], wedge_taper: Option<f64>) -> Lengthened {
    let splice = Splice {
        form: joint.form,
        at: CutPlace::Foot,
        mate,
        length: joint.length,
        start: start_of(joint),
        bolts: bolts.to_vec(),
        wedge_taper,
    };
    Lengthened { first: own, part: 0, parts: 1, splices: vec![splice] }
}

/// The point on the axis of the timber where a splice starts.
pub fn start_of(joint: &Joint) -> DVec3 {
    joint.axes.origin + joint.axes.along * joint.span()[0]
}
