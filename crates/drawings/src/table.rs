//! Tables that break over pages.

use crate::sheet::{Anchor, Pen, Role, Sheet};
use crate::text::{SMALLEST_PT, Style, one_line};

/// A column.
#[derive(Clone, Copy)]
pub struct Column {
    /// Words at its head.
    pub head: &'static str,
    /// Width, mm.
    pub width: f64,
    /// Where its words stand.
    pub anchor: Anchor,
    /// Size and weight of its words.
    pub style: Style,
}

impl Column {
    /// Words, from the left.
    pub const fn words(head: &'static str, width: f64, style: Style) -> Self {
        Self { head, width, anchor: Anchor::Start, style }
    }

    /// Figures, to the right.
    pub const fn figures(head: &'static str, width: f64, style: Style) -> Self {
        Self { head, width, anchor: Anchor::End, style }
    }
}

/// A table: columns and rows of as many cells.
pub struct Table {
    columns: Vec<Column>,
    rows: Vec<Row>,
}

struct Row {
    cells: Vec<Vec<(Style, String)>>,
    height: f64,
    barred: bool,
}

/// Space left and right of the words in a cell, mm.
const PAD: f64 = 1.2;
/// Space above and below the words in a cell, mm.
const PAD_Y: f64 = 1.1;
/// Width of a bar, and how far in from the edge of its column, mm.
const BAR: f64 = 3.0;
/// As above, mm.
const BAR_IN: f64 = 0.5;
const HEAD: Style = Style::regular(SMALLEST_PT);
/// Height of a line of the head, and space around the lines, mm.
const HEAD_LINE: f64 = 3.4;
/// Space around the head's lines, mm.
const HEAD_PAD: f64 = 1.8;

impl Table {
    /// A table without rows.
    pub fn new(columns: &[Column]) -> Self {
        Self { columns: columns.to_vec(), rows: Vec::new() }
    }

    /// Adds a row; a cell's own line ends are kept, and long lines break into at
    /// most `most_lines`.
    pub fn row(&mut self, cells: &[String], most_lines: usize) {
        let mut lines = Vec::with_capacity(cells.len());
        let mut height: f64 = 0.0;
        for (cell, column) in cells.iter().zip(&self.columns) {
            let wrapped: Vec<(Style, String)> =
                cell.split('\n').flat_map(|line| set(column, &one_line(line), most_lines)).collect();
            height = height.max(wrapped.len().max(1) as f64 * column.style.line_mm());
            lines.push(wrapped);
        }
        self.rows.push(Row { cells: lines, height: height + PAD_Y, barred: false });
    }

    /// Marks the row added last with a heavy black bar in its first column, whose cell must be empty.
    pub fn bar_last(&mut self) {
        if let Some(row) = self.rows.last_mut() {
            row.barred = true;
        }
    }

    /// Number of rows.
    pub fn len(&self) -> usize {
        self.rows.len()
    }

    /// Width of all columns, mm.
    pub fn width(&self) -> f64 {
        self.columns.iter().map(|c| c.width).sum()
    }

    /// Height of all rows and the head, mm.
    pub fn height(&self) -> f64 {
        self.head_height() + self.rows.iter().map(|r| r.height).sum::<f64>()
    }

    /// Height of the head and the row of this number, mm: the least worth starting.
    pub fn least_height(&self, first: usize) -> f64 {
        self.head_height() + self.rows.get(first).map_or(0.0, |r| r.height)
    }

    /// Draws rows from number `first` on with the top left corner at `x`,
    /// `y`, as far as they reach above `bottom`; returns the number of the
    /// first row not drawn and where the table ends.
    pub fn draw(&self, sheet: &mut Sheet, [x, y]: [f64; 2], bottom: f64, first: usize) -> (usize, f64) {
        let mut at = y + self.head_height();
        let mut next = first;
        sheet.part(Role::Table, |sheet| {
            self.head(sheet, x, y);
            for row in self.rows.iter().skip(first) {
                if at + row.height > bottom {
                    break;
                }
                if row.barred {
                    sheet.rect([x + BAR_IN, at + 0.4], [BAR, row.height - 0.8], Some(0), None);
                }
                self.cells(sheet, x, at, row);
                at += row.height;
                next += 1;
                sheet.line([x, at], [x + self.width(), at], Pen::grey(0.15, 120));
            }
        });
        (next, at)
    }

    /// Heads may have lines of their own, as many as the longest needs.
    fn head_height(&self) -> f64 {
        let lines = self.columns.iter().map(|c| c.head.split('\n').count()).max().unwrap_or(1);
        HEAD_LINE * lines as f64 + HEAD_PAD
    }

    fn head(&self, sheet: &mut Sheet, mut x: f64, y: f64) {
        let end = y + self.head_height();
        sheet.line([x, end], [x + self.width(), end], Pen::black(0.35));
        sheet.part(Role::Row, |sheet| {
            for column in &self.columns {
                let at = anchor_at(column, x);
                sheet.part(Role::HeadCell, |s| {
                    let mut base = end - 1.4 - HEAD_LINE * (column.head.split('\n').count() - 1) as f64;
                    for line in column.head.split('\n') {
                        s.text_within([at, base], column.anchor, HEAD, line, column.width - PAD);
                        base += HEAD_LINE;
                    }
                });
                x += column.width;
            }
        });
    }

    fn cells(&self, sheet: &mut Sheet, mut x: f64, y: f64, row: &Row) {
        sheet.part(Role::Row, |sheet| {
            for (column, lines) in self.columns.iter().zip(&row.cells) {
                let at = anchor_at(column, x);
                sheet.part(Role::Cell, |s| {
                    // One line stands in the middle of its row.
                    let block = (lines.len().max(1) - 1) as f64 * column.style.line_mm() + column.style.cap_mm();
                    let mut base = y + (row.height - block) / 2.0 + column.style.cap_mm();
                    for (style, line) in lines {
                        s.text([at, base], column.anchor, *style, line);
                        base += column.style.line_mm();
                    }
                });
                x += column.width;
            }
        });
    }
}

/// Words break into lines; figures are never broken, but set smaller.
fn set(column: &Column, line: &str, most_lines: usize) -> Vec<(Style, String)> {
    let width = column.width - 2.0 * PAD;
    if column.anchor == Anchor::End {
        vec![column.style.fit(line, width)]
    } else {
        column.style.wrap_at_most(line, width, most_lines).into_iter().map(|l| (column.style, l)).collect()
    }
}

fn anchor_at(column: &Column, x: f64) -> f64 {
    match column.anchor {
        Anchor::Start => x + PAD,
        Anchor::Middle => x + column.width / 2.0,
        Anchor::End => x + column.width - PAD,
    }
}
