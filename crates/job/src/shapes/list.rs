//! The list of shapes with their parameters.

use super::outline::{self, Outline};
use super::{Parameter, ShapeError, ShapeInfo};

const fn size(name: &'static str, default_mm: f64, meaning: &'static str) -> Parameter {
    Parameter { name, default_mm, meaning }
}

/// Calls an outline with as many sizes as it takes. The sizes are made from
/// the parameters, so there are neither more nor fewer.
fn call<const N: usize>(
    outline: fn([f64; N]) -> Result<Outline, ShapeError>,
    sizes: &[f64],
) -> Result<Outline, ShapeError> {
    outline(core::array::from_fn(|n| sizes.get(n).copied().unwrap_or(0.0)))
}

const LENGTH: &str = "overall length, west to east";
const DEPTH: &str = "overall depth, south to north";

pub(super) static SHAPES: &[ShapeInfo] = &[
    ShapeInfo {
        name: "rectangle",
        description: "A plain rectangle",
        parameters: &[size("length", 8400.0, LENGTH), size("width", 5200.0, "width, south to north")],
        gables: true,
        outline: |sizes| call(outline::rectangle, sizes),
    },
    ShapeInfo {
        name: "L",
        description: "A main range with a wing at its west end",
        parameters: &[
            size("length", 9600.0, LENGTH),
            size("width", 8800.0, DEPTH),
            size("main", 5000.0, "breadth of the main range"),
            size("wing", 4400.0, "breadth of the wing"),
        ],
        gables: true,
        outline: |sizes| call(outline::l, sizes),
    },
    ShapeInfo {
        name: "T",
        description: "A main range with a wing from the middle of its north side",
        parameters: &[
            size("length", 11400.0, LENGTH),
            size("main", 5200.0, "breadth of the main range"),
            size("wing", 4600.0, "breadth of the wing"),
            size("projection", 3600.0, "how far the wing stands out"),
        ],
        gables: true,
        outline: |sizes| call(outline::t, sizes),
    },
    ShapeInfo {
        name: "U",
        description: "A back range with a wing at each end, open to the north",
        parameters: &[
            size("length", 12600.0, LENGTH),
            size("depth", 9000.0, DEPTH),
            size("back", 4800.0, "breadth of the back range"),
            size("wing", 4200.0, "breadth of each wing"),
        ],
        gables: true,
        outline: |sizes| call(outline::u, sizes),
    },
    ShapeInfo {
        name: "H",
        description: "Two wings joined by a bar between their middles",
        parameters: &[
            size("length", 13200.0, LENGTH),
            size("depth", 10800.0, DEPTH),
            size("wing", 4400.0, "breadth of each wing"),
            size("bar", 4000.0, "breadth of the bar"),
        ],
        gables: true,
        outline: |sizes| call(outline::h, sizes),
    },
    ShapeInfo {
        name: "cross",
        description: "Two ranges that cross at their middles",
        parameters: &[
            size("length", 11600.0, LENGTH),
            size("depth", 10200.0, DEPTH),
            size("arm", 4600.0, "breadth of both ranges"),
        ],
        gables: true,
        outline: |sizes| call(outline::cross, sizes),
    },
    ShapeInfo {
        name: "octagon",
        description: "A regular octagon",
        parameters: &[size("width", 4800.0, "width across the flats")],
        gables: false,
        outline: |sizes| call(outline::octagon, sizes),
    },
    ShapeInfo {
        name: "courtyard",
        description: "Four ranges around a courtyard",
        parameters: &[
            size("length", 15600.0, LENGTH),
            size("depth", 13200.0, DEPTH),
            size("wing", 4500.0, "breadth of the ranges"),
        ],
        gables: false,
        outline: |sizes| call(outline::courtyard, sizes),
    },
    ShapeInfo {
        name: "bay",
        description: "A rectangle with a splayed bay in the middle of its south side",
        parameters: &[
            size("length", 9200.0, LENGTH),
            size("width", 5400.0, "width without the bay"),
            size("bay", 3000.0, "breadth of the bay where it leaves the wall"),
            size("front", 1600.0, "breadth of its front"),
            size("projection", 700.0, "how far it stands out"),
        ],
        gables: true,
        outline: |sizes| call(outline::bay, sizes),
    },
];
