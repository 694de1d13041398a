//! Where the readings of a tape go above the timber, so that none stands on
//! another and no leader runs through one.

use super::type_width::width;

/// Between a reading and what is beside it, px.
const CLEAR: f64 = 6.0;

/// A reading to be written above a place.
#[derive(Clone, Debug)]
pub struct Label {
    /// Where its leader comes down, px.
    pub x: f64,
    /// What it says.
    pub text: String,
    /// The step it belongs to.
    pub step: String,
}

/// Where a reading stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// The middle of the text, px.
    pub middle: f64,
    /// Its row, 0 lowest.
    pub row: usize,
}

/// A spot for every label (sorted by place), in a picture from 0 to `room` px.
///
/// From the lowest row up, a reading takes its place where the leaders of those
/// that are still to come leave it room.
pub fn spots(labels: &[Label], room: f64, size: f64) -> Vec<Spot> {
    let mut spots: Vec<Option<Spot>> = vec![None; labels.len()];
    let mut row = 0;
    while spots.iter().any(Option::is_none) {
        let mut taken: Vec<[f64; 2]> = Vec::new();
        let mut widest: Option<(f64, usize, f64)> = None;
        for (k, label) in labels.iter().enumerate() {
            if spots.get(k).is_none_or(Option::is_some) {
                continue;
            }
            let half = width(&label.text, size) / 2.0;
            let waiting = |spot: &Option<Spot>| spot.is_none_or(|spot| spot.row > row);
            let leaders = || labels.iter().zip(&spots).enumerate().filter(|(j, (_, spot))| *j != k && waiting(spot));
            let left = leaders().filter(|(j, _)| *j < k).map(|(_, (l, _))| l.x).fold(0.0, f64::max);
            let right = leaders().filter(|(j, _)| *j > k).map(|(_, (l, _))| l.x).fold(room, f64::min);
            let ends = taken.iter().filter(|t| t[0] <= label.x).map(|t| t[1]).fold(left, f64::max);
            let starts = taken.iter().filter(|t| t[0] > label.x).map(|t| t[0]).fold(right, f64::min);
            let low = if ends > 0.0 { ends + CLEAR } else { ends };
            let high = if starts < room { starts - CLEAR } else { starts };
            let middle = label.x.max(low + half).min(high - half);
            // Its leader comes down from the text itself.
            if high - low >= 2.0 * half && (middle - label.x).abs() <= half + CLEAR {
                taken.push([middle - half, middle + half]);
                if let Some(spot) = spots.get_mut(k) {
                    *spot = Some(Spot { middle, row });
                }
            } else if widest.is_none_or(|(room, ..)| high - low > room) {
                widest = Some((high - low, k, half));
            }
        }
        // Nothing fits between the leaders: the one that nearly does has the row to itself.
        if taken.is_empty()
            && let Some((_, k, half)) = widest
            && let (Some(spot), Some(label)) = (spots.get_mut(k), labels.get(k))
        {
            let middle = label.x.max(half).min((room - half).max(half));
            *spot = Some(Spot { middle, row });
        }
        row += 1;
    }
    spots.into_iter().flatten().collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn labels(at: &[f64]) -> Vec<Label> {
        at.iter().map(|x| Label { x: *x, text: "4717.5".into(), step: String::new() }).collect()
    }

    #[test]
    fn readings_far_apart_share_a_row() {
        let spots = spots(&labels(&[20.0, 160.0, 300.0]), 320.0, 24.0);
        assert!(spots.iter().all(|spot| spot.row == 0), "{spots:?}");
    }

    #[test]
    fn readings_close_together_stand_above_one_another() {
        let all = labels(&[20.0, 30.0, 290.0, 300.0]);
        let spots = spots(&all, 320.0, 24.0);
        let half = width(&all[0].text, 24.0) / 2.0;
        for (k, a) in spots.iter().enumerate() {
            assert!(a.middle - half >= 0.0 && a.middle + half <= 320.0);
            for (j, b) in spots.iter().enumerate().filter(|(j, _)| *j != k) {
                assert!(a.row != b.row || (a.middle - b.middle).abs() >= 2.0 * half, "{spots:?}");
                // Leaders of higher rows pass beside.
                assert!(b.row <= a.row || (all[j].x - a.middle).abs() >= half, "{spots:?}");
            }
        }
    }
}
