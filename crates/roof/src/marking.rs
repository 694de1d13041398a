//! The one function that turns a cut plane into marks, and the bench axes it
//! works in.

use crate::frame::timber::Timber;
use crate::solution::{SawSetting, SquareSetting};
use geometry::{Angle, DVec2, DVec3};

/// Longest reading on the blade of a roofing square, mm.
const BLADE: f64 = 600.0;

/// Longest reading on its tongue, mm.
const TONGUE: f64 = 400.0;

/// The usual run to set on the blade, mm (metric squares are stepped by it;
/// published practice, reference/geometry.md 6.2).
const UNIT_RUN: f64 = 250.0;

/// Reading of a bevel gauge for a cut along the timber, mm in 100: steeper than
/// any gauge can be set.
pub const ALONG: f64 = 1e6;

/// A timber's own axes: `along` the length from foot to head, `up` the depth,
/// `across` the thickness to the left.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Axes {
    /// On the underside, abreast of the foot of the pitch line, at mid thickness, mm.
    pub origin: DVec3,
    /// Unit vector from foot to head.
    pub along: DVec3,
    /// Unit vector up the depth.
    pub up: DVec3,
    /// Unit vector to the left.
    pub across: DVec3,
}

impl Axes {
    /// The axes of a timber.
    pub fn of(timber: &Timber) -> Self {
        let length = (1.0 + timber.slope * timber.slope).sqrt();
        let (cos, sin) = (1.0 / length, timber.slope / length);
        let left = timber.left();
        let mid = left * ((timber.half[1] - timber.half[0]) / 2.0);
        let flat: DVec2 = timber.foot + mid;
        Self {
            origin: flat.extend(timber.base + timber.under_offset),
            along: (timber.dir * cos).extend(sin),
            up: (timber.dir * -sin).extend(cos),
            across: left.extend(0.0),
        }
    }

    /// A world point in these axes.
    pub fn point(&self, p: DVec3) -> DVec3 {
        self.vector(p - self.origin)
    }

    /// A world vector in these axes.
    pub fn vector(&self, v: DVec3) -> DVec3 {
        DVec3::new(v.dot(self.along), v.dot(self.up), v.dot(self.across))
    }
}

/// Everything a carpenter sets to make one cut. Angles are from square across.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Marking {
    /// On the wide side, degrees.
    pub face_deg: f64,
    /// On the top edge, degrees.
    pub edge_deg: f64,
    /// Saw, the stock lying on its wide side.
    pub saw: SawSetting,
    /// Roofing square for the wide side.
    pub square: SquareSetting,
    /// Roofing square for the top edge.
    pub edge_square: SquareSetting,
    /// Bevel gauge for the wide side, mm in 100.
    pub bevel: f64,
    /// Bevel gauge for the top edge, mm in 100.
    pub edge_bevel: f64,
}

/// Mark the cut whose plane has this unit normal in the timber's own axes.
///
/// face angle = atan(n_y / n_x), edge angle = atan(n_z / n_x), both from square
/// across and without sign; saw: mitre = face angle, tilt = asin |n_z|.
pub fn mark(normal: DVec3) -> Marking {
    let n = normal.abs();
    let face = Angle::from_rise_run(n.y, n.x);
    let edge = Angle::from_rise_run(n.z, n.x);
    Marking {
        face_deg: face.to_deg(),
        edge_deg: edge.to_deg(),
        saw: SawSetting { mitre_deg: face.to_deg(), tilt_deg: Angle::from_sin(n.z).to_deg() },
        square: on_square(n.y, n.x),
        edge_square: on_square(n.z, n.x),
        bevel: gauge(n.y, n.x),
        edge_bevel: gauge(n.z, n.x),
    }
}

/// Run and rise with this ratio that a real square can show.
fn on_square(rise: f64, run: f64) -> SquareSetting {
    if rise * UNIT_RUN <= run * TONGUE {
        return SquareSetting { run: UNIT_RUN, rise: if run > 0.0 { rise * UNIT_RUN / run } else { 0.0 } };
    }
    // Too steep for the usual run: hold the full tongue.
    SquareSetting { run: (run * TONGUE / rise).min(BLADE), rise: TONGUE }
}

/// Slope as mm in 100. A cut that runs along the timber has no such slope; it
/// reads [`ALONG`].
fn gauge(rise: f64, run: f64) -> f64 {
    if run * ALONG > 100.0 * rise { 100.0 * rise / run } else { ALONG }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn plumb(pitch: f64, turn: f64) -> DVec3 {
        let (a, t) = (Angle::deg(pitch), Angle::deg(turn));
        DVec3::new(a.cos() * t.cos(), -a.sin() * t.cos(), t.sin())
    }

    #[test]
    fn a_plumb_cut_reads_the_pitch() {
        let m = mark(plumb(40.0, 0.0));
        assert!((m.face_deg - 40.0).abs() < 1e-9 && m.edge_deg.abs() < 1e-9);
        assert!((m.square.rise - 209.775).abs() < 1e-3);
    }

    #[test]
    fn a_jack_cheek_reads_as_the_table_says() {
        // reference/geometry.md 5.2 row 4 (45° pitch, square corner): edge bevel 35.264 from the length.
        let m = mark(plumb(45.0, 45.0));
        assert!((90.0 - m.edge_deg - 35.264_39).abs() < 1e-4);
        assert!((m.saw.tilt_deg - 45.0).abs() < 1e-9);
        assert!((m.face_deg - 45.0).abs() < 1e-9);
    }

    #[test]
    fn settings_fit_a_real_square() {
        for deg in 1..90 {
            let s = on_square(Angle::deg(f64::from(deg)).sin(), Angle::deg(f64::from(deg)).cos());
            assert!(s.run <= BLADE && s.rise <= TONGUE);
            assert!((Angle::from_rise_run(s.rise, s.run).to_deg() - f64::from(deg)).abs() < 1e-9);
        }
    }
}
