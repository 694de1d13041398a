//! Blocks set below one another over as many pages as they need.

use crate::page::{BOTTOM, LEFT, Page, ROOM, TOP};
use crate::sheet::{Anchor, Role, Sheet};
use crate::table::Table;
use crate::text::Style;
use std::borrow::Cow;

/// Base line of a sheet's heading, mm.
const HEADING_AT: f64 = TOP + 7.0;
/// Where blocks begin, mm.
const FIRST_BLOCK: f64 = TOP + 11.0;

/// Pages being filled.
pub struct Flow {
    pages: Vec<Page>,
    name: Cow<'static, str>,
    to_scale: bool,
    caution: &'static str,
    y: f64,
}

impl Flow {
    /// No page yet.
    pub const fn new(name: &'static str, to_scale: bool, caution: &'static str) -> Self {
        Self { pages: Vec::new(), name: Cow::Borrowed(name), to_scale, caution, y: BOTTOM }
    }

    /// As [`Flow::new`], for sheets that a job names.
    pub fn named(name: &str, caution: &'static str) -> Self {
        Self { name: Cow::Owned(name.to_owned()), ..Self::new("", false, caution) }
    }

    /// A sheet with this much height free below the returned `y`; the height
    /// counts as used. What is higher than a page gets a page.
    pub fn block(&mut self, height: f64) -> (&mut Sheet, f64) {
        if self.pages.is_empty() || self.y + height > BOTTOM {
            self.new_page();
        }
        let y = self.y;
        self.y += height;
        let last = self.pages.len() - 1;
        (&mut self.pages[last].sheet, y)
    }

    /// Leaves a space, mm.
    pub fn space(&mut self, mm: f64) {
        self.y += mm;
    }

    /// Height left on this page, mm.
    pub fn left(&self) -> f64 {
        if self.pages.is_empty() { 0.0 } else { BOTTOM - self.y }
    }

    /// Sets a table, over several pages if need be.
    pub fn table(&mut self, table: &Table) {
        let mut next = 0;
        while next < table.len() {
            let (sheet, y) = self.block(table.least_height(next));
            let (after, end) = table.draw(sheet, [LEFT, y], BOTTOM, next);
            // A row higher than a page is left out rather than tried for ever.
            next = if after == next { next + 1 } else { after };
            self.y = end;
        }
    }

    /// The next block begins a page.
    pub fn break_page(&mut self) {
        self.y = BOTTOM;
    }

    /// The pages.
    pub fn finish(self) -> Vec<Page> {
        self.pages
    }

    fn new_page(&mut self) {
        let mut page = Page::new(&self.name, self.to_scale, self.caution);
        let heading = if self.pages.is_empty() { self.name.to_string() } else { format!("{}, continued", self.name) };
        page.sheet.part(Role::Heading, |s| {
            s.text_within([LEFT, HEADING_AT], Anchor::Start, Style::bold(20.0), &heading, ROOM);
        });
        self.pages.push(page);
        self.y = FIRST_BLOCK;
    }
}
