//! A plane frame and what loads it.

use super::FrameFault;

/// A point of the frame, mm; x to the right, y up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Node {
    /// To the right.
    pub x: f64,
    /// Up.
    pub y: f64,
}

/// A straight bar of one section between two nodes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bar {
    /// Node at its start.
    pub from: usize,
    /// Node at its end.
    pub to: usize,
    /// Stiffness along, N.
    pub ea: f64,
    /// Stiffness in bending, N mm².
    pub ei: f64,
    /// Free to turn where it meets its first node.
    pub hinge_from: bool,
    /// Free to turn where it meets its second node.
    pub hinge_to: bool,
}

impl Bar {
    /// A bar stiffly joined at both ends.
    #[must_use]
    pub const fn stiff(from: usize, to: usize, ea: f64, ei: f64) -> Self {
        Self { from, to, ea, ei, hinge_from: false, hinge_to: false }
    }

    /// A bar free to turn at both ends, as a tie or strut held by one bolt at each.
    #[must_use]
    pub const fn pinned(from: usize, to: usize, ea: f64, ei: f64) -> Self {
        Self { from, to, ea, ei, hinge_from: true, hinge_to: true }
    }
}

/// How a support holds one movement.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Hold {
    /// Not at all.
    Free,
    /// Wholly.
    Held,
    /// With so many N per mm, or N mm per rad for turning.
    Spring(f64),
}

/// What holds a node.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Support {
    /// The node.
    pub node: usize,
    /// Along `axis`.
    pub x: Hold,
    /// Square to `axis` (90° anticlockwise from it).
    pub y: Hold,
    /// Turning.
    pub turn: Hold,
    /// The direction that `x` holds; (1, 0) for a support that stands level. Its length does not matter.
    pub axis: [f64; 2],
}

impl Support {
    /// Held wholly, or free, in each of the three movements.
    #[must_use]
    pub const fn at(node: usize, x: bool, y: bool, turn: bool) -> Self {
        const fn hold(held: bool) -> Hold {
            if held { Hold::Held } else { Hold::Free }
        }
        Self { node, x: hold(x), y: hold(y), turn: hold(turn), axis: [1.0, 0.0] }
    }

    /// Held sideways and up and down, free to turn.
    #[must_use]
    pub const fn pin(node: usize) -> Self {
        Self::at(node, true, true, false)
    }

    /// Held up and down only.
    #[must_use]
    pub const fn roller(node: usize) -> Self {
        Self::at(node, false, true, false)
    }

    /// Held square to a slope only: along `normal`.
    #[must_use]
    pub const fn roller_along(node: usize, normal: [f64; 2]) -> Self {
        let mut roller = Self::at(node, true, false, false);
        roller.axis = normal;
        roller
    }
}

/// A plane frame.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Frame {
    /// Its points.
    pub nodes: Vec<Node>,
    /// Its bars.
    pub bars: Vec<Bar>,
    /// What holds it; at most one for a node.
    pub supports: Vec<Support>,
}

/// A load, in the directions of the frame: x to the right, y up, moments anticlockwise.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Load {
    /// On a node, N and N mm.
    Node {
        /// The node.
        node: usize,
        /// To the right, N.
        fx: f64,
        /// Up, N.
        fy: f64,
        /// Anticlockwise, N mm.
        m: f64,
    },
    /// Spread along a whole bar, N per mm of its length, in a straight line from start to end.
    Spread {
        /// The bar.
        bar: usize,
        /// To the right at its start and end, N/mm.
        fx: [f64; 2],
        /// Up at its start and end, N/mm.
        fy: [f64; 2],
    },
    /// Spread along a part of a bar, N per mm of its length, in a straight line.
    Part {
        /// The bar.
        bar: usize,
        /// Where the part begins, mm from the start of the bar.
        from_mm: f64,
        /// Where it ends; further on.
        to_mm: f64,
        /// To the right at the beginning and end of the part, N/mm.
        fx: [f64; 2],
        /// Up at the beginning and end of the part, N/mm.
        fy: [f64; 2],
    },
    /// At one place of a bar, N.
    At {
        /// The bar.
        bar: usize,
        /// From its start along it, mm.
        at_mm: f64,
        /// To the right, N.
        fx: f64,
        /// Up, N.
        fy: f64,
    },
}

/// Where a bar lies.
#[derive(Clone, Copy, Debug)]
pub(super) struct Lie {
    /// Its length, mm.
    pub length: f64,
    /// Its direction.
    pub along: [f64; 2],
}

impl Lie {
    /// A vector of the frame as (along the bar, 90° anticlockwise from it).
    pub fn into_bar(self, [x, y]: [f64; 2]) -> [f64; 2] {
        let [c, s] = self.along;
        [c * x + s * y, c * y - s * x]
    }

    /// The other way.
    pub fn out_of_bar(self, [along, across]: [f64; 2]) -> [f64; 2] {
        let [c, s] = self.along;
        [c * along - s * across, s * along + c * across]
    }
}

impl Frame {
    /// Where bar `bar` lies; it must be in the frame.
    pub(super) fn lie(&self, bar: usize) -> Lie {
        let (a, b) = (self.nodes[self.bars[bar].from], self.nodes[self.bars[bar].to]);
        let (x, y) = (b.x - a.x, b.y - a.y);
        let length = (x * x + y * y).sqrt();
        Lie { length, along: [x / length, y / length] }
    }

    /// The diagonal of the box around the frame, mm.
    pub(super) fn size(&self) -> f64 {
        let mut low = [f64::INFINITY; 2];
        let mut high = [f64::NEG_INFINITY; 2];
        for node in &self.nodes {
            for (k, v) in [node.x, node.y].into_iter().enumerate() {
                low[k] = low[k].min(v);
                high[k] = high[k].max(v);
            }
        }
        let [x, y] = [high[0] - low[0], high[1] - low[1]];
        (x * x + y * y).sqrt()
    }

    /// The first fault of nodes, bars and supports.
    pub(super) fn look_over(&self) -> Result<(), FrameFault> {
        if self.bars.is_empty() {
            return Err(FrameFault::Empty);
        }
        for (index, node) in self.nodes.iter().enumerate() {
            finite("node", index, &[node.x, node.y])?;
        }
        for (index, bar) in self.bars.iter().enumerate() {
            known("bar", index, bar.from.max(bar.to), self.nodes.len())?;
            finite("bar", index, &[bar.ea, bar.ei])?;
            if bar.ea <= 0.0 || bar.ei <= 0.0 {
                return Err(FrameFault::NoStiffness { what: "bar", index });
            }
            let length = self.lie(index).length;
            if length.is_nan() || length <= 0.0 {
                return Err(FrameFault::NoLength { bar: index });
            }
            finite("bar", index, &[length, bar.ei / length / length / length])?;
        }
        for (index, support) in self.supports.iter().enumerate() {
            known("support", index, support.node, self.nodes.len())?;
            finite("support", index, &support.axis)?;
            if self.supports[..index].iter().any(|other| other.node == support.node) {
                return Err(FrameFault::HeldTwice { node: support.node });
            }
            if support.axis == [0.0, 0.0] {
                return Err(FrameFault::NotFinite { what: "support", index });
            }
            for hold in [support.x, support.y, support.turn] {
                if let Hold::Spring(k) = hold {
                    finite("support", index, &[k])?;
                    if k <= 0.0 {
                        return Err(FrameFault::NoStiffness { what: "support", index });
                    }
                }
            }
        }
        Ok(())
    }

    /// The first fault of the loads of a case.
    pub(super) fn look_over_loads(&self, loads: &[Load]) -> Result<(), FrameFault> {
        let off = |bar: usize, at: f64| at < 0.0 || at > self.lie(bar).length;
        for (index, load) in loads.iter().enumerate() {
            match *load {
                Load::Node { node, fx, fy, m } => {
                    known("load", index, node, self.nodes.len())?;
                    finite("load", index, &[fx, fy, m])?;
                }
                Load::Spread { bar, fx, fy } => {
                    known("load", index, bar, self.bars.len())?;
                    finite("load", index, &[fx[0], fx[1], fy[0], fy[1]])?;
                }
                Load::Part { bar, from_mm, to_mm, fx, fy } => {
                    known("load", index, bar, self.bars.len())?;
                    finite("load", index, &[from_mm, to_mm, fx[0], fx[1], fy[0], fy[1]])?;
                    for (at, bad) in [(from_mm, from_mm < 0.0), (to_mm, to_mm <= from_mm || off(bar, to_mm))] {
                        if bad {
                            return Err(FrameFault::OffTheBar { what: "load", index, at });
                        }
                    }
                }
                Load::At { bar, at_mm, fx, fy } => {
                    known("load", index, bar, self.bars.len())?;
                    finite("load", index, &[at_mm, fx, fy])?;
                    if off(bar, at_mm) {
                        return Err(FrameFault::OffTheBar { what: "load", index, at: at_mm });
                    }
                }
            }
        }
        Ok(())
    }
}

/// That a part is there.
fn known(what: &'static str, index: usize, part: usize, parts: usize) -> Result<(), FrameFault> {
    if part < parts { Ok(()) } else { Err(FrameFault::NoSuchPart { what, index }) }
}

/// That all figures are finite.
pub(super) fn finite(what: &'static str, index: usize, figures: &[f64]) -> Result<(), FrameFault> {
    if figures.iter().all(|v| v.is_finite()) { Ok(()) } else { Err(FrameFault::NotFinite { what, index }) }
}
