//! Struts: from load-bearing lines inside the plan up to the purlins.
//!
//! A strut stands in the plumb plane square to its purlin. Its head is cut to
//! the purlin's underside, its foot level on a sole plate that lies flat on the
//! bearing line (a length of the wall plate's stuff). Where there are ceiling
//! joists the sole plate lies on top of them, over the line that they bear on.

use super::beam::{Beam, axes, covers};
use super::clearing::{cleared, is_clear};
use super::purlins;
use crate::SolveError;
use crate::carcass::Carcass;
use crate::frame::timber::{CutUse, Made, Role, Timber, TimberId};
use crate::marking::Axes;
use crate::solution::{CutPlace, MemberKind, NoticeLevel};
use geometry::surface::WallId;
use geometry::{DVec2, DVec3, Plane};
use job::{BearingLine, Section, SpacedTimber};

/// A strut that leans further from plumb than this (run per rise: 45°;
/// reference/strength.md, struts of purlins) is spoken of.
const FAR_LEAN: f64 = 1.0;

/// A strut leans no further from plumb than this (run per rise: 60°): past it
/// the thrust on the sole plate is twice the load and nothing holds the foot.
const MOST_LEAN: f64 = 1.732;

/// A strut meets the underside of its purlin at least this near to square (as
/// a cosine: 60° off); flatter, it would slide off a plain bearing.
const LEAST_BITE: f64 = 0.5;

/// A bearing line more than 60° off a purlin's direction (as a cosine) runs
/// across it: one strut stands where they cross.
const ACROSS: f64 = 0.5;

/// A strut that stands where a bearing line crosses a purlin is no further off
/// that line than this, mm.
const OVER_LINE: f64 = 1.0;

/// The sole plate runs past the outermost struts by this much, mm.
const SOLE_PAST: f64 = 200.0;

/// A piece of sole plate shorter than this is left out, mm.
const SHORTEST_SOLE: f64 = 150.0;

/// A strut in the way of another is moved along by its thickness and this, mm.
const DAYLIGHT: f64 = 5.0;

/// A strut is moved along by at most this many steps.
const MOST_STEPS: i32 = 2;

/// Purlin and bearing line, and the stations of the struts between them.
struct Row {
    purlin: TimberId,
    wall: Option<WallId>,
    stations: Vec<f64>,
}

/// Place struts and their sole plates.
///
/// # Errors
/// None; struts that cannot stand are spoken of.
pub fn place(carcass: &mut Carcass<'_>) -> Result<(), SolveError> {
    let Some(strut) = carcass.job.timber.parts.strut else { return Ok(()) };
    let purlins: Vec<TimberId> = purlins::placed(carcass).map(|(id, _)| id).collect();
    let mut propped = vec![false; purlins.len()];
    let job = carcass.job;
    let mut taken: Vec<Vec<[f64; 2]>> = vec![Vec::new(); purlins.len()];
    for line in &job.bearings {
        let Some(bed) = Bed::of(carcass, line) else { continue };
        let mut rows = Vec::new();
        for (k, id) in purlins.iter().enumerate() {
            let purlin = carcass.timber(*id);
            let stations = stations(&bed, purlin, strut.centres, &mut taken[k]);
            if !stations.is_empty() {
                let wall = if let Role::Fitted { wall } = purlin.role { wall } else { None };
                rows.push((k, Row { purlin: *id, wall, stations }));
            }
        }
        for k in stand(carcass, &bed, strut, &rows) {
            propped[k] = true;
        }
    }
    let mut walls: Vec<String> = Vec::new();
    for (id, _) in purlins.iter().zip(&propped).filter(|(_, p)| !**p) {
        let Role::Fitted { wall } = carcass.timber(*id).role else { continue };
        let letter = wall.and_then(|w| job.walls.get(w.index())).map_or_else(String::new, |w| w.letter.clone());
        if !walls.contains(&letter) {
            walls.push(letter);
        }
    }
    if !walls.is_empty() {
        let place = format!("walls {}", walls.join(", "));
        carcass.remark(
            NoticeLevel::Warn,
            "purlin-has-no-strut",
            place,
            "No bearing line stands where a strut could reach the purlin of these walls: it spans from end to end. Give \
             a line under `bearings`, or have a structural engineer size it.",
        );
    }
    Ok(())
}

/// Where the feet of struts stand: the top of the sole plate on a bearing line.
struct Bed {
    from: DVec2,
    dir: DVec2,
    length: f64,
    /// Underside and top of the sole plate, mm.
    level: [f64; 2],
    section: Section,
}

impl Bed {
    fn of(carcass: &Carcass<'_>, line: &BearingLine) -> Option<Self> {
        let (from, to) = (DVec2::from_array(line.from), DVec2::from_array(line.to));
        let length = (to - from).length();
        let plate = carcass.job.timber.plate;
        let base = carcass.job.timber.parts.ceiling_joist.map_or(line.top, |j| line.top.max(top_of_joists(carcass, j)));
        (length > 0.0).then(|| Self {
            from,
            dir: (to - from) / length,
            length,
            level: [base, base + plate.thickness],
            section: Section { thickness: plate.depth, depth: plate.thickness },
        })
    }

    /// Where the plan line through `at` along `dir` crosses it: how far along
    /// `dir`, and how far along the bed.
    fn crossing(&self, at: DVec2, dir: DVec2) -> Option<(f64, f64)> {
        let turn = dir.perp_dot(self.dir);
        let gap = self.from - at;
        let (along, own) = (gap.perp_dot(self.dir) / turn, gap.perp_dot(dir) / turn);
        (own.is_finite() && own >= 0.0 && own <= self.length).then_some((along, own))
    }
}

/// Height of the tops of ceiling joists, which lie on the highest plates, mm.
fn top_of_joists(carcass: &Carcass<'_>, joist: Section) -> f64 {
    let plates = carcass.surface.faces.iter().map(|f| f.plane.base_height);
    plates.fold(f64::NEG_INFINITY, f64::max) + joist.depth
}

/// The head of a strut: the middle of the purlin's underside at a distance
/// along its axes.
fn head(purlin: &Axes, at: f64) -> DVec3 {
    purlin.origin + purlin.along * at
}

/// The foot of a strut, when it stands steep enough and bears well enough.
fn foot(bed: &Bed, purlin: &Axes, at: f64) -> Option<DVec3> {
    let top = head(purlin, at);
    let square = purlin.along.truncate().perp();
    let runs_across = purlin.along.truncate().dot(bed.dir).abs() < ACROSS;
    let out = if runs_across { 0.0 } else { bed.crossing(top.truncate(), square)?.0 };
    if runs_across && bed.dir.perp_dot(top.truncate() - bed.from).abs() > OVER_LINE {
        return None;
    }
    let foot = (top.truncate() + square * out).extend(bed.level[1]);
    let axis = top - foot;
    let bites = axis.normalize_or_zero().dot(purlin.up) > LEAST_BITE;
    (axis.z > 0.0 && out.abs() <= MOST_LEAN * axis.z && bites).then_some(foot)
}

/// Where struts stand along a purlin: no more than `centres` apart, and half
/// that from the ends of the part abreast of the bearing line. Parts that
/// another line props already are left alone.
fn stations(bed: &Bed, purlin: &Timber, centres: f64, taken: &mut Vec<[f64; 2]>) -> Vec<f64> {
    let axes = purlin.axes();
    let along = |p: DVec2| axes.along.truncate().dot(p - axes.origin.truncate());
    let mut ends = purlin.line().map(|p| along(p.truncate()));
    ends.sort_by(f64::total_cmp);
    let flat = axes.along.truncate();
    if flat.dot(bed.dir).abs() < ACROSS {
        let Some((at, _)) = bed.crossing(axes.origin.truncate(), flat) else { return Vec::new() };
        let inside = at > ends[0] && at < ends[1] && !taken.iter().any(|t| t[0] <= at && at <= t[1]);
        return if inside && foot(bed, &axes, at).is_some() { vec![at] } else { Vec::new() };
    }
    let mut abreast = [along(bed.from), along(bed.from + bed.dir * bed.length)];
    abreast.sort_by(f64::total_cmp);
    let mut reach = [ends[0].max(abreast[0]), ends[1].min(abreast[1])];
    for t in taken.iter() {
        if t[0] < reach[1] && reach[0] < t[1] {
            reach = if t[0] - reach[0] > reach[1] - t[1] { [reach[0], t[0]] } else { [t[1], reach[1]] };
        }
    }
    let length = reach[1] - reach[0];
    if length <= 0.0 {
        return Vec::new();
    }
    let bays = (length / centres).ceil();
    let found: Vec<f64> = (0..bays as usize)
        .map(|k| reach[0] + (k as f64 + 0.5) * length / bays)
        .filter(|at| foot(bed, &axes, *at).is_some())
        .collect();
    if !found.is_empty() {
        taken.push(reach);
    }
    found
}

/// Lay the sole plate and stand the struts on it. Gives the numbers of the
/// rows in which at least one strut stands.
fn stand(carcass: &mut Carcass<'_>, bed: &Bed, strut: SpacedTimber, rows: &[(usize, Row)]) -> Vec<usize> {
    let feet: Vec<f64> = rows
        .iter()
        .flat_map(|(_, row)| {
            let axes = carcass.timber(row.purlin).axes();
            row.stations.iter().filter_map(move |at| foot(bed, &axes, *at)).collect::<Vec<_>>()
        })
        .map(|f| bed.dir.dot(f.truncate() - bed.from))
        .collect();
    let [first, last] = feet.iter().fold([f64::INFINITY, f64::NEG_INFINITY], |[a, b], f| [a.min(*f), b.max(*f)]);
    if feet.is_empty() {
        return Vec::new();
    }
    let reach = [(first - SOLE_PAST).max(0.0), (last + SOLE_PAST).min(bed.length)];
    let sole = Beam::level(MemberKind::SolePlate, bed.section, bed.from, bed.dir, bed.level[0], reach);
    let soles = Soles { first: carcass.next_id(), pieces: cleared(carcass, sole, SHORTEST_SOLE, &|_| false) };
    let any = rows
        .iter()
        .any(|(_, row)| row.stations.iter().any(|at| fit(carcass, bed, strut.size, row, &soles, *at).is_some()));
    if !any {
        carcass.remark(
            NoticeLevel::Warn,
            "strut-left-out",
            format!("({:.0}, {:.0})", bed.from.x, bed.from.y),
            "Other timbers stand where the sole plate or the struts of this bearing line would be: they are left out.",
        );
        return Vec::new();
    }
    for sole in &soles.pieces {
        carcass.add(sole.clone().timber());
    }
    let mut propped = Vec::new();
    let (mut missing, mut flat) = (0, 0);
    for (k, row) in rows {
        for at in &row.stations {
            match fit(carcass, bed, strut.size, row, &soles, *at) {
                Some(beam) => {
                    let along = beam.axes.along;
                    flat += usize::from(along.truncate().length() > FAR_LEAN * along.z);
                    carcass.add(beam.timber());
                    propped.push(*k);
                }
                None => missing += 1,
            }
        }
    }
    let place = format!("({:.0}, {:.0})", bed.from.x, bed.from.y);
    if missing > 0 {
        let text =
            format!("Struts of this bearing line that other timbers stand in the way of, and left out: {missing}.");
        carcass.remark(NoticeLevel::Warn, "strut-left-out", place.clone(), text);
    }
    if flat > 0 {
        let text = format!(
            "Struts of this bearing line that lean more than 45° from plumb: {flat}. Stop their feet against sliding, and \
             have a structural engineer check the thrust on the line below."
        );
        carcass.remark(NoticeLevel::Warn, "strut-leans-far", place, text);
    }
    propped
}

/// The pieces of a sole plate, in the order in which they are added.
struct Soles {
    first: TimberId,
    pieces: Vec<Beam>,
}

impl Soles {
    /// The piece that a foot of this length along the plate stands on.
    fn under(&self, bed: &Bed, foot: DVec3, length: f64) -> Option<TimberId> {
        let ends = [-0.5, 0.5].map(|k| foot.truncate() + bed.dir * (k * length));
        let k = self.pieces.iter().position(|p| covers(&p.cells, Made::Top, &ends))?;
        Some(TimberId(self.first.0 + k as u32))
    }
}

/// A strut at a station or close beside it, clear of everything.
fn fit(carcass: &Carcass<'_>, bed: &Bed, size: Section, row: &Row, soles: &Soles, at: f64) -> Option<Beam> {
    let purlin = carcass.timber(row.purlin);
    let steps = (0..=MOST_STEPS).flat_map(|k| [k, -k]).skip(1);
    steps.map(|k| at + f64::from(k) * (size.thickness + DAYLIGHT)).find_map(|at| {
        let beam = strut(bed, purlin, size, row, soles, at)?;
        is_clear(carcass, &beam, &|_| false).then_some(beam)
    })
}

fn strut(bed: &Bed, purlin: &Timber, size: Section, row: &Row, soles: &Soles, at: f64) -> Option<Beam> {
    let of = purlin.axes();
    let foot = foot(bed, &of, at)?;
    let sole = soles.under(bed, foot, size.thickness)?;
    let rise = head(&of, at) - foot;
    let along = rise.normalize_or(DVec3::Z);
    // Its depth lies in the plumb plane square to the purlin.
    let up = along.cross(of.along).normalize_or(of.across);
    let past = 2.0 * size.depth;
    let origin = foot - up * (size.depth / 2.0);
    let mut beam = Beam::new(MemberKind::Strut, size, axes(origin, along, up), [-past, rise.length() + past]);
    beam.wall = row.wall;
    beam.cut(Plane::through(foot, -DVec3::Z), CutUse::Against(sole), CutPlace::Foot);
    beam.cut(Plane::through(of.origin, of.up), CutUse::Against(row.purlin), CutPlace::Head);
    (beam.length() > 0.0).then_some(beam)
}
