//! Drawing a picture: parts, and texts that keep clear of one another.

use picture::{Anchor, Ink, Part, Picture, Pt, Shape};

/// Type of words, px.
pub(crate) const WORDS: f64 = 16.0;

/// Type of figures, px.
pub(crate) const FIGURES: f64 = 20.0;

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

    fn part(&mut self, ink: Ink, shape: Shape) {
        self.picture.parts.push(Part { ink, name: None, shape });
    }

    pub(crate) fn done(mut self, spoken: impl Into<String>) -> Picture {
        self.picture.spoken = spoken.into();
        self.picture
    }
}
