//! The outlines of shapes.
//!
//! Each takes its sizes in the order of its parameters, mm, and gives the
//! plate lines from a corner near the datum, anticlockwise.

use super::ShapeError;

/// The plate lines of a shape.
pub(super) struct Outline {
    /// The outer plates, anticlockwise.
    pub(super) corners: Vec<[f64; 2]>,
    /// Courtyards, clockwise.
    pub(super) holes: Vec<Vec<[f64; 2]>>,
    /// Walls that make good gables, counted from 0.
    pub(super) ends: Vec<usize>,
    /// What the roof and its walls say besides.
    pub(super) form: Form,
}

/// What makes a roof of another form than hips and gables, as it is written in
/// the file.
#[derive(Default)]
pub(super) struct Form {
    /// The pitch, where the usual one does not suit, degrees.
    pub(super) pitch_deg: Option<f64>,
    /// More keys of the eaves, each `key = value`.
    pub(super) eaves: Vec<String>,
    /// More keys of the roof, each `key = value`.
    pub(super) roof: Vec<String>,
    /// What walls say for themselves, each `key = value`; counted from 0.
    pub(super) walls: Vec<(usize, String)>,
}

impl Outline {
    fn plain<const N: usize>(corners: [[f64; 2]; N], ends: &[usize]) -> Self {
        Self { corners: corners.to_vec(), holes: Vec::new(), ends: ends.to_vec(), form: Form::default() }
    }
}

/// Says that one size must be below another.
pub(super) fn below(less: (&'static str, f64), more: (&'static str, f64), times: f64) -> Result<(), ShapeError> {
    if less.1 * times < more.1 {
        return Ok(());
    }
    let limit = more.1 / times;
    Err(ShapeError::TooLarge { parameter: less.0, mm: less.1, limit, because: more.0 })
}

pub(super) fn rectangle([length, width]: [f64; 2]) -> Result<Outline, ShapeError> {
    let corners = [[0.0, 0.0], [length, 0.0], [length, width], [0.0, width]];
    // Gables go on the short ends, so that the roof spans the short way.
    Ok(Outline::plain(corners, if length >= width { &[1, 3] } else { &[0, 2] }))
}

pub(super) fn l([length, width, main, wing]: [f64; 4]) -> Result<Outline, ShapeError> {
    below(("main", main), ("width", width), 1.0)?;
    below(("wing", wing), ("length", length), 1.0)?;
    let corners = [[0.0, 0.0], [length, 0.0], [length, main], [wing, main], [wing, width], [0.0, width]];
    Ok(Outline::plain(corners, &[1, 4]))
}

pub(super) fn t([length, main, wing, projection]: [f64; 4]) -> Result<Outline, ShapeError> {
    below(("wing", wing), ("length", length), 1.0)?;
    let (west, east) = ((length - wing) / 2.0, (length + wing) / 2.0);
    let north = main + projection;
    let corners = [
        [0.0, 0.0],
        [length, 0.0],
        [length, main],
        [east, main],
        [east, north],
        [west, north],
        [west, main],
        [0.0, main],
    ];
    Ok(Outline::plain(corners, &[1, 4, 7]))
}

pub(super) fn u([length, depth, back, wing]: [f64; 4]) -> Result<Outline, ShapeError> {
    below(("back", back), ("depth", depth), 1.0)?;
    below(("wing", wing), ("length", length), 2.0)?;
    let east = length - wing;
    let corners = [
        [0.0, 0.0],
        [length, 0.0],
        [length, depth],
        [east, depth],
        [east, back],
        [wing, back],
        [wing, depth],
        [0.0, depth],
    ];
    Ok(Outline::plain(corners, &[2, 6]))
}

pub(super) fn h([length, depth, wing, bar]: [f64; 4]) -> Result<Outline, ShapeError> {
    below(("wing", wing), ("length", length), 2.0)?;
    below(("bar", bar), ("depth", depth), 1.0)?;
    let east = length - wing;
    let (south, north) = ((depth - bar) / 2.0, (depth + bar) / 2.0);
    let corners = [
        [0.0, 0.0],
        [wing, 0.0],
        [wing, south],
        [east, south],
        [east, 0.0],
        [length, 0.0],
        [length, depth],
        [east, depth],
        [east, north],
        [wing, north],
        [wing, depth],
        [0.0, depth],
    ];
    Ok(Outline::plain(corners, &[0, 4, 6, 10]))
}

pub(super) fn cross([length, depth, arm]: [f64; 3]) -> Result<Outline, ShapeError> {
    below(("arm", arm), ("length", length), 1.0)?;
    below(("arm", arm), ("depth", depth), 1.0)?;
    let (west, east) = ((length - arm) / 2.0, (length + arm) / 2.0);
    let (south, north) = ((depth - arm) / 2.0, (depth + arm) / 2.0);
    let corners = [
        [west, 0.0],
        [east, 0.0],
        [east, south],
        [length, south],
        [length, north],
        [east, north],
        [east, depth],
        [west, depth],
        [west, north],
        [0.0, north],
        [0.0, south],
        [west, south],
    ];
    Ok(Outline::plain(corners, &[0, 3, 6, 9]))
}

pub(super) fn octagon([width]: [f64; 1]) -> Result<Outline, ShapeError> {
    // The square across the flats loses a corner of legs c at each end of a
    // side s = c√2, so width = 2c + c√2.
    let near = width / (2.0 + core::f64::consts::SQRT_2);
    let far = width - near;
    let corners =
        [[near, 0.0], [far, 0.0], [width, near], [width, far], [far, width], [near, width], [0.0, far], [0.0, near]];
    Ok(Outline::plain(corners, &[]))
}

pub(super) fn courtyard([length, depth, wing]: [f64; 3]) -> Result<Outline, ShapeError> {
    below(("wing", wing), ("length", length), 2.0)?;
    below(("wing", wing), ("depth", depth), 2.0)?;
    let (east, north) = (length - wing, depth - wing);
    Ok(Outline {
        corners: vec![[0.0, 0.0], [length, 0.0], [length, depth], [0.0, depth]],
        holes: vec![vec![[wing, wing], [wing, north], [east, north], [east, wing]]],
        ends: Vec::new(),
        form: Form::default(),
    })
}

pub(super) fn bay([length, width, bay, front, projection]: [f64; 5]) -> Result<Outline, ShapeError> {
    below(("front", front), ("bay", bay), 1.0)?;
    below(("bay", bay), ("length", length), 1.0)?;
    let middle = length / 2.0;
    let north = projection + width;
    let corners = [
        [0.0, projection],
        [middle - bay / 2.0, projection],
        [middle - front / 2.0, 0.0],
        [middle + front / 2.0, 0.0],
        [middle + bay / 2.0, projection],
        [length, projection],
        [length, north],
        [0.0, north],
    ];
    Ok(Outline::plain(corners, &[5, 7]))
}
