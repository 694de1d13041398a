//! What holds for any pieces: laid out on the stock they lie clear of each other by the blade and come out of the cuts
//! with the right ends; no bound is above what can be done; and of few pieces the plan is the best of all plans.

use order::cutting::{
    Aim, Bar, CutFor, Need, Piece, SawCut, Sawing, StockLength, Turn, Turns, plan, plan_without_sharing, verify,
};
use order::money::Money;
use proptest::prelude::*;

const SECTION: [f64; 2] = [47.0, 150.0];
const KERF: f64 = 3.0;

/// Twice what the check of the plan allows, mm.
const TOLERANCE: f64 = 0.04;

/// An end: planes `x = at + up * (y - mid depth) + across * z`, of which the one that takes most off counts.
type End = Vec<[f64; 3]>;

/// A piece by its planes: those at the left, those at the right.
#[derive(Clone, Debug)]
struct Cut {
    left: End,
    right: End,
    count: usize,
    turns: Turns,
}

impl Cut {
    /// From where to where the timber goes at a height from mid depth and a place across.
    fn at(&self, y: f64, z: f64) -> [f64; 2] {
        let value = |p: &[f64; 3]| p[0] + p[1] * y + p[2] * z;
        let left = self.left.iter().map(value).fold(f64::NEG_INFINITY, f64::max);
        [left, self.right.iter().map(value).fold(f64::INFINITY, f64::min)]
    }

    /// Heights and places across at which its corners are, and some between.
    fn places(&self) -> Vec<[f64; 2]> {
        let [thickness, depth] = SECTION;
        let mut heights = vec![-depth / 2.0, 0.0, depth / 2.0];
        for end in [&self.left, &self.right] {
            for (n, a) in end.iter().enumerate() {
                for b in end.iter().skip(n + 1).filter(|b| (b[1] - a[1]).abs() > 1e-9) {
                    heights.push((a[0] - b[0]) / (b[1] - a[1]));
                }
            }
        }
        heights.retain(|y| y.abs() <= depth / 2.0 + 1e-9);
        let across = [-thickness / 2.0, 0.0, thickness / 2.0];
        heights.iter().flat_map(|&y| across.map(|z| [y, z])).collect()
    }

    fn piece(&self, number: usize) -> Piece {
        let points =
            self.places().into_iter().flat_map(|[y, z]| self.at(y, z).map(|x| [x, y + SECTION[1] / 2.0, z])).collect();
        let marks = (0..self.count).map(|n| format!("P{number}.{n}")).collect();
        Piece { marks, points, turns: self.turns, wants_clean: false }
    }

    /// Where it is once it is turned and laid in the bar.
    fn laid(&self, turn: Turn, at: f64) -> Self {
        let swap = |end: &End, f: &dyn Fn(&[f64; 3]) -> [f64; 3]| end.iter().map(f).collect::<End>();
        let (left, right) = match turn {
            Turn::AsItLies => (self.left.clone(), self.right.clone()),
            Turn::EndForEnd => {
                let f = |p: &[f64; 3]| [-p[0], -p[1], p[2]];
                (swap(&self.right, &f), swap(&self.left, &f))
            }
            Turn::EndForEndOver => {
                let f = |p: &[f64; 3]| [-p[0], p[1], -p[2]];
                (swap(&self.right, &f), swap(&self.left, &f))
            }
            Turn::Over => {
                let f = |p: &[f64; 3]| [p[0], -p[1], -p[2]];
                (swap(&self.left, &f), swap(&self.right, &f))
            }
        };
        let mut laid = Self { left, right, ..self.clone() };
        let nearest = laid.places().iter().map(|&[y, z]| laid.at(y, z)[0]).fold(f64::INFINITY, f64::min);
        for plane in laid.left.iter_mut().chain(&mut laid.right) {
            plane[0] += at - nearest;
        }
        laid
    }

    fn box_length(&self) -> f64 {
        let all: Vec<[f64; 2]> = self.places().iter().map(|&[y, z]| self.at(y, z)).collect();
        let most = all.iter().map(|x| x[1]).fold(f64::NEG_INFINITY, f64::max);
        most - all.iter().map(|x| x[0]).fold(f64::INFINITY, f64::min)
    }
}

/// An end at 0: square, plumb, a cheek, both cheeks, plumb with a level cut; `side` is 1 at the right.
fn end(side: f64) -> impl Strategy<Value = End> {
    let slopes = prop::sample::select(vec![0.4, 0.8390996, 1.1]);
    let hand = prop::sample::select(vec![-1.0, 1.0]);
    (0..5_u8, slopes, hand).prop_map(move |(kind, slope, hand)| {
        let up = slope * hand;
        match kind {
            0 => vec![[0.0; 3]],
            1 => vec![[0.0, up, 0.0]],
            2 => vec![[0.0, up, hand * 1.2]],
            3 => vec![[0.0, up, 1.2], [0.0, up, -1.2]],
            // The level cut meets the plumb cut 30 mm below mid depth.
            _ => vec![[0.0, -side * slope, 0.0], [side * (30.0 * slope + 30.0 / slope), side / slope, 0.0]],
        }
    })
}

/// A piece of which there are up to `most`, at least this long on the middle line.
fn cut(shortest: f64, most: usize) -> impl Strategy<Value = Cut> {
    let turns = prop::sample::select(vec![Turns::All, Turns::All, Turns::KeepSide, Turns::AsItLies]);
    let any = (end(-1.0), end(1.0), shortest..2200.0_f64, 1..=most, turns);
    let made = any.prop_map(|(left, mut right, length, count, turns)| {
        right.iter_mut().for_each(|plane| plane[0] += (length * 10.0).round() / 10.0);
        Cut { left, right, count, turns }
    });
    // The ends must not cross inside a short one.
    made.prop_filter("ends that cross", |cut| {
        cut.places().iter().map(|&[y, z]| cut.at(y, z)).all(|[left, right]| right - left > 5.0)
    })
}

fn need(cuts: &[Cut], lengths: &[f64], trim: f64, aim: Aim) -> Need {
    // The second length is the dearer by the metre.
    let stock = |(n, &length): (usize, &f64)| StockLength {
        length,
        cost: Money::of(length / 1000.0 * (2.0 + 0.13 * n as f64)),
        have: None,
        clean: false,
        yard: None,
    };
    Need {
        section: SECTION,
        pieces: cuts.iter().enumerate().map(|(n, cut)| cut.piece(n)).collect(),
        stock: lengths.iter().enumerate().map(stock).collect(),
        sawing: Sawing { kerf: KERF, trim, keep: 600.0 },
        aim,
    }
}

/// What a cut leaves of a piece on this side of it, at a height and a place across.
fn edge(cut: &SawCut, on_the_left: bool, y: f64, z: f64) -> f64 {
    let [a, b, c] = cut.normal;
    // The kept side, or the other side of the blade.
    let blade = if on_the_left == cut.kerf_right {
        0.0
    } else if on_the_left {
        -KERF
    } else {
        KERF
    };
    cut.at + (blade - b * y - c * z) / a
}

/// Every neighbour is a blade away, and the cuts leave of every piece what it is.
fn comes_out_right(need: &Need, cuts: &[Cut], bar: &Bar) -> Result<(), TestCaseError> {
    let laid: Vec<Cut> = bar.pieces.iter().map(|p| cuts[p.piece].laid(p.turn, p.at)).collect();
    let [thickness, depth] = SECTION;
    let length = need.stock[bar.stock].length;
    for (number, piece) in laid.iter().enumerate() {
        let mut places = piece.places();
        for step in 0..=6 {
            let y = depth * (f64::from(step) / 6.0 - 0.5);
            places.extend([-0.5, -0.2, 0.0, 0.4, 0.5].map(|part| [y, thickness * part]));
        }
        for [y, z] in places {
            let [left, right] = piece.at(y, z);
            prop_assert!(left >= need.sawing.trim - TOLERANCE && right <= length - need.sawing.trim + TOLERANCE);
            if let Some(next) = laid.get(number + 1) {
                // Square to the cut it is a kerf; along the bar it is no less.
                prop_assert!(next.at(y, z)[0] - right >= KERF - TOLERANCE, "{right} {:?}", next.at(y, z));
            }
            let (mut from, mut to) = (0.0_f64, length);
            for cut in &bar.cuts {
                let parted = matches!(cut.what, CutFor::Parting | CutFor::Shared | CutFor::Squaring);
                let middle = (left + right) / 2.0;
                let on_the_left = middle < edge(cut, true, y, z);
                // A trimming cut goes through the waste of the others when they are still there.
                if parted || cut.ends.contains(&number) {
                    if on_the_left {
                        to = to.min(edge(cut, true, y, z))
                    } else {
                        from = from.max(edge(cut, false, y, z))
                    }
                }
            }
            prop_assert!(
                (from - left).abs() <= TOLERANCE,
                "left end of {number} at {y} {z}: {from} for {left}, {bar:?}"
            );
            prop_assert!(
                (to - right).abs() <= TOLERANCE,
                "right end of {number} at {y} {z}: {to} for {right}, {bar:?}"
            );
        }
    }
    Ok(())
}

/// Least room between a piece and the next by one cut along a plane of either, or a square one, mm.
fn gap(before: &Cut, after: &Cut) -> f64 {
    let planes = before.right.iter().chain(&after.left).map(|p| [p[1], p[2]]).chain([[0.0; 2]]);
    let [end, start] = [(before, 1), (after, 0)].map(|(cut, side)| {
        let xs = cut.places().into_iter().map(move |[y, z]| cut.at(y, z)[side]);
        if side == 1 { xs.fold(f64::NEG_INFINITY, f64::max) } else { xs.fold(f64::INFINITY, f64::min) }
    });
    let one = |[up, across]: [f64; 2]| {
        let of = |cut: &Cut, side: usize| -> Vec<f64> {
            cut.places().iter().map(|&[y, z]| cut.at(y, z)[side] - up * y - across * z).collect()
        };
        let reach = of(before, 1).into_iter().fold(f64::NEG_INFINITY, f64::max) - end;
        let back = start - of(after, 0).into_iter().fold(f64::INFINITY, f64::min);
        reach + back + KERF * (1.0 + up * up + across * across).sqrt()
    };
    planes.map(one).fold(f64::INFINITY, f64::min)
}

fn hundredths(mm: f64) -> i64 {
    (mm * 100.0 - 1e-4).ceil() as i64
}

/// The least value of all plans there are, by looking at all sets, orders and turns.
fn best_of_all(need: &Need, cuts: &[Cut]) -> i64 {
    let each: Vec<&Cut> = cuts.iter().flat_map(|cut| std::iter::repeat_n(cut, cut.count)).collect();
    let turned: Vec<Vec<Cut>> = each
        .iter()
        .map(|cut| {
            let turns: &[Turn] = match cut.turns {
                Turns::All => &[Turn::AsItLies, Turn::EndForEnd, Turn::EndForEndOver, Turn::Over],
                Turns::KeepSide => &[Turn::AsItLies, Turn::EndForEndOver],
                Turns::AsItLies => &[Turn::AsItLies],
            };
            turns.iter().map(|&turn| cut.laid(turn, 0.0)).collect()
        })
        .collect();
    let sets = 1_usize << each.len();
    // Least room of a set that ends with a piece in a turn.
    let mut room = vec![vec![vec![i64::MAX / 4; 4]; each.len()]; sets];
    for set in 1..sets {
        for last in (0..each.len()).filter(|n| set >> n & 1 == 1) {
            let length = hundredths(each[last].box_length());
            let rest = set ^ (1 << last);
            for (turn, cut) in turned[last].iter().enumerate() {
                room[set][last][turn] = if rest == 0 {
                    length
                } else {
                    let before = (0..each.len()).filter(|n| rest >> n & 1 == 1);
                    let ways = before.flat_map(|b| (0..turned[b].len()).map(move |t| (b, t)));
                    ways.map(|(b, t)| room[rest][b][t] + hundredths(gap(&turned[b][t], cut)) + length)
                        .min()
                        .unwrap_or(0)
                };
            }
        }
    }
    let bar = |set: usize| {
        let least = room[set].iter().flatten().min().copied().unwrap_or(0);
        let fits =
            need.stock.iter().filter(|stock| ((stock.length - 2.0 * need.sawing.trim) * 100.0).round() as i64 >= least);
        let cost = |stock: &StockLength| match need.aim {
            Aim::Cost => stock.cost.0,
            Aim::Waste => Money::of(stock.length).0,
        };
        fits.map(cost).min().unwrap_or(i64::MAX / 4)
    };
    let alone: Vec<i64> = (0..sets).map(|set| if set == 0 { 0 } else { bar(set) }).collect();
    let mut best = vec![i64::MAX / 4; sets];
    best[0] = 0;
    for set in 1..sets {
        // The set of the bar with the first piece of it.
        let first = set & set.wrapping_neg();
        let mut part = set;
        while part > 0 {
            if part & first != 0 {
                best[set] = best[set].min(alone[part] + best[set ^ part]);
            }
            part = (part - 1) & set;
        }
    }
    let finished: i64 = each.iter().map(|cut| Money::of(cut.box_length()).0).sum();
    best[sets - 1] - if need.aim == Aim::Waste { finished } else { 0 }
}

fn aims() -> impl Strategy<Value = Aim> {
    prop::sample::select(vec![Aim::Cost, Aim::Waste])
}

fn trims() -> impl Strategy<Value = f64> {
    prop::sample::select(vec![0.0, 5.0, 20.0])
}

/// Corners, how many, and whether clean stock is wanted.
type Cloud = (Vec<(f64, f64, f64)>, usize, bool);

proptest! {
    #![proptest_config(ProptestConfig::with_cases(80))]

    #[test]
    fn pieces_lie_clear_and_come_out_right(
        cuts in prop::collection::vec(cut(90.0, 5), 1..7), trim in trims(), aim in aims()
    ) {
        let need = need(&cuts, &[4800.0, 3000.0, 6300.0], trim, aim);
        let plan = plan(&need).map_err(|fault| TestCaseError::fail(fault.to_string()))?;
        prop_assert_eq!(verify(&need, &plan), Ok(()));
        for bar in &plan.bars {
            comes_out_right(&need, &cuts, bar)?;
        }
        let boxes = plan_without_sharing(&need).map_err(|fault| TestCaseError::fail(fault.to_string()))?;
        prop_assert!(plan.at_least <= boxes.value);
        prop_assert!(plan.value <= boxes.value || !plan.is_proven());
    }

    #[test]
    fn of_few_pieces_it_is_the_best_of_all(
        cuts in prop::collection::vec(cut(700.0, 2), 1..4), trim in trims(), aim in aims()
    ) {
        let need = need(&cuts, &[4800.0, 3000.0], trim, aim);
        let plan = plan(&need).map_err(|fault| TestCaseError::fail(fault.to_string()))?;
        let best = best_of_all(&need, &cuts);
        // Sums of hundredths of a millimetre of waste.
        prop_assert!(plan.at_least <= best, "a bound of {} above {best}", plan.at_least);
        prop_assert!(plan.value >= best, "{} is better than the best of all, {best}", plan.value);
        prop_assert!(plan.is_proven() && plan.value == best, "{} for {best}, at least {}", plan.value, plan.at_least);
    }

    #[test]
    fn turned_end_for_end_it_is_the_same_problem(cuts in prop::collection::vec(cut(700.0, 3), 1..5), trim in trims()) {
        let all: Vec<Cut> = cuts.iter().map(|cut| Cut { turns: Turns::All, ..cut.clone() }).collect();
        let turned: Vec<Cut> = all.iter().map(|cut| cut.laid(Turn::EndForEnd, 0.0)).collect();
        let value = |cuts: &[Cut]| plan(&need(cuts, &[4800.0, 3000.0], trim, Aim::Waste)).map(|plan| plan.at_least);
        let (one, other) = (value(&all), value(&turned));
        prop_assert_eq!(one, other);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn any_timber_from_any_stock_is_planned_or_refused(
        clouds in prop::collection::vec(
            (prop::collection::vec((0.0..900.0_f64, 0.0..150.0_f64, -23.5..23.5_f64), 1..9), 1..5_usize, any::<bool>()),
            1..6,
        ),
        haves in prop::collection::vec((1.0..9000.0_f64, 0.0..40.0_f64, prop::option::of(0..4_u32), any::<bool>()), 1..6),
        trim in trims(),
        aim in aims(),
    ) {
        let piece = |(n, (points, count, wants_clean)): (usize, &Cloud)| Piece {
            marks: (0..*count).map(|m| format!("P{n}.{m}")).collect(),
            points: points.iter().map(|p| [p.0, p.1, p.2]).collect(),
            turns: Turns::All,
            wants_clean: *wants_clean,
        };
        let stock = |&(length, cost, have, clean): &(f64, f64, Option<u32>, bool)| StockLength {
            length, cost: Money::of(cost), have, clean, yard: None,
        };
        let need = Need {
            section: SECTION,
            pieces: clouds.iter().enumerate().map(piece).collect(),
            stock: haves.iter().map(stock).collect(),
            sawing: Sawing { kerf: KERF, trim, keep: 600.0 },
            aim,
        };
        match plan(&need) {
            Ok(plan) => prop_assert_eq!(verify(&need, &plan), Ok(())),
            Err(fault) => {
                let text = fault.to_string();
                prop_assert!(!text.contains("fault of the program"), "{text}");
            }
        }
    }
}
