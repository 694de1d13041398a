//! Levels of plates: how far out of level they are, and what to pack.

use crate::{Angle, DVec2};

/// Corners in a line carry no plane: the second moment across them is below
/// this part of that along them.
const IN_A_LINE: f64 = 1e-6;

/// The height of the plate at a corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Level {
    /// The corner.
    pub corner: usize,
    /// Height of the top of the plate over one level line, mm: + above it,
    /// − below it.
    pub height: f64,
}

/// What the levels of plates say.
#[derive(Clone, Debug, PartialEq)]
pub struct Levels {
    /// The corner where the plate is highest.
    pub highest: usize,
    /// From the lowest to the highest, mm.
    pub out_of_level: f64,
    /// What to pack under the plate at each corner to bring it up to the
    /// highest, mm, in the order given.
    pub packing: Vec<Level>,
    /// The plane that lies nearest to the levels; `None` for fewer than three
    /// corners, or corners in a line.
    pub tilt: Option<Tilt>,
}

/// A plane laid through levels by least squares.
#[derive(Clone, Debug, PartialEq)]
pub struct Tilt {
    /// How much it falls, mm for each metre.
    pub fall_per_metre: f64,
    /// Which way it falls, degrees anticlockwise from +x.
    pub towards_deg: f64,
    /// How far each level lies above it (−: below), mm, in the order given.
    /// What is left here is wind: no tilting of the whole takes it out.
    pub off: Vec<Level>,
}

/// What levels say; `None` without any. Levels of corners that the plan does
/// not have are left out.
#[must_use]
pub fn levels(corners: &[DVec2], levels: &[Level]) -> Option<Levels> {
    let known: Vec<(Level, DVec2)> = levels.iter().filter_map(|l| Some((*l, *corners.get(l.corner)?))).collect();
    let highest = known.iter().map(|(l, _)| *l).reduce(|best, l| if l.height > best.height { l } else { best })?;
    let lowest = known.iter().map(|(l, _)| l.height).fold(f64::INFINITY, f64::min);
    Some(Levels {
        highest: highest.corner,
        out_of_level: highest.height - lowest,
        packing: known.iter().map(|(l, _)| Level { corner: l.corner, height: highest.height - l.height }).collect(),
        tilt: tilt(&known),
    })
}

/// The plane z = mean + slope · (p − centre) with the least sum of squares.
fn tilt(known: &[(Level, DVec2)]) -> Option<Tilt> {
    let count = known.len() as f64;
    let centre = known.iter().map(|(_, p)| *p).sum::<DVec2>() / count;
    let mean = known.iter().map(|(l, _)| l.height).sum::<f64>() / count;
    let (mut xx, mut xy, mut yy, mut zx, mut zy) = (0.0, 0.0, 0.0, 0.0, 0.0);
    for (l, p) in known {
        let (d, z) = (*p - centre, l.height - mean);
        xx += d.x * d.x;
        xy += d.x * d.y;
        yy += d.y * d.y;
        zx += z * d.x;
        zy += z * d.y;
    }
    let determinant = xx * yy - xy * xy;
    if known.len() < 3 || determinant <= IN_A_LINE * (xx + yy) * (xx + yy) {
        return None;
    }
    let slope = DVec2::new(zx * yy - zy * xy, zy * xx - zx * xy) / determinant;
    let above = |l: &Level, p: &DVec2| l.height - mean - slope.dot(*p - centre);
    Some(Tilt {
        fall_per_metre: slope.length() * 1000.0,
        towards_deg: Angle::from_rise_run(-slope.y, -slope.x).to_deg(),
        off: known.iter().map(|(l, p)| Level { corner: l.corner, height: above(l, p) }).collect(),
    })
}

#[cfg(test)]
mod tests {
    use super::{Level, levels};
    use crate::DVec2;

    fn at(heights: [f64; 4]) -> Vec<Level> {
        heights.into_iter().enumerate().map(|(corner, height)| Level { corner, height }).collect()
    }

    fn hall() -> Vec<DVec2> {
        [[0.0, 0.0], [8000.0, 0.0], [8000.0, 5000.0], [0.0, 5000.0]].map(DVec2::from_array).to_vec()
    }

    #[test]
    fn a_plane_is_found_and_packed_up() {
        // Falls 2 mm a metre along +x: 16 mm over 8 m.
        let out = levels(&hall(), &at([3.0, -13.0, -13.0, 3.0])).unwrap();
        assert_eq!((out.highest, out.out_of_level), (0, 16.0));
        let packing: Vec<f64> = out.packing.iter().map(|l| l.height).collect();
        assert_eq!(packing, [0.0, 16.0, 16.0, 0.0]);
        let tilt = out.tilt.unwrap();
        assert!((tilt.fall_per_metre - 2.0).abs() < 1e-12 && tilt.towards_deg.abs() < 1e-9);
        assert!(tilt.off.iter().all(|l| l.height.abs() < 1e-9));
    }

    #[test]
    fn wind_is_left_over() {
        // One corner of a square lifted by 8: the plane takes up all but a quarter at each corner.
        let out = levels(&hall(), &at([8.0, 0.0, 0.0, 0.0])).unwrap();
        let off: Vec<f64> = out.tilt.unwrap().off.iter().map(|l| l.height).collect();
        for (found, derived) in off.iter().zip([2.0, -2.0, 2.0, -2.0]) {
            assert!((found - derived).abs() < 1e-9, "{off:?}");
        }
    }

    #[test]
    fn two_levels_carry_no_plane() {
        let out = levels(&hall(), &at([0.0, 4.0, 0.0, 0.0])[..2]).unwrap();
        assert!(out.tilt.is_none());
        assert_eq!(out.packing[0].height, 4.0);
        assert!(levels(&hall(), &[]).is_none());
    }
}
