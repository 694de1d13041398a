//! Soffit boards: level under the tails, from the back of the fascia to the
//! plate line, mitred at corners on the line from plate corner to fascia
//! corner.

use super::boards::{self, Draft, FOOT_CUT, HEAD_CUT};
use super::eaves_lines::{self, EavesLine, Meets};
use crate::SolveError;
use crate::carcass::Carcass;
use crate::frame::heights::outset_corner;
use crate::frame::timber::{Made, Timber};
use crate::solution::{MemberKind, NoticeLevel};
use geometry::{DVec2, DVec3, Plane};
use job::{Job, Section};

/// Eaves narrower than this have no soffit, mm: the fascia closes them.
const NARROWEST: f64 = 30.0;

/// Plate corners that miss one another by more than this are two, mm.
const AT_CORNER: f64 = 0.5;

/// Gaps smaller than this between soffit and tails, or fascia and soffit, are
/// not worth a word, mm.
const WORTH_TELLING: f64 = 2.0;

/// One wall's soffit before it is split into boards.
struct Field<'a> {
    line: &'a EavesLine,
    /// Height of the top of the boards, mm.
    level: f64,
    /// From the plate line to the back of the fascia at that height, mm.
    width: f64,
    /// Into how many boards of equal width it is split; none where it is too
    /// narrow.
    boards: usize,
    /// The place of the first of them in the list of drafts.
    first: usize,
}

/// Fit the soffit boards.
///
/// # Errors
/// None: a board without room is left out with a remark.
pub fn place(carcass: &mut Carcass<'_>) -> Result<(), SolveError> {
    let Some(size) = carcass.job.timber.parts.soffit else { return Ok(()) };
    let lines = eaves_lines::of(carcass);
    let lowest: Vec<f64> = lines.iter().map(|l| lowest_tail(carcass, l, |_| true)).collect();
    let levels = shared_levels(&lines, &lowest);
    let mut fields: Vec<Field<'_>> = Vec::with_capacity(lines.len());
    let mut first = 0;
    for (line, &level) in lines.iter().zip(&levels) {
        let face = line.face();
        let width = (face.offset - face.normal.z * level) / face.normal.truncate().dot(line.out())
            - line.out().dot(line.corners[0]);
        let boards = if width < NARROWEST { 0 } else { (width / size.depth - WHOLE).ceil().max(1.0) as usize };
        fields.push(Field { line, level, width, boards, first });
        first += boards;
    }
    let mut drafts = Vec::with_capacity(first);
    for field in &fields {
        drafts.extend((0..field.boards).map(|k| board(carcass.job, field, k, &fields, size)));
    }
    boards::settle(carcass, drafts, &[Made::Left, Made::Top, Made::Underside]);
    tell(carcass, &fields, size);
    Ok(())
}

/// A soffit that is wider than the board by this share only is not split.
const WHOLE: f64 = 1e-9;

/// The lowest point of the tails of a wall, of those timbers that are asked
/// for, mm: inside the plate line nothing of them hangs below the seat.
fn lowest_tail(carcass: &Carcass<'_>, line: &EavesLine, wanted: impl Fn(&Timber) -> bool) -> f64 {
    carcass
        .built()
        .filter(|(_, t)| t.seat.is_some() && t.tails.iter().any(|tail| tail.wall == line.wall) && wanted(t))
        .flat_map(|(id, _)| carcass.wood(id))
        .flat_map(|c| &c.points)
        .map(|p| p.z)
        .fold(f64::INFINITY, f64::min)
}

/// Soffits that meet at corners lie at one height: that of the lowest tails.
fn shared_levels(lines: &[EavesLine], lowest: &[f64]) -> Vec<f64> {
    let mut levels = lowest.to_vec();
    for _ in 0..lines.len() {
        for (k, line) in lines.iter().enumerate() {
            if let Some(other) = line.next(true) {
                let both = levels[k].min(levels[other]);
                (levels[k], levels[other]) = (both, both);
            }
        }
    }
    levels
}

/// One board of a wall's soffit, counted from the plate line outwards.
fn board(job: &Job, field: &Field<'_>, k: usize, fields: &[Field<'_>], size: Section) -> Option<Draft> {
    if !field.level.is_finite() {
        return None;
    }
    let line = field.line;
    let (out, along) = (line.out(), line.along().extend(0.0));
    let wide = field.width / field.boards as f64;
    let from = line.corners[0] + out * (wide * k as f64);
    let origin = from.extend(field.level - size.thickness / 2.0);
    let axes = boards::axes(origin, along, out.extend(0.0));
    let ends = [false, true].map(|head| end(job, field, head, fields));
    let section = Section { thickness: size.thickness, depth: wide };
    let mut draft = Draft::between(MemberKind::Soffit, line.wall, section, axes, ends)?;
    draft.clip(line.face(), Made::Top);
    for (head, cut) in [(false, FOOT_CUT), (true, HEAD_CUT)] {
        let Some(other) = line.next(head).and_then(|o| fields.get(o)) else { continue };
        if other.boards > 0 {
            let abreast = (2 * k + 1) * other.boards / (2 * field.boards);
            draft.mates.push((cut, other.first + abreast));
        }
    }
    Some(draft)
}

/// The upright plane at which a soffit ends.
fn end(job: &Job, field: &Field<'_>, head: bool, fields: &[Field<'_>]) -> Plane {
    let line = field.line;
    let straight = |past| line.square_end(head, past);
    match line.meets[usize::from(head)] {
        Meets::Wall => straight(0.0),
        Meets::Verge(verge) => verge,
        // Where the undersides of the lower rafters have risen past it.
        Meets::Over(lower) => {
            let plumb = job.timber.rafter.size.depth * (1.0 + lower.tan_pitch * lower.tan_pitch).sqrt();
            line.over_end(head, &lower, field.level + plumb)
        }
        Meets::Line(k) => {
            let Some(other) = fields.get(k).filter(|o| line.mitre(head, o.line).is_some()) else {
                return straight(0.0);
            };
            let corner = line.corners[usize::from(head)];
            if (corner - other.line.corners[usize::from(!head)]).length() > AT_CORNER {
                // Plates at different heights: they part below the hip between them.
                return line.seam(head, &other.line.top).unwrap_or_else(|| straight(0.0));
            }
            let outer =
                outset_corner(corner, [line.along(), other.line.along()], [field.width.max(0.0), other.width.max(0.0)]);
            let normal: DVec2 = (outer - corner).normalize_or_zero().perp();
            if normal == DVec2::ZERO {
                return straight(0.0);
            }
            let away = if head { line.along() } else { -line.along() };
            let out = if normal.dot(away) > 0.0 { normal } else { -normal };
            Plane::through(corner.extend(0.0), DVec3::new(out.x, out.y, 0.0))
        }
    }
}

/// Say where tails need packing down to the soffit, and where the fascia does
/// not reach it.
fn tell(carcass: &mut Carcass<'_>, fields: &[Field<'_>], size: Section) {
    let mut short: f64 = 0.0;
    for field in fields.iter().filter(|f| f.boards > 0 && f.level.is_finite()) {
        let packing = lowest_tail(carcass, field.line, Timber::is_rafter) - field.level;
        if packing.is_finite() && packing > WORTH_TELLING {
            let wall = carcass.job.walls.get(field.line.wall.index()).map_or("", |w| w.letter.as_str()).to_string();
            carcass.remark(
                NoticeLevel::Note,
                "soffit-packed",
                format!("wall {wall}"),
                format!(
                    "The soffit runs level round the corners, {packing:.0} mm below the rafters' tails of wall {wall}: \
                     pack it down from them."
                ),
            );
        }
        if let Some(fascia) = carcass.job.timber.parts.fascia {
            let under = (field.line.edge() - field.line.up_face() * fascia.depth).z;
            short = short.max(under - (field.level - size.thickness));
        }
    }
    if short > WORTH_TELLING {
        carcass.remark(
            NoticeLevel::Note,
            "fascia-above-soffit",
            "eaves",
            format!(
                "The fascia ends {short:.0} mm above the underside of the soffit: use a deeper board, or cut the tails \
                 level at a smaller `roof.eaves.fascia_depth`."
            ),
        );
    }
}
