//! The ways in which a dowel in shear fails (Johansen): EN 1995-1-1 8.2.2 and 8.2.3. The least capacity governs.

use super::Capacity;
use crate::working::Working;

/// Allowance of the code for the partial factors of wood in the modes with one hinge.
const ONE_HINGE: f64 = 1.05;
/// The same for modes with two hinges, and for thin plates.
const TWO_HINGES: f64 = 1.15;
/// Factor of the mode with two hinges at a thick plate: twice `√` of 1.15².
const THICK_PLATE: f64 = 2.3;
/// Bearing under a thin plate, where the dowel may tilt.
const THIN_PLATE: f64 = 0.4;

/// A dowel through timbers, with what the code's formulas ask of it.
#[derive(Clone, Copy, Debug)]
pub struct Dowel {
    /// Diameter d, mm.
    pub diameter_mm: f64,
    /// `M_y,Rk`, N·mm.
    pub yield_moment_nmm: f64,
    /// What the rope effect adds at most, `F_ax,Rk / 4`, N.
    pub rope_n: f64,
    /// Cap on it as a share of the rest of the formula.
    pub rope_cap: f64,
}

/// All modes of a joint, N per fastener and plane.
#[derive(Clone, Debug, PartialEq)]
pub struct Modes {
    /// Letter, capacity with the rope effect, and without.
    pub all: Vec<(char, f64, f64)>,
    /// The formula that they are of.
    pub clause: &'static str,
}

impl Modes {
    /// Write every mode down and give the least. No capacity (0 N) when any figure is no number or not positive.
    pub fn least(&self, w: &mut Working) -> (Capacity, f64) {
        let mut least: Option<(char, f64, f64)> = None;
        for &(mode, with_rope, without) in &self.all {
            let value = if with_rope.is_finite() { with_rope.max(0.0) } else { 0.0 };
            w.line(&format!("way of failing ({mode})"), value, "N", self.clause, || {
                format!("{without:.1} + rope effect {:.1}", with_rope - without)
            });
            if least.is_none_or(|(_, so_far, _)| value < so_far) {
                least = Some((mode, value, if without.is_finite() { without.max(0.0) } else { 0.0 }));
            }
        }
        let (mode, value, without) = least.unwrap_or(('a', 0.0, 0.0));
        w.line("capacity of one fastener F_v,Rk", value, "N", self.clause, || format!("the least: mode ({mode})"));
        (Capacity { characteristic_n: value, mode, clause: self.clause }, without)
    }
}

impl Dowel {
    /// A mode with the rope effect, capped.
    fn roped(&self, mode: char, value: f64) -> (char, f64, f64) {
        (mode, value + self.rope_n.min(self.rope_cap * value).max(0.0), value)
    }

    /// Two timbers, one plane: modes a to f (8.6). `t` thickness and `fh` embedment of the timber at the head (1) and at
    /// the point (2).
    #[must_use]
    pub fn single_shear(&self, t1: f64, fh1: f64, t2: f64, fh2: f64) -> Modes {
        let (d, my) = (self.diameter_mm, self.yield_moment_nmm);
        let (beta, k) = (fh2 / fh1, t2 / t1);
        let block = fh1 * t1 * d;
        let tilt =
            (beta + 2.0 * beta * beta * (1.0 + k + k * k) + beta * beta * beta * k * k).sqrt() - beta * (1.0 + k);
        let far =
            (2.0 * beta * beta * (1.0 + beta) + 4.0 * beta * (1.0 + 2.0 * beta) * my / (fh1 * d * t2 * t2)).sqrt();
        let all = vec![
            ('a', block, block),
            ('b', fh2 * t2 * d, fh2 * t2 * d),
            self.roped('c', block / (1.0 + beta) * tilt),
            self.roped('d', self.hinge_in_middle(t1, fh1, beta)),
            self.roped('e', ONE_HINGE * fh1 * t2 * d / (1.0 + 2.0 * beta) * (far - beta)),
            self.roped('f', self.two_hinges(fh1, beta)),
        ];
        Modes { all, clause: "EN 1995-1-1 8.6" }
    }

    /// Three timbers, two planes: modes g to k (8.7), per plane. 1 is either side, 2 the middle.
    #[must_use]
    pub fn double_shear(&self, t1: f64, fh1: f64, t2: f64, fh2: f64) -> Modes {
        let d = self.diameter_mm;
        let beta = fh2 / fh1;
        let (side, middle) = (fh1 * t1 * d, 0.5 * fh2 * t2 * d);
        let all = vec![
            ('g', side, side),
            ('h', middle, middle),
            self.roped('j', self.hinge_in_middle(t1, fh1, beta)),
            self.roped('k', self.two_hinges(fh1, beta)),
        ];
        Modes { all, clause: "EN 1995-1-1 8.7" }
    }

    /// One timber under a thin plate (up to d/2): modes a and b (8.9).
    #[must_use]
    pub fn thin_plate(&self, t1: f64, fh1: f64) -> Modes {
        let d = self.diameter_mm;
        let block = THIN_PLATE * fh1 * t1 * d;
        let hinge = TWO_HINGES * (2.0 * self.yield_moment_nmm * fh1 * d).sqrt();
        Modes { all: vec![('a', block, block), self.roped('b', hinge)], clause: "EN 1995-1-1 8.9" }
    }

    /// One timber under a thick plate (from d on): modes c to e (8.10).
    #[must_use]
    pub fn thick_plate(&self, t1: f64, fh1: f64) -> Modes {
        let (d, my) = (self.diameter_mm, self.yield_moment_nmm);
        let block = fh1 * t1 * d;
        let hinge = block * ((2.0 + 4.0 * my / (fh1 * d * t1 * t1)).sqrt() - 1.0);
        let hinges = THICK_PLATE * (my * fh1 * d).sqrt();
        Modes {
            all: vec![('c', block, block), self.roped('d', hinge), self.roped('e', hinges)],
            clause: "EN 1995-1-1 8.10",
        }
    }

    /// Mode d, or j: one hinge, in the timber at the point or in the middle.
    fn hinge_in_middle(&self, t1: f64, fh1: f64, beta: f64) -> f64 {
        let d = self.diameter_mm;
        let inner = 2.0 * beta * (1.0 + beta) + 4.0 * beta * (2.0 + beta) * self.yield_moment_nmm / (fh1 * d * t1 * t1);
        ONE_HINGE * fh1 * t1 * d / (2.0 + beta) * (inner.sqrt() - beta)
    }

    /// Mode f, or k: a hinge either side of the plane.
    fn two_hinges(&self, fh1: f64, beta: f64) -> f64 {
        let (d, my) = (self.diameter_mm, self.yield_moment_nmm);
        TWO_HINGES * (2.0 * beta / (1.0 + beta)).sqrt() * (2.0 * my * fh1 * d).sqrt()
    }
}
