//! Which relations are kept: all that the plates come near, until a corner
//! would move too far; then the one that strains most is let go.

use super::fitting::{Fitted, Problem};
use super::relations::{self, Family, Heading, Walls};
use super::{Plates, Relation};
use crate::DVec2;
use core::f64::consts::FRAC_PI_2;

/// Times that walls which left a family are looked at again: they may be
/// square to one another.
const MOST_FAMILIES: usize = 4;

/// A corner has moved too far past its limit by more than this, mm: rounding.
const ROUNDING: f64 = 1e-6;

/// What was chosen.
pub(super) struct Chosen {
    pub corners: Vec<DVec2>,
    pub kept: Vec<Relation>,
    pub let_go: Vec<Relation>,
}

struct Choice<'a> {
    plates: &'a Plates<'a>,
    walls: &'a Walls,
    headings: Vec<Option<Heading>>,
    families: Vec<Family>,
    held: Vec<bool>,
    kept: Vec<Relation>,
    let_go: Vec<Relation>,
}

/// Chooses what to keep: directions first, then lines, then lengths.
pub(super) fn choose(plates: &Plates<'_>, walls: &Walls) -> Chosen {
    let mut choice = Choice {
        plates,
        walls,
        headings: vec![None; walls.count()],
        families: Vec::new(),
        held: Vec::new(),
        kept: Vec::new(),
        let_go: Vec::new(),
    };
    let mut fitted = choice.fit();
    let mut loose: Vec<usize> = (0..walls.count()).collect();
    for _ in 0..MOST_FAMILIES {
        let first = choice.families.len();
        relations::families(plates, walls, &loose, &mut choice.headings, &mut choice.families);
        choice.held.resize(choice.families.len(), false);
        let new = choice.headings.iter().enumerate().filter_map(|(wall, heading)| {
            let family = heading.filter(|h| h.family >= first)?.family;
            Some(Relation::Squared { wall, to: choice.families[family].leader })
        });
        let new: Vec<Relation> = new.collect();
        if new.is_empty() {
            break;
        }
        fitted = choice.add(new);
        loose.retain(|wall| choice.headings[*wall].is_none());
    }
    choice.straighten(&mut fitted);
    let lines = relations::in_line(plates, walls, &choice.headings, &choice.families);
    fitted = choice.add(lines);
    let lengths = relations::equal(plates, walls, &choice.headings);
    fitted = if lengths.is_empty() { fitted } else { choice.add(lengths) };
    Chosen { corners: fitted.corners, kept: choice.kept, let_go: choice.let_go }
}

impl Choice<'_> {
    fn fit(&self) -> Fitted {
        Problem {
            plates: self.plates,
            walls: self.walls,
            headings: &self.headings,
            families: &self.families,
            held: &self.held,
            relations: &self.kept,
        }
        .fit()
    }

    /// Keeps as many of these relations as the plates allow, beside those that
    /// are kept already.
    fn add(&mut self, new: Vec<Relation>) -> Fitted {
        let before = self.kept.len();
        self.kept.extend(new);
        loop {
            let fitted = self.fit();
            let astray = self.astray(&fitted);
            if astray.is_empty() && fitted.holds {
                return fitted;
            }
            let touches = |r: &Relation| self.corners_of(*r).into_iter().flatten().any(|c| astray.contains(&c));
            let newest = before..self.kept.len();
            let hardest = |all: bool| {
                let mine = newest.clone().filter(|k| all || touches(&self.kept[*k]));
                mine.max_by(|a, b| fitted.strain[*a].total_cmp(&fitted.strain[*b]).then(b.cmp(a)))
            };
            let Some(worst) = hardest(false).or_else(|| hardest(true)) else { return fitted };
            let gone = self.kept.remove(worst);
            self.let_go.push(gone);
            if let Relation::Squared { wall, .. } = gone {
                self.headings[wall] = None;
            }
        }
    }

    /// Corners that moved too far, or took a plate off its wall.
    fn astray(&self, fitted: &Fitted) -> Vec<usize> {
        let off_the_wall = |wall: usize, at: usize| {
            let outward = -self.walls.way(wall).normalize_or_zero().perp();
            let out = outward.dot(fitted.corners[at] - self.walls.corners[at]);
            out > self.plates.bed.out + ROUNDING || -out > self.plates.bed.inward + ROUNDING
        };
        let mut astray: Vec<usize> = (0..self.walls.count())
            .filter(|k| fitted.corners[*k].distance(self.walls.corners[*k]) > self.plates.within + ROUNDING)
            .collect();
        for wall in 0..self.walls.count() {
            astray.extend([wall, self.walls.next[wall]].into_iter().filter(|at| off_the_wall(wall, *at)));
        }
        astray
    }

    /// Turns families that come near to east and north onto them: a plan that
    /// was drawn square stays square to its sheet.
    fn straighten(&mut self, fitted: &mut Fitted) {
        for family in 0..self.families.len() {
            let angle = self.families[family].angle;
            let square = (angle / FRAC_PI_2).round() * FRAC_PI_2;
            self.families[family].angle = square;
            self.held[family] = true;
            let trial = self.fit();
            if trial.holds && self.astray(&trial).is_empty() {
                *fitted = trial;
            } else {
                self.families[family].angle = angle;
                self.held[family] = false;
            }
        }
    }

    /// The corners at the ends of the walls of a relation.
    fn corners_of(&self, relation: Relation) -> [Option<usize>; 4] {
        let ends = |wall: usize| [wall, self.walls.next[wall]];
        match relation {
            Relation::Squared { wall, .. } => {
                let [a, b] = ends(wall);
                [Some(a), Some(b), None, None]
            }
            Relation::InLine(a, b) | Relation::Equal(a, b) => {
                let ([p, q], [r, s]) = (ends(a), ends(b));
                [Some(p), Some(q), Some(r), Some(s)]
            }
        }
    }
}
