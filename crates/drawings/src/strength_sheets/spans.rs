//! Span tables to print, and for a spreadsheet.

use strength::span_table::{Carries, Purpose, SpanTable};

use crate::PackError;
use crate::flow::Flow;
use crate::page::{Block, LEFT, ROOM, framed};
use crate::pdf;
use crate::sheet::{Anchor, Role};
use crate::strength_sheets::sheet::{figures_row, figures_table};
use crate::strength_sheets::words::written_span;
use crate::table::{Column, Table};
use crate::text::Style;

const CAUTION: &str = "Member check only, for new graded timber on two supports that hold it up: not the building, not \
                       its walls, ties, bracing or straps. Building control and a structural engineer decide.";
const WORDS: Style = Style::regular(10.0);
const STRONG: Style = Style::bold(11.0);
const FIGURE: Style = Style::bold(13.0);
/// Width of a column of spans, mm.
const SPANS_WIDE: f64 = 27.0;
/// Width of the column of sizes, and of what governs, mm.
const SIZE_WIDE: f64 = 36.0;
/// Columns of spans that a sheet has room for.
pub const MOST_CENTRES: usize = 6;

/// What a table is for, in words.
fn title(table: &SpanTable) -> String {
    let of = match table.purpose {
        Purpose::Rafters => "Rafters",
        Purpose::CeilingJoists => "Ceiling joists",
    };
    format!("{of} of {}", table.class)
}

/// What its timbers do and carry, in words.
fn carries(table: &SpanTable) -> String {
    match &table.carries {
        Carries::Rafters(on) => format!(
            "Rafters at {:.1}° between the wall plate and a purlin or ridge beam. Covering {:.2} kN/m² on the slope, \
             snow zone {} at {:.0} m, peak wind pressure {:.2} kN/m²; one person. A birdsmouth of at most a third of \
             the depth on a 100 mm plate.",
            on.pitch, on.covering, on.snow_zone, on.altitude, on.wind
        ),
        Carries::CeilingJoists(on) => format!(
            "Ceiling joists between 100 mm plates, of a loft that is not lived in. Ceiling {:.2} kN/m² for good, loft \
             {:.2} kN/m²; one person. Not joists that tie rafters.",
            on.ceiling, on.loft
        ),
    }
}

/// Centres of a table in their order, mm, as far as a sheet has room.
fn centres(table: &SpanTable) -> Vec<f64> {
    let mut all: Vec<f64> = Vec::new();
    for row in &table.rows {
        if !all.contains(&row.centres_mm) {
            all.push(row.centres_mm);
        }
    }
    all.truncate(MOST_CENTRES);
    all
}

/// Sheets with span tables: A4 on its side, as a tagged PDF.
///
/// # Errors
/// When writing the document fails.
pub fn span_sheets(tables: &[SpanTable]) -> Result<Vec<u8>, PackError> {
    let block =
        Block { title: "Span tables", date: None, revision: None, rounding: "Clear spans on plan, rounded down" };
    let sheets = framed(pages(tables), &block);
    pdf::write(&sheets, &pdf::Info { title: "Span tables", subject: "Spans of rafters and ceiling joists" })
}

/// The pages before their frame.
pub(crate) fn pages(tables: &[SpanTable]) -> Vec<crate::page::Page> {
    let mut flow = Flow::new("Span table: member check only", false, CAUTION);
    for table in tables {
        flow.break_page();
        spans(&mut flow, table);
    }
    flow.finish()
}

fn spans(flow: &mut Flow, table: &SpanTable) {
    let (sheet, y) = flow.block(9.0);
    sheet.part(Role::Heading, |s| s.text([LEFT, y + 6.0], Anchor::Start, Style::bold(16.0), &title(table)));
    for text in [carries(table), format!("Service class {}. Editions: {}.", table.service, table.editions.join("; "))] {
        lines(flow, WORDS, &text);
    }
    for matter in &table.refused {
        lines(flow, STRONG, matter);
    }
    flow.space(2.0);
    let centres = centres(table);
    let governs = ROOM - SIZE_WIDE - SPANS_WIDE * centres.len() as f64;
    let mut columns = vec![Column::words("size, mm", SIZE_WIDE, STRONG)];
    columns.extend(centres.iter().map(|_| Column::figures("clear span, m,\nat centres of", SPANS_WIDE, FIGURE)));
    columns.push(Column::words("what governs", governs, WORDS));
    let mut printed = Table::new(&columns);
    let mut head = vec![String::new()];
    head.extend(centres.iter().map(|mm| format!("{mm:.0} mm")));
    head.push(String::new());
    printed.row(&head, 1);
    for first in table.rows.iter().filter(|r| r.centres_mm == centres.first().copied().unwrap_or(0.0)) {
        let same = |row: &&strength::span_table::SpanRow| {
            row.thickness_mm == first.thickness_mm && row.depth_mm == first.depth_mm
        };
        let rows: Vec<_> = table.rows.iter().filter(same).take(centres.len()).collect();
        let mut names: Vec<&str> = Vec::new();
        for row in &rows {
            if !names.contains(&row.governs.as_str()) {
                names.push(&row.governs);
            }
        }
        let mut cells = vec![format!("{:.0} × {:.0}", first.thickness_mm, first.depth_mm)];
        cells.extend(rows.iter().map(|row| written_span(row.clear_span_mm)));
        cells.push(names.join(", "));
        printed.row(&cells, 2);
    }
    flow.table(&printed);
    flow.space(3.0);
    lines(
        flow,
        WORDS,
        "Clear spans are measured level between the faces of the supports. Over 5 m in plan a timber is for an engineer.",
    );
    if table.loads.is_empty() {
        return;
    }
    flow.space(3.0);
    let mut loads = figures_table();
    for line in &table.loads {
        figures_row(&mut loads, &line.what, &line.how, line.value, &line.unit, &line.from);
    }
    flow.table(&loads);
}

fn lines(flow: &mut Flow, style: Style, text: &str) {
    for line in style.wrap_at_most(text, ROOM, 4) {
        let (sheet, y) = flow.block(style.line_mm());
        sheet.text([LEFT, y + style.cap_mm() + 0.6], Anchor::Start, style, &line);
    }
}

/// Span tables for a spreadsheet: a line for each section and centres.
///
/// # Errors
/// [`PackError::List`] when the list can't be written.
pub fn spans_csv(tables: &[SpanTable]) -> Result<String, PackError> {
    let fault = |why: &dyn std::fmt::Display| PackError::List(why.to_string());
    let mut writer = csv::Writer::from_writer(Vec::new());
    let head = ["for", "class", "thickness_mm", "depth_mm", "centres_mm", "clear_span_mm", "governs", "clause"];
    writer.write_record(head).map_err(|e| fault(&e))?;
    for table in tables {
        let purpose = match table.purpose {
            Purpose::Rafters => "rafters",
            Purpose::CeilingJoists => "ceiling joists",
        };
        for row in &table.rows {
            let figures = [row.thickness_mm, row.depth_mm, row.centres_mm].map(|mm| format!("{mm:.0}"));
            let [thickness, depth, centres] = figures;
            // Rounded down: up would be further than it may span.
            let span = format!("{:.0}", row.clear_span_mm.floor());
            let record =
                [purpose, &table.class, &thickness, &depth, &centres, &span, row.governs.as_str(), row.clause.as_str()];
            writer.write_record(record).map_err(|e| fault(&e))?;
        }
    }
    let bytes = writer.into_inner().map_err(|e| fault(&e))?;
    String::from_utf8(bytes).map_err(|e| fault(&e))
}
