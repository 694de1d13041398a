//! The list of shapes with their parameters.

use super::forms;
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
const WIDTH: &str = "width, south to north";
const DEPTH: &str = "overall depth, south to north";

pub(super) static SHAPES: &[ShapeInfo] = &[
    ShapeInfo {
        name: "rectangle",
        description: "A plain rectangle",
        parameters: &[size("length", 8400.0, LENGTH), size("width", 5200.0, WIDTH)],
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
    ShapeInfo {
        name: "half-hip",
        description: "A rectangle with half-hipped ends",
        parameters: &[
            size("length", 9000.0, LENGTH),
            size("width", 5400.0, WIDTH),
            size("rise", 1400.0, "height above the plates at which the half hips start"),
        ],
        gables: false,
        outline: |sizes| call(forms::half_hip, sizes),
    },
    ShapeInfo {
        name: "gablet",
        description: "A hipped rectangle with gablets over its ends",
        parameters: &[
            size("length", 9600.0, LENGTH),
            size("width", 5600.0, WIDTH),
            size("rise", 1600.0, "height above the plates at which the gablets start"),
        ],
        gables: false,
        outline: |sizes| call(forms::gablet, sizes),
    },
    ShapeInfo {
        name: "lean-to",
        description: "One slope that rises from south to north, against a house",
        parameters: &[size("length", 4800.0, LENGTH), size("width", 2400.0, WIDTH)],
        gables: false,
        outline: |sizes| call(forms::lean_to, sizes),
    },
    ShapeInfo {
        name: "saltbox",
        description: "A gabled rectangle whose south plate stands higher than its north one",
        parameters: &[
            size("length", 8400.0, LENGTH),
            size("width", 6000.0, WIDTH),
            size("raise", 1200.0, "how much higher the south plate stands"),
        ],
        gables: false,
        outline: |sizes| call(forms::saltbox, sizes),
    },
    ShapeInfo {
        name: "mansard",
        description: "A rectangle with a steep lower and a flatter upper slope",
        parameters: &[
            size("length", 9600.0, LENGTH),
            size("width", 6800.0, WIDTH),
            size("lower", 2300.0, "height above the plates at which the slopes break"),
        ],
        gables: true,
        outline: |sizes| call(forms::mansard, sizes),
    },
    ShapeInfo {
        name: "sprockets",
        description: "A rectangle with a steep roof and sprocketed eaves",
        parameters: &[
            size("length", 8000.0, LENGTH),
            size("width", 5600.0, WIDTH),
            size("reach", 700.0, "how far in from the plate line the sprockets reach"),
        ],
        gables: true,
        outline: |sizes| call(forms::sprockets, sizes),
    },
];
