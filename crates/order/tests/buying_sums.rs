//! Prices, sums and weights.

use job::{Per, PriceOf};
use order::buying::board_feet::{board_feet, board_feet_of, sold_inches};
use order::buying::weights::timber_kg_per_m;
use order::buying::{Entry, LiftGroup, Line, LineKind, NoticeLevel, PricedLine, loads_up, priced, quote};
use order::money::Money;
use proptest::prelude::*;
use serde_json::Value;

fn rows(start: &str) -> Vec<Value> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../reference/site_checks.json");
    let all: Vec<Value> = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    all.into_iter().filter(|row| row["id"].as_str().is_some_and(|id| id.starts_with(start))).collect()
}

fn line(item: &str, quantity: f64, unit: Per) -> Line {
    Line {
        item: item.to_owned(),
        what: item.to_owned(),
        size: String::new(),
        quantity,
        unit,
        kg: 0.0,
        counted: "by hand".to_owned(),
        source: "this test".to_owned(),
        standing: "derived".to_owned(),
        kind: LineKind::Counted,
    }
}

fn price(item: &str, price: f64, per: Per, dated: Option<&str>) -> PriceOf {
    PriceOf { item: item.to_owned(), price, per, dated: dated.map(str::to_owned) }
}

#[test]
fn things_are_converted_and_nothing_else() {
    let lines = vec![
        line("screws-12x50", 104.0, Per::Each),
        line("tiles", 6.5, Per::Hundred),
        line("batten", 480.0, Per::Metre),
        line("strap-down", 19.0, Per::Each),
    ];
    let prices = [
        price("screws-12x50", 6.0, Per::Hundred, Some("2026-11-02")),
        price("tiles", 900.0, Per::Thousand, None),
        price("batten", 3.0, Per::SquareMetre, None),
        price("slates", 1.1, Per::Each, None),
    ];
    let (all, notices) = priced(lines, &prices);
    // 104 at 6.00 a hundred = 6.24; 650 at 900.00 a thousand = 585.00.
    assert_eq!(all[0].cost, Some(Money(62_400)));
    assert_eq!(all[0].dated.as_deref(), Some("2026-11-02"));
    assert_eq!(all[1].cost, Some(Money::of(585.0)));
    assert_eq!([all[2].cost, all[3].cost], [None, None]);
    let codes: Vec<(&str, NoticeLevel, &str)> =
        notices.iter().map(|n| (n.code.as_str(), n.level, n.place.as_str())).collect();
    assert_eq!(
        codes,
        [
            ("price-unit", NoticeLevel::Warn, "price.batten"),
            ("price-unused", NoticeLevel::Note, "price"),
            ("price-missing", NoticeLevel::Note, "price"),
        ]
    );
    assert!(notices[0].text.contains("ordered per m,") && notices[0].text.contains("per m2"), "{}", notices[0].text);
    assert!(notices[1].text.contains("`slates`"));
    assert!(notices[2].text.contains("[price.strap-down]") && !notices[2].text.contains("batten"));
    let text = serde_json::to_string(&all).unwrap();
    assert_eq!(serde_json::from_str::<Vec<PricedLine>>(&text).unwrap(), all);
    assert!(text.contains(r#""item":"screws-12x50""#) && text.contains(r#""unit":"each""#));
}

#[test]
fn what_is_to_be_chosen_is_not_missed_and_not_summed() {
    let mut lining = line("rafter-lining", 99.0, Per::SquareMetre);
    lining.kind = LineKind::ToChoose;
    let lines = vec![lining, line("strap-down", 19.0, Per::Each), line("nut-m12", 36.0, Per::Each)];
    let (all, notices) = priced(lines, &[price("strap-down", 2.5, Per::Each, Some("2026-03-01"))]);
    assert_eq!(notices.len(), 1);
    assert!(!notices[0].text.contains("rafter-lining"));
    let mut entries: Vec<Entry> = all.iter().map(|line| Entry::of("fixings", line)).collect();
    let timber = |cost: Option<f64>, dated: Option<&str>| Entry {
        group: "timber".to_owned(),
        what: "47 × 150 C24".to_owned(),
        cost: cost.map(Money::of),
        dated: dated.map(str::to_owned),
        to_choose: false,
    };
    entries.extend([
        timber(Some(812.4), Some("2026-11-02")),
        timber(Some(100.0), Some("last spring")),
        timber(None, None),
    ]);
    let quote = quote(&entries);
    let sums: Vec<(&str, i64, u32, u32)> =
        quote.groups.iter().map(|g| (g.group.as_str(), g.sum.0, g.priced, g.not_priced)).collect();
    // 19 at 2.50 = 47.50; 812.40 + 100.00 = 912.40.
    assert_eq!(sums, [("fixings", 475_000, 1, 1), ("timber", 9_124_000, 2, 1)]);
    assert_eq!(quote.total, Money(9_599_000));
    assert_eq!(quote.not_priced, ["nut-m12", "47 × 150 C24"]);
    assert_eq!(quote.to_choose, [("rafter-lining".to_owned(), None)]);
    assert_eq!((quote.oldest.as_deref(), quote.newest.as_deref()), (Some("2026-03-01"), Some("2026-11-02")));
    assert_eq!(quote.undated, 1);
    assert!(quote.notes[0].contains("no tax"));
}

#[test]
fn rows_of_weights() {
    let rows = rows("mh.weight.");
    assert_eq!(rows.len(), 8);
    for row in rows {
        let of = |key: &str| row["inputs"][key].as_f64().unwrap();
        let metre = timber_kg_per_m(of("b_mm"), of("h_mm"), of("rho"));
        assert!((metre - row["expected"]["kg_per_m"].as_f64().unwrap()).abs() < 0.002, "{row}: {metre}");
        let all = metre * of("L_m");
        assert!((all - row["expected"]["kg"].as_f64().unwrap()).abs() < 0.02, "{row}: {all}");
    }
}

#[test]
fn rows_of_board_feet() {
    let rows = rows("mat.bf.");
    assert_eq!(rows.len(), 5);
    for row in rows {
        let of = |key: &str| row["inputs"][key].as_f64();
        // Rows of a take-off name their section; 1 ft of 3 × 10 is 2.5, of 2 × 10 is 1.6667 board feet.
        let (thickness, length) = match of("bf_per_ft") {
            Some(per_ft) => ((per_ft * 12.0 / 10.0).round(), of("lineal_ft").unwrap()),
            None => (of("t").unwrap(), of("l").unwrap()),
        };
        let feet = board_feet(thickness, of("w").unwrap_or(10.0), length);
        let tolerance = row["tolerance"].as_f64().unwrap();
        assert!((feet - row["expected"].as_f64().unwrap()).abs() <= tolerance, "{row}: {feet}");
    }
    // A thousand board feet are 2.3597 m³ of nominal timber: 144 in³ each.
    assert!((1000.0 * 144.0 * 25.4_f64.powi(3) / 1e9 - 2.3597).abs() < 1e-4);
}

#[test]
fn rows_of_dressed_sides() {
    let rows: Vec<Value> =
        rows("mat.us.").into_iter().filter(|row| row["inputs"]["unit"].as_str() == Some("in")).collect();
    assert_eq!(rows.len(), 11);
    for row in rows {
        let name = row["id"].as_str().unwrap().trim_start_matches("mat.us.").to_owned();
        let sold: Vec<f64> = name.split('x').map(|side| side.parse().unwrap()).collect();
        let dressed: Vec<f64> =
            row["expected"].as_array().unwrap().iter().map(|v| v.as_f64().unwrap() * 25.4).collect();
        assert_eq!([sold_inches(dressed[0]), sold_inches(dressed[1])], [Some(sold[0]), Some(sold[1])], "{row}");
        let feet = board_feet_of(dressed[0], dressed[1], 14.0 * 304.8).unwrap();
        assert!((feet - sold[0] * sold[1] * 14.0 / 12.0).abs() < 1e-9, "{row}: {feet}");
    }
    // A rafter 2 × 6 of 14 ft has 14 board feet (reference/site.md section 7); 47 × 150 is no dressed timber.
    assert!((board_feet_of(38.0, 140.0, 4267.2).unwrap() - 14.0).abs() < 1e-9);
    assert_eq!(board_feet_of(47.0, 150.0, 4800.0), None);
}

#[test]
fn lifts_by_hand() {
    // 20 of 47 × 150 × 4.8 at 420 kg/m³: 14.2128 kg each, 284.3 kg in all (reference/site.md 1.3); with 258.9 kg 18 go
    // up at once, so they take two lifts. A block of 300 kg does not go up at all.
    let each_kg = timber_kg_per_m(47.0, 150.0, 420.0) * 4.8;
    let group = |what: &str, pieces: u32, each_kg: f64| LiftGroup { what: what.to_owned(), pieces, each_kg };
    let loads = loads_up(&[group("rafters", 20, each_kg), group("stone", 2, 300.0), group("air", 5, 0.0)], 258.9);
    assert!((loads[0].kg - 284.3).abs() < 0.05);
    assert_eq!((loads[0].pieces_per_lift, loads[0].lifts), (18, 2));
    assert_eq!((loads[1].pieces_per_lift, loads[1].lifts), (0, 0));
    assert_eq!((loads[2].pieces_per_lift, loads[2].lifts), (0, 0));
    // 225 plain tiles of 1.15 kg go in 258.9 kg (same page).
    assert_eq!(loads_up(&[group("tiles", 1, 1.15)], 258.9)[0].pieces_per_lift, 225);
    let mut straps = line("strap-down", 19.0, Per::Each);
    assert_eq!(LiftGroup::of(&straps, None), None);
    straps.kg = 13.3;
    assert_eq!(LiftGroup::of(&straps, None), Some(group("strap-down", 19, 13.3 / 19.0)));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn lifts_carry_all_and_none_is_too_heavy(pieces in 0_u32..5000, each in 0.01_f64..400.0, lift in 1.0_f64..2000.0) {
        let load = &loads_up(&[LiftGroup { what: "timber".to_owned(), pieces, each_kg: each }], lift)[0];
        if each <= lift {
            prop_assert!(load.pieces_per_lift > 0);
            prop_assert!(f64::from(load.pieces_per_lift) * each <= lift * (1.0 + 1e-8));
            prop_assert!(f64::from(load.pieces_per_lift + 1) * each > lift);
            prop_assert!(load.lifts * load.pieces_per_lift >= pieces);
            prop_assert!(load.lifts == 0 || (load.lifts - 1) * load.pieces_per_lift < pieces);
        } else {
            prop_assert_eq!(load.lifts, 0);
        }
    }

    #[test]
    fn odd_numbers_do_no_harm(quantity in any::<f64>(), amount in any::<f64>(), lift in any::<f64>(), kg in any::<f64>()) {
        let mut odd = line("odd", quantity, Per::Each);
        odd.kg = kg;
        let group = LiftGroup::of(&odd, None);
        let _ = loads_up(&group.into_iter().collect::<Vec<_>>(), lift);
        let (all, _) = priced(vec![odd], &[price("odd", amount, Per::Thousand, None)]);
        let _ = quote(&all.iter().map(|line| Entry::of("odd", line)).collect::<Vec<_>>());
    }
}
