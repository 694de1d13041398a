//! Drawing a picture. Words stand in rows above and below the drawing and in a
//! column on its right, so that none runs into another.

use picture::{Anchor, Ink, Part, Picture, Pt, Shape};

/// Type of words, px.
pub(crate) const WORDS: f64 = 16.0;

/// Type of figures, px.
pub(crate) const FIGURES: f64 = 20.0;

/// Free at the edges of a picture, px.
pub(crate) const MARGIN: f64 = 12.0;

/// Height of a row of type, px: a figure with room above and below.
pub(crate) const ROW: f64 = 32.0;

/// Width of a letter over the size of its type, at most, on average: of a sans
/// serif face, generous.
const LETTER: f64 = 0.62;

/// The same for the widest letters.
const WIDE: f64 = 1.0;

/// Width that a text may take, px.
pub(crate) fn text_width(text: &str, size: f64) -> f64 {
    text.chars().map(|c| if matches!(c, 'm' | 'w' | 'M' | 'W') { WIDE } else { LETTER }).sum::<f64>() * size
}

/// A picture while it is drawn.
pub(crate) struct Canvas {
    picture: Picture,
}

impl Canvas {
    pub(crate) fn new(width: f64, height: f64) -> Self {
        Self { picture: Picture { width, height, ..Picture::default() } }
    }

    pub(crate) fn line(&mut self, ink: Ink, points: Vec<Pt>) {
        self.part(ink, Shape::Line { points });
    }

    pub(crate) fn area(&mut self, ink: Ink, points: Vec<Pt>) {
        self.part(ink, Shape::Area { points });
    }

    pub(crate) fn text(&mut self, ink: Ink, at: Pt, size: f64, anchor: Anchor, text: impl Into<String>) {
        self.part(ink, Shape::Text { at, size, anchor, turn_deg: 0.0, text: text.into() });
    }

    /// A row of the picture from its left edge: a figure, with words after it
    /// where they fit. `row` is the upper edge, px.
    pub(crate) fn row(&mut self, ink: Ink, row: f64, figure: &str, words: &str) {
        let base = row + 23.0;
        self.text(ink, [MARGIN, base], FIGURES, Anchor::Start, figure);
        let start = MARGIN + text_width(figure, FIGURES) + 8.0;
        if start + text_width(words, WORDS) <= self.picture.width - MARGIN {
            self.text(Ink::Dimension, [start, base], WORDS, Anchor::Start, words);
        }
    }

    fn part(&mut self, ink: Ink, shape: Shape) {
        self.picture.parts.push(Part { ink, name: None, shape });
    }

    pub(crate) fn done(mut self, spoken: impl Into<String>) -> Picture {
        self.picture.spoken = spoken.into();
        self.picture
    }
}

/// Fits drawings in mm, with `y` up, into a field of a picture.
pub(crate) struct Fit {
    scale: f64,
    origin: Pt,
    low: Pt,
}

impl Fit {
    /// A box in mm into a field of this width, as high as it comes to be but no
    /// higher than `most`, px. Gives the fit and the height.
    pub(crate) fn new([low, high]: [Pt; 2], origin: Pt, width: f64, most: f64) -> (Self, f64) {
        let (w, h) = ((high[0] - low[0]).max(1.0), (high[1] - low[1]).max(1.0));
        let scale = (width / w).min(most / h);
        let height = h * scale;
        let aside = (width - w * scale) / 2.0;
        (Self { scale, origin: [origin[0] + aside, origin[1] + height], low }, height)
    }

    pub(crate) fn at(&self, [x, y]: Pt) -> Pt {
        [self.origin[0] + (x - self.low[0]) * self.scale, self.origin[1] - (y - self.low[1]) * self.scale]
    }

    pub(crate) fn all(&self, points: &[Pt]) -> Vec<Pt> {
        points.iter().map(|p| self.at(*p)).collect()
    }
}
