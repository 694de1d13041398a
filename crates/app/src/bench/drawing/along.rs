//! The length of a timber as it is laid across a picture: what is too long is
//! broken where nothing happens.

/// Wood kept on either side of a break, px.
const BESIDE: f64 = 16.0;
/// Between the two parts of a broken timber, px.
const GAP: f64 = 10.0;
/// A break that saves less is not worth making, px.
const WORTH: f64 = 24.0;
/// Each try draws the timber this much smaller.
const SMALLER: f64 = 1.12;
/// Tries before a timber is drawn as it is: smaller it would be a hair.
const MOST_TRIES: usize = 24;

/// A part of the timber that is drawn whole.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stretch {
    /// From, to along the timber, mm.
    pub from: f64,
    pub to: f64,
    /// Where `from` is, px.
    pub x: f64,
}

/// The length of a timber as it is laid across a picture.
#[derive(Clone, Debug, PartialEq)]
pub struct Along {
    /// Mm in a px.
    pub scale: f64,
    /// From the foot to the head.
    pub stretches: Vec<Stretch>,
}

impl Along {
    /// Fits places (sorted, mm) into a width that starts at `x`, at this scale
    /// or a smaller one.
    pub fn fit(places: &[f64], x: f64, width: f64, scale: f64) -> Option<Self> {
        let (&low, &high) = (places.first()?, places.last()?);
        let mut scale = scale;
        for _ in 0..MOST_TRIES {
            if let Some(stretches) = at_scale(places, x, width, scale) {
                return Some(Self { scale, stretches });
            }
            scale *= SMALLER;
        }
        let scale = ((high - low) / width).max(f64::MIN_POSITIVE);
        Some(Self { scale, stretches: vec![Stretch { from: low, to: high, x }] })
    }

    /// Where a place along the timber is; places in a break, at its nearer side.
    pub fn x(&self, mm: f64) -> f64 {
        let mut before: Option<(f64, f64)> = None;
        for s in &self.stretches {
            if mm < s.from {
                let from = (s.from - mm, s.x);
                return before.map_or(s.x, |(gone, x)| if mm - gone < from.0 { x } else { from.1 });
            }
            let end = s.x + (s.to - s.from) / self.scale;
            if mm <= s.to {
                return s.x + (mm - s.from) / self.scale;
            }
            before = Some((s.to, end));
        }
        before.map_or(0.0, |(_, x)| x)
    }

    /// From where to where it is drawn, px.
    pub fn span(&self) -> [f64; 2] {
        let first = self.stretches.first().map_or(0.0, |s| s.x);
        let last = self.stretches.last().map_or(0.0, |s| s.x + (s.to - s.from) / self.scale);
        [first, last]
    }
}

/// The stretches at a scale, if they fit.
fn at_scale(places: &[f64], x: f64, width: f64, scale: f64) -> Option<Vec<Stretch>> {
    let (&low, &high) = (places.first()?, places.last()?);
    let whole = (high - low) / scale;
    if whole <= width {
        return Some(vec![Stretch { from: low, to: high, x: x + (width - whole) / 2.0 }]);
    }
    let shortened = 2.0 * BESIDE + GAP;
    let mut gaps: Vec<[f64; 2]> = places.windows(2).filter_map(|w| Some([*w.first()?, *w.get(1)?])).collect();
    gaps.sort_by(|a, b| (b[1] - b[0]).total_cmp(&(a[1] - a[0])));
    let mut broken: Vec<[f64; 2]> = Vec::new();
    let mut drawn = whole;
    for gap in gaps {
        let saved = (gap[1] - gap[0]) / scale - shortened;
        if drawn <= width || saved < WORTH {
            break;
        }
        drawn -= saved;
        broken.push(gap);
    }
    if drawn > width {
        return None;
    }
    broken.sort_by(|a, b| a[0].total_cmp(&b[0]));
    // What is left over shows more wood beside the breaks.
    let beside = (BESIDE + (width - drawn) / (2.0 * broken.len() as f64)) * scale;
    let mut stretches = Vec::new();
    let (mut from, mut at) = (low, x);
    for gap in broken {
        let to = gap[0] + beside;
        stretches.push(Stretch { from, to, x: at });
        at += (to - from) / scale + GAP;
        from = gap[1] - beside;
    }
    stretches.push(Stretch { from, to: high, x: at });
    Some(stretches)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_timber_is_broken_between_its_cuts() {
        let along = Along::fit(&[0.0, 100.0, 300.0, 4600.0, 4700.0], 10.0, 300.0, 2.0).unwrap();
        assert_eq!(along.scale, 2.0);
        assert_eq!(along.stretches.len(), 2, "{along:?}");
        assert_eq!((along.x(0.0), along.x(100.0), along.x(4700.0)), (10.0, 60.0, 310.0));
        // Places in the break are at its nearer side.
        let [tail, head] = [along.stretches[0], along.stretches[1]];
        assert_eq!(along.x(tail.to + 1.0), tail.x + tail.to / 2.0);
        assert_eq!(along.x(head.from - 1.0), head.x);
        assert!((head.x - along.x(tail.to) - GAP).abs() < 1e-9);
    }

    #[test]
    fn a_short_timber_is_whole_and_centred_and_a_busy_one_smaller() {
        let along = Along::fit(&[0.0, 200.0], 0.0, 300.0, 2.0).unwrap();
        assert_eq!((along.x(0.0), along.x(200.0)), (100.0, 200.0));
        let busy: Vec<f64> = (0..200).map(|k| f64::from(k) * 20.0).collect();
        let along = Along::fit(&busy, 0.0, 300.0, 2.0).unwrap();
        assert!(along.scale > 2.0 && along.span()[1] <= 300.0 + 1e-9, "{along:?}");
        assert_eq!(Along::fit(&[], 0.0, 300.0, 2.0), None);
    }
}
