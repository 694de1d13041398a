//! Where the ground lies in the picture.

use super::plan::Plan;
use geometry::DVec2;
use picture::Pt;

/// The ground that an empty picture shows, mm along its shorter side: a
/// cottage, with room round it.
const GROUND: f64 = 12_000.0;

/// Room round an unfinished plan, mm, to draw the next wall into.
const ROOM: f64 = 3_000.0;

/// An unfinished plan gets more room where it comes nearer to the end of the
/// ground than this, mm; else the ground stays as it is.
const EDGE: f64 = 700.0;

/// Room round a closed plan for its lengths, px.
const MARGIN: f64 = 52.0;

/// Room for the plan is at least this part of the picture.
const LEAST_PART: f64 = 0.4;

/// Least size of a plan, mm, so that a plan without extent has a scale.
const LEAST_EXTENT: f64 = 100.0;

/// Where the ground lies in the picture.
pub(super) struct Frame {
    /// Size of the picture, px.
    pub(super) size: [f64; 2],
    /// Px in a mm.
    pub(super) scale: f64,
    /// The middle of the picture on the ground, mm.
    middle: DVec2,
}

impl Frame {
    /// The frame that shows a plan. It stays as it is while walls are drawn
    /// within it, so that the ground does not slip under the finger.
    pub(super) fn of(plan: &Plan, size: [f64; 2]) -> Self {
        let px = DVec2::from_array(size);
        let whole = px / (px.min_element() / GROUND);
        let bounds = plan.corners.iter().fold(None, |bounds: Option<(DVec2, DVec2)>, at| {
            Some(bounds.map_or((*at, *at), |(low, high)| (low.min(*at), high.max(*at))))
        });
        let (low, high, free) = match bounds {
            None => (DVec2::ZERO, whole, px),
            Some((low, high)) if plan.closed => (low, high, (px - 2.0 * MARGIN).max(px * LEAST_PART)),
            Some((low, high)) => {
                let down = |at: f64| if at < EDGE { at - ROOM } else { 0.0 };
                let up = |at: f64, end: f64| if at > end - EDGE { at + ROOM } else { end };
                (DVec2::new(down(low.x), down(low.y)), DVec2::new(up(high.x, whole.x), up(high.y, whole.y)), px)
            }
        };
        let scale = (free / (high - low).max(DVec2::splat(LEAST_EXTENT))).min_element();
        Self { size, scale, middle: (low + high) / 2.0 }
    }

    /// A place of the ground in the picture.
    pub(super) fn px(&self, at: DVec2) -> Pt {
        let off = (at - self.middle) * self.scale;
        [self.size[0] / 2.0 + off.x, self.size[1] / 2.0 - off.y]
    }

    /// A place of the picture on the ground, mm.
    pub(super) fn mm(&self, at: Pt) -> DVec2 {
        let clean = |px: f64, most: f64| if px.is_finite() { px.clamp(0.0, most) } else { 0.0 };
        let [width, height] = self.size;
        let off = DVec2::new(clean(at[0], width) - width / 2.0, height / 2.0 - clean(at[1], height));
        self.middle + off / self.scale
    }
}
