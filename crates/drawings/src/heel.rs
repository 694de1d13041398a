//! The birdsmouth as it stands on its plate, and its sizes.

use roof::solution::{Birdsmouth, Member};

use crate::cover::key_figures;
use crate::facets::{facets, half};
use crate::layout::{Room, scale, scale_words};
use crate::sheet::{Anchor, Dash, Pen, Pt, Role, Sheet};
use crate::text::{SMALLEST_PT, Style};
use crate::vec3::{V3, dot, sub, unit};
use crate::view3d::outline;
use job::written::Lengths;

const FIGURE: Style = Style::bold(14.0);
const LETTER: Style = Style::bold(10.0);
/// Width of the boxes with the sizes, mm.
const BOXES: f64 = 29.0;
/// Height of a box, mm.
const BOX_HEIGHT: f64 = 13.0;

/// Draws picture and sizes into a room.
pub fn draw(sheet: &mut Sheet, member: &Member, mouth: Birdsmouth, lengths: Lengths, room: Room) {
    let boxes = [
        ("U above plate", mouth.upstand_mm),
        ("S seat, level", mouth.seat_mm),
        ("P plumb", mouth.plumb_mm),
        ("D depth, square", mouth.depth_mm),
    ];
    let mut y = room.y;
    for (label, mm) in boxes {
        let at = [room.x + room.w - BOXES, y];
        key_figures(sheet, &[(label, lengths.write(mm))], at, [BOXES, BOX_HEIGHT], FIGURE);
        y += BOX_HEIGHT;
    }
    picture(sheet, member, mouth, Room { w: room.w - BOXES - 2.0, ..room });
}

/// Level distance from the plate line, height above it, and distance to the
/// right: right-handed axes, as facets need them.
fn standing(member: &Member, level: V3) -> impl Fn(&V3) -> V3 {
    let (from, across) = (member.axis.from, member.bench.across);
    move |&p| {
        let p = sub(p, from);
        [dot(p, level), p[2], -dot(p, across)]
    }
}

fn picture(sheet: &mut Sheet, member: &Member, mouth: Birdsmouth, room: Room) {
    let [x, y, _] = member.bench.along;
    let Some(level) = unit([x, y, 0.0]) else { return };
    let sizes = [mouth.depth_mm, mouth.seat_mm, mouth.plumb_mm, mouth.upstand_mm];
    if !sizes.iter().all(|v| v.is_finite() && *v > 0.0) {
        return;
    }
    let mut positions: Vec<V3> = member.solid.points.iter().map(standing(member, level)).collect();
    // On a valley the mouth's corner is not on the pitch line: it is where the seat begins.
    let faces = facets(&member.solid, &positions);
    let seat = faces.iter().filter(|f| f.name.contains("seat")).flat_map(|f| &f.points);
    let [shift, rise, _] = seat.copied().min_by(|a, b| a[0].total_cmp(&b[0])).unwrap_or_default();
    positions.iter_mut().for_each(|p| *p = [p[0] - shift, p[1] - rise, p[2]]);
    // What is shown: the mouth and the timber over it.
    let reach = mouth.seat_mm.max(mouth.plumb_mm) * 0.6;
    let (left, right) = (-reach, mouth.seat_mm + reach);
    let (low, high) = (-mouth.plumb_mm * 1.25, mouth.upstand_mm + mouth.seat_mm * 0.75);
    let n = scale(|n| (right - left) / n <= room.w && (high - low) / n <= room.h - 5.0);
    let (cx, cy) = (room.x + room.w / 2.0, room.y + (room.h - 5.0) / 2.0);
    let place = |h: f64, v: f64| -> Pt { [cx + (h - (left + right) / 2.0) / n, cy - (v - (low + high) / 2.0) / n] };
    let words = format!("Birdsmouth of {} as it stands on the plate.", member.mark);
    sheet.part(Role::Figure(words), |sheet| {
        for face in facets(&member.solid, &positions) {
            // From the right side: faces that look that way.
            const EDGE_ON: f64 = 1e-6;
            if face.normal[2] < EDGE_ON {
                continue;
            }
            let mut shown = face;
            for (axis, limit, sign) in [(0, left, 1.0), (0, right, -1.0), (1, low, 1.0), (1, high, -1.0)] {
                let sides: Vec<f64> = shown.points.iter().map(|p| (p[axis] - limit) * sign).collect();
                shown = half(&shown, &sides, 1.0);
            }
            let points = shown.points.iter().map(|p| place(p[0], p[1])).collect();
            outline(sheet, points, &shown.drawn, 235, Pen::black(0.45));
        }
        let corner = place(0.0, 0.0);
        let seat = place(mouth.seat_mm, 0.0);
        let heel = place(0.0, -mouth.plumb_mm);
        let above = place(0.0, mouth.upstand_mm);
        let pen = Pen::black(0.2);
        let thin = Pen::dashed(0.2, Dash::Dashed);
        // The plate below the seat.
        let far = place(mouth.seat_mm * 1.05, 0.0)[0];
        sheet.path(vec![heel, corner, [far, corner[1]]], false, None, Some(Pen::black(0.7)));
        sheet.line(corner, above, thin);
        let lettered = |sheet: &mut Sheet, a: Pt, b: Pt, off: Pt, letter: &str| {
            let shift = |p: Pt| [p[0] + off[0], p[1] + off[1]];
            sheet.line(shift(a), shift(b), pen);
            for end in [shift(a), shift(b)] {
                sheet.disc(end, 0.45, Some(0), None);
            }
            let m = [(a[0] + b[0]) / 2.0 + off[0], (a[1] + b[1]) / 2.0 + off[1]];
            let half_cap = LETTER.cap_mm() / 2.0;
            sheet.disc([m[0], m[1]], 2.3, Some(255), None);
            sheet.text([m[0], m[1] + half_cap], Anchor::Middle, LETTER, letter);
        };
        lettered(sheet, corner, seat, [0.0, -4.2], "S");
        lettered(sheet, heel, corner, [-4.2, 0.0], "P");
        lettered(sheet, corner, above, [0.0, 0.0], "U");
        // Square from the mouth's corner to the underside.
        let along = unit([dot(member.bench.along, level), member.bench.along[2], 0.0]).unwrap_or([1.0, 0.0, 0.0]);
        let foot = place(along[1] * mouth.depth_mm, -along[0] * mouth.depth_mm);
        sheet.line(corner, foot, thin);
        let beyond =
            place(along[1] * mouth.depth_mm + along[1] * 3.2 * n, -along[0] * mouth.depth_mm - along[0] * 3.2 * n);
        sheet.text([beyond[0], beyond[1] + LETTER.cap_mm() / 2.0], Anchor::Middle, LETTER, "D");
        let small = Style::regular(SMALLEST_PT);
        sheet.text([room.x, room.y + room.h - 0.5], Anchor::Start, small, &format!("as it stands, {}", scale_words(n)));
    });
}
