//! The ways in which a piece lies in its stock, and the planes of its ends.

use super::{Turn, Turns};

/// A face counts as the end of a piece when its unit normal leans at least this much along the piece: a face that is
/// within 3 degrees of the length is a side.
const LEAST_ALONG: f64 = 0.05;

/// Corners may stand this far outside a face of the hull, mm: less than any saw can show, more than rounding.
const FLAT: f64 = 0.005;

/// Twice the least area of a triangle that fixes a plane, mm²: below it the plane of three corners is guesswork.
const LEAST_AREA: f64 = 4.0;

/// Slopes within this are one: 0.003 mm across a section of 150 mm.
pub(super) const SAME_SLOPE: f64 = 2e-5;

/// Pieces with more corners than this are parted by square cuts and by nothing else; a cut timber has 8 to 40.
const MOST_CORNERS: usize = 80;

/// Slopes of a plane `x = c + up * y + across * z`, `y` from mid depth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Slope {
    /// mm along for 1 mm up.
    pub up: f64,
    /// mm along for 1 mm across.
    pub across: f64,
}

impl Slope {
    /// Square across.
    pub const SQUARE: Self = Self { up: 0.0, across: 0.0 };

    /// Whether both are one plane's.
    pub fn is(self, other: Self) -> bool {
        (self.up - other.up).abs() <= SAME_SLOPE && (self.across - other.across).abs() <= SAME_SLOPE
    }

    /// What 1 mm square to the plane is along the length, mm.
    pub fn stretch(self) -> f64 {
        (1.0 + self.up * self.up + self.across * self.across).sqrt()
    }

    /// The distance from the plane of this slope through the middle of the section at 0 to a point, along the length.
    pub fn beyond(self, p: [f64; 3]) -> f64 {
        p[0] - self.up * p[1] - self.across * p[2]
    }

    /// The slope when the piece is turned.
    fn turned(self, turn: Turn) -> Self {
        let (up, across) = (self.up, self.across);
        match turn {
            Turn::AsItLies => self,
            Turn::EndForEnd => Self { up: -up, across },
            Turn::EndForEndOver => Self { up, across: -across },
            Turn::Over => Self { up: -up, across: -across },
        }
    }
}

/// A piece in one of its turns: corners with the nearest at 0 along, `y` from mid depth, and the slopes of its ends.
#[derive(Clone, Debug)]
pub(super) struct Lying {
    /// How it lies.
    pub turn: Turn,
    /// Corners, mm.
    pub points: Vec<[f64; 3]>,
    /// Slopes of the faces of the left end and of the right end.
    pub ends: [Vec<Slope>; 2],
}

impl Lying {
    /// Length of the box around it, mm.
    pub fn length(&self) -> f64 {
        self.points.iter().map(|p| p[0]).fold(0.0, f64::max)
    }

    /// Least and most of the points beyond the plane of a slope through 0, mm.
    pub fn extent(&self, slope: Slope) -> [f64; 2] {
        let values = || self.points.iter().map(|&p| slope.beyond(p));
        [values().fold(f64::INFINITY, f64::min), values().fold(f64::NEG_INFINITY, f64::max)]
    }

    /// Whether a cut of this slope that touches the left end (0) or the right end (1) stays on that half of the piece
    /// all over a section of this thickness and depth: then the cuts of both ends never cross.
    pub fn is_clear(&self, slope: Slope, end: usize, section: [f64; 2]) -> bool {
        let lean = slope.up.abs() * section[1] / 2.0 + slope.across.abs() * section[0] / 2.0;
        let ([least, most], middle) = (self.extent(slope), self.length() / 2.0);
        if end == 0 { least + lean <= middle } else { most - lean >= middle }
    }
}

impl Turns {
    /// The turns it stands for.
    pub(super) fn each(self) -> &'static [Turn] {
        match self {
            Self::All => &[Turn::AsItLies, Turn::EndForEnd, Turn::EndForEndOver, Turn::Over],
            Self::KeepSide => &[Turn::AsItLies, Turn::EndForEndOver],
            Self::AsItLies => &[Turn::AsItLies],
        }
    }
}

impl Turn {
    /// Whether the foot comes to the right.
    fn swaps_ends(self) -> bool {
        matches!(self, Self::EndForEnd | Self::EndForEndOver)
    }

    /// A corner, `y` from mid depth.
    fn corner(self, [x, y, z]: [f64; 3]) -> [f64; 3] {
        match self {
            Self::AsItLies => [x, y, z],
            Self::EndForEnd => [-x, y, -z],
            Self::EndForEndOver => [-x, -y, z],
            Self::Over => [x, -y, -z],
        }
    }
}

/// A piece of stock `depth` deep in each of its turns.
pub(super) fn lyings(points: &[[f64; 3]], depth: f64, turns: Turns) -> Vec<Lying> {
    let middle: Vec<[f64; 3]> = points.iter().map(|p| [p[0], p[1] - depth / 2.0, p[2]]).collect();
    let ends = end_slopes(&middle);
    turns
        .each()
        .iter()
        .map(|&turn| {
            let corners: Vec<[f64; 3]> = middle.iter().map(|&p| turn.corner(p)).collect();
            let least = corners.iter().map(|p| p[0]).fold(f64::INFINITY, f64::min);
            let of = |end: &Vec<Slope>| end.iter().map(|slope| slope.turned(turn)).collect::<Vec<_>>();
            let [left, right] = &ends;
            let ends = if turn.swaps_ends() { [of(right), of(left)] } else { [of(left), of(right)] };
            Lying { turn, points: corners.into_iter().map(|p| [p[0] - least, p[1], p[2]]).collect(), ends }
        })
        .collect()
}

/// The slopes of the faces of the hull at the left end and at the right end: the planes through three corners that
/// have all others on one side and do not run along the piece, those fixed by the largest triangles first.
fn end_slopes(points: &[[f64; 3]]) -> [Vec<Slope>; 2] {
    let mut found: [Vec<(f64, Slope)>; 2] = [Vec::new(), Vec::new()];
    if points.len() > MOST_CORNERS {
        return [Vec::new(), Vec::new()];
    }
    for (i, a) in points.iter().enumerate() {
        for (j, b) in points.iter().enumerate().skip(i + 1) {
            for c in points.iter().skip(j + 1) {
                let n = cross(minus(*b, *a), minus(*c, *a));
                let area = (n[0] * n[0] + n[1] * n[1] + n[2] * n[2]).sqrt();
                if area < LEAST_AREA || n[0].abs() < LEAST_ALONG * area {
                    continue;
                }
                let slope = Slope { up: -n[1] / n[0], across: -n[2] / n[0] };
                let at = slope.beyond(*a);
                let room = FLAT * slope.stretch();
                let off = |side: f64| points.iter().all(|p| (slope.beyond(*p) - at) * side <= room);
                for (end, side) in [(0, -1.0), (1, 1.0)] {
                    if off(side)
                        && let Some(list) = found.get_mut(end)
                    {
                        list.push((area, slope));
                    }
                }
            }
        }
    }
    found.map(|mut list| {
        list.sort_by(|a, b| b.0.total_cmp(&a.0));
        let mut slopes: Vec<Slope> = Vec::new();
        for (_, slope) in list {
            if !slopes.iter().any(|known| known.is(slope)) {
                slopes.push(slope);
            }
        }
        slopes
    })
}

fn minus(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

fn cross(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}
