//! Solids, lengths, seats and tops of every member.

use super::roofs::{Broken, all};
use crate::reading::{area_vector, dir, foot, run, vec3};
use geometry::{Angle, DVec2, DVec3};
use job::HipEdge;
use roof::solution::{CutPlace, Member, MemberKind, Solution};
use std::collections::BTreeSet;

/// Rounding on sums over solids of some metres, mm.
const ROUNDING: f64 = 1e-6;

/// Figures of a member agree with its solid within this, mm: deductions
/// smaller than 0.005 mm are left out of its list.
const FIGURE: f64 = 0.02;

fn rings(m: &Member) -> impl Iterator<Item = (&str, Vec<DVec3>)> {
    let point = |k: &u32| vec3(m.solid.points[*k as usize]);
    m.solid.faces.iter().zip(&m.solid.names).map(move |(ring, name)| (name.as_str(), ring.iter().map(point).collect()))
}

#[test]
fn solids_are_closed_and_have_the_volume_they_say() {
    let mut broken = Broken::default();
    for roof in all() {
        for m in &roof.solution.members {
            let mut edges = BTreeSet::new();
            let mut once = true;
            for ring in &m.solid.faces {
                for k in 0..ring.len() {
                    once &= edges.insert((ring[k], ring[(k + 1) % ring.len()]));
                }
            }
            let closed = once && edges.iter().all(|(a, b)| edges.contains(&(*b, *a)));
            broken.unless(closed, || format!("{}: {} is not closed", roof.name, m.mark));
            // Divergence theorem, about the first point.
            let o = vec3(m.solid.points[0]);
            let volume: f64 = rings(m).map(|(_, ring)| area_vector(&ring).dot(ring[0] - o) / 6.0).sum::<f64>() / 1e9;
            let agrees = (volume - m.volume_m3).abs() < 1e-9 * volume.max(1.0) && volume > 0.0;
            broken.unless(agrees, || format!("{}: {} holds {volume} m³, says {}", roof.name, m.mark, m.volume_m3));
        }
        let sum: f64 = roof.solution.members.iter().map(|m| m.volume_m3).sum();
        broken.unless((sum - roof.solution.totals.timber_m3).abs() < 1e-9, || format!("{}: total volume", roof.name));
    }
    broken.finish(5000);
}

/// Reach along the pitch line, from its foot, of what of the solid stands over
/// it: the slice by the upright plane through the line.
fn slice(m: &Member) -> [f64; 2] {
    let (along, left) = (dir(m), dir(m).perp());
    let off = |p: DVec3| left.dot(p.truncate() - foot(m));
    let at = |p: DVec3| along.dot(p.truncate() - foot(m));
    let mut reach = [f64::INFINITY, f64::NEG_INFINITY];
    let mut take = |v: f64| reach = [reach[0].min(v), reach[1].max(v)];
    for (_, ring) in rings(m) {
        for k in 0..ring.len() {
            let (p, q) = (ring[k], ring[(k + 1) % ring.len()]);
            let (dp, dq) = (off(p), off(q));
            if dp.abs() < ROUNDING {
                take(at(p));
            }
            if dp * dq < 0.0 {
                take(at(p + (q - p) * (dp / (dp - dq))));
            }
        }
    }
    reach
}

#[test]
fn deductions_are_what_lies_between_the_line_and_the_cuts() {
    let mut broken = Broken::default();
    for roof in all() {
        for m in roof.solution.members.iter().filter(|m| m.kind != MemberKind::WallPlate) {
            let [start, end] = slice(m);
            let taken = |at: CutPlace, slope: bool| -> f64 {
                m.deductions.iter().filter(|d| d.at == at).map(|d| if slope { d.slope_mm } else { d.mm }).sum()
            };
            let seated = m.birdsmouth.is_some();
            let foot_cut = if seated { 0.0 } else { start };
            let per_run = m.true_length_mm / run(m);
            let between = (end - foot_cut) * per_run;
            let said = m.true_length_mm - taken(CutPlace::Head, true) - taken(CutPlace::Foot, true);
            broken.unless((between - said).abs() < FIGURE, || {
                format!("{}: {} has {between} between its cuts, its figures say {said}", roof.name, m.mark)
            });
            let head = run(m) - end;
            broken.unless((head - taken(CutPlace::Head, false)).abs() < FIGURE, || {
                format!("{}: {} loses {head} at the head, says {:?}", roof.name, m.mark, m.deductions)
            });
            let length = (vec3(m.axis.to) - vec3(m.axis.from)).length();
            broken.unless((length - m.true_length_mm).abs() < ROUNDING, || format!("{}: {}", roof.name, m.mark));
        }
    }
    broken.finish(10_000);
}

/// Along the bench, from the footmost point to the headmost, and the same of
/// the top edge.
fn bench_lengths(m: &Member) -> [f64; 2] {
    let reach = |values: &mut dyn Iterator<Item = f64>| {
        let [lo, hi] = values.fold([f64::INFINITY, f64::NEG_INFINITY], |[lo, hi], v| [lo.min(v), hi.max(v)]);
        hi - lo
    };
    let along = vec3(m.bench.along);
    let whole = reach(&mut m.solid.points.iter().map(|p| along.dot(vec3(*p))));
    let tops = m.solid.faces.iter().zip(&m.solid.names).filter(|(_, n)| *n == "top" || n.starts_with("backing"));
    let top = reach(&mut tops.flat_map(|(ring, _)| ring).map(|k| along.dot(vec3(m.solid.points[*k as usize]))));
    [whole, top]
}

#[test]
fn cut_and_stock_lengths_are_those_of_the_solid() {
    let mut broken = Broken::default();
    let mut plumb = 0;
    for roof in all() {
        for m in &roof.solution.members {
            let [whole, top] = bench_lengths(m);
            broken.unless((whole - m.stock_length_mm).abs() < ROUNDING, || {
                format!("{}: {} is {whole} over all, says {}", roof.name, m.mark, m.stock_length_mm)
            });
            broken.unless((top - m.cut_length_mm).abs() < ROUNDING, || {
                format!("{}: {} has {top} along its top, says {}", roof.name, m.mark, m.cut_length_mm)
            });
            // Two plumb cuts: the stock is longer by what the pitch throws over the depth.
            let ends = |name: &str| m.cuts.iter().any(|c| c.name == name);
            let others = m.cuts.iter().any(|c| c.at != CutPlace::Foot && !c.name.ends_with("plumb cut"));
            if m.kind == MemberKind::CommonRafter && ends("head plumb cut") && ends("tail plumb cut") && !others {
                plumb += 1;
                let want = m.cut_length_mm + m.size.depth_mm * Angle::deg(m.pitch_deg).tan();
                broken.unless((want - m.stock_length_mm).abs() < ROUNDING, || {
                    format!("{}: stock of {} is {}, not {want}", roof.name, m.mark, m.stock_length_mm)
                });
            }
        }
    }
    assert!(plumb > 200, "{plumb}");
    broken.finish(10_000);
}

#[test]
fn seats_lie_on_the_plates() {
    let mut broken = Broken::default();
    for roof in all() {
        for m in roof.solution.members.iter().filter(|m| m.kind != MemberKind::WallPlate) {
            let seats: Vec<f64> =
                rings(m).filter(|(n, _)| *n == "seat cut").flat_map(|(_, r)| r).map(|p| p.z).collect();
            broken.unless(seats.iter().all(|z| z.abs() < ROUNDING), || format!("{}: seat of {}", roof.name, m.mark));
            if let Some(b) = m.birdsmouth {
                broken.unless(!seats.is_empty(), || format!("{}: {} has no seat", roof.name, m.mark));
                let pitch = Angle::deg(m.pitch_deg);
                // Notch, upstand and plumb cut add up to the depth of a timber on its pitch line.
                if m.wall.is_some() {
                    let sum = b.upstand_mm + b.depth_mm / pitch.cos() - m.size.depth_mm / pitch.cos();
                    broken.unless(sum.abs() < FIGURE, || format!("{}: birdsmouth of {}: {sum}", roof.name, m.mark));
                    let upstand = roof.solution.totals.upstand_mm;
                    broken.unless((b.upstand_mm - upstand).abs() < FIGURE, || format!("{}: {}", roof.name, m.mark));
                }
            }
        }
    }
    broken.finish(5000);
}

/// Plumb heights of a point above the raised planes of all sloping walls.
fn above_planes(s: &Solution, p: DVec3) -> impl Iterator<Item = (&str, f64)> {
    s.plan.walls.iter().filter_map(move |w| {
        let (from, to) = (DVec2::from_array(w.from), DVec2::from_array(w.to));
        let inward = (to - from).normalize().perp();
        let height = inward.dot(p.truncate() - from) * Angle::deg(w.pitch_deg?).tan() + s.totals.upstand_mm;
        Some((w.id.as_str(), p.z - height))
    })
}

#[test]
fn tops_lie_in_the_raised_pitch_planes() {
    let mut broken = Broken::default();
    for roof in all() {
        let s = &roof.solution;
        for m in &s.members {
            for (name, ring) in rings(m) {
                let in_one_plane = |only: Option<&str>| {
                    s.plan.walls.iter().filter(|w| only.is_none_or(|o| o == w.id)).any(|w| {
                        ring.iter().all(|p| above_planes(s, *p).any(|(id, off)| id == w.id && off.abs() < ROUNDING))
                    })
                };
                if name == "top" && m.wall.is_some() && m.kind != MemberKind::WallPlate {
                    broken.unless(in_one_plane(m.wall.as_deref()), || format!("{}: top of {}", roof.name, m.mark));
                }
                if name.starts_with("backing") {
                    broken.unless(in_one_plane(None), || format!("{}: backing of {}", roof.name, m.mark));
                }
            }
        }
    }
    broken.finish(4000);
}

#[test]
fn arrises_of_dropped_hips_and_ridges_lie_in_the_planes() {
    let mut broken = Broken::default();
    for roof in all() {
        let s = &roof.solution;
        for m in &s.members {
            let square = match m.kind {
                MemberKind::HipRafter => roof.job.timber.hip.edge == HipEdge::Dropped,
                MemberKind::RidgeBoard => true,
                _ => false,
            };
            if !square {
                continue;
            }
            // Height of the top's side arrises under the lower of the roof planes that pass over the line.
            let line = s.lines.iter().find(|l| {
                let [a, b] = [l.from, l.to].map(|p| vec3(p).truncate());
                let off = |p: DVec2| dir(m).perp_dot(p - foot(m)).abs();
                let middle = dir(m).dot((a + b) / 2.0 - foot(m));
                l.faces.len() == 2 && off(a) < 0.5 && off(b) < 0.5 && middle > 0.0 && middle < run(m)
            });
            let line = line.unwrap_or_else(|| panic!("{}: {} lies on no line", roof.name, m.mark));
            let flank = m.size.thickness_mm / 2.0;
            let tops: Vec<f64> = rings(m)
                .filter(|(n, _)| *n == "top")
                .flat_map(|(_, r)| r)
                .filter(|p| {
                    let across = vec3(m.bench.across).dot(*p - vec3(m.bench.origin));
                    (across.abs() - flank).abs() < ROUNDING
                })
                .map(|p| {
                    let over = above_planes(s, p).filter(|(id, _)| line.faces.iter().any(|f| f == id));
                    over.map(|(_, off)| off).fold(f64::NEG_INFINITY, f64::max)
                })
                .collect();
            let highest = tops.iter().copied().fold(f64::NEG_INFINITY, f64::max);
            broken.unless(highest.abs() < ROUNDING, || {
                format!("{}: the top of {} is {highest} above the roof", roof.name, m.mark)
            });
        }
    }
    broken.finish(150);
}
