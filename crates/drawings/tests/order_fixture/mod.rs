//! An order made by hand for the hipped roof of the drawing tests: it only has to be good enough to lay sheets out, and
//! its sums to agree with its lines.

use order::buying::{Entry, LiftGroup, Line, LineKind, Notice, NoticeLevel, PricedLine, loads_up, priced, quote};
use order::money::Money;
use order::whole::Order;
use order::whole::out::{Best, Buy, CutOut, LaidOut, Layout, TimberOut, Unshared};
use roof::solution::{SawSetting, Size, SquareSetting};

/// A timber between two cuts that lean by `lean` mm over the depth.
fn laid(marks: &[&str], from: f64, to: f64, depth: f64, lean: [f64; 2], words: &str) -> LaidOut {
    let marks: Vec<String> = marks.iter().map(|m| format!("{m}{words}")).collect();
    LaidOut {
        card: marks[0].clone(),
        marks,
        turn: "as it lies".into(),
        from_mm: from,
        to_mm: to,
        outline: vec![vec![[from, 0.0], [to - lean[1], 0.0], [to, depth], [from + lean[0], depth]]],
    }
}

fn cut(what: &str, ends: &[u32], at: [f64; 2], kerf_right: bool) -> CutOut {
    let lean = at[0] != at[1];
    CutOut {
        what: what.into(),
        ends: ends.to_vec(),
        at_mm: at,
        under_mm: at,
        kerf_right,
        face_angle_deg: if lean { 40.0 } else { 0.0 },
        edge_angle_deg: 0.0,
        saw: SawSetting { mitre_deg: if lean { 40.0 } else { 0.0 }, tilt_deg: if lean { 32.7 } else { 0.0 } },
        square: SquareSetting { run: 300.0, rise: 251.7 },
    }
}

fn layout(length: f64, pieces: Vec<LaidOut>, left: f64, yard: Option<&str>) -> Layout {
    let mut cuts = vec![cut("squaring", &[], [5.0, 5.0], false)];
    for (k, pair) in pieces.windows(2).enumerate() {
        let [low, high] = [pair[0].outline[0][1][0], pair[0].outline[0][2][0]];
        cuts.push(cut("shared", &[k as u32, k as u32 + 1], [low, high], true));
    }
    if let Some(last) = pieces.last() {
        let n = pieces.len() as u32 - 1;
        cuts.push(cut("parting", &[n], [last.outline[0][1][0], last.outline[0][2][0]], true));
        cuts.push(cut("trimming", &[n], [last.to_mm - 20.0, last.to_mm - 20.0], true));
    }
    let count = pieces.iter().map(|p| p.marks.len()).max().unwrap_or(1) as u32;
    Layout { length_mm: length, count, yard: yard.map(str::to_owned), pieces, cuts, left_mm: left, kept: left > 500.0 }
}

fn buy(length_mm: f64, count: u32, each: Option<f64>) -> Buy {
    Buy { length_mm, count, stock: None, yard: None, each }
}

fn timber(size: [f64; 2], buy: Vec<Buy>, layouts: Vec<Layout>) -> TimberOut {
    let bought: Vec<&Buy> = buy.iter().filter(|b| b.yard.is_none()).collect();
    let bought_m = bought.iter().map(|b| b.length_mm * f64::from(b.count)).sum::<f64>() / 1000.0;
    let cost: Option<f64> = bought.iter().map(|b| b.each.map(|each| each * f64::from(b.count))).sum();
    let mut offcuts: Vec<f64> = layouts.iter().filter(|l| l.kept).map(|l| l.left_mm).collect();
    offcuts.sort_by(|a, b| b.total_cmp(a));
    TimberOut {
        size: Size { thickness_mm: size[0], depth_mm: size[1] },
        class: (size[0] > 40.0).then(|| "C24".to_owned()),
        timbers: layouts.iter().map(|l| l.pieces.len() as u32 * l.count).sum(),
        bought_m,
        used_m: bought_m,
        waste_percent: 6.3,
        kg: bought_m * size[0] * size[1] * 420e-6,
        cost,
        dated: vec!["2027-02-01".into()],
        best: Best {
            of: "money".into(),
            value: cost.unwrap_or(bought_m),
            at_least: cost.unwrap_or(bought_m) * 0.991,
            proven: size[1] > 150.0,
        },
        unshared: Some(Unshared { bought_m: bought_m + 9.6, cost: cost.map(|c| c + 41.5) }),
        buy,
        layouts,
        offcuts,
        refused: None,
    }
}

/// The order; `words` come behind every text.
pub fn made(words: &str) -> Order {
    let text = |start: &str| format!("{start}{words}");
    let commons = layout(
        4800.0,
        vec![
            laid(&["A7", "A8", "A9", "C40", "C41"], 5.0, 3500.0, 150.0, [126.0, 126.0], words),
            laid(&["A16", "B20", "C35", "D50", "D51"], 3382.0, 4200.0, 150.0, [126.0, 126.0], words),
            laid(&["A17", "B21", "C36", "D52", "D53"], 4082.0, 4260.0, 150.0, [40.0, 40.0], words),
        ],
        540.0,
        None,
    );
    let yard =
        layout(3900.0, vec![laid(&["A10"], 5.0, 3500.0, 150.0, [126.0, 126.0], words)], 400.0, Some(&text("shed 2")));
    let hips = layout(6000.0, vec![laid(&["H1"], 5.0, 4600.0, 200.0, [168.0, 168.0], words)], 1398.5, None);
    let plates = layout(4800.0, vec![laid(&["P1", "P3"], 5.0, 4200.0, 100.0, [0.0, 0.0], words)], 597.0, None);
    let ridge = layout(4800.0, vec![laid(&["R1"], 5.0, 3205.0, 225.0, [0.0, 0.0], words)], 1590.0, None);
    let mut rafters = vec![buy(5400.0, 1, Some(31.35)), buy(4800.0, 5, Some(27.84))];
    rafters.push(Buy { yard: Some(text("shed 2")), ..buy(3900.0, 1, None) });
    let mut no_stock = timber([38.0, 63.0], vec![], vec![]);
    no_stock.refused = Some(text("No length of stock is as long as N1: give a longer one."));
    no_stock.timbers = 12;
    let timbers = vec![
        timber([47.0, 200.0], vec![Buy { stock: Some(text("hips")), ..buy(6000.0, 1, Some(58.2)) }], vec![hips]),
        timber([47.0, 150.0], rafters, vec![commons, yard]),
        timber([75.0, 100.0], vec![buy(4800.0, 2, Some(24.5))], vec![plates]),
        timber([32.0, 225.0], vec![buy(4800.0, 1, None)], vec![ridge]),
        no_stock,
    ];
    let lines = lines(&text);
    let entries = timbers.iter().filter(|t| t.refused.is_none()).map(|t| Entry {
        group: "timber".into(),
        what: format!("{} x {}", t.size.thickness_mm, t.size.depth_mm),
        cost: t.cost.map(Money::of),
        dated: t.dated.first().cloned(),
        to_choose: false,
    });
    let of_lines =
        lines.iter().enumerate().map(|(k, l)| Entry::of(if k < 3 { "covering" } else { "fixings and the rest" }, l));
    let quote = quote(&entries.chain(of_lines).collect::<Vec<_>>());
    let up = |what: &str, pieces, each_kg| LiftGroup { what: text(what), pieces, each_kg };
    Order {
        currency: "£".into(),
        aim: "cost".into(),
        kerf_mm: 3.0,
        trim_mm: 5.0,
        keep_mm: 500.0,
        lift_kg: 500.0,
        treated: true,
        timber: timbers,
        covering: None,
        covering_refused: Some(text(
            "The slope of wall B is flatter than plain tiles may lie: 31.0°, and 35.0° is wanted.",
        )),
        covering_lines: 3,
        lines,
        lifts: loads_up(
            &[up("47 x 150, 4800 long", 5, 14.2), up("plain tiles", 3500, 1.2), up("steel beam", 1, 800.0)],
            500.0,
        ),
        quote,
        notices: vec![
            Notice {
                code: "price-unit".into(),
                level: NoticeLevel::Warn,
                text: text("Units mixed: battens are ordered per m, and their price is per each, so it is not used."),
                place: "price.batten".into(),
            },
            Notice {
                code: "price-missing".into(),
                level: NoticeLevel::Note,
                text: text("There is no price for 1 of the lines."),
                place: "price".into(),
            },
        ],
        cautions: vec![text("Have sections and strength classes approved before ordering.")],
    }
}

fn lines(text: &impl Fn(&str) -> String) -> Vec<PricedLine> {
    use job::{Per, PriceOf};
    let line = |item: &str, what: &str, size: &str, quantity, unit, kind| Line {
        item: item.into(),
        what: text(what),
        size: text(size),
        quantity,
        unit,
        kg: 1.0,
        counted: text("counted on the slopes"),
        source: String::new(),
        standing: String::new(),
        kind,
    };
    let price = |item: &str, price, per| PriceOf { item: item.into(), price, per, dated: Some("2027-01-20".into()) };
    let lines = vec![
        line("plain-tile", "plain tiles", "", 3456.0, Per::Each, LineKind::Counted),
        line("batten", "battens", "25 × 50", 612.5, Per::Metre, LineKind::Counted),
        line("underlay", "underlay", "", 3.0, Per::Roll, LineKind::Counted),
        line("nails-100x4", "nails", "4.0 × 100", 640.0, Per::Each, LineKind::Allowance),
        line("strap-30x5", "straps", "30 × 5 × 1000", 14.0, Per::Each, LineKind::Counted),
        line("hanger-47", "hangers", "for 47", 4.0, Per::Each, LineKind::ToChoose),
    ];
    let prices = [
        price("plain-tile", 612.0, Per::Thousand),
        price("batten", 0.72, Per::Metre),
        price("nails-100x4", 3.4, Per::Hundred),
        price("strap-30x5", 4.85, Per::Each),
        price("hanger-47", 2.1, Per::Each),
    ];
    priced(lines, &prices).0
}
