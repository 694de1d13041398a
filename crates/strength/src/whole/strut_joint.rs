//! Strut to purlin: the end presses into the side of the purlin, and slides along it where the two are not square.

use super::joints::{JointUse, NAIL, With, mark, verdict};
use crate::carrying::Carrying;
use crate::carrying::flow::Flow;
use crate::carrying::unit::{Kind, Unit};
use crate::eurocode::joints::Part;
use crate::eurocode::joints::bearing::EndBearing;
use crate::working::Working;
use geometry::Angle;
use roof::solution::MemberKind;

/// The strut that carries most.
#[must_use]
pub fn strut_head(roof: &Carrying<'_>, units: &[Unit], flow: &Flow, with: &With<'_>) -> Option<JointUse> {
    let (down, duration, run) = units
        .iter()
        .filter_map(|unit| {
            let Kind::Post(run) = unit.kind else { return None };
            if roof.runs[run].kind != MemberKind::Strut {
                return None;
            }
            let (force, duration) = with.worst(flow.posts.get(&run)?, |n| n.max(0.0));
            Some((force, duration, run))
        })
        .max_by(|a, b| a.0.total_cmp(&b.0))?;
    let strut = &roof.runs[run];
    let contact = roof.contacts[run].iter().find(|c| roof.runs[c.other].kind == MemberKind::Purlin)?;
    let steep = strut.along.z.abs();
    if steep <= 0.0 {
        return None;
    }
    // Along the strut; its level part is for the purlin's own support and the foot's.
    let force = down / steep;
    let purlin = &roof.runs[contact.other];
    let between = |a: geometry::DVec3, b: geometry::DVec3| Angle::from_cos(a.dot(b).abs().min(1.0)).to_deg();
    let bearing = EndBearing {
        wood: with.wood,
        area_mm2: contact.area,
        force_to_grain_deg: between(strut.along, purlin.along),
        force_to_normal_deg: between(strut.along, contact.normal),
        kc90: 1.0,
    };
    let mut working = Working::on();
    let kmod = with.kmod(duration);
    let part = Part { wood: with.wood, thickness_mm: strut.thickness, angle_deg: 90.0 };
    let nail = NAIL.in_shear(&part, &part, with.joints, &mut working);
    let nail_n = nail.capacity.design_n(kmod, with.joints, &mut working);
    let gamma = with.factors.factors.gamma_m.value;
    let result = bearing.check(force, nail_n, kmod, gamma, with.joints, &mut working);
    Some(JointUse {
        name: "strut to purlin".to_owned(),
        marks: vec![mark(roof, run), mark(roof, contact.other)],
        force_n: force,
        used: Some(result.bearing.ratio),
        verdict: Some(verdict(result.bearing.ratio)),
        clause: result.bearing.clause.to_owned(),
        takes: match result.nails {
            Some(0) => "a square end, nailed in place".to_owned(),
            Some(nails) => {
                format!("{nails} nails {:.1} × {:.0} in a cleat against sliding", NAIL.diameter_mm, NAIL.length_mm)
            }
            None => "a notch or a cleat bolted on against sliding".to_owned(),
        },
        fixings: result.nails.filter(|nails| *nails > 0),
        remark: format!("{:.1} kN slide along the faces; friction is not counted", result.sliding_n / 1e3),
        working: working.lines(),
    })
}
