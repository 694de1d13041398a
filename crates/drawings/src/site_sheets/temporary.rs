//! Props, braces and the diagonals that stay: a plan of them, and what to cut.

use job::written::{Lengths, degrees};
use roof::solution::Solution;
use site::sequence::{Brace, BraceCut, BraceWay, End, Prop, PropFoot, PuttingUp, Racking};

use crate::flow::Flow;
use crate::layout::Room;
use crate::page::{BOTTOM, LEFT, Page, RIGHT, ROOM, TOP};
use crate::sheet::{Dash, Pen, Role, Sheet};
use crate::site_sheets::parts::{FIGURE, MOST_LINES, SMALL, STRONG, WORDS, paragraph, part, pieces};
use crate::site_sheets::plan::{Ground, Sign, along, key};
use crate::table::{Column, Table};

/// On every sheet of props and braces.
pub const CAUTION: &str = "Places and lengths from the drawn roof; what props, nails and the floor below carry is not checked \
                           here. Measure before cutting. Local rules, the scaffold designer and the principal contractor \
                           decide.";
/// Free round the plan, mm.
const FREE: f64 = 9.0;
const BRACE: Pen = Pen::black(0.55);
const DIAGONAL: Pen = Pen::dashed(0.6, Dash::Chain);
/// Width of the column of nailing marks, mm.
const NAILED: f64 = 154.0;
/// Half a prop on the plan, mm.
const PROP: f64 = 0.9;

/// The sheets, if anything is temporary or stays as bracing.
pub fn pages(solution: &Solution, putting_up: &PuttingUp) -> Vec<Page> {
    if putting_up.props.is_empty() && putting_up.braces.is_empty() && putting_up.permanent.is_empty() {
        return Vec::new();
    }
    let lengths = Lengths::from_show(&solution.show);
    let mut flow = Flow::new("Props and braces", false, CAUTION);
    let (sheet, y) = flow.block(BOTTOM - TOP - 11.0);
    let unplaced = plan(sheet, solution, putting_up, Room { x: LEFT, y, w: ROOM, h: BOTTOM - y });
    if !unplaced.is_empty() {
        paragraph(&mut flow, SMALL, &format!("No room on the plan for: {}.", unplaced.join(", ")));
    }
    props(&mut flow, &putting_up.props, lengths);
    braces(&mut flow, &putting_up.braces, lengths);
    permanent(&mut flow, &putting_up.permanent, lengths);
    flow.finish()
}

fn prop_sign(sheet: &mut Sheet, [x, y]: [f64; 2]) {
    sheet.rect([x - PROP, y - PROP], [2.0 * PROP, 2.0 * PROP], Some(0), None);
}

fn plan(sheet: &mut Sheet, solution: &Solution, putting_up: &PuttingUp, room: Room) -> Vec<String> {
    const KEY: f64 = 6.0;
    let ends = putting_up.braces.iter().flat_map(|b| [b.from, b.to]);
    let ends: Vec<[f64; 2]> = ends.chain(putting_up.props.iter().map(|p| p.foot)).map(|p| [p[0], p[1]]).collect();
    let mut unplaced = Vec::new();
    let words = format!(
        "Plan with {} props, {} braces and {} diagonals that stay.",
        putting_up.props.len(),
        putting_up.braces.len(),
        putting_up.permanent.len()
    );
    sheet.part(Role::Figure(words), |sheet| {
        let inner = Room { h: room.h - KEY, ..room };
        let Some(mut ground) = Ground::draw(sheet, solution, &ends, inner, FREE) else { return };
        ground.walls(sheet, solution);
        for d in &putting_up.permanent {
            sheet.line(ground.place(d.from), ground.place(d.to), DIAGONAL);
        }
        for b in &putting_up.braces {
            sheet.line(ground.place(b.to), ground.place(b.from), BRACE);
        }
        for p in &putting_up.props {
            prop_sign(sheet, ground.place(p.foot));
        }
        for p in &putting_up.props {
            let at = ground.place(p.foot);
            ground.name(sheet, &p.name, &[at]);
        }
        for b in &putting_up.braces {
            let places = along(ground.place(b.to), ground.place(b.from));
            ground.name(sheet, &b.name, &places);
        }
        for d in &putting_up.permanent {
            let places = along(ground.place(d.from), ground.place(d.to));
            ground.name(sheet, &d.name, &places);
        }
        unplaced = ground.unplaced;
    });
    let line = |pen: Pen| move |sheet: &mut Sheet, [x, y]: [f64; 2]| sheet.line([x, y], [x + 11.0, y], pen);
    let (brace, diagonal) = (line(BRACE), line(DIAGONAL));
    let signs = [
        Sign { words: "prop", draw: &|sheet, [x, y]| prop_sign(sheet, [x + 9.0, y]) },
        Sign { words: "temporary brace", draw: &brace },
        Sign { words: "diagonal under the rafters, stays", draw: &diagonal },
        Sign {
            words: "rafters, ridges, hips and valleys are drawn grey",
            draw: &|sheet, [x, y]| sheet.line([x, y], [x + 11.0, y], Pen::grey(0.3, 150)),
        },
    ];
    key(sheet, [LEFT, BOTTOM - 1.0], RIGHT, &signs);
    unplaced
}

/// An end of a timber in words.
const fn end(end: End) -> &'static str {
    match end {
        End::Foot => "foot",
        End::Head => "head",
    }
}

fn props(flow: &mut Flow, props: &[Prop], lengths: Lengths) {
    if props.is_empty() {
        return;
    }
    flow.break_page();
    part(flow, "Props");
    let mut table = Table::new(&[
        Column::words("prop", 18.0, FIGURE),
        Column::words("under", 34.0, STRONG),
        Column::words("where along it", 58.0, WORDS),
        Column::words("stands on", 61.0, WORDS),
        Column::figures("height to the\nunderside, plumb", 34.0, WORDS),
        Column::figures("cut to", 34.0, FIGURE),
        Column::figures("head cut,\nfrom square", 38.0, FIGURE),
    ]);
    for p in props {
        let (on, least) = match p.from {
            PropFoot::PlateLevel => ("level of the plates: add the drop to the floor", ""),
            PropFoot::Joists => ("boards on the ceiling joists", ""),
            PropFoot::InPlace => ("measured in place, from scaffold or floor", "at least "),
        };
        let cells = [
            p.name.clone(),
            p.under.clone(),
            format!("{} from its {} end", lengths.write_with_unit(p.from_end_mm), end(p.from_end)),
            on.to_owned(),
            format!("{least}{}", lengths.write(p.height_mm)),
            format!("{least}{}", lengths.write(p.cut_mm)),
            degrees(p.head_cut_deg),
        ];
        table.row(&cells, MOST_LINES);
    }
    flow.table(&table);
    flow.space(1.0);
    paragraph(
        flow,
        WORDS,
        "A prop stands plumb on a sole board, with folding wedges; its cut length leaves room for both.",
    );
}

/// A cut of a brace: on its wide side, and on its edge where that is not square.
fn cut(cut: BraceCut) -> String {
    const SQUARE: f64 = 0.05;
    let face = degrees(cut.face_angle_deg);
    if cut.edge_angle_deg.abs() < SQUARE { face } else { format!("{face}, edge {}", degrees(cut.edge_angle_deg)) }
}

fn braces(flow: &mut Flow, braces: &[Brace], lengths: Lengths) {
    if braces.is_empty() {
        return;
    }
    part(flow, "Temporary braces");
    let mut table = Table::new(&[
        Column::words("brace", 18.0, FIGURE),
        Column::words("holds", 24.0, WORDS),
        Column::words("head on", 36.0, STRONG),
        Column::words("foot on", 46.0, STRONG),
        Column::figures("length,\npoint to point", 32.0, FIGURE),
        Column::figures("from level", 22.0, WORDS),
        Column::words("head cut, from square", 38.0, STRONG),
        Column::words("foot cut, from square", 38.0, STRONG),
        Column::words("section", 23.0, WORDS),
    ]);
    for b in braces {
        let way = match b.way {
            BraceWay::Along => "along it",
            BraceWay::Across => "across it",
        };
        let foot = if b.to_mark.is_empty() { "floor at the level of the plates" } else { &b.to_mark };
        let cells = [
            b.name.clone(),
            way.to_owned(),
            b.from_mark.clone(),
            foot.to_owned(),
            lengths.write(b.length_mm),
            degrees(b.slope_deg),
            cut(b.head_cut),
            cut(b.foot_cut),
            lengths.section(b.size.thickness_mm, b.size.depth_mm),
        ];
        table.row(&cells, MOST_LINES);
    }
    flow.table(&table);
    flow.space(1.0);
    paragraph(
        flow,
        WORDS,
        "Cuts are on the wide side, which stands plumb; edge: the bevel across the edge where it is not square.",
    );
}

fn permanent(flow: &mut Flow, diagonals: &[Racking], lengths: Lengths) {
    if diagonals.is_empty() {
        return;
    }
    part(flow, "Diagonals under the rafters that stay");
    let mut table = Table::new(&[
        Column::words("piece", 16.0, FIGURE),
        Column::words("slope over\nwall", 22.0, STRONG),
        Column::words("section", 23.0, WORDS),
        Column::figures("length", 22.0, FIGURE),
        Column::figures("on the slope,\nfrom level", 24.0, WORDS),
        Column::figures("nails\nat each", 16.0, FIGURE),
        Column::words("nailing marks from its lower end: rafter and distance", NAILED, WORDS),
    ]);
    for piece in diagonals {
        let marks: Vec<String> =
            piece.nailed.iter().map(|n| format!("{} {}", n.mark, lengths.write(n.along_mm))).collect();
        let mut cells = [
            piece.name.clone(),
            piece.wall.clone(),
            lengths.section(piece.size.thickness_mm, piece.size.depth_mm),
            lengths.write(piece.length_mm),
            degrees(piece.angle_deg),
            piece.nails_each.to_string(),
            String::new(),
        ];
        for marks in pieces(WORDS, &marks.join(";  "), NAILED - 3.0, MOST_LINES) {
            cells[6] = marks;
            table.row(&cells, MOST_LINES);
            cells.fill(String::new());
        }
    }
    flow.table(&table);
}
