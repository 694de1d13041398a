//! A sheet as a list of things to draw, in mm from its top left corner, `x`
//! to the right and `y` down. Layout writes to it; [`crate::pdf`] and
//! [`crate::svg`] read it.

use crate::text::{Style, one_line};

/// A point on a sheet, mm.
pub type Pt = [f64; 2];

/// Points beyond this are not drawn, mm: off any paper, and near where the
/// single precision of a PDF loses hundredths.
const FARTHEST: f64 = 5_000.0;

/// How a line is broken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dash {
    /// Not at all.
    Solid,
    /// Even dashes.
    Dashed,
    /// Long and short in turn: centre and pitch lines.
    Chain,
    /// Dots.
    Dotted,
}

impl Dash {
    /// Lengths of dash and gap in turn, mm.
    pub const fn pattern(self) -> &'static [f64] {
        match self {
            Self::Solid => &[],
            Self::Dashed => &[2.2, 1.2],
            Self::Chain => &[5.0, 1.0, 0.8, 1.0],
            Self::Dotted => &[0.5, 1.0],
        }
    }
}

/// A pen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pen {
    /// Width, mm.
    pub width: f64,
    /// 0 black … 255 white.
    pub grey: u8,
    /// Dash.
    pub dash: Dash,
}

impl Pen {
    /// Black and solid.
    pub const fn black(width: f64) -> Self {
        Self { width, grey: 0, dash: Dash::Solid }
    }

    /// Grey and solid.
    pub const fn grey(width: f64, grey: u8) -> Self {
        Self { width, grey, dash: Dash::Solid }
    }

    /// Black and dashed.
    pub const fn dashed(width: f64, dash: Dash) -> Self {
        Self { width, grey: 0, dash }
    }
}

/// Which point of a text its position is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// Its left end on the base line.
    Start,
    /// The middle of its base line.
    Middle,
    /// Its right end on the base line.
    End,
}

/// A line of text.
#[derive(Clone, Debug, PartialEq)]
pub struct Text {
    /// Left end of the base line, mm.
    pub at: Pt,
    /// Unit direction of the base line.
    pub along: Pt,
    /// Size and weight.
    pub style: Style,
    /// The text, one line.
    pub text: String,
    /// Its width, mm.
    pub width: f64,
    /// 0 black … 255 white.
    pub grey: u8,
}

/// What a part of a sheet is, for readers that speak the sheet aloud.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Role {
    /// Heading of the sheet.
    Heading,
    /// A drawing, described in words.
    Figure(String),
    /// A table.
    Table,
    /// A row of a table.
    Row,
    /// A cell that heads a column.
    HeadCell,
    /// A cell.
    Cell,
    /// Repeated on every sheet, not part of the reading.
    Margin,
}

/// One thing on a sheet.
#[derive(Clone, Debug, PartialEq)]
pub enum Item {
    /// Straight pieces.
    Path {
        /// At least two points.
        points: Vec<Pt>,
        /// Joined up.
        closed: bool,
        /// Filled with this grey.
        fill: Option<u8>,
        /// Drawn with this pen.
        pen: Option<Pen>,
    },
    /// Text.
    Text(Text),
    /// A part begins.
    Begin(Role),
    /// The part begun last ends.
    End,
}

/// A sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// Width, mm.
    pub width: f64,
    /// Height, mm.
    pub height: f64,
    /// What is on it, from the bottom up.
    pub items: Vec<Item>,
}

impl Sheet {
    /// An empty sheet.
    pub const fn new(width: f64, height: f64) -> Self {
        Self { width, height, items: Vec::new() }
    }

    /// Draws a straight line.
    pub fn line(&mut self, from: Pt, to: Pt, pen: Pen) {
        self.path(vec![from, to], false, None, Some(pen));
    }

    /// Draws a polyline or polygon. Points that are not on any paper make the
    /// whole of it vanish.
    pub fn path(&mut self, points: Vec<Pt>, closed: bool, fill: Option<u8>, pen: Option<Pen>) {
        let drawable = points.len() >= 2 && points.iter().flatten().all(|v| v.is_finite() && v.abs() < FARTHEST);
        if drawable {
            self.items.push(Item::Path { points, closed, fill, pen });
        }
    }

    /// Draws a rectangle by its top left corner.
    pub fn rect(&mut self, [x, y]: Pt, [w, h]: Pt, fill: Option<u8>, pen: Option<Pen>) {
        self.path(vec![[x, y], [x + w, y], [x + w, y + h], [x, y + h]], true, fill, pen);
    }

    /// Draws a disc or ring of this radius, as a polygon fine enough for the eye.
    pub fn disc(&mut self, [x, y]: Pt, radius: f64, fill: Option<u8>, pen: Option<Pen>) {
        // Points of a unit circle in one eighth: the rest by symmetry.
        const EIGHTH: [Pt; 3] = [[1.0, 0.0], [0.965_925_826, 0.258_819_045], [0.866_025_404, 0.5]];
        let quarter = EIGHTH.iter().copied().chain([
            [std::f64::consts::FRAC_1_SQRT_2, std::f64::consts::FRAC_1_SQRT_2],
            [0.5, 0.866_025_404],
            [0.258_819_045, 0.965_925_826],
        ]);
        let mut points = Vec::with_capacity(24);
        for turn in 0..4 {
            for [c, s] in quarter.clone() {
                let [c, s] = match turn {
                    0 => [c, s],
                    1 => [-s, c],
                    2 => [-c, -s],
                    _ => [s, -c],
                };
                points.push([x + radius * c, y + radius * s]);
            }
        }
        self.path(points, true, fill, pen);
    }

    /// Writes level text.
    pub fn text(&mut self, at: Pt, anchor: Anchor, style: Style, text: &str) {
        self.text_along(at, [1.0, 0.0], anchor, style, text);
    }

    /// Writes level text that keeps to a width: smaller at first, then shortened.
    pub fn text_within(&mut self, at: Pt, anchor: Anchor, style: Style, text: &str, width: f64) {
        let (style, text) = style.fit(&one_line(text), width);
        self.text(at, anchor, style, &text);
    }

    /// Writes text along a direction.
    pub fn text_along(&mut self, at: Pt, along: Pt, anchor: Anchor, style: Style, text: &str) {
        let text = one_line(text);
        if text.trim().is_empty() || !at.iter().chain(&along).all(|v| v.is_finite() && v.abs() < FARTHEST) {
            return;
        }
        let width = style.width_mm(&text);
        let back = match anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => width / 2.0,
            Anchor::End => width,
        };
        let at = [at[0] - along[0] * back, at[1] - along[1] * back];
        self.items.push(Item::Text(Text { at, along, style, text, width, grey: 0 }));
    }

    /// Writes lines of level text below one another; returns the base line of
    /// the next.
    pub fn lines(&mut self, [x, mut y]: Pt, style: Style, lines: &[String]) -> f64 {
        for line in lines {
            self.text([x, y], Anchor::Start, style, line);
            y += style.line_mm();
        }
        y
    }

    /// Draws something as one part of the sheet.
    pub fn part(&mut self, role: Role, draw: impl FnOnce(&mut Self)) {
        self.items.push(Item::Begin(role));
        draw(self);
        self.items.push(Item::End);
    }
}

impl Text {
    /// The corners of the box around the text as it is printed, mm.
    pub fn corners(&self) -> [Pt; 4] {
        let [ax, ay] = self.along;
        // Up the text, away from the base line.
        let up = [ay, -ax];
        let (cap, drop) = (self.style.cap_mm(), self.style.em_mm() * crate::text::DESCENT);
        let corner = |a: f64, u: f64| [self.at[0] + ax * a + up[0] * u, self.at[1] + ay * a + up[1] * u];
        [corner(0.0, -drop), corner(self.width, -drop), corner(self.width, cap), corner(0.0, cap)]
    }
}
