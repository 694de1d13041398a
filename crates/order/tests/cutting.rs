//! Cutting plans against rows of the reference, against first principles, and against all plans there are.

use crate::cutting_roofs;
use geometry::Angle;
use order::cutting::{
    Aim, CutFor, CuttingFault, CuttingPlan, Need, Piece, Sawing, StockLength, Turn, Turns, plan, plan_without_sharing,
    verify,
};
use order::money::Money;

use crate::cutting_roofs::cut_bar;

const SECTION: [f64; 2] = [47.0, 150.0];

fn square(name: &str, count: usize, length: f64) -> Piece {
    piece(name, count, cut_bar(SECTION, [[0.0; 3], [length, 0.0, 0.0]]))
}

fn piece(name: &str, count: usize, points: Vec<[f64; 3]>) -> Piece {
    let marks = (1..=count).map(|n| format!("{name}{n}")).collect();
    Piece { marks, points, turns: Turns::All, wants_clean: false }
}

fn stock(length: f64, cost: f64) -> StockLength {
    StockLength { length, cost: Money::of(cost), have: None, clean: false, yard: None }
}

fn need(pieces: Vec<Piece>, stock: Vec<StockLength>) -> Need {
    Need { section: SECTION, pieces, stock, sawing: Sawing { kerf: 3.0, trim: 0.0, keep: 600.0 }, aim: Aim::Waste }
}

/// Lengths from 1.8 to 7.2 m in steps of 300 mm at one price a metre.
fn merchant() -> Vec<StockLength> {
    (6..=24).map(|n| f64::from(n) * 300.0).map(|length| stock(length, length / 1000.0 * 2.4)).collect()
}

fn boxes_used(plan: &CuttingPlan, need: &Need) -> f64 {
    let used = plan.bars.iter().map(|bar| need.stock[bar.stock].length - bar.left);
    used.sum()
}

#[test]
fn the_best_stock_for_one_size_is_the_reference_s() {
    // reference/site_checks.json mat.stock_for_*: the length with the least part wasted.
    let text = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/../../reference/site_checks.json"));
    let rows: serde_json::Value = serde_json::from_str(&text.expect("the reference is there")).expect("it is JSON");
    let rows = rows.as_array().cloned().or_else(|| rows["rows"].as_array().cloned()).expect("rows");
    let rows: Vec<_> =
        rows.iter().filter(|row| row["id"].as_str().is_some_and(|id| id.starts_with("mat.stock_for_"))).collect();
    assert_eq!(rows.len(), 3);
    for row in rows {
        let length = row["inputs"]["piece_mm"].as_f64().expect("a length");
        let each = row["expected"]["pieces"].as_u64().expect("a count") as usize;
        // The pieces of one bar of that stock, many times over, so that every length has its chance.
        let count = each * 60;
        let need = need(vec![square("P", count, length)], merchant());
        let plan = plan(&need).expect("a plan");
        assert!(plan.is_proven());
        let bought: f64 = plan.bars.iter().map(|bar| need.stock[bar.stock].length).sum();
        let waste = plan.value as f64 / Money::ONE as f64 / bought;
        let tolerance = row["tolerance"].as_f64().expect("a tolerance");
        let expected = row["expected"]["waste_frac"].as_f64().expect("a part");
        assert!((waste - expected).abs() <= tolerance, "{length}: {waste} for {expected}");
        // Its length is the best, or as good as the best: of 2350 mm, 2.4 m and 7.2 m waste the same part.
        let length = row["expected"]["stock_m"].as_f64().expect("a length") * 1000.0;
        let alone = Need { stock: vec![stock(length, 1.0)], ..need };
        assert_eq!(order::cutting::plan(&alone).expect("a plan").value, plan.value);
    }
}

#[test]
fn rafters_with_plumb_cuts_share_them() {
    // mat.stick_len_4961_150_40 for each; between two, one plumb cut: n lengths and one lean in all, and the kerfs as
    // they lie along the bar.
    let pitch = Angle::deg(40.0);
    let slope = pitch.sin() / pitch.cos();
    let stick = 4961.0 + 150.0 * slope;
    assert!((stick - 5086.9).abs() < 0.1);
    let length = 1000.0;
    let rafter = cut_bar(SECTION, [[0.0, slope, 0.0], [length, slope, 0.0]]);
    let need = need(vec![piece("R", 4, rafter)], vec![stock(5000.0, 12.0)]);
    let plan = plan(&need).expect("a plan");
    assert_eq!(plan.bars.len(), 1);
    let used = 4.0 * length + 150.0 * slope + 3.0 * 3.0 / pitch.cos() + 3.0;
    assert!((boxes_used(&plan, &need) - used).abs() < 0.05, "{} for {used}", boxes_used(&plan, &need));
    assert_eq!(plan.bars[0].cuts.iter().filter(|cut| cut.what == CutFor::Shared).count(), 3);
    let saw = plan.bars[0].cuts[1].marking;
    assert!((saw.face_deg - 40.0).abs() < 1e-9 && saw.edge_deg.abs() < 1e-9);
}

#[test]
fn one_cheek_cut_makes_two_jacks() {
    // 45 degrees over a square corner: plumb cut 45, cheek 35.26 from the length on the edge (reference/geometry.md 5.2).
    let pitch = Angle::deg(45.0);
    let (slope, cheek) = (pitch.sin() / pitch.cos(), 1.0 / pitch.cos());
    let jack = |hand: f64| cut_bar(SECTION, [[0.0, slope, 0.0], [900.0, slope, hand * cheek]]);
    let need = need(vec![piece("L", 1, jack(1.0)), piece("R", 1, jack(-1.0))], vec![stock(2400.0, 6.0)]);
    let plan = plan(&need).expect("a plan");
    let shared: Vec<_> = plan.bars[0].cuts.iter().filter(|cut| cut.what == CutFor::Shared).collect();
    assert_eq!((plan.bars.len(), shared.len()), (1, 1));
    assert!((90.0 - shared[0].marking.edge_deg - 35.264_39).abs() < 1e-4);
    assert_eq!(shared[0].ends, [0, 1]);
    // One cheek on the middle line, one kerf as it lies along the bar: 3 / (cos 45 cos 45) by its normal.
    let along = 3.0 * (1.0 + slope * slope + cheek * cheek).sqrt();
    let used = 2.0 * 900.0 + 150.0 * slope + along + 3.0;
    assert!((boxes_used(&plan, &need) - used).abs() < 0.05, "{} for {used}", boxes_used(&plan, &need));
}

#[test]
fn a_side_that_is_to_be_seen_stays_on_its_side() {
    let slope = 0.5;
    let kept = Piece { turns: Turns::KeepSide, ..piece("S", 2, cut_bar(SECTION, [[0.0; 3], [900.0, slope, 0.0]])) };
    let need = need(vec![kept], vec![stock(1880.0, 5.0)]);
    let plan = plan(&need).expect("a plan");
    // Half a turn about the side's normal lets the two slanting ends lie into each other.
    let turns: Vec<Turn> = plan.bars[0].pieces.iter().map(|laid| laid.turn).collect();
    assert_eq!((plan.bars.len(), turns), (1, vec![Turn::AsItLies, Turn::EndForEndOver]));
}

#[test]
fn long_clean_stock_is_kept_for_what_wants_it() {
    let hip = Piece { wants_clean: true, ..square("H", 2, 5400.0) };
    let clean = StockLength { clean: true, ..stock(6000.0, 10.0) };
    let pieces = vec![hip, square("C", 4, 2900.0), square("N", 2, 500.0)];
    let need = Need { aim: Aim::Cost, ..need(pieces, vec![stock(6000.0, 16.0), clean]) };
    let plan = plan(&need).expect("a plan");
    assert!(plan.is_proven());
    // Two hips from clean stock, with a noggin each; joists from the other although it costs more.
    assert_eq!(plan.cost, Money::of(2.0 * 10.0 + 2.0 * 16.0));
    assert!(plan.without_clean.is_empty());
}

#[test]
fn what_is_longer_than_all_clean_stock_is_said() {
    let hip = Piece { wants_clean: true, ..square("H", 1, 5400.0) };
    let clean = StockLength { clean: true, ..stock(4800.0, 10.0) };
    let plan = plan(&need(vec![hip], vec![stock(6000.0, 16.0), clean])).expect("a plan");
    assert_eq!(plan.without_clean, ["H1"]);
}

#[test]
fn the_yard_is_used_first_and_no_more_than_there_is() {
    let yard = StockLength { have: Some(1), yard: Some("by the door".into()), ..stock(2500.0, 0.0) };
    let need = Need { aim: Aim::Cost, ..need(vec![square("P", 3, 1200.0)], vec![yard.clone(), stock(2500.0, 7.0)]) };
    let found = plan(&need).expect("a plan");
    assert!(found.is_proven());
    assert_eq!(found.cost, Money::of(7.0));
    let short = Need { stock: vec![yard], ..need };
    assert!(matches!(plan(&short), Err(CuttingFault::NotEnoughStock { .. })));
}

#[test]
fn bad_input_is_refused_with_what_to_do() {
    let one = |length| vec![square("P", 1, length)];
    let fault = |need: &Need| plan(need).expect_err("a fault");
    let long = fault(&need(one(7300.0), merchant()));
    assert_eq!(long, CuttingFault::PieceTooLong { marks: vec!["P1".into()], length: 7300.0, longest: 7200.0 });
    assert!(long.to_string().contains("[timber.joint] longest = 7200"), "{long}");
    assert_eq!(fault(&need(one(500.0), Vec::new())), CuttingFault::NoStock);
    assert!(matches!(fault(&need(one(500.0), vec![stock(2400.0, -1.0)])), CuttingFault::Price { .. }));
    assert!(matches!(fault(&need(one(f64::NAN), merchant())), CuttingFault::NoSize { .. }));
    assert!(matches!(fault(&need(one(-100.0), vec![stock(f64::NAN, 1.0)])), CuttingFault::OutOfRange { .. }));
    let mut saw = need(one(500.0), merchant());
    saw.sawing.kerf = -1.0;
    assert!(matches!(fault(&saw), CuttingFault::OutOfRange { what: "the kerf of the saw", .. }));
    let fat = piece("F", 1, cut_bar([60.0, 150.0], [[0.0; 3], [900.0, 0.0, 0.0]]));
    assert!(matches!(fault(&need(vec![fat], merchant())), CuttingFault::OutsideSection { .. }));
}

#[test]
fn nothing_to_cut_is_a_plan() {
    let plan = plan(&need(Vec::new(), merchant())).expect("a plan");
    assert!(plan.bars.is_empty() && plan.is_proven() && plan.value == 0);
}

#[test]
fn the_check_finds_what_is_wrong() {
    let pieces = vec![square("P", 3, 1000.0), square("Q", 2, 700.0)];
    let need = need(pieces, vec![stock(3600.0, 9.0)]);
    let mut good = plan(&need).expect("a plan");
    good.bars.sort_by_key(|bar| std::cmp::Reverse(bar.pieces.len()));
    assert_eq!(verify(&need, &good), Ok(()));
    type Spoil = fn(&mut CuttingPlan);
    let spoils: [Spoil; 7] = [
        |plan| plan.bars[0].pieces[1].at -= 1.0,
        |plan| plan.bars[0].pieces[0].mark = "X".into(),
        |plan| plan.bars[0].pieces.truncate(1),
        |plan| plan.at_least = plan.value + 1,
        |plan| plan.value -= 1,
        |plan| plan.bars[0].cuts.clear(),
        |plan| plan.bars[0].pieces[1].at += 2000.0,
    ];
    for (number, spoil) in spoils.iter().enumerate() {
        let mut bad = good.clone();
        spoil(&mut bad);
        assert!(matches!(verify(&need, &bad), Err(CuttingFault::NotAPlan { .. })), "spoil {number}");
    }
}

#[test]
fn sharing_saves_and_is_reported() {
    let mut saved = 0;
    for seed in 0..6 {
        let need = cutting_roofs::roof(seed, 40);
        let shared = plan(&need).expect("a plan");
        let boxes = plan_without_sharing(&need).expect("a plan");
        assert!(shared.at_least <= boxes.value);
        if boxes.is_proven() || shared.is_proven() {
            assert!(shared.value <= boxes.value, "seed {seed}");
        }
        saved += i64::from(shared.value < boxes.value);
    }
    assert!(saved >= 2, "sharing saved in {saved} of 6");
}

#[test]
fn many_different_pieces_are_planned() {
    let lean = |n: usize| [0.4 + 0.3 * (n % 3) as f64, if n.is_multiple_of(2) { 0.9 } else { -0.7 }];
    let pieces = (0..60).map(|n| {
        let [up, across] = lean(n);
        piece(&format!("P{n}."), 1 + n % 2, cut_bar(SECTION, [[0.0, up, 0.0], [500.0 + 56.7 * n as f64, up, across]]))
    });
    let need = need(pieces.collect(), merchant());
    let plan = plan(&need).expect("a plan");
    // No two are alike and no two orders of a bar take the same: it need not be proven, but the gap stays small.
    let bought: f64 = plan.bars.iter().map(|bar| need.stock[bar.stock].length).sum();
    assert!(
        (plan.value - plan.at_least) as f64 / Money::ONE as f64 / bought < 0.05,
        "{} {}",
        plan.value,
        plan.at_least
    );
}

#[test]
fn an_end_that_runs_far_along_the_piece_is_trimmed_when_it_is_by_itself() {
    // A firring: its slanting end takes 750 mm of 900, and a saw that made it in the bar would run into the next.
    let firring = cut_bar(SECTION, [[0.0, 5.0, 0.0], [900.0, 0.0, 0.0]]);
    let need = need(vec![piece("F", 5, firring)], vec![stock(4800.0, 12.0)]);
    let plan = plan(&need).expect("a plan that stands its check");
    let (long, first) = (|cut: &&order::cutting::SawCut| cut.marking.face_deg > 70.0, &plan.bars[0]);
    let late = first.cuts.iter().filter(long).collect::<Vec<_>>();
    assert_eq!(late.len(), first.pieces.len());
    assert!(late.iter().all(|cut| cut.what == CutFor::Trimming && cut.ends.len() == 1));
}
