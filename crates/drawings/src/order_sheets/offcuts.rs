//! Offcuts that are kept, with room to write what became of them, and what goes up: weights and lifts.

use job::written::{Lengths, fixed};
use order::whole::Order;
use roof::solution::Solution;

use crate::flow::Flow;
use crate::order_sheets::buy::paragraph;
use crate::order_sheets::words::{group_name, kilograms, placed};
use crate::page::{BOTTOM, LEFT, Page, RIGHT};
use crate::table::{Column, Table};
use crate::text::Style;

const KEPT_CAUTION: &str = "Write the name on the end of every offcut that is kept. Lengths are what the plan leaves: \
                            measure before using one.";
const UP_CAUTION: &str = "Weights are worked out, not weighed: timber fresh from the yard or wet weighs more. Whoever \
                          owns the hoist or crane says what it lifts.";
const WORDS: Style = Style::regular(10.0);
const SMALL: Style = Style::regular(9.0);
const STRONG: Style = Style::bold(11.0);
const FIGURE: Style = Style::bold(13.0);
/// Rows left white for offcuts that nobody planned.
const WHITE_ROWS: usize = 8;
/// Columns to write in: rows are as high as handwriting.
const HAND: Style = Style::regular(18.0);

/// The register of offcuts; none when none is kept.
pub fn offcuts(solution: &Solution, order: &Order) -> Vec<Page> {
    let lengths = Lengths::from_show(&solution.show);
    let mut table = Table::new(&[
        Column::words("name", 20.0, FIGURE),
        Column::words("section and class", 46.0, STRONG),
        Column::figures("length", 32.0, FIGURE),
        Column::figures("layout", 18.0, WORDS),
        Column::words("what it was used for", 116.0, HAND),
        Column::words("by, and when", 45.0, HAND),
    ]);
    for placed in placed(&order.timber) {
        for name in placed.offcuts() {
            let cells = [
                name,
                group_name(lengths, placed.timber),
                lengths.write_with_unit(placed.layout.left_mm),
                placed.number.to_string(),
                String::new(),
                String::new(),
            ];
            table.row(&cells, 2);
        }
    }
    if table.len() == 0 {
        return Vec::new();
    }
    for _ in 0..WHITE_ROWS {
        table.row(&[const { String::new() }; 6], 2);
    }
    let mut flow = Flow::new("Offcuts to keep", false, KEPT_CAUTION);
    flow.table(&table);
    flow.finish()
}

/// What goes up, in two columns of a sheet; none when nothing has a weight.
pub fn weights(order: &Order) -> Vec<Page> {
    let mut table = Table::new(&[
        Column::words("what goes up", 55.0, Style::bold(9.0)),
        Column::figures("pieces", 15.0, SMALL),
        Column::figures("one weighs", 20.0, SMALL),
        Column::figures("all weigh", 22.0, Style::bold(10.0)),
        Column::figures("in one\nlift", 13.0, SMALL),
        Column::figures("lifts", 11.0, Style::bold(10.0)),
    ]);
    for load in &order.lifts {
        let heavy = load.pieces_per_lift == 0;
        let cells = [
            if heavy { format!("{}: one is too heavy for a lift", load.what) } else { load.what.clone() },
            load.pieces.to_string(),
            format!("{} kg", fixed(load.each_kg, 1)),
            kilograms(load.kg),
            if heavy { "–".to_owned() } else { load.pieces_per_lift.to_string() },
            if heavy { "–".to_owned() } else { load.lifts.to_string() },
        ];
        table.row(&cells, 3);
    }
    if table.len() == 0 {
        return Vec::new();
    }
    let whole: f64 = order.lifts.iter().map(|l| l.kg).sum();
    let lifts: u32 = order.lifts.iter().map(|l| l.lifts).fold(0, u32::saturating_add);
    let none = String::new();
    let cells = ["in all".to_owned(), none.clone(), none.clone(), kilograms(whole), none, lifts.to_string()];
    table.row(&cells, 1);
    let mut flow = Flow::new("What goes up", false, UP_CAUTION);
    paragraph(
        &mut flow,
        WORDS,
        &format!("One lift holds one kind of thing, and no more than {}.", kilograms(order.lift_kg)),
    );
    let mut next = 0;
    while next < table.len() {
        // The first block of a page begins it; what is left of the page is then used up.
        let (sheet, y) = flow.block(table.least_height(next));
        let (after, _) = table.draw(sheet, [LEFT, y], BOTTOM, next);
        // A row higher than a page is left out rather than tried for ever.
        next = if after == next { next + 1 } else { after };
        if next < table.len() {
            next = table.draw(sheet, [RIGHT - table.width(), y], BOTTOM, next).0;
        }
        flow.break_page();
    }
    flow.finish()
}
