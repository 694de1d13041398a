//! The plan of what stands round the roof: runs along the real walls with their bays, and the ladder.

use job::written::Lengths;
use roof::solution::{Solution, WallOut};
use site::access::Access;
use site::access::layout::Run;

use crate::layout::Room;
use crate::plan::Side;
use crate::sheet::{Anchor, Pen, Pt, Role, Sheet};
use crate::site_sheets::plan::{Ground, NAME, Sign, key};

/// Free round the runs, mm.
const FREE: f64 = 9.0;
/// Standards on the plan, mm.
const STANDARD: f64 = 0.55;
/// A run with more bays than this is drawn without them.
const MOST_BAYS: u32 = 200;

/// A run as it stands, in the plan of the job, mm: inside from, inside to, outside to, outside from.
struct Strip<'a> {
    run: &'a Run,
    wall: &'a WallOut,
    corners: [Pt; 4],
}

/// Runs between the corners that they share with their neighbours: the bisector of two walls cuts both off.
fn strips<'a>(solution: &'a Solution, access: &'a Access) -> Vec<Strip<'a>> {
    let width = access.layout.width_mm;
    let walls = &solution.plan.walls;
    let run_of = |wall: &WallOut| access.layout.runs.iter().find(|r| r.wall == wall.id);
    let along = |wall: &WallOut| {
        let d = [wall.to[0] - wall.from[0], wall.to[1] - wall.from[1]];
        let length = (d[0] * d[0] + d[1] * d[1]).sqrt();
        (length > 0.0 && length.is_finite()).then(|| [d[0] / length, d[1] / length])
    };
    // The line of a run at a distance from the wall: a point of it and its direction; outside is right of the wall.
    let line = |wall: &WallOut, far: bool| {
        let d = along(wall)?;
        let out = run_of(wall)?.off_wall_mm + if far { width } else { 0.0 };
        Some(([wall.from[0] + d[1] * out, wall.from[1] - d[0] * out], d))
    };
    let cross = |a: Pt, b: Pt| a[0] * b[1] - a[1] * b[0];
    let meet = |a: Option<(Pt, Pt)>, b: Option<(Pt, Pt)>| {
        /// Below this sine two runs go on straight.
        const STRAIGHT: f64 = 0.05;
        let ((p, d), (q, e)) = a.zip(b)?;
        let sine = cross(d, e);
        let t = cross([q[0] - p[0], q[1] - p[1]], e) / sine;
        (sine.abs() > STRAIGHT).then(|| [p[0] + d[0] * t, p[1] + d[1] * t])
    };
    let mut strips = Vec::new();
    for wall in walls {
        let (Some(run), Some(d)) = (run_of(wall), along(wall)) else { continue };
        let before = walls.iter().find(|other| other.to == wall.from);
        let after = walls.iter().find(|other| other.from == wall.to);
        let corner = |other: Option<&WallOut>, end: Pt, far: bool| {
            let out = run.off_wall_mm + if far { width } else { 0.0 };
            let square = [end[0] + d[1] * out, end[1] - d[0] * out];
            let at = other.and_then(|other| meet(line(wall, far), line(other, far))).unwrap_or(square);
            // Runs that meet a long way off, at a sharp corner, end square.
            let away = ((at[0] - square[0]).powi(2) + (at[1] - square[1]).powi(2)).sqrt();
            if away <= 4.0 * (out + 1.0) { at } else { square }
        };
        let corners = [
            corner(before, wall.from, false),
            corner(after, wall.to, false),
            corner(after, wall.to, true),
            corner(before, wall.from, true),
        ];
        if corners.iter().flatten().all(|v| v.is_finite()) {
            strips.push(Strip { run, wall, corners });
        }
    }
    strips
}

fn part_way(a: Pt, b: Pt, k: f64) -> Pt {
    [a[0] + (b[0] - a[0]) * k, a[1] + (b[1] - a[1]) * k]
}

/// Draws the plan into a room; gives the names for which there was none.
pub fn draw(sheet: &mut Sheet, solution: &Solution, access: &Access, room: Room) -> Vec<String> {
    const KEY: f64 = 6.0;
    let lengths = Lengths::from_show(&solution.show);
    let strips = strips(solution, access);
    let points: Vec<Pt> = strips.iter().flat_map(|s| s.corners).collect();
    let words = format!("Plan of the {} with {} runs, {} bays.", access.layout.kind, strips.len(), access.layout.bays);
    let mut unplaced = Vec::new();
    sheet.part(Role::Figure(words), |sheet| {
        let inner = Room { h: room.h - KEY, ..room };
        let Some(mut ground) = Ground::draw(sheet, solution, &points, inner, FREE) else { return };
        for strip in &strips {
            bays(sheet, &ground, strip);
        }
        // Letters of the walls keep out of the runs.
        for strip in &strips {
            ground.taken.take(strip.corners.map(|p| ground.view.place(p)));
        }
        ladder(sheet, &mut ground, &strips);
        ground.walls(sheet, solution);
        let mut by_length: Vec<&Strip<'_>> = strips.iter().collect();
        by_length.sort_by(|a, b| b.run.length_mm.total_cmp(&a.run.length_mm));
        for strip in by_length {
            name(sheet, &mut ground, strip, lengths);
        }
        unplaced = ground.unplaced;
    });
    let signs = [
        Sign {
            words: "bays between standards",
            draw: &|sheet, [x, y]| {
                sheet.rect([x, y - 1.2], [11.0, 2.4], None, Some(Pen::black(0.35)));
                sheet.line([x + 5.5, y - 1.2], [x + 5.5, y + 1.2], Pen::grey(0.2, 60));
            },
        },
        Sign {
            words: "ladder",
            draw: &|sheet, [x, y]| rungs(sheet, [x + 1.0, y - 1.0], [x + 10.0, y - 1.0], [0.0, 1.0]),
        },
        Sign { words: "plate line", draw: &|sheet, [x, y]| sheet.line([x, y], [x + 11.0, y], Pen::black(0.45)) },
    ];
    key(sheet, [room.x, room.y + room.h - 1.0], room.x + room.w, &signs);
    unplaced
}

fn bays(sheet: &mut Sheet, ground: &Ground, strip: &Strip<'_>) {
    let at = strip.corners.map(|p| ground.view.place(p));
    let [inside_from, inside_to, outside_to, outside_from] = at;
    sheet.path(at.to_vec(), true, None, Some(Pen::black(0.35)));
    let bays = strip.run.bays;
    if bays == 0 || bays > MOST_BAYS {
        return;
    }
    let run = [outside_to[0] - outside_from[0], outside_to[1] - outside_from[1]];
    let length2 = run[0] * run[0] + run[1] * run[1];
    // Where along the outside the ends of the inside lie.
    let across = |p: Pt| ((p[0] - outside_from[0]) * run[0] + (p[1] - outside_from[1]) * run[1]) / length2;
    let (first, last) = (across(inside_from), across(inside_to));
    for bay in 0..=bays {
        let k = f64::from(bay) / f64::from(bays);
        let outer = part_way(outside_from, outside_to, k);
        standard(sheet, outer);
        if k >= first && k <= last && last > first {
            let inner = part_way(inside_from, inside_to, (k - first) / (last - first));
            sheet.line(inner, outer, Pen::grey(0.2, 60));
            standard(sheet, inner);
        }
    }
    standard(sheet, inside_from);
    standard(sheet, inside_to);
}

fn standard(sheet: &mut Sheet, [x, y]: Pt) {
    sheet.rect([x - STANDARD, y - STANDARD], [2.0 * STANDARD, 2.0 * STANDARD], Some(0), None);
}

/// Two stiles and rungs.
fn rungs(sheet: &mut Sheet, from: Pt, to: Pt, across: Pt) {
    const RUNGS: u32 = 6;
    let pen = Pen::black(0.35);
    let side = |p: Pt, k: f64| [p[0] + across[0] * k, p[1] + across[1] * k];
    for k in [0.0, 2.0] {
        sheet.line(side(from, k), side(to, k), pen);
    }
    for rung in 0..=RUNGS {
        let at = part_way(from, to, f64::from(rung) / f64::from(RUNGS));
        sheet.line(at, side(at, 2.0), pen);
    }
}

/// The ladder stands in the middle of a bay of the longest run that is no courtyard's.
fn ladder(sheet: &mut Sheet, ground: &mut Ground, strips: &[Strip<'_>]) {
    let outside = strips.iter().filter(|s| !s.run.courtyard && s.run.platform_mm > 0.0);
    let Some(strip) = outside.max_by(|a, b| a.run.length_mm.total_cmp(&b.run.length_mm)) else { return };
    let [inside_from, inside_to, outside_to, outside_from] = strip.corners.map(|p| ground.view.place(p));
    let bays = f64::from(strip.run.bays.max(1));
    let (from, to) =
        ((bays * 0.75).floor().min(bays - 1.0).max(0.0) / bays, ((bays * 0.75).floor() + 1.0).min(bays) / bays);
    let mid = |a: f64, b: f64, out: f64| {
        let k = a + (b - a) * 0.5;
        part_way(part_way(inside_from, inside_to, k), part_way(outside_from, outside_to, k), out)
    };
    let (a, b) =
        (part_way(mid(from, to, 0.7), mid(from, from, 0.7), 0.7), part_way(mid(from, to, 0.7), mid(to, to, 0.7), 0.7));
    let inward = [mid(from, to, 0.0)[0] - mid(from, to, 1.0)[0], mid(from, to, 0.0)[1] - mid(from, to, 1.0)[1]];
    let length = (inward[0] * inward[0] + inward[1] * inward[1]).sqrt().max(f64::MIN_POSITIVE);
    rungs(sheet, a, b, [inward[0] / length, inward[1] / length]);
    let below = mid(from, to, 1.35);
    ground.name(sheet, "ladder", &[below, mid(from, to, 1.7), mid(from, to, 2.2)]);
}

/// Length and bays of a run outside it.
fn name(sheet: &mut Sheet, ground: &mut Ground, strip: &Strip<'_>, lengths: Lengths) {
    let [_, _, outside_to, outside_from] = strip.corners.map(|p| ground.view.place(p));
    let words = format!("{}: {}, {} bays", strip.wall.id, lengths.write(strip.run.length_mm), strip.run.bays);
    let middle = part_way(outside_from, outside_to, 0.5);
    let Some(side) = Side::new(strip.wall, &ground.view) else { return };
    // Along the run, reading from below or from the right.
    let run = [outside_to[0] - outside_from[0], outside_to[1] - outside_from[1]];
    let length = (run[0] * run[0] + run[1] * run[1]).sqrt();
    let width = NAME.width_mm(&words);
    if length > f64::MIN_POSITIVE {
        const UPRIGHT: f64 = 1e-9;
        let d = [run[0] / length, run[1] / length];
        let d = if d[0] < -UPRIGHT || (d[0].abs() <= UPRIGHT && d[1] > 0.0) { [-d[0], -d[1]] } else { d };
        for out in [2.6, 4.6, 6.8] {
            let c = side.outside(middle, out);
            let half = NAME.cap_mm() / 2.0;
            let at = [c[0] - d[0] * width / 2.0 - d[1] * half, c[1] - d[1] * width / 2.0 + d[0] * half];
            let text = crate::sheet::Text { at, along: d, style: NAME, text: words.clone(), width, grey: 0 };
            if let Some(text) = ground.taken.first_free([text]) {
                sheet.path(text.corners().to_vec(), true, Some(255), None);
                sheet.text_along(text.at, text.along, Anchor::Start, text.style, &text.text);
                return;
            }
        }
    }
    ground.unplaced.push(words);
}
