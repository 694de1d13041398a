//! Ends that are alike, and what two ends beside each other take of the stock.

use super::turning::{Lying, Slope};
use super::units::up;

/// Two ends are alike when no cut tells them apart by more than this, mm.
const SAME_END: f64 = 0.002;

/// A cut is preferred over another when it saves more than this, mm; below it a shared cut goes first.
const SAVES: f64 = 1e-6;

/// How an end meets every plane: how far the piece reaches past its own box's end, and whether a cut there stays on
/// its own half of the piece all over the section (so that the cuts of both ends never cross).
#[derive(Clone, Debug, PartialEq)]
struct Profile {
    reach: Vec<f64>,
    clear: Vec<bool>,
    own: Vec<bool>,
}

impl Profile {
    fn alike(&self, other: &Self) -> bool {
        self.own == other.own
            && self.clear == other.clear
            && self.reach.iter().zip(&other.reach).all(|(a, b)| (a - b).abs() <= SAME_END)
    }
}

/// How two ends are parted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Join {
    /// From the box of the left piece to that of the right piece, in units; below 0 when they lie into each other.
    pub gap: i64,
    /// The cut between them, a number of [`Ends::slopes`].
    pub slope: usize,
    /// Whether it makes the end of the left piece, and that of the right piece.
    pub makes: [bool; 2],
}

/// All kinds of ends of a problem, and how they are parted.
#[derive(Clone, Debug, Default)]
pub(super) struct Ends {
    /// Slopes of all cuts; the first is square.
    pub slopes: Vec<Slope>,
    lefts: Vec<Profile>,
    rights: Vec<Profile>,
    /// For each kind of right end (of the piece to the left), for each kind of left end.
    pub joins: Vec<Vec<Join>>,
}

impl Ends {
    /// Kinds of left and right end of each piece in each turn; with the ends.
    pub fn of(pieces: &[Vec<Lying>], section: [f64; 2], kerf: f64) -> (Self, Vec<Vec<[usize; 2]>>) {
        let mut ends = Self { slopes: vec![Slope::SQUARE], ..Self::default() };
        for slope in pieces.iter().flatten().flat_map(|lying| lying.ends.iter().flatten()) {
            if !ends.slopes.iter().any(|known| known.is(*slope)) {
                ends.slopes.push(*slope);
            }
        }
        let kinds = pieces
            .iter()
            .map(|turns| {
                turns
                    .iter()
                    .map(|lying| {
                        let [left, right] = ends.profiles(lying, section);
                        [kind_of(&mut ends.lefts, left), kind_of(&mut ends.rights, right)]
                    })
                    .collect()
            })
            .collect();
        let join = |right: &Profile| ends.lefts.iter().map(|left| ends.join(right, left, kerf)).collect();
        ends.joins = ends.rights.iter().map(join).collect();
        (ends, kinds)
    }

    fn profiles(&self, lying: &Lying, section: [f64; 2]) -> [Profile; 2] {
        let length = lying.length();
        let profile = |end: usize, own: &[Slope]| Profile {
            reach: self
                .slopes
                .iter()
                .map(|slope| {
                    let [least, most] = lying.extent(*slope);
                    if end == 0 { -least } else { most - length }
                })
                .collect(),
            clear: self.slopes.iter().map(|slope| lying.is_clear(*slope, end, section)).collect(),
            own: self.slopes.iter().map(|slope| own.iter().any(|own| own.is(*slope))).collect(),
        };
        let [left, right] = &lying.ends;
        [profile(0, left), profile(1, right)]
    }

    /// The cut that lets two ends come nearest: one of their own planes, or a square one.
    fn join(&self, right: &Profile, left: &Profile, kerf: f64) -> Join {
        // The square cut outside both boxes is always possible.
        let mut best = (kerf, 0, [false; 2]);
        let sides = right.reach.iter().zip(&left.reach).zip(right.clear.iter().zip(&left.clear));
        let owns = right.own.iter().zip(&left.own);
        for ((number, slope), (((r, l), (clear_r, clear_l)), (own_r, own_l))) in
            self.slopes.iter().enumerate().zip(sides.zip(owns))
        {
            if number > 0 && !(*clear_r && *clear_l && (*own_r || *own_l)) {
                continue;
            }
            let gap = r + l + kerf * slope.stretch();
            let makes = [*own_r, *own_l];
            let count = |m: [bool; 2]| m.iter().filter(|&&made| made).count();
            if gap < best.0 - SAVES || (gap < best.0 + SAVES && count(makes) > count(best.2)) {
                best = (gap.min(best.0), number, makes);
            }
        }
        Join { gap: up(best.0), slope: best.1, makes: best.2 }
    }

    /// How two ends are parted.
    pub fn between(&self, right: usize, left: usize) -> Join {
        const NEVER: Join = Join { gap: i64::MAX / 4, slope: 0, makes: [false; 2] };
        self.joins.get(right).and_then(|row| row.get(left)).copied().unwrap_or(NEVER)
    }

    /// What every join takes at least, shared out to its two ends: for each kind of right end and of left end, in
    /// units, the sum never more than the gap between them, and the gap itself for ends that fit each other.
    pub fn shares(&self) -> [Vec<i64>; 2] {
        let mut right: Vec<i64> =
            self.joins.iter().map(|row| row.iter().map(|join| join.gap).min().unwrap_or(0).div_euclid(2)).collect();
        let left: Vec<i64> = (0..self.lefts.len())
            .map(|l| right.iter().enumerate().map(|(r, share)| self.between(r, l).gap - share).min().unwrap_or(0))
            .collect();
        for (r, share) in right.iter_mut().enumerate() {
            *share = left.iter().enumerate().map(|(l, other)| self.between(r, l).gap - other).min().unwrap_or(0);
        }
        [right, left]
    }
}

fn kind_of(kinds: &mut Vec<Profile>, profile: Profile) -> usize {
    kinds.iter().position(|known| known.alike(&profile)).unwrap_or_else(|| {
        kinds.push(profile);
        kinds.len() - 1
    })
}
