//! Pictures for screens: what is drawn, where, and in which ink. Whoever shows
//! a picture turns inks into colours of its theme and computes nothing.
//!
//! Lengths are CSS pixels, `x` to the right and `y` down, from the top left
//! corner of the picture.

use serde::Serialize;

/// A point of a picture, px.
pub type Pt = [f64; 2];

/// A picture, ready to be drawn.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct Picture {
    /// Width, px.
    pub width: f64,
    /// Height, px.
    pub height: f64,
    /// What it shows, in words, for those who can't see it.
    pub spoken: String,
    /// What is drawn, in this order.
    pub parts: Vec<Part>,
}

/// One thing in a picture.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct Part {
    /// What it is drawn with.
    pub ink: Ink,
    /// Its name, if it can be pointed at: a wall's letter, a timber's mark, a step's number.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "bindings", ts(optional))]
    pub name: Option<String>,
    /// What it is.
    pub shape: Shape,
}

/// What a part is, never how it looks: the theme says that.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub enum Ink {
    /// A face of timber.
    Wood,
    /// A face of timber that the saw makes.
    Sawn,
    /// An arris of a timber, a plate line.
    Edge,
    /// An arris behind the timber.
    Hidden,
    /// A pitch line or centre line.
    Centre,
    /// A dimension line or its figure.
    Dimension,
    /// What is being asked about or set out now.
    Chosen,
    /// What lies around and is not the matter.
    Faint,
    /// Ground, trestles, walls.
    Ground,
    /// Something that is wrong or does not close.
    Wrong,
}

/// What is drawn.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "is", rename_all = "snake_case")]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub enum Shape {
    /// Straight pieces, end to end.
    Line {
        /// Two points or more.
        points: Vec<Pt>,
    },
    /// A filled polygon.
    Area {
        /// Three points or more.
        points: Vec<Pt>,
    },
    /// A dot.
    Dot {
        /// Its middle.
        at: Pt,
        /// Its radius, px.
        radius: f64,
    },
    /// Part of a circle, for an angle.
    Arc {
        /// Its middle.
        at: Pt,
        /// Its radius, px.
        radius: f64,
        /// Where it starts, degrees clockwise from the right.
        from_deg: f64,
        /// Where it ends, degrees clockwise from the right; greater than `from_deg`.
        to_deg: f64,
    },
    /// A line of text.
    Text {
        /// The point that `anchor` names, on the base line.
        at: Pt,
        /// Height of the type, px.
        size: f64,
        /// Which point of the text is at `at`.
        anchor: Anchor,
        /// Degrees clockwise that the base line is turned about `at`.
        turn_deg: f64,
        /// The text.
        text: String,
    },
}

/// Which point of a text its position is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub enum Anchor {
    /// Its left end.
    Start,
    /// Its middle.
    Middle,
    /// Its right end.
    End,
}
