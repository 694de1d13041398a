//! The lap of a level timber (ceiling joist, collar) on a sloping one (rafter).

use super::lap::{Border, Lap};

/// A level timber against the side of a sloping one that rises towards +x. The origin is on the underside of the level
/// timber; the outside of the roof is towards −x.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Crossing {
    /// Pitch of the sloping timber, degrees.
    pub pitch_deg: f64,
    /// Depth of the level timber, mm.
    pub level_depth_mm: f64,
    /// Depth of the sloping timber, square to it, mm.
    pub slope_depth_mm: f64,
    /// Where the underside of the sloping timber crosses the underside of the level one, mm from the origin: the length of
    /// the seat when the origin is the outer end of it.
    pub underside_at_mm: f64,
    /// Square end of the level timber at this x, mm; `None` when its end is only cut to the slope.
    pub level_end_mm: Option<f64>,
    /// Plumb end of the sloping timber at this x, mm; `None` when it runs past, as a tail does.
    pub slope_end_mm: Option<f64>,
    /// The force pulls the level timber towards the middle (a tie); `false`: it pushes outwards (a strut).
    pub tie: bool,
    /// The force may also turn round.
    pub turns_round: bool,
}

impl Crossing {
    /// The lap. The level timber is the first; its end is cut to the top of the sloping timber.
    #[must_use]
    pub fn lap(&self) -> Lap {
        let pitch = self.pitch_deg;
        let underside = self.underside_at_mm * geometry::Angle::deg(pitch).sin();
        let top = self.slope_depth_mm - underside;
        let mut borders = vec![
            Border::edge(0, 90.0, self.level_depth_mm),
            Border::edge(0, 270.0, 0.0),
            Border::end(0, pitch + 90.0, top),
            Border::edge(1, pitch - 90.0, underside),
            Border::edge(1, pitch + 90.0, top),
        ];
        borders.extend(self.level_end_mm.map(|x| Border::end(0, 180.0, -x)));
        borders.extend(self.slope_end_mm.map(|x| Border::end(1, 180.0, -x)));
        // A tie is pulled inwards by itself, so its nails hold it outwards.
        let force_deg = if self.tie { 180.0 } else { 0.0 };
        Lap { grain_deg: [0.0, pitch], force_deg, turns_round: self.turns_round, borders }
    }
}
