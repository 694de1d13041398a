//! What is checked before going on, where straps go, and where nothing may be stacked.

use job::written::Lengths;
use roof::solution::Solution;
use site::sequence::{PuttingUp, StrapKind, StrapPlace};

use crate::flow::Flow;
use crate::layout::Room;
use crate::page::{LEFT, Page, RIGHT, ROOM};
use crate::sheet::{Pen, Role, Sheet};
use crate::site_sheets::parts::{
    FIGURE, MOST_LINES, SMALL, STRONG, TICK, TICK_STYLE, WORDS, boxed, paragraph, part, pieces, standing,
};
use crate::site_sheets::plan::{Ground, Sign, key};
use crate::site_sheets::steps::tolerance;
use crate::table::{Column, Table};

/// On every sheet of holds and straps.
pub const CAUTION: &str = "Nothing goes on before its hold is passed and signed. Straps hold only in walls that can take them: \
                           local rules and building control decide; so do the scaffold designer and the principal \
                           contractor for the access.";
/// Free round the plan, mm.
const FREE: f64 = 12.0;
/// Width of the column of running dimensions, mm.
const RUNNING: f64 = 71.0;
/// Height of the plan with its key, mm.
const PLAN: f64 = 100.0;

/// The sheets.
pub fn pages(solution: &Solution, putting_up: &PuttingUp) -> Vec<Page> {
    let lengths = Lengths::from_show(&solution.show);
    let mut flow = Flow::new("Holds, straps and stacks", false, CAUTION);
    let cautions: Vec<String> = putting_up
        .cautions
        .iter()
        .map(|c| format!("{} Who decides: {}.", c.text, c.decides.trim_end_matches('.')))
        .collect();
    boxed(&mut flow, "Before anyone goes up", &cautions);
    holds(&mut flow, putting_up, lengths);
    stacks(&mut flow, putting_up, lengths);
    if !putting_up.straps.is_empty() {
        flow.break_page();
        part(&mut flow, "Straps");
        let (sheet, y) = flow.block(PLAN);
        let unplaced = strap_plan(sheet, solution, &putting_up.straps, Room { x: LEFT, y, w: ROOM, h: PLAN });
        flow.space(2.0);
        if !unplaced.is_empty() {
            paragraph(&mut flow, SMALL, &format!("No room on the plan for: {}.", unplaced.join(", ")));
        }
        straps(&mut flow, &putting_up.straps, lengths);
    }
    flow.finish()
}

fn holds(flow: &mut Flow, putting_up: &PuttingUp, lengths: Lengths) {
    if putting_up.holds.is_empty() {
        return;
    }
    part(flow, "Hold points: check, tick and sign before going on");
    let mut table = Table::new(&[
        Column::words("", 10.0, TICK_STYLE),
        Column::figures("hold", 13.0, FIGURE),
        Column::figures("step", 13.0, WORDS),
        Column::words("what", 85.0, STRONG),
        Column::words("where", 42.0, WORDS),
        Column::figures("must be", 24.0, FIGURE),
        Column::words("may be out by", 40.0, STRONG),
        Column::words("come by", 24.0, SMALL),
        Column::words("initials, date", 26.0, WORDS),
    ]);
    for hold in &putting_up.holds {
        let step = putting_up.steps.iter().find(|s| s.holds.contains(&hold.number));
        let cells = [
            TICK.to_owned(),
            hold.number.to_string(),
            step.map_or_else(|| "–".to_owned(), |s| s.number.to_string()),
            hold.what.clone(),
            hold.at.clone(),
            hold.figure_mm.map_or_else(|| "–".to_owned(), |mm| lengths.write(mm)),
            tolerance(hold),
            standing(hold.standing).to_owned(),
            String::new(),
        ];
        table.row(&cells, MOST_LINES);
    }
    flow.table(&table);
}

fn stacks(flow: &mut Flow, putting_up: &PuttingUp, lengths: Lengths) {
    if putting_up.no_stack.is_empty() {
        return;
    }
    part(flow, "Where nothing may be stacked");
    let mut table = Table::new(&[
        Column::words("where", 80.0, STRONG),
        Column::figures("clear span", 28.0, FIGURE),
        Column::words("from step to step", 34.0, WORDS),
        Column::words("why, and what to do instead", 135.0, WORDS),
    ]);
    for place in &putting_up.no_stack {
        let cells = [
            place.at.clone(),
            place.span_mm.map_or_else(|| "–".to_owned(), |mm| lengths.write(mm)),
            format!("{} – {}", place.steps[0], place.steps[1]),
            place.why.clone(),
        ];
        table.row(&cells, MOST_LINES);
    }
    flow.table(&table);
}

/// Name of a line of straps, by its place in the list from 0.
fn name(index: usize) -> String {
    format!("S{}", index + 1)
}

/// What a strap does, in words.
const fn kind(kind: StrapKind) -> &'static str {
    match kind {
        StrapKind::HoldingDown => "holds the plate down",
        StrapKind::LateralSlope => "holds the gable to the slope",
        StrapKind::LateralCeiling => "holds the gable to the ceiling joists",
    }
}

fn down(sheet: &mut Sheet, at: [f64; 2]) {
    sheet.disc(at, 0.9, Some(0), None);
}

fn lateral(sheet: &mut Sheet, [x, y]: [f64; 2]) {
    sheet.path(vec![[x - 1.3, y + 1.1], [x + 1.3, y + 1.1], [x, y - 1.3]], true, Some(255), Some(Pen::black(0.35)));
}

fn strap_plan(sheet: &mut Sheet, solution: &Solution, straps: &[StrapPlace], room: Room) -> Vec<String> {
    const KEY: f64 = 6.0;
    let mut unplaced = Vec::new();
    let words = format!("Plan with {} lines of straps.", straps.len());
    sheet.part(Role::Figure(words), |sheet| {
        let points: Vec<[f64; 2]> = straps.iter().flat_map(|s| &s.points).map(|p| [p[0], p[1]]).collect();
        let inner = Room { h: room.h - KEY, ..room };
        let Some(mut ground) = Ground::draw(sheet, solution, &points, inner, FREE) else { return };
        ground.walls(sheet, solution);
        for strap in straps {
            for point in &strap.points {
                let at = ground.place(*point);
                if strap.kind == StrapKind::HoldingDown { down(sheet, at) } else { lateral(sheet, at) }
            }
        }
        for (index, strap) in straps.iter().enumerate() {
            // From the middle outwards: at corners the straps of two walls meet.
            let mut places: Vec<[f64; 2]> = strap.points.iter().map(|p| ground.place(*p)).collect();
            let half = places.len() / 2;
            places.rotate_left(half);
            ground.name(sheet, &name(index), &places);
        }
        unplaced = ground.unplaced;
    });
    let signs = [
        Sign { words: "holds the plate down", draw: &|sheet, [x, y]| down(sheet, [x + 9.0, y]) },
        Sign { words: "holds a gable", draw: &|sheet, [x, y]| lateral(sheet, [x + 9.0, y]) },
    ];
    key(sheet, [LEFT, room.y + room.h - 1.0], RIGHT, &signs);
    unplaced
}

fn straps(flow: &mut Flow, straps: &[StrapPlace], lengths: Lengths) {
    let mut table = Table::new(&[
        Column::words("straps", 16.0, FIGURE),
        Column::words("wall", 16.0, STRONG),
        Column::words("what they do", 46.0, WORDS),
        Column::words("hook the tape on", 48.0, WORDS),
        Column::figures("line long", 22.0, WORDS),
        Column::figures("number", 15.0, FIGURE),
        Column::words("running from the hook", RUNNING, STRONG),
        Column::words("strap", 19.0, WORDS),
        Column::words("spacing", 24.0, SMALL),
    ]);
    for (index, strap) in straps.iter().enumerate() {
        let at: Vec<String> = strap.at_mm.iter().map(|mm| lengths.write(*mm)).collect();
        let mut cells = [
            name(index),
            strap.wall.clone(),
            kind(strap.kind).to_owned(),
            strap.from.clone(),
            lengths.write(strap.length_mm),
            strap.at_mm.len().to_string(),
            String::new(),
            lengths.section(strap.size.thickness_mm, strap.size.depth_mm),
            standing(strap.standing).to_owned(),
        ];
        for figures in pieces(STRONG, &at.join(",  "), RUNNING - 3.0, MOST_LINES) {
            cells[6] = figures;
            table.row(&cells, MOST_LINES);
            cells.fill(String::new());
        }
    }
    flow.table(&table);
}
