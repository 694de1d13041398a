//! What a picture is put together from.

use picture::{Anchor, Ink, Part, Pt, Shape};

/// Parts of a picture, in the order in which they are drawn.
#[derive(Debug, Default)]
pub struct Sheet {
    pub parts: Vec<Part>,
}

impl Sheet {
    pub fn line(&mut self, ink: Ink, name: Option<&str>, points: Vec<Pt>) {
        self.put(ink, name, Shape::Line { points });
    }

    pub fn area(&mut self, ink: Ink, name: Option<&str>, points: Vec<Pt>) {
        if points.len() > 2 {
            self.put(ink, name, Shape::Area { points });
        }
    }

    pub fn dot(&mut self, ink: Ink, name: Option<&str>, at: Pt, radius: f64) {
        self.put(ink, name, Shape::Dot { at, radius });
    }

    pub fn text(&mut self, ink: Ink, name: Option<&str>, at: Pt, size: f64, anchor: Anchor, text: String) {
        self.put(ink, name, Shape::Text { at, size, anchor, turn_deg: 0.0, text });
    }

    fn put(&mut self, ink: Ink, name: Option<&str>, shape: Shape) {
        self.parts.push(Part { ink, name: name.map(str::to_owned), shape });
    }
}
