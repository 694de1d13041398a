//! Sheets of an order: laid out cleanly, nothing lost, worded as they must be.

use ::order::whole::Order;

use crate::fixture::hipped;
use crate::layout::overlap;
use crate::layout_checks::faults_of;
use crate::order_fixture::made;
use crate::order_sheets::labels;
use crate::page::frame;
use crate::sheet::{Item, Sheet, Text};
use crate::text::SMALLEST_PT;
use crate::{Papers, labels_pdf, order_pdf, order_sheets, pack, pack_with};

const LONG: &str =
    " which is a very long text that somebody wrote at length, withaverylongwordwithoutanyspaceinitatall";

fn sheets(order: &Order, show: &str) -> Vec<Sheet> {
    let mut solution = hipped();
    solution.show = show.into();
    frame(order_sheets(&solution, order), &solution)
}

fn texts(sheet: &Sheet) -> Vec<&Text> {
    sheet.items.iter().filter_map(|item| if let Item::Text(t) = item { Some(t) } else { None }).collect()
}

fn words_on(sheets: &[Sheet]) -> String {
    sheets.iter().flat_map(texts).map(|t| t.text.as_str()).collect::<Vec<_>>().join("\n")
}

fn assert_clean(name: &str, sheets: &[Sheet]) {
    let faults = faults_of(sheets);
    assert!(faults.is_empty(), "{name}: {} faults\n{}", faults.len(), faults[..faults.len().min(12)].join("\n"));
}

/// Orders that no optimiser should return, but a file may hold.
fn odd() -> Vec<(&'static str, Order)> {
    let base = made("");
    let mut nothing = base.clone();
    nothing.timber.clear();
    nothing.lines.clear();
    nothing.lifts.clear();
    let mut out = vec![("nothing", nothing)];
    for (name, value) in [("not a number", f64::NAN), ("huge", 1e300), ("nought", 0.0), ("negative", -4000.0)] {
        let mut order = base.clone();
        order.kerf_mm = value;
        for timber in &mut order.timber {
            timber.kg = value;
            timber.cost = Some(value);
            timber.best.at_least = value;
            for layout in &mut timber.layouts {
                layout.left_mm = value;
                layout.cuts.iter_mut().for_each(|c| c.at_mm = [value, 100.0]);
                layout.cuts.iter_mut().for_each(|c| c.ends.push(99));
                layout.pieces.iter_mut().for_each(|p| p.outline[0][1] = [value; 2]);
                layout.pieces.iter_mut().for_each(|p| p.to_mm = value);
            }
        }
        order.timber[0].layouts[0].length_mm = value;
        order.timber[1].size.depth_mm = value;
        order.lines[0].line.quantity = value;
        order.lifts[0].kg = value;
        out.push((name, order));
    }
    let mut crowded = base.clone();
    for timber in &mut crowded.timber {
        for layout in &mut timber.layouts {
            let (pieces, cuts) = (layout.pieces.clone(), layout.cuts.clone());
            for k in 1..12 {
                layout.pieces.extend(pieces.clone());
                let on = f64::from(k) * 11.0;
                layout.cuts.extend(cuts.iter().cloned().map(|mut c| {
                    c.at_mm = c.at_mm.map(|at| at + on);
                    c
                }));
            }
        }
    }
    out.push(("crowded", crowded));
    let mut many = base.clone();
    for _ in 0..6 {
        let (layouts, lines, lifts) = (many.timber[1].layouts.clone(), many.lines.clone(), many.lifts.clone());
        many.timber[1].layouts.extend(layouts);
        many.lines.extend(lines);
        many.lifts.extend(lifts);
    }
    out.push(("many", many));
    out
}

#[test]
fn sheets_of_an_order_are_laid_out_cleanly() {
    for words in ["", LONG] {
        for show in ["mm", "feet-inches"] {
            assert_clean(&format!("{show} {words}"), &sheets(&made(words), show));
        }
    }
    for (name, order) in odd() {
        assert_clean(name, &sheets(&order, "mm"));
    }
}

#[test]
fn every_timber_every_cut_and_every_line_is_on_the_sheets() {
    let order = made("");
    let words = words_on(&sheets(&order, "mm"));
    for timber in &order.timber {
        for buy in &timber.buy {
            assert!(words.contains(&format!("{:.0} mm", buy.length_mm)), "{}", buy.length_mm);
        }
        for layout in &timber.layouts {
            assert!(words.contains(&format!("{} off", layout.count)), "{} off", layout.count);
            for mark in layout.pieces.iter().flat_map(|p| &p.marks) {
                let told = words.contains(mark.as_str()) || (["A8", "D52"].contains(&mark.as_str()));
                assert!(told, "{mark}");
            }
            for cut in &layout.cuts {
                let [near, far] = cut.at_mm.map(|at| job::written::Lengths::Millimetres.write(at));
                let place = if near == far { near } else { format!("{near} / {far}") };
                assert!(words.lines().any(|line| line == place), "{place}");
            }
        }
    }
    for line in &order.lines {
        assert!(words.contains(&line.line.what), "{}", line.line.what);
    }
    let on_one_line = words.replace('\n', " ");
    for wanted in [
        "Take from the yard",
        "shed 2",
        "no price",
        "£2,115.07",
        "No length of stock is as long as N1",
        "The covering is not counted here.",
        "Units mixed",
        "No plan can cost less.",
        "Within 1.0 % of the least cost",
        "Without that",
        "keep as K1",
        "K6",
        "too heavy",
        "no tax",
        "No tax, delivery or discount",
        "2027-02-01",
        "Allowance:",
        "To choose, not in the sum:",
    ] {
        assert!(on_one_line.contains(wanted), "no `{wanted}` in\n{words}");
    }
    assert!(!words.to_lowercase().contains("safe"));
}

#[test]
fn a_strip_is_to_scale_and_its_cut_slants_as_it_does() {
    // Stock of 6000 mm at 1:25 is 240 mm long; a cut that leans 168 mm over 200 mm leans 6.72 mm over 8 mm.
    let sheets = sheets(&made(""), "mm");
    let paths = sheets.iter().flat_map(|s| &s.items).filter_map(|item| match item {
        Item::Path { points, fill, .. } if points.len() == 4 => Some((points.clone(), *fill)),
        _ => None,
    });
    let paths: Vec<_> = paths.collect();
    let near = |a: f64, b: f64| (a - b).abs() < 1e-6;
    assert!(paths.iter().any(|(p, _)| near(p[1][0] - p[0][0], 240.0) && near(p[2][1] - p[1][1], 8.0)));
    let cut = paths.iter().find(|(p, fill)| *fill == Some(0) && near(p[1][0] - p[0][0], 6.72));
    assert!(cut.is_some_and(|(p, _)| near(p[0][1] - p[1][1], 8.0)), "{cut:?}");
}

#[test]
fn twenty_layouts_take_three_sheets() {
    let mut order = made("");
    let timber = order.timber.remove(1);
    let layouts = vec![::order::whole::Layout { yard: None, ..timber.layouts[1].clone() }; 20];
    order.timber = vec![::order::whole::TimberOut { layouts, ..timber }];
    let pages =
        sheets(&order, "mm").iter().filter(|s| words_on(std::slice::from_ref(*s)).contains("Cutting plan")).count();
    assert!(pages <= 3, "{pages}");
}

#[test]
fn labels_keep_to_themselves() {
    let solution = hipped();
    for words in ["", LONG] {
        let order = made(words);
        let sheets = labels::sheets(&solution, &order);
        let timbers: u32 = order.timber.iter().filter(|t| t.refused.is_none()).map(|t| t.timbers).sum();
        let mut marks = 0;
        for sheet in &sheets {
            assert_eq!([sheet.width, sheet.height], [210.0, 297.0]);
            let all = texts(sheet);
            for (k, text) in all.iter().enumerate() {
                let corners = text.corners();
                // Labels of 70 × 37 mm, half a millimetre of A4 above them; a printer's 5 mm at their sides.
                let (column, row) = ((text.at[0] / 70.0).floor(), ((text.at[1] - 0.5) / 37.0).floor());
                let [x, y] = [column * 70.0, 0.5 + row * 37.0];
                let inside = corners
                    .iter()
                    .all(|c| (x + 5.0..=x + 65.0).contains(&c[0]) && (y + 4.0..=y + 33.0).contains(&c[1]));
                assert!(inside, "`{}` runs off its label", text.text);
                assert!(text.style.size_pt >= SMALLEST_PT);
                assert!(!all[k + 1..].iter().any(|other| overlap(&corners, &other.corners(), 0.25)), "{}", text.text);
                marks += u32::from(text.style.bold && (text.at[1] - y - 13.6).abs() < 1e-6);
            }
        }
        assert_eq!(marks, timbers, "a label for every timber");
        assert_eq!(sheets.len(), (timbers as usize).div_ceil(24));
    }
}

#[test]
fn papers_are_the_same_every_time_and_the_pack_takes_them_in() {
    let (solution, order) = (hipped(), made(""));
    assert_eq!(order_pdf(&solution, &order).unwrap(), order_pdf(&solution, &order).unwrap());
    assert!(labels_pdf(&solution, &order).unwrap().starts_with(b"%PDF-1.7"));
    let papers = Papers { order: Some(&order), ..Papers::default() };
    assert!(pack_with(&solution, &papers).unwrap().len() > pack(&solution).unwrap().len());
}
