//! Sheets as a tagged PDF. The same sheets give the same bytes: no clock, no
//! random numbers, fonts bundled.

use std::num::NonZeroU16;

use krilla::geom::{Path, PathBuilder, Point, Transform};
use krilla::metadata::Metadata;
use krilla::page::PageSettings;
use krilla::paint::{Fill, LineCap, LineJoin, Stroke, StrokeDash};
use krilla::surface::Surface;
use krilla::tagging::{Artifact, ContentTag, SpanTag, TableHeaderScope, Tag, TagGroup, TagKind, TagTree};
use krilla::text::{Font, GlyphId, KrillaGlyph};
use krilla::{Document, SerializeSettings};

use crate::PackError;
use crate::sheet::{Item, Pen, Pt, Role, Sheet, Text};
use crate::text::{BOLD, MM_PER_POINT, REGULAR};

/// Names written into the document's own description.
pub struct Info<'a> {
    /// Title of the document.
    pub title: &'a str,
    /// What it holds.
    pub subject: &'a str,
}

struct Fonts {
    regular: Font,
    bold: Font,
}

/// Writes sheets as PDF, one page each.
///
/// # Errors
/// [`PackError::Font`] when a bundled font can't be read, and
/// [`PackError::Pdf`] when the document can't be closed.
pub fn write(sheets: &[Sheet], info: &Info<'_>) -> Result<Vec<u8>, PackError> {
    let load = |data: &'static [u8]| Font::new(data.into(), 0).ok_or(PackError::Font);
    let fonts = Fonts { regular: load(REGULAR)?, bold: load(BOLD)? };
    let mut document = Document::new_with(SerializeSettings { enable_tagging: true, ..SerializeSettings::default() });
    document.set_metadata(
        Metadata::new()
            .title(info.title.to_owned())
            .description(info.subject.to_owned())
            .creator("Seatcut".to_owned())
            .producer("Seatcut".to_owned())
            .language("en-GB".to_owned()),
    );
    let mut tree = TagTree::new().with_lang(Some("en-GB".to_owned()));
    for sheet in sheets {
        let size = (points(sheet.width), points(sheet.height));
        let settings = PageSettings::from_wh(size.0, size.1).ok_or(PackError::PageSize)?;
        let mut page = document.start_page_with(settings);
        let mut surface = page.surface();
        tree.push(Writer { surface: &mut surface, fonts: &fonts, parts: Vec::new(), run: None }.page(sheet));
        surface.finish();
        page.finish();
    }
    document.set_tag_tree(tree);
    document.finish().map_err(|e| PackError::Pdf(e.to_string()))
}

fn points(mm: f64) -> f32 {
    (mm / MM_PER_POINT) as f32
}

/// A part that has begun.
struct Part {
    /// `None` for what is not read aloud.
    group: Option<TagGroup>,
    /// Lines and fills belong to it, not only text.
    drawn: bool,
}

/// A run of content, as the page's stream marks it.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Run {
    /// Belongs to the innermost part.
    Content,
    /// Belongs to none: ornament, or repeated on every sheet.
    Ornament,
}

struct Writer<'s, 'a, 'f> {
    surface: &'s mut Surface<'a>,
    fonts: &'f Fonts,
    parts: Vec<Part>,
    run: Option<Run>,
}

impl Writer<'_, '_, '_> {
    fn page(&mut self, sheet: &Sheet) -> TagGroup {
        self.parts = vec![Part { group: Some(TagGroup::new(Tag::Section)), drawn: false }];
        for item in &sheet.items {
            match item {
                Item::Begin(role) => self.begin(role),
                Item::End => self.end(),
                Item::Path { points, closed, fill, pen } => self.path(points, *closed, *fill, *pen),
                Item::Text(text) => self.text(text),
            }
        }
        self.close_run();
        // An unfinished part still belongs to the page.
        while self.parts.len() > 1 {
            self.end();
        }
        self.parts.pop().and_then(|p| p.group).unwrap_or_else(|| TagGroup::new(Tag::Section))
    }

    fn begin(&mut self, role: &Role) {
        self.close_run();
        let kind: TagKind = match role {
            Role::Heading => Tag::Hn(NonZeroU16::MIN, None).into(),
            Role::Figure(words) => Tag::Figure(Some(words.clone())).into(),
            Role::Table => Tag::Table.into(),
            Role::Row => Tag::TR.into(),
            Role::HeadCell => Tag::TH(TableHeaderScope::Column).into(),
            Role::Cell => Tag::TD.into(),
            Role::Margin => {
                self.parts.push(Part { group: None, drawn: false });
                return;
            }
        };
        let drawn = matches!(role, Role::Figure(_));
        self.parts.push(Part { group: Some(TagGroup::new(kind)), drawn });
    }

    fn end(&mut self) {
        self.close_run();
        if self.parts.len() < 2 {
            return;
        }
        if let Some(group) = self.parts.pop().and_then(|p| p.group)
            && let Some(Part { group: Some(outer), .. }) = self.parts.last_mut()
        {
            outer.push(group);
        }
    }

    fn close_run(&mut self) {
        if self.run.take().is_some() {
            self.surface.end_tagged();
        }
    }

    /// Makes sure a run is open that text, or lines and fills, belong to.
    fn open_run(&mut self, is_text: bool) {
        let loose = self.parts.len() == 1;
        let wanted = match self.parts.last() {
            Some(Part { group: Some(_), drawn }) if is_text || *drawn => Run::Content,
            _ => Run::Ornament,
        };
        if self.run == Some(wanted) && !loose {
            return;
        }
        self.close_run();
        let surface = &mut *self.surface;
        match self.parts.last_mut().and_then(|p| p.group.as_mut()) {
            // Text outside any part is a paragraph of its own.
            Some(group) if wanted == Run::Content && loose => {
                let mut paragraph = TagGroup::new(Tag::P);
                paragraph.push(surface.start_tagged(ContentTag::Span(SpanTag::empty())));
                group.push(paragraph);
            }
            Some(group) if wanted == Run::Content => group.push(surface.start_tagged(ContentTag::Other)),
            _ => {
                let _ = surface.start_tagged(ContentTag::Artifact(Artifact::default()));
            }
        }
        self.run = Some(wanted);
    }

    fn path(&mut self, points: &[Pt], closed: bool, fill: Option<u8>, pen: Option<Pen>) {
        let Some(path) = build_path(points, closed) else { return };
        if fill.is_none() && pen.is_none() {
            return;
        }
        self.open_run(false);
        self.surface.set_fill(fill.map(grey_fill));
        self.surface.set_stroke(pen.map(stroke));
        self.surface.draw_path(&path);
    }

    fn text(&mut self, text: &Text) {
        let mut glyphs = Vec::with_capacity(text.text.len());
        for (start, c) in text.text.char_indices() {
            let (id, advance) = text.style.glyph(c);
            let range = start..start + c.len_utf8();
            glyphs.push(KrillaGlyph::new(GlyphId::new(u32::from(id)), advance as f32, 0.0, 0.0, 0.0, range, None));
        }
        if glyphs.is_empty() {
            return;
        }
        self.open_run(true);
        self.surface.set_fill(Some(grey_fill(text.grey)));
        self.surface.set_stroke(None);
        let font = if text.style.bold { &self.fonts.bold } else { &self.fonts.regular };
        let [dx, dy] = text.along.map(|v| v as f32);
        let turn = Transform::from_row(dx, dy, -dy, dx, points(text.at[0]), points(text.at[1]));
        self.surface.push_transform(&turn);
        let size = text.style.size_pt as f32;
        self.surface.draw_glyphs(Point::from_xy(0.0, 0.0), &glyphs, font.clone(), &text.text, size, false);
        self.surface.pop();
    }
}

fn build_path(from: &[Pt], closed: bool) -> Option<Path> {
    let mut builder = PathBuilder::new();
    for (i, &[x, y]) in from.iter().enumerate() {
        if i == 0 {
            builder.move_to(points(x), points(y));
        } else {
            builder.line_to(points(x), points(y));
        }
    }
    if closed {
        builder.close();
    }
    builder.finish()
}

fn grey_fill(grey: u8) -> Fill {
    Fill { paint: krilla::color::luma::Color::new(grey).into(), ..Fill::default() }
}

fn stroke(pen: Pen) -> Stroke {
    let pattern = pen.dash.pattern();
    Stroke {
        paint: krilla::color::luma::Color::new(pen.grey).into(),
        width: points(pen.width),
        line_cap: if pattern.is_empty() { LineCap::Round } else { LineCap::Butt },
        line_join: LineJoin::Round,
        dash: (!pattern.is_empty())
            .then(|| StrokeDash { array: pattern.iter().map(|&mm| points(mm)).collect(), offset: 0.0 }),
        ..Stroke::default()
    }
}
