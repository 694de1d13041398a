//! Seeded random cutting problems and their plans, one JSON document a line, for the comparison with an outside solver:
//! `cutting_cases CASES SEED MOST_PIECES`.

use order::cutting::{Need, plan, plan_without_sharing};
use serde_json::json;
use std::time::Instant;

#[path = "../tests/cutting_roofs/mod.rs"]
mod cutting_roofs;

fn main() {
    let mut arguments = std::env::args().skip(1).map(|text| text.parse::<u64>().unwrap_or(0));
    let (cases, seed, most) =
        (arguments.next().unwrap_or(60), arguments.next().unwrap_or(1), arguments.next().unwrap_or(120));
    for case in 0..cases {
        let need = cutting_roofs::roof(seed * 100_000 + case, most);
        match case_of(&need) {
            Ok(line) => println!("{line}"),
            Err(fault) => println!("{}", json!({ "case": case, "fault": fault.to_string() })),
        }
    }
}

fn case_of(need: &Need) -> Result<serde_json::Value, order::cutting::CuttingFault> {
    let started = Instant::now();
    let shared = plan(need)?;
    let seconds = started.elapsed().as_secs_f64();
    let started = Instant::now();
    let boxes = plan_without_sharing(need)?;
    let seconds_boxes = started.elapsed().as_secs_f64();
    let length = |points: &[[f64; 3]]| {
        let along = || points.iter().map(|p| p[0]);
        along().fold(f64::NEG_INFINITY, f64::max) - along().fold(f64::INFINITY, f64::min)
    };
    let finished: i64 = match need.aim {
        order::cutting::Aim::Cost => 0,
        order::cutting::Aim::Waste => {
            shared
                .bars
                .iter()
                .filter_map(|bar| need.stock.get(bar.stock))
                .map(|s| (s.length * 1e4).round() as i64)
                .sum::<i64>()
                - shared.value
        }
    };
    let cost = |stock: &order::cutting::StockLength| match need.aim {
        order::cutting::Aim::Cost => stock.cost.0,
        order::cutting::Aim::Waste => (stock.length * 1e4).round() as i64,
    };
    Ok(json!({
        "kerf": need.sawing.kerf, "trim": need.sawing.trim, "finished": finished,
        "aim": format!("{:?}", need.aim),
        "pieces": need.pieces.iter().map(|p| json!([length(&p.points), p.marks.len()])).collect::<Vec<_>>(),
        "stock": need.stock.iter().map(|s| json!([s.length, cost(s)])).collect::<Vec<_>>(),
        "value": shared.value + finished, "at_least": shared.at_least + finished, "proven": shared.is_proven(), "seconds": seconds,
        "boxes": boxes.value + finished, "boxes_at_least": boxes.at_least + finished, "boxes_proven": boxes.is_proven(), "boxes_seconds": seconds_boxes,
        "bars": shared.bars.len(),
    }))
}
