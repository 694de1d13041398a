//! Access: what stands round the roof, what it carries, and what is said of it.

use job::written::{Lengths, fixed, tenth};
use roof::solution::Solution;
use site::access::layout::{Layout, Run};
use site::access::{Access, BayCheck, Verdict};

use crate::flow::Flow;
use crate::layout::Room;
use crate::page::{BOTTOM, LEFT, Page, ROOM};
use crate::site_sheets::layout;
use crate::site_sheets::parts::{FIGURE, MOST_LINES, SMALL, STRONG, WORDS, basis, boxed, paragraph, part, verdict};
use crate::site_sheets::statements::section;
use crate::table::{Column, Table};

/// On every sheet of access.
pub const CAUTION: &str = "No design of a scaffold: it is designed, put up, changed and inspected by who is competent, and the \
                           handover certificate says what it carries. Local rules, the scaffold designer and the principal \
                           contractor decide.";

/// The sheets.
pub fn pages(solution: &Solution, access: &Access) -> Vec<Page> {
    let lengths = Lengths::from_show(&solution.show);
    let mut flow = Flow::new("Access", false, CAUTION);
    boxed(&mut flow, "Who decides", &access.cautions);
    plan(&mut flow, solution, access, lengths);
    runs(&mut flow, &access.layout, lengths);
    if let Some(bay) = &access.bay {
        load(&mut flow, access, bay, lengths);
    }
    for one in &access.sections {
        section(&mut flow, one);
    }
    flow.finish()
}

fn plan(flow: &mut Flow, solution: &Solution, access: &Access, lengths: Lengths) {
    const LEAST: f64 = 95.0;
    if flow.left() < LEAST {
        flow.break_page();
    }
    let layout = &access.layout;
    let asked = if layout.asked { "as the job says" } else { "as the roof suggests" };
    let height = if layout.plate_height_said { "as the job says" } else { "TAKEN, measure it" };
    let words = format!(
        "{}, {asked}: {} all round, {} bays of {}, platform {} wide. Plates {} above the ground ({height}); highest platform at {}; \
         ladder {} long, its foot {} out.",
        capital(&layout.kind.replace('-', " ")),
        lengths.total(layout.length_mm),
        layout.bays,
        lengths.write_with_unit(layout.bay_mm),
        lengths.write_with_unit(layout.width_mm),
        lengths.write_with_unit(layout.plate_height_mm),
        lengths.write_with_unit(layout.highest_mm),
        lengths.write_with_unit(access.ladder_mm[0]),
        lengths.write_with_unit(access.ladder_mm[1]),
    );
    paragraph(flow, STRONG, &words);
    let height = flow.left();
    let (sheet, y) = flow.block(height);
    let unplaced = layout::draw(sheet, solution, access, Room { x: LEFT, y, w: ROOM, h: (BOTTOM - y).min(height) });
    if !unplaced.is_empty() {
        paragraph(flow, SMALL, &format!("No room on the plan for: {}.", unplaced.join("; ")));
    }
}

/// With a capital letter in front.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

fn runs(flow: &mut Flow, layout: &Layout, lengths: Lengths) {
    if layout.runs.is_empty() {
        return;
    }
    part(flow, "Runs along the walls");
    let mut table = Table::new(&[
        Column::words("wall", 20.0, FIGURE),
        Column::words("", 32.0, WORDS),
        Column::figures("wall", 24.0, WORDS),
        Column::figures("off the wall", 24.0, WORDS),
        Column::figures("outside length", 29.0, FIGURE),
        Column::figures("bays", 17.0, FIGURE),
        Column::figures("edge of roof\nabove ground", 29.0, WORDS),
        Column::figures("platform\nabove ground", 29.0, FIGURE),
        Column::words("lifts", 38.0, WORDS),
        Column::words("up the gable", 35.0, WORDS),
    ]);
    for run in &layout.runs {
        table.row(&run_row(run, lengths), MOST_LINES);
    }
    flow.table(&table);
    flow.space(1.0);
    let words = format!(
        "{} bay lifts in all, gables with them; {} m of boards for the working lift.",
        layout.bay_lifts,
        tenth(layout.board_m)
    );
    paragraph(flow, WORDS, &words);
}

fn run_row(run: &Run, lengths: Lengths) -> Vec<String> {
    let sort = match (run.gable, run.courtyard) {
        (true, true) => "gable, courtyard",
        (true, false) => "gable",
        (false, true) => "eaves, courtyard",
        (false, false) => "eaves",
    };
    let gable = match run.apex_mm {
        Some(apex) => {
            let lifts = if run.gable_lifts == 1 { "lift" } else { "lifts" };
            format!("{} more {lifts}, top at {}", run.gable_lifts, lengths.write(apex))
        }
        None => "–".to_owned(),
    };
    vec![
        run.wall.clone(),
        sort.to_owned(),
        lengths.write(run.wall_mm),
        lengths.write(run.off_wall_mm),
        lengths.write(run.length_mm),
        run.bays.to_string(),
        lengths.write(run.edge_mm),
        lengths.write(run.platform_mm),
        format!("{} of {}", run.lifts, lengths.write(run.lift_mm)),
        gable,
    ]
}

fn load(flow: &mut Flow, access: &Access, bay: &BayCheck, lengths: Lengths) {
    part(flow, &format!("Load class {}: one bay with {} people and the stack", bay.class, bay.people));
    if let Some(stack) = &access.stack {
        let words = format!(
            "The stack: {} × {}, {} long, {} kg together.",
            stack.pieces,
            stack.what,
            lengths.write_with_unit(stack.length_mm),
            fixed(stack.kg, 0)
        );
        paragraph(flow, WORDS, &words);
    }
    let mut table = Table::new(&[
        Column::words("", 4.5, WORDS),
        Column::words("check", 66.0, STRONG),
        Column::figures("there is", 34.0, FIGURE),
        Column::figures("there may be", 34.0, FIGURE),
        Column::words("", 20.0, STRONG),
        Column::words("how", 118.5, WORDS),
    ]);
    let how = format!(
        "{} kN/m² ({}) is {} kg on the bay; people {} kg; left {} kg. Beside them {} of the stack fit; with nothing else on it, {} people.",
        tenth(bay.spread_kn_m2 * 100.0).parse::<f64>().map_or_else(|_| "–".to_owned(), |v| fixed(v / 100.0, 2)),
        basis(bay.spread_basis),
        fixed(bay.capacity_kg, 0),
        fixed(bay.people_kg, 0),
        fixed(bay.left_kg, 0),
        bay.pieces_fit,
        bay.people_fit
    );
    let rows = [
        (
            bay.average,
            "stack in the bay, on average",
            format!("{} kg", fixed(bay.share_kg, 0)),
            format!("{} kg", fixed(bay.left_kg, 0)),
            how,
        ),
        (
            bay.patch,
            "heaviest half metre of the stack",
            format!("{} kN", fixed(bay.patch_kn, 2)),
            bay.patch_limit_kn.map_or_else(|| "not known".to_owned(), |kn| format!("{} kN", fixed(kn, 2))),
            "on a patch of half a metre square".to_owned(),
        ),
    ];
    for (outcome, what, is, may, how) in rows {
        table.row(&[String::new(), what.to_owned(), is, may, verdict(Some(outcome)).to_owned(), how], MOST_LINES);
        if outcome == Verdict::Over {
            table.bar_last();
        }
    }
    flow.table(&table);
    flow.space(1.0);
    paragraph(
        flow,
        WORDS,
        "within: by a published figure, as far as that goes. ASK: no figure to pass by. OVER: fewer people, a smaller stack, or another class.",
    );
}
