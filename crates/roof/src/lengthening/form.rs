//! The forms of splices as planes in a timber's own axes.

use crate::frame::timber::{CutUse, Face, Made, Notch, TimberId};
use crate::marking::Axes;
use crate::solution::{CutPlace, SpliceForm};
use geometry::{Cell, DVec3, Face as CellFace, Plane, Ring};

/// The square butts at the ends of a splayed scarf, as a share of the side that
/// they are cut in (common practice: no feather edges).
const NIB: f64 = 1.0 / 6.0;

/// How far the ends of a hooked scarf are undercut, per mm of their height
/// (common practice: 1 in 6).
const UNDERCUT: f64 = 1.0 / 6.0;

/// Taper of folding wedges, per mm of their length (common practice: 1 in 12,
/// so that they stay where they are driven).
pub const WEDGE_TAPER: f64 = 1.0 / 12.0;

/// Thickness of the thin end of a folding wedge, mm: it must bear a hammer.
const THIN_END: f64 = 6.0;

/// A splice in place: which timber, where, and how.
#[derive(Clone, Copy, Debug)]
pub struct Joint {
    /// Its form.
    pub form: SpliceForm,
    /// Axes of the timber.
    pub axes: Axes,
    /// Middle of the splice along the timber, mm.
    pub centre: f64,
    /// Its length, mm.
    pub length: f64,
    /// Reach of the wood there up the depth, mm.
    pub up: [f64; 2],
    /// Reach of the wood there across the thickness, mm.
    pub across: [f64; 2],
    /// Whether the long face slants up the depth, or else across the thickness.
    pub on_edge: bool,
    /// Depth of the indent of a hooked scarf, mm.
    pub indent: f64,
}

/// Ids of the timbers around a splice.
#[derive(Clone, Copy, Debug)]
pub struct Around {
    /// The half towards the foot, and the half towards the head.
    pub halves: [TimberId; 2],
    /// Fish plates or wedges, the one on the left or towards the foot first.
    pub fittings: [TimberId; 2],
}

impl Joint {
    /// Where it starts and ends along the timber.
    pub fn span(&self) -> [f64; 2] {
        [self.centre - self.length / 2.0, self.centre + self.length / 2.0]
    }

    /// Where the half towards the head starts and the half towards the foot ends.
    pub fn ends_of_wood(&self) -> [f64; 2] {
        if self.form == SpliceForm::FishPlates { [self.centre; 2] } else { self.span() }
    }

    /// Reach of the wood in the direction in which the halves lie over one another.
    fn over(&self) -> [f64; 2] {
        if self.on_edge { self.up } else { self.across }
    }

    /// Length of the space for the wedges of a hooked scarf, mm.
    pub fn key(&self) -> f64 {
        let length = self.across[1] - self.across[0];
        self.indent.max(WEDGE_TAPER * length + 2.0 * THIN_END)
    }

    /// A point in the plane of the joint, at mid thickness or mid depth.
    fn at(&self, x: f64, w: f64) -> DVec3 {
        let a = &self.axes;
        let (u, z) = if self.on_edge {
            (w, (self.across[0] + self.across[1]) / 2.0)
        } else {
            ((self.up[0] + self.up[1]) / 2.0, w)
        };
        a.origin + a.along * x + a.up * u + a.across * z
    }

    /// The plane through a point with this normal, both along the timber and
    /// across the joint.
    fn plane(&self, [x, w]: [f64; 2], [nx, nw]: [f64; 2]) -> Plane {
        let over = if self.on_edge { self.axes.up } else { self.axes.across };
        Plane::through(self.at(x, w), (self.axes.along * nx + over * nw).normalize())
    }

    /// The plane through two points; its normal is on the right, going from the
    /// first to the second.
    fn slant(&self, from: [f64; 2], to: [f64; 2]) -> Plane {
        self.plane(from, [to[1] - from[1], from[0] - to[0]])
    }

    /// The holes that leave one half of the timber: the one towards the foot,
    /// or else towards the head.
    pub fn holes(&self, foot: bool, around: &Around) -> Vec<Notch> {
        let at = if foot { CutPlace::Head } else { CutPlace::Foot };
        let mate = CutUse::Spliced(around.halves[usize::from(foot)]);
        let wedge = CutUse::Against(around.fittings[usize::from(foot)]);
        let notch = |planes: &[(Plane, CutUse)]| Notch {
            faces: planes.iter().map(|(plane, purpose)| Face { plane: *plane, purpose: *purpose, at }).collect(),
        };
        let sides = self.planes();
        // The outside of a plane, as a side of a hole.
        let beyond = |p: &Plane| p.flipped();
        match sides {
            Sides::Butt(plane) => {
                let hole = if foot { beyond(&plane) } else { plane };
                vec![notch(&[(hole, mate)])]
            }
            Sides::Lapped { start, over, end } => {
                if foot {
                    vec![notch(&[(beyond(&start), mate), (beyond(&over), mate)]), notch(&[(beyond(&end), mate)])]
                } else {
                    vec![notch(&[(end, mate), (over, mate)]), notch(&[(start, mate)])]
                }
            }
            Sides::Hooked { start, low, high, near, middle, far, end } => {
                if foot {
                    vec![
                        notch(&[(beyond(&start), mate), (beyond(&low), mate), (far, wedge)]),
                        notch(&[(beyond(&high), mate), (beyond(&middle), mate)]),
                        notch(&[(beyond(&end), mate)]),
                    ]
                } else {
                    vec![
                        notch(&[(end, mate), (high, mate), (beyond(&near), wedge)]),
                        notch(&[(low, mate), (middle, mate)]),
                        notch(&[(start, mate)]),
                    ]
                }
            }
        }
    }

    /// The planes between the halves; the inside of each is the half towards
    /// the foot.
    fn planes(&self) -> Sides {
        let [s, e] = self.span();
        let [low, high] = self.over();
        let middle = (low + high) / 2.0;
        let square = |x: f64| self.plane([x, middle], [1.0, 0.0]);
        let level = |w: f64| self.plane([self.centre, w], [0.0, 1.0]);
        match self.form {
            SpliceForm::FishPlates => Sides::Butt(square(self.centre)),
            // As long as the board is thick: 45°.
            SpliceForm::BoardSplay => Sides::Butt(self.slant([s, high], [e, low]).flipped()),
            SpliceForm::HalfLap => Sides::Lapped { start: square(s), over: level(middle), end: square(e) },
            SpliceForm::Splayed => {
                let nib = NIB * (high - low);
                let over = self.slant([s, high - nib], [e, low + nib]).flipped();
                Sides::Lapped { start: square(s), over, end: square(e) }
            }
            SpliceForm::Hooked => {
                let (h, k) = (self.indent / 2.0, self.key() / 2.0);
                let back = |w: f64| UNDERCUT * w;
                let start = self.slant([s, middle - h], [s + back(high - middle + h), high]);
                let end = self.slant([e - back(middle + h - low), low], [e, middle + h]);
                Sides::Hooked {
                    start,
                    low: level(middle - h),
                    high: level(middle + h),
                    near: square(self.centre - k),
                    middle: square(self.centre),
                    far: square(self.centre + k),
                    end,
                }
            }
        }
    }

    /// The space for the wedges: along the timber, up the depth, across.
    pub fn key_space(&self) -> [[f64; 2]; 3] {
        let middle = (self.up[0] + self.up[1]) / 2.0;
        let (h, k) = (self.indent / 2.0, self.key() / 2.0);
        [[self.centre - k, self.centre + k], [middle - h, middle + h], self.across]
    }

    /// The plane between the folding wedges; its inside is the one towards the foot.
    pub fn between_wedges(&self) -> Plane {
        let a = &self.axes;
        let middle = self.at(self.centre, (self.up[0] + self.up[1]) / 2.0);
        Plane::through(middle, (a.along + a.across * WEDGE_TAPER).normalize())
    }

    /// Height of the joint where a bolt up the depth crosses it, mm.
    pub fn height_at(&self, x: f64) -> f64 {
        let [low, high] = self.over();
        let [s, e] = self.span();
        let middle = (low + high) / 2.0;
        match self.form {
            SpliceForm::Splayed => {
                let nib = NIB * (high - low);
                high - nib + (low + 2.0 * nib - high) * (x - s) / (e - s)
            }
            SpliceForm::Hooked if x < self.centre => middle - self.indent / 2.0,
            SpliceForm::Hooked => middle + self.indent / 2.0,
            SpliceForm::FishPlates | SpliceForm::HalfLap | SpliceForm::BoardSplay => middle,
        }
    }
}

enum Sides {
    Butt(Plane),
    Lapped { start: Plane, over: Plane, end: Plane },
    Hooked { start: Plane, low: Plane, high: Plane, near: Plane, middle: Plane, far: Plane, end: Plane },
}

/// A bar in a timber's axes with a timber's tags: reach along, up and across.
pub fn bar(axes: &Axes, x: [f64; 2], u: [f64; 2], z: [f64; 2]) -> Cell<Made> {
    let at = |i: usize, j: usize, k: usize| axes.origin + axes.along * x[i] + axes.up * u[j] + axes.across * z[k];
    let points =
        vec![at(0, 0, 0), at(1, 0, 0), at(1, 1, 0), at(0, 1, 0), at(0, 0, 1), at(1, 0, 1), at(1, 1, 1), at(0, 1, 1)];
    let face = |ring: [u32; 4], tag| CellFace { ring: Ring::from_slice(&ring), tag };
    let faces = vec![
        face([0, 1, 2, 3], Made::Right),
        face([4, 7, 6, 5], Made::Left),
        face([0, 4, 5, 1], Made::Underside),
        face([3, 2, 6, 7], Made::Top),
        face([0, 3, 7, 4], Made::End(false)),
        face([1, 5, 6, 2], Made::End(true)),
    ];
    Cell { points, faces }
}
