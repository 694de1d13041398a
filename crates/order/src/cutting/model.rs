//! The problem in whole numbers: pieces that can stand for each other are one item, ends that are alike one kind.

use super::ends::Ends;
use super::input::box_length;
use super::turning::{Lying, lyings};
use super::units::{UNITS, down, up};
use super::{Aim, CuttingFault, Need};
use crate::money::Money;

/// Pieces of one length whose ends are alike in some turn.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Item {
    /// Its number in [`Model::shapes`].
    pub shape: usize,
    /// Length of the box around it, in units.
    pub length: i64,
    /// Least that it takes of a bar with its share of the joins beside it, in units.
    pub share: i64,
    /// How many there are.
    pub count: u32,
    /// A bar of clean stock must have one of these.
    pub clean: bool,
    /// Which pieces of the need it stands for.
    pub pieces: Vec<usize>,
}

/// What pieces of any length have in common: the kinds of their left and right ends, for each turn that differs.
pub(super) type Shape = Vec<[usize; 2]>;

/// A length of stock.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Store {
    /// Its number in the need.
    pub stock: usize,
    /// What is between its squared ends, in units.
    pub usable: i64,
    /// What one counts in the aim.
    pub cost: i64,
    /// How many there are.
    pub have: Option<u32>,
    /// Kept for items that want it.
    pub clean: bool,
}

/// The problem.
#[derive(Clone, Debug)]
pub(super) struct Model {
    /// What is cut.
    pub items: Vec<Item>,
    /// The shapes of the items.
    pub shapes: Vec<Shape>,
    /// What it is cut from, the shortest first.
    pub stores: Vec<Store>,
    /// How ends are parted.
    pub ends: Ends,
    /// Every piece in each of its turns.
    pub lyings: Vec<Vec<Lying>>,
    /// Kinds of left and right end of every piece in each of its turns.
    pub kinds: Vec<Vec<[usize; 2]>>,
    /// By shape: what the two ends of a bar give back at most, in units, when it is the most of all in the bar.
    pub back: Vec<i64>,
    /// A piece less never takes more of a bar.
    pub monotone: bool,
    /// Pieces that want clean stock and fit none of it.
    pub without_clean: Vec<usize>,
}

impl Model {
    /// The problem of a need that was checked.
    pub fn of(need: &Need) -> Result<Self, CuttingFault> {
        let lying: Vec<Vec<Lying>> = need.pieces.iter().map(|p| lyings(&p.points, need.section[1], p.turns)).collect();
        let (ends, kinds) = Ends::of(&lying, need.section, need.sawing.kerf);
        let mut model = Self {
            items: Vec::new(),
            shapes: Vec::new(),
            stores: stores(need),
            ends,
            lyings: lying,
            kinds,
            back: Vec::new(),
            monotone: true,
            without_clean: Vec::new(),
        };
        model.take_items(need)?;
        let [right, left] = model.ends.shares();
        let share = |of: &[i64], kind: usize| of.get(kind).copied().unwrap_or(0);
        for item in &mut model.items {
            let turns = model.shapes.get(item.shape).into_iter().flatten();
            item.share = item.length + turns.map(|&[l, r]| share(&left, l) + share(&right, r)).min().unwrap_or(0);
        }
        let most = |shape: &Shape, of: &[i64], end: usize| {
            shape.iter().filter_map(|kinds| kinds.get(end)).map(|&kind| share(of, kind)).max().unwrap_or(0)
        };
        model.back = model.shapes.iter().map(|s| most(s, &left, 0).max(most(s, &right, 1))).collect();
        model.monotone = model.is_monotone();
        // Every item must take something, or its number in a bar would have no end.
        model.items.iter_mut().for_each(|item| item.share = item.share.max(1));
        Ok(model)
    }

    fn take_items(&mut self, need: &Need) -> Result<(), CuttingFault> {
        // A few clean offcuts are no supply: nothing can be kept for what there may be too few of.
        let any_clean = self.stores.iter().any(|store| store.clean);
        let supply = self.stores.iter().any(|store| store.clean && store.have.is_none());
        let longest = |clean: Option<bool>| {
            let fits = self.stores.iter().filter(|store| clean.is_none_or(|c| store.clean == c));
            fits.map(|store| store.usable).max().unwrap_or(0)
        };
        let (clean_most, plain_most, any_most) = (longest(Some(true)), longest(Some(false)), longest(None));
        let mut items: Vec<Item> = Vec::new();
        for (number, piece) in need.pieces.iter().enumerate().filter(|(_, piece)| !piece.marks.is_empty()) {
            let length = up(box_length(piece));
            // What only clean stock is long enough for is cut from it as well.
            let wants = piece.wants_clean && supply;
            let clean = any_clean && length <= clean_most && (wants || length > plain_most);
            if piece.wants_clean && any_clean && !clean {
                self.without_clean.push(number);
            }
            if length > if clean { clean_most } else { plain_most } {
                return Err(CuttingFault::PieceTooLong {
                    marks: piece.marks.clone(),
                    length: box_length(piece),
                    longest: if clean { any_most } else { plain_most } as f64 / UNITS,
                });
            }
            let mut shape: Shape = self.kinds.get(number).cloned().unwrap_or_default();
            shape.sort_unstable();
            shape.dedup();
            let shape = self.shapes.iter().position(|known| *known == shape).unwrap_or_else(|| {
                self.shapes.push(shape);
                self.shapes.len() - 1
            });
            let count = u32::try_from(piece.marks.len()).unwrap_or(u32::MAX);
            match items.iter_mut().find(|i| i.shape == shape && i.length == length && i.clean == clean) {
                Some(item) => {
                    item.count += count;
                    item.pieces.push(number);
                }
                None => items.push(Item { shape, length, share: length, count, clean, pieces: vec![number] }),
            }
        }
        self.items = items;
        Ok(())
    }

    /// Whether leaving out a piece between two others never needs more room than with it, whatever the three are.
    fn is_monotone(&self) -> bool {
        let shortest = |shape: usize| self.items.iter().filter(|i| i.shape == shape).map(|i| i.length).min();
        let rights = 0..self.ends.joins.len();
        let lefts = 0..self.ends.joins.first().map_or(0, Vec::len);
        let all = || self.shapes.iter().enumerate().flat_map(|(s, shape)| shape.iter().map(move |kinds| (s, *kinds)));
        all().all(|(shape, [left, right])| {
            let Some(length) = shortest(shape) else { return true };
            rights.clone().all(|r| {
                let before = self.ends.between(r, left).gap + length;
                // A first or a last piece that goes leaves its length and its join.
                before >= 0
                    && lefts.clone().all(|l| {
                        let after = self.ends.between(right, l).gap;
                        after + length >= 0 && self.ends.between(r, l).gap <= before + after
                    })
            })
        })
    }

    /// A copy with all that a cutting is found by, and without what its bars are laid out by.
    pub fn clone_to_solve(&self) -> Self {
        Self {
            items: Vec::new(),
            shapes: self.shapes.clone(),
            stores: self.stores.clone(),
            ends: self.ends.clone(),
            lyings: Vec::new(),
            kinds: Vec::new(),
            back: self.back.clone(),
            monotone: self.monotone,
            without_clean: Vec::new(),
        }
    }

    /// Whether an item may be cut from a store at all.
    pub fn may(&self, item: &Item, store: &Store) -> bool {
        store.have != Some(0) && item.length <= store.usable && (store.clean || !item.clean)
    }
}

/// The lengths of stock in whole numbers, the shortest first, the cheapest first of those.
fn stores(need: &Need) -> Vec<Store> {
    let mut stores: Vec<Store> = need
        .stock
        .iter()
        .enumerate()
        .filter(|(_, stock)| stock.have != Some(0))
        .map(|(number, stock)| Store {
            stock: number,
            usable: (down(stock.length) - 2 * up(need.sawing.trim)).max(0),
            cost: match need.aim {
                Aim::Cost => stock.cost.0,
                Aim::Waste => Money::of(stock.length).0,
            },
            have: stock.have,
            clean: stock.clean,
        })
        .collect();
    stores.sort_by_key(|store| (store.usable, store.cost, store.stock));
    stores
}
